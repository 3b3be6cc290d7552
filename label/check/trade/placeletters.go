package trade

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
)

// letterRules are about how the names of lands are typed.
func letterRules() []check.Rule {
	return []check.Rule{{
		Name: "place-small", Severity: label.Warning, Source: practice,
		Doc: "a country, state, county or municipality typed in small letters throughout; told once for a record", Terms: landTerms[:],
		Example: one("stateProvince", "algarve"), Counterexample: one("stateProvince", "the Algarve"),
		Row: smallRow,
	}}
}

// smallRow names the largest land of a record that is in small letters, and the
// others with it, for it is one habit.
func smallRow(c *check.Context) {
	var small []string
	for _, term := range landTerms {
		if !c.Doubted(term) && inSmall(c.Text(term)) {
			small = append(small, term)
		}
	}
	if len(small) == 0 {
		return
	}
	text := c.Text(small[0])
	suggest := ""
	if !strings.ContainsAny(text, " -'’") && utf8.RuneCountInString(text) > 3 { // "usa" is an abbreviation
		first, size := utf8.DecodeRuneInString(text)
		suggest = string(unicode.ToTitle(first)) + text[size:]
	}
	what := "typed in small letters: write it with its capitals"
	if len(small) > 1 {
		what = fmt.Sprintf("typed in small letters, as %s: write them with their capitals", and(small[1:]))
	}
	c.Once(small[0], what, suggest, "small")
}

// and joins words as in a sentence, with the verb that they take.
func and(words []string) string {
	if len(words) == 1 {
		return words[0] + " is"
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1] + " are"
}

// nowhere are words in such columns that are no names.
var nowhere = map[string]bool{"at sea": true, "sea": true, "offshore": true, "high seas": true, "unknown": true, "none": true, "various": true, "cultivated": true, "disputed": true,
	"north": true, "south": true, "east": true, "west": true, "northern": true, "southern": true, "eastern": true, "western": true, "central": true,
	"norte": true, "sur": true, "sul": true, "este": true, "leste": true, "oeste": true, "centro": true}

// inSmall reports whether a name has letters of a script that has capitals, and
// none of these.
func inSmall(text string) bool {
	first, _ := utf8.DecodeRuneInString(text)
	if utf8.RuneCountInString(text) < 3 || !unicode.IsLower(first) || strings.ContainsAny(text, ".0123456789?/_[(") || nowhere[text] {
		return false
	}
	return !strings.ContainsFunc(text, unicode.IsUpper) && !ofVoivodeship(text)
}

// ofVoivodeship reports whether a name is an adjective of a Polish voivodeship or
// county, which beside that word is written small: (województwo) podlaskie.
// Source: the rules of Polish spelling, from memory.
func ofVoivodeship(text string) bool {
	return slices.ContainsFunc([]string{"skie", "ckie", "dzkie", "ski", "cki", "dzki"}, func(end string) bool { return strings.HasSuffix(text, end) })
}
