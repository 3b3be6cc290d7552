package coord

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// A System is what metres east and north are counted in, as columns beside the
// metres say it. The zero value says nothing.
type System struct {
	// Grid is the name of a grid that is not converted here, such as that of
	// one country; "" for UTM.
	Grid string
	// UTM says that it is UTM, be its zone known or not.
	UTM bool
	// Zone and Datum are those of UTM, "29N" and "WGS84"; "" where they are
	// not said.
	Zone, Datum string
}

// gridWords are the words for grids in headings, in names of reference systems
// and in cells, with the name that they are printed by. The first that fits
// counts.
//
// Source: names and aliases in the EPSG registry; the short forms in headings
// are common practice, no source.
var gridWords = []struct {
	words *regexp.Regexp
	name  string
}{
	{regexp.MustCompile(`(?i)lambert[ _-]?2008`), "Belgian Lambert 2008"},
	{regexp.MustCompile(`(?i)lambert[ _-]?(?:19)?72|\bLB?72\b`), "Belgian Lambert 72"},
	{regexp.MustCompile(`(?i)lambert[ _-]?(?:19)?93|\bL93\b`), "Lambert-93"},
	{regexp.MustCompile(`(?i)lambert[ _-]?(?:II|2)[ _-]?[eé]t`), "Lambert II étendu"},
	{regexp.MustCompile(`(?i)\bLV[ _-]?95\b|\bCH1903\+`), "CH1903+ / LV95"},
	{regexp.MustCompile(`(?i)\bLV[ _-]?03\b|\bCH[ _-]?1903\b`), "CH1903 / LV03"},
	{regexp.MustCompile(`(?i)\bOSGB(?:[ _-]?(?:19)?36)?\b|\bBNG\b|\bBritish[ _]National[ _]Grid\b|\bOSGR\b`), "British National Grid"},
	{regexp.MustCompile(`(?i)\bIrish[ _](?:National[ _])?Grid\b|\bTM[ -]?65\b|\bTM[ -]?75\b`), "Irish Grid"},
	{regexp.MustCompile(`(?i)\bITM\b|\bIrish[ _]Transverse`), "Irish Transverse Mercator"},
	{regexp.MustCompile(`(?i)\bRD[ _-]?(?:new|old)?\b|Rijksdriehoek|\bAmersfoort\b`), "Rijksdriehoek"},
	{regexp.MustCompile(`(?i)Gau(?:ss|ß)[ _-]?Boaga`), "Gauss-Boaga"},
	{regexp.MustCompile(`(?i)SWEREF[ _-]?(?:99)?[ _-]?TM`), "SWEREF 99 TM"},
	{regexp.MustCompile(`(?i)SWEREF`), "SWEREF 99"},
	{regexp.MustCompile(`(?i)\bRT[ _-]?90\b`), "RT90"},
	{regexp.MustCompile(`(?i)Gau(?:ss|ß)[ _-]?Kr(?:ü|ue|u)ger|\bGK\d?\b`), "Gauss-Krüger"},
	{regexp.MustCompile(`(?i)TM35[ _-]?FIN`), "ETRS-TM35FIN"},
	{regexp.MustCompile(`(?i)\bKKJ\b|\bYKJ\b`), "KKJ"},
	{regexp.MustCompile(`(?i)\bPUWG|\bCS92\b`), "PUWG 1992"},
	{regexp.MustCompile(`(?i)S[ _-]?JTSK|Krovak`), "S-JTSK"},
	{regexp.MustCompile(`(?i)\bEOV\b`), "HD72 / EOV"},
	{regexp.MustCompile(`(?i)\bPT[ _-]?TM[ _-]?06\b`), "PT-TM06"},
	{regexp.MustCompile(`(?i)\bHayford[ _-]?Gauss\b`), "Hayford-Gauss"},
	{regexp.MustCompile(`(?i)\bNZTM(?:[ _-]?2000)?\b`), "NZTM"},
	{regexp.MustCompile(`(?i)\bNZMG\b`), "NZMG"},
	{regexp.MustCompile(`(?i)\bState[ _]Plane\b`), "State Plane"},
	{regexp.MustCompile(`(?i)Pseudo-?Mercator|Web[ _]Mercator`), "Web Mercator"},
	{regexp.MustCompile(`(?i)\bLAEA\b`), "ETRS89-LAEA"},
	{regexp.MustCompile(`(?i)\bLambert\b`), "Lambert"},
}

