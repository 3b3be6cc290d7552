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
		return nil
	})
}

// mostFound is how many of the records that one identification names are kept.
const mostFound = 6

// join finds the record of each identification, in one reading of the records.
func (c *slipCheck) join() error {
	k, n := c.keys, len(c.ids)
	byID := indexed(n, func(i int) string { return k[i].id })
	byCatalogue := indexed(n, func(i int) string { return k[i].catalogue })
	bySigns := indexed(n, func(i int) string { return lettersAndFigures(k[i].catalogue) })
	byNumber := indexed(n, func(i int) string {
		if k[i].id != "" || k[i].catalogue != "" {
			return "" // joined by those, and held against collector and number later
		}
		return k[i].number
	})
	c.near = map[int]string{}
	type read struct {
		*check.Record
		row *table.Row
	}
	work := func(_ int, row *table.Row) (read, error) {
		r, _ := c.again.Row(row)
		return read{r, row}, nil
	}
	err := layout.InOrder(c.records.Rows(), c.j.Workers, work, func(r read, err error) error {
		if err != nil || r.Empty() {
			return err
		}
		chosen, at := c.only.Match(r.Record), int32(len(c.found))
		spoken := false
		found := func(list *[]int32) {
			spoken = true
			if len(*list) < mostFound && (len(*list) == 0 || (*list)[len(*list)-1] != at) {
				*list = append(*list, at)
			}
		}
		for i := range byID.all(r.Text("id")) {
			found(&c.ids[i].exact)
		}
		catalogue := r.Text("catalogNumber")
		for i := range byCatalogue.all(catalogue) {
			found(&c.ids[i].exact)
		}
		for i := range bySigns.all(lettersAndFigures(catalogue)) {
			if k[i].catalogue != catalogue {
				c.near[i] = strings.Clone(catalogue)
			}
		}
		for i := range byNumber.all(plainNumber(r.Number)) {
			switch same, last := sameCollector(k[i].collector, r.Collector); {
			case same:
				found(&c.ids[i].exact)
			case last:
				found(&c.ids[i].loose)
			}
		}
		if spoken {
			c.found = append(c.found, keptRecord{r.Row, r.Origin.Line, chosen})
			return c.sheet.keep(r.row.Append(nil))
		}
		if chosen {
			c.without++
			if len(c.none) < namedNone {
				c.none = append(c.none, r.Origin)
			}
		}
		return nil
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
