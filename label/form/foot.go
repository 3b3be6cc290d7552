package form

import (
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// collector returns collector and number, by which everyone looks for the
// sheet, and the date at the right.
func (b *builder) collector() []label.Block {
	var lead []label.Run
	if w := b.o.Words["collector"]; !b.captioned(label.Collector) {
		lead = spaced(w)
	}
	var date []label.Run
	if !b.leftOut("eventDate") {
		if w := b.o.Words["date"]; w != "" {
			date = spaced(w)
		}
		date = tie(date, b.date()...)
	}
	return []label.Block{{
		Role: label.Collector, Runs: tie(lead, b.key(label.Bold)...), Right: date,
		Caption: b.captionIn(label.Collector, "collector", func(v *lang.Vocabulary) string { return v.CaptionCollector }),
	}}
}

// captioned reports whether a block stands under a caption: in the captioned
// style, but not in the foot, which is alike in all styles so that a drawer
// of labels reads alike.
func (b *builder) captioned(role label.Role) bool {
	return b.o.Captions && !slices.Contains(b.orders()[2], role)
}

func (b *builder) captionIn(role label.Role, key string, of func(*lang.Vocabulary) string) []label.Run {
	if !b.captioned(role) {
		return nil
	}
	return b.caption(key, of)
}

// date returns the day of collecting.
func (b *builder) date() []label.Run {
	at := b.firstOrigin("eventDate", "year", "verbatimEventDate")
	if pieces := b.r.Date.Pieces(b.o.Date, b.o.Lang); len(pieces) > 0 {
		return kept(pieces, at)
	}
	if b.r.DateText != "" {
		return keep(b.r.DateText, at)
	}
	return said(b.first.NoDate)
}

// team returns the co-collectors, and at the right where duplicates go.
func (b *builder) team() []label.Block {
	var people [][]label.Run
	together := b.r.Field("coCollectors")
	for i, s := range b.r.Others {
		if s == b.r.Collector || slices.Contains(b.r.Others[:i], s) {
			continue // named in both columns
		}
		at := b.r.Field("recordedBy").Origin
		if strings.Contains(together.Text, s) {
			at = together.Origin
		}
		if !b.leftOut(at.Term) {
			people = append(people, exact(keep(s, at)))
		}
	}
	runs := joined(people, b.sep(b.o.PeopleSep, b.first.Comma), b.sep(b.o.LastPersonSep, b.first.LastComma))
	var caption []label.Run
	if len(runs) > 0 {
		caption = b.captionIn(label.Team, "with", func(v *lang.Vocabulary) string { return v.CaptionTeam })
		if caption == nil {
			runs = tie(spaced(b.word("with", func(v *lang.Vocabulary) string { return v.With })), runs...)
		}
	}
	right := b.duplicates()
	if len(runs) == 0 && len(right) == 0 {
		return nil
	}
	return []label.Block{{Role: label.Team, Runs: runs, Right: right, Caption: caption}}
}

// duplicates returns the codes of the herbaria that get a duplicate; on a
// duplicate's own label the one it goes to, unless the house lists all.
func (b *builder) duplicates() []label.Run {
	codes := b.r.DuplicatesTo
	if b.gift != "" && !b.o.ListDuplicates {
		codes = []string{b.gift}
	}
	if len(codes) == 0 || b.leftOut("duplicatesTo") {
		return nil
	}
	at := b.r.Field("duplicatesTo").Origin
	var list [][]label.Run
	for _, c := range codes {
		list = append(list, []label.Run{{Text: c, Keep: true, Exact: true, Origin: at}})
	}
	b.sort("duplicatesTo", list)
	runs := joined(list, b.sep(b.o.DuplicatesSep, ", "), b.sep(b.o.DuplicatesSep, ", "))
	return tie(b.duplicatesWord(), runs...)
}

// duplicatesWord is what stands before the codes of herbaria.
func (b *builder) duplicatesWord() []label.Run {
	w := b.word("duplicates", func(v *lang.Vocabulary) string { return v.Duplicates })
	switch {
	case w == "":
		return nil
	case strings.HasSuffix(w, ":"):
		return said(w + " ")
	}
	return said(w + b.first.Colon)
}

// catalogNumber returns the number in figures, after the code of the
// institution unless the number holds it; nil on a duplicate.
func (b *builder) catalogNumber() []label.Run {
	f := b.field("catalogNumber")
	if f.Text == "" || b.gift != "" {
		return nil
	}
	number := label.Run{Text: f.Text, Keep: true, Exact: true, Origin: f.Origin}
	code := b.field("institutionCode")
	if code.Text == "" && b.o.own(f.Text) {
		code = check.Field{Text: b.o.Code}
	}
	if code.Text == "" || strings.HasPrefix(strings.ToUpper(f.Text), strings.ToUpper(code.Text)) {
		return []label.Run{number}
	}
	return []label.Run{{Text: code.Text, Keep: true, Glue: true, Exact: true, Origin: code.Origin}, blank, number}
}

// number returns the catalogue number in figures and the part at the right;
// where the number is printed as bars, its figures stand beside them instead.
func (b *builder) number() []label.Block {
	var runs []label.Run
	if b.bars() == nil {
		runs = b.catalogNumber()
	}
	var caption []label.Run
	if len(runs) > 0 {
		caption = b.captionIn(label.Number, "number", func(v *lang.Vocabulary) string { return v.CaptionCatalogue })
		if caption != nil && b.o.NumberWord != "" {
			caption = []label.Run{{Text: b.o.NumberWord}}
		}
		if caption == nil {
			runs = tie(spaced(b.o.NumberWord), runs...)
		}
	}
	if len(runs) == 0 && len(b.part) == 0 {
		return nil
	}
	return []label.Block{{Role: label.Number, Runs: runs, Right: b.part, Caption: caption}}
}

// symbol returns the number as bars, with its figures.
func (b *builder) symbol() []label.Block {
	bars := b.bars()
	if bars == nil {
		return nil
	}
	return []label.Block{{Role: label.Symbol, Runs: b.catalogNumber(), Bars: bars}}
}

// bars returns the symbol of the sheet label, where the house wants it there
// and the number is one of its own; never on a duplicate.
func (b *builder) bars() *label.Bars {
	number := b.field("catalogNumber").Text
	if !b.o.BarsOnLabel || b.gift != "" || !b.ordered(label.Symbol) || !b.o.barred(number) {
		return nil
	}
	return &label.Bars{Symbology: b.o.Symbology, Text: number}
}
