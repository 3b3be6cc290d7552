package trade

import (
	"regexp"

	"cornerslip/label"
	"cornerslip/label/check"
)

// formulaRule finds the formulas of a spreadsheet that were saved in place of what
// they give.
func formulaRule() check.Rule {
	return check.Rule{
		Name: "text-formula", Severity: label.Error, Source: "ECMA-376 Part 1, 18.17 (formulas)",
		Doc: "a formula of a spreadsheet, which is printed as it stands", Terms: formulaTerms,
		Example: one("habitat", "=B2&C3"), Counterexample: one("habitat", "= garden of 1998"),
		Row: func(c *check.Context) {
			c.Marked(formulas, func(term, _, _ string) {
				c.Report(term, "a formula of a spreadsheet, which the label prints as it stands: write what it gives")
			})
		},
	}
}

var formulaTerms = append([]string{"recordNumber", "catalogNumber"}, dittoed...)

// formula begins with a cell, a function or a text that is joined to more.
var (
	formula  = regexp.MustCompile(`^= ?[+-]?\(?(?:\$?[A-Z]{1,3}\$?[0-9]{1,7}(?:[-+*/&:,;^)<>=]|$)|[A-Z][A-Z.]{1,15}\(|"[^"]*" ?&|'?[^'!]{1,31}'?!\$?[A-Z]{1,3}\$?[0-9])`)
	formulas = check.NewMark(formulaTerms, 0, func(text string) bool { return len(text) > 2 && text[0] == '=' && formula.MatchString(text) })
)
