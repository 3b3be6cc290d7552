package coord

import (
	"strings"
	"unicode"
)

// A gathered text is cut into the halves found in it.
type gathered struct {
	halves []half
	weak   bool // bare numbers, taken because nothing else was there
	words  bool // words stand between or around bare numbers
	commas bool // commas separate
	broken bool // a mark without a number
	loose  bool // a bare number touches a coordinate
	more   bool // words stand beside that say something else
	either bool // hemispheres before and behind the figures give two readings
}

func (g gathered) and(o gathered) gathered {
	g.halves = append(g.halves, o.halves...)
	g.weak = g.weak && o.weak
	g.words = g.words || o.words
	g.commas = false
	g.broken = g.broken || o.broken
	g.either = g.either || o.either
	g.more = g.more || o.more
	g.loose = g.loose || o.loose
	return g
}

// gather finds the coordinates in a text, with the hemispheres behind the
// figures or before them.
func gather(text string, h Hints) gathered {
	ts, order := heading(scan(text, h.Lang))
	if order != 0 {
		return (&reader{ts: ts}).all().ordered(order)
	}
	behind := (&reader{ts: ts}).all()
	before := (&reader{ts: ts, prefix: true}).all()
	switch a, b := behind.lettered(), before.lettered(); {
	case b > a:
		return before
	case a == b && a >= 2 && opening(ts) && !behind.same(before):
		before.either = true
		return before
	}
	return behind
}

// heading takes "lat/long:" and "long, lat" off, which say the order of what
// follows. order is the axis of the first half, 0 if nothing is said.
func heading(ts []token) (rest []token, order byte) {
	i := 0
	next := func() byte {
		for i < len(ts) {
			switch t := ts[i]; t.kind {
			case axis:
				i++
				return t.axis
			case dot, separator, dash, joining:
				i++
			default:
				return 0
			}
		}
		return 0
	}
	a := next()
	b := next()
	if a == 0 || b == 0 || a == b {
		return ts, 0
	}
	for i < len(ts) && (ts[i].kind == dot || ts[i].kind == separator) {
		i++
	}
	return ts[i:], a
}

// ordered gives two halves the axes that a heading says.
func (g gathered) ordered(first byte) gathered {
	if len(g.halves) == 2 && g.halves[0].axisOf() == 0 && g.halves[1].axisOf() == 0 {
		g.halves[0].axis, g.halves[1].axis = first, 'N'+'E'-first
	}
	return g
}

// opening reports whether the text begins with a hemisphere.
func opening(ts []token) bool { return len(ts) > 0 && ts[0].kind == compass }

// lettered counts the halves with a hemisphere.
func (g gathered) lettered() int {
	n := 0
	for _, h := range g.halves {
		if len(h.points) > 0 {
			n++
		}
	}
	return n
}

func (g gathered) same(o gathered) bool {
	if len(g.halves) != len(o.halves) {
		return false
	}
	for i, h := range g.halves {
		if h.value != o.halves[i].value || h.axisOf() != o.halves[i].axisOf() {
			return false
		}
	}
	return true
}

// all reads every half, or where none has a mark or letter the bare numbers.
func (r *reader) all() gathered {
	var strong, weak gathered
	for i := 0; i < len(r.ts); {
		h, next := r.half(i)
		if next == i {
			t := r.ts[i]
			switch t.kind {
			case word, compass:
				weak.words = weak.words || !t.inside
				strong.more = strong.more || says(t.text)
			case separator:
				weak.commas = weak.commas || t.text == ","
			case degreeMark, minuteMark, secondMark:
				strong.broken = true
			}
			i++
			continue
		}
		weak.halves = append(weak.halves, h)
		if h.strong() {
			strong.halves = append(strong.halves, h)
			i = next
			continue
		}
		strong.more = true // a number of something else
		if n, after := r.half(r.skipMarks(next)); after > next && n.strong() {
			strong.loose = true
		}
		i = next
	}
	strong.commas = weak.commas
	if len(strong.halves) > 0 || strong.broken {
		return strong
	}
	weak.weak = true
	return weak
}

// says reports whether a word beside coordinates says anything: letters that
// are no name of the system.
func says(word string) bool {
	return strings.ContainsFunc(word, unicode.IsLetter) && !gridWord.MatchString(word) && !strings.EqualFold(word, "GPS") && !strings.EqualFold(word, "coordinates") && !strings.EqualFold(word, "coord")
}

// skipMarks passes over full stops and dashes.
func (r *reader) skipMarks(i int) int {
	for r.is(i, dot) || r.is(i, dash) {
		i++
	}
	return i
}
