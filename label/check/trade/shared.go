package trade

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// The same point may well stand with two or three counties, whose borders meet
// there or are drawn in another way on each map. enoughCounties do not meet.
const enoughCounties = 4

// sharedReach is the uncertainty, in metres, from which a point stands for a
// region that may hold several counties.
const sharedReach = 20000

// sharedRule is about one point that a program gave to records of many places.
func sharedRule() check.Rule {
	at := func(county string) []string {
		return []string{"county", county, "locality", "Valdoura, " + county + ", slope above the stream", "recordNumber", "3" + itoa(len(county))}
	}
	return check.Rule{
		Name: "coordinates-shared", Severity: label.Warning, Source: positions + " (centroids)",
		Doc:     fmt.Sprintf("one point, figure for figure, for records of %d counties or more: a centre that a program filled in, or figures that were copied down", enoughCounties),
		Terms:   []string{"decimalLatitude"},
		Example: rows(at("Grândola"), at("Sines"), at("Alcácer do Sal"), at("Santiago do Cacém")),
		// The borders of three may meet in a point.
		Counterexample: rows(at("Grândola"), at("Sines"), at("Alcácer do Sal"), append(at("Sines"), "habitat", "Roadside")),
		Table:          func() check.TableRule { return &sharedTable{points: map[[2]float64]int32{}} },
	}
}

// sharedTable keeps 60 bytes for each point of the table and each further
// county it stands with.
type sharedTable struct {
	file   string
	points map[[2]float64]int32 // by degrees, the first county
	seen   []seenCounty         // from 1
}

type seenCounty struct {
	county uint64
	next   int32 // of the same point
	cell
}

func (t *sharedTable) Feed(r *check.Record) {
	f := r.Field("decimalLatitude")
	county := countyOf(r)
	if !r.HasCoordinates || f.Text == "" || county == 0 || r.Uncertainty > sharedReach || !strings.Contains(f.Text, ".") || r.Doubted(placeTerms...) {
		return
	}
	key := [2]float64{r.Coordinates.Lat.Degrees(), r.Coordinates.Lon.Degrees()}
	i, known := t.points[key]
	if !known {
		if t.seen == nil {
			t.file, t.seen = f.Origin.File, make([]seenCounty, 1)
		}
		t.points[key] = int32(len(t.seen))
		t.seen = append(t.seen, seenCounty{county: county, cell: cellOf(f)})
		return
	}
	for n := 1; n < maxPositions; n++ {
		if t.seen[i].county == county {
			return
		}
		if t.seen[i].next == 0 {
			t.seen[i].next = int32(len(t.seen))
			t.seen = append(t.seen, seenCounty{county: county, cell: cellOf(f)})
			return
		}
		i = t.seen[i].next
	}
}

// countyOf is a number for the county and what it lies in, however the word
// county is written, or 0.
func countyOf(r *check.Record) uint64 {
	county := strings.ToLower(r.Text("county"))
	for _, end := range []string{" county", " co.", " co", " parish"} {
		county = strings.TrimSuffix(county, end)
	}
	if county == "" {
		return 0
	}
	return sum(county, r.Text("stateProvince"))
}

func (t *sharedTable) End() []label.Finding {
	var all []label.Finding
	for key, i := range t.points {
		var cells []cell
		for ; i != 0; i = t.seen[i].next {
			cells = append(cells, t.seen[i].cell)
		}
		if len(cells) < enoughCounties {
			continue
		}
		all = append(all, label.Finding{
			Origin: cells[0].origin(t.file, "decimalLatitude"),
			Value:  degreesText(key[0]),
			Message: fmt.Sprintf("%s, %s stands with records of %d counties, and can hardly lie in them all: look up where each was collected",
				degreesText(key[0]), degreesText(key[1]), len(cells)),
			Also: also("decimalLatitude", cells[1:]),
		})
	}
	slices.SortFunc(all, func(a, b label.Finding) int { return cmp.Compare(a.Row, b.Row) })
	return all
}

func degreesText(d float64) string { return strconv.FormatFloat(d, 'f', -1, 64) }
