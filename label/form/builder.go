package form

import (
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
	"cornerslip/label/name"
)

// A builder makes the blocks of one label.
type builder struct {
	r      *check.Record
	o      *Options
	first  *lang.Vocabulary
	second *lang.Vocabulary // nil where the label is in one language
	gift   string           // the herbarium a duplicate goes to; "" is our own
	coarse bool             // the place is withheld
	part   part
	zone   label.Zone // of the block being made
}

func newBuilder(r *check.Record, o *Options) *builder {
	b := &builder{r: r, o: o, first: lang.Words(o.Lang)}
	if o.Second != "" && o.Second != o.Lang {
		b.second = lang.Words(o.Second)
	}
	return b
}

// full returns the whole label.
func (b *builder) full(kind label.Kind, p part) label.Content {
	b.part = p
	c := b.content(kind)
	for i, order := range b.orders() {
		b.zone = label.InHead + label.Zone(i)
		for _, role := range order {
			if b.leftOut(string(role)) {
				continue
			}
			blocks := b.blocks(role)
			for k := range blocks {
				if usualZone(blocks[k].Role) != b.zone {
					blocks[k].Zone = b.zone
				}
			}
			if n := len(c.Blocks); n > 0 && len(blocks) > 0 && slices.Contains(b.o.RunOn, role) {
				blocks = runOn(&c.Blocks[n-1], blocks, b.zone)
			}
			c.Blocks = append(c.Blocks, blocks...)
		}
	}
	tighten(c.Blocks)
	return c
}

// usualZone is where blocks of a role stand if the house does not say
// otherwise.
func usualZone(r label.Role) label.Zone {
	switch r {
	case label.House, label.Project:
		return label.InHead
	case label.Collector, label.Team, label.Number, label.Symbol:
		return label.InFoot
	}
	return label.InBody
}

// runOn lets the first of the blocks go on in the paragraph before it, if both
// are plain paragraphs of one zone, and returns those that are left.
func runOn(last *label.Block, blocks []label.Block, zone label.Zone) []label.Block {
	next := &blocks[0]
	plain := func(b *label.Block) bool {
		return b.Caption == nil && b.Bars == nil && b.Right == nil && b.Role != label.Blank && len(b.Runs) > 0
	}
	if !plain(last) || !plain(next) || zone != label.InBody || usualZone(last.Role) != label.InBody && last.Zone != label.InBody || last.Zone == label.InHead {
		return blocks
	}
	p := prose{runs: last.Runs}
	sep := ". "
	if p.closed() {
		sep = " "
	}
	p.add(sep, next.Runs...)
	p.stop()
	last.Runs = p.runs
	return blocks[1:]
}

// again returns the label of another part or for another herbarium: only what
// tells them apart is worded anew.
func (b *builder) again(c label.Content, p part) label.Content {
	if len(b.o.RunOn) > 0 { // blocks may be parts of others
		return b.full(c.Kind, p)
	}
	b.part = p
	blocks := make([]label.Block, 0, len(c.Blocks))
	for _, old := range c.Blocks {
		switch old.Role {
		case label.Team, label.Number, label.Symbol:
			if b.zone = old.Zone; b.zone == label.ByRole {
				b.zone = usualZone(old.Role)
			}
			for _, again := range b.blocks(old.Role) {
				again.Tight, again.Zone = old.Tight, old.Zone
				blocks = append(blocks, again)
			}
		default:
			blocks = append(blocks, old)
		}
	}
	c.Blocks = blocks
	return c
}

// orders returns the blocks of head, body and foot.
func (b *builder) orders() [3][]label.Role {
	orders := [3][]label.Role{b.o.Head, b.o.Body, b.o.Foot}
	for i, usual := range [3][]label.Role{usualHead, usualBody, usualFoot} {
		if orders[i] == nil {
			orders[i] = usual
		}
	}
	return orders
}

// ordered reports whether a block is printed at all.
func (b *builder) ordered(role label.Role) bool {
	for _, order := range b.orders() {
		if slices.Contains(order, role) {
			return !b.leftOut(string(role))
		}
	}
	return false
}

// content returns a label without blocks.
func (b *builder) content(kind label.Kind) label.Content {
	tag := b.o.Lang
	if tag == "" {
		tag = lang.English
	}
	return label.Content{
		Kind: kind, Lang: string(tag), Key: b.key(0),
		Continued: b.word("continued", func(v *lang.Vocabulary) string { return v.Continued }),
		OfWord:    b.first.Of, Origin: b.r.Origin,
	}
}

func (b *builder) blocks(role label.Role) []label.Block {
	switch role {
	case label.House:
		return b.house()
	case label.Project:
		return b.project()
	case label.Status:
		return b.status()
	case label.Family:
		return b.familyLine()
	case label.Name:
		return b.name()
	case label.Det:
		return b.det()
	case label.Type:
		return b.typus()
	case label.Place:
		return b.place()
	case label.Coords:
		return b.coords()
	case label.Plant:
		return b.plant()
	case Habitat:
		return b.plantParts(true, b.associatesWithin(), false)
	case Associates:
		return b.plantParts(false, true, false)
	case Description:
		return b.plantParts(false, false, true)
	case Date:
		return b.dateLine()
	case label.Notes:
		return b.notes()
	case label.Collector:
		return b.collector()
	case label.Team:
		return b.team()
	case label.Number:
		return b.number()
	case label.Symbol:
		return b.symbol()
	}
	return nil
}

