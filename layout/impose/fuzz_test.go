package impose

import (
	"testing"

	"cornerslip/layout"
)

// What is read is a size that can be used, and reads the same again.
func FuzzParseSize(f *testing.F) {
	for _, s := range []string{"A4", "letter landscape", "297x420", "292.1 × 419.1 mm", `11.5x16.5"`, "11,5 in x 16 in", "letter-half", "square", "x", "1e9x1e9", "NaNx10", "-5x20"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParsePaper(text)
		if err == nil {
			if s.W < leastPaper || s.H < leastPaper || s.W > mostPaper || s.H > mostPaper {
				t.Fatalf("%q: %v", text, s)
			}
			again, err := ParsePaper(s.W.Decimal(layout.MM, 5) + "x" + s.H.Decimal(layout.MM, 5))
			if err != nil || again != s {
				t.Fatalf("%q: %v, read again %v, %v", text, s, again, err)
			}
		}
		b, err := ParseBlank(text)
		if err == nil && (b.W > b.H || b.W < leastPaper || b.H > mostPaper) {
			t.Fatalf("%q: a blank of %v", text, b)
		}
		if err == nil {
			p := Packet{Blank: b}
			if p.Valid() == nil && (p.Face().W < leastFace || p.Room().H < leastRoom) {
				t.Fatalf("%q: a packet of %v with %v for its label", text, p.Face(), p.Room())
			}
		}
	})
}

func FuzzParsePlace(f *testing.F) {
	for _, s := range []string{"2,3", "9,9", "24", " 1 , 1 ", ",", "99999999999999999999"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if k, err := stickers().ParsePlace(text); err == nil && (k < 0 || k >= 24) {
			t.Fatalf("%q: place %d", text, k)
		}
	})
}
