package register

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cornerslip/label/accession"
)

// TestVersion1 opens a register that the first version wrote and finds in it
// all that was put in: the file testdata/version-1.db, the same as statements
// for a server in version-1.sql, and in version-1.txt what it shows.
//
// The three were made once by this test with UPDATE=1, from example. With
// UPDATE=1 it makes those that are missing and touches none that is there:
// they stand for registers that lie in herbaria.
func TestVersion1(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		golden := filepath.Join("testdata", "version-1.txt")
		fixture := filepath.Join("testdata", map[string]string{"SQLite": "version-1.db", "PostgreSQL": "version-1.sql"}[p.name])
		if os.Getenv("UPDATE") == "1" {
			makeFixture(t, p, fixture, golden)
		}
		address := p.fresh()
		data, err := os.ReadFile(fixture)
		must(t, err)
		if p.name == "SQLite" {
			must(t, os.WriteFile(address, data, 0o666))
		} else {
			raw, err := dial(t.Context(), address, Options{}, true)
			must(t, err)
			path := address[strings.Index(address, "=")+1:]
			_, err = raw.db.ExecContext(t.Context(), "CREATE SCHEMA "+path+";\n"+string(data))
			must(t, err)
			must(t, raw.Close())
		}
		r, err := Open(t.Context(), address, Options{Upgrade: registrar("")})
		must(t, err)
		defer r.Close()
		want, err := os.ReadFile(golden)
		must(t, err)
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(show(t, r), "\n")); diff != "" {
			t.Errorf("a register of version 1 shows (-want +got):\n%s", diff)
		}
		whole(t, r)
		// And it goes on.
		again := assign(t, r, sp("I. Almeida|214||2026-06-14"), sp("J. Moura|s.n.||2026-06-15|urn:uuid:6b1e2c9a-0000-4000-8000-000000000001"), sp("I. Almeida|300"))
		for i, want := range []string{"101", "102", "2002+"} {
			if got := told(t, r, again[i]); got != want {
				t.Errorf("assigned again, row %d: %s, want %s", i, got, want)
			}
		}
		printOne(t, r, sheet("VDOURA-0002002", "I. Almeida", "300", "Iris boissieri Henriq."))
		if found, err := r.Find(t.Context(), "iris boiss", 0); err != nil || len(found) != 3 {
			t.Errorf("found %v, %v", found, err)
		}
		whole(t, r)
	})
}

func makeFixture(t *testing.T, p place, fixture, golden string) {
	missing := func(path string) bool {
		_, err := os.Stat(path)
		return errors.Is(err, os.ErrNotExist)
	}
	if !missing(fixture) && !missing(golden) {
		return
	}
	r := p.empty(t)
	example(t, r)
	if missing(fixture) {
		if p.name == "SQLite" {
			must(t, r.copyTo(t.Context(), fixture, false))
		} else {
			must(t, os.WriteFile(fixture, []byte(schemas(postgres)[0]+"\n"+dump(t, r)), 0o666))
		}
	}
	if missing(golden) {
		must(t, os.WriteFile(golden, []byte(show(t, r)), 0o666))
	}
}

