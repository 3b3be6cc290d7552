package date

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"cornerslip/label/lang"
)

// A Status says how well a text could be read as a date.
type Status string

const (
	// OK: the text has one reading.
	OK Status = "ok"
	// Ambiguous: it has several, or one that takes a guess, such as a
	// century that was not written.
	Ambiguous Status = "ambiguous"
	// Incomplete: what is there is a date, but the year is missing.
	Incomplete Status = "incomplete"
	// Invalid: no such day exists, or the text is no date.
	Invalid Status = "invalid"
)

// An Order is the order of day and month where both are figures.
type Order uint8

// The orders. UnknownOrder leaves 3/4/2020 ambiguous.
const (
	UnknownOrder Order = iota
	DayFirst
	MonthFirst
)

// Hints are what is known beforehand. The zero value knows nothing and is the
// careful choice.
type Hints struct {
	// Order settles figures that could be day and month either way.
	Order Order
	// Century is the first year of the century that two-digit years mean
	// (1900); 0 leaves them ambiguous.
	Century int
	// Lang is the language of the text; "" reads all of them at once.
	Lang lang.Tag
}

// A Reading is how a text was understood.
type Reading struct {
	Status Status
	// Date is set if Status is OK, and only then.
	Date Date
	// Candidates are the dates that an ambiguous text can mean, the
	// likeliest first; there may be none. Of an incomplete one, "Mar-04", they
	// are the months that it means if it is not a day.
	Candidates []Date
	// Doubt says what an ambiguous text leaves open, where it is one of the
	// things that the rest of a table can settle.
	Doubt Doubt
	// More is set where the text says more than Date does, which has its words:
	// a season, early or late, at night, in flower.
	More bool
	// Season is set where a season stands for its whole year that may begin in the
	// year before or end in the year after: winter in the north, summer in the
	// south, a dry or a rainy one.
	Season bool
	// Err says what is wrong and what to do; nil if Status is OK.
	Err error
}

// A Doubt is what keeps a text from having one reading. Doubts may add up.
type Doubt uint8

const (
	// OrderDoubt: day and month are figures that can stand either way.
	OrderDoubt Doubt = 1 << iota
	// CenturyDoubt: the year is written with two figures.
	CenturyDoubt
	// SerialDoubt: the text is the number that a spreadsheet keeps for a day.
	SerialDoubt
	// CalendarDoubt: the day is of a calendar that is not ours; the candidate is
	// the day by ours.
	CalendarDoubt
)

// doubtOf finds what the candidates of a text leave open; century says that
// its year has two figures.
func doubtOf(ds []Date, century bool) Doubt {
	var order, other Doubt
	for i := range ds {
		for _, e := range ds[:i] {
			a, b := ds[i].from, e.from
			switch {
			case a.year != b.year && century:
			case swapped(a, b) && ds[i].interval == e.interval && (!e.interval || swapped(ds[i].to, e.to)):
				order = OrderDoubt
			default:
				other = OrderDoubt // another order of the year, or of one end only
			}
		}
	}
	switch {
	case century:
		return CenturyDoubt | order
	case other != 0:
		return 0
	}
	return order
}

// swapped reports whether two days differ by their order of day and month alone.
func swapped(a, b part) bool {
	return a.year == b.year && a.day > 0 && a.day == b.month && a.month == b.day
}

// Parse reads a date as people write it on labels and in tables, or in ISO
// 8601. The Date is set if the status is OK; otherwise the error says what is
// wrong and what to do. [Read] gives the candidates too.
func Parse(text string, h Hints) (Date, Status, error) {
	r := Read(text, h)
	return r.Date, r.Status, r.Err
}

// ReadLine answers the command `read date`: the status and the ISO 8601 date
// with a tab between; after a status that is not ok nothing follows the tab.
func ReadLine(text string) string {
	r := Read(text, Hints{})
	return string(r.Status) + "\t" + r.Date.ISO()
}

// ParseDay reads a day of the month that stands alone in a cell: an integer
// from 1 to 31, with an ordinal's ending or not. Roman figures are no days.
func ParseDay(text string) (int, error) {
	t := ordinalSign.ReplaceAllString(plainly.Replace(strings.TrimSpace(text)), "$1")
	t = strings.TrimRight(t, ".")
	n := 0
	for n < len(t) && isDigit(rune(t[n])) {
		n++
	}
	if end := strings.ToLower(t[n:]); n >= 1 && n <= 2 && (end == "" || ordinals[end] && end != "a") { // 5a may be a part of something
		if d, _ := strconv.Atoi(t[:n]); d >= 1 && d <= 31 {
			return d, nil
		}
	}
	return 0, fmt.Errorf("%q is not a day: write a number from 1 to 31", text)
}

// ParseMonth reads a month that stands alone in a cell: a number from 1 to
// 12, a Roman figure or a name in a language that package lang reads.
func ParseMonth(text string) (int, error) {
	t := strings.TrimRight(plainly.Replace(strings.TrimSpace(text)), ".")
	if m, ok := lang.ParseRomanMonth(t); ok {
		return m, nil
	}
	if t != "" && len(t) <= 2 && strings.Trim(t, "0123456789") == "" {
		if m, _ := strconv.Atoi(t); m >= 1 && m <= 12 {
			return m, nil
		}
	}
	if m := lang.FindMonth(t); len(m) == 1 {
		return m[0], nil
	}
	return 0, fmt.Errorf("%q is not a month: write a number from 1 to 12", text)
}

// ParseWeekday reads a day of the week by its name or a usual abbreviation, in
// a language that package lang reads.
func ParseWeekday(text string) (time.Weekday, bool) { return lang.FindWeekday(text) }
