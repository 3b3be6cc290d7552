package face

import (
	"unicode"

	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
	"golang.org/x/text/unicode/norm"
)

// Fonts say where an accent sits on the letters their makers thought of: on x,
// perhaps not on ŋ or on a Cyrillic е. HarfBuzz leaves such an accent where the
// pen is, beside its letter. Here it is put where the same face puts it on o or
// O, and if it has no place there either, in the middle, a little off.

// A shaped is one glyph of a run as it will be drawn.
type shaped struct {
	glyph   harfbuzz.GID
	r       rune // the code point that names it
	cluster int  // index of the cluster's first rune
	x, rise int32
	adv     int32
	free    bool // a mark that the font gave no place
}

// A box is the ink of a glyph where it is drawn.
type box struct{ left, right, top, bottom int32 }

func boxOf(hf *harfbuzz.Font, g *shaped) (box, bool) {
	e, ok := hf.GlyphExtents(g.glyph)
	return box{g.x + e.XBearing, g.x + e.XBearing + e.Width, g.rise + e.YBearing, g.rise + e.YBearing + e.Height},
		ok && e.Width != 0 && e.Height != 0
}

// class is a code point's canonical combining class (UAX #44).
func class(r rune) uint8 { return norm.NFC.PropertiesString(string(r)).CCC() }

const (
	overlay             = 1
	attachedBelow       = 202
	attachedRight       = 216
	belowLeft           = 218
	below               = 220
	belowRight          = 222
	aboveLeft           = 228
	above               = 230
	aboveRight          = 232
	doubleBelow         = 233
	doubleAbove         = 234
	iotaSubscript       = 240
	shareOfEm           = 16 // the gap, if the font says nothing: an em divided by this
	referenceSmall      = 'o'
	referenceLarge      = 'O'
	dotlessI            = 'ı'
	dotlessJ            = 'ȷ'
	cyrillicI      rune = 'і'
)

// under reports classes that hang below their letter.
func under(c uint8) bool {
	switch c {
	case attachedBelow, belowLeft, below, belowRight, doubleBelow, iotaSubscript:
		return true
	}
	return false
}

// hold returns the point of a letter's ink that marks of a class hold on to.
func hold(b box, end int32, c uint8) (x, y int32) {
	switch c {
	case attachedRight, belowRight, aboveRight:
		x = b.right
	case belowLeft, aboveLeft:
		x = b.left
	case doubleBelow, doubleAbove:
		x = end
	default:
		x = (b.left + b.right) / 2
	}
	switch {
	case c == overlay:
		y = (b.top + b.bottom) / 2
	case under(c):
		y = b.bottom
	default:
		y = b.top
	}
	return x, y
}

// placeMarks gives the marks of a run that the font left free their places.
func (sh *shaper) placeMarks(hf *harfbuzz.Font, run []shaped, em int32, xHeight int32) {
	for i := range run {
		if !run[i].free {
			continue
		}
		first := i
		for first > 0 && run[first-1].cluster == run[i].cluster {
			first--
		}
		sh.placeMark(hf, run[first:i], &run[i], em, xHeight)
	}
}

// placeMark puts m on before, the letter and the marks it already has.
func (sh *shaper) placeMark(hf *harfbuzz.Font, before []shaped, m *shaped, em, xHeight int32) {
	c := class(m.r)
	letter := before[0]
	end := letter.x + letter.adv
	b, ink := boxOf(hf, &letter)
	if !ink { // a mark shown alone, on a space
		b = box{letter.x, end, xHeight, 0}
	}
	x, y := hold(b, end, c)
	stacked := false
	for i := 1; i < len(before); i++ {
		o := class(before[i].r)
		ob, ok := boxOf(hf, &before[i])
		if !ok || under(o) != under(c) || c == overlay || o == overlay || o == attachedRight || o == attachedBelow || c == attachedRight {
			continue
		}
		if under(c) && ob.bottom < y {
			x, y, stacked = (ob.left+ob.right)/2, ob.bottom, true
		}
		if !under(c) && ob.top > y {
			x, y, stacked = (ob.left+ob.right)/2, ob.top, true
		}
	}
	if !stacked {
		if d, ok := sh.reference(hf, m.r, c, b.top-b.bottom > xHeight*5/4 && b.top > xHeight*5/4); ok {
			m.x, m.rise = x+d.x, y+d.y
			return
		}
	}
	mb, ok := boxOf(hf, &shaped{glyph: m.glyph})
	if !ok {
		return
	}
	m.x = x - (mb.left+mb.right)/2
	gap := em / shareOfEm
	switch {
	case c == overlay:
		m.rise = y - (mb.top+mb.bottom)/2
	case c == attachedBelow:
		m.rise = y - mb.top
	case c == attachedRight:
		m.x, m.rise = x-mb.left, y-mb.top
	case under(c):
		m.rise = y - gap - mb.top
	default:
		m.rise = y + gap - mb.bottom
	}
}

type offset struct{ x, y int32 }

type refKey struct {
	font  *harfbuzz.Font
	mark  rune
	large bool
}

// A ref is where a face puts a mark on o or O, from the point that it holds on
// to; ok is false if it has no place for it there either.
type ref struct {
	offset
	ok bool
}

func (sh *shaper) reference(hf *harfbuzz.Font, mark rune, c uint8, large bool) (offset, bool) {
	k := refKey{hf, mark, large}
	r, known := sh.refs[k]
	if !known {
		r = sh.findReference(hf, mark, c, large)
		sh.refs[k] = r
	}
	return r.offset, r.ok
}

func (sh *shaper) findReference(hf *harfbuzz.Font, mark rune, c uint8, large bool) ref {
	base := rune(referenceSmall)
	if large {
		base = referenceLarge
	}
	b := sh.buf
	b.Clear()
	b.AddRunes([]rune{base, 0x034f, mark}, 0, 3) // the joiner keeps the letter from being put together with its mark
	b.Flags = harfbuzz.RemoveDefaultIgnorables
	b.Props = harfbuzz.SegmentProperties{Direction: harfbuzz.LeftToRight, Script: language.Latin, Language: "en"}
	b.Shape(hf, noSubstitutes)
	if len(b.Info) != 2 {
		return ref{}
	}
	p := b.Pos
	if p[1].XOffset == 0 && p[1].YOffset == 0 {
		return ref{}
	}
	letter := shaped{glyph: b.Info[0].Glyph, x: p[0].XOffset, rise: p[0].YOffset, adv: p[0].XAdvance}
	lb, ok := boxOf(hf, &letter)
	if !ok {
		return ref{}
	}
	x, y := hold(lb, letter.adv, c)
	return ref{offset{p[0].XAdvance + p[1].XOffset - x, p[1].YOffset - y}, true}
}

// dotless replaces the i and j that lose their dot under an accent (Unicode's
// Soft_Dotted property), where the face has them without it.
func (sh *shaper) dotless(has func(rune) bool) {
	for i, r := range sh.drawn {
		var bare rune
		switch r {
		case 'i', cyrillicI:
			bare = dotlessI
		case 'j', 'ј':
			bare = dotlessJ
		default:
			continue
		}
		for _, m := range sh.drawn[i+1:] {
			if !unicode.In(m, unicode.Mn, unicode.Me) {
				break
			}
			if class(m) == above {
				if has(bare) {
					sh.drawn[i] = bare
				}
				break
			}
		}
	}
}
