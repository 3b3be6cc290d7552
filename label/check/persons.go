package check

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"

	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// personTerms are the columns that hold persons.
var personTerms = []string{"recordedBy", "coCollectors", "identifiedBy"}

// personRules are about how persons are written.
func personRules() []Rule {
	return []Rule{
		{
			Name: "person-form", Severity: label.Warning, Source: practice,
			Doc:     "a person with a word that the label writes itself, with the collector's number, with half of the name missing, twice, or two of them without a sign between",
			Terms:   personTerms,
			Example: one("recordedBy", "leg. I. Almeida"), Counterexample: one("recordedBy", "Coll. ign."),
			Row: func(c *Context) {
				for _, term := range personTerms {
					text := c.Text(term)
					if text == "" || Absent("recordedBy", text) || c.Doubted(term) {
						continue
					}
					r := c.past.persons.of(personKey{text, term != "identifiedBy"}, readPerson)
					if r.number != "" {
						here := numberHere(c, term, r.number, r.figures)
						if r.message != "" {
							here = r.message + "; " + here
						}
						r.message = here
					}
					if r.message == "" && term == "coCollectors" && c.Collector != "" {
						r.message = c.withThemself(text)
					}
					if r.message != "" {
						c.Suggest(term, r.message, r.suggest)
						switch { // what every row has is one habit
						case r.number != "":
							c.cause("a number with the collector")
						case strings.Contains(r.message, noPart):
							c.cause(r.message)
						}
					}
				}
			},
		},
	}
}

// withThemself says that the collector stands among those who were there beside.
func (c *Context) withThemself(text string) string {
	key := namesOf(c.Collector)
	if key == "" || len(strings.Fields(key)) < 2 {
		return ""
	}
	for _, p := range ParseCollectors(text) {
		if namesOf(p) == key {
			return p + " is the collector, and stands here again"
		}
	}
	return ""
}

// numberBehind is a collector's number behind a name, numberBefore one before it.
var (
	numberBehind = regexp.MustCompile(`^(.*?\pL[.)]?),?\s+((?:n\.?º|nº|no\.?|nr\.?|#)?\s*([0-9]{1,6}[a-z]?|[A-Z]{1,4}-?[0-9]{1,5}|[0-9]{2}-[0-9]{1,4}|(?:19|20)[0-9]{2}-[0-9]{1,3})|s\.\s?n\.?)$`)
	numberBefore = regexp.MustCompile(`^#\s?([0-9]{1,6})\s+(\pL.*)$`)
)

// figureWithin is a word with a figure between its letters: "Alme1da".
var figureWithin = regexp.MustCompile(`\p{Lu}\p{Ll}+[0-9]\p{Ll}+`)

// figureBehind is a word with one figure glued to it, where the name ends: "Almeida1".
var figureBehind = regexp.MustCompile(`(\p{Lu}\p{Ll}{3,}([0-9]))(?:[,;&| ]|$)`)

// stopAlone is a full stop that belongs to no initial: "N. .M. Almeida". Three of
// them are an ellipsis.
var stopAlone = regexp.MustCompile(`(\p{Lu}\.) \. ?(\p{Lu})`)

const noPart = " is no part of the name"

// personKey is a cell of persons, who may bear a number if they collected.
type personKey struct {
	text      string
	collected bool
}

// personReading is what is wrong with the way persons are written; number is what
// stands beside them as it is written, figures the number itself.
type personReading struct{ message, suggest, number, figures string }

