package register

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"strings"

	"cornerslip/label/accession"
)

// A Series is a row of catalogue numbers that are written alike.
type Series struct {
	// Name is the pattern's code, or its whole notation where it has no code.
	Name    string
	Pattern accession.Pattern
	// Highest is the highest number that has a state; 0 while there is none.
	Highest int

	id int64
}

// A Range is the numbers First to Last of one series.
type Range struct {
	Series      string // its name
	Pattern     accession.Pattern
	First, Last int
}

// Len returns how many numbers the range has.
func (r Range) Len() int { return r.Last - r.First + 1 }

// String returns "VDOURA-0000001" or "VDOURA-0000001 to VDOURA-0000200".
func (r Range) String() string {
	if r.First == r.Last {
		return r.Pattern.Format(r.First)
	}
	return r.Pattern.Format(r.First) + " to " + r.Pattern.Format(r.Last)
}

// Numbers yields the numbers as they are written.
func (r Range) Numbers() iter.Seq[string] {
	return func(yield func(string) bool) {
		for n := r.First; n <= r.Last; n++ {
			if !yield(r.Pattern.Format(n)) {
				return
			}
		}
	}
}

func (s Series) span(first, last int) Range { return Range{s.Name, s.Pattern, first, last} }

// MostAtOnce is how many numbers one call may issue or mark: more is a slip of
// the keyboard.
const MostAtOnce = 1_000_000

// Series returns all series in the order they were added.
func (r *Register) Series(ctx context.Context) ([]Series, error) {
	all, err := r.read(ctx).series()
	return all, r.wrap(err)
}

func (s *session) series() ([]Series, error) {
	var all []Series
	err := s.each(func(scan func(...any) error) error {
		var one Series
		p := &one.Pattern
		if err := scan(&one.id, &one.Name, &p.Code, &p.Separator, &p.Digits, &p.Check, &p.CheckSeparator, &one.Highest); err != nil {
			return err
		}
		if err := p.Valid(); err != nil {
			return faultf(ErrDamaged, "series %s: %v", one.Name, err)
		}
		all = append(all, one)
		return nil
	}, "SELECT id, name, code, separator, digits, scheme, check_separator, highest FROM series ORDER BY id")
	return all, err
}

// seriesNamed finds a series by name, capitals or not. "" is the only one.
func (s *session) seriesNamed(name string) (Series, error) {
	all, err := s.series()
	if err != nil {
		return Series{}, err
	}
	for _, one := range all {
		if strings.EqualFold(one.Name, strings.TrimSpace(name)) {
			return one, nil
		}
	}
	switch {
	case len(all) == 0:
		return Series{}, faultf(ErrNoSeries, "the register has no series yet; add one, with a pattern such as VDOURA-0000000")
	case strings.TrimSpace(name) != "":
		return Series{}, faultf(ErrNoSeries, "the register has no series %q; it has %s", name, seriesNames(all))
	case len(all) > 1:
		return Series{}, faultf(ErrNoSeries, "the register has several series, %s; say which", seriesNames(all))
	}
	return all[0], nil
}

func seriesNames(all []Series) string {
	names := make([]string, len(all))
	for i, s := range all {
		names[i] = s.Name
	}
	return strings.Join(names, ", ")
}

