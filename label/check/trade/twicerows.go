package trade

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// twinRules find what stands twice in a table and ought to stand once.
func twinRules() []check.Rule {
	return []check.Rule{
		{
			Name: "row-twice", Severity: label.Note, Source: practice,
			Doc: "a row that is another one cell by cell, without a number of its own", Terms: []string{"recordedBy", "scientificName", "recordNumber"},
			Example:        rows([]string{"catalogNumber", "", "occurrenceID", ""}, []string{"catalogNumber", "", "occurrenceID", ""}),
			Counterexample: rows([]string{"catalogNumber", "", "occurrenceID", ""}, []string{"catalogNumber", "", "occurrenceID", "", "preparations", "packet: capsules"}),
			Table:          func() check.TableRule { return &rowsTwice{} },
		},
		{
			Name: "occurrence-twice", Severity: label.Warning, Source: "Darwin Core, list of terms (occurrenceID)",
			Doc: "one occurrenceID for two records of different numbers, names or places", Terms: []string{"occurrenceID"},
			Example:        rows([]string{"occurrenceID", "urn:x:14"}, []string{"occurrenceID", "urn:x:14", "recordNumber", "215"}),
			Counterexample: rows([]string{"occurrenceID", "urn:x:14"}, []string{"occurrenceID", "urn:x:15", "recordNumber", "215"}),
			Table:          func() check.TableRule { return &occurrencesTwice{} },
		},
		{
			Name: "value-spelling", Severity: label.Warning, Source: practice,
			Doc: "a word of a column of few words, such as reproductiveCondition, a slip of the keys from one that is far commoner in it", Terms: fewWords[:],
			Example: rows([]string{"reproductiveCondition", "flowering"}, []string{"recordNumber", "215", "reproductiveCondition", "flowering"}, []string{"recordNumber", "216", "reproductiveCondition", "flowering"},
				[]string{"recordNumber", "217", "reproductiveCondition", "flowering"}, []string{"recordNumber", "218", "reproductiveCondition", "flowreing"}),
			Counterexample: rows([]string{"reproductiveCondition", "flowering"}, []string{"recordNumber", "215", "reproductiveCondition", "flowering"}, []string{"recordNumber", "216", "reproductiveCondition", "flowering"},
				[]string{"recordNumber", "217", "reproductiveCondition", "flowering"}, []string{"recordNumber", "218", "reproductiveCondition", "fruiting"}),
			Table: func() check.TableRule { return &valueSpellings{} },
		},
	}
}

// rowsTwice keeps a sum of each row without a number of its own: 20 bytes.
type rowsTwice struct {
	rows  int
	seen  index[rowSeen]
	found []label.Finding
}

type rowSeen struct {
	row  int32
	told int32 // place in found, from 1
}

func (t *rowsTwice) Feed(r *check.Record) {
	if r.Text("catalogNumber") != "" || r.Text("occurrenceID") != "" || r.Text("materialEntityID") != "" || r.Collector == "" || r.Number == "" || r.Name == "" {
		return
	}
	key, n := uint64(0), 0
	for term, text := range r.Texts {
		key = mixIn(key, sum(term, text))
		n++
	}
	if n < 6 {
		return
	}
	t.rows++
	was := t.seen.find(key)
	if was == nil {
		t.seen.add(key, rowSeen{row: int32(r.Row)})
		return
	}
	f := r.Field("recordNumber")
	if was.told > 0 {
		old := &t.found[was.told-1]
		old.Also = append(old.Also, label.Cell{Row: r.Row, Term: "recordNumber"})
		return
	}
	t.found = append(t.found, label.Finding{
		Origin: f.Origin, Value: strings.Clone(f.Text), Also: []label.Cell{{Row: int(was.row), Term: "recordNumber"}},
		Message: fmt.Sprintf("the whole row is record %d again: if it was pasted twice, take it out; several labels of one gathering are counted in copies", was.row),
	})
	was.told = int32(len(t.found))
}

// manyTwins is from which part of the rows on a row for each sheet is the table's way:
// one in so many.
const manyTwins = 10

