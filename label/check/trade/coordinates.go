package trade

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
)

var coordinateTerms = []string{"decimalLatitude", "decimalLongitude", "verbatimLatitude", "verbatimLongitude", "verbatimCoordinates"}

// placeRules are about where the coordinates lie.
func placeRules(where *finder) []check.Rule {
	says := func(name string, severity label.Severity, source, doc string, f fault, example, counterexample []map[string]string) check.Rule {
		return check.Rule{
			Name: name, Severity: severity, Source: source, Doc: doc, Terms: coordinateTerms, Example: example, Counterexample: counterexample,
			Row: func(c *check.Context) {
				if v := where.verdict(c); v.fault == f {
					c.Suggest(v.term, v.message, v.suggest)
				}
			},
		}
	}
	return []check.Rule{
		{
			Name: "coordinates-zero", Severity: label.Error, Source: positions + "; TDWG Biodiversity Data Quality Core (VALIDATION_COORDINATES_NOTZERO)",
			Doc: "coordinates 0, 0, which programs write for what they do not know", Terms: coordinateTerms,
			Example: one("decimalLatitude", "0", "decimalLongitude", "0"), Counterexample: one("country", "Uganda", "stateProvince", "", "decimalLatitude", "0", "decimalLongitude", "32.4712", "minimumElevationInMeters", "1150"),
			Row: func(c *check.Context) {
				if where.verdict(c).fault == zero {
					c.Report(c.Place.LatTerm, "0, 0 is what programs write for a place that is not known: clear both cells, or write the coordinates")
				}
			},
		},
		says("coordinates-swapped", label.Warning, "TDWG Biodiversity Data Quality Core (AMENDMENT_COORDINATES_TRANSPOSED)",
			"coordinates that lie in the stated country only with latitude and longitude exchanged", swapped,
			one("decimalLatitude", "-8.8035", "decimalLongitude", "38.4712"), one("country", "Tanzania", "stateProvince", "", "decimalLatitude", "-8.8035", "decimalLongitude", "38.4712")),
		says("coordinates-sign", label.Warning, "TDWG Biodiversity Data Quality Core (AMENDMENT_COORDINATES_TRANSPOSED)",
			"coordinates that lie in the stated country only with another sign: west and south take a minus", wrongSign,
			one("decimalLongitude", "8.8035"), one("country", "Brazil", "stateProvince", "", "decimalLatitude", "-3.4712", "decimalLongitude", "-60.8035")),
		says("coordinates-country", label.Warning, positions+"; borders: @rapideditor/country-coder 5.6.1",
			"coordinates that lie in another country than stated, farther from it, and from land that it claims or once held, than uncertainty, precision and the border's own error explain", elsewhere,
			one("country", "Spain", "stateProvince", ""), one("country", "Spain", "stateProvince", "", "decimalLatitude", "38.0012", "decimalLongitude", "-7.2500")),
		says("coordinates-sea", label.Warning, positions+"; coasts: Natural Earth 1:10,000,000, @rapideditor/country-coder 5.6.1",
			"coordinates in the open sea, farther from any coast than uncertainty and precision explain, of a record that says nothing of the sea", atSea,
			one("decimalLongitude", "-12.8035"), one("decimalLongitude", "-12.8035", "waterBody", "Atlantic Ocean")),
		{
			Name: "coordinates-obscured", Severity: label.Warning, Source: "iNaturalist, What is geoprivacy? What does it mean for an observation to be obscured?",
			Doc: "coordinates that a site of observations moved to keep the place secret, by its column coordinates_obscured", Terms: coordinateTerms,
			Example: one("coordinates_obscured", "true"), Counterexample: one("coordinates_obscured", "false"),
			Row: func(c *check.Context) {
				if strings.EqualFold(strings.TrimSpace(c.Text("coordinates_obscured")), "true") && c.Text("decimalLatitude") != "" {
					c.Report("decimalLatitude", "not where it grew: the site moved the point, by up to some 30 km, to keep the place secret (coordinates_obscured): write the true coordinates, which the observer's own table has in private_latitude and private_longitude, or clear these")
				}
			},
		},
		{
			Name: "coordinates-equal", Severity: label.Warning, Source: positions,
			Doc: "a latitude that repeats the longitude, figure for figure", Terms: coordinateTerms,
			Example:        one("country", "Turkey", "stateProvince", "", "decimalLatitude", "38.4712", "decimalLongitude", "38.4712", "minimumElevationInMeters", "1150"),
			Counterexample: one("country", "Turkey", "stateProvince", "", "decimalLatitude", "38.4712", "decimalLongitude", "38.4711", "minimumElevationInMeters", "1150"),
			Row: func(c *check.Context) {
				if where.verdict(c).fault == equal {
					c.Reportf(c.Place.LatTerm, "the same figures as the longitude, %s: one was copied over the other", c.Place.Lon)
				}
			},
		},
		{
			Name: "coordinates-centre", Severity: label.Warning, Source: positions + "; places: The World Factbook",
			Doc: "coordinates that are the ones published for a whole country or its capital", Terms: coordinateTerms,
			Example: one("stateProvince", "", "decimalLatitude", "39.5", "decimalLongitude", "-8.0", "coordinateUncertaintyInMeters", ""), Counterexample: one("stateProvince", "", "decimalLatitude", "39.51", "decimalLongitude", "-8.01", "coordinateUncertaintyInMeters", ""),
			Row: func(c *check.Context) { centreRule(where, c) },
		},
		{
			Name: "country-code", Severity: label.Warning, Source: "TDWG Biodiversity Data Quality Core (VALIDATION_COUNTRYCOUNTRYCODE_CONSISTENT)",
			Doc: "a code of another country than the one that is written out", Terms: []string{"countryCode"},
			Example: one("countryCode", "DE"), Counterexample: one("country", "France", "countryCode", "RE", "stateProvince", "", "decimalLatitude", "-21.1212", "decimalLongitude", "55.5312"),
			Row: func(c *check.Context) { where.codeRule(c) },
		},
		{
			Name: "band-letter", Severity: label.Warning, Source: "NGA.STND.0037 (the letters of the grid's bands)",
			Doc: "a grid reference whose band letter does not hold its latitude", Terms: []string{"verbatimCoordinates"},
			Example: one("verbatimCoordinates", "29P 517137 4258153"), Counterexample: one("verbatimCoordinates", "29S 517137 4258153"),
			Row: bandRule,
		},
		{
			Name: "coordinates-minutes", Severity: label.Warning, Source: "speciesLink data cleaning (decimals never above .60)",
			Doc:            "coordinates of a whole table whose decimals stop short of .60 degree after degree: minutes typed as decimals",
			Terms:          []string{"decimalLatitude", "decimalLongitude"},
			Example:        minutesExample(1),
			Counterexample: minutesExample(100.0 / 60),
			Table:          func() check.TableRule { return &minutesTable{} },
		},
		sharedRule(),
		filledRule(),
		apartRule(),
	}
}

