package job

import (
	"context"
	"errors"

	"cornerslip/label/check"
	"cornerslip/label/register"
)

// A Found is a number, or a specimen without one, and its printed labels.
type Found struct {
	// Number is what the register knows of the number; its State is "" of a
	// label without a number of the register's.
	Number RegisterRow
	Labels []KeptLabel // the newest first
}

// FindNumbers returns what a text means, at most limit of each: numbers in order
// with their labels, then labels without a number of the register's.
func FindNumbers(ctx context.Context, r *Register, text string, limit int) ([]Found, error) {
	rows, err := r.Meant(ctx, text, limit)
	if err != nil {
		return nil, err
	}
	labels, err := r.Find(ctx, text, limit)
	if err != nil {
		return nil, err
	}
	var found []Found
	at := map[string]int{} // by catalogue number
	add := func(row register.Row) {
		at[row.Range.String()] = len(found)
		found = append(found, Found{Number: row})
	}
	for _, row := range rows {
		add(row)
	}
	var loose []register.Kept
	for _, l := range labels {
		row, err := r.Number(ctx, l.CatalogNumber)
		switch {
		case l.CatalogNumber == "" || errors.Is(err, register.ErrForeign) || errors.Is(err, register.ErrNotIssued):
			loose = append(loose, l)
			continue
		case err != nil:
			return nil, err
		}
		number := numberOfRow(row, l.CatalogNumber)
		if _, ok := at[number]; !ok {
			add(row)
		}
	}
	// A number that was found by its specimen has labels of other words too.
	for i := range found {
		own, err := r.Find(ctx, found[i].Number.Range.String(), limit)
		if err != nil {
			return nil, err
		}
		found[i].Labels = own
	}
	return withLoose(found, loose), nil
}

// numberOfRow is the number that a row is of: a stretch of passed-over numbers
// is one row.
func numberOfRow(row register.Row, number string) string {
	if row.Range.Len() == 1 {
		return row.Range.String()
	}
	return number
}

// withLoose adds labels without a number, such as those of duplicates, to the
// specimen of their gathering, or as specimens of their own.
func withLoose(found []Found, loose []register.Kept) []Found {
	numbered := len(found)
	for _, l := range loose {
		key := gatheringOf(l)
		i := -1
		for k := range found {
			s := found[k].Number.Specimen
			if key != "" && s.Gathering() == key && (s.Date == "" || l.Date == "" || s.Date == l.Date) {
				if i >= 0 && k < numbered { // two specimens of one gathering
					i = -1
					break
				}
				i = k
			}
		}
		if i < 0 {
			found = append(found, Found{Number: register.Row{Specimen: specimenOfLabel(l)}})
			i = len(found) - 1
		}
		found[i].Labels = append(found[i].Labels, l)
	}
	return found
}

func specimenOfLabel(l register.Kept) register.Specimen {
	s := register.Specimen{CatalogNumber: l.CatalogNumber, Number: l.Number, Name: l.Name, Date: l.Date}
	if people := check.ParseCollectors(l.Collector); len(people) > 0 {
		s.Collector = people[0]
	}
	return s
}

func gatheringOf(l register.Kept) string { return specimenOfLabel(l).Gathering() }
