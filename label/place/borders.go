package place

import (
	"bytes"
	"cmp"
	"compress/flate"
	_ "embed"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"slices"
	"sync"
)

// The outlines of countries, generous at coasts: they lie some way out to sea,
// so that no beach or islet falls outside. At land they are right to within
// about a kilometre.
//
// Source: borders.json of the npm package @rapideditor/country-coder 5.6.1,
// copyright 2025 country-coder contributors, ISC licence (the file
// borders_licence.md beside this one); packed by testdata/borders/main.go,
// which says what was changed.
//
//go:embed borders.bin
var bordersPacked []byte

// CountriesAt returns the countries that a place lies in, as alpha-2 codes of
// ISO 3166-1 (and XK for Kosovo), the most specific first: Réunion is "RE",
// "FR"; the Azores are "PT". Where states disagree or documents may rightly name
// another, those come behind: Ceuta is "ES", "MA". It
// returns none for the open sea, for a latitude beyond 90° and for what is no
// number. The slice must not be changed.
func CountriesAt(lat, lon float64) []string {
	b, x, y, ok := locate(lat, lon)
	if !ok {
		return nil
	}
	var buf [8]uint16
	return b.codes(b.holding(x, y, buf[:0]))
}

// IsIn reports whether a place lies in a country, given by its code as
// CountriesAt has it.
func IsIn(code string, lat, lon float64) bool { return slices.Contains(CountriesAt(lat, lon), code) }

// CountriesNear returns the countries that a place lies in or is no farther
// from than so many metres, up to 100 km; those it lies in come first, as
// CountriesAt has them, then the nearest.
func CountriesNear(lat, lon, metres float64) []string {
	b, x, y, ok := locate(lat, lon)
	if !ok {
		return nil
	}
	regions := b.holding(x, y, nil)
	in := len(regions)
	near := map[uint16]float64{}
	b.edgesNear(lat, lon, min(metres, 100e3), func(region uint16, d float64) {
		if was, ok := near[region]; !slices.Contains(regions[:in], region) && (!ok || d < was) {
			near[region] = d
		}
	})
	for r := range near {
		regions = append(regions, r)
	}
	slices.SortFunc(regions[in:], func(r, s uint16) int { return cmp.Or(cmp.Compare(near[r], near[s]), cmp.Compare(r, s)) })
	return b.codes(regions)
}

// CountryDistance returns how far a place lies from a country's outline, in
// metres on a sphere: 0 within it, and +Inf for a code that has no outline.
// Distances of some thousand kilometres are right to a few per cent only.
func CountryDistance(code string, lat, lon float64) float64 {
	best := math.Inf(1)
	b, x, y, ok := locate(lat, lon)
	if !ok {
		return best
	}
	cos := cosine(lat)
	var buf [8]uint16
	for _, r := range b.holding(x, y, buf[:0]) {
		if slices.Contains(b.regions[r].codes, code) {
			return 0
		}
	}
	var nearest *edge
	for _, r := range b.regions {
		if !slices.Contains(r.codes, code) {
			continue
		}
		if e, d := nearestEdge(b.edges[r.from:r.to], lat, lon, cos); d < best {
			best, nearest = d, e
		}
	}
	if nearest == nil {
		return best
	}
	return nearest.distance(lat, lon)
}

// nearestEdge finds the edge nearest to a place as if the earth were flat about it,
// and the square of how far it lies, in degrees of latitude; nil and +Inf if there
// is none.
func nearestEdge(edges []edge, lat, lon, cos float64) (nearest *edge, square float64) {
	square = math.Inf(1)
	for i := range edges {
		if d := edges[i].flat(lat, lon, cos).square(); d < square {
			square, nearest = d, &edges[i]
		}
	}
	return nearest, square
}

// HasBorders reports whether a country has an outline. Those of ISO 3166-1 all
// have, in CountriesAt's sense: as a region of its own or as the country that
// regions belong to.
func HasBorders(code string) bool {
	return slices.ContainsFunc(borders().regions, func(r region) bool { return slices.Contains(r.codes, code) })
}

// IsPart reports whether an outline says that one country's land is part of
// another's: Réunion of France, Taiwan of China, Kosovo of Serbia.
func IsPart(part, of string) bool {
	b := borders()
	return slices.ContainsFunc(b.regions[:b.own], func(r region) bool { return r.codes[0] == part && slices.Contains(r.codes, of) })
}

// region is a country or part of one, with its stretch of the edges.
type region struct {
	codes    []string
	from, to int
	// alone says of a claim that it counts where no outline holds the place.
	alone bool
}

