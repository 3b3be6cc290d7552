package check

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"

	"cornerslip/label"
	"cornerslip/label/date"
	"cornerslip/label/name"
	"cornerslip/label/table"
)

// A Rule is one thing the check looks for.
type Rule struct {
	Name     string // lower case with hyphens; findings and the house file use it
	Doc      string // one sentence: what it finds
	Source   string // a standard, a handbook, or "common practice, no source"
	Severity label.Severity
	Terms    []string // the Darwin Core terms it looks at
	// Example is a table that raises exactly this rule, Counterexample one
	// like it that raises none. Rows map terms to cells; see With.
	Example, Counterexample []map[string]string
	// Row looks at one record. It is called from many goroutines.
	Row func(*Context)
	// Idle, where it is set, reports whether Row has nothing to say of any record of a
	// table that has the terms that has reports.
	Idle func(has func(term string) bool) bool
	// Table makes the rule's state for one reading of a table.
	Table func() TableRule
}

// A TableRule is fed every record in the order of the table, keeps only what
// it compares, and speaks at the end. Records must not be kept.
type TableRule interface {
	Feed(*Record)
	// End returns findings without Rule and Severity, which the engine sets.
	End() []label.Finding
}

// Options set an engine. The zero value checks a new trip with the basic
// rules.
type Options struct {
	// Today is the date that "in the future" is held against; zero asks for
	// no such thing.
	Today date.Date
	// Dates settle dates in figures that have two readings.
	Dates date.Hints
	// Backlog is for old collections: a record may lack collector and place.
	Backlog bool
	// KeepPlaceholders leaves NA, null, ? and the like in the record, to be
	// printed; otherwise they count as empty cells.
	KeepPlaceholders bool
	// Code is the house's own herbarium code, "" if it has none.
	Code string
	// Severity replaces the severity of rules by name; Off silences one.
	Severity map[string]label.Severity
	// Rules are looked at after the basic ones.
	Rules []Rule
}

// Off is the severity of a rule that says nothing.
const Off label.Severity = 0

// An Engine checks the rows of one table. Row may be called from many
// goroutines at once; Feed and End belong to one, in the order of the table.
type Engine struct {
	o      Options
	rules  []Rule
	rows   []*Rule // those that look at one record and are not off
	awake  atomic.Pointer[waking]
	tables []fedRule

	contexts, records sync.Pool // of *Context and *Record, to be used again
}

type fedRule struct {
	Rule
	TableRule
}

// New returns an engine for one reading of a table.
func New(o Options) *Engine {
	e := &Engine{o: o, rules: append(Basic(), o.Rules...)}
	for i, r := range e.rules {
		if s, ok := o.Severity[r.Name]; ok {
			e.rules[i].Severity = s
		}
		if e.rules[i].Severity == Off {
			continue
		}
		if r.Table != nil {
			e.tables = append(e.tables, fedRule{e.rules[i], r.Table()})
		}
		if r.Row != nil {
			e.rows = append(e.rows, &e.rules[i])
		}
	}
	return e
}

// waking has the rules that a table can wake.
type waking struct {
	t     *table.Table
	rules []*Rule
}

// awakeIn returns the rules of one record that a table can wake. They are found
// once as long as its rows come, and anew where those of another come between.
func (e *Engine) awakeIn(t *table.Table) []*Rule {
	if w := e.awake.Load(); w != nil && w.t == t {
		return w.rules
	}
	w := &waking{t: t}
	for _, r := range e.rows {
		if r.Idle == nil || !r.Idle(t.Has) {
			w.rules = append(w.rules, r)
		}
	}
	e.awake.Store(w)
	return w.rules
}

// Rules returns the rules with the severities in force. Those of reading a
// table are table.Rules.
func (e *Engine) Rules() []Rule { return slices.Clone(e.rules) }

