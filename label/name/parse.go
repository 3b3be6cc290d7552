package name

import "unicode/utf8"

// A state says what the parser has behind it.
type state uint8

const (
	atStart           state = iota // a name may begin with any capital word
	atRestart                      // a further name may begin, if its form is clear
	afterGenus                     // a genus or other uninomial
	afterInfrageneric              // a subgenus, section or series
	afterEpithet                   // a specific epithet
	afterInfra                     // an infraspecific epithet
	inAuthors                      // authors and what follows them
	inOpen                         // sp., cv. and what follows them
	inTail                         // not a name
)

// named reports whether the last word was part of a name, so that the next may
// be its epithet.
func (s state) named() bool { return afterGenus <= s && s <= afterInfra }

// An opener says whether another name may begin among the authors.
type opener uint8

const (
	noOpener     opener = iota
	weakOpener          // after a comma or "and": if it has the same genus
	strongOpener        // after =, non, syn., a bracket: if its form is clear
)

// A parser walks once over the tokens of a name and decides which are italic.
// It looks ahead a few tokens, never back, and always ends.
type parser struct {
	text string
	toks []token
	opt  Options

	st       state
	pend     kind // the rank whose epithet is awaited, plainWord if none
	rankWord int  // its token
	forma    bool // it is an f., which is filius elsewhere
	crossed  bool // a sign of hybridity stands before the next epithet
	doubted  bool // cf. or aff. stands before the next epithet
	another  bool // "/" or "vel" stands before the next epithet
	bracket  bool // only authors in brackets stand since the genus
	open     opener
	keep     int  // closing bracket that changes nothing
	species  bool // the name has a specific epithet
	caps     bool // the whole text is in capitals
	taxa     int  // names begun
	genus    string
	found    found
}

// parse runs the parser over tokens that lex made of text.
func (p *parser) parse() {
	p.keep = -1
	if p.unfit() {
		return
	}
	for i := 0; i < len(p.toks); {
		i = p.step(i)
	}
}

// unfit recognises texts that are names of another kind: vernacular names of
// viruses (upright by the ICTV's own practice), and Candidatus of the
// prokaryotes, the one word of such a name in italics (ICNP, Appendix 11).
func (p *parser) unfit() bool {
	small, letters := false, 0
	unfit := false
	for i := range p.toks {
		t := &p.toks[i]
		if t.class != word {
			continue
		}
		letters += t.letters
		small = small || !t.caps && t.letters > 1 && t.kind != cross
		if t.role != noRole {
			unfit = false
			break
		}
		if t.kind == virus && i > 0 {
			unfit = true
		}
		if i == 0 && p.textOf(i) == "Candidatus" {
			t.italic = true
			return true
		}
	}
	p.caps = !small && letters > 4
	return unfit
}

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

