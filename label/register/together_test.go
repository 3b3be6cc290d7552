package register

import (
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"
)

// One register, used by several goroutines at once, as its doc says it may be.
func TestGoroutines(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 1)
		var all sync.Mutex
		given := map[int]bool{}
		var group sync.WaitGroup
		for i := range 8 {
			group.Go(func() {
				for n := range 6 {
					got, err := r.Issue(t.Context(), registrar(""), "", 3)
					if err != nil {
						t.Error(err)
						return
					}
					all.Lock()
					for k := got.First; k <= got.Last; k++ {
						if given[k] {
							t.Errorf("number %d was given twice", k)
						}
						given[k] = true
					}
					all.Unlock()
					answers, err := r.Assign(t.Context(), registrar(""), "", []Specimen{{Collector: "I. Almeida", Number: fmt.Sprint(n + 1)}}, false)
					if err != nil || len(answers) != 1 {
						t.Errorf("%v, %v", answers, err)
					}
					if _, err := r.Remember(t.Context(), registrar(""), Run{}, func(yield func(Label, error) bool) {
						yield(sheet(got.Pattern.Format(got.First), "I. Almeida", fmt.Sprint(i, n), "Iris"), nil)
					}); err != nil {
						t.Error(err)
					}
					if _, err := r.Find(t.Context(), "iris", 0); err != nil {
						t.Error(err)
					}
					for row, err := range r.List(t.Context(), Filter{}) {
						if err != nil || row.State == Unknown {
							t.Errorf("%+v, %v", row, err)
						}
					}
				}
			})
		}
		group.Wait()
		if len(given) != 8*6*3 {
			t.Errorf("%d numbers", len(given))
		}
		for n := range 6 { // all goroutines had the same six specimens
			if got := told(t, r, assign(t, r, Specimen{Collector: "I. Almeida", Number: fmt.Sprint(n + 1)})[0]); got == "" || got[len(got)-1] == '+' {
				t.Errorf("specimen %d: %s", n+1, got)
			}
		}
		whole(t, r)
	})
}

// Of several who make a register in one place one does; the others are told.
func TestCreateTogether(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		address := p.fresh()
		errs := make([]error, 4)
		var group sync.WaitGroup
		for i := range errs {
			group.Go(func() {
				r, err := Create(t.Context(), address, registrar(fmt.Sprint("attempt ", i)), Options{})
				if errs[i] = err; err == nil {
					r.Close()
				}
			})
		}
		group.Wait()
		made := 0
		for _, err := range errs {
			if err == nil {
				made++
			} else {
				refused(t, err, ErrExists, "open it")
			}
		}
		if made != 1 {
			t.Errorf("%d made it: %v", made, errs)
		}
		r, err := Open(t.Context(), address, Options{})
		must(t, err)
		defer r.Close()
		addSeries(t, r, "VDOURA-0000000")
		whole(t, r)
	})
}

// A file that moves to a network share is kept with a rollback journal from
// then on, once nobody else has it open.
func TestNetwork(t *testing.T) {
	p := place{name: "SQLite", dir: t.TempDir()}
	r := p.create(t)
	issue(t, r, 3)
	mode := func(r *Register) string {
		var mode string
		must(t, r.read(t.Context()).one([]any{&mode}, "PRAGMA journal_mode"))
		return mode
	}
	if got := mode(r); got != "wal" {
		t.Errorf("on a disk: %s", got)
	}
	_, err := Open(t.Context(), r.path, Options{Network: true, Wait: 100 * time.Millisecond})
	refused(t, err, ErrLocked, "close it in all programs")
	must(t, r.Close())
	r, err = Open(t.Context(), r.path, Options{Network: true})
	must(t, err)
	if got := mode(r); got != "delete" {
		t.Errorf("on a share: %s", got)
	}
	must(t, r.Close())
	for range 2 {
		r, err = Open(t.Context(), r.path, Options{})
		must(t, err)
		if got := mode(r); got != "delete" {
			t.Errorf("opened again: %s", got)
		}
		issue(t, r, 1)
		whole(t, r)
		must(t, r.Close())
	}
	// With a journal, whoever writes in this moment keeps others from reading.
	raw, err := sql.Open("sqlite", r.path)
	must(t, err)
	raw.SetMaxOpenConns(1)
	_, err = raw.Exec("BEGIN EXCLUSIVE")
	must(t, err)
	for _, o := range []Options{{Wait: 50 * time.Millisecond}, {Wait: 50 * time.Millisecond, ReadOnly: true}} {
		_, err = Open(t.Context(), r.path, o)
		refused(t, err, ErrLocked, "50 ms", "try again")
	}
	must(t, raw.Close())
	r, err = Open(t.Context(), r.path, Options{})
	must(t, err)
	defer r.Close()
	if got := states(t, r); got != "1-5 issued" {
		t.Errorf("afterwards: %s", got)
	}
	if _, err := os.Stat(filepath.Join(p.dir, filepath.Base(r.path)+"-wal")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a log is beside it: %v", err)
	}
}
