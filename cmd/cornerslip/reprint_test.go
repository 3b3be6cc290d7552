package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A person at the keyboard is asked what is not said: which label, which words,
// why, and whether a label for a mounted sheet is to say that it is a second one.
func TestReprintAsks(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "herbarium.db")
	table := filepath.Join(dir, "trip.csv")
	write := func(locality string) {
		text := "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,locality\n" +
			"VDOURA-0000001,I. Almeida,1,2026-06-01,Iris boissieri Henriq.,Portugal," + locality + "\n" +
			"VDOURA-0000002,I. Almeida,2,2026-06-01,Iris boissieri Henriq.,Portugal,Seia\n"
		if err := os.WriteFile(table, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write("Manteigas")
	call := func(answers string, args ...string) (code int, said string) {
		var out bytes.Buffer
		a := &app{stdin: strings.NewReader(answers), stdout: &out, stderr: &out, asks: true}
		root := a.root()
		root.SetArgs(append(args, "--by", "C. Reis", "--date", "2026-07-30"))
		root.SetOut(&out)
		root.SetErr(&out)
		if err := root.Execute(); err != nil {
			return exitUsage, out.String() + err.Error()
		}
		return exitOK, out.String()
	}
	for _, args := range [][]string{
		{"register", "open", book, "--series", "VDOURA-0000000"},
		{"register", "issue", "--count", "5", "--register", book},
		{"sheet", table, "--register", book, "-o", filepath.Join(dir, "labels.pdf")},
		{"register", "mark", "attached", "VDOURA-0000001", "--register", book},
	} {
		if code, said := call("", args...); code != exitOK {
			t.Fatalf("%s: %s", args, said)
		}
	}
	out := filepath.Join(dir, "one.pdf")
	reprint := []string{"reprint", "Iris boissieri", "--register", book, "--force", "-o", out}
	for _, c := range []struct {
		name, locality, answers string
		code                    int
		said                    []string
	}{
		{"which, why, marked", "Manteigas", "1\ntorn\ny\n", exitOK, []string{"2 labels fit", "which one?", "why is it printed again", "add a small line", "wrote "}},
		{"which, why, not marked", "Manteigas", "1\ntorn\nn\n", exitOK, []string{"wrote ", "--marked adds"}},
		{"the other one is not mounted", "Manteigas", "2\ntorn\n", exitOK, []string{"wrote "}},
		{"no answer", "Manteigas", "", exitUsage, []string{"which one? say --pick"}},
		{"not one of them, then one", "Manteigas", "5\n0\n2\ntorn\n", exitOK, []string{`"5" is not one of the numbers shown; type one from 1 to 2`, `"0" is not`, "wrote "}},
		{"no number, then nothing", "Manteigas", "the first\n\n", exitUsage, []string{`"the first" is not one of the numbers shown`, "which one? say --pick"}},
		{"no reason", "Manteigas", "1\n\n", exitUsage, []string{"say why it is printed again"}},
		{"as it was", "Seia", "1\np\ntorn\nn\n", exitOK, []string{`locality: printed "Manteigas", now "Seia"`, "as it was (p)", "wrote "}},
		{"neither", "Seia", "1\nx\n", exitUsage, []string{"which words?"}},
		{"as it is now", "Seia", "1\nn\ncorrected\n", exitOK, []string{"wrote "}},
		{"that is known from then on", "Seia", "2\ntorn\nn\n", exitOK, []string{"sheet label of VDOURA-0000001", "wrote "}},
	} {
		write(c.locality)
		code, said := call(c.answers, reprint...)
		if code != c.code {
			t.Errorf("%s: exit code %d, want %d: %s", c.name, code, c.code, said)
		}
		for _, want := range c.said {
			if !strings.Contains(said, want) {
				t.Errorf("%s: nobody said %q:\n%s", c.name, want, said)
			}
		}
	}
}
