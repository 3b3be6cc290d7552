package date

import (
	"strings"
	"testing"

	"cornerslip/label/lang"
)

func FuzzParse(f *testing.F) {
	for _, c := range forms {
		f.Add(c.in)
	}
	f.Add("170X A__0 00") // its end is its beginning
	f.Fuzz(func(t *testing.T, s string) {
		r := Read(s, Hints{})
		switch r.Status {
		case OK:
			if r.Err != nil || r.Date.IsZero() {
				t.Fatalf("%q: %+v", s, r)
			}
			if again := Read(r.Date.ISO(), Hints{}); again.Date != r.Date && plausible(r.Date.ISO()) {
				t.Fatalf("%q reads as %s, which reads as %+v", s, r.Date, again)
			}
		case Ambiguous, Incomplete, Invalid:
			if r.Err == nil || !r.Date.IsZero() {
				t.Fatalf("%q: %+v", s, r)
			}
		default:
			t.Fatalf("%q: status %q", s, r.Status)
		}
		if strings.Count(ReadLine(s), "\t") != 1 || strings.ContainsAny(ReadLine(s), "\r\n") {
			t.Fatalf("%q: line %q", s, ReadLine(s))
		}
		for _, l := range lang.Tags() {
			_ = r.Date.Format(Style{Form: RomanMonth, Time: true}, l)
		}
	})
}

func FuzzFromISO(f *testing.F) {
	for _, s := range []string{"1922-03-20", "2007-11-13/15", "1985-W15-5", "19850412T101530Z", "2007-03-01T13:00:00Z/2008-05-11T15:30:00Z"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, err := FromISO(s)
		if err != nil {
			return
		}
		if again, err := FromISO(d.ISO()); err != nil || again != d {
			t.Fatalf("%q reads as %s, which reads as %s (%v)", s, d, again, err)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for _, c := range []struct{ name, in, want string }{
		{"ISO", "1922-03-20", "1922-03-20"},
		{"words", "SEPT. 8 - OCT. 5, 1901", "1901-09-08/1901-10-05"},
		{"Roman", "27.III.1885", "1885-03-27"},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if d, _, _ := Parse(c.in, Hints{}); d.ISO() != c.want {
					b.Fatal(d)
				}
			}
		})
	}
}
