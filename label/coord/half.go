package coord

import (
	"fmt"

	"cornerslip/label/lang"
)

// A half is one of two coordinates as it was understood.
type half struct {
	value    Angle // without sign
	negative bool
	signed   bool           // a sign was written
	points   []lang.Compass // what the hemisphere can be
	axis     byte           // 'N' or 'E' from a word such as "lat."
	as       written
	credited int  // decimals that count
	marked   bool // °, ′ or ″ was written
	comma    bool // the decimal mark is a comma
	dashed   bool // a dash stands before it, which may be a minus
	packed   bool // degrees, minutes and seconds without a gap
	slip     bool // decimal minutes marked as seconds
	ranged   bool // from some minutes to others: 38° 28-29'
	raw      decimal
	err      error
}

// strong reports whether the half is a coordinate by its own look.
func (h half) strong() bool { return h.marked || len(h.points) > 0 || h.axis != 0 }

// step returns the unit of the last figure that counts.
func (h half) step() Angle { return stepOf(unitOf(h.as.form), h.credited) }

// A reader goes through the tokens of a text.
type reader struct {
	ts     []token
	prefix bool // hemispheres stand before the figures
}

func (r *reader) at(i int) token {
	if i < 0 || i >= len(r.ts) {
		return token{kind: word}
	}
	return r.ts[i]
}

func (r *reader) is(i int, k kind) bool {
	return i >= 0 && i < len(r.ts) && r.ts[i].kind == k
}

// half reads a coordinate at token i. It returns the token behind it, or i if
// there is none.
func (r *reader) half(i int) (half, int) {
	var h half
	j := i
	for ; r.is(j, axis) || r.is(j, dot) && j > i || r.prefix && r.is(j, compass) && len(h.points) == 0; j++ {
		if t := r.ts[j]; t.kind == axis {
			h.axis = t.axis
		} else if t.kind == compass {
			h.points = t.points
		}
	}
	h.dashed = r.is(i-1, dash)
	if r.is(j, minus) || r.is(j, plus) {
		h.signed, h.negative = true, r.ts[j].kind == minus
		j++
	}
	if !r.is(j, number) {
		return h, i
	}
	j = r.figures(&h, j)
	return h, r.after(&h, j)
}

// figures reads degrees, minutes and seconds from token i.
func (r *reader) figures(h *half, i int) int {
	parts := []decimal{r.ts[i].n}
	kinds := []kind{number}
	h.comma = r.ts[i].comma
	j := i + 1
	if r.is(j, degreeMark) {
		kinds[0] = degreeMark
		h.marked = true
		j++
		j = r.skipDot(j)
	}
	for len(parts) < 3 && parts[len(parts)-1].frac == "" {
		k := j
		if r.is(k, dash) || r.is(k, dot) && (r.at(k).text == ":" || r.unitWord(k-1)) || r.is(k, joining) && r.unitWord(k-1) {
			k++
		}
		if !r.is(k, number) || len(r.ts[k].n.whole) > 2 || r.at(k).inside != r.at(i).inside {
			break
		}
		mark := r.at(k + 1).kind
		// A second number without marks belongs to the first only where the
		// rest shows it: a mark, or the hemisphere behind two or three.
		if mark != minuteMark && mark != secondMark && !r.bareMinutes(k, len(parts), h) {
			break
		}
		if k > j && len(parts) == 2 && mark == minuteMark && kinds[0] == degreeMark {
			h.ranged = true
			j = k + 2
			break
		}
		parts = append(parts, r.ts[k].n)
		h.comma = h.comma || r.ts[k].comma
		j = k + 1
		last := number
		if mark == minuteMark || mark == secondMark {
			last = mark
			h.marked = true
			j++
			if mark == minuteMark && r.is(j, minuteMark) { // ' ' for "
				last = secondMark
				j++
			}
		}
		kinds = append(kinds, last)
	}
	h.assemble(parts, kinds)
	return j
}

// unitWord reports whether the token is a mark written as a word: 42 min.
func (r *reader) unitWord(i int) bool {
	return (r.is(i, minuteMark) || r.is(i, secondMark)) && len(r.at(i).text) > 1
}

func (r *reader) skipDot(j int) int {
	if r.is(j, dot) {
		return j + 1
	}
	return j
}

