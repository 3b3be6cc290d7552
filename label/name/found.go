package name

// A level is a step of the ladder of ranks that a word of a name stands on.
type level uint8

const (
	noLevel level = iota
	levelUninomial
	levelGenus
	levelInfrageneric
	levelSpecies
	levelInfra
)

// A span is a stretch of the text in bytes; the zero span is empty.
type span struct{ start, end int }

func (s span) of(text string) string { return text[s.start:s.end] }

// found collects where the parts of the first name of a text stand.
type found struct {
	running bool // the name stands in running text
	hybrid  bool
	formula bool
	more    bool // a second name has begun
	shut    bool // no author may follow: a note has begun
	indet   bool

	level        level // of the lowest word taken
	uninomial    span
	genus        span
	infrageneric span
	epithet      span
	infra        [4]span // infraspecific epithets, outermost first
	infras       int
	rank         span // the rank word of the lowest name
	lowest       span // the lowest word itself
	sign         int  // start of a sign or qualifier right before the epithet; -1
	authors      span // of the lowest name
	speciesAuth  span // of the species, where a lower name follows
	genusAuth    span
	cultivar     span
	quoted       span // the quotation marks around authors, as tokens
	qualifier    span
	open         span
	note         int // where annotations begin after the lowest name; 0 if none
}

// take notes token i as a word of the first name.
func (f *found) take(p *parser, i int, l level) {
	p.toks[i].taken = l
	if f.more || f.formula {
		return
	}
	t := &p.toks[i]
	s := span{t.start, t.end - t.cut}
	switch l {
	case levelUninomial:
		f.uninomial = s
	case levelGenus:
		f.genus = s
	case levelInfrageneric:
		f.infrageneric = s
	case levelSpecies:
		f.genusAuth = f.authors
		f.epithet = s
	case levelInfra:
		if f.level <= levelSpecies {
			f.speciesAuth = f.authors
		}
		if f.infras < len(f.infra) {
			f.infra[f.infras] = s
			f.infras++
		}
	}
	f.rank = span{}
	if l == levelInfra || l == levelInfrageneric || l == levelUninomial {
		if r := p.rankWord; r >= 0 && r < i && i-r < 6 {
			f.rank = span{p.toks[r].start, p.toks[r].end}
		}
	}
	f.level, f.lowest, f.authors, f.shut, f.note = l, s, span{}, false, 0
}

// other notes a second epithet beside the lowest: authors after it are no
// longer known to be those of the first.
func (f *found) other() { f.shut = true }

// qualify notes the first doubt.
func (f *found) qualify(p *parser, i int) {
	if f.qualifier.end == 0 && !f.more {
		f.qualifier = span{p.toks[i].start, p.toks[i].end}
	}
}

// leave notes the first word of open nomenclature.
func (f *found) leave(p *parser, i int) {
	if f.open.end == 0 && !f.more {
		f.open = span{p.toks[i].start, p.toks[i].end}
	}
	if p.taxa == 0 {
		f.indet = true
	}
}

// cultivate notes a cultivar that stands on the tokens from i to j.
func (f *found) cultivate(p *parser, i, j int) {
	if f.cultivar.end == 0 && !f.more {
		f.cultivar = span{p.toks[i].start, p.toks[j].end}
	}
}

// grexAhead notes the Group or grex whose first word stands at i.
func (f *found) grexAhead(p *parser, i int) {
	for n, j := 0, i; n < 6 && j < len(p.toks) && p.toks[j].class == word; n, j = n+1, j+1 {
		if k := p.toks[j].kind; k == group || k == grex {
			f.cultivate(p, i, j)
			p.end()
			return
		}
	}
}

// author notes token i as one of the authors.
func (p *parser) author(i int) {
	f := &p.found
	if f.shut || f.more || f.formula || f.level == noLevel {
		return
	}
	t := &p.toks[i]
	if f.authors.end == 0 {
		f.authors.start = t.start
	}
	f.authors.end = t.end
}

// year adds a year or a page to authors that have begun.
func (p *parser) year(i int) {
	if p.found.authors.end > 0 {
		p.author(i)
	} else {
		p.end()
	}
}

// end ends the authors: what follows is a note, a rank, another name.
func (p *parser) end() {
	p.found.shut = true
}
