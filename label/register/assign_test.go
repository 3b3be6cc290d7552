package register

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"cornerslip/label"
)

// sp writes a specimen in short: "collector|number|part|date|occurrenceID|catalogNumber|shared".
func sp(text string) Specimen {
	f := append(strings.Split(text, "|"), make([]string, 7)...)
	return Specimen{Collector: f[0], Number: f[1], Part: f[2], Date: f[3], OccurrenceID: f[4], CatalogNumber: f[5], Shared: f[6] != ""}
}

// told writes an answer in short: "7+" for a fresh number, "7" for a known
// one, "7~" for one that differs, "=text" for a foreign one, else the error.
func told(t testing.TB, r *Register, a Assignment) string {
	t.Helper()
	for kind, word := range map[error]string{ErrNeedsIdentifier: "needs", ErrAmbiguous: "ambiguous", ErrClash: "clash", ErrVoid: "void", ErrNotIssued: "never"} {
		if errors.Is(a.Err, kind) {
			return word
		}
	}
	switch {
	case a.Err != nil:
		return "bad"
	case a.Foreign:
		return "=" + a.Number
	}
	_, n, err := r.read(t.Context()).parse(a.Number)
	must(t, err)
	text := fmt.Sprint(n)
	if a.Fresh {
		text += "+"
	}
	if a.Differs != "" {
		text += "~"
	}
	return text
}

func assign(t testing.TB, r *Register, specimens ...Specimen) []Assignment {
	t.Helper()
	for i := range specimens {
		specimens[i].Origin = label.Origin{File: "trip.csv", Line: i + 2, Row: i + 1}
	}
	got, err := r.Assign(t.Context(), registrar(""), "VDOURA", specimens, true)
	must(t, err)
	return got
}

