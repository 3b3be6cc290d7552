package register

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/label/accession"
)

func TestCreate(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		address := p.fresh()
		_, err := Open(t.Context(), address, Options{})
		if p.name == "SQLite" {
			refused(t, err, ErrMissing, address, "check the name")
		} else {
			refused(t, err, ErrNotRegister, "make one in it")
		}
		r, err := Create(t.Context(), address, registrar("a new book"), Options{})
		must(t, err)
		defer r.Close()
		if r.Version() != 1 {
			t.Errorf("version %d", r.Version())
		}
		_, err = Create(t.Context(), address, registrar(""), Options{})
		refused(t, err, ErrExists, "open it")
		whole(t, r)
		again := reopen(t, r, Options{})
		if all, err := again.Series(t.Context()); err != nil || len(all) != 0 {
			t.Errorf("series of a new register: %v, %v", all, err)
		}
		if got := history(t, again, ""); got != "1 created: a new book" {
			t.Errorf("history of a new register: %s", got)
		}
		for _, at := range []At{{}, {When: moment}, {When: moment, By: " "}, {By: "M. Teixeira"}, {When: moment, By: "a\nb"}, {When: moment, By: "a", Why: "b\x00"}} {
			_, err := Create(t.Context(), p.fresh(), at, Options{})
			refused(t, err, nil)
			_, err = r.AddSeries(t.Context(), at, pattern(t, "VDOURA-0000000"), 0)
			refused(t, err, nil)
		}
	})
}

