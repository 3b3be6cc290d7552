package bdq

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// dateAmendments are the amendments of when it was collected and determined.
func dateAmendments() []Test {
	return []Test{
		standardDate("AMENDMENT_EVENTDATE_STANDARDIZED", "718dfc3c-cb52-4fca-b8e2-0e722f375da7", "eventDate"),
		standardDate("AMENDMENT_DATEIDENTIFIED_STANDARDIZED", "39bb2280-1215-447b-9221-fd13bc990641", "dateIdentified"),
		amend(Test{
			Label: "AMENDMENT_MONTH_STANDARDIZED", GUID: "2e371d57-1eb3-4fe3-8a61-dff43ced50cf",
			Doc: "a month in words or Roman figures is written as a number", Acts: []string{"month"},
			rule: speech{severity: label.Note, message: "the month as a number is meant", example: check.With("month", "V"), counterexample: check.With("month", "5")},
		}, true, standardMonth),
		amend(Test{
			Label: "AMENDMENT_DAY_STANDARDIZED", GUID: "b129fa4d-b25b-43f7-9645-5ed4d44b357b",
			Doc: "a day with an ordinal's ending is written as a number", Acts: []string{"day"},
			rule: speech{severity: label.Note, message: "the day as a number is meant", example: check.With("day", "14th"), counterexample: check.With("day", "14")},
		}, true, standardDay),
		{
			Label: "AMENDMENT_EVENTDATE_FROM_VERBATIM", GUID: "6d0a0c10-5e4a-4759-b448-88932f399812", Kind: KindAmendment,
			Doc: "an empty eventDate is filled in from verbatimEventDate where that has one reading", Acts: []string{"eventDate"}, Consults: []string{"verbatimEventDate"},
			Answer: func(c *Cells) Response {
				text := c.trimmed("verbatimEventDate")
				if !c.Empty("eventDate") || text == "" {
					return internalNotMet
				}
				if r := date.Read(text, date.Hints{}); r.Status == date.OK && r.Date.IsPlain() && !r.Season {
					return changed(FilledIn, "eventDate", r.Date.ISO())
				}
				return notAmended
			},
			rule: speech{
				message: "can be filled in from verbatimEventDate",
				example: check.With("eventDate", "", "verbatimEventDate", "14 May 2026"), counterexample: check.With("verbatimEventDate", "14 May 2026"),
			},
		},
		{
			Label: "AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY", GUID: "3892f432-ddd0-4a0a-b713-f2e2ecbd879d", Kind: KindAmendment,
			Doc: "an empty eventDate is filled in from year, month and day, as finely as they say", Acts: []string{"eventDate"}, Consults: []string{"year", "month", "day"},
			Answer: eventFromParts,
			rule: speech{
				message: "can be filled in from year, month and day",
				example: check.With("eventDate", "", "year", "2026", "month", "5"), counterexample: check.With("year", "2026", "month", "5"),
			},
		},
		{
			Label: "AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR", GUID: "eb0a44fa-241c-4d64-98df-ad4aa837307b", Kind: KindAmendment,
			Doc: "an empty eventDate is filled in with the interval from startDayOfYear to endDayOfYear", Acts: []string{"eventDate"}, Consults: []string{"year", "startDayOfYear", "endDayOfYear"},
			Answer: eventFromDays,
			rule: speech{
				message:        "can be filled in from year, startDayOfYear and endDayOfYear",
				example:        check.With("eventDate", "", "year", "2026", "startDayOfYear", "134", "endDayOfYear", "136"),
				counterexample: check.With("year", "2026", "startDayOfYear", "134", "endDayOfYear", "134"),
			},
		},
		{
			Label: "AMENDMENT_EVENT_FROM_EVENTDATE", GUID: "710fe118-17e1-440f-b428-88ba3f547d6d", Kind: KindAmendment,
			Doc: "empty year, month, day, startDayOfYear and endDayOfYear are filled in from eventDate, as finely as it says", Acts: []string{"year", "month", "day", "startDayOfYear", "endDayOfYear"},
			Consults: []string{"eventDate"},
			Answer:   partsFromEvent,
			rule: speech{
				message: "can be filled in from eventDate",
				example: check.With(), counterexample: check.With("eventDate", "2026", "year", "2026"),
			},
		},
	}
}

