package table

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"cornerslip/label"
)

// A Dataset is a core table and the tables beside it, as a Darwin Core archive
// holds them. A plain file is a dataset with a core alone.
type Dataset struct {
	Core  *Table
	Sides []Side
}

// A Side is a table beside the core, such as identifications; its rows name
// the core row they belong to in the column of the term "coreid". The core has
// its rows' names in the column of the term "id".
type Side struct {
	// RowType is what a row is, the last part of its address:
	// "Identification".
	RowType string
	*Table
}

// Side returns the first table beside the core whose rows are of a type, nil
// if there is none.
func (d *Dataset) Side(rowType string) *Table {
	for _, s := range d.Sides {
		if strings.EqualFold(s.RowType, rowType) {
			return s.Table
		}
	}
	return nil
}

// Findings returns the findings of all tables' heads.
func (d *Dataset) Findings() []label.Finding {
	all := slices.Clone(d.Core.Findings())
	for _, s := range d.Sides {
		all = append(all, s.Findings()...)
	}
	return all
}

// OpenDataset opens a plain table, or a Darwin Core archive: a zip file or a
// folder with meta.xml. A zip file of one table without meta.xml is that table.
// What Options say of encoding and commas outranks meta.xml.
func OpenDataset(name string, o Options) (*Dataset, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if info.IsDir() {
		return openArchive(&folder{name}, o)
	}
	head, err := headOf(File(name))
	if err != nil {
		return nil, err
	}
	if bytes.HasPrefix(head, []byte("PK\x03\x04")) {
		z, err := openZip(name)
		if err != nil {
			return nil, err
		}
		return openArchive(z, o)
	}
	t, err := Open(File(name), o)
	if err != nil {
		return nil, err
	}
	return &Dataset{Core: t}, nil
}

// A holder is what an archive's files lie in.
type holder interface {
	name() string
	files() ([]string, error) // slash-separated paths
	source(file string) Source
}

// A folder holds an unpacked archive.
type folder struct{ path string }

func (f *folder) name() string { return f.path }

func (f *folder) files() ([]string, error) {
	var names []string
	err := fs.WalkDir(os.DirFS(f.path), ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.Count(p, "/") >= 2 {
			return fs.SkipDir
		}
		if !d.IsDir() {
			names = append(names, p)
		}
		if len(names) > maxFiles {
			return fmt.Errorf("%s: more than %d files lie here: is this the folder of an archive?", f.path, maxFiles)
		}
		return nil
	})
	return names, err
}

func (f *folder) source(file string) Source {
	return File(filepath.Join(f.path, filepath.FromSlash(file)))
}

// Bounds of archives. A table of text deflates to a tenth or so; what unpacks
// to more than two hundred times its size is no table.
const (
	maxFiles     = 10000
	maxMeta      = 4 << 20
	maxInflation = 200
	freeInflated = 16 << 20 // not counted: small files may be all blanks
)

// A zipped holds a packed archive.
type zipped struct {
	path  string
	size  int64
	names []string
}

func openZip(name string) (*zipped, error) {
	r, err := zip.OpenReader(name)
	if err != nil {
		return nil, &Error{Origin: label.Origin{File: name}, Message: "the zip file cannot be opened", Err: err}
	}
	defer r.Close()
	z := &zipped{path: name}
	if info, err := os.Stat(name); err == nil {
		z.size = info.Size()
	}
	if len(r.File) > maxFiles {
		return nil, &Error{Origin: label.Origin{File: name}, Message: fmt.Sprintf("the zip file holds more than %d files: it is no Darwin Core archive", maxFiles)}
	}
	for _, f := range r.File {
		if !f.FileInfo().IsDir() {
			z.names = append(z.names, f.Name)
		}
	}
	return z, nil
}

func (z *zipped) name() string             { return z.path }
func (z *zipped) files() ([]string, error) { return z.names, nil }

func (z *zipped) source(file string) Source {
	shown := z.path + "/" + file
	return Source{shown, func() (io.ReadCloser, error) {
		r, err := zip.OpenReader(z.path)
		if err != nil {
			return nil, &Error{Origin: label.Origin{File: z.path}, Message: "the zip file cannot be opened", Err: err}
		}
		for _, f := range r.File {
			if f.Name != file {
				continue
			}
			if f.Flags&1 != 0 {
				r.Close()
				return nil, &Error{Origin: label.Origin{File: shown}, Message: "is packed with a password: unpack it first"}
			}
			body, err := f.Open()
			if err != nil {
				r.Close()
				return nil, &Error{Origin: label.Origin{File: shown}, Message: "cannot be unpacked", Err: err}
			}
			return &inflated{body: body, archive: r, name: shown, left: inflationLimit(f, z.size)}, nil
		}
		r.Close()
		return nil, &Error{Origin: label.Origin{File: shown}, Message: "is not in the zip file"}
	}}
}

