package impose

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/layout"
)

// The faces that come of half and quarter Letter blanks, in tenths of an inch,
// are those of the Florida Museum's directions
// (floridamuseum.ufl.edu/herbarium/methods/fragmentpackets.htm): "about 2.9 ×
// 3.5 or 3.0" with flaps of 1 or 1.25 in, "1.9 × 2.25 or 1.75".
func TestFacesOfThePublishedBlanks(t *testing.T) {
	for _, c := range []struct {
		blank string
		flap  layout.Length
		h, w  float64 // inches
	}{
		{"letter-half", layout.Inch, 2.9, 3.5},
		{"letter-half", 5 * layout.Inch / 4, 2.9, 3.0},
		{"letter-quarter", layout.Inch, 1.9, 2.25},
		{"letter-quarter", 5 * layout.Inch / 4, 1.9, 1.75},
	} {
		b, err := ParseBlank(c.blank)
		if err != nil {
			t.Fatal(err)
		}
		p := Packet{Blank: b, Flap: c.flap}
		f := p.Face()
		in := func(l layout.Length) float64 { return float64(l) / float64(layout.Inch) }
		if d := in(f.H) - c.h; d < -0.05 || d > 0.05 {
			t.Errorf("%s: face %.3f in high, want about %.1f", c.blank, in(f.H), c.h)
		}
		if d := in(f.W) - c.w; d < -0.005 || d > 0.005 {
			t.Errorf("%s: face %.3f in wide, want %.2f", c.blank, in(f.W), c.w)
		}
		if err := p.Valid(); err != nil {
			t.Error(err)
		}
	}
}

func TestParseBlank(t *testing.T) {
	for text, want := range map[string]layout.Size{
		"A5": size(148, 210), "a6": size(105, 148), "A4": size(210, 297), "square": size(148, 148),
		"Letter-Half": {W: 11 * layout.Inch / 2, H: 17 * layout.Inch / 2}, "letter-quarter": {W: 17 * layout.Inch / 4, H: 11 * layout.Inch / 2},
		"160x120": size(120, 160), "120 × 160 mm": size(120, 160), "5.5x8.5in": {W: 11 * layout.Inch / 2, H: 17 * layout.Inch / 2},
	} {
		if got, err := ParseBlank(text); got != want || err != nil {
			t.Errorf("%q: %v, %v, want %v", text, got, err, want)
		}
	}
	if _, err := ParseBlank("tiny"); err == nil || !strings.Contains(err.Error(), "letter-quarter, letter-half") {
		t.Error(err)
	}
	if _, err := ParseBlank("3x160"); err == nil {
		t.Error("a blank of 3 mm was taken")
	}
}

func TestPacketErrors(t *testing.T) {
	for _, c := range []struct {
		p    Packet
		want string
	}{
		{Packet{Blank: size(75, 120), Flap: 32 * mm}, "side flaps of 32mm leave 11mm of a blank 75mm wide, and a packet needs 30mm; flaps of 22mm would do"},
		{Packet{Blank: size(40, 120), Flap: 25 * mm}, "side flaps of 25mm leave 0mm of a blank 40mm wide, and a packet needs 30mm; a blank at least 80mm wide would do"},
		{Packet{Blank: size(30, 34), Flap: 10 * mm}, "a blank 34mm long folds into a packet with 8mm for its label; one at least 40mm long would do"},
		{Packet{Flap: 2 * mm}, "side flaps of 2mm do not keep a packet closed; at least 8mm are needed"},
	} {
		if _, err := (Packets{Packet: c.p}).Plan(1); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
	_, err := Packets{Packet: Packet{Blank: size(210, 297)}, Gang: Gang{Paper: size(148, 210)}}.Plan(1)
	if want := "packet blank 1 of 210 × 297 mm does not fit A5; A4 would do"; err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

// Two halves are cut from a Letter sheet, four quarters, two A5 from A4, one
// square above the other.
func TestBlanksNest(t *testing.T) {
	letter := layout.Size{W: 17 * layout.Inch / 2, H: 11 * layout.Inch}
	for _, c := range []struct {
		blank string
		paper layout.Size
		each  int
	}{
		{"letter-half", letter, 2}, {"letter-quarter", letter, 4}, {"letter", letter, 1},
		{"A5", size(210, 297), 2}, {"A6", size(210, 297), 4}, {"A4", size(210, 297), 1}, {"square", size(210, 297), 2},
		{"A4", size(297, 420), 2},
	} {
		b, _ := ParseBlank(c.blank)
		p, err := Packets{Packet: Packet{Blank: b}, Gang: Gang{Paper: c.paper}}.Plan(c.each + 1)
		if err != nil {
			t.Errorf("%s: %v", c.blank, err)
			continue
		}
		if n := len(p.Places(0)); n != c.each || p.Len() != 2 {
			t.Errorf("%d blanks of %s on %v, want %d", n, c.blank, c.paper, c.each)
		}
	}
}

// A folded packet, by reflecting a point of the blank at each fold in turn: it
// tells where on the closed packet a point of the printed side comes to lie, and
// whether that side is to be seen. Front and back are seen with the first fold
// below.
func fold(p Packet, pt layout.Point) layout.Point {
	u := p.upright()
	if low := u.Blank.H - p.bottom(); pt.Y > low { // the lower part up
		pt.Y = 2*low - pt.Y
	}
	if pt.Y < p.top() { // the upper part down
		pt.Y = 2*p.top() - pt.Y
	}
	if pt.X < u.Flap { // the sides in
		pt.X = 2*u.Flap - pt.X
	}
	if right := u.Blank.W - u.Flap; pt.X > right {
		pt.X = 2*right - pt.X
	}
	return pt
}

// The label lies on the outside of the upper part, which comes to lie on the
// front: seen from there x runs the other way, and the label, printed upside
// down, reads upright. No part reaches beyond the closed packet.
func TestFolding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Packet{
			Blank: layout.Size{W: layout.Length(rapid.IntRange(100, 300).Draw(t, "w")) * mm, H: layout.Length(rapid.IntRange(100, 420).Draw(t, "h")) * mm},
			Flap:  layout.Length(rapid.IntRange(20, 34).Draw(t, "flap")) * mm,
		}
		if err := p.Valid(); err != nil {
			t.Fatal(err)
		}
		u := p.upright()
		if u.Blank.H != 2*p.bottom()+p.top() || p.top() >= p.bottom() || p.bottom()-p.top() > 6*mm {
			t.Fatalf("parts of %v, %v and %v in a blank of %v", p.top(), p.bottom(), p.bottom(), u.Blank.H)
		}
		if 3*p.bottom() <= u.Blank.H {
			t.Fatalf("the lower part is not over a third")
		}
		back := p.back()
		closed := layout.Rect{At: back.At, Size: p.Face()}
		pt := layout.Point{
			X: layout.Length(rapid.Int64Range(0, int64(u.Blank.W)).Draw(t, "x")),
			Y: layout.Length(rapid.Int64Range(0, int64(u.Blank.H)).Draw(t, "y")),
		}
		q := fold(p, pt)
		if u.Blank.W-2*u.Flap >= u.Flap && !closed.Contains(layout.Rect{At: q}) {
			t.Fatalf("%v comes to lie at %v, outside %v", pt, q, closed)
		}
		// The label's own upper left corner, printed at the lower right of its
		// room, comes to lie at the upper left of the front.
		r := layout.Rect{At: layout.Point{X: u.Flap}, Size: p.Room()}
		printed := layout.Point{X: r.Right(), Y: r.Bottom()}
		f := fold(p, printed)
		front := layout.Point{X: closed.Right() - f.X, Y: f.Y - closed.At.Y} // seen from the front
		if front != (layout.Point{}) {
			t.Fatalf("the label's corner lies at %v of the front", front)
		}
	})
}