// groups are the roles that stand together; between groups is white space.
var groups = map[label.Role]int{
	label.House: 1, label.Project: 1,
	label.Status: 2, label.Family: 2, label.Name: 2, label.Blank: 2, label.Det: 2, label.Type: 2,
	label.Place: 3, label.Coords: 3,
	label.Plant: 4, label.Notes: 4,
	label.Collector: 5, label.Team: 5,
	label.Number: 6, label.Symbol: 6,
}

// tighten closes the blocks of a group up.
func tighten(blocks []label.Block) {
	for i := range blocks {
		if i > 0 && groups[blocks[i].Role] == groups[blocks[i-1].Role] {
			blocks[i].Tight = true
		}
	}
}

// leftOut reports whether the house leaves a block or a column out.
func (b *builder) leftOut(name string) bool { return slices.Contains(b.o.LeaveOut, name) }

// text returns a cell as runs, kept together where the trade asks for it; nil
// for an empty cell or one the house leaves out.
func (b *builder) text(term string) []label.Run {
	f := b.field(term)
	return keep(f.Text, f.Origin)
}

func (b *builder) field(term string) check.Field {
	if b.leftOut(term) || b.withheld(term) {
		return check.Field{}
	}
	return b.r.Field(term)
}

// mentions returns a cell as text does, with the names in it in italics.
func (b *builder) mentions(term string) []label.Run {
	f := b.field(term)
	if f.Text == "" {
		return nil
	}
	return from(b.italics(f.Text, b.o.Name), f.Origin)
}

// italics sets the names in running text that the record's own columns know
// or whose form is clear.
func (b *builder) italics(text string, o name.Options) []label.Run {
	known := items(b.r.Text("associatedTaxa"))
	if n := b.r.Text("scientificName"); n != "" {
		known = append(known, n)
	}
	var out []label.Run
	for _, r := range shortAuthors(name.Mentions(text, known, o)) {
		if r.Keep || r.Style != 0 {
			out = append(out, r)
			continue
		}
		for _, k := range keep(r.Text, r.Origin) {
			k.Exact = r.Exact
			out = append(out, k)
		}
		out[len(out)-1].Glue = r.Glue
	}
	return out
}

// word returns the house's own word for a key, or the language's; in both
// languages of a bilingual label where they differ.
func (b *builder) word(key string, of func(*lang.Vocabulary) string) string {
	if w, ok := b.o.Words[key]; ok && key != "" {
		return w
	}
	w := of(b.first)
	if b.second != nil {
		if s := of(b.second); !strings.EqualFold(s, w) {
			w += " / " + s
		}
	}
	return w
}

// caption returns a block's caption in the captioned style, else nil.
func (b *builder) caption(key string, of func(*lang.Vocabulary) string) []label.Run {
	if !b.captioned() {
		return nil
	}
	w := b.word(key, of)
	if w == "" {
		return nil
	}
	return []label.Run{{Text: w}} // free to turn over in its narrow column
}

// lead returns the word before a value in running text: the house's own if it
// has one, else the language's; none in the captioned style.
func (b *builder) lead(key string, of func(*lang.Vocabulary) string) []label.Run {
	if b.captioned() {
		return nil
	}
	if of == nil {
		if w := b.o.Words[key]; w != "" {
			return said(w + b.colon(w))
		}
		return nil
	}
	if w := b.word(key, of); w != "" {
		return said(w + b.colon(w))
	}
	return nil
}

// colon is what joins a word to its value: a blank after a word that brings
// its own sign.
func (b *builder) colon(word string) string {
	if endsClosed(word) {
		return " "
	}
	return b.first.Colon
}

// blank is a blank at which no line ends.
var blank = label.Run{Text: " ", Keep: true, Glue: true}

// spaced returns a word and a blank.
func spaced(word string) []label.Run {
	if word == "" {
		return nil
	}
	return said(word + " ")
}

// key is how people name the specimen: collector and number.
func (b *builder) key(style label.Style) []label.Run {
	who := exact(keep(b.r.Collector, b.r.Field("recordedBy").Origin))
	if len(who) == 0 {
		who = said(b.first.NoCollector)
	}
	number := label.Run{Text: b.first.NoNumber, Keep: true}
	if b.r.Number != "" {
		number = label.Run{Text: b.r.Number, Keep: true, Exact: true, Origin: b.r.Field("recordNumber").Origin}
	}
	return styled(tie(who, blank, number), style)
}

// joined writes a list with separators that do not begin a line.
func joined(list [][]label.Run, sep, last string) []label.Run {
	var out []label.Run
	for i, item := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			out = append(tieSign(out, last), label.Run{Text: last})
		default:
			out = append(tieSign(out, sep), label.Run{Text: sep})
		}
		out = append(out, item...)
	}
	return out
}

// tieSign ties a separator that begins with a sign to the text before it.
func tieSign(runs []label.Run, sep string) []label.Run {
	if sep != "" && sep[0] != ' ' && len(runs) > 0 {
		runs[len(runs)-1].Glue = true
	}
	return runs
}
