package job

import (
	"fmt"
	"strings"

	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/table"
	"cornerslip/layout"
)

// keys are what an identification and a record are joined by.
type keys struct{ id, catalogue, collector, number string }

// keysOf returns those of an identification. They keep no row in memory.
func keysOf(r *check.Record) keys {
	return keys{strings.Clone(r.Text("coreid")), strings.Clone(r.Text("catalogNumber")), strings.Clone(r.Collector), plainNumber(r.Number)}
}

// An index finds identifications by a key, those of one key in the order of
// the table.
type index struct {
	first map[string]int32
	next  []int32 // -1 ends
}

// indexed makes an index of all keys but "".
func indexed(n int, key func(int) string) *index {
	x := &index{map[string]int32{}, make([]int32, n)}
	for i := n - 1; i >= 0; i-- {
		k := key(i)
		if k == "" {
			continue
		}
		x.next[i] = -1
		if after, ok := x.first[k]; ok {
			x.next[i] = after
		}
		x.first[k] = int32(i)
	}
	return x
}

// all yields the identifications that have a key.
func (x *index) all(key string) func(func(int) bool) {
	return func(yield func(int) bool) {
		i, ok := x.first[key]
		if key == "" || !ok {
			return
		}
		for ; i >= 0; i = x.next[i] {
			if !yield(int(i)) {
				return
			}
		}
	}
}

// wanted are the keys of the chosen records.
type wanted struct{ ids, catalogues, numbers map[string]bool }

// has reports whether an identification may be of a chosen record.
func (w *wanted) has(k keys) bool {
	return w.ids[k.id] || w.catalogues[k.catalogue] || w.numbers[k.number]
}

// choose reads which records the user named, before the identifications are
// read: only theirs are looked at then.
func (c *slipCheck) choose() error {
	w := &wanted{map[string]bool{}, map[string]bool{}, map[string]bool{}}
	c.wanted = w
	put := func(m map[string]bool, key string) {
		if key != "" {
			m[strings.Clone(key)] = true
		}
	}
	return c.j.scan(c.records, c.again, func(r rowResult) error {
		if r.chosen {
			put(w.ids, r.record.Text("id"))
			put(w.catalogues, r.record.Text("catalogNumber"))
			put(w.numbers, plainNumber(r.record.Number))
		}
		c.again.Release(r.record)
		return nil
	})
}

// mostFound is how many of the records that one identification names are kept.
const mostFound = 6

// A joiner finds the identifications that name a record.
type joiner struct {
	*slipCheck
	byID, byCatalogue, byNumber *index
	bySigns                     *index // of a catalogue number: its letters and figures alone
}

func (c *slipCheck) joiner() *joiner {
	k, n := c.keys, len(c.ids)
	return &joiner{c,
		indexed(n, func(i int) string { return k[i].id }),
		indexed(n, func(i int) string { return k[i].catalogue }),
		indexed(n, func(i int) string {
			if k[i].id != "" || k[i].catalogue != "" {
				return "" // joined by those, and held against collector and number later
			}
			return k[i].number
		}),
		indexed(n, func(i int) string { return lettersAndFigures(k[i].catalogue) })}
}

// take notes a record with those that name it, and keeps its row if any does.
func (j *joiner) take(r *check.Record, row *table.Row) error {
	chosen, at := j.only.Match(r), int32(len(j.found))
	spoken := false
	found := func(list *[]int32) {
		spoken = true
		if len(*list) < mostFound && (len(*list) == 0 || (*list)[len(*list)-1] != at) {
			*list = append(*list, at)
		}
	}
	for i := range j.byID.all(r.Text("id")) {
		found(&j.ids[i].exact)
	}
	catalogue := r.Text("catalogNumber")
	for i := range j.byCatalogue.all(catalogue) {
		found(&j.ids[i].exact)
	}
	for i := range j.bySigns.all(lettersAndFigures(catalogue)) {
		if j.keys[i].catalogue != catalogue {
			j.near[i] = strings.Clone(catalogue)
		}
	}
	for i := range j.byNumber.all(plainNumber(r.Number)) {
		switch same, last := sameCollector(j.keys[i].collector, r.Collector); {
		case same:
			found(&j.ids[i].exact)
		case last:
			found(&j.ids[i].loose)
		}
	}
	if spoken {
		j.found = append(j.found, keptRecord{r.Row, r.Origin.Line, chosen})
		return j.sheet.keep(row.Append(nil))
	}
	if chosen {
		j.without++
		if len(j.none) < namedNone {
			j.none = append(j.none, r.Origin)
		}
	}
	return nil
}

