package job

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label/table"
)

// mended mends bytes and returns them with the count of repairs.
func mended(t testing.TB, j *Job, name string, src []byte) ([]byte, int) {
	t.Helper()
	tab, err := table.Open(table.Bytes(name, src), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	m, err := j.Repairs(&Table{Table: tab}, func(r Repair) error {
		if r.From == "" || r.To == "" || r.From == r.To {
			t.Errorf("%v fills or empties a cell, or changes nothing", r)
		}
		switch r.Term {
		case "geodeticDatum", "coordinateUncertaintyInMeters":
			if r.Rule != spacesOutside {
				t.Errorf("%v makes up a datum or an uncertainty", r)
			}
		case "decimalLatitude", "decimalLongitude", "verbatimLatitude", "verbatimLongitude", "verbatimCoordinates":
			if r.To != strings.TrimSpace(r.From) {
				t.Errorf("%v moves a place", r)
			}
		}
		if strings.HasPrefix(r.Rule, "spaces-") && strings.Join(strings.Fields(r.From), "") != strings.Join(strings.Fields(r.To), "") {
			t.Errorf("%v changes more than spaces", r)
		}
		n++
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := j.Mend(&out, &Table{Table: tab}, m.Edits, false); err != nil {
		t.Fatal(err)
	}
	untouched(t, src, out.Bytes(), m.Edits)
	return out.Bytes(), n
}

// untouched holds that every byte outside the edited cells is as it was: those
// of other cells, and those between cells.
func untouched(t testing.TB, before, after []byte, edits []table.Edit) {
	t.Helper()
	edited := map[[2]int]string{}
	for _, e := range edits {
		edited[[2]int{e.Row, e.Column}] = e.Text
	}
	was, is := cellsAt(t, before), cellsAt(t, after)
	if len(was) != len(is) {
		t.Fatalf("%d cells before, %d after", len(was), len(is))
	}
	var x, y int64
	for i := range was {
		a, b := was[i], is[i]
		if a.row != b.row || a.column != b.column || !bytes.Equal(before[x:a.Start], after[y:b.Start]) {
			t.Fatalf("before cell %d of row %d the bytes are %q, were %q", a.column, a.row, after[y:b.Start], before[x:a.Start])
		}
		if to, ok := edited[[2]int{a.row, a.column}]; ok {
			if b.Text != to {
				t.Fatalf("cell %d of row %d reads %q, not %q", a.column, a.row, b.Text, to)
			}
		} else if !bytes.Equal(before[a.Start:a.End], after[b.Start:b.End]) {
			t.Fatalf("cell %d of row %d was changed to %q", a.column, a.row, after[b.Start:b.End])
		}
		x, y = a.End, b.End
	}
	if !bytes.Equal(before[x:], after[y:]) {
		t.Fatalf("the end of the file is %q, was %q", after[y:], before[x:])
	}
}

type cellAt struct {
	row, column int
	table.Cell
}

func cellsAt(t testing.TB, src []byte) []cellAt {
	t.Helper()
	tab, err := table.Open(table.Bytes("trip.csv", src), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var all []cellAt
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range row.Cells {
			all = append(all, cellAt{row.N, i, c})
		}
	}
	return all
}

// What has one reading, and what has not.
func TestSpaced(t *testing.T) {
	for _, c := range []struct{ term, cell, want, rule string }{
		{"locality", "Valdoura,  dunes", "Valdoura, dunes", spacesDoubled},
		{"locality", " Valdoura,    dunes  ", "Valdoura, dunes", spacesDoubled},
		{"locality", " Valdoura ", "Valdoura", spacesOutside},
		{"locality", "\u00a0Valdoura\u00a0 a", "Valdoura\u00a0 a", spacesOutside},
		{"locality", "Valdoura", "Valdoura", spacesOutside},
		{"locality", "   ", "   ", ""},
		{"habitat", "dunes:\n  a\n  b", "dunes:\n  a\n  b", spacesOutside},
		{"verbatimLocality", "Valdoura,  dunes ", "Valdoura,  dunes", spacesOutside},
		{"permits", "Licence  7", "Licence  7", spacesOutside},
		{"recordNumber", "A  7", "A  7", spacesOutside},
		{"my column", "a  b", "a  b", spacesOutside},
		{"recordedBy", "I. Almeida  |  J. Prates", "I. Almeida | J. Prates", spacesDoubled},
	} {
		if got, rule := spaced(c.term, c.cell); got != c.want || rule != c.rule {
			t.Errorf("%s %q: %q by %s, want %q by %s", c.term, c.cell, got, rule, c.want, c.rule)
		}
	}
}

// Dates in figures tell how others of their column are to be read; whoever says
// how they are written has them all mended. A date against which the row speaks
// stays as it was typed.
func TestMendDates(t *testing.T) {
	const head = "recordedBy,recordNumber,eventDate,year,dateIdentified\n"
	for _, c := range []struct {
		name, dates, rows, want string
		figures                 int
	}{
		{"no doubt", "", "A,1,13/4/2026,,\nA,2,14.V.2026,,15/4/2026\n", "A,1,2026-04-13,,\nA,2,2026-05-14,,2026-04-15\n", 0},
		{"doubt", "", "A,1,13/4/2026,,\nA,2,3/4/2026,,15/4/2026\nA,3,14 May 2026,,\n", "A,1,13/4/2026,,\nA,2,3/4/2026,,2026-04-15\nA,3,2026-05-14,,\n", 1},
		{"said", "day first", "A,1,13/4/2026,,\nA,2,3/4/2026,,4/5/2026\n", "A,1,2026-04-13,,\nA,2,2026-04-03,,2026-05-04\n", 0},
		{"century", "day first, 1900s", "A,1,13/4/26,,\nA,2,14 May 26,,\nA,3,spring 26,,\n", "A,1,1926-04-13,,\nA,2,1926-05-14,,\nA,3,spring 26,,\n", 0},
		{"contradicted", "day first", "A,1,14 May 2026,2025,\nA,2,3/4/2026,2025,\nA,3,1902-04-00,1902,\n", "A,1,14 May 2026,2025,\nA,2,3/4/2026,2025,\nA,3,1902-04,1902,\n", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC), Dates: c.dates})
			if err != nil {
				t.Fatal(err)
			}
			tab, err := table.Open(table.Bytes("trip.csv", []byte(head+c.rows)), table.Options{})
			if err != nil {
				t.Fatal(err)
			}
			m, err := j.Repairs(&Table{Table: tab}, func(Repair) error { return nil })
			if err != nil || m.Figures != c.figures {
				t.Errorf("%d dates stay, %v; want %d", m.Figures, err, c.figures)
			}
			if got, _ := mended(t, j, "trip.csv", []byte(head+c.rows)); string(got) != head+c.want {
				t.Errorf("mended\n%swant\n%s", got, head+c.want)
			}
			mendTwice(t, j, []byte(head+c.rows))
		})
	}
	// The language of the headings and full stops say it too.
	const czech = "Sběratel;Číslo sběru;Datum sběru\n"
	j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := mended(t, j, "trip.csv", []byte(czech+"A;1;13.4.2026\nA;2;3.4.2026\n")); string(got) != czech+"A;1;2026-04-13\nA;2;2026-04-03\n" {
		t.Errorf("mended\n%s", got)
	}
}

