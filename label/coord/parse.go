package coord

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cornerslip/label/lang"
)

// longest is the longest text that is looked at.
const longest = 1000

// Read reads coordinates as [Parse] does and tells all it found out.
func Read(text string, h Hints) Reading {
	if len(text) > longest {
		return refuse(NotConvertible, "the text is too long to be coordinates")
	}
	if r, ok := readStandard(text); ok {
		return r
	}
	t := prepare(text)
	t.elsewhere(h.Datum)
	if r, ok := withGrid(t, h); ok {
		return r
	}
	if r, ok := readGrid(t); ok {
		return r.of(t)
	}
	r := readHalves(gather(t.text, h), h).of(t)
	if r.Status != OK {
		if in, ok := h.System.in(text, t, h); ok {
			return in
		}
	}
	return r
}

// gridBeside is a grid reference that stands beside degrees.
var gridBeside = regexp.MustCompile(`(?i)[;,/(\[]?\s*(?:(?:UTM|MGRS)\b:?\s*)?\b\d{1,2}\s?[C-HJ-NP-X]\s?(?:[A-HJ-NP-Z][A-HJ-NP-V]\s?(?:\d{4}\s\d{4}|\d{5}\s\d{5}|\d{4}|\d{6}|\d{8}|\d{10})\b|\d{6}(?:\s?m?\s?E)?[\s,;/]+\d{6,7}(?:\s?m?\s?N\b)?)\s*[)\]]?`)

// withGrid reads degrees beside which the same place is given on a grid; false
// if the text has not both.
func withGrid(t prepared, h Hints) (Reading, bool) {
	if !strings.Contains(t.text, "°") {
		return Reading{}, false
	}
	at := gridBeside.FindString(t.grid)
	if at == "" {
		return Reading{}, false
	}
	r := Read(strings.Replace(t.grid, at, " ; ", 1), h)
	grid := Read(strings.Trim(at, " ;,/()[]"), h)
	if r.Status != OK || len(grid.Choices) == 0 && grid.Status != OK && !grid.Local {
		return Reading{}, false
	}
	if r.Point.Datum == "" {
		r.Point.Datum = t.datum
	}
	// A datum of old may lie half a kilometre off, 0.005° of latitude.
	within := r.Point.step + Angle(grid.Point.grid.Step)*(Degree/111_200_000) + Degree/200
	for _, p := range append(grid.Choices, grid.Point) {
		if (p.Lat-r.Point.Lat).abs() <= within && (p.Lon-r.Point.Lon).abs() <= 2*within {
			r.More = true
			return r, true
		}
	}
	return r.unsure("degrees and grid give different places: keep one"), true
}

// ReadPair reads coordinates as [ParsePair] does and tells all it found out.
func ReadPair(lat, lon string, h Hints) Reading {
	if len(lat)+len(lon) > longest {
		return refuse(NotConvertible, "the text is too long to be coordinates")
	}
	t := prepare(lat + " ; " + lon)
	t.elsewhere(h.Datum)
	if r, ok := readGrid(t); ok {
		return r.of(t)
	}
	ta, to := prepare(lat), prepare(lon)
	a, o := gather(ta.text, h), gather(to.text, h)
	if len(a.halves) == 1 && len(o.halves) == 1 {
		x, y := &a.halves[0], &o.halves[0]
		if x.axisOf() == 'E' || y.axisOf() == 'N' {
			r := readHalves(a.and(o), h).of(t)
			if r.Status == OK {
				r.Status, r.Err = Ambiguous, errors.New("latitude and longitude stand in each other's place: swap the two")
			}
			return r
		}
		x.axis, y.axis = 'N', 'E'
	}
	r := readHalves(a.and(o), h).of(t)
	if r.Status != OK && h.System.Grid != "" {
		if in, ok := h.System.in(lat+" "+lon, t, h); ok {
			return in
		}
	}
	return r
}

func refuse(s Status, format string, args ...any) Reading {
	return Reading{Status: s, Err: fmt.Errorf(format, args...)}
}

// unsure makes a reading ambiguous, unless it is worse already.
func (r Reading) unsure(format string, args ...any) Reading {
	if r.Status == OK {
		r.Status, r.Err = Ambiguous, fmt.Errorf(format, args...)
	}
	return r
}