// epsgGrids are the codes of such grids.
//
// Source: EPSG dataset v10.076, projected systems.
var epsgGrids = map[int]string{
	31370: "Belgian Lambert 72", 3812: "Belgian Lambert 2008", 2154: "Lambert-93", 27572: "Lambert II étendu", 2056: "CH1903+ / LV95", 21781: "CH1903 / LV03",
	27700: "British National Grid", 29901: "Irish Grid", 29902: "Irish Grid", 29903: "Irish Grid", 2157: "Irish Transverse Mercator", 28991: "Rijksdriehoek", 28992: "Rijksdriehoek",
	3003: "Gauss-Boaga", 3004: "Gauss-Boaga", 3006: "SWEREF 99 TM", 3021: "RT90", 3067: "ETRS-TM35FIN", 2393: "KKJ", 2180: "PUWG 1992", 5513: "S-JTSK", 5514: "S-JTSK",
	23700: "HD72 / EOV", 31466: "Gauss-Krüger", 31467: "Gauss-Krüger", 31468: "Gauss-Krüger", 31469: "Gauss-Krüger", 31254: "Gauss-Krüger", 31255: "Gauss-Krüger",
	31256: "Gauss-Krüger", 31287: "MGI / Austria Lambert", 3763: "PT-TM06", 2193: "NZTM", 27200: "NZMG", 2100: "Greek Grid", 3301: "L-EST97", 3035: "ETRS89-LAEA", 3857: "Web Mercator",
}

// epsgZones are the runs of codes that are the zones of UTM on one datum, first
// code and first zone.
//
// Source: EPSG dataset v10.076, projected systems.
var epsgZones = []struct {
	first, last, zone int
	side              byte
	datum             string
}{
	{32601, 32660, 1, 'N', "WGS84"}, {32701, 32760, 1, 'S', "WGS84"}, {25828, 25838, 28, 'N', "ETRS89"}, {23028, 23038, 28, 'N', "ED50"},
	{26901, 26923, 1, 'N', "NAD83"}, {26701, 26722, 1, 'N', "NAD27"}, {31965, 31976, 11, 'N', "SIRGAS 2000"}, {31977, 31985, 17, 'S', "SIRGAS 2000"},
	{29187, 29195, 17, 'S', "SAD69"}, {28348, 28358, 48, 'S', "GDA94"},
}

var (
	epsgCode  = regexp.MustCompile(`(?i)^\s*(?:EPSG\s*[:/ ]*)?(\d{4,5})\s*$|\bEPSG\s*[:/ ]*:?(\d{4,5})\b`)
	utmSystem = regexp.MustCompile(`(?i)\bUTM\b`)
)

// ReadSystem reads what a column says of the metres beside it: "EPSG:31370",
// "Lambert 72", "WGS 84 / UTM zone 29N", or a heading such as "X_RD". It answers
// false where the text names neither a grid nor UTM.
func ReadSystem(text string) (System, bool) {
	text = strings.ReplaceAll(text, "_", " ") // which expressions take for a letter
	if m := epsgCode.FindStringSubmatch(text); m != nil {
		n, _ := strconv.Atoi(m[1] + m[2])
		if g := epsgGrids[n]; g != "" {
			return System{Grid: g}, true
		}
		for _, z := range epsgZones {
			if n >= z.first && n <= z.last {
				return System{UTM: true, Zone: fmt.Sprintf("%d%c", n-z.first+z.zone, z.side), Datum: z.datum}, true
			}
		}
	}
	if utmSystem.MatchString(text) {
		t := prepare(text)
		zone, letter, ok := zoneIn(t.grid)
		if !ok || zone < 1 || zone > 60 {
			return System{UTM: true}, true
		}
		s := System{UTM: true, Zone: strconv.Itoa(zone), Datum: t.datum}
		if w := hemiWord.FindString(t.grid); letter == 0 && w != "" {
			letter = 'N'
			if strings.EqualFold(w[:1], "s") {
				letter = 'S'
			}
		}
		if letter != 0 {
			s.Zone += string(rune(letter))
		}
		return s, true
	}
	for _, g := range gridWords {
		if g.words.MatchString(text) {
			return System{Grid: g.name}, true
		}
	}
	return System{}, false
}

// squareText is a square of letters with figures, as grids of single countries have.
var squareText = regexp.MustCompile(`^[A-Z]{1,2}\s?\d{1,5}(?:\s?\d{1,5})?$`)

// in reads a text that was none by itself in the system that is given beside it.
func (s System) in(text string, t prepared, h Hints) (Reading, bool) {
	if s == (System{}) || strings.ContainsAny(t.grid, "°'\"") {
		return Reading{}, false
	}
	metres := thousands.ReplaceAllString(millions.ReplaceAllString(t.grid, "$1$2$3"), "$1$2")
	if len(lengths(metres)) != 2 && (s.Grid == "" || !squareText.MatchString(t.grid)) {
		return Reading{}, false
	}
	if s.Grid != "" {
		r := refuse(NotConvertible, "%s is not converted here: write degrees", s.Grid)
		r.Foreign = true
		return r, true
	}
	if s.Zone == "" {
		return refuse(NotConvertible, "the UTM zone is missing: write it before the metres, as 29T 532123 4567890"), true
	}
	if hasZone(t.grid) {
		return Reading{}, false
	}
	h.System = System{}
	if h.Datum == "" || ofSystem(h.Datum) {
		h.Datum = s.Datum
	}
	return Read("UTM "+s.Zone+" "+text, h), true
}

// ofSystem reports whether a text that stands for a datum is the name or code of
// a zone, which has its datum in it.
func ofSystem(datum string) bool {
	s, ok := ReadSystem(datum)
	return ok && s.Datum != ""
}
