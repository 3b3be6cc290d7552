package typeset

import (
	"strings"

	"cornerslip/label"
	"cornerslip/layout"
)

// A Line is one line of a block's words, as it was broken.
type Line struct {
	Block   int // of the content
	Role    label.Role
	Text    string // as typed
	Width   layout.Length
	Measure layout.Length // what the line may fill
	Last    bool          // of its block's left part
	// Justified is set where lines but the last are filled to both edges.
	Justified bool
}

// Lines returns the lines of the body and foot that a content is broken into
// at its usual size, without setting it: what a proof-reader of the breaking
// looks at. greedy fills each line as far as it goes instead, for comparison.
func (s *Setter) Lines(c *label.Content, m Measures, greedy bool) ([]Line, error) {
	if err := m.valid(); err != nil {
		return nil, err
	}
	w := s.pool.Get().(*work)
	defer s.pool.Put(w)
	w.reset(s.faces, &m)
	w.greedy = greedy
	blocks, err := w.shape(c)
	if err != nil {
		return nil, err
	}
	st, err := w.stackAt(blocks, m.Text)
	if err != nil {
		return nil, err
	}
	var out []Line
	for _, rows := range [][]row{st.body, st.foot} {
		for i, r := range rows {
			if r.left == nil {
				continue
			}
			measure := m.Width - m.Left - m.Right - r.indent
			if r.right != nil {
				measure -= r.right.width + rightGap(r.size)
			}
			out = append(out, Line{
				Block: r.block, Role: c.Blocks[r.block].Role, Text: r.left.text(), Width: r.left.width, Measure: measure,
				Justified: r.left.st.justify,
				Last:      i == len(rows)-1 || rows[i+1].block != r.block || rows[i+1].left == nil,
			})
		}
	}
	return out, nil
}

// text returns the words of a line as they were typed.
func (l *line) text() string {
	var b strings.Builder
	for i := l.from; i < l.to; i++ {
		it := &l.st.w.items[i]
		for _, p := range l.st.w.parts[it.from:it.to] {
			b.WriteString(p.text)
			if p.spaced {
				b.WriteByte(' ')
			}
		}
		if it.spaced && i < l.to-1 {
			b.WriteByte(' ')
		}
	}
	return b.String()
}
