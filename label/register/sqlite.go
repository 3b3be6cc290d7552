package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	driver "modernc.org/sqlite"
)

// applicationID marks SQLite files that are registers ("CSLP"), in the field
// that the format keeps for it.
const applicationID = 0x43534C50

// dial connects to the register, without looking at what is there; for Create
// it makes the empty file or the server's schema.
func dial(ctx context.Context, address string, o Options, fresh bool) (*Register, error) {
	r := &Register{o: o, address: address}
	if Server(address) {
		return r, r.dialServer(ctx, address)
	}
	r.path = address
	return r, r.dialFile(address, fresh)
}

func (r *Register) dialFile(path string, fresh bool) error {
	abs, err := filepath.Abs(path)
	if err != nil {
		return r.fault(ErrMissing, err, "%v", err)
	}
	r.path = abs
	info, err := os.Stat(abs)
	switch {
	case fresh:
		// Made here, so that two programs cannot both think it is theirs.
		f, err := os.OpenFile(abs, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o666)
		switch {
		case errors.Is(err, os.ErrExist):
			return r.fault(ErrExists, err, "there is a file of this name already; open it, or choose another name")
		case err != nil:
			return r.fault(ErrReadOnly, err, "the file cannot be made: %v", err)
		}
		if err := f.Close(); err != nil {
			return r.fault(ErrReadOnly, err, "%v", err)
		}
	case errors.Is(err, os.ErrNotExist):
		return r.fault(ErrMissing, err, "there is no such file; check the name, or make a new register")
	case err != nil:
		return r.fault(ErrMissing, err, "%v", err)
	case info.IsDir():
		return r.fault(ErrNotRegister, nil, "this is a folder; a register is a file")
	case info.Size() == 0:
		return r.fault(ErrNotRegister, nil, "the file is empty; delete it and make a new register")
	case !r.o.ReadOnly && !mayWrite(abs):
		return r.fault(ErrReadOnly, nil, cannotWrite)
	}
	r.db, err = sql.Open("sqlite", r.dsn(abs))
	if err != nil {
		return r.wrap(err)
	}
	// Each connection has a cache of its own, and SQLite lets one write.
	r.db.SetMaxOpenConns(4)
	r.db.SetMaxIdleConns(4)
	return nil
}

func (r *Register) dsn(abs string) string {
	slashed := filepath.ToSlash(abs)
	if !strings.HasPrefix(slashed, "/") { // C:/herbarium.db
		slashed = "/" + slashed
	}
	q := url.Values{}
	q.Set("_busy_timeout", milliseconds(turn))
	// EXTRA is FULL with a write-ahead log, and with a journal it syncs the
	// folder too. Nothing here changes a file that is not ours.
	for _, p := range append([]string{"synchronous(EXTRA)", "foreign_keys(1)", "trusted_schema(0)", "cache_size(-32768)"}, r.o.pragmas...) {
		q.Add("_pragma", p)
	}
	switch {
	case !r.o.ReadOnly:
		q.Set("mode", "rw")
		q.Set("_txlock", "immediate")
	case r.resting(abs):
		q.Set("mode", "ro")
		q.Set("immutable", "1")
	default:
		q.Set("mode", "ro")
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: q.Encode()}).String()
}

// resting reports whether a file that is kept with a write-ahead log has none
// now, and this program could not write to it or beside it. Then SQLite must be
// told not to look for locks. Else it would fail to make its helper files, or
// leave them behind as those of somebody whose files the register's keeper may
// not write to. With a journal locks need no helper files.
func (r *Register) resting(abs string) bool {
	if _, err := os.Stat(abs + "-wal"); err == nil {
		return false
	}
	if mayWrite(abs) {
		probe, err := os.CreateTemp(filepath.Dir(abs), ".probe-*")
		if err == nil {
			probe.Close()
			os.Remove(probe.Name())
			return false
		}
	}
	// Who cannot write has no locks to lose by the closing of a file. The bytes
	// are those of SQLite's documentation, "Database File Format", 1.3.3.
	f, err := os.Open(abs)
	if err != nil {
		return true
	}
	defer f.Close()
	var versions [2]byte // of the format that is needed to write and to read: 2 with a log
	_, err = f.ReadAt(versions[:], 18)
	return err != nil || versions[1] == 2
}

// turn is how long SQLite itself waits for a lock before the register asks
// anew. Left alone, SQLite waits ever longer between its own attempts, and
// whoever waits so can miss every gap that others leave who write without a
// pause.
const turn = 20 * time.Millisecond

// patient repeats f while others hold the lock that it needs, for as long as
// the register is to wait.
func (r *Register) patient(ctx context.Context, f func() error) error {
	err := f()
	if !busy(err) {
		return err
	}
	over := time.NewTimer(r.o.wait())
	defer over.Stop()
	for {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-over.C:
			return err
		case <-time.After(time.Duration(1+rand.IntN(8)) * time.Millisecond):
		}
		if err = f(); !busy(err) {
			return err
		}
	}
}

func busy(err error) bool {
	var e *driver.Error
	return errors.As(err, &e) && (e.Code()&0xFF == codeBusy || e.Code()&0xFF == codeLocked)
}

func milliseconds(d time.Duration) string { return strconv.FormatInt(d.Milliseconds(), 10) }

