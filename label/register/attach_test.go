package register

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// pile is n sheets in order, "Almeida 101" and so on, with stickers 1 to n.
func pile(t testing.TB, n int) *Attaching {
	t.Helper()
	var order []Pair
	for i := range n {
		order = append(order, Pair{Sheet: Specimen{Collector: "I. Almeida", Number: fmt.Sprint(101 + i)}, Sticker: fmt.Sprintf("VDOURA-%07d", i+1)})
	}
	a, err := NewAttaching(order)
	must(t, err)
	return a
}

// scan scans a sheet of a pile with the sticker that is meant for another; -1
// is a sticker of another pile.
func scan(a *Attaching, sheet, meant int) Scan {
	sticker := "VDOURA-0009999"
	if meant >= 0 && meant < len(a.order) {
		sticker = a.order[meant].Sticker
	}
	return a.Scan(fmt.Sprintf("Almeida %d", 101+sheet), sticker)
}

// TestSlip goes through a pile in which the stickers have slipped by one, or
// were exchanged, sheet by sheet as they lie: bears[i] is the sheet that the
// sticker on sheet i is meant for, none if it bears none.
func TestSlip(t *testing.T) {
	const none = -2
	for _, tc := range []struct {
		name  string
		bears []int
		want  string // "0 fits", "3 slipped +1 from 3"
		says  string // of the first scan that does not fit
	}{
		{"all right", []int{0, 1, 2, 3}, "0 fits, 1 fits, 2 fits, 3 fits", ""},
		{"a sticker left out at the start", []int{1, 2, 3, 4, -1}, "0 slipped +1 from 0, 1 slipped +1 from 0, 2 slipped +1 from 0, 3 slipped +1 from 0, 4 stray", "a sticker was left out with this sheet"},
		{"in the middle", []int{0, 1, 3, 4, -1}, "0 fits, 1 fits, 2 slipped +1 from 2, 3 slipped +1 from 2, 4 stray", "a sticker was left out with this sheet"},
		{"at the end", []int{0, 1, 2, 3, -1}, "0 fits, 1 fits, 2 fits, 3 fits, 4 stray", "not meant for any sheet here; I. Almeida 105 gets VDOURA-0000005"},
		{"before the last", []int{0, 1, 2, 4, -1}, "0 fits, 1 fits, 2 fits, 3 slipped +1 from 3, 4 stray", "a sticker was left out"},
		{"a sheet passed over at the start", []int{none, 0, 1, 2, 3}, "1 slipped -1 from 0, 2 slipped -1 from 0, 3 slipped -1 from 0, 4 slipped -1 from 0", "a sheet was passed over between I. Almeida 101 and this sheet"},
		{"a sheet passed over in the middle", []int{0, 1, none, 2, 3}, "0 fits, 1 fits, 3 slipped -1 from 2, 4 slipped -1 from 2", "between I. Almeida 103 and this sheet"},
		{"a sheet passed over at the end", []int{0, 1, 2, none, 3}, "0 fits, 1 fits, 2 fits, 4 slipped -1 from 3", "a sheet was passed over"},
		{"an old sticker before the first", []int{-1, 0, 1, 2}, "0 stray, 1 slipped -1 from 0, 2 slipped -1 from 0, 3 slipped -1 from 0", "VDOURA-0009999"},
		{"two stickers of one number", []int{0, 1, 1, 2, 3}, "0 fits, 1 fits, 2 slipped -1 from 2, 3 slipped -1 from 2, 4 slipped -1 from 2", "there are two stickers VDOURA-0000002"},
		{"two left out", []int{0, 2, 3, 5, 6, -1, -1}, "0 fits, 1 slipped +1 from 1, 2 slipped +1 from 1, 3 wrong sticker, 4 slipped +2 from 1, 5 stray, 6 stray", "left out with this sheet"},
		{"two left out at once", []int{0, 3, 4, 5, -1, -1}, "0 fits, 1 wrong sticker, 2 slipped +2 from 1, 3 slipped +2 from 1, 4 stray, 5 stray", "bears VDOURA-0000004, which is meant for I. Almeida 104; it gets VDOURA-0000002"},
		{"left out, and then a sheet passed over", []int{0, 2, 3, none, 4, 5}, "0 fits, 1 slipped +1 from 1, 2 slipped +1 from 1, 4 fits, 5 fits", "left out"},
		{"two neighbours exchanged", []int{0, 2, 1, 3}, "0 fits, 1 slipped +1 from 1, 2 wrong sticker, 3 fits", "left out with this sheet"},
		{"two exchanged", []int{0, 3, 2, 1, 4}, "0 fits, 1 wrong sticker, 2 fits, 3 wrong sticker, 4 fits", "meant for I. Almeida 104"},
		{"two wrong by as much, with right ones between", []int{3, 1, 2, 6, 4, 5, -1}, "0 wrong sticker, 1 fits, 2 fits, 3 wrong sticker, 4 fits, 5 fits, 6 stray", "meant for I. Almeida 104"},
		{"one sheet", []int{-1}, "0 stray", "gets VDOURA-0000001"},
	} {
		a := pile(t, len(tc.bears))
		var got []string
		said := ""
		for i, meant := range tc.bears {
			if meant == none {
				continue
			}
			s := scan(a, i, meant)
			text := fmt.Sprintf("%d %s", i, s.Finding)
			if s.Finding == Slipped {
				text += fmt.Sprintf(" %+d from %d", s.Shift, s.From)
			}
			got = append(got, text)
			if s.Finding != Fits && said == "" {
				said = s.Message
			}
			if s.Sheet != i || s.Meant != max(meant, -1) || s.Message == "" {
				t.Errorf("%s: sheet %d: %+v", tc.name, i, s)
			}
			if strings.HasSuffix(tc.name, "exchanged") && i == slices.Max(tc.bears)-1 && !strings.Contains(s.Message, "exchange them") && s.Finding != Fits {
				t.Errorf("%s: %s", tc.name, s.Message)
			}
		}
		if text := strings.Join(got, ", "); text != tc.want {
			t.Errorf("%s: %s\nwant %s", tc.name, text, tc.want)
		}
		if !strings.Contains(said, tc.says) {
			t.Errorf("%s: %q does not say %q", tc.name, said, tc.says)
		}
		fits := strings.Count(tc.want, "fits")
		if done, of := a.Done(); done != fits || of != len(tc.bears) || len(a.Open()) != of-done {
			t.Errorf("%s: %d of %d, open %v", tc.name, done, of, a.Open())
		}
	}
}

