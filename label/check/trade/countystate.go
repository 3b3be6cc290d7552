package trade

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// countyStateRule finds a county under another state than in the rest of the table.
func countyStateRule(where *finder) check.Rule {
	county := func(state string) []map[string]string {
		var all [][]string
		for i := range 4 {
			all = append(all, []string{"recordNumber", itoa(214 + i), "stateProvince", "Guarda", "county", "Manteigas", "decimalLatitude", "40.40" + itoa(i+1), "decimalLongitude", "-7.538", "minimumElevationInMeters", ""})
		}
		all[2][3] = state
		return rows(all...)
	}
	return check.Rule{
		Name: "county-state", Severity: label.Warning, Source: "Natural Earth admin-1 at 1:10,000,000; " + practice,
		Doc:     "a county under another state than in more records of the table, where the coordinates lie in that of the others",
		Terms:   []string{"stateProvince"},
		Example: county("Viseu"), Counterexample: county("Distrito da Guarda"),
		Table: func() check.TableRule { return &countyStates{where: where} },
	}
}

// countyStates keeps some 200 bytes for each county and state.
type countyStates struct {
	where *finder
	file  string
	seen  map[[3]string]*countyIn // country, county, state
}

type countyIn struct {
	count    int
	cells    [rareRecords]cell
	lat, lon [rareRecords]float64
}

func (t *countyStates) Feed(r *check.Record) {
	county, f := r.Text("county"), r.Field("stateProvince")
	if len(county) < 3 || f.Text == "" || !r.HasCoordinates || r.Doubted("country", "stateProvince", "county") || r.Doubted(coordinateTerms...) {
		return
	}
	key := [3]string{r.Text("country"), county, f.Text}
	c := t.seen[key]
	if c == nil {
		if t.seen == nil {
			t.seen, t.file = map[[3]string]*countyIn{}, f.Origin.File
		}
		if len(t.seen) >= mostLands {
			return
		}
		c = &countyIn{}
		for i := range key {
			key[i] = strings.Clone(key[i])
		}
		t.seen[key] = c
	}
	if c.count < rareRecords {
		c.cells[c.count], c.lat[c.count], c.lon[c.count] = cellOf(f), r.Coordinates.Lat.Degrees(), r.Coordinates.Lon.Degrees()
	}
	c.count++
}

func (t *countyStates) End() []label.Finding {
	states := map[[2]string][]string{}
	for key := range t.seen {
		at := [2]string{key[0], key[1]}
		states[at] = append(states[at], key[2])
	}
	var all []label.Finding
	for at, names := range states {
		if len(names) < 2 {
			continue
		}
		slices.SortFunc(names, func(a, b string) int {
			return cmp.Or(cmp.Compare(t.seen[[3]string{at[0], at[1], b}].count, t.seen[[3]string{at[0], at[1], a}].count), strings.Compare(a, b))
		})
		most := t.seen[[3]string{at[0], at[1], names[0]}].count
		for _, name := range names[1:] {
			c := t.seen[[3]string{at[0], at[1], name}]
			if c.count > rareRecords || most < 2*c.count || !t.lie(at[0], name, names[0], c) {
				continue
			}
			all = append(all, label.Finding{
				Origin: c.cells[0].origin(t.file, "stateProvince"), Value: name, Suggest: names[0], Also: also("stateProvince", c.cells[1:c.count]),
				Message: fmt.Sprintf("%s stands under %s in %s of the table, and the coordinates lie there", at[1], names[0], plural(most, "record")),
			})
		}
	}
	slices.SortFunc(all, func(a, b label.Finding) int { return cmp.Compare(a.Row, b.Row) })
	return all
}

// lie reports whether the places of one state all lie in the other, as the outlines
// have it.
func (t *countyStates) lie(country, stated, other string, c *countyIn) bool {
	for _, code := range t.where.lands(country) {
		named, others := t.where.statesOf(code, stated), t.where.statesOf(code, other)
		if len(named) == 0 || len(others) == 0 || slices.Contains(others, named[0]) {
			return false
		}
		for i := range c.count {
			in := func(s *place.State) bool { return s.Owns(c.lat[i], c.lon[i]) }
			if slices.ContainsFunc(named, in) || !slices.ContainsFunc(others, in) {
				return false
			}
		}
		return true
	}
	return false
}
