package job

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"fmt"
	"html/template"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/table"
)

// reportJob is a job with the house of the examples and a list of taxa whose
// places are withheld.
func reportJob(t testing.TB, taxa ...string) *Job {
	t.Helper()
	j, err := Open(Options{House: filepath.Join(outside.Root(t), "examples", "house.toml"), Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	j.House.Sensitive.Taxa = taxa
	return j
}

// reportsOf checks bytes and returns both reports.
func reportsOf(t testing.TB, j *Job, name string, src []byte) (page, sheet string, s Summary, withheld int) {
	t.Helper()
	tab, err := table.Open(table.Bytes(name, src), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	jt := &Table{Table: tab}
	p, err := j.NewRemarksPage(jt)
	if err != nil {
		t.Fatal(err)
	}
	var c, h bytes.Buffer
	cw := NewRemarksCSV(&c)
	s, withheld, err = j.Remarks(jt, Request{}, func(m Remark) error {
		cw.Add(m)
		return p.Add(m)
	})
	if err == nil {
		err = cw.Flush()
	}
	if err == nil {
		err = p.Write(&h, s, withheld)
	}
	if err != nil {
		t.Fatal(err)
	}
	return h.String(), c.String(), s, withheld
}

func example(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(outside.Root(t), "examples", name))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The table of findings is one by RFC 4180, says what the check says, and in
// the check's order but for what only the whole table shows.
func TestRemarksCSV(t *testing.T) {
	j, src := reportJob(t), example(t, "trip-broken.csv")
	_, sheet, s, _ := reportsOf(t, j, "trip.csv", src)
	body, ok := strings.CutPrefix(sheet, "\ufeff")
	if !ok {
		t.Error("no byte-order mark")
	}
	if strings.Count(body, "\r\n") != strings.Count(body, "\n") {
		t.Error("a line does not end in CRLF")
	}
	got, err := csv.NewReader(strings.NewReader(body)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	tab, err := table.Open(table.Bytes("trip.csv", src), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{csvHeadings}
	if _, err := j.Check(&Table{Table: tab}, func(f label.Finding) error {
		var also []string
		for _, c := range f.Also {
			also = append(also, fmt.Sprint(c.Row, " ", c.Term))
		}
		want = append(want, []string{f.File, fmt.Sprint(f.Line), fmt.Sprint(f.Column), fmt.Sprint(f.Row), f.Term, f.Value, f.Rule, f.Severity.String(), f.Message, f.Suggest, strings.Join(also, " | ")})
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if len(got) != 1+s.Errors+s.Warnings+s.Notes || len(got) < 30 {
		t.Errorf("%d rows, %d findings", len(got)-1, s.Errors+s.Warnings+s.Notes)
	}
	for _, row := range got[1:] {
		for i := range row {
			if strings.ContainsAny(row[i][:min(1, len(row[i]))], "=+-@") {
				t.Errorf("a spreadsheet takes %q for a formula", row[i])
			}
			row[i] = PlainCell(row[i])
		}
	}
	byText := func(a, b []string) int { return strings.Compare(strings.Join(a, "\x00"), strings.Join(b, "\x00")) }
	slices.SortFunc(got, byText)
	slices.SortFunc(want, byText)
	for i := range want {
		if !slices.Equal(got[i], want[i]) {
			t.Errorf("row %q, want %q", got[i], want[i])
		}
	}
}

// Cells that spreadsheets run as formulas; from the CSV injection page of the
// OWASP Foundation.
func TestSafeCell(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", ""}, {"214", "214"}, {"Salix alba L.", "Salix alba L."}, {"L'Hér.", "L'Hér."}, {"a-b=c", "a-b=c"},
		{"-8.610", "'-8.610"}, {"=1+2", "'=1+2"}, {"+351", "'+351"}, {"@SUM(A1)", "'@SUM(A1)"}, {"＝1", "'＝1"},
		{" =1", " '=1"}, {"\t=1", "\t'=1"}, {"\r=1", "\r'=1"}, {"\u00a0-1", "\u00a0'-1"}, {"\ufeff=1", "\ufeff'=1"},
		{"a;=1", "a;'=1"}, {"a\n=1", "a\n'=1"}, {"a | -1", "a | '-1"},
		{"'s-Hertogenbosch", "''s-Hertogenbosch"}, {"''=1", "'''=1"}, {"a'=1", "a'=1"},
		{`=HYPERLINK("http://example.org","x")`, `'=HYPERLINK("http://example.org","x")`},
	} {
		if got := SafeCell(c.text); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
		if got := PlainCell(c.want); got != c.text {
			t.Errorf("%q back: %q, want %q", c.want, got, c.text)
		}
	}
}

func FuzzSafeCell(f *testing.F) {
	for _, s := range []string{"=1", "''a", "a;\t'=\n-", "\xff=;@", "|||'"} {
		f.Add(s)
	}
	formulas := regexp.MustCompile(`(?:^|[;|\t\r\n])[\s\pZ\p{Cc}\p{Cf}]*[=+\-@＝＋－＠]`)
	f.Fuzz(func(t *testing.T, s string) {
		safe := SafeCell(s)
		if got := PlainCell(safe); got != s {
			t.Errorf("%q: %q, and back %q", s, safe, got)
		}
		if m := formulas.FindString(safe); m != "" {
			t.Errorf("%q: %q has %q", s, safe, m)
		}
	})
}

// TestWithheldRemarks holds that a report has no word of a place that is
// withheld, whatever is wrong with the record: each cell of each such record of
// the trip is damaged in turn.
func TestWithheldRemarks(t *testing.T) {
	rows, err := csv.NewReader(bytes.NewReader(example(t, "trip.csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	heading := rows[0]
	col := func(term string) int { return slices.Index(heading, term) }
	j := reportJob(t, "Narcissus", "Iris")
	var site []int
	for _, term := range []string{"municipality", "island", "locality", "decimalLatitude", "decimalLongitude", "minimumElevationInMeters", "habitat", "associatedTaxa", "occurrenceRemarks"} {
		site = append(site, col(term))
	}
	said := 0
	damages := []func(string) string{
		func(s string) string { return s + "\x08" }, func(s string) string { return "  " + s + "  " }, func(s string) string { return s + "\u00ad" },
		func(s string) string { return "NA" }, func(s string) string { return "-" + s }, func(s string) string { return s + " 2" },
	}
	for r := 1; r < len(rows); r++ {
		name := rows[r][col("scientificName")]
		if rows[r][col("informationWithheld")] == "" && !strings.HasPrefix(name, "Narcissus") && !strings.HasPrefix(name, "Iris") {
			continue
		}
		for _, damage := range damages {
			bad := slices.Clone(rows[r])
			for c := range bad {
				if bad[c] != "" && c != col("informationWithheld") && c != col("scientificName") && c != col("country") {
					bad[c] = damage(bad[c])
				}
			}
			twin := slices.Clone(rows[r]) // for the rules that compare rows
			twin[col("locality")], twin[col("decimalLatitude")], twin[col("decimalLongitude")], twin[col("eventDate")] = strings.ToUpper(twin[col("locality")]), "40.1", "-7.1", "2026-01-02"
			twin[col("recordNumber")], twin[col("informationWithheld")] = bad[col("recordNumber")], ""
			var b bytes.Buffer
			w := csv.NewWriter(&b)
			w.WriteAll([][]string{heading, bad, twin, rows[r]})
			page, sheet, _, withheld := reportsOf(t, j, "trip.csv", b.Bytes())
			said += withheld
			for _, c := range site {
				cell := rows[r][c]
				if len(cell) < 4 {
					continue
				}
				if strings.Contains(sheet, cell) || strings.Contains(page, template.HTMLEscapeString(cell)) {
					t.Errorf("row %d: the report has %s %q", r, heading[c], cell)
				}
			}
		}
	}
	if said < 20 {
		t.Errorf("only %d remarks were withheld: the test shows nothing", said)
	}
	t.Logf("%d remarks withheld", said)
}

// TestRemarksPage holds the page against what HTML asks of any, and against
// WCAG 2.2 (1.3.1, 1.4.3, 2.4.6, 3.1.1).
func TestRemarksPage(t *testing.T) {
	j := reportJob(t, "Narcissus")
	broken := append(example(t, "trip-broken.csv"), []byte("VDOURA\u00a0\u00ad9,\" <script>alert(1)</script>  x\",1"+strings.Repeat(",", 33)+"\n")...)
	empty, _, s, _ := reportsOf(t, j, "sound.csv", []byte("recordedBy,recordNumber,eventDate,scientificName,country,locality\nI. Almeida,1,2026-06-02,Salix alba L.,Portugal,Valdoura\n"))
	if s.Errors+s.Warnings+s.Notes != 0 || !strings.Contains(empty, "Nothing was found") || strings.Contains(empty, "<table") {
		t.Errorf("of a sound table, with %+v:\n%s", s, empty)
	}
	page, _, s, _ := reportsOf(t, j, "sub/trip.csv", broken)
	for _, want := range []string{`<html lang="en">`, "trip.csv", "25 November 2026", "I. Almeida 187", "U+FFFD", "no-break space", "&lt;script&gt;"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, not := range []string{"<script", "src=", "@import", "url(", "sub/"} {
		if strings.Contains(page, not) {
			t.Errorf("the page has %q", not)
		}
	}
	level, ids, links := 0, map[string]bool{}, []string{}
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		name := e.Name.Local
		if len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6' {
			if l := int(name[1] - '0'); l > level+1 {
				t.Errorf("%s after a heading of level %d", name, level)
			} else {
				level = l
			}
		}
		scope := false
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "id":
				if ids[a.Value] {
					t.Errorf("two elements have the id %q", a.Value)
				}
				ids[a.Value] = true
			case "href", "aria-labelledby":
				links = append(links, strings.TrimPrefix(a.Value, "#"))
			case "scope":
				scope = true
			}
		}
		if name == "th" && !scope {
			t.Error("a th without scope")
		}
	}
	for _, l := range links {
		if !ids[l] {
			t.Errorf("nothing has the id %q", l)
		}
	}
	if len(links) < 40 {
		t.Errorf("only %d links and labels", len(links))
	}
	contrasts(t)
}

// Rows of another table are named with it.
func TestRemarksPageOfTwoTables(t *testing.T) {
	j := reportJob(t)
	tab := written(t, "trip.csv", recordHeading+oneRecord)
	ids := written(t, "ids.csv", slipHeading+strings.Repeat(soundSlip, 2)+"V-1,,,,Thymus mastichina (L.) L.,T. Brandão,2026-31-12,\nV-1,,,,Thymus zygis L.,T. Brandão,2026-31-12,\n")
	p, err := j.NewRemarksPage(tab)
	if err != nil {
		t.Fatal(err)
	}
	s, _, err := j.Remarks(tab, Request{Identifications: ids}, p.Add)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := p.Write(&b, s, 0); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"ids.csv row 2, line 3", "ids.csv, rows 3–4"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the page lacks %q", want)
		}
	}
}

// contrasts holds every ink against every ground: 4.5 to 1 at least.
func contrasts(t *testing.T) {
	t.Helper()
	colour := map[string]float64{}
	for _, m := range regexp.MustCompile(`--(\w+): #([0-9a-f]{6})`).FindAllStringSubmatch(reportSource, -1) {
		colour[m[1]] = luminance(t, m[2])
	}
	ratio := func(a, b float64) float64 { return (math.Max(a, b) + .05) / (math.Min(a, b) + .05) }
	odd := regexp.MustCompile(`\.odd \{ color: var\(--errors\); background: #([0-9a-f]{6})`).FindStringSubmatch(reportSource)
	if len(colour) < 8 || odd == nil {
		t.Fatal("the colours are not found")
	}
	for _, ink := range []string{"ink", "soft", "errors", "warnings", "notes"} {
		if r := ratio(colour[ink], colour["page"]); r < 4.5 {
			t.Errorf("%s on the page: %.2f", ink, r)
		}
	}
	if r := ratio(colour["errors"], luminance(t, odd[1])); r < 4.5 {
		t.Errorf("odd characters: %.2f", r)
	}
}

// luminance is the relative luminance of WCAG 2.2.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	sum := 0.0
	for i, share := range []float64{.2126, .7152, .0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(n) / 255
		if c <= .04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+.055)/1.055, 2.4)
		}
		sum += share * c
	}
	return sum
}

