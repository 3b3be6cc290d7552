package bdq

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// The earliest days are the standard's default parameters: the Gregorian
// calendar's first full month, and the first year of Linnaeus's Species
// Plantarum.
var (
	earliestEvent          = date.Day{Year: 1582, Month: 11, Day: 15}
	earliestIdentification = date.Day{Year: 1753, Month: 1, Day: 1}
)

// dateTests are those of eventDate and dateIdentified.
func dateTests() []Test {
	return []Test{
		isISO("VALIDATION_EVENTDATE_STANDARD", "4f2bf8fd-fc5c-493f-a44c-e7b16153c803", "eventDate"),
		{
			Label: "VALIDATION_EVENTDATE_INRANGE", GUID: "3cff4dc4-72e9-4abe-9bf3-8a30f1618432", Kind: KindValidation,
			Doc: "all of eventDate lies between 15 November 1582 and the end of this year", Acts: []string{"eventDate"},
			Answer: func(c *Cells) Response {
				d, empty, ok := c.date("eventDate")
				if empty || !ok {
					return internalNotMet
				}
				return complies(d.Start().Compare(earliestEvent) >= 0 && (c.today.IsZero() || d.End().Year <= c.today.End().Year))
			},
			rule: speech{
				severity: label.Warning, message: "no herbarium is so old: correct the year",
				// A date to come has a rule of its own.
				quiet: func(c *Cells, _ *check.Context) bool {
					d, _, _ := c.date("eventDate")
					return d.Start().Compare(earliestEvent) >= 0
				},
				example: check.With("eventDate", "0126-05-14"), counterexample: check.With("eventDate", "1753-05"),
			},
		},
		isISO("VALIDATION_DATEIDENTIFIED_STANDARD", "66269bdd-9271-4e76-b25c-7ab81eebe1d8", "dateIdentified"),
		{
			Label: "VALIDATION_DATEIDENTIFIED_INRANGE", GUID: "dc8aae4b-134f-4d75-8a71-c4186239178e", Kind: KindValidation,
			Doc: "dateIdentified lies between 1753 and today, and not before eventDate", Acts: []string{"dateIdentified"}, Consults: []string{"eventDate"},
			Answer: identifiedInRange,
			rule: speech{
				message: "outside the years of botanical names, in the future or before the plant was collected: correct one of the dates",
				example: check.With("dateIdentified", "2025"), counterexample: check.With("dateIdentified", "2026"),
			},
		},
		{
			Label: "VALIDATION_EVENT_CONSISTENT", GUID: "5618f083-d55a-4ac2-92b5-b9fb227b832f", Kind: KindValidation,
			Doc: "year, month, day, startDayOfYear and endDayOfYear, where filled in, are those of eventDate", Acts: []string{"eventDate", "day", "month", "year", "startDayOfYear", "endDayOfYear"},
			Answer: func(c *Cells) Response {
				if _, empty, _ := c.date("eventDate"); empty || c.Empty("year") && c.Empty("month") && c.Empty("day") && c.Empty("startDayOfYear") && c.Empty("endDayOfYear") {
					return internalNotMet
				}
				term, _ := disagreement(c)
				return complies(term == "")
			},
			rule: speech{
				severity: label.Warning,
				speak: func(c *Cells, say func(term, message, suggest string)) {
					term, is := unlike(c, plainly)
					switch {
					case term == "":
					case is == "":
						say(term, "eventDate does not say one "+partName(term)+": leave this empty or correct eventDate", "")
					case possible(term, c.trimmed(term)): // nobody knows which of the two is right
						say(term, "eventDate says "+is+": correct one of the two", "")
					default:
						say(term, "eventDate says "+is+": correct one of the two", is)
					}
				},
				// Where eventDate is not ISO 8601, what it says is not known
				// for certain; other rules speak of it.
				quiet:   func(c *Cells, _ *check.Context) bool { _, _, ok := c.date("eventDate"); return !ok },
				example: check.With("year", "2025"), counterexample: check.With("year", "2026.0", "month", "5", "day", "14"),
			},
		},
	}
}

func isISO(name, guid, term string) Test {
	return Test{
		Label: name, GUID: guid, Kind: KindValidation, Doc: term + " is a valid date, date and time or interval of ISO 8601", Acts: []string{term},
		Answer: func(c *Cells) Response {
			_, empty, ok := c.date(term)
			if empty {
				return internalNotMet
			}
			return complies(ok)
		},
		rule: speech{
			message: "not a date of ISO 8601: write it as 2026-05-14, 2026-05 or 2026",
			example: check.With(term, "s.d."), counterexample: check.With(term, "2026-05-14"),
			suggest: func(c *Cells) string { s, _ := toISO(c, term); return s },
		},
	}
}

