package date

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"cornerslip/label/lang"
)

// longest is the longest text that is looked at; longer is no date.
const longest = 200

// Read reads a date as [Parse] does and tells all it found out.
func Read(text string, h Hints) Reading {
	text = strings.TrimSpace(text)
	switch {
	case text == "":
		return fail(Incomplete, "there is no date: write one, or s.d.")
	case len(text) > longest:
		return fail(Invalid, "the text is too long to be a date")
	case len(text) < 40 && noDate.MatchString(text):
		return fail(Incomplete, "the text says that there is no date")
	}
	if lentCentury.in(text) {
		text = lentCentury.ReplaceAllString(text, "$1$2")
		text = lentYears.ReplaceAllString(text, "$1$2")
	}
	text = printed(text)
	if text == "1900-01-00" {
		return fail(Ambiguous, "%q is what a spreadsheet makes of an empty cell: write the date, or leave the cell empty", text)
	}
	if r, ok := readISO(text); ok {
		return r
	}
	if r, ok := readCounted(text); ok {
		return r
	}
	if r, ok := readFigures(text, h); ok {
		return r
	}
	if r, ok := readBrackets(text, h); ok {
		return r
	}
	r := beyond(readWords(text, h, false), text)
	if r.Status == Invalid {
		if g := readWords(text, h, true); g.Status == OK {
			return doubtful([]Date{g.Date}, "%q takes a guess at misspelt words: write the month out", text)
		}
	}
	return r
}

func fail(s Status, format string, args ...any) Reading {
	return Reading{Status: s, Err: fmt.Errorf(format, args...)}
}

// doubtful is an ambiguous reading with its candidates.
func doubtful(ds []Date, format string, args ...any) Reading {
	r := fail(Ambiguous, format, args...)
	r.Candidates = ds
	return r
}

var (
	isoTime   = regexp.MustCompile(`^\d{4}-?\d\d-?\d\dT\d`)
	database  = regexp.MustCompile(`^(\d{4}-\d\d-\d\d) (\d\d:\d\d(?::\d\d(?:\.\d+)?)?)\s?(Z|[+-]\d\d(?::?\d\d)?)?$`)
	midnight  = regexp.MustCompile(`^[0:.]+$`)
	serialDay = regexp.MustCompile(`^(\d{5})([.,]\d+)?$`)
)

// readISO reads ISO 8601, its open intervals and the timestamps of databases.
// It answers false where the text is to be read as words.
func readISO(text string) (Reading, bool) {
	if f := shape(text); (f == "dddd" || f == "ddddddd") && !plausible(text[:4]) {
		return Reading{}, false // ISO 8601 has the year 377, labels have not
	}
	circa := strings.Contains(text, "~")
	text = strings.ReplaceAll(text, "~", "")
	if d, err := FromISO(text); err == nil {
		if shape(text) == "dddd-dd/dd" {
			return doubtful([]Date{d}, "%q can be two months or a month and a year: write both ends in full", text), true
		}
		d.circa = circa
		return Reading{Status: OK, Date: d}, true
	} else if isoTime.MatchString(text) {
		return Reading{Status: Invalid, Err: err}, true
	}
	if g := timestamp(text); g != nil {
		iso := g[1] + "T" + g[2] + g[3]
		if midnight.MatchString(g[2]) {
			iso = g[1] // a database adds it where no time is known
		}
		d, err := FromISO(iso)
		if err != nil {
			return Reading{Status: Invalid, Err: err}, true
		}
		return Reading{Status: OK, Date: d}, true
	}
	from, to, slash := strings.Cut(text, "/")
	switch {
	case slash && from == "..":
		return openISO(to, circa, func(d Date) (Date, error) { return Interval(Date{}, d) })
	case slash && to == "..":
		return openISO(from, circa, func(d Date) (Date, error) { return Interval(d, Date{}) })
	case slash && (from == "" || to == ""):
		if _, err := FromISO(from + to); err == nil {
			return fail(Incomplete, "the interval %q lacks an end: write .. for an open one", text), true
		}
	}
	return Reading{}, false
}

// printedDate is what programs print of a date with its time: Sat Jul 14
// 00:00:00 EDT 2012, or Sat Jul 14 2012 00:00:00 GMT+0100 (WEST).
var printedDate = regexp.MustCompile(`^([A-Z][a-z]{2}) ([A-Z][a-z]{2}) (\d{1,2}) (?:(\d{4}) )?(\d\d:\d\d:\d\d)(?: ([A-Z][A-Za-z]{1,4}(?:[+-]\d\d:?\d\d)?)(?: \([^)]*\))?)?(?: (\d{4}))?$`)

