package face

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"cornerslip/cmd/outside"
	"cornerslip/fonts"
	"cornerslip/layout"

	"golang.org/x/text/unicode/norm"
)

// TestFaces checks from which face each part of a text comes, and what is
// drawn and meant.
func TestFaces(t *testing.T) {
	s := New(fonts.Default())
	const lib, dej = "LiberationSerif", "DejaVuSerif"
	for _, c := range []struct {
		text  string
		style layout.Style
		want  [][3]string // face, drawn, meant if that differs
	}{
		{"cafe\u0301", 0, [][3]string{{lib, "café", ""}}},
		{"a\u0302\u0323", 0, [][3]string{{lib, "ậ", ""}}},
		{"x\u0302", layout.Italic, [][3]string{{lib + "-Italic", "x\u0302", ""}}},
		{"i\u0307\u0301", 0, [][3]string{{lib, "ı\u0307\u0301", "i\u0307\u0301"}}}, // the i loses its own dot
		{"j\u0304", 0, [][3]string{{lib, "ȷ\u0304", "j\u0304"}}},
		{"i\u0323", 0, [][3]string{{lib, "ị", ""}}},
		{"a☿b", 0, [][3]string{{lib, "a", ""}, {dej, "☿", ""}, {lib, "b", ""}}},
		{"☿\u0302", 0, [][3]string{{dej, "☿\u0302", ""}}}, // the accent goes with its sign
		{"☿", layout.Bold, [][3]string{{dej + "-Bold", "☿", ""}}},
		{"x\u2011y", 0, [][3]string{{lib, "x\u2010y", "x\u2011y"}}},
		{"5\u00a0km", 0, [][3]string{{lib, "5\u00a0km", ""}}},
		{"5\u202fkm", 0, [][3]string{{lib, "5\u202fkm", ""}}},
		{"a\tb\nc", 0, [][3]string{{lib, "a b c", ""}}},
		{"mon\u00adte", 0, [][3]string{{lib, "monte", ""}}},
		{"♂\ufe0f", 0, [][3]string{{lib, "♂", ""}}},
		{"a\u200bb\u200cc\u200dd\u2060e\ufefff\u200eg", 0, [][3]string{{lib, "abcdefg", ""}}},
		{"fi ffl", 0, [][3]string{{lib, "fi ffl", ""}}}, // no ligature
		{"Ångström \u212b", 0, [][3]string{{lib, "Ångström Å", ""}}},
		{"1⁄2", 0, [][3]string{{lib, "1⁄2", ""}}},
		{"αΩЖ", 0, [][3]string{{lib, "αΩЖ", ""}}},
		{"ქართული", 0, [][3]string{{dej, "ქართული", ""}}},
		{"\ufffd", 0, [][3]string{{dej, "\ufffd", ""}}},
		{"", 0, nil},
		{"\u00ad", 0, nil},
	} {
		var got [][3]string
		for _, m := range texts(word(t, s, c.text, c.style), em, 0) {
			got = append(got, [3]string{m.Face, m.S, m.Actual})
			if m.Style != c.style {
				t.Errorf("%q: style %d", c.text, m.Style)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: got %+q, want %+q", c.text, got, c.want)
		}
	}
}

func TestRefusals(t *testing.T) {
	s := New(fonts.Default())
	for _, c := range []struct{ text, want string }{
		{"⚥", `no font has the character "⚥" (U+26A5)`},
		{"日本", `no font has the character "日" (U+65E5)`},
		{"ქ\u0363", "no font has all of \"ქ\u0363\" (U+10E5 U+0363)"},
		{"a😀", `the character "😀" (U+1F600) cannot be printed: it lies beyond U+FFFF`},
		{"\U0002000b", "(U+2000B) cannot be printed"},
		{"\U0010ffff", "(U+10FFFF) cannot be printed"},
		{"\ue123", "U+E123 is a private use character"},
		{"\x00", "U+0000 is a control character"},
		{"a\x1bb", "U+001B is a control character"},
		{"Pe\xf1alara", "the byte 0xF1 is not UTF-8"},
		{"\uffff", "no font has the character"},
		{"葛\ufe00", "U+FE00 chooses a form"},
		{"ירושלים", "Hebrew script cannot be set correctly"},
		{"القدس", "Arabic script"},
		{"٣", "Arabic script"},
		{"हिमालय", "Devanagari script"},
		{"กรุงเทพ", "Thai script"},
		{"ဗမာ", "Myanmar script"},
		{"ខ្មែរ", "Khmer script"},
		{"தமிழ்", "Tamil script"},
		{"བོད", "Tibetan script"},
		{"ᠮᠣᠩᠭᠣᠯ", "Mongolian script"},
		{"\u1112\u119e\u11ab", "old Hangul script"},
		{"abc\u202edef", "U+202E turns text from right to left"},
		{"abc\u200f", "U+200F turns text from right to left"},
	} {
		w, err := s.Word(c.text, 0)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, error %v, want %q", c.text, w, err, c.want)
			continue
		}
		var missing *MissingError
		var script *ScriptError
		switch {
		case errors.As(err, &missing):
			if missing.Text != c.text || missing.Rune != utf8.RuneError && !strings.ContainsRune(missing.Cluster, missing.Rune) {
				t.Errorf("%q: %+v", c.text, missing)
			}
		case errors.As(err, &script):
			if script.Text != c.text || !strings.ContainsRune(c.text, script.Rune) {
				t.Errorf("%q: %+v", c.text, script)
			}
		default:
			t.Errorf("%q: error of type %T", c.text, err)
		}
	}
}

