package form

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/lang"
)

// Tag returns the tag that travels with a plant through press, dryer and
// freezer: collector and number, and nothing that could be mistaken for the
// label.
func Tag(r *check.Record, o Options) label.Content {
	b := newBuilder(r, &o)
	c := b.content(label.Tag)
	c.Part = label.String(c.Key)
	c.Blocks = []label.Block{{Role: label.Key, Runs: b.key(label.Bold)}}
	return c
}

// A Load is what lies in a press: whose plants, which numbers, how many. It
// keeps two records of each collector, however many are added.
type Load struct {
	count  int
	groups []loadGroup
}

type loadGroup struct {
	collector   string
	first, last *check.Record // by number; first is without one where all are
	unnumbered  int
}

// Add adds a plant.
func (l *Load) Add(r *check.Record) {
	l.count++
	i := slices.IndexFunc(l.groups, func(g loadGroup) bool { return g.collector == r.Collector })
	if i < 0 {
		i = len(l.groups)
		l.groups = append(l.groups, loadGroup{collector: r.Collector, first: r, last: r})
	}
	g := &l.groups[i]
	switch {
	case r.Number == "":
		g.unnumbered++
	case g.first.Number == "":
		g.first, g.last = r, r
	case compareNumbers(r.Number, g.first.Number) < 0:
		g.first = r
	case compareNumbers(r.Number, g.last.Number) > 0:
		g.last = r
	}
}

// Len returns how many plants were added.
func (l *Load) Len() int { return l.count }

