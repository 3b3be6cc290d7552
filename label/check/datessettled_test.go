package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
	"cornerslip/label/table"
)

// dateFindings are those about dates, as "severity rule term: message [suggestion]".
func dateFindings(fs []label.Finding) []string {
	var all []string
	for _, f := range fs {
		if strings.HasPrefix(f.Rule, "date-") {
			all = append(all, fmt.Sprintf("%s %s %s: %s [%s]", f.Severity, f.Rule, f.Term, f.Message, f.Suggest))
		}
	}
	return all
}

// What the rest of the row says of a date in figures settles it; what it
// contradicts is said once.
func TestSettledByRow(t *testing.T) {
	for _, tt := range []struct {
		cells string // term=value, parted by blanks
		date  string
		want  []string
	}{
		{"eventDate=05/07/1992 year=1992 month=7 day=5", "1992-07-05", nil},
		{"eventDate=05/07/1992 year=1992 month=5 day=7", "1992-05-07", nil},
		{"eventDate=05/07/1992 year=1992 month=VII", "1992-07-05", nil},
		{"eventDate=05/07/1992 month=7 day=0", "1992-07-05", nil},
		{"eventDate=05/07/1992 startDayOfYear=187", "1992-07-05", nil},
		{"eventDate=05/07/1992 verbatimEventDate=5.vii.1992", "1992-07-05", nil},
		{"eventDate=05/07/1992 verbatimEventDate=vii.1992", "1992-07-05", nil},
		{"eventDate=2/17/05 year=2005 month=2 day=17", "2005-02-17", nil},
		{"eventDate=11/7/71 year=1971 month=11 day=7", "1971-11-07", nil},
		{"eventDate=4/6/90 year=1890 month=4 day=6", "1890-04-06", nil},
		{"eventDate=17.5.14 recordNumber=2014-34", "2014-05-17", nil}, // the number has the year
		{"eventDate=5/7/14 recordNumber=IA-20140705-3", "2014-07-05", nil},
		{"eventDate=17.5.14 recordNumber=2013-34", "", []string{
			`error date-ambiguous eventDate: the year has two figures: write the year with four figures, or say --dates "1900s", if the whole table is of that century [1914-05-17 or 1814-05-17 or 2014-05-17 or 1917-05-14 or 1817-05-14 or 2017-05-14]`}},
		{"eventDate=05/07/1992 year=1992", "", []string{
			`error date-ambiguous eventDate: can be 5 July or 7 May 1992: say --dates "day first" or --dates "month first" if the whole table is written so, or write the month as a word [1992-07-05 or 1992-05-07]`}},
		{"eventDate=4/6/90 year=1990", "", []string{
			`error date-ambiguous eventDate: the day or the month can stand first, and the year has two figures: write the month as a word and the year with four figures, or say --dates "day first, 1900s", if the whole table is so [1990-06-04 or 1990-04-06]`}},
		{"eventDate=05/07/1992 year=1992 month=7 day=6", "", []string{
			`error date-ambiguous eventDate: can be 5 July or 7 May 1992, but the row says year 1992, month 7, day 6: correct one of the two, and write the date as 20 March 1922 []`}},
		{"eventDate=23/04/1994 year=1994 month=5 day=23", "1994-04-23", []string{
			`warning date-parts month: eventDate says 4: correct one of the two []`}},
		{"eventDate=23/04/1994 year=1994 month=IV day=23rd", "1994-04-23", nil},
		{"eventDate=1994-04-00 year=1994 month=4 day=0", "1994-04", nil},
		{"year=1994 month=4 day=23 startDayOfYear=113", "1994-04-23", nil},
		{"year=1994 month=4 day=23 startDayOfYear=114", "1994-04-23", []string{
			`warning date-parts startDayOfYear: year, month and day say 113: correct one of them []`}},
		{"year=1994 month=4 startDayOfYear=114", "1994-04", nil},
		{"year=1994 month=4 day=23 startDayOfYear=0", "1994-04-23", nil},
	} {
		row := With("eventDate", "")
		for cell := range strings.FieldsSeq(tt.cells) {
			term, text, _ := strings.Cut(cell, "=")
			row[term] = text
		}
		rs, fs := run(t, New(options(t)), open(t, row))
		if got := dateFindings(fs); rs[0].Date.ISO() != tt.date || !slices.Equal(got, tt.want) {
			t.Errorf("%s: %s\n%s", tt.cells, rs[0].Date.ISO(), strings.Join(got, "\n"))
		}
	}
}

