package job

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/register"
)

// Since says what became of a printed label's record.
type Since struct {
	Row   int          // of the record in the table; 0 if it is not there
	Terms []Difference // in which it differs from what was printed
	// Slip is set where the determination has changed.
	Slip bool
}

// Since looks for the record of a printed label in a table and holds it against
// what was printed.
func (j *Job) Since(t *Table, k *register.Kept) (Since, error) {
	found := errors.New("found")
	var s Since
	err := j.scan(t, check.New(j.readOptions()), func(r rowResult) error {
		if r.record.Empty() {
			return nil
		}
		if !isRecord(k, specimenOf(r.record)) {
			return nil
		}
		cells, digest := recordCells(r.record)
		if bytes.Equal(digest, k.Record) {
			s = Since{Row: r.record.Row}
			return found
		}
		if s.Row == 0 { // another row may be the same still
			s = Since{Row: r.record.Row, Terms: differences(k.Cells, cells)}
		}
		return nil
	})
	if err != nil && err != found {
		return s, err
	}
	for _, d := range s.Terms {
		s.Slip = s.Slip || determination[d.Term]
	}
	return s, nil
}

// isRecord reports whether a label was printed from the record of a specimen.
func isRecord(k *register.Kept, sp register.Specimen) bool {
	if id := cell(k.Cells, "occurrenceID"); id != "" && sp.OccurrenceID != "" {
		return id == sp.OccurrenceID
	}
	// A duplicate's label does not bear our number, its record has it.
	if number := cell(k.Cells, "catalogNumber"); number != "" && sp.CatalogNumber != "" {
		return number == sp.CatalogNumber
	}
	return k.Shows(sp)
}

// PrintChanged prints a label of a record that has changed since it was
// printed, as the record is now. Nothing else of the table is printed. The
// printed label's determination must be the same, unless the request's Memory
// says that no label was mounted.
func (j *Job) PrintChanged(t *Table, q Request, p *Printed, row int, say func(label.Finding) error, write func(func(io.Writer) error) error) (Summary, Report, error) {
	k := p.Last()
	only, err := Select([]string{fmt.Sprintf("row %d", row)})
	if err != nil {
		return Summary{}, Report{}, err
	}
	one := *t
	one.Only = only
	q.Kind = k.Kind
	if q.Kind == label.Container {
		q.Kind = label.Sheet
	}
	q.just = func(c *label.Content) bool { return c.Kind == k.Kind && c.Part == k.Part && c.For == k.For }
	return j.Print(&one, q, say, write)
}
