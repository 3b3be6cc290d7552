package job

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/table"
)

// A twin is the plain way to slips, with every row in memory and every
// identification held against every record. The quick one must come out the
// same, finding by finding and word by word.
type twin struct {
	*slipCheck
	ids     []*twinID
	records []*check.Record // nil where each identification stands alone
}

type twinID struct {
	*identification
	sheet *check.Record
}

func newTwin(t *testing.T, j *Job, tab *Table, q *Request) *twin {
	w := &twin{slipCheck: &slipCheck{j: j, e: check.New(j.checkOptions()), q: q}}
	each := func(tab *Table, do func(*table.Row)) {
		for row, err := range tab.Rows() {
			if err != nil {
				t.Fatal(err)
			}
			do(row)
		}
	}
	ids, joined := tab.identifications(q)
	each(ids, func(row *table.Row) {
		r, findings := w.e.Row(row)
		if r.Empty() {
			return
		}
		id := &identification{Record: r}
		for _, f := range findings {
			if slipScope.concerns(f) {
				id.add(f)
			}
		}
		w.look(id, row)
		w.ids = append(w.ids, &twinID{identification: id})
	})
	if joined {
		each(tab, func(row *table.Row) {
			if r, _ := check.New(j.checkOptions()).Row(row); !r.Empty() {
				w.records = append(w.records, r)
			}
		})
	}
	return w
}

// speaks reports how an identification names a record: "exact", "loose", "".
func (id *twinID) speaks(r *check.Record) string {
	a, b := keysOf(id.Record), keys{r.Text("id"), r.Text("catalogNumber"), r.Collector, plainNumber(r.Number)}
	switch same, last := sameCollector(a.collector, b.collector); {
	case a.id != "" && a.id == b.id, a.catalogue != "" && a.catalogue == b.catalogue:
		return "exact"
	case a.id != "" || a.catalogue != "" || a.number == "" || a.number != b.number:
		return ""
	case same:
		return "exact"
	case last:
		return "loose"
	}
	return ""
}

func (w *twin) settle(id *twinID, name string) {
	by := map[string][]*check.Record{}
	near := ""
	for _, r := range w.records {
		by[id.speaks(r)] = append(by[id.speaks(r)], r)
		if s := lettersAndFigures(id.Text("catalogNumber")); s != "" && s == lettersAndFigures(r.Text("catalogNumber")) {
			near = r.Text("catalogNumber")
		}
	}
	all := by["exact"]
	if len(all) == 0 {
		all = by["loose"]
	}
	var lines []string
	for i, r := range all {
		if i == 5 {
			lines = append(lines, "…")
			break
		}
		lines = append(lines, fmt.Sprint(r.Origin.Line))
	}
	term := id.joinedBy()
	switch {
	case term == "":
		w.report(ruleUnjoined, id.identification, "", "", "the row does not say whose it is: fill in catalogNumber, or recordedBy and recordNumber")
		return
	case len(all) == 0:
		w.report(ruleUnjoined, id.identification, term, near, "no record of %s has %s: correct it, or add the record", name, id.asked())
		return
	case len(all) > 1:
		w.report(ruleTwoRecords, id.identification, term, "", "the records on lines %s of %s have %s: write the catalogue number of the one meant",
			strings.Join(lines, ", "), name, id.asked())
		return
	}
	r := all[0]
	bad := func(term string) {
		w.report(ruleContradict, id.identification, term, "", "the record found by %s, %s, is %s %s: correct one of them", id.joinedBy(), r.Origin, r.Key(), r.Text("catalogNumber"))
	}
	switch {
	case id.Text("catalogNumber") != "" && r.Text("catalogNumber") != "" && id.Text("catalogNumber") != r.Text("catalogNumber"):
		bad("catalogNumber")
		return
	case id.Text("recordNumber") != "" && r.Number != "" && plainNumber(id.Number) != plainNumber(r.Number):
		bad("recordNumber")
		return
	case id.Text("recordedBy") != "" && r.Collector != "" && !collectorsAgree(id.Collector, r.Collector):
		bad("recordedBy")
		return
	}
	id.sheet = r
	if by["exact"] == nil {
		w.report(ruleLoosely, id.identification, "recordedBy", r.Collector, "is taken for %s, %s: write the name as the record does", r.Collector, r.Origin)
	}
	if end, start := id.Identified.End(), r.Date.Start(); end.Year > 0 && start.Year > 0 && end.Compare(start) < 0 {
		w.report(ruleEarly, id.identification, "dateIdentified", "", "lies before the plant was collected, %s: correct one of the dates", r.Date.ISO())
	}
	names := id.kind != form.TypeSlip && id.kind != form.Comment
	if names && id.Name == r.Name && id.Text("identifiedBy") == r.Text("identifiedBy") && id.Text("dateIdentified") == r.Text("dateIdentified") {
		w.report(ruleOnLabel, id.identification, "scientificName", "", "the record says the same, and so does its label if it was printed so: the slip may not be needed")
	}
}

