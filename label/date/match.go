package date

import (
	"fmt"
	"slices"
	"strings"
)

// The orders of day (d), month (m) and year (y) that people write; a dash is
// where the ends of an interval meet. What both ends share is written once.
var patterns = strings.Fields("y my ym dmy mdy ymd ydm" +
	" y-y m-my ym-m my-my ym-ym d-dmy md-dy ymd-d dm-dmy md-mdy ymd-md dmy-dmy mdy-mdy ymd-ymd" +
	" y-my my-y y-ym ym-y y-dmy dmy-y y-mdy mdy-y y-ymd ymd-y my-dmy dmy-my my-mdy mdy-my ym-ymd ymd-ym")

// Patterns without a year: what they match is incomplete.
var yearless = strings.Fields("m d dm md m-m d-dm md-d dm-dm md-md d-d dm-m m-dm")

// Lists: a star repeats the letter before it, three times or more.
var lists = strings.Fields("y* m*y ym* d*my md*y ymd*")

// A matcher tries the patterns on the values of a text and keeps what they
// give.
type matcher struct {
	*scanned
	hints   Hints
	found   results
	guessed results // readings that assume a century
	loose   []Date  // lists with holes, as intervals
	partial bool    // a pattern without a year fits
	usual   bool    // some reading has an order other than ydm
	elided  bool    // 1856-7 is an interval
	seasons bool    // a season was named
	pattern string  // being tried
}

// fields is one end of a reading.
type fields struct {
	y, m, d    int
	span       int // years, of 1980s
	hasD, hasM bool
	twoFigures bool
}

func (m *matcher) match(text string) Reading {
	vs := m.values
	switch {
	case len(vs) == 0 && len(m.weekday) > 0 && len(m.times) == 0:
		return fail(Incomplete, "%q has no year", text)
	case len(vs) == 0:
		return fail(Invalid, "%q is not a date: write it as 20 March 1922 or 1922-03-20", text)
	case len(vs) > 12:
		return fail(Invalid, "%q has too many figures for a date", text)
	}
	for _, v := range vs {
		if len(v.months) > 0 {
			return fail(Ambiguous, "%q: the month can be %d or %d: write it out", text, v.n, v.months[0])
		}
	}
	m.withoutSeasons()
	m.elided = m.shortEnd()
	for _, p := range patterns {
		m.try(p)
	}
	for _, p := range lists {
		m.tryList(p)
	}
	switch {
	case len(m.found.ok) > 0 && len(m.loose) == 0:
		return m.found.reading(text)
	case len(m.found.ok)+len(m.loose) > 0:
		return doubtful(append(m.found.ok, m.loose...), "%q lists dates with gaps between: give one date or one interval", text)
	case len(vs) == 1 && vs[0].kind == monthName && len(m.clean) == 1:
		return fail(Invalid, "%q is not a date: write it as 20 March 1922 or 1922-03-20", text)
	case len(m.guessed.ok) > 0:
		r := doubtful(m.guessed.ok, "%q: the century is not written: write the year with four figures", text)
		r.Doubt = doubtOf(m.guessed.ok, true)
		return r
	}
	for _, p := range yearless {
		m.try(p)
	}
	if m.figuresOnly() && (m.partial || m.guessed.bad != nil && len(m.values) == 2) {
		return fail(Ambiguous, "%q can be day and month without a year, or month and year: write the year with four figures", text)
	}
	switch {
	case m.found.bad != nil:
		return fail(Invalid, "%q: %w", text, m.found.bad)
	case m.guessed.bad != nil:
		return fail(Invalid, "%q: %w", text, m.guessed.bad)
	case m.partial && len(vs) == 2 && vs[0].kind == monthName && len(vs[1].digits) == 2 && !vs[1].ordinal:
		r := fail(Incomplete, "%q has no year, or one of two figures: write it in full", text)
		r.Candidates = m.monthOf(vs[0], vs[1])
		return r
	case m.partial:
		return fail(Incomplete, "%q has no year", text)
	}
	if m.named() && m.hasYear() {
		return fail(Ambiguous, "%q cannot be understood: give one date, or one interval as 20 March – 5 April 1922", text)
	}
	return m.found.reading(text)
}

