package job

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"strconv"
	"testing"
	"time"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/table"
)

// benchRecords is how many records the benchmarks check: 5,000, or RECORDS of
// the environment. What the project states of its speed and memory was measured
// with RECORDS=100000.
func benchRecords(b testing.TB) int {
	s := os.Getenv("RECORDS")
	if s == "" {
		return 5000
	}
	n, err := strconv.Atoi(s)
	if err != nil || n < 1000 {
		b.Fatalf("RECORDS=%q: a number from 1000 is needed", s)
	}
	return n
}

// faultEvery is how many records of the table have one fault among them.
const faultEvery = 50

// benchTable writes the records of many trips, with numbers, days, places and
// names that vary as they do, and a coordinate out of range now and then.
func benchTable(w io.Writer, n int) {
	heading := []string{"catalogNumber", "recordedBy", "recordNumber", "eventDate", "family", "scientificName", "identifiedBy", "dateIdentified",
		"country", "stateProvince", "municipality", "locality", "decimalLatitude", "decimalLongitude", "geodeticDatum", "coordinateUncertaintyInMeters",
		"minimumElevationInMeters", "habitat", "plantDescription", "preparations", "duplicatesTo"}
	genera := []string{"Thymus", "Cistus", "Erica", "Quercus", "Armeria", "Silene", "Carex", "Salix", "Festuca", "Linaria"}
	families := []string{"Lamiaceae", "Cistaceae", "Ericaceae", "Fagaceae", "Plumbaginaceae", "Caryophyllaceae", "Cyperaceae", "Salicaceae", "Poaceae", "Plantaginaceae"}
	ends := []string{"lusitanicus", "hispanicus", "montanus", "vulgaris", "alpinus", "maritimus", "pratensis", "sylvaticus", "arvensis", "officinalis", "palustris", "rupestris"}
	people := []string{"I. Almeida | J. Prates", "T. Brandão", "L. Sarmento | I. Almeida", "C. Nóvoa"}
	c := csv.NewWriter(w)
	c.Write(heading)
	day := time.Date(1930, 1, 1, 0, 0, 0, 0, time.UTC) // a dozen gatherings a day
	for i := range n {
		lat := fmt.Sprintf("38.%04d", 4000+i/3%3000)
		if i%faultEvery == faultEvery-1 {
			lat = "138.4712"
		}
		who := i / 25 % len(people)
		c.Write([]string{fmt.Sprintf("VDOURA-%07d", i), people[who], strconv.Itoa(i/100*25 + i%25 + 1), day.AddDate(0, 0, i/12).Format(time.DateOnly),
			families[i%10], genera[i%10] + " " + ends[i/10%12] + " Hoffmanns. & Link", "I. Almeida", "2026-06",
			"Portugal", "Setúbal", "Alcácer do Sal", fmt.Sprintf("Valdoura, dunes %d m W of the field station", i/3), lat, "-8.8035", "WGS84", "30",
			strconv.Itoa(10 + i%40), "Stabilised dunes with Corema album, on loose sand, facing south-west", "Dwarf shrub to 15 cm; flowers cream, bracts green", "sheet | packet: capsules", "PINHEL"})
	}
	c.Flush()
}

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

// checkAll checks a table's bytes and counts.
func checkAll(b testing.TB, j *Job, src table.Source) Summary {
	t, err := table.Open(src, table.Options{})
	if err != nil {
		b.Fatal(err)
	}
	s, err := j.Check(&Table{Table: t}, func(label.Finding) error { return nil })
	if err != nil {
		b.Fatal(err)
	}
	return s
}

