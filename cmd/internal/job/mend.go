package job

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check/bdq"
	"cornerslip/label/table"
)

// A Repair is one cell mended: the only reading its text has.
type Repair struct {
	label.Origin
	Rule     string // the data quality test, "spaces-outside" or "spaces-doubled"
	From, To string
}

// String returns the repair as one line of a report.
func (r Repair) String() string {
	return fmt.Sprintf("%s: %s %q: now %q (%s)", r.Origin, r.Term, r.From, r.To, r.Rule)
}

// The repairs of white space before and after a cell's text, and of spaces
// typed twice within it.
const (
	spacesOutside = "spaces-outside"
	spacesDoubled = "spaces-doubled"
)

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
// encoding the table is in, rows that are not plain ASCII.
func (j *Job) Repairs(t *Table, each func(Repair) error) ([]table.Edit, error) {
	amend := bdq.Amender()
	var edits []table.Edit
	uncertain := t.Found() != ""
	for row, err := range t.Rows() {
		if err != nil {
			return nil, err
		}
		if damaged(row) || uncertain && !ascii(row) {
			continue
		}
		for _, r := range repairsOf(row, amend) {
			edits = append(edits, table.Edit{Row: row.N, Column: row.Column(r.Term), Text: r.To})
			if err := each(r); err != nil {
				return nil, err
			}
		}
	}
	return edits, nil
}

// repairsOf returns the repairs of a row in the order of the columns.
func repairsOf(row *table.Row, amend func(*table.Row) []bdq.Amendment) []Repair {
	byTest := map[int]bdq.Amendment{}
	for _, a := range amend(row) {
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

// damaged reports whether the reading itself found the row wrong: its cells may
// stand under other headings than they were meant for.
func damaged(row *table.Row) bool {
	if row.Astray || row.Aside || len(row.Cells) != len(row.Table().Columns()) {
		return true
	}
	for _, f := range row.Findings {
		if f.Severity == label.Error {
			return true
		}
	}
	return false
}

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
