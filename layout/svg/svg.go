// Package svg writes a page as an SVG picture, for screens: proofs, the local
// web page, pictures in a text. Every letter is put where the PDF puts it; the
// picture's units are millimetres.
package svg

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode"

	"cornerslip/fonts"
	"cornerslip/layout"

	"github.com/go-text/typesetting/font"
)

// A Mode says how the picture comes by its letters.
type Mode int

const (
	// Linked names the faces and leaves it to the viewer to have them, or to
	// fetch them from Options.FontURL. Letters of another face would stand at
	// the right places all the same.
	Linked Mode = iota
	// Embedded carries the characters used of each face within the picture.
	Embedded
	// Outlines draws the letters as shapes: it looks the same everywhere, and
	// nothing in it can be selected or searched.
	Outlines
)

// Options says how a picture is made. The zero value links the faces by name.
type Options struct {
	Fonts Mode
	// FontURL is the address of the folder where Linked finds the font files,
	// each under its name with ".ttf"; "" says nothing of where they are.
	FontURL string
	Title   string // for readers that speak; "" leaves it out
	Lang    string // BCP 47 tag of the text; "" leaves it open
}

// Write writes p to w as a picture of the page's size, with the faces of set.
// A text in a face that set does not have, or with a character that the face
// does not have, is an error that names the label; nothing is written then.
func Write(w io.Writer, p layout.Page, set *fonts.Set, o Options) error {
	if err := p.Check(); err != nil {
		return err
	}
	d := &drawing{set: set, o: o, used: map[string]*usedFace{}}
	for _, b := range p.Boxes {
		if err := d.box(b); err != nil {
			return fmt.Errorf("%v: %w", b.Box.Ref, err)
		}
	}
	if err := d.marks(p.Marks, layout.Point{}); err != nil {
		return fmt.Errorf("a mark on the paper: %w", err)
	}
	style, err := d.style()
	if err != nil {
		return err
	}
	b := bufio.NewWriter(w)
	width, height := mm(p.Size.W), mm(p.Size.H)
	fmt.Fprintf(b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s"`, width, height, width, height)
	if o.Lang != "" {
		fmt.Fprintf(b, ` xml:lang="%s"`, escape(o.Lang))
	}
	b.WriteString(">\n")
	if o.Title != "" {
		fmt.Fprintf(b, "<title>%s</title>\n", escape(o.Title))
	}
	b.WriteString(style)
	b.Write(d.b)
	b.WriteString("</svg>\n")
	return b.Flush()
}

// mm prints a length in millimetres to a ten-thousandth.
func mm(l layout.Length) string { return l.Decimal(layout.MM, 4) }

// escape makes text fit for elements and attributes. Text has no control
// characters (layout.Page.Check), which XML cannot hold.
func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(s)
}

type drawing struct {
	set  *fonts.Set
	o    Options
	used map[string]*usedFace
	b    []byte
}

func (d *drawing) printf(format string, args ...any) { d.b = fmt.Appendf(d.b, format, args...) }

func (d *drawing) box(b layout.Placed) error {
	if b.Turn == 0 {
		return d.marks(b.Box.Marks, b.At)
	}
	turn, x, y := "", b.At.X, b.At.Y
	switch w, h := b.Box.Size.W, b.Box.Size.H; b.Turn {
	case 1:
		turn, x = "0 1 -1 0", x+h
	case 2:
		turn, x, y = "-1 0 0 -1", x+w, y+h
	case 3:
		turn, y = "0 -1 1 0", y+w
	}
	d.printf("<g transform=\"matrix(%s %s %s)\">\n", turn, mm(x), mm(y))
	err := d.marks(b.Box.Marks, layout.Point{})
	d.printf("</g>\n")
	return err
}

