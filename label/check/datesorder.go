package check

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label/date"
)

// orderShown is what the rest of a table tells of whether the day or the month
// stands first in a column's dates, where the column itself does not.
type orderShown struct {
	order   date.Order
	reasons []string
	firm    bool // enough for one reading to be proposed
	against bool // the reasons contradict each other, so that they say nothing
}

// bothOrders are those a date in figures can have, orderWords how they are said.
var (
	bothOrders = [...]date.Order{date.DayFirst, date.MonthFirst}
	orderWords = [...]string{date.DayFirst: "the day", date.MonthFirst: "the month"}
)

func otherOrder(o date.Order) date.Order { return date.DayFirst + date.MonthFirst - o }

func (s *orderShown) add(order date.Order, firm bool, reason string) {
	s.against = s.against || s.order != date.UnknownOrder && s.order != order
	s.order, s.firm = order, s.firm || firm
	s.reasons = append(s.reasons, reason)
}

// votes counts by date.Order.
type votes [3]int

// one returns the order that something is for and nothing against.
func (v votes) one() (date.Order, int) {
	for _, o := range bothOrders {
		if v[o] > 0 && v[otherOrder(o)] == 0 {
			return o, v[o]
		}
	}
	return date.UnknownOrder, 0
}

// seen is what the row of a date in doubt tells of its order.
type seen struct {
	column  int // one of no date that is read, whose own date has one order, from 1; 0: none
	heading string
	order   date.Order // of that column
	barred  date.Order // what the determination or today speaks against
	series  string     // the collector, and what stands before the figures of the number
	number  int        // 0: none
}

// seenBy looks at the rest of a row whose date, of the i-th of dateTerms, is in doubt.
func (c *Context) seenBy(i int) seen {
	var s seen
	columns := c.row.Table().Columns()
	for n := range c.row.Cells {
		text := c.row.Cells[n].Text
		if len(text) < 6 || len(text) > 30 || text[0] < '0' || text[0] > '9' || n >= len(columns) || slices.Contains(dateTerms[:], columns[n].Term) {
			continue
		}
		if order, _ := figuresOrder(text); order != date.UnknownOrder {
			s.column, s.heading, s.order = n+1, columns[n].Heading, order
			break
		}
	}
	r := &c.EventDate
	if i == 1 {
		r = &c.DateIdentified
	}
	if today := c.Options.Today; !today.IsZero() {
		s.barred = r.barred(func(d date.Date) bool { return !d.After(today) })
	}
	if i == 0 && s.barred == date.UnknownOrder {
		s.barred = r.barred(c.determinedAfter)
	}
	return s
}

// barred returns the order in which none of the readings of a date can be.
func (r *DateReading) barred(can func(date.Date) bool) date.Order {
	var all, left votes
	for _, d := range r.Candidates {
		order := orderOf(r.Text, d)
		all[order]++
		if can(d) {
			left[order]++
		}
	}
	for _, o := range bothOrders {
		if all[o] > 0 && left[o] == 0 && left[otherOrder(o)] > 0 {
			return o
		}
	}
	return date.UnknownOrder
}

// determinedAfter reports whether a day of collecting can be, for what the date of
// the determination says. Where that is in doubt too, it is taken in the same order.
func (c *Context) determinedAfter(d date.Date) bool {
	r := &c.DateIdentified
	if r.Status == date.OK {
		return !d.After(r.Date)
	}
	order, some := orderOf(c.EventDate.Text, d), false
	for _, e := range r.Candidates {
		if orderOf(r.Text, e) == order {
			if some = true; !d.After(e) {
				return true
			}
		}
	}
	return !some
}

// numberedBy keeps whose number a date in doubt has.
func (s *seen) numberedBy(r *Record) {
	i := len(r.Number)
	for i > 0 && r.Number[i-1] >= '0' && r.Number[i-1] <= '9' {
		i--
	}
	if n, err := strconv.Atoi(r.Number[i:]); err == nil && r.Collector != "" {
		s.series, s.number = r.Collector+"\x00"+r.Number[:i], n
	}
}

// shown tells what the rest of the table shows of the order of the i-th column.
func (t *doubtTable) shown(i int) orderShown {
	var s orderShown
	put := func(v votes, column string) {
		if order, n := v.one(); n > 0 {
			s.add(order, n >= enough, fmt.Sprintf("%s of %s %s %s first, none %s", strings.Replace(others(n), " other", "", 1), column, puts(n), orderWords[order], orderWords[otherOrder(order)]))
		}
	}
	put(t.columns[1-i].orders, dateTerms[1-i])
	doubts := t.columns[i].doubts
	var columns []int
	counted, headings := map[int]votes{}, map[int]string{}
	for k := range doubts {
		if d := &doubts[k]; d.column > 0 {
			v, known := counted[d.column]
			if !known {
				columns, headings[d.column] = append(columns, d.column), d.heading
			}
			v[d.order]++
			counted[d.column] = v
		}
	}
	for _, n := range columns {
		put(counted[n], strconv.Quote(headings[n]))
	}
	for _, tell := range [...]func([]doubt) (date.Order, bool, string){barredOrder, numberOrder, monthOrder} {
		if order, firm, reason := tell(doubts); order != date.UnknownOrder {
			s.add(order, firm, reason)
		}
	}
	return s
}

