package job

import (
	"bytes"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/register"
	"cornerslip/layout"
)

// The place that is asked for is the one that is printed on, and nothing else
// of the paper is.
func TestReprintOnPartUsedPaper(t *testing.T) {
	j, r := in("", t), book(t, 3)
	tab := written(t, "trip.csv", heading+"VDOURA-0000001,I. Almeida,1,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,\n")
	if _, _, err := print(t, j, tab, Request{Kind: label.Sheet, Memory: &Memory{Register: r, At: when(3)}}); err != nil {
		t.Fatal(err)
	}
	p := printed(t, r, "Almeida 1", "", 0)
	for _, c := range []struct {
		start string
		skip  []string
		x, y  layout.Length
		wrong string
	}{
		{start: "1,1", x: 0, y: 0},
		{start: "2,1", x: 0, y: 74 * layout.MM},
		{start: "2,2", x: 105 * layout.MM, y: 74 * layout.MM},
		{start: "8", x: 105 * layout.MM, y: 222 * layout.MM},
		{start: "2,1", skip: []string{"2,1", "2,2"}, x: 0, y: 148 * layout.MM},
		{start: "8", skip: []string{"8"}, wrong: "room for 0 of the 1 labels"},
		{start: "5,1", wrong: "5,1"},
		{start: "here", wrong: "here"},
	} {
		q := Request{Kind: label.Sheet}
		if err := j.prepare(&q); err != nil {
			t.Fatal(err)
		}
		run, err := newRun()
		if err != nil {
			t.Fatal(err)
		}
		defer run.close()
		b, err := j.kept(p.Last(), false)
		if err != nil {
			t.Fatal(err)
		}
		if err := run.put(&SetLabel{Ref: b.Ref, Size: b.Size}, layout.Encode(b)); err != nil {
			t.Fatal(err)
		}
		if err := run.done(); err != nil {
			t.Fatal(err)
		}
		var rep Report
		pages, err := j.onPartUsed(&q, run, &rep, c.start, c.skip)
		if c.wrong != "" {
			if err == nil || !strings.Contains(err.Error(), c.wrong) {
				t.Errorf("--start %s --skip %s: error %v, want %q", c.start, c.skip, err, c.wrong)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		n, drawn := 0, 0
		for page, err := range pages {
			if err != nil {
				t.Fatal(err)
			}
			n++
			for _, b := range page.Boxes {
				if len(b.Box.Marks) == 0 {
					continue
				}
				drawn++
				if dx, dy := b.At.X-c.x, b.At.Y-c.y; dx < -layout.MM || dx > layout.MM || dy < -layout.MM || dy > layout.MM {
					t.Errorf("--start %s: the label lies at %s, %s", c.start, b.At.X, b.At.Y)
				}
			}
		}
		if n != 1 || drawn != 1 {
			t.Errorf("--start %s: %d papers with %d boxes, want one of each", c.start, n, drawn)
		}
	}
}

// New numbers are issued only where they can be printed, and stay issued where
// the printing fails after all.
func TestBareNumbers(t *testing.T) {
	ctx := t.Context()
	j, r := in("house.toml", t), book(t, 3)
	dir := t.TempDir()
	q := Request{Memory: &Memory{Register: r, At: when(3)}}
	highest := func() int {
		all, err := r.Series(ctx)
		if err != nil {
			t.Fatal(err)
		}
		return all[0].Highest
	}
	for name, c := range map[string]struct {
		q Request
		n Numbers
	}{
		"no folder":    {q, Numbers{Count: 5, Path: filepath.Join(dir, "none", "b.pdf")}},
		"no symbology": {Request{Memory: q.Memory, Symbology: "telepen"}, Numbers{Count: 5, Path: filepath.Join(dir, "b.pdf")}},
		"no series":    {q, Numbers{Count: 5, Series: "PINHEL", Path: filepath.Join(dir, "b.pdf")}},
		"below 1":      {q, Numbers{Count: -1, Path: filepath.Join(dir, "b.pdf")}},
		"both":         {q, Numbers{Count: 1, Ranges: []string{"VDOURA-0000001"}, Path: filepath.Join(dir, "b.pdf")}},
	} {
		if _, err := j.NumbersFor(ctx, c.q, c.n); err == nil || highest() != 3 {
			t.Errorf("%s: error %v, highest number %d", name, err, highest())
		}
	}
	ranges, err := j.NumbersFor(ctx, q, Numbers{Count: 5, Path: filepath.Join(dir, "b.pdf")})
	if err != nil || ranges[0].First != 4 || ranges[0].Last != 8 {
		t.Fatalf("issued %v, %v", ranges, err)
	}
	if _, err := j.PrintNumbers(q, ranges, func(pages func(io.Writer) error) error { return pages(failing{errors.New("disk full")}) }); err == nil {
		t.Fatal("no error from a full disk")
	}
	if row, err := r.Number(ctx, "VDOURA-0000005"); err != nil || row.State != register.Issued {
		t.Errorf("VDOURA-0000005 is %s, want issued; %v", row.State, err)
	}
	if ranges, err = j.NumbersFor(ctx, q, Numbers{Ranges: []string{"VDOURA-0000004..VDOURA-0000008"}}); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	rep, err := j.PrintNumbers(q, ranges, func(pages func(io.Writer) error) error { return pages(&out) })
	if err != nil || rep.Labels != 5 || out.Len() == 0 {
		t.Fatalf("%d labels, %d bytes; %v", rep.Labels, out.Len(), err)
	}
	for n := range ranges[0].Numbers() {
		if row, err := r.Number(ctx, n); err != nil || row.State != register.Printed {
			t.Errorf("%s is %s, want printed; %v", n, row.State, err)
		}
		if p := printed(t, r, n, label.Barcode, 0); p.Last().CatalogNumber != n {
			t.Errorf("%s: found %s", n, p.Last().CatalogNumber)
		}
	}
}
