package table

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"
)

// An inventedTable is what a table of a language is made of.
type inventedTable struct {
	language, heading             string
	people, place, habitat, notes []string
}

func inventedTables(t testing.TB) []inventedTable {
	b, err := os.ReadFile("testdata/encodings.txt")
	if err != nil {
		t.Fatal(err)
	}
	var all []inventedTable
	for line := range strings.Lines(string(b)) {
		what, text, _ := strings.Cut(strings.TrimSpace(line), "\t")
		parts := strings.Split(text, "|")
		switch what {
		case "people":
			all[len(all)-1].people = parts
		case "place":
			all[len(all)-1].place = parts
		case "habitat":
			all[len(all)-1].habitat = parts
		case "remark":
			all[len(all)-1].notes = parts
		default:
			all = append(all, inventedTable{language: what, heading: text})
		}
	}
	return all
}

var inventedNames = []string{"Erica arborea L.", "Carex flacca Schreb.", "Salix × sepulcralis Simonk.", "Poa annua L.", "Betula pubescens Ehrh."}

// rows makes a table of n records; every row has texts of its own as long as
// there are any.
func (t inventedTable) rows(n int) string {
	var b strings.Builder
	b.WriteString(t.heading + "\n")
	country := map[string]string{"pt": "Portugal", "es": "España", "fr": "France", "de": "Österreich", "ru": "Россия", "ja": "日本", "zh": "中国"}[t.language]
	for i := range n {
		name := inventedNames[i%len(inventedNames)]
		if i%5 == 2 && !slices.Contains([]string{"pt", "de", "en", "cs"}, t.language) {
			name = inventedNames[0] // × is in few encodings
		}
		fmt.Fprintf(&b, "%d,%s,2026-05-%02d,%s,,\"%s\",%s,\"%s\",%s\n", 100+i, t.people[i%len(t.people)], 1+i%28, country,
			t.place[(i+i/10)%len(t.place)], name, t.habitat[(i*3+i/7)%len(t.habitat)], t.notes[(i*5+i/6)%len(t.notes)])
	}
	return b.String()
}

// TestDetect writes invented tables in every legacy encoding that has all their
// characters and looks at what is found. None may be found wrong: a verdict is
// right, or names what it may be. ENCODINGS=1 takes every size of every table.
func TestDetect(t *testing.T) {
	sizes := []int{5, 14, 60}
	full := os.Getenv("ENCODINGS") != ""
	type count struct{ right, unsure, unsureFirst, none, wrong int }
	by := map[string]*count{}
	var names []string
	var total count
	started := time.Now()
	n, tables := 0, 0
	for k, it := range inventedTables(t) {
		for i, size := range sizes {
			if !full && i != k%3 && (i != (k+1)%3 || k%3 != 0) {
				continue
			}
			tables++
			text := it.rows(size)
			key := fmt.Sprintf("%s %d", it.language, size)
			for _, cs := range legacyCharsets() {
				b, lacks := cs.encode(text)
				if lacks >= 0 || string(cs.decode(string(b), true)) != text {
					continue
				}
				if far := cs.name == "GB18030" || cs.name == "EUC-JP"; far && !full && k%6 != 0 && it.people[0] < "\u3000" {
					continue // which have the letters of all languages
				}
				n++
				c := by[cs.name]
				if c == nil {
					c = &count{}
					by[cs.name] = c
					names = append(names, cs.name)
				}
				v := detect(surveyOf(bytes.NewReader(b), defaultMaxRow))
				reads := func(o *charset) bool { return string(o.decode(string(b), true)) == text }
				among := false
				for _, o := range v.other {
					among = among || reads(o)
				}
				switch {
				case v.best == nil || !v.whole:
					c.none++
					total.none++
					t.Logf("%s in %s: none (best %v)", key, cs.name, v.best)
				case v.sure && reads(v.best):
					c.right++
					total.right++
				case v.sure:
					c.wrong++
					total.wrong++
					t.Errorf("%s in %s: taken for %s", key, cs.name, v.best.name)
				case reads(v.best) || among:
					c.unsure++
					total.unsure++
					if reads(v.best) {
						c.unsureFirst++
						total.unsureFirst++
					}
					t.Logf("%s in %s: %s or %s", key, cs.name, v.best.name, charsetNames(v.other))
				default:
					c.wrong++
					total.wrong++
					t.Errorf("%s in %s: taken for %s or %s", key, cs.name, v.best.name, charsetNames(v.other))
				}
			}
		}
	}
	for _, name := range names {
		t.Logf("%-14s %+v", name, *by[name])
	}
	t.Logf("%d tables, %d files, %v each: %+v", tables, n, time.Since(started)/time.Duration(n), total)
}

func charsetNames(all []*charset) string {
	var names []string
	for _, c := range all {
		names = append(names, c.name)
	}
	return strings.Join(names, ", ")
}
