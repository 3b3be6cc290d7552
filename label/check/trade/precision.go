package trade

import (
	"math"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// decimal are the columns of decimal degrees.
var decimal = []string{"decimalLatitude", "decimalLongitude"}

// precisionRules are about figures that say more than anybody measured.
func precisionRules(*finder) []check.Rule {
	return []check.Rule{
		{
			Name: "coordinates-decimals", Severity: label.Note, Source: georeferences + ", 1.6",
			Doc: "decimal degrees with more than seven decimals: the seventh is a centimetre", Terms: decimal,
			Example: one("decimalLatitude", "38.471200000000003"), Counterexample: one("decimalLatitude", "38.4712345"),
			Row: func(c *check.Context) {
				for _, term := range decimal {
					text := c.Text(term)
					if decimals(text) <= 7 || !plainNumber(text) {
						continue
					}
					v, err := strconv.ParseFloat(text, 64)
					if err != nil {
						continue
					}
					why, suggest := tooFine(v, c.Uncertainty)
					c.Once(term, itoa(decimals(text))+" decimals, all of which are printed; "+why+": round it", suggest, "decimals")
				}
			},
		},
		{
			Name: "false-precision", Severity: label.Note, Source: georeferences + ", 1.6 and 3.4.6",
			Doc:     "figures ten thousand times as fine as the stated uncertainty, or a height or an uncertainty with hundredths of a metre",
			Terms:   []string{"decimalLatitude", "decimalLongitude", "coordinateUncertaintyInMeters", "minimumElevationInMeters", "maximumElevationInMeters"},
			Example: one("decimalLatitude", "38.471234", "coordinateUncertaintyInMeters", "5000"), Counterexample: one("decimalLatitude", "38.47123", "coordinateUncertaintyInMeters", "5000"),
			Row: falsePrecision,
		},
		{
			Name: "precision-metres", Severity: label.Note, Source: "Darwin Core, list of terms (coordinatePrecision, coordinateUncertaintyInMeters)",
			Doc: "a number above one in coordinatePrecision, which is a part of a degree: a radius in metres, as some aggregators keep it there", Terms: []string{"coordinatePrecision"},
			Example: one("coordinatePrecision", "46016"), Counterexample: one("coordinatePrecision", "0.0166667"),
			Row: func(c *check.Context) {
				text := c.Text("coordinatePrecision")
				if text == "" {
					return // an error costs more than the question
				}
				if v, err := strconv.ParseFloat(text, 64); err == nil && v > 1 {
					c.Once("coordinatePrecision", "is no part of a degree, which coordinatePrecision holds: if it is a radius in metres, its column is coordinateUncertaintyInMeters", "", "precision in metres")
				}
			},
		},
	}
}

// decimals counts the figures after the point.
func decimals(s string) int {
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return len(s) - i - 1
	}
	return 0
}

// tooFine says why a program's decimals mean nothing, and writes the degrees with
// those that do: what was written in minutes or seconds keeps the figures that give
// it back, a known uncertainty those of a tenth of it, the rest a metre's.
func tooFine(v, uncertainty float64) (why, suggest string) {
	suggest = rounded(v)
	if len(suggest)-strings.IndexByte(suggest, '.')-1 < 5 || math.Abs(parse(suggest)-v) < 1e-9 {
		return "five say a metre", suggest // a program's noise behind short figures
	}
	a := math.Abs(v)
	whole := func(x float64) bool { return math.Abs(x-math.Round(x)) < 1e-5 }
	switch {
	case whole(a * 60):
		n := int(math.Round(a * 60))
		return "they are " + itoa(n/60) + "°" + itoa(n%60) + "′", strconv.FormatFloat(v, 'f', 4, 64)
	case whole(a * 3600):
		n := int(math.Round(a * 3600))
		return "they are " + itoa(n/3600) + "°" + itoa(n/60%60) + "′" + itoa(n%60) + "″", suggest
	}
	const degree = 111e3 // metres
	for places := 3; places < 5; places++ {
		if degree*math.Pow(10, -float64(places)) <= uncertainty/10 {
			return "the uncertainty is " + metres(uncertainty), strconv.FormatFloat(v, 'f', places, 64)
		}
	}
	return "five say a metre", suggest
}

// rounded writes degrees as the number that a program's last figures hide
// ("38.471200000000003"), or with five decimals.
func rounded(v float64) string {
	for places := 2; places <= 7; places++ {
		if s := strconv.FormatFloat(v, 'f', places, 64); places > 5 || math.Abs(parse(s)-v) < 1e-9 {
			if places > 5 {
				break
			}
			return s
		}
	}
	return strconv.FormatFloat(v, 'f', 5, 64)
}

func parse(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}

func falsePrecision(c *check.Context) {
	const metre = 9e-6 // degrees
	if c.Place.Decimal && c.Uncertainty > 0 {
		for _, term := range decimal {
			text := c.Text(term)
			// More than seven decimals have a warning of their own.
			if n := decimals(text); n >= 5 && n <= 7 && plainNumber(text) && c.Uncertainty*metre > 1.05e4*math.Pow(10, -float64(n)) {
				// One line for both axes, whichever shows its figures.
				c.Once(decimal[0], itoa(n)+" decimals and an uncertainty of "+metres(c.Uncertainty)+": the last figures mean nothing on a label", "", "uncertainty")
				break
			}
		}
	}
	const off = "coordinateUncertaintyInMeters"
	if text := c.Text(off); decimals(text) >= 2 && c.Uncertainty > 1 && plainNumber(text) && strings.Trim(text[strings.IndexByte(text, '.')+1:], "0") != "" {
		c.Once(off, itoa(decimals(text))+" decimals of a metre, all of which are printed: nobody knows so finely how far off a place may be; round it up", strconv.FormatFloat(math.Ceil(c.Uncertainty), 'f', 0, 64), "uncertainty's decimals")
	}
	for i, term := range []string{"minimumElevationInMeters", "maximumElevationInMeters"} {
		if h := [2]*check.Height{&c.Heights.Min, &c.Heights.Max}[i]; h.Err != nil {
			continue // what cannot be read has a finding of its own
		}
		if text := c.Text(term); decimals(text) >= 2 && plainNumber(text) && strings.Trim(text[strings.IndexByte(text, '.')+1:], "0") != "" {
			said := "hundredths of a metre: no height of a plant is known so finely"
			if decimals(text) > 3 {
				said = strconv.Itoa(decimals(text)) + " decimals of a metre, of which the label prints three: no height of a plant is known so finely"
			}
			c.Suggest(term, said, strconv.FormatFloat(math.Round(parse(text)), 'f', 0, 64))
		}
	}
}

// metres writes a distance as records have it.
func metres(m float64) string { return strconv.FormatFloat(m, 'f', -1, 64) + " m" }
