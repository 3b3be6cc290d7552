package check

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
	"cornerslip/label/table"
	"cornerslip/label/table/tabletest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
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

// run checks a whole table.
func run(t testing.TB, e *Engine, tab *table.Table) ([]*Record, []label.Finding) {
	t.Helper()
	return tabletest.Check(t, e, tab)
}

func options(t testing.TB) Options { return Options{Today: today(t), Code: "VDOURA"} }

// Each rule's example raises exactly that rule, its counterexample nothing.
func TestExamples(t *testing.T) {
	names := map[string]bool{}
	for _, r := range Basic() {
		if names[r.Name] {
			t.Errorf("two rules are named %s", r.Name)
		}
		names[r.Name] = true
		t.Run(r.Name, func(t *testing.T) {
			_, fs := run(t, New(options(t)), open(t, r.Example...))
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
			}
			_, fs = run(t, New(options(t)), open(t, r.Counterexample...))
			for _, f := range fs {
				t.Errorf("the counterexample raises %s: %s", f.Rule, f)
			}
			if r.Doc == "" || r.Source == "" || r.Severity == Off || r.Row == nil && r.Table == nil {
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
		strings.Contains(m, "  ") || m[0] == ' ' || m[0] >= 'A' && m[0] <= 'Z' && m[1] >= 'a' && m[1] <= 'z' {
		t.Errorf("not as messages are written: %q", m)
	}
	if f.Line == 0 || f.File == "" {
		t.Errorf("no place: %+v", f)
	}
}

func TestFindings(t *testing.T) {
	for _, tt := range findingCases {
		t.Run(strings.Join(tt.set, " "), func(t *testing.T) {
			_, fs := run(t, New(options(t)), open(t, With(tt.set...)))
			var got []string
			for _, f := range fs {
				style(t, f)
				place := f.Origin.String() + ": "
				got = append(got, f.Severity.String()+" "+f.Rule+": "+strings.TrimPrefix(f.String(), place))
			}
			if d := cmp.Diff(tt.want, got, cmpopts.EquateEmpty()); d != "" {
				t.Errorf("-want +got\n%s", d)
			}
		})
	}
}

func TestPlaceOfFindings(t *testing.T) {
	tab := openBytes(t, "trip.csv", []byte("country,recordedBy,recordNumber,eventDate,decimalLatitude,decimalLongitude,geodeticDatum,genus\n"+
		"Portugal,I. Almeida,1,2026-05-14,41.2,-8.6,WGS84,Erica\nPortugal,\"I.\nAlmeida\",2,2026-05-14,95.2,-8.6,WGS84,Erica\n,,3,,,,,\n"))
	_, fs := run(t, New(Options{}), tab)
	var got []string
	for _, f := range fs {
		got = append(got, fmt.Sprintf("%d %s", f.Row, f))
	}
	want := []string{
		`2 trip.csv:4:23: decimalLatitude "95.2": latitude is beyond 90°`,
	}
	if len(got) == 0 || got[0] != want[0] {
		t.Errorf("got %s", strings.Join(got, "\n"))
	}
	for _, f := range fs[1:] {
		if f.Row != 3 || f.Line != 5 {
			t.Errorf("row 3 starts on line 5: %s", f)
		}
	}
}

func TestBacklog(t *testing.T) {
	o := options(t)
	o.Backlog = true
	rs, fs := run(t, New(o), open(t, With("recordedBy", "", "country", "", "stateProvince", "", "locality", "")))
	if len(fs) != 0 || !rs[0].Printable() || !rs[0].Placeless || rs[0].Key() != "s.coll. 214" {
		t.Errorf("%v %+v", fs, rs[0])
	}
}

func TestSeverity(t *testing.T) {
	o := options(t)
	o.Severity = map[string]label.Severity{"number-missing": label.Error, "datum-missing": Off, "date-unreadable": label.Warning,
		"catalogue-number-twice": Off, "no-such-rule": Off}
	e := New(o)
	if d := cmp.Diff([]string{"no-such-rule"}, e.Unknown()); d != "" {
		t.Error(d)
	}
	row := With("recordNumber", "", "geodeticDatum", "", "eventDate", "31 February 2026", "catalogNumber", "VDOURA-0000001")
	rs, fs := run(t, e, open(t, row, row))
	if rs[0].Printable() || len(fs) != 4 || fs[1].Rule != "date-unreadable" || fs[1].Severity != label.Warning || fs[0].Severity != label.Error {
		t.Errorf("%v", fs)
	}
	// What is let through must still stand on the label.
	if rs[0].DateText != "31 February 2026" || !rs[0].Date.IsZero() {
		t.Errorf("date %v, text %q", rs[0].Date, rs[0].DateText)
	}
	for _, r := range e.Rules() {
		if r.Name == "datum-missing" && r.Severity != Off {
			t.Error("Rules does not tell the severity in force")
		}
	}
}

func TestRecord(t *testing.T) {
	rs, fs := run(t, New(options(t)), open(t, With("preparations", "sheet | packet: capsules | sheet", "copies", "2",
		"duplicatesTo", "PINHEL | SOUTELO", "habitat", "  Dunes \u00a0", "identificationQualifier", "cf. capitellatus",
		"maximumElevationInMeters", "20", "dateIdentified", "2026-06", "catalogNumber", "VDOURA-0001234")))
	if len(fs) != 0 {
		t.Fatal(fs)
	}
	r := rs[0]
	if got := r.Field("habitat"); got.Text != "Dunes" || got.Origin.Term != "habitat" || got.Origin.Row != 1 || got.Origin.Line != 2 || got.Origin.Column == 0 {
		t.Errorf("habitat %+v", got)
	}
	if got := r.Field("noSuchTerm"); got != (Field{}) {
		t.Errorf("a term that is not there: %+v", got)
	}
	for _, tt := range []struct {
		what      string
		got, want any
	}{
		{"name", r.Name, "Thymus cf. capitellatus Hoffmanns. & Link"},
		{"date", r.Date.ISO(), "2026-05-14"},
		{"identified", r.Identified.ISO(), "2026-06"},
		{"collector", r.Collector, "I. Almeida"},
		{"others", r.Others, []string{"J. Prates"}},
		{"number", r.Number, "214"},
		{"key", r.Key(), "I. Almeida 214"},
		{"copies", r.Copies, 2},
		{"duplicates", r.DuplicatesTo, []string{"PINHEL", "SOUTELO"}},
		{"datum", r.Datum, "WGS84"},
		{"uncertainty", r.Uncertainty, 30.0},
		{"preparations", r.Preparations, []Preparation{{Sheet, "sheet", "", 1, 2, false}, {Packet, "packet", "capsules", 1, 1, false}, {Sheet, "sheet", "", 2, 2, false}}},
		{"sheets", r.Count(Sheet), 2},
		{"coordinates", r.HasCoordinates, true},
		{"elevation", r.HasElevation, true},
	} {
		if d := cmp.Diff(tt.want, tt.got); d != "" {
			t.Errorf("%s (-want +got)\n%s", tt.what, d)
		}
	}
}

// A label of nothing but a name, or of a family alone, is no fault; nor are the
// trade's words for what is not known.
func TestNoFault(t *testing.T) {
	for _, set := range [][]string{
		{"scientificName", ""}, {"scientificName", "indet."}, {"scientificName", "Lamiaceae"}, {"scientificName", "Thymus"}, {"scientificName", "Thymus sp."},
		{"scientificName", ""}, {"recordNumber", "s.n."}, {"recordNumber", "S. N."}, {"recordNumber", "s/n"}, {"eventDate", "S/F"}, {"recordedBy", "S.C."}, {"eventDate", "s.d."}, {"recordedBy", "s. coll."}, {"recordedBy", "s/c"},
		{"locality", "s.l.", "country", "", "stateProvince", ""}, {"locality", "s.loc."},
		{"eventDate", "2026"}, {"eventDate", "2026-05/2026-06"}, {"eventDate", "14.v.2026"}, {"eventDate", "", "year", "2026", "month", "5"},
		{"eventDate", "", "year", "2026", "month", "v", "day", "14"}, {"eventDate", "2026-05-14T09:30"},
		{"decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", "", "minimumElevationInMeters", ""},
		{"decimalLatitude", "-90", "decimalLongitude", "180"}, {"coordinateUncertaintyInMeters", "20037509"}, {"coordinateUncertaintyInMeters", "0.5"},
		{"minimumElevationInMeters", "-3"}, {"minimumElevationInMeters", "1200", "maximumElevationInMeters", "1200"},
		{"preparations", "sheet"}, {"preparations", ""}, {"copies", "99"}, {"duplicatesTo", "NA"}, {"countryCode", "NA"},
		{"recordedBy", "Null, J."}, {"locality", "NA 5 road"}, {"institutionCode", "NA"}, {"catalogNumber", "VDOURA 0001234/a"},
	} {
		rs, fs := run(t, New(options(t)), open(t, With(set...)))
		for _, f := range fs {
			t.Errorf("%q: %s %s", set, f.Rule, f)
		}
		if !rs[0].Printable() {
			t.Errorf("%q is not printed", set)
		}
	}
}

// Rows may be checked by many workers; what comes out is the same.
func TestParallel(t *testing.T) {
	var rows []map[string]string
	for _, r := range Basic() {
		rows = append(rows, r.Example...)
		rows = append(rows, r.Counterexample...)
	}
	for range 3 {
		rows = append(rows, rows...)
	}
	tab := open(t, rows...)
	_, want := run(t, New(options(t)), tab)

	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(8))
	got := tabletest.CheckParallel(t, New(options(t)), tab)
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("workers change the findings:\n%s", d)
	}
}

// A row whose cells do not match the headings is never printed, and nothing is
// said of what its cells hold.
func TestRagged(t *testing.T) {
	tab := openBytes(t, "trip.csv", []byte("country,recordedBy,recordNumber,eventDate,genus\nPortugal,I. Almeida,1,2026-05-14,Erica\nPortugal,Valdoura,I. Almeida,2,2026-05-14,Erica\n"))
	rs, fs := run(t, New(options(t)), tab)
	if len(rs) != 2 || rs[1].Printable() || len(fs) != 1 || fs[0].Row != 2 || fs[0].Severity != label.Error {
		t.Errorf("%v", fs)
	}
}

// Whatever a cell holds, the engine says the same twice, names the row in what
// it says, and a record it would print has its parts.
func FuzzRow(f *testing.F) {
	for _, r := range Basic() {
		for _, row := range append(r.Example, r.Counterexample...) {
			for term, text := range row {
				f.Add(term, text, "recordNumber", "214a")
			}
		}
	}
	f.Fuzz(func(t *testing.T, term1, text1, term2, text2 string) {
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.Write([]string{"country", "recordedBy", term1, term2})
		w.Write([]string{"Portugal", "I. Almeida", text1, text2})
		w.Flush()
		tab, err := table.Open(table.Bytes("trip.csv", b.Bytes()), table.Options{})
		if err != nil {
			return
		}
		e := New(options(t))
		for row, err := range tab.Rows() {
			if err != nil {
				return
			}
			r, fs := e.Row(row)
			again, fs2 := e.Row(row)
			if d := cmp.Diff(fs, fs2); d != "" || r.Key() != again.Key() {
				t.Fatalf("not the same twice: %s", d)
			}
			bad := r.Empty()
			for _, f := range fs {
				if f.Row != row.N || f.Message == "" || f.Rule == "" {
					t.Fatalf("%+v", f)
				}
				bad = bad || f.Severity == label.Error
			}
			if bad = bad || r.doubts[0].what|r.doubts[1].what != 0 || r.thousands != [4]bool{}; r.Printable() == bad {
				t.Fatalf("printable %v with %v", r.Printable(), fs)
			}
			if r.Printable() && (len(r.Preparations) == 0 || r.Copies < 1 || r.HasCoordinates && r.CoordinatesText != "") {
				t.Fatalf("%+v", r)
			}
			// What was written is kept, or there is a finding.
			if r.Printable() && len(fs) == 0 && r.Date.IsZero() && r.DateText == "" && r.Text("eventDate") != "" && !Absent("eventDate", r.Text("eventDate")) {
				t.Fatalf("the date is lost: %q", r.Text("eventDate"))
			}
			e.Feed(r)
		}
		e.End()
	})
}

// What the record holds where a value can stand in more than one column.
func TestValues(t *testing.T) {
	for _, tt := range []struct {
		set  []string
		what func(*Record) any
		want any
	}{
		{[]string{"coCollectors", "T. Brandão; R. Falcato"}, func(r *Record) any { return r.Others }, []string{"J. Prates", "T. Brandão", "R. Falcato"}},
		{[]string{"recordedBy", "s.coll.", "coCollectors", "T. Brandão"}, func(r *Record) any { return r.Key() }, "s.coll. 214"},
		{[]string{"recordNumber", "s/n"}, func(r *Record) any { return r.Key() }, "I. Almeida s.n."},
		{[]string{"recordNumber", "NA"}, func(r *Record) any { return r.Key() }, "I. Almeida s.n."},
		{[]string{"eventDate", "s.d.", "verbatimEventDate", "Whitsun 1912"}, func(r *Record) any { return r.DateText }, "Whitsun 1912"},
		{[]string{"eventDate", "", "year", "2026", "month", "v", "day", "14"}, func(r *Record) any { return r.Date.ISO() }, "2026-05-14"},
		{[]string{"eventDate", "14.v.2026", "year", "1999"}, func(r *Record) any { return r.Date.ISO() }, "2026-05-14"},
		{[]string{"eventDate", "", "verbatimEventDate", "14 May 1912"}, func(r *Record) any { return r.Date.ISO() }, "1912-05-14"},
		{[]string{"minimumElevationInMeters", "2600-3000"}, func(r *Record) any { return [2]int64{r.Elevation.Low, r.Elevation.High} }, [2]int64{2600000, 3000000}},
		{[]string{"minimumElevationInMeters", "2600", "maximumElevationInMeters", "3000.5"}, func(r *Record) any { return [2]int64{r.Elevation.Low, r.Elevation.High} }, [2]int64{2600000, 3000500}},
		{[]string{"minimumElevationInMeters", "~ 1800"}, func(r *Record) any { return r.Elevation.Circa }, true},
		{[]string{"minimumElevationInMeters", "", "verbatimElevation", "4000 ft"}, func(r *Record) any { return r.Elevation.Low }, int64(4000000)},
		{[]string{"minimumElevationInMeters", "", "verbatimElevation", "near the top"}, func(r *Record) any { return r.ElevationText }, "near the top"},
		{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "T35N, R3E, S22"}, func(r *Record) any { return r.CoordinatesText }, "T35N, R3E, S22"},
		{[]string{"decimalLatitude", "38°30'N", "decimalLongitude", "8°45'W"}, func(r *Record) any { return r.Coordinates.Lat.Decimal(4) + r.Coordinates.Lon.Decimal(4) }, "38.5000-8.7500"},
		{[]string{"geodeticDatum", "", "verbatimSRS", "ED50"}, func(r *Record) any { return r.Datum }, "ED50"},
		{[]string{"geodeticDatum", "not recorded"}, func(r *Record) any { return r.Datum }, ""},
		{[]string{"habitat", "null"}, func(r *Record) any { return r.Text("habitat") }, ""},
		{[]string{"preparations", "packet: whole specimen"}, func(r *Record) any { return r.Count(Sheet) }, 0},
		{[]string{"duplicatesTo", "NA"}, func(r *Record) any { return r.DuplicatesTo }, []string{"NA"}},
	} {
		rs, _ := run(t, New(options(t)), open(t, With(tt.set...)))
		if d := cmp.Diff(tt.want, tt.what(rs[0])); d != "" {
			t.Errorf("%q (-want +got)\n%s", tt.set, d)
		}
	}
}

