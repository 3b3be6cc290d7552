package trade

import (
	"regexp"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// apostropheRule finds the key beside the apostrophe: Sant`Ana, d´Ouro, L`Hér.
func apostropheRule() check.Rule {
	return check.Rule{
		Name: "apostrophe-accent", Severity: label.Warning, Source: "Unicode Standard, 6.2 (apostrophes; the grave and acute accents that stand alone); " + practice,
		Doc: "an accent that stands alone in place of an apostrophe, in a name or in words for a place", Terms: apostropheTerms,
		Example: one("locality", "Valdoura, Lagoa d`Ouro"), Counterexample: one("locality", "Valdoura, Lagoa d'Ouro, dunes of Hawai`i and O`ahu"),
		Row: func(c *check.Context) {
			c.Marked(loneAccent, func(term, text, _ string) {
				if !c.Doubted(term) {
					c.Suggest(term, "an accent stands where an apostrophe is meant", elided.ReplaceAllStringFunc(text, apostrophes.Replace))
				}
			})
		},
	}
}

var apostropheTerms = []string{"recordedBy", "coCollectors", "identifiedBy", "scientificName", "scientificNameAuthorship", "stateProvince", "county", "municipality", "locality", "verbatimLocality", "habitat", "plantDescription", "occurrenceRemarks"}

// elided is a word that lost its end before one with a capital. The grave accent of
// Hawaiian, Arabic and Uzbek stands elsewhere: Kaua`i, Ma`rib, O`zbekiston.
var (
	elided      = regexp.MustCompile("(?:^|[\\s(/-])(?:(?:[dDlL]|[Ss]ant|[Dd]ell|[Dd]all|[Nn]ell|[Aa]ll)[`´]\\p{Lu}|[OM][`´][B-DF-HJ-NP-TV-Z])\\p{Ll}")
	apostrophes = strings.NewReplacer("`", "'", "´", "'")
	loneAccent  = check.NewMark(apostropheTerms, 0, func(text string) bool {
		return (strings.IndexByte(text, '`') > 0 || strings.Contains(text, "´")) && elided.MatchString(text)
	})
)
