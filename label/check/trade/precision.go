package trade

import (
	"math"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// precisionRules are about figures that say more than anybody measured.
func precisionRules(*finder) []check.Rule {
	decimal := []string{"decimalLatitude", "decimalLongitude"}
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
					c.Suggest(term, itoa(decimals(text))+" decimals, where five say a metre: round it", rounded(v))
				}
			},
		},
		{
			Name: "false-precision", Severity: label.Note, Source: georeferences + ", 1.6 and 3.4.6",
			Doc:     "figures ten thousand times as fine as the stated uncertainty, or a height with hundredths of a metre",
			Terms:   []string{"decimalLatitude", "decimalLongitude", "minimumElevationInMeters", "maximumElevationInMeters"},
			Example: one("decimalLatitude", "38.471234", "coordinateUncertaintyInMeters", "5000"), Counterexample: one("decimalLatitude", "38.47123", "coordinateUncertaintyInMeters", "5000"),
			Row: falsePrecision,
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
		for _, term := range []string{"decimalLatitude", "decimalLongitude"} {
			text := c.Text(term)
			// More than seven decimals have a warning of their own.
			if n := decimals(text); n >= 5 && n <= 7 && plainNumber(text) && c.Uncertainty*metre > 1.05e4*math.Pow(10, -float64(n)) {
				c.Reportf(term, "%d decimals and an uncertainty of %s: the last figures mean nothing on a label", n, metres(c.Uncertainty))
				break
			}
		}
	}
	for i, term := range []string{"minimumElevationInMeters", "maximumElevationInMeters"} {
		if h := [2]*check.Height{&c.Heights.Min, &c.Heights.Max}[i]; h.Err != nil {
			continue // what cannot be read has a finding of its own
		}
		if text := c.Text(term); decimals(text) >= 2 && plainNumber(text) && strings.Trim(text[strings.IndexByte(text, '.')+1:], "0") != "" {
			c.Suggest(term, "hundredths of a metre: no height of a plant is known so finely", strconv.FormatFloat(math.Round(parse(text)), 'f', 0, 64))
		}
	}
}

// metres writes a distance as records have it.
func metres(m float64) string { return strconv.FormatFloat(m, 'f', -1, 64) + " m" }
