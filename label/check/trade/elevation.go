package trade

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
)

const foot = 0.3048

// heightRules are about elevations.
func heightRules(where *finder) []check.Rule {
	columns := []string{"minimumElevationInMeters", "maximumElevationInMeters", "elevationFrom", "elevationTo", "verbatimElevation"}
	return []check.Rule{
		{
			Name: "elevation-feet", Severity: label.Warning, Source: practice + "; of 119 heights on labels half are in feet",
			Doc:     "feet taken for metres: the figures of verbatimElevation or of the locality, or a height that the country has in feet alone",
			Terms:   columns,
			Example: one("minimumElevationInMeters", "4000", "verbatimElevation", "4000 ft"), Counterexample: one("minimumElevationInMeters", "1219", "verbatimElevation", "4000 ft"),
			Row: func(c *check.Context) {
				if term, message, suggest := feet(where, c); term != "" {
					c.Suggest(term, message, suggest)
				}
			},
		},
		{
			Name: "elevation-country", Severity: label.Warning, Source: practice + "; heights: The World Factbook",
			Doc: "a height above the highest or below the lowest land of the country", Terms: columns,
			Example: one("country", "Denmark", "stateProvince", "", "decimalLatitude", "56.1012", "decimalLongitude", "9.5312", "minimumElevationInMeters", "900"), Counterexample: one("minimumElevationInMeters", "2351"),
			Row: func(c *check.Context) {
				low, high, name, ok := landOf(where, c)
				if !ok {
					return
				}
				eachHeight(c, func(term string, m float64) bool {
					switch {
					case m < lowestLand || m > highestLand: // a basic rule says it
					case m > ceiling(high):
						if feetTerm, _, _ := feet(where, c); feetTerm != "" {
							return false // a rule of its own
						}
						c.Reportf(term, "higher than all of %s, which rises to %s: correct the height or the country", name, metres(high))
					case m < low-belowSea[dry] && m < low-belowSea[seaOf(c)]:
						c.Reportf(term, "lower than all of %s, whose lowest land is at %s: correct the height or the country", name, metres(low))
					default:
						return true
					}
					return false
				})
			},
		},
		{
			Name: "elevation-depth", Severity: label.Warning, Source: practice,
			Doc:   "a height on land and a depth of the sea in one record; lakes have both",
			Terms: []string{"minimumElevationInMeters", "maximumElevationInMeters", "verbatimElevation"},
			// The plant of the example is told to grow on a reef.
			Example:        one("minimumElevationInMeters", "109", "habitat", "coral reef", "minimumDepthInMeters", "4", "maximumDepthInMeters", "10"),
			Counterexample: one("minimumElevationInMeters", "109", "habitat", "shore of a lake", "minimumDepthInMeters", "4", "maximumDepthInMeters", "10"),
			Row: func(c *check.Context) {
				if !belowWater(c) {
					return
				}
				if height := c.Text("minimumElevationInMeters"); height != "" && len(height) > 1 && c.Text("minimumDepthInMeters") == height {
					c.Once("minimumElevationInMeters", "the same figures stand as the height and as the depth: keep the one that is meant; the label prints both", "", "depth")
					return
				}
				if !inSaltWater(c) {
					return
				}
				eachHeight(c, func(term string, m float64) bool {
					if m < ashore {
						return true
					}
					c.Once(term, "a height above the sea beside a depth in it: keep the one that is meant; the label prints both", "", "depth")
					return false
				})
			},
		},
	}
}

// ashore is the height from which nothing lies in the sea, in metres: tides and
// receivers err less.
const ashore = 30

// belowWater reports whether a depth of more than 0 m is given.
func belowWater(c *check.Context) bool {
	for _, term := range []string{"minimumDepthInMeters", "maximumDepthInMeters"} {
		if text := c.Text(term); text != "" {
			if v, err := strconv.ParseFloat(text, 64); err == nil && v > 0 {
				return true
			}
		}
	}
	return false
}

// inSaltWater reports whether a record speaks of the sea's floor or of open water,
// and of no fresh water.
func inSaltWater(c *check.Context) bool {
	salt := false
	for _, term := range []string{"waterBody", "habitat", "locality", "verbatimLocality", "fieldNotes", "eventRemarks", "occurrenceRemarks"} {
		text := c.Text(term)
		if text == "" {
			continue
		}
		words := plainWords(text)
		if hasAny(words, freshWords) {
			return false
		}
		salt = salt || hasAny(words, saltWords)
	}
	return salt
}

// The lowest and highest land of all, beyond which a basic rule speaks.
const (
	lowestLand  = -430
	highestLand = 8850
)

// belowSea is how far below a country's lowest land a height may be, in metres,
// by what the record says of the sea: heights below it may be depths.
var belowSea = [...]float64{dry: 30, coast: 60, openSea: math.Inf(1)}

