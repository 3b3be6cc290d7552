package table

import (
	"bytes"
	"errors"
	"strings"
	"unicode/utf8"
)

// What a byte can be, and what kinds of bytes a field holds.
const (
	isHigh    uint8 = 1 << iota // not ASCII
	isControl                   // a control character other than CR and LF
	isLine                      // CR or LF
	isBreak                     // the first byte of what ends a row
	isComma                     // the comma's first byte
	isQuote                     // the quote's first byte
	isCode                      // a sign with which letters are written as codes, or ? in the place of one
)

// A field is one cell as the lexer cut it: places in the row's text.
type field struct {
	start, end int // all of it, quotes included
	from, to   int // its words
	kinds      uint8
	quoted     bool
	doubled    bool // holds doubled quotes
	blanks     bool // blanks between the closing quote and the comma
	indented   bool // blanks between the comma and the opening quote
	stray      bool // a quote in an unquoted cell, which is a letter then
	malformed  bool // letters after the closing quote
	unclosed   bool // opens with a quote that nothing closes; read as unquoted
}

// Limits that the lexer runs into.
var (
	errCellLimit = errors.New("cell too long")
	errRowLimit  = errors.New("row too long")
)

// A lexer cuts text into rows of fields after RFC 4180, and goes on where a
// table does not keep to it. CR, LF and CRLF end a line; nothing else does.
// They end a row too, unless eol is set.
type lexer struct {
	in      *input
	comma   []byte
	quote   []byte // nil where quotes are letters
	double  string // two of them
	narrow  bool   // comma, quote and eol are one byte each
	eol     []byte // what ends a row in place of CR, LF and CRLF; nil if those do
	class   [256]uint8
	maxCell int
	maxRow  int
	// keepBlank makes a line without a letter a row: in a table of one
	// column it is an empty cell, elsewhere it is nothing.
	keepBlank bool

	b      []byte // text from the start of the row
	line   int    // physical line of the row's start, from 1
	fields []field
	length int // of the row's text, its line end not included
	ending int // of the line end
	breaks int // lines that the row spans beyond its first
}

// codeSigns are the bytes of isCode.
const codeSigns = `&?\%_<`

func newLexer(in *input, o Options) *lexer {
	l := &lexer{in: in, comma: []byte(string(o.Comma)), line: 1, maxCell: o.MaxCell, maxRow: o.MaxRow}
	for c := range l.class {
		switch {
		case c >= utf8.RuneSelf:
			l.class[c] = isHigh
		case c == '\r' || c == '\n':
			l.class[c] = isLine
			if o.eol == 0 {
				l.class[c] |= isBreak
			}
		case c < ' ' || c == 0x7F:
			l.class[c] = isControl
		case strings.IndexByte(codeSigns, byte(c)) >= 0:
			l.class[c] = isCode
		}
	}
	l.class[l.comma[0]] = l.class[l.comma[0]]&isHigh | isComma
	if !o.Literal {
		l.quote = []byte(string(o.Quote))
		l.double = string(o.Quote) + string(o.Quote)
		l.class[l.quote[0]] = l.class[l.quote[0]]&(isHigh|isComma) | isQuote
	}
	if o.eol != 0 {
		l.eol = []byte(string(o.eol))
		l.class[l.eol[0]] = l.class[l.eol[0]]&isHigh | isBreak
	}
	l.narrow = len(l.comma) == 1 && len(l.quote) < 2 && len(l.eol) < 2
	l.b = in.buf[in.pos:]
	return l
}

// more reads on; false at the end of the file.
func (l *lexer) more() bool {
	ok := l.in.more()
	l.b = l.in.buf[l.in.pos:]
	return ok
}

// have reports whether there is a byte i in the row's text or after it.
func (l *lexer) have(i int) bool {
	for i >= len(l.b) {
		if !l.more() {
			return false
		}
	}
	return true
}

// found reports whether s stands at i.
func (l *lexer) found(i int, s []byte) bool {
	if i < len(l.b) && l.b[i] != s[0] {
		return false
	}
	return l.have(i+len(s)-1) && l.b[i] == s[0] && (len(s) == 1 || bytes.Equal(l.b[i:i+len(s)], s))
}

// drop moves on by n bytes.
func (l *lexer) drop(n int) {
	l.in.pos += n
	l.b = l.b[n:]
}