// of adds what was taken out of the text beforehand.
func (r Reading) of(t prepared) Reading {
	r.More = r.More || t.more
	if r.Point != (Point{}) {
		r.Point.Datum = t.datum
	}
	for i := range r.Choices {
		r.Choices[i].Datum = t.datum
	}
	if t.doubt {
		r = r.unsure("the text carries a question mark: write what is certain")
		r.Choices = nil
	}
	if t.local && r.Point.onGrid() {
		r.Local = r.Status == OK
		r = r.unsure("the grid is on the datum %s, some hundred metres from WGS 84: convert it first", t.localDatum())
	}
	switch {
	case t.meridian == "" || !r.HasLat && !r.HasLon, !t.zero && r.HasLon && isThere(t.meridian, r.Point.Lon):
	case t.zero:
		return Reading{Status: NotConvertible, Err: fmt.Errorf("the longitude counts from %s: convert it to Greenwich first", t.meridian)}
	default:
		r = r.unsure("%s behind the longitude may be the meridian that it counts from: part the two with a comma, or convert it to Greenwich", t.meridian)
	}
	return r
}

// readHalves turns the halves found in a text into a reading.
func readHalves(g gathered, hints Hints) Reading {
	hs := g.halves
	switch {
	case g.broken:
		return refuse(NotConvertible, "there is a degree or minute mark without a number: write 41° 14′ 02″ N, 8° 36′ 40″ W")
	case g.weak && g.words, len(hs) == 0:
		return refuse(NotConvertible, "there are no coordinates in the text: write 41.2339 N, 8.6111 W")
	case g.weak && len(hs) > 2:
		return bareSexagesimal(hs, hints)
	case g.weak && len(hs) <= 2 && tooLarge(hs):
		return refuse(NotConvertible, "the numbers are no degrees: write 41.2339 N, 8.6111 W")
	case g.weak && len(hs) == 1 && (hs[0].as.form == Decimal && hs[0].raw.frac == "" || hs[0].err != nil):
		return refuse(NotConvertible, "one whole number is no pair of coordinates: write 41.2339 N, 8.6111 W")
	case len(hs) == 1:
		return readOne(hs[0])
	}
	i, j := pairOf(hs)
	r := readTwo(hs[i], hs[j], g, hints)
	r.More = g.more || len(hs) > 2
	if r.Status == Invalid && g.weak && len(hs) == 2 && len(hs[0].raw.whole) >= 6 && len(hs[1].raw.whole) >= 6 {
		return refuse(NotConvertible, "the numbers are no degrees, and for metres nothing names the grid: write the UTM zone before them, as 29T 532123 4567890, or the name of another grid")
	}
	if len(hs) > 2 && !repeats(hs, r, hints) {
		if slices.ContainsFunc(hs, func(h half) bool { return h.dashed }) {
			return r.unsure(ofRange)
		}
		r = r.unsure("there are more than two coordinates: keep one pair")
	}
	return r
}

// ofRange is said of coordinates from and to.
const ofRange = "a range, not a place: write its middle, and how many metres off that may be as its uncertainty"

// tooLarge reports whether bare numbers are years and the like.
func tooLarge(hs []half) bool {
	return slices.ContainsFunc(hs, func(h half) bool {
		return len(h.raw.whole) >= 4 && len(h.raw.whole) <= 5 && h.err != nil
	})
}

// bareSexagesimal answers four or six numbers without any mark or letter.
func bareSexagesimal(hs []half, hints Hints) Reading {
	if len(hs) != 4 && len(hs) != 6 {
		return refuse(NotConvertible, "the numbers are no pair of coordinates: write 41.2339 N, 8.6111 W")
	}
	for i, h := range hs {
		limit := 60 * Degree
		if i%(len(hs)/2) == 0 {
			limit = 181 * Degree
		}
		if h.err != nil || h.value >= limit || h.raw.frac != "" && (i+1)%(len(hs)/2) != 0 {
			return refuse(NotConvertible, "the numbers are no pair of coordinates: write 41.2339 N, 8.6111 W")
		}
	}
	if r, ok := signedSexagesimal(hs, hints); ok {
		return r
	}
	return refuse(Ambiguous, "the hemispheres are not written: add N or S, E or W")
}

// signedSexagesimal reads numbers of which the degrees bear signs: -23 42 43,
// -46 33 10.
func signedSexagesimal(hs []half, hints Hints) (Reading, bool) {
	n := len(hs) / 2
	var pair [2]half
	for i := range pair {
		part := hs[i*n : i*n+n]
		pair[i] = part[0]
		parts := make([]decimal, n)
		kinds := make([]kind, n)
		for j, h := range part {
			if j > 0 && h.signed || h.dashed || h.comma {
				return Reading{}, false
			}
			parts[j], kinds[j] = h.raw, number
		}
		pair[i].value, pair[i].marked = 0, true
		pair[i].assemble(parts, kinds)
	}
	if !pair[0].signed && !pair[1].signed {
		return Reading{}, false
	}
	return readTwo(pair[0], pair[1], gathered{}, hints), true
}

