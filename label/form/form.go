// Package form turns a record that passed the check into the words of its
// labels: what each says, in which order and style, and which cell every word
// came from. It knows no sizes and no places on paper.
//
// # What is printed where
//
// By the terms of Darwin Core and the columns of ours, for the sheet label:
//
//	project  project, else projectTitle, else the house's own headings
//	status   "Cultivated", if degreeOfEstablishment or establishmentMeans says so or there is a
//	         gardenAccession; gardenAccession, wildOrigin
//	name     scientificName with identificationQualifier, authorship and cultivarEpithet put in
//	family   family
//	det      identifiedBy, dateIdentified, identificationRemarks, previousIdentifications
//	type     typeStatus, typifiedName
//	place    country, else the country of countryCode, else continent; stateProvince, islandGroup, island, county, municipality,
//	         waterBody, locality, else verbatimLocality; higherGeography where none of these is filled; the place in a
//	         land survey (townshipRangeSection, or township to surveyMeridian), mapSheet; locationRemarks
//	coords   the coordinates with geodeticDatum and coordinateUncertaintyInMeters, the elevation,
//	         minimumDepthInMeters and maximumDepthInMeters, else verbatimDepth; all of them from the columns that share
//	         them too (latitudeDegrees to gridSquare, elevationFrom to depthUnit)
//	plant    habitat, associatedTaxa, plantDescription, sex, lifeStage, reproductiveCondition, organismRemarks
//	notes    vernacularName, uses, occurrenceRemarks, eventRemarks, fieldNotes, materialEntityRemarks,
//	         fundingAttribution, restrictions, permits
//	collector, team  recordedBy, coCollectors, recordNumber, eventDate (or what the check read the date from), duplicatesTo
//	number, symbol   institutionCode and collectionCode (of which, see below), catalogNumber; the part, from preparations and mount
//
// Of values that come in several columns (verbatim and plain coordinates, say)
// the one the check settled on is printed. A place that repeats the one before
// it ("Corvo, Corvo") is said once, but for a state named like its country. Before
// a catalogue number stands the institution's code, and the collection's where
// that has the form of a herbarium's code and differs; it stands alone where the
// institution is written out, and neither where the number begins with one. Everything that was written as text is
// printed as it was written; list columns lose the "|" between their items.
//
// All other terms are never printed: identifiers and links, rights and
// licences, the columns of databases (basisOfRecord, kingdom to order, year,
// georeference details, modified, …), and columns that are not known.
// [Printed] tells.
//
// Slips print identifications: see [Slips]. Tags print recordedBy and
// recordNumber.
//
// # What leaves the house
//
// Labels that go to another herbarium bear neither the house's number nor
// bars. Where the place of a record is to be withheld (informationWithheld,
// dataGeneralizations, or the house's own list of taxa) they say so, and hold
// back, as a registrar would, all that leads to the site:
//
//   - the place below the province, coordinates, elevation and depth
//   - habitat, associates, wildOrigin and all free remarks, and the record's own
//     heading line, for which the house's stands in
//   - of what is said of the plant itself, its names, uses and determination,
//     the columns that name the place
//
// Permits and restrictions stay as they were issued, since the specimen may not
// travel without them; [GivesAway] says which of them name the place. Name,
// collector, number and date stay: without them a duplicate is none.
package form

import (
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
	"cornerslip/label/date"
	"cornerslip/label/lang"
	"cornerslip/label/name"
)

// Parts of other blocks, for houses that part them: Habitat and Description
// stand in an order in place of label.Plant; Associates and Date take from
// Habitat and label.Collector what is theirs.
const (
	Habitat     label.Role = "habitat"     // where it grew, and with what
	Associates  label.Role = "associates"  // the plants around, the host
	Description label.Role = "description" // the plant itself
	Date        label.Role = "date"        // when it was collected
)

// A FamilyPlace says where the family stands.
type FamilyPlace uint8

// The places of the family.
const (
	FamilyBesideName FamilyPlace = iota // at the right of the name's first line
	FamilyOwnLine                       // on a line of its own
	FamilyNone
)

