package form

import (
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// Packets returns the labels of the packets. A packet on a sheet says whose it
// is, what is in it and to which sheet it belongs. A specimen that has packets
// and no sheet, as mosses and lichens are kept, has all the words of the
// sheet label on the packet's front, and so have its duplicates.
func Packets(r *check.Record, o Options) []label.Content {
	var all []label.Content
	_, onSheet := mounts(r)
	for range max(1, r.Copies) {
		for i, p := range r.Preparations {
			if p.Kind != check.Packet {
				continue
			}
			b := newBuilder(r, &o)
			var c label.Content
			if onSheet {
				c = b.packet(p, sheetOf(r.Preparations, i))
			} else {
				c = b.full(label.Packet, b.partOfContainer(p))
			}
			c.Part = b.partName(p)
			all = append(all, c)
		}
		if onSheet {
			break // a second label for the same sheet makes no second packet
		}
	}
	if !onSheet && r.Count(check.Packet) > 0 {
		all = append(all, gifts(r, &o, label.Packet)...)
	}
	return all
}

// packet returns the label of a packet on a sheet.
func (b *builder) packet(p check.Preparation, sheet int) label.Content {
	c := b.content(label.Packet)
	at := b.r.Field("preparations").Origin
	add := func(blocks ...label.Block) { c.Blocks = append(c.Blocks, blocks...) }

	add(label.Block{Role: label.Collector, Runs: b.key(label.Bold)})
	if b.o.PacketName {
		if runs := b.scientificName(); runs != nil {
			add(label.Block{Role: label.Name, Runs: runs})
		}
	}
	if p.Contents != "" {
		add(label.Block{Role: label.Text, Runs: keep(p.Contents, at)})
	}
	if n := b.r.Count(check.Sheet); n > 1 {
		mount := check.Preparation{Kind: check.Sheet, N: sheet, Of: n}
		of := b.both(func(v *lang.Vocabulary) string { return lang.Fill(v.PartOf, "what", b.countedIn(v, mount)) })
		add(label.Block{Role: label.Text, Tight: true, Runs: keep(of, at)})
	}
	what := b.counted(p)
	if what == "" {
		what = b.both(func(v *lang.Vocabulary) string { return v.Packet })
	}
	b.part = keep(upperEach(what), at)
	number := b.catalogNumber()
	switch {
	case len(number) == 0:
		add(label.Block{Role: label.Text, Runs: b.part, Tight: true})
	case b.o.PacketBars && b.o.barred(b.field("catalogNumber").Text):
		add(label.Block{Role: label.Text, Runs: b.part, Tight: true})
		add(label.Block{Role: label.Symbol, Runs: number,
			Bars: &label.Bars{Symbology: b.o.Symbology, Text: b.field("catalogNumber").Text}})
	default:
		add(label.Block{Role: label.Number, Runs: tie(spaced(b.o.NumberWord), number...), Right: b.part})
	}
	return c
}