// centreReach is how far from the published place coordinates may lie, in
// degrees: a minute's figures, rounded.
const centreReach = 0.00006

func centreRule(where *finder, c *check.Context) {
	v := where.verdict(c)
	if !c.HasCoordinates || v.fault != none || len(v.here) == 0 || c.Uncertainty >= 2000 {
		return
	}
	code := v.here[0]
	for _, h := range v.here {
		if slices.Contains(v.codes, h) {
			code = h
			break
		}
	}
	known, ok := countries()[code]
	if !ok || known.tiny() {
		return
	}
	lat, lon := c.Coordinates.Lat.Degrees(), c.Coordinates.Lon.Degrees()
	near := func(p degrees) bool {
		return math.Abs(lat-p.lat) <= centreReach && math.Abs(lon-p.lon) <= centreReach
	}
	const do = "write where the plant grew, or how far off this may be in coordinateUncertaintyInMeters"
	switch {
	case known.hasCentre && near(known.centre):
		c.Reportf(c.Place.LatTerm, "%s is the place published for the whole of %s: %s", written(c), nameOf(code), do)
	case known.hasCapital && near(known.capital) && c.Coordinates.Step() < coord.Degree/100:
		// In whole minutes, or hundredths of a degree, a place in the capital
		// says what it knows.
		c.Reportf(c.Place.LatTerm, "%s is the place published for the capital of %s: %s", written(c), nameOf(code), do)
	}
}

// zoneLetter finds zone and letter at the head of a grid reference.
var zoneLetter = regexp.MustCompile(`^(?i:utm\s*)?([0-9]{1,2})\s?([C-HJ-NP-X])\b`)

const bandLetters = "CDEFGHJKLMNPQRSTUVWX"

