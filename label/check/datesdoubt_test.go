package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
)

func TestFiguresOrder(t *testing.T) {
	for _, tt := range []struct {
		text   string
		order  date.Order
		either bool
	}{
		{"25/5/2026", date.DayFirst, false}, {"5/25/2026", date.MonthFirst, false}, {"3.4.2026", date.UnknownOrder, true}, {"4/4/2026", date.UnknownOrder, false}, {"25-05-2026 10:00", date.DayFirst, false},
		{"2026-05-14", date.UnknownOrder, false}, {"14 May 2026", date.UnknownOrder, false}, {"13/14/2026", date.UnknownOrder, false}, {"5/25/26", date.MonthFirst, false}, {"5/25/20266", date.UnknownOrder, false}, {"", date.UnknownOrder, false},
		{"25. 5. 1987", date.DayFirst, false}, {"25-05-12", date.UnknownOrder, false}, {"25-05-87", date.DayFirst, false}, {"87/5/25", date.UnknownOrder, false}, {"25-5/1987", date.UnknownOrder, false},
	} {
		if order, either := figuresOrder(tt.text); order != tt.order || either != tt.either {
			t.Errorf("%q: %v %v", tt.text, order, either)
		}
	}
}

// One fault of a column is told with one cause, and says what the others show
// and how to answer for the whole table.
func TestDoubts(t *testing.T) {
	for _, tt := range []struct {
		name  string
		dates string // parted by blanks
		want  []string
	}{
		{"settled by the others", "25/5/1987 26/5/1987 27/5/1987 28/5/1987 12/6/1987 5/5/1987", []string{
			`error 5 date-ambiguous "12/6/1987": can be 12 June or 6 December 1987; 4 other dates of this column put the day first, none the month: say --dates "day first" if that holds for the whole table, or write the month as a word [1987-06-12]`}},
		{"month first", "5/25/1987 5/26/1987 5/27/1987 6/12/1987", []string{
			`error 4 date-ambiguous "6/12/1987": can be 6 December or 12 June 1987; 3 other dates of this column put the month first, none the day: say --dates "month first" if that holds for the whole table, or write the month as a word [1987-06-12]`}},
		{"one other settles nothing much", "25/5/1987 12/6/1987", []string{
			`error 2 date-ambiguous "12/6/1987": can be 12 June or 6 December 1987; 1 other date of this column puts the day first, none the month: say --dates "day first" if that holds for the whole table, or write the month as a word [1987-06-12 or 1987-12-06]`}},
		{"nothing settles", "12/6/1987 11.6.1987", []string{
			`error 1 date-ambiguous "12/6/1987": can be 12 June or 6 December 1987: say --dates "day first" or --dates "month first" if the whole table is written so, or write the month as a word [1987-06-12 or 1987-12-06]`,
			`error 2 date-ambiguous "11.6.1987": can be 11 June or 6 November 1987; where full stops are usual between the figures the day stands first: say --dates "day first" if that holds for the whole table, or write the month as a word [1987-06-11]`}},
		{"both orders", "25/5/1987 26/5/1987 5/27/1987 12/6/1987", []string{
			`warning 3 date-order "5/27/1987": this one puts the month first, while 2 other dates of this column put the day: make them one, for dates that can be read both ways are then in doubt []`,
			`error 4 date-ambiguous "12/6/1987": can be 12 June or 6 December 1987; 2 other dates of this column put the day first and 1 the month: write the month as a word [1987-06-12 or 1987-12-06]`}},
		{"agree", "5.5.1999 04/04/1982", nil},
		{"century alone", "12.vi.89 13.vi.1988", []string{
			`error 1 date-ambiguous "12.vi.89": the year has two figures; 1 other date with four figures is of 1988: say --dates "1900s" if that holds for the whole table, or write the year with four figures [1989-06-12 or 1889-06-12]`}},
		{"century and order", "5/9/89", []string{
			`error 1 date-ambiguous "5/9/89": the day or the month can stand first, and the year has two figures: write the month as a word and the year with four figures, or say --dates "day first, 1900s", if the whole table is so [1989-09-05 or 1889-09-05 or 1989-05-09 or 1889-05-09]`}},
		{"century and order settled", "25/9/1988 26/9/1988 27/9/1988 5/9/89", []string{
			`error 4 date-ambiguous "5/9/89": the day or the month can stand first, and the year has two figures; 3 other dates of this column put the day first, none the month; 3 other dates with four figures are of 1988: say --dates "day first, 1900s" if that holds for the whole table, or write the month as a word and the year with four figures [1989-09-05]`}},
		{"over the turn of the century", "25.ix.1998 26.ix.2001 27.ix.2003 28.ix.02", []string{
			`error 4 date-ambiguous "28.ix.02": the year has two figures; 3 other dates with four figures are of 1998–2003: write the year with four figures [2002-09-28]`}},
		{"older days are text in a spreadsheet", "1881-07-25 1897-06-11 1897-07-17 5/27/84", []string{
			`error 4 date-ambiguous "5/27/84": the year has two figures; 3 other dates with four figures are of 1881–1897: write the year with four figures [1984-05-27 or 1884-05-27]`}},
		{"an old notebook", "25.vii.1881 11.vi.1897 17.vii.1897 27.v.84", []string{
			`error 4 date-ambiguous "27.v.84": the year has two figures; 3 other dates with four figures are of 1881–1897: say --dates "1800s" if that holds for the whole table, or write the year with four figures [1884-05-27]`}},
		{"a spreadsheet's numbers", "43012 43013", []string{
			`error 1 date-ambiguous "43012": the number that a spreadsheet keeps for 2017-10-04: format the column as text and write the date [2017-10-04]`,
			`error 2 date-ambiguous "43013": the number that a spreadsheet keeps for 2017-10-05: format the column as text and write the date [2017-10-05]`}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var rows []map[string]string
			for i, d := range strings.Fields(tt.dates) {
				rows = append(rows, With("eventDate", d, "recordNumber", fmt.Sprint(200+i)))
			}
			rs, fs := run(t, New(options(t)), open(t, rows...))
			var got []string
			causes := map[string]bool{}
			for _, f := range fs {
				got = append(got, fmt.Sprintf("%s %d %s %q: %s [%s]", f.Severity, f.Row, f.Rule, f.Value, f.Message, f.Suggest))
				if f.Rule == "date-ambiguous" {
					causes[f.Cause] = true
					if rs[f.Row-1].Printable() {
						t.Errorf("row %d can be printed", f.Row)
					}
				}
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.want, "\n"))
			}
			if len(causes) > 1 || causes[""] {
				t.Errorf("causes %v", causes)
			}
		})
	}
}

