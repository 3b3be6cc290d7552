package bdq

import (
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label/date"
	"cornerslip/label/place"
	"cornerslip/label/table"
)

// Cells are the cells of one record as the tests see them: as written, by bare
// term. A term without a column is as good as an empty cell. What several
// tests read is read once; Cells are therefore not for several goroutines.
type Cells struct {
	text  func(term string) string
	today date.Date
	dates [2]dateCell // eventDate, dateIdentified

	// What was last read of a text: rows often repeat the one above.
	lastDates [2]struct {
		text string
		iso  date.Date
		ok   bool
	}
	lastDatum struct {
		text, code string
		ok         bool
	}
}

// datum returns the EPSG code of a datum's name, as place.Datum does.
func (c *Cells) datum(name string) (code string, ok bool) {
	last := &c.lastDatum
	if last.text != name || name == "" {
		last.text = name
		last.code, last.ok = place.Datum(name)
	}
	return last.code, last.ok
}

// dateCell is a cell read as an ISO 8601 date, and as people write dates, each
// once it was asked for.
type dateCell struct {
	done, empty, ok bool
	iso             date.Date
	read            bool
	reading         date.Reading
}

func (c *Cells) dateCell(term string) *dateCell {
	if term == "dateIdentified" {
		return &c.dates[1]
	}
	return &c.dates[0]
}

// NewCells returns the cells that a function gives by bare term.
func NewCells(text func(term string) string, today date.Date) *Cells {
	return &Cells{text: text, today: today}
}

// RowCells returns the cells of a row.
func RowCells(row *table.Row, today date.Date) *Cells {
	return NewCells(row.Text, today)
}

// Text returns a term's cell as written.
func (c *Cells) Text(term string) string { return c.text(term) }

// Empty reports whether a term's cell is what the standard calls bdq:Empty:
// nothing but whitespace and characters that do not print. A word such as
// "null" is not empty.
func (c *Cells) Empty(term string) bool { return blank(c.text(term)) }

// trimmed returns a cell without the whitespace and the characters that do not
// print around it.
func (c *Cells) trimmed(term string) string {
	s := c.text(term)
	if n := len(s); n == 0 || s[0] > ' ' && s[0] < 0x7f && s[n-1] > ' ' && s[n-1] < 0x7f {
		return s
	}
	return strings.TrimFunc(s, invisible)
}

func blank(s string) bool {
	for i := 0; i < len(s); i++ {
		if b := s[i]; b > ' ' && b < 0x7f {
			return false
		} else if b >= 0x80 {
			return strings.TrimFunc(s[i:], invisible) == ""
		}
	}
	return true
}

// invisible reports whether r leaves no ink: whitespace, controls, zero-width
// signs and the like.
func invisible(r rune) bool {
	return unicode.IsSpace(r) || unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) || r == '\u2800' || r == '\u3164'
}

// date returns eventDate or dateIdentified as an ISO 8601 date; empty is true
// where nothing is written, ok where it is a valid one.
func (c *Cells) date(term string) (d date.Date, empty, ok bool) {
	r := c.dateCell(term)
	if !r.done {
		text := c.text(term)
		r.done, r.empty = true, blank(text)
		if !r.empty {
			last := &c.lastDates[0]
			if term == "dateIdentified" {
				last = &c.lastDates[1]
			}
			if last.text != text {
				var err error
				last.text = text
				last.iso, err = date.FromISO(text)
				last.ok = err == nil
			}
			r.iso, r.ok = last.iso, last.ok
		}
	}
	return r.iso, r.empty, r.ok
}

// reading returns eventDate or dateIdentified as people write dates, without
// any hint of what is usual.
func (c *Cells) reading(term string) date.Reading {
	r := c.dateCell(term)
	if !r.read {
		r.read, r.reading = true, date.Read(c.trimmed(term), date.Hints{})
	}
	return r.reading
}

// number reads a cell as a decimal number, with a sign and an exponent or not,
// whatever blanks stand around it.
func (c *Cells) number(term string) (float64, bool) { return number(c.trimmed(term)) }

func number(s string) (float64, bool) {
	for i := range len(s) {
		if b := s[i]; (b < '0' || b > '9') && b != '+' && b != '-' && b != '.' && b != 'e' && b != 'E' {
			return 0, false // ParseFloat also takes Inf, NaN, 0x1p3 and 1_000
		}
	}
	if s == "" {
		return 0, false
	}
	f, err := strconv.ParseFloat(s, 64)
	if err != nil && f == 0 {
		return 0, false
	}
	return f, err == nil || f != 0 // too large a number is one, and out of every range
}

// integer reads a cell as a whole number in figures, whatever blanks stand
// around it. One too large for an int counts as a very large one.
func (c *Cells) integer(term string) (int, bool) { return integer(c.trimmed(term)) }

func integer(s string) (int, bool) {
	digits := s
	if s != "" && (s[0] == '-' || s[0] == '+') {
		digits = s[1:]
	}
	if digits == "" || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	n, _ := strconv.Atoi(s) // at its limit where it does not fit
	return n, true
}

// isoYear reads a cell as a year of ISO 8601: four figures.
func (c *Cells) isoYear(term string) (int, bool) {
	s := c.trimmed(term)
	if len(s) != 4 {
		return 0, false
	}
	if s[0] == '-' || s[0] == '+' {
		return 0, false
	}
	return integer(s)
}
