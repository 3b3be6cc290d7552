package register

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"maps"
	"slices"

	"cornerslip/label"
)

// Known is what the register knows of a specimen that is about to be printed.
type Known struct {
	// State is that of its number; "" where it has none of the register's.
	State State
	// Err says why its number may not be printed: it was never issued
	// (ErrNotIssued), is void (ErrVoid) or another specimen's (ErrClash), or it
	// cannot be read.
	Err error
	// Earlier are the labels of it that were printed, the oldest first, without
	// their boxes.
	Earlier []Kept
	// Loose says that the specimen has nothing to be known by, neither a
	// catalogue number nor a collector's: Earlier are labels of the same name,
	// and only one of an equal record is surely of it.
	Loose bool
}

// Known looks up specimens that are about to be printed, all at once. A label
// printed earlier is of the same specimen where both have the same catalogue
// number or, where one has none, the same collector and number and no other
// date. Labels of one record go together: where one is of the specimen, so are
// the others, though a duplicate's does not bear our number.
func (r *Register) Known(ctx context.Context, specimens []Specimen) ([]Known, error) {
	s := r.read(ctx)
	known := make([]Known, len(specimens))
	if err := s.mayPrint(specimens, known); err != nil {
		return nil, r.wrap(err)
	}
	if err := s.earlier(specimens, known); err != nil {
		return nil, r.wrap(err)
	}
	return known, nil
}

// mayPrint fills in the states of the specimens' numbers.
func (s *session) mayPrint(specimens []Specimen, known []Known) error {
	all, err := s.series()
	if err != nil {
		return err
	}
	ours := make([]ref, len(specimens))
	numbers := map[int64][]int{}
	for i, sp := range specimens {
		if sp.CatalogNumber == "" {
			continue
		}
		one, n, err := parse(all, sp.CatalogNumber)
		switch {
		case errors.Is(err, ErrForeign):
		case err != nil:
			known[i].Err = fmt.Errorf("%s%w", sp.lead(), err)
		case n > one.Highest:
			known[i].Err = faultf(ErrNotIssued, "%s%s was never issued by this register; if it is in use, import it, else empty the cell to be given a number", sp.lead(), sp.CatalogNumber)
		default:
			ours[i] = ref{one.id, n}
			numbers[one.id] = append(numbers[one.id], n)
		}
	}
	states := map[ref]State{}
	for id, list := range numbers {
		got, err := s.statesOf(id, list)
		if err != nil {
			return err
		}
		for n, state := range got {
			states[ref{id, n}] = state
		}
	}
	held, err := s.heldFor(numbers)
	if err != nil {
		return err
	}
	for i, sp := range specimens {
		if ours[i].n == 0 {
			continue
		}
		known[i].State = Unknown
		if state, ok := states[ours[i]]; ok {
			known[i].State = state
		}
		h := held[ours[i]]
		switch {
		case known[i].State == Void:
			advice := "empty the cell to be given another number"
			if sp.lead() == "" {
				advice = "leave it out"
			}
			known[i].Err = faultf(ErrVoid, "%s%s is void; %s", sp.lead(), sp.CatalogNumber, advice)
		case h != nil && !h.holds(sp):
			known[i].Err = faultf(ErrClash, "%s: the register has %s for %s; one of the two is wrong", sp.at(), sp.CatalogNumber, h.known)
		}
	}
	return nil
}

// lead says of which specimen a message is; a bare number speaks for itself.
func (s Specimen) lead() string {
	if s.blank() && s.Origin == (label.Origin{}) {
		return ""
	}
	return s.at() + ": "
}

// heldFor returns what is known of the specimens that have the numbers.
func (s *session) heldFor(numbers map[int64][]int) (map[ref]*holder, error) {
	held := map[ref]*holder{}
	at := func(series int64, n int) *holder {
		h := held[ref{series, n}]
		if h == nil {
			h = &holder{occurrence: map[string]bool{}, gathering: map[string]string{}}
			held[ref{series, n}] = h
		}
		return h
	}
	for series, list := range numbers {
		err := chunks(list, func(part []int) error {
			in := integers(part)
			err := s.each(func(scan func(...any) error) error {
				var n int
				var kind, key, date string
				if err := scan(&n, &kind, &key, &date); err != nil {
					return err
				}
				if kind == kindOccurrence {
					at(series, n).occurrence[key] = true
				} else {
					at(series, n).gathering[key] = date
				}
				return nil
			}, "SELECT number, kind, key, date FROM identities WHERE series = ? AND number IN ("+in+")", series)
			if err != nil {
				return err
			}
			return s.each(func(scan func(...any) error) error {
				var n int
				var k Specimen
				if err := scan(&n, &k.Collector, &k.Number, &k.Part, &k.Date); err != nil {
					return err
				}
				h := at(series, n)
				h.known, h.described = k, true
				return nil
			}, "SELECT number, collector, record, part, date FROM specimens WHERE series = ? AND number IN ("+in+")", series)
		})
		if err != nil {
			return nil, err
		}
	}
	return held, nil
}

// holds reports whether nothing speaks against the number being this
// specimen's. Names and places are corrected, and parts are written in many
// ways: only another identifier, collector or number says that it is another.
func (h *holder) holds(sp Specimen) bool {
	if sp.OccurrenceID != "" && len(h.occurrence) > 0 {
		return h.occurrence[indexKey(sp.OccurrenceID)]
	}
	sp.Part = ""
	key, ok := gatheringKey(sp)
	if !ok || !h.described {
		return true
	}
	k := h.known
	k.Part = ""
	mine, ok := gatheringKey(k)
	return !ok || mine == key
}

