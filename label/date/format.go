package date

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label/lang"
)

// A Form is how a date is written.
type Form uint8

// The forms, with the same day in English.
const (
	LongMonth  Form = iota // 14 March 2026
	ShortMonth             // 14 Mar 2026
	RomanMonth             // 14.iii.2026
	ISOForm                // 2026-03-14
	MonthDay               // March 14, 2026: in English; elsewhere as LongMonth
)

// A Style is how dates are printed. The zero value is day, month name, year.
type Style struct {
	Form Form
	// Time prints the time of day too, where one was written; but not that of
	// dates which begin and end at midnight to the second, or with a zone, as
	// data bases write days.
	Time bool
}

// Format returns d as the language writes it.
func (d Date) Format(s Style, l lang.Tag) string {
	return strings.Join(d.Pieces(s, l), " ")
}

// Pieces returns d as Format does, cut where a line may turn over: between
// the ends of a long interval. Inside a piece a line must not break.
func (d Date) Pieces(s Style, l lang.Tag) []string {
	if d.IsZero() {
		return nil
	}
	if !s.Time || d.midnight() {
		d = d.WithoutTime()
	}
	w := writer{s, l}
	var pieces []string
	switch {
	case !d.interval:
		pieces = []string{w.part(d.from)}
	case d.from.year == 0:
		if s.Form == ISOForm {
			return []string{d.ISO()}
		}
		pieces = []string{w.around(beforeWords, next(d.to))}
	case d.to.year == 0:
		if s.Form == ISOForm {
			return []string{d.ISO()}
		}
		pieces = []string{w.around(afterWords, previous(d.from))}
	default:
		pieces = w.interval(d.from, d.to)
	}
	if d.circa {
		switch {
		case s.Form == ISOForm:
			return []string{d.ISO()}
		case l == lang.Chinese:
			gap := " "
			if w.named() {
				gap = ""
			}
			pieces[0] = "約" + gap + pieces[0]
		default:
			pieces[0] = "c. " + pieces[0]
		}
	}
	return pieces
}

// midnight reports whether all times of d are 0 h to the second, or with a zone:
// 2013-01-01T00:00:00.000+0000 is a day that passed through a data base.
func (d Date) midnight() bool {
	filler := func(p part) bool {
		return p.time == "" || len(p.time) > len("00:00") && strings.HasPrefix(p.time, "00:00") && strings.Trim(strings.TrimRight(p.time, "Z"), "0:.,+-") == ""
	}
	return filler(d.from) && filler(d.to)
}

// Before and after, as words that stand before the date (in Chinese behind).
var (
	beforeWords = map[lang.Tag]string{
		lang.English: "before", lang.Portuguese: "antes de", lang.Spanish: "antes de", lang.French: "avant",
		lang.German: "vor", lang.Latin: "ante", lang.Chinese: "前",
	}
	afterWords = map[lang.Tag]string{
		lang.English: "after", lang.Portuguese: "depois de", lang.Spanish: "después de", lang.French: "après",
		lang.German: "nach", lang.Latin: "post", lang.Chinese: "後",
	}
)

type writer struct {
	Style
	lang lang.Tag
}

func (w writer) around(words map[lang.Tag]string, p part) string {
	word, ok := words[w.lang]
	if !ok {
		word = words[lang.English]
	}
	switch {
	case w.lang == lang.Chinese && w.named():
		return w.part(p) + word
	case w.lang == lang.Chinese:
		return w.part(p) + " " + word
	}
	return word + " " + w.part(p)
}

// named reports whether the style writes month names.
func (w writer) named() bool {
	return w.Form != RomanMonth && w.Form != ISOForm
}

// monthFirst reports whether the month stands before the day: only English
// has that form, and a language not known here is written as English.
func (w writer) monthFirst() bool {
	return w.Form == MonthDay && (w.lang == lang.English || !slices.Contains(lang.Tags(), w.lang))
}

func (w writer) year(p part) string { return fmt.Sprintf("%04d", p.year) }

// dayNumber writes a day before its month or before another day of it.
func (w writer) dayNumber(p part) string {
	n := strconv.Itoa(int(p.day))
	switch {
	case w.lang == lang.German && w.named():
		return n + "."
	case w.lang == lang.French && w.named() && p.day == 1:
		return "1er"
	}
	return n
}

