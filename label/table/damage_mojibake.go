package table

import (
	"maps"
	"math"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/unicode/norm"
)

// A misreading is UTF-8 read as something else.
type misreading struct {
	bytes map[rune]byte // of the characters from 0x80 up
	// sure reports whether a sequence that would be r is no text that anybody
	// typed: before is the character in front of it. Where it is nil or does not,
	// the words decide.
	sure func(before rune, seq []rune, r rune) bool
}

// misreadings are tried in this order. Those with a sure sign come first.
var misreadings = sync.OnceValue(func() []misreading {
	bytesOf := func(m *charmap.Charmap) map[rune]byte {
		b := map[rune]byte{}
		for c := 0x80; c <= 0xFF; c++ {
			if r := m.DecodeByte(byte(c)); r != utf8.RuneError {
				b[r] = byte(c)
			}
		}
		return b
	}
	windows := bytesOf(charmap.Windows1252)
	for r := rune(0x80); r < 0xA0; r++ { // as ISO-8859-1
		if _, ok := windows[r]; !ok {
			windows[r] = byte(r)
		}
	}
	lead := func(leads string) func(rune, []rune, rune) bool {
		return func(_ rune, seq []rune, r rune) bool {
			return strings.ContainsRune(leads, seq[0]) && (seq[0] != '‚' || seq[1] == 'Ä') && unicode.IsPrint(r)
		}
	}
	all := []misreading{
		{windows, sureWindows},
		{bytesOf(charmap.Macintosh), func(before rune, seq []rune, r rune) bool {
			if seq[0] == '≈' || seq[0] == 'ƒ' { // a figure or a blank stands behind them, no sign and no letter
				return unicode.Is(unicode.Latin, r)
			}
			return lead("√¬‚")(before, seq, r)
		}},
		{bytesOf(charmap.CodePage850), lead("├┬")},
		{bytesOf(charmap.CodePage437), lead("├┬")},
	}
	for _, m := range []*charmap.Charmap{charmap.Windows1250, charmap.Windows1251, charmap.Windows1254, charmap.Windows1257, charmap.Windows1253,
		charmap.ISO8859_2, charmap.ISO8859_15, charmap.CodePage852, charmap.CodePage866, charmap.KOI8R, charmap.MacintoshCyrillic} {
		b := bytesOf(m)
		if m == charmap.CodePage866 { // else all of Russian would be in question
			maps.DeleteFunc(b, func(_ rune, c byte) bool { return c >= 0xE0 && c != 0xE2 })
		}
		all = append(all, misreading{b, nil})
	}
	kana := map[rune]byte{} // Shift JIS has them for single bytes
	for c := 0xA1; c <= 0xDF; c++ {
		kana[rune(0xFF61+c-0xA1)] = byte(c)
	}
	return append(all, misreading{kana, func(_ rune, seq []rune, r rune) bool { return scriptOf(r) == unicode.Latin }})
})

// roles says in which misreadings a character stands for a byte that begins a
// character of UTF-8, and in which for one that goes on with it.
type roles struct{ lead, rest []uint32 }

const roleLimit = 0x2600 // characters from here up are looked up apart

var misreadingRoles = sync.OnceValue(func() roles {
	r := roles{make([]uint32, roleLimit), make([]uint32, roleLimit)}
	for i, m := range misreadings() {
		for c, b := range m.bytes {
			switch {
			case c >= roleLimit:
			case b >= 0xC2 && b <= 0xF4:
				r.lead[c] |= 1 << i
			case b < 0xC0:
				r.rest[c] |= 1 << i
			}
		}
	}
	return r
})

// misread returns, a bit for each, the misreadings by which two characters can
// be the first bytes of one.
func misread(a, b rune) uint32 {
	switch {
	case a < 0x80:
		return 0
	case a < roleLimit && b < roleLimit:
		roles := misreadingRoles()
		return roles.lead[a] & roles.rest[b]
	case a >= 0xFF61 && a <= 0xFF9F && b >= 0xFF61 && b <= 0xFF9F:
		return 1 << (len(misreadings()) - 1)
	}
	return 0
}

