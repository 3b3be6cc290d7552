package trade

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label/check"
	"cornerslip/label/place"
)

// slipped is how far off a country, in metres, a figure of the degrees may be the
// reason: the least such slip moves a place by 9°, and by less only far in the north.
const slipped = 300e3

// figureSlip looks for one slip of a figure that explains why the place is not in the
// country that is stated: the 1 of a longitude beyond 100° was left out or put in, the
// decimal point moved, two figures of the degrees exchanged. It returns what was done
// and the coordinates that are meant, where one slip alone fits, the state that is
// named too.
func (f *finder) figureSlip(c *check.Context, v *verdict, lat, lon float64) (what, suggest string) {
	a, b := coordinateTexts(c)
	fits := 0
	try := func(newLat, newLon float64, how string) {
		if math.Abs(newLat) > 90 || math.Abs(newLon) > 180 || newLat == lat && newLon == lon || !isIn(v.codes, newLat, newLon) || place.OffCoast(newLat, newLon, 0) || !f.inState(c, v, newLat, newLon) {
			return
		}
		fits++
		what, suggest = how, refigured(a, newLat, lat)+", "+refigured(b, newLon, lon)
	}
	if math.Abs(lon) <= 80 {
		try(lat, lon+math.Copysign(100, lon), "with 1 before the longitude")
	}
	if math.Abs(lon) >= 100 {
		try(lat, lon-math.Copysign(100, lon), "without the first figure of the longitude")
	}
	if d, ok := exchanged(lat); ok {
		try(d, lon, "with the figures of the latitude exchanged")
	}
	if d, ok := exchanged(lon); ok {
		try(lat, d, "with the figures of the longitude exchanged")
	}
	const moved = "with the decimal point of the "
	try(lat*10, lon, moved+"latitude moved")
	try(lat/10, lon, moved+"latitude moved")
	try(lat, lon*10, moved+"longitude moved")
	try(lat, lon/10, moved+"longitude moved")
	if fits != 1 {
		return "", ""
	}
	return what, suggest
}

// exchanged exchanges the two figures of whole degrees: 14.27 and 41.27.
func exchanged(v float64) (float64, bool) {
	whole, part := math.Modf(math.Abs(v))
	tens, ones := math.Floor(whole/10), math.Mod(whole, 10)
	if whole < 10 || whole >= 100 || tens == ones {
		return 0, false
	}
	return math.Copysign(ones*10+tens+part, v), true
}

// inState reports whether a place lies in the state that the record names, or names
// none that is known.
func (f *finder) inState(c *check.Context, v *verdict, lat, lon float64) bool {
	text := c.Text("stateProvince")
	if text == "" || len(v.codes) == 0 {
		return true
	}
	states := f.statesOf(v.codes[0], text)
	return len(states) == 0 || slices.ContainsFunc(states, func(s *place.State) bool { return s.Distance(lat, lon) <= stateReach })
}

// refigured writes a coordinate with as many figures as another has that was written.
func refigured(written string, v, was float64) string {
	if v == was {
		return written
	}
	figures := len(strings.TrimLeft(strings.Trim(written, "+-"), "0")) // the point among them
	whole := len(strconv.Itoa(int(math.Abs(v))))
	decimals := 0
	if _, after, ok := strings.Cut(written, "."); ok {
		if decimals = len(after); math.Abs(v) == math.Abs(was)*10 || math.Abs(v) == math.Abs(was)/10 {
			decimals = max(0, figures-whole-1)
		}
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
