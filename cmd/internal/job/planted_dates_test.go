package job

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// onlyDate clears the columns that say the day as well, and sets eventDate.
func (p *planting) onlyDate(values ...string) bool {
	for _, term := range []string{"verbatimEventDate", "year", "month", "day", "dateIdentified"} {
		p.quietly(term, "")
	}
	return p.set("eventDate", p.pick(values...))
}

func date1(rule, how string, values ...string) plantedFault {
	return plantedFault{rule, how, func(p *planting) bool { return p.onlyDate(values...) }}
}

// dateFaults are in when it was collected and determined, and in missing cells.
var dateFaults = []plantedFault{
	{"place-missing", "empty", func(p *planting) bool { return p.placeless("") }},
	{"place-missing", "blanks", func(p *planting) bool { return p.placeless("  ") }},
	{"place-missing", "no country, no locality", func(p *planting) bool { return p.placeless("\u00a0") }},
	to("collector-missing", "empty", "recordedBy", ""), to("collector-missing", "blanks", "recordedBy", "  "), to("collector-missing", "a separator", "recordedBy", "|", ";"),
	date1("date-missing", "empty", ""), date1("date-missing", "blanks", "  "), date1("date-missing", "no-break space", "\u00a0"),
	date1("date-unreadable", "no such day", "2022-02-30", "31.6.2022", "31 Apr 2022", "2023-02-29"),
	date1("date-unreadable", "no such month", "2022-13-32", "2022-00-12", "45/13/2022"),
	date1("date-unreadable|date-ambiguous", "a serial day", "44700", "35200", "44700.5"),
	date1("date-unreadable|date-ambiguous", "words", "soon after the rain", "Mai?", "May 2O22"),
	date1("date-ambiguous", "strokes", "3/4/2022", "11/12/2004"), date1("date-ambiguous", "hyphens", "3-4-2022", "5-6-2004"), date1("date-ambiguous", "year of two figures", "3/4/22", "5/6/97"),
	date1("date-incomplete", "day and month", "14 May", "3 de abril"), date1("date-incomplete", "month", "May", "agosto"), date1("date-incomplete", "Roman month", "14.v.", "3.iv"),
	{"date-verbatim", "a feast", func(p *planting) bool { return p.onlyDate("") && p.verbatimDate("Whitsun 1912", "Easter 1997") }},
	{"date-verbatim", "figures either way", func(p *planting) bool { return p.onlyDate("") && p.verbatimDate("3/4/1997", "5/6/2004") }},
	{"date-verbatim", "in part", func(p *planting) bool { return p.onlyDate("") && p.verbatimDate("14 May", "xi.") }},
	{"date-future", "a slip of the year", func(p *planting) bool {
		_, m, d := p.ymd()
		return p.onlyDate(fmt.Sprintf("%d-%02d-%02d", []int{2062, 2202, 2027}[p.IntN(3)], m, d))
	}},
	date1("date-future", "tomorrow", "2026-07-31", "2026-08-01"),
	{"date-future", "determined", func(p *planting) bool { return p.set("dateIdentified", p.pick("2062", "2206-05", "2026-12-24")) }},
	{"VALIDATION_EVENTDATE_INRANGE", "a figure lost", func(p *planting) bool {
		_, m, d := p.ymd()
		return p.onlyDate(fmt.Sprintf("%s-%02d-%02d", p.pick("0222", "0199"), m, d))
	}},
	date1("VALIDATION_EVENTDATE_INRANGE", "before all herbaria", "1022-05-14", "1204-06-01"), date1("VALIDATION_EVENTDATE_INRANGE", "the year of Rome", "0897-05-14", "1500"),
	to("VALIDATION_EVENT_CONSISTENT", "year", "year", "1999", "2010"), to("VALIDATION_EVENT_CONSISTENT", "month", "month", "11", "12"), to("VALIDATION_EVENT_CONSISTENT", "day", "day", "30", "31"),
	to("VALIDATION_COUNTRYCODE_STANDARD", "no code", "countryCode", "ZX", "QQ", "PX"), to("VALIDATION_COUNTRYCODE_STANDARD", "one letter", "countryCode", "P", "x"),
	to("VALIDATION_COUNTRYCODE_STANDARD", "words", "countryCode", "abroad", "see label", "351"),
	to("VALIDATION_TYPESTATUS_STANDARD", "misspelt", "typeStatus", "holottype", "izotyp", "cleptotype"), to("VALIDATION_TYPESTATUS_STANDARD", "no kind", "typeStatus", "yes", "seen", "1"),
	to("VALIDATION_TYPESTATUS_STANDARD", "a name before", "typeStatus", "Thymus capitellatus"),
	to("AMENDMENT_COUNTRYCODE_STANDARDIZED", "three letters", "countryCode", "PRT", "ESP"), to("AMENDMENT_COUNTRYCODE_STANDARDIZED", "a name", "countryCode", "Portugal", "Spain"),
	to("AMENDMENT_COUNTRYCODE_STANDARDIZED", "small letters", "countryCode", "pt", "es"),
	to("AMENDMENT_TYPESTATUS_STANDARDIZED", "abbreviated", "typeStatus", "Holo.", "iso."), to("AMENDMENT_TYPESTATUS_STANDARDIZED", "in capitals", "typeStatus", "HOLOTYPE", "ISOTYPE"),
	to("AMENDMENT_TYPESTATUS_STANDARDIZED", "with a blank", "typeStatus", "holo type", "para-type"),
	{"AMENDMENT_EVENTDATE_STANDARDIZED", "Roman month", func(p *planting) bool {
		y, m, d := p.ymd()
		return strings.Contains(p.get("eventDate"), "-") && p.set("eventDate", fmt.Sprintf("%d.%s.%d", d, roman[m-1], y))
	}},
	{"AMENDMENT_EVENTDATE_STANDARDIZED", "a month in words", func(p *planting) bool {
		y, m, d := p.ymd()
		return strings.Contains(p.get("eventDate"), "-") && p.set("eventDate", fmt.Sprintf("%d %s %d", d, months[m-1], y))
	}},
	{"AMENDMENT_EVENTDATE_STANDARDIZED", "day first in figures", func(p *planting) bool {
		y, m, d := p.ymd()
		return d > 12 && strings.Contains(p.get("eventDate"), "-") && p.set("eventDate", fmt.Sprintf("%d/%d/%d", d, m, y))
	}},
	to("AMENDMENT_DATEIDENTIFIED_STANDARDIZED", "Roman month", "dateIdentified", "14.v.2026"), to("AMENDMENT_DATEIDENTIFIED_STANDARDIZED", "month and year", "dateIdentified", "May 2026", "maio de 2026"),
	to("AMENDMENT_DATEIDENTIFIED_STANDARDIZED", "day first", "dateIdentified", "24/5/2026"),
	{"AMENDMENT_MONTH_STANDARDIZED", "Roman", func(p *planting) bool {
		_, m, _ := p.ymd()
		return p.set("month", strings.ToUpper(roman[m-1]))
	}},
	{"AMENDMENT_MONTH_STANDARDIZED", "in words", func(p *planting) bool { _, m, _ := p.ymd(); return p.set("month", time.Month(m).String()) }},
	{"AMENDMENT_MONTH_STANDARDIZED", "abbreviated", func(p *planting) bool { _, m, _ := p.ymd(); return p.set("month", months[m-1]) }},
	{"AMENDMENT_DAY_STANDARDIZED", "English", func(p *planting) bool { return ordinal(p, "th") }},
	{"AMENDMENT_DAY_STANDARDIZED", "a first", func(p *planting) bool {
		return strings.HasSuffix(p.get("day"), "1") && p.get("day") != "11" && ordinal(p, "st")
	}},
	{"AMENDMENT_DAY_STANDARDIZED", "a second", func(p *planting) bool {
		return strings.HasSuffix(p.get("day"), "2") && p.get("day") != "12" && ordinal(p, "nd")
	}},

	{"identified-early", "a year before", func(p *planting) bool { y, _, _ := p.ymd(); return p.set("dateIdentified", fmt.Sprint(y-1)) }},
	{"identified-early", "a month before", func(p *planting) bool {
		y, m, _ := p.ymd()
		return p.set("dateIdentified", fmt.Sprintf("%d-%02d", y, m-1))
	}},
	{"identified-early", "days before", func(p *planting) bool {
		y, m, d := p.ymd()
		return d > 2 && p.set("dateIdentified", fmt.Sprintf("%d-%02d-%02d", y, m, 1))
	}},
	to("date-zeros", "zeros", "dateIdentified", "0000-00-00", "00/00/0000", "0"),
	{"date-parts", "another year", func(p *planting) bool { return p.part("year", func(y, _, _ int) int { return y - 1 }) }},
	{"date-parts", "another month", func(p *planting) bool { return p.part("month", func(_, m, _ int) int { return m%12 + 1 }) }},
	{"date-parts", "another day", func(p *planting) bool { return p.part("day", func(_, _, d int) int { return (d+4)%28 + 1 }) }},
	{"weekday", "English", func(p *planting) bool { return p.weekday(func(w int) string { return time.Weekday(w).String() }) }},
	{"weekday", "Portuguese", func(p *planting) bool {
		return p.weekday(func(w int) string {
			return []string{"domingo", "segunda-feira", "terça-feira", "quarta-feira", "quinta-feira", "sexta-feira", "sábado"}[w]
		})
	}},
	{"weekday", "German", func(p *planting) bool {
		return p.weekday(func(w int) string {
			return []string{"Sonntag", "Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag"}[w]
		})
	}},
	{"weekday", "abbreviated", func(p *planting) bool { return p.weekday(func(w int) string { return time.Weekday(w).String()[:3] }) }},
	{"date-disagrees", "another month", func(p *planting) bool {
		y, m, d := p.ymd()
		return p.set("verbatimEventDate", fmt.Sprintf("%d.%s.%d", d, roman[m%12], y))
	}},
	{"date-disagrees", "another year", func(p *planting) bool {
		y, m, d := p.ymd()
		return p.set("verbatimEventDate", fmt.Sprintf("%d %s %d", d, months[m-1], y-1))
	}},
	{"date-disagrees", "another day", func(p *planting) bool {
		y, m, d := p.ymd()
		return p.set("verbatimEventDate", fmt.Sprintf("%d.%s.%d", (d+10)%28+1, roman[m-1], y))
	}},
	{"date-order", "one with the month first", func(p *planting) bool {
		return p.inFigures(func(y, m, d int) string { return fmt.Sprintf("%d/%d/%d", m, d, y) })
	}},
	{"date-order", "with noughts", func(p *planting) bool {
		return p.inFigures(func(y, m, d int) string { return fmt.Sprintf("%02d/%02d/%d", m, d, y) })
	}},
	{"date-order", "with hyphens", func(p *planting) bool {
		return p.inFigures(func(y, m, d int) string { return fmt.Sprintf("%d-%d-%d", m, d, y) })
	}},
	inHeading("heading-unit", "no unit", func(p *planting) bool { return p.headed("minimumElevationInMeters", "alt.", "Altitude", "Elevation") }),
	inHeading("heading-unit", "of the accuracy", func(p *planting) bool {
		return p.headed("coordinateUncertaintyInMeters", "accuracy", "precision", "uncertainty")
	}),
	inHeading("heading-remark", "a unit that is none", func(p *planting) bool {
		return p.headed("habitat", "habitat (in three words)", "habitat (see field book)")
	}),
	inHeading("heading-remark", "a form of dates", func(p *planting) bool {
		return p.headed("eventDate", "eventDate (dd/mm/yyyy)", "date (day/month/year)")
	}),
	inHeading("heading-remark", "words", func(p *planting) bool {
		return p.headed("locality", "locality (from GPS)", "locality (as in field book)")
	}),
}

