// Package outside finds what tests hold the product against: data files kept
// beside the project and programs of other people. Where they are absent a
// test is skipped with a clear word, but with CI=true it fails, so that a
// check cannot fall silent on the machine that counts.
package outside

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Root returns the project's root folder: the one that holds go.mod.
func Root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the test's folder")
		}
		dir = up
	}
}

// Shared returns the path of a file in the folder "shared" that lies beside
// the project's root.
func Shared(t testing.TB, name string) string {
	t.Helper()
	path := filepath.Join(filepath.Dir(Root(t)), "shared", filepath.FromSlash(name))
	if _, err := os.Stat(path); err != nil {
		skip(t, "the outside file shared/"+name+" is not here")
	}
	return path
}

// Program returns the path of a program, found by name.
func Program(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		skip(t, "the program "+name+" is not installed")
	}
	return path
}

// File returns path, a file that a package of the system installs.
func File(t testing.TB, path string) string {
	t.Helper()
	if _, err := os.Stat(path); err != nil {
		skip(t, "the file "+path+" is not installed")
	}
	return path
}

// Module returns the folder of a Go module's files as the go command keeps it:
// some come with tables and fonts to test against.
func Module(t testing.TB, path string) string {
	t.Helper()
	out, err := exec.Command(Program(t, "go"), "list", "-m", "-f", "{{.Dir}}", path).Output()
	dir := strings.TrimSpace(string(out))
	if err != nil || dir == "" {
		skip(t, "the files of the module "+path+" are not here")
	}
	return dir
}

func skip(t testing.TB, why string) {
	t.Helper()
	if os.Getenv("CI") == "true" {
		t.Fatal(why + ", and with CI=true no check may be passed over")
	}
	t.Skip(why)
}
