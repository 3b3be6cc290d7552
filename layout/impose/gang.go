package impose

import (
	"errors"
	"fmt"
	"iter"

	"cornerslip/layout"
)

// An Order says how labels are spread over papers.
type Order int

const (
	// Across fills one paper after another in record order. On each paper the
	// labels run down the first column, then the second, and read in record
	// order; where sizes are mixed, a label that would leave a gap waits for the
	// next paper and one from a little further on takes the room.
	Across Order = iota
	// Stack gives all papers of a stack the same cuts and numbers through the
	// stack: cut it in one go, and every pile lies in order. The piles follow
	// each other in the order of the columns. Sizes do not mix within a pile.
	Stack
)

// A Gang is many labels on one paper, cut apart afterwards by straight cuts
// from edge to edge of what is in hand. The zero value is A4, in record order,
// neighbours sharing a cut, with ticks.
type Gang struct {
	// Paper is the sheet printed on; zero is A4.
	Paper layout.Size
	Order Order
	// Gutter is left between neighbours; zero lets them share a cut.
	Gutter layout.Length
	// Margin is what the printer leaves blank along each edge of the paper; no
	// ink goes there. Zero is 5 mm, which all printers manage (common practice, no
	// source), below zero none.
	Margin layout.Length
	// Clear is what labels themselves keep free of ink along their edges; zero
	// is 5 mm, below zero none. Where the margin is no wider, labels reach the
	// paper's edge; else they keep away from it by the difference.
	Clear layout.Length
	// NoTicks leaves out the short lines that show where the cuts run.
	NoTicks bool
	// Upright keeps labels of different widths from being laid on their side
	// where they fit better so. A label that fits no other way is turned in any
	// case; labels of one width are not turned without that need.
	Upright bool
	// WholeCuts draws the cuts at their full length, for papers on which no
	// label comes near a cut.
	WholeCuts bool
	// Footer returns what is printed beside the labels of a page (which counts
	// from 1): boxes set by the caller, of which the first is taken that has
	// room; nil prints none. It goes into a part of the paper that is cut off,
	// and is left out where a page has none: a full page has not.
	Footer Footer
	// Name returns how messages call label i; nil calls it by its number.
	Name func(i int) string
}

// A Footer returns what may be printed beside the labels of a page, which
// counts from 1: the first box that has room is.
type Footer func(page, pages int) []*layout.Box

// nameOf returns how messages call label i.
func nameOf(name func(int) string, i int) string {
	if name != nil {
		return name(i)
	}
	return fmt.Sprintf("label %d", i+1)
}

// A Place is where one label goes.
type Place struct {
	Index int          // which of the sizes handed to Plan
	At    layout.Point // the upper-left corner of what it covers
	Size  layout.Size  // what it covers, after turning
	Turn  int          // quarter turns clockwise
}

// Rect returns what the label covers.
func (p Place) Rect() layout.Rect { return layout.Rect{At: p.At, Size: p.Size} }

// A Plan says where each label goes. It knows sizes only.
type Plan struct {
	gang   Gang
	sheets []sheet
}

// A sheet is one paper's places and cuts.
type sheet struct {
	places []Place
	cuts   []Cut
	waste  []layout.Rect // what is cut off, largest first
	trim   layout.Rect
}

const (
	defaultClear  = 5 * layout.MM
	defaultMargin = 5 * layout.MM
	// sliver is what may be left along an edge of the paper without a cut of
	// its own: 1 mm of A4 below four labels of 74 mm. The paper's edge then
	// serves as the cut.
	sliver = 3 * layout.MM / 2
)

// orDefault reads a length of which zero is a default and less than zero none.
func orDefault(l, zero layout.Length) layout.Length {
	if l == 0 {
		return zero
	}
	return max(l, 0)
}

func (g Gang) withDefaults() Gang {
	if g.Paper == (layout.Size{}) {
		g.Paper = layout.Size{W: 210 * layout.MM, H: 297 * layout.MM}
	}
	g.Clear = orDefault(g.Clear, defaultClear)
	g.Margin = orDefault(g.Margin, defaultMargin)
	return g
}

// area returns the part of the paper that labels may cover.
func (g Gang) area() layout.Rect {
	return layout.Rect{Size: g.Paper}.Inset(max(0, g.Margin-g.Clear))
}

// Plan arranges labels of the sizes given.
func (g Gang) Plan(sizes []layout.Size) (*Plan, error) {
	g = g.withDefaults()
	if err := g.valid(); err != nil {
		return nil, err
	}
	a := g.area()
	turn := make([]bool, len(sizes))
	for i, s := range sizes {
		switch {
		case s.W <= 0 || s.H <= 0:
			return nil, fmt.Errorf("%s of %s: it has no size", nameOf(g.Name, i), s)
		case s.W <= a.W && s.H <= a.H:
		case s.H <= a.W && s.W <= a.H:
			turn[i] = true
		default:
			return nil, g.tooLarge(i, s)
		}
	}
	var pages []node
	switch {
	case g.Order == Stack:
		pages = g.stack(sizes, turn)
	case sameWidth(sizes, turn):
		pages = g.columns(sizes, turn)
	default:
		pages = g.guillotine(sizes, turn)
	}
	p := &Plan{gang: g, sheets: make([]sheet, len(pages))}
	for i := range pages {
		p.sheets[i] = g.finish(&pages[i])
	}
	return p, nil
}

