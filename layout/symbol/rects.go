package symbol

import (
	"cornerslip/layout"
)

// shrink returns how much smaller than its modules a rectangle is drawn on
// each side. Rasterisers paint every dot that a rectangle touches, so one that
// ends exactly on a dot's edge may, after rounding, paint the next dot too;
// and where a page is no whole number of dots high, some count its dots from
// the foot, which moves all of them by a part of a dot (an eighth on A4 at
// 300 dpi). A quarter of a dot is allowed for, but no more than 0.03 pt, so that
// a symbol made for a coarse printer is also exact on one twice as fine. Whole
// hundredths of a point are what PDF writes.
func shrink(dot layout.Length) layout.Length {
	return min(max(dot/4/layout.CentiPt, 1), 3) * layout.CentiPt
}

// rects returns the dark rectangles of m. dot is the printer's, height that of
// linear bars.
func rects(m matrix, x, dot, height, reduction layout.Length) []layout.Rect {
	s := shrink(dot)
	if m.rows == 1 {
		return bars(m, x, height, s+reduction/2, s)
	}
	return squares(m, x, s+reduction/2)
}

// bars returns one rectangle for each bar, drawn in by dx at its sides and dy
// at its ends.
func bars(m matrix, x, height, dx, dy layout.Length) []layout.Rect {
	var out []layout.Rect
	for i := 0; i < len(m.modules); i++ {
		from := i
		for m.dark(i, 0) {
			i++
		}
		if i > from {
			out = append(out, layout.Rect{
				At:   layout.Point{X: layout.Length(from)*x + dx, Y: dy},
				Size: layout.Size{W: layout.Length(i-from)*x - 2*dx, H: height - 2*dy},
			})
		}
	}
	return out
}

// A span is a rectangle of modules, its far edges not included.
type span struct{ x0, x1, y0, y1 int }

// squares returns rectangles that cover the dark modules of m, drawn in from
// every border between dark and light by d. Runs of a row that repeat in the
// next are one rectangle; where two rectangles touch above one another a third
// bridges the seam, so that no light line shows between them.
func squares(m matrix, x, d layout.Length) []layout.Rect {
	var spans []span
	open := map[[2]int]int{} // run of the row above -> its span
	for y := 0; y <= m.rows; y++ {
		now := map[[2]int]int{}
		for i := 0; i < m.cols(); i++ {
			from := i
			for m.dark(i, y) {
				i++
			}
			if i == from {
				continue
			}
			run := [2]int{from, i}
			k, ok := open[run]
			if !ok {
				k = len(spans)
				spans = append(spans, span{from, i, y, y})
			}
			spans[k].y1 = y + 1
			now[run] = k
		}
		open = now
	}
	draw := func(x0, y0, x1, y1 layout.Length) layout.Rect {
		return layout.Rect{At: layout.Point{X: x0, Y: y0}, Size: layout.Size{W: x1 - x0, H: y1 - y0}}
	}
	l := func(n int) layout.Length { return layout.Length(n) * x }
	var out []layout.Rect
	for _, s := range spans {
		out = append(out, draw(l(s.x0)+d, l(s.y0)+d, l(s.x1)-d, l(s.y1)-d))
	}
	// Spans come in the order of their first rows, so the partner below is
	// always later.
	for i, a := range spans {
		for _, b := range spans[i+1:] {
			if b.y0 > a.y1 {
				break
			}
			x0, x1 := max(a.x0, b.x0), min(a.x1, b.x1)
			if b.y0 == a.y1 && x0 < x1 {
				out = append(out, draw(l(x0)+d, l(a.y1)-x/2, l(x1)-d, l(a.y1)+x/2))
			}
		}
	}
	return out
}
