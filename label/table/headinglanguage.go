package table

// datumIsDate are the languages in which "Datum" is the date, with or without
// an accent.
var datumIsDate = map[string]bool{"de": true, "nl": true, "sv": true, "nb": true, "da": true, "cs": true, "sk": true, "hu": true}

// krajIsRegion are the languages in which "kraj" is a part of a country; in
// Polish it is the country.
var krajIsRegion = map[string]bool{"cs": true, "sk": true}

// prefersSecond decides between the two terms of an ambiguous word. "Species"
// is the epithet where a column has the genus, else the whole name. "Datum" is
// the date in languages of the north and the middle of Europe and the geodetic
// datum in English: it is the date where other headings are of those languages
// and no other column has one. "Kraj" is the country in Polish, in Czech and
// Slovak a part of it.
func (r *resolver) prefersSecond(i int, terms []string) bool {
	has := func(term string) bool { _, ok := r.taken[term]; return ok }
	switch terms[1] {
	case "specificEpithet":
		return has("genus")
	case "eventDate":
		return r.speaks(i, datumIsDate) && !has("eventDate") && !has("verbatimEventDate") && !has("year")
	case "stateProvince":
		return r.speaks(i, krajIsRegion)
	}
	return false
}

// speaks reports whether another heading than that of column i is a word of one
// of some languages and of no other.
func (r *resolver) speaks(i int, languages map[string]bool) bool {
	for k := range r.read {
		if m := r.read[k].meaning; m != nil && m.plain && languages[m.language] && m != r.read[i].meaning {
			return true
		}
	}
	return false
}
