package form

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/table"
)

// recordsOf reads a table through the check.
func recordsOf(t testing.TB, src table.Source) []*check.Record {
	t.Helper()
	tab, err := table.Open(src, table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	e := check.New(check.Options{})
	var all []*check.Record
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		r, _ := e.Row(row)
		all = append(all, r)
	}
	return all
}

// record makes one record of pairs of term and cell.
func record(t testing.TB, pairs ...string) *check.Record {
	t.Helper()
	var head, row []string
	for i := 0; i < len(pairs); i += 2 {
		head = append(head, pairs[i])
		row = append(row, `"`+strings.ReplaceAll(pairs[i+1], `"`, `""`)+`"`)
	}
	text := strings.Join(head, ",") + "\n" + strings.Join(row, ",") + "\n"
	return recordsOf(t, table.Bytes("trip.csv", []byte(text)))[0]
}

func trip(t testing.TB) []*check.Record {
	return recordsOf(t, table.File(filepath.Join(outside.Root(t), "examples", "trip.csv")))
}

// dump writes a label as text: a line for each block, with marks for styles.
func dump(c label.Content) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s", c.Kind, c.Part)
	if c.For != "" {
		fmt.Fprintf(&b, " for %s", c.For)
	}
	b.WriteByte('\n')
	for _, bl := range c.Blocks {
		mark := " "
		if !bl.Tight {
			mark = "-"
		}
		fmt.Fprintf(&b, "%s %-9s ", mark, bl.Role)
		if bl.Caption != nil {
			b.WriteString("[" + marked(bl.Caption) + "] ")
		}
		b.WriteString(marked(bl.Runs))
		if bl.Right != nil {
			b.WriteString(" >> " + marked(bl.Right))
		}
		if bl.Bars != nil {
			fmt.Fprintf(&b, " ||%s %s||", bl.Bars.Symbology, bl.Bars.Text)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// marked writes runs with the marks of their styles, and "_" for blanks at
// which a line must not break.
func marked(runs []label.Run) string {
	var b strings.Builder
	open := label.Style(0)
	marks := []struct {
		style label.Style
		mark  string
	}{{label.Italic, "/"}, {label.Bold, "*"}, {label.Capitals, "^"}}
	change := func(to label.Style) {
		for _, m := range marks {
			if open&m.style != to&m.style {
				b.WriteString(m.mark)
			}
		}
		open = to
	}
	for i, r := range runs {
		change(r.Style)
		s := r.Text
		if r.Keep {
			s = strings.ReplaceAll(s, " ", "_")
		}
		if i > 0 && runs[i-1].Glue && strings.HasPrefix(s, " ") {
			s = "_" + s[1:]
		}
		if r.Glue && strings.HasSuffix(s, " ") {
			s = s[:len(s)-1] + "_"
		}
		b.WriteString(strings.ReplaceAll(s, "\u202f", "·"))
	}
	change(0)
	return b.String()
}

// TestTrip keeps all labels of the example trip as text, so that a change of
// words is seen.
func TestTrip(t *testing.T) {
	var b strings.Builder
	o := house()
	for _, r := range trip(t) {
		fmt.Fprintf(&b, "\n=== row %d, %s\n", r.Row, r.Key())
		for _, list := range [][]label.Content{Sheet(r, o), Packets(r, o), Containers(r, o), Barcodes(r, o)} {
			for i, c := range list {
				if i > 0 && c.For != "" && list[i-1].For != "" {
					fmt.Fprintf(&b, "%s for %s: as before\n", c.Kind, c.For)
					continue
				}
				b.WriteString(dump(c))
			}
		}
	}
	golden(t, "testdata/trip.txt", b.String())
}

// house are the options of the usual house.
func house() Options {
	return Options{House: []string{"Valdoura Field Station Herbarium"}, Code: "VDOURA",
		OwnNumber: func(n string) bool { return strings.HasPrefix(n, "VDOURA-") }}
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if os.Getenv("UPDATE") == "1" {
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got == string(want) {
		return
	}
	g, w := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			line := "(end of file)"
			if i < len(w) {
				line = w[i]
			}
			t.Fatalf("%s:%d (rewrite with UPDATE=1)\n got %s\nwant %s", file, i+1, g[i], line)
		}
	}
	t.Fatalf("%s: %d lines, want %d (rewrite with UPDATE=1)", file, len(g), len(w))
}

func BenchmarkSheet(b *testing.B) {
	all := trip(b)
	o := house()
	n := 0
	for _, r := range all {
		for _, c := range Sheet(r, o) {
			n++
			if f := faults(c); len(f) > 0 {
				b.Fatal(f)
			}
		}
	}
	if n < 80 {
		b.Fatalf("%d labels", n)
	}
	for b.Loop() {
		for _, r := range all {
			Sheet(r, o)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*n), "µs/label")
}