// Unknown returns the names in Options.Severity that no rule has, sorted.
func (e *Engine) Unknown() []string {
	var names []string
	for name := range e.o.Severity {
		if !slices.ContainsFunc(e.rules, func(r Rule) bool { return r.Name == name }) &&
			!slices.ContainsFunc(table.Rules(), func(r table.Rule) bool { return r.Name == name }) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// Row reads one row. It returns the record, which is fit to print if
// Printable says so and names the row otherwise, and what is to be said of
// it, the reading's own findings included, in the order of the columns.
func (e *Engine) Row(row *table.Row) (*Record, []label.Finding) {
	c := e.context()
	defer e.done(c)
	c.read(row)
	for _, f := range row.Findings {
		if f, ok := e.Adjust(f); ok {
			c.add(f)
		}
	}
	read := len(c.said)
	// The cells of a ragged row stand under the wrong headings: what they
	// hold says nothing.
	c.astray = row.Astray || row.Aside || len(row.Cells) != len(row.Table().Columns())
	if !c.astray || c.empty && !row.Aside {
		for _, r := range e.awakeIn(row.Table()) {
			if !c.empty || r.Name == emptyRow {
				c.rule = r
				r.Row(c)
			}
		}
	}
	c.keepCause(read)
	c.order()
	return c.Record, c.said
}

// order puts the findings into the order of their columns; those of one stay as
// they are. Findings are long, so their places are sorted and each is moved once.
func (c *Context) order() {
	byColumn := func(a, b label.Finding) int { return cmp.Compare(a.Column, b.Column) }
	n := len(c.said)
	if n < 8 || n > 1<<12 {
		slices.SortStableFunc(c.said, byColumn)
		return
	}
	keys, sorted := c.past.keys[:0], c.past.sorted[:0]
	for i := range c.said {
		keys = append(keys, uint64(c.said[i].Column)<<12|uint64(i))
	}
	slices.Sort(keys)
	for _, k := range keys {
		sorted = append(sorted, c.said[k&(1<<12-1)])
	}
	copy(c.said, sorted)
	clear(sorted)
	c.past.keys, c.past.sorted = keys, sorted
}

// Feed hands a record to the rules that look at the whole table.
func (e *Engine) Feed(r *Record) {
	if r.empty || r.astray {
		return
	}
	for _, t := range e.tables {
		t.Feed(r)
	}
}

// End returns what the rules that look at the whole table have to say, in the
// order of rows and columns. An error among them is an error of its row, which
// Printable of that record did not know.
func (e *Engine) End() []label.Finding {
	var all []label.Finding
	for _, t := range e.tables {
		for _, f := range t.End() {
			f.Rule, f.Severity = t.Name, t.Severity
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, func(a, b label.Finding) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
	})
	return all
}

// Adjust gives a finding that another package made the severity the house
// wants; false if it wants to hear nothing of it.
func (e *Engine) Adjust(f label.Finding) (label.Finding, bool) {
	if s, ok := e.o.Severity[f.Rule]; ok {
		f.Severity = s
	}
	return f, f.Severity != Off
}

// A Context is what a row rule sees: the record as far as it is fit to print,
// what was read on the way, and the means to speak.
type Context struct {
	*Record
	Options *Options
	// EventDate is what Date was read from, DateIdentified what Identified
	// was read from.
	EventDate, DateIdentified DateReading
	// Place is what the coordinates were read from.
	Place PlaceReading
	// Heights is what the elevation was read from.
	Heights HeightReading
	// NameProblems are what composing the name met.
	NameProblems []NameProblem
	nameFaults   []name.Fault
	// PartsErr is why the preparations cannot be read.
	PartsErr   error
	partDoubts []*PartError
	// Placeholders are the cells that say nothing.
	Placeholders []Field

	row   *table.Row
	rule  *Rule
	memos []memo
	past  *past
}

// past is what a Context remembers of other rows.
type past struct {
	reading      int // counts the rows
	keys         []uint64
	sorted       []label.Finding // room for order
	cells        []seenCell      // by column, those of the last row
	unread       unreadHeadings
	looks        map[string][]*look // by term
	preparations recall[string, partsReading]
	collectors   recall[string, []string]
	codes        recall[string, []string]
	dates        recall[string, date.Reading]
	metres       recall[string, Height]
	squares      recall[string, []string]
	names        recall[nameKey, nameReading]
	persons      recall[personKey, personReading]
	authors      recall[string, []name.Fault]
}

// Cell returns a term's cell as the table has it, blanks and placeholders
// included.
func (c *Context) Cell(term string) table.Cell { return c.row.Get(term) }

// HasColumn reports whether the table has cells of a term.
func (c *Context) HasColumn(term string) bool { return c.row.Table().Has(term) }

// CellText returns Cell(term).Text; "" where the whole table writes a code such
// as NA into empty cells.
func (c *Context) CellText(term string) string {
	text := c.row.Text(term)
	if text != "" && (c.row.Table().EmptyCode(text) || table.IsZero(text)) && c.emptyCode(term, strings.TrimSpace(text)) {
		return ""
	}
	if text == "" && (term == "recordedBy" || term == "recordNumber") {
		return c.Text(term) // from a cell that has both
	}
	return text
}

// blank reports whether nothing at all is written in a term's cell, not even a
// placeholder, which has a finding of its own.
func (c *Context) blank(term string) bool { return strings.TrimSpace(c.CellText(term)) == "" }

// Report says something of a term's cell; of the row, where it has none.
func (c *Context) Report(term, message string) { c.Suggest(term, message, "") }

// Reportf is Report with a format.
func (c *Context) Reportf(term, format string, args ...any) {
	c.Suggest(term, fmt.Sprintf(format, args...), "")
}

// Suggest is Report with the likely right value.
func (c *Context) Suggest(term, message, suggest string) {
	f := c.find(c.rule.Severity)
	f.Rule, f.Message, f.Suggest = c.rule.Name, message, suggest
	if e := c.entry(term); e != nil {
		f.Origin, f.Value = e.Origin, e.Text
		return
	}
	f.File, f.Line, f.Row, f.Term = c.Origin.File, c.Origin.Line, c.Record.Row, term
	cell := c.row.Get(term)
	f.Value = cell.Text
	if cell.Line > 0 {
		f.Line, f.Column = cell.Line, cell.Column
	}
}

// cause says what the finding just made has in common with others of its rule
// and column, whatever their values.
func (c *Context) cause(s string) { c.said[len(c.said)-1].Cause = s }

// hold keeps the record from being printed where the rule is an error, for
// what its TableRule will say of it.
func (c *Context) hold() {
	if c.rule.Severity == label.Error {
		c.errors++
	}
}

func (c *Context) add(f label.Finding) { *c.find(f.Severity) = f }

// find makes a finding of a severity, to be filled in where it stands: findings
// are long, and a row may have many.
func (c *Context) find(severity label.Severity) *label.Finding {
	if severity == label.Error {
		c.errors++
	}
	c.faulty = c.faulty || severity > label.Note
	c.said = append(c.said, label.Finding{Severity: severity})
	return &c.said[len(c.said)-1]
}

// keepCause drops what rules found of cells whose letters are damaged, since it
// follows from that. The first read findings are those of the reading.
func (c *Context) keepCause(read int) {
	type place struct{ line, column int }
	var damaged []place
	for _, f := range c.said[:read] {
		if f.Severity == label.Error && f.Column > 0 && strings.HasPrefix(f.Rule, "text-") {
			damaged = append(damaged, place{f.Line, f.Column})
		}
	}
	if len(damaged) == 0 {
		return
	}
	kept := c.said[:read]
	for _, f := range c.said[read:] {
		if !slices.Contains(damaged, place{f.Line, f.Column}) {
			kept = append(kept, f)
		}
	}
	c.said = kept
}

// reason is what an error says beside the value, which the finding shows
// already.
func reason(err error, text string) string {
	s := strings.TrimPrefix(err.Error(), strconv.Quote(text))
	return strings.TrimLeft(s, ": ")
}
