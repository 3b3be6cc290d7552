package table

import (
	_ "embed"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"cornerslip/label"
)

// partsCSV lists the words for pieces of coordinates, in tables that give
// degrees, minutes and seconds, zone, easting and northing, or township, range
// and section a column each. Words of a part named bare… mean it only beside
// the columns that go with it. Common practice, no source.
//
//go:embed vocabulary/parts.csv
var partsCSV []byte

// A partEntry is a row of partsCSV.
type partEntry struct {
	Part  string `csv:"part"`
	Words string `csv:"words"`
}

// partWords are the parts of the words, by key: a word may be of several.
var partWords = sync.OnceValue(func() map[string][]string {
	var all []partEntry
	must(decodeEmbedded("parts.csv", partsCSV, &all))
	out := map[string][]string{}
	for _, p := range all {
		for w := range strings.SplitSeq(p.Words, " | ") {
			if key := headingKey(w); !slices.Contains(out[key], p.Part) {
				out[key] = append(out[key], p.Part)
			}
		}
	}
	return out
})

// A piece is what a heading says of a coordinate.
type piece struct {
	axis string // "latitude", "longitude" or ""
	part string // "degrees", "minutes", "seconds", "hemisphere"; "" is the axis alone
	bare bool   // the part is one letter, which is a part only beside its axis
}

// longHeading is more bytes than a heading has that anybody knows.
const longHeading = 80

var pieceSign = regexp.MustCompile(`^(.*?)[\s_(\[]*([°º˚'′’´"″”])["')\]]*\s*$`)

// readPiece reads headings such as "Lat. deg", "lat_d", "minutos longitud",
// "Long (°)", "N/S" and "Sec.".
func readPiece(heading string) (piece, bool) {
	if len(heading) > longHeading {
		return piece{}, false
	}
	heading = strings.TrimSpace(barePrefixed(strings.TrimSpace(heading)))
	sign := ""
	if m := pieceSign.FindStringSubmatch(heading); m != nil {
		heading, sign = m[1], m[2]
	}
	key := headingKey(heading)
	of := func(key string) piece {
		p := piece{bare: len([]rune(key)) == 1}
		for _, name := range partWords()[key] {
			switch name {
			case "latitude", "longitude":
				return piece{axis: name}
			case "degrees", "minutes", "seconds", "hemisphere", "decimal":
				p.part = name
			case "northsouth":
				return piece{axis: "latitude", part: "hemisphere"}
			case "eastwest":
				return piece{axis: "longitude", part: "hemisphere"}
			}
		}
		return p
	}
	found := piece{}
	if key != "" {
		found = of(key)
	}
	if sign != "" {
		if key != "" && found.axis == "" {
			return piece{}, false
		}
		part := "degrees"
		switch {
		case strings.ContainsAny(sign, `"″”`) || strings.HasSuffix(strings.TrimSpace(heading), "'"):
			part = "seconds"
		case strings.ContainsAny(sign, `'′’´`):
			part = "minutes"
		}
		return piece{axis: found.axis, part: part}, true
	}
	if found.axis != "" || found.part != "" {
		return found, true
	}
	// An axis and a part in one word, either first.
	cuts := map[int]bool{}
	at := 0
	words := wordPart.FindAllString(heading, -1)
	for _, w := range words {
		at += len(headingKey(w))
		cuts[at] = true
	}
	for i := range key {
		if i == 0 || len(words) > 1 && !cuts[i] {
			continue // "Longitude W" is no "longitud EW"
		}
		a, b := of(key[:i]), of(key[i:])
		if b.axis != "" && b.part == "" && a.axis == "" {
			a, b = b, a
		}
		if a.axis != "" && a.part == "" && b.part != "" && (b.axis == "" || b.axis == a.axis) {
			return piece{axis: a.axis, part: b.part}, true
		}
	}
	return piece{}, false
}

// part makes column i one of a split coordinate.
func (r *resolver) part(i int, term string) {
	r.read[i] = reading{meaning: &meaning{terms: []string{term}, plain: true}}
	r.parts = append(r.parts, i)
}

