package main

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/unicode/norm"
)

// rowsOf reads an example table by its headings.
func rowsOf(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(example(t, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []map[string]string
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, h := range rows[0] {
			m[h] = r[i]
		}
		all = append(all, m)
	}
	return all
}

// printedText is what poppler reads of a PDF: words parted by single blanks.
func printedText(t *testing.T, pdf string) string {
	t.Helper()
	return strings.Join(strings.Fields(norm.NFC.String(program(t, "pdftotext", pdf, "-"))), " ")
}

// TestSlipsAreRead holds the printed slips against the rows of the table of
// identifications: each row's words stand on as many slips as its specimen has
// sheets.
func TestSlipsAreRead(t *testing.T) {
	text := printedText(t, everyPrint(t)["slip"])
	sheets := func(id map[string]string) int {
		for _, r := range rowsOf(t, "trip.csv") {
			first, _, _ := strings.Cut(r["recordedBy"], " | ")
			if id["catalogNumber"] != "" && r["catalogNumber"] == id["catalogNumber"] || r["recordNumber"] == id["recordNumber"] && first == id["recordedBy"] {
				return max(1, strings.Count(r["preparations"], "sheet"))
			}
		}
		t.Fatalf("no record for %v", id)
		return 0
	}
	slips := 0
	for _, id := range rowsOf(t, "identifications.csv") {
		want := sheets(id)
		slips += want
		name := id["scientificName"]
		if q := strings.TrimPrefix(id["identificationQualifier"], "cf. "); q != "" {
			name = strings.Replace(name, q, "cf. "+q, 1)
		}
		for _, words := range []string{name, id["identificationRemarks"]} {
			if words != "" && strings.Count(text, words) < want {
				t.Errorf("%q stands on %d slips, want %d", words, strings.Count(text, words), want)
			}
		}
	}
	signed := strings.Count(text, "Det. ") + strings.Count(text, "Conf. ") + strings.Count(text, "Rev. ")
	if comments := 1; signed+comments != slips {
		t.Errorf("%d slips are signed, the table makes %d", signed, slips)
	}
}

// TestTagsAreRead holds the printed tags against the table: each plant's
// collector and number once, and nothing else.
func TestTagsAreRead(t *testing.T) {
	var want []string
	for _, r := range rowsOf(t, "trip.csv") {
		who, _, _ := strings.Cut(r["recordedBy"], " | ")
		number := r["recordNumber"]
		if number == "" {
			number = "s.n."
		}
		want = append(want, who+" "+number)
	}
	var got []string
	for line := range strings.Lines(norm.NFC.String(program(t, "pdftotext", everyPrint(t)["tag"], "-"))) {
		if line = strings.Trim(line, " \n\f"); line != "" && !strings.HasPrefix(line, "Tags of trip.csv") { // the page's own foot
			got = append(got, line)
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("tags say %q\nwant %q", got, want)
	}
}

// TestBundleIsRead holds the tag of a press against the house file's times.
func TestBundleIsRead(t *testing.T) {
	text := printedText(t, everyPrint(t)["bundle"])
	for _, words := range []string{"I. Almeida 187–263", "Plants: 80", "in 30 July 2026", "out 31 July 2026", "Dryer 40 °C, 3 days", "out 3 August 2026",
		"Freezer −30 °C, 7 days", "in 3 August 2026", "out 10 August 2026"} {
		if !strings.Contains(text, words) {
			t.Errorf("%q is not in %q", words, text)
		}
	}
	ours, theirs := strings.Index(text, "ask the technician on duty"), strings.Index(text, "Fire risk")
	if ours < 0 || theirs < ours || strings.Index(text, "local codes come before this") < theirs {
		t.Errorf("the house's rule, the cautions and the last word are not in their order: %q", text)
	}
}
