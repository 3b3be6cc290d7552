package bdq

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/table"

	"github.com/google/go-cmp/cmp"
)

func test(t testing.TB, name string) Test {
	t.Helper()
	for _, test := range Tests() {
		if test.Label == name {
			return test
		}
	}
	t.Fatalf("no test %s", name)
	return Test{}
}

func cellsOf(t testing.TB, pairs ...string) *Cells {
	m := map[string]string{}
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i]] = pairs[i+1]
	}
	return NewCells(func(term string) string { return m[term] }, today(t))
}

// Answers beyond the published cases. Those marked "example" are the examples
// that the standard gives beside a test (TG2_tests.csv, March 2025), "note"
// what its notes say; the rest follows from its wording.
func TestAnswers(t *testing.T) {
	const (
		yes, no = "RUN_HAS_RESULT COMPLIANT", "RUN_HAS_RESULT NOT_COMPLIANT"
		unmet   = "INTERNAL_PREREQUISITES_NOT_MET "
		same    = "NOT_AMENDED "
	)
	for _, tt := range []struct {
		test  string
		cells []string
		want  string
	}{
		// example, note: leading and trailing whitespace or controls.
		{"VALIDATION_COUNTRYCODE_STANDARD", []string{"countryCode", "US "}, no},
		{"VALIDATION_COUNTRYCODE_STANDARD", []string{"countryCode", "us"}, no},
		{"VALIDATION_COUNTRYCODE_STANDARD", []string{"countryCode", "XK"}, no},
		{"VALIDATION_COUNTRYCODE_STANDARD", []string{"countryCode", "UK"}, no},
		{"AMENDMENT_COUNTRYCODE_STANDARDIZED", []string{"countryCode", "Australia"}, `AMENDED {"dwc:countryCode":"AU"}`},
		{"AMENDMENT_COUNTRYCODE_STANDARDIZED", []string{"countryCode", "Aust."}, same},
		{"AMENDMENT_COUNTRYCODE_STANDARDIZED", []string{"countryCode", "GRL"}, `AMENDED {"dwc:countryCode":"GL"}`}, // note
		{"AMENDMENT_COUNTRYCODE_STANDARDIZED", []string{"countryCode", " us"}, `AMENDED {"dwc:countryCode":"US"}`},
		{"AMENDMENT_COUNTRYCODE_STANDARDIZED", []string{"countryCode", "XZ"}, same},
		{"AMENDMENT_COUNTRYCODE_STANDARDIZED", []string{"countryCode", "US"}, same},
		{"VALIDATION_COUNTRY_NOTEMPTY", []string{"countryCode", "XZ", "country", "High seas"}, yes},
		{"VALIDATION_LICENSE_STANDARD", []string{"license", "GPL"}, no},
		{"VALIDATION_LICENSE_STANDARD", []string{"license", "https://creativecommons.org/licenses/by/4.0/ "}, no},
		{"AMENDMENT_LICENSE_STANDARDIZED", []string{"license", "CC0"}, `AMENDED {"dcterms:license":"https://creativecommons.org/publicdomain/zero/1.0/legalcode"}`},
		{"AMENDMENT_LICENSE_STANDARDIZED", []string{"license", "X"}, same},
		{"AMENDMENT_LICENSE_STANDARDIZED", nil, same}, // there is no prerequisite
		{"VALIDATION_GEODETICDATUM_STANDARD", []string{"geodeticDatum", "7030"}, no},
		{"VALIDATION_GEODETICDATUM_STANDARD", []string{"geodeticDatum", "EPSG:7030"}, yes},
		{"VALIDATION_GEODETICDATUM_STANDARD", []string{"geodeticDatum", "EPSG:6326"}, yes},
		{"VALIDATION_GEODETICDATUM_STANDARD", []string{"geodeticDatum", "EPSG:4978"}, no}, // geocentric
		{"VALIDATION_GEODETICDATUM_STANDARD", []string{"geodeticDatum", "not recorded"}, yes},
		{"VALIDATION_GEODETICDATUM_STANDARD", []string{"geodeticDatum", "EPSG:4326\t"}, no},
		{"AMENDMENT_GEODETICDATUM_STANDARDIZED", []string{"geodeticDatum", "WGS8"}, same},
		{"AMENDMENT_GEODETICDATUM_STANDARDIZED", []string{"geodeticDatum", "WGS:84"}, `AMENDED {"dwc:geodeticDatum":"EPSG:4326"}`}, // note
		{"AMENDMENT_GEODETICDATUM_STANDARDIZED", []string{"geodeticDatum", "not recorded"}, same},                                  // note
		{"AMENDMENT_GEODETICDATUM_STANDARDIZED", []string{"geodeticDatum", "GDA"}, same},
		{"AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT", []string{"decimalLatitude", "-30.00", "decimalLongitude", "130.00", "coordinateUncertaintyInMeters", "50"},
			`AMENDED {"dwc:coordinateUncertaintyInMeters":"2836","dwc:geodeticDatum":"EPSG:4326"}`},
		{"AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT", []string{"decimalLatitude", "-30.00", "decimalLongitude", "130.00", "coordinateUncertaintyInMeters", "50.25"},
			`AMENDED {"dwc:coordinateUncertaintyInMeters":"2836.25","dwc:geodeticDatum":"EPSG:4326"}`},
		{"AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT", []string{"decimalLatitude", "-30", "decimalLongitude", "130", "coordinateUncertaintyInMeters", "x"}, `FILLED_IN {"dwc:geodeticDatum":"EPSG:4326"}`}, // note
		{"AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT", []string{"decimalLatitude", "-30", "decimalLongitude", "230", "coordinateUncertaintyInMeters", "5"}, `FILLED_IN {"dwc:geodeticDatum":"EPSG:4326"}`},
		{"AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT", []string{"geodeticDatum", "WGS84"}, same},
		{"VALIDATION_BASISOFRECORD_STANDARD", []string{"basisOfRecord", "PreservedSpecimen "}, no},
		{"AMENDMENT_BASISOFRECORD_STANDARDIZED", []string{"basisOfRecord", "FossilSpecimen"}, same},
		{"VALIDATION_TAXONRANK_STANDARD", []string{"taxonRank", "sp."}, no},
		{"VALIDATION_TAXONRANK_STANDARD", []string{"taxonRank", "species "}, no},
		{"AMENDMENT_TAXONRANK_STANDARDIZED", []string{"taxonRank", "sp."}, `AMENDED {"dwc:taxonRank":"species"}`},
		{"AMENDMENT_TAXONRANK_STANDARDIZED", []string{"taxonRank", "especie"}, same},
		{"VALIDATION_ESTABLISHMENTMEANS_STANDARD", []string{"establishmentMeans", "cultivated"}, no},
		{"AMENDMENT_ESTABLISHMENTMEANS_STANDARDIZED", []string{"establishmentMeans", "vag."}, `AMENDED {"dwc:establishmentMeans":"vagrant"}`},
		{"AMENDMENT_ESTABLISHMENTMEANS_STANDARDIZED", []string{"establishmentMeans", "cultivated"}, same},
		{"VALIDATION_TYPESTATUS_STANDARD", []string{"typeStatus", "Holotype of Thymus capitellatus | paratype"}, yes},
		{"VALIDATION_TYPESTATUS_STANDARD", []string{"typeStatus", "holotype |"}, no},
		{"VALIDATION_TYPESTATUS_STANDARD", []string{"typeStatus", " Holotype"}, no},
		{"VALIDATION_TYPESTATUS_STANDARD", []string{"typeStatus", "possible type"}, no},
		{"AMENDMENT_TYPESTATUS_STANDARDIZED", []string{"typeStatus", "Holo."}, `AMENDED {"dwc:typeStatus":"Holotype"}`},
		{"AMENDMENT_TYPESTATUS_STANDARDIZED", []string{"typeStatus", "Holo. of A. | Paratypus of A."}, `AMENDED {"dwc:typeStatus":"Holotype of A. | Paratype of A."}`},
		{"AMENDMENT_TYPESTATUS_STANDARDIZED", []string{"typeStatus", "Holo. of A. | what?"}, same},

		{"VALIDATION_DECIMALLATITUDE_INRANGE", []string{"decimalLatitude", " 90.0 "}, yes},
		{"VALIDATION_DECIMALLATITUDE_INRANGE", []string{"decimalLatitude", "NaN"}, unmet},
		{"VALIDATION_DECIMALLATITUDE_INRANGE", []string{"decimalLatitude", "Inf"}, unmet},
		{"VALIDATION_DECIMALLATITUDE_INRANGE", []string{"decimalLatitude", "41,5"}, unmet},
		{"VALIDATION_DECIMALLATITUDE_INRANGE", []string{"decimalLatitude", "1e400"}, no},
		{"VALIDATION_DECIMALLATITUDE_INRANGE", []string{"decimalLatitude", "41° N"}, unmet},
		{"VALIDATION_COORDINATES_NOTZERO", []string{"decimalLatitude", "-0.000", "decimalLongitude", "+0"}, no},
		{"VALIDATION_COORDINATES_NOTZERO", []string{"decimalLatitude", "0"}, unmet},
		{"VALIDATION_COORDINATEUNCERTAINTY_INRANGE", []string{"coordinateUncertaintyInMeters", "1"}, yes},
		{"VALIDATION_COORDINATEUNCERTAINTY_INRANGE", []string{"coordinateUncertaintyInMeters", "30 m"}, no},
		{"VALIDATION_COORDINATEUNCERTAINTY_INRANGE", []string{"coordinateUncertaintyInMeters", "20037509"}, yes},
		{"VALIDATION_MINELEVATION_INRANGE", []string{"minimumElevationInMeters", "-430"}, yes},
		{"VALIDATION_MAXELEVATION_INRANGE", []string{"maximumElevationInMeters", "8850.01"}, no},
		{"VALIDATION_MINELEVATION_LESSTHAN_MAXELEVATION", []string{"minimumElevationInMeters", "10", "maximumElevationInMeters", "9"}, no},
		{"VALIDATION_MINDEPTH_INRANGE", []string{"minimumDepthInMeters", "-1"}, unmet},
		{"VALIDATION_MINDEPTH_INRANGE", []string{"minimumDepthInMeters", "12000"}, no},
		{"VALIDATION_MINDEPTH_LESSTHAN_MAXDEPTH", []string{"minimumDepthInMeters", "1", "maximumDepthInMeters", "0"}, no},

		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimCoordinates", "23 degrees 42.72 minutes south, 139 degrees 55.38 minutes east", "verbatimSRS", "WGS84"},
			`FILLED_IN {"dwc:decimalLatitude":"-23.712","dwc:decimalLongitude":"139.923","dwc:geodeticDatum":"EPSG:4326"}`},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimCoordinates", "23°42'43.2\"S 139°55'12\"E"}, `FILLED_IN {"dwc:decimalLatitude":"-23.712","dwc:decimalLongitude":"139.92"}`},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "23.7120", "verbatimLongitude", "+139.92"}, `FILLED_IN {"dwc:decimalLatitude":"23.7120","dwc:decimalLongitude":"139.92"}`},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-23.712", "verbatimLongitude", "139.92", "verbatimSRS", "EPSG:32754"}, same},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-23.712", "verbatimLongitude", "139.92", "verbatimCoordinateSystem", "UTM"}, same},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-23.712", "verbatimLongitude", "139.92", "verbatimCoordinates", "24 S 139 E"}, `FILLED_IN {"dwc:decimalLatitude":"-23.712","dwc:decimalLongitude":"139.92"}`},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-23.712", "verbatimLongitude", "139.92", "verbatimCoordinates", "33 S 139 E"}, same}, // note: inconsistent
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-23.712", "verbatimLongitude", "139.92", "geodeticDatum", "ED50", "verbatimSRS", "WGS84"}, same},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-23.712", "verbatimLongitude", "139.92", "geodeticDatum", "WGS84", "verbatimSRS", "EPSG:4326"}, `FILLED_IN {"dwc:decimalLatitude":"-23.712","dwc:decimalLongitude":"139.92"}`},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimLatitude", "-123.712", "verbatimLongitude", "139.92"}, same},
		{"AMENDMENT_COORDINATES_FROM_VERBATIM", []string{"verbatimCoordinates", "30S", "decimalLatitude", " "}, same},

		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "10 yards"}, `FILLED_IN {"dwc:maximumElevationInMeters":"9.144","dwc:minimumElevationInMeters":"9.144"}`}, // note
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "1.5-2 km"}, `FILLED_IN {"dwc:maximumElevationInMeters":"2000","dwc:minimumElevationInMeters":"1500"}`},
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "100"}, same}, // note: the unit must be written
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "100-200"}, same},
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "200-100 m"}, same},
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "c. 100 m"}, same},
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "above 100 m"}, same},
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "1,500 m a.s.l."}, `FILLED_IN {"dwc:maximumElevationInMeters":"1500","dwc:minimumElevationInMeters":"1500"}`},
		{"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", []string{"verbatimElevation", "100 m", "minimumElevationInMeters", "1"}, unmet},
		{"AMENDMENT_MINDEPTHMAXDEPTH_FROM_VERBATIM", []string{"verbatimDepth", "10 feet"}, `FILLED_IN {"dwc:maximumDepthInMeters":"3.048","dwc:minimumDepthInMeters":"3.048"}`},
		{"AMENDMENT_MINDEPTHMAXDEPTH_FROM_VERBATIM", []string{"verbatimDepth", "10 fathoms"}, `FILLED_IN {"dwc:maximumDepthInMeters":"18.288","dwc:minimumDepthInMeters":"18.288"}`}, // note
		{"AMENDMENT_MINDEPTHMAXDEPTH_FROM_VERBATIM", []string{"verbatimDepth", "x"}, same},

		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1963-03-08T14:67-0600"}, no},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "2023-02-29"}, no}, // note
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "2024-02-29"}, yes},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1880-05-08/10"}, yes},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1949-01-15T12:34/"}, no},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1949-01-20/1949-01-15"}, no},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1949-W03"}, yes},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1949-138"}, yes},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", " 1949"}, no},
		{"VALIDATION_EVENTDATE_STANDARD", []string{"eventDate", "1949-13"}, no},
		{"VALIDATION_EVENTDATE_INRANGE", []string{"eventDate", "1582-11-14"}, no},
		{"VALIDATION_EVENTDATE_INRANGE", []string{"eventDate", "1582-11-15"}, yes},
		{"VALIDATION_EVENTDATE_INRANGE", []string{"eventDate", "1582-11"}, no}, // not entirely
		{"VALIDATION_EVENTDATE_INRANGE", []string{"eventDate", "2026-12-31"}, yes},
		{"VALIDATION_EVENTDATE_INRANGE", []string{"eventDate", "2026-12-31/2027-01-01"}, no},
		{"VALIDATION_DATEIDENTIFIED_INRANGE", []string{"dateIdentified", "1752-12-31"}, no},
		{"VALIDATION_DATEIDENTIFIED_INRANGE", []string{"dateIdentified", "2026-07-01"}, no},
		{"VALIDATION_DATEIDENTIFIED_INRANGE", []string{"dateIdentified", "2026-06-30"}, yes},
		{"VALIDATION_DATEIDENTIFIED_INRANGE", []string{"dateIdentified", "2026"}, yes},
		{"VALIDATION_DATEIDENTIFIED_INRANGE", []string{"dateIdentified", "1963", "eventDate", "x"}, unmet},
		{"VALIDATION_DATEIDENTIFIED_INRANGE", []string{"dateIdentified", "1963-03-07", "eventDate", "1963-03-08"}, no},
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "1949-09-15T12:34", "day", "15", "month", "9", "year", "1949"}, yes},
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "1949", "day", "1"}, no}, // note
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "1949-09-15", "month", "09"}, yes},
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "1949-09-15", "month", "IX"}, yes},
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "1949-09-15", "month", "x"}, no},
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "15 Sep 1949", "month", "9"}, no},
		{"VALIDATION_YEAR_INRANGE", []string{"year", "9999"}, no},
		{"VALIDATION_YEAR_INRANGE", []string{"year", "1582"}, yes},
		{"VALIDATION_YEAR_INRANGE", []string{"year", "1581"}, no},
		{"VALIDATION_YEAR_INRANGE", []string{"year", "2026"}, yes},
		{"VALIDATION_YEAR_INRANGE", []string{"year", "99999999999999999999"}, no},
		{"VALIDATION_YEAR_INRANGE", []string{"year", "1949.0"}, unmet},
		{"VALIDATION_MONTH_STANDARD", []string{"month", "10"}, yes},
		{"VALIDATION_MONTH_STANDARD", []string{"month", "IV"}, no},
		{"VALIDATION_DAY_STANDARD", []string{"day", "32"}, no},
		{"VALIDATION_DAY_STANDARD", []string{"day", "23rd"}, no},
		{"VALIDATION_DAY_INRANGE", []string{"day", "29"}, unmet},
		{"VALIDATION_DAY_INRANGE", []string{"day", "29", "month", "2"}, unmet},
		{"VALIDATION_DAY_INRANGE", []string{"day", "29", "month", "2", "year", "96"}, unmet},
		{"VALIDATION_DAY_INRANGE", []string{"day", "30", "month", "2"}, no},
		{"VALIDATION_DAY_INRANGE", []string{"day", "31", "month", "4"}, no},
		{"VALIDATION_DAY_INRANGE", []string{"day", "31", "month", "13"}, unmet},
		{"VALIDATION_DAY_INRANGE", []string{"day", "0"}, no},
		{"VALIDATION_DAY_INRANGE", []string{"day", "-3"}, no},
		{"VALIDATION_STARTDAYOFYEAR_INRANGE", []string{"startDayOfYear", "366", "eventDate", "1980/1981"}, yes},
		{"VALIDATION_ENDDAYOFYEAR_INRANGE", []string{"endDayOfYear", "366", "eventDate", "1980/1981"}, no},
		{"VALIDATION_ENDDAYOFYEAR_INRANGE", []string{"endDayOfYear", "366", "eventDate", "x"}, unmet},
		{"VALIDATION_ENDDAYOFYEAR_INRANGE", []string{"endDayOfYear", "1.5"}, no},

		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "2021-10-28"}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "2021-10-28 "}, `AMENDED {"dwc:eventDate":"2021-10-28"}`},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "Nov. 1999"}, `AMENDED {"dwc:eventDate":"1999-11"}`}, // note: no finer, no coarser
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "Spring 1932"}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "c. 1932"}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "1980s"}, `AMENDED {"dwc:eventDate":"1980/1989"}`},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "3/4/2020"}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "30 Feb 2020"}, same},
		{"AMENDMENT_EVENTDATE_FROM_VERBATIM", []string{"verbatimEventDate", "03/04/2020"}, same},
		{"AMENDMENT_EVENTDATE_FROM_VERBATIM", []string{"verbatimEventDate", "Jan 1980"}, `FILLED_IN {"dwc:eventDate":"1980-01"}`}, // note
		{"AMENDMENT_EVENTDATE_FROM_VERBATIM", []string{"verbatimEventDate", "null"}, same},
		{"AMENDMENT_EVENTDATE_FROM_VERBATIM", []string{"verbatimEventDate", "\u200b", "eventDate", "\x00"}, unmet},
		{"AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY", []string{"year", "1420", "month", "10", "day", "29"}, `FILLED_IN {"dwc:eventDate":"1420-10-29"}`},
		{"AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY", []string{"year", "2024", "month", "2", "day", "30"}, same},
		{"AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY", []string{"year", "2024", "month", "x", "day", "3"}, `FILLED_IN {"dwc:eventDate":"2024"}`}, // note
		{"AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY", []string{"year", "2024", "month", "13"}, same},
		{"AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY", []string{"year", "63"}, same},
		{"AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR", []string{"year", "1901", "startDayOfYear", "25", "endDayOfYear", "15"}, same},
		{"AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR", []string{"year", "1901", "startDayOfYear", "25", "endDayOfYear", "25"}, same},
		{"AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR", []string{"year", "1901", "startDayOfYear", "25", "endDayOfYear", "366"}, same},
		{"AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR", []string{"year", "1904", "startDayOfYear", "60", "endDayOfYear", "366"}, `FILLED_IN {"dwc:eventDate":"1904-02-29/1904-12-31"}`},
		{"AMENDMENT_EVENT_FROM_EVENTDATE", []string{"eventDate", "2023-01-26", "year", "2023"}, `FILLED_IN {"dwc:day":"26","dwc:endDayOfYear":"26","dwc:month":"1","dwc:startDayOfYear":"26"}`},
		{"AMENDMENT_EVENT_FROM_EVENTDATE", []string{"eventDate", "2023-01/2023-02"}, `FILLED_IN {"dwc:year":"2023"}`},
		{"AMENDMENT_EVENT_FROM_EVENTDATE", []string{"eventDate", "26 Jan 2023"}, unmet},
		{"AMENDMENT_DAY_STANDARDIZED", []string{"day", "X"}, same},
		{"AMENDMENT_DAY_STANDARDIZED", []string{"day", "12th"}, `AMENDED {"dwc:day":"12"}`}, // note
		{"AMENDMENT_DAY_STANDARDIZED", []string{"day", "5th Friday"}, same},                 // note
		{"AMENDMENT_DAY_STANDARDIZED", []string{"day", "07"}, same},
		{"AMENDMENT_DAY_STANDARDIZED", []string{"day", "32nd"}, same},
		{"AMENDMENT_MONTH_STANDARDIZED", []string{"month", "xii"}, `AMENDED {"dwc:month":"12"}`}, // note
		{"AMENDMENT_MONTH_STANDARDIZED", []string{"month", "x"}, same},
		{"AMENDMENT_MONTH_STANDARDIZED", []string{"month", "XIII"}, same},
		{"AMENDMENT_MONTH_STANDARDIZED", []string{"month", "5"}, same},
		// The example beside the test says NOT_AMENDED of October; its notes
		// and the others' say that what can be read is written as a number.
		{"AMENDMENT_MONTH_STANDARDIZED", []string{"month", "October"}, `AMENDED {"dwc:month":"10"}`},
		{"AMENDMENT_MONTH_STANDARDIZED", []string{"month", "März"}, `AMENDED {"dwc:month":"3"}`},
		{"MEASURE_EVENTDATE_DURATIONINSECONDS", []string{"eventDate", "1880-05-08/10"}, "RUN_HAS_RESULT 259200"},
		{"MEASURE_EVENTDATE_DURATIONINSECONDS", []string{"eventDate", "95"}, unmet},
		{"MEASURE_EVENTDATE_DURATIONINSECONDS", []string{"eventDate", "1980"}, "RUN_HAS_RESULT 31622400"}, // note: leap days count
		{"MEASURE_EVENTDATE_DURATIONINSECONDS", []string{"eventDate", "1980-01-01T12:34"}, "RUN_HAS_RESULT 60"},
		{"MEASURE_EVENTDATE_DURATIONINSECONDS", []string{"eventDate", "1980-01-01T12/1980-01-01T14"}, "RUN_HAS_RESULT 10800"},

		{"VALIDATION_POLYNOMIAL_CONSISTENT", []string{"scientificName", "Hakea decurrens", "genericName", "Hakea", "specificEpithet", "decurrens", "infraspecificEpithet", "physocarpa"}, no},
		{"VALIDATION_POLYNOMIAL_CONSISTENT", []string{"scientificName", "Hakea decurrens ssp. physocarpa", "specificEpithet", "decurrens", "infraspecificEpithet", "physocarpa"}, yes},
		{"VALIDATION_POLYNOMIAL_CONSISTENT", []string{"scientificName", "×Thymus citriodorus (Pers.) Schreb.", "genericName", "Thymus"}, yes},
		{"VALIDATION_POLYNOMIAL_CONSISTENT", []string{"scientificName", "Thymus × citriodorus", "specificEpithet", "citriodorus"}, yes},
		{"VALIDATION_POLYNOMIAL_CONSISTENT", []string{"scientificName", "Thymus lotocephalus", "genericName", "Thymo"}, no},
		{"VALIDATION_POLYNOMIAL_CONSISTENT", []string{"scientificName", "Lamiaceae", "genericName", "Lamium"}, no},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "urn:lsid:zoobank.org:act:17ADF24F-027F-44F6-9543-D3D0260CE79E"}, yes},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "gbif:8102122"}, yes}, // note
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "8102122"}, no},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "8fa58e08-08de-4ac1-b69c-1235340b7001"}, no},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "https://www.gbif.org/species/8102122"}, yes},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "https://www.gbif.org/"}, no},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "https://www.gbif.org"}, no},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "urn:lsid:marinespecies.org"}, no},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "urn:uuid:8fa58e08-08de-4ac1-b69c-1235340b7001"}, yes},
		{"VALIDATION_SCIENTIFICNAMEID_COMPLETE", []string{"scientificNameID", "urn:uuid"}, no},

		{"VALIDATION_COUNTRYCOUNTRYCODE_CONSISTENT", []string{"country", "Australia", "countryCode", "AU"}, yes},
		{"VALIDATION_COUNTRYCOUNTRYCODE_CONSISTENT", []string{"country", "United States Minor Outlying Islands", "countryCode", "US"}, no},
		{"VALIDATION_COUNTRYCOUNTRYCODE_CONSISTENT", []string{"country", "Alemanha", "countryCode", "DE"}, yes}, // note: in any language
		{"VALIDATION_COUNTRYCOUNTRYCODE_CONSISTENT", []string{"country", "Portugal ", "countryCode", "PT"}, no},
		{"VALIDATION_OCCURRENCESTATUS_STANDARD", []string{"occurrenceStatus", "presence"}, no},
		{"VALIDATION_OCCURRENCESTATUS_STANDARD", []string{"occurrenceStatus", "Present"}, no}, // note: case differences
		{"AMENDMENT_OCCURRENCESTATUS_STANDARDIZED", []string{"occurrenceStatus", "1"}, `AMENDED {"dwc:occurrenceStatus":"present"}`},
		{"AMENDMENT_OCCURRENCESTATUS_ASSUMEDDEFAULT", nil, `FILLED_IN {"dwc:occurrenceStatus":"present"}`},
		{"AMENDMENT_OCCURRENCESTATUS_ASSUMEDDEFAULT", []string{"individualCount", "0"}, same},
		{"AMENDMENT_DCTYPE_STANDARDIZED", []string{"type", "evnt"}, `AMENDED {"dc:type":"Event"}`},
		{"AMENDMENT_SEX_STANDARDIZED", []string{"sex", "f"}, `AMENDED {"dwc:sex":"Female"}`},
		{"AMENDMENT_PATHWAY_STANDARDIZED", []string{"pathway", "escapeee"}, same},
		{"AMENDMENT_DEGREEOFESTABLISHMENT_STANDARDIZED", []string{"degreeOfEstablishment", "capt."}, `AMENDED {"dwc:degreeOfEstablishment":"captive"}`},
		{"ISSUE_DATAGENERALIZATIONS_NOTEMPTY", []string{"dataGeneralizations", "placed on quarter degree grid"}, "RUN_HAS_RESULT POTENTIAL_ISSUE"},
		{"ISSUE_ESTABLISHMENTMEANS_NOTEMPTY", nil, "RUN_HAS_RESULT NOT_ISSUE"},

		{"VALIDATION_EVENTDATE_NOTEMPTY", []string{"eventDate", "\u00a0\u2003\ufeff\u200b\u2028"}, no},
		{"VALIDATION_EVENTDATE_NOTEMPTY", []string{"eventDate", "\x7f\x01"}, no},
		{"VALIDATION_EVENTDATE_NOTEMPTY", []string{"eventDate", "\ufffd"}, yes},
	} {
		if got := outcome(t, test(t, tt.test).Answer(cellsOf(t, tt.cells...))); got != tt.want {
			t.Errorf("%s %q:\n got %s\nwant %s", tt.test, tt.cells, got, tt.want)
		}
	}
}