// splitCoordinates finds the columns of coordinates that are written in
// several, before other headings are given their terms.
func (r *resolver) splitCoordinates() {
	if !r.codes {
		r.degrees()
		r.grid()
		r.survey()
	}
	r.bare()
	r.units()
	for i := range r.columns {
		for _, term := range []string{"gridSquare", "mapSheet", "townshipRangeSection"} {
			if r.read[i].meaning == nil && r.isPart(i, term) && !r.rainfall(i) {
				r.part(i, term)
			}
		}
	}
}

// rainfall reports whether a column is the mean annual precipitation, MAP, which
// stands with the mean annual temperature, MAT, or among codes of its kind.
func (r *resolver) rainfall(i int) bool {
	return strings.TrimSpace(r.columns[i].Heading) == "MAP" && (r.codes ||
		slices.ContainsFunc(r.columns, func(c Column) bool { return strings.TrimSpace(c.Heading) == "MAT" }))
}

func (r *resolver) isPart(i int, part string) bool {
	return slices.Contains(partWords()[headingKey(barePrefixed(strings.TrimSpace(r.columns[i].Heading)))], part)
}

// degrees gives degrees, minutes, seconds and hemispheres their axis: the one
// the heading names, else the one of the columns before it.
func (r *resolver) degrees() {
	type set map[string]int // the column of each part, "" for the axis alone
	axes := map[string]set{"latitude": {}, "longitude": {}}
	seen := make([]piece, len(r.columns))
	bounds := map[string]bool{}
	axis, last, guessed := "", -2, false
	for i := range r.columns {
		p, ok := readPiece(r.columns[i].Heading)
		if p.part == "decimal" {
			p.part = "" // the axis in decimals
			ok = p.axis != ""
		}
		known := r.read[i].meaning != nil
		key := headingKey(r.columns[i].Heading)
		for a, s := range map[string]string{"latitude": "lat", "longitude": "lon"} {
			bounds[a] = bounds[a] || strings.HasPrefix(key, s) && strings.HasSuffix(key, "max")
		}
		switch {
		case !ok || known && p.axis == "" || known && p.part != "" && p.axis == "":
			if !known || !r.read[i].plain {
				continue
			}
			axis = ""
			continue
		case p.axis != "":
			axis, last = p.axis, i
		case axis != "" && last == i-1:
			if _, taken := axes[axis][p.part]; taken && axis == "latitude" {
				axis = "longitude" // deg, min, sec, deg, min, sec
			}
			p.axis, last = axis, i
		case p.part == "degrees" && !p.bare && len(axes["latitude"]) == 0:
			axis, last, guessed = "latitude", i, true
			p.axis = axis
		default:
			continue
		}
		if _, taken := axes[p.axis][p.part]; taken {
			continue
		}
		axes[p.axis][p.part], seen[i] = i, p
	}
	for name, a := range axes {
		_, deg := a["degrees"]
		_, min := a["minutes"]
		whole, alone := a[""]
		if guessed && name == "latitude" && deg && !min && len(axes["longitude"]) == 0 && !r.hasAxis("longitude") {
			continue // "St" of a table without longitudes is no word for degrees
		}
		if deg && !min {
			// Degrees without minutes are decimal degrees.
			i := a["degrees"]
			if !alone && r.read[i].meaning == nil {
				r.read[i] = *r.plainAxis(name)
			}
			deg = false
			delete(a, "degrees")
		}
		if !deg && alone && min && !bounds[name] {
			a["degrees"], deg = whole, true
		}
		if bounds[name] {
			delete(a, "minutes")
		}
		for _, part := range []string{"degrees", "minutes", "seconds", "hemisphere"} {
			i, ok := a[part]
			if !ok || part != "hemisphere" && !deg || part == "hemisphere" && !deg && !alone && r.read[i].meaning == nil && !r.hasAxis(name) {
				continue
			}
			r.part(i, name+strings.ToUpper(part[:1])+part[1:])
		}
	}
}

// hasAxis reports whether a column has the axis in degrees.
func (r *resolver) hasAxis(axis string) bool {
	term := "decimal" + strings.ToUpper(axis[:1]) + axis[1:]
	return slices.ContainsFunc(r.read, func(o reading) bool { return o.meaning != nil && o.terms[0] == term })
}

// plainAxis is the reading of the plain word for an axis.
func (r *resolver) plainAxis(axis string) *reading {
	m := r.v.meanings[axis]
	return &reading{meaning: m}
}