// A pile is checked by samples, then put right.
func TestSlipBySamples(t *testing.T) {
	a := pile(t, 100)
	bears := make([]int, 100) // a sticker was left out at sheet 37
	for i := range bears {
		bears[i] = i
		if i >= 37 {
			bears[i] = i + 1
		}
	}
	for i := 0; i < 100; i += 10 {
		s := scan(a, i, bears[i])
		switch {
		case i < 37 && s.Finding != Fits:
			t.Errorf("sheet %d: %+v", i, s)
		case i >= 37 && (s.Finding != Slipped || s.Shift != 1 || s.From != 31 || s.From > 37):
			t.Errorf("sheet %d: %+v", i, s)
		}
	}
	for i := range 100 {
		if s := scan(a, i, i); s.Finding != Fits {
			t.Errorf("put right, sheet %d: %+v", i, s)
		}
	}
	if done, of := a.Done(); done != of {
		t.Errorf("%d of %d", done, of)
	}
	if s := scan(a, 50, 51); s.Finding != Slipped || s.From != 50 || len(a.Open()) != 1 {
		t.Errorf("scanned again and wrong: %+v", s)
	}
}

// TestSlipTwin scans piles with slips at random places, in order, and holds
// every answer against what is true of the whole pile.
func TestSlipTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 30).Draw(t, "sheets")
		bears := make([]int, n)
		start := make([]int, n) // of the slip that a sheet is in
		shift, began := 0, 0
		for i := range bears {
			switch rapid.IntRange(0, 9).Draw(t, "what happens") {
			case 0:
				shift, began = shift+1, i
			case 1:
				shift, began = shift-1, i
			}
			bears[i], start[i] = i+shift, began
		}
		var order []Pair
		for i := range n {
			order = append(order, Pair{Sheet: Specimen{Collector: "I. Almeida", Number: fmt.Sprint(101 + i)}, Sticker: fmt.Sprintf("VDOURA-%07d", i+1)})
		}
		a, err := NewAttaching(order)
		if err != nil {
			t.Fatal(err)
		}
		step := rapid.IntRange(1, 4).Draw(t, "step")
		for i := 0; i < n; i += step {
			meant := bears[i]
			if meant >= n {
				meant = -1
			}
			s := scan(a, i, max(meant, -1))
			switch {
			case s.Sheet != i || s.Meant != max(meant, -1):
				t.Fatalf("sheet %d bears %d: %+v", i, meant, s)
			case (s.Finding == Fits) != (bears[i] == i):
				t.Fatalf("sheet %d bears %d: %+v", i, meant, s)
			case meant < 0 && s.Finding != Stray:
				t.Fatalf("sheet %d bears %d: %+v", i, meant, s)
			case s.Finding == Slipped && (s.Shift != bears[i]-i || s.From > i):
				t.Fatalf("sheet %d bears %d: %+v", i, meant, s)
			case s.Finding == Slipped && s.From > start[i] && !slices.Contains(a.fits[start[i]:s.From], true):
				t.Fatalf("sheet %d bears %d since %d: %+v", i, meant, start[i], s)
			case meant >= 0 && meant != i && (meant-i == 1 || meant-i == -1) && s.Finding != Slipped && !strings.Contains(s.Message, "exchange"):
				t.Fatalf("sheet %d bears %d: %+v", i, meant, s)
			}
			if a.fits[i] != (bears[i] == i) {
				t.Fatalf("sheet %d bears %d: confirmed %t", i, meant, a.fits[i])
			}
		}
	})
}

