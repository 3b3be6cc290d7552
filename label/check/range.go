package check

import (
	"strconv"
	"strings"

	"cornerslip/label/place"
)

// rangeRule finds degrees that no place has. Where the stated country tells
// what was meant, it says so.
func rangeRule(c *Context) {
	lat, isLat := degrees(c.Text("decimalLatitude"))
	lon, isLon := degrees(c.Text("decimalLongitude"))
	badLat, badLon := isLat && (lat < -90 || lat > 90), isLon && (lon < -180 || lon > 180)
	if !badLat && !badLon {
		return
	}
	var m meant
	if isLat && isLon {
		m = c.meant(lat, lon)
	}
	for _, half := range []struct {
		bad                    bool
		term, message, pointed string
	}{
		{badLat, "decimalLatitude", "latitude is beyond 90°", m.lat},
		{badLon, "decimalLongitude", "longitude is beyond 180°", m.lon},
	} {
		switch {
		case !half.bad:
		case m.exchanged != "":
			c.Suggest(half.term, half.message+": exchanged, the two lie in "+m.country+", as stated", m.exchanged)
		case half.pointed != "":
			c.Suggest(half.term, half.message+": with a decimal point the place lies in "+m.country+", as stated", half.pointed)
		default:
			c.Report(half.term, half.message)
		}
	}
}

// meant is what coordinates beyond their range were meant to be, "" where
// nothing tells.
type meant struct {
	exchanged string // both, latitude first
	lat, lon  string // with their decimal points
	country   string // that the place then lies in
}

// meant tries the two halves exchanged, and decimal points put in where there
// is none. One reading alone must lie in the stated country.
func (c *Context) meant(lat, lon float64) meant {
	country, ok := place.Country(c.Text("country"))
	if !ok {
		if country, ok = place.Country(c.Text("countryCode")); !ok {
			return meant{}
		}
	}
	in := func(lat, lon float64) bool {
		return lat >= -90 && lat <= 90 && lon >= -180 && lon <= 180 && place.IsIn(country.Code, lat, lon)
	}
	latText, lonText := c.Text("decimalLatitude"), c.Text("decimalLongitude")
	var fits []meant
	if in(lon, lat) {
		fits = append(fits, meant{exchanged: lonText + ", " + latText, country: country.Name})
	}
	for _, a := range pointed(latText, lat, 90) {
		for _, b := range pointed(lonText, lon, 180) {
			x, _ := strconv.ParseFloat(a, 64)
			y, _ := strconv.ParseFloat(b, 64)
			if in(x, y) {
				fits = append(fits, meant{lat: a, lon: b, country: country.Name})
			}
		}
	}
	if len(fits) != 1 {
		return meant{}
	}
	return fits[0]
}

// pointed returns a half as it is if it can be, else with a decimal point at
// each place where it can be.
func pointed(text string, v, limit float64) []string {
	if v >= -limit && v <= limit {
		return []string{text}
	}
	if strings.Contains(text, ".") {
		return nil
	}
	digits := strings.TrimLeft(text, "+-")
	sign := text[:len(text)-len(digits)]
	var all []string
	for i := 1; i < len(digits) && i <= 3; i++ {
		s := digits[:i] + "." + digits[i:]
		if w, err := strconv.ParseFloat(s, 64); err == nil && w <= limit {
			all = append(all, sign+s)
		}
	}
	return all
}
