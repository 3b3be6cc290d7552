package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
)

// A State is what is known of a number. Its text is the word that people see.
type State string

// The states.
const (
	Issued        State = "issued"         // given out; nothing printed yet
	Printed       State = "printed"        // on a label or sticker
	Attached      State = "attached"       // on its sheet
	Void          State = "void"           // spoiled: on no sheet, and never issued again
	Deaccessioned State = "deaccessioned"  // the specimen was given up
	Transferred   State = "transferred"    // the specimen went to another herbarium for good
	Lost          State = "lost"           // the specimen cannot be found
	HeldElsewhere State = "held elsewhere" // another book or herbarium answers for it
	Unknown       State = "unknown"        // passed over by this register; never issued
)

// States returns all states.
func States() []State {
	return []State{Issued, Printed, Attached, Void, Deaccessioned, Transferred, Lost, HeldElsewhere, Unknown}
}

// event is what the history calls a change to the state.
func (s State) event() What { return What(s) }

// ends reports whether the state says that the specimen is gone or was never.
func (s State) ends() bool { return s != Issued && s != Printed && s != Attached && s != Unknown }

// mayBecome says whether a number in one state can be marked as another, and
// why not. Only issuing makes a number issued.
func (s State) mayBecome(to State) error {
	switch {
	case to == Issued:
		return errors.New("a number is issued once")
	case to == Unknown:
		return errors.New("what is known of a number is not taken back")
	case s == to:
		return fmt.Errorf("it is %s already", s)
	case to == Printed && s != Issued && s != Unknown:
		return fmt.Errorf("it is %s, and a print does not change that", s)
	case s == Void && to != Attached:
		return errors.New("it is void; if it is on a sheet after all, mark it as attached")
	}
	return nil
}

// Mark brings all numbers of the ranges into a state: void for a spoiled
// sticker, lost, transferred, and so on. All change or none. At must say why,
// unless a number is printed or attached in the common way. A void number
// can only become attached, where it is found on a sheet after all.
func (r *Register) Mark(ctx context.Context, at At, to State, numbers ...Range) error {
	if !slices.Contains(States(), to) {
		return fmt.Errorf("there is no state %q", to)
	}
	if to.ends() {
		if err := at.needsWhy("making a number " + string(to)); err != nil {
			return err
		}
	}
	return r.write(ctx, at, func(c *change) error {
		for _, one := range numbers {
			if err := c.markRange(one, to); err != nil {
				return err
			}
		}
		return nil
	})
}

func (c *change) markRange(one Range, to State) error {
	s, err := c.seriesNamed(one.Series)
	if err != nil {
		return err
	}
	switch {
	case one.First < 1 || one.Last < one.First:
		return fmt.Errorf("%d to %d are no numbers", one.First, one.Last)
	case one.Len() > MostAtOnce:
		return fmt.Errorf("%d numbers at once are surely a slip; at most %d are marked in one go", one.Len(), MostAtOnce)
	case s.Highest == 0:
		return faultf(ErrNotIssued, "%s was never issued: the series %s has no number yet", s.Pattern.Format(min(one.Last, s.Pattern.Max())), s.Name)
	case one.Last > s.Highest:
		return faultf(ErrNotIssued, "%s was never issued: the highest number of the register is %s", s.Pattern.Format(min(one.Last, s.Pattern.Max())), s.Pattern.Format(s.Highest))
	}
	known := 0
	err = c.each(func(scan func(...any) error) error {
		var n, count int
		var from State
		if err := scan(&from, &n, &count); err != nil {
			return err
		}
		known += count
		return c.refuse(s, n, from, to)
	}, "SELECT state, MIN(number), COUNT(*) FROM numbers WHERE series = ? AND number BETWEEN ? AND ? GROUP BY state", s.id, one.First, one.Last)
	if err != nil {
		return err
	}
	if known < one.Len() {
		if err := c.refuse(s, one.First, Unknown, to); err != nil {
			return err
		}
	}
	id, err := c.event(event{what: to.event(), series: s.id, first: one.First, last: one.Last, state: to})
	if err != nil {
		return err
	}
	return c.setRange(s.id, one.First, one.Last, to, id)
}

// refuse says why number n cannot go from one state to another.
func (c *change) refuse(s Series, n int, from, to State) error {
	why := from.mayBecome(to)
	if why == nil && from.ends() {
		why = c.at.needsWhy(fmt.Sprintf("a number that is %s", from))
	}
	if why != nil {
		kind := ErrState
		if from == Void {
			kind = ErrVoid
		}
		return faultf(kind, "%s cannot be made %s: %v", s.Pattern.Format(n), to, why)
	}
	return nil
}

// setRange gives all numbers from first to last a state, whether they had a
// row or not.
func (c *change) setRange(series int64, first, last int, to State, event int64) error {
	return c.exec(`WITH RECURSIVE span (n) AS (SELECT CAST(? AS BIGINT) UNION ALL SELECT n + 1 FROM span WHERE n < CAST(? AS BIGINT))
		INSERT INTO numbers (series, number, state, event) SELECT CAST(? AS BIGINT), n, CAST(? AS TEXT), CAST(? AS BIGINT) FROM span WHERE true
		ON CONFLICT (series, number) DO UPDATE SET state = excluded.state, event = excluded.event`, first, last, series, string(to), event)
}

// stateOf returns a number's state; ErrNotIssued beyond the highest.
func (s *session) stateOf(one Series, n int) (State, error) {
	if n > one.Highest {
		return "", faultf(ErrNotIssued, "%s was never issued by this register; if it is in use, import it", one.Pattern.Format(n))
	}
	var state State
	err := s.one([]any{&state}, "SELECT state FROM numbers WHERE series = ? AND number = ?", one.id, n)
	if errors.Is(err, sql.ErrNoRows) {
		return Unknown, nil
	}
	return state, err
}

// statesOf returns the states of many numbers; those without a row of their
// own are left out.
func (s *session) statesOf(series int64, numbers []int) (map[int]State, error) {
	states := make(map[int]State, len(numbers))
	err := chunks(numbers, func(part []int) error {
		return s.each(func(scan func(...any) error) error {
			var n int
			var state State
			if err := scan(&n, &state); err != nil {
				return err
			}
			states[n] = state
			return nil
		}, "SELECT number, state FROM numbers WHERE series = ? AND number IN ("+integers(part)+")", series)
	})
	return states, err
}

// stretches cuts numbers, in any order and with repetitions, into runs without
// a gap.
func stretches(numbers []int) [][2]int {
	sorted := slices.Compact(slices.Sorted(slices.Values(numbers)))
	var runs [][2]int
	for _, n := range sorted {
		if k := len(runs) - 1; k >= 0 && runs[k][1]+1 == n {
			runs[k][1] = n
		} else {
			runs = append(runs, [2]int{n, n})
		}
	}
	return runs
}
