package check

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/coord"
)

// A HeightReading is how the elevation of the record was understood.
type HeightReading struct {
	// Min and Max are the columns in metres.
	Min, Max Height
	// From and To are the columns whose unit the heading or another column
	// names.
	From, To Height
	// Verbatim is verbatimElevation.
	Verbatim Height
	// Term is the column, or the first of two, that the record's elevation is
	// from; "" if it has none.
	Term string
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
	// measured says that the text tells more: how it was measured, or which
	// height of a range it was.
	measured bool
	// thousands says that a point may part thousands: the rest of the column
	// may tell.
	thousands bool
	// term is the column that a fault of the unit is to be mended in, if not
	// its own.
	unitTerm string
}

// is reports whether the column is filled and was read.
func (h *Height) is() bool { return h.Text != "" && h.Err == nil }

// readHeights reads the elevation: from the columns in metres, else from those
// in another unit, else from the verbatim one.
func (c *Context) readHeights() {
	h := &c.Heights
	c.readDepth()
	h.Min = c.inMetresColumn("minimumElevationInMeters")
	h.Max = c.inMetresColumn("maximumElevationInMeters")
	h.From = c.readInUnit("elevationFrom", "elevationUnit")
	h.To = c.readInUnit("elevationTo", "elevationUnit")
	if text := c.Text("verbatimElevation"); text != "" {
		v, s, err := coord.ParseElevation(text)
		if s == coord.Ambiguous && c.metresColumn() {
			if w, t, e := coord.ParseElevation(text + " m"); t == coord.OK || e != nil {
				v, s, err = w, t, e
				if e != nil { // of the text as it stands
					err = errors.New(strings.Replace(e.Error(), text+" m", text, 1))
				}
			}
		}
		h.Verbatim = Height{Text: text, Value: v, Status: s, Err: err, measured: v.HasFurther()}
		if s == coord.NotConvertible {
			if w, t, _ := coord.ParseElevation(methods.ReplaceAllString(text, " ")); t == coord.OK {
				// How it was measured is worth its words: printed as written.
				h.Verbatim = Height{Text: text, Value: w, Status: t, measured: true}
			}
		}
	}
	switch {
	case h.Min.Text != "" || h.Max.Text != "":
		h.Term = c.takeHeights(&h.Min, &h.Max, "minimumElevationInMeters", "maximumElevationInMeters")
	case h.From.Text != "" || h.To.Text != "":
		h.Term = c.takeHeights(&h.From, &h.To, "elevationFrom", "elevationTo")
	case h.Verbatim.is() && !h.Verbatim.measured:
		h.Term = "verbatimElevation"
		c.Elevation, c.HasElevation = h.Verbatim.Value, true
	case h.Verbatim.Text != "":
		h.Term = "verbatimElevation"
		c.ElevationText = h.Verbatim.Text
	}
}

// methods are the ways in which heights are measured, as people note them beside.
var methods = regexp.MustCompile(`(?i)[(\[]?\b(?:(?:by|with|from|per|com|con|selon|mit|nach|according to) )?(?:hand-?held )?(?:GPS|map|topo map|carta|mapa|carte|Karte|altimeter|altímetro|altimètre|Altimeter|aneroid|barometer|barometric|DEM|SRTM)(?: reading)?\b[)\]]?`)

// takeHeights makes the record's elevation of a lower and an upper height. It
// returns the column that it is from.
func (c *Context) takeHeights(low, high *Height, lowTerm, highTerm string) string {
	switch {
	case low.Err != nil || high.Err != nil:
		c.ElevationText = strings.Trim(low.Text+"–"+high.Text, "–")
	case low.is() && high.is():
		if low.Value.Unit != high.Value.Unit || low.Value.Low > high.Value.High || low.Odd && low.Value.Low != low.Value.High || high.Odd && high.Value.Low != high.Value.High {
			c.ElevationText = low.Text + "–" + high.Text
			break
		}
		c.Elevation = low.Value
		if decimals(high.Text) > decimals(low.Text) {
			c.Elevation = high.Value
		}
		c.Elevation.Low, c.Elevation.High = low.Value.Low, high.Value.High
		c.Elevation.Circa = low.Value.Circa || high.Value.Circa
		c.HasElevation = true
	case low.is():
		c.Elevation, c.HasElevation = low.Value, true
	case high.is():
		c.Elevation, c.HasElevation = high.Value, true
		if e, s, _ := coord.ParseElevation("to " + high.Text + " " + high.Value.Unit.String()); s == coord.OK && isNumber(high.Text) {
			c.Elevation = e
		}
		return highTerm
	}
	return lowTerm
}

