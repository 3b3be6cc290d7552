package trade

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// worldRule finds a part of the world where a country is asked, or a continent of
// two words further below: what a label says first of a place must be a land.
func worldRule() check.Rule {
	return check.Rule{
		Name: "country-continent", Severity: label.Warning, Source: "Darwin Core, list of terms (country, continent, islandGroup); " + practice,
		Doc: "a continent or another part of the world in the column of countries, or a continent in that of states, counties or municipalities", Terms: landTerms[:],
		Example:        one("country", "Mitteleuropa", "countryCode", ""),
		Counterexample: one("country", "South Africa", "countryCode", "", "decimalLatitude", "-33.9249", "decimalLongitude", "18.5021", "stateProvince", "", "county", "", "minimumElevationInMeters", ""),
		Row: func(c *check.Context) {
			for _, term := range landTerms {
				text := c.Text(term)
				if !isWorldPart(text) || term != "country" && !strings.Contains(text, " ") {
					continue
				}
				if term == "country" {
					c.Once(term, "is a part of the world, no country: write the country, and this into continent or islandGroup", "", "part of the world: "+text)
				} else {
					c.Once(term, "is a part of the world: its column is continent", "", "part of the world: "+text)
				}
			}
		},
	}
}

// longestPart is how long the longest of worldParts is.
const longestPart = 24

// isWorldPart reports whether a text names a part of the world that holds several
// countries.
func isWorldPart(text string) bool {
	if len(text) < 4 || len(text) > longestPart {
		return false
	}
	var low [longestPart]byte
	for i := range len(text) {
		if low[i] = text[i]; low[i] >= 'A' && low[i] <= 'Z' {
			low[i] |= 0x20
		}
	}
	return worldParts[string(low[:len(text)])]
}

// worldParts are continents and the parts of the world that collectors name in their
// place, in the languages of most tables. Left out is what is a country as well: Micronesia,
// Antarctica, Central African Republic. From memory.
var worldParts = func() map[string]bool {
	all := map[string]bool{}
	for s := range strings.SplitSeq(`africa|áfrica|afrika|afrique|asia|ásia|asie|asien|azië|europa|europe|america|américa|amérique|amerika|oceania|oceanía|océanie|ozeanien|australasia|eurasia|`+
		`north america|south america|central america|middle america|latin america|nordamerika|südamerika|mittelamerika|zentralamerika|lateinamerika|`+
		`américa del norte|américa del sur|américa central|américa latina|norteamérica|sudamérica|suramérica|centroamérica|mesoamérica|mesoamerica|`+
		`américa do norte|américa do sul|amérique du nord|amérique du sud|amérique centrale|`+
		`the caribbean|caribbean|caribe|west indies|antilles|antillas|antilhas|lesser antilles|greater antilles|`+
		`middle east|near east|far east|southeast asia|south-east asia|south east asia|south asia|east asia|central asia|north asia|west asia|`+
		`east africa|west africa|north africa|central africa|tropical africa|southern africa|ostafrika|westafrika|nordafrika|zentralafrika|`+
		`scandinavia|skandinavien|balkans|balkan|macaronesia|macaronésia|melanesia|polynesia|mediterranean|western europe|eastern europe|central europe|southern europe|mitteleuropa`, "|") {
		all[s] = true
	}
	return all
}()
