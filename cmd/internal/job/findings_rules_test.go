package job

import (
	"archive/zip"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/label"
	"cornerslip/label/check"
)

// packed are the parts of a workbook as one file.
func packed(t *testing.T, parts map[string]string) string {
	t.Helper()
	var b strings.Builder
	z := zip.NewWriter(&b)
	for _, path := range slices.Sorted(maps.Keys(parts)) {
		w, err := z.Create(strings.TrimPrefix(path, exampleBook+"/"))
		if err != nil {
			t.Fatal(err)
		}
		io.WriteString(w, parts[path])
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// raisedBy writes an example's files and returns the names of the rules that a
// check of them raises. on is a rule to be raised if the house leaves it off.
func raisedBy(t *testing.T, files map[string]string, on string) []string {
	t.Helper()
	dir := t.TempDir()
	name := exampleTable
	if files[exampleBook+"/xl/workbook.xml"] != "" {
		name = exampleBook
		files = map[string]string{exampleBook: packed(t, files)}
	}
	for path, text := range files {
		if strings.HasPrefix(path, exampleFolder+"/") {
			name = exampleFolder
		}
		file := filepath.Join(dir, path)
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	o := Options{Date: time.Date(2026, 6, 30, 0, 0, 0, 0, time.UTC)}
	if files[exampleHouse] != "" {
		o.House = filepath.Join(dir, exampleHouse)
	}
	j, err := Open(o)
	if err != nil {
		t.Fatal(err)
	}
	if on != "" {
		j.House.Check.Severity = map[string]string{on: "warning"}
	}
	names := map[string]bool{}
	say := func(f label.Finding) error { names[f.Rule] = true; return nil }
	open := func(name string) *Table {
		tab, release, err := OpenTable(filepath.Join(dir, name), nil, nil, TableOptions{})
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(release)
		return tab
	}
	var q Request
	if files[exampleSecond] != "" {
		q.Identifications = open(exampleSecond)
	}
	if len(files) == 1 && q.Identifications != nil {
		_, _, _, err = checkSlips(t, j, q.Identifications, &Request{}, say)
	} else {
		tab := open(name)
		if _, err := j.Check(tab, say); err != nil {
			t.Fatal(err)
		}
		_, err = j.CheckIdentifications(tab, q, say)
	}
	if err != nil {
		t.Fatal(err)
	}
	return slices.Sorted(maps.Keys(names))
}

// TestEveryRule holds that each rule says what it looks for and where that is
// written, and has an example that raises it and no other, and one that does
// not. A rule that is off by itself is raised beside what is on; a rule of
// reading is held among those of reading, for its examples are no whole records.
func TestEveryRule(t *testing.T) {
	j, err := Open(Options{})
	if err != nil {
		t.Fatal(err)
	}
	rules, err := j.RuleTexts()
	if err != nil {
		t.Fatal(err)
	}
	reading := map[string]bool{}
	for _, r := range rules {
		if r.Name == "empty-row" {
			break
		}
		reading[r.Name] = true
	}
	if len(reading) < 15 || len(rules) < 150 {
		t.Errorf("%d rules, of them %d of reading", len(rules), len(reading))
	}
	seen := map[string]bool{}
	for _, r := range rules {
		if seen[r.Name] {
			t.Errorf("two rules are called %s", r.Name)
		}
		seen[r.Name] = true
		if r.Doc == "" || r.Source == "" || strings.HasSuffix(strings.NewReplacer("s.n.", "", "s.d.", "").Replace(r.Doc), ".") || r.Raised == "" || r.Sound == "" {
			t.Errorf("%s lacks a part, or its sentence ends in a full stop: %+v", r.Name, r)
		}
		on := ""
		if r.Severity == check.Off {
			on = r.Name
		}
		got, sound := raisedBy(t, r.Example, on), raisedBy(t, r.Counterexample, on)
		if !slices.Contains(got, r.Name) {
			t.Errorf("%s: the example raises only %v", r.Name, got)
		}
		if slices.Contains(sound, r.Name) {
			t.Errorf("%s: the counterexample raises it", r.Name)
		}
		for _, name := range slices.Concat(got, sound) {
			switch {
			case name == r.Name:
			case on != "" && slices.Contains(raisedBy(t, r.Example, ""), name):
			case on != "" && slices.Contains(raisedBy(t, r.Counterexample, ""), name):
			case reading[r.Name] && !reading[name]:
			case name == "AMENDMENT_EVENTDATE_STANDARDIZED" && strings.HasPrefix(r.Name, "date-"): // says how a date is read
			case name == "heading-reading" && (strings.HasPrefix(r.Name, "coordinates-") || strings.HasPrefix(r.Name, "survey-")): // says which columns belong together
			case r.Name == "table-delimiter" && name == "heading-unknown": // what is cut wrongly has no headings
			case r.Name == "coordinates-obscured" && name == "heading-unknown": // a column of a site's own is no term
			default:
				t.Errorf("%s: its examples raise %s too", r.Name, name)
			}
		}
	}
}
