package table

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
)

// addPart adds a file and finds its encoding.
func (t *Table) addPart(src Source) error {
	var told *charset
	if t.o.Encoding != "" {
		c, err := findCharset(t.o.Encoding)
		if err != nil {
			return fmt.Errorf("%s: %w", src.Name(), err)
		}
		told = c
	}
	head, err := headOf(src)
	if err != nil {
		return err
	}
	p := part{src: src, charset: told}
	t.parts = append(t.parts, p)
	last := &t.parts[len(t.parts)-1]
	marked, n := markOf(head)
	switch {
	case marked != nil:
		last.charset, last.mark = marked, n
		if told != nil && told.name != marked.name {
			t.sayOf(src, ruleEncoding, label.Warning, 1, "read as %s, since the file begins with its byte-order mark; %s was named", marked.name, told.name)
		} else if told == nil && marked != utf8Charset {
			t.sayOf(src, ruleEncoding, label.Note, 1, "read as %s, since the file begins with its byte-order mark", marked.name)
		}
		return last.judge(t.o.MaxRow, false)
	case told != nil && told.scheme != plain:
		return t.doubt(last)
	case told != nil:
		return last.judge(t.o.MaxRow, t.o.supposed)
	}
	last.charset = utf8Charset
	if c := wide(head); c != nil {
		last.charset = c
		t.sayOf(src, ruleEncoding, label.Warning, 1, "read as %s, since every second byte is zero; name the encoding to be sure", c.name)
		return nil
	}
	if what := noText(head); what != "" {
		return &Error{Origin: label.Origin{File: src.Name()}, Message: "this is " + what + ", not text: save the table as CSV in UTF-8"}
	}
	return last.judge(t.o.MaxRow, true)
}

// judge looks whether a file that is taken for UTF-8 is that, and else which
// encoding it is in. alone allows that it is all read in another one.
func (p *part) judge(maxRow int, alone bool) error {
	if p.charset.scheme != plain {
		return nil
	}
	r, err := p.src.Open()
	if err != nil {
		return err
	}
	ok := isUTF8(r, maxRow)
	r.Close()
	if ok {
		return nil
	}
	if r, err = p.src.Open(); err != nil {
		return err
	}
	defer r.Close()
	p.verdict = detect(surveyOf(r, maxRow))
	if p.verdict.whole = p.verdict.whole && alone; p.verdict.whole {
		p.charset = p.verdict.best
	}
	return nil
}

// doubted is how much of a file is read to hold its encoding against the one
// that was named.
const doubted = 8 << 20

// doubt looks whether a file is in the encoding that was named. If it is UTF-8 it
// is read as that; if its words make sense in another encoding only, a warning
// says so.
func (t *Table) doubt(p *part) error {
	if p.charset.scheme != single && p.charset.scheme != multi {
		return nil
	}
	r, err := p.src.Open()
	if err != nil {
		return err
	}
	s := surveyOf(io.LimitReader(r, doubted), t.o.MaxRow)
	r.Close()
	switch {
	case len(s.bad) == 0 && len(s.good) >= minTokens && p.charset.scheme == single:
		p.verdict = &verdict{best: utf8Charset, whole: true, sure: true, all: true, named: p.charset}
		p.charset = utf8Charset
	case len(s.bad) >= minTokens:
		v := detect(s)
		if !v.whole || !v.sure || v.best == p.charset {
			return nil
		}
		for _, token := range s.bad {
			is, was := string(v.best.decode(token.text, false)), string(p.charset.decode(token.text, false))
			if is != was && token.ended {
				t.sayOf(p.src, ruleEncoding, label.Warning, 1, "read as %s, which was named, though the words make sense as %s (%q would be %q): look which of them is right",
					strings.ToLower(p.charset.name), strings.ToLower(v.best.name), was, is)
				return nil
			}
		}
	}
	return nil
}

// Found returns the name of the encoding that the table was found to be in,
// where it is not UTF-8 and nobody said what it is, or is UTF-8 and another was
// named; "" elsewhere. Such a table
// can be read and checked, and an error among its findings says so; it is not
// to be printed, and not written back.
func (t *Table) Found() string {
	for _, p := range t.parts {
		if p.verdict != nil && p.verdict.whole {
			return p.charset.name
		}
	}
	return ""
}

// sayFound states, before all else, which files were found to be in another
// encoding than UTF-8.
func (t *Table) sayFound() error {
	before := t.findings
	t.findings = nil
	for _, p := range t.parts {
		if p.verdict == nil || !p.verdict.whole {
			continue
		}
		if named := p.verdict.named; named != nil {
			said, do := "which was named", "leave --encoding out"
			if t.o.supposed {
				said, do = "as the archive's description says", "say --encoding utf-8"
			}
			t.sayOf(p.src, ruleUndecodable, label.Error, 1, "the table is UTF-8 and not %s, %s: this check reads it so, but nothing is printed until it is certain: %s", strings.ToLower(named.name), said, do)
			continue
		}
		n, samples, err := t.strange(p)
		if err != nil {
			return err
		}
		held := plural(n, "one cell holds", "%d cells hold") + " other bytes"
		v, name := p.verdict, strings.ToLower(p.charset.name)
		if v.sure {
			all := "all make"
			if !v.all {
				all = "nearly all make"
			}
			t.sayOf(p.src, ruleUndecodable, label.Error, 1, "the table is not UTF-8: %s, and %s sense as %s (%s); this check reads it so, but nothing is printed until it is certain: say --encoding %s, or save the table as UTF-8",
				held, all, name, strings.Join(samples, ", "), name)
			continue
		}
		var names []string
		for _, c := range v.other[:min(len(v.other), 2)] {
			names = append(names, strings.ToLower(c.name))
		}
		t.sayOf(p.src, ruleUndecodable, label.Error, 1, "the table is not UTF-8: %s, which may be %s or %s (%s); this check reads %s, but nothing is printed until it is certain: look which of them is right and say --encoding %s or --encoding %s, or save the table as UTF-8",
			held, name, strings.Join(names, " or "), strings.Join(samples, ", "), name, name, names[0])
	}
	t.findings = append(t.findings, before...)
	return nil
}

