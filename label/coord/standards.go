package coord

import (
	"regexp"
	"strings"
)

// Points as standards for computers write them: well-known text (OGC Simple
// Feature Access, 06-103r4, longitude first), geo URIs (RFC 5870, latitude
// first) and GeoJSON (RFC 7946, longitude first).
var (
	wktPoint = regexp.MustCompile(`(?i)^(?:SRID=(\d+);)?\s*POINT\s*(?:ZM|Z|M)?\s*\(\s*([-+]?\d+(?:\.\d+)?)\s+([-+]?\d+(?:\.\d+)?)(?:\s+[-+]?\d+(?:\.\d+)?){0,2}\s*\)$`)
	wktOther = regexp.MustCompile(`(?i)^(?:SRID=\d+;)?\s*(?:MULTI)?(?:POINT|LINESTRING|POLYGON|GEOMETRYCOLLECTION)\s*(?:ZM|Z|M)?\s*(?:\(|EMPTY)`)
	geoURI   = regexp.MustCompile(`(?i)^geo:(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(?:,-?\d+(?:\.\d+)?)?(?:;crs=([\w-]+))?(?:;[\w-]+(?:=[^;]*)?)*$`)
	geoJSON  = regexp.MustCompile(`(?s)^\{.*"type"\s*:\s*"Point".*"coordinates"\s*:\s*\[\s*(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)(?:\s*,\s*-?\d+(?:\.\d+)?)?\s*\].*\}$`)
)

// readStandard reads a point as a standard writes it; false if the text is none.
func readStandard(text string) (Reading, bool) {
	s := strings.TrimSpace(text)
	if s == "" || !strings.ContainsRune("gGpPsSmMlL{", rune(s[0])) {
		return Reading{}, false
	}
	point := func(lat, lon string) (Reading, bool) {
		p, err := FromDecimal(lat, lon)
		if err != nil {
			return Reading{Status: Invalid, Err: err}, true
		}
		return Reading{Status: OK, Point: p, HasLat: true, HasLon: true}, true
	}
	if g := wktPoint.FindStringSubmatch(s); g != nil {
		if g[1] != "" && !SameGround("EPSG:"+g[1]) {
			return refuse(NotConvertible, "the point is in EPSG:%s, which is not converted here: write degrees", g[1]), true
		}
		return point(g[3], g[2])
	}
	if wktOther.MatchString(s) {
		return refuse(NotConvertible, "the text is no single point: write one latitude and one longitude"), true
	}
	if g := geoURI.FindStringSubmatch(s); g != nil {
		if g[3] != "" && !strings.EqualFold(g[3], "wgs84") {
			return refuse(NotConvertible, "the point is in the system %s, which is not converted here: write degrees", g[3]), true
		}
		return point(g[1], g[2])
	}
	if g := geoJSON.FindStringSubmatch(s); g != nil {
		return point(g[2], g[1])
	}
	return Reading{}, false
}

// Codes that name a square and are not converted here. No letter or figure of
// theirs is a hemisphere or a degree.
var (
	openLocation = regexp.MustCompile(`(?:^|[\s(:])[23456789CFGHJMPQRVWX]{2,8}0{0,6}\+(?:[23456789CFGHJMPQRVWX]{2,7})?(?:$|[\s),;])`)
	geohash      = regexp.MustCompile(`^(?:[0-9]+[b-hjkmnp-z]+|[b-hjkmnp-z]+[0-9]+)[0-9b-hjkmnp-z]*$`)
)

// otherCode names the code that a text is, "" if it is none.
func otherCode(s string) string {
	if i := strings.IndexByte(s, '+'); i > 0 && openLocation.MatchString(s) && strings.ContainsAny(s[max(0, i-8):i], "CFGHJMPQRVWX") {
		return "an open location code"
	}
	if len(s) >= 5 && len(s) <= 12 && geohash.MatchString(s) {
		return "a geohash"
	}
	return ""
}

// Squares of national grids that stand alone: 100 km of the British one, and a
// quarter degree of southern Africa.
//
// Source: Ordnance Survey, A guide to coordinate systems in Great Britain;
// the quarter degree from memory.
var (
	britishGrid = regexp.MustCompile(`^(?:N?GR:?\s*)?[HNOST][A-HJ-Z]\s?(?:\d{2,5}\s\d{2,5}|\d{4}|\d{6}|\d{8}|\d{10})$`)
	quarters    = regexp.MustCompile(`^\d{4}\s?[A-D]{1,2}$`)
)

// nationalGrid names the grid of one country that a text is a square of, "" if
// it is none.
func nationalGrid(s string) string {
	switch {
	case britishGrid.MatchString(s):
		return "the national grid"
	case quarters.MatchString(s):
		return "a quarter degree square"
	}
	return ""
}

// nmea is a position as receivers send it, after NMEA 0183: degrees and minutes
// run together, hemispheres as fields of their own.
var nmea = regexp.MustCompile(`^(\d{4}(?:\.\d+)?),([NS]),(\d{5}(?:\.\d+)?),([EW])$`)

