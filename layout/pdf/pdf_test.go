package pdf

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"cornerslip/fonts"
	"cornerslip/layout"

	"github.com/google/go-cmp/cmp"
)

func TestGolden(t *testing.T) {
	mount := layout.Page{Size: layout.Size{W: 297 * mm, H: 420 * mm}, Marks: []layout.Mark{
		layout.Stroke{From: at(187*mm, 341*mm), To: at(292*mm, 341*mm), Width: pt / 4, Grey: 160},
		layout.Bars{
			Rect:      layout.Rect{At: at(100*layout.Dot600, 200*layout.Dot600), Size: layout.Size{W: 18 * layout.Dot600, H: 5 * mm}},
			Rects:     []layout.Rect{{At: at(190, 190), Size: layout.Size{W: 6*layout.Dot600 - 380, H: 5 * mm}}},
			Symbology: "code39", S: "A", Module: 6 * layout.Dot600, Dot: layout.Dot600, Modules: "100", Rows: 1,
		},
	}}
	for _, c := range []struct {
		name  string
		o     Options
		pages []layout.Page
	}{
		{"sample", options(), []layout.Page{sample(t)}},
		{"no-words", Options{}, []layout.Page{mount, {Size: a4}}},
	} {
		c.o.Uncompressed = true
		got := write(t, c.o, c.pages...)
		keepOrCompare(t, "testdata/"+c.name+".pdf", got, func(want []byte) string { return cmp.Diff(readable(want), readable(got)) })
		// Beside it the pages that it was made from.
		var list bytes.Buffer
		for _, p := range c.pages {
			if err := layout.Dump(&list, p); err != nil {
				t.Fatal(err)
			}
		}
		keepOrCompare(t, "testdata/"+c.name+".txt", list.Bytes(), func(want []byte) string { return cmp.Diff(string(want), list.String()) })
	}
}

func keepOrCompare(t *testing.T, golden string, got []byte, diff func(want []byte) string) {
	t.Helper()
	if os.Getenv("UPDATE") == "1" {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs; look at the change and run with UPDATE=1\n%s", golden, diff(want))
	}
}

// readable returns the lines of a file that people can read.
func readable(pdf []byte) (lines []string) {
	for line := range strings.Lines(string(pdf)) {
		if !strings.ContainsFunc(line, func(r rune) bool { return r != '\n' && r < ' ' || r > '~' }) {
			lines = append(lines, line)
		}
	}
	return lines
}

// many returns n pages with different words, to be equal however they are
// made.
func many(t testing.TB, n int) []layout.Page {
	page := sample(t)
	pages := make([]layout.Page, n)
	for i := range pages {
		p := page
		p.Marks = append(p.Marks[:len(p.Marks):len(p.Marks)],
			set(t, []string{roman, italic, bold}[i%3], 8*pt, at(10*mm, 280*mm), string(rune('Ā'+i%200))+strconv.Itoa(i)))
		pages[i] = p
	}
	return pages
}

func TestSameBytes(t *testing.T) {
	pages := many(t, 600)
	made := func(procs, workers int) []byte {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(procs))
		o := options()
		o.Workers, o.Spool = workers, t.TempDir()
		o.Uncompressed = true // more bytes: the spool needs its file
		b := write(t, o, pages...)
		if left, err := os.ReadDir(o.Spool); err != nil || len(left) > 0 {
			t.Errorf("left in the spool's folder: %v, %v", left, err)
		}
		return b
	}
	want := made(1, 1)
	if len(want) < 2*spoolMemory {
		t.Fatalf("%d bytes do not fill the spool", len(want))
	}
	for _, c := range [][2]int{{8, 1}, {1, 8}, {8, 8}, {2, 0}} {
		if !bytes.Equal(made(c[0], c[1]), want) {
			t.Errorf("GOMAXPROCS=%d and %d workers give another file", c[0], c[1])
		}
	}
}

