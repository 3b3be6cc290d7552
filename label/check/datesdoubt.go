package check

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/date"
)

// A doubt is a date that has several readings, of which the rest of its column
// may say which was meant.
type doubt struct {
	field      Field
	what       date.Doubt // 0: none
	candidates []date.Date
	seen
}

// dateTerms are the columns whose dates are held against each other.
var dateTerms = [2]string{"eventDate", "dateIdentified"}

// doubtRules are about dates that can be read several ways.
func doubtRules() []Rule {
	return []Rule{
		{
			Name: "date-ambiguous", Severity: label.Error, Source: "ISO 8601-1:2019; tdwg/bdq issue 143",
			Doc:     "a date with two readings, such as day and month in figures either way, unless --dates or the house file says how the whole table is written",
			Terms:   []string{"eventDate", "year", "month", "day", "dateIdentified"},
			Example: one("eventDate", "3/4/2026"), Counterexample: one("eventDate", "13/4/2026"),
			Row:   doubtRow,
			Table: func() TableRule { return &doubtTable{} },
		},
		{
			Name: "date-order", Severity: label.Warning, Source: "TDWG bdq issue 143; " + practice,
			Doc:            "dates in figures, some with the day first and some with the month",
			Terms:          dateTerms[:],
			Example:        []map[string]string{With("eventDate", "25/5/2026"), With("eventDate", "25/5/2026", "recordNumber", "215"), With("eventDate", "5/25/2026", "recordNumber", "216")},
			Counterexample: []map[string]string{With("eventDate", "25/5/2026"), With("eventDate", "25/5/2026", "recordNumber", "215"), With("eventDate", "26/5/2026", "recordNumber", "216")},
			Table:          func() TableRule { return &orderTable{} },
		},
		{
			Name: "date-filled", Severity: label.Warning, Source: practice,
			Doc:            "nearly all days of a column are 1 January or 31 December, of several people, years or places: only the years are known",
			Terms:          dateTerms[:],
			Example:        turnOfYear("01-01"),
			Counterexample: turnOfYear("05-01"),
			Table:          func() TableRule { return &filledTable{} },
		},
	}
}

// turnOfYear is a table of the same day in several years.
func turnOfYear(day string) []map[string]string {
	var all []map[string]string
	for i := range filledLeast {
		all = append(all, With("eventDate", strconv.Itoa(2010+i)+"-"+day, "recordNumber", strconv.Itoa(215+i)))
	}
	return all
}

// doubtRow leaves to doubtTable what the column may settle and reports the
// rest.
func doubtRow(c *Context) {
	for i, r := range []*DateReading{&c.EventDate, &c.DateIdentified} {
		switch {
		case r.Status != date.Ambiguous || r.Term == "verbatimEventDate" || r.Doubt == date.CalendarDoubt:
		case r.against:
			can := notAhead(r.Candidates, c.Options.Today)
			c.Suggest(r.Term, "can be "+alternatives(can[:min(len(can), 4)])+", but the row says "+c.partsSaid()+": correct one of the two, and write the date as 20 March 1922", "")
		case r.Doubt != 0 && r.Term == dateTerms[i]:
			c.doubts[i] = doubt{field: c.Field(r.Term), what: r.Doubt, candidates: notAhead(r.Candidates, c.Options.Today)}
			if r.Doubt&date.OrderDoubt != 0 {
				c.doubts[i].seen = c.seenBy(i)
			}
			c.hold()
		default:
			c.Suggest(r.Term, reason(r.Err, r.Text), readings(notAhead(r.Candidates, c.Options.Today)))
		}
	}
}

// notAhead leaves out what is still to come, unless all of it is.
func notAhead(ds []date.Date, today date.Date) []date.Date {
	if today.IsZero() {
		return ds
	}
	if left := slices.DeleteFunc(slices.Clone(ds), func(d date.Date) bool { return d.After(today) }); len(left) > 0 {
		return left
	}
	return ds
}

// doubtColumn is what a column says of its dates.
type doubtColumn struct {
	orders      [3]int // dates in figures by date.Order
	full        int    // dates whose year has four figures
	first, last int    // of their years
	doubts      []doubt
	shown       orderShown      // what the rest of the table says, where the column does not
	more        [8][]label.Cell // further ones, by their doubt
}

// maxDoubts bounds the dates that are told with their readings; of further ones
// only the rows are named.
const maxDoubts = 2000

// doubtTable keeps the dates in doubt until it is known what the others of
// their column say.
type doubtTable struct{ columns [2]doubtColumn }

