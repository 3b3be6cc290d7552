// Package trade is what herbarium curators know of the errors in collectors'
// tables: coordinates that lie elsewhere than stated, heights in feet taken for
// metres, numbers and dates that a spreadsheet changed, names spelt two ways.
// Each rule names its source, or says that it has none.
//
// A rule speaks only where what stands there can hardly be right: a warning
// that is wrong teaches people to pass over the next.
package trade

import (
	"cornerslip/label"
	"cornerslip/label/check"
)

// The sources that several rules name.
const (
	practice      = "common practice, no source"
	positions     = "Zizka et al. 2020, PMC7528811, table 2 (tests of coordinates)"
	georeferences = "Georeferencing Best Practices, doi 10.15468/doc-gg7h-s853"
	fieldNumbers  = "University of Arizona Herbarium, label guidelines"
	spreadsheets  = "Microsoft KB 157788 (what a spreadsheet changes in text and dates)"
)

// Rules returns the trade's rules, in the order in which their findings of one
// cell are given. What the basic rules of package check say is not said again.
func Rules() []check.Rule {
	where := newFinder()
	var all []check.Rule
	for _, rules := range [][]check.Rule{
		placeRules(where), provinceRules(where), stateRules(), shortStateRules(), landRules(), letterRules(), precisionRules(where), heightRules(where), dateRules(), numberRules(), sequenceRules(), nameRules(), familyRules(), peopleRules(), wordRules(where), captionRules(), textPlaceRules(), blockRules(), specimenRules(), typedRules(), {unitLetterRule(), worldRule(), countrySlipRule(where), apostropheRule(), stateCountyRule(where), sheetNumberRule()},
		slipRules(where),
	} {
		all = append(all, rules...)
	}
	return all
}

// one makes a table of one row.
func one(pairs ...string) []map[string]string { return rows(pairs) }

// rows makes a table of sound rows, each changed by pairs of term and cell.
func rows(changes ...[]string) []map[string]string {
	var all []map[string]string
	for _, pairs := range changes {
		all = append(all, check.With(pairs...))
	}
	return all
}

// cell remembers where a cell of the table stands, in 12 bytes.
type cell struct{ row, line, column int32 }

func cellOf(f check.Field) cell {
	return cell{int32(f.Origin.Row), int32(f.Origin.Line), int32(f.Origin.Column)}
}

// origin makes the place of a cell whole again.
func (c cell) origin(file, term string) label.Origin {
	return label.Origin{File: file, Line: int(c.line), Column: int(c.column), Row: int(c.row), Term: term}
}

// also names cells in a finding's list.
func also(term string, cells []cell) []label.Cell {
	var all []label.Cell
	for _, c := range cells {
		all = append(all, label.Cell{Row: int(c.row), Term: term})
	}
	return all
}

// plural is "1 row", "3 rows".
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return itoa(n) + " " + word + "s"
}
