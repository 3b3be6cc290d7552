package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/coord"
)

// A PlaceReading is how the coordinates of the record were understood.
type PlaceReading struct {
	// LatTerm and LonTerm are the columns they were read from, the same for
	// both where they stand in one cell; "" if that half is not given.
	LatTerm, LonTerm string
	Lat, Lon         string // as written
	// Decimal is true where both stand in decimalLatitude and
	// decimalLongitude.
	Decimal bool
	coord.Reading
	// Verbatim is the reading of the verbatim columns beside decimal ones;
	// its Status is "" if there are none.
	Verbatim     coord.Reading
	VerbatimTerm string

	// system is what columns beside metres say of them, and systemName the
	// name of the grid as the label prints it.
	system     coord.System
	systemName string

	// split is what columns that share one place among them say, if that is
	// printed; beside are further places that the record gives.
	split  source
	beside []source
}

// given reports whether anything is written at all.
func (p *PlaceReading) given() bool { return p.LatTerm != "" || p.LonTerm != "" }

// readPlace reads coordinates, datum and uncertainty. A half may stand in a
// decimal and the other in a verbatim column, as the words lat and long give
// it.
func (c *Context) readPlace() {
	p := &c.Place
	_, c.Datum = c.first("geodeticDatum", "verbatimSRS")
	if unrecorded(c.Datum) {
		c.Datum = ""
	}
	p.LatTerm, p.Lat = c.first("decimalLatitude", "verbatimLatitude")
	p.LonTerm, p.Lon = c.first("decimalLongitude", "verbatimLongitude")
	p.Decimal = p.LatTerm == "decimalLatitude" && p.LonTerm == "decimalLongitude"
	whole := c.Text("verbatimCoordinates")
	hints := coord.Hints{Datum: c.Datum}
	if split, ok := c.splitPlace(); !ok || !c.readSplitPlace(split) {
		switch {
		case p.Decimal:
			p.Reading = c.readDecimal(p.Lat, p.Lon)
			p.VerbatimTerm, p.Verbatim = c.readVerbatim(whole)
		case p.LatTerm != "" && p.LonTerm != "":
			hints.Signed = p.LatTerm == "decimalLatitude" || p.LonTerm == "decimalLongitude"
			p.Reading = c.settled(p.Lat, p.Lon, hints)
		case whole != "" && p.LatTerm != "decimalLatitude" && p.LonTerm != "decimalLongitude":
			p.LatTerm, p.LonTerm, p.Lat, p.Lon = "verbatimCoordinates", "verbatimCoordinates", whole, whole
			p.Reading = c.settled(whole, "", hints)
		}
	}
	switch {
	case p.Status == coord.OK || p.Local:
		c.Coordinates, c.HasCoordinates = p.Point, true
		if p.More {
			c.CoordinatesWritten = p.text()
		}
	case p.split.latTerm != "" || p.split.lonTerm != "":
		c.CoordinatesText = c.withSystem(p.split.text(), p.split.Reading)
		// A square's letters alone say no system.
		if p.split.latTerm == "gridSquare" && strings.Contains(strings.ToUpper(c.Heading("gridSquare")), "UTM") && !strings.Contains(strings.ToUpper(c.CoordinatesText), "UTM") {
			c.CoordinatesText = "UTM\u00a0" + c.CoordinatesText
		}
	case p.LatTerm == p.LonTerm:
		c.CoordinatesText = c.withSystem(p.Lat, p.Reading)
	case p.given():
		c.CoordinatesText = c.withSystem(strings.TrimPrefix(strings.TrimSuffix(p.Lat+", "+p.Lon, ", "), ", "), p.Reading)
	}
	if c.Datum == "" {
		c.Datum = c.Coordinates.Datum
	}
	if unrecorded(c.Datum) {
		c.Datum = ""
	}
	c.Uncertainty, _, _ = parseUncertainty(c.Text("coordinateUncertaintyInMeters"))
}

