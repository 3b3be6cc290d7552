package impose

import (
	"slices"

	"cornerslip/layout"
)

// A Glue says along which edges labels are glued on.
type Glue int

// The ways; houses differ.
const (
	GlueUnsaid Glue = iota
	GlueTop
	GlueLeft
	GlueAll
)

// A Guide is what a sheet to lay under or beside a mount shows.
type Guide struct {
	// Label is the room drawn for the label: the largest that the house uses.
	Label layout.Size
	// Lower are the heights of smaller labels, marked at both sides of the room.
	Lower []layout.Length
	Glue  Glue
	// The words printed, set by the caller; nil prints none. Label's stands in
	// the label's room, Free's in the area left for the plant, Glue's under the
	// edge that is glued.
	LabelWord, FreeWord, GlueWord *layout.Box
	// Figure returns the figure that stands at a tick; nil prints none. It is
	// asked for every fifth centimetre.
	Figure func(cm int) *layout.Box
	// Margin is what the printer leaves blank along each edge of the sheet;
	// ticks begin there. Zero is 5 mm, below zero none.
	Margin layout.Length
}

// Lines of the guide, told apart by style: corners of a room are solid, the
// area for the plant is dashed, a glued edge dotted.
const (
	guideGrey  = layout.Grey(128)
	freeGrey   = layout.Grey(176)
	guideWidth = layout.Pt / 4
	cornerLeg  = 6 * layout.MM
	wordOff    = 4 * layout.MM // from a corner to its word, clear of the ruler's ticks
)

var (
	dashed = []layout.Length{3 * layout.MM, 2 * layout.MM}
	dotted = []layout.Length{layout.MM / 2, layout.MM}
)

// Guide draws the mount at full size: corners of the label's room and of all
// spots, the largest area that is left for the plant, and centimetre ticks
// along all edges. It reports two things that overlap by their names.
func (m Mount) Guide(g Guide) (layout.Page, error) {
	m = m.withDefaults()
	rooms, err := m.spots()
	if err != nil {
		return layout.Page{}, err
	}
	label := named{"the label", m.label(g.Label)}
	if err := m.place(label, rooms); err != nil {
		return layout.Page{}, err
	}
	page := layout.Page{Size: m.Sheet}
	for i, r := range rooms {
		page.Marks = append(page.Marks, corners(r.Rect)...)
		page.Boxes = word(page.Boxes, m.Spots[i].Word, r.Rect)
	}
	page.Marks = append(page.Marks, corners(label.Rect)...)
	page.Boxes = word(page.Boxes, g.LabelWord, label.Rect)
	for _, h := range g.Lower {
		y, leg := label.Bottom()-h, cornerLeg/2
		page.Marks = append(page.Marks, line(label.At.X, y, label.At.X+leg, y, nil), line(label.Right(), y, label.Right()-leg, y, nil))
	}
	page.Marks = append(page.Marks, g.glued(label.Rect)...)
	if g.GlueWord != nil && g.Glue != GlueUnsaid {
		at := label.At.Add(layout.Point{X: wordOff, Y: 5 * wordOff / 2})
		page.Boxes = append(page.Boxes, layout.Placed{At: at, Box: g.GlueWord})
	}
	free := m.free(append(rooms, label))
	for _, side := range frame(free, dashed) {
		s := side.(layout.Stroke)
		s.Grey = freeGrey // it runs along the ruler, which is to be read
		page.Marks = append(page.Marks, s)
	}
	page.Boxes = word(page.Boxes, g.FreeWord, free)
	m.ruler(&page, &g, append(rooms, label))
	return page, nil
}

// word puts b into the upper left corner of r; nil puts nothing.
func word(boxes []layout.Placed, b *layout.Box, r layout.Rect) []layout.Placed {
	if b == nil {
		return boxes
	}
	return append(boxes, layout.Placed{At: r.At.Add(layout.Point{X: wordOff, Y: wordOff}), Box: b})
}

func line(x0, y0, x1, y1 layout.Length, dash []layout.Length) layout.Mark {
	return layout.Stroke{From: layout.Point{X: x0, Y: y0}, To: layout.Point{X: x1, Y: y1}, Width: guideWidth, Grey: guideGrey, Dash: dash}
}

// corners draws the four corners of r.
func corners(r layout.Rect) []layout.Mark {
	var out []layout.Mark
	w, h := min(cornerLeg, r.W/2), min(cornerLeg, r.H/2)
	for _, x := range []struct{ at, leg layout.Length }{{r.At.X, w}, {r.Right(), -w}} {
		for _, y := range []struct{ at, leg layout.Length }{{r.At.Y, h}, {r.Bottom(), -h}} {
			out = append(out, line(x.at, y.at, x.at+x.leg, y.at, nil), line(x.at, y.at, x.at, y.at+y.leg, nil))
		}
	}
	return out
}

