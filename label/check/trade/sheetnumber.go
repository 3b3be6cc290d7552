package trade

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// sheetNumberRule is about a collector's number that is the sheet's.
func sheetNumberRule() check.Rule {
	return check.Rule{
		Name: "number-of-sheet", Severity: label.Warning, Source: practice,
		Doc: "the herbarium's code and the number of the sheet in the place of the collector's number, as a data base fills it in for one who gave none", Terms: []string{"recordNumber"},
		Example:        one("recordNumber", "VDOURA1234567", "catalogNumber", "1234567", "collectionCode", "VDOURA"),
		Counterexample: one("recordNumber", "VDOURA214", "catalogNumber", "1234567", "collectionCode", "VDOURA"),
		Row: func(c *check.Context) {
			number := c.Text("recordNumber")
			if code := sheetCode(number, c.Text("catalogNumber")); code != "" && (namesHouse(c.Text("collectionCode"), code) || namesHouse(c.Text("institutionCode"), code)) {
				c.Suggest("recordNumber", "is the number of the sheet, with the code of the herbarium before it, and not the collector's: write s.n. if there is none", "s.n.")
			}
		},
	}
}

// sheetCode is the code of a herbarium that a number has before the figures of the
// sheet, "" if it is another number.
func sheetCode(number, sheet string) string {
	code, ok := strings.CutSuffix(number, sheet)
	if !ok || len(sheet) < 3 || strings.Trim(sheet, "0123456789") != "" {
		return ""
	}
	code = strings.TrimRight(code, " -:")
	if len(code) < 2 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return ""
	}
	return code
}

// namesHouse reports whether a herbarium's code or name has the code as a word:
// "Coleção Botânica (VDOURA)".
func namesHouse(house, code string) bool {
	for w := range strings.FieldsFuncSeq(house, func(r rune) bool { return strings.ContainsRune(" ,;:()[]/-", r) }) {
		if w == code {
			return true
		}
	}
	return false
}
