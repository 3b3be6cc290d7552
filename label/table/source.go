package table

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
)

// A Source is a file's bytes that can be read from the start any number of
// times: once to check, once to print. The zero Source cannot be opened.
type Source struct {
	name string
	open func() (io.ReadCloser, error)
}

// Name returns the name that messages show: the path as the user wrote it.
func (s Source) Name() string { return s.name }

// Open starts a reading at the first byte. Readings do not disturb each other.
func (s Source) Open() (io.ReadCloser, error) {
	if s.open == nil {
		return nil, errors.New("no file was named")
	}
	return s.open()
}

// File is the file at path, named as the user wrote it.
func File(path string) Source {
	return Source{path, func() (io.ReadCloser, error) { return os.Open(path) }}
}

// Bytes is a file that is in memory already.
func Bytes(name string, b []byte) Source {
	return Source{name, func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(b)), nil }}
}

// Spool copies r, which can be read only once (standard input), to a temporary
// file in dir ("" is the system's own place). The second result removes it.
func Spool(name string, r io.Reader, dir string) (Source, func() error, error) {
	f, err := os.CreateTemp(dir, "table-*")
	if err != nil {
		return Source{}, nil, fmt.Errorf("%s: no temporary file to keep the input in: %w", name, err)
	}
	path := f.Name()
	remove := func() error { return os.Remove(path) }
	if _, err = io.Copy(f, r); err == nil {
		err = f.Close()
	} else {
		f.Close()
	}
	if err != nil {
		remove()
		return Source{}, nil, fmt.Errorf("%s: the input cannot be kept in %s: %w", name, path, err)
	}
	s := File(path)
	s.name = name
	return s, remove, nil
}
