package trade

import (
	"slices"
	"testing"

	"cornerslip/label"
)

// A river says nothing of the sea, whether its name or the heading of its column
// says that it is one.
func TestRiverInTheSea(t *testing.T) {
	for _, c := range []struct {
		heading, water string
		want           bool
	}{
		{"Rio", "Minho", true},
		{"Rivier", "Rupel", true},
		{"waterBody", "Rio Minho", true},
		{"waterBody", "Atlantic Ocean", false},
		{"waterBody", "Minho", false},
	} {
		src := "scientificName,recordedBy,country,locality,decimalLatitude,decimalLongitude," + c.heading + "\nPoa annua,A. Prado,Portugal,Lindoso,41.87,-12.8," + c.water + "\n"
		_, fs := run(t, openBytes(t, "t.csv", []byte(src)), options(t))
		if got := slices.ContainsFunc(fs, func(f label.Finding) bool { return f.Rule == "coordinates-sea" }); got != c.want {
			t.Errorf("%s %q: in the sea %v", c.heading, c.water, got)
		}
	}
}
