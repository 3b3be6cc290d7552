package symbol

import (
	"fmt"

	"cornerslip/layout"
)

// Bounds of X, the narrowest bar. Below 0.19 mm ordinary scanners and office
// printers part ways (measured: two dots of 300 dpi, 0.17 mm, are unreliable);
// above 0.51 mm a wider bar gains nothing at arm's length (common practice, no
// source).
const (
	leastModule = 19 * layout.MM / 100
	mostModule  = 51 * layout.MM / 100
	linear      = 25 * layout.MM / 100 // X of bars if nothing limits them
	square      = 33 * layout.MM / 100 // X of square symbols likewise
)

// quiet returns the clear space beside a symbol in modules: 10X for Code 128
// (ISO/IEC 15417) and Code 39 (ISO/IEC 16388), 4X for QR Code (ISO/IEC 18004).
// Data Matrix asks for 1X (ISO/IEC 16022) and gets 2X, which costs half a
// millimetre and forgives a smudge. Linear symbols need it before and after
// the bars only.
func quiet(symbology string) int {
	switch symbology {
	case QR:
		return 4
	case DataMatrix:
		return 2
	default:
		return 10
	}
}

// sizeOf returns the size of m without quiet zones at a module of x.
func sizeOf(m matrix, x layout.Length, o Options) layout.Size {
	w := layout.Length(m.cols()) * x
	if m.rows > 1 {
		return layout.Size{W: w, H: layout.Length(m.rows) * x}
	}
	h := o.Height
	if h == 0 {
		h = max(5*layout.MM, w.MulDiv(15, 100))
	}
	return layout.Size{W: w, H: (h + o.Dot - 1) / o.Dot * o.Dot}
}

// roomFor returns what m takes at a module of x, quiet zones included.
func roomFor(m matrix, x layout.Length, o Options) layout.Size {
	s := sizeOf(m, x, o)
	q := 2 * layout.Length(quiet(o.Symbology)) * x
	s.W += q
	if m.rows > 1 {
		s.H += q
	}
	return s
}

// fit chooses the module in printer dots.
func fit(text string, m matrix, o Options) (int, error) {
	fits := func(dots int) bool {
		s := roomFor(m, layout.Length(dots)*o.Dot, o)
		return (o.MaxSize.W == 0 || s.W <= o.MaxSize.W) && (o.MaxSize.H == 0 || s.H <= o.MaxSize.H)
	}
	least := max(2, up(leastModule, o.Dot))
	if o.Module > 0 {
		if fits(o.Module) {
			return o.Module, nil
		}
		return 0, tooSmall(text, m, o.Module, o)
	}
	if o.MaxSize == (layout.Size{}) {
		if m.rows > 1 {
			return max(least, up(square, o.Dot)), nil
		}
		return max(least, up(linear, o.Dot)), nil
	}
	for dots := max(least, int(mostModule/o.Dot)); dots >= least; dots-- {
		if fits(dots) {
			return dots, nil
		}
	}
	return 0, tooSmall(text, m, least, o)
}

// up returns how many dots make at least l.
func up(l, dot layout.Length) int { return int((l + dot - 1) / dot) }

func tooSmall(text string, m matrix, dots int, o Options) error {
	e := &SizeError{
		Symbology: o.Symbology,
		Text:      text,
		Need:      roomFor(m, layout.Length(dots)*o.Dot, o),
		Room:      o.MaxSize,
	}
	for _, other := range []string{Code128, DataMatrix} {
		p := Options{Symbology: other, Dot: o.Dot, MaxSize: o.MaxSize}
		if other == o.Symbology || m.rows == 1 && other == Code128 && o.Symbology != Code39 {
			continue
		}
		m, err := encode(text, p)
		if err != nil {
			continue
		}
		s := roomFor(m, layout.Length(max(2, up(leastModule, o.Dot)))*o.Dot, p)
		if (o.MaxSize.W == 0 || s.W <= o.MaxSize.W) && (o.MaxSize.H == 0 || s.H <= o.MaxSize.H) {
			e.Other = other
			break
		}
	}
	return e
}

// millimetresUp writes s rounded up to tenths, so that the size named does.
func millimetresUp(s layout.Size) string {
	const tenth = layout.MM / 10
	up := func(l layout.Length) string { return ((l + tenth - 1) / tenth * tenth).Decimal(layout.MM, 1) }
	return up(s.W) + " × " + up(s.H) + " mm"
}

func room(s layout.Size) string {
	switch {
	case s.H == 0:
		return fmt.Sprintf("%s mm wide", s.W.Decimal(layout.MM, 2))
	case s.W == 0:
		return fmt.Sprintf("%s mm high", s.H.Decimal(layout.MM, 2))
	}
	return s.String()
}
