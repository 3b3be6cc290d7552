package table

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// aside finds rows that are no records: the headings once more, a remark, a
// sum, a title such as the family of the rows that follow. Such a row has one
// finding that shows what it holds.
func (r *Row) aside(filled int) bool {
	t := r.table
	if r.Empty || len(t.columns) < 2 {
		return false
	}
	first := 0
	for isBlank(r.Cells[first].Text) {
		first++
	}
	text := strings.TrimSpace(r.Cells[first].Text)
	none := 0 // cells of a dash
	for i := range r.Cells {
		if s := r.Cells[i].Text; s == "-" || s == "–" || s == "—" {
			none++
		}
	}
	if 2*filled > t.width+1 && (none < 2 || !isSum(text)) && text[0] != '#' && (first >= len(t.columns) || text != strings.TrimSpace(t.columns[first].Heading)) {
		return false // a record, like most
	}
	severity, said := label.Note, ""
	switch {
	case first < len(t.columns) && text == strings.TrimSpace(t.columns[first].Heading) && r.repeats():
		said = "the row repeats the headings: it is no record"
	case text[0] == '#' && first == 0 && remark.MatchString(text) && (filled == 1 || len(r.Cells) != t.width):
		said = "the row begins with # and is taken for a remark: it is no record"
	case isSum(text) && r.numbersAfter(first):
		said = "the row is a sum of the table: it is no record"
	case filled == 1 && t.width >= 4 && familyName.MatchString(text):
		said = "only a family's name stands in the row: it is taken for a title and is no record"
		if t.Index("family") < 0 {
			severity = label.Warning
			said += "; give the rows below it a column \"family\" that names it"
		}
	case filled == 1 && first < 2 && t.width >= 4 && footnote.MatchString(text):
		said = "nothing but a remark on the table stands in the row: it is no record"
	case filled == 1 && first < 2 && t.width >= 4 && groupTitle.MatchString(text):
		said = "nothing but a title of the rows that follow stands in the row: it is no record"
	case filled == 1 && first < 2 && len(r.Cells) == t.width && t.width >= 4 && r.wordsAmongNumbers(first):
		severity = label.Warning
		said = "nothing but these words stands in the row, in a column of numbers: it is taken for a title or a remark and is no record; what it says of other rows must be written in them"
	default:
		return false
	}
	f := label.Finding{Origin: label.Origin{File: r.file, Line: r.Cells[first].Line, Column: r.Cells[first].Column, Row: r.N},
		Value: text, Rule: ruleAside.Name, Severity: severity, Message: said}
	r.Findings = append(r.Findings[:0], f)
	r.Aside, r.Empty = true, true
	return true
}

// wordsAmongNumbers reports whether cell i has no figure in it, as all others of
// its column have.
func (r *Row) wordsAmongNumbers(i int) bool {
	if r.table.profiles == nil || i >= len(r.table.profiles) {
		return false
	}
	p, text := &r.table.profiles[i], r.Cells[i].Text
	k := kindOf(text)
	return letters(text) >= 3 && (k == aText || k == aFamily || len(strings.Fields(text)) > 4) && !p.seen[aText] && !p.seen[aFamily] &&
		(p.main == aMix || p.main == aNumber || p.main == aDate)
}

// remark is how a line begins that is a remark: #12 may be a number.
var remark = regexp.MustCompile(`^#+(\s|\pL[^\d]*$|$)`)

// footnote is how remarks below a table begin: with a sign or a lone letter that
// cells refer to, or with a word for it. No name of a plant does.
var footnote = regexp.MustCompile(`^([¹²³⁴-⁹ᵃᵇᶜᵈ]+\s*\pL|[*†‡§¶]+\s*(?:[=:–-]\s*\pL|\pL+\s)|[a-h]\)?\s+\pL{3,}|(?i:(foot)?notes?|remarks?|abbreviations?( used)?|legend|key|sources?|nota|notas|abreviaturas|fuentes?|fontes?|observaciones|observações|anmerkung(en)?|abkürzungen|quellen?|abréviations|remarques?)\s*[:.–—]\s?\S)`)

// groupTitle parts the rows of a table in a paper.
var groupTitle = regexp.MustCompile(`(?i)^(in|out)-?groups?( taxa)?:?$`)

// repeats reports whether the cells are the headings.
func (r *Row) repeats() bool {
	same, other := 0, 0
	for i := range r.Cells {
		text := strings.TrimSpace(r.Cells[i].Text)
		switch {
		case text == "":
		case i < len(r.table.columns) && strings.EqualFold(text, strings.TrimSpace(r.table.columns[i].Heading)):
			same++
		default:
			other++
		}
	}
	return same >= 2 && 4*other <= same
}

var sumWord = regexp.MustCompile(`(?i)^(grand total|sub-?total|totals?|totale|totaal|sum|summe|gesamt|suma|soma|somme|razem|celkem|итого|всего|合計|合计|总计|總計|average|mean|mittelwert|média|media|moyenne)([^\pL]|$)`)

