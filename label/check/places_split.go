package check

import (
	"errors"
	"fmt"
	"strings"

	"cornerslip/label"
	"cornerslip/label/coord"
	"cornerslip/label/place"
)

// splitPlace is what the columns hold that share one place among them.
type splitPlace struct {
	lat, lon coord.Split
	grid     coord.SplitGrid
	survey   [6]Field // townshipRangeSection, township, range, section, quarterSection, surveyMeridian
	sheet    Field
}

// splitPlace gathers the cells of coordinates and surveys that are spread over
// columns; false if the record has none.
func (c *Context) splitPlace() (s splitPlace, some bool) {
	for i := range c.fields {
		e := &c.fields[i]
		known := true
		switch e.term {
		case "latitudeDegrees":
			s.lat.Degrees = e.Text
		case "latitudeMinutes":
			s.lat.Minutes = e.Text
		case "latitudeSeconds":
			s.lat.Seconds = e.Text
		case "latitudeHemisphere":
			s.lat.Hemisphere = e.Text
		case "longitudeDegrees":
			s.lon.Degrees = e.Text
		case "longitudeMinutes":
			s.lon.Minutes = e.Text
		case "longitudeSeconds":
			s.lon.Seconds = e.Text
		case "longitudeHemisphere":
			s.lon.Hemisphere = e.Text
		case "utmZone":
			s.grid.Zone = e.Text
		case "utmBand":
			s.grid.Band = e.Text
		case "gridSquare":
			s.grid.Square = e.Text
		case "easting":
			s.grid.Easting = e.Text
		case "northing":
			s.grid.Northing = e.Text
		case "townshipRangeSection":
			s.survey[0] = e.Field
		case "township":
			s.survey[1] = e.Field
		case "range":
			s.survey[2] = e.Field
		case "section":
			s.survey[3] = e.Field
		case "quarterSection":
			s.survey[4] = e.Field
		case "surveyMeridian":
			s.survey[5] = e.Field
		case "mapSheet":
			s.sheet = e.Field
		default:
			known = false
		}
		some = some || known
	}
	return s, some
}

// A source is one of the places that a record gives: its columns, what they
// say and how it was understood.
type source struct {
	latTerm, lonTerm string
	lat, lon         string
	coord.Reading
	// assumed says that the country alone tells the hemispheres.
	assumed bool
}

// onGrid reports whether it stands in the columns of a grid.
func (s *source) onGrid() bool {
	return s.latTerm == "northing" || s.latTerm == "easting" || s.latTerm == "gridSquare"
}

// splitDegrees reads degrees, minutes and seconds in columns of their own, or a
// hemisphere beside plain degrees; false if there are none.
func (c *Context) splitDegrees(s splitPlace, datum string) (source, bool) {
	if s.lat == (coord.Split{}) && s.lon == (coord.Split{}) {
		return source{}, false
	}
	var out source
	hemispheres := s.lat.Hemisphere != "" || s.lon.Hemisphere != ""
	out.latTerm = c.splitHalf(&s.lat, "latitudeDegrees", "decimalLatitude", "verbatimLatitude")
	out.lonTerm = c.splitHalf(&s.lon, "longitudeDegrees", "decimalLongitude", "verbatimLongitude")
	if out.latTerm != "latitudeDegrees" && out.lonTerm != "longitudeDegrees" && !hemispheres {
		return source{}, false // plain degrees, or none
	}
	if out.latTerm == "" && out.lonTerm == "" {
		return source{}, false
	}
	out.lat, out.lon = strings.TrimRight(spell(s.lat), " +-"), strings.TrimRight(spell(s.lon), " +-")
	if out.latTerm != "" && out.lonTerm != "" {
		out.Reading = coord.ReadSplit(s.lat, s.lon, coord.Hints{Datum: datum})
		c.settle(&out)
	}
	return out, true
}