// whose is the record that says where the slip of an identification goes.
func (id *twinID) whose() *check.Record {
	if id.sheet != nil {
		return id.sheet
	}
	return id.Record
}

func (id *twinID) sameSpecimen(other *twinID) bool {
	a, b := id.Record, other.Record
	switch {
	case id.sheet != nil || other.sheet != nil:
		return id.sheet == other.sheet
	case a.Text("catalogNumber") != "" || b.Text("catalogNumber") != "":
		return a.Text("catalogNumber") == b.Text("catalogNumber")
	case a.Number != "" || b.Number != "":
		return fold(a.Collector) == fold(b.Collector) && plainNumber(a.Number) == plainNumber(b.Number)
	}
	return a == b
}

// run returns what is said, and of each specimen what its slips say.
func (w *twin) run(tab *Table, o form.Options) (said []string, slips [][]label.Content) {
	var chosen []*twinID
	for _, id := range w.ids {
		if w.records != nil {
			w.settle(id, tab.Source().Name())
		}
		r := id.Record
		if w.records != nil {
			r = id.sheet
		}
		if r == nil && tab.Only.All() || r != nil && tab.Only.Match(r) {
			chosen = append(chosen, id)
			if w.records == nil && id.joinedBy() == "" {
				w.report(ruleSlipSheet, id.identification, "catalogNumber", "",
					"the slip does not say which sheet it belongs to: fill in catalogNumber, or recordedBy and recordNumber")
			}
		}
	}
	var sets [][]*twinID
	for _, id := range chosen {
		if id.bad {
			continue
		}
		i := slices.IndexFunc(sets, func(s []*twinID) bool { return id.sameSpecimen(s[0]) })
		if i < 0 {
			sets = append(sets, nil)
			i = len(sets) - 1
		}
		sets[i] = append(sets[i], id)
	}
	slices.SortStableFunc(sets, func(a, b []*twinID) int { return cmp.Compare(a[0].whose().Row, b[0].whose().Row) })
	for _, set := range sets {
		whose := set[0].whose()
		slices.SortStableFunc(set, func(a, b *twinID) int {
			x, y := a.Identified.Start(), b.Identified.Start()
			if x.Year == 0 || y.Year == 0 {
				return cmp.Compare(y.Year, x.Year)
			}
			return x.Compare(y)
		})
		for i, id := range set {
			j := slices.IndexFunc(set[:i], func(o *twinID) bool {
				return id.kind == o.kind && id.Name == o.Name && id.Text("identifiedBy") == o.Text("identifiedBy") &&
					id.Text("dateIdentified") == o.Text("dateIdentified") && id.Text("identificationRemarks") == o.Text("identificationRemarks")
			})
			if j >= 0 {
				w.report(ruleRepeated, id.identification, "scientificName", "", "the row on line %d says the same of %s: remove one of them", set[j].Origin.Line, whose.Key())
			}
		}
		var contents []label.Content
		for _, id := range set {
			if !id.bad {
				contents = append(contents, form.Slips(id.kind, id.Record, id.sheet, o)...)
			}
		}
		slips = append(slips, contents)
	}
	for _, id := range chosen {
		for _, f := range id.findings {
			said = append(said, fmt.Sprintf("%s %s %s", f.Rule, f.Severity, f))
		}
	}
	for _, r := range w.records {
		if tab.Only.Match(r) && !slices.ContainsFunc(w.ids, func(id *twinID) bool { return id.speaks(r) != "" }) {
			if f, ok := w.finding(ruleNoSlip, &check.Record{Origin: r.Origin}, "", "", "no identification speaks of this record: it gets no slip"); ok {
				said = append(said, fmt.Sprintf("%s %s %s", f.Rule, f.Severity, f))
			}
		}
	}
	return said, slips
}