// identifiedInRange takes a year or a month that has begun for one that lies
// before today, but an interval only if it has ended.
func identifiedInRange(c *Cells) Response {
	d, empty, ok := c.date("dateIdentified")
	event, noEvent, eventOK := c.date("eventDate")
	if empty || !ok || !noEvent && !eventOK {
		return internalNotMet
	}
	if d.Start().Compare(earliestIdentification) < 0 {
		return notCompliant
	}
	if !c.today.IsZero() {
		last := d.Start()
		if d.IsInterval() {
			last = d.End()
		}
		if last.Compare(c.today.End()) > 0 {
			return notCompliant
		}
	}
	return complies(noEvent || !endsBefore(d, event))
}

// endsBefore reports whether d is over before event begins: by the clock where both
// say the time and either both or neither name their zone, else by the days as
// they are written.
func endsBefore(d, event date.Date) bool {
	_, to := d.Time()
	from, _ := event.Time()
	if to == "" || from == "" || strings.ContainsAny(to, "Z+-") != strings.ContainsAny(from, "Z+-") {
		return d.End().Compare(event.Start()) < 0
	}
	midnight := func(d date.Day) int {
		return int(time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC).Unix())
	}
	last, width := secondsOf(to)
	first, _ := secondsOf(from)
	return midnight(d.End())+last+width <= midnight(event.Start())+first
}

// disagreement returns the first term that does not say what eventDate says,
// and what that is; "" where eventDate is not so fine or spans several.
func disagreement(c *Cells) (term, is string) { return unlike(c, byTheStandard) }

// reading is how strictly the parts are held against the date.
type reading int

const (
	byTheStandard reading = iota
	// plainly lets habits pass that nobody would correct: a 0 for what is not known,
	// the first or the last day of a time of several in year, month and day, and
	// what is no whole number but says one: "2026.0", "May". The standard asserts
	// consistency only of values that are what their terms want.
	plainly
)

func unlike(c *Cells, how reading) (term, is string) {
	d, _, ok := c.date("eventDate")
	for _, p := range []struct {
		term string
		part func(date.Date) (int, bool)
	}{{"year", date.Date.Year}, {"month", date.Date.Month}, {"day", date.Date.Day}, {"startDayOfYear", date.Date.StartDayOfYear}, {"endDayOfYear", date.Date.EndDayOfYear}} {
		text := c.trimmed(p.term)
		if text == "" || how == plainly && strings.Trim(text, "0.") == "" {
			continue
		}
		got, whole := integer(text)
		if !whole && how == plainly {
			if got, whole = integer(strings.TrimSuffix(text, ".0")); !whole { // as programs write whole numbers
				got, whole = inWords(p.term, text)
			}
		}
		want, has := p.part(d)
		if how == plainly && !has && whole && d.IsInterval() {
			first, one := p.part(d.First())
			last, two := p.part(d.Last())
			if one && got == first || two && got == last {
				continue
			}
		}
		if !ok || !has {
			return p.term, ""
		}
		if !whole || got != want {
			return p.term, strconv.Itoa(want)
		}
	}
	return "", ""
}

// inWords reads a month or a day that is no whole number: "May", "V", "3rd".
func inWords(term, text string) (int, bool) {
	read := date.ParseMonth
	switch term {
	case "month":
	case "day":
		read = date.ParseDay
	default:
		return 0, false
	}
	n, err := read(text)
	return n, err == nil
}

// possible reports whether a part of a date can be one.
func possible(term, text string) bool {
	n, whole := integer(text)
	if !whole {
		n, whole = inWords(term, text)
	}
	switch term {
	case "month":
		return whole && n >= 1 && n <= 12
	case "day":
		return whole && n >= 1 && n <= 31
	case "year":
		return whole && n >= 1000 && n <= 9999
	}
	return whole && n >= 1 && n <= 366
}

func partName(term string) string {
	switch term {
	case "startDayOfYear", "endDayOfYear":
		return "day"
	}
	return term
}

