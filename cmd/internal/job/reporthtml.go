package job

import (
	"bufio"
	_ "embed"
	"html/template"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/table"
)

//go:embed report.html
var reportSource string

var reportTemplate = template.Must(template.New("report").Funcs(template.FuncMap{"count": digits}).Parse(reportSource))

// How much of a report is told one by one. What is beyond it is counted, and
// said to be.
const (
	reportLines  = 1000 // different faults of one rule
	reportNotes  = 100  // if nothing needs to be done about them
	reportPlaces = 12   // records that share a fault, each with its name
	reportRanges = 60   // ranges of rows
	reportBad    = 120  // records that cannot be printed
	reportValue  = 600  // characters of a cell
)

// A RemarksPage gathers remarks for a report that people read and print: one
// HTML file that needs no other. It keeps what it shows and no more, however
// many remarks there are.
type RemarksPage struct {
	j      *Job
	file   string
	rules  map[string]ruleText
	groups map[groupKey]*remarkGroup
	order  []*remarkGroup
	terms  map[string]*termCount
	odd    map[rune]bool // characters that were made visible
}

type ruleText struct{ doc, source string }

type groupKey struct {
	severity label.Severity
	rule     string
}

// remarkGroup is what one rule says.
type remarkGroup struct {
	groupKey
	count int
	lines []*remarkLine
	known map[lineKey]*remarkLine
	more  int // remarks that are not in lines
}

// lineKey is a fault: the same words of the same cell, wherever it stands.
type lineKey struct{ file, term, value, message, suggest string }

type remarkLine struct {
	lineKey
	withheld bool
	count    int
	places   []remarkPlace
	rows     []rowSpan
	also     []label.Cell
}

type remarkPlace struct {
	File, Key string
	Row, Line int
}

type rowSpan struct{ from, to int }

type termCount struct {
	Term                    string
	Errors, Warnings, Notes int
}

// NewRemarksPage begins a report on a table.
func (j *Job) NewRemarksPage(t *Table) (*RemarksPage, error) {
	rules, err := j.Rules()
	if err != nil {
		return nil, err
	}
	p := &RemarksPage{j: j, file: t.Source().Name(), rules: map[string]ruleText{}, groups: map[groupKey]*remarkGroup{}, terms: map[string]*termCount{}, odd: map[rune]bool{}}
	for _, r := range rules {
		p.rules[r.Name] = ruleText{r.Doc, r.Source}
	}
	for _, r := range table.Rules() {
		p.rules[r.Name] = ruleText{r.Doc, r.Source}
	}
	return p, nil
}

// Add takes a remark.
func (p *RemarksPage) Add(m Remark) error {
	key := groupKey{m.Severity, m.Rule}
	g := p.groups[key]
	if g == nil {
		g = &remarkGroup{groupKey: key, known: map[lineKey]*remarkLine{}}
		p.groups[key] = g
		p.order = append(p.order, g)
	}
	g.count++
	p.countTerm(m)
	lk := lineKey{m.File, knownAs(m.Finding), m.Value, m.Message, m.Suggest}
	l := g.known[lk]
	if l == nil {
		if len(g.lines) == reportLines || m.Severity == label.Note && len(g.lines) == reportNotes {
			g.more++
			return nil
		}
		l = &remarkLine{lineKey: lk, withheld: m.Withheld, also: m.Also}
		g.known[lk] = l
		g.lines = append(g.lines, l)
	}
	l.add(m)
	return nil
}

func (l *remarkLine) add(m Remark) {
	l.count++
	if len(l.places) < reportPlaces {
		l.places = append(l.places, remarkPlace{m.File, m.Key, m.Row, m.Line})
	}
	if n := len(l.rows); n > 0 && m.Row >= l.rows[n-1].from && m.Row <= l.rows[n-1].to+1 {
		l.rows[n-1].to = max(l.rows[n-1].to, m.Row)
	} else {
		l.rows = append(l.rows, rowSpan{m.Row, m.Row})
	}
}

// oneKey reports whether all its records have one name.
func (l *remarkLine) oneKey() bool {
	return !slices.ContainsFunc(l.places, func(p remarkPlace) bool { return p.Key != l.places[0].Key })
}

// knownAs names a column as the collector knows it, and as the program does.
func knownAs(f label.Finding) string {
	if f.Head == nil || f.Head.Inner {
		return f.Shown()
	}
	return f.Head.Text + " (" + f.Term + ")"
}

