package register

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"cornerslip/label"
)

// A Specimen is what the register is told of a specimen, in the words of its
// record.
type Specimen struct {
	OccurrenceID  string
	CatalogNumber string
	Collector     string // the first of recordedBy
	Number        string // recordNumber
	Part          string // tells specimens of one gathering apart; mostly ""
	Date          string // when collected, in ISO form, "" if not known
	Name          string // scientificName; for people, never compared
	// Shared says that the table declares this row to be one specimen with
	// the other Shared rows of the same gathering: they take one number.
	Shared bool
	Origin label.Origin // the row, for messages
}

// String names the specimen as people do: "I. Almeida 214".
func (s Specimen) String() string {
	who, number := s.Collector, s.Number
	if who == "" {
		who = "s.coll."
	}
	if number == "" {
		number = "s.n."
	}
	if s.Part != "" {
		number += " (" + s.Part + ")"
	}
	return who + " " + number
}

// at says where the specimen stands and which it is.
func (s Specimen) at() string {
	if s.Origin == (label.Origin{}) {
		return s.String()
	}
	return s.Origin.String() + ": " + s.String()
}

// An Assignment is the answer for one specimen.
type Assignment struct {
	// Number is its catalogue number in full. Of a Foreign number, the text
	// as it was given.
	Number  string
	State   State
	Fresh   bool // issued by this call
	Foreign bool // not of any series of the register: left alone
	// Differs says that the register has the number for a specimen of other
	// words than the record: a corrected name, or a number in the wrong row.
	Differs string
	// Err says why the specimen has no number: ErrNeedsIdentifier,
	// ErrAmbiguous, ErrClash, ErrVoid, ErrNotIssued or a number that cannot
	// be read.
	Err error
}

// Assign gives each specimen that has no number the next of the series ("" is
// the only one), in one transaction that is on the disk when Assign returns.
// A specimen that the register knows has its number again: known by its
// catalogue number, else by its occurrenceID, else by collector, number and
// part. So Assign can be run any number of times. A specimen whose number was
// made void gets a new one.
//
// Without an identifier nothing is guessed: a specimen without a collector or
// number, one that several numbers fit, one whose date differs from the known
// one's and rows that nothing tells apart get an error that asks for an
// occurrenceID. If any specimen has an error no number is issued, and the
// errors are returned together, unless exceptBad issues the others'.
func (r *Register) Assign(ctx context.Context, at At, series string, specimens []Specimen, exceptBad bool) ([]Assignment, error) {
	var answers []Assignment
	err := r.write(ctx, at, func(c *change) error {
		s, err := c.seriesNamed(series)
		if err != nil {
			return err
		}
		m, err := c.newMatcher(specimens)
		if err != nil {
			return err
		}
		m.match()
		answers = m.answers
		if bad := m.errors(); bad != nil && !exceptBad {
			return bad
		}
		return c.settle(m, s)
	})
	if err != nil {
		for i := range answers {
			if answers[i].Fresh {
				answers[i] = Assignment{}
			}
		}
	}
	return answers, err
}

// ref is a number of a series.
type ref struct {
	series int64
	n      int
}

// A holder is a specimen with a number, or one that is about to get one.
type holder struct {
	ref                          // n is 0 until it is issued
	state      State             //
	occurrence map[string]bool   // keys of its occurrenceIDs
	gathering  map[string]string // keys of collector, number and part, each with a date
	known      Specimen          // as the register has it
	described  bool              // known is filled
	rows       []int             // of this call
}

// fresh reports whether the holder gets its number in this call.
func (h *holder) fresh() bool { return h.n == 0 }

// learned is an identity that goes into the register.
type learned struct {
	h               *holder
	kind, key, date string
}

// matcher finds the number of each specimen.
type matcher struct {
	all       []Series
	specimens []Specimen
	answers   []Assignment
	holders   map[ref]*holder
	byID      map[string]*holder
	byKey     map[string][]*holder
	of        []*holder // of each specimen, nil if none
	news      []*holder // in the order of the specimens
	learned   []learned
	dated     []learned        // identities whose date the register did not know
	disputed  map[string]int   // occurrenceID to the row that has it beside a number that is not known to be its own
	claims    map[string][]int // gathering to the rows whose occurrenceID is new
	describe  []*holder        // holders whose specimen the register has yet to learn
}

const (
	kindOccurrence = "occurrence"
	kindGathering  = "gathering"
)

// newMatcher loads all that the register knows of the specimens.
func (c *change) newMatcher(specimens []Specimen) (*matcher, error) {
	m := &matcher{specimens: specimens, answers: make([]Assignment, len(specimens)), of: make([]*holder, len(specimens)),
		holders: map[ref]*holder{}, byID: map[string]*holder{}, byKey: map[string][]*holder{}, disputed: map[string]int{}}
	var err error
	if m.all, err = c.series(); err != nil {
		return nil, err
	}
	keys := map[string][]string{}
	for i, sp := range specimens {
		if sp.CatalogNumber != "" {
			if err := m.readNumber(i); err != nil {
				return nil, err
			}
		}
		if sp.OccurrenceID != "" {
			keys[kindOccurrence] = append(keys[kindOccurrence], indexKey(sp.OccurrenceID))
		}
		if key, ok := gatheringKey(sp); ok {
			keys[kindGathering] = append(keys[kindGathering], key)
		}
	}
	for kind, list := range keys {
		if err := c.find(m, kind, list); err != nil {
			return nil, err
		}
	}
	return m, c.load(m)
}

