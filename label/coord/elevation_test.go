package coord

import (
	"strings"
	"testing"

	"cornerslip/label/lang"
	"pgregory.net/rapid"
)

// Forms seen on labels; the feet and the texts without a unit follow the
// TDWG test AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM.
var elevations = []struct {
	in        string
	status    Status
	low, high string
	printed   string // in English, with plain spaces
}{
	{"1240 m", OK, "1240", "1240", "1240 m"},
	{"1240m.", OK, "1240", "1240", "1240 m"},
	{"1240-1260 m", OK, "1240", "1260", "1240–1260 m"},
	{"1240 m - 1260 m", OK, "1240", "1260", "1240–1260 m"},
	{"1500 - 2000 Ft", OK, "457.2", "609.6", "1500–2000 ft"},
	{"from 100 to 200 m", OK, "100", "200", "100–200 m"},
	{"entre 100 et 200 mètres", OK, "100", "200", "100–200 m"},
	{"alt. 400-500 msnm", OK, "400", "500", "400–500 m"},
	{"100 feet", OK, "30.48", "30.48", "100 ft"},
	{"4000'", OK, "1219.2", "1219.2", "4000 ft"},
	{"c. 4000 ft", OK, "1219.2", "1219.2", "c. 4000 ft"},
	{"ca. 1200 m s.m.", OK, "1200", "1200", "c. 1200 m"},
	{"± 1200 m", OK, "1200", "1200", "c. 1200 m"},
	{"1200 ± 20 m", OK, "1180", "1220", "1200 ± 20 m"},
	{"1200 m +/- 20 m", OK, "1180", "1220", "1200 ± 20 m"},
	{"1,240 m", OK, "1240", "1240", "1240 m"},
	{"1.240 m", OK, "1240", "1240", "1240 m"},
	{"1 240 m", OK, "1240", "1240", "1240 m"},
	{"12,5 m", OK, "12.5", "12.5", "12.5 m"},
	{"0.5 m", OK, "0.5", "0.5", "0.5 m"},
	{"sea level", OK, "0", "0", "0 m"},
	{"nível do mar", OK, "0", "0", "0 m"},
	{"near sea level", OK, "0", "0", "c. 0 m"},
	{"sea level - 20 m", OK, "0", "20", "0–20 m"},
	{"1200 m above sea level", OK, "1200", "1200", "1200 m"},
	{"1200 m a.s.l.", OK, "1200", "1200", "1200 m"},
	{"1200 m ü. M.", OK, "1200", "1200", "1200 m"},
	{"5 m below sea level", OK, "-5", "-5", "−5 m"},
	{"-400 m", OK, "-400", "-400", "−400 m"},
	{"-20 - -10 m", OK, "-20", "-10", "−20 – −10 m"},
	{"Minimum Elevation 100m", OK, "100", "100", "100 m"},
	{"Maximum Elevation 100m", OK, "100", "100", "100 m"},
	{"Min 100m Max 200m", OK, "100", "200", "100–200 m"},
	{"100 m 200 m", Ambiguous, "", "", ""},
	{"alt. to 10 m", OK, "", "10", "≤ 10 m"},
	{"> 1200 m", OK, "1200", "", "≥ 1200 m"},
	{"over 4000 ft", OK, "1219.2", "", "≥ 4000 ft"},
	{"4000 ft (1219 m)", OK, "1219.2", "1219.2", "4000 ft"},
	{"1219 m / 4000 ft", OK, "1219", "1219", "1219 m"},
	{"1240-1260 m (4070-4130 ft)", OK, "1240", "1260", "1240–1260 m"},
	{"海拔1200公尺", OK, "1200", "1200", "1200 m"},
	{"1200 m d'altitude", OK, "1200", "1200", "1200 m"},
	{"à 1200 m d’altitude", OK, "1200", "1200", "1200 m"},
	{"até 1200 m", OK, "", "1200", "≤ 1200 m"},
	{"bis 1200 m", OK, "", "1200", "≤ 1200 m"},
	{"hasta 1200 m", OK, "", "1200", "≤ 1200 m"},
	{"jusqu'à 1200 m", OK, "", "1200", "≤ 1200 m"},
	{"up to 1200 m", OK, "", "1200", "≤ 1200 m"},
	{"a 1200 m", OK, "1200", "1200", "1200 m"}, // at
	{"más de 1200 m", OK, "1200", "", "≥ 1200 m"},
	{"über 1200 m", OK, "1200", "", "≥ 1200 m"},
	{"1200+ m", OK, "1200", "", "≥ 1200 m"},
	{"1200 m +", OK, "1200", "", "≥ 1200 m"},
	{"+1200 m", OK, "1200", "1200", "1200 m"},
	{"1200 m s.m.", OK, "1200", "1200", "1200 m"},
	{"1200 (±50) m", OK, "1150", "1250", "1200 ± 50 m"},
	{"entre 1200 e 1300 m", OK, "1200", "1300", "1200–1300 m"},
	{"de 1200 a 1300 m", OK, "1200", "1300", "1200–1300 m"},
	{"60 m above sea", OK, "60", "60", "60 m"},
	{"ca. 100 m. above the sea", OK, "100", "100", "c. 100 m"},
	{"1200~1300 m", OK, "1200", "1300", "1200–1300 m"},
	{"1200m～1300m", OK, "1200", "1300", "1200–1300 m"},
	{"~1300 m", OK, "1300", "1300", "c. 1300 m"},
	{"～1300 m", OK, "1300", "1300", "c. 1300 m"},
	{"1200/1300 m", OK, "1200", "1300", "1200–1300 m"},
	{"3,900'", OK, "1188.72", "1188.72", "3900 ft"},
	{"1200 метров", OK, "1200", "1200", "1200 m"},
	{"- 5 m", Ambiguous, "", "", ""}, // a sign, or a dash behind a caption
	{"alt. – 5 m", Ambiguous, "", "", ""},
	{"1200- m", Ambiguous, "", "", ""},
	{"1200 m -", Ambiguous, "", "", ""},
	{"1200 ± m", OK, "1200", "1200", "c. 1200 m"},
	{"800-900 m; 1000 m", Ambiguous, "", "", ""},
	{"depth 5 m", NotConvertible, "", "", ""},
	{"1200 m on N slope", NotConvertible, "", "", ""},
	{"4000 ft (1500 m)", Ambiguous, "", "", ""},
	{"1240", Ambiguous, "", "", ""},
	{"1000-1200", Ambiguous, "", "", ""},
	{"1000 ft - 400 m", Ambiguous, "", "", ""},
	{"1240 m?", Ambiguous, "", "", ""},
	{"1260-1240 m", Ambiguous, "", "", ""},
	{"two thousand", NotConvertible, "", "", ""},
	{"x", NotConvertible, "", "", ""},
	{"", NotConvertible, "", "", ""},
	{"m", NotConvertible, "", "", ""},
}

