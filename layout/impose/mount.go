package impose

import (
	"fmt"
	"iter"

	"cornerslip/layout"
)

// A Mount is the sheet that a specimen is fixed on, with the label in the lower
// right corner. The zero value is an A3 sheet (ISO 216) with the label 5 mm
// from both edges.
type Mount struct {
	// Sheet is its size; zero is 297 × 420 mm.
	Sheet layout.Size
	// Margin is kept between the label and the lower and the right edge, and
	// between spots and their edges; zero is 5 mm, below zero none.
	Margin layout.Length
	// Spots are kept free for other things.
	Spots []Spot
	// DrawSpots marks the spots on the sheets of the labels too, not on the
	// guide alone: by hairline corners and their words.
	DrawSpots bool
	// Name returns how messages call label i; nil calls it by its number.
	Name func(i int) string
}

// A Corner is one of a sheet's four.
type Corner int

// The corners. Most spots are counted from the upper left.
const (
	UpperLeft Corner = iota
	UpperRight
	LowerLeft
	LowerRight
)

// A Spot is a place on a mount for something that is put there by hand:
// a barcode sticker, a packet, slips, a stamp, a scale bar, a colour chart.
type Spot struct {
	Name   string // as messages call it
	Size   layout.Size
	Corner Corner // the corner it is near
	// Off is the distance from the corner's two edges; a zero part is the
	// mount's margin.
	Off layout.Point
	// Word is printed in it on the guide, set by the caller; nil prints none.
	Word *layout.Box
}

func (m Mount) withDefaults() Mount {
	if m.Sheet == (layout.Size{}) {
		m.Sheet = layout.Size{W: 297 * layout.MM, H: 420 * layout.MM}
	}
	m.Margin = orDefault(m.Margin, 5*layout.MM)
	return m
}

// spot returns where s lies.
func (m Mount) spot(s Spot) layout.Rect {
	off := s.Off
	if off.X == 0 {
		off.X = m.Margin
	}
	if off.Y == 0 {
		off.Y = m.Margin
	}
	r := layout.Rect{At: off, Size: s.Size}
	if s.Corner == UpperRight || s.Corner == LowerRight {
		r.At.X = m.Sheet.W - off.X - s.Size.W
	}
	if s.Corner == LowerLeft || s.Corner == LowerRight {
		r.At.Y = m.Sheet.H - off.Y - s.Size.H
	}
	return r
}

// label returns where a label of the size given lies if it is alone.
func (m Mount) label(s layout.Size) layout.Rect {
	return layout.Rect{At: layout.Point{X: m.Sheet.W - m.Margin - s.W, Y: m.Sheet.H - m.Margin - s.H}, Size: s}
}

// A named thing on a mount.
type named struct {
	name string
	layout.Rect
}

// spots returns where all spots lie, or which two overlap or leave the sheet.
func (m Mount) spots() ([]named, error) {
	if m.Sheet.W < leastPaper || m.Sheet.H < leastPaper || m.Sheet.W > mostPaper || m.Sheet.H > mostPaper {
		return nil, fmt.Errorf("mounting sheet of %s: each side must be from %s to %s", m.Sheet, leastPaper, mostPaper)
	}
	var out []named
	for _, s := range m.Spots {
		n := named{"the " + s.Name, m.spot(s)}
		switch {
		case s.Size.W <= 0 || s.Size.H <= 0:
			return nil, fmt.Errorf("the spot for the %s has no size", s.Name)
		case s.Corner < UpperLeft || s.Corner > LowerRight:
			return nil, fmt.Errorf("the spot for the %s: a sheet has no corner %d", s.Name, s.Corner)
		}
		if err := m.place(n, out); err != nil {
			return nil, err
		}
		out = append(out, n)
	}
	return out, nil
}

// place reports what is wrong with n's place among others.
func (m Mount) place(n named, others []named) error {
	if !(layout.Rect{Size: m.Sheet}).Contains(n.Rect) {
		return fmt.Errorf("%s of %s does not lie on the mounting sheet of %s: it would reach from %s, %s to %s, %s",
			n.name, n.Size, m.Sheet, n.At.X, n.At.Y, n.Right(), n.Bottom())
	}
	for _, o := range others {
		if n.Overlaps(o.Rect) {
			x := min(n.Right(), o.Right()) - max(n.At.X, o.At.X)
			y := min(n.Bottom(), o.Bottom()) - max(n.At.Y, o.At.Y)
			return fmt.Errorf("%s and %s overlap on the mounting sheet, by %s; move one of them by the shorter side of that",
				n.name, o.name, layout.Size{W: x, H: y})
		}
	}
	return nil
}

