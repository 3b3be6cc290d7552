package impose

import (
	"fmt"
	"iter"
	"strings"

	"cornerslip/layout"
)

// A Packet is a blank that folds into a packet: the lower part is folded up by
// just over a third, the upper part down over it so that the fold lies flush
// with the edge underneath, and the sides back. The label is printed upside
// down on the upper part's outside, so that it faces the reader on the closed
// packet.
//
// The folds are those of the Florida Museum Herbarium's fragment packets
// (floridamuseum.ufl.edu/herbarium/methods/fragmentpackets.htm): of half a
// Letter sheet a face of about 73 × 89 mm comes, of a quarter 48 × 57 mm.
type Packet struct {
	// Blank is the uncut size; its longer side is the one that is folded in
	// three, whichever is named first. Zero is half a Letter sheet.
	Blank layout.Size
	// Flap is how far the sides are folded back; zero is 25.4 mm (an inch).
	Flap layout.Length
}

const (
	usualFlap = layout.Inch
	// flapShort is by how much the upper part is shorter than the lower one, so
	// that it lies flat on it.
	flapShort = 5 * layout.MM
	// leastFace is the narrowest packet that a label can be read on.
	leastFace = 30 * layout.MM
	leastFlap = 8 * layout.MM
	// leastRoom is the least height of a label.
	leastRoom = 10 * layout.MM
)

// upright returns the packet with its blank upright and its zero values
// filled in.
func (p Packet) upright() Packet {
	if p.Blank == (layout.Size{}) {
		p.Blank = layout.Size{W: 11 * layout.Inch / 2, H: 17 * layout.Inch / 2}
	}
	if p.Blank.W > p.Blank.H {
		p.Blank = p.Blank.Turned()
	}
	if p.Flap == 0 {
		p.Flap = usualFlap
	}
	return p
}

// Bottom returns the height of the lower part, which is that of the closed
// packet: a third of what is left when the upper part's shortness is added.
func (p Packet) bottom() layout.Length { return (p.upright().Blank.H + flapShort) / 3 }

// top returns the height of the upper part.
func (p Packet) top() layout.Length { return p.upright().Blank.H - 2*p.bottom() }

// Face returns the size of the closed packet.
func (p Packet) Face() layout.Size {
	u := p.upright()
	return layout.Size{W: u.Blank.W - 2*u.Flap, H: p.bottom()}
}

// Room returns the size of the label: the outside of the upper part between
// the folds.
func (p Packet) Room() layout.Size { return layout.Size{W: p.Face().W, H: p.top()} }

// Back returns the part of the upright blank that becomes the packet's back.
func (p Packet) back() layout.Rect {
	return layout.Rect{At: layout.Point{X: p.upright().Flap, Y: p.top()}, Size: p.Face()}
}

// Valid reports a blank that does not fold into a packet, and what would.
func (p Packet) Valid() error {
	u := p.upright()
	if u.Flap < leastFlap {
		return fmt.Errorf("side flaps of %s do not keep a packet closed; at least %s are needed", u.Flap, leastFlap)
	}
	if least := 2*flapShort + 3*leastRoom; u.Blank.H < least {
		return fmt.Errorf("a blank %s long folds into a packet with %s for its label; one at least %s long would do", u.Blank.H, max(0, p.top()), least)
	}
	if face := p.Face(); face.W < leastFace {
		msg := fmt.Sprintf("side flaps of %s leave %s of a blank %s wide, and a packet needs %s", u.Flap, max(0, face.W), u.Blank.W, leastFace)
		if most := (u.Blank.W - leastFace) / 2 / layout.MM * layout.MM; most >= leastFlap {
			return fmt.Errorf("%s; flaps of %s would do", msg, most)
		}
		return fmt.Errorf("%s; a blank at least %s wide would do", msg, leastFace+2*u.Flap)
	}
	return nil
}

// A Blank is the size of a packet before it is folded, by name.
type Blank struct {
	Name string
	Size layout.Size // the longer side is the height
}

