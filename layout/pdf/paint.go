package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"strconv"
	"sync"
	"unicode"
	"unicode/utf16"

	"cornerslip/fonts"
	"cornerslip/layout"
)

// A painter turns pages into content streams, one after the other. Each
// worker has its own, so that it can remember what it drew last and which
// characters it has used.
type painter struct {
	faces *faces
	plain bool
	used  map[string]*usedFace

	b []byte // the content of the page at hand
	z *zlib.Writer
	state
}

// A state is what the stream has set and what holds until it sets it again.
type state struct {
	face string
	size layout.Length
	ink  [2]layout.Grey // fill, stroke
	line layout.Length
	dash bool
}

const (
	fill   = 0
	stroke = 1
)

var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// paint draws a page. Its coordinates start in the upper-left corner of the
// paper, so that the dots of a printer, which are counted from there, come out
// as short exact numbers.
func (p *painter) paint(page layout.Page) (*bytes.Buffer, error) {
	if err := page.Check(); err != nil {
		return nil, err
	}
	p.b = fmt.Appendf(p.b[:0], "1 0 0 1 0 %s cm\n", box(page.Size.H))
	p.state = state{line: layout.Pt}
	for _, b := range page.Boxes {
		if err := p.box(b); err != nil {
			return nil, fmt.Errorf("%v: %w", b.Box.Ref, err)
		}
	}
	if err := p.marks(page.Marks, layout.Point{}); err != nil {
		return nil, fmt.Errorf("a mark on the paper: %w", err)
	}
	return p.packed()
}

func (p *painter) packed() (*bytes.Buffer, error) {
	out := buffers.Get().(*bytes.Buffer)
	out.Reset()
	if p.plain {
		out.Write(p.b)
		return out, nil
	}
	if p.z == nil {
		z, err := zlib.NewWriterLevel(out, level)
		if err != nil {
			return nil, err
		}
		p.z = z
	} else {
		p.z.Reset(out)
	}
	if _, err := p.z.Write(p.b); err != nil {
		return nil, err
	}
	return out, p.z.Close()
}

func (p *painter) box(b layout.Placed) error {
	if b.Turn == 0 {
		return p.marks(b.Box.Marks, b.At)
	}
	// The stream's y grows upwards and the page's downwards, so a turn
	// clockwise on paper has its signs here the other way round.
	w, h := b.Box.Size.W, b.Box.Size.H
	turn, x, y := "", b.At.X, -b.At.Y
	switch b.Turn {
	case 1:
		turn, x = "0 -1 1 0", x+h
	case 2:
		turn, x, y = "-1 0 0 -1", x+w, y-h
	case 3:
		turn, y = "0 1 -1 0", y-w
	}
	p.b = append(p.b, "q "...)
	p.b = append(p.b, turn...)
	p.numbers(x, y)
	p.b = append(p.b, " cm\n"...)
	before := p.state
	err := p.marks(b.Box.Marks, layout.Point{})
	p.b = append(p.b, "Q\n"...)
	p.state = before
	return err
}

// marks draws marks that count from the point at.
func (p *painter) marks(marks []layout.Mark, at layout.Point) error {
	for _, m := range marks {
		switch m := m.(type) {
		case layout.Text:
			m.At = m.At.Add(at)
			if err := p.text(m); err != nil {
				return err
			}
		case layout.Fill:
			m.At = m.At.Add(at)
			if m.W > 0 && m.H > 0 {
				p.setInk(fill, m.Grey)
				p.rect(m.Rect)
				p.b = append(p.b, "f\n"...)
			}
		case layout.Stroke:
			m.From, m.To = m.From.Add(at), m.To.Add(at)
			p.stroke(m)
		case layout.Bars:
			p.setInk(fill, 0)
			for _, r := range m.Rects {
				r.At = r.At.Add(m.At).Add(at)
				p.rect(r)
			}
			p.b = append(p.b, "f\n"...)
		default:
			return fmt.Errorf("a mark of the unknown type %T", m)
		}
	}
	return nil
}

// rect adds a rectangle to the path. Both edges are rounded, not the width,
// so that no edge is more than half a thousandth of a point off.
func (p *painter) rect(r layout.Rect) {
	x, y := milli(r.At.X), milli(-r.Bottom())
	w, h := milli(r.Right())-x, milli(-r.At.Y)-y
	for i, n := range [...]int64{x, y, w, h} {
		if i > 0 {
			p.b = append(p.b, ' ')
		}
		p.b = appendMilli(p.b, n)
	}
	p.b = append(p.b, " re\n"...)
}

func (p *painter) stroke(s layout.Stroke) {
	p.setInk(stroke, s.Grey)
	if p.line != s.Width {
		p.b = appendMilli(p.b, milli(s.Width))
		p.b = append(p.b, " w "...)
		p.line = s.Width
	}
	if dash := len(s.Dash) > 0; dash || p.dash {
		p.b = append(p.b, '[')
		for i, l := range s.Dash {
			if i > 0 {
				p.b = append(p.b, ' ')
			}
			p.b = appendMilli(p.b, milli(l))
		}
		p.b = append(p.b, "] 0 d "...)
		p.dash = dash
	}
	p.b = appendMilli(p.b, milli(s.From.X))
	p.numbers(-s.From.Y)
	p.b = append(p.b, " m"...)
	p.numbers(s.To.X, -s.To.Y)
	p.b = append(p.b, " l S\n"...)
}

// setInk sets a lightness where it is not set already.
func (p *painter) setInk(what int, g layout.Grey) {
	if p.ink[what] == g {
		return
	}
	p.ink[what] = g
	p.b = appendMilli(p.b, (int64(g)*1000+127)/255)
	p.b = append(p.b, ' ', "gG"[what], ' ')
}