// splitHalf fills the degrees of a half from another column where they have
// none of their own. It returns the term they stand in, "" if the half is not
// given: hemispheres are often filled in beforehand.
func (c *Context) splitHalf(s *coord.Split, own string, others ...string) string {
	if s.Degrees != "" || s.Minutes != "" || s.Seconds != "" {
		return own
	}
	var term string
	if term, s.Degrees = c.first(others...); term == "" {
		s.Hemisphere = ""
	}
	if s.Hemisphere == "" && strings.HasPrefix(term, "decimal") && isNumber(s.Degrees) {
		s.Hemisphere = "+" // a plain number of degrees means what it says
		if s.Degrees[0] == '-' {
			s.Hemisphere = "-"
		}
	}
	return term
}

// spell writes the cells of a half one behind the other, with the marks that
// their headings stand for.
func spell(s coord.Split) string {
	var b strings.Builder
	for i, p := range []string{s.Degrees, s.Minutes, s.Seconds} {
		if p == "" {
			continue
		}
		b.WriteString(p)
		if strings.Trim(p, "+-0123456789.,") == "" {
			b.WriteString([...]string{"°", "′", "″"}[i])
		}
	}
	if s.Hemisphere != "" {
		b.WriteString(" " + s.Hemisphere)
	}
	return strings.TrimSpace(b.String())
}

// splitGrid reads a grid reference in columns of its own; false if there is
// none. A hemisphere that stands beside degrees is none of the grid's.
func (c *Context) splitGrid(s splitPlace, datum string) (source, bool) {
	g := s.grid
	if g.Easting == "" && g.Northing == "" && g.Square == "" {
		return source{}, false
	}
	if s.lat.Degrees == "" && s.lon == (coord.Split{}) {
		g.Hemisphere = s.lat.Hemisphere
	}
	out := source{latTerm: "northing", lonTerm: "easting", lat: g.Northing, lon: g.Easting}
	switch {
	case g.Easting == "" && g.Northing == "":
		out.latTerm, out.lonTerm, out.lat, out.lon = "gridSquare", "gridSquare", g.Square, g.Square
	case g.Easting == "":
		out.lonTerm = "northing"
	case g.Northing == "":
		out.latTerm = "easting"
	}
	c.readSystem()
	system := c.Place.system
	system.UTM = system.UTM || c.row.Table().Index("utmZone") >= 0
	out.Reading = coord.ReadSplitGrid(g, coord.Hints{Datum: datum, System: system})
	c.settle(&out)
	return out, true
}

// spellGrid writes the cells of a grid reference as they stand.
func (c *Context) spellGrid(g coord.SplitGrid) string {
	var parts []string
	add := func(before, s string) {
		if s == "" {
			return
		}
		if strings.Trim(s, "+-0123456789., ") == "" {
			s = before + s
		}
		parts = append(parts, s)
	}
	add("zone\u00a0", g.Zone)
	add("", g.Band)
	add("", g.Square)
	// X is the northing of some grids: what the headings say stays.
	e, n := "E", "N"
	if x, y := letterOf(c.Heading("easting")), letterOf(c.Heading("northing")); g.Zone == "" && x != "" && y != "" {
		e, n = x, y
	}
	add(e+"\u00a0", g.Easting)
	add(n+"\u00a0", g.Northing)
	return strings.Join(parts, " ")
}

// nearCountry is how far from its country a place may lie by the errors of
// borders and a stay on the coast, in metres.
const nearCountry = 10e3

// settle takes the one reading of an ambiguous place that lies in the stated
// country, or on land where none is stated. It is assumed where common usage does not leave the choice open.
func (c *Context) settle(s *source) {
	if s.Status != coord.Ambiguous || len(s.Choices) == 0 {
		return
	}
	p, ok := c.inCountry(s.Choices)
	if !ok && s.BandS {
		p, ok = c.onLand(s.Choices)
	}
	if !ok {
		return
	}
	usual := s.Usual
	s.Reading = coord.Reading{Status: coord.OK, Point: p, HasLat: true, HasLon: true, More: s.More}
	s.assumed = !usual
}

