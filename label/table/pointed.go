package table

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
)

// A sought is what a table of plants hardly does without.
type sought struct {
	terms  []string // a column of one of them has it
	rename string   // the term to rename a heading to
	what   string   // the cells that look like it
	is     func(string) bool
	not    *regexp.Regexp // headings that say what else the cells are; nil if none
	share  float64        // how many of the column's cells have to look so, of 1
	alone  bool           // it points at none of several columns
}

var allSought = []sought{
	{nameTerms, "scientificName", "the names of plants", isPlantName, nil, 0.7, false},
	{[]string{"eventDate", "verbatimEventDate", "year", "month", "day", "startDayOfYear"}, "eventDate", "dates", func(s string) bool { return kindOf(s) == aDate }, nil, 0.7, true},
	{[]string{"recordedBy", "collectorAndNumber"}, "recordedBy", "persons", initialled.MatchString, otherPersons, 0.8, true},
	{[]string{"locality", "country", "stateProvince", "county", "municipality", "verbatimLocality", "island", "waterBody", "higherGeography"}, "locality", "places",
		severalPlaces.MatchString, otherPersons, 0.8, true},
}

var (
	// initialled is a person with initials, alone or the first of several.
	initialled = regexp.MustCompile(`^\s*(?:\p{Lu}\.[ -]?){1,4}(?:d[aeo]s? |van |von |de la )?\p{Lu}\p{Ll}+\b|^\s*\p{Lu}\p{Ll}+, ?(?:\p{Lu}\. ?){1,4}`)
	// otherPersons are those who worked on a specimen, or named the plant.
	otherPersons = regexp.MustCompile(`(?i)aut|author|det|ident|extract|scor|measur|type|read|photo|image|sequenc|georef|enter|review|donor|grower|contact|owner|citation|refer|source|common`)
)

// pointOut names the column that looks as if it held the plants' names, the dates or
// the collectors, where no heading is known that would. It reads none so: a determination
// might be that of a host, and a date the day of typing.
func (t *Table) pointOut(rows []*Row) {
	t.unlike(rows)
	for _, s := range allSought {
		if slices.ContainsFunc(t.columns, func(c Column) bool { return c.Known && slices.Contains(s.terms, c.Term) }) {
			continue
		}
		best, most, several := -1, s.share, false
		for i := range t.columns {
			if c := &t.columns[i]; c.Known || c.group != nil || strings.TrimSpace(c.Heading) == "" || ofOthers.MatchString(c.Heading) || s.not != nil && s.not.MatchString(c.Heading) {
				continue
			}
			if share := shareOf(rows, i, s.is); share >= s.share && t.filledIn(rows, i) >= 3 {
				several = best >= 0
				if share > most || best < 0 {
					best, most = i, share
				}
			}
		}
		if best < 0 || several && s.alone {
			continue
		}
		c := &t.columns[best]
		at := slices.IndexFunc(t.findings, c.unknownHeading)
		if at < 0 || t.findings[at].Suggest != "" {
			continue
		}
		f := &t.findings[at]
		f.Severity, f.Suggest = label.Warning, s.rename
		f.Message = fmt.Sprintf("heading %q is not known, but its cells look like %s (%s), and no other heading says where these are; as it is, they are not printed",
			c.Heading, s.what, cut(firstOf(rows, best, s.is), 40))
		if t.pointed == nil {
			t.pointed = map[string]string{}
		}
		t.pointed[s.rename] = strings.TrimSpace(c.Heading)
	}
}

// lookAlikes tell what some of the cells of a term's column look like, whatever it is called.
var lookAlikes = map[string]func(string) bool{
	"locality": someWords.MatchString, "recordedBy": someWords.MatchString,
	"recordNumber": func(s string) bool { return someNumber.MatchString(s) && !sequence.MatchString(s) },
	"eventDate":    func(s string) bool { return someDate.MatchString(s) && !sequence.MatchString(s) },
}

var (
	someWords  = regexp.MustCompile(`\p{Lu}\p{Ll}{2}|\p{Lu}\. ?\p{Lu}|^\PN*\p{Lu}{4}|\p{Lo}{2}|\p{L}{4,}.* .*\p{L}{4}`)
	someNumber = regexp.MustCompile(`^[^.,]*\p{N}[^.,]*$|\p{L}\P{N}*\p{N}`)
	someDate   = regexp.MustCompile(`(?:1[6-9]|20)\d\d|\d\P{N}+\d`)
	sequence   = regexp.MustCompile(`^\s*\p{Lu}{1,2}_?\d{5,8}(?:\.\d+)?(?:\PL|$)`) // a number of GenBank
)

// unlike notes for which terms' cells those of a column that is not known cannot be taken: readings of an
// instrument are no places.
func (t *Table) unlike(rows []*Row) {
	for i := range t.columns {
		if t.columns[i].Known || t.filledIn(rows, i) < 3 {
			continue
		}
		for term, has := range lookAlikes {
			if shareOf(rows, i, has) < 0.3 || term != "recordNumber" && ofOthers.MatchString(t.columns[i].Heading) {
				if t.columns[i].unlike == nil {
					t.columns[i].unlike = map[string]bool{}
				}
				t.columns[i].unlike[term] = true
			}
		}
	}
}

// CouldBe reports whether a column that is not known might hold what a term is for, as
// far as its first cells tell.
func (c *Column) CouldBe(term string) bool { return !c.unlike[term] }

// Pointed returns the heading, which nobody knows, that a finding says to hold what a
// term is for; "" if none does.
func (t *Table) Pointed(term string) string { return t.pointed[term] }

// ofOthers is a heading of the names of other plants, of communities and of the
// days of clerks.
var ofOthers = regexp.MustCompile(`(?i)host|phoro|foro[fp]|alliance|associa|communit|syntax|substrat|previous|modif|updat|entered|created|upload|download|georef|seque|access|recei|extract|sent\b|shipp|loan|germ|sown|plant(ed|ing)|scan|typed`)

// firstOf is the first cell of a column that is of a kind.
func firstOf(rows []*Row, column int, is func(string) bool) string {
	for _, r := range rows {
		if column < len(r.Cells) && is(r.Cells[column].Text) {
			return strings.TrimSpace(r.Cells[column].Text)
		}
	}
	return ""
}

// plantName is a genus with an epithet that ends as Latin ones do, a hybrid, a
// cultivar, or a genus whose species nobody has named. From memory.
var plantName = regexp.MustCompile(`^[×x]? ?\p{Lu}[a-zëïöüæœ-]{2,}[ _]((?:aff\. |cf\. |[×x] ?)?[a-zëïöüæœ-]{2,}(?:a|us|um|is|ii?|ae|as|ens|ns|e|o|os|or|er|ur|es|on|x|ys)(?:\PL|$)|spp?\b\.?|['‘]\p{Lu}|[×x] ?\p{Ll}{3})`)

func isPlantName(s string) bool { return plantName.MatchString(strings.TrimSpace(s)) && !hasFigure(s) }
