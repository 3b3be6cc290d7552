package check

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/date"
)

// settleEvent reads a date in doubt by what the rest of its row says of it: year,
// month, day and the days of the year; then verbatimEventDate. Where those
// leave none of its readings it says so.
func (c *Context) settleEvent() {
	r := &c.EventDate
	if r.Term != "eventDate" || r.Status != date.Ambiguous || r.Doubt&(date.OrderDoubt|date.CenturyDoubt) == 0 {
		return
	}
	left, asked := r.Candidates, false
	for _, p := range dateParts {
		want, ok := c.datePart(p.term)
		if !ok {
			continue
		}
		asked = true
		left = slices.DeleteFunc(slices.Clone(left), func(d date.Date) bool {
			got, has := p.of(d)
			return has && got != want
		})
	}
	if len(left) == 0 {
		r.against = true
		return
	}
	if len(left) > 1 {
		if v := date.Read(c.Text("verbatimEventDate"), c.Options.Dates); v.Status == date.OK {
			agree := slices.DeleteFunc(slices.Clone(left), func(d date.Date) bool { return !v.Date.Covers(d) && !d.Covers(v.Date) })
			if len(agree) > 0 {
				left, asked = agree, true
			}
		}
	}
	if len(left) > 1 {
		if agree := c.ofNumber(left); len(agree) > 0 {
			left, asked = agree, true
		}
	}
	if !asked {
		return
	}
	r.settled(left)
}

// yearNumber is a collector's number that begins with the year, 2014-34, and dayNumber
// one that begins with the day, 20140512-3.
var (
	yearNumber = regexp.MustCompile(`^(?:\pL{1,4}[-_. /]?)?((?:18|19|20)\d\d)[-_./]\d{1,5}\pL?$`)
	dayNumber  = regexp.MustCompile(`^(?:\pL{1,4}[-_. /]?)?((?:18|19|20)\d\d)[-_.]?(0[1-9]|1[0-2])[-_.]?(0[1-9]|[12]\d|3[01])[-_./]\d{1,4}\pL?$`)
)

// ofNumber returns those readings of a date whose year, or day, the collector's number
// begins with.
func (c *Context) ofNumber(ds []date.Date) []date.Date {
	number := c.Text("recordNumber")
	if m := dayNumber.FindStringSubmatch(number); m != nil {
		day := m[1] + "-" + m[2] + "-" + m[3]
		return slices.DeleteFunc(slices.Clone(ds), func(d date.Date) bool { return d.ISO() != day })
	}
	m := yearNumber.FindStringSubmatch(number)
	if m == nil {
		return nil
	}
	year, _ := strconv.Atoi(m[1])
	return slices.DeleteFunc(slices.Clone(ds), func(d date.Date) bool { y, ok := d.Year(); return !ok || y != year })
}

// settleIdentified reads the date of a determination, whose century is not
// written, by the day of collecting, which lies before it, and by today.
func (c *Context) settleIdentified() {
	r := &c.DateIdentified
	if r.Status != date.Ambiguous && r.Status != date.Incomplete || len(r.Candidates) == 0 || r.Doubt&date.SerialDoubt != 0 {
		return
	}
	collected := c.collectedFrom()
	if collected.IsZero() || collected.IsCirca() {
		return
	}
	today := c.Options.Today
	left := slices.DeleteFunc(slices.Clone(r.Candidates), func(d date.Date) bool {
		return d.Before(collected) || !today.IsZero() && d.After(today)
	})
	switch {
	case len(left) == 0:
	case r.Status == date.Incomplete || today.IsZero():
		r.Candidates = left // it may be no year at all
	default:
		r.settled(left)
	}
}

// settleLanguage reads a date in figures with the day first, where the language of
// the headings has it so and nothing else of the row says which is which; or in the
// order that the heading gives.
func (c *Context) settleLanguage(r *DateReading) {
	if r.Status != date.Ambiguous || r.Doubt&date.OrderDoubt == 0 || r.against || c.Options.Dates.Order != date.UnknownOrder || c.row == nil {
		return
	}
	h := c.Options.Dates
	switch t := c.row.Table(); {
	case t.DayFirst(r.Term, r.Text):
		h.Order = date.DayFirst
	case t.MonthFirst(r.Term):
		h.Order = date.MonthFirst
	default:
		return
	}
	r.Reading, r.ByLanguage = date.Read(r.Text, h), true
}

// collectedFrom returns the day of collecting; the earliest it can be, where
// only day and month are in doubt.
func (c *Context) collectedFrom() date.Date {
	r := &c.EventDate
	if r.Status != date.Ambiguous || r.Doubt != date.OrderDoubt {
		return c.Date
	}
	return slices.MinFunc(r.Candidates, date.Date.Compare)
}

// settled takes what is left of the readings of a date; one is the date.
func (r *DateReading) settled(left []date.Date) {
	if len(left) > 1 {
		r.Candidates = left
		return
	}
	r.Reading = date.Reading{Status: date.OK, Date: left[0], More: r.More}
}

// dateParts are the columns that say a part of eventDate once more.
var dateParts = []struct {
	term string
	of   func(date.Date) (int, bool)
}{
	{"year", date.Date.Year}, {"month", date.Date.Month}, {"day", date.Date.Day},
	{"startDayOfYear", date.Date.StartDayOfYear}, {"endDayOfYear", date.Date.EndDayOfYear},
}

// datePart reads a column of dateParts; 0, which data bases write for what is
// not known, says nothing.
func (c *Context) datePart(term string) (int, bool) {
	text := c.whole(term)
	if text == "" {
		return 0, false
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		switch term {
		case "month":
			n, err = date.ParseMonth(text)
		case "day":
			n, err = date.ParseDay(text)
		}
	}
	return n, err == nil && n > 0 && (term != "year" || n > 999)
}

