package table

import (
	"errors"
	"regexp"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
)

// How far a table is looked into before its rows are read: for the row of
// headings, and for what its columns hold.
const (
	headRows   = 24
	sampleRows = 400
	sampleSize = 512 << 10 // bytes of text
)

// sample cuts the first rows with a given comma, fewer where the file ends or
// cannot be read on: who reads the rows will hear of that.
func (t *Table) sample(comma rune, most int) ([]*Row, error) {
	r, err := t.parts[0].src.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	l := t.lexer(t.parts[0], r, comma, nil)
	var rows []*Row
	t.starts, t.ended, t.garble = t.starts[:0], false, garble{}
	for size := 0; len(rows) < most && size < sampleSize; size += l.length {
		ok, err := l.next()
		if err != nil {
			if len(rows) == 0 {
				return nil, t.fault(t.parts[0], l, 0, err)
			}
			return rows, nil
		}
		if !ok {
			t.ended = true
			break
		}
		rows = append(rows, t.row(t.parts[0], l, 0).mended())
		t.starts = append(t.starts, l.line)
	}
	return rows, nil
}

// headed counts the cells of a row that hold something, and those that are
// headings.
func headed(cells []Cell) (known, filled int) {
	texts := make([]string, len(cells))
	for i := range cells {
		texts[i] = cells[i].Text
	}
	shared := sharedStart(texts)
	for _, text := range texts {
		if isBlank(text) {
			continue
		}
		filled++
		if start, rest := cutStart(text); isHeading(text) || shared != "" && start == shared && isHeading(rest) {
			known++
		}
	}
	return known, filled
}

func isHeading(text string) bool {
	if len(text) > longHeading {
		return false
	}
	if vocabulary().read(text).meaning != nil {
		return true
	}
	p, ok := readPiece(text)
	return ok && p.axis != ""
}

// headingRow returns which of the first rows holds the headings: the first,
// unless it is hardly one and a row further down clearly is.
func headingRow(rows []*Row) int {
	known, filled := headed(rows[0].Cells)
	if known >= 3 && 2*known >= filled {
		return 0
	}
	most := filled // cells of the rows above
	for i, r := range rows[1:] {
		k, f := headed(r.Cells)
		filledAbove := most
		most = max(most, f)
		switch {
		case 2*k < f || k < 2*known+1 || 2*filledAbove > f && filledAbove > 2:
		case k >= 3 && (2*known < filled || filled == 0 || filled+2 <= f && len(rows[0].Cells) > filled),
			k == 2 && f == 2 && filled < 2 && known == 0:
			return i + 1
		}
	}
	return 0
}

// unitWord are the cells of a row of units below the headings.
var unitWord = regexp.MustCompile(`(?i)^[(\[]?(°|º|deg\.?|degrees?|decimal degrees|dd|graus|grados|grad|°c|cm|mm|km|%|wgs ?-?84|d+[./-]m+[./-]y+|m+[./-]d+[./-]y+|y+[./-]m+[./-]d+|d+[./-]m+[./-]a+|[jt]+[./-]m+[./-][jt]+|text|string|number|integer|free text|date|iso( 8601)?|utm|required|optional|mandatory|obrigatório|opcional|obligatorio|pflicht)[)\]]?$`)

func isUnit(text string) bool {
	s := strings.ToLower(strings.Trim(strings.TrimSpace(text), "()[]"))
	return unitWord.MatchString(s) || metreUnit.MatchString(s) || footUnit.MatchString(s)
}

// words of a row of instructions, which any column may have.
var instruction = regexp.MustCompile(`(?i)^[(\[]?(text|string|number|integer|free text|required|optional|mandatory|obrigatório|opcional|obligatorio|pflicht)[)\]]?$`)

// suits reports whether a cell below a heading is the unit of its column: metres
// of a height, degrees of a latitude, the order of a date. The datum's own column
// has WGS84 as a record has.
func suits(heading, text string) bool {
	if !isUnit(text) {
		return false
	}
	if instruction.MatchString(text) {
		return true
	}
	r := vocabulary().read(heading)
	if r.meaning == nil {
		return true // a height of trees, in m
	}
	length := unitOf(strings.ToLower(strings.Trim(strings.TrimSpace(text), "()[]"))) != ""
	switch term := r.terms[0]; {
	case measured(term):
		return length
	case strings.HasSuffix(term, "Latitude"), strings.HasSuffix(term, "Longitude"), term == "verbatimCoordinates":
		return !length
	case strings.Contains(term, "Date"), strings.HasPrefix(term, "date"):
		return !length && len(text) > 3
	}
	return false
}

// A second says what the row below the headings is.
type second int

const (
	isRecord second = iota
	isUnits
	isSub   // headings of the second rank, "deg" below "Latitude"
	isTwin  // the headings again in other words
	isBlock // nothing
)

