package register

import (
	"context"
	"errors"
	"slices"
	"strings"
)

// Count returns how many numbers of each series are in which state, by the
// name of the series.
func (r *Register) Count(ctx context.Context) (map[string]map[State]int, error) {
	s := r.read(ctx)
	all, err := s.series()
	if err != nil {
		return nil, r.wrap(err)
	}
	counts := map[string]map[State]int{}
	name := map[int64]string{}
	for _, one := range all {
		name[one.id] = one.Name
		counts[one.Name] = map[State]int{}
		if one.Highest > 0 {
			counts[one.Name][Unknown] = one.Highest // less those with a row of their own
		}
	}
	err = s.each(func(scan func(...any) error) error {
		var series int64
		var state State
		var n int
		if err := scan(&series, &state, &n); err != nil {
			return err
		}
		of := counts[name[series]]
		of[state] = n
		if of[Unknown] -= n; of[Unknown] <= 0 {
			delete(of, Unknown)
		}
		return nil
	}, "SELECT series, state, COUNT(*) FROM numbers GROUP BY series, state")
	return counts, r.wrap(err)
}

// Propose answers as Assign would now, and changes nothing: a fresh specimen
// has no number yet. The register may be open for looking only.
func (r *Register) Propose(ctx context.Context, specimens []Specimen) ([]Assignment, error) {
	c := &change{session: *r.read(ctx)}
	m, err := c.newMatcher(specimens)
	if err != nil {
		return nil, r.wrap(err)
	}
	m.match()
	return m.answers, nil
}

// Gathering is what a specimen without an identifier is known again by: equal
// for specimens of one collector, number and part, however they are written.
// It is "" where collector or number is absent, for then nothing tells it from
// others.
func (s Specimen) Gathering() string {
	key, _ := gatheringKey(s)
	return key
}

// Meant returns the numbers, in order, whose specimens a text means, printed or
// not, at most limit of them (0 is DefaultFound): a catalogue number, typed or
// scanned, in figures alone too; an occurrenceID; or the beginnings of words of
// a collector and a name, with a collector's number in full. It looks through
// all specimens, which of a million takes some seconds.
func (r *Register) Meant(ctx context.Context, text string, limit int) ([]Row, error) {
	if limit <= 0 {
		limit = DefaultFound
	}
	s := r.read(ctx)
	all, err := s.series()
	if err != nil {
		return nil, r.wrap(err)
	}
	if strings.TrimSpace(text) == "" {
		return nil, errors.New("say what to find: a number, a collector and number, or part of a name")
	}
	found := scanned(all, text)
	if len(found) == 0 {
		if found, err = s.identified(strings.TrimSpace(text)); err != nil {
			return nil, r.wrap(err)
		}
	}
	if len(found) == 0 {
		if found, err = s.described(text, limit); err != nil {
			return nil, r.wrap(err)
		}
	}
	slices.SortFunc(found, func(a, b ref) int {
		if a.series != b.series {
			return int(a.series - b.series)
		}
		return a.n - b.n
	})
	var rows []Row
	for _, at := range found[:min(limit, len(found))] {
		one := all[slices.IndexFunc(all, func(s Series) bool { return s.id == at.series })]
		for row, err := range r.List(ctx, Filter{Series: one.Name, First: at.n, Last: at.n}) {
			if err != nil {
				return nil, err
			}
			rows = append(rows, row)
		}
	}
	return rows, nil
}

// scanned returns the numbers, issued or passed over, that a text is: as it
// stands, as the end of an address, or as figures of any series.
func scanned(all []Series, text string) []ref {
	text = strings.TrimSpace(text)
	texts, last := addressParts(text)
	texts = append(texts, text)
	var found []ref
	for _, one := range all {
		for _, t := range texts {
			forms := []string{t}
			if t == last && strings.Trim(t, "0123456789") == "" {
				forms = append(forms, one.Pattern.Code+one.Pattern.Separator+t)
			}
			for _, form := range forms {
				at, n, err := parse([]Series{one}, form)
				if err == nil && n <= at.Highest && !slices.Contains(found, ref{at.id, n}) {
					found = append(found, ref{at.id, n})
				}
			}
		}
	}
	return found
}

// identified returns the numbers with an occurrenceID.
func (s *session) identified(text string) ([]ref, error) {
	var found []ref
	err := s.each(func(scan func(...any) error) error {
		var at ref
		err := scan(&at.series, &at.n)
		found = append(found, at)
		return err
	}, "SELECT series, number FROM identities WHERE kind = '"+kindOccurrence+"' AND key = ?", indexKey(text))
	return found, err
}

// described returns the numbers whose specimens have all words of a text.
func (s *session) described(text string, limit int) ([]ref, error) {
	said := strings.Fields(text)
	// Figures leave few specimens to look at, and the database finds them
	// without handing over the others.
	where, args := "", []any{}
	for _, field := range said {
		for _, figures := range strings.FieldsFunc(field, func(r rune) bool { return r < '0' || r > '9' }) {
			where += " AND (record LIKE ? OR name LIKE ? OR part LIKE ? OR collector LIKE ?)"
			args = append(args, "%"+figures+"%", "%"+figures+"%", "%"+figures+"%", "%"+figures+"%")
		}
	}
	var found []ref
	err := s.each(func(scan func(...any) error) error {
		var at ref
		var k Specimen
		if err := scan(&at.series, &at.n, &k.Collector, &k.Number, &k.Part, &k.Name); err != nil {
			return err
		}
		if k.has(said) {
			found = append(found, at)
		}
		if len(found) == limit {
			return errStop
		}
		return nil
	}, "SELECT series, number, collector, record, part, name FROM specimens WHERE number > 0"+where+" ORDER BY series, number", args...)
	if errors.Is(err, errStop) {
		err = nil
	}
	return found, err
}

// has reports whether each field of a text is the specimen's number or has but
// beginnings of its words. Fields without a letter or figure do not count.
func (s Specimen) has(said []string) bool {
	number := joined(s.Number)
	var all []string
	asked := false
	if rest, ok := withoutNumber(said, number); ok && number != "" { // it may be written with spaces
		said, asked = rest, true
	}
	for _, field := range said {
		w := joined(field)
		if w == "" || slices.Contains(numberWords, w) {
			continue
		}
		asked = true
		if w == number {
			continue
		}
		if all == nil {
			all = words(s.Collector + " " + s.Name + " " + s.Part)
		}
		for _, part := range words(field) {
			if !slices.ContainsFunc(all, func(known string) bool { return strings.HasPrefix(known, part) }) {
				return false
			}
		}
	}
	return asked
}

// Sheets returns the places of the sheets that a text names as Scan reads it,
// and remembers nothing.
func (a *Attaching) Sheets(text string) []int { return a.find(text) }
