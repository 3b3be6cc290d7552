package trade

import (
	"slices"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
)

// specimenRules ask whether there is a plant to label at all.
func specimenRules() []check.Rule {
	return []check.Rule{
		{
			Name: "record-absent", Severity: label.Warning, Source: "Darwin Core (occurrenceStatus)",
			Doc:     "a record that says that the plant was not found: it has no specimen to label",
			Terms:   []string{"occurrenceStatus"},
			Example: one("occurrenceStatus", "absent"), Counterexample: one("occurrenceStatus", "present"),
			Row: func(c *check.Context) {
				if is(c.Text("occurrenceStatus"), "absent", "ausente", "abwesend", "not found") {
					c.Report("occurrenceStatus", "the record says that the plant was not found there: it has no specimen, and needs no label")
				}
			},
		},
		{
			Name: "kingdom-other", Severity: label.Warning, Source: "International Code of Nomenclature for algae, fungi, and plants (Shenzhen Code), Preamble 8",
			Doc:     "a kingdom of animals or viruses, which no herbarium names",
			Terms:   []string{"kingdom"},
			Example: one("kingdom", "Animalia"), Counterexample: one("kingdom", "Chromista"),
			Row: func(c *check.Context) {
				if is(c.Text("kingdom"), "Animalia", "Metazoa", "animals", "viruses") {
					c.Report("kingdom", "it is no kingdom of plants, algae or fungi: take the row out, or correct the kingdom or the name")
				}
			},
		},
		{
			Name: "text-quoted", Severity: label.Warning, Source: practice,
			Doc:     "a name or a person between quotation marks, which are printed",
			Terms:   quotable,
			Example: one("recordedBy", `"I. Almeida"`), Counterexample: one("recordedBy", `I. Almeida "Nene"`),
			Row: func(c *check.Context) {
				c.Marked(check.Quoted|check.Spaces, func(term, text, _ string) {
					if text[0] != '"' && text[0] < 0x80 || !slices.Contains(quotable, term) {
						return
					}
					if bare := unquoted(text); bare != text {
						c.Once(term, "quotation marks stand around the whole cell and are printed: take them out", bare, "quotes")
					}
				})
			},
		},
	}
}

// is reports whether a text is one of the words, in any case.
func is(text string, words ...string) bool {
	return text != "" && slices.ContainsFunc(words, func(w string) bool { return strings.EqualFold(text, w) })
}

// quotable are columns in which nobody quotes: a farm may be named "Esperança",
// and a cultivar stands between single marks.
var quotable = []string{"scientificName", "genus", "specificEpithet", "family", "recordedBy", "coCollectors", "identifiedBy", "scientificNameAuthorship"}

// unquoted takes the quotation marks off a text that stands between them wholly.
func unquoted(s string) string {
	first, n := utf8.DecodeRuneInString(s)
	last, m := utf8.DecodeLastRuneInString(s)
	if n+m >= len(s) {
		return s
	}
	inner := s[n : len(s)-m]
	if strings.ContainsAny(inner, "\"“”„«»") {
		return s
	}
	switch string([]rune{first, last}) {
	case `""`, "“”", "„“", "«»", "””":
		if bare := strings.TrimSpace(inner); bare != "" {
			return bare
		}
	}
	return s
}