func TestScanNames(t *testing.T) {
	order := []Pair{
		{Specimen{Collector: "I. Almeida & J. Moura", Number: "214", Part: "Sheet 1 of 2"}, "VDOURA-0000001"},
		{Specimen{Collector: "I. Almeida & J. Moura", Number: "214", Part: "Sheet 2 of 2"}, "VDOURA-0000002"},
		{Specimen{Collector: "I. Almeida", Number: "215"}, "VDOURA-0000003"},
		{Specimen{Collector: "João Nogueira", Number: "215"}, "VDOURA-0000004"},
		{Specimen{Collector: "João Nogueira", Number: "CN 97-114"}, "VDOURA-0000005"},
		{Specimen{Collector: "João Nogueira", Number: "s.n."}, "VDOURA-0000006"},
		{Specimen{Collector: "", Number: "77"}, "VDOURA-0000007"},
	}
	a, err := NewAttaching(order)
	must(t, err)
	for _, tc := range []struct {
		text string
		want Finding
		at   int
	}{
		{"Almeida 215", Fits, 2}, {"215 almeida", Fits, 2}, {"ALMEIDA, I. 215", Fits, 2}, {"joao nog 215", Fits, 3}, {"215", SeveralFit, -1},
		{"Almeida 214", SeveralFit, -1}, {"Almeida 214 Sheet 1 of 2", Fits, 0}, {"Almeida 214 sheet 2 of 2", Fits, 1}, {"Almeida 214 1", Fits, 0},
		{"Nogueira CN97-114", Fits, 4}, {"Nogueira CN 97-114", Fits, 4}, {"Nogueira cn 97 114", Fits, 4}, {"CN97-114", Fits, 4},
		{"Nogueira s.n.", Fits, 5}, {"Nogueira S. N.", Fits, 5}, {"77", Fits, 6}, {"Almeida 77", NoSheet, -1}, {"Almeida 999", NoSheet, -1}, {"", NoSheet, -1}, {"Almeida", NoSheet, -1},
	} {
		sticker := "VDOURA-0000001"
		if tc.at >= 0 {
			sticker = strings.ToLower(strings.Replace(order[tc.at].Sticker, "-", " ", 1))
		}
		s := a.Scan(tc.text, sticker)
		if s.Finding != tc.want || s.Sheet != tc.at || s.Message == "" {
			t.Errorf("%q: %+v", tc.text, s)
		}
		if s.Finding == SeveralFit && !strings.Contains(s.Message, "say which") {
			t.Errorf("%q: %s", tc.text, s.Message)
		}
	}
	_, err = NewAttaching([]Pair{order[0], {order[1].Sheet, "vdoura0000001"}})
	refused(t, err, ErrClash, "vdoura0000001", "Sheet 1 of 2")
	_, err = NewAttaching([]Pair{{order[1].Sheet, ""}})
	refused(t, err, ErrNotIssued, "issue it first", "214")
	empty, err := NewAttaching(nil)
	must(t, err)
	if s := empty.Scan("Almeida 214", "VDOURA-0000001"); s.Finding != NoSheet {
		t.Errorf("%+v", s)
	}
}

