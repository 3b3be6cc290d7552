package para

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"cornerslip/layout"
)

// cost is the slow twin's view of a breaking: it is computed from the doc
// comments of the package, line by line, with exact fractions.
type cost struct {
	overfull, lines int
	demerits        *big.Int
}

func (c cost) less(d cost) bool {
	if c.overfull != d.overfull {
		return c.overfull < d.overfull
	}
	if c.lines != d.lines {
		return c.lines < d.lines
	}
	return c.demerits.Cmp(d.demerits) < 0
}

// price returns what a breaking costs, and false if it is none: a line ends at
// a forbidden place, runs over a forced one, or is overfull though it could
// have ended earlier.
func price(items []Item, breaks []int, o Options) (cost, bool) {
	c := cost{lines: len(breaks), demerits: new(big.Int)}
	from := 0
	for i, end := range breaks {
		last := end == len(items)-1
		measure := o.Rest
		if i == 0 && o.First != 0 {
			measure = o.First
		}
		forced := last || items[end].Break == Forced
		if !forced && items[end].Break == Forbidden {
			return c, false
		}
		var width, stretch, shrink layout.Length
		earlier := false
		for k := from; k <= end; k++ {
			width += items[k].Width
			if k == end {
				break
			}
			width += items[k].Space
			stretch += items[k].Stretch
			shrink += items[k].Shrink
			if items[k].Break == Forced {
				return c, false
			}
			earlier = earlier || items[k].Break == Allowed
		}
		natural := width
		penalty := int64(0)
		if !forced {
			width += items[end].Hyphen
			penalty = int64(min(items[end].Penalty, MaxPenalty))
		}
		if !o.Justify {
			stretch, shrink = 0, 0
		}
		free := measure - width
		bad := int64(0)
		switch {
		case free+shrink < 0:
			if earlier {
				return c, false
			}
			c.overfull++
			bad = worst
		case free < 0:
			bad = cubedFraction(-free, shrink)
		case forced:
		case o.Justify:
			if bad = cubedFraction(free, stretch); bad == worst {
				bad += int64(free) * 1000 / int64(measure)
			}
		default:
			bad = int64(free) * 1000 / int64(measure)
		}
		d := 1 + bad + penalty
		c.demerits.Add(c.demerits, big.NewInt(d*d))
		if last && free+shrink >= 0 {
			if i > 0 && natural < o.ShortLast {
				fault := int64(shortFault)
				if o.Justify {
					fault = shortJustified
				}
				c.demerits.Add(c.demerits, big.NewInt(fault))
			}
			if o.LastRoom > 0 && free < o.LastRoom {
				c.demerits.Add(c.demerits, big.NewInt(crowdedFault))
			}
		}
		from = end + 1
	}
	return c, from == len(items)
}

// cubedFraction is 100 r³ for r = gap/give cut to thousandths, at most worst.
func cubedFraction(gap, give layout.Length) int64 {
	if gap == 0 {
		return 0
	}
	if give == 0 {
		return worst
	}
	r := new(big.Int).Quo(big.NewInt(int64(gap)*1000), big.NewInt(int64(give)))
	r.Exp(r, big.NewInt(3), nil).Quo(r, big.NewInt(10_000_000))
	if !r.IsInt64() || r.Int64() > worst {
		return worst
	}
	return r.Int64()
}

// best tries every breaking.
func best(items []Item, o Options) cost {
	var found *cost
	n := len(items)
	for mask := range 1 << (n - 1) {
		var breaks []int
		for i := range n - 1 {
			if mask>>i&1 != 0 {
				breaks = append(breaks, i)
			}
		}
		c, ok := price(items, append(breaks, n-1), o)
		if ok && (found == nil || c.less(*found)) {
			found = &c
		}
	}
	return *found
}

