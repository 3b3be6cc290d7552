package table

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
)

// namesByWord reads a column as the name whose heading has a word for names among
// others, such as "Name in the tree", where its cells are names of plants and no
// other column has them. It is the first of several.
func (t *Table) namesByWord(r *resolver, rows []*Row) {
	for _, term := range nameTerms {
		if r.has(term) {
			return
		}
	}
	organisms := []int{}
	for i := range t.columns {
		c := &t.columns[i]
		h := strings.TrimSpace(c.Heading)
		organism := organismWord.MatchString(h)
		if c.Known || c.group != nil || len(h) > longHeading || !organism && !nameWord.MatchString(h) || ofOthers.MatchString(h) || pastName.MatchString(h) ||
			t.filledIn(rows, i) < 3 || shareOf(rows, i, isPlantName) < 0.8 {
			continue
		}
		if organism {
			organisms = append(organisms, i)
			continue
		}
		t.readNames(r, i)
		return
	}
	if len(organisms) == 1 { // of a lichen and a tree one bears the other
		t.readNames(r, organisms[0])
	}
}

// readNames reads a column as the names of the plants.
func (t *Table) readNames(r *resolver, i int) {
	r.read[i].meaning = &meaning{terms: []string{"scientificName"}}
	t.settle(r, i, "scientificName", "scientificName, for its cells are names of plants and no other column has them")
}

var (
	// organismWord is a heading that says what is collected.
	organismWord = regexp.MustCompile(`(?i)^(plants?|lichens?|moss(es)?|bryophytes?|liverworts?|hepatics?|fung(us|i)|mushrooms?|ferns?|alga|algae|seaweeds?|trees?|shrubs?|grass(es)?|orchids?|specimens?)$`)
	// nameWord is a word for names of plants.
	nameWord = regexp.MustCompile(`(?i)(^|[^\pL])(names?|identification|determination|taxon|taxa|species|binomial|nombre|nome|nom|especie|espécie|espèce|art)([^\pL]|$)`)
	// pastName is a word for names that are not the record's own.
	pastName = regexp.MustCompile(`(?i)synonym|sin[oó]nim|basionym|formerly|former|old|parent|mother|father|common|vernac|on sheet|on label|original|initial|first|author|model|type`)
)

// datumSides reads headings of a datum or a word for coordinates and a side, such as
// "WGS N" and "WGS W" or "Coordenadas N" and "Coordenadas W", as
// latitude and longitude, where their cells are degrees.
func (t *Table) datumSides(r *resolver, rows []*Row) {
	at := map[string]int{}
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || c.group != nil {
			continue
		}
		m := datumSide.FindStringSubmatch(strings.TrimSpace(c.Heading))
		if m == nil {
			continue
		}
		axis := "decimalLatitude"
		side := sideWords[strings.ToLower(m[2])]
		if side == "E" || side == "W" || strings.HasPrefix(strings.ToLower(m[2]), "lo") {
			axis = "decimalLongitude"
		}
		if _, twice := at[axis]; twice || shareOf(rows, i, func(s string) bool { return isAngle(s) || inDegrees.MatchString(s) }) < 0.9 {
			return
		}
		at[axis] = i
		r.read[i].datum, r.read[i].side, r.read[i].eastOrWest = wholeDatum(m[1]), side, strings.EqualFold(m[2], "o")
	}
	if len(at) < 2 {
		return
	}
	for axis := range at {
		if r.has(axis) {
			return
		}
	}
	for _, axis := range []string{"decimalLatitude", "decimalLongitude"} {
		r.read[at[axis]].meaning = r.v.meanings[headingKey(axis)]
		t.settle(r, at[axis], axis, axis)
		if !r.has(verbatimOf[axis]) {
			t.columns[at[axis]].Verbatim = verbatimOf[axis]
			r.taken[verbatimOf[axis]] = at[axis]
		}
	}
}

