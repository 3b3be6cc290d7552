package table

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
)

var typeWord = regexp.MustCompile(`(?i)^((possible |probable )?(holo|iso|para|lecto|isolecto|neo|epi|syn|topo|para?lecto|isosyn)?-?typ(e|us|o)\b|(holo|iso|para|lecto|neo|epi|syn)typ)`)

// byCells settles the terms of two headings that are terms' names, but mean
// something else in the tables of collectors: "Type" is no type of resource
// where the cells say holotype, and "Field number" is the collector's number
// where no other column has it (Darwin Core's fieldNumber names an event; the
// number of a plot or a station, which words for it mean, never is a plant's).
func (t *Table) byCells(r *resolver, rows []*Row) {
	t.conditions(r, rows)
	t.divisions(r, rows)
	t.landIsState(r, rows)
	t.numbersAmongNames(r, rows)
	t.personsAmongAuthors(r, rows)
	t.datesOfCollecting(r, rows)
	t.datesAsYear(r, rows)
	t.acceptedName(r, rows)
	t.writtenName(r, rows)
	t.numbersWithNames(r, rows)
	t.determinersWithDates(r, rows)
	t.verbatimName(r, rows)
	t.familiesOfSource(r, rows)
	t.departmentsOfRegions(r, rows)
	t.sheetsAsVouchers(r, rows)
	t.gatherings(r, rows)
	t.voucherIDs(r, rows)
	t.bareVouchers(r, rows)
	t.codesOfCollectors(r, rows)
	t.collectedWhen(r, rows)
	t.byWordAndCells(r, rows)
	t.slips(r, rows)
	t.populations(r, rows)
	t.namesByWord(r, rows)
	t.commonNames(r, rows)
	t.sheetsOf(r, rows)
	t.gridByCells(r, rows)
	t.datumSides(r, rows)
	t.personsAsName(r, rows)
	t.sidesOfXY(r, rows)
	t.metres(r, rows)
	for i := range t.columns {
		if t.doubted(r, i, rows) {
			t.disown(r, i)
		} else if term := t.otherTerm(r, i, rows); term != "" {
			t.settle(r, i, term, term)
		} else {
			t.ofPlot(&t.columns[i])
		}
	}
	t.byWordAndCells(r, rows) // and what was found to be none of its word
	t.codesOfSites(r, rows)
	t.unlikely(rows)
	t.joined(rows)
}

// doubted reports whether the cells of column i are not what its heading could mean.
// Of several columns that mean one term only those are asked whose words mean other
// things as well.
func (t *Table) doubted(r *resolver, i int, rows []*Row) bool {
	c := &t.columns[i]
	if r.read[i].meaning == nil || !r.read[i].plain {
		return false
	}
	if c.group != nil && c.Term != "typeStatus" && c.Term != "identifiedBy" && c.Term != "locality" && c.Term != "stateProvince" {
		return false
	}
	return t.belied(c, rows) || r.onlyKingdoms(c, rows) || r.onlySides(c, rows) || r.onlyNatural(c, rows)
}

// disown takes from column i the term that its heading could mean, and says so.
func (t *Table) disown(r *resolver, i int) {
	c := &t.columns[i]
	if c.group != nil || r.taken[c.Term] == i {
		delete(r.taken, c.Term)
	}
	if g := c.group; g != nil {
		t.leave(i)
		if r.taken[c.Term] = g.columns[0]; len(g.columns) == 1 {
			t.undouble(c.Term)
		}
	}
	if c.Term == "scientificName" {
		t.speciesAsName(r)
	}
	t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
		return f.Origin.Column == c.Origin.Column && f.Origin.Line == c.Origin.Line
	})
	t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
		Message: fmt.Sprintf("heading %q could mean %s, but its cells do not look so: they are kept, but not printed", c.Heading, cmp.Or(ownWords[c.Term], c.Term))})
	c.Known, c.Term, c.Verbatim = false, strings.TrimSpace(c.Heading), ""
}