// A report on a table that is wrong in every row counts all and shows what can
// be read.
func TestRemarksPageBounded(t *testing.T) {
	j := reportJob(t)
	var b bytes.Buffer
	b.WriteString("recordedBy,recordNumber,eventDate,scientificName,country,locality\n")
	const n = 3 * reportLines
	for i := range n {
		fmt.Fprintf(&b, "I. Almeida,%d,2026-06-02,Salix alba L.,Portugal,\"Valdoura %d \u00ad\"\n", i, i)
	}
	page, _, s, _ := reportsOf(t, j, "trip.csv", b.Bytes())
	if s.Warnings != n {
		t.Fatalf("%+v", s)
	}
	if !strings.Contains(page, "3,000 times") || !strings.Contains(page, "2,000 further remarks") || len(page) > 700_000 {
		t.Errorf("%d bytes of page", len(page))
	}
}

// Remarks of identifications have nothing but names, people and numbers, where
// the table has a place that is withheld.
func TestWithheldIdentifications(t *testing.T) {
	const trip = "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,locality\nV-1,I. Almeida,1,2026-06-02,Narcissus asturiensis (Jord.) Pugsley,Portugal,Pedra Bela\n"
	const ids = "catalogNumber,scientificName,identifiedBy,dateIdentified,identificationRemarks\nV-1,Narcissus  bulbocodium L.,T. Brandão,2026-13-01,seen at Pedra\u00ad Bela\n"
	for _, taxa := range [][]string{nil, {"Narcissus"}} {
		j := reportJob(t, taxa...)
		values := map[string]string{}
		_, withheld, err := j.Remarks(written(t, "trip.csv", trip), Request{Identifications: written(t, "ids.csv", ids)}, func(m Remark) error {
			values[m.Term] += m.Value
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(values["dateIdentified"], "2026-13-01") {
			t.Errorf("the date is not shown: %q", values)
		}
		shown := strings.Contains(values["identificationRemarks"], "Bela")
		if shown == (taxa != nil) || (withheld > 0) != (taxa != nil) {
			t.Errorf("sensitive %v: %d withheld, shows %q", taxa, withheld, values)
		}
	}
}
