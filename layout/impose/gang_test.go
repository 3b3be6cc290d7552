package impose

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/layout"
)

const mm = layout.MM

func size(w, h layout.Length) layout.Size { return layout.Size{W: w * mm, H: h * mm} }

// The heights of sheet labels on a width of 105 mm, which is half of A4.
func sheetLabels(heights ...layout.Length) []layout.Size {
	out := make([]layout.Size, len(heights))
	for i, h := range heights {
		out[i] = size(105, h)
	}
	return out
}

func gangs() *rapid.Generator[Gang] {
	return rapid.Custom(func(t *rapid.T) Gang {
		papers := Papers()
		p := papers[rapid.IntRange(0, len(papers)-3).Draw(t, "paper")].Size
		if p.W < 140*mm || rapid.Bool().Draw(t, "landscape") {
			p = size(297, 420)
		}
		return Gang{
			Paper:   p,
			Order:   Order(rapid.IntRange(0, 1).Draw(t, "order")),
			Gutter:  layout.Length(rapid.SampledFrom([]int{0, 0, 0, 2, 5}).Draw(t, "gutter")) * mm,
			Margin:  layout.Length(rapid.SampledFrom([]int{-1, 0, 4, 5, 8}).Draw(t, "margin")) * mm,
			Clear:   layout.Length(rapid.SampledFrom([]int{0, 0, 0, 3, -1}).Draw(t, "clear")) * mm,
			Upright: rapid.Bool().Draw(t, "upright"),
		}
	})
}

func labels() *rapid.Generator[[]layout.Size] {
	return rapid.Custom(func(t *rapid.T) []layout.Size {
		between := func(least, most int, name string) layout.Length {
			return layout.Length(rapid.IntRange(least, most).Draw(t, name)) * mm
		}
		draw := map[string]func() layout.Size{
			"sheet labels": func() layout.Size {
				return size(105, layout.Length(rapid.SampledFrom([]int{74, 99, 148}).Draw(t, "height")))
			},
			"stickers": func() layout.Size { return size(50, 25) },
			"any": func() layout.Size {
				return layout.Size{W: between(20, 130, "w") + layout.Length(rapid.IntRange(0, 3).Draw(t, "dots"))*layout.Dot300, H: between(15, 160, "h")}
			},
		}
		kinds := rapid.SliceOfN(rapid.Just(0), 1, 3).Draw(t, "kinds")
		few := make([]layout.Size, len(kinds))
		for i := range few {
			few[i] = layout.Size{W: between(30, 100, "w"), H: between(30, 100, "h")}
		}
		draw["few sizes"] = func() layout.Size { return rapid.SampledFrom(few).Draw(t, "size") }
		d := draw[rapid.SampledFrom([]string{"sheet labels", "stickers", "any", "few sizes"}).Draw(t, "sort")]
		sizes := make([]layout.Size, rapid.IntRange(0, 70).Draw(t, "labels"))
		for i := range sizes {
			sizes[i] = d()
		}
		return sizes
	})
}

func TestGangProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, sizes := gangs().Draw(t, "gang"), labels().Draw(t, "sizes")
		p, err := g.Plan(sizes)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, p, sizes)
	})
}

