package job

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"cornerslip/label/table"
)

// TableOptions say how a table is written.
type TableOptions = table.Options

// OpenTable opens a table: a file, a Darwin Core archive, or standard input
// for "-". The function returned lets go of it.
func OpenTable(path string, stdin io.Reader, only *Selection, o TableOptions) (*Table, func(), error) {
	release := func() {}
	if path == "-" {
		src, remove, err := table.Spool("standard input", stdin, "")
		if err != nil {
			return nil, nil, fmt.Errorf("standard input cannot be read: %w", err)
		}
		release = func() { remove() } // a temporary file that stays does no harm
		t, err := table.Open(src, o)
		if err != nil {
			release()
			return nil, nil, err
		}
		return &Table{Table: t, Only: only}, release, nil
	}
	d, err := table.OpenDataset(path, o)
	if _, none := os.Stat(path); errors.Is(err, fs.ErrNotExist) && errors.Is(none, fs.ErrNotExist) {
		return nil, nil, fmt.Errorf("%s: there is no such file; check the name and the folder", path)
	}
	if err != nil {
		return nil, nil, err
	}
	return &Table{Table: d.Core, Only: only, dataset: d}, release, nil
}
