package coord

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label/lang"
	"pgregory.net/rapid"
)

func table(t testing.TB, name string) [][]string {
	t.Helper()
	data, err := os.ReadFile(outside.Shared(t, "checks/"+name))
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]string
	for _, line := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")[1:] {
		rows = append(rows, strings.Split(line, "\t"))
	}
	return rows
}

// Ambiguous rows whose value in the table comes from elsewhere than the text.
var fromElsewhere = map[string]string{
	"8":  "the uncertainty is of minutes, though the longitude has seconds and the finer of two counts (row 20)",
	"62": "the sign of the longitude is known from the page, not from the text",
	"64": "the sign of the longitude is known from the page, not from the text",
	"85": "the sign comes from the country; the uncertainty is of degrees, though the latitude has a decimal",
}

// TestCoordinates holds the reader to verbatim forms seen on labels and in
// guides.
func TestCoordinates(t *testing.T) {
	rows := table(t, "coordinates.tsv")
	for _, f := range rows {
		text := strings.ReplaceAll(f[1], `\t`, "\t")
		got := strings.Split(ReadLine(text), "\t")
		want := []string{f[3], f[4], f[5], f[7]}
		if fromElsewhere[f[0]] != "" {
			want = want[:1]
		}
		for i, w := range want {
			if got[i] != w {
				t.Errorf("row %s %q: got %q, want %q (%v)", f[0], f[1], got[:4], want, Read(text, Hints{}).Err)
				break
			}
		}
	}
	if len(rows) < 40 {
		t.Errorf("only %d rows", len(rows))
	}
}

