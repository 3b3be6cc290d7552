package job

import (
	"context"
	"errors"
	"fmt"
	"io"

	"cornerslip/label"
	"cornerslip/label/register"
	"cornerslip/label/table"
)

// An IssueRequest says how the specimens of a table are given numbers.
type IssueRequest struct {
	Register *register.Register
	At       register.At
	Series   string // "" is the house's, or the only one
	// ExceptBad numbers the others although some records cannot be given one.
	ExceptBad bool
	// Try only says what would be issued.
	Try bool
}

// A NumberStatus is what became of a record.
type NumberStatus string

// The outcomes.
const (
	NumberIssued  NumberStatus = "issued"      // it was given the next number
	NumberKnown   NumberStatus = "known"       // the register had its number, the table not
	NumberThere   NumberStatus = "numbered"    // it has its number in the table
	NumberForeign NumberStatus = "foreign"     // it has another house's number: left alone
	OtherHouse    NumberStatus = "other house" // it is another house's: left alone
	NumberNone    NumberStatus = "none"        // Err says why
)

// A Numbered is what became of a record.
type Numbered struct {
	label.Origin // the row
	Key          string
	Number       string // in full; "" if it has none
	Status       NumberStatus
	State        RegisterState // "" of a number that is not the register's
	// Differs says that the register has the number for other words.
	Differs string
	// Err is an ErrData where the reason was among the findings.
	Err error
}

// An IssueReport says what a run of numbers has done, or would do.
type IssueReport struct {
	Records int // that hold anything
	Series  string
	Issued  NumberRange // zero if none
	Next    string      // "" if none is left
	Filled  int         // cells that were empty and have a number now
	Numbers []Numbered
	// Others are the records with errors that have nothing to do with which
	// specimen it is: they get numbers, and are printed when they are mended.
	Others int
}

// Count returns how many records have come out so.
func (r *IssueReport) Count(s NumberStatus) int {
	n := 0
	for _, one := range r.Numbers {
		if one.Status == s {
			n++
		}
	}
	return n
}

// Nameless reports whether some record has no number for want of an identifier.
func (r *IssueReport) Nameless() bool {
	for _, one := range r.Numbers {
		if errors.Is(one.Err, register.ErrNeedsIdentifier) || errors.Is(one.Err, register.ErrAmbiguous) {
			return true
		}
	}
	return false
}

// ErrNotIssued is returned where records cannot be given numbers, and none was
// issued.
var ErrNotIssued = fmt.Errorf("%w: no number was issued", ErrData)