// Of a column of nothing but doubts every row is told of, in bounded memory.
func TestManyDoubts(t *testing.T) {
	var rows []map[string]string
	for i := range maxDoubts + 50 {
		rows = append(rows, With("eventDate", fmt.Sprintf("%d/%d/1987", 1+i%6, 7+i%6), "recordNumber", fmt.Sprint(i)))
	}
	_, fs := run(t, New(options(t)), open(t, rows...))
	told := map[int]bool{}
	for _, f := range fs {
		if f.Rule != "date-ambiguous" {
			continue
		}
		told[f.Row] = true
		for _, c := range f.Also {
			if f.Cause == "" || c.Term != f.Term {
				t.Fatalf("%+v", f)
			}
			told[c.Row] = true
		}
	}
	if len(told) != len(rows) {
		t.Errorf("%d of %d rows are told", len(told), len(rows))
	}
}

// The house's answer settles the dates; it is an answer to the order alone, or
// to the century alone, or to both.
func TestDoubtsAnswered(t *testing.T) {
	for _, tt := range []struct {
		text string
		h    date.Hints
		want string
	}{
		{"12/6/1987", date.Hints{Order: date.DayFirst}, "1987-06-12"},
		{"12/6/1987", date.Hints{Order: date.MonthFirst}, "1987-12-06"},
		{"12/6/87", date.Hints{Order: date.DayFirst, Century: 1900}, "1987-06-12"},
		{"12.vi.87", date.Hints{Century: 1800}, "1887-06-12"},
		{"12/6/87", date.Hints{Order: date.DayFirst}, ""},
		{"12/6/87", date.Hints{Century: 1900}, ""},
	} {
		o := options(t)
		o.Dates = tt.h
		rs, fs := run(t, New(o), open(t, With("eventDate", tt.text)))
		fs = slices.DeleteFunc(fs, func(f label.Finding) bool { return f.Rule != "date-ambiguous" })
		if got := rs[0].Date.ISO(); got != tt.want || (got == "") != (len(fs) == 1) {
			t.Errorf("%q with %+v: %q, %v", tt.text, tt.h, got, fs)
		}
	}
}

// A date that says more than its day is printed as written, and still compared.
func TestDateSaysMore(t *testing.T) {
	for text, want := range map[string][2]string{
		"early June 1911": {"1911-06", "early June 1911"}, "Spring 1911": {"1911", "Spring 1911"}, "12.vi.1911": {"1911-06-12", ""}, "12 thermidor an VII": {"", "12 thermidor an VII"},
	} {
		rs, fs := run(t, New(options(t)), open(t, With("eventDate", text, "dateIdentified", text)))
		if r := rs[0]; r.Date.ISO() != want[0] || r.DateText != want[1] || r.Identified.ISO() != want[0] || r.IdentifiedText != want[1] || !r.Printable() {
			t.Errorf("%q: %s, %q; %s, %q", text, r.Date, r.DateText, r.Identified, r.IdentifiedText)
		}
		if want[0] != "" && len(fs) > 0 {
			t.Errorf("%q: %v", text, fs)
		}
	}
}