// strange counts the cells that are not UTF-8 and shows how some of them read.
// Where two encodings are in question it shows what tells them apart.
func (t *Table) strange(p part) (n int, samples []string, err error) {
	r, err := p.src.Open()
	if err != nil {
		return 0, nil, err
	}
	defer r.Close()
	own := p
	own.charset = utf8Charset
	l := t.lexer(own, r, t.o.Comma, nil)
	seen := map[string]bool{}
	long := ""
	for {
		// Who reads the rows hears of what cannot be read on.
		if ok, err := l.next(); !ok || err != nil {
			if long != "" && len(samples) == 0 {
				samples = append(samples, p.shown(long))
			}
			return n, slices.DeleteFunc(samples, func(s string) bool { return s == "" }), nil
		}
		for i := range l.fields {
			f := &l.fields[i]
			raw := string(l.b[f.from:f.to])
			if f.kinds&isHigh == 0 || utf8.ValidString(raw) {
				continue
			}
			n++
			if len(samples) == 3 || seen[raw] {
				continue
			}
			text := string(p.charset.decode(raw, true))
			if utf8.RuneCountInString(text) > 30 {
				if long == "" && p.shown(raw) != "" { // if nothing shorter is met
					long = raw
				}
				continue
			}
			shown := p.shown(raw)
			if shown == "" {
				continue
			}
			seen[raw] = true
			samples = append(samples, shown)
		}
	}
}

// headOf returns the first bytes of a file.
func headOf(src Source) ([]byte, error) {
	r, err := src.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	head := make([]byte, 4096)
	n, err := io.ReadFull(r, head)
	if err != nil && err != io.EOF && err != io.ErrUnexpectedEOF {
		return nil, &Error{Origin: label.Origin{File: src.Name()}, Message: "cannot be read", Err: err}
	}
	return head[:n], nil
}

// noText names the kinds of files that people give for tables.
func noText(head []byte) string {
	for magic, what := range map[string]string{
		"PK\x03\x04":       "a spreadsheet or a zip file",
		"\xd0\xcf\x11\xe0": "a spreadsheet or document of an old office program",
		"%PDF-":            "a PDF file",
		"SQLite format 3":  "a database",
		"\x1f\x8b":         "a compressed file",
		"{\\rtf":           "a document of a word processor",
		"\x89PNG":          "a picture", "\xff\xd8\xff": "a picture",
	} {
		if strings.HasPrefix(string(head), magic) {
			return what
		}
	}
	return ""
}

// separator reads the line "sep=;" with which some spreadsheets begin a table.
func (t *Table) separator() (rune, error) {
	r, err := t.parts[0].src.Open()
	if err != nil {
		return 0, err
	}
	defer r.Close()
	l := t.lexer(t.parts[0], r, '\x00', nil)
	l.have(4 + utf8.UTFMax)
	if len(l.b) < 5 || !strings.EqualFold(string(l.b[:4]), "sep=") {
		return 0, nil
	}
	c, n := utf8.DecodeRune(l.b[4:])
	if n == 0 || c == '\r' || c == '\n' || c == utf8.RuneError || l.have(4+n) && l.lineEnd(4+n) == 0 {
		return 0, nil
	}
	return c, nil
}

// commas are what may stand between cells, the likeliest first.
var commas = []struct {
	r    rune
	name string
}{{',', "comma"}, {';', "semicolon"}, {'\t', "tab"}, {'|', "pipe"}}

// mapTerms makes the indexes of terms.
func (t *Table) mapTerms() {
	t.index, t.verbatim = newTermIndex(t.columns), map[string]int{}
	for i, c := range t.columns {
		if c.Verbatim != "" {
			t.verbatim[c.Verbatim] = i
		}
		if c.group != nil && slices.Min(c.group.columns) == i {
			t.groups = append(t.groups, c.group)
		}
	}
}

// shown shows how a cell reads: in both encodings that are in question, "" if
// they read it alike.
func (p part) shown(raw string) string {
	if utf8.RuneCountInString(raw) > 40 { // what is about the first byte that matters
		i := strings.IndexFunc(raw, func(r rune) bool { return r >= 0x80 })
		from := max(0, i-10)
		if p.charset.scheme == multi {
			from = i
		}
		raw = raw[from:min(len(raw), i+20)]
	}
	text := string(p.charset.decode(raw, false))
	if p.verdict.sure {
		return fmt.Sprintf("%q is %q", strings.ToValidUTF8(raw, "\uFFFD"), text)
	}
	if other := string(p.verdict.other[0].decode(raw, false)); other != text {
		return fmt.Sprintf("%q or %q", text, other)
	}
	return ""
}
