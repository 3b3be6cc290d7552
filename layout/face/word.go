package face

import (
	"strings"
	"sync/atomic"

	"cornerslip/fonts"
	"cornerslip/layout"

	"github.com/go-text/typesetting/harfbuzz"
)

// A Word is text shaped in one style. It does not change and may be used from
// many goroutines.
type Word struct {
	style  layout.Style
	pieces []piece
	last   atomic.Pointer[placed]
}

// A piece is a stretch of a word in one face. Measures are in font units.
type piece struct {
	face    *fonts.Face
	em      int64
	text    string // what is drawn
	actual  string // what was meant, where that differs
	glyphs  []glyph
	width   int32
	letters int32 // clusters
	ink     ink
}

type glyph struct {
	bytes   int32 // of text
	x       int32 // where it is drawn
	rise    int32
	letters int32 // clusters that end before it
}

// scale brings font units to a size: u·size/em, rounded half away from zero.
func scale(u int32, size layout.Length, em int64) layout.Length {
	if size < -1<<30 || size > 1<<30 {
		return size.MulDiv(int64(u), em)
	}
	n := 2 * int64(u) * int64(size) // below 2^62
	if n < 0 {
		return -layout.Length((em - n) / (2 * em))
	}
	return layout.Length((n + em) / (2 * em))
}

// Width returns how far the pen moves: the sum of the advances that Texts
// gives. Tracking is added after every letter, the last one included.
func (w *Word) Width(size, tracking layout.Length) layout.Length {
	var sum layout.Length
	for i := range w.pieces {
		p := &w.pieces[i]
		sum += scale(p.width, size, p.em) + layout.Length(p.letters)*tracking
	}
	return sum
}

// Texts appends the word's marks to dst, one for each face, and returns where
// the pen stands then. at is where the baseline starts. The marks' Clusters
// are shared with other calls and must not be changed in place.
func (w *Word) Texts(dst []layout.Text, at layout.Point, size, tracking layout.Length, grey layout.Grey) ([]layout.Text, layout.Point) {
	set := w.last.Load()
	if set == nil || set.size != size || set.tracking != tracking {
		set = w.place(size, tracking)
		w.last.Store(set)
	}
	for i := range w.pieces {
		p := &w.pieces[i]
		dst = append(dst, layout.Text{
			At: at, Face: p.face.Name, Style: w.style, Size: size, Grey: grey,
			S: p.text, Clusters: set.clusters[i], Actual: p.actual,
		})
		at.X += set.widths[i]
	}
	return dst, at
}

// A placed is a word at a size. Words of one label come in one size mostly, so
// the last one is kept.
type placed struct {
	size, tracking layout.Length
	clusters       [][]layout.Cluster // of each piece
	widths         []layout.Length
}

func (w *Word) place(size, tracking layout.Length) *placed {
	set := &placed{size: size, tracking: tracking}
	for i := range w.pieces {
		p := &w.pieces[i]
		clusters := make([]layout.Cluster, len(p.glyphs))
		last := layout.Length(0)
		for j := range p.glyphs {
			g := &p.glyphs[j]
			x := scale(g.x, size, p.em) + layout.Length(g.letters)*tracking
			if j > 0 {
				clusters[j-1].Adv = x - last
			}
			last = x
			clusters[j].Bytes = int(g.bytes)
			clusters[j].Rise = scale(g.rise, size, p.em)
		}
		end := scale(p.width, size, p.em) + layout.Length(p.letters)*tracking
		clusters[len(clusters)-1].Adv = end - last
		set.clusters = append(set.clusters, clusters)
		set.widths = append(set.widths, end)
	}
	return set
}

// Text returns what copying the word gives: its text in NFC without what draws
// nothing.
func (w *Word) Text() string {
	if len(w.pieces) == 1 {
		return w.pieces[0].meant()
	}
	var b strings.Builder
	for i := range w.pieces {
		b.WriteString(w.pieces[i].meant())
	}
	return b.String()
}

func (p *piece) meant() string {
	if p.actual != "" {
		return p.actual
	}
	return p.text
}

// Letters returns how many letters, with their accents, the word has: how
// often tracking is added.
func (w *Word) Letters() int {
	n := 0
	for i := range w.pieces {
		n += int(w.pieces[i].letters)
	}
	return n
}

// Ink returns how far the word's ink reaches beyond where the pen starts (to
// the left), beyond where it ends (to the right), above the baseline and below
// it, rounded up; none is negative. Tracking that is not negative moves no ink
// further out.
func (w *Word) Ink(size layout.Length) (left, right, above, below layout.Length) {
	total, start := w.Width(size, 0), layout.Length(0)
	for i := range w.pieces {
		p := &w.pieces[i]
		width := scale(p.width, size, p.em)
		if p.ink.any {
			left = max(left, -start-outward(p.ink.left, size, p.em, -1))
			right = max(right, start+outward(p.ink.right, size, p.em, 1)-total)
			above = max(above, outward(p.ink.top, size, p.em, 1))
			below = max(below, -outward(p.ink.bottom, size, p.em, -1))
		}
		start += width
	}
	return left, right, above, below
}

// outward scales and rounds up (to = 1) or down (-1) by up to a unit more than
// need be, so that the rounded positions of marks are covered too.
func outward(u int32, size layout.Length, em int64, to layout.Length) layout.Length {
	return scale(u, size, em) + to
}

// ink is the smallest rectangle round all glyphs.
type ink struct {
	any                      bool
	left, right, top, bottom int32
}

func (k *ink) add(hf *harfbuzz.Font, g harfbuzz.GID, x, rise int32) {
	e, ok := hf.GlyphExtents(g)
	if !ok || e.Width == 0 && e.Height == 0 {
		return
	}
	l, r := x+e.XBearing, x+e.XBearing+e.Width
	t, b := rise+e.YBearing, rise+e.YBearing+e.Height
	if !k.any {
		*k = ink{true, l, r, t, b}
		return
	}
	k.left, k.right = min(k.left, l), max(k.right, r)
	k.top, k.bottom = max(k.top, t), min(k.bottom, b)
}
