package register

import (
	"context"
	"fmt"
	"iter"
	"slices"
	"strings"
)

// An Old is an entry of an old catalogue: CatalogNumber is its number.
type Old struct {
	Specimen
	State State // "" is Attached
}

// ImportOptions say how an old catalogue is taken over.
type ImportOptions struct {
	// Series is the name of the series the numbers are of; "" finds it by
	// the number.
	Series string
	// Highest is the highest number that the catalogue can hold. A number
	// beyond is reported as a clash, for a figure too many in one entry
	// would let the series go on from there. 0 sets no limit.
	Highest int
}

// A Clash is an entry that was not imported, and why.
type Clash struct {
	Old Old
	Err error // ErrClash, ErrForeign, ErrState or a number that cannot be read
}

// An ImportCount counts what an import did.
type ImportCount struct {
	New     int // entries taken over
	Same    int // entries that the register had already, with the same words
	Clashes int
}

const importBatch = 2000

// Import takes over the numbers of an old catalogue, in any order, and
// whatever the entry says of the specimen. Nothing that the register has is
// overwritten: an entry that does not agree with it is handed to clash, which
// may end the import with an error. Numbers that the catalogue leaves out,
// below its highest, become Unknown.
//
// Entries are written in batches of some thousand, each safe on the disk; an
// import that was broken off can be run again.
func (r *Register) Import(ctx context.Context, at At, o ImportOptions, entries iter.Seq2[Old, error], clash func(Clash) error) (ImportCount, error) {
	var done ImportCount
	batch := make([]Old, 0, importBatch)
	flush := func() error {
		var add ImportCount
		var clashes []Clash
		err := r.write(ctx, at, func(c *change) error {
			var err error
			add, clashes, err = c.importBatch(o, batch)
			return err
		})
		if err != nil {
			return err
		}
		batch = batch[:0]
		done.New, done.Same, done.Clashes = done.New+add.New, done.Same+add.Same, done.Clashes+add.Clashes
		for _, one := range clashes {
			if err := clash(one); err != nil {
				return err
			}
		}
		return nil
	}
	for old, err := range entries {
		if err != nil {
			return done, err
		}
		if batch = append(batch, old); len(batch) == importBatch {
			if err := flush(); err != nil {
				return done, err
			}
		}
	}
	return done, flush()
}

// importer works on one batch.
type importer struct {
	*matcher
	o     ImportOptions
	fresh map[ref]State // taken over by this batch
}

func (c *change) importBatch(o ImportOptions, batch []Old) (ImportCount, []Clash, error) {
	var count ImportCount
	var clashes []Clash
	im, err := c.newImporter(o, batch)
	if err != nil {
		return count, nil, err
	}
	for i, old := range batch {
		if old.State == "" {
			old.State = Attached
		}
		isNew := false
		err := im.answers[i].Err
		if err == nil {
			isNew, err = im.take1(i, old)
		}
		switch {
		case err != nil:
			count.Clashes++
			clashes = append(clashes, Clash{batch[i], err})
		case isNew:
			count.New++
		default:
			count.Same++
		}
	}
	if err := c.keepImported(im); err != nil {
		return count, nil, err
	}
	return count, clashes, c.learn(im.matcher)
}

func (c *change) newImporter(o ImportOptions, batch []Old) (*importer, error) {
	m := &matcher{answers: make([]Assignment, len(batch)), of: make([]*holder, len(batch)),
		holders: map[ref]*holder{}, byID: map[string]*holder{}, byKey: map[string][]*holder{}}
	im := &importer{matcher: m, o: o, fresh: map[ref]State{}}
	var err error
	if m.all, err = c.series(); err != nil {
		return nil, err
	}
	among := m.all
	if o.Series != "" {
		one, err := c.seriesNamed(o.Series)
		if err != nil {
			return nil, err
		}
		among = []Series{one}
	}
	var ids []string
	for i, old := range batch {
		m.specimens = append(m.specimens, old.Specimen)
		s, n, err := parse(among, old.CatalogNumber)
		switch {
		case err != nil:
			m.answers[i].Err = fmt.Errorf("%s: %w", old.at(), err)
		case o.Highest > 0 && n > o.Highest:
			m.answers[i].Err = faultf(ErrClash, "%s: %s is beyond the catalogue's highest number %s", old.at(), old.CatalogNumber, s.Pattern.Format(min(o.Highest, s.Pattern.Max())))
		default:
			m.of[i] = m.holder(ref{s.id, n})
			m.answers[i].Number = s.Pattern.Format(n)
		}
		if old.OccurrenceID != "" {
			ids = append(ids, indexKey(old.OccurrenceID))
		}
	}
	if err := c.find(m, kindOccurrence, ids); err != nil {
		return nil, err
	}
	return im, c.load(m)
}

