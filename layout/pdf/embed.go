package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/go-pdf/fpdf"
)

// putFonts writes the faces that were used, each cut down to the characters
// used, and returns the entries of the resources that name them.
func (d *document) putFonts() (string, error) {
	all := used(d.painters)
	var list strings.Builder
	for _, name := range slices.Sorted(maps.Keys(all)) {
		u := all[name]
		rs := u.runes()
		if len(rs) == 0 {
			continue // asked for by an empty text
		}
		n, err := d.putFont(u, rs)
		if err != nil {
			return "", fmt.Errorf("face %s: %w", name, err)
		}
		fmt.Fprintf(&list, "%s %d 0 R ", u.key, n)
	}
	return list.String(), nil
}

// putFont writes a face as a composite font whose character codes are the
// code points themselves (ISO 32000-1, 9.7), so that even a reader that knows
// nothing of ToUnicode finds the text.
func (d *document) putFont(u *usedFace, rs []rune) (int, error) {
	ttf, err := cut(u.TTF(), rs)
	if err != nil {
		return 0, err
	}
	glyphs, err := cutGlyphs(ttf)
	if err != nil {
		return 0, err
	}
	last := rs[len(rs)-1]
	toGlyph := make([]byte, 2*(last+1))
	// CIDSet names .notdef too, which is in every font (ISO 19005-1, 6.3.5).
	set := make([]byte, last/8+1)
	set[0] = 0x80
	for _, r := range rs {
		g := glyphs[r]
		if g == 0 {
			return 0, fmt.Errorf("the font cut down to the characters used has lost %U %q", r, r)
		}
		binary.BigEndian.PutUint16(toGlyph[2*r:], g)
		set[r/8] |= 0x80 >> (r % 8)
	}

	base := "/" + tag(u.Name, rs) + "+" + strings.TrimPrefix(nameObject(u.Name), "/")
	flags := 1 << 2 // symbolic: the font's own character set
	if u.fixed {
		flags |= 1 << 0
	}
	if u.Italic {
		flags |= 1 << 6
	}
	program := d.deflated(fmt.Sprintf(" /Length1 %d", len(ttf)), ttf)
	cidSet := d.deflated("", set)
	descriptor := d.number()
	d.object(descriptor, fmt.Sprintf("<< /Type /FontDescriptor /FontName %s /Flags %d /FontBBox [%d %d %d %d] /ItalicAngle %s"+
		" /Ascent %d /Descent %d /CapHeight %d /StemV %d /FontWeight %d /FontFile2 %d 0 R /CIDSet %d 0 R >>",
		base, flags, u.bbox[0], u.bbox[1], u.bbox[2], u.bbox[3], u.angle,
		u.ascent, u.descent, u.capHeight, stem(u.weight), min(max(u.weight/100*100, 100), 900), program, cidSet))
	gids := d.deflated("", toGlyph)
	cid := d.number()
	d.object(cid, fmt.Sprintf("<< /Type /Font /Subtype /CIDFontType2 /BaseFont %s"+
		" /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor %d 0 R /CIDToGIDMap %d 0 R /W [%s] >>",
		base, descriptor, gids, widths(u, rs)))
	unicode := d.deflated("", toUnicode(rs))
	n := d.number()
	d.object(n, fmt.Sprintf("<< /Type /Font /Subtype /Type0 /BaseFont %s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R >>",
		base, cid, unicode))
	return n, nil
}

// stem guesses the width of the stems from the weight, which the descriptor
// must give and no TrueType font tells: about 80 for regular, 150 for bold.
func stem(weight int) int { return 50 + weight*weight/65/65 }

// cut returns the font with the characters rs alone. fpdf panics where a font
// is not as it expects.
func cut(ttf []byte, rs []rune) (small []byte, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the font file could not be cut down to the characters used: %v", r)
		}
	}()
	// fpdf writes into the array it is given where a table's length is odd.
	small = fpdf.UTF8CutFont(bytes.Clone(ttf), string(rs))
	if len(small) == 0 {
		return nil, fmt.Errorf("the font file could not be cut down to the characters used")
	}
	return small, nil
}

