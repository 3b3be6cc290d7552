package bdq

import (
	"encoding/csv"
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label/date"
	"cornerslip/label/table"
	"cornerslip/label/table/tabletest"

	"github.com/google/go-cmp/cmp"
)

// against are the published cases that contradict the standard's own wording,
// by their numbers; we answer by the wording.
var against = map[string]string{
	// The prerequisite fails only if verbatimEventDate is empty, and "X" is
	// not. Wordings before 2024 let it fail too where nothing could be read,
	// which other cases of the same test (689) no longer follow.
	"682": "AMENDMENT_EVENTDATE_FROM_VERBATIM: X is a value, though none that can be read",
}

func today(t testing.TB) date.Date { return tabletest.Today(t) }

// records reads a CSV file as maps by heading.
func records(t testing.TB, name string) []map[string]string {
	f, err := os.Open(outside.Shared(t, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, cell := range row {
			m[rows[0][i]] = cell
		}
		all = append(all, m)
	}
	return all
}

// open makes a table of rows, a column for every term in them.
func open(t testing.TB, rows ...map[string]string) *table.Table {
	t.Helper()
	var all []map[string]string
	for _, r := range rows {
		prefixed := map[string]string{}
		for k, v := range r {
			if !strings.Contains(k, ":") {
				k = Prefixed(k)
			}
			prefixed[k] = v
		}
		all = append(all, prefixed)
	}
	return tabletest.Open(t, "cases.csv", tabletest.CSV([]string{"dwc:scientificName", "dwc:habitat"}, all...))
}

// answers returns all responses for the rows of a table, by row and label.
func answers(t testing.TB, tab *table.Table) []map[string]Answer {
	t.Helper()
	var all []map[string]Answer
	respond := Responder(today(t))
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		m := map[string]Answer{}
		for a := range respond(row) {
			if a.Row != row.N {
				t.Fatalf("row %d is answered as %d", row.N, a.Row)
			}
			m[a.Label] = a
		}
		all = append(all, m)
	}
	return all
}

// outcome writes a response in one line.
func outcome(t testing.TB, r Response) string {
	if len(r.Amended) == 0 {
		return r.Status + " " + r.Result
	}
	b, err := json.Marshal(r.Amended)
	if err != nil {
		t.Fatal(err)
	}
	return r.Status + " " + string(b)
}

// The published cases: tdwg/bdq, commit bdc0930, CC BY 4.0.
func TestPublishedCases(t *testing.T) {
	cases := records(t, "checks/bdq-cases.csv")
	var rows []map[string]string
	for _, c := range cases {
		row := map[string]string{}
		if err := json.Unmarshal([]byte(c["input"]), &row); err != nil {
			t.Fatal(err)
		}
		rows = append(rows, row)
	}
	got := answers(t, open(t, rows...))
	if len(got) != len(cases) || len(cases) < 400 {
		t.Fatalf("%d rows are answered of %d cases", len(got), len(cases))
	}
	for i, c := range cases {
		want := Response{Status: c["expected_status"], Result: c["expected_result"]}
		if strings.HasPrefix(want.Result, "{") {
			var m map[string]string
			if err := json.Unmarshal([]byte(want.Result), &m); err != nil {
				t.Fatal(err)
			}
			for _, term := range slices.Sorted(maps.Keys(m)) {
				want.Amended = append(want.Amended, Change{term, m[term]})
			}
		}
		a, ok := got[i][c["test_label"]]
		if !ok {
			t.Errorf("%s is not answered", c["test_label"])
			continue
		}
		same := outcome(t, want) == outcome(t, a.Response)
		if why := against[c["case_id"]]; why != "" {
			if same {
				t.Errorf("case %s is answered as published now: %s", c["case_id"], why)
			}
			continue
		}
		if !same {
			t.Errorf("case %s, %s %s:\n got %s\nwant %s", c["case_id"], c["test_label"], c["input"], outcome(t, a.Response), outcome(t, want))
		}
	}
}

// The tests are those of the list, with its identifiers and terms.
func TestCatalogue(t *testing.T) {
	ours := map[string]Test{}
	for _, test := range Tests() {
		if _, ok := ours[test.Label]; ok {
			t.Errorf("%s is there twice", test.Label)
		}
		ours[test.Label] = test
	}
	list := records(t, "checks/bdq-tests.csv")
	if len(list) != 85 {
		t.Errorf("%d tests are listed", len(list))
	}
	for _, want := range list {
		got, ok := ours[want["label"]]
		if !ok {
			t.Errorf("%s is missing", want["label"])
			continue
		}
		delete(ours, want["label"])
		terms := func(list []string) string {
			var out []string
			for _, term := range list {
				out = append(out, Prefixed(term))
			}
			return strings.Join(out, ",")
		}
		if d := cmp.Diff([]string{want["guid"], want["type"], want["acted_upon"], want["consulted"]}, []string{got.GUID, got.Kind, terms(got.Acts), terms(got.Consults)}); d != "" {
			t.Errorf("%s (-want +got)\n%s", got.Label, d)
		}
		if got.Doc == "" {
			t.Errorf("%s has no sentence", got.Label)
		}
	}
	for label := range ours {
		t.Errorf("%s is not in the list", label)
	}
}
