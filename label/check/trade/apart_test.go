package trade

import (
	"fmt"
	"slices"
	"testing"

	"cornerslip/label"
)

// TestApart: what the other records of a table without countries bear out.
func TestApart(t *testing.T) {
	type place struct{ lat, lon, state string }
	near := func(n int, lat, lon int, state string) (all []place) {
		for i := range n {
			all = append(all, place{fmt.Sprintf("%d.%02d", lat, 11+7*i%80), fmt.Sprintf("%d.%02d", lon, 13+11*i%80), state})
		}
		return all
	}
	for _, tt := range []struct {
		name   string
		places []place
		want   string // term, value and suggestion
	}{
		{"a minus is lacking", append(near(20, 62, -114, ""), place{"62.31", "114.41", ""}), "decimalLongitude 114.41 -114.41"},
		{"a minus is lacking in the south", append(near(20, -20, 28, ""), place{"20.31", "28.41", ""}), "decimalLatitude 20.31 -20.31"},
		{"a minus too many", append(near(20, 40, 100, ""), place{"40.31", "-100.41", ""}), "decimalLongitude -100.41 100.41"},
		{"too few records", append(near(9, 62, -114, ""), place{"62.31", "114.41", ""}), ""},
		{"two regions", append(near(20, 62, -114, ""), place{"62.31", "114.41", ""}, place{"62.31", "30.41", ""}), ""},
		{"both sides of Greenwich", append(near(20, 50, 6, ""), place{"50.31", "-6.41", ""}), ""},
		{"another latitude", append(near(20, 62, -114, ""), place{"45.31", "114.41", ""}), ""},
		{"a figure is lacking", append(near(20, 18, -96, "Veracruz"), place{"18.31", "-9.96", "Veracruz"}), "decimalLongitude -9.96 "},
		{"another state", append(near(20, 18, -96, "Veracruz"), place{"18.31", "-9.96", "Castelo"}), ""},
		{"of one name", append(near(20, -17, -63, "Santa Cruz"), place{"-49.31", "-69.96", "Santa Cruz"}), ""},
	} {
		var changes [][]string
		for i, p := range tt.places {
			changes = append(changes, []string{"recordNumber", itoa(214 + i), "country", "", "stateProvince", p.state, "locality", "Valdoura, plot " + itoa(i), "decimalLatitude", p.lat, "decimalLongitude", p.lon})
		}
		_, found := run(t, open(t, rows(changes...)...), options(t))
		found = slices.DeleteFunc(found, func(f label.Finding) bool { return f.Rule != "coordinates-apart" })
		got := ""
		for _, f := range found {
			got += f.Term + " " + f.Value + " " + f.Suggest
		}
		if got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
