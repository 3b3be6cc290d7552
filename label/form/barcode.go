package form

import (
	"cornerslip/label"
	"cornerslip/label/check"
)

// Barcodes returns the stickers of a record whose catalogue number is of the
// house's own series: one for each of its sheets, boxes and jars, since all
// bear the specimen's number, or one where it is kept in packets alone.
// A record without such a number has none.
func Barcodes(r *check.Record, o Options) []label.Content {
	f := r.Field("catalogNumber")
	if !o.barred(f.Text) {
		return nil
	}
	b := newBuilder(r, &o)
	var all []label.Content
	for _, p := range labelled(r) {
		c := Number(f.Text, o)
		c.Origin, c.Key, c.Part = r.Origin, b.key(0), b.partName(p)
		for i := range c.Blocks {
			if c.Blocks[i].Role == label.Symbol {
				from(c.Blocks[i].Runs, f.Origin)
			}
		}
		all = append(all, c)
	}
	return all
}

// labelled returns the parts of a specimen that bear its number and its slips:
// each sheet, box and jar, or one packet where it is kept in packets alone.
func labelled(r *check.Record) []check.Preparation {
	parts, _ := mounts(r)
	for _, p := range r.Preparations {
		if p.Kind == check.Box || p.Kind == check.Jar {
			parts = append(parts, p)
		}
	}
	if len(parts) == 0 {
		parts = []check.Preparation{{Kind: check.Packet, N: 1, Of: 1}}
	}
	return parts
}

// Number returns the sticker of a bare number of a series: the institution,
// the bars, and the number in figures.
func Number(number string, o Options) label.Content {
	b := newBuilder(nil, &o)
	c := label.Content{
		Kind: label.Barcode, Lang: string(o.Lang), Key: []label.Run{{Text: number, Keep: true, Exact: true}},
		Continued: b.first.Continued, OfWord: b.first.Of,
	}
	if c.Lang == "" {
		c.Lang = "en"
	}
	if len(o.House) > 0 && o.House[0] != "" {
		c.Blocks = append(c.Blocks, b.house()[0])
	}
	c.Blocks = append(c.Blocks, label.Block{
		Role: label.Symbol, Runs: []label.Run{{Text: number, Keep: true, Exact: true}},
		Bars: &label.Bars{Symbology: o.Symbology, Text: number},
	})
	return c
}