// bareMinutes reports whether the number at k, without a mark, is minutes or
// seconds of the half being read, of which n parts are known.
func (r *reader) bareMinutes(k, n int, h *half) bool {
	switch {
	case r.is(k+1, degreeMark):
		return false // the next half's degrees
	case r.prefix:
		// Up to the next hemisphere, separator or the end.
		return len(h.points) > 0 || h.marked
	case h.marked && n == 1:
		return true // 15°19N
	case h.axis != 0 && r.tight(k):
		return true // lat. 38 42 32
	}
	// 12 30 N, 12 30 45 N: a hemisphere must follow.
	for i := k + 1; i <= k+4; i++ {
		switch r.at(i).kind {
		case compass:
			return true
		case dot:
			if r.at(i).text != ":" {
				return false
			}
		case number, dash, minuteMark, secondMark:
		default:
			return false
		}
	}
	return false
}

// tight reports whether the number at k stands right behind another one.
func (r *reader) tight(k int) bool { return r.is(k-1, number) }

// assemble sets the half's value from its parts.
func (h *half) assemble(parts []decimal, kinds []kind) {
	last := parts[len(parts)-1]
	if len(parts) == 1 {
		h.raw = last
	}
	h.as.form = [...]Form{Decimal, DegreesMinutes, DegreesMinutesSeconds}[len(parts)-1]
	if len(parts) == 2 && kinds[1] == secondMark {
		h.slip = true // 41° 3.424": minutes are wanted first
	}
	wrote, credited := last.places()
	h.as.places, h.credited = int8(min(wrote, 12)), credited
	units := [...]Angle{Degree, Minute, Second}
	for i, p := range parts {
		v, err := p.times(units[i])
		if err == nil && i > 0 && v >= 60*units[i] {
			err = fmt.Errorf("%s %s do not exist: they run from 0 to 59", p, [...]string{"", "minutes", "seconds"}[i])
		}
		if err != nil && h.err == nil {
			h.err = err
		}
		h.value += v
	}
}

// after reads what stands behind the figures: hemisphere and axis.
func (r *reader) after(h *half, j int) int {
	k := r.skipDot(j)
	if r.is(k, dash) && r.at(k).glued && r.is(k+1, compass) && r.at(k+1).glued && !r.is(k+2, number) {
		k++ // 32"-N
	}
	if !r.prefix && len(h.points) == 0 {
		if r.is(k, axis) && r.is(r.skipDot(k+1), compass) && h.axis == 0 { // 12° Lat. N
			h.axis = r.ts[k].axis
			k = r.skipDot(k + 1)
		}
		if r.is(k, compass) && !r.opens(k) {
			h.points = r.ts[k].points
			j = k + 1
			k = r.skipDot(j)
		}
	}
	if r.is(k, axis) && h.axis == 0 && !r.opens(k) {
		h.axis = r.ts[k].axis
		j = k + 1
	}
	h.unpack()
	return j
}

// opens reports whether the word at k belongs to figures behind it rather
// than to those before: an axis with its own number.
func (r *reader) opens(k int) bool {
	if r.at(k).kind != axis {
		return false
	}
	k = r.skipDot(k + 1)
	return r.is(k, number) || r.is(k, minus) || r.is(k, plus)
}

// unpack takes figures apart that were run together: 361713.6N is 36° 17′
// 13.6″ N, 08329W is 83° 29′ W.
func (h *half) unpack() {
	n := len(h.raw.whole)
	if h.marked || h.as.form != Decimal || n < 4 {
		return
	}
	degrees := 2 + n%2
	lat := h.axisOf() == 'N'
	if n > 7 || n < 6 && len(h.points) == 0 || lat && n%2 == 1 {
		return
	}
	w := h.raw.whole
	parts := []decimal{{whole: w[:degrees]}}
	for rest := w[degrees:]; rest != ""; rest = rest[2:] {
		parts = append(parts, decimal{whole: rest[:2]})
	}
	parts[len(parts)-1].frac = h.raw.frac
	h.packed, h.value, h.err = true, 0, nil
	h.assemble(parts, []kind{number, number, number})
}

// axisOf returns 'N' for a latitude, 'E' for a longitude, 0 if the half does
// not say.
func (h half) axisOf() byte {
	if len(h.points) > 0 {
		switch h.points[0] {
		case lang.North, lang.South:
			return 'N'
		}
		return 'E'
	}
	return h.axis
}
