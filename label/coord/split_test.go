package coord

import (
	"errors"
	"strings"
	"testing"

	"cornerslip/label/lang"
)

// Halves as columns of tables have them, from memory; the values are the
// arithmetic of degrees. A half is "degrees|minutes|seconds|hemisphere".
var splits = []struct{ lat, lon, status, want, printed, fault string }{
	// every part, fewer, and how each is printed
	{"35|4|12|N", "83|15|3|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35|04|12|N", "083|15|03|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35|4||N", "83|15||W", "ok", "35.0666667 -83.2500000", "35°04′N, 83°15′W", ""},
	{"35|||N", "83|||W", "ok", "35.0000000 -83.0000000", "35°N, 83°W", ""},
	{"35|4.2||N", "83|15.05||W", "ok", "35.0700000 -83.2508333", "35°04.2′N, 83°15.05′W", ""},
	{"35|4.250||N", "83|15.050||W", "ok", "35.0708333 -83.2508333", "35°04.250′N, 83°15.050′W", ""},
	{"35.07|||N", "83.2508|||W", "ok", "35.0700000 -83.2508000", "35.07°N, 83.2508°W", ""},
	{"35|4|12.4|N", "83|15|3.75|W", "ok", "35.0701111 -83.2510417", "35°04′12.4″N, 83°15′03.75″W", ""},
	{"35|4|12|N", "83|15||W", "ok", "35.0700000 -83.2500000", "35°04′12″N, 83°15′W", ""},
	{"35|0|0|N", "83|0|0|W", "ok", "35.0000000 -83.0000000", "35°00′00″N, 83°00′00″W", ""},
	{"0|0|30|S", "0|0|30|W", "ok", "-0.0083333 -0.0083333", "0°00′30″S, 0°00′30″W", ""},
	{"90|0|0|N", "180|0|0|W", "ok", "90.0000000 -180.0000000", "90°00′00″N, 180°00′00″W", ""},
	// decimal commas, marks, words and hemispheres left in the cells
	{"35|4,2||N", "83|15,05||W", "ok", "35.0700000 -83.2508333", "35°04.2′N, 83°15.05′W", ""},
	{"35°|4'|12\"|N", "83º|15’|03”|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35d|4m|12s|N", "83 deg|15 min.|3 sec.|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"N35|4|12|", "W83|15|3|", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35|4|12 N|", "83|15|3W|", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35|4|12''|N", "83|15|3''|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{" 35 | 4 | 12 | n ", "83|15|3|w", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35°04'12\"|||N", "83°15'03\"|||W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35 04 12|||N", "83 15 03|||W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	// hemispheres as letter, word and sign
	{"35|4|12|North", "83|15|3|West", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"23|42|43|Sul", "46|33|10|Oeste", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"23|42|43|S.", "46|33|10|W.", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"23|42|43|south latitude", "46|33|10|west long.", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"48|12|30|nördlich", "16|22|10|ö", "ok", "48.2083333 16.3694444", "48°12′30″N, 16°22′10″E", ""},
	{"23|42|43|-", "46|33|10|-", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"35|4|12|+", "83|15|3|-", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35|4|12|1", "83|15|3|-1", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"38|42|10|N", "9|8|20|L", "ok", "38.7027778 9.1388889", "38°42′10″N, 9°08′20″E", ""},
	// signs of the degrees
	{"-23|42|43|", "-46|33|10|", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"35|4|12|", "-83|15|3|", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"−23|42|43|", "−46|33|10|", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"-23|42|43|S", "-46|33|10|W", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"-0|42|43|", "-46|33|10|", "ok", "-0.7119444 -46.5527778", "0°42′43″S, 46°33′10″W", ""},
	{"-23|-42|-43|", "-46|-33|-10|", "ok", "-23.7119444 -46.5527778", "23°42′43″S, 46°33′10″W", ""},
	{"0|-42|43|", "-46|33|10|", "ok", "-0.7119444 -46.5527778", "0°42′43″S, 46°33′10″W", ""},
	{"+35|4|12|", "-83|15|3|", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	// what a program wrote: the noughts of whole numbers, decimals and their
	// parts side by side
	{"35.0|4.0|12.0|N", "83.0|15.0|3.0|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35.0|4.0||N", "83.0|15.0||W", "ok", "35.0666667 -83.2500000", "35°04′N, 83°15′W", ""},
	{"35|4|12.0|N", "83|15|3.0|W", "ok", "35.0700000 -83.2508333", "35°04′12.0″N, 83°15′03.0″W", ""},
	{"35.0700|4|12|N", "83.2508|15|3|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	{"35.07|0|0|N", "83.2508|0|0|W", "ok", "35.0700000 -83.2508000", "35.07°N, 83.2508°W", ""},
	{"35|4.2|0|N", "83|15.05|0|W", "ok", "35.0700000 -83.2508333", "35°04.2′N, 83°15.05′W", ""},
	{"35|4.2|12|N", "83|15.05|3|W", "ok", "35.0700000 -83.2508333", "35°04′12″N, 83°15′03″W", ""},
	// what is none
	{"35|72|12|N", "83|15|3|W", "invalid", "", "", "minutes"},
	{"35|4|60|N", "83|15|3|W", "invalid", "", "", "seconds"},
	{"35|4|12|N", "83|60|3|W", "invalid", "", "", "longitude minutes"},
	{"35|4|12|N", "83|15|99.5|W", "invalid", "", "", "longitude seconds"},
	{"95|4|12|N", "83|15|3|W", "invalid", "", "", "degrees"},
	{"90|0|1|N", "83|15|3|W", "invalid", "", "", "degrees"},
	{"35|4|12|N", "183|15|3|W", "invalid", "", "", "longitude degrees"},
	{"3500|4|12|N", "83|15|3|W", "invalid", "", "", "degrees"},
	// what is missing or says two things
	{"35||12|N", "83|15|3|W", "ambiguous", "", "", "minutes"},
	{"|4|12|N", "83|15|3|W", "ambiguous", "", "", "degrees"},
	{"35|4|12|N", "|15|3|W", "ambiguous", "", "", "longitude degrees"},
	{"35|4|12|N", "83|15|3|", "ambiguous", "", "", "longitude hemisphere"},
	{"35|4|12|", "83|15|3|W", "ambiguous", "", "", "hemisphere"},
	{"35|4|12|", "83|15|3|", "ambiguous", "", "", "hemisphere"},
	{"38|42|10|N", "9|8|20|O", "ambiguous", "", "", "longitude hemisphere"},
	{"-35|4|12|N", "83|15|3|W", "ambiguous", "", "", "hemisphere"},
	{"35|4|12|N", "-83|15|3|E", "ambiguous", "", "", "longitude hemisphere"},
	{"35|4|12|E", "83|15|3|W", "ambiguous", "", "", "hemisphere"},
	{"35|4|12|N", "83|15|3|N", "ambiguous", "", "", "longitude hemisphere"},
	{"35|4|12|x", "83|15|3|W", "ambiguous", "", "", "hemisphere"},
	{"35|4|12 S|N", "83|15|3|W", "ambiguous", "", "", "hemisphere"},
	{"35|-4|12|N", "83|15|3|W", "ambiguous", "", "", "minutes"},
	{"35|four|12|N", "83|15|3|W", "ambiguous", "", "", "minutes"},
	{"35|4|1O|N", "83|15|3|W", "ambiguous", "", "", "seconds"},
	{"ca.|4|12|N", "83|15|3|W", "ambiguous", "", "", "degrees"},
	{"35.5|4|12|N", "83|15|3|W", "ambiguous", "", "", "degrees"},
	{"35|4.7|12|N", "83|15|3|W", "ambiguous", "", "", "minutes"},
	{"83|15|3|W", "35|4|12|N", "ambiguous", "", "", ""}, // exchanged
	{"35|4|12|N", "|||", "not_convertible", "", "", ""},
	{"|||", "83|15|3|W", "not_convertible", "", "", ""},
}

func splitOf(s string) Split {
	f := strings.Split(s, "|")
	for i := range f {
		f[i] = strings.TrimSpace(f[i])
	}
	return Split{f[0], f[1], f[2], f[3]}
}

func faultOf(err error) string {
	var e *CellError
	if !errors.As(err, &e) {
		return ""
	}
	name := [...]string{"degrees", "minutes", "seconds", "hemisphere", "zone", "band", "square", "easting", "northing"}[e.Cell]
	if e.Longitude {
		name = "longitude " + name
	}
	return name
}

func TestSplit(t *testing.T) {
	for _, c := range splits {
		r := ReadSplit(splitOf(c.lat), splitOf(c.lon), Hints{})
		got, printed := "", ""
		if r.Status == OK {
			got = r.Point.Lat.Decimal(7) + " " + r.Point.Lon.Decimal(7)
			p, err := r.Point.Format(Style{Tight: true}, lang.English)
			if err != nil {
				t.Error(err)
			}
			printed = strings.Join(p, " ")
		}
		if string(r.Status) != c.status || got != c.want || printed != c.printed || faultOf(r.Err) != c.fault || (r.Err == nil) != (r.Status == OK) {
			t.Errorf("%s, %s: %s %q %q in %q (%v), want %s %q %q in %q", c.lat, c.lon, r.Status, got, printed, faultOf(r.Err), r.Err, c.status, c.want, c.printed, c.fault)
		}
	}
}

// What a country settles: the choices that an omission leaves, and none where
// the figures contradict themselves.
func TestChoices(t *testing.T) {
	for _, c := range []struct {
		lat, lon string
		n        int
		usual    bool
	}{
		{"35|4|12|", "83|15|3|", 4, false},
		{"35|4|12|N", "83|15|3|", 2, false},
		{"38|42|10|N", "9|8|20|O", 2, true},
		{"38|42|10|", "9|8|20|O", 4, false},
		{"-35|4|12|N", "83|15|3|W", 0, false},
		{"35|4|12|N", "83|15|3|W", 0, false},
	} {
		r := ReadSplit(splitOf(c.lat), splitOf(c.lon), Hints{})
		if len(r.Choices) != c.n || r.Usual != c.usual {
			t.Errorf("%s, %s: %d choices, usual %t, want %d, %t", c.lat, c.lon, len(r.Choices), r.Usual, c.n, c.usual)
		}
		for _, p := range r.Choices {
			if p.Lat.abs() != (35*Degree+4*Minute+12*Second) && p.Lat.abs() != (38*Degree+42*Minute+10*Second) || p.Form != DegreesMinutesSeconds {
				t.Errorf("%s, %s: choice %v", c.lat, c.lon, p)
			}
		}
	}
	for _, c := range []struct {
		text string
		n    int
	}{{"38°42'N 9°08'O", 2}, {"29S 487654 4289012", 2}, {"zone 29, 532123 E, 4567890 N", 2}, {"41°14'N 8°36'W", 0}, {"41.2 - 8.6", 0}} {
		if r := Read(c.text, Hints{}); len(r.Choices) != c.n || c.n > 0 && !r.Usual {
			t.Errorf("%q: %d choices, usual %t, want %d", c.text, len(r.Choices), r.Usual, c.n)
		}
	}
}

// Grids as columns of tables have them: zone|band|hemisphere|square|easting|
// northing. Values were made with GeoConvert 2.1.2.
var splitGrids = []struct{ in, status, want, printed, fault string }{
	{"29T||||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29 T||||0623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"UTM 29T||||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29N||||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29N 623000mE, 4474000mN", ""},
	{"29 norte||||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29N 623000mE, 4474000mN", ""},
	{"29|T|||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29|N|||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29N 623000mE, 4474000mN", ""},
	{"29||N||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29N 623000mE, 4474000mN", ""},
	{"29.0||N||623000.0|4474000.0", "ok", "40.4075356 -7.5504095", "UTM 29N 623000mE, 4474000mN", ""},
	{"29T||N||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T|N|||623000|4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||623 000|4 474 000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||623.000|4.474.000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||623,000|4,474,000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||623000 m|4474000 m", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||623000 mE|4474000mN", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||E 623000|N 4474000", "ok", "40.4075356 -7.5504095", "UTM 29T 623000mE, 4474000mN", ""},
	{"29T||||623000.5|4474000,2", "ok", "40.4075373 -7.5504035", "UTM 29T 623000.5mE, 4474000.2mN", ""},
	{"29S|||| 517123 | 4258890 ", "ambiguous", "", "", "zone"},
	{"29S||N||517123|4258890", "ok", "38.4781755 -8.8036898", "UTM 29N 517123mE, 4258890mN", ""},
	{"23K||||323000|7394000", "ok", "-23.5547208 -46.7341270", "UTM 23K 323000mE, 7394000mN", ""},
	{"23||S||323000|7394000", "ok", "-23.5547208 -46.7341270", "UTM 23S 323000mE, 7394000mN", ""},
	{"23S||||323000|7394000", "ok", "-23.5547208 -46.7341270", "UTM 23S 323000mE, 7394000mN", ""},
	{"29|||PE|23000|74000", "not_convertible", "", "", "square"},
	{"29T|||PE|23000|74000", "ok", "40.4075400 -7.5504035", "29TPE2300074000", ""},
	{"29T|||PE|230|740", "ok", "40.4079785 -7.5498107", "29TPE230740", ""},
	{"|||29TPE2374||", "ok", "40.4119647 -7.5444216", "29TPE2374", ""},
	{"|||29T PE 23 74||", "ok", "40.4119647 -7.5444216", "29TPE2374", ""},
	{"29T|||PE27||", "ok", "40.4162439 -7.5266498", "29TPE27", ""},
	{"29T PE||||23|74", "ok", "40.4119647 -7.5444216", "29TPE2374", ""},
	{"|||PE27||", "not_convertible", "", "", "square"},
	{"|||TQ30||", "not_convertible", "", "", "square"},
	{"|||QD15||", "not_convertible", "", "", "square"},
	{"|||3023||", "not_convertible", "", "", "square"},
	{"29T|||PE|230|74", "invalid", "", "", "easting"},
	{"||||623000|4474000", "not_convertible", "", "", "zone"},
	{"29T||||623000|", "not_convertible", "", "", "northing"},
	{"29T|||||4474000", "not_convertible", "", "", "easting"},
	{"29T||||4474000|623000", "ambiguous", "", "", "easting"},
	{"61T||||623000|4474000", "invalid", "", "", "zone"},
	{"29T||||6230|4474000", "invalid", "", "", "easting"},
	{"29T||||623000|14474000", "invalid", "", "", "northing"},
	{"29T||||623000 ft|4474000", "not_convertible", "", "", "easting"},
	{"29T||||623000|approx.", "not_convertible", "", "", "northing"},
	{"30S||||623000|4474000", "ok", "-49.8737594 -1.2881660", "UTM 30S 623000mE, 4474000mN", ""}, // 40.4° is in T, so S is the south
	{"29U||||623000|4474000", "ambiguous", "", "", "zone"},
	{"29T|U|||623000|4474000", "ambiguous", "", "", "band"},
	{"29T||S||623000|4474000", "ambiguous", "", "", "hemisphere"},
	{"xx||||623000|4474000", "not_convertible", "", "", "zone"},
	{"29T|||TQX|623000|4474000", "not_convertible", "", "", "square"},
	{"29T ED50||||623000|4474000", "ambiguous", "", "", ""}, // Local
	{"29N||||623000.500|183.514", "ok", "0.0016600 -7.8946946", "UTM 29N 623000.500mE, 183.514mN", ""},
	{"29N||||623.000|183.514", "ok", "1.6599930 -7.8942381", "UTM 29N 623000mE, 183514mN", ""},
	{"29N||||623000|183.514", "ambiguous", "", "", "northing"},
	// X and Y of degrees
	{"||||-7.5504|40.4075", "ok", "40.4075000 -7.5504000", "40.4075°N, 7.5504°W", ""},
	{"||||7°33'01\"W|40°24'27\"N", "ok", "40.4075000 -7.5502778", "40°24′27″N, 7°33′01″W", ""},
	{"||||-7|40", "not_convertible", "", "", "easting"},
}

func TestSplitGrid(t *testing.T) {
	for _, c := range splitGrids {
		f := strings.Split(c.in, "|")
		for i := range f {
			f[i] = strings.TrimSpace(f[i])
		}
		r := ReadSplitGrid(SplitGrid{f[0], f[1], f[2], f[3], f[4], f[5]}, Hints{})
		got, printed := "", ""
		if r.Status == OK {
			got = r.Point.Lat.Decimal(7) + " " + r.Point.Lon.Decimal(7)
			p, err := r.Point.Format(Style{Tight: true}, lang.English)
			if err != nil {
				t.Error(err)
			}
			printed = strings.ReplaceAll(strings.Join(p, " "), "\u00a0", " ")
		}
		if string(r.Status) != c.status || got != c.want || printed != c.printed || faultOf(r.Err) != c.fault || (r.Err == nil) != (r.Status == OK) {
			t.Errorf("%s: %s %q %q in %q (%v), want %s %q %q in %q", c.in, r.Status, got, printed, faultOf(r.Err), r.Err, c.status, c.want, c.printed, c.fault)
		}
	}
}