type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// checkPlan holds a plan to everything that is promised of any plan.
func checkPlan(t failer, p *Plan, sizes []layout.Size) {
	t.Helper()
	g := p.gang
	seen := make([]int, len(sizes))
	for i := range p.Len() {
		places := p.Places(i)
		if len(places) == 0 {
			t.Fatalf("page %d is empty", i)
		}
		for k, a := range places {
			seen[a.Index]++
			if a.Size != turned(sizes[a.Index], a.Turn == 1) || a.Turn > 1 {
				t.Fatalf("page %d: label %d of %s covers %s, turned by %d", i, a.Index, sizes[a.Index], a.Size, a.Turn)
			}
			if a.Turn == 1 && (g.Upright || uniform(sizes, g)) && sizes[a.Index].W <= g.area().W && sizes[a.Index].H <= g.area().H {
				t.Fatalf("page %d: label %d is turned without need", i, a.Index)
			}
			if !g.area().Contains(a.Rect()) || !p.Trim(i).Contains(a.Rect()) {
				t.Fatalf("page %d: label %d at %v lies outside %v or trim %v", i, a.Index, a.Rect(), g.area(), p.Trim(i))
			}
			for _, b := range places[k+1:] {
				if a.Rect().Overlaps(b.Rect()) {
					t.Fatalf("page %d: labels %d and %d overlap", i, a.Index, b.Index)
				}
				if !a.Rect().Inset(-g.Gutter / 2).Overlaps(b.Rect().Inset(-g.Gutter / 2)) {
					continue
				}
				t.Fatalf("page %d: labels %d and %d are closer than the gutter", i, a.Index, b.Index)
			}
		}
		if why := cutApart(p, i, p.Cuts(i)); why != "" {
			t.Fatalf("page %d: %s", i, why)
		}
		// The list puts cuts together that are made at once; it works as well.
		var listed []Cut
		for _, s := range p.steps(i) {
			listed = append(listed, s...)
		}
		if why := cutApart(p, i, listed); why != "" || len(listed) != len(p.Cuts(i)) {
			t.Fatalf("page %d, %d of %d cuts as listed: %s", i, len(listed), len(p.Cuts(i)), why)
		}
		checkTicks(t, p, i)
	}
	for i, n := range seen {
		if n != 1 {
			t.Fatalf("label %d is there %d times", i, n)
		}
	}
	checkOrder(t, p, sizes)
}

// cutApart makes cuts of a page one after another: each must run from edge to
// edge of a piece in hand, and in the end each label must be a piece by itself.
func cutApart(p *Plan, page int, cuts []Cut) string {
	pieces := []layout.Rect{{Size: p.gang.Paper}}
	for n, c := range cuts {
		k := slices.IndexFunc(pieces, func(r layout.Rect) bool {
			if c.upright() {
				return c.From.Y == r.At.Y && c.To.Y == r.Bottom() && c.From.X > r.At.X && c.From.X < r.Right()
			}
			return c.From.Y == c.To.Y && c.From.X == r.At.X && c.To.X == r.Right() && c.From.Y > r.At.Y && c.From.Y < r.Bottom()
		})
		if k < 0 {
			return fmt.Sprintf("cut %d, %v, divides no piece in hand: %v", n+1, c, pieces)
		}
		a, b := pieces[k], pieces[k]
		if c.upright() {
			a.W = c.From.X - a.At.X
			b.At.X, b.W = c.From.X, b.Right()-c.From.X
		} else {
			a.H = c.From.Y - a.At.Y
			b.At.Y, b.H = c.From.Y, b.Bottom()-c.From.Y
		}
		pieces[k] = a
		pieces = append(pieces, b)
	}
	for _, pl := range p.Places(page) {
		k := slices.IndexFunc(pieces, func(r layout.Rect) bool { return r.Contains(pl.Rect()) })
		if k < 0 {
			return fmt.Sprintf("label %d is cut through", pl.Index)
		}
		if r := pieces[k]; r.W-pl.Size.W > sliver || r.H-pl.Size.H > sliver || r.At != pl.At {
			return fmt.Sprintf("label %d of %v comes out as %v", pl.Index, pl.Rect(), r)
		}
	}
	return ""
}

// checkTicks wants all ticks within what the printer prints and outside what
// labels may have ink on, and a tick on every cut that can have one.
func checkTicks(t failer, p *Plan, page int) {
	t.Helper()
	g := p.gang
	printable := layout.Rect{Size: g.Paper}.Inset(g.Margin)
	for _, c := range p.Cuts(page) {
		marks := g.ticks(c)
		mid := layout.Rect{At: c.From, Size: layout.Size{W: c.To.X - c.From.X, H: c.To.Y - c.From.Y}}
		if len(marks) == 0 && printable.Overlaps(mid.Inset(-1)) && printable.Contains(layout.Rect{At: layout.Point{X: max(c.From.X, printable.At.X), Y: max(c.From.Y, printable.At.Y)}}) {
			t.Fatalf("page %d: the cut %v has no tick", page, c)
		}
		for _, m := range marks {
			s := m.(layout.Stroke)
			r := layout.Rect{At: s.From, Size: layout.Size{W: s.To.X - s.From.X, H: s.To.Y - s.From.Y}}
			if !printable.Contains(r) {
				t.Fatalf("page %d: tick %v is not within %v", page, r, printable)
			}
			for _, pl := range p.Places(page) {
				if pl.Rect().Inset(max(g.Clear, s.Width)).Overlaps(r.Inset(-s.Width / 2)) {
					t.Fatalf("page %d: tick %v lies on the ink of label %d", page, r, pl.Index)
				}
			}
		}
	}
}

