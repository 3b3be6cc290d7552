package table

import (
	"regexp"
	"slices"
	"strings"
)

// What is looked at late is read only where no other column has the term: it says
// the same as the plain word, but of a copy that was worked on.

var (
	// georeferenced ends the headings of coordinates that were worked out later.
	georeferenced = regexp.MustCompile(`(?i)[ _.-](georef|georeferenced|geolocated|final|corrected|clean|cleaned)$`)
	// ofFirst begins the headings of what has several of a kind: "x1_genus".
	ofFirst = regexp.MustCompile(`^[a-z]1_`)
)

// lateTerms are the terms whose headings may have such an ending.
var lateTerms = []string{"decimalLatitude", "decimalLongitude", "minimumElevationInMeters", "coordinateUncertaintyInMeters", "geodeticDatum"}

// readLate reads headings behind a "1_" or before a "_georef".
func (r *resolver) readLate() {
	has := func(term string) bool {
		return slices.ContainsFunc(r.read, func(o reading) bool {
			return o.meaning != nil && (o.terms[0] == term || strings.HasPrefix(term, "decimal") && o.terms[0] == "verbatim"+strings.TrimPrefix(term, "decimal"))
		})
	}
	found := map[int]reading{}
	at := map[string]int{}
	note := func(i int, read reading) {
		if read.meaning == nil || has(read.terms[0]) {
			return
		}
		if _, twice := at[read.terms[0]]; twice {
			return
		}
		at[read.terms[0]], found[i] = i, read
	}
	for i := range r.columns {
		h := strings.TrimSpace(r.columns[i].Heading)
		if r.read[i].meaning != nil || len(h) > longHeading {
			continue
		}
		if rest := georeferenced.ReplaceAllString(h, ""); rest != h {
			if read := r.v.lookup(rest); read.meaning != nil && slices.Contains(lateTerms, read.terms[0]) {
				note(i, read)
			}
		} else if start := ofFirst.FindString(h); start != "" {
			rest := h[len(start):]
			if rest == "sp1" || rest == "sp" {
				rest = "specificEpithet"
			}
			note(i, r.v.lookup(rest))
		}
	}
	_, lat := at["decimalLatitude"]
	_, lon := at["decimalLongitude"]
	for i, read := range found {
		if strings.HasSuffix(read.terms[0], "tude") && lat != lon {
			continue // half a place
		}
		r.read[i] = read
	}
}
