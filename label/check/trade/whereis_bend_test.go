package trade

import (
	"slices"
	"testing"

	"cornerslip/label"
)

// In the bend of a river that the outlines of countries cut, those of states tell where a
// place lies.
func TestBendOfARiver(t *testing.T) {
	for _, c := range []struct {
		country, at string
		want        bool
	}{
		{"United States", "29.2005,-102.9205", false}, // Boquillas Canyon, on the left bank of the Rio Grande
		{"United States", "29.0505,-102.9205", true},
	} {
		src := "scientificName,recordedBy,country,locality,decimalLatitude,decimalLongitude,coordinateUncertaintyInMeters\nAgave lechuguilla Torr.,A. Prado," + c.country + ",Boquillas," + c.at + ",100\n"
		_, fs := run(t, openBytes(t, "t.csv", []byte(src)), options(t))
		if got := slices.ContainsFunc(fs, func(f label.Finding) bool { return f.Rule == "coordinates-country" }); got != c.want {
			t.Errorf("%s, %s: elsewhere %v", c.country, c.at, got)
		}
	}
}
