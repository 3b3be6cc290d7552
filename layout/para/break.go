package para

import "cornerslip/layout"

// The demerits of a paragraph are the sum over its lines of (1 + badness +
// penalty)², after Knuth and Plass 1981, in whole numbers. A ragged line's
// badness is the thousandths of its measure that stay empty; a justified
// line's is 100 r³, r being how far its spaces are stretched or shrunk; beyond
// worst it is no longer filled, and counts what stays empty too. The
// last line, and one that ends at a forced break, may be as short as they
// like. Two faults outweigh all of that, and each other in this order.
const (
	shortFault   = 1 << 34 // the last line is a leftover
	crowdedFault = 1 << 40 // what stands at its right end has no room
)

// shortJustified is the cost of a leftover in justified setting. There a line
// before it that cannot be filled is the greater fault.
const shortJustified = worst * worst / 4

// worst is the badness of a justified line that cannot be stretched enough.
const worst = 10_000

// A node is the best way to set the items before a place.
type node struct {
	// key ranks before demerits: overfull lines, in the upper half, and then
	// the number of lines, because room on a label is dear.
	key  int64
	dem  int64
	prev int32
}

const overfull = 1 << 32 // one overfull line, in node.key

// Break breaks items into lines so that, among all breakings, as few lines as
// can be are overfull, then as few lines as can be are used (never more than
// Greedy's), then demerits are lowest. Lengths are taken to be not negative
// and below a kilometre. Without items there are no lines.
//
// A line is overfull only where it holds no more than the items up to the
// first place it could end.
func Break(items []Item, o Options) Result {
	n := len(items)
	if n == 0 {
		return Result{}
	}
	if n < 32 { // most paragraphs of a label: nothing to allocate, little to clear
		var nodes [32]node
		return fit(items, o, nodes[:n+1])
	}
	if n < 128 {
		var nodes [128]node
		return fit(items, o, nodes[:n+1])
	}
	return fit(items, o, make([]node, n+1))
}

func fit(items []Item, o Options, nodes []node) Result {
	n := len(items)
	for i := 1; i <= n; i++ {
		nodes[i].prev = -1
	}
	nodes[0].prev = 0
	for a := range n {
		if nodes[a].prev < 0 {
			continue // no line can start here
		}
		ln := line{measure: o.measure(a == 0)}
		for b, seen := a, false; b < n; b++ {
			ln.add(items, a, b)
			if seen && ln.width-o.give(&ln) > ln.measure {
				break // wider still with every item more
			}
			last := b == n-1
			if items[b].Break == Forbidden && !last {
				continue
			}
			dem, over := ln.demerits(&items[b], last, a == 0, &o)
			key := nodes[a].key + 1
			if over {
				if seen {
					if items[b].Break == Forced {
						break
					}
					continue
				}
				key += overfull
			}
			seen = true
			to := &nodes[b+1]
			dem += nodes[a].dem
			if to.prev < 0 || key < to.key || key == to.key && dem < to.dem {
				*to = node{key, dem, int32(a)}
			}
			if items[b].Break == Forced {
				break
			}
		}
	}
	lines := int(nodes[n].key % overfull)
	r := Result{Breaks: o.breaks(lines), Demerits: nodes[n].dem, Overfull: nodes[n].key >= overfull}
	for at, i := n, lines-1; i >= 0; i-- {
		r.Breaks[i] = at - 1
		at = int(nodes[at].prev)
	}
	r.judge(items, &o)
	return r
}

// Greedy fills each line as far as it goes and then the next, as most programs
// do. Its demerits are counted as Break counts them.
func Greedy(items []Item, o Options) Result {
	r := Result{Breaks: o.breaks(0)}
	for a := 0; a < len(items); {
		ln := line{measure: o.measure(a == 0)}
		end, dem, over := -1, int64(0), false
		for b := a; b < len(items); b++ {
			ln.add(items, a, b)
			if end >= 0 && ln.width-o.give(&ln) > ln.measure {
				break
			}
			last := b == len(items)-1
			if items[b].Break == Forbidden && !last {
				continue
			}
			d, ov := ln.demerits(&items[b], last, a == 0, &o)
			if end < 0 || !ov {
				end, dem, over = b, d, ov
			}
			if items[b].Break == Forced {
				break
			}
		}
		r.Breaks = append(r.Breaks, end)
		r.Demerits += dem
		r.Overfull = r.Overfull || over
		a = end + 1
	}
	r.judge(items, &o)
	return r
}

func (o *Options) measure(first bool) layout.Length {
	if first && o.First != 0 {
		return o.First
	}
	return o.Rest
}

// give is how much narrower a line can be made.
func (o *Options) give(ln *line) layout.Length {
	if o.Justify {
		return ln.shrink
	}
	return 0
}

func (o *Options) breaks(n int) []int {
	if cap(o.Buf) >= n && o.Buf != nil {
		return o.Buf[:n]
	}
	return make([]int, n)
}

// A line adds up the items of one line.
type line struct {
	measure                layout.Length
	width, stretch, shrink layout.Length
}

func (ln *line) add(items []Item, a, b int) {
	if b > a {
		s := &items[b-1]
		ln.width += s.Space
		ln.stretch += s.Stretch
		ln.shrink += s.Shrink
	}
	ln.width += items[b].Width
}

// demerits returns what the line costs if it ends with end, and whether it
// runs out of its measure.
func (ln *line) demerits(end *Item, last, first bool, o *Options) (dem int64, over bool) {
	width := ln.width
	penalty := int64(0)
	if !last && end.Break != Forced {
		width += end.Hyphen
		penalty = int64(min(max(end.Penalty, 0), MaxPenalty))
	}
	free := ln.measure - width
	if free+o.give(ln) < 0 || ln.measure <= 0 && width > 0 {
		return (1 + worst + penalty) * (1 + worst + penalty), true
	}
	bad := int64(0)
	switch {
	case free < 0:
		bad = cubed(-free, ln.shrink)
	case last || end.Break == Forced || ln.measure == 0:
	case o.Justify:
		// A line that no stretching fills is left ragged; the fuller the better.
		if bad = cubed(free, ln.stretch); bad == worst {
			bad += int64(free) * 1000 / int64(ln.measure)
		}
	default:
		bad = int64(free) * 1000 / int64(ln.measure)
	}
	dem = (1 + bad + penalty) * (1 + bad + penalty)
	if last {
		if !first && ln.width < o.ShortLast {
			if o.Justify {
				dem += shortJustified
			} else {
				dem += shortFault
			}
		}
		if free < o.LastRoom && o.LastRoom > 0 {
			dem += crowdedFault
		}
	}
	return dem, false
}

// cubed returns 100 (gap/give)³, at most worst.
func cubed(gap, give layout.Length) int64 {
	if gap == 0 {
		return 0
	}
	if give <= 0 || gap >= 5*give {
		return worst
	}
	q := int64(gap) * 1000 / int64(give)
	return min(q*q*q/10_000_000, worst)
}

// judge looks at the last line's faults.
func (r *Result) judge(items []Item, o *Options) {
	if len(r.Breaks) == 0 {
		return
	}
	a := 0
	if n := len(r.Breaks); n > 1 {
		a = r.Breaks[n-2] + 1
	}
	ln := line{measure: o.measure(a == 0)}
	for b := a; b < len(items); b++ {
		ln.add(items, a, b)
	}
	r.Short = a > 0 && ln.width < o.ShortLast
	r.Crowded = o.LastRoom > 0 && ln.measure-ln.width < o.LastRoom
}
