package check

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/date"
)

// A DateReading is how a date of the record was understood.
type DateReading struct {
	// Term is the column it was read from; "year", "month" or "day" stands
	// for the three together, the one the fault is in. "" if there is none.
	Term string
	Text string // as written; the three columns joined
	date.Reading
	// ByLanguage is set where the language of the headings settled whether the
	// day stands first.
	ByLanguage bool
	// against is set where the rest of the row leaves none of its readings.
	against bool
}

// readDates reads the dates of collecting and determining.
func (c *Context) readDates() {
	h := c.Options.Dates
	read := func(text string) date.Reading { return date.Read(text, h) }
	switch text := c.Text("eventDate"); {
	case text != "" && !Absent("eventDate", text) && !isZeroDate(text):
		c.EventDate = DateReading{Term: "eventDate", Text: text, Reading: c.past.dates.of(text, read)}
	case (c.Text("year") != "" || c.Text("month") != "" || c.Text("day") != "") && !c.zeroParts():
		c.EventDate = c.readParts(h)
	case c.Text("verbatimEventDate") != "" && !Absent("eventDate", c.Text("verbatimEventDate")) && !isZeroDate(c.Text("verbatimEventDate")):
		text := c.Text("verbatimEventDate")
		c.EventDate = DateReading{Term: "verbatimEventDate", Text: text, Reading: date.Read(text, h)}
	}
	c.settleEvent()
	c.settleLanguage(&c.EventDate)
	if c.EventDate.Status == date.OK {
		c.Date = c.EventDate.Date
	}
	if c.EventDate.Status != date.OK || c.EventDate.More {
		c.DateText = c.EventDate.Text
	}
	c.DateTerm = c.EventDate.Term
	if text := c.Text("dateIdentified"); text != "" && !Absent("eventDate", text) && !isZeroDate(text) {
		c.DateIdentified = DateReading{Term: "dateIdentified", Text: text, Reading: c.past.dates.of(text, read)}
		c.settleIdentified()
		c.settleLanguage(&c.DateIdentified)
		if c.DateIdentified.Status == date.OK {
			c.Identified = c.DateIdentified.Date
		}
		if c.DateIdentified.Status != date.OK || c.DateIdentified.More {
			c.IdentifiedText = text
		}
	}
}

// notZero is what a cell of month or day says: data bases write 0 where it is not
// known.
func notZero(s string) string {
	if strings.Trim(s, "0") == "" {
		return ""
	}
	return s
}

// whole is the cell of a column of whole numbers: where it has gaps, programs write
// "2019.0".
func (c *Context) whole(term string) string { return strings.TrimSuffix(c.Text(term), ".0") }

// readParts reads year, month and day. The month may be a word or in Roman
// figures, and the year a date of its own.
func (c *Context) readParts(h date.Hints) DateReading {
	year, month, day := c.whole("year"), notZero(c.whole("month")), notZero(c.whole("day"))
	var written []string
	for _, s := range []string{day, month, year} {
		if s != "" {
			written = append(written, s)
		}
	}
	r := DateReading{Term: "year", Text: strings.Join(written, " ")}
	if year == "" {
		r.Term = "month"
		if month == "" {
			r.Term = "day"
		}
		r.Reading = date.Reading{Status: date.Incomplete, Err: fmt.Errorf("the year is missing: fill in year")}
		return r
	}
	y, errY := figures(year)
	m, errM := figures(month)
	d, errD := figures(day)
	switch {
	case errY != nil:
		r.Reading = date.Reading{Status: date.Invalid, Err: fmt.Errorf("not a year in figures")}
		if whole := date.Read(year, h); month == "" && day == "" && whole.Status == date.OK && strings.Trim(year, "0123456789.") != "" {
			r.Reading = whole // the column of years has the whole date: 25 Sept 2012
		}
	case errD != nil:
		r.Term, r.Reading = "day", date.Reading{Status: date.Invalid, Err: fmt.Errorf("not a day of the month in figures")}
	case errM != nil:
		r.Term, r.Reading = "month", date.Read(r.Text, h)
	case month == "" && day != "":
		r.Term, r.Reading = "day", date.Reading{Status: date.Invalid, Err: fmt.Errorf("a day needs its month: fill in month")}
	case len(strings.TrimLeft(year, "0")) != 4:
		r.Reading = date.Reading{Status: date.Ambiguous, Err: fmt.Errorf("write the year with four figures")}
	default:
		got, err := date.New(y, m, d)
		r.Reading = date.Reading{Status: date.OK, Date: got, Err: err}
		if err != nil || month != "" && m == 0 || day != "" && d == 0 {
			r.Date, r.Status = date.Date{}, date.Invalid
			if err == nil {
				r.Err = fmt.Errorf("0 is no month or day: leave the cell empty if it is not known")
			}
			switch {
			case day != "" && m >= 1 && m <= 12:
				r.Term = "day"
			case y >= 1 && y <= 9999:
				r.Term = "month"
			}
		}
	}
	return r
}

