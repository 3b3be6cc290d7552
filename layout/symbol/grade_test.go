package symbol

import (
	"testing"

	"cornerslip/layout"
)

// A symbol on its printer's dots is as good as can be; the same moved off them
// is not, and its grade falls.
func TestGrade(t *testing.T) {
	for _, symbology := range []string{Code128, Code39, DataMatrix, QR} {
		for _, dot := range []layout.Length{layout.Dot300, layout.Dot600} {
			b := mustMake(t, "VDOURA-0000123", Options{Symbology: symbology, Dot: dot})
			g := Estimate(b, Print{})
			if g.Letter != 'A' || g.Decodability < 0.99 || g.Contrast < 0.74 || g.Defects > 0.01 {
				t.Errorf("%s for %s: %+v", symbology, dot, g)
			}
			faint := Estimate(b, Print{Ink: 0.35})
			if faint.Letter != 'C' {
				t.Errorf("%s in grey ink, a contrast of 45 %%: %c", symbology, faint.Letter)
			}
			last := g
			for _, gain := range []layout.Length{b.Module / 20, b.Module / 8, b.Module / 4} {
				spread := Estimate(b, Print{Gain: gain})
				if spread.Letter < last.Letter || spread.Modulation > last.Modulation+1e-9 {
					t.Errorf("%s: a gain of %s makes %+v better than %+v", symbology, gain, spread, last)
				}
				last = spread
			}
			if last.Letter == 'A' {
				t.Errorf("%s: a gain of a quarter module is still graded A: %+v", symbology, last)
			}
		}
	}
}

// Measured before: a module of 0.25 mm, which is no whole number of dots of 300
// dpi, is painted 3 or 4 dots wide; decodability falls from 1.00 to about 0.27.
func TestGradeOffTheDots(t *testing.T) {
	good := mustMake(t, "ABC0000001", Options{})
	bad := good
	bad.Module = layout.MM / 4
	bad.W = layout.Length(len(bad.Modules)) * bad.Module
	bad.Rects = bars(matrix{modules: bad.Modules, rows: 1}, bad.Module, bad.H, 0, 0)
	g, b := Estimate(good, Print{}), Estimate(bad, Print{DPI: 300})
	t.Logf("on the dots %+v, off %+v", g, b)
	if g.Decodability < 0.99 || b.Decodability > 0.40 || b.Letter <= g.Letter {
		t.Errorf("on the dots %+v, off %+v", g, b)
	}
	moved := good
	moved.At.X = layout.Dot300 / 2
	if m := Estimate(moved, Print{}); m.Decodability >= g.Decodability && m.Modulation >= g.Modulation {
		t.Errorf("half a dot off: %+v", m)
	}
}

// A reduction makes up for the ink that spreads.
func TestReductionMendsGain(t *testing.T) {
	gain := layout.MM / 20
	for _, symbology := range []string{Code39, DataMatrix} {
		plain := Estimate(mustMake(t, "VDOURA-0000123", Options{Symbology: symbology, Dot: layout.Dot1200}), Print{Gain: gain})
		less := Estimate(mustMake(t, "VDOURA-0000123", Options{Symbology: symbology, Dot: layout.Dot1200, Reduction: 2 * gain}), Print{Gain: gain})
		if less.Letter > plain.Letter || less.Modulation+less.Decodability <= plain.Modulation+plain.Decodability {
			t.Errorf("%s: with reduction %+v, without %+v", symbology, less, plain)
		}
	}
}
