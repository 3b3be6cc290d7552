package register

import (
	"context"
	"database/sql"
	"errors"
	"iter"
	"slices"
	"time"

	"cornerslip/label/accession"
)

// What happened: the word of an event. A change of state is called by the new
// state.
type What string

// The events that are not called by a state.
const (
	Created    What = "created"     // the register
	Upgraded   What = "upgraded"    // to a newer version
	BackedUp   What = "backed up"   //
	Opened     What = "opened"      // a series; the number is its first
	PassedOver What = "passed over" // a gap, or numbers below the first
	MovedUp    What = "moved up"    // past what was printed after a backup
	TakenOver  What = "imported"    // from an old catalogue
	Again      What = "reprinted"   // a label
)

// An Event is one entry of the history. Entries are only ever added.
type Event struct {
	ID    int // counts from 1 without a gap
	When  time.Time
	By    string
	What  What
	Why   string
	Range Range // the numbers it is of; zero if of none
	State State // what they became; "" if they stayed as they were
	Label int   // the printed label it is of; 0 if of none
}

// event is an entry to be written.
type event struct {
	what        What
	series      int64
	first, last int
	state       State
	label       int
}

func (c *change) event(e event) (int64, error) {
	id, err := c.id("events")
	if err != nil {
		return 0, err
	}
	return id, c.insert("events", eventInsert, [][]any{c.row(id, e)})
}

const eventInsert = "id, at, who, what, why, series, first, last, state, label"

// row is an event as insert takes it.
func (c *change) row(id int64, e event) []any {
	row := []any{id, c.at.stamp(), c.at.By, string(e.what), c.at.Why, nil, nil, nil, nil, nil}
	if e.series != 0 {
		row[5], row[6], row[7] = e.series, e.first, e.last
	}
	if e.state != "" {
		row[8] = string(e.state)
	}
	if e.label != 0 {
		row[9] = e.label
	}
	return row
}

const eventColumns = "e.id, e.at, e.who, e.what, e.why, e.series, e.first, e.last, e.state, e.label"

func scanEvent(scan func(...any) error, byID map[int64]Series) (Event, error) {
	var e Event
	var at string
	var series, first, last, label sql.NullInt64
	var state sql.NullString
	if err := scan(&e.ID, &at, &e.By, &e.What, &e.Why, &series, &first, &last, &state, &label); err != nil {
		return e, err
	}
	var err error
	e.When, err = parseStamp(at)
	e.State, e.Label = State(state.String), int(label.Int64)
	if series.Valid {
		e.Range = byID[series.Int64].span(int(first.Int64), int(last.Int64))
	}
	return e, err
}

func (s *session) seriesByID() (map[int64]Series, error) {
	all, err := s.series()
	byID := make(map[int64]Series, len(all))
	for _, one := range all {
		byID[one.id] = one
	}
	return byID, err
}

// History yields what happened to a number, first to last; to the whole
// register if number is "". It reads on while the caller works, and sees what
// is added meanwhile.
func (r *Register) History(ctx context.Context, number string) iter.Seq2[Event, error] {
	return func(yield func(Event, error) bool) {
		s := r.read(ctx)
		byID, err := s.seriesByID()
		if err != nil {
			yield(Event{}, r.wrap(err))
			return
		}
		where, args := "", []any{}
		if number != "" {
			one, n, err := s.parse(number)
			if err == nil && n > one.Highest {
				_, err = s.stateOf(one, n)
			}
			if err != nil {
				yield(Event{}, r.wrap(err))
				return
			}
			// Single numbers and ranges each have an index; ranges are few.
			where = "(e.id IN (SELECT id FROM events WHERE series = ? AND first = ? AND first = last) OR " +
				"e.id IN (SELECT id FROM events WHERE series = ? AND last >= ? AND first <= ? AND first < last)) AND "
			args = []any{one.id, n, one.id, n, n}
		}
		const page = 1000
		last := 0
		for {
			var events []Event
			err := s.each(func(scan func(...any) error) error {
				e, err := scanEvent(scan, byID)
				events = append(events, e)
				return err
			}, "SELECT "+eventColumns+" FROM events e WHERE "+where+"e.id > ? ORDER BY e.id LIMIT ?", append(args[:len(args):len(args)], last, page)...)
			if err != nil {
				yield(Event{}, r.wrap(err))
				return
			}
			for _, e := range events {
				if last = e.ID; !yield(e, nil) {
					return
				}
			}
			if len(events) < page {
				return
			}
		}
	}
}

// A Row is what the register knows of a number, or of a stretch of numbers
// that are Unknown.
type Row struct {
	Range Range
	State State
	// When, By and Why are those of the change that brought the state.
	When     time.Time
	By, Why  string
	Specimen Specimen // zero if none is known
}

// Number returns what the register knows of a number, typed in any common way
// or scanned. It is an ErrForeign for a number of no series, an ErrNotIssued
// for one that was never issued.
func (r *Register) Number(ctx context.Context, text string) (Row, error) {
	s := r.read(ctx)
	one, n, err := s.parse(text)
	if err != nil {
		return Row{}, r.wrap(err)
	}
	if _, err := s.stateOf(one, n); err != nil {
		return Row{}, r.wrap(err)
	}
	for row, err := range r.List(ctx, Filter{Series: one.Name, First: n, Last: n}) {
		return row, err
	}
	return Row{}, r.fault(ErrDamaged, nil, "%s has no state", one.Pattern.Format(n))
}

// A Filter says what List shows. The zero value shows all.
type Filter struct {
	Series      string  // "" shows all
	First, Last int     // 0 is the first, the highest
	States      []State // none shows all
}

