package table

import (
	"regexp"
	"slices"
	"strings"
)

// readCut reads headings that a dBASE table has cut, where the table has several
// of just that many letters.
func (r *resolver) readCut() {
	full, long := 0, 0
	for i := range r.columns {
		switch n := len(strings.TrimSpace(r.columns[i].Heading)); {
		case n == cutLetters:
			full++
		case n > cutLetters && r.read[i].meaning == nil:
			long++
		}
	}
	if full < 3 || long > full {
		return
	}
	for i := range r.columns {
		heading := strings.TrimSpace(r.columns[i].Heading)
		if len(heading) != cutLetters || r.read[i].meaning != nil {
			continue
		}
		if m := r.v.cut[headingKey(heading)]; m != nil {
			r.read[i] = reading{meaning: m, unit: m.unit, cut: true}
		}
	}
}

// datumWord names a datum, as headings of coordinates do.
var datumWord = regexp.MustCompile(`(?i)^(datum:? ?)?(WGS[ -]?84|ED[ -]?50|ETRS[ -]?89|NAD[ -]?(?:27|83)|SAD[ -]?69|SIRGAS[ -]?2000|OSGB[ -]?36|GDA[ -]?(?:94|2020)|RGF[ -]?93|CH1903\+?|PSAD[ -]?56|JGD2000|CGCS[ -]?2000)$`)

// sideWords are the sides that headings of latitudes and longitudes name. O is
// west but in German.
var sideWords = map[string]string{
	"n": "N", "north": "N", "norte": "N", "nord": "N", "s": "S", "south": "S", "sul": "S", "sur": "S", "sud": "S", "süd": "S",
	"e": "E", "east": "E", "este": "E", "leste": "E", "l": "E", "est": "E", "ost": "E", "w": "W", "west": "W", "oeste": "W", "ouest": "W", "o": "W",
}

// told takes in what a heading of coordinates says beside its word.
func (r *reading) told(in string) bool {
	latitude := strings.HasSuffix(r.terms[0], "Latitude")
	if !latitude && !strings.HasSuffix(r.terms[0], "Longitude") && r.terms[0] != "verbatimCoordinates" {
		return false
	}
	if m := datumWord.FindStringSubmatch(in); m != nil {
		r.datum = m[2]
		return true
	}
	side := r.sideOf(in)
	if side == "" || r.terms[0] == "verbatimCoordinates" || latitude != (side == "N" || side == "S") {
		return false
	}
	r.side = side
	return true
}

// half reads a word for coordinates with a side or an axis in brackets, such as
// "Koordinaten (N)", as that half.
func (r *reading) half(in string) reading {
	if r.terms[0] != "verbatimCoordinates" {
		return reading{}
	}
	side := r.sideOf(in)
	axis := ""
	switch side {
	case "N", "S":
		axis = "decimalLatitude"
	case "E", "W":
		axis = "decimalLongitude"
	default:
		p, ok := readPiece(in)
		if !ok || p.axis == "" || p.part != "" {
			return reading{}
		}
		axis = map[string]string{"latitude": "decimalLatitude", "longitude": "decimalLongitude"}[p.axis]
	}
	return reading{meaning: &meaning{terms: []string{axis}, plain: true, language: r.language}, side: side, eastOrWest: r.eastOrWest, datum: r.datum}
}

// degreesTo are degrees to a side: "°W", "decimal degrees N".
var degreesTo = regexp.MustCompile(`(?i)^(?:dec(?:imal)?\.?\s*)?(?:deg(?:rees?)?\.?)?\s*[°º˚]?\s*([NSEW])$`)

// sideOf returns the side that a word of the heading names. O is east where the
// other word is German; a word of several languages leaves it to the other headings.
func (r *reading) sideOf(in string) string {
	if strings.EqualFold(in, "o") {
		if r.language == "de" {
			return "E"
		}
		r.eastOrWest = true
	}
	if m := degreesTo.FindStringSubmatch(in); m != nil {
		in = m[1]
	}
	return sideWords[strings.ToLower(in)]
}

// eastInGerman takes O for east where the headings are German rather than of any
// other language.
func (r *resolver) eastInGerman() {
	for i := range r.read {
		if r.read[i].eastOrWest && r.read[i].side == "W" && r.local() == "de" {
			r.read[i].side = "E"
		}
	}
}

func nth(s string) int {
	for i, c := range s {
		if c >= '1' && c <= '9' {
			return int(c - '0')
		}
		if i == 0 {
			break
		}
	}
	return map[string]int{"first": 1, "second": 2, "third": 3, "fourth": 4}[strings.ToLower(s)]
}

// anglePattern are words for degrees with minutes, and perhaps with seconds, in one.
var anglePattern = wordSet("dms | ddmmss | dddmmss | dmm | ddm | ddmm | dddmm | gms | ggmmss | ddmmsss | ddmmmmm")

// wholeAngle returns the axis of a heading that names degrees and minutes together, and
// perhaps seconds, in any language: "lat_deg_min", "latitud grados minutos segundos",
// "longitude_ddmmss"; "" of any other. One part alone has a column of its own.
func wholeAngle(heading string) string {
	axis, degrees, minutes := "", false, false
	for _, w := range wordPart.FindAllString(heading, -1) {
		key := headingKey(w)
		parts := partWords()[key]
		switch {
		case slices.Contains(parts, "latitude"), slices.Contains(parts, "longitude"):
			if axis != "" {
				return ""
			}
			axis = parts[slices.IndexFunc(parts, func(p string) bool { return p == "latitude" || p == "longitude" })]
		case anglePattern[key]:
			degrees, minutes = true, true
		case slices.Contains(parts, "degrees"):
			degrees = true
		case slices.Contains(parts, "minutes"):
			minutes = true
		case !slices.Contains(parts, "seconds") && !slices.Contains(parts, "decimal") && key != "y" && key != "e" && key != "and" && key != "et" && key != "und" && key != "in" && key != "em" && key != "en":
			return ""
		}
	}
	if !degrees || !minutes {
		return ""
	}
	return axis
}
