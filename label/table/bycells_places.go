package table

import (
	"regexp"
	"slices"
	"strings"
)

var (
	regionWord     = regexp.MustCompile(`(?i)^(nom )?(de la )?r[ée]gion$`)
	departmentWord = regexp.MustCompile(`(?i)^(nom )?(du )?(d[ée]partement|department|d[ée]pt\.?|dpt\.?)$`)
)

// departmentsOfRegions reads a department beside a region as the county, where each lies
// in one region and no other column has the county: in France and in much of
// French-speaking Africa departments are the parts of regions. Of one that has several
// departments to itself the order is clear; else both are read as the state.
func (t *Table) departmentsOfRegions(r *resolver, rows []*Row) {
	if r.has("county") {
		return
	}
	find := func(word *regexp.Regexp) int {
		return slices.IndexFunc(t.columns, func(c Column) bool {
			return c.Term == "stateProvince" && c.group != nil && t.headed(c.Index, word)
		})
	}
	region, department := find(regionWord), find(departmentWord)
	if region < 0 || department < 0 || len(t.columns[region].group.columns) != 2 {
		return
	}
	if !partsOf(rows, department, region) {
		return
	}
	t.leave(department)
	t.undouble("stateProvince")
	r.taken["stateProvince"] = region
	t.settle(r, department, "county", "county, for each of its departments lies in one region")
}

// headed reports whether a column has a word as its heading.
func (t *Table) headed(column int, word *regexp.Regexp) bool {
	return word.MatchString(strings.TrimSpace(t.columns[column].Heading))
}

// partsOf reports whether the cells of a column are parts of those of another: each
// lies in one of them, and one of them has several.
func partsOf(rows []*Row, column, greater int) bool {
	of, all := map[string]string{}, map[string]bool{}
	for _, row := range rows {
		if max(column, greater) >= len(row.Cells) {
			continue
		}
		part, in := strings.TrimSpace(row.Cells[column].Text), strings.TrimSpace(row.Cells[greater].Text)
		if part == "" || in == "" {
			continue
		}
		if was, ok := of[part]; ok && was != in {
			return false
		}
		of[part], all[in] = in, true
	}
	return len(of) > len(all)
}
