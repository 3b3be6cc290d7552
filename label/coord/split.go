package coord

import (
	"fmt"
	"regexp"
	"strings"

	"cornerslip/label/lang"
)

// A Split is one half of coordinates whose parts stand in cells of their own;
// a cell that is empty or missing is "".
type Split struct{ Degrees, Minutes, Seconds, Hemisphere string }

// A Cell is one of the cells that coordinates are spread over.
type Cell uint8

// The cells of degrees and of grids.
const (
	CellDegrees Cell = iota
	CellMinutes
	CellSeconds
	CellHemisphere
	CellZone
	CellBand
	CellSquare
	CellEasting
	CellNorthing
)

// A CellError is what is wrong with coordinates that are spread over cells, and
// in which of them it is to be mended.
type CellError struct {
	Cell      Cell
	Longitude bool // of degrees: the cell belongs to the longitude
	Err       error
}

func (e *CellError) Error() string { return e.Err.Error() }

// Unwrap returns what is wrong without the cell.
func (e *CellError) Unwrap() error { return e.Err }

// ReadSplit reads coordinates whose degrees, minutes, seconds and hemispheres
// stand in cells of their own. The notation is what is filled: without seconds
// the point is one of degrees and minutes, without minutes one of degrees. The
// error is a *CellError where one cell is at fault.
func ReadSplit(lat, lon Split, h Hints) Reading {
	if lat.length()+lon.length() > longest {
		return refuse(NotConvertible, "the text is too long to be coordinates")
	}
	a, errA := lat.half('N', h)
	o, errO := lon.half('E', h)
	for _, e := range []*CellError{errA, errO} {
		if e != nil {
			e.Longitude = e == errO
			return Reading{Status: statusOf(e), Err: e}
		}
	}
	exchanged := a.axisOf() == 'E' && o.axisOf() == 'N'
	switch {
	case lat == Split{} || lon == Split{}:
		one := a
		if lat == (Split{}) {
			one = o
		}
		return readOne(one)
	case !exchanged && a.axisOf() == 'E':
		return Reading{Status: Ambiguous, Err: &CellError{CellHemisphere, false, fmt.Errorf("%s is a hemisphere of the longitude: write N or S", lat.Hemisphere)}}
	case !exchanged && o.axisOf() == 'N':
		return Reading{Status: Ambiguous, Err: &CellError{CellHemisphere, true, fmt.Errorf("%s is a hemisphere of the latitude: write E or W", lon.Hemisphere)}}
	}
	if exchanged {
		r := readTwo(a, o, gathered{}, h)
		return r.unsure("latitude and longitude stand in each other's place: swap the two")
	}
	a.axis, o.axis = 'N', 'E'
	for _, x := range []*half{&a, &o} {
		if err := x.inRange(x == &a); err != nil {
			return Reading{Status: Invalid, Err: &CellError{CellDegrees, x == &o, err}}
		}
	}
	// Cells say what is minutes: 12.40 in the degrees' is no 12° 40′.
	a.marked, o.marked = true, true
	r := readTwo(a, o, gathered{}, h)
	if r.Status != OK {
		_, ok, clash := a.sign()
		r.Err = &CellError{CellHemisphere, ok && !clash && len(a.points) < 2, r.Err}
	}
	return r
}

func (s Split) length() int {
	return len(s.Degrees) + len(s.Minutes) + len(s.Seconds) + len(s.Hemisphere)
}

// invalidCell is a part that no place has, such as 72 minutes.
type invalidCell struct{ error }

func statusOf(e *CellError) Status {
	if _, ok := e.Err.(invalidCell); ok {
		return Invalid
	}
	return Ambiguous
}

// cellNames are what the cells of an angle hold.
var cellNames = [...]string{"degrees", "minutes", "seconds"}

