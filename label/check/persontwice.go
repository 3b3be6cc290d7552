package check

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// splitName finds an initial that a comma parts from the rest of its name, "N, T.
// Silva"; it may be two people of one surname, too. Behind a surname an initial
// stands well: "Almeida, I, Silva, T".
func splitName(text string) personReading {
	for piece := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == '|' || r == ';' || r == '&' }) {
		parts := strings.Split(piece, ",")
		for i := range len(parts) - 1 {
			p, next := strings.TrimSpace(parts[i]), strings.TrimSpace(parts[i+1])
			letter, n := utf8.DecodeRuneInString(p)
			if !unicode.IsUpper(letter) || strings.TrimPrefix(p[n:], ".") != "" || i > 0 && !withInitial(strings.TrimSpace(parts[i-1])) {
				continue
			}
			if first, k := utf8.DecodeRuneInString(next); !unicode.IsUpper(first) || !strings.HasPrefix(next[k:], ".") || !hasSurname(next) {
				continue
			}
			whole := string(letter) + ". " + next
			return personReading{message: "a comma stands behind the initial " + string(letter) + ": take it out if one person is meant, " + whole + ", or give both people their surname",
				suggest: strings.Replace(text, parts[i]+","+parts[i+1], strings.Replace(parts[i], p, whole, 1), 1)}
		}
	}
	return personReading{}
}

// personTwice finds a person who stands twice in a cell, with the initials before the
// surname or behind it.
func personTwice(text string) personReading {
	if !wordTwice(text) {
		return personReading{}
	}
	people := ParseCollectors(text)
	for i, p := range people {
		key := namesOf(p)
		for _, q := range people[:i] {
			if key != "" && key == namesOf(q) {
				return personReading{message: q + " stands twice: name everybody once, or say how the two are told apart"}
			}
		}
	}
	return personReading{}
}

// wordTwice reports whether a word of three letters or more that begins with a capital
// stands twice; few cells have one.
func wordTwice(text string) bool {
	rest := text
	for {
		i := strings.IndexFunc(rest, unicode.IsUpper)
		if i < 0 {
			return false
		}
		rest = rest[i:]
		n := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) })
		if n < 0 {
			return false
		}
		if n > 2 && strings.Contains(rest[n:], rest[:n]) {
			return true
		}
		rest = rest[n:]
	}
}

// namesOf are the words of a person in the order of the alphabet, initials one by one;
// "" without a surname.
func namesOf(person string) string {
	if !hasSurname(person) || strings.ContainsAny(person, "0123456789()[]") {
		return ""
	}
	var words []string
	for w := range strings.FieldsFuncSeq(PlainLetters(person), func(r rune) bool { return !unicode.IsLetter(r) && r != '-' && r != '\'' && r != '’' }) {
		if len(w) <= 3 && strings.ToUpper(w) == w {
			words = append(words, strings.Split(w, "")...)
			continue
		}
		words = append(words, strings.ToLower(w))
	}
	if len(words) < 2 {
		return ""
	}
	for i := range words {
		words[i] = strings.ToLower(words[i])
	}
	slices.Sort(words)
	return strings.Join(words, " ")
}
