package register

import (
	"strings"
	"testing"
)

// tamper does to a register what its triggers and keys do not allow.
func tamper(t testing.TB, r *Register, statements ...string) {
	t.Helper()
	conn, err := r.db.Conn(t.Context())
	must(t, err)
	defer conn.Close()
	if r.d == sqlite {
		statements = append([]string{"PRAGMA foreign_keys = 0"}, statements...)
		err := r.read(t.Context()).each(func(scan func(...any) error) error {
			var name string
			err := scan(&name)
			statements = append([]string{"DROP TRIGGER " + name}, statements...)
			return err
		}, "SELECT name FROM sqlite_master WHERE type = 'trigger'")
		must(t, err)
		statements = append(statements, "PRAGMA foreign_keys = 1")
	} else {
		statements = append([]string{"SET session_replication_role = replica"}, append(statements, "SET session_replication_role = DEFAULT")...)
	}
	for _, s := range statements {
		if _, err := conn.ExecContext(t.Context(), s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
}

// TestCheck damages one thing at a time, beside the program, and holds that the
// check tells it, and where, and nothing else.
func TestCheck(t *testing.T) {
	for _, tc := range []struct{ name, statement, says string }{
		{"nothing", "", ""},
		{"an entry of the history is gone", "DELETE FROM events WHERE id = 9", "the history has gaps: 11 of 12 entries are there"},
		{"a number is gone", "DELETE FROM numbers WHERE number = 13", "VDOURA-0000013: no state"},
		{"numbers at the end are gone", "DELETE FROM numbers WHERE number >= 18", "VDOURA-0000018 to VDOURA-0000020: no state"},
		{"a stretch is gone", "DELETE FROM passed", "VDOURA-0000001 to VDOURA-0000010: no state"},
		{"a stretch is longer", "UPDATE passed SET last = 9", "VDOURA-0000010: no state|VDOURA-0000001 to VDOURA-0000009: the history does not tell when they were passed over"},
		{"two stretches overlap", "INSERT INTO passed (series, first, last, event) VALUES (1, 5, 7, 3)", "VDOURA-0000005 to VDOURA-0000007: passed over twice|VDOURA-0000005 to VDOURA-0000007: the history does not tell when they were passed over"},
		{"a state was changed", "UPDATE numbers SET state = 'lost' WHERE number = 13", "VDOURA-0000013: lost, and by the history issued"},
		{"a void number was freed", "UPDATE numbers SET state = 'issued' WHERE number = 15", "VDOURA-0000015: issued, and by the history void"},
		{"a number the history does not know", "INSERT INTO numbers (series, number, state, event) VALUES (1, 5, 'lost', 4)", "VDOURA-0000005: lost, and by the history unknown"},
		{"a number was added at the end", "INSERT INTO numbers (series, number, state, event) VALUES (1, 21, 'issued', 4)", "VDOURA-0000021: beyond the highest number of the series, which is 20|VDOURA-0000021: issued, and the history does not know the number"},
		{"the series fell back", "UPDATE series SET highest = 15", "VDOURA-0000016 to VDOURA-0000020: beyond the highest number of the series, which is 15"},
		{"the history was changed", "UPDATE events SET state = 'attached' WHERE what = 'void'", "VDOURA-0000015: void, and by the history attached"},
		{"a box is gone", "DELETE FROM boxes WHERE label = 1", "1 printed labels have no box"},
		{"a label is gone", "DELETE FROM labels WHERE id = 1", "1 boxes belong to no label|rows of boxes point to others that are missing"},
		{"a name is gone", "DELETE FROM words; DELETE FROM phrases WHERE role = 'name'", "1 labels have a name or collector that is missing|rows of labels point to others that are missing"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			each(t, func(t *testing.T, p place) {
				r := p.empty(t)
				_, err := r.AddSeries(t.Context(), registrar(""), pattern(t, "VDOURA-0000000"), 11) // events 2 and 3
				must(t, err)
				issue(t, r, 10) // 11 to 20, event 4
				printOne(t, r, sheet("VDOURA-0000011", "I. Almeida", "1", "Iris boissieri Henriq."))
				for range 3 {
					mark(t, r, Lost, 12, 12)
					mark(t, r, Attached, 12, 12)
				}
				must(t, r.Reprinted(t.Context(), registrar("torn"), 1)) // event 12
				if tc.name == "nothing" || tc.statement == "" {
					mark(t, r, Void, 15, 15)
					whole(t, r)
					return
				}
				if !strings.Contains(tc.statement, "id = 9") {
					mark(t, r, Void, 15, 15)
				}
				tamper(t, r, strings.Split(tc.statement, "; ")...)
				var got []string
				for p, err := range r.Check(t.Context()) {
					must(t, err)
					got = append(got, p.String())
				}
				want := strings.Split(tc.says, "|")
				if p.name == "PostgreSQL" && strings.HasPrefix(want[len(want)-1], "rows of ") {
					want = want[:len(want)-1] // a server looks after its keys itself
				}
				for _, w := range want {
					if !strings.Contains("\n"+strings.Join(got, "\n")+"\n", "\n"+w+"\n") {
						t.Errorf("not told: %s; told: %s", w, strings.Join(got, "; "))
					}
				}
				if len(got) != len(want) {
					t.Errorf("told: %s; want %s", strings.Join(got, "; "), tc.says)
				}
				for range r.Check(t.Context()) {
					break
				}
			})
		})
	}
}

// Three orders of pages: rows, stretches and events are read piece by piece.
func TestCheckPages(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 5001)
		_, err := r.MoveUp(t.Context(), registrar("test"), "VDOURA-0006000")
		must(t, err)
		issue(t, r, 5000)
		mark(t, r, Lost, 4990, 7000)
		mark(t, r, Attached, 5000, 5000)
		whole(t, r)
		tamper(t, r, "UPDATE numbers SET state = 'void' WHERE number IN (1, 5000, 5001, 11000)", "DELETE FROM numbers WHERE number = 10001")
		var got []string
		for p, err := range r.Check(t.Context()) {
			must(t, err)
			got = append(got, p.String())
		}
		want := "VDOURA-0000001: void, and by the history issued; VDOURA-0005000: void, and by the history attached; VDOURA-0005001: void, and by the history lost; " +
			"VDOURA-0010001: no state; VDOURA-0011000: void, and by the history issued"
		if text := strings.Join(got, "; "); text != want {
			t.Errorf("told: %s", text)
		}
	})
}
