package layout

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// example holds every kind of mark and every way they are written.
func example() *Box {
	rise := word(6*MM, 30*MM, "m2 x\u0301")
	rise.Clusters[1].Rise = 3 * Pt
	join := word(6*MM, 34*MM, "a\u0323\u0302b")
	join.Clusters = []Cluster{{Bytes: 5, Adv: 5 * Pt}, {Bytes: 1, Adv: -Pt}}
	caps := word(6*MM, 20*MM, "FABACEAE")
	caps.Actual = "Fabaceae"
	italic := word(6*MM, 16*MM, "Cytisus striatus ")
	italic.Face, italic.Style, italic.Size = "LiberationSerif-Italic", Italic, 11*Pt
	after := word(6*MM+italic.Width(), 16*MM, "(Hill) Rothm.")
	after.Size = 11 * Pt
	bold := word(6*MM, 60*MM, "I. Almeida 214")
	bold.Face, bold.Style, bold.Grey = "LiberationSerif-Bold", Bold|Italic, 7
	code := Bars{
		Rect: Rect{Point{6 * MM, 62 * MM}, Size{9 * 3 * Dot300, 8 * MM}}, Symbology: "code128", S: "VDOURA 0004217",
		Module: 3 * Dot300, Dot: Dot300, Quiet: 30 * Dot300, Modules: "110101001", Rows: 1,
	}
	for i, m := range code.Modules {
		if m == '1' {
			code.Rects = append(code.Rects, Rect{Point{Length(i)*3*Dot300 + 127, 127}, Size{3*Dot300 - 254, 8*MM - 254}})
		}
	}
	return &Box{
		Size: Size{105 * MM, 74 * MM},
		Ref: Ref{File: "trip.csv", Line: 14, Row: 12, Kind: "sheet", Key: "I. Almeida 214", Label: 2, Of: 2,
			Part: "Sheet 1 of 2", For: "PINHEL"},
		Marks: []Mark{
			Stroke{From: Point{6 * MM, 12 * MM}, To: Point{99 * MM, 12 * MM}, Width: Pt / 2},
			italic, after, caps, rise, join, word(6*MM, 38*MM, "a a a á"), Text{Face: "x", Size: Pt},
			Fill{Rect{Point{MM, MM}, Size{2 * MM, 3 * MM}}, 200},
			Stroke{From: Point{-MM, 0}, To: Point{0, -MM}, Width: 1, Grey: 255, Dash: []Length{MM, MM / 2}},
			bold, code,
			Bars{Symbology: "qr", S: "https://example.org/ç", Modules: "not bits", Rows: 3, Rects: []Rect{{Point{5, 5}, Size{1, 2}}, {Point{1, 9}, Size{3, 2}}}},
			Bars{},
		},
	}
}

var equal = cmp.Options{cmpopts.EquateEmpty()}

func TestRoundTrip(t *testing.T) {
	for _, b := range []*Box{example(), {}, {Marks: []Mark{Text{}}}, {Size: Size{math.MaxInt64, math.MinInt64}, Ref: Ref{Line: -1}}} {
		p := Encode(b)
		got, err := Decode(p)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(b, got, equal); d != "" {
			t.Error(d)
		}
		if !bytes.Equal(Encode(b), p) || !bytes.Equal(Encode(got), p) {
			t.Error("the same box gave other bytes")
		}
	}
}

