package job

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/table"
)

// TestReuse holds that rows, records and readings that are used again change
// nothing: each row is read again by an engine of its own, which has seen no
// other.
func TestReuse(t *testing.T) {
	ex := filepath.Join(outside.Root(t), "examples")
	var many bytes.Buffer
	benchTable(&many, 300)
	tables := map[string][]byte{"many.csv": many.Bytes(), "mixed.csv": mixedExamples(t)}
	for _, path := range []string{filepath.Join(ex, "trip.csv"), filepath.Join(ex, "trip-broken.csv"), outside.Shared(t, "real/taurus-plants.csv")} {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		tables[filepath.Base(path)] = src[:min(len(src), 40_000)]
	}
	for name, src := range tables {
		for _, workers := range []int{1, 4} {
			j := benchJob(t, true)
			j.Workers = workers
			tab, err := table.Open(table.Bytes(name, src), table.Options{})
			if err != nil {
				t.Fatal(err)
			}
			n := 0
			var rows []*table.Row
			for row, err := range tab.Rows() {
				if err != nil {
					t.Fatal(err)
				}
				rows = append(rows, row)
			}
			err = j.sweep(&Table{Table: tab}, check.New(j.checkOptions()), func(r rowResult) error {
				record, findings := check.New(j.checkOptions()).Row(rows[n])
				n++
				if len(findings)+len(r.findings) > 0 && !reflect.DeepEqual(r.findings, findings) {
					t.Errorf("%s row %d: findings %v, want %v", name, n, r.findings, findings)
				}
				if got, want := fmt.Sprintf("%+v", r.record), fmt.Sprintf("%+v", record); got != want {
					t.Errorf("%s row %d: %s\nwant %s", name, n, got, want)
				}
				return nil
			})
			if err != nil || n < 50 {
				t.Errorf("%s: %d rows, %v", name, n, err)
			}
			if testing.Short() || name == "many.csv" {
				break
			}
		}
	}
}

// mixedExamples is a table of all rules' examples, one after the other.
func mixedExamples(t *testing.T) []byte {
	t.Helper()
	j := benchJob(t, false)
	rules, err := j.Rules()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range rules {
		rows = append(rows, slices.Concat(r.Example, r.Counterexample)...)
	}
	return []byte(csvOf(rows))
}

// A fault in the middle of a batch comes after the rows before it.
func TestBatches(t *testing.T) {
	fault := errors.New("fault")
	for _, n := range []int{0, 1, batch - 1, batch, batch + 1, 3*batch + 5} {
		for _, fails := range []bool{false, true} {
			got, last := 0, error(nil)
			for rows, err := range batches(func(yield func(*table.Row, error) bool) {
				for i := range n {
					if !yield(&table.Row{N: i + 1}, nil) {
						return
					}
				}
				if fails {
					yield(nil, fault)
				}
			}) {
				last = err
				for _, r := range rows {
					if got++; r.N != got {
						t.Fatalf("row %d is %d", got, r.N)
					}
				}
			}
			if got != n || (last != nil) != fails {
				t.Errorf("%d rows: %d came, %v", n, got, last)
			}
		}
	}
}

// What Check says does not depend on the workers.
func TestCheckWorkers(t *testing.T) {
	var want []label.Finding
	for _, workers := range []int{1, 3, 8} {
		j := benchJob(t, true)
		j.Workers = workers
		tab, err := table.Open(table.Bytes("mixed.csv", mixedExamples(t)), table.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []label.Finding
		if _, err := j.Check(&Table{Table: tab}, func(f label.Finding) error { got = append(got, f); return nil }); err != nil {
			t.Fatal(err)
		}
		if want == nil {
			want = got
		}
		if !reflect.DeepEqual(got, want) || len(got) < 1000 {
			t.Errorf("%d findings with %d workers, %d with one", len(got), workers, len(want))
		}
	}
}

// A message names a column as the table's heading does; words of the language
// and what stands in quotes stay.
func TestInHeadings(t *testing.T) {
	heads := map[string]*label.Heading{"eventDate": {Text: "Coll. date"}, "decimalLatitude": {Text: "lat"}, "year": {Text: "Jahr"}, "latitudeMinutes": {Text: "Breite Min", Inner: true}}
	for _, c := range []struct{ message, want string }{
		{"eventDate says 2026: correct one of the two", `"Coll. date" says 2026: correct one of the two`},
		{"write the year out", "write the year out"},
		{"put it into decimalLatitude, not into decimalLongitude", "put it into lat, not into decimalLongitude"},
		{`write "eventDate" as it is`, `write "eventDate" as it is`},
		{"72 in latitudeMinutes", `72 in "Breite Min"`},
		{"eventDates", "eventDates"}, {"die Höhe fehlt", "die Höhe fehlt"}, {"", ""},
	} {
		if got := inHeadings(c.message, heads); got != c.want {
			t.Errorf("%q: %q, want %q", c.message, got, c.want)
		}
	}
}
