package trade

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label/place"
)

// A spot is a line of the lists of places in testdata.
type spot struct {
	section  string
	lat, lon string
	country  string
	fields   []string // what follows
}

func spots(t testing.TB, name string) []spot {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	var all []spot
	section := ""
	for line := range strings.Lines(string(src)) {
		line = strings.TrimRight(line, "\n")
		if s, ok := strings.CutPrefix(line, "## "); ok {
			section = s
		}
		if line == "" || line[0] == '#' {
			continue
		}
		f := strings.Split(line, "\t")
		if len(f) < 4 {
			t.Fatalf("%s: %q", name, line)
		}
		all = append(all, spot{section, f[0], f[1], f[2], f[3:]})
	}
	return all
}

// at makes the changes for a row at a place.
func at(n int, lat, lon, country, day, locality string, more ...string) []string {
	if day == "" {
		day = "2019-05-14"
	}
	row := []string{"recordNumber", itoa(1000 + n), "eventDate", day, "country", country, "stateProvince", "", "locality", locality, "minimumElevationInMeters", "", "coordinateUncertaintyInMeters", "", "identifiedBy", "", "dateIdentified", ""}
	if strings.Contains(lat, "°") {
		row = append(row, "decimalLatitude", "", "decimalLongitude", "", "verbatimLatitude", lat, "verbatimLongitude", lon)
	} else {
		row = append(row, "decimalLatitude", lat, "decimalLongitude", lon, "verbatimLatitude", "", "verbatimLongitude", "")
	}
	return append(row, more...)
}

// said runs the rules over a table of such rows and returns, by row, what those
// about places and heights say of it.
func said(t testing.TB, table [][]string) map[int]string {
	t.Helper()
	_, fs := run(t, open(t, rows(table...)...), options(t))
	by := map[int]string{}
	for _, f := range fs {
		if strings.HasPrefix(f.Rule, "coordinates-") && f.Rule != "coordinates-minutes" || strings.HasPrefix(f.Rule, "elevation-") {
			by[f.Row] = f.Rule + ": " + f.Message
			for _, also := range f.Also {
				by[also.Row] = f.Rule + ": " + f.Message
			}
		}
	}
	return by
}

// Of a thousand right places nothing is said.
func TestPlacesRight(t *testing.T) {
	list := spots(t, "places_right.tsv")
	var table [][]string
	for i, s := range list {
		table = append(table, at(i, s.lat, s.lon, s.country, s.fields[0], s.fields[1]))
	}
	if len(list) < 1000 {
		t.Fatalf("%d places", len(list))
	}
	of, wrong := map[string]int{}, map[string]int{}
	by := said(t, table)
	for i, s := range list {
		of[s.section]++
		if what := by[i+1]; what != "" {
			wrong[s.section]++
			t.Errorf("%s, %s, %s, %s: %s", s.lat, s.lon, s.country, s.fields[1], what)
		}
	}
	for section, n := range of {
		t.Logf("%s: %d of %d", section, wrong[section], n)
	}
}

// Nor of places in the state that people count them to.
func TestStatesRight(t *testing.T) {
	list := spots(t, "states_right.tsv")
	var table [][]string
	for i, s := range list {
		table = append(table, at(i, s.lat, s.lon, s.country, "", s.fields[1], "stateProvince", s.fields[0]))
	}
	if len(list) < 70 {
		t.Fatalf("%d places", len(list))
	}
	by := said(t, table)
	for i, s := range list {
		if what := by[i+1]; what != "" {
			t.Errorf("%s, %s, %s, %s, %s: %s", s.lat, s.lon, s.country, s.fields[0], s.fields[1], what)
		}
	}
}

// Places some way within another country than the one stated are all found.
func TestPlacesElsewhere(t *testing.T) {
	list := spots(t, "places_elsewhere.tsv")
	var table [][]string
	for i, s := range list {
		table = append(table, at(i, s.lat, s.lon, s.country, "", "on the slopes, 3 km N of the village"))
	}
	by := said(t, table)
	for i, s := range list {
		if by[i+1] == "" {
			t.Errorf("%s, %s, which is %s, passes for %s", s.lat, s.lon, s.fields[0], s.country)
		}
	}
	t.Logf("%d of %d missed", len(list)-len(by), len(list))
}

