package job

import (
	"context"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/register"
	"cornerslip/layout"
)

// Memory says that a printing is to be kept in a register.
type Memory struct {
	Register *register.Register
	At       register.At
	// NewOnly leaves out the labels that were printed before.
	NewOnly bool
	// Unmounted prints changed labels anew: the user says that those printed
	// before were thrown away and never mounted.
	Unmounted bool
	// Again are the labels, by the register's numbers, that this printing stands
	// in for. At says why.
	Again []int
	// Anew prints labels although the record has changed.
	Anew bool
}

// A Changed is a record that was printed before in other words. Its labels stay
// as they are; what is to be done depends on what has changed.
type Changed struct {
	Ref   layout.Ref // of the first of its labels that was not printed
	When  time.Time  // it was printed last
	Terms []Difference
	// Slip is set where the name or its determination has changed: the sheet
	// gets a slip.
	Slip     bool
	Attached bool // the register knows it to be mounted
}

// A Difference is a cell that says something else than when it was printed.
type Difference struct {
	Term      string
	Then, Now string
}

// determination are the terms that a slip is for.
var determination = map[string]bool{
	"scientificName": true, "scientificNameAuthorship": true, "genus": true, "subgenus": true, "infragenericEpithet": true, "specificEpithet": true,
	"infraspecificEpithet": true, "taxonRank": true, "cultivarEpithet": true, "identificationQualifier": true, "identifiedBy": true, "dateIdentified": true,
	"identificationRemarks": true, "family": true, "typeStatus": true,
}

// mostUnissued is how many numbers that may not be printed are named one by one.
const mostUnissued = 20

// keeper holds the set labels of a run against the register, hands on those
// that are to be printed and keeps them. Without a register it hands on
// everything.
type keeper struct {
	q       *Request
	m       *Memory
	rep     *Report
	next    func(setRecord) error
	run     register.Run
	rec     *register.Recording // nil until there is something to keep
	pending []setRecord
	faults  []error // numbers that may not be printed
	more    int     // faults beyond those that are named
}

// keeps prepares to keep a run; next is handed what is to be printed. Nothing is
// written before the first labels are set.
func (j *Job) keeps(t *Table, q *Request, rep *Report, next func(setRecord) error) *keeper {
	k := &keeper{q: q, m: q.Memory, rep: rep, next: next}
	k.run = register.Run{Program: "cornerslip " + Version, House: j.houseText}
	if t != nil {
		k.run.Source = sourceName(t)
	}
	return k
}

// sourceName is how the register calls a table: by its whole path, so that it
// is found again from another folder.
func sourceName(t *Table) string {
	name := t.Source().Name()
	if _, err := os.Stat(name); err != nil {
		return name // standard input, or a file within an archive
	}
	if abs, err := filepath.Abs(name); err == nil {
		return abs
	}
	return name
}

// atOnce is how many records are looked up together.
const atOnce = 256

// take takes the labels of a record.
func (k *keeper) take(ctx context.Context, r setRecord) error {
	if k.m == nil {
		return k.next(r)
	}
	k.pending = append(k.pending, r)
	if len(k.pending) < atOnce {
		return nil
	}
	return k.flush(ctx)
}

// flush hands on what is waiting.
func (k *keeper) flush(ctx context.Context) error {
	if len(k.pending) == 0 {
		return nil
	}
	var err error
	if k.rec == nil {
		if k.rec, err = k.m.Register.Record(ctx, k.m.At, k.run); err != nil {
			return err
		}
	}
	specimens := make([]register.Specimen, len(k.pending))
	for i, r := range k.pending {
		specimens[i] = specimenOf(r.record)
		if r.record == nil {
			specimens[i].CatalogNumber = r.number
		}
	}
	known, err := k.m.Register.Known(ctx, specimens)
	if err != nil {
		return err
	}
	for i, r := range k.pending {
		switch {
		case known[i].Err == nil:
		case len(k.faults) < mostUnissued:
			k.faults = append(k.faults, known[i].Err)
			continue
		default:
			k.more++
			continue
		}
		if err := k.one(ctx, r, &known[i]); err != nil {
			return err
		}
	}
	k.pending = k.pending[:0]
	return nil
}