func (t *doubtTable) Feed(r *Record) {
	for i, term := range dateTerms {
		col := &t.columns[i]
		switch d := r.doubts[i]; {
		case d.what == 0:
		case len(col.doubts) < maxDoubts:
			d.field.Text = strings.Clone(d.field.Text)
			if i == 0 {
				d.numberedBy(r)
			}
			col.doubts = append(col.doubts, d)
		default:
			col.more[d.what&7] = append(col.more[d.what&7], label.Cell{Row: r.Row, Term: term})
		}
		text := r.Text(term)
		if len(text) < 6 {
			continue
		}
		d := r.Date
		if i == 1 {
			d = r.Identified
		}
		order, either := figuresOrder(text)
		if either { // settled by the row
			order = orderOf(text, d)
		}
		if order != date.UnknownOrder {
			col.orders[order]++
		}
		if y, ok := d.Year(); ok && !d.IsCirca() && r.DateTerm != "verbatimEventDate" && strings.Contains(text, strconv.Itoa(y)) {
			if col.full == 0 || y < col.first {
				col.first = y
			}
			if col.full == 0 || y > col.last {
				col.last = y
			}
			col.full++
		}
	}
}

func (t *doubtTable) End() []label.Finding {
	var all []label.Finding
	for i := range t.columns {
		col := &t.columns[i]
		last := map[date.Doubt]int{} // place in all, from 1
		if votes(col.orders) == (votes{}) && len(col.doubts) > 0 {
			col.shown = t.shown(i)
		}
		for _, d := range col.doubts {
			message, suggest := col.say(d)
			all = append(all, label.Finding{Origin: d.field.Origin, Value: d.field.Text, Message: message, Suggest: suggest, Cause: "doubt " + strconv.Itoa(int(d.what))})
			last[d.what] = len(all)
		}
		for kind, cells := range col.more {
			if n := last[date.Doubt(kind)]; len(cells) > 0 && n > 0 {
				all[n-1].Also = cells
			} else if len(cells) > 0 { // none of its kind was among the first
				all = append(all, label.Finding{Origin: label.Origin{File: col.doubts[0].field.Origin.File, Row: cells[0].Row, Term: cells[0].Term},
					Message: "the date has several readings: write it as 20 March 1922", Cause: "doubt " + strconv.Itoa(kind), Also: cells[1:]})
			}
		}
	}
	return all
}

// usualYears is how far a two-figure year may lie outside those of the others,
// and enough how many of them say something.
const (
	usualYears = 10
	enough     = 3
)

// spreadsheetFrom is the first year that a spreadsheet keeps as a date (ECMA-376
// part 1, 18.17.4.1, the 1900 date base system).
const spreadsheetFrom = 1900

// fullStops is what they tell of a date with the year last: Unicode CLDR 45, the short
// dates of its languages, from memory.
const fullStops = "where full stops are usual between the figures the day stands first"

// slashed reports whether a date has the form that a spreadsheet shows of itself.
func slashed(text string) bool { return strings.Count(text, "/") == 2 }

