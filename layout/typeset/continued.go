package typeset

import (
	"fmt"
	"slices"
	"strconv"

	"cornerslip/label"
	"cornerslip/layout"
)

// continued sets words that do not fit the tallest label on two or more. The
// first label keeps head and foot; the others begin with collector and number
// and say which of how many they are, and so does the end of each that goes
// on. Type keeps its full size: where there is a second label, there is room.
func (s *Setter) continued(c *label.Content, blocks []block, m *Measures) ([]*layout.Box, Report, error) {
	st, err := s.stackAt(blocks, m.Text, m)
	if err != nil {
		return nil, Report{}, err
	}
	// How many labels there are must be known before the first is drawn, since
	// each says it; the words "2 of 2" are as wide as "2 of 9".
	for of := 2; of <= 9; of++ {
		boxes, done, err := s.spread(c, st, of, m)
		if err != nil {
			return nil, Report{}, err
		}
		if done {
			return boxes, Report{
				Text: st.text, Height: boxes[0].Size.H, Squeeze: int(continuedSqueeze), Labels: of, ShortLines: st.short,
			}, nil
		}
	}
	return nil, Report{}, &Error{Origin: c.Origin, Text: label.String(c.Key),
		Err: fmt.Errorf("the words do not fit nine labels of %s; shorten them", layout.Size{W: m.Width, H: m.Heights[len(m.Heights)-1]})}
}

// continuedSqueeze is how tight labels are set that could not hold the words.
const continuedSqueeze = 500

// spread lays the rows on so many labels, each filled before the next. done
// is false where they need more.
func (s *Setter) spread(c *label.Content, st *stack, of int, m *Measures) (boxes []*layout.Box, done bool, err error) {
	rest := slices.Clone(st.body) // the rows at the cuts change
	for n := 1; n <= of; n++ {
		part := &stack{text: st.text, head: st.head, foot: st.foot, bars: st.bars}
		if n > 1 {
			key, err := s.keyRows(c, n, of, m)
			if err != nil {
				return nil, false, err
			}
			part.head, part.foot, part.bars = key, nil, nil
		}
		var mark []row
		if n < of {
			if mark, err = s.markRow(c, n, of, m); err != nil {
				return nil, false, err
			}
		}
		var box *layout.Box
		box, rest, err = s.fillLabel(part, rest, mark, m)
		if err != nil {
			return nil, false, &Error{Origin: c.Origin, Text: label.String(c.Key), Err: err}
		}
		box.Ref = ref(c, n, of)
		boxes = append(boxes, box)
		if len(rest) == 0 {
			return boxes, n == of, nil
		}
	}
	return nil, false, nil
}

// fillLabel puts as many rows on a label as it holds: the tallest if rows are
// left over, otherwise the smallest that will do.
func (s *Setter) fillLabel(part *stack, rows, mark []row, m *Measures) (*layout.Box, []row, error) {
	if len(mark) == 0 {
		part.body = rows
		for _, height := range m.Heights {
			if f, ok := s.fits(part, height, m); ok {
				return s.draw(part, f.frame, f.height, f.squeeze, m), nil, nil
			}
		}
	}
	height := m.Heights[len(m.Heights)-1]
	f := s.frame(part, height, continuedSqueeze, m)
	room := f.bodyBottom - f.bodyTop
	if room <= 0 {
		return nil, nil, fmt.Errorf("head and foot alone do not fit a label of %s", layout.Size{W: m.Width, H: height})
	}
	take := 0
	for n := 1; n <= len(rows); n++ {
		if s.need(append(rows[:n:n], mark...), continuedSqueeze, m) > room {
			break
		}
		take = n
	}
	take = goodCut(rows, take)
	if take == 0 {
		return nil, nil, fmt.Errorf("not a single line fits between head and foot of a label of %s", layout.Size{W: m.Width, H: height})
	}
	part.body = append(rows[:take:take], mark...)
	rest := rows[take:]
	if len(rest) > 0 {
		rest[0].above = none
	}
	return s.draw(part, f, height, continuedSqueeze, m), rest, nil
}

// goodCut moves a cut of rows back to where it parts no name and leaves no
// single line of a paragraph behind or ahead, if that is not far.
func goodCut(rows []row, take int) int {
	if take >= len(rows) {
		return take
	}
	for cut := take; cut > 0 && cut > take-3; cut-- {
		before, after := rows[cut-1], rows[cut]
		if after.first { // between two paragraphs
			return cut
		}
		if !before.first && !after.last {
			return cut
		}
	}
	return take
}

// keyRows is the head of a continuation: collector and number, and "label
// continued, 2 of 2".
func (s *Setter) keyRows(c *label.Content, n, of int, m *Measures) ([]row, error) {
	return s.extraRow(&label.Block{Role: label.Collector, Runs: c.Key, Right: []label.Run{
		{Text: c.Continued + ", " + count(c, n, of), Style: label.Small, Keep: true},
	}}, m)
}

// markRow stands at the end of a label that goes on: "1 of 2".
func (s *Setter) markRow(c *label.Content, n, of int, m *Measures) ([]row, error) {
	rows, err := s.extraRow(&label.Block{Role: label.Det, Right: []label.Run{{Text: count(c, n, of), Keep: true}}}, m)
	if len(rows) > 0 {
		rows[0].above = groupSpace
	}
	return rows, err
}

func count(c *label.Content, n, of int) string {
	word := c.OfWord
	if word == "" {
		word = "of"
	}
	return strconv.Itoa(n) + " " + word + " " + strconv.Itoa(of)
}

// extraRow sets a block that the content does not hold itself.
func (s *Setter) extraRow(b *label.Block, m *Measures) ([]row, error) {
	blk := block{src: b}
	var err error
	if blk.left, err = s.prepare(b.Runs); err != nil {
		return nil, err
	}
	if blk.right, err = s.prepare(b.Right); err != nil {
		return nil, err
	}
	rows, _, err := s.rows(&blk, -1, m.Text, m.Width-m.Left-m.Right, 0, m)
	return rows, err
}
