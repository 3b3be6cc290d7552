// Package table reads any table as text: comma, semicolon, tab or pipe
// between cells, quoted or not, in any common encoding, with any line ends,
// and Darwin Core archives. Every cell knows its file, line, column and bytes,
// and Rewrite changes cells while every other byte stays.
//
// Memory does not grow with the table: rows are read one at a time, a cell
// may have up to 1 MiB and a row up to 8 MiB.
//
// Sources: RFC 4180 (quoting), the Darwin Core text guide (archives) and list
// of terms (headings), the Unicode Standard.
package table

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"io"
	"iter"
	"strconv"
	"sync"
	"sync/atomic"
	"unicode/utf8"

	"cornerslip/label"
)

// Limits of Options at zero, in bytes of UTF-8.
const (
	defaultMaxCell = 1 << 20
	defaultMaxRow  = 8 << 20
)

// Options say how a table is written. The zero value finds out and says why.
type Options struct {
	// Encoding is the name of the character encoding, as IANA or WHATWG
	// register it, in any case: "utf-8", "windows-1252", "iso-8859-15",
	// "macintosh", "utf-16le", "shift_jis". "" goes by the byte-order mark and
	// else takes UTF-8. A table that is not UTF-8 is read in the encoding in
	// which all of it makes sense, if there is one, with an error that says so
	// (see Found); else its cells are named one by one. A byte-order mark in
	// the file outranks the name, with a finding.
	Encoding string
	// Comma stands between cells. 0 finds it from the heading row.
	Comma rune
	// Quote encloses cells; 0 is the double quote.
	Quote rune
	// Literal makes quotes ordinary letters, as in plain tab-separated files.
	Literal bool
	// Worksheet is the name of the worksheet of a workbook; "" finds the one
	// with the table.
	Worksheet string
	// MaxCell and MaxRow bound a cell and a row in bytes of UTF-8; 0 is 1 MiB
	// and 8 MiB.
	MaxCell, MaxRow int

	// supposed is true where Encoding is what a description says, not the user.
	supposed bool
	// eol ends a row in place of a line end, as a Darwin Core archive may
	// say; 0 is CR, LF or CRLF.
	eol rune
}

// check fills in what zero means and refuses what cannot be.
func (o *Options) check() error {
	if o.Quote == 0 {
		o.Quote = '"'
	}
	if o.MaxCell <= 0 {
		o.MaxCell = defaultMaxCell
	}
	if o.MaxRow <= 0 {
		o.MaxRow = max(defaultMaxRow, o.MaxCell)
	}
	for _, r := range []rune{o.Comma, o.Quote} {
		if r == '\r' || r == '\n' || r == utf8.RuneError || !utf8.ValidRune(r) {
			return fmt.Errorf("%q cannot stand between cells or around them", r)
		}
	}
	if o.Comma == o.Quote && !o.Literal {
		return fmt.Errorf("%q cannot stand both between cells and around them", o.Comma)
	}
	return nil
}

// A Column is one column of the heading row.
type Column struct {
	// Heading is the cell of the heading row as written.
	Heading string
	// Term is the Darwin Core term (or a documented term of ours) that the
	// heading stands for, without prefix; the heading itself, trimmed, if it
	// is not known.
	Term string
	// Known is false where the heading stands for no term.
	Known bool
	// Verbatim is set for plain words such as lat, long and alt: the term that
	// takes a cell that is no bare number ("38°42'N", "4000 ft"). Get knows.
	Verbatim string
	// Unit is what the heading says of heights, depths and distances: "metres",
	// "feet" or "fathoms"; "" where it says nothing.
	Unit string
	// DayFirst is set for a column of dates in figures that the language of the
	// headings, and full stops between the figures or another date, say to have the
	// day first.
	DayFirst bool
	// MonthFirst is set for a column of dates whose heading says that the month
	// stands first.
	MonthFirst bool
	// Joined is set where the cells have underscores between their words, as
	// names of files and of the tips of trees have.
	Joined bool
	// Also are the terms that a heading of several things names besides Term, as
	// in "Locality, date": the cells have them among their words.
	Also   []string
	unlike map[string]bool // see CouldBe
	// Index counts columns from 0. Row.Cells are in this order.
	Index int
	// Origin is the place of the heading.
	Origin label.Origin

	// from is the column in the file, where a Darwin Core archive says
	// otherwise than Index; -1 is no column but a constant value. value is
	// what stands for an empty cell.
	from  int
	value string
	// allDays is set where DayFirst holds without full stops too.
	allDays bool
	// group are the columns that are read as one with this; nil if none are.
	group *group
	// event is the column of the event's table that fills an empty cell,
	// counted from 1; 0 is none.
	event int
}

