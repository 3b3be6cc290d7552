package table

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"cornerslip/cmd/outside"
	"cornerslip/label"
)

// writeWorkbook makes a workbook with a worksheet that fill fills.
func writeWorkbook(t testing.TB, fill func(f *excelize.File)) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	fill(f)
	path := filepath.Join(t.TempDir(), "trip.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// setRows writes rows of a worksheet from the first on.
func setRows(t testing.TB, f *excelize.File, sheet string, rows ...[]any) {
	t.Helper()
	for y, row := range rows {
		at, _ := excelize.CoordinatesToCellName(1, y+1)
		if err := f.SetSheetRow(sheet, at, &row); err != nil {
			t.Fatal(err)
		}
	}
}

func cellTexts(t testing.TB, d *Dataset) (all [][]string) {
	t.Helper()
	for row, err := range d.Core.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		var cells []string
		for _, c := range row.Cells {
			cells = append(cells, c.Text)
		}
		all = append(all, cells)
	}
	return all
}

// TestWorkbookNumbers: a cell gives what it holds and not what its number
// format leaves of it; a day is a day whatever order the screen shows.
func TestWorkbookNumbers(t *testing.T) {
	cases := []struct {
		value any
		code  string // number format
		want  string
	}{
		{38.4712, "", "38.4712"},
		{38.471200000000003, "", "38.4712"},
		{0.1 + 0.2, "", "0.3"},
		{38.471234, "0.00", "38.471234"}, // the screen shows 38.47
		{38.47, "0.0000", "38.4700"},     // so many figures were meant
		{-8.8, "0.000", "-8.800"},
		{123, "0000000", "0000123"},
		{1234.5, "#,##0.00", "1234.50"},
		{120000, "0.00E+00", "120000"},
		{1e21, "", "1000000000000000000000"},
		{0.5, "0%", "50%"},
		{120, `0" m"`, "120 m"},
		{"0123", "", "0123"},    // text
		{"1.20", "0.0", "1.20"}, // text
		{"12", "0000", "12"},    // text
		{true, "", "TRUE"},
		{45385, "mm-dd-yy", "2024-04-03"},
		{45385, "d/m/yyyy", "2024-04-03"},
		{45385, `[$-816]d "de" mmmm "de" yyyy`, "2024-04-03"},
		{45385, "yyyy-mm-dd;@", "2024-04-03"},
		{45385.5, "d.m.yyyy", "2024-04-03"},
		{45385.604166666664, "d.m.yyyy hh:mm", "2024-04-03T14:30"},
		{45385, "d.m.yyyy hh:mm", "2024-04-03"},
		{61, "yyyy-mm-dd", "1900-03-01"}, // past the 29 February 1900 that never was
		{45385, "mmm-yy", "Apr-24"},      // 4-24 that became a month: shown as the screen shows it
		{45385, "d-mmm", "3-Apr"},
		{0.604166666666667, "hh:mm", "14:30"},
		{45385, "", "45385"},
	}
	path := writeWorkbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"locality", "fieldNumber"})
		for i, c := range cases {
			at := fmt.Sprint("B", i+2)
			f.SetCellValue("Sheet1", fmt.Sprint("A", i+2), fmt.Sprint("place ", i))
			f.SetCellValue("Sheet1", at, c.value)
			if c.code != "" {
				style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &c.code})
				if err != nil {
					t.Fatal(c.code, err)
				}
				f.SetCellStyle("Sheet1", at, at, style)
			}
		}
	})
	d, err := OpenDataset(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := cellTexts(t, d)
	if len(got) != len(cases) {
		t.Fatalf("%d rows", len(got))
	}
	for i, c := range cases {
		if got[i][1] != c.want {
			t.Errorf("%v shown by %q is read as %q, not %q", c.value, c.code, got[i][1], c.want)
		}
	}
}

