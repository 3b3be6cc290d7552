package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/coord"
	"cornerslip/label/lang"
)

// What labels say of places that share columns, and of cells that say more than
// their coordinates.
func TestPlacesInColumns(t *testing.T) {
	none := []string{"decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", "", "minimumElevationInMeters", "", "maximumElevationInMeters", ""}
	for _, c := range []struct {
		row           []string
		o             Options
		place, coords string // what its block ends in; all of it
	}{
		{[]string{"latitudeDegrees", "40", "latitudeMinutes", "24", "latitudeSeconds", "27", "latitudeHemisphere", "N", "longitudeDegrees", "7", "longitudeMinutes", "33", "longitudeSeconds", "1", "longitudeHemisphere", "W"},
			Options{}, "", "40° 24′ 27″ N, 7° 33′ 01″ W."},
		{[]string{"latitudeDegrees", "40", "latitudeMinutes", "24", "latitudeHemisphere", "N", "longitudeDegrees", "7", "longitudeMinutes", "33", "longitudeHemisphere", "O"},
			Options{Lang: lang.Portuguese}, "", "40° 24′ N, 7° 33′ O."},
		{[]string{"utmZone", "29T", "easting", "623000", "northing", "4474000", "geodeticDatum", "ED50"},
			Options{}, "", "UTM 29T 623000 m E, 4474000 m N (ED50)."},
		// What is on a datum of old is not turned into degrees.
		{[]string{"utmZone", "29T", "easting", "623000", "northing", "4474000", "geodeticDatum", "ED50"},
			Options{Coords: coord.Style{Form: coord.Decimal}}, "", "UTM 29T 623000 m E, 4474000 m N (ED50)."},
		{[]string{"utmZone", "29T", "easting", "623000", "northing", "4474000", "geodeticDatum", "WGS84"},
			Options{Coords: coord.Style{Form: coord.Decimal}}, "", "40.40754° N, 7.55041° W (WGS84)."},
		{[]string{"utmZone", "", "easting", "623000", "northing", "4474000"}, Options{}, "", "E 623000 N 4474000."},
		{[]string{"gridSquare", "PE27"}, Options{}, "", "PE27."},
		{[]string{"townshipRangeSection", "T13N R19W S26 NE1/4"}, Options{}, "T13N R19W S26 NE1/4.", "-"},
		{[]string{"township", "13N", "range", "19W", "section", "26", "quarterSection", "NE1/4", "surveyMeridian", "Boise"}, Options{}, "T13N R19W Sec. 26 NE1/4, Boise Meridian.", "-"},
		{[]string{"elevationFrom", "3200", "elevationTo", "3400", "elevationUnit", "ft"}, Options{}, "", "Alt. 3200–3400 ft."},
		{[]string{"elevationFrom", "3200", "elevationUnit", "ft"}, Options{Elevation: coord.ElevationStyle{In: coord.InBoth}}, "", "Alt. 3200 ft (980 m)."},
		{[]string{"depthFrom", "5", "depthTo", "6", "depthUnit", "fathoms"}, Options{}, "", "Depth 5–6 fathoms."},
		{[]string{"verbatimDepth", "-5m"}, Options{}, "", "Depth 5 m."}, {[]string{"verbatimDepth", "5-8m"}, Options{}, "", "Depth 5-8m."}, {[]string{"verbatimDepth", "- 12.5 m"}, Options{}, "", "Depth 12.5 m."},
		{[]string{"verbatimElevation", "1200 m (GPS)"}, Options{}, "", "Alt. 1200 m (GPS)."},
		// More than coordinates: nothing of it is lost.
		{[]string{"verbatimCoordinates", "ca. 40°24'N 7°33'W, slope 30° N"}, Options{}, "", "ca. 40°24'N 7°33'W, slope 30° N."},
		{[]string{"verbatimLatitude", "ca. 40°24'N", "verbatimLongitude", "7°33'W"}, Options{}, "", "ca. 40°24'N, 7°33'W."},
		{[]string{"verbatimCoordinates", "40°24'N 7°33'W (NAD27)"}, Options{}, "", "40° 24′ N, 7° 33′ W (NAD27)."},
		{[]string{"verbatimCoordinates", "40°24'N 7°33'W, alt. 1440 m (NAD27)"}, Options{}, "", "40°24'N 7°33'W, alt. 1440 m (NAD27)."},
		{[]string{"verbatimCoordinates", "T35N, R3E, S22"}, Options{}, "", "T35N, R3E, S22."},
	} {
		r := record(t, base(append(append([]string{}, none...), c.row...)...)...)
		l := Sheet(r, c.o)[0]
		plain := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace
		if got := plain(block(l, label.Coords)); got != c.coords {
			t.Errorf("%v: coordinates %q, want %q", c.row, got, c.coords)
		}
		if got := plain(block(l, label.Place)); !strings.HasSuffix(got, c.place) {
			t.Errorf("%v: place %q, want %q at its end", c.row, got, c.place)
		}
		// A gift's label holds all of it back where the place is withheld.
		r = record(t, base(append(append(append([]string{}, none...), c.row...), "informationWithheld", "position", "duplicatesTo", "PINHEL")...)...)
		gift := plain(lines(Sheet(r, c.o)[1]))
		for _, secret := range []string{c.place, strings.TrimSuffix(c.coords, ".")} {
			if secret != "" && secret != "-" && strings.Contains(gift, secret) {
				t.Errorf("%v: the gift says %q", c.row, secret)
			}
		}
	}
}
