package job

import (
	"iter"

	"cornerslip/layout"
	"cornerslip/layout/symbol"
)

// Scans says of the barcodes of a run that are alike how well they should scan.
type Scans struct {
	Symbology string
	Module    layout.Length // X, the width of the narrowest bar
	Dots      int           // X in the printer's dots
	DPI       int
	Count     int
	Worst     symbol.Grade // the worst of them
}

// graded passes pages on and grades the barcodes on them as they lie: what is
// counted in rep is complete when the last page was drawn.
func graded(pages iter.Seq2[layout.Page, error], rep *Report) iter.Seq2[layout.Page, error] {
	return func(yield func(layout.Page, error) bool) {
		for page, err := range pages {
			for _, placed := range page.Boxes {
				for _, m := range placed.Box.Marks {
					if b, ok := m.(layout.Bars); ok {
						rep.scanned(symbol.Estimate(lying(b, placed), symbol.Print{}), b)
					}
				}
			}
			if !yield(page, err) {
				return
			}
		}
	}
}

// lying returns bars with their corner where it is on the page, counted along
// the bars' own axes: a turned symbol meets the printer's dots with its other
// side.
func lying(b layout.Bars, p layout.Placed) layout.Bars {
	size, at := p.Box.Size, b.At
	switch p.Turn {
	case 0:
		b.At = p.At.Add(at)
	case 1:
		b.At = layout.Point{X: p.At.Y + at.X, Y: p.At.X + size.H - at.Y - b.H}
	case 2:
		b.At = layout.Point{X: p.At.X + size.W - at.X - b.W, Y: p.At.Y + size.H - at.Y - b.H}
	default:
		b.At = layout.Point{X: p.At.Y + size.W - at.X - b.W, Y: p.At.X + at.Y}
	}
	return b
}

func (rep *Report) scanned(g symbol.Grade, b layout.Bars) {
	for i := range rep.Scans {
		s := &rep.Scans[i]
		if s.Symbology == b.Symbology && s.Module == b.Module {
			s.Count++
			if worse(g, s.Worst) {
				s.Worst = g
			}
			return
		}
	}
	rep.Scans = append(rep.Scans, Scans{b.Symbology, b.Module, int(b.Module / b.Dot), int(layout.Inch / b.Dot), 1, g})
}

func worse(a, b symbol.Grade) bool {
	if a.Letter != b.Letter {
		return a.Letter > b.Letter
	}
	return min(a.Modulation, a.Decodability) < min(b.Modulation, b.Decodability)
}