// countWord is what is counted in the last row of a table of samples.
var countWord = regexp.MustCompile(`(?i)^(?:(?:total )?(?:number|no\.?|nr\.?|#|n)(?: of)?|total|retained|filtered|mapped|raw|all|mean|average|median|unique|shared|variable|final) (?:\pL+ )?(?:loci|reads|read pairs|samples|species|specimens|records|individuals|taxa|sites|sequences|snps|markers|contigs|plots|populations|genera|families)$`)

// isSum reports whether text is a word for a sum, figures beside it at most.
func isSum(text string) bool {
	if countWord.MatchString(text) {
		return true
	}
	at := sumWord.FindStringIndex(text)
	return at != nil && letters(text[at[1]:]) == 0
}

// numbersAfter reports whether all filled cells after one are figures, and
// most cells of the row are empty, or some have a dash for nothing.
func (r *Row) numbersAfter(first int) bool {
	filled, none := 1, 0
	for _, c := range r.Cells[first+1:] {
		if s := strings.TrimSpace(c.Text); s != "" && strings.Trim(s, "-–—") == "" {
			none++
		} else if s != "" {
			filled++
			if kindOf(s) != aNumber {
				return false
			}
		}
	}
	return 2*filled <= r.table.width || filled == 1 || none > 1
}

// letters counts the letters of a text.
func letters(s string) int {
	n := 0
	for _, r := range s {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

// familyName is a name of a family: it ends in -aceae (International Code of
// Nomenclature, Art. 18.1), or is one of the eight of Art. 18.5.
var familyName = regexp.MustCompile(`(?i)^(fam(\.|ily|ília|ilia|ille|ilie)?:? )?(\pL+aceae|Compositae|Cruciferae|Gramineae|Guttiferae|Labiatae|Leguminosae|Palmae|Umbelliferae)( [\pLa-z.&() ]{0,30})?$`)

// swallowed finds a quoted cell that holds rows: a quote was left open, and one
// further down was taken for its end.
func (t *Table) swallowed(r *Row) bool {
	if t.width < 4 || t.width < 7 && t.o.Comma == ',' {
		return false
	}
	comma := string(t.o.Comma)
	for i := range r.Cells {
		c := &r.Cells[i]
		if !c.Quoted || !strings.ContainsAny(c.Text, "\r\n") {
			continue
		}
		lines := strings.FieldsFunc(c.Text, func(r rune) bool { return r == '\r' || r == '\n' })
		rows := 0
		for j := 1; j < len(lines)-1; j++ {
			if strings.Count(lines[j], comma) >= t.width-1 {
				rows++
			}
		}
		if rows == 0 || 2*rows < len(lines)-2 {
			continue
		}
		r.say(i, ruleUnclosed, label.Error, "", "this quote opens the cell and the next one stands %s further down, with rows of the table between them: close or remove it",
			plural(len(lines)-1, "one line", "%d lines"))
		f := &r.Findings[len(r.Findings)-1]
		f.Value = cut(lines[0], 60)
		r.Astray = true
		return true
	}
	return false
}

// A kind is what a cell looks like.
type kind uint8

const (
	aBlank  kind = iota
	aNumber      // figures
	aDate        // a date in figures, or with a month in words
	aFamily      // the name of a family
	aText        // no figure in it
	aMix         // the rest: letters and figures
	kinds
)

var dateIn = regexp.MustCompile(`^\d{1,4}[-./ ]\s?(\d{1,2}|[ivxIVX]{1,4}|\pL{3,10})\.?[-./ ,]\s?\d{2,4}$|^\pL{3,9}\.? \d{1,2},? \d{4}$`)

// isNumber reports whether a text is figures with points or commas among them, a
// sign before and the sign for degrees after them at most.
func isNumber(s string) bool {
	for _, sign := range []string{"-", "+", "−"} {
		if rest, ok := strings.CutPrefix(s, sign); ok {
			s = rest
			break
		}
	}
	s = strings.TrimSuffix(s, "°")
	last := byte('.')
	for i := range len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
		case (c == '.' || c == ',') && last != '.' && last != ',':
		default:
			return false
		}
		last = s[i]
	}
	return last != '.' && last != ','
}

// kindOf tells what a cell looks like.
func kindOf(s string) kind {
	s = strings.TrimSpace(s)
	if s == "" {
		return aBlank
	}
	figure, letter := false, false
	for _, r := range s {
		if r >= '0' && r <= '9' {
			figure = true
		} else if r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' || r >= utf8.RuneSelf && unicode.IsLetter(r) {
			letter = true
		}
		if figure && letter {
			break
		}
	}
	switch {
	case !figure && strings.HasSuffix(s, "ae") && familyName.MatchString(s):
		return aFamily
	case !figure:
		return aText
	case !letter && isNumber(s):
		return aNumber
	case len(s) <= 24 && dateIn.MatchString(s):
		return aDate
	}
	return aMix
}
