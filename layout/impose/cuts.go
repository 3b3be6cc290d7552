package impose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cornerslip/layout"
)

// A node is a piece of paper: divided by straight cuts from edge to edge, or
// a label, or waste. Places that come as such a tree can always be cut apart
// with a guillotine.
type node struct {
	layout.Rect
	parts []node
	down  bool // the parts lie below each other, else side by side
	label int  // which label covers it, if it has no parts; noLabel is waste
	turn  bool
}

const (
	noLabel = -1
	spare   = -2 // a place for a label that is cut out but stays empty
)

// A builder fills a piece of paper with parts, one after another.
type builder struct {
	node
	gutter layout.Length
}

func divide(r layout.Rect, down bool, gutter layout.Length) builder {
	return builder{node: node{Rect: r, down: down, label: noLabel}, gutter: gutter}
}

// rest returns what is not yet given out.
func (b *builder) rest() layout.Rect {
	r := b.Rect
	if n := len(b.parts); n > 0 {
		last := b.parts[n-1].Rect
		if b.down {
			r.At.Y, r.H = last.Bottom(), b.Bottom()-last.Bottom()
		} else {
			r.At.X, r.W = last.Right(), b.Right()-last.Right()
		}
	}
	return r
}

// next cuts off a part of the size given along the direction of division. A
// gutter goes before it unless it is the first.
func (b *builder) next(size layout.Length) layout.Rect {
	take := func(size layout.Length) layout.Rect {
		r := b.rest()
		if b.down {
			r.H = min(size, r.H)
		} else {
			r.W = min(size, r.W)
		}
		return r
	}
	if len(b.parts) > 0 && b.gutter > 0 {
		b.parts = append(b.parts, node{Rect: take(b.gutter), label: noLabel})
	}
	return take(size)
}

func (b *builder) add(n node) { b.parts = append(b.parts, n) }

// done returns the node; what was not given out is waste.
func (b *builder) done() node {
	if r := b.rest(); r.W > 0 && r.H > 0 {
		if len(b.parts) == 0 {
			return node{Rect: r, label: noLabel}
		}
		b.parts = append(b.parts, node{Rect: r, label: noLabel})
	}
	return b.node
}

// A Cut is one stroke of the guillotine. Cuts are listed in the order in which
// they are made: each divides a piece that the cuts before it have freed.
type Cut struct {
	From, To layout.Point
}

// upright reports whether the cut runs down the page.
func (c Cut) upright() bool { return c.From.X == c.To.X }

// finish turns the pieces of a page into its places, cuts and waste. root is
// the part of the paper that labels may cover.
func (g Gang) finish(root *node) sheet {
	var s sheet
	g.absorb(root)
	g.frame(&s, root.Rect)
	g.walk(&s, root)
	// Where the paper's edge serves as the cut nothing is trimmed.
	s.trim = g.toEdge(s.trim)
	slices.SortStableFunc(s.waste, func(a, b layout.Rect) int {
		return cmp.Compare(int64(b.W/layout.MM)*int64(b.H/layout.MM), int64(a.W/layout.MM)*int64(a.H/layout.MM))
	})
	return s
}

// frame adds the outer cuts round the area that labels may cover, where it is
// smaller than the paper.
func (g Gang) frame(s *sheet, r layout.Rect) {
	w, h := g.Paper.W, g.Paper.H
	if r.Size == g.Paper {
		return
	}
	s.cuts = append(s.cuts,
		Cut{layout.Point{X: 0, Y: r.At.Y}, layout.Point{X: w, Y: r.At.Y}},
		Cut{layout.Point{X: 0, Y: r.Bottom()}, layout.Point{X: w, Y: r.Bottom()}},
		Cut{layout.Point{X: r.At.X, Y: r.At.Y}, layout.Point{X: r.At.X, Y: r.Bottom()}},
		Cut{layout.Point{X: r.Right(), Y: r.At.Y}, layout.Point{X: r.Right(), Y: r.Bottom()}},
	)
	s.waste = append(s.waste,
		layout.Rect{Size: layout.Size{W: w, H: r.At.Y}},
		layout.Rect{At: layout.Point{Y: r.Bottom()}, Size: layout.Size{W: w, H: h - r.Bottom()}},
		layout.Rect{At: layout.Point{Y: r.At.Y}, Size: layout.Size{W: r.At.X, H: r.H}},
		layout.Rect{At: layout.Point{X: r.Right(), Y: r.At.Y}, Size: layout.Size{W: w - r.Right(), H: r.H}})
}