// Plain words of field tables, lat, long and alt, take what is no bare number
// too.
func TestPlainHeadings(t *testing.T) {
	tab := openBytes(t, "trip.csv", []byte("collector;coll. no.;date;country;lat;long;geodetic datum;alt. (m);genus\n"+
		"I. Almeida;214;14.v.2026;Portugal;38°28'N;8°48'W;WGS84;1200-1300;Erica\nI. Almeida;215;14.v.2026;Portugal;38.47;-8.80;WGS84;c. 1200;Erica\n"))
	rs, fs := run(t, New(options(t)), tab)
	for _, f := range fs {
		t.Error(f)
	}
	if !rs[0].HasCoordinates || !rs[1].HasCoordinates || rs[0].Elevation.High != 1300000 || !rs[1].Elevation.Circa {
		t.Errorf("%+v\n%+v", rs[0], rs[1])
	}
}

// A placeholder is printed only where it is words, never as a value.
func TestKeepPlaceholders(t *testing.T) {
	o := options(t)
	o.KeepPlaceholders = true
	rs, fs := run(t, New(o), open(t, With("habitat", "?", "eventDate", "?")))
	if rs[0].Text("habitat") != "?" || rs[0].Text("eventDate") != "" || len(fs) != 2 || !rs[0].Printable() {
		t.Errorf("%+v %v", rs[0], fs)
	}
}