func readPerson(k personKey) personReading {
	text := k.text
	if word, rest := wordBefore(text); word != "" {
		r := readPerson(personKey{rest, k.collected}) // a number may stand behind, too
		if m := numberBehind.FindStringSubmatch(rest); r.number == "" && k.collected && m != nil && hasSurname(m[1]) && !isYear(m[2]) {
			r.suggest, r.number, r.figures = m[1], m[2], m[3]
		}
		if r.number == "" {
			r = personReading{suggest: rest}
		}
		r.message = word + noPart + ": take it out, for the label writes what it needs"
		return r
	}
	if k.collected && (strings.ContainsAny(text, "0123456789") || strings.HasSuffix(text, "n.") || strings.HasSuffix(text, ".n")) {
		if m := numberBehind.FindStringSubmatch(text); m != nil && isPerson(m[1]) && !isYear(m[2]) {
			return personReading{suggest: m[1], number: m[2], figures: m[3]}
		}
		if m := numberBefore.FindStringSubmatch(text); m != nil && isPerson(m[2]) {
			return personReading{suggest: m[2], number: "#" + m[1], figures: m[1]}
		}
	}
	if i := strings.Index(text, "et. al"); i > 0 {
		mended := strings.TrimRight(strings.Replace(text, "et. al", "et al", 1), " ,;")
		return personReading{message: "et al. has one full stop: et is a whole word", suggest: mended}
	}
	if strings.Count(text, "(") != strings.Count(text, ")") {
		return personReading{message: "a bracket has no partner"}
	}
	if w := figureWithin.FindString(text); w != "" {
		return personReading{message: "a figure stands within the name " + w}
	}
	if m := figureBehind.FindStringSubmatchIndex(text); m != nil {
		return personReading{message: "a figure stands at the end of the name " + text[m[2]:m[3]], suggest: text[:m[4]] + text[m[5]:]}
	}
	if strings.Trim(text, "0123456789 .,/-") == "" {
		return personReading{message: "figures alone are nobody: is it of another column?"}
	}
	if i := initialAlone(text); i != "" {
		return personReading{message: "the initial " + i + " has no surname"}
	}
	words := strings.Fields(strings.ReplaceAll(text, "&", " & "))
	if last := words[len(words)-1]; len(words) > 1 && (joiners[last] || (last == "e" || last == "y") && strings.ToLower(text) != text) {
		return personReading{message: "nobody follows " + last}
	}
	if strings.Contains(text, ". .") {
		if mended := stopAlone.ReplaceAllString(text, "$1 $2"); mended != text {
			return personReading{message: "a full stop stands alone between the initials", suggest: mended}
		}
	}
	if strings.HasPrefix(text, ",") {
		return personReading{message: "nothing stands before the comma", suggest: strings.TrimLeft(text, ", ")}
	}
	if r := splitName(text); r.message != "" {
		return r
	}
	if r := unparted(text); r.message != "" {
		return r
	}
	return personTwice(text)
}

// numberWithCollector reports whether the collector's number, or s.n., stands
// behind or before the collector, which person-form says.
func (c *Context) numberWithCollector() bool {
	text := c.Text("recordedBy")
	return text != "" && c.past.persons.of(personKey{text, true}, readPerson).number != ""
}

func numberHere(c *Context, term, as, number string) string {
	message := as + " stands with the collector: its place is recordNumber"
	switch have := c.Number; {
	case term != "recordedBy" || c.CellText("recordNumber") == "" && number == "":
	case have == "" && number != "":
		message += ", and the label prints s.n."
	case have == number && number != "":
		return as + " stands in recordNumber too, and is printed twice"
	case number != "":
		message += ", which says " + have
	}
	return message
}

// saidBefore are phrases before a person, and "leg." without its stop before an
// initial: Legrand and a Leg of a party are none.
var saidBefore = regexp.MustCompile(`^((?i:col(?:l(?:ected|\.)?|\.)? by|gesammelt (?:von|durch)|(?:re)?colhido por|(?:re)?co(?:le|lec|llec)tad[oa] por|r[ée]colt[ée]e? par|raccolt[oa] da|insamlad av|leg(?:it)?)) ((?:\p{Lu}\.|\p{Lu}\p{Ll}+ ).*)$`)

