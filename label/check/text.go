package check

import (
	"strings"

	"cornerslip/label"
)

// placeholders are what people and programs write into a cell that has
// nothing to say. Capitals count: Null is a surname, Na sodium.
var placeholders = map[string]bool{
	"NA": true, "na": true, "N/A": true, "n/a": true, "N/a": true, "N.A.": true, "n.a.": true, "#N/A": true, "<NA>": true, "NaN": true, "nan": true,
	"null": true, "NULL": true, "(null)": true, "<null>": true, `\N`: true, "nil": true, "NIL": true, "none": true, "None": true, "NONE": true,
	"undefined": true, "?": true, "??": true, "???": true, "-": true, "--": true, "---": true, "–": true, "—": true, ".": true, "*": true, "/": true,
	"#NAME?": true, "#REF!": true, "#VALUE!": true, "#DIV/0!": true, "#NUM!": true, "#NULL!": true, "####": true, "#####": true, "######": true,
	"#ERROR!": true, "#SPILL!": true, "#CALC!": true,
}

// speaking are the columns in which some of these are values: NA is Namibia's
// country code and may be a herbarium's, "?" is a doubt.
var speaking = map[string]func(text string) bool{
	"countryCode":             func(s string) bool { return s == "NA" },
	"duplicatesTo":            func(s string) bool { return s == "NA" || s == "NIL" || s == "NONE" },
	"institutionCode":         isCode,
	"collectionCode":          isCode,
	"ownerInstitutionCode":    isCode,
	"identificationQualifier": func(s string) bool { return strings.Trim(s, "?") == "" },
}

// isPlaceholder reports whether a cell's text says that it says nothing.
func isPlaceholder(term, text string) bool {
	if len(text) > 9 || !placeholders[text] {
		return false
	}
	says := speaking[term]
	return says == nil || !says(text)
}

// textRules look at every cell. Damaged text, control characters included, is
// found where the table is read.
func textRules() []Rule {
	return []Rule{
		{
			Name: emptyRow, Severity: label.Note, Source: practice,
			Doc:            "a row without a filled cell prints nothing",
			Example:        []map[string]string{With(), {}},
			Counterexample: []map[string]string{With(), With("recordNumber", "215")},
			Row: func(c *Context) {
				if c.empty {
					c.Report("", "the row is empty and prints nothing")
				}
			},
		},
		{
			Name: "placeholder", Severity: label.Warning, Source: practice,
			Doc:     "a cell such as NA, null or ? says nothing; it counts as empty unless the house prints it",
			Example: one("habitat", "#NAME?"), Counterexample: one("countryCode", "NA", "recordNumber", "s.n.", "identificationQualifier", "?"),
			Row: func(c *Context) {
				for _, f := range c.Placeholders {
					message := "taken as empty: clear the cell, or write what is known"
					switch {
					case c.keeps(f.Origin.Term):
						message = "says nothing and is printed as it is: clear the cell, or write what is known"
					}
					if strings.HasPrefix(f.Text, "#") {
						message = "what a spreadsheet writes for a formula that failed or a value too wide: type the value again as text"
					}
					c.Report(f.Origin.Term, message)
				}
			},
		},
	}
}
