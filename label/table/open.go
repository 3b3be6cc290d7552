package table

import (
	"fmt"
	"io"
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
		return nil
	case told != nil:
		return nil
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
	return nil
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
		if c.group != nil && c.group.columns[0] == i {
			t.groups = append(t.groups, c.group)
		}
	}
}
