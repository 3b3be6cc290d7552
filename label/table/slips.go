package table

import (
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
)

// slips reads columns whose heading is a slip of the keyboard for a term that no
// other column has, where their cells are what the term asks for: "decmalLat"
// beside "decimalLong", "recodedBy" above persons.
func (t *Table) slips(r *resolver, rows []*Row) {
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || c.group != nil || t.filledIn(rows, i) < 3 {
			continue
		}
		term, sure := r.v.nearest(c.Heading)
		if r.has(term) || !sure {
			continue
		}
		if fits := slipCells[term]; fits == nil || shareOf(rows, i, fits) < 0.9 || !r.wants(term) {
			continue
		}
		t.settle(r, i, term, term+", from which it is a slip away")
		if v := verbatimOf[term]; v != "" {
			if !r.has(v) {
				c.Verbatim = v
				r.taken[v] = i
			}
		}
	}
}

// slipCells are the terms whose cells can be told from others'.
var slipCells = map[string]func(string) bool{
	"decimalLatitude":  isAngleAny,
	"decimalLongitude": isAngleAny,
	"eventDate":        func(s string) bool { return kindOf(s) == aDate },
	"scientificName":   isBinomial,
	"recordedBy":       person.MatchString,
}

// rivals are the terms that say what a term says.
var rivals = map[string][]string{
	"decimalLatitude":  {"verbatimLatitude", "verbatimCoordinates", "latitudeDegrees"},
	"decimalLongitude": {"verbatimLongitude", "verbatimCoordinates", "longitudeDegrees"},
	"eventDate":        {"verbatimEventDate", "year"},
	"scientificName":   nameTerms,
	"recordedBy":       {"collectorAndNumber"},
}

// wants reports whether the table lacks what a term says; of latitude and
// longitude it has the other one.
func (r *resolver) wants(term string) bool {
	for _, rival := range rivals[term] {
		if r.has(rival) {
			return false
		}
	}
	has := true
	switch term {
	case "decimalLatitude":
		_, has = r.taken["decimalLongitude"]
	case "decimalLongitude":
		_, has = r.taken["decimalLatitude"]
	}
	return has
}

// unlikely takes back that a heading may be a slip for a term, where its cells are
// nothing that the term has: "Etiqueta" over yes and no is not how many labels are
// wanted, and "Exposition" over NE and SW is no disposition.
func (t *Table) unlikely(rows []*Row) {
	for i := range t.columns {
		c := &t.columns[i]
		if c.Known || t.filledIn(rows, i) < 3 {
			continue
		}
		for k := range t.findings {
			f := &t.findings[k]
			if f.Suggest == "" || !c.unknownHeading(*f) {
				continue
			}
			figures := shareOf(rows, i, bareNumber.MatchString)
			counts := f.Suggest == "copies" || f.Suggest == "individualCount" || measured(f.Suggest) || slices.Contains([]string{"year", "month", "day", "decimalLatitude", "decimalLongitude"}, f.Suggest)
			if counts && figures < 0.5 || !counts && proseTerms[f.Suggest] && (figures > 0.5 || shareOf(rows, i, initials.MatchString) > 0.8) || shareOf(rows, i, func(s string) bool { return sideWord(s) || facing.MatchString(s) }) > 0.6 {
				f.Suggest, f.Severity = "", label.Note
			}
		}
	}
}

// facing is the side that a slope faces, or flat.
var facing = regexp.MustCompile(`^\s*([NSEWO]{1,3}|F)\s*$`)

// initials are what those who count or measure sign with, or codes as short.
var initials = regexp.MustCompile(`^\s*\p{Ll}{1,3}\s*$`)

// proseTerms are the terms whose cells are words.
var proseTerms = map[string]bool{"recordedBy": true, "identifiedBy": true, "locality": true, "habitat": true, "plantDescription": true, "occurrenceRemarks": true,
	"country": true, "stateProvince": true, "county": true, "municipality": true, "family": true, "genus": true, "scientificName": true, "disposition": true}

// isAngleAny is isAngle, or degrees with their signs.
func isAngleAny(s string) bool { return isAngle(s) || inDegrees.MatchString(s) }

// isAngle reports whether a text is a figure that a coordinate in degrees can be.
// Latitude and longitude may be exchanged, which others see.
func isAngle(s string) bool {
	v, ok := bareFigure(s)
	return ok && v >= -180 && v <= 180
}

// populations reads the names of populations as the places they were sampled at,
// where no other column has a place and the cells are names, no codes. Origins are
// places where the cells name more than one, "Portugal, Valdoura", and no words such
// as wild and cultivated.
func (t *Table) populations(r *resolver, rows []*Row) {
	for _, term := range []string{"locality", "verbatimLocality", "municipality", "county", "higherGeography", "island"} {
		if r.has(term) {
			return
		}
	}
	for i := range t.columns {
		c := &t.columns[i]
		ofOrigin := origins[headingKey(c.Heading)] && shareOf(rows, i, severalPlaces.MatchString) > 0.6
		if c.Known && !(ofOrigin && c.Term == "provenance") || c.group != nil || !ofOrigin && !population.MatchString(strings.TrimSpace(c.Heading)) || t.filledIn(rows, i) < 3 ||
			shareOf(rows, i, placeName.MatchString) < 0.8 || shareOf(rows, i, isBinomial) > 0.5 {
			continue
		}
		t.settle(r, i, "locality", "locality, for its cells are names and no other column has the place")
		return
	}
}

var (
	population = regexp.MustCompile(`(?i)^(pop\.?(ulations?)?|poblaci[oó]n|popula[cç][aã]o)[ _.-]?(name|nombre|nome)?$|^(nombre|nome)[ _](de |da |de la )?(poblaci[oó]n|popula[cç][aã]o)$`)
	origins    = wordSet("origin | provenance | source | source locality | source population | wild source | original source | source information")
	// severalPlaces are a place within another.
	severalPlaces = regexp.MustCompile(`^\p{Lu}[\pL\p{M} .'’-]+[,:;/] ?\p{Lu}`)
	// placeName is words in small letters with a capital, such as places have.
	placeName = regexp.MustCompile(`^\p{Lu}[\p{Ll}\p{M}'’]{2,}[^0-9_]*$`)
)
