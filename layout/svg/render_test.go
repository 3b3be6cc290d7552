package svg

import (
	"bytes"
	"fmt"
	"image"
	"image/draw"
	_ "image/png"
	"iter"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/fonts"
	"cornerslip/layout"
	"cornerslip/layout/pdf"
)

// dpi is fine enough that whole dots, on which Poppler sets its baselines, do not
// matter.
const dpi = 1200

// TestSamePlaces draws the same page as PDF (Poppler) and as SVG (Chromium),
// and compares where the ink of each letter begins and ends: within 0.05 mm.
func TestSamePlaces(t *testing.T) {
	const tolerance = 0.05 * dpi / 25.4
	page := layout.Page{Size: layout.Size{W: 80 * mm1, H: 90 * mm1}}
	var rows []image.Rectangle // one for each line of letters
	add := func(y int, marks ...layout.Mark) {
		page.Marks = append(page.Marks, marks...)
		px := func(mm int) int { return mm * dpi * 10 / 254 }
		rows = append(rows, image.Rect(px(2), px(y-5), px(78), px(y+3)))
	}
	// Letters far enough apart that the ink of each stands alone.
	spread := func(style layout.Style, size layout.Length, y int, s string, by ...layout.Length) {
		var out []layout.Mark
		for i, m := range shaped(t, style, size, at(5*mm1, layout.Length(y)*mm1), s) {
			text := m.(layout.Text)
			text.Clusters = append([]layout.Cluster(nil), text.Clusters...)
			for j := range text.Clusters {
				text.Clusters[j].Adv += by[j%len(by)]
			}
			if i > 0 {
				t.Fatalf("%q takes more than one face", s)
			}
			out = append(out, text)
		}
		add(y, out...)
	}
	spread(0, 9*pt, 8, "hamburgefonstiv", 2*mm1)
	spread(layout.Italic, 9*pt, 17, "Cytisusstriatus", 2*mm1, mm1, 3*mm1)
	spread(layout.Bold, 12*pt, 26, "Almeida214", 3*mm1, 2*mm1)
	spread(0, 7*pt, 35, "ÇÃéñőŵ5′°×", 3*mm1)
	// Accents placed by the layout, and raised figures.
	spread(0, 11*pt, 44, "x\u0301q\u0304m\u0303ɛ\u0300", 4*mm1)
	rise := shaped(t, 0, 9*pt, at(5*mm1, 53*mm1), "m2m3m4")[0].(layout.Text)
	rise.Clusters = append([]layout.Cluster(nil), rise.Clusters...)
	for i := range rise.Clusters {
		rise.Clusters[i].Adv += mm1
		if i%2 == 1 {
			rise.Clusters[i].Rise = 3 * pt
		}
	}
	add(53, rise)
	// What is not text.
	add(62, layout.Fill{Rect: layout.Rect{At: at(5*mm1, 58*mm1), Size: layout.Size{W: 3 * mm1, H: 4 * mm1}}},
		layout.Stroke{From: at(15*mm1, 60*mm1), To: at(35*mm1, 60*mm1), Width: mm1 / 2, Dash: []layout.Length{2 * mm1, mm1}})
	add(71, layout.Bars{
		Rect:      layout.Rect{At: at(5*mm1, 67*mm1), Size: layout.Size{W: 10 * mm1, H: 4 * mm1}},
		Rects:     []layout.Rect{{At: at(0, 0), Size: layout.Size{W: mm1, H: 4 * mm1}}, {At: at(3*mm1, 0), Size: layout.Size{W: 2 * mm1, H: 4 * mm1}}},
		Symbology: "code128", S: "A", Rows: 1,
	})

	// Labels in each turn: the ink is nearer to one corner than to the others.
	corner := &layout.Box{Size: layout.Size{W: 8 * mm1, H: 5 * mm1}, Marks: []layout.Mark{
		layout.Fill{Rect: layout.Rect{At: at(mm1/2, mm1/4), Size: layout.Size{W: 4 * mm1, H: mm1}}},
		layout.Fill{Rect: layout.Rect{At: at(mm1/2, mm1/4), Size: layout.Size{W: mm1, H: 3 * mm1}}},
	}}
	add(80)
	for turn := range 4 {
		page.Boxes = append(page.Boxes, layout.Placed{At: at(layout.Length(5+12*turn)*mm1, 75*mm1), Box: corner, Turn: turn})
	}

	want := popplerInk(t, page, rows)
	for name, o := range map[string]Options{
		"embedded": {Fonts: Embedded}, "outlines": {Fonts: Outlines}, "linked": {FontURL: "fonts/"},
	} {
		got := chromiumInk(t, page, rows, o)
		letters, worst := 0, 0.0
		for i := range rows {
			if len(got[i]) != len(want[i]) || len(want[i]) == 0 {
				t.Errorf("%s, row %d: %d pieces of ink, the PDF has %d", name, i, len(got[i]), len(want[i]))
				continue
			}
			for j, w := range want[i] {
				letters++
				g := got[i][j]
				for k, d := range []float64{g.left - w.left, g.right - w.right, g.top - w.top, g.bottom - w.bottom} {
					worst = max(worst, d, -d)
					if max(d, -d) > tolerance {
						t.Errorf("%s, row %d, ink %d: its %s is %.3f mm off", name, i, j, []string{"left", "right", "top", "bottom"}[k], d*25.4/dpi)
					}
				}
			}
		}
		t.Logf("%s: %d pieces of ink, the worst edge is %.3f mm off", name, letters, worst*25.4/dpi)
	}
}