// ceiling is the height up to which a country's highest point is not
// contradicted: surveys differ, and receivers err.
func ceiling(high float64) float64 { return high*1.02 + 50 }

// landOf returns the heights of the land that a record is from: of the
// territory if the place is known and lies where it is said to, with the
// countries that are stated if it lies beside them, else of all that the record
// may mean.
func landOf(where *finder, c *check.Context) (low, high float64, name string, ok bool) {
	v := where.verdict(c)
	if v.fault != none || !v.isStated() {
		return 0, 0, "", false
	}
	widen := func(l, h float64) {
		if !ok {
			low, high, ok = l, h, true
		}
		low, high = min(low, l), max(high, h)
	}
	if len(v.here) > 0 {
		land, known := countries()[v.here[0]]
		if !known {
			return 0, 0, "", false
		}
		widen(land.lowest, land.highest)
		name = nameOf(v.here[0])
		if slices.ContainsFunc(v.here, func(code string) bool { return slices.Contains(v.codes, code) }) {
			return low, high, name, true
		}
		name = v.name
	}
	for _, code := range v.codes {
		if l, h, known := heights(code); known {
			widen(l, h)
		}
	}
	if name == "" {
		name = v.name
	}
	return low, high, name, ok
}

// eachHeight calls with every height in the columns of metres, and with the
// verbatim one where there is no other, until it is told to stop.
func eachHeight(c *check.Context, with func(term string, metres float64) bool) {
	h := &c.Heights
	some := false
	for _, col := range []struct {
		term string
		*check.Height
	}{{"minimumElevationInMeters", &h.Min}, {"maximumElevationInMeters", &h.Max}} {
		if col.Text == "" || col.Err != nil {
			continue
		}
		some = true
		if !with(col.term, inMetres(col.Value)) {
			return
		}
	}
	if !some && c.HasElevation {
		with(h.Term, inMetres(c.Elevation))
	}
}

// inMetresColumn reports whether a column holds metres by its name.
func inMetresColumn(term string) bool { return strings.HasSuffix(term, "InMeters") }

// inMetres is an elevation's lower end.
func inMetres(e coord.Elevation) float64 {
	m := float64(e.Low) / 1000
	if e.Unit == coord.Feet {
		m *= foot
	}
	return m
}

// feetInText finds heights in feet in running text.
var feetInText = regexp.MustCompile(`\b([0-9]{3,5}|[0-9]{1,2},[0-9]{3}) ?(?:ft\b|feet\b|pés\b|pies\b|pieds\b)`)

// feet looks for the signs that a height in metres is one in feet.
func feet(where *finder, c *check.Context) (term, message, suggest string) {
	if v := &c.Heights.Verbatim; v.Text != "" && v.Err == nil && v.Value.Unit == coord.Feet {
		eachHeight(c, func(t string, m float64) bool {
			// Below a hundred feet the figures may agree by chance.
			if !inMetresColumn(t) || m < 30 || m > highestLand || // no land: told by elevation-range
				math.Abs(m-float64(v.Value.Low)/1000) > 0.5 && math.Abs(m-float64(v.Value.High)/1000) > 0.5 {
				return true
			}
			term, suggest = t, fromFeet(m)
			message = "the figures of verbatimElevation, which are feet: in metres they are " + suggest
			return false
		})
		if term != "" {
			return
		}
	}
	for _, col := range []string{"locality", "verbatimLocality"} {
		text := c.Text(col)
		if !mentionsFeet(text) {
			continue
		}
		for _, m := range feetInText.FindAllStringSubmatch(text, -1) {
			f := parse(strings.Replace(m[1], ",", "", 1))
			eachHeight(c, func(t string, h float64) bool {
				if inMetresColumn(t) && h == f {
					term, suggest = t, fromFeet(h)
					message = "the figures that " + col + " gives in feet: in metres they are " + suggest
				}
				return term == ""
			})
		}
	}
	if term != "" {
		return
	}
	if low, high, name, ok := landOf(where, c); ok {
		eachHeight(c, func(t string, m float64) bool {
			if c.Elevation.Unit == coord.Feet || m > highestLand || m <= ceiling(high) || m*foot > ceiling(high) || m*foot < low {
				return true
			}
			term, suggest = t, fromFeet(m)
			message = "higher than all of " + name + ", which rises to " + metres(high) + ": if these are feet, they are " + suggest + " m"
			return false
		})
	}
	return
}

// mentionsFeet tells quickly that feetInText finds nothing.
func mentionsFeet(s string) bool {
	for _, unit := range []string{"ft", "feet", "pés", "pies", "pieds"} {
		if strings.Contains(s, unit) {
			return true
		}
	}
	return false
}

// fromFeet converts to whole metres.
func fromFeet(f float64) string { return strconv.FormatFloat(math.Round(f*foot), 'f', 0, 64) }
