package trade

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// dateRules are about the dates of collecting and determining.
func dateRules() []check.Rule {
	return []check.Rule{
		{
			Name: "identified-early", Severity: label.Warning, Source: practice,
			Doc: "determined before it was collected", Terms: []string{"dateIdentified"},
			Example: one("dateIdentified", "2025-06-20"), Counterexample: one("dateIdentified", "2026-05"),
			Row: func(c *check.Context) {
				if !c.Date.IsZero() && !c.Identified.IsZero() && !c.Date.IsCirca() && c.Identified.Before(c.Date) {
					c.Reportf("dateIdentified", "before the day it was collected, %s: correct one of the two", c.Date)
				}
			},
		},
		{
			Name: "weekday", Severity: label.Warning, Source: practice,
			Doc: "a weekday in verbatimEventDate that the date does not fall on", Terms: []string{"verbatimEventDate"},
			Example: one("verbatimEventDate", "Sunday, 14 May 2026"), Counterexample: one("verbatimEventDate", "Thursday, 14 May 2026"),
			Row: weekdayRule,
		},
		{
			Name: "date-disagrees", Severity: label.Warning, Source: practice,
			Doc: "verbatimEventDate can be read and is another day than eventDate", Terms: []string{"verbatimEventDate"},
			Example: one("verbatimEventDate", "14.vi.2026"), Counterexample: one("verbatimEventDate", "14.v.2026"),
			Row: func(c *check.Context) {
				text := c.Text("verbatimEventDate")
				if text == "" || c.Date.IsZero() || c.EventDate.Term == "verbatimEventDate" {
					return
				}
				r := date.Read(text, c.Options.Dates)
				if r.Status != date.OK || !r.Date.Before(c.Date) && !r.Date.After(c.Date) || c.Date.IsCirca() || r.Date.IsCirca() {
					return
				}
				// A time of day by another clock moves the day by one.
				if a, b := days(r.Date.Start()), days(c.Date.Start()); a-b <= 1 && b-a <= 1 {
					return
				}
				c.Reportf("verbatimEventDate", "is %s, and %s says %s: correct one of the two", r.Date, c.EventDate.Term, c.Date)
			},
		},
		{
			Name: "date-order", Severity: label.Warning, Source: "TDWG bdq issue 143; " + practice,
			Doc:            "dates in figures, some with the day first and some with the month; or which order the rest of the table settles",
			Terms:          []string{"eventDate", "dateIdentified"},
			Example:        rows([]string{"eventDate", "25/5/2026"}, []string{"eventDate", "25/5/2026", "recordNumber", "215"}, []string{"eventDate", "5/25/2026", "recordNumber", "216"}),
			Counterexample: rows([]string{"eventDate", "25/5/2026"}, []string{"eventDate", "25/5/2026", "recordNumber", "215"}, []string{"eventDate", "26/5/2026", "recordNumber", "216"}),
			Table:          func() check.TableRule { return &orderTable{} },
		},
	}
}

// weekdays are the names of the days from Sunday on, in English, Portuguese,
// Spanish, French and German; endings such as "-feira" may follow.
var weekdays = [7][]string{
	{"sunday", "domingo", "dimanche", "sonntag"}, {"monday", "segunda", "lunes", "lundi", "montag"}, {"tuesday", "terça", "martes", "mardi", "dienstag"},
	{"wednesday", "quarta", "miércoles", "mercredi", "mittwoch"}, {"thursday", "quinta", "jueves", "jeudi", "donnerstag"},
	{"friday", "sexta", "viernes", "vendredi", "freitag"}, {"saturday", "sábado", "samedi", "samstag", "sonnabend"},
}

// gregorian is the year from which every country counts days alike; Greece was
// the last, in 1923.
const gregorian = 1924

func weekdayRule(c *check.Context) {
	text := c.Text("verbatimEventDate")
	if text == "" || c.Date.Days() != 1 || c.Date.Start().Year < gregorian || c.EventDate.Term == "verbatimEventDate" {
		return
	}
	for word := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }) {
		for i, names := range weekdays {
			for _, n := range names {
				// "segunda" alone is also the second.
				if word != n || i > 0 && i < 6 && n == names[1] && !strings.Contains(strings.ToLower(text), "feira") {
					continue
				}
				if is := c.Date.Start().Weekday(); is != time.Weekday(i) {
					c.Reportf("verbatimEventDate", "%s was a %s: correct the date or the weekday", c.Date, is)
				}
				return
			}
		}
	}
}