func TestAttach(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		assign(t, r, sp("I. Almeida|1"), sp("I. Almeida|2|||id2"), sp("I. Almeida|s.n.|||id3"))
		issue(t, r, 10) // stickers printed ahead
		mark(t, r, Printed, 1, 10)
		mark(t, r, Void, 9, 9)
		pair := func(specimen string, n int) Pair { return Pair{sp(specimen), fmt.Sprintf("vdoura %d", n)} }
		for _, tc := range []struct {
			pairs []Pair
			kind  error
			says  string
		}{
			{[]Pair{pair("I. Almeida|1", 2)}, ErrClash, "I. Almeida 2"},
			{[]Pair{pair("I. Almeida|1", 4)}, ErrClash, "VDOURA-0000001"},
			{[]Pair{pair("I. Almeida|9|||id3", 4)}, ErrClash, "VDOURA-0000003"},
			{[]Pair{pair("J. Moura|7", 5), pair("J. Moura|8", 5)}, ErrClash, "VDOURA-0000005"},
			{[]Pair{pair("J. Moura|7", 5), pair("J. Moura|7", 6)}, ErrClash, "VDOURA-0000005"},
			{[]Pair{pair("J. Moura|7", 9)}, ErrVoid, "VDOURA-0000009"},
			{[]Pair{pair("J. Moura|7", 99)}, ErrNotIssued, "never issued"},
			{[]Pair{{sp("J. Moura|7"), "LISU 5"}}, ErrForeign, "LISU 5"},
			{[]Pair{{sp("J. Moura|7"), "VDOURA-00000005"}}, nil, "8 figures"},
		} {
			refused(t, r.Attach(t.Context(), registrar(""), tc.pairs...), tc.kind, tc.says)
		}
		if got := states(t, r); got != "1-8 printed, 9 void, 10 printed, 11-13 issued" {
			t.Errorf("a refused pair changed something: %s", got)
		}
		must(t, r.Attach(t.Context(), registrar("scanned"), pair("Almeida, I.|1", 1), pair("I. Almeida|2|||id2", 2), pair("I. Almeida|s.n.|||id3", 3), pair("J. Moura|7|||id7", 4), pair("", 5)))
		must(t, r.Attach(t.Context(), registrar("again"), pair("I. Almeida|1", 1), pair("J. Moura|7|||id7", 4)))
		must(t, r.Attach(t.Context(), registrar("a corrected record"), pair("J. Moura|77|||id7", 4)))
		must(t, r.Attach(t.Context(), registrar("found on the sheet"), pair("J. Moura|8", 9)))
		if got := states(t, r); got != "1-5 attached, 6-8 printed, 9 attached, 10 printed, 11-13 issued" {
			t.Errorf("states: %s", got)
		}
		for i, want := range []string{"4", "9", "4"} {
			if got := told(t, r, assign(t, r, sp([]string{"J. Moura|7", "J. Moura|8", "|||" + "|id7"}[i]))[0]); got != want {
				t.Errorf("%d: %s, want %s", i, got, want)
			}
		}
		if got := history(t, r, "VDOURA-0000001"); strings.Count(got, "attached") != 1 {
			t.Errorf("history: %s", got)
		}
		whole(t, r)
	})
}

// Random pairs, twice as many as fit: no specimen ends with two stickers, no
// sticker on two specimens.
func TestAttachProperties(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 40)
		rnd := rand.New(rand.NewPCG(8, 8))
		on, of := map[int]int{}, map[int]int{}
		for range 150 {
			sheet, sticker := 1+rnd.IntN(40), 1+rnd.IntN(40)
			err := r.Attach(t.Context(), registrar("test"), Pair{Specimen{Collector: "I. Almeida", Number: fmt.Sprint(sheet)}, fmt.Sprintf("VDOURA-%07d", sticker)})
			free := on[sheet] == 0 && of[sticker] == 0 || on[sheet] == sticker
			if (err == nil) != free {
				t.Fatalf("sheet %d (has %d), sticker %d (is on %d): %v", sheet, on[sheet], sticker, of[sticker], err)
			}
			if err == nil {
				on[sheet], of[sticker] = sticker, sheet
			}
		}
		whole(t, r)
	})
}
