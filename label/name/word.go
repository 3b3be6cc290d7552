package name

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
		if p.pend == plainWord && p.species && p.isEpithet(p.pastBracket(i)) {
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
		case "non", "nec", "not", "syn", "synon", "basion", "vs", "incl", "excl", "on", "sur", "sobre", "super", "near", "prope":
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
	case note, ordinary, blank:
		if p.person(i) {
			return plainWord
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
		if n < len(p.toks) && p.toks[n].class == closeSign && p.species && p.toks[n].glued && p.isEpithet(p.pastBracket(i)) {
			return rankInfra // b) griseola
		}
		// "a.crespo & barreno" are authors in small letters.
		if t.dot && p.species && p.isEpithet(n) && (p.pend == rankInfra || !p.toks[n].glued && p.latin(n) &&
			!(n+2 < len(p.toks) && p.toks[n+1].kind == and && !p.toks[n+2].upper)) {
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

// person reports whether a word that says something else of names is the author it
// spells where it stands: De Not. is De Notaris, Herb. is Herbert where no name of a
// herbarium follows, Moss is Moss right behind an epithet.
func (p *parser) person(i int) bool {
	t := &p.toks[i]
	if !t.upper || i == 0 || t.caps && !p.caps {
		return false
	}
	last := i+1 == len(p.toks) || p.toks[i+1].class == closeSign || p.toks[i+1].class == word && (p.toks[i+1].kind == and || p.toks[i+1].kind == link)
	switch p.bare(i) {
	case "Not", "NOT":
		b := p.bare(i - 1)
		return t.dot && (b == "De" || b == "de" || b == "DE")
	case "Herb":
		return t.dot && last && p.species
	case "Moss":
		return !t.dot && last && p.species
	}
	return false
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
	case p.st == inAuthors && p.infraAfterAuthors(i):
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

// capital takes a word with a capital.
func (p *parser) capital(i int, o opener) {
	switch {
	case p.st == atStart:
		p.first(i)
	case p.st.named() && p.genus != "" && p.family(i), p.st == inAuthors && p.family(i):
		p.begin() // Rosa canina L., Rosaceae
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
		ok = t.letters >= 4 && (ahead || len(p.toks) == 1) || p.family(i)
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
