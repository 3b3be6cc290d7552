package typeset

import (
	"slices"

	"cornerslip/label"
	"cornerslip/layout"
)

// draw places every row of a label.
func (s *work) draw(st *stack, f frame, height layout.Length, squeeze int64) *layout.Box {
	p := s.newPen()
	y := f.headBase
	for i, r := range st.head {
		if i > 0 {
			y += s.m.lead(r.size, 500)
		}
		p.head(r, y)
	}
	y = f.bodyTop
	for i, r := range st.body {
		if i == 0 {
			y += s.rise(r)
		} else {
			y += s.step(r, squeeze)
		}
		p.row(r, y)
	}
	y = f.footBase
	for i, r := range st.foot {
		if i > 0 {
			y += s.m.footLead(r.size)
		}
		if r.centred {
			p.head(r, y)
			continue
		}
		p.row(r, y)
	}
	box := &layout.Box{Size: layout.Size{W: s.m.Width, H: height}}
	if st.bars != nil {
		st.bars.draw(p, f.barsAt)
	}
	box.Marks = p.marks(f.rule)
	return box
}

// head draws a row centred, unless something stands at its right, it is to be
// written on, or it is the key of a continuation, which begins at the left even
// where "2 of 2" needs a line of its own.
func (p *pen) head(r row, y layout.Length) {
	if r.right != nil || r.left == nil || r.write || r.block < 0 {
		p.row(r, y)
		return
	}
	p.line(r.left, layout.Point{X: p.s.m.Left + (p.s.m.Width-p.s.m.Left-p.s.m.Right-r.left.width)/2, Y: y})
}

// row draws what shares a baseline.
func (p *pen) row(r row, y layout.Length) {
	left, right := p.s.m.Left, p.s.m.Width-p.s.m.Right
	if r.caption != nil {
		p.line(r.caption, layout.Point{X: left, Y: y})
	}
	end := left + r.indent
	if r.left != nil {
		p.line(r.left, layout.Point{X: left + r.indent, Y: y})
		end += r.left.width + rightGap(r.left.st.base)/2
	}
	stop := right
	if r.right != nil {
		stop -= r.right.width
		p.line(r.right, layout.Point{X: stop, Y: y})
		stop -= rightGap(r.right.st.base) / 2
	}
	if r.write && stop > end {
		p.strokes = append(p.strokes, layout.Stroke{
			From: layout.Point{X: end, Y: y}, To: layout.Point{X: stop, Y: y}, Width: writeLine,
		})
	}
}

// writeLine is the width of a line to write on.
const writeLine = layout.Pt / 4

// pen gathers the marks of a label. Strings and clusters lie in buffers of the
// whole label and are cut out at the end, which saves most allocations.
type pen struct {
	s        *work
	pieces   []piece
	buf      []byte
	actual   []byte
	clusters []layout.Cluster
	scratch  []layout.Text
	strokes  []layout.Stroke
	bars     []layout.Bars
}

// piece is a Text whose string and clusters still lie in the buffers.
type piece struct {
	text    layout.Text
	s0, s1  int
	a0, a1  int
	c0, c1  int
	differs bool // the actual text is another than the drawn one
}

// newPen returns a pen whose buffers are the ones of the label before.
func (s *work) newPen() *pen {
	p := &s.pen
	*p = pen{
		s: s, pieces: p.pieces[:0], buf: p.buf[:0], actual: p.actual[:0], clusters: p.clusters[:0],
		scratch: p.scratch, strokes: p.strokes[:0], bars: p.bars[:0],
	}
	return p
}

// line draws l with its baseline beginning at the point given.
func (p *pen) line(l *line, at layout.Point) {
	x := at.X
	fresh := true
	gaps, fill := 0, l.fill
	for i := l.from; i < l.to-1; i++ {
		if l.st.w.items[i].spaced {
			gaps++
		}
	}
	for i := l.from; i < l.to; i++ {
		it := &l.st.w.items[i]
		for k := it.from; k < it.to; k++ {
			pt := &l.st.w.parts[k]
			size := p.s.m.runSize(l.st.base, pt.style)
			x = p.word(pt, layout.Point{X: x, Y: at.Y}, size, fresh)
			fresh = false
			switch {
			case pt.spaced:
				x = p.space(x, p.s.space(pt.style, l.st.base))
			case k < it.to-1:
				x = p.widen(x, p.s.lean(pt, &l.st.w.parts[k+1], size))
			}
		}
		if i == l.to-1 {
			if it.soft && l.st.items[i].Hyphen > 0 {
				p.hyphen(it, layout.Point{X: x, Y: at.Y}, p.s.m.runSize(l.st.base, it.space))
			}
			break
		}
		if it.spaced {
			w := l.st.items[i].Space
			if gaps > 0 { // every space takes its share of what is left to fill
				share := fill / layout.Length(gaps)
				w += share
				fill -= share
				gaps--
			}
			x = p.space(x, w)
		}
	}
}

