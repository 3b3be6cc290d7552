package trade

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// countrySlipRule finds a country that is none, one slip of the keys from the name of one.
func countrySlipRule(where *finder) check.Rule {
	elsewhere := []string{"countryCode", "", "stateProvince", "", "county", "", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}
	country := func(name string) []map[string]string { return one(append(elsewhere, "country", name)...) }
	return check.Rule{
		Name: "country-spelling", Severity: label.Warning, Source: "ISO 3166-1; Unicode CLDR (names of countries in other languages); " + practice,
		Doc: "a country that none is called, one slip of the keys from the name of one", Terms: []string{"country"},
		Example: country("Germny"), Counterexample: country("Moldavia"),
		Row: func(c *check.Context) {
			text := c.Text("country")
			if len(text) < 5 || where.lands(text) != nil {
				return
			}
			if name := where.slipOf(text); name != "" {
				c.Once("country", "is no country that is known: did the keys slip?", name, "country "+text)
			}
		},
	}
}

// slipOf returns the country that a text which names none may mean.
func (f *finder) slipOf(text string) string {
	if v, ok := f.slips.Load(text); ok {
		return v.(string)
	}
	name := place.CountrySlip(text)
	if f.keeps() {
		f.slips.Store(strings.Clone(text), name)
	}
	return name
}