// slips are the ways in which right coordinates become wrong ones. Each gives
// the wrong ones, or nothing where there is nothing to change.
var slips = []struct {
	name   string
	most   int // how many of the hundred or so may be missed: they stay in the country
	change func(lat, lon string) (string, string)
}{
	{"sign of the latitude", 3, func(lat, lon string) (string, string) { return otherSign(lat), lon }},
	{"sign of the longitude", 0, func(lat, lon string) (string, string) { return lat, otherSign(lon) }},
	{"both signs", 0, func(lat, lon string) (string, string) { return otherSign(lat), otherSign(lon) }},
	{"exchanged", 1, func(lat, lon string) (string, string) { return lon, lat }},
	{"exchanged, a sign lost", 1, func(lat, lon string) (string, string) {
		return strings.TrimPrefix(lon, "-"), strings.TrimPrefix(lat, "-")
	}},
	{"latitude for longitude", 0, func(lat, lon string) (string, string) { return lat, lat }},
	{"longitude for latitude", 0, func(lat, lon string) (string, string) { return lon, lon }},
	{"latitude's digits transposed", 3, func(lat, lon string) (string, string) { return transposed(lat), lon }},
	{"longitude's digits transposed", 6, func(lat, lon string) (string, string) { return lat, transposed(lon) }},
	{"ten degrees north", 20, func(lat, lon string) (string, string) { return moved(lat, 10), lon }},
	{"ten degrees west", 14, func(lat, lon string) (string, string) { return lat, moved(lon, -10) }},
	{"a digit lost", 0, func(lat, lon string) (string, string) { return lat, dropped(lon) }},
	{"a digit lost in the latitude", 1, func(lat, lon string) (string, string) { return dropped(lat), lon }},
	{"point in the wrong place", 0, func(lat, lon string) (string, string) { return pointed(lat), pointed(lon) }},
	{"zero for the longitude", 4, func(lat, lon string) (string, string) { return lat, "0" }},
}

func otherSign(s string) string {
	if rest, ok := strings.CutPrefix(s, "-"); ok {
		return rest
	}
	return "-" + s
}

// transposed exchanges the last two figures before the point.
func transposed(s string) string {
	i := strings.IndexByte(s, '.')
	if i < 2 || s[i-2] == '-' {
		return s
	}
	return s[:i-2] + s[i-1:i] + s[i-2:i-1] + s[i:]
}

func moved(s string, by float64) string {
	return strconv.FormatFloat(parse(s)+by, 'f', 4, 64)
}

// dropped loses the figure before the point.
func dropped(s string) string {
	i := strings.IndexByte(s, '.')
	if i < 2 || s[i-2] == '-' {
		return s
	}
	return s[:i-1] + s[i:]
}

// pointed has the point a figure too far to the left.
func pointed(s string) string {
	return strconv.FormatFloat(parse(s)/10, 'f', 5, 64)
}

func TestPlacesWrong(t *testing.T) {
	list := spots(t, "places_wrong.tsv")
	for _, slip := range slips {
		var table [][]string
		var what []string
		for _, s := range list {
			lat, lon := slip.change(s.lat, s.lon)
			if lat == s.lat && lon == s.lon || math.Abs(parse(lon)) > 180 {
				continue
			}
			table = append(table, at(len(table), lat, lon, s.country, "", "on the slopes, 3 km N of the village"))
			what = append(what, fmt.Sprintf("%s, %s, %s (%s, %s)", lat, lon, s.country, s.lat, s.lon))
		}
		by := said(t, table)
		var missed []string
		for i, w := range what {
			if by[i+1] == "" {
				missed = append(missed, w)
			}
		}
		if len(missed) > slip.most {
			t.Errorf("%s: %d of %d missed\n%s", slip.name, len(missed), len(table), strings.Join(missed, "\n"))
		}
		t.Logf("%s: %d of %d missed", slip.name, len(missed), len(table))
	}
}

