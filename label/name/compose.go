package name

import (
	"cmp"
	"regexp"
	"strings"
	"unicode"
)

// Compose returns the name as it is to be printed. It is text, except that it
// is built from the columns where text is blank, gets the authors from their
// column where it has none (in an autonym after the species, Art. 26.1), the
// cultivar from its column, and the identificationQualifier before the epithet
// it doubts: "cf. granatense" and "Thymus granatense" make "Thymus cf.
// granatense". A doubt is never lost: one that finds no place stands in
// brackets after the name, and a Problem says so. The Problems of Parse are
// among those returned.
func Compose(text string, c Parts) (string, []Problem) {
	k := composer{c: c, text: text}
	n := k.parse()
	k.problems = n.Problems
	if n.Blank {
		k.build()
	} else {
		k.addInfraspecific(&n)
		k.addAuthors()
	}
	k.addCultivar()
	k.addQualifier()
	return k.text, k.problems
}

// A composer holds a name that is being put together.
type composer struct {
	c        Parts
	text     string
	p        parser
	problems []Problem
}

func (k *composer) parse() Name {
	k.p = parser{}
	k.p.read(k.text, k.c, Options{})
	n := k.p.name()
	n.Problems = k.p.compare(&n, k.c)
	return n
}

func (k *composer) say(term, value, message string) {
	k.problems = append(k.problems, Problem{Term: term, Value: value, Message: message})
}

// insert puts s into the text at a byte, with a space before or behind it.
func (k *composer) insert(at int, before, s, behind string) {
	k.text = k.text[:at] + before + s + behind + k.text[at:]
}

// build makes the name from the columns alone.
func (k *composer) build() {
	genus, species, infra := trim(k.c.Genus), trim(k.c.SpecificEpithet), trim(k.c.InfraspecificEpithet)
	said, authors := k.c.authors()
	sub := trim(k.c.InfragenericEpithet)
	word := func(parts ...string) string {
		return strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
	}
	switch {
	case genus == "":
		k.text = word(trim(k.c.Family))
		if k.text != "" && species == "" {
			k.text = word(k.text, authors)
		}
		if species != "" {
			k.say("genus", "", "an epithet without a genus is no name and is not printed: fill genus or scientificName")
		}
	case species == "" && sub != "":
		if r := abbreviation(k.c.Rank); r != "" {
			k.text = word(genus, r, sub, authors)
			return
		}
		k.text = word(genus, "("+strings.Trim(sub, "()")+")", authors)
		k.say("taxonRank", k.c.Rank, "the rank of "+sub+" is not known; say subgenus, section or series")
	case species == "" || infra == "":
		k.text = word(genus, species, authors)
		if infra != "" {
			k.say("infraspecificEpithet", k.c.InfraspecificEpithet, "an infraspecific epithet without a species is no name; fill specificEpithet")
		}
	default:
		r := abbreviation(cmp.Or(trim(k.c.Rank), said))
		if own, epithet, ok := ranked(infra); ok { // the cell has its rank before it
			if r != "" && r != own {
				k.say("taxonRank", k.c.Rank, "infraspecificEpithet says "+own+" there; say which is right")
			}
			r, infra = own, epithet
		}
		switch {
		case r == "" && remark.MatchString(infra):
			k.say("infraspecificEpithet", infra, "not an epithet: write the epithet alone, and a remark in a column of remarks")
		case r == "":
			k.say("taxonRank", k.c.Rank, "the rank of "+infra+" is not known; say subspecies, variety or form")
		}
		if same(species, infra) {
			k.text = word(genus, species, authors, r, infra)
		} else {
			k.text = word(genus, species, r, infra, authors)
		}
	}
}

// remark is a cell of several words, or with brackets, that is not an epithet and its
// author: "on limestone", "alba (no label)".
var remark = regexp.MustCompile(`^\p{Ll}+ +(?:\p{Ll}{4,}\b|\(\p{Ll})`)

// ranked parts an epithet below a species' from the word for its rank, which stands
// before it in the same cell: "subsp. brasiliensis".
func ranked(infra string) (rank, epithet string, ok bool) {
	first, epithet, _ := strings.Cut(infra, " ")
	if epithet = trim(epithet); epithet == "" || lookup(strings.ToLower(strings.TrimSuffix(first, "."))) != rankInfra {
		return "", "", false
	}
	rank = abbreviation(first)
	return rank, epithet, rank != ""
}

func trim(s string) string { return strings.TrimSpace(s) }