// readSplitPlace reads a place that columns share. It answers false where they
// have none that is printed, and then another column's is read.
func (c *Context) readSplitPlace(split splitPlace) bool {
	p := &c.Place
	c.readSurvey(split)
	degrees, hasDegrees := c.splitDegrees(split, c.Datum)
	grid, hasGrid := c.splitGrid(split, c.Datum)
	plain := p.Decimal && degrees.latTerm == "decimalLatitude" && degrees.lonTerm == "decimalLongitude"
	verbatim := p.LatTerm != "" && p.LonTerm != "" || c.Text("verbatimCoordinates") != ""
	take := func(s source) {
		p.LatTerm, p.LonTerm, p.Lat, p.Lon, p.Decimal = s.latTerm, s.lonTerm, s.lat, s.lon, false
		p.Reading, p.split = s.Reading, s
		if s.latTerm == s.lonTerm && hasGrid && s.latTerm == grid.latTerm {
			p.split.lat, p.split.lon = c.spellGrid(split.grid), ""
		}
	}
	switch {
	case hasDegrees && (plain || !p.Decimal):
		take(degrees)
		if hasGrid {
			p.beside = append(p.beside, grid)
		}
		return true
	case p.Decimal || verbatim:
		if hasDegrees {
			p.beside = append(p.beside, degrees)
		}
		if hasGrid {
			p.beside = append(p.beside, grid)
		}
	case hasGrid:
		take(grid)
		p.split.lat, p.split.lon = c.spellGrid(split.grid), ""
		return true
	}
	return false
}

// first returns the first of two columns that is filled, and its text.
func (c *Context) first(terms ...string) (term, text string) {
	for _, t := range terms {
		if s := c.Text(t); s != "" {
			return t, s
		}
	}
	return "", ""
}

// readDecimal reads decimal columns. Other notations in them are read too: a
// table that has but these two columns puts everything there.
func (c *Context) readDecimal(lat, lon string) coord.Reading {
	pt, err := coord.FromDecimal(lat, lon)
	if err == nil {
		return coord.Reading{Status: coord.OK, Point: pt, HasLat: true, HasLon: true}
	}
	if isNumber(lat) && isNumber(lon) {
		return coord.Reading{Status: coord.Invalid, Err: err}
	}
	return coord.ReadPair(lat, lon, coord.Hints{Signed: true})
}

// readVerbatim reads the verbatim columns that stand beside decimal ones.
func (c *Context) readVerbatim(whole string) (string, coord.Reading) {
	if whole != "" {
		return "verbatimCoordinates", c.settled(whole, "", coord.Hints{Datum: c.Datum})
	}
	lat, lon := c.Text("verbatimLatitude"), c.Text("verbatimLongitude")
	if lat == "" || lon == "" {
		return "", coord.Reading{}
	}
	return "verbatimLatitude", c.settled(lat, lon, coord.Hints{Datum: c.Datum})
}

// isNumber reports whether s is a plain number in figures with a decimal
// point, in range or not.
func isNumber(s string) bool {
	s = strings.TrimPrefix(strings.TrimPrefix(s, "-"), "+")
	point := -1
	for i := range len(s) {
		if s[i] == '.' && point < 0 {
			point = i
		} else if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != "" && point != 0 && point != len(s)-1
}

// unrecorded reports whether a datum says that it is not known, in the words
// of the standard's test or in the trade's.
func unrecorded(datum string) bool {
	for _, words := range [...]string{"not recorded", "unknown", "not stated", "not given"} {
		if strings.EqualFold(datum, words) {
			return true
		}
	}
	return false
}

// maxUncertainty is half the circumference of the earth in metres: no place is
// farther from any other.
const maxUncertainty = 20037509

// parseUncertainty reads metres; 0 for an empty text. Plain is the number as
// Darwin Core writes it, where the text has a unit, a sign before it or a
// decimal comma; "" if the text is that number. The error says what to do.
func parseUncertainty(text string) (v float64, plain string, err error) {
	if text == "" {
		return 0, "", nil
	}
	number := text
	if !isNumber(text) {
		m, ok := metres(text)
		if !ok || !isNumber(m) {
			return 0, "", fmt.Errorf("not a number of metres: write it in figures alone")
		}
		number, plain = m, m
	}
	v, _ = strconv.ParseFloat(number, 64) // a number too large is beyond the limit
	switch {
	case v == 0:
		return 0, "", fmt.Errorf("0 says that the place is known without any error: write how many metres it may be off, or leave it empty")
	case v < 0:
		return 0, "", fmt.Errorf("negative: write how many metres the place may be off")
	case v > maxUncertainty:
		return 0, "", fmt.Errorf("more than 20037509 m, half the way round the earth")
	}
	return v, plain, nil
}

// metres takes a unit off a number: "30 m" is 30, "1,5 km" 1500.
func metres(text string) (string, bool) {
	s := strings.ToLower(strings.TrimSpace(text))
	factor := 1.0
	for _, u := range []struct {
		unit   string
		factor float64
	}{{"km", 1000}, {"metres", 1}, {"meters", 1}, {"metros", 1}, {"feet", 0.3048}, {"ft.", 0.3048}, {"ft", 0.3048}, {"m.", 1}, {"m", 1}, {"", 1}} {
		if t, ok := strings.CutSuffix(s, u.unit); ok {
			s, factor = strings.TrimSpace(t), u.factor
			break
		}
	}
	s = strings.TrimSpace(strings.TrimLeft(s, "±+~<≤ca. "))
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		if i := strings.Index(s, ","); len(s)-i-1 == 3 && i > 0 {
			return "", false // 1,500 is either
		}
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return "", false
	}
	v *= factor
	if factor < 1 {
		v = math.Round(v)
	}
	return strconv.FormatFloat(v, 'f', -1, 64), true
}