// cutGlyphs returns the glyph of each code point of a font that fpdf has cut:
// its character map is one subtable of format 4 without glyph arrays.
func cutGlyphs(ttf []byte) (map[rune]uint16, error) {
	cmap := tables(ttf)["cmap"]
	if len(cmap) < 28 || u16(cmap, 12) != 4 {
		return nil, fmt.Errorf("the font cut down to the characters used has no character map")
	}
	sub := cmap[12:]
	n := u16(sub, 6) / 2
	if len(sub) < 16+8*n {
		return nil, fmt.Errorf("the character map of the font cut down to the characters used is too short")
	}
	m := map[rune]uint16{}
	for i := range n {
		end, start := u16(sub, 14+2*i), u16(sub, 16+2*n+2*i)
		delta, offset := u16(sub, 16+4*n+2*i), u16(sub, 16+6*n+2*i)
		if offset != 0 {
			return nil, fmt.Errorf("the character map of the font cut down to the characters used is of another kind than expected")
		}
		for c := start; c <= end && c < 0xFFFF; c++ {
			m[rune(c)] = uint16(c + delta)
		}
	}
	return m, nil
}

// tag returns the six letters that mark a font as a part of another one (ISO
// 32000-1, 9.6.4): a digest, so that equal subsets have equal tags and, as the
// standard asks, different ones different tags.
func tag(name string, rs []rune) string {
	sum := sha256.Sum256([]byte(name + "\x00" + string(rs)))
	n := binary.BigEndian.Uint64(sum[:])
	b := make([]byte, 6)
	for i := range b {
		b[i] = byte('A' + n%26)
		n /= 26
	}
	return string(b)
}

// widths returns the font's table of widths, in thousandths of the em to three
// decimals: runs of neighbours of one width as "first last width", others as
// "first [widths]".
func widths(u *usedFace, rs []rune) string {
	width := func(r rune) int64 { return u.widths[r>>8][r&255] - 1 }
	var b []byte
	for i := 0; i < len(rs); {
		// How many neighbours follow, and how many of them are as wide.
		same := i + 1
		for same < len(rs) && rs[same] == rs[same-1]+1 && width(rs[same]) == width(rs[i]) {
			same++
		}
		if b != nil {
			b = append(b, ' ')
		}
		if same-i >= 3 {
			b = fmt.Appendf(b, "%d %d ", rs[i], rs[same-1])
			b = appendMilli(b, width(rs[i]))
			i = same
			continue
		}
		b = fmt.Appendf(b, "%d [", rs[i])
		for first := i; i < len(rs) && (i == first || rs[i] == rs[i-1]+1); i++ {
			if i > first {
				b = append(b, ' ')
			}
			b = appendMilli(b, width(rs[i]))
		}
		b = append(b, ']')
	}
	return string(b)
}

// toUnicode returns the map from character codes to text. Each code is its own
// code point; a range may not cross a multiple of 256, and a block may hold a
// hundred of them (ISO 32000-1, 9.10.3).
func toUnicode(rs []rune) []byte {
	type span struct{ from, to rune }
	var spans []span
	for _, r := range rs {
		if n := len(spans); n > 0 && spans[n-1].to == r-1 && r&255 != 0 {
			spans[n-1].to = r
		} else {
			spans = append(spans, span{r, r})
		}
	}
	b := []byte("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for block := range slices.Chunk(spans, 100) {
		b = fmt.Appendf(b, "%d beginbfrange\n", len(block))
		for _, s := range block {
			b = fmt.Appendf(b, "<%04X> <%04X> <%04X>\n", s.from, s.to, s.from)
		}
		b = append(b, "endbfrange\n"...)
	}
	return append(b, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"...)
}