// history shows the events of a number, "" of all.
func history(t testing.TB, r *Register, number string) string {
	t.Helper()
	var lines []string
	for e, err := range r.History(t.Context(), number) {
		must(t, err)
		if !e.When.Equal(moment) || e.By == "" {
			t.Errorf("event %d is of %s by %q", e.ID, e.When, e.By)
		}
		line := fmt.Sprintf("%d %s", e.ID, e.What)
		if e.Range != (Range{}) {
			line += fmt.Sprintf(" %d-%d", e.Range.First, e.Range.Last)
		}
		if e.State != "" && string(e.State) != string(e.What) {
			line += " " + string(e.State)
		}
		if e.Label != 0 {
			line += fmt.Sprintf(" label %d", e.Label)
		}
		if e.Why != "" {
			line += ": " + e.Why
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

func TestSeries(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.empty(t)
		_, err := r.Issue(t.Context(), registrar(""), "", 1)
		refused(t, err, ErrNoSeries, "add one")
		for _, tc := range []struct {
			notation string
			first    int
			kind     error // nil is a series that is added
			says     string
		}{
			{"VDOURA-0000000", 0, nil, ""},
			{"VDOURA-0000000", 0, ErrExists, "already"},
			{"vdoura 00000", 0, ErrExists, "already"},
			{"VDOURA0-000000", 0, ErrExists, "could not be told"},
			{"VD-BRYO-00000 MOD 37,36", 101, nil, ""},
			{"VD.BRYO 00000", 0, ErrExists, "could not be told"},
			{"VDT-000", 1000, ErrExhausted, "VDT-999"},
			{"VDT-000", 999, nil, ""},
			{"000000", 0, nil, ""},
		} {
			got, err := r.AddSeries(t.Context(), registrar(""), pattern(t, tc.notation), tc.first)
			if tc.kind != nil {
				refused(t, err, tc.kind, tc.says)
				continue
			}
			must(t, err)
			if want := max(tc.first-1, 0); got.Highest != want || got.Pattern.String() != tc.notation {
				t.Errorf("%s: %+v", tc.notation, got)
			}
		}
		for _, bad := range []accession.Pattern{{}, {Code: "A", Digits: 16}, {Code: "Ç", Digits: 3}, {Code: "A", Digits: 3, Check: "MOD 7"}} {
			_, err := r.AddSeries(t.Context(), registrar(""), bad, 0)
			refused(t, err, nil, "series")
		}
		all, err := r.Series(t.Context())
		must(t, err)
		var names []string
		for _, s := range all {
			names = append(names, s.Name)
		}
		if got := strings.Join(names, " "); got != "VDOURA VD-BRYO VDT 000000" {
			t.Errorf("series: %s", got)
		}
		if patterns, err := r.Patterns(t.Context()); err != nil || len(patterns) != 4 || patterns[1].Check != accession.Mod37_36 {
			t.Errorf("patterns: %v, %v", patterns, err)
		}
		_, err = r.Issue(t.Context(), registrar(""), "", 1)
		refused(t, err, ErrNoSeries, "several", "VDOURA, VD-BRYO", "say which")
		_, err = r.Issue(t.Context(), registrar(""), "LISBOA", 1)
		refused(t, err, ErrNoSeries, "LISBOA", "VDOURA, VD-BRYO")
		got, err := r.Issue(t.Context(), registrar(""), "vd-bryo", 2)
		must(t, err)
		if got.First != 101 || got.Last != 102 || got.Len() != 2 {
			t.Errorf("a series that begins with 101: %+v", got)
		}
		var written []string
		for n := range got.Numbers() {
			written = append(written, n)
		}
		if s := got.String(); s != written[0]+" to "+written[1] || !strings.HasPrefix(written[0], "VD-BRYO-00101") || len(written[0]) != len("VD-BRYO-00101")+1 {
			t.Errorf("written: %s, %q", s, written)
		}
		got, err = r.Issue(t.Context(), registrar(""), "VDT", 1)
		must(t, err)
		if got.String() != "VDT-999" {
			t.Errorf("last of a series: %s", got)
		}
		_, err = r.Issue(t.Context(), registrar(""), "VDT", 1)
		refused(t, err, ErrExhausted, "0 numbers are left", "VDT-999")
		if got := history(t, r, "VDT-999"); got != "5 opened 999-999\n9 issued 999-999" {
			t.Errorf("history of the last: %s", got)
		}
		whole(t, r)
	})
}

func TestIssue(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		for i, tc := range []struct{ count, first, last int }{{1, 1, 1}, {1, 2, 2}, {200, 3, 202}, {1, 203, 203}, {6000, 204, 6203}} {
			if got := issue(t, r, tc.count); got.First != tc.first || got.Last != tc.last || got.Series != "VDOURA" {
				t.Errorf("%d: %+v", i, got)
			}
		}
		for _, count := range []int{0, -1, MostAtOnce + 1} {
			_, err := r.Issue(t.Context(), registrar(""), "", count)
			refused(t, err, nil, fmt.Sprint(count))
		}
		_, err := r.Issue(t.Context(), At{}, "", 1)
		refused(t, err, nil, "time")
		if got := states(t, r); got != "1-6203 issued" {
			t.Errorf("states: %s", got)
		}
		if got := history(t, r, "vdoura 7"); got != "5 issued 3-202" {
			t.Errorf("history: %s", got)
		}
		whole(t, r)
	})
}

// A void number is never issued again, whoever issues, and stays what it is
// but for the sheet that it is found on.
func TestVoid(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 5)
		err := r.Mark(t.Context(), registrar(""), Void, span(4, 5))
		refused(t, err, nil, "reason", "void")
		mark(t, r, Void, 4, 5)
		r = reopen(t, r, Options{})
		if got := issue(t, r, 2); got.First != 6 {
			t.Errorf("issued after voids: %s", got)
		}
		got, err := r.Assign(t.Context(), registrar(""), "", []Specimen{{Collector: "I. Almeida", Number: "214"}}, false)
		must(t, err)
		if got[0].Number != "VDOURA-0000008" {
			t.Errorf("assigned after voids: %+v", got[0])
		}
		for _, to := range []State{Printed, Lost, Transferred, Void, HeldElsewhere, Issued, Unknown} {
			err := r.Mark(t.Context(), registrar("test"), to, span(4, 4))
			refused(t, err, ErrVoid, "VDOURA-0000004", string(to))
		}
		refused(t, r.Mark(t.Context(), registrar(""), Attached, span(4, 4)), ErrVoid, "reason")
		must(t, r.Mark(t.Context(), registrar("on a sheet after all"), Attached, span(4, 4)))
		if got := states(t, r); got != "1-3 issued, 4 attached, 5 void, 6-8 issued" {
			t.Errorf("states: %s", got)
		}
		whole(t, r)
	})
}

