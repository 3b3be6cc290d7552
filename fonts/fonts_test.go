package fonts

import (
	"bytes"
	"encoding/binary"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"

	xfont "golang.org/x/image/font"
	xsfnt "golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// TestDefaultFaces holds the list of faces against the files' own names and
// styles; each is as sound as a house's font must be.
func TestDefaultFaces(t *testing.T) {
	for _, f := range Default().Faces() {
		g, err := newFace(f.data)
		if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			continue
		}
		if g.Name != f.Name || g.Family != f.Family || g.Italic != f.Italic || g.Bold != f.Bold {
			t.Errorf("the list says %s %q italic %v bold %v, the file %s %q italic %v bold %v",
				f.Name, f.Family, f.Italic, f.Bold, g.Name, g.Family, g.Italic, g.Bold)
		}
	}
}

// TestTables holds characters, widths and heights against another reader of
// font files, golang.org/x/image/font/sfnt.
func TestTables(t *testing.T) {
	for _, f := range Default().Faces() {
		other, err := xsfnt.Parse(f.TTF())
		if err != nil {
			t.Fatal(err)
		}
		var buf xsfnt.Buffer
		em := fixed.Int26_6(other.UnitsPerEm())
		n := 0
		for r := rune(1); r < 0xffff; r++ {
			g, ok := f.Glyph(r)
			want, err := other.GlyphIndex(&buf, r)
			if err != nil || g != uint16(want) || ok != (want != 0) {
				t.Errorf("%s: U+%04X has glyph %d %v, want %d (%v)", f.Name, r, g, ok, want, err)
			}
			if !ok {
				continue
			}
			n++
			adv, err := other.GlyphAdvance(&buf, want, em, xfont.HintingNone)
			if err != nil || f.Advance(g) != int(adv) {
				t.Errorf("%s: U+%04X is %d wide, want %d (%v)", f.Name, r, f.Advance(g), adv, err)
			}
			if back, ok := f.Rune(g); !ok || back > r {
				t.Errorf("%s: glyph %d stands for U+%04X first, not for U+%04X", f.Name, g, r, back)
			}
		}
		if n < 2300 {
			t.Errorf("%s has only %d characters", f.Name, n)
		}
		m, err := other.Metrics(&buf, em, xfont.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		got := f.Metrics()
		// Heights that it measures itself come out negative there.
		want := Metrics{int(em), int(m.Ascent), int(m.Descent), max(int(m.CapHeight), -int(m.CapHeight)), max(int(m.XHeight), -int(m.XHeight))}
		if got != want {
			t.Errorf("%s: metrics %+v, want %+v", f.Name, got, want)
		}
	}
}

// TestCoverage restates how much of Unicode the faces have, counted when they
// were chosen, block by block.
func TestCoverage(t *testing.T) {
	blocks := []struct {
		name               string
		first, last        rune
		liberation, dejavu int
	}{
		{"Latin-1 Supplement", 0xa0, 0xff, 96, 96},
		{"Latin Extended-A", 0x100, 0x17f, 128, 128},
		{"Latin Extended-B", 0x180, 0x24f, 208, 208},
		{"Latin Extended Additional", 0x1e00, 0x1eff, 247, 252},
		{"Vietnamese", 0x1ea0, 0x1ef9, 90, 90},
		{"Greek and Coptic", 0x370, 0x3ff, 127, 121},
		{"Greek Extended", 0x1f00, 0x1fff, 233, 233},
		{"Cyrillic", 0x400, 0x4ff, 256, 204},
		{"IPA Extensions", 0x250, 0x2af, 96, 96},
		{"Combining Diacritical Marks", 0x300, 0x36f, 112, 69},
		{"Superscripts and Subscripts", 0x2070, 0x209f, 21, 42},
		{"Georgian", 0x10a0, 0x10ff, 0, 45},
		{"Armenian", 0x530, 0x58f, 0, 86},
		{"Devanagari", 0x900, 0x97f, 0, 0},
	}
	for _, f := range Default().Faces() {
		for _, b := range blocks {
			n := 0
			for r := b.first; r <= b.last; r++ {
				if _, ok := f.Glyph(r); ok {
					n++
				}
			}
			want := b.liberation
			if f.Family == "DejaVu Serif" {
				want = b.dejavu
			}
			if want > 20 && n < want || want <= 20 && n != want {
				t.Errorf("%s has %d characters of %s, not %d", f.Name, n, b.name, want)
			}
		}
		const everyday = "♂♀×′″°µ–—’“”№½¼¾⅓±≤≥≈∞†‡§¶•…‰−‐"
		if !f.Covers(everyday) {
			t.Errorf("%s lacks one of %s", f.Name, everyday)
		}
	}
	for _, c := range []struct {
		cluster string
		face    string // "" for none
	}{
		{"é", "LiberationSerif"}, {"x\u0302", "LiberationSerif"}, {"♂\ufe0f", "LiberationSerif"},
		{"☿", "DejaVuSerif"}, {"≃", "DejaVuSerif"}, {"\ufffd", "DejaVuSerif"}, {"ქ", "DejaVuSerif"},
		{"⚥", ""}, {"日", ""}, {"😀", ""},
	} {
		f, ok := Default().Find(c.cluster, false, false)
		if ok != (c.face != "") || ok && f.Name != c.face {
			t.Errorf("%q: found %v, want %q", c.cluster, f, c.face)
		}
	}
}

func TestChain(t *testing.T) {
	for _, c := range []struct {
		italic, bold bool
		want         []string
	}{
		{false, false, []string{"LiberationSerif", "DejaVuSerif", "LiberationSerif-Bold", "DejaVuSerif-Bold"}},
		{false, true, []string{"LiberationSerif-Bold", "DejaVuSerif-Bold", "LiberationSerif", "DejaVuSerif"}},
		{true, false, []string{"LiberationSerif-Italic", "DejaVuSerif-Italic", "LiberationSerif-BoldItalic", "DejaVuSerif-BoldItalic",
			"LiberationSerif", "DejaVuSerif", "LiberationSerif-Bold", "DejaVuSerif-Bold"}},
		{true, true, []string{"LiberationSerif-BoldItalic", "DejaVuSerif-BoldItalic", "LiberationSerif-Italic", "DejaVuSerif-Italic",
			"LiberationSerif-Bold", "DejaVuSerif-Bold", "LiberationSerif", "DejaVuSerif"}},
	} {
		var got []string
		for _, f := range Default().Chain(c.italic, c.bold) {
			got = append(got, f.Name)
			if g, ok := Default().Lookup(f.Name); !ok || g != f {
				t.Errorf("%s is not found by its name", f.Name)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("italic %v bold %v: %v, want %v", c.italic, c.bold, got, c.want)
		}
	}
}

// TestLicences checks that the licence texts are those of the modules that the
// faces come from.
func TestLicences(t *testing.T) {
	for family, file := range map[string]string{
		"Liberation Serif": filepath.Join(outside.Module(t, "github.com/go-fonts/liberation"), "LICENSE-SIL"),
		"DejaVu Serif":     filepath.Join(outside.Module(t, "github.com/go-fonts/dejavu"), "LICENSE-DejaVu"),
	} {
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range Default().Faces() {
			if f.Family == family && f.Licence() != string(want) {
				t.Errorf("the licence of %s is not the one in its module", f.Name)
			}
		}
	}
}

// edit returns a copy of a font file, changed, with its check sums put right.
func edit(data []byte, change func(b []byte, at map[string]int)) []byte {
	b := bytes.Clone(data)
	at := map[string]int{}
	for i := range int(binary.BigEndian.Uint16(b[4:])) {
		e := b[12+16*i:]
		at[string(e[:4])] = int(binary.BigEndian.Uint32(e[8:]))
	}
	change(b, at)
	fixSums(b)
	return b
}

func fixSums(b []byte) {
	for i := range int(binary.BigEndian.Uint16(b[4:])) {
		if 28+16*i > len(b) {
			return
		}
		e := b[12+16*i:]
		off, size := uint64(binary.BigEndian.Uint32(e[8:])), uint64(binary.BigEndian.Uint32(e[12:]))
		if off+size <= uint64(len(b)) {
			binary.BigEndian.PutUint32(e[4:], sum(string(e[:4]), table(b[off:off+size])))
		}
	}
}

func write(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// renamed is a sound font of another name than those that come with the
// program: every L of its names is an M.
func renamed() []byte {
	f, _ := Default().Lookup("LiberationSerif-Italic")
	return edit(f.data, func(b []byte, at map[string]int) {
		name := b[at["name"]:]
		for i := 6 + 12*int(binary.BigEndian.Uint16(name[2:])); i < 6000 && at["name"]+i < len(b); i++ {
			if name[i] == 'L' {
				name[i] = 'M'
			}
		}
	})
}

func TestWith(t *testing.T) {
	good := write(t, "house.ttf", renamed())
	s, err := Default().With(good, good)
	if err != nil {
		t.Fatal(err)
	}
	f, ok := s.Lookup("MiberationSerif-Italic")
	if !ok || f.Family != "Miberation Serif" || !f.Italic || f.Bold || f.File != good {
		t.Fatalf("got %+v", f)
	}
	if n := len(s.Faces()); n != 9 || s.Faces()[8] != f {
		t.Errorf("%d faces; the house's comes last and once", n)
	}
	if !strings.Contains(f.Licence(), "Open Font") {
		t.Errorf("licence %q", f.Licence())
	}
	if _, ok := Default().Lookup("MiberationSerif-Italic"); ok {
		t.Error("With changed the set it was called on")
	}
	same, _ := Default().Lookup("DejaVuSerif")
	if s, err := Default().With(write(t, "same.ttf", same.TTF())); err != nil || len(s.Faces()) != 8 {
		t.Errorf("a face that is there already: %v", err)
	}
}

// TestNameTable checks that a name table of format 1 is taken and handed on
// as the PDF writer reads it.
func TestNameTable(t *testing.T) {
	data := edit(renamed(), func(b []byte, at map[string]int) { b[at["name"]+1] = 1 })
	f, err := newFace(data)
	if err != nil {
		t.Fatal(err)
	}
	if f.Name != "MiberationSerif-Italic" || binary.BigEndian.Uint16(f.TTF()[f.table.at["name"]:]) != 0 {
		t.Errorf("%s: the format is still 1", f.Name)
	}
}

func TestRefused(t *testing.T) {
	good := renamed()
	put := func(tag string, off int, v uint16) []byte {
		return edit(good, func(b []byte, at map[string]int) { binary.BigEndian.PutUint16(b[at[tag]+off:], v) })
	}
	flip := func(tag string) []byte { // one bit, as a bad disk does
		b := bytes.Clone(good)
		edit(good, func(_ []byte, at map[string]int) { b[at[tag]+40] ^= 4 })
		return b
	}
	head := func(s string) []byte { return append([]byte(s), good[4:]...) }
	composite := edit(good, func(b []byte, at map[string]int) {
		f, _ := newFace(good)
		g, _ := f.Glyph('é')
		binary.BigEndian.PutUint16(b[at["glyf"]+f.table.loca(int(g))+12:], g)
	})
	lost := bytes.Clone(good)
	copy(lost[bytes.Index(lost, []byte("hhea")):], "hhex")
	other, _ := Default().Lookup("DejaVuSerif")
	clash := edit(other.data, func(b []byte, at map[string]int) { b[at["head"]+20]++ })
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"cff", head("OTTO"), "PostScript (CFF) outlines"},
		{"collection", head("ttcf"), "collection of fonts (TTC)"},
		{"woff", head("wOFF"), "web font (WOFF)"},
		{"woff2", head("wOF2"), "web font (WOFF)"},
		{"type 1", append([]byte("\x80\x01\xa5\x12"), good...), "Type 1"},
		{"text", []byte("no font at all, just a note"), "not a TrueType font"},
		{"empty", nil, "too short"},
		{"cut in the middle", good[:len(good)/2], "damaged"},
		{"cut in the table list", good[:100], "damaged"},
		{"cut at the end", good[:len(good)-64], "damaged"},
		{"missing table", lost, "table \"hhea\" is missing"},
		{"bit in glyf", flip("glyf"), "check sum"},
		{"bit in hmtx", flip("hmtx"), "check sum"},
		{"bit in cmap", flip("cmap"), "damaged"},
		{"bit in GPOS", flip("GPOS"), "check sum"},
		{"no units", put("head", 18, 0), "units to the em"},
		{"too many widths", put("hhea", 34, 0xffff), "widths"},
		{"no widths", put("hhea", 34, 0), "widths"},
		{"too few glyphs", put("maxp", 4, 100), "damaged"},
		{"glyph in itself", composite, "part of itself"},
		{"restricted", put("OS/2", 8, 0x0002), "forbids embedding it"},
		{"no subset", put("OS/2", 8, 0x0100), "fsType 0x100"},
		{"bitmaps only", put("OS/2", 8, 0x0200), "only its bitmaps"},
		{"name taken", clash, "calls itself DejaVuSerif"},
	} {
		path := write(t, "house.ttf", c.data)
		_, err := Default().With(path)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), path) {
			t.Errorf("%s: error %v, want one that names the file and says %q", c.name, err, c.want)
		}
	}
	// Preview and print, editable, and the more generous of two bits.
	for _, bits := range []uint16{0, 4, 8, 2 | 4, 2 | 8} {
		if _, err := Default().With(write(t, "house.ttf", put("OS/2", 8, bits))); err != nil {
			t.Errorf("fsType %d: %v", bits, err)
		}
	}
	_, err := Default().With(filepath.Join(t.TempDir(), "absent.ttf"), write(t, "bad.ttf", nil))
	if err == nil || !strings.Contains(err.Error(), "absent.ttf") || !strings.Contains(err.Error(), "bad.ttf") {
		t.Errorf("two bad files: %v, want both named", err)
	}
}

