package register

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"iter"
	"time"

	"cornerslip/label"
)

// A Label is a printed label: the set box, as bytes that the register does not
// look into, and what it is found by.
type Label struct {
	Kind label.Kind
	Part string // "Sheet 1 of 2"
	For  string // code of the herbarium a duplicate goes to; "" is our own
	// Label says which of the Of labels of its record this is, from 1.
	Label, Of int

	CatalogNumber string // as printed; "" if none
	Collector     string // as printed; all of a team's names may be there
	Number        string // recordNumber
	Name          string // scientificName
	Date          string // when collected; tells one gathering from another

	Record []byte // digest of the record, to see whether it has changed since
	Cells  []byte // the record as the caller encodes it, to see what has
	Box    []byte // the encoded box
}

// String names the label as people do.
func (l Label) String() string {
	s := Specimen{Collector: l.Collector, Number: l.Number, Part: l.Part}.String()
	if l.CatalogNumber != "" {
		s = l.CatalogNumber + ", " + s
	}
	return s
}

// A Run is one printing.
type Run struct {
	Program string // name and version
	Source  string // the table, as the user named it
	House   string // text of the house file; "" if none
}

// A Recording keeps the labels of one printing. They count as printed, and can
// be found, only after Finish; until then nothing is promised of them. A
// Recording is for one goroutine.
type Recording struct {
	r       *Register
	at      At
	run     int64
	series  []Series
	phrases map[phrase]int64
	pending []Label
	weight  int
	printed map[int64][]int // numbers of ours, by series
	count   int
	ended   bool // takes no more labels
	over    bool // finished or abandoned
}

// Record begins to keep a printing.
func (r *Register) Record(ctx context.Context, at At, run Run) (*Recording, error) {
	rec := &Recording{r: r, at: at, phrases: map[phrase]int64{}, printed: map[int64][]int{}}
	err := r.write(ctx, at, func(c *change) error {
		var err error
		if rec.series, err = c.series(); err != nil {
			return err
		}
		var house any
		if run.House != "" {
			digest := sha256.Sum256([]byte(run.House))
			house = digest[:]
			if err := c.exec("INSERT INTO houses (digest, text) VALUES (?, ?) ON CONFLICT (digest) DO NOTHING", house, run.House); err != nil {
				return err
			}
		}
		if rec.run, err = c.id("runs"); err != nil {
			return err
		}
		return c.insert("runs", "id, at, who, program, source, house, done", [][]any{{rec.run, at.stamp(), at.By, run.Program, run.Source, house, 0}})
	})
	if err != nil {
		return nil, err
	}
	return rec, nil
}

// Labels wait for each other, so that many are written at once.
const (
	recordBatch  = 1024
	recordWeight = 8 << 20 // bytes
)

// Add keeps a label. Its bytes must not be changed afterwards. A number of one
// of the register's series must have been issued and not be void; a number of
// no series is kept as it is.
//
// Labels are written in batches: an error may be of a label added before.
// After an error the recording can only be abandoned.
func (rec *Recording) Add(ctx context.Context, l Label) error {
	if rec.ended {
		return errors.New("the recording has ended")
	}
	rec.pending = append(rec.pending, l)
	rec.weight += len(l.Box) + len(l.Cells)
	if len(rec.pending) < recordBatch && rec.weight < recordWeight {
		return nil
	}
	return rec.flush(ctx)
}

func (rec *Recording) flush(ctx context.Context) error {
	if len(rec.pending) == 0 {
		return nil
	}
	err := rec.r.write(ctx, rec.at, func(c *change) error { return c.keep(rec) })
	if err != nil {
		rec.ended = true
		return err
	}
	rec.count += len(rec.pending)
	clear(rec.pending)
	rec.pending, rec.weight = rec.pending[:0], 0
	return nil
}

// keep writes the pending labels.
func (c *change) keep(rec *Recording) error {
	numbers, err := c.ours(rec)
	if err != nil {
		return err
	}
	if err := c.keepPhrases(rec); err != nil {
		return err
	}
	rows, boxes := make([][]any, 0, len(rec.pending)), make([][]any, 0, len(rec.pending))
	for i, l := range rec.pending {
		id, err := c.id("labels")
		if err != nil {
			return err
		}
		var collector, name, series, number any
		if l.Collector != "" {
			collector = rec.phrases[phrase{roleCollector, l.Collector}]
		}
		if l.Name != "" {
			name = rec.phrases[phrase{roleName, l.Name}]
		}
		if at := numbers[i]; at.n > 0 {
			series, number = at.series, at.n
		}
		rows = append(rows, []any{id, rec.run, string(l.Kind), l.Part, l.For, l.Label, l.Of, l.CatalogNumber, catalogKey(l.CatalogNumber),
			l.Number, recordKey(l.Number), l.Date, collector, name, series, number, notNil(l.Record)})
		boxes = append(boxes, []any{id, notNil(l.Box), notNil(l.Cells)})
	}
	if err := c.insert("labels", `id, run, kind, part, recipient, label, of, catalog, catalog_key,
		record, record_key, date, collector, name, series, number, digest`, rows); err != nil {
		return err
	}
	return c.insert("boxes", "label, box, cells", boxes)
}

