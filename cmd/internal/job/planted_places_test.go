package job

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

func num(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}

// decimal sets both coordinates, where the table has them, and where it has
// verbatim ones alone, those; each that is set may be named.
func (p *planting) decimal(lat, lon float64) bool {
	if p.has("decimalLatitude") {
		if p.has("verbatimCoordinates") {
			p.quietly("verbatimCoordinates", "")
		}
		a, b := fmt.Sprintf("%.5f", lat), fmt.Sprintf("%.5f", lon)
		return math.Abs(lat) <= 90 && math.Abs(lon) <= 180 && (p.set("decimalLatitude", a) || p.named("decimalLatitude")) && (p.set("decimalLongitude", b) || p.named("decimalLongitude"))
	}
	return math.Abs(lat) <= 90 && math.Abs(lon) <= 180 && p.set("verbatimCoordinates", dms(lat, "N", "S")+" "+dms(lon, "E", "W"))
}

// named says that a finding may name a cell that was not changed.
func (p *planting) named(term string) bool { p.terms = append(p.terms, term); return true }

// latLon is where the row lies.
func (p *planting) latLon() (lat, lon float64) {
	if p.has("decimalLatitude") {
		return num(p.get("decimalLatitude")), num(p.get("decimalLongitude"))
	}
	half := func(s string) float64 {
		var d, m int
		var sec float64
		var side string
		fmt.Sscanf(strings.NewReplacer("°", " ", "'", " ", "\"", " ").Replace(s), "%d %d %f %s", &d, &m, &sec, &side)
		v := float64(d) + float64(m)/60 + sec/3600
		if side == "S" || side == "W" {
			return -v
		}
		return v
	}
	a, b, _ := strings.Cut(p.get("verbatimCoordinates"), " ")
	return half(a), half(b)
}

// lie plants other coordinates.
func lie(rule, how string, f func(p *planting, lat, lon float64) (float64, float64)) plantedFault {
	return plantedFault{rule, how, func(p *planting) bool {
		lat, lon := p.latLon()
		return p.decimal(f(p, lat, lon))
	}}
}

func (p *planting) height(minimum string) bool {
	return p.has("minimumElevationInMeters") && p.set("minimumElevationInMeters", minimum) && (!p.has("maximumElevationInMeters") || p.quietly("maximumElevationInMeters", "")) &&
		(!p.has("verbatimElevation") || p.quietly("verbatimElevation", ""))
}

