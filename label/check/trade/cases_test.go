package trade

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/label/check"
)

// inTurkey is a change of place that later pairs of a case may change again.
var inTurkey = []string{"country", "Turkey", "stateProvince", "", "decimalLatitude", "38.4712", "decimalLongitude", "34.8035", "minimumElevationInMeters", "1150"}

// cases are tables, a row for each list of changes, and what the trade's rules
// say of them is kept in testdata/findings.txt. A case whose name begins with
// "sound" raises nothing.
var cases = []struct {
	name string
	rows [][]string
}{
	{"sound row", [][]string{nil}},
	{"another height in the locality", [][]string{{"locality", "Valdoura, dunes, alt. ca. 1,200 ft"}, {"recordNumber", "215", "locality", "Valdoura, ridge, 900-1000 m s.n.m."}}},
	{"codes for the place", [][]string{{"locality", "K12", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}, {"recordNumber", "215", "locality", "Plot 7", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}}},
	{"sound, short places", [][]string{{"locality", "BR-319", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}, {"recordNumber", "215", "locality", "Km 41", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}, {"recordNumber", "216", "locality", "S3"}, {"recordNumber", "217", "locality", "S3", "municipality", "Palmela", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}}},
	{"another place in the locality", [][]string{{"locality", "Valdoura, dunes, 38°58'N 8°48'W"}}},
	{"sound, heights in the locality", [][]string{{"locality", "Valdoura, dunes, alt. 26 ft"}, {"recordNumber", "215", "locality", "Foot of the Cume (alt. 1993 m), dunes"},
		{"recordNumber", "216", "locality", "Valdoura, 300 m W of the station"}, {"recordNumber", "217", "locality", "Valdoura, alt. 5-10 m, by a tower of alt. 900 m"}}},
	{"sound, places in the locality", [][]string{{"locality", "Valdoura, dunes, 38.4712° N, 8.8035° W"}, {"recordNumber", "215", "locality", "T2N R3W, 12 km N of the station"}, {"recordNumber", "216", "locality", "Valdoura, 38°28'N 8°48'W"}}},
	{"country at the end of the locality", [][]string{{"locality", "Dunes near the field station, Portugal."}}},
	{"country twice in the locality", [][]string{{"locality", "Portugal, Portugal"}}},
	{"uncertainty to the hundredth of a millimetre", [][]string{{"coordinateUncertaintyInMeters", "35.48213"}}},
	{"sound, an uncertainty of whole metres", [][]string{{"coordinateUncertaintyInMeters", "36.00"}, {"recordNumber", "215", "coordinateUncertaintyInMeters", "36.5"}}},
	{"sound, a locality that ends like the country", [][]string{{"locality", "Road from the station to Portugal"}}},
	{"sound, a locality that ends with another country", [][]string{{"locality", "Dunes opposite the coast, in sight of Madeira"}}},
	{"sound in Turkey", [][]string{inTurkey}},

	{"swapped, plain", [][]string{{"decimalLatitude", "-8.8035", "decimalLongitude", "38.4712"}}},
	{"swapped and a sign lost", [][]string{{"decimalLatitude", "8.8035", "decimalLongitude", "38.4712"}}},
	{"sign of longitude lost", [][]string{{"decimalLongitude", "8.8035"}}},
	{"sign of latitude wrong", [][]string{{"decimalLatitude", "-38.4712"}}},
	{"both signs wrong", [][]string{{"country", "New Zealand", "stateProvince", "", "decimalLatitude", "41.2900", "decimalLongitude", "-174.7800"}}},
	{"two signs fit", [][]string{{"country", "Brazil", "stateProvince", "", "decimalLatitude", "2.5012", "decimalLongitude", "60.5012"}}},
	{"sign in words", [][]string{{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "38°28'16\"N 8°48'13\"E"}}},
	{"sign, by countryCode alone", [][]string{{"country", "", "countryCode", "PT", "decimalLongitude", "8.8035"}}},
	{"another country", [][]string{{"country", "Spain", "stateProvince", ""}}},
	{"a name in another language", [][]string{{"country", "Espanha", "stateProvince", ""}}},
	{"in the sea", [][]string{{"decimalLongitude", "-12.8035"}}},
	{"in the sea, no country", [][]string{{"country", "", "stateProvince", "", "decimalLongitude", "-14.8035"}}},
	{"zero", [][]string{{"decimalLatitude", "0.000", "decimalLongitude", "0"}}},
	{"sound: islands and territories", [][]string{
		{"country", "Portugal", "stateProvince", "Açores", "decimalLatitude", "38.4702", "decimalLongitude", "-28.4205"},
		{"recordNumber", "215", "country", "France", "stateProvince", "", "decimalLatitude", "-21.1212", "decimalLongitude", "55.5312", "locality", "Cilaos, in the cirque"},
		{"recordNumber", "216", "country", "Réunion", "stateProvince", "", "decimalLatitude", "-21.1212", "decimalLongitude", "55.5312", "locality", "Cilaos, in the cirque"},
		{"recordNumber", "217", "country", "United States", "stateProvince", "Alaska", "decimalLatitude", "52.9012", "decimalLongitude", "173.1512", "locality", "Attu Island"},
		{"recordNumber", "218", "country", "Fiji", "stateProvince", "", "decimalLatitude", "-16.8012", "decimalLongitude", "-179.9812", "locality", "Taveuni, east side"},
		{"recordNumber", "219", "country", "Ireland", "stateProvince", "", "decimalLatitude", "54.6012", "decimalLongitude", "-5.9312", "locality", "Belfast, in a park"},
	}},
	{"sound: borders within their error, and old ones", [][]string{
		{"country", "Portugal", "stateProvince", "Viana do Castelo", "decimalLatitude", "41.8200", "decimalLongitude", "-8.0700", "coordinateUncertaintyInMeters", "3000", "minimumElevationInMeters", "700"},
		{"recordNumber", "12", "eventDate", "1912-05-14", "country", "Austria", "stateProvince", "", "decimalLatitude", "46.0612", "decimalLongitude", "14.5112", "locality", "Laibach, on the castle hill"},
		{"recordNumber", "13", "eventDate", "2005-05-14", "country", "Sudan", "stateProvince", "", "decimalLatitude", "4.8512", "decimalLongitude", "31.5812", "locality", "Juba, on the river bank", "minimumElevationInMeters", "460"},
		{"recordNumber", "14", "eventDate", "1965-05-14", "country", "Portugal", "stateProvince", "Angola", "decimalLatitude", "-8.8412", "decimalLongitude", "13.2312", "locality", "Luanda, the fortress"},
	}},
	{"an old border long after", [][]string{{"country", "Austria", "stateProvince", "", "decimalLatitude", "46.0612", "decimalLongitude", "14.5112", "locality", "Ljubljana, on the castle hill"}}},
	{"sound: the sea where it is said", [][]string{
		{"decimalLongitude", "-12.8035", "waterBody", "Atlantic Ocean"},
		{"recordNumber", "215", "country", "", "countryCode", "XZ", "decimalLongitude", "-14.8035", "locality", "on a buoy adrift"},
	}},
	{"sound: countries that are none of today", [][]string{{"country", "Czechoslovakia", "stateProvince", "", "decimalLatitude", "49.2012", "decimalLongitude", "16.6012", "eventDate", "1975-05-14", "minimumElevationInMeters", "250"}}},
	{"sound: datums of the EPSG register, one key from another", [][]string{{"geodeticDatum", "Lisbon"}, {"recordNumber", "215", "geodeticDatum", "ETRF89"}}},
	{"a bracket of a person is told once", [][]string{{"recordedBy", "I. Almeida (Nene"}, {"recordNumber", "215", "recordedBy", "I. Almeida [Nene"}}},
	{"a height beside a depth in the sea", [][]string{
		{"minimumElevationInMeters", "109", "minimumDepthInMeters", "4", "maximumDepthInMeters", "10", "habitat", "arrecife coralino"},
		{"recordNumber", "215", "minimumElevationInMeters", "112", "minimumDepthInMeters", "3", "habitat", "coral reef"},
	}},
	{"sound: depths in lakes, and on the shore", [][]string{
		{"minimumElevationInMeters", "1430", "minimumDepthInMeters", "2", "habitat", "submerged in a lake"},
		{"recordNumber", "215", "minimumElevationInMeters", "1430", "minimumDepthInMeters", "2", "habitat", "pools in a bog, 900 m above sea level"},
		{"recordNumber", "216", "minimumElevationInMeters", "2", "minimumDepthInMeters", "0", "maximumDepthInMeters", "1", "habitat", "intertidal rocks by the sea"},
	}},
	{"latitude repeats longitude", [][]string{append(inTurkey[:6:6], "decimalLongitude", "38.4712", "minimumElevationInMeters", "1150")}},
	{"sound: whole degrees may be equal", [][]string{append(inTurkey[:4:4], "decimalLatitude", "38.5", "decimalLongitude", "38.5", "minimumElevationInMeters", "1150", "coordinateUncertaintyInMeters", "50000")}},
	{"a country's centre and capital", [][]string{
		{"stateProvince", "", "decimalLatitude", "39.5", "decimalLongitude", "-8", "coordinateUncertaintyInMeters", "", "locality", "Portugal, no more is known"},
		{"recordNumber", "215", "decimalLatitude", "38.7167", "decimalLongitude", "-9.1333", "locality", "gardens by the river"},
	}},
	{"sound: a capital with its uncertainty", [][]string{{"decimalLatitude", "38.7167", "decimalLongitude", "-9.1333", "coordinateUncertaintyInMeters", "5000"}}},
	{"band letter", [][]string{{"verbatimCoordinates", "UTM 29P 517137 4258153"}}},
	{"sound: band letters and hemispheres", [][]string{
		{"verbatimCoordinates", "29S 517137 4258153"}, {"recordNumber", "215", "verbatimCoordinates", "29N 517137 4258153"}, {"recordNumber", "216", "verbatimCoordinates", "38°28'16\"N 8°48'13\"W"},
	}},
	{"too many decimals", [][]string{{"decimalLatitude", "38.47120000000003", "decimalLongitude", "-8.80351234567"}}},
	{"decimals of a program, from minutes and with an uncertainty", [][]string{{"decimalLatitude", "38.4666666666667", "decimalLongitude", "-8.8036111111111"}, {"recordNumber", "215", "decimalLatitude", "38.471234567891", "coordinateUncertaintyInMeters", "1500"}}},
	{"false precision", [][]string{{"decimalLatitude", "38.471201", "decimalLongitude", "-8.803501", "coordinateUncertaintyInMeters", "10000"}, {"recordNumber", "215", "minimumElevationInMeters", "365.76"}}},

	{"feet beside the words", [][]string{{"minimumElevationInMeters", "4000", "verbatimElevation", "4000 ft"}, {"recordNumber", "215", "minimumElevationInMeters", "3500", "locality", "Valdoura, along the ridge at 3,500 ft"}}},
	{"feet by the country", [][]string{{"minimumElevationInMeters", "5400"}}},
	{"higher than the country", [][]string{{"minimumElevationInMeters", "8600"}, {"recordNumber", "215", "minimumElevationInMeters", "800", "maximumElevationInMeters", "8500"}}},
	{"lower than the country", [][]string{{"country", "Switzerland", "stateProvince", "", "decimalLatitude", "46.9512", "decimalLongitude", "7.4512", "minimumElevationInMeters", "54"}}},
	{"sound: heights", [][]string{
		{"minimumElevationInMeters", "1219", "verbatimElevation", "4000 ft"}, {"recordNumber", "215", "minimumElevationInMeters", "2351"}, {"recordNumber", "216", "minimumElevationInMeters", "-3"},
		{"recordNumber", "217", "minimumElevationInMeters", "", "verbatimElevation", "6500 ft"},
	}},

	{"determined too early", [][]string{{"dateIdentified", "2025"}}},
	{"weekdays", [][]string{
		{"verbatimEventDate", "Sunday 14 May 2026"}, {"recordNumber", "215", "verbatimEventDate", "sexta-feira, 14 de maio de 2026"}, {"recordNumber", "216", "verbatimEventDate", "Freitag, 14. Mai 2026"},
	}},
	{"sound: weekdays", [][]string{
		{"verbatimEventDate", "quinta-feira, 14 de maio de 2026"}, {"recordNumber", "215", "verbatimEventDate", "jeudi 14 mai 2026"}, {"recordNumber", "216", "eventDate", "2026-05", "verbatimEventDate", "segunda quinzena de maio de 2026"},
	}},
	{"dates that disagree", [][]string{{"verbatimEventDate", "14.vi.2026"}, {"recordNumber", "215", "verbatimEventDate", "12 May 2026"}, {"recordNumber", "216", "verbatimEventDate", "5/6/26"}}},
	{"sound: dates that agree, or nearly", [][]string{{"verbatimEventDate", "May 2026"}, {"recordNumber", "215", "verbatimEventDate", "13 May 2026, 23:50"}, {"recordNumber", "216", "verbatimEventDate", "14/5/26"}}},

	{"numbers made months", [][]string{{"recordNumber", "May-97"}, {"recordNumber", "mai/97"}, {"recordNumber", "12-Jun"}, {"recordNumber", "31-Mar"}, {"recordNumber", "1997-05-01"}, {"recordNumber", "5/1/1997"}, {"recordNumber", "Dez-05"}}},
	{"numbers made months in other programs", [][]string{{"recordNumber", "05. Mai"}, {"recordNumber", "5月12日"}, {"recordNumber", "05/mai"}}},
	{"sound: numbers with stops", [][]string{{"recordNumber", "5. Almeida"}, {"recordNumber", "12.a"}, {"recordNumber", "5. MAI"}}},
	{"sound: numbers that are no months", [][]string{{"recordNumber", "97-5"}, {"recordNumber", "MAY-97"}, {"recordNumber", "XII-97"}, {"recordNumber", "xii-97"}, {"recordNumber", "Alm-97"}, {"recordNumber", "2026-05-14"}, {"recordNumber", "2026-214"}, {"recordNumber", "T-45"}}},
	{"numbers with exponents", [][]string{{"recordNumber", "1.23E+05"}, {"catalogNumber", "4,5E+11", "recordNumber", "215"}}},
	{"sound: numbers with letters", [][]string{{"recordNumber", "5E12"}, {"recordNumber", "E12"}, {"recordNumber", "12E"}}},
	{"zeros lost", [][]string{
		{"catalogNumber", "VDOURA-0001234"}, {"recordNumber", "215", "catalogNumber", "VDOURA-0001235"}, {"recordNumber", "216", "catalogNumber", "VDOURA-0001236"}, {"recordNumber", "217", "catalogNumber", "VDOURA-0001237"},
		{"recordNumber", "218", "catalogNumber", "VDOURA-1238"}, {"recordNumber", "219", "catalogNumber", "VDOURA-0001239"}, {"recordNumber", "220", "catalogNumber", "1240"},
	}},
	{"a number twice, on two days", [][]string{nil, {"eventDate", "2026-05-20"}, {"eventDate", "2026-05-21"}, {"eventDate", "2026-05-14"}}},
	{"sound: states by other names, at borders and in old ones", [][]string{
		{"country", "Brazil", "stateProvince", "Estado de Goiás", "decimalLatitude", "-10.1812", "decimalLongitude", "-48.3312", "eventDate", "1978-05-14", "locality", "Palmas, gallery forest", "minimumElevationInMeters", ""},
		{"recordNumber", "215", "country", "United States", "stateProvince", "CA", "decimalLatitude", "37.7412", "decimalLongitude", "-119.5812", "locality", "Yosemite Valley", "minimumElevationInMeters", ""},
		{"recordNumber", "216", "country", "Spain", "stateProvince", "Andalucía", "decimalLatitude", "36.7612", "decimalLongitude", "-5.3712", "locality", "Grazalema", "minimumElevationInMeters", ""},
		{"recordNumber", "217", "country", "Germany", "stateProvince", "Bavaria", "decimalLatitude", "47.4212", "decimalLongitude", "10.9812", "locality", "Zugspitze", "minimumElevationInMeters", ""},
		{"recordNumber", "218", "country", "Australia", "stateProvince", "New South Wales", "decimalLatitude", "-35.3012", "decimalLongitude", "149.1312", "locality", "Black Mountain", "minimumElevationInMeters", ""},
		{"recordNumber", "219", "country", "Italy", "stateProvince", "Toscana", "decimalLatitude", "43.7712", "decimalLongitude", "11.2512", "locality", "Firenze, Cascine", "minimumElevationInMeters", ""},
		{"recordNumber", "220", "country", "Canada", "stateProvince", "Northwest Territories", "decimalLatitude", "63.7512", "decimalLongitude", "-68.5212", "eventDate", "1982-07-14", "locality", "Frobisher Bay", "minimumElevationInMeters", ""},
		{"recordNumber", "221", "country", "China", "stateProvince", "四川", "decimalLatitude", "29.5312", "decimalLongitude", "103.3312", "locality", "Emei Shan", "minimumElevationInMeters", ""},
		{"recordNumber", "222", "country", "Portugal", "stateProvince", "Alentejo", "decimalLatitude", "41.1512", "decimalLongitude", "-8.6212", "locality", "Porto, a province that has no outline", "minimumElevationInMeters", ""},
	}},
	{"another state", [][]string{
		{"country", "Mexico", "stateProvince", "Oaxaca", "decimalLatitude", "20.6712", "decimalLongitude", "-103.3512", "minimumElevationInMeters", ""},
		{"recordNumber", "215", "country", "", "countryCode", "US", "stateProvince", "Florida", "decimalLatitude", "30.6889", "decimalLongitude", "-88.0380", "locality", "Mobile", "minimumElevationInMeters", ""},
	}},
	{"a number twice, in two places", [][]string{nil, {"stateProvince", "Aveiro", "decimalLatitude", "40.4712", "locality", "Luso, in the wood"}}},
	{"sound: duplicates, letters and collectors", [][]string{nil, {"preparations", "packet: capsules"}, {"recordNumber", "214a"}, {"recordedBy", "J. Prates", "eventDate", "2025-05-14"}, {"recordNumber", "s.n.", "eventDate", "2026-01-14"}, {"recordNumber", "s.n."}}},
	{"two names under one number", [][]string{nil, {"scientificName", "Thymus camphoratus Hoffmanns. & Link"}}},
	{"sound: one name that says less", [][]string{nil, {"scientificName", "Thymus sp."}, {"scientificName", "Thymus"}, {"scientificName", "Thymus capitellatus"}}},

	{"names a letter apart", [][]string{
		nil, {"recordNumber", "215"}, {"recordNumber", "216"}, {"recordNumber", "217", "scientificName", "Thymus capitelatus Hoffmanns. & Link"}, {"recordNumber", "218", "scientificName", "Thimus capitellatus Hoffmanns. & Link"},
		{"recordNumber", "219", "scientificName", "Thymus captellatus subsp. capitellatus"},
	}},
	{"sound: names a letter apart that are two", [][]string{
		{"scientificName", "Euphorbia peplus L.", "family", ""}, {"recordNumber", "215", "scientificName", "Euphorbia peplus L.", "family", ""}, {"recordNumber", "216", "scientificName", "Euphorbia peplus L.", "family", ""},
		{"recordNumber", "217", "scientificName", "Euphorbia peplis L.", "family", ""}, {"recordNumber", "218", "scientificName", "Veronica micrantha Hoffmanns. & Link", "family", ""}, {"recordNumber", "219", "scientificName", "Veronica macrantha Hoffmanns. & Link", "family", ""},
		{"recordNumber", "220", "scientificName", "Veronica micrantha Hoffmanns. & Link", "family", ""}, {"recordNumber", "221", "scientificName", "Veronica micrantha Hoffmanns. & Link", "family", ""},
		{"recordNumber", "222", "scientificName", "Carex flava L.", "family", ""}, {"recordNumber", "223", "scientificName", "Carex flava L.", "family", ""}, {"recordNumber", "224", "scientificName", "Carex flava L.", "family", ""}, {"recordNumber", "225", "scientificName", "Carex fulva Gooden.", "family", ""},
	}},
	{"families spelt two ways", [][]string{nil, {"recordNumber", "215"}, {"recordNumber", "216"}, {"recordNumber", "217", "family", "Lamiacae"}, {"recordNumber", "218", "family", "Labiatae"}, {"recordNumber", "219", "family", "LAMIACEAE"}}},
	{"a genus in two families", [][]string{nil, {"recordNumber", "215"}, {"recordNumber", "216", "family", "Verbenaceae"}}},

	{"the country in the locality", [][]string{{"locality", "Portugal: Valdoura, dunes near the station"}, {"recordNumber", "215", "locality", "PORTUGAL. Setúbal, Valdoura, dunes"}, {"recordNumber", "216", "country", "Germany", "stateProvince", "", "decimalLatitude", "51.1012", "decimalLongitude", "10.1012", "locality", "Deutschland, Hainich, Buchenwald"}}},
	{"sound: the country's name in others", [][]string{{"locality", "Portugal Street, 300 m W of the station"}, {"recordNumber", "215", "locality", "Madeira. Valdoura, dunes 300 m W of the field station"}, {"recordNumber", "216", "locality", "Portugal"}}},
	{"signs doubled", [][]string{{"locality", "Valdoura,, dunes; ; near the station", "habitat", "on sand,; facing west.."}, {"recordNumber", "215", "habitat", "dunes.. on sand"}}},
	{"sound: signs", [][]string{{"locality", "Valdoura... dunes, etc., km 3..5, s.l., at 12:30", "habitat", "Cistus spp.; Erica cf. australis, L. : on sand…"}}},
	{"spaces", [][]string{{"locality", " Valdoura,  dunes near the station"}, {"recordNumber", "215", "habitat", "dunes "}}},
	{"underscores", [][]string{{"locality", "Valdoura_dunes_(near_station)"}, {"recordNumber", "215", "habitat", "sand_dunes"}}},
	{"sound: codes with underscores", [][]string{{"locality", "VAL_01"}, {"recordNumber", "215", "locality", "Valdoura, plot dune_slope_2", "habitat", "P_17_dunes"}}},
	{"a height of a program", [][]string{{"minimumElevationInMeters", "112.8405974"}}},
	{"cut at 255", [][]string{{"habitat", strings.Repeat("dunes and more ", 17)[:255-5] + "plant"}}},
	{"sound: 255 and longer", [][]string{{"habitat", strings.Repeat("dunes and more ", 17)[:250] + "plant"}, {"recordNumber", "215", "habitat", strings.Repeat("dunes and more ", 20) + "end"}}},
	{"one place, two positions", [][]string{nil, {"recordNumber", "215"}, {"recordNumber", "216", "decimalLatitude", "38.7412"}}},
	{"sound: one region, many positions", [][]string{
		{"locality", "Serra da Estrela", "stateProvince", "", "decimalLatitude", "40.3212", "decimalLongitude", "-7.6112"}, {"recordNumber", "215", "locality", "Serra da Estrela", "stateProvince", "", "decimalLatitude", "40.5212", "decimalLongitude", "-7.3112"},
		{"recordNumber", "216"}, {"recordNumber", "217", "decimalLatitude", "38.6712"}, {"recordNumber", "218", "decimalLatitude", "38.1712"},
	}},
}

