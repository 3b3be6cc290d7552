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
}

var allSought = []sought{
	{nameTerms, "scientificName", "the names of plants", isPlantName},
	{[]string{"eventDate", "verbatimEventDate", "year", "month", "day", "startDayOfYear"}, "eventDate", "dates", func(s string) bool { return kindOf(s) == aDate }},
}

// pointedShare is how many of a column's cells have to look so, of 1.
const pointedShare = 0.7

// pointOut names the column that looks as if it held the plants' names, or the
// dates, where no heading is known that would. It reads none so: a determination
// might be that of a host, and a date the day of typing.
func (t *Table) pointOut(rows []*Row) {
	for _, s := range allSought {
		if slices.ContainsFunc(t.columns, func(c Column) bool { return c.Known && slices.Contains(s.terms, c.Term) }) {
			continue
		}
		best, most, several := -1, pointedShare, false
		for i := range t.columns {
			if c := &t.columns[i]; c.Known || c.group != nil || strings.TrimSpace(c.Heading) == "" || ofOthers.MatchString(c.Heading) {
				continue
			}
			if share := shareOf(rows, i, s.is); share >= pointedShare {
				several = best >= 0
				if share > most || best < 0 {
					best, most = i, share
				}
			}
		}
		if best < 0 || several && s.rename == "eventDate" {
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
	}
}

// ofOthers is a heading of the names of other plants, of communities and of the
// days of clerks.
var ofOthers = regexp.MustCompile(`(?i)host|phoro|foro[fp]|alliance|associa|communit|syntax|substrat|previous|modif|updat|entered|created|upload|download|georef|seque|access`)

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
var plantName = regexp.MustCompile(`^[×x]? ?\p{Lu}[a-zëïöüæœ-]{2,}[ _]((?:aff\. |cf\. |[×x] ?)?[a-zëïöüæœ-]{2,}(?:a|us|um|is|ii?|ae|ens|ns|e|o|os|or|er|es|on|x|ys)(?:\PL|$)|spp?\b\.?|['‘]\p{Lu}|[×x] ?\p{Ll}{3})`)

func isPlantName(s string) bool { return plantName.MatchString(strings.TrimSpace(s)) && !hasFigure(s) }