// take1 takes over entry i, or says why not.
func (im *importer) take1(i int, old Old) (isNew bool, err error) {
	h, number := im.of[i], im.answers[i].Number
	if !slices.Contains(States(), old.State) || old.State == Unknown {
		return false, faultf(ErrState, "%s: %q is no state that a number can be imported in", old.at(), old.State)
	}
	if old.OccurrenceID != "" {
		if other := im.byID[indexKey(old.OccurrenceID)]; other != nil && other != h {
			return false, faultf(ErrClash, "%s: its occurrenceID belongs to %s already", old.at(), im.name(other))
		}
	}
	if h.state != Unknown {
		switch {
		case !h.same(old.Specimen) || !h.sameDate(old.Specimen):
			return false, faultf(ErrClash, "%s: the register has %s for %s", old.at(), number, h)
		case h.state != old.State:
			return false, faultf(ErrState, "%s: %s is %s in the register and %s here", old.at(), number, h.state, old.State)
		}
		return false, nil
	}
	h.state, im.fresh[h.ref] = old.State, old.State
	if old.Specimen.blank() {
		return true, nil
	}
	im.matcher.take(i, old.Specimen, h)
	return true, nil
}

// blank reports whether nothing but a number is known.
func (s Specimen) blank() bool {
	return s.OccurrenceID+s.Collector+s.Number+s.Part+s.Date+s.Name == ""
}

// same reports whether what the register knows of a number is this specimen.
func (h *holder) same(s Specimen) bool {
	if !h.described || s.blank() {
		return !h.described && s.blank()
	}
	if s.OccurrenceID != "" && len(h.occurrence) > 0 {
		return h.occurrence[indexKey(s.OccurrenceID)]
	}
	if key, ok := gatheringKey(s); ok || len(h.gathering) > 0 {
		_, has := h.gathering[key]
		return has
	}
	k := h.known // neither has anything to be told apart by
	return fold(k.Collector+"|"+k.Number+"|"+k.Part+"|"+k.Date) == fold(s.Collector+"|"+s.Number+"|"+s.Part+"|"+s.Date)
}

// sameDate reports whether the dates of a gathering agree where both are known.
func (h *holder) sameDate(s Specimen) bool {
	key, _ := gatheringKey(s)
	return agree(h.gathering[key], s.Date)
}

// String says whose number it is, in the register's words.
func (h *holder) String() string {
	if !h.described {
		return "no specimen that it knows (" + string(h.state) + ")"
	}
	text := h.known.String()
	if h.known.Date != "" {
		text += " of " + h.known.Date
	}
	return strings.TrimSpace(text) + " (" + string(h.state) + ")"
}

// keepImported writes the new numbers, and the gaps below them.
func (c *change) keepImported(im *importer) error {
	for _, s := range im.all {
		byState := map[State][]int{}
		var above []int
		for at, state := range im.fresh {
			if at.series != s.id {
				continue
			}
			byState[state] = append(byState[state], at.n)
			if at.n > s.Highest {
				above = append(above, at.n)
			}
		}
		// None of them has a row yet, so many are written at once.
		var events, passed, numbers [][]any
		note := func(what What, first, last int, state State) (int64, error) {
			id, err := c.id("events")
			events = append(events, c.row(id, event{what: what, series: s.id, first: first, last: last, state: state}))
			return id, err
		}
		highest := s.Highest
		for _, run := range stretches(above) {
			if highest < run[0]-1 {
				id, err := note(PassedOver, highest+1, run[0]-1, Unknown)
				if err != nil {
					return err
				}
				passed = append(passed, []any{s.id, highest + 1, run[0] - 1, id})
			}
			highest = run[1]
		}
		for _, state := range States() {
			for _, run := range stretches(byState[state]) {
				id, err := note(TakenOver, run[0], run[1], state)
				if err != nil {
					return err
				}
				for n := run[0]; n <= run[1]; n++ {
					numbers = append(numbers, []any{s.id, n, string(state), id})
				}
			}
		}
		if highest > s.Highest {
			if err := c.raise(&s, highest); err != nil {
				return err
			}
		}
		for _, of := range []struct {
			table, columns string
			rows           [][]any
		}{{"events", eventInsert, events}, {"passed", "series, first, last, event", passed}, {"numbers", "series, number, state, event", numbers}} {
			if err := c.insert(of.table, of.columns, of.rows); err != nil {
				return err
			}
		}
	}
	return nil
}
