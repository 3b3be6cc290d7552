package trade

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// itselfRule finds a plant that is named as its own company or host.
func itselfRule() check.Rule {
	return check.Rule{
		Name: "associated-itself", Severity: label.Warning, Source: practice,
		Doc: "the host, or what grows with the plant, is the plant itself and nothing else", Terms: []string{"associatedTaxa"},
		Example: one("scientificName", "Lobaria pulmonaria (L.) Hoffm.", "family", "Lobariaceae", "associatedTaxa", "Lobaria pulmonaria"), Counterexample: one("associatedTaxa", "Quercus suber"),
		Row: func(c *check.Context) {
			text := c.Text("associatedTaxa")
			if text == "" || c.Name == "" || strings.Count(text, " ") > 8 || c.Doubted("associatedTaxa") {
				return
			}
			w, v := strings.Fields(c.Name), strings.Fields(text)
			if len(w) < 2 || len(v) < 2 || w[0] != v[0] || w[1] != v[1] || strings.ContainsAny(text, ",;:|/&+") || len(v) > 2 && text != c.Name {
				return
			}
			c.Report("associatedTaxa", "is the plant itself: name what it grows on or with, or leave the cell empty")
		},
	}
}
