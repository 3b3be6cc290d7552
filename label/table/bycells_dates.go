package table

import (
	"regexp"
	"strings"
)

// datesAsYear reads a column headed "Year" as the date, where its cells are whole dates
// and no other column has one.
func (t *Table) datesAsYear(r *resolver, rows []*Row) {
	i, ok := r.taken["year"]
	if !ok || t.columns[i].group != nil || shareOf(rows, i, func(s string) bool { return kindOf(s) == aDate }) < 0.65 {
		return
	}
	for _, term := range []string{"eventDate", "verbatimEventDate", "earliestDateCollected", "month", "day", "startDayOfYear"} {
		if r.has(term) {
			return
		}
	}
	delete(r.taken, "year")
	t.settle(r, i, "eventDate", "eventDate, for its cells are whole dates and no other column has them")
}

// datesOfCollecting reads a column whose heading is a word for collecting, such
// as "Recolección", or for the first day, as "Start date" of a trip, as the date,
// where its cells are dates and no other column has them.
func (t *Table) datesOfCollecting(r *resolver, rows []*Row) {
	for _, term := range []string{"eventDate", "verbatimEventDate", "year", "earliestDateCollected"} {
		if r.has(term) {
			return
		}
	}
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || c.group != nil || !collecting.MatchString(strings.TrimSpace(c.Heading)) && !r.isPart(i, "firstDay") || t.filledIn(rows, i) < 3 ||
			shareOf(rows, i, func(s string) bool { return kindOf(s) == aDate }) < 0.8 {
			continue
		}
		t.settle(r, i, "eventDate", "eventDate, for its cells are dates")
		return
	}
}

// collecting are the words for it, and those before a day.
var collecting = regexp.MustCompile(`(?i)^(re-?)?col+ec(c?i[oó]n|tion|ted|tada|tado|ta)$|^recol+ec(ción|cion|tion|ta)[_ .-]?(date|fecha)?$|^(colheita|coleta|colecta|récolte|recolte|collecte|raccolta|sammlung|aufsammlung|gesammelt|verzameld|inzameling|insamling|innsamling|indsamling|zbiór|zebrano|sběr|sber|сбор|gathering|harvest|harvested|採集|采集|em|am|le|on|el|il|dne|dnia|quando|cuándo|quand|wann|when)$`)

// collectedWhen reads a column headed "Collected" as the day or as the people,
// by its cells, where no other column has them.
func (t *Table) collectedWhen(r *resolver, rows []*Row) {
	for i := range t.columns {
		c := &t.columns[i]
		key := headingKey(c.Heading)
		if c.Known || key != "collected" && key != "gathered" && key != "sampled" {
			continue
		}
		term := ""
		switch {
		case shareOf(rows, i, func(s string) bool { return kindOf(s) == aDate || yearAlone.MatchString(strings.TrimSpace(s)) }) > 0.7:
			if !r.has("eventDate") {
				term = "eventDate"
			}
		case key == "collected" && shareOf(rows, i, person.MatchString) > 0.7:
			if !r.has("recordedBy") {
				term = "recordedBy"
			}
		}
		if term == "" || r.has("year") && term == "eventDate" {
			continue
		}
		t.settle(r, i, term, term+", as its cells are")
	}
}

var (
	yearAlone = regexp.MustCompile(`^1[6-9]\d\d$|^20\d\d$`)
	// person is a name with initials before or behind it.
	person = regexp.MustCompile(`^(\p{Lu}\. ?){1,4}(d[aeo]s? |van |von |de la )?\p{Lu}\pL+|^\p{Lu}\pL+,? (\p{Lu}\.? ?){1,3}`)
)