// databaseNoon is the midnight of a database that writes times with stops.
var databaseNoon = regexp.MustCompile(` 12\.00\.00(?:\.0+)? AM$`)

// printed writes such a date as people do. A zone in letters other than UTC and
// GMT has no one meaning, so that the time stands without it.
func printed(text string) string {
	if strings.HasSuffix(text, " AM") {
		text = databaseNoon.ReplaceAllString(text, "")
	}
	if len(text) == 17 && text[8] == '-' && shape(text) == "dddddddd-dddddddd" {
		return text[:8] + "/" + text[9:]
	}
	if len(text) < len("Sat Jul 14 00:00:00 2012") || text[3] != ' ' {
		return text
	}
	g := printedDate.FindStringSubmatch(text)
	if g == nil || (g[4] == "") == (g[7] == "") {
		return text
	}
	zone := ""
	if strings.HasPrefix(g[6], "GMT") || strings.HasPrefix(g[6], "UTC") {
		zone = " " + g[6]
	}
	if midnight.MatchString(g[5]) {
		return g[1] + " " + g[3] + " " + g[2] + " " + g[4] + g[7]
	}
	return g[1] + " " + g[3] + " " + g[2] + " " + g[4] + g[7] + ", " + g[5] + zone
}

// timestamp cuts a database's date and time apart; nil if text is none.
func timestamp(text string) []string {
	if len(text) < len("2006-01-02 15:04") {
		return nil
	}
	return database.FindStringSubmatch(text)
}

func openISO(text string, circa bool, open func(Date) (Date, error)) (Reading, bool) {
	d, err := isoSingle(text)
	if err == nil {
		d, err = open(d)
	}
	if err != nil {
		return Reading{}, false
	}
	d.circa = circa
	return Reading{Status: OK, Date: d}, true
}

// readFigures reads a text that is one number.
func readFigures(text string, h Hints) (Reading, bool) {
	text = plainly.Replace(strings.TrimRight(text, "."))
	if g := serialDay.FindStringSubmatch(text); g != nil {
		n, _ := strconv.Atoi(g[1])
		if n > 73050 { // the year 2100
			return fail(Invalid, "%q is not a date", text), true
		}
		// Spreadsheets count from 1900 and take 1900 for a leap year.
		d := Date{from: dayPart(Day{1899, 12, 30}.Add(n))}
		r := doubtful([]Date{d}, "%q is the number that a spreadsheet keeps for %s: format the column as text and write the date", text, d.ISO())
		r.Doubt = SerialDoubt
		return r, true
	}
	if text == "" || strings.Trim(text, "0123456789") != "" {
		return Reading{}, false
	}
	at := func(i, j int) int { n, _ := strconv.Atoi(text[i:j]); return n }
	var r results
	switch len(text) {
	case 4:
		return fail(Ambiguous, "%q is hardly a year of collecting: write the whole date", text), true
	case 6:
		r.addPlausible(New(at(0, 4), at(4, 6), 0))
		for _, y := range centuries(at(4, 6), h) {
			r.addPlausible(newFull(y, at(2, 4), at(0, 2)))
		}
		for _, y := range centuries(at(0, 2), h) {
			r.addPlausible(newFull(y, at(2, 4), at(4, 6)))
		}
		if len(r.ok) == 0 {
			break
		}
		return doubtful(r.ok, "%q can be read in several ways: write it as 1922-03-20", text), true
	case 8:
		r.addPlausible(newFull(at(4, 8), at(2, 4), at(0, 2)))
		r.addPlausible(newFull(at(4, 8), at(0, 2), at(2, 4)))
		if len(r.ok) > 0 {
			return r.reading(text), true
		}
	}
	return fail(Invalid, "%q is not a date: write it as 1922-03-20", text), true
}

// results collects what a text can mean.
type results struct {
	ok  []Date
	bad error // why a reading fell out
}

func (r *results) add(d Date, err error) {
	switch {
	case err != nil:
		if r.bad == nil {
			r.bad = err
		}
	case !slices.Contains(r.ok, d):
		r.ok = append(r.ok, d)
	}
}

