// Package coord reads and prints where a plant was found: geographic
// coordinates in degrees, UTM and MGRS references, and elevations, as people
// write them on labels.
package coord

import (
	"fmt"
	"math"
	"math/bits"
	"strconv"
	"strings"
)

// An Angle is a part of a circle in units of 10⁻¹² seconds of arc. Degrees
// with up to 14 decimals, minutes with 13 and seconds with 12 are whole
// numbers of it, so what was written is kept exactly whatever its notation.
type Angle int64

// The units of angles.
const (
	Degree Angle = 3600 * Second
	Minute Angle = 60 * Second
	Second Angle = 1e12
)

// AngleOf returns deg degrees to the nearest 10⁻⁹ degree. It serves computed
// values; written ones are read without floating point.
func AngleOf(deg float64) Angle {
	return Angle(math.Round(deg*1e9)) * (Degree / 1e9)
}

// Degrees returns a in degrees, for computing.
func (a Angle) Degrees() float64 { return float64(a) / float64(Degree) }

// Decimal returns a in degrees with the given number of decimals (0 to 14),
// rounded half away from zero: "-8.6111000".
func (a Angle) Decimal(places int) string { return a.in(Degree, places) }

// in returns a in the unit given, as Decimal does.
func (a Angle) in(unit Angle, places int) string {
	n := mulDiv(abs(a), pow10(places), uint64(unit))
	sign := ""
	if a < 0 && n != 0 {
		sign = "-"
	}
	return sign + fixed(n, places)
}

// fixed writes n thousandths, hundredths … with their point.
func fixed(n uint64, places int) string {
	s := strconv.FormatUint(n, 10)
	if places == 0 {
		return s
	}
	if len(s) <= places {
		s = strings.Repeat("0", places+1-len(s)) + s
	}
	return s[:len(s)-places] + "." + s[len(s)-places:]
}

// round returns a rounded to a multiple of step, halves away from zero.
func (a Angle) round(step Angle) Angle {
	n := Angle(abs(a)+uint64(step)/2) / step * step
	if a < 0 {
		return -n
	}
	return n
}

func (a Angle) abs() Angle { return Angle(abs(a)) }

func abs(a Angle) uint64 {
	if a < 0 {
		return uint64(-a)
	}
	return uint64(a)
}

func pow10(n int) uint64 {
	p := uint64(1)
	for range n {
		p *= 10
	}
	return p
}

// mulDiv returns a*b/c rounded half up, for results that fit.
func mulDiv(a, b, c uint64) uint64 {
	hi, lo := bits.Mul64(a, b)
	lo, carry := bits.Add64(lo, c/2, 0)
	hi += carry
	if hi >= c {
		return math.MaxUint64
	}
	q, _ := bits.Div64(hi, lo, c)
	return q
}

// A decimal is an unsigned number as written, before it has a unit.
type decimal struct {
	whole, frac string // digits only; frac without trailing meaning
}

// times returns the number as an angle. Whole parts beyond 9,999 are refused,
// decimals beyond the 17th do not count.
func (d decimal) times(unit Angle) (Angle, error) {
	n, err := strconv.ParseUint(d.whole, 10, 64)
	if err != nil || n > 9999 {
		return 0, fmt.Errorf("%s is too large for a coordinate in degrees", d)
	}
	a := Angle(n) * unit
	if n > 999 { // a hundred times what can be valid, and Degree*9999 overflows
		return 0, fmt.Errorf("%s is too large for a coordinate in degrees", d)
	}
	f := d.frac
	if len(f) > 17 {
		f = f[:17]
	}
	if f != "" {
		n, err := strconv.ParseUint(f, 10, 64)
		if err != nil {
			return 0, fmt.Errorf("%s is not a number", d)
		}
		a += Angle(mulDiv(n, uint64(unit), pow10(len(f))))
	}
	return a, nil
}

func (d decimal) String() string {
	if d.frac == "" {
		return d.whole
	}
	return d.whole + "." + d.frac
}

// places returns how many decimals were written, and how many of them count:
// zeros at the end are no sign of precision.
func (d decimal) places() (written, credited int) {
	return len(d.frac), len(strings.TrimRight(d.frac, "0"))
}
