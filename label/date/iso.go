package date

import (
	"fmt"
	"strconv"
	"strings"
)

// ISO returns d as ISO 8601 writes it: "1922-03", "1922-03-20/1922-03-22",
// with the time of day as it was written. Open ends ("../1899") and
// approximate dates ("1890~") follow the extended format of ISO 8601-2. The
// zero Date gives "".
func (d Date) ISO() string {
	if d.IsZero() {
		return ""
	}
	mark := ""
	if d.circa {
		mark = "~"
	}
	if !d.interval {
		return d.from.iso(mark)
	}
	return d.from.iso(mark) + "/" + d.to.iso(mark)
}

// String is ISO.
func (d Date) String() string { return d.ISO() }

func (p part) iso(mark string) string {
	s := ""
	switch p.precision() {
	case NoPrecision:
		return ".."
	case YearPrecision:
		s = fmt.Sprintf("%04d", p.year)
	case MonthPrecision:
		s = fmt.Sprintf("%04d-%02d", p.year, p.month)
	default:
		s = fmt.Sprintf("%04d-%02d-%02d", p.year, p.month, p.day)
	}
	if p.time != "" {
		s += "T" + p.time
	}
	return s + mark
}

// FromISO reads an ISO 8601-1 date as Darwin Core's eventDate wants it, and
// nothing else: a year, month, day, day of the year ("2003-196") or week
// ("2003-W29"), extended or basic ("20030715"), a day also with a time; or two
// of them with a slash between, of which the second may leave out what it
// shares with the first ("2007-11-13/15").
//
// Source: ISO 8601-1:2019; examples of dwc:eventDate.
func FromISO(text string) (Date, error) {
	from, to, slash := strings.Cut(text, "/")
	a, err := isoSingle(from)
	if err != nil {
		return Date{}, err
	}
	if !slash {
		return a, nil
	}
	b, err := isoEnd(a, to)
	if err != nil {
		return Date{}, fmt.Errorf("the end of the interval: %w", err)
	}
	return Interval(a, b)
}

// isoEnd reads the second half of an interval, alone or completed by what
// stands in the first.
func isoEnd(a Date, text string) (Date, error) {
	if a.interval { // a week
		return isoSingle(text)
	}
	head := ""
	switch p := a.from; {
	case p.time != "" && len(text) >= 5 && text[2] == ':':
		head = fmt.Sprintf("%04d-%02d-%02dT", p.year, p.month, p.day)
	case p.day != 0 && shape(text) == "dd":
		head = fmt.Sprintf("%04d-%02d-", p.year, p.month)
	case p.day != 0 && strings.HasPrefix(shape(text), "dd-dd") && shape(text)[5:] == "",
		p.month != 0 && p.day == 0 && shape(text) == "dd",
		p.time != "" && strings.HasPrefix(shape(text), "dd-ddT"):
		head = fmt.Sprintf("%04d-", p.year)
	case p.time != "" && strings.HasPrefix(shape(text), "ddT"):
		head = fmt.Sprintf("%04d-%02d-", p.year, p.month)
	}
	return isoSingle(head + text)
}

// shape writes d for every figure, so that a format can be compared whole. A
// d that was there already fits no format.
func shape(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case '0' <= r && r <= '9':
			return 'd'
		case r == 'd':
			return 'x'
		}
		return r
	}, s)
}

func isoSingle(text string) (Date, error) {
	day, clock, hasTime := strings.Cut(text, "T")
	num := func(i, j int) int { n, _ := strconv.Atoi(day[i:j]); return n }
	var d Date
	var err error
	form := shape(day)
	switch form {
	case "dddd":
		d, err = New(num(0, 4), 0, 0)
	case "dddd-dd":
		d, err = newFull(num(0, 4), num(5, 7), -1)
	case "dddd-dd-dd":
		d, err = newFull(num(0, 4), num(5, 7), num(8, 10))
	case "dddddddd":
		d, err = newFull(num(0, 4), num(4, 6), num(6, 8))
	case "dddd-ddd":
		d, err = NewDayOfYear(num(0, 4), num(5, 8))
	case "ddddddd":
		d, err = NewDayOfYear(num(0, 4), num(4, 7))
	case "dddd-Wdd":
		d, err = newWeek(num(0, 4), num(6, 8), 0)
	case "ddddWdd":
		d, err = newWeek(num(0, 4), num(5, 7), 0)
	case "dddd-Wdd-d":
		d, err = newWeek(num(0, 4), num(6, 8), num(9, 10))
	case "ddddWddd":
		d, err = newWeek(num(0, 4), num(5, 7), num(7, 8))
	default:
		return Date{}, fmt.Errorf("%q is not an ISO 8601 date: write year-month-day as 1922-03-20, 1922-03 or 1922", text)
	}
	if err != nil || !hasTime {
		return d, err
	}
	if d.interval || d.from.day == 0 {
		return Date{}, fmt.Errorf("%q has a time of day but no day", text)
	}
	if err := checkTime(clock, !strings.Contains(form, "-")); err != nil {
		return Date{}, err
	}
	d.from.time = extended(clock)
	return d, nil
}

