package typeset

import (
	"strings"
	"testing"
	"time"

	"github.com/go-fonts/liberation/liberationserifregular"
	"github.com/go-pdf/fpdf"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
)

func BenchmarkSet(b *testing.B) {
	s := New(face.New(fonts.Default()))
	m := For(label.Sheet)
	c := mock()
	boxes, _, err := s.Set(c, m)
	if err != nil || len(boxes) != 1 || len(layout.Lines(boxes[0].Marks)) < 12 {
		b.Fatalf("the label is not set as it should be: %v", err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := s.Set(c, m); err != nil {
			b.Fatal(err)
		}
	}
}

// typical is the text of a label of 319 characters, the median of 300 real
// ones being 362.
const typical = "PORTUGAL. Guarda: Manteigas, left side of the glacial valley of the Zêzere, 1.8 km SSW of the bridge at Caldas, " +
	"above the forest track to Nave de Santo António. 40°21′14″ N, 7°33′48″ W (WGS 84, ±30 m). Alt. 1240–1260 m. Open scrub on granite scree, " +
	"with Erica australis. Shrub 1.6 m; flowers deep yellow, legumes densely woolly."

// BenchmarkAgainstSplitText sets a label of typical length and, in the same
// run, breaks the same text with fpdf's own SplitText and measures its lines
// with GetStringWidth, which kerns nothing, breaks greedily and places nothing.
// The metric is how often the one goes into the other.
func BenchmarkAgainstSplitText(b *testing.B) {
	c := &label.Content{Kind: label.Sheet, Blocks: []label.Block{{Role: label.Plant, Runs: []label.Run{{Text: typical}}}}}
	m := For(label.Sheet)
	s := New(face.New(fonts.Default()))
	boxes, _, err := s.Set(c, m)
	if err != nil || len(layout.Lines(boxes[0].Marks)) < 5 {
		b.Fatalf("the label is not set as it should be: %v", err)
	}
	p := fpdf.New("P", "mm", "A4", "")
	p.AddUTF8FontFromBytes("S", "", liberationserifregular.TTF)
	p.AddPage()
	p.SetFont("S", "", 9)
	measure := (m.Width - m.Left - m.Right).MM()
	split := func() (lines int) {
		for _, l := range p.SplitText(typical, measure) {
			if p.GetStringWidth(strings.TrimSpace(l)) > 0 {
				lines++
			}
		}
		return lines
	}
	if split() < 4 {
		b.Fatal("fpdf breaks nothing")
	}
	b.ReportAllocs()
	var ours, theirs time.Duration
	for b.Loop() {
		t := time.Now()
		if _, _, err := s.Set(c, m); err != nil {
			b.Fatal(err)
		}
		u := time.Now()
		split()
		ours += u.Sub(t)
		theirs += time.Since(u)
	}
	b.ReportMetric(float64(ours.Nanoseconds())/float64(b.N), "ns/label")
	b.ReportMetric(float64(ours)/float64(theirs), "×fpdf")
}