// figuresOrder tells of a date in figures whether only the day can stand first
// or only the month, or whether both can.
func figuresOrder(text string) (order date.Order, either bool) {
	var part [2]int
	rest := text
	for i := range part {
		n := 0
		for n < len(rest) && rest[n] >= '0' && rest[n] <= '9' {
			part[i] = part[i]*10 + int(rest[n]-'0')
			n++
		}
		if n < 1 || n > 2 || n >= len(rest) || strings.IndexByte("/.-", rest[n]) < 0 {
			return date.UnknownOrder, false
		}
		rest = rest[n+1:]
	}
	if len(rest) < 4 || strings.Trim(rest[:4], "0123456789") != "" || len(rest) > 4 && rest[4] != ' ' && rest[4] != 'T' {
		return date.UnknownOrder, false
	}
	a, b := part[0], part[1]
	switch {
	case a > 12 && a <= 31 && b >= 1 && b <= 12:
		return date.DayFirst, false
	case b > 12 && b <= 31 && a >= 1 && a <= 12:
		return date.MonthFirst, false
	case a >= 1 && a <= 12 && b >= 1 && b <= 12 && a != b:
		return date.UnknownOrder, true
	}
	return date.UnknownOrder, false
}

// orderColumn is what the orders of one column are known by.
type orderColumn struct {
	count [3]int          // by date.Order; UnknownOrder for dates that can be either
	cells [3][]cell       // the first of each kind
	first [3]*check.Field // the first with its text
}

// maxOrderCells bounds the rows that are named for a kind: 12 bytes each.
const maxOrderCells = 2000

type orderTable struct {
	columns [2]orderColumn
}

var orderTerms = [2]string{"eventDate", "dateIdentified"}

func (o *orderTable) Feed(r *check.Record) {
	for i, term := range orderTerms {
		f := r.Field(term)
		if len(f.Text) < 8 {
			continue
		}
		order, either := figuresOrder(f.Text)
		if order == date.UnknownOrder && !either {
			continue
		}
		// Where the house has settled the order, either way is read.
		if either && (i == 0 && !r.Date.IsZero() || i == 1 && !r.Identified.IsZero()) {
			continue
		}
		col := &o.columns[i]
		col.count[order]++
		if col.first[order] == nil {
			col.first[order] = &check.Field{Text: strings.Clone(f.Text), Origin: f.Origin}
		} else if len(col.cells[order]) < maxOrderCells {
			col.cells[order] = append(col.cells[order], cellOf(f))
		}
	}
}

func (o *orderTable) End() []label.Finding {
	var all []label.Finding
	words := map[date.Order]string{date.DayFirst: "the day first", date.MonthFirst: "the month first"}
	for i := range o.columns {
		col := &o.columns[i]
		say := func(of date.Order, message, suggest string) {
			f := col.first[of]
			all = append(all, label.Finding{Origin: f.Origin, Value: f.Text, Message: message, Suggest: suggest, Also: also(orderTerms[i], col.cells[of])})
		}
		days, months := col.count[date.DayFirst], col.count[date.MonthFirst]
		usual, rare := date.DayFirst, date.MonthFirst
		if months > days {
			usual, rare = rare, usual
		}
		switch {
		case days > 0 && months > 0:
			say(rare, fmt.Sprintf("%s, while %s of this column %s %s: dates that can be read both ways are in doubt", words[rare],
				plural(col.count[usual], "other"), puts(col.count[usual]), words[usual]), "")
		case col.count[date.UnknownOrder] > 0 && col.count[usual] >= 3:
			f := col.first[date.UnknownOrder]
			suggest := ""
			if r := date.Read(f.Text, date.Hints{Order: usual}); r.Status == date.OK {
				suggest = r.Date.ISO()
			}
			say(date.UnknownOrder, fmt.Sprintf("can be read both ways, and %s of this column %s %s: if the whole table does, say so in the house file",
				plural(col.count[usual], "other"), puts(col.count[usual]), words[usual]), suggest)
		}
	}
	return all
}

func puts(n int) string {
	if n == 1 {
		return "puts"
	}
	return "put"
}