// afterCapitals stand after a word in capitals without any fault: "IRMÃ”",
// "«FERMÉ »". As the second byte of a character they prove nothing there.
const afterCapitals = "‘’“”–—…«»‹›•\u00A0"

// sureWindows decides for UTF-8 read as windows-1252 or ISO-8859-1.
func sureWindows(before rune, seq []rune, r rune) bool {
	weak := true
	for _, c := range seq[1:] {
		if c >= 0x80 && c < 0xA0 {
			return true // a control character stands in no text
		}
		weak = weak && strings.ContainsRune(afterCapitals, c)
	}
	if !unicode.IsPrint(r) && r != 0xA0 && r != 0xAD {
		return false
	}
	switch {
	case seq[0] == '×' || seq[0] == 'ß': // ×‘Peace’, Spaß”
		return false
	case strings.ContainsRune("ŠšŽžŒœŸ", seq[1]) && !unicode.Is(unicode.Latin, r): // Úštěk, Úžlabina
		return false
	case len(seq) == 2:
		return !weak || unicode.IsLower(before) && unicode.IsUpper(seq[0]) ||
			seq[1] == 0xA0 && (seq[0] == 'Ã' || seq[0] == 'Â') && !unicode.IsUpper(before) // "à" and a no-break space
	case len(seq) == 3:
		return !weak && (r >= 0x1E00 && r < 0x2C00 || r >= 0xFB00 && r < 0xFB07)
	}
	return false
}

// unmojibake puts back what was typed where UTF-8 was read in another encoding
// and saved; several times over, if that was done. Text without a sure sign of
// it comes back unchanged. may are the misreadings that come into question.
// unread is true if letters are left of which the second half is lost.
func unmojibake(text string, may uint32) (mended string, unread bool) {
	sure := false
	mended = text
	if may = may & holds(text, may); may == 0 {
		return halves(text, false)
	}
	for i, m := range misreadings() {
		if may&(1<<i) != 0 {
			if once, ok := m.undo(text); ok {
				mended, sure = once, true
				break
			}
		}
	}
	for range 3 {
		again := mended
		if sure {
			again, _ = misreadings()[0].undo(mended)
		}
		if again == mended {
			break
		}
		mended = again
	}
	if !sure && may != 0 || sure && !clean(mended) {
		if best, ok := likeliest(text, mended, sure); ok {
			mended, sure = best, true
		}
	}
	return halves(mended, sure)
}

// clean reports whether no sign stands where none does, and no capital after a
// small letter: text that needs no further look.
func clean(text string) bool { return strangeSigns(text) == 0 }

// strangeSigns counts the signs that stand where none does, and the capitals
// after a small letter.
func strangeSigns(text string) int {
	n := 0
	rs := []rune(text)
	for i, r := range rs {
		if r >= 0x80 && (!isWordLetter(r) && signLikelihood(rs, i) <= -9 || isWordLetter(r) && i > 0 && isWordLetter(rs[i-1]) && joined(rs[i-1], r) < 0) {
			n++
		}
	}
	return n
}

// likeliest tries all misreadings, one upon the other, and returns the text that
// makes most sense. It is none if the text as it is makes sense; or, where it is
// sure that it was misread, if mended, which has only what is sure, makes as
// much.
func likeliest(text, mended string, sure bool) (string, bool) {
	if len(text) > 2000 {
		return "", false // what is sure is enough
	}
	type try struct {
		text  string
		depth int
	}
	was := 0.0
	if !sure {
		if was = nonsense(text); was <= noWord || dashed(text) {
			return "", false
		}
	}
	best, least := text, math.Inf(1)
	if sure {
		best, least = mended, nonsense(mended)-1
	}
	seen := map[string]bool{text: true}
	for list := []try{{text, 0}}; len(list) > 0 && len(seen) < 64; list = list[1:] {
		t := list[0]
		for i, m := range misreadings() {
			if present(t.text)&(1<<i) == 0 {
				continue
			}
			next := m.force(t.text)
			if seen[next] {
				continue
			}
			seen[next] = true
			if n := nonsense(next) + float64(t.depth)/2; n < least {
				best, least = next, n
			}
			if t.depth < 2 {
				list = append(list, try{next, t.depth + 1})
			}
		}
	}
	return best, sure || best != text && was-least > gain && least < isWord+gain/4
}

