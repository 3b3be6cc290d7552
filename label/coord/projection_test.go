package coord

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label/lang"
)

// TestProjection holds 300 points, among them the edges of zones and bands,
// to what GeographicLib 2.1.2 and PROJ made of them.
func TestProjection(t *testing.T) {
	rows := table(t, "projection.tsv")
	for _, f := range rows {
		p, err := FromDecimal(f[2], f[3])
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name string
			as   written
			lat  string
			lon  string
		}{
			{"whole seconds", written{DegreesMinutesSeconds, 0}, f[4], f[5]},
			{"tenths of a second", written{DegreesMinutesSeconds, 1}, f[6], f[7]},
			{"minutes", written{DegreesMinutes, 3}, f[8], f[9]},
		} {
			w := angleWriter{Style{Tight: true}, lang.English}
			if got := w.half(p.Lat, c.as, lang.North, lang.South); got != c.lat {
				t.Errorf("row %s, %s: latitude %s, want %s", f[0], c.name, got, c.lat)
			}
			if got := w.half(p.Lon, c.as, lang.East, lang.West); got != c.lon {
				t.Errorf("row %s, %s: longitude %s, want %s", f[0], c.name, got, c.lon)
			}
		}
		u, err := p.UTM()
		ref, err2 := p.MGRS(5)
		if f[10] != "UTM" {
			if err == nil || err2 == nil {
				t.Errorf("row %s: UTM %v, MGRS %s: both must be refused", f[0], u, ref)
			}
			continue
		}
		zone, _ := strconv.Atoi(f[11])
		// The table's last millimetre is not always the nearest: GeoConvert's
		// own with six decimals differ from it by up to 0.55 mm.
		e, n := inMillis(t, f[14]), inMillis(t, f[15])
		if err != nil || u.Zone != zone || u.hemisphere() != f[13] || string(bandOf(p.Lat)) != f[12] || far(u.Easting, e) > 1 || far(u.Northing, n) > 1 {
			t.Errorf("row %s: UTM %v band %c (%v), want %s%s%s %s %s", f[0], u, bandOf(p.Lat), err, f[11], f[12], f[13], f[14], f[15])
		}
		if err2 != nil || ref != f[17] {
			t.Errorf("row %s: MGRS %s (%v), want %s", f[0], ref, err2, f[17])
		}
		back, err := FromUTM(u)
		if err != nil || (back.Lat-p.Lat).abs() > Degree/1e8 || (back.Lon-p.Lon).abs() > Degree/1e8*8 && (back.Lon-p.Lon).abs() < 359*Degree {
			t.Errorf("row %s: back from UTM %s %s (%v)", f[0], back.Lat.Decimal(9), back.Lon.Decimal(9), err)
		}
		square, err := FromMGRS(ref)
		if err != nil {
			t.Errorf("row %s: back from MGRS: %v", f[0], err)
		} else if again, _ := square.MGRS(5); again != ref {
			t.Errorf("row %s: MGRS %s comes back as %s", f[0], ref, again)
		}
	}
	if len(rows) < 200 {
		t.Errorf("only %d rows", len(rows))
	}
}

