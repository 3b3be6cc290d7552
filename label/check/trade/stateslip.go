package trade

import (
	"slices"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// stateSlipRule finds a state that is none, one slip of the keys from the one that the
// coordinates lie in.
func stateSlipRule(where *finder) check.Rule {
	return check.Rule{
		Name: "state-spelling", Severity: label.Warning, Source: "Natural Earth admin-1 at 1:10,000,000; " + practice,
		Doc: "a state or province that none is called, one slip of the keys from the one that the coordinates lie in", Terms: []string{"stateProvince"},
		Example:        one("country", "Brazil", "stateProvince", "Rio de Janiero", "decimalLatitude", "-22.4412", "decimalLongitude", "-42.9812", "minimumElevationInMeters", ""),
		Counterexample: one("country", "Brazil", "stateProvince", "Bahiia", "decimalLatitude", "-22.4412", "decimalLongitude", "-42.9812", "minimumElevationInMeters", ""),
		Row: func(c *check.Context) {
			text := c.Text("stateProvince")
			if len(text) < 5 || !c.HasCoordinates || c.Doubted("stateProvince") || c.Doubted(coordinateTerms...) {
				return
			}
			v := where.verdict(c)
			if v.fault != none {
				return // the country is in question already
			}
			for _, country := range v.here {
				if len(v.codes) > 0 && !slices.Contains(v.codes, country) || len(where.statesOf(country, text)) > 0 {
					continue
				}
				if s, as := place.StateSlip(country, text, c.Coordinates.Lat.Degrees(), c.Coordinates.Lon.Degrees()); s != nil {
					c.Once("stateProvince", "is no part of the country that is known, and the coordinates lie in "+s.Name+": did the keys slip?", as, "state "+text)
					return
				}
			}
		},
	}
}