// The places that the time zone database has for its zones lie where it says,
// to the minute or second, for 240 countries and territories by code and name.
func TestPlacesOfZones(t *testing.T) {
	src, err := os.ReadFile(outside.File(t, "/usr/share/zoneinfo/zone.tab"))
	if err != nil {
		t.Fatal(err)
	}
	var table [][]string
	var what []string
	for line := range strings.Lines(string(src)) {
		f := strings.Split(strings.TrimSpace(line), "\t")
		if line[0] == '#' || len(f) < 3 {
			continue
		}
		i := 1 + strings.IndexAny(f[1][1:], "+-")
		lat, lon := sexagesimal(f[1][:i], "N", "S"), sexagesimal(f[1][i:], "E", "W")
		c, ok := place.Country(f[0])
		if !ok {
			t.Errorf("%s is no country", f[0])
		}
		for _, name := range []string{c.Code, c.Name, c.In("fr"), c.In("zh-Hant")} {
			table = append(table, at(len(table), lat, lon, name, "", "on the slopes, 3 km N of the village", "coordinateUncertaintyInMeters", "2000"))
			what = append(what, name+", "+f[2])
		}
	}
	if len(what) < 1600 {
		t.Fatalf("%d places", len(what))
	}
	by := said(t, table)
	for i, w := range what {
		if by[i+1] != "" {
			t.Errorf("%s: %s", w, by[i+1])
		}
	}
	t.Logf("%d of %d", len(by), len(what))
}

// sexagesimal writes out an angle of ISO 6709: ±DDMM, ±DDDMM and with seconds.
func sexagesimal(s, plus, minus string) string {
	side := plus
	if s[0] == '-' {
		side = minus
	}
	s = s[1:]
	degrees, seconds := s[:len(s)-2], ""
	minutes := s[len(s)-2:]
	if len(s) >= 6 {
		degrees, minutes, seconds = s[:len(s)-4], s[len(s)-4:len(s)-2], s[len(s)-2:]+"″"
	}
	return degrees + "°" + minutes + "′" + seconds + side
}

// TestWordsForAnArea: words for a park with points all over it are no fault of theirs;
// one or two points far from the rest are.
func TestWordsForAnArea(t *testing.T) {
	for _, tt := range []struct {
		far  []string // latitudes of records away from the six others
		want int
	}{
		{[]string{"38.8512"}, 1},
		{[]string{"38.8512", "38.9512"}, 2},
		{[]string{"38.8512", "38.9012", "38.9512"}, 0},
		{[]string{"38.8512", "38.8512", "38.8512"}, 1}, // one point, three records
	} {
		var changes [][]string
		for i := range 6 {
			changes = append(changes, []string{"recordNumber", itoa(214 + i), "locality", "Reserve of the marsh and its environs"})
		}
		for i, lat := range tt.far {
			changes = append(changes, []string{"recordNumber", itoa(220 + i), "locality", "Reserve of the marsh and its environs", "decimalLatitude", lat})
		}
		for i := range 4 {
			changes = append(changes, []string{"recordNumber", itoa(230 + i), "locality", "Reserve of the marsh and its environs"})
		}
		_, fs := run(t, open(t, rows(changes...)...), options(t))
		n := 0
		for _, f := range fs {
			if f.Rule == "locality-coordinates" {
				n++
			}
		}
		if n != tt.want {
			t.Errorf("%q: %d findings, want %d: %v", tt.far, n, tt.want, fs)
		}
	}
}

// TestWholeArea: the name of a park alone is no spot, however many words it has.
func TestWholeArea(t *testing.T) {
	for text, want := range map[string]bool{
		"Ash Land Bridge National Preserve":             false,
		"Parque Nacional da Serra do Vale":              false,
		"Hills of the Old Ash Wilderness":               false,
		"Ash Land Bridge National Preserve, at the hut": true,
		"Serra do Vale, by the spring":                  true,
		"Old Ash Mountains 3 km N":                      true,
		"path behind the National Park headquarters":    true,
		"Ash Valley": false,
	} {
		if got := detailed(text); got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}
