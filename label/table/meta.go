package table

import (
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
)

// metaArchive is meta.xml, as the Darwin Core text guide lays it down.
type metaArchive struct {
	Core       *metaTable  `xml:"core"`
	Extensions []metaTable `xml:"extension"`
}

type metaTable struct {
	RowType     string      `xml:"rowType,attr"`
	Encoding    string      `xml:"encoding,attr"`
	Terminated  *string     `xml:"fieldsTerminatedBy,attr"`
	Enclosed    *string     `xml:"fieldsEnclosedBy,attr"`
	Lines       *string     `xml:"linesTerminatedBy,attr"`
	HeaderLines string      `xml:"ignoreHeaderLines,attr"`
	DateFormat  string      `xml:"dateFormat,attr"`
	Locations   []string    `xml:"files>location"`
	ID          *metaField  `xml:"id"`
	CoreID      *metaField  `xml:"coreid"`
	CoreID2     *metaField  `xml:"coreId"` // as the guide's text spells it
	Fields      []metaField `xml:"field"`
}

type metaField struct {
	Index   string `xml:"index,attr"`
	Term    string `xml:"term,attr"`
	Default string `xml:"default,attr"`
}

// readMeta reads meta.xml.
func readMeta(src Source) (*metaArchive, error) {
	fault := func(message string, err error) error {
		return &Error{Origin: label.Origin{File: src.Name()}, Message: message, Err: err}
	}
	r, err := src.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	limited := &io.LimitedReader{R: r, N: maxMeta}
	d := xml.NewDecoder(limited)
	d.CharsetReader = func(name string, r io.Reader) (io.Reader, error) {
		c, err := findCharset(name)
		if err != nil {
			return nil, err
		}
		if c.enc == nil {
			return r, nil
		}
		return c.enc.NewDecoder().Reader(r), nil
	}
	m := &metaArchive{}
	if err := d.Decode(m); err != nil {
		if limited.N <= 0 {
			return nil, fault("is longer than "+sizeWords(maxMeta)+": it describes no archive", nil)
		}
		return nil, fault("cannot be read as the description of a Darwin Core archive", err)
	}
	if m.Core == nil {
		return nil, fault("names no core table", nil)
	}
	return m, nil
}

// unescape reads what an attribute says of a character: "\t" is a tab.
func unescape(s string) string {
	s = strings.ReplaceAll(s, `\"`, `"`)
	if r, err := strconv.Unquote(`"` + strings.ReplaceAll(s, `"`, `\"`) + `"`); err == nil {
		return r
	}
	return s
}

// An archive opens the tables of one meta.xml.
type archive struct {
	h     holder
	dir   string // of meta.xml
	names []string
	meta  string
	o     Options
}

func (a *archive) fault(format string, args ...any) error {
	return &Error{Origin: label.Origin{File: a.h.source(a.meta).Name()}, Message: fmt.Sprintf(format, args...)}
}

// options are the Options of one table; what the user said outranks meta.xml.
func (a *archive) options(m *metaTable) (Options, error) {
	o := a.o
	if o.Encoding == "" {
		o.Encoding, o.supposed = m.Encoding, true
	}
	one := func(attr, what string, s *string, otherwise rune) (rune, error) {
		if s == nil {
			return otherwise, nil
		}
		text := unescape(*s)
		r, n := utf8.DecodeRuneInString(text)
		if n == 0 || n < len(text) {
			return 0, a.fault("%s=%q: one character %s is needed", attr, *s, what)
		}
		return r, nil
	}
	var err error
	if o.Comma == 0 {
		if o.Comma, err = one("fieldsTerminatedBy", "between the cells", m.Terminated, ','); err != nil {
			return o, err
		}
	}
	if o.Quote == 0 && !o.Literal {
		if m.Enclosed != nil && *m.Enclosed == "" {
			o.Literal = true
		} else if o.Quote, err = one("fieldsEnclosedBy", "around the cells", m.Enclosed, '"'); err != nil {
			return o, err
		}
	}
	if m.Lines != nil {
		// Line ends in an attribute may have become blanks by the rules of
		// XML; CR, LF and CRLF are all taken where one of them is named.
		switch strings.Trim(unescape(*m.Lines), " ") {
		case "", "\n", "\r", "\r\n":
		default:
			if o.eol, err = one("linesTerminatedBy", "between the rows", m.Lines, 0); err != nil {
				return o, err
			}
		}
	}
	if err := o.check(); err != nil {
		return o, a.fault("%v", err)
	}
	return o, nil
}