func checkOrder(t failer, p *Plan, sizes []layout.Size) {
	t.Helper()
	g := p.gang
	if g.Order == Stack {
		checkPiles(t, p)
		return
	}
	last := -1
	for i := range p.Len() {
		least := len(sizes)
		order := map[layout.Size]int{}
		for k, pl := range p.Places(i) {
			least = min(least, pl.Index)
			if k > 0 && uniform(sizes, g) && pl.Index < p.Places(i)[k-1].Index {
				t.Fatalf("page %d is out of order: %d comes after %d", i, pl.Index, p.Places(i)[k-1].Index)
			}
			if pl.Turn == 0 {
				if before, ok := order[pl.Size]; ok && pl.Index < before {
					t.Fatalf("page %d: labels of one size are out of order: %d comes after %d", i, pl.Index, before)
				}
				order[pl.Size] = pl.Index
			}
		}
		if least < last {
			t.Fatalf("page %d begins with label %d, the one before with %d", i, least, last)
		}
		last = least
	}
}

func uniform(sizes []layout.Size, g Gang) bool {
	for _, s := range sizes {
		if s.W != sizes[0].W || s.W > g.area().W || s.H > g.area().H {
			return false
		}
	}
	return true
}

// checkPiles cuts a stack: all papers that share their cuts lie on each other,
// each place gives a pile. Within a size the piles, one after another, are in
// record order.
func checkPiles(t failer, p *Plan) {
	t.Helper()
	type at struct {
		layout.Rect
		turn int
	}
	for from := 0; from < p.Len(); {
		to := from
		for to < p.Len() && slices.Equal(p.Cuts(to), p.Cuts(from)) {
			to++
		}
		var order []at
		piles := map[at][]int{}
		for i := from; i < to; i++ {
			for _, pl := range p.Places(i) {
				k := at{pl.Rect(), pl.Turn}
				if piles[k] == nil {
					order = append(order, k)
				}
				piles[k] = append(piles[k], pl.Index)
			}
		}
		last := map[layout.Size]int{}
		for _, k := range order {
			for _, i := range piles[k] {
				if before, ok := last[k.Size]; ok && i < before {
					t.Fatalf("a pile of %s is out of order: %d lies below %d", k.Size, i, before)
				}
				last[k.Size] = i
			}
		}
		from = to
	}
}

// Labels of one size on A4 lie in record order without a gap, and the paper's
// edges are the outer cuts.
func TestSheetLabelsOnA4(t *testing.T) {
	for _, c := range []struct {
		height layout.Length
		each   int
	}{{74, 8}, {99, 6}, {148, 4}} {
		sizes := slices.Repeat(sheetLabels(c.height), 3*c.each-1)
		p, err := Gang{Margin: 5 * mm}.Plan(sizes)
		if err != nil {
			t.Fatal(err)
		}
		if p.Len() != 3 {
			t.Errorf("%d labels of %d mm take %d papers, want 3", len(sizes), c.height, p.Len())
		}
		next := 0
		for i := range p.Len() {
			for k, pl := range p.Places(i) {
				want := layout.Point{X: layout.Length(k/(c.each/2)) * 105 * mm, Y: layout.Length(k%(c.each/2)) * c.height * mm}
				if pl.Index != next || pl.At != want {
					t.Errorf("%d mm, page %d: label %d at %v, want %d at %v", c.height, i, pl.Index, pl.At, next, want)
				}
				next++
			}
		}
		if want := (layout.Rect{Size: size(210, 297)}); p.Trim(0) != want {
			t.Errorf("%d mm: trim %v", c.height, p.Trim(0))
		}
		// The centre cut comes first and runs the whole height; then each half is
		// cut across. No cut runs along the paper's edge.
		cuts := p.Cuts(0)
		if len(cuts) != 1+2*(c.each/2-1) || cuts[0] != (Cut{layout.Point{X: 105 * mm}, layout.Point{X: 105 * mm, Y: 297 * mm}}) {
			t.Errorf("%d mm: cuts %v", c.height, cuts)
		}
		checkPlan(t, p, sizes)
	}
}

