package register

import (
	"encoding/hex"
	"strconv"
	"strings"
	"testing"
)

// TestAppendOnly holds that the database itself, whoever writes to it, keeps
// what must never change: each statement is refused, with a word that says why.
func TestAppendOnly(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.empty(t)
		_, err := r.AddSeries(t.Context(), registrar(""), pattern(t, "VDOURA-0000000"), 11)
		must(t, err)
		issue(t, r, 5)
		printOne(t, r, Label{Kind: "sheet", CatalogNumber: "VDOURA-0000011", Collector: "I. Almeida", Number: "214", Name: "Iris boissieri Henriq.", Box: []byte{1}, Cells: []byte{2}})
		mark(t, r, Void, 15, 15)
		before := dump(t, r)
		for _, tc := range []struct{ statement, says string }{
			{"UPDATE events SET who = 'somebody' WHERE id = 1", "only ever added to"},
			{"UPDATE events SET at = at", "only ever added to"},
			{"DELETE FROM events WHERE id = (SELECT MAX(id) FROM events)", "only ever added to"},
			{"DELETE FROM events", "only ever added to"},
			{"DELETE FROM numbers WHERE number = 15", "stays in the register"},
			{"UPDATE numbers SET number = 99 WHERE number = 15", "stays in the register"},
			{"UPDATE numbers SET series = series WHERE number = 15", "stays in the register"},
			{"UPDATE numbers SET state = 'issued' WHERE number = 15", "issued once"},
			{"UPDATE numbers SET state = 'mislaid' WHERE number = 15", ""},
			{"UPDATE passed SET last = 9", "stays in the register"},
			{"DELETE FROM passed", "stays in the register"},
			{"DELETE FROM series", "stays in the register"},
			{"UPDATE series SET highest = 3", "never falls back"},
			{"UPDATE series SET digits = 8", "stays as it is"},
			{"UPDATE series SET name = 'X', code = 'X'", "stays as it is"},
			{"UPDATE labels SET catalog = ''", "stays as it is"},
			{"DELETE FROM labels", "stays as it is"},
			{"UPDATE boxes SET box = cells", "stays as it is"},
			{"DELETE FROM boxes", "stays as it is"},
			{"INSERT INTO numbers (series, number, state, event) VALUES (1, 11, 'issued', 1)", ""},
			{"INSERT INTO numbers (series, number, state, event) VALUES (1, 16, 'issued', 99)", ""},
			{"INSERT INTO numbers (series, number, state, event) VALUES (2, 1, 'issued', 1)", ""},
			{"INSERT INTO events (id, at, who, what, why) VALUES (1, '', 'x', 'x', '')", ""},
			{"INSERT INTO events (id, at, who, what, why) VALUES (99, '', '', 'x', '')", ""},
		} {
			_, err := r.db.ExecContext(t.Context(), tc.statement)
			if err == nil {
				t.Errorf("%s: was done", tc.statement)
			} else if !strings.Contains(err.Error(), tc.says) {
				t.Errorf("%s: %v", tc.statement, err)
			}
		}
		if p.name == "PostgreSQL" {
			for _, table := range []string{"events", "numbers", "passed", "series", "labels", "boxes"} {
				if _, err := r.db.ExecContext(t.Context(), "TRUNCATE "+table+" CASCADE"); err == nil {
					t.Errorf("%s was emptied", table)
				}
			}
		}
		if after := dump(t, r); after != before {
			t.Errorf("refused statements changed the register:\n%s\nto\n%s", before, after)
		}
		whole(t, r)
	})
}

// printOne records a printing of labels.
func printOne(t testing.TB, r *Register, labels ...Label) {
	t.Helper()
	rec, err := r.Record(t.Context(), registrar(""), Run{Program: "cornerslip 1.0.0", Source: "trip.csv", House: "code = \"VDOURA\"\n"})
	must(t, err)
	for _, l := range labels {
		must(t, rec.Add(t.Context(), l))
	}
	n, err := rec.Finish(t.Context())
	must(t, err)
	if n != len(labels) {
		t.Fatalf("%d of %d labels were kept", n, len(labels))
	}
}

// tables are all tables of a register, each with what puts its rows in order.
var tables = []struct{ name, columns, order string }{
	{"about", "key, value", "key"},
	{"series", "id, name, code, separator, digits, scheme, check_separator, highest", "id"},
	{"events", "id, at, who, what, why, series, first, last, state, label", "id"},
	{"numbers", "series, number, state, event", "series, number"},
	{"passed", "series, first, last, event", "series, first"},
	{"specimens", "series, number, occurrence, collector, record, part, date, name", "series, number"},
	{"identities", "kind, key, series, number, date", "kind, key, series, number"},
	{"houses", "digest, text", "digest"},
	{"runs", "id, at, who, program, source, house, done", "id"},
	{"phrases", "id, role, key, text", "id"},
	{"words", "word, phrase, role", "word, phrase"},
	{"labels", "id, run, kind, part, recipient, label, of, catalog, catalog_key, record, record_key, date, collector, name, series, number, digest", "id"},
	{"boxes", "label, box, cells", "label"},
}

// dump writes out every row of every table as INSERT statements that both
// databases take.
func dump(t testing.TB, r *Register) string {
	t.Helper()
	var b strings.Builder
	for _, table := range tables {
		n := strings.Count(table.columns, ",") + 1
		err := r.read(t.Context()).each(func(scan func(...any) error) error {
			values, dest := make([]any, n), make([]any, n)
			for i := range values {
				dest[i] = &values[i]
			}
			if err := scan(dest...); err != nil {
				return err
			}
			b.WriteString("INSERT INTO " + table.name + " (" + table.columns + ") VALUES (")
			for i, v := range values {
				if i > 0 {
					b.WriteString(", ")
				}
				b.WriteString(literal(t, r.d, v))
			}
			b.WriteString(");\n")
			return nil
		}, "SELECT "+table.columns+" FROM "+table.name+" ORDER BY "+table.order)
		must(t, err)
	}
	return b.String()
}

// literal writes a value as SQL.
func literal(t testing.TB, d dialect, v any) string {
	t.Helper()
	switch v := v.(type) {
	case nil:
		return "NULL"
	case int64:
		return strconv.FormatInt(v, 10)
	case string:
		return "'" + strings.ReplaceAll(v, "'", "''") + "'"
	case []byte:
		if d == postgres {
			return "'\\x" + hex.EncodeToString(v) + "'"
		}
		return "x'" + hex.EncodeToString(v) + "'"
	}
	t.Fatalf("no literal for a %T", v)
	return ""
}
