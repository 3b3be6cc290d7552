package name

import (
	"strings"
	"unicode/utf8"
)

func (p *parser) textOf(i int) string { return p.text[p.toks[i].start:p.toks[i].end] }

// bare returns the word without a final full stop.
func (p *parser) bare(i int) string {
	t := &p.toks[i]
	if t.dot {
		return p.text[t.start : t.end-1]
	}
	return p.text[t.start:t.end]
}

// lower returns the word in small letters without a full stop, for questions
// about its ending; only ASCII is lowered, which is what endings are made of.
func (p *parser) lower(i int, buf *[40]byte) string {
	w := p.bare(i)
	if !p.toks[i].upper {
		return w
	}
	if b, ok := lower(buf[:], w, false); ok {
		return string(b)
	}
	return w
}

func (p *parser) latin(i int) bool {
	var buf [40]byte
	return latinate(p.lower(i, &buf))
}

func (p *parser) plainlyLatin(i int) bool {
	var buf [40]byte
	return plainlyLatin(p.lower(i, &buf))
}

// next returns the token after i that is neither mark-up, nor a mark like "?",
// nor a word of another script.
func (p *parser) next(i int) int {
	for i++; i < len(p.toks); i++ {
		if c := p.toks[i].class; c != tag && c != mark && c != script {
			return i
		}
	}
	return len(p.toks)
}

// pastBracket returns the token after i, a closing bracket right behind i passed
// over: "β) griseola".
func (p *parser) pastBracket(i int) int {
	n := p.next(i)
	if n < len(p.toks) && p.toks[n].class == closeSign && p.toks[n].glued {
		return p.next(n)
	}
	return n
}

// isEpithet reports whether token i can be an epithet by its form: a word of
// small letters that means nothing else and has no full stop behind it.
func (p *parser) isEpithet(i int) bool {
	if i >= len(p.toks) {
		return false
	}
	t := &p.toks[i]
	if t.role == roleEpithet || t.role == roleInfraspecific {
		return true
	}
	if t.class != word || t.kind != plainWord || t.code || t.dot || t.greek || t.role != noRole {
		return false
	}
	if t.upper {
		var buf [40]byte
		w := p.lower(i, &buf)
		return p.caps && t.caps && latinate(w) && lookup(w) == plainWord
	}
	return !t.inner && t.letters > 1
}

// isTitle reports whether token i can be a genus or an infrageneric epithet by
// its form.
func (p *parser) isTitle(i, letters int) bool {
	if i >= len(p.toks) {
		return false
	}
	t := &p.toks[i]
	return t.class == word && t.kind == plainWord && t.upper && !t.dot && !t.code && !t.inner && !t.greek &&
		t.letters >= letters && (!t.caps || p.caps)
}

// epithetAhead reports whether an epithet stands at i, signs and doubts before
// it passed over.
func (p *parser) epithetAhead(i int) bool {
	for ; i < len(p.toks); i = p.next(i) {
		t := &p.toks[i]
		switch {
		case t.class == crossSign, t.class == plusSign, t.class == mark, t.class == quote, t.greek:
		case t.class == word && (t.kind == qualifier || t.kind == cross):
		default:
			return p.isEpithet(i)
		}
	}
	return false
}

// genusAhead reports whether what follows i shows that i is a genus: an
// epithet, or a rank with its epithet, or a subgenus in brackets with one.
func (p *parser) genusAhead(i int) bool {
	j := p.next(i)
	if p.epithetAhead(j) {
		return true
	}
	if j >= len(p.toks) {
		return false
	}
	t := &p.toks[j]
	switch {
	case t.class == word && (t.kind == rankGenus || t.kind == rankHigh):
		return p.isTitle(p.next(j), 3)
	case t.class == word && t.kind == rankInfra:
		return p.epithetAhead(p.next(j))
	case t.class == word && t.kind == open:
		return true
	case t.class == openSign && t.pair > 0:
		return p.isTitle(j+1, 3) && p.epithetAhead(t.pair+1)
	}
	return false
}