func standardDate(name, guid, term string) Test {
	return Test{
		Label: name, GUID: guid, Kind: KindAmendment, Doc: "a date in " + term + " that has one reading is written as ISO 8601", Acts: []string{term},
		Answer: func(c *Cells) Response {
			if c.Empty(term) {
				return internalNotMet
			}
			if s, ok := toISO(c, term); ok {
				return changed(Amended, term, s)
			}
			return notAmended
		},
		rule: speech{severity: label.Note, message: "read without doubt, but the standard writes it otherwise",
			quiet:   func(c *Cells, _ *check.Context) bool { return check.YearDayMonth(c.trimmed(term)) }, // date-month says it
			example: check.With(term, "14.v.2026"), counterexample: check.With(term, "2026-05-14")},
	}
}

// toISO writes a date that is not of ISO 8601 so, where it has one reading and
// loses nothing by it.
func toISO(c *Cells, term string) (string, bool) {
	if _, empty, ok := c.date(term); empty || ok {
		return "", false
	}
	return plainISO(c.reading(term), c.trimmed(term))
}

// onlyDate reports whether every word of a date is a month, a day of the week
// or a word between figures. Seasons, "early", "mid", an old calendar, or
// brackets round what a curator added would be lost in ISO 8601.
func onlyDate(text string) bool {
	if strings.ContainsAny(text, "[](){}<>?!~*\"") {
		return false
	}
	for w := range strings.FieldsFuncSeq(text, func(r rune) bool { return !unicode.IsLetter(r) }) {
		if dateWords[strings.ToLower(w)] || strings.Trim(w, "xX年月日") == "" {
			continue
		}
		if _, err := date.ParseMonth(w); err != nil {
			return false
		}
	}
	return true
}

// dateWords are ordinals' endings, words between figures, the letters of times
// and decades, and the days of the week.
var dateWords = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields("st nd rd th er ª º s t z h to and a al até bis und y e et de do del den der the le of on " +
		"mon tue wed thu fri sat sun monday tuesday wednesday thursday friday saturday sunday " +
		"segunda terça quarta quinta sexta feira sábado domingo lunes martes miércoles jueves viernes " +
		"lundi mardi mercredi jeudi vendredi samedi dimanche montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag mo di mi do fr sa so") {
		m[w] = true
	}
	return m
}()

// standardMonth reads a month that is not the plain number, as readMonth does.
func standardMonth(text string) (string, bool) {
	if n, ok := integer(text); ok && n >= 1 && n <= 12 {
		return "", false
	}
	m, ok := readMonth(strings.TrimFunc(text, invisible))
	return strconv.Itoa(m), ok
}

// readMonth reads a month in words or Roman figures. A small x alone stands for a
// figure that nobody could read, as often as for October.
func readMonth(s string) (int, bool) {
	if s == "x" {
		return 0, false
	}
	return inWords("month", s)
}

func standardDay(text string) (string, bool) {
	if isDay(text) {
		return "", false
	}
	d, err := date.ParseDay(strings.TrimFunc(text, invisible))
	return strconv.Itoa(d), err == nil
}

// eventFromParts leaves out what cannot be read as a number: a day without its
// month says nothing. A date that does not exist is none.
func eventFromParts(c *Cells) Response {
	_, whole := c.integer("year")
	if !c.Empty("eventDate") || !whole {
		return internalNotMet
	}
	year, ok := c.isoYear("year")
	month, hasMonth := c.integer("month")
	if !hasMonth {
		month, hasMonth = readMonth(c.trimmed("month"))
	}
	day, hasDay := c.integer("day")
	if !hasDay {
		day, hasDay = inWords("day", c.trimmed("day"))
	}
	switch {
	case !ok:
		return notAmended
	case !hasMonth:
		month, day = 0, 0
	case !hasDay:
		day = 0
	case day == 0:
		return notAmended
	}
	if hasMonth && month == 0 {
		return notAmended
	}
	d, err := date.New(year, month, day)
	if err != nil {
		return notAmended
	}
	return changed(FilledIn, "eventDate", d.ISO())
}

