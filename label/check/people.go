package check

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// joiners are the words that stand between two collectors; true where the
// word never stands inside one person's name. "y", "e" and "i" do (Ortega y
// Gasset, Costa e Silva, Bolòs i Capdevila) and need a whole person on both
// sides.
var joiners = map[string]bool{
	"&": true, "and": true, "et": true, "und": true,
	"with": true, "avec": true, "mit": true, "com": true, "con": true,
	"y": false, "e": false, "i": false,
}

// company are words that follow a joiner without being a person.
var company = map[string]bool{
	"al": true, "alii": true, "others": true, "colleagues": true, "students": true, "party": true,
	"col": true, "cols": true, "outros": true, "colegas": true, "alunos": true, "otros": true, "autres": true, "andere": true,
}

// ParseCollectors splits the text of recordedBy into persons, each as
// written. They are parted by "|", ";" or "&" or by a word for "and" or "with"
// in English, Portuguese, Spanish, Catalan, French or German; a comma parts
// them only where every part begins with an initial ("I. Almeida, J. Prates"),
// since it also stands inside a name ("Almeida, I."). "et al." stays with the
// person before it. Where it is unsure, the text stays whole.
func ParseCollectors(text string) []string {
	var people []string
	for piece := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == '|' || r == ';' }) {
		words := strings.Fields(strings.ReplaceAll(piece, "&", " & "))
		if len(words) == 0 {
			continue
		}
		if sure := joiners[words[0]]; sure && len(words) > 1 {
			if !isCompany(words[1]) {
				words = words[1:] // "I. Almeida; with J. Prates"
			} else if len(people) > 0 {
				people[len(people)-1] += " " + strings.Join(words, " ")
				continue
			}
		}
		for _, p := range splitWords(words) {
			people = append(people, splitCommas(p)...)
		}
	}
	return people
}

// splitWords splits at words for "and".
func splitWords(words []string) []string {
	var out []string
	from := 0
	for i := 1; i < len(words)-1; i++ {
		sure, ok := joiners[words[i]]
		if !ok || i == from || isCompany(words[i+1]) {
			continue
		}
		if !sure && !(person(words[from:i]) && person(words[i+1:nextJoiner(words, i+1)])) {
			continue
		}
		out = append(out, joinPerson(words[from:i]))
		from = i + 1
	}
	return append(out, joinPerson(words[from:]))
}

// joinPerson takes off a comma that stood before "and".
func joinPerson(words []string) string {
	s := strings.Join(words, " ")
	if t := strings.TrimSuffix(s, ","); t != "" {
		return t
	}
	return s
}

func isCompany(word string) bool {
	return company[strings.ToLower(strings.Trim(word, ".,"))]
}

// nextJoiner returns where the next joiner stands, at or after from.
func nextJoiner(words []string, from int) int {
	for i := from; i < len(words); i++ {
		if _, ok := joiners[words[i]]; ok {
			return i
		}
	}
	return len(words)
}

// person reports whether words are a given name or initial and a surname.
func person(words []string) bool {
	capitals := 0
	for _, w := range words {
		if r, n := utf8.DecodeRuneInString(w); unicode.IsUpper(r) {
			capitals++
			if strings.HasPrefix(w[n:], ".") && len(w) > n+2 { // "I.Almeida"
				capitals++
			}
		}
	}
	return capitals >= 2
}

// splitCommas splits where every part begins with an initial and holds a
// surname.
func splitCommas(s string) []string {
	parts := strings.Split(s, ",")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
		r, n := utf8.DecodeRuneInString(parts[i])
		if !unicode.IsUpper(r) || !strings.HasPrefix(parts[i][n:], ".") || !hasSurname(parts[i]) {
			return []string{s}
		}
	}
	return parts
}

// hasSurname reports whether a part holds more than initials.
func hasSurname(s string) bool {
	letters := 0
	for _, r := range s {
		if !unicode.IsLetter(r) {
			letters = 0
			continue
		}
		if letters++; letters >= 2 {
			return true
		}
	}
	return false
}
