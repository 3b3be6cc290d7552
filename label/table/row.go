package table

import "cornerslip/label"

// A Cell is one cell of a row.
type Cell struct {
	// Text is the cell decoded, without enclosing quotes. It is valid UTF-8:
	// bytes that cannot be decoded are U+FFFD and have a finding in the row.
	Text string
	// Line and Column are where the cell starts, at its quote if it has one:
	// the physical line, and code points of the decoded line, from 1.
	Line, Column int
	// Start and End bound the cell's bytes in the file, quotes included. Both
	// are 0 for a default value, which stands in no cell.
	Start, End int64
	// Quoted is true if the cell is enclosed in quotes.
	Quoted bool
}

// A Row is one record.
type Row struct {
	N     int  // records from 1
	Line  int  // physical line of its first cell, from 1
	Empty bool // no cell holds anything but blanks
	// Cells are the cells as they stand in the file, by column; a ragged row
	// has fewer or more than the table has columns.
	Cells []Cell
	// Findings are what the reading itself has to say of this row: its cell
	// count, its quotes, damaged text.
	Findings []label.Finding

	table *Table
}

// Get returns the cell of a Darwin Core term; the zero Cell if the table has
// no such column or the row is too short to have that cell.
func (r *Row) Get(term string) Cell { return Cell{} }

// Origin returns the place of a term's cell; the row's own place, with the
// term, if there is no such cell.
func (r *Row) Origin(term string) label.Origin { return label.Origin{} }

// Term returns the term of cell i in this row; "" beyond the last column.
func (r *Row) Term(i int) string { return "" }

// Table returns the table that the row is of.
func (r *Row) Table() *Table { return r.table }
