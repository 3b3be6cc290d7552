package table

import (
	"bytes"
	"cmp"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	xlanguage "golang.org/x/text/language"
	"golang.org/x/text/language/display"
	"golang.org/x/text/unicode/norm"
)

// TestLetters counts the letters anew and holds the counts against those kept;
// UPDATE=1 keeps the new ones.
func TestLetters(t *testing.T) {
	notes, err := os.ReadFile("testdata/letters.txt")
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	for line := range strings.Lines(string(notes)) {
		tag, text, _ := strings.Cut(strings.TrimSpace(line), "\t")
		c := counter{signs: signsOf[tag] != nil, n: map[string]int{}}
		c.add(text, 3)
		for _, name := range namesIn(tag) {
			c.add(name, 1)
		}
		fmt.Fprintf(&out, "%s\t%s\n", tag, c)
	}
	const kept = "vocabulary/letters.tsv"
	if os.Getenv("UPDATE") == "1" {
		if err := os.WriteFile(kept, out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(kept)
	if err != nil || !bytes.Equal(want, out.Bytes()) {
		t.Errorf("%s is not what is counted (%v): run with UPDATE=1", kept, err)
	}
}

// namesIn returns the names of countries, languages and scripts in a language.
func namesIn(tag string) []string {
	l := xlanguage.MustParse(tag)
	regions, tongues, scripts := display.Regions(l), display.Languages(l), display.Scripts(l)
	var names []string
	for a := 'A'; a <= 'Z'; a++ {
		for b := 'A'; b <= 'Z'; b++ {
			code := string(a) + string(b)
			if r, err := xlanguage.ParseRegion(code); err == nil && regions != nil {
				names = append(names, regions.Name(r))
			}
			if b, err := xlanguage.ParseBase(strings.ToLower(code)); err == nil && tongues != nil {
				names = append(names, tongues.Name(b))
			}
		}
	}
	for _, s := range []string{"Arab", "Armn", "Cyrl", "Deva", "Geor", "Grek", "Hang", "Hebr", "Jpan", "Kore", "Latn", "Mong", "Tibt"} {
		if scripts != nil {
			names = append(names, scripts.Name(xlanguage.MustParseScript(s)))
		}
	}
	return names
}

type counter struct {
	signs bool
	n     map[string]int
}

func (c counter) add(text string, weight int) {
	before := edge
	for _, r := range norm.NFC.String(text) + " " {
		if r == '’' {
			r = '\''
		}
		if !isWordLetter(r) {
			r = edge
		}
		r = small(r)
		switch {
		case c.signs:
			if r != edge && r >= 0x80 {
				c.n[string(r)] += weight
			}
		case r != edge || before != edge:
			c.n[string(before)+string(r)] += weight
		}
		before = r
	}
}

func (c counter) String() string {
	if c.signs {
		by := map[int][]rune{}
		for s, n := range c.n {
			r, _ := utf8.DecodeRuneInString(s)
			by[n] = append(by[n], r)
		}
		var parts []string
		for _, n := range slices.SortedFunc(maps.Keys(by), func(a, b int) int { return b - a }) {
			slices.Sort(by[n])
			parts = append(parts, fmt.Sprintf("%s:%d", string(by[n]), n))
		}
		return strings.Join(parts, " ")
	}
	var parts []string
	for _, k := range slices.SortedFunc(maps.Keys(c.n), func(a, b string) int { return cmp.Or(c.n[b]-c.n[a], strings.Compare(a, b)) }) {
		parts = append(parts, fmt.Sprintf("%s:%d", k, c.n[k]))
	}
	return strings.Join(parts, " ")
}