// List yields the numbers in order, series by series, with their states and
// specimens; numbers that are Unknown come in stretches. It reads page by page
// and keeps nobody from writing meanwhile.
func (r *Register) List(ctx context.Context, f Filter) iter.Seq2[Row, error] {
	return func(yield func(Row, error) bool) {
		s := r.read(ctx)
		all, err := s.series()
		if err == nil && f.Series != "" {
			var one Series
			one, err = s.seriesNamed(f.Series)
			all = []Series{one}
		}
		for _, one := range all {
			if err == nil {
				l := lister{s: s, series: one, f: f, yield: yield}
				err = l.run()
			}
		}
		if err != nil && !errors.Is(err, errStop) {
			yield(Row{}, r.wrap(err))
		}
	}
}

// errStop ends a listing that the caller has broken off.
var errStop = errors.New("stop")

// lister walks over one series' numbers and its unknown stretches together.
type lister struct {
	s      *session
	series Series
	f      Filter
	yield  func(Row, error) bool
}

func (l *lister) wants(s State) bool {
	return len(l.f.States) == 0 || slices.Contains(l.f.States, s)
}

func (l *lister) run() error {
	first, last := max(l.f.First, 1), l.series.Highest
	if l.f.Last > 0 {
		last = min(last, l.f.Last)
	}
	const page = 1000
	for first <= last {
		rows, err := l.page(first, last, page)
		if err != nil {
			return err
		}
		// A full page speaks for the numbers up to its last row, a short one
		// for all that are left.
		upTo := last
		if len(rows) == page {
			upTo = rows[page-1].Range.First
		}
		gaps, err := l.gaps(rows, first, upTo)
		if err != nil {
			return err
		}
		for len(rows)+len(gaps) > 0 {
			from := &rows
			if len(rows) == 0 || len(gaps) > 0 && gaps[0].Range.First < rows[0].Range.First {
				from = &gaps
			}
			row := (*from)[0]
			*from = (*from)[1:]
			if l.wants(row.State) && !l.yield(row, nil) {
				return errStop
			}
		}
		first = upTo + 1
	}
	return nil
}

// page returns the numbers that have a row, from first on.
func (l *lister) page(first, last, limit int) ([]Row, error) {
	var rows []Row
	states, args := "", []any{l.series.id, first, last}
	if !l.wants(Unknown) { // then no row is needed to know where the gaps are
		words := make([]string, len(l.f.States))
		for i, s := range l.f.States {
			words[i] = string(s)
		}
		in, more := marks(words)
		states, args = " AND n.state IN ("+in+")", append(args, more...)
	}
	err := l.s.each(func(scan func(...any) error) error {
		row, err := scanRow(scan, l.series)
		rows = append(rows, row)
		return err
	}, `SELECT n.number, n.state, e.at, e.who, e.why, s.occurrence, s.collector, s.record, s.part, s.date, s.name
		FROM numbers n JOIN events e ON e.id = n.event LEFT JOIN specimens s ON s.series = n.series AND s.number = n.number
		WHERE n.series = ? AND n.number BETWEEN ? AND ?`+states+` ORDER BY n.number LIMIT ?`, append(args, limit)...)
	return rows, err
}

func scanRow(scan func(...any) error, series Series) (Row, error) {
	var row Row
	var n int
	var at string
	var sp [6]sql.NullString
	if err := scan(&n, &row.State, &at, &row.By, &row.Why, &sp[0], &sp[1], &sp[2], &sp[3], &sp[4], &sp[5]); err != nil {
		return row, err
	}
	row.Range = series.span(n, n)
	row.Specimen = Specimen{OccurrenceID: sp[0].String, Collector: sp[1].String, Number: sp[2].String, Part: sp[3].String, Date: sp[4].String, Name: sp[5].String}
	if sp[0].Valid {
		row.Specimen.CatalogNumber = series.Pattern.Format(n)
	}
	var err error
	row.When, err = parseStamp(at)
	return row, err
}

// gaps returns the unknown stretches between first and last, without the
// numbers that have a row.
func (l *lister) gaps(rows []Row, first, last int) ([]Row, error) {
	if !l.wants(Unknown) {
		return nil, nil
	}
	var gaps []Row
	err := l.s.each(func(scan func(...any) error) error {
		row := Row{State: Unknown}
		var at string
		var from, to int
		if err := scan(&from, &to, &at, &row.By, &row.Why); err != nil {
			return err
		}
		var err error
		row.When, err = parseStamp(at)
		from, to = max(from, first), min(to, last)
		for ; len(rows) > 0 && rows[0].Range.First <= to; rows = rows[1:] {
			if n := rows[0].Range.First; n >= from {
				if from < n {
					row.Range = l.series.span(from, n-1)
					gaps = append(gaps, row)
				}
				from = n + 1
			}
		}
		if from <= to {
			row.Range = l.series.span(from, to)
			gaps = append(gaps, row)
		}
		return err
	}, `SELECT p.first, p.last, e.at, e.who, e.why FROM passed p JOIN events e ON e.id = p.event
		WHERE p.series = ? AND p.last >= ? AND p.first <= ?
		AND p.first >= COALESCE((SELECT MAX(first) FROM passed WHERE series = ? AND first <= ?), 0) ORDER BY p.first`,
		l.series.id, first, last, l.series.id, first)
	return gaps, err
}

// Patterns returns the patterns of all series, for those who read numbers.
func (r *Register) Patterns(ctx context.Context) ([]accession.Pattern, error) {
	all, err := r.Series(ctx)
	patterns := make([]accession.Pattern, len(all))
	for i, s := range all {
		patterns[i] = s.Pattern
	}
	return patterns, err
}
