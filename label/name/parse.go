package name

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
	unfit, said := false, false
	for i := range p.toks {
		t := &p.toks[i]
		if t.class != word {
			continue
		}
		letters += t.letters
		small = small || !t.caps && t.letters > 1 && t.kind != cross
		said = said || t.role != noRole
		unfit = unfit || t.kind == virus && i > 0
		if i == 0 && !said && p.textOf(i) == "Candidatus" {
			t.italic = true
			return true
		}
	}
	p.caps = !small && letters > 3
	return unfit && !said
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
	case tag, script:
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
		switch {
		case (p.st == inAuthors || p.st == afterInfra) && p.aside(i):
			return t.pair + 1
		case p.signsOnly(i), p.isEpithet(i+1) && (p.crossed || p.crossIn(i)):
			p.keep = t.pair
			return i + 1
		case p.aside(i):
			return t.pair + 1
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
	for k := j + 1; ranked && k+1 < shut; k++ { // (subg. Pentanthera sect. Rhodora)
		if p.toks[k].class == word && p.toks[k].kind == rankGenus && p.isTitle(k+1, 3) {
			p.rankWord = k
			p.takeInfrageneric(k + 1)
		}
	}
	return true
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
	case p.ranksOnly(i+1, shut):
		return i + 1 // “prol.”: a word in place of a rank
	case p.pend != plainWord && (p.isEpithet(i+1) || p.pend != rankInfra && p.isTitle(i+1, 3)):
		return i + 1
	case o != noOpener && p.clearName(i+1, o):
		p.open = o
		return i + 1
	}
	if p.authorsIn(i, shut) {
		for j := i + 1; j < shut; j++ {
			p.author(j)
		}
		p.found.quoted = span{i, shut}
	} else {
		p.found.cultivate(p, i, shut)
	}
	p.end()
	p.st, p.pend = inAuthors, plainWord
	return shut + 1
}

// authorsIn reports whether authors stand between the quotation marks i and shut, as
// exports leave them: with brackets or their year, "(Børgesen) Garbary, 1979".
func (p *parser) authorsIn(i, shut int) bool {
	if !p.species || p.textOf(i) != "\"" || shut-i < 4 {
		return false
	}
	if t := &p.toks[i+1]; t.class == openSign && t.pair > i+2 && p.toks[i+2].upper {
		return true
	}
	if p.toks[shut-2].class != comma {
		return false
	}
	year := p.textOf(shut - 1)
	return len(year) == 4 && (year[:2] == "17" || year[:2] == "18" || year[:2] == "19" || year[:2] == "20") && p.toks[shut-1].class == number
}

// aside takes a bracket that tells another name of the plant, or its parents, by
// their epithets alone, "(lycoctonum)", "(punctatus var. cavernosus)": no author stands in it, and it is no
// part of the name. It reports whether i is one.
func (p *parser) aside(i int) bool {
	shut, first := p.toks[i].pair, i+1
	if !p.species || shut <= first || p.toks[first].class != word {
		return false
	}
	if p.found.infras > 0 && p.toks[first].kind == rankInfra && p.isEpithet(first+1) {
		p.italicise(first+1, false) // var. polymorpha (var. ruderalis)
		p.end()
		p.st, p.pend, p.bracket = inAuthors, plainWord, false
		return true
	}
	if p.toks[first].kind != plainWord {
		return false
	}
	latin, ranked := true, false
	for j := first; j < shut; j++ {
		switch t := &p.toks[j]; {
		case t.class == comma, t.class == word && t.kind == rankInfra && j > first:
			ranked = ranked || t.class == word && p.isEpithet(j+1)
		case (t.class == crossSign || t.class == word && t.kind == cross) && j > first && p.isEpithet(j+1):
			ranked, p.found.hybrid = true, true
		case t.class == word && t.kind == plainWord && !t.upper && t.role == noRole && !t.code:
			latin = latin && lonely.MatchString(p.textOf(j)) && !alive[p.textOf(j)]
		default:
			return false
		}
	}
	if !ranked && !latin && p.found.authors.end == 0 {
		return false // authors in small letters
	}
	for j := first; j < shut; j++ {
		if (latin || ranked) && p.isEpithet(j) {
			p.italicise(j, false)
		}
	}
	if p.found.authors.end > 0 {
		p.end()
	}
	p.st, p.pend, p.bracket = inAuthors, plainWord, false
	return true
}

// ranksOnly reports whether nothing but words for ranks stands from i to shut,
// in brackets or not.
func (p *parser) ranksOnly(i, shut int) bool {
	found := false
	for ; i < shut; i++ {
		switch t := &p.toks[i]; {
		case t.class == openSign, t.class == closeSign:
		case t.class == word && t.role == noRole && (t.kind.isRank() || t.greek):
			found = true
		default:
			return false
		}
	}
	return found
}