// The rules behind the forms. Values are the arithmetic of degrees; UTM and
// MGRS were made with GeoConvert 2.1.2.
var forms = []struct{ in, status, lat, lon, metres string }{
	// order and separators
	{"41.2339 N, 8.6111 W", "ok", "41.2339000", "-8.6111000", "14"},
	{"8.6111 W, 41.2339 N", "ok", "41.2339000", "-8.6111000", "14"},
	{"N41.2339 W8.6111", "ok", "41.2339000", "-8.6111000", "14"},
	{"41.2339,-8.6111", "ok", "41.2339000", "-8.6111000", "14"},
	{"lat. 41.2339 long. -8.6111", "ok", "41.2339000", "-8.6111000", "14"},
	{"-36.524276; -114.164055", "ok", "-36.5242760", "-114.1640550", "1"},
	{"N. lat. 41° 14', W. long. 8° 36'", "ok", "41.2333333", "-8.6000000", "2320"},
	{"41° 14' N. lat., 8° 36' W. long.", "ok", "41.2333333", "-8.6000000", "2320"},
	{"+41.2339-008.6111/", "ok", "41.2339000", "-8.6111000", "14"}, // ISO 6709
	{"+4114-00836/", "ok", "41.2333333", "-8.6000000", "2320"},
	{"-411402.5+0083640.2+750/", "ok", "-41.2340278", "8.6111667", "4"},
	{"-41.2339 - 8.6111", "ambiguous", "-41.2339000", "8.6111000", "14"},
	// marks and their lack
	{"41 14 02 N 8 36 40 W", "ok", "41.2338889", "-8.6111111", "39"},
	{"41:14:02N 8:36:40W", "ok", "41.2338889", "-8.6111111", "39"},
	{"41.14.02 N 8.36.40 W", "ok", "41.2338889", "-8.6111111", "39"},
	{"41-14-02N 008-36-40W", "ok", "41.2338889", "-8.6111111", "39"},
	{"411402N 0083640W", "ok", "41.2338889", "-8.6111111", "39"},
	{"4114N 0836W", "ok", "41.2333333", "-8.6000000", "2320"},
	{"41d14m02sN 8d36m40sW", "ok", "41.2338889", "-8.6111111", "39"},
	{"15o19'N 61o19'W", "ok", "15.3166667", "-61.3166667", "2570"},
	{"41°14'02''N 8°36'40''W", "ok", "41.2338889", "-8.6111111", "39"},
	{"S 36 31 27 W 114 09 51", "ok", "-36.5241667", "-114.1641667", "40"},
	// words and languages
	{"41 degrees 14 minutes 2 seconds north, 8 degrees 36 minutes 40 seconds west", "ok", "41.2338889", "-8.6111111", "39"},
	{"19°17' Sur, 69°18' Oeste", "ok", "-19.2833333", "-69.3000000", "2545"},
	{"55° 40' n. Br., 12° 30' ö. L.", "ok", "55.6666667", "12.5000000", "2132"},
	{"北緯41°14′02″ 西經8°36′40″", "ok", "41.2338889", "-8.6111111", "39"},
	{"41°14'02\" с.ш. 8°36'40\" в.д.", "ok", "41.2338889", "8.6111111", "39"},
	{"19°17'N, 69°18'O", "ambiguous", "19.2833333", "", ""},
	{"45,5017 N 73,5673 W", "ok", "45.5017000", "-73.5673000", "14"},
	{"41°14'02,5\"N 8°36'40,2\"W", "ok", "41.2340278", "-8.6111667", "4"},
	// what stands beside
	{"Serra do Gerês, 41°14'N, 8°36'W, alt. 750 m", "ok", "41.2333333", "-8.6000000", "2320"},
	{"41°14'N 8°36'W, 4000 ft", "ok", "41.2333333", "-8.6000000", "2320"},
	{"41.2339 -8.6111 (WGS 84) ± 30 m", "ok", "41.2339000", "-8.6111000", "14"},
	{"41.2339 N, 8.6111 W (41°14'02\"N 8°36'40\"W)", "ok", "41.2339000", "-8.6111000", "14"},
	{"12 41°14'N 8°36'W", "ambiguous", "41.2333333", "-8.6000000", "2320"},
	// missing and contradictory
	{"41°14'N", "not_convertible", "41.2333333", "", ""},
	{"41°14'N, 8°36'", "ambiguous", "41.2333333", "", ""},
	{"41°14'N 8°36'N", "ambiguous", "", "", ""},
	{"41.2, 8.6", "ambiguous", "41.2000000", "8.6000000", "13918"},
	{"-41°14'N 8°36'W", "ambiguous", "41.2333333", "-8.6000000", "2320"},
	{"18°29'N, 66°56'W-66°57'W", "ambiguous", "18.4833333", "-66.9333333", "2550"},
	{"41°14'-41°16'N, 8°36'W", "ambiguous", "41.2666667", "-8.6000000", "2319"},
	{"41°14'N, 8°36'W ?", "ambiguous", "41.2333333", "-8.6000000", "2320"},
	{"12.40° N 3.15° E", "ok", "12.4000000", "3.1500000", "1552"},
	{"12.75 N 3.15 E", "ok", "12.7500000", "3.1500000", "1551"},
	{"41°14'N 8°36'E of Paris", "not_convertible", "", "", ""},
	{"SW 1/4 sec 12, T. 3 N., R. 4 W.", "not_convertible", "", "", ""},
	{"OSGB TQ 302 796", "not_convertible", "", "", ""},
	{"23 degrees south 185 degrees, x degrees east", "not_convertible", "", "", ""},
	{"1985", "not_convertible", "", "", ""},
	{"", "not_convertible", "", "", ""},
	// impossible
	{"41°60'N 8°36'W", "invalid", "", "", ""},
	{"95°14'N 8°36'W", "invalid", "", "", ""},
	{"41°14'N 188°36'W", "invalid", "", "", ""},
	{"100, 120", "invalid", "", "", ""},
	// grids
	{"29T 532123 4567890", "ok", "41.2617919", "-8.6165241", "1"},
	{"29 T 0532123 4567890", "ok", "41.2617919", "-8.6165241", "1"},
	{"UTM 29T E532123 N4567890", "ok", "41.2617919", "-8.6165241", "1"},
	{"29T 532 123 4 567 890", "ok", "41.2617919", "-8.6165241", "1"},
	{"Zone 29 N 532123 4567890", "ok", "41.2617919", "-8.6165241", "1"},
	{"zone 29, 532123 E, 4567890 N", "ambiguous", "41.2617919", "-8.6165241", "1"},
	{"29S 487654 4289012", "ambiguous", "38.7497117", "-9.1420779", "1"}, // band S, or south
	{"54K 0390210 7377243", "ok", "-23.7120043", "139.9229964", "1"},
	{"30T 699582 5709431", "ambiguous", "51.5007258", "-0.1243900", "1"}, // the band is U
	{"UTM 29T 532123 4567890, ED50", "ambiguous", "41.2617919", "-8.6165241", "1"},
	{"61T 532123 4567890", "invalid", "", "", ""},
	{"532123 E 4567890 N", "not_convertible", "", "", ""},
	{"29TNF3212367890", "ok", "41.2617963", "-8.6165181", "1"},
	{"29T NF 321 678", "ok", "41.2614305", "-8.6162039", "71"},
	{"29TNF36", "ok", "41.2356404", "-8.5823458", "7072"},
	{"29T NF 3212 67890", "invalid", "", "", ""},
	{"29TNF321678901", "invalid", "", "", ""},
	{"29TZZ3212367890", "invalid", "", "", ""},
}

