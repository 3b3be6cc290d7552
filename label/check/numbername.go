package check

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// numberNameRule tells of a number that bears its collector's name. The label
// prints the name beside it anyway.
func numberNameRule() Rule {
	return Rule{
		Name: "number-name", Severity: label.Note, Source: practice,
		Doc:     "the collector's name stands before the number, too; the label prints it once",
		Terms:   []string{"recordNumber", "recordedBy"},
		Example: one("recordedBy", "I. Almeida", "recordNumber", "Almeida 214"), Counterexample: one("recordedBy", "I. Almeida", "recordNumber", "IA 214"),
		Row: func(c *Context) {
			if c.Number != "" && c.Number != c.Text("recordNumber") {
				c.Suggest("recordNumber", "begins with the collector's name: the label prints this once, and the number is "+c.Number, c.Number)
			}
		},
	}
}

// bareNumber takes the collector's own name off the number before which it
// stands: "Almeida 214", "Almeida, I. P214". Initials alone are a part of the
// number, as are the names of others.
func bareNumber(text, collector string) string {
	at := strings.IndexFunc(text, unicode.IsDigit)
	if at < 4 || collector == "" {
		return text
	}
	gap := strings.LastIndexByte(text[:at], ' ')
	if gap < 3 {
		return text
	}
	own := personWords(strings.ToLower(collector))
	named := false
	for _, w := range personWords(strings.ToLower(text[:gap])) {
		switch long := utf8.RuneCountInString(w) > 2; {
		case slices.Contains(own, w):
			named = named || long
		case long || !slices.ContainsFunc(own, func(o string) bool { return strings.HasPrefix(o, w) }):
			return text
		}
	}
	if number := strings.TrimSpace(text[gap:]); named && number != "" {
		return number
	}
	return text
}
