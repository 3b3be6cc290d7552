package check

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/coord"
)

// unitRules are about heights whose unit stands outside their cell, and about
// points that may part thousands.
func unitRules(columns []string) []Rule {
	both := func(h *HeightReading) [2]*Height { return [2]*Height{&h.From, &h.To} }
	all := append([]string{"minimumElevationInMeters", "maximumElevationInMeters"}, columns...)
	return []Rule{
		{
			Name: "elevation-unit", Severity: label.Warning, Source: practice,
			Doc:     "a height whose unit is not known, or that has no one reading in the unit of its column; the label prints it as written",
			Terms:   append(columns, "elevationUnit"),
			Example: one("minimumElevationInMeters", "", "elevationFrom", "3200", "elevationUnit", "yards"), Counterexample: one("minimumElevationInMeters", "", "elevationFrom", "3200", "elevationUnit", "ft"),
			Row: func(c *Context) {
				for i, h := range both(&c.Heights) {
					if h.Err == nil || h.thousands {
						continue
					}
					t := columns[i]
					if h.unitTerm != "" {
						t = h.unitTerm
					}
					if !c.Doubted(t) {
						c.Once(t, reason(h.Err, h.Text)+"; printed as written", "", "unit")
					}
					if h.unitTerm != "" {
						break
					}
				}
			},
		},
		{
			Name: "elevation-limits", Severity: label.Error, Source: bdqCore + " (VALIDATION_MINELEVATION_INRANGE, VALIDATION_MINELEVATION_LESSTHAN_MAXELEVATION), for heights in any unit",
			Doc:     "heights in another unit than metres that lie below or above all land, or of which the lower is above the upper",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "", "elevationFrom", "4200", "elevationTo", "3600", "elevationUnit", "ft"), Counterexample: one("minimumElevationInMeters", "", "elevationFrom", "3600", "elevationTo", "4200", "elevationUnit", "ft"),
			Row: func(c *Context) {
				h := &c.Heights
				for i, one := range both(h) {
					if one.is() && (metresOf(one.Value.Low, one.Value.Unit) < lowestLand || metresOf(one.Value.High, one.Value.Unit) > highestLand) {
						c.Reportf(columns[i], "no land lies there: heights run from %d to %d m", lowestLand, highestLand)
						return
					}
				}
				switch {
				case !h.From.is() || !h.To.is():
				case h.From.Value.Unit != h.To.Value.Unit:
					c.Report(columns[0], "one height is in metres and the other in feet: write both in one unit")
				case h.From.Value.Low > h.To.Value.High:
					c.Reportf(columns[0], "above the upper height, %s: exchange the two or correct one", h.To.Text)
				}
			},
		},
		{
			Name: "elevation-columns", Severity: label.Warning, Source: practice,
			Doc:     "heights in metres and in feet, a column each, that differ by more than rounding",
			Terms:   all,
			Example: one("minimumElevationInMeters", "1500", "elevationFrom", "4000", "elevationUnit", "ft"), Counterexample: one("minimumElevationInMeters", "1220", "elevationFrom", "4000", "elevationUnit", "ft"),
			Row: func(c *Context) {
				h := &c.Heights
				for i, pair := range [2][2]*Height{{&h.Min, &h.From}, {&h.Max, &h.To}} {
					a, b := pair[0], pair[1]
					if !a.is() || !b.is() || a.Value.Unit == b.Value.Unit {
						continue
					}
					x, y := metresOf(a.Value.Low, a.Value.Unit), metresOf(b.Value.Low, b.Value.Unit)
					if math.Abs(x-y) > roundedTo(a)+roundedTo(b) {
						c.Once(all[i], fmt.Sprintf("%s beside %s %s, which are %.0f m: correct the wrong one", a.Text, b.Text, b.Value.Unit, y), "", "apart")
						return
					}
				}
			},
		},
		{
			Name: "depth-unit", Severity: label.Warning, Source: darwin + " (verbatimDepth)",
			Doc:     "only a verbatim depth is given and no unit with it; the label prints it as written",
			Terms:   []string{"verbatimDepth"},
			Example: one("verbatimDepth", "79"), Counterexample: one("verbatimDepth", "79 ft"),
			Row: func(c *Context) {
				text := c.Text("verbatimDepth")
				if text == "" || strings.Trim(text, "0123456789.,-–—~± ") != "" || strings.Trim(text, "0., ") == "" {
					return // 0 is one in all units
				}
				for _, term := range []string{"minimumDepthInMeters", "maximumDepthInMeters", "depthFrom", "depthTo"} {
					if c.Text(term) != "" {
						return
					}
				}
				c.Once("verbatimDepth", "no unit: add m, ft or fathoms; printed as written", "", "unit")
			},
		},
		{
			Name: "elevation-thousands", Severity: label.Error, Source: practice,
			Doc:     "a height such as 1.352, whose point may part thousands; the other heights of the column may tell",
			Terms:   all,
			Example: one("minimumElevationInMeters", "1.352"), Counterexample: one("minimumElevationInMeters", "1352"),
			Row: func(c *Context) {
				h := &c.Heights
				for i, one := range [4]*Height{&h.Min, &h.Max, &h.From, &h.To} {
					if one.thousands {
						c.Record.thousands[i] = true
						c.hold()
					}
				}
			},
			Table: func() TableRule { return &thousandsTable{terms: [4]string(all)} },
		},
	}
}