// pairOf returns which halves are the pair: the first latitude and the first
// longitude, in their order, or simply the first two.
func pairOf(hs []half) (int, int) {
	first := func(axis byte) int {
		return slices.IndexFunc(hs, func(h half) bool { return h.axisOf() == axis })
	}
	i, j := first('N'), first('E')
	if i < 0 || j < 0 {
		return 0, 1
	}
	return min(i, j), max(i, j)
}

// repeats reports whether the text gives the same place twice, in two
// notations.
func repeats(hs []half, r Reading, hints Hints) bool {
	if len(hs) != 4 || r.Status != OK {
		return false
	}
	again := readTwo(hs[2], hs[3], gathered{}, hints)
	if again.Status != OK {
		return false
	}
	within := max(r.Point.step, again.Point.step)
	return (r.Point.Lat-again.Point.Lat).abs() <= within && (r.Point.Lon-again.Point.Lon).abs() <= within
}

// readOne answers a latitude or a longitude alone.
func readOne(h half) Reading {
	if h.err != nil {
		return Reading{Status: Invalid, Err: h.err}
	}
	lat := h.axisOf() != 'E' && (h.axisOf() == 'N' || h.value <= 90*Degree)
	if err := h.inRange(lat); err != nil {
		return Reading{Status: Invalid, Err: err}
	}
	other := "longitude"
	if !lat {
		other = "latitude"
	}
	r := refuse(NotConvertible, "the %s is missing: write both", other)
	v, ok, _ := h.sign()
	if !ok && (h.marked || h.packed) {
		return r
	}
	r.Point.Form, r.Point.lat, r.Point.lon = h.as.form, h.as, h.as
	if lat {
		r.Point.Lat, r.HasLat = v, true
	} else {
		r.Point.Lon, r.HasLon = v, true
	}
	return r
}

func (h half) inRange(lat bool) error {
	name, limit := "latitude", 90*Degree
	if !lat {
		name, limit = "longitude", 180*Degree
	}
	if h.value > limit {
		return fmt.Errorf("%s %s° is beyond %d°", name, h.value.Decimal(4), limit/Degree)
	}
	return nil
}

// sign returns the half with its sign; ok is false if neither sign nor
// hemisphere tells it, clash is true if they contradict each other.
func (h half) sign() (v Angle, ok, clash bool) {
	v = h.value
	if len(h.points) == 1 {
		minus := h.points[0] == lang.South || h.points[0] == lang.West
		if minus {
			v = -v
		}
		return v, true, h.signed && h.negative != minus && h.value != 0
	}
	if h.negative {
		v = -v
	}
	return v, h.signed && len(h.points) == 0, false
}

// readTwo answers two halves.
func readTwo(a, b half, g gathered, hints Hints) Reading {
	for _, h := range []half{a, b} {
		if h.err != nil {
			return Reading{Status: Invalid, Err: h.err}
		}
	}
	a, b, err := inOrder(a, b)
	if err != nil {
		return Reading{Status: Ambiguous, Err: err}
	}
	if a.value > 180*Degree && b.value > 180*Degree && !a.strong() && !b.strong() {
		return refuse(NotConvertible, "the numbers are no degrees: write 41.2339 N, 8.6111 W")
	}
	lat, lon := a.inRange(true), b.inRange(false)
	switch {
	case lat != nil && lon != nil:
		return refuse(Invalid, "%w, and %w", lat, lon)
	case lat != nil:
		return Reading{Status: Invalid, Err: lat}
	case lon != nil:
		return Reading{Status: Invalid, Err: lon}
	}
	r := Reading{Status: OK, HasLat: true, HasLon: true}
	r = r.signs(a, b, hints)
	if !r.HasLat && !r.HasLon {
		r.Choices = choices(a, b)
		return r
	}
	r.Point.write(a, b)
	if r.Status == Ambiguous {
		r.Choices = choices(a, b)
		// The other half must be sure.
		r.Usual = r.Choices != nil && len(r.Choices) == 2 && (len(a.points) > 1 || len(b.points) > 1)
	}
	return r.doubts(a, b, g)
}

// write keeps how the two halves were written.
func (p *Point) write(a, b half) {
	p.lat, p.lon = a.as, b.as
	p.step = min(a.step(), b.step())
	p.Form = max(a.as.form, b.as.form)
}

