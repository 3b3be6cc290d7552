package job

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/register"
)

// BenchmarkReprintProcess runs the whole program, from a register of many
// labels to the file of one, and beside it the least that could do the job: a
// program that opens the same file and writes an empty page with the same
// faces. A million labels take some minutes and 2 GB of disk to make:
//
//	LABELS=1000000 go test -run none -bench ReprintProcess ./cmd/internal/job -timeout 30m
func BenchmarkReprintProcess(b *testing.B) {
	n := 20_000
	if s := os.Getenv("LABELS"); s != "" {
		var err error
		if n, err = strconv.Atoi(s); err != nil {
			b.Fatal(err)
		}
	}
	dir := b.TempDir()
	program, plain := filepath.Join(dir, "cornerslip"), filepath.Join(dir, "plain")
	for path, pkg := range map[string]string{program: "./cmd/cornerslip", plain: "./cmd/internal/job/testdata/plain"} {
		build := exec.Command(outside.Program(b, "go"), "build", "-o", path, pkg)
		build.Dir = outside.Root(b)
		if out, err := build.CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, out)
		}
	}
	book := manyLabels(b, dir, n)
	out := filepath.Join(dir, "one.pdf")
	run := func(name string, args ...string) time.Duration {
		os.Remove(out)
		c := exec.Command(name, args...)
		c.Dir = dir
		begin := time.Now()
		if text, err := c.CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, text)
		}
		return time.Since(begin)
	}
	reprint := func(i int) time.Duration {
		return run(program, "reprint", fmt.Sprintf("VDOURA-%07d", i%n+1), "--register", book, "--kind", "sheet", "--why", "torn", "--by", "C. Reis", "--date", "2026-11-25", "-o", out)
	}
	reprint(n / 2)
	if src, err := os.ReadFile(out); err != nil || !bytes.HasPrefix(src, []byte("%PDF-")) || len(src) < 5000 {
		b.Fatalf("no label was printed: %d bytes, %v", len(src), err)
	}
	run(plain, book, out)
	var ours, least time.Duration
	i := 0
	for b.Loop() {
		ours += reprint(i*7919 + 13)
		least += run(plain, book, out)
		i++
	}
	b.ReportMetric(float64(ours.Microseconds())/float64(i)/1000, "ms/reprint")
	b.ReportMetric(float64(least.Microseconds())/float64(i)/1000, "ms/plain")
	b.ReportMetric(float64(ours)/float64(least), "times-plain")
}

// manyLabels makes a register that holds n printed labels, each of a number of
// its own.
func manyLabels(b *testing.B, dir string, n int) string {
	b.Helper()
	ctx := b.Context()
	j := in("house.toml", b)
	tab := written(b, "trip.csv", heading+"VDOURA-0000001,I. Almeida,1,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,\n")
	var one register.Label
	q := Request{Kind: label.Sheet}
	if err := j.prepare(&q); err != nil {
		b.Fatal(err)
	}
	if _, err := j.checkAndSet(tab, &q, func(label.Finding) error { return nil }, func(_ *Summary, s setRecord) error {
		cells, digest := recordCells(s.record)
		one = labelOf(s.labels[0], s, s.encoded[0], cells, digest)
		return nil
	}); err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(dir, "herbarium.db")
	r, err := register.Create(ctx, path, when(1), register.Options{})
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	if _, err := r.AddSeries(ctx, when(1), pattern(b, "VDOURA-0000000"), 1); err != nil {
		b.Fatal(err)
	}
	if _, err := r.Issue(ctx, when(1), "", n); err != nil {
		b.Fatal(err)
	}
	if _, err := r.Remember(ctx, when(1), register.Run{Program: "cornerslip", House: j.houseText}, func(yield func(register.Label, error) bool) {
		for i := range n {
			l := one
			l.CatalogNumber = fmt.Sprintf("VDOURA-%07d", i+1)
			l.Number = strconv.Itoa(i + 1)
			l.Collector = fmt.Sprintf("I. Almeida %d", i/2000)
			l.Name = fmt.Sprintf("Salix salviifolia Brot. var. %d", i%5000)
			if !yield(l, nil) {
				return
			}
		}
	}); err != nil {
		b.Fatal(err)
	}
	return path
}
