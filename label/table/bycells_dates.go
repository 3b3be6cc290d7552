package table

// datesAsYear reads a column headed "Year" as the date, where its cells are whole dates
// and no other column has one.
func (t *Table) datesAsYear(r *resolver, rows []*Row) {
	i, ok := r.taken["year"]
	if !ok || t.columns[i].group != nil || shareOf(rows, i, func(s string) bool { return kindOf(s) == aDate }) < 0.65 {
		return
	}
	for _, term := range []string{"eventDate", "verbatimEventDate", "earliestDateCollected", "month", "day", "startDayOfYear"} {
		if _, taken := r.taken[term]; taken {
			return
		}
	}
	delete(r.taken, "year")
	t.settle(r, i, "eventDate", "eventDate, for its cells are whole dates and no other column has them")
}