// A Table is a table whose heading row has been read. It is safe for several
// goroutines.
type Table struct {
	language string // see Language
	parts    []part // the file; an archive may have its core in several
	o        Options
	skip     int    // physical lines before the heading row or the first record
	heading  bool   // there is a heading row
	under    int    // rows below it that belong to it
	spare    int    // empty cells that every row has beyond the last column
	short    bool   // every row has more cells than there are headings
	trimmed  bool   // rows end with their last filled cell
	ended    bool   // that sample reached the end of the file
	garble   garble // of the last sample
	starts   []int  // the lines where the rows of the last sample begin
	archive  bool   // the columns are as an archive's description says
	mapped   bool   // and they are not simply the file's own
	width    int    // cells in a row of the file
	columns  []Column
	index    termIndex
	verbatim map[string]int // by Column.Verbatim
	groups   []*group       // columns that are read as one
	findings []label.Finding
	pointed  map[string]string // see Pointed
	rank     string            // see EpithetRank
	empty    map[string]bool   // the codes that stand for an empty cell
	zeros    [4]bool           // whether 0 stands for an empty cell in each of heightColumns
	profiles []profile         // what the columns hold, nil where too little is known
	sheet    *worksheet        // that the text was made of, nil for a table of text
	events   *events           // that the rows are specimens of, nil if the table has all
	key      int               // and the column that names them
	digest   atomic.Pointer[string]
	released sync.Pool // of *Row
}

// A part is a file with its encoding.
type part struct {
	src     Source
	charset *charset
	mark    int      // length of its byte-order mark
	verdict *verdict // of a file that is not UTF-8, though nobody said so; nil for others
}

// Open reads the heading row and finds delimiter and encoding. What is wrong
// with the table's head, an empty file included, is in Findings; the error is
// for what is no table at all or cannot be read, and is an *Error where it has
// a place.
func Open(src Source, o Options) (*Table, error) {
	if err := o.check(); err != nil {
		return nil, fmt.Errorf("%s: %w", src.Name(), err)
	}
	if head, err := headOf(src); err == nil && bytes.HasPrefix(head, []byte("PK\x03\x04")) && isPackedWorkbook(src) {
		return openWorkbook(src, o)
	}
	t := &Table{o: o, heading: true}
	if err := t.addPart(src); err != nil {
		return nil, err
	}
	if err := t.readHeading(); err != nil {
		return nil, err
	}
	return t, t.sayFound()
}

// say adds a finding about the whole table or its heading row.
func (t *Table) say(rule *Rule, severity label.Severity, line int, format string, args ...any) {
	t.sayOf(t.parts[0].src, rule, severity, line, format, args...)
}

func (t *Table) sayOf(src Source, rule *Rule, severity label.Severity, line int, format string, args ...any) {
	t.findings = append(t.findings, label.Finding{
		Origin: label.Origin{File: src.Name(), Line: line},
		Rule:   rule.Name, Severity: severity, Message: fmt.Sprintf(format, args...),
	})
}

// lexer starts a reading of one part, past the lines before the heading row.
func (t *Table) lexer(p part, r io.Reader, comma rune, sum hash.Hash) *lexer {
	o := t.o
	o.Comma = comma
	l := newLexer(newInput(r, p.charset, p.mark, sum), o)
	l.in.verdict = p.verdict
	for range t.skip {
		if o.eol != 0 {
			l.next()
		} else if !l.skipLine() {
			break
		}
	}
	return l
}

// firstRow cuts the first row with a given comma. It returns no cells at the
// end of the file.
func (t *Table) firstRow(comma rune) ([]Cell, int, []label.Finding, error) {
	r, err := t.parts[0].src.Open()
	if err != nil {
		return nil, 0, nil, err
	}
	defer r.Close()
	l := t.lexer(t.parts[0], r, comma, nil)
	ok, err := l.next()
	if err != nil {
		return nil, 0, nil, t.fault(t.parts[0], l, 0, err)
	}
	if !ok {
		return nil, l.line, nil, nil
	}
	row := t.row(t.parts[0], l, 0)
	return row.Cells, row.Line, row.Findings, nil
}

// Source returns what the table is read from; the first file, where an archive
// has its core in several.
func (t *Table) Source() Source { return t.parts[0].src }

// Encoding returns the name of the table's encoding.
func (t *Table) Encoding() string { return t.parts[0].charset.name }

// Comma returns what stands between cells.
func (t *Table) Comma() rune { return t.o.Comma }

