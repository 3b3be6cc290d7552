package table

import (
	"strings"
	"testing"
)

// TestSpans: a column of the last day beside one of the first.
func TestSpans(t *testing.T) {
	for _, c := range []struct{ table, want string }{
		{"start date,end date\n2019-05-03,2019-05-06\n", "2019-05-03/2019-05-06"},
		{"Fecha inicial,Fecha final\n3/5/2019,6/5/2019\n", "3/5/2019 – 6/5/2019"},
		{"EarliestDateCollected,LatestDateCollected\n2019-05-03,\n", "2019-05-03"},
		{"EarliestDateCollected,LatestDateCollected\n,2019-05-03\n", "2019-05-03"},
		{"collection_date,late_collection_date\n2019-05-03,2019-05-06\n", "2019-05-03/2019-05-06"},
		{"date,date to\n2019-05-03,2019-05-03\n", "2019-05-03"},
		{"date to,date\n2019-05-04,2019-05-03\n", "2019-05-03/2019-05-04"},
		{"eventDate,end date\n2019-05-03,2019\n", "2019-05-03/2019"},
		{"date,end date\nNA,NA\n", "NA"},
		// With a date of its own the two beside it are not needed.
		{"eventDate,start date,end date\n2019-05-05,2019-05-03,2019-05-06\n", "2019-05-05"},
	} {
		_, rows := readAll(t, "country,"+strings.Replace(c.table, "\n", "\nPortugal,", 1), Options{})
		if got := rows[0].Get("eventDate").Text; got != c.want {
			t.Errorf("%q: %q, want %q", c.table, got, c.want)
		}
	}
}

// TestCutHeadings: a dBASE table leaves ten letters of a heading.
func TestCutHeadings(t *testing.T) {
	tb, rows := readAll(t, "Scientific,CatalogNum,Collection,CountryNam,StateProvi,DecimalLat,DecimalLon,UTMZone,UTMEasting,UTMNorthin\n"+
		"Erica arborea L.,12,Flora,Portugal,Braga,41.7,-8.1,29T,570000,4600000\n", Options{})
	for term, want := range map[string]string{"catalogNumber": "12", "country": "Portugal", "stateProvince": "Braga", "decimalLatitude": "41.7", "decimalLongitude": "-8.1",
		"northing": "4600000"} {
		if got := rows[0].Get(term).Text; got != want {
			t.Errorf("%s: %q, want %q", term, got, want)
		}
	}
	cut := 0
	for _, f := range tb.Findings() {
		if strings.HasSuffix(f.Message, "cut to ten letters") {
			cut++
		}
	}
	if cut != 2 {
		t.Errorf("%d headings are told to be cut: %v", cut, tb.Findings())
	}
	if _, rows := readAll(t, "country,locality,StateProvi\nPortugal,Valdoura,Braga\n", Options{}); rows[0].Get("stateProvince").Text != "" {
		t.Error("one heading of ten letters is no cut table")
	}
}