// Options says how labels are worded. The zero value is the common case: an
// English label in running style without a heading.
type Options struct {
	// Lang is the language of the words the program writes, English if "".
	// Second makes the label bilingual: the program's words stand in both.
	Lang, Second lang.Tag
	// Words are the house's own words in place of the program's, by the keys
	// of a house file: det, conf, rev, collector, number, with, elevation,
	// habitat, associates, description, vernacular, uses, duplicates, project,
	// permit, cultivated, sheet, continued, date, locality, coordinates. A key
	// with "" prints no word.
	Words map[string]string

	// House are the lines that head every label: the institution first, then
	// its address.
	House []string
	// Project are heading lines for records that have no project of their own.
	Project []string
	// Code is the house's code, printed before its own catalogue numbers where
	// the number does not hold it and the record names no institutionCode.
	Code string
	// NumberWord stands before the catalogue number: "Accession".
	NumberWord string

	Date      date.Style
	Coords    coord.Style
	Elevation coord.ElevationStyle
	Name      name.Options
	BoldName  bool
	Family    FamilyPlace
	// PlainFamily sets the family as its name is set, not in letterspaced
	// capitals.
	PlainFamily bool

	// Captions puts each value under a caption, form-like, where the running
	// style makes sentences.
	Captions bool
	// Head, Body and Foot are the order of the blocks; nil is the usual order.
	Head, Body, Foot []label.Role
	// RunOn names blocks of the body that go on in the paragraph of the block
	// before them.
	RunOn []label.Role
	// AllCollectors names the whole team before the number, which is the first
	// collector's; otherwise the others stand on a line of their own.
	AllCollectors bool
	// DetRight sets the determiner at the right edge.
	DetRight bool
	// LeaveOut names blocks (by role) and columns (by term) not to be printed.
	LeaveOut []string

	// What stands after the country, after the province, between further
	// places, persons, before the last person, and between herbaria; "" is ". ",
	// ": ", ", ", ", ", " & ", ", ".
	CountrySep, ProvinceSep, PlaceSep, PeopleSep, LastPersonSep, DuplicatesSep string

	// BarsOnLabel prints the catalogue number as bars on the sheet label.
	BarsOnLabel bool
	// Symbology is that of all bars; "" lets the program choose.
	Symbology string
	// OwnNumber reports whether a catalogue number is of the house's own
	// series; nil takes every number for its own. Others are printed, not
	// barred.
	OwnNumber func(number string) bool

	// ListDuplicates names all herbaria that get a duplicate on each label.
	// Otherwise a duplicate's label names the herbarium it goes to, and the
	// house's own label lists all.
	ListDuplicates bool
	// CountDuplicates prints how many there are instead.
	CountDuplicates bool
	// Sensitive reports whether a record's place is withheld from the labels
	// that leave the house, beside the records that say so themselves in
	// informationWithheld or dataGeneralizations.
	Sensitive func(*check.Record) bool

	// PacketName and PacketBars put the scientific name and the bars on the
	// labels of packets that lie on a sheet; PlainPackets leaves out the
	// institution that heads them.
	PacketName, PacketBars, PlainPackets bool

	// ContentsLine gives the labels of packets whose contents are not named a
	// line to write them on.
	ContentsLine bool
	// Letter returns the letter of a record that shares its mounting sheet with
	// others, A or B; "" where it has a sheet to itself. Nil gives none.
	Letter func(*check.Record) string

	// Country returns the name of a country by its code; "" if it has none. Nil
	// prints the code.
	Country func(code string, language lang.Tag) string
	// Sorted names the list columns whose items are put in the order of the
	// alphabet; the others stay in the order of the record.
	Sorted []string
}

// The usual order of the blocks.
var (
	usualHead = []label.Role{label.House, label.Project}
	usualBody = []label.Role{label.Status, label.Family, label.Name, label.Det, label.Type, label.Place, label.Coords, label.Plant, label.Notes}
	usualFoot = []label.Role{label.Collector, label.Team, label.Number, label.Symbol}
)

// Sheet returns the labels for the mounts of a record, in the order in which
// they are printed: each own sheet as often as the record has copies, then one
// for each duplicate. A specimen that is kept in packets, boxes or jars alone
// has none: Packets and Containers make its labels.
func Sheet(r *check.Record, o Options) []label.Content {
	own, filled := mounts(r)
	var all []label.Content
	b := newBuilder(r, &o)
	var one label.Content
	for i, p := range own {
		if i == 0 {
			one = b.full(label.Sheet, b.partOfSheet(p))
		} else {
			one = b.again(one, b.partOfSheet(p))
		}
		one.Part = b.partName(p)
		all = append(all, one)
	}
	all = slices.Repeat(all, max(1, r.Copies))
	if filled {
		all = append(all, gifts(r, &o, label.Sheet)...)
	}
	return all
}