// TestAssign runs table after table through one register: what an answer is
// depends on what the register was told before.
func TestAssign(t *testing.T) {
	const uuid1, uuid2, uuid3 = "urn:uuid:6b1e2c9a-0000-4000-8000-000000000001", "urn:uuid:6b1e2c9a-0000-4000-8000-000000000002", "urn:uuid:6b1e2c9a-0000-4000-8000-000000000003"
	type table struct {
		name string
		rows []string // specimen, two spaces, answer
	}
	for _, tc := range []struct {
		name   string
		tables []table
	}{
		{"a trip twice", []table{
			{"first", []string{"I. Almeida|214||2026-06-14  1+", "I. Almeida|215||2026-06-14  2+", "J. Moura|214||2026-06-14  3+"}},
			{"again, in another order and with a row more", []string{"J. Moura|214||2026-06-14  3", "I. Almeida|216||2026-06-14  4+", "I. Almeida|214||2026-06-14  1", "I. Almeida|215||2026-06-14  2"}},
			{"written by another hand", []string{"Almeida, I.|214||2026-06-14  1", "ALMEIDA I|215||  2", "I.  Almeida|no. 216  5+"}},
			{"with the numbers filled in", []string{"I. Almeida|214|||| VDOURA-0000001  1", "I. Almeida|215||||vdoura 2  2"}},
		}},
		{"by occurrenceID", []table{
			{"first", []string{"|||" + "|" + uuid1 + "  1+", "I. Almeida|s.n.|||" + uuid2 + "  2+", "I. Almeida|7|||" + uuid3 + "  3+"}},
			{"again", []string{"I. Almeida|7|||" + uuid3 + "  3", "I. Almeida|s.n.|||" + uuid2 + "  2", "|||" + "|" + uuid1 + "  1"}},
			{"a corrected word", []string{"I. Almeida|8|||" + uuid3 + "  3~"}},
			{"without it", []string{"I. Almeida|7  3", "I. Almeida|s.n.  needs"}},
		}},
		{"an identifier comes later", []table{
			{"first", []string{"I. Almeida|7||2026-06-14  1+"}},
			{"then", []string{"I. Almeida|7||2026-06-14|" + uuid1 + "  1"}},
			{"and then alone", []string{"|||" + "|" + uuid1 + "  1"}},
			{"and a second one", []string{"I. Almeida|7||2026-06-14|" + uuid2 + "  2+"}},
			{"now the gathering alone says too little", []string{"I. Almeida|7||2026-06-14  ambiguous"}},
		}},
		{"two identifiers come later", []table{
			{"first", []string{"I. Almeida|7||2026-06-14  1+"}},
			{"then", []string{"I. Almeida|7||2026-06-14|" + uuid1 + "  ambiguous", "I. Almeida|7||2026-06-14|" + uuid2 + "  ambiguous"}},
			{"then the right one's number is written", []string{"I. Almeida|7||2026-06-14|" + uuid1 + "  2+", "I. Almeida|7||2026-06-14|" + uuid2 + "|VDOURA-0000001  1"}},
		}},
		{"blank and s.n.", []table{{"each asks", func() []string {
			var rows []string
			for _, number := range []string{"", "-", "s.n.", "S.N.", "s.n", "sn", "S/N", "s. n.", "s.n°", "s/nº", "sin número", "sin n.º", "sem número", "sem n.º", "s. núm.", "sans numéro", "sans n°",
				"senza numero", "ohne Nummer", "o. Nr.", "sine numero", "no number", "unnumbered", "without number", "n/a", "NA", "?", "0", "000", "none", "unknown", "[s.n.]", "(s. n.)", "—"} {
				rows = append(rows, "I. Almeida|"+number+"  needs")
			}
			for _, who := range []string{"", "s.coll.", "s. coll.", "Anon.", "anonymous", "unknown", "sine collectore", "Anónimo", "-", "unbekannt", "N/A"} {
				rows = append(rows, who+"|214  needs")
			}
			return rows
		}()}, {"these do not", []string{"I. Almeida|1  1+", "I. Almeida|01  2+", "I. Almeida|SN1  3+", "I. Almeida|10  4+", "S. N. Costa|1  5+", "I. Almeida|bis  6+"}}}},
		{"numbers that look alike", []table{
			{"first", []string{"I. Almeida|97-12  1+", "I. Almeida|9712  2+", "I. Almeida|97/12  ambiguous", "I. Almeida|214a  3+", "I. Almeida|214  4+", "I. Almeida|214 A  5+"}},
			{"again", []string{"I. Almeida|97/12  1", "I. Almeida|214A  3", "Í. Almeída|214-a  5"}},
		}},
		{"parts", []table{
			{"first", []string{"I. Almeida|214|Sheet 1 of 2  1+", "I. Almeida|214|Sheet 2 of 2  2+", "I. Almeida|214|packet  3+"}},
			{"again", []string{"I. Almeida|214|packet  3", "I. Almeida|214|sheet 2 of 2  2", "I. Almeida|214  4+"}},
		}},
		{"kept as one specimen", []table{
			{"first", []string{"I. Almeida|214|||||shared  1+", "I. Almeida|215  2+", "I. Almeida|214|||||shared  1+"}},
			{"again", []string{"I. Almeida|214|||||shared  1", "I. Almeida|214|||||shared  1"}},
			{"one of the two has an identifier", []string{"I. Almeida|214|||||shared  1", "I. Almeida|214|||" + uuid1 + "||shared  1"}},
			{"each has another", []string{"I. Almeida|300|||" + uuid2 + "||shared  3+", "I. Almeida|300|||" + uuid3 + "||shared  ambiguous"}},
			{"only one of them says so", []string{"I. Almeida|400|||||shared  4+", "I. Almeida|400  ambiguous"}},
			{"none says so", []string{"I. Almeida|500  5+", "I. Almeida|500  ambiguous", "I. Almeida|500  ambiguous"}},
			{"of two days", []string{"I. Almeida|600||2026-06-14|||shared  6+", "I. Almeida|600||2026-06-15|||shared  ambiguous"}},
		}},
		{"one identifier on two rows", []table{
			{"first", []string{"I. Almeida|1|||" + uuid1 + "  1+", "I. Almeida|2|||" + uuid1 + "  clash"}},
			{"again", []string{"I. Almeida|1|||" + uuid1 + "  1", "I. Almeida|2|||" + uuid1 + "  clash"}},
			{"without numbers", []string{"I. Almeida|s.n.||2026-06-14|" + uuid2 + "  2+", "J. Moura|s.n.||2026-06-14|" + uuid2 + "  clash", "I. Almeida|s.n.||2026-06-15|" + uuid2 + "  clash"}},
			{"two sheets of one", []string{"I. Almeida|3|1/2||" + uuid3 + "  3+", "I. Almeida|3|2/2||" + uuid3 + "  3+"}},
			{"two sheets of one again", []string{"I. Almeida|3|1/2||" + uuid3 + "  3", "I. Almeida|3|2/2||" + uuid3 + "  3"}},
		}},
		{"a collector begins again each year", []table{
			{"first", []string{"I. Almeida|1||2025-04-02  1+"}},
			{"the year after", []string{"I. Almeida|1||2026-04-02  ambiguous", "I. Almeida|1||2026-04-02|" + uuid1 + "  2+"}},
			{"without a date", []string{"I. Almeida|9  3+"}},
			{"the date is learned", []string{"I. Almeida|9||2025-04-02  3"}},
			{"and tells the next year's", []string{"I. Almeida|9||2026-04-02  ambiguous"}},
		}},
		{"numbers that are there", []table{
			{"first", []string{"I. Almeida|1  1+", "I. Almeida|2  2+", "I. Almeida|3|||" + uuid3 + "  3+"}},
			{"foreign ones", []string{"I. Almeida|4||||LISU 12  =LISU 12", "I. Almeida|5||||12  =12", "I. Almeida|6||||MA-00012-2  =MA-00012-2"}},
			{"bad ones", []string{"I. Almeida|4||||VDOURA-00000012  bad", "I. Almeida|4||||VDOURA-0000000  bad", "I. Almeida|4||||VDOURA-0000099  never", "I. Almeida|4||||VDOURA  bad"}},
			{"in the wrong row", []string{"I. Almeida|2||||VDOURA-0000001  1~", "I. Almeida|3|||" + uuid3 + "|VDOURA-0000001  clash", "I. Almeida|s.n.|||" + uuid1 + "|VDOURA-0000003  3~"}},
			{"two rows", []string{"I. Almeida|2||||VDOURA-0000002  2", "I. Almeida|9||||VDOURA-0000002  2~", "I. Almeida|s.n.||2026-06-14|" + uuid1 + "  4+"}},
			{"without collectors' numbers", []string{"I. Almeida|s.n.|||" + uuid2 + "|VDOURA-0000004  4~", "J. Moura|s.n.||||VDOURA-0000004  4~", "J. Moura|8||||VDOURA-0000004  4~",
				"I. Almeida|||2026-06-15||VDOURA-0000004  4~", "J. Moura|s.n.||||VDOURA-0000001  1~", "|||||VDOURA-0000004  4", "I. Almeida|s.n.|||" + uuid1 + "|VDOURA-0000004  4"}},
			{"a number found for it later", []string{"I. Almeida|88||2026-06-14|" + uuid1 + "  4"}},
			{"a row without its number", []string{"I. Almeida|2||||VDOURA-0000002  2", "I. Almeida|2  ambiguous"}},
		}},
		{"long texts", []table{
			{"first", []string{strings.Repeat("Á. Nogueira; ", 90) + "|1  1+", strings.Repeat("Á. Nogueira; ", 90) + "B. Reis|1  2+", "I. Almeida|1|||" + strings.Repeat("x", 4000) + "  3+"}},
			{"again", []string{"I. Almeida|1|||" + strings.Repeat("x", 4000) + "  3", strings.Repeat("A. Nogueira; ", 90) + "B. Reis|1  2"}},
		}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			each(t, func(t *testing.T, p place) {
				r := p.create(t)
				for _, table := range tc.tables {
					var specimens []Specimen
					var want []string
					for _, row := range table.rows {
						i := strings.LastIndex(row, "  ")
						text, answer := row[:i], row[i+2:]
						specimens, want = append(specimens, sp(text)), append(want, answer)
					}
					for i, a := range assign(t, r, specimens...) {
						if got := told(t, r, a); got != want[i] {
							t.Errorf("%s: row %d, %s: %s, want %s (%v %s)", table.name, i+1, specimens[i], got, want[i], a.Err, a.Differs)
						}
						if a.Err != nil {
							refused(t, a.Err, nil, fmt.Sprintf("trip.csv:%d", i+2))
						}
					}
				}
				whole(t, r)
			})
		})
	}
}

