package register

import (
	"errors"
	"fmt"
	"iter"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"cornerslip/label"
	"cornerslip/label/accession"
)

func entries(list []Old) iter.Seq2[Old, error] {
	return func(yield func(Old, error) bool) {
		for _, old := range list {
			if !yield(old, nil) {
				return
			}
		}
	}
}

// importAll imports and returns the clashes' texts.
func importAll(t testing.TB, r *Register, o ImportOptions, list ...Old) (ImportCount, []Clash) {
	t.Helper()
	for i := range list {
		list[i].Origin = label.Origin{File: "old.csv", Line: i + 2, Row: i + 1}
	}
	var clashes []Clash
	count, err := r.Import(t.Context(), registrar("the card index"), o, entries(list), func(c Clash) error {
		clashes = append(clashes, c)
		return nil
	})
	must(t, err)
	if count.Clashes != len(clashes) || count.New+count.Same+count.Clashes != len(list) {
		t.Errorf("%+v of %d entries, %d clashes", count, len(list), len(clashes))
	}
	return count, clashes
}

// old writes an entry as sp does, with a state.
func old(text string, state State) Old { return Old{Specimen: sp(text), State: state} }

func TestImport(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		assign(t, r, sp("I. Almeida|1||2026-06-14"), sp("I. Almeida|s.n.|||id2"), sp("I. Almeida|3"))
		mark(t, r, Void, 3, 3)
		list := []Old{
			old("J. Moura|12||1931-05-02||VDOURA-0000012", ""),
			old("J. Moura|9||||vdoura 9", Lost),
			old("|||"+"||VDOURA-0000010", Transferred), // nothing but the number
			old("J. Moura|13||1931||13|", ""),          // figures alone are no number of the series
			old("J. Moura|s.n.||||VDOURA-0000014", ""),
			old("I. Almeida|1||2026-06-14||VDOURA-0000001", Issued),
			old("J. Moura|11|||id11|VDOURA-0000011", ""),
		}
		count, clashes := importAll(t, r, ImportOptions{}, list...)
		if count.New != 5 || count.Same != 1 || len(clashes) != 1 || clashes[0].Old.CatalogNumber != "13" {
			t.Errorf("%+v, %+v", count, clashes)
		}
		refused(t, clashes[0].Err, ErrForeign, "old.csv:5", "13", "VDOURA")
		want := "1-2 issued, 3 void, 4-8 unknown, 9 lost, 10 transferred, 11-12 attached, 13 unknown, 14 attached"
		if got := states(t, r); got != want {
			t.Errorf("states: %s", got)
		}
		if got := issue(t, r, 1); got.First != 15 {
			t.Errorf("issued after an import: %s", got)
		}
		count, clashes = importAll(t, r, ImportOptions{}, list...)
		if count.New != 0 || count.Same != 6 || len(clashes) != 1 {
			t.Errorf("a second time: %+v, %+v", count, clashes)
		}
		for _, tc := range []struct {
			old  Old
			kind error
			says string
		}{
			{old("J. Moura|99||||VDOURA-0000012", ""), ErrClash, "J. Moura 12 of 1931-05-02 (attached)"},
			{old("J. Moura|12||1932-05-02||VDOURA-0000012", ""), ErrClash, "1931-05-02"},
			{old("J. Moura|12||1931-05-02||VDOURA-0000012", Lost), ErrState, "attached in the register and lost here"},
			{old("J. Moura|12||||VDOURA-0000010", Transferred), ErrClash, "no specimen that it knows (transferred)"},
			{old("|||||VDOURA-0000012", ""), ErrClash, "J. Moura 12"},
			{old("J. Moura|11|||id12|VDOURA-0000011", ""), ErrClash, "J. Moura 11"},
			{old("J. Moura|20|||id11|VDOURA-0000020", ""), ErrClash, "VDOURA-0000011 already"},
			{old("I. Almeida|1||2026-06-14||VDOURA-0000001", ""), ErrState, "issued in the register"},
			{old("I. Almeida|3||||VDOURA-0000003", ""), ErrState, "void in the register"},
			{old("I. Almeida|30||||VDOURA-0000003", ""), ErrClash, "(void)"},
			{old("J. Moura|s.n.||1931||VDOURA-0000014", ""), ErrClash, "J. Moura s.n."},
			{old("J. Moura|20||||VDOURA-0000020", "mislaid"), ErrState, "mislaid"},
			{old("J. Moura|20||||VDOURA-0000020", Unknown), ErrState, "unknown"},
			{old("J. Moura|20||||VDOURA-00000020", ""), accession.ErrFigures, "8 figures"},
			{old("J. Moura|20||||", ""), ErrForeign, "not a number"},
			{old("J. Moura|20||||VDOURA-0999999", ""), ErrClash, "VDOURA-0000500"},
		} {
			count, clashes := importAll(t, r, ImportOptions{Highest: 500}, tc.old)
			if count.Clashes != 1 {
				t.Errorf("%+v: %+v", tc.old, count)
				continue
			}
			refused(t, clashes[0].Err, tc.kind, "old.csv:2", tc.says)
		}
		if got := states(t, r); got != want+", 15 issued" {
			t.Errorf("clashes changed the states: %s", got)
		}
		// What was imported is known again.
		for _, tc := range []struct{ row, want string }{{"J. Moura|12||1931-05-02", "12"}, {"|||" + "|id11", "11"}, {"J. Moura|9", "9"}, {"J. Moura|21", "16+"}} {
			if got := told(t, r, assign(t, r, sp(tc.row))[0]); got != tc.want {
				t.Errorf("%s after the import: %s", tc.row, got)
			}
		}
		whole(t, r)
	})
}

