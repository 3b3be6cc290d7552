package check

import "cornerslip/label"

// The sources that several rules name.
const (
	practice  = "common practice, no source"
	darwin    = "Darwin Core, list of terms"
	bdqCore   = "TDWG Biodiversity Data Quality Core tests"
	handbooks = "herbarium handbooks"
)

// Basic returns the rules that every label needs, in the order in which their
// findings of one cell are given.
func Basic() []Rule {
	var all []Rule
	for _, rules := range [][]Rule{textRules(), collectingRules(), personRules(), dateRules(), doubtRules(), coordinateRules(), splitRules(), elevationRules(), nameRules(), partRules()} {
		all = append(all, rules...)
	}
	return all
}

// With returns a sound row, changed by pairs of term and cell; a cell "" takes
// the term out. Rules make their examples of it, so that an example shows one
// fault and no other.
func With(pairs ...string) map[string]string {
	row := map[string]string{
		"recordedBy": "I. Almeida | J. Prates", "recordNumber": "214", "eventDate": "2026-05-14",
		"scientificName": "Thymus capitellatus Hoffmanns. & Link", "family": "Lamiaceae",
		"country": "Portugal", "stateProvince": "Setúbal", "locality": "Valdoura, dunes 300 m W of the field station",
		"decimalLatitude": "38.4712", "decimalLongitude": "-8.8035", "geodeticDatum": "WGS84", "coordinateUncertaintyInMeters": "30",
		"minimumElevationInMeters": "15",
	}
	for i := 0; i < len(pairs); i += 2 {
		if row[pairs[i]] = pairs[i+1]; pairs[i+1] == "" {
			delete(row, pairs[i])
		}
	}
	return row
}

// one makes a table of one row.
func one(pairs ...string) []map[string]string { return []map[string]string{With(pairs...)} }

const emptyRow = "empty-row"

// placeTerms are the terms one of which must say a place. The continent alone
// is none.
var placeTerms = []string{"country", "locality", "stateProvince", "county", "municipality", "verbatimLocality", "island", "islandGroup",
	"waterBody", "higherGeography", "countryCode"}

// collectingRules are about who, where and under which number.
func collectingRules() []Rule {
	return []Rule{
		{
			Name: "place-missing", Severity: label.Error, Source: handbooks,
			Doc:     "a label needs a place: country, locality or another column that names one",
			Terms:   placeTerms,
			Example: one("country", "", "stateProvince", "", "locality", ""), Counterexample: one("country", "", "stateProvince", ""),
			Row: func(c *Context) {
				if c.Placeless && !c.Options.Backlog && c.Text("locality") == "" {
					c.Report("locality", `no place is given: fill in country or locality, or write "s.loc." if it is not known`+c.unread(append([]string{"locality"}, placeTerms...)...))
				}
			},
		},
		{
			Name: "collector-missing", Severity: label.Error, Source: handbooks,
			Doc:     "a new trip's label needs its collector",
			Terms:   []string{"recordedBy"},
			Example: one("recordedBy", ""), Counterexample: one("recordedBy", "s.coll."),
			Row: func(c *Context) {
				switch {
				case c.row.Table().Tells("locality", "recordedBy") && c.Text("locality") != "": // the heading is told of
				case c.lacksCollector() && c.unreadVoucher():
					c.Report("collectorAndNumber", "no collector and number can be told from this: give them the columns recordedBy and recordNumber")
				case c.lacksCollector():
					c.Report("recordedBy", `no collector is given: fill in who collected it, or write "s.coll." if it is not known`+c.unread("recordedBy", "collectorAndNumber"))
				}
			},
		},
		{
			Name: "name-missing", Severity: label.Note, Source: handbooks,
			Doc:     "nothing says what the plant is, not even a family; the label leaves a line to write the name on",
			Terms:   []string{"scientificName"},
			Example: one("scientificName", "", "family", ""), Counterexample: one("scientificName", "indet.", "family", ""),
			Row: func(c *Context) {
				if !c.empty && c.nameless() {
					c.Report(c.namePlaceholder(), "nothing says what the plant is: the label leaves a line to write the name on")
				}
			},
		},
		{
			Name: "number-missing", Severity: label.Warning, Source: handbooks,
			Doc:     "without the collector's number a gathering cannot be cited; the label prints s.n.",
			Terms:   []string{"recordNumber"},
			Example: one("recordNumber", ""), Counterexample: one("recordNumber", "s.n."),
			Row: func(c *Context) {
				if c.blank("recordNumber") && !c.numberWithCollector() && !c.unreadVoucher() && !c.row.Table().Tells("locality", "recordNumber") {
					c.Report("recordNumber", "no collector's number is given: the label prints s.n."+c.inFieldNumber()+c.unread("recordNumber", "collectorAndNumber"))
				}
			},
		},
		numberNameRule(),
	}
}

