package job

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
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
	if err := write(tmp); err != nil {
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