// edge is a piece of an outline, in 1/100,000 degree, from the lower to the
// upper end. Level ones are left out of bands, since no parallel crosses them.
type edge struct {
	x1, y1, x2, y2 int32
	region         uint16
}

// eastOf reports whether a ray to the east from a point crosses the edge.
func (e *edge) eastOf(x, y int64) bool {
	if y < int64(e.y1) || y >= int64(e.y2) {
		return false
	}
	// West of the point where the parallel meets the edge, in whole numbers: the
	// answer is the same on every machine.
	return (x-int64(e.x1))*int64(e.y2-e.y1) < (y-int64(e.y1))*int64(e.x2-e.x1)
}

// bandHeight is how many degrees of latitude share a list of edges.
const (
	bandHeight = 0.5
	bands      = int(180 / bandHeight)
	unit       = 1e5
)

type outlines struct {
	regions []region
	own     int // how many of the regions are outlines; the rest are claims
	edges   []edge
	// band lists the edges that a parallel in the band may cross, the
	// easternmost first: a ray to the east meets no more when one lies
	// wholly to the west.
	band [bands][]int32
}

var borders = sync.OnceValue(func() *outlines {
	b, err := unpack(bordersPacked)
	if err != nil {
		panic("place: borders.bin: " + err.Error()) // it is part of the program
	}
	return b
})

// locate turns degrees into the outlines' units.
func locate(lat, lon float64) (b *outlines, x, y int64, ok bool) {
	if !(lat >= -90 && lat <= 90 && lon >= -360 && lon <= 360) {
		return nil, 0, 0, false
	}
	x, y = inUnits(lat, lon)
	return borders(), x, y, true
}

func inUnits(lat, lon float64) (x, y int64) {
	return int64(math.Floor(wrap(lon) * unit)), int64(math.Floor(lat * unit))
}

// wrap brings a longitude to -180 up to, but not, 180.
func wrap(lon float64) float64 {
	if lon >= 180 {
		return lon - 360
	}
	if lon < -180 {
		return lon + 360
	}
	return lon
}

func bandOf(y int64) int {
	return min(max(int((y+90*unit)/int64(bandHeight*unit)), 0), bands-1)
}

// at appends the regions that hold a point: those whose outlines a ray to the
// east crosses an odd number of times.
func (b *outlines) at(x, y int64, in []uint16) []uint16 {
	for _, i := range b.band[bandOf(y)] {
		e := &b.edges[i]
		if max(int64(e.x1), int64(e.x2)) < x {
			break
		}
		if !e.eastOf(x, y) {
			continue
		}
		if at := slices.Index(in, e.region); at >= 0 {
			in = slices.Delete(in, at, at+1)
		} else {
			in = append(in, e.region)
		}
	}
	return in
}

// holding appends the regions that hold a point, claims last and, but for
// islets that no outline holds, only on land that an outline holds.
func (b *outlines) holding(x, y int64, in []uint16) []uint16 {
	in = b.at(x, y, in)
	if len(in) == 0 {
		return in
	}
	slices.SortStableFunc(in, func(r, s uint16) int {
		switch claim, other := int(r) >= b.own, int(s) >= b.own; {
		case claim == other:
			return 0
		case claim:
			return 1
		}
		return -1
	})
	if int(in[0]) >= b.own {
		in = slices.DeleteFunc(in, func(r uint16) bool { return !b.regions[r].alone })
	}
	return in
}

// codes joins the codes of regions; of one region without a copy.
func (b *outlines) codes(regions []uint16) []string {
	switch len(regions) {
	case 0:
		return nil
	case 1:
		return b.regions[regions[0]].codes
	}
	var all []string
	for _, r := range regions {
		for _, c := range b.regions[r].codes {
			if !slices.Contains(all, c) {
				all = append(all, c)
			}
		}
	}
	return all
}

// edgesNear calls found for every edge within so many metres.
func (b *outlines) edgesNear(lat, lon, metres float64, found func(region uint16, d float64)) {
	reach := metres/degreeMetres*1.01 + 1e-4
	low, high := int64(math.Floor((lat-reach)*unit)), int64(math.Ceil((lat+reach)*unit))
	for i := range b.edges {
		e := &b.edges[i]
		if int64(e.y2) < low || int64(e.y1) > high {
			continue
		}
		if int(e.region) >= b.own {
			break // claims come last
		}
		if d := e.distance(lat, lon); d <= metres {
			found(e.region, d)
		}
	}
}

const degreeMetres = 6371008.8 * math.Pi / 180

// cosine is how long a degree of longitude is beside one of latitude.
func cosine(lat float64) float64 { return math.Max(math.Cos(lat*math.Pi/180), 1e-6) }

