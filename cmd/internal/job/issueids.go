package job

import (
	"errors"
	"fmt"
	"io"

	"github.com/google/uuid"

	"cornerslip/label"
	"cornerslip/label/table"
)

// An IdentifierRequest says how records are given identifiers.
type IdentifierRequest struct {
	// New makes an identifier; nil makes a random UUID.
	//
	// One that is worked out from the record or the file would be the same for
	// two sheets that nothing tells apart, or for two tables made from one
	// template: just what the identifier is for.
	New func() (string, error)
}

// NewIdentifier returns an occurrenceID that no other record has: a random UUID
// after RFC 9562, version 4, as a URN.
func NewIdentifier() (string, error) {
	id, err := uuid.NewRandom()
	if err != nil {
		return "", fmt.Errorf("no identifier could be made: %w", err)
	}
	return id.URN(), nil
}

// An IdentifierReport counts what was written.
type IdentifierReport struct {
	Records int
	Written int // records that have an identifier now
	Had     int // records that had an identifier or a number
	Others  int // records of other houses
	Bad     int // records with an error that makes it doubtful whose they are
}

// WriteIdentifiers writes the table with an occurrenceID for every specimen of
// the house that has neither one nor a catalogue number; every other byte stays.
// Records that the table declares to be one specimen get one between them.
//
// It issues no numbers. A number is remembered with the identifier of its
// specimen, so the identifier must stand in a file before: were both done at once
// and the file then not written, the next run would make other identifiers and
// give the same specimens further numbers.
//
// say hears of what makes it doubtful which specimen a record is of; such records
// get no identifier.
func (j *Job) WriteIdentifiers(t *Table, q IdentifierRequest, say func(label.Finding) error, write func(func(io.Writer) error) error) (IdentifierReport, error) {
	var rep IdentifierReport
	if !t.Only.All() {
		return rep, errors.New("identifiers are written for the whole table; leave --only out")
	}
	if q.New == nil {
		q.New = NewIdentifier
	}
	own := j.House.Herbarium.Code
	if p, err := j.NumberPattern(""); err == nil && own == "" {
		own = p.Code
	}
	all, err := j.specimens(t, own, say)
	if err != nil {
		return rep, err
	}
	all.share()
	var edits []table.Edit
	rep.Records = len(all.rows)
	col := columnOf(t, "occurrenceID", &edits)
	bySpecimen := map[int]string{}
	for i := range all.rows {
		r := &all.rows[i]
		switch {
		case r.other:
			rep.Others++
			continue
		case r.bad || r.err != nil:
			rep.Bad++
			continue
		case r.identity != "" || r.OccurrenceID == "" && r.CatalogNumber != "":
			rep.Had++
			continue
		}
		id := r.OccurrenceID // that of another part of the specimen
		if id == "" {
			id = bySpecimen[r.share]
		}
		if id == "" {
			if id, err = q.New(); err != nil {
				return rep, err
			}
			bySpecimen[r.share] = id
		}
		edits = append(edits, table.Edit{Row: r.row(), Column: col, Text: id})
		rep.Written++
	}
	if rep.Written == 0 {
		edits = nil // no column for nothing
	}
	return rep, write(func(out io.Writer) error { return table.Rewrite(out, t.Table, edits) })
}
