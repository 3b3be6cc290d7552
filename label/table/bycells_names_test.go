package table

import (
	"strings"
	"testing"
)

// What the cells of a column are decides what its heading means, where that says whose
// families, or which of several names.
func TestNamesByCells(t *testing.T) {
	for _, c := range []struct{ table, want string }{
		// Families by somebody's system; of two, the first.
		{"country,APG_Family,Old family name\nPortugal,Ericaceae,Ericaceae\nPortugal,Fabaceae,Leguminosae\nPortugal,Poaceae,Gramineae\n", "country family ?"},
		{"country,Family.Engler\nPortugal,Ericaceae\nPortugal,Leguminosae\nPortugal,Gramineae\n", "country family"},
		{"country,Family.Engler,family\nPortugal,Leguminosae,Fabaceae\n", "country ? family"},
		{"country,Family donated\nPortugal,yes\nPortugal,no\nPortugal,yes\n", "country ?"},
		{"country,family of the donor of the sheet\nPortugal,Rosaceae\nPortugal,Rosaceae\nPortugal,Rosaceae\n", "country ?"},
		// The name as it was written is the record's, where no other is.
		{"recordedBy,verbatimIdentification\nI. Almeida,Erica arborea L.\nI. Almeida,Ulex minor Roth\n", "recordedBy scientificName"},
		{"recordedBy,verbatimIdentification,genus\nI. Almeida,Erica arborea L.,Erica\n", "recordedBy verbatimIdentification genus"},
		{"recordedBy,verbatimIdentification,latestScientificName\nI. Almeida,Erica arborescens,Erica arborea\n", "recordedBy verbatimIdentification scientificName"},
		// First and last day, states and counties in other words for them.
		{"country,minimumEventDate,maximumEventDate\nPortugal,2026-06-14,2026-06-15\n", "country eventDate eventDate"},
		{"country,verbatimEventDate,minimumEventDate\nPortugal,14.6.2026,2026-06-14\n", "country verbatimEventDate eventDate"},
		{"country,firstPoliticalUnit,secondPoliticalUnit\nPortugal,Guarda,Manteigas\n", "country stateProvince county"},
		// Departments are parts of regions, where the cells bear it out.
		{"country,Département,Région\nFrance,Finistère,Bretagne\nFrance,Morbihan,Bretagne\nFrance,Landes,Aquitaine\n", "country county stateProvince"},
		{"country,Department,Region,County\nFrance,Finistère,Bretagne,x\nFrance,Morbihan,Bretagne,y\n", "country stateProvince stateProvince county"},
		{"country,Department,Region\nPeru,Lima,Costa\nPeru,Lima,Sierra\nPeru,Ica,Costa\n", "country stateProvince ?"},
		{"country,Department,Region\nFrance,Finistère,Bretagne\nFrance,Landes,Aquitaine\n", "country stateProvince stateProvince"},
	} {
		termsAre(t, c.table, c.want)
	}
}

// termsAre holds the terms of a table's columns against those wanted, ? for a heading
// that is not known.
func termsAre(t *testing.T, table, want string) {
	t.Helper()
	tab, err := Open(Bytes("t.csv", []byte(table)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, col := range tab.Columns() {
		if !col.Known {
			col.Term = "?"
		}
		got = append(got, col.Term)
	}
	if s := strings.Join(got, " "); s != want {
		t.Errorf("%q is read as %s, not %s", table, s, want)
	}
}
