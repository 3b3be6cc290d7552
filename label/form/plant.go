package form

import (
	"slices"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
	"cornerslip/label/name"
)

// firstField returns the first of the cells that is filled.
func (b *builder) firstField(terms ...string) check.Field {
	for _, t := range terms {
		if f := b.r.Field(t); f.Text != "" {
			return f
		}
	}
	return check.Field{}
}

func (b *builder) firstOrigin(terms ...string) label.Origin { return b.firstField(terms...).Origin }

// A value is what a column says, and the word that leads or captions it.
type value struct {
	key     string // of the house's own words
	runs    []label.Run
	lead    func(*lang.Vocabulary) string // nil: no word in running text
	caption func(*lang.Vocabulary) string
}

// values returns the blocks of values: one paragraph of sentences in the
// running style, a block for each under its caption else.
func (b *builder) values(role label.Role, p *prose, list []value) []label.Block {
	var blocks []label.Block
	for _, v := range list {
		switch {
		case len(v.runs) == 0:
		case b.captioned():
			blocks = append(blocks, label.Block{Role: role, Runs: v.runs, Caption: b.caption(v.key, v.caption)})
		default:
			p.sentence(append(b.lead(v.key, v.lead), v.runs...)...)
		}
	}
	if b.captioned() || p.empty() {
		return blocks
	}
	p.stop()
	return []label.Block{{Role: role, Runs: p.runs}}
}

// plant returns what grew where: habitat, the plants around, the plant itself.
func (b *builder) plant() []label.Block { return b.plantParts(true, b.associatesWithin(), true) }

// associatesWithin reports whether the plants around stand within the habitat.
func (b *builder) associatesWithin() bool {
	return !b.ordered(Associates) && !b.leftOut(string(Associates))
}

func (b *builder) plantParts(where, with, itself bool) []label.Block {
	var habitat, among []label.Run
	var about prose // the plant: each column a sentence
	if where {
		habitat = b.mentions("habitat")
	}
	if with {
		among = b.associates()
	}
	if itself {
		for _, term := range []string{"plantDescription", "sex", "lifeStage", "reproductiveCondition", "organismRemarks"} {
			about.sentence(b.mentions(term)...)
		}
	}
	var p prose
	if !b.captioned() {
		if len(habitat) > 0 {
			p.add("", append(b.lead("habitat", nil), habitat...)...)
		}
		if len(among) > 0 {
			w := b.word("associates", func(v *lang.Vocabulary) string { return v.Among })
			if w != "" {
				w = b.lower(&p, w) + " "
			}
			sep := ", "
			if p.ended() {
				sep = ". "
			}
			p.add(sep, append(said(w), among...)...)
		}
		habitat, among = nil, nil
	}
	return b.values(label.Plant, &p, []value{
		{"habitat", habitat, nil, func(v *lang.Vocabulary) string { return v.CaptionHabitat }},
		{"associates", among, nil, func(v *lang.Vocabulary) string { return v.CaptionAssociates }},
		{"description", about.runs, nil, func(v *lang.Vocabulary) string { return v.CaptionPlant }},
	})
}

// associates returns the plants around as a list, names in italics. A cell
// without "|" is printed as it is.
func (b *builder) associates() []label.Run {
	f := b.field("associatedTaxa")
	var list [][]label.Run
	for _, s := range items(f.Text) {
		list = append(list, from(shortAuthors(name.Mentions(s, nil, b.taxa())), f.Origin))
	}
	b.sort("associatedTaxa", list)
	return joined(list, b.first.Comma, b.first.And)
}

// sort puts the items of a list column in the order of the alphabet, where the
// house asks for it.
func (b *builder) sort(term string, list [][]label.Run) {
	if slices.Contains(b.o.Sorted, term) {
		lang.SortFunc(b.o.Lang, list, label.String)
	}
}

// notes returns what people say and do with the plant, remarks and permits.
func (b *builder) notes() []label.Block {
	var remarks prose
	for _, term := range []string{"occurrenceRemarks", "eventRemarks", "fieldNotes", "materialEntityRemarks", "fundingAttribution"} {
		remarks.sentence(b.mentions(term)...)
	}
	var permits prose
	for _, term := range []string{"restrictions", "permits"} {
		permits.sentence(b.list(term)...)
	}
	var p prose
	return b.values(label.Notes, &p, []value{
		{"vernacular", b.list("vernacularName"), func(v *lang.Vocabulary) string { return v.Vernacular },
			func(v *lang.Vocabulary) string { return v.CaptionVernacular }},
		{"uses", b.list("uses"), func(v *lang.Vocabulary) string { return v.Uses }, func(v *lang.Vocabulary) string { return v.CaptionUses }},
		{"", remarks.runs, nil, func(v *lang.Vocabulary) string { return v.CaptionRemarks }},
		{"permit", permits.runs, nil, func(v *lang.Vocabulary) string { return v.CaptionPermit }},
	})
}

// list returns a cell whose items are parted by "|" with semicolons instead.
func (b *builder) list(term string) []label.Run {
	f := b.field(term)
	var list [][]label.Run
	for _, s := range items(f.Text) {
		list = append(list, keep(s, f.Origin))
	}
	b.sort(term, list)
	return joined(list, "; ", "; ")
}
