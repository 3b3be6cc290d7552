package register

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Letters that no normal form takes apart, as people type them on a keyboard
// that lacks them.
var plainLetters = map[rune]string{
	'ß': "ss", 'æ': "ae", 'œ': "oe", 'ø': "o", 'đ': "d", 'ð': "d", 'ħ': "h", 'ı': "i",
	'ł': "l", 'ŧ': "t", 'þ': "th", 'ŋ': "n", 'ĸ': "k", 'ɨ': "i", 'ς': "σ",
}

// fold returns text as it is searched: in small letters, without accents and
// other marks, ligatures taken apart.
func fold(text string) string {
	var b strings.Builder
	b.Grow(len(text))
	// Beside bytes that are not text the normal form would leave letters whole.
	for _, r := range norm.NFKD.String(strings.ToValidUTF8(text, "\uFFFD")) {
		switch {
		case r < utf8.RuneSelf:
			if 'A' <= r && r <= 'Z' {
				r += 'a' - 'A'
			}
			b.WriteByte(byte(r))
			continue
		case unicode.Is(unicode.M, r):
			continue
		case 0x2B9 <= r && r <= 0x2FF: // modifier letters: the apostrophe in OʼNeill, the ʻokina
			b.WriteByte('\'')
			continue
		}
		r = unicode.ToLower(r)
		if plain, ok := plainLetters[r]; ok {
			b.WriteString(plain)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

func isWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) }

// longestWord is how much of a word is searched, in bytes: more is no word.
const longestWord = 100

// words returns the folded words of text, each once, in order. The sign of a
// hybrid is no word, nor is the letter x that stands for it.
func words(text string) []string {
	var list []string
	for _, w := range strings.FieldsFunc(fold(text), func(r rune) bool { return !isWord(r) }) {
		if w = cut(w, longestWord); w != "x" && !slices.Contains(list, w) {
			list = append(list, w)
		}
	}
	return list
}

// cut returns the first n bytes of s, whole characters only.
func cut(s string, n int) string {
	if len(s) <= n {
		return s
	}
	for !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n]
}

// joined returns the letters and figures of text, folded, without all that
// stands between: "CN97-114" is "cn97114".
func joined(text string) string {
	return cut(strings.Map(func(r rune) rune {
		if isWord(r) {
			return r
		}
		return -1
	}, fold(text)), longestWord)
}

// catalogKey is how a catalogue number is looked up. Check characters that are
// signs do not count.
func catalogKey(number string) string { return joined(number) }

// indexKey returns text, or a digest of it where it is too long for an index
// of PostgreSQL.
func indexKey(text string) string {
	if len(text) <= 500 {
		return text
	}
	sum := sha256.Sum256([]byte(text))
	return "sha256:" + hex.EncodeToString(sum[:])
}

// noNumber are the ways in which people write that a gathering has no number,
// as joined leaves them. Common practice of several languages, no source.
var noNumber = []string{"sn", "sno", "snr", "snum", "snumero", "na", "nil", "none", "null", "unknown", "missing", "nonumber", "nonum", "unnumbered", "notnumbered", "withoutnumber", "withoutno",
	"sinenumero", "sinenum", "sineno", "semnumero", "semnum", "semno", "semn", "sinnumero", "sinnum", "sinno", "sinn", "sansnumero", "sansnum", "sansno", "sansn",
	"senzanumero", "senzanum", "senzano", "senzan", "ohnenummer", "ohnenr", "onr", "zondernummer"}

// numbered reports whether text is a collector's number rather than a word for
// there being none.
func numbered(text string) bool {
	key := joined(text)
	return strings.Trim(key, "0") != "" && !slices.Contains(noNumber, key)
}

// noCollector are the same for the collector.
var noCollector = []string{"", "scoll", "scol", "sc", "anon", "anonymous", "anonimo", "anonym", "anonyme", "unknown", "unknowncollector", "na", "nil", "none", "null",
	"sinecollectore", "collectorunknown", "notrecorded", "unbekannt", "desconhecido", "desconocido", "inconnu"}

// gatheringKey is what a specimen without an identifier is known again by:
// collector, number and part. ok is false where collector or number is absent,
// for then a second specimen would be taken for the first.
func gatheringKey(s Specimen) (key string, ok bool) {
	if !numbered(s.Number) || slices.Contains(noCollector, joined(s.Collector)) {
		return "", false
	}
	// "Almeida, I." and "I. Almeida" are one; "97-12" and "9712" are two.
	collector := words(s.Collector)
	slices.Sort(collector)
	number := strings.FieldsFunc(fold(s.Number), func(r rune) bool { return !isWord(r) })
	return indexKey(strings.Join(collector, " ") + "|" + strings.Join(number, "-") + "|" + strings.Join(words(s.Part), " ")), true
}
