// Package name sets scientific names as labels print them: genus and epithets
// in italics; authors, rank words, signs, brackets, cultivars and open
// nomenclature upright. The text is never changed: joined, the runs are what
// the record says, byte for byte.
//
// What is followed: the International Code of Nomenclature for algae, fungi,
// and plants (Shenzhen Code 2018) for what a name is made of, the Cultivated
// Plant Code (ICNCP) for cultivars, Groups, grexes and graft-chimaeras, and the
// trade's open nomenclature (cf., aff., sp.). Where the form of a word does not
// say that it is part of a name, it stays upright.
package name

import "cornerslip/label"

// Parts are the record's own columns. They are looked for in the text first;
// an empty one is unknown, and one that does not look like a name ("spec.",
// "unbestimmt", "cf. flacca / nigra") is passed over.
type Parts struct {
	Genus                string // dwc:genus
	InfragenericEpithet  string // dwc:infragenericEpithet
	SpecificEpithet      string // dwc:specificEpithet
	InfraspecificEpithet string // dwc:infraspecificEpithet
	Authorship           string // dwc:scientificNameAuthorship
	Family               string // dwc:family
	Qualifier            string // dwc:identificationQualifier
	Rank                 string // dwc:taxonRank; only Compose needs it
	CultivarEpithet      string // dwc:cultivarEpithet; only Compose needs it
	// Completes is set where the text is a species' name, and InfraspecificEpithet completes it.
	Completes bool
}

// Options says how names look. The zero value is the Code's own practice.
type Options struct {
	// UprightFamilies sets suprageneric names (families, orders, but also
	// subfamilies and tribes) upright; zero sets them in italics.
	UprightFamilies bool
	// TaxonField is for Mentions: the text is a field made of taxa, such as
	// dwc:associatedTaxa or a host, so that a capital word with a Latin epithet
	// after it is a name by its form alone.
	TaxonField bool
}

// Runs splits a name, as written, into styled runs. Joining the runs' text
// gives the text back unchanged, always. Every run is Exact; Keep and Glue tie
// what must not be parted at the end of a line: a sign and its word, an
// abbreviated genus and its epithet, a rank or qualifier and its epithet, an
// author's initials and surname, "L. f.", "ex Nutt.", a word with a hyphen.
func Runs(text string, c Parts, o Options) []label.Run {
	var p parser
	p.read(text, c, o)
	return p.runs()
}

// Markup returns the text with <i> and </i> around its italic parts and
// nothing else changed or escaped.
func Markup(text string, o Options) string {
	var p parser
	p.read(text, Parts{}, o)
	out := make([]byte, 0, len(text)+32)
	at := 0
	for i := 0; i < len(p.toks); {
		if !p.toks[i].italic {
			i++
			continue
		}
		s, next := p.italic(i)
		out = append(out, text[at:s.start]...)
		out = append(out, "<i>"...)
		out = append(out, s.of(text)...)
		out = append(out, "</i>"...)
		at, i = s.end, next
	}
	return string(append(out, text[at:]...))
}

// read lexes and parses text with the help of the columns.
func (p *parser) read(text string, c Parts, o Options) {
	p.text, p.opt = text, o
	p.toks = lex(text)
	p.columns(c)
	p.parse()
}

// italic returns the italic stretch that begins with token i, white space
// between italic words included, and the token after it.
func (p *parser) italic(i int) (span, int) {
	s := span{p.toks[i].start, 0}
	for {
		t := &p.toks[i]
		s.end = t.end - t.cut
		i++
		if t.cut > 0 || i >= len(p.toks) || !p.toks[i].italic {
			return s, i
		}
	}
}