// wordBefore takes off a word such as "leg." before a person. "Col." may be a
// colonel and "Rev." a reverend, "Coll. ign." is nobody.
func wordBefore(text string) (word, rest string) {
	if m := saidBefore.FindStringSubmatch(text); m != nil {
		return m[1], m[2]
	}
	rest = text
	for {
		i := strings.IndexFunc(rest, func(r rune) bool { return r == '.' || r == ':' || r == ' ' })
		if i < 1 || i >= len(rest)-1 {
			break
		}
		w := strings.ToLower(rest[:i])
		signs := rest[i : len(rest)-len(strings.TrimLeft(rest[i:], ".:"))]
		after := strings.TrimLeft(rest[i+len(signs):], " ")
		joins := word != "" && rest[:i] == w && (w == "et" || w == "and" || w == "&" || w == "e" || w == "y")
		if !joins && (!collecting[w] || signs == "" && !strings.HasPrefix(after, ":") || (w == "col" || w == "rev") && !strings.Contains(signs, ":")) {
			break
		}
		if !joins && word == "" {
			word = rest[:i] + strings.TrimRight(signs, ":")
		}
		rest = after
	}
	if r, _ := utf8.DecodeRuneInString(rest); word == "" || !unicode.IsLetter(r) || unicode.IsLower(r) && !particle(rest) {
		return "", text
	}
	return word, rest
}

// particle reports whether a name begins with a small word such as de or von.
func particle(s string) bool {
	first, rest, _ := strings.Cut(s, " ")
	r, _ := utf8.DecodeRuneInString(rest)
	return len(first) <= 3 && unicode.IsUpper(r)
}

// isPerson reports whether a text is one person or several, each with an initial.
func isPerson(s string) bool {
	s = strings.TrimRight(s, " ,")
	for _, p := range ParseCollectors(s) {
		last, first, ok := strings.Cut(p, ",")
		letter, surnames, _ := strings.Cut(p, " ")
		bare := len(letter) == 1 && initials(letter) && hasSurname(surnames) // D Almeida
		if !withInitial(p) && !bare && !(ok && surname(last) && initials(first)) {
			return false
		}
	}
	return s != ""
}

// isYear reports whether figures may be a year: "Exp. Valdoura 1998".
func isYear(s string) bool {
	return len(s) == 4 && (strings.HasPrefix(s, "18") || strings.HasPrefix(s, "19") || strings.HasPrefix(s, "20")) && strings.Trim(s, "0123456789") == ""
}

// initialAlone returns a single initial that stands between two separators and
// belongs to no surname: "I. Almeida, H., T. Brandão". That of "H. & V. Almeida" does.
func initialAlone(s string) string {
	for piece := range strings.FieldsFuncSeq(s, func(r rune) bool { return r == '|' || r == ';' }) {
		joined := strings.Split(piece, "&")
		for k, some := range joined {
			before := "" // the part before, if it is a surname alone
			parts := strings.Split(some, ",")
			for i, part := range parts {
				part = strings.TrimSpace(part)
				shared := len(parts) == 1 && k+1 < len(joined) && startsWithPerson(joined[k+1])
				if single(part) && before == "" && !(i == 0 && len(parts) > 1) && !shared {
					return part
				}
				if before = ""; !initials(part) && !withInitial(part) && hasSurname(part) || shortSurname(part) {
					before = part
				}
			}
		}
	}
	return ""
}

// startsWithPerson reports whether a text begins with a person's initial and surname.
func startsWithPerson(s string) bool {
	first, _, _ := strings.Cut(s, ",")
	first = strings.TrimSpace(first)
	return strings.IndexByte(first, '.') > 0 && withInitial(first)
}

// shortSurname reports whether capitals without a stop may be a surname, before its
// initials: "KIM, J.", "SAE-HAN, D.".
func shortSurname(s string) bool {
	return initials(s) && !strings.Contains(s, ".") && utf8.RuneCountInString(s) > 1
}

// single reports whether a part is one initial alone.
func single(s string) bool {
	r, n := utf8.DecodeRuneInString(s)
	return unicode.IsUpper(r) && s[n:] == "."
}

// PlainLetters takes the accents off a text, to compare it with others.
func PlainLetters(s string) string {
	out, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), s)
	if err != nil {
		return s // cannot be, from memory to memory
	}
	return out
}
