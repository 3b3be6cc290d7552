package bdq

import "testing"

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
		{"VALIDATION_EVENT_CONSISTENT", []string{"eventDate", "1949-09-15", "month", "IX"}, no}, // note: nor is it what the term wants
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
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "mid May 1932"}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "14 May [1932]"}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "14 May 1932 O.S."}, same},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "Saturday 14th May 1932"}, `AMENDED {"dwc:eventDate":"1932-05-14"}`},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "14 de maio de 1932"}, `AMENDED {"dwc:eventDate":"1932-05-14"}`},
		{"AMENDMENT_EVENTDATE_STANDARDIZED", []string{"eventDate", "xx.v.1932"}, `AMENDED {"dwc:eventDate":"1932-05"}`},
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