// earlier fills in the labels that were printed of the specimens.
func (s *session) earlier(specimens []Specimen, known []Known) error {
	byCatalog, byRecord, byName := map[string][]int{}, map[string][]int{}, map[string][]int{}
	for i, sp := range specimens {
		catalog, record := catalogKey(sp.CatalogNumber), recordKey(sp.Number)
		if catalog != "" {
			byCatalog[catalog] = append(byCatalog[catalog], i)
		}
		if record != "" {
			byRecord[record] = append(byRecord[record], i)
		}
		if catalog == "" && record == "" && sp.Name != "" {
			known[i].Loose = true
			byName[sp.Name] = append(byName[sp.Name], i)
		}
	}
	var ids []int
	for _, look := range []struct {
		where string
		keys  []string
	}{
		{"catalog_key IN (%s) AND catalog_key <> ''", slices.Collect(maps.Keys(byCatalog))},
		{"name IN (SELECT id FROM phrases WHERE role = 'name' AND key IN (%s)) AND record_key = '' AND catalog_key = ''", indexKeys(maps.Keys(byName))},
	} {
		err := chunks(look.keys, func(part []string) error {
			in, args := marks(part)
			return s.each(func(scan func(...any) error) error {
				ids = append(ids, 0)
				return scan(&ids[len(ids)-1])
			}, "SELECT id FROM labels WHERE "+fmt.Sprintf(look.where, in), args...)
		})
		if err != nil {
			return err
		}
	}
	more, err := s.sameNumber(specimens, byRecord, ids)
	if err != nil {
		return err
	}
	ids = append(ids, more...)
	slices.Sort(ids)
	printed, err := s.kept(slices.Compact(ids))
	if err != nil {
		return err
	}
	candidates := make([][]Kept, len(specimens))
	numbered := map[string]string{} // digest of a record to its catalogue number
	for _, k := range printed {
		if key := catalogKey(k.CatalogNumber); key != "" {
			numbered[string(k.Record)] = key
		}
		of := slices.Concat(byCatalog[catalogKey(k.CatalogNumber)], byRecord[recordKey(k.Number)])
		if k.CatalogNumber == "" && recordKey(k.Number) == "" {
			of = byName[k.Name]
		}
		slices.Sort(of)
		for _, i := range slices.Compact(of) {
			candidates[i] = append(candidates[i], k)
		}
	}
	for i, list := range candidates {
		catalog := catalogKey(specimens[i].CatalogNumber)
		for _, k := range list {
			of := catalogKey(k.CatalogNumber)
			if of == "" {
				of = numbered[string(k.Record)]
			}
			switch {
			case known[i].Loose:
			case catalog != "" && of != "":
				if catalog != of {
					continue
				}
			case !k.Shows(specimens[i]):
				continue
			}
			known[i].Earlier = append(known[i].Earlier, k)
		}
	}
	return nil
}

func indexKeys(texts iter.Seq[string]) []string {
	var keys []string
	for text := range texts {
		keys = append(keys, indexKey(text))
	}
	return keys
}

// sameNumber returns the labels that have a number of the specimens' and a
// collector of theirs, or one of the labels by: every collector has a number 7,
// and only few of those labels are to be read.
func (s *session) sameNumber(specimens []Specimen, byRecord map[string][]int, by []int) ([]int, error) {
	type at struct {
		id        int
		key       string
		collector int64
	}
	var all []at
	wanted := map[int64]bool{} // collectors of the labels by
	err := chunks(by, func(part []int) error {
		return s.each(func(scan func(...any) error) error {
			var id int64
			err := scan(&id)
			wanted[id] = true
			return err
		}, "SELECT DISTINCT COALESCE(collector, 0) FROM labels WHERE id IN ("+integers(part)+")")
	})
	if err != nil {
		return nil, err
	}
	teams := map[int64][]string{}
	err = chunks(slices.Collect(maps.Keys(byRecord)), func(part []string) error {
		in, args := marks(part)
		return s.each(func(scan func(...any) error) error {
			var one at
			err := scan(&one.id, &one.key, &one.collector)
			all = append(all, one)
			teams[one.collector] = nil
			return err
		}, "SELECT id, record_key, COALESCE(collector, 0) FROM labels WHERE record_key IN ("+in+") AND record_key <> ''", args...)
	})
	if err != nil {
		return nil, err
	}
	err = chunks(slices.Collect(maps.Keys(teams)), func(part []int64) error {
		return s.each(func(scan func(...any) error) error {
			var id int64
			var text string
			err := scan(&id, &text)
			teams[id] = words(text)
			return err
		}, "SELECT id, text FROM phrases WHERE id IN ("+integers(part)+")")
	})
	if err != nil {
		return nil, err
	}
	collectors := make([][]string, len(specimens))
	for i, sp := range specimens {
		collectors[i] = words(sp.Collector)
	}
	var ids []int
	for _, one := range all {
		if wanted[one.collector] || slices.ContainsFunc(byRecord[one.key], func(i int) bool {
			return len(collectors[i]) > 0 && containsAll(teams[one.collector], collectors[i])
		}) {
			ids = append(ids, one.id)
		}
	}
	return ids, nil
}

// Shows reports whether a printed label is of the specimen, as Known tells it.
func (k *Kept) Shows(sp Specimen) bool {
	a, b := catalogKey(k.CatalogNumber), catalogKey(sp.CatalogNumber)
	if a != "" && b != "" {
		return a == b
	}
	if !agree(k.Date, sp.Date) || recordKey(sp.Number) == "" || recordKey(k.Number) != recordKey(sp.Number) {
		return false
	}
	if _, ok := gatheringKey(sp); !ok {
		return false
	}
	team := words(k.Collector) // as printed: others may be named too
	for _, w := range words(sp.Collector) {
		if !slices.Contains(team, w) {
			return false
		}
	}
	return true
}
