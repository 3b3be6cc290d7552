package register

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"cornerslip/cmd/outside"
)

// TestBackup copies a register while others write to it: each copy is whole,
// and it is the register as it was at one moment.
func TestBackup(t *testing.T) {
	t.Parallel()
	for _, network := range []bool{false, true} {
		dir := t.TempDir()
		path := filepath.Join(dir, "herbarium.db")
		r, err := Create(t.Context(), path, registrar(""), Options{Network: network})
		must(t, err)
		defer r.Close()
		addSeries(t, r, "VDOURA-0000000")
		ctx, stop := context.WithCancel(t.Context())
		var writers sync.WaitGroup
		for i := range 3 {
			w := reopen(t, r, Options{})
			writers.Go(func() {
				for n := 0; ctx.Err() == nil; n++ {
					got, err := w.Issue(context.Background(), registrar(""), "", 1+n%7)
					if err == nil && n%5 == 0 {
						_, err = w.Remember(context.Background(), registrar(""), Run{Program: fmt.Sprint("writer ", i)}, func(yield func(Label, error) bool) {
							for number := range got.Numbers() {
								if !yield(sheet(number, "I. Almeida", fmt.Sprint(n), "Iris boissieri Henriq."), nil) {
									return
								}
							}
						})
					}
					if err != nil {
						t.Errorf("writer %d: %v", i, err)
						return
					}
				}
			})
		}
		last := 0
		for i := range 4 {
			copied := filepath.Join(dir, fmt.Sprintf("copy%d.db", i))
			must(t, r.Backup(t.Context(), registrar("every evening"), copied))
			b, err := Open(t.Context(), copied, Options{ReadOnly: true})
			must(t, err)
			whole(t, b)
			all, err := b.Series(t.Context())
			must(t, err)
			if all[0].Highest < last {
				t.Errorf("copy %d ends with %d, the one before with %d", i, all[0].Highest, last)
			}
			last = all[0].Highest
			must(t, b.Close())
		}
		stop()
		writers.Wait()
		whole(t, r)
		if got := strings.Count(history(t, r, ""), "backed up: every evening"); got != 4 {
			t.Errorf("%d backups in the history", got)
		}
		left, err := filepath.Glob(filepath.Join(dir, ".*"))
		must(t, err)
		if len(left) > 0 {
			t.Errorf("left behind: %v", left)
		}
	}
}

// A backup that is put back knows less than was printed. Moved up past the
// highest number known to be printed, it never issues one of them again.
func TestRestore(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path, copied := filepath.Join(dir, "herbarium.db"), filepath.Join(dir, "copy.db")
	r, err := Create(t.Context(), path, registrar(""), Options{})
	must(t, err)
	addSeries(t, r, "VDOURA-0000000")
	assign(t, r, sp("I. Almeida|1"), sp("I. Almeida|2"))
	must(t, r.Backup(t.Context(), registrar(""), copied))
	given := map[string]bool{}
	for range 50 { // after the backup
		given[issue(t, r, 1).String()] = true
	}
	must(t, r.Close())
	for _, tail := range []string{"", "-wal", "-shm"} {
		os.Remove(path + tail)
	}
	must(t, os.Rename(copied, path))
	r, err = Open(t.Context(), path, Options{})
	must(t, err)
	defer r.Close()
	if got := states(t, r); got != "1-2 issued" {
		t.Errorf("restored: %s", got)
	}
	got, err := r.MoveUp(t.Context(), registrar("restored; VDOURA-0000052 is on a sheet"), "VDOURA-0000052")
	must(t, err)
	if got.String() != "VDOURA-0000003 to VDOURA-0000052" {
		t.Errorf("moved up over %s", got)
	}
	for n := range issue(t, r, 100).Numbers() {
		if given[n] {
			t.Errorf("%s was given out before the register was lost, and again", n)
		}
	}
	if got := told(t, r, assign(t, r, sp("I. Almeida|2"))[0]); got != "2" {
		t.Errorf("what the backup knew: %s", got)
	}
	if got := told(t, r, assign(t, r, sp("I. Almeida|7||||VDOURA-0000040"))[0]); got != "40" {
		t.Errorf("a sheet that bears a number passed over: %s", got)
	}
	whole(t, r)
}

