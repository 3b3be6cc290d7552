package trade

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/table"
	"cornerslip/label/table/tabletest"

	"github.com/google/go-cmp/cmp"
)

// ofTrade leaves the findings of the trade's rules.
func ofTrade(fs []label.Finding) []label.Finding {
	names := map[string]bool{}
	for _, r := range Rules() {
		names[r.Name] = true
	}
	return slices.DeleteFunc(fs, func(f label.Finding) bool { return !names[f.Rule] })
}

// All that is said of 1,534 real records, read one by one: eight names without
// their author, an autonym that is misspelt, a Stylidium among the grasses, and a blank before a
// comma. Nothing else, and nothing wrong.
func TestRealTable(t *testing.T) {
	src, err := os.ReadFile(outside.Shared(t, "real/taurus-plants.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rs, fs := run(t, openBytes(t, "taurus-plants.csv", src), options(t))
	if len(rs) != 1534 {
		t.Fatalf("%d records", len(rs))
	}
	var got []string
	for _, f := range ofTrade(fs) {
		style(t, f)
		got = append(got, fmt.Sprintf("%s %s %d", f.Rule, f.Value, 1+len(f.Also)))
	}
	want := []string{
		"spaces Doganbey - Seferihisar. Near sea , 0m. N 38°06´25´´ O 26°51´03´´ 1",
		"author-missing Alyssum simplex var. minus 1", "author-missing Cynoglossum lithospermifolium var. cariense 3", "author-missing Aurinia rupestris subsp. cyclocarpa 5",
		"name-spelling Euphorbia herniariifolia var. herniarifolia 1", "author-missing Tanacetum argenteum var. canum 2", "author-missing Hypericum aviculariifolium var. depilatum 2",
		"genus-families Poaceae 1",
		"author-missing Allium flavum var. tauricum 6", "author-missing Scutellaria orientalis var. alpina 1",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}

// Errors put into the real records are found, each where it was put.
func TestRealTableSpoilt(t *testing.T) {
	src, err := os.ReadFile(outside.Shared(t, "real/taurus-plants.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		column, rule string
		change       func(string) string
	}{
		{"DECIMAL_LONGITUDE", "coordinates-sign", func(s string) string { return "-" + s }},
		{"DECIMAL_LATITUDE", "coordinates-sign", func(s string) string { return "-" + s }},
		{"DECIMAL_LATITUDE", "locality-coordinates", func(s string) string { return "38" + s[2:] }},
		{"DECIMAL_LONGITUDE", "coordinates-country", func(s string) string { return "5" + s[1:] }},
		{"MINIMUM_ELEVATION_IN_METERS", "elevation-feet", func(s string) string {
			if m := parse(s); m >= 1700 { // above 5,400 ft
				return fmt.Sprintf("%.0f", m/foot)
			}
			return s
		}},
		{"SCIENTIFIC_NAME", "name-columns", func(s string) string { return strings.Replace(s, "macrantha", "macranta", 1) }},
		{"FAMILY", "family-spelling", func(s string) string { return strings.Replace(s, "aceae", "acea", 1) }},
		{"LOCALITY", "punctuation-doubled", func(s string) string { return strings.Replace(s, ", ", ",, ", 1) }},
	} {
		rows, err := csv.NewReader(bytes.NewReader(src)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		col, tried, found := slices.Index(rows[0], tt.column), 0, 0
		for at := 40; at < len(rows) && tried < 3; at += 97 {
			before := rows[at][col]
			after := tt.change(before)
			if after == before {
				at -= 96 // the next
				continue
			}
			tried++
			rows[at][col] = after
			var b bytes.Buffer
			w := csv.NewWriter(&b)
			w.WriteAll(rows)
			_, fs := run(t, openBytes(t, "taurus-plants.csv", b.Bytes()), options(t))
			for _, f := range fs {
				if (f.Rule == tt.rule || f.Rule == "coordinates-state" && tt.rule == "locality-coordinates") && f.Row == at {
					found++
					break
				}
			}
			rows[at][col] = before
		}
		if tried == 0 || found < tried {
			t.Errorf("%s: %s found %d of %d times", tt.column, tt.rule, found, tried)
		}
	}
}

// The example's trip is sound; what was broken in its twin the basic rules say, and nothing is said of it twice.
func TestExampleTrips(t *testing.T) {
	for file, want := range map[string][]string{"trip.csv": nil, "trip-broken.csv": nil} {
		src, err := os.ReadFile(filepath.Join(outside.Root(t), "examples", file))
		if err != nil {
			t.Fatal(err)
		}
		_, fs := run(t, openBytes(t, file, src), options(t))
		var got []string
		for _, f := range ofTrade(fs) {
			got = append(got, fmt.Sprint(f.Rule, " ", f.Row))
		}
		slices.Sort(got)
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s (-want +got)\n%s", file, d)
		}
	}
}

// Rows may be checked by many workers; what comes out is the same.
func TestParallel(t *testing.T) {
	var all []map[string]string
	for _, r := range Rules() {
		all = append(all, r.Example...)
		all = append(all, r.Counterexample...)
	}
	tab := open(t, all...)
	o := options(t)
	_, want := run(t, tab, o)
	if d := cmp.Diff(want, tabletest.CheckParallel(t, check.New(o), tab)); d != "" {
		t.Errorf("workers change the findings:\n%s", d)
	}
	if len(want) < 30 {
		t.Errorf("only %d findings", len(want))
	}
}

// What the rules of the whole table keep grows by some hundred bytes a record,
// however long its texts are.
func TestMemory(t *testing.T) {
	const n = 20000
	long := strings.Repeat("along the forest track, ", 40)
	var b bytes.Buffer
	src := benchTable(n)
	for i, line := range bytes.SplitAfter(src, []byte("\n")) {
		if i > 0 {
			line = bytes.Replace(line, []byte("Stabilised dunes"), []byte(long), 1)
		}
		b.Write(line)
	}
	tab := openBytes(t, "trip.csv", b.Bytes())
	heap := func() uint64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	o := options(t)
	e := check.New(o)
	before := heap()
	rows := 0
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		r, _ := e.Row(row)
		e.Feed(r)
		rows++
	}
	per := (int64(heap()) - int64(before)) / int64(rows)
	t.Logf("%d bytes a record", per)
	if rows != n || per > 1000 {
		t.Errorf("%d bytes for each of %d records", per, rows)
	}
	e.End()
	runtime.KeepAlive(src)
	runtime.KeepAlive(tab)
}

// Whatever two cells hold, the rules say the same twice and name the row.
func FuzzRow(f *testing.F) {
	for _, r := range Rules() {
		for _, row := range append(slices.Clone(r.Example), r.Counterexample...) {
			for _, term := range r.Terms {
				f.Add(term, row[term], "locality", row["locality"])
			}
		}
	}
	f.Add("decimalLatitude", "-38.5", "decimalLongitude", "181")
	f.Add("recordNumber", "\xff-97", "eventDate", "12/31/2026")
	rules := Rules()
	f.Fuzz(func(t *testing.T, term1, text1, term2, text2 string) {
		o := options(t)
		o.Rules = rules
		var all []map[string]string
		for i := range 14 {
			row := check.With("recordNumber", itoa(200+i))
			if i%7 == 3 {
				row[term1], row[term2] = text1, text2
			}
			if i%7 == 4 {
				row[term2] = text2
			}
			all = append(all, row)
		}
		tab := open2(all)
		if tab == nil {
			return
		}
		var twice [2][]label.Finding
		for i := range twice {
			e := check.New(o)
			for row, err := range tab.Rows() {
				if err != nil {
					return
				}
				r, fs := e.Row(row)
				for _, f := range fs {
					if f.Row != row.N || f.Message == "" || f.Rule == "" {
						t.Fatalf("%+v", f)
					}
				}
				e.Feed(r)
				twice[i] = append(twice[i], fs...)
			}
			twice[i] = append(twice[i], e.End()...)
		}
		if d := cmp.Diff(twice[0], twice[1]); d != "" {
			t.Fatalf("not the same twice: %s", d)
		}
		for _, f := range twice[0] {
			if f.Row < 1 && f.Rule != "coordinates-minutes" || f.Line < 1 {
				t.Fatalf("no place: %+v", f)
			}
		}
	})
}

// open2 is open for what may be no table.
func open2(rows []map[string]string) *table.Table {
	tab, err := table.Open(table.Bytes("trip.csv", tabletest.CSV(nil, rows...)), table.Options{})
	if err != nil {
		return nil
	}
	return tab
}
