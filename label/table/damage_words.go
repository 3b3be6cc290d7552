package table

import (
	"math"
	"strings"
	"unicode"
)

// unpagedWords returns what was typed where a few words of a text were read as another
// page and others are sound: "Sítio µgua Preta" was typed in two hands, or pasted from
// two programs, and to turn all of it would spoil what is right. The words are turned by
// that page which makes the text the likeliest in one language; "" where two pages do as
// well. found is false where no word is sound, or none was misread.
func unpagedWords(text string) (typed string, found bool) {
	strange, sound := splitPages(text)
	if len(strange) == 0 || sound == 0 {
		return "", false
	}
	best, next := math.Inf(-1), math.Inf(-1)
	for _, p := range pagings() {
		turned, ok := p.undoAt(text, strange)
		if !ok || turned == typed {
			continue
		}
		switch l := inOneLanguage(turned); {
		case l > best:
			typed, best, next = turned, l, best
		case l > next:
			next = l
		}
	}
	switch {
	case math.IsInf(best, -1):
		return "", false
	case next > best-clearlyWord:
		return "", true
	}
	return typed, true
}

// clearlyWord is by how much one reading of a word must be likelier than another: less
// than of a text, for the sound words beside it say in which language it is.
const clearlyWord = 3

// A stretch of a text, in bytes.
type stretch struct{ from, to int }

// splitPages finds the words of a text that hold a sign where a letter must stand, and
// counts the others that hold more than ASCII and make sense.
func splitPages(text string) (strange []stretch, sound int) {
	part := func(r rune) bool { return r < 0x80 && !isWordLetter(r) }
	for at := 0; at < len(text); {
		from := at
		if i := strings.IndexFunc(text[at:], func(r rune) bool { return !part(r) }); i < 0 {
			break
		} else {
			from += i
		}
		to := len(text)
		if i := strings.IndexFunc(text[from:], part); i >= 0 {
			to = from + i
		}
		word := text[from:to]
		switch {
		case strings.IndexFunc(word, func(r rune) bool { return r >= 0x80 }) < 0:
		case withinWords(word) > 0:
			strange = append(strange, stretch{from, to})
		case strings.IndexFunc(word, func(r rune) bool { return r >= 0x80 && unicode.IsLetter(r) && isWordLetter(r) }) >= 0 && nonsense(word) < isPlain:
			sound++
		}
		at = to
	}
	return strange, sound
}

// undoAt turns the words at some places; false if one then makes no sense.
func (m paging) undoAt(text string, at []stretch) (string, bool) {
	var b strings.Builder
	done := 0
	for _, s := range at {
		word, ok := m.undo(text[s.from:s.to])
		if !ok || withinWords(word) > 0 || nonsense(word) >= isPlain || capitalWithin(word) {
			return "", false
		}
		b.WriteString(text[done:s.from])
		b.WriteString(word)
		done = s.to
	}
	return b.String() + text[done:], true
}

// capitalWithin reports whether a capital beyond ASCII stands behind a word's first letter
// and before a small one, as in SÁtio.
func capitalWithin(word string) bool {
	rs := []rune(word)
	for i := 1; i+1 < len(rs); i++ {
		if rs[i] >= 0x80 && unicode.IsUpper(rs[i]) && unicode.IsUpper(rs[i-1]) && unicode.IsLower(rs[i+1]) {
			return true
		}
	}
	return false
}

// inOneLanguage is how likely a whole text is in the language that has it the likeliest.
func inOneLanguage(text string) float64 {
	best := math.Inf(-1)
	rs := []rune(text)
	script := scriptBeyond(rs)
	if script == nil {
		script = unicode.Latin
	}
	for _, l := range languages() {
		if l.writes(script) {
			best = max(best, float64(l.likelihood(rs)))
		}
	}
	return best
}