// secondRow finds what the row below the headings is.
func secondRow(top, sub []Cell) second {
	units, parts, known, filled, under, kind := 0, 0, 0, 0, 0, false
	for i := range sub {
		text := strings.TrimSpace(sub[i].Text)
		if text == "" {
			continue
		}
		filled++
		if len(text) > longHeading || figures.MatchString(text) {
			return isRecord
		}
		if i < len(top) && suits(top[i].Text, text) {
			units++
			kind = headingKey(barePrefixed(strings.TrimSpace(top[i].Text))) == "type" // Text is a kind of thing, too
		}
		if i < len(top) && isBlank(top[i].Text) {
			under++
		}
		switch p, ok := readPiece(text); {
		case isHeading(text):
			known++
		case ok && p.part != "", rangeWord.MatchString(text):
			parts++
		}
	}
	k, f := headed(top)
	switch {
	case filled == 0:
		return isRecord
	case under >= 2 && 2*filled < f && ranked(top, sub):
		return isSub
	case units == filled && 2*f > filled && (filled > 1 || f <= 12 && !kind):
		return isUnits
	case under > 0 && parts+known >= 2 && 5*(parts+known+units) >= 4*filled:
		return isSub
	case under == 0 && known >= 3 && 5*known >= 4*filled && 2*filled >= f && k > 0:
		return isTwin
	}
	return isRecord
}

// ranked reports whether the row below the headings only parts those that span
// several columns: each of its cells stands below an empty heading, or below the
// one before it, and none of such a span is empty. What spans them is no heading
// of records, whose cells could be short too.
func ranked(top, sub []Cell) bool {
	empty := func(i int) bool { return i < len(top) && isBlank(top[i].Text) }
	over := ""
	for i := range sub {
		filled := !isBlank(sub[i].Text)
		if i < len(top) && !isBlank(top[i].Text) {
			over = top[i].Text
		}
		switch {
		case filled && (!empty(i) && !empty(i+1) || isHeading(over)):
			return false
		case filled && (utf8.RuneCountInString(strings.TrimSpace(sub[i].Text)) > 30 || strings.ContainsAny(sub[i].Text, "0123456789")):
			return false
		case !filled && empty(i) && i > 0 && !isBlank(sub[i-1].Text):
			return false
		}
	}
	return true
}

var rangeWord = regexp.MustCompile(`(?i)^(` + lowWords + `|` + highWords + `)\.?$`)

// joinHeadings puts headings of two rows together: "Latitude" over "deg" and
// "min" is "Latitude deg" and "Latitude min".
func joinHeadings(top, sub []Cell) []string {
	out := make([]string, max(len(top), len(sub)))
	group := ""
	for i := range out {
		over, under := "", ""
		if i < len(top) {
			over = strings.TrimSpace(top[i].Text)
		}
		if i < len(sub) {
			under = strings.TrimSpace(sub[i].Text)
		}
		if over != "" {
			group = over
		}
		both := strings.TrimSpace(group + " " + under)
		switch {
		case under == "":
			out[i] = over
		case isHeading(both) || isHeading(group+" ("+under+")"):
			if out[i] = both; !isHeading(both) {
				out[i] = group + " (" + under + ")"
			}
		case isHeading(under):
			out[i] = under
		default:
			out[i] = both
		}
	}
	return out
}

// withUnits writes the units of a row below the headings into them.
func withUnits(top, sub []Cell) []string {
	out := make([]string, len(top))
	for i := range top {
		out[i] = top[i].Text
		if i < len(sub) && !isBlank(sub[i].Text) && !isBlank(out[i]) {
			out[i] = strings.TrimSpace(out[i]) + " (" + strings.Trim(strings.TrimSpace(sub[i].Text), "()[]") + ")"
		}
	}
	return out
}