// grid finds zone, easting and northing.
func (r *resolver) grid() {
	find := func(part, bare string) (column int, sure bool) {
		column = -1
		for i := range r.columns {
			if r.read[i].meaning == nil && r.isPart(i, part) {
				return i, true
			}
		}
		for i := range r.columns {
			if column < 0 && bare != "" && r.read[i].meaning == nil && r.isPart(i, bare) {
				column = i
			}
		}
		return column, false
	}
	zone, zoneSure := find("zone", "bareZone")
	east, eastSure := find("easting", "bareEasting")
	north, northSure := find("northing", "bareNorthing")
	band, _ := find("band", "")
	datum := ""
	if east < 0 || north < 0 {
		e, inE := r.named("easting", "bareEasting")
		n, inN := r.named("northing", "bareNorthing")
		if e >= 0 && n >= 0 && inE == inN && (zone < 0 || !inE.grid) {
			east, north, r.onGrid, datum = e, n, inE.grid, inE.datum
		}
	}
	if !eastSure && !northSure && r.boxed() {
		east, north = -1, -1
	}
	if r.joined(east) && r.joined(north) && zone < 0 && r.hasAxis("latitude") && r.hasAxis("longitude") {
		east, north = -1, -1
	}
	// Words such as X, E and Este mean it in pairs alone.
	if !eastSure && !northSure && (east < 0 || north < 0) {
		east, north = -1, -1
	}
	if east < 0 && north < 0 && !zoneSure {
		zone = -1
	}
	if zone >= 0 {
		r.part(zone, "utmZone")
	}
	if band >= 0 && band != zone {
		r.part(band, "utmBand")
	}
	if east >= 0 {
		r.part(east, "easting")
		if !r.hasAxis("latitude") { // whose datum may be another
			r.read[east].datum = datum
		}
	}
	if north >= 0 && north != east {
		r.part(north, "northing")
	}
	if zone < 0 && east < 0 {
		return
	}
	for i := range r.columns { // "Hemisphere" beside a zone
		if p, ok := readPiece(r.columns[i].Heading); ok && p.part == "hemisphere" && r.read[i].meaning == nil && p.axis != "longitude" {
			r.part(i, "latitudeHemisphere")
			break
		}
	}
}

// joined reports whether column i has the heading that a map program gives to the
// points it adds: beside degrees they are the middle of an area, or a copy.
func (r *resolver) joined(i int) bool {
	if i < 0 {
		return false
	}
	key := headingKey(r.columns[i].Heading)
	return key == "pointx" || key == "pointy"
}

// survey finds township, range and section where at least two of them stand
// together; a township alone is a place, a range mountains.
func (r *resolver) survey() {
	parts := []string{"township", "range", "section"}
	at := map[string]int{}
	letters := 0
	for i := range r.columns {
		for _, p := range parts {
			if _, taken := at[p]; !taken && r.isPart(i, "bare"+strings.ToUpper(p[:1])+p[1:]) &&
				(r.read[i].meaning == nil || r.read[i].plain) {
				at[p] = i
				if len(headingKey(r.columns[i].Heading)) == 1 {
					letters++
				}
			}
		}
	}
	if len(at) < 2 || letters > 0 && len(at) < 3 {
		return
	}
	for _, p := range parts {
		if i, ok := at[p]; ok {
			r.part(i, p)
		}
	}
	for i := range r.columns {
		for _, p := range []string{"quarterSection", "surveyMeridian"} {
			if r.read[i].meaning == nil && r.isPart(i, p) {
				r.part(i, p)
			}
		}
	}
}

// wholes are what the parts make together, as remarkParts says it.
var wholes = []struct {
	name  string
	terms []string
}{
	{"the latitude", []string{"latitudeDegrees", "latitudeMinutes", "latitudeSeconds", "latitudeHemisphere"}},
	{"the longitude", []string{"longitudeDegrees", "longitudeMinutes", "longitudeSeconds", "longitudeHemisphere"}},
	{"a grid coordinate", []string{"utmZone", "utmBand", "easting", "northing"}},
	{"a place in the land survey", []string{"townshipRangeSection", "township", "range", "section", "quarterSection", "surveyMeridian"}},
	{"a grid square", []string{"gridSquare"}},
	{"a map sheet", []string{"mapSheet"}},
}

