package table

import (
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
)

// codes are what programs and people write into every cell that has nothing in
// it.
var codes = wordList("NA | N/A | n/a | n.a. | N.A. | #N/A | <NA> | NaN | nan | NULL | null | (null) | \\N | None | NONE | none | -9999 | -999 | -99999 | ND | n/d | N/D | nd | s/d | S/D | sin datos | sin dato | sem dados | Sem dados | Sem informação | sem informação | Não informado | não informado | No disponible | NO DISPONIBLE | no disponible | NO APLICA | No aplica | no aplica | Unknown | unknown | UNKNOWN | Not recorded | not recorded | not available | Not available | Not applicable | not applicable | - | -- | – | — | ? | . | * | / | 无 | 不詳 | 不详 | 不明")

func wordList(words string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.SplitSeq(words, " | ") {
		set[w] = true
	}
	return set
}

// plainCodes are those that programs write and that are no word: one column of
// them is enough.
var plainCodes = wordList("NA | N/A | #N/A | <NA> | NaN | nan | NULL | null | (null) | \\N")

// machineCodes are those that nobody writes for anything else: two cells are enough
// in a table of some rows.
var machineCodes = wordList("NA | N/A | #N/A | <NA> | NaN | NULL | (null) | \\N")

// What makes a code the habit of a table: so many cells, in so many columns.
const (
	codeCells   = 3
	machineRows = 5
	codeColumns = 2
)

// emptyCodes finds the codes that the table uses for an empty cell.
func (t *Table) emptyCodes(rows []*Row) {
	cells := map[string]int{}
	columns := map[string]map[int]bool{}
	for _, r := range rows {
		for i := range r.Cells {
			if len(r.Cells[i].Text) > 20 {
				continue
			}
			text := strings.TrimSpace(r.Cells[i].Text)
			if !codes[text] || i >= len(t.columns) || meantAs(t.columns[i].Term, text) {
				continue
			}
			cells[text]++
			if columns[text] == nil {
				columns[text] = map[int]bool{}
			}
			columns[text][i] = true
		}
	}
	var found []string
	for text := range cells {
		if (machineCodes[text] && len(rows) >= machineRows || text == "-" || text == "–" || text == "—") && cells[text] > 1 || cells[text] >= codeCells && (len(columns[text]) >= codeColumns || plainCodes[text]) || strings.HasPrefix(text, "-999") {
			found = append(found, text)
		}
	}
	slices.Sort(found)
	for _, text := range found {
		if t.empty == nil {
			t.empty = map[string]bool{}
		}
		t.empty[text] = true
		t.say(ruleCode, label.Note, t.columns[0].Origin.Line, "%s stands for an empty cell in this table (in %s of the first %d rows): it is read as empty",
			strconv.Quote(text), plural(len(columns[text]), "one column", "%d columns"), len(rows))
	}
}

// meantAs reports whether a code says something in the column of a term:
// nothing is known of a determiner, a day, a place; "?" is a doubt.
func meantAs(term, text string) bool {
	switch term {
	case "countryCode", "duplicatesTo", "institutionCode", "collectionCode", "ownerInstitutionCode":
		return strings.ToUpper(text) == text && letters(text) > 0
	case "identificationQualifier":
		return text == "?"
	case "geodeticDatum", "recordedBy", "recordNumber", "eventDate", "verbatimEventDate", "locality", "identifiedBy", "verticalDatum":
		// That it is not known or was not recorded is said in words there.
		return len(text) > 5 || text == "s/d" || text == "S/D"
	}
	return false
}

// EmptyCode reports whether a cell's text is a code that this table writes into
// empty cells of many columns, "NA" or "-9999"; the table's findings say so
// once.
func (t *Table) EmptyCode(text string) bool {
	return t.empty != nil && len(text) <= 20 && t.empty[strings.TrimSpace(text)]
}
