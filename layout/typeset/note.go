package typeset

import (
	"cornerslip/label"
	"cornerslip/layout"
)

// A Note says how words that stand beside labels are set: footers, legends,
// words on a guide. The zero value is 7 pt in black, a line for each paragraph.
type Note struct {
	Size layout.Length // of the type
	Grey layout.Grey
	// Width is what paragraphs are broken to; zero never breaks them.
	Width layout.Length
	// Gap is the white space between paragraphs beyond the leading.
	Gap layout.Length
	// Centred sets each line in the middle of the box.
	Centred bool
}

// noteSize is the size of notes unless they say otherwise, and unbroken the
// measure of those that are not broken.
const (
	noteSize = 7 * layout.Pt
	unbroken = 2000 * layout.MM
)

// Note sets paragraphs into a box that is as large as they need. The error is
// an *Error where a word cannot be set.
func (s *Setter) Note(o Note, paragraphs ...[]label.Run) (*layout.Box, error) {
	if o.Size == 0 {
		o.Size = noteSize
	}
	w := s.pool.Get().(*work)
	defer s.pool.Put(w)
	m := plainMeasures(o.Size)
	w.reset(s.faces, &m)
	measure := o.Width
	if measure == 0 {
		measure = unbroken
	}
	type placedLine struct {
		line
		y layout.Length
	}
	var lines []placedLine
	lead, y := m.lead(o.Size, 0), layout.Length(0)
	var widest layout.Length
	for k, runs := range paragraphs {
		words, err := w.prepare(runs)
		if err != nil {
			return nil, err
		}
		if k > 0 {
			y += o.Gap
		}
		if words == nil {
			y += lead
			continue
		}
		broken, err := w.single(words, o.Size, measure)
		if err != nil {
			return nil, err
		}
		for _, l := range broken {
			lines = append(lines, placedLine{l, y + s.faces.Metrics(0, o.Size).Ascent})
			widest = max(widest, l.width)
			y += lead
		}
	}
	if o.Width > 0 {
		widest = o.Width
	}
	p := w.newPen()
	for i := range lines {
		l := &lines[i]
		x := layout.Length(0)
		if o.Centred {
			x = (widest - l.width) / 2
		}
		p.line(&l.line, layout.Point{X: x, Y: l.y})
	}
	return &layout.Box{Size: layout.Size{W: widest, H: y}, Marks: greyed(p.marks(0), o.Grey)}, nil
}

// plainMeasures are those of words without a label around them.
func plainMeasures(size layout.Length) Measures {
	m := For(label.Sheet)
	m.Text, m.TextMin, m.Small, m.House = size, size, size.MulDiv(9, 10).Snap(layout.CentiPt), size
	m.Justify = false
	return m
}

// greyed gives all text of marks a grey.
func greyed(marks []layout.Mark, g layout.Grey) []layout.Mark {
	if g == 0 {
		return marks
	}
	for i, m := range marks {
		if t, ok := m.(layout.Text); ok {
			t.Grey = g
			marks[i] = t
		}
	}
	return marks
}
