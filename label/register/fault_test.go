package register

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgconn"

	"cornerslip/cmd/outside"
)

// contents is what a folder holds, to see that nothing in it was changed.
func contents(t testing.TB, dir string) string {
	t.Helper()
	var b strings.Builder
	list, err := os.ReadDir(dir)
	must(t, err)
	for _, e := range list {
		if e.IsDir() {
			fmt.Fprintf(&b, "%s/\n", e.Name())
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		must(t, err)
		fmt.Fprintf(&b, "%s %d %x\n", e.Name(), len(data), sha256.Sum256(data))
	}
	return b.String()
}

// otherDatabase makes an SQLite file of another program.
func otherDatabase(t testing.TB, path string, statements ...string) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	must(t, err)
	for _, s := range statements {
		_, err := db.Exec(s)
		must(t, err)
	}
	must(t, db.Close())
}

// Files that are no registers are named as what they are and left as they are.
func TestNotRegister(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) { must(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666)) }
	write("empty.db", "")
	write("short.txt", "trip 2026")
	write("trip.csv", strings.Repeat("catalogNumber,recordedBy\nVDOURA-0000001,I. Almeida\n", 400))
	write("labels.pdf", "%PDF-1.7\n"+strings.Repeat("1 0 obj <<>> endobj\n", 1000))
	write("head.db", "SQLite format 3\x00")
	write("zeros.db", string(make([]byte, 8192)))
	must(t, os.Mkdir(filepath.Join(dir, "folder"), 0o777))
	otherDatabase(t, filepath.Join(dir, "other.db"), "CREATE TABLE plants (name)", "INSERT INTO plants VALUES ('Iris')")
	otherDatabase(t, filepath.Join(dir, "about.db"), "CREATE TABLE about (key, value)", "INSERT INTO about VALUES ('version', '1')")
	otherDatabase(t, filepath.Join(dir, "marked.db"), fmt.Sprintf("PRAGMA application_id = %d", applicationID), "CREATE TABLE plants (name)")
	otherDatabase(t, filepath.Join(dir, "begun.db"), "PRAGMA journal_mode = wal", "PRAGMA user_version = 0")
	before := contents(t, dir)
	for _, tc := range []struct {
		name string
		kind error
		says string
	}{
		{"empty.db", ErrNotRegister, "the file is empty; delete it"},
		{"short.txt", ErrNotRegister, "not a register"},
		{"trip.csv", ErrNotRegister, "not a register"},
		{"labels.pdf", ErrNotRegister, "not a register"},
		{"head.db", ErrNotRegister, "not a register"},
		{"zeros.db", ErrNotRegister, "not a register"},
		{"folder", ErrNotRegister, "this is a folder"},
		{"other.db", ErrNotRegister, "another program"},
		{"about.db", ErrNotRegister, "another program"},
		{"marked.db", ErrNotRegister, "another program"},
		{"begun.db", ErrNotRegister, "nothing in it"},
		{"missing.db", ErrMissing, "no such file"},
		{"nowhere/missing.db", ErrMissing, "no such file"},
		{"trip.csv/register.db", ErrMissing, ""},
	} {
		path := filepath.Join(dir, tc.name)
		for _, o := range []Options{{}, {ReadOnly: true}, {Network: true}, {Upgrade: registrar("")}} {
			r, err := Open(t.Context(), path, o)
			if err == nil {
				r.Close()
			}
			refused(t, err, tc.kind, tc.name, tc.says)
		}
		made, err := Create(t.Context(), path, registrar(""), Options{})
		switch {
		case tc.name == "missing.db":
			must(t, err)
			must(t, made.Close())
			must(t, os.Remove(path))
		case strings.Contains(tc.name, "/"):
			refused(t, err, ErrReadOnly, tc.name, "cannot be made")
		default:
			refused(t, err, ErrExists, tc.name, "already")
		}
	}
	if after := contents(t, dir); after != before {
		t.Errorf("files were changed:\n%s\nto\n%s", before, after)
	}
}

func TestNewer(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 3)
		for _, s := range map[string][]string{"SQLite": {"UPDATE about SET value = '7' WHERE key = 'version'", "PRAGMA user_version = 7", "PRAGMA wal_checkpoint(TRUNCATE)"},
			"PostgreSQL": {"UPDATE about SET value = '7' WHERE key = 'version'"}}[p.name] {
			_, err := r.db.ExecContext(t.Context(), s)
			must(t, err)
		}
		// The one who has it open is told, too.
		_, err := r.Issue(t.Context(), registrar(""), "", 1)
		refused(t, err, ErrNewer, "version 7", "start again")
		before := dump(t, r)
		for _, o := range []Options{{}, {ReadOnly: true}, {Upgrade: registrar("")}} {
			_, err := Open(t.Context(), r.full(), o)
			refused(t, err, ErrNewer, "version 7", "versions up to 1", "install")
		}
		if after := dump(t, r); after != before {
			t.Error("the register was changed")
		}
	})
}

