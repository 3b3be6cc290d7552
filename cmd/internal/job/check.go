package job

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/check/bdq"
	"cornerslip/label/check/trade"
	"cornerslip/label/date"
	"cornerslip/label/house"
	"cornerslip/label/table"
	"cornerslip/layout"
)

// A Table is an open table and how it was chosen from.
type Table struct {
	*table.Table
	Only *Selection // nil: all records

	dataset *table.Dataset // the tables beside it; nil if there are none
}

// A Summary counts what a check found.
type Summary struct {
	Records  int // all rows that hold anything
	Chosen   int // of these, those chosen
	Errors   int // findings by severity
	Warnings int
	Notes    int
	Bad      []BadRecord // chosen records that cannot be printed, in order
	Digest   string      // of the table as read
	// Refused is true where nothing may be printed whatever is left out: it is
	// not certain what encoding the table is in.
	Refused bool
}

// A BadRecord is a record with an error.
type BadRecord struct {
	File      string
	Row, Line int
	Key       string
}

// fatal reports whether nothing can be printed: with exceptBad, the good
// records still can.
func (s *Summary) fatal(exceptBad bool) bool {
	return s.Refused || s.Errors > 0 && (!exceptBad || len(s.Bad) == 0)
}

func (s *Summary) count(f label.Finding) {
	switch f.Severity {
	case label.Error:
		s.Errors++
	case label.Warning:
		s.Warnings++
	default:
		s.Notes++
	}
}

// checkOptions turns the house's values into the check's.
func (j *Job) checkOptions() check.Options {
	h := j.House
	o := check.Options{
		Today:            j.today(),
		Backlog:          h.Check.Backlog || j.o.Backlog,
		KeepPlaceholders: h.Check.PrintPlaceholders,
		Code:             h.Herbarium.Code,
		Dates:            dateHints(h),
	}
	o.Rules = slices.Concat(slipRules, []check.Rule{j.withheldRule()}, bdq.Rules(), trade.Rules())
	for name, s := range h.Check.Severity {
		if o.Severity == nil {
			o.Severity = map[string]label.Severity{}
		}
		o.Severity[name] = severities[s]
	}
	return o
}

// readOptions are those of a further reading of a table that was checked: the
// records come out the same, and nothing is looked for again.
func (j *Job) readOptions() check.Options {
	o := j.checkOptions()
	o.Rules = nil
	return o
}

func (j *Job) today() date.Date {
	d, err := date.New(j.o.Date.Year(), int(j.o.Date.Month()), j.o.Date.Day())
	if err != nil {
		return date.Date{} // the zero time is no day
	}
	return d
}

var severities = map[string]label.Severity{"error": label.Error, "warning": label.Warning, "note": label.Note, "off": check.Off}

// Rules returns the rules of the check with the severities in force. The
// error says which rule of the house file does not exist.
func (j *Job) Rules() ([]check.Rule, error) {
	e := check.New(j.checkOptions())
	return e.Rules(), j.unknownRules(e)
}

func (j *Job) unknownRules(e *check.Engine) error {
	var errs []error
	for _, name := range e.Unknown() {
		if slices.ContainsFunc(table.Rules(), func(r table.Rule) bool { return r.Name == name }) {
			continue // a rule of the reading, which Adjust hears of
		}
		errs = append(errs, fmt.Errorf("%s: no rule is called %q; \"cornerslip check --rules\" lists them",
			j.House.Place("check.severity."+name), name))
	}
	return errors.Join(errs...)
}

// rowResult is a row and what the check says of it.
type rowResult struct {
	record   *check.Record
	findings []label.Finding
	chosen   bool
}

// scan reads the table once and hands every record to each in order, to be
// kept. Rows are checked on several goroutines.
func (j *Job) scan(t *Table, e *check.Engine, each func(rowResult) error) error {
	return layout.InOrder(batches(t.Rows()), j.Workers, func(_ int, rows []*table.Row) ([]rowResult, error) {
		results := make([]rowResult, len(rows))
		for i, row := range rows {
			results[i].record, results[i].findings = e.Row(row)
			row.Release()
		}
		return results, nil
	}, func(results []rowResult, err error) error {
		for _, r := range results {
			r.chosen = !r.record.Empty() && t.Only.Match(r.record)
			if err := each(r); err != nil {
				return err
			}
		}
		return err
	})
}