func inMillis(t *testing.T, s string) int64 {
	t.Helper()
	n, err := strconv.ParseInt(strings.Replace(s, ".", "", 1), 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// TestUncertainty holds the formula to the table of Chapman and Wieczorek.
// Published values may be a metre off where they were rounded differently.
func TestUncertainty(t *testing.T) {
	for _, f := range table(t, "uncertainty.tsv") {
		amount, unit, _ := strings.Cut(f[0], " ")
		places := 0
		if !strings.HasPrefix(amount, "1") {
			places = len(amount) - 2
		}
		step := stepOf(map[string]Angle{"degree": Degree, "minute": Minute, "second": Second}[unit], places)
		lat, _ := ParseLatitude(f[2])
		got := UncertaintyFromPrecision(step, lat)
		published, _ := strconv.Atoi(f[3])
		computed, _ := strconv.Atoi(f[5])
		if got != computed || got < published-1 || got > published+1 {
			t.Errorf("%s at %s°: %d m, want %d (published %d)", f[0], f[2], got, computed, published)
		}
	}
}

// randomPoints draws points all over the grid, more of them near its edges.
func randomPoints(n int) []Point {
	r := rand.New(rand.NewPCG(1, 2))
	var ps []Point
	for len(ps) < n {
		lat, lon := r.Float64()*164-80, r.Float64()*360-180
		switch len(ps) % 4 {
		case 1: // near an edge of a zone or band
			lon = math.Round(lon/3)*3 + r.NormFloat64()*1e-3
			lat = math.Round(lat/4)*4 + r.NormFloat64()*1e-3
		case 2: // Norway and Svalbard
			lat, lon = 55+r.Float64()*29, r.Float64()*45-1
		}
		p := Point{Lat: AngleOf(lat), Lon: AngleOf(lon), Form: Decimal, step: Degree / 1e9, lat: written{Decimal, 9}, lon: written{Decimal, 9}}
		if p.Lon >= 180*Degree || p.Lon < -180*Degree || utmLimits(p.Lat) != nil {
			continue
		}
		ps = append(ps, p)
	}
	return ps
}

// filter runs a program once with lines on its standard input.
func filter(t *testing.T, path, input string, args ...string) []string {
	t.Helper()
	cmd := exec.Command(path, args...)
	cmd.Stdin = strings.NewReader(input)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s: %v: %s", path, err, errs.String())
	}
	return strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
}

// TestGeoConvert holds 10,000 points to GeographicLib, there and back.
func TestGeoConvert(t *testing.T) {
	path := outside.Program(t, "GeoConvert")
	ps := randomPoints(10000)
	var geographic, grids, squares strings.Builder
	for _, p := range ps {
		fmt.Fprintf(&geographic, "%s %s\n", p.Lat.Decimal(9), p.Lon.Decimal(9))
		u, _ := p.UTM()
		fmt.Fprintf(&grids, "%d%s %s %s\n", u.Zone, strings.ToLower(u.hemisphere()), millis(u.Easting), millis(u.Northing))
		ref, err := p.MGRS(4)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintln(&squares, ref)
	}
	worst := int64(0)
	for i, line := range filter(t, path, geographic.String(), "-u", "-p", "4") {
		u, _ := ps[i].UTM()
		zone, e, n := utmLine(t, line)
		if want := fmt.Sprintf("%02d%s", u.Zone, strings.ToLower(u.hemisphere())); zone != want {
			t.Fatalf("point %s %s lies in %s, GeoConvert says %s", ps[i].Lat.Decimal(9), ps[i].Lon.Decimal(9), want, zone)
		}
		// Four decimals from there, three from here: 0.5 mm is rounding.
		worst = max(worst, far(u.Easting*10, e), far(u.Northing*10, n))
	}
	if worst > 6 {
		t.Errorf("UTM is up to %.1f mm off", float64(worst)/10)
	}
	for i, line := range filter(t, path, geographic.String(), "-m", "-p", "0") {
		if ref, _ := ps[i].MGRS(5); !strings.EqualFold(strings.TrimLeft(ref, "0"), strings.TrimLeft(line, "0")) {
			t.Fatalf("point %s %s is %s, GeoConvert says %s", ps[i].Lat.Decimal(9), ps[i].Lon.Decimal(9), ref, line)
		}
	}
	for i, line := range filter(t, path, grids.String(), "-g", "-p", "4") {
		u, _ := ps[i].UTM()
		p, err := FromUTM(u)
		if err != nil {
			t.Fatal(err)
		}
		near(t, u.String(), p, line)
	}
	for i, line := range filter(t, path, squares.String(), "-g", "-p", "4") {
		ref, _ := ps[i].MGRS(4)
		p, err := FromMGRS(ref)
		if err != nil {
			t.Fatal(err)
		}
		near(t, ref, p, line)
	}
	t.Logf("UTM agrees to %.1f mm", float64(worst)/10)
}

// near fails if a point is more than two units of the ninth decimal off.
func near(t *testing.T, what string, p Point, line string) {
	t.Helper()
	f := strings.Fields(line)
	lat, err := strconv.ParseFloat(f[0], 64)
	lon, err2 := strconv.ParseFloat(f[1], 64)
	if err != nil || err2 != nil {
		t.Fatal(line)
	}
	dlon := math.Abs(p.Lon.Degrees() - lon)
	if math.Abs(p.Lat.Degrees()-lat) > 2e-9 || dlon > 2e-9 && dlon < 359.99 {
		t.Errorf("%s is %s %s, want %s", what, p.Lat.Decimal(9), p.Lon.Decimal(9), line)
	}
}

func far(a, b int64) int64 { return max(a-b, b-a) }

// utmLine reads "33n 500000.0000 4649776.2246" in tenths of a millimetre.
func utmLine(t *testing.T, line string) (zone string, e, n int64) {
	f := strings.Fields(line)
	if len(f) != 3 {
		t.Fatal(line)
	}
	return f[0], inMillis(t, f[1]), inMillis(t, f[2])
}

// TestSplitGeoConvert cuts points of GeographicLib's own writing into cells and
// holds what is read from them to what GeographicLib reads from the whole.
func TestSplitGeoConvert(t *testing.T) {
	path := outside.Program(t, "GeoConvert")
	ps := randomPoints(2000)
	var in strings.Builder
	for _, p := range ps {
		fmt.Fprintf(&in, "%s %s\n", p.Lat.Decimal(9), p.Lon.Decimal(9))
	}
	written := filter(t, path, in.String(), "-:", "-p", "0") // 40:24:27.1N 007:33:01.4W
	read := filter(t, path, strings.Join(written, "\n")+"\n", "-g", "-p", "4")
	split := func(s string) Split {
		f := strings.Split(s[:len(s)-1], ":")
		for len(f) < 3 {
			f = append(f, "")
		}
		return Split{f[0], f[1], f[2], s[len(s)-1:]}
	}
	for i, line := range written {
		f := strings.Fields(line)
		r := ReadSplit(split(f[0]), split(f[1]), Hints{})
		if r.Status != OK {
			t.Fatalf("%s: %s (%v)", line, r.Status, r.Err)
		}
		near(t, line, r.Point, read[i])
	}
	grids := filter(t, path, in.String(), "-u", "-p", "3")
	read = filter(t, path, strings.Join(grids, "\n")+"\n", "-g", "-p", "4")
	for i, line := range grids {
		f := strings.Fields(line)
		zone := f[0][:len(f[0])-1]
		r := ReadSplitGrid(SplitGrid{Zone: zone, Hemisphere: strings.ToUpper(f[0][len(zone):]), Easting: f[1], Northing: f[2]}, Hints{})
		if r.Status != OK {
			t.Fatalf("%s: %s (%v)", line, r.Status, r.Err)
		}
		near(t, line, r.Point, read[i])
	}
}

// A grid on a datum of old is read within the 500 m that checks allow for it.
func TestLocalDatumPROJ(t *testing.T) {
	path := outside.Program(t, "cs2cs")
	for _, c := range []struct{ datum, epsg, zone, e, n string }{
		{"ED50", "EPSG:23029", "29T", "623000", "4474000"},
		{"ED50", "EPSG:23030", "30T", "423000", "4594000"},
		{"NAD27", "EPSG:26717", "17 north", "294000", "3883000"},
		{"SAD69", "EPSG:29193", "23K", "323000", "7394000"},
		{"Corrego Alegre", "EPSG:22523", "23K", "623000", "7794000"},
		{"Arc 1950", "EPSG:20935", "35K", "523000", "8094000"},
	} {
		r := ReadSplitGrid(SplitGrid{Zone: c.zone, Easting: c.e, Northing: c.n}, Hints{Datum: c.datum})
		if !r.Local || r.Status != Ambiguous {
			t.Errorf("%s: %+v", c.datum, r)
		}
		f := strings.Fields(filter(t, path, c.e+" "+c.n+"\n", "-f", "%.7f", c.epsg, "EPSG:4326")[0])
		lat, err := strconv.ParseFloat(f[0], 64)
		lon, err2 := strconv.ParseFloat(f[1], 64)
		if err != nil || err2 != nil {
			t.Fatal(f)
		}
		north := (r.Point.Lat.Degrees() - lat) * 111_200
		east := (r.Point.Lon.Degrees() - lon) * 111_200 * math.Cos(lat*math.Pi/180)
		if d := math.Hypot(north, east); d > 500 || d < 5 {
			t.Errorf("%s %s %s %s lies %.0f m from where PROJ has it", c.datum, c.zone, c.e, c.n, d)
		} else {
			t.Logf("%s: %.0f m", c.datum, d)
		}
		if p, err := r.Point.Format(Style{Form: Decimal}, lang.English); err == nil {
			t.Errorf("%s is printed in degrees: %v", c.datum, p)
		}
	}
}

// TestPROJ holds the same points to PROJ, zone by zone.
func TestPROJ(t *testing.T) {
	path := outside.Program(t, "cs2cs")
	type group struct {
		lines strings.Builder
		utms  []UTM
	}
	groups := map[string]*group{}
	for _, p := range randomPoints(10000) {
		u, _ := p.UTM()
		key := fmt.Sprintf("EPSG:32%d%02d", map[bool]int{true: 6, false: 7}[u.North], u.Zone)
		if groups[key] == nil {
			groups[key] = &group{}
		}
		groups[key].utms = append(groups[key].utms, u)
		fmt.Fprintf(&groups[key].lines, "%s %s\n", p.Lat.Decimal(9), p.Lon.Decimal(9))
	}
	worst := 0.0
	for key, g := range groups {
		for i, line := range filter(t, path, g.lines.String(), "-f", "%.4f", "EPSG:4326", key) {
			f := strings.Fields(line)
			e, err := strconv.ParseFloat(f[0], 64)
			n, err2 := strconv.ParseFloat(f[1], 64)
			if err != nil || err2 != nil {
				t.Fatal(line)
			}
			u := g.utms[i]
			worst = max(worst, math.Abs(float64(u.Easting)/1000-e), math.Abs(float64(u.Northing)/1000-n))
		}
	}
	if worst > 0.0006 {
		t.Errorf("UTM is up to %.2f mm off", worst*1000)
	}
	t.Logf("UTM agrees to %.2f mm", worst*1000)
}
