package trade

import (
	"fmt"
	"slices"
	"testing"
)

func TestInSmall(t *testing.T) {
	for text, want := range map[string]bool{
		"brazil": true, "são tomé": true, "usa": true, "rio grande do sul": true, "ceará": true,
		"Brazil": false, "den Haag": false, "s.l.": false, "at sea": false, "pt": false, "": false, "臺灣": false, "'s-Hertogenbosch": false,
		"unknown": false, "southern": false, "south yorkshire": true, "zona 3": false, "l'Hospitalet": false, "ǃKheis": false,
	} {
		if inSmall(text) != want {
			t.Errorf("%q: %v", text, !want)
		}
	}
}

// One habit is one finding of a record, and names the other cells.
func TestPlaceSmall(t *testing.T) {
	_, fs := run(t, open(t, rows([]string{"country", "portugal", "stateProvince", "faro", "municipality", "castro marim"},
		[]string{"recordNumber", "215", "county", "castro marim"}, []string{"recordNumber", "216"},
		[]string{"recordNumber", "217", "country", "Polska", "stateProvince", "kujawsko-pomorskie", "county", "toruński"})...), options(t))
	var got []string
	for _, f := range fs {
		if f.Rule == "place-small" {
			got = append(got, fmt.Sprintf("%d %s %q: %s [%s]", f.Row, f.Term, f.Value, f.Message, f.Suggest))
		}
	}
	want := []string{
		`1 country "portugal": typed in small letters, as stateProvince and municipality are: write them with their capitals [Portugal]`,
		`2 county "castro marim": typed in small letters: write it with its capitals []`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
