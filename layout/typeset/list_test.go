package typeset

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
)

func plainRuns(text string) []label.Run { return []label.Run{{Text: text}} }

// textOf returns the text of a box, its lines joined by spaces.
func textOf(b *layout.Box) string {
	var out []string
	for _, line := range layout.Lines(b.Marks) {
		var s strings.Builder
		for _, t := range line {
			s.WriteString(t.S)
		}
		out = append(out, strings.TrimSpace(s.String()))
	}
	return strings.Join(out, " ")
}

// Every row is on exactly one page, in order, below a heading row; no letter
// leaves its column, no two rows touch.
func TestListProperties(t *testing.T) {
	s := New(face.New(fonts.Default()))
	rapid.Check(t, func(t *rapid.T) {
		var pages []*layout.Box
		sheet := ListSheet{
			Paper: layout.Size{W: 148 * layout.MM, H: 105 * layout.MM},
			Title: plainRuns("Run list"), Under: plainRuns("of a trip"),
			Columns: []Column{{Head: "no.", Width: 15 * layout.MM}, {Head: "name"}, {Head: "copies", Width: 12 * layout.MM, Right: true}},
		}
		l, err := s.NewList(sheet, func(b *layout.Box) error { pages = append(pages, b); return nil })
		if err != nil {
			t.Fatal(err)
		}
		n := rapid.IntRange(0, 40).Draw(t, "rows")
		for i := range n {
			words := strings.Repeat("Cytisus striatus ", rapid.IntRange(0, 12).Draw(t, "words"))
			if err := l.Add(plainRuns(fmt.Sprintf("n%d", i)), []label.Run{{Text: words, Style: label.Italic}}, plainRuns("1")); err != nil {
				t.Fatal(err)
			}
		}
		if err := l.End(plainRuns(fmt.Sprintf("%d in all", n)), plainRuns("and so on")); err != nil {
			t.Fatal(err)
		}
		next := 0
		for k, p := range pages {
			if err := p.Check(); err != nil {
				t.Fatal(err)
			}
			if text := textOf(p); !strings.Contains(text, "no. name copies") || strings.Contains(text, "Run list") != (k == 0) {
				t.Fatalf("page %d says %q", k+1, text)
			}
			var bottom layout.Length
			for _, m := range p.Marks {
				w, ok := m.(layout.Text)
				if !ok {
					continue
				}
				if w.At.X < 20*layout.MM-layout.Pt || w.At.X+w.Width() > 133*layout.MM+3*layout.Pt || w.At.Y > 90*layout.MM {
					t.Fatalf("%q at %v leaves the page's room", w.S, w.At)
				}
				if w.S == fmt.Sprintf("n%d", next) {
					if w.At.Y <= bottom {
						t.Fatalf("row %d at %v is not below the one before", next, w.At.Y)
					}
					bottom = w.At.Y
					next++
				}
				if w.Style == layout.Italic && (w.At.X < 38*layout.MM-layout.Pt || w.At.X+w.Width() > 118*layout.MM+3*layout.Pt) {
					t.Fatalf("%q at %v leaves its column", w.S, w.At)
				}
			}
		}
		if next != n {
			t.Fatalf("%d of %d rows", next, n)
		}
		if last := textOf(pages[len(pages)-1]); !strings.HasSuffix(last, fmt.Sprintf("%d in all and so on", n)) || n > 0 && !strings.Contains(last, fmt.Sprintf("n%d ", n-1)) {
			t.Fatalf("the last page ends %q", last)
		}
	})
}

func TestListFaults(t *testing.T) {
	s := New(face.New(fonts.Default()))
	keep := func(*layout.Box) error { return nil }
	for _, c := range []struct {
		sheet ListSheet
		want  string
	}{
		{ListSheet{}, "a list needs a column"},
		{ListSheet{Paper: layout.Size{W: 60 * layout.MM, H: 100 * layout.MM}, Columns: []Column{{Head: "a", Width: 40 * layout.MM}, {Head: "b"}}},
			`a page of 60 × 100 mm is too narrow for 2 columns; "a" gets 40mm`},
		{ListSheet{Columns: []Column{{Head: "a", Width: 2 * layout.MM}, {Head: "b"}}}, `a page of 210 × 297 mm is too narrow for 2 columns; "a" gets 2mm`},
	} {
		if _, err := s.NewList(c.sheet, keep); err == nil || err.Error() != c.want {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
	l, err := s.NewList(ListSheet{Columns: []Column{{Head: "a"}}}, keep)
	if err != nil {
		t.Fatal(err)
	}
	if err := l.Add(); err == nil {
		t.Error("a row without cells was taken")
	}
	at := label.Origin{File: "trip.csv", Line: 4, Column: 2, Row: 3, Term: "locality"}
	var word *Error
	if err := l.Add([]label.Run{{Text: "\U000F0000", Origin: at}}); !errors.As(err, &word) || word.Origin != at {
		t.Errorf("a letter without a face: %v", err)
	}
	full := errors.New("full")
	l, err = s.NewList(ListSheet{Columns: []Column{{Head: "a"}}}, func(*layout.Box) error { return full })
	if err != nil {
		t.Fatal(err)
	}
	if err := l.End(); err != full {
		t.Errorf("what emit said is lost: %v", err)
	}
}

func TestNote(t *testing.T) {
	s := New(face.New(fonts.Default()))
	b, err := s.Note(Note{Grey: 128}, plainRuns("print at 100 %"), nil, []label.Run{{Text: "run of "}, {Text: "Salix", Style: label.Italic}})
	if err != nil {
		t.Fatal(err)
	}
	if got := textOf(b); got != "print at 100 % run of Salix" {
		t.Errorf("%q", got)
	}
	var right layout.Length
	for _, m := range b.Marks {
		w := m.(layout.Text)
		right = max(right, w.At.X+w.Width())
		if w.Grey != 128 || w.At.Y > b.Size.H {
			t.Errorf("%q in grey %d at %v", w.S, w.Grey, w.At)
		}
	}
	if right != b.Size.W {
		t.Errorf("a box %v wide for words that end at %v", b.Size.W, right)
	}
	wide, err := s.Note(Note{Width: 20 * layout.MM}, plainRuns(strings.Repeat("seeds ", 20)))
	if err != nil {
		t.Fatal(err)
	}
	if n := len(layout.Lines(wide.Marks)); n < 4 || wide.Size.W != 20*layout.MM || wide.Size.H < layout.Length(n)*7*layout.Pt {
		t.Errorf("%d lines in %v", n, wide.Size)
	}
}

// A label a little wider than its bars need takes narrower bars rather than
// none: the widest whose quiet zones fit would stand in the margins.
func TestBarsKeepMargins(t *testing.T) {
	s := New(face.New(fonts.Default()))
	c := &label.Content{Kind: label.Barcode, Blocks: []label.Block{
		{Role: label.Symbol, Runs: plainRuns("VDOURA-0004188"), Bars: &label.Bars{Text: "VDOURA-0004188"}},
	}}
	for width := 53 * layout.MM; width <= 80*layout.MM; width += layout.MM / 4 {
		m := For(label.Barcode)
		m.Width = width
		boxes, _, err := s.Set(c, m)
		if err != nil {
			t.Fatalf("%v wide: %v", width, err)
		}
		for _, mark := range boxes[0].Marks {
			if b, ok := mark.(layout.Bars); ok && (b.At.X < m.Left || b.Right() > width-m.Right || b.At.X < b.Quiet) {
				t.Errorf("%v wide: bars from %v to %v, quiet zone %v", width, b.At.X, b.Right(), b.Quiet)
			}
		}
	}
}
