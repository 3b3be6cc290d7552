package impose

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/layout"
)

// A page with a bit of everything on it.
func mixedPage(turn int) layout.Page {
	box := &layout.Box{Size: size(60, 25), Marks: []layout.Mark{
		layout.Text{At: layout.Point{X: 5 * mm, Y: 20 * mm}, Face: "f", Size: 9 * layout.Pt, S: "ab", Clusters: []layout.Cluster{{Bytes: 1, Adv: 50001}, {Bytes: 1, Adv: 50002}}},
		layout.Bars{Rect: layout.Rect{At: layout.Point{X: 6 * mm, Y: 5 * mm}, Size: layout.Size{W: 40 * layout.Dot300, H: 60 * layout.Dot300}},
			Dot: layout.Dot300, Module: 40 * layout.Dot300, Symbology: "code128", S: "a", Modules: "1", Rows: 1,
			Rects: []layout.Rect{{Size: layout.Size{W: 40 * layout.Dot300, H: 60 * layout.Dot300}}}},
	}}
	return layout.Page{
		Size:  size(210, 297),
		Trim:  layout.Rect{At: layout.Point{X: 10 * mm, Y: 10 * mm}, Size: size(60, 25)},
		Boxes: []layout.Placed{onDots(layout.Placed{At: layout.Point{X: 10 * mm, Y: 10 * mm}, Box: box, Turn: turn})},
		Marks: Rule(layout.Point{X: 20 * mm, Y: 100 * mm}, 100, false),
	}
}

func bars(t failer, p layout.Page) layout.Rect {
	t.Helper()
	for _, b := range p.Boxes {
		for _, m := range b.Box.Marks {
			if m, ok := m.(layout.Bars); ok {
				return layout.Rect{At: b.At.Add(corner(m.Rect, b.Box.Size, b.Turn)), Size: turned(m.Size, b.Turn%2 == 1)}
			}
		}
	}
	t.Fatalf("the page has no bars")
	return layout.Rect{}
}

// Everything moves by the offset, bars to the nearest dot of it and not
// otherwise changed.
func TestCorrectionMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.IntRange(0, 3).Draw(t, "turn")
		p := mixedPage(turn)
		c := Correction{Offset: layout.Point{
			X: layout.Length(rapid.Int64Range(-int64(9*mm), int64(9*mm)).Draw(t, "x")),
			Y: layout.Length(rapid.Int64Range(-int64(9*mm), int64(9*mm)).Draw(t, "y")),
		}}
		q, err := c.Page(p)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := q.Boxes[0].At, p.Boxes[0].At.Add(c.Offset); got != want {
			t.Fatalf("box at %v, want %v", got, want)
		}
		if got, want := q.Trim.At, p.Trim.At.Add(c.Offset); got != want {
			t.Fatalf("trim at %v, want %v", got, want)
		}
		for i, m := range p.Marks {
			if got, want := inkOf(q.Marks[i]), inkOf(m.Shifted(c.Offset)); got != want {
				t.Fatalf("mark at %v, want %v", got, want)
			}
		}
		a, b := bars(t, p), bars(t, q)
		if b.At.X%layout.Dot300 != 0 || b.At.Y%layout.Dot300 != 0 || a.Size != b.Size {
			t.Fatalf("bars at %v, off the dots", b)
		}
		for _, d := range []layout.Length{b.At.X - a.At.X - c.Offset.X, b.At.Y - a.At.Y - c.Offset.Y} {
			if d > layout.Dot300 || d < -layout.Dot300 {
				t.Fatalf("bars moved by %v besides", d)
			}
		}
	})
}

// Scaled by s, what lies at a lies at a·s: exact to the unit for lines and the
// ends of texts, whatever stands before them.
func TestCorrectionScales(t *testing.T) {
	for turn := range 4 {
		p := mixedPage(turn)
		c := Correction{ScaleX: 1_003_000, ScaleY: 997_000, Offset: layout.Point{X: mm, Y: -mm}}
		q, err := c.Page(p)
		if err != nil {
			t.Fatal(err)
		}
		// The 100 mm rule is 100.3 mm long.
		first, last := q.Marks[0].(layout.Stroke), q.Marks[len(q.Marks)-1].(layout.Stroke)
		if got := first.To.X - first.From.X; got != 1003*mm/10 {
			t.Errorf("the rule is %v long", got)
		}
		if want := 120*mm*1003/1000 + mm; last.From.X != want {
			t.Errorf("its end at %v, want %v", last.From.X, want)
		}
		if want := 100*mm*997/1000 - mm; first.From.Y != want {
			t.Errorf("it lies at %v, want %v", first.From.Y, want)
		}
		b := bars(t, q)
		if b.At.X%layout.Dot300 != 0 || b.At.Y%layout.Dot300 != 0 || b.Size != bars(t, p).Size {
			t.Errorf("turned by %d, bars at %v are off the dots or scaled", turn, b)
		}
		text := q.Boxes[0].Box.Marks[0].(layout.Text)
		along := int64(1003)
		if turn%2 == 1 {
			along = 997
		}
		if got, want := text.Width(), layout.Length(100003).MulDiv(along, 1000); got != want || text.Size != 9*layout.Pt {
			t.Errorf("text of %v at %v, want %v at 9 pt", got, text.Size, want)
		}
		if err := q.Check(); err != nil {
			t.Error(err)
		}
	}
}

