package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"iter"
	"slices"
	"sort"
)

// A Problem is something in the register that should not be.
type Problem struct {
	Range Range // the numbers concerned; zero if none
	Text  string
}

func (p Problem) String() string {
	if p.Range == (Range{}) {
		return p.Text
	}
	return p.Range.String() + ": " + p.Text
}

// Check looks through the whole register and yields what is wrong: damage to
// the file, numbers without a state, a state that the history does not tell,
// a history with gaps, labels without a box. Printings that were never finished
// are no fault and are not told.
func (r *Register) Check(ctx context.Context) iter.Seq2[Problem, error] {
	return func(yield func(Problem, error) bool) {
		c := checker{s: r.read(ctx), yield: yield}
		if err := c.run(); err != nil && !errors.Is(err, errStop) {
			yield(Problem{}, r.wrap(err))
		}
	}
}

type checker struct {
	s     *session
	yield func(Problem, error) bool
}

func (c *checker) tell(of Range, format string, args ...any) error {
	if !c.yield(Problem{of, fmt.Sprintf(format, args...)}, nil) {
		return errStop
	}
	return nil
}

func (c *checker) run() error {
	if c.s.r.d == sqlite {
		if err := c.file(); err != nil {
			return err
		}
	}
	var count, last sql.NullInt64
	if err := c.s.one([]any{&count, &last}, "SELECT COUNT(*), MAX(id) FROM events"); err != nil {
		return err
	}
	if count.Int64 != last.Int64 {
		if err := c.tell(Range{}, "the history has gaps: %d of %d entries are there", count.Int64, last.Int64); err != nil {
			return err
		}
	}
	all, err := c.s.series()
	if err != nil {
		return err
	}
	for _, s := range all {
		if err := c.series(s); err != nil {
			return err
		}
	}
	for _, q := range []struct{ text, query string }{
		{"%d printed labels have no box", "SELECT COUNT(*) FROM labels l JOIN runs r ON r.id = l.run AND r.done = 1 LEFT JOIN boxes b ON b.label = l.id WHERE b.label IS NULL"},
		{"%d boxes belong to no label", "SELECT COUNT(*) FROM boxes b LEFT JOIN labels l ON l.id = b.label WHERE l.id IS NULL"},
		{"%d labels have a name or collector that is missing", `SELECT COUNT(*) FROM labels l LEFT JOIN phrases c ON c.id = l.collector LEFT JOIN phrases n ON n.id = l.name
			WHERE l.collector IS NOT NULL AND c.id IS NULL OR l.name IS NOT NULL AND n.id IS NULL`},
	} {
		var n int
		if err := c.s.one([]any{&n}, q.query); err != nil {
			return err
		}
		if n > 0 {
			if err := c.tell(Range{}, q.text, n); err != nil {
				return err
			}
		}
	}
	return nil
}

// file lets SQLite look at its own structure.
func (c *checker) file() error {
	var texts []string
	err := c.s.each(func(scan func(...any) error) error {
		var text string
		err := scan(&text)
		texts = append(texts, text)
		return err
	}, "PRAGMA integrity_check(20)")
	if err != nil {
		return err
	}
	for _, text := range texts {
		if text != "ok" {
			if err := c.tell(Range{}, "the file is damaged: %s", text); err != nil {
				return err
			}
		}
	}
	var table string
	err = c.s.one([]any{&table}, `SELECT "table" FROM pragma_foreign_key_check LIMIT 1`)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return nil
	case err != nil:
		return err
	}
	return c.tell(Range{}, "rows of %s point to others that are missing", table)
}

