package pdf

import (
	"bytes"
	"io"
	"iter"
	"runtime"
	"testing"
	"time"

	"cornerslip/fonts"
	"cornerslip/layout"
	shaping "cornerslip/layout/face"

	"github.com/go-pdf/fpdf"
)

// A stretch is words in one style.
type stretch struct {
	style layout.Style
	size  layout.Length
	text  string
}

// labelLines are a typical label, already broken into lines.
var labelLines = [][]stretch{
	{{0, 8 * pt, "VALDOURA FIELD STATION HERBARIUM"}},
	{{0, 9 * pt, "Plants of the Serra da Estrela, Portugal"}},
	{{layout.Italic, 11 * pt, "Cytisus striatus "}, {0, 11 * pt, "(Hill) Rothm. subsp. "}, {layout.Italic, 11 * pt, "eriocarpus"}},
	{{0, 11 * pt, "(Boiss. & Reut.) Rivas Mart."}},
	{{0, 8 * pt, "Det. M. Quental, November 2026"}},
	{{0, 9 * pt, "PORTUGAL. Guarda: Manteigas, left side of the glacial valley of the"}},
	{{0, 9 * pt, "Zêzere, 1.8 km SSW of the bridge at Caldas, above the forest track."}},
	{{0, 9 * pt, "40°21′14″ N, 7°33′48″ W (WGS 84, ±30 m). Alt. 1240–1260 m."}},
	{{0, 9 * pt, "Open scrub on granite scree, with "}, {layout.Italic, 9 * pt, "Erica australis"}, {0, 9 * pt, "."}},
	{{layout.Bold, 10 * pt, "I. Almeida 214"}, {0, 9 * pt, " 14 June 2026"}},
}

// label sets the lines above as typeset would: a text for each run.
func label(t testing.TB) *layout.Box {
	setter := shaping.New(fonts.Default())
	b := &layout.Box{
		Size: layout.Size{W: 105 * mm, H: 74 * mm},
		Ref:  layout.Ref{File: "trip.csv", Line: 14, Row: 12, Kind: "sheet", Key: "I. Almeida 214", Label: 1, Of: 1},
	}
	b.Marks = append(b.Marks, layout.Stroke{From: at(6*mm, 12*mm), To: at(99*mm, 12*mm), Width: pt / 2})
	for i, line := range labelLines {
		p := at(6*mm, layout.Length(8+6*i)*mm)
		for _, r := range line {
			w, err := setter.Word(r.text, r.style)
			if err != nil {
				t.Fatal(err)
			}
			var texts []layout.Text
			texts, p = w.Texts(nil, p, r.size, 0, 0)
			for _, text := range texts {
				b.Marks = append(b.Marks, text)
			}
		}
	}
	return b
}

// ganged yields n pages with the same four labels each.
func ganged(b *layout.Box, n int, see func(page int)) iter.Seq2[layout.Page, error] {
	return func(yield func(layout.Page, error) bool) {
		for i := range n {
			if see != nil {
				see(i)
			}
			p := layout.Page{Size: a4}
			for j := range 4 {
				p.Boxes = append(p.Boxes, layout.Placed{At: at(0, layout.Length(74*j)*mm), Box: b})
			}
			if !yield(p, nil) {
				return
			}
		}
	}
}

// plain writes the same words with fpdf alone, as one does who needs neither
// kerning nor exact places.
func plain(t testing.TB, n int) []byte {
	p := fpdf.New("P", "pt", "A4", "")
	p.SetCreationDate(time.Unix(0, 0))
	p.SetModificationDate(time.Unix(0, 0))
	p.SetCatalogSort(true)
	for style, name := range map[string]string{"": roman, "I": italic, "B": bold} {
		f, _ := fonts.Default().Lookup(name)
		p.AddUTF8FontFromBytes("S", style, f.TTF())
	}
	styles := map[layout.Style]string{0: "", layout.Italic: "I", layout.Bold: "B"}
	for range n {
		p.AddPage()
		for j := range 4 {
			for i, line := range labelLines {
				x := 17.0
				for _, r := range line {
					p.SetFont("S", styles[r.style], r.size.Pt())
					p.Text(x, float64(210*j+23+17*i), r.text)
					x += p.GetStringWidth(r.text)
				}
			}
		}
	}
	var b bytes.Buffer
	if err := p.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const benchPages = 500 // 2,000 labels

func BenchmarkWrite(b *testing.B) {
	box := label(b)
	var out bytes.Buffer
	if err := Write(&out, ganged(box, benchPages, nil), fonts.Default(), Options{}); err != nil {
		b.Fatal(err)
	}
	if n := bytes.Count(out.Bytes(), []byte("/Type /Page ")); n != benchPages {
		b.Fatalf("%d pages, want %d", n, benchPages)
	}
	b.SetBytes(int64(out.Len()))
	for b.Loop() {
		if err := Write(io.Discard, ganged(box, benchPages, nil), fonts.Default(), Options{}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(benchPages*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

func BenchmarkWriteOneWorker(b *testing.B) {
	box := label(b)
	for b.Loop() {
		if err := Write(io.Discard, ganged(box, benchPages, nil), fonts.Default(), Options{Workers: 1}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(benchPages*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

// BenchmarkPlain is what BenchmarkWrite is held against.
func BenchmarkPlain(b *testing.B) {
	if n := bytes.Count(plain(b, 3), []byte("/Type /Page\n")); n != 3 {
		b.Fatalf("%d pages, want 3", n)
	}
	for b.Loop() {
		plain(b, benchPages)
	}
	b.ReportMetric(benchPages*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

// BenchmarkOne is the reprint of a single label.
func BenchmarkOne(b *testing.B) {
	box := label(b)
	for b.Loop() {
		if err := Write(io.Discard, ganged(box, 1, nil), fonts.Default(), Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// TestMemory holds that what stays in memory does not grow with the run: 16
// bytes a page for the cross-reference table, and nothing else to speak of.
func TestMemory(t *testing.T) {
	box := label(t)
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	var early, late uint64
	const n = 4000
	err := Write(io.Discard, ganged(box, n, func(page int) {
		switch page {
		case n / 10:
			early = heap()
		case n - 1:
			late = heap()
		}
	}), fonts.Default(), Options{Spool: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	if late > early+1<<20 {
		t.Errorf("%d bytes in use after %d pages, %d after %d", early, n/10, late, n-1)
	}
	t.Logf("%.2f MB in use after %d pages, %.2f MB after %d", float64(early)/1e6, n/10, float64(late)/1e6, n-1)
}

// TestSize holds the file of many labels against plain fpdf's.
func TestSize(t *testing.T) {
	box := label(t)
	size := func(n int) int {
		var b bytes.Buffer
		if err := Write(&b, ganged(box, n, nil), fonts.Default(), Options{}); err != nil {
			t.Fatal(err)
		}
		return b.Len()
	}
	ours, theirs := size(101)-size(1), len(plain(t, 101))-len(plain(t, 1))
	if ours > theirs*3/2 {
		t.Errorf("a page takes %d bytes, plain fpdf's %d", ours/100, theirs/100)
	}
	t.Logf("a page takes %d bytes, plain fpdf's %d", ours/100, theirs/100)
}
