// Package register is the herbarium's book of catalogue numbers and of what
// was printed. A number that it gave out it never gives out again, whatever
// happens to the program, the printer or the person at the keyboard.
//
// A register is one SQLite file or, for several workstations, a database on a
// PostgreSQL server; both behave alike. Whoever writes waits for its turn, so
// that every change sees all the changes before it.
//
// # Every number has a state
//
// The numbers of a series run from 1 to its highest without a gap, and each
// has a State. Numbers that this register never gave out, since the series
// began higher, an old catalogue had a gap or the series was moved up past
// numbers printed after a backup, are Unknown: one may be on a sheet somewhere,
// so none is ever issued; when the sheet is found it takes the state the sheet
// shows. HeldElsewhere is for numbers of which somebody knows that another
// book or herbarium answers for them.
//
// # Order of work
//
// Issue and Assign return after their numbers are safe on the disk; only then
// may anything be drawn. A caller that dies in between leaves numbers that are
// issued and on no sheet, which List shows: they can be printed or made void.
//
// Nothing here asks the clock: every change comes with an At that says when,
// by whom and why.
//
// A program must not open or close the register's file by other means while it
// has the register open: on most systems closing any handle of a file gives up
// the locks of all.
package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// An At says when something happens, who does it and why. When and By are
// always needed; Why where an operation says so.
type At struct {
	When time.Time // kept to the second
	By   string    // a person's name, as the history shall show it
	Why  string
}

const stampLayout = "2006-01-02T15:04:05Z"

func (a At) stamp() string { return a.When.UTC().Format(stampLayout) }

func (a At) valid() error {
	switch {
	case a.When.IsZero():
		return errors.New("the register needs the time of every change")
	case strings.TrimSpace(a.By) == "":
		return errors.New("the register needs the name of the person who makes a change")
	case strings.ContainsFunc(a.By+a.Why, unicode.IsControl):
		return errors.New("the name and the reason must be one line each, without control characters")
	}
	return nil
}

func (a At) needsWhy(what string) error {
	if strings.TrimSpace(a.Why) == "" {
		return fmt.Errorf("%s needs a reason", what)
	}
	return nil
}

// Options says how a register is opened. The zero value opens it for writing.
type Options struct {
	// ReadOnly opens for looking only; nothing can be changed, and a file on
	// a medium that cannot be written to can be opened.
	ReadOnly bool
	// Network says that the file lies on a network share, where SQLite's
	// write-ahead log is unsafe: it is kept with a rollback journal instead.
	// A file remembers it; it is needed for Create, or once for Open when a
	// register moves to a share. It means nothing for a server.
	Network bool
	// Wait is how long to wait for others who are writing; 0 is 10 seconds.
	Wait time.Duration
	// Upgrade says who brings a register of an older version up to this
	// program's, and when; older programs cannot open it afterwards. Zero
	// refuses older registers with ErrOlder. Of a file, a copy as it was is
	// kept beside it.
	Upgrade At

	pragmas []string // for tests
}

func (o Options) wait() time.Duration {
	if o.Wait <= 0 {
		return 10 * time.Second
	}
	return o.Wait
}

// A Register is an open register. Its methods may be called from several
// goroutines.
type Register struct {
	db      *sql.DB
	d       dialect
	address string // without a password
	path    string // of a file
	o       Options
	version int // of the schema
}

// Server reports whether address names a PostgreSQL server rather than a file.
func Server(address string) bool {
	return strings.HasPrefix(address, "postgres://") || strings.HasPrefix(address, "postgresql://")
}

// Open opens the register at address: a file name or a postgres:// address.
// A server's tables are in the schema "cornerslip" unless the address has a
// search_path of its own.
func Open(ctx context.Context, address string, o Options) (*Register, error) {
	return open(ctx, address, o, schemas)
}

func open(ctx context.Context, address string, o Options, schemas func(dialect) []string) (*Register, error) {
	r, err := dial(ctx, address, o, false)
	if err != nil {
		return nil, err
	}
	if err := r.ready(ctx, schemas(r.d)); err != nil {
		r.db.Close()
		return nil, err
	}
	return r, nil
}

// Create makes a new, empty register at address and opens it. A file must not
// exist yet, and a server's database must not hold a register.
func Create(ctx context.Context, address string, at At, o Options) (*Register, error) {
	return create(ctx, address, at, o, schemas)
}

func create(ctx context.Context, address string, at At, o Options, schemas func(dialect) []string) (*Register, error) {
	if err := at.valid(); err != nil {
		return nil, err
	}
	o.ReadOnly = false
	r, err := dial(ctx, address, o, true)
	if err != nil {
		return nil, err
	}
	if err := r.build(ctx, at, schemas(r.d)); err != nil {
		r.db.Close()
		r.discard()
		return nil, err
	}
	return r, nil
}

// Close closes the register.
func (r *Register) Close() error { return r.wrap(r.db.Close()) }

// Address names the register as messages do: the file as it was given, or the
// server's address without its password.
func (r *Register) Address() string { return r.address }

// Version is the version of the register's form.
func (r *Register) Version() int { return r.version }

// Errors that say what became of a request; errors.Is tells them apart.
var (
	ErrMissing     = errors.New("there is no register")
	ErrExists      = errors.New("there is something already")
	ErrNotRegister = errors.New("not a register")
	ErrNewer       = errors.New("made by a newer program")
	ErrOlder       = errors.New("of an older version")
	ErrReadOnly    = errors.New("cannot be written")
	ErrLocked      = errors.New("locked by somebody else")
	ErrFull        = errors.New("disk full")
	ErrDamaged     = errors.New("damaged")
	ErrUnreachable = errors.New("server not reached")

	ErrNoSeries  = errors.New("no such series")
	ErrForeign   = errors.New("not a number of any series")
	ErrNotIssued = errors.New("never issued")
	ErrVoid      = errors.New("void")
	ErrState     = errors.New("not possible in this state")
	ErrExhausted = errors.New("no numbers left")

	ErrNeedsIdentifier = errors.New("needs an identifier")
	ErrAmbiguous       = errors.New("more than one fits")
	ErrClash           = errors.New("belongs to another specimen")

	ErrNoLabel = errors.New("no such label")
)

// A fault is an error whose kind is one of the Err values and whose text says
// the case.
type fault struct {
	kind  error
	text  string
	cause error
}

func (f *fault) Error() string { return f.text }

func (f *fault) Unwrap() []error {
	if f.cause == nil {
		return []error{f.kind}
	}
	return []error{f.kind, f.cause}
}

func faultf(kind error, format string, args ...any) error {
	return &fault{kind: kind, text: fmt.Sprintf(format, args...)}
}

// fault says what is wrong with the register itself.
func (r *Register) fault(kind, cause error, format string, args ...any) error {
	return &fault{kind: kind, cause: cause, text: "register " + r.address + ": " + fmt.Sprintf(format, args...)}
}

// keepable refuses text that one of the two databases could not give back.
func keepable(args []any) error {
	for _, a := range args {
		if s, ok := a.(string); ok && (!utf8.ValidString(s) || strings.IndexByte(s, 0) >= 0) {
			return fmt.Errorf("%q holds bytes that are not text; mend it in the table first", s)
		}
	}
	return nil
}