// bandRule holds a band letter against the decimal latitude beside it. Where
// there is none, reading the reference finds the fault.
func bandRule(c *check.Context) {
	text := c.Text("verbatimCoordinates")
	if text == "" || !c.Place.Decimal || !c.HasCoordinates {
		return
	}
	m := zoneLetter.FindStringSubmatchIndex(text)
	if m == nil {
		return
	}
	lat, letter := c.Coordinates.Lat.Degrees(), text[m[4]:m[5]]
	if lat < -80 || lat > 84 {
		return
	}
	i := strings.Index(bandLetters, letter)
	low, high := i*8-80, i*8-72
	if letter == "X" {
		high = 84
	}
	const edge = 0.1
	if lat >= float64(low)-edge && lat <= float64(high)+edge {
		return
	}
	// N and S may stand for the hemisphere, and then hold much more. A
	// reference that can be read is held against the place by a basic rule.
	if letter == "N" && lat >= -edge || letter == "S" && lat <= edge || c.Place.Verbatim.Status == coord.OK {
		return
	}
	is := string(bandLetters[min(int((lat+80)/8), len(bandLetters)-1)])
	c.Suggest("verbatimCoordinates", fmt.Sprintf("band %s runs from %d° to %d°, and the latitude is %s: its band is %s", letter, low, high, c.Place.Lat, is),
		text[:m[4]]+is+text[m[5]:])
}

// minutesTable keeps which tenths of which degrees the coordinates of the
// table have: 7 kB however long the table is.
type minutesTable struct {
	first check.Field
	axes  [2]struct {
		tenths [361 * 10]bool // from -180
		n      int
	}
	tooFine bool
}

func (m *minutesTable) Feed(r *check.Record) {
	for axis, term := range []string{"decimalLatitude", "decimalLongitude"} {
		m.take(r.Field(term), axis)
	}
}

func (m *minutesTable) take(f check.Field, axis int) {
	whole, decimals, ok := strings.Cut(f.Text, ".")
	if !ok || decimals == "" || !plainNumber(f.Text) || len(decimals) < 2 && decimals != "0" {
		return
	}
	// Four decimals of that kind are minutes and seconds.
	if len(decimals) > 4 || len(decimals) == 4 && decimals[2] > '5' {
		m.tooFine = true
	}
	d, err := strconv.Atoi(whole)
	if err != nil || d < -180 || d > 180 {
		return
	}
	if m.first.Text == "" {
		m.first = check.Field{Text: strings.Clone(f.Text), Origin: f.Origin}
	}
	at := (d + 180) * 10
	if strings.HasPrefix(whole, "-") {
		at = max(179+d, 0) * 10 // so that -0.4 is told from 0.4
	}
	a := &m.axes[axis]
	a.tenths[at+int(decimals[0]-'0')] = true
	a.n++
}

// enoughGaps is how many degrees must be filled up to about .50, go on from
// about .00 of the next, and have nothing between. One such gap is chance, one
// time in five or so; that many are not.
//
// Of a table that is spread wider and thinner, enoughDegrees must have
// something and nothing above: each degree may by chance, three times in five,
// so all of them once in ten thousand tables.
const (
	enoughGaps    = 4
	enoughDegrees = 19
)

func (m *minutesTable) End() []label.Finding {
	if m.tooFine {
		return nil
	}
	gaps, filled, degrees := 0, 0, 0
	for i := range m.axes {
		a := &m.axes[i]
		for d := 0; d+10 < len(a.tenths); d += 10 {
			t := a.tenths[d : d+20]
			if t[6] || t[7] || t[8] || t[9] {
				return nil
			}
			for _, is := range t[:6] {
				if is {
					filled++
				}
			}
			if (t[4] || t[5]) && next(a.tenths[:], d) {
				gaps++
			}
			if slices.Contains(t[1:6], true) { // whole degrees say nothing
				degrees++
			}
		}
	}
	if (gaps < enoughGaps || filled < 4*enoughGaps) && degrees < enoughDegrees {
		return nil
	}
	return []label.Finding{{
		Origin: m.first.Origin, Value: m.first.Text,
		Message: fmt.Sprintf("no decimals of the whole table lie between .60 and .99, in %d degrees: they look like minutes typed as decimals, so that 38°30' became 38.30", degrees),
	}}
}

// next reports whether the degree that follows outwards from zero has something
// near its beginning.
func next(tenths []bool, d int) bool {
	step := 10
	if d < 1800 {
		step = -10
	}
	if d += step; d < 0 || d+1 >= len(tenths) {
		return false
	}
	return tenths[d] || tenths[d+1]
}

// minutesExample is a table with a place every ten minutes or so, whose
// minutes count for hundredths of a degree times the factor.
func minutesExample(factor float64) []map[string]string {
	var all []map[string]string
	for i := range 30 {
		degree, minute := 37+i/6, i%6*10+3
		at := func(d float64) string { return strconv.FormatFloat(d, 'f', 2, 64) }
		all = append(all, check.With(
			"recordNumber", itoa(100+i), "stateProvince", "", "locality", "Valdoura, "+itoa(2+i)+" km W of the field station",
			"decimalLatitude", at(float64(degree)+math.Min(float64(minute)*factor, 99)/100),
			"decimalLongitude", at(-8-math.Min(float64(minute)*factor, 99)/100), "coordinateUncertaintyInMeters", "2000"))
	}
	return all
}