func TestImportBreaksOff(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		stop := errors.New("enough")
		list := []Old{old("J. Moura|1||||VDOURA-0000001", ""), old("J. Moura|2||||VDOURA-0000001", ""), old("J. Moura|3||||VDOURA-0000003", "")}
		_, err := r.Import(t.Context(), registrar(""), ImportOptions{}, entries(list), func(Clash) error { return stop })
		if !errors.Is(err, stop) {
			t.Errorf("a clash that ends the import: %v", err)
		}
		_, err = r.Import(t.Context(), registrar(""), ImportOptions{}, func(yield func(Old, error) bool) { yield(Old{}, stop) }, nil)
		if !errors.Is(err, stop) {
			t.Errorf("an entry that cannot be read: %v", err)
		}
		_, err = r.Import(t.Context(), registrar(""), ImportOptions{Series: "LISU"}, entries(list), nil)
		refused(t, err, ErrNoSeries, "LISU", "VDOURA")
		_, err = r.Import(t.Context(), registrar(""), ImportOptions{}, entries([]Old{old("J. \xffMoura|7||||VDOURA-0000007", "")}), nil)
		refused(t, err, nil, "not text")
		whole(t, r)
	})
}

// A series without a code: its numbers are figures alone.
func TestImportFiguresAlone(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		addSeries(t, r, "00000")
		count, clashes := importAll(t, r, ImportOptions{Series: "00000"}, old("J. Moura|1||||17", ""), old("J. Moura|2||||00018", Void), old("J. Moura|3||||VDOURA-0000001", ""))
		if count.New != 2 || len(clashes) != 1 {
			t.Errorf("%+v, %+v", count, clashes)
		}
		row, err := r.Number(t.Context(), "00018")
		must(t, err)
		if row.State != Void || row.Range.Series != "00000" {
			t.Errorf("%+v", row)
		}
		whole(t, r)
	})
}

// TestImportLarge takes over ten thousand entries in no order, with gaps, and
// holds the register against the plain list. How long it takes is printed with
// -v; BenchmarkImport measures it.
func TestImportLarge(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		rnd := rand.New(rand.NewPCG(1, 2))
		last := 12_000
		if p.name == "PostgreSQL" {
			last = 5000 // more than two batches
		}
		want := map[int]State{}
		var list []Old
		for n := 1; n <= last; n++ {
			if rnd.IntN(6) == 0 && n < last {
				continue
			}
			state := []State{Attached, Attached, Attached, Void, Lost}[rnd.IntN(5)]
			want[n] = state
			list = append(list, Old{Specimen: Specimen{CatalogNumber: fmt.Sprintf("VDOURA-%07d", n), Collector: "J. Moura", Number: fmt.Sprint(n), OccurrenceID: fmt.Sprintf("id%d", n), Name: "Iris boissieri Henriq."}, State: state})
		}
		rnd.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		start := time.Now()
		count, _ := importAll(t, r, ImportOptions{}, list...)
		t.Logf("%d entries in %s", len(list), time.Since(start))
		if count.New != len(list) {
			t.Errorf("%+v", count)
		}
		seen := 0
		for row, err := range r.List(t.Context(), Filter{}) {
			must(t, err)
			for n := row.Range.First; n <= row.Range.Last; n++ {
				seen++
				state, ok := want[n]
				if !ok {
					state = Unknown
				}
				if row.State != state || ok && row.Specimen.Number != fmt.Sprint(n) {
					t.Fatalf("%s: %+v, want %s", row.Range, row, state)
				}
			}
		}
		if seen != last {
			t.Errorf("%d numbers have a state", seen)
		}
		whole(t, r)
	})
}

func TestStretches(t *testing.T) {
	for seed := range uint64(200) {
		rnd := rand.New(rand.NewPCG(seed, 0))
		in := map[int]bool{}
		var list []int
		for range rnd.IntN(30) {
			n := 1 + rnd.IntN(40)
			list, in[n] = append(list, n), true
		}
		var want []string
		for n := 1; n <= 41; n++ {
			if in[n] && !in[n-1] {
				want = append(want, fmt.Sprintf("%d-", n))
			}
			if !in[n] && in[n-1] {
				want[len(want)-1] += fmt.Sprint(n - 1)
			}
		}
		var got []string
		for _, run := range stretches(slices.Clone(list)) {
			got = append(got, fmt.Sprintf("%d-%d", run[0], run[1]))
		}
		if !slices.Equal(got, want) {
			t.Fatalf("%v: %v, want %v", list, got, want)
		}
	}
}