// clearName reports whether a further name begins at i by its form alone.
func (p *parser) clearName(i int, o opener) bool {
	if i >= len(p.toks) || o == noOpener {
		return false
	}
	t := &p.toks[i]
	if t.class != word || !t.upper || t.kind != plainWord || t.code || t.inner {
		return false
	}
	j := p.next(i)
	for j < len(p.toks) && (p.toks[j].class == crossSign || p.toks[j].class == word && (p.toks[j].kind == qualifier || p.toks[j].kind == cross)) {
		j = p.next(j)
	}
	follows := p.isEpithet(j) && (p.latin(j) || t.dot) ||
		j < len(p.toks) && p.toks[j].class == word && (p.toks[j].kind == rankGenus && p.isTitle(p.next(j), 3) ||
			o == strongOpener && p.toks[j].kind == open && p.toks[j].dot && !foreign(p.bare(i)) && !t.dot)
	if !follows {
		return o == strongOpener && p.clearUninomial(i)
	}
	if t.dot || t.letters == 1 {
		return t.letters <= 3 && p.genus != "" && firstRune(p.text[t.start:]) == firstRune(p.genus)
	}
	if o == weakOpener {
		return p.textOf(i) == p.genus
	}
	return p.isTitle(i, 3)
}

// clearUninomial reports whether a further name of one word stands at i: a
// family by its ending, a genus after an equals sign or before a sign of
// hybridity.
func (p *parser) clearUninomial(i int) bool {
	if !p.isTitle(i, 3) || foreign(p.textOf(i)) {
		return false
	}
	if p.family(i) {
		return true
	}
	if i > 0 && p.toks[i-1].class == equalSign {
		return true
	}
	n := p.next(i)
	return n+1 < len(p.toks) && p.toks[n].class == crossSign && p.isTitle(n+1, 3)
}

func firstRune(s string) rune {
	r, _ := utf8.DecodeRuneInString(s)
	return r
}

// signsOnly reports whether a bracket holds nothing but marks, signs and ranks.
func (p *parser) signsOnly(i int) bool {
	for j := i + 1; j < p.toks[i].pair; j++ {
		t := &p.toks[j]
		switch {
		case t.class == mark, t.class == crossSign, t.class == plusSign, t.class == tag:
		case t.class == word && t.kind.isRank() && t.upper && p.species && !p.caps && !p.isEpithet(p.next(p.toks[i].pair)):
			return false // (Ser.) is Seringe
		case t.class == word && (t.kind.isRank() || t.kind == cross || t.kind == qualifier || t.kind == open):
		default:
			return false
		}
	}
	return true
}

func (p *parser) crossIn(i int) bool {
	for j := i + 1; j < p.toks[i].pair; j++ {
		if p.toks[j].class == crossSign || p.toks[j].class == word && p.toks[j].kind == cross {
			return true
		}
	}
	return false
}

// isCross reports whether the letter x at i stands for a sign of hybridity; n
// is the token after it.
func (p *parser) isCross(i, n int) bool {
	if n >= len(p.toks) || p.toks[i].dot {
		return false
	}
	t := &p.toks[n]
	small := !p.toks[i].upper
	switch {
	case p.isEpithet(n):
		return true
	case t.class == openSign, t.class == quote:
		return small
	case t.class != word:
		return false
	case t.upper && t.dot:
		return p.genusAhead(n)
	case p.isTitle(n, 2):
		return small || p.st == atStart || p.genusAhead(n)
	case t.kind == qualifier, t.kind == open, t.kind.isRank():
		return small || p.st == afterGenus
	}
	return false
}

// cultivarEnd returns the last token of a cultivar epithet after "cv." at i.
func (p *parser) cultivarEnd(i int) int {
	j := i + 1
	for j < len(p.toks) && p.toks[j].class != crossSign && p.toks[j].class != openSign && p.toks[j].class != comma &&
		!(p.toks[j].class == word && p.toks[j].kind == cross) {
		j++
	}
	return j - 1
}

func (p *parser) supra(i int) bool { return supragenericEnding(p.title(i)) }

func (p *parser) family(i int) bool { return familyEnding(p.title(i)) }

// title returns a word in capitals with its first letter alone as a capital,
// any other word as it is.
func (p *parser) title(i int) string {
	w := p.bare(i)
	if !p.toks[i].caps || len(w) < 2 {
		return w
	}
	var buf [40]byte
	return w[:1] + p.lower(i, &buf)[1:]
}

