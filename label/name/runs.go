package name

import (
	"strings"

	"cornerslip/label"
)

// runs cuts the text into runs. First it is cut into pieces, at the places
// where a line may break; within a piece nothing breaks. Each piece is cut
// where its style changes. Stretches that need no protection are joined again
// with their neighbours, so that a plain name is a handful of runs.
func (p *parser) runs() []label.Run {
	if p.text == "" {
		return nil
	}
	out := make([]label.Run, 0, 8)
	w := setter{p: p, out: &out}
	w.advance(0)
	start := 0
	for i := 1; i < len(p.toks); i++ {
		if t := &p.toks[i]; !t.glued && !p.tied(i-1) {
			w.piece(start, t.start)
			start = t.start
		}
	}
	w.piece(start, len(p.text))
	return out
}

// A setter writes pieces as runs.
type setter struct {
	p    *parser
	out  *[]label.Run // apart, so that the parser can stay on the stack
	span span         // the italic stretch that is being written or comes next
	next int          // the token after it
}

// advance finds the first italic stretch from token i on.
func (w *setter) advance(i int) {
	for i < len(w.p.toks) && !w.p.toks[i].italic {
		i++
	}
	if i == len(w.p.toks) {
		w.span, w.next = span{len(w.p.text), len(w.p.text)}, i
		return
	}
	w.span, w.next = w.p.italic(i)
}

// piece writes the text from start to end, behind which a line may break.
func (w *setter) piece(start, end int) {
	for start < end {
		stop, style := min(w.span.start, end), label.Style(0)
		if start >= w.span.start {
			stop, style = min(w.span.end, end), label.Italic
		}
		w.add(span{start, stop}, style, stop < end)
		start = stop
		if style == label.Italic && stop == w.span.end {
			w.advance(w.next)
		}
	}
}

// add writes a stretch; glue says that its piece goes on behind it.
func (w *setter) add(s span, style label.Style, glue bool) {
	text := s.of(w.p.text)
	keep := breakable(text)
	if n := len(*w.out) - 1; n >= 0 && !keep {
		if last := &(*w.out)[n]; last.Style == style && !last.Keep && !last.Glue {
			last.Text = w.p.text[s.start-len(last.Text) : s.end]
			last.Glue = glue
			return
		}
	}
	*w.out = append(*w.out, label.Run{Text: text, Style: style, Keep: keep, Glue: glue, Exact: true})
}

// breakable reports whether a line could break inside s: at white space that
// is not its end, at a hyphen, a dash, a stroke.
func breakable(s string) bool {
	for len(s) > 0 && s[len(s)-1] <= ' ' {
		s = s[:len(s)-1]
	}
	for i := 0; i < len(s); i++ {
		switch c := s[i]; c {
		case '-', '/', '?', '!', '|', 0xe2: // 0xe2 leads the dashes and wide spaces
			return true
		default:
			if c <= ' ' {
				return true
			}
		}
	}
	return false
}

// tied reports whether no line may break in the white space behind token i.
func (p *parser) tied(i int) bool {
	a, b := &p.toks[i], &p.toks[i+1]
	switch b.class {
	case closeSign, comma, unquote, mark, number:
		if b.class != number || a.class == word && a.kind == open {
			return true
		}
	case word:
		switch {
		case b.kind == group, b.kind == grex:
			return true
		case b.kind == filius && !b.italic:
			return true
		case b.kind == open && a.italic:
			return true
		case b.kind == link && !b.upper && p.bare(i+1) == "bis":
			return true
		}
	}
	switch a.class {
	case openSign, quote, crossSign, plusSign:
		return true
	case mark:
		return b.italic || p.textOf(i) == "§" || p.textOf(i) == "*"
	case word:
	default:
		return false
	}
	switch {
	case a.italic:
		return a.dot && a.cut == 0 // an abbreviated genus
	case a.kind.isRank(), a.kind == qualifier, a.kind == cross, a.kind == link, a.kind == and, a.kind == cultivar, a.greek:
		return true
	case (a.kind == filius || a.kind == rankLetter || a.kind == either) && b.italic:
		return true
	case a.kind == open:
		return b.italic || b.class == word && (b.kind == note || b.kind == qualifier || b.letters == 1)
	case a.kind == note:
		if b.class == word && (b.kind == note || b.kind == open) {
			return a.dot && b.dot
		}
		switch p.bare(i) {
		case "non", "nec", "not", "sensu", "sec", "nom", "nomen", "pro":
			return true
		}
	case a.upper && a.dot && initials(p.text[a.start:a.end]):
		return b.class == word && b.upper && b.kind == plainWord || b.kind == link && p.particle(i+1)
	}
	return false
}

// particle reports whether the word at i is part of a surname (van, de), not a
// word between authors (ex, in).
func (p *parser) particle(i int) bool {
	switch p.bare(i) {
	case "ex", "in", "apud", "ap", "emend", "em", "al", "cum", "per":
		return false
	}
	return true
}

// initials reports whether s is initials of a given name: D., B.-E., Th.
func initials(s string) bool {
	s = strings.TrimSuffix(s, ".")
	for len(s) > 0 {
		r := firstRune(s)
		n := len(string(r))
		s = s[n:]
		if s == "" {
			return true
		}
		if !strings.HasPrefix(s, ".-") && !strings.HasPrefix(s, "-") {
			return s == "h" && (r == 'T' || r == 'C' || r == 'P')
		}
		s = strings.TrimLeft(s, ".-")
	}
	return false
}