// abbreviation returns the word that stands for a rank in a name, "" where the
// column holds none that stands before an epithet. Abbreviations pass as they
// are.
func abbreviation(rank string) string {
	r := strings.ToLower(strings.TrimSuffix(trim(rank), "."))
	notho := ""
	if strings.HasPrefix(r, "notho") {
		notho, r = "notho", r[len("notho"):]
	}
	switch r {
	case "subspecies", "subsp", "ssp":
		r = "subsp."
	case "variety", "varietas", "var":
		r = "var."
	case "subvariety", "subvarietas", "subvar":
		r = "subvar."
	case "form", "forma", "f", "fo":
		r = "f."
	case "subform", "subforma", "subf":
		r = "subf."
	case "convariety", "convarietas", "convar":
		r = "convar."
	case "subgenus", "subgen", "subg":
		r = "subg."
	case "section", "sectio", "sect":
		r = "sect."
	case "subsection", "subsectio", "subsect":
		r = "subsect."
	case "series", "ser":
		r = "ser."
	case "subseries", "subser":
		r = "subser."
	default:
		if k := lookup(notho + r); k != rankInfra && k != rankGenus || strings.HasSuffix(r, "name") {
			return ""
		}
		return trim(rank)
	}
	return notho + r
}

// addInfraspecific puts the epithet below the species' behind a species' name, where its column
// is there for that: "Thymus vulgaris" and "subsp. palearensis".
func (k *composer) addInfraspecific(n *Name) {
	infra := trim(k.c.InfraspecificEpithet)
	rank, f := abbreviation(k.c.Rank), &k.p.found
	if own, epithet, ok := ranked(infra); ok {
		rank, infra = own, epithet
	}
	at := max(f.lowest.end, f.authors.end)
	if !k.c.Completes || rank == "" || infra == "" || n.Epithet == "" || n.Infraspecific != "" || n.Formula || n.Indet || trim(k.text[at:]) != "" {
		return
	}
	k.text = k.text[:at] + " " + rank + " " + infra
	k.problems = k.parse().Problems
}

// addAuthors puts the authors of their column into a name that has none.
func (k *composer) addAuthors() {
	_, a := k.c.authors()
	n := k.p.name()
	if a == "" || n.Authorship != "" {
		return
	}
	if n.Formula || n.Indet {
		k.say("scientificNameAuthorship", k.c.Authorship, "not printed: the scientific name is no single name that has authors")
		return
	}
	at := k.p.found.lowest.end
	if n.Autonym {
		at = k.p.found.epithet.end
	}
	if at < len(k.text) && k.text[at] == '?' {
		at++
	}
	k.insert(at, " ", a, "")
}

// addCultivar puts the cultivar epithet of its column behind a name that has
// none.
func (k *composer) addCultivar() {
	e := strings.Trim(trim(k.c.CultivarEpithet), "‘’'\"“”")
	if e == "" || strings.Contains(k.text, e) {
		return
	}
	k.text = strings.TrimRight(k.text, " ")
	k.text += " ‘" + e + "’"
	k.text = strings.TrimPrefix(k.text, " ")
}

// addQualifier puts the doubt of its column where it belongs.
func (k *composer) addQualifier() {
	q := trim(k.c.Qualifier)
	if q == "" {
		return
	}
	n := k.parse()
	d := doubtOf(q)
	switch {
	case n.Blank:
		if d.word == "" || d.rest == "" {
			k.say("identificationQualifier", k.c.Qualifier, "there is no name that it could qualify; fill scientificName")
			return
		}
		k.text = q
	case d.behind:
		k.behind(q)
	case d.word == "":
		if !strings.Contains(k.text, q) {
			k.append(q, "printed in brackets after the name; write cf., aff. or ? and the epithet in doubt")
		}
	default:
		k.doubt(q, d, &n)
	}
}

// append puts a qualifier in brackets after the name.
func (k *composer) append(q, why string) {
	k.text = strings.TrimRight(k.text, " ") + " (" + q + ")"
	k.say("identificationQualifier", k.c.Qualifier, why)
}

// behind puts "agg.", "s.l.", "sp. nov." behind the authors.
func (k *composer) behind(q string) {
	f := &k.p.found
	if strings.Contains(squeeze(k.text), squeeze(q)) {
		return
	}
	at := max(f.lowest.end, f.authors.end)
	if f.level == noLevel {
		at = len(k.text)
	}
	k.insert(at, " ", q, "")
}

func squeeze(s string) string {
	return strings.NewReplacer(" ", "", ".", "", "\u00a0", "").Replace(strings.ToLower(s))
}

// A doubt is an identificationQualifier taken apart.
type doubt struct {
	word   string // "cf.", "vel aff.", "?"
	rest   string // what it stands before, "" if not said
	toks   []token
	behind bool // open nomenclature that stands behind a name
}