// FuzzMend holds that mending twice is mending once, and that every byte
// outside the repaired cells stays, on tables of any bytes.
func FuzzMend(f *testing.F) {
	j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		f.Fatal(err)
	}
	heading := "countryCode,eventDate,dateIdentified,month,day,typeStatus,sex,license,taxonRank,decimalLatitude,decimalLongitude,geodeticDatum,locality,verbatimLocality,basisOfRecord,establishmentMeans,lat\n"
	for _, s := range []string{
		heading + "Portugal, 2026/06/02,2.vi.2026,VI,2nd,holo-,m,cc by 4.0,var.,95.2, -8.1 ,wgs 84,\" a  b \",a  b,preserved specimen,wild, 4 \n",
		heading + "\"pt\",\"2026/06/02 \",,,,\"isotypus  of x\",,,,,,,\"a\"\"  b\"\r\n",
		"locality;country\r\n a  b ;Spain\r\n\r\nc;d;e\r\n",
		"\ufefflocality\tsex\na  b\tMALE \n", "\xff\xfel\x00o\x00c\x00a\x00l\x00i\x00t\x00y\x00\n\x00a\x00 \x00 \x00b\x00",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) { mendTwice(t, j, src) })
}

// mendTwice mends what can be read as a table, and mends it again.
func mendTwice(t *testing.T, j *Job, src []byte) int {
	t.Helper()
	tab, err := table.Open(table.Bytes("trip.csv", src), table.Options{})
	if err != nil {
		return 0
	}
	for _, err := range tab.Rows() {
		if err != nil {
			return 0
		}
	}
	once, first := mended(t, j, "trip.csv", src)
	twice, n := mended(t, j, "trip.csv", once)
	if n != 0 || !bytes.Equal(once, twice) {
		t.Errorf("%q becomes %q and then %q", src, once, twice)
	}
	return first
}

