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
	// Min and Max are the columns in metres.
	Min, Max Height
	// Verbatim is verbatimElevation.
	Verbatim Height
}

// A Height is one column of the elevation.
type Height struct {
	Text   string // as written; "" if the column is empty
	Value  coord.Elevation
	Status coord.Status
	Err    error // why it cannot be used; nil if Status is OK
	// Odd says that a column of metres holds more than a number: a range, or
	// a height that is only approximate.
	Odd bool
}

// is reports whether the column is filled and was read.
func (h *Height) is() bool { return h.Text != "" && h.Err == nil }

// readHeights reads the elevation, from the columns in metres before the
// verbatim one.
func (c *Context) readHeights() {
	h := &c.Heights
	h.Min = c.past.metres.of(c.Text("minimumElevationInMeters"), parseMetres)
	h.Max = c.past.metres.of(c.Text("maximumElevationInMeters"), parseMetres)
	if text := c.Text("verbatimElevation"); text != "" {
		v, s, err := coord.ParseElevation(text)
		if s == coord.Ambiguous && c.metresColumn() {
			if w, t, _ := coord.ParseElevation(text + " m"); t == coord.OK {
				v, s, err = w, t, nil
			}
		}
		h.Verbatim = Height{Text: text, Value: v, Status: s, Err: err}
	}
	switch {
	case h.Min.Err != nil || h.Max.Err != nil:
		c.ElevationText = strings.Trim(h.Min.Text+"–"+h.Max.Text, "–")
	case h.Min.is() && h.Max.is():
		if h.Min.Value.Low > h.Max.Value.High || h.Min.Odd && h.Min.Value.Low != h.Min.Value.High || h.Max.Odd && h.Max.Value.Low != h.Max.Value.High {
			c.ElevationText = h.Min.Text + "–" + h.Max.Text
			break
		}
		c.Elevation = h.Min.Value
		if decimals(h.Max.Text) > decimals(h.Min.Text) {
			c.Elevation = h.Max.Value
		}
		c.Elevation.Low, c.Elevation.High = h.Min.Value.Low, h.Max.Value.High
		c.Elevation.Circa = h.Min.Value.Circa || h.Max.Value.Circa
		c.HasElevation = true
	case h.Min.is():
		c.Elevation, c.HasElevation = h.Min.Value, true
	case h.Max.is():
		c.Elevation, c.HasElevation = h.Max.Value, true
		if e, s, _ := coord.ParseElevation("to " + h.Max.Text + " m"); s == coord.OK && isNumber(h.Max.Text) {
			c.Elevation = e
		}
	case h.Verbatim.is():
		c.Elevation, c.HasElevation = h.Verbatim.Value, true
	default:
		c.ElevationText = h.Verbatim.Text
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

// parseMetres reads a column of metres: a number, perhaps with its unit. A
// range or an approximate height is read too, and odd.
func parseMetres(text string) Height {
	if text == "" {
		return Height{}
	}
	h := Height{Text: text}
	figures := text
	if isNumber(text) {
		if thousands(text) {
			h.Status, h.Err = coord.Ambiguous, fmt.Errorf("can be thousands or a decimal point: write it without the point")
			return h
		}
		// The point of a plain number is a decimal point, and zeros after it
		// are a program's.
		if strings.Contains(text, ".") {
			figures = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
			if i := strings.IndexByte(figures, '.'); i >= 0 && len(figures)-i == 4 {
				figures += "0" // three decimals would be taken for thousands
			}
		}
	} else {
		h.Value, h.Status, _ = coord.ParseElevation(text)
	}
	if isNumber(text) { // the usual case, read quickly
		if e, err := coord.NewElevation(figures, ""); err == nil {
			h.Value, h.Status = e, coord.OK
		}
	}
	if h.Status != coord.OK {
		h.Value, h.Status, h.Err = coord.ParseElevation(figures + " m")
	}
	switch {
	case h.Status == coord.OK && h.Value.Unit == coord.Feet:
		h.Err = fmt.Errorf("in feet, in a column of metres: convert it, or move it to verbatimElevation")
	case h.Status == coord.OK:
		h.Err = nil
		h.Odd = h.Value.Low != h.Value.High || h.Value.Circa || h.Value.Tolerance != 0 || strings.Trim(text, "+-0123456789. mM") != ""
	case isNumber(text):
	default:
		h.Err = fmt.Errorf("not a number of metres: write it in figures alone")
	}
	if h.Err != nil {
		h.Value = coord.Elevation{}
	}
	return h
}

// thousands reports whether a number's point may part thousands: "1.200" can
// be twelve hundred metres. "152.400" cannot: no land is so high.
func thousands(s string) bool {
	s = strings.TrimLeft(s, "+-")
	return len(s) == 5 && s[1] == '.' && s[0] >= '1' && s[0] <= '8'
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
				for i, h := range []*Height{&c.Heights.Min, &c.Heights.Max} {
					if h.Err != nil {
						c.Suggest(columns[i], reason(h.Err, h.Text), inMetres(h.Text))
					}
				}
			},
		},
		{
			Name: "elevation-form", Severity: label.Warning, Source: darwin + " (minimumElevationInMeters, maximumElevationInMeters)",
			Doc:     "a column of metres that holds a range or an approximate height; the label prints it, other programs cannot read it",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "1600-1900"), Counterexample: one("minimumElevationInMeters", "1600", "maximumElevationInMeters", "1900 m"),
			Row: func(c *Context) {
				for i, h := range []*Height{&c.Heights.Min, &c.Heights.Max} {
					switch {
					case !h.Odd, h.Value.Low != h.Value.High && c.Heights.Min.is() && c.Heights.Max.is():
					case h.Value.Low != h.Value.High:
						c.Report(columns[i], "a range in one column: write the lower height in minimumElevationInMeters and the upper in maximumElevationInMeters")
					default:
						c.Report(columns[i], "not in figures alone: write the number here, and other words in verbatimElevation")
					}
				}
			},
		},
		{
			Name: "elevation-range", Severity: label.Error, Source: bdqCore + " (VALIDATION_MINELEVATION_INRANGE, VALIDATION_MAXELEVATION_INRANGE)",
			Doc:     "an elevation below or above all land",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "12000"), Counterexample: one("country", "", "minimumElevationInMeters", "-430", "maximumElevationInMeters", "8850"),
			Row: func(c *Context) {
				for i, h := range []*Height{&c.Heights.Min, &c.Heights.Max} {
					if h.is() && (h.Value.Low < lowestLand*1000 || h.Value.High > highestLand*1000) {
						c.Reportf(columns[i], "no land lies there: heights run from %d to %d m", lowestLand, highestLand)
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
				if h := &c.Heights; h.Min.is() && h.Max.is() && h.Min.Value.Low > h.Max.Value.High {
					c.Reportf("minimumElevationInMeters", "above the maximum, %s: exchange the two or correct one", h.Max.Text)
				}
			},
		},
		{
			Name: "elevation-ranges", Severity: label.Error, Source: darwin + " (minimumElevationInMeters, maximumElevationInMeters)",
			Doc:     "a range in one column of the elevation and a height in the other",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "1200-1250", "maximumElevationInMeters", "1300"), Counterexample: one("minimumElevationInMeters", "1200", "maximumElevationInMeters", "1300"),
			Row: func(c *Context) {
				h := &c.Heights
				for i, one := range []*Height{&h.Min, &h.Max} {
					if h.Min.is() && h.Max.is() && one.Value.Low != one.Value.High {
						c.Report(columns[i], "a range beside another height: keep one number in each of the two columns")
					}
				}
			},
		},
		{
			Name: "elevation-verbatim", Severity: label.Warning, Source: darwin + " (verbatimElevation)",
			Doc:     "only a verbatim elevation is given and it has no one reading; the label prints it as written",
			Terms:   []string{"verbatimElevation"},
			Example: one("minimumElevationInMeters", "", "verbatimElevation", "4000"), Counterexample: one("minimumElevationInMeters", "", "verbatimElevation", "4000 ft"),
			Row: func(c *Context) {
				if h := &c.Heights; h.Min.Text == "" && h.Max.Text == "" && h.Verbatim.Err != nil {
					c.Report("verbatimElevation", reason(h.Verbatim.Err, h.Verbatim.Text)+"; printed as written")
				}
			},
		},
	}
}

// inMetres suggests whole metres for a single height in another form, and the
// two readings of a number with a point.
func inMetres(text string) string {
	if isNumber(text) {
		if !thousands(text) {
			return ""
		}
		return strings.Replace(text, ".", "", 1) + " or " + strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
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
