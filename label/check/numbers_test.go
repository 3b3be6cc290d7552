package check

import (
	"fmt"
	"slices"
	"testing"
)

// TestNumbersTwice: parts of one specimen that have a record each share its
// number; other records with the same number are told.
func TestNumbersTwice(t *testing.T) {
	rec := func(number, parts string) map[string]string {
		return With("catalogNumber", "VDOURA-0001234", "recordNumber", number, "preparations", parts)
	}
	of := func(pairs ...string) map[string]string {
		return With(append([]string{"catalogNumber", "4211"}, pairs...)...)
	}
	for _, c := range []struct {
		name string
		rows []map[string]string
		want []int // the rows that are told
	}{
		{"two sheets", []map[string]string{rec("214", "sheet 1 of 2"), rec("214", "folha 2 de 2")}, nil},
		{"a sheet and a box", []map[string]string{rec("214", "sheet 1 of 1"), rec("214", "box 1 of 1: cone")}, nil},
		{"the same sheet", []map[string]string{rec("214", "sheet 1 of 2"), rec("214", "sheet 1 of 2")}, []int{2}},
		{"a third record", []map[string]string{rec("214", "sheet 1 of 2"), rec("214", "sheet 2 of 2"), rec("214", "sheet 2 of 2")}, []int{3}},
		{"another gathering", []map[string]string{rec("214", "sheet 1 of 2"), rec("215", "sheet 2 of 2")}, []int{2}},
		{"one says nothing", []map[string]string{rec("214", "sheet 1 of 2"), rec("214", "sheet | sheet")}, []int{2}},
		{"the first says nothing", []map[string]string{rec("214", ""), rec("214", "sheet 2 of 2")}, []int{2}},
		{"two collections", []map[string]string{of("collectionCode", "Algae"), of("collectionCode", "Fungi")}, nil},
		{"two institutions", []map[string]string{of("institutionCode", "VDOURA"), of("institutionCode", "PINHEL")}, nil},
		{"two collections in the identifier", []map[string]string{of("occurrenceID", "VDOURA-Algae:4211"), of("occurrenceID", "VDOURA-Fungi:4211")}, nil},
		{"one collection in the identifier", []map[string]string{of("occurrenceID", "VDOURA-Algae:4211"), of("occurrenceID", "VDOURA-Algae:4211")}, []int{2}},
		{"duplicates with identifiers", []map[string]string{of("occurrenceID", "a-1"), of("occurrenceID", "a-2")}, nil},
		{"one identifier", []map[string]string{of("occurrenceID", "a-1"), of("occurrenceID", "a-1")}, []int{2}},
		{"two gatherings with identifiers", []map[string]string{of("occurrenceID", "a-1"), of("occurrenceID", "a-2", "recordNumber", "215")}, []int{2}},
		{"no collector's number", []map[string]string{of("occurrenceID", "a-1", "recordNumber", "s.n."), of("occurrenceID", "a-2", "recordNumber", "s.n.")}, []int{2}},
		{"sheets of one record", []map[string]string{rec("214", "sheet | sheet")}, nil},
	} {
		_, found := run(t, New(options(t)), open(t, c.rows...))
		var got []int
		for _, f := range found {
			if f.Rule != "catalogue-number-twice" {
				t.Errorf("%s: %s", c.name, f)
				continue
			}
			got = append(got, f.Row)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: rows %s, want %s", c.name, fmt.Sprint(got), fmt.Sprint(c.want))
		}
	}
}