// An ink is a stretch of columns that are not empty, in pixels.
type ink struct{ left, right, top, bottom float64 }

// inks finds the pieces of ink in parts of a picture. Edges count by how dark
// they are, so smoothing does not move them.
func inks(img image.Image, rows []image.Rectangle) [][]ink {
	grey := image.NewGray(img.Bounds())
	draw.Draw(grey, grey.Rect, img, img.Bounds().Min, draw.Src)
	dark := func(x, y int) float64 { return 1 - float64(grey.GrayAt(x, y).Y)/0xff }
	var all [][]ink
	for _, row := range rows {
		var found []ink
		most := func(n, from, to int, f func(i, j int) float64) (v float64) {
			for j := from; j < to; j++ {
				v = max(v, f(n, j))
			}
			return v
		}
		col := func(x int) float64 { return most(x, row.Min.Y, row.Max.Y, dark) }
		for x := row.Min.X; x < row.Max.X; x++ {
			if col(x) < 0.05 {
				continue
			}
			from := x
			for x < row.Max.X && col(x) >= 0.05 {
				x++
			}
			line := func(y int) float64 { return most(y, from, x, func(i, j int) float64 { return dark(j, i) }) }
			top, bottom := row.Min.Y, row.Max.Y-1
			for line(top) < 0.05 {
				top++
			}
			for line(bottom) < 0.05 {
				bottom--
			}
			found = append(found, ink{
				left: float64(from) + 1 - col(from), right: float64(x-1) + col(x-1),
				top: float64(top) + 1 - line(top), bottom: float64(bottom) + line(bottom),
			})
		}
		all = append(all, found)
	}
	return all
}

func load(t *testing.T, path string) image.Image {
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

func popplerInk(t *testing.T, page layout.Page, rows []image.Rectangle) [][]ink {
	var one iter.Seq2[layout.Page, error] = func(yield func(layout.Page, error) bool) { yield(page, nil) }
	dir := t.TempDir()
	var b bytes.Buffer
	if err := pdf.Write(&b, one, fonts.Default(), pdf.Options{}); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "page")
	if err := os.WriteFile(path+".pdf", b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(outside.Program(t, "pdftoppm"), "-png", "-r", fmt.Sprint(dpi), "-singlefile", path+".pdf", path)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return inks(load(t, path+".png"), rows)
}

func chromiumInk(t *testing.T, page layout.Page, rows []image.Rectangle, o Options) [][]ink {
	program := outside.Program(t, "chromium")
	dir := t.TempDir()
	svg := picture(t, page, o)
	// A face that the viewer does not take must not be hidden by one that the
	// machine happens to have.
	svg = regexp.MustCompile(`,'LiberationSerif[^;]*,serif;`).ReplaceAllString(svg, ",monospace;")
	if o.Fonts != Outlines && !strings.Contains(svg, ",monospace;") {
		t.Fatal("the faces of the machine are still named")
	}
	if err := os.WriteFile(filepath.Join(dir, "page.svg"), []byte(svg), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "fonts"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, f := range fonts.Default().Faces() {
		if err := os.WriteFile(filepath.Join(dir, "fonts", f.Name+".ttf"), f.TTF(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	// In CSS pixels, of which 96 are an inch.
	css := func(l layout.Length) int { return int(l.MM()*96/25.4) + 2 }
	cmd := exec.Command(program, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--font-render-hinting=none",
		"--disable-lcd-text", "--allow-file-access-from-files", fmt.Sprintf("--force-device-scale-factor=%g", dpi/96.0),
		fmt.Sprintf("--window-size=%d,%d", css(page.Size.W), css(page.Size.H)+200), "--user-data-dir="+filepath.Join(dir, "profile"),
		"--screenshot="+filepath.Join(dir, "page.png"), "file://"+filepath.Join(dir, "page.svg"))
	var said strings.Builder
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Run(); err != nil {
		t.Fatalf("%v: %s", err, said.String())
	}
	return inks(load(t, filepath.Join(dir, "page.png")), rows)
}