// locate finds a table's file.
func (a *archive) locate(location string) (string, error) {
	location = strings.TrimSpace(location)
	if strings.Contains(location, "://") {
		return "", a.fault("the table lies at %s: only files of the archive itself are read, none are fetched", location)
	}
	name := path.Join(a.dir, filepath.ToSlash(location))
	if !filepath.IsLocal(filepath.FromSlash(name)) {
		return "", a.fault("the table %q lies outside the archive", location)
	}
	for _, n := range a.names {
		if n == name {
			return n, nil
		}
	}
	for _, n := range a.names {
		if strings.EqualFold(n, name) {
			return n, nil
		}
	}
	return "", nil
}

// open opens one table. idTerm is what its column of identifiers is called.
func (a *archive) open(m *metaTable, idTerm string) (*Table, error) {
	o, err := a.options(m)
	if err != nil {
		return nil, err
	}
	t := &Table{o: o, archive: true}
	if m.HeaderLines != "" {
		t.skip, err = strconv.Atoi(strings.TrimSpace(m.HeaderLines))
		if err != nil || t.skip < 0 || t.skip > 1000 {
			return nil, a.fault("ignoreHeaderLines=%q: a count of lines is needed", m.HeaderLines)
		}
	}
	if len(m.Locations) == 0 {
		return nil, a.fault("a table has no location")
	}
	for _, location := range m.Locations {
		file, err := a.locate(location)
		if err != nil {
			return nil, err
		}
		instead := ""
		if file == "" {
			if instead = a.only(m); instead == "" || idTerm != "id" {
				return nil, a.fault("the table %q is not in the archive", location)
			}
			file = instead
		}
		if err := t.addPart(a.h.source(file)); err != nil {
			return nil, err
		}
		if instead != "" {
			t.say(ruleArchive, label.Warning, 0, "meta.xml names the table %q, which is not here; %s, the only table here, is read for it", location, instead)
		}
	}
	if err := a.describe(t, m, idTerm); err != nil {
		return t, err
	}
	return t, t.sayFound()
}

// only returns the one table that lies beside meta.xml, "" if there are more
// or none.
func (a *archive) only(m *metaTable) string {
	found := ""
	for _, n := range a.names {
		if path.Dir(n) == a.dir && isTable(n) {
			if found != "" || len(m.Locations) != 1 {
				return ""
			}
			found = n
		}
	}
	return found
}

// describe gives the table the columns that meta.xml says it has.
func (a *archive) describe(t *Table, m *metaTable, idTerm string) error {
	heading, line, err := a.firstCells(t)
	if err != nil {
		return err
	}
	t.width = len(heading)
	t.columns = make([]Column, t.width)
	for i := range t.columns {
		t.columns[i] = Column{Index: i, from: i, Origin: label.Origin{File: t.parts[0].src.Name(), Line: line}}
		if t.skip > 0 {
			t.columns[i].Heading = heading[i].Text
			t.columns[i].Origin.Column = heading[i].Column
		}
	}
	id := m.ID
	for _, c := range []*metaField{m.CoreID, m.CoreID2} {
		if id == nil {
			id = c
		}
	}
	fields := slices.Clone(m.Fields)
	if id != nil && id.Index != "" {
		fields = append(fields, metaField{Index: id.Index, Term: idTerm})
	}
	taken := map[string]bool{}
	for _, f := range fields {
		if err := a.column(t, f, taken); err != nil {
			return err
		}
	}
	a.remarks(t, m, heading, line)
	t.mapTerms()
	return nil
}