// trinomialAt reports whether the small word at i, which follows an epithet
// without a rank, is one more epithet: it has a Latin ending, and no plain
// words follow it.
func (p *parser) trinomialAt(i int) bool {
	if p.found.running {
		return false
	}
	for n := 0; n < 4; n++ {
		if !p.isEpithet(i) {
			if i >= len(p.toks) {
				return true
			}
			t := &p.toks[i]
			return t.class != word || t.upper || t.kind != ordinary && t.kind != virus && (t.kind != plainWord || t.dot)
		}
		if !p.latin(i) && !strings.ContainsAny(p.textOf(i), "'’") || p.toks[i].letters < 3 {
			return false
		}
		i = p.next(i)
	}
	return false
}

// infraAfterAuthors reports whether the small word at i behind the authors of a species
// is an infraspecific epithet without its rank: it repeats the specific one, "Galanthus
// nivalis L. nivalis L.", or has authors of its own, of whom the first stand in
// brackets, "Silene italica (L.) Pers. nemoralis (Waldst. & Kit.) Nyman".
func (p *parser) infraAfterAuthors(i int) bool {
	f := &p.found
	if f.running || f.more || f.formula || f.infras > 0 || f.epithet.end == 0 || f.authors.end == 0 || f.authors.end > p.toks[i].start || p.toks[i].upper {
		return false
	}
	if same(p.bare(i), f.epithet.of(p.text)) {
		return true
	}
	n := i + 1
	if p.toks[i].letters < 4 || !p.latin(i) || !p.toks[i-1].upper && p.toks[i-1].kind != filius || n >= len(p.toks) || p.toks[n].class != openSign || p.toks[n].pair < n+2 || p.toks[n].pair+1 >= len(p.toks) {
		return false
	}
	first, moved := &p.toks[n+1], &p.toks[p.toks[n].pair+1]
	return first.class == word && first.upper && moved.class == word && moved.upper && p.toks[p.toks[n].pair].end < moved.start
}

// capitalEpithet reports whether the capital word at i, after a genus, is an
// epithet in the orthography of older works (Art. 60.2: now small): it has a
// Latin ending and its author follows at once, as no author follows an author;
// or it is of the kind of Vitis-Idaea.
func (p *parser) capitalEpithet(i int) bool {
	if p.found.running || !p.isTitle(i, 4) || !p.latin(i) {
		return false
	}
	for n, j := 0, i+1; n < 5 && j < len(p.toks); n, j = n+1, j+1 {
		if t := &p.toks[j]; t.class == word && (t.kind == group || t.kind == grex) {
			return false
		}
	}
	w := p.bare(i)
	n := i + 1
	if n < len(p.toks) && p.toks[n].class == word && p.toks[n].kind == rankInfra && !p.toks[n].upper && p.epithetAhead(n+1) {
		return true // Lithodora Prostrata subsp. lusitanica
	}
	if capitalEpithetEnding(w) && (n >= len(p.toks) && len(w) > 7 || p.isTitle(n, 3)) {
		return true
	}
	for h := 0; h < len(w); h++ {
		if w[h] == '-' {
			var buf [20]byte
			if b, ok := lower(buf[:], w[:h], false); ok && capitalEpithetHead(string(b)) {
				return true
			}
		}
	}
	if n >= len(p.toks) {
		return false
	}
	t := &p.toks[n]
	if t.class == openSign && t.pair > n+1 {
		return p.toks[n+1].class == word && p.toks[n+1].upper && t.pair+1 < len(p.toks) &&
			p.toks[t.pair+1].class == word && p.toks[t.pair+1].upper
	}
	if t.class != word || !t.upper || !t.dot || t.kind != plainWord {
		return false
	}
	// "Costa A. Lima": an initial with a surname behind it is one person.
	return t.letters > 1 || !p.isTitle(n+1, 2)
}

// foreign reports whether a word alone ends as hardly a genus does but as
// words of English and German do ("Moss", "Weed", "Gras").
func foreign(w string) bool {
	if n := len(w); n > 2 {
		switch w[n-1] {
		case 't', 'd', 'k', 'g', 'h', 'w', 'y', 'f', 'p', 'j', 'q', 'v', 'b':
			return true
		case 's':
			return w[n-2] == 's'
		}
	}
	return false
}