// specimenOf is a record as the register knows specimens. Tags of presses and
// bare numbers have no record.
func specimenOf(r *check.Record) register.Specimen {
	if r == nil {
		return register.Specimen{}
	}
	return register.Specimen{
		OccurrenceID: r.Text("occurrenceID"), CatalogNumber: r.Text("catalogNumber"), Collector: r.Collector, Number: r.Number,
		Date: r.Date.ISO(), Name: r.Name, Origin: r.Origin,
	}
}

// one decides which labels of a record are printed, keeps them and hands them
// on.
func (k *keeper) one(ctx context.Context, r setRecord, known *register.Known) error {
	own, digest := recordCells(r.record)
	var labels []SetLabel
	var encoded [][]byte
	var changed *Changed
	before, left := false, 0
	for i, l := range r.labels {
		cells, digest := own, digest
		if id := r.ids[l.Ref.Row]; id != nil {
			cells, digest = recordCells(id)
		}
		now, err := k.compare(ctx, l, specimenOf(r.record).OccurrenceID, r.encoded[i], digest, known)
		if err != nil {
			return err
		}
		switch {
		case now == nil: // not printed before
		case now.same && k.m.NewOnly:
			left++
			continue
		case now.same:
			before = true
		case k.m.Anew || k.m.Unmounted && known.State != register.Attached:
		default:
			if changed == nil {
				changed = &Changed{Ref: l.Ref, When: now.last.When, Terms: differences(now.last.Cells, cells), Attached: known.State == register.Attached}
				changed.Slip = slices.ContainsFunc(changed.Terms, func(d Difference) bool { return determination[d.Term] })
			}
			continue
		}
		if err := k.rec.Add(ctx, labelOf(l, r, r.encoded[i], cells, digest)); err != nil {
			return err
		}
		labels, encoded = append(labels, l), append(encoded, r.encoded[i])
	}
	if changed != nil {
		k.rep.Changed = append(k.rep.Changed, *changed)
	}
	if before {
		k.rep.Again++
	}
	if left > 0 {
		k.rep.PrintedBefore++
	}
	held := len(r.labels) > 0 && len(labels) == 0
	r.labels, r.encoded = labels, encoded
	if held { // it has labels, only not now
		k.rep.Held++
		return nil
	}
	return k.next(r)
}

// earlier is a label that was printed before.
type earlier struct {
	last register.Kept
	same bool // in the same words
}

// compare returns the label of the same part that was printed before, nil if
// there is none.
func (k *keeper) compare(ctx context.Context, l SetLabel, id string, encoded, digest []byte, known *register.Known) (*earlier, error) {
	var last *register.Kept
	for i := range known.Earlier {
		e := &known.Earlier[i]
		if string(e.Kind) != l.Ref.Kind || e.Part != l.Ref.Part || e.For != l.Ref.For || e.Label.Label != l.Ref.Label {
			continue
		}
		if last = e; slices.Equal(e.Record, digest) {
			return &earlier{*e, true}, nil
		}
	}
	// Another slip is another determination.
	if last == nil || known.Loose || l.Ref.Kind == string(label.Slip) {
		return nil, nil
	}
	// Columns that the label does not show may have changed.
	kept, err := k.m.Register.Load(ctx, last.ID)
	if err != nil {
		return nil, err
	}
	if !sameIdentifier(kept.Cells, id) {
		return nil, nil // another specimen of the gathering
	}
	then, err := layout.Decode(kept.Box)
	if err != nil {
		return nil, fmt.Errorf("%s, printed on %s: %w", kept.Label, kept.When.Format(time.DateOnly), err)
	}
	now, err := layout.Decode(encoded)
	if err != nil {
		return nil, err
	}
	return &earlier{kept, slices.Equal(wordsOn(then), wordsOn(now))}, nil
}

// sameIdentifier reports whether a record that was printed and one with the
// occurrenceID given may be the same.
func sameIdentifier(cells []byte, id string) bool {
	then := cell(cells, "occurrenceID")
	return id == "" || then == "" || then == id
}

