package trade

import (
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/table"
	"cornerslip/label/table/tabletest"
)

// today is the day the examples are checked on.
func today(t testing.TB) date.Date { return tabletest.Today(t) }

// open makes a table of rows, with a column for every term in them.
func open(t testing.TB, rows ...map[string]string) *table.Table {
	t.Helper()
	return tabletest.Examples(t, rows...)
}

func openBytes(t testing.TB, name string, b []byte) *table.Table {
	t.Helper()
	return tabletest.Open(t, name, b)
}

// run checks a whole table with the basic rules and the trade's.
func run(t testing.TB, tab *table.Table, o check.Options) ([]*check.Record, []label.Finding) {
	t.Helper()
	return tabletest.Check(t, check.New(o), tab)
}

func options(t testing.TB) check.Options {
	return check.Options{Today: today(t), Code: "VDOURA", Rules: Rules()}
}

// Each rule's example raises exactly that rule of the basic ones and the
// trade's, its counterexample nothing; so do the examples of the basic rules.
func TestExamples(t *testing.T) {
	names := map[string]bool{}
	for _, r := range append(check.Basic(), Rules()...) {
		if names[r.Name] {
			t.Errorf("two rules are named %s", r.Name)
		}
		names[r.Name] = true
		t.Run(r.Name, func(t *testing.T) {
			_, fs := run(t, open(t, r.Example...), options(t))
			if len(fs) == 0 {
				t.Error("the example raises nothing")
			}
			for _, f := range fs {
				if f.Rule != r.Name || f.Severity != r.Severity {
					t.Errorf("the example raises %s (%s): %s", f.Rule, f.Severity, f)
				}
				if len(r.Terms) > 0 && !slices.Contains(r.Terms, f.Term) {
					t.Errorf("the rule does not name the term %q: %s", f.Term, f)
				}
				style(t, f)
				t.Log(f)
			}
			_, fs = run(t, open(t, r.Counterexample...), options(t))
			for _, f := range fs {
				t.Errorf("the counterexample raises %s: %s", f.Rule, f)
			}
			if r.Doc == "" || r.Source == "" || r.Severity == check.Off || r.Row == nil && r.Table == nil {
				t.Errorf("the rule lacks a part: %+v", r)
			}
		})
	}
}

// style holds a message against the way messages are written.
func style(t testing.TB, f label.Finding) {
	t.Helper()
	m := f.Message
	if m == "" || strings.HasSuffix(m, ".") && !strings.HasSuffix(m, "s.n.") && !strings.HasSuffix(m, "s.d.") || strings.HasSuffix(m, "!") ||
		strings.Contains(m, "  ") || m[0] == ' ' {
		t.Errorf("not as messages are written: %q", m)
	}
	if f.Line == 0 || f.File == "" {
		t.Errorf("no place: %+v", f)
	}
}
