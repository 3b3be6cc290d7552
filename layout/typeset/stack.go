package typeset

import (
	"cornerslip/label"
	"cornerslip/layout"
)

// block is a block of the content with its words shaped.
type block struct {
	src                  *label.Block
	left, right, caption *words
}

// row is one line of the label: what shares a baseline.
type row struct {
	size    layout.Length // decides the leading
	above   space         // white space above it, beyond the leading
	left    *line
	right   *line
	caption *line
	indent  layout.Length
	block   int  // of the content
	first   bool // of its block
	last    bool // of its block
	write   bool // an empty line to write on
	centred bool // a heading, wherever it stands
}

// space names the kinds of white space above a row.
type space uint8

const (
	none space = iota
	groupSpace
)

// stack is everything of a label broken into rows at one size of type; where
// the rows come to stand is not decided yet.
type stack struct {
	text             layout.Length // the size of the data
	head, body, foot []row
	bars             *barsRow
	short            int // paragraphs whose last line is too short
}

// stackAt breaks all blocks at the size given.
func (s *work) stackAt(blocks []block, text layout.Length) (*stack, error) {
	st := &stack{text: text}
	measure := s.m.Width - s.m.Left - s.m.Right
	column := s.captionColumn(blocks)
	bodyGroup := 0
	for i := range blocks {
		b := &blocks[i]
		z := zoneOf(b.src)
		if b.src.Role == label.Symbol {
			bars, err := s.barsRow(b, text, measure)
			if err != nil {
				return nil, err
			}
			st.bars = bars
			if b.right != nil { // words at the right of bars stand in the foot
				b = &block{src: &label.Block{Role: label.Number}, right: b.right}
				rows, _, err := s.rows(b, i, text, measure, column)
				if err != nil {
					return nil, err
				}
				st.foot = s.share(st.foot, rows, measure)
			}
			continue
		}
		rows, short, err := s.rows(b, i, text, measure, column)
		if err != nil {
			return nil, err
		}
		if short {
			st.short++
		}
		if len(rows) == 0 {
			continue
		}
		if b.src.Role == label.House || b.src.Role == label.Project {
			for k := range rows {
				rows[k].centred = true
			}
		}
		switch z {
		case head:
			st.head = append(st.head, rows...)
		case foot:
			st.foot = s.share(st.foot, rows, measure)
		default:
			g := group(b.src.Role)
			if g == 5 {
				g = 100 + i // plain lines say themselves what they keep close to
			}
			if len(st.body) > 0 && g != bodyGroup && !b.src.Tight {
				rows[0].above = groupSpace
			}
			bodyGroup = g
			st.body = s.lowerFamily(st.body, rows, b.src.Role, measure)
		}
	}
	return st, nil
}

// share appends rows to the foot. Where the last line there has its right half
// free and the next line is empty at the left, both stand on one.
func (s *work) share(foot, rows []row, measure layout.Length) []row {
	if n := len(foot); n > 1 {
		last, next := &foot[n-1], &rows[0]
		if last.right == nil && last.left != nil && next.left == nil && next.right != nil && last.size == next.size &&
			last.left.width+rightGap(last.size)+next.right.width <= measure {
			last.right, last.last = next.right, next.last
			rows = rows[1:]
		}
	}
	return append(foot, rows...)
}

// lowerFamily appends rows to the body. A family that found no room beside the
// name and stands alone at the right moves down beside the determiner.
func (s *work) lowerFamily(body, rows []row, role label.Role, measure layout.Length) []row {
	n := len(body)
	if n > 0 && role == label.Det && body[n-1].left == nil && body[n-1].right != nil && body[n-1].caption == nil {
		next := &rows[0]
		if next.left != nil && next.right == nil && next.left.width+rightGap(next.size)+body[n-1].right.width <= measure-next.indent {
			next.right = body[n-1].right
			body = body[:n-1]
		}
	}
	return append(body, rows...)
}

// captionColumn is the width of the hanging column, 0 if no block has a
// caption.
func (s *work) captionColumn(blocks []block) layout.Length {
	for i := range blocks {
		if blocks[i].caption != nil {
			return s.m.CaptionColumn
		}
	}
	return 0
}

// rows breaks a block into the lines it takes.
func (s *work) rows(b *block, index int, text, measure, column layout.Length) ([]row, bool, error) {
	size := s.m.size(b.src.Role, text)
	if zoneOf(b.src) != body {
		column = 0
	}
	if b.src.Role == label.Blank {
		return s.blankRow(b, index, text, measure, column)
	}
	indent := layout.Length(0)
	if b.src.Role == label.Name {
		indent = s.m.Indent
	}
	h, err := s.hang(b, size, measure-column, indent)
	if err != nil {
		return nil, false, err
	}
	rows := s.rowMem.take(len(h.lines) + len(h.right))[:0]
	for k := range h.lines {
		r := row{size: size, left: &h.lines[k], block: index, indent: column}
		if k > 0 {
			r.indent += indent
		}
		if k == h.rightOn && len(h.right) > 0 {
			r.right = &h.right[0]
			h.right = h.right[1:]
		}
		rows = append(rows, r)
	}
	for k := range h.right {
		rows = append(rows, row{size: size, right: &h.right[k], block: index})
	}
	if b.caption != nil && column > 0 {
		if rows, err = s.caption(b, rows, size, index, column); err != nil {
			return nil, false, err
		}
	}
	if len(rows) > 0 {
		rows[0].first, rows[len(rows)-1].last = true, true
	}
	return rows, h.short, nil
}

