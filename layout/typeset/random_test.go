package typeset

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
	"cornerslip/layout/symbol"
)

// TestRandomLabels sets labels of random words, lengths, scripts and measures
// and holds on the marks, not by trust, that no ink comes near a cut, that no
// line touches another, and that every letter is there. LABELS=1000000 sets
// how many; seeds count up from 0, so a failure can be set again alone.
func TestRandomLabels(t *testing.T) {
	n := 3000
	if s := os.Getenv("LABELS"); s != "" {
		var err error
		if n, err = strconv.Atoi(s); err != nil {
			t.Fatalf("LABELS=%s is no number", s)
		}
	}
	s := New(face.New(fonts.Default()))
	var wait sync.WaitGroup
	for w := range 2 {
		wait.Go(func() {
			for seed := w; seed < n; seed += 2 {
				if err := checkSeed(s, uint64(seed)); err != nil {
					t.Errorf("seed %d: %v", seed, err)
					return
				}
			}
		})
	}
	wait.Wait()
}

func FuzzSet(f *testing.F) {
	s := New(face.New(fonts.Default()))
	for seed := range uint64(10) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) {
		if err := checkSeed(s, seed); err != nil {
			t.Error(err)
		}
	})
}

func checkSeed(s *Setter, seed uint64) error {
	g := generator{rand.New(rand.NewPCG(seed, 7))}
	c, m := g.content(), g.measures()
	if c.Kind == label.Packet {
		p := For(label.Packet)
		p.Justify, p.SmallerFirst, m = m.Justify, m.SmallerFirst, p
	}
	boxes, report, err := s.Set(c, m)
	if err != nil {
		if strings.Contains(err.Error(), "nine labels") || strings.Contains(err.Error(), "alone do not fit") || strings.Contains(err.Error(), "not a single line") {
			return nil // said, not clipped
		}
		return fmt.Errorf("%w", err)
	}
	if report.Labels != len(boxes) {
		return fmt.Errorf("report says %d labels, there are %d", report.Labels, len(boxes))
	}
	for i, b := range boxes {
		if err := checkInk(s, b, &m); err != nil {
			return fmt.Errorf("label %d of %d: %w", i+1, len(boxes), err)
		}
	}
	return checkLetters(c, boxes)
}

// checkInk holds that all ink keeps 5 mm from the edges of the label and that
// no line of text touches another.
func checkInk(s *Setter, b *layout.Box, m *Measures) error {
	safe := layout.Rect{Size: b.Size}.Inset(5 * layout.MM)
	type band struct {
		x0, x1, y0, y1 layout.Length
		start, end     layout.Point // of the pen
		text           string
	}
	var bands []band
	for _, mark := range b.Marks {
		switch mark := mark.(type) {
		case layout.Text:
			w, err := s.faces.Word(mark.S, mark.Style)
			if err != nil {
				return err
			}
			left, right, above, below := w.Ink(mark.Size)
			end := layout.Point{X: mark.At.X + mark.Width(), Y: mark.At.Y}
			ink := band{mark.At.X - left, end.X + right, mark.At.Y - above, mark.At.Y + below, mark.At, end, mark.S}
			// A space at the end of a mark is no ink.
			if n := len(mark.S); n > 0 && mark.S[n-1] == ' ' {
				ink.x1 -= mark.Clusters[len(mark.Clusters)-1].Adv
			}
			if ink.x0 < safe.At.X || ink.x1 > safe.Right() || ink.y0 < safe.At.Y || ink.y1 > safe.Bottom() {
				return fmt.Errorf("ink of %q reaches from %v,%v to %v,%v on a label of %v", mark.S, ink.x0, ink.y0, ink.x1, ink.y1, b.Size)
			}
			// Two lines touch if their x-heights meet: accents and descenders may
			// come close, as in any book.
			ink.y0, ink.y1 = mark.At.Y-mark.Size/2, mark.At.Y
			bands = append(bands, ink)
		case layout.Bars:
			if !safe.Contains(mark.Rect) {
				return fmt.Errorf("bars %v of %q leave a label of %v", mark.Rect, mark.S, b.Size)
			}
			bands = append(bands, band{x0: mark.At.X, x1: mark.Right(), y0: mark.At.Y, y1: mark.Bottom(), text: "bars"})
		case layout.Stroke:
			if mark.From.X < safe.At.X || mark.To.X > safe.Right() {
				return fmt.Errorf("a line leaves the label")
			}
		}
	}
	for i, a := range bands {
		for _, c := range bands[:i] {
			// Where one text goes on in another style, room was made for what leans.
			if a.start == c.end && a.end != (layout.Point{}) {
				continue
			}
			const slack = layout.MM / 10 // side bearings
			if a.x0+slack < c.x1 && c.x0+slack < a.x1 && a.y0 < c.y1 && c.y0 < a.y1 {
				return fmt.Errorf("%q and %q overlap", a.text, c.text)
			}
		}
	}
	return nil
}

// checkLetters holds that every letter of the content is on the labels, as
// often as it should be, and on a single label none beyond.
func checkLetters(c *label.Content, boxes []*layout.Box) error {
	want, got := map[rune]int{}, map[rune]int{}
	add := func(to map[rune]int, s string) {
		for _, r := range norm.NFC.String(s) {
			if !unicode.IsSpace(r) && !fonts.Invisible(r) && r != '-' {
				to[r]++
			}
		}
	}
	for _, b := range c.Blocks {
		for _, runs := range [][]label.Run{b.Runs, b.Right, b.Caption} {
			for _, r := range runs {
				add(want, r.Text)
			}
		}
	}
	for _, b := range boxes {
		for _, m := range b.Marks {
			if t, ok := m.(layout.Text); ok {
				if t.Actual != "" {
					add(got, t.Actual)
				} else {
					add(got, t.S)
				}
			}
		}
	}
	for r, n := range want {
		if got[r] < n || got[r] > n && len(boxes) == 1 {
			return fmt.Errorf("%q stands %d times in the words and %d times on the label", r, n, got[r])
		}
	}
	for r, n := range got {
		if want[r] == 0 && len(boxes) == 1 {
			return fmt.Errorf("%q stands %d times on the label and not in the words", r, n)
		}
	}
	return nil
}

