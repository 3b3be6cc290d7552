package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// A register on a server and one in a file answer every command alike, and
// print the same pages.
func TestServerAndFileAreAlike(t *testing.T) {
	house := filepath.Join(outside.Root(t), "examples", "house.toml")
	trip, err := os.ReadFile(filepath.Join(outside.Root(t), "examples", "trip.csv"))
	if err != nil {
		t.Fatal(err)
	}
	type answer struct {
		command, said string
		code          int
	}
	work := func(address string) (answers []answer, files map[string][]byte) {
		dir := t.TempDir()
		if address == "" {
			address = filepath.Join(dir, "herbarium.db")
		}
		table := filepath.Join(dir, "trip.csv")
		if err := os.WriteFile(table, trip, 0o666); err != nil {
			t.Fatal(err)
		}
		named := address // as messages call it
		if i := strings.Index(address, "://tester:"); i >= 0 {
			named = "postgres://tester:xxxxx" + address[strings.Index(address, "@"):]
		}
		plain := strings.NewReplacer(named, "REGISTER", address, "REGISTER", dir, "DIR")
		in := func(name string) string { return filepath.Join(dir, name) }
		for i, args := range [][]string{
			{"register", "open", address},
			{"register", "open", address},
			{"register", "import", table, "--why", "the trip's own"},
			{"register", "issue", table, "-o", in("numbered.csv"), "--except-bad"},
			{"register", "issue", table, "-o", in("twice.csv"), "--except-bad"},
			{"register", "list", "--from", "VDOURA-0004180", "--to", "VDOURA-0004270"},
			{"register", "list", "--json", "--state", "void,printed"},
			{"sheet", in("numbered.csv"), "-o", in("labels.pdf")},
			{"sheet", table, "-o", in("again.pdf")},
			{"sheet", table, "--new", "-o", in("new.pdf")},
			{"barcode", "--count", "30", "-o", in("bars.pdf")},
			{"reprint", "Almeida 191", "--why", "torn", "--kind", "sheet", "-o", in("one.pdf")},
			{"reprint", "Almeida 214", "--why", "torn", "--kind", "sheet", "-o", in("two.pdf")},
			{"reprint", "Almeida 214", "--why", "torn", "--kind", "sheet", "--pick", "2", "-o", in("two.pdf")},
			{"register", "void", "VDOURA-0004300", "--why", "torn"},
			{"barcode", "--numbers", "VDOURA-0004299..VDOURA-0004301", "-o", in("void.pdf")},
			{"register", "find", "Iris boissieri"},
			{"register", "find", "vdoura4217", "--json"},
			{"register", "history", "VDOURA-0004217"},
			{"register", "history", "--json"},
			{"register", "up", "VDOURA-0005000", "--why", "restored"},
			{"register", "series", "PINHEL-0000"},
			{"register", "series", "--json"},
			{"register", "check"},
		} {
			var out, said bytes.Buffer
			full := append(args, "--by", "C. Reis", "--date", "2026-11-25", "--house", house)
			if i > 1 {
				full = append(full, "--register", address)
			}
			code := run(full, strings.NewReader(""), &out, &said)
			text := plain.Replace(out.String() + said.String())
			answers = append(answers, answer{plain.Replace(strings.Join(args, " ")), text, code})
		}
		files = map[string][]byte{}
		for _, name := range []string{"numbered.csv", "twice.csv", "labels.pdf", "again.pdf", "bars.pdf", "one.pdf", "two.pdf"} {
			if files[name], err = os.ReadFile(in(name)); err != nil {
				t.Errorf("%s: %v", plain.Replace(address), err)
			}
		}
		return answers, files
	}
	file, fileFiles := work("")
	for i, a := range file {
		want := exitOK
		if i == 1 || strings.Contains(a.command, "void.pdf") || strings.HasSuffix(a.command, "sheet -o DIR/two.pdf") {
			continue // refusals, which need only be alike
		}
		if i == 2 { // one number of another house is a clash
			want = exitData
		}
		if a.code != want {
			t.Errorf("%s: exit code %d: %s", a.command, a.code, a.said)
		}
	}
	if !bytes.Equal(fileFiles["numbered.csv"], fileFiles["twice.csv"]) {
		t.Error("issued twice, the table is another")
	}
	server, serverFiles := work(outside.Postgres(t))
	for i := range file {
		a, b := file[i], server[i]
		if a != b && i != 1 { // what is there already is a file or a schema
			t.Errorf("%s: code %d and %d\n%s\n%s", a.command, a.code, b.code, a.said, b.said)
		}
	}
	for name, a := range fileFiles {
		if !bytes.Equal(a, serverFiles[name]) {
			t.Errorf("%s is another file with the register on a server", name)
		}
	}
}
