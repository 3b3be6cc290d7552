// Package date reads and prints the dates of collecting: single days, months
// and years, intervals of them, as ISO 8601 or as people write them on
// labels.
//
// All dates count in the Gregorian calendar, also before it was introduced.
package date

import (
	"fmt"
	"strings"
	"time"
)

// A Precision says how fine a date is.
type Precision uint8

// From coarse to fine.
const (
	NoPrecision Precision = iota
	YearPrecision
	MonthPrecision
	DayPrecision
)

// String returns "year", "month" or "day".
func (p Precision) String() string {
	return [...]string{"none", "year", "month", "day"}[p&3]
}

// A Date is a year, a month or a day as finely as it was written, or an
// interval from one such to another; either end may be open. A time of day is
// kept as written. Dates compare with ==; the zero Date is no date.
type Date struct {
	from, to part
	interval bool
	circa    bool
}

// A part is one end of a Date. Its zero value is an open end.
type part struct {
	year       int16 // 1 to 9999; 0: open
	month, day int8  // 0: not said
	time       string
}

// New returns a year (month and day 0), a month (day 0) or a day.
func New(year, month, day int) (Date, error) {
	p, err := newPart(year, month, day)
	return Date{from: p}, err
}

// NewDayOfYear returns the day that is the n-th of its year.
func NewDayOfYear(year, n int) (Date, error) {
	p, err := newPart(year, 0, 0)
	if err != nil {
		return Date{}, err
	}
	if n < 1 || n > DaysInYear(year) {
		return Date{}, fmt.Errorf("day %d of the year does not exist: %d has %d days", n, year, DaysInYear(year))
	}
	p = dayPart(Day{year, 1, 1}.Add(n - 1))
	return Date{from: p}, nil
}

// Interval returns the time from the beginning of a to the end of b. A zero
// Date leaves that end open. It is an error if b is over before a begins.
func Interval(a, b Date) (Date, error) {
	d := Date{from: a.from, to: b.last(), interval: true, circa: a.circa || b.circa}
	if a.IsZero() && b.IsZero() {
		return Date{}, fmt.Errorf("an interval needs a beginning or an end")
	}
	if !a.IsZero() && !b.IsZero() {
		if b.End().Compare(a.Start()) < 0 {
			return Date{}, fmt.Errorf("the end %s lies before the beginning %s: swap the two or correct one", b.ISO(), a.ISO())
		}
		if a.End() == b.Start() && sameZone(a.last().time, b.from.time) && b.from.time < a.last().time {
			return Date{}, fmt.Errorf("the end %s lies before the beginning %s: swap the two or correct one", b.ISO(), a.ISO())
		}
		if d.from == d.to && d.from.year != 0 {
			return Date{from: d.from, circa: d.circa}, nil
		}
	}
	return d, nil
}

// sameZone reports whether two times of day can be compared as they stand.
func sameZone(a, b string) bool {
	zone := func(s string) string { return strings.TrimLeft(s, "0123456789:.,") }
	return a != "" && b != "" && zone(a) == zone(b)
}

func (d Date) last() part {
	if d.interval {
		return d.to
	}
	return d.from
}

func newPart(year, month, day int) (part, error) {
	switch {
	case year < 1 || year > 9999:
		return part{}, fmt.Errorf("year %d is out of range: write four figures", year)
	case month == 0 && day != 0:
		return part{}, fmt.Errorf("day %d has no month", day)
	case month < 0 || month > 12:
		return part{}, fmt.Errorf("month %d does not exist: months run from 1 to 12", month)
	case day < 0 || month > 0 && day > DaysInMonth(year, month):
		return part{}, fmt.Errorf("day %d does not exist: %s %d has %d days", day, time.Month(month), year, DaysInMonth(year, month))
	}
	return part{year: int16(year), month: int8(month), day: int8(day)}, nil
}

func dayPart(d Day) part {
	return part{year: int16(d.Year), month: int8(d.Month), day: int8(d.Day)}
}

// IsZero reports whether d is no date at all.
func (d Date) IsZero() bool { return d == Date{} }

