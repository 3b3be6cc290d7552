package pdf

import (
	"bytes"
	"iter"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/fonts"
	"cornerslip/layout"
)

const (
	roman  = "LiberationSerif"
	italic = "LiberationSerif-Italic"
	bold   = "LiberationSerif-Bold"
	mm     = layout.MM
	pt     = layout.Pt
)

var a4 = layout.Size{W: 210 * mm, H: 297 * mm}

func at(x, y layout.Length) layout.Point { return layout.Point{X: x, Y: y} }

// set sets s in a face by the font's own widths, a cluster for each rune; each
// position is rounded once.
func set(t testing.TB, face string, size layout.Length, p layout.Point, s string) layout.Text {
	t.Helper()
	f, ok := fonts.Default().Lookup(face)
	if !ok {
		t.Fatalf("there is no face %s", face)
	}
	text := layout.Text{At: p, Face: face, Size: size, S: s}
	if f.Italic {
		text.Style |= layout.Italic
	}
	if f.Bold {
		text.Style |= layout.Bold
	}
	units, pen := int64(0), layout.Length(0)
	for _, r := range s {
		g, ok := f.Glyph(r)
		if !ok {
			t.Fatalf("%s has no glyph for %U", face, r)
		}
		units += int64(f.Advance(g))
		next := size.MulDiv(units, int64(f.Metrics().UnitsPerEm))
		text.Clusters = append(text.Clusters, layout.Cluster{Bytes: len(string(r)), Adv: next - pen})
		pen = next
	}
	return text
}

// pull adds d to the advance of the i-th cluster.
func pull(t layout.Text, i int, d layout.Length) layout.Text {
	t.Clusters = append([]layout.Cluster(nil), t.Clusters...)
	t.Clusters[i].Adv += d
	return t
}

// each turns pages into a sequence.
func each(pages ...layout.Page) iter.Seq2[layout.Page, error] {
	return func(yield func(layout.Page, error) bool) {
		for _, p := range pages {
			if !yield(p, nil) {
				return
			}
		}
	}
}

func write(t testing.TB, o Options, pages ...layout.Page) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, each(pages...), fonts.Default(), o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// options are those of a real run.
func options() Options {
	return Options{
		Title: "Etiquetas de Março", Subject: "60 labels of the Valdoura Field Station Herbarium", Lang: "pt-PT",
		Creator: "cornerslip 1.0", Date: time.Date(2026, 6, 14, 9, 30, 0, 0, time.FixedZone("", 3600)),
	}
}

// keep writes a file for other programs to look at.
func keep(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "test.pdf")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// run runs a program and returns what it printed; it must succeed.
func run(t testing.TB, program string, args ...string) string {
	t.Helper()
	cmd := exec.Command(outside.Program(t, program), args...)
	var stderr strings.Builder
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s%s", program, strings.Join(args, " "), err, out, stderr.String())
	}
	if stderr.Len() > 0 {
		t.Fatalf("%s %s: %s", program, strings.Join(args, " "), stderr.String())
	}
	return string(out)
}

// sample is a page with every kind of mark and a box in each turn.
func sample(t testing.TB) layout.Page {
	kern := set(t, roman, 9*pt, at(5*mm, 22*mm), "AVATAR")
	kern = pull(pull(kern, 0, -9*pt*129/1000), 1, -9*pt*129/1000)
	caps := set(t, roman, 750*layout.CentiPt, at(60*mm, 22*mm), "FABACEAE")
	caps.Actual = "Fabaceae"
	for i := range caps.Clusters {
		caps = pull(caps, i, 750*layout.CentiPt*8/100)
	}
	chemical := set(t, roman, 9*pt, at(5*mm, 27*mm), "m2 of scrub")
	chemical.Clusters[1].Rise = 3 * pt
	box := &layout.Box{
		Size: layout.Size{W: 105 * mm, H: 74 * mm},
		Ref:  layout.Ref{File: "trip.csv", Line: 3, Row: 2, Kind: "sheet", Key: "I. Almeida 214", Label: 1, Of: 1},
		Marks: []layout.Mark{
			layout.Stroke{From: at(5*mm, 12*mm), To: at(100*mm, 12*mm), Width: mm / 10},
			set(t, italic, 11*pt, at(5*mm, 17*mm), "Cytisus striatus "),
			kern, caps, chemical,
			layout.Fill{Rect: layout.Rect{At: at(5*mm, 40*mm), Size: layout.Size{W: 20 * mm, H: 5 * mm}}, Grey: 200},
			layout.Bars{
				Rect: layout.Rect{At: at(5*mm, 60*mm), Size: layout.Size{W: 9 * layout.Dot300, H: 8 * mm}},
				Rects: []layout.Rect{
					{At: at(127, 127), Size: layout.Size{W: 3*layout.Dot300 - 254, H: 8*mm - 254}},
					{At: at(6*layout.Dot300+127, 127), Size: layout.Size{W: 3*layout.Dot300 - 254, H: 8*mm - 254}},
				},
				Symbology: "code128", S: "A", Module: 3 * layout.Dot300, Dot: layout.Dot300, Quiet: 30 * layout.Dot300, Modules: "101", Rows: 1,
			},
		},
	}
	return layout.Page{
		Size: a4,
		Trim: layout.Rect{At: at(5*mm, 5*mm), Size: layout.Size{W: 200 * mm, H: 287 * mm}},
		Boxes: []layout.Placed{
			{At: at(0, 0), Box: box},
			{At: at(120*mm, 0), Box: box, Turn: 1},
			{At: at(0, 120*mm), Box: box, Turn: 2},
			{At: at(120*mm, 120*mm), Box: box, Turn: 3},
		},
		Marks: []layout.Mark{
			layout.Stroke{From: at(0, 74*mm), To: at(5*mm, 74*mm), Width: pt / 4, Grey: 128, Dash: []layout.Length{mm, mm / 2}},
			set(t, bold, 7*pt, at(5*mm, 290*mm), "Sheet 1 × of 2"),
		},
	}
}