// readHeading finds the comma and reads the heading row.
func (t *Table) readHeading() error {
	c, err := t.separator()
	if err != nil {
		return err
	}
	if c != 0 {
		t.skip = 1
		if t.o.Comma == 0 {
			t.o.Comma = c
		}
	}
	if t.o.Comma == 0 {
		if err := t.findComma(); err != nil {
			return err
		}
	}
	rows, err := t.sample(t.o.Comma, sampleRows)
	if err != nil {
		return err
	}
	whole := t.ended
	if len(rows) == 0 {
		t.say(ruleEmpty, label.Error, 1, "the file is empty: it needs a heading row and a row for each record")
		t.mapTerms()
		return nil
	}
	if n := headingRow(rows[:min(len(rows), headRows)]); n > 0 {
		t.passTitle(rows[:n], rows[n])
		rows = rows[n:]
	}
	cells, line := rows[0].Cells, rows[0].Line
	t.findings = append(t.findings, rows[0].Findings...)
	t.width = len(cells)
	headings := make([]string, len(cells))
	for i := range cells {
		headings[i] = cells[i].Text
	}
	under := isRecord
	if len(rows) > 1 && t.width > 1 {
		under = secondRow(cells, rows[1].Cells)
		switch under {
		case isUnits:
			headings = withUnits(cells, rows[1].Cells)
		case isSub:
			headings = joinHeadings(cells, rows[1].Cells)
			t.width = max(t.width, len(headings))
		}
	}
	t.columns = make([]Column, len(headings))
	for i, h := range headings {
		t.columns[i] = Column{Heading: h, Index: i, from: i, Origin: label.Origin{File: t.parts[0].src.Name(), Line: line}}
		if i < len(cells) {
			t.columns[i].Origin.Line, t.columns[i].Origin.Column = cells[i].Line, cells[i].Column
		}
	}
	if _, filled := headed(cells); filled == 0 && under == isRecord {
		t.say(ruleNoHeading, label.Error, line, "the first row is empty: it must hold the headings of the columns")
		t.mapTerms()
		return nil
	}
	r := resolved(t.columns)
	found := r.findings
	if looksLikeData(t.columns, rows[1+t.under:]) {
		// What is to be said of single headings would only hide it.
		t.say(ruleNoHeading, label.Error, line, "the first row holds no headings that are known, it begins with %q: put a row above it that names the columns", cut(firstText(cells), 40))
		t.mapTerms()
		return nil
	}
	t.saySecond(under, rows)
	t.findings = append(t.findings, found...)
	t.byCells(r, rows[1+t.under:])
	t.daysFirst(r, rows[1+t.under:])
	t.constants(r, rows[1+t.under:])
	t.mapTerms()
	t.profile(rows[1+t.under:], whole)
	return nil
}

// firstText is the text of the first cell that has any.
func firstText(cells []Cell) string {
	for _, c := range cells {
		if !isBlank(c.Text) {
			return c.Text
		}
	}
	return ""
}

// passTitle skips what stands above the heading row.
func (t *Table) passTitle(above []*Row, heading *Row) {
	var texts []string
	for _, r := range above {
		for _, c := range r.Cells {
			if !isBlank(c.Text) {
				texts = append(texts, strings.TrimSpace(c.Text))
			}
		}
	}
	first := strings.Join(texts, " | ")
	t.skip = t.starts[len(above)] - 1
	said := plural(len(above), "a row stands", "%d rows stand")
	if first == "" {
		t.say(ruleTitle, label.Note, above[0].Line, "%s above the headings, which are in line %d", said, heading.Line)
		return
	}
	t.say(ruleTitle, label.Note, above[0].Line, "%s above the headings, which are in line %d: not read, and not printed: %q", said, heading.Line, cut(first, 200))
}

// saySecond states how the row below the headings is read.
func (t *Table) saySecond(under second, rows []*Row) {
	if under == isRecord {
		return
	}
	t.under = 1
	line := rows[1].Line
	switch under {
	case isUnits:
		t.say(ruleSecond, label.Note, line, "the row below the headings holds their units: it is read with them and is no record")
	case isSub:
		t.say(ruleSecond, label.Note, line, "the headings take two rows, which are read together: %q", cut(strings.Join(headingsOf(t.columns), " | "), 200))
	case isTwin:
		t.say(ruleSecond, label.Note, line, "the row below the headings names the columns once more: it is no record; the first row is the one that is read")
	}
}

func headingsOf(columns []Column) []string {
	var all []string
	for i := range columns {
		all = append(all, columns[i].Heading)
	}
	return all
}

// findComma tries every comma on the first rows: the one under which most
// headings are known is it, then the one that makes most cells.
func (t *Table) findComma() error {
	type try struct{ known, cells, at int }
	var best, second try
	for i, c := range commas {
		if c.r == t.o.Quote {
			continue
		}
		rows, err := t.sample(c.r, headRows)
		if e := (*Error)(nil); errors.As(err, &e) && e.Err == nil {
			continue // a cell beyond the limit: it is not this one
		}
		if err != nil {
			return err
		}
		if len(rows) == 0 {
			continue
		}
		row := rows[headingRow(rows)]
		n := try{cells: len(row.Cells), at: i}
		n.known, _ = headed(row.Cells)
		if n.cells < 2 {
			continue
		}
		if n.known > best.known || n.known == best.known && n.cells > best.cells {
			best, second = n, best
		} else if n.known > second.known || n.known == second.known && n.cells > second.cells {
			second = n
		}
	}
	t.o.Comma = commas[best.at].r
	if second.cells > 1 && second.known == best.known && second.cells >= best.cells-1 {
		t.say(ruleDelimiter, label.Warning, 1, "the %s is taken to stand between cells, but the heading row could be cut at the %s as well: name the one that is meant",
			commas[best.at].name, commas[second.at].name)
	}
	return nil
}
