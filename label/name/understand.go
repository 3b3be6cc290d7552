package name

import "strings"

// A Problem is something to be said of a name and a column beside it.
type Problem struct {
	Term    string // Darwin Core term of the column that disagrees
	Value   string // the column as written
	Message string // lower case, no full stop
	Suggest string // what the name says instead, "" if nothing
}

// A Name is what was understood of a text. All strings but Rank are parts of
// the text as written; of a formula or a list they are the first name's.
type Name struct {
	Blank bool // nothing written: the label leaves a line to write on
	// Indet: the text names no taxon at all ("indet.", "noch unbestimmt").
	Indet bool
	// Rank is that of the lowest name, in the words of dwc:taxonRank ("genus",
	// "species", "subspecies", "variety", "section", "family" …); "" if the
	// text does not say, as in a trinomial without a rank.
	Rank string
	// Uninomial is the family or other name above the genus.
	Uninomial     string
	Genus         string // may be abbreviated: "S."
	Infrageneric  string // the lowest of subgenus, section, series
	Epithet       string // specific epithet
	Infraspecific string // the lowest infraspecific epithet
	Authorship    string // of the lowest name; in an autonym of the species
	Cultivar      string // with its quotation marks or "cv."; a Group or grex
	Qualifier     string // the first cf., aff., ? …
	Open          string // the first sp., spp., agg., indet. …
	Hybrid        bool   // a sign of hybridity or of a graft-chimaera stands in the text
	Formula       bool   // the text is a formula of two names or more
	Autonym       bool   // the lowest epithet repeats the specific one
	// Problems says where the columns disagree with the text.
	Problems []Problem
}

// Parse says what was understood of a text, and where the columns disagree with
// it. It is total: every text gives a Name.
func Parse(text string, c Parts) Name {
	var p parser
	p.read(text, c, Options{})
	n := p.name()
	n.Problems = p.compare(&n, c)
	return n
}

// name returns what the parser found as strings.
func (p *parser) name() Name {
	f, t := &p.found, p.text
	n := Name{
		Blank:        len(p.toks) == 0,
		Indet:        f.indet || f.level == noLevel && len(p.toks) > 0,
		Rank:         f.rankTerm(p),
		Uninomial:    f.uninomial.of(t),
		Genus:        f.genus.of(t),
		Infrageneric: f.infrageneric.of(t),
		Epithet:      f.epithet.of(t),
		Authorship:   p.authorship(f.authors),
		Cultivar:     f.cultivar.of(t),
		Qualifier:    f.qualifier.of(t),
		Open:         f.open.of(t),
		Hybrid:       f.hybrid,
		Formula:      f.formula,
	}
	if f.infras > 0 {
		n.Infraspecific = f.infra[f.infras-1].of(t)
		if n.Autonym = same(n.Infraspecific, n.Epithet) && n.Epithet != ""; n.Autonym && n.Authorship == "" {
			n.Authorship = p.authorship(f.speciesAuth)
		}
	}
	return n
}

// authorship returns authors without what parts them from the rest, such as a bracket
// that begins a remark and closes behind them: "Focke (R. procerus auct.)".
func (p *parser) authorship(s span) string {
	text := s.of(p.text)
	if i := strings.LastIndexByte(text, '('); i > strings.LastIndexByte(text, ')') && strings.Contains(p.text[s.end:], ")") {
		text = text[:i]
	}
	return strings.TrimRight(text, " ,;:")
}

// rankTerm returns the rank of the lowest name in the words of dwc:taxonRank.
func (f *found) rankTerm(p *parser) string {
	var buf [20]byte
	w := ""
	if f.rank.end > 0 {
		r := f.rank.of(p.text)
		if b, ok := lower(buf[:], strings.TrimRight(r, "."), false); ok {
			w = string(b)
		}
	}
	notho := strings.HasPrefix(w, "notho")
	w = strings.TrimPrefix(w, "notho")
	term := ""
	switch f.level {
	case levelUninomial:
		if term = highRank(w); term == "" {
			term = rankOfEnding(f.uninomial.of(p.text))
		}
	case levelGenus:
		return "genus"
	case levelInfrageneric:
		term = genusRank(w)
	case levelSpecies:
		return "species"
	case levelInfra:
		term = infraRank(w)
	}
	if notho && term != "" {
		return "notho" + term
	}
	return term
}