// figures reads a whole number; "" is 0.
func figures(s string) (int, error) {
	if s == "" {
		return 0, nil
	}
	n, err := strconv.ParseUint(s, 10, 16)
	return int(n), err
}

// YearDayMonth reports whether a text is a date in the figures and signs of ISO
// 8601 whose month is none, and which has its day there: 2026-13-02.
func YearDayMonth(text string) bool {
	return len(text) == 10 && text[4] == '-' && text[7] == '-' && (text[5] == '1' && text[6] > '2' || text[5] == '2' || text[5] == '3') &&
		strings.Trim(text[:4]+text[5:7]+text[8:], "0123456789") == ""
}

// dateRules are about the dates of collecting and determining.
func dateRules() []Rule {
	both := []string{"eventDate", "year", "month", "day", "dateIdentified"}
	return []Rule{
		{
			Name: "date-missing", Severity: label.Warning, Source: handbooks,
			Doc:     "a gathering without a date; the label prints s.d.",
			Terms:   []string{"eventDate", "year", "verbatimEventDate"},
			Example: one("eventDate", ""), Counterexample: one("eventDate", "s.d."),
			Row: func(c *Context) {
				if c.EventDate.Term == "" && (c.blank("eventDate") || isZeroDate(c.Text("eventDate"))) && (c.blank("verbatimEventDate") || isZeroDate(c.Text("verbatimEventDate"))) && !c.row.Table().Tells("locality", "eventDate") {
					c.Report("eventDate", "no date is given: the label prints s.d."+c.unread("eventDate", "verbatimEventDate", "year"))
				}
			},
		},
		{
			Name: "date-unreadable", Severity: label.Error, Source: "ISO 8601-1:2019, which dwc:eventDate asks for; forms seen on labels",
			Doc:     "a date that does not exist, is no date, or lies before all herbaria",
			Terms:   both,
			Example: one("eventDate", "2026-02-30"), Counterexample: one("eventDate", "28 Feb 2026", "dateIdentified", "2026"),
			Row: func(c *Context) {
				for _, r := range []*DateReading{&c.EventDate, &c.DateIdentified} {
					switch {
					case r.Term == "verbatimEventDate":
					case r.Status == date.Invalid:
						c.Report(r.Term, reason(r.Err, r.Text))
					case r.Term == "dateIdentified" && r.Status == date.OK && before(r.Date, earliest): // of eventDate the standard's tests say it
						c.Reportf(r.Term, "the year %d is before all herbaria: write the date again", r.Date.End().Year)
					}
				}
			},
		},
		{
			Name: "date-calendar", Severity: label.Warning, Source: practice,
			Doc:     "a date of a calendar that is not ours; the label prints it as written",
			Terms:   []string{"eventDate", "dateIdentified"},
			Example: one("eventDate", "12 thermidor an VII"), Counterexample: one("eventDate", "1799-07-30", "verbatimEventDate", "12 thermidor an VII"),
			Row: func(c *Context) {
				for _, r := range []*DateReading{&c.EventDate, &c.DateIdentified} {
					if r.Status == date.Ambiguous && r.Doubt == date.CalendarDoubt && r.Term != "verbatimEventDate" {
						c.Suggest(r.Term, "of another calendar than ours, and printed as written: write the day by ours, and this text in verbatimEventDate", readings(r.Candidates))
						c.cause("calendar")
					}
				}
			},
		},
		{
			Name: "date-month", Severity: label.Warning, Source: "ISO 8601-1:2019; " + practice,
			Doc:     "a date like one of ISO 8601 with the day before the month: which of the two is wrong cannot be seen",
			Terms:   dateTerms[:],
			Example: one("eventDate", "2026-13-05"), Counterexample: one("eventDate", "2026-05-13"),
			Row: func(c *Context) {
				for _, r := range []*DateReading{&c.EventDate, &c.DateIdentified} {
					if r.Status == date.OK && r.Term != "verbatimEventDate" && YearDayMonth(r.Text) {
						c.Suggest(r.Term, fmt.Sprintf("there is no month %s: read and printed with the day before the month; see whether a figure is wrong", r.Text[5:7]), r.Date.ISO())
					}
				}
			},
		},
		{
			Name: "date-incomplete", Severity: label.Warning, Source: practice,
			Doc:     "a date without its year; the label prints it as written",
			Terms:   both,
			Example: one("eventDate", "14 May"), Counterexample: one("eventDate", "2026-05"),
			Row: func(c *Context) {
				for _, r := range []*DateReading{&c.EventDate, &c.DateIdentified} {
					if r.Status == date.Incomplete && r.Term != "verbatimEventDate" {
						if len(r.Candidates) > 0 { // Mar-04
							can := slices.Clone(notAhead(r.Candidates, c.Options.Today))
							slices.SortFunc(can, func(a, b date.Date) int { return b.Compare(a) }) // as spreadsheets read them
							c.Suggest(r.Term, "can be "+alternatives(can[:min(len(can), 2)])+", or a day without its year; it is printed as written: write the month with a year of four figures", readings(can))
							c.cause("month and two figures")
							continue
						}
						why := reason(r.Err, r.Text)
						if !strings.Contains(why, ":") {
							why += " and is printed as written: add the year if it is known"
						}
						c.Report(r.Term, why)
						c.cause(why)
					}
				}
			},
		},
		{
			Name: "date-verbatim", Severity: label.Warning, Source: darwin + " (verbatimEventDate)",
			Doc:     "only a verbatim date is given and it has no one reading; the label prints it as written",
			Terms:   []string{"verbatimEventDate"},
			Example: one("eventDate", "", "verbatimEventDate", "Whitsun 1912"), Counterexample: one("eventDate", "1912-05-26", "verbatimEventDate", "Whitsun 1912", "dateIdentified", "1912"),
			Row: func(c *Context) {
				if r := &c.EventDate; r.Term == "verbatimEventDate" && r.Status != date.OK {
					c.Suggest(r.Term, "no one reading, so it is printed as written: fill in eventDate if you know the day", readings(r.Candidates))
					c.cause("verbatim")
				}
			},
		},
		{
			Name: "date-zeros", Severity: label.Note, Source: practice,
			Doc:     "a date of determining that is all zeros, or a month or day of 0 beside a year, as data bases write where there is none; it is not printed",
			Terms:   []string{"dateIdentified", "month", "day"},
			Example: one("dateIdentified", "0000-00-00"), Counterexample: one("dateIdentified", "2026"),
			Row: func(c *Context) {
				if isZeroDate(c.Text("dateIdentified")) {
					c.Report("dateIdentified", "zeros stand for no date: taken as empty")
				}
				if c.EventDate.Term != "year" && c.EventDate.Term != "month" && c.EventDate.Term != "day" || notZero(c.Text("year")) == "" {
					return
				}
				for _, term := range []string{"month", "day"} {
					if s := c.Text(term); s != "" && notZero(s) == "" {
						c.Reportf(term, "0 stands for a %s that is not known: the date is read without it", term)
					}
				}
			},
		},
		{
			Name: "date-parts", Severity: label.Warning, Source: bdqCore + " (VALIDATION_EVENT_CONSISTENT)",
			Doc:     "year, month or day is not that of an eventDate in another form than ISO 8601, or startDayOfYear not that of a date in year, month and day",
			Terms:   []string{"eventDate", "year", "month", "day", "startDayOfYear", "endDayOfYear"},
			Example: one("eventDate", "14 May 2026", "month", "6"), Counterexample: one("eventDate", "14 May 2026", "month", "5"),
			Row: partsRule,
		},
		{
			// A clock may be wrong, so this does not stop the print.
			Name: "date-future", Severity: label.Warning, Source: bdqCore + " (VALIDATION_EVENTDATE_INRANGE)",
			Doc:     "collected or determined after today",
			Terms:   both,
			Example: one("eventDate", "2062-05-14"), Counterexample: one("eventDate", "2026-05", "dateIdentified", "2026"),
			Row: func(c *Context) {
				for _, r := range []*DateReading{&c.EventDate, &c.DateIdentified} {
					if today := c.Options.Today; !today.IsZero() && r.Status == date.OK && r.Date.After(today) {
						c.Reportf(r.Term, "in the future: today is %s", today)
					}
				}
			},
		},
	}
}

// earliest is the year before which nobody pressed plants: the oldest herbaria
// that are kept were begun about 1530 (common practice, no source).
const earliest = 1500

// before reports whether all of d lies before a year.
func before(d date.Date, year int) bool { y := d.End().Year; return y != 0 && y < year }

// readings writes the likeliest candidates of a date.
func readings(ds []date.Date) string {
	var all []string
	for _, d := range ds[:min(len(ds), 6)] {
		all = append(all, d.ISO())
	}
	return strings.Join(all, " or ")
}
