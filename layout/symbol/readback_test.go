package symbol

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	zxdm "github.com/makiuchi-d/gozxing/datamatrix"
	"github.com/makiuchi-d/gozxing/oned"
	zxqr "github.com/makiuchi-d/gozxing/qrcode"

	"cornerslip/cmd/outside"
	"cornerslip/layout"
)

// A view is how a printed symbol reaches a reader's eye.
type view struct {
	dpi  int
	gain layout.Length // by how much the ink spreads on each side
	blur float64       // standard deviation in modules
	turn float64       // degrees
}

func (v view) String() string {
	return fmt.Sprintf("%d dpi, gain %s, blur %.2f X, turn %g°", v.dpi, v.gain, v.blur, v.turn)
}

// look paints b's rectangles on white with its quiet zone and more around, as
// v sees them, a pixel a dot of v.dpi.
func look(b layout.Bars, v view) *image.Gray {
	const fine = 4 // samples a pixel, each way
	step := layout.Inch / layout.Length(v.dpi*fine)
	margin := b.Quiet + 6*b.Module
	w, h := int((b.W+2*margin)/step), int((b.H+2*margin)/step)
	ink := make([]bool, w*h)
	for _, r := range b.Rects {
		r = r.Inset(-v.gain)
		// A sample is inked if its centre is.
		x0, x1 := int((r.At.X+margin+step/2)/step), int((r.Right()+margin+step/2)/step)
		y0, y1 := int((r.At.Y+margin+step/2)/step), int((r.Bottom()+margin+step/2)/step)
		for y := y0; y < y1; y++ {
			for x := x0; x < x1; x++ {
				ink[y*w+x] = true
			}
		}
	}
	sin, cos := math.Sincos(v.turn * math.Pi / 180)
	side := math.Abs(sin)*float64(max(w, h)) + fine
	W, H := int(float64(w)+side)/fine, int(float64(h)+side)/fine
	grey := make([]float64, W*H)
	for py := range H {
		for px := range W {
			n := 0
			for s := range fine * fine {
				x := float64(px*fine+s%fine) + 0.5 - float64(W*fine)/2
				y := float64(py*fine+s/fine) + 0.5 - float64(H*fine)/2
				ix, iy := int(math.Floor(x*cos+y*sin+float64(w)/2)), int(math.Floor(y*cos-x*sin+float64(h)/2))
				if ix < 0 || iy < 0 || ix >= w || iy >= h || !ink[iy*w+ix] {
					n++
				}
			}
			grey[py*W+px] = float64(n) / (fine * fine)
		}
	}
	blur(grey, W, H, v.blur*float64(b.Module)/float64(step*fine))
	img := image.NewGray(image.Rect(0, 0, W, H))
	for i, g := range grey {
		img.SetGray(i%W, i/W, color.Gray{Y: uint8(20 + g*215)})
	}
	return img
}

// blur smooths g with a Gaussian bell of the standard deviation sigma.
func blur(g []float64, w, h int, sigma float64) {
	if sigma == 0 {
		return
	}
	n := int(math.Ceil(3 * sigma))
	bell := make([]float64, 2*n+1)
	sum := 0.0
	for i := range bell {
		bell[i] = math.Exp(-float64((i-n)*(i-n)) / (2 * sigma * sigma))
		sum += bell[i]
	}
	for _, along := range []struct{ n, step, lines, next int }{{w, 1, h, w}, {h, w, w, 1}} {
		line := make([]float64, along.n)
		for l := range along.lines {
			for i := range line {
				line[i] = 0
				for k, f := range bell {
					j := min(max(i+k-n, 0), along.n-1)
					line[i] += f / sum * g[l*along.next+j*along.step]
				}
			}
			for i, f := range line {
				g[l*along.next+i*along.step] = f
			}
		}
	}
}

