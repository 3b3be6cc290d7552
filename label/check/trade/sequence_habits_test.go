package trade

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/label"
)

// An entry of an invented field book.
type entry struct {
	who, number string
	day         time.Time
}

// trip lets a collector number on from a day: so many plants, some a day.
func trip(rnd *rand.Rand, who, format string, from, count int, day time.Time, perDay int) []entry {
	var all []entry
	for i := range count {
		if i > 0 && rnd.IntN(perDay) == 0 {
			day = day.AddDate(0, 0, 1+rnd.IntN(3))
		}
		all = append(all, entry{who, fmt.Sprintf(format, from+i), day})
	}
	return all
}

func on(y, m, d int) time.Time { return time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC) }

// habits are the ways in which people number: all sound. Common practice, from
// memory.
var habits = []struct {
	name string
	book func(*rand.Rand) []entry
}{
	{"one series", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d", 200, 40, on(2011, 5, 3), 6), trip(r, "I. Almeida", "%d", 240, 50, on(2012, 4, 20), 6))
	}},
	{"written down out of order", func(r *rand.Rand) []entry {
		all := slices.Concat(trip(r, "I. Almeida", "%d", 200, 40, on(2011, 5, 3), 6), trip(r, "I. Almeida", "%d", 240, 50, on(2012, 4, 20), 6))
		r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		return all
	}},
	{"backwards", func(r *rand.Rand) []entry {
		all := trip(r, "I. Almeida", "%d", 0, 60, on(2012, 5, 3), 5)
		for i := range all {
			all[i].number = fmt.Sprint(900 - i)
		}
		return all
	}},
	{"newest first", func(r *rand.Rand) []entry {
		all := slices.Concat(trip(r, "I. Almeida", "%d", 200, 40, on(2011, 5, 3), 6), trip(r, "I. Almeida", "%d", 240, 50, on(2012, 4, 20), 6))
		slices.Reverse(all)
		return all
	}},
	{"a prefix for each place", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "VAL-%d", 1, 30, on(2012, 5, 3), 5), trip(r, "I. Almeida", "SER-%d", 1, 30, on(2011, 5, 3), 5), trip(r, "I. Almeida", "VAL-%d", 31, 20, on(2012, 9, 3), 5))
	}},
	{"a team, each with a series", func(r *rand.Rand) []entry {
		a, b := trip(r, "I. Almeida", "%d", 200, 40, on(2012, 5, 3), 5), trip(r, "T. Brandão", "%d", 1410, 40, on(2012, 5, 3), 5)
		var all []entry
		for i := range a {
			all = append(all, a[i], b[i])
		}
		return all
	}},
	{"one collector, the numbers of two", func(r *rand.Rand) []entry {
		a, b := trip(r, "I. Almeida", "%d", 200, 40, on(2012, 5, 3), 5), trip(r, "I. Almeida", "%d", 1410, 40, on(2012, 4, 3), 5)
		return slices.Concat(b, a)
	}},
	{"blocks of numbers for the members", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d", 1000, 30, on(2012, 5, 3), 4), trip(r, "I. Almeida", "%d", 1100, 30, on(2012, 5, 3), 4), trip(r, "I. Almeida", "%d", 1200, 30, on(2012, 5, 3), 4))
	}},
	{"a range reserved and used later", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d", 200, 40, on(2011, 5, 3), 6), trip(r, "I. Almeida", "%d", 260, 40, on(2011, 7, 3), 6), trip(r, "I. Almeida", "%d", 240, 20, on(2012, 6, 3), 6))
	}},
	{"anew every year", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d", 1, 40, on(2011, 5, 3), 5), trip(r, "I. Almeida", "%d", 1, 30, on(2012, 4, 3), 5), trip(r, "I. Almeida", "%d", 1, 30, on(2013, 6, 3), 5))
	}},
	{"number and year", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d/2011", 1, 40, on(2011, 5, 3), 5), trip(r, "I. Almeida", "%d/2012", 1, 40, on(2012, 4, 3), 5))
	}},
	{"year and number", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "2011-%03d", 1, 40, on(2011, 5, 3), 5), trip(r, "I. Almeida", "2012-%03d", 1, 40, on(2012, 4, 3), 5))
	}},
	{"letters, bis, decimals and gaps", func(r *rand.Rand) []entry {
		var all []entry
		for i, e := range trip(r, "I. Almeida", "%d", 300, 60, on(2012, 5, 3), 5) {
			switch i % 10 {
			case 2:
				all = append(all, entry{e.who, e.number + "a", e.day}, entry{e.who, e.number + "b", e.day})
			case 4:
				all = append(all, e, entry{e.who, e.number + " bis", e.day})
			case 6:
				all = append(all, entry{e.who, e.number + ".1", e.day}, entry{e.who, e.number + ".2", e.day})
			case 8:
			default:
				all = append(all, e)
			}
		}
		return all
	}},
	{"two of one surname", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d", 200, 30, on(2012, 5, 3), 5), trip(r, "M. Almeida", "%d", 205, 30, on(1998, 5, 3), 5))
	}},
	{"several sheets in several rows, and s.n.", func(r *rand.Rand) []entry {
		var all []entry
		for i, e := range trip(r, "I. Almeida", "%d", 200, 50, on(2012, 5, 3), 5) {
			all = append(all, e)
			if i%4 == 0 {
				all = append(all, e)
			}
			if i%9 == 0 {
				all = append(all, entry{e.who, "s.n.", e.day})
			}
		}
		return all
	}},
	{"two trips on the same days of two years, by two people", func(r *rand.Rand) []entry {
		return slices.Concat(trip(r, "I. Almeida", "%d", 200, 40, on(2011, 5, 3), 6), trip(r, "J. Prates", "%d", 240, 50, on(2012, 5, 3), 6))
	}},
}

