package table

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// A Cell is one cell of a row.
type Cell struct {
	// Text is the cell decoded, without enclosing quotes. It is valid UTF-8:
	// bytes that cannot be decoded are U+FFFD and have a finding in the row.
	Text string
	// Line and Column are where the cell starts, at its quote if it has one:
	// the physical line, and code points of the decoded line, from 1.
	Line, Column int
	// Start and End bound the cell's bytes in the file, quotes included. Both
	// are 0 for a constant of a Darwin Core archive, which stands in no cell.
	Start, End int64
	// Quoted is true if the cell is enclosed in quotes.
	Quoted bool
}

// A Row is one record.
type Row struct {
	N     int  // records from 1
	Line  int  // physical line of its first cell, from 1
	Empty bool // no cell holds anything but blanks, or the row is Aside
	// Aside is true for a row that is no record but the headings again, a
	// title, a sum, a remark or the rest of the row above. A finding shows
	// what it holds.
	Aside bool
	// Astray is true where cells stand under the headings of other columns,
	// or several rows in one cell: a finding says so, and what the cells hold
	// says nothing.
	Astray bool
	// Cells are the cells by column. A ragged row has fewer or more than the
	// table has columns; empty cells beyond the last column are left out.
	Cells []Cell
	// Findings are what the reading itself has to say of this row: its cell
	// count, its quotes, damaged text.
	Findings []label.Finding

	table *Table
	file  string
	end   int64 // place in the file after the last cell
	// padded are the cells at the end that the file has not.
	padded int
}

// Release gives the row back, to be made into a later one. Nobody may look at
// it or its cells afterwards; the cells' texts stay. A row that is not released
// is kept as long as anybody holds it.
func (r *Row) Release() { r.table.released.Put(r) }

// Get returns the cell of a Darwin Core term; the zero Cell if the table has
// no such column or the row is too short to have that cell. A column headed
// with a plain word such as "lat" answers to decimalLatitude where the cell is
// a bare number, and to verbatimLatitude where it is not.
func (r *Row) Get(term string) Cell {
	if len(r.table.groups) > 0 {
		if i, ok := r.table.index.find(term); ok && r.table.columns[i].group != nil {
			return r.table.columns[i].group.cell(r)
		}
	}
	if i := r.Column(term); i >= 0 && i < len(r.Cells) {
		return r.Cells[i]
	}
	return Cell{}
}

// Text returns Get(term).Text.
func (r *Row) Text(term string) string {
	if len(r.table.groups) > 0 {
		return r.Get(term).Text
	}
	if i := r.Column(term); i >= 0 && i < len(r.Cells) {
		return r.Cells[i].Text
	}
	return ""
}

// Column returns the column, counted from 0, that has the term in this row,
// -1 if none has. It is the column of an Edit of that cell.
func (r *Row) Column(term string) int {
	if i, ok := r.table.index.find(term); ok {
		c := &r.table.columns[i]
		if c.group != nil {
			return c.group.column(r)
		}
		if c.Verbatim == "" || !r.isVerbatim(i) {
			return i
		}
		return -1
	}
	if len(r.table.verbatim) == 0 {
		return -1
	}
	if i, ok := r.table.verbatim[term]; ok && r.isVerbatim(i) {
		return i
	}
	return -1
}

// isVerbatim reports whether cell i, of a column that takes both, is no bare
// number.
func (r *Row) isVerbatim(i int) bool {
	if i >= len(r.Cells) {
		return false
	}
	s := strings.TrimSpace(r.Cells[i].Text)
	return s != "" && !bareNumber.MatchString(s)
}

// Origin returns the place of a term's cell; the row's own place, with the
// term, if there is no such cell.
func (r *Row) Origin(term string) label.Origin {
	o := label.Origin{File: r.file, Line: r.Line, Row: r.N, Term: term}
	if c := r.Get(term); c.Line > 0 {
		o.Line, o.Column = c.Line, c.Column
	}
	return o
}

// Term returns the term of cell i in this row; "" beyond the last column.
func (r *Row) Term(i int) string {
	if i < 0 || i >= len(r.table.columns) {
		return ""
	}
	if c := &r.table.columns[i]; c.Verbatim != "" && r.isVerbatim(i) {
		return c.Verbatim
	} else {
		return c.Term
	}
}

