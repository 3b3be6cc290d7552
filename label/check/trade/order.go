package trade

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// numbered is one record of a collector's sequence: 24 bytes.
type numbered struct {
	number int64 // with the count of its figures and a mark of what follows them in the last 16 bits
	day    int32
	cell
}

// plain is the number without what follows it.
func (n *numbered) plain() int64 { return n.number >> 16 }

// collectorsNumber is a number cut into the series it is of and its place
// there.
type collectorsNumber struct {
	series string // what stands before the figures, and a year behind them
	digits string
	after  byte // a letter, the first of bis or ter, the figure of a decimal; 0 for nothing
}

// A year behind the number, and what may follow the figures: 12/1999, 214a, 214
// bis, 214.1.
var (
	yearBehind  = regexp.MustCompile(`^(.*?)([0-9]{1,5})([/.-])((?:1[789]|20)[0-9]{2})$`)
	behindPlain = regexp.MustCompile(`^(.*[0-9])(?:[ -]?([a-k])|[ -]?(bis|ter)|\(([a-k])\)|\.([0-9]))$`)
	yearBefore  = regexp.MustCompile(`(?:^|[^0-9])(?:1[789]|20)[0-9]{2}$`)
)

// cutCollectors cuts a collector's number; ok is false where it has no figures.
func cutCollectors(text string) (n collectorsNumber, ok bool) {
	year := ""
	if last := len(text) - 1; last > 4 && strings.IndexByte("/.-", text[last-4]) >= 0 {
		if g := yearBehind.FindStringSubmatch(text); g != nil && (g[1] == "" || g[1][len(g[1])-1] < '0' || g[1][len(g[1])-1] > '9') {
			text, year = g[1]+g[2], g[3]+g[4]
		}
	}
	if text != "" && (text[len(text)-1] < '0' || text[len(text)-1] > '9' || len(text) > 2 && text[len(text)-2] == '.') {
		if g := behindPlain.FindStringSubmatch(text); g != nil && !yearBefore.MatchString(g[1]) {
			text = g[1]
			n.after = strings.Join(g[2:], "")[0]
		}
	}
	n.series, n.digits = cutNumber(text)
	n.series += year
	return n, n.digits != ""
}

// orderRule keeps 24 bytes a record.
type orderRule struct {
	file   string
	groups map[uint64]*series // by collector and prefix of the number
	texts  map[int32]string   // of numbers with more than figures behind the prefix, by row
}

// series is the records of one collector whose numbers have one prefix.
type series struct {
	collector, prefix string
	list              []numbered
}

func (o *orderRule) Feed(r *check.Record) {
	f := r.Field("recordNumber")
	if f.Text == "" || r.Collector == "" || r.Number == "" || r.Date.Days() != 1 || r.Date.IsCirca() || r.Doubted("eventDate", "year", "month", "day", "verbatimEventDate") {
		return
	}
	cut, ok := cutCollectors(f.Text)
	n, err := strconv.ParseInt(cut.digits, 10, 64)
	if !ok || err != nil || n >= 1<<46 {
		return
	}
	o.file = f.Origin.File
	if o.groups == nil {
		o.groups, o.texts = map[uint64]*series{}, map[int32]string{}
	}
	key := sum(r.Collector, cut.series)
	g := o.groups[key]
	if g == nil {
		g = &series{collector: strings.Clone(r.Collector), prefix: strings.Clone(cut.series)}
		o.groups[key] = g
	}
	if !strings.HasSuffix(f.Text, cut.digits) || f.Text != g.prefix+cut.digits {
		o.texts[int32(f.Origin.Row)] = strings.Clone(f.Text)
	}
	g.list = append(g.list, numbered{n<<16 | int64(len(cut.digits))<<8 | int64(cut.after), days(r.Date.Start()), cellOf(f)})
}

// text is a number as written.
func (o *orderRule) text(g *series, n numbered) string {
	if t, ok := o.texts[n.row]; ok {
		return t
	}
	return fmt.Sprintf("%s%0*d", g.prefix, n.number>>8&0xff, n.number>>16)
}

// A sequence says something of dates only if it is long enough and nearly all
// of it runs with them. What is left must stand alone: three that agree with
// each other are a batch that was numbered later.
const (
	longEnough = 10
	daysOff    = 14
	batch      = 3
)

func (o *orderRule) End() []label.Finding {
	var all []label.Finding
	for _, g := range slices.SortedFunc(maps.Values(o.groups), func(a, b *series) int {
		return cmp.Or(strings.Compare(a.collector, b.collector), strings.Compare(a.prefix, b.prefix))
	}) {
		if len(g.list) < longEnough {
			continue
		}
		slices.SortFunc(g.list, func(a, b numbered) int {
			return cmp.Or(cmp.Compare(a.number, b.number), cmp.Compare(a.day, b.day), cmp.Compare(a.row, b.row))
		})
		found := map[int32]bool{} // by row
		say := func(list []numbered, i, before, after int) {
			if f, ok := o.against(g, list[i], list[before], list[after]); ok && !found[list[i].row] {
				found[list[i].row] = true
				f.Origin, f.Value = list[i].origin(o.file, "recordNumber"), o.text(g, list[i])
				all = append(all, f)
			}
		}
		list := once(g.list)
		if o.whole(list, say) {
			continue
		}
		o.nearby(list, say)
		slices.SortFunc(list, func(a, b numbered) int { return cmp.Compare(a.row, b.row) })
		o.nearby(list, say)
	}
	return all
}

