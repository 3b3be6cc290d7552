package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/fonts"
	"cornerslip/layout"
	shaping "cornerslip/layout/face"

	"golang.org/x/text/unicode/norm"
)

// These tests hold files against other people's readers and validators.

func TestValidators(t *testing.T) {
	for _, o := range []Options{{}, options(), {Uncompressed: true, Title: `(back\slash) & <tag>`}} {
		path := keep(t, write(t, o, sample(t), sample(t)))
		run(t, "qpdf", "--check", path)
		run(t, "mutool", "draw", "-q", "-N", "-o", os.DevNull, "-F", "pgm", path)
		run(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-dPDFSTOPONERROR", "-sDEVICE=nullpage", path)
		fontLines := strings.Split(strings.TrimSpace(run(t, "pdffonts", path)), "\n")[2:]
		if len(fontLines) != 3 {
			t.Errorf("%d fonts, want 3", len(fontLines))
		}
		for _, line := range fontLines {
			if !regexp.MustCompile(`^[A-Z]{6}\+LiberationSerif\S* +CID TrueType +Identity-H +yes yes yes`).MatchString(line) {
				t.Errorf("not embedded, cut down and mapped to Unicode: %s", line)
			}
		}
	}
}

func TestStrictValidation(t *testing.T) {
	outside.Program(t, "pdfcpu")
	path := keep(t, write(t, options(), sample(t)))
	run(t, "pdfcpu", "validate", "-m", "strict", "-q", path)
}

// TestArchival holds a twin that claims part 1 of ISO 19005 against PDFBox
// Preflight, a validator of PDF/A-1b. What part 2 asks of a file with nothing
// but text, lines and rectangles in it is the same; the differences (JPEG
// 2000, transparency, attachments, layers) are things these files do not have.
func TestArchival(t *testing.T) {
	outside.Program(t, "java")
	var jars []string
	for _, jar := range []string{"preflight", "pdfbox2", "fontbox2", "xmpbox", "commons-logging", "javax.activation", "jaxb-api"} {
		jars = append(jars, outside.File(t, "/usr/share/java/"+jar+".jar"))
	}
	check := func(o Options) string {
		path := keep(t, write(t, o, sample(t)))
		return run(t, "java", "-Djava.awt.headless=true", "-cp", strings.Join(jars, ":"), "org.apache.pdfbox.preflight.Validator_A1b", path)
	}
	for _, o := range []Options{options(), {}, {Uncompressed: true}} {
		o.part = 1
		if got := check(o); !strings.Contains(got, "is a valid PDF/A-1b file") {
			t.Error(got)
		}
	}
}

// TestFacts reads back what the file says of itself.
func TestFacts(t *testing.T) {
	pages := []layout.Page{sample(t), {Size: layout.Size{W: 297 * mm, H: 420 * mm}}, {Size: layout.Size{W: layout.Inch * 17 / 2, H: 11 * layout.Inch}}}
	path := keep(t, write(t, options(), pages...))
	info := run(t, "pdfinfo", "-box", "-f", "1", "-l", "3", path)
	for _, want := range []string{
		`Title: +Etiquetas de Março\n`, `Subject: +60 labels of the Valdoura`, `Creator: +cornerslip 1\.0\n`, `Producer: +cornerslip\n`,
		`Tagged: +no\n`, `Metadata Stream: +yes\n`, `Pages: +3\n`, `PDF version: +1\.7\n`,
		// The first page holds bars: it is a whole number of dots high.
		`Page +1 size: +595\.276 x 841\.92 pts \(A4\)`,
		`Page +1 TrimBox: +14\.17 +14\.20 +581\.10 +827\.75`,
		`Page +2 size: +841\.89 x 1190\.55 pts \(A3\)`,
		`Page +3 size: +612 x 792 pts \(letter\)`,
	} {
		if !regexp.MustCompile(want).MatchString(info) {
			t.Errorf("pdfinfo does not say %s:\n%s", want, info)
		}
	}
	if got := strings.TrimSpace(run(t, "pdfinfo", "-rawdates", path)); !strings.Contains(got, "CreationDate:    D:20260614093000+01'00'") {
		t.Errorf("the date: %s", got)
	}
	meta := run(t, "pdfinfo", "-meta", path)
	for _, want := range []string{"<pdfaid:part>2</pdfaid:part>", "<pdfaid:conformance>B</pdfaid:conformance>", ">Etiquetas de Março</rdf:li>",
		"<xmp:CreateDate>2026-06-14T09:30:00+01:00</xmp:CreateDate>", "<xmp:CreatorTool>cornerslip 1.0</xmp:CreatorTool>"} {
		if !strings.Contains(meta, want) {
			t.Errorf("the metadata do not say %s:\n%s", want, meta)
		}
	}
	catalog := run(t, "qpdf", "--show-object=1", path)
	for _, want := range []string{"/PrintScaling /None", "/Duplex /Simplex", "/PickTrayByPDFSize true", "/DisplayDocTitle true", "/Lang (pt-PT)"} {
		if !strings.Contains(catalog, want) {
			t.Errorf("the catalog does not say %s: %s", want, catalog)
		}
	}
	if strings.Contains(catalog, "/MarkInfo") {
		t.Error("the catalog claims tags that are not there")
	}
}

// words are lines that extraction has to give back: all the marks of labels,
// and scripts whose letters carry accents of their own.
var words = []string{
	"AVATAR To Te Ty P. LT 11 Wa. V. Tourist",
	"Cytisus striatus (Hill) Rothm. subsp. eriocarpus",
	"São João da Pesqueira, à beira do Távora; Açores, Graciosa",
	"40°21′14″ N, 7°33′48″ W ±30 m ♂ ♀ ☿ × № ½ 1240–1260 m — “alto”",
	"Đặng Thị Nguyễn Trường ở Quảng Ngãi, Ỹ ữ ặ",
	"ᾷ ᾄνθος Ὦ ῥόδον τῆς Ἑλλάδος",
	"Щука Ёлка й ї; Астрагал",
	"m̃ q̄ x̂ ɛ̃ ɔ̀ ʃ ʒ ʔ ŋ̊ x́ M̂ q̣̃",
	"office fjord affluent ﬁ",
}

func TestExtraction(t *testing.T) {
	setter := shaping.New(fonts.Default())
	for _, style := range []layout.Style{0, layout.Italic, layout.Bold} {
		for _, tracking := range []layout.Length{0, 9 * pt * 9 / 100, 9 * pt * 25 / 100} {
			page := layout.Page{Size: a4}
			for i, line := range words {
				p := at(10*mm, layout.Length(20+10*i)*mm)
				for _, word := range strings.SplitAfter(line, " ") {
					w, err := setter.Word(word, style)
					if err != nil {
						t.Fatal(err)
					}
					var texts []layout.Text
					texts, p = w.Texts(nil, p, 9*pt, tracking, 0)
					for _, text := range texts {
						page.Marks = append(page.Marks, text)
					}
				}
			}
			path := keep(t, write(t, options(), page))
			got := norm.NFC.String(run(t, "pdftotext", "-layout", path, "-"))
			lines := strings.FieldsFunc(got, func(r rune) bool { return r == '\n' || r == '\f' })
			for i, line := range words {
				want := strings.Join(strings.Fields(norm.NFC.String(line)), " ")
				if i >= len(lines) {
					t.Fatalf("%d lines came back of %d", len(lines), len(words))
				}
				if got := strings.Join(strings.Fields(lines[i]), " "); got != want {
					t.Errorf("style %d, tracking %v: %q came back as %q", style, tracking, want, got)
				}
			}
		}
	}
}

// TestActual holds that copying gives what was typed, not what was set.
func TestActual(t *testing.T) {
	page := layout.Page{Size: a4}
	for i, c := range []struct{ set, typed string }{
		{"FABACEAE", "Fabaceae"}, {"VALDOURA FIELD STATION", "Valdoura Field Station"}, {"hyphen-", "hyphenation"}, {"A", "🌿"},
	} {
		text := set(t, roman, 9*pt, at(10*mm, layout.Length(20+10*i)*mm), c.set)
		for j := range text.Clusters {
			text.Clusters[j].Adv += pt
		}
		text.Actual = c.typed
		page.Marks = append(page.Marks, text)
	}
	path := keep(t, write(t, options(), page))
	got := strings.Fields(run(t, "pdftotext", path, "-"))
	if want := "Fabaceae Valdoura Field Station hyphenation 🌿"; strings.Join(got, " ") != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// TestManyNeighbours cuts a font down to thousands of neighbouring characters
// of one width, which takes fpdf's own width table minutes.
func TestManyNeighbours(t *testing.T) {
	file := outside.File(t, "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf")
	faces, err := fonts.Default().With(file)
	if err != nil {
		t.Fatal(err)
	}
	f := faces.Faces()[len(faces.Faces())-1]
	page := layout.Page{Size: a4}
	var want []string
	for row := range 100 {
		var s strings.Builder
		text := layout.Text{At: at(5*mm, layout.Length(10+row*27/10)*mm), Face: f.Name, Size: 5 * pt}
		for col := range 50 {
			r := rune(0x4E00 + 50*row + col)
			if _, ok := f.Glyph(r); !ok {
				continue
			}
			s.WriteRune(r)
			text.Clusters = append(text.Clusters, layout.Cluster{Bytes: 3, Adv: 5 * pt})
		}
		text.S = s.String()
		page.Marks = append(page.Marks, text)
		want = append(want, text.S)
	}
	var b bytes.Buffer
	if err := Write(&b, each(page), faces, Options{}); err != nil {
		t.Fatal(err)
	}
	path := keep(t, b.Bytes())
	run(t, "qpdf", "--check", path)
	if got := strings.Fields(run(t, "pdftotext", "-layout", path, "-")); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Error("other characters came back")
	}
}

// TestDots renders bars and looks at every dot of the printer: each must be
// black or white as the module it lies in, at the resolution that the symbol
// was made for, whichever way the label is turned.
func TestDots(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 8))
	for _, dpi := range []int{300, 600} {
		dot := layout.Inch / layout.Length(dpi)
		x, shrink := 3*dot, dot/8
		bits := make([]byte, 90)
		for i := range bits {
			bits[i] = "01"[rnd.IntN(2)]
		}
		bits[0], bits[89] = '1', '1'
		height := 100 * dot
		bars := layout.Bars{
			Rect:      layout.Rect{At: at(10*dot, 20*dot), Size: layout.Size{W: 90 * x, H: height}},
			Symbology: "code128", S: "test", Module: x, Dot: dot, Quiet: 10 * x, Modules: string(bits), Rows: 1,
		}
		for i := 0; i < len(bits); {
			j := i
			for j < len(bits) && bits[j] == bits[i] {
				j++
			}
			if bits[i] == '1' {
				bars.Rects = append(bars.Rects, layout.Rect{At: at(layout.Length(i)*x+shrink, shrink), Size: layout.Size{W: layout.Length(j-i)*x - 2*shrink, H: height - 2*shrink}})
			}
			i = j
		}
		box := &layout.Box{Size: layout.Size{W: 300 * dot, H: 150 * dot}, Marks: []layout.Mark{bars}}
		page := layout.Page{Size: a4}
		var want [][4]int // x, y of the symbol's corner, and which way it runs, in dots
		for turn := range 4 {
			x0, y0 := 100+400*turn, 50+701*turn
			page.Boxes = append(page.Boxes, layout.Placed{At: at(layout.Length(x0)*dot, layout.Length(y0)*dot), Box: box, Turn: turn})
			switch turn {
			case 0:
				want = append(want, [4]int{x0 + 10, y0 + 20, 1, 0})
			case 1:
				want = append(want, [4]int{x0 + 150 - 20 - 1, y0 + 10, 0, 1})
			case 2:
				want = append(want, [4]int{x0 + 300 - 10 - 1, y0 + 150 - 20 - 1, -1, 0})
			case 3:
				want = append(want, [4]int{x0 + 20, y0 + 300 - 10 - 1, 0, -1})
			}
		}
		path := keep(t, write(t, options(), page))
		for name, img := range renderings(t, path, dpi) {
			for turn, w := range want {
				across, along := w[2], w[3]
				wrong := 0
				for i := range 90 * 3 {
					for j := range 100 {
						// One step along the symbol, one down its bars.
						px, py := w[0]+i*across-j*along, w[1]+i*along+j*across
						black := img.GrayAt(px, py).Y < 128
						if black != (bits[i/3] == '1') {
							wrong++
						}
					}
				}
				if wrong > 0 {
					t.Errorf("%d dpi, %s, turn %d: %d of %d dots are wrong", dpi, name, turn, wrong, 270*100)
				}
			}
		}
	}
}

