package job

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"golang.org/x/text/encoding/charmap"

	"cornerslip/label"
	"cornerslip/label/register"
	"cornerslip/label/table"
)

var clerk = register.At{When: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC), By: "M. Teixeira"}

// newBook makes a register with the series VDOURA, and a house of that code.
func newBook(t testing.TB) (*Job, *register.Register) {
	t.Helper()
	j, err := Open(Options{Date: clerk.When})
	if err != nil {
		t.Fatal(err)
	}
	j.House.Herbarium.Code, j.House.Numbers.Pattern = "VDOURA", "VDOURA-0000000"
	p, err := j.NumberPattern("")
	if err != nil {
		t.Fatal(err)
	}
	r, _, err := j.OpenNew(t.Context(), filepath.Join(t.TempDir(), "herbarium.db"), clerk, RegisterOptions{}, p, "")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return j, r
}

func numberTable(t testing.TB, src string, o table.Options) *Table {
	t.Helper()
	tab, err := table.Open(table.Bytes("trip.csv", []byte(src)), o)
	if err != nil {
		t.Fatal(err)
	}
	return &Table{Table: tab}
}

func quiet(label.Finding) error { return nil }

// issued issues numbers for a table and returns the table as written.
func issuedFor(t testing.TB, j *Job, r *register.Register, src string, o table.Options, exceptBad bool) (string, IssueReport, error) {
	t.Helper()
	var out bytes.Buffer
	rep, err := j.Issue(context.Background(), numberTable(t, src, o), IssueRequest{Register: r, At: clerk, ExceptBad: exceptBad}, quiet,
		func(write func(io.Writer) error) error { return write(&out) })
	return out.String(), rep, err
}

