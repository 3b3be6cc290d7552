package table

import (
	"regexp"
	"strings"
)

// namesByWord reads a column as the name whose heading has a word for names among
// others, such as "Name in the tree", where its cells are names of plants and no
// other column has them. It is the first of several.
func (t *Table) namesByWord(r *resolver, rows []*Row) {
	for _, term := range nameTerms {
		if _, ok := r.taken[term]; ok {
			return
		}
	}
	for i := range t.columns {
		c := &t.columns[i]
		h := strings.TrimSpace(c.Heading)
		if c.Known || c.group != nil || len(h) > longHeading || !nameWord.MatchString(h) || ofOthers.MatchString(h) || pastName.MatchString(h) ||
			t.filledIn(rows, i) < 3 || shareOf(rows, i, isPlantName) < 0.9 {
			continue
		}
		r.read[i].meaning = &meaning{terms: []string{"scientificName"}}
		t.settle(r, i, "scientificName", "scientificName, for its cells are names of plants and no other column has them")
		return
	}
}

var (
	// nameWord is a word for names of plants.
	nameWord = regexp.MustCompile(`(?i)(^|[^\pL])(names?|taxon|taxa|species|binomial|nombre|nome|nom|especie|espécie|espèce|art)([^\pL]|$)`)
	// pastName is a word for names that are not the record's own.
	pastName = regexp.MustCompile(`(?i)synonym|sin[oó]nim|basionym|formerly|former|old|parent|mother|father|common|vernac|first|author|model|type`)
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
		r.read[i].datum, r.read[i].side = wholeDatum(m[1]), side
	}
	if len(at) < 2 {
		return
	}
	for axis := range at {
		if _, ok := r.taken[axis]; ok {
			return
		}
	}
	for _, axis := range []string{"decimalLatitude", "decimalLongitude"} {
		r.read[at[axis]].meaning = r.v.meanings[headingKey(axis)]
		t.settle(r, at[axis], axis, axis)
		if _, ok := r.taken[verbatimOf[axis]]; !ok {
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
var inDegrees = regexp.MustCompile(`^\s*[-+−NSEWO]? ?\d{1,3}([.,]\d+)? ?[°º˚]`)

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