// coordinateRules are about coordinates, datum and uncertainty.
func coordinateRules() []Rule {
	decimals := []string{"decimalLatitude", "decimalLongitude"}
	all := append(decimals, "verbatimLatitude", "verbatimLongitude", "verbatimCoordinates")
	return []Rule{
		{
			Name: "coordinates-half", Severity: label.Error, Source: practice,
			Doc:     "a latitude without a longitude, or the other way round",
			Terms:   all,
			Example: one("decimalLongitude", ""), Counterexample: one("decimalLatitude", "", "decimalLongitude", ""),
			Row: halfRule,
		},
		{
			Name: "coordinates-range", Severity: label.Error, Source: bdqCore + " (VALIDATION_DECIMALLATITUDE_INRANGE, VALIDATION_DECIMALLONGITUDE_INRANGE)",
			Doc:     "a latitude beyond 90° or a longitude beyond 180°",
			Terms:   decimals,
			Example: one("decimalLatitude", "95.2"), Counterexample: one("country", "", "decimalLatitude", "-90", "decimalLongitude", "180"),
			Row: rangeRule,
		},
		{
			Name: "coordinates-unreadable", Severity: label.Error, Source: darwin + " (decimalLatitude, decimalLongitude)",
			Doc:     "coordinates that are none, or of no place on earth",
			Terms:   all,
			Example: one("decimalLatitude", "north"), Counterexample: one("decimalLatitude", "38°28.3'N", "decimalLongitude", "8°48.2'W"),
			Row: unreadableRule,
		},
		{
			Name: "coordinates-verbatim", Severity: label.Warning, Source: darwin + " (verbatimCoordinates)",
			Doc:     "only verbatim coordinates are given and they have no one reading; the label prints them as written",
			Terms:   all,
			Example: one("decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "38°28'N 8°48'"), Counterexample: one("decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "T35N, R3E, S22"),
			Row: func(c *Context) {
				p := &c.Place
				if s := &p.split; s.latTerm != "" {
					// A zone that no column gives is said of the heading.
					if t := s.cellTerm(c); s.onGrid() && s.Err != nil && !s.Local && s.Status != coord.Invalid && s.Status != coord.OK && !s.Foreign && !c.squareKnown(s.lat) {
						c.Report(t, reason(s.Err, c.Text(t))+"; printed as written")
						if t := "utmZone"; c.row.Table().Index(t) < 0 {
							c.cause("grid: " + s.Err.Error()) // one for the columns
						}
					}
					return
				}
				if p.Local || p.Foreign || c.Doubted(p.LatTerm, p.LonTerm) || c.squareKnown(p.Lat) {
					return
				}
				if !p.Decimal && p.LatTerm == p.LonTerm || strings.HasPrefix(p.LatTerm, "verbatim") && strings.HasPrefix(p.LonTerm, "verbatim") {
					if p.Status == coord.Ambiguous || p.Status == coord.NotConvertible {
						term := p.LatTerm
						if p.LatTerm != p.LonTerm {
							term = worse(p)
						}
						c.Report(term, reason(p.Err, c.Text(term))+"; printed as written")
					}
				}
			},
		},
		{
			Name: "coordinates-disagree", Severity: label.Warning, Source: practice,
			Doc:     "decimal and verbatim coordinates lie farther apart than their precision, stated uncertainty and a change of datum explain; those in columns of degrees, minutes and seconds farther than rounding does",
			Terms:   all,
			Example: one("verbatimCoordinates", "38°38'16\"N 8°48'13\"W"), Counterexample: one("verbatimCoordinates", "38°28'16\"N 8°48'13\"W"),
			Row: disagreeRule,
		},
		{
			Name: "datum-missing", Severity: label.Warning, Source: "Georeferencing Best Practices, doi 10.15468/doc-gg7h-s853; Florida Museum, voucher guidelines",
			Doc:     "coordinates without their datum may be off by up to 5,359 m",
			Terms:   []string{"geodeticDatum"},
			Example: one("geodeticDatum", ""), Counterexample: one("geodeticDatum", "", "verbatimSRS", "ED50"),
			Row: func(c *Context) {
				if c.HasCoordinates && c.Datum == "" && c.blank("geodeticDatum") && c.blank("verbatimSRS") {
					c.Report("geodeticDatum", `no datum is given for the coordinates: write what the receiver was set to, as in "WGS84", or "not recorded"`)
				}
			},
		},
		{
			Name: "uncertainty", Severity: label.Error, Source: bdqCore + " (VALIDATION_COORDINATEUNCERTAINTY_INRANGE); " + darwin,
			Doc:     "the uncertainty of coordinates is a number of metres above 0 and up to 20037509",
			Terms:   []string{"coordinateUncertaintyInMeters"},
			Example: one("coordinateUncertaintyInMeters", "0"), Counterexample: one("coordinateUncertaintyInMeters", "20037509"),
			Row: func(c *Context) {
				if _, _, err := parseUncertainty(c.Text("coordinateUncertaintyInMeters")); err != nil {
					c.Report("coordinateUncertaintyInMeters", err.Error())
				}
			},
		},
		{
			Name: "uncertainty-form", Severity: label.Note, Source: darwin + " (coordinateUncertaintyInMeters)",
			Doc:     "an uncertainty that is a number of metres, but not in figures with a decimal point alone: it is read and printed, other programs may not read it",
			Terms:   []string{"coordinateUncertaintyInMeters"},
			Example: one("coordinateUncertaintyInMeters", "9,1"), Counterexample: one("coordinateUncertaintyInMeters", "9.1"),
			Row: func(c *Context) {
				if _, plain, err := parseUncertainty(c.Text("coordinateUncertaintyInMeters")); err == nil && plain != "" {
					c.Suggest("coordinateUncertaintyInMeters", "read as metres: other programs ask for figures alone", plain)
					c.cause("form")
				}
			},
		},
	}
}