func (t *rowsTwice) End() []label.Finding {
	if len(t.found) > max(2, t.rows/manyTwins) {
		return nil
	}
	return t.found
}

// occurrencesTwice keeps 40 bytes a record that has an occurrenceID.
type occurrencesTwice struct {
	seen  index[occurrenceSeen]
	found []label.Finding
}

type occurrenceSeen struct {
	what uint64 // a sum of what the record is
	row  int32
	told bool
}

func (t *occurrencesTwice) Feed(r *check.Record) {
	f := r.Field("occurrenceID")
	if len(f.Text) < 2 {
		return
	}
	now := occurrenceSeen{what: sum(r.Collector, r.Number, r.Text("locality"), r.Date.ISO()), row: int32(r.Row)}
	was := t.seen.find(sum(f.Text))
	switch {
	case was == nil:
		t.seen.add(sum(f.Text), now)
	case was.what != now.what && !was.told:
		was.told = true
		t.found = append(t.found, label.Finding{
			Origin: f.Origin, Value: strings.Clone(f.Text), Also: []label.Cell{{Row: int(was.row), Term: "occurrenceID"}},
			Message: fmt.Sprintf("record %d has the same occurrenceID, and is of another gathering: each record needs its own", was.row),
		})
	}
}

func (t *occurrencesTwice) End() []label.Finding { return t.found }

// fewWords are columns whose cells are of a few words or phrases.
var fewWords = [...]string{"reproductiveCondition", "lifeStage", "sex", "disposition", "establishmentMeans", "occurrenceStatus", "samplingProtocol", "basisOfRecord", "georeferencedBy"}

// valueSpellings keeps each value of these columns, as long as they are few.
type valueSpellings struct {
	file string
	seen [len(fewWords)]map[string]*valueSeen
}

type valueSeen struct {
	text  string
	count int
	cells []cell
}

// mostValues are the different values from which a column is one of free words.
const mostValues = 200

func (t *valueSpellings) Feed(r *check.Record) {
	for i, term := range fewWords {
		f := r.Field(term)
		if len(f.Text) < 6 || len(f.Text) > 40 || r.Doubted(term) || len(t.seen[i]) > mostValues {
			continue
		}
		v := t.seen[i][f.Text]
		if v == nil {
			if t.seen[i] == nil {
				t.seen[i] = map[string]*valueSeen{}
			}
			t.file = f.Origin.File
			v = &valueSeen{text: strings.Clone(f.Text)}
			t.seen[i][v.text] = v
		}
		if v.count++; v.count <= rare {
			v.cells = append(v.cells, cellOf(f))
		}
	}
}

func (t *valueSpellings) End() []label.Finding {
	var all []label.Finding
	for i, term := range fewWords {
		if len(t.seen[i]) > mostValues {
			continue
		}
		list := slices.SortedFunc(maps.Values(t.seen[i]), func(a, b *valueSeen) int {
			return cmp.Or(cmp.Compare(b.count, a.count), strings.Compare(a.text, b.text))
		})
		for n, v := range list {
			if v.count > rare {
				continue
			}
			for _, as := range list[:n] {
				if as.count < max(someRecords, 4*v.count) || !valueSlip(v.text, as.text) {
					continue
				}
				all = append(all, label.Finding{Origin: v.cells[0].origin(t.file, term), Value: v.text, Suggest: as.text, Also: also(term, v.cells[1:]),
					Message: fmt.Sprintf("is spelt %q in %s of the table", as.text, plural(as.count, "record"))})
				break
			}
		}
	}
	slices.SortFunc(all, func(a, b label.Finding) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), strings.Compare(a.Term, b.Term))
	})
	return all
}

// valueSlip reports whether one value is the other but for a letter inside: the ends
// tell one from many, and men from women. Figures and signs count.
func valueSlip(a, b string) bool {
	n, m := len(a), len(b)
	if strings.EqualFold(a, b) || a[0] != b[0] || a[n-1] != b[m-1] || strings.ContainsAny(a+b, "0123456789./") {
		return false
	}
	return within([]rune(a), []rune(b), 1)
}
