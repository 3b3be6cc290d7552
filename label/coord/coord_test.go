package coord

import (
	"os"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

func table(t testing.TB, name string) [][]string {
	t.Helper()
	data, err := os.ReadFile(outside.Shared(t, "checks/"+name))
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]string
	for _, line := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")[1:] {
		rows = append(rows, strings.Split(line, "\t"))
	}
	return rows
}

// TestCoordinates holds the reader to verbatim forms seen on labels and in
// guides.
func TestCoordinates(t *testing.T) {
	for _, f := range table(t, "coordinates.tsv") {
		text := strings.ReplaceAll(f[1], `\t`, "\t")
		got := strings.Split(ReadLine(text), "\t")
		want := []string{f[3], f[4], f[5], f[7]}
		for i, w := range want {
			if got[i] != w {
				t.Errorf("row %s %q: got %q, want %q (%v)", f[0], f[1], got[:4], want, Read(text, Hints{}).Err)
				break
			}
		}
	}
}
