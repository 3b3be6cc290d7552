package trade

import (
	"fmt"
	"math"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// elevationPlaceRule holds the heights of one stop against each other.
func elevationPlaceRule() check.Rule {
	return check.Rule{
		Name: "elevation-place", Severity: label.Warning, Source: practice,
		Doc:     "another height at the same place of the same day and collector that is that height in feet, with a zero more or with two figures exchanged",
		Terms:   []string{"minimumElevationInMeters"},
		Example: rows([]string{"minimumElevationInMeters", "120"}, []string{"recordNumber", "215", "minimumElevationInMeters", "1200"}), Counterexample: rows([]string{"minimumElevationInMeters", "120"}, []string{"recordNumber", "215", "minimumElevationInMeters", "150"}),
		Table: func() check.TableRule { return &elevationPlaces{} },
	}
}

// elevationPlaces keeps 20 bytes a place and day.
type elevationPlaces struct {
	seen  index[stopHeight]
	found []label.Finding
}

type stopHeight struct {
	metres int32
	row    int32
	told   bool
}

func (t *elevationPlaces) Feed(r *check.Record) {
	if r.Text("minimumElevationInMeters") == "" || !r.HasElevation || r.Collector == "" || r.Date.IsZero() || !r.HasCoordinates || r.Doubted("minimumElevationInMeters", "maximumElevationInMeters", "locality") {
		return
	}
	locality := r.Text("locality")
	if locality == "" {
		return
	}
	low, _ := span(r.Elevation)
	key := sum(r.Collector, locality)
	for _, bits := range [...]uint64{math.Float64bits(r.Coordinates.Lat.Degrees()), math.Float64bits(r.Coordinates.Lon.Degrees()), dayBits(r.Date.Start()), dayBits(r.Date.End())} {
		key = mixIn(key, bits)
	}
	was := t.seen.find(key)
	if was == nil {
		t.seen.add(key, stopHeight{metres: int32(math.Round(low)), row: int32(r.Row)})
		return
	}
	m := int32(math.Round(low))
	what, suggest := heightSlip(m, was.metres)
	if what == "" || was.told {
		return
	}
	was.told = true
	f := r.Field("minimumElevationInMeters")
	t.found = append(t.found, label.Finding{
		Origin: f.Origin, Value: strings.Clone(f.Text), Suggest: suggest, Also: []label.Cell{{Row: int(was.row), Term: "minimumElevationInMeters"}},
		Message: fmt.Sprintf("record %d, of the same place and day, lies at %d m: %s", was.row, was.metres, what),
	})
}

// dayBits is a day as one number.
func dayBits(d date.Day) uint64 { return uint64(d.Year)<<16 | uint64(d.Month)<<8 | uint64(d.Day) }

// heightSlip tells whether one height was made of the other by a slip, and in feet
// what it is in metres.
func heightSlip(a, b int32) (what, suggest string) {
	if a == b || a < 2 || b < 2 {
		return "", ""
	}
	switch {
	case math.Abs(float64(a)*foot-float64(b)) <= 2 && b > 30:
		return "if these are feet, they are the same", itoa(int(b))
	case math.Abs(float64(b)*foot-float64(a)) <= 2 && a > 30:
		return "if those are feet, they are the same", ""
	}
	x, y := itoa(int(a)), itoa(int(b))
	if strings.TrimRight(x, "0") == strings.TrimRight(y, "0") {
		return "a zero is too many or too few", ""
	}
	if len(x) > 2 && neighboursExchanged(x, y) && math.Abs(float64(a-b)) > 100 {
		return "two figures are exchanged in one of them", ""
	}
	return "", ""
}

func (t *elevationPlaces) End() []label.Finding { return t.found }
