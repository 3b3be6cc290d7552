package layout

import (
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"iter"
	"slices"
	"strings"
	"unicode/utf8"
)

// The form of an encoded Box.
//
// Registers keep encoded boxes for as long as the labels last, so every form
// that was ever written must be read for ever. A new mark or field takes a new
// version and leaves the old one readable.
//
//	byte    0xCB, never the first byte of text
//	byte    version
//	...     body, after the version
//	4 bytes CRC-32C of all before it, least significant byte first; at the end
//	        in every version, so that damage and "newer" can be told apart
//
// Body of version 1. Numbers are varints as in encoding/binary, signed ones
// zigzag; a string is its length and its bytes; a name is 0 and a string the
// first time, and from then on 1 plus its place among the names so far.
//
//	size of the box, the Ref, the number of marks, and for each mark a byte:
//	its kind in the low three bits and flags above them.
//
// A text says how it looks (face, style, size, grey) the first time and by
// number after that. Its place is left out where it follows the text before
// without a gap. Advances are guessed from those before: the same letter before
// the same letter in the same look is nearly always as wide as last time. A bit
// for each cluster says whether the guess was right, and where it was not, the
// difference follows, in 1/2048 of the size and what is left over, because that
// is the unit of most fonts.
const (
	boxMagic   = 0xCB
	boxVersion = 1

	kindText   = 0
	kindFill   = 1
	kindStroke = 2
	kindBars   = 3
	kindMask   = 7

	textAtPen  = 1 << 3 // starts where the text before ended
	textSimple = 1 << 4 // a cluster for each rune, none raised
	textActual = 1 << 5 // Actual follows S
	textLook   = 1 << 6 // looks like the text before
	barsBits   = 1 << 3 // Modules are bits, not a string
)

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// Encode returns b in a compact form of its own, to be kept and read back by
// Decode, by later versions of the program too. Equal boxes give equal bytes.
//
// It panics if b holds a mark that is not a Text, Fill, Stroke or Bars value:
// a box that passed Check never does.
func Encode(b *Box) []byte {
	e := encoder{
		b:     make([]byte, 0, 1024),
		names: map[string]uint64{},
		looks: map[look]uint64{},
	}
	e.b = append(e.b, boxMagic, boxVersion)
	e.int(int64(b.Size.W))
	e.int(int64(b.Size.H))
	e.ref(b.Ref)
	e.uint(uint64(len(b.Marks)))
	for _, m := range b.Marks {
		switch m := m.(type) {
		case Text:
			e.text(m)
		case Fill:
			e.byte(kindFill)
			e.rect(m.Rect)
			e.byte(byte(m.Grey))
		case Stroke:
			e.stroke(m)
		case Bars:
			e.bars(m)
		default:
			panic(fmt.Sprintf("layout: Encode: a mark of the unknown type %T", m))
		}
	}
	return binary.LittleEndian.AppendUint32(e.b, crc32.Checksum(e.b, castagnoli))
}

// A look is what neighbouring texts share.
type look struct {
	face  string
	style Style
	size  Length
	grey  Grey
}

type encoder struct {
	b     []byte
	names map[string]uint64
	looks map[look]uint64
	state textState
}

// A textState is what encoder and decoder both know of the texts so far.
type textState struct {
	last  uint64 // number of the last look
	line  Point  // where the last line began
	pen   Point  // where the last text ended
	faces []string
	// pairs hold the last advance of each rune before each other one in a
	// look, runes that of each rune in a look, sizes that of each rune of a
	// face in any size. Keys are packed, because most of the time goes here.
	pairs, runes map[uint64]Length
	sizes        map[uint64]sizedAdv
}

type sizedAdv struct{ adv, size Length }

// An advKey is a rune in a look, and the one that follows, because of kerning;
// next is 0 at the end of a text.
type advKey struct {
	look, face uint64
	this, next rune
}

func (k advKey) pair() uint64 { return k.look<<42 ^ uint64(k.this)<<21 ^ uint64(k.next) }
func (k advKey) rune() uint64 { return k.look<<21 ^ uint64(k.this) }
func (k advKey) size() uint64 { return k.face<<21 ^ uint64(k.this) }

// face returns a number for a face.
func (s *textState) face(name string) uint64 {
	i := slices.Index(s.faces, name)
	if i < 0 {
		i = len(s.faces)
		s.faces = append(s.faces, name)
	}
	return uint64(i)
}

