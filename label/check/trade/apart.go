package trade

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// apartRule is about coordinates that no country bears out or belies: the other
// records do.
func apartRule() check.Rule {
	at := func(n int, lat, lon string) []string {
		return []string{"recordNumber", itoa(214 + n), "country", "", "continent", "North America", "stateProvince", "", "locality", "Valdoura, plot " + itoa(n) + ", slope above the stream",
			"decimalLatitude", lat, "decimalLongitude", lon}
	}
	table := func(last string) (all [][]string) {
		for n := range leastApart {
			all = append(all, at(n, fmt.Sprintf("40.%d712", 10+n), fmt.Sprintf("-100.%d035", 10+n)))
		}
		return append(all, at(leastApart, "40.1512", last))
	}
	return check.Rule{
		Name: "coordinates-apart", Severity: label.Warning, Source: practice,
		Doc: "coordinates of a record without a country that lie among those of the other records only with another sign, or among those of the same state or province only with another figure", Terms: coordinateTerms,
		Example: rows(table("100.1835")...), Counterexample: rows(table("20.1835")...),
		Table: func() check.TableRule { return &apartTable{} },
	}
}

const (
	leastApart = 12    // fewer records are no measure for one more
	mostApart  = 20000 // a table of more has places all over
	// signApart is how far apart, in degrees, a coordinate and the one with the other
	// sign are at least: near the equator and Greenwich trips go to both sides.
	signApart = 30
	// stateWide is how far, in degrees, the records of a state lie apart at most, and
	// stateFar how far one lies from them that is in no state of theirs. States of one
	// name in two countries are farther apart on the other axis, too, or no slip away.
	stateWide, stateFar = 10, 20
)

// apartTable keeps a record's place and the texts of it, of records without a country.
type apartTable struct {
	file   string
	points []apartPoint
}

type apartPoint struct {
	at    [2]float64 // latitude and longitude
	text  [2]string
	cells [2]cell
	state string
}

var apartTerms = [2]string{"decimalLatitude", "decimalLongitude"}

func (t *apartTable) Feed(r *check.Record) {
	if !r.HasCoordinates || len(t.points) > mostApart || r.Text("country") != "" || r.Text("countryCode") != "" || r.Doubted(placeTerms...) {
		return
	}
	p := apartPoint{at: [2]float64{r.Coordinates.Lat.Degrees(), r.Coordinates.Lon.Degrees()}, state: strings.Clone(r.Text("stateProvince"))}
	for i, term := range apartTerms {
		f := r.Field(term)
		if f.Text == "" {
			return
		}
		p.text[i], p.cells[i] = strings.Clone(f.Text), cellOf(f)
		t.file = f.Origin.File
	}
	t.points = append(t.points, p)
}

func (t *apartTable) End() []label.Finding {
	if len(t.points) <= leastApart/2 || len(t.points) > mostApart {
		return nil
	}
	all := append(t.signs(0), t.signs(1)...)
	said := map[int32]bool{}
	for _, f := range all {
		said[int32(f.Row)] = true
	}
	all = append(all, t.states(said)...)
	slices.SortStableFunc(all, func(a, b label.Finding) int { return a.Row - b.Row })
	return all
}

// box is what points lie in.
type box struct{ least, most [2]float64 }

func boxOf(points []apartPoint) box {
	b := box{[2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}}
	for _, p := range points {
		for i, v := range p.at {
			b.least[i], b.most[i] = min(b.least[i], v), max(b.most[i], v)
		}
	}
	return b
}

func (b box) wide(axis int) float64 { return b.most[axis] - b.least[axis] }

// off is how many degrees a latitude or longitude lies beside the box.
func (b box) off(axis int, v float64) float64 { return max(b.least[axis]-v, v-b.most[axis], 0) }

