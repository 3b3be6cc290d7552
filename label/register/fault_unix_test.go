//go:build unix

package register

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

func init() {
	children["try"] = try
	children["fill"] = fill
}

// kinds are the errors by the name that a child process reports them with.
var kinds = map[string]error{"missing": ErrMissing, "exists": ErrExists, "not a register": ErrNotRegister, "read-only": ErrReadOnly, "locked": ErrLocked, "full": ErrFull, "damaged": ErrDamaged}

// outcome is what a child process reports.
type outcome struct{ Kind, Text string }

func report(err error) error {
	var o outcome
	if err != nil {
		o.Text, o.Kind = err.Error(), "another"
		for name, kind := range kinds {
			if errors.Is(err, kind) {
				o.Kind = name
			}
		}
	}
	return json.NewEncoder(os.Stdout).Encode(o)
}

// child runs a job of the test binary with a register.
func child(t *testing.T, job, path string, more ...string) outcome {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(append(os.Environ(), childJob+"="+job, "REGISTER_TEST_ADDRESS="+path), more...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	must(t, err)
	var o outcome
	must(t, json.Unmarshal(out, &o))
	return o
}

// try opens a register as somebody who is not root, for whom permissions count,
// and issues a number or looks.
func try() error {
	if os.Getuid() == 0 {
		const nobody = 65534
		if err := errors.Join(syscall.Setgroups(nil), syscall.Setgid(nobody), syscall.Setuid(nobody)); err != nil {
			return err
		}
	}
	ctx, path := context.Background(), os.Getenv("REGISTER_TEST_ADDRESS")
	at := At{When: moment, By: "somebody"}
	how := os.Getenv("REGISTER_TEST_HOW")
	if how == "create" {
		_, err := Create(ctx, path, at, Options{})
		return report(err)
	}
	r, err := Open(ctx, path, Options{ReadOnly: how == "look", Wait: time.Second})
	if err != nil {
		return report(err)
	}
	defer r.Close()
	switch how {
	case "look":
		n := 0
		for row, err := range r.List(ctx, Filter{}) {
			if err != nil {
				return report(err)
			}
			n += row.Range.Len()
		}
		for p, err := range r.Check(ctx) {
			if err != nil {
				return report(err)
			}
			return report(errors.New(p.String()))
		}
		if n != 3 {
			return report(fmt.Errorf("%d numbers are listed", n))
		}
		return report(nil)
	}
	_, err = r.Issue(ctx, at, "", 1)
	return report(err)
}

func TestReadOnly(t *testing.T) {
	t.Parallel()
	for _, tc := range []struct {
		name         string
		file, folder os.FileMode
		network      bool
		write, look  string // kinds, "" is a success
	}{
		{"all may be written", 0o666, 0o777, false, "", ""},
		{"the file may not", 0o444, 0o777, false, "read-only", ""},
		{"the folder may not", 0o666, 0o555, false, "read-only", ""},
		{"both may not", 0o444, 0o555, false, "read-only", ""},
		{"the folder may not, with a journal", 0o666, 0o555, true, "read-only", ""},
		{"the file may not, with a journal", 0o444, 0o777, true, "read-only", ""},
		{"the file may not be read", 0o000, 0o777, false, "read-only", "read-only"},
		{"the folder may not be read", 0o666, 0o000, false, "missing", "missing"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			dir, err := os.MkdirTemp("", "register-")
			must(t, err)
			t.Cleanup(func() {
				os.Chmod(dir, 0o755)
				os.RemoveAll(dir)
			})
			path := filepath.Join(dir, "herbarium.db")
			r, err := Create(t.Context(), path, registrar(""), Options{Network: tc.network})
			must(t, err)
			addSeries(t, r, "VDOURA-0000000")
			issue(t, r, 3)
			must(t, r.Close())
			must(t, os.Chmod(path, tc.file))
			must(t, os.Chmod(dir, tc.folder))
			before := ""
			if os.Getuid() == 0 || tc.folder&0o400 != 0 && tc.file&0o400 != 0 {
				before = contents(t, dir)
			}
			o := child(t, "try", path, "REGISTER_TEST_HOW=look")
			if o.Kind != tc.look {
				t.Errorf("looking: %+v", o)
			}
			o = child(t, "try", path)
			if o.Kind != tc.write {
				t.Errorf("writing: %+v", o)
			}
			if tc.write != "" && !strings.HasPrefix(o.Text, "register "+path+": ") {
				t.Errorf("writing: %q", o.Text)
			}
			if tc.write == "" {
				return
			}
			if before != "" {
				if after := contents(t, dir); after != before {
					t.Errorf("the folder was changed:\n%s\nto\n%s", before, after)
				}
			}
			must(t, os.Chmod(dir, 0o755))
			must(t, os.Chmod(path, 0o644))
			again, err := Open(t.Context(), path, Options{})
			must(t, err)
			defer again.Close()
			if got := states(t, again); got != "1-3 issued" {
				t.Errorf("afterwards: %s", got)
			}
			whole(t, again)
		})
	}
	t.Run("a visitor waits for whoever writes, with a journal", func(t *testing.T) {
		dir, err := os.MkdirTemp("", "register-")
		must(t, err)
		t.Cleanup(func() {
			os.Chmod(dir, 0o755)
			os.RemoveAll(dir)
		})
		path := filepath.Join(dir, "herbarium.db")
		r, err := Create(t.Context(), path, registrar(""), Options{Network: true})
		must(t, err)
		addSeries(t, r, "VDOURA-0000000")
		issue(t, r, 3)
		must(t, r.Close())
		raw, err := sql.Open("sqlite", path)
		must(t, err)
		defer raw.Close()
		raw.SetMaxOpenConns(1)
		_, err = raw.Exec("BEGIN EXCLUSIVE")
		must(t, err)
		must(t, os.Chmod(dir, 0o555))
		if o := child(t, "try", path, "REGISTER_TEST_HOW=look"); o.Kind != "locked" {
			t.Errorf("while another writes: %+v", o)
		}
		_, err = raw.Exec("ROLLBACK")
		must(t, err)
		if o := child(t, "try", path, "REGISTER_TEST_HOW=look"); o.Kind != "" {
			t.Errorf("afterwards: %+v", o)
		}
	})
	t.Run("a folder that may not be written", func(t *testing.T) {
		dir, err := os.MkdirTemp("", "register-")
		must(t, err)
		defer os.RemoveAll(dir)
		must(t, os.Chmod(dir, 0o555))
		o := child(t, "try", filepath.Join(dir, "new.db"), "REGISTER_TEST_HOW=create")
		if o.Kind != "read-only" || !strings.Contains(o.Text, "cannot be made") {
			t.Errorf("%+v", o)
		}
	})
}