// extended writes a time of the basic format with colons, so that it can
// stand beside an extended day.
func extended(clock string) string {
	clock = strings.ReplaceAll(clock, "−", "-")
	n := 0
	for n < len(clock) && '0' <= clock[n] && clock[n] <= '9' {
		n++
	}
	s := clock[:2]
	for i := 2; i+2 <= n; i += 2 {
		s += ":" + clock[i:i+2]
	}
	return s + clock[n:]
}

// newFull is New for parts that are all written: a written 0 is refused. Day
// -1 is not written.
func newFull(y, m, d int) (Date, error) {
	if m == 0 {
		return Date{}, fmt.Errorf("month 00 does not exist: leave out what is not known")
	}
	if d == 0 {
		return Date{}, fmt.Errorf("day 00 does not exist: leave out what is not known")
	}
	return New(y, m, max(d, 0))
}

// newWeek returns a week of the ISO calendar, Monday to Sunday, or its day
// 1 to 7. Week 1 is the one with 4 January.
func newWeek(y, w, d int) (Date, error) {
	if _, err := newPart(y, 0, 0); err != nil {
		return Date{}, err
	}
	monday := func(y int) Day { // of week 1
		jan4 := Day{y, 1, 4}
		return jan4.Add(-(int(jan4.Weekday()) + 6) % 7)
	}
	first := monday(y).Add(7 * (w - 1))
	if w < 1 || first.Compare(monday(y+1)) >= 0 {
		return Date{}, fmt.Errorf("week %d does not exist in %d", w, y)
	}
	if d == 0 {
		last := first.Add(6)
		if first.Year < 1 || last.Year > 9999 {
			return Date{}, fmt.Errorf("year %d is out of range: write four figures", y)
		}
		return Interval(Date{from: dayPart(first)}, Date{from: dayPart(last)})
	}
	day := first.Add(d - 1)
	if d > 7 {
		return Date{}, fmt.Errorf("day %d of the week does not exist: Monday is 1, Sunday 7", d)
	}
	return New(day.Year, day.Month, day.Day)
}

// checkTime holds a time of day against ISO 8601: hours, minutes and seconds
// with colons or, in the basic format, without; a fraction of the last; a
// zone. The zone may lack its colon even in the extended format, as old
// Darwin Core examples do.
func checkTime(s string, basic bool) error {
	bad := fmt.Errorf("time %q is not ISO 8601: write hours:minutes as 14:07, 14:07Z or 14:07-06:00", s)
	clock, zone := s, ""
	if i := strings.IndexAny(s, "Z+-"); i >= 0 {
		clock, zone = s[:i], s[i:]
	} else if i := strings.Index(s, "−"); i >= 0 {
		clock, zone = s[:i], "-"+s[i+len("−"):]
	}
	whole := clock
	if i := strings.IndexAny(clock, ".,"); i >= 0 {
		whole = clock[:i]
		if strings.Trim(shape(clock[i+1:]), "d") != "" || i+1 == len(clock) {
			return bad
		}
	}
	digits := strings.ReplaceAll(whole, ":", "")
	switch form := shape(whole); {
	case form == "dd":
	case !basic && (form == "dd:dd" || form == "dd:dd:dd"):
	case basic && (form == "dddd" || form == "dddddd"):
	default:
		return bad
	}
	h, m, sec := pair(digits, 0), pair(digits, 2), pair(digits, 4)
	switch {
	case h > 24 || h == 24 && (m != 0 || sec != 0 || strings.Trim(clock[len(whole):], ".,0") != ""):
		return fmt.Errorf("hour %d in time %q does not exist: hours run from 0 to 24", h, s)
	case m > 59:
		return fmt.Errorf("minute %d in time %q does not exist: minutes run from 0 to 59", m, s)
	case sec > 60, sec == 60 && m%15 != 14: // a leap second ends an hour by Greenwich, and zones lie a quarter of an hour apart
		return fmt.Errorf("second %d in time %q does not exist: seconds run from 0 to 59", sec, s)
	}
	switch shape(zone) {
	case "", "Z":
	case "+dd", "-dd", "+dddd", "-dddd", "+dd:dd", "-dd:dd":
		z := strings.ReplaceAll(zone[1:], ":", "")
		if pair(z, 0) > 15 || pair(z, 2) > 59 {
			return fmt.Errorf("zone %s in time %q does not exist", zone, s)
		}
	default:
		return bad
	}
	return nil
}

func pair(s string, i int) int {
	if i+2 > len(s) {
		return 0
	}
	n, _ := strconv.Atoi(s[i : i+2])
	return n
}