// next returns the token after i that is neither mark-up nor a mark like "?".
func (p *parser) next(i int) int {
	for i++; i < len(p.toks); i++ {
		if c := p.toks[i].class; c != tag && c != mark {
			return i
		}
	}
	return len(p.toks)
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
		return p.caps && t.caps && p.latin(i)
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
	for j < len(p.toks) && (p.toks[j].class == crossSign || p.toks[j].kind == qualifier && p.toks[j].class == word) {
		j = p.next(j)
	}
	follows := p.isEpithet(j) && (p.latin(j) || t.dot) ||
		j < len(p.toks) && p.toks[j].class == word && p.toks[j].kind == rankGenus && p.isTitle(p.next(j), 3)
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
	if familyEnding(p.bare(i)) {
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

// step decides about token i and returns the next one to decide about.
func (p *parser) step(i int) int {
	t := &p.toks[i]
	o := p.open
	p.open = noOpener
	if t.role != noRole {
		p.column(i)
		return i + 1
	}
	switch t.class {
	case word:
		return p.word(i, o)
	case crossSign:
		p.sign(i)
	case plusSign:
		if n := p.next(i); p.st != inAuthors || p.clearName(n, strongOpener) {
			p.sign(i)
		}
	case mark:
		p.mark(i)
		p.open = o
	case tag:
		p.open = o
	case equalSign:
		p.end()
		if p.st != inTail {
			p.st = atRestart
		}
	case slash:
		p.slash(i)
	case comma:
		if p.st.named() || p.st == inOpen {
			p.st = inAuthors
		}
		p.pend, p.doubted, p.crossed, p.open = plainWord, false, false, weakOpener
	case openSign:
		return p.bracketAt(i)
	case closeSign:
		if i != p.keep {
			if p.st == inAuthors {
				p.author(i)
			}
			return p.closed(i)
		}
	case quote:
		return p.quoted(i, o)
	case number:
		p.pend = plainWord
		switch {
		case p.st == atStart:
			p.st = atRestart
		case p.st.named():
			p.st = inAuthors
		}
		p.year(i)
	}
	return i + 1
}

// column takes a token that the record's columns say is part of the name.
func (p *parser) column(i int) {
	switch p.toks[i].role {
	case roleGenus:
		if p.taxa == 0 {
			p.taxa = 1
		}
		p.takeGenus(i)
	case roleInfrageneric:
		p.takeInfrageneric(i)
	case roleEpithet:
		p.takeEpithet(i)
	case roleInfraspecific:
		p.takeInfra(i)
	case roleAuthor:
		p.author(i)
		p.st, p.pend = inAuthors, plainWord
	}
}

// sign takes a sign of hybridity or of a graft-chimaera, × or +. A small word
// after it is an epithet; a capital one begins another name.
func (p *parser) sign(i int) {
	if p.st == inTail {
		return
	}
	n := i + 1
	for n < len(p.toks) {
		t := &p.toks[n]
		if t.class == mark || t.class == openSign || t.class == closeSign || t.class == quote || t.class == word && t.kind == qualifier {
			n++
			continue
		}
		break
	}
	p.found.hybrid = p.found.hybrid || n < len(p.toks) || p.taxa == 0
	if n >= len(p.toks) {
		return
	}
	t := &p.toks[n]
	switch {
	case t.class != word:
	case p.isEpithet(n):
		p.crossed = true
		if p.species && p.pend == plainWord {
			p.formula()
		}
	case t.upper && t.kind == plainWord && t.role == noRole:
		if p.taxa > 0 {
			p.formula()
			p.begin()
		}
	case t.kind.isRank() && p.taxa > 0 && p.pend == plainWord:
		p.formula()
	}
}

// formula notes that another name follows the first one.
func (p *parser) formula() {
	p.end()
	p.found.formula = true
}

// begin makes the parser ready for a further name.
func (p *parser) begin() {
	p.end()
	p.found.more = true
	p.st, p.pend, p.species = atStart, plainWord, false
	p.crossed, p.doubted, p.another = false, false, false
}

// mark takes a sign that is no letter.
func (p *parser) mark(i int) {
	switch p.textOf(i) {
	case "?":
		p.found.qualify(p, i)
	case "§":
		p.pend, p.rankWord = rankGenus, i
	case "*", "**":
		if p.species && p.isEpithet(p.next(i)) {
			p.pend, p.rankWord = rankInfra, i
		}
	}
}

// slash takes the stroke between alternatives: "neglectum / armeniacum".
func (p *parser) slash(i int) {
	n := p.next(i)
	switch {
	case p.st.named() && p.isEpithet(n) && (p.species || p.st == afterInfrageneric):
		p.another = true
	case p.st == afterGenus && p.isTitle(n, 3) && p.latin(n):
		p.begin()
	default:
		if p.st.named() {
			p.st = inAuthors
		}
		p.pend, p.open = plainWord, strongOpener
	}
}

// bracketAt takes an opening bracket.
func (p *parser) bracketAt(i int) int {
	t := &p.toks[i]
	if p.st == atStart || p.st == inTail {
		p.open = strongOpener
		return i + 1
	}
	if t.pair > 0 {
		if p.st == afterGenus && p.infragenericAt(i) {
			return t.pair + 1
		}
		if p.signsOnly(i) || p.isEpithet(i+1) && (p.crossed || p.crossIn(i)) {
			p.keep = t.pair
			return i + 1
		}
	}
	p.bracket = p.st == afterGenus && !p.species
	if p.st != atRestart {
		p.st = inAuthors
	}
	p.pend, p.open = plainWord, strongOpener
	p.author(i)
	return i + 1
}

// infragenericAt takes "(Cycloglottis)" or "(sect. Ischnanthus)" after a genus:
// with a rank always, without one only where an epithet or "sp." follows, since
// a genus may have its author in brackets (Rec. 21A; Art. 49).
func (p *parser) infragenericAt(i int) bool {
	j, shut := i+1, p.toks[i].pair
	ranked := j < shut && p.toks[j].class == word && p.toks[j].kind == rankGenus
	if ranked {
		j++
	}
	if j >= shut || !(p.isTitle(j, 3) || p.toks[j].role == roleInfrageneric) {
		return false
	}
	if !ranked && p.toks[j].role == noRole {
		if j+1 != shut {
			return false
		}
		n := p.next(shut)
		sp := n < len(p.toks) && p.toks[n].class == word && p.toks[n].kind == open
		if !sp && !p.epithetAhead(n) {
			return false
		}
	}
	if ranked {
		p.rankWord = i + 1
	} else {
		p.rankWord = -1
	}
	p.takeInfrageneric(j)
	return true
}

// signsOnly reports whether a bracket holds nothing but marks, signs and ranks.
func (p *parser) signsOnly(i int) bool {
	for j := i + 1; j < p.toks[i].pair; j++ {
		t := &p.toks[j]
		switch {
		case t.class == mark, t.class == crossSign, t.class == plusSign, t.class == tag:
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

// closed takes a closing bracket. "Hydnellum (Quél.) zonatum": where only
// authors in brackets stand between genus and a small Latin word, that is the
// epithet.
func (p *parser) closed(i int) int {
	n := p.next(i)
	if p.bracket && p.st == inAuthors && p.isEpithet(n) && p.latin(n) && n == i+1 {
		p.bracket = false
		p.takeEpithet(n)
		return n + 1
	}
	p.bracket = false
	return i + 1
}

// quoted takes an opening quotation mark that has its partner: a name in
// quotation marks (a designation, Art. 26 Ex. 2), or else a cultivar.
func (p *parser) quoted(i int, o opener) int {
	shut := p.toks[i].pair
	if shut <= i {
		p.open = o
		return i + 1
	}
	switch {
	case p.st == atStart || p.st == atRestart || p.st == inTail:
		return i + 1
	case p.pend != plainWord && (p.isEpithet(i+1) || p.pend != rankInfra && p.isTitle(i+1, 3)):
		return i + 1
	case o != noOpener && p.clearName(i+1, o):
		p.open = o
		return i + 1
	}
	p.found.cultivate(p, i, shut)
	p.end()
	p.st, p.pend = inAuthors, plainWord
	return shut + 1
}

// word takes a word.
func (p *parser) word(i int, o opener) int {
	t := &p.toks[i]
	if p.st == inTail {
		return i + 1
	}
	k := p.kindAt(i)
	if k == rankInfra {
		p.forma = t.kind == filius
	}
	t.kind = k
	if t.greek {
		if p.pend == plainWord && p.species && p.isEpithet(p.next(i)) {
			p.pend, p.rankWord = rankInfra, i
		}
		if p.pend == plainWord && p.st.named() {
			p.st = inAuthors
		}
		return i + 1
	}
	if p.pend != plainWord && p.pending(i, k) {
		return i + 1
	}
	switch k {
	case rankHigh, rankGenus, rankInfra:
		p.end()
		p.pend, p.rankWord, p.crossed = k, i, false
	case qualifier:
		p.found.qualify(p, i)
		p.end()
		p.doubted, p.open = true, strongOpener
	case cross:
		p.sign(i)
	case open:
		p.found.leave(p, i)
		p.end()
		p.st, p.doubted, p.crossed = inOpen, false, false
	case cultivar:
		p.found.cultivate(p, i, p.cultivarEnd(i))
		p.end()
		p.st = inOpen
	case group, grex:
		p.end()
		p.st = inOpen
	case and, either:
		p.join(i)
	case link, filius, rankLetter, hort:
		p.authors()
		p.author(i)
	case note, ordinary:
		p.end()
		p.authors()
		switch p.bare(i) {
		case "non", "nec", "not", "syn", "synon", "basion", "vs", "on", "sur", "sobre", "super":
			p.open = strongOpener
		}
	case blank, virus:
		p.end()
		p.authors()
		if p.taxa == 0 {
			p.found.indet = true
		}
	default:
		p.plain(i, o)
	}
	return i + 1
}

// authors leaves the name for its authors; a text that has not named anything
// yet is no name.
func (p *parser) authors() {
	p.pend, p.doubted, p.crossed, p.another = plainWord, false, false, false
	switch p.st {
	case atStart:
		p.st = inTail
	case atRestart, inOpen:
	default:
		p.st = inAuthors
	}
}

// kindAt returns what the word at i means where it stands.
func (p *parser) kindAt(i int) kind {
	t := &p.toks[i]
	n := p.next(i)
	switch t.kind {
	case cross:
		if !p.isCross(i, n) {
			return link
		}
	case filius:
		if !p.species && p.st != afterGenus {
			return filius
		}
		if p.isEpithet(n) {
			return rankInfra
		}
		if n < len(p.toks) && p.toks[n].kind == open && p.isEpithet(p.next(n)) {
			return rankInfra // f. sp.
		}
	case rankLetter:
		if t.dot && p.species && p.isEpithet(n) {
			return rankInfra
		}
	case grex:
		if p.species && !t.upper && p.isEpithet(n) {
			return rankInfra // Hieracium murorum grex oblongum
		}
	case rankHigh, rankGenus, rankInfra:
		if !p.species && t.kind == rankInfra && p.textOf(i) == "unranked" {
			return rankGenus
		}
		if t.upper && !p.epithetAhead(n) && !(t.kind != rankInfra && p.isTitle(n, 3) && p.latin(n)) && !p.caps {
			return plainWord // Ser. is Seringe, Var. is nobody
		}
	case plainWord:
		if !t.upper && !t.code && t.role == noRole && (t.dot || p.st == afterEpithet && !p.latin(i)) && (p.species || p.taxa > 0) {
			if k := nearRank(p.bare(i), t.dot); k == rankInfra && p.epithetAhead(n) || k == rankGenus && p.isTitle(n, 3) {
				return k
			}
		}
	}
	return t.kind
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

// join takes "et", "&", "vel": between authors, between epithets, or between
// whole names.
func (p *parser) join(i int) {
	if n := p.next(i); p.st.named() && p.species && p.isEpithet(n) && p.latin(n) {
		p.another = true
		return
	}
	if p.st == atStart {
		p.authors()
		return
	}
	p.authors()
	p.author(i)
	p.open = weakOpener
	if p.toks[i].kind == either {
		p.open = strongOpener
	}
}

// pending takes the word at i as the epithet of the rank before it, or as one
// of the words that may stand between them. It reports whether it did; if not,
// no epithet follows that rank.
func (p *parser) pending(i int, k kind) bool {
	t := &p.toks[i]
	last := i == len(p.toks)-1
	switch {
	case k.isRank():
		p.pend, p.rankWord = k, i
		return true
	case k == qualifier:
		p.found.qualify(p, i)
		return true
	case k == cross:
		p.sign(i)
		return true
	case k == open && p.forma && p.isEpithet(p.next(i)):
		return true // f. sp.
	case k == note && p.isEpithet(p.next(i)) && (p.bare(i) == "n" || p.bare(i) == "nov"):
		return true // var. nov. alba
	case p.pend == rankInfra:
		if p.isEpithet(i) ||
			t.dot && !t.upper && k == plainWord && !t.inner && p.plainlyLatin(i) && last ||
			t.upper && p.isTitle(i, 4) && p.latin(i) && !p.forma {
			p.takeInfra(i)
			return true
		}
	case p.isTitle(i, 3), p.isEpithet(i) && p.latin(i), t.upper && t.dot && last && k == plainWord && p.plainlyLatin(i):
		if p.genus == "" && (p.pend == rankHigh || p.supra(i)) {
			p.takeUninomial(i)
		} else {
			p.takeInfrageneric(i)
		}
		return true
	}
	p.pend = plainWord
	if p.st.named() {
		p.st = inOpen
	}
	return false
}

func (p *parser) supra(i int) bool { return supragenericEnding(p.bare(i)) }

// plain takes a word that has no meaning of its own.
func (p *parser) plain(i int, o opener) {
	t := &p.toks[i]
	if t.upper && !(p.caps && p.st == afterGenus && p.isEpithet(i)) {
		p.capital(i, o)
		return
	}
	if p.isEpithet(i) && !p.species && (p.st == afterGenus || p.st == afterInfrageneric || p.doubted && p.taxa > 0) {
		p.takeEpithet(i)
		return
	}
	if t.dot && !t.inner && !t.code && p.plainlyLatin(i) &&
		(!p.species && (p.st == afterGenus || p.st == afterInfrageneric) || p.st == afterEpithet && i == len(p.toks)-1) {
		if p.species {
			p.takeInfra(i)
		} else {
			p.takeEpithet(i)
		}
		return
	}
	switch {
	case !p.isEpithet(i):
		if p.st == atStart {
			p.authors()
			return
		}
		p.authors()
		p.author(i)
	case p.st == atStart && !p.crossed:
		p.st = inTail
	case p.crossed || p.doubted && p.taxa > 0 || p.another:
		if p.crossed || !p.species {
			p.takeEpithet(i)
		} else {
			p.takeOther(i)
		}
	case p.st == afterEpithet && !t.upper && p.trinomialAt(i), p.st == afterInfra && p.rankWord < 0 && !t.upper && p.trinomialAt(i):
		p.rankWord = -1
		p.takeInfra(i)
	case p.st == inAuthors:
		p.author(i)
	case p.st == inOpen:
	default:
		p.end()
		p.authors()
	}
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
		if !p.latin(i) || p.toks[i].letters < 3 {
			return false
		}
		i = p.next(i)
	}
	return false
}

// capital takes a word with a capital.
func (p *parser) capital(i int, o opener) {
	switch {
	case p.st == atStart:
		p.first(i)
	case p.st == atRestart, o != noOpener && (p.st == inAuthors || p.st == inOpen || p.doubted):
		if p.st == atRestart || p.genus == "" {
			o = strongOpener
		}
		if p.clearName(i, o) {
			p.begin()
			p.first(i)
			return
		}
		p.authors()
		if p.st == atRestart {
			p.st = inAuthors
		}
		p.author(i)
	case p.genus == "" && p.st == afterGenus && p.clearName(i, strongOpener):
		p.begin() // Cistaceae Cistus ladanifer
		p.first(i)
	case p.st == afterGenus && p.capitalEpithet(i):
		p.takeEpithet(i)
	default:
		if p.st == afterGenus {
			p.found.grexAhead(p, i)
		}
		p.authors()
		p.author(i)
	}
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

// first takes the capital word that a name begins with.
func (p *parser) first(i int) {
	t := &p.toks[i]
	n := p.next(i)
	ahead := p.genusAhead(i)
	ok := false
	switch {
	case t.code || t.inner:
	case t.letters == 1 || t.dot && t.letters <= 4:
		ok = ahead && (t.dot || p.isEpithet(n) && p.latin(n))
	case t.dot:
		ok = p.plainlyLatin(i) && (n >= len(p.toks) || ahead)
	case t.caps && !p.caps:
		ok = t.letters >= 4 && (ahead || len(p.toks) == 1)
	default:
		ok = ahead || n < len(p.toks) && p.toks[n].class == word && p.toks[n].upper && p.toks[n].kind == plainWord ||
			n < len(p.toks) && (p.toks[n].class == openSign || p.toks[n].class == quote) || !foreign(p.textOf(i))
		if n == len(p.toks)-1 && p.toks[n].kind == ordinary && titleKind(p.bare(n)) == ordinary {
			ok = false // Green alga
		}
		if n < len(p.toks) && p.toks[n].kind == open && p.toks[n].class == word && foreign(p.textOf(i)) {
			ok = false
		}
	}
	if p.taxa == 0 {
		p.taxa = 1
	} else {
		p.taxa++
	}
	if !ok {
		p.st = inTail
		if p.taxa > 1 {
			p.st = inAuthors
		}
		return
	}
	p.takeGenus(i)
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

// italicise sets token i in italics. A full stop behind it stays upright,
// unless it abbreviates a genus; so does "-Gruppe" behind an epithet.
func (p *parser) italicise(i int, abbreviated bool) {
	t := &p.toks[i]
	t.italic = true
	if t.dot && !abbreviated {
		t.cut = 1
	}
	if t.letters > 9 {
		w := p.textOf(i)
		for _, e := range [...]string{"-Gruppe", "-gruppe", "-Group", "-group", "-Komplex", "-Complex", "-complex", "-Aggregat", "-agg."} {
			if len(w) > len(e)+2 && w[len(w)-len(e):] == e {
				t.cut = len(e)
			}
		}
	}
}

func (p *parser) takeGenus(i int) {
	if p.supra(i) && (!p.isEpithet(p.next(i)) || p.toks[i].role == roleGenus && !p.species) && !p.toks[i].dot {
		p.takeUninomial(i)
		return
	}
	t := &p.toks[i]
	p.italicise(i, t.dot && t.letters <= 4)
	if p.genus == "" {
		p.genus = p.textOf(i)
	}
	p.found.take(p, i, levelGenus)
	p.st, p.pend, p.species = afterGenus, plainWord, false
	p.clear()
}

// takeUninomial takes a name above the genus.
func (p *parser) takeUninomial(i int) {
	if !p.opt.UprightFamilies || !p.supra(i) {
		p.italicise(i, false)
	}
	if p.taxa == 0 {
		p.taxa = 1
	}
	p.found.take(p, i, levelUninomial)
	p.st, p.pend = afterGenus, plainWord
	p.clear()
}

func (p *parser) takeInfrageneric(i int) {
	p.italicise(i, false)
	if p.taxa == 0 {
		p.taxa = 1
	}
	p.found.take(p, i, levelInfrageneric)
	p.st, p.pend = afterInfrageneric, plainWord
	p.clear()
}

func (p *parser) takeEpithet(i int) {
	p.italicise(i, false)
	p.found.take(p, i, levelSpecies)
	p.st, p.pend, p.species = afterEpithet, plainWord, true
	p.rankWord = -1
	p.clear()
}

func (p *parser) takeInfra(i int) {
	p.italicise(i, false)
	p.found.take(p, i, levelInfra)
	p.st, p.pend = afterInfra, plainWord
	p.clear()
}

// takeOther takes a further epithet beside the one that was understood.
func (p *parser) takeOther(i int) {
	p.italicise(i, false)
	if p.st != afterInfra {
		p.st = afterEpithet
	}
	p.found.other()
	p.clear()
}

func (p *parser) clear() {
	p.crossed, p.doubted, p.another, p.bracket = false, false, false, false
}