func (g Gang) walk(s *sheet, n *node) {
	if len(n.parts) == 0 {
		if n.label == noLabel {
			s.waste = append(s.waste, n.Rect)
			return
		}
		s.trim = union(s.trim, n.Rect)
		if n.label == spare {
			return
		}
		p := Place{Index: n.label, At: n.At, Size: n.Size}
		if n.turn {
			p.Turn = 1
		}
		s.places = append(s.places, p)
		return
	}
	for i := range n.parts[:len(n.parts)-1] {
		r := n.parts[i].Rect
		c := Cut{From: layout.Point{X: r.Right(), Y: n.At.Y}, To: layout.Point{X: r.Right(), Y: n.Bottom()}}
		if n.down {
			c = Cut{From: layout.Point{X: n.At.X, Y: r.Bottom()}, To: layout.Point{X: n.Right(), Y: r.Bottom()}}
		}
		s.cuts = append(s.cuts, c)
	}
	for i := range n.parts {
		g.walk(s, &n.parts[i])
	}
}

// absorb gives slivers to what lies beside them, so that they need no cut.
func (g Gang) absorb(n *node) {
	if k := len(n.parts); k > 1 {
		last := n.parts[k-1]
		if len(last.parts) == 0 && last.label == noLabel && g.isSliver(last.Rect) {
			n.parts = n.parts[:k-1]
			if n.down {
				n.parts[k-2].grow(true, last.H)
			} else {
				n.parts[k-2].grow(false, last.W)
			}
		}
	}
	for i := range n.parts {
		g.absorb(&n.parts[i])
	}
}

// grow makes a divided piece longer by d at its lower or its right end. A label
// keeps its size.
func (n *node) grow(down bool, d layout.Length) {
	if len(n.parts) == 0 && n.label != noLabel {
		return
	}
	if down {
		n.H += d
	} else {
		n.W += d
	}
	for i := range n.parts {
		if n.down != down || i == len(n.parts)-1 {
			n.parts[i].grow(down, d)
		}
	}
}

// isSliver reports whether r is too thin to be cut off along the lower or the
// right edge of the paper.
func (g Gang) isSliver(r layout.Rect) bool {
	return r.H <= sliver && r.Bottom() == g.Paper.H || r.W <= sliver && r.Right() == g.Paper.W
}

func (g Gang) toEdge(r layout.Rect) layout.Rect {
	if d := g.Paper.W - r.Right(); d <= sliver {
		r.W += d
	}
	if d := g.Paper.H - r.Bottom(); d <= sliver {
		r.H += d
	}
	return r
}

// union returns the smallest rectangle that holds a and b; an empty a counts
// for nothing.
func union(a, b layout.Rect) layout.Rect {
	if a.Size == (layout.Size{}) {
		return b
	}
	x0, y0 := min(a.At.X, b.At.X), min(a.At.Y, b.At.Y)
	x1, y1 := max(a.Right(), b.Right()), max(a.Bottom(), b.Bottom())
	return layout.Rect{At: layout.Point{X: x0, Y: y0}, Size: layout.Size{W: x1 - x0, H: y1 - y0}}
}

// Ticks are hairlines along the cuts, at both ends. Along a cut no label has
// ink, so they can lie between labels.
const (
	tickLength = 3 * layout.MM
	tickWidth  = layout.Pt / 4
	tickGrey   = layout.Grey(64)
)