// notNil makes an absent value an empty one; NULL is something else.
func notNil(b []byte) []byte {
	if b == nil {
		return []byte{}
	}
	return b
}

// recordKey is how a collector's number is looked up; "s.n." is none.
func recordKey(number string) string {
	if !numbered(number) {
		return ""
	}
	return joined(number)
}

// ours finds the numbers of the register among the pending labels', and makes
// sure that they may be printed.
func (c *change) ours(rec *Recording) ([]ref, error) {
	at := make([]ref, len(rec.pending))
	ask := map[int64][]int{}
	byID := map[int64]Series{}
	for i, l := range rec.pending {
		if l.CatalogNumber == "" || l.For != "" {
			continue // a duplicate never bears a number of ours
		}
		s, n, err := parse(rec.series, l.CatalogNumber)
		switch {
		case errors.Is(err, ErrForeign):
			continue
		case err != nil:
			return nil, fmt.Errorf("%s: %w", l, err)
		}
		at[i], byID[s.id] = ref{s.id, n}, s
		ask[s.id] = append(ask[s.id], n)
	}
	for id, numbers := range ask {
		s := byID[id]
		if err := c.one([]any{&s.Highest}, "SELECT highest FROM series WHERE id = ?", id); err != nil {
			return nil, err
		}
		states, err := c.statesOf(id, numbers)
		if err != nil {
			return nil, err
		}
		for i, l := range rec.pending {
			if at[i].series != id {
				continue
			}
			if at[i].n > s.Highest {
				return nil, faultf(ErrNotIssued, "%s: the number was never issued by this register; if it is in use, import it first", l)
			}
			if states[at[i].n] == Void {
				return nil, faultf(ErrVoid, "%s: the number is void; give the specimen another", l)
			}
		}
		rec.printed[id] = append(rec.printed[id], numbers...)
	}
	return at, nil
}

// Finish writes what is left and makes the labels count as printed; numbers
// that were issued become printed. It returns how many labels were kept. Call
// it before the printed file is given its name: a label that is kept and not
// printed does no harm, one that is printed and not kept cannot be reprinted.
func (rec *Recording) Finish(ctx context.Context) (int, error) {
	if rec.ended {
		return 0, errors.New("the recording has ended")
	}
	if err := rec.flush(ctx); err != nil {
		return 0, err
	}
	err := rec.r.write(ctx, rec.at, func(c *change) error {
		for _, s := range rec.series {
			for _, run := range stretches(rec.printed[s.id]) {
				if err := c.printed(s, run[0], run[1]); err != nil {
					return err
				}
			}
		}
		return c.exec("UPDATE runs SET done = 1 WHERE id = ?", rec.run)
	})
	if err != nil {
		return 0, err
	}
	rec.ended, rec.over = true, true
	return rec.count, nil
}

// printed marks as printed those numbers of a stretch whose state that changes.
func (c *change) printed(s Series, first, last int) error {
	var become []int
	states := make(map[int]State)
	err := c.each(func(scan func(...any) error) error {
		var n int
		var state State
		err := scan(&n, &state)
		states[n] = state
		return err
	}, "SELECT number, state FROM numbers WHERE series = ? AND number BETWEEN ? AND ?", s.id, first, last)
	if err != nil {
		return err
	}
	for n := first; n <= last; n++ {
		switch state, known := states[n]; {
		case state == Void: // made void since it was added
			return faultf(ErrVoid, "%s: the number is void; give the specimen another", s.Pattern.Format(n))
		case !known || state == Issued:
			become = append(become, n)
		}
	}
	for _, run := range stretches(become) {
		id, err := c.event(event{what: Printed.event(), series: s.id, first: run[0], last: run[1], state: Printed})
		if err != nil {
			return err
		}
		if err := c.setRange(s.id, run[0], run[1], Printed, id); err != nil {
			return err
		}
	}
	return nil
}

