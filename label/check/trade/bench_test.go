package trade

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"maps"
	"runtime"
	"slices"
	"testing"
	"time"

	"cornerslip/label/check"
	"cornerslip/label/table"
)

// benchTable is a sound trip of n records, with numbers, days, places and names
// that vary as they do on one.
func benchTable(n int) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	heading := slices.Sorted(maps.Keys(check.With("catalogNumber", "x", "habitat", "x", "preparations", "x", "identifiedBy", "x", "dateIdentified", "x")))
	w.Write(heading)
	genera := []string{"Thymus", "Cistus", "Erica", "Quercus", "Armeria", "Silene", "Carex", "Salix", "Festuca", "Linaria"}
	ends := []string{"lusitanicus", "hispanicus", "montanus", "vulgaris", "alpinus", "maritimus", "pratensis", "sylvaticus", "arvensis", "officinalis", "palustris", "rupestris"}
	for i := range n {
		row := check.With("recordNumber", fmt.Sprint(i), "catalogNumber", fmt.Sprintf("VDOURA-%07d", i), "identifiedBy", "I. Almeida", "dateIdentified", "2026-06",
			"preparations", "sheet | packet: capsules", "habitat", "Stabilised dunes with Corema album, on loose sand, facing south-west",
			"eventDate", fmt.Sprintf("%04d-%02d-%02d", 1990+i*30/n, 1+i*360/n%12, 1+i*10000/n%28),
			"scientificName", genera[i%10]+" "+ends[i/10%12]+" Hoffmanns. & Link",
			"family", "", "locality", fmt.Sprintf("Valdoura, dunes %d m W of the field station", i/3),
			"decimalLatitude", fmt.Sprintf("38.%04d", 4000+i/3%3000), "dateIdentified", "2026-06")
		var cells []string
		for _, k := range heading {
			cells = append(cells, row[k])
		}
		w.Write(cells)
	}
	w.Flush()
	return b.Bytes()
}

// readPlain reads a table with encoding/csv and nothing else.
func readPlain(b testing.TB, src []byte) {
	r := csv.NewReader(bytes.NewReader(src))
	for {
		if _, err := r.Read(); err == io.EOF {
			return
		} else if err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCheck checks a table with the basic rules and the trade's on one
// core; the second figure is how many times as long it takes as encoding/csv
// for the same bytes, the third what the trade's rules alone add. All are the
// best of their runs, for the machine may be busy.
func BenchmarkCheck(b *testing.B) {
	const n = 3000
	src := benchTable(n)
	o := options(b)
	if rs, fs := run(b, openBytes(b, "trip.csv", src), o); len(rs) != n || len(fs) > n/100 {
		b.Fatalf("%d records, %d findings: %v", len(rs), len(fs), fs[:min(3, len(fs))])
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	fastest := func(f func()) time.Duration {
		best := time.Hour
		for range 15 {
			start := time.Now()
			f()
			best = min(best, time.Since(start))
		}
		return best
	}
	check1 := func(o check.Options) {
		e := check.New(o)
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
	plain := fastest(func() { readPlain(b, src) })
	bare := o
	bare.Rules = nil
	basic := fastest(func() { check1(bare) })
	b.ReportAllocs()
	per := time.Hour
	for b.Loop() {
		start := time.Now()
		check1(o)
		per = min(per, time.Since(start))
	}
	b.ReportMetric(float64(n)/per.Seconds(), "rows/s")
	b.ReportMetric(float64(per)/float64(plain), "×csv")
	b.ReportMetric(float64(per-basic)/float64(plain), "×csv-trade")
}