// half reads the cells of one half.
func (s Split) half(axis byte, h Hints) (half, *CellError) {
	out := half{axis: axis}
	if s == (Split{}) {
		return out, nil
	}
	texts := [...]string{s.Degrees, s.Minutes, s.Seconds}
	if s.Degrees == "" {
		return out, &CellError{Cell: CellDegrees, Err: fmt.Errorf("the degrees are missing: fill them in, or clear the rest")}
	}
	if s.Hemisphere != "" {
		if err := out.readHemisphere(s.Hemisphere, h); err != nil {
			return out, err
		}
	}
	if s.Minutes == "" && s.Seconds != "" {
		return out, &CellError{Cell: CellMinutes, Err: fmt.Errorf("the minutes are missing: write 0 if there are none")}
	}
	var parts []decimal
	negative, inner := 0, false
	for i, text := range texts {
		if text == "" {
			break
		}
		c, ok := readCell(text, h)
		if !ok {
			if i == 0 && s.Minutes == "" && s.Seconds == "" {
				return s.whole(axis, h)
			}
			return out, &CellError{Cell: Cell(i), Err: fmt.Errorf("not a number of %s: write it in figures alone", cellNames[i])}
		}
		if len(c.points) > 0 {
			if len(out.points) > 0 && !sharePoint(out.points, c.points) {
				return out, &CellError{Cell: CellHemisphere, Err: fmt.Errorf("the hemispheres in two cells contradict each other: keep one")}
			}
			out.points = c.points
		}
		if c.negative {
			negative++
			inner = inner || i > 0
		}
		out.signed = out.signed || c.signed
		out.comma = out.comma || c.comma
		parts = append(parts, c.n)
	}
	if err := minusInside(parts, negative, inner); err != nil {
		return out, err
	}
	out.negative = out.negative || negative > 0
	parts, err := settled(parts)
	if err != nil {
		return out, err
	}
	return out, out.put(parts)
}

// minusInside refuses a minus before minutes or seconds that the degrees do
// not have, unless those are 0 and cannot show theirs.
func minusInside(parts []decimal, negative int, inner bool) *CellError {
	if inner && negative < len(parts) && strings.Trim(parts[0].whole, "0") != "" {
		return &CellError{Cell: CellMinutes, Err: fmt.Errorf("a minus stands before a part alone: write it before the degrees, or the hemisphere in its cell")}
	}
	return nil
}

// put sets the value from parts that may stand together.
func (h *half) put(parts []decimal) *CellError {
	last := parts[len(parts)-1]
	h.as.form = [...]Form{Decimal, DegreesMinutes, DegreesMinutesSeconds}[len(parts)-1]
	wrote, credited := last.places()
	h.as.places, h.credited, h.marked = int8(min(wrote, 12)), credited, true
	if len(parts) == 1 {
		h.raw = last
	}
	for i, p := range parts {
		unit := units[i]
		v, err := p.times(unit)
		switch {
		case err != nil && i == 0:
			return &CellError{Cell: CellDegrees, Err: invalidCell{err}}
		case err != nil || i > 0 && v >= 60*unit:
			hint := ""
			if len(p.whole) == 2 && p.frac == "" { // 38 | 72 may be 38.72°
				hint = fmt.Sprintf("; if they are hundredths of the %s, write %s.%s there", cellNames[i-1], parts[i-1].whole, p.whole)
			}
			return &CellError{Cell: Cell(i), Err: invalidCell{fmt.Errorf("%s %s do not exist: they run from 0 to 59%s", p, cellNames[i], hint)}}
		}
		h.value += v
	}
	return nil
}

// units are what the parts of an angle count.
var units = [...]Angle{Degree, Minute, Second}

// settled drops what a program wrote and no hand did: the ".0" of whole numbers
// where the degrees have it too, decimals that repeat the finer parts, and
// noughts in the finer parts behind decimals.
func settled(parts []decimal) ([]decimal, *CellError) {
	if f := parts[0].frac; f != "" && strings.Trim(f, "0") == "" && (len(parts) > 1 || len(f) == 1) {
		for i := range parts {
			if strings.Trim(parts[i].frac, "0") == "" {
				parts[i].frac = ""
			}
		}
	}
	for i := range len(parts) - 1 {
		p := parts[i]
		if strings.Trim(p.frac, "0") == "" {
			parts[i].frac = ""
			continue
		}
		if noughts(parts[i+1:]) {
			return parts[:i+1], nil
		}
		parts[i].frac = ""
		full, err := p.times(units[i])
		rest := Angle(0)
		for j := i; j < len(parts) && err == nil; j++ {
			var v Angle
			v, err = parts[j].times(units[j])
			rest += v
		}
		if err != nil || (full-rest).abs() > stepOf(units[i], len(p.frac)) {
			return nil, &CellError{Cell: Cell(i), Err: fmt.Errorf("has decimals, and the %s beside it say otherwise: keep one", cellNames[i+1])}
		}
	}
	return parts, nil
}

