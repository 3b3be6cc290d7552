package register

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"cornerslip/label/accession"
)

var fuzzTexts = []string{
	"", "Iris boissieri Henriq.", "Íris  BÓISSIÈRI", "×Triticosecale Wittm. ex A.Camus", "Søren Ærø & Œnone Łukasiewicz", "Ιωάννης Παπάς", "ΠΑΠΆΣ", "Ни́колай", "ﬁcus ﬀ", "ẞtraße ſ",
	"İstanbul ı", "e\u0301\u0327\u0302", "\u0301", "한국 標本 標本館", "हिन्दी", "ภาษาไทย", "كتاب", "Å Å K ℃ ½ ²", "s.n.", "S/N", "sin número", "97-12", "CN 97/114 bis", "214\u00a0a", "\xff\xfe", "a\x00b",
	strings.Repeat("Ǽ", 80), strings.Repeat("x", 99) + "é", "VDOURA-0000123", "https://herbarium.example.org/VDOURA-0000123?lang=pt#x", "x X × ✕", "\u1e9e\u0130\u03f4\u1f88",
}

// FuzzFold holds that folding is done once for all, that it leaves neither
// accents nor capitals, and that what is looked up by it agrees with itself.
func FuzzFold(f *testing.F) {
	for _, text := range fuzzTexts {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		folded := fold(text)
		if again := fold(folded); again != folded {
			t.Errorf("%q folds to %q and that to %q", text, folded, again)
		}
		if utf8.ValidString(text) && !utf8.ValidString(folded) {
			t.Errorf("%q folds to %q", text, folded)
		}
		for _, r := range folded {
			if unicode.Is(unicode.M, r) || 'A' <= r && r <= 'Z' {
				t.Errorf("%q folds to %q, with %q", text, folded, r)
			}
		}
		if up := fold(asciiUpper(text)); utf8.ValidString(text) && up != folded {
			t.Errorf("%q folds to %q, in capitals to %q", text, folded, up)
		}
		key := joined(text)
		if joined(key) != key || joined(folded) != key || len(key) > longestWord || catalogKey(key) != key {
			t.Errorf("%q is joined to %q, and that to %q", text, key, joined(key))
		}
		list := words(text)
		if again := words(strings.Join(list, " ")); !slices.Equal(again, list) {
			t.Errorf("%q has the words %q, and they %q", text, list, again)
		}
		for _, w := range list {
			if w == "" || len(w) > longestWord || fold(w) != w {
				t.Errorf("%q has the word %q", text, w)
			}
		}
		if indexKey(text) == "" && text != "" || len(indexKey(text)) > 500 {
			t.Errorf("the key of %q is %q", text, indexKey(text))
		}
		addressParts(text)
	})
}

func asciiUpper(text string) string {
	return strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' {
			return r - 'a' + 'A'
		}
		return r
	}, text)
}

// FuzzGathering holds what the key of a gathering must be whatever stands in
// the cells: the same for the same words in another dress, and none without a
// collector or a number.
func FuzzGathering(f *testing.F) {
	for i, text := range fuzzTexts {
		f.Add(text, fuzzTexts[(i*7+3)%len(fuzzTexts)], fuzzTexts[(i*5+1)%len(fuzzTexts)])
	}
	f.Add("I. Almeida", "214", "Sheet 1 of 2")
	f.Add("Almeida, I.", "s.n.", "")
	f.Fuzz(func(t *testing.T, collector, number, part string) {
		s := Specimen{Collector: collector, Number: number, Part: part}
		key, ok := gatheringKey(s)
		again, okAgain := gatheringKey(Specimen{Collector: "  " + fold(collector) + " ", Number: fold(number), Part: fold(part) + "."})
		if key != again || ok != okAgain {
			t.Errorf("%q: key %q, folded %q", s, key, again)
		}
		if ok != (key != "") || len(key) > 500 {
			t.Errorf("%q: key %q, %t", s, key, ok)
		}
		if joined(number) == "" || joined(collector) == "" {
			if ok {
				t.Errorf("%q has a key: %q", s, key)
			}
		}
		if ok != (numbered(number) && key != "") {
			t.Errorf("%q: number %t, key %t", s, numbered(number), ok)
		}
		if (recordKey(number) != "") != numbered(number) {
			t.Errorf("%q is a number: %t, and is looked up as %q", number, numbered(number), recordKey(number))
		}
		// The words of the collector may stand in any order.
		list := words(collector)
		slices.Reverse(list)
		if turned, _ := gatheringKey(Specimen{Collector: strings.Join(list, ", "), Number: number, Part: part}); ok && len(list) > 0 && turned != "" && turned != key {
			t.Errorf("%q: key %q, with the words turned %q", s, key, turned)
		}
		// Another number is another gathering.
		if other, okOther := gatheringKey(Specimen{Collector: collector, Number: number + "7", Part: part}); ok && okOther && other == key {
			t.Errorf("%q: key %q, and the same with another number", s, key)
		}
		a, err := NewAttaching([]Pair{{s, "VDOURA-0000001"}})
		if err != nil {
			t.Fatal(err)
		}
		a.Scan(collector+" "+number, "VDOURA-0000001")
		a.Scan(part, number)
		_ = s.String() + s.at()
	})
}

// FuzzParse reads texts as numbers of several series: what is read is written
// and read again as the same.
func FuzzParse(f *testing.F) {
	var all []Series
	for i, notation := range []string{"VDOURA-0000000", "VDB 00000 MOD 37,36", "H/0000- MOD 11-2", "00000"} {
		p, err := accession.ParsePattern(notation)
		if err != nil {
			f.Fatal(err)
		}
		all = append(all, Series{Name: notation, Pattern: p, id: int64(i + 1)})
		f.Add(p.Format(1))
		f.Add(strings.ToLower(p.Format(p.Max())))
	}
	for _, text := range fuzzTexts {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, n, err := parse(all, text)
		if err != nil {
			return
		}
		full := s.Pattern.Format(n)
		again, m, err := parse(all, full)
		if n < 1 || err != nil || again.id != s.id || m != n {
			t.Errorf("%q is %s, and that is number %d of %s (%v)", text, full, m, again.Name, err)
		}
		if catalogKey(full) == "" {
			t.Errorf("%q cannot be looked up", full)
		}
	})
}
