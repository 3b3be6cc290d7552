package job

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
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

// What became of a record.
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
	Err     error
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

// issueScope is what says which specimen a record is of. A wrong latitude is no
// reason to withhold a number; a wrong collector's number is.
var issueScope = &scope{
	terms: map[string]bool{
		"catalogNumber": true, "occurrenceID": true, "institutionCode": true, "ownerInstitutionCode": true, "recordedBy": true, "coCollectors": true,
		"recordNumber": true, "eventDate": true, "year": true, "month": true, "day": true, "verbatimEventDate": true, "preparations": true,
		"materialEntityID": true, "materialSampleID": true,
	},
	not: []string{"collector-missing", "number-missing", "date-missing", "catalogue-number-letters"},
}

// specimenRow is a record that may be given a number.
type specimenRow struct {
	register.Specimen
	key      string
	part     string // "sheet 1 of 2", where it is a part of a specimen
	entity   string // materialEntityID
	written  string // catalogNumber as the table has it
	identity string // occurrenceID as the table has it
	other    bool   // another house's
	bad      bool   // what says who it is has an error
	share    int    // index of the first record of the same specimen; its own index if alone
	err      error
}

// row counts the table's records from 1.
func (r *specimenRow) row() int { return r.Origin.Row }

// fail keeps the first reason why a record gets no number.
func (r *specimenRow) fail(kind error, format string, args ...any) {
	if r.err == nil {
		r.err = &rowError{kind, fmt.Sprintf("%s: %s: %s", r.Origin, r.key, fmt.Sprintf(format, args...))}
	}
}

// A rowError is why a record gets no number, of one of the register's kinds.
type rowError struct {
	kind error
	text string
}

func (e *rowError) Error() string { return e.text }
func (e *rowError) Unwrap() error { return e.kind }

// specimenRows are all records of a table, in order.
type specimenRows struct {
	rows   []specimenRow
	byRow  map[int]int // row of the table to index
	fatal  bool        // the table itself has an error
	others rowSet      // rows with errors that do not matter here
	count  int         // of them
}

// specimens reads the table for numbers; say hears of what makes it doubtful
// which specimen a record is of. own is the code by which institutionCode means
// this house.
func (j *Job) specimens(t *Table, own string, say func(label.Finding) error) (*specimenRows, error) {
	all := &specimenRows{byRow: map[int]int{}}
	pass := func(r *check.Record) {
		if r.Empty() {
			return
		}
		s := specimenRow{Specimen: specimenOf(r), key: r.Key(), part: r.PartOfMore(), other: otherHouse(r, own)}
		if s.entity = r.Text("materialEntityID"); s.entity == "" {
			s.entity = r.Text("materialSampleID")
		}
		s.written, s.identity, s.share = s.CatalogNumber, s.OccurrenceID, len(all.rows)
		all.byRow[r.Row] = len(all.rows)
		all.rows = append(all.rows, s)
	}
	_, err := j.checkTold(t, nil, pass, func(f label.Finding, _ *check.Record) error {
		i, ok := all.byRow[f.Row]
		switch {
		case ok && all.rows[i].other:
			return nil
		case issueScope.concerns(f):
			if f.Severity == label.Error && ok {
				all.rows[i].bad = true
			} else if f.Severity == label.Error {
				all.fatal = true
			}
			return say(f)
		case f.Severity == label.Error && ok && !all.others.has(f.Row):
			all.others.add(f.Row)
			all.count++
		}
		return nil
	})
	return all, err
}

// otherHouse reports whether a record says that another house keeps or owns the
// specimen.
func otherHouse(r *check.Record, own string) bool {
	for _, term := range []string{"institutionCode", "ownerInstitutionCode"} {
		if code := r.Text(term); code != "" && own != "" && !strings.EqualFold(code, own) {
			return true
		}
	}
	return false
}

// ownCode is the code by which records name this house; a house that has not
// said it is known by its series.
func (j *Job) ownCode(s register.Series) string {
	if code := j.House.Herbarium.Code; code != "" {
		return code
	}
	return s.Pattern.Code
}