// ticks draws the ends of a cut. A cut closer to the paper's edge than the
// printer prints has none.
func (g Gang) ticks(c Cut) []layout.Mark {
	print := layout.Rect{Size: g.Paper}.Inset(g.Margin)
	along := func(p layout.Point) layout.Length {
		if c.upright() {
			return p.Y
		}
		return p.X
	}
	at := func(l layout.Length) layout.Point {
		if c.upright() {
			return layout.Point{X: c.From.X, Y: l}
		}
		return layout.Point{X: l, Y: c.From.Y}
	}
	from, to := along(c.From), along(c.To)
	if c.upright() {
		if c.From.X < print.At.X || c.From.X > print.Right() {
			return nil
		}
		from, to = max(from, print.At.Y), min(to, print.Bottom())
	} else {
		if c.From.Y < print.At.Y || c.From.Y > print.Bottom() {
			return nil
		}
		from, to = max(from, print.At.X), min(to, print.Right())
	}
	if from >= to {
		return nil
	}
	stroke := func(a, b layout.Length) layout.Mark {
		return layout.Stroke{From: at(a), To: at(b), Width: tickWidth, Grey: tickGrey}
	}
	if g.WholeCuts || to-from <= 2*tickLength {
		return []layout.Mark{stroke(from, to)}
	}
	return []layout.Mark{stroke(from, from+tickLength), stroke(to-tickLength, to)}
}

// Cuts returns a page's cuts in the order in which they are made.
func (p *Plan) Cuts(page int) []Cut { return p.sheets[page].cuts }

// A step is one or more cuts that are made in one go: the same cut through
// strips that lie side by side.
type step []Cut

// steps returns a page's cuts as they are made. Strips that are cut at the same
// heights are cut together.
func (p *Plan) steps(page int) []step {
	cuts := p.sheets[page].cuts
	first := slices.IndexFunc(cuts, func(c Cut) bool { return !c.upright() })
	out := make([]step, 0, len(cuts))
	for _, c := range cuts {
		out = append(out, step{c})
	}
	if first < 1 {
		return out
	}
	// Behind cuts down the whole page, the cuts of the strips one after another.
	whole, across := cuts[:first], slices.Clone(cuts[first:])
	for _, c := range whole {
		if c.From.Y != whole[0].From.Y || c.To.Y != whole[0].To.Y {
			return out
		}
	}
	if slices.ContainsFunc(across, Cut.upright) {
		return out
	}
	slices.SortFunc(across, func(a, b Cut) int {
		return cmp.Or(cmp.Compare(a.From.Y, b.From.Y), cmp.Compare(a.From.X, b.From.X))
	})
	together := out[:first:first]
	for _, c := range across {
		if n := len(together); n > first {
			last := together[n-1][len(together[n-1])-1]
			if last.From.Y == c.From.Y && c.From.X-last.To.X <= p.gang.Gutter {
				together[n-1] = append(together[n-1], c)
				continue
			}
		}
		together = append(together, step{c})
	}
	if len(together) == len(cuts) {
		return out // nothing is cut at once: strip by strip is easier to follow
	}
	return together
}

// CutList says in words how a page is cut apart, a line for each stroke of the
// knife.
func (p *Plan) CutList(page int) []string {
	var out []string
	paper := p.gang.Paper
	for i, s := range p.steps(page) {
		c := s[0]
		from, to := c.From, s[len(s)-1].To
		var b strings.Builder
		mm := func(l layout.Length) string { return l.Decimal(layout.MM, 1) }
		if c.upright() {
			fmt.Fprintf(&b, "%d: down, %s mm from the left edge", i+1, mm(from.X))
			if from.Y > 0 || to.Y < paper.H {
				fmt.Fprintf(&b, ", from %s to %s mm", mm(from.Y), mm(to.Y))
			}
		} else {
			fmt.Fprintf(&b, "%d: across, %s mm from the top edge", i+1, mm(from.Y))
			if from.X > 0 || to.X < paper.W {
				fmt.Fprintf(&b, ", from %s to %s mm", mm(from.X), mm(to.X))
			}
		}
		switch len(s) {
		case 1:
		case 2:
			b.WriteString(", both strips at once")
		default:
			fmt.Fprintf(&b, ", all %d strips at once", len(s))
		}
		out = append(out, b.String())
	}
	return out
}
