package symbol

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/layout"
)

// a4 is ISO 216 A4, in portrait.
var a4 = layout.Size{W: 210 * layout.MM, H: 297 * layout.MM}

// page writes a PDF of one page of the size given with rectangles on it, in
// hundredths of a point or finer, as digits says.
func page(size layout.Size, rects []layout.Rect, digits int) []byte {
	var content bytes.Buffer
	pt := func(l layout.Length) string { return l.Decimal(layout.Pt, digits) }
	for _, r := range rects {
		fmt.Fprintf(&content, "%s %s %s %s re f\n", pt(r.At.X), pt(size.H-r.Bottom()), pt(r.W), pt(r.H))
	}
	var out bytes.Buffer
	var at []int
	object := func(s string) {
		at = append(at, out.Len())
		fmt.Fprintf(&out, "%d 0 obj\n%s\nendobj\n", len(at), s)
	}
	out.WriteString("%PDF-1.4\n")
	object("<</Type/Catalog/Pages 2 0 R>>")
	object("<</Type/Pages/Kids[3 0 R]/Count 1>>")
	object(fmt.Sprintf("<</Type/Page/Parent 2 0 R/MediaBox[0 0 %s %s]/Contents 4 0 R/Resources<<>>>>", pt(size.W), pt(size.H)))
	object(fmt.Sprintf("<</Length %d>>\nstream\n%s\nendstream", content.Len(), content.String()))
	start := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, a := range at {
		fmt.Fprintf(&out, "%010d 00000 n \n", a)
	}
	fmt.Fprintf(&out, "trailer<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(at)+1, start)
	return out.Bytes()
}

// A raster is a page as dots, true where there is ink.
type raster struct {
	w, h int
	ink  []bool
}

// rasterise lets one of three programs turn a PDF into dots: Ghostscript,
// MuPDF or Poppler.
func rasterise(t *testing.T, program string, pdf []byte, dpi int) raster {
	t.Helper()
	path := outside.Program(t, program)
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.pdf"), filepath.Join(dir, "out.pgm")
	if err := os.WriteFile(in, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	r := fmt.Sprintf("-r%d", dpi)
	args := map[string][]string{
		"gs":       {"-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=pgmraw", r, "-sOutputFile=" + out, in},
		"mutool":   {"draw", "-q", "-r", r[2:], "-c", "gray", "-o", out, in},
		"pdftoppm": {r[:2], r[2:], "-gray", "-singlefile", in, out[:len(out)-4]},
	}[program]
	if msg, err := exec.Command(path, args...).CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", program, err, msg)
	}
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	// Ghostscript puts a comment after the first line.
	if i := bytes.IndexByte(data, '\n'); data[i+1] == '#' {
		data = append(data[:i:i], data[i+1+bytes.IndexByte(data[i+1:], '\n'):]...)
	}
	var p raster
	var most int
	if _, err := fmt.Fscanf(bytes.NewReader(data), "P5\n%d %d\n%d\n", &p.w, &p.h, &most); err != nil {
		t.Fatalf("%s: %v in %.40q", program, err, data)
	}
	p.ink = make([]bool, p.w*p.h)
	for i, g := range data[len(data)-p.w*p.h:] {
		p.ink[i] = g < 128
	}
	return p
}

// Three rasterisers paint exactly the dots of the modules, at the resolution a
// symbol was made for and at twice that.
func TestRasterisers(t *testing.T) {
	for _, c := range []struct {
		symbology string
		dot       layout.Length
		dpi       int
	}{
		{Code128, layout.Dot300, 300},
		{DataMatrix, layout.Dot300, 300},
		{DataMatrix, layout.Dot300, 600},
		{QR, layout.Dot600, 600},
	} {
		b := mustMake(t, "VDOURA-0000123", Options{Symbology: c.symbology, Dot: c.dot})
		at := layout.Point{X: 401 * c.dot, Y: 703 * c.dot}
		var placed []layout.Rect
		for _, r := range b.Rects {
			r.At = r.At.Add(at)
			placed = append(placed, r)
		}
		for _, program := range []string{"gs", "mutool", "pdftoppm"} {
			p := rasterise(t, program, page(layout.Size{W: 90 * layout.MM, H: a4.H}, placed, 2), c.dpi)
			if n := wrong(p, b, at, c.dpi); n > 0 {
				t.Errorf("%s, %s for dots of %s at %d dpi: %d dots are wrong", program, c.symbology, c.dot, c.dpi, n)
			}
		}
	}
}

// wrong counts the dots of p that are not as b's modules want them.
func wrong(p raster, b layout.Bars, at layout.Point, dpi int) int {
	dot := layout.Inch / layout.Length(dpi)
	m := matrix{modules: b.Modules, rows: b.Rows}
	n := 0
	for y := range p.h {
		for x := range p.w {
			px, py := layout.Length(x)*dot-at.X, layout.Length(y)*dot-at.Y
			want := px >= 0 && py >= 0 && py < b.H
			if b.Rows == 1 {
				want = want && m.dark(int(px/b.Module), 0)
			} else {
				want = want && m.dark(int(px/b.Module), int(py/b.Module))
			}
			if p.ink[y*p.w+x] != want {
				n++
			}
		}
	}
	return n
}