// Blanks returns the blanks that have a name: the parts of a Letter sheet that
// the Florida Museum folds, the sizes of ISO 216, and a square for seeds, two
// of which are cut from A4.
func Blanks() []Blank {
	letter := layout.Size{W: 17 * layout.Inch / 2, H: 11 * layout.Inch}
	out := []Blank{
		{"letter-quarter", layout.Size{W: letter.W / 2, H: letter.H / 2}},
		{"letter-half", layout.Size{W: letter.H / 2, H: letter.W}},
		{"letter", letter},
	}
	for _, p := range Papers() {
		switch p.Name {
		case "A4", "A5", "A6":
			out = append(out, Blank{p.Name, p.Size})
		}
	}
	side := 148 * layout.MM
	return append(out, Blank{"square", layout.Size{W: side, H: side}})
}

// ParseBlank reads a blank's name in any case, or its size in millimetres,
// before it is folded: "letter-half", "A5", "120x160".
func ParseBlank(text string) (layout.Size, error) {
	t := strings.ToLower(strings.TrimSpace(text))
	var names []string
	for _, b := range Blanks() {
		if strings.ToLower(b.Name) == t {
			return b.Size, nil
		}
		names = append(names, b.Name)
	}
	s, err := ParsePaper(text)
	if err != nil && (t == "" || t[0] < '0' || t[0] > '9') { // a name, not a size
		return s, fmt.Errorf("no packet blank is called %q; there are %s, or give the uncut width × height in millimetres, as in 120x160", text, strings.Join(names, ", "))
	}
	if s.W > s.H {
		s = s.Turned()
	}
	return s, err
}

// Packets puts blanks on paper, to be cut apart and folded.
type Packets struct {
	Packet Packet
	// Gang says how blanks lie on paper. They are turned as they fit best.
	Gang Gang
	// Legend names the kinds of lines. It is printed once on each page, on what
	// becomes the back of the first packet, if it has room there; nil prints
	// none.
	Legend *layout.Box
}

// A PacketPlan says where each blank goes.
type PacketPlan struct {
	*Plan
	p     Packets
	turns int // of the blanks as they were planned
}

// Plan arranges n blanks.
func (p Packets) Plan(n int) (*PacketPlan, error) {
	if err := p.Packet.Valid(); err != nil {
		return nil, err
	}
	p.Packet = p.Packet.upright()
	g := p.Gang.withDefaults()
	if err := g.valid(); err != nil {
		return nil, err
	}
	g.WholeCuts = true
	size, turns := p.Packet.Blank, 0
	each := func(s layout.Size) layout.Length {
		a := g.area()
		return ((a.W + g.Gutter) / (s.W + g.Gutter)) * ((a.H + g.Gutter) / (s.H + g.Gutter))
	}
	if each(size.Turned()) > each(size) {
		size, turns = size.Turned(), 1
	}
	sizes := make([]layout.Size, n)
	for i := range sizes {
		sizes[i] = size
	}
	g.Name = func(i int) string { return fmt.Sprintf("packet blank %d", i+1) }
	plan, err := p.orDefaults(g).Plan(sizes)
	if err != nil {
		return nil, err
	}
	return &PacketPlan{plan, p, turns}, nil
}

// orDefaults undoes withDefaults where a value of none became zero, which
// would read as the default again.
func (p Packets) orDefaults(g Gang) Gang {
	g.Margin, g.Clear = p.Gang.Margin, p.Gang.Clear
	return g
}

// Pages draws the blanks with their lines. box returns label i, of the size
// that Packet.Room gives.
func (p *PacketPlan) Pages(box func(i int) (*layout.Box, error)) iter.Seq2[layout.Page, error] {
	return func(yield func(layout.Page, error) bool) {
		for i := range p.sheets {
			page, err := p.page(i, box)
			if !yield(page, err) || err != nil {
				return
			}
		}
	}
}