func highRank(w string) string {
	switch w {
	case "subfam", "subfamilia", "subfamily":
		return "subfamily"
	case "fam", "familia", "family":
		return "family"
	case "trib", "tribus", "tribe", "tr":
		return "tribe"
	case "subtrib", "subtribus", "subtribe", "subtr":
		return "subtribe"
	case "ord", "ordo", "order":
		return "order"
	}
	return ""
}

// rankOfEnding is Art. 16.3, 17.1, 18.1 and 19.
func rankOfEnding(w string) string {
	for _, e := range [...]struct{ ending, rank string }{
		{"aceae", "family"}, {"oideae", "subfamily"}, {"eae", "tribe"}, {"ineae", "suborder"}, {"inae", "subtribe"},
		{"ales", "order"}, {"opsida", "class"}, {"phyceae", "class"}, {"mycetes", "class"}, {"phyta", "phylum"}, {"mycota", "phylum"},
	} {
		if strings.HasSuffix(w, e.ending) {
			if e.rank == "tribe" && familyEnding(w) {
				return "family"
			}
			return e.rank
		}
	}
	if familyEnding(w) {
		return "family"
	}
	return ""
}

func genusRank(w string) string {
	switch {
	case w == "":
		return "infragenericname"
	case strings.HasPrefix(w, "subg"), w == "sg", w == "sgen":
		return "subgenus"
	case strings.HasPrefix(w, "subsect"):
		return "subsection"
	case strings.HasPrefix(w, "sect"):
		return "section"
	case strings.HasPrefix(w, "subser"):
		return "subseries"
	case strings.HasPrefix(w, "ser"):
		return "series"
	}
	return "infragenericname"
}

func infraRank(w string) string {
	switch w {
	case "":
		return ""
	case "subsp", "ssp", "subspec", "subspecies", "sbsp", "ssbp", "subssp", "sspp", "subspp", "sspec", "sbspec", "sp", "ssp.", "nsubsp", "nssp":
		return "subspecies"
	case "var", "vars", "varietas", "variety", "variet", "v", "nvar":
		return "variety"
	case "subvar", "subv", "svar", "subvarietas", "subvariety":
		return "subvariety"
	case "f", "fo", "fa", "fm", "fma", "form", "forma", "formae", "frm", "nf", "nfo":
		return "form"
	case "subf", "subforma", "subfo", "subform", "subfm", "sf":
		return "subform"
	case "convar", "convarietas", "conv", "cvar":
		return "convariety"
	case "pv", "pathovar":
		return "pathovar"
	}
	if k := nearRank(w, true); k == rankInfra && oneSlip(w, "subsp") {
		return "subspecies"
	}
	return "infraspecificname"
}