// TestTree opens a file whose page tree has three levels.
func TestTree(t *testing.T) {
	const n = fanout*fanout + 2
	path := keep(t, write(t, Options{}, many(t, n)...))
	run(t, "qpdf", "--check", path)
	if got := strings.TrimSpace(run(t, "qpdf", "--show-npages", path)); got != strconv.Itoa(n) {
		t.Errorf("%s pages, want %d", got, n)
	}
	for _, page := range []int{1, fanout, fanout + 1, n} {
		p := strconv.Itoa(page)
		got := run(t, "pdftotext", "-f", p, "-l", p, path, "-")
		if want := strconv.Itoa(page - 1); !regexp.MustCompile(`\D` + want + `\s`).MatchString(got) {
			t.Errorf("page %d does not say %s: %q", page, want, got)
		}
	}
}

func TestErrors(t *testing.T) {
	good := set(t, roman, 9*pt, at(5*mm, 5*mm), "good")
	with := func(f func(*layout.Text)) layout.Mark {
		c := good
		c.Clusters = append([]layout.Cluster(nil), c.Clusters...)
		f(&c)
		return c
	}
	one := func(s string) layout.Mark {
		return with(func(t *layout.Text) { t.S, t.Clusters = s, []layout.Cluster{{Bytes: len(s), Adv: pt}} })
	}
	for _, c := range []struct {
		name string
		mark layout.Mark
		want string
	}{
		{"no such face", with(func(t *layout.Text) { t.Face = "Fraktur" }), `there is no face "Fraktur"`},
		{"no face", with(func(t *layout.Text) { t.Face = "" }), `text "good": no face is named`},
		{"no size", with(func(t *layout.Text) { t.Size = 0 }), `text "good": size 0mm at 5mm, 5mm is beyond any paper`},
		{"unknown mark", &good, "a mark of the unknown type *layout.Text"},
		{"no mark", nil, "a mark of the unknown type <nil>"},
		{"beyond the basic plane", one("\U0001F33F"), `text "🌿": U+1F33F '🌿' lies beyond U+FFFF, where no face of the PDF can reach`},
		{"no glyph", one("植"), `text "植": face LiberationSerif has no glyph for U+690D '植'`},
		{"control character", one("a\tb"), `text "a\tb": the control character U+0009 cannot be drawn`},
		{"not UTF-8", one("a\xff"), `text "a\xff": not valid UTF-8`},
		{"actual not UTF-8", with(func(t *layout.Text) { t.Actual = "\xc3" }), `text "good": not valid UTF-8`},
		{"too few clusters", with(func(t *layout.Text) { t.Clusters = t.Clusters[:3] }), `text "good": its clusters cover 3 of 4 bytes`},
		{"no clusters", with(func(t *layout.Text) { t.Clusters = nil }), `text "good": its clusters cover 0 of 4 bytes`},
		{"too many clusters", with(func(t *layout.Text) { t.S = "goo" }), `text "goo": a cluster of 1 bytes at byte 3 of 3`},
		{"empty cluster", with(func(t *layout.Text) { t.Clusters[0].Bytes = 0 }), `text "good": a cluster of 0 bytes at byte 0 of 4`},
		{"within a character", with(func(t *layout.Text) {
			t.S, t.Clusters = "é", []layout.Cluster{{Bytes: 1, Adv: pt}, {Bytes: 1, Adv: pt}}
		}), `text "é": a cluster ends within a character, at byte 1`},
		{"huge advance", with(func(t *layout.Text) { t.Clusters[1].Adv = 1 << 62 }), "are beyond any paper"},
		{"negative fill", layout.Fill{Rect: layout.Rect{Size: layout.Size{W: -mm, H: mm}}}, "a filled rectangle of -1 × 1 mm: a size below zero"},
		{"invisible line", layout.Stroke{To: at(mm, 0)}, "a line of width 0mm cannot be seen"},
		{"dashes of nothing", layout.Stroke{Width: pt, Dash: []layout.Length{0, 0}}, "a line whose dashes are all zero"},
		{"no bars", layout.Bars{Symbology: "qr", S: "x"}, `the qr symbol "x" has no bars`},
		{"empty bar", layout.Bars{Symbology: "qr", S: "x", Rects: make([]layout.Rect, 1)}, `the qr symbol "x" has a bar of 0 × 0 mm`},
	} {
		t.Run(c.name, func(t *testing.T) {
			box := &layout.Box{
				Size:  layout.Size{W: 105 * mm, H: 74 * mm},
				Marks: []layout.Mark{good, c.mark},
				Ref:   layout.Ref{File: "trip.csv", Line: 14, Row: 12, Kind: "sheet", Key: "I. Almeida 214", Label: 1, Of: 1},
			}
			fine := layout.Page{Size: a4}
			var b bytes.Buffer
			err := Write(&b, each(fine, layout.Page{Size: a4, Boxes: []layout.Placed{{Box: box}}}, fine), fonts.Default(), Options{})
			if err == nil {
				t.Fatal("no error")
			}
			const before, after = "trip.csv:14: row 12, I. Almeida 214, sheet label: ", " (page 2)"
			got := err.Error()
			if !strings.HasPrefix(got, before) || !strings.HasSuffix(got, after) || !strings.Contains(got, c.want) {
				t.Errorf("got  %s\nwant %s%s%s", got, before, c.want, after)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes were written all the same", b.Len())
			}
			// The same mark on the paper itself.
			err = Write(&b, each(layout.Page{Size: a4, Marks: []layout.Mark{c.mark}}), fonts.Default(), Options{})
			if err == nil || !strings.HasPrefix(err.Error(), "a mark on the paper: ") || !strings.Contains(err.Error(), c.want) {
				t.Errorf("on the paper: %v", err)
			}
		})
	}
}

