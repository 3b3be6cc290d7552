package svg

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"cornerslip/layout"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
)

// style returns the style sheet: a class for each face used. Pictures may
// stand in one web page with others, so names are those of the faces, and of
// a part of a face when it is embedded.
func (d *drawing) style() (string, error) {
	if d.o.Fonts == Outlines || len(d.used) == 0 {
		return "", nil
	}
	var b strings.Builder
	b.WriteString("<style>\n")
	for _, name := range slices.Sorted(maps.Keys(d.used)) {
		u := d.used[name]
		slope, weight := "normal", 400
		if u.Italic {
			slope = "italic"
		}
		if u.Bold {
			weight = 700
		}
		families, source := quote(name)+","+quote(u.Family)+",serif", ""
		switch {
		case d.o.Fonts == Embedded:
			rs := slices.Sorted(maps.Keys(u.runes))
			ttf, err := subset(u.TTF(), u.runes)
			if err != nil {
				return "", fmt.Errorf("face %s: %w", name, err)
			}
			part := fmt.Sprintf("%s-%.6x", u.class, sha256.Sum256([]byte(string(rs))))
			d.b = bytes.ReplaceAll(d.b, []byte(`class="`+u.class+`"`), []byte(`class="`+part+`"`))
			u.class = part
			source = "data:font/ttf;base64," + base64.StdEncoding.EncodeToString(ttf)
		case d.o.FontURL != "":
			source = d.o.FontURL + name + ".ttf"
		}
		if source != "" {
			fmt.Fprintf(&b, "@font-face{font-family:%s;font-style:%s;font-weight:%d;src:url(%s)}\n", quote(u.class), slope, weight, quote(source))
			families = quote(u.class) + "," + families
		}
		// Letters stand where the x of each says. Kerning and ligatures of the
		// viewer's own would come on top.
		fmt.Fprintf(&b, ".%s{font-family:%s;font-style:%s;font-weight:%d;white-space:pre;font-kerning:none;font-variant-ligatures:none}\n",
			u.class, families, slope, weight)
	}
	b.WriteString("</style>\n")
	return b.String(), nil
}

// quote returns a string of a style sheet within a picture.
func quote(s string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`, "&", "&amp;", "<", "&lt;", "\n", " ").Replace(s) + "'"
}

// outlines draws a text as one shape.
func (d *drawing) outlines(t layout.Text, u *usedFace, letters []letter) error {
	if u.shape == nil {
		f, err := font.ParseTTF(bytes.NewReader(u.TTF()))
		if err != nil {
			return fmt.Errorf("face %s: %w", u.Name, err)
		}
		u.shape = f
	}
	spoken := t.Actual
	if spoken == "" {
		spoken = t.S
	}
	d.printf("<path role=\"img\" aria-label=\"%s\"%s d=\"", escape(spoken), paint("fill", t.Grey))
	for _, l := range letters {
		if err := d.outline(u, l, t.Size); err != nil {
			return err
		}
	}
	d.printf("\"/>\n")
	return nil
}

// fine is the part of a font unit to which outlines are rounded: their points
// are whole units, and halves between two of them.
const fine = 64

func (d *drawing) outline(u *usedFace, l letter, size layout.Length) error {
	data, ok := u.shape.GlyphData(opentype.GID(l.glyph)).(font.GlyphOutline)
	if !ok {
		return fmt.Errorf("face %s has no outline for %U %q", u.Name, l.r, l.r)
	}
	em := int64(u.Metrics().UnitsPerEm) * fine
	place := func(p opentype.SegmentPoint) string {
		x := l.x + size.MulDiv(int64(math.Round(float64(p.X)*fine)), em)
		y := l.y - size.MulDiv(int64(math.Round(float64(p.Y)*fine)), em)
		return mm(x) + " " + mm(y)
	}
	open := false
	for _, s := range data.Segments {
		switch s.Op {
		case opentype.SegmentOpMoveTo:
			if open {
				d.printf("z")
			}
			d.printf("M%s", place(s.Args[0]))
			open = true
		case opentype.SegmentOpLineTo:
			d.printf("L%s", place(s.Args[0]))
		case opentype.SegmentOpQuadTo:
			d.printf("Q%s %s", place(s.Args[0]), place(s.Args[1]))
		case opentype.SegmentOpCubeTo:
			d.printf("C%s %s %s", place(s.Args[0]), place(s.Args[1]), place(s.Args[2]))
		}
	}
	if open {
		d.printf("z")
	}
	return nil
}
