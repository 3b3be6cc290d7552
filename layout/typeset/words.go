package typeset

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
	"cornerslip/layout/para"
)

// words is a paragraph shaped but not yet broken: it serves every size.
type words struct {
	items []item
	parts []part // of all items, in order
	runs  []label.Run
}

// item is what stands between two places where a line may end.
type item struct {
	from, to int // its parts
	space    label.Style
	spaced   bool // white space follows
	brk      para.Kind
	penalty  int
	soft     bool // a hyphen is due if the line ends here
}

// part is a word, or the stretch of one that has one style.
type part struct {
	word   *face.Word
	style  label.Style
	text   string // as typed
	spaced bool   // a space follows that is no place to end a line
	run    int
}

// An Error says which words could not be set.
type Error struct {
	Origin label.Origin // of the words
	Text   string
	Err    error
}

func (e *Error) Error() string {
	place := e.Origin.String()
	if place == "" {
		return fmt.Sprintf("%q: %v", e.Text, e.Err)
	}
	if e.Origin.Term != "" {
		place += ": " + e.Origin.Term
	}
	return fmt.Sprintf("%s %q: %v", place, e.Text, e.Err)
}

func (e *Error) Unwrap() error { return e.Err }

func faceStyle(s label.Style) layout.Style {
	var f layout.Style
	if s&label.Italic != 0 {
		f |= layout.Italic
	}
	if s&label.Bold != 0 {
		f |= layout.Bold
	}
	return f
}

// isBreak reports white space that people type and that may turn into any
// distance; no-break and thin spaces are letters here.
func isBreak(r rune) bool {
	switch r {
	case ' ', '\t', '\n', '\v', '\f', '\r', 0x85, 0x2028, 0x2029:
		return true
	}
	return false
}

// flow joins the runs into one text in which every stretch of white space is
// a single space, with none at the ends, and says where each run ends.
func flow(runs []label.Run) (text string, ends []int) {
	n := 0
	for _, r := range runs {
		n += len(r.Text)
	}
	var b strings.Builder
	b.Grow(n)
	ends = make([]int, len(runs))
	pending := false
	for i, run := range runs {
		for _, r := range run.Text {
			if isBreak(r) {
				pending = b.Len() > 0
				continue
			}
			if pending {
				b.WriteByte(' ')
				pending = false
			}
			b.WriteRune(r)
		}
		ends[i] = b.Len()
	}
	return b.String(), ends
}

// prepare shapes the runs of a block.
func (s *Setter) prepare(runs []label.Run) (*words, error) {
	if len(runs) == 0 {
		return nil, nil
	}
	text, ends := flow(runs)
	if text == "" {
		return nil, nil
	}
	var keep []para.Span
	for i, r := range runs {
		from := 0
		if i > 0 {
			from = ends[i-1]
		}
		if r.Keep && ends[i] > from {
			keep = append(keep, para.Span{Start: from, End: ends[i]})
		}
		if r.Glue {
			keep = append(keep, glued(text, ends[i]))
		}
	}
	w := &words{runs: runs}
	segments := para.Segments(text, keep)
	w.items = make([]item, 0, len(segments))
	w.parts = make([]part, 0, len(segments)+len(runs))
	run := 0
	for _, seg := range segments {
		it := item{from: len(w.parts), brk: seg.Break, spaced: seg.Space != "", soft: seg.Soft}
		if !it.spaced && seg.Break == para.Allowed {
			it.penalty = insidePenalty
		}
		end := seg.Off + len(seg.Text)
		for a := seg.Off; a < end; {
			for ends[run] <= a {
				run++
			}
			b := min(end, ends[run])
			if err := s.addPart(w, text[a:b], run); err != nil {
				return nil, err
			}
			a = b
		}
		it.to = len(w.parts)
		if it.to > it.from {
			it.space = w.parts[it.to-1].style
		}
		w.items = append(w.items, it)
	}
	return w, nil
}

// insidePenalty is the cost of ending a line inside what people see as one
// word, at a hyphen or a slash.
const insidePenalty = 120

// glued returns the span that forbids a break at off: from the last letter
// before it to the first one after it.
func glued(text string, off int) para.Span {
	a, b := off, off
	for a > 0 {
		r, n := utf8.DecodeLastRuneInString(text[:a])
		a -= n
		if r != ' ' {
			break
		}
	}
	for b < len(text) {
		r, n := utf8.DecodeRuneInString(text[b:])
		b += n
		if r != ' ' {
			break
		}
	}
	return para.Span{Start: a, End: b}
}

