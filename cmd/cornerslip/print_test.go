package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"golang.org/x/text/unicode/norm"

	"cornerslip/cmd/outside"
)

// These tests take what the command wrote and hold it against programs of
// other people: qpdf for the file's structure, poppler for fonts, text and
// pictures, zbar and libdmtx for bars.

func example(t testing.TB, name string) string {
	return filepath.Join(outside.Root(t), "examples", name)
}

// cornerslip runs the program and returns what it said.
func cornerslip(t testing.TB, args ...string) (stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &err); code != exitOK {
		t.Fatalf("cornerslip %s: exit %d\n%s", strings.Join(args, " "), code, err.String())
	}
	return out.String(), err.String()
}

// program runs an outside program and returns its output.
func program(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(outside.Program(t, name), args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, out)
	}
	return string(out)
}

var prints struct {
	once sync.Once
	pdfs map[string]string
}

// everyPrint is every kind of page made from the example, once for all tests.
func everyPrint(t testing.TB) map[string]string {
	t.Helper()
	prints.once.Do(func() { prints.pdfs = makePrints(t) })
	return prints.pdfs
}

func makePrints(t testing.TB) map[string]string {
	t.Helper()
	dir, err := os.MkdirTemp("", "prints")
	if err != nil {
		t.Fatal(err)
	}
	atExit = append(atExit, func() { os.RemoveAll(dir) })
	pdfs := map[string]string{}
	for name, args := range map[string][]string{
		"sheet": {"sheet"}, "mount": {"sheet", "--on", "mount"}, "packet": {"packet"}, "barcode": {"barcode"},
		"sheet-A3": {"sheet", "--paper", "A3"}, "sheet-Letter": {"sheet", "--paper", "Letter"},
		"datamatrix": {"barcode", "--symbology", "datamatrix"}, "qr": {"barcode", "--symbology", "qr"},
		"slip": {"slip", "--identifications", example(t, "identifications.csv")}, "tag": {"tag"}, "bundle": {"tag", "--bundle"},
		"captions": {"sheet", "--house", example(t, "house-captions.toml")}, "bilingual": {"sheet", "--house", example(t, "house-bilingual.toml")},
	} {
		pdf := filepath.Join(dir, name+".pdf")
		if !slices.Contains(args, "--house") {
			args = append(args, "--house", example(t, "house.toml"))
		}
		cornerslip(t, append(args, example(t, "trip.csv"), "--date", "2026-07-30", "-o", pdf)...)
		pdfs[name] = pdf
	}
	return pdfs
}

func TestFilesAreSound(t *testing.T) {
	qpdf := outside.Program(t, "qpdf")
	for name, pdf := range everyPrint(t) {
		if out, err := exec.Command(qpdf, "--check", pdf).CombinedOutput(); err != nil {
			t.Errorf("%s: qpdf: %v\n%s", name, err, out)
		}
		fonts := strings.Split(strings.TrimSpace(program(t, "pdffonts", pdf)), "\n")
		if len(fonts) < 3 {
			t.Errorf("%s: no font in\n%s", name, strings.Join(fonts, "\n"))
			continue
		}
		for _, f := range fonts[2:] {
			if c := strings.Fields(f); strings.Join(c[len(c)-5:len(c)-2], " ") != "yes yes yes" {
				t.Errorf("%s: a font is not embedded, not subset or has no Unicode map: %s", name, f)
			}
		}
	}
}

// TestPaperSizes holds the pages against ISO 216 (A4 210 × 297 mm, A3 297 ×
// 420 mm) and ANSI/ASME Y14.1 (Letter 8.5 × 11 in), in points.
func TestPaperSizes(t *testing.T) {
	pdfs := everyPrint(t)
	for name, want := range map[string]string{
		"sheet": "595.276 x 841.89", "sheet-A3": "841.89 x 1190.55", "mount": "841.89 x 1190.55", "sheet-Letter": "612 x 792",
	} {
		if info := program(t, "pdfinfo", pdfs[name]); !strings.Contains(info, want) {
			t.Errorf("%s: no page of %s pts in\n%s", name, want, info)
		}
	}
}

// written are the columns whose cells are printed as they were written.
var written = []string{
	"family", "scientificName", "country", "stateProvince", "municipality", "island", "locality", "habitat",
	"plantDescription", "vernacularName", "uses", "occurrenceRemarks", "permits", "gardenAccession", "recordNumber", "project",
}

// words counts the words of text, NFC, without the marks at their ends, which
// joining may add to or share.
func words(text string) map[string]int {
	m := map[string]int{}
	for w := range strings.FieldsSeq(norm.NFC.String(text)) {
		if w = strings.Trim(w, ".,;:()"); w != "" {
			m[w]++
		}
	}
	return m
}

