package bdq

import (
	"slices"
	"strings"

	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/place"
	"cornerslip/label/table"
)

// An Amendment is another value for a cell: the same thing, said as the
// standard says it.
type Amendment struct {
	Test     string // the label of the test that proposes it
	Term     string // bare
	From, To string
}

// Amend returns what can be mended in a row without inferring anything: terms
// of a list in their standard spelling, country codes, licences by address,
// dates as ISO 8601, months and days as numbers. A date like one of ISO 8601 with the day before
// the month stays, for which of its figures is wrong cannot be seen. Each changes a cell that is
// filled; none fills one in. A part of a country in countryCode (England,
// Madeira) stays, for its code would say less than the name. Datums stay as they are named, since a label
// prints that name, and no datum or uncertainty is ever made up. Amending the
// amended changes nothing more.
func Amend(row *table.Row) []Amendment { return Amender()(row) }

// Amender is Amend for many rows: it makes the list of tests once.
func Amender() func(*table.Row) []Amendment {
	var tests []Test
	for _, t := range Tests() {
		if t.Kind == KindAmendment && strings.HasSuffix(t.Label, "_STANDARDIZED") && t.Acts[0] != "geodeticDatum" {
			tests = append(tests, t)
		}
	}
	return func(row *table.Row) []Amendment {
		var all []Amendment
		c := RowCells(row, date.Date{})
		for i := range tests {
			t := &tests[i]
			term := t.Acts[0]
			text := c.Text(term)
			if text == "" {
				continue
			}
			if r := t.Answer(c); r.Status == Amended && !(term == "countryCode" && partOfCountry(text)) && !check.YearDayMonth(strings.TrimSpace(text)) {
				if to := r.Amended[0].Value; term != "eventDate" || Agrees(row, to) {
					all = append(all, Amendment{t.Label, term, text, to}) // of this term alone
				}
			}
		}
		return all
	}
}

// ISO writes a date as ISO 8601 where it has one reading by the hints and loses
// nothing by it; false for one that is written so.
func ISO(text string, h date.Hints) (string, bool) {
	text = strings.TrimFunc(text, invisible)
	if _, err := date.FromISO(text); err == nil || text == "" || check.YearDayMonth(text) { // which of its figures is wrong cannot be seen
		return "", false
	}
	return plainISO(date.Read(text, h), text)
}

// plainISO writes what was read of a date, where that loses nothing.
func plainISO(r date.Reading, text string) (string, bool) {
	if r.Status != date.OK || !r.Date.IsPlain() {
		return "", false
	}
	return r.Date.ISO(), onlyDate(text)
}

// Agrees reports whether year, month and day of a row say what an eventDate of
// ISO 8601 does. Where they do not, one of them is wrong, and what was typed
// helps to find out which.
func Agrees(row *table.Row, eventDate string) bool {
	c := NewCells(func(term string) string {
		if term == "eventDate" {
			return eventDate
		}
		return row.Text(term)
	}, date.Date{})
	term, _ := unlike(c, plainly)
	return term == ""
}

// partOfCountry reports whether a text stands for a country without being its
// code or one of its own names.
func partOfCountry(text string) bool {
	text = strings.TrimFunc(text, invisible)
	c, ok := place.Country(text)
	if !ok {
		return false
	}
	own := []string{c.Code, c.Alpha3, c.Name, c.ISOName, "Great Britain", "UK", "U.K.", "USA", "U.S.A.", "U.S."}
	for _, l := range []string{"pt", "es", "fr", "de", "zh-Hant", "la"} {
		own = append(own, c.In(l))
	}
	return !slices.ContainsFunc(own, func(s string) bool { return strings.EqualFold(s, text) })
}