// AddSeries adds a series whose first number to be issued is first, 1 where
// it is 0. Numbers below are Unknown until they are imported or found.
//
// A pattern is refused whose numbers could be read as another series'.
func (r *Register) AddSeries(ctx context.Context, at At, pattern accession.Pattern, first int) (Series, error) {
	one := Series{Name: pattern.Code, Pattern: pattern}
	if one.Name == "" {
		one.Name = pattern.String()
	}
	err := r.write(ctx, at, func(c *change) error {
		if err := pattern.Valid(); err != nil {
			return fmt.Errorf("series %s: %w", one.Name, err)
		}
		first := max(first, 1)
		if first > pattern.Max() {
			return faultf(ErrExhausted, "series %s: it cannot begin with %d, for its last number is %s", one.Name, first, pattern.Format(pattern.Max()))
		}
		all, err := c.series()
		if err != nil {
			return err
		}
		for _, other := range all {
			if strings.EqualFold(other.Name, one.Name) {
				return faultf(ErrExists, "series %s: there is a series of this name already, %s", one.Name, other.Pattern)
			}
			if alike(pattern, other.Pattern) {
				return faultf(ErrExists, "series %s: its numbers could not be told from those of %s; choose another code", pattern, other.Pattern)
			}
		}
		if one.id, err = c.id("series"); err != nil {
			return err
		}
		if err := c.insert("series", "id, name, code, separator, digits, scheme, check_separator, highest", [][]any{{one.id, one.Name,
			pattern.Code, pattern.Separator, pattern.Digits, string(pattern.Check), pattern.CheckSeparator, 0}}); err != nil {
			return err
		}
		// The event of the whole series is one of its first number, which
		// says where it begins.
		if _, err := c.event(event{what: Opened, series: one.id, first: first, last: first}); err != nil {
			return err
		}
		return c.pass(&one, first-1, PassedOver)
	})
	return one, err
}

// alike reports whether some number of one pattern, as people may type it, is
// a number of the other.
func alike(a, b accession.Pattern) bool {
	reads := func(p accession.Pattern, text string) bool {
		_, err := p.Parse(text)
		return err == nil || errors.Is(err, accession.ErrNoCheck)
	}
	for _, n := range []int{1, 11, a.Max()} {
		if n <= a.Max() && reads(b, a.Format(n)) {
			return true
		}
	}
	for _, n := range []int{1, 11, b.Max()} {
		if n <= b.Max() && reads(a, b.Format(n)) {
			return true
		}
	}
	return false
}

// Issue gives out the next count numbers of a series ("" is the only one), in
// one transaction that is on the disk when Issue returns.
func (r *Register) Issue(ctx context.Context, at At, series string, count int) (Range, error) {
	var got Range
	err := r.write(ctx, at, func(c *change) error {
		s, err := c.seriesNamed(series)
		if err != nil {
			return err
		}
		got, err = c.issue(&s, count)
		return err
	})
	if err != nil {
		return Range{}, err
	}
	return got, nil
}

func (c *change) issue(s *Series, count int) (Range, error) {
	switch {
	case count < 1:
		return Range{}, fmt.Errorf("%d numbers cannot be issued", count)
	case count > MostAtOnce:
		return Range{}, fmt.Errorf("%d numbers at once are surely a slip; at most %d are issued in one go", count, MostAtOnce)
	case s.Highest+count > s.Pattern.Max():
		return Range{}, faultf(ErrExhausted, "series %s: %d numbers are left and %d are wanted; the last is %s", s.Name, s.Pattern.Max()-s.Highest, count, s.Pattern.Format(s.Pattern.Max()))
	}
	got := s.span(s.Highest+1, s.Highest+count)
	id, err := c.event(event{what: Issued.event(), series: s.id, first: got.First, last: got.Last, state: Issued})
	if err != nil {
		return Range{}, err
	}
	if err := c.raise(s, got.Last); err != nil {
		return Range{}, err
	}
	return got, c.setRange(s.id, got.First, got.Last, Issued, id)
}

// raise lifts the highest number.
func (c *change) raise(s *Series, to int) error {
	s.Highest = to
	return c.exec("UPDATE series SET highest = ? WHERE id = ?", to, s.id)
}

// pass raises the series to a number and keeps the numbers between as unknown.
func (c *change) pass(s *Series, to int, what What) error {
	if to <= s.Highest {
		return nil
	}
	first := s.Highest + 1
	id, err := c.event(event{what: what, series: s.id, first: first, last: to, state: Unknown})
	if err != nil {
		return err
	}
	if err := c.raise(s, to); err != nil {
		return err
	}
	return c.insert("passed", "series, first, last, event", [][]any{{s.id, first, to, id}})
}

