package trade

import (
	"encoding/binary"
	"fmt"
	"math/bits"
	"sort"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// sequenceRules hold a collector's numbers against each other.
func sequenceRules() []check.Rule {
	run := func(last ...string) []map[string]string {
		var all [][]string
		for i := range 12 {
			all = append(all, []string{"recordNumber", itoa(203 + i), "eventDate", fmt.Sprintf("2026-06-%02d", 3+i/2)})
		}
		all[9] = append([]string{"recordNumber", "212"}, last...)
		return rows(all...)
	}
	return []check.Rule{
		{
			Name: "number-order", Severity: label.Warning, Source: fieldNumbers + " (consecutive numbers); " + practice,
			Doc: "a collector's number whose date runs against those of the numbers before and after", Terms: []string{"recordNumber"},
			Example: run("eventDate", "2025-06-07"), Counterexample: run("eventDate", "2026-06-10"),
			Table: func() check.TableRule { return &orderRule{} },
		},
		{
			Name: "number-twice", Severity: label.Warning, Source: fieldNumbers + "; BRIT Herbarium, data record (never reuse)",
			Doc: "one collector's number on gatherings of different days or places", Terms: []string{"recordNumber"},
			Example: rows(nil, []string{"eventDate", "2026-06-20"}), Counterexample: rows(nil, []string{"preparations", "packet: capsules"}),
			Table: func() check.TableRule { return &twiceRule{} },
		},
		{
			Name: "number-names", Severity: label.Warning, Source: fieldNumbers + "; " + practice,
			Doc: "two names under one collector's number, of one day", Terms: nameCells[:],
			Example: rows(nil, []string{"scientificName", "Thymus camphoratus Hoffmanns. & Link"}), Counterexample: rows(nil, []string{"scientificName", "Thymus camphoratus Hoffmanns. & Link", "recordNumber", "214a"}),
			Table: func() check.TableRule { return &namesUnderRule{} },
		},
	}
}

// sum is a hash of texts, of 64 bits, eight letters at a time: each is mixed in
// by a multiplication of which both halves are kept. Among a million, two that
// differ have the same once in some thirty million tables.
func sum(texts ...string) uint64 {
	h := uint64(factorOfLetters)
	for _, s := range texts {
		h = mixIn(h, uint64(len(s))) // parts the texts
		for len(s) > 0 {
			var b [8]byte
			s = s[copy(b[:], s):]
			h = mixed(h^binary.LittleEndian.Uint64(b[:]), factorOfLetters)
		}
	}
	return h
}

// The factors are odd, and half of their bits are set.
const factor, factorOfLetters = 0x9E3779B97F4A7C15, 0xD6E8FEB86659FD93

// mixIn returns a sum with a number mixed in, such as another sum.
func mixIn(sum, n uint64) uint64 { return mixed(sum^n, factor) }

func mixed(a, b uint64) uint64 {
	high, low := bits.Mul64(a, b)
	return high ^ low
}

// gatheringKey sums up collector and number; ok is false without either.
func gatheringKey(r *check.Record) (key uint64, ok bool) {
	return sum(r.Collector, r.Number), r.Collector != "" && r.Number != ""
}

// days counts days from one fixed in the past, so that they can be compared
// and subtracted. Proleptic Gregorian calendar.
func days(d date.Day) int32 {
	if d.Year == 0 {
		return noDay
	}
	y, m := d.Year, d.Month
	if m <= 2 {
		y, m = y-1, m+12
	}
	return int32(365*y + y/4 - y/100 + y/400 + (153*m-457)/5 + d.Day)
}

const noDay = -1 << 31

// day is the inverse of days.
func day(n int32) string {
	y := int(int64(n) * 400 / 146097)
	for days(date.Day{Year: y + 1, Month: 1, Day: 1}) <= n {
		y++
	}
	for days(date.Day{Year: y, Month: 1, Day: 1}) > n {
		y--
	}
	return (date.Day{Year: y, Month: 1, Day: 1}).Add(int(n - days(date.Day{Year: y, Month: 1, Day: 1}))).String()
}

// longest marks the entries of a longest subsequence whose days do not fall.
func longest(list []numbered) []bool {
	var tails []int // tails[k] ends the subsequence of length k+1 that ends on the earliest day
	prev := make([]int32, len(list))
	for i, e := range list {
		k := sort.Search(len(tails), func(k int) bool { return list[tails[k]].day > e.day })
		prev[i] = -1
		if k > 0 {
			prev[i] = int32(tails[k-1])
		}
		if k == len(tails) {
			tails = append(tails, i)
		} else {
			tails[k] = i
		}
	}
	in := make([]bool, len(list))
	if len(tails) > 0 {
		for i := int32(tails[len(tails)-1]); i >= 0; i = prev[i] {
			in[i] = true
		}
	}
	return in
}

// gathering is where and when a number was first used: 32 bytes, and about as
// much again of the index.
type gathering struct {
	from, to    int32 // days
	lat, lon    float32
	uncertainty float32 // metres; -1 without a place
	row         int32
	placed      int32 // the first row that has a place
	reported    int32 // place of its finding in the list, from 1
}

type twiceRule struct {
	seen     index[gathering]
	findings []twice
	people   map[string]*numbering
}

// twice is a finding and whose number it is of.
type twice struct {
	label.Finding
	whose   *numbering
	newYear bool  // it was used again in another year, and only so
	from    int32 // day
}

// numbering is how a collector uses numbers.
type numbering struct {
	name     string
	numbers  int // different ones
	newYears int // of these, used again in another year
}

// A collector who begins anew every year uses most of the numbers of the
// shorter year twice. That is one thing to be said, not hundreds.
const (
	fewNewYears  = 5
	shareOfYears = 4 // one in so many numbers at least
)

// apart is how far one gathering may reach besides the stated uncertainties,
// in metres: a population, a slope.
const apart = 5000

func (t *twiceRule) Feed(r *check.Record) {
	key, ok := gatheringKey(r)
	if !ok || !strings.ContainsAny(r.Number, "0123456789") || r.Doubted("eventDate", "year", "month", "day") {
		return
	}
	g := gathering{from: noDay, to: noDay, uncertainty: -1, row: int32(r.Row)}
	if !r.Date.IsZero() && !r.Date.IsOpen() && !r.Date.IsCirca() {
		g.from, g.to = days(r.Date.Start()), days(r.Date.End())
	}
	if r.HasCoordinates && !r.Doubted(coordinateTerms...) { // what is said of them is said
		g.lat, g.lon = float32(r.Coordinates.Lat.Degrees()), float32(r.Coordinates.Lon.Degrees())
		g.uncertainty = float32(r.Uncertainty + float64(r.Coordinates.Uncertainty()))
		g.placed = g.row
	}
	whose := t.people[r.Collector]
	if whose == nil {
		if t.people == nil {
			t.people = map[string]*numbering{}
		}
		name := strings.Clone(r.Collector)
		whose = &numbering{name: name}
		t.people[name] = whose
	}
	was := t.seen.find(key)
	if was == nil {
		t.seen.add(key, g)
		whose.numbers++
		return
	}
	f := r.Field("recordNumber")
	if was.reported > 0 {
		old := &t.findings[was.reported-1]
		if g.from == noDay || g.from <= was.to && g.to >= was.from {
			return
		}
		old.Also = append(old.Also, label.Cell{Row: r.Row, Term: "recordNumber"})
		if old.newYear && !anotherYear(*was, g) {
			old.newYear = false
			whose.newYears--
		}
		return
	}
	if was.uncertainty < 0 && (g.from == noDay || was.from == noDay || g.from <= was.to && g.to >= was.from) {
		was.lat, was.lon, was.uncertainty, was.placed = g.lat, g.lon, g.uncertainty, g.placed // the first that has a place stands for all
	}
	message, newYear, first := "", false, was.row
	switch {
	case g.from != noDay && was.from != noDay && (g.from > was.to || g.to < was.from):
		message = fmt.Sprintf("%s is the number of record %d too, which was collected %s, this %s: each gathering needs a number of its own", r.Key(), was.row, was.when(), g.when())
		newYear = anotherYear(*was, g)
	case g.uncertainty >= 0 && was.uncertainty >= 0:
		d := distance(float64(was.lat), float64(was.lon), float64(g.lat), float64(g.lon))
		if d > apart+float64(g.uncertainty)+float64(was.uncertainty) {
			first = was.placed
			message = fmt.Sprintf("%s is the number of record %d too, which lies %s away: each gathering needs a number of its own", r.Key(), first, far(d))
		}
	}
	if message == "" {
		return
	}
	if newYear {
		whose.newYears++
	}
	t.findings = append(t.findings, twice{label.Finding{
		Origin: f.Origin, Value: strings.Clone(f.Text), Message: message, Also: []label.Cell{{Row: int(first), Term: "recordNumber"}},
	}, whose, newYear, g.from})
	was.reported = int32(len(t.findings))
}

// when says the time of a gathering as exactly as its date does: "on 2026-05-14", "in
// 2026-05", "in 2026", "from 2026-05-14 to 2026-05-16".
func (g gathering) when() string {
	from, to := day(g.from), day(g.to)
	switch {
	case g.from == g.to:
		return "on " + from
	case strings.HasSuffix(from, "-01-01") && to == from[:4]+"-12-31":
		return "in " + from[:4]
	case strings.HasSuffix(from, "-01") && from[:7] == to[:7] && strings.HasSuffix(day(g.to+1), "-01"):
		return "in " + from[:7]
	}
	return "from " + from + " to " + to
}

// anotherYear reports whether two gatherings are of different years.
func anotherYear(a, b gathering) bool { return day(a.from)[:4] != day(b.from)[:4] }

// anew reports whether a collector begins anew every year.
func (n *numbering) anew() bool {
	return n.newYears >= fewNewYears && n.newYears*shareOfYears >= n.numbers
}

func (t *twiceRule) End() []label.Finding {
	var all []label.Finding
	told := map[*numbering]int{} // place of its finding in all, from 1
	for _, f := range t.findings {
		n := f.whose
		switch {
		case !f.newYear || !n.anew():
			all = append(all, f.Finding)
		case told[n] == 0:
			f.Message = fmt.Sprintf("%s seems to number anew every year, for %d numbers stand twice: write the year with each, as in %q, for no two gatherings may have one name",
				n.name, n.newYears, day(f.from)[:4]+"-"+f.Value)
			all = append(all, f.Finding)
			told[n] = len(all)
		default:
			first := &all[told[n]-1]
			first.Also = append(append(first.Also, label.Cell{Row: f.Row, Term: f.Term}), f.Also...)
		}
	}
	return all
}
