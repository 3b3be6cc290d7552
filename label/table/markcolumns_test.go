package table

import (
	"strings"
	"testing"
)

// Columns of herbaria with marks are told once, as what they are; not measures under
// one letter, nor few of them.
func TestColumnsOfHerbaria(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"country,LISU,COI,K\nPortugal,1,,1\nPortugal,,1,\nPortugal,1,1,\n", `headings "LISU", "COI", "K" look like codes of herbaria`},
		{"country,LISU,COI,XYZ,seen\nPortugal,x,,x,12\nPortugal,,x,,13\nPortugal,x,x,,12\n", `headings "LISU", "COI", "XYZ" look like codes of herbaria`},
		{"country,N,P,K\nPortugal,1.2,0.3,0.8\nPortugal,1.1,0.2,0.7\nPortugal,1.4,0.4,0.9\n", ""},
		{"country,K,P\nPortugal,1,\nPortugal,,1\nPortugal,1,1\n", ""},
		{"country,DBH,WD,SLA\nPortugal,1,\nPortugal,,1\nPortugal,1,1\n", ""},
	} {
		tb, _ := readAll(t, c.in, Options{})
		var got []string
		for _, f := range tb.Findings() {
			if strings.Contains(f.Message, "codes of herbaria") {
				got = append(got, f.Message)
			}
		}
		if c.want == "" && len(got) > 0 || c.want != "" && (len(got) != 1 || !strings.HasPrefix(got[0], c.want)) {
			t.Errorf("%q: %q, want %q", c.in, got, c.want)
		}
	}
}

// A column of cultivars is read by its cells.
func TestCultivarColumn(t *testing.T) {
	for _, c := range []struct {
		cells string
		known bool
	}{
		{"Landa,Golden Hill,Prates 12", true},
		{"yes,no,yes", false},
		{"wild,wild,landrace", false},
	} {
		in := "species,cultivar\n"
		for _, cell := range strings.Split(c.cells, ",") {
			in += "Malus domestica," + cell + "\n"
		}
		tb, _ := readAll(t, in, Options{})
		if got := tb.Has("cultivarEpithet"); got != c.known {
			t.Errorf("%s: read is %v", c.cells, got)
		}
	}
}
