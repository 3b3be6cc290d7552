package check

import (
	"fmt"
	"hash/fnv"
	"maps"
	"slices"
	"strings"

	"cornerslip/label"
)

// numbersTwice keeps where each catalogue number stood first.
//
// Collections count each for themselves, so two of them may have one number.
// Records of one gathering that each have an occurrenceID of their own are its
// duplicates or preparations, which some herbaria keep under one number.
type numbersTwice struct {
	houses map[string]map[string]numbered // by who gives the numbers, and number
	again  map[string]*label.Finding
	parts  map[string]*partsSeen // of specimens with a record for each part
}

// partsSeen are the records of a specimen that say which part of it they are.
type partsSeen struct {
	key  string
	seen []string
}

// further reports whether a record is another part of the specimen that has its
// number already: of the same gathering, and no part that was there before.
func (n *numbersTwice) further(number string, first map[string]numbered, r *Record) bool {
	which := r.PartOfMore()
	if which == "" {
		delete(n.parts, number)
		return false
	}
	if n.parts == nil {
		n.parts = map[string]*partsSeen{}
	}
	p := n.parts[number]
	if _, known := first[number]; p == nil && !known {
		n.parts[strings.Clone(number)] = &partsSeen{r.Key(), []string{which}}
		return false
	}
	if p == nil || p.key != r.Key() || slices.Contains(p.seen, which) {
		return false
	}
	p.seen = append(p.seen, which)
	return true
}

func (n *numbersTwice) Feed(r *Record) {
	f := r.Field("catalogNumber")
	if f.Text == "" {
		return
	}
	if n.houses == nil {
		n.houses, n.again = map[string]map[string]numbered{}, map[string]*label.Finding{}
	}
	house := houseOf(r, f.Text)
	first := n.houses[string(house)]
	if first == nil {
		first = map[string]numbered{}
		n.houses[string(house)] = first
	}
	if n.further(f.Text, first, r) {
		return
	}
	this := numbered{row: int32(r.Row), id: digest(r.Text("occurrenceID"))}
	if r.Collector != "" && r.Number != "" && this.id != 0 {
		this.gathering = digest(r.Key())
	}
	old, seen := first[f.Text]
	if !seen {
		first[strings.Clone(f.Text)] = this
		return
	}
	if this.gathering != 0 && this.gathering == old.gathering && this.id != old.id {
		return
	}
	row := int(old.row)
	cell := label.Cell{Row: r.Row, Term: "catalogNumber"}
	if g := n.again[f.Text]; g != nil {
		g.Also = append(g.Also, cell)
		return
	}
	n.again[strings.Clone(f.Text)] = &label.Finding{
		Origin: f.Origin, Value: strings.Clone(f.Text), Also: []label.Cell{{Row: row, Term: "catalogNumber"}},
		Message: fmt.Sprintf("record %d has the same catalogue number: each specimen needs its own", row),
	}
}

// A numbered is the record that a number stood in first: its row, and digests of
// its gathering and its occurrenceID, 0 where it has none.
type numbered struct {
	row           int32
	gathering, id uint32
}

// digest is the hash FNV-1a of a text, 0 of none.
func digest(s string) uint32 {
	if s == "" {
		return 0
	}
	h := fnv.New32a()
	h.Write([]byte(s))
	return max(h.Sum32(), 1)
}

// houseOf names who gives a record's numbers: institution and collection, and
// what stands before the number in an occurrenceID that ends with it, as in
// "VDOURA-Algae:4211".
func houseOf(r *Record, number string) []byte {
	var b []byte
	b = append(append(append(b, r.Text("institutionCode")...), 0), r.Text("collectionCode")...)
	if before, ok := strings.CutSuffix(r.Text("occurrenceID"), number); ok && (strings.HasSuffix(before, ":") || strings.HasSuffix(before, "/")) {
		b = append(append(b, 0), before...)
	}
	return b
}

func (n *numbersTwice) End() []label.Finding {
	var all []label.Finding
	for _, k := range slices.Sorted(maps.Keys(n.again)) {
		all = append(all, *n.again[k])
	}
	return all
}
