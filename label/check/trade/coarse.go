package trade

import (
	"regexp"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
)

// coarseRules are about coordinates that were cut.
func coarseRules() []check.Rule {
	return []check.Rule{
		{
			Name: "uncertainty-small", Severity: label.Warning, Source: georeferences + ", 3.4.6",
			Doc: "degrees without decimals, or with one, and an uncertainty far smaller than that", Terms: []string{"decimalLatitude", "decimalLongitude", "coordinateUncertaintyInMeters"},
			Example:        one("decimalLatitude", "38", "decimalLongitude", "-8", "coordinateUncertaintyInMeters", "50", "stateProvince", "", "minimumElevationInMeters", ""),
			Counterexample: one("decimalLatitude", "38.5", "decimalLongitude", "-8.9", "coordinateUncertaintyInMeters", "5000", "stateProvince", "", "minimumElevationInMeters", ""),
			Row: func(c *check.Context) {
				lat, lon := c.Text("decimalLatitude"), c.Text("decimalLongitude")
				if !c.Place.Decimal || c.Uncertainty <= 0 || !plainNumber(lat) || !plainNumber(lon) || c.Doubted("decimalLatitude", "decimalLongitude", "coordinateUncertaintyInMeters") {
					return
				}
				n := max(decimals(lat), decimals(lon))
				if n > 1 || strings.Trim(lat, "-.0") == "9" || c.Uncertainty >= [...]float64{10000, 1000}[n] {
					return
				}
				what := [...]string{"whole degrees", "tenths of a degree"}[n]
				c.Once("coordinateUncertaintyInMeters", "the coordinates "+lat+", "+lon+" are "+what+", which say a place to within "+[...]string{"55", "5.5"}[n]+" km: were their figures cut?", "", "coarse")
			},
		},
		{
			Name: "grid-figures", Severity: label.Warning, Source: "NGA.SIG.0012 (UTM and MGRS)",
			Doc: "a zone with figures that no point of it has, beside decimal degrees", Terms: []string{"verbatimCoordinates"},
			Example: one("verbatimCoordinates", "29S 51300 4258000"), Counterexample: one("verbatimCoordinates", "29S 513000 4258000", "decimalLatitude", "38.4692", "decimalLongitude", "-8.8510", "coordinateUncertaintyInMeters", "500"),
			Row: func(c *check.Context) {
				text := c.Text("verbatimCoordinates")
				if c.Place.Decimal && gridFigures.MatchString(text) && c.Place.Verbatim.Status == coord.Invalid && !c.Doubted("verbatimCoordinates") {
					c.Report("verbatimCoordinates", "no point of the zone has these figures: of the easting there are six, of the northing seven, or fewer near the equator")
				}
			},
		},
	}
}

// gridFigures are a zone with its band, an easting and a northing.
var gridFigures = regexp.MustCompile(`^[0-9]{1,2} ?[C-HJ-NP-X],? +[0-9]{4,8} ?m?E?,? +[0-9]{4,8} ?m?N?$`)