// TestRandom round-trips boxes of any content, sensible or not.
func TestRandom(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	n := func() Length { return Length(rnd.Int64()>>rnd.IntN(64)) * Length(1-2*rnd.IntN(2)) }
	s := func() string {
		b := make([]rune, rnd.IntN(12))
		for i := range b {
			b[i] = []rune("abcé植\u0301 \U0001F33F\x00\ufffd")[rnd.IntN(10)]
		}
		if rnd.IntN(10) == 0 {
			return string(b) + "\xff\xc3"
		}
		return string(b)
	}
	rect := func() Rect { return Rect{Point{n(), n()}, Size{n(), n()}} }
	for range 1500 {
		b := &Box{Size: Size{n(), n()}, Ref: Ref{File: s(), Line: int(n()), Row: int(n()), Kind: s(), Key: s(), Label: int(n()), Of: int(n()), Part: s(), For: s()}}
		for range rnd.IntN(20) {
			switch rnd.IntN(4) {
			case 0:
				m := Text{At: Point{n(), n()}, Face: s(), Style: Style(rnd.IntN(256)), Size: n(), Grey: Grey(rnd.IntN(256)), S: s(), Actual: s()}
				for range m.S {
					m.Clusters = append(m.Clusters, Cluster{Bytes: 1 + rnd.IntN(2), Adv: Length(rnd.IntN(3))})
				}
				if rnd.IntN(4) == 0 {
					m.Clusters = append(m.Clusters, Cluster{Bytes: int(n()), Adv: n(), Rise: n()})
				}
				b.Marks = append(b.Marks, m)
			case 1:
				b.Marks = append(b.Marks, Fill{rect(), Grey(rnd.IntN(256))})
			case 2:
				m := Stroke{From: Point{n(), n()}, To: Point{n(), n()}, Width: n(), Grey: Grey(rnd.IntN(256))}
				for range rnd.IntN(3) {
					m.Dash = append(m.Dash, n())
				}
				b.Marks = append(b.Marks, m)
			case 3:
				m := Bars{Rect: rect(), Symbology: s(), S: s(), Module: n(), Dot: n(), Quiet: n(), Rows: int(n()), Modules: strings.Repeat("10", rnd.IntN(30))}
				for range rnd.IntN(9) {
					m.Rects = append(m.Rects, rect())
				}
				b.Marks = append(b.Marks, m)
			}
		}
		got, err := Decode(Encode(b))
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(b, got, equal); d != "" {
			t.Fatal(d)
		}
	}
}

// TestKept reads a box that was kept by the first version. The file must never
// be written again: registers hold boxes of its form for as long as labels
// last.
func TestKept(t *testing.T) {
	p, err := os.ReadFile("testdata/box-1.bin")
	if err != nil {
		t.Fatal(err)
	}
	got, err := Decode(p)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(example(), got, equal); d != "" {
		t.Error(d)
	}
	if boxVersion == 1 && !bytes.Equal(Encode(example()), p) {
		t.Error("the form has changed and its version has not")
	}
}

// seal gives bytes the check sum that they would have had.
func seal(p []byte) []byte {
	return binary.LittleEndian.AppendUint32(p, crc32.Checksum(p, crc32.MakeTable(crc32.Castagnoli)))
}

func TestDamage(t *testing.T) {
	good := Encode(example())
	for _, c := range []struct {
		name string
		p    []byte
		want error
		say  string
	}{
		{"nothing", nil, ErrDamaged, "these 0 bytes do not begin as one"},
		{"something else", []byte("%PDF-1.7 and so on"), ErrDamaged, "do not begin as one"},
		{"cut off", good[:len(good)-1], ErrDamaged, "check sum"},
		{"longer", append(bytes.Clone(good), 0), ErrDamaged, "check sum"},
		{"newer", seal([]byte{boxMagic, boxVersion + 1, 1, 2, 3}), ErrNewer, "form 2, and this one reads up to 1"},
		{"newer and damaged", append([]byte{boxMagic, boxVersion + 1, 1, 2, 3}, 0, 0, 0, 0), ErrDamaged, "check sum"},
		{"no such form", seal([]byte{boxMagic, 0}), ErrDamaged, "there is no form 0"},
		{"empty", seal([]byte{boxMagic, boxVersion}), ErrDamaged, "do not fit together"},
		{"more after the end", seal(append(bytes.Clone(good[:len(good)-4]), 0)), ErrDamaged, "do not fit together"},
	} {
		b, err := Decode(c.p)
		if b != nil || !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v, %v", c.name, b, err)
		}
	}
	// A check sum of 32 bits finds every change of a byte.
	for i := range good {
		for _, x := range []byte{1, 0x80, 0xff} {
			p := bytes.Clone(good)
			p[i] ^= x
			if _, err := Decode(p); err == nil {
				t.Fatalf("byte %d changed by %#x went through", i, x)
			}
		}
	}
}

func TestEncodePanics(t *testing.T) {
	for _, m := range []Mark{nil, &Text{}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("a mark of type %T did not panic", m)
				}
			}()
			Encode(&Box{Marks: []Mark{m}})
		}()
	}
}

// FuzzDecode gives damage a right check sum, so that it comes through to the
// parts. What is read must be read the same from its own encoding.
func FuzzDecode(f *testing.F) {
	for _, b := range []*Box{example(), {}} {
		p := Encode(b)
		f.Add(p[2 : len(p)-4])
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		Decode(body)
		b, err := Decode(seal(append([]byte{boxMagic, boxVersion}, body...)))
		if err != nil {
			if !errors.Is(err, ErrDamaged) {
				t.Error(err)
			}
			return
		}
		b.Check()
		again, err := Decode(Encode(b))
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(b, again, equal); d != "" {
			t.Error(d)
		}
	})
}
