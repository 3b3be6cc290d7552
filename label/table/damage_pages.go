package table

import (
	"math"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// A paging is text of one page of 256 characters that was read as another: the
// letters that were typed, by what stands there.
type paging map[rune]rune

// pagings are those that are met: what DOS and old Macs wrote, read by Windows,
// the reverse, and what one Windows wrote, read by another.
var pagings = sync.OnceValue(func() []paging {
	var all []paging
	for _, p := range []struct{ shown, typed *charmap.Charmap }{
		{charmap.Windows1252, charmap.CodePage850}, {charmap.Windows1252, charmap.Macintosh}, {charmap.Macintosh, charmap.Windows1252},
		{charmap.CodePage850, charmap.Windows1252}, {charmap.CodePage437, charmap.Windows1252},
		{charmap.Windows1252, charmap.Windows1250}, {charmap.Windows1252, charmap.Windows1254}, {charmap.Windows1252, charmap.Windows1257},
		{charmap.Windows1252, charmap.Windows1251}, {charmap.Windows1252, charmap.Windows1253}, {charmap.Windows1252, charmap.CodePage866},
	} {
		m := paging{}
		for c := 0x80; c <= 0xFF; c++ {
			shown, typed := p.shown.DecodeByte(byte(c)), p.typed.DecodeByte(byte(c))
			if shown == utf8.RuneError { // as ISO-8859-1
				shown = rune(c)
			}
			if isWordLetter(typed) {
				m[shown] = typed
			}
		}
		all = append(all, m)
	}
	return all
})

// undo returns what was typed; false if a character stands for no letter.
func (m paging) undo(text string) (string, bool) {
	out := make([]rune, 0, len(text))
	for _, r := range text {
		if r >= 0x80 {
			typed, ok := m[r]
			if !ok {
				return "", false
			}
			r = typed
		}
		out = append(out, r)
	}
	return string(out), true
}

// What it takes to say that text was read as another page.
const (
	strangeSign = 4   // what a sign within a word counts, or a capital after a small letter,
	gainStrange = 4   // the gain that is enough where there is one,
	isPlain     = 1.5 // and the most that the text may then be off;
	clearly     = 4   // and by how much one reading must be likelier than another to be told
)

// unpaged returns what was typed where text was read as another page, "" where
// two readings are as likely. found is false where the text makes sense as it is,
// or makes none on any page.
func unpaged(text string) (typed string, found bool) {
	if usualLetters(text) {
		return "", false
	}
	strange := withinWords(text)
	if strange == 0 && !crowded(text) {
		return "", false
	}
	if typed, found := unpagedWords(text); found {
		return typed, true
	}
	was := nonsense(text) + strangeSign*float64(strange)
	need, off := float64(gainStrange), isPlain
	if strange == 0 {
		if need, off = gain, isWord; was <= noWord || dashed(text) {
			return "", false
		}
	}
	least, most := was-need, math.Inf(-1)
	for _, p := range pagings() {
		next, ok := p.undo(text)
		if !ok || next == text || withinWords(next) > 0 {
			continue
		}
		n := nonsense(next)
		if n >= off || n > least {
			continue
		}
		switch l := likely(next); {
		case !found || n < least || l > most+clearly:
			typed, least, most, found = next, n, max(l, most), true
		case l > most-clearly && next != typed:
			typed, most = "", max(l, most)
		}
	}
	if typed == "" && withinWords(dashes.Replace(text)) == 0 && !crowded(text) {
		return "", false // a dash alone, of which no one letter can be made
	}
	return typed, found
}

// usualLetters reports whether all that is beyond ASCII are small letters of the
// first Latin page, hardly one behind the other, and capitals that begin a word:
// text that needs no closer look.
func usualLetters(text string) bool {
	before, run := ' ', 0
	for _, r := range text {
		if r < 0x80 {
			run = 0
		} else if run++; run > 3 || !unicode.IsLetter(r) || r > 0xFF || r == 'ª' || r == 'º' || r == 'µ' || unicode.IsUpper(r) && unicode.IsLower(before) {
			return false
		}
		before = r
	}
	return true
}

// crowded reports whether many letters with accents follow each other, as in no
// language, but where Cyrillic or Greek is read as Latin.
func crowded(text string) bool {
	n := 0
	for _, r := range text {
		if n++; r < 0xC0 || r > 0xFF {
			n = 0
		}
		if n == 4 {
			return true
		}
	}
	return false
}

// withinWords counts the signs that stand within words, where none does, and
// the capitals after a small letter that begin no word: that of "NovaÉvora" does. An
// acute alone is what many keyboards have for an apostrophe: "Vale d´Água", "M´lang".
func withinWords(text string) int {
	n := 0
	rs := []rune(text)
	letter := func(i int) bool { return i >= 0 && i < len(rs) && isWordLetter(rs[i]) }
	letters := func(i, step int) (n int) {
		for ; letter(i); i += step {
			n++
		}
		return n
	}
	for i, r := range rs {
		switch {
		case r == 'ˆ': // that may belong to a letter beside it
			if letter(i-1) && letter(i+1) && nonsense(joinAccents(text)) > 2 {
				n++
			}
		case r < 0x80 || r == '‘' || r == '´' || isInvisible(r) || strings.ContainsRune(loneAccents, r):
		case r == 'ƒ':
			if letter(i-1) && letter(i+1) {
				n++
			}
		case isWordLetter(r) && scriptOf(r) != unicode.Latin && (scriptOf(r) != unicode.Greek || twins[r] != 0 || r == 'ε'): // as Berber has it
		case isWordLetter(r):
			if letter(i-1) && joined(rs[i-1], r) < 0 && !(letters(i-1, -1) > 2 && letters(i, 1) > 3 && nonsense(string(rs[:i])+" "+string(rs[i:])) < 2) {
				n++
			}
		case r == 'µ':
			if after := string(rs[i+1 : i+1+letters(i+1, 1)]); after != "" && !microUnit[after] {
				n++
			}
		case r == '–' || r == '—': // "Castilla–La Mancha", "oak–beech wood", but not "Espa–a"
			before, after := letters(i-1, -1), letters(i+1, 1)
			if min(before, after) > 2 {
				return 0 // dashes join words here
			}
			if before > 0 && after > 0 && before+after > 2 && unicode.IsLower(rs[i-1]) && unicode.IsLower(rs[i+1]) && !(i > before && isApostrophe(rs[i-before-1])) && dashForLetter(r, rs[i-before:i], rs[i+1:i+1+after]) {
				n++
			}
		case r == '“' || r == '”': // for the sign that parts them, "Yur”yivka"; behind a word that lacks its blank; but not "K”ln"
			if before := letters(i-1, -1); before > 0 && before <= 4 && letter(i+1) && !strings.ContainsRune("yYjJ", rs[i+1]) {
				n++
			}
		case letter(i-1) && letter(i+1) && signLikelihood(rs, i) <= -11:
			n++
		}
	}
	return n
}

// microUnit are the units of which there are millionths: µm, µmol.
var microUnit = wordList("m | g | l | L | M | S | s | mol | mho | A | V | W | F | H | J | N | Sv | Gy | Bq | Pa | sec | bar | c | phot")

// dashForLetter reports whether a dash may stand for the letter that an old Mac had in
// its place: ñ, between vowels, for the short one and ó, between consonants or before
// the n that ends a word, for the long one.
func dashForLetter(dash rune, before, after []rune) bool {
	last, next := before[len(before)-1], after[0]
	if dash == '–' {
		return isVowel(last) && isVowel(next)
	}
	if next == 'n' && len(after) == 1 {
		return true
	}
	return !isVowel(last) && !isVowel(next) && len(after) > 2
}

func isVowel(r rune) bool { return strings.ContainsRune("aeiouáéíóúüAEIOUÁÉÍÓÚÜ", r) }

func isApostrophe(r rune) bool { return r == '\'' || r == '’' || r == '‘' || r == '´' }

// likely is how likely the words of a text that hold more than ASCII are, each in
// the language that has it the likeliest.
func likely(text string) float64 {
	sum := 0.0
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return r < 0x80 && !isWordLetter(r) }) {
		w := []rune(word)
		script := scriptBeyond(w)
		if script == nil {
			continue
		}
		best := math.Inf(-1)
		for _, l := range languages() {
			if l.writes(script) {
				best = max(best, float64(l.likelihood(w)))
			}
		}
		sum += best
	}
	return sum
}
