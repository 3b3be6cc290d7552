package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/coord"
)

// A HeightReading is how the elevation of the record was understood.
type HeightReading struct {
	// Min and Max are the columns in metres as written; MinErr and MaxErr
	// say why one is no number.
	Min, Max       string
	MinErr, MaxErr error
	// Verbatim is verbatimElevation as written, with how it was read.
	Verbatim       string
	VerbatimValue  coord.Elevation
	VerbatimStatus coord.Status
	VerbatimErr    error
}

// readHeights reads the elevation, from the columns in metres before the
// verbatim one.
func (c *Context) readHeights() {
	h := &c.Heights
	h.Min, h.Max, h.Verbatim = c.Text("minimumElevationInMeters"), c.Text("maximumElevationInMeters"), c.Text("verbatimElevation")
	low, errLow := parseMetres(h.Min)
	high, errHigh := parseMetres(h.Max)
	h.MinErr, h.MaxErr = errLow, errHigh
	if h.Verbatim != "" {
		h.VerbatimValue, h.VerbatimStatus, h.VerbatimErr = coord.ParseElevation(h.Verbatim)
		if h.VerbatimStatus == coord.Ambiguous && c.metresColumn() {
			if e, s, err := coord.ParseElevation(h.Verbatim + " m"); s == coord.OK {
				h.VerbatimValue, h.VerbatimStatus, h.VerbatimErr = e, s, err
			}
		}
	}
	switch {
	case errLow != nil || errHigh != nil:
		c.ElevationText = strings.Trim(h.Min+"–"+h.Max, "–")
	case h.Min != "" && h.Max != "":
		c.Elevation, c.HasElevation = low, true
		if decimals(h.Max) > decimals(h.Min) {
			c.Elevation = high
		}
		c.Elevation.Low, c.Elevation.High = low.Low, high.High
		if low.Low > high.High {
			c.Elevation, c.HasElevation, c.ElevationText = coord.Elevation{}, false, h.Min+"–"+h.Max
		}
	case h.Min != "":
		c.Elevation, c.HasElevation = low, true
	case h.Max != "":
		c.Elevation, c.HasElevation = high, true
		if e, s, _ := coord.ParseElevation("to " + h.Max + " m"); s == coord.OK {
			c.Elevation = e
		}
	case h.VerbatimStatus == coord.OK:
		c.Elevation, c.HasElevation = h.VerbatimValue, true
	default:
		c.ElevationText = h.Verbatim
	}
}

// metresColumn reports whether the verbatim elevation stands in a column whose
// heading means metres where nothing else is said.
func (c *Context) metresColumn() bool {
	t := c.row.Table()
	i := t.Index("minimumElevationInMeters")
	return i >= 0 && t.Columns()[i].Verbatim == "verbatimElevation"
}

func decimals(s string) int {
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return len(s) - i
	}
	return 0
}

// parseMetres reads a column of metres: a number, perhaps with its unit. The
// error says what to do.
func parseMetres(text string) (coord.Elevation, error) {
	if text == "" {
		return coord.Elevation{}, nil
	}
	if isNumber(text) {
		if e, s, err := coord.ParseElevation(text + " m"); s == coord.OK {
			return e, nil
		} else if err != nil {
			return coord.Elevation{}, err
		}
	}
	e, s, _ := coord.ParseElevation(text)
	switch {
	case s == coord.OK && e.Low != e.High:
		return coord.Elevation{}, fmt.Errorf("a range: write the lower height in minimumElevationInMeters and the upper in maximumElevationInMeters")
	case s == coord.OK && e.Unit == coord.Feet:
		return coord.Elevation{}, fmt.Errorf("in feet, in a column of metres: convert it, or move it to verbatimElevation")
	case s == coord.OK && e.Unit == coord.Metres:
		return e, nil
	}
	return coord.Elevation{}, fmt.Errorf("not a number of metres: write it in figures alone")
}

// The lowest dry land lies by the Dead Sea, the highest is Mount Everest.
const (
	lowestLand  = -430
	highestLand = 8850
)

// elevationRules are about heights above sea level.
func elevationRules() []Rule {
	columns := []string{"minimumElevationInMeters", "maximumElevationInMeters"}
	return []Rule{
		{
			Name: "elevation-unreadable", Severity: label.Error, Source: darwin + " (minimumElevationInMeters, maximumElevationInMeters)",
			Doc:     "an elevation in metres that is no number",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "4000 ft"), Counterexample: one("minimumElevationInMeters", "1219 m"),
			Row: func(c *Context) {
				for i, err := range []error{c.Heights.MinErr, c.Heights.MaxErr} {
					if err != nil {
						c.Suggest(columns[i], err.Error(), inMetres(c.Text(columns[i])))
					}
				}
			},
		},
		{
			Name: "elevation-range", Severity: label.Error, Source: bdqCore + " (VALIDATION_MINELEVATION_INRANGE, VALIDATION_MAXELEVATION_INRANGE)",
			Doc:     "an elevation below or above all land",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "12000"), Counterexample: one("minimumElevationInMeters", "-430", "maximumElevationInMeters", "8850"),
			Row: func(c *Context) {
				for _, term := range columns {
					if v, ok := degrees(c.Text(term)); ok && (v < lowestLand || v > highestLand) {
						c.Reportf(term, "no land lies there: heights run from %d to %d m", lowestLand, highestLand)
					}
				}
			},
		},
		{
			Name: "elevation-order", Severity: label.Error, Source: bdqCore + " (VALIDATION_MINELEVATION_LESSTHAN_MAXELEVATION)",
			Doc:     "a minimum elevation above the maximum",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "1300", "maximumElevationInMeters", "1200"), Counterexample: one("minimumElevationInMeters", "1200", "maximumElevationInMeters", "1300"),
			Row: func(c *Context) {
				h := &c.Heights
				if h.Min == "" || h.Max == "" || h.MinErr != nil || h.MaxErr != nil || c.HasElevation {
					return
				}
				c.Reportf("minimumElevationInMeters", "above the maximum, %s: exchange the two or correct one", h.Max)
			},
		},
		{
			Name: "elevation-verbatim", Severity: label.Warning, Source: darwin + " (verbatimElevation)",
			Doc:     "only a verbatim elevation is given and it has no one reading; the label prints it as written",
			Terms:   []string{"verbatimElevation"},
			Example: one("minimumElevationInMeters", "", "verbatimElevation", "4000"), Counterexample: one("minimumElevationInMeters", "", "verbatimElevation", "4000 ft"),
			Row: func(c *Context) {
				h := &c.Heights
				if h.Min == "" && h.Max == "" && h.Verbatim != "" && h.VerbatimStatus != coord.OK {
					c.Reportf("verbatimElevation", "printed as written: %v", h.VerbatimErr)
				}
			},
		},
	}
}

// inMetres suggests whole metres for a single height in another form.
func inMetres(text string) string {
	e, s, _ := coord.ParseElevation(text)
	if s == coord.OK && e.Low == e.High {
		low, _ := e.InMetres()
		if v, err := strconv.ParseFloat(low, 64); err == nil {
			return strconv.FormatFloat(math.Round(v), 'f', 0, 64)
		}
	}
	m, ok := metres(text)
	if !ok {
		return ""
	}
	return m
}
