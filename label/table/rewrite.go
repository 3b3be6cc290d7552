package table

import (
	"errors"
	"io"
)

// An Edit gives one cell a new text.
type Edit struct {
	// Row counts records from 1; 0 is the heading row.
	Row int
	// Column counts columns from 0. The number of columns, or more, is a new
	// column at the end of every row: an edit of row 0 gives it its heading.
	Column int
	Text   string
}

// Rewrite writes the table's file to dst with the edits made. Every byte
// outside an edited cell stays. A cell is enclosed in quotes if it was before
// or must be, and keeps the file's encoding; a letter that the encoding lacks
// is an error that names it. The table must not have changed since it was read.
func Rewrite(dst io.Writer, t *Table, edits []Edit) error { return errors.New("not yet") }

// RewriteUTF8 is Rewrite into UTF-8 without a byte-order mark, whatever the
// file's own encoding.
func RewriteUTF8(dst io.Writer, t *Table, edits []Edit) error { return errors.New("not yet") }