// join finds the record of each identification, in one reading of the records.
func (c *slipCheck) join() error {
	type read struct {
		*check.Record
		row *table.Row
	}
	work := func(_ int, rows []*table.Row) ([]read, error) {
		all := make([]read, len(rows))
		for i, row := range rows {
			all[i].row = row
			all[i].Record, _ = c.again.Row(row)
		}
		return all, nil
	}
	c.near = map[int]string{}
	j := c.joiner()
	err := layout.InOrder(batches(c.records.Rows()), c.j.Workers, work, func(all []read, err error) error {
		for _, r := range all {
			if !r.Empty() {
				if err := j.take(r.Record, r.row); err != nil {
					return err
				}
			}
			c.again.Release(r.Record)
			r.row.Release()
		}
		return err
	})
	if err != nil {
		return err
	}
	c.keys = nil
	if err := c.sheet.done(); err != nil {
		return err
	}
	return c.settleAll()
}

// settleAll decides whose each identification is, and lets go of those whose
// record was not chosen.
func (c *slipCheck) settleAll() error {
	type settled struct {
		*identification
		sheet int
		own   string
	}
	work := func(_ int, i int) (settled, error) {
		id, err := c.take(&c.ids[i])
		if err != nil {
			return settled{}, err
		}
		s := settled{identification: id}
		if s.sheet, err = c.settle(i, id); s.sheet < 0 {
			s.own = ownSpecimen(id.Record)
		}
		return s, err
	}
	all := func(yield func(int, error) bool) {
		for i := range c.ids {
			if !yield(i, nil) {
				return
			}
		}
	}
	stay, n := c.ids[:0], 0
	err := layout.InOrder(all, c.j.Workers, work, func(s settled, err error) error {
		if err != nil {
			return err
		}
		id := c.ids[n]
		n++
		id.give(s.findings)
		c.again.Release(s.Record)
		id.sheet, id.own = s.sheet, s.own
		id.exact, id.loose = nil, nil
		if s.sheet < 0 && c.only.All() || s.sheet >= 0 && c.found[s.sheet].chosen {
			stay = append(stay, id)
		}
		return nil
	})
	c.ids, c.near = stay, nil
	return err
}

// settle decides whose identification i is; -1 where that cannot be said.
func (c *slipCheck) settle(i int, id *identification) (int, error) {
	kept := &c.ids[i]
	all := kept.exact
	if len(all) == 0 {
		all = kept.loose
	}
	source := c.records.Source().Name()
	term := id.joinedBy()
	switch {
	case term == "":
		c.report(ruleUnjoined, id, "", "", "the row does not say whose it is: fill in catalogNumber, or recordedBy and recordNumber")
		return -1, nil
	case len(all) == 0:
		c.report(ruleUnjoined, id, term, c.near[i], "no record of %s has %s: correct it, or add the record", source, id.asked())
		return -1, nil
	case len(all) > 1:
		c.report(ruleTwoRecords, id, term, "", "the records on lines %s of %s have %s: write the catalogue number of the one meant",
			c.linesOf(all), source, id.asked())
		return -1, nil
	}
	r, err := c.record(int(all[0]))
	if err != nil {
		return -1, err
	}
	defer c.again.Release(r)
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
			return -1, nil
		}
	}
	if len(kept.exact) == 0 {
		c.report(ruleLoosely, id, "recordedBy", r.Collector, "is taken for %s, %s: write the name as the record does", r.Collector, r.Origin)
	}
	if a, b := id.Identified.End(), r.Date.Start(); !id.Identified.IsZero() && !r.Date.IsZero() && a.Year > 0 && a.Compare(b) < 0 {
		c.report(ruleEarly, id, "dateIdentified", "", "lies before the plant was collected, %s: correct one of the dates", r.Date.ISO())
	}
	if id.kind != form.TypeSlip && id.kind != form.Comment && id.Name == r.Name && id.Text("identifiedBy") == r.Text("identifiedBy") && id.Text("dateIdentified") == r.Text("dateIdentified") {
		c.report(ruleOnLabel, id, "scientificName", "", "the record says the same, and so does its label if it was printed so: the slip may not be needed")
	}
	return int(all[0]), nil
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

// linesOf names the lines of records, the first few of many.
func (c *slipCheck) linesOf(found []int32) string {
	var out []string
	for _, i := range found {
		if len(out) == mostFound-1 {
			out = append(out, "…")
			break
		}
		out = append(out, fmt.Sprint(c.found[i].line))
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