// Nothing is determined before it is collected, nor after today.
func TestIdentifiedCentury(t *testing.T) {
	for _, tt := range []struct {
		collected, text, want string
		say                   []string
	}{
		{"1990-05-14", "1/13/10", "2010-01-13", nil},
		{"1904-05-14", "1/13/10", "", []string{"error date-ambiguous dateIdentified: the year has two figures: write the year with four figures, or say --dates \"1900s\", if the whole table is of that century [1910-01-13 or 2010-01-13]"}},
		{"1990-05-14", "Mar-04", "", []string{"warning date-incomplete dateIdentified: can be March 2004, or a day without its year; it is printed as written: write the month with a year of four figures [2004-03]"}},
		{"1898-05-14", "Jul-16", "", []string{"warning date-incomplete dateIdentified: can be July 2016 or July 1916, or a day without its year; it is printed as written: write the month with a year of four figures [2016-07 or 1916-07]"}},
		{"", "0000-00-00", "", []string{"warning date-missing eventDate: no date is given: the label prints s.d. []", "note date-zeros dateIdentified: zeros stand for no date: taken as empty []"}},
	} {
		rs, fs := run(t, New(options(t)), open(t, With("eventDate", tt.collected, "dateIdentified", tt.text)))
		if got := dateFindings(fs); rs[0].Identified.ISO() != tt.want || !slices.Equal(got, tt.say) {
			t.Errorf("%s, %s: %s\n%s", tt.collected, tt.text, rs[0].Identified.ISO(), strings.Join(got, "\n"))
		}
	}
}

// The zeros of a data base are no date, wherever they stand.
func TestZeroDate(t *testing.T) {
	for _, cells := range [][]string{
		{"eventDate", "0000-00-00"}, {"eventDate", "00/00/0000"}, {"eventDate", "0000-00-00T00:00:00Z"}, {"eventDate", "0"},
		{"eventDate", "0000-00-00", "year", "0", "month", "0", "day", "0"}, {"eventDate", "", "year", "0", "month", "0", "day", "0"}, {"eventDate", "", "year", "0000", "verbatimEventDate", "0000-00-00"},
	} {
		rs, fs := run(t, New(options(t)), open(t, With(cells...)))
		if r := rs[0]; !r.Printable() || !r.Date.IsZero() || r.DateText != "" || len(fs) != 1 || fs[0].Rule != "date-missing" {
			t.Errorf("%q: %q, %v", cells, r.DateText, fs)
		}
	}
}

// A year filled up to a day is told once; a trip at the turn of the year is not.
func TestDateFilled(t *testing.T) {
	table := func(n int, cells func(i int) []string) []label.Finding {
		var rows []map[string]string
		for i := range n {
			rows = append(rows, With(append([]string{"recordNumber", fmt.Sprint(200 + i)}, cells(i)...)...))
		}
		_, fs := run(t, New(options(t)), open(t, rows...))
		return slices.DeleteFunc(fs, func(f label.Finding) bool { return f.Rule != "date-filled" })
	}
	for _, tt := range []struct {
		name  string
		n     int
		cells func(i int) []string
		want  bool
	}{
		{"one day at many places", 18, func(i int) []string {
			return []string{"eventDate", "1989-01-01", "locality", fmt.Sprint("Ribeira ", i)}
		}, true},
		{"last days", 12, func(i int) []string { return []string{"eventDate", fmt.Sprintf("%d-12-31", 1980+i)} }, true},
		{"nine in ten", 20, func(i int) []string {
			return []string{"eventDate", []string{"1989-01-01", "1990-06-12"}[min(1, i/18)], "locality", fmt.Sprint("Ribeira ", i)}
		}, true},
		{"one party at one place", 18, func(int) []string { return []string{"eventDate", "1989-01-01"} }, false},
		{"half of them", 20, func(i int) []string { return []string{"eventDate", fmt.Sprintf("%d-0%d-01", 1980+i, 1+i%2)} }, false},
		{"few", 9, func(i int) []string { return []string{"eventDate", fmt.Sprintf("%d-01-01", 1980+i)} }, false},
		{"years", 18, func(i int) []string { return []string{"eventDate", fmt.Sprint(1980 + i)} }, false},
		{"determined in one session", 18, func(i int) []string {
			return []string{"dateIdentified", "2026-01-01", "eventDate", "1989-05-02", "locality", fmt.Sprint("Ribeira ", i)}
		}, false},
		{"determined", 18, func(i int) []string {
			return []string{"dateIdentified", fmt.Sprintf("%d-01-01T00:00:00.000+0000", 2000+i), "eventDate", "1989-05-02"}
		}, true},
		{"a third of them determined", 18, func(i int) []string {
			return []string{"dateIdentified", fmt.Sprintf("%d-0%d-01", 2000+i, 1+i%3), "eventDate", "1989-05-02"}
		}, true},
		{"one in twenty determined", 120, func(i int) []string {
			return []string{"dateIdentified", fmt.Sprintf("%d-%02d-01", 1995+i/4, 1+min(1, i%20)), "eventDate", "1989-05-02"}
		}, false},
	} {
		if fs := table(tt.n, tt.cells); (len(fs) == 1) != tt.want || len(fs) > 1 {
			t.Errorf("%s: %v", tt.name, fs)
		}
	}
}

