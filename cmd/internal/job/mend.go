package job

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check/bdq"
	"cornerslip/label/date"
	"cornerslip/label/table"
)

// A Repair is one cell mended: the only reading its text has.
type Repair struct {
	label.Origin
	Rule     string // the data quality test, "spaces-outside", "spaces-doubled" or "dates"
	From, To string
}

// String returns the repair as one line of a report.
func (r Repair) String() string {
	return fmt.Sprintf("%s: %s %q: now %q (%s)", r.Origin, r.Term, r.From, r.To, r.why())
}

// why says in plain words what a repair does.
func (r Repair) why() string {
	switch r.Rule {
	case spacesOutside:
		return "spaces before or after the text"
	case spacesDoubled:
		return "two spaces where one is meant"
	case datesSaid:
		return "the date as ISO 8601 has it, read as --dates says"
	}
	switch r.Term {
	case "eventDate", "dateIdentified":
		return "the date as ISO 8601 has it"
	case "countryCode":
		return "the country's code of two letters"
	case "month", "day":
		return "the " + r.Term + " as a number"
	case "license":
		return "the licence by its address"
	}
	return "the standard's own word"
}

// The repairs of white space before and after a cell's text, of spaces typed twice
// within it, and of dates that have one reading because the user says how they
// are written.
const (
	spacesOutside = "spaces-outside"
	spacesDoubled = "spaces-doubled"
	datesSaid     = "dates"
)

// Mending is what is repaired, and what is left and why.
type Mending struct {
	Edits []table.Edit
	// Figures counts dates in figures that have one reading and stay, since others
	// of their column have two: they are what tells how those are to be read.
	Figures int
	// Uncertain counts rows that stay since nobody said what encoding the table is
	// in, Astray those whose cells may stand under other headings.
	Uncertain, Astray int
	// Damaged counts cells that stay since letters in them are damaged.
	Damaged int
}

// proseTerms are the columns in which two spaces mean no more than one: words,
// names and people. In a verbatim column the standard wants the text as it
// stands on the old label or in the field book, down to its spaces (Darwin
// Core, verbatimLocality: "the original textual description"), fieldNotes and
// previousIdentifications quote it too, and permits and restrictions are printed
// as they were issued; numbers and codes are compared letter by letter with what
// is written on sheets; and a column that is no term may hold anything. Those
// stay.
var proseTerms = termSet(`recordedBy coCollectors identifiedBy determinerInstitution scientificName scientificNameAuthorship family
	country stateProvince county municipality islandGroup island waterBody higherGeography locality locationRemarks
	habitat associatedTaxa plantDescription sex lifeStage reproductiveCondition organismRemarks occurrenceRemarks eventRemarks
	materialEntityRemarks identificationRemarks vernacularName uses wildOrigin project projectTitle fundingAttribution preparations`)

// Repairs reads the table and finds the repairs that have one reading: the
// amendments of the data quality tests that infer nothing, white space at the
// ends of cells, and doubled spaces within prose. No empty cell is filled; no
// datum and no uncertainty is ever made up, and no coordinate is moved. Rows
// with an error of reading are left as they are, and where it is not certain what
// encoding the table is in, rows that are not plain ASCII. So are the dates in
// figures of a column in which some have two readings.
func (j *Job) Repairs(t *Table, each func(Repair) error) (Mending, error) {
	var m Mending
	var all []Repair
	mend := mender{amend: bdq.Amender(), hints: dateHints(j.House)}
	uncertain := t.Found() != ""
	for row, err := range t.Rows() {
		switch {
		case err != nil:
			return m, err
		case shifted(row):
			if !row.Aside {
				m.Astray++
			}
		case uncertain && !ascii(row):
			m.Uncertain++
		default:
			hurt := damagedCells(row)
			m.Damaged += len(hurt)
			for _, r := range mend.row(row) {
				if hurt[row.Column(r.Term)] {
					continue
				}
				m.Edits = append(m.Edits, table.Edit{Row: row.N, Column: row.Column(r.Term), Text: r.To})
				all = append(all, r)
			}
		}
	}
	kept := m.Edits[:0]
	for i, r := range all {
		if mend.twoWays[r.Term] && inFigures(r.From) {
			m.Figures++
			continue
		}
		kept = append(kept, m.Edits[i])
		if err := each(r); err != nil {
			return m, err
		}
	}
	m.Edits = kept
	return m, nil
}

// mender finds the repairs of rows.
type mender struct {
	amend func(*table.Row) []bdq.Amendment
	hints date.Hints
	// twoWays has the columns in which a date in figures can have the day or the
	// month first.
	twoWays map[string]bool
}

