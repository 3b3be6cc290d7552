package table

import "errors"

// A Dataset is a core table and the tables beside it, as a Darwin Core archive
// holds them. A plain file is a dataset with a core alone.
type Dataset struct {
	Core  *Table
	Sides []Side
}

// A Side is a table beside the core, such as identifications; its rows name
// the core row they belong to in the column of the term "coreid".
type Side struct {
	// RowType is what a row is, the last part of its address:
	// "Identification".
	RowType string
	*Table
}

// OpenDataset opens a plain table, or a Darwin Core archive: a zip file or a
// folder with meta.xml.
func OpenDataset(path string, o Options) (*Dataset, error) { return nil, errors.New("not yet") }