func (p *RemarksPage) countTerm(m Remark) {
	name := knownAs(m.Finding)
	c := p.terms[name]
	if c == nil {
		c = &termCount{Term: name}
		p.terms[name] = c
	}
	switch m.Severity {
	case label.Error:
		c.Errors++
	case label.Warning:
		c.Warnings++
	default:
		c.Notes++
	}
}

// The page as the template sees it.
type (
	reportPage struct {
		House, File, Date, Program   string
		Records                      string
		Chosen                       string // where not all were
		Errors, Warnings, Notes, Bad int
		BadPlaces                    []remarkPlace
		BadMore                      int
		Withheld                     int
		Sections                     []reportSection
		Contents                     bool // worth a list at the head
		Columns                      []*termCount
		Rules                        []reportRule
		Odd                          []oddCharacter
	}
	reportSection struct {
		ID, Title, Meaning string
		Count              string
		Groups             []reportGroup
	}
	reportGroup struct {
		ID                   string
		Title                template.HTML // what is wrong, if all lines say the same
		Rule, Count          string
		Term                 string // where all lines are of one column
		HasTerm, HasMessage  bool   // columns of the table
		HasValue, HasSuggest bool
		One                  *reportLine // in place of a table of one line
		Lines                []reportLine
		More                 string
	}
	reportLine struct {
		Places                  []remarkPlace
		Many                    string // in place of Places
		Term                    string
		Value, Message, Suggest template.HTML
		Also                    string
	}
	reportRule   struct{ Name, Doc, Source string }
	oddCharacter struct{ Sign, Name string }
)

var sections = []struct {
	severity                      label.Severity
	id, title, meaning, one, more string
}{
	{label.Error, "errors", "Errors", "The label of such a record would print nonsense. It is not printed until this is mended.", "error", "errors"},
	{label.Warning, "warnings", "Warnings", "Probably wrong; look at each. The label is printed as the table has it.", "warning", "warnings"},
	{label.Note, "notes", "Notes", "Worth knowing. Nothing needs to be done.", "note", "notes"},
}

// Write writes the report.
func (p *RemarksPage) Write(w io.Writer, s Summary, withheld int) error {
	h := p.j.House.Herbarium
	page := reportPage{
		House: h.Name, File: filepath.Base(p.file), Date: p.j.o.Date.Format("2 January 2006"), Program: "cornerslip " + Version,
		Records: amount(s.Records, "record", "records"),
		Errors:  s.Errors, Warnings: s.Warnings, Notes: s.Notes, Bad: len(s.Bad), Withheld: withheld,
	}
	if s.Chosen != s.Records {
		page.Chosen = amount(s.Chosen, "record was chosen", "records were chosen")
	}
	for _, b := range s.Bad[:min(len(s.Bad), reportBad)] {
		page.BadPlaces = append(page.BadPlaces, remarkPlace{b.File, visibleText(b.Key), b.Row, b.Line})
	}
	page.BadMore = len(s.Bad) - len(page.BadPlaces)
	groups := 0
	for _, sec := range sections {
		out := reportSection{ID: sec.id, Title: sec.title, Meaning: sec.meaning}
		n := 0
		for _, g := range p.order {
			if g.severity == sec.severity {
				out.Groups = append(out.Groups, p.group(g, sec.id+"-"+strconv.Itoa(len(out.Groups)+1)))
				n += g.count
			}
		}
		groups += len(out.Groups)
		if n > 0 {
			out.Count = amount(n, sec.one, sec.more)
			page.Sections = append(page.Sections, out)
		}
	}
	page.Contents = groups > 3
	page.Columns = p.columns()
	page.Rules = p.said()
	for _, r := range sortedRunes(p.odd) {
		page.Odd = append(page.Odd, oddCharacter{signOf(r), nameOf(r)})
	}
	b := bufio.NewWriter(w)
	if err := reportTemplate.Execute(b, page); err != nil {
		return err
	}
	return b.Flush()
}

