package trade

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// filled returns what a determination says that is dated 1 January of the year of
// collecting, or the first of its month: data bases fill up a year and a month so.
func filled(c *check.Context) (text, what string) {
	day, clock, _ := strings.Cut(c.Identified.ISO(), "T")
	if clock != "" && !strings.HasPrefix(clock, "00:00") {
		return "", ""
	}
	for _, t := range []struct {
		first, what string
		length      int
	}{{"-01-01", "1 January stands for the year alone", 4}, {"-01", "the first of the month stands for the month alone", 7}} {
		if s, ok := strings.CutSuffix(day, t.first); ok && len(s) == t.length && strings.HasPrefix(c.Date.ISO(), s) {
			return s, t.what
		}
	}
	return "", ""
}

// determinersYear is the year that stands behind the determiner where no column has
// it: "R. Costa 2019"; 0 if none does.
func determinersYear(c *check.Context) int {
	text := c.Text("identifiedBy")
	n := len(text)
	if n < 8 || text[n-1] != ')' && !isFigure(text[n-1]) || c.Text("dateIdentified") != "" || c.Date.IsZero() {
		return 0
	}
	m := yearAfter.FindStringSubmatch(text)
	if m == nil || !strings.ContainsFunc(m[1], unicode.IsLetter) {
		return 0
	}
	year := 0
	for _, b := range []byte(strings.TrimRight(text, ")")) {
		if year = year*10 + int(b-'0'); !isFigure(b) {
			year = 0
		}
	}
	return year
}

// dateRules are about the dates of collecting and determining.
func dateRules() []check.Rule {
	return []check.Rule{
		{
			Name: "identified-early", Severity: label.Warning, Source: practice,
			Doc: "determined before it was collected", Terms: []string{"dateIdentified", "identifiedBy"},
			Example: one("dateIdentified", "2025-06-20"), Counterexample: one("dateIdentified", "2026-05"),
			Row: func(c *check.Context) {
				if !c.Date.IsZero() && !c.Identified.IsZero() && !c.Date.IsCirca() && c.Identified.Before(c.Date) && !c.Doubted("eventDate", "year", "dateIdentified") {
					if text, what := filled(c); text != "" {
						c.Suggest("dateIdentified", fmt.Sprintf("before the day it was collected, %s: %s, it seems, and would be printed as a day", c.Date, what), text)
						return
					}
					c.Reportf("dateIdentified", "before the day it was collected, %s: correct one of the two", c.Date)
					return
				}
				if year := determinersYear(c); year > 0 && c.Date.Start().Year > year && !c.Date.IsCirca() && !c.Doubted("eventDate", "year", "identifiedBy") {
					c.Reportf("identifiedBy", "%d is before it was collected, %s: correct one of the two", year, c.Date)
				}
			},
		},
		{
			Name: "weekday", Severity: label.Warning, Source: practice,
			Doc: "a weekday in verbatimEventDate, whole or shortened, that the date does not fall on", Terms: []string{"verbatimEventDate"},
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
				if r.Status == date.Ambiguous && len(r.Candidates) > 0 && !c.Date.IsCirca() && !slices.ContainsFunc(r.Candidates, func(d date.Date) bool { return mayBe(d, c.Date) }) {
					c.Reportf("verbatimEventDate", "can be read in several ways, but none is %s, which %s says: correct one of the two", c.Date, c.EventDate.Term)
					return
				}
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

// mayBe reports whether two dates overlap, or lie a day apart at most.
func mayBe(a, b date.Date) bool {
	if a.IsCirca() || !a.Before(b) && !a.After(b) {
		return true
	}
	d := days(a.Start()) - days(b.Start())
	return d >= -1 && d <= 1
}

// gregorian is the year from which every country counts days alike; Greece was
// the last, in 1923.
const gregorian = 1924

func weekdayRule(c *check.Context) {
	text := c.Text("verbatimEventDate")
	if text == "" || c.Date.Days() != 1 || c.Date.Start().Year < gregorian || c.EventDate.Term == "verbatimEventDate" {
		return
	}
	lower := strings.ToLower(text)
	for word := range strings.FieldsFuncSeq(lower, func(r rune) bool { return !unicode.IsLetter(r) && r != '-' }) {
		word = strings.TrimSuffix(strings.Trim(word, "-"), "-feira")
		day, ok := date.ParseWeekday(word)
		if !ok && !c.Date.IsZero() { // of two letters, before the day: Do, 14.5.2026
			day, ok = shortWeekday(word, text)
		}
		// "segunda" alone is also the second, "mar" and "sun" may be other words.
		if !ok || isMonth(word) || portugueseOrdinal[word] && !strings.Contains(lower, "feira") && !shortOf(lower, word) {
			continue
		}
		if is := c.Date.Start().Weekday(); is != day {
			c.Reportf("verbatimEventDate", "%s was a %s: correct the date or the weekday", c.Date, is)
		}
		return
	}
}

// portugueseOrdinal are weekdays that are the second to the sixth of anything.
var portugueseOrdinal = map[string]bool{"segunda": true, "terça": true, "quarta": true, "quinta": true, "sexta": true,
	"seg": true, "ter": true, "qua": true, "qui": true, "sex": true}

// shortOf reports whether a word of three letters stands first, with a stop or
// comma behind it: seg., 14 de maio.
func shortOf(text, word string) bool {
	rest, first := strings.CutPrefix(strings.TrimSpace(text), word)
	return first && len(word) <= 4 && strings.IndexAny(rest, ".,") == 0
}

// shortWeekdays are those that package lang does not read, for they are too
// short to be looked for everywhere: Portuguese and German (common practice).
var shortWeekdays = map[string]time.Weekday{
	"seg": time.Monday, "ter": time.Tuesday, "qua": time.Wednesday, "qui": time.Thursday, "sex": time.Friday,
	"so": time.Sunday, "mo": time.Monday, "di": time.Tuesday, "mi": time.Wednesday, "do": time.Thursday, "fr": time.Friday, "sa": time.Saturday,
}

// shortWeekday reads a weekday of two or three letters that stands first in
// the text, before a figure; German ones have a capital.
func shortWeekday(word, text string) (time.Weekday, bool) {
	day, ok := shortWeekdays[word]
	text = strings.TrimSpace(text)
	if !ok || len(text) < len(word)+2 || !strings.EqualFold(text[:len(word)], word) {
		return 0, false
	}
	next := strings.TrimLeft(text[len(word):], "., ")
	if next == "" || next[0] < '0' || next[0] > '9' {
		return 0, false
	}
	return day, len(word) > 2 || text[0] < 'a' // Italian "di", French "du"
}

func isMonth(word string) bool {
	_, err := date.ParseMonth(word)
	return err == nil
}