// TestSpaces checks the widths of spaces in a face that lacks them (the
// Unicode Standard 15, table 6-2).
func TestSpaces(t *testing.T) {
	set, err := fonts.Default().With(outside.File(t, droid))
	if err != nil {
		t.Fatal(err)
	}
	bare := set.Faces()[8] // has ASCII, and no space but U+0020 and U+3000
	unit := int32(bare.Metrics().UnitsPerEm)
	for r, want := range map[rune]int32{
		0x2002: unit / 2, 0x2003: unit, 0x2004: unit / 3, 0x2005: unit / 4, 0x2006: unit / 6, 0x2009: unit / 5, 0x202f: unit / 5,
		0x00a0: advance(bare, ' ', 0), 0x205f: unit * 4 / 18,
	} {
		if _, ok := bare.Glyph(r); ok {
			continue
		}
		got, ok := stand(bare, r)
		if !ok || got != ' ' || breadth(bare, r) != want || want <= 0 {
			t.Errorf("U+%04X: drawn as %q %v, %d wide, want %d", r, got, ok, breadth(bare, r), want)
		}
	}
	s := New(fonts.Default())
	if thin, space := word(t, s, "\u202f", 0).Width(em, 0), s.Space(0, em); thin <= 0 || thin >= space {
		t.Errorf("the narrow no-break space is %d wide, a space %d", thin, space)
	}
	if s.Space(0, em) != 512 { // hmtx of Liberation Serif
		t.Errorf("a space is %d wide", s.Space(0, em))
	}
}

const droid = "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf"

// TestHan sets Han and Kana with a fallback face of the system, and Hangul
// with another.
func TestHan(t *testing.T) {
	set, err := fonts.Default().With(outside.File(t, droid))
	if err != nil {
		t.Fatal(err)
	}
	s := New(set)
	for _, text := range []string{"植物標本", "きのこ", "カガミ", "か\u3099"} {
		for _, style := range styles {
			ts := texts(word(t, s, text, style), em, 0)
			if len(ts) != 1 || ts[0].Face != "DroidSansFallback" || ts[0].Style != style {
				t.Fatalf("%q: %+v", text, ts)
			}
			if want := norm.NFC.String(text); ts[0].S != want {
				t.Errorf("%q: drawn %q", text, ts[0].S)
			}
			for _, c := range ts[0].Clusters {
				if c.Adv != em { // each fills the em square
					t.Errorf("%q: %v", text, ts[0].Clusters)
				}
			}
		}
	}
	if ts := texts(word(t, s, "Aster 紫菀 L.", 0), em, 0); len(ts) != 3 {
		t.Errorf("mixed text in %d pieces", len(ts))
	}
	set, err = fonts.Default().With(outside.File(t, "/usr/share/fonts-droid-fallback/truetype/DroidSansFallback.ttf"))
	if err != nil {
		t.Fatal(err)
	}
	s = New(set)
	a, b := word(t, s, "한라산", 0), word(t, s, norm.NFD.String("한라산"), 0)
	if ta, tb := texts(a, em, 0), texts(b, em, 0); len(ta) != 1 || ta[0].S != "한라산" || len(ta[0].Clusters) != 3 || tb[0].S != ta[0].S {
		t.Errorf("Hangul: %+v, from its letters %+v", ta, tb)
	}
}

func TestCoverage(t *testing.T) {
	s := New(fonts.Default())
	var got []string
	for _, c := range s.Coverage("e\u0301☿\u00ad日ש😀\xff", layout.Italic) {
		if c.Err != nil {
			got = append(got, c.Cluster+": "+c.Err.Error())
		} else {
			got = append(got, c.Cluster+": "+c.Face.Name)
		}
	}
	want := []string{
		": the byte 0xFF is not UTF-8",
		"é: LiberationSerif-Italic", "☿: DejaVuSerif-Italic",
		`日: no font has the character "日" (U+65E5)`,
		`ש: Hebrew script cannot be set correctly ("ש", U+05E9)`,
		`😀: the character "😀" (U+1F600) cannot be printed: it lies beyond U+FFFF`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// TestSystemFaces shapes in fonts of other makers: whatever is drawn is drawn
// by a glyph that its code point names.
func TestSystemFaces(t *testing.T) {
	paths, _ := filepath.Glob("/usr/share/fonts/truetype/*/*.ttf")
	if len(paths) == 0 {
		outside.File(t, droid)
	}
	for _, path := range paths {
		set, err := fonts.Default().With(path)
		if err != nil {
			t.Logf("%v", err)
			continue
		}
		f := set.Faces()[len(set.Faces())-1]
		s := New(set)
		sh := s.shaper()
		for _, text := range []string{"AVATAR fi ffl To", "x\u0302 ậ q\u0304 ŋ\u030a е\u0301", "植物 きのこ", "1⁄2", "ქართული"} {
			if !covers(f, text) {
				continue
			}
			p, err := s.piece(sh, f, text, text)
			if err != nil {
				t.Errorf("%s: %q: %v", path, text, err)
				continue
			}
			for _, r := range p.text {
				if _, ok := f.Glyph(r); !ok {
					t.Errorf("%s: %q is drawn by U+%04X, which has no glyph", path, text, r)
				}
			}
		}
	}
}