func randomItems(r *rand.Rand, n int) []Item {
	items := make([]Item, n)
	for i := range items {
		it := &items[i]
		it.Width = layout.Length(1+r.IntN(30)) * layout.MM / 2
		if r.IntN(8) != 0 {
			it.Space = layout.MM
			it.Stretch, it.Shrink = layout.MM/2, layout.MM/3
		} else if r.IntN(2) == 0 {
			it.Hyphen = layout.MM
		}
		switch r.IntN(12) {
		case 0, 1:
			it.Break = Forbidden
		case 2:
			it.Break = Forced
		case 3:
			it.Penalty = r.IntN(12_000)
		case 4:
			it.Penalty = r.IntN(300)
		}
	}
	return items
}

func randomOptions(r *rand.Rand) Options {
	o := Options{Rest: layout.Length(10+r.IntN(60)) * layout.MM, Justify: r.IntN(3) == 0}
	if r.IntN(2) == 0 {
		o.First = layout.Length(5+r.IntN(70)) * layout.MM
	}
	if r.IntN(2) == 0 {
		o.ShortLast = layout.Length(r.IntN(20)) * layout.MM
	}
	if r.IntN(2) == 0 {
		o.LastRoom = layout.Length(r.IntN(40)) * layout.MM
	}
	return o
}

// TestBestOfAll holds Break against every possible breaking of short
// paragraphs, and against Greedy.
func TestBestOfAll(t *testing.T) {
	r := rand.New(rand.NewPCG(1981, 11))
	better, faults := 0, 0
	for i := range 10_000 {
		items := randomItems(r, 1+r.IntN(10))
		o := randomOptions(r)
		got := Break(items, o)
		c, ok := price(items, got.Breaks, o)
		if !ok {
			t.Fatalf("paragraph %d: %v is no breaking of %+v in %+v", i, got.Breaks, items, o)
		}
		want := best(items, o)
		if c.less(want) || want.less(c) {
			t.Fatalf("paragraph %d: %v costs %v, the best %v, of %+v in %+v", i, got.Breaks, c, want, items, o)
		}
		if c.demerits.Int64() != got.Demerits || (c.overfull > 0) != got.Overfull {
			t.Fatalf("paragraph %d: says %d demerits, overfull %v; has %v", i, got.Demerits, got.Overfull, c)
		}
		greedy := Greedy(items, o)
		g, ok := price(items, greedy.Breaks, o)
		if !ok || g.demerits.Int64() != greedy.Demerits {
			t.Fatalf("paragraph %d: greedy %v says %d demerits, has %v", i, greedy.Breaks, greedy.Demerits, g)
		}
		if g.lines != c.lines || g.overfull != c.overfull || got.Demerits > greedy.Demerits {
			t.Fatalf("paragraph %d: greedy %v is better than %v for %+v in %+v", i, g, c, items, o)
		}
		if got.Demerits < greedy.Demerits {
			better++
		}
		if greedy.Short && !got.Short {
			faults++
		}
	}
	t.Logf("better than greedy in %d of 10,000; %d short last lines avoided", better, faults)
	if better < 500 || faults < 50 {
		t.Error("total fit is hardly ever better than greedy: the test or the fit is broken")
	}
}

// mm makes items of whole millimetres with spaces of one between them.
func mm(widths ...int) []Item {
	items := make([]Item, len(widths))
	for i, w := range widths {
		items[i] = Item{Width: layout.Length(w) * layout.MM, Space: layout.MM, Stretch: layout.MM / 2, Shrink: layout.MM / 3}
	}
	return items
}