// cell returns what a record said under a term when it was printed.
func cell(cells []byte, term string) string {
	var all map[string]string
	if json.Unmarshal(cells, &all) != nil {
		return ""
	}
	return all[term]
}

// wordsOn returns what a box says, whatever the faces, sizes and lines.
func wordsOn(b *layout.Box) []rune {
	var all []rune
	for _, m := range b.Marks {
		switch m := m.(type) {
		case layout.Text:
			s := m.Actual
			if s == "" {
				s = m.S
			}
			for _, r := range s {
				if r > ' ' && r != '\u00a0' && r != '\u00ad' {
					all = append(all, r)
				}
			}
		case layout.Bars:
			all = append(all, []rune(m.S)...)
		}
	}
	return all
}

// labelOf is a set label as the register keeps it.
func labelOf(l SetLabel, r setRecord, box, cells, digest []byte) register.Label {
	k := register.Label{
		Kind: label.Kind(l.Ref.Kind), Part: l.Ref.Part, For: l.Ref.For, Label: l.Ref.Label, Of: l.Ref.Of,
		CatalogNumber: r.number, Record: digest, Cells: cells, Box: box,
	}
	if r.record != nil {
		k.Collector, k.Number, k.Name, k.Date = r.record.Text("recordedBy"), r.record.Number, r.record.Name, r.record.Date.ISO()
		if id := r.ids[l.Ref.Row]; id != nil {
			k.Name = id.Name
		}
		if k.For == "" { // a duplicate never bears our number
			k.CatalogNumber = r.record.Text("catalogNumber")
		}
	}
	return k
}

// recordCells encodes what a record says, by term, and its digest.
func recordCells(r *check.Record) (cells, digest []byte) {
	all := map[string]string{}
	if r != nil {
		r.Terms(func(term string, f check.Field) bool {
			if f.Text != "" {
				all[term] = f.Text
			}
			return true
		})
	}
	cells, err := json.Marshal(all)
	if err != nil {
		panic(err) // strings alone
	}
	sum := sha256.Sum256(cells)
	return cells, sum[:]
}

// differences returns the terms in which two records differ, sorted.
func differences(then, now []byte) []Difference {
	var a, b map[string]string
	if json.Unmarshal(then, &a) != nil || json.Unmarshal(now, &b) != nil {
		return nil
	}
	var all []Difference
	for term, text := range a {
		if b[term] != text {
			all = append(all, Difference{term, text, b[term]})
		}
	}
	for term, text := range b {
		if _, ok := a[term]; !ok {
			all = append(all, Difference{term, "", text})
		}
	}
	slices.SortFunc(all, func(x, y Difference) int { return strings.Compare(x.Term, y.Term) })
	return all
}

// set is called when all labels are set, before any is drawn. It reports every
// number that may not be printed.
func (k *keeper) set(ctx context.Context) error {
	if k.m == nil {
		return nil
	}
	if err := k.flush(ctx); err != nil {
		return err
	}
	if k.more > 0 {
		k.faults = append(k.faults, fmt.Errorf("and %d more", k.more))
	}
	k.rep.Refused = k.faults
	if len(k.faults) > 0 && !k.q.ExceptBad {
		return ErrNumbers
	}
	return nil
}

// ErrNumbers is returned where numbers may not be printed; Report.Refused says
// which. Nothing was written.
var ErrNumbers = errors.New("these numbers may not be printed; nothing was written")

// before returns write, with the labels counted as printed once the pages are
// drawn and before the file gets its name.
func (k *keeper) before(ctx context.Context, write func(func(io.Writer) error) error) func(func(io.Writer) error) error {
	if k.rec == nil {
		return write
	}
	return func(pages func(io.Writer) error) error {
		return write(func(w io.Writer) error {
			if err := pages(w); err != nil {
				return err
			}
			if _, err := k.rec.Finish(ctx); err != nil {
				return err
			}
			return k.m.note(ctx)
		})
	}
}

// end forgets what was not drawn.
func (k *keeper) end(ctx context.Context) {
	if k.rec != nil {
		k.rec.Abandon(ctx) // what stays of it is never found
	}
}