// firstCells reads the row of headings, or the first record where there are
// none.
func (a *archive) firstCells(t *Table) ([]Cell, int, error) {
	skip := t.skip
	t.skip = max(0, skip-1)
	cells, line, _, err := t.firstRow(t.o.Comma)
	t.skip = skip
	return cells, line, err
}

// column adds one field of meta.xml.
func (a *archive) column(t *Table, f metaField, taken map[string]bool) error {
	term, known := termOf(f.Term)
	if term == "" {
		return a.fault("a field has no term")
	}
	if taken[term] && term != "id" && term != "coreid" {
		t.say(ruleArchive, label.Error, 0, "meta.xml gives the term %s to two columns: remove one of them", term)
	}
	taken[term] = true
	if f.Index == "" {
		t.columns = append(t.columns, Column{Heading: f.Term, Term: term, Known: known, Index: len(t.columns), from: -1, value: f.Default,
			Origin: label.Origin{File: a.h.source(a.meta).Name()}})
		t.mapped = true
		return nil
	}
	i, err := strconv.Atoi(strings.TrimSpace(f.Index))
	if err != nil || i < 0 {
		return a.fault("index=%q of %s: a count from 0 is needed", f.Index, term)
	}
	if i >= t.width {
		if t.width > 0 {
			t.say(ruleArchive, label.Error, 0, "meta.xml has %s in column %d, but the table has %d columns: is its fieldsTerminatedBy right?", term, i+1, t.width)
		}
		return nil
	}
	c := &t.columns[i]
	if c.Term != "" { // a column of two terms
		second := *c
		second.Index, second.from = len(t.columns), i
		t.columns = append(t.columns, second)
		c = &t.columns[len(t.columns)-1]
		t.mapped = true
	}
	c.Term, c.Known, c.value = term, known, f.Default
	t.mapped = t.mapped || f.Default != ""
	return nil
}

// termOf returns the term of an address, an obsolete one as the term of now.
func termOf(address string) (term string, known bool) {
	term = barePrefixed(strings.TrimSpace(address))
	m, ok := vocabulary().meanings[headingKey(term)]
	switch {
	case !ok:
		return term, false
	case m.own != "" && strings.EqualFold(m.own, term) && !strings.Contains(address, "tdwg.org/dwc"):
		return m.own, true
	case m.plain:
		return term, false
	}
	return m.terms[0], true
}

// remarks says where the description and the file do not fit together.
func (a *archive) remarks(t *Table, m *metaTable, heading []Cell, line int) {
	if t.width == 0 {
		t.say(ruleEmpty, label.Error, 1, "the file is empty: it has no records")
		return
	}
	nameless, headed := 0, 0
	for i := range t.columns[:t.width] {
		c := &t.columns[i]
		if c.Term == "" {
			nameless++
			continue
		}
		r := vocabulary().read(heading[i].Text)
		if r.meaning == nil || r.plain {
			continue
		}
		if slices.Contains(r.terms, c.Term) || c.Term == "identifier" && strings.HasSuffix(r.terms[0], "ID") { // of what the row is
			headed++
		} else if t.skip > 0 && c.Term != "id" && c.Term != "coreid" {
			t.say(ruleArchive, label.Warning, line, "meta.xml has %s in column %d, but its heading is %q: which of the two is right?", c.Term, i+1, heading[i].Text)
		}
	}
	if t.skip == 0 && headed > 1 && headed*2 > t.width {
		t.say(ruleArchive, label.Warning, line, "meta.xml says that there is no heading row, but the first record reads like one: is ignoreHeaderLines right?")
	}
	if nameless > 0 {
		t.say(ruleArchive, label.Note, line, "%s not described in meta.xml and not read", plural(nameless, "one column is", "%d columns are"))
	}
	if m.DateFormat != "" {
		t.say(ruleArchive, label.Note, 0, "meta.xml says that dates are written %q: that is not used, dates are read as they stand", m.DateFormat)
	}
}