// monthOf returns the months that a name and two figures, Mar-04, can mean:
// what spreadsheets make of 3/2004, and of 4 March.
func (m *matcher) monthOf(name, figures value) []Date {
	if len(name.months) > 0 {
		return nil
	}
	var all []Date
	for _, y := range centuries(figures.n, m.hints) {
		if d, err := New(y, name.n, 0); err == nil {
			all = append(all, d)
		}
	}
	return all
}

// withoutSeasons takes the seasons out: which months they are depends on the
// hemisphere, so a season stands for its year.
func (m *matcher) withoutSeasons() {
	var vs []value
	var gs []gap
	for i, v := range m.values {
		if v.kind == season {
			m.partial, m.seasons, m.part = true, true, true
			continue
		}
		vs, gs = append(vs, v), append(gs, m.gaps[i])
	}
	m.values, m.gaps = vs, gs
}

// figuresOnly reports whether the text is two short numbers or one, so that
// it may not be a date at all.
func (m *matcher) figuresOnly() bool {
	for _, v := range m.values {
		if v.kind != figures || v.ordinal {
			return false
		}
	}
	return len(m.values) == 2
}

// try matches one pattern.
func (m *matcher) try(pattern string) {
	n := len(pattern) - strings.Count(pattern, "-")
	if n != len(m.values) {
		return
	}
	ends := strings.Split(pattern, "-")
	if pattern == "y-ym" && len(m.gaps) > 2 && m.gaps[2].comma {
		return // 1911-1912, June
	}
	m.pattern = pattern
	var got [2]fields
	i := 0
	for e, letters := range ends {
		for j := range len(letters) {
			if i > 0 {
				g := m.gaps[i]
				if j == 0 && !g.joins() && !m.follows(i) || j > 0 && !g.inside() {
					return
				}
			}
			if !m.take(&got[e], letters[j], i, &got[0]) {
				return
			}
			i++
		}
	}
	if !m.allowed(ends, got) {
		return
	}
	if !strings.Contains(pattern, "y") {
		m.incomplete(ends, got)
		return
	}
	a, b := got[0], got[1]
	if len(ends) == 1 {
		m.keep(a, a, false, ends[0])
		return
	}
	if last := m.values[len(m.values)-1]; len(ends[0]) == 3 && ends[1] == "y" && len(last.digits) < 4 {
		return // 11 Feb. 1731/2 is one day of a year that began in March
	}
	share(&a, &b)
	at := len(ends[0])
	if g := m.gaps[at]; g.lists() && !g.to && !g.dash && !g.longDash && !g.slash && !m.class[fromWord] {
		m.keepList(a, b, len(ends[0]) == len(ends[1]) || strings.Contains("d-dmy md-dy ymd-d m-my ym-m dm-dmy md-mdy", pattern), ends[0])
		return
	}
	m.keep(a, b, true, ends[0])
}

// follows reports whether value i is the month after the one before it: Jun.
// Jul. 1838.
func (m *matcher) follows(i int) bool {
	a, b := m.values[i-1], m.values[i]
	return a.kind == monthName && b.kind == monthName && b.n == a.n+1 && m.gaps[i].space
}

// share completes each end by what only the other says.
func share(a, b *fields) {
	if a.y == 0 {
		a.y, a.twoFigures = b.y, b.twoFigures
	}
	if b.y == 0 {
		b.y, b.twoFigures = a.y, a.twoFigures
	}
	if !a.hasM && a.hasD {
		a.m, a.hasM = b.m, b.hasM
	}
	if !b.hasM && b.hasD {
		b.m, b.hasM = a.m, a.hasM
	}
}