// Once is Suggest for a fault that many rows may share, whatever their values: the
// report tells it once for all that have the cause.
func (c *Context) Once(term, message, suggest, cause string) {
	c.Suggest(term, message, suggest)
	c.said[len(c.said)-1].Cause = cause
}

// readDepth keeps a depth whose unit its columns name.
func (c *Context) readDepth() {
	from, to := c.Text("depthFrom"), c.Text("depthTo")
	term := "depthFrom"
	switch {
	case from == "":
		from, term = to, "depthTo"
	case to != "" && to != from:
		from = wholeFigures(from) + "–" + wholeFigures(to)
	}
	if from == "" {
		return
	}
	c.DepthText = wholeFigures(from)
	if strings.ContainsFunc(from, unicode.IsLetter) {
		return // it says its own
	}
	unit := c.Text("depthUnit")
	if i := c.row.Table().Index(term); unit == "" && i >= 0 {
		unit = map[string]string{"metres": "m", "feet": "ft", "fathoms": "fathoms"}[c.row.Table().Columns()[i].Unit]
	}
	if u, ok := unitNames[strings.ToLower(strings.TrimRight(unit, ". "))]; ok {
		unit = u
	}
	if unit != "" {
		c.DepthText += "\u202f" + unit
	}
}

// metresOf converts thousandths of a unit to metres.
func metresOf(n int64, u coord.Unit) float64 {
	if u == coord.Feet {
		return float64(n) / 1000 * 0.3048
	}
	return float64(n) / 1000
}

// roundedTo is how far off a height may be by rounding, in metres: two noughts
// at the end may be it. Three metres more are a slip of a table of conversion.
func roundedTo(h *Height) float64 {
	step := 1000.0
	for n := h.Value.Low; step < 100_000 && n != 0 && n%int64(10*step) == 0; {
		step *= 10
	}
	return metresOf(int64(step), h.Value.Unit) + 3
}

// partedDecimal is a number whose point cannot but part thousands.
var partedDecimal = regexp.MustCompile(`^[1-9]\d{0,2}(?:\.\d{3})+,\d+$`)

// thousandsTable keeps the heights whose point may part thousands until it is
// known how the others of their column are written.
type thousandsTable struct {
	terms   [4]string
	columns [4]struct {
		doubts []Field
		more   []label.Cell
		parted int    // heights with a point and three figures behind it
		other  int    // with another number of figures behind it
		whole  int    // of 1000 and more, without a point
		comma  string // one with a decimal comma behind that: 1.120,5
		small  int    // below 1000, without a point
	}
}

// maxThousands bounds the heights that are told with their readings.
const maxThousands = 2000

func (t *thousandsTable) Feed(r *Record) {
	for i, term := range t.terms {
		col := &t.columns[i]
		text := r.Text(term)
		if text == "" || !isNumber(text) {
			if text == "" && i == 0 {
				text = r.Text("verbatimElevation") // a plain heading's, that takes other forms there
			}
			if partedDecimal.MatchString(text) {
				col.parted++
				if col.comma == "" {
					col.comma = strings.Clone(text)
				}
			}
			continue
		}
		whole, frac, point := strings.Cut(strings.TrimLeft(text, "+-"), ".")
		switch {
		case !point && len(whole) > 3:
			col.whole++
		case !point:
			col.small++
		case len(frac) == 3 && (len(whole) == 1 && whole != "0" || len(whole) > 1):
			col.parted++
		default:
			col.other++
		}
		if r.thousands[i] {
			f := r.Field(term)
			if len(col.doubts) < maxThousands {
				col.doubts = append(col.doubts, Field{Text: strings.Clone(f.Text), Origin: f.Origin})
			} else {
				col.more = append(col.more, label.Cell{Row: r.Row, Term: term})
			}
		}
	}
}

func (t *thousandsTable) End() []label.Finding {
	var all []label.Finding
	for i := range t.columns {
		col := &t.columns[i]
		for _, f := range col.doubts {
			large := strings.Replace(f.Text, ".", "", 1)
			small := strings.TrimSuffix(strings.TrimRight(f.Text, "0"), ".")
			finding := label.Finding{Origin: f.Origin, Value: f.Text, Suggest: large + " or " + small, Cause: "thousands",
				Message: "can be thousands or a decimal point: write it without the point"}
			switch {
			case col.comma != "" && col.other == 0:
				finding.Message = fmt.Sprintf("can be thousands or a decimal point; this column has a decimal comma, in %s: these are thousands, write %s", col.comma, large)
				finding.Suggest = large
			case col.parted > 1 && col.parted+col.small > 2 && col.other == 0 && col.whole == 0:
				finding.Message = fmt.Sprintf("can be thousands or a decimal point; all %d heights of this column with a point have three figures behind it, and none of 1000 and more is written without: these are thousands, write %s", col.parted, large)
				finding.Suggest = large
			case col.other > 2 && col.other > col.parted:
				finding.Message = fmt.Sprintf("can be thousands or a decimal point; %s of this column have decimals: write %s, or %s", strconv.Itoa(col.other)+" other heights", small, large)
			}
			all = append(all, finding)
		}
		if n := len(all); n > 0 && len(col.more) > 0 {
			all[n-1].Also = col.more
		}
	}
	return all
}
