package table

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// familyEnd ends the names of families, of plants and of fungi, and so do the eight
// that plants had before: Compositae.
var familyEnd = regexp.MustCompile(`(?i)^\p{L}+(aceae|positae|mbelliferae|ruciferae|ramineae|abiatae|guminosae|uttiferae|almae)$`)

// familiesOfSource reads a heading that says whose families it has, "APG_Family" or
// "Family.Engler", where no other column has the family and its cells are families.
// Of several the first is printed, for a label has room for one.
func (t *Table) familiesOfSource(r *resolver, rows []*Row) {
	if _, taken := r.taken["family"]; taken {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || c.group != nil || !slices.Contains(wordsOf(c.Heading), "family") || len(wordsOf(c.Heading)) > 3 {
			continue
		}
		filled := func(s string) bool { return familyEnd.MatchString(strings.TrimSpace(s)) }
		if t.filledIn(rows, i) > 0 && shareOf(rows, i, filled) > 0.9 {
			t.settle(r, i, "family", "family, for its cells are families")
			return
		}
	}
}

// wordsOf are the words of a heading in small letters, parted by whatever is no letter.
func wordsOf(heading string) []string {
	return strings.FieldsFunc(strings.ToLower(heading), func(r rune) bool { return !unicode.IsLetter(r) })
}

// verbatimName reads the name as the label had it as the record's, where no other
// column has one.
func (t *Table) verbatimName(r *resolver, rows []*Row) {
	i, ok := r.taken["verbatimIdentification"]
	if !ok || t.columns[i].group != nil || shareOf(rows, i, hasText) == 0 {
		return
	}
	for _, term := range append(slices.Clip(nameTerms), "cultivarEpithet") {
		if _, taken := r.taken[term]; taken && term != "verbatimIdentification" {
			return
		}
	}
	delete(r.taken, "verbatimIdentification")
	t.settle(r, i, "scientificName", "scientificName: no other column has the name")
}