func TestPageErrors(t *testing.T) {
	box := &layout.Box{Size: layout.Size{W: mm, H: mm}}
	for _, c := range []struct {
		page layout.Page
		want string
	}{
		{layout.Page{}, "a page of 0 × 0 mm has no room for anything (page 1)"},
		{layout.Page{Size: layout.Size{W: 1 << 60, H: mm}}, "is larger than any paper"},
		{layout.Page{Size: a4, Trim: layout.Rect{Size: layout.Size{W: 211 * mm, H: mm}}}, "reaches beyond the page"},
		{layout.Page{Size: a4, Boxes: []layout.Placed{{Box: box, Turn: 4}}}, "turned by 4 quarters"},
		{layout.Page{Size: a4, Boxes: []layout.Placed{{}}}, "holds no label"},
		{layout.Page{Size: a4, Boxes: []layout.Placed{{Box: box, At: at(1<<61, 0)}}}, "placed beyond any paper"},
	} {
		err := Write(io.Discard, each(c.page), fonts.Default(), Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
	if err := Write(io.Discard, each(), fonts.Default(), Options{}); err == nil || err.Error() != "there is no page to write" {
		t.Errorf("without pages: %v", err)
	}
}

// TestSequenceError holds that an error of the sequence comes through as it
// is, that nothing is written then, and that an error of an earlier page goes
// before it.
func TestSequenceError(t *testing.T) {
	stop := errors.New("trip.csv: the file has changed since it was checked")
	for _, workers := range []int{1, 8} {
		for _, bad := range []bool{false, true} {
			var b bytes.Buffer
			err := Write(&b, func(yield func(layout.Page, error) bool) {
				for i := range 40 {
					p := layout.Page{Size: a4}
					if bad && i == 37 {
						p.Size.W = 0
					}
					if !yield(p, nil) {
						return
					}
				}
				yield(layout.Page{}, stop)
			}, fonts.Default(), Options{Workers: workers})
			if bad && (err == nil || !strings.HasSuffix(err.Error(), "(page 38)")) {
				t.Errorf("the page's error: %v", err)
			}
			if !bad && err != stop {
				t.Errorf("the sequence's error: %v", err)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes were written", b.Len())
			}
		}
	}
}

func TestSpoolErrors(t *testing.T) {
	gone := filepath.Join(t.TempDir(), "gone")
	err := Write(io.Discard, each(many(t, 600)...), fonts.Default(), Options{Spool: gone, Uncompressed: true})
	if err == nil || !strings.Contains(err.Error(), "a long run needs a temporary file") || !strings.Contains(err.Error(), "gone") {
		t.Errorf("got %v", err)
	}
	full := errors.New("no space left on device")
	err = Write(writerFunc(func([]byte) (int, error) { return 0, full }), each(sample(t)), fonts.Default(), Options{})
	if !errors.Is(err, full) {
		t.Errorf("got %v", err)
	}
}

type writerFunc func([]byte) (int, error)

func (f writerFunc) Write(p []byte) (int, error) { return f(p) }

// TestDrift reads content streams back and holds every cluster's place against
// the layout's: 0.01 pt is a tenth of what a 600 dpi printer can show.
func TestDrift(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	const letters = "Quercus rotundifolia Lam. × hispânica, 1240–1260 m ♀ ﬁ"
	all := []rune(letters)
	worst := 0.0
	for range 400 {
		size := layout.Length(500+rnd.IntN(6700)) * layout.CentiPt
		s := make([]rune, 1+rnd.IntN(120))
		for i := range s {
			s[i] = all[rnd.IntN(len(all))]
		}
		text := set(t, []string{roman, italic, bold}[rnd.IntN(3)], size, at(layout.Length(rnd.IntN(int(200*mm))), layout.Length(rnd.IntN(int(200*mm)))), string(s))
		for i := range text.Clusters {
			switch rnd.IntN(6) {
			case 0: // kerning
				text.Clusters[i].Adv += size.MulDiv(int64(rnd.IntN(600)-400), 2048)
			case 1:
				text.Clusters[i].Rise = size.MulDiv(int64(rnd.IntN(600)-200), 1000)
			}
		}
		p := &painter{faces: &faces{set: fonts.Default(), open: map[string]*face{}}}
		if err := p.text(text); err != nil {
			t.Fatal(err)
		}
		places := read(t, string(p.b))
		if len(places) != len(text.Clusters) {
			t.Fatalf("%d characters drawn of %d", len(places), len(text.Clusters))
		}
		pen := text.At
		for i, c := range text.Clusters {
			dx, dy := places[i].x-pen.X.Pt(), places[i].y+pen.Y.Pt()-c.Rise.Pt()
			worst = max(worst, dx, -dx, dy, -dy)
			if places[i].r != s[i] || max(dx, -dx, dy, -dy) > 0.01 {
				t.Fatalf("cluster %d of %q at %v: %q is %.4f, %.4f pt off", i, text.S, size, places[i].r, dx, dy)
			}
			pen.X += c.Adv
		}
	}
	t.Logf("the worst place is %.4f pt off", worst)
}

type place struct {
	r    rune
	x, y float64
}

// read is a slow plain reader of one text object, by ISO 32000-1, 9.4. It
// takes widths from the font, not from what was written.
func read(t *testing.T, stream string) (places []place) {
	var f *fonts.Face
	var size, x, y, rise float64
	var stack []string
	number := func(i int) float64 {
		v, err := strconv.ParseFloat(stack[len(stack)-i], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	inArray := false
	var array []string
	for _, tok := range regexp.MustCompile(`<<.*?>>>|<[0-9A-F]+>|[^\s<>\[\]]+|[\[\]]`).FindAllString(stream, -1) {
		switch {
		case tok == "[":
			inArray, array = true, nil
		case tok == "]":
			inArray = false
		case inArray:
			array = append(array, tok)
		case tok == "Tf":
			f, _ = fonts.Default().Lookup(strings.TrimPrefix(stack[len(stack)-2], "/"))
			size = number(1)
		case tok == "Td":
			x, y = number(2), number(1)
		case tok == "Ts":
			rise = number(1)
		case tok == "TJ":
			for _, e := range array {
				if e[0] != '<' {
					n, err := strconv.ParseFloat(e, 64)
					if err != nil {
						t.Fatal(err)
					}
					x -= n / 1000 * size
					continue
				}
				for i := 1; i+4 < len(e); i += 4 {
					c, err := strconv.ParseUint(e[i:i+4], 16, 16)
					if err != nil {
						t.Fatal(err)
					}
					places = append(places, place{rune(c), x, y + rise})
					g, _ := f.Glyph(rune(c))
					x += float64(f.Advance(g)) / float64(f.Metrics().UnitsPerEm) * size
				}
			}
		default:
			stack = append(stack, tok)
		}
	}
	return places
}

// TestNumbers holds the quick printing of numbers against Length.Decimal.
func TestNumbers(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 100_000 {
		l := layout.Length(rnd.Int64N(int64(1) << (1 + rnd.IntN(28))))
		if rnd.IntN(2) == 0 {
			l = -l
		}
		if got, want := string(appendMilli(nil, milli(l))), l.Decimal(layout.Pt, 3); got != want {
			t.Fatalf("%d: %s, want %s", l, got, want)
		}
	}
}

// TestWidths reads width tables back.
func TestWidths(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		u := &usedFace{}
		want := map[int]string{}
		for range 1 + rnd.IntN(200) {
			r, w := 1+rnd.IntN(400), int64(1+rnd.IntN(3))*333_333
			if u.widths[r>>8] == nil {
				u.widths[r>>8] = new([256]int64)
			}
			u.widths[r>>8][r&255] = w + 1
			want[r] = string(appendMilli(nil, w))
		}
		table := widths(u, u.runes())
		got := map[int]string{}
		for _, m := range regexp.MustCompile(`(\d+) \[([^]]*)\]|(\d+) (\d+) ([\d.]+)`).FindAllStringSubmatch(table, -1) {
			if m[2] != "" {
				first, _ := strconv.Atoi(m[1])
				for i, w := range strings.Fields(m[2]) {
					got[first+i] = w
				}
				continue
			}
			first, _ := strconv.Atoi(m[3])
			last, _ := strconv.Atoi(m[4])
			for r := first; r <= last; r++ {
				got[r] = m[5]
			}
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Fatalf("%s\n%s", table, d)
		}
	}
}

func TestNames(t *testing.T) {
	for _, c := range [][2]string{
		{"LiberationSerif-Italic", "/LiberationSerif-Italic"},
		{"A B#(c)/é", "/A#20B#23#28c#29#2F#C3#A9"},
	} {
		if got := nameObject(c[0]); got != c[1] {
			t.Errorf("%q: %s, want %s", c[0], got, c[1])
		}
	}
	for _, c := range [][2]string{
		{"plain (a) \\", `(plain \(a\) \\)`},
		{"Março", "<FEFF004D0061007200E7006F>"},
		{"🌿", "<FEFFD83CDF3F>"},
	} {
		if got := textString(c[0]); got != c[1] {
			t.Errorf("%q: %s, want %s", c[0], got, c[1])
		}
	}
}

// resealed gives an encoded box the check sum of its bytes as they are now.
func resealed(p []byte) []byte {
	p = append([]byte{0xCB, 1}, p[min(2, len(p)):max(len(p)-4, min(2, len(p)))]...)
	return binary.LittleEndian.AppendUint32(p, crc32.Checksum(p, crc32.MakeTable(crc32.Castagnoli)))
}

// FuzzPaint draws boxes that are wrong in every way that their encoding can
// say: an error is fine, a panic is not. What is drawn closes all it opens.
func FuzzPaint(f *testing.F) {
	f.Add(layout.Encode(sample(f).Boxes[0].Box), 1)
	shared := &faces{set: fonts.Default(), open: map[string]*face{}}
	f.Fuzz(func(t *testing.T, p []byte, turn int) {
		b, err := layout.Decode(resealed(p))
		if err != nil {
			return
		}
		painter := &painter{faces: shared, plain: true}
		out, err := painter.paint(layout.Page{Size: a4, Boxes: []layout.Placed{{Box: b, Turn: turn & 3}}})
		if err != nil {
			return
		}
		s := out.String()
		for _, pair := range [][2]string{{"BT ", " ET\n"}, {" BDC\n", "EMC\n"}, {"q ", "Q\n"}, {"[", "]"}} {
			if n, m := strings.Count(s, pair[0]), strings.Count(s, pair[1]); n != m {
				t.Errorf("%d of %q, %d of %q", n, pair[0], m, pair[1])
			}
		}
	})
}
