package face

import (
	"strings"
	"testing"

	"cornerslip/fonts"
	"cornerslip/layout"
)

// typical is the words of a label of usual length, by style.
var typical = []struct {
	style layout.Style
	text  string
}{
	{layout.Bold, "Herbário da Estação de Campo de Valdoura"},
	{0, "Plants of the Serra da Estrela"},
	{layout.Italic, "Quercus pyrenaica"},
	{0, "Willd. FAGACEAE det. I. Almeida, 12.vi.1987"},
	{0, "Portugal: Beira Alta: Guarda, Manteigas, vale do Zêzere, 2,3 km a sul da vila, margem esquerda do ribeiro, em encosta xistosa"},
	{0, "40°23′41″ N 7°32′18″ W (WGS 84, ±30 m), 1 240 m"},
	{0, "Carvalhal aberto com Cytisus e Erica, solo granítico. Árvore de 8 m; folhas pubescentes"},
}

func BenchmarkWord(b *testing.B) {
	s := New(fonts.Default())
	if w, err := s.Word("AVATAR", 0); err != nil || w.Width(2048, 0) >= 2048*4 {
		b.Fatal("AVATAR is not set as it should be")
	}
	n := 0
	var words [][]string
	for _, t := range typical {
		words = append(words, strings.Fields(t.text))
		n += len(t.text)
	}
	b.Run("warm", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for i, t := range typical {
				for _, w := range words[i] {
					if _, err := s.Word(w, t.style); err != nil {
						b.Fatal(err)
					}
				}
			}
		}
	})
	b.Run("texts", func(b *testing.B) {
		b.ReportAllocs()
		var dst []layout.Text
		for b.Loop() {
			dst = dst[:0]
			at := layout.Point{}
			for i, t := range typical {
				for _, w := range words[i] {
					w, _ := s.Word(w, t.style)
					dst, at = w.Texts(dst, at, layout.Points(9), 0, 0)
				}
			}
		}
	})
	b.Run("cold", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for i, t := range typical {
				for _, w := range words[i] {
					if _, err := s.shape(w, t.style); err != nil {
						b.Fatal(err)
					}
				}
			}
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/byte")
	})
}
