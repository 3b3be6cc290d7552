package trade

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label/check"
)

// sentences are the columns that hold whole sentences, in which a word that stands
// twice running is a slip.
var sentences = []string{"locality", "verbatimLocality", "habitat", "plantDescription", "occurrenceRemarks", "fieldNotes", "eventRemarks", "locationRemarks",
	"identificationRemarks", "organismRemarks", "uses"}

// small are words that no language says twice running. Left out are those that one does:
// "had had", "nous nous", ", die die". From memory.
var small = wordSet("the of and in on at to from with near by for is are was an or its along between above below into onto over under " +
	"de da do das dos em na ao com por del el los las en con du des les le sur dans au aux avec pour di il nel und von am im bei mit auf van het een op met " +
	"road lake edge side hill bank rock soil sand tree leaf site area")

// doubling are words of five letters and more that are said twice: names of plants and
// grasses of the tropics, and for emphasis. From memory.
var doubling = wordSet("alang lalang ylang ilang muito mucho mucha tanto molto assai again really never tight tighter doucement subsp forma variety")

func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.FieldsSeq(list) {
		set[w] = true
	}
	return set
}

// fewLetters are too few for a word that is not small: bora bora, pili pili, muy muy.
const fewLetters = 5

// wordTwice returns where a word stands for the second time running, with the blanks
// before it; 0, 0 where none does. Epithets do, as in "Elymus glaucus glaucus".
func wordTwice(text string) (from, to int) {
	for start := 0; ; {
		n := strings.IndexByte(text[start:], ' ')
		if n < 0 {
			return 0, 0
		}
		end := start + n
		next := end
		for next < len(text) && text[next] == ' ' {
			next++
		}
		if n > 1 && len(text)-next >= n && text[start] == text[next] && text[start:end] == text[next:next+n] && endsWord(text[next+n:]) {
			w := text[start:end]
			if small[w] || isSmallWord(w) && !doubling[w] && inSentence(text[:start]) {
				return end, next + n
			}
		}
		start = next
	}
}

// endsWord reports whether a word ends before the rest of a text.
func endsWord(rest string) bool {
	r, _ := utf8.DecodeRuneInString(rest)
	return rest == "" || !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("-'’‐_/", r)
}

// isSmallWord reports whether a word is of small letters alone, and of enough.
func isSmallWord(w string) bool {
	n := 0
	for _, r := range w {
		if !unicode.IsLower(r) {
			return false
		}
		n++
	}
	return n >= fewLetters
}

// inSentence reports whether the word before is no genus, rank or abbreviation: behind
// those an epithet may stand twice.
func inSentence(before string) bool {
	w := strings.TrimRight(before, " ")
	w = w[strings.LastIndexByte(w, ' ')+1:]
	if w == "" || strings.HasSuffix(w, ",") || strings.HasSuffix(w, ";") {
		return true
	}
	r, _ := utf8.DecodeRuneInString(w)
	return unicode.IsLower(r) && !strings.Contains(w, ".") && !doubling[w] && w != "ssp" && w != "var"
}

// wordsTwice are cells of which saysTwice speaks.
var wordsTwice = check.NewMark(sentences, 0, func(text string) bool {
	_, to := wordTwice(text)
	return to > 0
})

// saysTwice speaks of a word that stands twice running in a record's sentences.
func saysTwice(c *check.Context) {
	c.Marked(wordsTwice, func(term, text, _ string) {
		from, to := wordTwice(text)
		word := strings.TrimLeft(text[from:to], " ")
		c.Suggest(term, "the word "+word+" stands twice: keep it once", text[:from]+text[to:])
	})
}