// What it takes to judge text by its words alone: what it was makes no sense in
// any language that is known, and what it would be does.
const (
	noWord = 5
	gain   = 8
	isWord = 4
)

// dashes part words as blanks do.
var dashes = strings.NewReplacer("–", " ", "—", " ")

// dashed reports whether all that speaks of a misreading are dashes between words:
// "Москва—Владимир".
func dashed(text string) bool {
	parted := dashes.Replace(text)
	return parted != text && (nonsense(parted) <= noWord || joinsWords(text))
}

// joinsWords reports whether every dash of a text stands between words of three
// letters and more, or blanks. Where it is half of a letter that was misread, the
// other half stands beside it, and the next one behind that.
func joinsWords(text string) bool {
	run, behind := 0, false // letters since the last sign; and whether that was a dash
	for _, r := range text + " " {
		if isWordLetter(r) {
			run++
			continue
		}
		dash := r == '–' || r == '—'
		if (dash || behind) && (run == 1 || run == 2 || run == 0 && behind && r >= 0x80) {
			return false
		}
		run, behind = 0, dash
	}
	return true
}

// present returns the misreadings of which a sequence is in the text.
func present(text string) uint32 {
	may, before := uint32(0), rune(0)
	for _, r := range text {
		if r >= 0x80 {
			may |= misread(before, r)
		}
		before = r
	}
	return may
}

// holds returns those of the misreadings of which there is a whole sequence.
func holds(text string, may uint32) (found uint32) {
	for i, m := range misreadings() {
		if may&(1<<i) != 0 && m.in(text) {
			found |= 1 << i
		}
	}
	return found
}

// in reports whether the text holds a sequence.
func (m misreading) in(text string) bool {
	var ahead [4]rune
	n := 0
	for _, r := range text {
		if n == len(ahead) {
			if _, size := m.sequence(ahead[:]); size > 0 {
				return true
			}
			copy(ahead[:], ahead[1:])
			n--
		}
		ahead[n] = r
		n++
	}
	for i := range n {
		if _, size := m.sequence(ahead[i:n]); size > 0 {
			return true
		}
	}
	return false
}

// nonsense is how far the words of a text that hold more than ASCII are from
// those of any language.
func nonsense(text string) float64 {
	sum := 0.0
	for word := range strings.FieldsFuncSeq(norm.NFC.String(text), func(r rune) bool { return r < 0x80 && !isWordLetter(r) && !unicode.IsDigit(r) }) {
		if strings.IndexFunc(word, func(r rune) bool { return r >= 0x80 }) >= 0 {
			sum += max(0, -4-sense([]rune(word)))
			for _, r := range word {
				if r >= 0x300 && r < 0x370 { // a mark that is on no letter
					sum += 12
				}
			}
		}
	}
	return sum
}

// sense is how well a word fits the language that it fits best; more than
// enough is not told.
func sense(text []rune) float64 {
	script := scriptBeyond(text)
	if script == nil {
		script = unicode.Latin
	}
	all := usual(text)
	best := math.Inf(-1)
	for _, l := range languages() {
		if !l.writes(script) {
			continue
		}
		if best = max(best, float64(l.likelihood(text))+all); best > 0 {
			break
		}
	}
	return max(best, -1000)
}

