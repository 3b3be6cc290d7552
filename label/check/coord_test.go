package check

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/coord"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// places are tables of one row, as headings and cells, with what is said of
// them and what the label prints: coordinates, elevation, depth, survey, sheet.
var places = []struct {
	head, row string
	country   string // Portugal if not said, - for none
	said      []string
	printed   string
}{
	// degrees, minutes and seconds
	{"Lat deg|Lat min|Lat sec|N/S|Long deg|Long min|Long sec|E/W", "38|28|16|N|8|48|13|W", "", nil, "38°28′16″N, 8°48′13″W"},
	{"lat_d|lat_m|lat_s|lat_ns|lon_d|lon_m|lon_s|lon_ew", "38|28||N|8|48||W", "", nil, "38°28′N, 8°48′W"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28.27|N|8|48.2|W", "", nil, "38°28.27′N, 8°48.2′W"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38||N|8||W", "", nil, "38°N, 8°W"},
	{"Lat|N/S|Long|E/W", "38.4712|N|8.8035|W", "", nil, "38.4712°N, 8.8035°W"},
	{"Lat|N/S|Long|E/W", "38°28'16\"|N|8°48'13\"|W", "", nil, "38°28′16″N, 8°48′13″W"},
	{"Lat|N/S|Long|E/W", "|N||W", "", nil, ""},
	{"Lat|Long|E/W", "38.4712|8.8035|W", "", nil, "38.4712°N, 8.8035°W"},
	{"Lat|Long|E/W", "-23.4712|46.8035|W", "Brazil", nil, "23.4712°S, 46.8035°W"},
	{"Lat deg|Lat min|N/S|Long", "38|28|N|-8.8035", "", nil, "38°28′N, 8.8035°W"},
	{"Lat N|Long W", "38.4712|8.8035", "", nil, "38.4712°N, 8.8035°W"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "||N|||W", "", nil, ""},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28|N|8|48|O", "", nil, "38°28′N, 8°48′W"}, // Oeste, for it is in Portugal
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "48|12|N|16|22|O", "Austria", nil, "48°12′N, 16°22′E"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28|N|8|48|O", "-", []string{
		"error coordinates-parts longitudeHemisphere: the letter O means east in some languages and west in others: write E or W"}, ""},
	{"Lat deg|Lat min|Long deg|Long min", "38|28|8|48", "", []string{
		"warning coordinates-hemisphere latitudeDegrees: no hemisphere is written: printed N and W, since no other place with these figures lies in Portugal"}, "38°28′N, 8°48′W"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28|N|8|48|", "", []string{
		"warning coordinates-hemisphere longitudeDegrees: no hemisphere is written: printed N and W, since no other place with these figures lies in Portugal"}, "38°28′N, 8°48′W"},
	{"Lat deg|Lat min|Long deg|Long min", "38|28|8|48", "-", []string{
		"error coordinates-parts latitudeDegrees: the hemispheres are not written: add N or S, E or W"}, ""},
	{"Lat deg|Lat min|Long deg|Long min", "38|28|8|48", "Spain", []string{
		"error coordinates-parts latitudeDegrees: the hemispheres are not written: add N or S, E or W"}, ""},
	{"Lat deg|Lat min|Long deg|Long min", "0|28|9|48", "Gabon", []string{
		"error coordinates-parts latitudeDegrees: the hemispheres are not written: add N or S, E or W"}, ""},
	{"Lat deg|Lat min|Long deg|Long min", "38|28|-8|48", "", nil, "38°28′N, 8°48′W"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|72|N|8|48|W", "", []string{
		"error coordinates-parts latitudeMinutes: 72 minutes do not exist: they run from 0 to 59; if they are hundredths of the degrees, write 38.72 there"}, ""},
	{"Lat deg|Lat min|N/S|Long deg|Long min|Long sec|E/W", "38|28|N|8|48|60|W", "", []string{
		"error coordinates-parts longitudeSeconds: 60 seconds do not exist: they run from 0 to 59; if they are hundredths of the minutes, write 48.60 there"}, ""},
	{"Lat deg|Lat min|Lat sec|N/S|Long deg|Long min|Long sec|E/W", "38||16|N|8|48|13|W", "", []string{
		"error coordinates-parts latitudeMinutes: the minutes are missing: write 0 if there are none"}, ""},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28|N|||W", "", []string{
		"error coordinates-half longitudeDegrees: the longitude is missing: fill it in, or clear the latitude"}, ""},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28|N||48|W", "", []string{
		"error coordinates-parts longitudeDegrees: the degrees are missing: fill them in, or clear the rest"}, ""},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "38|28|E|8|48|W", "", []string{
		"error coordinates-parts latitudeHemisphere: E is a hemisphere of the longitude: write N or S"}, ""},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W", "98|28|N|8|48|W", "", []string{
		"error coordinates-parts latitudeDegrees: latitude 98.4667° is beyond 90°"}, ""},
	// beside decimal degrees: within the rounding, or both are shown
	{"Lat deg|Lat min|Lat sec|N/S|Long deg|Long min|Long sec|E/W|decimalLatitude|decimalLongitude", "38|28|16|N|8|48|13|W|38.47111|-8.80361", "", nil, "38.47111°N, 8.80361°W"},
	{"Lat deg|Lat min|Lat sec|N/S|Long deg|Long min|Long sec|E/W|decimalLatitude|decimalLongitude", "38|28|16|N|8|48|13|W||", "", nil, "38°28′16″N, 8°48′13″W"},
	{"Lat deg|Lat min|Lat sec|N/S|Long deg|Long min|Long sec|E/W|decimalLatitude|decimalLongitude", "38|28|16|N|8|48|13|W|38.47211|-8.80361", "", []string{
		"warning coordinates-disagree latitudeDegrees: 38°28′16″ N, 8°48′13″ W lies 110 m from the place in the other columns, 38.47211, -8.80361: correct the wrong one"}, "38.47211°N, 8.80361°W"},
	{"Lat deg|Lat min|N/S|Long deg|Long min|E/W|decimalLatitude|decimalLongitude", "38|28|N|8|48|E|38.4667|-8.8", "", []string{
		"error coordinates-columns latitudeDegrees: 38°28′ N, 8°48′ E lies 1530 km from the place in the other columns, 38.4667, -8.8: correct the wrong one"}, ""},
	// grids
	{"UTM zone|Easting|Northing", "29S|517137|4258153", "", nil, "UTM 29N 517137mE, 4258153mN"},
	{"UTM zone|Easting|Northing", "29|517137|4258153", "", nil, "UTM 29N 517137mE, 4258153mN"},
	{"UTM zone|Easting|Northing", "29|517137|4258153", "-", []string{
		"warning coordinates-verbatim utmZone: the hemisphere is missing: write the band's letter behind the zone, as 29T; printed as written"}, "zone 29 E 517137 N 4258153"},
	{"UTM zone|Easting|Northing", "29T|623000|4474000", "", nil, "UTM 29T 623000mE, 4474000mN"},
	{"UTM zone|Easting|Northing", "|623000|4474000", "", []string{
		"warning coordinates-verbatim utmZone: the UTM zone is missing: write it with its band, as 29T; printed as written"}, "E 623000 N 4474000"},
	{"UTM zone|Easting|Northing", "61T|623000|4474000", "", []string{
		"error coordinates-parts utmZone: UTM zone 61 does not exist: zones run from 1 to 60"}, ""},
	{"UTM zone|Easting|Northing", "29T|62300|4474000", "", []string{
		"error coordinates-parts easting: easting 62300.000 is outside UTM: 100000 to 900000"}, ""},
	{"UTM zone|Easting|Northing|decimalLatitude|decimalLongitude", "29T|623000|4474000|40.40754|-7.55041", "", nil, "40.40754°N, 7.55041°W"},
	{"UTM zone|Easting|Northing|decimalLatitude|decimalLongitude", "29T|632000|4474000|40.40754|-7.55041", "", []string{
		"error coordinates-columns northing: 4474000, 632000 lies 9.0 km from the place in the other columns, 40.40754, -7.55041: correct the wrong one"}, ""},
	// grids that are no UTM, and metres of which nothing says what they are
	{"XLambert72|YLambert72", "158500|165200", "Belgium", nil, "Belgian Lambert 72 X 158500 Y 165200"},
	{"RD_X|RD_Y", "138500|454200", "Netherlands", nil, "Rijksdriehoek X 138500 Y 454200"},
	{"Easting|Northing|verbatimSRS", "451500|206200|EPSG:27700", "United Kingdom", nil, "British National Grid E 451500 N 206200"},
	{"X|Y|verbatimCoordinateSystem", "658500|6861200|Lambert 93", "France", nil, "Lambert 93 X 658500 Y 6861200"},
	{"verbatimCoordinates|verbatimCoordinateSystem", "6638200 1603100|RT90 2.5 gon V", "Sweden", nil, "RT90 2.5 gon V 6638200 1603100"},
	{"verbatimLatitude|verbatimLongitude|verbatimCoordinateSystem", "200200|600500|CH1903 / LV03", "Switzerland", nil, "CH1903 / LV03 200200, 600500"},
	{"Easting|Northing|verbatimSRS", "517137|4258153|WGS 84 / UTM zone 29N", "", nil, "UTM 29N 517137mE, 4258153mN"},
	{"verbatimCoordinates|verbatimSRS", "517137 4258153|EPSG:25829", "", nil, "UTM 29N 517137mE, 4258153mN"},
	{"X|Y", "158500|165200", "Belgium", []string{
		"warning coordinates-verbatim northing: nothing names the grid: write the UTM zone with its band, as 29T, or the name of another grid, as Lambert 72, in verbatimCoordinateSystem; printed as written"}, "X 158500 Y 165200"},
	{"UTM_X|UTM_Y", "517137|4258153", "", []string{
		"warning coordinates-verbatim northing: the UTM zone is missing: write it with its band, as 29T; printed as written"}, "X 517137 Y 4258153"},
	{"X|Y", "-8.8035|38.4712", "", nil, "38.4712°N, 8.8035°W"},
	{"quadrícula UTM", "29TPE2374", "", nil, "29TPE2374"},
	{"quadrícula UTM", "PE27", "", nil, "UTM PE27"}, // Portugal has one
	{"quadrícula UTM", "PE27", "-", []string{
		"warning coordinates-verbatim gridSquare: zone and band of the square are missing: write them before it, as 29T; printed as written"}, "UTM PE27"},
	{"quadrícula UTM", "PE27", "Switzerland", []string{
		"warning coordinates-verbatim gridSquare: zone and band of the square are missing: write them before it, as 29T; printed as written"}, "UTM PE27"},
	{"grid square", "SK1234", "", nil, "SK1234"},
	{"hectad", "SK12", "United Kingdom", nil, "SK12"},
	{"quadrícula UTM|decimalLatitude|decimalLongitude", "29TPE27|40.40754|-7.55041", "", nil, "40.40754°N, 7.55041°W"},
	{"quadrícula UTM|decimalLatitude|decimalLongitude", "29TPE57|40.40754|-7.55041", "", []string{
		"error coordinates-columns gridSquare: 29TPE57 lies 32 km from the place in the other columns, 40.40754, -7.55041: correct the wrong one"}, ""},
	// surveys and sheets
	{"TRS", "T13N R19W S26 NE1/4", "United States", nil, "T13N R19W S26 NE1/4"},
	{"Township|Range|Section|Quarter", "13N|19W|26|NE1/4", "United States", nil, "T13N R19W Sec. 26 NE1/4"},
	{"Township|Range|Section|Quarter|Meridian", "T13N|R19W|Sec. 26||Boise", "United States", []string{}, "T13N R19W Sec. 26"},
	{"TRS", "T13N R19W Sec. 46", "United States", []string{
		"warning survey-section townshipRangeSection: section 46: a township has 36"}, "T13N R19W Sec. 46"},
	{"Carta militar", "454", "", nil, "Carta militar: 454"},
	{"Map sheet", "Setúbal 454", "", nil, "Map sheet: Setúbal 454"},
	// heights
	{"Elev. (ft)", "3200", "", nil, "3200 ft"},
	{"Altitude (feet)", "ca. 3200", "", nil, "c. 3200 ft"},
	{"alt_ft", "3,200", "", nil, "3200 ft"},
	{"Höhe (Fuß)", "3200-3400", "", nil, "3200–3400 ft"},
	{"Elev. (ft)", "3200.0", "", nil, "3200 ft"},
	{"Elev. (ft)", "975 m", "", nil, "975 m"},
	{"Elev. (m)", "3200 ft", "", nil, "3200 ft"},
	{"Elev. (m)", "975", "", nil, "975 m"},
	{"minimumElevationInMeters", "3200 ft", "", []string{
		"error elevation-unreadable minimumElevationInMeters: in feet, in a column of metres: convert it, or move it to verbatimElevation"}, ""},
	{"MINIMUM_ELEVATION_IN_METERS", "3200 ft", "", []string{
		"error elevation-unreadable minimumElevationInMeters: in feet, in a column of metres: convert it, or move it to verbatimElevation"}, ""},
	{"Elev min (ft)|Elev max (ft)", "3200|3400", "", nil, "3200–3400 ft"},
	{"Elev min (ft)|Elev max (ft)", "3400|3200", "", []string{
		"error elevation-limits elevationFrom: above the upper height, 3200: exchange the two or correct one"}, ""},
	{"Elev (ft)", "32000", "", []string{
		"error elevation-limits elevationFrom: no land lies there: heights run from -430 to 8850 m"}, ""},
	{"MinElev|MaxElev|ElevUnit", "3200|3400|ft", "", nil, "3200–3400 ft"},
	{"MinElev|MaxElev|ElevUnit", "1200|1400|m", "", nil, "1200–1400 m"},
	{"MinElev|MaxElev|ElevUnit", "1200|1400|metres", "", nil, "1200–1400 m"},
	{"MinElev|MaxElev|ElevUnit", "3200||Feet", "", nil, "3200 ft"},
	{"Elevation|ElevUnit", "3200|yd", "", []string{
		"warning elevation-unit elevationUnit: no unit of height: write m or ft; printed as written"}, "3200"},
	{"Elevation|ElevUnit", "3200|", "", []string{
		"warning elevation-unit elevationFrom: has no unit: add m or ft; printed as written"}, "3200"},
	{"Elevation|ElevUnit", "3200 ft|m", "", []string{
		"warning elevation-unit elevationFrom: the unit is ft here and m in the column beside it: keep one; printed as written"}, "3200 ft"},
	{"Alt (m)|Alt (ft)", "975|3200", "", nil, "975 m"},
	{"Alt (m)|Alt (ft)", "|3200", "", nil, "3200 ft"},
	{"Alt (m)|Alt (ft)", "1975|3200", "", []string{
		"warning elevation-columns minimumElevationInMeters: 1975 beside 3200 ft, which are 975 m: correct the wrong one"}, "1975 m"},
	{"verbatimElevation", "1200 m (GPS)", "", nil, "1200 m (GPS)"},
	{"verbatimElevation", "300 m/ft", "", []string{
		"warning elevation-verbatim verbatimElevation: names both metres and feet for one figure: keep one; printed as written"}, "300 m/ft"},
	// depths
	{"Depth (ft)", "30", "", nil, "depth 30 ft"},
	{"Depth|DepthUnit", "5|fathoms", "", nil, "depth 5 fathoms"},
	{"Min depth (ft)|Max depth (ft)", "30|40", "", nil, "depth 30–40 ft"},
}

