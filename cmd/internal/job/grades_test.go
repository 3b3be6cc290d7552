package job

import (
	"testing"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/symbol"
)

// On every paper and sticker, turned or not, the symbols lie on the printer's
// dots and are graded A; the same symbol a third of a dot away is not better.
func TestGraded(t *testing.T) {
	j := in("house.toml", t)
	tab, _ := exampleTrip(t)
	for _, q := range []Request{
		{Kind: label.Barcode}, {Kind: label.Barcode, On: OnPaper, Paper: "100x150"}, {Kind: label.Barcode, Symbology: symbol.QR, On: OnPaper},
		{Kind: label.Barcode, Symbology: symbol.DataMatrix, On: OnPaper},
	} {
		_, rep, err := print(t, j, tab, q)
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, s := range rep.Scans {
			n += s.Count
			if s.Worst.Letter != 'A' {
				t.Errorf("%+v: %c", s, s.Worst.Letter)
			}
			if s.Dots < 2 || s.DPI != j.House.Bars.DPI {
				t.Errorf("%d dots at %d dpi", s.Dots, s.DPI)
			}
		}
		if n != rep.Labels {
			t.Errorf("%d symbols graded on %d labels", n, rep.Labels)
		}
	}
}

// A turned symbol meets the printer's dots with the side that lies along them.
func TestLying(t *testing.T) {
	b, err := symbol.Make("VDOURA-0004217", symbol.Options{})
	if err != nil {
		t.Fatal(err)
	}
	b.At = layout.Point{X: 3 * layout.Dot300, Y: 5 * layout.Dot300}
	box := &layout.Box{Size: layout.Size{W: b.W + 10*layout.Dot300, H: b.H + 12*layout.Dot300}}
	for turn := range 4 {
		for _, off := range []layout.Point{{}, {X: layout.Dot300 / 3}, {Y: layout.Dot300 / 3}} {
			p := layout.Placed{At: off, Box: box, Turn: turn}
			g := symbol.Estimate(lying(b, p), symbol.Print{})
			along := off.X
			if turn%2 == 1 {
				along = off.Y
			}
			if along == 0 && g.Letter != 'A' {
				t.Errorf("turn %d, off %v: grade %c, want A", turn, off, g.Letter)
			}
			if along != 0 {
				on := symbol.Estimate(b, symbol.Print{})
				if g.Modulation >= on.Modulation && g.Decodability >= on.Decodability {
					t.Errorf("turn %d, off %v: no worse than on the dots: %+v, %+v", turn, off, g, on)
				}
			}
		}
	}
}
