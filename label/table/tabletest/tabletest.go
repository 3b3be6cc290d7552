// Package tabletest makes tables for tests and has them checked. It knows nothing
// of the rules, so that their packages can use it from within.
package tabletest

import (
	"bytes"
	"encoding/csv"
	"maps"
	"slices"
	"sync"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
	"cornerslip/label/table"
)

// Today is the day that examples are checked on.
func Today(t testing.TB) date.Date {
	t.Helper()
	d, err := date.FromISO("2026-06-30")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// CSV writes rows by heading, with a column for each of the headings and for
// every other that a row has.
func CSV(headings []string, rows ...map[string]string) []byte {
	all := map[string]bool{}
	for _, h := range headings {
		all[h] = true
	}
	for _, r := range rows {
		for k := range r {
			all[k] = true
		}
	}
	heading := slices.Sorted(maps.Keys(all))
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.Write(heading)
	for _, r := range rows {
		var cells []string
		for _, k := range heading {
			cells = append(cells, r[k])
		}
		w.Write(cells)
	}
	w.Flush()
	return b.Bytes()
}

// Examples opens a table of a rule's example: every term of a row is a column, and
// scientificName and habitat always are.
func Examples(t testing.TB, rows ...map[string]string) *table.Table {
	t.Helper()
	return Open(t, "trip.csv", CSV([]string{"scientificName", "habitat"}, rows...))
}

// Open opens what a file of that name may hold.
func Open(t testing.TB, name string, b []byte) *table.Table {
	t.Helper()
	tab, err := table.Open(table.Bytes(name, b), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return tab
}

// Rows reads all rows.
func Rows(t testing.TB, tab *table.Table) (rows []*table.Row) {
	t.Helper()
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, row)
	}
	return rows
}

// An Engine checks rows and makes records R of them.
type Engine[R any] interface {
	Row(*table.Row) (R, []label.Finding)
	Feed(R)
	End() []label.Finding
}

// Check has a whole table checked, row by row.
func Check[R any](t testing.TB, e Engine[R], tab *table.Table) (records []R, findings []label.Finding) {
	t.Helper()
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		r, fs := e.Row(row)
		e.Feed(r)
		records, findings = append(records, r), append(findings, fs...)
	}
	return records, append(findings, e.End()...)
}

// CheckParallel does the same with the rows spread over eight workers.
func CheckParallel[R any](t testing.TB, e Engine[R], tab *table.Table) (findings []label.Finding) {
	t.Helper()
	const workers = 8
	in := Rows(t, tab)
	records, said := make([]R, len(in)), make([][]label.Finding, len(in))
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			for i := w; i < len(in); i += workers {
				records[i], said[i] = e.Row(in[i])
			}
		})
	}
	wg.Wait()
	for i, r := range records {
		e.Feed(r)
		findings = append(findings, said[i]...)
	}
	return append(findings, e.End()...)
}
