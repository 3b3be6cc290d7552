package check

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// joiners are the words that stand between two collectors; true where the
// word never stands inside one person's name. "y", "e" and "i" do (Ortega y
// Gasset, Costa e Silva, Bolòs i Capdevila) and need a whole person on both
// sides, as do words that mean something else in another language, and "/".
var joiners = map[string]bool{
	"&": true, "+": true, "and": true, "et": true, "und": true, "og": true, "och": true, "és": true, "ve": true, "и": true,
	"with": true, "avec": true, "mit": true, "com": true, "con": true, "c/": true, "w/": true,
	"y": false, "e": false, "i": false, "ed": false, "en": false, "ja": false, "a": false, "u.": false, "/": false,
}

// accompanied are the joiners that say who was there beside the collector.
var accompanied = map[string]bool{"with": true, "avec": true, "mit": true, "com": true, "con": true, "c/": true, "w/": true, "/": true}

// company are words that follow a joiner without being a person.
var company = map[string]bool{
	"al": true, "alii": true, "others": true, "colleagues": true, "students": true, "party": true,
	"col": true, "cols": true, "outros": true, "colegas": true, "alunos": true, "otros": true, "autres": true, "andere": true,
	"coll": true, "др": true, "другие": true, "mtsai": true, "társai": true, "ark": true, "arkadaşları": true, "medarb": true,
}

