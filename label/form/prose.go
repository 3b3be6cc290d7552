package form

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// prose joins phrases into running text. It never changes what is written in
// a cell: it only leaves out a sign of its own where the text before already
// ends in one.
type prose struct {
	runs []label.Run
}

func (p *prose) empty() bool { return len(p.runs) == 0 }

// add joins a phrase on. sep, such as ", " or ". ", loses its sign where the
// text so far ends in one, and is left out at the beginning.
func (p *prose) add(sep string, phrase ...label.Run) {
	phrase = trimmed(phrase)
	if len(phrase) == 0 {
		return
	}
	if !p.empty() && sep != "" {
		sign := strings.TrimRight(sep, " ")
		if sign != "" && p.closed() {
			sep = strings.TrimPrefix(sep, sign)
		}
		if sep != "" {
			p.runs = append(tieSign(p.runs, sep), label.Run{Text: sep})
		}
	}
	p.runs = append(p.runs, phrase...)
}

// sentence joins a phrase on after a full stop.
func (p *prose) sentence(phrase ...label.Run) { p.add(". ", phrase...) }

// stop ends the text with a full stop, if it does not end in a sign already.
func (p *prose) stop() {
	if !p.empty() && !p.closed() {
		p.runs[len(p.runs)-1].Glue = true
		p.runs = append(p.runs, label.Run{Text: "."})
	}
}

// closed reports whether the text ends in a sign that no comma or full stop
// may follow. Closing quotes after it do not matter.
func (p *prose) closed() bool {
	return endsClosed(lastText(p.runs))
}

// ended reports whether the text ends a sentence, so that the next begins
// with a capital.
func (p *prose) ended() bool {
	r, _ := utf8.DecodeLastRuneInString(strings.TrimRight(lastText(p.runs), "”»’\"'"))
	return p.empty() || strings.ContainsRune(".!?…。", r)
}

func endsClosed(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(strings.TrimRight(s, "”»\"'"))
	return strings.ContainsRune(".,;:!?…。，；：！？、", r)
}

func lastText(runs []label.Run) string {
	if len(runs) == 0 {
		return ""
	}
	return runs[len(runs)-1].Text
}

// trimmed takes empty runs out.
func trimmed(runs []label.Run) []label.Run {
	out := runs[:0:0]
	for _, r := range runs {
		if r.Text != "" {
			out = append(out, r)
		}
	}
	return out
}

// said returns words the program writes: they are kept together if short.
func said(text string) []label.Run {
	if text == "" {
		return nil
	}
	return []label.Run{{Text: text, Keep: utf8.RuneCountInString(text) <= maxKept/2}}
}

// tie forbids a line break between what stands so far and what follows.
func tie(runs []label.Run, next ...label.Run) []label.Run {
	if len(runs) > 0 && len(next) > 0 {
		runs = append(runs[:len(runs)-1:len(runs)-1], runs[len(runs)-1])
		runs[len(runs)-1].Glue = true
	}
	return append(runs, next...)
}

// styled returns the runs with a style added.
func styled(runs []label.Run, s label.Style) []label.Run {
	for i := range runs {
		runs[i].Style |= s
	}
	return runs
}

// exact marks the runs as typed by somebody.
func exact(runs []label.Run) []label.Run {
	for i := range runs {
		runs[i].Exact = true
	}
	return runs
}

// from sets where the runs came from.
func from(runs []label.Run, at label.Origin) []label.Run {
	for i := range runs {
		runs[i].Origin = at
	}
	return runs
}

// upperFirst returns the text with a capital at the beginning.
func upperFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if r == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// upperEach does the same in both languages of a bilingual phrase.
func upperEach(s string) string {
	a, b, ok := strings.Cut(s, " / ")
	if !ok {
		return upperFirst(s)
	}
	return upperFirst(a) + " / " + upperFirst(b)
}

// items splits a list column at its "|".
func items(text string) []string {
	var out []string
	for _, s := range strings.Split(text, "|") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}