// say says what a date can be, what the others of its column show, and how to
// answer for all of them at once.
func (col *doubtColumn) say(d doubt) (message, suggest string) {
	if d.what == date.SerialDoubt {
		iso := d.candidates[0].ISO()
		return "the number that a spreadsheet keeps for " + iso + ": format the column as text and write the date", iso
	}
	var can, shows, answer []string
	var hints date.Hints
	order, century := d.what&date.OrderDoubt != 0, d.what&date.CenturyDoubt != 0
	if order && !century {
		can = append(can, "can be "+alternatives(d.candidates))
		if len(d.candidates) == 1 {
			can[0] += " (read the other way it is still to come)"
		}
	} else if order {
		can = append(can, "the day or the month can stand first")
	}
	mixed, dotted := false, false
	if century {
		can = append(can, "the year has two figures")
	}
	if order {
		days, months := col.orders[date.DayFirst], col.orders[date.MonthFirst]
		switch {
		case days > 0 && months > 0:
			mixed = true
			shows = append(shows, fmt.Sprintf("%s of this column %s the day first and %d the month", others(days), puts(days), months))
		case days > 0:
			shows = append(shows, fmt.Sprintf("%s of this column %s the day first, none the month", others(days), puts(days)))
			hints.Order = date.DayFirst
		case months > 0:
			shows = append(shows, fmt.Sprintf("%s of this column %s the month first, none the day", others(months), puts(months)))
			hints.Order = date.MonthFirst
		}
		if s := &col.shown; s.order != date.UnknownOrder && !s.against {
			shows, hints.Order = append(shows, s.reasons...), s.order
		}
		if dotted = !mixed && hints.Order == date.UnknownOrder && !col.shown.against && strings.Count(d.field.Text, ".") == 2; dotted {
			shows = append(shows, fullStops)
			hints.Order = date.DayFirst
		}
		switch {
		case hints.Order == date.MonthFirst:
			answer = append(answer, "month first")
		case !mixed:
			answer = append(answer, "day first")
		}
	}
	oneCentury := false
	nearest := col.nearest(d.candidates)
	if century && col.full > 0 {
		years := strconv.Itoa(col.first)
		if col.last > col.first {
			years += "–" + strconv.Itoa(col.last)
		}
		shows = append(shows, fmt.Sprintf("%s with four figures %s of %s", others(col.full), map[bool]string{true: "is", false: "are"}[col.full == 1], years))
		// A spreadsheet keeps no day before 1900 as a date: where all the others are
		// older they were typed as text, and say nothing of this one.
		if col.last < spreadsheetFrom && slashed(d.field.Text) {
			nearest = d.candidates
		} else if ys := col.years(d.candidates); len(ys) == 1 {
			hints.Century = ys[0] / 100 * 100
			if oneCentury = col.first/100 == col.last/100 && ys[0]/100 == col.first/100; oneCentury {
				answer = append(answer, strconv.Itoa(hints.Century)+"s")
			}
		}
	}
	message = strings.Join(can, ", and ")
	if len(shows) > 0 {
		message += "; " + strings.Join(shows, "; ")
	}
	message += ": " + col.todo(order, century, mixed, hints.Order, oneCentury, answer)
	ordered := order && hints.Order != date.UnknownOrder && (dotted || col.shown.firm || max(col.orders[date.DayFirst], col.orders[date.MonthFirst]) >= enough)
	if ordered {
		nearest = slices.DeleteFunc(slices.Clone(nearest), func(e date.Date) bool { return orderOf(d.field.Text, e) != hints.Order })
	}
	settled := (!order || ordered) && (!century || hints.Century != 0 && col.full >= enough)
	if r := date.Read(d.field.Text, hints); settled && r.Status == date.OK {
		return message, r.Date.ISO()
	}
	return message, readings(nearest)
}

// todo says what to do.
func (col *doubtColumn) todo(order, century, mixed bool, known date.Order, oneCentury bool, answer []string) string {
	write := "write the month as a word"
	switch {
	case order && century:
		write = "write the month as a word and the year with four figures"
	case century:
		write = "write the year with four figures"
	}
	switch {
	case mixed, century && !oneCentury && col.full > 0:
		return write
	case order && !century && known == date.UnknownOrder:
		return `say --dates "day first" or --dates "month first" if the whole table is written so, or ` + write
	case century && !oneCentury:
		if order {
			first := "day first"
			if known == date.MonthFirst {
				first = "month first"
			}
			return fmt.Sprintf(`%s, or say --dates "%s, 1900s", if the whole table is so`, write, first)
		}
		return write + `, or say --dates "1900s", if the whole table is of that century`
	}
	return fmt.Sprintf(`say --dates %q if that holds for the whole table, or %s`, strings.Join(answer, ", "), write)
}

// years returns the years of the candidates that lie among those of the
// column, or near.
func (col *doubtColumn) years(ds []date.Date) []int {
	var ys []int
	for _, d := range ds {
		if y, ok := d.Year(); ok && y >= col.first-usualYears && y <= col.last+usualYears && !slices.Contains(ys, y) {
			ys = append(ys, y)
		}
	}
	return ys
}

// nearest puts first what lies among the years of the column, or near; where there
// are enough of them, the rest is left out.
func (col *doubtColumn) nearest(ds []date.Date) []date.Date {
	if col.full == 0 {
		return ds
	}
	ys := col.years(ds)
	far := func(d date.Date) int {
		if y, ok := d.Year(); ok && slices.Contains(ys, y) {
			return 0
		}
		return 1
	}
	ds = slices.Clone(ds)
	slices.SortStableFunc(ds, func(a, b date.Date) int { return cmp.Compare(far(a), far(b)) })
	if n := slices.IndexFunc(ds, func(d date.Date) bool { return far(d) == 1 }); n > 0 && col.full >= enough {
		ds = ds[:n]
	}
	return ds
}

// alternatives writes "12 June or 6 December 1987".
func alternatives(ds []date.Date) string {
	var all []string
	y, sameYear := ds[0].Year()
	for _, d := range ds {
		z, ok := d.Year()
		sameYear = sameYear && ok && z == y
	}
	for i, d := range ds {
		s := d.Format(date.Style{}, "en")
		if sameYear && i < len(ds)-1 {
			s = strings.TrimSuffix(s, " "+strconv.Itoa(y))
		}
		all = append(all, s)
	}
	return strings.Join(all, " or ")
}

