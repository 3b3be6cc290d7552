package trade

import (
	"bufio"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
)

// A table of 300 names as collectors write them, of all continents and kinds,
// raises nothing but what is wrong with the writing of a name, once a name.
func TestNameHabits(t *testing.T) {
	f, err := os.Open(filepath.Join(outside.Root(t), "label", "name", "testdata", "habits.txt"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var all []map[string]string
	var want []string
	for s := bufio.NewScanner(f); s.Scan(); {
		if strings.HasPrefix(s.Text(), "#") {
			continue
		}
		m, fault, _ := strings.Cut(s.Text(), "\t")
		if fault == "-" {
			fault = ""
		}
		all = append(all, rows([]string{"scientificName", strings.ReplaceAll(m, "_", ""), "family", "", "recordNumber", itoa(len(all) + 1)})...)
		want = append(want, fault)
	}
	_, fs := run(t, open(t, all...), options(t))
	got := make([]string, len(all))
	// Among so many authors these lack theirs, which is said.
	bare := map[string]bool{"Erica vagans L. lusus alba": true, "Corallina officinalis L. var. mediterranea": true, "Chara vulgaris var. longibracteata f. hispidula": true, "QUERCUS SUBER": true}
	for _, f := range fs {
		for _, row := range append([]label.Cell{{Row: f.Row}}, f.Also...) {
			if f.Rule == "author-missing" && bare[all[row.Row-1]["scientificName"]] {
				delete(bare, all[row.Row-1]["scientificName"])
				continue
			}
			got[row.Row-1] += f.Rule
		}
	}
	alarms, misses := 0, len(bare)
	for i := range want {
		if got[i] == want[i] {
			continue
		}
		if want[i] == "" {
			alarms++
		} else {
			misses++
		}
		t.Errorf("%s: %q, not %q", all[i]["scientificName"], got[i], want[i])
	}
	if len(bare) > 0 {
		t.Errorf("no word of the missing authors of %v", bare)
	}
	t.Logf("%d names: %d false alarms, %d missed", len(want), alarms, misses)
}
