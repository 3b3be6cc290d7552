package job

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"cornerslip/label/register"
	"cornerslip/label/table"
)

// imported imports a table and returns the reasons of what was not taken over.
func imported(t testing.TB, j *Job, q ImportRequest, src string) (ImportReport, []string, error) {
	t.Helper()
	var why []string
	q.At = clerk
	rep, err := j.Import(t.Context(), numberTable(t, src, table.Options{}), q, func(c ImportClash) error {
		why = append(why, c.Err.Error())
		return nil
	})
	return rep, why, err
}

const oldHead = "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,disposition\n"

func TestImport(t *testing.T) {
	j, r := newBook(t)
	src := oldHead +
		"VDOURA-0000003,F. Nobre,12,1951-05-02,Iris boissieri,\n" +
		"VDOURA-0000005,F. Nobre,13,2. 5. 51?,Quercus robur,Missing\n" +
		",F. Nobre,14,1951-05-02,Quercus robur,\n" +
		"VDOURA-0000006,F. Nobre,15,1951-05-02,Quercus robur,lent\n" +
		"VDOURA-0000003,F. Nobre,16,1951-05-02,Quercus robur,in collection\n" +
		"LUPA 7,F. Nobre,17,1951-05-02,Quercus robur,\n" +
		"VDOURA-0000008,F. Nobre,18,1951-05-02,Quercus robur,voucher elsewhere\n" +
		"VDOURA-0000009,F. Nobre,18,1951-05-02\n"
	rep, why, err := imported(t, j, ImportRequest{Register: r}, src)
	if err != nil || rep.New != 3 || rep.Clashes != 4 || rep.Without != 1 || rep.Undated != 1 || len(rep.Moved) != 1 || NextNumber(rep.Moved[0]) != "VDOURA-0000009" {
		t.Errorf("%v %+v", err, rep)
	}
	slices.Sort(why) // those of the table come before those of its batch
	for i, want := range []string{
		`trip.csv:5:53: VDOURA-0000006: disposition "lent" is no word for what became of a number; write issued, printed, attached`,
		`trip.csv:6: F. Nobre 16: the register has VDOURA-0000003 for F. Nobre 12`,
		`trip.csv:7: F. Nobre 17: "LUPA 7" is not a number of the register's series, VDOURA`,
		`trip.csv:9`,
	} {
		if i >= len(why) || !strings.HasPrefix(why[i], want) {
			t.Errorf("%d: %q, want %q", i, why, want)
		}
	}
	states := map[string]register.State{}
	for row, err := range r.List(t.Context(), register.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		states[row.Range.String()] = row.State
	}
	want := map[string]register.State{"VDOURA-0000001 to VDOURA-0000002": register.Unknown, "VDOURA-0000003": register.Attached, "VDOURA-0000004": register.Unknown,
		"VDOURA-0000005": register.Lost, "VDOURA-0000006 to VDOURA-0000007": register.Unknown, "VDOURA-0000008": register.HeldElsewhere}
	if !reflect.DeepEqual(states, want) {
		t.Errorf("%v", states)
	}
	// Again: nothing new.
	if rep, _, err := imported(t, j, ImportRequest{Register: r}, src); err != nil || rep.New != 0 || rep.Same != 3 || rep.Clashes != 4 || len(rep.Moved) != 0 {
		t.Errorf("again: %v %+v", err, rep)
	}
}

// TestImportLeaps: a figure too many must not use up a series.
func TestImportLeaps(t *testing.T) {
	j, r := newBook(t)
	src := oldHead + "VDOURA-0040001,F. Nobre,1,,,\nVDOURA-0040002,F. Nobre,2,,,\nVDOURA-0400030,F. Nobre,3,,,\n"
	_, _, err := imported(t, j, ImportRequest{Register: r}, src)
	if err == nil || !strings.HasPrefix(err.Error(), "trip.csv:4:1: VDOURA-0400030 leaves out 360027 numbers after VDOURA-0040002") || !strings.Contains(err.Error(), "--highest VDOURA-0400030") {
		t.Fatal(err)
	}
	if s, _ := r.Series(t.Context()); s[0].Highest != 0 {
		t.Errorf("numbers up to %d were taken over", s[0].Highest)
	}
	rep, why, err := imported(t, j, ImportRequest{Register: r, Highest: "50000"}, src)
	if err != nil || rep.New != 2 || len(why) != 1 || !strings.Contains(why[0], "beyond the catalogue's highest number VDOURA-0050000") {
		t.Errorf("%v %+v %q", err, rep, why)
	}
	if rep, _, err := imported(t, j, ImportRequest{Register: r, Highest: "VDOURA-0400030"}, src); err != nil || rep.New != 1 {
		t.Errorf("%v %+v", err, rep)
	}
	// A long catalogue may have long gaps.
	var long strings.Builder
	long.WriteString(oldHead)
	for i := range 3000 {
		fmt.Fprintf(&long, "VDOURA-%07d,F. Nobre,%d,,,\n", 400100+i, i+1000)
	}
	long.WriteString("VDOURA-0405999,F. Nobre,999999,,,\n")
	if rep, why, err := imported(t, j, ImportRequest{Register: r}, long.String()); err != nil || rep.New != 3001 {
		t.Errorf("%v %+v, %d clashes", err, rep, len(why))
	}
}

