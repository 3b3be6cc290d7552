package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"github.com/spf13/cobra"

	"cornerslip/cmd/outside"
)

// TestHelpExamples runs every example of every help text as it is typed, in a
// folder that has the files it names. None may be a wrong use; those that need
// what no test has must say what they lack.
func TestHelpExamples(t *testing.T) {
	lacks := map[string]string{ // what the message must say instead
		"postgres://": "cannot be reached",
		"archive.zip": "there is no such file",
		"/media/safe": "cannot be written",
		// The specimen has several labels, and nobody answers.
		`reprint "Almeida 214"`:  "which one? say --pick",
		"reprint VDOURA-0004217": "which one? say --pick",
	}
	world := exampleWorld(t)
	n := 0
	for _, c := range allCommands((&app{}).root()) {
		for _, line := range exampleLines(c) {
			n++
			t.Run(line, func(t *testing.T) {
				t.Chdir(freshCopy(t, world))
				if strings.Contains(line, "register open") && !strings.Contains(line, "--upgrade") {
					os.Remove("herbarium.db")
				}
				if strings.Contains(line, "house -o") {
					os.Remove("house.toml")
				}
				args := typed(line)
				if args[0] != "cornerslip" {
					t.Fatalf("the example begins with %q", args[0])
				}
				var out, said bytes.Buffer
				code := run(args[1:], strings.NewReader(""), &out, &said)
				for part, want := range lacks {
					if strings.Contains(line, part) {
						if code != exitUsage || !strings.Contains(said.String(), want) {
							t.Errorf("exit code %d, want %d and %q, got: %s", code, exitUsage, want, said.String())
						}
						return
					}
				}
				// Of the trip, one record can have no number, one number is another
				// house's, and the scans do not name every sheet: that is said with 1.
				data := args[1] == "attach" || strings.HasPrefix(strings.Join(args[1:], " "), "register i")
				if code == exitUsage || code == exitData && !data {
					t.Errorf("exit code %d: %s", code, said.String())
				}
			})
		}
	}
	if n < 70 {
		t.Errorf("%d examples were found, fewer than there are", n)
	}
}

func allCommands(c *cobra.Command) []*cobra.Command {
	all := []*cobra.Command{c}
	for _, sub := range c.Commands() {
		all = append(all, allCommands(sub)...)
	}
	return all
}

// exampleLines are the lines of a help text that a person would type.
func exampleLines(c *cobra.Command) []string {
	var lines []string
	for line := range strings.Lines(c.Long + "\n" + c.Example) {
		if strings.HasPrefix(line, "  cornerslip ") {
			lines = append(lines, strings.TrimSpace(line))
		}
	}
	return lines
}

// typed parts a line into words as a shell does: double quotes, a comment, and
// a file that standard output goes to, which is left out.
func typed(line string) []string {
	var words []string
	var word strings.Builder
	quoted, begun := false, false
	end := func() {
		if begun {
			words = append(words, word.String())
		}
		word.Reset()
		begun = false
	}
	for _, r := range line {
		switch {
		case r == '"':
			quoted, begun = !quoted, true
		case quoted:
			word.WriteRune(r)
		case unicode.IsSpace(r):
			end()
		case (r == '#' || r == '>') && !begun:
			return words
		default:
			begun = true
			word.WriteRune(r)
		}
	}
	end()
	return words
}

// exampleWorld makes the files that the examples name, a register that has
// printed the labels of the trip among them.
func exampleWorld(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	examples := filepath.Join(outside.Root(t), "examples")
	for to, from := range map[string]string{"trip.csv": "trip.csv", "det.csv": "identifications.csv", "trip.numbered.csv": "trip.csv"} {
		copyFile(t, filepath.Join(examples, from), filepath.Join(dir, to))
	}
	house, err := os.ReadFile(filepath.Join(examples, "house.toml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(house) + "\n[stickers]\ncolumns = 3\nrows = 8\nsize_mm = [63.5, 33.9]\nfirst_mm = [7.2, 13]\npitch_mm = [66, 33.9]\n\n[register]\nfile = \"herbarium.db\"\n"
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("house.toml", text)
	// In windows-1252, as one example says that it is.
	write("old.csv", "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,locality,country\n"+
		"VDOURA-0000007,I. Almeida,7,2019-05-04,Iris boissieri Henriq.,Ger\xeas,Portugal\n")
	write("later.csv", "recordedBy,recordNumber,eventDate,scientificName,country\nI. Almeida,301,2026-08-01,Iris boissieri Henriq.,Portugal\n")
	write("scans.txt", "Almeida 301\tVDOURA-0004301\n")
	t.Chdir(dir)
	for _, line := range []string{
		"cornerslip register open herbarium.db --series VDOURA-0000000",
		"cornerslip register import trip.csv --register herbarium.db",
		"cornerslip register up VDOURA-0004300 --why examples --register herbarium.db",
		"cornerslip sheet trip.csv --except-bad --register herbarium.db -o printed.pdf",
		"cornerslip register issue later.csv -o later.numbered.csv --register herbarium.db",
		"cornerslip barcode later.numbered.csv --register herbarium.db -o stickers.pdf",
	} {
		var said bytes.Buffer
		code := run(typed(line)[1:], strings.NewReader(""), &said, &said)
		if code != exitOK && !strings.Contains(line, "import") {
			t.Fatalf("%s: exit code %d: %s", line, code, said.String())
		}
	}
	return dir
}

func freshCopy(t *testing.T, from string) string {
	t.Helper()
	to := t.TempDir()
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	return to
}

func copyFile(t *testing.T, from, to string) {
	t.Helper()
	b, err := os.ReadFile(from)
	if err == nil {
		err = os.WriteFile(to, b, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}