// choices are the points that two halves can be whose hemispheres do not say:
// none where a sign contradicts a hemisphere, or a dash may be a sign.
func choices(a, b half) []Point {
	var all []Point
	for _, lat := range a.either() {
		for _, lon := range b.either() {
			p := Point{Lat: lat, Lon: lon}
			p.write(a, b)
			all = append(all, p)
		}
	}
	if len(all) < 2 {
		return nil
	}
	return all
}

// either returns the values of a half whose sign is known, or may be both.
func (h half) either() []Angle {
	v, ok, clash := h.sign()
	switch {
	case clash || h.dashed:
		return nil
	case ok || h.value == 0:
		return []Angle{v}
	}
	return []Angle{h.value, -h.value}
}

// inOrder returns the latitude first.
func inOrder(a, b half) (half, half, error) {
	x, y := a.axisOf(), b.axisOf()
	switch {
	case x == y && x != 0:
		return a, b, fmt.Errorf("there are two %ss: one must be the other", map[byte]string{'N': "latitude", 'E': "longitude"}[x])
	case x == 'E' || y == 'N':
		a, b = b, a
	case x == 0 && y == 0 && a.value > 90*Degree && b.value <= 90*Degree:
		a, b = b, a // 139.92, -23.712 can only be longitude first
	}
	return a, b, nil
}

// signs gives both halves their signs, from letters, signs or hints. Where
// one half has a sign, the other means what it says.
func (r Reading) signs(a, b half, hints Hints) Reading {
	lat, okA, clashA := a.sign()
	lon, okB, clashB := b.sign()
	r.Point.Lat, r.Point.Lon = lat, lon
	lettered := len(a.points) > 0 || len(b.points) > 0
	if !lettered && (okA || okB) {
		okA, okB = true, true
	}
	if !lettered && !okA && (hints.Signed || hints.South || hints.West) {
		if hints.South {
			r.Point.Lat = -lat
		}
		if hints.West {
			r.Point.Lon = -lon
		}
		okA, okB = true, true
	}
	// Nought is north and south, or east and west, at once.
	okA, okB = okA || a.value == 0 && (lettered || b.marked), okB || b.value == 0 && (lettered || a.marked)
	exact := a.as.form != Decimal || b.as.form != Decimal || a.packed
	switch {
	case !lettered && okA && okB && (a.dashed || b.dashed):
		return r.unsure("the dash between the numbers may be a minus: write N or S, E or W")
	case clashA || clashB:
		return r.unsure("sign and hemisphere contradict each other: keep one")
	case len(a.points) > 1 || len(b.points) > 1:
		r.Point.Lon, r.HasLon = 0, false
		return r.unsure("the letter %s means east in some languages and west in others: write E or W", "O")
	case okA && okB:
		return r
	case !lettered && exact:
		r.HasLat, r.HasLon, r.Point = false, false, Point{}
		return r.unsure("the hemispheres are not written: add N or S, E or W")
	case !lettered:
		return r.unsure("neither sign nor hemisphere is written: add N or S, E or W")
	case !okA:
		r.Point.Lat, r.HasLat = 0, false
		return r.unsure("the hemisphere of the latitude is not written: add N or S")
	}
	r.Point.Lon, r.HasLon = 0, false
	return r.unsure("the hemisphere of the longitude is not written: add E or W")
}

// doubts names what makes a pair ambiguous though it can be read.
func (r Reading) doubts(a, b half, g gathered) Reading {
	lettered := len(a.points) > 0 && len(b.points) > 0
	switch {
	case g.loose:
		return r.unsure("a number stands before the degrees and belongs to nothing: write 41° 14′ 02″ N, 8° 36′ 40″ W")
	case g.either:
		return r.unsure("the hemispheres can belong to the figures before or behind them: write 41.2339 N, 8.6111 W")
	case a.ranged || b.ranged:
		return r.unsure(ofRange)
	case a.slip || b.slip:
		return r.unsure("minutes are marked as seconds: write 41° 3.424′")
	case !r.HasLat || !r.HasLon:
		return r
	case g.commas && (a.comma || b.comma) && !a.marked && !b.marked && !lettered:
		return r.unsure("the comma is decimal mark and separator both: write decimals with a point")
	case lettered && !a.marked && !b.marked && typedMinutes(a) && typedMinutes(b) && max(len(a.raw.frac), len(b.raw.frac)) == 2:
		return r.unsure("the decimals may be minutes: write 12.40° or 12° 40′")
	}
	return r
}

// typedMinutes reports whether the decimals of a half could be minutes typed
// behind a point: one or two of them, below 60.
func typedMinutes(h half) bool {
	f := h.raw.frac
	return h.as.form == Decimal && !h.packed && len(f) >= 1 && len(f) <= 2 && strings.Compare(f, "6") < 0
}