// placeFaults are in coordinates and heights.
var placeFaults = []plantedFault{
	to("coordinates-half", "no longitude", "decimalLongitude", ""), to("coordinates-half", "no latitude", "decimalLatitude", ""),
	{"coordinates-half", "NA for the longitude", func(p *planting) bool { return p.set("decimalLongitude", "") && p.quietly("decimalLongitude", "") }},
	to("coordinates-range", "latitude", "decimalLatitude", "95.2", "-91.00012", "387120", "3851.20"), to("coordinates-range", "longitude", "decimalLongitude", "188.8", "-892100", "360.5"),
	by("coordinates-range", "the point lost", func(_ *planting, s string) string { return strings.Replace(s, ".", "", 1) }, "decimalLatitude", "decimalLongitude"),
	to("coordinates-unreadable", "words", "decimalLatitude", "north", "see map", "GPS off"), to("coordinates-unreadable", "two points", "decimalLongitude", "-8.92.10", "8..921"),
	by("coordinates-unreadable", "the letter O", func(_ *planting, s string) string { return s[:len(s)-1] + "O" }, "decimalLatitude", "decimalLongitude"),
	{"coordinates-verbatim", "no hemispheres", func(p *planting) bool { return p.onlyVerbatim(p.pick("38°28'16\" 8°48'13\"", "38 28 16 8 48 13")) }},
	{"coordinates-verbatim|coordinates-unreadable", "minutes beyond 60", func(p *planting) bool { return p.onlyVerbatim("38°78'16\"N 8°48'13\"W") }},
	{"coordinates-verbatim", "one half", func(p *planting) bool { return p.onlyVerbatim("38°28'16\"N") }},
	{"coordinates-disagree", "another minute", func(p *planting) bool { return p.verbatim(p.pick("1", "-1")+"", 0.2) }},
	{"coordinates-disagree", "another degree", func(p *planting) bool { return p.verbatim(p.pick("1", "-1"), 1) }},
	{"coordinates-disagree", "another side", func(p *planting) bool {
		lat, lon := p.latLon()
		return p.has("decimalLatitude") && p.named("decimalLatitude") && p.set("verbatimCoordinates", dms(lat, "N", "S")+" "+dms(-lon, "E", "W"))
	}},
	to("datum-missing", "empty", "geodeticDatum", ""), to("datum-missing", "blank", "geodeticDatum", "  "),
	{"datum-missing", "no column's word", func(p *planting) bool { return p.set("geodeticDatum", "") }},
	to("uncertainty", "none", "coordinateUncertaintyInMeters", "0", "0.0"), to("uncertainty", "below", "coordinateUncertaintyInMeters", "-30", "-1"),
	to("uncertainty", "beyond the earth", "coordinateUncertaintyInMeters", "30000000"), to("uncertainty", "words", "coordinateUncertaintyInMeters", "good", "3 sats", "±"),

	lie("coordinates-zero", "zeros", func(p *planting, lat, lon float64) (float64, float64) { return 0, 0 }),
	{"coordinates-zero", "plain 0", func(p *planting) bool {
		return p.quietly("verbatimCoordinates", "") != p.has("nothing") && p.set("decimalLatitude", "0") && p.set("decimalLongitude", "0")
	}},
	{"coordinates-zero", "0.0", func(p *planting) bool {
		p.quietly("verbatimCoordinates", "")
		return p.set("decimalLatitude", "0.0") && p.set("decimalLongitude", "0.000")
	}},
	lie("coordinates-swapped", "exchanged", func(p *planting, lat, lon float64) (float64, float64) { return lon, lat }),
	lie("coordinates-swapped", "exchanged, a sign lost", func(p *planting, lat, lon float64) (float64, float64) { return math.Abs(lon), math.Abs(lat) }),
	lie("coordinates-swapped", "exchanged, signs left", func(p *planting, lat, lon float64) (float64, float64) {
		return math.Copysign(lon, lat), math.Copysign(lat, lon)
	}),
	lie("coordinates-sign", "longitude", func(p *planting, lat, lon float64) (float64, float64) { return lat, -lon }),
	lie("coordinates-sign|coordinates-swapped", "latitude", func(p *planting, lat, lon float64) (float64, float64) { return -lat, lon }),
	lie("coordinates-sign", "both", func(p *planting, lat, lon float64) (float64, float64) { return -lat, -lon }),
	{"coordinates-country", "wrong country", func(p *planting) bool {
		p.named("decimalLatitude")
		p.named("verbatimCoordinates")
		p.named("countryCode")
		other, code, _ := strings.Cut(p.pick("Germany DE", "Kenya KE", "Japan JP", "Peru PE", "Canada CA"), " ")
		if p.has("countryCode") {
			p.set("countryCode", code)
		}
		return p.set("country", other)
	}},
	lie("coordinates-country", "another tens figure", func(p *planting, lat, lon float64) (float64, float64) {
		if p.get("country") == "Brazil" || lat < 0 {
			return lat, 200
		}
		return lat + 10, lon + 8
	}),
	{"coordinates-country|coordinates-sign|coordinates-swapped", "a country far off", func(p *planting) bool {
		p.named("decimalLatitude")
		p.named("verbatimCoordinates")
		p.quietly("countryCode", "")
		return p.set("country", p.pick("Chile", "India", "Yugoslavia", "South Africa", "New Guinea"))
	}},
	to("country-code", "another country's", "countryCode", "DE", "KE", "JP", "PE", "CA"), to("country-code", "a code like it", "countryCode", "PA", "PR", "BH", "TN"),
	{"country-code", "without coordinates", func(p *planting) bool {
		return p.quietly("decimalLatitude", "") && p.quietly("decimalLongitude", "") && p.set("countryCode", p.pick("DE", "KE", "JP"))
	}},
	lie("coordinates-sea|coordinates-country|coordinates-swapped", "far out", func(p *planting, lat, lon float64) (float64, float64) { return lat, lon - 20 + float64(p.IntN(3)) }),
	lie("coordinates-sea|coordinates-swapped", "the Atlantic", func(p *planting, lat, lon float64) (float64, float64) { return 30.5 + p.Float64(), -40.3 + p.Float64() }),
	lie("coordinates-sea", "the Gulf of Guinea", func(p *planting, lat, lon float64) (float64, float64) { return -1 - p.Float64(), 1.2 + p.Float64() }),
	lie("locality-coordinates|coordinates-state", "a figure of the degree", func(p *planting, lat, lon float64) (float64, float64) { return p.inland(1, 0) }),
	lie("locality-coordinates|coordinates-state", "half a degree east", func(p *planting, lat, lon float64) (float64, float64) { return p.inland(0, 0.5) }),
	lie("locality-coordinates|coordinates-state", "two thirds of a degree", func(p *planting, lat, lon float64) (float64, float64) { return p.inland(0.3, 0.6) }),
	lie("coordinates-state|locality-coordinates", "a degree and a half", func(p *planting, lat, lon float64) (float64, float64) { return p.inland(1.5, 0.2) }),
	lie("coordinates-equal", "longitude over latitude", func(p *planting, lat, lon float64) (float64, float64) { return lon, lon }),
	lie("coordinates-equal", "latitude over longitude", func(p *planting, lat, lon float64) (float64, float64) { return lat, lat }),
	lie("coordinates-equal", "but for the sign", func(p *planting, lat, lon float64) (float64, float64) { return lat, -lat }),
	lie("coordinates-centre", "capital", func(p *planting, lat, lon float64) (float64, float64) {
		return centre(p, map[string][2]float64{"Portugal": {38 + 43./60, -9 - 8./60}, "Spain": {40.4, -3 - 41./60}, "Chile": {-33.45, -70 - 40./60}, "Turkey": {39 + 56./60, 32 + 52./60}})
	}),
	lie("coordinates-centre", "country", func(p *planting, lat, lon float64) (float64, float64) {
		return centre(p, map[string][2]float64{"Portugal": {39.5, -8}, "Spain": {40, -4}, "Brazil": {-10, -55}, "Chile": {-30, -71}, "Turkey": {39, 35}, "Mozambique": {-18.25, 35}, "Angola": {-12.5, 18.5}})
	}),
	{"coordinates-centre", "in whole degrees", func(p *planting) bool {
		at, ok := map[string][2]string{"Spain": {"40", "-4"}, "Brazil": {"-10", "-55"}, "Chile": {"-30", "-71"}, "Turkey": {"39", "35"}, "Portugal": {"39.5", "-8"}}[p.get("country")]
		p.quietly("verbatimCoordinates", "")
		p.quietly("coordinateUncertaintyInMeters", "")
		return ok && p.set("decimalLatitude", at[0]) && p.set("decimalLongitude", at[1])
	}},
	{"band-letter", "another band", func(p *planting) bool { return p.grid("P") }},
	{"band-letter", "the row letter", func(p *planting) bool { return p.grid("K") }},
	{"band-letter", "of the other hemisphere", func(p *planting) bool { return p.grid("G") }},
	{"coordinates-minutes", "all of the table", func(p *planting) bool {
		return p.minutes(func(m int) string { return fmt.Sprintf("%02d", m) })
	}},
	{"coordinates-minutes", "with seconds", func(p *planting) bool {
		return p.minutes(func(m int) string { return fmt.Sprintf("%02d%02d", m, p.IntN(60)) })
	}},
	{"coordinates-minutes", "without end zeros", func(p *planting) bool {
		return p.minutes(func(m int) string { return strings.TrimSuffix(fmt.Sprintf("%02d", m), "0") + "" })
	}},
	by("coordinates-decimals", "a program's figures", func(_ *planting, s string) string { return s + "00000000003" }, "decimalLatitude", "decimalLongitude"),
	by("coordinates-decimals", "nine", func(_ *planting, s string) string { return s + "8437" }, "decimalLatitude", "decimalLongitude"),
	by("coordinates-decimals", "fourteen", func(_ *planting, s string) string { return s + "843751112" }, "decimalLatitude", "decimalLongitude"),
	{"false-precision", "uncertainty of kilometres", func(p *planting) bool {
		return p.named("decimalLatitude") && p.quietly("coordinateUncertaintyInMeters", p.pick("25000", "50000"))
	}},
	{"false-precision", "more figures", func(p *planting) bool {
		return p.change("decimalLatitude", func(s string) string { return s + "7" }) && p.quietly("coordinateUncertaintyInMeters", "5000")
	}},
	by("false-precision", "hundredths of a metre", func(p *planting, s string) string { return s + p.pick(".37", ".281") }, "minimumElevationInMeters"),

	{"elevation-unreadable", "feet", func(p *planting) bool { return p.height(p.pick("4000 ft", "1200 feet", "900'")) }},
	{"elevation-unreadable", "words", func(p *planting) bool { return p.height(p.pick("sea level?", "high", "summit")) }},
	{"elevation-unreadable", "a letter for a figure", func(p *planting) bool { return p.height(p.pick("5OO", "l20", "12o")) }},
	{"elevation-thousands", "one", func(p *planting) bool { return p.height(p.pick("1.352", "1.200", "2.005")) }},
	{"elevation-thousands", "below a thousand", func(p *planting) bool { return p.height(p.pick("1.020", "1.100")) }},
	{"elevation-thousands", "in the hills", func(p *planting) bool { return p.height(p.pick("1.010", "1.980", "1.440")) }},
	{"elevation-form", "a range", func(p *planting) bool { return p.height(p.pick("100-120", "120–140")) }},
	{"elevation-form", "about", func(p *planting) bool { return p.height(p.pick("ca. 100", "c. 120 m", "±110")) }},
	{"elevation-form", "in the other column", func(p *planting) bool {
		return p.has("maximumElevationInMeters") && p.quietly("minimumElevationInMeters", "") && p.quietly("verbatimElevation", "") && p.set("maximumElevationInMeters", p.pick("100-120", "ca. 110"))
	}},
	{"elevation-range", "beyond all land", func(p *planting) bool { return p.height(p.pick("12000", "9999", "88500")) }},
	{"elevation-range", "below all land", func(p *planting) bool { return p.height(p.pick("-900", "-1200", "-500")) }},
	{"elevation-range", "a figure too many", func(p *planting) bool { return p.height(p.get("minimumElevationInMeters") + "000") }},
	{"elevation-order", "exchanged", func(p *planting) bool {
		low, high := p.get("minimumElevationInMeters"), p.get("maximumElevationInMeters")
		return high != "" && p.quietly("verbatimElevation", "") && p.set("minimumElevationInMeters", high) && p.set("maximumElevationInMeters", low)
	}},
	{"elevation-order", "a figure lost", func(p *planting) bool {
		p.named("minimumElevationInMeters")
		return p.quietly("verbatimElevation", "") && p.change("maximumElevationInMeters", func(s string) string { return s[:len(s)-1] })
	}},
	{"elevation-order", "maximum 0", func(p *planting) bool {
		p.named("minimumElevationInMeters")
		return p.quietly("verbatimElevation", "") && p.set("maximumElevationInMeters", p.pick("0", "1"))
	}},
	{"elevation-ranges", "a range and a height", func(p *planting) bool {
		h := int(num(p.get("minimumElevationInMeters")))
		p.named("maximumElevationInMeters")
		return p.has("maximumElevationInMeters") && p.quietly("verbatimElevation", "") && p.set("minimumElevationInMeters", fmt.Sprintf("%d%s%d", h, p.pick("-", "–", " - "), h+10))
	}},
	{"elevation-ranges", "a height and a range", func(p *planting) bool {
		h := int(num(p.get("minimumElevationInMeters")))
		p.named("minimumElevationInMeters")
		return p.quietly("verbatimElevation", "") && p.set("maximumElevationInMeters", fmt.Sprintf("%d-%d", h, h+10))
	}},
	{"elevation-ranges", "two ranges", func(p *planting) bool {
		h := int(num(p.get("minimumElevationInMeters")))
		return p.quietly("verbatimElevation", "") && p.set("minimumElevationInMeters", fmt.Sprintf("%d-%d", h, h+10)) && p.set("maximumElevationInMeters", fmt.Sprintf("%d-%d", h+5, h+30))
	}},
	{"elevation-verbatim", "no unit", func(p *planting) bool { return p.onlyHeight(p.pick("4000", "700")) }},
	{"elevation-verbatim", "words", func(p *planting) bool { return p.onlyHeight(p.pick("half-way up", "subalpine", "near the summit")) }},
	{"elevation-verbatim", "two units at odds", func(p *planting) bool { return p.onlyHeight(p.pick("300 m/ft", "4000 ft (12 m)")) }},
	{"elevation-feet", "the figures of verbatimElevation", func(p *planting) bool {
		f := fmt.Sprintf("%.0f", num(p.get("minimumElevationInMeters"))/0.3048)
		return num(f) > 100 && p.quietly("verbatimElevation", f+p.pick(" ft", " feet", "'", "ft.")) && p.quietly("maximumElevationInMeters", "") != p.has("nothing") && p.set("minimumElevationInMeters", f)
	}},
	{"elevation-feet", "the figures of the locality", func(p *planting) bool {
		f := fmt.Sprintf("%.0f", num(p.get("minimumElevationInMeters"))/0.3048)
		return num(f) > 100 && p.height(f) && p.quietly("locality", p.get("locality")+", "+f+p.pick(" ft", " feet"))
	}},
	{"elevation-feet", "higher than the country", func(p *planting) bool {
		m := map[string]float64{"Portugal": 1500, "Spain": 1900, "South Africa": 1700, "Angola": 1500, "Mozambique": 1400, "Brazil": 1800}[p.get("country")]
		m += float64(p.IntN(100))
		return m > 200 && p.height(fmt.Sprintf("%.0f", m/0.3048))
	}},
	{"elevation-country|elevation-feet", "higher than all of it", func(p *planting) bool {
		m := map[string]float64{"Portugal": 8200, "Spain": 8400, "Angola": 8600, "Mozambique": 8500, "Brazil": 8700, "South Africa": 8600, "Chile": 7900}[p.get("country")]
		return m > 0 && p.height(fmt.Sprint(m))
	}},
	{"elevation-country", "lower than all of it", func(p *planting) bool { return p.height(p.pick("-120", "-300", "-85")) }},
	{"elevation-country|elevation-feet", "a figure doubled", func(p *planting) bool {
		m := map[string]string{"Portugal": "7880", "Mozambique": "8448", "Spain": "8448"}[p.get("country")]
		return m != "" && p.height(m)
	}},
}

