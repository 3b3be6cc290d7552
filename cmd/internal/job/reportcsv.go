package job

import (
	"bufio"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// csvHeadings are those of the JSON of a finding, in its order.
var csvHeadings = []string{"file", "line", "column", "row", "term", "value", "rule", "severity", "message", "suggest", "also"}

// A RemarksCSV writes remarks as a table for spreadsheets: RFC 4180, UTF-8 with
// a byte-order mark, without which spreadsheets take accents for other letters,
// and with cells that no spreadsheet takes for a formula; see SafeCell.
type RemarksCSV struct{ w *bufio.Writer }

// NewRemarksCSV writes the headings.
func NewRemarksCSV(w io.Writer) *RemarksCSV {
	c := &RemarksCSV{bufio.NewWriter(w)}
	c.w.WriteString("\ufeff")
	c.row(csvHeadings)
	return c
}

// Add writes a remark. Further cells are named as "30 recordNumber", with "|"
// between them.
func (c *RemarksCSV) Add(m Remark) error {
	var also []string
	for _, cell := range m.Also {
		also = append(also, strings.TrimSpace(strconv.Itoa(cell.Row)+" "+cell.Term))
	}
	return c.row([]string{m.File, strconv.Itoa(m.Line), strconv.Itoa(m.Column), strconv.Itoa(m.Row), m.Term, m.Value, m.Rule,
		m.Severity.String(), m.Message, m.Suggest, strings.Join(also, " | ")})
}

// Flush writes what is still held back.
func (c *RemarksCSV) Flush() error { return c.w.Flush() }

func (c *RemarksCSV) row(cells []string) error {
	for i, s := range cells {
		if i > 0 {
			c.w.WriteByte(',')
		}
		s = SafeCell(s)
		if strings.ContainsAny(s, "\",;\t\r\n") || s != strings.TrimSpace(s) {
			s = `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
		}
		c.w.WriteString(s)
	}
	_, err := c.w.WriteString("\r\n")
	return err
}

// SafeCell puts an apostrophe before a text that a spreadsheet would take for
// a formula: one that begins with = + - @, blanks before it or not. It does so
// behind semicolons, tabs and line ends too, where a spreadsheet of another
// country begins a new cell, and before an apostrophe that stands at such a
// place already, so that PlainCell finds the text again to the letter.
func SafeCell(s string) string {
	if !strings.ContainsAny(s, formula) {
		return s
	}
	var b strings.Builder
	begins := true
	for _, r := range asWritten(s) {
		if begins && strings.Contains(formula, r) {
			b.WriteByte('\'')
		}
		b.WriteString(r)
		begins = opens(r) || begins && blankRune(r)
	}
	return b.String()
}

// PlainCell is the inverse of SafeCell.
func PlainCell(s string) string {
	var b strings.Builder
	begins, marked := true, false
	for _, r := range asWritten(s) {
		if begins && !marked && r == "'" {
			marked = true
			continue
		}
		b.WriteString(r)
		begins, marked = opens(r) || begins && blankRune(r), false
	}
	return b.String()
}

// formula are the characters that begin a formula, the wide ones of East Asian
// keyboards included, and the apostrophe.
const formula = "=+-@＝＋－＠'"

// opens reports whether a spreadsheet may begin a cell behind it.
func opens(r string) bool { return r == ";" || r == "\t" || r == "\n" || r == "\r" || r == "|" }

func blankRune(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsSpace(r) || unicode.In(r, unicode.Cc, unicode.Cf)
}

// asWritten yields the characters of a text, and bytes that are none as they
// are.
func asWritten(s string) func(func(int, string) bool) {
	return func(yield func(int, string) bool) {
		for i := 0; i < len(s); {
			_, n := utf8.DecodeRuneInString(s[i:])
			if !yield(i, s[i:i+n]) {
				return
			}
			i += n
		}
	}
}