// TestSystemFonts reads real files of other makers.
func TestSystemFonts(t *testing.T) {
	for _, c := range []struct{ path, want string }{
		{"/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf", ""},
		{"/usr/share/fonts-droid-fallback/truetype/DroidSansFallback.ttf", ""},
		{"/usr/share/fonts/truetype/dejavu/DejaVuMathTeXGyre.ttf", ""},
		{"/usr/share/fonts/X11/Type1/C059-Italic.pfb", "Type 1"},
		{filepath.Join(outside.Module(t, "golang.org/x/image"), "font", "testdata", "CFFTest.otf"), "CFF"},
	} {
		_, err := Default().With(outside.File(t, c.path))
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.path, err, c.want)
		}
	}
}

// FuzzFace changes bytes of a sound file and puts its check sums right, so
// that the checks behind them have to notice.
func FuzzFace(f *testing.F) {
	good := renamed()
	f.Add(uint32(300), []byte{0xff, 0xff, 0, 1}, uint32(0))
	f.Add(uint32(12), []byte("glyf"), uint32(1000))
	f.Fuzz(func(t *testing.T, at uint32, patch []byte, cut uint32) {
		b := bytes.Clone(good)
		if len(patch) > 0 {
			copy(b[int(at)%len(b):], patch)
		}
		if cut > 0 {
			b = b[:int(cut)%len(b)]
		}
		if len(b) > 6 {
			fixSums(b)
		}
		face, err := newFace(b)
		if err != nil {
			return
		}
		for r := rune(0); r < 0x600; r++ {
			if g, ok := face.Glyph(r); ok {
				face.Advance(g)
				face.Rune(g)
				face.table.outline(int(g))
			}
		}
	})
}