func TestPlacesInColumns(t *testing.T) {
	for _, tt := range places {
		country := tt.country
		switch country {
		case "":
			country = "Portugal"
		case "-":
			country = ""
		}
		text := "recordedBy,recordNumber,eventDate,scientificName,country,locality,geodeticDatum"
		for h := range strings.SplitSeq(tt.head, "|") {
			text += `,"` + strings.ReplaceAll(h, `"`, `""`) + `"`
		}
		text += "\nI. Almeida,214,2026-05-14,Thymus capitellatus Hoffmanns. & Link," + country + ",Valdoura,WGS84"
		for c := range strings.SplitSeq(tt.row, "|") {
			text += `,"` + strings.ReplaceAll(c, `"`, `""`) + `"`
		}
		rs, fs := run(t, New(options(t)), openBytes(t, "trip.csv", []byte(text+"\n")))
		var got []string
		for _, f := range fs {
			style(t, f)
			if f.Severity > label.Note {
				got = append(got, f.Severity.String()+" "+f.Rule+" "+f.Term+": "+f.Message)
			}
		}
		if d := cmp.Diff(tt.said, got, cmpopts.EquateEmpty()); d != "" {
			t.Errorf("%s: %s: -want +got\n%s", tt.head, tt.row, d)
		}
		r := rs[0]
		var parts []string
		if r.HasCoordinates {
			p, err := r.Coordinates.Format(coord.Style{Tight: true}, "en")
			if err != nil {
				t.Error(err)
			}
			parts = append(parts, strings.Join(p, " "))
		} else {
			parts = append(parts, r.CoordinatesText)
		}
		if r.HasElevation {
			parts = append(parts, r.Elevation.Format(coord.ElevationStyle{}, "en"))
		} else {
			parts = append(parts, r.ElevationText)
		}
		if r.DepthText != "" {
			parts = append(parts, "depth "+r.DepthText)
		}
		parts = append(parts, r.Survey, r.MapSheet)
		printed := strings.TrimSpace(strings.Join(parts, " "))
		if !r.Printable() {
			printed = ""
		}
		printed = strings.Join(strings.Fields(strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(printed)), " ")
		if printed != tt.printed {
			t.Errorf("%s: %s: printed %q, want %q", tt.head, tt.row, printed, tt.printed)
		}
	}
}

// A square without its zone is right where its country has it.
func TestBareSquares(t *testing.T) {
	for _, c := range []struct {
		country, text string
		quiet         bool
	}{
		{"Portugal", "NC59", true},
		{"Portugal", "PE2374", true}, // two bands share PE
		{"Switzerland", "NC59", false},
		{"Spain", "QB78", true},
		{"Spain", "VK4074", true},
		{"United States", "NC59", false},
		{"", "NC59", false},
		{"Portugal", "ZZ59", false},
	} {
		r, fs := run(t, New(options(t)), open(t, With("country", c.country, "decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", c.text)))
		if quiet := len(fs) == 0; quiet != c.quiet {
			t.Errorf("%s in %s: %v", c.text, c.country, fs)
		}
		if r[0].CoordinatesText != c.text {
			t.Errorf("%s in %s is printed %q", c.text, c.country, r[0].CoordinatesText)
		}
	}
}
