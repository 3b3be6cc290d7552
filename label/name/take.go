package name

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
