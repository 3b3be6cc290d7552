package table

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// damage says what is wrong with the characters of a cell's text. It is asked
// of cells that hold more than the letters, figures and signs of plain prose.
func damage(text string, say func(rule *Rule, suggest, message string)) {
	var control, private, invisible []rune
	lost, odd, degree := 0, false, false
	latin, other, special := false, false, false
	var suspect uint32
	before := rune(0)
	for i, r := range text {
		if r >= ' ' && r < 0x7F {
			// Ã or Â within a word of small letters, or before what is no
			// letter: what follows it was lost.
			odd = odd || before == 'Ã' || before == 'Â'
			latin = latin || r >= 'A'
			before = r
			continue
		}
		if before >= 0x80 {
			suspect |= misread(before, r)
		} else if before >= '0' && before <= '9' {
			degree = degree || isMisreadDegree(r)
		}
		before = r
		if r >= 0x250 || r == '¨' || r == '¸' {
			other = other || r >= 0x370 && r < 0x530
			special = special || r < 0x370 || r >= 0xFB00 && r <= 0xFB06 || r >= 0x1D400 && r < 0x1D800
		}
		switch {
		case r == '\t' || r == '\n' || r == '\r':
		case r < ' ' || r >= 0x7F && r < 0xA0 || r&0xFFFE == 0xFFFE || r >= 0xFDD0 && r <= 0xFDEF || r == 0x2028 || r == 0x2029:
			control = append(control, r)
		case r < 0x80:
		case r == utf8.RuneError:
			lost++
		case r >= 0xE000 && r <= 0xF8FF || r >= 0xF0000:
			private = append(private, r)
		case unseen(text, i, r):
			invisible = append(invisible, r)
		}
	}
	if lost > 0 {
		say(ruleReplacement, "", fmt.Sprintf("%s lost in an earlier conversion and U+FFFD stands for it: type it again from the field notes", plural(lost, "a character was", "%d characters were")))
	}
	if strings.Contains(text, "ï¿½") { // U+FFFD, read in the wrong encoding once more
		say(ruleReplacement, "", "a character was lost in an earlier conversion and ï¿½ stands for it, between words most likely a blank: type it again from the field notes")
		return
	}
	if mended := halfDashes(text); mended != text {
		say(ruleMojibake, mended, "a dash or an apostrophe was read in the wrong encoding, and its first sign was lost")
		return
	}
	if mended, unread := undoMac(text); mended != text {
		if unread {
			say(ruleMojibake, "", fmt.Sprintf(someLost, mended))
			return
		}
		say(ruleMojibake, mended, "letters were read in the wrong encoding and saved so: put back what was typed")
		return
	}
	if suspect != 0 || odd || before == 'Ã' {
		mended, unread := unmojibake(text, suspect)
		switch {
		case unread && mended == text:
			say(ruleMojibake, "", "letters were read in the wrong encoding and saved so, and some were lost: type it again from the field notes")
			return
		case unread:
			say(ruleMojibake, "", fmt.Sprintf(someLost, mended))
			return
		case mended != text:
			say(ruleMojibake, mended, "letters were read in the wrong encoding and saved so: put back what was typed")
			return // its control characters are part of the same fault
		}
	}
	if typed, found := unpaged(text); found && lost == 0 {
		say(ruleMojibake, typed, "letters were read in the wrong encoding and saved so: put back what was typed")
		return
	}
	if degree {
		say(ruleMojibake, degrees(text), "the sign for degrees was read in the wrong encoding and saved so")
	}
	if len(control) > 0 {
		say(ruleControl, mendControls(text), fmt.Sprintf("holds %s, which cannot be printed: remove it or type what was meant", codePoints(control, "the control character", "control characters")))
	}
	if len(private) > 0 {
		say(rulePrivate, "", fmt.Sprintf("holds %s, which has a shape only in the font it was typed with: type the character that was meant", codePoints(private, "the private-use character", "private-use characters")))
	}
	if len(invisible) > 0 {
		say(ruleInvisible, withoutInvisible(text), fmt.Sprintf("holds %s, which nobody sees: remove it", codePoints(invisible, "the invisible character", "invisible characters")))
	}
	if special || latin && other {
		signDamage(text, say)
	}
	if strings.ContainsAny(text, codeSigns) {
		escapes(text, say)
	}
}

const someLost = "letters were read in the wrong encoding and saved so, and some were lost: as far as they can be read it says %q; type it again from the field notes"

// withoutInvisible leaves out what unseen reports.
func withoutInvisible(text string) string {
	var b strings.Builder
	for i, r := range text {
		if !unseen(text, i, r) {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// unseen reports a character without ink that has no use where it stands.
// Joiners shape the letters of some scripts, and a zero-width space parts words
// in those of South-East Asia, which write no blanks.
func unseen(text string, at int, r rune) bool {
	switch r {
	case 0x200B, 0x200C, 0x200D:
		before, _ := utf8.DecodeLastRuneInString(text[:at])
		if r == 0x200B {
			return !(before >= 0xE00 && before < 0x10A0 || before >= 0x1780 && before < 0x1800 || before == 0x200B)
		}
		return before == utf8.RuneError || before < 0x590 || before >= 0x1E00 && before < 0x2000
	}
	return isInvisible(r)
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
// are letters in some scripts and stay there.
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
		case r == 0x2028 || r == 0x2029:
			return ' '
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

// mended puts into the cells of a row what they were before they were damaged,
// as far as it is known: so a heading says what its column is. Their findings
// show them as they are.
func (r *Row) mended() *Row {
	for i := range r.Cells {
		if !isASCII(r.Cells[i].Text) {
			r.table.garble.cells++
		}
	}
	for _, f := range r.Findings {
		for i := range r.Cells {
			c := &r.Cells[i]
			if c.Line != f.Line || c.Column != f.Column || c.Text != f.Value {
				continue
			}
			switch {
			case f.Suggest != "":
				c.Text = f.Suggest
				if f.Rule == ruleMojibake.Name {
					r.table.garble.misread++
				}
			case f.Rule == ruleReplacement.Name:
				if h := lostHeading(c.Text); h != "" {
					c.Text = h
				}
			}
		}
	}
	return r
}

// lostHeading returns the word for a heading that fits one of which letters were
// lost, if all that fit mean the same; "" else.
func lostHeading(text string) string {
	text = strings.TrimSpace(text)
	if len(text) > longHeading || utf8.RuneCountInString(text) < 3 {
		return ""
	}
	var b strings.Builder
	b.WriteString("(?i)^")
	for _, r := range text {
		switch r {
		case utf8.RuneError, '?':
			b.WriteString(`\pL?`)
		default:
			b.WriteString(regexp.QuoteMeta(string(r)))
		}
	}
	fits, err := regexp.Compile(b.String() + "$")
	if err != nil {
		return ""
	}
	found, term := "", ""
	for _, w := range Words() {
		for _, word := range w.Words {
			if isASCII(word) || !fits.MatchString(word) {
				continue
			}
			if term != "" && term != w.Term {
				return ""
			}
			found, term = word, w.Term
		}
	}
	return found
}

// A garble counts, in the first rows, the cells that hold more than ASCII and
// those of them that were misread.
type garble struct{ cells, misread int }

// whole reports whether the whole table was misread, so that its cells have one
// fault together.
func (g garble) whole() bool { return g.misread >= 5 && g.misread*5 >= g.cells*4 }
