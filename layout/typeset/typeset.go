// Package typeset sets the words of a label into a box: it alone knows both
// words and places. Text comes out as marks in which every letter has its
// place; what does not fit the tallest label goes on a second one. Nothing is
// ever clipped or dropped.
package typeset

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
)

// A Setter sets labels. It may be used from many goroutines.
type Setter struct {
	faces *face.Setter
	pool  sync.Pool // of *work
}

// New returns a Setter that uses the faces given.
func New(faces *face.Setter) *Setter {
	return &Setter{faces: faces, pool: sync.Pool{New: func() any { return new(work) }}}
}

// A Report says how a label was set.
type Report struct {
	Text    layout.Length // the size of the data
	Height  layout.Length // of the first label
	Squeeze int           // how much of the allowed tightening was used, 0 to 1000
	Labels  int           // 1, or more if the words went on
	// ShortLines counts paragraphs whose last line is a leftover that no
	// other breaking avoids.
	ShortLines int
}

// String says it as the report of a run shows it: "74 mm, 9 pt".
func (r Report) String() string {
	s := r.Height.Decimal(layout.MM, 1) + " mm, " + r.Text.Decimal(layout.Pt, 2) + " pt"
	if r.Labels > 1 {
		s += fmt.Sprintf(", %d labels", r.Labels)
	}
	return s
}

// squeezes are the steps in which leading and white space are tightened.
var squeezes = []int64{0, 250, 500, 750, 1000}

// Set sets c. It returns a box, or several where the words do not fit the
// tallest label. The zero Ref of the boxes holds only kind, part and the count
// of labels; the caller knows the record. The error is an *Error where a
// word cannot be set.
func (s *Setter) Set(c *label.Content, m Measures) ([]*layout.Box, Report, error) {
	if err := m.valid(); err != nil {
		return nil, Report{}, err
	}
	w := s.pool.Get().(*work)
	defer s.pool.Put(w)
	w.reset(s.faces, &m)
	return w.set(c)
}

func (s *work) set(c *label.Content) ([]*layout.Box, Report, error) {
	blocks, err := s.shape(c)
	if err != nil {
		return nil, Report{}, err
	}
	if c.Kind == label.Barcode {
		return s.setBarcode(c, blocks)
	}
	fit, err := s.search(blocks)
	if errors.Is(err, errTooLong) {
		return s.continued(c, blocks)
	}
	if err != nil {
		return nil, Report{}, err
	}
	box := s.draw(fit.stack, fit.frame, fit.height, fit.squeeze)
	box.Ref = ref(c, 1, 1)
	return []*layout.Box{box}, Report{
		Text: fit.stack.text, Height: fit.height, Squeeze: int(fit.squeeze), Labels: 1, ShortLines: fit.stack.short,
	}, nil
}

func ref(c *label.Content, n, of int) layout.Ref {
	return layout.Ref{
		File: c.Origin.File, Line: c.Origin.Line, Row: c.Origin.Row, Kind: string(c.Kind), Key: label.String(c.Key),
		Part: c.Part, For: c.For, Label: n, Of: of,
	}
}

// shape shapes the words of all blocks. The error joins those of all words
// that cannot be set.
func (s *work) shape(c *label.Content) ([]block, error) {
	blocks := s.blockMem.take(len(c.Blocks))
	var errs []error
	for i := range c.Blocks {
		b := &blocks[i]
		b.src = &c.Blocks[i]
		if zoneOf(b.src) != body && len(b.src.Caption) > 0 {
			errs = append(errs, &Error{Text: label.String(b.src.Caption), Err: errors.New("a caption has no column in head or foot")})
			continue
		}
		for _, side := range []struct {
			to   **words
			from []label.Run
		}{{&b.left, b.src.Runs}, {&b.right, b.src.Right}, {&b.caption, b.src.Caption}} {
			w, err := s.prepare(side.from)
			if err != nil {
				errs = append(errs, err)
			}
			*side.to = w
		}
	}
	return blocks, errors.Join(errs...)
}

// fit is a setting that fits a label.
type fit struct {
	stack   *stack
	frame   frame
	height  layout.Length
	squeeze int64
}

// errTooLong says that the words do not fit the tallest label.
var errTooLong = errors.New("the words do not fit the tallest label")

// search finds the first setting that fits, from the most to the least
// wanted: leading and white space give way first, then the taller label is
// taken, then the type gets smaller; with SmallerFirst the type gets smaller
// before the taller label is taken.
func (s *work) search(blocks []block) (fit, error) {
	var stacks []*stack // by size, made when needed
	at := func(k int) (*stack, error) {
		for len(stacks) <= k {
			st, err := s.stackAt(blocks, s.m.Text-layout.Length(len(stacks))*sizeStep)
			if err != nil {
				return nil, err
			}
			stacks = append(stacks, st)
		}
		return stacks[k], nil
	}
	sizes := int((s.m.Text-s.m.TextMin)/sizeStep) + 1
	try := func(k int, height layout.Length) (fit, bool, error) {
		st, err := at(k)
		if err != nil {
			return fit{}, false, err
		}
		f, ok := s.fits(st, height)
		return f, ok, nil
	}
	for i, height := range s.m.Heights {
		last := 1
		if s.m.SmallerFirst || i == len(s.m.Heights)-1 {
			last = sizes
		}
		for k := range last {
			if f, ok, err := try(k, height); ok || err != nil {
				return f, err
			}
		}
	}
	return fit{}, errTooLong
}

// fits finds the least squeeze at which the stack fits the height.
func (s *work) fits(st *stack, height layout.Length) (fit, bool) {
	for _, squeeze := range squeezes {
		f := s.frame(st, height, squeeze)
		if f.bodyTop+s.need(st.body, squeeze) <= f.bodyBottom {
			return fit{st, f, height, squeeze}, true
		}
	}
	return fit{}, false
}

// valid says which measure is impossible.
func (m *Measures) valid() error {
	switch {
	case len(m.Heights) == 0:
		return errors.New("a label needs at least one height")
	case !slices.IsSorted(m.Heights):
		return errors.New("the heights of a label must grow")
	case m.Width-m.Left-m.Right < 20*layout.MM:
		return fmt.Errorf("a label %s wide with margins of %s and %s leaves %s for a line; at least 20 mm are needed",
			m.Width, m.Left, m.Right, m.Width-m.Left-m.Right)
	case m.TextMin > m.Text || m.TextMin < layout.Pt:
		return fmt.Errorf("the smallest size of the data, %s pt, is not between 1 pt and their usual size, %s pt",
			m.TextMin.Decimal(layout.Pt, 2), m.Text.Decimal(layout.Pt, 2))
	case m.LeadingMin > m.Leading || m.LeadingMin < 1000:
		return fmt.Errorf("the smallest leading, %d thousandths of the size, is not between 1000 and the usual one, %d", m.LeadingMin, m.Leading)
	}
	return nil
}
