package trade

import (
	"fmt"
	"math/bits"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// gatherTerms are the columns whose cells people merge over the rows of one
// gathering or one place. The first ones say who, when and where: what leaves
// several of them empty at once is hardly a lack of knowledge.
var gatherTerms = []string{
	"country", "locality", "recordedBy", "eventDate",
	"verbatimEventDate", "stateProvince", "county", "municipality", "habitat", "decimalLatitude", "decimalLongitude",
	"verbatimLatitude", "verbatimLongitude", "minimumElevationInMeters", "geodeticDatum", "identifiedBy",
}

// keyTerms is the mask of the first of gatherTerms.
const keyTerms = 1<<4 - 1

// blockRules are about rows that lean on the row above them.
func blockRules() []check.Rule {
	leaning := func(pairs ...string) []string {
		return append([]string{"country", "", "locality", "", "habitat", ""}, pairs...)
	}
	whole := []string{"habitat", "heath"}
	return []check.Rule{{
		Name: "rows-merged", Severity: label.Warning, Source: practice,
		Doc:     "several columns are filled in the first row of a group and empty below it, as merged cells of a spreadsheet leave them",
		Terms:   gatherTerms,
		Example: rows(whole, leaning("recordNumber", "215"), leaning("recordNumber", "216"), leaning("recordNumber", "217")),
		Counterexample: rows(whole, []string{"recordNumber", "215", "habitat", ""}, []string{"recordNumber", "216", "habitat", "heath"},
			[]string{"recordNumber", "217", "habitat", ""}),
		Table: func() check.TableRule { return &merged{masks: map[uint32]*blanks{}} },
	}}
}

// merged counts which of gatherTerms are empty together.
type merged struct {
	file  string
	first uint32 // the mask of the first record
	rows  int
	coded bool               // empty cells have a code: none was merged
	masks map[uint32]*blanks // by what is filled
}

type blanks struct {
	count int
	cells []cell // of the first rows
}

// mergedRows is how many rows a finding names.
const mergedRows = 12

func (m *merged) Feed(r *check.Record) {
	m.coded = m.coded || r.Coded()
	filled := uint32(0)
	for i, term := range gatherTerms {
		if strings.TrimSpace(r.Text(term)) != "" {
			filled |= 1 << i
		}
	}
	if m.rows++; m.rows == 1 {
		m.file, m.first = strings.Clone(r.Origin.File), filled
	}
	b := m.masks[filled]
	if b == nil {
		b = &blanks{}
		m.masks[filled] = b
	}
	if b.count++; len(b.cells) < mergedRows {
		b.cells = append(b.cells, cell{row: int32(r.Row), line: int32(r.Origin.Line)})
	}
}

// End speaks where a fifth of the rows or more leave the same columns empty,
// all of which the first row fills, and hardly a row fills some of them and
// leaves others.
func (m *merged) End() []label.Finding {
	if m.rows < 4 || m.coded {
		return nil
	}
	// The columns that are empty in the likeliest rows below.
	below, most := uint32(0), 0
	for mask, b := range m.masks {
		lacks := m.first &^ mask
		if bits.OnesCount32(lacks) >= 3 && bits.OnesCount32(lacks&keyTerms) >= 2 && (b.count > most || b.count == most && lacks > below) {
			below, most = lacks, b.count
		}
	}
	if most == 0 {
		return nil
	}
	leads, leaning, other := 0, 0, 0
	var cells []cell
	for mask, b := range m.masks {
		switch mask & below & keyTerms {
		case below & keyTerms:
			leads += b.count
		case 0:
			leaning += b.count
			cells = append(cells, b.cells...)
		default:
			other += b.count
		}
	}
	if 5*leaning < m.rows || leaning < 2 || 10*other > m.rows {
		return nil
	}
	slices.SortFunc(cells, func(a, b cell) int { return int(a.row - b.row) })
	var names []string
	for i, term := range gatherTerms {
		if below&(1<<i) != 0 {
			names = append(names, term)
		}
	}
	return []label.Finding{{
		Origin: label.Origin{File: m.file, Line: int(cells[0].line), Row: int(cells[0].row), Term: names[0]},
		Message: fmt.Sprintf("%s leave %s empty, below rows that fill them: if the cells were merged, write their text into every row",
			plural(leaning, "row"), strings.Join(names, ", ")),
		Also: also(names[0], cells[1:min(len(cells), mergedRows)]),
	}}
}
