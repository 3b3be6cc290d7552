package table

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
)

// A proof is how a column is read whose heading nobody knows, but has a word for
// what its cells are: "CollectorString" above persons.
type proof struct {
	term   string
	unless []string // terms that say it already
	word   *regexp.Regexp
	not    *regexp.Regexp // words that speak against it
	cells  *regexp.Regexp
	share  float64 // of the filled cells that have to look so, of 1
}

var proofs = []proof{
	{"recordedBy", []string{"collectorAndNumber"},
		regexp.MustCompile(`(?i)col+ector|coletor|col+ecteur|sammler|(collected|gathered|sampled)[ _.-]?by`),
		regexp.MustCompile(`(?i)num|no\.?$|nr\.?$|id$|code|date|year|e-?mail|orcid|others?|second|assist|co-|addition|local|place|site|habitat`), person, 0.8},
	{"identifiedBy", nil,
		regexp.MustCompile(`(?i)^(det|ident|determined|determination|identification|id)[ ._-]`),
		regexp.MustCompile(`(?i)date|year|num|no\.?$|id$|code|host|prev|orig|old|seq`), person, 0.8},
	{"stateProvince", nil, regexp.MustCompile(`(?i)^st\.?$`), regexp.MustCompile(`^$`), regexp.MustCompile(`^\s*[A-Z]{2}\s*$`), 0.9},
	{"cultivarEpithet", nil, regexp.MustCompile(`(?i)^(cultivar|cv)[ _.]?(name|epithet)?\.?$`), regexp.MustCompile(`^$`),
		regexp.MustCompile(`^\s*['‘"]?\p{Lu}[\p{L}\p{N}' -]*['’"]?\s*$`), 0.9},
	{"institutionCode", nil,
		regexp.MustCompile(`(?i)voucher|herbari|specimen|deposit|reposit|museum|institution`),
		regexp.MustCompile(`(?i)dna|tissue|seed|photo|image|extract|living|country|state|dupl`), regexp.MustCompile(`^\s*[A-Z]{1,8}\s*$`), 0.9},
	{"catalogNumber", []string{"collectorAndNumber"},
		regexp.MustCompile(`(?i)(voucher|herbari|specimen|sheet|museum).*(acc(ession)?|barcode|cat(alog(ue)?)?|num|no\.?|id)($|[ _.-])|(acc(ession)?|barcode|cat(alog(ue)?)?|num|no)[ _.-].*(voucher|herbari|specimen|sheet|museum)`),
		regexp.MustCompile(`(?i)dna|tissue|seed|photo|image|genbank|ncbi|sequence|living|dupl|other|coll|field`),
		regexp.MustCompile(`^\s*[A-Z]{1,8}[-.: ]? ?[A-Z]?[- ]?\d{4,}[A-Za-z]?\s*(\(.*\))?$`), 0.9},
}

// byWordAndCells reads such columns, where no other one has their term. Of two it
// cannot tell which.
func (t *Table) byWordAndCells(r *resolver, rows []*Row) {
	for _, p := range proofs {
		if r.hasAny(append(p.unless[:len(p.unless):len(p.unless)], p.term)) {
			continue
		}
		at := -1
		for i := range t.columns {
			c := &t.columns[i]
			h := strings.TrimSpace(c.Heading)
			if c.Known || c.group != nil || len(h) > longHeading || !p.word.MatchString(h) || p.not.MatchString(h) ||
				t.filledIn(rows, i) < 3 || shareOf(rows, i, p.cells.MatchString) < p.share ||
				shareOf(rows, i, answer.MatchString) > 0.2 || shareOf(rows, i, yesNo.MatchString) > 0.9 {
				continue
			}
			if at >= 0 {
				at = -1
				break
			}
			at = i
		}
		if at >= 0 {
			c := &t.columns[at]
			t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
				return f.Origin.Column == c.Origin.Column && f.Origin.Line == c.Origin.Line
			})
			t.settle(r, at, p.term, p.term+", for its cells are such")
		}
	}
}

// hasAny reports whether a column has one of the terms.
func (r *resolver) hasAny(terms []string) bool { return slices.ContainsFunc(terms, r.has) }

// rising reports whether the numbers of a column go up from row to row, as those of a
// trip do, but for a few.
func rising(rows []*Row, column int) bool {
	last, up, down := 0, 0, 0
	for _, r := range rows {
		if !r.filled(column) {
			continue
		}
		n, err := strconv.Atoi(strings.TrimSpace(r.Cells[column].Text))
		switch {
		case err != nil:
		case n >= last:
			up++
			last = n
		default:
			down++
			last = n
		}
	}
	return up > 3*down
}

// distinct is how many different cells a column has, as a share of the filled ones.
func distinct(rows []*Row, column int) float64 {
	seen, n := map[string]bool{}, 0
	for _, r := range rows {
		if r.filled(column) {
			n++
			seen[strings.TrimSpace(r.Cells[column].Text)] = true
		}
	}
	return float64(len(seen)) / float64(max(n, 1))
}
