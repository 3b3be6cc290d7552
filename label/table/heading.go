package table

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// prefixes are the prefixes of terms, as in "dwc:family".
var prefixes = []string{"dwc", "dwciri", "dcterms", "dcterm", "dct", "dc", "gbif", "tdwg", "cornerslip"}

// classes are the classes of Darwin Core, as in "Occurrence/recordedBy".
var classes = []string{"Occurrence", "Event", "Location", "Taxon", "Identification", "Organism", "MaterialEntity", "MaterialSample", "Record", "Record-level", "GeologicalContext"}

// barePrefixed cuts a term's name out of an address or a prefixed name:
// "http://rs.tdwg.org/dwc/terms/family" and "dwc:family" are "family".
func barePrefixed(s string) string {
	if class, term, ok := strings.Cut(s, "/"); ok && slices.Contains(classes, strings.TrimSpace(class)) {
		return strings.TrimSpace(term)
	}
	if _, path, ok := strings.Cut(s, "://"); ok {
		path = strings.TrimRight(path, "/#")
		return path[strings.LastIndexAny(path, "/#:")+1:]
	}
	i := strings.IndexAny(s, ":_.- ")
	if i > 0 && slices.Contains(prefixes, strings.ToLower(s[:i])) {
		return s[i+1:]
	}
	return s
}

// A reading is what a heading was found to be before the columns are compared.
type reading struct {
	*meaning            // nil if it is not known
	unit       string   // of the meaning or in brackets: "metres", "feet" or "fathoms"
	remark     string   // what stands in brackets and is not a unit
	number     int      // of "Collector 2"; 0 if there is none
	datum      string   // of "Lat (WGS84)"
	side       string   // of "Longitude W": "N", "S", "E" or "W"
	eastOrWest bool     // the side is written O, which may be German
	cut        bool     // ten letters are left of the word
	also       []string // terms that the heading names besides
	several    bool     // it names several things, which are read as one
}

var (
	bracketed = regexp.MustCompile(`^(.*?)\s*[(\[（]([^()\[\]（）]*)[)\]）]\s*$`)
	metreUnit = regexp.MustCompile(`^(in )?(m|米|公尺|м|met(er|re)s?|metros?|metri|mètres?|m ?\.?s\.?l\.?m?|m ?n\.? ?p\.? ?m|m\.? ?a\.? ?s\.? ?l\.?|m\.? ?s\.? ?n\.? ?m\.?|m ?(n|s)\.? ?m|m ?n\.? ?v|м ?(н|над)\.? ?(у|р|ур)\. ?м|м ?н\.? ?в|m ?\.?d\.? ?p\.? ?l|m ?ü\.? ?(m|nn|nhn)\.?)\.?$`)
	fathoms   = regexp.MustCompile(`^(in )?(fathoms?|fm|fms|fth)\.?$`)
	lastWord  = regexp.MustCompile(`^(.*?[^\s,])(?:[\s_.,-]+(?:in[\s_]+)?)(m|м|met(?:er|re)s?|metros|masl|msnm|m\.? ?a\. ?s\. ?l|m\.? ?s\. ?n\. ?m|ft|feet|foot|fathoms?)\.?$`)
	numbered  = regexp.MustCompile(`^(.*?\pL[.)]?)[\s_.#-]*([1-9])\.?$`)
	ordinal   = regexp.MustCompile(`(?i)^(1st|first|2nd|second|3rd|third|4th|fourth|1\.|2\.|3\.|4\.)[\s_]*(\pL.*)$`)
	// noteSign leads from a heading to a note below the printed table.
	noteSign = regexp.MustCompile(`(\pL{3}\.?\)?|\))\s*[¹²³⁴-⁹ᵃᵇᶜᵈ†‡§*]+$`)
	// plainRemark is what brackets may say that the reading knows anyway.
	plainRemark = regexp.MustCompile(`(?i)^(d+[.,]d+|dd|dms|gms|grados|graus|decimal|decimal degrees|degrees|deg\.?|°|d\.d+|y+-m+-d+|iso( 8601)?|s|es|optional|required|mandatory|text|string|dwc|darwin core|yes/no|y/n|names?)$`)
	// machine says in brackets that the cells are what programs know a thing by.
	machine  = regexp.MustCompile(`(?i)^(guid|uuid|lsid|urn|uri|identifier|primary key|foreign key)$`)
	footUnit = regexp.MustCompile(`^(in )?(ft|feet|foot|pés|pies|pieds|fuß|')\.?( a\.?s\.?l\.?)?$`)
)

