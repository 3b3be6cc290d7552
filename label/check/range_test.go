package check

import "testing"

// Degrees beyond their range, with what the stated country tells of them.
func TestRangeMeant(t *testing.T) {
	for _, c := range []struct{ country, lat, lon, wantLat, wantLon string }{
		{"Portugal", "387786", "-8.8035", "38.7786", ""},
		{"Portugal", "38.7786", "-88035", "", "-8.8035"},
		{"Portugal", "387786", "-88035", "38.7786", "-8.8035"},
		{"Australia", "145.1234", "-37.8136", "-37.8136, 145.1234", ""},
		{"Brazil", "-34712", "-608035", "-3.4712", "-60.8035"},
		{"Portugal", "95.2", "-7.5", "", ""},
		{"", "387786", "-8.8035", "", ""},
		{"Atlantis", "387786", "-8.8035", "", ""},
		{"Portugal", "north", "-188.8", "", ""},
	} {
		got := map[string]string{}
		_, fs := run(t, New(options(t)), open(t, With("country", c.country, "decimalLatitude", c.lat, "decimalLongitude", c.lon)))
		for _, f := range fs {
			if f.Rule == "coordinates-range" {
				got[f.Term] = f.Suggest
				t.Log(f)
			}
		}
		if got["decimalLatitude"] != c.wantLat || got["decimalLongitude"] != c.wantLon {
			t.Errorf("%s %s, %s: suggests %q", c.country, c.lat, c.lon, got)
		}
	}
}