// otherTerm returns the term that the cells of column i say, where it is another than
// that of its heading, which it gives up; "" where it is none.
func (t *Table) otherTerm(r *resolver, i int, rows []*Row) string {
	c := &t.columns[i]
	named, genus := r.has("scientificName"), r.has("genus")
	switch {
	case c.Term == "fieldNumber" && !r.has("recordNumber") && headingKey(barePrefixed(c.Heading)) == "fieldnumber" && (!strings.Contains(c.Heading, "fieldNumber") || all(rows, i, collectorsNumber.MatchString)):
		return "recordNumber"
	case c.Term == "taxonID" && !named && !genus && shareOf(rows, i, isPlantName) > 0.8: // whose "ID" is an identification
		delete(r.taken, "taxonID")
		return "scientificName"
	case c.Term == "project" && ofPlants[headingKey(c.Heading)] && !named && !genus && shareOf(rows, i, isPlantName) > 0.6:
		delete(r.taken, "project") // which "plants of" begins
		return "scientificName"
	case c.Term == "type" && !r.has("typeStatus") && saysTypes(rows, i):
		return "typeStatus"
	case c.Term == "specificEpithet" && (len(r.read[i].terms) > 1 || !genus) && !named && c.group == nil && (all(rows, i, isBinomial) || shareOf(rows, i, isBinomial) > 0.6):
		delete(r.taken, "specificEpithet") // "Species" beside a genus, which it repeats; "Epithet" without one
		return "scientificName"
	case c.Term == "scientificName" && (len(r.read[i].terms) > 1 || genus) && !r.has("specificEpithet") && c.group == nil && shareOf(rows, i, bareEpithet.MatchString) > 0.8:
		delete(r.taken, "scientificName") // "Species" that leaves the genus to be known, or its column
		return "specificEpithet"
	}
	return ""
}

// saysTypes reports whether a column says which specimens are types, and perhaps of
// the others that they are none.
func saysTypes(rows []*Row, column int) bool {
	some := false
	return all(rows, column, func(s string) bool {
		is := typeWord.MatchString(s)
		some = some || is
		return is || yesNo.MatchString(s)
	}) && some
}

// ofPlot says of a plot's or a station's number that it is not printed: no
// collector's number, it stands on a label among the words for the place.
func (t *Table) ofPlot(c *Column) {
	if c.Term != "fieldNumber" || !c.Known || headingKey(barePrefixed(c.Heading)) == "fieldnumber" {
		return
	}
	t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
		Message: fmt.Sprintf("heading %q is read as fieldNumber, the number of a plot or station: its cells are kept, but not printed", c.Heading)})
}

// bareEpithet is a word in small letters.
var bareEpithet = regexp.MustCompile(`^\s*\p{Ll}[\p{Ll}-]{2,}\s*$`)

