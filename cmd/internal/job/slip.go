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
	c, err := j.newSlipCheck(t, &q)
	if err != nil {
		return Summary{}, err
	}
	defer c.close()
	s, _, err := c.check(say)
	return s, err
}

// check reads identifications and records and says what is wrong. It returns
// the slips of each record.
func (c *slipCheck) check(say func(label.Finding) error) (Summary, []slipSet, error) {
	if c.records != nil && !c.only.All() {
		if err := c.choose(); err != nil {
			return Summary{}, nil, err
		}
	}
	if err := c.read(); err != nil {
		return Summary{}, nil, err
	}
	if c.records != nil {
		if err := c.join(); err != nil {
			return Summary{}, nil, err
		}
	}
	sets, err := c.sets()
	if err != nil {
		return Summary{}, nil, err
	}
	s, err := c.tell(say)
	return s, sets, err
}

// contents returns the slips of a set, and the record that they are of.
func (c *slipCheck) contents(set *slipSet, o form.Options) (setRecord, []label.Content, error) {
	whose, err := c.whose(set)
	if err != nil {
		return setRecord{}, nil, err
	}
	var sheet *check.Record
	if set.sheet >= 0 {
		sheet = whose
	}
	s := setRecord{record: whose, ids: map[int]*check.Record{}}
	var contents []label.Content
	for _, i := range set.ids {
		id, err := c.take(&c.ids[i])
		if err != nil {
			return s, nil, err
		}
		s.ids[id.Row] = id.Record
		contents = append(contents, form.Slips(id.kind, id.Record, sheet, o)...)
	}
	return s, contents, nil
}

// slipsAndSet is checkAndSet for slips: each is called with all slips of a
// record.
func (j *Job) slipsAndSet(t *Table, q *Request, say func(label.Finding) error, each func(*Summary, setRecord) error) (Summary, error) {
	c, err := j.newSlipCheck(t, q)
	if err != nil {
		return Summary{}, err
	}
	defer c.close()
	s, sets, err := c.check(say)
	if err != nil {
		return s, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return s, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	if s.fatal(q.ExceptBad) {
		return s, ErrData
	}
	if c.records != nil { // a row that stands alone does not say who shares its sheet
		if err := j.shareMounts(c.records, q); err != nil {
			return s, err
		}
	}
	o, err := j.formOptions(q)
	if err != nil {
		return s, err
	}
	measures := j.measures(q)
	work := func(_ int, set *slipSet) (setRecord, error) {
		s, contents, err := c.contents(set, o)
		if err != nil {
			return s, err
		}
		done, err := j.setContents(s.record, contents, measures)
		done.ids = s.ids
		return done, err
	}
	in := func(yield func(*slipSet, error) bool) {
		for i := range sets {
			if !yield(&sets[i], nil) {
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
	for range c.without {
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