// example puts something into every table.
func example(t *testing.T, r *Register) {
	ctx := t.Context()
	_, err := r.AddSeries(ctx, registrar("the old book ends with 100"), pattern(t, "VDOURA-0000000"), 101)
	must(t, err)
	addSeries(t, r, "VDB 00000 MOD 37,36")
	assign(t, r, sp("I. Almeida|214||2026-06-14"), sp("J. Moura|s.n.||2026-06-15|urn:uuid:6b1e2c9a-0000-4000-8000-000000000001"), sp("Ιωάννης Παπάς|97-12|Sheet 1 of 2||id3"))
	for _, count := range []int{1, 20} {
		_, err = r.Issue(ctx, registrar("stickers"), "VDOURA", count)
		must(t, err)
	}
	_, err = r.Issue(ctx, registrar(""), "VDB", 3)
	must(t, err)
	s := sp("M. Böhm|12||1931")
	s.Name = "Iris boissieri Henriq."
	for _, state := range []State{Attached, Void, Deaccessioned, Transferred, Lost, HeldElsewhere} {
		s.CatalogNumber, s.Number = fmt.Sprintf("VDOURA-%07d", 7+len(state)), fmt.Sprint(len(state))
		importAll(t, r, ImportOptions{}, Old{Specimen: s, State: state})
	}
	first := sheet("VDOURA-0000101", "I. Almeida & J. Moura", "214", "Iris boissieri Henriq.")
	first.Box = []byte{0, 1, 2, 250, 255, '\''}
	gift := sheet("", "I. Almeida & J. Moura", "214", "Iris boissieri Henriq.")
	gift.Kind, gift.For, gift.Label, gift.Of, gift.Part = "packet", "PINHEL", 2, 2, "Sheet 1 of 2"
	printOne(t, r, first, gift, sheet("LISU 77", "Ιωάννης Παπάς", "97-12", "×Sorbopyrus auricularis (Knoop) C.K.Schneid."))
	must(t, r.Reprinted(ctx, registrar("torn"), 1))
	broken, err := r.Record(ctx, registrar(""), Run{Program: "cornerslip 1.0.0", Source: "broken off.csv"})
	must(t, err)
	must(t, broken.Add(ctx, sheet("VDOURA-0000104", "I. Almeida", "999", "")))
	must(t, broken.flush(ctx))
	must(t, r.Mark(ctx, registrar("it's spoiled"), Void, Range{Series: "VDOURA", First: 110, Last: 110}, Range{Series: "VDOURA", First: 112, Last: 113}))
	must(t, r.Mark(ctx, registrar("not in its place"), Lost, Range{Series: "VDOURA", First: 111, Last: 111}, Range{Series: "VDB", First: 2, Last: 2}))
	must(t, r.Attach(ctx, registrar(""), Pair{sp("I. Almeida|214"), "VDOURA-0000101"}))
	_, err = r.MoveUp(ctx, registrar("restored from a backup"), "VDOURA-0002000")
	must(t, err)
	_, err = r.Issue(ctx, registrar(""), "VDOURA", 1)
	must(t, err)
	whole(t, r)
}

// show writes out all that a register tells.
func show(t testing.TB, r *Register) string {
	t.Helper()
	var b strings.Builder
	all, err := r.Series(t.Context())
	must(t, err)
	for _, s := range all {
		fmt.Fprintf(&b, "series %s: %s, highest %d\n", s.Name, s.Pattern, s.Highest)
	}
	for row, err := range r.List(t.Context(), Filter{}) {
		must(t, err)
		fmt.Fprintf(&b, "%s: %s, %s by %s %q", row.Range, row.State, row.When.Format(stampLayout), row.By, row.Why)
		if row.Specimen != (Specimen{}) {
			fmt.Fprintf(&b, ", %s %+q", row.Specimen, []string{row.Specimen.OccurrenceID, row.Specimen.CatalogNumber, row.Specimen.Part, row.Specimen.Date, row.Specimen.Name})
		}
		b.WriteByte('\n')
	}
	for e, err := range r.History(t.Context(), "") {
		must(t, err)
		if e.What == Upgraded {
			continue
		}
		fmt.Fprintf(&b, "event %d: %s %s by %s %q, state %q, label %d", e.ID, e.When.Format(stampLayout), e.What, e.By, e.Why, e.State, e.Label)
		if e.Range != (Range{}) {
			fmt.Fprintf(&b, ", %s", e.Range)
		}
		b.WriteByte('\n')
	}
	for _, text := range []string{"VDOURA-0000101", "Almeida 214", "Almeida 999", "iris boiss", "παπας", "LISU 77"} {
		found, err := r.Find(t.Context(), text, 0)
		must(t, err)
		fmt.Fprintf(&b, "find %s:", text)
		for _, k := range found {
			fmt.Fprintf(&b, " %d", k.ID)
		}
		b.WriteByte('\n')
	}
	for id := 1; ; id++ {
		k, err := r.Load(t.Context(), id)
		if errors.Is(err, ErrNoLabel) {
			return b.String()
		}
		must(t, err)
		fmt.Fprintf(&b, "label %d: %s %q for %q, %d of %d, %q %q %q %q %q, %x %x %x, %s by %s, %q, reprinted %d\n", k.ID, k.Kind, k.Part, k.For, k.Label.Label, k.Of,
			k.CatalogNumber, k.Collector, k.Number, k.Name, k.Date, k.Record, k.Cells, k.Box, k.When.Format(stampLayout), k.By, []string{k.Run.Program, k.Run.Source, k.Run.House}, k.Reprinted)
	}
}

// later is how a program of a next version would know its registers.
func later(step string) func(dialect) []string {
	return func(d dialect) []string { return append(schemas(d), step) }
}

const nextStep = "CREATE TABLE loans (number BIGINT NOT NULL PRIMARY KEY); INSERT INTO loans (number) SELECT number FROM numbers; CREATE INDEX loans_number ON loans (number)"