// belied reports whether the cells of a column are not what a plain word at its
// head could mean.
func (t *Table) belied(c *Column, rows []*Row) bool {
	switch c.Term {
	case "duplicatesTo": // how many there are
		return shareOf(rows, c.Index, aCount.MatchString) > 0.8
	case "coordinateUncertaintyInMeters":
		return shareOf(rows, c.Index, hasFigure) < 0.5
	case "day": // of the year, or of an experiment
		return shareOf(rows, c.Index, hasFigure) < 0.5 || shareOf(rows, c.Index, beyondMonth.MatchString) > 0.6
	case "project": // "Plant", where the project is "Plants of"
		return ofPlants[headingKey(c.Heading)] && shareOf(rows, c.Index, isPlantName) <= 0.6
	case "individualCount": // "Plant number" of a garden, 214-79*1
		return shareOf(rows, c.Index, partedNumber.MatchString) > 0.5
	case "eventDate": // "Collection data", in sentences
		return shareOf(rows, c.Index, proseOfGathering.MatchString) > 0.7
	case "verbatimCoordinates": // "Position" of a sample on a plate
		return placeOnPlate[headingKey(c.Heading)] && shareOf(rows, c.Index, noCoordinates.MatchString) > 0.8
	case "scientificName":
		// "Name" is of anything that has one: plots, waypoints.
		return shareOf(rows, c.Index, hasFigure) > 0.8 || weakWords[headingKey(c.Heading)] && shareOf(rows, c.Index, nameLike.MatchString) < 0.3
	case "identifiedBy": // "Identified", answered by yes and no, by the day or by the name
		switch headingKey(c.Heading) {
		case "identified", "determined", "confirmed":
			return shareOf(rows, c.Index, func(s string) bool { return yesNo.MatchString(s) || hasFigure(s) || isBinomial(s) }) > 0.6
		case "identifier", "identifiers": // of the record, not who identified it: Dublin Core's identifier
			return shareOf(rows, c.Index, func(s string) bool { return hasFigure(s) || strings.Contains(s, ":") }) > 0.6
		}
	case "collectorAndNumber", "recordNumber", "catalogNumber": // "Voucher specimen", answered by yes and no
		if c.Term == "recordNumber" && headingKey(c.Heading) == "n" && shareOf(rows, c.Index, aCount.MatchString) > 0.8 && (distinct(rows, c.Index) < 0.6 || !rising(rows, c.Index)) {
			return true // how many plants of a place
		}
		return shareOf(rows, c.Index, answer.MatchString) > 0.9 || c.Term == "collectorAndNumber" && shareOf(rows, c.Index, codesAlone.MatchString) > 0.6
	case "locality": // "Location" of the sheet beside the locality
		return c.group != nil && headingKey(c.Heading) == "location" && shareOf(rows, c.Index, keptAt.MatchString) > 0.9
	case "typeStatus": // "Type?", answered by yes and no
		return shareOf(rows, c.Index, yesNo.MatchString) == 1
	case "latitudeHemisphere", "longitudeHemisphere": // "N_S", for "native or not"
		return !slices.ContainsFunc(rows, func(r *Row) bool { return c.Index < len(r.Cells) && sideWord(r.Cells[c.Index].Text) }) && shareOf(rows, c.Index, hasText) > 0.6
	}
	return false
}

var (
	// partedNumber is a number that is none of how many.
	partedNumber = regexp.MustCompile(`\d[-/*.]\s?[\dA-Z*]`)
	// ofPlants are words for plants alone.
	ofPlants = wordSet("plant | plants")
	// placeOnPlate are words for places of any kind.
	placeOnPlate = wordSet("position")
	// noCoordinates is what coordinates have more figures than, or signs besides.
	noCoordinates = regexp.MustCompile(`^[^0-9°]*(\d[^0-9°]*){0,3}$`)
	// codesAlone are codes of herbaria, where the vouchers are.
	codesAlone = regexp.MustCompile(`^\s*[A-Z]{1,8}!?(\(\d{1,2}\))?([,;/ ]+[A-Z]{1,8}!?(\(\d{1,2}\))?)*\s*$`)
)

// beyondMonth is a number that no day of a month has.
var beyondMonth = regexp.MustCompile(`^\s*(3[2-9]|[4-9]\d|\d{3})\s*$`)

// keptAt are words for where specimens are kept.
var keptAt = regexp.MustCompile(`(?i)\b(herbari(um|a|o|os)|herbier|cabinets?|drawers?|freezers?|cupboards?|storage|armario|armoire)\b`)

// nameLike is what names of plants look like, also in capitals or without blanks.
var nameLike = regexp.MustCompile(`^["'×x ]*\p{Lu}[\p{Ll}\p{M}-]{2,}|^\p{Lu}{4,} \p{Lu}{3,}|^\p{Ll}{3,} \p{Ll}{3,}|^\p{Lu}\p{Ll}?[._] ?\p{Ll}{3,}`)

// ownWords say what terms of ours mean, which no user wrote.
var ownWords = map[string]string{"collectorAndNumber": "collector and collector's number", "latitudeHemisphere": "the side of the latitude", "longitudeHemisphere": "the side of the longitude"}

// aCount is how many of few there are.
var aCount = regexp.MustCompile(`^\s*\d{1,2}\s*$`)

