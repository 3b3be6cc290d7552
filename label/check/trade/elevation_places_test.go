package trade

import "testing"

func heightRows(list []spot) [][]string {
	var table [][]string
	for i, s := range list {
		table = append(table, at(i, s.lat, s.lon, s.country, "", s.fields[1], "minimumElevationInMeters", s.fields[0]))
	}
	return table
}

// Of right heights nothing is said, wherever they are highest or lowest.
func TestHeightsRight(t *testing.T) {
	list := spots(t, "heights_right.tsv")
	by := said(t, heightRows(list))
	for i, s := range list {
		if what := by[i+1]; what != "" {
			t.Errorf("%s m, %s, %s: %s", s.fields[0], s.fields[1], s.country, what)
		}
	}
	t.Logf("%d of %d", len(by), len(list))
}

// Heights that the country has nowhere are found.
func TestHeightsWrong(t *testing.T) {
	list := spots(t, "heights_wrong.tsv")
	table := heightRows(list)
	for _, row := range table {
		row[9] = "on the slopes, 3 km N of the village" // the locality
	}
	by := said(t, table)
	for i, s := range list {
		if by[i+1] == "" {
			t.Errorf("%s m passes in %s: %s", s.fields[0], s.country, s.fields[1])
		}
	}
	t.Logf("%d of %d missed", len(list)-len(by), len(list))
}