// partsSaid writes what year, month and day of the row say together.
func (c *Context) partsSaid() string {
	var said []string
	for _, p := range dateParts {
		if n, ok := c.datePart(p.term); ok {
			said = append(said, p.term+" "+strconv.Itoa(n))
		}
	}
	return strings.Join(said, ", ")
}

// partsRule holds year, month and day against a date that is not written by
// ISO 8601; of those that are the standard's tests say it.
func partsRule(c *Context) {
	r := &c.EventDate
	c.dayOfYearRule()
	if r.Term != "eventDate" || r.Status != date.OK || r.Date.IsCirca() {
		return
	}
	if len(r.Text) >= 4 && c.Text("year") == r.Text[:4] { // mostly ISO 8601
		if _, err := date.FromISO(r.Text); err == nil {
			return
		}
	}
	for _, p := range dateParts {
		want, ok := c.datePart(p.term)
		if !ok {
			continue
		}
		if got, has := p.of(r.Date); has && got != want {
			if _, err := date.FromISO(r.Text); err == nil {
				return
			}
			is, suggest := strconv.Itoa(got), ""
			if p.term == "month" && want > 12 || p.term == "day" && want > 31 {
				suggest = is // else nobody knows which of the two is right
			}
			c.Suggest(p.term, "eventDate says "+is+": correct one of the two", suggest)
			return
		}
	}
}

// dayOfYearRule holds the day of the year against a date that stands in year, month and
// day alone. The last day of a gathering of several may be another than theirs.
func (c *Context) dayOfYearRule() {
	r := &c.EventDate
	if r.Term != "year" && r.Term != "month" && r.Term != "day" || r.Status != date.OK || r.Date.IsCirca() || r.Date.Days() != 1 {
		return
	}
	want, ok := c.datePart("startDayOfYear")
	if got, has := r.Date.StartDayOfYear(); ok && has && got != want {
		c.Report("startDayOfYear", "year, month and day say "+strconv.Itoa(got)+": correct one of them")
	}
}

// isZeroDate reports whether a date is all zeros, which data bases write where
// there is none: 0000-00-00, 00/00/0000, 0.
func isZeroDate(text string) bool {
	if text == "" || text[0] != '0' {
		return false
	}
	return strings.Trim(text, "0-/. :TZ") == ""
}

// zeroParts reports whether year, month and day, as far as they are filled,
// are all zeros.
func (c *Context) zeroParts() bool {
	some := false
	for _, term := range [...]string{"year", "month", "day"} {
		text := c.Text(term)
		if strings.Trim(text, "0") != "" {
			return false
		}
		some = some || text != ""
	}
	return some
}

// filledTable finds columns whose days are nearly all the first or the last of
// a year, which is what programs make of a year alone.
type filledTable struct{ columns [2]filledColumn }

type filledColumn struct {
	days  int // dates of one day
	kinds [2]filledKind
	apart map[string]bool // who, in which year and where, on such days
}

type filledKind struct {
	first *Field
	year  string
	more  []label.Cell
}

// Of so many dates nine in ten must be such days, so many times by another
// person, in another year or at another place: at the turn of the year a party
// collects once, and not all over a country.
const (
	filledLeast = 10
	filledApart = 5
	// Nobody determines at the turn of the year time and again: of those days fewer
	// are enough, and a tenth of all.
	filledFew = 6
)

func (t *filledTable) Feed(r *Record) {
	for i, term := range dateTerms {
		d, who := r.Date, r.Collector
		if i == 1 {
			d, who = r.Identified, r.Text("identifiedBy")
		} else if r.DateTerm != term && r.DateTerm != "year" {
			continue
		}
		if d.Days() != 1 {
			continue
		}
		col := &t.columns[i]
		col.days++
		kind := 0
		switch day := d.Start(); {
		case day.Month == 1 && day.Day == 1:
		case day.Month == 12 && day.Day == 31:
			kind = 1
		default:
			continue
		}
		year := d.First().ISO()[:4]
		if len(col.apart) < filledApart {
			if col.apart == nil {
				col.apart = map[string]bool{}
			}
			key := who + "\x00" + year
			if i == 0 { // where it was determined is not known
				key += "\x00" + r.Text("stateProvince") + "\x00" + r.Text("locality")
			}
			col.apart[key] = true
		}
		k := &col.kinds[kind]
		if f := r.Field(term); k.first == nil {
			k.first, k.year = &Field{Text: strings.Clone(f.Text), Origin: f.Origin}, year
		} else if len(k.more) < maxOrderCells {
			k.more = append(k.more, label.Cell{Row: r.Row, Term: term})
		}
	}
}

func (t *filledTable) End() []label.Finding {
	var all []label.Finding
	for i := range t.columns {
		col := &t.columns[i]
		if len(col.apart) < filledApart {
			continue
		}
		for kind, k := range col.kinds {
			least, share := filledLeast, 9
			if dateTerms[i] == "dateIdentified" {
				least, share = filledFew, 1
			}
			if n := 1 + len(k.more); k.first == nil || n < least || n*10 < col.days*share {
				continue
			}
			day := [2]string{"1 January", "31 December"}[kind]
			all = append(all, label.Finding{Origin: k.first.Origin, Value: k.first.Text, Also: k.more, Suggest: k.year,
				Message: fmt.Sprintf("%d of %d dates of this column are %s, which is what programs make of a year alone: write only the year where no more is known", 1+len(k.more), col.days, day)})
		}
	}
	return all
}
