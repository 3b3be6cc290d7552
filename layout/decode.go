package layout

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"unicode/utf8"
)

// Errors of Decode, to be told apart with errors.Is.
var (
	ErrDamaged = errors.New("the kept label is damaged")
	ErrNewer   = errors.New("the label was kept by a newer version of the program")
)

// Decode returns the box that Encode was given. What is not such a box, or was
// changed since, is an error (ErrDamaged); so is one that only a later version
// of the program can read (ErrNewer).
func Decode(p []byte) (*Box, error) {
	if len(p) < 6 || p[0] != boxMagic {
		return nil, fmt.Errorf("%w: these %d bytes do not begin as one", ErrDamaged, len(p))
	}
	body, sum := p[:len(p)-4], binary.LittleEndian.Uint32(p[len(p)-4:])
	if crc32.Checksum(body, castagnoli) != sum {
		return nil, fmt.Errorf("%w: its check sum does not fit", ErrDamaged)
	}
	if v := body[1]; v != boxVersion {
		if v > boxVersion {
			return nil, fmt.Errorf("%w: form %d, and this one reads up to %d", ErrNewer, v, boxVersion)
		}
		return nil, fmt.Errorf("%w: there is no form %d", ErrDamaged, v)
	}
	d := decoder{b: body[2:]}
	b := d.box()
	if !d.bad && len(d.b) > 0 {
		d.bad = true
	}
	if d.bad {
		return nil, fmt.Errorf("%w: its parts do not fit together", ErrDamaged)
	}
	return b, nil
}

// A decoder takes values off the front of b. After the first that is not
// there, or cannot be, bad is set and all further values are zero, so that
// only loops need to ask.
type decoder struct {
	b     []byte
	bad   bool
	names []string
	looks []look
	state textState
}

func (d *decoder) fail() {
	d.bad, d.b = true, nil
}

func (d *decoder) byte() byte {
	if len(d.b) == 0 {
		d.fail()
		return 0
	}
	c := d.b[0]
	d.b = d.b[1:]
	return c
}

func (d *decoder) uint() uint64 {
	n, w := binary.Uvarint(d.b)
	if w <= 0 {
		d.fail()
		return 0
	}
	d.b = d.b[w:]
	return n
}

func (d *decoder) int() int64 {
	n, w := binary.Varint(d.b)
	if w <= 0 {
		d.fail()
		return 0
	}
	d.b = d.b[w:]
	return n
}

func (d *decoder) length() Length { return Length(d.int()) }

// count returns a number of things that each take at least a byte.
func (d *decoder) count() int {
	n := d.uint()
	if n > uint64(len(d.b)) {
		d.fail()
		return 0
	}
	return int(n)
}

func (d *decoder) string() string {
	n := d.count()
	s := string(d.b[:n])
	d.b = d.b[n:]
	return s
}

func (d *decoder) name() string {
	n := d.uint()
	if n == 0 {
		s := d.string()
		d.names = append(d.names, s)
		return s
	}
	if n > uint64(len(d.names)) {
		d.fail()
		return ""
	}
	return d.names[n-1]
}

func (d *decoder) rect() Rect {
	return Rect{Point{d.length(), d.length()}, Size{d.length(), d.length()}}
}

func (d *decoder) box() *Box {
	b := &Box{Size: Size{d.length(), d.length()}, Ref: d.ref()}
	n := d.count()
	if n > 0 {
		b.Marks = make([]Mark, 0, n)
	}
	for range n {
		if d.bad {
			break
		}
		flags := d.byte()
		switch flags & kindMask {
		case kindText:
			b.Marks = append(b.Marks, d.text(flags))
		case kindFill:
			b.Marks = append(b.Marks, Fill{d.rect(), Grey(d.byte())})
		case kindStroke:
			b.Marks = append(b.Marks, d.stroke())
		case kindBars:
			b.Marks = append(b.Marks, d.bars(flags))
		default:
			d.fail()
		}
	}
	return b
}

func (d *decoder) ref() (r Ref) {
	r.File = d.name()
	r.Line = int(d.int())
	r.Row = int(d.int())
	r.Kind = d.name()
	r.Key = d.name()
	r.Label = int(d.int())
	r.Of = int(d.int())
	r.Part = d.name()
	r.For = d.name()
	return r
}

