package job

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check/bdq"
	"cornerslip/label/table"
)

// A Repair is one cell mended: the only reading its text has.
type Repair struct {
	label.Origin
	Rule     string // the data quality test, or "spaces-outside"
	From, To string
}

// String returns the repair as one line of a report.
func (r Repair) String() string {
	return fmt.Sprintf("%s: %s %q: now %q (%s)", r.Origin, r.Term, r.From, r.To, r.Rule)
}

// spacesOutside is the repair of white space before and after a cell's text.
const spacesOutside = "spaces-outside"

// Repairs reads the table and finds the repairs that have one reading: the
// amendments of the data quality tests that infer nothing, and white space at
// the ends of cells. No empty cell is filled; no datum and no uncertainty is
// ever made up. Rows with an error of reading are left as they are.
func (j *Job) Repairs(t *Table, each func(Repair) error) ([]table.Edit, error) {
	amend := bdq.Amender()
	var edits []table.Edit
	for row, err := range t.Rows() {
		if err != nil {
			return nil, err
		}
		if damaged(row) {
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
		if row.Column(row.Term(col)) != col {
			continue // another column has the term
		}
		if a, ok := byTest[col]; ok {
			all = append(all, Repair{row.Origin(a.Term), a.Test, cell.Text, a.To})
			continue
		}
		// Blanks alone may mean something to the house: that cell stays.
		if text := strings.TrimFunc(cell.Text, unicode.IsSpace); text != cell.Text && text != "" {
			all = append(all, Repair{row.Origin(row.Term(col)), spacesOutside, cell.Text, text})
		}
	}
	return all
}

// damaged reports whether the reading itself found the row wrong: its cells may
// stand under other headings than they were meant for.
func damaged(row *table.Row) bool {
	if len(row.Cells) != len(row.Table().Columns()) {
		return true
	}
	for _, f := range row.Findings {
		if f.Severity == label.Error {
			return true
		}
	}
	return false
}

// Mend writes the table with the edits made; every other byte stays. toUTF8
// changes the encoding to UTF-8 without a byte-order mark.
func (j *Job) Mend(w io.Writer, t *Table, edits []table.Edit, toUTF8 bool) error {
	if toUTF8 {
		return table.RewriteUTF8(w, t.Table, edits)
	}
	return table.Rewrite(w, t.Table, edits)
}