// read finds what a heading stands for.
func (v *words) read(heading string) reading {
	heading = noteSign.ReplaceAllString(strings.TrimSpace(heading), "$1")
	if heading == "w/" || heading == "W/" {
		heading = "with"
	}
	if r := v.lookup(heading); r.meaning != nil {
		return r
	}
	if len(heading) > longHeading {
		return reading{}
	}
	if one := strings.ReplaceAll(heading, "(s)", "s"); one != heading {
		return v.read(one) // "Collector(s) & no."
	}
	if b := bracketed.FindStringSubmatch(heading); b != nil && strings.TrimSpace(b[1]) != "" {
		if r := v.read(b[1]); r.meaning != nil && r.remark == "" {
			in := strings.TrimSpace(b[2])
			if machine.MatchString(in) {
				return v.lookup(b[1] + " ID") // of a program, and no words for a label
			}
			if r.told(in) {
				return r
			}
			if half := r.half(in); half.meaning != nil {
				return half
			}
			if unit := unitOf(strings.ToLower(in)); unit != "" {
				r.unit = unit
			} else if !plainRemark.MatchString(in) {
				if both := v.readSeveral(heading); both.several || both.meaning != nil && both.terms[0] == "collectorAndNumber" { // "Collector (year)"
					return both
				}
				r.remark = in
			}
			return r
		}
	}
	if w := lastWord.FindStringSubmatch(heading); w != nil {
		if r := v.lookup(w[1]); r.meaning != nil && measured(r.terms[0]) {
			r.unit = unitOf(strings.ToLower(w[2]))
			return r
		}
	}
	if i := strings.LastIndexAny(heading, " _"); i > 0 {
		if r := v.lookup(heading[:i]); r.meaning != nil && r.told(heading[i+1:]) {
			return r
		}
	}
	for _, f := range []struct {
		re        *regexp.Regexp
		base, nth int
	}{{numbered, 1, 2}, {ordinal, 2, 1}} {
		if m := f.re.FindStringSubmatch(heading); m != nil {
			if r := v.lookup(m[f.base]); r.meaning != nil && numberable(r.terms[0]) {
				r.number = nth(m[f.nth])
				return r
			}
		}
	}
	if rest, ok := strings.CutPrefix(heading, "#"); ok && rest != "" {
		if r := v.lookup(strings.TrimSpace(rest)); r.meaning != nil {
			return r
		}
	}
	if r := v.readRange(heading); r.meaning != nil {
		return r
	}
	return v.readLoosely(barePrefixed(heading))
}

// lookup finds a heading among the words, as it is or without a prefix.
func (v *words) lookup(heading string) reading {
	for _, s := range []string{heading, barePrefixed(heading)} {
		if key := headingKey(s); key != "" {
			if m, ok := v.meanings[key]; ok {
				return reading{meaning: m, unit: m.unit}
			}
		}
	}
	return reading{}
}

// unitOf returns the unit that a word stands for, "" if it is none.
func unitOf(word string) string {
	switch {
	case metreUnit.MatchString(word), word == "masl", word == "msnm":
		return "metres"
	case footUnit.MatchString(word):
		return "feet"
	case fathoms.MatchString(word):
		return "fathoms"
	}
	return ""
}

// measured reports whether a term is a height, a depth or a distance.
func measured(term string) bool {
	return strings.HasSuffix(term, "InMeters") || term == "verbatimElevation" || term == "verbatimDepth"
}

// verbatimOf are the terms that take what is written where a plain word's
// cells are no bare numbers.
var verbatimOf = map[string]string{
	"decimalLatitude":          "verbatimLatitude",
	"decimalLongitude":         "verbatimLongitude",
	"minimumElevationInMeters": "verbatimElevation",
	"minimumDepthInMeters":     "verbatimDepth",
}

// resolve gives every column its term and says what is to be said of the
// headings. Columns come with Heading, Index and Origin set.
func resolve(columns []Column) []label.Finding { return resolved(columns).findings }

// resolved is resolve for who wants to know more.
func resolved(columns []Column) *resolver {
	v := vocabulary()
	r := &resolver{v: v, columns: columns, read: make([]reading, len(columns)), taken: map[string]int{}}
	for i := range columns {
		r.read[i] = v.read(columns[i].Heading)
		columns[i].Term = strings.TrimSpace(columns[i].Heading)
	}
	r.leavePlantHeights()
	r.readBehind()
	r.passCodes()
	r.readCut()
	r.readLate()
	r.composed()
	r.splitCoordinates()
	// Names of terms come first, then words of one meaning, then the rest, and last
	// the words for a name or a number of anything, so that the order of columns does not change what they mean.
	for pass := range 4 {
		for i := range columns {
			if r.read[i].meaning != nil && columns[i].group == nil && pass == r.passOf(i) {
				r.assign(i)
			}
		}
	}
	for i := range columns {
		r.splitVerbatim(i)
	}
	r.remarkParts()
	r.remarkGroups()
	r.unknown()
	slices.SortStableFunc(r.findings, func(a, b label.Finding) int { return a.Column - b.Column })
	return r
}