func TestBreak(t *testing.T) {
	forbid := func(items []Item, at ...int) []Item {
		for _, i := range at {
			items[i].Break = Forbidden
		}
		return items
	}
	penal := mm(10, 10, 10, 10, 10, 10, 10)
	penal[2].Penalty = 1000
	hyphen := mm(10, 10, 9, 10)
	hyphen[2] = Item{Width: 9 * layout.MM, Hyphen: 2 * layout.MM}
	forced := mm(10, 10, 10)
	forced[0].Break = Forced
	for _, c := range []struct {
		name           string
		items          []Item
		o              Options
		want           []int
		over, sh, room bool
	}{
		{name: "nothing"},
		{name: "one line", items: mm(10, 10), o: Options{Rest: 30 * layout.MM}, want: []int{1}},
		{name: "exactly full", items: mm(10, 10), o: Options{Rest: 21 * layout.MM}, want: []int{1}},
		{name: "a unit too long", items: mm(10, 10), o: Options{Rest: 21*layout.MM - 1}, want: []int{0, 1}},
		{name: "even rag", items: mm(10, 10, 10, 10, 26, 20), o: Options{Rest: 43 * layout.MM}, want: []int{2, 4, 5}},
		{name: "no short last word", items: mm(10, 10, 10, 4), o: Options{Rest: 32 * layout.MM, ShortLast: 8 * layout.MM}, want: []int{1, 3}},
		{name: "short last word that cannot be helped", items: forbid(mm(10, 10, 10, 4), 0, 1), o: Options{Rest: 32 * layout.MM, ShortLast: 8 * layout.MM}, want: []int{2, 3}, sh: true},
		{name: "one short line is no leftover", items: mm(4), o: Options{Rest: 32 * layout.MM, ShortLast: 8 * layout.MM}, want: []int{0}},
		{name: "room on the last line", items: mm(10, 10, 10, 4), o: Options{Rest: 32 * layout.MM, LastRoom: 20 * layout.MM}, want: []int{2, 3}},
		{name: "no room on the last line", items: mm(10, 10), o: Options{Rest: 32 * layout.MM, LastRoom: 20 * layout.MM}, want: []int{1}, room: true},
		{name: "first line shorter", items: mm(10, 10, 10), o: Options{First: 15 * layout.MM, Rest: 32 * layout.MM}, want: []int{0, 2}},
		{name: "hanging indent", items: mm(10, 10, 10, 10), o: Options{First: 32 * layout.MM, Rest: 12 * layout.MM}, want: []int{2, 3}},
		{name: "kept together", items: forbid(mm(10, 10, 10, 10), 1), o: Options{Rest: 22 * layout.MM}, want: []int{0, 2, 3}},
		{name: "penalty", items: penal, o: Options{Rest: 33 * layout.MM}, want: []int{1, 4, 6}},
		{name: "hyphen has no room", items: hyphen, o: Options{Rest: 31 * layout.MM}, want: []int{1, 3}},
		{name: "hyphen not at the end", items: hyphen[:3], o: Options{Rest: 31 * layout.MM}, want: []int{2}},
		{name: "forced", items: forced, o: Options{Rest: 50 * layout.MM}, want: []int{0, 2}},
		{name: "too wide", items: mm(10, 60, 10), o: Options{Rest: 50 * layout.MM}, want: []int{0, 1, 2}, over: true},
		{name: "too wide together", items: forbid(mm(10, 30, 30, 10), 1), o: Options{Rest: 50 * layout.MM}, want: []int{0, 2, 3}, over: true},
		{name: "shrunk", items: mm(10, 10, 10, 30), o: Options{Rest: 32*layout.MM - layout.MM/2, Justify: true}, want: []int{2, 3}},
		{name: "no measure", items: mm(10, 10), o: Options{}, want: []int{0, 1}, over: true},
	} {
		got := Break(c.items, c.o)
		if !slices.Equal(got.Breaks, c.want) || got.Overfull != c.over || got.Short != c.sh || got.Crowded != c.room {
			t.Errorf("%s: got %+v, want %v (overfull %v, short %v, crowded %v)", c.name, got, c.want, c.over, c.sh, c.room)
		}
	}
}

