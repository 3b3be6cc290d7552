package face

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/fonts"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// A MissingError reports a character that cannot be drawn.
type MissingError struct {
	Rune    rune   // the code point; utf8.RuneError for a byte that is not UTF-8
	Cluster string // the letter with its accents that it belongs to
	Text    string // all the text that was to be set
	why     string // "" where no face has it
}

func (e *MissingError) Error() string {
	switch {
	case e.why != "":
		return e.why
	case utf8.RuneCountInString(e.Cluster) > 1:
		return fmt.Sprintf("no font has all of %s (%s)", quote(e.Cluster), points(e.Cluster))
	}
	return fmt.Sprintf("no font has the character %s (U+%04X)", quote(e.Cluster), e.Rune)
}

// A ScriptError reports text in a script that is not set, because its letters
// would be drawn in the wrong order or shape.
type ScriptError struct {
	Script string // "Arabic"
	Rune   rune   // the first code point of it
	Text   string // all the text that was to be set
}

func (e *ScriptError) Error() string {
	if fonts.Invisible(e.Rune) {
		return fmt.Sprintf("U+%04X turns text from right to left, which cannot be set; take it out", e.Rune)
	}
	return fmt.Sprintf("%s script cannot be set correctly (%s, U+%04X)", e.Script, quote(string(e.Rune)), e.Rune)
}

func quote(s string) string { return `"` + s + `"` }

func points(s string) string {
	var b strings.Builder
	for i, r := range s {
		if i > 0 {
			b.WriteByte(' ')
		}
		fmt.Fprintf(&b, "U+%04X", r)
	}
	return b.String()
}

// prepare returns what of text is drawn: NFC, without invisible characters,
// white space as spaces, and nothing that cannot be set.
func prepare(text string) (string, error) {
	if plain(text) {
		return text, nil
	}
	var b strings.Builder
	b.Grow(len(text))
	for i, r := range text {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(text[i:], "\ufffd"):
			return "", &MissingError{r, "", text, fmt.Sprintf("the byte 0x%02X is not UTF-8", text[i])}
		case r == '\t', r == '\n', r == '\v', r == '\f', r == '\r', r == 0x85, r == 0x2028, r == 0x2029:
			r = ' '
		case turns(r):
			return "", &ScriptError{"right-to-left", r, text}
		case fonts.Invisible(r):
			continue
		}
		b.WriteRune(r)
	}
	s := norm.NFC.String(b.String())
	for _, r := range s {
		if err := settable(r, text); err != nil {
			return "", err
		}
	}
	return s, nil
}

// plain reports printable ASCII, of which nothing has to be changed.
func plain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// turns reports marks that set what is near them from right to left.
func turns(r rune) bool {
	switch r {
	case 0x061c, 0x200f, 0x202b, 0x202e, 0x2067:
		return true
	}
	return false
}

// simple are the scripts whose letters follow each other from left to right
// and keep their shape. Hangul is among them as whole syllables.
var simple = []*unicode.RangeTable{
	unicode.Common, unicode.Inherited, unicode.Latin, unicode.Greek, unicode.Cyrillic,
	unicode.Armenian, unicode.Georgian, unicode.Han, unicode.Hiragana, unicode.Katakana,
	unicode.Hangul, unicode.Bopomofo, unicode.Ethiopic, unicode.Cherokee,
	unicode.Canadian_Aboriginal, unicode.Coptic, unicode.Glagolitic, unicode.Lisu,
	unicode.Ogham, unicode.Runic, unicode.Yi, unicode.Braille,
}

// settable returns the error for a code point that can never be set right.
func settable(r rune, text string) error {
	switch {
	case r >= ' ' && r <= '~' || r >= 0xa0 && r < 0x590:
		return nil
	case unicode.IsControl(r):
		return &MissingError{r, string(r), text, fmt.Sprintf("U+%04X is a control character; take it out", r)}
	case r > 0xffff:
		return &MissingError{r, string(r), text, fmt.Sprintf("the character %s (U+%04X) cannot be printed: it lies beyond U+FFFF", quote(string(r)), r)}
	case unicode.Is(unicode.Co, r):
		return &MissingError{r, string(r), text, fmt.Sprintf("U+%04X is a private use character: it means something else in every font", r)}
	case unicode.Is(unicode.Variation_Selector, r):
		return &MissingError{r, string(r), text, fmt.Sprintf("U+%04X chooses a form of the character before it, which cannot be printed; take it out", r)}
	case joins(r):
		return &ScriptError{"old Hangul", r, text}
	}
	switch p, _ := bidi.LookupRune(r); p.Class() {
	case bidi.R, bidi.AL, bidi.AN:
		return &ScriptError{script(r), r, text}
	}
	if !unicode.In(r, simple...) && script(r) != "" {
		return &ScriptError{script(r), r, text}
	}
	return nil
}