// skipLine passes over one physical line and reports whether there was one. A
// line may be of any length.
func (l *lexer) skipLine() bool {
	if !l.have(0) {
		return false
	}
	for {
		i := bytes.IndexAny(l.b, "\r\n")
		if i >= 0 {
			n := l.lineEnd(i)
			l.drop(i + n)
			l.line++
			return true
		}
		l.drop(len(l.b))
		if !l.more() {
			return true
		}
	}
}

// rowEnd returns the length of what ends a row at i, 0 if nothing does.
func (l *lexer) rowEnd(i int) int {
	switch {
	case l.eol == nil:
		return l.lineEnd(i)
	case l.found(i, l.eol):
		return len(l.eol)
	}
	return 0
}

// lineEnd returns the length of the line end at i, 0 if there is none.
func (l *lexer) lineEnd(i int) int {
	switch {
	case !l.have(i):
		return 0
	case l.b[i] == '\n':
		return 1
	case l.b[i] != '\r':
		return 0
	case l.have(i+1) && l.b[i+1] == '\n':
		return 2
	}
	return 1
}

// next cuts the next row into l.fields; false at the end of the file.
func (l *lexer) next() (bool, error) {
	l.drop(l.length + l.ending)
	l.line += l.breaks
	if l.ending > 0 && l.eol == nil {
		l.line++
	}
	l.length, l.ending, l.breaks = 0, 0, 0
	l.fields = l.fields[:0]
	for {
		if !l.have(0) {
			return false, l.in.err
		}
		n := l.rowEnd(0)
		if l.eol != nil && n == 0 {
			n = l.finalLine()
		}
		if n == 0 || l.keepBlank {
			break
		}
		l.drop(n)
		if l.eol == nil {
			l.line++
		}
	}
	for i := 0; ; {
		if end := l.plainField(i); end >= 0 {
			if l.class[l.b[end]]&isComma != 0 {
				i = end + 1
				continue
			}
			l.length, l.ending = end, l.rowEnd(end)
			return true, l.in.err
		}
		var f field
		var err error
		if q := l.indented(i); q.quoted {
			f = q
		} else if l.quote != nil && l.found(i, l.quote) {
			if f, err = l.quoted(i); err == nil && !f.unclosed && f.end-f.start > l.maxCell {
				f, err = l.unclosed(i)
			}
		} else {
			f, err = l.unquoted(i)
		}
		if err == nil && f.end-f.start > l.maxCell {
			err = errCellLimit
		}
		l.fields = append(l.fields, f)
		if f.kinds&isLine != 0 {
			l.breaks += countBreaks(l.b[f.start:f.end])
		}
		i = f.end
		if err == nil && i > l.maxRow {
			err = errRowLimit
		}
		if err != nil {
			return false, err
		}
		if l.have(i) && l.found(i, l.comma) {
			i += len(l.comma)
			continue
		}
		l.length, l.ending = i, l.rowEnd(i)
		return true, l.in.err
	}
}

// plainField is unquoted and quoted for the common case: one-byte commas, no
// line ends or quotes inside, and the whole field in the buffer. It adds the
// field and returns where it ends, or -1 if the case is another.
func (l *lexer) plainField(start int) int {
	b, class := l.b, &l.class
	if !l.narrow || start >= len(b) {
		return -1
	}
	f := field{start: start, from: start, to: -1}
	stop := isComma | isBreak
	if class[b[start]]&isQuote != 0 {
		f.quoted = true
		f.from++
		stop = isQuote | isLine | isBreak
	}
	for i, c := range b[f.from:] {
		if k := class[c]; k&stop != 0 {
			f.to = f.from + i
			break
		}
		f.kinds |= class[c]
	}
	if f.to < 0 {
		return -1
	}
	f.end = f.to
	if f.quoted {
		f.end++
		if class[b[f.to]]&isQuote == 0 || f.end >= len(b) || class[b[f.end]]&(isComma|isBreak) == 0 {
			return -1
		}
	}
	if f.end-start > l.maxCell || f.end > l.maxRow {
		return -1
	}
	if f.stray = f.kinds&isQuote != 0; f.stray && !f.quoted && b[start] == ' ' {
		return -1 // perhaps a quoted cell behind blanks
	}
	l.fields = append(l.fields, f)
	return f.end
}

// grow makes room for byte i of a field that starts at start: more() within
// the limits. It reports false at the end of the file.
func (l *lexer) grow(start, i int) (bool, error) {
	switch {
	case i-start > l.maxCell:
		return false, errCellLimit
	case i > l.maxRow:
		return false, errRowLimit
	}
	return l.more(), nil
}