// inMetresColumn reads a column of metres. Where its heading is a plain word
// ("Elev. (m)"), a cell may say that it is in feet.
func (c *Context) inMetresColumn(term string) Height {
	h := c.past.metres.of(c.Text(term), parseMetres)
	if errors.Is(h.Err, errFeet) {
		if i := c.row.Table().Index(term); i >= 0 && !namesTerm(c.row.Table().Columns()[i].Heading, term) {
			h.Err = nil
		} else {
			h.Value = coord.Elevation{}
		}
	}
	return h
}

// namesTerm reports whether a heading is the term's own name, however its words
// are parted.
func namesTerm(heading, term string) bool {
	return strings.HasSuffix(strings.ToLower(strings.NewReplacer("_", "", " ", "", "-", "").Replace(heading)), strings.ToLower(term))
}

var errFeet = errors.New("in feet, in a column of metres: convert it, or move it to verbatimElevation")

// unitNames are what cells for units say.
var unitNames = map[string]string{
	"m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m", "metros": "m", "metro": "m", "mètres": "m", "mts": "m", "masl": "m", "msnm": "m", "m asl": "m", "m s.n.m": "m", "m a.s.l": "m",
	"ft": "ft", "foot": "ft", "feet": "ft", "'": "ft", "pés": "ft", "pies": "ft", "pieds": "ft", "fuß": "ft", "f": "ft",
}

// readInUnit reads a cell whose unit stands in its column's heading or in a
// column beside it. A unit of its own comes first, if that does not contradict
// the cell beside it.
func (c *Context) readInUnit(term, unitTerm string) Height {
	text := c.Text(term)
	if text == "" {
		return Height{}
	}
	h := Height{Text: text}
	unit, beside := "", c.Text(unitTerm)
	if beside != "" {
		var ok bool
		if unit, ok = unitNames[strings.ToLower(strings.TrimRight(beside, ". "))]; !ok {
			h.Status, h.Err, h.unitTerm = coord.NotConvertible, errors.New("no unit of height: write m or ft"), unitTerm
			return h
		}
	} else if i := c.row.Table().Index(term); i >= 0 {
		unit = map[string]string{"metres": "m", "feet": "ft"}[c.row.Table().Columns()[i].Unit]
	}
	if isNumber(text) && thousands(text) {
		h.Status, h.Err, h.thousands = coord.Ambiguous, errThousands, true
		return h
	}
	h.Value, h.Status, h.Err = coord.ParseElevation(text)
	switch {
	case h.Status == coord.OK && beside != "" && h.Value.Unit.String() != unit:
		h.Status, h.Value = coord.Ambiguous, coord.Elevation{}
		h.Err = fmt.Errorf("the unit is %s here and %s in the column beside it: keep one", map[string]string{"m": "ft", "ft": "m"}[unit], unit)
	case h.Status == coord.OK || unit == "":
	default:
		if v, s, _ := coord.ParseElevation(wholeFigures(text) + " " + unit); s == coord.OK {
			h.Value, h.Status, h.Err = v, s, nil
		}
	}
	h.Odd = h.Err == nil && h.Value.Low != h.Value.High
	return h
}

