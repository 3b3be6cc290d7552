package job

import (
	"fmt"
	"strings"
	"testing"

	"cornerslip/label/register"
	"cornerslip/label/table"
)

// pile makes a register in which the five sheets of a table have numbers.
func pile(t testing.TB) (*Job, *register.Register, string) {
	t.Helper()
	j, r := newBook(t)
	src, rep, err := issuedFor(t, j, r, tableOf([]string{",I. Almeida,214", ",I. Almeida,215", ",I. Almeida,216", ",I. Almeida,217", ",L. Sarmento,3"}), table.Options{}, false)
	if err != nil || rep.Issued.Len() != 5 {
		t.Fatal(err, rep)
	}
	return j, r, src
}

func attaching(t testing.TB, j *Job, r *register.Register, src string) *AttachSession {
	t.Helper()
	s, err := j.AttachTable(t.Context(), r, numberTable(t, src, table.Options{}))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestAttachLines goes through lines and what is answered to each; "!" begins
// what is answered as wrong.
func TestAttachLines(t *testing.T) {
	for name, lines := range map[string][][2]string{
		"all fit": {
			{"Almeida 214", ""}, {"VDOURA-0000001", "I. Almeida 214: VDOURA-0000001"}, {"", ""}, {"alm 215", ""}, {"", ""},
			{"vdoura 2", "I. Almeida 215: VDOURA-0000002"}, {"Almeida 216\tVDOURA-0000003", "I. Almeida 216: VDOURA-0000003"},
			{"Almeida 217", ""}, {"https://example.org/VDOURA-0000004", "I. Almeida 217"}, {"sarm 3", ""}, {"VDOURA-0000005", "L. Sarmento 3"}, {"done", "done"},
		},
		"slip by one": {
			{"Almeida 214", ""}, {"VDOURA-0000001", "I. Almeida 214"}, {"Almeida 215", ""}, {"VDOURA-0000003", "!a sticker was left out with this sheet"},
		},
		"two stickers in a row": {
			{"Almeida 214", ""}, {"VDOURA-0000001", "I. Almeida 214"}, {"VDOURA-0000002", "!VDOURA-0000002 is a sticker; first the sheet"}, {"Almeida 215", ""}, {"VDOURA-0000002", "I. Almeida 215"},
		},
		"two sheets in a row": {
			{"Almeida 214", ""}, {"Almeida 215", "!I. Almeida 214 has had no sticker and stays open"}, {"VDOURA-0000002", "I. Almeida 215"},
		},
		"what is neither": {
			{"Nobody 9", "!no sheet here is called"}, {"Almeida", "!no sheet here is called"}, {"Almeida 214", ""}, {"5601234567890", "!is no number of the register; scan the sticker on I. Almeida 214 again"},
			{"VDOURA-0000001", "I. Almeida 214"},
		},
		"figures alone": {
			{"Almeida 214", ""}, {"1", "!is no number of the register"}, {"VDOURA-0000001", "I. Almeida 214"},
		},
		"undo": {
			{"undo", "nothing to undo"}, {"Almeida 214", ""}, {"UNDO", "forgotten: I. Almeida 214"}, {"Almeida 214", ""}, {"VDOURA-0000001", "I. Almeida 214"},
			{"undo", "open again: I. Almeida 214, VDOURA-0000001"}, {"VDOURA-0000001", "!is a sticker; first the sheet"},
		},
	} {
		j, r, src := pile(t)
		s := attaching(t, j, r, src)
		for _, l := range lines {
			a := s.Line(l[0])
			want, wrong := strings.CutPrefix(l[1], "!")
			if l[1] == "done" {
				if !a.Done {
					t.Errorf("%s: %q does not end", name, l[0])
				}
				continue
			}
			if a.Wrong != wrong || !strings.Contains(a.Message, want) || (want == "") != (a.Message == "") {
				t.Errorf("%s: %q is answered %+v, want %q", name, l[0], a, l[1])
			}
		}
	}
}

func TestAttachFinish(t *testing.T) {
	j, r, src := pile(t)
	s := attaching(t, j, r, src)
	for _, line := range []string{"Almeida 214", "VDOURA-0000001", "Almeida 215", "VDOURA-0000002", "Almeida 216", "VDOURA-0000003", "undo", "Almeida 217", "VDOURA-0000005", "Sarmento 3"} {
		s.Line(line)
	}
	if row, _ := r.Number(t.Context(), "VDOURA-0000001"); row.State != register.Issued {
		t.Errorf("before the end VDOURA-0000001 is %s", row.State)
	}
	// Meanwhile somebody makes a number void.
	two, _ := r.Range(t.Context(), "VDOURA-0000002", "")
	spoiled := clerk
	spoiled.Why = "torn"
	if err := r.Mark(t.Context(), spoiled, register.Void, two); err != nil {
		t.Fatal(err)
	}
	rep, err := s.Finish(clerk)
	want := "I. Almeida 215, VDOURA-0000002; I. Almeida 216, VDOURA-0000003; I. Almeida 217, VDOURA-0000004; L. Sarmento 3, VDOURA-0000005"
	if err != nil || rep.Attached != 1 || len(rep.Refused) != 1 || strings.Join(rep.Open, "; ") != want {
		t.Errorf("%v %+v", err, rep)
	}
	if row, _ := r.Number(t.Context(), "VDOURA-0000001"); row.State != register.Attached {
		t.Errorf("VDOURA-0000001 is %s", row.State)
	}
	// Another day: what is attached is not asked for again, and may be scanned.
	back := clerk
	back.Why = "found after all"
	if err := r.Mark(t.Context(), back, register.Attached, two); err != nil {
		t.Fatal(err)
	}
	s = attaching(t, j, r, src)
	if all, before, _ := s.Sheets(); all != 5 || before != 2 {
		t.Errorf("%d sheets, %d attached", all, before)
	}
	for _, line := range []string{"Almeida 214", "VDOURA-0000001", "Almeida 216", "VDOURA-0000003", "Almeida 217", "VDOURA-0000004", "Sarmento 3", "VDOURA-0000005"} {
		if a := s.Line(line); a.Wrong {
			t.Error(a.Message)
		}
	}
	if rep, err := s.Finish(clerk); err != nil || len(rep.Open) > 0 || rep.Attached != 4 {
		t.Errorf("%v %+v", err, rep)
	}
}

// Of a session that never ends in order, all but the last pairs are in the
// register, and only those can be taken back.
func TestAttachSettles(t *testing.T) {
	const sheets = 60
	var rows []string
	for i := range sheets {
		rows = append(rows, fmt.Sprintf(",I. Almeida,%d", 300+i))
	}
	j, r := newBook(t)
	src, _, err := issuedFor(t, j, r, tableOf(rows), table.Options{}, false)
	if err != nil {
		t.Fatal(err)
	}
	attached := func() int {
		n := 0
		for _, err := range r.List(t.Context(), register.Filter{States: []register.State{register.Attached}}) {
			if err != nil {
				t.Fatal(err)
			}
			n++
		}
		return n
	}
	s := attaching(t, j, r, src)
	for i := range sheets {
		s.Line(fmt.Sprintf("Almeida %d", 300+i))
		if a := s.Line(fmt.Sprintf("VDOURA-%07d", i+1)); a.Wrong {
			t.Fatal(a.Message)
		}
		if err := s.Settle(clerk); err != nil {
			t.Fatal(err)
		}
		if got, least := attached(), i+1-revocable-portion; got < least || got > max(0, i+1-revocable) {
			t.Fatalf("after %d pairs %d are in the register", i+1, got)
		}
	}
	for i := range revocable {
		if a := s.Line("undo"); !strings.HasPrefix(a.Message, "open again") {
			t.Fatalf("undo %d: %s", i+1, a.Message)
		}
	}
	for range portion {
		s.Line("undo")
	}
	if a := s.Line("undo"); a.Message != "nothing to undo: the pairs before are in the register" {
		t.Errorf("undo: %s", a.Message)
	}
	// A sheet that is settled may be scanned again, but not with another sticker.
	s.Line("Almeida 300")
	if a := s.Line("VDOURA-0000001"); a.Wrong || a.Message != "I. Almeida 300: VDOURA-0000001, as before" {
		t.Errorf("%+v", a)
	}
	s.Line("Almeida 300")
	if a := s.Line("VDOURA-0000002"); !a.Wrong {
		t.Errorf("%+v", a)
	}
	before := attached()
	rep, err := s.Finish(clerk)
	if err != nil || rep.Attached != before || len(rep.Open) != sheets-before {
		t.Errorf("%d attached, %d open, %v; want %d, %d", rep.Attached, len(rep.Open), err, before, sheets-before)
	}
}

func TestAttachPrinted(t *testing.T) {
	_, r, _ := pile(t)
	if _, err := AttachPrinted(t.Context(), r); err == nil || !strings.Contains(err.Error(), "name the table") {
		t.Error(err)
	}
	three, _ := r.Range(t.Context(), "VDOURA-0000002", "VDOURA-0000004")
	if err := r.Mark(t.Context(), clerk, register.Printed, three); err != nil {
		t.Fatal(err)
	}
	bare, err := r.Issue(t.Context(), clerk, "", 2)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Mark(t.Context(), clerk, register.Printed, bare); err != nil {
		t.Fatal(err)
	}
	s, err := AttachPrinted(t.Context(), r)
	if err != nil {
		t.Fatal(err)
	}
	if all, _, _ := s.Sheets(); all != 3 || s.Nameless != 2 {
		t.Errorf("%d sheets, %d without a specimen", all, s.Nameless)
	}
	s.Line("Almeida 216")
	if a := s.Line("VDOURA-0000003"); a.Wrong {
		t.Error(a.Message)
	}
	if rep, err := s.Finish(clerk); err != nil || rep.Attached != 1 || len(rep.Open) != 2 {
		t.Errorf("%v %+v", err, rep)
	}
}

// TestAttachFree: sheets without a number take stickers that were printed for
// none in particular, and have those numbers from then on.
func TestAttachFree(t *testing.T) {
	j, r, _ := pile(t)
	src := tableOf([]string{",I. Almeida,215", ",I. Almeida,901", "LUPA 3,I. Almeida,7", ",I. Almeida,902", ",I. Almeida,s.n.", ",I. Almeida,903", ",I. Almeida,903"})
	only := numberTable(t, tableOf([]string{",I. Almeida,901"}), table.Options{})
	if _, err := j.AttachTable(t.Context(), r, only); err == nil || !strings.Contains(err.Error(), "issue them first") {
		t.Error(err)
	}
	bare, err := r.Issue(t.Context(), clerk, "", 3) // 6 to 8
	if err != nil {
		t.Fatal(err)
	}
	spoiled := clerk
	spoiled.Why = "torn"
	if bare.First = bare.Last; r.Mark(t.Context(), spoiled, register.Void, bare) != nil {
		t.Fatal("not marked")
	}
	s := attaching(t, j, r, src)
	if all, before, free := s.Sheets(); all != 3 || before != 0 || free != 2 || s.Unnumbered != 3 {
		t.Errorf("%d sheets, %d before, %d free, %d without a number", all, before, free, s.Unnumbered)
	}
	for _, l := range [][2]string{
		{"Almeida 901", ""}, {"VDOURA-0000002", "!which is that of I. Almeida 215"},
		{"Almeida 901", ""}, {"VDOURA-0000001", "!which is that of I. Almeida 214"},
		{"Almeida 901", ""}, {"VDOURA-0000008", "!which is void; put another sticker on it"},
		{"Almeida 901", ""}, {"VDOURA-0000009", "!never issued"},
		{"Almeida 901", ""}, {"VDOURA-0000006", "I. Almeida 901: VDOURA-0000006, its number from now on"},
		{"Almeida 902", ""}, {"VDOURA-0000006", "!which is that of I. Almeida 901"},
		{"Almeida 215", ""}, {"VDOURA-0000006", "!is on I. Almeida 901 already; I. Almeida 215 gets VDOURA-0000002"},
		{"undo", "open again: I. Almeida 901, VDOURA-0000006"},
		{"Almeida 902", ""}, {"VDOURA-0000006", "I. Almeida 902: VDOURA-0000006"},
		{"Almeida 901", ""}, {"VDOURA-0000007", "I. Almeida 901: VDOURA-0000007"},
	} {
		a := s.Line(l[0])
		want, wrong := strings.CutPrefix(l[1], "!")
		if a.Wrong != wrong || !strings.Contains(a.Message, want) || (want == "") != (a.Message == "") {
			t.Errorf("%q is answered %+v, want %q", l[0], a, l[1])
		}
	}
	if rep, err := s.Finish(clerk); err != nil || rep.Attached != 2 || strings.Join(rep.Open, "; ") != "I. Almeida 215, VDOURA-0000002" {
		t.Errorf("%v %+v", err, rep)
	}
	// The table gets the numbers of the stickers.
	got, rep, err := issuedFor(t, j, r, src, table.Options{}, true)
	if err != nil || rep.Issued.Last != 0 || !strings.Contains(got, "\nVDOURA-0000007,I. Almeida,901") || !strings.Contains(got, "\nVDOURA-0000006,I. Almeida,902") {
		t.Errorf("%v %+v\n%s", err, rep, got)
	}
}

func TestFindNumbers(t *testing.T) {
	j, r, src := pile(t)
	_ = j
	kept := func(l register.Label) {
		t.Helper()
		if _, err := r.Remember(t.Context(), clerk, register.Run{Program: "test", Source: "trip.csv"}, func(yield func(register.Label, error) bool) { yield(l, nil) }); err != nil {
			t.Fatal(err)
		}
	}
	one := register.Label{Kind: "sheet", Label: 1, Of: 1, CatalogNumber: "VDOURA-0000001", Collector: "I. Almeida | T. Brandão", Number: "214", Name: "Genista florida", Date: "", Box: []byte("x")}
	kept(one)
	gift := one
	gift.For, gift.CatalogNumber = "PINHEL", ""
	kept(gift)
	foreign := one
	foreign.CatalogNumber, foreign.Number = "LUPA 7", "300"
	kept(foreign)
	for text, want := range map[string]string{
		"Almeida 214":    "VDOURA-0000001 printed 2",
		"VDOURA-0000001": "VDOURA-0000001 printed 1",
		"Almeida 215":    "VDOURA-0000002 issued 0",
		"Almeida 300":    "no number LUPA 7 1",
		"sarmento":       "VDOURA-0000005 issued 0",
	} {
		found, err := FindNumbers(t.Context(), r, text, 20)
		if err != nil || len(found) != 1 {
			t.Errorf("%q: %v %+v", text, err, found)
			continue
		}
		f := found[0]
		got := "no number " + f.Number.Specimen.CatalogNumber
		if f.Number.Range.Last > 0 {
			got = f.Number.Range.String() + " " + string(f.Number.State)
		}
		if got += " " + string(rune('0'+len(f.Labels))); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
	if found, err := FindNumbers(t.Context(), r, "almeida", 20); err != nil || len(found) != 5 {
		t.Errorf("%v, %d found in\n%s", err, len(found), src)
	}
}

// FuzzAttachLines: whatever is scanned, a pair is confirmed only if the line
// before was a sheet and its own sticker followed, and nothing is written.
func FuzzAttachLines(f *testing.F) {
	for _, s := range []string{"Almeida 214\nVDOURA-0000001", "Almeida 214\tVDOURA-0000001\nundo", "undo\ndone\n", "VDOURA-0000002\nalm 215\nvdoura2", "Sarmento 3\nAlmeida 216\nhttps://example.org/VDOURA-0000003", "\x00\t\t\n214"} {
		f.Add(s)
	}
	j, r, src := pile(f)
	f.Fuzz(func(t *testing.T, s string) {
		w := attaching(t, j, r, src)
		for line := range strings.SplitSeq(s, "\n") {
			before, waiting := w.Confirmed(), w.Waiting()
			a := w.Line(line)
			switch more := w.Confirmed() - before; {
			case more > 1 || a.Wrong && more > 0 || a.Done && more != 0:
				t.Fatalf("%q confirms %d, answered %+v", line, more, a)
			case more == 1 && waiting == "" && !strings.Contains(line, "\t"):
				t.Fatalf("%q is confirmed and no sheet waited", line)
			case more == 1 && !strings.Contains(a.Message, ": VDOURA-000000"):
				t.Fatalf("%q is confirmed with %q", line, a.Message)
			}
		}
	})
}
