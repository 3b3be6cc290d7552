package check

import (
	"testing"

	"cornerslip/label"
)

// Rules that one table cannot wake are awake in the next, and the other way round,
// where an engine reads the rows of both.
func TestIdleByTable(t *testing.T) {
	without, with := openBytes(t, "a.csv", []byte("country,locality\nPortugal,Lindoso\n")), openBytes(t, "b.csv", []byte("country,habitat\nPortugal,dunes\n"))
	for _, order := range [][]string{{"without", "with"}, {"with", "without", "with"}} {
		e := New(Options{Rules: []Rule{{
			Name: "asked", Severity: label.Warning, Terms: []string{"habitat"},
			Idle: func(has func(string) bool) bool { return !has("habitat") },
			Row:  func(c *Context) { c.Report("habitat", "asked") },
		}}})
		for _, which := range order {
			tab, want := without, 0
			if which == "with" {
				tab, want = with, 1
			}
			asked := 0
			for row, err := range tab.Rows() {
				if err != nil {
					t.Fatal(err)
				}
				_, fs := e.Row(row)
				for _, f := range fs {
					if f.Rule == "asked" {
						asked++
					}
				}
			}
			if asked != want {
				t.Errorf("%v, %s: asked %d times, want %d", order, which, asked, want)
			}
		}
	}
}