// wholeFigures takes the ".0" off that programs write behind whole numbers.
func wholeFigures(s string) string {
	if isNumber(s) && strings.Contains(s, ".") {
		return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	return s
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
			h.Status, h.Err, h.thousands = coord.Ambiguous, errThousands, true
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
		h.Err = errFeet
	case h.Status == coord.OK:
		h.Err = nil
		h.Odd = h.Value.Low != h.Value.High || h.Value.Circa || h.Value.Tolerance != 0 || strings.Trim(text, "+-0123456789. mM") != ""
	case isNumber(text):
	default:
		h.Err = fmt.Errorf("not a number of metres: write it in figures alone")
	}
	if h.Err != nil && h.Err != errFeet {
		h.Value = coord.Elevation{}
	}
	return h
}

// commaDecimal is a number of metres with a decimal comma, which three figures
// behind it would leave in doubt.
var commaDecimal = regexp.MustCompile(`^-?\d{1,4},\d{1,2}$`)

// commaThousands is one with a comma between thousands.
var commaThousands = regexp.MustCompile(`^[1-9],\d{3}$`)

var errThousands = errors.New("can be thousands or a decimal point: write it without the point")

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
	inUnit := []string{"elevationFrom", "elevationTo"}
	return append(unitRules(inUnit), []Rule{
		{
			Name: "elevation-unreadable", Severity: label.Error, Source: darwin + " (minimumElevationInMeters, maximumElevationInMeters)",
			Doc:     "an elevation in metres that is no number",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "4000 ft"), Counterexample: one("minimumElevationInMeters", "1219 m"),
			Row: func(c *Context) {
				for i, h := range []*Height{&c.Heights.Min, &c.Heights.Max} {
					if h.Err != nil && !h.thousands {
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
					case !h.Odd, commaDecimal.MatchString(h.Text), h.Value.Low != h.Value.High && c.Heights.Min.is() && c.Heights.Max.is():
					case h.Value.Low != h.Value.High:
						c.Report(columns[i], "a range in one column: write the lower height in minimumElevationInMeters and the upper in maximumElevationInMeters")
					case commaThousands.MatchString(h.Text):
						c.Suggest(columns[i], "a comma parts the thousands, which others may take for a decimal comma: write the figures alone", strings.Replace(h.Text, ",", "", 1))
					default:
						c.Report(columns[i], "not in figures alone: write the number here, and other words in verbatimElevation")
					}
				}
			},
		},
		{
			Name: "elevation-comma", Severity: label.Note, Source: darwin + " (minimumElevationInMeters, maximumElevationInMeters)",
			Doc:     "a height with a decimal comma: it is read and printed, other programs may not read it",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "1694,5"), Counterexample: one("minimumElevationInMeters", "1694.5"),
			Row: func(c *Context) {
				for i, h := range []*Height{&c.Heights.Min, &c.Heights.Max} {
					if h.is() && commaDecimal.MatchString(h.Text) {
						c.Suggest(columns[i], "a decimal comma, read as a point: other programs may not read it", strings.Replace(h.Text, ",", ".", 1))
						c.cause("comma")
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
						message := fmt.Sprintf("no land lies there: heights run from %d to %d m", lowestLand, highestLand)
						if m := c.feetSaid(h); m != "" {
							c.Suggest(columns[i], message+"; verbatimElevation has the figures in feet", m)
							continue
						}
						c.Report(columns[i], message)
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
						break
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
				if h := &c.Heights; h.Term == "verbatimElevation" && h.Verbatim.Err != nil && !c.Doubted("verbatimElevation") {
					c.Once("verbatimElevation", reason(h.Verbatim.Err, h.Verbatim.Text)+"; printed as written", "", "verbatimElevation: "+reason(h.Verbatim.Err, h.Verbatim.Text))
				}
			},
		},
	}...)
}

// inMetres suggests whole metres for a single height in another form.
func inMetres(text string) string {
	if isNumber(text) {
		return ""
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

// feetSaid returns a height in metres whose figures verbatimElevation has in feet,
// "" where it has not.
func (c *Context) feetSaid(h *Height) string {
	v := &c.Heights.Verbatim
	if !v.is() || v.Value.Unit != coord.Feet || h.Value.Low != v.Value.Low && h.Value.Low != v.Value.High {
		return ""
	}
	return strconv.FormatFloat(math.Round(metresOf(h.Value.Low, coord.Feet)), 'f', 0, 64)
}