// scan reads an image with gozxing, as it is and then at half its size, as
// programs that look for symbols do.
func scan(img *image.Gray, symbology string) (string, error) {
	var r gozxing.Reader
	switch symbology {
	case Code128:
		r = oned.NewCode128Reader()
	case Code39:
		r = oned.NewCode39Reader()
	case DataMatrix:
		r = zxdm.NewDataMatrixReader()
	default:
		r = zxqr.NewQRCodeReader()
	}
	var failed error
	for _, img := range []*image.Gray{img, half(img)} {
		bmp, err := gozxing.NewBinaryBitmapFromImage(img)
		if err != nil {
			return "", err
		}
		res, err := r.Decode(bmp, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
		if err == nil {
			return res.GetText(), nil
		}
		failed = errors.Join(failed, err)
	}
	return "", failed
}

// half returns img with four pixels made one.
func half(img *image.Gray) *image.Gray {
	s := img.Bounds().Size().Div(2)
	out := image.NewGray(image.Rectangle{Max: s})
	for y := range s.Y {
		for x := range s.X {
			i := img.PixOffset(2*x, 2*y)
			sum := int(img.Pix[i]) + int(img.Pix[i+1]) + int(img.Pix[i+img.Stride]) + int(img.Pix[i+img.Stride+1])
			out.Pix[out.PixOffset(x, y)] = uint8(sum / 4)
		}
	}
	return out
}

func mustMake(t testing.TB, text string, o Options) layout.Bars {
	t.Helper()
	b, err := Make(text, o)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Numbers of the sorts houses use, in every symbology.
var specimens = []string{"VDOURA-0000123", "VDOURA0000124", "VD 7", "LISU.104711", "COI00098765", "AZ-00000001"}

func symbols(t testing.TB, o Options) []layout.Bars {
	var out []layout.Bars
	for _, s := range []string{Code128, Code39, DataMatrix, QR} {
		o.Symbology = s
		for _, text := range specimens {
			if s == QR {
				text = "https://herbario.example.org/id/" + strings.ReplaceAll(text, " ", "_")
			}
			out = append(out, mustMake(t, text, o))
		}
	}
	return out
}

// Every symbol at its default size is read back from a 300 and a 600 dpi
// image: as drawn, with ink spread by a tenth of a module on each side, with
// blur, and turned by five degrees.
func TestReadBack(t *testing.T) {
	for i, b := range symbols(t, Options{}) {
		views := []view{
			{dpi: 300},
			{dpi: 600},
			{dpi: 300, gain: b.Module / 10},
			{dpi: 600, turn: 5, gain: b.Module / 10, blur: 0.3},
			{dpi: 300, turn: 5},
		}
		if i%3 != 0 {
			views = views[2:]
		}
		for _, v := range views {
			if got, err := scan(look(b, v), b.Symbology); err != nil || got != b.S {
				t.Errorf("%s %q, X %s, %s: read %q, %v", b.Symbology, b.S, b.Module, v, got, err)
			}
		}
	}
}

// The same by two readers that are not in Go.
func TestReadBackByPrograms(t *testing.T) {
	zbar, dmtx := outside.Program(t, "zbarimg"), outside.Program(t, "dmtxread")
	all := symbols(t, Options{})
	for _, v := range []view{{dpi: 300}, {dpi: 600}, {dpi: 600, turn: 5, gain: layout.MM / 40, blur: 0.3}} {
		var files, want []string
		dir := t.TempDir()
		for i, b := range all {
			var buf bytes.Buffer
			if err := png.Encode(&buf, look(b, v)); err != nil {
				t.Fatal(err)
			}
			name := filepath.Join(dir, fmt.Sprintf("%02d.png", i))
			if err := os.WriteFile(name, buf.Bytes(), 0o600); err != nil {
				t.Fatal(err)
			}
			if b.Symbology == DataMatrix {
				got, err := exec.Command(dmtx, "-n", "-N1", "-m5000", name).Output()
				if err != nil || strings.TrimRight(string(got), "\n") != b.S {
					t.Errorf("dmtxread of %q, X %s, %s: %q, %v", b.S, b.Module, v, got, err)
				}
				continue
			}
			files, want = append(files, name), append(want, b.S)
		}
		got, err := exec.Command(zbar, append([]string{"-q", "--raw"}, files...)...).Output()
		if err != nil || strings.TrimRight(string(got), "\n") != strings.Join(want, "\n") {
			t.Errorf("zbarimg, %s: %v\n got %q\nwant %q", v, err, got, want)
		}
	}
}

// How much a symbol at its default size bears before a reader fails; the
// figures are for people, the floor is what office printers and copiers do.
func TestMargins(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a while")
	}
	for _, symbology := range []string{Code128, Code39, DataMatrix, QR} {
		b := mustMake(t, "VDOURA-0000123", Options{Symbology: symbology})
		reads := func(v view) bool {
			v.dpi = 600
			got, err := scan(look(b, v), symbology)
			return err == nil && got == b.S
		}
		gain, blur, turn := 0, 0, 0
		for gain < 60 && reads(view{gain: b.Module * layout.Length(gain+5) / 100}) {
			gain += 5
		}
		for blur < 150 && reads(view{blur: float64(blur+10) / 100}) {
			blur += 10
		}
		for turn < 40 && reads(view{turn: float64(turn + 5)}) {
			turn += 5
		}
		t.Logf("%s, X %s: read up to a gain of %d %% of X on each side, a blur of %d %% of X, a turn of %d°", symbology, b.Module, gain, blur, turn)
		if gain < 15 || blur < 30 || turn < 5 {
			t.Errorf("%s bears too little", symbology)
		}
	}
}
