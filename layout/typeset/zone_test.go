package typeset

import (
	"math/rand/v2"
	"strings"
	"testing"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
)

// heights returns where the line that holds a word stands, for each word.
func heights(t *testing.T, b *layout.Box, words ...string) []layout.Length {
	t.Helper()
	var out []layout.Length
	for _, w := range words {
		at := layout.Length(-1)
		for _, m := range b.Marks {
			if text, ok := m.(layout.Text); ok && strings.Contains(text.S, w) {
				at = text.At.Y
			}
		}
		if at < 0 {
			t.Fatalf("%q is nowhere", w)
		}
		out = append(out, at)
	}
	return out
}

// Blocks stand in the zone that the house wants.
func TestZones(t *testing.T) {
	s := New(face.New(fonts.Default()))
	run := func(text string) []label.Run { return []label.Run{{Text: text}} }
	c := &label.Content{Kind: label.Sheet, Blocks: []label.Block{
		{Role: label.Number, Runs: run("number"), Zone: label.InHead},
		{Role: label.Collector, Runs: run("collector"), Zone: label.InBody},
		{Role: label.Name, Runs: run("name")},
		{Role: label.Team, Runs: run("team")},
		{Role: label.Det, Runs: run("det"), Zone: label.InFoot},
		{Role: label.House, Runs: run("house"), Zone: label.InFoot},
	}}
	m := For(label.Sheet)
	boxes, _, err := s.Set(c, m)
	if err != nil {
		t.Fatal(err)
	}
	b := boxes[0]
	y := heights(t, b, "number", "collector", "name", "team", "det", "house")
	for i := 1; i < len(y); i++ {
		if y[i] <= y[i-1] {
			t.Errorf("line %d stands at %s, the one before at %s", i, y[i], y[i-1])
		}
	}
	if y[3]-y[2] < 20*layout.MM {
		t.Errorf("the foot begins %s under the body: it does not hang from the lower edge", y[3]-y[2])
	}
	for _, mark := range b.Marks {
		if text, ok := mark.(layout.Text); ok && text.S == "house" {
			left, right := text.At.X-m.Left, m.Width-m.Right-text.At.X-text.Width()
			if d := left - right; d < -layout.Pt || d > layout.Pt {
				t.Errorf("the institution is not centred: %s left, %s right of it", left, right)
			}
		}
	}
}

// Whatever stands where, no ink comes near a cut or another line, and every
// letter is there.
func TestRandomZones(t *testing.T) {
	s := New(face.New(fonts.Default()))
	set := 0
	for seed := range uint64(600) {
		g := generator{rand.New(rand.NewPCG(seed, 11))}
		c, m := g.content(), For(label.Sheet)
		m.Justify = g.IntN(2) == 0
		for i := range c.Blocks {
			b := &c.Blocks[i]
			if b.Role == label.Symbol || g.IntN(3) > 0 {
				continue
			}
			if b.Zone = label.Zone(g.IntN(4)); zoneOf(b) != body {
				b.Caption = nil
			}
		}
		boxes, _, err := s.Set(c, m)
		if err != nil {
			if strings.Contains(err.Error(), "fit") {
				continue // said, not clipped
			}
			t.Fatalf("seed %d: %v", seed, err)
		}
		set++
		for _, b := range boxes {
			if err := checkInk(s, b, &m); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
		}
		if err := checkLetters(c, boxes); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
	}
	if set < 400 {
		t.Errorf("only %d of 600 labels could be set", set)
	}
}