// row returns the repairs of a row in the order of the columns.
func (m *mender) row(row *table.Row) []Repair {
	var said []bdq.Amendment
	for _, term := range []string{"eventDate", "dateIdentified"} {
		text := row.Text(term)
		hints := m.hints
		if hints.Order == date.UnknownOrder && row.Table().DayFirst(term, text) {
			hints.Order = date.DayFirst
		}
		if inFigures(text) {
			if r := date.Read(strings.TrimSpace(text), hints); r.Status == date.Ambiguous && r.Doubt&date.OrderDoubt != 0 {
				if m.twoWays == nil {
					m.twoWays = map[string]bool{}
				}
				m.twoWays[term] = true
			}
		}
		if hints == (date.Hints{}) {
			continue
		}
		if iso, ok := bdq.ISO(text, hints); ok && (term != "eventDate" || bdq.Agrees(row, iso)) {
			if _, plain := bdq.ISO(text, date.Hints{}); !plain {
				said = append(said, bdq.Amendment{Test: datesSaid, Term: term, From: text, To: iso})
			}
		}
	}
	return repairsOf(row, append(said, m.amend(row)...))
}

// inFigures reports whether a date is written in figures that do not begin with
// the year.
func inFigures(text string) bool {
	text = strings.TrimSpace(text)
	if len(text) < 6 || strings.Trim(text, "0123456789/.- ") != "" {
		return false
	}
	n := strings.IndexAny(text, "/.- ")
	return n == 1 || n == 2
}

// repairsOf returns the repairs of a row in the order of the columns: what the
// tests amend, and spaces.
func repairsOf(row *table.Row, amended []bdq.Amendment) []Repair {
	byTest := map[int]bdq.Amendment{}
	for _, a := range amended {
		if col := row.Column(a.Term); col >= 0 {
			if _, twice := byTest[col]; !twice {
				byTest[col] = a
			}
		}
	}
	var all []Repair
	for col, cell := range row.Cells {
		if row.Column(row.Term(col)) != col || cell.Line == 0 {
			continue // another column has the term, or no cell of the file has it
		}
		if a, ok := byTest[col]; ok {
			all = append(all, Repair{row.Origin(a.Term), a.Test, cell.Text, a.To})
			continue
		}
		if text, rule := spaced(row.Term(col), cell.Text); text != cell.Text {
			all = append(all, Repair{row.Origin(row.Term(col)), rule, cell.Text, text})
		}
	}
	return all
}

// spaced returns a cell's text without the spaces that mean nothing, and what
// such a repair is called. Blanks alone may mean something to the house: that
// cell stays. So do the spaces within a cell of several lines, which may be set
// in on purpose.
func spaced(term, cell string) (text, rule string) {
	text = strings.TrimFunc(cell, unicode.IsSpace)
	if text == "" {
		return cell, ""
	}
	if !strings.Contains(text, "  ") || !proseTerms[term] || strings.ContainsAny(text, "\r\n") {
		return text, spacesOutside
	}
	var b strings.Builder
	for i := range len(text) {
		if text[i] != ' ' || text[i-1] != ' ' {
			b.WriteByte(text[i])
		}
	}
	return b.String(), spacesDoubled
}

// shifted reports whether the reading itself found the row wrong: its cells may
// stand under other headings than they were meant for.
func shifted(row *table.Row) bool {
	if row.Astray || row.Aside || len(row.Cells) != len(row.Table().Columns()) {
		return true
	}
	return slices.ContainsFunc(row.Findings, func(f label.Finding) bool { return f.Severity == label.Error && !ofLetters(f) })
}

// damagedCells returns the columns of cells whose letters are damaged: they wait for
// somebody to say what was meant.
func damagedCells(row *table.Row) map[int]bool {
	var hurt map[int]bool
	for _, f := range row.Findings {
		if col := row.Column(f.Term); f.Severity == label.Error && ofLetters(f) && col >= 0 {
			if hurt == nil {
				hurt = map[int]bool{}
			}
			hurt[col] = true
		}
	}
	return hurt
}

// ofLetters reports whether a finding of the reading is of one cell's letters.
func ofLetters(f label.Finding) bool { return strings.HasPrefix(f.Rule, "text-") && f.Column > 0 }

// ascii reports whether a row reads the same in every encoding.
func ascii(row *table.Row) bool {
	return !slices.ContainsFunc(row.Cells, func(c table.Cell) bool {
		return strings.IndexFunc(c.Text, func(r rune) bool { return r >= 0x80 }) >= 0
	})
}

// Mend writes the table with the edits made; every other byte stays. toUTF8
// changes the encoding to UTF-8 without a byte-order mark.
func (j *Job) Mend(w io.Writer, t *Table, edits []table.Edit, toUTF8 bool) error {
	if toUTF8 {
		return table.RewriteUTF8(w, t.Table, edits)
	}
	return table.Rewrite(w, t.Table, edits)
}