func TestAssignAllOrNone(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		rows := []Specimen{sp("I. Almeida|1"), sp("I. Almeida|s.n."), sp("|3"), sp("I. Almeida|4")}
		got, err := r.Assign(t.Context(), registrar(""), "", rows, false)
		refused(t, err, ErrNeedsIdentifier, "I. Almeida s.n.", "s.coll. 3", "occurrenceID")
		for i, a := range got {
			if a.Number != "" || a.Fresh || (a.Err != nil) != (i == 1 || i == 2) {
				t.Errorf("row %d of a refused table: %+v", i, a)
			}
		}
		if got := states(t, r); got != "" {
			t.Errorf("a refused table issued numbers: %s", got)
		}
		got, err = r.Assign(t.Context(), registrar("trip.csv"), "", rows, true)
		must(t, err)
		if got[0].Number != "VDOURA-0000001" || got[3].Number != "VDOURA-0000002" || got[0].State != Issued {
			t.Errorf("the good rows: %+v", got)
		}
		row, err := r.Number(t.Context(), "VDOURA-0000002")
		must(t, err)
		if row.Specimen.Number != "4" || row.Specimen.CatalogNumber != "VDOURA-0000002" || row.Why != "trip.csv" {
			t.Errorf("what the register knows of it: %+v", row)
		}
		if got, err := r.Assign(t.Context(), registrar(""), "", nil, false); err != nil || len(got) != 0 {
			t.Errorf("no rows: %v, %v", got, err)
		}
		_, err = r.Assign(t.Context(), registrar(""), "LISU", rows, true)
		refused(t, err, ErrNoSeries, "LISU")
		for _, bad := range []string{"I. Almeida\x00|77", "I. Almeida|77||2026\xff", "I. Almeida|1|||\xf0\x28"} {
			_, err = r.Assign(t.Context(), registrar(""), "", []Specimen{sp(bad)}, true)
			refused(t, err, nil, "not text")
		}
		whole(t, r)
	})
}