// renderings draws a page without smoothing, as a printer does.
func renderings(t *testing.T, path string, dpi int) map[string]*image.Gray {
	out := filepath.Join(t.TempDir(), "page")
	run(t, "pdftoppm", "-gray", "-aaVector", "no", "-r", strconv.Itoa(dpi), "-singlefile", path, out)
	run(t, "mutool", "draw", "-q", "-N", "-A", "0", "-r", strconv.Itoa(dpi), "-c", "gray", "-F", "pgm", "-o", out+"-mu.pgm", path)
	run(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=pgmraw", fmt.Sprintf("-r%d", dpi), "-sOutputFile="+out+"-gs.pgm", path)
	return map[string]*image.Gray{"poppler": pgm(t, out+".pgm"), "mupdf": pgm(t, out+"-mu.pgm"), "ghostscript": pgm(t, out+"-gs.pgm")}
}

// pgm reads a grey picture in the plain binary form of Netpbm.
func pgm(t *testing.T, path string) *image.Gray {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`^P5\s(?:#[^\n]*\n)*(\d+)\s+(\d+)\s+255\s`).FindSubmatch(data)
	if m == nil {
		t.Fatalf("%s is not a grey picture: %q", path, data[:20])
	}
	w, _ := strconv.Atoi(string(m[1]))
	h, _ := strconv.Atoi(string(m[2]))
	pix := data[len(m[0]):]
	if len(pix) < w*h {
		t.Fatalf("%s is cut short", path)
	}
	return &image.Gray{Pix: pix, Stride: w, Rect: image.Rect(0, 0, w, h)}
}