// Containers returns the labels of boxes and jars: all the words of the sheet
// label, since they are kept in another place, and what is inside.
func Containers(r *check.Record, o Options) []label.Content {
	var all []label.Content
	_, onMounts := mounts(r)
	for range max(1, r.Copies) {
		for _, p := range r.Preparations {
			if p.Kind != check.Box && p.Kind != check.Jar {
				continue
			}
			b := newBuilder(r, &o)
			c := b.full(label.Container, b.partOfContainer(p))
			c.Part = b.partName(p)
			all = append(all, c)
		}
	}
	if !onMounts && r.Count(check.Packet) == 0 {
		all = append(all, gifts(r, &o, label.Container)...)
	}
	return all
}

// mounts returns the record's sheets, and whether its labels are sheet labels:
// also where it has neither sheet, packet, box nor jar but only parts of
// another kind, since no record goes without a label.
func mounts(r *check.Record) (sheets []check.Preparation, ok bool) {
	boxed := false
	for _, p := range r.Preparations {
		switch p.Kind {
		case check.Sheet:
			sheets = append(sheets, p)
		case check.Packet, check.Box, check.Jar:
			boxed = true
		}
	}
	if len(sheets) == 0 && !boxed {
		sheets = []check.Preparation{{Kind: check.Sheet, N: 1, Of: 1}}
	}
	return sheets, len(sheets) > 0
}

// gifts returns the labels of the duplicates, one for each herbarium in the
// order the record names them.
func gifts(r *check.Record, o *Options, kind label.Kind) []label.Content {
	var all []label.Content
	b := newBuilder(r, o)
	b.coarse = Coarsened(r, *o)
	var one label.Content
	for i, code := range r.DuplicatesTo {
		b.gift = code
		if i == 0 {
			one = b.full(kind, nil)
		} else {
			one = b.again(one, nil)
		}
		one.For, one.Part = code, code
		all = append(all, one)
	}
	return all
}

// Coarsened reports whether the place of a record is withheld from the labels
// of its duplicates, so that a run can say so.
func Coarsened(r *check.Record, o Options) bool {
	return r.Text("informationWithheld") != "" || r.Text("dataGeneralizations") != "" || o.Sensitive != nil && o.Sensitive(r)
}

// own reports whether a catalogue number is of the house's own series.
func (o *Options) own(number string) bool {
	return number != "" && (o.OwnNumber == nil || o.OwnNumber(number))
}

// barred reports whether a number can be printed as bars: of the own series,
// and of characters that bars hold.
func (o *Options) barred(number string) bool {
	return o.own(number) && !strings.ContainsFunc(number, func(r rune) bool { return r < 0x20 || r > 0x7e })
}

// printed are the terms that some label prints, the package's list as a set.
var printed = set(`project projectTitle
	degreeOfEstablishment establishmentMeans gardenAccession wildOrigin
	scientificName scientificNameAuthorship identificationQualifier cultivarEpithet genus infragenericEpithet specificEpithet
	infraspecificEpithet taxonRank family
	identifiedBy dateIdentified identificationRemarks previousIdentifications typeStatus typifiedName
	continent country countryCode islandGroup stateProvince island county municipality waterBody locality verbatimLocality
	higherGeography locationRemarks
	decimalLatitude decimalLongitude verbatimCoordinates verbatimLatitude verbatimLongitude geodeticDatum verbatimSRS
	coordinateUncertaintyInMeters minimumElevationInMeters maximumElevationInMeters verbatimElevation
	minimumDepthInMeters maximumDepthInMeters verbatimDepth
	townshipRangeSection township range section quarterSection surveyMeridian mapSheet
	latitudeDegrees latitudeMinutes latitudeSeconds latitudeHemisphere longitudeDegrees longitudeMinutes longitudeSeconds longitudeHemisphere
	utmZone utmBand easting northing gridSquare elevationFrom elevationTo elevationUnit depthFrom depthTo depthUnit
	habitat associatedTaxa plantDescription sex lifeStage reproductiveCondition organismRemarks
	vernacularName uses occurrenceRemarks eventRemarks fieldNotes materialEntityRemarks fundingAttribution restrictions permits
	recordedBy coCollectors recordNumber eventDate year month day verbatimEventDate duplicatesTo
	institutionCode collectionCode catalogNumber preparations copies mount informationWithheld dataGeneralizations
	slip determinerInstitution namePublishedIn`)

// Printed reports whether a column of this term can have to do with what
// labels say; a column of any other term is never printed.
func Printed(term string) bool { return printed[term] }
