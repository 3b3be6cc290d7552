package text

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"math/rand/v2"
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"cornerslip/fonts"
	"cornerslip/layout"
	"cornerslip/layout/face"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/text/unicode/norm"
	eastasian "golang.org/x/text/width"
)

const (
	mm = layout.MM
	pt = layout.Pt
)

func at(x, y layout.Length) layout.Point { return layout.Point{X: x, Y: y} }

// A piece is words in one style.
type piece struct {
	style layout.Style
	size  layout.Length
	text  string
}

// line sets pieces one after the other from x, or up to x where it is below 0.
func line(t testing.TB, x, y layout.Length, pieces ...piece) (marks []layout.Mark) {
	t.Helper()
	setter := face.New(fonts.Default())
	var texts []layout.Text
	p := at(max(x, 0), y)
	for _, c := range pieces {
		w, err := setter.Word(c.text, c.style)
		if err != nil {
			t.Fatal(err)
		}
		texts, p = w.Texts(texts, p, c.size, 0, 0)
	}
	for _, text := range texts {
		var m layout.Mark = text
		if x < 0 {
			m = text.Shifted(at(-x-p.X, 0))
		}
		marks = append(marks, m)
	}
	return marks
}

// sheet is a label like those that are printed.
func sheet(t testing.TB) *layout.Box {
	b := &layout.Box{Size: layout.Size{W: 105 * mm, H: 74 * mm}, Ref: layout.Ref{File: "trip.csv", Line: 3, Row: 2, Kind: "sheet", Key: "I. Almeida 214"}}
	add := func(marks []layout.Mark) { b.Marks = append(b.Marks, marks...) }
	centred := func(y layout.Length, c piece) {
		marks := line(t, 0, y, c)
		w := layout.Length(0)
		for _, m := range marks {
			w += m.(layout.Text).Width()
		}
		add(line(t, (105*mm-w)/2, y, c))
	}
	const i, bold = layout.Italic, layout.Bold
	centred(8*mm, piece{0, 8 * pt, "VALDOURA FIELD STATION HERBARIUM"})
	centred(12*mm, piece{0, 9 * pt, "Plants of the Serra da Estrela, Portugal"})
	add([]layout.Mark{layout.Stroke{From: at(6*mm, 15*mm), To: at(99*mm, 15*mm), Width: pt / 2}})
	add(line(t, 6*mm, 20*mm, piece{i, 11 * pt, "Cytisus striatus "}, piece{0, 11 * pt, "(Hill) Rothm. subsp. "}, piece{i, 11 * pt, "eriocarpus"}))
	add(line(t, -99*mm, 20*mm, piece{0, 7 * pt, "FABACEAE"}))
	add(line(t, 6*mm, 24*mm, piece{0, 9 * pt, "Det. M. Quental, November 2026"}))
	add(line(t, 6*mm, 32*mm, piece{0, 9 * pt, "PORTUGAL. Guarda: Manteigas, left side of the glacial valley of the"}))
	add(line(t, 6*mm, 36*mm, piece{0, 9 * pt, "Zêzere, 1.8 km SSW of the bridge at Caldas."}))
	add(line(t, 6*mm, 40*mm, piece{0, 9 * pt, "40°21′14″ N, 7°33′48″ W (WGS 84, ±30 m). Alt. 1240–1260 m."}))
	add(line(t, 6*mm, 60*mm, piece{bold, 10 * pt, "I. Almeida 214"}))
	add(line(t, -99*mm, 60*mm, piece{0, 9 * pt, "14 June 2026"}))
	var rects []layout.Rect
	const modules = "110100100001101000110010110001000101100010001010110111011101101111011101101"
	for k := range modules {
		if modules[k] == '1' {
			rects = append(rects, layout.Rect{At: at(layout.Length(k)*3*layout.Dot300, 0), Size: layout.Size{W: 3 * layout.Dot300, H: 6 * mm}})
		}
	}
	add([]layout.Mark{layout.Bars{
		Rect: layout.Rect{At: at(8*mm, 63*mm), Size: layout.Size{W: layout.Length(len(modules)) * 3 * layout.Dot300, H: 6 * mm}}, Rects: rects,
		Symbology: "code128", S: "VDOURA0004217", Module: 3 * layout.Dot300, Dot: layout.Dot300, Modules: modules, Rows: 1,
	}})
	add(line(t, 45*mm, 68*mm, piece{0, 9 * pt, "VDOURA 0004217"}))
	return b
}

// sticker has bars and no words, and words that are wider than on paper.
func sticker(t testing.TB) *layout.Box {
	b := &layout.Box{Size: layout.Size{W: 50 * mm, H: 25 * mm}}
	b.Marks = append(b.Marks, line(t, 3*mm, 5*mm, piece{0, 6 * pt, "Herbário da Estação de Campo de Valdoura, ill. fil."})...)
	b.Marks = append(b.Marks, layout.Bars{
		Rect:      layout.Rect{At: at(5*mm, 8*mm), Size: layout.Size{W: 9 * mm, H: 9 * mm}},
		Rects:     []layout.Rect{{Size: layout.Size{W: mm, H: mm}}},
		Symbology: "datamatrix", S: "VDOURA 0004217", Modules: "101101011", Rows: 3,
	})
	return b
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		file string
		box  *layout.Box
		o    Options
	}{
		{"sheet.txt", sheet(t), Options{}},
		{"sheet-styled.txt", sheet(t), Options{Styled: true}},
		{"sheet-100.txt", sheet(t), Options{Columns: 100}},
		{"sheet-40.txt", sheet(t), Options{Columns: 40}},
		{"sticker.txt", sticker(t), Options{}},
		{"empty.txt", &layout.Box{Size: layout.Size{W: 20 * mm, H: 10 * mm}}, Options{}},
	} {
		var got bytes.Buffer
		if err := Write(&got, c.box, c.o); err != nil {
			t.Fatal(err)
		}
		golden := "testdata/" + c.file
		if os.Getenv("UPDATE") == "1" {
			if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(string(want), got.String()); d != "" {
			t.Errorf("%s differs; look at the change and run with UPDATE=1\n%s", golden, d)
		}
		even(t, got.String())
	}
}