// share finds the records that the table declares to be one specimen: they have
// the same materialEntityID, or say which of how many parts of one gathering
// they hold, each another. They take each other's number and identifier.
func (all *specimenRows) share() {
	groups := map[string][]int{}
	var order []string
	for i := range all.rows {
		r := &all.rows[i]
		key := ""
		switch gathering := r.Gathering(); {
		case r.other || r.bad:
		case r.entity != "":
			key = "entity\x00" + r.entity
		case r.part != "" && gathering != "":
			key = "gathering\x00" + gathering
		}
		if key == "" {
			continue
		}
		if groups[key] == nil {
			order = append(order, key)
		}
		groups[key] = append(groups[key], i)
	}
	for _, key := range order {
		if group := groups[key]; len(group) > 1 && all.oneSpecimen(group) {
			all.join(group)
		}
	}
}

// oneSpecimen reports whether records that say so can be one specimen. Where
// they contradict each other they are left as they are, or get the reason why
// no number can be given.
func (all *specimenRows) oneSpecimen(group []int) bool {
	first := &all.rows[group[0]]
	parts := map[string]bool{}
	for _, i := range group {
		r := &all.rows[i]
		if r.Gathering() != first.Gathering() || r.Date != "" && first.Date != "" && r.Date != first.Date {
			if r.entity != "" {
				r.fail(register.ErrClash, "it has the materialEntityID of %s, row %d, and is of another gathering; one of the two is wrong", first.key, first.row())
			}
			return false
		}
		if r.entity == "" {
			// Two records of the same sheet are two specimens, or a slip.
			_, of, _ := strings.Cut(r.part, " of ")
			_, firstOf, _ := strings.Cut(first.part, " of ")
			if parts[r.part] || of != firstOf {
				return false
			}
			parts[r.part] = true
		}
	}
	return true
}

// join makes a group of records one specimen.
func (all *specimenRows) join(group []int) {
	number, identity := -1, -1
	for _, i := range group {
		r := &all.rows[i]
		r.share, r.Shared = group[0], true
		if r.CatalogNumber != "" {
			if number >= 0 && all.rows[number].CatalogNumber != r.CatalogNumber {
				r.fail(register.ErrClash, "by the table it is one specimen with row %d, and the two have different numbers, %s and %s", all.rows[number].row(), all.rows[number].CatalogNumber, r.CatalogNumber)
			} else if number < 0 {
				number = i
			}
		}
		if r.OccurrenceID != "" {
			if identity >= 0 && all.rows[identity].OccurrenceID != r.OccurrenceID {
				r.fail(register.ErrClash, "by the table it is one specimen with row %d, and the two have different occurrenceIDs", all.rows[identity].row())
			} else if identity < 0 {
				identity = i
			}
		}
	}
	for _, i := range group {
		r := &all.rows[i]
		if number >= 0 && r.CatalogNumber == "" {
			r.CatalogNumber = all.rows[number].CatalogNumber
		}
		if identity >= 0 && r.OccurrenceID == "" {
			r.OccurrenceID = all.rows[identity].OccurrenceID
		}
	}
}

// tellApart finds the records that nothing tells from others of their
// gathering: the register would take the first for the specimen it knows and
// complain of the others only, but any of them may be that specimen.
func (all *specimenRows) tellApart(answers map[int]register.Assignment) {
	byGathering := map[string][]int{}
	for i := range all.rows {
		if key := all.rows[i].Gathering(); key != "" && !all.rows[i].other && !answers[i].Foreign {
			byGathering[key] = append(byGathering[key], i)
		}
	}
	for i := range all.rows {
		if key := all.rows[i].Gathering(); key != "" && len(byGathering[key]) > 1 {
			all.among(byGathering[key])
			delete(byGathering, key)
		}
	}
}