// Pages puts each label on a sheet of its own, upright. sizes are those of the
// boxes that box returns.
func (m Mount) Pages(sizes []layout.Size, box func(i int) (*layout.Box, error)) (iter.Seq2[layout.Page, error], error) {
	alone := make([][][]int, len(sizes))
	for i := range alone {
		alone[i] = [][]int{{i}}
	}
	return m.Shared(alone, sizes, box)
}

// Shared puts labels on sheets: each mount lists its gatherings, each gathering
// its labels, which are more than one where the words of the first go on. The
// first label of the first gathering lies in the corner, those that go on above
// it; a further gathering lies left of the one before while there is room, else
// above them all.
func (m Mount) Shared(mounts [][][]int, sizes []layout.Size, box func(i int) (*layout.Box, error)) (iter.Seq2[layout.Page, error], error) {
	m = m.withDefaults()
	spots, err := m.spots()
	if err != nil {
		return nil, err
	}
	places := make([][]placed, len(mounts))
	for k, gatherings := range mounts {
		if places[k], err = m.labels(gatherings, sizes, spots); err != nil {
			return nil, err
		}
	}
	return func(yield func(layout.Page, error) bool) {
		for _, labels := range places {
			page, err := m.page(labels, spots, box)
			if !yield(page, err) || err != nil {
				return
			}
		}
	}, nil
}

// placed is a label with its place.
type placed struct {
	label int
	layout.Rect
}

// labels finds the places of the labels that share a sheet.
func (m Mount) labels(gatherings [][]int, sizes []layout.Size, spots []named) ([]placed, error) {
	var out []placed
	corner := layout.Point{X: m.Sheet.W - m.Margin, Y: m.Sheet.H - m.Margin}
	// right and bottom are where the next gathering ends, top is above all.
	right, bottom, top := corner.X, corner.Y, corner.Y
	for k, labels := range gatherings {
		got, err := m.stack(labels, sizes, spots, layout.Point{X: right, Y: bottom})
		if k > 0 && err != nil {
			right, bottom = corner.X, top
			got, err = m.stack(labels, sizes, spots, layout.Point{X: right, Y: bottom})
		}
		if err != nil {
			return nil, err
		}
		for _, p := range got {
			right, top = min(right, p.At.X-m.Margin), min(top, p.At.Y-m.Margin)
		}
		out = append(out, got...)
	}
	return out, nil
}

// stack places the labels of one gathering, the first with its lower right
// corner at the point given and the others above it; where the sheet is not
// high enough for that, to its left.
func (m Mount) stack(labels []int, sizes []layout.Size, spots []named, at layout.Point) ([]placed, error) {
	pile := func(beside bool) ([]placed, error) {
		var out []placed
		at := at
		for _, i := range labels {
			s := sizes[i]
			r := layout.Rect{At: layout.Point{X: at.X - s.W, Y: at.Y - s.H}, Size: s}
			if err := m.placeLabel(i, r, spots); err != nil {
				return nil, err
			}
			out = append(out, placed{i, r})
			if beside {
				at.X = r.At.X - m.Margin
			} else {
				at.Y = r.At.Y - m.Margin
			}
		}
		return out, nil
	}
	out, err := pile(false)
	if err != nil && len(labels) > 1 {
		if beside, e := pile(true); e == nil {
			return beside, nil
		}
	}
	return out, err
}

// placeLabel reports what is wrong with the place of a label.
func (m Mount) placeLabel(i int, r layout.Rect, spots []named) error {
	name := nameOf(m.Name, i)
	if r.W+m.Margin > m.Sheet.W || r.H+m.Margin > m.Sheet.H {
		return fmt.Errorf("%s of %s does not fit a mounting sheet of %s with %s to its edges; a sheet of %s is the least",
			name, r.Size, m.Sheet, m.Margin, layout.Size{W: r.W + m.Margin, H: r.H + m.Margin})
	}
	return m.place(named{name, r}, spots)
}

func (m Mount) page(labels []placed, spots []named, box func(i int) (*layout.Box, error)) (layout.Page, error) {
	page := layout.Page{Size: m.Sheet}
	for _, l := range labels {
		b, err := box(l.label)
		if err != nil {
			return layout.Page{}, err
		}
		if b.Size != l.Size {
			return layout.Page{}, fmt.Errorf("%v: set at %s, but planned for %s", b.Ref, b.Size, l.Size)
		}
		page.Boxes = append(page.Boxes, onDots(layout.Placed{At: l.At, Box: b}))
	}
	if m.DrawSpots {
		for i, r := range spots {
			page.Marks = append(page.Marks, corners(r.Rect)...)
			page.Boxes = word(page.Boxes, m.Spots[i].Word, r.Rect)
		}
	}
	return page, nil
}
