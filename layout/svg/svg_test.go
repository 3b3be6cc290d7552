package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"io"
	"os"
	"regexp"
	"strings"
	"testing"

	"cornerslip/fonts"
	"cornerslip/layout"
	"cornerslip/layout/face"

	"github.com/go-text/typesetting/font"
	"github.com/google/go-cmp/cmp"
)

const (
	roman = "LiberationSerif"
	mm1   = layout.MM
	pt    = layout.Pt
)

func at(x, y layout.Length) layout.Point { return layout.Point{X: x, Y: y} }

// shaped sets words as typeset does.
func shaped(t testing.TB, style layout.Style, size layout.Length, p layout.Point, s string) []layout.Mark {
	t.Helper()
	w, err := face.New(fonts.Default()).Word(s, style)
	if err != nil {
		t.Fatal(err)
	}
	texts, _ := w.Texts(nil, p, size, 0, 0)
	var marks []layout.Mark
	for _, text := range texts {
		marks = append(marks, text)
	}
	return marks
}

func sample(t testing.TB) layout.Page {
	marks := []layout.Mark{
		layout.Stroke{From: at(5*mm1, 5*mm1), To: at(55*mm1, 5*mm1), Width: pt / 2},
		layout.Stroke{From: at(5*mm1, 30*mm1), To: at(55*mm1, 30*mm1), Width: pt, Grey: 128, Dash: []layout.Length{mm1, mm1 / 2}},
		layout.Fill{Rect: layout.Rect{At: at(50*mm1, 8*mm1), Size: layout.Size{W: 4 * mm1, H: 2 * mm1}}, Grey: 200},
		layout.Bars{
			Rect:      layout.Rect{At: at(5*mm1, 32*mm1), Size: layout.Size{W: 9 * layout.Dot300, H: 4 * mm1}},
			Rects:     []layout.Rect{{At: at(127, 127), Size: layout.Size{W: 8890, H: 140000}}, {At: at(18415, 127), Size: layout.Size{W: 8890, H: 140000}}},
			Symbology: "code128", S: `"A" & <B>`, Module: 3 * layout.Dot300, Dot: layout.Dot300, Modules: "101", Rows: 1,
		},
	}
	marks = append(marks, shaped(t, layout.Italic, 11*pt, at(5*mm1, 10*mm1), "Cytisus striatus")...)
	marks = append(marks, shaped(t, 0, 9*pt, at(5*mm1, 15*mm1), "AVATAR & <São> 5′")...)
	marks = append(marks, shaped(t, layout.Bold, 9*pt, at(5*mm1, 20*mm1), "I. Almeida 214")...)
	marks = append(marks, shaped(t, 0, 9*pt, at(5*mm1, 25*mm1), "Ỹ x́q̄ ἄν")...)
	caps := shaped(t, 0, 9*pt, at(35*mm1, 15*mm1), "ROSACEAE")[0].(layout.Text)
	caps.Actual, caps.Grey = "Rosaceae", 64
	marks = append(marks, caps)
	raised := shaped(t, 0, 9*pt, at(35*mm1, 20*mm1), "m2 ha")[0].(layout.Text)
	raised.Clusters = append([]layout.Cluster(nil), raised.Clusters...)
	raised.Clusters[1].Rise = 3 * pt
	marks = append(marks, raised)
	box := &layout.Box{Size: layout.Size{W: 60 * mm1, H: 40 * mm1}, Marks: marks}
	return layout.Page{
		Size: layout.Size{W: 120 * mm1, H: 130 * mm1},
		Boxes: []layout.Placed{
			{Box: box}, {At: at(65*mm1, 0), Box: box, Turn: 1}, {At: at(0, 65*mm1), Box: box, Turn: 2}, {At: at(65*mm1, 65*mm1), Box: box, Turn: 3},
		},
		Marks: []layout.Mark{layout.Stroke{To: at(5*mm1, 0), Width: pt / 4}},
	}
}

