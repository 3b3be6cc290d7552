package form

import (
	"strconv"

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
	c.Blocks = []label.Block{{Role: label.Collector, Runs: b.key(label.Bold)}}
	return c
}

// Press says how plants are dried and frozen. What is zero is left blank, to
// be filled in by hand.
type Press struct {
	// Pressed is the day on which the bundle went into the press and the
	// dryer.
	Pressed                      date.Day
	DryerDays, FreezerDays       int
	DryerCelsius, FreezerCelsius float64
	// Rule is the house's own rule, said before the usual cautions.
	Rule string
}

// Bundle returns the tag of a whole press: whose plants, from which to which
// number, how many, and the days in press, dryer and freezer with their dates,
// as far as the house has its times; the cautions of the trade at the end.
func Bundle(first, last *check.Record, plants int, p Press, o Options) label.Content {
	b := newBuilder(first, &o)
	c := b.content(label.Tag)
	word := func(of func(*lang.Vocabulary) string) string { return b.word("", of) }
	c.Part = word(func(v *lang.Vocabulary) string { return v.TagBundle })
	text := func(runs []label.Run, right []label.Run) {
		c.Blocks = append(c.Blocks, label.Block{Role: label.Text, Runs: runs, Right: right})
	}

	key := b.key(label.Bold)
	if last != nil && last.Key() != first.Key() {
		end := newBuilder(last, &o)
		to := end.key(label.Bold)
		if last.Collector == first.Collector {
			to = to[len(to)-1:] // the number alone
		}
		key = append(tie(key, label.Run{Text: " – ", Style: label.Bold}), to...)
	}
	c.Blocks = append(c.Blocks, label.Block{Role: label.Collector, Runs: key,
		Right: said(b.both(func(v *lang.Vocabulary) string { return v.TagPlants }, "n", strconv.Itoa(plants)))})

	day := p.Pressed
	stage := func(of func(*lang.Vocabulary) string, celsius float64, days int) {
		head := word(of)
		if celsius != 0 {
			head += " " + lang.Number(o.Lang, strconv.FormatFloat(celsius, 'f', -1, 64)) + thin + "°C"
		}
		if days > 0 {
			head += ", " + b.both(func(v *lang.Vocabulary) string { return v.TagDays }, "n", strconv.Itoa(days))
		}
		text(styled(said(head), label.Bold), nil)
		b.stamp(&c, func(v *lang.Vocabulary) string { return v.TagIn }, day)
		if day != (date.Day{}) && days > 0 {
			day = day.Add(days)
		} else {
			day = date.Day{}
		}
		b.stamp(&c, func(v *lang.Vocabulary) string { return v.TagOut }, day)
	}
	stage(func(v *lang.Vocabulary) string { return v.TagDryer }, p.DryerCelsius, p.DryerDays)
	stage(func(v *lang.Vocabulary) string { return v.TagFreezer }, p.FreezerCelsius, p.FreezerDays)

	if p.Rule != "" {
		text(styled(keep(p.Rule, label.Origin{}), label.Bold), nil)
	}
	for _, of := range []func(*lang.Vocabulary) string{
		func(v *lang.Vocabulary) string { return v.CautionDryer },
		func(v *lang.Vocabulary) string { return v.CautionFreezer },
	} {
		var s prose
		s.add("", styled(keep(word(of), label.Origin{}), label.Small)...)
		s.stop()
		text(s.runs, nil)
	}
	return c
}

// stamp adds a day in or out: as a date to tick off, or as a line to write on.
func (b *builder) stamp(c *label.Content, of func(*lang.Vocabulary) string, day date.Day) {
	w := upperEach(b.word("", of))
	block := label.Block{Role: label.Blank, Runs: said(w), Tight: true}
	if d, err := date.New(day.Year, day.Month, day.Day); err == nil && day != (date.Day{}) {
		block.Runs = append(said(w+b.first.Colon), kept(d.Pieces(b.o.Date, b.o.Lang), label.Origin{})...)
	}
	c.Blocks = append(c.Blocks, block)
}