// TestSlipsPlainly holds slips against the plain way, on small tables where
// much is doubled, contradicts itself, or is missing, for several houses, with
// and without a table of records, for all records and for some.
func TestSlipsPlainly(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 11))
	one := func(words ...string) string { return words[rnd.IntN(len(words))] }
	houses := []string{"", "slip-unjoined = \"warning\"\nslip-two-records = \"note\"\nslip-contradicts = \"warning\"\nslip-empty = \"note\"\n",
		"slip-repeated = \"error\"\nslip-date-missing = \"off\"\nslip-none = \"off\"\nslip-joined-loosely = \"error\"\n"}
	var jobs []*Job
	for _, h := range houses {
		file := filepath.Join(t.TempDir(), "house.toml")
		if err := os.WriteFile(file, []byte("[check.severity]\n"+h), 0o666); err != nil {
			t.Fatal(err)
		}
		j, err := Open(Options{House: file, Date: time.Date(2027, 6, 1, 0, 0, 0, 0, time.UTC)})
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, j)
	}
	whose := func() string {
		return strings.Join([]string{one("", "", "", "a", "b"), one("", "", "V-1", "V-2", "V-3", "V-4", "v1", "V 2", "V-44"),
			one("", "I. Almeida", "Almeida", "M. Almeida", "T. Brandão", "i. almeida"), one("", "1", "2", " 2", "97-12", "97–12", "9712", "s.n.")}, ",")
	}
	name := func() string {
		return strings.Join([]string{one("", "Salix alba L.", "Salix alba L.", "Erica cinerea L."), one("", "M. Quental", "M. Quental"),
			one("", "", "2024", "2026", "2026-05", "2027-01-02", "30 Feb 2027", "1912/1914")}, ",")
	}
	seen := map[string]int{}
	for round := range 300 {
		trip, det := "id,catalogNumber,recordedBy,recordNumber,scientificName,identifiedBy,dateIdentified,eventDate,country,preparations\n",
			"coreid,catalogNumber,recordedBy,recordNumber,scientificName,identifiedBy,dateIdentified,slip,identificationRemarks\n"
		for range 1 + rnd.IntN(20) {
			trip += whose() + "," + name() + "," + one("", "2026-06-01", "2025-01-01") + ",Portugal," + one("", "sheet | sheet", "sheet | packet") + "\n"
		}
		for range rnd.IntN(10) {
			row := whose() + "," + name() + "," + one("", "", "conf.", "type", "comment", "kind") + "," + one("", "", "seen") + "\n"
			det += strings.Repeat(row, 1+rnd.IntN(5)/4)
			if rnd.IntN(12) == 0 {
				det += ",,,,,,,,\n"
			}
		}
		var only []string
		if rnd.IntN(2) == 0 {
			only = []string{one("V-1", "V-2", "Almeida 1", "I. Almeida 2", "rows 2-4", "row 1", "s.coll. s.n.")}
		}
		j := jobs[rnd.IntN(len(jobs))]
		j.Workers = 1 + rnd.IntN(4)
		q := &Request{Kind: label.Slip}
		var tab *Table
		if rnd.IntN(4) == 0 {
			tab = written(t, "det.csv", det, only...)
		} else {
			tab = written(t, "trip.csv", trip, only...)
			q.Identifications = written(t, "det.csv", det)
		}
		o, err := j.formOptions(q)
		if err != nil {
			t.Fatal(err)
		}
		wantSaid, wantSlips := newTwin(t, j, tab, q).run(tab, o)
		wantMissing := tab.Only.Missing()

		if again, err := Select(only); err != nil {
			t.Fatal(err)
		} else {
			tab.Only = again
		}
		c, err := j.newSlipCheck(tab, q)
		if err != nil {
			t.Fatal(err)
		}
		var said []string
		s, sets, err := c.check(func(f label.Finding) error {
			said = append(said, fmt.Sprintf("%s %s %s", f.Rule, f.Severity, f))
			seen[f.Rule]++
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		var slips [][]label.Content
		for i := range sets {
			_, contents, err := c.contents(&sets[i], o)
			if err != nil {
				t.Fatal(err)
			}
			slips = append(slips, contents)
		}
		c.close()
		about := fmt.Sprintf("round %d, only %q:\n%s\n%s", round, only, trip, det)
		if !slices.Equal(said, wantSaid) {
			t.Fatalf("%ssaid\n%s\nwant\n%s", about, strings.Join(said, "\n"), strings.Join(wantSaid, "\n"))
		}
		if !reflect.DeepEqual(slips, wantSlips) {
			t.Fatalf("%sslips\n%v\nwant\n%v", about, slips, wantSlips)
		}
		if !slices.Equal(tab.Only.Missing(), wantMissing) {
			t.Fatalf("%snot found: %q, want %q", about, tab.Only.Missing(), wantMissing)
		}
		if n := s.Errors + s.Warnings + s.Notes; n != len(said) {
			t.Fatalf("%s%d counted, %d said", about, n, len(said))
		}
	}
	for _, r := range slipRules {
		if seen[r.Name] == 0 {
			t.Errorf("%s was never found: the tables do not try it", r.Name)
		}
	}
}

// slipTables are n records and as many identifications of them, in another
// order.
func slipTables(t testing.TB, n int) (trip, det *Table) {
	var a, b strings.Builder
	a.WriteString("catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,locality,habitat\n")
	b.WriteString("catalogNumber,scientificName,identifiedBy,dateIdentified,identificationRemarks\n")
	for i := range n {
		fmt.Fprintf(&a, "V-%06d,I. Almeida,%d,2026-06-01,Salix alba L.,Portugal,\"Ribeira do Corvo, 2 km above the bridge\",Oak wood on granite\n", i, i+1)
		fmt.Fprintf(&b, "V-%06d,Salix fragilis L.,M. Quental,2027-01,seen with ripe fruits\n", i*7919%n)
	}
	return written(t, "trip.csv", a.String()), written(t, "det.csv", b.String())
}

// A long table of identifications takes little memory: of each row what
// decides its place, of each record where it lies in a file. A row in memory with
// its record would take some 15 kB here.
func TestSlipsKeepLittle(t *testing.T) {
	const n, most = 10007, 1000 // a prime, and bytes for each
	trip, det := slipTables(t, n)
	j := opened(t)
	live := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	before := live()
	c, err := j.newSlipCheck(trip, &Request{Kind: label.Slip, Identifications: det})
	if err != nil {
		t.Fatal(err)
	}
	defer c.close()
	s, sets, err := c.check(func(label.Finding) error { return nil })
	if err != nil {
		t.Fatal(err)
	}
	kept := int64(live() - before)
	if len(sets) != n || s.Records != n {
		t.Fatalf("%d sets of %d rows", len(sets), s.Records)
	}
	if kept/n > most {
		t.Errorf("%d bytes are kept for each identification, at most %d should be", kept/n, most)
	}
	t.Logf("%d bytes for each identification", kept/n)
	runtime.KeepAlive(c)
}

// BenchmarkIdentifications reads, joins and orders 10,007 identifications; as
// "one", those of one record alone.
func BenchmarkIdentifications(b *testing.B) {
	trip, det := slipTables(b, 10007)
	j := opened(b)
	for _, c := range []struct {
		name string
		only []string
		want int
	}{{"all", nil, 10007}, {"one", []string{"Almeida 214"}, 1}} {
		b.Run(c.name, func(b *testing.B) {
			only, err := Select(c.only)
			if err != nil {
				b.Fatal(err)
			}
			tab := &Table{Table: trip.Table, Only: only}
			for b.Loop() {
				quick, err := j.newSlipCheck(tab, &Request{Kind: label.Slip, Identifications: det})
				if err != nil {
					b.Fatal(err)
				}
				_, sets, err := quick.check(func(label.Finding) error { return nil })
				quick.close()
				if err != nil || len(sets) != c.want {
					b.Fatalf("%d sets, %v", len(sets), err)
				}
			}
		})
	}
}
