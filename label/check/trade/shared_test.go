package trade

import (
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/check"
)

// One point for many counties is told once, at the first of its records; what
// can be so in nature, or is one county written two ways, is not told.
func TestCoordinatesShared(t *testing.T) {
	for _, tt := range []struct {
		name, counties string
		change         []string
		also           int // further records of the finding, -1 for none
	}{
		{"five counties", "Sines Odemira Grândola Palmela Sesimbra", nil, 4},
		{"each twice", "Sines Sines Odemira Grândola Odemira Palmela Palmela", nil, 3},
		{"three meet in a point", "Sines Odemira Grândola", nil, -1},
		{"the word county or not", "Sines Sines_County Odemira Odemira_Co. Grândola grândola_county", nil, -1},
		{"a wide circle", "Sines Odemira Grândola Palmela", []string{"coordinateUncertaintyInMeters", "50000"}, -1},
		{"whole degrees", "Sines Odemira Grândola Palmela", []string{"decimalLatitude", "39", "decimalLongitude", "-8"}, -1},
		{"no county", "- - - -", []string{"county", ""}, -1},
	} {
		var rows []map[string]string
		for i, county := range strings.Fields(tt.counties) {
			pairs := append([]string{"county", strings.ReplaceAll(county, "_", " "), "recordNumber", itoa(300 + i)}, tt.change...)
			rows = append(rows, check.With(pairs...))
		}
		_, found := run(t, open(t, rows...), options(t))
		found = slices.DeleteFunc(found, func(f label.Finding) bool { return f.Rule != "coordinates-shared" })
		also := -1
		if len(found) == 1 {
			also = len(found[0].Also)
		}
		if len(found) > 1 || also != tt.also {
			t.Errorf("%s: %d findings with %d further records, want %d", tt.name, len(found), also, tt.also)
		}
	}
}
