package trade

import (
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