// TestMark holds every step from one state to another.
func TestMark(t *testing.T) {
	// The states that a number may come to, by the state it is in.
	ends := []State{Attached, Void, Deaccessioned, Transferred, Lost, HeldElsewhere}
	may := map[State][]State{
		Issued:   append([]State{Printed}, ends...),
		Printed:  ends,
		Unknown:  append([]State{Printed}, ends...),
		Attached: ends[1:],
		Void:     {Attached},
	}
	for _, s := range ends[2:] {
		may[s] = slices.DeleteFunc(slices.Clone(ends), func(to State) bool { return to == s })
	}
	each(t, func(t *testing.T, p place) {
		r := p.empty(t)
		_, err := r.AddSeries(t.Context(), registrar(""), pattern(t, "VDOURA-0000000"), 101) // 1 to 100 are unknown
		must(t, err)
		next := 1
		for _, from := range States() {
			for _, to := range States() {
				n := next
				if from == Unknown {
					next++
				} else {
					n = issue(t, r, 1).First
					if from != Issued {
						mark(t, r, from, n, n)
					}
				}
				err := r.Mark(t.Context(), registrar("test"), to, span(n, n))
				if slices.Contains(may[from], to) {
					must(t, err)
				} else {
					refused(t, err, nil, r.mustPattern(t).Format(n), string(to))
					if !errors.Is(err, ErrState) && !errors.Is(err, ErrVoid) {
						t.Errorf("%s to %s: %v", from, to, err)
					}
				}
			}
		}
		whole(t, r)
		refused(t, r.Mark(t.Context(), registrar("test"), "mislaid", span(1, 1)), nil, "mislaid")
		refused(t, r.Mark(t.Context(), registrar("test"), Lost, span(0, 1)), nil, "0 to 1")
		refused(t, r.Mark(t.Context(), registrar("test"), Lost, span(5, 4)), nil, "5 to 4")
		refused(t, r.Mark(t.Context(), registrar("test"), Lost, span(1, MostAtOnce+1)), nil, "slip")
		refused(t, r.Mark(t.Context(), registrar("test"), Lost, span(1, 5000)), ErrNotIssued, "VDOURA-0005000", "highest")
		refused(t, r.Mark(t.Context(), registrar("test"), Lost, Range{Series: "X", First: 1, Last: 1}), ErrNoSeries, "VDOURA")
		// All or none.
		before := states(t, r)
		refused(t, r.Mark(t.Context(), registrar("test"), Lost, span(90, 95), span(96, 99), span(1, 9999)), ErrNotIssued)
		if after := states(t, r); after != before {
			t.Errorf("a refused mark changed the states from %s to %s", before, after)
		}
	})
}

func (r *Register) mustPattern(t testing.TB) accession.Pattern {
	all, err := r.Patterns(t.Context())
	must(t, err)
	return all[0]
}

func TestMarkNothingIssued(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		refused(t, r.Mark(t.Context(), registrar("test"), Void, span(1, 1)), ErrNotIssued, "VDOURA-0000001", "no number")
	})
}

