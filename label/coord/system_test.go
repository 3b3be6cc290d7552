package coord_test

import (
	"testing"

	"cornerslip/label/coord"
)

// TestReadSystem reads what stands beside metres.
func TestReadSystem(t *testing.T) {
	for _, c := range []struct {
		text string
		want coord.System
	}{
		{"XLambert72", coord.System{Grid: "Belgian Lambert 72"}},
		{"BD72 / Belgian Lambert 72", coord.System{Grid: "Belgian Lambert 72"}},
		{"X_L93", coord.System{Grid: "Lambert-93"}},
		{"E_LV95", coord.System{Grid: "CH1903+ / LV95"}},
		{"CH1903", coord.System{Grid: "CH1903 / LV03"}},
		{"OSGB36", coord.System{Grid: "British National Grid"}},
		{"EPSG:27700", coord.System{Grid: "British National Grid"}},
		{"urn:ogc:def:crs:EPSG::3021", coord.System{Grid: "RT90"}},
		{"SWEREF99 TM", coord.System{Grid: "SWEREF 99 TM"}},
		{"32629", coord.System{UTM: true, Zone: "29N", Datum: "WGS84"}},
		{"EPSG:31983", coord.System{UTM: true, Zone: "23S", Datum: "SIRGAS 2000"}},
		{"ETRS89 / UTM zone 29N", coord.System{UTM: true, Zone: "29N", Datum: "ETRS89"}},
		{"UTM_X", coord.System{UTM: true}},
		{"WGS84", coord.System{}},
		{"EPSG:4326", coord.System{}},
		{"decimal degrees", coord.System{}},
		{"Easting", coord.System{}},
		{"", coord.System{}},
	} {
		got, ok := coord.ReadSystem(c.text)
		if got != c.want || ok != (c.want != coord.System{}) {
			t.Errorf("ReadSystem(%q) = %+v, %v; want %+v", c.text, got, ok, c.want)
		}
	}
}