// A generator makes random contents.
type generator struct{ *rand.Rand }

var alphabets = []string{
	"abcdefghijklmnopqrstuvwxyz", "aeiourstnl", "àáâãçéêíóôõúü", "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "0123456789",
	"ắằẵặấầẫậđơướ", "αβγδεζηθᾶῃὡ", "абвгдежзий", "əɛɪʃʒŋɲ", "×′″°µ–—’№♂♀",
}

var marks = []string{"\u0301", "\u0302", "\u0303", "\u0323", "\u0304"}

func (g generator) word() string {
	var b strings.Builder
	letters := []rune(alphabets[g.weighted(12, 8, 3, 1, 2, 1, 1, 1, 1, 1)])
	n := 1 + g.IntN(9)
	switch g.IntN(60) {
	case 0:
		n = 30 + g.IntN(90)
	case 1:
		return "https://id.example.org/" + strings.Repeat("specimen/", g.IntN(12)) + strconv.Itoa(g.IntN(1e6))
	}
	for range n {
		b.WriteRune(letters[g.IntN(len(letters))])
		if g.IntN(40) == 0 {
			b.WriteString(marks[g.IntN(len(marks))])
		}
	}
	switch g.IntN(12) {
	case 0:
		b.WriteByte(',')
	case 1:
		b.WriteByte('.')
	case 2:
		return "(" + b.String() + ")"
	case 3:
		return b.String() + "-" + b.String()
	case 4:
		b.WriteString("\u00a0x")
	case 5:
		b.WriteString("\u00ad" + "en")
	}
	return b.String()
}

func (g generator) weighted(weights ...int) int {
	sum := 0
	for _, w := range weights {
		sum += w
	}
	x := g.IntN(sum)
	for i, w := range weights {
		if x < w {
			return i
		}
		x -= w
	}
	panic("unreachable")
}

func (g generator) runs(words int) []label.Run {
	var runs []label.Run
	for words > 0 {
		n := min(words, 1+g.IntN(12))
		words -= n
		parts := make([]string, n)
		for i := range parts {
			parts[i] = g.word()
		}
		sep := " "
		if g.IntN(30) == 0 {
			sep = "  \n"
		}
		r := label.Run{Text: strings.Join(parts, sep), Keep: n < 4 && g.IntN(4) == 0, Glue: g.IntN(10) == 0}
		switch g.IntN(8) {
		case 0:
			r.Style = label.Italic
		case 1:
			r.Style = label.Bold
		case 2:
			r.Style = label.Small
		}
		if g.IntN(5) > 0 {
			r.Text += " "
		}
		runs = append(runs, r)
	}
	return runs
}

func (g generator) content() *label.Content {
	c := &label.Content{Kind: label.Sheet, Continued: "label continued", OfWord: "of", Key: []label.Run{{Text: "I. Almeida 214", Style: label.Bold, Keep: true}}}
	if g.IntN(4) == 0 {
		c.Kind = label.Packet
	}
	long := 1 + g.weighted(6, 3, 1)*3
	add := func(r label.Role, words int) {
		if g.IntN(8) == 0 || words == 0 {
			return
		}
		b := label.Block{Role: r, Runs: g.runs(words), Tight: g.IntN(3) == 0}
		if g.IntN(4) == 0 {
			b.Right = g.runs(1 + g.IntN(4))
		}
		c.Blocks = append(c.Blocks, b)
	}
	if g.IntN(3) > 0 {
		c.Blocks = append(c.Blocks, label.Block{Role: label.House, Runs: []label.Run{{Text: "Valdoura Field Station Herbarium", Style: label.Capitals}}})
		add(label.Project, 1+g.IntN(8))
	}
	captions := g.IntN(4) == 0
	for _, r := range []label.Role{label.Status, label.Name, label.Det, label.Place, label.Coords, label.Plant, label.Notes, label.Text} {
		n := len(c.Blocks)
		add(r, g.IntN(10*long))
		if captions && len(c.Blocks) > n {
			c.Blocks[n].Caption = []label.Run{{Text: "Locality", Style: label.Capitals}}
		}
	}
	if g.IntN(12) == 0 {
		c.Blocks = append(c.Blocks, label.Block{Role: label.Blank, Runs: []label.Run{{Text: "Name"}}})
	}
	add(label.Collector, 1+g.IntN(4))
	add(label.Team, g.IntN(8))
	add(label.Number, g.IntN(4))
	if g.IntN(4) == 0 {
		number := fmt.Sprintf("VDOURA-%07d", g.IntN(1e7))
		c.Blocks = append(c.Blocks, label.Block{Role: label.Symbol, Runs: []label.Run{{Text: number}}, Bars: &label.Bars{
			Symbology: []string{symbol.Code128, symbol.DataMatrix, symbol.QR}[g.IntN(3)], Text: number,
		}})
	}
	return c
}

func (g generator) measures() Measures {
	m := For(label.Sheet)
	m.Justify = g.IntN(4) == 0
	m.SmallerFirst = g.IntN(3) == 0
	if g.IntN(3) == 0 {
		m.Text = layout.Points(float64(8+g.IntN(4)) + 0.5)
		m.Name = m.Text + 2*layout.Pt
	}
	if g.IntN(5) == 0 {
		m.Top = 8 * layout.MM
	}
	return m
}