// missing returns the words of the table that the text does not have as often.
func missing(t testing.TB, table, text string, columns []string) []string {
	t.Helper()
	f, err := os.Open(table)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]int{}
	for _, row := range rows[1:] {
		for i, cell := range row {
			// A place that repeats the one before it ("Corvo, Corvo") is said once.
			if i > 0 && cell == row[i-1] {
				continue
			}
			if slices.Contains(columns, rows[0][i]) {
				for w, n := range words(cell) {
					want[w] += n
				}
			}
		}
	}
	if len(want) < 100 {
		t.Fatalf("only %d words to look for", len(want))
	}
	got := words(text)
	var lost []string
	for _, w := range slices.Sorted(maps.Keys(want)) {
		if got[w] < want[w] {
			lost = append(lost, fmt.Sprintf("%s (%d of %d)", w, got[w], want[w]))
		}
	}
	return lost
}

func TestEveryWordIsPrinted(t *testing.T) {
	outside.Program(t, "pdftotext")
	pdfs := everyPrint(t)
	for _, name := range []string{"sheet", "sheet-A3", "captions", "bilingual"} {
		text := program(t, "pdftotext", pdfs[name], "-")
		// Records that are kept in packets alone have packet labels.
		text += program(t, "pdftotext", pdfs["packet"], "-")
		columns := written
		if name != "sheet" && name != "sheet-A3" {
			// These houses leave out or reword what theirs files say.
			columns = []string{"scientificName", "locality", "habitat", "recordNumber"}
		}
		if lost := missing(t, example(t, "trip.csv"), text, columns); len(lost) > 0 {
			t.Errorf("%s: words of the table that are not on the labels as often: %q", name, lost)
		}
	}
}

// TestNoInkNearCuts renders the pages without ticks and looks for ink within 5
// mm of where the knife goes: round each label of the plan.
func TestNoInkNearCuts(t *testing.T) {
	dir := t.TempDir()
	house := filepath.Join(dir, "house.toml")
	src, err := os.ReadFile(example(t, "house.toml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(house, append(src, []byte("\n[paper]\nticks = false\n")...), 0o644); err != nil {
		t.Fatal(err)
	}
	pdf := filepath.Join(dir, "labels.pdf")
	cornerslip(t, "sheet", example(t, "trip.csv"), "--house", house, "-o", pdf)
	const dpi = 144
	for page, img := range render(t, pdf, dpi, 4) {
		mm := func(x int) float64 { return float64(x) * 25.4 / dpi }
		b := img.Bounds()
		for y := b.Min.Y; y < b.Max.Y; y++ {
			for x := b.Min.X; x < b.Max.X; x++ {
				if r, _, _, _ := img.At(x, y).RGBA(); r > 0x8000 {
					continue
				}
				// The paper's edges and the cut down its middle.
				for _, cut := range []float64{0, 105, 210} {
					if d := mm(x) - cut; -4.9 < d && d < 4.9 {
						t.Fatalf("page %d: ink at %.1f mm from the left is %.1f mm from a cut", page+1, mm(x), d)
					}
				}
				if mm(y) < 4.9 {
					t.Fatalf("page %d: ink at %.1f mm from the top", page+1, mm(y))
				}
			}
		}
	}
}

// render returns the first pages of a PDF as pictures.
func render(t testing.TB, pdf string, dpi, pages int) []image.Image {
	t.Helper()
	dir := t.TempDir()
	program(t, "pdftoppm", "-png", "-gray", "-r", fmt.Sprint(dpi), "-l", fmt.Sprint(pages), pdf, filepath.Join(dir, "p"))
	files, _ := filepath.Glob(filepath.Join(dir, "*.png"))
	if len(files) == 0 {
		t.Fatal("no page was rendered")
	}
	var all []image.Image
	for _, f := range files {
		r, err := os.Open(f)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(r)
		r.Close()
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, img)
	}
	return all
}

