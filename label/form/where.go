package form

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// levels are the columns of a place below the province, from large to small.
var levels = []string{"islandGroup", "island", "county", "municipality", "waterBody", "locality"}

// place returns the locality from large to small: the country, a full stop,
// the province, a colon, and the rest.
func (b *builder) place() []label.Block {
	var p prose
	p.add("", b.lead("locality", nil)...)
	n := len(p.runs)
	sep, last := "", ""
	var before []string // names of places below the province
	say := func(runs []label.Run, text, next string) bool {
		if len(runs) == 0 {
			return false
		}
		if !strings.EqualFold(text, last) { // "Corvo, Corvo" is said once
			p.add(sep, runs...)
			sep, last = next, text
		}
		return true
	}
	for _, term := range []string{"country", "countryCode", "continent"} {
		f := b.field(term)
		if term == "countryCode" || term == "country" && isCountryCode(f.Text) {
			f.Text = b.countryName(f.Text)
		}
		if say(keep(f.Text, f.Origin), f.Text, b.sep(b.o.CountrySep, ". ")) {
			break
		}
	}
	if f := b.field("stateProvince"); f.Text != "" {
		last = "" // a state named like its country is a place of its own: Guatemala, Luxembourg
		say(keep(f.Text, f.Origin), f.Text, b.sep(b.o.ProvinceSep, ": "))
	}
	comma := b.sep(b.o.PlaceSep, ", ")
	for _, f := range b.levels() {
		// An island that is the county, too, is named once.
		if name := strings.ToLower(f.Text); !slices.Contains(before, name) {
			before = append(before, name)
			say(keep(f.Text, f.Origin), f.Text, comma)
		}
	}
	if len(p.runs) == n {
		if f := b.field("higherGeography"); f.Text != "" {
			p.add("", keep(f.Text, f.Origin)...)
		}
	}
	if len(p.runs) == n && b.r.Placeless {
		p.add("", said(b.first.NoPlace)...)
	}
	if !b.coarse {
		p.sentence(b.survey()...)
	}
	if b.coarse {
		p.sentence(said(b.word("", func(v *lang.Vocabulary) string {
			if siteSaid(b.r) {
				return v.WithheldSite
			}
			return v.Withheld
		}))...)
	}
	p.sentence(b.mentions("locationRemarks")...)
	if len(p.runs) == n {
		return nil
	}
	if !b.captioned() {
		p.stop()
	}
	return []label.Block{{Role: label.Place, Runs: p.runs, Caption: b.caption("locality", func(v *lang.Vocabulary) string { return v.CaptionPlace })}}
}

// surveyKept is up to how many letters a line does not break in a place of a
// survey: T13N R19W Sec. 26 NE1/4.
const surveyKept = 32

// survey returns the place in a survey of townships and the map sheet.
func (b *builder) survey() []label.Run {
	var p prose
	if at := b.firstOrigin("townshipRangeSection", "township", "range", "section", "quarterSection", "surveyMeridian"); !b.leftOut(at.Term) {
		if utf8.RuneCountInString(b.r.Survey) <= surveyKept {
			p.add("", label.Run{Text: b.r.Survey, Keep: b.r.Survey != "", Origin: at})
		} else {
			p.add("", keep(b.r.Survey, at)...)
		}
	}
	if f := b.field("mapSheet"); f.Text != "" {
		p.sentence(keep(b.r.MapSheet, f.Origin)...)
	}
	return p.runs
}

// coordinateTerms are the columns that coordinates are printed from.
var coordinateTerms = []string{
	"decimalLatitude", "verbatimCoordinates", "verbatimLatitude", "verbatimLongitude",
	"latitudeDegrees", "longitudeDegrees", "northing", "easting", "gridSquare",
}

