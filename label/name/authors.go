package name

import (
	"slices"
	"strings"
)

// sameAuthors reports whether two author strings may name the same people: spaces,
// full stops, the word for "and" and a year aside, but also what the Code leaves
// free. Who sanctioned a name need not be said (": Fr.", ": Pers.", Rec. 50E.2, 36.3),
// nor who is cited before "ex" (Art. 46.5) or what follows "in" (Art. 46.2), and
// one may abbreviate what the other writes in full or leave out initials (Rec. 46A).
func sameAuthors(a, b string) bool {
	x, y := plainAuthors(a), plainAuthors(b)
	if x == y {
		return true
	}
	const year = "0123456789()"
	if strings.TrimRight(x, year) == strings.TrimRight(y, year) {
		return true
	}
	first, last, ok := citation(a)
	first2, last2, ok2 := citation(b)
	return ok && ok2 && samePeople(first, first2) && samePeople(last, last2)
}

// andSigns are the words for "and" between authors, each with the sign for it.
var andSigns = []string{" et ", "&", " and ", "&", " und ", "&", " y ", "&", " e ", "&", "&amp;", "&"}

var (
	joinedAuthors = strings.NewReplacer(slices.Concat(andSigns, []string{"et al.", "& al."})...)
	partedAuthors = strings.NewReplacer(slices.Concat(andSigns, []string{",", "&"})...)
)

func plainAuthors(s string) string {
	s = joinedAuthors.Replace(s)
	return strings.Map(func(r rune) rune {
		switch r {
		case ' ', '.', ',', '\u00a0', '[', ']':
			return -1
		}
		return r
	}, s)
}

// citation parts the authors in brackets from those behind them; not ok where
// brackets stand elsewhere.
func citation(s string) (basionym, authors string, ok bool) {
	s = strings.Join(strings.Fields(s), " ")
	s = strings.TrimRight(strings.TrimRight(s, "0123456789 "), ", ")
	if rest, found := strings.CutPrefix(s, "("); found {
		if basionym, s, found = strings.Cut(rest, ")"); !found || basionym == "" {
			return "", "", false
		}
	}
	if strings.ContainsAny(basionym+s, "()[]0123456789\"") {
		return "", "", false
	}
	return strings.TrimSpace(basionym), strings.TrimSpace(s), true
}

// samePeople compares authors without brackets.
func samePeople(a, b string) bool {
	a, b = unsanctioned(a), unsanctioned(b)
	if (a == "") != (b == "") {
		return false
	}
	a, _, _ = strings.Cut(a, " in ")
	b, _, _ = strings.Cut(b, " in ")
	before, a, exA := cutLast(a, " ex ")
	before2, b, exB := cutLast(b, " ex ")
	if exA && exB && !samePeople(before, before2) {
		return false
	}
	x, y := people(a), people(b)
	if len(x) != len(y) {
		return false
	}
	for i := range x {
		if !samePerson(x[i], y[i]) {
			return false
		}
	}
	return true
}

// unsanctioned leaves out a sanctioning author, Persoon or Fries.
func unsanctioned(s string) string {
	if i := strings.LastIndexByte(s, ':'); i > 0 {
		switch strings.Trim(s[i+1:], " .") {
		case "Fr", "Pers", "Fries", "Persoon":
			return strings.TrimSpace(s[:i])
		}
	}
	return s
}

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return "", s, false
}

func people(s string) []string {
	return strings.FieldsFunc(partedAuthors.Replace(s), func(r rune) bool { return r == '&' })
}

// samePerson reports whether two citations of an author do not contradict each
// other.
func samePerson(a, b string) bool {
	x, y := personOf(a), personOf(b)
	if x.son != y.son || x.initials != "" && y.initials != "" && !strings.HasPrefix(x.initials, y.initials) && !strings.HasPrefix(y.initials, x.initials) {
		return false
	}
	if len(x.name) > len(y.name) {
		x, y = y, x
	}
	if x.name == y.name {
		return true
	}
	// Two abbreviations are two people: Hoffm. and Hoffmanns. One of two letters says
	// who it is only with initials: R.Br.
	return x.short && !y.short && strings.HasPrefix(y.name, x.name) && (len(x.name) > 2 || len(x.name) == 2 && x.initials != "" && y.initials != "") ||
		x.name == "l" && y.name == "linnaeus"
}

type person struct {
	name     string // small letters without accents, blanks and stops
	initials string
	short    bool // the name is abbreviated
	son      bool // filius
}

func personOf(s string) person {
	var p person
	words := strings.Fields(strings.ReplaceAll(strings.ReplaceAll(s, ".", ". "), "-", " "))
	for i, w := range words {
		bare := strings.TrimSuffix(w, ".")
		switch {
		case bare == "f" || bare == "fil":
			p.son = true
		case len([]rune(bare)) == 1 && i < len(words)-1 && words[i+1] != "f." && isUpper(bare):
			p.initials += bare
		default:
			p.name += fold(bare, false)
			p.short = w != bare
		}
	}
	return p
}