// TestInk holds that a fill and lines land where the layout has them, to a
// dot of 600 dpi, and that greys are those asked for.
func TestInk(t *testing.T) {
	page := layout.Page{Size: a4, Marks: []layout.Mark{
		layout.Fill{Rect: layout.Rect{At: at(20*mm, 30*mm), Size: layout.Size{W: 40 * mm, H: 10 * mm}}, Grey: 128},
		layout.Stroke{From: at(20*mm, 60*mm), To: at(60*mm, 60*mm), Width: mm, Grey: 64},
		layout.Stroke{From: at(20*mm, 70*mm), To: at(60*mm, 70*mm), Width: mm, Dash: []layout.Length{4 * mm}},
	}}
	img := renderings(t, keep(t, write(t, options(), page)), 600)["poppler"]
	near := func(x, y float64) color.Gray { return img.GrayAt(int(x*600/25.4), int(y*600/25.4)) }
	for _, c := range []struct {
		x, y float64
		want uint8
	}{
		{19.9, 35, 255}, {20.1, 35, 128}, {59.9, 30.1, 128}, {60.1, 35, 255}, {40, 29.9, 255}, {40, 39.9, 128}, {40, 40.1, 255},
		{40, 59.4, 255}, {40, 59.6, 64}, {40, 60.4, 64}, {40, 60.6, 255}, {19.9, 60, 255}, {60.1, 60, 255},
		{22, 70, 0}, {26, 70, 255}, {30, 70, 0},
	} {
		if got := near(c.x, c.y).Y; int(got)-int(c.want) > 1 || int(c.want)-int(got) > 1 {
			t.Errorf("at %v, %v mm the ink is %d, want %d", c.x, c.y, got, c.want)
		}
	}
}