func TestLocked(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 3)
		impatient := reopen(t, r, Options{Wait: 150 * time.Millisecond})
		tx, err := r.db.BeginTx(t.Context(), nil)
		must(t, err)
		defer tx.Rollback()
		_, err = tx.Exec("UPDATE about SET value = value WHERE key = 'version'")
		must(t, err)
		start := time.Now()
		_, err = impatient.Issue(t.Context(), registrar(""), "", 1)
		refused(t, err, ErrLocked, "150 ms", "try again", impatient.Address())
		if time.Since(start) < 100*time.Millisecond {
			t.Error("it did not wait")
		}
		if got := states(t, impatient); got != "1-3 issued" {
			t.Errorf("looking while another writes: %s", got)
		}
		late := reopen(t, r, Options{Wait: 150 * time.Millisecond}) // opening does not need the lock
		if got := states(t, late); got != "1-3 issued" {
			t.Errorf("opened while another writes: %s", got)
		}
		ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
		defer cancel()
		if _, err := reopenFor(t, r).Issue(ctx, registrar(""), "", 1); err == nil {
			t.Error("issued although another writes")
		}
		must(t, tx.Rollback())
		if got, err := impatient.Issue(t.Context(), registrar(""), "", 1); err != nil || got.First != 4 {
			t.Errorf("after the lock is gone: %v, %v", got, err)
		}
		whole(t, r)
	})
}

func reopenFor(t testing.TB, r *Register) *Register {
	return reopen(t, r, Options{Wait: 200 * time.Millisecond})
}

// TestFull fills the disk, by the limit that SQLite itself can set for a file,
// in the midst of every kind of change: the change is refused and the register
// is as it was before.
func TestFull(t *testing.T) {
	t.Parallel()
	p := place{name: "SQLite", dir: t.TempDir()}
	r := p.create(t)
	issue(t, r, 100)
	var pages int
	must(t, r.read(t.Context()).one([]any{&pages}, "PRAGMA page_count"))
	tight := reopen(t, r, Options{pragmas: []string{fmt.Sprintf("max_page_count(%d)", pages+2)}})
	box := bytes.Repeat([]byte("box"), 20000)
	var many []Specimen
	var old []Old
	for i := range 5000 {
		many = append(many, Specimen{Collector: "I. Almeida", Number: fmt.Sprint(i + 1), Name: strings.Repeat("Iris ", 20)})
		old = append(old, Old{Specimen: Specimen{CatalogNumber: fmt.Sprintf("VDOURA-%07d", 1001+i), Collector: "J. Moura", Number: fmt.Sprint(i + 1)}})
	}
	before := dump(t, r)
	for name, change := range map[string]func() error{
		"Issue": func() error { _, err := tight.Issue(t.Context(), registrar(""), "", 100_000); return err },
		"Mark": func() error {
			return tight.Mark(t.Context(), registrar(strings.Repeat("spoiled ", 5000)), Void, span(1, 100))
		},
		"Assign": func() error { _, err := tight.Assign(t.Context(), registrar(""), "", many, false); return err },
		"Import": func() error {
			_, err := tight.Import(t.Context(), registrar(""), ImportOptions{}, entries(old), func(Clash) error { return nil })
			return err
		},
		"Remember": func() error {
			_, err := tight.Remember(t.Context(), registrar(""), Run{House: strings.Repeat("# a long house file\n", 2000)}, func(yield func(Label, error) bool) {
				yield(Label{Box: box}, nil)
			})
			return err
		},
		"Reprinted": func() error { return tight.Reprinted(t.Context(), registrar("torn"), 1) },
	} {
		err := change()
		if name == "Reprinted" {
			refused(t, err, ErrNoLabel)
			continue
		}
		refused(t, err, ErrFull, "disk is full", "nothing was changed", "free some space")
		if after := dump(t, r); after != before {
			t.Errorf("%s on a full disk has changed the register", name)
		}
	}
	whole(t, tight)
	if got, err := r.Issue(t.Context(), registrar(""), "", 1); err != nil || got.First != 101 {
		t.Errorf("with space again: %v, %v", got, err)
	}
	whole(t, r)
}

