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

// shortLast is what the last line of a paragraph should fill at least: a little
// over a quarter of the measure. A word or two at the end of a block look lost
// where the line before could spare some (common practice, no source).
func shortLast(measure layout.Length) layout.Length { return measure.MulDiv(28, 100) }

// rightGap is the least space between the left and right part of a line.
func rightGap(size layout.Length) layout.Length { return size.MulDiv(3, 2) }

// fill breaks w at size base. first and rest are the measures of the first
// and of the other lines; room is to stay free on the last line.
func (s *work) fill(st *setting, first, rest, room layout.Length) para.Result {
	o := para.Options{
		First: first, Rest: rest, Justify: st.justify,
		ShortLast: shortLast(rest), LastRoom: room, Buf: s.breakMem.take(len(st.items))[:0],
	}
	if s.greedy {
		return para.Greedy(st.items, o)
	}
	return para.Break(st.items, o)
}

// linesOf turns breaks into lines.
func (s *work) linesOf(st *setting, r para.Result, first, rest layout.Length) []line {
	lines := s.lineMem.take(len(r.Breaks))
	from := 0
	for i, last := range r.Breaks {
		l := &lines[i]
		*l = line{st: st, from: from, to: last + 1}
		for k := from; k <= last; k++ {
			l.width += st.items[k].Width
			if k < last {
				l.width += st.items[k].Space
			}
		}
		l.width += st.items[last].Hyphen - s.trailing(st, last)
		measure := rest
		if i == 0 {
			measure = first
		}
		// The last line keeps its spaces unless they have to shrink, and so does
		// a line whose spaces would grow to holes.
		if free := measure - l.width; st.justify && (free < 0 || i < len(r.Breaks)-1 && free <= l.give()) {
			l.fill = free
			l.width = measure
		}
		from = last + 1
	}
	return lines
}

// give is how much the spaces of a line may grow in all: twice their width.
func (l *line) give() layout.Length {
	var w layout.Length
	for i := l.from; i < l.to-1; i++ {
		w += 2 * l.st.items[i].Space
	}
	return w
}

// trailing is the letterspace behind the last letter of item i: no edge of a
// line counts it, or capitals would stand off the margin.
func (s *work) trailing(st *setting, i int) layout.Length {
	it := &st.w.items[i]
	if it.to == it.from {
		return 0
	}
	last := &st.w.parts[it.to-1]
	return trackingOf(last.style, s.m.runSize(st.base, last.style))
}

// runs reports whether a block is running text, which a house may want filled
// to both edges; names, numbers and captions stand ragged in any house.
func runs(r label.Role) bool {
	switch r {
	case label.Status, label.Place, label.Plant, label.Notes, label.Type, label.Text:
		return true
	}
	return false
}

// hang breaks a block's left and right part so that they share a line where
// there is room: the first line for a family beside a name, the last one for
// all else. indent is taken off every line but the first.
func (s *work) hang(b *block, base, measure, indent layout.Length) (hanging, error) {
	var h hanging
	var right []line
	if b.right != nil {
		st, err := s.at(b.right, base, measure)
		if err != nil {
			return h, err
		}
		right = s.linesOf(st, s.fill(st, measure, measure, 0), measure, measure)
	}
	if b.left == nil {
		h.right = right
		return h, nil
	}
	st, err := s.at(b.left, base, measure-indent)
	if err != nil {
		return h, err
	}
	st.justify = s.m.Justify && runs(b.src.Role)
	rest := measure - indent
	plain := s.fill(st, measure, rest, 0)
	if right == nil {
		h.lines = s.linesOf(st, plain, measure, rest)
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
		if beside := s.fill(st, measure-room, rest, 0); len(beside.Breaks) <= len(plain.Breaks) && !beside.Overfull {
			h.lines = s.linesOf(st, beside, measure-room, rest)
			h.short = beside.Short
			return h, nil
		}
	}
	if room < measure-indent {
		if beside := s.fill(st, measure, rest, room); !beside.Crowded {
			h.lines = s.linesOf(st, beside, measure, rest)
			h.rightOn = len(h.lines) - 1
			h.short = beside.Short
			return h, nil
		}
	}
	h.lines = s.linesOf(st, plain, measure, rest)
	h.short = plain.Short
	h.rightOn = len(h.lines)
	return h, nil
}
