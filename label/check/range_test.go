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

// Letters that stand for figures, and those that may not.
func TestFigured(t *testing.T) {
	for _, c := range []struct{ lat, lon, want string }{
		{"4O.3285", "-8.8035", "40.3285"}, {"38.4l2", "-8.8035", "38.412"}, {"38.4712", "-8.8O35", "-8.8035"},
		{"38.4712", "8.8O", ""}, {"38.4712", "O8.8", ""}, {"38.4712", "eight", ""}, {"38.4N", "-8.8035", ""},
	} {
		_, fs := run(t, New(options(t)), open(t, With("country", "", "decimalLatitude", c.lat, "decimalLongitude", c.lon)))
		got := ""
		for _, f := range fs {
			if f.Message == "a letter stands where a figure is meant" {
				got = f.Suggest
			}
		}
		for _, f := range fs {
			if isNumber(f.Value) {
				t.Errorf("%s, %s: the fault is not in %s", c.lat, c.lon, f)
			}
		}
		if got != c.want {
			t.Errorf("%s, %s: suggests %q, want %q: %v", c.lat, c.lon, got, c.want, fs)
		}
	}
}