// sideWord reports whether a text names a side of the world, in any language.
func sideWord(s string) bool {
	_, ok := sideWords[strings.ToLower(strings.Trim(s, " .()"))]
	return ok || partSides[strings.ToLower(strings.Trim(s, " .()"))]
}

// partSides are sides beside sideWords.
var partSides = wordSet("northern | southern | eastern | western | северная | южная | восточная | западная | 北緯 | 南緯 | 東經 | 西經 | 北纬 | 南纬 | 东经 | 西经 | 北 | 南 | 东 | 東 | 西 | с.ш. | ю.ш. | в.д. | з.д.")

func hasText(s string) bool { return !isBlank(s) }

// onlyKingdoms reports whether the cells of a column of names are kingdoms, and
// another column can have the names.
func (r *resolver) onlyKingdoms(c *Column, rows []*Row) bool {
	species := r.has("specificEpithet")
	genus := r.has("genus")
	return c.Term == "scientificName" && species && !genus && shareOf(rows, c.Index, isKingdom) > 0.9
}

// answer is a word that is no number.
var answer = regexp.MustCompile(`(?i)^(yes|no|true|false|sim|não|nao|si|sí|oui|non|ja|nein)$`)

// onlySides reports whether the cells of a column of regions only say on which side of
// what is studied each lies. Countries have regions of such names, so that no column
// must name them.
func (r *resolver) onlySides(c *Column, rows []*Row) bool {
	country := r.has("country")
	code := r.has("countryCode")
	return c.Term == "stateProvince" && headingKey(c.Heading) == "region" && !country && !code && shareOf(rows, c.Index, sideOfAll.MatchString) > 0.9
}

var sideOfAll = regexp.MustCompile(`(?i)^(north|south)?[ -]?(east|west)?(ern)?$|^(cent(er|re|ral|ro)|nor(te|oeste|deste|este)|sur(este|oeste)?|sul|sudoeste|sudeste|este|leste|oeste)$`)

var yesNo = regexp.MustCompile(`(?i)^(y|n|yes|no|0|1|true|false|t|f|x|s|sim|não|si|sí|oui|non|ja|nein|j)$`)

// numbersAmongNames reads a second column of collectors, whose cells are numbers,
// as their numbers, where no other column has those: "Collectors" is what ten
// letters keep of "Collectors number".
func (t *Table) numbersAmongNames(r *resolver, rows []*Row) {
	if r.has("recordNumber") {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if c.Term != "recordedBy" || c.group == nil || r.read[i].meaning == nil || !r.read[i].plain || shareOf(rows, i, collectorsNumber.MatchString) < 0.8 {
			continue
		}
		t.leave(i)
		t.undouble("recordedBy")
		t.settle(r, i, "recordNumber", "recordNumber, for its cells are numbers")
		return
	}
}

// personsAmongAuthors reads a column headed "Author" as the collectors, where no
// other column has them and its cells are no authors of names: all in small
// letters, as users of a site are called, or names in full beside a second such
// column that has L. and (L.) Sw.
func (t *Table) personsAmongAuthors(r *resolver, rows []*Row) {
	people := r.has("recordedBy")
	vouchers := r.has("collectorAndNumber")
	first, ok := r.taken["scientificNameAuthorship"]
	if !ok || people || vouchers {
		return
	}
	columns := []int{first}
	if g := t.columns[first].group; g != nil {
		columns = g.columns
	}
	abbreviated := 0.0
	for _, i := range columns {
		abbreviated = max(abbreviated, shareOf(rows, i, isAuthor))
	}
	for _, i := range columns {
		if r.read[i].meaning == nil || !r.read[i].plain || t.filledIn(rows, i) < 3 ||
			shareOf(rows, i, isSmall) < 0.8 && (len(columns) < 2 || abbreviated < 0.5 || shareOf(rows, i, isAuthor) > 0.1) {
			continue
		}
		if len(columns) > 1 {
			t.leave(i)
			t.undouble("scientificNameAuthorship")
		}
		delete(r.taken, "scientificNameAuthorship")
		for _, k := range columns {
			if k != i {
				r.taken["scientificNameAuthorship"] = k
				break
			}
		}
		t.settle(r, i, "recordedBy", "recordedBy, for its cells are persons, not authors of names")
		return
	}
}

