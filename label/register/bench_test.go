package register

import (
	"context"
	"database/sql"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

// Each benchmark does beside its own work what a plain program would do with
// the same bytes, in one table without a history, a search or a check, through
// the same driver with the same care for the disk, and reports how many times
// as long the register takes: x-plain. Both are measured in the same run.

// plainFile is the plain program's file.
func plainFile(b *testing.B, statements ...string) *sql.DB {
	b.Helper()
	db, err := sql.Open("sqlite", "file:"+filepath.Join(b.TempDir(), "plain.db")+"?_txlock=immediate&_pragma=synchronous(FULL)&_pragma=journal_mode(wal)&_pragma=cache_size(-32768)")
	must(b, err)
	b.Cleanup(func() { db.Close() })
	for _, s := range statements {
		_, err := db.Exec(s)
		must(b, err)
	}
	return db
}

// versus runs f under the benchmark's clock and then plain as often.
func versus(b *testing.B, f, plain func(i int)) {
	b.Helper()
	n := 0
	for b.Loop() {
		f(n)
		n++
	}
	took := b.Elapsed()
	start := time.Now()
	for i := range n {
		plain(i)
	}
	b.ReportMetric(float64(took)/float64(time.Since(start)), "x-plain")
}

func place1(b *testing.B) place { return place{name: "SQLite", dir: b.TempDir()} }

func BenchmarkIssue(b *testing.B) {
	r := place1(b).create(b)
	db := plainFile(b, "CREATE TABLE numbers (number INTEGER PRIMARY KEY, state TEXT, at TEXT, who TEXT)")
	if got := issue(b, r, 1); got.First != 1 {
		b.Fatal(got)
	}
	versus(b, func(int) {
		_, err := r.Issue(b.Context(), registrar(""), "", 1)
		must(b, err)
	}, func(int) {
		_, err := db.Exec("INSERT INTO numbers (state, at, who) VALUES ('issued', '2026-06-14T09:30:00Z', 'M. Teixeira')")
		must(b, err)
	})
}

func BenchmarkAssign(b *testing.B) {
	r := place1(b).create(b)
	db := plainFile(b, "CREATE TABLE specimens (number INTEGER PRIMARY KEY, collector TEXT, record TEXT, date TEXT, name TEXT)")
	rows := func(i int) []Specimen {
		list := make([]Specimen, 1000)
		for k := range list {
			list[k] = Specimen{Collector: "I. Almeida", Number: fmt.Sprint(1000*i + k + 1), Date: "2026-06-14", Name: "Iris boissieri Henriq."}
		}
		return list
	}
	first := assign(b, r, rows(1_000_000)...)
	if again := assign(b, r, rows(1_000_000)...); again[999].Number != first[999].Number || first[999].Number != "VDOURA-0001000" {
		b.Fatal(first[999], again[999])
	}
	insert := func(list []Specimen) {
		tx, err := db.Begin()
		must(b, err)
		stmt, err := tx.Prepare("INSERT INTO specimens (collector, record, date, name) VALUES (?, ?, ?, ?)")
		must(b, err)
		for _, s := range list {
			_, err := stmt.Exec(s.Collector, s.Number, s.Date, s.Name)
			must(b, err)
		}
		must(b, tx.Commit())
	}
	b.Run("new", func(b *testing.B) {
		start := int(searchPaths.Add(1)) * 1_000_000
		versus(b, func(i int) {
			_, err := r.Assign(b.Context(), registrar(""), "", rows(start+i), false)
			must(b, err)
		}, func(i int) { insert(rows(i)) })
	})
	b.Run("known", func(b *testing.B) {
		list := rows(1_000_000)
		insert(list)
		versus(b, func(int) {
			_, err := r.Assign(b.Context(), registrar(""), "", list, false)
			must(b, err)
		}, func(int) {
			for i := range list {
				var s Specimen
				must(b, db.QueryRow("SELECT collector, record, date, name FROM specimens WHERE number = ?", i+1).Scan(&s.Collector, &s.Number, &s.Date, &s.Name))
			}
		})
	})
}

// BenchmarkImport takes over 10,000 entries of an old catalogue, in no order.
func BenchmarkImport(b *testing.B) {
	p := place1(b)
	var list []Old
	for _, n := range rand.New(rand.NewPCG(2, 2)).Perm(10_000) {
		list = append(list, Old{Specimen: Specimen{CatalogNumber: fmt.Sprintf("VDOURA-%07d", n+1), Collector: "J. Moura", Number: fmt.Sprint(n + 1), Name: "Iris boissieri Henriq."}})
	}
	db := plainFile(b)
	versus(b, func(int) {
		b.StopTimer()
		r := p.create(b)
		b.StartTimer()
		count, err := r.Import(b.Context(), registrar(""), ImportOptions{}, entries(list), func(c Clash) error { return c.Err })
		if err != nil || count.New != len(list) {
			b.Fatal(count, err)
		}
	}, func(i int) {
		tx, err := db.Begin()
		must(b, err)
		_, err = tx.Exec(fmt.Sprintf("CREATE TABLE specimens%d (number TEXT PRIMARY KEY, collector TEXT, record TEXT, name TEXT, state TEXT)", i))
		must(b, err)
		stmt, err := tx.Prepare(fmt.Sprintf("INSERT INTO specimens%d VALUES (?, ?, ?, ?, 'attached')", i))
		must(b, err)
		for _, old := range list {
			_, err := stmt.Exec(old.CatalogNumber, old.Collector, old.Number, old.Name)
			must(b, err)
		}
		must(b, tx.Commit())
	})
}

// printed yields n labels as a herbarium's are: some hundred collectors, some
// thousand names, a box of a kilobyte.
func printed(n int) func(yield func(Label, error) bool) {
	rnd := rand.New(rand.NewPCG(1, 1))
	box, cells := make([]byte, 1000), make([]byte, 300)
	for i := range box {
		box[i] = byte(rnd.Uint32())
	}
	return func(yield func(Label, error) bool) {
		for i := range n {
			l := Label{Kind: "sheet", Label: 1, Of: 1, CatalogNumber: fmt.Sprintf("LISU%07d", i+1), Collector: fmt.Sprintf("%c. Collector%d", 'A'+i%26, i%400),
				Number: fmt.Sprint(i/400 + 1), Name: fmt.Sprintf("Genus%d epithet%d L.", i%700, i%9000), Date: "2026-06-14", Record: box[:32], Cells: cells, Box: box}
			if !yield(l, nil) {
				return
			}
		}
	}
}

func BenchmarkRecord(b *testing.B) {
	const labels = 10_000
	r := place1(b).create(b)
	db := plainFile(b, "CREATE TABLE labels (id INTEGER PRIMARY KEY, catalog TEXT, collector TEXT, record TEXT, name TEXT, date TEXT, digest BLOB, cells BLOB, box BLOB)", "CREATE INDEX labels_catalog ON labels (catalog)")
	versus(b, func(int) {
		if n, err := r.Remember(b.Context(), registrar(""), Run{Program: "cornerslip"}, printed(labels)); err != nil || n != labels {
			b.Fatal(n, err)
		}
	}, func(int) {
		tx, err := db.Begin()
		must(b, err)
		stmt, err := tx.Prepare("INSERT INTO labels (catalog, collector, record, name, date, digest, cells, box) VALUES (?, ?, ?, ?, ?, ?, ?, ?)")
		must(b, err)
		for l := range printed(labels) {
			_, err := stmt.Exec(l.CatalogNumber, l.Collector, l.Number, l.Name, l.Date, l.Record, l.Cells, l.Box)
			must(b, err)
		}
		must(b, tx.Commit())
	})
}

// BenchmarkFind opens a register of 20,000 labels, finds one and loads it, and
// closes it. For a register of a million, which takes a minute or two to make:
//
//	REGISTER_BENCH_LABELS=1000000 go test -timeout 10m -run - -bench Find ./label/register
func BenchmarkFind(b *testing.B) {
	labels := 20_000
	if text := os.Getenv("REGISTER_BENCH_LABELS"); text != "" {
		n, err := strconv.Atoi(text)
		must(b, err)
		labels = n
	}
	r := place1(b).create(b)
	start := time.Now()
	if n, err := r.Remember(b.Context(), registrar(""), Run{Program: "cornerslip", House: "code = \"VDOURA\""}, printed(labels)); err != nil || n != labels {
		b.Fatal(n, err)
	}
	took := time.Since(start)
	path := filepath.Join(b.TempDir(), "plain.db")
	db, err := sql.Open("sqlite", "file:"+path)
	must(b, err)
	_, err = db.Exec("CREATE TABLE labels (id INTEGER PRIMARY KEY, catalog TEXT, box BLOB, cells BLOB)")
	must(b, err)
	tx, err := db.Begin()
	must(b, err)
	for l := range printed(labels) {
		_, err := tx.Exec("INSERT INTO labels (catalog, box, cells) VALUES (?, ?, ?)", l.CatalogNumber, l.Box, l.Cells)
		must(b, err)
	}
	must(b, tx.Commit())
	_, err = db.Exec("CREATE INDEX labels_catalog ON labels (catalog)")
	must(b, err)
	must(b, db.Close())
	i := labels / 3
	for _, tc := range []struct{ name, text string }{
		{"catalogue number", fmt.Sprintf("lisu %07d", i+1)},
		{"collector and number", fmt.Sprintf("collector%d %d", i%400, i/400+1)},
		{"name", fmt.Sprintf("genus%d epithet%d", i%700, i%9000)},
		{"many", "genus"},
		{"nothing", "nowhere 4711"},
	} {
		b.Run(tc.name, func(b *testing.B) {
			once := func() {
				r, err := Open(context.Background(), r.path, Options{ReadOnly: true})
				must(b, err)
				defer r.Close()
				found, err := r.Find(b.Context(), tc.text, 0)
				must(b, err)
				if (len(found) == 0) != (tc.name == "nothing") || (tc.name == "many") && len(found) != DefaultFound {
					b.Fatalf("%q: %d found", tc.text, len(found))
				}
				if len(found) == 0 {
					return
				}
				k, err := r.Load(b.Context(), found[len(found)-1].ID)
				must(b, err)
				if tc.name != "many" && tc.name != "name" && k.ID != i+1 || len(k.Box) != 1000 {
					b.Fatalf("%q: label %d", tc.text, k.ID)
				}
			}
			once()
			versus(b, func(int) { once() }, func(int) {
				db, err := sql.Open("sqlite", "file:"+path+"?mode=ro")
				must(b, err)
				defer db.Close()
				var box, cells []byte
				must(b, db.QueryRow("SELECT box, cells FROM labels WHERE catalog = ?", fmt.Sprintf("LISU%07d", i+1)).Scan(&box, &cells))
			})
			b.ReportMetric(float64(labels)/took.Seconds(), "labels-kept/s")
		})
	}
}
