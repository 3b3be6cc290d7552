package table

import (
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
)

// nameOfAnything are words for a name of anything.
var nameOfAnything = wordSet("nome | nombre | nom | name | nomes")

// commonNames reads a column headed "Nome" beside the scientific names as the common
// names, where no other column has those and its cells change with the scientific names:
// they are no names of persons or places, which stay the same from plant to plant.
func (t *Table) commonNames(r *resolver, rows []*Row) {
	named, ok := r.taken["scientificName"]
	if r.has("vernacularName") || !ok || t.columns[named].group != nil {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || c.group != nil || !nameOfAnything[headingKey(c.Heading)] || t.filledIn(rows, i) < 3 || shareOf(rows, i, commonLike) < 0.9 {
			continue
		}
		if n := t.different(rows, i); n < 3 || 10*n < 6*t.different(rows, named) || !t.follows(rows, i, named) {
			continue
		}
		t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
			return f.Rule == ruleHeadingReading.Name && f.Origin.Column == c.Origin.Column && f.Origin.Line == c.Origin.Line
		})
		t.settle(r, i, "vernacularName", "vernacularName, for its cells are common names beside the scientific ones")
		return
	}
}

// commonLike reports whether a text may be the common name of a plant: without figures,
// and not of several words in capitals, as persons and places have them.
func commonLike(s string) bool {
	capitals := 0
	for _, w := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '-' }) {
		if first := []rune(w)[0]; unicode.IsUpper(first) {
			capitals++
		}
	}
	return !hasFigure(s) && !strings.ContainsAny(s, ".@") && capitals <= 1 && !isBinomial(s) || isBinomial(s) && capitals <= 1 && !latinEnding(s)
}

// latinEnding reports whether the second word of a text ends as epithets do.
func latinEnding(s string) bool {
	words := strings.Fields(s)
	if len(words) < 2 {
		return false
	}
	for _, end := range []string{"us", "um", "is", "ii", "ae", "ensis", "ense"} {
		if strings.HasSuffix(words[1], end) {
			return true
		}
	}
	return false
}

// follows reports whether the cells of a column are nearly always the same where those of
// another are.
func (t *Table) follows(rows []*Row, column, other int) bool {
	first := map[string]string{}
	same, differ := 0, 0
	for _, row := range rows {
		if !row.filled(column) || !row.filled(other) {
			continue
		}
		key, is := strings.TrimSpace(row.Cells[other].Text), strings.ToLower(strings.TrimSpace(row.Cells[column].Text))
		if was, ok := first[key]; !ok {
			first[key] = is
		} else if was == is {
			same++
		} else {
			differ++
		}
	}
	return differ <= same
}
