package trade

import (
	"math/bits"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/label/date"
	"cornerslip/label/place"
)

// The quick way to a longest run finds one as long as trying all pairs does,
// and its days do not fall.
func TestLongestTwin(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	for range 500 {
		list := make([]numbered, rnd.IntN(25))
		for i := range list {
			list[i].day = int32(rnd.IntN(12))
		}
		want, reach := 0, make([]int, len(list))
		for i := range list {
			reach[i] = 1
			for j := range i {
				if list[j].day <= list[i].day {
					reach[i] = max(reach[i], reach[j]+1)
				}
			}
			want = max(want, reach[i])
		}
		got, last := 0, int32(-1)
		for i, is := range longest(list) {
			if is {
				if list[i].day < last {
					t.Fatalf("%v: not in order", list)
				}
				got, last = got+1, list[i].day
			}
		}
		if got != want {
			t.Fatalf("%v: %d, not %d", list, got, want)
		}
	}
}

// slowDistance is the optimal string alignment distance with its whole table.
func slowDistance(a, b []rune) int {
	d := make([][]int, len(a)+1)
	for i := range d {
		d[i] = make([]int, len(b)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(a)][len(b)]
}

func TestWithinTwin(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 8))
	word := func() []rune {
		w := make([]rune, 1+rnd.IntN(9))
		for i := range w {
			w[i] = rune("abc"[rnd.IntN(3)])
		}
		return w
	}
	for range 20000 {
		a, b := word(), word()
		for limit := 1; limit <= 3; limit++ {
			if limit <= 2 && slowDistance(a, b) <= limit && bits.OnesCount64(letters(string(a))^letters(string(b))) > 4 {
				t.Fatalf("%q and %q: sets of letters too far apart", string(a), string(b))
			}
			if got, want := within(a, b, limit), slowDistance(a, b) <= limit; got != want {
				t.Fatalf("%q and %q within %d: %v", string(a), string(b), limit, got)
			}
		}
	}
	if within([]rune(strings.Repeat("a", 70)), []rune("a"), 2) || !slip("capitellatus", "capitelatus", 2) || slip("micrantha", "macrantha", 2) || slip("alba", "alta", 2) {
		t.Error("slip")
	}
}

// The days between two dates are those of the standard library's calendar.
func TestDays(t *testing.T) {
	from := time.Date(1753, 1, 1, 0, 0, 0, 0, time.UTC)
	first := days(date.Day{Year: 1753, Month: 1, Day: 1})
	for n := 0; n < 110000; n += 13 {
		at := from.AddDate(0, 0, n)
		got := days(date.Day{Year: at.Year(), Month: int(at.Month()), Day: at.Day()})
		if int(got-first) != n || day(got) != at.Format("2006-01-02") {
			t.Fatalf("%s is day %d, %s", at, got-first, day(got))
		}
	}
}

// Every country of ISO 3166-1 has a line; its places lie in it.
func TestCountryTable(t *testing.T) {
	for _, c := range place.Countries() {
		k, ok := countries()[c.Code]
		if !ok {
			t.Errorf("%s, %s, is missing", c.Code, c.Name)
			continue
		}
		if k.lowest >= k.highest || k.lowest < -2540 || k.highest > highestLand {
			t.Errorf("%s lies from %v to %v m", c.Code, k.lowest, k.highest)
		}
		for what, p := range map[string]degrees{"centre": k.centre, "capital": k.capital} {
			if what == "centre" && !k.hasCentre || what == "capital" && !k.hasCapital {
				continue
			}
			if !slices.Contains(place.CountriesNear(p.lat, p.lon, 3000), c.Code) {
				t.Errorf("the %s of %s, %v, lies in %v", what, c.Name, p, place.CountriesAt(p.lat, p.lon))
			}
		}
	}
	for code := range countries() {
		if !place.HasBorders(code) {
			t.Errorf("%s is no country", code)
		}
	}
	for code, parts := range territories {
		for _, p := range append(parts, code) {
			if _, ok := countries()[p]; !ok {
				t.Errorf("%s is no country", p)
			}
		}
	}
	for key, year := range formerStates() {
		a, b, _ := strings.Cut(key, " ")
		if !place.HasBorders(a) || !place.HasBorders(b) || a == b || year < 1800 {
			t.Errorf("%s until %d", key, year)
		}
	}
}

// Heights that handbooks agree upon, from memory of sources other than the
// table's: to hold its figures to.
func TestSummits(t *testing.T) {
	for code, high := range map[string]float64{
		"PT": 2351, "ES": 3718, "FR": 4806, "CH": 4634, "AT": 3798, "IT": 4806, "DE": 2962, "GB": 1345, "IE": 1039, "NO": 2469, "SE": 2097, "IS": 2110, "GR": 2918, "TR": 5137,
		"RU": 5642, "MA": 4167, "KE": 5199, "TZ": 5895, "ET": 4550, "ZA": 3450, "JP": 3776, "CN": 8849, "NP": 8849, "IN": 8586, "ID": 4884, "PG": 4509, "AU": 2745, "NZ": 3724,
		"US": 6190, "CA": 5959, "MX": 5636, "CR": 3820, "EC": 6263, "PE": 6768, "BR": 2995, "AR": 6961, "CL": 6893, "NL": 322, "DK": 171, "BE": 694, "LU": 560, "CV": 2829, "RE": 3071,
	} {
		if _, got, ok := heights(code); !ok || got < high-1 || got > high*1.02+5 {
			if len(territories[code]) == 0 {
				t.Errorf("%s rises to %v, not %v", code, got, high)
			}
		}
	}
}

func TestFamilyNames(t *testing.T) {
	if n := len(families()); n < 500 {
		t.Errorf("%d families", n)
	}
	for f := range families() {
		if !isFamily(f) || modern(strings.ToUpper(f)) != modern(f) {
			t.Errorf("%q is no family", f)
		}
	}
	for _, f := range []string{"unbekannt", "Poa", "", "indet.", "Fabaceae?"} {
		if isFamily(f) {
			t.Errorf("%q is a family", f)
		}
	}
}

func TestDoubled(t *testing.T) {
	for _, tt := range []struct{ text, signs, mended string }{
		{"a,, b", ",,", "a, b"}, {"a, , b", ", ,", "a, b"}, {"a;; b;; c", ";;", "a; b; c"}, {"a,;b", ",;", "a;b"}, {"a: : b", ": :", "a: b"}, {"dunes.. on", "..", "dunes. on"}, {"end..", "..", "end."},
		{"etc., and", "", ""}, {"...", "", ""}, {"1..5", "", ""}, {"../x", "", ""}, {"a.. .b", "..", "a. .b"}, {"s.l.; x", "", ""}, {"", "", ""}, {",", "", ""}, {"a, b; c: d.", "", ""}, {"12:30", "", ""},
	} {
		signs, mended := doubled(tt.text)
		if signs != tt.signs || mended != tt.mended {
			t.Errorf("%q: %q, %q", tt.text, signs, mended)
		}
		if signs != "" {
			if again, _ := doubled(mended); again != "" {
				t.Errorf("%q is not mended: %q", tt.text, mended)
			}
		}
	}
}
