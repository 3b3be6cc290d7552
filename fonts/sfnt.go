package fonts

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode/utf16"
)

// An sfnt is what is needed of a TrueType file (OpenType specification 1.9).
type sfnt struct {
	data   []byte
	tables map[string]table
	at     map[string]int // where each table starts
	sums   map[string]uint32

	metrics     Metrics
	glyphs      int
	longLoca    bool
	italic      bool
	bold        bool
	fsType      uint16
	segments    []segment
	reverseOnce sync.Once
	reverse     map[uint16]rune
}

// A table is the bytes of one table. Reading beyond its end gives zero; what
// must not be short is checked by parse and check.
type table []byte

func (t table) u16(off int) int {
	if off < 0 || off+2 > len(t) {
		return 0
	}
	return int(binary.BigEndian.Uint16(t[off:]))
}

func (t table) i16(off int) int { return int(int16(t.u16(off))) }

func (t table) u32(off int) uint32 {
	if off < 0 || off+4 > len(t) {
		return 0
	}
	return binary.BigEndian.Uint32(t[off:])
}

// required are the tables without which a face can be neither measured nor
// put into the PDF, and the least length of each.
var required = []struct {
	tag string
	min int
}{
	{"head", 54}, {"hhea", 36}, {"maxp", 6}, {"OS/2", 78}, {"post", 32}, {"name", 6},
	{"cmap", 4}, {"hmtx", 4}, {"loca", 4}, {"glyf", 1},
}

func damaged(format string, args ...any) error {
	return fmt.Errorf("the font file is damaged: "+format, args...)
}

// parse reads what every use of a face needs, and refuses what is no TrueType
// font with outlines of that kind.
func parse(data []byte) (*sfnt, error) {
	if err := kind(data); err != nil {
		return nil, err
	}
	t := &sfnt{data: data, tables: map[string]table{}, at: map[string]int{}, sums: map[string]uint32{}}
	file := table(data)
	n := file.u16(4)
	if 12+16*n > len(data) {
		return nil, damaged("its list of tables is cut off")
	}
	for i := range n {
		e := 12 + 16*i
		tag := string(data[e : e+4])
		off, size := int64(file.u32(e+8)), int64(file.u32(e+12))
		if off+size > int64(len(data)) {
			return nil, damaged("its table %q is cut off", tag)
		}
		t.tables[tag], t.at[tag], t.sums[tag] = table(data[off:off+size:off+size]), int(off), file.u32(e+4)
	}
	for _, r := range required {
		b, ok := t.tables[r.tag]
		if !ok {
			if r.tag == "glyf" || r.tag == "loca" {
				return nil, errors.New("the font has no TrueType outlines, and no others can be put into the PDF; take a .ttf file of the family")
			}
			return nil, damaged("its table %q is missing", r.tag)
		}
		if len(b) < r.min {
			return nil, damaged("its table %q is too short", r.tag)
		}
	}
	head, os2 := t.tables["head"], t.tables["OS/2"]
	t.glyphs = t.tables["maxp"].u16(4)
	t.longLoca = head.i16(50) == 1
	macStyle, selection := head.u16(44), os2.u16(62)
	t.italic = macStyle&2 != 0 || selection&(1|1<<9) != 0 || t.tables["post"].u32(4) != 0
	t.bold = macStyle&1 != 0 || selection&(1<<5) != 0
	t.fsType = uint16(os2.u16(8))
	if err := t.readCmap(); err != nil {
		return nil, err
	}
	t.readMetrics()
	return t, nil
}

// kind refuses files that are something else, by their first bytes.
func kind(data []byte) error {
	if len(data) < 12 {
		return errors.New("the file is too short to be a font")
	}
	switch string(data[:4]) {
	case "\x00\x01\x00\x00", "true":
		return nil
	case "OTTO":
		return errors.New("the font has PostScript (CFF) outlines, and only TrueType outlines can be put into the PDF; take a .ttf file of the family")
	case "ttcf":
		return errors.New("the file is a collection of fonts (TTC); take a .ttf file with the one face that is wanted")
	case "wOFF", "wOF2":
		return errors.New("the file is a web font (WOFF); take a .ttf file of the family")
	case "typ1", "%!PS", "%!Fo", "\x80\x01\x00\x00":
		return errors.New("the file is a PostScript Type 1 font; take a .ttf file of the family")
	}
	if data[0] == 0x80 && data[1] == 0x01 {
		return errors.New("the file is a PostScript Type 1 font; take a .ttf file of the family")
	}
	return errors.New("the file is not a TrueType font")
}

func (t *sfnt) readMetrics() {
	head, hhea, os2 := t.tables["head"], t.tables["hhea"], t.tables["OS/2"]
	m := Metrics{UnitsPerEm: head.u16(18), Ascent: hhea.i16(4), Descent: -hhea.i16(6)}
	if m.Ascent == 0 && m.Descent == 0 {
		m.Ascent, m.Descent = os2.i16(68), -os2.i16(70)
	}
	if os2.u16(0) >= 2 && len(os2) >= 90 {
		m.XHeight, m.CapHeight = os2.i16(86), os2.i16(88)
	}
	if m.XHeight <= 0 {
		m.XHeight = t.top('x', m.UnitsPerEm/2)
	}
	if m.CapHeight <= 0 {
		m.CapHeight = t.top('H', m.UnitsPerEm*7/10)
	}
	t.metrics = m
}

// top returns the height of a letter, or otherwise if there is none.
func (t *sfnt) top(r rune, otherwise int) int {
	g, ok := t.glyph(r)
	if !ok {
		return otherwise
	}
	if o := t.outline(int(g)); len(o) >= 10 {
		return o.i16(8)
	}
	return otherwise
}

