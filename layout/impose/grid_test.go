package impose

import (
	"slices"
	"testing"

	"cornerslip/layout"
)

// A sheet of 3 × 8 stickers on A4, as a wrapper describes it.
func stickers() Grid {
	return Grid{Columns: 3, Rows: 8, Place: size(63, 34), First: layout.Point{X: 7 * mm, Y: 12 * mm}, Pitch: size(66, 34)}
}

func TestGrid(t *testing.T) {
	g := stickers()
	g.Start = 4 // the first row and one place are gone
	g.Skip = []int{6}
	sizes := slices.Repeat([]layout.Size{size(60, 25)}, 30)
	p, err := g.Plan(sizes)
	if err != nil {
		t.Fatal(err)
	}
	if p.Len() != 2 || len(p.Places(0)) != 24-4-1 || len(p.Places(1)) != 30-19 {
		t.Fatalf("%d sheets, %d and %d places", p.Len(), len(p.Places(0)), len(p.Places(1)))
	}
	next := 0
	var rects []layout.Rect
	for i := range p.Len() {
		for _, pl := range p.Places(i) {
			if pl.Index != next {
				t.Errorf("label %d comes before %d", pl.Index, next)
			}
			next++
		}
	}
	for _, pl := range p.Places(0) {
		rects = append(rects, pl.Rect())
	}
	// Each label in the middle of its sticker: the second of the second row
	// first, and the first of the third row is passed over.
	if want := (layout.Point{X: (7+66)*mm + 3*mm/2, Y: (12+34)*mm + 9*mm/2}); rects[0].At != want {
		t.Errorf("first label at %v, want %v", rects[0].At, want)
	}
	if want := (layout.Point{X: (7+66)*mm + 3*mm/2, Y: (12+68)*mm + 9*mm/2}); rects[2].At != want {
		t.Errorf("third label at %v, want %v", rects[2].At, want)
	}
	for page, err := range p.Pages(func(i int) (*layout.Box, error) { return &layout.Box{Size: sizes[i]}, nil }) {
		if err != nil || len(page.Marks) != 0 || page.Check() != nil {
			t.Errorf("page with %d marks, %v", len(page.Marks), err)
		}
	}
	want := "× × ×\n× ■ ■\n× ■ □\n□ □ □\n□ □ □\n□ □ □\n□ □ □\n□ □ □\n"
	if got := g.Picture(3); got != want {
		t.Errorf("got\n%s", got)
	}
}

func TestGridPlace(t *testing.T) {
	g := stickers()
	for text, want := range map[string]int{"1,1": 0, "2,3": 5, " 8 , 3 ": 23, "1": 0, "24": 23} {
		if got, err := g.ParsePlace(text); got != want || err != nil {
			t.Errorf("%q: %d, %v, want %d", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"9,9": "place 9,9: the sheet has 8 rows of 3 places; the last place is 8,3",
		"25":  "place 25: the sheet of 3 × 8 has places 1 to 24",
		"0,1": "place 0,1: the sheet has 8 rows of 3 places; the last place is 8,3",
		"x":   `place "x": give row and column, as in 2,3, or how many places to count`,
		"1,x": `place "1,x": give row and column, as in 2,3`,
	} {
		if _, err := g.ParsePlace(text); err == nil || err.Error() != want {
			t.Errorf("%q: got %v\nwant %s", text, err, want)
		}
	}
}

func TestGridErrors(t *testing.T) {
	label := []layout.Size{size(60, 25)}
	for _, c := range []struct {
		change func(g *Grid)
		sizes  []layout.Size
		want   string
	}{
		{func(g *Grid) { g.Columns = 0 }, label, "a sheet of 0 columns and 8 rows: at least one of each is needed, and at most 10000 places"},
		{func(g *Grid) { g.Pitch.W = -mm }, label, "pitch of -1 × 34 mm: it must not be negative"},
		{func(g *Grid) { g.Pitch.W = 60 * mm }, label, "pitch of 60 × 34 mm: stickers of 63 × 34 mm would overlap; it must be at least their size"},
		{func(g *Grid) { g.Start = 24 }, label, "24 places used up: the sheet of 3 × 8 has 24, so 0 to 23 are possible"},
		{func(g *Grid) { g.Skip = []int{24} }, label, "place 25 is to be skipped: the sheet of 3 × 8 has 24"},
		{func(g *Grid) { g.Skip = all(24) }, label, "no place of the first sheet is free; take a new sheet and skip none"},
		{func(g *Grid) { g.Columns = 4 }, label, "4 columns and 8 rows of stickers reach to 268mm, 284mm, and A4 ends at 210mm, 297mm; check pitch and first sticker"},
		{func(g *Grid) { g.First.X = -mm }, label, "first sticker at -1mm, 12mm: it must not lie outside the paper"},
		{func(g *Grid) { g.Place = layout.Size{} }, label, "stickers of 0 × 0 mm: they must have a size"},
		{func(g *Grid) {}, []layout.Size{size(60, 25), size(70, 25)}, "label 2 of 70 × 25 mm does not fit a sticker of 63 × 34 mm"},
		{func(g *Grid) {}, []layout.Size{{}}, "label 1 of 0 × 0 mm: it has no size"},
		{func(g *Grid) { g.Paper = size(1, 1) }, label, "paper of 1 × 1 mm: each side must be from 10mm to 2000mm"},
	} {
		g := stickers()
		c.change(&g)
		if _, err := g.Plan(c.sizes); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
}

// A footer stands above or below the stickers, never on one.
func TestGridFooter(t *testing.T) {
	g := stickers()
	g.Footer = func(page, pages int) []*layout.Box { return []*layout.Box{{Size: size(100, 20)}, {Size: size(100, 4)}} }
	p, err := g.Plan(slices.Repeat([]layout.Size{size(60, 25)}, 25))
	if err != nil {
		t.Fatal(err)
	}
	for page, err := range p.Pages(func(i int) (*layout.Box, error) { return &layout.Box{Size: size(60, 25)}, nil }) {
		if err != nil {
			t.Fatal(err)
		}
		last := page.Boxes[len(page.Boxes)-1]
		if last.Box.Size != size(100, 4) {
			t.Fatalf("no footer, or one that is too high: %v", last.Box.Size)
		}
		r := layout.Rect{At: last.At, Size: last.Box.Size}
		for _, k := range all(24) {
			if r.Overlaps(layout.Rect{At: g.at(k), Size: g.Place}) {
				t.Errorf("footer at %v lies on sticker %d", r, k)
			}
		}
	}
}
