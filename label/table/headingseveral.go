package table

import (
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
)

// parted parts a heading that names several things: "Town, County, State",
// "Locality, date", "Collector, number (herbarium)". Without a blank behind it a comma
// may stand between two headings.
var parted = regexp.MustCompile(`[,;]\s+|\s*[:/&+()]+\s*|\s+(?:and|or|y|e|et|und|o|ou|oder)\s+`)

// placeWords are the terms of which several in one heading are a place, and
// besidePlace those that may stand in its cells with it.
var (
	placeWords  = wordTerms("country stateProvince county municipality locality island waterBody verbatimLocality")
	besidePlace = wordTerms("habitat eventDate verbatimCoordinates minimumElevationInMeters occurrenceRemarks")
	// besideGathering may stand in cells with a collector and the number.
	besideGathering = wordTerms("institutionCode catalogNumber eventDate")
)

func wordTerms(terms string) map[string]bool {
	set := map[string]bool{}
	for t := range strings.FieldsSeq(terms) {
		set[t] = true
	}
	return set
}

// readSeveral finds what a heading stands for that names several things, parted by
// signs: places, of which the cells are printed as they are, or a collector
// with the number.
func (v *words) readSeveral(heading string) reading {
	var terms []string
	for part := range slices.Values(parted.Split(heading, -1)) {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		r := v.lookup(part)
		if r.meaning == nil || len(r.terms) > 1 || slices.Contains(terms, r.terms[0]) {
			return reading{}
		}
		terms = append(terms, r.terms[0])
	}
	if len(terms) < 2 {
		return reading{}
	}
	for i, t := range terms {
		if t == "year" { // is as much of a date as they know
			terms[i] = "eventDate"
		}
	}
	if terms[0] == "identifiedBy" && len(terms) == 2 && (terms[1] == "eventDate" || terms[1] == "dateIdentified") {
		return reading{meaning: v.meanings[headingKey("identifiedBy")], also: []string{"dateIdentified"}, several: true}
	}
	place, person, number, foreign := false, false, false, false
	var also []string
	for _, t := range terms {
		switch {
		case placeWords[t], t == "provenance" && len(terms) > 1:
			place = true
		case t == "recordedBy":
			person = true
		case t == "recordNumber":
			number = true
		case t == "collectorAndNumber":
			person, number = true, true
		case besidePlace[t], besideGathering[t]:
			also = append(also, t)
		default:
			foreign = true
		}
	}
	fit := func(set map[string]bool) bool {
		return !slices.ContainsFunc(also, func(t string) bool { return !set[t] })
	}
	switch {
	case foreign:
	case place && !person && !number && fit(besidePlace):
		return reading{meaning: &meaning{terms: []string{"locality"}, plain: true}, also: also, several: true}
	case place && person && fit(besidePlace):
		return reading{meaning: &meaning{terms: []string{"locality"}, plain: true}, also: append(also, "recordedBy", "recordNumber"), several: true}
	case person && !place && fit(besideGathering) && (number || slices.Contains(also, "eventDate")):
		gathering := reading{meaning: v.meanings[headingKey("collectorAndNumber")]}
		if slices.Contains(also, "eventDate") {
			gathering.also, gathering.several = []string{"eventDate"}, true
		}
		return gathering
	}
	return reading{}
}

// sayAlso says of a heading that names several things how it is read. A date in
// the cells of a place is printed among its words, and nobody can sort by it.
func (r *resolver) sayAlso(i int) {
	c, read := &r.columns[i], r.read[i]
	c.Also = read.also
	if c.Term == "collectorAndNumber" {
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is read as %s, and the date behind them", c.Heading, ownWords[c.Term])
		return
	}
	if slices.Contains(read.also, "recordNumber") {
		r.find(i, ruleHeadingReading, label.Warning, "", "heading %q names the place and the gathering: its cells are printed as the place, all that is in them; give the collector and the number columns of their own, recordedBy and recordNumber", c.Heading)
		return
	}
	if slices.Contains(read.also, "eventDate") {
		r.find(i, ruleHeadingReading, label.Warning, "", "heading %q names the place and the date: its cells are printed as the place, date and all; give the date a column of its own, eventDate", c.Heading)
		return
	}
	r.find(i, ruleHeadingReading, label.Note, "", "heading %q is read as %s: its cells are printed as they are", c.Heading, c.Term)
}

// Tells reports whether the heading of a column of another term says that its
// cells have what that term is for, too.
func (t *Table) Tells(other, term string) bool {
	return slices.ContainsFunc(t.columns, func(c Column) bool { return c.Term == other && slices.Contains(c.Also, term) })
}
