package impose

import (
	"fmt"

	"cornerslip/layout"
)

// A Correction makes up for a printer that does not print where it is told to:
// every page is scaled from its upper left corner and then moved. The
// calibration page finds it.
type Correction struct {
	// Offset moves everything right and down.
	Offset layout.Point
	// ScaleX and ScaleY are in millionths; 0 is 1,000,000, true to size.
	ScaleX, ScaleY int64
}

const trueScale = 1_000_000

func (c Correction) scales() (x, y int64) {
	x, y = c.ScaleX, c.ScaleY
	if x == 0 {
		x = trueScale
	}
	if y == 0 {
		y = trueScale
	}
	return x, y
}

// Page is Apply for pages of which nothing may be lost. The error says that ink
// would be moved off the paper.
func (c Correction) Page(p layout.Page) (layout.Page, error) {
	if c == (Correction{}) {
		return p, nil
	}
	out := c.Apply(p)
	if ink := Ink(out); ink.Size != (layout.Size{}) && !(layout.Rect{Size: p.Size}).Contains(ink) {
		over := max(-ink.At.X, -ink.At.Y, ink.Right()-p.Size.W, ink.Bottom()-p.Size.H)
		return out, fmt.Errorf("the printer's correction moves ink off the paper, by %s: correct less than the margin that is kept free", over)
	}
	return out, nil
}

// Apply returns p corrected. Letters keep their size, and so do barcodes, whose
// bars are whole dots of the printer; their places are corrected.
func (c Correction) Apply(p layout.Page) layout.Page {
	x, y := c.scales()
	out := layout.Page{Size: p.Size, Trim: p.Trim}
	if p.Trim != (layout.Rect{}) && p.Trim != (layout.Rect{Size: p.Size}) {
		out.Trim = clip(scaleRect(p.Trim, x, y, c.Offset), p.Size)
	}
	for _, b := range p.Boxes {
		sx, sy := x, y
		if b.Turn%2 == 1 {
			sx, sy = y, x
		}
		at := layout.Point{X: b.At.X.MulDiv(x, trueScale), Y: b.At.Y.MulDiv(y, trueScale)}
		out.Boxes = append(out.Boxes, onDots(layout.Placed{At: at.Add(c.Offset), Box: scaleBox(b.Box, sx, sy), Turn: b.Turn}))
	}
	for _, m := range p.Marks {
		out.Marks = append(out.Marks, scaleMark(m, x, y).Shifted(c.Offset))
	}
	return out
}

// clip returns the part of r on a page.
func clip(r layout.Rect, page layout.Size) layout.Rect {
	x, y := max(0, r.At.X), max(0, r.At.Y)
	return layout.Rect{At: layout.Point{X: x, Y: y}, Size: layout.Size{W: min(page.W, r.Right()) - x, H: min(page.H, r.Bottom()) - y}}
}

func scaleRect(r layout.Rect, x, y int64, by layout.Point) layout.Rect {
	a := layout.Point{X: r.At.X.MulDiv(x, trueScale), Y: r.At.Y.MulDiv(y, trueScale)}
	b := layout.Point{X: r.Right().MulDiv(x, trueScale), Y: r.Bottom().MulDiv(y, trueScale)}
	return layout.Rect{At: a.Add(by), Size: layout.Size{W: b.X - a.X, H: b.Y - a.Y}}
}

func scaleBox(b *layout.Box, x, y int64) *layout.Box {
	if x == trueScale && y == trueScale {
		return b
	}
	out := &layout.Box{Size: layout.Size{W: b.Size.W.MulDiv(x, trueScale), H: b.Size.H.MulDiv(y, trueScale)}, Ref: b.Ref}
	for _, m := range b.Marks {
		out.Marks = append(out.Marks, scaleMark(m, x, y))
	}
	return out
}

func scaleMark(m layout.Mark, x, y int64) layout.Mark {
	if x == trueScale && y == trueScale {
		return m
	}
	at := func(p layout.Point) layout.Point {
		return layout.Point{X: p.X.MulDiv(x, trueScale), Y: p.Y.MulDiv(y, trueScale)}
	}
	switch m := m.(type) {
	case layout.Text:
		m.At = at(m.At)
		clusters := make([]layout.Cluster, len(m.Clusters))
		var pen, last layout.Length // so that rounding does not add up
		for i, c := range m.Clusters {
			pen += c.Adv
			now := pen.MulDiv(x, trueScale)
			clusters[i] = layout.Cluster{Bytes: c.Bytes, Adv: now - last, Rise: c.Rise.MulDiv(y, trueScale)}
			last = now
		}
		m.Clusters = clusters
		return m
	case layout.Fill:
		m.Rect = scaleRect(m.Rect, x, y, layout.Point{})
		return m
	case layout.Stroke:
		m.From, m.To = at(m.From), at(m.To)
		return m
	case layout.Bars:
		m.At = at(m.At)
		return m
	}
	return m
}