// joins reports Hangul letters that build syllables with their neighbours.
// NFC has put together those of today's spelling.
func joins(r rune) bool {
	return 0x1100 <= r && r <= 0x11ff || 0xa960 <= r && r <= 0xa97c || 0xd7b0 <= r && r <= 0xd7fb
}

// script names the script of r; "" if it has none.
func script(r rune) string {
	var names []string
	for name, t := range unicode.Scripts {
		if unicode.Is(t, r) && name != "Common" && name != "Inherited" {
			names = append(names, strings.ReplaceAll(name, "_", " "))
		}
	}
	if len(names) == 0 {
		if p, _ := bidi.LookupRune(r); p.Class() == bidi.AN {
			return "Arabic"
		} else if p.Class() == bidi.R || p.Class() == bidi.AL {
			return "right-to-left"
		}
		return ""
	}
	return slices.Min(names)
}

// stand returns what the face draws for r: r itself, or what stands in for a
// space or hyphen that it lacks.
func stand(f *fonts.Face, r rune) (rune, bool) {
	if _, ok := f.Glyph(r); ok {
		return r, true
	}
	switch {
	case r == '\u2011' || r == '\u2010':
		if _, ok := f.Glyph('\u2010'); ok {
			return '\u2010', true
		}
		if _, ok := f.Glyph('-'); ok {
			return '-', true
		}
	case breadth(f, r) > 0:
		if _, ok := f.Glyph(' '); ok {
			return ' ', true
		}
	}
	return r, false
}

// breadth returns how wide, in the face's units, a space is that the face may
// lack (The Unicode Standard 15, table 6-2); 0 for what is no such space.
func breadth(f *fonts.Face, r rune) int32 {
	em := int32(f.Metrics().UnitsPerEm)
	switch r {
	case '\u00a0', '\u1680':
		return advance(f, ' ', em/4)
	case '\u2000', '\u2002':
		return em / 2
	case '\u2001', '\u2003', '\u3000':
		return em
	case '\u2004':
		return em / 3
	case '\u2005':
		return em / 4
	case '\u2006':
		return em / 6
	case '\u2007': // figure space
		return advance(f, '0', em/2)
	case '\u2008': // punctuation space
		return advance(f, '.', em/4)
	case '\u2009':
		return em / 5
	case '\u202f':
		return advance(f, '\u2009', em/5)
	case '\u200a':
		return em / 10
	case '\u205f':
		return em * 4 / 18
	}
	return 0
}

func advance(f *fonts.Face, r rune, otherwise int32) int32 {
	if g, ok := f.Glyph(r); ok {
		return int32(f.Advance(g))
	}
	return otherwise
}

// covers reports whether the face draws all of s.
func covers(f *fonts.Face, s string) bool {
	for _, r := range s {
		if _, ok := stand(f, r); !ok {
			return false
		}
	}
	return true
}

// find returns the first face of a chain that draws a cluster, put together or
// as letter and accents.
func find(chain []*fonts.Face, cluster string) *fonts.Face {
	for _, f := range chain {
		if covers(f, cluster) {
			return f
		}
		if nfd := norm.NFD.String(cluster); nfd != cluster && covers(f, nfd) {
			return f
		}
	}
	return nil
}

// missing returns the error for a cluster that no face of the chain draws.
func missing(chain []*fonts.Face, cluster, text string) error {
	for _, r := range cluster {
		if find(chain, string(r)) == nil {
			return &MissingError{Rune: r, Cluster: string(r), Text: text}
		}
	}
	r, _ := utf8.DecodeLastRuneInString(cluster)
	return &MissingError{Rune: r, Cluster: cluster, Text: text}
}
