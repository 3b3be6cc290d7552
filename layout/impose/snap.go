package impose

import "cornerslip/layout"

// onDots returns p with the barcodes in its box moved so that their corners
// lie on the printer's dots, counted from the paper's upper-left corner. Only
// they move, by half a dot at most each way: cuts stay where they are, and a
// box that is shared or kept is not written to.
func onDots(p layout.Placed) layout.Placed {
	copied := false
	for i, m := range p.Box.Marks {
		bars, ok := m.(layout.Bars)
		if !ok || bars.Dot <= 0 {
			continue
		}
		at := p.At.Add(corner(bars.Rect, p.Box.Size, p.Turn))
		dx, dy := at.X.Snap(bars.Dot)-at.X, at.Y.Snap(bars.Dot)-at.Y
		if dx == 0 && dy == 0 {
			continue
		}
		if !copied {
			b := *p.Box
			b.Marks = append([]layout.Mark(nil), b.Marks...)
			p.Box, copied = &b, true
		}
		p.Box.Marks[i] = bars.Shifted(unturn(layout.Point{X: dx, Y: dy}, p.Turn))
	}
	return p
}

// corner returns the upper-left corner that r, which lies in a box of the size
// given, has after turning the box clockwise.
func corner(r layout.Rect, box layout.Size, turn int) layout.Point {
	switch turn % 4 {
	case 1:
		return layout.Point{X: box.H - r.Bottom(), Y: r.At.X}
	case 2:
		return layout.Point{X: box.W - r.Right(), Y: box.H - r.Bottom()}
	case 3:
		return layout.Point{X: r.At.Y, Y: box.W - r.Right()}
	}
	return r.At
}

// unturn returns the movement in the box that gives the movement d on paper.
func unturn(d layout.Point, turn int) layout.Point {
	switch turn % 4 {
	case 1:
		return layout.Point{X: d.Y, Y: -d.X}
	case 2:
		return layout.Point{X: -d.X, Y: -d.Y}
	case 3:
		return layout.Point{X: -d.Y, Y: d.X}
	}
	return d
}
