package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"cornerslip/cmd/outside"
)

// atExit is called when all tests are done.
var atExit []func()

type withExit struct{ *testing.M }

func (m withExit) Run() int {
	code := m.M.Run()
	for _, f := range atExit {
		f()
	}
	return code
}

func TestMain(m *testing.M) {
	testscript.Main(withExit{m}, map[string]func(){"cornerslip": main})
}

// TestScripts runs the command as a person would; UPDATE=1 rewrites what the
// scripts compare with. The folder $EXAMPLES is the project's.
func TestScripts(t *testing.T) {
	root := outside.Root(t)
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("UPDATE") == "1",
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", filepath.Join(root, "examples"))
			return nil
		},
	})
}
