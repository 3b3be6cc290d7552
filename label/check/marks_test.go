package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/table"
)

// plainSigns are the signs of a text, each looked for by itself.
func plainSigns(written string) (m Marks) {
	bare := strings.TrimRight(written, " ")
	for mark, has := range map[Marks]bool{
		Brackets:   strings.ContainsAny(written, "()[]"),
		Underscore: strings.Contains(written, "_"),
		Capitals:   strings.ContainsAny(written, "DX"),
		EndsOpen:   bare != "" && strings.ContainsRune(",;:", rune(bare[len(bare)-1])),
	} {
		if has {
			m |= mark
		}
	}
	return m
}

func FuzzSigns(f *testing.F) {
	for _, s := range []string{"", "Dunes (behind the station),", "a_b ", "Xx;  ", "., .", "Ω"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := signsOf(s)
		if plain := plainSigns(s); got&(Brackets|Underscore|Capitals|EndsOpen) != plain {
			t.Fatalf("%q: %b, one by one %b", s, got, plain)
		}
		// These may be set without need, but not be missing.
		if strings.Contains(s, "  ") || strings.Contains(s, " ,") || s != strings.TrimSpace(s) {
			if got&Spaces == 0 {
				t.Fatalf("%q: blanks are not seen", s)
			}
		}
		if strings.Contains(strings.ReplaceAll(s, " ", ""), ",,") && got&SignsTwice == 0 {
			t.Fatalf("%q: signs that stand twice are not seen", s)
		}
	})
}

// Cells that repeat those of the row above, or do not, or stand in another order of
// columns, have the marks that each has alone.
func TestMarksOfRepeatedCells(t *testing.T) {
	cells := []string{"Dunes,", "Dunes,", "Dunes", "", "(Dunes", "(Dunes", " Dunes", "Dunes"}
	var p past
	for _, s := range cells {
		for column, term := range []string{"habitat", "recordNumber"} {
			seen := p.cell(column, term, s)
			want := Marks(0)
			if text := strings.TrimSpace(s); text != "" {
				want = marksOf(s, text, looksAt(term))
			}
			if seen.marks != want || seen.text != strings.TrimSpace(s) {
				t.Errorf("%s %q: %q with marks %b, alone %b", term, s, seen.text, seen.marks, want)
			}
		}
	}
	if p.cell(0, "catalogNumber", "s.n."); !p.cells[0].placeholder || p.cell(0, "recordNumber", "s.n.").placeholder {
		t.Error("what a cell says depends on its column, which may change from row to row")
	}
}

// Every cell of a row is found by its term, also beyond the places that are counted.
func TestEntriesOfManyColumns(t *testing.T) {
	for _, n := range []int{1, 20, 217, 254, 255, 256, 300, 1000} {
		var r Record
		var terms []string
		for i := range n {
			terms = append(terms, fmt.Sprintf("term%dOf", i*i))
			r.put(entry{term: terms[i], Field: Field{Text: fmt.Sprint(i)}})
		}
		for i, term := range terms {
			if got := r.Text(term); got != fmt.Sprint(slices.Index(terms, term)) {
				t.Fatalf("%d columns: %s, the %d., has %q", n, term, i, got)
			}
		}
		if got := r.Text("locality"); got != "" {
			t.Fatalf("%d columns: locality has %q", n, got)
		}
	}
	// A term that stands twice is the first.
	var r Record
	r.put(entry{term: "locality", Field: Field{Text: "first"}})
	r.put(entry{term: "locality", Field: Field{Text: "second"}})
	if got := r.Text("locality"); got != "first" {
		t.Errorf("of two cells, %q is found", got)
	}
}

// A Memo is made once a row, and is given what it made of the row before.
func TestMemoOnceARow(t *testing.T) {
	made := NewMemo[[]int]()
	times := 0
	rule := Rule{Name: "memo", Severity: label.Warning, Row: func(c *Context) {
		for range 3 {
			all := made.Of(c, func(c *Context, into *[]int) {
				times++
				*into = append((*into)[:0], c.Record.Row)
			})
			if len(*all) != 1 || (*all)[0] != c.Record.Row {
				t.Errorf("row %d is given %v", c.Record.Row, *all)
			}
		}
	}}
	src := table.Bytes("trip.csv", []byte("habitat\nDunes\nDunes\nMeadow\n"))
	tab, err := table.Open(src, table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	e := New(Options{Rules: []Rule{rule}})
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		r, _ := e.Row(row)
		e.Release(r)
	}
	if times != 3 {
		t.Errorf("made %d times for 3 rows", times)
	}
}