// inland moves a row that has company at its stop so far that it stays in the
// country; 200 where it would not, or where it has none.
func (p *planting) inland(north, east float64) (lat, lon float64) {
	lat, lon = p.latLon()
	for r := range p.trip.rows {
		if r != p.row && p.stop[r] == p.stop[p.row] {
			p.rows = append(p.rows, r)
		}
	}
	i := -1
	for k, site := range tripInland {
		if strings.Contains(p.get("locality"), site) {
			i = k
		}
	}
	if i < 0 || len(p.rows) < 3 {
		return 0, 200
	}
	return lat + north, lon + east
}

// tripInland are sites around which the country reaches far to the north and east.
var tripInland = []string{"Ourique", "Évora", "Serra do Cipó", "Reserva florestal", "Ala Dağları", "Serra da Chela"}

func centre(p *planting, of map[string][2]float64) (lat, lon float64) {
	p.quietly("coordinateUncertaintyInMeters", "")
	at, ok := of[p.get("country")]
	if !ok {
		return 0, 200 // no room
	}
	return at[0], at[1]
}

func (p *planting) onlyVerbatim(text string) bool {
	p.quietly("decimalLatitude", "")
	p.quietly("decimalLongitude", "")
	return p.set("verbatimCoordinates", text)
}

func (p *planting) onlyHeight(text string) bool {
	p.quietly("minimumElevationInMeters", "")
	p.quietly("maximumElevationInMeters", "")
	return p.set("verbatimElevation", text)
}