// among looks at the records of one gathering.
func (all *specimenRows) among(group []int) {
	nameless := -1 // the first without number and identifier
	for _, i := range group {
		if r := &all.rows[i]; r.CatalogNumber == "" && r.OccurrenceID == "" {
			nameless = i
			break
		}
	}
	if nameless < 0 {
		return
	}
	for _, i := range group {
		r := &all.rows[i]
		if r.CatalogNumber != "" || r.bad {
			continue
		}
		for _, k := range group {
			other := &all.rows[k]
			if k == i || other.share == r.share {
				continue
			}
			if r.OccurrenceID != "" && (other.OccurrenceID != "" || other.CatalogNumber != "") {
				continue
			}
			switch {
			case r.OccurrenceID != "":
				r.fail(register.ErrAmbiguous, "row %d is of the same gathering and has no identifier; give it an occurrenceID first, for the two could be taken for each other", other.row())
			case other.bad:
				r.fail(register.ErrAmbiguous, "nothing tells it from row %d, which has an error; mend that row first, or give this one an occurrenceID", other.row())
			default:
				r.fail(register.ErrAmbiguous, "nothing tells it from row %d; give each an occurrenceID, or, if they are parts of one specimen, say in preparations which: sheet 1 of 2", other.row())
			}
			break
		}
	}
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

// specimensAsked returns what the register is told.
func (w *issuing) specimensAsked() []register.Specimen {
	list := make([]register.Specimen, len(w.asked))
	for k, i := range w.asked {
		list[k] = w.all.rows[i].Specimen
	}
	return list
}

// propose finds out what would be issued.
func (w *issuing) propose(ctx context.Context) error {
	for i := range w.all.rows {
		if r := &w.all.rows[i]; !r.other && !r.bad {
			w.asked = append(w.asked, i)
		}
	}
	answers, err := w.q.Register.Propose(ctx, w.specimensAsked())
	if err != nil {
		return err
	}
	byIndex := map[int]register.Assignment{}
	for k, i := range w.asked {
		byIndex[i] = answers[k]
	}
	w.all.tellApart(byIndex)
	// Only those that can have a number are asked about again.
	asked := w.asked[:0]
	for _, i := range w.asked {
		r := &w.all.rows[i]
		if r.err == nil {
			r.err = byIndex[i].Err
		}
		if r.err == nil {
			asked = append(asked, i)
		}
	}
	w.asked = asked
	if answers, err = w.q.Register.Propose(ctx, w.specimensAsked()); err != nil {
		return err
	}
	// A dry run says which numbers they would be, if nobody else comes before.
	next := w.series.Highest
	given := map[string]string{} // by what makes records one specimen
	for k, i := range w.asked {
		if !answers[k].Fresh {
			continue
		}
		r := &w.all.rows[i]
		specimen := fmt.Sprint(r.share)
		if r.OccurrenceID != "" {
			specimen = "id " + r.OccurrenceID
		}
		if given[specimen] == "" {
			next++
			given[specimen] = w.series.Pattern.Format(min(next, w.series.Pattern.Max()))
		}
		answers[k].Number = given[specimen]
	}
	if next > w.series.Pattern.Max() {
		return fmt.Errorf("series %s has %d numbers left and %d are wanted; open another series", w.series.Name, w.series.Pattern.Max()-w.series.Highest, next-w.series.Highest)
	}
	w.fill(answers)
	return nil
}

// assign issues the numbers.
func (w *issuing) assign(ctx context.Context) error {
	answers, err := w.q.Register.Assign(ctx, w.q.At, w.series.Name, w.specimensAsked(), w.q.ExceptBad)
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
func (w *issuing) fill(answers []register.Assignment) {
	rep := w.rep
	rep.Numbers, rep.Filled, rep.Issued = make([]Numbered, len(w.all.rows)), 0, NumberRange{}
	for i := range w.all.rows {
		r := &w.all.rows[i]
		one := Numbered{Origin: r.Origin, Key: r.key, Number: r.written, Status: NumberNone, Err: r.err}
		if r.other {
			one.Status = OtherHouse
		} else if r.bad && r.err == nil {
			one.Err = fmt.Errorf("%s: %s: the record has errors; mend them first", r.Origin, r.key)
		}
		rep.Numbers[i] = one
	}
	for k, i := range w.asked {
		a, r := answers[k], &w.all.rows[i]
		one := &rep.Numbers[i]
		one.Number, one.State, one.Differs, one.Err = a.Number, a.State, a.Differs, a.Err
		switch {
		case a.Err != nil:
		case a.Foreign:
			one.Status, one.Number = NumberForeign, r.written
		case a.Fresh:
			one.Status = NumberIssued
			w.span(a.Number)
		case r.written != "":
			one.Status = NumberThere
		default:
			one.Status = NumberKnown
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
	col := len(t.Columns())
	*edits = append(*edits, table.Edit{Row: 0, Column: col, Text: term})
	return col
}