// remarkParts states how the columns of split coordinates are read, and what
// they lack.
func (r *resolver) remarkParts() {
	first := -1
	var said []string
	for _, w := range wholes {
		var headings []string
		for _, i := range r.parts {
			if c := &r.columns[i]; r.taken[c.Term] == i && slices.Contains(w.terms, c.Term) {
				headings = append(headings, strconv.Quote(c.Heading))
				if first < 0 || i < first {
					first = i
				}
			}
		}
		if len(headings) > 0 {
			said = append(said, strings.Join(headings, ", ")+" as "+w.name)
		}
	}
	if first < 0 {
		return
	}
	more := ""
	if r.onGrid {
		more = ", on the grid that they name: printed as written, for degrees are not worked out from it"
	}
	r.find(first, ruleHeadingReading, label.Note, "", "columns that belong together are read together: %s%s", strings.Join(said, "; "), more)
	for _, lack := range []struct{ of, missing, decimal string }{
		{"latitudeDegrees", "longitudeDegrees", "decimalLongitude"}, {"longitudeDegrees", "latitudeDegrees", "decimalLatitude"},
		{"easting", "northing", ""}, {"northing", "easting", ""},
	} {
		i, has := r.taken[lack.of]
		lacks := r.has(lack.missing)
		decimal := r.has(lack.decimal)
		if has && !lacks && !decimal {
			r.find(i, ruleHeadingReading, label.Warning, "", "heading %q is read as %s, and no column as %s: one is no place without the other",
				r.columns[i].Heading, lack.of, lack.missing)
		}
	}
}

// units finds the columns that name the unit of heights and depths.
func (r *resolver) units() {
	for i := range r.columns {
		for _, of := range []string{"elevation", "depth"} {
			if r.read[i].meaning == nil && (r.isPart(i, of+"Unit") || r.isPart(i, "bareUnit") && i > 0 && r.measures(i-1, of)) {
				r.read[i] = reading{meaning: &meaning{terms: []string{of + "Unit"}, plain: true}}
				if r.unitColumn == nil {
					r.unitColumn = map[string]bool{}
				}
				r.unitColumn[of] = true
			}
		}
	}
}

// bounds are the words of a column that goes on the one before it, "Altitude",
// "min", "max".
var bounds = map[string]string{"min": "minimum", "minimum": "minimum", "minimo": "minimum", "max": "maximum", "maximum": "maximum", "maximo": "maximum"}

// bare gives "min" and "max" behind a height or depth their terms.
func (r *resolver) bare() {
	for i := range r.columns {
		of, ok := bounds[headingKey(r.columns[i].Heading)]
		if !ok || r.read[i].meaning != nil {
			continue
		}
		for _, back := range []int{1, 2} {
			at := i - back
			if at < 0 || back == 2 && bounds[headingKey(r.columns[i-1].Heading)] == "" {
				break
			}
			for what, term := range map[string]string{"elevation": "ElevationInMeters", "depth": "DepthInMeters"} {
				if r.read[i].meaning == nil && bounds[headingKey(r.columns[at].Heading)] == "" && r.measures(at, what) && r.read[at].plain {
					r.read[i] = reading{meaning: &meaning{terms: []string{of + term}, plain: true}, unit: r.read[at].unit}
					if r.read[at].terms[0] == "minimumElevationInMeters" && of == "minimum" {
						r.read[at].meaning = &meaning{terms: []string{"verbatimElevation"}, plain: true}
					}
				}
			}
		}
	}
}

// measures reports whether column i holds heights or depths.
func (r *resolver) measures(i int, of string) bool {
	if r.read[i].meaning == nil {
		return false
	}
	term := strings.ToLower(r.read[i].terms[0])
	return measured(r.read[i].terms[0]) && strings.Contains(term, of)
}

// inUnit returns the term of a height or depth that is not in metres, or may
// not be, since a column beside it names the unit.
func (r *resolver) inUnit(i int, term string) string {
	read := r.read[i]
	for _, of := range []string{"elevation", "depth"} {
		foreign := read.unit == "feet" || read.unit == "fathoms"
		switch {
		case !r.measures(i, of):
		case !foreign && (read.unit != "" || !r.unitColumn[of] || !read.plain):
			if of == "depth" && term == "verbatimDepth" && read.unit == "metres" && read.plain {
				return "minimumDepthInMeters"
			}
		case strings.HasPrefix(term, "maximum"):
			return of + "To"
		default:
			return of + "From"
		}
	}
	return term
}