// text draws one text. The pen is set to its start, so an error in a width
// can never move the text after it.
func (p *painter) text(t layout.Text) error {
	if t.S == "" {
		return nil
	}
	f, err := p.use(t.Face)
	if err != nil {
		return err
	}
	p.setInk(fill, t.Grey)
	start := len(p.b)
	p.b = append(p.b, "BT "...)
	if p.face != t.Face || p.size != t.Size {
		p.b = append(p.b, f.key...)
		p.numbers(t.Size)
		p.b = append(p.b, " Tf "...)
		p.face, p.size = t.Face, t.Size
	}
	p.b = appendMilli(p.b, milli(t.At.X))
	p.numbers(-t.At.Y)
	p.b = append(p.b, " Td ["...)
	plain, err := p.show(t, f)
	if err != nil {
		return err
	}
	p.b = append(p.b, " ET\n"...)
	if t.Actual != "" {
		p.actual(start, t.Actual)
	} else if !plain {
		p.actual(start, t.S)
	}
	return nil
}

// show draws the clusters of t into an open TJ array and closes it. The pen
// moves by the font's widths; where that is not where the layout has it, a
// number in thousandths of the size sets it right before the next cluster. What
// is less than half such a step is carried on, never lost. It reports whether
// readers will find t.S in what was drawn: not where letters stand so far apart
// that they look like words, where accents are drawn for themselves (poppler
// takes them for letters of another line), or where S holds characters that
// draw nothing.
func (p *painter) show(t layout.Text, f *usedFace) (plain bool, err error) {
	size := int64(t.Size)
	step := int64(1000) // millionths of the size
	if t.Size > 12*layout.Pt {
		step = 100 // keeps the error below 0.01 pt in larger type
	}
	var want layout.Length // where the pen should be
	var have int64         // where it is, in millionths of the size
	var rise layout.Length
	wide, gaps, apart := 0, 0, false
	open, at := false, 0
	for i, c := range t.Clusters {
		if c.Rise != rise {
			p.closeString(&open)
			p.b = append(p.b, "] TJ"...)
			p.numbers(c.Rise)
			p.b = append(p.b, " Ts ["...)
			rise = c.Rise
		}
		if off := round(have-round(int64(want)*1_000_000, size), step); off != 0 {
			p.closeString(&open)
			p.b = appendMilli(p.b, off*step)
			have -= off * step
		}
		s := t.S[at : at+c.Bytes]
		at += c.Bytes
		before := have
		for _, r := range s {
			if fonts.Invisible(r) {
				apart = true
				continue
			}
			if r >= 0x300 && unicode.In(r, unicode.Mn, unicode.Me) {
				apart = true
			}
			w, err := f.width(r)
			if err != nil {
				return false, fmt.Errorf("text %q: %w", t.S, err)
			}
			if !open {
				p.b = append(p.b, '<')
				open = true
			}
			p.b = append(p.b, hex[r>>12&15], hex[r>>8&15], hex[r>>4&15], hex[r&15])
			have += w
		}
		want += c.Adv
		if i < len(t.Clusters)-1 && s != " " && t.S[at] != ' ' {
			gaps++
			if round(int64(c.Adv)*1_000_000, size)-(have-before) > wordGap {
				wide++
			}
		}
	}
	p.closeString(&open)
	p.b = append(p.b, "] TJ"...)
	if rise != 0 {
		p.b = append(p.b, " 0 Ts"...)
	}
	return !apart && 2*wide <= gaps, nil
}

// wordGap is the extra space between letters, in millionths of the size, from
// which on a text gets the words it stands for beside it: programs that
// extract text take a gap of about a tenth of the size for a space.
const wordGap = 50_000

const hex = "0123456789ABCDEF"

func (p *painter) closeString(open *bool) {
	if *open {
		p.b = append(p.b, '>')
		*open = false
	}
}

// actual wraps what was drawn since start in a span that says which text it
// stands for (ISO 32000-1, 14.9.4).
func (p *painter) actual(start int, text string) {
	drawn := string(p.b[start:])
	p.b = append(p.b[:start], "/Span <</ActualText <FEFF"...)
	for _, u := range utf16.Encode([]rune(text)) {
		p.b = append(p.b, hex[u>>12], hex[u>>8&15], hex[u>>4&15], hex[u&15])
	}
	p.b = append(p.b, ">>> BDC\n"...)
	p.b = append(p.b, drawn...)
	p.b = append(p.b, "EMC\n"...)
}

// numbers appends lengths in points, each after a space.
func (p *painter) numbers(ls ...layout.Length) {
	for _, l := range ls {
		p.b = append(p.b, ' ')
		p.b = appendMilli(p.b, milli(l))
	}
}

// milli returns l in thousandths of a point, halves away from zero, as
// Length.Decimal rounds.
func milli(l layout.Length) int64 { return round(int64(l)*10, int64(layout.Pt)/100) }

// round returns n/d to the nearest whole number, halves away from zero.
func round(n, d int64) int64 {
	if n < 0 {
		return -((-2*n + d) / (2 * d))
	}
	return (2*n + d) / (2 * d)
}

// appendMilli appends n thousandths as a decimal number without trailing
// zeros.
func appendMilli(b []byte, n int64) []byte {
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendInt(b, n/1000, 10)
	if n %= 1000; n != 0 {
		b = append(b, '.', byte('0'+n/100))
		if n %= 100; n != 0 {
			b = append(b, byte('0'+n/10))
			if n %= 10; n != 0 {
				b = append(b, byte('0'+n))
			}
		}
	}
	return b
}