// settle gives column i the term that its cells say, and notes how the heading is
// read.
func (t *Table) settle(r *resolver, i int, term, read string) {
	c := &t.columns[i]
	c.Term, c.Known = term, true
	r.taken[term] = i
	if r.read[i].meaning == nil { // those that look at the columns after this one ask for it
		r.read[i].meaning = &meaning{terms: []string{term}}
	}
	t.findings = append(slices.DeleteFunc(t.findings, c.unknownHeading), label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
		Message: fmt.Sprintf("heading %q is read as %s", c.Heading, read)})
}

// undouble takes back that several columns mean a term.
func (t *Table) undouble(term string) {
	t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool { return f.Rule == ruleHeadingDoubled.Name && f.Origin.Term == term })
}

// unknownHeading reports whether a finding says that the column's heading is not
// known.
func (c *Column) unknownHeading(f label.Finding) bool {
	return f.Rule == ruleHeadingUnknown.Name && f.Origin.Line == c.Origin.Line && f.Origin.Column == c.Origin.Column
}

// filledIn counts the filled cells of a column.
func (t *Table) filledIn(rows []*Row, column int) int {
	n := 0
	for _, r := range rows {
		if r.filled(column) {
			n++
		}
	}
	return n
}

// isAuthor reports whether a text has what authors of names have and names of
// persons in full have not: a full stop behind a short word, brackets.
func isAuthor(s string) bool { return authorSign.MatchString(s) }

var authorSign = regexp.MustCompile(`^\(|\) ?\p{Lu}|^(\p{Lu}\.\s?)*\p{Lu}\pL{0,6}\.$| (ex|et|&) |\b[a-z]?f\.$`)

// isSmall reports whether a text has no capital, as no author of a name lacks.
func isSmall(s string) bool {
	return strings.IndexFunc(s, unicode.IsLetter) >= 0 && strings.IndexFunc(s, unicode.IsUpper) < 0
}

// isKingdom reports whether a text is a kingdom or one of the groups that people
// sort their plants by.
func isKingdom(s string) bool { return kingdoms[strings.ToLower(strings.TrimSpace(s))] }

var kingdoms = map[string]bool{"plantae": true, "fungi": true, "chromista": true, "protozoa": true, "protista": true, "animalia": true, "bacteria": true,
	"viridiplantae": true, "plant": true, "plants": true, "fungus": true, "lichen": true, "lichens": true, "moss": true, "mosses": true, "algae": true,
	"bryophyta": true, "tracheophyta": true, "marchantiophyta": true, "vascular plants": true, "bryophytes": true}

// collectorsNumber is a number as collectors give one: archives without a column
// for it often have it as the number of the event.
var collectorsNumber = regexp.MustCompile(`^[A-Za-z]{0,6}[-. ]?\d{1,6}[A-Za-z]?$`)

func hasFigure(s string) bool { return strings.ContainsAny(s, "0123456789") }

// shareOf is how many of a column's filled cells are of a kind, of 1; what fewer
// than three say is not counted, and all are taken to be as they should.
func shareOf(rows []*Row, column int, is func(string) bool) float64 {
	n, yes := 0, 0
	for _, r := range rows {
		if column >= len(r.Cells) || isBlank(r.Cells[column].Text) || codes[strings.TrimSpace(r.Cells[column].Text)] {
			continue
		}
		if n++; is(r.Cells[column].Text) {
			yes++
		}
	}
	if n < 3 {
		return 0.6
	}
	return float64(yes) / float64(n)
}

// all reports whether the filled cells of a column all are of a kind, and there
// are some.
func all(rows []*Row, column int, is func(string) bool) bool {
	n := 0
	for _, r := range rows {
		if column >= len(r.Cells) || isBlank(r.Cells[column].Text) {
			continue
		}
		if n++; !is(strings.TrimSpace(r.Cells[column].Text)) {
			return false
		}
	}
	return n > 0
}
