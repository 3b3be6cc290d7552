package trade

import (
	"regexp"
	"strings"

	"cornerslip/label/check"
)

// asking are words that have another behind them in every language that has them, in
// small letters: Portuguese, Spanish, French, English, German, Italian. Left out are those
// that are other words as well: pelos are hairs, dos is two, ao a Vietnamese pond. From memory.
var asking = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields("de do da das à às aos em com na nas del la las los con du des le les au aux the of from at between der den dem und bei vom zum zur della dei delle nel nella " +
		"próx próx. próximo à") {
		m[w] = true
	}
	return m
}()

// askingTerms are the columns of words for a place and a plant; in the others the names
// of people end so: Oliveira, A. de.
var askingTerms = []string{"locality", "verbatimLocality", "habitat", "substrate", "plantDescription", "locationRemarks"}

// remarkTerms are columns of words for anything, people too: there the word before must
// be none of a name.
var remarkTerms = []string{"occurrenceRemarks", "fieldNotes", "eventRemarks", "organismRemarks"}

// remarksShort are remarks that end with one of them.
var remarksShort = check.NewMark(remarkTerms, 0, func(text string) bool {
	n := len(text)
	if n < 8 || text[n-1] < 'a' {
		return false
	}
	i := strings.LastIndexByte(text, ' ')
	if i < 0 || len(text)-i > 9 || !asking[text[i+1:]] {
		return false
	}
	before := text[strings.LastIndexByte(text[:i], ' ')+1 : i]
	return len(before) >= 3 && before[0] >= 'a' && before[0] <= 'z' && before[len(before)-1] >= 'a'
})

// endsShort are cells that end with one of them.
var endsShort = check.NewMark(askingTerms, 0, func(text string) bool {
	if n := len(text); n < 8 || text[n-1] < 'a' && text[n-1] != '.' {
		return false
	}
	i := strings.LastIndexByte(text, ' ')
	return i > 0 && len(text)-i <= 9 && asking[text[i+1:]] && !inverted.MatchString(text)
})

// inverted is a place named before the way to it, as gazetteers and card indexes have
// it: "Qaanaaq, 2 km NE of". Common practice, no source. Without a distance and with the
// side in full, "the ridge, north of", it may as well be cut.
var inverted = regexp.MustCompile(`,\s*(?:(?:ca?|about)\.? ?)?(?:(?:\d[\d.,½/–-]* ?(?:km|m|mi|miles?)\.? )?(?i:[ns]\.?(?:[ns]?[ew]\.?)?|[ew]\.?(?:[ns][ew]\.?)?)|\d[\d.,½/–-]* ?(?:km|m|mi|miles?)\.? (?:due )?(?:(?:north|south)[ -]?(?:east|west)?|east|west)) (?:of|from)$`)

// saysEndsShort speaks of a text that breaks off within a sentence.
func saysEndsShort(c *check.Context) {
	c.Marked(endsShort|remarksShort, func(term, text, _ string) {
		c.Report(term, "ends with the word "+text[strings.LastIndexByte(text, ' ')+1:]+", behind which something is missing: look up how it ends")
	})
}