// inflationLimit is how many bytes a file may unpack to. What the zip file
// says of its packed size counts only as far as the zip file reaches.
func inflationLimit(f *zip.File, size int64) int64 {
	return int64(min(f.CompressedSize64, uint64(size)))*maxInflation + freeInflated
}

// An inflated reads a file of a zip file and stops a file that unpacks without
// end.
type inflated struct {
	body    io.ReadCloser
	archive io.Closer
	name    string
	left    int64
}

func (r *inflated) Read(p []byte) (int, error) {
	n, err := r.body.Read(p)
	if r.left -= int64(n); r.left < 0 {
		return 0, fmt.Errorf("it unpacks to more than %d times its size: it is no table", maxInflation)
	}
	return n, err
}

func (r *inflated) Close() error { return errors.Join(r.body.Close(), r.archive.Close()) }

// findMeta returns the path of meta.xml, the one nearest to the top.
func findMeta(names []string) string {
	best := ""
	for _, n := range names {
		if strings.EqualFold(path.Base(n), "meta.xml") && (best == "" || strings.Count(n, "/") < strings.Count(best, "/")) {
			best = n
		}
	}
	return best
}

// isTable reports whether a file's name is that of a table.
func isTable(name string) bool {
	base := path.Base(name)
	switch strings.ToLower(path.Ext(name)) {
	case ".csv", ".tsv", ".tab", ".txt":
		return !strings.HasPrefix(base, ".") && !strings.HasPrefix(name, "__MACOSX/")
	}
	return false
}

// openArchive opens the tables that meta.xml describes.
func openArchive(h holder, o Options) (*Dataset, error) {
	names, err := h.files()
	if err != nil {
		return nil, err
	}
	at := findMeta(names)
	if at == "" {
		return openLone(h, names, o)
	}
	m, err := readMeta(h.source(at))
	if err != nil {
		return nil, err
	}
	a := &archive{h: h, dir: path.Dir(at), names: names, meta: at, o: o}
	d := &Dataset{}
	if d.Core, err = a.open(m.Core, "id"); err != nil {
		return nil, err
	}
	for i := range m.Extensions {
		t, err := a.open(&m.Extensions[i], "coreid")
		if err != nil {
			return nil, err
		}
		d.Sides = append(d.Sides, Side{RowType: barePrefixed(m.Extensions[i].RowType), Table: t})
	}
	return d, d.settleCore(m)
}

// settleCore sees to it that the core's rows are specimens: those of a core of
// events lie beside it.
func (d *Dataset) settleCore(m *metaArchive) error {
	rowType := barePrefixed(m.Core.RowType)
	specimens := d.Side("Occurrence")
	switch rowType {
	case "Event":
		if specimens == nil {
			break
		}
		if err := joinEvents(specimens, d.Core); err != nil {
			return err
		}
		var apart []string
		for _, s := range d.Sides {
			if s.Table != specimens {
				apart = append(apart, s.RowType)
			}
		}
		specimens.say(ruleArchive, label.Note, 0, "the records are the specimens of %s, each with day and place of its event in %s", specimens.Source().Name(), path.Base(d.Core.Source().Name()))
		if len(apart) > 0 {
			specimens.say(ruleArchive, label.Note, 0, "tables that speak of events, not of specimens, are not read: %s", strings.Join(apart, ", "))
		}
		d.Core, d.Sides = specimens, nil
		return nil
	case "Taxon", "Location":
	default:
		return nil
	}
	d.Core.say(ruleArchive, label.Warning, 0, "the rows of the core are of the type %s, not Occurrence: each is read as one specimen", rowType)
	return nil
}

// openLone opens the one table of a holder without meta.xml.
func openLone(h holder, names []string, o Options) (*Dataset, error) {
	if _, ok := h.(*folder); ok {
		return nil, &Error{Origin: label.Origin{File: h.name()}, Message: "the folder has no meta.xml and so is no Darwin Core archive: name the table itself"}
	}
	var tables []string
	if isWorkbook(names) {
		t, err := openWorkbook(File(h.name()), o)
		if err != nil {
			return nil, err
		}
		return &Dataset{Core: t}, nil
	}
	for _, n := range names {
		switch {
		case strings.HasPrefix(n, "xl/"), n == "content.xml", strings.HasPrefix(n, "word/"):
			return nil, &Error{Origin: label.Origin{File: h.name()}, Message: "this is a spreadsheet or document, not text: save the table as CSV in UTF-8"}
		case isTable(n):
			tables = append(tables, n)
		}
	}
	if len(tables) != 1 {
		return nil, &Error{Origin: label.Origin{File: h.name()}, Message: fmt.Sprintf("the zip file has no meta.xml and %s: it is no Darwin Core archive",
			plural(len(tables), "one table", "%d tables"))}
	}
	t, err := Open(h.source(tables[0]), o)
	if err != nil {
		return nil, err
	}
	return &Dataset{Core: t}, nil
}