// TestBarsScan renders the barcode pages at 300 dpi and reads every number back
// with the decoders of zbar and libdmtx.
func TestBarsScan(t *testing.T) {
	zbar, dmtx := outside.Program(t, "zbarimg"), outside.Program(t, "dmtxread")
	pdfs := everyPrint(t)
	all := barred(t)
	for name, decode := range map[string][]string{
		"barcode":    {zbar, "-q", "--raw", "-Sdisable", "-Scode128.enable"},
		"qr":         {zbar, "-q", "--raw", "-Sdisable", "-Sqrcode.enable"},
		"datamatrix": {dmtx, "-n"},
	} {
		want := all
		dir := t.TempDir()
		program(t, "pdftoppm", "-png", "-gray", "-r", "300", pdfs[name], filepath.Join(dir, "p"))
		files, _ := filepath.Glob(filepath.Join(dir, "*.png"))
		var got []string
		for _, f := range files {
			if name == "datamatrix" {
				for i := range 33 { // one label at a time: this decoder is slow on whole pages
					if cell := crop(t, f, i); cell != "" {
						out, _ := exec.Command(decode[0], "-n", "-N1", cell).Output() // exits 1 where there is no symbol
						got = append(got, strings.Fields(string(out))...)
					}
				}
				continue
			}
			out, err := exec.Command(decode[0], append(decode[1:], f)...).Output()
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			got = append(got, strings.Fields(string(out))...)
		}
		slices.Sort(got)
		if name == "barcode" { // this decoder tells a text that stands twice on a page once
			got, want = slices.Compact(got), slices.Compact(slices.Clone(want))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: read %d numbers %q,\nwant %d: %q", name, len(got), got, len(want), want)
		}
	}
}

// barred are the numbers that are to be on the barcode pages: each own
// catalogue number once for every part of the specimen.
func barred(t testing.TB) []string {
	t.Helper()
	out, _ := cornerslip(t, "proof", "--kind", "barcode", "--json", "--house", example(t, "house.toml"), example(t, "trip.csv"))
	var all []string
	for d := json.NewDecoder(strings.NewReader(out)); ; {
		var p struct{ Symbols []struct{ Text string } }
		if err := d.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p.Symbols[0].Text)
	}
	slices.Sort(all)
	f, err := os.Open(example(t, "trip.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	col := slices.Index(rows[0], "catalogNumber")
	var own []string
	for _, r := range rows[1:] {
		if strings.HasPrefix(r[col], "VDOURA-") {
			own = append(own, r[col])
		}
	}
	slices.Sort(own)
	if len(own) < 10 || !slices.Equal(slices.Compact(slices.Clone(all)), own) {
		t.Fatalf("barcode labels for %q, the table has %q", all, own)
	}
	return all
}

// crop writes the i-th of 33 labels of 60 × 25 mm on an A4 page to a file of
// its own, "" if it is blank.
func crop(t testing.TB, file string, i int) string {
	t.Helper()
	r, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	img, err := png.Decode(r)
	if err != nil {
		t.Fatal(err)
	}
	px := func(mm int) int { return mm * 300 * 10 / 254 }
	at := image.Pt(px(60*(i%3)), px(25*(i/3)))
	cell := image.Rectangle{at, at.Add(image.Pt(px(60), px(25)))}
	sub := img.(interface {
		SubImage(image.Rectangle) image.Image
	}).SubImage(cell)
	dark := 0
	for y := cell.Min.Y; y < cell.Max.Y; y += 4 {
		for x := cell.Min.X; x < cell.Max.X; x += 4 {
			if v, _, _, _ := sub.At(x, y).RGBA(); v < 0x8000 {
				dark++
			}
		}
	}
	if dark < 100 {
		return ""
	}
	name := strings.TrimSuffix(file, ".png") + fmt.Sprintf("-%d.png", i)
	w, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer w.Close()
	if err := png.Encode(w, sub); err != nil {
		t.Fatal(err)
	}
	return name
}

// TestNoRecordIsLost prints a real table (1,534 records of a public plant data
// set, CC BY 4.0; shared/real) and holds that each record is either on exactly
// one label or named in an error.
func TestNoRecordIsLost(t *testing.T) {
	table := outside.Shared(t, "real/taurus-plants.csv")
	var out, said bytes.Buffer
	code := run([]string{"proof", table, "--json"}, strings.NewReader(""), &out, &said)
	labels := map[int]int{}
	for d := json.NewDecoder(&out); ; {
		var p struct{ Row, Label, Of int }
		if err := d.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		if p.Label == 1 {
			labels[p.Row]++
		}
	}
	out.Reset()
	run([]string{"check", table, "--json"}, strings.NewReader(""), &out, &said)
	bad := map[int]bool{}
	for d := json.NewDecoder(&out); ; {
		var f struct {
			Row      int
			Severity string
		}
		if err := d.Decode(&f); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		if f.Severity == "error" {
			bad[f.Row] = true
		}
	}
	if (code == exitOK) != (len(bad) == 0) {
		t.Errorf("exit code %d with %d bad records", code, len(bad))
	}
	for row := 1; row <= 1534; row++ {
		if n := labels[row]; n != 1 && !bad[row] || n != 0 && bad[row] {
			t.Errorf("record %d: on %d labels, error: %v", row, n, bad[row])
		}
	}
	if extra := len(labels) + len(bad) - 1534; extra != 0 {
		t.Errorf("%d labels and %d errors for 1,534 records", len(labels), len(bad))
	}
	t.Logf("%d records on a label, %d named in an error", len(labels), len(bad))
}
