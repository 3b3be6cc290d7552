package symbol

import (
	"bufio"
	"os"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// rows reads a table of tab-separated values whose lines of note start with #.
func rows(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out [][]string
	s := bufio.NewScanner(f)
	s.Buffer(nil, 1<<20)
	for s.Scan() {
		if !strings.HasPrefix(s.Text(), "#") {
			out = append(out, strings.Split(s.Text(), "\t"))
		}
	}
	if err := s.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// The module strings were made with zint 2.11.1 and read back by another
// decoder. Linear symbols must be the same module for module; for square ones
// the standards leave the encoder a choice (scheme, mask), so their size must
// be the same, and readers say the content (see the tests that read back).
func TestReferenceSymbols(t *testing.T) {
	held := map[string]int{}
	for _, row := range rows(t, outside.Shared(t, "checks/barcodes.tsv"))[1:] {
		kind := row[0]
		text, err := strconv.Unquote(`"` + row[1] + `"`)
		if err != nil {
			t.Fatalf("%q: %v", row[1], err)
		}
		o := Options{Symbology: kind}
		switch kind {
		case "code39-mod43":
			o.Symbology, o.Check = Code39, true
		case "qr-L", "qr-M", "qr-Q", "qr-H":
			o.Symbology, o.Level = QR, kind[3:]
		case "code128", "code39", "datamatrix":
		case "code39-fullascii", "itf", "datamatrix-8x32", "datamatrix-12x26", "datamatrix-12x36", "datamatrix-16x36", "datamatrix-16x48":
			continue // not offered, or a size that one cannot ask for
		default:
			t.Fatalf("no rule for %s", kind)
		}
		got, err := Make(text, o)
		if strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r > '~' }) {
			if err == nil {
				t.Errorf("%s %q: accepted, though it is not all printable ASCII", kind, text)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s %q: %v", kind, text, err)
			continue
		}
		held[o.Symbology]++
		if row[3] == "1" {
			if got.Modules != row[2] {
				t.Errorf("%s %q:\n got %s\nwant %s", kind, text, got.Modules, row[2])
			}
		} else if s := strconv.Itoa(got.Rows); s != row[3] || len(got.Modules) != len(row[2]) {
			t.Errorf("%s %q: %s rows of %d modules, want %s of %s", kind, text, s, len(got.Modules)/got.Rows, row[3], row[4])
		}
	}
	for _, s := range []string{Code128, Code39, DataMatrix, QR} {
		if held[s] < 10 {
			t.Errorf("only %d rows for %s", held[s], s)
		}
	}
}
