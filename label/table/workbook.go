package table

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"cornerslip/label"
)

// Bounds of workbooks, which are read into memory: the packed file, the file
// unpacked, and one worksheet. Some forty thousand records of twenty columns
// fill a worksheet of the last size; to read it takes 25 times as much memory.
const (
	maxWorkbook  = 128 << 20
	maxUnpacked  = 1 << 30
	maxWorksheet = 48 << 20

	maxBlank = 10000 // cells that show nothing and are looked at for formulas
)

// A worksheet is a worksheet of an Office Open XML workbook (ISO/IEC 29500)
// written as comma-separated text, a record for each of its rows.
type worksheet struct {
	name string
	text []byte
	rows []int32 // the worksheet's row of each physical line of text

	findings []label.Finding
}

// isWorkbook reports whether the files of a zip file are those of a workbook.
func isWorkbook(names []string) bool {
	return slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(strings.ReplaceAll(n, `\`, "/"), "xl/workbook.xml") })
}

// openWorkbook opens the worksheet of a workbook that holds the table. What
// Options say of encoding, commas and quotes is for text and says nothing of
// it.
func openWorkbook(src Source, o Options) (*Table, error) {
	packed, err := readPacked(src)
	if err != nil {
		return nil, err
	}
	w, err := readWorkbook(src.Name(), packed, o.Worksheet)
	if err != nil {
		return nil, err
	}
	t := &Table{heading: true, sheet: w, findings: w.findings}
	t.o = Options{MaxCell: o.MaxCell, MaxRow: o.MaxRow, Comma: ','}
	if err := t.o.check(); err != nil {
		return nil, err
	}
	t.parts = []part{{src: Bytes(src.Name(), w.text), charset: utf8Charset}}
	return t, t.readHeading()
}

func readPacked(src Source) ([]byte, error) {
	r, err := src.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	packed, err := io.ReadAll(io.LimitReader(r, maxWorkbook+1))
	if err != nil {
		return nil, &Error{Origin: label.Origin{File: src.Name()}, Message: "cannot be read", Err: err}
	}
	if len(packed) > maxWorkbook {
		return nil, tooLarge(src.Name())
	}
	return packed, nil
}

func tooLarge(name string) error {
	return &Error{Origin: label.Origin{File: name}, Message: "the workbook is too large to be read as it is: save the worksheet as CSV in UTF-8"}
}

// isPackedWorkbook reports whether a file's bytes are a workbook.
func isPackedWorkbook(src Source) bool {
	packed, err := readPacked(src)
	if err != nil {
		return false
	}
	z, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		return false
	}
	var names []string
	for _, f := range z.File {
		names = append(names, f.Name)
	}
	return isWorkbook(names)
}

// readWorkbook reads the worksheet named, or the one that holds the table.
func readWorkbook(file string, packed []byte, name string) (*worksheet, error) {
	fault := func(message string, err error) error {
		return &Error{Origin: label.Origin{File: file}, Message: message, Err: err}
	}
	if z, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed))); err == nil {
		for _, f := range z.File {
			if strings.HasPrefix(f.Name, "xl/worksheets/") && f.UncompressedSize64 > maxWorksheet {
				return nil, tooLarge(file)
			}
			// The library takes these sizes on trust.
			if f.UncompressedSize64 > f.CompressedSize64*maxInflation+freeInflated {
				return nil, fault(fmt.Sprintf("%s unpacks to more than %d times its size: it is no table", f.Name, maxInflation), nil)
			}
		}
	}
	f, err := excelize.OpenReader(bytes.NewReader(packed), excelize.Options{UnzipSizeLimit: maxUnpacked, UnzipXMLSizeLimit: maxUnpacked, RawCellValue: true})
	if err != nil {
		return nil, fault("the workbook cannot be opened: save the worksheet as CSV in UTF-8", err)
	}
	defer f.Close()
	sheets, err := filledSheets(f)
	if err != nil {
		return nil, fault("the workbook cannot be read: save the worksheet as CSV in UTF-8", err)
	}
	at, err := chooseSheet(sheets, name)
	if err != nil {
		return nil, fault(err.Error(), nil)
	}
	w := &worksheet{name: sheets[at].name}
	if err := w.write(f, &sheets[at], file); err != nil {
		return nil, fault(fmt.Sprintf("the worksheet %q cannot be read: save it as CSV in UTF-8", w.name), err)
	}
	var others []string
	for i := range sheets {
		if i != at {
			others = append(others, fmt.Sprintf("%q", sheets[i].name))
		}
	}
	if len(others) > 0 && name == "" {
		w.say(file, label.Note, label.Origin{}, "", fmt.Sprintf("the worksheet %q is read; not read: %s (--worksheet reads another)", w.name, strings.Join(others, ", ")))
	}
	return w, nil
}

// A filledSheet is a worksheet with something in it: its cells as the file
// stores them.
type filledSheet struct {
	name    string
	visible bool
	first   int // the first row that is not empty, from 0
	width   int // columns
	cells   [][]string
	hidden  []int    // rows from 1
	blank   [][2]int // cells behind the last filled one that may hold a formula: column, row
}

// filledSheets reads the worksheets in their order; those that are charts, or
// empty, are none.
func filledSheets(f *excelize.File) ([]filledSheet, error) {
	var all []filledSheet
	for _, name := range f.GetSheetList() {
		rows, err := f.Rows(name)
		if err != nil {
			continue // a chart
		}
		s := filledSheet{name: name, first: -1}
		s.visible, _ = f.GetSheetVisible(name)
		last := 0
		for rows.Next() {
			cells, err := rows.Columns()
			if err != nil {
				return nil, err
			}
			n := len(cells)
			for n > 0 && isBlank(cells[n-1]) {
				n--
				if len(s.blank) < maxBlank {
					s.blank = append(s.blank, [2]int{n + 1, len(s.cells) + 1})
				}
			}
			s.cells = append(s.cells, cells[:n])
			if n == 0 {
				continue
			}
			if s.first < 0 {
				s.first = len(s.cells) - 1
			}
			last, s.width = len(s.cells), max(s.width, n)
			if rows.GetRowOpts().Hidden {
				s.hidden = append(s.hidden, len(s.cells))
			}
		}
		if err := rows.Close(); err != nil {
			return nil, err
		}
		if s.cells = s.cells[:last]; last > 0 {
			all = append(all, s)
		}
	}
	return all, nil
}

// chooseSheet finds the worksheet by its name; without a name the first
// that is not hidden and whose first row has headings that are known, else the
// first.
func chooseSheet(sheets []filledSheet, name string) (int, error) {
	if len(sheets) == 0 {
		return 0, fmt.Errorf("the workbook is empty: it has no records")
	}
	if name != "" {
		var names []string
		for i := range sheets {
			if strings.EqualFold(strings.TrimSpace(sheets[i].name), strings.TrimSpace(name)) {
				return i, nil
			}
			names = append(names, fmt.Sprintf("%q", sheets[i].name))
		}
		return 0, fmt.Errorf("no worksheet with anything in it is called %q; there are %s", name, strings.Join(names, ", "))
	}
	best, most := 0, -1
	for i := range sheets {
		known := 0
		for _, cell := range sheets[i].cells[sheets[i].first] {
			if r := vocabulary().read(cell); r.meaning != nil {
				known++
			}
		}
		if known > 1 && sheets[i].visible {
			return i, nil
		}
		if sheets[i].visible {
			known += 2
		}
		if known > most {
			best, most = i, known
		}
	}
	return best, nil
}

// write makes the text.
func (w *worksheet) write(f *excelize.File, s *filledSheet, file string) error {
	shown := &cellReader{f: f, sheet: s.name, formats: map[int]*numberFormat{}}
	if p, err := f.GetWorkbookProps(); err == nil && p.Date1904 != nil {
		shown.since1904 = *p.Date1904
	}
	var text bytes.Buffer
	c := csv.NewWriter(&text)
	record := make([]string, s.width)
	var unsolved []string
	for y, cells := range s.cells {
		before := text.Len()
		if len(cells) == 0 {
			text.WriteByte('\n')
		} else {
			clear(record)
			for x, raw := range cells {
				v, err := shown.text(raw, x+1, y+1)
				if err != nil {
					return err
				}
				if record[x] = v; v == "" && shown.unsolved(x+1, y+1) {
					at, _ := excelize.CoordinatesToCellName(x+1, y+1)
					unsolved = append(unsolved, at)
				}
			}
			c.Write(record)
			c.Flush() // for the length; it is a buffer, and does not fail
		}
		for range countBreaks(text.Bytes()[before:]) {
			w.rows = append(w.rows, int32(y+1))
		}
	}
	for _, at := range s.blank {
		if shown.unsolved(at[0], at[1]) {
			name, _ := excelize.CoordinatesToCellName(at[0], at[1])
			unsolved = append(unsolved, name)
		}
	}
	w.text = text.Bytes()
	w.remarks(f, s, file, unsolved)
	return nil
}

// row returns the row of the worksheet that a line of the text is of.
func (w *worksheet) row(line int) int {
	if line < 1 || line > len(w.rows) {
		return line
	}
	return int(w.rows[line-1])
}

func (w *worksheet) say(file string, severity label.Severity, at label.Origin, value, message string) {
	at.File = file
	w.findings = append(w.findings, label.Finding{Origin: at, Value: value, Rule: ruleWorksheet.Name, Severity: severity, Message: message})
}

// remarks says what a worksheet has that a table of text has not.
func (w *worksheet) remarks(f *excelize.File, s *filledSheet, file string, unsolved []string) {
	if n := len(unsolved); n > 0 {
		w.say(file, label.Error, label.Origin{}, "", fmt.Sprintf("%s a formula without a result (%s): open the workbook in the program that made it, and save it again",
			plural(n, "one cell holds", "%d cells hold"), listed(unsolved)))
	}
	if merged, err := f.GetMergeCells(s.name, true); err == nil && len(merged) > 0 {
		var at []string
		for _, m := range merged {
			at = append(at, m.GetStartAxis()+":"+m.GetEndAxis())
		}
		w.say(file, label.Warning, label.Origin{}, "", fmt.Sprintf("%s (%s): only the first cell of each has its text, the others are empty; undo the merging and fill them",
			plural(len(at), "cells are merged in one place", "cells are merged in %d places"), listed(at)))
	}
	if n := len(s.hidden); n > 0 {
		var at []string
		for _, y := range s.hidden {
			at = append(at, fmt.Sprint(y))
		}
		w.say(file, label.Warning, label.Origin{}, "", fmt.Sprintf("%s hidden, as by a filter, and read like the others (%s): delete what shall not be printed, or choose with --only",
			plural(n, "one row is", "%d rows are"), listed(at)))
	}
	var hidden []string
	for x := range s.width {
		name, _ := excelize.ColumnNumberToName(x + 1)
		if visible, err := f.GetColVisible(s.name, name); err == nil && !visible {
			hidden = append(hidden, name)
		}
	}
	if n := len(hidden); n > 0 {
		w.say(file, label.Note, label.Origin{}, "", fmt.Sprintf("%s hidden and read like the others (%s)", plural(n, "one column is", "%d columns are"), listed(hidden)))
	}
}

// listed names a few of many.
func listed(names []string) string {
	if len(names) > 6 {
		return strings.Join(names[:5], ", ") + fmt.Sprintf(" and %d more", len(names)-5)
	}
	return strings.Join(names, ", ")
}