// fill writes to a register until no file of this process may grow any more,
// which is how a system refuses when a quota is used up.
func fill() error {
	signal.Ignore(syscall.SIGXFSZ)
	ctx := context.Background()
	r, err := Open(ctx, os.Getenv("REGISTER_TEST_ADDRESS"), Options{})
	if err != nil {
		return err
	}
	defer r.Close()
	limit := syscall.Rlimit{Cur: 600 << 10, Max: 600 << 10}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		return err
	}
	at := At{When: moment, By: "somebody", Why: strings.Repeat("a long reason ", 300)}
	for range 10_000 {
		got, err := r.Issue(ctx, at, "", 1)
		if err != nil {
			return report(err)
		}
		if _, err := fmt.Fprintln(os.Stderr, got); err != nil {
			return err
		}
	}
	return errors.New("the disk was never full")
}

// TestFullForReal has the system refuse to write: what was issued before is
// there, what was refused is not, and the next number is the next.
func TestFullForReal(t *testing.T) {
	t.Parallel()
	for _, network := range []bool{false, true} {
		path := filepath.Join(t.TempDir(), "herbarium.db")
		r, err := Create(t.Context(), path, registrar(""), Options{Network: network})
		must(t, err)
		addSeries(t, r, "VDOURA-0000000")
		must(t, r.Close())
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), childJob+"=fill", "REGISTER_TEST_ADDRESS="+path)
		var numbers strings.Builder
		cmd.Stderr = &numbers
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%v: %s", err, numbers.String())
		}
		var o outcome
		must(t, json.Unmarshal(out, &o))
		if o.Kind != "full" || !strings.Contains(o.Text, "nothing was changed") {
			t.Errorf("%+v", o)
		}
		given := strings.Count(numbers.String(), "\n")
		if given < 5 {
			t.Errorf("only %d numbers before the disk was full", given)
		}
		r, err = Open(t.Context(), path, Options{})
		must(t, err)
		defer r.Close()
		if got := issue(t, r, 1); got.First != given+1 {
			t.Errorf("%d numbers were given out, and then %s", given, got)
		}
		whole(t, r)
	}
}
