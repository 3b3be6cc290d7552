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
	"fmt"
	"iter"

	"cornerslip/label"
)

// Options say how a table is written. The zero value finds out and says why.
type Options struct {
	// Encoding is the name of the character encoding, as IANA or WHATWG
	// register it, in any case: "utf-8", "windows-1252", "iso-8859-15",
	// "macintosh", "utf-16le", "shift_jis". "" goes by the byte-order mark and
	// else takes UTF-8; bytes that are none are named, never guessed.
	Encoding string
	// Comma stands between cells. 0 finds it from the heading row.
	Comma rune
	// Quote encloses cells; 0 is the double quote.
	Quote rune
	// Literal makes quotes ordinary letters, as in plain tab-separated files.
	Literal bool
	// MaxCell and MaxRow bound a cell and a row in bytes of UTF-8; 0 is 1 MiB
	// and 8 MiB.
	MaxCell, MaxRow int
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
	// Verbatim is set for the plain words lat, long and alt: the term that
	// takes a cell that is no bare number ("38°42'N", "4000 ft"). Get knows.
	Verbatim string
	// Index counts columns from 0.
	Index int
	// Origin is the place of the heading.
	Origin label.Origin
}

// A Table is a table whose heading row has been read. It is safe for several
// goroutines.
type Table struct {
	src     Source
	columns []Column
}

// Open reads the heading row and finds delimiter and encoding. What is wrong
// with the table's head, an empty file included, is in Findings; the error is
// for what is no table at all or cannot be read, and is an *Error where it has
// a place.
func Open(src Source, o Options) (*Table, error) { return nil, fmt.Errorf("not yet") }

// Source returns what the table is read from.
func (t *Table) Source() Source { return t.src }

// Columns returns the columns in order.
func (t *Table) Columns() []Column { return t.columns }

// Index returns the column of a term, counted from 0, or -1.
func (t *Table) Index(term string) int { return -1 }

// Findings returns what is to be said of headings, encoding and delimiter.
// What is to be said of a row is in the row.
func (t *Table) Findings() []label.Finding { return nil }

// Rows reads the records from the start each time it is ranged over. A row
// with a fault is yielded with its findings. An error (an *Error where it has
// a place) ends the reading. Rows are fresh: they may be kept and handed to
// other goroutines.
func (t *Table) Rows() iter.Seq2[*Row, error] { return func(func(*Row, error) bool) {} }

// Digest returns the SHA-256 of the file's bytes in hexadecimal, as the last
// complete reading of Rows met them; "" before there was one. Two readings of
// one file are of the same table if their digests agree.
func (t *Table) Digest() string { return "" }

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
