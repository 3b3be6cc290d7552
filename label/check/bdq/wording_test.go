package bdq

import (
	"os"
	"strconv"
	"strings"
	"testing"
)

// Cases after the standard's wording, from memory of the kinds of values that
// its published cases use: nothing, blanks and controls, the other case, blanks
// around a value, addresses of terms, values at and beyond a limit, figures in
// other scripts, and placeholders. testdata/wording.txt says how they are
// written.
func TestWording(t *testing.T) {
	b, err := os.ReadFile("testdata/wording.txt")
	if err != nil {
		t.Fatal(err)
	}
	whole := map[string]string{"yes": "RUN_HAS_RESULT COMPLIANT", "no": "RUN_HAS_RESULT NOT_COMPLIANT", "unmet": "INTERNAL_PREREQUISITES_NOT_MET ", "same": "NOT_AMENDED ",
		"issue": "RUN_HAS_RESULT POTENTIAL_ISSUE", "none": "RUN_HAS_RESULT NOT_ISSUE"}
	var now Test
	n := map[string]int{}
	for i, line := range strings.Split(string(b), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		cells, want, ok := strings.Cut(line, " -> ")
		if !ok {
			now = test(t, line)
			continue
		}
		input := pairs(t, cells)
		answer, values, _ := strings.Cut(want, " ")
		if answer == "seconds" {
			want = "RUN_HAS_RESULT " + values
		} else if answer == "fill" || answer == "amend" {
			want = outcome(t, changed(map[string]string{"fill": FilledIn, "amend": Amended}[answer], pairs(t, values)...))
		} else if want, ok = whole[want]; !ok {
			t.Fatalf("line %d: no such answer: %s", i+1, line)
		}
		r := now.Answer(cellsOf(t, input...))
		if got := outcome(t, r); got != want {
			t.Errorf("line %d, %s %q:\n got %s\nwant %s", i+1, now.Label, input, got, want)
		}
		settled(t, now, input, r)
		n[now.Label]++
	}
	for _, test := range Tests() {
		if n[test.Label] < 4 {
			t.Errorf("%s has %d cases only", test.Label, n[test.Label])
		}
	}
}

// settled makes the change that a response proposes: then there is nothing more
// to change, and the validation of the same term is content.
func settled(t *testing.T, of Test, input []string, r Response) {
	t.Helper()
	if len(r.Amended) == 0 {
		return
	}
	for _, one := range r.Amended {
		input = append(input, bare(one.Term), one.Value) // the last one counts
	}
	if again := of.Answer(cellsOf(t, input...)); len(again.Amended) > 0 {
		t.Errorf("%s %q changes once more: %s", of.Label, input, outcome(t, again))
	}
	term, ok := strings.CutPrefix(of.Label, "AMENDMENT_")
	if term, ok = strings.CutSuffix(term, "_STANDARDIZED"); !ok {
		return
	}
	if v := test(t, "VALIDATION_"+term+"_STANDARD").Answer(cellsOf(t, input...)); v.Result != Compliant {
		t.Errorf("%s %q is %s", of.Label, input, outcome(t, v))
	}
}

// pairs reads `term=value | term=value`, values with the escapes of Go; a lone
// "-" is a record without any of them.
func pairs(t *testing.T, s string) []string {
	t.Helper()
	var out []string
	if s == "-" {
		return nil
	}
	for _, cell := range strings.Split(s, " | ") {
		term, value, ok := strings.Cut(cell, "=")
		text, err := strconv.Unquote(`"` + strings.ReplaceAll(value, `"`, `\"`) + `"`)
		if !ok || err != nil {
			t.Fatalf("%q is no cell: %v", cell, err)
		}
		out = append(out, term, text)
	}
	return out
}