// verbatim sets verbatim coordinates that lie so many degrees from the decimal
// ones.
func (p *planting) verbatim(sign string, by float64) bool {
	lat, lon := p.latLon()
	return p.has("decimalLatitude") && p.named("decimalLatitude") && p.set("verbatimCoordinates", dms(lat+num(sign)*by, "N", "S")+" "+dms(lon, "E", "W"))
}

// grid sets a grid reference with that band letter beside decimal coordinates.
func (p *planting) grid(letter string) bool {
	lat, lon := p.latLon()
	if is := "CDEFGHJKLMNPQRSTUVWX"[int((lat+80)/8)]; !p.has("decimalLatitude") || string(is) == letter {
		return false
	}
	return p.set("verbatimCoordinates", fmt.Sprintf("%d%s 5%05d 42%05d", int((lon+180)/6)+1, letter, p.IntN(99999), p.IntN(99999)))
}

// minutes makes a table of places all over Portugal whose minutes stand for
// decimals.
func (p *planting) minutes(write func(int) string) bool {
	lat, lon := p.column("decimalLatitude"), p.column("decimalLongitude")
	if lat < 0 || p.get("country") != "Portugal" {
		return false
	}
	first := -1
	for i, r := range p.trip.rows {
		a, b := 37+p.IntN(5), 7+p.IntN(2)
		m, n := p.IntN(60), p.IntN(60)
		if a == 37 && m < 15 {
			m += 15
		}
		if b == 7 && a < 40 || b == 8 && a == 41 || b == 8 && a == 38 {
			n = n % 45
		}
		r[lat], r[lon] = fmt.Sprintf("%d.%s", a, write(m)), fmt.Sprintf("-%d.%s", b, write(n))
		r[p.column("locality")] = fmt.Sprintf("Valdoura, trail %d, %s", i, r[p.column("locality")])
		r[p.column("coordinateUncertaintyInMeters")] = "2000"
		r[p.column("minimumElevationInMeters")] = ""
		if first < 0 {
			first = i
		}
	}
	p.row, p.terms = 0, []string{"decimalLatitude", "decimalLongitude"}
	return true
}