// marks draws marks that count from the point at.
func (d *drawing) marks(marks []layout.Mark, at layout.Point) error {
	for _, m := range marks {
		switch m := m.Shifted(at).(type) {
		case layout.Text:
			if err := d.text(m); err != nil {
				return fmt.Errorf("text %q: %w", m.S, err)
			}
		case layout.Fill:
			d.printf("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"%s/>\n", mm(m.At.X), mm(m.At.Y), mm(m.W), mm(m.H), paint("fill", m.Grey))
		case layout.Stroke:
			d.stroke(m)
		case layout.Bars:
			d.bars(m)
		default:
			return fmt.Errorf("a mark of the unknown type %T", m)
		}
	}
	return nil
}

func (d *drawing) stroke(s layout.Stroke) {
	dash := ""
	for i, l := range s.Dash {
		if i > 0 {
			dash += " "
		}
		dash += mm(l)
	}
	if dash != "" {
		dash = ` stroke-dasharray="` + dash + `"`
	}
	d.printf("<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke-width=\"%s\"%s%s/>\n",
		mm(s.From.X), mm(s.From.Y), mm(s.To.X), mm(s.To.Y), mm(s.Width), dash, colour("stroke", s.Grey))
}

func (d *drawing) bars(b layout.Bars) {
	d.printf("<path role=\"img\" aria-label=\"%s\" d=\"", escape(b.S))
	for _, r := range b.Rects {
		// Both edges are rounded, not the width: see package pdf.
		x, y := r.At.X+b.At.X, r.At.Y+b.At.Y
		d.printf("M%s %sH%sV%sH%[1]sz", mm(x), mm(y), mm(x+r.W), mm(y+r.H))
	}
	d.printf("\"/>\n")
}

// paint returns an attribute that sets a lightness, "" for black, which is
// what fills are without one.
func paint(attribute string, g layout.Grey) string {
	if g == 0 {
		return ""
	}
	return colour(attribute, g)
}

func colour(attribute string, g layout.Grey) string {
	return fmt.Sprintf(` %s="#%02x%02x%02x"`, attribute, g, g, g)
}

// text draws one text. The viewer is told where each letter goes, so it never
// measures either.
func (d *drawing) text(t layout.Text) error {
	if t.S == "" {
		return nil
	}
	u, err := d.use(t.Face)
	if err != nil {
		return err
	}
	letters, err := u.letters(t)
	if err != nil {
		return err
	}
	if d.o.Fonts == Outlines {
		return d.outlines(t, u, letters)
	}
	label := ""
	if t.Actual != "" {
		label = ` aria-label="` + escape(t.Actual) + `"`
	}
	for len(letters) > 0 {
		n := element(letters)
		d.printf("<text class=\"%s\" font-size=\"%s\"%s%s x=\"", u.class, mm(t.Size), paint("fill", t.Grey), label)
		raised := false
		for i, l := range letters[:n] {
			d.printf("%s", separated(i, mm(l.x)))
			raised = raised || l.y != letters[0].y
		}
		d.printf("\" y=\"%s", mm(letters[0].y))
		for i := 1; raised && i < n; i++ {
			d.printf(" %s", mm(letters[i].y))
		}
		d.printf("\">")
		for _, l := range letters[:n] {
			d.printf("%s", escape(string(l.r)))
		}
		d.printf("</text>\n")
		letters, label = letters[n:], ""
	}
	return nil
}

func separated(i int, s string) string {
	if i > 0 {
		return " " + s
	}
	return s
}

// element returns how many letters go into the next element. A viewer draws a
// letter and the accents after it as one and puts the accents by its own
// lights, so each accent that has a place of its own starts a new element.
func element(letters []letter) int {
	for i := 1; i < len(letters); i++ {
		if unicode.In(letters[i].r, unicode.Mn, unicode.Me) && !letters[i].joined {
			return i
		}
	}
	return len(letters)
}

// A letter is a character that draws something, and its place.
type letter struct {
	r      rune
	glyph  uint16
	x, y   layout.Length
	joined bool // drawn as one with the letter before, by its own width
}

// A usedFace is a face and the characters used of it.
type usedFace struct {
	*fonts.Face
	class string
	runes map[rune]uint16 // and their glyphs
	shape *font.Face      // for outlines
}

func (d *drawing) use(name string) (*usedFace, error) {
	if u := d.used[name]; u != nil {
		return u, nil
	}
	f, ok := d.set.Lookup(name)
	if !ok {
		return nil, fmt.Errorf("there is no face %q", name)
	}
	u := &usedFace{Face: f, class: class(name), runes: map[rune]uint16{}}
	d.used[name] = u
	return u, nil
}

// class makes a name fit for style sheets.
func class(name string) string {
	return "face-" + strings.Map(func(r rune) rune {
		if r < 0x80 && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return r
		}
		return '-'
	}, name)
}

// letters places the characters of a text and notes that they are used.
func (u *usedFace) letters(t layout.Text) ([]letter, error) {
	ls := make([]letter, 0, len(t.S))
	pen, at := t.At, 0
	em := int64(u.Metrics().UnitsPerEm)
	for _, c := range t.Clusters {
		within, joined := int64(0), false
		for _, r := range t.S[at : at+c.Bytes] {
			if fonts.Invisible(r) {
				continue
			}
			g, ok := u.runes[r]
			if !ok {
				if g, ok = u.Glyph(r); !ok {
					return nil, fmt.Errorf("face %s has no glyph for %U %q", u.Name, r, r)
				}
				u.runes[r] = g
			}
			ls = append(ls, letter{r, g, pen.X + t.Size.MulDiv(within, em), pen.Y - c.Rise, joined})
			within += int64(u.Advance(g))
			joined = true
		}
		at += c.Bytes
		pen.X += c.Adv
	}
	return ls, nil
}
