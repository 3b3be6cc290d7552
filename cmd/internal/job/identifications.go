package job

import (
	"fmt"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/table"
	"cornerslip/layout"
)

// An identification is a row of a table of identifications in the hands of
// someone who looks at it: what one slip, or the slips of all sheets of a
// specimen, will say.
type identification struct {
	*check.Record
	kind form.SlipKind
	// findings wait until it is known whether the record was chosen.
	findings []label.Finding
	bad      bool
}

// A kept identification is what stays in memory of one: what decides its
// place among the slips. Its row lies in a file.
type keptIdentification struct {
	at       int // its row in the file
	kind     form.SlipKind
	bad      bool
	findings []label.Finding
	day      int32  // the first of its date, 20270314; 0 without one
	says     uint64 // a digest of all that its slip says
	sheet    int    // whose it is, of the records kept; -1 where the row says all itself
	own      string // where sheet is -1: what rows of one specimen have in common
	row      int    // of the table of identifications
	// exact are the records found, the first few; loose those of which the
	// collector's last name alone fits.
	exact, loose []int32
}

// A keptRecord is what stays in memory of a record that identifications name.
type keptRecord struct {
	row, line int
	chosen    bool
}

// slipCheck is one check of a table of identifications against its records.
// Rows that are needed again lie in files.
type slipCheck struct {
	j       *Job
	e       *check.Engine
	again   *check.Engine // reads rows that were checked
	q       *Request
	table   *Table // the identifications
	records *Table // nil where each identification stands alone
	only    *Selection

	ids   []keptIdentification
	rows  *chunks
	keys  []keys // of ids, until they are joined
	near  map[int]string
	found []keptRecord
	sheet *chunks // rows of found

	wanted *wanted // keys of the chosen records; nil where all are
	// none are the chosen records that no identification speaks of, without
	// how many they are: only the first are kept to be named.
	none    []label.Origin
	without int
}

// namedNone is how many records without an identification are named.
const namedNone = 10000

func (j *Job) newSlipCheck(t *Table, q *Request) (*slipCheck, error) {
	c := &slipCheck{j: j, e: check.New(j.checkOptions()), again: check.New(j.readOptions()), q: q, only: t.Only}
	if err := j.unknownRules(c.e); err != nil {
		return nil, err
	}
	var joined bool
	if c.table, joined = t.identifications(q); joined {
		c.records = t
	}
	var err error
	if c.rows, err = newChunks(); err != nil {
		return nil, err
	}
	if c.sheet, err = newChunks(); err != nil {
		c.rows.close()
		return nil, err
	}
	return c, nil
}

func (c *slipCheck) close() {
	c.rows.close()
	c.sheet.close()
}

// row reads a row that was kept.
func (c *slipCheck) row(t *Table, kept *chunks, i int) (*check.Record, error) {
	b, err := kept.get(i)
	if err != nil {
		return nil, err
	}
	row, err := t.Restore(b)
	if err != nil {
		return nil, err
	}
	defer row.Release()
	r, _ := c.again.Row(row)
	return r, nil
}

// take returns an identification to look at.
func (c *slipCheck) take(id *keptIdentification) (*identification, error) {
	r, err := c.row(c.table, c.rows, id.at)
	return &identification{Record: r, kind: id.kind}, err
}

// record returns a record that identifications name.
func (c *slipCheck) record(i int) (*check.Record, error) { return c.row(c.records, c.sheet, i) }

// give puts back what was found.
func (id *keptIdentification) give(findings []label.Finding) {
	for _, f := range findings {
		// Texts of cells would keep their whole row in memory.
		f.Value, f.Suggest = strings.Clone(f.Value), strings.Clone(f.Suggest)
		id.findings = append(id.findings, f)
		id.bad = id.bad || f.Severity == label.Error
	}
}

