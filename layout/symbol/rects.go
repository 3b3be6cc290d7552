package symbol

import (
	"cornerslip/layout"
)

// shrink is how much smaller than its modules a rectangle is drawn on each
// side. Rasterisers paint every dot that a rectangle touches, so one that ends
// exactly on a dot's edge may, after rounding, paint the next dot too.
const shrink = layout.CentiPt

// rects returns the dark rectangles of m.
func rects(m matrix, x, height, reduction layout.Length) []layout.Rect {
	d := shrink + reduction/2
	if m.rows == 1 {
		return bars(m, x, height, d)
	}
	return squares(m, x, d)
}

// bars returns one rectangle for each bar.
func bars(m matrix, x, height, d layout.Length) []layout.Rect {
	var out []layout.Rect
	for i := 0; i < len(m.modules); i++ {
		from := i
		for m.dark(i, 0) {
			i++
		}
		if i > from {
			out = append(out, layout.Rect{
				At:   layout.Point{X: layout.Length(from)*x + d, Y: shrink},
				Size: layout.Size{W: layout.Length(i-from)*x - 2*d, H: height - 2*shrink},
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
