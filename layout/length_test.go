package layout

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"testing"
)

// TestUnits holds the unit against the definitions that make every one of
// them whole: 1 in = 25.4 mm exactly (international inch, 1959), 1 pt = 1/72
// in (ISO 32000-1, 8.3.2.3), n dpi = n dots in an inch.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want Length
	}{
		{"25.4 mm", 254 * MM / 10, Inch},
		{"72 pt", 72 * Pt, Inch},
		{"7200 hundredths of a point", 7200 * CentiPt, Inch},
		{"300 dots", 300 * Dot300, Inch},
		{"600 dots", 600 * Dot600, Inch},
		{"1200 dots", 1200 * Dot1200, Inch},
	} {
		if c.got != c.want {
			t.Errorf("%s are %d units, want %d", c.name, c.got, c.want)
		}
	}
}

// TestPaper holds ISO 216 sizes against their usual sizes in points, as PDF
// programs print them.
func TestPaper(t *testing.T) {
	for _, c := range []struct {
		mm   Length
		want string
	}{
		{74, "209.7638"}, {105, "297.6378"}, {148, "419.5276"}, {210, "595.2756"}, {297, "841.8898"}, {420, "1190.5512"},
	} {
		if got := (c.mm * MM).Decimal(Pt, 4); got != c.want {
			t.Errorf("%d mm are %s pt, want %s", c.mm, got, c.want)
		}
	}
}

func TestFromFloat(t *testing.T) {
	for _, c := range []struct{ got, want Length }{
		{Points(9), 9 * Pt}, {Points(8.5), 850 * CentiPt}, {Points(0.004), 0}, {Points(0.005), CentiPt}, {Points(-0.005), -CentiPt},
		{Millimetres(74), 74 * MM}, {Millimetres(0.25), 9000}, {Millimetres(25.4), Inch}, {Millimetres(-1.5), -54000},
		{Millimetres(1.0 / 72000), 1}, {Millimetres(0.4 / 36000), 0},
	} {
		if c.got != c.want {
			t.Errorf("got %d, want %d", c.got, c.want)
		}
	}
	if got := (74 * MM).MM(); got != 74 {
		t.Errorf("MM: %v", got)
	}
	if got := (850 * CentiPt).Pt(); got != 8.5 {
		t.Errorf("Pt: %v", got)
	}
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		l, unit Length
		digits  int
		want    string
	}{
		{0, MM, 3, "0"},
		{5 * MM, MM, 3, "5"},
		{-5 * MM, MM, 3, "-5"},
		{MM / 2, MM, 3, "0.5"},
		{-MM / 2, MM, 3, "-0.5"},
		{MM + 36, MM, 3, "1.001"},
		{MM + 18, MM, 3, "1.001"}, // half: away from zero
		{-MM - 18, MM, 3, "-1.001"},
		{MM + 17, MM, 3, "1"},
		{1, MM, 3, "0"},
		{-1, MM, 3, "0"}, // no minus zero
		{3 * MM / 2, MM, 0, "2"},
		{-3 * MM / 2, MM, 0, "-2"},
		{Dot300, Pt, 4, "0.24"},
		{Dot600, Pt, 4, "0.12"},
		{Dot1200, Pt, 4, "0.06"},
		{CentiPt, Pt, 2, "0.01"},
		{10050 * CentiPt, Pt, 2, "100.5"},
		{math.MaxInt64, 1, 0, "9223372036854775807"},
	} {
		if got := c.l.Decimal(c.unit, c.digits); got != c.want {
			t.Errorf("%d.Decimal(%d, %d) = %s, want %s", c.l, c.unit, c.digits, got, c.want)
		}
	}
	if got := (105 * MM).String(); got != "105mm" {
		t.Error(got)
	}
	if got := (Size{105 * MM, 74*MM + MM/4}).String(); got != "105 × 74.25 mm" {
		t.Error(got)
	}
}

// TestDecimalTwin holds Decimal against big rational numbers, and what it
// prints against what a reader makes of it.
func TestDecimalTwin(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 1))
	for range 20_000 {
		l := Length(rnd.Int64() >> (12 + rnd.IntN(51))) // room for three digits more
		if rnd.IntN(2) == 0 {
			l = -l
		}
		unit := []Length{MM, Pt, Inch, CentiPt, Dot300}[rnd.IntN(5)]
		digits := rnd.IntN(4)
		r := big.NewRat(int64(l), int64(unit))
		got := l.Decimal(unit, digits)
		// FloatString rounds halves away from zero too.
		want, ok := new(big.Rat).SetString(r.FloatString(digits))
		have, ok2 := new(big.Rat).SetString(got)
		if !ok || !ok2 || have.Cmp(want) != 0 {
			t.Fatalf("%d.Decimal(%d, %d) = %s, want %s", l, unit, digits, got, r.FloatString(digits))
		}
		if _, err := strconv.ParseFloat(got, 64); err != nil {
			t.Fatal(err)
		}
	}
}