// TestIssueKeepsBytes holds that a numbered table is the table with its numbers
// and nothing else, in whatever way it is written.
func TestIssueKeepsBytes(t *testing.T) {
	const plain = "\"catalogNumber\";recordedBy;recordNumber;eventDate;scientificName;country;locality\r\n" +
		";\"I. Almeida\";214;2026-06-14; Cytisus striatus;Portugal;\"Zêzere; \"\"left\"\" bank\"\r\n" +
		"\"\";I. Almeida;215;2026-06-14;Genista florida;Portugal;Gerês\r\n" +
		"\r\n" +
		"LUPA 12;I. Almeida;216;2026-06-14;Genista florida;Portugal;Gerês"
	numbered := strings.Replace(strings.Replace(plain, "\r\n;\"I.", "\r\nVDOURA-0000001;\"I.", 1), "\r\n\"\";", "\r\n\"VDOURA-0000002\";", 1)
	latin := func(s string) string {
		b, err := charmap.Windows1252.NewEncoder().String(s)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	wide := func(s string) string {
		b := binary.LittleEndian.AppendUint16(nil, 0xfeff)
		for _, u := range utf16.Encode([]rune(s)) {
			b = binary.LittleEndian.AppendUint16(b, u)
		}
		return string(b)
	}
	for name, c := range map[string]struct {
		o       table.Options
		in, out string
	}{
		"UTF-8":        {in: plain, out: numbered},
		"with a mark":  {in: "\ufeff" + plain, out: "\ufeff" + numbered},
		"Windows-1252": {o: table.Options{Encoding: "windows-1252"}, in: latin(plain), out: latin(numbered)},
		"UTF-16":       {in: wide(plain), out: wide(numbered)},
	} {
		j, r := newBook(t)
		got, rep, err := issuedFor(t, j, r, c.in, c.o, false)
		if err != nil || got != c.out || rep.Filled != 2 || rep.Count(NumberForeign) != 1 {
			t.Errorf("%s: %v %+v\ngot  %q\nwant %q", name, err, rep, got, c.out)
		}
		// What was written is found to be numbered.
		if again, rep, err := issuedFor(t, j, r, got, c.o, false); err != nil || again != got || rep.Filled != 0 || rep.Count(NumberThere) != 2 {
			t.Errorf("%s, again: %v %+v", name, err, rep)
		}
	}
}

// TestIssueAddsColumn holds that taking the new column away leaves the table.
func TestIssueAddsColumn(t *testing.T) {
	const src = "recordedBy,recordNumber,eventDate,scientificName,country,locality\r\nI. Almeida,214,2026-06-14,\"Cytisus, \"\"striatus\"\"\",Portugal,x\r\n\r\nI. Almeida,215,2026-06-14,Genista florida,Portugal,y"
	j, r := newBook(t)
	got, _, err := issuedFor(t, j, r, src, table.Options{}, false)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasSuffix(got, "y,VDOURA-0000002") || !strings.Contains(got, "locality,catalogNumber\r\n") {
		t.Errorf("%q", got)
	}
	if back := regexp.MustCompile(`,(?:catalogNumber|VDOURA-[0-9]{7})(\r\n|$)`).ReplaceAllString(got, "$1"); back != src {
		t.Errorf("without its last column %q", back)
	}
}

// TestIssueBrokenOff fails between the register and the file.
func TestIssueBrokenOff(t *testing.T) {
	const src = "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,locality\n,I. Almeida,214,2026-06-14,Cytisus striatus,Portugal,x\n,I. Almeida,215,2026-06-14,Genista florida,Portugal,x\n"
	j, r := newBook(t)
	full := errors.New("no space left on the device")
	_, err := j.Issue(t.Context(), numberTable(t, src, table.Options{}), IssueRequest{Register: r, At: clerk}, quiet,
		func(write func(io.Writer) error) error {
			if err := write(io.Discard); err != nil {
				return err
			}
			return full
		})
	if !errors.Is(err, full) || !strings.Contains(err.Error(), "VDOURA-0000001 to VDOURA-0000002 are issued and safe in the register; run the command again") {
		t.Fatal(err)
	}
	got, rep, err := issuedFor(t, j, r, src, table.Options{}, false)
	if err != nil || rep.Issued.Last != 0 || rep.Count(NumberKnown) != 2 || rep.Next != "VDOURA-0000003" {
		t.Errorf("%v %+v", err, rep)
	}
	if !strings.Contains(got, "\nVDOURA-0000001,I. Almeida,214") || !strings.Contains(got, "\nVDOURA-0000002,I. Almeida,215") {
		t.Errorf("%q", got)
	}
	// A file that cannot be made costs no number.
	_, err = j.Issue(t.Context(), numberTable(t, src+",I. Almeida,216,2026-06-14,Genista florida,Portugal,x\n", table.Options{}), IssueRequest{Register: r, At: clerk}, quiet,
		func(func(io.Writer) error) error { return full })
	if !errors.Is(err, full) || strings.Contains(err.Error(), "issued") {
		t.Error(err)
	}
	// Nor does a table that cannot be written back.
	lit := "catalogNumber\trecordedBy\trecordNumber\teventDate\tscientificName\tcountry\tlocality\n\tI. Almeida\t217\t2026-06-14\tGenista florida\tPortugal\tGer\xeas\n"
	if _, _, err := issuedFor(t, j, r, lit, table.Options{Encoding: "utf-16le"}, false); err == nil {
		t.Error("a table in another encoding than was said was numbered")
	}
	if s, _ := r.Series(t.Context()); s[0].Highest != 2 {
		t.Errorf("%d numbers are issued", s[0].Highest)
	}
}

// TestIssueTellsApart: which records are one specimen, and which cannot be told
// apart. A line is a record: catalogNumber, collector, number, date,
// occurrenceID, preparations, materialEntityID, institutionCode; what is wanted
// is its number, a word of the error, or "-" for a record that is left alone.
func TestIssueTellsApart(t *testing.T) {
	for _, c := range []struct {
		name    string
		records []string
		want    []string
	}{
		{"one each", []string{",Almeida,214", ",Almeida,215"}, []string{"1", "2"}},
		{"sheets in one record", []string{",Almeida,214,,,sheet | sheet"}, []string{"1"}},
		{"sheets in two records", []string{",Almeida,214,,,sheet 1 of 2", ",Almeida,215", ",I. Almeida,214,,,sheet 2 of 2"}, []string{"1", "2", "3"}},
		{"sheets in two records, one collector", []string{",Almeida,214,,,sheet 1 of 2", ",Almeida,215", ",Almeida,214,,,sheet 2 of 2"}, []string{"1", "2", "1"}},
		{"the same sheet twice", []string{",Almeida,214,,,sheet 1 of 2", ",Almeida,214,,,sheet 1 of 2"}, []string{"tells it from line 3", "tells it from line 2"}},
		{"of two and of three", []string{",Almeida,214,,,sheet 1 of 2", ",Almeida,214,,,sheet 2 of 3"}, []string{"tells it", "tells it"}},
		{"two records that say nothing", []string{",Almeida,214", ",Almeida,214"}, []string{"tells it", "tells it"}},
		{"one has an identifier", []string{",Almeida,214", ",Almeida,214,,x"}, []string{"tells it", "has no identifier"}},
		{"both have identifiers", []string{",Almeida,214,,y", ",Almeida,214,,x"}, []string{"1", "2"}},
		{"the same identifier", []string{",Almeida,214,,x", ",Almeida,214,,x"}, []string{"1", "1"}},
		{"an identifier for another gathering", []string{",Almeida,214,,x", ",Almeida,215,,x"}, []string{"each specimen needs its own", "each specimen needs its own"}},
		{"an identifier for another number", []string{",,214,,x", ",,215,,x"}, []string{"each specimen needs its own", "each specimen needs its own"}},
		{"the same material", []string{",Almeida,214,,,,m", ",Almeida,214,,,,m", ",Almeida,215,,,,n"}, []string{"1", "1", "2"}},
		{"two materials of one gathering", []string{",Almeida,214,,,,m", ",Almeida,214,,,,n"}, []string{"tells it", "tells it"}},
		{"a material of two gatherings", []string{",Almeida,214,,,,m", ",Almeida,215,,,,m"}, []string{"each specimen needs its own", "each specimen needs its own"}},
		{"one part has the identifier", []string{",Almeida,214,,x,sheet 1 of 2", ",Almeida,214,,,sheet 2 of 2"}, []string{"1", "1"}},
		{"parts with identifiers of their own", []string{",Almeida,214,,x,sheet 1 of 2", ",Almeida,214,,y,sheet 2 of 2"}, []string{"1", "give both the same occurrenceID"}},
		{"a chain of identifiers", []string{",Almeida,,,x", ",,214,,x,,m", ",,,,,,m", ",Almeida,215"}, []string{"1", "1", "1", "2"}},
		{"a number for all parts", []string{",Almeida,214,,,sheet 1 of 2", "LUPA 3,Almeida,214,,,sheet 2 of 2"}, []string{"-", "-"}},
		{"without a number", []string{",Almeida,s.n.", ",Almeida,", ",,", ",Almeida,s.n.,,x"}, []string{"occurrenceID", "occurrenceID", "occurrenceID", "1"}},
		{"another house's", []string{",Almeida,214,,,,,LUPA", "LUPA 7,Almeida,215", ",Almeida,216,,,,,vdoura"}, []string{"-", "-", "1"}},
		{"another house's is no like", []string{",Almeida,214,,,,,LUPA", ",Almeida,214"}, []string{"-", "1"}},
		{"never issued", []string{"VDOURA-0000009,Almeida,214"}, []string{"never issued"}},
		{"a year later", []string{",Almeida,1,2025-06-01", ",Almeida,1,2026-06-01"}, []string{"tells it", "tells it"}},
		{"a wrong date", []string{",Almeida,214,2026-13-40", ",Almeida,214", ",Almeida,215"}, []string{"errors", "which has an error", "1"}},
	} {
		j, r := newBook(t)
		src := tableOf(c.records)
		_, rep, err := issuedFor(t, j, r, src, table.Options{}, true)
		if err != nil || len(rep.Numbers) != len(c.want) {
			t.Errorf("%s: %v, %d records", c.name, err, len(rep.Numbers))
			continue
		}
		bad := false
		for i, want := range c.want {
			n := rep.Numbers[i]
			got := strings.TrimLeft(strings.TrimPrefix(n.Number, "VDOURA-"), "0")
			switch {
			case n.Err != nil && strings.Contains(n.Err.Error(), want) && strings.HasPrefix(n.Err.Error(), fmt.Sprintf("trip.csv:%d", i+2)):
				bad = true
			case n.Err == nil && want == "-" && (n.Status == OtherHouse || n.Status == NumberForeign):
			case n.Err == nil && n.Status == NumberIssued && got == want:
			default:
				t.Errorf("%s, row %d: %+v, want %s", c.name, i+1, n, want)
			}
		}
		if bad { // and none gets a number unless the others' are asked for
			_, r := newBook(t)
			if _, _, err := issuedFor(t, j, r, src, table.Options{}, false); !errors.Is(err, ErrNotIssued) || !errors.Is(err, ErrData) {
				t.Errorf("%s: %v", c.name, err)
			}
			if s, _ := r.Series(t.Context()); s[0].Highest != 0 {
				t.Errorf("%s: %d numbers were issued", c.name, s[0].Highest)
			}
		}
	}
}

// tableOf makes a table of records as TestIssueTellsApart has them.
func tableOf(records []string) string {
	src := "catalogNumber,recordedBy,recordNumber,eventDate,occurrenceID,preparations,materialEntityID,institutionCode,scientificName,country,locality\n"
	for _, rec := range records {
		cells := append(strings.Split(rec, ","), make([]string, 8)...)[:8]
		src += strings.Join(cells, ",") + ",Genista florida,Portugal,Lindoso\n"
	}
	return src
}

// TestIssueRandomly holds, over tables full of likes: no number on two records
// unless the table says that they are one specimen; the same table gets the same
// numbers again; a numbered table stays as it is.
func TestIssueRandomly(t *testing.T) {
	rnd := rand.New(rand.NewPCG(6, 14))
	pick := func(list ...string) string { return list[rnd.IntN(len(list))] }
	for range 60 {
		j, r := newBook(t)
		records := make([]string, 1+rnd.IntN(9))
		for i := range records {
			records[i] = strings.Join([]string{pick("", "", "", "LUPA 3"), pick("Almeida", "Almeida", "Sarmento", ""), pick("1", "2", "s.n."),
				pick("", "2026-06-14", "2026-06-15"), pick("", "", "", "x", "y"), pick("", "", "sheet 1 of 2", "sheet 2 of 2"), pick("", "", "", "m")}, ",")
		}
		src := tableOf(records)
		out, rep, err := issuedFor(t, j, r, src, table.Options{}, true)
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		fail := func(format string, args ...any) { t.Errorf("%s\n%s\n%s", fmt.Sprintf(format, args...), src, out) }
		distinct := map[string][]int{}
		for i, n := range rep.Numbers {
			if n.Status == NumberIssued {
				distinct[n.Number] = append(distinct[n.Number], i)
			}
		}
		for number, rows := range distinct {
			for _, i := range rows[1:] {
				a, b := strings.Split(records[rows[0]], ","), strings.Split(records[i], ",")
				one := a[4] != "" && a[4] == b[4] || a[5] != "" && b[5] != "" && a[5] != b[5] || a[6] != "" && a[6] == b[6]
				// Two parts may be one specimen through a third record.
				differ := func(k int) bool { return a[k] != b[k] && a[k] != "" && b[k] != "" && a[k] != "s.n." && b[k] != "s.n." }
				if !one && len(rows) == 2 || differ(1) || differ(2) || differ(3) {
					fail("%s is on rows %d and %d", number, rows[0]+1, i+1)
				}
			}
		}
		if s, _ := r.Series(t.Context()); s[0].Highest != len(distinct) {
			fail("%d numbers are issued and %d used", s[0].Highest, len(distinct))
		}
		again, second, err := issuedFor(t, j, r, src, table.Options{}, true)
		if err != nil || again != out || second.Issued.Last != 0 {
			fail("again: %v %v\n%s", err, second.Issued, again)
		}
		if kept, third, err := issuedFor(t, j, r, out, table.Options{}, true); err != nil || kept != out || third.Issued.Last != 0 {
			fail("numbered, again: %v %v\n%s", err, third.Issued, kept)
		}
	}
}

func TestIssueRefusals(t *testing.T) {
	j, r := newBook(t)
	src := tableOf([]string{",Almeida,214"})
	only, err := Select([]string{"row 1"})
	if err != nil {
		t.Fatal(err)
	}
	tab := numberTable(t, src, table.Options{})
	tab.Only = only
	none := func(func(io.Writer) error) error { t.Error("something was written"); return nil }
	if _, err := j.Issue(t.Context(), tab, IssueRequest{Register: r, At: clerk}, quiet, none); err == nil || !strings.Contains(err.Error(), "leave --only out") {
		t.Error(err)
	}
	if _, err := j.Issue(t.Context(), numberTable(t, src, table.Options{}), IssueRequest{Register: r, At: clerk, Series: "ALGAE"}, quiet, none); err == nil || !strings.Contains(err.Error(), "no series ALGAE") {
		t.Error(err)
	}
	rep, err := j.Issue(t.Context(), numberTable(t, src, table.Options{}), IssueRequest{Register: r, At: clerk, Try: true}, quiet, none)
	if err != nil || rep.Issued.String() != "VDOURA-0000001" || rep.Filled != 1 {
		t.Errorf("%v %+v", err, rep)
	}
	if s, _ := r.Series(t.Context()); s[0].Highest != 0 {
		t.Error("a dry run issued numbers")
	}
}

func TestWriteIdentifiers(t *testing.T) {
	j, _ := newBook(t)
	src := tableOf([]string{",Almeida,s.n.", ",Almeida,s.n.,,x", "VDOURA-0000001,Almeida,3", ",Almeida,4,,,sheet 1 of 2", ",Almeida,4,,,sheet 2 of 2", ",Almeida,5,,,,,LUPA", ",Almeida,6,2026-13-40"})
	n := 0
	q := IdentifierRequest{New: func() (string, error) { n++; return fmt.Sprintf("urn:test:%d", n), nil }}
	write := func(src string) (string, IdentifierReport) {
		var out bytes.Buffer
		rep, err := j.WriteIdentifiers(numberTable(t, src, table.Options{}), q, quiet, func(write func(io.Writer) error) error { return write(&out) })
		if err != nil {
			t.Fatal(err)
		}
		return out.String(), rep
	}
	got, rep := write(src)
	want := strings.Replace(src, ",s.n.,,,", ",s.n.,,urn:test:1,", 1)
	want = strings.Replace(want, ",4,,,sheet 1", ",4,,urn:test:2,sheet 1", 1)
	want = strings.Replace(want, ",4,,,sheet 2", ",4,,urn:test:2,sheet 2", 1)
	if got != want || rep != (IdentifierReport{Records: 7, Written: 3, Had: 2, Others: 1, Bad: 1}) {
		t.Errorf("%+v\n%s", rep, got)
	}
	if again, rep := write(got); again != got || rep.Written != 0 {
		t.Errorf("again: %+v\n%s", rep, again)
	}
	id, err := NewIdentifier()
	if !regexp.MustCompile(`^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`).MatchString(id) || err != nil {
		t.Errorf("%q is no random UUID after RFC 9562 (%v)", id, err)
	}
}