// finding makes a finding of a cell of r; of r itself where the cell is empty.
// It is false where the house wants to hear nothing of it.
func (c *slipCheck) finding(rule string, r *check.Record, term, suggest, format string, args ...any) (label.Finding, bool) {
	f := label.Finding{Origin: r.Origin, Rule: rule, Message: fmt.Sprintf(format, args...), Suggest: suggest}
	f.Term = term
	if cell := r.Field(term); cell.Text != "" {
		f.Origin, f.Value = cell.Origin, cell.Text
	}
	for _, known := range slipRules {
		if known.Name == rule {
			f.Severity = known.Severity
		}
	}
	return c.e.Adjust(f)
}

// report says something of an identification; an error makes it unfit to
// print.
func (c *slipCheck) report(rule string, id *identification, term, suggest, format string, args ...any) {
	if f, ok := c.finding(rule, id.Record, term, suggest, format, args...); ok {
		id.add(f)
	}
}

func (id *identification) add(f label.Finding) {
	id.findings = append(id.findings, f)
	id.bad = id.bad || f.Severity == label.Error
}

// tell says what was found of the head of the table, of the identifications
// chosen, and of the records without any, and counts it.
func (c *slipCheck) tell(say func(label.Finding) error) (Summary, error) {
	s := Summary{Records: len(c.ids), Chosen: len(c.ids)}
	told := func(f label.Finding) error {
		s.count(f)
		return say(f)
	}
	head := c.table.Findings()
	if c.records != nil && c.records.Found() != "" { // the words of records are on slips too
		head = slices.Concat(head, slices.DeleteFunc(slices.Clone(c.records.Findings()), func(f label.Finding) bool { return f.Rule != textEncoding }))
	}
	s.Refused = c.table.Found() != "" || c.records != nil && c.records.Found() != ""
	for _, f := range head {
		if f, ok := adjustHead(c.e, c.table.Table, f); ok && slipScope.concerns(f) {
			if err := told(f); err != nil {
				return s, err
			}
		}
	}
	for i := range c.ids {
		kept := &c.ids[i]
		for _, f := range kept.findings {
			if err := told(f); err != nil {
				return s, err
			}
		}
		kept.findings = nil // said once, not kept while slips are set
		if !kept.bad {
			continue
		}
		id, err := c.take(kept)
		if err != nil {
			return s, err
		}
		b := badRecord(id.Record)
		b.Key = id.title()
		s.Bad = append(s.Bad, b)
	}
	for _, at := range c.none {
		if f, ok := c.finding(ruleNoSlip, &check.Record{Origin: at}, "", "", "no identification speaks of this record: it gets no slip"); ok {
			if err := told(f); err != nil {
				return s, err
			}
		}
	}
	return s, nil
}

// title is how people find the row: the sheet as it names it, and the name.
func (id *identification) title() string {
	var parts []string
	if s := id.Text("catalogNumber"); s != "" {
		parts = append(parts, s)
	} else if id.Collector != "" || id.Number != "" {
		parts = append(parts, id.Key())
	}
	if id.Name != "" {
		parts = append(parts, id.Name)
	}
	return strings.Join(parts, ", ")
}

// read reads the table of identifications. Rows that have to do with no chosen
// record are passed over.
func (c *slipCheck) read() error {
	type looked struct {
		*identification
		kept []byte
	}
	look := func(row *table.Row) looked {
		defer row.Release()
		if c.passes(row) {
			return looked{}
		}
		r, findings := c.e.Row(row)
		if r.Empty() {
			return looked{}
		}
		id := &identification{Record: r}
		for _, f := range findings {
			if slipScope.concerns(f) {
				id.add(f)
			}
		}
		c.look(id, row)
		return looked{id, row.Append(nil)}
	}
	work := func(_ int, rows []*table.Row) ([]looked, error) {
		all := make([]looked, len(rows))
		for i, row := range rows {
			all[i] = look(row)
		}
		return all, nil
	}
	err := layout.InOrder(batches(c.table.Rows()), c.j.Workers, work, func(all []looked, err error) error {
		for _, l := range all {
			if l.identification == nil {
				continue
			}
			if err := c.keep(l.identification, l.kept); err != nil {
				return err
			}
			c.e.Release(l.Record)
		}
		return err
	})
	if err != nil {
		return err
	}
	return c.rows.done()
}

