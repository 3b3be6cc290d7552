package place

import (
	"strconv"
	"strings"
	"sync"
)

// A DatumKind says what an EPSG code stands for.
type DatumKind uint8

// The kinds that decimal latitude and longitude may refer to, the most telling
// first.
const (
	NoDatum       DatumKind = iota
	GeographicCRS           // a geographic two-dimensional reference system
	GeodeticDatum
	Ellipsoid
)

// EPSG returns what the number of an EPSG code stands for: NoDatum for one
// that is none or stands for something else, such as a projected system.
func EPSG(number int) DatumKind {
	t := datums()
	switch {
	case contains(t.crs, number):
		return GeographicCRS
	case contains(t.datum, number):
		return GeodeticDatum
	case contains(t.ellipsoid, number):
		return Ellipsoid
	}
	return NoDatum
}

// ParseEPSG reads a code as the standard writes it, "EPSG:4326", and nothing
// else.
func ParseEPSG(s string) (number int, ok bool) {
	digits, ok := strings.CutPrefix(s, "EPSG:")
	if !ok || len(digits) < 4 || len(digits) > 5 || digits[0] == '0' || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	number, _ = strconv.Atoi(digits)
	return number, true
}

// Datum returns the EPSG code that a datum's name means, "EPSG:4326" for
// "WGS84" or "WGS_1984": that of the geographic reference system built on it,
// or of the ellipsoid where an ellipsoid is named. Case, accents and
// punctuation do not matter, nor whether the code itself is written in full
// ("epsg 4326", "4326"). A name that is short for several ("GDA", "NAD",
// "Indian") gives false.
func Datum(name string) (code string, ok bool) {
	k := squeeze(name)
	t := datums()
	n, ok := t.names[k]
	if !ok {
		digits := strings.TrimPrefix(k, "epsg")
		digits = strings.TrimPrefix(strings.TrimPrefix(digits, "httpwwwopengisnetdefcrsepsg0"), "urnogcdefcrsepsg")
		if len(digits) < 4 || len(digits) > 5 || digits[0] == '0' || strings.Trim(digits, "0123456789") != "" {
			return "", false
		}
		n, _ = strconv.Atoi(digits)
	}
	if n < 0 || EPSG(n) == NoDatum {
		return "", false
	}
	return "EPSG:" + strconv.Itoa(n), true
}

// datumSynonyms are what people write for a datum beside its EPSG names, in
// the order code, name. From memory and from the notes of tdwg/bdq issue 60.
const datumSynonyms = `
4326 WGS84|4326 WGS 1984|4326 World Geodetic System 1984|4326 World Geodetic System 84|4326 World Geodetic Survey 1984|4326 GCS_WGS_1984|4326 D_WGS_1984|4326 WGS84 (EPSG:4326)|4326 EPSG:4326 (WGS84)|4326 WGS84 lat/long|4326 WGS 84 / lat-long|4326 WGS-84 (GPS)
4322 WGS72|4322 WGS 1972|4322 World Geodetic System 1972|4267 NAD1927|4267 North American 1927|4267 North American Datum of 1927|4267 North American Datum 27|4267 GCS_North_American_1927|4267 D_North_American_1927
4269 NAD1983|4269 North American 1983|4269 North American Datum of 1983|4269 North American Datum 83|4269 GCS_North_American_1983|4269 D_North_American_1983|4230 ED1950|4230 European 1950|4230 European Datum of 1950|4230 European Datum 50|4230 GCS_European_1950
4258 ETRS1989|4258 European Terrestrial Reference System 89|4258 European Terrestrial Reference System 1989|4283 GDA1994|4283 Geocentric Datum of Australia 1994|4283 Geocentric Datum of Australia 94|7844 Geocentric Datum of Australia 2020
4202 AGD1966|4202 Australian Geodetic 1966|4203 AGD1984|4203 Australian Geodetic 1984|4618 SAD1969|4618 South American Datum 1969|4618 South American Datum of 1969|4618 South American 1969|4674 SIRGAS2000|4674 SIRGAS-2000
4272 NZGD1949|4277 OSGB36|4277 OSGB1936|4277 Ordnance Survey Great Britain 1936|4284 Pulkovo 42|4284 SK-42|4207 Datum Lisboa|4207 Lisbon|4274 Datum 73|4274 D73|4301 Tokyo Datum|4301 Tokyo|4222 Cape|4222 Cape Datum|4612 JGD2000
4209 Arc1950|4210 Arc1960|4148 Hartebeesthoek 1994|4148 Hartebeesthoek 94|4135 Old Hawaiian|4240 Indian 1975|4265 Rome 1940|4265 Monte Mario|4300 Ireland 1965|4299 TM65|4289 Amersfoort|4314 DHDN|4312 MGI|4149 CH-1903|4149 CH 1903|4275 NTF
7022 International 1924|7022 Hayford 1909|7022 Hayford|7022 International Ellipsoid 1924|7008 Clarke 1866|7019 GRS80|7019 GRS 80|7024 Krassowsky|7024 Krassovsky 1940|7004 Bessel 1841|7030 WGS84 ellipsoid|7001 Airy 1830|7036 GRS67
`

type datumIndex struct {
	crs, datum, ellipsoid []span
	names                 map[string]int // squeezed; -1 where several have it
}

// A span is a run of code numbers, both ends in it.
type span struct{ first, last int }

func contains(spans []span, n int) bool {
	for _, s := range spans {
		if n <= s.last {
			return n >= s.first
		}
	}
	return false
}

var datums = sync.OnceValue(func() *datumIndex {
	t := &datumIndex{crs: spans(crsCodes), datum: spans(datumCodes), ellipsoid: spans(ellipsoidCodes), names: map[string]int{}}
	add := func(name string, n int, weak bool) {
		k := squeeze(name)
		switch have, ok := t.names[k]; {
		case k == "" || ok && (have == n || weak):
		case ok:
			t.names[k] = -1
		default:
			t.names[k] = n
		}
	}
	for line := range strings.Lines(strings.TrimSpace(crsNames)) {
		number, name, _ := strings.Cut(strings.TrimSpace(line), " ")
		n, _ := strconv.Atoi(number)
		name, datum, _ := strings.Cut(name, "|")
		add(name, n, false)
		add(datum, n, false)
	}
	for line := range strings.Lines(strings.TrimSpace(datumSynonyms)) {
		for _, entry := range strings.Split(strings.TrimSpace(line), "|") {
			number, name, _ := strings.Cut(entry, " ")
			n, _ := strconv.Atoi(number)
			t.names[squeeze(name)] = n
		}
	}
	// An ellipsoid that shares its name with a reference system (WGS 84) is
	// not what a datum column means.
	for line := range strings.Lines(strings.TrimSpace(ellipsoidNames)) {
		number, name, _ := strings.Cut(strings.TrimSpace(line), " ")
		n, _ := strconv.Atoi(number)
		add(name, n, true)
	}
	return t
})

func spans(list string) []span {
	var out []span
	for _, f := range strings.Fields(list) {
		first, last, run := strings.Cut(f, "-")
		a, _ := strconv.Atoi(first)
		b := a
		if run {
			b, _ = strconv.Atoi(last)
		}
		out = append(out, span{a, b})
	}
	return out
}