func TestForms(t *testing.T) {
	for _, c := range forms {
		r := Read(c.in, Hints{})
		got := strings.Join(strings.Split(ReadLine(c.in), "\t")[:4], " ")
		if want := strings.Join([]string{c.status, c.lat, c.lon, c.metres}, " "); got != want {
			t.Errorf("%q: got %q, want %q (%v)", c.in, got, want, r.Err)
		}
		if (r.Status == OK) != (r.Err == nil) {
			t.Errorf("%q: status %s, error %v", c.in, r.Status, r.Err)
		}
	}
}

func TestReadLine(t *testing.T) {
	for in, want := range map[string]string{
		"42°N 15°E":             "ok\t42.0000000\t15.0000000\t138570\t33N 500000.000 4649776.225\t33TWG0000049776",
		"33N 500000 4649776":    "ok\t41.9999980\t15.0000000\t1\t33N 500000.000 4649776.000\t33TWG0000049776",
		"85.5 N 15.5 E":         "ok\t85.5000000\t15.5000000\t11204\t\t",
		"41°14'N":               "not_convertible\t41.2333333\t\t\t\t",
		"95 N 8 W":              "invalid\t\t\t\t\t",
		"29T NF 32123 67890":    "ok\t41.2617963\t-8.6165181\t1\t29N 532123.500 4567890.500\t29TNF3212367890",
		"somewhere\nin the sea": "not_convertible\t\t\t\t\t",
	} {
		if got := ReadLine(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

func TestDatum(t *testing.T) {
	for in, want := range map[string]string{
		"41°14'N 8°36'W (WGS84)":                    "WGS84",
		"41°14'N 8°36'W, datum ED50":                "ED50",
		"41.2339, -8.6111 WGS 84":                   "WGS 84",
		"41.2339, -8.6111 (NAD27)":                  "NAD27",
		"AMG Zone 56, x: 301545 y: 7011991":         "AMG",
		"MGA94 zone 56 301545 7011991":              "MGA94",
		"41.2339 N 8.6111 W, EPSG:4326":             "EPSG:4326",
		"41°14'N 8°36'W":                            "",
		"29T 532123 4567890 (datum: European 1950)": "European 1950",
	} {
		if r := Read(in, Hints{}); r.Point.Datum != want || !r.HasLat || !r.HasLon {
			t.Errorf("%q: datum %q, want %q (%v)", in, r.Point.Datum, want, r.Err)
		}
	}
}

func TestHints(t *testing.T) {
	for _, c := range []struct {
		in    string
		hints Hints
		want  string
	}{
		{"47°30'N 12°15'O", Hints{Lang: lang.German}, "47.50000 12.25000"},
		{"47°30'N 12°15'O", Hints{Lang: lang.Spanish}, "47.50000 -12.25000"},
		{"47°30'N 12°15'V", Hints{Lang: lang.Swedish}, "47.50000 -12.25000"},
		{"37.085833 77.636333", Hints{West: true}, "37.08583 -77.63633"},
		{"37.085833 77.636333", Hints{South: true}, "-37.08583 77.63633"},
		{"37.085833 77.636333", Hints{Signed: true}, "37.08583 77.63633"},
		{"37.085833 -77.636333", Hints{South: true}, "37.08583 -77.63633"},
	} {
		p, status, err := Parse(c.in, c.hints)
		if got := p.Lat.Decimal(5) + " " + p.Lon.Decimal(5); status != OK || got != c.want {
			t.Errorf("%q with %+v: %s %s (%v), want %s", c.in, c.hints, status, got, err, c.want)
		}
	}
}

// The pairs follow the TDWG test AMENDMENT_COORDINATES_FROM_VERBATIM.
func TestReadPair(t *testing.T) {
	for _, c := range []struct{ lat, lon, status, want string }{
		{"-23.712", "139.92", "ok", "-23.71200 139.92000"},
		{"23 degrees 42.72 minutes south", "139 degrees 55.38 minutes east", "ok", "-23.71200 139.92300"},
		{"41°14'N", "8°36'W", "ok", "41.23333 -8.60000"},
		{"41° 14' 02\"", "-8° 36' 40\"", "ok", "41.23389 -8.61111"},
		{"41,2339", "-8,6111", "ok", "41.23390 -8.61110"},
		{"8°36'W", "41°14'N", "ambiguous", "41.23333 -8.60000"},
		{"41.2", "8.6", "ambiguous", "41.20000 8.60000"},
		{"139.92", "-23.712", "invalid", "0.00000 0.00000"},
		{"-23.712", "", "not_convertible", "-23.71200 0.00000"},
		{"", "139.92", "not_convertible", "0.00000 139.92000"},
		{"x", "139.92", "not_convertible", "0.00000 139.92000"},
		{"", "", "not_convertible", "0.00000 0.00000"},
	} {
		r := ReadPair(c.lat, c.lon, Hints{})
		if got := r.Point.Lat.Decimal(5) + " " + r.Point.Lon.Decimal(5); string(r.Status) != c.status || got != c.want {
			t.Errorf("%q and %q: %s %s (%v), want %s %s", c.lat, c.lon, r.Status, got, r.Err, c.status, c.want)
		}
	}
}

func TestFromDecimal(t *testing.T) {
	for _, c := range []struct{ lat, lon, want string }{
		{"41.2339", "-8.6111", "41.2339000 -8.6111000"},
		{"+41", "0", "41.0000000 0.0000000"},
		{"-90", "180.000", "-90.0000000 180.0000000"},
		{"-41.0525925872862", "-71.5310546742521", "-41.0525926 -71.5310547"},
		{"-0.0000001", "0", "-0.0000001 0.0000000"},
	} {
		p, err := FromDecimal(c.lat, c.lon)
		if got := p.Lat.Decimal(7) + " " + p.Lon.Decimal(7); err != nil || got != c.want {
			t.Errorf("%s %s: %s (%v), want %s", c.lat, c.lon, got, err, c.want)
		}
	}
	for _, c := range []string{"41.2339 N|8", "x|8", "|8", "90.0000001|8", "41|180.1", "41,2|8", "41.|8", "1e1|8", "--4|8", "41| 8", "NaN|8"} {
		lat, lon, _ := strings.Cut(c, "|")
		if p, err := FromDecimal(lat, lon); err == nil {
			t.Errorf("%s: %v, want an error", c, p)
		}
	}
}

func TestFormat(t *testing.T) {
	const asked = "41.2339 N, 8.6111 W|41°14'02\"N 8°36'40\"W|41°14'N 8°36'W|41° 14.034' N 8° 36.667' W|41.23, -8.61|41.234, -8.6|41.2, -8.6|41, -8|0 N, 0.00001 W"
	for _, c := range []struct {
		style Style
		lang  lang.Tag
		want  string
	}{
		{Style{Form: Decimal, Tight: true}, lang.English, "41.2339°N, 8.6111°W|41.2339°N, 8.6111°W|41.23°N, 8.60°W|41.23390°N, 8.61112°W|41.23°N, 8.61°W|41.234°N, 8.6°W|41.2°N, 8.6°W|41°N, 8°W|0°N, 0.00001°W"},
		{Style{Form: DegreesMinutesSeconds, Tight: true}, lang.English, "41°14′02″N, 8°36′40″W|41°14′02″N, 8°36′40″W|41°14′N, 8°36′W|41°14′02.0″N, 8°36′40.0″W|41°14′N, 8°37′W|41°14.0′N, 8°36.0′W|41.2°N, 8.6°W|41°N, 8°W|0°00′00.0″N, 0°00′00.0″W"},
		{Style{Form: DegreesMinutes, Tight: true}, lang.English, "41°14.03′N, 8°36.67′W|41°14.03′N, 8°36.67′W|41°14′N, 8°36′W|41°14.034′N, 8°36.667′W|41°14′N, 8°37′W|41°14.0′N, 8°36.0′W|41.2°N, 8.6°W|41°N, 8°W|0°00.000′N, 0°00.001′W"},
		{Style{Tight: true}, lang.Portuguese, "41,2339°N, 8,6111°O|41°14′02″N, 8°36′40″O|41°14′N, 8°36′O|41°14,034′N, 8°36,667′O|41,23°N, 8,61°O|41,234°N, 8,6°O|41,2°N, 8,6°O|41°N, 8°O|0°N, 0,00001°O"},
		{Style{Tight: true, International: true}, lang.Portuguese, "41,2339°N, 8,6111°W|41°14′02″N, 8°36′40″W|41°14′N, 8°36′W|41°14,034′N, 8°36,667′W|41,23°N, 8,61°W|41,234°N, 8,6°W|41,2°N, 8,6°W|41°N, 8°W|0°N, 0,00001°W"},
		{Style{Tight: true}, lang.Chinese, "北緯41.2339° 西經8.6111°|北緯41°14′02″ 西經8°36′40″|北緯41°14′ 西經8°36′|北緯41°14.034′ 西經8°36.667′|北緯41.23° 西經8.61°|北緯41.234° 西經8.6°|北緯41.2° 西經8.6°|北緯41° 西經8°|北緯0° 西經0.00001°"},
		{Style{Form: GridUTM, Tight: true}, lang.English, "UTM 29N 532590mE, 4564800mN|UTM 29N 532590mE, 4564790mN|UTM 29N 534000mE, 4565000mN|UTM 29N 532590mE, 4564796mN|UTM 29N 533000mE, 4564000mN|UTM 29N 533500mE, 4564800mN|UTM 29N 530000mE, 4560000mN|UTM 29N 600000mE, 4500000mN|UTM 30N 833977mE, 0mN"},
		{Style{Form: GridMGRS, Tight: true}, lang.English, "29TNF32596479|29TNF32596479|29TNF3364|29TNF3258964795|29TNF3264|29TNF335648|29TNF36|29TNF|30NZF3397700000"},
	} {
		for i, text := range strings.Split(asked, "|") {
			want := strings.Split(c.want, "|")[i]
			r := Read(text, Hints{Signed: true})
			pieces, err := r.Point.Format(c.style, c.lang)
			got := strings.ReplaceAll(strings.Join(pieces, " "), "\u00a0", " ")
			if got != want || err != nil {
				t.Errorf("%q as %s in %s: %q (%v), want %q", text, c.style.Form, c.lang, got, err, want)
			}
		}
	}
	p, _ := FromDecimal("41.2339", "-8.6111")
	got, _ := p.Format(Style{Form: DegreesMinutesSeconds}, lang.English)
	if want := "41°\u202f14′\u202f02″\u202fN,"; len(got) != 2 || got[0] != want {
		t.Errorf("pieces %q, want the first %q", got, want)
	}
	p, _ = FromDecimal("85", "0")
	for _, f := range []Form{GridUTM, GridMGRS} {
		if got, err := p.Format(Style{Form: f}, lang.English); err == nil {
			t.Errorf("%s at 85° N: %q, want an error", f, got)
		}
	}
}

// TestPrecision: no style prints figures much finer than what was written.
func TestPrecision(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPoint(t)
		if p.grid != (UTM{}) {
			return
		}
		s := Style{Form: Form(rapid.IntRange(1, 3).Draw(t, "form")), International: true}
		if s.Form == p.lat.form || s.Form == p.lon.form {
			return // printed as it was written
		}
		pieces, err := p.Format(s, lang.English)
		if err != nil {
			t.Fatal(err)
		}
		q := Read(strings.Join(pieces, " "), Hints{}).Point
		if q.step != 0 && float64(stepOf(unitOf(q.lat.form), int(q.lat.places))) < float64(p.step)/3.3 {
			t.Fatalf("%v of step %d printed as %q", p, p.step, pieces)
		}
		// Rounding moves a value by half the printed figure at most.
		half := stepOf(unitOf(q.lat.form), int(q.lat.places))/2 + 1
		if d := (p.Lat - q.Lat).abs(); d > half {
			t.Fatalf("%v printed as %q is %d off", p, pieces, d)
		}
	})
}

// drawPoint draws a point in any notation.
func drawPoint(t *rapid.T) Point {
	sign := func(a Angle, s string) Angle {
		if rapid.Bool().Draw(t, s+" minus") {
			return -a
		}
		return a
	}
	form := Form(rapid.IntRange(1, 5).Draw(t, "notation"))
	if form >= GridUTM {
		u := UTM{
			Zone:     rapid.IntRange(1, 60).Draw(t, "zone"),
			North:    rapid.Bool().Draw(t, "north"),
			Easting:  rapid.Int64Range(300_000, 700_000).Draw(t, "easting") * 1000,
			Northing: rapid.Int64Range(1_200_000, 8_800_000).Draw(t, "northing") * 1000,
			Step:     1000,
		}
		p, err := FromUTM(u)
		if err != nil {
			t.Fatal(err)
		}
		if form == GridMGRS {
			ref, err := p.MGRS(rapid.IntRange(1, 5).Draw(t, "digits"))
			if err != nil {
				t.Skip(err)
			}
			if p, err = FromMGRS(ref); err != nil {
				t.Fatal(err)
			}
		}
		return p
	}
	places := rapid.IntRange(0, 8).Draw(t, "places")
	half := func(s string, degrees int64) (Angle, written) {
		w := written{form, int8(places)}
		step := stepOf(unitOf(form), places)
		n := rapid.Int64Range(0, degrees*int64(Degree)/int64(step)).Draw(t, s)
		return sign(Angle(n)*step, s), w
	}
	p := Point{Form: form}
	p.Lat, p.lat = half("latitude", 90)
	p.Lon, p.lon = half("longitude", 180)
	p.step = stepOf(unitOf(form), max(credited(p.Lat, form, places), credited(p.Lon, form, places)))
	return p
}

// credited returns how many decimals of a value are not zeros at the end.
func credited(a Angle, form Form, places int) int {
	_, frac, _ := strings.Cut((a%unitOf(form)).abs().in(unitOf(form), places), ".")
	return len(strings.TrimRight(frac, "0"))
}

// TestRoundTrip: what is printed as it was written and read again is the same
// place; in another style, printing it again changes nothing more.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPoint(t)
		s := Style{Tight: rapid.Bool().Draw(t, "tight"), International: rapid.Bool().Draw(t, "international")}
		l := rapid.SampledFrom(lang.Tags()).Draw(t, "lang")
		print := func(p Point, s Style) string {
			pieces, err := p.Format(s, l)
			if err != nil {
				t.Skip(err)
			}
			return strings.Join(pieces, " ")
		}
		h := Hints{Lang: l}
		if s.International {
			h.Lang = lang.English
		}
		text := print(p, s)
		got, status, err := Parse(text, h)
		if got.Lat != p.Lat || got.Lon != p.Lon || got.Form != p.Form || got.step != p.step || status != OK {
			t.Fatalf("%s %s printed as %q is read as %s %s %s (%v)", p.Lat.Decimal(12), p.Lon.Decimal(12), text, status, got.Lat.Decimal(12), got.Lon.Decimal(12), err)
		}
		s.Form = Form(rapid.IntRange(1, 5).Draw(t, "form"))
		once := print(p, s)
		q, status, err := Parse(once, h)
		if status != OK {
			t.Fatalf("%q as %q: %s (%v)", text, once, status, err)
		}
		if q.Lat == 0 || q.Lon == 0 {
			return // 0°00′00″S for a little south of the line: zero keeps no letter
		}
		if twice := print(q, Style{Tight: s.Tight, International: s.International}); twice != once {
			t.Fatalf("%q as %q, read and printed again %q", text, once, twice)
		}
	})
}

