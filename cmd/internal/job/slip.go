package job

import (
	"errors"
	"fmt"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/layout"
	"cornerslip/layout/typeset"
)

// identifications returns the table whose rows make slips, and whether they
// are joined to the records of t: a table of its own that the request names,
// the one beside the core of an archive, or t itself.
func (t *Table) identifications(q *Request) (ids *Table, joined bool) {
	if q.Identifications != nil {
		return q.Identifications, true
	}
	if t.dataset != nil {
		if side := t.dataset.Side("Identification"); side != nil {
			return &Table{Table: side}, true
		}
	}
	return t, false
}

// CheckIdentifications says what is wrong with the identifications that come
// with a table, in one of their own or beside the core of an archive. Without
// any it has nothing to say.
func (j *Job) CheckIdentifications(t *Table, q Request, say func(label.Finding) error) (Summary, error) {
	if _, joined := t.identifications(&q); !joined {
		return Summary{}, nil
	}
	s, _, _, err := j.checkSlips(t, &q, say)
	return s, err
}

// checkSlips reads identifications and records and says what is wrong. It
// returns the slips of each record, and how many records have none. The
// identifications are kept in memory, the records that none speaks of are not.
func (j *Job) checkSlips(t *Table, q *Request, say func(label.Finding) error) (Summary, []slipSet, int, error) {
	c := &slipCheck{j: j, e: check.New(j.checkOptions()), q: q}
	if err := j.unknownRules(c.e); err != nil {
		return Summary{}, nil, 0, err
	}
	ids, joined := t.identifications(q)
	if err := c.read(ids); err != nil {
		return Summary{}, nil, 0, err
	}
	if joined {
		if err := c.join(t); err != nil {
			return Summary{}, nil, 0, err
		}
	}
	c.choose(t, joined)
	for _, id := range c.ids {
		if !joined && id.joinedBy() == "" {
			c.report(ruleSlipSheet, id, "catalogNumber", "",
				"the slip does not say which sheet it belongs to: fill in catalogNumber, or recordedBy and recordNumber")
		}
	}
	sets := c.sets()
	s, err := c.tell(ids, say)
	return s, sets, c.without, err
}

// choose keeps the identifications of the records that the user named.
func (c *slipCheck) choose(t *Table, joined bool) {
	kept := c.ids[:0]
	for _, id := range c.ids {
		r := id.Record
		if joined {
			r = id.sheet
		}
		if r == nil && t.Only.All() || r != nil && t.Only.Match(r) {
			kept = append(kept, id)
		}
	}
	c.ids = kept
}

// slipsAndSet is checkAndSet for slips: each is called with all slips of a
// record.
func (j *Job) slipsAndSet(t *Table, q *Request, say func(label.Finding) error, each func(*Summary, setRecord) error) (Summary, error) {
	s, sets, without, err := j.checkSlips(t, q, say)
	if err != nil {
		return s, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return s, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	if s.Errors > 0 && (!q.ExceptBad || len(s.Bad) == 0) {
		return s, ErrData
	}
	o, err := j.formOptions(q)
	if err != nil {
		return s, err
	}
	measures := j.measures(q)
	work := func(_ int, set slipSet) (setRecord, error) {
		var contents []label.Content
		for _, id := range set.ids {
			contents = append(contents, form.Slips(id.kind, id.Record, id.sheet, o)...)
		}
		return j.setContents(set.record, contents, measures)
	}
	in := func(yield func(slipSet, error) bool) {
		for i, set := range sets {
			sets[i] = slipSet{} // what is set is not kept
			if !yield(set, nil) {
				return
			}
		}
	}
	var faults []error // of all records: every one is to be named
	err = layout.InOrder(in, j.Workers, work, func(r setRecord, err error) error {
		var word *typeset.Error
		switch {
		case errors.As(err, &word):
			faults = append(faults, err)
			return nil
		case err != nil:
			return err
		case len(faults) > 0:
			return nil
		}
		return each(&s, r)
	})
	if err := errors.Join(append(faults, err)...); err != nil {
		return s, err
	}
	for range without {
		if err := each(&s, setRecord{}); err != nil {
			return s, err
		}
	}
	return s, nil
}

// ParseSlip reads a kind of slip as the command line names it.
func ParseSlip(text string) (*form.SlipKind, error) {
	if text == "" {
		return nil, nil
	}
	k, ok := form.ParseSlipKind(text)
	if !ok {
		return nil, fmt.Errorf("no slip is called %q; say determination, confirmation, revision, comment or type", text)
	}
	return &k, nil
}