// MoveUp raises a series past a number that is known to be printed, after the
// register was restored from a backup that knows less. All numbers between
// become Unknown and are never issued; the range of them is returned. At must
// say why. It is an error if the register knows the number already.
func (r *Register) MoveUp(ctx context.Context, at At, number string) (Range, error) {
	var got Range
	if err := at.needsWhy("moving a series up"); err != nil {
		return got, err
	}
	err := r.write(ctx, at, func(c *change) error {
		s, n, err := c.parse(number)
		if err != nil {
			return err
		}
		if n <= s.Highest {
			return faultf(ErrExists, "%s: the register knows its numbers up to %s already; nothing to move up", number, s.Pattern.Format(s.Highest))
		}
		got = s.span(s.Highest+1, n)
		return c.pass(&s, n, MovedUp)
	})
	return got, err
}

// parse finds the series and number of a text.
func (s *session) parse(text string) (Series, int, error) {
	all, err := s.series()
	if err != nil {
		return Series{}, 0, err
	}
	return parse(all, text)
}

// parse reads a number of any of the series. A check character may be missing
// but not wrong. The error is an ErrForeign where the text is like none of
// them, else what is wrong with it.
func parse(all []Series, text string) (Series, int, error) {
	text = strings.TrimSpace(text) // scanners end with a line break
	var found []Series
	var at int
	var near error
	for _, s := range all {
		n, err := s.Pattern.Parse(text)
		switch {
		case err == nil || errors.Is(err, accession.ErrNoCheck):
			if n == 0 {
				near = fmt.Errorf("%s: numbers begin with 1", text)
				continue
			}
			found, at = append(found, s), n
		case !errors.Is(err, accession.ErrForeign):
			near = err
		}
	}
	switch {
	case len(found) == 1:
		return found[0], at, nil
	case len(found) > 1:
		return Series{}, 0, faultf(ErrAmbiguous, "%s could be a number of %s; write it in full", text, seriesNames(found))
	case near != nil:
		return Series{}, 0, near
	case len(all) == 0:
		return Series{}, 0, faultf(ErrForeign, "%q: the register has no series yet", text)
	}
	return Series{}, 0, faultf(ErrForeign, "%q is not a number of the register's series, %s", text, seriesNames(all))
}

// parseTyped reads a number as people type it at the keyboard. In a table figures
// alone may be of another house; a person who types them means the register's.
func (s *session) parseTyped(text string) (Series, int, error) {
	one, n, err := s.parse(text)
	typed := strings.TrimSpace(text)
	if !errors.Is(err, ErrForeign) || typed == "" || strings.Trim(typed, "0123456789") != "" {
		return one, n, err
	}
	all, other := s.series()
	if other != nil || len(all) != 1 {
		return one, n, errors.Join(other, err)
	}
	if one, n, other := parse(all, all[0].Pattern.Code+all[0].Pattern.Separator+typed); other == nil {
		return one, n, nil
	}
	return one, n, err
}

// Range reads the numbers from first to last as people type them; last may be
// "" for a single number. Where there is one series, figures alone will do.
func (r *Register) Range(ctx context.Context, first, last string) (Range, error) {
	s := r.read(ctx)
	from, a, err := s.parseTyped(first)
	if err != nil {
		return Range{}, r.wrap(err)
	}
	if strings.TrimSpace(last) == "" {
		return from.span(a, a), nil
	}
	to, b, err := s.parseTyped(last)
	switch {
	case err != nil:
		return Range{}, r.wrap(err)
	case from.id != to.id:
		return Range{}, faultf(ErrForeign, "%s and %s are of two series", first, last)
	case b < a:
		return Range{}, faultf(ErrAmbiguous, "%s comes after %s; write the lower one first", first, last)
	}
	return from.span(a, b), nil
}
