package job

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/table"
	"cornerslip/layout"
)

// An identification is a row of a table of identifications: what one slip, or
// the slips of all sheets of a specimen, will say.
type identification struct {
	*check.Record
	kind form.SlipKind
	// findings wait until it is known whether the record was chosen.
	findings []label.Finding
	bad      bool
	sheet    *check.Record // whose it is; nil where the row says all itself
	exact    []*check.Record
	loose    []*check.Record // the collector's last name alone fits
	near     string          // a catalogue number that differs in signs only
}

// slipTerms are the columns that slips say or are joined by. What is wrong with
// others is no matter of slips.
var slipTerms = termSet(`scientificName scientificNameAuthorship genus infragenericEpithet specificEpithet infraspecificEpithet taxonRank
	cultivarEpithet identificationQualifier identifiedBy dateIdentified identificationRemarks typeStatus typifiedName namePublishedIn
	duplicatesTo catalogNumber institutionCode recordedBy recordNumber slip determinerInstitution coreid id`)

// tagTerms are the columns that tags say.
var tagTerms = termSet("recordedBy recordNumber")

func termSet(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

// A scope says which findings matter for what is to be printed; nil is all.
type scope struct {
	terms map[string]bool
	not   []string // rules that have no bearing
}

func (s *scope) concerns(f label.Finding) bool {
	switch {
	case s == nil:
		return true
	case slices.Contains(s.not, f.Rule):
		return false
	case strings.HasPrefix(f.Rule, "heading-"): // only what makes the columns doubtful
		return f.Severity == label.Error || s.terms[f.Term]
	}
	return f.Term == "" || s.terms[f.Term]
}

var (
	slipScope = &scope{slipTerms, []string{"collector-missing", "number-missing", "place-missing", "catalogue-number-twice", "duplicate-to-us"}}
	tagScope  = &scope{terms: tagTerms}
)

// What the check of slips looks for. The rules only name and rank what the job
// itself finds in two tables; they are listed with all others.
const (
	practice       = "common practice, no source"
	slipHandbook   = "herbarium handbooks on annotation slips"
	ruleSlipKind   = "slip-kind"
	ruleSlipEmpty  = "slip-empty"
	ruleSlipDet    = "slip-determiner-missing"
	ruleSlipDate   = "slip-date-missing"
	ruleSlipSheet  = "slip-sheet-missing"
	ruleUnjoined   = "slip-unjoined"
	ruleTwoRecords = "slip-two-records"
	ruleContradict = "slip-contradicts"
	ruleLoosely    = "slip-joined-loosely"
	ruleEarly      = "slip-before-collecting"
	ruleRepeated   = "slip-repeated"
	ruleOnLabel    = "slip-on-label"
	ruleNoSlip     = "slip-none"
)

var slipRules = []check.Rule{
	{Name: ruleSlipKind, Severity: label.Error, Source: slipHandbook, Terms: []string{"slip"},
		Doc: "the kind of a slip is determination, confirmation, revision, comment or type"},
	{Name: ruleSlipEmpty, Severity: label.Error, Source: slipHandbook, Terms: []string{"scientificName", "identificationRemarks", "typifiedName"},
		Doc: "a slip says a name; a comment says a remark"},
	{Name: ruleSlipDet, Severity: label.Error, Source: slipHandbook, Terms: []string{"identifiedBy"},
		Doc: "a slip is signed by its determiner"},
	{Name: ruleSlipDate, Severity: label.Warning, Source: slipHandbook, Terms: []string{"dateIdentified"},
		Doc: "slips on a sheet follow each other by their dates"},
	{Name: ruleSlipSheet, Severity: label.Warning, Source: slipHandbook, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "a slip names its sheet, in case it comes loose"},
	{Name: ruleUnjoined, Severity: label.Error, Source: practice, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "each row of identifications belongs to a record, by catalogue number or by collector and number"},
	{Name: ruleTwoRecords, Severity: label.Error, Source: practice, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "a row of identifications belongs to one record alone"},
	{Name: ruleContradict, Severity: label.Error, Source: practice, Terms: []string{"catalogNumber", "recordedBy", "recordNumber"},
		Doc: "catalogue number, collector and number of an identification name the same record"},
	{Name: ruleLoosely, Severity: label.Warning, Source: practice, Terms: []string{"recordedBy"},
		Doc: "an identification that gives the collector's last name alone"},
	{Name: ruleEarly, Severity: label.Warning, Source: practice, Terms: []string{"dateIdentified"},
		Doc: "an identification from before the plant was collected"},
	{Name: ruleRepeated, Severity: label.Warning, Source: practice, Terms: []string{"scientificName"},
		Doc: "the same identification twice for one record"},
	{Name: ruleOnLabel, Severity: label.Note, Source: practice, Terms: []string{"scientificName"},
		Doc: "an identification that the record itself says, and so its label"},
	{Name: ruleNoSlip, Severity: label.Note, Source: practice,
		Doc: "a record that no identification speaks of"},
}

// slipCheck is one check of a table of identifications against its records.
type slipCheck struct {
	j   *Job
	e   *check.Engine
	q   *Request
	ids []*identification
	// none are the chosen records that no identification speaks of, without
	// how many they are: only the first are kept to be named.
	none    []label.Origin
	without int
}

// namedNone is how many records without an identification are named.
const namedNone = 10000

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
func (c *slipCheck) tell(ids *Table, say func(label.Finding) error) (Summary, error) {
	s := Summary{Records: len(c.ids), Chosen: len(c.ids)}
	var all []label.Finding
	for _, f := range ids.Findings() {
		if f, ok := c.e.Adjust(f); ok && slipScope.concerns(f) {
			all = append(all, f)
		}
	}
	for _, id := range c.ids {
		all = append(all, id.findings...)
		if id.bad {
			b := badRecord(id.Record)
			b.Key = id.title()
			s.Bad = append(s.Bad, b)
		}
	}
	for _, at := range c.none {
		if f, ok := c.finding(ruleNoSlip, &check.Record{Origin: at}, "", "", "no identification speaks of this record: it gets no slip"); ok {
			all = append(all, f)
		}
	}
	for _, f := range all {
		s.count(f)
		if err := say(f); err != nil {
			return s, err
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

// read reads the table of identifications.
func (c *slipCheck) read(t *Table) error {
	work := func(_ int, row *table.Row) (*identification, error) {
		r, findings := c.e.Row(row)
		if r.Empty() {
			return nil, nil
		}
		id := &identification{Record: r}
		for _, f := range findings {
			if slipScope.concerns(f) {
				id.add(f)
			}
		}
		c.look(id, row)
		return id, nil
	}
	return layout.InOrder(t.Rows(), c.j.Workers, work, func(id *identification, err error) error {
		if err == nil && id != nil {
			c.ids = append(c.ids, id)
		}
		return err
	})
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

// join finds the record of each identification, in one reading of the records.
func (c *slipCheck) join(t *Table) error {
	byID, byCatalogue, bySigns, byNumber := map[string][]*identification{}, map[string][]*identification{}, map[string][]*identification{}, map[string][]*identification{}
	for _, id := range c.ids {
		if s := id.Text("coreid"); s != "" {
			byID[s] = append(byID[s], id)
		}
		if s := id.Text("catalogNumber"); s != "" {
			byCatalogue[s] = append(byCatalogue[s], id)
			bySigns[lettersAndFigures(s)] = append(bySigns[lettersAndFigures(s)], id)
		}
		if id.Number != "" {
			byNumber[plainNumber(id.Number)] = append(byNumber[plainNumber(id.Number)], id)
		}
	}
	err := c.j.scan(t, check.New(c.j.checkOptions()), func(r rowResult) error {
		if r.record.Empty() {
			return nil
		}
		spoken := false
		found := func(list []*identification, loose bool) {
			for _, id := range list {
				spoken = true
				if loose {
					id.loose = append(id.loose, r.record)
				} else if !slices.Contains(id.exact, r.record) {
					id.exact = append(id.exact, r.record)
				}
			}
		}
		if s := r.record.Text("id"); s != "" {
			found(byID[s], false)
		}
		if s := r.record.Text("catalogNumber"); s != "" {
			found(byCatalogue[s], false)
			for _, id := range bySigns[lettersAndFigures(s)] {
				id.near = s
			}
		}
		for _, id := range byNumber[plainNumber(r.record.Number)] {
			if id.Text("coreid") != "" || id.Text("catalogNumber") != "" || r.record.Number == "" {
				continue // joined by those, and held against collector and number later
			}
			if same, last := sameCollector(id.Collector, r.record.Collector); same || last {
				found([]*identification{id}, !same)
			}
		}
		if r.chosen && !spoken {
			c.without++
			if len(c.none) < namedNone {
				c.none = append(c.none, r.record.Origin)
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	for _, id := range c.ids {
		c.settle(id, t)
	}
	return nil
}

// settle decides whose an identification is.
func (c *slipCheck) settle(id *identification, t *Table) {
	all := id.exact
	if len(all) == 0 {
		all = id.loose
	}
	term := id.joinedBy()
	switch {
	case term == "":
		c.report(ruleUnjoined, id, "", "", "the row does not say whose it is: fill in catalogNumber, or recordedBy and recordNumber")
		return
	case len(all) == 0:
		c.report(ruleUnjoined, id, term, id.near, "no record of %s has %s: correct it, or add the record", t.Source().Name(), id.asked())
		return
	case len(all) > 1:
		c.report(ruleTwoRecords, id, term, "", "the records on lines %s of %s have %s: write the catalogue number of the one meant",
			linesOf(all), t.Source().Name(), id.asked())
		return
	}
	r := all[0]
	for _, cell := range []struct {
		term, have string
		agrees     bool
	}{
		{"catalogNumber", r.Text("catalogNumber"), id.Text("catalogNumber") == r.Text("catalogNumber")},
		{"recordNumber", r.Number, plainNumber(id.Number) == plainNumber(r.Number)},
		{"recordedBy", r.Collector, collectorsAgree(id.Collector, r.Collector)},
	} {
		if id.Text(cell.term) != "" && !cell.agrees && cell.have != "" {
			c.report(ruleContradict, id, cell.term, "", "the record found by %s, %s, is %s %s: correct one of them", term, r.Origin, r.Key(), r.Text("catalogNumber"))
			return
		}
	}
	id.sheet = r
	if len(id.exact) == 0 {
		c.report(ruleLoosely, id, "recordedBy", r.Collector, "is taken for %s, %s: write the name as the record does", r.Collector, r.Origin)
	}
	if a, b := id.Identified.End(), r.Date.Start(); !id.Identified.IsZero() && !r.Date.IsZero() && a.Year > 0 && a.Compare(b) < 0 {
		c.report(ruleEarly, id, "dateIdentified", "", "lies before the plant was collected, %s: correct one of the dates", r.Date.ISO())
	}
	if id.kind != form.TypeSlip && id.kind != form.Comment && id.Name == r.Name && id.Text("identifiedBy") == r.Text("identifiedBy") && id.Text("dateIdentified") == r.Text("dateIdentified") {
		c.report(ruleOnLabel, id, "scientificName", "", "the record says the same, and so does its label if it was printed so: the slip may not be needed")
	}
}

// joinedBy is the column by which a row names its record, "" if it names none.
func (id *identification) joinedBy() string {
	for _, term := range []string{"coreid", "catalogNumber"} {
		if id.Text(term) != "" {
			return term
		}
	}
	if id.Collector != "" && id.Number != "" {
		return "recordNumber"
	}
	return ""
}

// asked says whom a row names.
func (id *identification) asked() string {
	switch id.joinedBy() {
	case "recordNumber":
		return "collector and number " + id.Key()
	case "coreid":
		return "this id"
	}
	return "this catalogue number"
}

func linesOf(records []*check.Record) string {
	var out []string
	for i, r := range records {
		if i == 5 {
			out = append(out, "…")
			break
		}
		out = append(out, fmt.Sprint(r.Origin.Line))
	}
	return strings.Join(out, ", ")
}

// sameCollector compares two collectors' names; last is true where one is the
// end of the other: "Almeida" and "I. Almeida".
func sameCollector(a, b string) (same, last bool) {
	a, b = fold(a), fold(b)
	if a == "" || b == "" {
		return false, false
	}
	return a == b, a != b && (strings.HasSuffix(a, " "+b) || strings.HasSuffix(b, " "+a))
}

func collectorsAgree(a, b string) bool {
	same, last := sameCollector(a, b)
	return same || last
}

// plainNumber makes collectors' numbers comparable: without case and blanks, and with one kind of
// hyphen. "97-12" and "9712" stay two numbers.
func plainNumber(s string) string {
	s = strings.NewReplacer("–", "-", "‐", "-", "‑", "-").Replace(strings.ToLower(s))
	return strings.Join(strings.Fields(s), "")
}

// lettersAndFigures is what is left of a catalogue number without its signs.
func lettersAndFigures(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' {
			return r
		}
		return -1
	}, strings.ToUpper(s))
}

// A slipSet is the identifications of one record, in the order of their dates.
type slipSet struct {
	record *check.Record
	ids    []*identification
}

// sets groups the good identifications by record: in the order of the records,
// and each group by date. What has no date comes last, in the order of the
// rows.
func (c *slipCheck) sets() []slipSet {
	var all []slipSet
	at := map[string]int{}
	for _, id := range c.ids {
		if id.bad {
			continue
		}
		r, key := id.sheet, ""
		if r != nil {
			key = fmt.Sprint(r.Row)
		} else if r = id.Record; r.Text("catalogNumber") != "" {
			key = "c" + r.Text("catalogNumber")
		} else if r.Number != "" {
			key = "k" + fold(r.Collector) + "\x00" + plainNumber(r.Number)
		} else {
			key = "r" + fmt.Sprint(r.Row) // nothing tells whether another row is of the same
		}
		i, ok := at[key]
		if !ok {
			i = len(all)
			at[key] = i
			all = append(all, slipSet{record: r})
		}
		all[i].ids = append(all[i].ids, id)
	}
	slices.SortStableFunc(all, func(a, b slipSet) int { return cmp.Compare(a.record.Row, b.record.Row) })
	for _, s := range all {
		slices.SortStableFunc(s.ids, func(a, b *identification) int {
			x, y := a.Identified.Start(), b.Identified.Start()
			if (x.Year == 0) != (y.Year == 0) {
				return cmp.Compare(y.Year, x.Year) // undated last
			}
			return x.Compare(y)
		})
		for i, id := range s.ids {
			for _, other := range s.ids[:i] {
				if id.kind == other.kind && id.Name == other.Name && id.Text("identifiedBy") == other.Text("identifiedBy") &&
					id.Text("dateIdentified") == other.Text("dateIdentified") && id.Text("identificationRemarks") == other.Text("identificationRemarks") {
					c.report(ruleRepeated, id, "scientificName", "", "the row on line %d says the same of %s: remove one of them", other.Origin.Line, s.record.Key())
					break
				}
			}
		}
	}
	return all
}
