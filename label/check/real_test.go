package check

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/table"
)

// realRecords is how many records the real table has, by its publisher's count.
const realRecords = 1534

// Every record of the real table is fit to print or has an error that names
// it; none is missing and none comes twice.
func TestRealTable(t *testing.T) {
	src, err := os.ReadFile(outside.Shared(t, "real/taurus-plants.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rs, fs := run(t, New(options(t)), openBytes(t, "taurus-plants.csv", src))
	bad, rules := map[int]bool{}, map[string]int{}
	for _, f := range fs {
		if f.Severity == label.Error {
			bad[f.Row] = true
		}
		rules[f.Severity.String()+" "+f.Rule]++
		style(t, f)
	}
	good := 0
	for i, r := range rs {
		if r.Row != i+1 {
			t.Fatalf("record %d comes in place %d", r.Row, i+1)
		}
		if r.Printable() == bad[r.Row] {
			t.Errorf("record %d: printable %v, with an error %v", r.Row, r.Printable(), bad[r.Row])
		}
		if r.Printable() {
			good++
		}
	}
	if len(rs) != realRecords || good+len(bad) != realRecords {
		t.Errorf("%d records, %d good and %d bad, of %d", len(rs), good, len(bad), realRecords)
	}
	// The table has no collector's numbers at all.
	if n := rules["warning number-missing"]; n != realRecords {
		t.Errorf("%d missing numbers", n)
	}
	for _, k := range slices.Sorted(maps.Keys(rules)) {
		t.Logf("%5d %s", rules[k], k)
	}
	if testing.Verbose() {
		seen := map[string]bool{}
		for _, f := range fs {
			if k := f.Rule + f.Message + f.Value; f.Rule != "number-missing" && !seen[k] {
				seen[k] = true
				t.Log(f)
			}
		}
	}
}

// benchTable is the sound row n times, with numbers and names that vary.
func benchTable(n int) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	heading := slices.Sorted(maps.Keys(With("catalogNumber", "x", "habitat", "x", "preparations", "x", "identifiedBy", "x", "dateIdentified", "x")))
	w.Write(heading)
	for i := range n {
		row := With("recordNumber", fmt.Sprint(i), "catalogNumber", fmt.Sprintf("VDOURA-%07d", i), "identifiedBy", "I. Almeida", "dateIdentified", "2026-06",
			"preparations", "sheet | packet: capsules", "habitat", "Stabilised dunes with Corema album, on loose sand, facing south-west",
			"decimalLatitude", fmt.Sprintf("38.%04d", i%10000))
		var cells []string
		for _, k := range heading {
			cells = append(cells, row[k])
		}
		w.Write(cells)
	}
	w.Flush()
	return b.Bytes()
}

// BenchmarkRows checks rows with all rules on one core; the second figure is
// how many times as long as encoding/csv takes to read the same bytes.
func BenchmarkRows(b *testing.B) {
	const n = 2000
	src := benchTable(n)
	rs, fs := run(b, New(options(b)), openBytes(b, "trip.csv", src))
	if len(rs) != n || len(fs) != 0 {
		b.Fatalf("%d records, findings %v", len(rs), fs[:min(3, len(fs))])
	}
	var plain time.Duration
	for range 5 {
		start := time.Now()
		r := csv.NewReader(bytes.NewReader(src))
		r.ReuseRecord = true
		for {
			if _, err := r.Read(); err == io.EOF {
				break
			} else if err != nil {
				b.Fatal(err)
			}
		}
		if d := time.Since(start); plain == 0 || d < plain {
			plain = d
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		e := New(options(b))
		tab, err := table.Open(table.Bytes("trip.csv", src), table.Options{})
		if err != nil {
			b.Fatal(err)
		}
		for row, err := range tab.Rows() {
			if err != nil {
				b.Fatal(err)
			}
			r, _ := e.Row(row)
			e.Feed(r)
		}
		e.End()
	}
	per := b.Elapsed() / time.Duration(b.N)
	b.ReportMetric(float64(n)/per.Seconds(), "rows/s")
	b.ReportMetric(float64(per)/float64(plain), "×csv")
}