// Abandon forgets the labels that were added: the printing came to nothing.
// Numbers stay issued. After Finish it does nothing, so it can be deferred.
func (rec *Recording) Abandon(ctx context.Context) error {
	if rec.over {
		return nil // its place in the register may be another's by now
	}
	err := rec.r.write(ctx, rec.at, func(c *change) error {
		var done int
		switch err := c.one([]any{&done}, "SELECT done FROM runs WHERE id = ?", rec.run); {
		case errors.Is(err, sql.ErrNoRows) || err == nil && done == 1:
			return nil
		case err != nil:
			return err
		}
		for _, query := range []string{
			"DELETE FROM boxes WHERE label IN (SELECT id FROM labels WHERE run = ?)",
			"DELETE FROM labels WHERE run = ?",
			"DELETE FROM runs WHERE id = ?",
		} {
			if err := c.exec(query, rec.run); err != nil {
				return err
			}
		}
		return nil
	})
	if err == nil {
		rec.ended, rec.over = true, true
	}
	return err
}

// Remember keeps a whole printing: Record, Add for each label, Finish. If the
// sequence or the register ends with an error the labels are forgotten.
func (r *Register) Remember(ctx context.Context, at At, run Run, labels iter.Seq2[Label, error]) (int, error) {
	rec, err := r.Record(ctx, at, run)
	if err != nil {
		return 0, err
	}
	fail := func(err error) (int, error) {
		return 0, errors.Join(err, rec.Abandon(context.WithoutCancel(ctx)))
	}
	for l, err := range labels {
		if err == nil {
			err = rec.Add(ctx, l)
		}
		if err != nil {
			return fail(err)
		}
	}
	n, err := rec.Finish(ctx)
	if err != nil {
		return fail(err)
	}
	return n, nil
}

// A Kept is a label that was printed.
type Kept struct {
	ID int
	Label
	When      time.Time
	By        string
	Run       Run // Find leaves the house file out
	Reprinted int // how many times since
}

// Load returns a label with its box.
func (r *Register) Load(ctx context.Context, id int) (Kept, error) {
	s := r.read(ctx)
	all, err := s.kept([]int{id})
	switch {
	case err != nil:
		return Kept{}, r.wrap(err)
	case len(all) == 0:
		return Kept{}, faultf(ErrNoLabel, "the register has no printed label %d", id)
	}
	k := all[0]
	var house sql.NullString
	err = s.one([]any{&k.Box, &k.Cells, &house}, `SELECT b.box, b.cells, h.text FROM boxes b JOIN labels l ON l.id = b.label
		JOIN runs r ON r.id = l.run LEFT JOIN houses h ON h.digest = r.house WHERE b.label = ?`, id)
	k.Run.House = house.String
	return k, r.wrap(err)
}

// kept returns the labels of printings that were finished, in the order of
// ids.
func (s *session) kept(ids []int) ([]Kept, error) {
	byID := map[int]Kept{}
	err := chunks(ids, func(part []int) error {
		return s.each(func(scan func(...any) error) error {
			var k Kept
			var at string
			var collector, name sql.NullString
			if err := scan(&k.ID, &k.Kind, &k.Part, &k.For, &k.Label.Label, &k.Of, &k.CatalogNumber, &collector, &k.Number, &name, &k.Date, &k.Record,
				&at, &k.By, &k.Run.Program, &k.Run.Source, &k.Reprinted); err != nil {
				return err
			}
			k.Collector, k.Name = collector.String, name.String
			var err error
			k.When, err = parseStamp(at)
			byID[k.ID] = k
			return err
		}, `SELECT l.id, l.kind, l.part, l.recipient, l.label, l.of, l.catalog, c.text, l.record, n.text, l.date, l.digest,
			r.at, r.who, r.program, r.source, (SELECT COUNT(*) FROM events e WHERE e.label = l.id)
			FROM labels l JOIN runs r ON r.id = l.run LEFT JOIN phrases c ON c.id = l.collector LEFT JOIN phrases n ON n.id = l.name
			WHERE r.done = 1 AND l.id IN (`+integers(part)+`)`)
	})
	list := make([]Kept, 0, len(byID))
	for _, id := range ids {
		if k, ok := byID[id]; ok {
			list = append(list, k)
		}
	}
	return list, err
}

// Reprinted notes that a label was printed again. At must say why.
func (r *Register) Reprinted(ctx context.Context, at At, id int) error {
	if err := at.needsWhy("a reprint"); err != nil {
		return err
	}
	return r.write(ctx, at, func(c *change) error {
		var series, number sql.NullInt64
		err := c.one([]any{&series, &number}, "SELECT l.series, l.number FROM labels l JOIN runs r ON r.id = l.run WHERE r.done = 1 AND l.id = ?", id)
		if errors.Is(err, sql.ErrNoRows) {
			return faultf(ErrNoLabel, "the register has no printed label %d", id)
		}
		if err != nil {
			return err
		}
		n := int(number.Int64)
		_, err = c.event(event{what: Again, series: series.Int64, first: n, last: n, label: id})
		return err
	})
}
