package trade

import (
	"strings"
	"testing"
)

// A county in the place of the state, and what is none.
func TestStateCounty(t *testing.T) {
	for _, tt := range []struct{ country, state, county, want string }{
		{"United States", "Alameda", "California", "a county stands here, and its state California in county: exchange the two"},
		{"USA", "Kern County", "Calif.", ""}, // which may be a county's name for all we know
		{"USA", "Kern County", "California", "a county stands here, and its state California in county: exchange the two"},
		{"USA", "Kern County", "", "a county stands here, and no state: move it to county, and write the state here"},
		{"USA", "Alameda", "", "a county stands here, and no state: move it to county, and write the state here"},
		{"USA", "Penna", "Washington", ""},
		{"USA", "Kern", "California", ""},
		{"USA", "California", "Nevada", ""},
		{"USA", "New York", "New York", ""},
		{"USA", "New York County", "", "a county stands here, and no state: move it to county, and write the state here"},
		{"USA", "Northern Plains", "", ""},
		{"Brazil", "Serra Verde", "", ""},
		{"Portugal", "Alameda", "California", ""},
		{"", "Alameda", "California", ""},
	} {
		bare := func(number, country, state, county string) []string {
			return []string{"recordNumber", number, "country", country, "stateProvince", state, "county", county, "municipality", "", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}
		}
		_, fs := run(t, open(t, rows(bare("214", "United States", "California", "Alameda"), bare("215", tt.country, tt.state, tt.county))...), options(t))
		var got []string
		for _, f := range fs {
			if f.Rule == "state-county" {
				got = append(got, f.Message)
			}
		}
		if s := strings.Join(got, "; "); s != tt.want {
			t.Errorf("%s, %s, %s: %s", tt.country, tt.state, tt.county, s)
		}
	}
}

// A locality that names its land, in letters without signs between the words too.
func TestTellsLand(t *testing.T) {
	for text, want := range map[string]bool{
		"Portugal: Minho, Valdoura": true, "Serra de Valdoura, Portugal": true, "Serra de Valdoura": false,
		"中国 西藏自治区": true, "中国西藏自治区": true, "日本、長野県": true, "西藏自治区": false, "大韓": false,
	} {
		if got := tellsLand(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
