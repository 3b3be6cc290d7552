package trade

import (
	"fmt"
	"testing"
)

// A cell that repeats the heading of its column is told with what is to be done;
// captions of other columns, and places with a colon behind them, are not.
func TestCaptions(t *testing.T) {
	for _, tt := range []struct{ term, text, want string }{
		{"locality", "Localidade: Valdoura, ribeira", "Localidade is the heading of the column, which the label would print: take it out [Valdoura, ribeira]"},
		{"locality", "locality: NA", "locality is the heading of the column, and nothing is said under it: clear the cell, or write what is known []"},
		{"locality", "locality:  NA, occurrenceRemarks: NA, verbatimLocality: Valdoura", "several columns stand in the cell, each with its heading, and the label would print them so: give each a column of its own []"},
		{"habitat", "Hábitat: pinhal", "Hábitat is the heading of the column, which the label would print: take it out [pinhal]"},
		{"country", "Country: Portugal", "Country is the heading of the column, which the label would print: take it out [Portugal]"},
		{"county", "County: Palmela", "County is the heading of the column, which the label would print: take it out [Palmela]"},
		{"locality", "Setúbal: Valdoura, dunes", ""},
		{"locality", "Province: Setúbal, Department: Palmela, Valdoura", ""},
		{"locality", "Sítio: Valdoura", ""},
		{"locality", "Localities: three, near Valdoura", ""},
		{"habitat", "Substrate: shells", ""},
		{"habitat", "Vegetation: open pine wood", ""},
		{"occurrenceRemarks", "Habitat: open pine wood", ""},
		{"locality", "local://valdoura", ""},
	} {
		_, fs := run(t, open(t, rows([]string{tt.term, tt.text})...), options(t))
		got := ""
		for _, f := range fs {
			if f.Rule == "text-caption" {
				got += fmt.Sprintf("%s [%s]", f.Message, f.Suggest)
			}
		}
		if got != tt.want {
			t.Errorf("%s %q: %s", tt.term, tt.text, got)
		}
	}
}