func TestCorrectionOffThePaper(t *testing.T) {
	_, err := Correction{Offset: layout.Point{X: -12 * mm}}.Page(mixedPage(0))
	if err != nil {
		t.Errorf("nothing leaves the paper: %v", err)
	}
	_, err = Correction{Offset: layout.Point{X: -16 * mm}}.Page(mixedPage(0))
	if want := "the printer's correction moves ink off the paper, by 1mm: correct less than the margin that is kept free"; err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
	if q, err := (Correction{}).Page(mixedPage(0)); err != nil || len(q.Boxes) != 1 {
		t.Errorf("no correction: %v", err)
	}
}

// Four quarter turns bring every page back to itself; one moves each piece of
// ink to where a turned paper has it.
func TestTurned(t *testing.T) {
	for turn := range 4 {
		p := mixedPage(turn)
		ink := Ink(p)
		q := Turned(p)
		if q.Size != size(297, 210) {
			t.Errorf("a page of %v", q.Size)
		}
		want := layout.Rect{At: corner(ink, p.Size, 1), Size: ink.Size.Turned()}
		got := Ink(q)
		for _, d := range []layout.Length{got.At.X - want.At.X, got.At.Y - want.At.Y, got.Right() - want.Right(), got.Bottom() - want.Bottom()} {
			if d > layout.Dot300 || d < -layout.Dot300 {
				t.Errorf("ink at %v, want %v", got, want)
			}
		}
		if b := bars(t, q); b.At.X%layout.Dot300 != 0 || b.At.Y%layout.Dot300 != 0 {
			t.Errorf("bars at %v are off the dots", b)
		}
		r := Turned(Turned(Turned(q)))
		if r.Size != p.Size || r.Trim != p.Trim || r.Boxes[0].Turn != p.Boxes[0].Turn || r.Boxes[0].At != p.Boxes[0].At {
			t.Errorf("after four turns: %v at %v", r.Boxes[0].Turn, r.Boxes[0].At)
		}
		if err := q.Check(); err != nil {
			t.Error(err)
		}
	}
}

func TestRule(t *testing.T) {
	for _, down := range []bool{false, true} {
		marks := Rule(layout.Point{X: 30 * mm, Y: 40 * mm}, 100, down)
		var ticks []layout.Length
		for _, m := range marks[1:] {
			s := m.(layout.Stroke)
			at := s.From.X - 30*mm
			if down {
				at = s.From.Y - 40*mm
			}
			ticks = append(ticks, at)
		}
		var want []layout.Length
		for k := range layout.Length(11) {
			want = append(want, k*10*mm)
		}
		if !slices.Equal(ticks, want) {
			t.Errorf("ticks at %v", ticks)
		}
	}
}

func TestCutPicture(t *testing.T) {
	p, err := Gang{}.Plan(sheetLabels(148, 148, 99, 99, 99, 74, 74))
	if err != nil {
		t.Fatal(err)
	}
	var figures []int
	pic := p.CutPicture(0, size(80, 200), func(n int) *layout.Box {
		figures = append(figures, n)
		return &layout.Box{Size: size(2, 3)}
	})
	if pic.Size != (layout.Size{W: 80 * mm, H: (297 * mm).MulDiv(80, 210)}) {
		t.Errorf("a picture of %v", pic.Size)
	}
	if len(figures) != len(p.CutList(0)) || len(pic.Marks) != 4+len(p.Cuts(0)) {
		t.Errorf("figures %v, %d lines for %d cuts", figures, len(pic.Marks), len(p.Cuts(0)))
	}
	if err := pic.Check(); err != nil {
		t.Error(err)
	}
	for _, b := range pic.Boxes {
		if r := (layout.Rect{At: b.At, Size: b.Box.Size}); !(layout.Rect{Size: pic.Size}).Contains(r) {
			t.Errorf("a figure at %v leaves the picture", r)
		}
	}
	if p.SameCuts(0, 1) || !p.SameCuts(0, 0) {
		t.Error("pages that are cut differently count as alike")
	}
}