func (d *decoder) text(flags byte) (t Text) {
	s := &d.state
	if flags&textLook == 0 {
		s.last = d.uint()
		if s.last == 0 {
			d.looks = append(d.looks, look{d.name(), Style(d.byte()), d.length(), Grey(d.byte())})
			s.last = uint64(len(d.looks))
		}
	}
	if s.last == 0 || s.last > uint64(len(d.looks)) {
		d.fail()
		return t
	}
	lk := d.looks[s.last-1]
	t.Face, t.Style, t.Size, t.Grey = lk.face, lk.style, lk.size, lk.grey
	if flags&textAtPen != 0 {
		t.At = s.pen
	} else {
		t.At = s.line.Add(Point{d.length(), d.length()})
		s.line = t.At
	}
	t.S = d.string()
	if flags&textActual != 0 {
		t.Actual = d.string()
	}
	if flags&textSimple != 0 {
		t.Clusters = d.advances(t.S, lk)
	} else {
		t.Clusters = d.clusters()
	}
	s.pen = Point{t.At.X + t.Width(), t.At.Y}
	return t
}

func (d *decoder) advances(s string, lk look) []Cluster {
	n := utf8.RuneCountInString(s)
	if n == 0 {
		return nil
	}
	if (n+7)/8 > len(d.b) {
		d.fail()
		return nil
	}
	wrong := d.b[:(n+7)/8]
	d.b = d.b[len(wrong):]
	cs := make([]Cluster, n)
	k := advKey{look: d.state.last, face: d.state.face(lk.face)}
	at := 0
	for i, r := range keys(s) {
		k.this, k.next = r[0], r[1]
		adv := d.state.guess(k, lk.size)
		if wrong[i/8]&(0x80>>(i%8)) != 0 {
			adv += d.diff(lk.size)
		}
		d.state.learn(k, lk.size, adv)
		_, w := utf8.DecodeRuneInString(s[at:])
		cs[i] = Cluster{Bytes: w, Adv: adv}
		at += w
	}
	return cs
}

// diff returns a difference of advances: see encoder.advances.
func (d *decoder) diff(size Length) Length {
	v := d.uint()
	if v == 0 {
		return d.length()
	}
	v--
	z, rest := v/3, Length(v%3)-1
	u := int64(z>>1) ^ -int64(z&1)
	if !small(Length(u)) || !small(size) || size <= 0 {
		d.fail()
		return 0
	}
	return size.MulDiv(u, em) + rest
}

func (d *decoder) clusters() []Cluster {
	n := d.count()
	if n == 0 {
		return nil
	}
	cs := make([]Cluster, n)
	for i := range cs {
		cs[i] = Cluster{Bytes: int(d.int()), Adv: d.length(), Rise: d.length()}
	}
	return cs
}

func (d *decoder) stroke() Stroke {
	s := Stroke{From: Point{d.length(), d.length()}}
	s.To = s.From.Add(Point{d.length(), d.length()})
	s.Width = d.length()
	s.Grey = Grey(d.byte())
	if n := d.count(); n > 0 {
		s.Dash = make([]Length, n)
		for i := range s.Dash {
			s.Dash[i] = d.length()
		}
	}
	return s
}

func (d *decoder) bars(flags byte) Bars {
	b := Bars{Rect: d.rect(), Symbology: d.name(), S: d.string()}
	b.Module, b.Dot, b.Quiet = d.length(), d.length(), d.length()
	b.Rows = int(d.int())
	if flags&barsBits != 0 {
		b.Modules = d.bits()
	} else {
		b.Modules = d.string()
	}
	n := d.count()
	if n == 0 {
		return b
	}
	gaps, widths, ys, hs := d.few(n), d.few(n), d.runs(n), d.runs(n)
	if d.bad {
		return b
	}
	b.Rects = make([]Rect, n)
	var before Rect
	for i := range b.Rects {
		r := Rect{Point{before.Right() + gaps[i], before.At.Y + ys[i]}, Size{widths[i], hs[i]}}
		b.Rects[i], before = r, r
	}
	return b
}

func (d *decoder) few(n int) []Length {
	var known []Length
	ls := make([]Length, n)
	for i := range ls {
		k := d.uint()
		if k == 0 {
			known = append(known, d.length())
			k = uint64(len(known))
		}
		if k > uint64(len(known)) {
			d.fail()
			return nil
		}
		ls[i] = known[k-1]
	}
	return ls
}

func (d *decoder) runs(n int) []Length {
	ls := make([]Length, 0, n)
	for len(ls) < n {
		k := d.uint()
		l := d.length()
		if k == 0 || k > uint64(n-len(ls)) || d.bad {
			d.fail()
			return nil
		}
		for range k {
			ls = append(ls, l)
		}
	}
	return ls
}

func (d *decoder) bits() string {
	n := d.uint()
	if n > 8*uint64(len(d.b)) {
		d.fail()
		return ""
	}
	s := make([]byte, n)
	for i := range s {
		s[i] = '0'
		if d.b[i/8]&(0x80>>(i%8)) != 0 {
			s[i] = '1'
		}
	}
	d.b = d.b[(n+7)/8:]
	return string(s)
}