func noughts(parts []decimal) bool {
	for _, p := range parts {
		if strings.Trim(p.whole+p.frac, "0") != "" {
			return false
		}
	}
	return true
}

// whole reads a half that stands in the degrees' cell with marks and all.
func (s Split) whole(axis byte, h Hints) (half, *CellError) {
	text := s.Degrees
	if s.Hemisphere != "" && s.Hemisphere != "+" && s.Hemisphere != "-" {
		text += " " + s.Hemisphere
	}
	g := gather(prepare(text).text, h)
	if len(g.halves) != 1 || g.broken || g.halves[0].err != nil {
		return half{}, &CellError{Cell: CellDegrees, Err: fmt.Errorf("not a number of degrees: write it in figures alone")}
	}
	out := g.halves[0]
	if s.Hemisphere == "-" {
		out.signed, out.negative = true, true
	}
	if out.axis == 0 {
		out.axis = axis
	}
	return out, nil
}

// readHemisphere reads a cell for the hemisphere: a letter, a word or a sign.
func (h *half) readHemisphere(text string, hints Hints) *CellError {
	word := strings.Trim(marks.Replace(text), " .'\"")
	switch word {
	case "+", "1", "+1":
		h.signed = true
		return nil
	case "-", "-1":
		h.signed, h.negative = true, true
		return nil
	}
	if f := strings.Fields(word); len(f) > 1 && lang.FindAxis(strings.Trim(f[1], ".")) != 0 { // North latitude
		word = strings.Trim(f[0], ".")
	}
	p := compassOf(word, hints.Lang)
	if len(p) == 0 {
		want := "N or S"
		if h.axis == 'E' {
			want = "E or W"
		}
		return &CellError{Cell: CellHemisphere, Err: fmt.Errorf("no hemisphere: write %s", want)}
	}
	h.points = p
	return nil
}

// sharePoint reports whether two lists of points have one in common.
func sharePoint(a, b []lang.Compass) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}

// A cellNumber is the number in one cell.
type cellNumber struct {
	n                       decimal
	signed, negative, comma bool
	points                  []lang.Compass
}

// cellForm is a number with what people leave of its unit and hemisphere:
// 41°, N 41, 42', 56" N, 12 min.
var cellForm = regexp.MustCompile(`^(\p{L}+)?\.?\s*([+-])?\s*(\d{1,20})(?:([.,])(\d*))?(\s*)(?:°|'{1,2}|"|degrees?|degs|deg|degrés?|grados?|graus?|grad|minutes?|minut[eo]n?s?|mins|min|seconds?|secondes?|second[eo]s?|segundos?|sekunden?|secs|sec|seg|sek|d|m|s)?\.?\s*(\p{L}+)?\.?$`)

// readCell reads the number in a cell for degrees, minutes or seconds.
func readCell(text string, h Hints) (cellNumber, bool) {
	g := cellForm.FindStringSubmatch(strings.TrimSpace(marks.Replace(text)))
	if g == nil {
		return cellNumber{}, false
	}
	c := cellNumber{n: decimal{g[3], g[5]}, signed: g[2] != "", negative: g[2] == "-", comma: g[4] == ","}
	if len(c.n.whole) > 3 {
		c.n.whole = strings.TrimLeft(c.n.whole, "0")
		if c.n.whole == "" {
			c.n.whole = "0"
		}
	}
	if g[6] == "" && strings.EqualFold(g[7], "O") {
		return cellNumber{}, false // a nought, or the west
	}
	for _, w := range []string{g[1], g[7]} {
		if w == "" {
			continue
		}
		p := compassOf(w, h.Lang)
		if len(p) == 0 || len(c.points) > 0 {
			return cellNumber{}, false
		}
		c.points = p
	}
	return c, true
}

// compassOf is what a hemisphere's word means, upper or lower case; "ö" is
// Osten.
func compassOf(word string, l lang.Tag) []lang.Compass {
	if strings.EqualFold(word, "ö") || strings.EqualFold(word, "ø") {
		return []lang.Compass{lang.East}
	}
	return lang.FindCompass(word, l)
}