// The ways to write that there is no number, and what is near them and is one.
func TestNumberless(t *testing.T) {
	for _, text := range []string{"s.n.", "s/n", "s/nº", "s/n°", "S/Nº", "s/no", "sn", "SN", "s. nº", "s.nr.", "s. num.", "s. núm.", "o.Nr.", "o. Nr.", "ohne Nummer", "sans n°", "sans numéro", "no number", "sin número",
		"sin n.º", "sem número", "sem n.º", "z.n.", "Z. nr.", "[s.n.]", "sine num.", "senza numero"} {
		rs, fs := run(t, New(options(t)), open(t, With("recordNumber", text)))
		if rs[0].Number != "" || len(fs) > 0 {
			t.Errorf("%q: number %q, %v", text, rs[0].Number, fs)
		}
	}
	for _, text := range []string{"s/n 12", "SN 215", "S-12", "ZN4", "Nº 7", "N", "no. 5", "sin"} {
		if Absent("recordNumber", text) {
			t.Errorf("%q is taken for no number", text)
		}
	}
}

// A time that a data base adds is not a time; the date is read all the same.
func TestMidnight(t *testing.T) {
	rs, _ := run(t, New(options(t)), open(t, With("dateIdentified", "2025-06-20T00:00:00.000+0000", "eventDate", "1989-05-02T00:00:00")))
	r := rs[0]
	for _, s := range []date.Style{{}, {Time: true}} {
		if a, b := r.Date.Format(s, "en"), r.Identified.Format(s, "en"); a != "2 May 1989" || b != "20 June 2025" || r.DateText != "" || r.IdentifiedText != "" {
			t.Errorf("%+v: %q, %q; %q, %q", s, a, b, r.DateText, r.IdentifiedText)
		}
	}
}

// The language of the headings says which figure of a date is the day, where full
// stops part them and the row does not say it.
func TestSettledByLanguage(t *testing.T) {
	for _, tt := range []struct {
		dates, date string
		want        []string
	}{
		{"3.4.2019", "2019-04-03", nil},
		{"3.4.19", "", []string{`error date-ambiguous eventDate: the year has two figures: write the year with four figures, or say --dates "1900s", if the whole table is of that century [1919-04-03 or 1819-04-03 or 2019-04-03]`}},
		{"3/4/2019", "", []string{`error date-ambiguous eventDate: can be 3 April or 4 March 2019: say --dates "day first" or --dates "month first" if the whole table is written so, or write the month as a word [2019-04-03 or 2019-03-04]`}},
	} {
		tb, err := table.Open(table.Bytes("t.csv", []byte("Sammler;Sammelnummer;Fundort;Land;Bemerkungen;Datum\nA. Brandt;12;Lindoso;Portugal;;"+tt.dates+"\n")), table.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rs, fs := run(t, New(options(t)), tb)
		if got := dateFindings(fs); len(rs) != 1 || rs[0].Date.ISO() != tt.date || !slices.Equal(got, tt.want) {
			t.Errorf("%s: %s\n%s", tt.dates, rs[0].Date.ISO(), strings.Join(got, "\n"))
		}
	}
}

// A heading that gives the order of day and month settles it, unless a cell has it
// otherwise.
func TestSettledByOrderTold(t *testing.T) {
	for _, tt := range []struct{ heading, other, date string }{
		{"Collection date (dd/mm/yyyy)", "", "2019-04-03"}, {"Date collected (mm/dd/yyyy)", "", "2019-03-04"}, {"Date (d/m/y)", "", "2019-04-03"},
		{"Date (dd/mm/yyyy)", "3/14/2019", ""}, {"Date (mm/dd/yyyy)", "14/3/2019", ""}, {"Date", "", ""},
	} {
		text := "collector,number,locality,country," + tt.heading + "\nA. Brandt,12,Lindoso,Portugal,3/4/2019\n"
		if tt.other != "" {
			text += "A. Brandt,13,Lindoso,Portugal," + tt.other + "\n"
		}
		tb, err := table.Open(table.Bytes("t.csv", []byte(text)), table.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rs, _ := run(t, New(options(t)), tb)
		if got := rs[0].Date.ISO(); got != tt.date {
			t.Errorf("%s: %q, not %q", tt.heading, got, tt.date)
		}
	}
}