func TestAngle(t *testing.T) {
	for _, c := range []struct {
		whole, frac string
		unit        Angle
		want        string
	}{
		{"41", "2339", Degree, "41.2339000"},
		{"15", "", Minute, "0.2500000"},
		{"59", "999", Second, "0.0166664"},
		{"12", "00000000000000", Degree, "12.0000000"},
		{"0", "00000005", Degree, "0.0000001"},
		{"0", "0000000499999", Degree, "0.0000000"},
		{"7", "123456789012345678901234567890", Degree, "7.1234568"},
	} {
		a, err := decimal{c.whole, c.frac}.times(c.unit)
		if got := a.Decimal(7); err != nil || got != c.want {
			t.Errorf("%s.%s: %s (%v), want %s", c.whole, c.frac, got, err, c.want)
		}
	}
	// Fourteen decimals are kept exactly.
	a, _ := decimal{"179", "12345678901234"}.times(Degree)
	if got := a.Decimal(14); got != "179.12345678901234" {
		t.Errorf("fourteen decimals: %s", got)
	}
	for i := range 2000 {
		s := "179." + strings.Repeat("9", i%14) + strconv.Itoa(i%10)
		w, f, _ := strings.Cut(s, ".")
		a, _ := decimal{w, f}.times(Degree)
		if got := a.Decimal(len(f)); got != s {
			t.Fatalf("%s comes back as %s", s, got)
		}
	}
}