// Table returns the table that the row is of.
func (r *Row) Table() *Table { return r.table }

// A place is a line and a column of the decoded text.
type place struct{ line, column int }

// walk moves the place past b.
func (p *place) walk(b []byte) {
	if n := countBreaks(b); n > 0 {
		p.line += n
		p.column = 1
		b = b[bytes.LastIndexAny(b, "\r\n")+1:]
	}
	p.column += utf8.RuneCount(b)
}

// row makes a Row of what the lexer cut.
func (t *Table) row(p part, l *lexer, n int) *Row {
	in := l.in
	r, _ := t.released.Get().(*Row)
	if r == nil || cap(r.Cells) < len(l.fields) {
		r = &Row{Cells: make([]Cell, 0, max(len(l.fields), len(t.columns)))}
	}
	*r = Row{N: n, Line: l.line, table: t, file: p.src.Name(), Empty: true, Cells: r.Cells[:len(l.fields)]}
	text := string(l.b[:l.length])
	at := place{line: l.line, column: 1}
	if t.sheet != nil {
		r.Line = t.sheet.row(l.line)
	}
	start := in.at(in.pos)
	filled := 0
	for i := range l.fields {
		f := &l.fields[i]
		c := &r.Cells[i]
		c.Text = text[f.from:f.to]
		if f.doubled {
			c.Text = l.text(text, f)
		}
		c.Line, c.Column = at.line, at.column
		if t.sheet != nil {
			c.Line, c.Column = r.Line, i+1
		}
		if in.cs.scheme == plain {
			c.Start, c.End = start+int64(f.start), start+int64(f.end)
		} else {
			c.Start, c.End = in.at(in.pos+f.start), in.at(in.pos+f.end)
		}
		c.Quoted = f.quoted
		switch {
		case f.kinds&(isHigh|isLine) == 0:
			at.column += f.end - f.start
		case f.kinds&isLine == 0:
			at.column += utf8.RuneCount(l.b[f.start:f.end])
		default:
			at.walk(l.b[f.start:f.end])
		}
		at.column++ // the comma
		if !isBlank(c.Text) {
			filled++
			r.Empty = false
		}
		if f.kinds&(isHigh|isControl|isCode) != 0 || f.stray || f.malformed || f.unclosed || f.blanks || f.indented {
			r.examine(i, l, f)
		}
	}
	r.end = in.at(in.pos + l.length)
	// Bytes that stand for nothing can lie in cells alone.
	for len(in.bad) > 0 && in.bad[0].start < r.end {
		in.bad = in.bad[1:]
	}
	if n > 0 {
		switch {
		case t.heading && r.aside(filled):
		case l.breaks > 0 && t.swallowed(r):
		case r.misquoted():
		case len(r.Cells) != t.width:
			r.ragged()
		case t.profiles != nil:
			r.astray()
		}
		for _, g := range t.groups {
			if len(r.Cells) == t.width && !r.Astray && !r.Aside {
				g.differ(r)
			}
		}
		if t.mapped && len(r.Cells) >= t.width {
			r.mapColumns()
		}
	}
	return r
}

// examine looks at a cell that is not plain ASCII or not well quoted.
func (r *Row) examine(i int, l *lexer, f *field) {
	c := &r.Cells[i]
	switch {
	case f.unclosed:
		r.say(i, ruleUnclosed, label.Error, "", "this quote opens the cell and nothing closes it before the end of the file or within %s: close or remove it; the cell is read up to the next %s or line end", sizeWords(l.maxCell), commaName(r.table.o.Comma))
	case f.malformed:
		r.say(i, ruleQuote, label.Error, "", "a quote inside a quoted cell must be doubled: write \"\" for each quote that is a letter")
	case f.indented:
		r.say(i, ruleQuote, label.Note, "", "blanks stand before the quote that opens the cell: they are not read, and the cell is taken as enclosed in quotes")
	case f.blanks:
		r.say(i, ruleQuote, label.Warning, "", "blanks stand between the closing quote and the end of the cell: they are not read")
	case f.stray && r.table.o.Comma == '\t': // where no cell needs quotes, a quote is a letter
	case f.stray && strayMatters(c.Text, string(l.quote)):
		r.say(i, ruleQuote, label.Warning, "", "the cell holds a quote but is not enclosed in quotes: the quote is read as a letter")
	case f.stray:
		r.say(i, ruleQuote, label.Note, "", "the cell holds a quote but is not enclosed in quotes: the quote is read as a letter")
	}
	switch {
	case f.kinds&(isHigh|isControl) != 0:
	case f.kinds&isCode != 0:
		escapes(c.Text, func(rule *Rule, suggest, message string) {
			r.say(i, rule, rule.Severity, suggest, "%s", message)
			if message == holdsTags { // a program writes all its cells so
				r.Findings[len(r.Findings)-1].Cause = message
			}
		})
		return
	default:
		return
	}
	lost := r.undecodable(i, l, f)
	damage(c.Text, func(rule *Rule, suggest, message string) {
		if lost && (rule == ruleReplacement || suggest != "") {
			return // of the bytes that stand for nothing, not of the text
		}
		r.say(i, rule, rule.Severity, suggest, "%s", message)
		if rule == ruleMojibake && suggest != "" && r.table.garble.whole() {
			r.Findings[len(r.Findings)-1].Cause = "the whole table was read in the wrong encoding"
		}
	})
}