// holder returns the holder of a number, made if need be.
func (m *matcher) holder(at ref) *holder {
	h := m.holders[at]
	if h == nil {
		h = &holder{ref: at, state: Unknown, occurrence: map[string]bool{}, gathering: map[string]string{}}
		m.holders[at] = h
	}
	return h
}

// readNumber reads the number that specimen i has already.
func (m *matcher) readNumber(i int) error {
	text := m.specimens[i].CatalogNumber
	s, n, err := parse(m.all, text)
	a := &m.answers[i]
	switch {
	case errors.Is(err, ErrForeign):
		*a = Assignment{Number: text, Foreign: true}
	case err != nil:
		a.Err = fmt.Errorf("%s: %w", m.specimens[i].at(), err)
	case n > s.Highest:
		a.Err = faultf(ErrNotIssued, "%s: %s was never issued by this register; import it, or empty the cell to be given a number", m.specimens[i].at(), text)
	default:
		a.Number = s.Pattern.Format(n)
		m.of[i] = m.holder(ref{s.id, n})
	}
	return nil
}

// find loads the numbers that have one of the keys.
func (c *change) find(m *matcher, kind string, keys []string) error {
	slices.Sort(keys)
	return chunks(slices.Compact(keys), func(part []string) error {
		in, args := marks(part)
		return c.each(func(scan func(...any) error) error {
			var at ref
			if err := scan(&at.series, &at.n); err != nil {
				return err
			}
			m.holder(at)
			return nil
		}, "SELECT series, number FROM identities WHERE kind = '"+kind+"' AND key IN ("+in+")", args...)
	})
}

// load fills the holders with what the register has of them.
func (c *change) load(m *matcher) error {
	bySeries := map[int64][]int{}
	for at := range m.holders {
		bySeries[at.series] = append(bySeries[at.series], at.n)
	}
	for series, numbers := range bySeries {
		slices.Sort(numbers)
		states, err := c.statesOf(series, numbers)
		if err != nil {
			return err
		}
		for n, state := range states {
			m.holders[ref{series, n}].state = state
		}
		if err := c.loadSpecimens(m, series, numbers); err != nil {
			return err
		}
	}
	return nil
}

func (c *change) loadSpecimens(m *matcher, series int64, numbers []int) error {
	return chunks(numbers, func(part []int) error {
		in := integers(part)
		err := c.each(func(scan func(...any) error) error {
			var n int
			var kind, key, date string
			if err := scan(&n, &kind, &key, &date); err != nil {
				return err
			}
			h := m.holders[ref{series, n}]
			// A void number is no specimen's any more.
			switch {
			case kind == kindOccurrence:
				h.occurrence[key] = true
				if h.state != Void {
					m.byID[key] = h
				}
			default:
				h.gathering[key] = date
				if h.state != Void {
					m.byKey[key] = append(m.byKey[key], h)
				}
			}
			return nil
		}, "SELECT number, kind, key, date FROM identities WHERE series = ? AND number IN ("+in+") ORDER BY number", series)
		if err != nil {
			return err
		}
		return c.each(func(scan func(...any) error) error {
			var n int
			var k Specimen
			if err := scan(&n, &k.OccurrenceID, &k.Collector, &k.Number, &k.Part, &k.Date, &k.Name); err != nil {
				return err
			}
			h := m.holders[ref{series, n}]
			h.known, h.described = k, true
			return nil
		}, "SELECT number, occurrence, collector, record, part, date, name FROM specimens WHERE series = ? AND number IN ("+in+")", series)
	})
}

// errors returns what is wrong with the specimens, joined.
func (m *matcher) errors() error {
	var bad []error
	for _, a := range m.answers {
		if a.Err != nil {
			bad = append(bad, a.Err)
		}
	}
	return errors.Join(bad...)
}

// settle issues the numbers that were found to be needed and keeps what was
// learned of the specimens.
func (c *change) settle(m *matcher, s Series) error {
	if len(m.news) > 0 {
		got, err := c.issue(&s, len(m.news))
		if err != nil {
			return err
		}
		for i, h := range m.news {
			h.ref, h.state = ref{s.id, got.First + i}, Issued
			for _, row := range h.rows {
				m.answers[row] = Assignment{Number: s.Pattern.Format(h.n), State: Issued, Fresh: true}
			}
		}
	}
	return c.learn(m)
}

// learn keeps the identities and the specimens' words.
func (c *change) learn(m *matcher) error {
	var rows [][]any
	for _, h := range m.describe {
		k := h.known
		rows = append(rows, []any{h.series, h.n, k.OccurrenceID, k.Collector, k.Number, k.Part, k.Date, k.Name})
	}
	if err := c.insert("specimens", "series, number, occurrence, collector, record, part, date, name", rows); err != nil {
		return err
	}
	for _, l := range m.dated {
		if err := c.exec("UPDATE identities SET date = ? WHERE kind = ? AND key = ? AND series = ? AND number = ?", l.date, l.kind, l.key, l.h.series, l.h.n); err != nil {
			return err
		}
	}
	rows = rows[:0]
	for _, l := range m.learned {
		rows = append(rows, []any{l.kind, l.key, l.h.series, l.h.n, l.date})
	}
	return c.insert("identities", "kind, key, series, number, date", rows)
}
