// Package layout holds the nouns of a printed page: lengths, marks, boxes and
// pages. It imports nothing of ours, knows no botany and draws nothing.
//
// All positions count from the upper-left corner, x to the right and y
// downwards.
package layout

import (
	"fmt"
	"math/bits"
	"strconv"
	"strings"
)

// A Length is a distance on paper in units of 1/36,000 mm (914,400 to the
// inch). Millimetres, points, hundredths of a point and the dots of 300, 600
// and 1200 dpi printers are all whole numbers of it, so positions add up
// exactly and pages can be compared byte for byte on every machine.
type Length int64

// The units in which lengths are written.
const (
	MM      Length = 36000
	Inch    Length = 914400
	Pt      Length = 12700 // 1/72 inch, the PDF point
	CentiPt Length = 127   // 1/100 Pt, the finest step a font size takes
	Dot300  Length = 3048  // one dot of a 300 dpi printer
	Dot600  Length = 1524
	Dot1200 Length = 762
)

// Points returns pt points rounded to the nearest hundredth of a point.
func Points(pt float64) Length {
	return Length(roundHalfAway(pt*100)) * CentiPt
}

// Millimetres returns mm millimetres rounded to the nearest unit. It serves
// values that people wrote (house files, flags); code writes 5*layout.MM.
func Millimetres(mm float64) Length {
	return Length(roundHalfAway(mm * float64(MM)))
}

func roundHalfAway(f float64) int64 {
	if f < 0 {
		return -int64(-f + 0.5)
	}
	return int64(f + 0.5)
}

// MM returns l in millimetres, for people and for JSON. Nothing computes
// with it.
func (l Length) MM() float64 { return float64(l) / float64(MM) }

// Pt returns l in points, for people and for JSON.
func (l Length) Pt() float64 { return float64(l) / float64(Pt) }

// MulDiv returns l*num/den rounded half away from zero, exact beyond 64 bits.
// It panics if den is not positive or the result overflows.
func (l Length) MulDiv(num, den int64) Length {
	if den <= 0 {
		panic(fmt.Sprintf("layout: MulDiv by %d", den))
	}
	neg := (l < 0) != (num < 0)
	hi, lo := bits.Mul64(abs(int64(l)), abs(num))
	lo, carry := bits.Add64(lo, uint64(den)/2, 0)
	hi += carry
	q, _ := bits.Div64(hi, lo, uint64(den)) // panics beyond 64 bits
	if q>>63 != 0 {
		panic(fmt.Sprintf("layout: %d * %d / %d overflows", l, num, den))
	}
	if neg {
		return -Length(q)
	}
	return Length(q)
}

func abs(n int64) uint64 {
	if n < 0 {
		return uint64(-n)
	}
	return uint64(n)
}

// Snap returns the multiple of step nearest to l, halves rounded up.
func (l Length) Snap(step Length) Length {
	if step <= 0 {
		panic(fmt.Sprintf("layout: Snap to %d", step))
	}
	n := l + step/2
	m := n % step
	if m < 0 {
		m += step
	}
	return n - m
}

// Decimal returns l as a decimal number of the unit given with at most digits
// places after the point, rounded half away from zero, by integer arithmetic
// alone. Trailing zeros are left out: it is the form that PDF and SVG take.
func (l Length) Decimal(unit Length, digits int) string {
	scale := int64(1)
	for range digits {
		scale *= 10
	}
	n := l.MulDiv(scale, int64(unit))
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, frac := int64(n)/scale, int64(n)%scale
	if frac == 0 {
		if whole == 0 {
			sign = ""
		}
		return sign + strconv.FormatInt(whole, 10)
	}
	f := strconv.FormatInt(frac, 10)
	f = strings.Repeat("0", digits-len(f)) + f
	return sign + strconv.FormatInt(whole, 10) + "." + strings.TrimRight(f, "0")
}

// String returns l in millimetres with up to three decimals: "5mm".
func (l Length) String() string { return l.Decimal(MM, 3) + "mm" }

// A Point is a place on a page or in a box.
type Point struct{ X, Y Length }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// A Size is a width and a height.
type Size struct{ W, H Length }

// Turned returns s lying on its side.
func (s Size) Turned() Size { return Size{s.H, s.W} }

// String returns the size as people write it: "105 × 74 mm".
func (s Size) String() string {
	return s.W.Decimal(MM, 2) + " × " + s.H.Decimal(MM, 2) + " mm"
}

// A Rect is a rectangle: its upper-left corner and its size.
type Rect struct {
	At Point
	Size
}

// Right and Bottom are the coordinates of the far edges.
func (r Rect) Right() Length  { return r.At.X + r.W }
func (r Rect) Bottom() Length { return r.At.Y + r.H }

// Contains reports whether s lies within r, edges included.
func (r Rect) Contains(s Rect) bool {
	return s.At.X >= r.At.X && s.At.Y >= r.At.Y && s.Right() <= r.Right() && s.Bottom() <= r.Bottom()
}

// Overlaps reports whether r and s share more than an edge.
func (r Rect) Overlaps(s Rect) bool {
	return r.At.X < s.Right() && s.At.X < r.Right() && r.At.Y < s.Bottom() && s.At.Y < r.Bottom()
}

// Inset returns r with d taken off every side; a negative d lets it grow.
func (r Rect) Inset(d Length) Rect {
	return Rect{Point{r.At.X + d, r.At.Y + d}, Size{r.W - 2*d, r.H - 2*d}}
}