// compareNumbers orders collectors' numbers as people count: 9, 10, 10a, 10b,
// 11. Stretches of figures compare as numbers, all else as text.
func compareNumbers(a, b string) int {
	for a != "" && b != "" {
		na, nb := leadingFigures(a), leadingFigures(b)
		if na > 0 && nb > 0 {
			x, y := strings.TrimLeft(a[:na], "0"), strings.TrimLeft(b[:nb], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[na:], b[nb:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

func leadingFigures(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// A Stage is one station of a bundle on its way to the cabinet.
type Stage uint8

// The stages.
const (
	InPress Stage = iota
	InDryer
	InFreezer
)

// A Stay is how long a bundle is at a stage, and how warm it is there; what is
// zero is left to be filled in by hand.
type Stay struct {
	Stage   Stage
	Days    int
	Celsius float64
}

// Press says how plants are pressed, dried and frozen.
type Press struct {
	// Pressed is the day on which the bundle comes to the first stage. Zero
	// leaves the dates to be filled in by hand, and so does a stay of unknown
	// length for all that follow it.
	Pressed date.Day
	// Stays are the stages in their order.
	Stays []Stay
	// Rule is the house's own rule, said before the usual cautions.
	Rule string
}

// deepFreeze is the temperature in °C below which adhesives can fail (herbarium
// practice, Nhcoll-L 2024-08-11).
const deepFreeze = -60

// Bundle returns the tag of a whole press: whose plants, from which to which
// number, how many; for each stage the days in and out to be ticked, with
// their dates as far as the house has its times; the house's own rule, and the
// cautions of the trade after it, which leave the last word to local rules.
func Bundle(l *Load, p Press, o Options) label.Content {
	b := newBuilder(l.groups[0].first, &o)
	c := b.content(label.Tag)
	c.Part = upperEach(b.word("", func(v *lang.Vocabulary) string { return v.TagBundle }))
	if h := b.house(); len(h) > 0 {
		c.Blocks = append(c.Blocks, h[0])
	}
	for i, g := range l.groups {
		block := label.Block{Role: label.Key, Runs: g.runs(&o, label.Bold), Tight: i > 0}
		if i == 0 {
			c.Key = g.runs(&o, 0)
			block.Right = said(b.both(func(v *lang.Vocabulary) string { return v.TagPlants }, "n", strconv.Itoa(l.count)))
		}
		c.Blocks = append(c.Blocks, block)
	}
	day := p.Pressed
	for _, s := range p.Stays {
		c.Blocks = append(c.Blocks, label.Block{Role: label.Text, Runs: styled(said(b.stage(s)), label.Bold)})
		in := day
		if day = (date.Day{}); in != day && s.Days > 0 {
			day = in.Add(s.Days)
		}
		c.Blocks = append(c.Blocks, b.stamps(in, day)...)
	}
	b.cautions(&c, p)
	return c
}

// runs returns whose plants lie in the press, from which to which number.
func (g *loadGroup) runs(o *Options, style label.Style) []label.Run {
	b := newBuilder(g.first, o)
	runs := b.key(style)
	if g.last != g.first {
		dash := " – "
		if plainNumber(g.first.Number) && plainNumber(g.last.Number) {
			dash = "–"
		}
		runs = tie(runs, label.Run{Text: dash, Style: style, Keep: true, Glue: true})
		end := newBuilder(g.last, o).key(style)
		runs = append(runs, end[len(end)-1]) // the number alone
	}
	if g.unnumbered > 0 && g.first.Number != "" {
		runs = append(tie(runs), label.Run{Text: ", " + b.first.NoNumber, Style: style})
		runs[len(runs)-2].Glue = true
	}
	return runs
}

// plainNumber reports whether a number has no sign within that a dash beside
// it could be read with.
func plainNumber(s string) bool { return !strings.ContainsAny(s, "-–/. ") }

// stage names a stage, how warm it is and how long it takes.
func (b *builder) stage(s Stay) string {
	head := b.word("", func(v *lang.Vocabulary) string { return [...]string{v.TagPress, v.TagDryer, v.TagFreezer}[s.Stage] })
	if s.Celsius != 0 {
		head += " " + lang.Number(b.o.Lang, strconv.FormatFloat(s.Celsius, 'f', -1, 64)) + thin + "°C"
	}
	switch {
	case s.Days == 1:
		head += ", " + b.word("", func(v *lang.Vocabulary) string { return v.TagDay })
	case s.Days > 1:
		head += ", " + b.both(func(v *lang.Vocabulary) string { return v.TagDays }, "n", strconv.Itoa(s.Days))
	}
	return head
}

// tick is a blank to tick. The ballot box proper is in few faces.
const tick = "□ "

// stamps returns the days in and out of a stage to be ticked: on one line where
// both dates are known; a line to write on for each that is not.
func (b *builder) stamps(in, out date.Day) []label.Block {
	one := func(of func(*lang.Vocabulary) string, day date.Day) ([]label.Run, bool) {
		w := b.word("", of)
		runs := []label.Run{{Text: tick, Keep: true, Glue: true}}
		d, err := date.New(day.Year, day.Month, day.Day)
		if day == (date.Day{}) || err != nil {
			return append(runs, said(w)...), false
		}
		return append(runs, tie(said(w+" "), kept(d.Pieces(b.o.Date, b.o.Lang), label.Origin{})...)...), true
	}
	left, known := one(func(v *lang.Vocabulary) string { return v.TagIn }, in)
	right, also := one(func(v *lang.Vocabulary) string { return v.TagOut }, out)
	if known && also {
		return []label.Block{{Role: label.Text, Runs: left, Right: right, Tight: true}}
	}
	role := map[bool]label.Role{true: label.Text, false: label.Blank}
	return []label.Block{{Role: role[known], Runs: left, Tight: true}, {Role: role[also], Runs: right, Tight: true}}
}

// cautions adds the house's own rule and the usual cautions of the stages.
func (b *builder) cautions(c *label.Content, p Press) {
	if p.Rule != "" {
		c.Blocks = append(c.Blocks, label.Block{Role: label.Text, Runs: styled(keep(p.Rule, label.Origin{}), label.Bold)})
	}
	say := func(of func(*lang.Vocabulary) string) {
		for i, v := range []*lang.Vocabulary{b.first, b.second} {
			if v == nil || i > 0 && of(v) == of(b.first) {
				continue
			}
			var s prose
			s.add("", keep(of(v), label.Origin{})...)
			if r, _ := utf8.DecodeLastRuneInString(of(v)); unicode.Is(unicode.Han, r) {
				s.runs = tie(s.runs, label.Run{Text: "。"})
			}
			s.stop()
			c.Blocks = append(c.Blocks, label.Block{Role: label.Text, Runs: styled(s.runs, label.Small), Tight: true})
		}
	}
	n := len(c.Blocks)
	for _, s := range p.Stays {
		switch {
		case s.Stage == InDryer:
			say(func(v *lang.Vocabulary) string { return v.CautionDryer })
		case s.Stage == InFreezer:
			say(func(v *lang.Vocabulary) string { return v.CautionFreezer })
			if s.Celsius <= deepFreeze {
				say(func(v *lang.Vocabulary) string { return v.CautionDeepFreezer })
			}
		}
	}
	if len(c.Blocks) > n {
		say(func(v *lang.Vocabulary) string { return v.CautionLocal })
		c.Blocks[n].Tight = false
	}
}
