package table

import (
	"regexp"
	"slices"
	"strings"
)

// standing are words for a height that are of plants as well as of places.
var standing = wordSet("altura | altura m | altura (m) | hauteur | altezza | alçada | alçada (m)")

// girths are headings of how thick trees are.
var girths = regexp.MustCompile(`(?i)^(dap|dbh|cap|pap|d\.a\.p\.|c\.a\.p\.|diámetro|diametro|diâmetro|per[ií]metro|área basal|copa|dap[ _(].*|cap[ _(].*|dbh[ _(].*)$`)

// leavePlantHeights takes the columns of heights for those of the plants, where the
// table has another column for the height of the place or says how thick the trees are.
func (r *resolver) leavePlantHeights() {
	for i := range r.columns {
		if !r.standing(i) || !slices.ContainsFunc(r.columns, func(c Column) bool {
			return girths.MatchString(strings.TrimSpace(c.Heading)) || c.Index != r.columns[i].Index && r.heightOfPlace(c.Index)
		}) {
			continue
		}
		r.read[i] = reading{}
		if r.tall == nil {
			r.tall = map[int]bool{}
		}
		r.tall[i] = true
	}
}

// standing reports whether a column's heading may mean the height of plants.
func (r *resolver) standing(i int) bool {
	m := r.read[i].meaning
	return m != nil && m.plain && m.terms[0] == "minimumElevationInMeters" && standing[headingKey(r.columns[i].Heading)]
}

// heightOfPlace reports whether a column's heading means no other height than a place's.
func (r *resolver) heightOfPlace(i int) bool {
	m := r.read[i].meaning
	return m != nil && m.terms[0] == "minimumElevationInMeters" && !standing[headingKey(r.columns[i].Heading)]
}
