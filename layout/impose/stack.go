package impose

import (
	"slices"

	"cornerslip/layout"
)

// A class is the labels of one size, in record order.
type class struct {
	size   layout.Size // as they lie
	turn   bool
	labels []int
}

func classes(sizes []layout.Size, turn []bool) []class {
	var all []class
	for i, s := range sizes {
		s = turned(s, turn[i])
		k := slices.IndexFunc(all, func(c class) bool { return c.size == s && c.turn == turn[i] })
		if k < 0 {
			k = len(all)
			all = append(all, class{size: s, turn: turn[i]})
		}
		all[k].labels = append(all[k].labels, i)
	}
	return all
}

// stack arranges labels so that all papers of a stack have the same cuts and
// each pile that comes of it lies in order. Sizes either share one stack or get
// a stack each, whichever takes fewer papers.
func (g Gang) stack(sizes []layout.Size, turn []bool) []node {
	all := classes(sizes, turn)
	if len(all) == 0 {
		return nil
	}
	apart := 0
	var each [][][]int
	for _, c := range all {
		t := g.grid(c.size)
		each = append(each, t)
		apart += papers([]class{c}, t)
	}
	if t := g.together(all); t != nil && len(all) > 1 && papers(all, t) <= apart {
		return g.piles(all, t)
	}
	var pages []node
	for k, c := range all {
		pages = append(pages, g.piles([]class{c}, each[k])...)
	}
	return pages
}

// A template is the columns of a stack's papers; each lists the classes of its
// places from the top, by number.

// grid is the template with as many places for one size as the paper has.
func (g Gang) grid(s layout.Size) [][]int {
	a := g.area()
	t := make([][]int, (a.W+g.Gutter)/(s.W+g.Gutter))
	for i := range t {
		t[i] = make([]int, (a.H+g.Gutter)/(s.H+g.Gutter))
	}
	return t
}

// papers returns how high the stack is.
func papers(all []class, template [][]int) int {
	places := make([]int, len(all))
	for _, c := range template {
		for _, k := range c {
			places[k]++
		}
	}
	n := 0
	for k, c := range all {
		if places[k] == 0 {
			return 1 << 30
		}
		n = max(n, (len(c.labels)+places[k]-1)/places[k])
	}
	return n
}

// together returns the template for several sizes of one width that makes the
// lowest stack, nil if the widths differ or there are too many sizes to try.
func (g Gang) together(all []class) [][]int {
	const mostClasses, mostTried = 5, 20000
	if len(all) > mostClasses {
		return nil
	}
	a := g.area()
	for _, c := range all {
		if c.size.W != all[0].size.W {
			return nil
		}
	}
	columns := int((a.W + g.Gutter) / (all[0].size.W + g.Gutter))
	// Every way to fill a column so that nothing more goes in.
	var fillings [][]int
	var fill func(from int, used layout.Length, picked []int)
	fill = func(from int, used layout.Length, picked []int) {
		full := true
		for k, c := range all {
			if used+c.size.H <= a.H {
				full = false
				if k >= from {
					fill(k, used+c.size.H+g.Gutter, append(slices.Clone(picked), k))
				}
			}
		}
		if full {
			fillings = append(fillings, picked)
		}
	}
	fill(0, 0, nil)
	var best, now [][]int
	tried := 0
	var choose func(from int)
	choose = func(from int) {
		if len(now) == columns {
			tried++
			if best == nil || papers(all, now) < papers(all, best) {
				best = slices.Clone(now)
			}
			return
		}
		for k := from; k < len(fillings) && tried < mostTried; k++ {
			now = append(now, fillings[k])
			choose(k)
			now = now[:len(now)-1]
		}
	}
	choose(0)
	return best
}

// piles draws the papers of a stack. A class's piles follow each other in the
// order of its places: each holds the next labels of the run, the first on top.
func (g Gang) piles(all []class, template [][]int) []node {
	height := papers(all, template)
	pages := make([]node, height)
	for p := range pages {
		pile := make([]int, len(all))
		page := divide(g.area(), false, g.Gutter)
		for _, places := range template {
			column := divide(page.next(all[places[0]].size.W), true, g.Gutter)
			for _, k := range places {
				c := &all[k]
				label := spare
				if i := pile[k]*height + p; i < len(c.labels) {
					label = c.labels[i]
				}
				pile[k]++
				column.add(node{Rect: column.next(c.size.H), label: label, turn: c.turn})
			}
			page.add(column.done())
		}
		pages[p] = page.done()
	}
	return pages
}