// sweep is scan for who keeps no record.
func (j *Job) sweep(t *Table, e *check.Engine, each func(rowResult) error) error {
	return j.scan(t, e, func(r rowResult) error {
		err := each(r)
		e.Release(r.record)
		return err
	})
}

// batch is how many rows go to a goroutine at a time: handing over one costs
// as much as reading it.
const batch = 64

// batches groups rows. An error comes after the rows before it.
func batches(rows iter.Seq2[*table.Row, error]) iter.Seq2[[]*table.Row, error] {
	return func(yield func([]*table.Row, error) bool) {
		group := make([]*table.Row, 0, batch)
		for row, err := range rows {
			if err != nil {
				if len(group) == 0 || yield(group, nil) {
					yield(nil, err)
				}
				return
			}
			if group = append(group, row); len(group) == batch {
				if !yield(group, nil) {
					return
				}
				group = make([]*table.Row, 0, batch)
			}
		}
		if len(group) > 0 {
			yield(group, nil)
		}
	}
}

// Check reads the table and hands every finding that concerns the chosen
// records to each: those of the table's head first, then row by row, then
// those that only the whole table shows.
func (j *Job) Check(t *Table, each func(label.Finding) error) (Summary, error) {
	return j.checkScoped(t, nil, each)
}

// checkScoped is Check for what has to do with a scope alone.
func (j *Job) checkScoped(t *Table, in *scope, each func(label.Finding) error) (Summary, error) {
	return j.checkTold(t, in, nil, func(f label.Finding, _ *check.Record) error { return each(f) })
}

// textEncoding is the rule of the reading by which bytes stand for no character.
const textEncoding = "text-encoding"

// adjustHead gives a finding of a table's head the severity that the house wants.
// What keeps a table from being printed is said as it is.
func adjustHead(e *check.Engine, t *table.Table, f label.Finding) (label.Finding, bool) {
	if f.Rule == textEncoding && f.Term == "" && t.Found() != "" {
		return f, true
	}
	return e.Adjust(f)
}

// headingMissing is the rule of the reading that finds no row of headings: what
// would be said of the rows then helps nobody.
const headingMissing = "heading-missing"