// plantedFaults are all of them.
var plantedFaults = slices.Concat(textFaults, dateFaults, placeFaults, nameFaults, numberFaults, figureFaults, signFaults, slipFaults)

// notPlanted are the rules that other tests hold, and why they are not here.
var notPlanted = map[string]string{
	"occurrence-twice": "no trip has the column; package trade", "value-spelling": "no trip has such a column; package trade", "associated-itself": "no trip has the column; package trade",
	"county-state":    "no trip has two records of a county near the border of a state; package trade",
	"heading-reading": "a word of two meanings is told by its neighbours; the tables of package table", "table-empty": "no table to plant in", "table-encoding": "a note on every such table",
	"table-delimiter": "of the whole file; package table", "archive-description": "an archive; package table",
	"slip-kind": "identifications", "slip-empty": "identifications", "slip-determiner-missing": "identifications", "slip-date-missing": "identifications", "slip-sheet-missing": "identifications",
	"slip-unjoined": "identifications", "slip-two-records": "identifications", "slip-contradicts": "identifications", "slip-joined-loosely": "identifications",
	"slip-before-collecting": "identifications", "slip-repeated": "identifications", "slip-on-label": "identifications", "slip-none": "identifications",
	"coordinates-columns": "columns of their own; package table", "coordinates-hemisphere": "package coord", "coordinates-parts": "package coord", "survey-section": "package coord",
	"elevation-unit": "columns of their own; package check", "elevation-limits": "columns of their own; package check", "elevation-columns": "columns of their own; package check", "depth-unit": "columns of their own; package check", "elevation-depth": "columns of their own; package trade",
	"heading-rows": "package table", "row-aside": "package table", "row-shifted": "planted under row-ragged", "table-title": "package table", "table-empty-code": "package table", "country-missing": "of the whole table; package trade", "rows-merged": "package trade", "worksheet": "package table",
	"permit-names-place": "needs a house's list of plants", "date-calendar": "of other calendars; package date", "date-filled": "of a whole column; package check", "state-capitals": "two letters of one country; package trade", "coordinates-shared": "of four counties; package trade", "column-counts": "of successive rows; package trade", "coordinates-apart": "of tables without a country; package trade", "kingdom-other": "a column of its own; package trade", "precision-metres": "a column of its own; package trade", "record-absent": "a column of its own; package trade", "state-short": "of all states of a country; package trade",
	"coordinates-obscured": "a column of its own; package trade",
	"state-county":         "of other rows of the table; package trade", "number-of-sheet": "columns of their own; package trade",
}