// Mixed heights nest: 148 + 74 + 74 and 99 + 99 + 99 fill a column.
func TestMixedHeightsNest(t *testing.T) {
	sizes := sheetLabels(148, 74, 99, 99, 99, 74)
	p, err := Gang{}.Plan(sizes)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for i := range p.Len() {
		for _, pl := range p.Places(i) {
			got = append(got, fmt.Sprintf("%d:%d@%d,%d", i, pl.Index, pl.At.X/mm, pl.At.Y/mm))
		}
	}
	// In strict order the first column would end after 148 + 74; the last label
	// would need a third column. Reading order on the paper is record order.
	if want := "0:0@0,0 0:1@0,148 0:2@105,0 0:3@105,99 0:4@105,198 1:5@0,0"; strings.Join(got, " ") != want {
		t.Errorf("got %s\nwant %s", strings.Join(got, " "), want)
	}
	p, err = Gang{}.Plan(sheetLabels(74, 74, 99, 148, 99, 99))
	if err != nil {
		t.Fatal(err)
	}
	if p.Len() != 1 && p.Len() != 2 {
		t.Errorf("%d papers", p.Len())
	}
}

func TestPlanErrors(t *testing.T) {
	for _, c := range []struct {
		g     Gang
		sizes []layout.Size
		want  string
	}{
		{Gang{}, []layout.Size{size(105, 74), size(250, 300)}, "label 2 of 250 × 300 mm does not fit A4; A3 would do"},
		{Gang{Paper: size(297, 420)}, []layout.Size{size(500, 600)}, "label 1 of 500 × 600 mm does not fit A3; no paper in use is large enough"},
		{Gang{Paper: size(210, 297), Margin: 10 * mm}, []layout.Size{size(205, 205)}, "label 1 of 205 × 205 mm does not fit A4, where a printer margin of 10mm leaves 200 × 287 mm; A3 would do"},
		{Gang{Paper: layout.Size{W: 17 * layout.Inch / 2, H: 11 * layout.Inch}}, []layout.Size{size(220, 300)}, "label 1 of 220 × 300 mm does not fit Letter; Tabloid would do"},
		{Gang{Margin: 110 * mm}, []layout.Size{size(10, 10)}, "a printer margin of 110mm leaves nothing of A4; a paper with both sides above 210mm would do"},
		{Gang{Gutter: -mm}, nil, "gutter of -1mm: it must not be negative; 0 lets neighbours share a cut"},
		{Gang{Paper: size(5, 5)}, nil, "paper of 5 × 5 mm: each side must be from 10mm to 2000mm"},
		{Gang{}, []layout.Size{{}}, "label 1 of 0 × 0 mm: it has no size"},
		{Gang{Order: 7}, nil, "no order of labels has the number 7"},
	} {
		if _, err := c.g.Plan(c.sizes); err == nil || err.Error() != c.want {
			t.Errorf("%+v:\n got %v\nwant %s", c.g, err, c.want)
		}
	}
}