// guess returns the advance to expect: the last one of the same pair, else of
// the same rune, else of the same rune in another size of the face, else 0.
func (s *textState) guess(k advKey, size Length) Length {
	if l, ok := s.pairs[k.pair()]; ok {
		return l
	}
	if l, ok := s.runes[k.rune()]; ok {
		return l
	}
	// Damaged boxes may hold any number.
	if o, ok := s.sizes[k.size()]; ok && small(o.adv) && small(o.size) && small(size) && o.size > 0 {
		return o.adv.MulDiv(int64(size), int64(o.size))
	}
	return 0
}

func (s *textState) learn(k advKey, size, l Length) {
	if s.pairs == nil {
		s.pairs = make(map[uint64]Length, 300)
		s.runes = make(map[uint64]Length, 150)
		s.sizes = make(map[uint64]sizedAdv, 100)
	}
	s.pairs[k.pair()] = l
	if s.runes[k.rune()] != l { // most often it is
		s.runes[k.rune()] = l
	}
	if o := (sizedAdv{l, size}); s.sizes[k.size()] != o {
		s.sizes[k.size()] = o
	}
}

// small lengths can be multiplied without overflow.
func small(l Length) bool { return l > -1<<30 && l < 1<<30 }

// em is how many units of a font go into its size, in most fonts.
const em = 2048

// units splits a difference of advances into units of a font and what is left
// over, which is at most 1 either way by rounding.
func units(diff, size Length) (u, rest int64, ok bool) {
	if !small(diff) || !small(size) || size <= 0 {
		return 0, 0, false
	}
	u = int64(diff.MulDiv(em, int64(size)))
	rest = int64(diff - size.MulDiv(u, em))
	return u, rest, rest >= -1 && rest <= 1
}

func (e *encoder) byte(c byte)   { e.b = append(e.b, c) }
func (e *encoder) uint(n uint64) { e.b = binary.AppendUvarint(e.b, n) }
func (e *encoder) int(n int64)   { e.b = binary.AppendVarint(e.b, n) }

func (e *encoder) string(s string) {
	e.uint(uint64(len(s)))
	e.b = append(e.b, s...)
}

func (e *encoder) name(s string) {
	if n, ok := e.names[s]; ok {
		e.uint(n)
		return
	}
	e.names[s] = uint64(len(e.names) + 1)
	e.byte(0)
	e.string(s)
}

func (e *encoder) rect(r Rect) {
	for _, l := range [...]Length{r.At.X, r.At.Y, r.W, r.H} {
		e.int(int64(l))
	}
}

func (e *encoder) ref(r Ref) {
	e.name(r.File)
	e.int(int64(r.Line))
	e.int(int64(r.Row))
	e.name(r.Kind)
	e.name(r.Key)
	e.int(int64(r.Label))
	e.int(int64(r.Of))
	e.name(r.Part)
	e.name(r.For)
}

func (e *encoder) text(t Text) {
	flags := byte(kindText)
	simple := isSimple(t)
	if simple {
		flags |= textSimple
	}
	if t.Actual != "" {
		flags |= textActual
	}
	lk := look{t.Face, t.Style, t.Size, t.Grey}
	n, known := e.looks[lk]
	if known && n == e.state.last {
		flags |= textLook
	}
	s := &e.state
	if t.At == s.pen {
		flags |= textAtPen
	}
	e.byte(flags)
	if flags&textLook == 0 {
		e.uint(n) // 0 where it is new
		if !known {
			n = uint64(len(e.looks) + 1)
			e.looks[lk] = n
			e.name(t.Face)
			e.byte(byte(t.Style))
			e.int(int64(t.Size))
			e.byte(byte(t.Grey))
		}
		s.last = n
	}
	if flags&textAtPen == 0 {
		e.int(int64(t.At.X - s.line.X))
		e.int(int64(t.At.Y - s.line.Y))
		s.line = t.At
	}
	e.string(t.S)
	if t.Actual != "" {
		e.string(t.Actual)
	}
	if simple {
		e.advances(t)
	} else {
		e.clusters(t)
	}
	s.pen = Point{t.At.X + t.Width(), t.At.Y}
}

// isSimple reports whether t has a cluster for each rune and none is raised.
func isSimple(t Text) bool {
	at := 0
	for _, c := range t.Clusters {
		if at >= len(t.S) || c.Rise != 0 {
			return false
		}
		if _, n := utf8.DecodeRuneInString(t.S[at:]); n != c.Bytes {
			return false
		}
		at += c.Bytes
	}
	return at == len(t.S)
}

