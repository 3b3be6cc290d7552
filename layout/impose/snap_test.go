package impose

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/layout"
)

// turnedRect is where r of a box lies on paper once the box is placed.
func turnedRect(r layout.Rect, p layout.Placed) layout.Rect {
	// Both corners turned one by one, each about the box's own corner.
	at := func(x, y layout.Length) layout.Point {
		for range p.Turn {
			// A quarter turn clockwise takes right to down and down to left.
			x, y = -y, x
		}
		return layout.Point{X: x, Y: y}
	}
	box := p.Box.Size
	all := [4]layout.Point{at(0, 0), at(box.W, 0), at(0, box.H), at(box.W, box.H)}
	origin := all[0]
	for _, c := range all {
		origin.X, origin.Y = min(origin.X, c.X), min(origin.Y, c.Y)
	}
	a, b := at(r.At.X, r.At.Y), at(r.Right(), r.Bottom())
	return layout.Rect{
		At:   layout.Point{X: p.At.X + min(a.X, b.X) - origin.X, Y: p.At.Y + min(a.Y, b.Y) - origin.Y},
		Size: turned(r.Size, p.Turn%2 == 1),
	}
}

func TestBarsLieOnDots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(most layout.Length, name string) layout.Length {
			return layout.Length(rapid.Int64Range(0, int64(most)).Draw(t, name))
		}
		dot := rapid.SampledFrom([]layout.Length{layout.Dot300, layout.Dot600, layout.Dot1200, mm / 8}).Draw(t, "dot")
		bars := layout.Bars{Dot: dot, Rect: layout.Rect{
			At:   layout.Point{X: length(50*mm, "x"), Y: length(50*mm, "y")},
			Size: layout.Size{W: 300 * dot, H: 60 * dot},
		}}
		other := layout.Fill{Rect: layout.Rect{Size: size(1, 1)}}
		box := &layout.Box{Size: size(105, 99), Marks: []layout.Mark{other, bars, other}}
		p := layout.Placed{
			At:   layout.Point{X: length(100*mm, "px"), Y: length(200*mm, "py")},
			Box:  box,
			Turn: rapid.IntRange(0, 3).Draw(t, "turn"),
		}
		q := onDots(p)
		if q.At != p.At || q.Turn != p.Turn || q.Box.Marks[0] != other || q.Box.Marks[2] != other {
			t.Fatal("more than the bars has moved")
		}
		if box.Marks[1].(layout.Bars).At != bars.At {
			t.Fatal("the box handed over was written to")
		}
		was, is := turnedRect(bars.Rect, p), turnedRect(q.Box.Marks[1].(layout.Bars).Rect, q)
		if is.At.X%dot != 0 || is.At.Y%dot != 0 || is.Right()%dot != 0 || is.Bottom()%dot != 0 {
			t.Fatalf("bars at %v are off the dots of %d", is, dot)
		}
		if dx, dy := is.At.X-was.At.X, is.At.Y-was.At.Y; max(dx, -dx, dy, -dy) > (dot+1)/2 {
			t.Fatalf("moved by %s, %s", dx, dy)
		}
		if is.Size != was.Size {
			t.Fatalf("size %v became %v", was.Size, is.Size)
		}
	})
}

func TestParsePaper(t *testing.T) {
	for text, want := range map[string]layout.Size{
		// ISO 216: each size of the A series is the one before halved, rounded down.
		"A2": size(420, 594), "a3": size(297, 420), " A4 ": size(210, 297), "A5": size(148, 210), "a6": size(105, 148), "A7": size(74, 105),
		"A4 landscape":  size(297, 210),
		"letter":        {W: 7772400, H: 10058400}, // 8.5 × 11 in at 914,400 to the inch
		"Legal":         {W: 7772400, H: 12801600},
		"TABLOID":       {W: 10058400, H: 15544800},
		"297x420":       size(297, 420),
		"292.1 × 419.1": {W: 10515600, H: 15087600}, // 11.5 × 16.5 in, a mounting sheet
		"280 x 450 mm":  size(280, 450),
		"280mm × 450mm": size(280, 450),
		"266,7X419,1":   {W: 9601200, H: 15087600},
	} {
		if got, err := ParsePaper(text); got != want || err != nil {
			t.Errorf("%q: %v, %v, want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"A9":        `no paper is called "A9"; there are A2, A3, A4, A5, A6, A7, Letter, Legal, Tabloid, or give width × height in millimetres, as in 297x420`,
		"":          `no paper is called ""`,
		"297x":      `paper size "297x": "" is no number of millimetres`,
		"axb":       `paper size "axb": "a" is no number of millimetres`,
		"-5x20":     `paper size "-5x20": each side must be from 10mm to 2000mm`,
		"NaNx20":    `paper size "NaNx20": each side must be from 10mm to 2000mm`,
		"1e9x1e9":   `each side must be from 10mm to 2000mm`,
		"29.7x42cm": `is no number of millimetres`,
	} {
		if _, err := ParsePaper(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

func FuzzParsePaper(f *testing.F) {
	for _, s := range []string{"A4", "297x420", "292.1 × 419.1 mm", "letter landscape"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParsePaper(text)
		if err == nil && (s.W < leastPaper || s.H < leastPaper || s.W > mostPaper || s.H > mostPaper) {
			t.Fatalf("%q: %v", text, s)
		}
	})
}
