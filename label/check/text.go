package check

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

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

// textRules look at every cell.
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
			Name: "control-character", Severity: label.Error, Source: "The Unicode Standard, general category Cc",
			Doc:     "a character that cannot be printed, left by another program or a wrong encoding",
			Example: one("locality", "Valdoura,\x02 dunes"), Counterexample: one("locality", "Valdoura,\ndunes\tW of the station"),
			Row:     controlRule,
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

func controlRule(c *Context) {
	for i := range c.fields {
		f := &c.fields[i]
		at := strings.IndexFunc(f.Text, control)
		if at < 0 {
			continue
		}
		r, _ := utf8.DecodeRuneInString(f.Text[at:])
		message := fmt.Sprintf("holds the control character U+%04X, which cannot be printed: take it out", r)
		if r >= 0x80 {
			message = fmt.Sprintf("holds U+%04X, a sign of a table read in the wrong encoding: save the table as UTF-8 or name its encoding", r)
		}
		clean := strings.Join(strings.Fields(strings.Map(func(r rune) rune {
			if control(r) {
				return ' '
			}
			return r
		}, f.Text)), " ")
		if r >= 0x80 {
			clean = ""
		}
		c.Suggest(f.term, message, clean)
	}
}

// control reports characters that no label can show. Line breaks and tabs
// inside a cell are blanks.
func control(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t'
}