// TestWorkbookBuiltIn: the number formats without a code, ISO/IEC 29500-1, 18.8.30.
func TestWorkbookBuiltIn(t *testing.T) {
	for id, want := range map[int]string{0: "45385.25", 1: "45385.25", 2: "45385.25", 14: "2024-04-03", 15: "2024-04-03", 16: "3-Apr", 17: "Apr-24", 22: "2024-04-03T06:00", 49: "45385.25"} {
		path := writeWorkbook(t, func(f *excelize.File) {
			setRows(t, f, "Sheet1", []any{"locality", "fieldNumber"}, []any{"Valdoura", 45385.25})
			style, err := f.NewStyle(&excelize.Style{NumFmt: id})
			if err != nil {
				t.Fatal(err)
			}
			f.SetCellStyle("Sheet1", "B2", "B2", style)
		})
		d, err := OpenDataset(path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := cellTexts(t, d)[0][1]; got != want {
			t.Errorf("number format %d gives %q, not %q", id, got, want)
		}
	}
}

// TestWorkbookPlaces: cells keep their row and column in the worksheet, whatever
// line ends they hold and whatever rows are empty, and short rows are filled.
func TestWorkbookPlaces(t *testing.T) {
	path := writeWorkbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"recordNumber", "locality", "habitat", "scientificName"},
			[]any{"101", "Valdoura\ndunes", "", "Cistus ladanifer L."},
			nil,
			[]any{"102", "Serra \"da\" Vala"},
			[]any{"103", "a, b; c", "CÃ§Ã£o", "Erica arborea L."})
	})
	d, err := OpenDataset(path, Options{Encoding: "windows-1252", Comma: ';'}) // which are of text
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{{"101", "Valdoura\ndunes", "", "Cistus ladanifer L."}, {"102", `Serra "da" Vala`, "", ""}, {"103", "a, b; c", "CÃ§Ã£o", "Erica arborea L."}}
	if got := cellTexts(t, d); !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("%q", got)
	}
	var places []string
	for row, err := range d.Core.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		places = append(places, row.Origin("locality").String(), row.Origin("scientificName").String())
		for _, f := range row.Findings {
			places = append(places, "found "+f.Origin.String())
		}
	}
	for i := range places {
		places[i] = strings.ReplaceAll(places[i], path, "trip.xlsx")
	}
	if got := strings.Join(places, " "); got != "trip.xlsx:B2 trip.xlsx:D2 trip.xlsx:B4 trip.xlsx:D4 trip.xlsx:B5 trip.xlsx:D5 found trip.xlsx:C5" {
		t.Error(got)
	}
	if at := d.Core.Columns()[3].Origin.String(); !strings.HasSuffix(at, "trip.xlsx:D1") {
		t.Errorf("the heading stands at %s", at)
	}
}