// degrees reads a decimal column that is a number.
func degrees(s string) (float64, bool) {
	if !isNumber(s) {
		return 0, false
	}
	v, _ := strconv.ParseFloat(s, 64) // a number too large is beyond any limit
	return v, true
}

func halfRule(c *Context) {
	p := &c.Place
	if p.split.latTerm != "" && p.split.onGrid() {
		return // the reading says it
	}
	switch {
	case p.LatTerm != "" && p.LonTerm == "":
		c.Report(otherHalf(p.LatTerm), "the longitude is missing: fill it in, or clear the latitude")
	case p.LatTerm == "" && p.LonTerm != "":
		c.Report(otherHalf(p.LonTerm), "the latitude is missing: fill it in, or clear the longitude")
	}
}

// otherHalf is the term of the longitude for one of the latitude, and the other
// way round.
func otherHalf(term string) string {
	return strings.NewReplacer("Latitude", "Longitude", "Longitude", "Latitude", "latitude", "longitude", "longitude", "latitude").Replace(term)
}

func unreadableRule(c *Context) {
	p := &c.Place
	if p.LatTerm == "" || p.LonTerm == "" || p.Status == coord.OK || p.Local || p.split.latTerm != "" {
		return
	}
	if isNumber(p.Lat) && isNumber(p.Lon) && p.Decimal {
		return // beyond its limit: another rule
	}
	verbatim := strings.HasPrefix(p.LatTerm, "verbatim") && strings.HasPrefix(p.LonTerm, "verbatim")
	if verbatim && p.Status != coord.Invalid {
		return
	}
	term := worse(p)
	if c.Doubted(term) { // damaged letters are named already
		c.hold()
		return
	}
	if p.Decimal {
		for _, t := range []string{p.LatTerm, p.LonTerm} {
			if s := figured(t, c.Text(t)); s != c.Text(t) && isNumber(s) {
				c.Suggest(t, "a letter stands where a figure is meant", s)
				return
			}
		}
	}
	if text := c.Text(term); p.Decimal && (strings.Trim(text, "+-0123456789., ") == "" || !strings.ContainsAny(text, "0123456789")) {
		c.Report(term, "not a plain number of degrees: write it as 41.2345, south and west with a minus sign")
		return
	}
	c.Report(term, reason(p.Err, c.Text(term)))
}