func (p *planting) headed(term string, headings ...string) bool {
	i := p.column(term)
	if i < 0 {
		return false
	}
	p.trip.heading[i] = p.pick(headings...)
	return true
}

func ordinal(p *planting, ending string) bool {
	return p.change("day", func(s string) string { return s + ending })
}

func (p *planting) placeless(with string) bool {
	for _, term := range []string{"country", "countryCode", "stateProvince"} {
		p.quietly(term, with)
	}
	return p.set("locality", with)
}

func (p *planting) verbatimDate(values ...string) bool {
	return p.has("verbatimEventDate") && p.set("verbatimEventDate", p.pick(values...))
}

// part writes the date in words and one of its parts wrongly.
func (p *planting) part(term string, is func(y, m, d int) int) bool {
	y, m, d := p.ymd()
	return p.has(term) && p.quietly("eventDate", fmt.Sprintf("%d %s %d", d, months[m-1], y)) && p.set(term, fmt.Sprint(is(y, m, d)))
}

// weekday adds a weekday that is not the day's.
func (p *planting) weekday(word func(int) string) bool {
	y, m, d := p.ymd()
	is := int(time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC).Weekday())
	return p.set("verbatimEventDate", fmt.Sprintf("%s, %d %s %d", word((is+1+p.IntN(6))%7), d, time.Month(m), y))
}

// inFigures writes all dates of the table in figures, the day first, and the
// row's as it is told.
func (p *planting) inFigures(write func(y, m, d int) string) bool {
	if p.has("verbatimEventDate") || !p.has("dateIdentified") {
		return false
	}
	i, was := p.column("eventDate"), p.row
	for r := range p.trip.rows {
		p.row = r
		y, m, d := p.ymd()
		if d <= 12 {
			d += 13 // so that the day is plain
		}
		p.trip.rows[r][i] = fmt.Sprintf("%d/%d/%d", d, m, y)
		p.trip.rows[r][p.column("dateIdentified")] = ""
		if r == was {
			p.trip.rows[r][i] = write(y, m, d)
		}
	}
	p.row = was
	return p.named("eventDate")
}