func TestMoveUp(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 10)
		_, err := r.MoveUp(t.Context(), registrar(""), "VDOURA-0000200")
		refused(t, err, nil, "reason")
		for text, kind := range map[string]error{"VDOURA-0000010": ErrExists, "LISU-12": ErrForeign, "VDOURA-00000001": accession.ErrFigures} {
			_, err := r.MoveUp(t.Context(), registrar("restored"), text)
			refused(t, err, kind, text)
		}
		got, err := r.MoveUp(t.Context(), registrar("restored from the backup of Monday"), "vdoura 200")
		must(t, err)
		if got.First != 11 || got.Last != 200 {
			t.Errorf("moved up over %s", got)
		}
		if got := issue(t, r, 1); got.First != 201 {
			t.Errorf("issued after the move: %s", got)
		}
		mark(t, r, Printed, 150, 152)
		if got := states(t, r); got != "1-10 issued, 11-149 unknown, 150-152 printed, 153-200 unknown, 201 issued" {
			t.Errorf("states: %s", got)
		}
		if got := history(t, r, "VDOURA-0000151"); got != "4 moved up 11-200 unknown: restored from the backup of Monday\n6 printed 150-152: test" {
			t.Errorf("history: %s", got)
		}
		whole(t, r)
	})
}

func TestNumberAndRange(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		addSeries(t, r, "VDB-0000 MOD 37,36")
		_, err := r.Issue(t.Context(), registrar(""), "VDOURA", 20)
		must(t, err)
		bryo, err := r.Issue(t.Context(), registrar("stickers"), "VDB", 3)
		must(t, err)
		check := bryo.Pattern.Format(2)
		wrong := check[:len(check)-1] + map[bool]string{true: "A", false: "B"}[check[len(check)-1] != 'A']
		for _, tc := range []struct {
			first, last string
			want        string
			kind        error
			says        string
		}{
			{"VDOURA-0000007", "", "VDOURA-0000007", nil, ""},
			{" vdoura 7 ", "Vdoura0000009", "VDOURA-0000007 to VDOURA-0000009", nil, ""},
			{"VDB-0002", "", check, nil, ""},
			{strings.ToLower(check), bryo.Pattern.Format(3), check + " to " + bryo.Pattern.Format(3), nil, ""},
			{wrong, "", "", accession.ErrCheck, "check character"},
			{"VDOURA-0000009", "VDOURA-0000007", "", ErrAmbiguous, "lower one first"},
			{"VDOURA-0000009", check, "", ErrForeign, "two series"},
			{"VDOURA-0000009", "LISU-1", "", ErrForeign, "LISU-1"},
			{"LISU-1", "", "", ErrForeign, "VDOURA, VDB"},
			{"VDOURA-0000000", "", "", nil, "begin with 1"},
			{"VDOURA-00000000", "", "", accession.ErrFigures, "8 figures"},
			{"", "", "", ErrForeign, ""},
		} {
			got, err := r.Range(t.Context(), tc.first, tc.last)
			if tc.want == "" {
				refused(t, err, tc.kind, tc.says)
				continue
			}
			must(t, err)
			if got.String() != tc.want {
				t.Errorf("%q to %q: %s", tc.first, tc.last, got)
			}
		}
		row, err := r.Number(t.Context(), "vdb 0002")
		must(t, err)
		want := Row{Range: Range{"VDB", bryo.Pattern, 2, 2}, State: Issued, When: moment, By: "M. Teixeira", Why: "stickers"}
		if row != want {
			t.Errorf("number: %+v", row)
		}
		_, err = r.Number(t.Context(), "VDOURA-0000021")
		refused(t, err, ErrNotIssued, "VDOURA-0000021", "import it")
		_, err = r.Number(t.Context(), "LISU-21")
		refused(t, err, ErrForeign, "LISU-21")
	})
}

