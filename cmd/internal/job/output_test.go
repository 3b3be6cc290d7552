package job

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestWriteFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "labels.pdf")
	say := func(text string) func(io.Writer) error {
		return func(w io.Writer) error { _, err := io.WriteString(w, text); return err }
	}
	alone := func() {
		t.Helper()
		files, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if strings.HasPrefix(f.Name(), ".") {
				t.Errorf("%s was left behind", f.Name())
			}
		}
	}
	holds := func(want string) {
		t.Helper()
		if got, err := os.ReadFile(path); err != nil || string(got) != want {
			t.Errorf("the file holds %q, %v; want %q", got, err, want)
		}
		alone()
	}

	if err := WriteFile(path, false, say("first")); err != nil {
		t.Fatal(err)
	}
	holds("first")
	if err := WriteFile(path, false, say("second")); !errors.Is(err, ErrExists) {
		t.Errorf("an existing file: %v", err)
	}
	holds("first")
	if err := WriteFile(path, true, say("third")); err != nil {
		t.Fatal(err)
	}
	holds("third")

	// A write that fails leaves what was there, and nothing else.
	broken := errors.New("the disk is full")
	if err := WriteFile(path, true, func(w io.Writer) error { io.WriteString(w, "half"); return broken }); !errors.Is(err, broken) {
		t.Errorf("a failed write: %v", err)
	}
	holds("third")
	// The file may come to be while the new one is written.
	other := filepath.Join(dir, "other.pdf")
	err := WriteFile(other, false, func(w io.Writer) error { return os.WriteFile(other, []byte("theirs"), 0o644) })
	if !errors.Is(err, ErrExists) {
		t.Errorf("a file that came meanwhile: %v", err)
	}
	if got, _ := os.ReadFile(other); string(got) != "theirs" {
		t.Errorf("the other's file now holds %q", got)
	}
	alone()

	for path, want := range map[string]string{
		dir:                                      "is a folder",
		filepath.Join(dir, "none", "labels.pdf"): "there is no folder",
		os.DevNull:                               "is a device",
	} {
		if err := WriteFile(path, true, say("x")); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", path, err, want)
		}
	}
}
