package job

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/accession"
	"cornerslip/label/check"
	"cornerslip/label/register"
	"cornerslip/label/table"
)

// An ImportRequest says how the numbers of an old catalogue are taken over.
type ImportRequest struct {
	Register *register.Register
	At       register.At
	Series   string // "" finds it by the number
	Highest  string // the highest number there can be, in full or in figures
}

// An ImportClash is an entry that was not taken over.
type ImportClash struct {
	Old         register.Old
	Disposition string // as written
	Err         error
}

// An ImportReport counts what was done.
type ImportReport struct {
	register.ImportCount     // Clashes are those of the table too
	Without              int // records without a number, passed over
	Undated              int // entries whose date cannot be read; taken over without it
	Moved                []RegisterSeries
}

// dispositions are the words for what became of a specimen: those that the list
// of Darwin Core terms gives for disposition, the register's own and common ones
// beside them (common practice, no source). A word that is not here is never
// guessed at.
var dispositions = map[string]register.State{
	"": register.Attached, "in collection": register.Attached, "duplicates elsewhere": register.Attached, "present": register.Attached, "on loan": register.Attached,
	"missing": register.Lost, "not found": register.Lost,
	"voucher elsewhere": register.HeldElsewhere, "held-elsewhere": register.HeldElsewhere,
	"destroyed": register.Deaccessioned, "discarded": register.Deaccessioned, "used up": register.Deaccessioned,
	"donated": register.Transferred, "exchanged": register.Transferred, "given away": register.Transferred,
	"cancelled": register.Void, "not used": register.Void, "spoiled": register.Void,
}

// Dispositions returns the words that an import understands, by state.
func Dispositions() map[RegisterState][]string {
	words := map[RegisterState][]string{}
	for word, s := range dispositions {
		if word != "" && word != "held-elsewhere" {
			words[s] = append(words[s], word)
		}
	}
	for s := range words {
		slices.Sort(words[s])
	}
	return words
}

// disposition reads what became of a specimen.
func disposition(text string) (register.State, error) {
	word := strings.ToLower(strings.Join(strings.Fields(text), " "))
	if s, ok := dispositions[word]; ok {
		return s, nil
	}
	if s := register.State(word); slices.Contains(register.States(), s) && s != register.Unknown {
		return s, nil
	}
	var known []string
	for w := range dispositions {
		if w != "" && w != "held-elsewhere" {
			known = append(known, w)
		}
	}
	slices.Sort(known)
	states := slices.DeleteFunc(register.States(), func(s register.State) bool { return s == register.Unknown })
	return "", fmt.Errorf("disposition %q is no word for what became of a number; write %s or %s", text, joinedStates(states), strings.Join(known, ", "))
}

// errEnough ends a reading that nobody wants more of.
var errEnough = errors.New("enough")

