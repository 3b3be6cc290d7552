package trade

import (
	"fmt"
	"math"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
)

// elevationDisagreesRule holds the columns of metres against the height as it was
// written.
func elevationDisagreesRule() check.Rule {
	terms := []string{"minimumElevationInMeters", "maximumElevationInMeters"}
	return check.Rule{
		Name: "elevation-disagrees", Severity: label.Warning, Source: practice,
		Doc: "verbatimElevation can be read and is another height than the one in metres, by more than it is rounded", Terms: terms,
		Example:        one("minimumElevationInMeters", "270", "verbatimElevation", "720 m"),
		Counterexample: one("minimumElevationInMeters", "1200", "verbatimElevation", "ca. 4000 ft"),
		Row: func(c *check.Context) {
			h := &c.Heights
			v := &h.Verbatim
			if v.Text == "" || v.Err != nil || v.Status != coord.OK || v.Value.HasFurther() || v.Value.IsBound() || c.Doubted(append(terms, "verbatimElevation")...) {
				return
			}
			term, low, high := heightsInColumns(h)
			if term == "" {
				return
			}
			from, to := span(v.Value)
			off := max(from-high, low-to)
			if off <= roundedBy(v.Value, math.Max(high, to)) {
				return
			}
			message := fmt.Sprintf("%s, and verbatimElevation says %q: correct one of the two", metresOf(low, high), v.Text)
			if v.Value.Unit == coord.Metres && math.Abs(low-from*foot) <= 1+from/200 {
				message = fmt.Sprintf("%s, and verbatimElevation says %q: its metres were converted as if they were feet", metresOf(low, high), v.Text)
				c.Suggest(term, message, metreFigures(from))
				return
			}
			c.Report(term, message)
		},
	}
}

// heightsInColumns is what the columns of metres hold, and the first that is filled.
func heightsInColumns(h *check.HeightReading) (term string, low, high float64) {
	for _, col := range []struct {
		term string
		*check.Height
	}{{"minimumElevationInMeters", &h.Min}, {"maximumElevationInMeters", &h.Max}} {
		if col.Text == "" {
			continue
		}
		if col.Err != nil || col.Status != coord.OK {
			return "", 0, 0
		}
		l, u := span(col.Value)
		if term == "" {
			term, low, high = col.term, l, u
		}
		low, high = math.Min(low, l), math.Max(high, u)
	}
	if low < lowestLand || high > highestLand { // a basic rule says it
		return "", 0, 0
	}
	return term, low, high
}

// span is an elevation's lower and upper end in metres.
func span(e coord.Elevation) (low, high float64) {
	low, high = float64(e.Low)/1000, float64(e.High)/1000
	if e.Unit == coord.Feet {
		low, high = low*foot, high*foot
	}
	return low, high
}

// roundedBy is by how much a height in metres may differ from what was written: it
// is converted and rounded, and about is more than that.
func roundedBy(e coord.Elevation, height float64) float64 {
	r := 30 + height/20
	if e.Circa {
		r = 100 + height/10
	}
	return r
}

// metresOf writes a height or a range of them.
func metresOf(low, high float64) string {
	if low == high {
		return "is " + metres(low)
	}
	return "is " + metreFigures(low) + "–" + metres(high)
}

func metreFigures(m float64) string { return itoa(int(math.Round(m))) }
