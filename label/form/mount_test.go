package form

import (
	"testing"

	"cornerslip/label"
	"cornerslip/label/check"
)

// The letter of a gathering that shares its mount stands in bold before the
// part, on the house's own labels alone.
func TestLetterOfSharedMount(t *testing.T) {
	r := record(t, base("preparations", "sheet | packet: seeds", "mount", "7", "duplicatesTo", "PINHEL")...)
	all := Sheet(r, Options{Letter: func(r *check.Record) string { return "B" }})
	if len(all) != 2 {
		t.Fatalf("%d labels", len(all))
	}
	right := func(c label.Content) []label.Run {
		for _, b := range c.Blocks {
			if b.Role == label.Number {
				return b.Right
			}
		}
		return nil
	}
	own := right(all[0])
	if got := label.String(own); got != "B, seeds in packet" || own[0].Style != label.Bold || own[0].Origin.Term != "mount" {
		t.Errorf("own label: %q, %v", got, own)
	}
	if got := label.String(right(all[1])); got != "" {
		t.Errorf("the label of a duplicate says %q", got)
	}
	if got := label.String(right(Sheet(r, Options{})[0])); got != "seeds in packet" {
		t.Errorf("without letters: %q", got)
	}
}

// A packet whose contents are not named has a line for them where that is
// asked for.
func TestContentsLine(t *testing.T) {
	for _, c := range []struct {
		preparations string
		line         bool
		want         int
	}{{"sheet | packet", true, 1}, {"sheet | packet", false, 0}, {"sheet | packet: seeds", true, 0}} {
		n := 0
		for _, l := range Packets(record(t, base("preparations", c.preparations)...), Options{ContentsLine: c.line}) {
			for _, b := range l.Blocks {
				if b.Role == label.Blank && label.String(b.Runs) == "Contents: " {
					n++
				}
			}
		}
		if n != c.want {
			t.Errorf("%q, asked %v: %d lines", c.preparations, c.line, n)
		}
	}
}