// ParseCollectors splits the text of recordedBy into persons, each as
// written. They are parted by "|", ";" or "&" or by a word for "and" or "with"
// in the languages of many labels; a comma parts them only where every part has
// an initial ("I. Almeida, J. Prates", "Almeida I, Prates J", "Almeida, I.,
// Prates, J."), since it also stands inside a name ("Almeida, I."). "et al." stays
// with the person before it. Where it is unsure, the text stays whole.
func ParseCollectors(text string) []string {
	var people []string
	if n := len(text); n > 2 && text[0] == '"' && text[n-1] == '"' {
		text = text[1 : n-1] // the quotes of a cell that was quoted twice
	}
	for piece := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == '|' || r == ';' || r == '；' || r == '、' }) {
		words := strings.Fields(spread(piece))
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

// spread parts signs that join people from what stands beside them. In "c/" and
// "w/" the stroke belongs to the letter.
func spread(s string) string {
	if !strings.ContainsAny(s, "&+/") {
		return s
	}
	s = strings.NewReplacer("&", " & ", "+", " + ", "/", " / ").Replace(s)
	return strings.NewReplacer(" c / ", " c/ ", " w / ", " w/ ").Replace(s)
}

// splitWords splits at words for "and".
func splitWords(words []string) []string {
	var out []string
	from := 0
	for i := 1; i < len(words)-1; i++ {
		sure, ok := joiners[words[i]]
		if !ok || i == from || isCompany(words[i+1]) || titlesOnly(words[from:i]) ||
			!accompanied[words[i]] && shareSurname(words[from:i], words[i+1:]) {
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

// shareSurname reports whether the words before "and" may have their surname behind
// it: "J. D. & E. G. Chapman", "Alice & Louis Fay". They stay together then, so that
// nobody loses a surname; a surname that stays so ("Fay & Louis Chapman") loses
// nothing.
func shareSurname(before, after []string) bool {
	given := before[len(before)-1]
	if len(before) == 1 && wordOfName(given) {
		next := after[:nextJoiner(after, 0)]
		return len(next) == 2 && wordOfName(next[0]) && wordOfName(next[1])
	}
	bare := func(words []string) bool {
		return len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool {
			if _, joins := joiners[w]; joins {
				return false
			}
			return !initials(strings.TrimRight(w, ","))
		})
	}
	if !bare(before) {
		return false
	}
	for len(after) > 0 {
		n := nextJoiner(after, 0)
		if n > 0 && !bare(after[:n]) {
			return hasSurname(strings.Join(after[:n], " "))
		}
		after = after[min(n+1, len(after)):]
	}
	return false
}

// wordOfName reports whether a word is a capital and small letters alone.
func wordOfName(w string) bool {
	first, n := utf8.DecodeRuneInString(w)
	return unicode.IsUpper(first) && len(w) > n+1 && strings.IndexFunc(w[n:], func(r rune) bool { return !unicode.IsLower(r) && r != '-' && r != '’' && r != '\'' }) < 0
}

// titlesOnly reports whether words are none but those before a person: "leg. et
// det. I. Almeida".
func titlesOnly(words []string) bool {
	for _, w := range words {
		if !collecting[strings.ToLower(strings.Trim(w, ".:,"))] {
			return false
		}
	}
	return true
}

// collecting are words that say what a person did.
var collecting = map[string]bool{"leg": true, "legit": true, "coll": true, "col": true, "collector": true, "collectors": true, "coletor": true, "colector": true, "coletores": true, "colectores": true, "recolector": true, "recolectores": true, "sammler": true, "collecteur": true, "récolteur": true, "collected": true, "by": true,
	"det": true, "determiner": true, "determinavit": true, "conf": true, "confirmavit": true, "rev": true, "vid": true}

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

// splitCommas splits where every part is a person with an initial, or a surname
// whose initials are the part after it.
func splitCommas(s string) []string {
	if !strings.ContainsAny(s, ",，") {
		return []string{s}
	}
	var people []string
	from, open := 0, false // where the last person begins; a surname waits for its initials
	short := false         // it may be initials itself: then those behind it need a stop
	for at := 0; at <= len(s); {
		end, n := len(s), 1
		if k := strings.IndexAny(s[at:], ",，"); k >= 0 {
			end = at + k
			_, n = utf8.DecodeRuneInString(s[end:])
		}
		part := strings.TrimSpace(s[at:end])
		switch {
		case part == "":
		case open && initials(part) && (!short || strings.Contains(part, ".")):
			people[len(people)-1] = strings.TrimSpace(s[from:end])
			open = false
		case open:
			return []string{s}
		case inHan(part), withInitial(part):
			people, from = append(people, part), at
		case isSuffix(part) && len(people) > 0:
			people[len(people)-1] = strings.TrimSpace(s[from:end])
		case !initials(part) && surname(part), shortSurname(part):
			people, from, open, short = append(people, part), at, true, initials(part)
		default:
			return []string{s}
		}
		at = end + n
	}
	if open || len(people) < 2 {
		return []string{s}
	}
	return people
}

func isSuffix(s string) bool { return suffixes[strings.ToLower(strings.TrimRight(s, "."))] }

// suffixes stand behind a name and a comma.
var suffixes = map[string]bool{"jr": true, "sr": true, "ii": true, "iii": true, "iv": true, "filho": true, "neto": true, "júnior": true, "junior": true, "sobrinho": true, "s.j": true, "o.s.b": true, "o.f.m": true, "f.s.c": true, "ph.d": true, "phd": true}

// initials reports whether a part is made of initials alone: "J.", "J. M.",
// "J.-P.", "JM". Particles may follow: "P. de".
func initials(s string) bool {
	letters := 0
	for w := range strings.FieldsSeq(s) {
		if lowerWord(w) && letters > 0 {
			continue
		}
		run := 0
		for i, r := range w {
			switch {
			case unicode.IsUpper(r):
				letters, run = letters+1, run+1
			case r == '.', r == '-', r == '‐':
				run = 0
			case run == 1 && (r == 'h' || r == 'u') && strings.HasPrefix(w[i+1:], "."): // Ch., Yu.; Wu and Xu are surnames
			default:
				return false
			}
			if run > 3 {
				return false
			}
		}
	}
	return letters > 0
}

func lowerWord(w string) bool { return strings.IndexFunc(w, unicode.IsUpper) < 0 }

// surname reports whether a part is a surname of one to four words, without an
// initial.
func surname(s string) bool {
	words := strings.Fields(s)
	capitals := 0
	for _, w := range words {
		if strings.ContainsAny(w, ".()0123456789") && !isSuffix(w) {
			return false
		}
		if !lowerWord(w) {
			capitals++
		}
	}
	return len(words) <= 4 && capitals > 0 && capitals <= 3 && hasSurname(s)
}

// withInitial reports whether a part is a person written with an initial before
// the surname, or with initials behind it.
func withInitial(s string) bool {
	if !hasSurname(s) {
		return false
	}
	if r, n := utf8.DecodeRuneInString(s); unicode.IsUpper(r) && strings.HasPrefix(s[n:], ".") {
		return true
	}
	words := strings.Fields(s)
	last := words[len(words)-1]
	if len(words) < 2 || len(words) > 5 || !initials(last) || utf8.RuneCountInString(last) > 6 {
		return false
	}
	for _, w := range words[:len(words)-1] {
		if initials(w) || !lowerWord(w) && strings.ToUpper(w) == w && len(w) < 4 || strings.ContainsAny(w, "()0123456789") {
			return false
		}
	}
	return !isSuffix(last)
}

// inHan reports whether a part is a name of two to four Chinese characters.
func inHan(s string) bool {
	n := 0
	for _, r := range s {
		if !unicode.Is(unicode.Han, r) {
			return false
		}
		n++
	}
	return n >= 2 && n <= 4
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