// TestBuffer checks that the caller's buffer is used and changes nothing.
func TestBuffer(t *testing.T) {
	items := mm(10, 10, 10, 10, 10)
	buf := make([]int, 0, 8)
	o := Options{Rest: 22 * layout.MM}
	want := Break(items, o)
	o.Buf = buf
	got := Break(items, o)
	if !slices.Equal(got.Breaks, want.Breaks) || &got.Breaks[0] != &buf[:1][0] {
		t.Errorf("got %v, want %v in the buffer", got.Breaks, want.Breaks)
	}
}

// TestLong breaks more items than fit the nodes on the stack.
func TestLong(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for _, n := range []int{126, 127, 128, 129, 500} {
		items := mm(make([]int, n)...)
		for i := range items {
			items[i].Width = layout.Length(1+r.IntN(20)) * layout.MM
		}
		o := Options{Rest: 90 * layout.MM}
		a, b := Break(items, o), Greedy(items, o)
		c, ok := price(items, a.Breaks, o)
		if !ok || c.demerits.Int64() != a.Demerits || a.Demerits > b.Demerits || len(a.Breaks) != len(b.Breaks) {
			t.Errorf("%d items: %v, greedy %v", n, a, b)
		}
	}
}

func FuzzBreak(f *testing.F) {
	f.Add([]byte{10, 0, 20, 0, 3, 1, 200, 2}, int64(40), int64(0), int64(8), int64(0), false)
	f.Fuzz(func(t *testing.T, data []byte, rest, first, short, room int64, justify bool) {
		const limit = int64(1e9)
		length := func(n int64) layout.Length { return layout.Length(n % limit) }
		o := Options{First: length(first), Rest: length(rest), ShortLast: length(short), LastRoom: length(room), Justify: justify}
		var items []Item
		for i := 0; i+1 < len(data) && i < 600; i += 2 {
			b := data[i+1]
			it := Item{Width: layout.Length(data[i]) * 3000, Break: Kind(b % 3), Penalty: int(b) * 60}
			if b&8 != 0 {
				it.Space, it.Stretch, it.Shrink = 3000, 1500, 1000
			}
			if b&16 != 0 {
				it.Hyphen = 2000
			}
			items = append(items, it)
		}
		got, greedy := Break(items, o), Greedy(items, o)
		if len(items) == 0 {
			if len(got.Breaks)+len(greedy.Breaks) != 0 {
				t.Fatal("lines without items")
			}
			return
		}
		if got.Demerits > greedy.Demerits && got.Overfull == greedy.Overfull && len(got.Breaks) == len(greedy.Breaks) {
			t.Fatalf("greedy is better: %d, %d", greedy.Demerits, got.Demerits)
		}
		for _, breaks := range [][]int{got.Breaks, greedy.Breaks} {
			if !slices.IsSorted(breaks) || breaks[len(breaks)-1] != len(items)-1 {
				t.Fatalf("%v does not cover %d items", breaks, len(items))
			}
			for _, b := range breaks[:len(breaks)-1] {
				if items[b].Break == Forbidden {
					t.Fatalf("line ends after item %d, which is forbidden", b)
				}
			}
		}
	})
}

// BenchmarkBreak breaks ten paragraphs of a label, sixty items in all.
func BenchmarkBreak(b *testing.B) {
	r := rand.New(rand.NewPCG(3, 3))
	var paras [][]Item
	for _, n := range []int{2, 4, 3, 5, 22, 7, 14, 1, 1, 1} {
		items := mm(make([]int, n)...)
		for i := range items {
			items[i].Width = layout.Length(2+r.IntN(14)) * layout.MM
		}
		paras = append(paras, items)
	}
	o := Options{Rest: 95 * layout.MM, ShortLast: 12 * layout.MM, Buf: make([]int, 0, 16)}
	if res := Break(paras[4], o); len(res.Breaks) != len(Greedy(paras[4], o).Breaks) || res.Overfull {
		b.Fatal("not broken as it should be")
	}
	b.ReportAllocs()
	for b.Loop() {
		for _, p := range paras {
			Break(p, o)
		}
	}
}