// Import takes over the numbers of a table. What cannot be taken over is handed
// to clash with the reason, and the others go on. The table is read twice: first
// for numbers so high that they must be slips, then to take them over.
func (j *Job) Import(ctx context.Context, t *Table, q ImportRequest, clash func(ImportClash) error) (ImportReport, error) {
	var rep ImportReport
	before, err := q.Register.Series(ctx)
	if err != nil {
		return rep, err
	}
	if len(before) == 0 {
		_, err := j.SeriesName(ctx, q.Register, q.Series)
		return rep, err
	}
	for _, f := range t.Findings() {
		if f.Severity == label.Error {
			return rep, errors.New(f.String())
		}
	}
	if t.Index("catalogNumber") < 0 {
		return rep, fmt.Errorf("%s has no column for the numbers; give it the heading catalogNumber", t.Source().Name())
	}
	o := register.ImportOptions{Series: q.Series}
	if q.Highest == "" {
		if err := j.leaps(t, before); err != nil {
			return rep, err
		}
	} else {
		s, err := j.seriesMeant(ctx, q, before)
		if err != nil {
			return rep, err
		}
		if o.Highest, err = numberOf(s.Pattern, q.Highest); err != nil {
			return rep, fmt.Errorf("--highest: %w", err)
		}
		o.Series = s.Name // of another series the limit means nothing
	}
	ours := 0
	refuse := func(c ImportClash) error {
		ours++
		return clash(c)
	}
	rep.ImportCount, err = q.Register.Import(ctx, q.At, o, j.entries(t, &rep, refuse), func(c register.Clash) error {
		return clash(ImportClash{Old: c.Old, Disposition: string(c.Old.State), Err: c.Err})
	})
	rep.Clashes += ours
	if err != nil {
		return rep, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return rep, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	after, err := q.Register.Series(ctx)
	for i, s := range after {
		if i < len(before) && s.Highest != before[i].Highest {
			rep.Moved = append(rep.Moved, s)
		}
	}
	return rep, err
}

// seriesMeant is the series that a highest number is of.
func (j *Job) seriesMeant(ctx context.Context, q ImportRequest, all []register.Series) (register.Series, error) {
	if q.Series == "" {
		if one, err := q.Register.Range(ctx, q.Highest, ""); err == nil {
			return register.Series{Name: one.Series, Pattern: one.Pattern}, nil
		}
	}
	return j.seriesOf(ctx, q.Register, q.Series)
}

// entries yields the entries of a table; those that cannot be read go to refuse.
func (j *Job) entries(t *Table, rep *ImportReport, refuse func(ImportClash) error) iter.Seq2[register.Old, error] {
	return func(yield func(register.Old, error) bool) {
		err := j.scan(t, check.New(j.readOptions()), func(r rowResult) error {
			if !r.chosen {
				return nil
			}
			old := register.Old{Specimen: specimenOf(r.record)}
			word := r.record.Text("disposition")
			for _, f := range r.findings {
				if f.Severity == label.Error && misread(f) {
					return refuse(ImportClash{old, word, errors.New(f.String())})
				}
			}
			if old.CatalogNumber == "" {
				rep.Without++
				return nil
			}
			var err error
			if old.State, err = disposition(word); err != nil {
				at := r.record.Field("disposition").Origin
				return refuse(ImportClash{old, word, fmt.Errorf("%s: %s: %w", at, old.CatalogNumber, err)})
			}
			if r.record.Date.IsZero() && r.record.Text("eventDate")+r.record.Text("verbatimEventDate") != "" {
				rep.Undated++
			}
			if !yield(old, nil) {
				return errEnough
			}
			return nil
		})
		if err != nil && !errors.Is(err, errEnough) {
			yield(register.Old{}, err)
		}
	}
}

// misread reports whether a finding is of the reading of the table itself, and
// makes doubtful what an entry says: cells of a row that has too few, damaged
// text. An old catalogue need not be fit to print.
func misread(f label.Finding) bool {
	return (issueScope.terms[f.Term] || f.Term == "" || f.Term == "scientificName" || f.Term == "disposition") &&
		slices.ContainsFunc(table.Rules(), func(r table.Rule) bool { return r.Name == f.Rule })
}

// A highNumber is a number of the table that may be a slip.
type highNumber struct {
	n      int
	origin label.Origin
	text   string
}

// leastLeap is how many numbers a catalogue may leave out at least.
const leastLeap = 1000

// leaps looks for a number that leaves out more numbers before it than the
// table has, and more than a thousand: a figure too many in one entry would let
// the series go on from there, and what was passed over is never issued.
func (j *Job) leaps(t *Table, series []register.Series) error {
	high := make([][]highNumber, len(series)) // above what the register has
	count := 0
	err := j.scan(t, check.New(j.readOptions()), func(r rowResult) error {
		f := r.record.Field("catalogNumber")
		if !r.chosen || f.Text == "" {
			return nil
		}
		count++
		for i, s := range series {
			n, err := s.Pattern.Parse(f.Text)
			if (err == nil || errors.Is(err, accession.ErrNoCheck)) && n > s.Highest {
				high[i] = append(high[i], highNumber{n, f.Origin, strings.Clone(f.Text)})
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	most := max(count, leastLeap)
	for i, s := range series {
		slices.SortFunc(high[i], func(a, b highNumber) int { return a.n - b.n })
		last := s.Highest
		for k, h := range high[i] {
			// The first may begin anywhere where the register knows of no number.
			if h.n-last-1 > most && (k > 0 || s.Highest > 0) {
				return fmt.Errorf("%s: %s leaves out %d numbers after %s, which would never be issued: if it is right, say --highest %s; nothing was imported",
					h.origin, h.text, h.n-last-1, s.Pattern.Format(last), s.Pattern.Format(high[i][len(high[i])-1].n))
			}
			last = h.n
		}
	}
	return nil
}
