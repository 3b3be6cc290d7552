package form

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label/check"
)

// What the labels of gifts keep back where the place of a record is withheld.
//
// Coordinates alone are not the place: text that describes the site leads
// there as well (paleo-data.github.io, how-to-guides, "Manage data about
// sensitive localities": remove any other descriptive locality information;
// A. D. Chapman, Current Best Practices for Generalizing Sensitive Species
// Occurrence Data, 2020, doi 10.15468/doc-5jp4-5g10, on duplicates, whose labels
// the house cannot call back).
var (
	// siteColumns say where it is.
	siteColumns = strings.Fields(`islandGroup island county municipality waterBody locality verbatimLocality locationRemarks higherGeography
		decimalLatitude decimalLongitude verbatimLatitude verbatimLongitude verbatimCoordinates geodeticDatum verbatimSRS
		coordinateUncertaintyInMeters minimumElevationInMeters maximumElevationInMeters verbatimElevation
		minimumDepthInMeters maximumDepthInMeters verbatimDepth
		townshipRangeSection township range section quarterSection surveyMeridian mapSheet
		latitudeDegrees latitudeMinutes latitudeSeconds latitudeHemisphere longitudeDegrees longitudeMinutes longitudeSeconds longitudeHemisphere
		utmZone utmBand easting northing gridSquare elevationFrom elevationTo elevationUnit depthFrom depthTo depthUnit`)
	// aroundColumns describe the site or are free remarks that may.
	aroundColumns = strings.Fields(`habitat associatedTaxa occurrenceRemarks eventRemarks fieldNotes materialEntityRemarks organismRemarks wildOrigin
		project projectTitle`)
	// plantColumns are about the plant, which is what a gift is for: they stay
	// unless they name a place.
	plantColumns = strings.Fields(`plantDescription sex lifeStage reproductiveCondition identificationRemarks vernacularName uses fundingAttribution
		gardenAccession`)
	// verbatimColumns must travel with the specimen as they were issued.
	verbatimColumns = strings.Fields("permits restrictions")
)

var (
	keptBack = termSet(siteColumns, aroundColumns)
	guarded  = termSet(plantColumns)
)

func termSet(lists ...[]string) map[string]bool {
	m := map[string]bool{}
	for _, l := range lists {
		for _, s := range l {
			m[s] = true
		}
	}
	return m
}

// withheld reports whether a column is kept back from this label.
func (b *builder) withheld(term string) bool {
	return b.coarse && (keptBack[term] || guarded[term] && namesPlace(b.r, b.r.Text(term)))
}

// KeptBack reports whether a text is kept from what leaves the house where the
// place of the record is withheld: all of a column that says where it is or is
// printed on no label and may say anything, and of other columns a text that
// names the place.
func KeptBack(r *check.Record, term, text string) bool {
	return keptBack[term] || term != "" && !printed[term] || namesPlace(r, text)
}

// siteSaid reports whether the record says more of the site than its place.
func siteSaid(r *check.Record) bool {
	for _, t := range aroundColumns[:len(aroundColumns)-2] { // a heading is no description
		if r.Text(t) != "" {
			return true
		}
	}
	return false
}

// namesPlace reports whether text names the place of a record more closely
// than by its province: by a cell of the place's columns as a whole, or by a
// capitalised word of one of four letters and more.
func namesPlace(r *check.Record, text string) bool {
	if text == "" {
		return false
	}
	coarser := r.Text("country") + " " + r.Text("stateProvince") + " " + r.Text("continent")
	said := map[string]bool{}
	for _, w := range placeWords(text) {
		said[w] = true
	}
	for _, w := range placeWords(coarser) {
		delete(said, w)
	}
	for _, term := range siteColumns[:9] {
		cell := r.Text(term)
		if cell == "" {
			continue
		}
		if utf8.RuneCountInString(cell) > 1 && strings.Contains(text, cell) && !strings.Contains(coarser, cell) {
			return true
		}
		for _, w := range placeWords(cell) {
			if said[w] {
				return true
			}
		}
	}
	return false
}

// placeWords returns the words of a text that may be names of places.
func placeWords(text string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) }) {
		if r, _ := utf8.DecodeRuneInString(w); unicode.IsUpper(r) && utf8.RuneCountInString(w) >= 4 {
			out = append(out, w)
		}
	}
	return out
}

// GivesAway returns the cells of a record that are printed as they stand on
// the labels of its duplicates although they name the place that is withheld
// there: permits and restrictions, which must travel with the specimen in the
// words in which they were issued.
func GivesAway(r *check.Record, o Options) []check.Field {
	if len(r.DuplicatesTo) == 0 || !Coarsened(r, o) {
		return nil
	}
	var out []check.Field
	for _, term := range verbatimColumns {
		if f := r.Field(term); namesPlace(r, f.Text) {
			out = append(out, f)
		}
	}
	return out
}
