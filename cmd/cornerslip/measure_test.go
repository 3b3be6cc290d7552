package main

import (
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// These tests measure finished pages with programs of other people: where
// poppler's pdftotext finds words, and where its pdftoppm paints lines and bars
// at 600 dots to the inch. What was meant and what is there must agree to a tenth
// of a millimetre.

const (
	mostOff    = 0.1 // millimetres
	measureDPI = 600
)

// A piece is a part of a page rendered for measuring.
type piece struct {
	image.Image
	x, y float64 // of its upper left corner on the page, in mm
}

// paint renders the rectangle of a page that is given in millimetres.
func paint(t testing.TB, pdf string, page int, x, y, w, h float64) piece {
	t.Helper()
	px := func(mm float64) int { return int(mm * measureDPI / 25.4) }
	out := filepath.Join(t.TempDir(), "piece")
	program(t, "pdftoppm", "-png", "-gray", "-singlefile", "-r", fmt.Sprint(measureDPI), "-f", fmt.Sprint(page), "-l", fmt.Sprint(page),
		"-x", fmt.Sprint(px(x)), "-y", fmt.Sprint(px(y)), "-W", fmt.Sprint(px(w)), "-H", fmt.Sprint(px(h)), pdf, out)
	f, err := os.Open(out + ".png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return piece{img, float64(px(x)) * 25.4 / measureDPI, float64(px(y)) * 25.4 / measureDPI}
}

func (p piece) dark(x, y int) bool {
	v, _, _, _ := p.At(x, y).RGBA()
	return v < 0xc000
}

// lines returns the middles of the stretches of ink that a scan meets, in mm of
// the page: down a column of the picture at x mm, or along a row at y mm.
func (p piece) lines(down bool, at float64) []float64 {
	b := p.Bounds()
	n, k, zero := b.Dx(), int((at-p.y)*measureDPI/25.4), p.x
	if down {
		n, k, zero = b.Dy(), int((at-p.x)*measureDPI/25.4), p.y
	}
	var out []float64
	start := -1
	for i := 0; i <= n; i++ {
		ink := false
		if i < n {
			if down {
				ink = p.dark(b.Min.X+k, b.Min.Y+i)
			} else {
				ink = p.dark(b.Min.X+i, b.Min.Y+k)
			}
		}
		switch {
		case ink && start < 0:
			start = i
		case !ink && start >= 0:
			out = append(out, zero+(float64(start)+float64(i))/2*25.4/measureDPI)
			start = -1
		}
	}
	return out
}

// holdLines wants a line at each place and nowhere else.
func holdLines(t testing.TB, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d lines at %.2f mm, want %d at %.2f", what, len(got), got, len(want), want)
		return
	}
	for i := range want {
		if d := got[i] - want[i]; d > mostOff || d < -mostOff {
			t.Errorf("%s: line %d at %.3f mm, want %.3f", what, i+1, got[i], want[i])
		}
	}
}

// A word is one that pdftotext finds on a page: its box in mm.
type word struct {
	text           string
	x0, y0, x1, y1 float64
}

var bboxWord = regexp.MustCompile(`<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</word>`)

func wordsOn(t testing.TB, pdf string, page int) []word {
	t.Helper()
	out := program(t, "pdftotext", "-bbox", "-f", fmt.Sprint(page), "-l", fmt.Sprint(page), pdf, "-")
	var all []word
	for _, m := range bboxWord.FindAllStringSubmatch(out, -1) {
		mm := func(s string) float64 {
			f, err := strconv.ParseFloat(s, 64)
			if err != nil {
				t.Fatal(err)
			}
			return f * 25.4 / 72
		}
		all = append(all, word{m[5], mm(m[1]), mm(m[2]), mm(m[3]), mm(m[4])})
	}
	if len(all) == 0 {
		t.Fatalf("no words on page %d of %s", page, pdf)
	}
	return all
}

// measured is a house with everything on the mount, so that its places can be
// measured; its printer needs no correction.
func measured(t testing.TB, more string) string {
	t.Helper()
	src, err := os.ReadFile(example(t, "house.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, spot := range []string{"barcode", "packet", "slips", "stamp", "scale_bar", "colour_chart"} {
		more += "\n[mount." + spot + "]\non = true\n"
	}
	house := filepath.Join(t.TempDir(), "house.toml")
	if err := os.WriteFile(house, []byte(string(src)+"\n"+more), 0o644); err != nil {
		t.Fatal(err)
	}
	return house
}

// TestLabelOnMountMeasured holds the words of labels against where the proof
// says they are on the label, and the label against the corner of the mount: 5
// mm from the right and the lower edge of A3 (297 × 420 mm, ISO 216), and of a
// mount of 11.5 × 16.5 in.
func TestLabelOnMountMeasured(t *testing.T) {
	outside.Program(t, "pdftotext")
	house := measured(t, "")
	table := example(t, "trip.csv")
	out, _ := cornerslip(t, "proof", table, "--house", house, "--json", "--only", "row 1")
	var proof struct {
		Size  [2]float64 `json:"size_mm"`
		Lines []struct {
			X    float64 `json:"x_mm"`
			Y    float64 `json:"y_mm"`
			Runs []struct{ Text string }
		}
	}
	if err := json.NewDecoder(strings.NewReader(out)).Decode(&proof); err != nil {
		t.Fatal(err)
	}
	for _, sheet := range []struct {
		paper string
		w, h  float64
	}{{"A3", 297, 420}, {"11.5x16.5in", 292.1, 419.1}, {"A4", 210, 297}} {
		pdf := filepath.Join(t.TempDir(), "mount.pdf")
		args := []string{"sheet", table, "--house", house, "--on", "mount", "--paper", sheet.paper, "--only", "row 1", "-o", pdf}
		if sheet.paper == "A4" { // too small for all that the house keeps free
			args[3] = example(t, "house.toml")
		}
		cornerslip(t, args...)
		found := wordsOn(t, pdf, 1)
		left, top := sheet.w-5-proof.Size[0], sheet.h-5-proof.Size[1]
		checked := 0
		for _, line := range proof.Lines {
			var text strings.Builder
			for _, r := range line.Runs {
				text.WriteString(r.Text)
			}
			first := strings.Fields(text.String())[0]
			for _, w := range found {
				baseline := top + line.Y
				if w.text != first || w.x0 > left+line.X+1 || w.x0 < left+line.X-1 || baseline < w.y0 || baseline > w.y1 {
					continue
				}
				if d := w.x0 - (left + line.X); d > mostOff || d < -mostOff {
					t.Errorf("%s: %q begins at %.3f mm, want %.3f", sheet.paper, first, w.x0, left+line.X)
				}
				checked++
				break
			}
		}
		if checked < len(proof.Lines)-1 {
			t.Errorf("%s: of %d lines only %d were found in their places", sheet.paper, len(proof.Lines), checked)
		}
	}
}

// TestTicksMeasured holds the ticks of ganged labels against where the cuts run,
// on A4 and A3: 105 mm apart across, 74 mm down.
func TestTicksMeasured(t *testing.T) {
	outside.Program(t, "pdftoppm")
	for _, c := range []struct {
		paper         string
		w, h          float64
		across, below []float64
	}{
		{"A4", 210, 297, []float64{105}, []float64{74, 148, 222}},
		{"A3", 297, 420, []float64{105, 210}, nil},
	} {
		pdf := filepath.Join(t.TempDir(), "labels.pdf")
		// 60 gatherings have labels of 74 mm: the first page is full of them.
		cornerslip(t, "sheet", example(t, "trip.csv"), "--house", example(t, "house.toml"), "--paper", c.paper, "-o", pdf)
		top := paint(t, pdf, 1, 0, 0, c.w, 10)
		holdLines(t, c.paper+" across", top.lines(false, 5), c.across)
		if c.below != nil {
			left := paint(t, pdf, 1, 0, 0, 10, c.h)
			holdLines(t, c.paper+" down", left.lines(true, 5), c.below)
		}
	}
}

// TestGuideMeasured holds the guide against the house's places: centimetres
// along the edges, the corners of the packet's spot at 5 and 94 mm, of the
// label's room at 187 and 292.
func TestGuideMeasured(t *testing.T) {
	outside.Program(t, "pdftoppm")
	pdf := filepath.Join(t.TempDir(), "guide.pdf")
	cornerslip(t, "sheet", "--on", "mount", "--guide", "--house", measured(t, ""), "-o", pdf)
	var whole []float64
	for cm := 10.0; cm < 297; cm += 10 {
		whole = append(whole, cm)
	}
	holdLines(t, "ticks above", paint(t, pdf, 1, 0, 0, 297, 6).lines(false, 4.6), whole)
	var down []float64
	for cm := 10.0; cm < 420; cm += 10 {
		down = append(down, cm)
	}
	holdLines(t, "ticks at the left", paint(t, pdf, 1, 0, 0, 6, 420).lines(true, 4.6), down)
	// Below the ticks and above the words, across the upper legs of the corners:
	// packet, colour chart and barcode.
	holdLines(t, "spots", paint(t, pdf, 1, 0, 8, 297, 2).lines(false, 8.5), []float64{5, 94, 99, 199, 232, 292})
	holdLines(t, "label's room", paint(t, pdf, 1, 150, 269.5, 147, 3).lines(false, 270.4), []float64{187, 292})
}

// TestBarsMeasured holds the bars of stickers against the grid of the house: the
// symbol stands in the middle of its sticker, less half a printer's dot.
func TestBarsMeasured(t *testing.T) {
	outside.Program(t, "pdftoppm")
	house := measured(t, "[stickers]\ncolumns = 3\nrows = 8\nsize_mm = [63.5, 33.9]\nfirst_mm = [7.2, 12.9]\npitch_mm = [66, 33.9]\n")
	table := example(t, "trip.csv")
	out, _ := cornerslip(t, "proof", table, "--kind", "barcode", "--house", house, "--json", "--only", "row 1")
	var proof struct {
		Symbols []struct {
			X float64 `json:"x_mm"`
			Y float64 `json:"y_mm"`
			W float64 `json:"w_mm"`
			H float64 `json:"h_mm"`
		}
	}
	if err := json.NewDecoder(strings.NewReader(out)).Decode(&proof); err != nil {
		t.Fatal(err)
	}
	pdf := filepath.Join(t.TempDir(), "bars.pdf")
	cornerslip(t, "barcode", table, "--house", house, "--start", "2,3", "--only", "row 1", "-o", pdf)
	const left, top = 7.2 + 2*66, 12.9 + 33.9
	s := proof.Symbols[0]
	p := paint(t, pdf, 1, left, top, 63.5, 33.9)
	bars := p.lines(false, top+s.Y+s.H/2)
	if len(bars) < 20 {
		t.Fatalf("only %d bars", len(bars))
	}
	const dot = 25.4 / 300 / 2
	first, last := p.edges(top + s.Y + s.H/2)
	if d := first - (left + s.X); d > mostOff || d < -mostOff {
		t.Errorf("the bars begin at %.3f mm, want %.3f", first, left+s.X)
	}
	if d := last - (left + s.X + s.W); d > mostOff+dot || d < -mostOff-dot {
		t.Errorf("the bars end at %.3f mm, want %.3f", last, left+s.X+s.W)
	}
	if middle := (first + last) / 2; middle-(left+63.5/2) > mostOff || middle-(left+63.5/2) < -mostOff {
		t.Errorf("the middle of the bars is at %.3f mm, that of the sticker at %.3f", middle, left+63.5/2)
	}
}

// edges returns where the ink of a row begins and ends.
func (p piece) edges(y float64) (first, last float64) {
	b := p.Bounds()
	k := int((y - p.y) * measureDPI / 25.4)
	first = -1
	for i := range b.Dx() {
		if p.dark(b.Min.X+i, b.Min.Y+k) {
			at := p.x + float64(i)*25.4/measureDPI
			if first < 0 {
				first = at
			}
			last = at + 25.4/measureDPI
		}
	}
	return first, last
}

// TestCalibrationMeasured measures the calibration page as a person would, and
// then a printer that is off: corrected by what was measured, rules and crosses
// come out as they should.
func TestCalibrationMeasured(t *testing.T) {
	outside.Program(t, "pdftoppm")
	var ticks []float64
	for k := 0.0; k <= 100; k += 10 {
		ticks = append(ticks, 40+k)
	}
	for _, c := range []struct {
		paper, printer string
		w, h           float64
		// how a place on the page is moved by the correction
		x, y func(float64) float64
	}{
		{"A4", "", 210, 297, func(v float64) float64 { return v }, func(v float64) float64 { return v }},
		{"A3", "", 297, 420, func(v float64) float64 { return v }, func(v float64) float64 { return v }},
		{"A4", "[printer]\noffset_x_mm = 1.3\noffset_y_mm = -0.7\nscale_x_percent = 100.4\nscale_y_percent = 99.7\n", 210, 297,
			func(v float64) float64 { return v*1.004 + 1.3 }, func(v float64) float64 { return v*0.997 - 0.7 }},
	} {
		pdf := filepath.Join(t.TempDir(), "page.pdf")
		cornerslip(t, "calibrate", "--corrected", "--paper", c.paper, "--house", measured(t, c.printer), "-o", pdf)
		moved := func(v []float64, by func(float64) float64) []float64 {
			out := make([]float64, len(v))
			for i := range v {
				out[i] = by(v[i])
			}
			return out
		}
		what := c.paper + " " + c.printer
		y := c.y(40)
		holdLines(t, what+": the rule across", paint(t, pdf, 1, 30, y-3, c.x(140)-29, 4).lines(false, y-0.8), moved(ticks, c.x))
		x := c.x(40)
		holdLines(t, what+": the rule down", paint(t, pdf, 1, x-3, 30, 4, c.y(140)-29).lines(true, x-0.8), moved(ticks, c.y))
		holdLines(t, what+": crosses above", paint(t, pdf, 1, 10, 16, c.w-20, 8).lines(false, 22), moved([]float64{20, c.w - 20}, c.x))
		holdLines(t, what+": crosses at the left", paint(t, pdf, 1, 16, 10, 8, c.h-20).lines(true, 22), moved([]float64{20, c.h - 20}, c.y))
	}
}

// TestFoldsMeasured holds the lines of packet blanks against the folds of the
// Florida Museum (see package impose): an A5 blank on A4 lies on its side.
func TestFoldsMeasured(t *testing.T) {
	outside.Program(t, "pdftoppm")
	pdf := filepath.Join(t.TempDir(), "packets.pdf")
	cornerslip(t, "packet", "--empty", "2", "--blank", "A5", "--flap", "25", "-o", pdf)
	// Solid at the cut between both blanks, sides 25 mm in from it and from the
	// paper's edges. A scan down the page may fall into a gap of the dashes: the
	// upright folds are dashed 3 mm on 1.5 mm, the level ones 3, 1, 0.5, 1.
	var level []float64
	p := paint(t, pdf, 1, 20, 0, 10, 297)
	for x := 20.5; x < 29; x += 0.5 {
		if l := p.lines(true, x); len(l) > len(level) {
			level = l
		}
	}
	holdLines(t, "level lines", level, []float64{25, 123, 148, 173, 271})
	third := (210.0 + 5) / 3
	var upright []float64
	p = paint(t, pdf, 1, 0, 200, 146, 10) // of the blank without a legend, as far as the label
	for y := 200.5; y < 209; y += 0.5 {
		if l := p.lines(false, y); len(l) == 2 {
			upright = l
		}
	}
	holdLines(t, "upright lines", upright, []float64{third, 2 * third})
}

// TestFooterRuleMeasured: the rule beside ganged labels is 100 mm long.
func TestFooterRuleMeasured(t *testing.T) {
	outside.Program(t, "pdftoppm")
	pdf := filepath.Join(t.TempDir(), "labels.pdf")
	cornerslip(t, "sheet", example(t, "trip.csv"), "--house", example(t, "house.toml"), "--only", "row 2", "-o", pdf)
	for _, w := range wordsOn(t, pdf, 1) {
		if w.text == "rule" || w.text == "page" {
			if w.y1 > 297-4 || w.x0 < 4 {
				t.Errorf("%q at %.1f, %.1f is where the printer does not print", w.text, w.x0, w.y1)
			}
		}
	}
	p := paint(t, pdf, 1, 0, 180, 210, 116)
	b := p.Bounds()
	best := 0.0
	for i := range b.Dy() { // the longest row of ink without a gap
		run := 0
		for x := range b.Dx() {
			if !p.dark(b.Min.X+x, b.Min.Y+i) {
				run = 0
				continue
			}
			run++
			best = max(best, float64(run)*25.4/measureDPI)
		}
	}
	for x := range b.Dx() { // or column
		run := 0
		for i := range b.Dy() {
			if !p.dark(b.Min.X+x, b.Min.Y+i) {
				run = 0
				continue
			}
			run++
			best = max(best, float64(run)*25.4/measureDPI)
		}
	}
	if best < 100-mostOff || best > 100.18+mostOff { // and half a line's width at each end
		t.Errorf("the rule is %.2f mm long", best)
	}
}

// TestCorrectedBarsScan: corrected for a printer that is off, on stickers and on
// pages turned for it, every number is still read at 300 dpi.
func TestCorrectedBarsScan(t *testing.T) {
	zbar := outside.Program(t, "zbarimg")
	outside.Program(t, "pdftoppm")
	house := measured(t, "[stickers]\ncolumns = 3\nrows = 8\nsize_mm = [63.5, 33.9]\nfirst_mm = [7.2, 12.9]\npitch_mm = [66, 33.9]\n"+
		"[printer]\noffset_x_mm = 0.83\noffset_y_mm = -0.47\nscale_x_percent = 100.37\nscale_y_percent = 99.81\nfeed = \"long edge\"\n")
	dir := t.TempDir()
	pdf := filepath.Join(dir, "bars.pdf")
	cornerslip(t, "barcode", example(t, "trip.csv"), "--house", house, "-o", pdf)
	program(t, "pdftoppm", "-png", "-gray", "-r", "300", pdf, filepath.Join(dir, "p"))
	files, _ := filepath.Glob(filepath.Join(dir, "*.png"))
	if len(files) == 0 {
		t.Fatal("no page was rendered")
	}
	var got []string
	for _, f := range files {
		out, err := exec.Command(zbar, "-q", "--raw", "-Sdisable", "-Scode128.enable", f).Output()
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, strings.Fields(string(out))...)
	}
	slices.Sort(got)
	if want := slices.Compact(barred(t)); !slices.Equal(slices.Compact(got), want) {
		t.Errorf("read %d numbers %q,\nwant %d: %q", len(got), got, len(want), want)
	}
}