// checkTold is checkScoped for who wants to know more: pass gets every record in
// order before what is said of it, each the record that a finding is of; nil for
// the table's head, and for what only the whole table shows, since its records
// have gone by then.
func (j *Job) checkTold(t *Table, in *scope, pass func(*check.Record), each func(label.Finding, *check.Record) error) (Summary, error) {
	e := check.New(j.checkOptions())
	if err := j.unknownRules(e); err != nil {
		return Summary{}, err
	}
	var s Summary
	bad := map[int]BadRecord{}
	var chosen rowSet // a rule of the whole table may still find them bad
	headings := t.HeadingsOf()
	say := func(f label.Finding, r *check.Record) error {
		s.count(f)
		if len(headings) > 0 {
			f.Head = headings[f.Term]
			if f.Row > 0 && !strings.HasPrefix(f.Rule, "heading-") { // those say what a heading means
				f.Message = inHeadings(f.Message, headings)
			}
		}
		return each(f, r)
	}
	s.Refused = t.Found() != ""
	unread := false // without headings no cell can be read
	for _, f := range t.Findings() {
		unread = unread || f.Rule == headingMissing
		if f, ok := adjustHead(e, t.Table, f); ok && in.concerns(f) {
			if err := say(f, nil); err != nil {
				return s, err
			}
		}
	}
	err := j.sweep(t, e, func(r rowResult) error {
		e.Feed(r.record)
		if pass != nil {
			pass(r.record)
		}
		if !r.record.Empty() {
			s.Records++
		}
		if !r.chosen && !(t.Only.All() && r.record.Empty()) {
			return nil
		}
		if r.chosen {
			s.Chosen++
			chosen.add(r.record.Row)
		}
		for _, f := range r.findings {
			if !in.concerns(f) || unread {
				continue
			}
			if f.Severity == label.Error && r.chosen {
				bad[f.Row] = badRecord(r.record)
			}
			if err := say(f, r.record); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return s, err
	}
	nameless := false
	for _, f := range e.End() {
		if f.Cause != "" { // the cells of Also have the fault too
			f = ofChosen(f, chosen)
		}
		if f.Row != 0 && !chosen.has(f.Row) || !in.concerns(f) || unread {
			continue
		}
		rows := []int{f.Row}
		if f.Cause != "" {
			for _, c := range f.Also {
				rows = append(rows, c.Row)
			}
		}
		for i, row := range rows {
			if _, known := bad[row]; f.Severity == label.Error && row != 0 && !known {
				bad[row] = BadRecord{File: f.File, Row: row}
				if i == 0 {
					bad[row] = BadRecord{File: f.File, Row: row, Line: f.Line}
				}
				nameless = true
			}
		}
		if err := say(f, nil); err != nil {
			return s, err
		}
	}
	s.Digest = t.Digest()
	if nameless {
		err := j.revisit(t, func(r *check.Record) error {
			if b, ok := bad[r.Row]; ok && b.Key == "" {
				bad[r.Row] = badRecord(r)
			}
			return nil
		})
		if err != nil {
			return s, err
		}
	}
	for _, b := range bad {
		s.Bad = append(s.Bad, b)
	}
	slices.SortFunc(s.Bad, func(a, b BadRecord) int { return a.Row - b.Row })
	return s, nil
}

// inHeadings writes the columns that a message names as the table's headings have
// them: people look for those. Terms that are words of the language, year or
// country, stay.
func inHeadings(message string, headings map[string]*label.Heading) string {
	var b strings.Builder
	rest, quoted := message, false
	for i := 0; i < len(rest); {
		if !letter(rest[i]) {
			quoted = quoted != (rest[i] == '"')
			b.WriteByte(rest[i])
			i++
			continue
		}
		n := i
		for n < len(rest) && letter(rest[n]) {
			n++
		}
		word := rest[i:n]
		if h := headings[word]; h != nil && !quoted && strings.ToLower(word) != word {
			word = h.Text
			if strings.ContainsFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_' }) {
				word = strconv.Quote(word)
			}
		}
		b.WriteString(word)
		i = n
	}
	return b.String()
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c >= 0x80 }

// ofChosen leaves of a finding with further cells of the same fault those that
// are chosen.
func ofChosen(f label.Finding, chosen rowSet) label.Finding {
	f.Also = slices.DeleteFunc(slices.Clone(f.Also), func(c label.Cell) bool { return !chosen.has(c.Row) })
	if len(f.Also) > 0 && !chosen.has(f.Row) {
		f.Origin = label.Origin{File: f.File, Row: f.Also[0].Row, Term: f.Also[0].Term}
		f.Value, f.Suggest, f.Also = "", "", f.Also[1:]
	}
	return f
}

// revisit reads the records once more, for those that have gone by. None may be
// kept.
func (j *Job) revisit(t *Table, each func(*check.Record) error) error {
	return j.sweep(t, check.New(j.readOptions()), func(r rowResult) error { return each(r.record) })
}

func badRecord(r *check.Record) BadRecord {
	return BadRecord{File: r.Origin.File, Row: r.Row, Line: r.Origin.Line, Key: r.Key()}
}

// rowSet is a set of row numbers, a bit for each row of the table.
type rowSet []uint64

func (s *rowSet) add(row int) {
	for len(*s) <= row/64 {
		*s = append(*s, 0)
	}
	(*s)[row/64] |= 1 << (row % 64)
}

func (s rowSet) has(row int) bool {
	return row >= 0 && row/64 < len(s) && s[row/64]&(1<<(row%64)) != 0
}

func dateHints(h *house.House) date.Hints {
	var hints date.Hints
	switch h.Dates.Order {
	case "day first":
		hints.Order = date.DayFirst
	case "month first":
		hints.Order = date.MonthFirst
	}
	hints.Century, _ = strconv.Atoi(strings.TrimSuffix(h.Dates.Century, "s")) // 0 for "ask"
	return hints
}

// readDates puts an answer of the command line in the place of the house's.
func readDates(d *house.Dates, text string) error {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	for word := range strings.SplitSeq(text, ",") {
		switch w := strings.ToLower(strings.Join(strings.Fields(word), " ")); w {
		case "day first", "month first":
			d.Order = w
		case "1800s", "1900s", "2000s":
			d.Century = w
		case "ask":
			d.Order, d.Century = w, w
		default:
			return fmt.Errorf(`--dates %q is not known; say "day first" or "month first", and for years of two figures 1800s, 1900s or 2000s, as in "day first, 1900s"`, text)
		}
	}
	return nil
}
