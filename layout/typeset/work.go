package typeset

import (
	"strings"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
	"cornerslip/layout/para"
)

// work is one label being set: its measures, and the memory that the next
// label uses again. Setting a label makes some hundreds of small things; made
// anew each time they cost more than the setting.
type work struct {
	faces *face.Setter
	m     *Measures
	// greedy fills lines one by one, to compare with.
	greedy bool

	blockMem   arena[block]
	wordsMem   arena[words]
	itemMem    arena[item]
	settingMem arena[setting]
	widthMem   arena[para.Item]
	breakMem   arena[int]
	lineMem    arena[line]
	rowMem     arena[row]

	parts    []part // of all paragraphs
	segments []para.Segment
	keep     []para.Span
	ends     []int
	flowBuf  []byte
	pen      pen
}

// reset makes the memory free for another label.
func (s *work) reset(faces *face.Setter, m *Measures) {
	s.faces, s.m, s.greedy = faces, m, false
	s.blockMem.reset()
	s.wordsMem.reset()
	s.itemMem.reset()
	s.settingMem.reset()
	s.widthMem.reset()
	s.breakMem.reset()
	s.lineMem.reset()
	s.rowMem.reset()
	s.parts = s.parts[:0]
}

// An arena hands out slices that stay valid until the next reset.
type arena[T any] struct{ free, all []T }

// take returns n zero values.
func (a *arena[T]) take(n int) []T {
	if n > len(a.free) {
		a.all = make([]T, max(2*len(a.all), n, 16))
		a.free = a.all
	}
	s := a.free[:n:n]
	a.free = a.free[n:]
	clear(s)
	return s
}

func (a *arena[T]) one() *T { return &a.take(1)[0] }

func (a *arena[T]) reset() { a.free = a.all }

// prepare shapes the runs of a block.
func (s *work) prepare(runs []label.Run) (*words, error) {
	if len(runs) == 0 {
		return nil, nil
	}
	text := s.flow(runs)
	if text == "" {
		return nil, nil
	}
	s.keep = s.keep[:0]
	from := 0
	for i, r := range runs {
		end := s.ends[i]
		if r.Keep && end > from {
			s.keep = append(s.keep, para.Span{Start: from, End: end})
		}
		if r.Glue {
			// From the last letter before the place to the first one after it.
			start := len(strings.TrimRight(text[:end], " ")) - 1
			s.keep = append(s.keep, para.Span{Start: start, End: end + 1})
		}
		from = end
	}
	s.segments = para.AppendSegments(s.segments[:0], text, s.keep)
	w := s.wordsMem.one()
	w.runs = runs
	w.items = s.itemMem.take(len(s.segments))
	first := len(s.parts)
	run, depth := 0, 0
	for i := range s.segments {
		seg := &s.segments[i]
		it := &w.items[i]
		*it = item{from: len(s.parts) - first, brk: seg.Break, spaced: seg.Space != "", soft: seg.Soft}
		if depth += brackets(seg.Text); depth > 0 {
			it.penalty = bracketPenalty
		}
		if !it.spaced && seg.Break == para.Allowed {
			it.penalty += insidePenalty
		}
		end := seg.Off + len(seg.Text)
		for a := seg.Off; a < end; {
			for s.ends[run] <= a {
				run++
			}
			b := min(end, s.ends[run])
			if err := s.addPart(w, text[a:b], run, first); err != nil {
				return nil, err
			}
			a = b
		}
		it.to = len(s.parts) - first
		if it.to > it.from {
			it.space = s.parts[len(s.parts)-1].style
		}
	}
	w.parts = s.parts[first:len(s.parts):len(s.parts)]
	return w, nil
}

// at returns the widths of w at size base. No item is wider than measure: a
// word that is gets broken at the least bad places.
func (s *work) at(w *words, base, measure layout.Length) (*setting, error) {
	st := s.settingMem.one()
	st.w, st.base = w, base
	st.items = s.widthMem.take(len(w.items))
	for i := range w.items {
		it := &w.items[i]
		p := s.paraItem(it, s.width(st, it), base)
		if p.Width+p.Hyphen > measure {
			split, err := s.split(w, i, base, measure)
			if err != nil {
				return nil, err
			}
			return s.at(split, base, measure)
		}
		st.items[i] = p
	}
	return st, nil
}
