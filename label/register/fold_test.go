package register

import (
	"slices"
	"strings"
	"testing"
	"unicode"
)

// TestFoldEveryCharacter goes through all of Unicode: folding a folded
// character changes nothing, whatever stands beside it.
func TestFoldEveryCharacter(t *testing.T) {
	for r := rune(0); r <= unicode.MaxRune; r++ {
		folded := fold(string(r))
		if again := fold(folded); again != folded {
			t.Errorf("%U folds to %q and that to %q", r, folded, again)
		}
		if unicode.IsUpper(r) && unicode.ToLower(r) != r && fold(string(unicode.ToLower(r))) != folded {
			t.Errorf("%U folds to %q, in small to %q", r, folded, fold(string(unicode.ToLower(r))))
		}
	}
}

// The letters of European names in Latin script, from the Unicode blocks Latin-1
// Supplement, Latin Extended-A and the Romanian and Vietnamese ones of
// Extended-B and Extended Additional, are found with a plain keyboard.
func TestFoldToPlainLetters(t *testing.T) {
	blocks := [][2]rune{{0xC0, 0x17F}, {0x1A0, 0x1A1}, {0x1AF, 0x1B0}, {0x1CD, 0x1DC}, {0x1E6, 0x1ED}, {0x200, 0x21B}, {0x1E00, 0x1E9B}, {0x1E9E, 0x1E9E}, {0x1EA0, 0x1EF9}}
	for _, b := range blocks {
		for r := b[0]; r <= b[1]; r++ {
			if !unicode.IsLetter(r) {
				continue
			}
			if key := joined(string(r)); key == "" || strings.Trim(key, "abcdefghijklmnopqrstuvwxyz") != "" {
				t.Errorf("%c (%U) folds to %q", r, r, key)
			}
		}
	}
}

func TestWords(t *testing.T) {
	for _, tc := range []struct{ text, want string }{
		{"Iris boissieri Henriq.", "iris boissieri henriq"},
		{"×Sorbopyrus auricularis (Knoop) C.K.Schneid.", "sorbopyrus auricularis knoop c k schneid"},
		{"Carex x boenninghausiana", "carex boenninghausiana"},
		{"I. Almeida & J. Almeida", "i almeida j"},
		{"O'Neill-Çelik, Ś.", "o neill celik s"},
		{"Straße Æbelø Œuvre þing", "strasse aebelo oeuvre thing"},
		{"ΠΑΠΆΣ παπάς", "παπασ"},
		{"№ 12 ﬁcus", "no 12 ficus"},
		{" .,;- ", ""},
	} {
		if got := words(tc.text); strings.Join(got, " ") != tc.want {
			t.Errorf("%q: %q, want %s", tc.text, got, tc.want)
		}
	}
	long := strings.Repeat("é", 300)
	if got := words(long); len(got) != 1 || got[0] != strings.Repeat("e", longestWord) {
		t.Errorf("a long word: %q", got)
	}
	if got := cut(strings.Repeat("я", 60), 99); got != strings.Repeat("я", 49) {
		t.Errorf("cut within a character: %q", got)
	}
	if a, b := indexKey(strings.Repeat("a", 501)), indexKey(strings.Repeat("a", 502)); a == b || len(a) > 500 || indexKey("a") != "a" {
		t.Errorf("keys of long texts: %q, %q", a, b)
	}
	for _, w := range slices.Concat(noNumber, noCollector) {
		if joined(w) != w {
			t.Errorf("%q is never met", w)
		}
	}
}
