package name

import (
	"strings"
	"unicode"
)

// columns finds what the record's own columns hold in the text and gives those
// tokens their role. The genus comes first, then the epithets in their order,
// then the authors.
func (p *parser) columns(c Parts) {
	if c.Genus == "" && c.SpecificEpithet == "" && c.InfraspecificEpithet == "" && c.InfragenericEpithet == "" && c.Authorship == "" {
		return
	}
	from := 0
	if g := genusOf(c.Genus); g != "" {
		if i := p.find(g, 0); i >= 0 {
			p.toks[i].role = roleGenus
			from = i + 1
		}
	}
	if g := genusOf(c.InfragenericEpithet); g != "" && from > 0 {
		if i := p.find(g, from); i >= 0 {
			p.toks[i].role = roleInfrageneric
			from = i + 1
		}
	}
	species := -1
	if e := epithetOf(c.SpecificEpithet); e != "" {
		if i := p.find(e, from); i >= 0 {
			p.toks[i].role = roleEpithet
			species, from = i, i+1
		}
	}
	after := from
	if e := epithetOf(c.InfraspecificEpithet); e != "" && species >= 0 {
		last := -1
		for i := p.find(e, from); i >= 0; i = p.find(e, i+1) {
			last = i
		}
		if last >= 0 {
			p.toks[last].role = roleInfraspecific
			after = last + 1
		}
	}
	_, a := c.authors()
	if !authorLike(a) {
		return
	}
	if !p.findAuthors(a, after) && after != from {
		p.findAuthors(a, from)
	}
}

// authors returns the authors of their column without the rank and the epithet
// that portals put before those of an infraspecific name, and that rank.
func (c Parts) authors() (rank, authors string) {
	a := strings.TrimSpace(c.Authorship)
	first, rest, _ := strings.Cut(a, " ")
	epithet, rest, _ := strings.Cut(strings.TrimSpace(rest), " ")
	if e := epithetOf(c.InfraspecificEpithet); e == "" || !same(epithet, e) || lookup(strings.ToLower(strings.TrimSuffix(first, "."))) != rankInfra {
		return "", a
	}
	return first, strings.TrimSpace(rest)
}

// find returns the first word from token i on that is w, letter case and the
// orthography of ligatures and umlauts aside; -1 if there is none.
func (p *parser) find(w string, i int) int {
	for ; i < len(p.toks); i++ {
		if t := &p.toks[i]; t.class == word && t.role == noRole && same(p.bare(i), w) {
			return i
		}
	}
	return -1
}

// findAuthors gives the tokens that spell a the role of authors. They must
// begin and end where tokens do.
func (p *parser) findAuthors(a string, from int) bool {
	if from >= len(p.toks) {
		return false
	}
	at := p.toks[from].start
	k := strings.Index(p.text[at:], a)
	if k < 0 {
		return false
	}
	start, end := at+k, at+k+len(a)
	first, last := -1, -1
	for i := from; i < len(p.toks); i++ {
		if p.toks[i].start == start {
			first = i
		}
		if p.toks[i].end == end || p.toks[i].dot && p.toks[i].end == end+1 {
			last = i
		}
	}
	if first < 0 || last < first {
		return false
	}
	for i := first; i <= last; i++ {
		if p.toks[i].role == noRole {
			p.toks[i].role = roleAuthor
		}
	}
	return true
}

// same reports whether two words are one: equal but for the case of letters
// and for ligatures and umlauts, which are orthography only (Art. 60.7).
func same(a, b string) bool {
	if strings.EqualFold(a, b) {
		return true
	}
	if ascii(a) && ascii(b) {
		return false
	}
	return fold(a, false) == fold(b, false) || fold(a, true) == fold(b, true)
}

func ascii(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

var (
	folding     = strings.NewReplacer("æ", "ae", "œ", "oe", "ë", "e", "ï", "i", "ä", "a", "ö", "o", "ü", "u", "å", "a", "ø", "o", "é", "e", "è", "e", "ê", "e", "ñ", "n", "ç", "c", "‐", "-", "‑", "-", "–", "-")
	foldingLong = strings.NewReplacer("æ", "ae", "œ", "oe", "ë", "e", "ï", "i", "ä", "ae", "ö", "oe", "ü", "ue", "å", "ao", "ø", "oe", "é", "e", "è", "e", "ê", "e", "ñ", "n", "ç", "c", "‐", "-", "‑", "-", "–", "-")
)

// fold writes a word as Art. 60.7 wants it: umlauts as two letters where they
// are vowels of their own, as one where they were a diaeresis.
func fold(s string, long bool) string {
	s = strings.ToLower(s)
	if long {
		return foldingLong.Replace(s)
	}
	return folding.Replace(s)
}

// genusOf returns the capital word that a column of a genus or subgenus holds,
// its sign of hybridity and brackets aside; "" if it holds anything else.
func genusOf(s string) string {
	s = strings.Trim(strings.TrimSpace(s), "()")
	for _, sign := range [...]string{"×", "+", "x ", "X "} {
		s = strings.TrimSpace(strings.TrimPrefix(s, sign))
	}
	if len(s) < 2 || !onlyLetters(s) || !unicode.IsUpper(firstRune(s)) {
		return ""
	}
	var buf [20]byte
	if w, ok := lower(buf[:], s, false); ok && titleKind(string(w)) != plainWord {
		return ""
	}
	return s
}

// epithetOf returns the epithet that a column holds, its sign of hybridity
// aside; "" if the column holds a placeholder, a doubt or several words.
func epithetOf(s string) string {
	s = strings.TrimSpace(s)
	for _, sign := range [...]string{"×", "+", "x ", "X "} {
		s = strings.TrimSpace(strings.TrimPrefix(s, sign))
	}
	if len(s) < 2 || !onlyLetters(s) {
		return ""
	}
	var buf [20]byte
	if w, ok := lower(buf[:], s, false); ok {
		switch lookup(string(w)) {
		case plainWord, ordinary:
		default:
			return ""
		}
	}
	if unicode.IsUpper(firstRune(s)) && !latinate(strings.ToLower(s)) {
		return ""
	}
	return s
}

func onlyLetters(s string) bool {
	for i, r := range s {
		if !isLetter(r) && (i == 0 || r != '-' && r != '\'' && r != '’' && r != '‐' && r != '–' && r != '.') {
			return false
		}
	}
	return !strings.HasSuffix(s, ".")
}

// authorLike reports whether a column can hold authors: it has a capital.
func authorLike(s string) bool {
	return len(s) > 1 && strings.IndexFunc(s, unicode.IsUpper) >= 0
}