// TestMendRandom is FuzzMend on tables of cells that are hard to mend.
func TestMendRandom(t *testing.T) {
	j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	headings := strings.Fields("countryCode eventDate dateIdentified month day year typeStatus sex license taxonRank basisOfRecord establishmentMeans degreeOfEstablishment pathway type occurrenceStatus locality verbatimLocality lat altitude geodeticDatum decimalLatitude x")
	texts := []string{"Portugal", "pt", "PRT", " PT", "2026/06/02", "2.vi.2026", "2 June  2026", "13/4/2026", "3/4/2026", "1999-06-18 00:00:00.0", "2026-6-2 / 2026-6-5", "VI", "june", "2nd", "02",
		"holo", "isotypus  of x", "Holotype of A|paratype  of B", "m", "MALE ", "cc by 4.0", "CC-BY", "http://creativecommons.org/licenses/by/4.0", "ssp.", "preserved  specimen", "wild", "Native",
		"a  b", " a \u00a0 b", "\u2003a", "a\n  b", "\"q\"  x", "41.2, -8.61", "38°42'N", " 38.5 ", "4000 ft", "", "  ", "NA", "\ufffd", "é  è", "a;b,c\td", "'", "`"}
	rnd := rand.New(rand.NewPCG(7, 7))
	pick := func(list []string) string { return list[rnd.IntN(len(list))] }
	mended := 0
	for range 800 {
		comma, eol := pick([]string{",", ";", "\t"}), pick([]string{"\n", "\r\n"})
		var b strings.Builder
		b.WriteString(pick([]string{"", "\ufeff"}))
		columns := rnd.Perm(len(headings))[:2+rnd.IntN(5)]
		for i, c := range columns {
			b.WriteString(strings.Repeat(comma, min(i, 1)) + headings[c])
		}
		for range 1 + rnd.IntN(4) {
			b.WriteString(eol)
			for i := range columns {
				cell := pick(texts) + pick([]string{"", "", " ", " " + pick(texts)})
				if strings.ContainsAny(cell, "\"\n,;\t") || rnd.IntN(4) == 0 {
					cell = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
				}
				b.WriteString(strings.Repeat(comma, min(i, 1)) + cell)
			}
		}
		if n := mendTwice(t, j, []byte(b.String()+pick([]string{"", eol}))); n > 0 {
			mended++
		}
	}
	if mended < 300 {
		t.Errorf("only %d tables had anything to mend", mended)
	}
}

// TestMendTwice holds that a mended table has nothing left to mend, and that a
// table with nothing to mend stays the same bytes.
func TestMendTwice(t *testing.T) {
	j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	ex := filepath.Join(outside.Root(t), "examples")
	for _, path := range []string{filepath.Join(ex, "trip.csv"), filepath.Join(ex, "trip-broken.csv"), outside.Shared(t, "real/taurus-plants.csv")} {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		once, n := mended(t, j, path, src)
		if n == 0 && !bytes.Equal(once, src) {
			t.Errorf("%s: nothing was repaired, but the bytes differ", path)
		}
		twice, m := mended(t, j, path, once)
		if m != 0 || !bytes.Equal(twice, once) {
			t.Errorf("%s: mended again %d cells change", path, m)
		}
		t.Logf("%s: %d repairs", path, n)
	}
}