// TestWorkbookSheets: which worksheet is read, and what is said of it.
func TestWorkbookSheets(t *testing.T) {
	fill := func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"codes of places"}, []any{"A", 1})
		f.NewSheet("Trip")
		setRows(t, f, "Trip", []any{"recordNumber", "locality"}, []any{"1", "Valdoura"}, []any{"2", "Alcochete"}, []any{"3", "Setúbal"})
		f.NewSheet("Empty")
		f.NewSheet("Old")
		setRows(t, f, "Old", []any{"recordNumber", "locality"}, []any{"9", "Palmela"})
	}
	more := func(f *excelize.File) {
		fill(f)
		f.MergeCell("Trip", "B2", "B3")
		f.SetRowVisible("Trip", 4, false)
		f.SetColVisible("Trip", "A", false)
		f.SetSheetVisible("Old", false)
	}
	for _, c := range []struct {
		fill   func(*excelize.File)
		name   string
		first  string
		severe label.Severity
		said   []string
		err    string
	}{
		{fill, "", "Valdoura", label.Note, []string{`the worksheet "Trip" is read; not read: "Sheet1", "Old" (--worksheet reads another)`}, ""},
		{fill, "old", "Palmela", 0, nil, ""},
		{fill, "Empty", "", 0, nil, `no worksheet with anything in it is called "Empty"; there are "Sheet1", "Trip", "Old"`},
		{more, "trip", "Valdoura", label.Warning, []string{"cells are merged in one place (B2:B3)", "one row is hidden, as by a filter, and read like the others (4)",
			"one column is hidden and read like the others (A)"}, ""},
		{func(*excelize.File) {}, "", "", 0, nil, "the workbook is empty: it has no records"},
	} {
		d, err := OpenDataset(writeWorkbook(t, c.fill), Options{Worksheet: c.name})
		if c.err != "" {
			if err == nil || !strings.Contains(err.Error(), c.err) {
				t.Errorf("%s: the error is %v", c.name, err)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		if rows := cellTexts(t, d); rows[0][1] != c.first {
			t.Errorf("%s: the first row is %q", c.name, rows[0])
		}
		said, most := "", label.Severity(0)
		for _, f := range d.Findings() {
			if f.Rule == ruleWorksheet.Name {
				said += f.Message + "\n"
				most = max(most, f.Severity)
			}
		}
		for _, s := range c.said {
			if !strings.Contains(said, s) {
				t.Errorf("%s: nothing says %s:\n%s", c.name, s, said)
			}
		}
		if most != c.severe {
			t.Errorf("%s: the worst is %v:\n%s", c.name, most, said)
		}
	}
}

// TestWorkbookRewrite: a table made of a worksheet is written as CSV.
func TestWorkbookRewrite(t *testing.T) {
	path := writeWorkbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"recordNumber", "locality"}, []any{"101", "Valdoura, \"dunes\""}, nil, []any{102, "Évora"})
	})
	d, err := OpenDataset(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := Rewrite(&b, d.Core, []Edit{{Row: 2, Column: 1, Text: "Évora, \"Sé\""}}); err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(&b)
	got, err := r.ReadAll()
	if err != nil || fmt.Sprint(got) != `[[recordNumber locality] [101 Valdoura, "dunes"] [102 Évora, "Sé"]]` {
		t.Errorf("%v %q", err, got)
	}
}

// TestWorkbookFaults: what is no workbook that can be read is said to be none.
func TestWorkbookFaults(t *testing.T) {
	whole, err := os.ReadFile(writeWorkbook(t, func(f *excelize.File) { setRows(t, f, "Sheet1", []any{"recordNumber", "locality"}) }))
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		bytes []byte
		want  string
	}{
		"cut":  {whole[:len(whole)/2], "cannot be opened"},
		"sole": {zipOf(t, map[string]string{"xl/workbook.xml": "<workbook/>", "[Content_Types].xml": "<Types/>"}), "the workbook"},
		"open": {zipOf(t, map[string]string{"content.xml": "<a/>", "mimetype": "application/vnd.oasis.opendocument.spreadsheet"}), "spreadsheet"},
		"old":  {[]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"), "old office program"},
		"bomb": {zipOf(t, map[string]string{"xl/workbook.xml": "<workbook/>", "xl/worksheets/sheet1.xml": strings.Repeat(" ", maxWorksheet+1)}), "too large"},
	} {
		path := filepath.Join(t.TempDir(), name+".xlsx")
		os.WriteFile(path, c.bytes, 0o600)
		if _, err := OpenDataset(path, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: the error is %v, which does not say %q", name, err, c.want)
		}
		if _, err := Open(Bytes("standard input", c.bytes), Options{}); err == nil {
			t.Errorf("%s: opened from standard input", name)
		}
	}
	if tab, err := Open(Bytes("standard input", whole), Options{}); err != nil || len(tab.Columns()) != 2 {
		t.Errorf("from standard input: %v", err)
	}
}

