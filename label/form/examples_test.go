package form

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/table"
)

// findingsOf returns the rules that speak of each line of an example table.
func findingsOf(t *testing.T, file string) (byLine map[int][]string, errors int) {
	t.Helper()
	tab, err := table.Open(table.File(filepath.Join(outside.Root(t), "examples", file)), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	today, err := date.New(2026, 11, 25)
	if err != nil {
		t.Fatal(err)
	}
	byLine = map[int][]string{}
	lineOf := map[int]int{} // of a record
	say := func(fs []label.Finding) {
		for _, f := range fs {
			line := f.Line
			if line == 0 {
				line = lineOf[f.Row]
			}
			if f.Severity == label.Error {
				errors++
			}
			byLine[line] = append(byLine[line], f.Rule)
			if f.Message == "" {
				t.Errorf("%s:%d: %s says nothing", file, line, f.Rule)
			}
		}
	}
	e := check.New(check.Options{Code: "VDOURA", Today: today})
	say(tab.Findings())
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		lineOf[row.N] = row.Line
		r, fs := e.Row(row)
		e.Feed(r)
		say(fs)
	}
	say(e.End())
	for _, rules := range byLine {
		slices.Sort(rules)
	}
	return byLine, errors
}

// Each fault of the broken twin is found where examples/README.md says, by the
// rule it names, and nothing else is found.
func TestBrokenTwin(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(outside.Root(t), "examples", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	want := map[int][]string{}
	kinds := map[string]bool{}
	for line := range strings.Lines(string(readme)) {
		cells := strings.Split(line, "|")
		if len(cells) < 5 {
			continue
		}
		n, err := strconv.Atoi(strings.TrimSpace(cells[1]))
		if err != nil {
			continue
		}
		for _, rule := range strings.Split(cells[2], ",") {
			want[n] = append(want[n], strings.TrimSpace(rule))
			kinds[strings.TrimSpace(rule)] = true
		}
		slices.Sort(want[n])
	}
	if len(kinds) < 25 {
		t.Fatalf("examples/README.md lists %d kinds of fault", len(kinds))
	}
	got, _ := findingsOf(t, "trip-broken.csv")
	lines := maps.Clone(want)
	maps.Copy(lines, got)
	for _, n := range slices.Sorted(maps.Keys(lines)) {
		if fmt.Sprint(got[n]) != fmt.Sprint(want[n]) {
			t.Errorf("trip-broken.csv:%d: found %v, README.md says %v", n, got[n], want[n])
		}
	}
}

// The sound trip prints whole: no error, and warnings only for the record that
// has neither number nor date.
func TestTripIsSound(t *testing.T) {
	got, errors := findingsOf(t, "trip.csv")
	if errors > 0 {
		t.Errorf("%d errors: %v", errors, got)
	}
	if want := map[int][]string{81: {"date-missing", "number-missing"}}; fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("found %v, want %v", got, want)
	}
}