func picture(t testing.TB, p layout.Page, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p, fonts.Default(), o); err != nil {
		t.Fatal(err)
	}
	// Every XML reader must take it.
	for d := xml.NewDecoder(bytes.NewReader(b.Bytes())); ; {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	for name, o := range map[string]Options{
		"linked":   {FontURL: "/fonts/", Title: "Proof of <trip.csv>", Lang: "pt-PT"},
		"outlines": {Fonts: Outlines},
	} {
		p := sample(t)
		if name == "outlines" {
			p.Boxes = p.Boxes[:1]
		}
		got := picture(t, p, o)
		if got != picture(t, p, o) {
			t.Errorf("%s: not the same twice", name)
		}
		golden := "testdata/" + name + ".svg"
		if os.Getenv("UPDATE") == "1" {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(string(want), got); d != "" {
			t.Errorf("%s differs; look at the change and run with UPDATE=1\n%s", golden, d)
		}
	}
}

// TestText holds that an XML reader finds the words in order.
func TestText(t *testing.T) {
	p := sample(t)
	p.Boxes = p.Boxes[:1]
	var got strings.Builder
	for d := xml.NewDecoder(strings.NewReader(picture(t, p, Options{}))); ; {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			if tok.Name.Local == "style" {
				d.Skip()
			}
		case xml.CharData:
			got.WriteString(strings.ReplaceAll(string(tok), "\n", ""))
		}
	}
	if want := "Cytisus striatusAVATAR & <São> 5′I. Almeida 214Ỹ x́q̄ ἄνROSACEAEm2 ha"; got.String() != want {
		t.Errorf("got  %q\nwant %q", got.String(), want)
	}
}

// TestEmbedded reads the fonts out of a picture and holds them against the
// whole ones.
func TestEmbedded(t *testing.T) {
	p := sample(t)
	svg := picture(t, p, Options{Fonts: Embedded})
	found := regexp.MustCompile(`@font-face\{font-family:'(face-[^']*)'.*base64,([^']*)'`).FindAllStringSubmatch(svg, -1)
	if len(found) != 3 {
		t.Fatalf("%d faces, want 3", len(found))
	}
	for _, m := range found {
		if !strings.Contains(svg, `<text class="`+m[1]+`"`) {
			t.Errorf("no text has the class %s", m[1])
		}
		ttf, err := base64.StdEncoding.DecodeString(m[2])
		if err != nil {
			t.Fatal(err)
		}
		if len(ttf) > 60_000 {
			t.Errorf("%s takes %d bytes", m[1], len(ttf))
		}
		small, err := font.ParseTTF(bytes.NewReader(ttf))
		if err != nil {
			t.Fatal(err)
		}
		name := regexp.MustCompile(`^face-(.*)-[0-9a-f]{12}$`).FindStringSubmatch(m[1])[1]
		ff, ok := fonts.Default().Lookup(name)
		if !ok {
			t.Fatalf("no face %s", name)
		}
		whole, err := font.ParseTTF(bytes.NewReader(ff.TTF()))
		if err != nil {
			t.Fatal(err)
		}
		if small.Upem() != whole.Upem() {
			t.Errorf("%s: %d units to the em, want %d", name, small.Upem(), whole.Upem())
		}
		n := 0
		for it := small.Cmap.Iter(); it.Next(); n++ {
			r, g := it.Char()
			want, _ := whole.NominalGlyph(r)
			if g != want || small.HorizontalAdvance(g) != whole.HorizontalAdvance(g) {
				t.Errorf("%s: %q is glyph %d, %v wide", name, r, g, small.HorizontalAdvance(g))
			}
			if d := cmp.Diff(whole.GlyphData(g), small.GlyphData(g)); d != "" {
				t.Errorf("%s: %q has another outline\n%s", name, r, d)
			}
		}
		if n < 5 {
			t.Errorf("%s has %d characters", name, n)
		}
	}
}

func TestErrors(t *testing.T) {
	good := shaped(t, 0, 9*pt, at(0, 0), "good")[0].(layout.Text)
	one := func(s string) layout.Text {
		return layout.Text{Face: roman, Size: pt, S: s, Clusters: []layout.Cluster{{Bytes: len(s), Adv: pt}}}
	}
	other := good
	other.Face = "Fraktur"
	for _, c := range []struct {
		mark layout.Mark
		want string
	}{
		{other, `text "good": there is no face "Fraktur"`},
		{one("植"), `text "植": face LiberationSerif has no glyph for U+690D '植'`},
		{one("\U0001F33F"), `has no glyph for U+1F33F`},
		{one("a\x00"), "the control character U+0000 cannot be drawn"},
		{one("\xff"), "not valid UTF-8"},
		{&good, "a mark of the unknown type *layout.Text"},
	} {
		for _, mode := range []Mode{Linked, Embedded, Outlines} {
			box := &layout.Box{Marks: []layout.Mark{c.mark}, Ref: layout.Ref{File: "trip.csv", Line: 14, Key: "I. Almeida 214"}}
			var b bytes.Buffer
			err := Write(&b, layout.Page{Size: layout.Size{W: mm1, H: mm1}, Boxes: []layout.Placed{{Box: box}}}, fonts.Default(), Options{Fonts: mode})
			if err == nil || !strings.HasPrefix(err.Error(), "trip.csv:14: I. Almeida 214: ") || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want %s", err, c.want)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes were written", b.Len())
			}
		}
	}
}