// advances writes the advances of a simple text: a bit for each, 1 where it is
// not as guessed, and then the differences. A difference is 0 and itself, or 1
// and more: the units, zigzag, times three, and what is left over plus one.
func (e *encoder) advances(t Text) {
	wrong := len(e.b)
	e.b = append(e.b, make([]byte, (len(t.Clusters)+7)/8)...)
	k := advKey{look: e.state.last, face: e.state.face(t.Face)}
	for i, r := range keys(t.S) {
		k.this, k.next = r[0], r[1]
		adv := t.Clusters[i].Adv
		if diff := adv - e.state.guess(k, t.Size); diff != 0 {
			e.b[wrong+i/8] |= 0x80 >> (i % 8)
			if u, rest, ok := units(diff, t.Size); ok {
				e.uint(1 + 3*uint64(u<<1^u>>63) + uint64(rest+1))
			} else {
				e.byte(0)
				e.int(int64(diff))
			}
		}
		e.state.learn(k, t.Size, adv)
	}
}

// keys yields the runes of s by their number, each with the one that follows.
func keys(s string) iter.Seq2[int, [2]rune] {
	return func(yield func(int, [2]rune) bool) {
		n, this := 0, rune(-1)
		for _, r := range s {
			if this >= 0 {
				if !yield(n, [2]rune{this, r}) {
					return
				}
				n++
			}
			this = r
		}
		if this >= 0 {
			yield(n, [2]rune{this, 0})
		}
	}
}

func (e *encoder) clusters(t Text) {
	e.uint(uint64(len(t.Clusters)))
	for _, c := range t.Clusters {
		e.int(int64(c.Bytes))
		e.int(int64(c.Adv))
		e.int(int64(c.Rise))
	}
}

func (e *encoder) stroke(s Stroke) {
	e.byte(kindStroke)
	for _, l := range [...]Length{s.From.X, s.From.Y, s.To.X - s.From.X, s.To.Y - s.From.Y, s.Width} {
		e.int(int64(l))
	}
	e.byte(byte(s.Grey))
	e.uint(uint64(len(s.Dash)))
	for _, l := range s.Dash {
		e.int(int64(l))
	}
}

func (e *encoder) bars(b Bars) {
	flags := byte(kindBars)
	bits := strings.Trim(b.Modules, "01") == ""
	if bits {
		flags |= barsBits
	}
	e.byte(flags)
	e.rect(b.Rect)
	e.name(b.Symbology)
	e.string(b.S)
	for _, l := range [...]Length{b.Module, b.Dot, b.Quiet} {
		e.int(int64(l))
	}
	e.int(int64(b.Rows))
	if bits {
		e.uint(uint64(len(b.Modules)))
		e.b = append(e.b, packBits(b.Modules)...)
	} else {
		e.string(b.Modules)
	}
	// Bars come in few widths and gaps, and mostly in one height.
	n := len(b.Rects)
	e.uint(uint64(n))
	var gaps, widths, ys, hs []Length
	for i, r := range b.Rects {
		var before Rect
		if i > 0 {
			before = b.Rects[i-1]
		}
		gaps = append(gaps, r.At.X-before.Right())
		widths = append(widths, r.W)
		ys = append(ys, r.At.Y-before.At.Y)
		hs = append(hs, r.H)
	}
	e.few(gaps)
	e.few(widths)
	e.runs(ys)
	e.runs(hs)
}

// few writes lengths of which many are equal: as names are written.
func (e *encoder) few(ls []Length) {
	known := map[Length]uint64{}
	for _, l := range ls {
		n := known[l]
		e.uint(n)
		if n == 0 {
			known[l] = uint64(len(known) + 1)
			e.int(int64(l))
		}
	}
}

// runs writes lengths of which neighbours are equal: how many, and which.
func (e *encoder) runs(ls []Length) {
	for i := 0; i < len(ls); {
		j := i + 1
		for j < len(ls) && ls[j] == ls[i] {
			j++
		}
		e.uint(uint64(j - i))
		e.int(int64(ls[i]))
		i = j
	}
}

func packBits(s string) []byte {
	p := make([]byte, (len(s)+7)/8)
	for i := range len(s) {
		if s[i] == '1' {
			p[i/8] |= 0x80 >> (i % 8)
		}
	}
	return p
}
