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
	if r.has("family") {
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
		if r.has(term) && term != "verbatimIdentification" {
			return
		}
	}
	delete(r.taken, "verbatimIdentification")
	t.settle(r, i, "scientificName", "scientificName: no other column has the name")
}

// acceptedName sees to it that the name a record bears is not taken for the one
// that is accepted now.
func (t *Table) acceptedName(r *resolver, rows []*Row) {
	at, ok := r.taken["scientificName"]
	own, species := r.taken["specificEpithet"]
	if !ok || !species || !strings.HasPrefix(headingKey(t.columns[at].Heading), "accepted") || shareOf(rows, own, isBinomial) < 0.8 {
		return
	}
	delete(r.taken, "specificEpithet")
	t.settle(r, at, "acceptedNameUsage", "acceptedNameUsage")
	t.settle(r, own, "scientificName", "scientificName")
}

// nameTerms are the terms that have the name of a record, or a part of it.
var nameTerms = []string{"scientificName", "verbatimIdentification", "acceptedNameUsage", "originalNameUsage", "genus", "genericName", "specificEpithet"}

// writtenName reads the name as it was written, which occurrence downloads have
// beside the one they matched it to, where no other column has a name.
func (t *Table) writtenName(r *resolver, rows []*Row) {
	i, ok := r.taken["verbatimScientificName"]
	if !ok { // or the one it was matched to
		i = slices.IndexFunc(t.columns, func(c Column) bool { return !c.Known && matchedName[headingKey(c.Heading)] })
		ok = i >= 0 && shareOf(rows, i, isBinomial) >= 0.6
	}
	if !ok || slices.ContainsFunc(append(slices.Clip(nameTerms), "cultivarEpithet"), r.has) || shareOf(rows, i, hasText) == 0 {
		return
	}
	delete(r.taken, t.columns[i].Term)
	if r.read[i].meaning == nil {
		r.read[i].meaning = &meaning{terms: []string{"scientificName"}}
	}
	t.settle(r, i, "scientificName", "scientificName: no other column has the name")
}

// matchedName are headings of names that a program matched, as it has them.
var matchedName = map[string]bool{"namematched": true, "matchedname": true, "scrubbedspeciesbinomial": true, "scrubbedtaxonbinomial": true, "speciesbinomial": true, "speciesmatched": true}

// speciesAsName reads "Species" as the whole name, where the column that was
// taken for it is none and no other has the genus.
func (t *Table) speciesAsName(r *resolver) {
	i, ok := r.taken["specificEpithet"]
	genus := r.has("genus")
	if !ok || genus || len(r.read[i].terms) < 2 {
		return
	}
	delete(r.taken, "specificEpithet")
	r.taken["scientificName"] = i
	t.columns[i].Term = "scientificName"
}

// isBinomial reports whether a text is a genus and an epithet, with or without
// more behind them.
func isBinomial(s string) bool {
	words := strings.Fields(s)
	return len(words) > 1 && unicode.IsUpper([]rune(words[0])[0]) && unicode.IsLower([]rune(words[1])[0])
}
