package typeset

import (
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/para"
)

// line is a part of a paragraph that stands on one line.
type line struct {
	st       *setting
	from, to int // its items
	width    layout.Length
	// fill is added to every space in justified setting, beginning with what
	// is left over from dividing.
	fill layout.Length
}

// hanging is a block broken into lines, with what stands at its right end.
type hanging struct {
	lines []line
	right []line
	// rightOn is the line of lines that the first of right shares; it is
	// len(lines) where right has lines of its own.
	rightOn int
	short   bool // the last line is shorter than it should be
}

// shortLast is what the last line of a paragraph should fill at least: a
// fifth of the measure. A single word at the end of a block looks lost
// (common practice, no source).
func shortLast(measure layout.Length) layout.Length { return measure / 5 }

// rightGap is the least space between the left and right part of a line.
func rightGap(size layout.Length) layout.Length { return size.MulDiv(3, 2) }

// fill breaks w at size base. first and rest are the measures of the first
// and of the other lines; room is to stay free on the last line.
func (s *Setter) fill(st *setting, first, rest, room layout.Length, m *Measures) para.Result {
	return para.Break(st.items, para.Options{
		First: first, Rest: rest, Justify: m.Justify,
		ShortLast: shortLast(rest), LastRoom: room,
	})
}

// linesOf turns breaks into lines.
func linesOf(st *setting, r para.Result, first, rest layout.Length, m *Measures) []line {
	lines := make([]line, 0, len(r.Breaks))
	from := 0
	for i, last := range r.Breaks {
		l := line{st: st, from: from, to: last + 1}
		for k := from; k <= last; k++ {
			l.width += st.items[k].Width
			if k < last {
				l.width += st.items[k].Space
			}
		}
		l.width += st.items[last].Hyphen - st.trailing(last, m)
		measure := rest
		if i == 0 {
			measure = first
		}
		// The last line keeps its spaces unless they have to shrink.
		if m.Justify && (i < len(r.Breaks)-1 || l.width > measure) {
			l.fill = measure - l.width
			l.width = measure
		}
		lines = append(lines, l)
		from = last + 1
	}
	return lines
}

// trailing is the letterspace behind the last letter of item i: no edge of a
// line counts it, or capitals would stand off the margin.
func (st *setting) trailing(i int, m *Measures) layout.Length {
	it := &st.w.items[i]
	if it.to == it.from {
		return 0
	}
	last := &st.w.parts[it.to-1]
	return trackingOf(last.style, m.runSize(st.base, last.style))
}

// hang breaks a block's left and right part so that they share a line where
// there is room: the first line for a family beside a name, the last one for
// all else. indent is taken off every line but the first.
func (s *Setter) hang(b *block, base, measure, indent layout.Length, m *Measures) (hanging, error) {
	var h hanging
	var right []line
	if b.right != nil {
		st, err := s.at(b.right, base, measure, m)
		if err != nil {
			return h, err
		}
		right = linesOf(st, s.fill(st, measure, measure, 0, m), measure, measure, m)
	}
	if b.left == nil {
		h.right = right
		return h, nil
	}
	st, err := s.at(b.left, base, measure-indent, m)
	if err != nil {
		return h, err
	}
	rest := measure - indent
	plain := s.fill(st, measure, rest, 0, m)
	if right == nil {
		h.lines = linesOf(st, plain, measure, rest, m)
		h.short = plain.Short
		return h, nil
	}
	h.right = right
	gap := rightGap(base)
	room := right[0].width + gap
	if len(right) > 1 {
		room = measure // several lines never share one
	}
	if b.src.Role == label.Name && room < measure-indent {
		if beside := s.fill(st, measure-room, rest, 0, m); len(beside.Breaks) <= len(plain.Breaks) && !beside.Overfull {
			h.lines = linesOf(st, beside, measure-room, rest, m)
			h.short = beside.Short
			return h, nil
		}
	}
	if room < measure-indent {
		if beside := s.fill(st, measure, rest, room, m); !beside.Crowded {
			h.lines = linesOf(st, beside, measure, rest, m)
			h.rightOn = len(h.lines) - 1
			h.short = beside.Short
			return h, nil
		}
	}
	h.lines = linesOf(st, plain, measure, rest, m)
	h.short = plain.Short
	h.rightOn = len(h.lines)
	return h, nil
}