func eventFromDays(c *Cells) Response {
	if !c.Empty("eventDate") || c.Empty("year") || c.Empty("startDayOfYear") || c.Empty("endDayOfYear") {
		return internalNotMet
	}
	year, ok := c.isoYear("year")
	first, ok1 := c.integer("startDayOfYear")
	last, ok2 := c.integer("endDayOfYear")
	if !ok || !ok1 || !ok2 || first >= last {
		return notAmended
	}
	a, err1 := date.NewDayOfYear(year, first)
	b, err2 := date.NewDayOfYear(year, last)
	if err1 != nil || err2 != nil {
		return notAmended
	}
	return changed(FilledIn, "eventDate", a.ISO()+"/"+b.ISO())
}

func partsFromEvent(c *Cells) Response {
	d, empty, ok := c.date("eventDate")
	if empty || !ok {
		return internalNotMet
	}
	room := [10]string{}
	pairs := room[:0]
	fill := func(term string, n int, has bool) {
		if has && c.Empty(term) {
			pairs = append(pairs, term, strconv.Itoa(n))
		}
	}
	n, has := d.Year()
	fill("year", n, has)
	n, has = d.Month()
	fill("month", n, has)
	n, has = d.Day()
	fill("day", n, has)
	n, has = d.StartDayOfYear()
	fill("startDayOfYear", n, has)
	n, has = d.EndDayOfYear()
	fill("endDayOfYear", n, has)
	if len(pairs) == 0 {
		return notAmended
	}
	return changed(FilledIn, pairs...)
}

// eventDuration measures eventDate. A time of day counts as long as what was
// written of it: an hour, a minute or a second.
func eventDuration() Test {
	return Test{
		Label: "MEASURE_EVENTDATE_DURATIONINSECONDS", GUID: "56b6c695-adf1-418e-95d2-da04cad7be53", Kind: KindMeasure,
		Doc: "how many seconds eventDate spans, days of 86,400 each", Acts: []string{"eventDate"},
		Answer: func(c *Cells) Response {
			d, empty, ok := c.date("eventDate")
			if empty || !ok {
				return internalNotMet
			}
			from, to := d.Time()
			first, _ := secondsOf(from)
			last, width := secondsOf(to)
			if to == "" {
				last, width = 0, 86400
			}
			n := (d.Days()-1)*86400 + last + width - first
			return Response{Status: RunHasResult, Result: strconv.Itoa(max(n, 0))}
		},
		rule: speech{never: true},
	}
}

// secondsOf returns the second of the day, by Greenwich if a zone is written,
// and for how many seconds a time stands; 0 and 0 for none.
func secondsOf(clock string) (second, width int) {
	if clock == "" {
		return 0, 0
	}
	zone := 0
	if i := strings.IndexAny(clock, "Z+-"); i >= 0 {
		z := strings.ReplaceAll(clock[i:], ":", "")
		clock = clock[:i]
		if len(z) >= 3 {
			h, m := 0, 0
			fmt.Sscanf(z[1:], "%2d%2d", &h, &m)
			if zone = h*3600 + m*60; z[0] == '-' {
				zone = -zone
			}
		}
	}
	if i := strings.IndexAny(clock, ".,"); i >= 0 {
		clock = clock[:i]
	}
	width = 86400
	for _, part := range strings.Split(clock, ":") {
		n, _ := strconv.Atoi(part)
		switch width {
		case 86400:
			width = 3600
		default:
			width /= 60
		}
		second += n * width
	}
	return second - zone, width
}
