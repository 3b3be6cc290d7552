package impose

import (
	"slices"
	"testing"

	"cornerslip/layout"
)

func TestMount(t *testing.T) {
	box := func(i int) (*layout.Box, error) { return &layout.Box{Size: size(105, 99)}, nil }
	pages, err := Mount{}.Pages([]layout.Size{size(105, 99), size(105, 99)}, box)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for page, err := range pages {
		if err != nil {
			t.Fatal(err)
		}
		n++
		// ISO 216 A3, the label 5 mm from the lower and the right edge.
		if want := (layout.Point{X: (297 - 5 - 105) * mm, Y: (420 - 5 - 99) * mm}); page.Size != size(297, 420) || page.Boxes[0].At != want {
			t.Errorf("page of %v, label at %v", page.Size, page.Boxes[0].At)
		}
	}
	if n != 2 {
		t.Errorf("%d pages", n)
	}
	for _, c := range []struct {
		m    Mount
		s    layout.Size
		want string
	}{
		{Mount{Sheet: size(100, 150)}, size(105, 99), "label 1 of 105 × 99 mm does not fit a mounting sheet of 100 × 150 mm with 5mm to its edges; a sheet of 110 × 104 mm is the least"},
		{Mount{Sheet: size(5, 150)}, size(105, 99), "mounting sheet of 5 × 150 mm: each side must be from 10mm to 2000mm"},
	} {
		if _, err := c.m.Pages([]layout.Size{c.s}, box); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
	if _, err := (Mount{Sheet: size(105, 99), Margin: -1}).Pages([]layout.Size{size(105, 99)}, box); err != nil {
		t.Errorf("a label as large as its sheet, without margin: %v", err)
	}
}

// The spots of a house that keeps the barcode at the upper right and a packet
// at the upper left.
func house() Mount {
	return Mount{Spots: []Spot{
		{Name: "barcode", Size: size(50, 25), Corner: UpperRight},
		{Name: "packet", Size: size(89, 73)},
		{Name: "stamp", Size: size(40, 40), Corner: LowerLeft, Off: layout.Point{X: 10 * mm}},
	}}
}

func TestSpots(t *testing.T) {
	m := house().withDefaults()
	got, err := m.spots()
	if err != nil {
		t.Fatal(err)
	}
	want := []layout.Point{{X: (297 - 5 - 50) * mm, Y: 5 * mm}, {X: 5 * mm, Y: 5 * mm}, {X: 10 * mm, Y: (420 - 5 - 40) * mm}}
	for i, w := range want {
		if got[i].At != w {
			t.Errorf("%s at %v, want %v", got[i].name, got[i].At, w)
		}
	}
	box := func(i int) (*layout.Box, error) { return &layout.Box{Size: size(105, 99)}, nil }
	for _, c := range []struct {
		add  Spot
		want string
	}{
		{Spot{Name: "slips", Size: size(100, 25), Corner: LowerRight, Off: layout.Point{Y: 80 * mm}},
			"label 1 and the slips overlap on the mounting sheet, by 100 × 24 mm; move one of them by the shorter side of that"},
		{Spot{Name: "colour chart", Size: size(200, 20), Off: layout.Point{Y: 20 * mm}},
			"the colour chart and the packet overlap on the mounting sheet, by 89 × 20 mm; move one of them by the shorter side of that"},
		{Spot{Name: "scale bar", Size: size(300, 10), Corner: LowerLeft, Off: layout.Point{Y: 120 * mm}},
			"the scale bar of 300 × 10 mm does not lie on the mounting sheet of 297 × 420 mm: it would reach from 5mm, 290mm to 305mm, 300mm"},
		{Spot{Name: "stamp", Corner: LowerLeft}, "the spot for the stamp has no size"},
		{Spot{Name: "stamp", Size: size(10, 10), Corner: 4}, "the spot for the stamp: a sheet has no corner 4"},
	} {
		m := house()
		m.Spots = append(m.Spots, c.add)
		if _, err := m.Pages([]layout.Size{size(105, 99)}, box); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
}

// Two gatherings on one sheet: side by side while there is room, else above.
func TestSharedMount(t *testing.T) {
	sizes := []layout.Size{size(105, 99), size(105, 74), size(105, 74)}
	box := func(i int) (*layout.Box, error) { return &layout.Box{Size: sizes[i]}, nil }
	at := func(m Mount) (out []layout.Point) {
		pages, err := m.Shared([][][]int{{{0}, {1}, {2}}}, sizes, box)
		if err != nil {
			t.Fatal(err)
		}
		for page, err := range pages {
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range page.Boxes {
				out = append(out, p.At)
			}
		}
		return out
	}
	corner := layout.Point{X: (297 - 5 - 105) * mm, Y: (420 - 5 - 99) * mm}
	beside := layout.Point{X: corner.X - 110*mm, Y: (420 - 5 - 74) * mm}
	above := layout.Point{X: corner.X, Y: corner.Y - 5*mm - 74*mm}
	if got, want := at(Mount{}), []layout.Point{corner, beside, above}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	// A stamp in the way: both further labels go above.
	m := Mount{Spots: []Spot{{Name: "stamp", Size: size(120, 40), Corner: LowerLeft}}}
	if got, want := at(m), []layout.Point{corner, above, {X: above.X - 110*mm, Y: above.Y}}; !slices.Equal(got, want) {
		t.Errorf("with a stamp: got %v, want %v", got, want)
	}
}

func TestGuide(t *testing.T) {
	m := house()
	words := &layout.Box{Size: size(20, 4)}
	page, err := m.Guide(Guide{Label: size(105, 148), Lower: []layout.Length{74 * mm, 99 * mm}, Glue: GlueTop, LabelWord: words, FreeWord: words, GlueWord: words})
	if err != nil {
		t.Fatal(err)
	}
	if err := page.Check(); err != nil {
		t.Fatal(err)
	}
	sheet := layout.Rect{Size: size(297, 420)}
	dashes := map[int]int{}
	for _, mark := range page.Marks {
		s := mark.(layout.Stroke)
		for _, p := range []layout.Point{s.From, s.To} {
			if !sheet.Contains(layout.Rect{At: p}) {
				t.Errorf("a line ends at %v, off the sheet", p)
			}
		}
		switch {
		case s.Dash == nil:
			dashes[0]++
		case slices.Equal(s.Dash, dotted):
			dashes[1]++
		default:
			dashes[2]++
		}
	}
	// Eight legs each for the label and three spots, two for each lower label; ticks at 29 and 41 whole
	// centimetres, twice; one glued edge; four sides of the free area.
	if want := map[int]int{0: 4*8 + 2*2 + 2*(29+41), 1: 1, 2: 4}; dashes[0] != want[0] || dashes[1] != want[1] || dashes[2] != want[2] {
		t.Errorf("solid, dotted and dashed lines: %v, want %v", dashes, want)
	}
	if len(page.Boxes) != 3 {
		t.Errorf("%d words, want 3", len(page.Boxes))
	}
	m.Spots[2].Size = size(200, 40)
	if _, err := m.Guide(Guide{Label: size(105, 148)}); err == nil {
		t.Error("a stamp that reaches into the label is drawn")
	}
}

// The free area is held against a lattice of all rectangles in whole steps of
// 20 mm: none that keeps off the rooms is larger.
func TestFreeAreaIsLargest(t *testing.T) {
	m := Mount{Sheet: size(200, 300), Margin: -1}.withDefaults()
	rooms := []named{
		{"label", layout.Rect{At: layout.Point{X: 100 * mm, Y: 200 * mm}, Size: size(100, 100)}},
		{"packet", layout.Rect{Size: size(60, 80)}},
		{"slip", layout.Rect{At: layout.Point{X: 20 * mm, Y: 240 * mm}, Size: size(60, 20)}},
	}
	got := m.free(rooms)
	var best int64
	for x0 := layout.Length(0); x0 < 200; x0 += 20 {
		for x1 := x0 + 20; x1 <= 200; x1 += 20 {
			for y0 := layout.Length(0); y0 < 300; y0 += 20 {
				for y1 := y0 + 20; y1 <= 300; y1 += 20 {
					r := layout.Rect{At: layout.Point{X: x0 * mm, Y: y0 * mm}, Size: size(x1-x0, y1-y0)}
					if !slices.ContainsFunc(rooms, func(n named) bool { return n.Overlaps(r) }) {
						best = max(best, squareMM(r.Size))
					}
				}
			}
		}
	}
	if squareMM(got.Size) != best {
		t.Errorf("%v of %d mm², %d can be had", got, squareMM(got.Size), best)
	}
	for _, r := range rooms {
		if r.Overlaps(got) {
			t.Errorf("%v reaches into the %s", got, r.name)
		}
	}
}

// A label that goes on stands below its continuation, and a second gathering
// beside them; where the sheet is too low, the continuation stands beside.
func TestContinuedOnMount(t *testing.T) {
	sizes := []layout.Size{size(105, 148), size(105, 99), size(105, 74)}
	box := func(i int) (*layout.Box, error) { return &layout.Box{Size: sizes[i]}, nil }
	at := func(m Mount, mounts [][][]int) (out [][]layout.Point) {
		t.Helper()
		pages, err := m.Shared(mounts, sizes, box)
		if err != nil {
			t.Fatal(err)
		}
		for page, err := range pages {
			if err != nil {
				t.Fatal(err)
			}
			var p []layout.Point
			for _, b := range page.Boxes {
				p = append(p, b.At)
			}
			out = append(out, p)
		}
		return out
	}
	pt := func(x, y layout.Length) layout.Point { return layout.Point{X: x * mm, Y: y * mm} }
	got := at(Mount{}, [][][]int{{{0, 1}}, {{2}}, {{0, 1}, {2}}})
	want := [][]layout.Point{
		{pt(187, 267), pt(187, 163)}, {pt(187, 341)}, {pt(187, 267), pt(187, 163), pt(77, 341)},
	}
	if !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("got %v\nwant %v", got, want)
	}
	if got, want := at(Mount{Sheet: size(297, 210)}, [][][]int{{{0, 1}}}), [][]layout.Point{{pt(187, 57), pt(77, 106)}}; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("on a low sheet: got %v, want %v", got, want)
	}
	// A spot above the label: the error names the label that goes on.
	m := Mount{
		Spots: []Spot{{Name: "slips", Size: size(105, 60), Corner: LowerRight, Off: pt(5, 160)}, {Name: "stamp", Size: size(90, 40), Corner: LowerLeft}},
		Name:  func(i int) string { return []string{"label of Almeida 251", "label 2 of Almeida 251", ""}[i] },
	}
	_, err := m.Shared([][][]int{{{0, 1}}}, sizes, box)
	if want := "label 2 of Almeida 251 and the slips overlap on the mounting sheet, by 105 × 60 mm; move one of them by the shorter side of that"; err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

// Spots are marked on the labels' sheets where that is asked for, and only
// there.
func TestDrawSpots(t *testing.T) {
	m := house()
	m.Spots[1].Word = &layout.Box{Size: size(20, 4)}
	box := func(i int) (*layout.Box, error) { return &layout.Box{Size: size(105, 99)}, nil }
	for _, draw := range []bool{false, true} {
		m.DrawSpots = draw
		pages, err := m.Pages([]layout.Size{size(105, 99)}, box)
		if err != nil {
			t.Fatal(err)
		}
		for page, err := range pages {
			if err != nil {
				t.Fatal(err)
			}
			if marks, boxes := len(page.Marks), len(page.Boxes); draw != (marks == 3*8) || draw != (boxes == 2) {
				t.Errorf("drawn %v: %d lines, %d boxes", draw, marks, boxes)
			}
		}
	}
}

// All of the guide lies where the printer prints, figures at the fifth
// centimetres included; those that would lie in a room are left out.
func TestGuideWithinPrinter(t *testing.T) {
	m := house()
	figures := 0
	page, err := m.Guide(Guide{Label: size(105, 148), Margin: 4 * mm, Figure: func(cm int) *layout.Box {
		if cm%5 != 0 {
			t.Errorf("a figure at %d cm", cm)
		}
		figures++
		return &layout.Box{Size: size(5, 3), Marks: []layout.Mark{layout.Fill{Rect: layout.Rect{Size: size(5, 3)}}}}
	}})
	if err != nil {
		t.Fatal(err)
	}
	if ink := Ink(page); !(layout.Rect{Size: size(297, 420)}).Inset(4*mm - guideWidth).Contains(ink) {
		t.Errorf("ink at %v", ink)
	}
	if figures != 2*(5+8) {
		t.Errorf("%d figures, want those of 5 and 8 fifths, twice", figures)
	}
	if n := len(page.Boxes); n == 0 || n >= figures {
		t.Errorf("%d figures drawn", n)
	}
}

func TestMountNames(t *testing.T) {
	for _, m := range Mounts() {
		if s, err := ParsePaper(m.Name); err != nil || s != m.Size {
			t.Errorf("%s: %v, %v, want %v", m.Name, s, err, m.Size)
		}
	}
	// 11.5 × 16.5 in are 292.1 × 419.1 mm.
	for _, text := range []string{`11.5x16.5"`, "11.5 × 16.5 inches", "11.5 in x 16.5 in", "11,5x16,5in"} {
		if s, err := ParsePaper(text); err != nil || s != (layout.Size{W: 2921 * mm / 10, H: 4191 * mm / 10}) {
			t.Errorf("%s: %v, %v", text, s, err)
		}
	}
	if _, err := ParsePaper("11.5x1y.5in"); err == nil || err.Error() != `paper size "11.5x1y.5in": "1y.5" is no number of inches` {
		t.Error(err)
	}
}