// series checks that every number from 1 to the highest has one state, and
// that it is the last that the history tells of it.
func (c *checker) series(s Series) error {
	next := 1 // the first number not yet accounted for
	account := func(first, last int) error {
		var err error
		switch {
		case first > next:
			err = c.tell(s.span(next, first-1), "no state")
		case first < next:
			err = c.tell(s.span(first, min(last, next-1)), "passed over twice")
		}
		next = max(next, last+1)
		return err
	}
	stretches, err := c.passed(s)
	if err != nil {
		return err
	}
	at := 0
	const page = 5000
	for {
		rows, err := c.page(s, at, page)
		if err != nil {
			return err
		}
		for _, row := range rows {
			for len(stretches) > 0 && stretches[0][0] <= row.n {
				if err := account(stretches[0][0], stretches[0][1]); err != nil {
					return err
				}
				stretches = stretches[1:]
			}
			if row.n >= next { // else it is in a stretch, and known since
				if err := account(row.n, row.n); err != nil {
					return err
				}
			}
		}
		if err := c.told(s, rows); err != nil {
			return err
		}
		if len(rows) < page {
			break
		}
		at = rows[len(rows)-1].n
	}
	for _, one := range stretches {
		if err := account(one[0], one[1]); err != nil {
			return err
		}
	}
	switch {
	case next <= s.Highest:
		return c.tell(s.span(next, s.Highest), "no state")
	case next-1 > s.Highest:
		return c.tell(s.span(s.Highest+1, min(next-1, s.Pattern.Max())), "beyond the highest number of the series, which is %d", s.Highest)
	}
	return nil
}

// passed returns the stretches that were passed over, and checks that the
// history tells each.
func (c *checker) passed(s Series) ([][2]int, error) {
	var stretches [][2]int
	var untold []Range
	err := c.s.each(func(scan func(...any) error) error {
		var one [2]int
		var told int
		if err := scan(&one[0], &one[1], &told); err != nil {
			return err
		}
		stretches = append(stretches, one)
		if told == 0 {
			untold = append(untold, s.span(one[0], one[1]))
		}
		return nil
	}, `SELECT p.first, p.last, COUNT(e.id) FROM passed p LEFT JOIN events e ON e.id = p.event AND e.series = p.series AND e.first = p.first AND e.last = p.last AND e.state = 'unknown'
		WHERE p.series = ? GROUP BY p.first, p.last ORDER BY p.first`, s.id)
	for _, u := range untold {
		if err == nil {
			err = c.tell(u, "the history does not tell when they were passed over")
		}
	}
	return stretches, err
}

// A numberRow is a number as it stands in the register.
type numberRow struct {
	n     int
	state State
	event int
}

func (c *checker) page(s Series, after, limit int) ([]numberRow, error) {
	var rows []numberRow
	err := c.s.each(func(scan func(...any) error) error {
		var row numberRow
		err := scan(&row.n, &row.state, &row.event)
		rows = append(rows, row)
		return err
	}, "SELECT number, state, event FROM numbers WHERE series = ? AND number > ? ORDER BY number LIMIT ?", s.id, after, limit)
	return rows, err
}

// told checks that the last event of each number is the one that it has its
// state from.
func (c *checker) told(s Series, rows []numberRow) error {
	if len(rows) == 0 {
		return nil
	}
	first, last := rows[0].n, rows[len(rows)-1].n
	latest := make([]int, len(rows))
	states := make([]State, len(rows))
	note := func(scan func(...any) error) error {
		var id, a, b int
		var state State
		if err := scan(&id, &a, &b, &state); err != nil {
			return err
		}
		from := sort.Search(len(rows), func(i int) bool { return rows[i].n >= a })
		for i := from; i < len(rows) && rows[i].n <= b; i++ {
			if id > latest[i] {
				latest[i], states[i] = id, state
			}
		}
		return nil
	}
	for _, query := range []string{
		"SELECT id, first, last, state FROM events WHERE series = ? AND first >= ? AND first <= ? AND first = last AND state IS NOT NULL",
		"SELECT id, first, last, state FROM events WHERE series = ? AND last >= ? AND first <= ? AND first < last AND state IS NOT NULL",
	} {
		if err := c.s.each(note, query, s.id, first, last); err != nil {
			return err
		}
	}
	for i, row := range rows {
		var err error
		switch {
		case latest[i] == 0:
			err = c.tell(s.span(row.n, row.n), "%s, and the history does not know the number", row.state)
		case states[i] != row.state || latest[i] != row.event:
			err = c.tell(s.span(row.n, row.n), "%s, and by the history %s", row.state, states[i])
		case !slices.Contains(States(), row.state):
			err = c.tell(s.span(row.n, row.n), "its state %q is none", row.state)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