// BenchmarkCheckTable checks a table on one core as the command does, with its
// setting of the garbage collector and with Go's own, and reports how many
// times as long it takes as encoding/csv for the same bytes in the same run
// under the same setting; both are the best of their runs, for the machine may
// be busy. In the last one every rule speaks that is off by itself.
func BenchmarkCheckTable(b *testing.B) {
	n := benchRecords(b)
	var text bytes.Buffer
	benchTable(&text, n)
	src := text.Bytes()
	for _, c := range []struct {
		name string
		gc   int
		all  bool
	}{{"command", 400, false}, {"collector=100", 100, false}, {"every rule", 400, true}} {
		b.Run(c.name, func(b *testing.B) {
			j := benchJob(b, c.all)
			s := checkAll(b, j, table.Bytes("trip.csv", src))
			if s.Records != n || s.Errors != n/faultEvery || s.Warnings != 0 || !c.all && s.Notes != 0 {
				b.Fatalf("%d records: %+v", n, s)
			}
			defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
			defer debug.SetGCPercent(debug.SetGCPercent(c.gc))
			var before, after runtime.MemStats
			var bytes, mallocs uint64
			plain, best, runs := time.Hour, time.Hour, 0
			for b.Loop() {
				runtime.GC()
				start := time.Now()
				readPlain(b, src)
				plain = min(plain, time.Since(start))
				runtime.ReadMemStats(&before)
				start = time.Now()
				checkAll(b, j, table.Bytes("trip.csv", src))
				best = min(best, time.Since(start))
				runtime.ReadMemStats(&after)
				bytes, mallocs = bytes+after.TotalAlloc-before.TotalAlloc, mallocs+after.Mallocs-before.Mallocs
				runs++
			}
			b.ReportMetric(float64(n)/best.Seconds(), "rows/s")
			b.ReportMetric(float64(best)/float64(plain), "×csv")
			b.ReportMetric(float64(bytes)/float64(runs*n), "B/row")
			b.ReportMetric(float64(mallocs)/float64(runs*n), "allocs/row")
		})
	}
}

func benchJob(b testing.TB, all bool) *Job {
	j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		b.Fatal(err)
	}
	j.Workers = 1
	if all {
		j.House.Check.Severity = map[string]string{}
		rules, err := j.Rules()
		if err != nil {
			b.Fatal(err)
		}
		for _, r := range rules {
			if r.Severity == check.Off {
				j.House.Check.Severity[r.Name] = "note"
			}
		}
	}
	return j
}

// BenchmarkCheckMemory tells what a check of a table in a file keeps: the heap
// that is live when the last record has been fed to the rules of the whole table,
// less the one before, and the most that was in use, garbage included, with the
// command's setting of the garbage collector.
//
// Measured with every rule on: 10,000 records keep 21 MB, 100,000 keep 57 MB
// and 400,000 keep 175 MB: some 18 MB for any table, 8 of them for number-slip, and
// about 390 bytes a record. Rows and records themselves
// are not kept; what is, a record: some 60 bytes for number-twice, 50 each for
// number-names and catalogue-number-twice, 30 each for number-order and lost
// zeros, some 80 for each distinct text of a locality with its place, and some
// 150 for each way in which a person, a state or a county is written. The peak is
// up to two and a half times as much, for the collector waits so long: 46 MB,
// 145 MB and 467 MB.
func BenchmarkCheckMemory(b *testing.B) {
	n := benchRecords(b)
	path := filepath.Join(b.TempDir(), "trip.csv")
	f, err := os.Create(path)
	if err != nil {
		b.Fatal(err)
	}
	benchTable(f, n)
	if err := f.Close(); err != nil {
		b.Fatal(err)
	}
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	j := benchJob(b, true)
	checkAll(b, j, table.Bytes("one.csv", []byte("country,locality\nPortugal,Valdoura\n"))) // makes what is made once
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	for b.Loop() {
		t, err := table.Open(table.File(path), table.Options{})
		if err != nil {
			b.Fatal(err)
		}
		before, live, peak := heap(), uint64(0), uint64(0)
		sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
		rows := 0
		s, err := j.checkTold(&Table{Table: t}, nil, func(*check.Record) {
			if rows++; rows%256 == 0 {
				metrics.Read(sample)
				peak = max(peak, sample[0].Value.Uint64())
			}
			if rows == n {
				live = heap()
			}
		}, func(label.Finding, *check.Record) error { return nil })
		if err != nil || s.Records != n || live < before {
			b.Fatalf("%+v, %v", s, err)
		}
		b.ReportMetric(float64(live-before)/float64(n), "live-B/record")
		b.ReportMetric(float64(peak)/1e6, "peak-MB")
	}
}