func (p *PacketPlan) page(n int, box func(i int) (*layout.Box, error)) (layout.Page, error) {
	places := p.sheets[n].places
	page, err := p.Plan.page(n, func(i int) (*layout.Box, error) {
		b := &layout.Box{Size: p.p.Packet.Blank}
		if p.turns == 1 {
			b.Size = b.Size.Turned()
		}
		return b, nil
	})
	if err != nil {
		return page, err
	}
	beside := page.Boxes[len(places):] // the footer
	page.Boxes = nil
	for k, pl := range places {
		b, err := box(pl.Index)
		if err != nil {
			return page, err
		}
		if room := p.p.Packet.Room(); b.Size != room {
			return page, fmt.Errorf("%v: set at %s, but the packet's flap is %s", b.Ref, b.Size, room)
		}
		turn := p.turns + pl.Turn
		page.Marks = append(page.Marks, p.folds(pl.At, turn)...)
		label := layout.Rect{At: layout.Point{X: p.p.Packet.Flap}, Size: b.Size}
		page.Boxes = append(page.Boxes, p.placed(pl.At, turn, label, b, 2))
		if k == 0 && p.p.Legend != nil {
			back := p.p.Packet.back().Inset(2 * layout.MM)
			if l := p.p.Legend; l.Size.W <= back.W && l.Size.H <= back.H {
				at := layout.Rect{At: layout.Point{X: back.At.X + (back.W-l.Size.W)/2, Y: back.At.Y + (back.H-l.Size.H)/2}, Size: l.Size}
				page.Boxes = append(page.Boxes, p.placed(pl.At, turn, at, l, 0))
			}
		}
	}
	page.Boxes = append(page.Boxes, beside...)
	return page, nil
}

// placed puts a box into the rectangle r of an upright blank whose upper left
// corner, once turned, lies at the point given; more turns the box itself.
func (p *PacketPlan) placed(at layout.Point, turn int, r layout.Rect, b *layout.Box, more int) layout.Placed {
	return onDots(layout.Placed{At: at.Add(corner(r, p.p.Packet.Blank, turn)), Box: b, Turn: (turn + more) % 4})
}

// Lines of a packet, told apart by style: cuts are solid, a fold away from the
// reader dashed, one towards the reader dashed and dotted.
var (
	foldAway    = []layout.Length{3 * layout.MM, 3 * layout.MM / 2}
	foldTowards = []layout.Length{3 * layout.MM, layout.MM, layout.MM / 2, layout.MM}
)

// A LineStyle is a kind of line on a packet's blank.
type LineStyle int

// The kinds, for legends.
const (
	CutLine LineStyle = iota
	FoldAway
	FoldTowards
)

// Sample draws a short piece of a kind of line, from the point given to the
// right.
func (l LineStyle) Sample(at layout.Point, length layout.Length) layout.Mark {
	s := layout.Stroke{From: at, To: layout.Point{X: at.X + length, Y: at.Y}, Width: tickWidth, Grey: tickGrey}
	switch l {
	case FoldAway:
		s.Dash = foldAway
	case FoldTowards:
		s.Dash = foldTowards
	}
	return s
}

// folds draws the fold lines of a blank.
func (p *PacketPlan) folds(at layout.Point, turn int) []layout.Mark {
	k := p.p.Packet
	w, h := k.Blank.W, k.Blank.H
	print := layout.Rect{Size: p.gang.Paper}.Inset(p.gang.Margin)
	var out []layout.Mark
	fold := func(x0, y0, x1, y1 layout.Length, dash []layout.Length) {
		r := layout.Rect{At: layout.Point{X: x0, Y: y0}, Size: layout.Size{W: x1 - x0, H: y1 - y0}}
		c := corner(r, k.Blank, turn)
		size := turned(r.Size, turn%2 == 1)
		from := layout.Point{X: at.X + c.X, Y: at.Y + c.Y}
		to := layout.Point{X: from.X + size.W, Y: from.Y + size.H}
		from = layout.Point{X: max(from.X, print.At.X), Y: max(from.Y, print.At.Y)}
		to = layout.Point{X: min(to.X, print.Right()), Y: min(to.Y, print.Bottom())}
		out = append(out, layout.Stroke{From: from, To: to, Width: tickWidth, Grey: tickGrey, Dash: dash})
	}
	fold(0, k.top(), w, k.top(), foldAway)
	fold(0, h-k.bottom(), w, h-k.bottom(), foldAway)
	fold(k.Flap, 0, k.Flap, h, foldTowards)
	fold(w-k.Flap, 0, w-k.Flap, h, foldTowards)
	return out
}
