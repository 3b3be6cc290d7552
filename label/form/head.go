package form

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/lang"
)

// house returns the heading of the institution: its name in letterspaced
// capitals, its address below.
func (b *builder) house() []label.Block {
	var blocks []label.Block
	for _, line := range b.o.House {
		run := label.Run{Text: line}
		if len(blocks) == 0 {
			run.Style = label.Capitals
		}
		if line != "" {
			blocks = append(blocks, label.Block{Role: label.House, Runs: []label.Run{run}})
		}
	}
	return blocks
}

// project returns the record's own heading line, or the house's.
func (b *builder) project() []label.Block {
	for _, term := range []string{"project", "projectTitle"} {
		if runs := b.text(term); runs != nil {
			return []label.Block{{Role: label.Project, Runs: append(b.lead("project", nil), runs...)}}
		}
	}
	var blocks []label.Block
	for _, line := range b.o.Project {
		if line != "" {
			blocks = append(blocks, label.Block{Role: label.Project, Runs: keep(line, label.Origin{})})
		}
	}
	return blocks
}

// cultivation are the words that say that a plant was grown: those of Darwin
// Core's degreeOfEstablishment and of its older establishmentMeans, and the
// same in the languages of labels.
var cultivation = set(`cultivated captive managed cult cultivada cultivado cultivée cultivé kultiviert culta cultus 栽培`)

// status returns what is said before anything else: that the plant was
// cultivated, its accession in the garden and where it came from.
func (b *builder) status() []label.Block {
	accession, origin := b.text("gardenAccession"), b.text("wildOrigin")
	grown := len(accession) > 0
	var at label.Origin
	for _, term := range []string{"degreeOfEstablishment", "establishmentMeans"} {
		if f := b.field(term); cultivation[strings.ToLower(strings.TrimRight(f.Text, "."))] {
			grown, at = true, f.Origin
			break
		}
	}
	var p prose
	if grown {
		if w := b.word("cultivated", func(v *lang.Vocabulary) string { return v.Cultivated }); w != "" {
			p.add("", from(said(w), at)...)
		}
	}
	if len(accession) > 0 {
		w := b.word("", func(v *lang.Vocabulary) string { return v.Accession })
		p.add(", ", tie(said(b.lower(&p, w)+" "), accession...)...)
	}
	if len(origin) > 0 {
		w := upperFirst(b.word("", func(v *lang.Vocabulary) string { return v.WildOrigin }))
		p.sentence(append(said(w+b.first.Colon), origin...)...)
		p.stop()
	}
	if p.empty() {
		return nil
	}
	return []label.Block{{Role: label.Status, Runs: p.runs,
		Caption: b.caption("", func(v *lang.Vocabulary) string { return v.CaptionStatus })}}
}

// lower returns a word with a capital where it begins a sentence.
func (b *builder) lower(p *prose, w string) string {
	if p.ended() {
		return upperFirst(w)
	}
	return w
}
