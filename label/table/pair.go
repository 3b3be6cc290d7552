package table

import (
	"fmt"
	"iter"
	"slices"
	"strings"

	"cornerslip/label"
)

// pairs puts rows together that a line end inside a cell has cut in two: what is
// wrong is said at the first half, and the second is no row of its own. A row
// with too few cells is kept back until the next is seen.
func pairs(rows iter.Seq2[*Row, error]) iter.Seq2[*Row, error] {
	return func(yield func(*Row, error) bool) {
		var held *Row
		for r, err := range rows {
			if held != nil {
				if err == nil {
					held.completedBy(r)
				}
				if !yield(held, nil) {
					return
				}
				held = nil
			}
			if err == nil && r.lacks() {
				held = r
				continue
			}
			if !yield(r, err) {
				return
			}
		}
		if held != nil {
			yield(held, nil)
		}
	}
}

// lacks reports whether the row has too few cells.
func (r *Row) lacks() bool {
	return !r.Empty && !r.Aside && len(r.Cells) < r.table.width && len(r.Findings) > 0 && r.raggedAt() >= 0
}

// raggedAt returns the finding that says how many cells the row has, -1 if it
// has the right number.
func (r *Row) raggedAt() int {
	return slices.IndexFunc(r.Findings, func(f label.Finding) bool { return f.Rule == ruleRagged.Name && f.Severity == label.Error })
}

// completedBy joins the row after this one to it where they make one.
func (r *Row) completedBy(next *Row) {
	if !next.lacks() || len(r.Cells)+len(next.Cells)-1 != r.table.width {
		return
	}
	last, first := &r.Cells[len(r.Cells)-1], &next.Cells[0]
	if isBlank(last.Text) && isBlank(first.Text) {
		return
	}
	f := &r.Findings[r.raggedAt()]
	f.Line, f.Column, f.Term = last.Line, last.Column, r.Term(len(r.Cells)-1)
	f.Value = last.Text + "\n" + first.Text
	f.Message = fmt.Sprintf("a line end cuts the cell, and with it the row, in two (lines %d and %d): take it out, or put the cell in quotes", r.Line, next.Line)
	f.Suggest = strings.TrimSpace(last.Text) + " " + strings.TrimSpace(first.Text)
	if last.Text != "" && strings.HasSuffix(last.Text, "-") {
		f.Suggest = "" // a hyphen may be the word's own
	}
	next.Findings, next.Aside, next.Empty = nil, true, true
}
