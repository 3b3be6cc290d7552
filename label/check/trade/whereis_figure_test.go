package trade

import (
	"strings"
	"testing"
)

// A place far from the country that is stated is suggested where one slip of a figure
// puts it there, and no other.
func TestFigureSlips(t *testing.T) {
	for _, tt := range []struct{ lat, lon, country, state, message, suggest string }{
		{"18.17", "5.00", "Laos", "", "with 1 before the longitude it lies there", "18.17, 105.00"},
		{"-33.412", "151.20", "Chile", "", "", ""},
		{"-33.412", "170.65", "Chile", "", "", ""},
		{"14.3812", "-7.9135", "Portugal", "", "with the figures of the latitude exchanged it lies there", "41.3812, -7.9135"},
		{"38.5712", "-79.135", "Portugal", "", "with the decimal point of the longitude moved it lies there", "38.5712, -7.9135"},
		{"3.85712", "-7.9135", "Portugal", "", "with the decimal point of the latitude moved it lies there", "38.5712, -7.9135"},
		{"-22.4412", "-24.9812", "Brazil", "Rio de Janeiro", "with the figures of the longitude exchanged it lies there", "-22.4412, -42.9812"},
		{"-22.4412", "-24.9812", "Brazil", "Amazonas", "", ""}, // not in the state
		{"-22.4412", "170.0812", "Namibia", "", "with the decimal point of the longitude moved it lies there", "-22.4412, 17.00812"},
		{"38.4012", "-10.1512", "Portugal", "", "", ""}, // too near for a slip of degrees
		{"-17.2512", "116.4512", "Angola", "", "without the first figure of the longitude it lies there", "-17.2512, 16.4512"},
	} {
		_, fs := run(t, open(t, rows(at(0, tt.lat, tt.lon, tt.country, "", "on the slopes, 3 km N of the village", "stateProvince", tt.state))...), options(t))
		message, suggest := "", ""
		for _, f := range fs {
			if f.Rule == "coordinates-country" || f.Rule == "coordinates-sea" {
				message, suggest = f.Message, f.Suggest
			}
		}
		if message == "" || !strings.Contains(message, tt.message) || tt.message == "" && strings.Contains(message, "it lies there") || suggest != tt.suggest {
			t.Errorf("%s, %s in %s: %q, %q", tt.lat, tt.lon, tt.country, message, suggest)
		}
	}
}