// doubtOf takes a qualifier apart: "cf. granatense", "Thymus cf. granatense",
// "aff.", "?", "agg.".
func doubtOf(q string) doubt {
	toks := lex(q)
	is := func(t *token) bool {
		return t.class == word && t.kind == qualifier || t.class == mark && q[t.start:t.end] == "?"
	}
	for i := range toks {
		if !is(&toks[i]) {
			continue
		}
		first := i
		for first > 0 && toks[first-1].class == word && (toks[first-1].kind == either || toks[first-1].kind == link || toks[first-1].kind == open) {
			first--
		}
		last := i
		for last+1 < len(toks) && (is(&toks[last+1]) || toks[last+1].kind == either && last+2 < len(toks) && is(&toks[last+2])) {
			last++
		}
		return doubt{word: q[toks[first].start:toks[last].end], rest: trim(q[toks[last].end:]), toks: toks[last+1:]}
	}
	if len(toks) > 0 && toks[0].class == word {
		switch toks[0].kind {
		case open, note, group, hort:
			return doubt{behind: true}
		}
	}
	return doubt{}
}

// doubt puts a doubt before the word of the name that it names; where it names
// none, before the species epithet, so that everything after it is in doubt.
func (k *composer) doubt(q string, d doubt, n *Name) {
	f := &k.p.found
	at := -1
	if d.rest == "" {
		if n.Qualifier != "" {
			if squeeze(n.Qualifier) != squeeze(d.word) {
				k.say("identificationQualifier", k.c.Qualifier, "the scientific name already says "+n.Qualifier+"; say which is right")
			}
			return
		}
		at = k.start()
		if !n.Formula && f.epithet.end > 0 {
			at = f.epithet.start
		}
	} else {
		at = k.target(q, d)
	}
	if at < 0 {
		if f.level > levelUninomial && f.epithet.end == 0 && !isUpper(d.rest) {
			k.behind(q) // Thymus, aff. granatense
			return
		}
		if !strings.Contains(k.text, q) {
			k.append(q, "the scientific name has no such word; printed in brackets after it")
			k.problems[len(k.problems)-1].Suggest = k.meant(q, d)
		}
		return
	}
	// A sign of hybridity belongs to its word.
	i := k.tokenAt(at)
	for i > 0 && (k.p.toks[i-1].class == crossSign || k.p.toks[i-1].class == plusSign || k.p.toks[i-1].kind == cross && k.p.toks[i-1].class == word) &&
		(d.rest != "" || !n.Formula || i == 1) {
		i--
	}
	if i > 0 {
		b := &k.p.toks[i-1]
		if b.class == word && b.kind == qualifier || b.class == mark && k.p.textOf(i-1) == "?" {
			return // it stands there already
		}
	}
	behind := " "
	if d.word == "?" {
		behind = ""
	}
	k.insert(k.p.toks[i].start, "", d.word, behind)
}

func isUpper(s string) bool { return unicode.IsUpper(firstRune(s)) }

// start returns where the name itself begins.
func (k *composer) start() int {
	for i := range k.p.toks {
		if t := &k.p.toks[i]; t.italic || t.class == word && t.kind == plainWord {
			return t.start
		}
	}
	return 0
}

func (k *composer) tokenAt(at int) int {
	for i := range k.p.toks {
		if k.p.toks[i].start == at {
			return i
		}
	}
	return 0
}

// target returns where the word stands that a doubt names, or the rank word
// before it if the doubt names that too; -1 if the name has no such word, or
// if the doubt goes on with epithets that the name has not.
func (k *composer) target(q string, d doubt) int {
	at, rank := -1, false
	from := 0
	for i := range d.toks {
		t := &d.toks[i]
		if t.class != word {
			continue
		}
		if t.kind.isRank() || t.kind == filius {
			rank = rank || at < 0
			continue
		}
		if t.kind != plainWord {
			continue
		}
		w := strings.TrimSuffix(q[t.start:t.end], ".")
		j := k.find(w, from)
		if j < 0 {
			if t.upper && (at >= 0 || t.dot) {
				continue // an author, or an abbreviated genus
			}
			return -1
		}
		from = j + 1
		if at >= 0 {
			continue
		}
		if rank {
			for j > 0 && k.p.toks[j-1].class == word && (k.p.toks[j-1].kind.isRank() || k.p.toks[j-1].kind == filius) {
				j--
			}
		}
		at = k.p.toks[j].start
	}
	return at
}

// meant returns a doubt with the word of the name that is one slip from one of its
// own in that one's place; "" if there is none.
func (k *composer) meant(q string, d doubt) string {
	for i := range d.toks {
		t := &d.toks[i]
		if t.class != word || t.kind != plainWord || t.end-t.start < 5 {
			continue
		}
		for j := range k.p.toks {
			if w := k.p.bare(j); k.p.toks[j].italic && len(w) >= 5 && oneSlip(w, q[t.start:t.end]) {
				return q[:t.start] + w + q[t.end:]
			}
		}
	}
	return ""
}

// find returns the italic token from i on that is w.
func (k *composer) find(w string, i int) int {
	for ; i < len(k.p.toks); i++ {
		if t := &k.p.toks[i]; t.italic && same(k.p.bare(i), w) {
			return i
		}
	}
	return -1
}