// partRules are about numbers, parts, copies and duplicates.
func partRules() []Rule {
	return []Rule{
		{
			Name: "preparations", Severity: label.Error, Source: darwin + " (preparations); the words for parts: " + practice,
			Doc:     "a count of parts that contradicts itself, or that does not say what it counts: a wrong number of labels would be printed",
			Terms:   []string{"preparations"},
			Example: one("preparations", "0 sheets"), Counterexample: one("preparations", "2 sheets | packet: capsules | box: cone"),
			Row: func(c *Context) {
				if pe, ok := c.PartsErr.(*PartError); ok {
					c.Suggest("preparations", reason(pe, c.Text("preparations")), pe.Suggest)
				}
			},
		},
		{
			Name: "preparations-unknown", Severity: label.Warning, Source: darwin + " (preparations); the words for parts: " + practice,
			Doc:     "a part that is near a known word, or counted and not known, or no part that gets a label: one sheet label may be printed for it",
			Terms:   []string{"preparations"},
			Example: one("preparations", "sheet | pakcet: capsules"), Counterexample: one("preparations", "2 mounted sheets & 1 packet"),
			Row: partsUnknown,
		},
		{
			Name: "preparations-other", Severity: label.Note, Source: darwin + " (preparations); the words for parts: " + practice,
			Doc:     "a part of another kind than sheet, packet, box or jar: it is named on the label and gets none of its own",
			Terms:   []string{"preparations"},
			Example: one("preparations", "sheet | herbarium voucher of a chemist"), Counterexample: one("preparations", "2 sheets"),
			Row: partsOther,
		},
		{
			Name: "copies", Severity: label.Error, Source: practice,
			Doc:     "copies is how many labels the house's own specimen gets: a whole number from 1 to 99",
			Terms:   []string{"copies"},
			Example: one("copies", "two"), Counterexample: one("copies", "2"),
			Row: copiesRule,
		},
		{
			Name: "duplicates", Severity: label.Error, Source: practice,
			Doc:     "duplicatesTo lists herbaria by their codes, 1 to 8 capital letters",
			Terms:   []string{"duplicatesTo"},
			Example: one("duplicatesTo", "PINHEL | Soutelo"), Counterexample: one("duplicatesTo", "PINHEL, SOUTELO"),
			Row: duplicatesRule,
		},
		{
			Name: "duplicate-twice", Severity: label.Warning, Source: practice,
			Doc:     "a herbarium named twice gets two duplicates",
			Terms:   []string{"duplicatesTo"},
			Example: one("duplicatesTo", "PINHEL | SOUTELO | PINHEL"), Counterexample: one("duplicatesTo", "PINHEL | SOUTELO"),
			Row: func(c *Context) {
				for i, code := range c.DuplicatesTo {
					if n := count(c.DuplicatesTo, code); n > 1 && count(c.DuplicatesTo[:i], code) == 0 {
						c.Reportf("duplicatesTo", "%s stands %d times and gets %d labels: leave it once if it is to get one", code, n, n)
					}
				}
			},
		},
		{
			Name: "duplicate-to-us", Severity: label.Warning, Source: practice,
			Doc:     "the house's own code among the duplicates prints a label without our number",
			Terms:   []string{"duplicatesTo"},
			Example: one("duplicatesTo", "PINHEL | VDOURA"), Counterexample: one("duplicatesTo", "PINHEL"),
			Row: func(c *Context) {
				if code := c.Options.Code; code != "" && count(c.DuplicatesTo, code) > 0 {
					c.Reportf("duplicatesTo", "%s is this house: its label here would bear no number; count own labels in copies", code)
				}
			},
		},
		{
			Name: "catalogue-number-letters", Severity: label.Warning, Source: "ISO/IEC 15417 (Code 128 holds ASCII)",
			Doc:     "bars hold printable ASCII alone, so a catalogue number with other letters cannot be barred",
			Terms:   []string{"catalogNumber"},
			Example: one("catalogNumber", "VDOURA–0001234"), Counterexample: one("catalogNumber", "VDOURA-0001234"),
			Row: catalogueLettersRule,
		},
		{
			Name: "catalogue-number-twice", Severity: label.Warning, Source: practice,
			Doc:            "one catalogue number on two records of a collection, unless they say that they are parts of one specimen (sheet 1 of 2, sheet 2 of 2) or are of one gathering and have each an occurrenceID of their own",
			Terms:          []string{"catalogNumber"},
			Example:        []map[string]string{With("catalogNumber", "VDOURA-0001234"), With("catalogNumber", "VDOURA-0001234", "recordNumber", "215")},
			Counterexample: []map[string]string{With("catalogNumber", "VDOURA-0001234", "preparations", "sheet 1 of 2"), With("catalogNumber", "VDOURA-0001235", "recordNumber", "215"), With("catalogNumber", "VDOURA-0001234", "preparations", "sheet 2 of 2")},
			Table:          func() TableRule { return &numbersTwice{} },
		},
	}
}