func (w writer) month(p part) string {
	m := int(p.month)
	switch {
	case w.Form == RomanMonth:
		return lang.RomanMonth(m)
	case w.Form == ShortMonth:
		return lang.MonthShort(w.lang, m)
	case p.day == 0:
		return lang.MonthAlone(w.lang, m)
	}
	return lang.Month(w.lang, m)
}

// part writes one end in full.
func (w writer) part(p part) string {
	s := ""
	switch {
	case w.Form == ISOForm:
		return p.iso("")
	case p.month == 0:
		s = w.year(p)
		if w.lang == lang.Chinese && w.named() {
			s += "年"
		}
	default:
		s = w.join(w.dayMonth(p), w.year(p), p.day != 0)
	}
	if p.time != "" {
		s += ", " + clockWords(p.time)
	}
	return s
}

// clockWords writes a time of day with its zone in words, since a bare -06:00
// would look like the end of an interval: "14:07 UTC-06:00", "14 h".
func clockWords(t string) string {
	clock, zone := t, ""
	if i := strings.IndexAny(t, "Z+-"); i >= 0 {
		clock, zone = t[:i], " UTC"+strings.TrimPrefix(t[i:], "Z")
	}
	if len(clock) == 2 {
		clock += " h"
	}
	return clock + zone
}

// dayMonth writes the part without its year.
func (w writer) dayMonth(p part) string {
	if p.day == 0 {
		return w.month(p)
	}
	return w.days(w.dayNumber(p), p)
}

// days puts day figures, one or two, to the month.
func (w writer) days(days string, p part) string {
	switch {
	case w.Form == RomanMonth:
		return days + "." + w.month(p)
	case w.lang == lang.Chinese:
		return w.month(p) + days + "日"
	case w.monthFirst():
		return w.month(p) + " " + days
	case w.Form != ShortMonth && (w.lang == lang.Portuguese || w.lang == lang.Spanish):
		return days + " de " + w.month(p)
	}
	return days + " " + w.month(p)
}

// join puts the year to day and month.
func (w writer) join(dayMonth, year string, hasDay bool) string {
	switch {
	case w.Form == RomanMonth:
		return dayMonth + "." + year
	case w.lang == lang.Chinese:
		return year + "年" + dayMonth
	case w.monthFirst() && hasDay:
		return dayMonth + ", " + year
	case w.Form != ShortMonth && (w.lang == lang.Portuguese || w.lang == lang.Spanish):
		return dayMonth + " de " + year
	}
	return dayMonth + " " + year
}

// interval writes what both ends share only once.
func (w writer) interval(a, b part) []string {
	const dash = "–"
	sameKind := a.precision() == b.precision() && a.time == "" && b.time == ""
	switch {
	case w.Form == ISOForm:
		return []string{a.iso("") + "/" + b.iso("")}
	case sameKind && a.month == 0:
		s := w.year(a) + dash + w.part(b)
		return []string{s}
	case sameKind && a.year == b.year && a.month == b.month:
		days := w.dayNumber(a) + dash + w.dayNumber(b)
		return []string{w.join(w.days(days, a), w.year(a), true)}
	case sameKind && a.year == b.year && a.day == 0:
		from := w.month(a)
		if w.lang == lang.Chinese && w.named() {
			from = strings.TrimSuffix(from, "月")
		}
		return []string{w.join(from+dash+w.month(b), w.year(a), false)}
	case w.Form == RomanMonth && sameKind && a.year == b.year:
		return []string{w.dayMonth(a) + dash + w.part(b)}
	case w.Form == RomanMonth:
		return []string{w.part(a) + dash + w.part(b)}
	case w.lang == lang.Chinese && sameKind && a.year == b.year:
		return []string{w.part(a) + dash + w.dayMonth(b)}
	case sameKind && a.year == b.year:
		return []string{w.dayMonth(a) + " " + dash, w.part(b)}
	}
	return []string{w.part(a) + " " + dash, w.part(b)}
}

// next and previous return the neighbour of the same precision: "before
// 1900" ends with 1899.
func next(p part) part {
	switch p.precision() {
	case YearPrecision:
		p.year++
	case MonthPrecision:
		if p.month++; p.month > 12 {
			p.year, p.month = p.year+1, 1
		}
	case DayPrecision:
		p = dayPart(p.first().Add(1))
	}
	return p
}

func previous(p part) part {
	switch p.precision() {
	case YearPrecision:
		p.year--
	case MonthPrecision:
		if p.month--; p.month < 1 {
			p.year, p.month = p.year-1, 12
		}
	case DayPrecision:
		p = dayPart(p.first().Add(-1))
	}
	return p
}
