package impose

import "cornerslip/layout"

// CutPicture draws a page and its cuts small enough for the room given: the
// paper's outline, each cut at its full length, and at its beginning its number
// in the order in which the cuts are made. figure returns a number set small;
// nil prints none.
func (p *Plan) CutPicture(page int, room layout.Size, figure func(n int) *layout.Box) layout.Page {
	paper := p.gang.Paper
	num, den := int64(room.W), int64(paper.W)
	if paper.H.MulDiv(num, den) > room.H {
		num, den = int64(room.H), int64(paper.H)
	}
	small := func(l layout.Length) layout.Length { return l.MulDiv(num, den) }
	at := func(q layout.Point) layout.Point { return layout.Point{X: small(q.X), Y: small(q.Y)} }
	out := layout.Page{Size: layout.Size{W: small(paper.W), H: small(paper.H)}}
	const outline = layout.Pt / 2
	edge := layout.Rect{Size: out.Size}.Inset(outline / 2)
	for _, m := range frame(edge, nil) {
		s := m.(layout.Stroke)
		s.Width, s.Grey = outline, guideGrey
		out.Marks = append(out.Marks, s)
	}
	for i, step := range p.steps(page) {
		for _, c := range step {
			out.Marks = append(out.Marks, layout.Stroke{From: at(c.From), To: at(c.To), Width: outline})
		}
		if figure == nil {
			continue
		}
		f := figure(i + 1)
		if f == nil {
			continue
		}
		// Beside the cut, a little way in, so that figures of cuts that end on
		// each other stay apart.
		a := at(step[0].From)
		q := layout.Point{X: a.X + layout.MM/2, Y: a.Y + layout.MM/2}
		if !step[0].upright() {
			q = layout.Point{X: a.X + layout.MM, Y: a.Y - f.Size.H}
		}
		q.X, q.Y = min(max(q.X, 0), out.Size.W-f.Size.W), min(max(q.Y, 0), out.Size.H-f.Size.H)
		out.Boxes = append(out.Boxes, layout.Placed{At: q, Box: f})
	}
	return out
}

// SameCuts reports whether two pages are cut alike, so that their papers can be
// cut as one stack.
func (p *Plan) SameCuts(a, b int) bool {
	x, y := p.sheets[a].cuts, p.sheets[b].cuts
	if len(x) != len(y) {
		return false
	}
	for i := range x {
		if x[i] != y[i] {
			return false
		}
	}
	return true
}