// figured puts figures for the letters that are mistaken for them on old
// typewriters and by programs that read print: O for 0, l and I for 1. At an
// end of a longitude the O may be the west.
func figured(term, s string) string {
	if term == "decimalLongitude" && strings.Trim(s, "Oo") != s {
		return s
	}
	if strings.ContainsFunc(s, unicode.IsLetter) && strings.ContainsAny(s, "0123456789") {
		return strings.NewReplacer("O", "0", "o", "0", "l", "1", "I", "1").Replace(s)
	}
	return s
}

// worse returns the term of the half that the fault is in, as far as one can
// tell: the one that is no plain number, else the longitude where the latitude
// alone can be read.
func worse(p *PlaceReading) string {
	if p.LatTerm != p.LonTerm && isNumber(p.Lat) != isNumber(p.Lon) {
		if isNumber(p.Lat) {
			return p.LonTerm
		}
		return p.LatTerm
	}
	if p.LatTerm != p.LonTerm && (isNumber(p.Lat) || !isNumber(p.Lon)) && coord.ReadPair(p.Lat, "0°E", coord.Hints{Signed: true}).Status == coord.OK {
		return p.LonTerm
	}
	return p.LatTerm
}

// slack is the distance in metres that a change between the usual datums may
// move a point in Europe and America; more is a slip of the keyboard.
const slack = 500

func disagreeRule(c *Context) {
	p := &c.Place
	for i := range p.beside {
		c.compare(&p.beside[i], false)
	}
	if p.Status != coord.OK || p.Verbatim.Status != coord.OK && !p.Verbatim.Local {
		return
	}
	apart := distanceMetres(p.Point, p.Verbatim.Point)
	if apart > float64(p.Point.Uncertainty()+p.Verbatim.Point.Uncertainty())+c.Uncertainty+slack {
		c.Once(p.VerbatimTerm, fmt.Sprintf("lies %s from the decimal coordinates %s, %s: correct the wrong one",
			far(apart), p.Lat, p.Lon), "", "apart")
	}
}

// far writes a distance in the unit that fits.
func far(m float64) string {
	if m < 950 {
		return strconv.FormatFloat(math.Round(m/10)*10, 'f', 0, 64) + " m"
	}
	if m < 9950 {
		return strconv.FormatFloat(math.Round(m/100)/10, 'f', 1, 64) + " km"
	}
	return strconv.FormatFloat(math.Round(m/1000), 'f', 0, 64) + " km"
}

// distanceMetres is the great-circle distance on a sphere of the earth's mean
// radius, right to 0.6 %.
func distanceMetres(a, b coord.Point) float64 {
	const radius, rad = 6371008.8, math.Pi / 180
	la, lb := a.Lat.Degrees()*rad, b.Lat.Degrees()*rad
	s, t := math.Sin((lb-la)/2), math.Sin((b.Lon.Degrees()-a.Lon.Degrees())*rad/2)
	return 2 * radius * math.Asin(math.Min(1, math.Sqrt(s*s+math.Cos(la)*math.Cos(lb)*t*t)))
}