// TestDamaged overwrites a register here and there. What is broken is told, and
// nothing that a program reads from it brings the program down.
func TestDamaged(t *testing.T) {
	t.Parallel()
	p := place{name: "SQLite", dir: t.TempDir()}
	r := p.create(t)
	issue(t, r, 300)
	printOne(t, r, sheet("VDOURA-0000001", "I. Almeida", "1", "Iris boissieri Henriq."), sheet("VDOURA-0000002", "I. Almeida", "2", "Silene"))
	must(t, r.Backup(t.Context(), registrar(""), filepath.Join(p.dir, "whole.db")))
	good, err := os.ReadFile(filepath.Join(p.dir, "whole.db"))
	must(t, err)
	const page = 4096
	damaged := filepath.Join(p.dir, "damaged.db")
	told := func(data []byte) (kinds []error, problems int) {
		must(t, os.WriteFile(damaged, data, 0o666))
		defer os.Remove(damaged + "-journal")
		r, err := Open(t.Context(), damaged, Options{})
		if err != nil {
			return []error{err}, 0
		}
		defer r.Close()
		for _, err := range r.Check(t.Context()) {
			if err != nil {
				kinds = append(kinds, err)
			}
			problems++
		}
		for _, f := range []func() error{
			func() error { _, err := r.Issue(t.Context(), registrar(""), "", 1); return err },
			func() error { _, err := r.Find(t.Context(), "Almeida 1", 0); return err },
			func() error { _, err := r.Load(t.Context(), 1); return err },
			func() error { return r.Mark(t.Context(), registrar("test"), Void, span(200, 250)) },
			func() error {
				_, err := r.Assign(t.Context(), registrar(""), "", []Specimen{sp("I. Almeida|7")}, true)
				return err
			},
		} {
			if err := f(); err != nil {
				kinds = append(kinds, err)
			}
		}
		for _, err := range r.List(t.Context(), Filter{}) {
			if err != nil {
				kinds = append(kinds, err)
			}
		}
		return kinds, problems
	}
	for at := 0; at+page <= len(good); at += page {
		data := bytes.Clone(good)
		clear(data[at : at+page])
		errs, problems := told(data)
		if len(errs) == 0 && problems == 0 && !bytes.Equal(data, good) {
			t.Errorf("page %d is empty and nobody is told", at/page+1)
		}
		for _, err := range errs {
			if at == 0 {
				refused(t, err, ErrNotRegister)
			} else if !errors.Is(err, ErrDamaged) && !errors.Is(err, ErrNoSeries) && !errors.Is(err, ErrNoLabel) && !errors.Is(err, ErrNotRegister) && !errors.Is(err, ErrNotIssued) {
				t.Errorf("page %d is empty: %v", at/page+1, err)
			}
		}
	}
	errs, problems := told(good[:len(good)/2])
	if len(errs) == 0 && problems == 0 {
		t.Error("half of the file is gone and nobody is told")
	}
	rnd := rand.New(rand.NewPCG(5, 5))
	for range 60 {
		data := bytes.Clone(good)
		at := 100 + rnd.IntN(len(data)-200)
		for i := range 1 + rnd.IntN(100) {
			data[at+i] = byte(rnd.Uint32())
		}
		errs, _ := told(data)
		for _, err := range errs {
			if strings.Contains(err.Error(), "%!") || err.Error() == "" {
				t.Errorf("%v", err)
			}
		}
	}
	errs, problems = told(good)
	if len(errs) > 0 || problems > 0 {
		t.Errorf("an undamaged file: %v, %d problems", errs, problems)
	}
}

