package table

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
)

var (
	// degreeWord is a heading of latitude or longitude that may be of metres as well.
	degreeWord = regexp.MustCompile(`(?i)^(?:utm[ _.-]?)?(?:gps[ _.-]?)?(lat|latitude|latitud|lon|long|lng|longitude|longitud)\.?(?:[ _.-]*[(\[]?(?:m|utm|metres|meters|metros)\.?[)\]]?)?$`)
	// zoneCell is a zone of UTM, with its band or its side.
	zoneCell = regexp.MustCompile(`(?i)^(?:UTM)?[ _,-]*(?:zone|zona|fuso|huso)?[ _:-]*\d{1,2} ?[A-Z]?$`)
	// zoneHeading is a heading that may stand over the zones.
	zoneHeading = regexp.MustCompile(`(?i)^(utm|zone|projection|proj\.?|coordinate[ _.]?(reference[ _.]?)?system|coord[ _.]?system|grid|crs|proyecci[oó]n|proje[cç][aã]o|sistema)$`)
)

// metres reads columns headed as latitude and longitude as eastings and northings,
// where their cells are metres of a grid: no figure below them can be degrees.
func (t *Table) metres(r *resolver, rows []*Row) {
	axes := map[string]int{"latitude": -1, "longitude": -1}
	for i := range t.columns {
		c := &t.columns[i]
		m := degreeWord.FindStringSubmatch(strings.TrimSpace(c.Heading))
		if m == nil || c.group != nil || c.Known && (r.read[i].meaning == nil || !r.read[i].plain || !strings.HasPrefix(c.Term, "decimal")) {
			continue
		}
		axis := "latitude"
		if strings.HasPrefix(strings.ToLower(m[1]), "lo") || strings.EqualFold(m[1], "lng") {
			axis = "longitude"
		}
		if axes[axis] >= 0 {
			return // two of them
		}
		axes[axis] = i
	}
	lat, lon := axes["latitude"], axes["longitude"]
	for _, term := range []string{"easting", "northing"} {
		if r.has(term) {
			return
		}
	}
	if lat < 0 || lon < 0 || t.filledIn(rows, lat) < 3 || t.filledIn(rows, lon) < 3 || shareOf(rows, lat, isMetres) < 1 || shareOf(rows, lon, isMetres) < 1 {
		return
	}
	east, north := lon, lat
	if shareOf(rows, lat, isEasting) == 1 && shareOf(rows, lon, isEasting) < 0.5 {
		east, north = lat, lon
	}
	for _, i := range []int{lat, lon} {
		c := &t.columns[i]
		delete(r.taken, c.Term)
		delete(r.taken, c.Verbatim)
		c.Verbatim = ""
		t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
			return f.Rule == ruleHeadingRemark.Name && f.Origin.Line == c.Origin.Line && f.Origin.Column == c.Origin.Column
		})
	}
	r.read[east].meaning, r.read[north].meaning = &meaning{terms: []string{"easting"}, plain: true}, &meaning{terms: []string{"northing"}, plain: true}
	t.settle(r, east, "easting", "the easting, for its cells are metres")
	t.settle(r, north, "northing", "the northing, for its cells are metres")
	if r.has("utmZone") {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if !c.Known && c.group == nil && zoneHeading.MatchString(strings.TrimSpace(c.Heading)) && all(rows, i, zoneCell.MatchString) {
			r.read[i].meaning = &meaning{terms: []string{"utmZone"}, plain: true}
			t.settle(r, i, "utmZone", "the zone of UTM, for its cells are such")
			return
		}
	}
}

// isMetres reports whether a text is a figure that no degrees are, and grids have.
func isMetres(s string) bool {
	v, ok := bareFigure(s)
	return ok && v > 10000 && v < 1e7
}

// isEasting reports whether a figure can be an easting of UTM.
// Source: NGA.SIG.0012, the zones of UTM are less than 800 km wide about 500,000 m.
func isEasting(s string) bool {
	v, ok := bareFigure(s)
	return ok && v >= 100000 && v < 900000
}

// bareFigure reads a bare number.
func bareFigure(s string) (float64, bool) {
	s = strings.TrimSpace(s)
	if !bareNumber.MatchString(s) {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(s), 64)
	return v, err == nil
}
