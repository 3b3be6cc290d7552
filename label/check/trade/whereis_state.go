package trade

import (
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// stateReach is how far a place may lie outside the state that is named, besides its
// uncertainty, in metres: borders were moved, maps were small, and people name the
// state of the nearest town.
const stateReach = 25e3

func provinceRules(where *finder) []check.Rule {
	return []check.Rule{{
		Name: "coordinates-state", Severity: label.Warning, Source: "Natural Earth admin-1 at 1:10,000,000; U.S. Census Bureau, cartographic boundaries 2017",
		Doc: "coordinates in the country that is named, but deep within another of its states or provinces than the one named", Terms: coordinateTerms,
		Example:        one("country", "Brazil", "stateProvince", "Bahia", "decimalLatitude", "-22.4412", "decimalLongitude", "-42.9812", "minimumElevationInMeters", ""),
		Counterexample: one("country", "Brazil", "stateProvince", "Rio de Janeiro", "decimalLatitude", "-22.4412", "decimalLongitude", "-42.9812", "minimumElevationInMeters", ""),
		Row:            where.stateRule,
	}}
}

// stateKey is a state as a record names it.
type stateKey struct{ country, text string }

// statesOf finds the states that a text may mean.
func (f *finder) statesOf(country, text string) []*place.State {
	key := stateKey{country, text}
	if v, ok := f.parts.Load(key); ok {
		return v.([]*place.State)
	}
	all := place.StatesNamed(country, text)
	if f.keeps() {
		f.parts.Store(stateKey{country, strings.Clone(text)}, all)
	}
	return all
}

func (f *finder) stateRule(c *check.Context) {
	text := c.Text("stateProvince")
	if text == "" || !c.HasCoordinates {
		return
	}
	v := f.verdict(c)
	if v.fault != none {
		return // the country is in question already
	}
	country := ""
	for _, code := range v.here {
		if len(v.codes) == 0 && len(v.here) == 1 || slices.Contains(v.codes, code) {
			country = code
			break
		}
	}
	if country == "" {
		return
	}
	named := f.statesOf(country, text)
	if len(named) == 0 || c.Text("country") == text || c.Doubted("stateProvince") || c.Doubted(coordinateTerms...) {
		return
	}
	lat, lon := c.Coordinates.Lat.Degrees(), c.Coordinates.Lon.Degrees()
	if slices.ContainsFunc(named, func(s *place.State) bool { return s.Owns(lat, lon) }) {
		return
	}
	distance := named[0].Distance(lat, lon)
	for _, s := range named[1:] {
		distance = min(distance, s.Distance(lat, lon))
	}
	if distance <= stateReach+c.Uncertainty+roughness(c.Coordinates) {
		return
	}
	here := place.StateAt(country, lat, lon)
	if here == nil || slices.ContainsFunc(named, here.Was) {
		return
	}
	c.Report(c.Place.LatTerm, written(c)+" lies in "+here.Name+", "+far(distance)+" from "+text+", which is stated: correct the coordinates or the state")
}