// strayMatters reports whether a quote in an unquoted cell may be a fault: one
// after a figure is the sign for seconds or inches.
func strayMatters(text, quote string) bool {
	for at := 0; ; {
		i := strings.Index(text[at:], quote)
		if i < 0 {
			return false
		}
		before, _ := utf8.DecodeLastRuneInString(text[:at+i])
		if !unicode.IsDigit(before) {
			return true
		}
		at += i + len(quote)
	}
}

// undecodable names the bytes of a cell that stand for no character, and puts
// U+FFFD in their place.
func (r *Row) undecodable(i int, l *lexer, f *field) bool {
	c := &r.Cells[i]
	name := l.in.cs.name
	if l.in.cs.scheme != plain {
		n := 0
		for _, b := range l.in.bad {
			if b.start >= c.End {
				break
			}
			if b.start >= c.Start {
				n++
			}
		}
		if n > 0 {
			r.say(i, ruleUndecodable, label.Error, "", "%s %s: is that the table's encoding?",
				plural(n, "one character cannot be read as", "%d characters cannot be read as"), name)
		}
		return n > 0
	}
	if utf8.ValidString(c.Text) {
		return false
	}
	fit, suggest := l.in.fit(c.Text)
	var bad []byte
	var b strings.Builder
	for at := 0; at < len(c.Text); {
		ch, n := utf8.DecodeRuneInString(c.Text[at:])
		if ch == utf8.RuneError && n == 1 {
			bad = append(bad, c.Text[at])
		}
		b.WriteRune(ch)
		at += n
	}
	c.Text = b.String()
	which := fmt.Sprintf("% X", bad[:min(len(bad), 4)])
	if len(bad) > 4 {
		which += " …"
	}
	said := "the byte " + which + " is"
	if len(bad) > 1 {
		said = "the bytes " + which + " are"
	}
	if v := l.in.verdict; v != nil && v.utf8 {
		r.say(i, ruleUndecodable, label.Error, suggest, "%s not UTF-8, though the rest of the table is (%s would fit this cell): put back what was typed", said, fit)
	} else {
		r.say(i, ruleUndecodable, label.Error, suggest, "%s not UTF-8: name the table's encoding (%s would fit this cell), or save it as UTF-8", said, fit)
	}
	return true
}

// say adds a finding about cell i.
func (r *Row) say(i int, rule *Rule, severity label.Severity, suggest, format string, args ...any) {
	c := &r.Cells[i]
	r.Findings = append(r.Findings, label.Finding{
		Origin:   label.Origin{File: r.file, Line: c.Line, Column: c.Column, Row: r.N, Term: r.Term(i)},
		Value:    c.Text,
		Rule:     rule.Name,
		Severity: severity,
		Message:  fmt.Sprintf(format, args...),
		Suggest:  suggest,
	})
}