// figureFaults are figures that are read, but not as other programs write them.
var figureFaults = []plantedFault{
	{"elevation-comma", "a decimal comma", func(p *planting) bool { return p.height(p.pick("350,5", "120,25", "87,5")) }},
	to("uncertainty-form", "a decimal comma", "coordinateUncertaintyInMeters", "9,1", "12,5"), to("uncertainty-form", "a unit", "coordinateUncertaintyInMeters", "50 m", "±30 m"),
	{"locality-height", "another height among the words", func(p *planting) bool {
		return p.has("minimumElevationInMeters") && num(p.get("minimumElevationInMeters")) < 2000 && p.change("locality", func(s string) string { return s + ", alt. 3800 m" })
	}},
	{"locality-code", "the code of a plot", func(p *planting) bool {
		for _, term := range []string{"decimalLatitude", "decimalLongitude", "verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "county", "municipality", "island", "verbatimLocality"} {
			p.quietly(term, "")
		}
		return p.set("locality", p.pick("K12", "plot 7", "S3"))
	}},
	{"locality-point", "another place among the words", func(p *planting) bool {
		return p.has("decimalLatitude") && p.change("locality", func(s string) string { return s + `, 61°20'N 25°10'E` })
	}},
	{"date-month", "the day before the month", func(p *planting) bool {
		y, m, d := p.ymd()
		return d > 12 && p.set("eventDate", fmt.Sprintf("%d-%02d-%02d", y, d, m))
	}},
	by("text-word-twice", "a small word", func(_ *planting, s string) string {
		for _, w := range []string{"de", "da", "do", "the", "of", "with", "com"} {
			if after := strings.Replace(s, " "+w+" ", " "+w+" "+w+" ", 1); after != s {
				return after
			}
		}
		return s
	}, "locality", "habitat"),
	by("punctuation-end", "a sign at the end", func(p *planting, s string) string { return s + p.pick(",", ";", ":", " ,") }, "locality", "habitat"),
	by("text-caption", "the column's heading", func(_ *planting, s string) string { return "Locality: " + s }, "locality"),
	by("text-caption", "in other tongues", func(p *planting, s string) string { return p.pick("Habitat: ", "Hábitat: ", "Biotop: ") + s }, "habitat"),
}
