package job

import (
	"fmt"
	"slices"
	"strings"

	"cornerslip/label"
)

// A Sort is a part of a run that is cut apart or handed out by itself.
type Sort string

// The sorts.
const (
	Sheets  Sort = "sheets"  // one for each of the house's own sheets
	Copies  Sort = "copies"  // further labels of the house's own, as the record asks
	Boxes   Sort = "boxes"   // of boxes and jars
	Packets Sort = "packets" // of packets
	Gifts   Sort = "gifts"   // of duplicates, which go to other herbaria
)

// sorts returns those that a kind of label comes in.
func sorts(k label.Kind) []Sort {
	switch k {
	case label.Sheet:
		return []Sort{Sheets, Copies, Boxes, Gifts}
	case label.Packet:
		return []Sort{Packets, Copies, Gifts}
	}
	return nil
}

// prepareWhich holds the sorts asked for against those there are.
func (j *Job) prepareWhich(q *Request) error {
	there := sorts(q.Kind)
	for _, s := range q.Which {
		if !slices.Contains(there, s) {
			return fmt.Errorf("no labels are called %q here; there are %s", s, list(there))
		}
	}
	if q.On != OnMount {
		return nil
	}
	if q.Which != nil && !slices.Equal(q.Which, []Sort{Sheets}) {
		return fmt.Errorf("on mounts there are the labels of your own sheets alone; print %s on paper", list(without(q.Which, Sheets)))
	}
	q.Which = []Sort{Sheets}
	return nil
}

func list(s []Sort) string {
	words := make([]string, len(s))
	for i, w := range s {
		words[i] = string(w)
	}
	return strings.Join(words, ", ")
}

func without(s []Sort, not Sort) []Sort {
	return slices.DeleteFunc(slices.Clone(s), func(w Sort) bool { return w == not })
}

// choose returns the labels of a record that the request asks for, and how many
// of each other sort there are.
func (q *Request) choose(contents []label.Content) (kept []label.Content, left map[Sort]int) {
	if q.just != nil {
		for _, c := range contents {
			if q.just(&c) && len(kept) == 0 { // copies are alike
				kept = append(kept, c)
			}
		}
		return kept, nil
	}
	if q.Which == nil || sorts(q.Kind) == nil {
		return contents, nil
	}
	seen := map[string]bool{}
	for _, c := range contents {
		s := sortOf(&c, seen)
		if slices.Contains(q.Which, s) {
			kept = append(kept, c)
			continue
		}
		if left == nil {
			left = map[Sort]int{}
		}
		left[s]++
	}
	return kept, left
}

// sortOf returns the sort of a label; seen are the parts of the record that
// have one already, for a second one is a copy.
func sortOf(c *label.Content, seen map[string]bool) Sort {
	if c.For != "" {
		return Gifts
	}
	part := string(c.Kind) + " " + c.Part
	if seen[part] {
		return Copies
	}
	seen[part] = true
	switch c.Kind {
	case label.Container:
		return Boxes
	case label.Packet:
		return Packets
	}
	return Sheets
}