// TestList holds the listing against a plain list of all numbers, page ends
// and gaps included.
func TestList(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.empty(t)
		_, err := r.AddSeries(t.Context(), registrar(""), pattern(t, "VDOURA-0000000"), 51)
		must(t, err)
		plain := make([]State, 51) // by number; the first is unused
		for i := range plain {
			plain[i] = Unknown
		}
		grow := func(n int, s State) {
			for range n {
				plain = append(plain, s)
			}
		}
		issue(t, r, 960)
		grow(960, Issued)
		_, err = r.MoveUp(t.Context(), registrar("test"), "VDOURA-0002500")
		must(t, err)
		grow(2500-1010, Unknown)
		issue(t, r, 10)
		grow(10, Issued)
		for _, m := range []struct {
			to          State
			first, last int
		}{{Printed, 990, 1010}, {Printed, 1011, 1030}, {Lost, 1200, 1200}, {Void, 2499, 2505}, {Attached, 1, 1}, {HeldElsewhere, 30, 40}, {Attached, 50, 60}} {
			mark(t, r, m.to, m.first, m.last)
			for n := m.first; n <= m.last; n++ {
				plain[n] = m.to
			}
		}
		for _, f := range []Filter{{}, {Series: "vdoura"}, {First: 35}, {Last: 2502}, {First: 999, Last: 1001}, {First: 1005, Last: 1205}, {First: 2511}, {First: 20, Last: 10},
			{States: []State{Unknown}}, {States: []State{Issued}}, {States: []State{Void, Unknown}, First: 100}, {States: []State{Attached, Lost}, Last: 2000}, {States: []State{Transferred}}} {
			var want, got []string
			for n := 1; n < len(plain); n++ {
				if n < f.First || f.Last > 0 && n > f.Last || len(f.States) > 0 && !slices.Contains(f.States, plain[n]) {
					continue
				}
				want = append(want, fmt.Sprint(n, plain[n]))
			}
			for row, err := range r.List(t.Context(), f) {
				must(t, err)
				for n := row.Range.First; n <= row.Range.Last; n++ {
					got = append(got, fmt.Sprint(n, row.State))
				}
				if row.By == "" || row.When.IsZero() {
					t.Errorf("%s: by %q at %s", row.Range, row.By, row.When)
				}
			}
			if !slices.Equal(got, want) {
				t.Errorf("%+v: %d rows, want %d: %v", f, len(got), len(want), firstDifference(got, want))
			}
		}
		for _, err := range r.List(t.Context(), Filter{Series: "X"}) {
			refused(t, err, ErrNoSeries, "VDOURA")
		}
		n := 0
		for range r.List(t.Context(), Filter{}) {
			if n++; n == 3 {
				break
			}
		}
		whole(t, r)
	})
}

func firstDifference(a, b []string) string {
	for i := range max(len(a), len(b)) {
		switch {
		case i >= len(a):
			return "missing " + b[i]
		case i >= len(b):
			return "too many " + a[i]
		case a[i] != b[i]:
			return a[i] + " instead of " + b[i]
		}
	}
	return ""
}

func TestHistoryPages(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 3)
		at := registrar("many times")
		at.When = at.When.Add(999 * time.Millisecond) // kept to the second
		must(t, r.write(t.Context(), at, func(c *change) error {
			for i := range 1100 {
				if err := c.markRange(span(2, 2), []State{Lost, Attached}[i%2]); err != nil {
					return err
				}
			}
			return nil
		}))
		ids := 0
		for e, err := range r.History(t.Context(), "") {
			must(t, err)
			if ids++; e.ID != ids {
				t.Fatalf("event %d comes as number %d", e.ID, ids)
			}
		}
		if n := strings.Count(history(t, r, "VDOURA-0000002"), "\n"); n != 1100 {
			t.Errorf("the number has %d events", n)
		}
		for _, err := range r.History(t.Context(), "VDOURA-0000004") {
			refused(t, err, ErrNotIssued, "VDOURA-0000004")
		}
		for _, err := range r.History(t.Context(), "LISU-4") {
			refused(t, err, ErrForeign, "LISU-4")
		}
		whole(t, r)
	})
}
