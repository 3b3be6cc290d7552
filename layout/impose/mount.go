package impose

import (
	"fmt"
	"iter"

	"cornerslip/layout"
)

// A Mount is the sheet that a specimen is fixed on, with one label in the
// lower right corner. The zero value is an A3 sheet (ISO 216) with the label
// 5 mm from both edges.
type Mount struct {
	// Sheet is its size; zero is 297 × 420 mm.
	Sheet layout.Size
	// Margin is kept between the label and the lower and the right edge; zero is
	// 5 mm, below zero none.
	Margin layout.Length
}

func (m Mount) withDefaults() Mount {
	if m.Sheet == (layout.Size{}) {
		m.Sheet = layout.Size{W: 297 * layout.MM, H: 420 * layout.MM}
	}
	switch {
	case m.Margin == 0:
		m.Margin = 5 * layout.MM
	case m.Margin < 0:
		m.Margin = 0
	}
	return m
}

// Pages puts each label on a sheet of its own, upright. sizes are those of the
// boxes that box returns.
func (m Mount) Pages(sizes []layout.Size, box func(i int) (*layout.Box, error)) (iter.Seq2[layout.Page, error], error) {
	m = m.withDefaults()
	if m.Sheet.W < leastPaper || m.Sheet.H < leastPaper || m.Sheet.W > mostPaper || m.Sheet.H > mostPaper {
		return nil, fmt.Errorf("mounting sheet of %s: each side must be from %s to %s", m.Sheet, leastPaper, mostPaper)
	}
	for i, s := range sizes {
		if s.W+m.Margin > m.Sheet.W || s.H+m.Margin > m.Sheet.H {
			return nil, fmt.Errorf("label %d of %s does not fit a mounting sheet of %s with %s to its edges; a sheet of %s is the least",
				i+1, s, m.Sheet, m.Margin, layout.Size{W: s.W + m.Margin, H: s.H + m.Margin})
		}
	}
	return func(yield func(layout.Page, error) bool) {
		for i, s := range sizes {
			page := layout.Page{Size: m.Sheet}
			b, err := box(i)
			switch {
			case err != nil:
			case b.Size != s:
				err = fmt.Errorf("%v: set at %s, but planned for %s", b.Ref, b.Size, s)
			default:
				at := layout.Point{X: m.Sheet.W - m.Margin - s.W, Y: m.Sheet.H - m.Margin - s.H}
				page.Boxes = []layout.Placed{onDots(layout.Placed{At: at, Box: b})}
			}
			if !yield(page, err) || err != nil {
				return
			}
		}
	}, nil
}
