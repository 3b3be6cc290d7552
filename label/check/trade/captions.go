package trade

import (
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// captionRules are about the headings of columns that stand in their cells.
func captionRules() []check.Rule {
	return []check.Rule{{
		Name: "text-caption", Severity: label.Warning, Source: practice,
		Doc: "a cell that begins with a heading of its own column and a colon, which the label would print", Terms: captioned,
		Example: one("locality", "Locality: Valdoura, dunes 300 m W of the field station"), Counterexample: one("locality", "Valdoura: dunes 300 m W of the field station", "habitat", "Soil: bare sand"),
		Row: captionRule,
	}}
}

func captionRule(c *check.Context) {
	c.Marked(captions, func(term, text, _ string) {
		head, rest, _ := strings.Cut(text, ":")
		rest = strings.TrimSpace(rest)
		if !slices.Contains(captionWords[strings.ToLower(head)], term) || namesToo[term] && c.Doubted(term) {
			return
		}
		switch {
		case saysNothing[strings.ToLower(strings.Trim(rest, " .,;"))]:
			c.Once(term, head+" is the heading of the column, and nothing is said under it: clear the cell, or write what is known", "", "caption alone "+head)
		case captionWithin.MatchString(rest):
			c.Once(term, "several columns stand in the cell, each with its heading, and the label would print them so: give each a column of its own", "", "captions "+head)
		default:
			c.Once(term, head+" is the heading of the column, which the label would print: take it out", rest, "caption "+head)
		}
	})
}

// captioned are the columns whose cells a label prints as they are. Of persons it is
// person-form that tells.
var captioned = []string{"locality", "verbatimLocality", "habitat", "plantDescription", "country", "stateProvince", "county", "municipality", "family", "scientificName", "vernacularName"}

// namesToo are those of which other rules say what is no name.
var namesToo = map[string]bool{"family": true, "scientificName": true}

// saysNothing are words behind a heading.
var saysNothing = map[string]bool{"": true, "na": true, "n/a": true, "null": true, "none": true, "nan": true, "-": true, "--": true, "–": true, "—": true, "?": true, "unknown": true, "not recorded": true, "s/d": true, "n/d": true, "nd": true}

// captionWithin is a further heading within a cell, in the way of Darwin Core's terms.
var captionWithin = regexp.MustCompile(`[,;|]\s*\p{Ll}+\p{Lu}\pL+\s*:`)

// captionWords are headings that say no more than which column it is, in small letters
// and parted by "|"; a vegetation is told from a habitat, and a sítio is a farm.
var captionWords = func() map[string][]string {
	places := "locality|localidade|localidad|localité|local|loc.|fundort|lokalität|località|lokalita|lokal|vindplaats|locatie|exact locality"
	words := map[string][]string{}
	for term, list := range map[string]string{
		"locality": places, "verbatimLocality": places + "|verbatim locality", "habitat": "habitat|hábitat|biotop|biotope|ambiente", "plantDescription": "description|plant description|descrição|descripción",
		"country": "country|país|pais|pays|land", "stateProvince": "state|province|state/province|estado|província|provincia|bundesland|provincie|regione",
		"county": "county|condado|landkreis|powiat|okres", "municipality": "municipality|município|municipio|municip.|gemeinde|comune|gemeente",
		"family": "family|família|familia|famille|familie|fam.", "scientificName": "species|scientific name|espécie|especie|espèce|nome científico|nombre científico|nom scientifique|art",
		"vernacularName": "common name|vernacular name|local name|nome vulgar|nome comum|nome popular|nombre común|nombre vulgar|nom commun|nom vernaculaire",
	} {
		for word := range strings.SplitSeq(strings.ToLower(term)+"|"+list, "|") {
			words[word] = append(words[word], term)
		}
	}
	return words
}()

// captions are cells that begin with one of them and a colon, in whichever of the
// columns.
var captions = check.NewMark(captioned, 0, func(text string) bool {
	i := strings.IndexByte(text[:min(len(text), 32)], ':')
	return i >= 3 && captionWords[strings.ToLower(text[:i])] != nil && !strings.HasPrefix(text[i:], "://")
})