// caption puts the caption's lines before the rows, adding rows if the caption
// is the longer of the two.
func (s *work) caption(b *block, rows []row, size layout.Length, index int, column layout.Length) ([]row, error) {
	room := column - rightGap(s.m.House)
	st, err := s.at(b.caption, s.m.House, room)
	if err != nil {
		return nil, err
	}
	for k, l := range s.linesOf(st, s.fill(st, room, room, 0), room, room) {
		if k == len(rows) {
			rows = append(rows, row{size: size, block: index})
		}
		rows[k].caption = &l
	}
	return rows, nil
}

// writeSize is the height of an empty line, enough to write on by hand.
const writeSize = 18 * layout.Pt

func (s *work) blankRow(b *block, index int, text, measure, column layout.Length) ([]row, bool, error) {
	r := row{size: writeSize, block: index, first: true, last: true, write: true, indent: column}
	if b.left != nil {
		st, err := s.at(b.left, s.m.size(label.Det, text), measure-column)
		if err != nil {
			return nil, false, err
		}
		l := s.linesOf(st, s.fill(st, measure, measure, 0), measure, measure)
		r.left = &l[0]
	}
	if b.right != nil { // the family may be known where the name is not
		st, err := s.at(b.right, s.m.size(label.Det, text), measure-column)
		if err != nil {
			return nil, false, err
		}
		l := s.linesOf(st, s.fill(st, measure, measure, 0), measure, measure)
		r.right = &l[0]
	}
	rows := []row{r}
	if b.caption != nil && column > 0 {
		var err error
		if rows, err = s.caption(b, rows, s.m.Text, index, column); err != nil {
			return nil, false, err
		}
	}
	return rows, false, nil
}

// frame is where the zones of a label come to stand.
type frame struct {
	headBase   layout.Length // first baseline of the head
	rule       layout.Length // y of the line under the head; 0 if there is none
	bodyTop    layout.Length // what the body's first line may fill begins here
	bodyBottom layout.Length
	footBase   layout.Length // first baseline of the foot
	barsAt     layout.Point
}

// footLead is the leading of the foot, which does not change with the body's.
func (m *Measures) footLead(size layout.Length) layout.Length { return m.lead(size, 500) }

// frame finds the zones of a label of the given height. The foot hangs from
// the collector's line, which stands at the same height on every label unless
// the lines under it are more than usual.
func (s *work) frame(st *stack, height layout.Length, squeeze int64) frame {
	var f frame
	y := s.m.Top
	if len(st.head) > 0 {
		y += s.rise(st.head[0])
		f.headBase = y
		for _, r := range st.head[1:] {
			y += s.m.lead(r.size, 500)
		}
		if s.m.Rule > 0 {
			y += s.descent(st.head[len(st.head)-1].size) + ruleAbove
			f.rule = y
			y += s.m.Rule + between(ruleBelow, ruleBelowMin, squeeze)
		} else {
			y += s.descent(st.head[len(st.head)-1].size) + between(s.m.Group, s.m.GroupMin, squeeze)
		}
	}
	f.bodyTop = y
	bottom := height - s.m.Bottom
	reserve := s.m.FootBars
	if st.bars != nil {
		f.barsAt = layout.Point{X: s.m.Left, Y: bottom - st.bars.height}
		reserve = max(reserve, st.bars.height+barsAbove)
	}
	bottom -= reserve
	f.bodyBottom = bottom
	if len(st.foot) > 0 {
		under := s.m.footLead(s.m.Small) * layout.Length(s.m.FootRows)
		var need layout.Length
		for _, r := range st.foot[1:] {
			need += s.m.footLead(r.size)
		}
		last := st.foot[len(st.foot)-1]
		f.footBase = bottom - max(s.descent(s.m.Small)+under, s.drop(last)+need)
		f.bodyBottom = f.footBase - s.rise(st.foot[0]) - between(s.m.FootGap, s.m.FootGapMin, squeeze)
	}
	return f
}

// Distances that are the same on every label.
const (
	ruleAbove    = 3 * layout.Pt
	ruleBelow    = 5 * layout.Pt
	ruleBelowMin = 3 * layout.Pt
	barsAbove    = 3 * layout.Pt
)

// need returns the height of rows from the ascenders of the first to the
// descenders of the last.
func (s *work) need(rows []row, squeeze int64) layout.Length {
	if len(rows) == 0 {
		return 0
	}
	y := s.rise(rows[0])
	for _, r := range rows[1:] {
		y += s.step(r, squeeze)
	}
	return y + s.drop(rows[len(rows)-1])
}

// step is the distance of a row's baseline from the one before.
func (s *work) step(r row, squeeze int64) layout.Length {
	y := s.m.lead(r.size, squeeze)
	if r.write {
		y = r.size
	}
	if r.above == groupSpace {
		y += between(s.m.Group, s.m.GroupMin, squeeze)
	}
	return y
}

// rise is how far a row reaches above its baseline: the ascenders of its size,
// or more where letters carry accents upon accents.
func (s *work) rise(r row) layout.Length {
	if r.write {
		return r.size
	}
	above, _ := r.ink()
	return max(s.faces.Metrics(0, r.size).Ascent, above)
}

// drop is how far a row reaches below its baseline.
func (s *work) drop(r row) layout.Length {
	_, below := r.ink()
	return max(s.descent(r.size), below)
}

func (s *work) descent(size layout.Length) layout.Length { return s.faces.Metrics(0, size).Descent }

// ink returns how far the letters of a row reach above and below its baseline.
func (r *row) ink() (above, below layout.Length) {
	for _, l := range []*line{r.left, r.right, r.caption} {
		if l == nil {
			continue
		}
		for i := l.from; i < l.to; i++ {
			it := &l.st.w.items[i]
			for k := it.from; k < it.to; k++ {
				_, _, up, down := l.st.w.parts[k].word.Ink(l.st.base)
				above, below = max(above, up), max(below, down)
			}
		}
	}
	return above, below
}
