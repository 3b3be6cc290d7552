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

// packet returns the label of a packet on a sheet: whose it is, what is in it
// and what it is part of, should it come loose.
func (b *builder) packet(p check.Preparation, sheet int) label.Content {
	c := b.content(label.Packet)
	at := b.r.Field("preparations").Origin
	add := func(blocks ...label.Block) { c.Blocks = append(c.Blocks, blocks...) }

	if h := b.house(); len(h) > 0 && !b.o.PlainPackets {
		add(h[0])
	}
	number := b.catalogNumber()
	barred := b.o.PacketBars && b.o.barred(b.field("catalogNumber").Text)
	key := label.Block{Role: label.Key, Runs: b.key(label.Bold)}
	if len(number) > 0 && !barred {
		key.Right = styled(tie(spaced(b.o.NumberWord), number...), label.Small)
	}
	add(key)
	if b.o.PacketName {
		if runs := b.scientificName(); runs != nil {
			add(label.Block{Role: label.Name, Runs: runs})
		}
	}
	switch {
	case p.Contents != "":
		add(label.Block{Role: label.Text, Runs: keep(p.Contents, at)})
	case b.o.ContentsLine:
		add(label.Block{Role: label.Blank, Runs: said(b.word("", func(v *lang.Vocabulary) string { return v.Contents }) + b.first.Colon)})
	}
	var parts []label.Run
	of := 0 // sheets, with those that have records of their own
	for _, q := range b.r.Preparations {
		if q.Kind == check.Sheet {
			of = q.Of
		}
	}
	if of > 1 {
		mount := check.Preparation{Kind: check.Sheet, N: sheet, Of: of}
		parts = append(parts, keep(b.both(func(v *lang.Vocabulary) string {
			return lang.Fill(v.PartOf, "what", b.countedIn(v, mount))
		}), at)...)
	}
	if n := upperEach(b.counted(p)); n != "" {
		if len(parts) > 0 {
			parts = joined([][]label.Run{parts, keep(n, at)}, "; ", "; ")
		} else {
			parts = keep(n, at)
		}
	}
	if len(parts) == 0 && p.Contents == "" {
		parts = keep(upperEach(b.both(func(v *lang.Vocabulary) string { return v.Packet })), at)
	}
	if len(parts) > 0 {
		add(label.Block{Role: label.Text, Runs: styled(parts, label.Small), Tight: p.Contents != ""})
	}
	if barred {
		add(label.Block{Role: label.Symbol, Runs: number,
			Bars: &label.Bars{Symbology: b.o.Symbology, Text: b.field("catalogNumber").Text}})
	}
	return c
}
