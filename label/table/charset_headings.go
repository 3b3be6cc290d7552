package table

import (
	"strings"
	"sync"

	"golang.org/x/text/unicode/norm"
)

// asSpelt reports whether the words of a heading with more than ASCII have the accents that
// words for headings have: "Località", not "Localitą". Of those without one nothing is told.
func asSpelt(heading string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(norm.NFC.String(heading)), func(r rune) bool { return !isWordLetter(r) }) {
		if strings.IndexFunc(w, func(r rune) bool { return r >= 0x80 }) >= 0 && !accentedWords()[w] {
			return false
		}
	}
	return true
}

// accentedWords are the words with more than ASCII that headings are made of.
var accentedWords = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for _, entry := range Words() {
		for _, heading := range entry.Words {
			for w := range strings.FieldsFuncSeq(strings.ToLower(norm.NFC.String(heading)), func(r rune) bool { return !isWordLetter(r) }) {
				if strings.IndexFunc(w, func(r rune) bool { return r >= 0x80 }) >= 0 {
					all[w] = true
				}
			}
		}
	}
	return all
})
