package name

import (
	"bufio"
	"os"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
)

func readTable(t testing.TB, file string) [][]string {
	t.Helper()
	f, err := os.Open(outside.Shared(t, file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var rows [][]string
	for s := bufio.NewScanner(f); s.Scan(); {
		rows = append(rows, strings.Split(s.Text(), "\t"))
	}
	return rows[1:]
}

func TestTables(t *testing.T) {
	for _, file := range []string{"checks/names-code.tsv", "checks/names-parser.tsv"} {
		for _, r := range readTable(t, file) {
			if got := Markup(r[0], Options{}); got != r[1] {
				t.Errorf("%s\n got  %s\n want %s", r[0], got, r[1])
			}
			if s := label.String(Runs(r[0], Parts{}, Options{})); s != r[0] {
				t.Errorf("runs of %q join to %q", r[0], s)
			}
		}
	}
}