// Pages are drawn one at a time: a box is asked for when its page is, and an
// error ends the run.
func TestPagesAreAsked(t *testing.T) {
	sizes := slices.Repeat(sheetLabels(74), 20)
	p, err := Gang{Margin: 5 * mm}.Plan(sizes)
	if err != nil {
		t.Fatal(err)
	}
	var asked []int
	box := func(i int) (*layout.Box, error) {
		asked = append(asked, i)
		return &layout.Box{Size: sizes[i]}, nil
	}
	n := 0
	for page, err := range p.Pages(box) {
		if err != nil {
			t.Fatal(err)
		}
		if err := page.Check(); err != nil {
			t.Fatal(err)
		}
		n++
		if want := min(8*n, 20); len(asked) != want {
			t.Errorf("after page %d %d boxes were asked for, want %d", n, len(asked), want)
		}
		if page.Size != size(210, 297) || len(page.Marks) == 0 {
			t.Errorf("page %d of %v has %d marks", n, page.Size, len(page.Marks))
		}
	}
	if n != p.Len() {
		t.Errorf("%d pages, want %d", n, p.Len())
	}
	gone := errors.New("gone")
	var failed error
	n = 0
	for _, err := range p.Pages(func(i int) (*layout.Box, error) {
		if i == 9 {
			return nil, gone
		}
		return box(i)
	}) {
		n++
		failed = err
	}
	if n != 2 || failed != gone {
		t.Errorf("%d pages, then %v", n, failed)
	}
	for _, err := range p.Pages(func(i int) (*layout.Box, error) { return &layout.Box{Size: size(105, 99)}, nil }) {
		if err == nil || !strings.Contains(err.Error(), "set at 105 × 99 mm, but its place was planned for 105 × 74 mm") {
			t.Errorf("a box of another size: %v", err)
		}
	}
}

func TestFooter(t *testing.T) {
	footer := func(page, pages int) []*layout.Box {
		return []*layout.Box{{Size: size(300, 4)}, {Size: size(60, 4), Ref: layout.Ref{Key: fmt.Sprintf("%d of %d", page, pages)}}}
	}
	p, err := Gang{Margin: 5 * mm, Footer: footer}.Plan(slices.Repeat(sheetLabels(74), 9))
	if err != nil {
		t.Fatal(err)
	}
	var pages []layout.Page
	for page, err := range p.Pages(func(i int) (*layout.Box, error) { return &layout.Box{Size: size(105, 74)}, nil }) {
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, page)
	}
	if n := len(pages[0].Boxes); n != 8 {
		t.Errorf("the full page has %d boxes, and no room for a footer", n)
	}
	last := pages[1].Boxes[len(pages[1].Boxes)-1]
	if last.Box.Ref.Key != "2 of 2" {
		t.Fatalf("the second page has no footer: %v", last.Box.Ref)
	}
	r := layout.Rect{At: last.At, Size: last.Box.Size}
	if printable := (layout.Rect{Size: size(210, 297)}).Inset(5 * mm); !printable.Contains(r) || r.Overlaps(pages[1].Trim) {
		t.Errorf("footer at %v, trim %v", r, pages[1].Trim)
	}
}

func TestCutList(t *testing.T) {
	p, err := Gang{}.Plan(sheetLabels(148, 148, 99, 99, 99))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"1: down, 105 mm from the left edge",
		"2: across, 148 mm from the top edge, from 0 to 105 mm",
		"3: across, 99 mm from the top edge, from 105 to 210 mm",
		"4: across, 198 mm from the top edge, from 105 to 210 mm",
	}
	if got := p.CutList(0); !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

// Strips that are cut at the same heights are cut together.
func TestCutListOfStrips(t *testing.T) {
	p, err := Gang{}.Plan(slices.Repeat(sheetLabels(74), 8))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"1: down, 105 mm from the left edge",
		"2: across, 74 mm from the top edge, both strips at once",
		"3: across, 148 mm from the top edge, both strips at once",
		"4: across, 222 mm from the top edge, both strips at once",
	}
	if got := p.CutList(0); !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
	// What only some of them share is said of those.
	p, err = Gang{}.Plan(sheetLabels(74, 74, 148, 148, 74, 74))
	if err != nil {
		t.Fatal(err)
	}
	want = []string{
		"1: down, 105 mm from the left edge",
		"2: across, 74 mm from the top edge, from 0 to 105 mm",
		"3: across, 148 mm from the top edge, both strips at once",
		"4: across, 222 mm from the top edge, from 105 to 210 mm",
	}
	if got := p.CutList(0); !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
	p, err = Gang{Margin: 5 * mm}.Plan(slices.Repeat([]layout.Size{size(60, 25)}, 33))
	if err != nil {
		t.Fatal(err)
	}
	if got := p.CutList(0); len(got) != 3+11 || got[4] != "5: across, 50 mm from the top edge, from 0 to 180 mm, all 3 strips at once" {
		t.Errorf("got %d: %q", len(got), got)
	}
}
