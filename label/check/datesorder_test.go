package check

import (
	"fmt"
	"strings"
	"testing"
)

// Where a column's own dates do not tell whether the day stands first, the rest of
// the table may; it is said how, and nothing is taken for granted.
func TestOrderShown(t *testing.T) {
	columns := func(list string, terms ...string) (rows []map[string]string) {
		for i, line := range strings.Split(list, "; ") {
			r := With("recordNumber", fmt.Sprint(200+i))
			for k, cell := range strings.Fields(line) {
				r[terms[k]] = strings.ReplaceAll(cell, "_", " ")
			}
			rows = append(rows, r)
		}
		return rows
	}
	trip := "4/6/2024; 6/6/2024; 7/6/2024; 2/7/2024; 9/7/2024; 1/8/2024; 3/8/2024; 12/8/2024; 2/9/2024"
	for _, tt := range []struct {
		name  string
		rows  []map[string]string
		want  string // part of what is said of the first row that is in doubt
		reads string // its suggestion
	}{
		{"determinations", columns("4/6/2024 13/6/2024; 5/6/2024 14/6/2024; 4/7/2024 20/7/2024", "eventDate", "dateIdentified"),
			`can be 4 June or 6 April 2024; 3 dates of dateIdentified put the day first, none the month: say --dates "day first"`, "2024-06-04"},
		{"a column that is not read", columns("4/6/2024 6/13/2024; 5/6/2024 6/14/2024; 7/4/2024 7/20/2024", "eventDate", "Entered on"),
			`can be 4 June or 6 April 2024; 3 dates of "Entered on" put the month first, none the day: say --dates "month first"`, "2024-04-06"},
		{"a column that puts both first", columns("4/6/2024 13/6/2024; 5/6/2024 6/14/2024; 7/4/2024 7/20/2024", "eventDate", "Entered on"),
			`can be 4 June or 6 April 2024: say --dates "day first" or --dates "month first"`, "2024-06-04 or 2024-04-06"},
		{"columns that contradict each other", columns("4/6/2024 25/6/2024 6/14/2024; 5/6/2024 26/6/2024 6/14/2024", "eventDate", "dateIdentified", "Entered on"),
			`can be 4 June or 6 April 2024: say --dates "day first" or --dates "month first"`, "2024-06-04 or 2024-04-06"},
		{"numbers", columns(trip, "eventDate"),
			`can be 4 June or 6 April 2024; with the day first the dates rise with the collector's numbers, with the month first they fall in 3 of 7 places: say --dates "day first"`, "2024-06-04"},
		{"numbers, the month first", columns("6/4/2024; 6/6/2024; 6/7/2024; 7/2/2024; 7/9/2024; 8/1/2024; 8/3/2024; 8/12/2024; 9/2/2024", "eventDate"),
			`with the month first the dates rise with the collector's numbers, with the day first they fall in 3 of 7 places: say --dates "month first"`, "2024-06-04"},
		{"numbers without order", columns("4/6/2024; 9/7/2024; 6/6/2024; 2/7/2024; 7/6/2024; 1/8/2024; 12/8/2024; 3/8/2024", "eventDate"),
			`can be 4 June or 6 April 2024: say --dates "day first" or --dates "month first"`, "2024-06-04 or 2024-04-06"},
		{"too few numbers", columns("4/6/2024; 7/6/2024; 2/7/2024; 9/7/2024; 1/8/2024", "eventDate"),
			`can be 4 June or 6 April 2024: say --dates "day first" or --dates "month first"`, "2024-06-04 or 2024-04-06"},
		{"one month", columns("9/6/2024; 4/6/2024; 8/6/2024; 2/6/2024; 10/6/2024; 11/6/2024", "eventDate"),
			`can be 9 June or 6 September 2024; the second figure is 6 in all of them, the first one of 6: say --dates "day first"`, "2024-06-09 or 2024-09-06"},
		{"the first of each month", columns("1/9/2024; 1/4/2024; 1/8/2024; 1/2/2024; 1/10/2024; 1/11/2024", "eventDate"),
			`can be 1 September or 9 January 2024: say --dates "day first" or --dates "month first"`, "2024-09-01 or 2024-01-09"},
		{"determined before it was collected", columns("9/6/2024 2024-06-20; 8/6/2024 2024-06-20; 7/6/2024 June_2024", "eventDate", "dateIdentified"),
			`can be 9 June or 6 September 2024; with the month first 3 of these dates would be still to come, or after the determination: say --dates "day first"`, "2024-06-09"},
		{"both columns in doubt", columns("9/6/2024 1/7/2024; 8/6/2024 1/7/2024; 7/6/2024 1/7/2024", "eventDate", "dateIdentified"),
			`with the month first 3 of these dates would be still to come, or after the determination: say --dates "day first"`, "2024-06-09"},
		{"still to come", columns("3/12/2026", "eventDate"),
			`can be 12 March 2026 (read the other way it is still to come); with the day first 1 of these dates would be still to come, or after the determination: say --dates "month first"`, "2026-03-12"},
		{"years of two figures", columns("9/6/24 Entered; 8/6/24 25/6/24", "eventDate", "Entered on"),
			`the day or the month can stand first, and the year has two figures; 1 date of "Entered on" puts the day first, none the month: write the month as a word and the year with four figures, or say --dates "day first, 1900s"`, ""},
		{"a span of days", columns("9/6/2024_a_11/6/2024; 25/6/2024; 26/6/2024; 27/6/2024", "eventDate"),
			`can be 9–11 June or 6 September – 6 November 2024; 3 other dates of this column put the day first, none the month: say --dates "day first"`, "2024-06-09/2024-06-11"},
	} {
		_, fs := run(t, New(options(t)), open(t, tt.rows...))
		said := false
		for _, f := range fs {
			if f.Rule != "date-ambiguous" || f.Term != "eventDate" {
				continue
			}
			if said = true; !strings.Contains(f.Message, tt.want) || tt.reads != "" && f.Suggest != tt.reads {
				t.Errorf("%s: %s [%s]", tt.name, f.Message, f.Suggest)
			}
			break
		}
		if !said {
			t.Errorf("%s: nothing is said", tt.name)
		}
	}
}
