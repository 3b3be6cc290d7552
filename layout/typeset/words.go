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
// a single space, of the run it begins in, with none at the ends. s.ends says
// where each run ends.
func (s *work) flow(runs []label.Run) string {
	buf := s.flowBuf[:0]
	s.ends = s.ends[:0]
	for i := range runs {
		text := runs[i].Text
		clean := 0 // what stands before it has been copied
		for j, r := range text {
			if !isBreak(r) {
				continue
			}
			buf = append(buf, text[clean:j]...)
			clean = j + utf8.RuneLen(r)
			if n := len(buf); n > 0 && buf[n-1] != ' ' {
				buf = append(buf, ' ')
			}
		}
		buf = append(buf, text[clean:]...)
		s.ends = append(s.ends, len(buf))
	}
	if n := len(buf); n > 0 && buf[n-1] == ' ' {
		buf = buf[:n-1]
		for i := range s.ends {
			s.ends[i] = min(s.ends[i], n-1)
		}
	}
	s.flowBuf = buf
	return string(buf)
}

// insidePenalty is the cost of ending a line inside what people see as one
// word, at a hyphen or a slash.
const insidePenalty = 120

// bracketPenalty is the cost of ending a line inside brackets: the authors of
// a name, a remark, read best in one go.
const bracketPenalty = 90

// brackets counts those that text opens less those that it closes.
func brackets(text string) int {
	n := 0
	for i := range len(text) {
		switch text[i] {
		case '(', '[':
			n++
		case ')', ']':
			n--
		}
	}
	return n
}

// addPart shapes text, which belongs to one run, and appends it to s.parts
// word by word: words come again and are kept shaped, whole phrases do not.
// first is where the paragraph's parts begin.
func (s *work) addPart(w *words, text string, run, first int) error {
	r := &w.runs[run]
	style := faceStyle(r.Style)
	for text != "" {
		word, rest, spaced := strings.Cut(text, " ")
		text = rest
		if n := len(s.parts); word == "" && n > first && !s.parts[n-1].spaced {
			// The space stands at the start of a run: it follows the last word
			// of the run before.
			s.parts[n-1].spaced = true
			continue
		}
		shown := word
		if r.Style&label.Capitals != 0 {
			shown = strings.ToUpper(word)
		}
		shaped, err := s.faces.Word(shown, style)
		if err != nil {
			return &Error{Origin: r.Origin, Text: r.Text, Err: err}
		}
		s.parts = append(s.parts, part{word: shaped, style: r.Style, text: word, spaced: spaced, run: run})
	}
	return nil
}

// setting is the words of a paragraph at one size, ready to be broken.
type setting struct {
	w     *words
	base  layout.Length
	items []para.Item
	// justify fills the lines but the last.
	justify bool
}

func (s *work) paraItem(it *item, width, base layout.Length) para.Item {
	p := para.Item{Width: width, Break: it.brk, Penalty: it.penalty}
	if it.spaced {
		p.Space = s.space(it.space, base)
		p.Stretch, p.Shrink = p.Space/2, p.Space/3
	}
	if it.soft {
		if h, err := s.faces.Word("-", faceStyle(it.space)); err == nil {
			p.Hyphen = h.Width(s.m.runSize(base, it.space), 0)
		}
	}
	return p
}

func (s *work) width(st *setting, it *item) layout.Length {
	var width layout.Length
	for i := it.from; i < it.to; i++ {
		p := &st.w.parts[i]
		size := s.m.runSize(st.base, p.style)
		width += p.word.Width(size, trackingOf(p.style, size))
		switch {
		case p.spaced:
			width += s.space(p.style, st.base)
		case i < it.to-1:
			width += s.lean(p, &st.w.parts[i+1], size)
		default:
			width += s.beyond(p, size)
		}
	}
	return width
}

// lean is the white space between letters of two styles that follow each other
// without a space, so that the one does not lean into the other: where italic
// meets upright what TeX calls the italic correction, elsewhere what goes
// beyond a tenth of the size, as letters of one style may lean, too.
func (s *work) lean(a, b *part, size layout.Length) layout.Length {
	_, right, _, _ := a.word.Ink(size)
	left, _, _, _ := b.word.Ink(size)
	if a.style&label.Italic != 0 && b.style&label.Italic == 0 {
		return right + left
	}
	return max(0, right+left-size/10)
}

// leastClear is what stays free of ink at a label's edge, whatever leans out: 5
// mm and the few units by which ink is rounded up.
const leastClear = 5*layout.MM + 36

// beyond is how far the ink of the last word of a line could reach into what
// stays clear beside it: an accent on a letter that leans, at a narrow margin.
func (s *work) beyond(p *part, size layout.Length) layout.Length {
	_, right, _, _ := p.word.Ink(size)
	return max(0, right-max(0, s.m.Right-leastClear))
}

// space returns the width of a space of the style in a block of size base.
func (s *work) space(style label.Style, base layout.Length) layout.Length {
	size := s.m.runSize(base, style)
	return s.faces.Space(faceStyle(style), size) + trackingOf(style, size)
}

// split returns w with item i cut up, because it is wider than any line: at
// the places that para finds sensible. It is rare and may take its time.
func (s *work) split(w *words, i int, base, measure layout.Length) (*words, error) {
	it := w.items[i]
	out := &words{runs: w.runs, items: slices.Clone(w.items[:i])}
	first := len(s.parts)
	s.parts = append(s.parts, w.parts[:it.from]...)
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
		piece := item{from: len(s.parts) - first, brk: para.Allowed, penalty: c.Penalty, soft: c.Hyphen}
		if err := s.addSlice(w, w.parts[it.from:it.to], from, c.Off, first); err != nil {
			return nil, err
		}
		piece.to = len(s.parts) - first
		piece.space = s.parts[len(s.parts)-1].style
		out.parts = s.parts[first:]
		if width := s.width(&setting{w: out, base: base}, &piece); width > measure {
			p := out.parts[piece.from]
			return nil, &Error{Origin: w.runs[p.run].Origin, Text: whole[from:c.Off],
				Err: fmt.Errorf("is wider than the label's %s line even at its smallest piece", measure)}
		}
		out.items = append(out.items, piece)
		from = c.Off
	}
	last := &out.items[len(out.items)-1]
	last.brk, last.penalty, last.spaced, last.space, last.soft = it.brk, it.penalty, it.spaced, it.space, it.soft
	shift := len(s.parts) - first - it.to
	for _, rest := range w.items[i+1:] {
		rest.from += shift
		rest.to += shift
		out.items = append(out.items, rest)
	}
	s.parts = append(s.parts, w.parts[it.to:]...)
	out.parts = s.parts[first:len(s.parts):len(s.parts)]
	return out, nil
}

// addSlice appends the bytes from a to b of the text of parts.
func (s *work) addSlice(w *words, parts []part, a, b, first int) error {
	at := 0
	for _, p := range parts {
		lo, hi := max(a, at), min(b, at+len(p.text))
		if lo < hi {
			if err := s.addPart(w, p.text[lo-at:hi-at], p.run, first); err != nil {
				return err
			}
			s.parts[len(s.parts)-1].spaced = p.spaced && b > at+len(p.text)
		}
		at += len(p.text)
		if p.spaced {
			at++
		}
	}
	return nil
}