// saidOf runs the rules over a field book and returns what those of numbers and
// dates say.
func saidOf(t *testing.T, book []entry) []label.Finding {
	var all [][]string
	for _, e := range book {
		all = append(all, []string{"recordedBy", e.who, "recordNumber", e.number, "eventDate", e.day.Format(time.DateOnly), "catalogNumber", ""})
	}
	o := options(t)
	o.Rules = sequenceRules()
	_, fs := run(t, open(t, rows(all...)...), o)
	return slices.DeleteFunc(fs, func(f label.Finding) bool {
		return f.Rule != "number-order" && f.Rule != "number-twice" && f.Rule != "number-names"
	})
}

// Nothing is said of sound habits, but that numbers stand twice where somebody
// begins anew; a year typed wrongly is found in nearly all of them.
func TestHabits(t *testing.T) {
	alarms, missed, planted, others := 0, 0, 0, 0
	for i, h := range habits {
		for seed := range uint64(2) {
			book := h.book(rand.New(rand.NewPCG(seed, uint64(i))))
			for _, f := range saidOf(t, book) {
				if f.Rule == "number-twice" && strings.Contains(f.Message, "anew every year") {
					continue
				}
				alarms++
				t.Errorf("%s: %s", h.name, f)
			}
			rnd := rand.New(rand.NewPCG(seed, 77))
			for _, slip := range []struct {
				name   string
				change func(time.Time) time.Time
			}{
				{"another year", func(d time.Time) time.Time { return d.AddDate(-1, 0, 0) }},
				{"the next year", func(d time.Time) time.Time { return d.AddDate(1, 0, 0) }},
				{"another decade", func(d time.Time) time.Time { return d.AddDate(-10, 0, 0) }},
				{"another month", func(d time.Time) time.Time { return d.AddDate(0, 2, 0) }},
			} {
				at := 3 + rnd.IntN(len(book)-6)
				for strings.Contains(book[at].number, "s.n.") {
					at--
				}
				bad := slices.Clone(book)
				bad[at].day = slip.change(bad[at].day)
				found := false
				for _, f := range saidOf(t, bad) {
					hit := f.Row == at+1
					for _, c := range f.Also {
						hit = hit || f.Rule == "number-twice" && c.Row == at+1
					}
					if hit {
						found = true
					} else if !strings.Contains(f.Message, "anew every year") {
						others++
						t.Logf("%s, %s: of row %d, where %d is wrong: %s", h.name, slip.name, f.Row, at+1, f)
					}
				}
				planted++
				if !found {
					missed++
					t.Logf("%s, %s: not found in row %d, %s", h.name, slip.name, at+1, book[at].number)
				}
			}
		}
	}
	t.Logf("%d false alarms in %d sound books; %d of %d slips missed; %d findings beside them", alarms, 2*len(habits), missed, planted, others)
	if missed > planted/10 || others > planted/20 {
		t.Errorf("%d of %d slips missed, %d other findings", missed, planted, others)
	}
}