// take gives value i the role of a letter.
func (m *matcher) take(f *fields, letter byte, i int, first *fields) bool {
	v := m.values[i]
	named := m.named()
	switch letter {
	case 'd':
		f.hasD = true
		if v.kind == placeholder {
			return true
		}
		f.d = v.n
		return v.kind == figures && len(v.digits) <= 2 && !v.apostrophe
	case 'm':
		f.hasM = true
		f.m = v.n
		switch v.kind {
		case monthName:
			return true
		case placeholder:
			f.m = 0
			return true
		}
		return v.kind == figures && !named && len(v.digits) <= 2 && v.n <= 12 && !v.apostrophe && !v.ordinal
	}
	return m.takeYear(f, v, i, first, named)
}

func (m *matcher) takeYear(f *fields, v value, i int, first *fields, named bool) bool {
	f.y = v.n
	if v.kind == openYear {
		f.span, f.twoFigures = v.span, v.guess
		return true
	}
	if v.kind != figures || v.ordinal {
		return false
	}
	if v.isYear() {
		return len(m.values) > 1 || v.digits[0] != '0'
	}
	if len(v.digits) > 2 {
		return false
	}
	// 1856-7, 1910/11: what the second year leaves out is the first year's.
	if f != first && i == len(m.values)-1 && m.gaps[i].joins() && i > 0 && m.values[i-1].isYear() && first.y > 0 && !first.twoFigures {
		unit := 10
		if len(v.digits) == 2 {
			unit = 100
		}
		f.y = first.y/unit*unit + v.n
		return f.y > first.y
	}
	if len(v.digits) != 2 {
		return false
	}
	f.twoFigures = true
	if letters, _, _ := strings.Cut(m.pattern, "-"); named && letters == "ymd" && v.n <= 31 && !v.apostrophe {
		return false // 24-V-19 begins with the day
	}
	// Two figures beside a month alone are rather a day.
	return v.apostrophe || len(m.values) >= 3 || v.n > 31 || v.n == 0 || len(m.values) == 2 && !named
}

// isYear reports whether v is a year of four figures.
func (v value) isYear() bool {
	return v.kind == figures && len(v.digits) == 4 && v.n > 0
}

// shortEnd reports whether the text is an interval of years of which the
// second is one figure behind a dash. ISO 8601 would write a month with two.
func (m *matcher) shortEnd() bool {
	vs := m.values
	return len(vs) == 2 && vs[0].isYear() && vs[1].kind == figures && len(vs[1].digits) == 1 &&
		(m.gaps[1].dash || m.gaps[1].longDash) && vs[1].n > vs[0].n%10
}

// allowed throws out orders that nobody means.
func (m *matcher) allowed(ends []string, got [2]fields) bool {
	for e, letters := range ends {
		f := got[e]
		if f.hasM && f.m == 0 && f.d != 0 {
			return false // a day of an unknown month
		}
		if f.hasM && f.m == 0 && !f.hasD && len(ends) == 2 {
			return false // an interval from an unknown month
		}
		if f.hasD && f.d == 0 && (letters == "ydm" || letters == "mdy" && m.gaps[1].dot) {
			return false // month 00, and a day
		}
		if f.span != 0 && (f.hasM || f.hasD) {
			m.partial = true // May 193-
			return false
		}
		if f.twoFigures && (m.hasYear() || len(ends) == 2 && len(ends[0]) != len(ends[1]) && len(letters) < 3) {
			return false
		}
		if letters == "ym" && (m.elided || m.seasons && !m.named()) {
			return false
		}
		if letters == "ydm" && !m.hasYear() {
			return false
		}
		if letters == "m" && len(ends) == 2 && !m.named() {
			return false // 3-5/1932 may be anything
		}
	}
	return true
}

func (m *matcher) named() bool {
	return slices.ContainsFunc(m.values, func(v value) bool { return v.kind == monthName })
}

func (m *matcher) hasYear() bool {
	return slices.ContainsFunc(m.values, value.isYear)
}