// datumSide is a datum before a side of the world or the word for it.
var datumSide = regexp.MustCompile(`(?i)^(WGS(?:[ -]?84)?|NAD[ -]?(?:27|83)|ETRS[ -]?89|SIRGAS[ -]?2000|SAD[ -]?69|GDA[ -]?(?:94|2020)|` + coordinateWord + `)[ _.-](?:de )?(n|north|norte|nord|s|south|sur|sul|sud|süd|e|east|este|leste|est|ost|w|west|oeste|ouest|o|lat|lat\.|latitude|latitud|lon|long|long\.|longitude|longitud)$`)

// coordinateWord is a word for coordinates, which tells no datum.
const coordinateWord = `coord(?:s?\.?|enadas?|inates?|inat[ae]|onnées?)|koord(?:\.|inaten?|inater)|gps`

// inDegrees is an angle with the sign for degrees.
var inDegrees = regexp.MustCompile(`^\s*[-+−NSEWO]? ?\d{1,3}([.,]\d+)? ?(?:[°º˚]|deg\b|deg[.\d])`)

var ofCoordinates = regexp.MustCompile(`(?i)^(?:` + coordinateWord + `)$`)

// wholeDatum is the datum that a heading names, "" if none. "WGS" alone is the one that receivers
// have been set to since 1987.
func wholeDatum(s string) string {
	switch {
	case strings.EqualFold(s, "WGS"):
		return "WGS84"
	case ofCoordinates.MatchString(s):
		return ""
	}
	return s
}

// personsAsName reads a column "Name" as the collectors, where another column has the
// names of the plants, none has the collectors, and its cells are persons.
func (t *Table) personsAsName(r *resolver, rows []*Row) {
	plants := r.has("scientificName")
	people := r.has("recordedBy")
	vouchers := r.has("collectorAndNumber")
	if !plants || people || vouchers {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || c.group != nil || !bareName[headingKey(c.Heading)] || t.filledIn(rows, i) < 3 ||
			shareOf(rows, i, person.MatchString) < 0.8 || shareOf(rows, i, isPlantName) > 0.1 {
			continue
		}
		t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
			return f.Origin.Column == c.Origin.Column && f.Origin.Line == c.Origin.Line
		})
		r.read[i].meaning = &meaning{terms: []string{"recordedBy"}}
		t.settle(r, i, "recordedBy", "recordedBy, for its cells are persons")
		return
	}
}

// bareName are headings of names of whatever a table is about.
var bareName = map[string]bool{"name": true, "names": true, "nom": true, "noms": true, "nombre": true, "nome": true, "naam": true, "namn": true}

// sidesOfXY reads X and Y as degrees, and the columns of their sides, N or S and E or
// W, as such: without the sides a place south of the equator would lie north of it.
func (t *Table) sidesOfXY(r *resolver, rows []*Row) {
	x, isX := r.taken["easting"]
	y, isY := r.taken["northing"]
	if !isX || !isY || !r.isPart(x, "bareEasting") || !r.isPart(y, "bareNorthing") {
		return
	}
	for _, term := range []string{"utmZone", "utmBand", "gridSquare", "decimalLatitude", "decimalLongitude", "latitudeDegrees", "longitudeDegrees", "longitudeHemisphere"} {
		if r.has(term) {
			return
		}
	}
	if shareOf(rows, x, isAngle) < 0.9 || shareOf(rows, y, isAngle) < 0.9 || shareOf(rows, x, hasPoint)+shareOf(rows, y, hasPoint) < 1 {
		return
	}
	sides := map[string]int{}
	for i := range t.columns {
		p, ok := readPiece(t.columns[i].Heading)
		term := p.axis + "Hemisphere"
		if ok && p.axis != "" && p.part == "hemisphere" && (!t.columns[i].Known || t.columns[i].Term == term) && shareOf(rows, i, sideWord) > 0.9 {
			sides[term] = i
		}
	}
	if len(sides) == 0 {
		return
	}
	sides["decimalLongitude"], sides["decimalLatitude"] = x, y
	for term, i := range sides {
		delete(r.taken, t.columns[i].Term)
		r.read[i].meaning = &meaning{terms: []string{term}}
		t.columns[i].Term, t.columns[i].Known = term, true
		r.taken[term] = i
		t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
			return f.Origin.Line == t.columns[i].Origin.Line && f.Origin.Column == t.columns[i].Origin.Column
		})
	}
	c := &t.columns[x]
	t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
		Message: fmt.Sprintf("headings %q and %q are read as longitude and latitude in degrees, whose sides stand in columns of their own", c.Heading, t.columns[y].Heading)})
}

