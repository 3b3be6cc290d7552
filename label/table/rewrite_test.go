package table

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"golang.org/x/text/encoding/charmap"
)

func rewritten(t testing.TB, tb *Table, edits ...Edit) (string, error) {
	t.Helper()
	var b bytes.Buffer
	err := Rewrite(&b, tb, edits)
	return b.String(), err
}

func TestRewrite(t *testing.T) {
	for _, c := range []struct {
		name, in string
		o        Options
		edits    []Edit
		want     string
	}{
		{name: "nothing", in: "\ufeffa,b\r\n\r\n\"1\",'2'\r3,\n", want: "\ufeffa,b\r\n\r\n\"1\",'2'\r3,\n"},
		{name: "one cell", in: "a,b\n1,2\n3,4", edits: []Edit{{2, 1, "x"}}, want: "a,b\n1,2\n3,x"},
		{name: "the heading row", in: "\ufeffa,b\n1,2\n", edits: []Edit{{0, 0, "locality"}}, want: "\ufefflocality,b\n1,2\n"},
		{name: "a quoted cell stays quoted", in: "a,b\n\"1\",2\n", edits: []Edit{{1, 0, "x"}}, want: "a,b\n\"x\",2\n"},
		{name: "quotes where they must be", in: "a,b,c,d\n1,2,3,4\n", edits: []Edit{{1, 3, "\"x\""}, {1, 0, "x,y"}, {1, 1, "x\r\ny"}, {1, 2, " x; "}},
			want: "a,b,c,d\n\"x,y\",\"x\r\ny\", x; ,\"\"\"x\"\"\"\n"},
		{name: "semicolon", in: "a;b\n1;2\n", edits: []Edit{{1, 0, "x,y"}, {1, 1, "x;y"}}, o: Options{Comma: ';'}, want: "a;b\nx,y;\"x;y\"\n"},
		{name: "an empty cell", in: "a,b,c\n1,,3\n", edits: []Edit{{1, 1, "2"}, {1, 2, ""}}, want: "a,b,c\n1,2,\n"},
		{name: "an empty cell alone in its row", in: "a\n1\n2\n", edits: []Edit{{1, 0, ""}}, want: "a\n\"\"\n2\n"},
		{name: "a new column", in: "a,b\r\n1,2\r\n\r\n3,\"4\"", edits: []Edit{{0, 2, "catalogNumber"}, {2, 2, "VDOURA-0000001"}},
			want: "a,b,catalogNumber\r\n1,2,\r\n\r\n3,\"4\",VDOURA-0000001"},
		{name: "two new columns", in: "a\n1\n", edits: []Edit{{0, 1, "x,y"}, {0, 2, "z"}, {1, 2, "w"}}, want: "a,\"x,y\",z\n1,,w\n"},
		{name: "a new column on a short row", in: "a,b,c\n1\n", edits: []Edit{{1, 3, "x"}}, want: "a,b,c,\n1,,,x\n"},
		{name: "an unclosed and a malformed cell", in: "a,b\n\"1,2\n\"3\"x,4\n", edits: []Edit{{1, 0, "1"}, {2, 0, "3x"}}, want: "a,b\n1,2\n3x,4\n"},
		{name: "literal quotes", in: "a\tb\n\"1\t2\n", o: Options{Literal: true}, edits: []Edit{{1, 1, "\"x\""}}, want: "a\tb\n\"1\t\"x\"\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tb, _ := readAll(t, c.in, c.o)
			if got, err := rewritten(t, tb, c.edits...); got != c.want || err != nil {
				t.Errorf("%v\ngot  %q\nwant %q", err, got, c.want)
			}
		})
	}
}

func TestRewriteEncodings(t *testing.T) {
	const text = "country,locality\nPortugal,Gerês\nPortugal,Lindoso\n"
	latin, err := charmap.Windows1252.NewEncoder().String(text)
	if err != nil {
		t.Fatal(err)
	}
	wide := string(wideBytes(text, binary.BigEndian, true))
	tb, _ := readAll(t, latin, Options{Encoding: "windows-1252"})
	if got, err := rewritten(t, tb, Edit{2, 1, "Ermida, São João – “A”"}); err != nil || !strings.HasSuffix(got, "\nPortugal,\"Ermida, S\xe3o Jo\xe3o \x96 \x93A\x94\"\n") {
		t.Errorf("%q %v", got, err)
	}
	if _, err := rewritten(t, tb, Edit{2, 1, "Łódź"}); err == nil || err.Error() != `t.csv:3: column 2 cannot hold "Łódź": windows-1252 has no 'Ł' (U+0141); write the table as UTF-8` {
		t.Errorf("%v", err)
	}
	tb16, _ := readAll(t, wide, Options{})
	if got, err := rewritten(t, tb16, Edit{2, 1, "🌿"}); err != nil || got != string(wideBytes(strings.Replace(text, "Lindoso", "🌿", 1), binary.BigEndian, true)) {
		t.Errorf("%q %v", got, err)
	}
	for _, x := range []*Table{tb, tb16} {
		var b bytes.Buffer
		if err := RewriteUTF8(&b, x, []Edit{{1, 0, "Łódź"}, {2, 2, "n"}}); err != nil || b.String() != "country,locality,\nŁódź,Gerês,\nPortugal,Lindoso,n\n" {
			t.Errorf("%q %v", b.String(), err)
		}
	}
	tb, _ = readAll(t, "\ufeffcountry,locality\nPortugal,Ger\xeas\n", Options{})
	if got, err := rewritten(t, tb); err != nil || got != "\ufeffcountry,locality\nPortugal,Ger\xeas\n" {
		t.Errorf("%q %v", got, err)
	}
	var b bytes.Buffer
	if err := RewriteUTF8(&b, tb, nil); err == nil || !strings.Contains(err.Error(), "t.csv:2: column 2 holds bytes that are not UTF-8") {
		t.Errorf("%v", err)
	}
	b.Reset()
	if err := RewriteUTF8(&b, tb, []Edit{{1, 1, "Gerês"}}); err != nil || b.String() != "country,locality\nPortugal,Gerês\n" {
		t.Errorf("%q %v", b.String(), err)
	}
	tb, _ = readAll(t, "country,locality\nPortugal,Ger\x81s\n", Options{Encoding: "windows-1252"})
	if err := RewriteUTF8(&b, tb, nil); err == nil || !strings.Contains(err.Error(), "byte 29 of the file cannot be read as windows-1252") {
		t.Errorf("%v", err)
	}
}

