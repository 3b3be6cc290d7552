package table

import (
	"fmt"
	"html"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// signDamage looks for characters that look as they should and are others.
func signDamage(text string, say func(rule *Rule, suggest, message string)) {
	var latin, cyrillic, greek, ligature, orphan bool
	suspicious := false
	before := rune(-1)
	check := func() {
		if latin && (cyrillic || greek) {
			suspicious = true
		}
		latin, cyrillic, greek = false, false, false
	}
	accents, strange := false, false
	for _, r := range text {
		switch {
		case r < 0x80 && isWordLetter(r):
			latin = true
		case r < 0x80:
			check()
		case r >= 0xFB00 && r <= 0xFB06 || r >= 0x1D400 && r <= 0x1D6A3 || r >= 0x1D7CE && r <= 0x1D7FF:
			ligature = true
		case unicode.Is(unicode.Mn, r):
			orphan = orphan || r < 0x370 && (before < 0 || !unicode.IsLetter(before) && !unicode.IsMark(before) && before != 0x25CC)
			strange = strange || strangeBelow(before, r)
		case strings.ContainsRune(loneAccents, r):
			accents = true
		default:
			switch scriptOf(r) {
			case unicode.Latin:
				latin = latin || unicode.IsLetter(r)
			case unicode.Cyrillic:
				cyrillic = true
			case unicode.Greek:
				greek = true
			}
		}
		before = r
	}
	check()
	if suspicious {
		if mended := sameScript(text); mended != text {
			say(ruleLookalike, mended, "letters of two scripts stand in one word, and some only look like those that are meant: no search finds it so")
		}
	}
	if ligature {
		say(ruleLigature, unligature(text), "holds letters in the shape of one sign, or in the shape of a font, in place of plain ones: no search finds the word so")
	}
	if orphan {
		say(ruleAccent, "", "an accent stands at a place without a letter: type the letter that was meant")
	}
	if strange {
		say(ruleAccent, "", "a mark stands under a letter that no language has it under: letters were read in the wrong encoding; type those that were meant")
	}
	if accents {
		if mended := joinAccents(text); mended != text {
			say(ruleAccent, mended, "an accent stands beside its letter, as copied from a PDF file: put them together")
		}
	}
}

// strangeBelow reports whether a mark under a letter is what an old encoding made of
// others: "esta̤̣o" was estação. Two dots are under letters of the romanized Persian
// alone (ALA-LC, from memory), a square in phonetic script.
func strangeBelow(letter, mark rune) bool {
	return mark == 0x33B || mark == 0x324 && unicode.IsLetter(letter) && !strings.ContainsRune("zsthdZSTHD", letter)
}

// halfDashes puts back the dashes and apostrophes of which only the last two signs
// of three are left, as "€“" of "â€“".
func halfDashes(text string) string {
	if !strings.Contains(text, "€") || strings.Contains(text, "â€") {
		return text
	}
	return strings.NewReplacer("€“", "–", "€”", "—", "€™", "’", "€œ", "“").Replace(text)
}

// isMisreadDegree reports whether a sign behind a figure is what the sign for
// degrees, or an ordinal that is typed for it, becomes where Windows-1252 is read
// as Mac Roman or the reverse.
func isMisreadDegree(r rune) bool { return r == '∞' || r == '¡' || r == '∫' }

// degrees puts the sign for degrees behind figures again.
func degrees(text string) string {
	rs := []rune(text)
	for i := 1; i < len(rs); i++ {
		if rs[i-1] >= '0' && rs[i-1] <= '9' && isMisreadDegree(rs[i]) {
			rs[i] = '°'
		}
	}
	return string(rs)
}

// twins are letters that look alike, as Latin ones. Those that nobody would take
// for each other are no damage, as in "β-form" and "Δh".
var twins = map[rune]rune{
	'а': 'a', 'е': 'e', 'о': 'o', 'р': 'p', 'с': 'c', 'х': 'x', 'у': 'y', 'і': 'i', 'ј': 'j', 'ѕ': 's', 'һ': 'h', 'ԁ': 'd', 'ӏ': 'l', 'ё': 'ë', 'ї': 'ï',
	'А': 'A', 'В': 'B', 'Е': 'E', 'К': 'K', 'М': 'M', 'Н': 'H', 'О': 'O', 'Р': 'P', 'С': 'C', 'Т': 'T', 'Х': 'X', 'У': 'Y', 'І': 'I', 'Ј': 'J', 'Ѕ': 'S',
	'ο': 'o', 'Α': 'A', 'Β': 'B', 'Ε': 'E', 'Ζ': 'Z', 'Η': 'H', 'Ι': 'I', 'Κ': 'K', 'Μ': 'M', 'Ν': 'N', 'Ο': 'O', 'Ρ': 'P', 'Τ': 'T', 'Υ': 'Y', 'Χ': 'X',
}

// twinOf is the letter of a script that looks like a Latin one.
var twinOf = func() map[*unicode.RangeTable]map[rune]rune {
	m := map[*unicode.RangeTable]map[rune]rune{unicode.Cyrillic: {}, unicode.Greek: {}}
	for other, latin := range twins {
		m[scriptOf(other)][latin] = other
	}
	return m
}()

// sameScript writes each word of two scripts in the one that most of its letters
// are in, if each of the others looks like a letter of that.
func sameScript(text string) string {
	rs := []rune(text)
	for from := 0; from < len(rs); {
		if !isWordLetter(rs[from]) {
			from++
			continue
		}
		to := from
		count := map[*unicode.RangeTable]int{}
		for to < len(rs) && isWordLetter(rs[to]) {
			count[scriptOf(rs[to])]++
			to++
		}
		toOneScript(rs[from:to], count)
		from = to
	}
	return string(rs)
}

func toOneScript(word []rune, count map[*unicode.RangeTable]int) {
	if len(count) != 2 {
		return
	}
	main, n := unicode.Latin, count[unicode.Latin]
	for s, k := range count {
		if k > n {
			main, n = s, k
		}
	}
	if n*2 < len(word) {
		return
	}
	mended := make([]rune, len(word))
	for i, r := range word {
		mended[i] = r
		if scriptOf(r) == main {
			continue
		}
		twin, ok := twins[r]
		if main != unicode.Latin {
			twin, ok = twinOf[main][r]
		}
		if !ok {
			return
		}
		mended[i] = twin
	}
	copy(word, mended)
}

// unligature takes ligatures apart, and letters out of the fonts that Unicode
// has for formulas.
func unligature(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r >= 0xFB00 && r <= 0xFB06 || r >= 0x1D400 && r <= 0x1D7FF:
			b.WriteString(norm.NFKC.String(string(r)))
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// loneAccents are accents that stand by themselves, and combining is what they
// are on a letter. ´ and ` are left out: they are typed for apostrophes.
const loneAccents = "¸˜¨ˆˇ˚˘˝˛"

var combining = map[rune]rune{'¸': 0x327, '˜': 0x303, '¨': 0x308, 'ˆ': 0x302, 'ˇ': 0x30C, '˚': 0x30A, '˘': 0x306, '˝': 0x30B, '˛': 0x328}

// joinAccents puts accents within words onto their letters: that before, or that
// after, whichever makes the likelier word.
func joinAccents(text string) string {
	rs := []rune(text)
	for i := 0; i < len(rs); i++ {
		mark, ok := combining[rs[i]]
		if !ok || i == 0 || !isWordLetter(rs[i-1]) {
			continue
		}
		if inside := i+1 < len(rs) && isWordLetter(rs[i+1]); !inside && (rs[i] == '¨' || rs[i] == 'ˆ') || inside && !unicode.IsLower(rs[i+1]) {
			continue
		}
		from, to := i, i+1
		for from > 0 && isWordLetter(rs[from-1]) {
			from--
		}
		for to < len(rs) && isWordLetter(rs[to]) {
			to++
		}
		best, most := []rune(nil), 0.0
		for _, with := range []int{i - 1, i + 1} {
			if with == len(rs) {
				break
			}
			joined := []rune(norm.NFC.String(string([]rune{rs[with], mark})))
			if len(joined) != 1 || joined[0] == 'ĥ' || joined[0] == 'Ĥ' { // what was ê in DOS, before an h: that of Esperanto is met nowhere
				continue
			}
			word := append([]rune{}, rs[from:min(i, with)]...)
			word = append(word, joined[0])
			word = append(word, rs[max(i, with)+1:to]...)
			if s := sense(word); best == nil || s > most {
				best, most = word, s
			}
		}
		if best == nil {
			continue
		}
		rs = append(append(append([]rune{}, rs[:from]...), best...), rs[to:]...)
	}
	return string(rs)
}

var (
	entity    = regexp.MustCompile(`&(#[0-9]{2,7}|#[xX][0-9a-fA-F]{2,6}|[A-Za-z][A-Za-z0-9]{1,30});`)
	webTag    = regexp.MustCompile(`(?i)</?(?:p|br|i|b|u|a|em|strong|span|sup|sub|small|font|div|ul|ol|li|h[1-6]|tt|td|tr|table)(?:\s[^<>]*)?/?>`)
	anyTag    = regexp.MustCompile(`</?[A-Za-z][A-Za-z0-9]*(?:\s[^<>]*)?/?>`) // beside one of those
	webBreak  = regexp.MustCompile(`(?i)</?(?:p|br|div|li|td|tr|h[1-6])[\s/>]`)
	escape    = regexp.MustCompile(`\\u[0-9a-fA-F]{4}|\\x[0-9a-fA-F]{2}|_x[0-9A-Fa-f]{4}_|(?:%[C-F][0-9A-F](?:%[89AB][0-9A-F])+)+`)
	lostLower = regexp.MustCompile(`\pL\p{Ll}*(?:\?{1,4}\p{Ll}+)+|\p{Lu}+(?:\?{1,4}\p{Lu}+)+`)
)

const holdsTags = "holds the marks of a web page, which are printed as letters: take them out"

// escapes looks for letters written as their codes, and for ? in the place of
// one.
func escapes(text string, say func(rule *Rule, suggest, message string)) {
	if i := strings.IndexByte(text, '&'); i >= 0 && strings.IndexByte(text[i:], ';') > 0 {
		mended := entity.ReplaceAllStringFunc(text, func(e string) string {
			if s := html.UnescapeString(e); !strings.HasSuffix(s, ";") {
				return s
			}
			return e
		})
		if mended != text {
			say(ruleEntity, withoutTags(mended), "holds characters as a web page writes them: put back the characters themselves")
			return
		}
	}
	if strings.IndexByte(text, '<') >= 0 && (webTag.MatchString(text) || tagged(text)) {
		say(ruleEntity, withoutTags(text), holdsTags)
		return
	}
	if strings.Contains(text, "#?#") {
		say(ruleReplacement, "", "a character was lost in an earlier conversion and #?# stands for it: type it again from the field notes")
		return
	}
	if strings.Contains(text, "://") || strings.Contains(text, "www.") {
		return // an address may hold what follows
	}
	if strings.Contains(text, `\u`) || strings.Contains(text, `\x`) || strings.Contains(text, "_x") || strings.Count(text, "%") > 1 {
		mended := escape.ReplaceAllStringFunc(text, unescapeCode)
		if mended != text {
			say(ruleEntity, mended, "holds characters as codes of a program: put back the characters themselves")
			return
		}
	}
	if i := strings.IndexByte(text, '?'); i > 0 && strings.TrimLeft(text[i:], "? ") != "" {
		if n := lostLetters(text); n > 0 {
			say(ruleReplacement, "", fmt.Sprintf("%s lost in an earlier conversion and ? stands for it: type it again from the field notes", plural(n, "a letter was", "%d letters were")))
		}
	}
}

// closing is the second of a pair of tags, of any name.
var closing = regexp.MustCompile(`</([A-Za-z][A-Za-z0-9]*)>`)

// tagged reports whether a pair of tags stands in the text.
func tagged(text string) bool {
	for _, m := range closing.FindAllStringSubmatchIndex(text, -1) {
		if open := "<" + text[m[2]:m[3]]; strings.Contains(text[:m[0]], open+">") || strings.Contains(text[:m[0]], open+" ") {
			return true
		}
	}
	return false
}

// withoutTags takes the tags of a web page out; those that begin a line or a
// block part words.
func withoutTags(text string) string {
	mended := anyTag.ReplaceAllStringFunc(text, func(tag string) string {
		if webBreak.MatchString(tag) {
			return " "
		}
		return ""
	})
	if mended == text {
		return text
	}
	return strings.Join(strings.Fields(mended), " ")
}

// unescapeCode returns the character that a code stands for, the code if there
// is none.
func unescapeCode(code string) string {
	if code[0] == '%' {
		if s, err := url.PathUnescape(code); err == nil && utf8.ValidString(s) {
			return s
		}
		return code
	}
	n, err := strconv.ParseUint(strings.Trim(code[2:], "_"), 16, 32)
	r := rune(n)
	switch {
	case err != nil || !utf8.ValidRune(r):
		return code
	case code[0] == '_' && (r == '\r' || r == '\n'): // of line ends in a workbook
		return ""
	case code[0] == '_' && r == '_':
		return "_"
	case !unicode.IsPrint(r) || r < 0x80 && code[0] == '\\':
		return code
	}
	return string(r)
}

// lostLetters counts the question marks that stand within words of one case. A
// mark before x is one of doubt before a hybrid's sign.
func lostLetters(text string) int {
	n := 0
	for _, word := range lostLower.FindAllString(text, -1) {
		if i := strings.IndexByte(word, '?'); strings.TrimLeft(word[i:], "?") == "x" {
			continue
		}
		n += strings.Count(word, "?")
	}
	return n
}
