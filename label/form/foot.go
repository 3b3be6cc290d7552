package form

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// collector returns collector and number, by which everyone looks for the
// sheet, and the date at the right unless it has a line of its own.
func (b *builder) collector() []label.Block {
	var lead []label.Run
	if w := b.o.Words["collector"]; !b.captioned() {
		lead = spaced(w)
	}
	var date []label.Run
	if !b.leftOut("eventDate") && !b.leftOut(string(Date)) && !b.ordered(Date) {
		if w := b.o.Words["date"]; w != "" {
			date = spaced(w)
		}
		date = tie(date, b.date()...)
	}
	return []label.Block{{
		Role: label.Collector, Runs: tie(lead, b.collectors()...), Right: date,
		Caption: b.caption("collector", func(v *lang.Vocabulary) string { return v.CaptionCollector }),
	}}
}

// collectors returns who collected and the number: the first collector, whose
// number it is, or the whole team where the house wants that.
func (b *builder) collectors() []label.Run {
	key := b.key(label.Bold)
	who, number := key[:len(key)-2], key[len(key)-1]
	if team := b.others(); b.o.AllCollectors && len(team) > 0 {
		who = joined(append([][]label.Run{b.key(0)[:len(who)]}, team...), b.sep(b.o.PeopleSep, b.first.Comma), b.sep(b.o.LastPersonSep, b.first.LastComma))
	}
	w := b.o.Words["number"]
	switch {
	case w == "":
		return tie(who, blankIn(number.Style), number)
	case strings.HasSuffix(w, "#"):
		number.Text = w[len(w)-1:] + number.Text
		w = w[:len(w)-1]
		if w == "" {
			return tie(who, blankIn(number.Style), number)
		}
	}
	sep := " "
	if strings.HasPrefix(w, ",") { // "I. Almeida, No. 214"
		sep = ""
	}
	return tie(tie(who, label.Run{Text: sep + w + " ", Keep: true}), number)
}

// blankIn is a blank at which no line ends, in a style.
func blankIn(s label.Style) label.Run {
	r := blank
	r.Style = s
	return r
}

// dateLine returns the day of collecting on a line of its own.
func (b *builder) dateLine() []label.Block {
	if b.leftOut("eventDate") {
		return nil
	}
	var lead []label.Run
	if w := b.o.Words["date"]; !b.captioned() {
		lead = spaced(w)
	}
	return []label.Block{{Role: label.Text, Runs: tie(lead, b.date()...), Caption: b.caption("date", func(v *lang.Vocabulary) string { return v.CaptionDate })}}
}

// captioned reports whether blocks stand under captions: in the captioned
// style, but not in head and foot. The foot is alike in all styles, so that a
// drawer of labels reads alike.
func (b *builder) captioned() bool { return b.o.Captions && b.zone == label.InBody }

// date returns the day of collecting.
func (b *builder) date() []label.Run {
	at := b.firstOrigin("eventDate", "year", "verbatimEventDate")
	if b.r.DateText != "" {
		return keep(b.r.DateText, at)
	}
	if pieces := b.r.Date.Pieces(b.o.Date, b.o.Lang); len(pieces) > 0 {
		return kept(pieces, at)
	}
	return said(b.first.NoDate)
}

// others returns the collectors beside the first, each once.
func (b *builder) others() (people [][]label.Run) {
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
	return people
}

// team returns the co-collectors, and at the right where duplicates go.
func (b *builder) team() []label.Block {
	var people [][]label.Run
	if !b.o.AllCollectors {
		people = b.others()
	}
	runs := joined(people, b.sep(b.o.PeopleSep, b.first.Comma), b.sep(b.o.LastPersonSep, b.first.LastComma))
	var caption []label.Run
	if len(runs) > 0 {
		caption = b.caption("with", func(v *lang.Vocabulary) string { return v.CaptionTeam })
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
	if b.o.CountDuplicates {
		return tie(b.duplicatesWord(), label.Run{Text: strconv.Itoa(len(b.r.DuplicatesTo)), Keep: true, Origin: at})
	}
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
	code := b.herbarium()
	if code.Text == "" && b.o.own(f.Text) {
		code = check.Field{Text: b.o.Code}
	}
	if code.Text == "" {
		return []label.Run{number}
	}
	for _, held := range []string{code.Text, b.field("institutionCode").Text, b.field("collectionCode").Text, b.o.Code} {
		if held != "" && strings.HasPrefix(strings.ToUpper(f.Text), strings.ToUpper(held)) {
			return []label.Run{number} // it says itself whose it is
		}
	}
	return []label.Run{{Text: code.Text, Keep: true, Glue: true, Exact: true, Origin: code.Origin}, blank, number}
}

// herbarium returns the code that stands before a catalogue number. In Darwin Core
// the institution owns the collection, and in many downloads the herbarium's code
// (Index Herbariorum) is the collection's: it stands alone beside an institution
// that is written out, and after one that has a code itself.
func (b *builder) herbarium() check.Field {
	code, collection := b.field("institutionCode"), b.field("collectionCode")
	switch {
	case !herbariumCode.MatchString(collection.Text) || b.o.Code != "" && strings.EqualFold(code.Text, b.o.Code) || strings.Contains(code.Text, collection.Text) && herbariumCode.MatchString(code.Text):
		return code
	case herbariumCode.MatchString(code.Text):
		code.Text += " " + collection.Text
		return code
	}
	return collection
}

// herbariumCode is a code as herbaria have them: a few capitals.
var herbariumCode = regexp.MustCompile(`^[A-Z]{1,8}$`)

// number returns the catalogue number in figures and the part at the right;
// where the number is printed as bars, its figures stand beside them instead.
func (b *builder) number() []label.Block {
	var runs []label.Run
	if b.bars() == nil {
		runs = b.catalogNumber()
	}
	var caption []label.Run
	if len(runs) > 0 {
		caption = b.caption("", func(v *lang.Vocabulary) string { return v.CaptionCatalogue })
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