// word appends a shaped word and returns where the pen is after it.
func (p *pen) word(pt *part, at layout.Point, size layout.Length, fresh bool) layout.Length {
	if pt.text == "" {
		return at.X
	}
	texts, end := pt.word.Texts(p.scratch[:0], at, size, trackingOf(pt.style, size), 0)
	p.scratch = texts[:0]
	for i := range texts {
		t := &texts[i]
		capitals := pt.style&label.Capitals != 0
		if n := len(p.pieces); n == 0 || fresh || !p.pieces[n-1].joins(t) {
			p.pieces = append(p.pieces, piece{text: *t, s0: len(p.buf), c0: len(p.clusters), a0: len(p.actual)})
		}
		p.buf = append(p.buf, t.S...)
		p.clusters = append(p.clusters, t.Clusters...)
		q := &p.pieces[len(p.pieces)-1]
		q.text.Actual = ""
		q.s1, q.c1 = len(p.buf), len(p.clusters)
		meant := t.Actual // set where a face lacks a kind of space or hyphen
		if meant == "" {
			meant = t.S
		}
		if capitals && len(texts) == 1 { // in a fallback face capitals stay as drawn
			meant = pt.text
		}
		p.actual = append(p.actual, meant...)
		q.differs = q.differs || meant != t.S
		q.a1 = len(p.actual)
		fresh = false
	}
	return end.X
}

// joins reports whether t goes on where q ends, in the same face.
func (q *piece) joins(t *layout.Text) bool {
	return q.text.Face == t.Face && q.text.Size == t.Size && q.text.Style == t.Style && q.text.At.Y == t.At.Y && q.text.Grey == t.Grey
}

// space appends a space to the text last drawn, so that what is copied from
// the page has one too.
func (p *pen) space(x, w layout.Length) layout.Length {
	if n := len(p.pieces); n > 0 {
		q := &p.pieces[n-1]
		p.buf = append(p.buf, ' ')
		p.actual = append(p.actual, ' ')
		p.clusters = append(p.clusters, layout.Cluster{Bytes: 1, Adv: w})
		q.s1, q.a1, q.c1 = len(p.buf), len(p.actual), len(p.clusters)
	}
	return x + w
}

// widen moves the pen on after the letter last drawn.
func (p *pen) widen(x, w layout.Length) layout.Length {
	if n := len(p.clusters); n > 0 && w != 0 {
		p.clusters[n-1].Adv += w
		return x + w
	}
	return x
}

func (p *pen) hyphen(it *item, at layout.Point, size layout.Length) {
	h, err := p.s.faces.Word("-", faceStyle(it.space))
	if err != nil {
		return // every face has a hyphen, or the item would have no width for it
	}
	p.word(&part{word: h, style: it.space, text: "-"}, at, size, false)
}

// marks cuts the texts out of the buffers and returns all marks in reading
// order, the rule under the head first.
func (p *pen) marks(rule layout.Length) []layout.Mark {
	marks := make([]layout.Mark, 0, len(p.pieces)+len(p.strokes)+len(p.bars)+1)
	if rule > 0 {
		y := rule + p.s.m.Rule/2
		marks = append(marks, layout.Stroke{
			From: layout.Point{X: p.s.m.Left, Y: y}, To: layout.Point{X: p.s.m.Width - p.s.m.Right, Y: y}, Width: p.s.m.Rule,
		})
	}
	all, actual := string(p.buf), ""
	clusters := slices.Clone(p.clusters)
	if slices.ContainsFunc(p.pieces, func(q piece) bool { return q.differs }) {
		actual = string(p.actual)
	}
	for i := range p.pieces {
		q := &p.pieces[i]
		t := q.text
		t.S = all[q.s0:q.s1]
		t.Clusters = clusters[q.c0:q.c1:q.c1]
		if q.differs {
			t.Actual = actual[q.a0:q.a1]
		}
		marks = append(marks, t)
	}
	for _, s := range p.strokes {
		marks = append(marks, s)
	}
	for _, b := range p.bars {
		marks = append(marks, b)
	}
	return marks
}