// IsInterval reports whether d has two ends, one of which may be open.
func (d Date) IsInterval() bool { return d.interval }

// IsCirca reports whether d was said to be approximate ("c. 1890").
func (d Date) IsCirca() bool { return d.circa }

// IsOpen reports whether d is an interval without a beginning or an end.
func (d Date) IsOpen() bool {
	return d.interval && (d.from.year == 0 || d.to.year == 0)
}

// IsPlain reports whether ISO 8601-1, which Darwin Core asks for, can say all
// of d. Open and approximate dates need the extended format of ISO 8601-2.
func (d Date) IsPlain() bool { return !d.IsZero() && !d.circa && !d.IsOpen() }

// Start returns the earliest day that d may mean; the zero Day if d is open
// there.
func (d Date) Start() Day { return d.from.first() }

// End returns the latest day that d may mean; the zero Day if d is open there.
func (d Date) End() Day { return d.last().last() }

func (p part) first() Day {
	if p.year == 0 {
		return Day{}
	}
	return Day{int(p.year), max(1, int(p.month)), max(1, int(p.day))}
}

func (p part) last() Day {
	if p.year == 0 {
		return Day{}
	}
	d := Day{int(p.year), int(p.month), int(p.day)}
	if d.Month == 0 {
		d.Month = 12
	}
	if d.Day == 0 {
		d.Day = DaysInMonth(d.Year, d.Month)
	}
	return d
}

func (p part) precision() Precision {
	switch {
	case p.year == 0:
		return NoPrecision
	case p.month == 0:
		return YearPrecision
	case p.day == 0:
		return MonthPrecision
	}
	return DayPrecision
}

// Precision returns how fine d is: of an interval, the coarser of its ends
// that are not open.
func (d Date) Precision() Precision {
	p := d.from.precision()
	if !d.interval {
		return p
	}
	q := d.to.precision()
	if p == NoPrecision {
		return q
	}
	if q == NoPrecision {
		return p
	}
	return min(p, q)
}

// First returns the beginning as a date of its own, without its time of day;
// the zero Date if it is open.
func (d Date) First() Date { return Date{from: d.from.bare(), circa: d.circa && d.from.year != 0} }

// Last returns the end as a date of its own, without its time of day; the
// zero Date if it is open.
func (d Date) Last() Date {
	p := d.last()
	return Date{from: p.bare(), circa: d.circa && p.year != 0}
}

func (p part) bare() part { p.time = ""; return p }

// Time returns the time of day at the beginning and at the end, as written;
// "" where none was.
func (d Date) Time() (from, to string) { return d.from.time, d.last().time }

// WithoutTime returns d without its times of day.
func (d Date) WithoutTime() Date {
	d.from.time, d.to.time = "", ""
	if d.interval && d.from == d.to {
		d.interval, d.to = false, part{}
	}
	return d
}

// Year returns the year, if all of d lies in one.
func (d Date) Year() (int, bool) {
	if d.IsZero() || d.IsOpen() || d.from.year != d.last().year {
		return 0, false
	}
	return int(d.from.year), true
}

// Month returns the month, if all of d lies in one and d says so.
func (d Date) Month() (int, bool) {
	if _, ok := d.Year(); !ok || d.from.month == 0 || d.from.month != d.last().month {
		return 0, false
	}
	return int(d.from.month), true
}

// Day returns the day of the month, if d is a single day.
func (d Date) Day() (int, bool) {
	if _, ok := d.Month(); !ok || d.from.day == 0 || d.from.day != d.last().day {
		return 0, false
	}
	return int(d.from.day), true
}

// StartDayOfYear returns the first day's number in its year, if d is fine
// enough to say: both ends are days.
func (d Date) StartDayOfYear() (int, bool) {
	if d.Precision() != DayPrecision || d.IsOpen() {
		return 0, false
	}
	return d.Start().DayOfYear(), true
}

// EndDayOfYear returns the last day's number in its year, as StartDayOfYear.
func (d Date) EndDayOfYear() (int, bool) {
	if d.Precision() != DayPrecision || d.IsOpen() {
		return 0, false
	}
	return d.End().DayOfYear(), true
}

