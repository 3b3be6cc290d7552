package register

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label/accession"
)

// TestMain lets the test binary be one of the processes that a test starts.
func TestMain(m *testing.M) {
	if job := os.Getenv(childJob); job != "" {
		go endWithParent()
		if err := children[job](); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	// Tests wait for the disk more than for the processor: more of them run
	// side by side than there are processors, unless the command line says.
	flag.Parse()
	said := false
	flag.Visit(func(f *flag.Flag) { said = said || f.Name == "test.parallel" })
	if !said {
		flag.Set("test.parallel", "8")
	}
	os.Exit(m.Run())
}

// endWithParent ends a child whose parent was killed: it would work for ever.
func endWithParent() {
	parent := os.Getppid()
	for os.Getppid() == parent {
		time.Sleep(time.Second)
	}
	os.Exit(1)
}

// childJob is the environment variable that makes the test binary a child.
const childJob = "REGISTER_TEST_CHILD"

var children = map[string]func() error{}

// A place is where a test keeps its registers: with SQLite a folder, with
// PostgreSQL a database.
type place struct {
	name string
	dir  string
	base string // of the server
}

var (
	databaseOnce sync.Once
	database     string
	searchPaths  atomic.Int64
)

// fresh returns an address at which there is nothing yet.
func (p place) fresh() string {
	n := searchPaths.Add(1)
	if p.base == "" {
		return filepath.Join(p.dir, fmt.Sprintf("herbarium%d.db", n))
	}
	return fmt.Sprintf("%s?search_path=herbarium%d", p.base, n)
}

// create makes a register, with a series VDOURA.
func (p place) create(t testing.TB) *Register {
	t.Helper()
	r := p.empty(t)
	addSeries(t, r, "VDOURA-0000000")
	return r
}

// empty makes a register without a series.
func (p place) empty(t testing.TB) *Register {
	t.Helper()
	r, err := Create(t.Context(), p.fresh(), registrar(""), Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

// each runs the test with both databases, side by side with other tests.
func each(t *testing.T, f func(t *testing.T, p place)) {
	t.Helper()
	t.Parallel()
	t.Run("SQLite", func(t *testing.T) {
		t.Parallel()
		f(t, place{name: "SQLite", dir: t.TempDir()})
	})
	t.Run("PostgreSQL", func(t *testing.T) {
		t.Parallel()
		f(t, onServer(t))
	})
}

func onServer(t testing.TB) place {
	t.Helper()
	outside.PostgresProgram(t, "postgres")
	databaseOnce.Do(func() { database = outside.Postgres(t) })
	if database == "" {
		t.Fatal("the server did not start")
	}
	return place{name: "PostgreSQL", base: database}
}

// full is the register's address as Open takes it; messages leave out the
// password.
func (r *Register) full() string {
	if r.d == sqlite {
		return r.address
	}
	return database + r.address[strings.Index(r.address, "?"):]
}

func reopen(t testing.TB, r *Register, o Options) *Register {
	t.Helper()
	again, err := Open(t.Context(), r.full(), o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { again.Close() })
	return again
}

// moment is when the tests' changes happen.
var moment = time.Date(2026, 6, 14, 9, 30, 0, 0, time.UTC)

func registrar(why string) At { return At{When: moment, By: "M. Teixeira", Why: why} }

func addSeries(t testing.TB, r *Register, notation string) Series {
	t.Helper()
	s, err := r.AddSeries(t.Context(), registrar(""), pattern(t, notation), 0)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func pattern(t testing.TB, notation string) accession.Pattern {
	t.Helper()
	p, err := accession.ParsePattern(notation)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func issue(t testing.TB, r *Register, count int) Range {
	t.Helper()
	got, err := r.Issue(t.Context(), registrar(""), "", count)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// span is the numbers first to last of the only series.
func span(first, last int) Range { return Range{First: first, Last: last} }

func mark(t testing.TB, r *Register, to State, first, last int) {
	t.Helper()
	if err := r.Mark(t.Context(), registrar("test"), to, span(first, last)); err != nil {
		t.Fatal(err)
	}
}

// must fails the test on an error.
func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// refused holds that err is of the kind and says all of the words.
func refused(t testing.TB, err, kind error, words ...string) {
	t.Helper()
	if err == nil {
		t.Errorf("no error; it should be %v", kind)
		return
	}
	if kind != nil && !errors.Is(err, kind) {
		t.Errorf("%q is not %q", err, kind)
	}
	for _, w := range words {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("%q does not say %q", err, w)
		}
	}
	if text := err.Error(); strings.HasSuffix(text, ".") || strings.Contains(text, "%!") {
		t.Errorf("%q is not as messages are written", text)
	}
}

// states lists the numbers and their states in short: "1-3 issued, 4 void".
func states(t testing.TB, r *Register) string {
	t.Helper()
	var parts []string
	var first, last int
	var state State
	put := func() {
		switch {
		case state == "":
		case first == last:
			parts = append(parts, fmt.Sprintf("%d %s", first, state))
		default:
			parts = append(parts, fmt.Sprintf("%d-%d %s", first, last, state))
		}
	}
	for row, err := range r.List(t.Context(), Filter{}) {
		must(t, err)
		if row.State == state && row.Range.First == last+1 {
			last = row.Range.Last
			continue
		}
		put()
		first, last, state = row.Range.First, row.Range.Last, row.State
	}
	put()
	return strings.Join(parts, ", ")
}

// whole holds that Check finds nothing.
func whole(t testing.TB, r *Register) {
	t.Helper()
	for p, err := range r.Check(context.Background()) {
		must(t, err)
		t.Errorf("check: %s", p)
	}
}