func frame(r layout.Rect, dash []layout.Length) []layout.Mark {
	if r.W <= 0 || r.H <= 0 {
		return nil
	}
	return []layout.Mark{
		line(r.At.X, r.At.Y, r.Right(), r.At.Y, dash),
		line(r.Right(), r.At.Y, r.Right(), r.Bottom(), dash),
		line(r.Right(), r.Bottom(), r.At.X, r.Bottom(), dash),
		line(r.At.X, r.Bottom(), r.At.X, r.At.Y, dash),
	}
}

// glued draws the edges of the label that get glue, a little inside.
func (g Guide) glued(label layout.Rect) []layout.Mark {
	all := frame(label.Inset(layout.MM), dotted)
	switch g.Glue {
	case GlueTop:
		return all[:1]
	case GlueLeft:
		return all[3:]
	case GlueAll:
		return all
	}
	return nil
}

// How far the ticks of the ruler reach beyond what the printer leaves blank, and
// how far their figures stand from them.
const (
	shortTick = 2 * layout.MM
	longTick  = 4 * layout.MM
	figureOff = layout.MM / 2
)

// ruler draws a tick each centimetre along all edges, a longer one with a
// figure each five. They begin where the printer prints.
func (m Mount) ruler(page *layout.Page, g *Guide, rooms []named) {
	printer := orDefault(g.Margin, defaultMargin)
	// From a point of an edge; in points into the sheet.
	tick := func(edge, in layout.Point, cm layout.Length) {
		along := func(by layout.Length) layout.Point {
			return layout.Point{X: edge.X + in.X*by, Y: edge.Y + in.Y*by}
		}
		end := printer + shortTick
		if cm%5 == 0 {
			end = printer + longTick
		}
		a, b := along(printer), along(end)
		page.Marks = append(page.Marks, line(a.X, a.Y, b.X, b.Y, nil))
		if cm%5 != 0 || g.Figure == nil {
			return
		}
		f := g.Figure(int(cm))
		if f == nil {
			return
		}
		at := along(end + figureOff)
		r := layout.Rect{At: layout.Point{X: at.X - f.Size.W/2, Y: at.Y - f.Size.H/2}, Size: f.Size}
		switch {
		case in.X > 0:
			r.At.X = at.X
		case in.X < 0:
			r.At.X = at.X - f.Size.W
		case in.Y > 0:
			r.At.Y = at.Y
		default:
			r.At.Y = at.Y - f.Size.H
		}
		if !slices.ContainsFunc(rooms, func(n named) bool { return n.Overlaps(r) }) {
			page.Boxes = append(page.Boxes, layout.Placed{At: r.At, Box: f})
		}
	}
	const cm = 10 * layout.MM
	for k := layout.Length(1); k*cm < m.Sheet.W; k++ {
		tick(layout.Point{X: k * cm}, layout.Point{Y: 1}, k)
		tick(layout.Point{X: k * cm, Y: m.Sheet.H}, layout.Point{Y: -1}, k)
	}
	for k := layout.Length(1); k*cm < m.Sheet.H; k++ {
		tick(layout.Point{Y: k * cm}, layout.Point{X: 1}, k)
		tick(layout.Point{X: m.Sheet.W, Y: k * cm}, layout.Point{X: -1}, k)
	}
}

// free returns the largest rectangle within the margin that no room reaches
// into. Its sides lie along the margin or along rooms, so all such sides are
// tried.
func (m Mount) free(rooms []named) layout.Rect {
	inside := layout.Rect{Size: m.Sheet}.Inset(m.Margin)
	xs := []layout.Length{inside.At.X, inside.Right()}
	ys := []layout.Length{inside.At.Y, inside.Bottom()}
	for _, r := range rooms {
		xs = append(xs, r.At.X, r.Right())
		ys = append(ys, r.At.Y, r.Bottom())
	}
	slices.Sort(xs)
	slices.Sort(ys)
	var best layout.Rect
	for i, x0 := range xs {
		for _, x1 := range xs[i+1:] {
			for j, y0 := range ys {
				for _, y1 := range ys[j+1:] {
					r := layout.Rect{At: layout.Point{X: x0, Y: y0}, Size: layout.Size{W: x1 - x0, H: y1 - y0}}
					if inside.Contains(r) && squareMM(r.Size) > squareMM(best.Size) &&
						!slices.ContainsFunc(rooms, func(n named) bool { return n.Overlaps(r) }) {
						best = r
					}
				}
			}
		}
	}
	return best
}