// addPart shapes text, which belongs to one run, and appends it word by word:
// words come again and are kept shaped, whole phrases do not.
func (s *Setter) addPart(w *words, text string, run int) error {
	r := &w.runs[run]
	for text != "" {
		word, rest, spaced := strings.Cut(text, " ")
		if word == "" && len(w.parts) > 0 && !w.parts[len(w.parts)-1].spaced {
			// The space stands at the start of a run: it follows the last word
			// of the run before.
			w.parts[len(w.parts)-1].spaced = true
			text = rest
			continue
		}
		shown := word
		if r.Style&label.Capitals != 0 {
			shown = strings.ToUpper(word)
		}
		shaped, err := s.faces.Word(shown, faceStyle(r.Style))
		if err != nil {
			return &Error{Origin: r.Origin, Text: r.Text, Err: err}
		}
		w.parts = append(w.parts, part{word: shaped, style: r.Style, text: word, spaced: spaced, run: run})
		text = rest
	}
	return nil
}

// setting is the words of a paragraph at one size, ready to be broken.
type setting struct {
	w     *words
	base  layout.Length
	items []para.Item
}

// at returns the widths of w at size base. No item is wider than measure: a
// word that is gets broken at the least bad places.
func (s *Setter) at(w *words, base, measure layout.Length, m *Measures) (*setting, error) {
	st := &setting{w: w, base: base, items: make([]para.Item, 0, len(w.items))}
	for i := range w.items {
		it := &w.items[i]
		width := s.width(st, it, m)
		p := s.paraItem(it, width, base, m)
		if width+p.Hyphen > measure {
			split, err := s.split(w, i, base, measure, m)
			if err != nil {
				return nil, err
			}
			return s.at(split, base, measure, m)
		}
		st.items = append(st.items, p)
	}
	return st, nil
}

func (s *Setter) paraItem(it *item, width, base layout.Length, m *Measures) para.Item {
	p := para.Item{Width: width, Break: it.brk, Penalty: it.penalty}
	if it.spaced {
		p.Space = s.space(it.space, base, m)
		p.Stretch, p.Shrink = p.Space/2, p.Space/3
	}
	if it.soft {
		if h, err := s.faces.Word("-", faceStyle(it.space)); err == nil {
			p.Hyphen = h.Width(m.runSize(base, it.space), 0)
		}
	}
	return p
}

func (s *Setter) width(st *setting, it *item, m *Measures) layout.Length {
	var width layout.Length
	for i := it.from; i < it.to; i++ {
		p := &st.w.parts[i]
		size := m.runSize(st.base, p.style)
		width += p.word.Width(size, trackingOf(p.style, size))
		if p.spaced {
			width += s.space(p.style, st.base, m)
		}
	}
	return width
}

// space returns the width of a space of the style in a block of size base.
func (s *Setter) space(style label.Style, base layout.Length, m *Measures) layout.Length {
	size := m.runSize(base, style)
	return s.faces.Space(faceStyle(style), size) + trackingOf(style, size)
}

// split returns w with item i cut up, because it is wider than any line: at
// the places that para finds sensible, each piece as long as fits.
func (s *Setter) split(w *words, i int, base, measure layout.Length, m *Measures) (*words, error) {
	it := w.items[i]
	out := &words{runs: w.runs, items: slices.Clone(w.items[:i])}
	out.parts = slices.Clone(w.parts[:it.from])
	var text strings.Builder
	for _, p := range w.parts[it.from:it.to] {
		text.WriteString(p.text)
		if p.spaced {
			text.WriteByte(' ')
		}
	}
	whole := text.String()
	cuts := append(para.Sensible(whole), para.Place{Off: len(whole)})
	from := 0
	for _, c := range cuts {
		if c.Off <= from {
			continue
		}
		piece := item{from: len(out.parts), brk: para.Allowed, penalty: c.Penalty, soft: c.Hyphen}
		if err := s.addSlice(out, w.parts[it.from:it.to], from, c.Off); err != nil {
			return nil, err
		}
		piece.to = len(out.parts)
		piece.space = out.parts[piece.to-1].style
		if width := s.width(&setting{w: out, base: base}, &piece, m); width > measure {
			p := out.parts[piece.from]
			return nil, &Error{Origin: w.runs[p.run].Origin, Text: whole[from:c.Off],
				Err: fmt.Errorf("is wider than the label's %s line even at its smallest piece", measure)}
		}
		out.items = append(out.items, piece)
		from = c.Off
	}
	last := &out.items[len(out.items)-1]
	last.brk, last.penalty, last.spaced, last.space, last.soft = it.brk, it.penalty, it.spaced, it.space, it.soft
	shift := len(out.parts) - it.to
	for _, rest := range w.items[i+1:] {
		rest.from += shift
		rest.to += shift
		out.items = append(out.items, rest)
	}
	out.parts = append(out.parts, w.parts[it.to:]...)
	return out, nil
}

// addSlice appends the bytes from a to b of the text of parts.
func (s *Setter) addSlice(out *words, parts []part, a, b int) error {
	at := 0
	for _, p := range parts {
		lo, hi := max(a, at), min(b, at+len(p.text))
		if lo < hi {
			if err := s.addPart(out, p.text[lo-at:hi-at], p.run); err != nil {
				return err
			}
			out.parts[len(out.parts)-1].spaced = p.spaced && b > at+len(p.text)
		}
		at += len(p.text)
		if p.spaced {
			at++
		}
	}
	return nil
}
