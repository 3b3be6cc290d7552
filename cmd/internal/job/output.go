package job

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
)

// ErrExists is what WriteFile says of a file that is there already.
var ErrExists = errors.New("is there already; name another file, or say --force to replace it")

// WriteFile makes the file at path whole or not at all: what write writes goes
// to a temporary file beside it, which takes its name once everything is on
// the disk. An existing file stays unless replace is set.
func WriteFile(path string, replace bool, write func(io.Writer) error) (err error) {
	tmp, err := beside(path, replace)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			tmp.Close()
			os.Remove(tmp.Name())
		}
	}()
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt)
	defer signal.Stop(stop)
	if err := write(&untilStopped{tmp, path, stop}); err != nil {
		return err
	}
	if err := tmp.Chmod(0o644); err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	if err := tmp.Sync(); err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	if err := tmp.Close(); err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	if replace {
		err = os.Rename(tmp.Name(), path)
	} else if err = os.Link(tmp.Name(), path); err == nil {
		// A link fails where another program made the file meanwhile; a rename
		// would replace it.
		err = os.Remove(tmp.Name())
	} else if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s %w", path, ErrExists)
	} else { // a file system without links
		err = os.Rename(tmp.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	return nil
}

// ErrStopped is returned where the run was stopped from the keyboard.
var ErrStopped = errors.New("stopped; the file was not written")

// untilStopped writes until somebody stops the program: then the file that was
// begun is taken away, not left beside the others.
type untilStopped struct {
	w    io.Writer
	path string // as the user knows it
	stop <-chan os.Signal
}

func (u *untilStopped) Write(p []byte) (int, error) {
	select {
	case <-u.stop:
		return 0, ErrStopped
	default:
		n, err := u.w.Write(p)
		if of := (*fs.PathError)(nil); errors.As(err, &of) {
			err = fmt.Errorf("%s cannot be written: %w", u.path, of.Err) // not of the temporary file
		}
		return n, err
	}
}

// beside makes the temporary file that is to become the file at path.
func beside(path string, replace bool) (*os.File, error) {
	if info, err := os.Stat(path); err == nil {
		if info.IsDir() {
			return nil, fmt.Errorf("%s is a folder; name a file in it", path)
		}
		if !info.Mode().IsRegular() {
			return nil, fmt.Errorf("%s is a device, not a file; name a file", path)
		}
		if !replace {
			return nil, fmt.Errorf("%s %w", path, ErrExists)
		}
		if isDatabase(path) {
			return nil, fmt.Errorf("%s is a register, or a database of another program, and is not replaced; name another file", path)
		}
	} else if !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s cannot be written: %w", path, err)
	}
	tmp, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s cannot be written: there is no folder %s", path, filepath.Dir(path))
	case errors.Is(err, fs.ErrPermission):
		return nil, fmt.Errorf("%s cannot be written: you may not write in the folder %s", path, filepath.Dir(path))
	case err != nil:
		return nil, fmt.Errorf("%s cannot be written: %w", path, err)
	}
	return tmp, nil
}

// isDatabase reports whether a file is one that SQLite keeps, by its first
// bytes (the database header string of its file format): nothing that this
// package writes may take the place of a register.
func isDatabase(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, 16)
	_, err = io.ReadFull(f, head)
	return err == nil && string(head) == "SQLite format 3\x00"
}

// CanWrite reports, as far as it can be told now, whether WriteFile will be
// able to make the file: before something is done that cannot be undone.
func CanWrite(path string, replace bool) error {
	tmp, err := beside(path, replace)
	if err != nil {
		return err
	}
	tmp.Close()
	return os.Remove(tmp.Name())
}
