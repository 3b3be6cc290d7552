package trade

import (
	"slices"
	"testing"

	"cornerslip/label"
)

func TestColumnCounts(t *testing.T) {
	for _, tc := range []struct {
		term  string
		cells []string
		told  bool
	}{
		{"geodeticDatum", []string{"WGS84", "WGS85", "WGS86"}, true},
		{"geodeticDatum", []string{"WGS 84", "WGS 85", "WGS 86", "WGS 87"}, true},
		{"geodeticDatum", []string{"WGS84", "WGS85", "WGS84"}, false},
		{"geodeticDatum", []string{"84", "85", "86"}, false},
		{"decimalLatitude", []string{"38.1234", "39.1234", "40.1234"}, true},
		{"decimalLatitude", []string{"-38.1234", "-37.1234", "-36.1234"}, true},
		{"decimalLatitude", []string{"38.1234", "39.1234", "39.1234"}, false},
		// Stations of a grid.
		{"decimalLatitude", []string{"38.25", "39.25", "40.25"}, false},
		{"decimalLatitude", []string{"38.2500", "39.2500", "40.2500"}, false},
		{"decimalLatitude", []string{"38.3333", "39.3333", "40.3333"}, false},
		{"decimalLatitude", []string{"38", "39", "40"}, false},
		{"coordinateUncertaintyInMeters", []string{"30", "31", "32", "33", "34"}, true},
		{"coordinateUncertaintyInMeters", []string{"30", "31", "32", "33"}, false},
		{"coordinateUncertaintyInMeters", []string{"3", "4", "5", "6", "7"}, false},
		{"eventDate", []string{"12 May 2015", "12 May 2016", "12 May 2017", "12 May 2018"}, true},
		{"eventDate", []string{"12/5/2015", "12/5/2016", "12/5/2017", "12/5/2018"}, true},
		{"eventDate", []string{"2015-05-12", "2015-05-13", "2015-05-14", "2015-05-15"}, false},
		{"eventDate", []string{"1.5.2015", "1.5.2016", "1.5.2017", "1.5.2018"}, false},
		{"eventDate", []string{"2015", "2016", "2017", "2018"}, false},
	} {
		var all [][]string
		for i, s := range tc.cells {
			all = append(all, []string{tc.term, s, "recordNumber", itoa(214 + i)})
		}
		if told := counts(t, all); told != tc.told {
			t.Errorf("%s %q: told %t", tc.term, tc.cells, told)
		}
	}
	// The same day each year, under numbers of years.
	var all [][]string
	for i, s := range []string{"12 May 2015", "12 May 2016", "12 May 2017", "12 May 2018"} {
		all = append(all, []string{"eventDate", s, "recordNumber", itoa(214 + 30*i)})
	}
	if counts(t, all) {
		t.Error("a day of each year is told")
	}
}

// counts reports whether a column of the rows is told to count up.
func counts(t *testing.T, all [][]string) bool {
	_, found := run(t, open(t, rows(all...)...), options(t))
	return slices.ContainsFunc(found, func(f label.Finding) bool { return f.Rule == "column-counts" })
}