// addPlausible leaves out years before herbaria and far ahead.
func (r *results) addPlausible(d Date, err error) {
	if err == nil && plausible(d.ISO()[:4]) {
		r.add(d, nil)
	}
}

// plausible reports whether a bare number of four figures can be a year.
func plausible(year string) bool { return "1500" <= year && year < "2100" }

// reading is the answer where nothing but the number of meanings matters.
func (r *results) reading(text string) Reading {
	switch {
	case len(r.ok) == 1:
		return Reading{Status: OK, Date: r.ok[0]}
	case len(r.ok) > 1:
		d := doubtful(r.ok, "%q can be %s: keep one, with the month as a word or a Roman figure", text, either(r.ok))
		d.Doubt = doubtOf(r.ok, false)
		return d
	case r.bad != nil:
		return Reading{Status: Invalid, Err: r.bad}
	}
	return fail(Invalid, "%q is not a date: write it as 20 March 1922 or 1922-03-20", text)
}

func either(ds []Date) string {
	var s []string
	for _, d := range ds {
		s = append(s, d.ISO())
	}
	return strings.Join(s, " or ")
}

// centuries returns the years that two figures can mean, the likeliest first.
func centuries(yy int, h Hints) []int {
	if h.Century != 0 {
		return []int{h.Century/100*100 + yy}
	}
	return []int{1900 + yy, 1800 + yy, 2000 + yy}
}

// readBrackets reads a date with another in brackets: the same day in both
// calendars, or two opinions. It answers false where the brackets hold
// no date of their own.
func readBrackets(text string, h Hints) (Reading, bool) {
	i := strings.IndexByte(text, '(')
	j := strings.LastIndexByte(text, ')')
	if i < 1 || j < i || oldStyle.found(text[i:j+1]) || newStyle.found(text[i:j+1]) {
		return Reading{}, false
	}
	if _, weekday := lang.FindWeekday(strings.TrimSpace(text[i+1 : j])); weekday {
		return Reading{}, false
	}
	inner, outer := text[i+1:j], text[:i]+" "+text[j+1:]
	if n := len(inner); n > 0 && n <= 2 && strings.Trim(inner, "0123456789") == "" { // 12 (24) May 1890
		inner = strings.TrimRight(strings.TrimRight(text[:i], " "), "0123456789") + inner + text[j+1:]
	}
	a := readWords(outer, h, false)
	b := readWords(inner, h, false)
	if y, ok := a.Date.Year(); ok && b.Status == Incomplete {
		b = readWords(inner+" "+strconv.Itoa(y), h, false)
	}
	if a.Status != OK || b.Status != OK {
		return Reading{}, false
	}
	if d, ok := bothCalendars(a.Date, b.Date); ok {
		return Reading{Status: OK, Date: d}, true
	}
	if a.Date == b.Date {
		return a, true
	}
	return doubtful([]Date{a.Date, b.Date}, "%q gives two dates: keep one", text), true
}

// bothCalendars returns the Gregorian one of two dates that are the same day
// in the Julian and the Gregorian calendar.
func bothCalendars(a, b Date) (Date, bool) {
	for range 2 {
		if g, err := a.gregorian(); err == nil && g == b {
			return b, true
		}
		a, b = b, a
	}
	return Date{}, false
}

// gregorian takes d for a date of the Julian calendar.
func (d Date) gregorian() (Date, error) {
	if d.Precision() != DayPrecision || d.IsOpen() {
		return d, errors.New("a date of the Julian calendar must be a day to be converted")
	}
	convert := func(p part) part {
		q := dayPart(fromJulian(int(p.year), int(p.month), int(p.day)))
		q.time = p.time
		return q
	}
	d.from = convert(d.from)
	if d.interval {
		d.to = convert(d.to)
	}
	return d, nil
}

// readWords reads a date of figures, names and words.
func readWords(text string, h Hints, repair bool) Reading {
	s, err := scan(text, repair)
	if err != nil {
		return Reading{Status: Invalid, Err: err}
	}
	if s.class[centuryWord] {
		return fail(Ambiguous, "%q names a century: write its first and last year", text)
	}
	if s.minus || s.trail.dash && len(s.values) > 0 && !s.class[sinceWord] {
		return fail(Ambiguous, "%q begins or ends with a dash: write both ends, or a single date", text)
	}
	m := matcher{scanned: s, hints: h}
	r := m.match(text)
	if r.Status != OK && r.Status != Ambiguous {
		return r
	}
	return s.qualify(r, text)
}