// beginFile begins a transaction. Once it has its turn to write it must not
// fail because somebody is still reading, so it waits in its last step too.
func (r *Register) beginFile(ctx context.Context) (tx *sql.Tx, end func(), err error) {
	conn, err := r.db.Conn(ctx)
	if err != nil {
		return nil, nil, err
	}
	end = func() {
		if tx != nil {
			tx.Rollback()
		}
		conn.ExecContext(context.WithoutCancel(ctx), "PRAGMA busy_timeout = "+milliseconds(turn))
		conn.Close()
	}
	err = r.patient(ctx, func() error {
		tx, err = conn.BeginTx(ctx, nil) // BEGIN IMMEDIATE
		return err
	})
	if err == nil {
		_, err = tx.ExecContext(ctx, "PRAGMA busy_timeout = "+milliseconds(r.o.wait()))
	}
	if err != nil {
		end()
		return nil, nil, err
	}
	return tx, end, nil
}

// readyFile looks whether the file is a register, of which version, and
// whether it can be written.
func (r *Register) readyFile(ctx context.Context) (version int, err error) {
	var id, tables, ours int
	s := r.read(ctx)
	if err := s.one([]any{&id}, "PRAGMA application_id"); err != nil {
		return 0, r.wrap(err)
	}
	if err := s.one([]any{&tables, &ours}, "SELECT COUNT(*), COUNT(*) FILTER (WHERE name = 'about') FROM sqlite_master"); err != nil {
		return 0, r.wrap(err)
	}
	switch {
	case tables == 0: // whoever made it was broken off
		return 0, r.fault(ErrNotRegister, nil, "this database has nothing in it; delete the file and make a new register")
	case id != applicationID || ours == 0:
		return 0, r.fault(ErrNotRegister, nil, "this is a database of another program, not a register")
	}
	if err := s.one([]any{&version}, "PRAGMA user_version"); err != nil {
		return 0, r.wrap(err)
	}
	return version, nil
}

// writableFile tries a write and takes it back. If another is writing in this
// moment, nothing is known and nothing is said.
func (r *Register) writableFile(ctx context.Context) error {
	tx, err := r.db.BeginTx(ctx, nil)
	if err == nil {
		defer tx.Rollback()
		_, err = tx.ExecContext(ctx, "UPDATE about SET value = value WHERE key = 'version'")
	}
	if busy(err) {
		return nil
	}
	return r.wrap(err)
}

// journal sets how the file is kept safe while it changes: with a write-ahead
// log, or with a rollback journal where others reach it over a network.
func (r *Register) journal(ctx context.Context, mode string) error {
	var got string
	if err := r.read(ctx).one([]any{&got}, "PRAGMA journal_mode = "+mode); err != nil && !busy(err) {
		return r.wrap(err)
	}
	if got != mode {
		return r.fault(ErrLocked, nil, "its journal could not be changed to the mode %s, for another program has it open; close it in all programs and try again", mode)
	}
	return nil
}

// discard removes what a Create that failed has left.
func (r *Register) discard() {
	if r.d == sqlite {
		os.Remove(r.path)
		os.Remove(r.path + "-wal")
		os.Remove(r.path + "-shm")
		os.Remove(r.path + "-journal")
	}
}

const cannotWrite = "the file cannot be written; change its permissions and its folder's, or copy it to a place where you may write"

// Result codes of SQLite, from its documentation ("Result and Error Codes");
// the low byte is the kind.
const (
	codeBusy     = 5
	codeLocked   = 6
	codeReadOnly = 8
	codeIOError  = 10
	codeCorrupt  = 11
	codeFull     = 13
	codeCantOpen = 14
	codeNotADB   = 26

	codeWrite    = codeIOError | 3<<8
	codeTruncate = codeIOError | 6<<8
	codeShmSize  = codeIOError | 19<<8
)

func (r *Register) sqliteFault(err error) error {
	var e *driver.Error
	if !errors.As(err, &e) {
		return nil
	}
	switch e.Code() & 0xFF {
	case codeBusy, codeLocked:
		return r.fault(ErrLocked, err, "another program has been writing to it for longer than %s; wait until it has finished, or close it, and try again", plain(r.o.wait()))
	case codeReadOnly:
		return r.fault(ErrReadOnly, err, cannotWrite)
	case codeCorrupt:
		return r.fault(ErrDamaged, err, "the file is damaged (%v); restore the last backup and move its series up", err)
	case codeFull:
		return r.fault(ErrFull, err, "the disk is full; nothing was changed; free some space and try again")
	case codeCantOpen:
		return r.fault(ErrReadOnly, err, "the file or the journal beside it cannot be opened; see whether you may write to its folder")
	case codeNotADB:
		return r.fault(ErrNotRegister, err, "this is not a register")
	case codeIOError:
		switch e.Code() {
		case codeWrite, codeTruncate, codeShmSize: // a quota, or a disk that fills in this moment
			return r.fault(ErrFull, err, "the disk takes no more (%v): it may be full, over a quota or failing; nothing was changed; free some space and try again", err)
		}
		return r.fault(ErrDamaged, err, "the disk does not read or write as it should (%v)", err)
	}
	return nil
}

func plain(d time.Duration) string {
	if d < time.Second {
		return fmt.Sprintf("%d ms", d.Milliseconds())
	}
	return fmt.Sprintf("%d s", int(d.Seconds()))
}