func TestRewriteRefusals(t *testing.T) {
	tb, _ := readAll(t, "country,locality\nPortugal,x\nPortugal,x,y\nPortugal\n", Options{})
	for _, c := range []struct {
		edit Edit
		want string
	}{
		{Edit{4, 0, "x"}, "t.csv: row 4 is beyond the end of the table"},
		{Edit{-1, 0, "x"}, "t.csv: no cell in row -1, column 0"},
		{Edit{1, 2, "x"}, "t.csv:3: the row has 3 cells, the table has 2 columns: mend it before a column is added"},
		{Edit{3, 1, "x"}, "t.csv:4: the row has one cell and none in column 2: mend it first"},
	} {
		if _, err := rewritten(t, tb, c.edit); err == nil || err.Error() != c.want {
			t.Errorf("%+v: %v, want %s", c.edit, err, c.want)
		}
	}
	if _, err := rewritten(t, tb, Edit{1, 1, "x"}, Edit{1, 1, "y"}); err == nil {
		t.Error("two texts for one cell")
	}
	open, _ := readAll(t, "country,locality\n\"Portugal,x\nPortugal,y\n", Options{})
	if _, err := rewritten(t, open, Edit{2, 1, "a,b"}); err == nil || err.Error() != "t.csv:3: a quote opens a cell in line 2 and nothing closes it: mend that cell before those that follow it" {
		t.Error(err)
	}
	if got, err := rewritten(t, open, Edit{1, 0, "Portugal"}, Edit{2, 1, "a,b"}); err != nil || got != "country,locality\nPortugal,x\nPortugal,\"a,b\"\n" {
		t.Errorf("%q %v", got, err)
	}
	lit, _ := readAll(t, "country\tlocality\nPortugal\tx\n", Options{Literal: true})
	if _, err := rewritten(t, lit, Edit{1, 1, "a\tb"}); err == nil || !strings.Contains(err.Error(), "no quotes to enclose a tab") {
		t.Error(err)
	}
	// A file that changed after it was read.
	path := filepath.Join(t.TempDir(), "t.csv")
	os.WriteFile(path, []byte("country\nPortugal\n"), 0o600)
	tb, err := Open(File(path), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for range tb.Rows() {
	}
	digest := tb.Digest()
	os.WriteFile(path, []byte("country\nEspanha\n"), 0o600)
	if _, err := rewritten(t, tb, Edit{1, 0, "x"}); !errors.Is(err, ErrChanged) {
		t.Errorf("%v", err)
	}
	for range tb.Rows() {
	}
	if tb.Digest() == digest || len(digest) != 64 {
		t.Errorf("digest %q of both", digest)
	}
}

func TestSpool(t *testing.T) {
	dir := t.TempDir()
	src, remove, err := Spool("standard input", io.MultiReader(strings.NewReader("country\n"), strings.NewReader("Portugal\n")), dir)
	if err != nil {
		t.Fatal(err)
	}
	tb, err := Open(src, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for range 2 {
		n := 0
		for r, err := range tb.Rows() {
			if err != nil || r.Get("country").Text != "Portugal" || r.Origin("country").String() != "standard input:2:1" {
				t.Error(err, r)
			}
			n++
		}
		if n != 1 {
			t.Errorf("%d rows", n)
		}
	}
	if err := remove(); err != nil {
		t.Error(err)
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if _, _, err := Spool("standard input", failing{}, dir); err == nil {
		t.Error("no error")
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	// A file that fails halfway: what came before is yielded, then the error.
	bad := Source{"t.csv", func() (io.ReadCloser, error) {
		return io.NopCloser(io.MultiReader(strings.NewReader("country\nPortugal\nEsp"), failing{})), nil
	}}
	if _, err := Open(bad, Options{}); err == nil || !strings.Contains(err.Error(), "the disk is gone") {
		t.Errorf("%v", err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, fmt.Errorf("the disk is gone") }

// TestReadings ranges over one table from several goroutines at once.
func TestReadings(t *testing.T) {
	tb, err := Open(Bytes("t.csv", benchTable(500)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var all [4][]*Row
	var wait sync.WaitGroup
	for i := range all {
		wait.Go(func() {
			for r := range tb.Rows() {
				all[i] = append(all[i], r) // rows may be kept
			}
		})
	}
	wait.Wait()
	for i := range all {
		if len(all[i]) != 500 {
			t.Fatalf("%d rows", len(all[i]))
		}
		for j, r := range all[i] {
			if want := fmt.Sprint(j + 1); r.Get("recordNumber").Text != want || r.Line != j+2 {
				t.Errorf("reading %d, row %d: %+v", i, j+1, r)
			}
		}
	}
}