func TestBackupRefuses(t *testing.T) {
	p := place{name: "SQLite", dir: t.TempDir()}
	r := p.create(t)
	issue(t, r, 3)
	taken := filepath.Join(p.dir, "taken.txt")
	must(t, os.WriteFile(taken, []byte("letters"), 0o666))
	refused(t, r.Backup(t.Context(), registrar(""), taken), ErrExists, taken, "choose another name")
	refused(t, r.Backup(t.Context(), registrar(""), r.path), ErrExists, r.path)
	refused(t, r.Backup(t.Context(), registrar(""), filepath.Join(p.dir, "nowhere", "copy.db")), ErrReadOnly, "nowhere", "cannot be written")
	refused(t, r.Backup(t.Context(), At{}, filepath.Join(p.dir, "copy.db")), nil, "time")
	if text, _ := os.ReadFile(taken); string(text) != "letters" {
		t.Error("a file was written over")
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := r.Backup(ctx, registrar(""), filepath.Join(p.dir, "copy.db")); !errors.Is(err, context.Canceled) {
		t.Errorf("broken off: %v", err)
	}
	if _, err := os.Stat(filepath.Join(p.dir, "copy.db")); err == nil {
		t.Error("a backup that was broken off is there")
	}
	// Whoever only looks may still make a copy.
	must(t, reopen(t, r, Options{ReadOnly: true}).Backup(t.Context(), registrar(""), filepath.Join(p.dir, "copy.db")))
	b, err := Open(t.Context(), filepath.Join(p.dir, "copy.db"), Options{})
	must(t, err)
	defer b.Close()
	if got := states(t, b); got != "1-3 issued" {
		t.Errorf("the copy: %s", got)
	}
	whole(t, b)
}

// TestServerBackup follows the advice that Backup gives for a server, with the
// server's own programs, and moves up after the restore.
func TestServerBackup(t *testing.T) {
	t.Parallel()
	p := onServer(t)
	r := p.create(t)
	issue(t, r, 5)
	file := filepath.Join(t.TempDir(), "herbarium.dump")
	err := r.Backup(t.Context(), registrar(""), file)
	refused(t, err, errors.ErrUnsupported, "pg_dump --format=custom", "--file="+file)
	words := strings.Fields(err.Error()[strings.Index(err.Error(), "pg_dump "):])
	args := append(words[1:3], strings.TrimSuffix(words[3], ","), database)
	if out, err := exec.Command(outside.PostgresProgram(t, "pg_dump"), args...).CombinedOutput(); err != nil {
		t.Fatalf("pg_dump: %v: %s", err, out)
	}
	issue(t, r, 20)
	path := r.full()[strings.Index(r.full(), "=")+1:]
	must(t, r.Close())
	other := outside.Postgres(t)
	if out, err := exec.Command(outside.PostgresProgram(t, "pg_restore"), "--exit-on-error", "--dbname="+other, file).CombinedOutput(); err != nil {
		t.Fatalf("pg_restore: %v: %s", err, out)
	}
	restored, err := Open(t.Context(), other+"?search_path="+path, Options{})
	must(t, err)
	defer restored.Close()
	if got := states(t, restored); got != "1-5 issued" {
		t.Errorf("restored: %s", got)
	}
	_, err = restored.MoveUp(t.Context(), registrar("restored"), "VDOURA-0000025")
	must(t, err)
	if got := issue(t, restored, 1); got.First != 26 {
		t.Errorf("issued after the restore: %s", got)
	}
	if _, err := restored.db.ExecContext(t.Context(), "DELETE FROM events"); err == nil {
		t.Error("the restored register has lost its triggers")
	}
	whole(t, restored)
}