// unquoted cuts a field that ends at the next comma or line end.
func (l *lexer) unquoted(start int) (field, error) {
	f := field{start: start, from: start}
	i, err := l.scan(&f, start)
	f.end, f.to = i, i
	f.stray = f.kinds&isQuote != 0
	return f, err
}

// scan looks for the next comma or line end from i and notes the kinds of
// bytes before it.
func (l *lexer) scan(f *field, i int) (int, error) {
	kinds := uint8(0)
	for {
		b := l.b
		for i < len(b) {
			k := l.class[b[i]]
			if k&(isComma|isBreak) != 0 {
				if l.ends(i, k) {
					f.kinds |= kinds
					return i, nil
				}
				b = l.b // found may have read on
			}
			kinds |= k
			i++
		}
		if ok, err := l.grow(f.start, i); !ok {
			f.kinds |= kinds
			return i, err
		}
	}
}

// ends reports whether the byte of class k at i ends an unquoted field.
func (l *lexer) ends(i int, k uint8) bool {
	return k&isBreak != 0 && (len(l.eol) < 2 || l.found(i, l.eol)) ||
		k&isComma != 0 && (len(l.comma) == 1 || l.found(i, l.comma))
}

// finalLine returns the length of a line end that closes the file after the
// last row's own end.
func (l *lexer) finalLine() int {
	if n := l.lineEnd(0); n > 0 && !l.have(n) {
		return n
	}
	return 0
}

// quoted cuts a field that opens with a quote.
func (l *lexer) quoted(start int) (field, error) {
	q := len(l.quote)
	f := field{start: start, from: start + q, quoted: true}
	i := start + q
	kinds := uint8(0)
	for {
		b := l.b
		for i < len(b) {
			k := l.class[b[i]]
			if k&isQuote != 0 {
				if q == 1 || l.found(i, l.quote) {
					break
				}
				b = l.b // found may have read on
			}
			kinds |= k
			i++
		}
		if i >= len(l.b) {
			if ok, _ := l.grow(start, i); !ok {
				return l.unclosed(start)
			}
			continue
		}
		f.to = i
		i += q
		if l.have(i) && l.found(i, l.quote) {
			f.doubled = true
			i += q
			continue
		}
		f.kinds = kinds
		end := l.blanksEnd(i)
		if !l.have(end) || l.ends(end, l.class[l.b[end]]) {
			f.end, f.blanks = end, end > i
			return f, nil
		}
		return l.afterQuote(f, i)
	}
}

// afterQuote finishes a quoted field whose quote is followed by letters, as in
// "the "big" tree". It ends at the next comma or line end; if a quote stands
// there, it closes the field and those between are letters. Else all of it is
// taken as written; or, if it runs over several lines, the quote that opens it
// is taken as one that nothing closes.
func (l *lexer) afterQuote(f field, i int) (field, error) {
	lines := f.kinds&isLine != 0
	end, err := l.scan(&f, i)
	f.malformed, f.end = true, end
	switch q := len(l.quote); {
	case end-q >= i && bytes.Equal(l.b[end-q:end], l.quote):
		f.to = end - q
	case lines && err == nil:
		return l.unclosed(f.start)
	default:
		f.from, f.to, f.doubled, f.quoted = f.start, end, false, false
	}
	return f, err
}

// unclosed goes back to the start of a field whose quote nothing closes
// before the end of the file or the limit, and reads it as unquoted: so the
// rows after it are not lost in one cell. What was passed over holds quotes
// only in pairs, none of which can open another such field, so no stretch of
// the file is read again more than once or twice.
func (l *lexer) unclosed(start int) (field, error) {
	f, err := l.unquoted(start)
	f.unclosed, f.stray = true, false
	return f, err
}

// text returns the words of a field; row is the row's text.
func (l *lexer) text(row string, f *field) string {
	s := row[f.from:f.to]
	if f.doubled {
		s = strings.ReplaceAll(s, l.double, l.double[len(l.quote):])
	}
	return s
}

// countBreaks counts line ends; CRLF is one.
func countBreaks(b []byte) int {
	return bytes.Count(b, []byte{'\n'}) + bytes.Count(b, []byte{'\r'}) - bytes.Count(b, []byte("\r\n"))
}