// ragged says that the row has not as many cells as the table has columns.
func (r *Row) ragged() {
	t := r.table
	n, want := len(r.Cells), t.width
	if r.usual(n, want) || !r.Empty && r.shifted() {
		return
	}
	f := label.Finding{
		Origin: label.Origin{File: r.file, Line: r.Line, Column: 1, Row: r.N},
		Rule:   ruleRagged.Name, Severity: label.Error,
	}
	switch {
	case r.Empty && n < want:
		f.Severity = label.Warning
		f.Message = fmt.Sprintf("the row has %s and all are empty: remove it", cells(n))
	case n < want:
		f.Message = fmt.Sprintf("the row has %s, the table has %d columns: is a line end inside a cell that is not enclosed in quotes, or is a cell missing?", cells(n), want)
	default:
		extra := r.Cells[want:]
		f.Line, f.Column = extra[0].Line, extra[0].Column
		f.Value = extra[0].Text
		blank := true
		for _, c := range extra {
			blank = blank && isBlank(c.Text)
		}
		if blank {
			f.Severity = label.Warning
			f.Message = fmt.Sprintf("the row has %s, the table has %d columns; those beyond are empty and not read: remove them", cells(n), want)
			r.Cells = r.Cells[:want]
		} else {
			f.Message = fmt.Sprintf("the row has %s, the table has %d columns: is a %s inside a cell that is not enclosed in quotes?", cells(n), want, commaName(r.table.o.Comma))
		}
	}
	r.Findings = append(r.Findings, f)
}

// misquoted reports whether a quote has no fellow, so that it cannot be told
// where cells end. What else is to be said of quotes and the number of cells
// comes of it and is not said.
func (r *Row) misquoted() bool {
	at := slices.IndexFunc(r.Findings, func(f label.Finding) bool {
		return f.Rule == ruleUnclosed.Name || f.Rule == ruleQuote.Name && f.Severity == label.Error
	})
	if at < 0 {
		return false
	}
	first := r.Findings[at]
	wrong := 0
	for i := range r.Cells {
		if r.misfits(i) {
			wrong++
		}
	}
	r.Astray = first.Rule == ruleUnclosed.Name || len(r.Cells) != r.table.width || wrong > 1
	r.Findings = slices.DeleteFunc(r.Findings, func(f label.Finding) bool {
		quote := f.Rule == ruleQuote.Name || f.Rule == ruleUnclosed.Name
		return quote && f.Origin != first.Origin && (r.Astray || f.Severity < label.Error)
	})
	return r.Astray
}

// usual settles what the table has in every row, and what has no heading.
func (r *Row) usual(n, want int) bool {
	t := r.table
	if n > want {
		if t.short {
			r.Astray = true
			return true
		}
		for _, c := range r.Cells[want:] {
			if n != want+t.spare || !isBlank(c.Text) {
				return false
			}
		}
		r.Cells = r.Cells[:want]
		return true
	}
	for i := n; i < want; i++ {
		if !t.trimmed && (!t.heading || !isBlank(t.columns[i].Heading)) {
			return false
		}
	}
	for i := range r.Cells {
		if t.trimmed && r.misfits(i) {
			return false
		}
	}
	last := r.Cells[n-1]
	r.padded = want - n
	for range want - n {
		r.Cells = append(r.Cells, Cell{Line: last.Line, Column: last.Column + utf8.RuneCountInString(last.Text), Start: last.End, End: last.End})
	}
	return true
}

func cells(n int) string { return plural(n, "one cell", "%d cells") }

// mapColumns fills in the default values that the description of a Darwin Core
// archive names and what the event says, and adds its constants and second terms of a column after the
// file's own columns. Cells beyond the last column stay at the end.
func (r *Row) mapColumns() {
	t := r.table
	file := r.Cells
	event := r.event()
	mapped := make([]Cell, len(t.columns), len(t.columns)+max(0, len(file)-t.width))
	for i := range t.columns {
		c := &t.columns[i]
		if c.from >= 0 && c.from < len(file) {
			mapped[i] = file[c.from]
		}
		if c.value != "" && isBlank(mapped[i].Text) && !r.Empty {
			mapped[i].Text = c.value
		}
		if c.event > 0 && event != nil && isBlank(mapped[i].Text) {
			mapped[i].Text = event[c.event-1]
		}
	}
	if len(file) > t.width {
		mapped = append(mapped, file[t.width:]...)
	}
	r.Cells = mapped
}

// isBlank reports whether text holds nothing but blanks.
func isBlank(s string) bool {
	for _, r := range s {
		if !unicode.IsSpace(r) && r != 0xFEFF && r != 0x200B {
			return false
		}
	}
	return true
}
