package symbol

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	boombuler128 "github.com/boombuler/barcode/code128"
	boombulerqr "github.com/boombuler/barcode/qr"
	"github.com/makiuchi-d/gozxing"
	zxdmdec "github.com/makiuchi-d/gozxing/datamatrix/decoder"
	zxqrdec "github.com/makiuchi-d/gozxing/qrcode/decoder"
	"rsc.io/qr/coding"

	"cornerslip/layout"
)

// What the barcode library gets wrong without saying so, or refuses without
// need: each is either refused here with the reason or read back right.
func TestSilentFaults(t *testing.T) {
	for _, c := range []struct {
		why       string
		symbology string
		text      string
		refused   string // part of the error, "" if it must be read back
	}{
		{"numeric mode takes the hyphen for a figure", QR, "123-00456", ""},
		{"numeric mode takes the sign for a figure", QR, "+12345", ""},
		{"numeric mode takes the sign for a figure", QR, "-00", ""},
		{"ñ is taken for a function character and left out", Code128, "Peñalara", `"ñ" (U+00F1)`},
		{"ò likewise", Code128, "Mò1", "U+00F2"},
		{"ó likewise", Code128, "Estación 7", "U+00F3"},
		{"ô likewise", Code128, "Côa 12", "U+00F4"},
		{"a first letter from U+8000 to U+8FFF starts with the byte of a function character", DataMatrix, "茨城1", "U+8328"},
		{"QR in UTF-8 does not say that it is", QR, "Serra da Estrela, Gouveia, São Paio", "U+00E3"},
		{"no text is accepted", Code39, "", "nothing to say"},
		{"no text is accepted", QR, "", "nothing to say"},
		{"no text is accepted", DataMatrix, "", "nothing to say"},
		{"its check sum function returns 0", Code39, "ABC-123", ""},
		{"letters are dropped in Interleaved 2 of 5, which is not offered", "itf", "AB12", "no barcode is called"},
		{"the end sign inside the text", Code39, "VD*7", "no sign for"},
		{"small letters", Code39, "Vdoura 7", "no small letters"},
		{"the Data Matrix of 144 × 144 is drawn wrong", DataMatrix, strings.Repeat("A1b-", 400), "too long"},
		{"a control character", Code128, "VD\x1D7", "U+001D"},
		{"the delete character", Code128, "VD\x7F7", "U+007F"},
		{"bytes that are no text", Code128, "VD\xFF7", "U+FFFD"},
	} {
		b, err := Make(c.text, Options{Symbology: c.symbology, Check: true})
		if c.refused != "" {
			if err == nil || !strings.Contains(err.Error(), c.refused) {
				t.Errorf("%s (%s %q): error %v, want one with %q", c.why, c.symbology, c.text, err, c.refused)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s (%s %q): %v", c.why, c.symbology, c.text, err)
			continue
		}
		want := c.text
		if c.symbology == Code39 {
			want += "W" // the modulo 43 check character as published for ABC-123
		}
		if got, err := scan(look(b, view{dpi: 300}), c.symbology); got != want || b.S != want || err != nil {
			t.Errorf("%s (%s %q): read %q, %v, said to be %q", c.why, c.symbology, c.text, got, err, b.S)
		}
	}
}

func TestErrors(t *testing.T) {
	mm := layout.MM
	for _, c := range []struct {
		text string
		o    Options
		want string
	}{
		{"VDOURA-0000123", Options{MaxSize: layout.Size{W: 20 * mm, H: 10 * mm}},
			`"VDOURA-0000123" as code128 needs 47.5 × 6.5 mm with its quiet zones, the room is 20 × 10 mm; datamatrix would fit`},
		{"VDOURA-0000123", Options{Symbology: Code39, MaxSize: layout.Size{W: 50 * mm}},
			`"VDOURA-0000123" as code39 needs 57.7 × 8 mm with its quiet zones, the room is 50 mm wide; code128 would fit`},
		{"VDOURA-0000123", Options{Symbology: QR, MaxSize: layout.Size{W: 3 * mm, H: 3 * mm}},
			`"VDOURA-0000123" as qr needs 7.4 × 7.4 mm with its quiet zones, the room is 3 × 3 mm`},
		{"VDOURA-0000123", Options{Module: 4, MaxSize: layout.Size{H: 4 * mm}},
			`"VDOURA-0000123" as code128 needs 63.4 × 8.6 mm with its quiet zones, the room is 4 mm high`},
		{"1", Options{Symbology: "pdf417"}, `no barcode is called "pdf417"; there are code128, code39, datamatrix and qr`},
		{"1", Options{Module: 1}, "module of 1 printer dots: at least 2 are needed, 0 lets the program choose"},
		{"1", Options{Dot: -36}, "printer dot of -0.001mm: it must be more than nothing"},
		{"1", Options{Reduction: layout.Millimetres(0.2)}, "bar-width reduction 0.2mm takes more than half of a narrow bar of 0.254mm"},
		{"1", Options{Reduction: -mm}, "bar-width reduction of -1mm: it must not be negative"},
		{"1", Options{Height: -mm}, "bar height of -1mm: it must not be negative"},
		{"1", Options{MaxSize: layout.Size{W: -mm}}, "room of -1 × 0 mm for a barcode: it must not be negative"},
		{"1", Options{Symbology: QR, Level: "X"}, `"1" as qr: no error correction level is called X; there are L, M, Q and H`},
		{strings.Repeat("a", 2332), Options{Symbology: QR}, "too long"},
		{strings.Repeat("a", 80), Options{Symbology: DataMatrix, Rectangle: true}, "it is too long for a rectangle; a square holds more"},
	} {
		_, err := Make(c.text, c.o)
		if err == nil || !strings.HasSuffix(err.Error(), c.want) {
			t.Errorf("%.20q %+v:\n got %v\nwant %s", c.text, c.o, err, c.want)
		}
	}
	var size *SizeError
	_, err := Make("VDOURA-0000123", Options{MaxSize: layout.Size{W: 20 * mm, H: 10 * mm}})
	if !errors.As(err, &size) {
		t.Fatalf("%v is no SizeError", err)
	}
	if _, err := Make("VDOURA-0000123", Options{MaxSize: size.Need}); err != nil {
		t.Errorf("the size named as needed does not do: %v", err)
	}
}

// What the program picks, held against the sizes measured before.
func TestChoice(t *testing.T) {
	for _, c := range []struct {
		text string
		o    Options
		dots int
		w, h string // with quiet zones
	}{
		{"ABC0000001", Options{MaxSize: layout.Size{W: 45 * layout.MM, H: 15 * layout.MM}}, 3, "36.32", "5"},
		{"ABC0000001", Options{}, 3, "36.32", "5"},
		{"ABC0000001", Options{MaxSize: layout.Size{W: 50 * layout.MM, H: 15 * layout.MM}}, 4, "48.43", "6.26"},
		{"ABC0000001", Options{Dot: layout.Dot600}, 6, "36.32", "5"},
		{"ABC0000001", Options{Dot: layout.Dot600, MaxSize: layout.Size{W: 35 * layout.MM}}, 5, "30.27", "5"},
		{"ABC0000001", Options{Dot: layout.Dot1200, MaxSize: layout.Size{W: 28 * layout.MM}}, 9, "27.24", "5"},
		{"ABC0000001", Options{Dot: layout.MM / 8}, 2, "35.75", "5"}, // 203 dpi
		{"ABC0000001", Options{Symbology: DataMatrix, MaxSize: layout.Size{W: 20 * layout.MM, H: 6.5 * 36000}}, 4, "6.1", "6.09"},
		{"https://example.org/id/ABC0000001", Options{Symbology: QR, Module: 3}, 3, "9.4", "9.39"},
	} {
		if got := mustMake(t, c.text, c.o); got.Module != layout.Length(c.dots)*got.Dot {
			t.Errorf("%q %+v: %d dots, want %d", c.text, c.o, got.Module/got.Dot, c.dots)
		} else {
			s := got.Size
			s.W += 2 * got.Quiet
			if got.Rows > 1 {
				s.H += 2 * got.Quiet
			}
			if w, h := s.W.Decimal(layout.MM, 2), (s.H/360*360).Decimal(layout.MM, 2); w != c.w || !strings.HasPrefix(h, c.h) {
				t.Errorf("%q %+v: %s × %s mm, want %s × %s", c.text, c.o, w, h, c.w, c.h)
			}
		}
	}
}

// shortest128 returns how many symbol characters text takes at least, the
// start included: all three code sets, the changes between them and the shift
// between A and B, relaxed until nothing gets shorter.
func shortest128(text string) int {
	const a, b, c, far = 0, 1, 2, 1 << 20
	least := make([][3]int, len(text)+1)
	for i := range least {
		least[i] = [3]int{far, far, far}
	}
	least[0] = [3]int{1, 1, 1}
	holds := func(set, i int) bool {
		return set == a && text[i] < 0x60 || set == b && text[i] >= 0x20
	}
	for changed := true; changed; {
		changed = false
		reach := func(at, set, n int) {
			if n < least[at][set] {
				least[at][set], changed = n, true
			}
		}
		for at := range least {
			for set, n := range least[at] {
				for to := a; to <= c; to++ {
					reach(at, to, n+1)
				}
				if at == len(text) {
					continue
				}
				switch {
				case set == c:
					if at+1 < len(text) && isDigit(text[at]) && isDigit(text[at+1]) {
						reach(at+2, c, n+1)
					}
				case holds(set, at):
					reach(at+1, set, n+1)
				case holds(1-set, at):
					reach(at+1, set, n+2)
				}
			}
		}
	}
	return slices.Min(least[len(text)][:])
}

// No text of figures and letters has a shorter Code 128 than ours, code set A
// and shifts included; and readers agree on what it says.
func TestCode128IsShortest(t *testing.T) {
	var all func(prefix string, n int)
	checked := 0
	check := func(text string) {
		checked++
		if got, want := len(code128Values(text)), shortest128(text); got != want {
			t.Errorf("%q: %d symbol characters, %d would do: %v", text, got, want, code128Values(text))
		}
	}
	all = func(prefix string, n int) {
		if prefix != "" {
			check(prefix)
		}
		if n > 0 {
			for _, c := range []string{"7", "A", "a"} {
				all(prefix+c, n-1)
			}
		}
	}
	all("", 9)
	for _, text := range texts(7, 3000) {
		check(text)
	}
	t.Logf("%d texts", checked)
}

// The library agrees where it is at its best: it is never shorter, and equal
// where its module string is as short.
func TestCode128AsLibrary(t *testing.T) {
	shorter := 0
	for _, text := range texts(9, 2000) {
		c, err := boombuler128.Encode(text)
		if err != nil {
			t.Fatal(err)
		}
		want, got := linearModules(c), code128(text)
		if len(got) > len(want) {
			t.Errorf("%q: %d modules, the library has %d", text, len(got), len(want))
		}
		if len(got) < len(want) {
			shorter++
		}
	}
	t.Logf("%d of 2000 are shorter than the library's", shorter)
}

// A QR Code in one mode throughout is as large as the library's in that mode.
func TestQRAsLibrary(t *testing.T) {
	for n := 1; n < 1200; n += 1 + n/5 {
		for mode, c := range map[boombulerqr.Encoding]string{boombulerqr.Numeric: "7", boombulerqr.AlphaNumeric: "K", boombulerqr.Unicode: "k"} {
			text := strings.Repeat(c, n)
			want, err := boombulerqr.Encode(text, boombulerqr.M, mode)
			if err != nil {
				t.Fatal(err)
			}
			if got, why := qrCode(text, "M"); why != "" || got.rows != want.Bounds().Dx() {
				t.Errorf("%d × %q: %d modules %s, want %d", n, c, got.rows, why, want.Bounds().Dx())
			}
		}
	}
}

// The division of a text into figures, capitals and bytes is held against
// trying every mode for every character.
func TestQRPartsAreShortest(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 18004))
	for range 300 {
		b := make([]byte, 1+r.IntN(11))
		for i := range b {
			b[i] = "0123456789AB:ab"[r.IntN(15)]
		}
		text := string(b)
		bits := func(parts []coding.Encoding) (n int) {
			for _, p := range parts {
				n += p.Bits(1)
			}
			return n
		}
		parts := qrParts(text, 1)
		best := 1 << 30
		var try func(rest string, n int)
		try = func(rest string, n int) {
			if rest == "" {
				best = min(best, n)
			}
			for k := 1; k <= len(rest); k++ {
				for _, p := range []coding.Encoding{coding.Num(rest[:k]), coding.Alpha(rest[:k]), coding.String(rest[:k])} {
					if p.Check() == nil && n+p.Bits(1) < best {
						try(rest[k:], n+p.Bits(1))
					}
				}
			}
		}
		try(text, 0)
		said := ""
		for _, p := range parts {
			switch p := p.(type) {
			case coding.Num:
				said += string(p)
			case coding.Alpha:
				said += string(p)
			case coding.String:
				said += string(p)
			}
		}
		if said != text || bits(parts) != best {
			t.Errorf("%q: %v takes %d bits, %d would do", text, parts, bits(parts), best)
		}
	}
}