// passOf says when a heading is given its term.
func (r *resolver) passOf(i int) int {
	switch m := r.read[i].meaning; {
	case weakWords[headingKey(r.columns[i].Heading)]:
		return 3
	case len(m.terms) > 1, r.read[i].number > 0, r.behind != nil && r.behind[i]:
		return 2
	case m.plain || m.own != "":
		return 1
	}
	return 0
}

// code is a heading of capitals alone, such as a herbarium's code.
var code = regexp.MustCompile(`^[A-Z]{1,6}$`)

// passCodes leaves alone the columns of a table that has one for each of several
// herbaria: SP and E are no abbreviations there.
func (r *resolver) passCodes() {
	unknown := 0
	for i := range r.columns {
		if r.read[i].meaning == nil && code.MatchString(strings.TrimSpace(r.columns[i].Heading)) {
			unknown++
		}
	}
	if r.codes = unknown >= 4; !r.codes {
		return
	}
	for i := range r.columns {
		if h := strings.TrimSpace(r.columns[i].Heading); r.read[i].meaning != nil && r.read[i].plain && len(h) <= 2 && code.MatchString(h) {
			r.read[i] = reading{}
		}
	}
}

type resolver struct {
	onGrid  bool         // the columns of a grid name another than UTM
	codes   bool         // headings of capitals stand for herbaria
	tall    map[int]bool // columns of heights of plants
	behind  []bool       // the headings that are read without what most begin with
	v       *words
	columns []Column
	read    []reading
	taken   map[string]int // the column of each term
	parts   []int          // columns of coordinates that are split over several
	groups  []*group       // columns that are read as one
	// unitColumn holds "elevation" and "depth" where a column names their unit.
	unitColumn map[string]bool
	findings   []label.Finding
}

func (r *resolver) find(i int, rule *Rule, severity label.Severity, suggest, format string, args ...any) {
	c := &r.columns[i]
	r.findings = append(r.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: rule.Name, Severity: severity,
		Message: fmt.Sprintf(format, args...), Suggest: suggest})
	if c.Known {
		r.findings[len(r.findings)-1].Term = c.Term
	}
}

// assign gives column i the first of its terms that is free.
func (r *resolver) assign(i int) {
	m, c := r.read[i].meaning, &r.columns[i]
	terms := slices.Clone(m.terms)
	if len(terms) > 1 && r.prefersSecond(i, terms) {
		terms[0], terms[1] = terms[1], terms[0]
	}
	if m.own != "" {
		terms = append(terms, m.own)
	}
	c.Unit = r.read[i].unit
	terms[0] = r.inUnit(i, terms[0])
	if n := r.read[i].number; n > 0 {
		terms[0] = r.ofNumber(i, terms[0], n)
	}
	c.Known = true
	for _, t := range terms {
		if !r.has(t) {
			c.Term = t
			r.taken[t] = i
			r.remark(i, terms)
			return
		}
	}
	r.again(i, terms[0])
}

// remark says what was decided about column i and what its heading tells that
// is not used.
func (r *resolver) remark(i int, terms []string) {
	c, read := &r.columns[i], r.read[i]
	switch {
	case c.Term == read.own && c.Term != terms[0] && read.plain:
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is not read: column %d (%q) has %s already",
			c.Heading, r.columns[r.taken[terms[0]]].Index+1, r.columns[r.taken[terms[0]]].Heading, terms[0])
		return
	case c.Term == "latestDateCollected":
		r.find(i, ruleHeadingReading, label.Warning, "", "heading %q is not read: Darwin Core writes first and last day as one eventDate, 2026-03-14/2026-03-16", c.Heading)
	case len(read.terms) > 1 && read.plain && read.terms[1] == "eventDate":
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is read as %s: write eventDate or geodeticDatum to be sure", c.Heading, c.Term)
	}
	if read.plain && read.unit == "" && (strings.HasSuffix(c.Term, "ElevationInMeters") || strings.HasSuffix(c.Term, "DepthInMeters") || c.Term == "coordinateUncertaintyInMeters") {
		r.find(i, ruleHeadingUnit, label.Note, "", "heading %q names no unit: bare figures are taken as metres", c.Heading)
	}
	if (read.unit == "feet" || read.unit == "fathoms") && strings.HasSuffix(c.Term, "InMeters") {
		r.find(i, ruleHeadingUnit, label.Error, "", "heading %q says %s, but %s holds metres: convert the column", c.Heading, read.unit, c.Term)
	}
	if read.several {
		r.sayAlso(i)
	}
	if read.cut {
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is read as %s, cut to ten letters", c.Heading, c.Term)
	}
	if read.remark != "" {
		r.find(i, ruleHeadingRemark, label.Note, "", "heading %q is read as %s; what stands in brackets is not used: give it a column of its own, or write it in each cell", c.Heading, c.Term)
	}
}

