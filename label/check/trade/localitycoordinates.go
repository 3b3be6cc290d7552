package trade

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// position is where a locality lies for some of its records: 44 bytes.
type position struct {
	lat, lon    float32
	uncertainty float32 // metres, the precision written included
	count       int32
	cell
	text, size uint32 // of its latitude, in localityTable.texts
	next       int32  // the next position of the same words; 0 is none
	decimal    bool
	detailed   bool // what the words are; in the first position of them
}

// from is the distance between two positions in metres; near is whether their
// uncertainties, and what the words may mean, explain it.
func (p position) from(q position) float64 {
	return distance(float64(q.lat), float64(q.lon), float64(p.lat), float64(p.lon))
}

func (p position) near(q position, reach float64) bool {
	return p.from(q) <= reach+float64(q.uncertainty)+float64(p.uncertainty)
}

// placeTerms are the terms that say where a record is from.
var placeTerms = append([]string{"country", "countryCode"}, coordinateTerms...)

// localityTable keeps 30 bytes for each distinct text of a place, and 50 for
// each of its positions.
type localityTable struct {
	file      string
	places    index[int32] // by words, the first position
	positions []position   // from 1
	texts     []byte
}

// maxPositions bounds what is kept of one text: one with more says little.
const maxPositions = 40

func (t *localityTable) Feed(r *check.Record) {
	locality := r.Text("locality")
	// What is wrong with the coordinates or the country by themselves is said.
	if !r.HasCoordinates || len(locality) < 12 || r.Doubted(placeTerms...) {
		return
	}
	key := sum(locality, r.Text("country"), r.Text("stateProvince"), r.Text("county"), r.Text("minimumElevationInMeters"))
	p := position{
		lat: float32(r.Coordinates.Lat.Degrees()), lon: float32(r.Coordinates.Lon.Degrees()),
		uncertainty: float32(r.Uncertainty + float64(r.Coordinates.Uncertainty())), count: 1,
	}
	f := r.Field("decimalLatitude")
	p.decimal = f.Text != ""
	if !p.decimal {
		f = r.Field("verbatimCoordinates")
		if f.Text == "" {
			return
		}
	}
	p.cell = cellOf(f)
	first := t.places.find(key)
	if first == nil {
		p.detailed = detailed(locality)
		t.file = f.Origin.File
		t.places.add(key, t.keep(p, f.Text))
		return
	}
	i := *first
	for n := 1; ; n++ {
		q := &t.positions[i]
		if q.lat == p.lat && q.lon == p.lon {
			q.count++
			q.uncertainty = max(q.uncertainty, p.uncertainty)
			return
		}
		if q.next == 0 {
			if n < maxPositions {
				at := t.keep(p, f.Text)
				t.positions[i].next = at
			}
			return
		}
		i = q.next
	}
}

// keep keeps a position with the text it was read from, and returns its place.
func (t *localityTable) keep(p position, text string) int32 {
	if t.positions == nil {
		t.positions = make([]position, 1)
	}
	p.text, p.size = uint32(len(t.texts)), uint32(len(text))
	t.texts = append(t.texts, text...)
	t.positions = append(t.positions, p)
	return int32(len(t.positions) - 1)
}

// wholeArea is the name of a park, a forest or mountains with nothing beside it.
var wholeArea = regexp.MustCompile(`(?i)^[^,;:.\d]*(\b(national|state|provincial|regional|nature|natural|game|forest|wildlife|biosphere) (park|preserve|reserve|forest|monument|refuge|sanctuary|grassland|seashore)|\b(wilderness|mountains|range|desert|plateau|peninsula|archipelago|islands)|nationalpark|naturpark)$|` +
	`(?i)^(parque|parc|floresta|reserva|réserve|parco|selva) (nacional|natural|national|régional|regional|estadual|naturelle|nazionale|biológica|ecológica)( [^,;:.\d]*)?$`)

// detailed reports whether a text names a spot rather than a region: it has
// four words or a figure, and is not the name of a park alone.
func detailed(s string) bool {
	if !strings.ContainsAny(s, ",;:.0123456789") && wholeArea.MatchString(strings.TrimSpace(s)) { // as seldom
		return false
	}
	words := 0
	for range strings.FieldsSeq(s) {
		if words++; words == 4 {
			return true
		}
	}
	return strings.ContainsAny(s, "0123456789")
}

// How far the words for a spot and for a region may reach, in metres.
const (
	spotReach   = 15e3
	regionReach = 80e3
)

func (t *localityTable) End() []label.Finding {
	var all []label.Finding
	var positions []position
	for first := range t.places.all {
		i := *first
		detailed := t.positions[i].detailed
		positions = positions[:0]
		for ; i != 0; i = t.positions[i].next {
			positions = append(positions, t.positions[i])
		}
		if len(positions) < 2 || len(positions) == maxPositions {
			continue
		}
		slices.SortStableFunc(positions, func(a, b position) int {
			return cmp.Or(cmp.Compare(b.count, a.count), cmp.Compare(a.row, b.row))
		})
		reach := float64(regionReach)
		if detailed {
			reach = spotReach
		}
		usual := positions[0]
		off, places, records := 0, 0, 0
		for _, p := range positions {
			records += int(p.count)
			if !p.near(usual, reach) {
				off += int(p.count)
				places++
			}
		}
		// Words that stand for many places say little of any. A slip is one place or two;
		// where there are more, the words name a park, a range or an island.
		if off > records/3 || places > 2 && off > records/20 {
			continue
		}
		for _, p := range positions[1:] {
			if p.near(usual, reach) {
				continue
			}
			term := "decimalLatitude"
			if !p.decimal {
				term = "verbatimCoordinates"
			}
			all = append(all, label.Finding{Origin: p.origin(t.file, term), Value: string(t.texts[p.text : p.text+p.size]),
				Message: fmt.Sprintf("%s from where record %d has it, whose words for the place are the same: correct the coordinates or the locality", far(p.from(usual)), usual.row),
				Also:    []label.Cell{{Row: int(usual.row), Term: term}}})
		}
	}
	return all
}