// inCountry returns the one of several points that lies in the stated country
// or near it.
func (c *Context) inCountry(points []coord.Point) (coord.Point, bool) {
	country, ok := place.Country(c.Text("country"))
	if !ok {
		if country, ok = place.Country(c.Text("countryCode")); !ok {
			return coord.Point{}, false
		}
	}
	var found coord.Point
	n := 0
	for _, p := range points {
		if nearTo(country.Code, p, nearCountry+float64(p.Uncertainty())) {
			found = p
			n++
		}
	}
	return found, n == 1
}

// offLand is how far from all land a place is none of a plant's, in metres.
const offLand = 50e3

// onLand returns the one of several points that does not lie in the open sea, where
// no country tells: 10S is the band of California, for south of the equator that zone
// has no land.
func (c *Context) onLand(points []coord.Point) (coord.Point, bool) {
	if c.Text("waterBody") != "" || c.Text("country") != "" || c.Text("countryCode") != "" {
		return coord.Point{}, false
	}
	var found coord.Point
	n := 0
	for _, p := range points {
		if !place.OffCoast(p.Lat.Degrees(), p.Lon.Degrees(), offLand) {
			found = p
			n++
		}
	}
	return found, n == 1
}

// cellTerm is the column in which a reading's fault is to be mended.
func (s *source) cellTerm(c *Context) string {
	var e *coord.CellError
	if !errors.As(s.Err, &e) {
		return s.latTerm
	}
	half, degrees := "latitude", s.latTerm
	if e.Longitude {
		half, degrees = "longitude", s.lonTerm
	}
	switch e.Cell {
	case coord.CellDegrees:
		return degrees
	case coord.CellMinutes:
		return half + "Minutes"
	case coord.CellSeconds:
		return half + "Seconds"
	case coord.CellHemisphere:
		// A hemisphere that is missing is missed where the figures stand, if
		// the table has no column for it.
		if t := half + "Hemisphere"; c.row.Table().Index(t) >= 0 {
			return t
		}
		if s.latTerm == "northing" {
			return s.has(c, "utmZone")
		}
		return degrees
	case coord.CellZone:
		return s.has(c, "utmZone")
	case coord.CellBand:
		return s.has(c, "utmBand")
	case coord.CellSquare:
		return s.has(c, "gridSquare")
	case coord.CellEasting:
		return s.has(c, "easting")
	}
	return s.has(c, "northing")
}

// has returns the term if the table has the column, else where the latitude
// stands.
func (s *source) has(c *Context, term string) string {
	if c.row.Table().Index(term) >= 0 {
		return term
	}
	return s.latTerm
}

// splitTerms are the columns that share one place among them.
var splitTerms = []string{
	"latitudeDegrees", "latitudeMinutes", "latitudeSeconds", "latitudeHemisphere",
	"longitudeDegrees", "longitudeMinutes", "longitudeSeconds", "longitudeHemisphere",
	"utmZone", "utmBand", "easting", "northing", "gridSquare",
}