// splitVerbatim lets a plain word's column take what is no bare number too, if
// no other column has the verbatim term.
func (r *resolver) splitVerbatim(i int) {
	c := &r.columns[i]
	if r.read[i].meaning == nil || !r.read[i].plain || r.taken[c.Term] != i || c.group != nil {
		return
	}
	verbatim := verbatimOf[c.Term]
	if verbatim != "" && !r.has(verbatim) {
		c.Verbatim = verbatim
		r.taken[verbatim] = i
	}
}

// unknown speaks of headings without a meaning, and of those without a letter.
func (r *resolver) unknown() {
	empty := -1
	count := 0
	seen := map[string]int{}
	for i := range r.columns {
		c := &r.columns[i]
		if r.read[i].meaning != nil {
			continue // is known, or was spoken of
		}
		if c.Term == "" {
			if count++; empty < 0 {
				empty = i
			}
			continue
		}
		if _, ok := seen[c.Term]; ok {
			continue // is not known either
		}
		seen[c.Term] = i
		if r.tall[i] {
			r.find(i, ruleHeadingReading, label.Note, "", "heading %q is taken for the height of the plants, not of the place: its cells are kept, but not printed", c.Heading)
			continue
		}
		near, sure := r.v.nearest(c.Heading)
		if r.has(near) {
			near, sure = "", false // the table has that column
		}
		severity := label.Note
		if sure {
			severity = label.Warning // probably a slip of the keyboard
		}
		r.find(i, ruleHeadingUnknown, severity, near, "heading %q is not known: its cells are kept, but not printed", c.Heading)
	}
	switch {
	case count == 1:
		r.find(empty, ruleHeadingEmpty, label.Note, "", "column %d has no heading: its cells are kept, but not printed", r.columns[empty].Index+1)
	case count > 1:
		r.find(empty, ruleHeadingEmpty, label.Note, "", "%d columns have no heading (the first is column %d): their cells are kept, but not printed", count, r.columns[empty].Index+1)
	}
}

var (
	figures     = regexp.MustCompile(`^[-+]?\d+([.,]\d+)?°?$`)
	datelike    = regexp.MustCompile(`^\d{1,4}[-./ ]([ivxIVX]{1,4}|\d{1,2}|\pL{3,9})[-./ ]\d{1,4}$`)
	bareNumber  = regexp.MustCompile(`^[-+−]?\d{1,7}([.,]\d{0,15})?$`)
	numberedOne = regexp.MustCompile(`^[A-Z]{1,8}[- ]?\d{4,}$`)
)

// looksLikeData reports whether a first row holds records already: nothing
// that is a heading, or figures and dates where headings would be words. rows
// are those below it.
func looksLikeData(columns []Column, rows []*Row) bool {
	known, filled, data, mixed := 0, 0, 0, 0
	for i := range columns {
		s := strings.TrimSpace(columns[i].Heading)
		if s == "" {
			continue
		}
		filled++
		if columns[i].Known {
			known++
		}
		switch {
		case figures.MatchString(s), datelike.MatchString(s), numberedOne.MatchString(s), utf8.RuneCountInString(s) > 80:
			data++
		case !columns[i].Known && recordLike(s):
			data++
			if kindOf(s) == aMix {
				mixed++
			}
		}
	}
	if known > 2 && data == mixed {
		return false // what is measured has names such as "Loci_min4_all"; a record has figures alone or a date too
	}
	if slices.ContainsFunc(columns, func(c Column) bool { return c.Term == "decimalLatitude" || c.Term == "verbatimLatitude" }) &&
		slices.ContainsFunc(columns, func(c Column) bool { return c.Term == "decimalLongitude" || c.Term == "verbatimLongitude" }) {
		return false // no record has the words, and markers of genes beside them look like data
	}
	return known == 0 || data*3 >= filled && known < filled-data && !overFigures(columns, rows)
}

// overFigures reports whether two columns and more hold figures alone, below a
// first cell with letters: that row is none of records.
func overFigures(columns []Column, rows []*Row) bool {
	n := 0
	for i, c := range columns {
		letter := strings.IndexFunc(c.Heading, unicode.IsLetter) >= 0 && !codes[strings.TrimSpace(c.Heading)]
		if letter && len(rows) >= 3 && shareOf(rows, i, bareNumber.MatchString) == 1 {
			n++
		}
	}
	return n >= 2
}

// numberedWord is a heading such as "Plot 12".
var numberedWord = regexp.MustCompile(`^\pL+[ _.-]?\d{1,4}$`)

// recordLike reports whether a text is what stands in records and hardly in
// their headings.
func recordLike(s string) bool {
	switch kindOf(s) {
	case aNumber, aDate, aFamily:
		return true
	case aMix:
		return !numberedWord.MatchString(s)
	}
	return false
}