func TestImportRefusals(t *testing.T) {
	j, r := newBook(t)
	for src, want := range map[string]string{
		"recordedBy,recordNumber\nF. Nobre,1\n": "has no column for the numbers",
		"catalogNumber,catalogNumber\na,b\n":    "t",
	} {
		if _, _, err := imported(t, j, ImportRequest{Register: r}, src); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", src, err)
		}
	}
}

// TestDispositions holds the words against the examples that the list of Darwin
// Core terms gives for disposition (dwc.tdwg.org/terms): in collection, missing,
// voucher elsewhere, duplicates elsewhere.
func TestDispositions(t *testing.T) {
	for word, want := range map[string]register.State{
		"": register.Attached, "in collection": register.Attached, "missing": register.Lost, "voucher elsewhere": register.HeldElsewhere,
		"duplicates elsewhere": register.Attached, "Held  Elsewhere": register.HeldElsewhere, "VOID": register.Void, "printed": register.Printed,
	} {
		if got, err := disposition(word); err != nil || got != want {
			t.Errorf("%q is %q (%v), want %q", word, got, err, want)
		}
	}
	for _, word := range []string{"unknown", "lent", "on load", "0"} {
		if got, err := disposition(word); err == nil {
			t.Errorf("%q is taken for %q", word, got)
		}
	}
}

func TestRanges(t *testing.T) {
	j, r := newBook(t)
	if _, err := r.Issue(t.Context(), clerk, "", 300); err != nil {
		t.Fatal(err)
	}
	for words, want := range map[string]string{
		"VDOURA-0000101":                       "VDOURA-0000101",
		"vdoura 101|102..104":                  "VDOURA-0000101, VDOURA-0000102 to VDOURA-0000104", // there is one series
		"VDOURA-0000101..VDOURA-0000120":       "VDOURA-0000101 to VDOURA-0000120",
		"VDOURA-0000101..120":                  "VDOURA-0000101 to VDOURA-0000120",
		"VDOURA-0000101|to|VDOURA-0000103":     "VDOURA-0000101 to VDOURA-0000103",
		"VDOURA-0000101 to VDOURA-0000103":     "VDOURA-0000101 to VDOURA-0000103",
		"VDOURA-0000001|VDOURA-0000007..9":     "VDOURA-0000001, VDOURA-0000007 to VDOURA-0000009",
		"VDOURA-0000120..VDOURA-0000101":       "! comes after",
		"VDOURA-0000101..":                     "! half a range",
		"..VDOURA-0000101":                     "! half a range",
		"VDOURA-0000101..99999999999999999999": "! no number from 1",
		"LUPA 7":                               "! not a number",
	} {
		ranges, err := Ranges(t.Context(), r, strings.Split(words, "|"))
		got := make([]string, len(ranges))
		for i, one := range ranges {
			got[i] = one.String()
		}
		if bad, ok := strings.CutPrefix(want, "! "); ok {
			if err == nil || !strings.Contains(err.Error(), bad) {
				t.Errorf("%q: %v %v", words, got, err)
			}
		} else if strings.Join(got, ", ") != want || err != nil {
			t.Errorf("%q: %v %v, want %s", words, got, err, want)
		}
	}
	for _, c := range []struct{ series, from, to, states, want string }{
		{"", "", "", "", "{ 0 0 []}"},
		{"", "VDOURA-0000010", "20", "void, Held Elsewhere", "{VDOURA 10 20 [void held elsewhere]}"},
		{"VDOURA", "10", "", "issued", "{VDOURA 10 0 [issued]}"},
		{"", "20", "10", "", "! comes after"},
		{"", "", "", "gone", "! no state"},
	} {
		f, err := j.Filter(t.Context(), r, c.series, c.from, c.to, c.states)
		if bad, ok := strings.CutPrefix(c.want, "! "); ok {
			if err == nil || !strings.Contains(err.Error(), bad) {
				t.Errorf("%+v: %v", c, err)
			}
		} else if fmt.Sprint(f) != c.want || err != nil {
			t.Errorf("%+v: %v %v", c, f, err)
		}
	}
}
