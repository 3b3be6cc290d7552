package bdq

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/table"

	"github.com/google/go-cmp/cmp"
)

func test(t testing.TB, name string) Test {
	t.Helper()
	for _, test := range Tests() {
		if test.Label == name {
			return test
		}
	}
	t.Fatalf("no test %s", name)
	return Test{}
}

func cellsOf(t testing.TB, pairs ...string) *Cells {
	m := map[string]string{}
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i]] = pairs[i+1]
	}
	return NewCells(func(term string) string { return m[term] }, today(t))
}

// Without a day to hold against nothing lies in the future.
func TestNoToday(t *testing.T) {
	c := NewCells(func(string) string { return "2300-01-01" }, date.Date{})
	for _, name := range []string{"VALIDATION_EVENTDATE_INRANGE", "VALIDATION_DATEIDENTIFIED_INRANGE"} {
		if r := test(t, name).Answer(c); r.Result != Compliant {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

// Every record is answered by every test: empty rows, rows too short and too
// long, controls.
func TestEveryRecordIsAnswered(t *testing.T) {
	tab, err := table.Open(table.Bytes("t.csv", []byte("dwc:country,countryCode,dcterms:license,dc:type\n\n,,,\nPortugal\nPortugal,PT,CC0,Event,more\n\x00,\x0e\x0f,\x00,\"\n\"\n")), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		n++
		var got []string
		for a := range Responses(row, today(t)) {
			got = append(got, a.Label)
			if a.Row != n || a.Status == "" {
				t.Errorf("%+v", a)
			}
			if a.Label == "VALIDATION_COUNTRY_NOTEMPTY" && (a.Result == Compliant) != (strings.TrimFunc(row.Get("country").Text, invisible) != "") {
				t.Errorf("row %d: %+v", n, a)
			}
		}
		if len(got) != len(Tests()) {
			t.Errorf("row %d has %d answers", n, len(got))
		}
		for range Responses(row, today(t)) {
			break // and may be left early
		}
	}
	if n < 4 {
		t.Errorf("%d rows", n)
	}
}

func TestJSON(t *testing.T) {
	for _, tt := range []struct {
		a    Answer
		want string
	}{
		{Answer{3, "VALIDATION_YEAR_INRANGE", compliant}, `{"row":3,"test":"VALIDATION_YEAR_INRANGE","status":"RUN_HAS_RESULT","result":"COMPLIANT"}`},
		{Answer{1, "X", internalNotMet}, `{"row":1,"test":"X","status":"INTERNAL_PREREQUISITES_NOT_MET","result":""}`},
		{Answer{1, "X", changed(FilledIn, "year", "2026", "day", "1", "license", "u")}, `{"row":1,"test":"X","status":"FILLED_IN","result":{"dcterms:license":"u","dwc:day":"1","dwc:year":"2026"}}`},
	} {
		b, err := json.Marshal(tt.a)
		if err != nil || string(b) != tt.want {
			t.Errorf("got %s %v\nwant %s", b, err, tt.want)
		}
	}
}

// engine checks with all rules, one of them raised if it is silent by itself
// and its plainer twin silenced.
func engine(t testing.TB, r *check.Rule, twin string) *check.Engine {
	o := check.Options{Today: today(t), Rules: Rules(), Severity: map[string]label.Severity{}}
	if r != nil && r.Severity == check.Off {
		o.Severity[r.Name] = label.Warning
	}
	if twin != "" {
		o.Severity[twin] = check.Off
	}
	return check.New(o)
}

func findings(t testing.TB, e *check.Engine, rows []map[string]string) []label.Finding {
	t.Helper()
	var all []label.Finding
	for row, err := range open(t, rows...).Rows() {
		if err != nil {
			t.Fatal(err)
		}
		_, fs := e.Row(row)
		all = append(all, fs...)
	}
	return all
}

// Each rule's example raises exactly that rule, its counterexample nothing.
func TestExamples(t *testing.T) {
	twins := map[string]string{}
	for _, test := range Tests() {
		twins[test.Label] = test.rule.twin
	}
	rules := Rules()
	if len(rules) != len(Tests())-2 {
		t.Errorf("%d rules for %d tests: only the assumed datum and the measure say nothing", len(rules), len(Tests()))
	}
	for i := range rules {
		r := &rules[i]
		t.Run(r.Name, func(t *testing.T) {
			fs := findings(t, engine(t, r, twins[r.Name]), r.Example)
			if len(fs) == 0 {
				t.Error("the example raises nothing")
			}
			for _, f := range fs {
				if f.Rule != r.Name {
					t.Errorf("the example raises %s: %s", f.Rule, f)
				}
				if !slices.Contains(r.Terms, f.Term) {
					t.Errorf("the rule does not name the term %q: %s", f.Term, f)
				}
				style(t, f)
			}
			for _, f := range findings(t, engine(t, r, twins[r.Name]), r.Counterexample) {
				t.Errorf("the counterexample raises %s: %s", f.Rule, f)
			}
			if r.Doc == "" || r.Source == "" || r.Row == nil || len(r.Terms) == 0 {
				t.Errorf("the rule lacks a part: %+v", r)
			}
		})
	}
}

// style holds a message against the way messages are written.
func style(t testing.TB, f label.Finding) {
	t.Helper()
	m := f.Message
	if m == "" || strings.HasSuffix(m, ".") || strings.Contains(m, "  ") || m[0] == ' ' || m[0] >= 'A' && m[0] <= 'Z' {
		t.Errorf("not as messages are written: %q", m)
	}
	if f.Line == 0 || f.File == "" {
		t.Errorf("no place: %+v", f)
	}
}

// What the rules say unasked: nothing twice, and nothing of terms no label
// needs.
func TestFindings(t *testing.T) {
	for _, tt := range []struct {
		set  []string
		want []string
	}{
		{[]string{"license", "x", "basisOfRecord", "x", "occurrenceID", "", "taxonRank", "x", "establishmentMeans", "x"}, nil},
		{[]string{"decimalLatitude", "95.2"}, []string{"coordinates-range"}},
		{[]string{"eventDate", "2062-05-14"}, []string{"date-future"}},
		{[]string{"countryCode", "prt"}, []string{`AMENDMENT_COUNTRYCODE_STANDARDIZED: the alpha-2 code of ISO 3166-1 is meant (PT)`}},
		{[]string{"countryCode", "ZX"}, []string{`VALIDATION_COUNTRYCODE_STANDARD: not a country code of ISO 3166-1: write its two capital letters, such as PT`}},
		{[]string{"typeStatus", "Holo. of X | foo"}, []string{`VALIDATION_TYPESTATUS_STANDARD: not a kind of type: begin each part with one, such as "holotype of" and the name`}},
		{[]string{"eventDate", "14.v.2026"}, []string{`AMENDMENT_EVENTDATE_STANDARDIZED: read without doubt, but the standard writes it otherwise (2026-05-14)`}},
		{[]string{"eventDate", "14.v.2026", "year", "2025"}, []string{`AMENDMENT_EVENTDATE_STANDARDIZED: read without doubt, but the standard writes it otherwise (2026-05-14)`, "date-parts"}},
		{[]string{"year", "2025", "month", "6"}, []string{`VALIDATION_EVENT_CONSISTENT: eventDate says 2026: correct one of the two`}},
		{[]string{"eventDate", "2026-05", "day", "14"}, []string{`VALIDATION_EVENT_CONSISTENT: eventDate does not say one day: leave this empty or correct eventDate`}},
		{[]string{"month", "13"}, []string{`VALIDATION_EVENT_CONSISTENT: eventDate says 5: correct one of the two (5)`}},
		{[]string{"eventDate", "2026-05", "month", "5", "day", "0"}, nil},
		{[]string{"eventDate", "2026", "year", "2026", "month", "00", "day", "00"}, nil},
		{[]string{"eventDate", "2026-05-14/2026-06-02", "year", "2026", "month", "5", "day", "14"}, nil},
		{[]string{"eventDate", "2026-05-14/2026-06-02", "month", "4"}, []string{`VALIDATION_EVENT_CONSISTENT: eventDate does not say one month: leave this empty or correct eventDate`}},
		{[]string{"typeStatus", "Holotype!"}, nil},
		{[]string{"typeStatus", "possible isotype"}, nil},
		{[]string{"typeStatus", "Isotype?"}, nil}, {[]string{"typeStatus", "Isotype (?)"}, nil},
		{[]string{"typeStatus", "iso-type of X"}, []string{`AMENDMENT_TYPESTATUS_STANDARDIZED: the kind of type in full is meant (Isotype of X)`}},
		{[]string{"typeStatus", "lecto type"}, []string{`AMENDMENT_TYPESTATUS_STANDARDIZED: the kind of type in full is meant (Lectotype)`}},
		{[]string{"typeStatus", "possible tipe"}, []string{`VALIDATION_TYPESTATUS_STANDARD: not a kind of type: begin each part with one, such as "holotype of" and the name`}},
		{[]string{"typeStatus", "isotypus! of X"}, []string{`AMENDMENT_TYPESTATUS_STANDARDIZED: the kind of type in full is meant (Isotype! of X)`}},
		{[]string{"typeStatus", "syntypus, lectotypus"}, []string{`AMENDMENT_TYPESTATUS_STANDARDIZED: the kind of type in full is meant (Syntype, lectotypus)`}},
		{[]string{"specificEpithet", "camphoratus"}, []string{"name-columns"}},
	} {
		var got []string
		for _, f := range findings(t, engine(t, nil, ""), []map[string]string{check.With(tt.set...)}) {
			s := f.Rule
			if strings.ContainsRune(s, '_') { // what the basic rules say is theirs to test
				s += ": " + f.Message
				if f.Suggest != "" {
					s += " (" + f.Suggest + ")"
				}
			}
			got = append(got, s)
			style(t, f)
		}
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("%q (-want +got)\n%s", tt.set, d)
		}
	}
}

// Mending makes no datum up, fills nothing in, and changes nothing twice.
func TestAmend(t *testing.T) {
	row := check.With("countryCode", "Portugal", "eventDate", "14.v.2026", "month", "V", "day", "14th", "license", "CC0", "basisOfRecord", "preserved specimen",
		"typeStatus", "Holo.", "geodeticDatum", "", "verbatimElevation", "100 feet", "minimumElevationInMeters", "", "dateIdentified", "2026", "year", "")
	for round := range 2 {
		var got []string
		for r, err := range open(t, row).Rows() {
			if err != nil {
				t.Fatal(err)
			}
			for _, a := range Amend(r) {
				if a.From != row[a.Term] || a.From == a.To {
					t.Errorf("%+v of %q", a, row[a.Term])
				}
				got = append(got, a.Term+" "+a.To)
				row[a.Term] = a.To
			}
		}
		slices.Sort(got)
		want := []string{"basisOfRecord PreservedSpecimen", "countryCode PT", "day 14", "eventDate 2026-05-14",
			"license https://creativecommons.org/publicdomain/zero/1.0/legalcode", "month 5", "typeStatus Holotype"}
		if round == 1 {
			want = nil
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("round %d (-want +got)\n%s", round+1, d)
		}
	}
}

// Whatever the cells hold: an answer is in the standard's words, the same
// twice, and what is amended again is not amended.
func FuzzAnswers(f *testing.F) {
	for _, s := range []string{"", " ", "\x00", "null", "X", "Portugal", "2021-28-10", "9.ii-10.iii.2000", "1980/1981", "366", "-0", "1e9", "EPSG:4326", "WGS84", "Holo. | Para.", "54K 0390210 7377243", "100 feet",
		"Hakea decurrens ssp. ? physocarpa", "urn:lsid:a:b:c", "CC BY 4.0", "23rd", "\ufeff", "99999999999999999999"} {
		f.Add(s, "2021", "10", "29")
		f.Add("2021-10-28", s, s, s)
	}
	tests := Tests()
	statuses := []string{RunHasResult, InternalNotMet, Amended, FilledIn, NotAmended}
	f.Fuzz(func(t *testing.T, a, b, c, d string) {
		values := [...]string{a, b, c, d}
		for _, test := range tests {
			cells := map[string]string{}
			for i, term := range slices.Concat(test.Acts, test.Consults) {
				cells[term] = values[i%len(values)]
			}
			get := func(term string) string { return cells[term] }
			r := test.Answer(NewCells(get, today(t)))
			if again := test.Answer(NewCells(get, today(t))); outcome(t, again) != outcome(t, r) {
				t.Fatalf("%s %q: %v, then %v", test.Label, cells, r, again)
			}
			if !slices.Contains(statuses, r.Status) || (r.Status == RunHasResult) != (r.Result != "") || (r.Status == Amended || r.Status == FilledIn) != (len(r.Amended) > 0) {
				t.Fatalf("%s %q: %+v", test.Label, cells, r)
			}
			if (r.Status == RunHasResult) == (test.Kind == KindAmendment) && r.Status != InternalNotMet {
				t.Fatalf("%s %q: %+v", test.Label, cells, r)
			}
			if len(r.Amended) == 0 {
				continue
			}
			before := maps.Clone(cells)
			for _, one := range r.Amended {
				term, value := one.Term, one.Value
				if !slices.Contains(test.Acts, bare(term)) || blank(value) {
					t.Fatalf("%s %q: changes %s to %q", test.Label, cells, term, value)
				}
				cells[bare(term)] = value
			}
			if again := test.Answer(NewCells(get, today(t))); len(again.Amended) > 0 {
				t.Fatalf("%s %q: %v, and again %v", test.Label, before, r.Amended, again.Amended)
			}
		}
	})
}

// All tests over the real table of 1,534 records.
func BenchmarkResponses(b *testing.B) {
	rows := realRows(b)
	respond := Responder(today(b))
	b.ReportAllocs()
	for b.Loop() {
		n := 0
		for _, row := range rows {
			for a := range respond(row) {
				if a.Status != "" {
					n++
				}
			}
		}
		if n != len(rows)*len(Tests()) {
			b.Fatalf("%d answers", n)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(rows)), "ns/row")
}

// The check with all rules on, silent ones too, and with the basic ones alone.
func BenchmarkCheck(b *testing.B) {
	rows := realRows(b)
	all := map[string]label.Severity{}
	for _, r := range Rules() {
		all[r.Name] = label.Note
	}
	for _, bm := range []struct {
		name string
		o    check.Options
	}{
		{"basic", check.Options{Today: today(b)}},
		{"default", check.Options{Today: today(b), Rules: Rules()}},
		{"all", check.Options{Today: today(b), Rules: Rules(), Severity: all}},
	} {
		b.Run(bm.name, func(b *testing.B) {
			e := check.New(bm.o)
			b.ReportAllocs()
			for b.Loop() {
				n := 0
				for _, row := range rows {
					_, fs := e.Row(row)
					n += len(fs)
				}
				if n == 0 {
					b.Fatal("nothing was found")
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(rows)), "ns/row")
		})
	}
}

func realRows(t testing.TB) []*table.Row {
	tab, err := table.Open(table.File(outside.Shared(t, "real/taurus-plants.csv")), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var rows []*table.Row
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, row)
	}
	return rows
}

// The real table has nothing that these rules should warn of; every record has
// a date that ends in "00:00:00.0", which is read and noted.
func TestRealTable(t *testing.T) {
	rows := realRows(t)
	e := engine(t, nil, "")
	count := map[string]int{}
	for _, row := range rows {
		_, fs := e.Row(row)
		for _, f := range fs {
			if strings.ContainsRune(f.Rule, '_') {
				count[f.Severity.String()+" "+f.Rule]++
			}
		}
	}
	if d := cmp.Diff(map[string]int{"note AMENDMENT_EVENTDATE_STANDARDIZED": len(rows)}, count); d != "" || len(rows) != 1534 {
		t.Errorf("%d rows (-want +got)\n%s", len(rows), d)
	}
}
