package trade

import (
	"strings"
	"testing"
)

// What the record says of its country and of the sea, and what that makes of
// the same place.
func TestWhereIs(t *testing.T) {
	const inland = "on the slopes, 3 km N of the village"
	for _, tt := range []struct {
		lat, lon, country, locality string
		more                        []string
		want                        string // the rules that speak
	}{
		{"38.5712", "-7.9135", "Portugal", inland, []string{"countryCode", "DE"}, "country-code"},
		{"38.5712", "-7.9135", "Portugal", inland, []string{"countryCode", "PT"}, ""},
		{"38.5712", "-7.9135", "Portugal", inland, []string{"countryCode", "NA"}, ""},
		{"38.5712", "-7.9135", "Spain", inland, []string{"countryCode", "PT"}, "country-code"},
		{"", "", "Portugal", inland, []string{"countryCode", "ES"}, "country-code"},
		{"", "", "France", inland, []string{"countryCode", "RE"}, ""},
		{"-21.1212", "55.5312", "France", inland, []string{"countryCode", "RE"}, ""},
		{"48.8212", "2.2512", "France", inland, []string{"countryCode", "RE"}, "country-code"},
		{"48.8212", "2.2512", "Réunion", inland, []string{"countryCode", "FR"}, "country-code"},
		{"49.2012", "16.6112", "Czechoslovakia", inland, []string{"countryCode", "CZ"}, ""},
		{"40.1612", "24.3312", "Macedonia", inland, []string{"countryCode", "GR"}, ""},
		{"22.2112", "114.1512", "China", inland, []string{"countryCode", "HK"}, ""},
		{"54.6012", "-5.9312", "Ireland", inland, []string{"countryCode", "GB"}, ""},
		// NA is Namibia, and what programs write for nothing.
		{"38.5712", "-7.9135", "", inland, []string{"countryCode", "NA"}, ""},
		{"-22.5612", "17.0712", "", inland, []string{"countryCode", "NA"}, ""},
		{"22.5612", "17.0712", "", inland, []string{"countryCode", "NA"}, "coordinates-sign"},
		{"22.5612", "17.0712", "Namibia", inland, nil, "coordinates-sign"},
		// The sea where it is said, and where it is not.
		{"37.7412", "-129.5312", "USA", inland, nil, "coordinates-sea"},
		{"37.7412", "-129.5312", "USA", "dredged off the coast", nil, ""},
		{"37.7412", "-129.5312", "USA", "R/V station 14", nil, ""},
		{"37.7412", "-129.5312", "USA", "an meinem Fenster", []string{"waterBody", "Pacific Ocean"}, ""},
		{"37.7412", "-129.5312", "USA", inland, []string{"waterBody", "Sacramento River"}, "coordinates-sea"},
		{"37.7412", "-129.5312", "USA", "beach, in drift", nil, "coordinates-sea"},
		{"37.7412", "-129.5312", "USA", inland, []string{"minimumDepthInMeters", "30"}, ""},
		{"37.7412", "-129.5312", "", inland, nil, "coordinates-sea"},
		{"63.7512", "3.8512", "Norway", inland, nil, "coordinates-sea"},
		{"63.7512", "3.8512", "Norway", "trål, 90 m djup", nil, ""},
		{"63.7512", "3.8512", "Norway", inland, []string{"coordinateUncertaintyInMeters", "150000"}, ""},
		{"38.40", "-9.45", "Portugal", inland, nil, ""},
		{"38.4012", "-10.1512", "Portugal", inland, []string{"coordinateUncertaintyInMeters", "100"}, "coordinates-sea"},
		{"38.4012", "-10.1512", "Portugal", "islet off the cape", []string{"coordinateUncertaintyInMeters", "100"}, ""},
		{"38.4", "-10.0", "Portugal", inland, nil, ""},
		{"38°25'N", "9°46'W", "Portugal", inland, nil, ""},
		{"38°25'N", "10°16'W", "Portugal", inland, nil, "coordinates-sea"},
		{"38.5", "-10.0", "Portugal", inland, nil, ""},
		{"38.2512", "-3.5012", "Spain", "500 m above sea level", nil, ""},
		// A mistake of the sign in a record of the sea is told all the same.
		{"38.7512", "27.5012", "Portugal", "dredged, 30 m depth", nil, "coordinates-sign"},
		{"36.5012", "-11.5012", "Portugal", "dredged, 30 m depth", nil, ""},
	} {
		more := tt.more
		if tt.lat == "" {
			more = append(more, "geodeticDatum", "")
		}
		_, fs := run(t, open(t, rows(at(0, tt.lat, tt.lon, tt.country, "", tt.locality, more...))...), options(t))
		var got []string
		for _, f := range ofTrade(fs) {
			if strings.HasPrefix(f.Rule, "coordinates-") || f.Rule == "country-code" {
				got = append(got, f.Rule)
			}
		}
		if g := strings.Join(got, " "); g != tt.want {
			t.Errorf("%s, %s, %q, %q, %v: %q, not %q", tt.lat, tt.lon, tt.country, tt.locality, tt.more, g, tt.want)
		}
	}
}

// A place in the sea of no stated country is told with the lands that common slips
// would lead to.
func TestLandings(t *testing.T) {
	for _, tt := range []struct{ lat, lon, want string }{
		{"-8.6112", "41.2312", "; it would lie in Portugal with latitude and longitude exchanged, in Brazil with the sign of the longitude changed, in Ethiopia with the sign of the latitude changed"},
		{"5.0012", "-130.0012", "collected there"},
	} {
		by := said(t, [][]string{at(0, tt.lat, tt.lon, "", "", "on the slopes, 3 km N of the village")})
		if !strings.HasSuffix(by[1], tt.want) {
			t.Errorf("%s, %s: %s", tt.lat, tt.lon, by[1])
		}
	}
}