func TestMulDiv(t *testing.T) {
	for _, c := range []struct{ l, num, den, want int64 }{
		{0, 5, 7, 0}, {7, 1, 2, 4}, {-7, 1, 2, -4}, {7, -1, 2, -4}, {-7, -1, 2, 4}, {5, 1, 3, 2}, {4, 1, 3, 1},
		{math.MaxInt64, math.MaxInt64, math.MaxInt64, math.MaxInt64},
		{math.MinInt64 + 1, 1, 1, math.MinInt64 + 1},
	} {
		if got := Length(c.l).MulDiv(c.num, c.den); got != Length(c.want) {
			t.Errorf("%d * %d / %d = %d, want %d", c.l, c.num, c.den, got, c.want)
		}
	}
	rnd := rand.New(rand.NewPCG(2, 2))
	num := func() int64 {
		n := rnd.Int64() >> rnd.IntN(63)
		if rnd.IntN(2) == 0 {
			return -n
		}
		return n
	}
	half := big.NewInt(2)
	for range 100_000 {
		l, n, d := num(), num(), 1+rnd.Int64()>>rnd.IntN(63)
		// |l·n|/d + 1/2, cut off, with the sign of l·n.
		p := new(big.Int).Mul(big.NewInt(l), big.NewInt(n))
		sign := p.Sign()
		want := new(big.Int).Abs(p)
		want.Mul(want, half).Add(want, big.NewInt(d)).Quo(want, new(big.Int).Mul(half, big.NewInt(d)))
		if sign < 0 {
			want.Neg(want)
		}
		if !want.IsInt64() {
			continue
		}
		if got := Length(l).MulDiv(n, d); int64(got) != want.Int64() {
			t.Fatalf("%d * %d / %d = %d, want %d", l, n, d, got, want)
		}
	}
}

func TestMulDivPanics(t *testing.T) {
	for _, c := range [][3]int64{{1, 1, 0}, {1, 1, -1}, {math.MaxInt64, math.MaxInt64, 1}, {math.MaxInt64, 2, 1}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%d * %d / %d did not panic", c[0], c[1], c[2])
				}
			}()
			Length(c[0]).MulDiv(c[1], c[2])
		}()
	}
}

func TestSnap(t *testing.T) {
	for _, c := range []struct{ l, step, want Length }{
		{0, 10, 0}, {4, 10, 0}, {5, 10, 10}, {14, 10, 10}, {15, 10, 20},
		{-4, 10, 0}, {-5, 10, 0}, {-6, 10, -10}, {-15, 10, -10}, // halves go up
		{7, 1, 7}, {5 * MM, Dot300, 59 * Dot300}, {5 * MM, Dot600, 118 * Dot600},
	} {
		if got := c.l.Snap(c.step); got != c.want {
			t.Errorf("%d.Snap(%d) = %d, want %d", c.l, c.step, got, c.want)
		}
	}
	rnd := rand.New(rand.NewPCG(3, 3))
	for range 20_000 {
		l, step := Length(rnd.Int64N(1<<40)-1<<39), Length(1+rnd.Int64N(1<<20))
		s := l.Snap(step)
		if d := 2 * (s - l); s%step != 0 || d > step || d <= -step {
			t.Fatalf("%d.Snap(%d) = %d", l, step, s)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("a step of 0 did not panic")
		}
	}()
	Length(1).Snap(0)
}

func TestRect(t *testing.T) {
	r := Rect{Point{10, 20}, Size{100, 50}}
	if r.Right() != 110 || r.Bottom() != 70 {
		t.Errorf("far edges %d, %d", r.Right(), r.Bottom())
	}
	for _, c := range []struct {
		s                  Rect
		contains, overlaps bool
	}{
		{r, true, true},
		{Rect{Point{10, 20}, Size{1, 1}}, true, true},
		{Rect{Point{109, 69}, Size{1, 1}}, true, true},
		{Rect{Point{109, 69}, Size{2, 1}}, false, true},
		{Rect{Point{110, 20}, Size{5, 5}}, false, false}, // an edge in common
		{Rect{Point{9, 20}, Size{1, 50}}, false, false},
		{Rect{Point{0, 0}, Size{500, 500}}, false, true},
	} {
		if got := r.Contains(c.s); got != c.contains {
			t.Errorf("contains %v: %v", c.s, got)
		}
		if got := r.Overlaps(c.s); got != c.overlaps || c.s.Overlaps(r) != got {
			t.Errorf("overlaps %v: %v", c.s, got)
		}
	}
	if got, want := r.Inset(5), (Rect{Point{15, 25}, Size{90, 40}}); got != want {
		t.Errorf("inset: %v", got)
	}
	if got := r.Inset(5).Inset(-5); got != r {
		t.Errorf("in and out again: %v", got)
	}
	if got := r.Size.Turned(); got != (Size{50, 100}) {
		t.Errorf("turned: %v", got)
	}
}
