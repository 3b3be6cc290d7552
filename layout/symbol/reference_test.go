package symbol

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// zint returns the symbols of texts as zint makes them, a general-purpose
// barcode program of other people: one line of '0' and '1' for each row.
// columns says from a symbol's first row how wide it is; there are as many
// rows. nil is for linear symbols.
func zint(t *testing.T, texts []string, columns func(row string) int, args ...string) [][]string {
	t.Helper()
	program := outside.Program(t, "zint")
	in := filepath.Join(t.TempDir(), "in.txt")
	if err := os.WriteFile(in, []byte(strings.Join(texts, "\n")+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var out, complaints bytes.Buffer
	cmd := exec.Command(program, append(args, "--batch", "-i", in, "--dump")...)
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		t.Fatalf("zint: %v\n%s", err, complaints.String())
	}
	lines := strings.Split(strings.TrimRight(out.String(), "\n"), "\n")
	var symbols [][]string
	for len(lines) > 0 {
		first := bitsOf(t, lines[0])
		width, n := strings.LastIndexByte(first, '1')+1, 1
		if columns != nil {
			width = columns(first)
			n = width
		}
		if n > len(lines) {
			t.Fatalf("zint's dump ends early")
		}
		var rows []string
		for _, l := range lines[:n] {
			rows = append(rows, bitsOf(t, l)[:width])
		}
		symbols = append(symbols, rows)
		lines = lines[n:]
	}
	if len(symbols) != len(texts) {
		t.Fatalf("zint made %d symbols of %d texts", len(symbols), len(texts))
	}
	return symbols
}

func bitsOf(t *testing.T, line string) string {
	t.Helper()
	var b strings.Builder
	for _, c := range strings.ReplaceAll(line, " ", "") {
		v, err := strconv.ParseUint(string(c), 16, 8)
		if err != nil {
			t.Fatalf("zint's dump %q: %v", line, err)
		}
		fmt.Fprintf(&b, "%04b", v)
	}
	return b.String()
}

// numberLike returns a string of the kinds that herbaria print: a code, a
// separator or none, and figures.
func numberLike(r *rand.Rand) string {
	const capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	var b strings.Builder
	for range 1 + r.IntN(6) {
		b.WriteByte(capitals[r.IntN(26)])
	}
	b.WriteString([]string{"", "-", ".", " ", "/", ""}[r.IntN(6)])
	for range 1 + r.IntN(10) {
		b.WriteByte('0' + byte(r.IntN(10)))
	}
	if r.IntN(8) == 0 {
		b.WriteByte("abcXY*"[r.IntN(6)])
	}
	return b.String()
}

// mixed returns printable ASCII with many changes between figures and letters.
func mixed(r *rand.Rand) string {
	var b strings.Builder
	for range 1 + r.IntN(6) {
		for range r.IntN(7) {
			b.WriteByte('0' + byte(r.IntN(10)))
		}
		for range r.IntN(4) {
			b.WriteByte(byte(0x21 + r.IntN(0x5E)))
		}
	}
	if b.Len() == 0 {
		return "0"
	}
	return b.String()
}

func texts(seed uint64, n int) []string {
	r := rand.New(rand.NewPCG(seed, 15417))
	out := make([]string, n)
	for i := range out {
		if i%4 == 3 {
			out[i] = mixed(r)
		} else {
			out[i] = numberLike(r)
		}
	}
	return out
}

func TestCode128AsZint(t *testing.T) {
	texts := texts(128, 20000)
	for i, want := range zint(t, texts, nil, "-b", "20") {
		if got := code128(texts[i]); got != want[0] {
			t.Fatalf("%q: %d modules, zint has %d\n got %s\nwant %s", texts[i], len(got), len(want[0]), got, want[0])
		}
	}
}

func TestCode39AsZint(t *testing.T) {
	texts := texts(39, 4000)
	for i, s := range texts {
		texts[i] = strings.Map(func(r rune) rune {
			if strings.ContainsRune(code39Text, r) {
				return r
			}
			return '-'
		}, strings.ToUpper(s))
	}
	plain := zint(t, texts, nil, "-b", "8")
	checked := zint(t, texts, nil, "-b", "8", "--vers=1")
	for i, text := range texts {
		for want, check := range map[string]bool{plain[i][0]: false, checked[i][0]: true} {
			m, why := code39(text, Options{Check: check})
			if m.modules != want {
				t.Fatalf("%q, check %v: %s\n got %s\nwant %s", text, check, why, m.modules, want)
			}
		}
	}
}

// Square symbols need not be equal, for the standards leave the encoder a
// choice of schemes and masks; they must not be larger.
func TestSquareSymbolsAsZint(t *testing.T) {
	texts := texts(2, 3000)
	for i := range texts {
		switch i % 8 {
		case 0:
			texts[i] = "https://herbario.example.org/id/" + texts[i]
		case 1:
			texts[i] += "/" + texts[(i+7)%len(texts)]
		}
	}
	t.Run("datamatrix", func(t *testing.T) {
		// The first row is 1010…10.
		wide := func(row string) int { return strings.LastIndexByte(row, '1') + 2 }
		smaller, same := 0, 0
		for i, want := range zint(t, texts, wide, "-b", "71", "--square") {
			m, why := dataMatrix(texts[i], false)
			if why != "" || m.rows > len(want) {
				t.Errorf("%q: %d × %d %s, zint %d × %[2]d", texts[i], m.rows, m.rows, why, len(want))
			}
			if m.rows < len(want) {
				smaller++
				t.Logf("%q: %d, zint %d", texts[i], m.rows, len(want))
			}
			if m.modules == strings.Join(want, "") {
				same++
			}
		}
		t.Logf("of %d symbols %d are zint's module for module, %d are smaller", len(texts), same, smaller)
		if same < len(texts)/2 {
			t.Errorf("only %d of %d are zint's module for module", same, len(texts))
		}
	})
	for level, secure := range map[string]string{"L": "1", "M": "2", "Q": "3", "H": "4"} {
		texts := texts
		if level != "M" {
			texts = texts[:600]
		}
		t.Run("qr-"+level, func(t *testing.T) {
			// The first row ends in a finder pattern.
			wide := func(row string) int { return strings.LastIndexByte(row, '1') + 1 }
			smaller, same := 0, 0
			for i, want := range zint(t, texts, wide, "-b", "58", "--secure="+secure) {
				m, why := qrCode(texts[i], level)
				if why != "" || m.rows > len(want) {
					t.Errorf("%q: %d × %d %s, zint %d × %[2]d", texts[i], m.rows, m.rows, why, len(want))
				}
				if m.rows < len(want) {
					smaller++
					t.Logf("%q: %d, zint %d", texts[i], m.rows, len(want))
				}
				if m.modules == strings.Join(want, "") {
					same++
				}
			}
			t.Logf("of %d symbols %d are zint's module for module, %d are smaller", len(texts), same, smaller)
		})
	}
}