// said reads a square symbol's modules with another program's decoder, which
// needs no image.
func said(m matrix, symbology string) (string, error) {
	bits, err := gozxing.NewBitMatrix(m.cols(), m.rows)
	if err != nil {
		return "", err
	}
	for y := range m.rows {
		for x := range m.cols() {
			if m.dark(x, y) {
				bits.Set(x, y)
			}
		}
	}
	if symbology == QR {
		res, err := zxqrdec.NewDecoder().Decode(bits, nil)
		if err != nil {
			return "", err
		}
		return res.GetText(), nil
	}
	res, err := zxdmdec.NewDecoder().Decode(bits)
	if err != nil {
		return "", err
	}
	return res.GetText(), nil
}

// Square symbols of every size say what they should, and so does text that
// takes every turn through the encodation schemes.
func TestSquareSymbolsSay(t *testing.T) {
	read := func(text string, o Options) {
		b, err := Make(text, o)
		if err != nil {
			t.Errorf("%.30q %s%s: %v", text, o.Symbology, o.Level, err)
			return
		}
		if got, err := said(matrix{modules: b.Modules, rows: b.Rows}, o.Symbology); got != text || err != nil {
			t.Errorf("%.60q %s%s, %d rows: read %.60q, %v", text, o.Symbology, o.Level, b.Rows, got, err)
		}
	}
	r := rand.New(rand.NewPCG(5, 16022))
	for _, text := range texts(11, 2000) {
		read(text, Options{Symbology: DataMatrix})
		read(text, Options{Symbology: QR})
	}
	sizes := map[string]bool{}
	for i := range 3000 { // long stretches of one kind, one after another
		var b strings.Builder
		for range 1 + r.IntN(4) {
			kind := []string{"ABCXYZ 059", "abcxyz 059", "0123456789", "A*>Z", "!#-./:;@[]^_", "{|}~`aB"}[r.IntN(6)]
			for range 1 + r.IntN(9) {
				b.WriteByte(kind[r.IntN(len(kind))])
			}
		}
		read(b.String(), Options{Symbology: DataMatrix})
		if i%3 == 0 && b.Len() < 16 {
			read(b.String(), Options{Symbology: DataMatrix, Rectangle: true})
		}
	}
	for n := 1; n < 1500; n += 1 + n/12 {
		var b strings.Builder
		for range n {
			b.WriteByte(byte(0x20 + r.IntN(0x5F)))
		}
		if n < 1300 {
			read(b.String(), Options{Symbology: DataMatrix, Module: 3})
			if m, why := dataMatrix(b.String(), false); why == "" {
				sizes[fmt.Sprint("datamatrix ", m.rows)] = true
			}
		}
		for _, level := range []string{"L", "M", "Q", "H"} {
			if m, why := qrCode(b.String(), level); why == "" {
				sizes[fmt.Sprint("qr ", m.rows)] = true
				read(b.String(), Options{Symbology: QR, Level: level, Module: 3})
			}
		}
	}
	t.Logf("%d sizes", len(sizes))
	if len(sizes) < 23+35 {
		t.Errorf("only %d sizes were tried", len(sizes))
	}
}
