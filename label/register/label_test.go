package register

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"iter"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// sheet is a label as the job hands it over.
func sheet(catalog, collector, number, name string) Label {
	return Label{Kind: "sheet", Label: 1, Of: 1, CatalogNumber: catalog, Collector: collector, Number: number, Name: name, Date: "2026-06-14",
		Record: []byte("digest of " + number), Cells: []byte("cells of " + number), Box: []byte("box of " + number)}
}

func TestRecord(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 10)
		mark(t, r, Attached, 9, 9)
		full := Label{Kind: "packet", Part: "Sheet 1 of 2", For: "PINHEL", Label: 2, Of: 3, CatalogNumber: "", Collector: "I. Almeida & J. Moura", Number: "214 bis",
			Name: "×Triticosecale Wittm. ex A.Camus", Date: "2026", Record: []byte{0, 255, 1}, Cells: []byte("a\x00b"), Box: bytes.Repeat([]byte{0, 1, 2, 255}, 5000)}
		all := []Label{
			sheet("VDOURA-0000002", "I. Almeida", "214", "Iris boissieri Henriq."), sheet("vdoura 9", "I. Almeida", "215", "Iris boissieri Henriq."),
			full, {}, sheet("LISU 77", "J. Moura", "s.n.", ""), sheet("", "", "", "Silene"),
		}
		rec, err := r.Record(t.Context(), registrar("trip"), Run{Program: "cornerslip 1.2.3", Source: "trip.csv", House: "code = \"VDOURA\"\n# ç\n"})
		must(t, err)
		for _, l := range all {
			must(t, rec.Add(t.Context(), l))
		}
		if found, err := r.Find(t.Context(), "Almeida", 0); err != nil || len(found) != 0 {
			t.Errorf("found before the printing is finished: %v, %v", found, err)
		}
		if _, err := r.Load(t.Context(), 1); !errors.Is(err, ErrNoLabel) {
			t.Errorf("loaded before the printing is finished: %v", err)
		}
		n, err := rec.Finish(t.Context())
		must(t, err)
		if n != len(all) {
			t.Errorf("%d of %d labels kept", n, len(all))
		}
		must(t, rec.Abandon(t.Context())) // may be deferred
		refused(t, rec.Add(t.Context(), full), nil, "ended")
		_, err = rec.Finish(t.Context())
		refused(t, err, nil, "ended")
		if got := states(t, r); got != "1 issued, 2 printed, 3-8 issued, 9 attached, 10 issued" {
			t.Errorf("states: %s", got)
		}
		for i, l := range all {
			k, err := r.Load(t.Context(), i+1)
			must(t, err)
			want := Kept{ID: i + 1, Label: l, When: moment, By: "M. Teixeira", Run: Run{Program: "cornerslip 1.2.3", Source: "trip.csv", House: "code = \"VDOURA\"\n# ç\n"}}
			if diff := cmp.Diff(want, k, cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("label %d: %s", i, diff)
			}
		}
		_, err = r.Load(t.Context(), 99)
		refused(t, err, ErrNoLabel, "99")
		refused(t, r.Reprinted(t.Context(), registrar(""), 1), nil, "reason")
		refused(t, r.Reprinted(t.Context(), registrar("torn"), 99), ErrNoLabel, "99")
		must(t, r.Reprinted(t.Context(), registrar("torn"), 1))
		must(t, r.Reprinted(t.Context(), registrar("wet"), 1))
		must(t, r.Reprinted(t.Context(), registrar("torn"), 4)) // without a number
		if k, err := r.Load(t.Context(), 1); err != nil || k.Reprinted != 2 {
			t.Errorf("reprinted %d times: %v", k.Reprinted, err)
		}
		if got := history(t, r, "VDOURA-0000002"); got != "3 issued 1-10\n5 printed 2-2: trip\n6 reprinted 2-2 label 1: torn\n7 reprinted 2-2 label 1: wet" {
			t.Errorf("history: %s", got)
		}
		whole(t, r)
	})
}

func TestRecordRefuses(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 10)
		mark(t, r, Void, 5, 5)
		for _, tc := range []struct {
			label Label
			kind  error
			says  string
		}{
			{sheet("VDOURA-0000005", "I. Almeida", "214", ""), ErrVoid, "VDOURA-0000005, I. Almeida 214"},
			{sheet("VDOURA-0000011", "I. Almeida", "214", ""), ErrNotIssued, "import it"},
			{sheet("VDOURA-00000011", "I. Almeida", "214", ""), nil, "8 figures"},
			{sheet("", "I. Almeida\x00", "214", ""), nil, "not text"},
			{sheet("", "I. Almeida", "214", "Iris \xff"), nil, "not text"},
		} {
			rec, err := r.Record(t.Context(), registrar(""), Run{})
			must(t, err)
			must(t, rec.Add(t.Context(), sheet("VDOURA-0000001", "I. Almeida", "213", "")))
			must(t, rec.Add(t.Context(), tc.label))
			_, err = rec.Finish(t.Context())
			refused(t, err, tc.kind, tc.says)
			refused(t, rec.Add(t.Context(), tc.label), nil, "ended")
			must(t, rec.Abandon(t.Context()))
			must(t, rec.Abandon(t.Context()))
		}
		// A duplicate that goes to another herbarium bears no number of ours.
		gift := sheet("VDOURA-0000005", "I. Almeida", "214", "")
		gift.For = "PINHEL"
		printOne(t, r, gift)
		// Made void between the label and the end.
		rec, err := r.Record(t.Context(), registrar(""), Run{})
		must(t, err)
		must(t, rec.Add(t.Context(), sheet("VDOURA-0000006", "I. Almeida", "216", "")))
		must(t, rec.flush(t.Context()))
		mark(t, r, Void, 6, 6)
		_, err = rec.Finish(t.Context())
		refused(t, err, ErrVoid, "VDOURA-0000006")
		must(t, rec.Abandon(t.Context()))
		if got := states(t, r); got != "1-4 issued, 5-6 void, 7-10 issued" {
			t.Errorf("states: %s", got)
		}
		if got := dumpOf(t, r, "runs", "labels", "boxes"); strings.Count(got, "\n") != 3 {
			t.Errorf("left behind by abandoned printings: %s", got)
		}
		whole(t, r)
	})
}

