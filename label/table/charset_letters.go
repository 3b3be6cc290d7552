package table

import (
	"bytes"
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// lettersTSV says how often the letters of each language follow each other: a
// line a language, its BCP 47 tag, then pairs with their counts, "_" for the
// edge of a word. For languages written with thousands of characters, counts of
// single characters. It is counted by a test of this package from the names of
// countries, languages and scripts in Unicode's CLDR (golang.org/x/text/language/display)
// and from invented field notes (testdata/letters.txt).
//
//go:embed vocabulary/letters.tsv
var lettersTSV []byte

// edge stands for what is before and after a word.
const edge = '_'

// A language is how likely letters follow each other in it.
type language struct {
	tag    string
	letter map[rune]uint8 // from 1; 0 is the edge of a word
	next   [][]float32    // logarithms, by letter and the letter after it
	alone  []float32      // of a letter whatever stands before it
	script *unicode.RangeTable
	signs  map[rune]float32 // instead, for thousands of characters
	listed *signList
}

// A signList is the characters that a national standard sets apart as those in
// common use, and how likely one of them and of the others is where the counts
// know neither.
type signList struct {
	common       func() map[rune]bool
	usual, other float32
}

var languages = sync.OnceValue(func() []*language {
	var all []*language
	for line := range bytes.Lines(lettersTSV) {
		tag, counts, _ := strings.Cut(strings.TrimSpace(string(line)), "\t")
		all = append(all, newLanguage(tag, strings.Fields(counts)))
	}
	return all
})

// signsOf are the lists of common characters: level 1 of GB 2312-80, of Big5
// and of JIS X 0208, the Hangul of KS X 1001.
var signsOf = map[string]*signList{
	"zh":      {sync.OnceValue(func() map[rune]bool { return rows(simplifiedchinese.GBK, 0xB0, 0xD7, 0xA1, 0xFE) }), -9.6, -13.5},
	"zh-Hant": {sync.OnceValue(func() map[rune]bool { return rows(traditionalchinese.Big5, 0xA4, 0xC6, 0x40, 0xFE) }), -9.9, -13.5},
	"ja":      {sync.OnceValue(func() map[rune]bool { return rows(japanese.EUCJP, 0xB0, 0xCF, 0xA1, 0xFE) }), -9.5, -13.5},
	"ko": {sync.OnceValue(func() map[rune]bool {
		m := map[rune]bool{}
		for r := rune(0xAC00); r <= 0xD7A3; r++ {
			m[r] = true
		}
		return m
	}), -9.3, -13.5},
}

// rows decodes the characters of two bytes.
func rows(e encoding.Encoding, lead0, lead1, trail0, trail1 int) map[rune]bool {
	m := map[rune]bool{}
	for lead := lead0; lead <= lead1; lead++ {
		for trail := trail0; trail <= trail1; trail++ {
			b, err := e.NewDecoder().Bytes([]byte{byte(lead), byte(trail)})
			if r, n := utf8.DecodeRune(b); err == nil && n == len(b) && unicode.Is(unicode.Han, r) {
				m[r] = true
			}
		}
	}
	return m
}

func newLanguage(tag string, counts []string) *language {
	l := &language{tag: tag, script: unicode.Latin, listed: signsOf[tag]}
	if l.listed != nil {
		total := 0.0
		n := map[rune]float64{}
		for _, c := range counts {
			signs, count, _ := strings.Cut(c, ":")
			k, err := strconv.ParseFloat(count, 64)
			must(err)
			for _, r := range signs {
				n[r] = k
				total += k
			}
		}
		l.signs = map[rune]float32{}
		for r, k := range n {
			l.signs[r] = float32(math.Log(0.75*k/total + math.Exp(float64(l.listed.usual))))
		}
		return l
	}
	type pair struct {
		a, b rune
		n    float64
	}
	var pairs []pair
	l.letter = map[rune]uint8{edge: 0}
	add := func(r rune) {
		if _, ok := l.letter[r]; !ok {
			l.letter[r] = uint8(len(l.letter))
		}
	}
	for _, c := range counts {
		ab, count, _ := strings.Cut(c, ":")
		a, n := utf8.DecodeRuneInString(ab)
		b, _ := utf8.DecodeRuneInString(ab[n:])
		k, err := strconv.ParseFloat(count, 64)
		must(err)
		add(a)
		add(b)
		pairs = append(pairs, pair{a, b, k})
		if a >= 0x370 && unicode.IsLetter(a) && !unicode.Is(unicode.Latin, a) {
			l.script = scriptOf(a)
		}
	}
	for r := 'a'; r <= 'z' && l.script == unicode.Latin; r++ {
		add(r)
	}
	size := len(l.letter)
	total := 0.0
	one, two := make([]float64, size), make([][]float64, size)
	for i := range two {
		two[i] = make([]float64, size)
	}
	for _, p := range pairs {
		two[l.letter[p.a]][l.letter[p.b]] = p.n
		one[l.letter[p.b]] += p.n
		total += p.n
	}
	// A pair not seen is as likely as its letter is by itself.
	const lent = 12
	l.alone = make([]float32, size)
	l.next = make([][]float32, size)
	for i := range one {
		one[i] = (one[i] + 0.3) / (total + 0.3*float64(size))
		l.alone[i] = float32(math.Log(one[i]))
	}
	for i := range two {
		sum := 0.0
		for _, n := range two[i] {
			sum += n
		}
		l.next[i] = make([]float32, size)
		for j, n := range two[i] {
			l.next[i][j] = float32(math.Log((n + lent*one[j]) / (sum + lent)))
		}
	}
	return l
}

// scriptOf returns the script of a letter, nil if it is none of those that the
// encodings here can write.
func scriptOf(r rune) *unicode.RangeTable {
	switch {
	case r < 0x250 || r >= 0x1E00 && r < 0x1F00 || r >= 0xFB00 && r < 0xFB07:
		return unicode.Latin
	case unicode.Is(unicode.Greek, r):
		return unicode.Greek
	case unicode.Is(unicode.Cyrillic, r):
		return unicode.Cyrillic
	case r >= 0x590 && r < 0x600:
		return unicode.Hebrew
	case r >= 0x600 && r < 0x780:
		return unicode.Arabic
	case r >= 0xE00 && r < 0xE80:
		return unicode.Thai
	case r == 'ー' || unicode.Is(unicode.Hiragana, r) || unicode.Is(unicode.Katakana, r):
		return unicode.Hiragana
	case unicode.Is(unicode.Hangul, r):
		return unicode.Hangul
	case unicode.Is(unicode.Han, r):
		return unicode.Han
	}
	return nil
}

// isWordLetter reports whether r is a letter of a word: ª and º are signs, the
// marks of Thai, Arabic and Hebrew are letters.
func isWordLetter(r rune) bool {
	if r < 0x80 {
		return 'a' <= r|0x20 && r|0x20 <= 'z'
	}
	return unicode.IsLetter(r) && r != 'ª' && r != 'º' && r != 'µ' || r >= 0x590 && r < 0xE80 && unicode.IsMark(r)
}

// small is the small letter; the Turkish İ has none of one letter.
func small(r rune) rune {
	if r == 'İ' {
		return r
	}
	return unicode.ToLower(r)
}

// Logarithms of how likely it is to meet what no count knows.
const (
	foreignLetter = -10  // a letter of the script that the language does not use
	foreignScript = -13  // a letter of another script
	latinInside   = -4.2 // a Latin letter where others are the rule
	figure        = -3.5
	scriptsMixed  = -6 // added where two scripts meet within a word
	afterFigure   = -3 // added to a letter beyond ASCII right behind a figure
	caseTurned    = -6 // added to a capital after a small letter
	beyondText    = -16
)

// likelihood is the logarithm of how likely the language has the text.
func (l *language) likelihood(text []rune) float32 {
	sum, before := float32(0), uint8(0)
	known := true // before is a letter of the language
	for i, r := range text {
		if !isWordLetter(r) {
			if before != 0 && known && l.next != nil {
				sum += l.next[before][0]
			}
			before, known = 0, true
			sum += signLikelihood(text, i)
			continue
		}
		if i > 0 && isWordLetter(text[i-1]) {
			sum += joined(text[i-1], r)
		}
		if i > 0 && r >= 0x80 && r < 0x2E80 && unicode.IsDigit(text[i-1]) {
			sum += afterFigure
		}
		s := small(r)
		if l.signs != nil {
			sum += l.sign(s)
			continue
		}
		at, ok := l.letter[s]
		switch {
		case !ok && scriptOf(s) == l.script:
			sum += foreignLetter
		case !ok && s < 0x80:
			sum += latinInside
		case !ok:
			sum += foreignScript
		case known:
			sum += l.next[before][at]
		default:
			sum += l.alone[at]
		}
		before, known = at, ok
	}
	if before != 0 && known && l.next != nil {
		sum += l.next[before][0]
	}
	return sum
}

// sign is the logarithm of how likely one of thousands of characters is.
func (l *language) sign(r rune) float32 {
	if p, ok := l.signs[r]; ok {
		return p
	}
	switch {
	case l.listed.common()[r]:
		return l.listed.usual
	case r < 0x80:
		return latinInside
	}
	switch scriptOf(r) {
	case unicode.Han:
		return l.listed.other
	case unicode.Hiragana:
		if l.tag == "ja" && (r < 0xFF61 || r > 0xFF9F) {
			return -9
		}
	}
	return foreignScript
}

// joined is what it costs that b follows a within a word.
func joined(a, b rune) float32 {
	x, y := scriptOf(a), scriptOf(b)
	if x == y {
		if unicode.IsUpper(b) && unicode.IsLower(a) {
			return caseTurned
		}
		return 0
	}
	switch {
	case isEastern(x) && isEastern(y):
		if x == unicode.Hangul || y == unicode.Hangul {
			return scriptsMixed
		}
		return 0
	case isEastern(x) || isEastern(y):
		return scriptsMixed / 2
	}
	return scriptsMixed
}

func isEastern(script *unicode.RangeTable) bool {
	return script == unicode.Han || script == unicode.Hiragana || script == unicode.Hangul
}

// isLoneAccent reports an accent that stands on no letter. Nobody types those,
// and they are at the places of signs that people do type (of ² in windows-1250).
func isLoneAccent(r rune) bool { return r >= 0x2D8 && r <= 0x2DD || r == 'ˇ' }

// signLikelihood is the logarithm of how likely a sign stands where it does:
// most have their place, as ° after a figure.
func signLikelihood(text []rune, i int) float32 {
	r, before, after := text[i], ' ', ' '
	if i > 0 {
		before = text[i-1]
	}
	if i+1 < len(text) {
		after = text[i+1]
	}
	digit, inside := unicode.IsDigit(before), isWordLetter(before) && isWordLetter(after)
	when := func(ok bool, usual float32) float32 {
		switch {
		case ok:
			return usual
		case inside:
			return -11
		}
		return -9
	}
	switch {
	case r < ' ' || r >= 0x7F && r < 0xA0:
		return beyondText
	case r < 0x80:
		return figure
	}
	switch r {
	case '°':
		return when(digit || before == ' ' || before|0x20 == 'n', -4)
	case '′', '″', '´', '¨':
		return when(digit || before == '´', -5)
	case 'º', 'ª':
		return when(digit || before == ' ' || before|0x20 == 'n' || before|0x20 == 's', -4.5)
	case '’':
		return when(isWordLetter(before) || digit, -4.5)
	case '‘', '“', '«', '‹':
		if isWordLetter(before) || digit { // as they end what is quoted in German, Danish and Czech
			return when(!inside && !unicode.IsDigit(after), -6.5)
		}
		return -5
	case '„', '¿', '¡':
		return when(!isWordLetter(before) && !digit, -5)
	case '”', '»', '›', '…':
		return when(!inside, -5)
	case '–', '—':
		return when(!inside, -4.5)
	case '×':
		return when(!inside, -4)
	case '±':
		return when(!inside, -5)
	case '½', '¼', '¾':
		return when(digit || before == ' ', -5)
	case '²', '³':
		return when((before == 'm' || digit) && !inside, -5)
	case 'µ':
		return when(after == 'm' || after == 'g' || after == 'l', -5.5)
	case '\u00A0':
		return when(!inside, -5.5)
	case '·':
		return when(before|0x20 == 'l' && after|0x20 == 'l' || !inside, -6.5)
	case '、', '。', '・', '（', '）', '，', '：', '；', '～', '\u3000', '「', '」':
		return -5.5
	case '§', '€', '£', '†', '•', '®', '©', '™', '‰', '♂', '♀', '≈', '≤', '≥', '−':
		return when(!inside, -7.5)
	case utf8.RuneError:
		return beyondText
	}
	if r >= 0xE000 && r < 0xF900 {
		return beyondText
	}
	if isLoneAccent(r) {
		return -16
	}
	if r >= 0xFF01 && r <= 0xFF5E { // of full width
		return -7
	}
	return -12
}