// Without a day to hold against nothing lies in the future.
func TestNoToday(t *testing.T) {
	c := NewCells(func(string) string { return "2300-01-01" }, date.Date{})
	for _, name := range []string{"VALIDATION_EVENTDATE_INRANGE", "VALIDATION_DATEIDENTIFIED_INRANGE"} {
		if r := test(t, name).Answer(c); r.Result != Compliant {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

// Every record is answered by every test: empty rows, rows too short and too
// long, controls.
func TestEveryRecordIsAnswered(t *testing.T) {
	tab, err := table.Open(table.Bytes("t.csv", []byte("dwc:country,countryCode,dcterms:license,dc:type\n\n,,,\nPortugal\nPortugal,PT,CC0,Event,more\n\x00,\x0e\x0f,\x00,\"\n\"\n")), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		n++
		var got []string
		for a := range Responses(row, today(t)) {
			got = append(got, a.Label)
			if a.Row != n || a.Status == "" {
				t.Errorf("%+v", a)
			}
			if a.Label == "VALIDATION_COUNTRY_NOTEMPTY" && (a.Result == Compliant) != (strings.TrimFunc(row.Get("country").Text, invisible) != "") {
				t.Errorf("row %d: %+v", n, a)
			}
		}
		if len(got) != len(Tests()) {
			t.Errorf("row %d has %d answers", n, len(got))
		}
		for range Responses(row, today(t)) {
			break // and may be left early
		}
	}
	if n < 4 {
		t.Errorf("%d rows", n)
	}
}

func TestJSON(t *testing.T) {
	for _, tt := range []struct {
		a    Answer
		want string
	}{
		{Answer{3, "VALIDATION_YEAR_INRANGE", compliant}, `{"row":3,"test":"VALIDATION_YEAR_INRANGE","status":"RUN_HAS_RESULT","result":"COMPLIANT"}`},
		{Answer{1, "X", internalNotMet}, `{"row":1,"test":"X","status":"INTERNAL_PREREQUISITES_NOT_MET","result":""}`},
		{Answer{1, "X", changed(FilledIn, "year", "2026", "day", "1", "license", "u")}, `{"row":1,"test":"X","status":"FILLED_IN","result":{"dcterms:license":"u","dwc:day":"1","dwc:year":"2026"}}`},
	} {
		b, err := json.Marshal(tt.a)
		if err != nil || string(b) != tt.want {
			t.Errorf("got %s %v\nwant %s", b, err, tt.want)
		}
	}
}

// engine checks with all rules, one of them raised if it is silent by itself
// and its plainer twin silenced.
func engine(t testing.TB, r *check.Rule, twin string) *check.Engine {
	o := check.Options{Today: today(t), Rules: Rules(), Severity: map[string]label.Severity{}}
	if r != nil && r.Severity == check.Off {
		o.Severity[r.Name] = label.Warning
	}
	if twin != "" {
		o.Severity[twin] = check.Off
	}
	return check.New(o)
}

func findings(t testing.TB, e *check.Engine, rows []map[string]string) []label.Finding {
	t.Helper()
	var all []label.Finding
	for row, err := range open(t, rows...).Rows() {
		if err != nil {
			t.Fatal(err)
		}
		_, fs := e.Row(row)
		all = append(all, fs...)
	}
	return all
}

// Each rule's example raises exactly that rule, its counterexample nothing.
func TestExamples(t *testing.T) {
	twins := map[string]string{}
	for _, test := range Tests() {
		twins[test.Label] = test.rule.twin
	}
	rules := Rules()
	if len(rules) != len(Tests())-2 {
		t.Errorf("%d rules for %d tests: only the assumed datum and the measure say nothing", len(rules), len(Tests()))
	}
	for i := range rules {
		r := &rules[i]
		t.Run(r.Name, func(t *testing.T) {
			fs := findings(t, engine(t, r, twins[r.Name]), r.Example)
			if len(fs) == 0 {
				t.Error("the example raises nothing")
			}
			for _, f := range fs {
				if f.Rule != r.Name {
					t.Errorf("the example raises %s: %s", f.Rule, f)
				}
				if !slices.Contains(r.Terms, f.Term) {
					t.Errorf("the rule does not name the term %q: %s", f.Term, f)
				}
				style(t, f)
			}
			for _, f := range findings(t, engine(t, r, twins[r.Name]), r.Counterexample) {
				t.Errorf("the counterexample raises %s: %s", f.Rule, f)
			}
			if r.Doc == "" || r.Source == "" || r.Row == nil || len(r.Terms) == 0 {
				t.Errorf("the rule lacks a part: %+v", r)
			}
		})
	}
}

// style holds a message against the way messages are written.
func style(t testing.TB, f label.Finding) {
	t.Helper()
	m := f.Message
	if m == "" || strings.HasSuffix(m, ".") || strings.Contains(m, "  ") || m[0] == ' ' || m[0] >= 'A' && m[0] <= 'Z' {
		t.Errorf("not as messages are written: %q", m)
	}
	if f.Line == 0 || f.File == "" {
		t.Errorf("no place: %+v", f)
	}
}

// What the rules say unasked: nothing twice, and nothing of terms no label
// needs.
func TestFindings(t *testing.T) {
	for _, tt := range []struct {
		set  []string
		want []string
	}{
		{[]string{"license", "x", "basisOfRecord", "x", "occurrenceID", "", "taxonRank", "x", "establishmentMeans", "x"}, nil},
		{[]string{"decimalLatitude", "95.2"}, []string{"coordinates-range"}},
		{[]string{"eventDate", "2062-05-14"}, []string{"date-future"}},
		{[]string{"countryCode", "prt"}, []string{`AMENDMENT_COUNTRYCODE_STANDARDIZED: the alpha-2 code of ISO 3166-1 is meant (PT)`}},
		{[]string{"countryCode", "ZX"}, []string{`VALIDATION_COUNTRYCODE_STANDARD: not a country code of ISO 3166-1: write its two capital letters, such as PT`}},
		{[]string{"typeStatus", "Holo. of X | foo"}, []string{`VALIDATION_TYPESTATUS_STANDARD: not a kind of type: begin each part with one, such as "holotype of" and the name`}},
		{[]string{"eventDate", "14.v.2026"}, []string{`AMENDMENT_EVENTDATE_STANDARDIZED: this is how it is read (2026-05-14)`}},
		{[]string{"eventDate", "14.v.2026", "year", "2025"}, []string{`AMENDMENT_EVENTDATE_STANDARDIZED: this is how it is read (2026-05-14)`}},
		{[]string{"year", "2025", "month", "6"}, []string{`VALIDATION_EVENT_CONSISTENT: eventDate says 2026: correct one of the two (2026)`}},
		{[]string{"eventDate", "2026-05", "day", "14"}, []string{`VALIDATION_EVENT_CONSISTENT: eventDate does not say one day: leave this empty or correct eventDate`}},
		{[]string{"specificEpithet", "camphoratus"}, []string{"name-columns"}},
	} {
		var got []string
		for _, f := range findings(t, engine(t, nil, ""), []map[string]string{check.With(tt.set...)}) {
			s := f.Rule
			if strings.ContainsRune(s, '_') { // what the basic rules say is theirs to test
				s += ": " + f.Message
				if f.Suggest != "" {
					s += " (" + f.Suggest + ")"
				}
			}
			got = append(got, s)
			style(t, f)
		}
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("%q (-want +got)\n%s", tt.set, d)
		}
	}
}

// Mending makes no datum up, fills nothing in, and changes nothing twice.
func TestAmend(t *testing.T) {
	row := check.With("countryCode", "Portugal", "eventDate", "14.v.2026", "month", "V", "day", "14th", "license", "CC0", "basisOfRecord", "preserved specimen",
		"typeStatus", "Holo.", "geodeticDatum", "", "verbatimElevation", "100 feet", "minimumElevationInMeters", "", "dateIdentified", "2026", "year", "")
	for round := range 2 {
		var got []string
		for r, err := range open(t, row).Rows() {
			if err != nil {
				t.Fatal(err)
			}
			for _, a := range Amend(r) {
				if a.From != row[a.Term] || a.From == a.To {
					t.Errorf("%+v of %q", a, row[a.Term])
				}
				got = append(got, a.Term+" "+a.To)
				row[a.Term] = a.To
			}
		}
		slices.Sort(got)
		want := []string{"basisOfRecord PreservedSpecimen", "countryCode PT", "day 14", "eventDate 2026-05-14",
			"license https://creativecommons.org/publicdomain/zero/1.0/legalcode", "month 5", "typeStatus Holotype"}
		if round == 1 {
			want = nil
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("round %d (-want +got)\n%s", round+1, d)
		}
	}
}

// Whatever the cells hold: an answer is in the standard's words, the same
// twice, and what is amended again is not amended.
func FuzzAnswers(f *testing.F) {
	for _, s := range []string{"", " ", "\x00", "null", "X", "Portugal", "2021-28-10", "9.ii-10.iii.2000", "1980/1981", "366", "-0", "1e9", "EPSG:4326", "WGS84", "Holo. | Para.", "54K 0390210 7377243", "100 feet",
		"Hakea decurrens ssp. ? physocarpa", "urn:lsid:a:b:c", "CC BY 4.0", "23rd", "\ufeff", "99999999999999999999"} {
		f.Add(s, "2021", "10", "29")
		f.Add("2021-10-28", s, s, s)
	}
	tests := Tests()
	statuses := []string{RunHasResult, InternalNotMet, Amended, FilledIn, NotAmended}
	f.Fuzz(func(t *testing.T, a, b, c, d string) {
		values := [...]string{a, b, c, d}
		for _, test := range tests {
			cells := map[string]string{}
			for i, term := range slices.Concat(test.Acts, test.Consults) {
				cells[term] = values[i%len(values)]
			}
			get := func(term string) string { return cells[term] }
			r := test.Answer(NewCells(get, today(t)))
			if again := test.Answer(NewCells(get, today(t))); outcome(t, again) != outcome(t, r) {
				t.Fatalf("%s %q: %v, then %v", test.Label, cells, r, again)
			}
			if !slices.Contains(statuses, r.Status) || (r.Status == RunHasResult) != (r.Result != "") || (r.Status == Amended || r.Status == FilledIn) != (len(r.Amended) > 0) {
				t.Fatalf("%s %q: %+v", test.Label, cells, r)
			}
			if (r.Status == RunHasResult) == (test.Kind == KindAmendment) && r.Status != InternalNotMet {
				t.Fatalf("%s %q: %+v", test.Label, cells, r)
			}
			if len(r.Amended) == 0 {
				continue
			}
			before := maps.Clone(cells)
			for term, value := range r.Amended {
				if !slices.Contains(test.Acts, bare(term)) || blank(value) {
					t.Fatalf("%s %q: changes %s to %q", test.Label, cells, term, value)
				}
				cells[bare(term)] = value
			}
			if again := test.Answer(NewCells(get, today(t))); len(again.Amended) > 0 {
				t.Fatalf("%s %q: %v, and again %v", test.Label, before, r.Amended, again.Amended)
			}
		}
	})
}

// All tests over the real table of 1,534 records.
func BenchmarkResponses(b *testing.B) {
	rows := realRows(b)
	respond := Responder(today(b))
	b.ReportAllocs()
	for b.Loop() {
		n := 0
		for _, row := range rows {
			for a := range respond(row) {
				if a.Status != "" {
					n++
				}
			}
		}
		if n != len(rows)*len(Tests()) {
			b.Fatalf("%d answers", n)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(rows)), "ns/row")
}

// The check with all rules on, silent ones too, and with the basic ones alone.
func BenchmarkCheck(b *testing.B) {
	rows := realRows(b)
	all := map[string]label.Severity{}
	for _, r := range Rules() {
		all[r.Name] = label.Note
	}
	for _, bm := range []struct {
		name string
		o    check.Options
	}{
		{"basic", check.Options{Today: today(b)}},
		{"default", check.Options{Today: today(b), Rules: Rules()}},
		{"all", check.Options{Today: today(b), Rules: Rules(), Severity: all}},
	} {
		b.Run(bm.name, func(b *testing.B) {
			e := check.New(bm.o)
			b.ReportAllocs()
			for b.Loop() {
				n := 0
				for _, row := range rows {
					_, fs := e.Row(row)
					n += len(fs)
				}
				if n == 0 {
					b.Fatal("nothing was found")
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(rows)), "ns/row")
		})
	}
}

func realRows(t testing.TB) []*table.Row {
	tab, err := table.Open(table.File(outside.Shared(t, "real/taurus-plants.csv")), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var rows []*table.Row
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, row)
	}
	return rows
}

// The real table has nothing that these rules should warn of; every record has
// a date that ends in "00:00:00.0", which is read and noted.
func TestRealTable(t *testing.T) {
	rows := realRows(t)
	e := engine(t, nil, "")
	count := map[string]int{}
	for _, row := range rows {
		_, fs := e.Row(row)
		for _, f := range fs {
			if strings.ContainsRune(f.Rule, '_') {
				count[f.Severity.String()+" "+f.Rule]++
			}
		}
	}
	if d := cmp.Diff(map[string]int{"note AMENDMENT_EVENTDATE_STANDARDIZED": len(rows)}, count); d != "" || len(rows) != 1534 {
		t.Errorf("%d rows (-want +got)\n%s", len(rows), d)
	}
}