// What is said, to the letter; UPDATE=1 writes it anew.
func TestFindings(t *testing.T) {
	basic := map[string]bool{}
	for _, r := range check.Basic() {
		basic[r.Name] = true
	}
	var b strings.Builder
	for _, tt := range cases {
		_, fs := run(t, open(t, rows(tt.rows...)...), options(t))
		fmt.Fprintf(&b, "# %s\n", tt.name)
		n := 0
		for _, f := range fs {
			style(t, f)
			if basic[f.Rule] {
				continue
			}
			n++
			fmt.Fprintf(&b, "%d %s %s: %s", f.Row, f.Severity, f.Rule, strings.TrimPrefix(f.String(), f.Origin.String()+": "))
			for _, c := range f.Also {
				fmt.Fprintf(&b, " [%d %s]", c.Row, c.Term)
			}
			b.WriteByte('\n')
		}
		if sound := strings.HasPrefix(tt.name, "sound"); sound != (n == 0) {
			t.Errorf("%s: %d findings", tt.name, n)
		}
	}
	path := filepath.Join("testdata", "findings.txt")
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.String(); got != string(want) {
		g, w := strings.Split(got, "\n"), strings.Split(string(want), "\n")
		for i := range min(len(g), len(w)) {
			if g[i] != w[i] {
				t.Fatalf("line %d is\n%s\nnot\n%s", i+1, g[i], w[i])
			}
		}
		t.Fatalf("%d lines, not %d", len(g), len(w))
	}
}