// Columns returns the columns in order. They must not be changed.
func (t *Table) Columns() []Column { return t.columns }

// Width returns how many columns the file has. Columns may list more: what an
// archive's description or a heading says of every record stands in none.
func (t *Table) Width() int { return t.width }

// Index returns the column of a term, counted from 0, or -1.
func (t *Table) Index(term string) int {
	if i, ok := t.index.find(term); ok {
		return i
	}
	return -1
}

// Has reports whether a row may have a cell of a term.
func (t *Table) Has(term string) bool {
	if t.Index(term) >= 0 {
		return true
	}
	_, ok := t.verbatim[term]
	return ok
}

// Findings returns what is to be said of headings, encoding and delimiter.
// What is to be said of a row is in the row.
func (t *Table) Findings() []label.Finding { return t.findings }

// Rows reads the records from the start each time it is ranged over. A row
// with a fault is yielded with its findings. An error (an *Error where it has
// a place) ends the reading. Rows are fresh: they may be kept and handed to
// other goroutines.
func (t *Table) Rows() iter.Seq2[*Row, error] {
	return pairs(func(yield func(*Row, error) bool) {
		sum := sha256.New()
		if t.events != nil {
			io.WriteString(sum, t.events.digest)
		}
		n := 0
		for _, p := range t.parts {
			ok := t.rows(p, sum, &n, yield)
			if !ok {
				return
			}
		}
		s := hex.EncodeToString(sum.Sum(nil))
		t.digest.Store(&s)
	})
}

// rows reads the records of one part and reports whether to go on.
func (t *Table) rows(p part, sum hash.Hash, n *int, yield func(*Row, error) bool) bool {
	r, err := p.src.Open()
	if err != nil {
		yield(nil, err)
		return false
	}
	defer r.Close()
	l := t.lexer(p, r, t.o.Comma, sum)
	if t.heading {
		for range 1 + t.under {
			if _, err := l.next(); err != nil {
				yield(nil, t.fault(p, l, 0, err))
				return false
			}
		}
	}
	l.keepBlank = t.width == 1
	for {
		ok, err := l.next()
		if err != nil {
			yield(nil, t.fault(p, l, *n+1, err))
			return false
		}
		if !ok {
			return true
		}
		*n++
		if !yield(t.row(p, l, *n), nil) {
			return false
		}
	}
}

// Digest returns the SHA-256 of the file's bytes in hexadecimal, as the last
// complete reading of Rows met them; "" before there was one. Two readings of
// one file are of the same table if their digests agree.
func (t *Table) Digest() string {
	if s := t.digest.Load(); s != nil {
		return *s
	}
	return ""
}

// fault makes the lexer's error one with a place.
func (t *Table) fault(p part, l *lexer, row int, err error) error {
	e := &Error{Origin: label.Origin{File: p.src.Name(), Line: l.line, Row: row}, Err: nil}
	var last field
	if n := len(l.fields); n > 0 {
		last = l.fields[n-1]
	}
	at := place{line: l.line, column: 1}
	at.walk(l.b[:min(last.start, len(l.b))])
	e.Line, e.Column = at.line, at.column
	switch err {
	case errCellLimit:
		e.Message = fmt.Sprintf("the cell that begins here is longer than %s, the most a cell may have: is the %s what stands between cells, and has every line its end?",
			sizeWords(l.maxCell), commaName(t.o.Comma))
	case errRowLimit:
		e.Column = 1
		e.Line = l.line
		e.Message = fmt.Sprintf("the row that begins here is longer than %s, the most a row may have: has every line its end?", sizeWords(l.maxRow))
	default:
		e.Column = 0
		e.Message, e.Err = "cannot be read on", err
	}
	return e
}

func sizeWords(n int) string {
	if n >= 1<<20 && n%(1<<20) == 0 {
		return strconv.Itoa(n>>20) + " MiB"
	}
	return strconv.Itoa(n) + " bytes"
}

func commaName(r rune) string {
	for _, c := range commas {
		if c.r == r {
			return c.name
		}
	}
	return strconv.QuoteRune(r)
}

// cut shortens text for a message.
func cut(s string, n int) string {
	if utf8.RuneCountInString(s) <= n {
		return s
	}
	return string([]rune(s)[:n-1]) + "…"
}

// An Error is why a table cannot be read on.
type Error struct {
	label.Origin
	Message string // what is wrong and what to do
	Err     error  // the cause, if there is one
}

func (e *Error) Error() string {
	s := e.Origin.String() + ": " + e.Message
	if e.Err != nil {
		s += ": " + e.Err.Error()
	}
	return s
}

func (e *Error) Unwrap() error { return e.Err }
