package table

import (
	"strings"
	"testing"
)

// Data bases that fill their columns of numbers with 0; common practice, no source.
func TestZeroHeights(t *testing.T) {
	const four = "recordNumber,minimumElevationInMeters,maximumElevationInMeters,minimumDepthInMeters,maximumDepthInMeters\n"
	for _, c := range []struct {
		table string
		want  string // the columns of it
	}{
		{four + "1,0.0,0.0,0.0,0.0\n2,0.0,0.0,0.0,0.0\n3,0.0,0.0,0.0,0.0\n", "min max mindepth maxdepth"},
		{four + "1,0,0,0,0\n2,1300.0,0.0,0.0,0.0\n3,1250,1300,0,0\n4,0,0,0,0\n", "min max mindepth maxdepth"},
		{four + "1,0,0,0,0\n2,0,0,1,3\n3,0,0,2,4\n4,0,0,0,0\n5,0,0,0,1\n6,0,0,0,0\n", ""}, // seaweeds
		{four + "1,0,0,0,0\n2,0,0,0,0\n", ""},
		{four + "1,0,30,,\n2,0,20,,\n3,0,10,,\n", ""},
		{four + "1,1300,,0,2\n2,1300,,0,3\n3,1300,,0,1\n", ""}, // in lakes
		{"recordNumber,minimumElevationInMeters,maximumElevationInMeters\n1,1300.0,0.0\n2,900,0\n3,1100,0\n", "min max mindepth maxdepth"},
		{"recordNumber,minimumElevationInMeters,maximumElevationInMeters\n1,1300,1400\n2,900,0\n3,1100,1200\n", ""},
		{"recordNumber,minimumElevationInMeters,maximumElevationInMeters\n1,0,0\n2,0,0\n3,0,0\n", ""}, // a beach
		{"recordNumber,minimumElevationInMeters,maximumElevationInMeters\n1,-5,0\n2,-3,0\n3,-4,0\n", ""},
		{"recordNumber,minimumElevationInMeters,minimumDepthInMeters\n1,0,0\n2,0,0\n3,0,0\n", "min max mindepth maxdepth"},
		{four + "1,1300,1300,0,0\n2,0,0,0,0\n3,900,950,0,0\n", "mindepth maxdepth"}, // one at the shore
	} {
		tab, err := Open(Bytes("t.csv", []byte(c.table)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for i, short := range []string{"min", "max", "mindepth", "maxdepth"} {
			if tab.ZeroFilled(heightColumns[i]) {
				got = append(got, short)
			}
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%q: %q", c.table, got)
		}
		said := 0
		for _, f := range tab.Findings() {
			if strings.HasPrefix(f.Message, "0 stands for an empty cell") {
				said++
			}
		}
		if said > 1 || (said > 0) != (c.want != "") {
			t.Errorf("%q: said %d times", c.table, said)
		}
	}
	for text, want := range map[string]bool{"0": true, "0.0": true, "0,00": true, "00": true, "": false, ".": false, "0.5": false, "-0": false, "0 m": false} {
		if IsZero(text) != want {
			t.Errorf("%q", text)
		}
	}
}