func zipOf(t testing.TB, files map[string]string) []byte {
	t.Helper()
	b, err := os.ReadFile(writeZip(t, files))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// openpyxlScript writes a workbook with another program's library and prints
// what that library reads in it.
const openpyxlScript = `
import datetime, json, sys
import openpyxl
b = openpyxl.Workbook(); s = b.active; s.title = "Viagem"
s.append(["recordNumber", "eventDate", "locality", "decimalLatitude", "habitat"])
s.append([101, datetime.date(2024, 4, 3), "Valdoura, «dunas»", 38.4712, "a\nb"])
s.append(["102a", datetime.datetime(1904, 2, 29, 6, 30), "Évora – Sé", -0.1, None])
s.append([None, datetime.date(2024, 12, 31), "×Sorbopyrus", 1/3, "=1"])
s["B2"].number_format = "dd/mm/yy"
b.save(sys.argv[1])
b = openpyxl.load_workbook(sys.argv[1]); out = []
for row in b.active.iter_rows(min_row=2, max_row=3, values_only=True):
    out.append([v.isoformat() if isinstance(v, (datetime.date, datetime.datetime)) else "" if v is None else str(v) for v in row])
print(json.dumps(out))
`

// TestWorkbookOfAnotherProgram holds the reading against openpyxl, a library
// of another language, with a workbook that it wrote.
func TestWorkbookOfAnotherProgram(t *testing.T) {
	python := outside.File(t, "/usr/bin/python3")                          // the system's own, for which
	outside.File(t, "/usr/lib/python3/dist-packages/openpyxl/__init__.py") // its package is
	path := filepath.Join(t.TempDir(), "viagem.xlsx")
	out, err := exec.Command(python, "-c", openpyxlScript, path).Output()
	if err != nil {
		t.Fatal(err)
	}
	var want [][]string
	if err := json.Unmarshal(out, &want); err != nil {
		t.Fatal(err)
	}
	for i := range want {
		want[i][1] = strings.TrimSuffix(strings.TrimSuffix(want[i][1], ":00"), "T00:00") // no seconds, and no time at midnight
	}
	d, err := OpenDataset(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := cellTexts(t, d)
	if len(got) != 3 || !slices.EqualFunc(got[:2], want, slices.Equal) {
		t.Errorf("%q\nopenpyxl: %q", got, want)
	}
	if said := fmt.Sprint(d.Findings()); !strings.Contains(said, "a formula without a result (E4)") {
		t.Errorf("a formula that nobody computed is not spoken of: %s", said)
	}
}

// FuzzWorkbook: a workbook with any worksheet in it is read or refused.
func FuzzWorkbook(f *testing.F) {
	whole := writeWorkbook(f, func(x *excelize.File) {
		setRows(f, x, "Sheet1", []any{"recordNumber", "locality"}, []any{101, "Valdoura"})
	})
	x, err := excelize.OpenFile(whole)
	if err != nil {
		f.Fatal(err)
	}
	files := map[string]string{}
	x.Pkg.Range(func(name, body any) bool { files[name.(string)] = string(body.([]byte)); return true })
	const sheet = "xl/worksheets/sheet1.xml"
	if files[sheet] == "" {
		f.Fatal("the workbook has no worksheet")
	}
	f.Add(files[sheet])
	f.Add(`<worksheet><sheetData><row r="3"><c r="B3" t="n" s="9"><v>1e309</v></c></row></sheetData></worksheet>`)
	f.Add(`<worksheet><sheetData><row r="99999999"><c r="XFE1" t="s"><v>77</v></c></row></sheetData><mergeCells><mergeCell ref="A"/></mergeCells></worksheet>`)
	f.Fuzz(func(t *testing.T, body string) {
		files[sheet] = body
		tab, err := Open(Bytes("trip.xlsx", zipOf(t, files)), Options{})
		if err != nil {
			return
		}
		for row, err := range tab.Rows() {
			if err != nil {
				return
			}
			if len(row.Cells) == len(tab.Columns()) {
				row.Origin("locality")
			}
		}
	})
}
