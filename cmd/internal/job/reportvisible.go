package job

import (
	"html/template"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// visible shows a text so that everything in it can be seen: blanks at its
// ends and doubled ones, other white space, and characters without ink.
func (p *RemarksPage) visible(s string) template.HTML {
	var b strings.Builder
	n, last := 0, utf8.RuneCountInString(s)
	for i, r := range s {
		if n == reportValue && last > n+20 {
			b.WriteString(`<i class="none">… and ` + digits(last-n) + ` characters more</i>`)
			break
		}
		if isOdd(s, i, r) {
			p.odd[r] = true
			b.WriteString(`<span class="odd" role="img" aria-label="` + template.HTMLEscapeString(nameOf(r)) + `">` + signOf(r) + `</span>`)
			if r == '\n' {
				b.WriteString("<br>")
			}
		} else {
			b.WriteString(template.HTMLEscapeString(string(r)))
		}
		n++
	}
	return template.HTML(b.String())
}

// visibleText is visible for a text without marks of its own, such as a name.
func visibleText(s string) string {
	var b strings.Builder
	for i, r := range s {
		if isOdd(s, i, r) {
			b.WriteString("[" + signOf(r) + "]")
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// isOdd reports whether the character r at s[i:] cannot be seen, or not be told
// from another.
func isOdd(s string, i int, r rune) bool {
	switch {
	case r == ' ':
		return i == 0 || i == len(s)-1 || s[i-1] == ' ' || s[i+1] == ' '
	case r < 0x7F:
		return r < ' '
	case r == utf8.RuneError:
		return true
	}
	return unicode.IsSpace(r) || unicode.In(r, unicode.Cc, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp) || r&0xFFFE == 0xFFFE ||
		r >= 0xFDD0 && r <= 0xFDEF || r == 0x3164 || r == 0x2800 || i == 0 && unicode.Is(unicode.M, r)
}

// signOf is how an odd character is shown.
func signOf(r rune) string {
	switch r {
	case ' ':
		return "␣"
	case '\t':
		return "⇥"
	case '\n':
		return "↵"
	}
	return codePoint(r)
}

func codePoint(r rune) string {
	s := strings.ToUpper(strconv.FormatInt(int64(r), 16))
	return "U+" + strings.Repeat("0", max(0, 4-len(s))) + s
}

// nameOf names an odd character in words.
func nameOf(r rune) string {
	switch r {
	case ' ':
		return "a space at an end, or doubled"
	case '\t':
		return "tab"
	case '\n':
		return "end of a line within the cell"
	case '\r':
		return "carriage return"
	case 0xA0:
		return "no-break space"
	case 0xAD:
		return "soft hyphen"
	case 0x200B:
		return "zero-width space"
	case 0x202F:
		return "narrow no-break space"
	case 0xFEFF:
		return "byte-order mark"
	case utf8.RuneError:
		return "stands for a character that was lost"
	}
	switch {
	case unicode.IsSpace(r):
		return "white space"
	case unicode.Is(unicode.Cc, r):
		return "control character"
	case unicode.Is(unicode.Co, r):
		return "private-use character"
	case unicode.Is(unicode.M, r):
		return "accent without its letter"
	}
	return "character that nobody sees"
}

func sortedRunes(m map[rune]bool) []rune {
	var all []rune
	for r := range m {
		all = append(all, r)
	}
	slices.Sort(all)
	return all
}