// splitRules are about places that are spread over columns.
func splitRules() []Rule {
	apart := func(pairs ...string) []map[string]string {
		return one(append([]string{"decimalLatitude", "", "decimalLongitude", "", "latitudeDegrees", "38", "latitudeMinutes", "28", "latitudeSeconds", "16", "latitudeHemisphere", "N",
			"longitudeDegrees", "8", "longitudeMinutes", "48", "longitudeSeconds", "13", "longitudeHemisphere", "W"}, pairs...)...)
	}
	return []Rule{
		{
			Name: "coordinates-parts", Severity: label.Error, Source: practice,
			Doc:     "coordinates spread over columns that make no place: a part is missing, is no number or runs beyond 59, or the hemisphere is not said",
			Terms:   splitTerms,
			Example: apart("latitudeMinutes", "72"), Counterexample: apart("latitudeSeconds", "", "longitudeSeconds", ""),
			Row: func(c *Context) {
				if s := &c.Place.split; s.Err != nil && !s.Local && (!s.onGrid() || s.Status == coord.Invalid) {
					t := s.cellTerm(c)
					if c.Doubted(t) { // damaged letters are named already
						c.hold()
						return
					}
					c.Once(t, reason(s.Err, c.Text(t)), "", "parts: "+s.Err.Error())
				}
			},
		},
		{
			Name: "coordinates-hemisphere", Severity: label.Warning, Source: practice,
			Doc:     "coordinates spread over columns that do not say their hemisphere, where one alone lies in the stated country",
			Terms:   splitTerms,
			Example: apart("longitudeHemisphere", ""), Counterexample: apart("longitudeHemisphere", "", "longitudeDegrees", "-8"),
			Row: func(c *Context) {
				s := &c.Place.split
				if !s.assumed {
					return
				}
				ns, ew := "N", "E"
				if s.Point.Lat < 0 {
					ns = "S"
				}
				if s.Point.Lon < 0 {
					ew = "W"
				}
				t := s.lonTerm
				if c.Text("latitudeHemisphere") == "" && !strings.HasPrefix(c.Text(s.latTerm), "-") {
					t = s.latTerm
				}
				c.Once(t, fmt.Sprintf("no hemisphere is written: printed %s and %s, since no other place with these figures lies in %s", ns, ew, c.countryText()), "", "hemisphere "+ns+ew)
			},
		},
		{
			Name: "coordinates-columns", Severity: label.Error, Source: practice,
			Doc:     "a place given twice, in degrees and in columns of degrees, minutes and seconds or of a grid, that lies farther apart than rounding, uncertainty and a change of datum explain",
			Terms:   splitTerms,
			Example: apart("decimalLatitude", "38.5712", "decimalLongitude", "-8.8035"), Counterexample: apart("decimalLatitude", "38.4711", "decimalLongitude", "-8.8036"),
			Row: func(c *Context) {
				for i := range c.Place.beside {
					c.compare(&c.Place.beside[i], true)
				}
			},
		},
		{
			Name: "survey-section", Severity: label.Warning, Source: "Bureau of Land Management, Manual of Surveying Instructions (36 sections to a township), from memory",
			Doc:     "a section beyond 36, of which a township has no more",
			Terms:   []string{"section", "townshipRangeSection"},
			Example: one("townshipRangeSection", "T13N R19W Sec. 46"), Counterexample: one("townshipRangeSection", "T13N R19W Sec. 36"),
			Row: sectionRule,
		},
	}
}

func (c *Context) countryText() string {
	_, s := c.first("country", "countryCode")
	return s
}

// readTwice is how far two readings of one place may lie apart, in metres, that
// a map and a receiver gave, or one receiver at two moments.
const readTwice = 100

// compare holds a second place against the one that is printed: wrong by more
// than a change of datum may do, or else, where the datum is known to be none of
// old, by more than rounding does.
func (c *Context) compare(s *source, wrong bool) {
	p := &c.Place
	if p.Status != coord.OK && !p.Local || s.Status != coord.OK && !s.Local {
		return
	}
	rounding := float64(p.Point.Uncertainty()+s.Point.Uncertainty()) + c.Uncertainty + 1
	if s.onGrid() || p.split.onGrid() {
		rounding += readTwice
	}
	apart := distanceMetres(p.Point, s.Point)
	if beyond := apart > rounding+slack; beyond != wrong || !wrong && (apart <= rounding || !coord.SameGround(c.Datum)) {
		return
	}
	c.Once(s.latTerm, fmt.Sprintf("%s lies %s from the place in the other columns, %s: correct the wrong one", s.text(), far(apart), p.text()), "", "apart")
}

func (s *source) text() string {
	if s.latTerm == s.lonTerm || s.lon == "" {
		return s.lat
	}
	return strings.TrimPrefix(s.lat+", "+s.lon, ", ")
}

func (p *PlaceReading) text() string {
	if p.LatTerm == p.LonTerm {
		return p.Lat
	}
	return p.Lat + ", " + p.Lon
}
