package layout_test

import (
	"testing"
	"unicode/utf8"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
	"cornerslip/layout/typeset"
)

// typical is a label of about the usual length.
func typical(bars *label.Bars) *label.Content {
	run := func(s string) label.Run { return label.Run{Text: s} }
	it := func(s string) label.Run { return label.Run{Text: s, Style: label.Italic} }
	c := &label.Content{
		Kind: label.Sheet, Lang: "en", Continued: "label continued", OfWord: "of",
		Key: []label.Run{run("I. Almeida 214")},
		Blocks: []label.Block{
			{Role: label.House, Runs: []label.Run{{Text: "Valdoura Field Station Herbarium", Style: label.Capitals}}},
			{Role: label.Name, Runs: []label.Run{it("Cytisus striatus"), run(" (Hill) Rothm.")}, Right: []label.Run{{Text: "Fabaceae", Style: label.Capitals | label.Small}}},
			{Role: label.Place, Runs: []label.Run{run("PORTUGAL. Guarda: Manteigas, left side of the glacial valley of the Zêzere, 1.8 km SSW of the bridge at Caldas.")}},
			{Role: label.Coords, Runs: []label.Run{run("40°21′14″ N, 7°33′48″ W (WGS 84, ±30 m). Alt. 1240–1260 m.")}, Tight: true},
			{Role: label.Plant, Runs: []label.Run{run("Open scrub on granite scree, with "), it("Erica australis"), run(". Flowers deep yellow.")}},
			{Role: label.Collector, Runs: []label.Run{{Text: "I. Almeida 214", Style: label.Bold}}, Right: []label.Run{run("14 June 2026")}},
			{Role: label.Number, Runs: []label.Run{run("VDOURA-0004217")}},
		},
	}
	if bars != nil {
		c.Blocks = append(c.Blocks, label.Block{Role: label.Symbol, Bars: bars, Runs: []label.Run{run(bars.Text)}})
	}
	return c
}

// TestEncodedSize holds how much a kept label takes: a register of a million
// of them stays below 1.2 GB.
func TestEncodedSize(t *testing.T) {
	for _, c := range []struct {
		name string
		bars *label.Bars
		most int // for 320 characters
	}{
		{"words", nil, 1000},
		{"words and bars", &label.Bars{Symbology: "code128", Text: "VDOURA-0004217"}, 1200},
	} {
		boxes, _, err := typeset.New(face.New(fonts.Default())).Set(typical(c.bars), typeset.For(label.Sheet))
		if err != nil {
			t.Fatal(err)
		}
		if len(boxes) != 1 {
			t.Fatalf("%d labels, want 1", len(boxes))
		}
		chars, bytes := 0, 0
		for _, m := range boxes[0].Marks {
			if text, ok := m.(layout.Text); ok {
				chars += utf8.RuneCountInString(text.S)
				bytes += len(text.S)
			}
		}
		if chars < 300 || chars > 380 {
			t.Errorf("%d characters are not the usual number", chars)
		}
		n := len(layout.Encode(boxes[0]))
		if usual := n * 320 / chars; usual > c.most {
			t.Errorf("%s: %d bytes for 320 characters, want no more than %d", c.name, usual, c.most)
		}
		t.Logf("%s: %d bytes for %d characters, which alone take %d", c.name, n, chars, bytes)
	}
}

func BenchmarkEncode(b *testing.B) {
	boxes, _, err := typeset.New(face.New(fonts.Default())).Set(typical(nil), typeset.For(label.Sheet))
	if err != nil {
		b.Fatal(err)
	}
	p := layout.Encode(boxes[0])
	if _, err := layout.Decode(p); err != nil {
		b.Fatal(err)
	}
	b.Run("encode", func(b *testing.B) {
		for b.Loop() {
			layout.Encode(boxes[0])
		}
	})
	b.Run("decode", func(b *testing.B) {
		for b.Loop() {
			layout.Decode(p)
		}
	})
}