func TestElevations(t *testing.T) {
	for _, c := range elevations {
		e, status, err := ParseElevation(c.in)
		low, high := e.InMetres()
		printed := strings.ReplaceAll(e.Format(ElevationStyle{}, lang.English), "\u00a0", " ")
		if status != c.status || low != c.low || high != c.high || printed != c.printed {
			t.Errorf("%q: %s %q %q %q (%v), want %s %q %q %q", c.in, status, low, high, printed, err, c.status, c.low, c.high, c.printed)
		}
		if (status == OK) != (err == nil) || (status == OK) == e.IsZero() {
			t.Errorf("%q: %s, %v", c.in, status, err)
		}
	}
}

func TestElevationConversion(t *testing.T) {
	for _, c := range []struct {
		in   string
		to   ElevationUnit
		want string
	}{
		{"4000 ft", InMetresOnly, "1220 m"},
		{"4050 ft", InMetresOnly, "1234 m"},
		{"1235 m", InFeetOnly, "4052 ft"},
		{"1240-1260 m", InFeetOnly, "4070–4130 ft"},
		{"1240 m", InMetresOnly, "1240 m"},
		{"c. 4000 ft", InBoth, "c. 4000 ft (1220 m)"},
		{"1200 ± 20 m", InFeetOnly, "3940 ± 70 ft"},
		{"sea level", InBoth, "0 m (0 ft)"},
		{"12.5 m", InFeetOnly, "41.0 ft"},
	} {
		e, _, err := ParseElevation(c.in)
		if got := strings.ReplaceAll(e.Format(ElevationStyle{c.to}, lang.English), "\u00a0", " "); got != c.want {
			t.Errorf("%q: %q (%v), want %q", c.in, got, err, c.want)
		}
	}
}

func TestNewElevation(t *testing.T) {
	for in, want := range map[string]string{"1240|1260": "1240–1260 m", "2500|": "2500 m", "|12.5": "12.5 m", "-5|-5": "−5 m",
		"282.8405974|": "282.841 m", "282.8404|": "282.840 m", "-0.9996|": "−1.000 m"} {
		low, high, _ := strings.Cut(in, "|")
		e, err := NewElevation(low, high)
		if got := strings.ReplaceAll(e.Format(ElevationStyle{}, lang.English), "\u00a0", " "); got != want {
			t.Errorf("%s: %q (%v), want %q", in, got, err, want)
		}
	}
	for _, in := range []string{"x|", "|", "1260|1240", "1,5|", "1e3|", "--5|", "1.|"} {
		low, high, _ := strings.Cut(in, "|")
		if e, err := NewElevation(low, high); err == nil {
			t.Errorf("%s: %v, want an error", in, e)
		}
	}
}

// TestElevationRoundTrip: what is printed and read again is the same height.
func TestElevationRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		places := rapid.IntRange(0, 2).Draw(t, "places")
		unit := int64(pow10(3 - places))
		draw := func(s string, from, to int64) int64 { return rapid.Int64Range(from, to).Draw(t, s) * unit }
		e := Elevation{set: true, places: int8(places), Unit: Unit(rapid.IntRange(0, 1).Draw(t, "unit")), Circa: rapid.Bool().Draw(t, "circa")}
		e.Low = draw("low", -430, 9000)
		e.High = e.Low
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			e.High += draw("more", 1, 500)
		case 1:
			e.Tolerance = draw("tolerance", 1, 50)
		case 2:
			e.bound = bound(rapid.IntRange(1, 2).Draw(t, "bound"))
		}
		l := rapid.SampledFrom(lang.Tags()).Draw(t, "lang")
		text := e.Format(ElevationStyle{}, l)
		got, status, err := ParseElevation(text)
		if got != e {
			t.Fatalf("%+v printed as %q is read as %s %+v (%v)", e, text, status, got, err)
		}
	})
}

func FuzzElevation(f *testing.F) {
	for _, c := range elevations {
		f.Add(c.in)
	}
	f.Fuzz(func(t *testing.T, s string) {
		e, status, err := ParseElevation(s)
		if (status == OK) != (err == nil) || (status == OK) == e.IsZero() {
			t.Fatalf("%q: %s, %+v, %v", s, status, e, err)
		}
		for _, u := range []ElevationUnit{UnitAsWritten, InMetresOnly, InFeetOnly, InBoth} {
			_ = e.Format(ElevationStyle{u}, lang.Portuguese)
		}
	})
}