var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

// even holds that all lines of a frame are equally wide.
func even(t *testing.T, s string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(escapes.ReplaceAllString(s, ""), "\n"), "\n")
	for _, l := range lines {
		if width(l) != width(lines[0]) {
			t.Errorf("a line is %d columns wide, the frame %d: %s", width(l), width(lines[0]), l)
		}
	}
}

func TestStyled(t *testing.T) {
	var plain, styled bytes.Buffer
	if err := Write(&plain, sheet(t), Options{}); err != nil {
		t.Fatal(err)
	}
	if err := Write(&styled, sheet(t), Options{Styled: true}); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(plain.String(), "\x1b") {
		t.Error("escape sequences in plain text")
	}
	if escapes.ReplaceAllString(styled.String(), "") != plain.String() {
		t.Error("the styled label has other words")
	}
	for _, want := range []string{"\x1b[3mCytisus striatus \x1b[0m(Hill)", "\x1b[3meriocarpus\x1b[0m", "\x1b[1mI. Almeida 214\x1b[0m"} {
		if !strings.Contains(styled.String(), want) {
			t.Errorf("no %q", want)
		}
	}
}

// TestNothingLost draws words at random places, over each other too, and finds
// every one of them.
func TestNothingLost(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		b := &layout.Box{Size: layout.Size{W: layout.Length(20+rnd.IntN(100)) * mm, H: layout.Length(20+rnd.IntN(60)) * mm}}
		var words []string
		for i := range 1 + rnd.IntN(12) {
			word := strings.Repeat(string(rune('a'+i)), 1+rnd.IntN(30))
			words = append(words, word)
			text := layout.Text{Face: "x", Size: layout.Length(6+rnd.IntN(6)) * pt, S: word,
				At: at(layout.Length(rnd.IntN(120)-10)*mm, layout.Length(rnd.IntN(70))*mm)}
			for range word {
				text.Clusters = append(text.Clusters, layout.Cluster{Bytes: 1, Adv: text.Size / 2})
			}
			b.Marks = append(b.Marks, text)
		}
		var got bytes.Buffer
		if err := Write(&got, b, Options{Columns: rnd.IntN(120)}); err != nil {
			t.Fatal(err)
		}
		even(t, got.String())
		found := strings.FieldsFunc(got.String(), func(r rune) bool { return !unicode.IsLetter(r) })
		for _, w := range words {
			n := 0
			for _, f := range found {
				if f == w {
					n++
				}
			}
			if n != 1 {
				t.Fatalf("%q is there %d times:\n%s", w, n, got.String())
			}
		}
		if len(found) != len(words) {
			t.Fatalf("%d words, want %d:\n%s", len(found), len(words), got.String())
		}
	}
}

func TestErrors(t *testing.T) {
	b := &layout.Box{Size: layout.Size{W: mm, H: mm}, Ref: layout.Ref{File: "trip.csv", Line: 14, Key: "I. Almeida 214"}}
	b.Marks = []layout.Mark{layout.Text{Face: "x", Size: pt, S: "a\x1b[2J", Clusters: []layout.Cluster{{Bytes: 5}}}}
	var out bytes.Buffer
	err := Write(&out, b, Options{})
	if err == nil || !strings.HasPrefix(err.Error(), "trip.csv:14: I. Almeida 214: ") || !strings.Contains(err.Error(), "control character U+001B") {
		t.Errorf("got %v", err)
	}
	if out.Len() > 0 {
		t.Errorf("%d bytes were written", out.Len())
	}
	full := errors.New("full")
	if err := Write(failing{full}, sheet(t), Options{}); !errors.Is(err, full) {
		t.Errorf("got %v", err)
	}
}

// FuzzWrite draws boxes that are wrong in every way that their encoding can
// say: it ends, without a panic, and the frame is even.
func FuzzWrite(f *testing.F) {
	for _, b := range []*layout.Box{sheet(f), sticker(f)} {
		p := layout.Encode(b)
		f.Add(p[2:len(p)-4], 40)
	}
	f.Fuzz(func(t *testing.T, body []byte, columns int) {
		p := append([]byte{0xCB, 1}, body...)
		p = binary.LittleEndian.AppendUint32(p, crc32.Checksum(p, crc32.MakeTable(crc32.Castagnoli)))
		b, err := layout.Decode(p)
		if err != nil {
			return
		}
		var out bytes.Buffer
		if Write(&out, b, Options{Columns: columns, Styled: true}) == nil {
			even(t, out.String())
		}
	})
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// TestWide holds our table of wide characters against Unicode's, as
// golang.org/x/text has it: every assigned letter that a face could have.
func TestWide(t *testing.T) {
	checked := 0
	for r := rune(0x20); r <= 0xFFFF; r++ {
		if !unicode.IsLetter(r) && !unicode.IsPunct(r) && !unicode.IsNumber(r) || !norm.NFC.IsNormalString(string(r)) || !utf8.ValidRune(r) {
			continue
		}
		k := eastasian.LookupRune(r).Kind()
		if want := k == eastasian.EastAsianWide || k == eastasian.EastAsianFullwidth; wide(r) != want {
			t.Errorf("%U %q: wide is %v", r, r, wide(r))
		}
		checked++
	}
	if checked < 40_000 {
		t.Errorf("only %d characters were checked", checked)
	}
}
