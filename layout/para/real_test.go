package para_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/fonts"
	"cornerslip/layout"
	"cornerslip/layout/para"
)

// TestRealRecords breaks the localities of 1,534 real records for a label of
// 105 mm, line by line and as wholes, and says by how much the one is better.
func TestRealRecords(t *testing.T) {
	f, err := os.Open(outside.Shared(t, "real/taurus-plants.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	roman, _ := fonts.Default().Lookup("LiberationSerif")
	size := layout.Points(9)
	width := func(s string) layout.Length {
		units := 0
		for _, r := range s {
			g, _ := roman.Glyph(r)
			units += roman.Advance(g)
		}
		return size.MulDiv(int64(units), int64(roman.Metrics().UnitsPerEm))
	}
	// A sheet label's column, and a packet's.
	for _, measure := range []layout.Length{93 * layout.MM, 55 * layout.MM} {
		var fit, greedy tally
		for _, row := range rows[1:] {
			// Country, province and locality stand in one paragraph on a label.
			text := row[16] + ": " + row[18] + ": " + row[5]
			var items []para.Item
			for _, s := range para.Segments(text, nil) {
				items = append(items, para.Item{Width: width(s.Text), Space: width(s.Space)})
			}
			o := para.Options{Rest: measure, ShortLast: width("abcdefgh")}
			a, b := para.Break(items, o), para.Greedy(items, o)
			if a.Demerits > b.Demerits || len(a.Breaks) != len(b.Breaks) || a.Overfull {
				t.Errorf("%q: %+v, greedy %+v", text, a, b)
			}
			// Rag is compared where greedy leaves no short line: to avoid one
			// a word comes down, and the line above is shorter for it.
			fit.add(items, a, o, !b.Short)
			greedy.add(items, b, o, !b.Short)
		}
		if fit.paragraphs != 1534 || fit.short > greedy.short || fit.demerits > greedy.demerits || fit.rag > greedy.rag {
			t.Errorf("at %v: total fit %+v, greedy %+v", measure, fit, greedy)
		}
		t.Logf("at %v: total fit: %v", measure, fit)
		t.Logf("at %v: greedy:    %v", measure, greedy)
	}
}

type tally struct {
	paragraphs, short int
	// Of paragraphs of at least three lines:
	several  int
	demerits int64
	rag      layout.Length // longest less shortest line but the last, summed
}

func (y *tally) add(items []para.Item, r para.Result, o para.Options, rag bool) {
	y.paragraphs++
	if r.Short {
		y.short++
	}
	if len(r.Breaks) < 3 || !rag {
		return // with one inner line there is no rag to see
	}
	y.several++
	y.demerits += r.Demerits
	longest, shortest := layout.Length(0), o.Rest
	from := 0
	for _, end := range r.Breaks[:len(r.Breaks)-1] {
		var w layout.Length
		for k := from; k <= end; k++ {
			w += items[k].Width
			if k < end {
				w += items[k].Space
			}
		}
		longest, shortest = max(longest, w), min(shortest, w)
		from = end + 1
	}
	y.rag += longest - shortest
}

func (y tally) String() string {
	n := int64(max(y.several, 1))
	return fmt.Sprintf("%d of %d paragraphs with a short last line; in %d others of three lines and more, rag %v and %d demerits on average",
		y.short, y.paragraphs, y.several, y.rag/layout.Length(n), y.demerits/n)
}