func TestPacketPages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blanks := Blanks()
		b := blanks[rapid.IntRange(0, len(blanks)-1).Draw(t, "blank")]
		paper := size(297, 420)
		margin := layout.Length(rapid.SampledFrom([]int{-1, 0, 4, 8}).Draw(t, "margin")) * mm
		n := rapid.IntRange(1, 9).Draw(t, "n")
		legend := &layout.Box{Size: size(30, 8), Ref: layout.Ref{Key: "legend"}}
		plan, err := Packets{Packet: Packet{Blank: b.Size}, Gang: Gang{Paper: paper, Margin: margin, Clear: -1}, Legend: legend}.Plan(n)
		if margin > 0 && err != nil {
			t.Skip("the blank does not fit what the margin leaves")
		}
		if err != nil {
			t.Fatal(err)
		}
		room := plan.p.Packet.Room()
		seen := 0
		for page, err := range plan.Pages(func(i int) (*layout.Box, error) {
			return &layout.Box{Size: room, Ref: layout.Ref{Key: fmt.Sprint(i)}}, nil
		}) {
			if err != nil {
				t.Fatal(err)
			}
			if err := page.Check(); err != nil {
				t.Fatal(err)
			}
			legends := 0
			for _, p := range page.Boxes {
				if p.Box == legend {
					legends++
					continue
				}
				seen++
			}
			if legends != 1 {
				t.Fatalf("%d legends on a page", legends)
			}
			if ink := Ink(page); !(layout.Rect{Size: paper}).Inset(max(0, plan.gang.Margin) - tickWidth).Contains(ink) {
				t.Fatalf("ink at %v", ink)
			}
			styles := map[int]bool{}
			for _, m := range page.Marks {
				styles[len(m.(layout.Stroke).Dash)] = true
			}
			if !styles[2] || !styles[4] {
				t.Fatalf("kinds of fold lines: %v", styles)
			}
		}
		if seen != n {
			t.Fatalf("%d labels of %d", seen, n)
		}
	})
}

// The lines of a page by their style: the folds cross the blank from edge to
// edge and meet where the back's corners are.
func TestFoldLines(t *testing.T) {
	plan, err := Packets{Packet: Packet{Blank: size(148, 210), Flap: 25 * mm}, Gang: Gang{Margin: -1}}.Plan(1)
	if err != nil {
		t.Fatal(err)
	}
	// On A4 two A5 lie on their sides: the blank's left edge is the page's top.
	page, err := plan.page(0, func(int) (*layout.Box, error) { return &layout.Box{Size: plan.p.Packet.Room()}, nil })
	if err != nil {
		t.Fatal(err)
	}
	var away, towards []layout.Length
	for _, m := range page.Marks {
		switch s := m.(layout.Stroke); {
		case slices.Equal(s.Dash, foldAway):
			if s.From.X != s.To.X {
				t.Errorf("%v does not run down the page", s)
			}
			away = append(away, s.From.X)
		case slices.Equal(s.Dash, foldTowards):
			towards = append(towards, s.From.Y)
		}
	}
	// 2 × 71 2/3 + 66 2/3 = 210; turned clockwise the blank's top is at the right.
	b := (210*mm + 5*mm) / 3
	if want := []layout.Length{210*mm - (210*mm - 2*b), b}; !slices.Equal(away, want) {
		t.Errorf("folds away at %v, want %v", away, want)
	}
	if want := []layout.Length{25 * mm, 123 * mm}; !slices.Equal(towards, want) {
		t.Errorf("folds towards at %v, want %v", towards, want)
	}
	if turn := page.Boxes[0].Turn; turn != 3 {
		t.Errorf("the label is turned by %d quarters, want 3", turn)
	}
}