// signs finds the few points on another side of the equator or of Greenwich than all
// others, among which they lie with the other sign.
func (t *apartTable) signs(axis int) (found []label.Finding) {
	var sides [2][]apartPoint // without a minus, with it
	for _, p := range t.points {
		side := 0
		if p.at[axis] < 0 {
			side = 1
		}
		sides[side] = append(sides[side], p)
	}
	few, many := sides[0], sides[1]
	if len(few) > len(many) {
		few, many = many, few
	}
	if len(few) == 0 || len(many) < leastApart || len(few)*10 > len(many) {
		return nil
	}
	b := boxOf(many)
	for _, p := range few {
		v := p.at[axis]
		if 2*math.Abs(v) < max(signApart, 2*b.wide(axis)) || b.off(axis, -v) > 1 || b.off(1-axis, p.at[1-axis]) > 1 {
			return nil // one that lies elsewhere: the table has places of several regions
		}
		message, other := "the other records all have a minus, with which this one lies among them", ""
		if text := strings.TrimSpace(p.text[axis]); v < 0 {
			message = "the other records have no minus, without which this one lies among them"
			other, _ = strings.CutPrefix(text, "-")
		} else if text[0] >= '0' && text[0] <= '9' {
			other = "-" + text
		}
		if other == p.text[axis] || strings.ContainsAny(other, "NSEWO°'") {
			other = ""
		}
		found = append(found, label.Finding{Origin: p.cells[axis].origin(t.file, apartTerms[axis]), Value: p.text[axis], Message: message, Suggest: other})
	}
	return found
}

// slip reports whether one figure more or less before the decimal point, or another
// one, brings a latitude or longitude into the box.
func (b box) slip(axis int, v float64) bool {
	whole, part := math.Modf(math.Abs(v))
	s := strconv.Itoa(int(whole))
	in := func(s string) bool {
		n, _ := strconv.Atoi(s)
		return b.off(axis, math.Copysign(float64(n)+part, v)) <= 0.5
	}
	for i := range len(s) + 1 {
		if i < len(s) && in(s[:i]+s[i+1:]) {
			return true
		}
		for figure := '0'; figure <= '9'; figure++ {
			if in(s[:i]+string(figure)+s[i:]) || i < len(s) && in(s[:i]+string(figure)+s[i+1:]) {
				return true
			}
		}
	}
	return false
}

// states finds points far from all others of their state, which a slip explains.
func (t *apartTable) states(said map[int32]bool) (found []label.Finding) {
	of := map[string][]apartPoint{}
	for _, p := range t.points {
		if p.state != "" && !said[p.cells[0].row] {
			of[p.state] = append(of[p.state], p)
		}
	}
	for state, points := range of {
		for axis := range 2 {
			slices.SortFunc(points, func(a, b apartPoint) int { return cmp.Compare(a.at[axis], b.at[axis]) })
			for _, last := range []bool{false, true} {
				far, others := t.end(points, axis, last)
				if far == nil {
					continue
				}
				b := boxOf(others)
				for _, p := range far {
					found = append(found, label.Finding{Origin: p.cells[axis].origin(t.file, apartTerms[axis]), Value: p.text[axis],
						Message: fmt.Sprintf("the other records of %s lie %.0f° away, between %s and %s: a figure is wrong, missing or too many", state, b.off(axis, p.at[axis]), degreesText(b.least[axis]), degreesText(b.most[axis]))})
				}
			}
		}
	}
	return found
}

// end returns the points at one end of sorted ones that lie far from the others, nil if
// none does or the others are no measure.
func (t *apartTable) end(points []apartPoint, axis int, last bool) (far, others []apartPoint) {
	n := len(points) / 5 // at most
	for k := 1; k <= n; k++ {
		far, others = points[:k], points[k:]
		if last {
			far, others = points[len(points)-k:], points[:len(points)-k]
		}
		if b := boxOf(others); len(others) >= leastApart/2 && b.wide(0) <= stateWide && b.wide(1) <= stateWide &&
			!slices.ContainsFunc(far, func(p apartPoint) bool {
				return b.off(axis, p.at[axis]) < stateFar || b.off(1-axis, p.at[1-axis]) > stateWide || !b.slip(axis, p.at[axis])
			}) {
			return far, others
		}
	}
	return nil, nil
}