// outline returns a glyph's bytes in glyf; empty for a blank.
func (t *sfnt) outline(g int) table {
	from, to := t.loca(g), t.loca(g+1)
	glyf := t.tables["glyf"]
	if from > to || to > len(glyf) {
		return nil
	}
	return glyf[from:to]
}

func (t *sfnt) loca(g int) int {
	if t.longLoca {
		return int(t.tables["loca"].u32(4 * g))
	}
	return 2 * t.tables["loca"].u16(2*g)
}

// A segment is a run of code points in a character map of format 4.
type segment struct {
	start, end uint16
	delta      uint16
	glyphs     table // the glyphs of the run, before delta is added; nil: delta alone
}

// readCmap takes the first Unicode subtable of format 4, as the PDF writer
// does: another one could name other glyphs.
func (t *sfnt) readCmap() error {
	cmap := t.tables["cmap"]
	for i := range cmap.u16(2) {
		e := 4 + 8*i
		platform, encoding, off := cmap.u16(e), cmap.u16(e+2), int64(cmap.u32(e+4))
		if platform != 0 && (platform != 3 || encoding != 1) || off >= int64(len(cmap)) {
			continue
		}
		if sub := cmap[off:]; sub.u16(0) == 4 {
			return t.readFormat4(sub)
		}
	}
	return errors.New("the font has no Unicode character map that the PDF can use (cmap format 4)")
}

func (t *sfnt) readFormat4(sub table) error {
	n := sub.u16(6) / 2
	if 16+8*n > len(sub) {
		return damaged("its character map is cut off")
	}
	ends, starts := sub[14:], sub[16+2*n:]
	deltas, offsets := sub[16+4*n:], sub[16+6*n:]
	for i := range n {
		s := segment{start: uint16(starts.u16(2 * i)), end: uint16(ends.u16(2 * i)), delta: uint16(deltas.u16(2 * i))}
		if s.start > s.end || i > 0 && s.start <= t.segments[i-1].end {
			return damaged("its character map is out of order")
		}
		if off := offsets.u16(2 * i); off != 0 && off != 0xffff {
			from := 2*i + off
			to := from + 2*(int(s.end)-int(s.start)+1)
			if to > len(offsets) {
				if s.end != 0xffff { // the closing segment often points nowhere
					return damaged("its character map points outside itself")
				}
				to, from = 0, 0
			}
			s.glyphs = offsets[from:to:to]
		}
		t.segments = append(t.segments, s)
	}
	return nil
}

func (t *sfnt) glyph(r rune) (uint16, bool) {
	if r < 0 || r >= 0xffff {
		return 0, false
	}
	i, _ := slices.BinarySearchFunc(t.segments, uint16(r), func(s segment, c uint16) int { return int(s.end) - int(c) })
	if i == len(t.segments) || uint16(r) < t.segments[i].start {
		return 0, false
	}
	g := t.segments[i].glyph(uint16(r))
	return g, g != 0
}

func (s *segment) glyph(c uint16) uint16 {
	if s.glyphs == nil {
		return c + s.delta
	}
	g := uint16(s.glyphs.u16(2 * int(c-s.start)))
	if g != 0 {
		g += s.delta
	}
	return g
}

// each calls f for every code point that has a glyph, in order.
func (t *sfnt) each(f func(r rune, g uint16)) {
	for i := range t.segments {
		s := &t.segments[i]
		for c := int(s.start); c <= int(s.end) && c < 0xffff; c++ {
			if g := s.glyph(uint16(c)); g != 0 {
				f(rune(c), g)
			}
		}
	}
}

func (t *sfnt) rune(g uint16) (rune, bool) {
	t.reverseOnce.Do(func() {
		t.reverse = make(map[uint16]rune, t.glyphs)
		t.each(func(r rune, g uint16) {
			if _, taken := t.reverse[g]; !taken {
				t.reverse[g] = r
			}
		})
	})
	r, ok := t.reverse[g]
	return r, ok
}

// name returns an entry of the name table, in English where there is a choice.
func (t *sfnt) name(id int) string {
	tab := t.tables["name"]
	strs := tab.u16(4)
	best, found := 0, ""
	for i := range tab.u16(2) {
		e := 6 + 12*i
		platform, lang := tab.u16(e), tab.u16(e+4)
		from := strs + tab.u16(e+10)
		to := from + tab.u16(e+8)
		if tab.u16(e+6) != id || to > len(tab) {
			continue
		}
		rank, raw := 0, tab[from:to]
		switch {
		case platform == 3 && lang == 0x409:
			rank = 4
		case platform == 0:
			rank = 3
		case platform == 3:
			rank = 2
		case platform == 1 && lang == 0:
			rank = 1
		}
		if rank <= best {
			continue
		}
		best = rank
		if platform == 1 {
			found = macRoman(raw)
		} else {
			units := make([]uint16, len(raw)/2)
			for i := range units {
				units[i] = uint16(raw.u16(2 * i))
			}
			found = string(utf16.Decode(units))
		}
	}
	return found
}

// macRoman keeps the ASCII of an old Macintosh string; what else there is, is
// a © or a ™ in practice.
func macRoman(b []byte) string {
	var s strings.Builder
	for _, c := range b {
		switch {
		case c < 0x80:
			s.WriteByte(c)
		case c == 0xa9:
			s.WriteString("©")
		case c == 0xaa:
			s.WriteString("™")
		case c == 0xa8:
			s.WriteString("®")
		}
	}
	return s.String()
}