func dumpOf(t testing.TB, r *Register, names ...string) string {
	var b strings.Builder
	for line := range strings.Lines(dump(t, r)) {
		for _, name := range names {
			if strings.HasPrefix(line, "INSERT INTO "+name+" ") {
				b.WriteString(line)
			}
		}
	}
	return b.String()
}

// A recording that was abandoned and is abandoned again, as a deferred call
// does, leaves the printing alone that has its place by now.
func TestAbandonTwice(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		first, err := r.Record(t.Context(), registrar(""), Run{})
		must(t, err)
		must(t, first.Add(t.Context(), sheet("", "I. Almeida", "1", "")))
		must(t, first.flush(t.Context()))
		must(t, first.Abandon(t.Context()))
		second, err := r.Record(t.Context(), registrar(""), Run{})
		must(t, err)
		must(t, second.Add(t.Context(), sheet("", "I. Almeida", "2", "")))
		must(t, first.Abandon(t.Context()))
		if n, err := second.Finish(t.Context()); err != nil || n != 1 {
			t.Errorf("the second printing: %d, %v", n, err)
		}
		if found, err := r.Find(t.Context(), "Almeida 2", 0); err != nil || len(found) != 1 {
			t.Errorf("found %v, %v", found, err)
		}
		whole(t, r)
	})
}

// Printings of several programs at once keep apart, over many batches.
func TestRecordBatches(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		count := 2*recordBatch + 5
		_, err := r.Issue(t.Context(), registrar(""), "", count)
		must(t, err)
		other, err := r.Record(t.Context(), registrar(""), Run{Program: "other"})
		must(t, err)
		n, err := r.Remember(t.Context(), registrar(""), Run{Program: "cornerslip"}, func(yield func(Label, error) bool) {
			for i := range count {
				if i%1000 == 0 {
					must(t, other.Add(t.Context(), sheet("", "J. Moura", fmt.Sprint(i), "Silene")))
					must(t, other.flush(t.Context()))
				}
				if !yield(sheet(fmt.Sprintf("VDOURA-%07d", i+1), fmt.Sprintf("Collector%d", i%50), fmt.Sprint(i), fmt.Sprintf("Iris species%d", i%300)), nil) {
					return
				}
			}
		})
		if err != nil || n != count {
			t.Fatalf("%d, %v", n, err)
		}
		if got := states(t, r); got != fmt.Sprintf("1-%d printed", count) {
			t.Errorf("states: %s", got)
		}
		must(t, other.Abandon(t.Context()))
		for _, i := range []int{0, 1, recordBatch - 1, recordBatch, count - 1} {
			found, err := r.Find(t.Context(), fmt.Sprintf("VDOURA-%07d", i+1), 0)
			if err != nil || len(found) != 1 || found[0].Number != fmt.Sprint(i) {
				t.Errorf("label %d: %v, %v", i, found, err)
				continue
			}
			if k, err := r.Load(t.Context(), found[0].ID); err != nil || string(k.Box) != "box of "+fmt.Sprint(i) {
				t.Errorf("label %d: box %q, %v", i, k.Box, err)
			}
		}
		whole(t, r)
	})
}

func TestRemember(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 2)
		stop := errors.New("the printer burns")
		labels := func(bad error, void bool) iter.Seq2[Label, error] {
			return func(yield func(Label, error) bool) {
				if !yield(sheet("VDOURA-0000001", "I. Almeida", "1", ""), nil) {
					return
				}
				if void && !yield(sheet("VDOURA-0000003", "I. Almeida", "3", ""), nil) {
					return
				}
				if bad != nil {
					yield(Label{}, bad)
				}
			}
		}
		if _, err := r.Remember(t.Context(), registrar(""), Run{}, labels(stop, false)); !errors.Is(err, stop) {
			t.Errorf("a printing that ends badly: %v", err)
		}
		if _, err := r.Remember(t.Context(), registrar(""), Run{}, labels(nil, true)); !errors.Is(err, ErrNotIssued) {
			t.Errorf("a number never issued: %v", err)
		}
		ctx, cancel := context.WithCancel(t.Context())
		_, err := r.Remember(ctx, registrar(""), Run{}, func(yield func(Label, error) bool) {
			yield(sheet("VDOURA-0000001", "I. Almeida", "1", ""), nil)
			cancel()
		})
		if !errors.Is(err, context.Canceled) {
			t.Errorf("a printing that is broken off: %v", err)
		}
		if got := dumpOf(t, r, "runs", "labels", "boxes"); got != "" {
			t.Errorf("left behind: %s", got)
		}
		if n, err := r.Remember(t.Context(), registrar(""), Run{}, labels(nil, false)); n != 1 || err != nil {
			t.Errorf("%d, %v", n, err)
		}
		if got := states(t, r); got != "1 printed, 2 issued" {
			t.Errorf("states: %s", got)
		}
		whole(t, r)
	})
}