// qualify applies what words and marks say of the whole date: times, the
// calendar, the weekday, before and after, circa, doubt.
func (s *scanned) qualify(r Reading, text string) Reading {
	all := r.Candidates
	if r.Status == OK {
		all = []Date{r.Date}
	}
	for i, d := range all {
		e, err := s.apply(d)
		if err != nil {
			return Reading{Status: Ambiguous, Err: fmt.Errorf("%q: %w", text, err)}
		}
		all[i] = e
	}
	if len(s.weekday) > 0 && len(all) > 0 {
		var fit []Date
		for _, d := range all {
			if s.fits(d) {
				fit = append(fit, d)
			}
		}
		switch {
		case len(fit) == 0:
			return doubtful(all, "%q: the weekday does not agree, %s was a %s", text, all[0].First().ISO(), all[0].Start().Weekday())
		case len(fit) == 1 && r.Status == Ambiguous && !s.shortYear():
			r = Reading{Status: OK, Date: fit[0]}
		}
		all = fit
	}
	if r.Status == Ambiguous {
		r.Candidates = all
		return r
	}
	switch {
	case s.class[doubtWord]:
		return doubtful(all, "%q leaves a doubt, or says more than a date: write what is certain, and the whole text in verbatimEventDate", text)
	case s.doubt:
		return doubtful(all, "%q carries a question mark: write what is certain", text)
	case s.class[orWord]:
		return doubtful(all, "%q leaves a choice: write what is certain", text)
	}
	r.Date, r.More = all[0], s.class[partWord] || s.class[besideWord] || s.class[seasonWord] || s.part
	_, month := r.Date.Month()
	r.Season = s.class[seasonWord] && !month && !r.Date.interval
	return r
}

// shortYear reports whether a year was written with two figures.
func (s *scanned) shortYear() bool {
	return !slices.ContainsFunc(s.values, func(v value) bool { return v.isYear() || v.kind == openYear })
}

// fits reports whether the weekdays that were named are those of the date.
func (s *scanned) fits(d Date) bool {
	if d.Precision() != DayPrecision || d.IsOpen() {
		return true
	}
	days := []time.Weekday{d.Start().Weekday(), d.End().Weekday()}
	if len(s.weekday) == 1 {
		return days[0] == s.weekday[0]
	}
	return days[0] == s.weekday[0] && days[1] == s.weekday[len(s.weekday)-1]
}

func (s *scanned) apply(d Date) (Date, error) {
	var err error
	if s.julian {
		if d, err = d.gregorian(); err != nil {
			return d, err
		}
	}
	if d, err = s.withTimes(d); err != nil {
		return d, err
	}
	limits := 0
	for _, c := range []class{beforeWord, untilWord, afterWord, sinceWord} {
		if s.class[c] {
			limits++
		}
	}
	if s.class[fromWord] && !d.interval {
		limits++
	}
	switch {
	case limits == 0:
	case limits > 1 || d.interval:
		return d, errors.New("what is before and what is after is not clear")
	case s.class[beforeWord]:
		d, err = Interval(Date{}, Date{from: previous(d.from.bare())})
	case s.class[untilWord]:
		d, err = Interval(Date{}, d)
	case s.class[afterWord]:
		d, err = Interval(Date{from: next(d.from.bare())}, Date{})
	default:
		d, err = Interval(d, Date{})
	}
	d.circa = s.class[circaWord]
	return d, err
}

// withTimes puts times of day to the days they were written beside.
func (s *scanned) withTimes(d Date) (Date, error) {
	if len(s.times) == 1 && midnight.MatchString(s.times[0].text) {
		return d, nil // a spreadsheet adds it where no time is known
	}
	if len(s.times) == 0 {
		return d, nil
	}
	switch {
	case len(s.times) > 2:
		return d, errors.New("there are more than two times of day")
	case len(s.times) == 2:
		if !d.interval {
			d.interval, d.to = true, d.from
		}
		d.from.time, d.to.time = s.times[0].text, s.times[1].text
	case d.interval && s.times[0].last:
		d.to.time = s.times[0].text
	default:
		d.from.time = s.times[0].text
	}
	if d.from.time != "" && d.from.day == 0 || d.to.time != "" && d.to.day == 0 {
		return d, errors.New("there is a time of day but no day")
	}
	if d.interval && d.from == d.to {
		d.interval, d.to = false, part{}
	}
	return d, nil
}
