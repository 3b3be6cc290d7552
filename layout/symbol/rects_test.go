package symbol

import (
	"strings"
	"testing"

	"cornerslip/layout"
)

// touched paints every dot that a rectangle touches, moved by a part of a dot.
func touched(b layout.Bars, dot layout.Length, off layout.Point) matrix {
	w, h := int(b.W/dot), int(b.H/dot)
	ink := []byte(strings.Repeat("0", w*h))
	floor := func(l layout.Length) int { return int((l - (l%dot+dot)%dot) / dot) }
	for _, r := range b.Rects {
		r.At = r.At.Add(off)
		for y := floor(r.At.Y); y <= floor(r.Bottom()-1); y++ {
			for x := floor(r.At.X); x <= floor(r.Right()-1); x++ {
				ink[y*w+x] = '1'
			}
		}
	}
	return matrix{modules: string(ink), rows: h}
}

// Painting every dot touched gives back the modules, on the printer the symbol
// was made for, also where the page lies a part of a dot off, and on one twice as
// fine.
func TestRectsCoverModules(t *testing.T) {
	for _, dot := range []layout.Length{layout.MM / 8, layout.Dot300, layout.Dot600, layout.Dot1200} {
		for i, b := range symbols(t, Options{Dot: dot}) {
			if i%3 != 0 {
				continue
			}
			m := matrix{modules: b.Modules, rows: b.Rows}
			for _, seen := range []layout.Length{dot, dot / 2} {
				d := shrink(dot)
				for _, off := range []layout.Point{{}, {X: d, Y: -d}, {X: -d, Y: d}} {
					if seen != dot && off.X != 0 {
						continue
					}
					got := touched(b, seen, off)
					k := int(b.Module / seen)
					for y := range got.rows {
						for x := range got.cols() {
							row := 0
							if m.rows > 1 {
								row = y / k
							}
							if got.dark(x, y) != m.dark(x/k, row) {
								t.Fatalf("%s %q for %s at %s, off by %v: dot %d,%d is wrong", b.Symbology, b.S, dot, seen, off, x, y)
							}
						}
					}
				}
			}
		}
	}
}

// A reduction takes the same from every border between dark and light, and
// opens no gap within the dark: each point of the symbol is inked if and only
// if all within half the reduction of it is dark.
func TestReduction(t *testing.T) {
	reduction := layout.MM / 15
	for i, b := range symbols(t, Options{Reduction: reduction}) {
		if i%3 != 0 {
			continue
		}
		m := matrix{modules: b.Modules, rows: b.Rows}
		d := shrink(b.Dot) + reduction/2
		dark := func(x, y layout.Length) bool {
			if m.rows == 1 {
				y = 0
			}
			return x >= 0 && y >= 0 && m.dark(int(x/b.Module), int(y/b.Module))
		}
		// A few steps into each module, off its borders and off the rectangles'.
		for y := b.Module / 16; y < min(b.H, 40*b.Module); y += b.Module / 8 {
			for x := b.Module / 16; x < b.W; x += b.Module / 8 {
				want := dark(x-d, y) && dark(x+d, y)
				if m.rows > 1 {
					for _, dx := range []layout.Length{-d, 0, d} {
						want = want && dark(x+dx, y-d) && dark(x+dx, y) && dark(x+dx, y+d)
					}
				}
				got := false
				for _, r := range b.Rects {
					got = got || x > r.At.X && x < r.Right() && y > r.At.Y && y < r.Bottom()
				}
				if m.rows == 1 && (y < d || y > b.H-d) {
					continue // the ends of bars are not reduced
				}
				if got != want {
					t.Fatalf("%s %q: ink at %s, %s is %v, want %v", b.Symbology, b.S, x, y, got, want)
				}
			}
		}
	}
}

func TestRectsStayInside(t *testing.T) {
	for _, b := range symbols(t, Options{}) {
		whole := layout.Rect{Size: b.Size}
		for _, r := range b.Rects {
			if r.W <= 0 || r.H <= 0 || !whole.Contains(r) {
				t.Errorf("%s %q: %v leaves %v", b.Symbology, b.S, r, whole)
			}
		}
		if b.W%b.Dot != 0 || b.H%b.Dot != 0 || b.Module%b.Dot != 0 {
			t.Errorf("%s %q: %v is no whole number of dots", b.Symbology, b.S, b.Size)
		}
		if b.Rows == 1 && len(b.Rects) != strings.Count(strings.ReplaceAll("0"+b.Modules, "01", "x"), "x") {
			t.Errorf("%s %q: %d rectangles for the bars of %s", b.Symbology, b.S, len(b.Rects), b.Modules)
		}
	}
}

// The least heights of ISO/IEC 15417 and 16388: 5 mm or 15 % of the width.
func TestHeight(t *testing.T) {
	for _, c := range []struct {
		text      string
		height    layout.Length
		min, more layout.Length
	}{
		{"1", 0, 5 * layout.MM, layout.Dot300},
		{"VDOURA-0000123 / COI00098765", 0, layout.Length(15*299*3) * layout.Dot300 / 100, layout.Dot300},
		{"1", 12 * layout.MM, 12 * layout.MM, layout.Dot300},
	} {
		b := mustMake(t, c.text, Options{Height: c.height})
		if b.H < c.min || b.H >= c.min+c.more {
			t.Errorf("%q, height asked %s: %s (width %s), want %s", c.text, c.height, b.H, b.W, c.min)
		}
	}
}

// Wide elements three times as wide as narrow ones are read, and are what
// differs.
func TestRatio3(t *testing.T) {
	two := mustMake(t, "VDOURA-0000123", Options{Symbology: Code39})
	three := mustMake(t, "VDOURA-0000123", Options{Symbology: Code39, Ratio3: true})
	if got := strings.NewReplacer("111", "11", "000", "00").Replace(three.Modules); got != two.Modules {
		t.Errorf("the elements differ:\n%s\n%s", got, two.Modules)
	}
	// A character has three wide elements, the start and stop characters too.
	if got, want := len(three.Modules)-len(two.Modules), 3*(len("VDOURA-0000123")+2); got != want {
		t.Errorf("%d modules longer, want %d", got, want)
	}
	if got, err := scan(look(three, view{dpi: 300}), Code39); got != three.S || err != nil {
		t.Errorf("read %q, %v", got, err)
	}
}

func FuzzMake(f *testing.F) {
	for i, s := range specimens {
		f.Add(s, uint8(i), uint8(i))
	}
	f.Add("ñ", uint8(0), uint8(0))
	f.Fuzz(func(t *testing.T, text string, symbology, level uint8) {
		o := Options{
			Symbology: []string{Code128, Code39, DataMatrix, QR}[symbology%4],
			Level:     []string{"L", "M", "Q", "H"}[level%4],
			Rectangle: level&4 != 0,
			Ratio3:    level&8 != 0,
		}
		b, err := Make(text, o)
		if err != nil {
			return
		}
		if b.S != text || len(b.Modules)%b.Rows != 0 || len(b.Rects) == 0 {
			t.Fatalf("%q as %s: %+v", text, o.Symbology, b)
		}
		if b.Rows > 1 {
			if got, err := said(matrix{modules: b.Modules, rows: b.Rows}, o.Symbology); got != text || err != nil {
				t.Fatalf("%q as %s: read %q, %v", text, o.Symbology, got, err)
			}
		}
	})
}