func hasPoint(s string) bool { return strings.ContainsAny(s, ".,") }

// joinedTerms are the terms whose words underscores may join.
var joinedTerms = wordList("scientificName | acceptedNameUsage | associatedTaxa | vernacularName | country | stateProvince | county | municipality | locality | island | habitat | recordedBy | identifiedBy")

// joinedWords is a small letter with an underscore and another word behind it; codes
// have capitals and figures there.
var joinedWords = regexp.MustCompile(`\p{Ll}_[\pL(×]`)

// joined finds the columns whose cells have an underscore for every blank: who made
// the table had programs to feed, and no label prints them.
func (t *Table) joined(rows []*Row) {
	for i := range t.columns {
		c := &t.columns[i]
		if !c.Known || c.group != nil || !joinedTerms[c.Term] || t.filledIn(rows, i) < 3 ||
			shareOf(rows, i, joinedWords.MatchString) < 0.5 || shareOf(rows, i, func(s string) bool { return strings.Contains(strings.TrimSpace(s), " ") }) > 0 {
			continue
		}
		c.Joined = true
		t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
			Message: fmt.Sprintf("heading %q: the words of its cells are joined by underscores (%s), which are read as blanks", c.Heading, cut(firstOf(rows, i, joinedWords.MatchString), 40))})
	}
}

// sheetsOf reads a column whose heading is a herbarium's code before words for the
// numbers of its sheets, such as "VDOURA herbarium accession number", as these
// numbers. Of two herbaria it cannot tell whose sheet the label is for.
func (t *Table) sheetsOf(r *resolver, rows []*Row) {
	if r.has("catalogNumber") {
		return
	}
	at := -1
	for i := range t.columns {
		c := &t.columns[i]
		m := codeBefore.FindStringSubmatch(strings.TrimSpace(c.Heading))
		if c.Known || c.group != nil || m == nil || ofMolecules.MatchString(m[1]) || t.filledIn(rows, i) < 3 || shareOf(rows, i, hasFigure) < 0.5 {
			continue
		}
		if word := r.v.meanings[headingKey(m[2])]; word == nil || word.terms[0] != "catalogNumber" {
			continue
		}
		if at >= 0 {
			return
		}
		at = i
	}
	if at >= 0 {
		t.settle(r, at, "catalogNumber", "catalogNumber")
	}
}

var (
	// codeBefore is a herbarium's code before words.
	codeBefore = regexp.MustCompile(`^([A-Z]{2,8})[ _.-](\pL.{5,})$`)
	// ofMolecules are letters before numbers that sequences have.
	ofMolecules = regexp.MustCompile(`^(DNA|RNA|ITS|LSU|SSU|NCBI|ENA|SRA|EST|BOLD|UNITE|RAD|AFLP|PCR|SNP|EMBL|DDBJ|INSDC|GBIF)$`)
)

// gridByCells reads a column headed "Grid", which also is of plots, as coordinates
// where its cells are references of UTM and no other column has them.
func (t *Table) gridByCells(r *resolver, rows []*Row) {
	for _, term := range []string{"verbatimCoordinates", "decimalLatitude", "gridSquare", "easting", "utmZone"} {
		if r.has(term) {
			return
		}
	}
	for i := range t.columns {
		c := &t.columns[i]
		if key := headingKey(c.Heading); c.Known || c.group != nil || key != "grid" && key != "gridno" || t.filledIn(rows, i) < 3 || shareOf(rows, i, ofGridZone.MatchString) < 0.9 {
			continue
		}
		t.settle(r, i, "verbatimCoordinates", "verbatimCoordinates, for its cells are references of UTM")
		return
	}
}

// ofGridZone is a zone of UTM with a square and figures: "29T PE 4312".
var ofGridZone = regexp.MustCompile(`^\s*\d{1,2} ?[C-HJ-NP-X] ?[A-Z]{2} ?(\d{2}|\d{4}|\d{6}|\d{8}|\d{10}|\d{2,5} \d{2,5})\s*$`)