// barredOrder tells by what cannot be: days to come, and plants determined before
// they were collected.
func barredOrder(doubts []doubt) (date.Order, bool, string) {
	var v votes
	for k := range doubts {
		v[doubts[k].barred]++
	}
	order, n := v.one()
	if n == 0 {
		return date.UnknownOrder, false, ""
	}
	return otherOrder(order), n >= enough, fmt.Sprintf("with %s first %s would be still to come, or after the determination", orderWords[order], ofThese(n))
}

func ofThese(n int) string {
	if n == 1 {
		return "1 of these dates"
	}
	return strconv.Itoa(n) + " of these dates"
}

// So many neighbours in a collector's numbers are held against each other, and in so
// many the days must fall, if the order is to be told by them.
const (
	neighboursLeast = 6
	fallsLeast      = 3
)

// numberOrder tells by the collectors' numbers, with which the days of a year rise.
func numberOrder(doubts []doubt) (date.Order, bool, string) {
	var list []*doubt
	for k := range doubts {
		if d := &doubts[k]; d.number > 0 && len(d.candidates) > 0 {
			list = append(list, d)
		}
	}
	slices.SortStableFunc(list, func(a, b *doubt) int {
		return cmp.Or(cmp.Compare(a.series, b.series), cmp.Compare(a.number, b.number))
	})
	neighbours, falls := 0, votes{}
	for k := 1; k < len(list); k++ {
		a, b := list[k-1], list[k]
		f, ok1 := twoFigures(a.field.Text)
		g, ok2 := twoFigures(b.field.Text)
		y, _ := a.candidates[0].Year()
		if z, _ := b.candidates[0].Year(); y != z || !ok1 || !ok2 || f == g || a.series != b.series || a.number == b.number {
			continue
		}
		neighbours++
		if cmp.Or(cmp.Compare(f[1], g[1]), cmp.Compare(f[0], g[0])) > 0 {
			falls[date.DayFirst]++
		}
		if cmp.Or(cmp.Compare(f[0], g[0]), cmp.Compare(f[1], g[1])) > 0 {
			falls[date.MonthFirst]++
		}
	}
	for _, o := range bothOrders {
		if bad := falls[otherOrder(o)]; neighbours >= neighboursLeast && falls[o]*20 <= neighbours && bad >= fallsLeast && bad*5 >= neighbours {
			rise := "the dates rise with the collector's numbers"
			if falls[o] > 0 {
				rise = "nearly all dates rise with the collector's numbers"
			}
			return o, true, fmt.Sprintf("with %s first %s, with %s first they fall in %d of %d places", orderWords[o], rise, orderWords[otherOrder(o)], bad, neighbours)
		}
	}
	return date.UnknownOrder, false, ""
}

// figuresLeast is how many different days tell a month.
const figuresLeast = 6

// monthOrder tells by the month of a journey: one of the two figures is the same
// in all dates while the other changes. The first of each month is a habit.
func monthOrder(doubts []doubt) (date.Order, bool, string) {
	var has [2][13]bool
	for k := range doubts {
		f, ok := twoFigures(doubts[k].field.Text)
		if !ok {
			return date.UnknownOrder, false, ""
		}
		has[0][f[0]], has[1][f[1]] = true, true
	}
	for i, o := range [...]date.Order{date.MonthFirst, date.DayFirst} {
		var same, other []int
		for n := range 13 {
			if has[i][n] {
				same = append(same, n)
			}
			if has[1-i][n] {
				other = append(other, n)
			}
		}
		if len(same) == 1 && same[0] > 1 && len(other) >= figuresLeast {
			which := [...]string{"first", "second"}
			return o, false, fmt.Sprintf("the %s figure is %d in all of them, the %s one of %d", which[i], same[0], which[1-i], len(other))
		}
	}
	return date.UnknownOrder, false, ""
}

// twoFigures returns the first two figures of a date that can be day and month
// either way.
func twoFigures(text string) (f [2]int, ok bool) {
	if _, either := figuresOrder(text); !either {
		return f, false
	}
	i := 0
	for k := range f {
		for text[i] >= '0' && text[i] <= '9' {
			f[k] = f[k]*10 + int(text[i]-'0')
			i++
		}
		for i++; text[i] == ' '; i++ {
		}
	}
	return f, true
}
