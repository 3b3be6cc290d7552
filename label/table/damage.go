package table

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// damage says what is wrong with the characters of a cell's text. It is asked
// only of cells that hold more than printable ASCII.
func damage(text string, say func(rule *Rule, suggest, message string)) {
	var control, private, invisible []rune
	lost, suspect, before := 0, false, rune(0)
	for _, r := range text {
		if r >= ' ' && r < 0x7F {
			before = r
			continue
		}
		// What mojibake of any kind begins with, and in the commonest kind
		// what follows; see misreadings.
		suspect = suspect || before >= 0xC2 && before <= 0xF4 && r >= 0x80 && (r < 0xC0 || r > 0xFF) ||
			r > 0xFF && (r == '√' || r == '‚' || r == '├' || r == '┬') || r == '¬'
		before = r
		switch {
		case r == '\t' || r == '\n' || r == '\r':
		case r < ' ' || r >= 0x7F && r < 0xA0 || r&0xFFFE == 0xFFFE || r >= 0xFDD0 && r <= 0xFDEF:
			control = append(control, r)
		case r < 0x80:
		case r == utf8.RuneError:
			lost++
		case r >= 0xE000 && r <= 0xF8FF || r >= 0xF0000:
			private = append(private, r)
		case isInvisible(r):
			invisible = append(invisible, r)
		}
	}
	if lost > 0 {
		say(ruleReplacement, "", fmt.Sprintf("%s lost in an earlier conversion and U+FFFD stands for it: type it again from the field notes", plural(lost, "a character was", "%d characters were")))
	}
	if suspect {
		if mended := unmojibake(text); mended != text {
			say(ruleMojibake, mended, "letters were read in the wrong encoding and saved so: put back what was typed")
			return // its control characters are part of the same fault
		}
	}
	if len(control) > 0 {
		say(ruleControl, mendControls(text), fmt.Sprintf("holds %s, which cannot be printed: remove it or type what was meant", codePoints(control, "the control character", "control characters")))
	}
	if len(private) > 0 {
		say(rulePrivate, "", fmt.Sprintf("holds %s, which has a shape only in the font it was typed with: type the character that was meant", codePoints(private, "the private-use character", "private-use characters")))
	}
	if len(invisible) > 0 {
		mended := strings.Map(func(r rune) rune {
			if isInvisible(r) {
				return -1
			}
			return r
		}, text)
		say(ruleInvisible, mended, fmt.Sprintf("holds %s, which nobody sees: remove it", codePoints(invisible, "the invisible character", "invisible characters")))
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return fmt.Sprintf(many, n)
}

// codePoints lists characters as "the control character U+0008".
func codePoints(rs []rune, one, many string) string {
	rs = slices.Clone(rs)
	slices.Sort(rs)
	rs = slices.Compact(rs)
	var b strings.Builder
	for i, r := range rs[:min(len(rs), 4)] {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "U+%04X", r)
	}
	if len(rs) > 4 {
		b.WriteString(" …")
	}
	if len(rs) == 1 {
		return one + " " + b.String()
	}
	return many + " " + b.String()
}

// isInvisible reports characters without ink that word processors and web
// pages leave behind: soft hyphen, zero-width space, word joiner, byte-order
// mark, marks and embeddings of direction, tags. The joiners U+200C and U+200D
// are letters in some scripts and stay.
func isInvisible(r rune) bool {
	switch {
	case r == 0xAD, r == 0x180E, r == 0x200B, r == 0x200E, r == 0x200F, r >= 0x202A && r <= 0x202E, r >= 0x2060 && r <= 0x206F, r == 0xFEFF,
		r >= 0xFFF9 && r <= 0xFFFB, r >= 0xE0000 && r <= 0xE0FFF:
		return true
	}
	return false
}

// mendControls puts the letter that Windows has at the place of a C1 control
// (0x92 is ’) and leaves the other controls out.
func mendControls(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return r
		case r >= 0x80 && r < 0xA0:
			if w := charmap.Windows1252.DecodeByte(byte(r)); w != utf8.RuneError {
				return w
			}
			return -1
		case unicode.IsControl(r) || r&0xFFFE == 0xFFFE || r >= 0xFDD0 && r <= 0xFDEF:
			return -1
		}
		return r
	}, text)
}

// A misreading is UTF-8 read as something else.
type misreading struct {
	bytes map[rune]byte // of the characters from 0x80 up
	// sure reports whether a sequence that would be r is no text that anybody
	// typed: before is the character in front of it.
	sure func(before rune, seq []rune, r rune) bool
}

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
	return []misreading{
		{windows, sureWindows},
		{bytesOf(charmap.Macintosh), lead("√¬‚")},
		{bytesOf(charmap.CodePage850), lead("├┬")},
		{bytesOf(charmap.CodePage437), lead("├┬")},
	}
})

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
// it comes back unchanged.
func unmojibake(text string) string {
	for range 4 {
		mended := text
		for _, m := range misreadings() {
			if mended = m.undo(text); mended != text {
				break
			}
		}
		if mended == text {
			break
		}
		text = mended
	}
	return text
}

// undo undoes the misreading if at least one sequence is sure.
func (m misreading) undo(text string) string {
	rs := []rune(text)
	var b strings.Builder
	sure := false
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
		sure = sure || m.sure(before, rs[i:i+n], r)
		b.WriteRune(r)
		i += n
	}
	if !sure {
		return text
	}
	return b.String()
}

// sequence returns the character that the first runes stand for if they are
// the misread bytes of one, and how many they are; 0 if they are not.
func (m misreading) sequence(rs []rune) (rune, int) {
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
	if r == utf8.RuneError || size != n {
		return 0, 0
	}
	return r, n
}

// mended puts into the cells of a row what they were before they were damaged,
// as far as it is known: so a heading says what its column is. Their findings
// show them as they are.
func (r *Row) mended() *Row {
	for _, f := range r.Findings {
		for i := range r.Cells {
			if c := &r.Cells[i]; c.Line == f.Line && c.Column == f.Column && c.Text == f.Value && f.Suggest != "" {
				c.Text = f.Suggest
			}
		}
	}
	return r
}
