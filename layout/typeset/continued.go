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
func (s *work) continued(c *label.Content, blocks []block) ([]*layout.Box, Report, error) {
	st, err := s.stackAt(blocks, s.m.Text)
	if err != nil {
		return nil, Report{}, err
	}
	// How many labels there are must be known before the first is drawn, since
	// each says it; the words "2 of 2" are as wide as "2 of 9".
	for of := 2; of <= 9; of++ {
		boxes, done, err := s.spread(c, st, of)
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
		Err: fmt.Errorf("the words do not fit nine labels of %s; shorten them", layout.Size{W: s.m.Width, H: s.m.Heights[len(s.m.Heights)-1]})}
}

// continuedSqueeze is how tight labels are set that could not hold the words.
const continuedSqueeze = 500

// spread lays the rows on so many labels, each filled before the next. done
// is false where they need more.
func (s *work) spread(c *label.Content, st *stack, of int) (boxes []*layout.Box, done bool, err error) {
	rest := slices.Clone(st.body) // the rows at the cuts change
	for n := 1; n <= of; n++ {
		part := &stack{text: st.text, head: st.head, foot: st.foot, bars: st.bars}
		if n > 1 {
			key, err := s.keyRows(c, n, of)
			if err != nil {
				return nil, false, err
			}
			part.head, part.foot, part.bars = key, nil, nil
		}
		var mark []row
		if n < of {
			if mark, err = s.markRow(c, n, of); err != nil {
				return nil, false, err
			}
		}
		var box *layout.Box
		box, rest, err = s.fillLabel(part, rest, mark)
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
func (s *work) fillLabel(part *stack, rows, mark []row) (*layout.Box, []row, error) {
	if len(mark) == 0 {
		part.body = rows
		for _, height := range s.m.Heights {
			if f, ok := s.fits(part, height); ok {
				return s.draw(part, f.frame, f.height, f.squeeze), nil, nil
			}
		}
	}
	height := s.m.Heights[len(s.m.Heights)-1]
	f := s.frame(part, height, continuedSqueeze)
	room := f.bodyBottom - f.bodyTop
	if room <= 0 {
		return nil, nil, fmt.Errorf("head and foot alone do not fit a label of %s", layout.Size{W: s.m.Width, H: height})
	}
	take := 0
	for n := 1; n <= len(rows); n++ {
		if s.need(append(rows[:n:n], mark...), continuedSqueeze) > room {
			break
		}
		take = n
	}
	take = goodCut(rows, take)
	if take == 0 {
		return nil, nil, fmt.Errorf("not a single line fits between head and foot of a label of %s", layout.Size{W: s.m.Width, H: height})
	}
	part.body = append(rows[:take:take], mark...)
	rest := rows[take:]
	if len(rest) > 0 {
		rest[0].above = none
	}
	return s.draw(part, f, height, continuedSqueeze), rest, nil
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
func (s *work) keyRows(c *label.Content, n, of int) ([]row, error) {
	key := slices.Clone(c.Key)
	for i := range key {
		key[i].Style |= label.Bold // as at the foot of the first label
	}
	return s.extraRow(&label.Block{Role: label.Collector, Runs: key, Right: []label.Run{
		{Text: c.Continued + ", " + count(c, n, of), Style: label.Small, Keep: true},
	}})
}

// markRow stands at the end of a label that goes on: "1 of 2".
func (s *work) markRow(c *label.Content, n, of int) ([]row, error) {
	rows, err := s.extraRow(&label.Block{Role: label.Det, Right: []label.Run{{Text: count(c, n, of), Keep: true}}})
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
func (s *work) extraRow(b *label.Block) ([]row, error) {
	blk := block{src: b}
	var err error
	if blk.left, err = s.prepare(b.Runs); err != nil {
		return nil, err
	}
	if blk.right, err = s.prepare(b.Right); err != nil {
		return nil, err
	}
	rows, _, err := s.rows(&blk, -1, s.m.Text, s.m.Width-s.m.Left-s.m.Right, 0)
	return rows, err
}