// group makes the part of the page that tells of one rule.
func (p *RemarksPage) group(g *remarkGroup, id string) reportGroup {
	slices.SortStableFunc(g.lines, func(a, b *remarkLine) int { return a.places[0].Row - b.places[0].Row })
	out := reportGroup{ID: id, Rule: g.rule, Title: p.visible(sentence(p.rules[g.rule].doc)), Count: digits(g.count), HasTerm: true, HasMessage: true}
	first, sameTerm, sameMessage := g.lines[0], true, true
	for _, l := range g.lines {
		sameTerm = sameTerm && l.term == first.term
		sameMessage = sameMessage && l.message == first.message
		out.HasValue = out.HasValue || l.value != "" || l.withheld
		out.HasSuggest = out.HasSuggest || l.suggest != ""
	}
	if sameTerm {
		out.HasTerm, out.Term = false, first.term
	}
	if sameMessage && g.more == 0 {
		out.HasMessage = false
		out.Title = p.visible(sentence(first.message))
	}
	for _, l := range g.lines {
		out.Lines = append(out.Lines, p.line(l))
	}
	if len(out.Lines) == 1 {
		out.One = &out.Lines[0]
	}
	if g.more > 0 {
		out.More = amount(g.more, "further remark of this kind is not shown here", "further remarks of this kind are not shown here")
	}
	return out
}

func (p *RemarksPage) line(l *remarkLine) reportLine {
	out := reportLine{Term: l.term, Message: p.visible(sentence(l.message)), Suggest: p.visible(l.suggest), Value: p.visible(l.value)}
	switch {
	case l.withheld:
		out.Value = `<i class="none">withheld</i>`
	case l.value == "" && l.term != "":
		out.Value = `<i class="none">empty</i>`
	}
	file := ""
	if l.file != p.file {
		file = baseName(l.file) + ", "
	}
	switch {
	case l.count > len(l.places):
		out.Many = amount(l.count, "record", "records") + ": " + file + rowsOf(l.rows)
	case l.count > 1 && l.oneKey(): // numbers would tell them apart, and there are none
		out.Many = strings.TrimLeft(visibleText(l.places[0].Key)+", ", ", ") + file + rowsOf(l.rows)
	default:
		for _, pl := range l.places {
			if pl.Key = visibleText(pl.Key); pl.File == p.file {
				pl.File = ""
			} else {
				pl.File = baseName(pl.File)
			}
			out.Places = append(out.Places, pl)
		}
	}
	if len(l.also) > 0 && l.count == 1 {
		var rows []rowSpan
		for _, c := range l.also {
			rows = append(rows, rowSpan{c.Row, c.Row})
		}
		out.Also = rowsOf(rows)
	}
	return out
}

// said returns the rules that said something, by name.
func (p *RemarksPage) said() []reportRule {
	var all []reportRule
	for _, g := range p.order {
		all = append(all, reportRule{g.rule, sentence(p.rules[g.rule].doc), p.rules[g.rule].source})
	}
	slices.SortFunc(all, func(a, b reportRule) int { return strings.Compare(a.Name, b.Name) })
	return slices.Compact(all)
}

// columns counts the remarks of each column, those with the gravest first.
func (p *RemarksPage) columns() []*termCount {
	var all []*termCount
	for _, c := range p.terms {
		all = append(all, c)
	}
	slices.SortFunc(all, func(a, b *termCount) int {
		switch {
		case a.Errors != b.Errors:
			return b.Errors - a.Errors
		case a.Warnings != b.Warnings:
			return b.Warnings - a.Warnings
		case a.Notes != b.Notes:
			return b.Notes - a.Notes
		}
		return strings.Compare(a.Term, b.Term)
	})
	return all
}

// sentence makes a message one: with a full stop, and a capital, unless the
// first word is a term of several (recordNumber).
func sentence(s string) string {
	if s == "" {
		return ""
	}
	word := s[:strings.IndexFunc(s+" ", func(r rune) bool { return !unicode.IsLetter(r) })]
	if strings.IndexFunc(word, unicode.IsUpper) < 0 {
		r, n := utf8.DecodeRuneInString(s)
		s = string(unicode.ToUpper(r)) + s[n:]
	}
	if !strings.ContainsAny(s[len(s)-1:], ".?!") {
		s += "."
	}
	return s
}

// amount is "1 record", "1,534 records".
func amount(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return digits(n) + " " + more
}

// digits writes a count with a comma between thousands.
func digits(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// rowsOf names rows, the first of them where they are many.
func rowsOf(spans []rowSpan) string {
	var b strings.Builder
	b.WriteString("rows ")
	if len(spans) == 1 && spans[0].from == spans[0].to {
		b.Reset()
		b.WriteString("row ")
	}
	for i, s := range spans {
		if i == reportRanges {
			b.WriteString(" and " + digits(len(spans)-i) + " further places")
			break
		}
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(strconv.Itoa(s.from))
		if s.to > s.from {
			b.WriteString("–" + strconv.Itoa(s.to))
		}
	}
	return b.String()
}