// partTests are those of the parts of a date in columns of their own.
func partTests() []Test {
	return []Test{
		{
			Label: "VALIDATION_YEAR_INRANGE", GUID: "ad0c8855-de69-4843-a80c-a5387d20fbc8", Kind: KindValidation,
			Doc: "year lies between 1582 and this year", Acts: []string{"year"},
			Answer: func(c *Cells) Response {
				y, ok := c.integer("year")
				if !ok {
					return internalNotMet
				}
				return complies(y >= earliestEvent.Year && (c.today.IsZero() || y <= c.today.End().Year))
			},
			rule: speech{
				message: "not a year from 1582 to this year: correct it",
				example: check.With("eventDate", "", "year", "1499"), counterexample: check.With("year", "2026"),
			},
		},
		wholeNumber("VALIDATION_MONTH_STANDARD", "01c6dafa-0886-4b7e-9881-2c3018c98bdc", "month", 12, "5", func(c *Cells) bool {
			m, ok := c.integer("month")
			return ok && m >= 1 && m <= 12
		}),
		wholeNumber("VALIDATION_DAY_STANDARD", "47ff73ba-0028-4f79-9ce1-ee7008d66498", "day", 31, "14", func(c *Cells) bool { return isDay(c.Text("day")) }),
		{
			Label: "VALIDATION_DAY_INRANGE", GUID: "8d787cb5-73e2-4c39-9cd1-67c7361dc02e", Kind: KindValidation,
			Doc: "day exists in the month and the year", Acts: []string{"day", "month", "year"},
			Answer: dayInRange,
			rule: speech{
				twin: "VALIDATION_EVENT_CONSISTENT", message: "the month does not have this day: correct one of the two",
				example: check.With("day", "31", "month", "4"), counterexample: check.With("day", "14", "month", "5"),
			},
		},
		dayOfYear("VALIDATION_STARTDAYOFYEAR_INRANGE", "85803c7e-2a5a-42e1-b8d3-299a44cafc46", "startDayOfYear", date.Date.Start),
		dayOfYear("VALIDATION_ENDDAYOFYEAR_INRANGE", "9a39d88c-7eee-46df-b32a-c109f9f81fb8", "endDayOfYear", date.Date.End),
	}
}

// isDay reports whether s is a whole number from 1 to 31, and nothing else.
func isDay(s string) bool {
	n, ok := integer(s)
	return ok && n >= 1 && n <= 31
}

func wholeNumber(name, guid, term string, most int, right string, good func(*Cells) bool) Test {
	doc := fmt.Sprintf("%s is a whole number from 1 to %d", term, most)
	return Test{
		Label: name, GUID: guid, Kind: KindValidation, Doc: doc, Acts: []string{term},
		Answer: func(c *Cells) Response {
			if c.Empty(term) {
				return internalNotMet
			}
			return complies(good(c))
		},
		rule: speech{
			twin: "VALIDATION_EVENT_CONSISTENT", message: fmt.Sprintf("not a whole number from 1 to %d", most),
			example: check.With(term, "x"), counterexample: check.With(term, right),
		},
	}
}

func dayInRange(c *Cells) Response {
	day, ok := c.integer("day")
	month, hasMonth := c.integer("month")
	year, hasYear := c.isoYear("year")
	switch {
	case !ok:
		return internalNotMet
	case day >= 1 && day <= 28:
		return compliant
	case day < 29 || day > 31:
		return notCompliant
	case !hasMonth || month < 1 || month > 12:
		return internalNotMet
	case month == 2 && day == 29:
		if !hasYear {
			return internalNotMet
		}
		return complies(date.IsLeap(year))
	}
	return complies(day <= date.DaysInMonth(2000, month) && month != 2)
}

// dayOfYear asks whether a number is one of the days of the year that
// eventDate begins or ends in.
func dayOfYear(name, guid, term string, end func(date.Date) date.Day) Test {
	return Test{
		Label: name, GUID: guid, Kind: KindValidation, Doc: term + " is a day of the year, 366 only in a leap year", Acts: []string{term}, Consults: []string{"eventDate"},
		Answer: func(c *Cells) Response {
			if c.Empty(term) {
				return internalNotMet
			}
			n, ok := c.integer(term)
			if ok && n == 366 {
				d, empty, valid := c.date("eventDate")
				if empty || !valid {
					return internalNotMet
				}
				return complies(date.IsLeap(end(d).Year))
			}
			return complies(ok && n >= 1 && n <= 365)
		},
		rule: speech{
			message: "not a day of that year: they run from 1 to 365, in leap years to 366",
			example: check.With("eventDate", "s.d.", term, "400"), counterexample: check.With(term, "134"),
		},
	}
}