func others(n int) string {
	if n == 1 {
		return "1 other date"
	}
	return strconv.Itoa(n) + " other dates"
}

func puts(n int) string {
	if n == 1 {
		return "puts"
	}
	return "put"
}

// figuresOrder tells of a date in figures whether only the day can stand first
// or only the month, or whether both can.
func figuresOrder(text string) (order date.Order, either bool) {
	var part [2]int
	var sign [2]byte
	rest := text
	for i := range part {
		n := 0
		for n < len(rest) && rest[n] >= '0' && rest[n] <= '9' {
			part[i] = part[i]*10 + int(rest[n]-'0')
			if n++; n > 2 {
				return date.UnknownOrder, false
			}
		}
		if n < 1 || n >= len(rest) || strings.IndexByte("/.-", rest[n]) < 0 {
			return date.UnknownOrder, false
		}
		sign[i] = rest[n]
		rest = strings.TrimLeft(rest[n+1:], " ")
	}
	n := 0
	for n < len(rest) && rest[n] >= '0' && rest[n] <= '9' {
		n++
	}
	switch {
	case sign[0] != sign[1], n < len(rest) && rest[n] != ' ' && rest[n] != 'T':
		return date.UnknownOrder, false
	case n == 4:
	case n == 2 && (sign[0] != '-' || rest[:2] > "31"): // else it may be the year that stands first
	default:
		return date.UnknownOrder, false
	}
	a, b := part[0], part[1]
	switch {
	case a > 12 && a <= 31 && b >= 1 && b <= 12:
		return date.DayFirst, false
	case b > 12 && b <= 31 && a >= 1 && a <= 12:
		return date.MonthFirst, false
	case a >= 1 && a <= 12 && b >= 1 && b <= 12 && a != b:
		return date.UnknownOrder, true
	}
	return date.UnknownOrder, false
}

// orderOf tells which of the two figures that a date begins with is the day,
// where the date is known.
func orderOf(text string, d date.Date) date.Order {
	day, ok := d.Day()
	if !ok {
		return date.UnknownOrder
	}
	n := 0
	for i := 0; i < len(text) && text[i] >= '0' && text[i] <= '9'; i++ {
		n = n*10 + int(text[i]-'0')
	}
	if n == day {
		return date.DayFirst
	}
	return date.MonthFirst
}

// orderColumn is what the orders of one column are known by.
type orderColumn struct {
	count [3]int          // by date.Order
	cells [3][]label.Cell // all but the first of each
	first [3]*Field       // with its text
}

// maxOrderCells bounds the rows that are named for a kind.
const maxOrderCells = 2000

type orderTable struct{ columns [2]orderColumn }

func (o *orderTable) Feed(r *Record) {
	for i, term := range dateTerms {
		f := r.Field(term)
		if len(f.Text) < 6 {
			continue
		}
		order, _ := figuresOrder(f.Text)
		if order == date.UnknownOrder {
			continue
		}
		col := &o.columns[i]
		col.count[order]++
		if col.first[order] == nil {
			col.first[order] = &Field{Text: strings.Clone(f.Text), Origin: f.Origin}
		} else if len(col.cells[order]) < maxOrderCells {
			col.cells[order] = append(col.cells[order], label.Cell{Row: r.Row, Term: term})
		}
	}
}

func (o *orderTable) End() []label.Finding {
	var all []label.Finding
	words := map[date.Order]string{date.DayFirst: "the day", date.MonthFirst: "the month"}
	for i := range o.columns {
		col := &o.columns[i]
		both := []date.Order{date.DayFirst, date.MonthFirst}
		slices.SortStableFunc(both, func(a, b date.Order) int { return cmp.Compare(col.count[b], col.count[a]) })
		usual, rare := both[0], both[1]
		if n := col.count[rare]; n > 0 {
			f := col.first[rare]
			one := "this one puts"
			if n > 1 {
				one = fmt.Sprintf("this and %d more put", n-1)
			}
			all = append(all, label.Finding{Origin: f.Origin, Value: f.Text, Also: col.cells[rare],
				Message: fmt.Sprintf("%s %s first, while %s of this column %s %s: make them one, for dates that can be read both ways are then in doubt", one, words[rare],
					others(col.count[usual]), puts(col.count[usual]), words[usual])})
		}
	}
	return all
}