func (g Gang) valid() error {
	switch {
	case g.Paper.W < leastPaper || g.Paper.H < leastPaper || g.Paper.W > mostPaper || g.Paper.H > mostPaper:
		return fmt.Errorf("paper of %s: each side must be from %s to %s", g.Paper, leastPaper, mostPaper)
	case g.Order != Across && g.Order != Stack:
		return fmt.Errorf("no order of labels has the number %d", g.Order)
	case g.Gutter < 0:
		return fmt.Errorf("gutter of %s: it must not be negative; 0 lets neighbours share a cut", g.Gutter)
	}
	if a := g.area(); a.W <= 0 || a.H <= 0 {
		return fmt.Errorf("a printer margin of %s leaves nothing of %s; a paper with both sides above %s would do", g.Margin, NameOf(g.Paper), 2*(g.Margin-g.Clear))
	}
	return nil
}

// tooLarge names the smallest paper that would do.
func (g Gang) tooLarge(i int, s layout.Size) error {
	msg := fmt.Sprintf("%s of %s does not fit %s", nameOf(g.Name, i), s, NameOf(g.Paper))
	if a := g.area(); a.Size != g.Paper {
		msg += fmt.Sprintf(", where a printer margin of %s leaves %s", g.Margin, a.Size)
	}
	// The next larger of the same kind, or else of the other.
	inches := func(p layout.Size) bool { return p.W%(layout.Inch/2) == 0 }
	var best *Paper
	for _, p := range Papers() {
		h := g
		h.Paper = p.Size
		a := h.area()
		if s.W <= a.W && s.H <= a.H || s.H <= a.W && s.W <= a.H {
			kin := inches(p.Size) == inches(g.Paper)
			if best == nil || kin && (inches(best.Size) != inches(g.Paper) || p.Size.W < best.Size.W) {
				best = &p
			}
		}
	}
	if best == nil {
		return errors.New(msg + "; no paper in use is large enough")
	}
	return errors.New(msg + "; " + best.Name + " would do")
}

// sameWidth reports whether all labels, turned as need be, are equally wide.
func sameWidth(sizes []layout.Size, turn []bool) bool {
	for i := range sizes {
		if turned(sizes[i], turn[i]).W != turned(sizes[0], turn[0]).W {
			return false
		}
	}
	return true
}

func turned(s layout.Size, turn bool) layout.Size {
	if turn {
		return s.Turned()
	}
	return s
}

// Len returns how many papers there are.
func (p *Plan) Len() int { return len(p.sheets) }

// Places returns the places of a page, which counts from 0, in reading order:
// down the columns.
func (p *Plan) Places(page int) []Place { return p.sheets[page].places }

// Trim returns what is left of a page when its outer cuts are made.
func (p *Plan) Trim(page int) layout.Rect { return p.sheets[page].trim }

// Pages draws the plan, asking for box n as the page that holds it is drawn.
// Boxes must have the sizes that were planned. Barcodes in them are moved by
// less than a printer's dot, on a copy, so that they lie on its dots.
func (p *Plan) Pages(box func(i int) (*layout.Box, error)) iter.Seq2[layout.Page, error] {
	return func(yield func(layout.Page, error) bool) {
		for i := range p.sheets {
			page, err := p.page(i, box)
			if !yield(page, err) || err != nil {
				return
			}
		}
	}
}

func (p *Plan) page(i int, box func(i int) (*layout.Box, error)) (layout.Page, error) {
	s := &p.sheets[i]
	page := layout.Page{Size: p.gang.Paper, Trim: s.trim}
	for _, pl := range s.places {
		b, err := box(pl.Index)
		if err != nil {
			return layout.Page{}, err
		}
		if got := turned(b.Size, pl.Turn%2 == 1); got != pl.Size {
			return layout.Page{}, fmt.Errorf("%v: set at %s, but its place was planned for %s", b.Ref, got, pl.Size)
		}
		page.Boxes = append(page.Boxes, onDots(layout.Placed{At: pl.At, Box: b, Turn: pl.Turn}))
	}
	if !p.gang.NoTicks {
		for _, c := range s.cuts {
			page.Marks = append(page.Marks, p.gang.ticks(c)...)
		}
	}
	if p.gang.Footer != nil && len(s.waste) > 0 {
		for _, b := range p.gang.Footer(i+1, len(p.sheets)) {
			if at, ok := p.gang.footerPlace(s, b.Size); ok {
				page.Boxes = append(page.Boxes, layout.Placed{At: at, Box: b})
				break
			}
		}
	}
	return page, nil
}

// footerPlace finds a place for a footer in what is cut off: the lowest one,
// and there the lower left corner.
func (g Gang) footerPlace(s *sheet, size layout.Size) (at layout.Point, ok bool) {
	// Between a cut and the footer a hand's breadth of the knife: 1 mm.
	const away = layout.MM
	printable := layout.Rect{Size: g.Paper}.Inset(g.Margin)
	for _, w := range s.waste {
		r := w.Inset(away)
		x0, y0 := max(r.At.X, printable.At.X), max(r.At.Y, printable.At.Y)
		x1, y1 := min(r.Right(), printable.Right()), min(r.Bottom(), printable.Bottom())
		if p := (layout.Point{X: x0, Y: y1 - size.H}); x1-x0 >= size.W && y1-y0 >= size.H && (!ok || p.Y > at.Y) {
			at, ok = p, true
		}
	}
	return at, ok
}