// keep keeps of an identification what its place among the slips takes.
func (c *slipCheck) keep(id *identification, row []byte) error {
	if c.records == nil {
		if !c.only.Match(id.Record) {
			return nil
		}
		if id.joinedBy() == "" {
			c.report(ruleSlipSheet, id, "catalogNumber", "",
				"the slip does not say which sheet it belongs to: fill in catalogNumber, or recordedBy and recordNumber")
		}
	} else {
		c.keys = append(c.keys, keysOf(id.Record))
	}
	kept := keptIdentification{at: len(c.ids), kind: id.kind, day: dayOf(id.Record), says: c.digest(id), sheet: -1, row: id.Row}
	kept.give(id.findings)
	if c.records == nil {
		kept.own = ownSpecimen(id.Record)
	}
	c.ids = append(c.ids, kept)
	return c.rows.keep(row)
}

// passes reports whether a row says nothing of the chosen records. What would
// be found of it concerns nobody, so it is not looked for.
func (c *slipCheck) passes(row *table.Row) bool {
	if c.only.All() {
		return false
	}
	r, _ := c.again.Row(row)
	defer c.again.Release(r)
	if c.records != nil {
		return !c.wanted.has(keysOf(r))
	}
	return !c.only.names(r)
}

// look finds what kind of slip an identification makes, and whether it says
// what such a slip must.
func (c *slipCheck) look(id *identification, row *table.Row) {
	lacks := func(rule, term, format string, args ...any) {
		if f, ok := c.finding(rule, id.Record, term, "", format, args...); ok {
			if f.Value == "" {
				f.Origin = row.Origin(term)
			}
			id.add(f)
		}
	}
	kind := c.kindOf(id)
	id.kind = kind
	remark := id.Text("identificationRemarks") + id.Text("occurrenceRemarks")
	switch {
	case kind == form.Comment && remark == "" && id.Name == "":
		lacks(ruleSlipEmpty, "identificationRemarks", "a comment slip needs a remark: fill in identificationRemarks")
	case kind == form.TypeSlip && id.Text("typifiedName") == "" && id.Name == "":
		lacks(ruleSlipEmpty, "typifiedName", "a type slip needs the name typified: fill in typifiedName or scientificName")
	case kind != form.Comment && kind != form.TypeSlip && id.Name == "":
		lacks(ruleSlipEmpty, "scientificName", "a %s slip needs a name: fill in scientificName", kind)
	}
	if id.Text("identifiedBy") == "" && kind != form.TypeSlip {
		lacks(ruleSlipDet, "identifiedBy", "a slip is signed: fill in who determined it")
	}
	if id.Text("dateIdentified") == "" && kind != form.TypeSlip {
		lacks(ruleSlipDate, "dateIdentified", "a slip without a date has no place in the order of its sheet: fill in at least the year")
	}
}

// kindOf returns what the table says, else what the request says, else what
// the row's cells make likely. A name that repeats the record's own stays a
// determination: only its author knows that it was meant to confirm.
func (c *slipCheck) kindOf(id *identification) form.SlipKind {
	said := id.Text("slip")
	switch {
	case said != "":
		kind, ok := form.ParseSlipKind(said)
		if !ok {
			c.report(ruleSlipKind, id, "slip", "", "is no kind of slip: write determination, confirmation, revision, comment or type")
		}
		return kind
	case c.q.Slip != nil:
		return *c.q.Slip
	case id.Text("typeStatus") != "":
		return form.TypeSlip
	case id.Name == "" && id.Text("identificationRemarks") != "":
		return form.Comment
	}
	return form.Determination
}