// Turned returns a page that lies on its side, turned by a quarter clockwise,
// for printers that take the paper that way.
func Turned(p layout.Page) layout.Page {
	out := layout.Page{Size: p.Size.Turned()}
	if p.Trim != (layout.Rect{}) {
		out.Trim = layout.Rect{At: corner(p.Trim, p.Size, 1), Size: p.Trim.Size.Turned()}
	}
	for _, b := range p.Boxes {
		r := layout.Rect{At: b.At, Size: turned(b.Box.Size, b.Turn%2 == 1)}
		out.Boxes = append(out.Boxes, onDots(layout.Placed{At: corner(r, p.Size, 1), Box: b.Box, Turn: (b.Turn + 1) % 4}))
	}
	if len(p.Marks) > 0 {
		out.Boxes = append(out.Boxes, onDots(layout.Placed{Box: &layout.Box{Size: p.Size, Marks: p.Marks}, Turn: 1}))
	}
	return out
}

// Ink returns the rectangle that holds all ink of a page: exact for lines and
// bars; letters count from an em above their baseline to a third below it.
func Ink(p layout.Page) layout.Rect {
	var all layout.Rect
	for _, b := range p.Boxes {
		for _, m := range b.Box.Marks {
			r := inkOf(m)
			c := corner(r, b.Box.Size, b.Turn)
			all = unite(all, layout.Rect{At: b.At.Add(c), Size: turned(r.Size, b.Turn%2 == 1)})
		}
	}
	for _, m := range p.Marks {
		all = unite(all, inkOf(m))
	}
	return all
}

func unite(a, b layout.Rect) layout.Rect {
	if b.Size == (layout.Size{}) {
		return a
	}
	return union(a, b)
}

func inkOf(m layout.Mark) layout.Rect {
	switch m := m.(type) {
	case layout.Text:
		return layout.Rect{At: layout.Point{X: m.At.X, Y: m.At.Y - m.Size}, Size: layout.Size{W: m.Width(), H: m.Size + m.Size/3}}
	case layout.Fill:
		return m.Rect
	case layout.Stroke:
		r := layout.Rect{At: layout.Point{X: min(m.From.X, m.To.X), Y: min(m.From.Y, m.To.Y)}}
		r.W, r.H = max(m.From.X, m.To.X)-r.At.X, max(m.From.Y, m.To.Y)-r.At.Y
		if r.W < m.Width {
			r.At.X, r.W = r.At.X-m.Width/2, r.W+m.Width
		}
		if r.H < m.Width {
			r.At.Y, r.H = r.At.Y-m.Width/2, r.H+m.Width
		}
		return r
	case layout.Bars:
		return m.Rect
	}
	return layout.Rect{}
}

// Rule draws a rule of whole millimetres from the point given, to the right or
// down: a line with a tick each centimetre, longer ones at its ends and in its
// middle. The ends are where the ticks' middles are.
func Rule(from layout.Point, millimetres int, down bool) []layout.Mark {
	const width = layout.Pt / 2
	stroke := func(x0, y0, x1, y1 layout.Length) layout.Mark {
		a, b := layout.Point{X: x0, Y: y0}, layout.Point{X: x1, Y: y1}
		if down {
			a, b = layout.Point{X: y0, Y: x0}, layout.Point{X: y1, Y: x1}
		}
		return layout.Stroke{From: from.Add(a), To: from.Add(b), Width: width}
	}
	length := layout.Length(millimetres) * layout.MM
	out := []layout.Mark{stroke(0, 0, length, 0)}
	for k := layout.Length(0); k <= length; k += 10 * layout.MM {
		leg := 3 * layout.MM / 2
		if k == 0 || k == length || 2*k == length {
			leg = 3 * layout.MM
		}
		out = append(out, stroke(k, -leg, k, 0))
	}
	return out
}