// TestServerFaults holds what is said when a server cannot do as it is told.
// The codes are those of PostgreSQL's manual, appendix A, "Error Codes".
func TestServerFaults(t *testing.T) {
	t.Parallel()
	p := onServer(t)
	p.base = outside.Postgres(t) // of its own, for its connections are cut
	r, err := Create(t.Context(), p.base, registrar(""), Options{})
	must(t, err)
	defer r.Close()
	addSeries(t, r, "VDOURA-0000000")
	secret := strings.SplitN(strings.SplitN(database, ":", 3)[2], "@", 2)[0]
	for _, tc := range []struct {
		address string
		kind    error
		says    string
	}{
		{"postgres://tester:" + secret + "@127.0.0.1:1/test1", ErrUnreachable, "cannot be reached"},
		{strings.Replace(database, secret, "wrong"+secret, 1), ErrUnreachable, "refuses"},
		{database + "nowhere", ErrMissing, "does not exist"},
		{"postgres://tester:" + secret + "@127.0.0.1:99999999/x", ErrUnreachable, "write it as"},
		{"postgres://tester:" + secret + "@[::1/x", ErrUnreachable, "write it as"},
		{p.fresh(), ErrNotRegister, "make one in it"},
	} {
		_, err := Open(t.Context(), tc.address, Options{Wait: 3 * time.Second})
		refused(t, err, tc.kind, tc.says)
		if err != nil && strings.Contains(err.Error(), secret) {
			t.Errorf("%v shows the password", err)
		}
	}
	if strings.Contains(r.Address(), secret) {
		t.Errorf("%s shows the password", r.Address())
	}
	for code, kind := range map[string]error{"53100": ErrFull, "55P03": ErrLocked, "40P01": ErrLocked, "25006": ErrReadOnly, "42501": ErrReadOnly, "3D000": ErrMissing, "28P01": ErrUnreachable,
		"57P01": ErrUnreachable, "57P03": ErrUnreachable, "53300": ErrUnreachable, "08006": ErrUnreachable, "XX001": ErrDamaged, "42P07": ErrExists} {
		refused(t, r.wrap(fmt.Errorf("it says: %w", &pgconn.PgError{Code: code, Message: "so it is"})), kind, "register postgres://")
	}
	if err := r.uncertain(r.wrap(&pgconn.PgError{Code: "57P01", Message: "terminating"})); !errors.Is(err, ErrUnreachable) || !strings.Contains(err.Error(), "before you repeat it") {
		t.Errorf("a lost answer to a commit: %v", err)
	}
	// The server drops the connections of a register that is open.
	admin, err := Open(t.Context(), p.base, Options{})
	must(t, err)
	defer admin.Close()
	_, err = admin.db.ExecContext(t.Context(), "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()")
	must(t, err)
	for range 6 {
		if _, err = r.Issue(t.Context(), registrar(""), "", 1); err == nil {
			break
		}
		refused(t, err, ErrUnreachable)
	}
	must(t, err)
	whole(t, r)
}

func TestServerRights(t *testing.T) {
	t.Parallel()
	p := onServer(t)
	r := p.create(t)
	issue(t, r, 2)
	path := r.full()[strings.Index(r.full(), "=")+1:]
	for _, s := range []string{"DROP ROLE IF EXISTS visitor", "CREATE ROLE visitor LOGIN PASSWORD 'visit'", "GRANT USAGE ON SCHEMA " + path + " TO visitor", "GRANT SELECT ON ALL TABLES IN SCHEMA " + path + " TO visitor"} {
		_, err := r.db.ExecContext(t.Context(), s)
		must(t, err)
	}
	address := r.full()
	secret := address[strings.Index(address, "tester:"):strings.Index(address, "@")]
	visitor := strings.Replace(address, secret, "visitor:visit", 1)
	_, err := Open(t.Context(), visitor, Options{})
	refused(t, err, ErrReadOnly, "may not write", "administrator")
	looking, err := Open(t.Context(), visitor, Options{ReadOnly: true})
	must(t, err)
	defer looking.Close()
	if got := states(t, looking); got != "1-2 issued" {
		t.Errorf("a visitor sees %s", got)
	}
	_, err = looking.Issue(t.Context(), registrar(""), "", 1)
	refused(t, err, ErrReadOnly, "looking only")
	_, err = Create(t.Context(), strings.Replace(visitor, path, "visitors", 1), registrar(""), Options{})
	refused(t, err, ErrReadOnly, "may not write")
	// A database in another encoding could not keep every letter.
	_, err = r.db.ExecContext(t.Context(), "CREATE DATABASE latin ENCODING 'LATIN1' LOCALE 'C' TEMPLATE template0")
	must(t, err)
	_, err = Create(t.Context(), strings.Replace(database, database[strings.LastIndex(database, "/"):], "/latin", 1), registrar(""), Options{})
	refused(t, err, ErrNotRegister, "LATIN1", "UTF8")
	// Without a search_path the tables are in a schema of their own.
	plain, err := Create(t.Context(), database, registrar(""), Options{})
	must(t, err)
	defer plain.Close()
	var where string
	must(t, plain.read(t.Context()).one([]any{&where}, "SELECT schemaname::text FROM pg_tables WHERE tablename = 'numbers' AND schemaname = 'cornerslip'"))
	if where != serverSchema {
		t.Errorf("the tables are in %s", where)
	}
}