func TestUpgrade(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 5)
		before := dump(t, r)
		for _, o := range []Options{{}, {ReadOnly: true}, {ReadOnly: true, Upgrade: registrar("")}} {
			_, err := open(t.Context(), r.full(), o, later(nextStep))
			refused(t, err, ErrOlder, "version 1", "writes version 2", "older programs cannot open it")
		}
		_, err := open(t.Context(), r.full(), Options{Upgrade: At{When: moment}}, later(nextStep))
		refused(t, err, nil, "name of the person")
		// A step that fails leaves everything as it was.
		_, err = open(t.Context(), r.full(), Options{Upgrade: registrar("")}, later("CREATE TABLE loans (number BIGINT); UPDATE series SET highest = 9; INSERT INTO nowhere VALUES (1)"))
		refused(t, err, nil, "nowhere")
		if after := dump(t, r); after != before {
			t.Errorf("an upgrade that failed has changed the register:\n%s", cmp.Diff(before, after))
		}
		if _, err := r.db.ExecContext(t.Context(), "SELECT * FROM loans"); err == nil {
			t.Error("an upgrade that failed has left a table")
		}
		next, err := open(t.Context(), r.full(), Options{Upgrade: registrar("new program")}, later(nextStep))
		must(t, err)
		defer next.Close()
		if next.Version() != 2 {
			t.Errorf("version %d", next.Version())
		}
		if got := history(t, next, ""); !strings.HasSuffix(got, "\n4 upgraded: from version 1 to 2") {
			t.Errorf("history: %s", got)
		}
		if got := issue(t, next, 1); got.First != 6 {
			t.Errorf("issued after the upgrade: %s", got)
		}
		whole(t, next)
		// Older programs: one that has it open, and one that comes.
		_, err = r.Issue(t.Context(), registrar(""), "", 1)
		refused(t, err, ErrNewer, "version 2")
		_, err = Open(t.Context(), r.full(), Options{})
		refused(t, err, ErrNewer, "install")
		again, err := open(t.Context(), r.full(), Options{}, later(nextStep))
		must(t, err)
		again.Close()
		// A new register of the next version is made in the same steps.
		fresh, err := create(t.Context(), p.fresh(), registrar(""), Options{}, later(nextStep))
		must(t, err)
		defer fresh.Close()
		if fresh.Version() != 2 || history(t, fresh, "") != "1 created" {
			t.Errorf("a new register: version %d", fresh.Version())
		}
		if p.name != "SQLite" {
			return
		}
		// The copy from before.
		kept, err := Open(t.Context(), r.path+".version-1", Options{})
		must(t, err)
		defer kept.Close()
		if after := dump(t, kept); after != before {
			t.Errorf("the copy from before differs:\n%s", cmp.Diff(before, after))
		}
		whole(t, kept)
		// Whoever looked before somebody else's upgrade leaves that copy alone.
		refused(t, r.copyTo(t.Context(), r.path+".version-1", true), ErrNewer, "start again")
		whole(t, kept)
	})
}

func TestNoVersion(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		statement := map[string]string{"SQLite": "PRAGMA user_version = 0", "PostgreSQL": "UPDATE about SET value = 'x' WHERE key = 'version'"}[p.name]
		_, err := r.db.ExecContext(t.Context(), statement)
		must(t, err)
		_, err = Open(t.Context(), r.full(), Options{})
		refused(t, err, ErrDamaged, "version")
	})
}

// The patterns that a register keeps are those that were given.
func TestSeriesKept(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.empty(t)
		var want []accession.Pattern
		for i, check := range append([]accession.Scheme{accession.None}, accession.Schemes()...) {
			one := accession.Pattern{Code: string(rune('A'+i)) + "VD", Separator: []string{"", "-", " ", ".", "/", "_"}[i%6], Digits: 3 + i, Check: check}
			if check != accession.None && i%2 == 0 {
				one.CheckSeparator = "-"
			}
			want = append(want, one)
			_, err := r.AddSeries(t.Context(), registrar(""), one, 0)
			must(t, err)
			if got, err := r.Issue(t.Context(), registrar(""), one.Code, 3); err != nil || got.Pattern != one {
				t.Errorf("%s: %+v, %v", one, got, err)
			}
		}
		got, err := reopen(t, r, Options{}).Patterns(t.Context())
		must(t, err)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
		for _, one := range want {
			for _, text := range []string{one.Format(2), strings.ToLower(one.Format(2))} {
				if row, err := r.Number(t.Context(), text); err != nil || row.Range.First != 2 || row.Range.Series != one.Code {
					t.Errorf("%s: %+v, %v", text, row, err)
				}
			}
		}
	})
}
