package coord

import (
	"strings"
	"testing"

	"cornerslip/label/lang"
)

func FuzzRead(f *testing.F) {
	for _, c := range forms {
		f.Add(c.in, "")
	}
	for _, c := range wordings {
		f.Add(c.in, "")
	}
	f.Add("-23.712", "139.92")
	f.Fuzz(func(t *testing.T, a, b string) {
		for _, r := range []Reading{Read(a, Hints{}), Read(a+" "+b, Hints{Lang: lang.German}), ReadPair(a, b, Hints{Lang: lang.Portuguese})} {
			if (r.Status == OK) != (r.Err == nil) {
				t.Fatalf("%q %q: %s, %v", a, b, r.Status, r.Err)
			}
			if r.Status == OK && (r.Point.IsZero() || !r.HasLat || !r.HasLon || r.Point.Uncertainty() < 1) {
				t.Fatalf("%q %q: %+v", a, b, r)
			}
			if r.Point.Lat.abs() > 90*Degree || r.Point.Lon.abs() > 180*Degree {
				t.Fatalf("%q %q: %s %s", a, b, r.Point.Lat.Decimal(7), r.Point.Lon.Decimal(7))
			}
			if !r.HasLat || !r.HasLon {
				continue
			}
			for form := AsWritten; form <= GridMGRS; form++ {
				_, _ = r.Point.Format(Style{Form: form}, lang.French)
			}
		}
		if line := ReadLine(a); strings.Count(line, "\t") != 5 || strings.ContainsAny(line, "\r\n") {
			t.Fatalf("%q: line %q", a, line)
		}
	})
}

func FuzzMGRS(f *testing.F) {
	f.Add("29TNF3212367890")
	f.Add("31UDC9999306068")
	f.Fuzz(func(t *testing.T, s string) {
		p, err := FromMGRS(s)
		if err != nil {
			return
		}
		digits := 0
		for step := p.grid.Step; step < 100_000_000; step *= 10 {
			digits++
		}
		want := strings.ToUpper(strings.Join(strings.Fields(s), ""))
		if want[1] > '9' {
			want = "0" + want
		}
		if got, err := p.MGRS(digits); got != want {
			t.Fatalf("%q comes back as %q (%v)", s, got, err)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	for _, c := range []struct{ name, in, want string }{
		{"decimal", "41.2339, -8.6111", "41.2339000"},
		{"seconds", "41°14'02\"N, 8°36'40\"W", "41.2338889"},
		{"UTM", "29T 532123 4567890", "41.2617919"},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if p, _, _ := Parse(c.in, Hints{}); p.Lat.Decimal(7) != c.want {
					b.Fatal(p)
				}
			}
		})
	}
}

func BenchmarkUTM(b *testing.B) {
	p, err := FromDecimal("41.2339", "-8.6111")
	if err != nil {
		b.Fatal(err)
	}
	want, _ := p.UTM()
	for b.Loop() {
		if u, _ := p.UTM(); u != want {
			b.Fatal(u)
		}
	}
}

// Cells of any kind give an answer that is whole: a point, or what is wrong.
func FuzzSplit(f *testing.F) {
	for _, c := range splits {
		a, o := splitOf(c.lat), splitOf(c.lon)
		f.Add(a.Degrees, a.Minutes, a.Seconds, a.Hemisphere, o.Degrees, o.Minutes)
	}
	for _, c := range splitGrids {
		p := strings.Split(c.in, "|")
		f.Add(p[0], p[1], p[2], p[3], p[4], p[5])
	}
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g string) {
		for _, r := range []Reading{
			ReadSplit(Split{a, b, c, d}, Split{e, g, c, "W"}, Hints{}),
			ReadSplitGrid(SplitGrid{a, b, c, d, e, g}, Hints{}),
		} {
			if (r.Status == OK) != (r.Err == nil) || r.Status == OK && r.Point.IsZero() {
				t.Fatalf("%s, %v, %v", r.Status, r.Err, r.Point)
			}
			if r.Point.Lat.abs() > 90*Degree || r.Point.Lon.abs() > 180*Degree {
				t.Fatalf("%v is no place", r.Point)
			}
			if r.Status == OK {
				if _, err := r.Point.Format(Style{}, lang.English); err != nil {
					t.Fatal(err)
				}
			}
		}
	})
}