// levels returns the places below the province, without those that the next
// one begins with: "Manteigas" before "Manteigas, left bank of the Zêzere".
func (b *builder) levels() []check.Field {
	var out []check.Field
	for _, term := range levels {
		f := b.field(term)
		if f.Text == "" && term == "locality" {
			f = b.field("verbatimLocality")
		}
		if f.Text == "" {
			continue
		}
		if n := len(out); n > 0 && beginsWith(f.Text, out[n-1].Text) {
			out = out[:n-1]
		}
		out = append(out, f)
	}
	return out
}

// beginsWith reports whether text is a place and, after a comma, more.
func beginsWith(text, place string) bool {
	return len(text) > len(place) && strings.EqualFold(text[:len(place)], place) && strings.HasPrefix(text[len(place):], ",")
}

// isCountryCode reports whether a country is written as its code, two capitals, as
// archives have it. UK is what people call the country; its code is GB.
func isCountryCode(s string) bool {
	return len(s) == 2 && s[0] >= 'A' && s[0] <= 'Z' && s[1] >= 'A' && s[1] <= 'Z' && s != "UK"
}

// countryName returns the country's name where the record has its code alone,
// in both languages of a bilingual label where they differ.
func (b *builder) countryName(code string) string {
	if code == "" || b.o.Country == nil {
		return code
	}
	var names []string
	for _, t := range []lang.Tag{b.o.Lang, b.o.Second} {
		if t == "" && len(names) == 0 {
			t = lang.English
		}
		if n := b.o.Country(code, t); t != "" && n != "" && !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	if len(names) == 0 {
		return code
	}
	return strings.Join(names, " / ")
}

// coords returns the coordinates with what is known of them, and the
// elevation or depth.
func (b *builder) coords() []label.Block {
	if b.coarse {
		return nil
	}
	point, height, depth := b.point(), b.height(), b.depth()
	if b.captioned() {
		var blocks []label.Block
		for _, part := range []struct {
			runs []label.Run
			key  string
			of   func(*lang.Vocabulary) string
		}{
			{point, "coordinates", func(v *lang.Vocabulary) string { return v.CaptionCoords }},
			{height, "elevation", func(v *lang.Vocabulary) string { return v.CaptionElevation }},
			{depth, "", func(v *lang.Vocabulary) string { return v.Depth }},
		} {
			if len(part.runs) > 0 {
				blocks = append(blocks, label.Block{Role: label.Coords, Runs: part.runs, Caption: b.caption(part.key, part.of)})
			}
		}
		return blocks
	}
	var p prose
	if len(point) > 0 {
		p.add("", append(b.lead("coordinates", nil), point...)...)
	}
	if len(height) > 0 {
		p.sentence(tie(spaced(b.word("elevation", func(v *lang.Vocabulary) string { return v.Alt })), height...)...)
	}
	if len(depth) > 0 {
		p.sentence(tie(spaced(b.word("", func(v *lang.Vocabulary) string { return v.Depth })), depth...)...)
	}
	if p.empty() {
		return nil
	}
	p.stop()
	return []label.Block{{Role: label.Coords, Runs: p.runs}}
}

// point returns the coordinates, datum and uncertainty in brackets.
func (b *builder) point() []label.Run {
	var runs []label.Run
	if b.r.HasCoordinates {
		at := b.firstOrigin(coordinateTerms...)
		if b.leftOut("decimalLatitude") {
			return nil
		}
		runs = b.coordinates(at)
	} else if b.r.CoordinatesText != "" && !b.leftOut("verbatimCoordinates") {
		runs = keep(b.r.CoordinatesText, b.firstOrigin(coordinateTerms[1:]...))
	}
	if len(runs) == 0 {
		return nil
	}
	var about prose
	if f := b.firstField("geodeticDatum", "verbatimSRS"); f.Text != "" && !b.leftOut(f.Origin.Term) {
		about.add("", label.Run{Text: f.Text, Keep: true, Exact: true, Origin: f.Origin})
	} else if f.Text == "" && b.r.HasCoordinates && b.r.Coordinates.Datum != "" && b.r.CoordinatesWritten == "" {
		// The coordinates are printed as they were read, and so without the
		// datum that stands in their cell.
		about.add("", label.Run{Text: b.r.Coordinates.Datum, Keep: true, Exact: true, Origin: runs[0].Origin})
	}
	if f := b.field("coordinateUncertaintyInMeters"); f.Text != "" && b.r.Uncertainty > 0 {
		about.add(", ", label.Run{Text: "±" + lang.Number(b.o.Lang, plainMetres(f.Text, b.r.Uncertainty)) + thin + "m", Keep: true, Origin: f.Origin})
	}
	if !about.empty() {
		runs = append(runs, label.Run{Text: " (", Glue: true})
		runs = append(runs, about.runs...)
		runs = tie(runs, label.Run{Text: ")"})
	}
	return runs
}

// plainMetres is a number of metres as it is written, or as it was read where
// the text has a unit or a decimal comma.
func plainMetres(text string, read float64) string {
	if strings.Trim(text, "0123456789.") != "" {
		return strconv.FormatFloat(read, 'f', -1, 64)
	}
	return wholeMetres.ReplaceAllString(text, "")
}

// coordinates returns the coordinates in the house's notation, or as they are
// written where the cell says more.
func (b *builder) coordinates(at label.Origin) []label.Run {
	if b.r.CoordinatesWritten != "" {
		return keep(b.r.CoordinatesWritten, at)
	}
	style := b.o.Coords
	if b.second != nil { // O is west in one language and east in another
		style.International = true
	}
	pieces, err := b.r.Coordinates.Format(style, b.o.Lang)
	if err != nil {
		// A grid has no squares near the poles, and one on a datum of old
		// no degrees: there the notation of the record stands.
		style.Form = 0
		pieces, _ = b.r.Coordinates.Format(style, b.o.Lang)
	}
	return kept(pieces, at)
}

// wholeMetres is what programs write behind whole metres: nobody measured the
// tenths of "1000.0".
var wholeMetres = regexp.MustCompile(`\.00?$`)

// thin is the thin no-break space between a figure and its unit.
const thin = "\u202f"

// height returns the elevation.
func (b *builder) height() []label.Run {
	at := b.firstOrigin("minimumElevationInMeters", "maximumElevationInMeters", "elevationFrom", "elevationTo", "verbatimElevation")
	if b.leftOut(at.Term) {
		return nil
	}
	if b.r.HasElevation {
		return []label.Run{{Text: b.r.Elevation.Format(b.o.Elevation, b.o.Lang), Keep: true, Origin: at}}
	}
	return keep(b.r.ElevationText, at)
}

// minusDepth is a depth written as a height below nought.
var minusDepth = regexp.MustCompile(`^[-–−]\s?(\d+(?:[.,]\d+)?)\s?(m|ft|cm)\.?$`)

// depth returns the depth of water, from the columns in metres or as written.
func (b *builder) depth() []label.Run {
	low, high := b.field("minimumDepthInMeters"), b.field("maximumDepthInMeters")
	switch {
	case low.Text == "" && high.Text == "" && b.r.DepthText != "":
		if at := b.firstOrigin("depthFrom", "depthTo"); !b.leftOut(at.Term) {
			return keep(b.r.DepthText, at)
		}
		return nil
	case low.Text == "" && high.Text == "":
		if m := minusDepth.FindStringSubmatch(b.field("verbatimDepth").Text); m != nil {
			return []label.Run{{Text: m[1] + thin + m[2], Keep: true, Origin: b.field("verbatimDepth").Origin}}
		}
		return b.text("verbatimDepth")
	case low.Text == "":
		low = high
	case high.Text == "":
		high = low
	}
	s := lang.Number(b.o.Lang, low.Text)
	if low.Text != high.Text {
		s += "–" + lang.Number(b.o.Lang, high.Text)
	}
	return []label.Run{{Text: s + thin + "m", Keep: true, Origin: low.Origin}}
}
