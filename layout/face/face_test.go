package face

import (
	"errors"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"cornerslip/fonts"
	"cornerslip/layout"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

var styles = []layout.Style{0, layout.Italic, layout.Bold, layout.Italic | layout.Bold}

// em is a size at which lengths are font units: all our faces have 2048.
const em = layout.Length(2048)

func word(t testing.TB, s *Setter, text string, style layout.Style) *Word {
	t.Helper()
	w, err := s.Word(text, style)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return w
}

func texts(w *Word, size, tracking layout.Length) []layout.Text {
	ts, _ := w.Texts(nil, layout.Point{}, size, tracking, 0)
	return ts
}

// A ruler measures text by the advance and kerning tables of one font, read by
// golang.org/x/image/font/sfnt and not by the shaper.
type ruler struct {
	font *sfnt.Font
	buf  sfnt.Buffer
}

func newRuler(t testing.TB, f *fonts.Face) *ruler {
	t.Helper()
	other, err := sfnt.Parse(f.TTF())
	if err != nil {
		t.Fatal(err)
	}
	return &ruler{font: other}
}

// width returns the sum of advances and of kerning, in font units.
func (r *ruler) width(t testing.TB, text string) (advances, kerning layout.Length) {
	t.Helper()
	units := fixed.Int26_6(r.font.UnitsPerEm())
	var last sfnt.GlyphIndex
	for i, c := range text {
		g, err := r.font.GlyphIndex(&r.buf, c)
		if err != nil || g == 0 {
			t.Fatalf("U+%04X: glyph %d, %v", c, g, err)
		}
		adv, err := r.font.GlyphAdvance(&r.buf, g, units, xfont.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		advances += layout.Length(adv)
		if i > 0 {
			k, err := r.font.Kern(&r.buf, last, g, units, xfont.HintingNone)
			if err != nil && !errors.Is(err, sfnt.ErrNotFound) {
				t.Fatal(err)
			}
			kerning += layout.Length(k)
		}
		last = g
	}
	return advances, kerning
}

// TestKerning holds the widths of all pairs of printable ASCII, and of random
// words, against the fonts' own tables.
func TestKerning(t *testing.T) {
	s := New(fonts.Default())
	r := rand.New(rand.NewPCG(5, 5))
	for _, style := range styles {
		rule := newRuler(t, s.chain(style)[0])
		kerned := 0
		check := func(text string) {
			adv, kern := rule.width(t, text)
			if got := word(t, s, text, style).Width(em, 0); got != adv+kern {
				t.Errorf("style %d: %q is %d wide, want %d%+d", style, text, got, adv, kern)
			}
			if kern != 0 {
				kerned++
			}
		}
		for a := '!'; a <= '~'; a++ {
			for b := '!'; b <= '~'; b++ {
				check(string([]rune{a, b}))
			}
		}
		for range 500 {
			b := make([]byte, 1+r.IntN(12))
			for i := range b {
				b[i] = byte('!' + r.IntN('~'-'!'+1))
			}
			check(string(b))
		}
		if kerned < 100 {
			t.Errorf("style %d: only %d texts are kerned", style, kerned)
		}
		for _, text := range []string{"AVATAR", "To", "Te"} {
			if adv, _ := rule.width(t, text); word(t, s, text, style).Width(em, 0) > adv-em/20 {
				t.Errorf("style %d: %s is hardly kerned", style, text)
			}
		}
	}
}

// TestWidthIsSum checks on random words, sizes and trackings that the width is
// what the marks give, that clusters cover the text, that marks follow each
// other, and that tracking comes after every letter.
func TestWidthIsSum(t *testing.T) {
	s := New(fonts.Default())
	r := rand.New(rand.NewPCG(9, 9))
	pool := []rune("aAeéxVTo.,-()0189 çãêłŠđ°′×–♂☿аЖѣαἄ̄̂̃̊\u0323ქ½\u202f\u2011\u00adij")
	for range 20_000 {
		var b strings.Builder
		for range 1 + r.IntN(10) {
			b.WriteRune(pool[r.IntN(len(pool))])
		}
		text := b.String()
		size := layout.Length(r.IntN(2000)) * layout.CentiPt
		tracking := layout.Length(r.IntN(3)) * layout.CentiPt * 37
		w := word(t, s, text, styles[r.IntN(4)])
		start := layout.Point{X: 5 * layout.MM, Y: 7 * layout.MM}
		ts, end := w.Texts(nil, start, size, tracking, 9)
		at := start
		letters := 0
		for _, m := range ts {
			if m.At != at || m.Grey != 9 || m.Size != size {
				t.Fatalf("%q: a mark at %v, want %v", text, m.At, at)
			}
			n := 0
			for _, c := range m.Clusters {
				if _, size := utf8.DecodeRuneInString(m.S[n:]); c.Bytes != size {
					t.Fatalf("%q: a cluster of %d bytes at %d of %q", text, c.Bytes, n, m.S)
				}
				n += c.Bytes
			}
			if n != len(m.S) || n == 0 {
				t.Fatalf("%q: clusters cover %d of %d bytes", text, n, len(m.S))
			}
			at.X += m.Width()
		}
		if at != end || end.X-start.X != w.Width(size, tracking) {
			t.Fatalf("%q: the pen ends at %v, marks at %v, width %v", text, end, at, w.Width(size, tracking))
		}
		letters = w.Letters()
		if d := w.Width(size, tracking) - w.Width(size, 0); d != layout.Length(letters)*tracking {
			t.Fatalf("%q: tracking adds %v for %d letters", text, d, letters)
		}
		if got, want := norm.NFC.String(w.Text()), norm.NFC.String(strings.ReplaceAll(text, "\u00ad", "")); got != want {
			t.Fatalf("%q: reads %+q, want %+q", text, got, want)
		}
	}
}

// TestTracking checks that an accent stays over its letter when letters are
// spaced.
func TestTracking(t *testing.T) {
	s := New(fonts.Default())
	w := word(t, s, "x\u0302x", 0)
	plain, wide := texts(w, em, 0)[0].Clusters, texts(w, em, 100)[0].Clusters
	if wide[0].Adv != plain[0].Adv || wide[1].Adv != plain[1].Adv+100 || wide[2].Adv != plain[2].Adv+100 {
		t.Errorf("%v, spaced %v", plain, wide)
	}
}

// TestRounding checks that positions do not drift: the hundredth letter stands
// where a hundred advances put it.
func TestRounding(t *testing.T) {
	s := New(fonts.Default())
	const n = 100
	one := word(t, s, "n", 0).Width(em, 0)
	size := layout.Points(9.17)
	long := word(t, s, strings.Repeat("n", n), 0)
	if got, want := long.Width(size, 0), size.MulDiv(int64(one)*n, int64(em)); got != want {
		t.Errorf("%v wide, want %v", got, want)
	}
	for _, u := range []int32{0, 1, -1, 1023, 1024, 1025, -1024, 1 << 30} {
		for _, size := range []layout.Length{0, 1, 2, 1000, 114300, 1 << 31} {
			if got, want := scale(u, size, 2048), size.MulDiv(int64(u), 2048); got != want {
				t.Errorf("%d units at %d: %d, want %d", u, size, got, want)
			}
		}
	}
}

// TestMarksSit checks that accents stand over or under their letter and touch
// neither it nor each other's place, also where the font gives them none.
// What is required is common practice, no source.
func TestMarksSit(t *testing.T) {
	s := New(fonts.Default())
	base := []string{"x", "q", "m", "ɑ", "ɔ", "ŋ", "ə", "ɪ", "R", "ɛ", "а", "е", "ы", "и", "Е", "o", "O", "l", "ŝ"}
	marks := []rune{0x300, 0x301, 0x302, 0x303, 0x304, 0x308, 0x30a, 0x30b, 0x30c, 0x323, 0x325, 0x331, 0x32f}
	for _, style := range styles {
		f := s.chain(style)[0]
		rule := newRuler(t, f)
		box := func(r rune) (b fixed.Rectangle26_6) {
			g, _ := f.Glyph(r)
			b, _, err := rule.font.GlyphBounds(&rule.buf, sfnt.GlyphIndex(g), 2048, xfont.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			return b // y downwards
		}
		for _, b := range base {
			for _, m := range marks {
				w := word(t, s, b+string(m), style)
				tx := texts(w, em, 0)
				if len(tx) != 1 || len([]rune(tx[0].S)) == 1 {
					continue // the face has it put together
				}
				if tx[0].Face != f.Name {
					t.Errorf("%s%c comes from %s", b, m, tx[0].Face)
				}
				rs := []rune(tx[0].S)
				letter, mark := box(rs[0]), box(rs[1])
				x := fixed.Int26_6(tx[0].Clusters[0].Adv)
				rise := fixed.Int26_6(tx[0].Clusters[1].Rise)
				centre := x + (mark.Min.X+mark.Max.X)/2
				slack := (letter.Max.X - letter.Min.X) / 10
				if style&layout.Italic != 0 {
					slack += 200 // what is higher leans over
				}
				if centre < letter.Min.X-slack || centre > letter.Max.X+slack {
					t.Errorf("style %d: %s%c: the accent's middle is at %d, the letter reaches from %d to %d", style, b, m, centre, letter.Min.X, letter.Max.X)
				}
				top, bottom := mark.Min.Y-rise, mark.Max.Y-rise
				if under(class(rs[1])) && top < letter.Max.Y-20 || !under(class(rs[1])) && bottom > letter.Min.Y+20 {
					t.Errorf("style %d: %s%c: the accent reaches from %d to %d, the letter from %d to %d", style, b, m, top, bottom, letter.Min.Y, letter.Max.Y)
				}
			}
		}
	}
}

// TestInk holds the ink against glyph boxes read by another reader.
func TestInk(t *testing.T) {
	s := New(fonts.Default())
	for _, style := range styles {
		f := s.chain(style)[0]
		rule := newRuler(t, f)
		for _, text := range []string{"f", "j", "Agf", "V", "y.", "“x”", "i"} {
			w := word(t, s, text, style)
			tx := texts(w, em, 0)[0]
			var left, right, above, below layout.Length
			x := layout.Length(0)
			for i, r := range []rune(tx.S) {
				g, _ := f.Glyph(r)
				b, _, err := rule.font.GlyphBounds(&rule.buf, sfnt.GlyphIndex(g), 2048, xfont.HintingNone)
				if err != nil {
					t.Fatal(err)
				}
				left = max(left, -x-layout.Length(b.Min.X))
				right = max(right, x+layout.Length(b.Max.X)-w.Width(em, 0))
				above = max(above, -layout.Length(b.Min.Y))
				below = max(below, layout.Length(b.Max.Y))
				x += tx.Clusters[i].Adv
			}
			l, r, a, d := w.Ink(em)
			for i, p := range [][2]layout.Length{{l, left}, {r, right}, {a, above}, {d, below}} {
				if p[0] < p[1] || p[0] > p[1]+1 {
					t.Errorf("style %d %q: side %d of the ink is %d, want %d", style, text, i, p[0], p[1])
				}
			}
		}
	}
	if l, r, a, b := word(t, s, " ", 0).Ink(em); l != 0 || r != 0 || a != 0 || b != 0 {
		t.Error("a space has ink")
	}
}

func TestMetrics(t *testing.T) {
	s := New(fonts.Default())
	if got, want := s.Metrics(layout.Italic, em), (Metrics{1825, 443, 1341, 940}); got != want { // hhea and OS/2 of Liberation Serif Italic
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// TestCache checks that words come out the same whether kept or not, by many
// goroutines at once and after the cache has turned over, and that it stays
// bounded.
func TestCache(t *testing.T) {
	s := New(fonts.Default())
	show := func(w *Word) string {
		var b strings.Builder
		for _, m := range texts(w, layout.Points(9), 0) {
			b.WriteString(m.Face + m.S)
			for _, c := range m.Clusters {
				b.WriteString(c.Adv.String() + c.Rise.String())
			}
		}
		return b.String()
	}
	common := []string{"Quercus", "x\u0302", "☿", "AVATAR", "5\u202fkm", "ŋ\u030a", "植"}
	want := map[string]string{}
	for _, text := range common[:6] {
		w, err := New(fonts.Default()).Word(text, 0)
		if err != nil {
			t.Fatal(err)
		}
		want[text] = show(w)
	}
	var wg sync.WaitGroup
	for g := range 4 {
		wg.Go(func() {
			r := rand.New(rand.NewPCG(uint64(g), 1))
			for range 15_000 {
				text := common[r.IntN(len(common))]
				if w, err := s.Word(text, 0); err == nil && show(w) != want[text] {
					t.Errorf("%q is %s, want %s", text, show(w), want[text])
				} else if (err != nil) != (text == "植") {
					t.Errorf("%q: %v", text, err)
				}
				b := []byte{byte('a' + r.IntN(26)), byte('a' + r.IntN(26)), byte('a' + r.IntN(26)), byte('a' + r.IntN(26))}
				if _, err := s.Word(string(b), 0); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	n := 0
	for i := range s.cache {
		n += len(s.cache[i].young) + len(s.cache[i].old)
	}
	if n > 2*shards*perShard || n < perShard {
		t.Errorf("%d words are kept", n)
	}
}

func FuzzWord(f *testing.F) {
	for _, text := range []string{"AVATAR", "x\u0302", "i\u0307\u0301", "☿a", "5\u202fkm", "\xff", "日", "e\u034f\u0301", "t\u0361s", "\u0301", "\u1100\u1161"} {
		f.Add(text, uint8(0), int64(114300), int64(0))
	}
	set := fonts.Default()
	if s, err := set.With(droid); err == nil {
		set = s
	}
	s := New(set)
	f.Fuzz(func(t *testing.T, text string, style uint8, size, tracking int64) {
		st := layout.Style(style & 3)
		w, err := s.Word(text, st)
		if err != nil {
			var missing *MissingError
			var script *ScriptError
			if !errors.As(err, &missing) && !errors.As(err, &script) {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		sz, tr := layout.Length(size%(1<<40)), layout.Length(tracking%(1<<30))
		ts, end := w.Texts(nil, layout.Point{}, sz, tr, 0)
		var sum layout.Length
		for _, m := range ts {
			n := 0
			for _, c := range m.Clusters {
				n += c.Bytes
			}
			if n != len(m.S) || n == 0 {
				t.Fatalf("%q: clusters cover %d of %d bytes of %q", text, n, len(m.S), m.S)
			}
			f, ok := set.Lookup(m.Face)
			if !ok {
				t.Fatalf("%q: face %s", text, m.Face)
			}
			for _, r := range m.S {
				if _, ok := f.Glyph(r); !ok {
					t.Fatalf("%q: %s has no U+%04X", text, m.Face, r)
				}
			}
			sum += m.Width()
		}
		if end.X != sum || w.Width(sz, tr) != sum {
			t.Fatalf("%q: pen %d, marks %d, width %d", text, end.X, sum, w.Width(sz, tr))
		}
		want, err := prepare(text)
		if err != nil || w.Text() != want {
			t.Fatalf("%q: reads %q, want %q (%v)", text, w.Text(), want, err)
		}
		if again, err := s.shape(text, st); err != nil || again.Width(sz, tr) != sum {
			t.Fatalf("%q: set again it is another width (%v)", text, err)
		}
		w.Ink(sz)
		s.Coverage(text, st)
	})
}
