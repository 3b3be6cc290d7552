package table

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"

	"cornerslip/label"
)

// datumIsDate are the languages in which "Datum" is the date, with or without
// an accent.
var datumIsDate = map[string]bool{"de": true, "nl": true, "sv": true, "nb": true, "da": true, "cs": true, "sk": true, "hu": true, "hr": true, "sl": true}

// krajIsRegion are the languages in which "kraj" is a part of a country; in
// Polish it is the country.
var krajIsRegion = map[string]bool{"cs": true, "sk": true}

// sukuIsFamily are the languages in which "suku" is the family; in Finnish it is the genus.
var sukuIsFamily = map[string]bool{"id": true}

// prefersSecond decides between the two terms of an ambiguous word. "Species"
// is the epithet where a column has the genus, else the whole name. "Datum" is
// the date in languages of the north and the middle of Europe and the geodetic
// datum in English: it is the date where other headings are of those languages
// and no other column has one. "Kraj" is the country in Polish, in Czech and
// Slovak a part of it; "suku" the genus in Finnish and the family in Indonesian.
func (r *resolver) prefersSecond(i int, terms []string) bool {
	switch terms[1] {
	case "specificEpithet":
		return r.has("genus")
	case "eventDate":
		return r.speaks(i, datumIsDate) && !r.has("eventDate") && !r.has("verbatimEventDate") && !r.has("year")
	case "stateProvince":
		return r.speaks(i, krajIsRegion)
	case "family":
		return r.speaks(i, sukuIsFamily)
	}
	return false
}

// speaks reports whether another heading than that of column i is a word of one
// of some languages and of no other.
func (r *resolver) speaks(i int, languages map[string]bool) bool {
	for k := range r.read {
		if m := r.read[k].meaning; m != nil && m.plain && languages[m.language] && m != r.read[i].meaning {
			return true
		}
	}
	return false
}

// local returns the language that most words of the headings are of, where these
// are rather of other languages than English: two at least, and more than there are
// of English; "" where they are not.
func (r *resolver) local() string {
	count := map[string]int{}
	english, other := 0, 0
	most := ""
	for i := range r.read {
		m := r.read[i].meaning
		if m == nil || !m.plain || m.language == "" {
			continue
		}
		if m.language == "en" {
			english++
			continue
		}
		other++
		if count[m.language]++; count[m.language] > count[most] || count[m.language] == count[most] && m.language < most {
			most = m.language
		}
	}
	if other >= 2 && other > english {
		return most
	}
	return ""
}

// Language returns the language that the headings are in, as BCP 47 has it, where
// it is rather another than English; "" where that is not known. Norwegian stands
// for Danish too.
func (t *Table) Language() string { return t.language }

// stopped is a date in figures with full stops and the year last, by Norwegians
// and Danes also as 5/8 2018; figured one with any signs.
var (
	stopped = regexp.MustCompile(`^\s*\d{1,2}(\. ?\d{1,2}\. ?|/\d{1,2} )(\d{4}|\d{2})\b`)
	figured = regexp.MustCompile(`^\s*(\d{1,2})(?:\. ?(\d{1,2})\. ?|/ ?(\d{1,2})[/ ] ?|-(\d{1,2})-)(?:\d{4}|\d{2})\b`)
)

// orderTold is an order of day, month and year in a heading: "Date (dd/mm/yyyy)".
var orderTold = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:((?:dd?|jj|tt?|gg?)[-/. _]mm?[-/. _](?:y{1,4}|a{1,4}|j{1,4}))|(mm?[-/. _]dd?[-/. _]y{1,4}))(?:[^\pL]|$)`)

// ordersTold finds the columns of dates whose heading says in which order day and
// month stand, if no cell has them otherwise.
func (t *Table) ordersTold(rows []*Row) {
	for i := range t.columns {
		c := &t.columns[i]
		m := orderTold.FindStringSubmatch(c.Heading)
		if m == nil || c.Term != "eventDate" && c.Term != "dateIdentified" {
			continue
		}
		month := 1 // where the month stands
		if m[1] != "" {
			month = 2
		}
		against := slices.ContainsFunc(rows, func(row *Row) bool {
			if i >= len(row.Cells) {
				return false
			}
			f := figured.FindStringSubmatch(row.Cells[i].Text)
			return f != nil && figuresOf([]string{f[1], f[2] + f[3] + f[4]}[month-1]) > 12
		})
		if !against {
			c.DayFirst, c.allDays, c.MonthFirst = month == 2, month == 2, month == 1
		}
	}
}

// daysFirst finds the columns of dates in figures that have the day first, for the
// headings are in a language that has it so, which all are but English: those
// whose figures full stops part, and those of which one must be read so; but none
// that has a day where the month would be.
// Source: Unicode CLDR 45, the short dates of its languages, from memory.
func (t *Table) daysFirst(r *resolver, rows []*Row) {
	t.ordersTold(rows)
	if t.language = r.local(); t.language == "" {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if c.DayFirst || c.MonthFirst || c.group != nil && c.group.joint != asSpan || c.Term != "eventDate" && c.Term != "dateIdentified" {
			continue
		}
		stops, days, months, either := 0, 0, 0, 0
		for _, row := range rows {
			if i >= len(row.Cells) {
				continue
			}
			m := figured.FindStringSubmatch(row.Cells[i].Text)
			if m == nil {
				continue
			}
			first, second := figuresOf(m[1]), figuresOf(m[2]+m[3]+m[4])
			if stopped.MatchString(row.Cells[i].Text) {
				stops++
			}
			switch {
			case second > 12:
				months++
			case first > 12:
				days++
			case first != second:
				either++
			}
		}
		if months > 0 {
			continue
		}
		c.DayFirst, c.allDays = stops > 0 || days > 0, days > 0
		if c.DayFirst && either > 0 {
			why := "with full stops "
			if c.allDays {
				why = ""
			}
			t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
				Message: fmt.Sprintf("dates of %q in figures %sare read with the day first, as the language of the headings has them", c.Heading, why)})
		}
	}
}

// figuresOf is the number that one or two figures are.
func figuresOf(s string) int {
	n, _ := strconv.Atoi(s)
	return n
}

// DayFirst reports whether a date of a column in figures is written as the
// language of the headings has it, with the day first; see [Column.DayFirst].
func (t *Table) DayFirst(term, text string) bool {
	i := t.Index(term)
	return i >= 0 && t.columns[i].DayFirst && (t.columns[i].allDays || stopped.MatchString(text))
}

// MonthFirst reports whether the heading of a column of dates says that the month
// stands first; see [Column.MonthFirst].
func (t *Table) MonthFirst(term string) bool {
	i := t.Index(term)
	return i >= 0 && t.columns[i].MonthFirst
}