// manyTwice is from which part on numbers that stand twice, on different days,
// are the collector's way: one in so many.
const manyTwice = 4

// once leaves out numbers that stand twice on different days, which is a fault
// of its own; but not where that is how the collector numbers.
func once(list []numbered) []numbered {
	twice := map[int64]bool{}
	for i := 1; i < len(list); i++ {
		if a, b := list[i-1], list[i]; a.number == b.number && a.day != b.day {
			twice[a.number] = true
		}
	}
	if len(twice) == 0 || len(twice)*manyTwice > len(list) {
		return slices.Clone(list)
	}
	var rest []numbered
	for _, n := range list {
		if !twice[n.number] {
			rest = append(rest, n)
		}
	}
	return rest
}

// whole holds a list in the order of its numbers against the longest run of
// days in it, and reports whether nearly all of the list is in the run.
func (o *orderRule) whole(list []numbered, say func(list []numbered, i, before, after int)) bool {
	in := longest(list)
	out := 0
	for _, is := range in {
		if !is {
			out++
		}
	}
	if out > max(1, len(list)/20) {
		return false
	}
	for i := range list {
		if in[i] {
			continue
		}
		before, after, alike := -1, -1, 1
		for j := i - 1; j >= 0 && before < 0; j-- {
			if in[j] {
				before = j
			} else {
				alike++
			}
		}
		for j := i + 1; j < len(list) && after < 0; j++ {
			if in[j] {
				after = j
			} else {
				alike++
			}
		}
		if before >= 0 && after >= 0 && alike < batch {
			say(list, i, before, after)
		}
	}
	return true
}

// What runs neither all forwards nor in one series can still be held against
// the few numbers around: those within a step of each other, on both sides,
// whose days lie together.
const (
	nearStep  = 3  // from one number to the next
	nearSide  = 3  // entries looked at on each side
	nearLeast = 4  // of these there must be
	nearDays  = 21 // in which they lie
)

func (o *orderRule) nearby(list []numbered, say func(list []numbered, i, before, after int)) {
	for i := range list {
		low, high, n := int32(0), int32(0), [2]int{}
		for side, step := range [2]int{-1, 1} {
			last := list[i].plain()
			for j := i + step; j >= 0 && j < len(list) && n[side] < nearSide; j += step {
				if d := list[j].plain() - last; d > nearStep || d < -nearStep {
					break
				}
				last = list[j].plain()
				day := list[j].day
				if n == [2]int{} {
					low, high = day, day
				}
				if min(low, day) < max(high, day)-nearDays {
					break
				}
				low, high = min(low, day), max(high, day)
				n[side]++
			}
		}
		if n[0] > 0 && n[1] > 0 && n[0]+n[1] >= nearLeast {
			if d := list[i].day; d < low || d > high {
				say(list, i, i-1, i+1)
			}
		}
	}
}

// against says what is wrong with an entry whose day does not lie between those
// of two others.
func (o *orderRule) against(g *series, e, before, after numbered) (label.Finding, bool) {
	low, high, d := min(before.day, after.day), max(before.day, after.day), e.day
	off := max(low-d, d-high)
	suggest, slip := "", ""
	var y, m, dd int
	if _, err := fmt.Sscanf(day(d), "%d-%d-%d", &y, &m, &dd); err == nil && off > 0 {
		fits := func(y, m, d int, what string) {
			if slip != "" || d > date.DaysInMonth(y, m) {
				return
			}
			if n := days(date.Day{Year: y, Month: m, Day: d}); n >= low && n <= high {
				suggest, slip = (date.Day{Year: y, Month: m, Day: d}).String(), what
			}
		}
		if dd <= 12 {
			fits(y, dd, m, "with day and month exchanged")
		}
		for _, n := range []int32{low, high} {
			var to int
			fmt.Sscanf(day(n), "%d", &to)
			fits(to, m, dd, "with another year")
		}
		for to := 1; to <= 12; to++ {
			if to == m-1 || to == m+1 {
				fits(y, to, dd, "with another month")
			}
		}
	}
	if off <= daysOff && slip == "" || off <= 3 {
		return label.Finding{}, false
	}
	f := label.Finding{Message: fmt.Sprintf("collected on %s, but number %s on %s and number %s on %s: correct the date or the number",
		day(d), o.text(g, before), day(before.day), o.text(g, after), day(after.day))}
	if slip != "" {
		f.Message = strings.Replace(f.Message, ": correct the date or the number", "; "+slip+" the date is "+suggest, 1)
	}
	f.Also = []label.Cell{{Row: int(before.row), Term: "recordNumber"}, {Row: int(after.row), Term: "recordNumber"}}
	return f, true
}
