package lang

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
)

// The orders are those of the languages' dictionaries: Spanish puts ñ after n
// (Real Academia Española), German ö with o (DIN 5007-1), the other languages
// accents after the bare letter; Unicode Collation Algorithm, CLDR.
func TestSortFunc(t *testing.T) {
	for _, c := range []struct {
		tag  Tag
		want string
	}{
		{English, "Abies Abiés acer Acer Betula"},
		{Spanish, "nube nuez ñandú olmo"},
		{Portuguese, "Cedro Célia Erica Érica"},
		{German, "Ofen Öl Ort Ostern"},
		{French, "cote coté côte côté"},
		{Latin, "Abies Carex Quercus Rubus"},
	} {
		want := strings.Fields(c.want)
		for shift := range want {
			got := slices.Concat(want[shift:], want[:shift])
			SortFunc(c.tag, got, func(s string) string { return s })
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s: %q, want %q", c.tag, got, want)
			}
		}
	}
}

func TestSortFuncIsStable(t *testing.T) {
	type item struct {
		text string
		n    int
	}
	items := []item{{"b", 1}, {"a", 2}, {"b", 3}, {"a", 4}}
	SortFunc(English, items, func(i item) string { return i.text })
	if want := []item{{"a", 2}, {"a", 4}, {"b", 1}, {"b", 3}}; !slices.Equal(items, want) {
		t.Errorf("%v, want %v", items, want)
	}
}

func TestSortFuncFromManySides(t *testing.T) {
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 200 {
				s := []string{"Rubus", "Acer", "Érica", "Erica"}
				SortFunc(Portuguese, s, func(s string) string { return s })
				if s[0] != "Acer" || s[1] != "Erica" || s[3] != "Rubus" {
					t.Error(s)
					return
				}
			}
		})
	}
	wait.Wait()
}
