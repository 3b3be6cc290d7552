package trade

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
)

// personTerms are the columns that hold persons.
var personTerms = [...]string{"recordedBy", "coCollectors", "identifiedBy"}

// peopleRules hold the persons of a table against each other.
func peopleRules() []check.Rule {
	run := func(last string) []map[string]string {
		var all [][]string
		for i := range 12 {
			all = append(all, []string{"recordNumber", itoa(214 + i), "recordedBy", "I. Almeida | T. Brandão"})
		}
		all[7] = []string{"recordNumber", "221", "recordedBy", last}
		return rows(all...)
	}
	return []check.Rule{{
		Name: "person-spelling", Severity: label.Warning, Source: practice,
		Doc: "a person with a letter or an accent less, more or other than in many more records of the table, or in small letters", Terms: personTerms[:],
		Example: run("I. Almeida | T. Brandao"), Counterexample: run("I. Almeida | R. Brandeiro"),
		Table: func() check.TableRule { return &peopleTable{seen: map[string]*person{}} },
	}}
}

// person is one way in which a person is written: some 150 bytes.
type person struct {
	initials, surname string
	count             int
	cells             [rareRecords]personCell // the first
}

type personCell struct {
	cell
	term int
	text string
}

// A person in few records is held against persons in many. Of two that differ by a
// letter both may be right, so that takes more of them than an accent.
const (
	rareRecords = 2
	manyRecords = 10
	someRecords = 4
)

// peopleTable keeps some 150 bytes for each way in which a person is written.
type peopleTable struct {
	file string
	seen map[string]*person
}

func (t *peopleTable) Feed(r *check.Record) {
	for i, term := range personTerms {
		f := r.Field(term)
		if f.Text == "" || len(f.Text) > 300 || r.Doubted(term) {
			continue
		}
		t.file = f.Origin.File
		if term == "recordedBy" {
			t.keep(r.Collector, f, i)
			for _, p := range r.Others {
				if strings.Contains(f.Text, p) {
					t.keep(p, f, i)
				}
			}
			continue
		}
		if p := t.seen[f.Text]; p != nil && !strings.ContainsAny(f.Text, ",;|&") {
			t.keep(f.Text, f, i) // as most cells are
			continue
		}
		for _, p := range check.ParseCollectors(f.Text) {
			t.keep(p, f, i)
		}
	}
}

func (t *peopleTable) keep(text string, f check.Field, term int) {
	if text == "" {
		return
	}
	if n := len(text); isFigure(text[n-1]) || text[n-1] == ')' {
		if m := yearAfter.FindStringSubmatch(text); m != nil {
			text = m[1] // the year of the determination
		}
	}
	p := t.seen[text]
	if p == nil {
		initials, surname := personParts(text)
		p = &person{initials: initials, surname: strings.Clone(surname)}
		t.seen[strings.Clone(text)] = p
	}
	if p.count < len(p.cells) {
		p.cells[p.count] = personCell{cellOf(f), term, strings.Clone(f.Text)}
	}
	p.count++
}

// personParts returns a person's initials in small letters, without signs, and the
// longest word, which is the surname or as good; "" for what is no single person.
func personParts(text string) (initials, surname string) {
	words := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && r != '-' && r != '\'' && r != '’' })
	if len(words) < 2 || len(words) > 6 || strings.ContainsAny(text, "0123456789()") {
		return "", ""
	}
	for _, w := range words {
		if len(w) > len(surname) {
			surname = w
		}
	}
	var b strings.Builder
	for _, w := range words {
		if w != surname {
			b.WriteString(strings.ToLower(w[:1]))
			if len(w) > 1 && w[0] >= 0x80 {
				return "", ""
			}
		}
	}
	return b.String(), surname
}

func (t *peopleTable) End() []label.Finding {
	byInitials := map[string][]*person{}
	for _, p := range t.seen {
		if p.surname != "" && p.initials != "" {
			byInitials[p.initials] = append(byInitials[p.initials], p)
		}
	}
	var all []label.Finding
	for _, list := range byInitials {
		slices.SortFunc(list, func(a, b *person) int {
			return cmp.Or(cmp.Compare(b.count, a.count), strings.Compare(a.surname, b.surname))
		})
		for i, p := range list {
			if p.count > rareRecords {
				continue
			}
			for _, as := range list[:i] {
				if as.count < max(someRecords, 3*p.count) || as.surname == p.surname {
					continue
				}
				what := otherSpelling(p.surname, as.surname)
				if what == "" || what == "letter" && as.count < manyRecords*p.count {
					continue
				}
				all = append(all, t.finding(p, as))
				break
			}
		}
	}
	slices.SortFunc(all, func(a, b label.Finding) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), strings.Compare(a.Term, b.Term))
	})
	return all
}

func (t *peopleTable) finding(p, as *person) label.Finding {
	at := p.cells[0]
	f := label.Finding{
		Origin: at.origin(t.file, personTerms[at.term]), Value: at.text, Suggest: strings.Replace(at.text, p.surname, as.surname, 1),
		Message: fmt.Sprintf("%q is spelt %q in %s of the table", p.surname, as.surname, plural(as.count, "place")),
	}
	if strings.EqualFold(p.surname, as.surname) {
		f.Suggest = smallInitial.ReplaceAllStringFunc(f.Suggest, strings.ToUpper)
	}
	if p.count > 1 {
		f.Also = []label.Cell{{Row: int(p.cells[1].row), Term: personTerms[p.cells[1].term]}}
	}
	return f
}

// smallInitial is one in small letters.
var smallInitial = regexp.MustCompile(`(?:^|[ .])\p{Ll}\.`)

// otherSpelling tells whether two surnames are likely one: "accent" where only the
// accents differ, "letter" where one letter inside does, put in, left out, changed or
// exchanged with its neighbour; "small letters" where a is typed so throughout. The last letters tell families apart (Martin and
// Martins, Hansen and Hanson), and so do short names.
func otherSpelling(a, b string) string {
	if strings.EqualFold(a, b) {
		if a == strings.ToLower(a) && b != strings.ToLower(b) {
			return "small letters"
		}
		return ""
	}
	x, y := check.PlainLetters(a), check.PlainLetters(b)
	if strings.EqualFold(x, y) {
		if len([]rune(a)) >= 4 {
			return "accent"
		}
		return ""
	}
	if len(x) < 6 || len(y) < 6 || x[0] != y[0] || x[len(x)-1] != y[len(y)-1] || !within([]rune(x), []rune(y), 1) {
		return ""
	}
	if n := len(x); n == len(y) && x[n-2] != y[n-2] && x[n-3] == y[n-3] {
		return "" // Hansen, Hanson
	}
	return "letter"
}
