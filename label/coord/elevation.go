package coord

import (
	"fmt"
	"strconv"
	"strings"

	"cornerslip/label/lang"
)

// A Unit is what an elevation was measured in.
type Unit uint8

// The units.
const (
	Metres Unit = iota
	Feet        // of 0.3048 m
)

// String returns the unit's symbol, the same in every language.
func (u Unit) String() string { return [...]string{"m", "ft"}[u&1] }

// An Elevation is a height above sea level or a range of heights, in the unit
// and as finely as it was written. Elevations compare with ==; the zero value
// is none.
type Elevation struct {
	// Low and High are thousandths of the unit; equal for a single height.
	Low, High int64
	Unit      Unit
	// Tolerance is what stood after ±, in thousandths of the unit.
	Tolerance int64
	// Circa says that the height was given as approximate.
	Circa  bool
	places int8 // decimals written
	bound  bound
	set    bool
	// further says that a height in the other unit stands beside a range.
	further bool
}

// A bound says that a height is only a limit.
type bound uint8

const (
	exact bound = iota
	atLeast
	atMost
)

// IsZero reports whether e is no elevation at all; sea level is one.
func (e Elevation) IsZero() bool { return !e.set }

// IsBound reports whether e is only an upper or lower limit ("> 1200 m").
func (e Elevation) IsBound() bool { return e.bound != exact }

// HasFurther reports whether the text gives one height in the other unit beside a
// range that holds it, "1000-2000 ft, 450 m": Format writes the range alone.
func (e Elevation) HasFurther() bool { return e.further }

// NewElevation returns the heights of minimumElevationInMeters and
// maximumElevationInMeters, plain numbers of metres; an empty text is taken
// for the other.
func NewElevation(low, high string) (Elevation, error) {
	if low == "" {
		low = high
	}
	if high == "" {
		high = low
	}
	e := Elevation{set: true}
	for _, c := range []struct {
		text string
		to   *int64
	}{{low, &e.Low}, {high, &e.High}} {
		n, places, ok := thousandths(strings.TrimPrefix(c.text, "-"))
		if !ok || strings.ContainsAny(c.text, ", ") {
			return Elevation{}, fmt.Errorf("%q is not a plain number of metres: write it as 1240 or 1240.5", c.text)
		}
		if c.text[0] == '-' {
			n = -n
		}
		*c.to = n
		e.places = max(e.places, places)
	}
	if e.Low > e.High {
		return Elevation{}, fmt.Errorf("the lower height %s is above the upper %s: swap the two or correct one", low, high)
	}
	return e, nil
}

// thousandths reads digits with a decimal point, rounded to three decimals.
// More than twelve figures are no height.
func thousandths(s string) (n int64, places int8, ok bool) {
	whole, frac, point := strings.Cut(s, ".")
	if whole == "" || point && frac == "" || len(whole) > 12 || strings.Trim(whole+frac, "0123456789") != "" {
		return 0, 0, false
	}
	n, err := strconv.ParseInt(whole+(frac + "000")[:3], 10, 64)
	if len(frac) > 3 && frac[3] >= '5' {
		n++
	}
	return n, int8(min(len(frac), 3)), err == nil
}

// InMetres returns the lowest and highest height in metres, exactly, as plain
// decimal numbers: 100 feet are "30.48". A tolerance widens them; a limit
// leaves the other side empty.
func (e Elevation) InMetres() (low, high string) {
	if !e.set {
		return "", ""
	}
	low, high = exactMetres(e.Low-e.Tolerance, e.Unit), exactMetres(e.High+e.Tolerance, e.Unit)
	switch e.bound {
	case atLeast:
		high = ""
	case atMost:
		low = ""
	}
	return low, high
}

func exactMetres(n int64, u Unit) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	s := fixed(uint64(n), 3)
	if u == Feet {
		s = fixed(uint64(n)*3048, 7)
	}
	return sign + strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// An ElevationUnit is the unit to print in.
type ElevationUnit uint8

// The units to print in.
const (
	UnitAsWritten ElevationUnit = iota
	InMetresOnly
	InFeetOnly
	InBoth // as written, the other in brackets
)

// An ElevationStyle is how elevations are printed. The zero value keeps the
// unit that was written.
type ElevationStyle struct {
	// In converts to another unit. Converted figures are rounded as finely as
	// the last figure that counts in those written, of whose zeros at most
	// two are taken for rounding: 4000 ft are 1220 m, 1235 m are 4052 ft.
	In ElevationUnit
}

// Format returns e as the language writes it: "1240–1260 m", "c. 4000 ft",
// "1200 ± 20 m". A line must not break in it.
func (e Elevation) Format(s ElevationStyle, l lang.Tag) string {
	if !e.set {
		return ""
	}
	switch s.In {
	case InMetresOnly:
		return e.converted(Metres).write(l)
	case InFeetOnly:
		return e.converted(Feet).write(l)
	case InBoth:
		other := e.converted(1 - e.Unit)
		other.Circa = false
		return e.write(l) + "\u00a0(" + other.write(l) + ")"
	}
	return e.write(l)
}

func (e Elevation) write(l lang.Tag) string {
	const nb = "\u00a0"
	s := e.figure(e.Low, l)
	switch {
	case e.Low != e.High && e.High < 0, e.Low < 0 && e.Low != e.High:
		s += nb + "–" + nb + e.figure(e.High, l) // −20 – −10
	case e.Low != e.High:
		s += "–" + e.figure(e.High, l)
	case e.Tolerance != 0:
		s += nb + "±" + nb + e.figure(e.Tolerance, l)
	}
	s += nb + e.Unit.String()
	switch e.bound {
	case atLeast:
		s = "≥" + nb + s
	case atMost:
		s = "≤" + nb + s
	}
	switch {
	case e.Circa && l == lang.Chinese:
		s = "約" + s
	case e.Circa:
		s = "c." + nb + s
	}
	return s
}

func (e Elevation) figure(n int64, l lang.Tag) string {
	sign := ""
	if n < 0 {
		sign, n = "−", -n
	}
	unit := pow10(3 - int(e.places))
	return sign + strings.Replace(fixed((uint64(n)+unit/2)/unit, int(e.places)), ".", decimalMark(l), 1)
}

// converted returns e in another unit, rounded as [ElevationStyle] says.
func (e Elevation) converted(u Unit) Elevation {
	if e.Unit == u {
		return e
	}
	step := e.step(e.Low)
	for _, n := range []int64{e.High, e.Tolerance} {
		if n != 0 {
			step = min(step, e.step(n))
		}
	}
	to := step
	if u == Metres && step >= 10_000 {
		to = step / 10 // 100 ft are 30 m: tens of metres, not hundreds
	}
	turn := func(n int64) int64 {
		a := uint64(max(n, -n))
		if u == Metres {
			a = mulDiv(a, 3048, 10000)
		} else {
			a = mulDiv(a, 10000, 3048)
		}
		r := int64((a + uint64(to)/2) / uint64(to) * uint64(to))
		if n < 0 {
			return -r
		}
		return r
	}
	e.Low, e.High, e.Tolerance = turn(e.Low), turn(e.High), turn(e.Tolerance)
	e.Unit = u
	e.places = 0
	for t := to; t < 1000; t *= 10 {
		e.places++
	}
	return e
}

// step returns the unit of the last figure of n that counts, in thousandths.
func (e Elevation) step(n int64) int64 {
	step := int64(pow10(3 - int(e.places)))
	for n != 0 && step < 100_000 && n%(10*step) == 0 {
		step *= 10
	}
	if n == 0 {
		return 1000
	}
	return step
}