// halves looks for Ã and Â whose second half was lost: a capital within a word
// of small letters, and before what is no letter. A no-break space that became
// a plain one, and a soft hyphen that was dropped, can be put back. sure is true
// if the text was misread for certain.
func halves(text string, sure bool) (mended string, unread bool) {
	if !strings.ContainsAny(text, "ÃÂ") {
		return text, false
	}
	rs := []rune(text)
	at := func(i int) rune {
		if i < 0 || i >= len(rs) {
			return ' '
		}
		return rs[i]
	}
	var b strings.Builder
	for i := 0; i < len(rs); i++ {
		r, before, after := rs[i], at(i-1), at(i+1)
		inside := unicode.IsLower(before)
		broken := r == 'Ã' || r == 'Â'
		switch {
		case broken && (after == '_' || after == '?' || after == utf8.RuneError) && (inside || sure || unicode.IsLower(at(i+2))):
			unread = true
			b.WriteRune(r)
		case r == 'Ã' && after == ' ' && (inside || !unicode.IsLetter(before) && (sure || i+1 < len(rs) && at(i+2) == ' ')) && (i+1 < len(rs) || inside):
			b.WriteRune('à') // C3 and A0, which became a blank
			if i+2 < len(rs) && rs[i+2] == ' ' {
				i++
			}
		case r == 'Â' && after == ' ' && (unicode.IsDigit(before) || inside) && i+1 < len(rs):
			// C2 and A0: a no-break space alone
		case r == 'Ã' && inside && unicode.IsLower(after) && after < 0x80:
			b.WriteRune('í') // C3 and AD, a soft hyphen, which somebody dropped
		case broken && inside && unicode.IsLower(after) && after < 0x80:
			unread = true
			b.WriteRune(r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String(), unread
}

// undo undoes the misreading if at least one sequence is sure.
func (m misreading) undo(text string) (string, bool) {
	if m.sure == nil {
		return text, false
	}
	sure := false
	mended := m.each(text, func(before rune, seq []rune, r rune) { sure = sure || m.sure(before, seq, r) })
	if !sure {
		return text, false
	}
	return mended, true
}

// force undoes the misreading wherever there is a sequence.
func (m misreading) force(text string) string {
	return m.each(text, func(rune, []rune, rune) {})
}

// each undoes the misreading and calls meet with every sequence, what stands
// before it and what it would be.
func (m misreading) each(text string, meet func(before rune, seq []rune, r rune)) string {
	rs := []rune(text)
	var b strings.Builder
	for i := 0; i < len(rs); {
		r, n := m.sequence(rs[i:])
		if n == 0 {
			b.WriteRune(rs[i])
			i++
			continue
		}
		before := ' '
		if i > 0 {
			before = rs[i-1]
		}
		meet(before, rs[i:i+n], r)
		b.WriteRune(r)
		i += n
	}
	return b.String()
}

// sequence returns the character that the first runes stand for if they are
// the misread bytes of one, and how many they are; 0 if they are not.
func (m misreading) sequence(rs []rune) (rune, int) {
	if rs[0] < 0x80 {
		return 0, 0
	}
	lead := m.bytes[rs[0]]
	n := 0
	switch {
	case lead >= 0xC2 && lead <= 0xDF:
		n = 2
	case lead >= 0xE0 && lead <= 0xEF:
		n = 3
	case lead >= 0xF0 && lead <= 0xF4:
		n = 4
	}
	if n == 0 || n > len(rs) {
		return 0, 0
	}
	var b [4]byte
	b[0] = lead
	for i := 1; i < n; i++ {
		c, ok := m.bytes[rs[i]]
		if !ok || c > 0xBF {
			return 0, 0
		}
		b[i] = c
	}
	r, size := utf8.DecodeRune(b[:n])
	if r == utf8.RuneError || size != n || !typed(r) {
		return 0, 0
	}
	return r, n
}

// typed reports whether people type the character, or a misreading makes it that
// was itself misread.
func typed(r rune) bool {
	switch {
	case r < 0x180, r == 0x192, r >= 0x218 && r < 0x21C, r >= 0x250 && r < 0x300, r >= 0x370 && r < 0x400 && unicode.IsLetter(r),
		r >= 0x400 && r < 0x460, r >= 0x490 && r < 0x4FF, r >= 0x5D0 && r < 0x5F0, r >= 0x600 && r < 0x700, r >= 0xE00 && r < 0xE60,
		r >= 0x1E00 && r < 0x2000, r >= 0x300 && r < 0x330,
		r >= 0x2000 && r < 0x2600, r >= 0x2600 && r < 0x2700, r >= 0x2C60 && r < 0x2C80, r >= 0x3000 && r < 0x3100, r >= 0x4E00 && r < 0xA000,
		r >= 0xAC00 && r < 0xD7A4, r >= 0xFB00 && r < 0xFB07, r >= 0xFF00 && r < 0xFFA0, r == 0xFEFF, r == 0xFFFD, r >= 0x1F300 && r < 0x1FB00:
		return true
	}
	return false
}