// incomplete notes that a pattern without a year fits, if its day can exist.
func (m *matcher) incomplete(ends []string, got [2]fields) {
	a, b := got[0], got[1]
	if len(ends) == 1 {
		b = a
	}
	share(&a, &b)
	for _, f := range []fields{a, b} {
		if !f.hasM && !m.figuresOnly() && !m.lone() {
			return
		}
		if _, err := newPart(2000, f.m, f.d); f.hasM && err != nil {
			m.found.add(Date{}, fmt.Errorf("day %d does not exist", f.d))
			return
		}
	}
	if m.lone() && m.values[0].kind == figures && !m.values[0].ordinal {
		return // 63 is nothing
	}
	m.partial = true
}

func (m *matcher) lone() bool { return len(m.values) == 1 }

// keep adds the readings that two ends give.
func (m *matcher) keep(a, b fields, interval bool, order string) {
	if order == "ydm" && m.usual && !m.yearApart() {
		return
	}
	if m.values[0].kind == figures && m.hints.Order != UnknownOrder && m.swapped(order) {
		return
	}
	to := &m.found
	if a.twoFigures && m.hints.Century == 0 {
		to = &m.guessed
	}
	if a.span < 0 && !interval { // 1900s
		a.span = 100
		to.add(a.date(a.y))
		a.span = 10
		to.add(a.date(a.y))
		return
	}
	for _, c := range m.yearsOf(a, b) {
		d, err := a.date(c[0])
		if interval && err == nil {
			var e Date
			if e, err = b.date(c[1]); err == nil {
				if g, ok := bothCalendars(d, e); ok && m.slashed() {
					to.add(g, nil) // 25 Oct./7 Nov. 1917 may be one day
				}
				d, err = Interval(d, e)
			}
		}
		to.add(d, err)
		if err == nil && len(order) == 3 && order != "ydm" {
			m.usual = true
		}
	}
}

// yearApart reports whether day and month stand together and the year before
// them stands off: 1967 12/9.
func (m *matcher) yearApart() bool {
	if len(m.values) != 3 {
		return false
	}
	g := m.gaps[1]
	return g.space && !g.slash && !g.dash && !g.dot && m.gaps[2].slash && !m.gaps[2].space
}

func (m *matcher) slashed() bool {
	return slices.ContainsFunc(m.gaps, func(g gap) bool { return g.slash })
}

// swapped reports whether the order of two figures is not the one hinted at,
// though that one is possible too.
func (m *matcher) swapped(order string) bool {
	d, mo := strings.IndexByte(order, 'd'), strings.IndexByte(order, 'm')
	if order[0] == 'y' && len(order) == 3 && len(m.values) == 3 { // 13/4/26, which can have the year first
		day, month := m.values[0], m.values[1]
		if m.hints.Order == MonthFirst {
			day, month = month, day
		}
		return day.kind == figures && month.kind == figures && m.values[2].kind == figures &&
			day.n >= 1 && day.n <= 31 && month.n >= 1 && month.n <= 12
	}
	if d < 0 || mo < 0 || order[0] == 'y' || m.hints.Order == DayFirst == (d < mo) {
		return false
	}
	first, second := m.values[d], m.values[mo]
	return first.kind == figures && second.kind == figures && first.n <= 12 && second.n <= 12 && first.n > 0 && second.n > 0
}

// yearsOf returns the pairs of years that the ends can mean.
func (m *matcher) yearsOf(a, b fields) [][2]int {
	if !a.twoFigures {
		return [][2]int{{a.y, b.y}}
	}
	var ys [][2]int
	as, bs := centuries(a.y, m.hints), centuries(b.y, m.hints)
	for i := range as {
		ys = append(ys, [2]int{as[i], bs[min(i, len(bs)-1)]})
	}
	return ys
}

// date returns one end; a decade is an interval.
func (f fields) date(year int) (Date, error) {
	if f.span == 0 {
		return New(year, f.m, f.d)
	}
	a, err := New(year, 0, 0)
	if err != nil {
		return a, err
	}
	b, err := New(year+max(f.span, 10)-1, 0, 0)
	if err != nil {
		return b, err
	}
	return Interval(a, b)
}
