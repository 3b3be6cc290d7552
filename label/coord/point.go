package coord

import (
	"fmt"
	"math"
	"strings"

	"cornerslip/label/lang"
)

// A Form is a notation of coordinates.
type Form uint8

// The notations.
const (
	AsWritten             Form = iota
	Decimal                    // 41.2340° N
	DegreesMinutes             // 41° 14′ N, 41° 14.04′ N
	DegreesMinutesSeconds      // 41° 14′ 02″ N
	GridUTM                    // UTM 29N 532123 m E, 4567890 m N
	GridMGRS                   // 29T NF 32123 67890
)

// String returns the usual name of the notation.
func (f Form) String() string {
	return [...]string{"as written", "decimal degrees", "degrees and minutes", "degrees, minutes and seconds", "UTM", "MGRS", "", ""}[f&7]
}

// A Point is a place on the earth as it was written: the value, the notation
// and how fine it was. Points compare with ==; the zero Point is no place.
type Point struct {
	// Lat is north, Lon east of the equator and of Greenwich.
	Lat, Lon Angle
	// Form is the notation; of two that were mixed, the finer.
	Form Form
	// Datum is the geodetic datum that the text names, as written; "" if it
	// names none.
	Datum string

	lat, lon written
	step     Angle // the finer of the two steps that count; 0 in grids
	grid     UTM   // as written, in grids
	band     byte  // of a written MGRS reference
	local    bool  // the grid's datum lies far from WGS 84
	said     byte  // the band that a UTM reference names, 0 if none
}

// written is how one half was written.
type written struct {
	form   Form
	places int8 // decimals of the last unit
}

// IsZero reports whether p is no place at all: a Point that was read always
// has a notation, also at 0° N, 0° E.
func (p Point) IsZero() bool { return p == Point{} }

func (p Point) onGrid() bool { return p.grid != UTM{} }

// FromDecimal reads a latitude and a longitude as Darwin Core's
// decimalLatitude and decimalLongitude want them: plain signed numbers of
// degrees with a decimal point, north and east positive.
func FromDecimal(lat, lon string) (Point, error) {
	a, da, err := plain(lat, "latitude", 90)
	if err != nil {
		return Point{}, err
	}
	o, do, err := plain(lon, "longitude", 180)
	if err != nil {
		return Point{}, err
	}
	wa, ca := da.places()
	wo, co := do.places()
	return Point{
		Lat: a, Lon: o, Form: Decimal,
		lat:  written{Decimal, int8(min(wa, 14))},
		lon:  written{Decimal, int8(min(wo, 14))},
		step: stepOf(Degree, max(ca, co)),
	}, nil
}

// ParseLatitude and ParseLongitude read one cell as FromDecimal does.
func ParseLatitude(s string) (Angle, error)  { a, _, err := plain(s, "latitude", 90); return a, err }
func ParseLongitude(s string) (Angle, error) { a, _, err := plain(s, "longitude", 180); return a, err }

func plain(s, axis string, limit Angle) (Angle, decimal, error) {
	digits := strings.TrimLeft(s, "+-")
	whole, frac, point := strings.Cut(digits, ".")
	if len(s)-len(digits) > 1 || whole == "" || point && frac == "" || strings.Trim(whole+frac, "0123456789") != "" {
		return 0, decimal{}, fmt.Errorf("%s %q is not a plain number of degrees: write it as 41.2345, south and west with a minus sign", axis, s)
	}
	d := decimal{whole, frac}
	a, err := d.times(Degree)
	if err != nil || a > limit*Degree {
		return 0, d, fmt.Errorf("%s %s is beyond %d°", axis, s, limit)
	}
	if s[0] == '-' {
		a = -a
	}
	return a, d, nil
}

// stepOf returns the unit divided by ten as often as there are decimals.
func stepOf(unit Angle, places int) Angle {
	return max(1, Angle(uint64(unit)/pow10(min(places, 18))))
}

// Step returns how fine p was written, in degrees of latitude and longitude:
// the unit of the last figure that counts, of the finer half. Zeros at the
// end of decimals do not count. It is 0 for grid references.
func (p Point) Step() Angle { return p.step }

// HalfSteps returns how fine each half of p was written, in degrees: the unit of
// its last figure. Both are 0 for grid references.
func (p Point) HalfSteps() (lat, lon Angle) {
	if p.onGrid() || p.IsZero() {
		return 0, 0
	}
	return stepOf(unitOf(p.lat.form), int(p.lat.places)), stepOf(unitOf(p.lon.form), int(p.lon.places))
}

// Uncertainty returns how far off p may be by the precision it was written
// with alone, in whole metres, rounded up and at least 1; 0 for no place.
func (p Point) Uncertainty() int {
	switch {
	case p.IsZero():
		return 0
	case p.Form == GridUTM || p.Form == GridMGRS:
		return gridUncertainty(p.grid.Step)
	}
	return UncertaintyFromPrecision(p.step, p.Lat)
}

// UncertaintyFromPrecision returns step·√(M² + (N cos φ)²) in metres, rounded
// up, where M and N are the radii of curvature of the WGS 84 ellipsoid along
// the meridian and across it at the latitude: the diagonal of one unit of the
// last figure in both directions.
//
// Source: A. D. Chapman, J. R. Wieczorek, Georeferencing Best Practices,
// doi 10.15468/doc-gg7h-s853, uncertainty related to coordinate precision.
func UncertaintyFromPrecision(step, lat Angle) int {
	sin, cos := math.Sincos(lat.Degrees() * math.Pi / 180)
	w := 1 - float64(float64(e2*sin)*sin)
	n := semiMajor / math.Sqrt(w)
	m := float64(n*(1-e2)) / w
	across := float64(n * cos)
	d := step.Degrees() * math.Pi / 180 * math.Sqrt(float64(m*m)+float64(across*across))
	// A hair is taken off before rounding up, so that a value that is whole
	// but for the last bit of the arithmetic is not raised by a metre.
	return max(1, int(math.Ceil(d-1e-7)))
}

// gridUncertainty returns half the diagonal of a grid's square of the side
// given in millimetres, in metres, rounded up.
func gridUncertainty(step int64) int {
	return max(1, int(math.Ceil(float64(step)/1000*math.Sqrt2/2-1e-7)))
}

// A Style is how coordinates are printed. The zero value keeps the notation
// they were written in.
type Style struct {
	Form Form
	// Tight leaves out the thin spaces between the figures: 41°14′02″N.
	Tight bool
	// International writes N, E, S, W in every language. Otherwise West is O
	// in Portuguese, Spanish and French, and East is O in German.
	International bool
}

// Format returns p as the language writes it, in pieces inside which a line
// must not break; joined with spaces they are the whole. No figure is printed
// that the precision written does not carry: a value with two decimals gets
// minutes but no seconds. UTM and MGRS are refused beyond 84° N and 80° S, and
// degrees for a grid whose datum is not converted here.
func (p Point) Format(s Style, l lang.Tag) ([]string, error) {
	return p.format(s, l)
}
