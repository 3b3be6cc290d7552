package name

import (
	"regexp"
	"strings"
	"unicode"
)

// unstopped are the two authors that are always abbreviated to one word of capitals, and
// the son of one, without their full stop, where nothing but the next author follows:
// "L", "(DC) Coville", "Hook.f".
var unstopped = regexp.MustCompile(`(^|\(|& ?|\b(?:ex|in|et|and) )(L|DC)(\)|$| (?:ex|in|et|and|&)\b|,? &)|(\pL\.f)(\)|$)`)

// stopped adds the stops; "" where none is missing.
func stopped(authors string) string {
	if !strings.ContainsAny(authors, "LDf") {
		return ""
	}
	mended := unstopped.ReplaceAllStringFunc(authors, func(s string) string {
		m := unstopped.FindStringSubmatch(s)
		return m[1] + m[2] + m[4] + "." + m[3] + m[5]
	})
	if mended == authors {
		return ""
	}
	return mended
}

const noStop = "a full stop is missing behind an author who is abbreviated"

// stopMissing finds an abbreviated author without its stop.
func (f *faults) stopMissing() {
	d := &f.p.found
	if d.level < levelSpecies || d.formula || d.lowest.end <= 0 || d.lowest.end >= len(f.p.text) {
		return
	}
	at := f.p.text[d.lowest.end:]
	rest := strings.TrimLeft(at, " ")
	if mended := stopped(strings.TrimRight(rest, " ")); mended != "" {
		f.sayHabit(noStop, f.p.text[:d.lowest.end]+at[:len(at)-len(rest)]+mended)
	}
}

func (f *authorship) stopMissing() {
	if mended := stopped(f.text); mended != "" {
		f.sayHabit(noStop, mended)
	}
}

// capitalised begins the words of authors in small letters with a capital.
func capitalised(authors string) string {
	switch authors {
	case "dc.":
		return "DC."
	case "l.f.":
		return "L.f."
	}
	for i, r := range authors {
		if unicode.IsLetter(r) {
			return authors[:i] + string(unicode.ToUpper(r)) + authors[i+len(string(r)):]
		}
	}
	return authors
}
