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
	Glue  Glue
	// The words printed, set by the caller; nil prints none. Label's stands in
	// the label's room, Free's in the area left for the plant, Glue's under the
	// edge that is glued.
	LabelWord, FreeWord, GlueWord *layout.Box
}

// Lines of the guide, told apart by style: corners of a room are solid, the
// area for the plant is dashed, a glued edge dotted.
const (
	guideGrey  = layout.Grey(128)
	guideWidth = layout.Pt / 4
	cornerLeg  = 6 * layout.MM
	wordOff    = 2 * layout.MM // from a corner to its word
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
	label := named{"label", m.label(g.Label)}
	if err := m.place(label, rooms); err != nil {
		return layout.Page{}, err
	}
	page := layout.Page{Size: m.Sheet}
	word := func(b *layout.Box, r layout.Rect) {
		if b != nil {
			page.Boxes = append(page.Boxes, layout.Placed{At: r.At.Add(layout.Point{X: wordOff, Y: wordOff}), Box: b})
		}
	}
	for i, r := range rooms {
		page.Marks = append(page.Marks, corners(r.Rect)...)
		word(m.Spots[i].Word, r.Rect)
	}
	page.Marks = append(page.Marks, corners(label.Rect)...)
	word(g.LabelWord, label.Rect)
	page.Marks = append(page.Marks, g.glued(label.Rect)...)
	if g.GlueWord != nil && g.Glue != GlueUnsaid {
		at := label.At.Add(layout.Point{X: wordOff, Y: 3 * wordOff})
		page.Boxes = append(page.Boxes, layout.Placed{At: at, Box: g.GlueWord})
	}
	free := m.free(append(rooms, label))
	page.Marks = append(page.Marks, frame(free, dashed)...)
	word(g.FreeWord, free)
	page.Marks = append(page.Marks, m.ruler(append(rooms, label))...)
	return page, nil
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

// ruler draws a tick each centimetre along all edges, a longer one each five.
// They begin at the edge and reach beyond the margin, so that enough is left of
// them where the printer stops short of the edge; but none reaches into a room.
func (m Mount) ruler(rooms []named) []layout.Mark {
	var out []layout.Mark
	tick := func(from layout.Point, dx, dy, k layout.Length) {
		leg := 7 * layout.MM
		if k%5 == 0 {
			leg = 10 * layout.MM
		}
		to := layout.Point{X: from.X + dx*leg, Y: from.Y + dy*leg}
		r := layout.Rect{At: layout.Point{X: min(from.X, to.X), Y: min(from.Y, to.Y)}, Size: layout.Size{W: max(1, dx*dx*leg), H: max(1, dy*dy*leg)}}
		if slices.ContainsFunc(rooms, func(n named) bool { return n.Inset(-1).Overlaps(r) }) {
			leg = min(leg, max(m.Margin-layout.MM, 2*layout.MM))
			to = layout.Point{X: from.X + dx*leg, Y: from.Y + dy*leg}
		}
		out = append(out, line(from.X, from.Y, to.X, to.Y, nil))
	}
	const cm = 10 * layout.MM
	for k := layout.Length(1); k*cm < m.Sheet.W; k++ {
		tick(layout.Point{X: k * cm}, 0, 1, k)
		tick(layout.Point{X: k * cm, Y: m.Sheet.H}, 0, -1, k)
	}
	for k := layout.Length(1); k*cm < m.Sheet.H; k++ {
		tick(layout.Point{Y: k * cm}, 1, 0, k)
		tick(layout.Point{X: m.Sheet.W, Y: k * cm}, -1, 0, k)
	}
	return out
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