// Issue gives every specimen of the house in the table a number, and writes the
// table with the numbers filled in; every other byte stays. write is called
// once, with the function that writes the table: it issues the numbers first, so
// that a file that cannot be made costs none, and they are safe on the disk
// before any is written. Whatever fails after that, the same table gets the same
// numbers again.
//
// Where the error is an ErrNotIssued the report names the records.
func (j *Job) Issue(ctx context.Context, t *Table, q IssueRequest, say func(label.Finding) error, write func(func(io.Writer) error) error) (IssueReport, error) {
	var rep IssueReport
	if !t.Only.All() {
		return rep, errors.New("numbers are issued for the whole table, for a record may have its like further down; leave --only out")
	}
	series, err := j.seriesOf(ctx, q.Register, q.Series)
	if err != nil {
		return rep, err
	}
	all, err := j.specimens(t, j.ownCode(series), say)
	if err != nil {
		return rep, err
	}
	rep.Records, rep.Series, rep.Others, rep.Next = len(all.rows), series.Name, all.count, NextNumber(series)
	if all.fatal {
		return rep, ErrNotIssued
	}
	all.share()
	w := &issuing{j: j, t: t, q: q, all: all, rep: &rep, series: series}
	if err := w.propose(ctx); err != nil {
		return rep, err
	}
	if rep.Count(NumberNone) > 0 && !q.ExceptBad {
		return rep, ErrNotIssued
	}
	// What keeps the table from being written is to be known before.
	if err := table.Rewrite(io.Discard, t.Table, w.edits()); err != nil {
		return rep, fmt.Errorf("%w; no number was issued", err)
	}
	if q.Try {
		return rep, nil
	}
	done := false
	err = write(func(out io.Writer) error {
		if err := w.assign(ctx); err != nil {
			return err
		}
		done = true
		return table.Rewrite(out, t.Table, w.edits())
	})
	if err != nil && done && rep.Issued.Last > 0 {
		err = fmt.Errorf("%w\n%s %s issued and safe in the register; run the command again, and the same records get the same numbers", err, rep.Issued, isAre(rep.Issued.Len()))
	}
	return rep, err
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// issuing is the work on one table.
type issuing struct {
	j      *Job
	t      *Table
	q      IssueRequest
	all    *specimenRows
	rep    *IssueReport
	series register.Series
	asked  []int // the records that the register is asked about
}

// ask asks the register about the specimens, each by its first record.
func (w *issuing) ask(ctx context.Context, with func(context.Context, []register.Specimen) ([]register.Assignment, error)) (map[int]register.Assignment, error) {
	list := make([]register.Specimen, len(w.asked))
	for k, i := range w.asked {
		list[k] = w.all.rows[i].Specimen
	}
	answers, err := with(ctx, list)
	byRow := make(map[int]register.Assignment, len(answers))
	for k, a := range answers {
		byRow[w.asked[k]] = a
	}
	return byRow, err
}

// propose finds out what would be issued.
func (w *issuing) propose(ctx context.Context) error {
	for i := range w.all.rows {
		if r := &w.all.rows[i]; r.share == i && !r.other && !r.bad {
			w.asked = append(w.asked, i)
		}
	}
	answers, err := w.ask(ctx, w.q.Register.Propose)
	if err != nil {
		return err
	}
	w.all.tellApart(answers)
	// Only those that can have a number are asked about again.
	asked := w.asked[:0]
	for _, i := range w.asked {
		r := &w.all.rows[i]
		if r.err == nil {
			r.err = answers[i].Err
		}
		if r.err == nil {
			asked = append(asked, i)
		}
	}
	if len(asked) < len(answers) {
		w.asked = asked
		if answers, err = w.ask(ctx, w.q.Register.Propose); err != nil {
			return err
		}
	}
	// A dry run says which numbers they would be, if nobody else comes before.
	next, most := w.series.Highest, w.series.Pattern.Max()
	for _, i := range w.asked {
		if a := answers[i]; a.Fresh {
			next++
			a.Number = w.series.Pattern.Format(min(next, most))
			answers[i] = a
		}
	}
	if next > most {
		return fmt.Errorf("series %s has %d numbers left and %d are wanted; open another series", w.series.Name, most-w.series.Highest, next-w.series.Highest)
	}
	w.fill(answers)
	return nil
}

// assign issues the numbers.
func (w *issuing) assign(ctx context.Context) error {
	answers, err := w.ask(ctx, func(ctx context.Context, list []register.Specimen) ([]register.Assignment, error) {
		return w.q.Register.Assign(ctx, w.q.At, w.series.Name, list, w.q.ExceptBad)
	})
	if err != nil {
		return err
	}
	w.fill(answers)
	all, err := w.q.Register.Series(ctx)
	for _, s := range all {
		if s.Name == w.series.Name {
			w.rep.Next = NextNumber(s)
		}
	}
	return err
}

// fill makes the report from the register's answers.
func (w *issuing) fill(answers map[int]register.Assignment) {
	rep := w.rep
	rep.Numbers, rep.Filled, rep.Issued = make([]Numbered, len(w.all.rows)), 0, NumberRange{}
	for i := range w.all.rows {
		r := &w.all.rows[i]
		one := &rep.Numbers[i]
		*one = Numbered{Origin: r.Origin, Key: r.key, Number: r.written, Status: NumberNone, Err: r.err}
		a, ok := answers[r.share]
		switch {
		case r.other:
			one.Status = OtherHouse
		case r.err != nil:
		case r.bad:
			one.Err = &rowError{ErrData, fmt.Sprintf("%s: %s: the record has errors; mend them first", r.Origin, r.key)}
		case !ok || a.Err != nil:
			if one.Err = a.Err; r.share != i {
				one.Err = fmt.Errorf("%s: %s: it is one specimen with line %d, which has no number", r.Origin, r.key, w.all.rows[r.share].Origin.Line)
			}
		case a.Foreign:
			one.Status = NumberForeign
		default:
			one.Number, one.State, one.Differs = a.Number, a.State, a.Differs
			switch {
			case a.Fresh:
				one.Status = NumberIssued
				w.span(a.Number)
			case r.written != "":
				one.Status = NumberThere
			default:
				one.Status = NumberKnown
			}
			if r.share != i {
				one.Differs = "" // said of its first record
			}
		}
		if one.Status == NumberIssued || one.Status == NumberKnown {
			rep.Filled++
		}
	}
}

// span makes the range of what was issued reach to a number.
func (w *issuing) span(number string) {
	n, err := w.series.Pattern.Parse(number)
	if err != nil {
		return
	}
	is := &w.rep.Issued
	if is.Last == 0 {
		*is = NumberRange{Series: w.series.Name, Pattern: w.series.Pattern, First: n, Last: n}
	}
	is.First, is.Last = min(is.First, n), max(is.Last, n)
}

// edits are the cells that are filled in.
func (w *issuing) edits() []table.Edit {
	var edits []table.Edit
	col := columnOf(w.t, "catalogNumber", &edits)
	for i, one := range w.rep.Numbers {
		if one.Status == NumberIssued || one.Status == NumberKnown {
			edits = append(edits, table.Edit{Row: w.all.rows[i].row(), Column: col, Text: one.Number})
		}
	}
	return edits
}

// columnOf returns the column of a term; a table that has none gets one at the
// end.
func columnOf(t *Table, term string, edits *[]table.Edit) int {
	if col := t.Index(term); col >= 0 {
		return col
	}
	col := t.Width()
	*edits = append(*edits, table.Edit{Row: 0, Column: col, Text: term})
	return col
}