// offset is where the nearest point of an edge lies, seen from a place, in
// degrees of latitude, and how far along the edge it is, 0 to 1.
type offset struct{ x, y, along float64 }

func (o offset) square() float64 { return o.x*o.x + o.y*o.y }

// flat finds the nearest point as if the earth were flat about the place.
func (e *edge) flat(lat, lon, cos float64) offset {
	ax, ay := wrap(float64(e.x1)/unit-lon)*cos, float64(e.y1)/unit-lat
	bx, by := wrap(float64(e.x2)/unit-lon)*cos, float64(e.y2)/unit-lat
	dx, dy := bx-ax, by-ay
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = min(max(-(ax*dx+ay*dy)/l, 0), 1)
	}
	return offset{ax + t*dx, ay + t*dy, t}
}

// distance is that from a place to the nearest point of the edge, in metres:
// near the place it is exact, far from it the point is only near enough.
func (e *edge) distance(lat, lon float64) float64 {
	t := e.flat(lat, lon, cosine(lat)).along
	return sphere(lat, lon, float64(e.y1)/unit+t*float64(e.y2-e.y1)/unit, float64(e.x1)/unit+t*float64(e.x2-e.x1)/unit)
}

// sphere is the great-circle distance in metres on a sphere of the earth's mean
// radius.
func sphere(lat1, lon1, lat2, lon2 float64) float64 {
	const rad = math.Pi / 180
	s, t := math.Sin((lat2-lat1)*rad/2), math.Sin((lon2-lon1)*rad/2)
	return 2 * 6371008.8 * math.Asin(math.Min(1, math.Sqrt(s*s+math.Cos(lat1*rad)*math.Cos(lat2*rad)*t*t)))
}

// unpack reads what testdata/borders/main.go writes.
func unpack(packed []byte) (*outlines, error) {
	raw, err := io.ReadAll(flate.NewReader(bytes.NewReader(packed)))
	if err != nil {
		return nil, err
	}
	r := reader{bytes.NewReader(raw), nil}
	b := &outlines{}
	for range r.count() {
		codes := make([]string, r.count())
		for i := range codes {
			codes[i] = string([]byte{r.byte(), r.byte()})
		}
		x, y, from := int64(0), int64(0), len(b.edges)
		for range r.count() {
			b.edges = appendRing(b.edges, r.ring(&x, &y, 1), uint16(len(b.regions)))
		}
		b.regions = append(b.regions, region{codes: slices.Clip(codes), from: from, to: len(b.edges)})
		if r.err != nil {
			return nil, r.err
		}
	}
	if err := b.addClaims(); err != nil {
		return nil, err
	}
	b.index()
	return b, nil
}

// appendRing appends the edges of a region's ring.
func appendRing(edges []edge, ring [][2]int32, region uint16) []edge {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if p[1] > q[1] {
			p, q = q, p
		}
		edges = append(edges, edge{p[0], p[1], q[0], q[1], region})
	}
	return edges
}

// index fills the bands.
func (b *outlines) index() {
	b.edges = slices.Clip(b.edges)
	for i, e := range b.edges {
		if e.y1 == e.y2 {
			continue
		}
		for n := bandOf(int64(e.y1)); n <= bandOf(int64(e.y2)); n++ {
			b.band[n] = append(b.band[n], int32(i))
		}
	}
	for _, list := range b.band {
		slices.SortFunc(list, func(i, j int32) int {
			return cmp.Compare(max(b.edges[j].x1, b.edges[j].x2), max(b.edges[i].x1, b.edges[i].x2))
		})
	}
}

// reader reads numbers and keeps the first error.
type reader struct {
	*bytes.Reader
	err error
}

func (r *reader) keep(err error) {
	if r.err == nil && err != nil {
		r.err = err
	}
}

// count reads how many of something follow; never more than bytes are left.
func (r *reader) count() int {
	n, err := binary.ReadUvarint(r)
	r.keep(err)
	if n > uint64(r.Len()) {
		r.keep(fmt.Errorf("%d entries in %d bytes", n, r.Len()))
		return 0
	}
	return int(n)
}

func (r *reader) number() int64 {
	n, err := binary.ReadVarint(r)
	r.keep(err)
	return n
}

// ring reads the points of a ring, each from the one before, in units of which the
// outlines have so many.
func (r *reader) ring(x, y *int64, scale int64) [][2]int32 {
	ring := make([][2]int32, r.count())
	for i := range ring {
		*x, *y = *x+r.number(), *y+r.number()
		ring[i] = [2]int32{int32(*x * scale), int32(*y * scale)}
	}
	return ring
}

func (r *reader) byte() byte {
	c, err := r.ReadByte()
	r.keep(err)
	return c
}