func TestAssignVoidAndUnknown(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.empty(t)
		_, err := r.AddSeries(t.Context(), registrar(""), pattern(t, "VDOURA-0000000"), 11)
		must(t, err)
		assign(t, r, sp("I. Almeida|1"), sp("I. Almeida|2||| x"), sp("I. Almeida|3"))
		mark(t, r, Void, 11, 12)
		mark(t, r, Lost, 13, 13)
		got := assign(t, r, sp("I. Almeida|1"), sp("I. Almeida|2||| x"), sp("I. Almeida|3"), sp("I. Almeida|4||||VDOURA-0000011"), sp("I. Almeida|5||||VDOURA-0000003"))
		for i, want := range []string{"14+", "15+", "13", "void", "3"} {
			if told(t, r, got[i]) != want {
				t.Errorf("row %d: %+v, want %s", i, got[i], want)
			}
		}
		if got[2].State != Lost || got[4].State != Unknown {
			t.Errorf("states: %+v", got)
		}
		refused(t, got[3].Err, ErrVoid, "empty the cell")
		whole(t, r)
	})
}

// TestAssignProperties gives a register random tables, each twice, and holds
// what must be true whatever they say.
func TestAssignProperties(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		rounds := 40
		if p.name == "PostgreSQL" {
			rounds = 8
		}
		for seed := range uint64(rounds) {
			checkAssignments(t, p.create(t), rand.New(rand.NewPCG(seed, 6)))
		}
	})
}

func checkAssignments(t *testing.T, r *Register, rnd *rand.Rand) {
	pick := func(words ...string) string { return words[rnd.IntN(len(words))] }
	owner := map[string]string{} // occurrenceID to number
	highest := 0
	for range 4 {
		rows := make([]Specimen, 1+rnd.IntN(12))
		for i := range rows {
			rows[i] = Specimen{Collector: pick("I. Almeida", "Almeida, I.", "J. Moura", ""), Number: pick("1", "2", "3", "s.n.", ""), Part: pick("", "", "", "a"),
				Date: pick("", "2026-06-14", "2026-06-15"), OccurrenceID: pick("", "", "id1", "id2", "id3", "id4", "id5"), Shared: rnd.IntN(4) == 0,
				CatalogNumber: pick("", "", "", "", "LISU 1")}
			if highest >= 3 && rnd.IntN(4) == 0 { // one not yet issued may be by the second time
				rows[i].CatalogNumber = pick("VDOURA-0000001", "vdoura 3")
			}
		}
		first := assign(t, r, rows...)
		second := assign(t, r, rows...)
		holder := map[string]int{} // number to a row that came without one
		for i, a := range first {
			b := second[i]
			if a.Number != b.Number || b.Fresh || (a.Err == nil) != (b.Err == nil) {
				t.Fatalf("row %d of %+v: first %+v, then %+v", i, rows, a, b)
			}
			if a.Err != nil || a.Foreign {
				continue
			}
			if a.Fresh {
				_, n, err := r.read(t.Context()).parse(a.Number)
				must(t, err)
				if n > highest+1 {
					t.Fatalf("number %d issued after %d", n, highest)
				}
				highest = max(highest, n)
			}
			if rows[i].CatalogNumber != "" {
				continue
			}
			if id := rows[i].OccurrenceID; id != "" {
				if owner[id] != "" && owner[id] != a.Number {
					t.Fatalf("%s had %s and has %s", id, owner[id], a.Number)
				}
				owner[id] = a.Number
			}
			if j, ok := holder[a.Number]; ok {
				x, y := rows[i], rows[j]
				if !(x.OccurrenceID != "" && x.OccurrenceID == y.OccurrenceID) && !(x.Shared && y.Shared) {
					t.Fatalf("%s for row %d and row %d of %+v", a.Number, j, i, rows)
				}
				if !agree(x.Date, y.Date) {
					t.Fatalf("%s for two days: row %d and row %d of %+v", a.Number, j, i, rows)
				}
			}
			holder[a.Number] = i
		}
	}
	whole(t, r)
}
