package register

import (
	"context"
	"errors"
	"os"
	"path/filepath"
)

// Backup writes a copy of the register to a new file, as it is at one moment,
// while others may go on working, and notes it in the history. The copy is
// whole or absent. A register on a server is backed up by the server's own
// tools; the error says how.
//
// A register that is restored from a backup does not know what was issued
// since: use MoveUp before any number is issued again.
func (r *Register) Backup(ctx context.Context, at At, path string) error {
	if err := at.valid(); err != nil {
		return err
	}
	if r.d == postgres {
		var schema string
		if err := r.read(ctx).one([]any{&schema}, "SELECT current_schema()::text"); err != nil {
			return r.wrap(err)
		}
		return r.fault(errors.ErrUnsupported, nil, "a register on a server is backed up with the server's own program: pg_dump --format=custom --schema=%s --file=%s, with the address of the database", schema, path)
	}
	if _, err := os.Lstat(path); err == nil {
		return r.fault(ErrExists, nil, "%s exists already; choose another name for the backup", path)
	}
	if err := r.copyTo(ctx, path, false); err != nil {
		return err
	}
	if r.o.ReadOnly {
		return nil
	}
	return r.write(ctx, at, func(c *change) error {
		_, err := c.event(event{what: BackedUp})
		return err
	})
}

// copyTo makes a copy of the register's file, which is given its name only
// when it is on the disk and was read back. A file of that name is replaced or
// an error.
func (r *Register) copyTo(ctx context.Context, path string, replace bool) error {
	fail := func(err error) error {
		return r.fault(ErrReadOnly, err, "the copy %s cannot be written: %v", path, err)
	}
	dir, err := os.MkdirTemp(filepath.Dir(path), ".backup-*")
	if err != nil {
		return fail(err)
	}
	defer os.RemoveAll(dir)
	part := filepath.Join(dir, "copy.db")
	if err := r.patient(ctx, func() error {
		os.Remove(part) // of an attempt before
		_, err := r.db.ExecContext(ctx, "VACUUM INTO ?", part)
		return err
	}); err != nil {
		return r.wrap(err)
	}
	if err := syncFile(part); err != nil {
		return fail(err)
	}
	if err := r.verifyCopy(ctx, part); err != nil {
		return err
	}
	if _, err := os.Lstat(path); err == nil && !replace {
		return r.fault(ErrExists, nil, "%s exists already; choose another name for the backup", path)
	}
	if err := os.Rename(part, path); err != nil {
		return fail(err)
	}
	syncFile(filepath.Dir(path)) // not every system can; the copy itself is safe
	return nil
}

func syncFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if errors.Is(err, errors.ErrUnsupported) || err != nil {
		f, err = os.Open(path) // a folder
	}
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}

// verifyCopy reads a copy of r's file back.
func (r *Register) verifyCopy(ctx context.Context, path string) error {
	copied, err := dial(ctx, path, Options{ReadOnly: true}, false)
	if err != nil {
		return err
	}
	defer copied.db.Close()
	version, err := copied.readyFile(ctx)
	if err != nil {
		return err
	}
	if version != r.version {
		return r.fault(ErrNewer, nil, "another program has just brought it to version %d; start again", version)
	}
	var verdict string
	if err := copied.read(ctx).one([]any{&verdict}, "PRAGMA quick_check(1)"); err != nil {
		return r.wrap(err)
	}
	if verdict != "ok" {
		return r.fault(ErrDamaged, nil, "the copy is damaged (%s), and so may be the register", verdict)
	}
	return nil
}
