// Package policy holds no code: its test keeps the project's packages from
// importing what the design does not let them import.
package policy

import (
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// Each line lists every package of ours, and every module, that the package
// named first may import; the standard library is open to all, but for the
// clock (see TestClock). Loosening a line is a design change: say why in the
// commit and in DEVELOPERS.md.
const policy = `
label
label/table         label github.com/gocarina/gocsv github.com/xuri/excelize golang.org/x/text
label/table/tabletest label label/table label/date
label/lang          golang.org/x/text
label/date          label/lang
label/coord         label/lang
label/name          label golang.org/x/text
label/accession
label/place
label/check         label label/table label/date label/coord label/name label/accession label/place golang.org/x/text
label/check/bdq     label/check label label/table label/date label/coord label/name label/accession label/place
label/check/trade   label/check label label/table label/date label/coord label/name label/accession label/place
label/form          label label/lang label/check label/name label/date label/coord label/accession
label/house         github.com/pelletier/go-toml
label/register      label label/accession modernc.org/sqlite github.com/jackc/pgx golang.org/x/text
fonts               github.com/go-fonts/liberation github.com/go-fonts/dejavu
layout
layout/face         layout fonts github.com/go-text/typesetting golang.org/x/text golang.org/x/image
layout/para         layout github.com/go-text/typesetting
layout/symbol       layout github.com/boombuler/barcode rsc.io/qr
layout/typeset      label layout layout/face layout/para layout/symbol
layout/impose       layout
layout/pdf          layout fonts github.com/go-pdf/fpdf
layout/svg          layout fonts github.com/go-text/typesetting
layout/text         layout
cmd/internal/job    * github.com/google/uuid golang.org/x/text
cmd/internal/desk   cmd/internal/job label layout
cmd/outside
cmd/internal/policy
cmd/cornerslip      cmd/internal/job cmd/internal/desk label layout github.com/spf13/cobra github.com/spf13/pflag github.com/schollz/progressbar golang.org/x/term
cmd/proofread       label label/table label/check label/name github.com/klippa-app/go-pdfium github.com/makiuchi-d/gozxing github.com/tetratelabs/wazero
`

type listed struct {
	ImportPath string
	Imports    []string
	Standard   bool
	Module     *struct{ Path string }
}

// list returns the project's packages and, by import path, the module of
// every package they need; tests are left out.
func list(t *testing.T) (ours []listed, module map[string]string) {
	t.Helper()
	cmd := exec.Command("go", "list", "-deps", "-json=ImportPath,Imports,Standard,Module", "./...")
	cmd.Dir = outside.Root(t)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	module = map[string]string{}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return ours, module
		} else if err != nil {
			t.Fatal(err)
		}
		if p.Standard || p.Module == nil {
			continue
		}
		module[p.ImportPath] = p.Module.Path
		if p.Module.Path == "cornerslip" {
			ours = append(ours, p)
		}
	}
}

func TestImports(t *testing.T) {
	allowed := map[string]map[string]bool{}
	for line := range strings.Lines(policy) {
		if f := strings.Fields(line); len(f) > 0 {
			allowed[f[0]] = map[string]bool{}
			for _, name := range f[1:] {
				allowed[f[0]][name] = true
			}
		}
	}
	ours, module := list(t)
	if len(ours) < 5 {
		t.Fatalf("only %d packages of ours were listed", len(ours))
	}
	for _, p := range ours {
		name := strings.TrimPrefix(p.ImportPath, "cornerslip/")
		may, ok := allowed[name]
		if !ok {
			t.Errorf("%s is not in the design: give it a line in the policy and in DEVELOPERS.md", name)
			continue
		}
		for _, imp := range p.Imports {
			m := module[imp]
			switch {
			case m == "": // the standard library
			case m == "cornerslip":
				if sub := strings.TrimPrefix(imp, "cornerslip/"); !may[sub] && !may["*"] {
					t.Errorf("%s may not import %s", name, sub)
				}
			case !mayModule(may, m):
				t.Errorf("%s may not import %s", name, imp)
			}
		}
	}
}

// mayModule allows a module by its path up to any later part of it, so that a
// line need not carry the major version.
func mayModule(may map[string]bool, module string) bool {
	for name := range may {
		if module == name || strings.HasPrefix(module, name+"/") {
			return true
		}
	}
	return false
}

// TestClock holds that the time is an input: outside cmd nothing asks the
// clock what day it is, or the same table would print another label tomorrow.
func TestClock(t *testing.T) {
	root := outside.Root(t)
	asks := regexp.MustCompile(`\btime\.(Now|Since|Until)\(`)
	read := 0
	for _, top := range []string{"label", "layout", "fonts"} {
		err := filepath.WalkDir(filepath.Join(root, top), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			src, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			read++
			if m := asks.Find(src); m != nil {
				t.Errorf("%s asks the clock: %s", path, m)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if read < 10 {
		t.Fatalf("only %d files were read", read)
	}
}
