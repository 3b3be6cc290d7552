package check

import "testing"

// TestUnplaced: whoever writes that a place has no coordinates or no height has said it.
func TestUnplaced(t *testing.T) {
	for _, c := range []struct {
		term, text string
		want       bool
	}{
		{"verbatimLatitude", "s/ coord.", true}, {"verbatimCoordinates", "s/coord", true}, {"verbatimCoordinates", "Sem coordenadas", true},
		{"verbatimLongitude", "sin coord.", true}, {"verbatimCoordinates", "[s.c.]", true}, {"verbatimCoordinates", "ohne Koordinaten", true},
		{"verbatimElevation", "s/ alt.", true}, {"verbatimElevation", "sem altitude", true}, {"minimumElevationInMeters", "k. A.", true},
		{"verbatimElevation", "s/c", true}, {"verbatimCoordinates", "sin GPS", true}, {"verbatimCoordinates", "sem dados", true},
		{"locality", "s/ coord.", false}, {"verbatimLatitude", "s 12 34", false}, {"verbatimElevation", "sea level", false},
		{"verbatimLatitude", "S", false}, {"verbatimElevation", "sin dudas 300 m", false}, {"verbatimCoordinates", "S. Caetano", false},
	} {
		if got := isUnplaced(c.term, c.text); got != c.want {
			t.Errorf("%s %q: %v", c.term, c.text, got)
		}
	}
}