// Fractions of a degree or minute, behind a whole number.
var (
	fraction  = regexp.MustCompile(`(\d) ?([½¼¾])`)
	fractions = regexp.MustCompile(`(^|[^\d.,/])(\d{1,3})[ -]([13])/([24])( ?[°'"])`)
	decimals  = map[string]string{"½": ".5", "¼": ".25", "¾": ".75", "1/2": ".5", "1/4": ".25", "3/4": ".75", "2/4": ".5"}
)

// withDecimals writes fractions as decimals: 38½° and 38 1/2° are 38.5°.
func withDecimals(s string) string {
	if strings.ContainsAny(s, "½¼¾") {
		s = fraction.ReplaceAllStringFunc(s, func(m string) string {
			g := fraction.FindStringSubmatch(m)
			return g[1] + decimals[g[2]]
		})
	}
	if strings.Contains(s, "/2") || strings.Contains(s, "/4") {
		s = fractions.ReplaceAllStringFunc(s, func(m string) string {
			g := fractions.FindStringSubmatch(m)
			if d, ok := decimals[g[3]+"/"+g[4]]; ok {
				return g[1] + g[2] + d + g[5]
			}
			return m
		})
	}
	return s
}

// Zero meridians that longitudes were counted from beside Greenwich.
//
// Source: the list of prime meridians in the EPSG registry; the others from
// memory.
const zeros = `Paris|Ferro|Hierro|Pulkov[oa]|Pulkowa|Madrid|Monte Mario|Lisbon|Lisboa|Lisbonne|Rom[ea]|Berlin|Teneriff[ae]|Tenerife|C[áa]di[zx]|San Fernando|Rio de Janeiro|Washington|Stockholm|Copenhagen|København|Kopenhagen|Coimbra|Bern|Brussels|Bruxelles|Amsterdam|Athens|Oslo|Christiania|Jakarta|Batavia|Bogot[áa]`

var (
	// zeroWord has the word meridian, zeroOf a preposition, zeroBracket
	// brackets; zeroBare is a name that stands behind the figures alone, which
	// may be that of the place too.
	zeroWord    = regexp.MustCompile(`(?i)(?:\bm[eé]r(?:\.|idian|idiano|idien|idiaan)?|\bM\.)\s*(?:(?:of|de|von|du|di|v\.)\s*)?\b(` + zeros + `)\b|\b(` + zeros + `)(?:er)?[- ](?:m[eé]r(?:\.|idian|idiano|idien|idiaan))`)
	zeroOf      = regexp.MustCompile(`(?i)[°'"]\s*(?:(?:[EWOLÖ]|East|West|Est|Ouest|Oeste|Ost|östl|westl|östlich|westlich|östlicher|westlicher|Länge|Laenge|Lge|long|longitude|longitud)[\s.]+)*\(?(?:of|de|von|v\.|from|depuis|d')\s*(` + zeros + `)\b`)
	zeroBracket = regexp.MustCompile(`(?i)[°'"]\s*(?:[EWOL]\.?\s*)?[(\[](` + zeros + `)[)\]]`)
	zeroBare    = regexp.MustCompile(`(?i)[°'"]\s*(?:[EWOL]\.?|East|West|Est|Ouest|Oeste|Ost)?\s*\b(` + zeros + `)\b`)
	// greenwich is the meridian that is meant where none is named.
	greenwich = regexp.MustCompile(`(?i)([°'"]\s*(?:[EWOL]|East|West|Est|Ouest|Oeste|Ost)?\.?)\s*\(?(?:(?:of|de|von|v\.|from|di|du)\s*)?(?:Greenwich|Greenw\.|Grw\.|Gr\.)\s*\)?`)
)

// ownLongitudes are where the zero meridians themselves run, in tenths of
// degrees.
//
// Source: EPSG registry, prime meridians; the others from memory.
var ownLongitudes = map[string]Angle{
	"paris": 23, "madrid": -37, "lisbon": -91, "lisboa": -91, "lisbonne": -91, "rome": 125, "roma": 125, "bern": 74, "brussels": 44, "bruxelles": 44,
	"oslo": 107, "christiania": 107, "stockholm": 181, "athens": 237, "jakarta": 1068, "batavia": 1068, "bogota": -741, "bogotá": -741, "hierro": -180,
	"berlin": 134, "amsterdam": 49, "washington": -770, "coimbra": -84, "cadiz": -63, "cádiz": -63, "cadix": -63, "rio de janeiro": -432,
	"copenhagen": 126, "kopenhagen": 126, "københavn": 126,
}

// isThere reports whether a longitude from Greenwich lies by the place of that
// name: then the name is the place's.
func isThere(name string, lon Angle) bool {
	at, ok := ownLongitudes[strings.ToLower(name)]
	return ok && (lon-at*(Degree/10)).abs() <= Degree
}

// otherMeridian names the zero meridian of a longitude that is not Greenwich's;
// sure is false where the name can be the place's.
func otherMeridian(s string) (name string, sure bool) {
	for _, re := range []*regexp.Regexp{zeroWord, zeroOf, zeroBracket} {
		if g := re.FindStringSubmatch(s); g != nil {
			return strings.Join(g[1:], ""), true
		}
	}
	if g := zeroBare.FindStringSubmatch(s); g != nil {
		switch strings.ToLower(g[1]) {
		case "ferro", "pulkovo", "pulkova", "pulkowa", "monte mario":
			return g[1], true
		}
		return g[1], false
	}
	return "", false
}
