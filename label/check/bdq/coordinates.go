package bdq

import (
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label/check"
	"cornerslip/label/coord"
	"cornerslip/label/place"
)

// coordinateTests are the amendments of where it was found.
func coordinateTests() []Test {
	return []Test{
		{
			Label: "AMENDMENT_COORDINATES_FROM_VERBATIM", GUID: "3c2590c7-af8a-4eb4-af57-5f73ba9d1f8e", Kind: KindAmendment,
			Doc:      "empty decimalLatitude and decimalLongitude are filled in from verbatim coordinates in degrees, with their datum",
			Acts:     []string{"decimalLatitude", "decimalLongitude", "geodeticDatum"},
			Consults: []string{"verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "verbatimCoordinateSystem", "verbatimSRS"},
			Answer:   coordinatesFromVerbatim,
			rule: speech{
				message:        "can be filled in from the verbatim coordinates",
				example:        check.With("decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "38°28'16\"N 8°48'13\"W"),
				counterexample: check.With("verbatimCoordinates", "38.4712 N 8.8035 W"),
			},
		},
		{
			Label: "AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT", GUID: "7498ca76-c4d4-42e2-8103-acacccbdffa7", Kind: KindAmendment,
			Doc:  "an empty geodeticDatum is taken for EPSG:4326, and the uncertainty enlarged by what another datum would mean; answered, but never proposed or made",
			Acts: []string{"geodeticDatum", "coordinateUncertaintyInMeters"}, Consults: []string{"decimalLatitude", "decimalLongitude"},
			Answer: assumedDatum,
			rule:   speech{never: true},
		},
		fromVerbatim("AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM", "2d638c8b-4c62-44a0-a14d-fa147bf9823d",
			"minimumElevationInMeters", "maximumElevationInMeters", "verbatimElevation", false),
	}
}

// coordinatesFromVerbatim fills in what is written in degrees and has one
// reading. What is written twice must agree, and nothing is converted from
// another system.
func coordinatesFromVerbatim(c *Cells) Response {
	whole, lat, lon := c.trimmed("verbatimCoordinates"), c.trimmed("verbatimLatitude"), c.trimmed("verbatimLongitude")
	if !c.Empty("decimalLatitude") || !c.Empty("decimalLongitude") || whole == "" && (lat == "" || lon == "") {
		return internalNotMet
	}
	if otherSystem.MatchString(c.Text("verbatimCoordinateSystem")) || nearby.MatchString(whole) || nearby.MatchString(lat) || nearby.MatchString(lon) {
		return notAmended
	}
	var both coord.Reading
	if whole != "" {
		both = coord.Read(whole, coord.Hints{})
		lat, lon = figures(lat), figures(lon)
	}
	r, latitude, longitude := both, "", ""
	if lat != "" && lon != "" {
		// Plain figures in columns of their own mean what they say.
		if r = coord.ReadPair(lat, lon, coord.Hints{Signed: plainDegrees(lat) && plainDegrees(lon)}); r.Status != coord.OK {
			return notAmended
		}
		if both.Status == coord.OK && !agree(r.Point, both.Point) {
			return notAmended
		}
		if r.Point.Form == coord.Decimal && plainDegrees(lat) && plainDegrees(lon) {
			latitude, longitude = strings.TrimPrefix(lat, "+"), strings.TrimPrefix(lon, "+")
		}
	} else if r.Status != coord.OK || !half(lat, r.Point, true) || !half(lon, r.Point, false) {
		return notAmended
	}
	if r.Point.Form == coord.GridUTM || r.Point.Form == coord.GridMGRS {
		return notAmended
	}
	if latitude == "" {
		latitude, longitude = trimZeros(r.Point.Lat.Decimal(7)), trimZeros(r.Point.Lon.Decimal(7))
	}
	datum, ok := verbatimDatum(c)
	switch {
	case !ok:
		return notAmended
	case datum == "" || !c.Empty("geodeticDatum"):
		return changed(FilledIn, "decimalLatitude", latitude, "decimalLongitude", longitude)
	}
	return changed(FilledIn, "decimalLatitude", latitude, "decimalLongitude", longitude, "geodeticDatum", datum)
}

// otherSystem matches what verbatimCoordinateSystem says of coordinates that
// are not in degrees.
var otherSystem = regexp.MustCompile(`(?i)\b(?:utm|mgrs|usng|ups|trs|plss|grid|easting|northing|township|gauss|lambert|mercator|state plane|projected|metres|meters)\b`)

// nearby matches words by which coordinates are not those of the place itself.
var nearby = regexp.MustCompile(`(?i)\b(?:near|c|ca|circa|about|around|approx(?:imately)?|cerca|perto|aprox(?:imadamente)?|environ|etwa)\b|[~≈?]`)

// figures returns a text that has any, else "": a placeholder contradicts nothing.
func figures(s string) string {
	if strings.ContainsAny(s, "0123456789") {
		return s
	}
	return ""
}

func plainDegrees(s string) bool {
	_, ok := number(s)
	return ok && !strings.ContainsAny(s, "eE")
}

func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// agree reports whether two readings are of one place, each half as finely as the
// coarser of the two was written.
func agree(a, b coord.Point) bool {
	aLat, aLon := a.HalfSteps()
	bLat, bLon := b.HalfSteps()
	return near(a.Lat, b.Lat, aLat, bLat) && near(a.Lon, b.Lon, aLon, bLon)
}

// near reports whether two angles differ by no more than the coarsest of their
// steps and a ten-thousandth of a degree.
func near(a, b coord.Angle, steps ...coord.Angle) bool {
	return math.Abs((a - b).Degrees()) <= max(slices.Max(steps), coord.Degree/10000).Degrees()
}

// half reports whether a half that is written in a column of its own says the
// same as the whole; nothing written contradicts nothing.
func half(text string, whole coord.Point, latitude bool) bool {
	if text == "" {
		return true
	}
	// The other half is made up, in the way that the given one is written.
	east, north, h := "0 E", "0 N", coord.Hints{}
	if plainDegrees(text) {
		east, north, h.Signed = "0", "0", true
	}
	lat, lon := whole.HalfSteps()
	if latitude {
		r := coord.ReadPair(text, east, h)
		step, _ := r.Point.HalfSteps()
		return r.Status == coord.OK && near(r.Point.Lat, whole.Lat, step, lat)
	}
	r := coord.ReadPair(north, text, h)
	_, step := r.Point.HalfSteps()
	return r.Status == coord.OK && near(r.Point.Lon, whole.Lon, step, lon)
}

// verbatimDatum returns the code of the datum in verbatimSRS, "" if there is
// none that is known; false if it says that the coordinates are projected, or
// another datum than geodeticDatum.
func verbatimDatum(c *Cells) (code string, ok bool) {
	srs := c.trimmed("verbatimSRS")
	if srs == "" {
		return "", true
	}
	code, known := place.Datum(srs)
	if !known {
		_, epsg := place.ParseEPSG(strings.ToUpper(srs))
		return "", !epsg && !otherSystem.MatchString(srs)
	}
	if given := c.trimmed("geodeticDatum"); given != "" {
		have, known := place.Datum(given)
		return code, !known || have == code
	}
	return code, true
}

// defaultDatum is the standard's default parameter.
const defaultDatum = "EPSG:4326"

// assumedDatum answers with the standard's default. The enlarged uncertainty
// is the written one and the largest shift that any datum means there.
func assumedDatum(c *Cells) Response {
	if !c.Empty("geodeticDatum") {
		return notAmended
	}
	const unc = "coordinateUncertaintyInMeters"
	metres, ok := c.number(unc)
	lat, ok1 := c.number("decimalLatitude")
	lon, ok2 := c.number("decimalLongitude")
	if !ok || metres < 1 || metres > maxUncertainty || !ok1 || !ok2 || math.Abs(lat) > 90 || math.Abs(lon) > 180 {
		return changed(FilledIn, "geodeticDatum", defaultDatum)
	}
	return changed(Amended, "geodeticDatum", defaultDatum, unc, plus(c.trimmed(unc), place.MaxDatumShift(lat, lon)))
}

// plus adds whole metres to a number, keeping the decimals it was written
// with.
func plus(number string, metres int) string {
	r, ok := new(big.Rat).SetString(number)
	if !ok {
		return number
	}
	_, frac, _ := strings.Cut(number, ".")
	if strings.ContainsAny(frac, "eE") || strings.ContainsAny(number, "eE") {
		frac = ""
	}
	return r.Add(r, big.NewRat(int64(metres), 1)).FloatString(len(frac))
}

// fromVerbatim fills in the lower and the upper of two numbers in metres from
// a text that names its unit.
func fromVerbatim(name, guid, low, high, verbatim string, deep bool) Test {
	t := Test{
		Label: name, GUID: guid, Kind: KindAmendment, Doc: "empty " + low + " and " + high + " are filled in from " + verbatim + " where it names its unit",
		Acts: []string{low, high}, Consults: []string{verbatim},
		Answer: func(c *Cells) Response {
			text := c.trimmed(verbatim)
			if !c.Empty(low) || !c.Empty(high) || text == "" {
				return internalNotMet
			}
			if a, b, ok := metres(text, deep); ok {
				return changed(FilledIn, low, a, high, b)
			}
			return notAmended
		},
		rule: speech{
			message: "can be filled in from " + verbatim,
			example: check.With("minimumElevationInMeters", "", verbatim, "100 feet"), counterexample: check.With(),
		},
	}
	return t
}

// A range in any unit that the standard names, alone in its cell. Metres and
// feet with more words around them are read by package coord.
var measured = regexp.MustCompile(`(?i)^(?:(?:minimum|maximum|min|max)\.?\s*)?(?:(?:elevation|altitude|depth|elev\.?|alt\.?)\s*)?:?\s*` +
	`(-?\d+(?:\.\d+)?)\s*([a-z]*)\.?\s*(?:(?:-|–|—|to)\s*(\d+(?:\.\d+)?)\s*([a-z]+)\.?)?$`)

// thousands matches a figure of which the point may part thousands as well as
// decimals, and one with an exponent.
var thousands = regexp.MustCompile(`(?:^|[^\d.,])[1-9]\d{0,2}\.\d{3}(?:[^\d.,]|$)|\d[eE]\d`)

// belowSurface is what may stand behind a depth.
var belowSurface = regexp.MustCompile(`(?i)\s*(?:in depth|depth|deep|below (?:the )?surface)\.?$`)

// unitMetres are units in metres, exactly.
var unitMetres = map[string]string{
	"m": "1", "metre": "1", "metres": "1", "meter": "1", "meters": "1",
	"km": "1000", "kms": "1000", "kilometre": "1000", "kilometres": "1000", "kilometer": "1000", "kilometers": "1000",
	"ft": "0.3048", "feet": "0.3048", "foot": "0.3048",
	"yd": "0.9144", "yds": "0.9144", "yard": "0.9144", "yards": "0.9144",
	"fathom": "1.8288", "fathoms": "1.8288", "fath": "1.8288", "fth": "1.8288", "fm": "1.8288", "fms": "1.8288", "ftm": "1.8288",
}

// metres reads a height, or a depth, or a range of them, exactly.
func metres(text string, deep bool) (low, high string, ok bool) {
	if thousands.MatchString(text) {
		return "", "", false
	}
	if deep {
		text = belowSurface.ReplaceAllString(text, "")
	}
	if m := measured.FindStringSubmatch(text); m != nil {
		unit := strings.ToLower(m[2])
		if m[4] != "" && unit == "" {
			unit = strings.ToLower(m[4])
		}
		last, lastUnit := m[3], strings.ToLower(m[4])
		if last == "" {
			last, lastUnit = m[1], unit
		}
		a, ok1 := inMetres(m[1], unit, deep)
		b, ok2 := inMetres(last, lastUnit, deep)
		if ok1 && ok2 && a.Cmp(b) <= 0 && (!deep || a.Sign() >= 0) {
			return decimals(a), decimals(b), true
		}
	}
	if deep && !onlyLengths(text) {
		return "", "", false
	}
	e, status, _ := coord.ParseElevation(text)
	if status != coord.OK || e.IsBound() || e.Circa {
		return "", "", false
	}
	if low, high = e.InMetres(); deep && strings.HasPrefix(low, "-") {
		return "", "", false
	}
	return low, high, true
}

// onlyLengths reports whether every word of a text is a unit or "to": what is
// said of a height may not be read as a depth.
func onlyLengths(text string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if unitMetres[w] == "" && w != "to" {
			return false
		}
	}
	return true
}

func inMetres(figures, unit string, deep bool) (*big.Rat, bool) {
	factor, ok := unitMetres[unit]
	if !ok || !deep && factor == "1.8288" {
		return nil, false
	}
	n, ok1 := new(big.Rat).SetString(figures)
	f, ok2 := new(big.Rat).SetString(factor)
	if !ok1 || !ok2 || len(figures) > 20 {
		return nil, false
	}
	return n.Mul(n, f), true
}

// decimals writes a decimal fraction out in full.
func decimals(r *big.Rat) string {
	n, _ := r.FloatPrec()
	return r.FloatString(n)
}