// Days returns how many days d covers, 0 if it is open or no date.
func (d Date) Days() int {
	if d.IsZero() || d.IsOpen() {
		return 0
	}
	return d.End().number() - d.Start().number() + 1
}

// Compare orders dates by their first day, then by their last; an open
// beginning comes first, an open end last. Times of day do not count.
func (d Date) Compare(e Date) int {
	if c := d.Start().Compare(e.Start()); c != 0 {
		return c
	}
	a, b := d.End(), e.End()
	switch {
	case a == b:
		return 0
	case a == Day{} && d.interval:
		return 1
	case b == Day{} && e.interval:
		return -1
	}
	return a.Compare(b)
}

// Before reports whether all of d lies before all of e.
func (d Date) Before(e Date) bool {
	a, b := d.End(), e.Start()
	return a != Day{} && b != Day{} && a.Compare(b) < 0
}

// After reports whether all of d lies after all of e.
func (d Date) After(e Date) bool { return e.Before(d) }

// Covers reports whether every day of e lies in d.
func (d Date) Covers(e Date) bool {
	if d.IsZero() || e.IsZero() {
		return false
	}
	a, b := d.Start(), e.Start()
	if a != (Day{}) && (b == Day{} || b.Compare(a) < 0) {
		return false
	}
	a, b = d.End(), e.End()
	return a == Day{} || b != Day{} && b.Compare(a) <= 0
}

// A Day is a day of the Gregorian calendar. The zero Day is none.
type Day struct{ Year, Month, Day int }

// String returns the day as ISO 8601 writes it.
func (d Day) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Compare orders days by time.
func (d Day) Compare(e Day) int {
	switch a, b := d.number(), e.number(); {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// Add returns the day n days later.
func (d Day) Add(n int) Day { return fromNumber(d.number() + n) }

// Weekday returns the day of the week.
func (d Day) Weekday() time.Weekday {
	return time.Weekday(((d.number()+4)%7 + 7) % 7)
}

// DayOfYear returns the day's number in its year, 1 to 366.
func (d Day) DayOfYear() int { return d.number() - Day{d.Year, 1, 1}.number() + 1 }

// number counts days from 1 January 1970, proleptic Gregorian. The year is
// counted from March, so that the leap day comes last.
func (d Day) number() int {
	y, m := d.Year, d.Month
	if m <= 2 {
		y--
		m += 12
	}
	return 365*y + floorDiv(y, 4) - floorDiv(y, 100) + floorDiv(y, 400) + (153*(m-3)+2)/5 + d.Day - 1 - 719468
}

func fromNumber(n int) Day {
	z := n + 719468
	era := floorDiv(z, 146097)
	doe := z - era*146097
	yoe := (doe - doe/1460 + doe/36524 - doe/146096) / 365
	doy := doe - (365*yoe + yoe/4 - yoe/100)
	mp := (5*doy + 2) / 153
	d := Day{yoe + era*400, mp + 3, doy - (153*mp+2)/5 + 1}
	if d.Month > 12 {
		d.Month -= 12
		d.Year++
	}
	return d
}

// fromJulian returns the day that the Julian calendar called y-m-d.
func fromJulian(y, m, d int) Day {
	if m <= 2 {
		y--
		m += 12
	}
	return fromNumber(365*y + floorDiv(y, 4) + (153*(m-3)+2)/5 + d - 1 - 719470)
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// IsLeap reports whether the year has a 29 February.
func IsLeap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// DaysInYear returns 365 or 366.
func DaysInYear(year int) int {
	if IsLeap(year) {
		return 366
	}
	return 365
}

// DaysInMonth returns the number of days of month 1 to 12, else 0.
func DaysInMonth(year, month int) int {
	switch month {
	case 1, 3, 5, 7, 8, 10, 12:
		return 31
	case 4, 6, 9, 11:
		return 30
	case 2:
		if IsLeap(year) {
			return 29
		}
		return 28
	}
	return 0
}