// compare lists the columns that look like names and say something else than
// the text does. A name that is quite another is one problem: where a column
// disagrees, those of lower words and of authors are not looked at.
func (p *parser) compare(n *Name, c Parts) []Problem {
	var out []Problem
	say := func(term, value, message, suggest string) {
		out = append(out, Problem{Term: term, Value: value, Message: message, Suggest: suggest})
	}
	if n.Blank {
		return nil
	}
	if g := genusOf(c.Genus); g != "" && !p.hasGenus(n, g) {
		switch e := epithetOf(c.SpecificEpithet); {
		case n.Genus == "" && len(p.toks) == 1 && p.toks[0].class == word && !p.toks[0].upper && !p.toks[0].code && !p.toks[0].dot && onlyLetters(p.bare(0)):
			say("scientificName", p.text, "an epithet alone: write the genus before it", g+" "+p.text)
		case n.Genus == "":
			say("genus", c.Genus, "the scientific name names no genus; say which is right", "")
		case e != "" && n.Epithet != "" && !alike(e, n.Epithet):
			say("genus", c.Genus, "the columns say "+g+" "+e+", the scientific name "+n.Genus+" "+n.Epithet+"; say which is right", "")
		default:
			say("genus", c.Genus, "the scientific name begins with "+n.Genus+"; say which is right", "")
		}
		return out
	}
	if g := genusOf(c.InfragenericEpithet); g != "" && n.Infrageneric != "" && !same(g, n.Infrageneric) {
		say("infragenericEpithet", c.InfragenericEpithet, "the scientific name has "+n.Infrageneric+" there; say which is right", "")
	}
	if e := epithetOf(c.SpecificEpithet); e != "" && n.Genus != "" && !alike(e, n.Epithet) && !n.Formula && !p.inWords(e) {
		if n.Epithet == "" {
			say("specificEpithet", c.SpecificEpithet, "the scientific name has no species epithet; say which is right", "")
		} else {
			say("specificEpithet", c.SpecificEpithet, "the scientific name has "+n.Epithet+" there; say which is right", "")
		}
		return out
	}
	if e := infraspecificOf(c.InfraspecificEpithet, n.Genus); e != "" && n.Genus != "" && !n.Formula && !p.hasInfra(e) {
		if n.Infraspecific == "" {
			say("infraspecificEpithet", c.InfraspecificEpithet, "the scientific name has no infraspecific epithet; say which is right", "")
		} else {
			say("infraspecificEpithet", c.InfraspecificEpithet, "the scientific name has "+n.Infraspecific+" there; say which is right", "")
		}
		return out
	}
	if _, a := c.authors(); a != "" && n.Authorship != "" && !n.Formula && !sameAuthors(a, n.Authorship) {
		say("scientificNameAuthorship", c.Authorship, "the scientific name has the authors "+n.Authorship+"; say which is right", n.Authorship)
	}
	if g := genusOf(c.Family); familyEnding(g) && n.Genus == "" && familyEnding(n.Uninomial) && !same(g, n.Uninomial) {
		say("family", c.Family, "the scientific name is "+n.Uninomial+"; say which is right", n.Uninomial)
	}
	return out
}

// hasGenus reports whether the name has the genus g: in full, abbreviated, as
// the family that an undetermined record has in its column, or as one of a
// formula's parents.
func (p *parser) hasGenus(n *Name, g string) bool {
	if same(g, n.Genus) || same(g, n.Uninomial) {
		return true
	}
	if a := strings.TrimSuffix(n.Genus, "."); (a != n.Genus || len(a) == 1) && a != "" && strings.HasPrefix(g, a) {
		return true
	}
	if n.Formula {
		for i := range p.toks {
			if p.toks[i].italic && same(p.bare(i), g) {
				return true
			}
		}
	}
	return false
}

// infraspecificOf returns the epithet that a column of infraspecific epithets holds,
// alone, behind its rank or at the end of a whole name of the genus; "" if it holds
// anything else.
func infraspecificOf(s, genus string) string {
	if !strings.ContainsAny(s, " _") {
		return epithetOf(s)
	}
	words := strings.Fields(strings.ReplaceAll(s, "_", " "))
	if len(words) == 0 {
		return ""
	}
	initial := strings.TrimSuffix(words[0], ".")
	switch {
	case len(words) == 2:
		if r := infraRank(strings.ToLower(initial)); r != "" && r != "infraspecificname" {
			return epithetOf(words[1])
		}
	case len(words) > 2 && (same(initial, genus) || initial != "" && len(initial) <= 2 && strings.HasPrefix(genus, initial)):
		words[0] = genus
		return Parse(strings.Join(words, " "), Parts{}).Infraspecific
	}
	return epithetOf(s)
}

func (p *parser) hasInfra(e string) bool {
	for _, s := range p.found.infra[:p.found.infras] {
		if alike(e, s.of(p.text)) {
			return true
		}
	}
	return false
}

// inWords reports whether e is the text's epithets joined: bursa-pastoris in
// "Capsella bursa pastoris".
func (p *parser) inWords(e string) bool {
	f := &p.found
	return f.infras > 0 && f.rank.end == 0 && alike(e, p.text[f.epithet.start:f.infra[f.infras-1].end])
}

// alike is same for epithets that may be written in several words.
func alike(a, b string) bool {
	if same(a, b) {
		return true
	}
	r := strings.NewReplacer("-", "", " ", "", "‐", "", "‑", "", "–", "")
	return same(r.Replace(a), r.Replace(b)) && b != ""
}
