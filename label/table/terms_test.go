package table

import (
	"fmt"
	"testing"
)

// A termIndex finds what a map does.
func TestTermIndex(t *testing.T) {
	all := make([]string, 0, 500)
	var terms []termEntry
	if err := decodeEmbedded("terms.csv", termsCSV, &terms); err != nil {
		t.Fatal(err)
	}
	for _, e := range terms {
		all = append(all, e.Term)
	}
	for i := range 50 {
		all = append(all, fmt.Sprint("aa", i), fmt.Sprint(i))
	}
	if len(all) < 400 {
		t.Fatalf("only %d terms", len(all))
	}
	for _, n := range []int{0, 1, 3, 20, 217, len(all)} {
		columns := []Column{{Term: ""}, {Term: "x"}, {Term: "x"}}
		for _, term := range all[:n] {
			columns = append(columns, Column{Term: term})
		}
		want := map[string]int{}
		for i, c := range columns {
			if _, ok := want[c.Term]; !ok && c.Term != "" {
				want[c.Term] = i
			}
		}
		x := newTermIndex(columns)
		for _, term := range append(all, "", "x", "no such term") {
			got, ok := x.find(term)
			if w, is := want[term]; ok != is || ok && got != w {
				t.Errorf("%d columns: %q is %d %v, want %d %v", n, term, got, ok, w, is)
			}
		}
	}
}
