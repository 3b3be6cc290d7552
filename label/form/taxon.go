package form

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/lang"
	"cornerslip/label/name"
)

// name returns the scientific name, or a line to write on where the plant is
// unnamed, with the family at its right.
func (b *builder) name() []label.Block {
	caption := b.caption("", func(v *lang.Vocabulary) string { return v.CaptionName })
	runs := b.scientificName()
	if runs == nil {
		blank := label.Block{Role: label.Blank, Caption: caption}
		if b.o.Family == FamilyBesideName {
			// The line to write on takes the whole width.
			if family := b.family(); family != nil {
				return []label.Block{{Role: label.Family, Runs: family,
					Caption: b.caption("", func(v *lang.Vocabulary) string { return v.CaptionFamily })}, blank}
			}
		}
		return []label.Block{blank}
	}
	block := label.Block{Role: label.Name, Runs: runs, Caption: caption}
	if b.o.Family == FamilyBesideName {
		block.Right = b.family()
	}
	return []label.Block{block}
}

func (b *builder) scientificName() []label.Run {
	if b.unnamed() || b.leftOut("scientificName") {
		return nil
	}
	at := b.r.Field("scientificName").Origin
	if at == (label.Origin{}) {
		at = b.r.Origin // the name was put together from other columns
	}
	runs := from(shortAuthors(name.Runs(b.r.Name, b.r.Parts, b.o.Name)), at)
	if b.o.BoldName {
		styled(runs, label.Bold)
	}
	return runs
}

// unnamed reports whether the plant has no name yet, be its family known or
// not. A family typed as the name is a name.
func (b *builder) unnamed() bool {
	return b.r.Name == "" || b.r.Text("scientificName") == "" && strings.EqualFold(b.r.Name, b.r.Text("family"))
}

// family returns the family; nil where the name is the family itself.
func (b *builder) family() []label.Run {
	f := b.field("family")
	if f.Text == "" || strings.EqualFold(f.Text, b.r.Name) && !b.unnamed() {
		return nil
	}
	runs := []label.Run{{Text: f.Text, Style: label.Capitals}}
	if b.o.PlainFamily {
		runs = name.Runs(f.Text, name.Parts{Family: f.Text}, b.o.Name)
	}
	return from(exact(runs), f.Origin)
}

// familyLine returns the family on a line of its own.
func (b *builder) familyLine() []label.Block {
	if b.o.Family != FamilyOwnLine {
		return nil
	}
	runs := b.family()
	if runs == nil {
		return nil
	}
	return []label.Block{{Role: label.Family, Runs: runs, Caption: b.caption("", func(v *lang.Vocabulary) string { return v.CaptionFamily })}}
}

// det returns who named the plant and when, and its earlier names.
func (b *builder) det() []label.Block {
	word := ""
	if !b.captioned() {
		word = b.word("det", func(v *lang.Vocabulary) string { return v.Det })
	}
	p := prose{runs: b.determined(word)}
	more := !p.empty()
	p.sentence(b.mentions("identificationRemarks")...)
	if earlier := b.field("previousIdentifications"); earlier.Text != "" {
		var names [][]label.Run
		for _, s := range items(earlier.Text) {
			names = append(names, from(shortAuthors(name.Mentions(s, nil, b.taxa())), earlier.Origin))
		}
		p.sentence(joined(names, "; ", "; ")...)
	}
	if p.empty() {
		return nil
	}
	if more && (b.field("identificationRemarks").Text != "" || b.field("previousIdentifications").Text != "") {
		p.stop()
	}
	block := label.Block{Role: label.Det, Runs: p.runs, Caption: b.caption("det", func(v *lang.Vocabulary) string { return v.CaptionDet })}
	if b.o.DetRight && block.Caption == nil {
		block.Runs, block.Right = nil, block.Runs
	}
	return []label.Block{block}
}

// determined returns who named the plant and when, after a word.
func (b *builder) determined(word string) []label.Run {
	var p prose
	f := b.field("identifiedBy")
	var people [][]label.Run
	for _, s := range items(f.Text) {
		people = append(people, exact(keep(s, f.Origin)))
	}
	p.add("", joined(people, b.sep(b.o.PeopleSep, b.first.Comma), b.sep(b.o.LastPersonSep, b.first.LastComma))...)
	if !b.leftOut("dateIdentified") {
		at := b.r.Field("dateIdentified").Origin
		if b.r.IdentifiedText != "" {
			p.add(", ", keep(b.r.IdentifiedText, at)...)
		} else {
			p.add(", ", kept(b.r.Identified.Pieces(b.o.Date, b.o.Lang), at)...)
		}
	}
	if p.empty() {
		return nil
	}
	return tie(spaced(word), p.runs...)
}

// taxa are the options for text that is made of names.
func (b *builder) taxa() name.Options {
	o := b.o.Name
	o.TaxonField = true
	return o
}

// sep returns the house's separator or the language's.
func (b *builder) sep(own, usual string) string {
	if own != "" {
		return own
	}
	return usual
}

// kept returns pieces inside which a line must not break.
func kept(pieces []string, at label.Origin) []label.Run {
	var runs []label.Run
	for i, s := range pieces {
		if i > 0 {
			s = " " + s
		}
		runs = append(runs, label.Run{Text: s, Keep: true, Origin: at})
	}
	return runs
}

// typus returns the kind of type and the name it is the type of.
func (b *builder) typus() []label.Block {
	status, typified := b.field("typeStatus"), b.field("typifiedName")
	var p prose
	for _, s := range items(status.Text) {
		p.add("; ", from(b.italicsWith(s, typified.Text), status.Origin)...)
	}
	if typified.Text != "" && !strings.Contains(status.Text, typified.Text) {
		of := b.first.SlipTypeOf
		sep := " "
		if p.empty() {
			of, sep = b.first.SlipType+" "+of, ""
		}
		p.add(sep, append(said(of+" "), from(shortAuthors(name.Runs(typified.Text, name.Parts{}, b.o.Name)), typified.Origin)...)...)
	}
	if p.empty() {
		return nil
	}
	return []label.Block{{Role: label.Type, Runs: p.runs, Caption: b.caption("", func(v *lang.Vocabulary) string { return v.CaptionType })}}
}

// italicsWith sets names in italics, one more among those that are known.
func (b *builder) italicsWith(text, known string) []label.Run {
	list := []string{b.r.Text("scientificName")}
	if known != "" {
		list = append(list, known)
	}
	return shortAuthors(name.Mentions(text, list, b.o.Name))
}
