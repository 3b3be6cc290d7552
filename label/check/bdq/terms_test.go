package bdq

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// TestOfItsTermsAlone: what a test does not act upon nor consult changes nothing of
// its answer.
func TestOfItsTermsAlone(t *testing.T) {
	tests := Tests()
	var terms []string
	for _, test := range tests {
		terms = append(terms, append(slices.Clone(test.Acts), test.Consults...)...)
	}
	slices.Sort(terms)
	terms = slices.Compact(terms)
	values := []string{"", " ", "x", "12", "-8.5", "2026-05-14", "Portugal", "PT", "WGS84", "Cistus ladanifer L.", "null", "1", "present"}
	rapid.Check(t, func(r *rapid.T) {
		all := map[string]string{}
		for _, term := range terms {
			all[term] = rapid.SampledFrom(values).Draw(r, term)
		}
		for i := range tests {
			test := &tests[i]
			own := func(term string) string {
				if slices.Contains(test.Acts, term) || slices.Contains(test.Consults, term) {
					return all[term]
				}
				return ""
			}
			a := test.Answer(NewCells(func(term string) string { return all[term] }, today(t)))
			b := test.Answer(NewCells(own, today(t)))
			if outcome(t, a) != outcome(t, b) {
				r.Fatalf("%s: %s with all cells, %s with its own", test.Label, outcome(t, a), outcome(t, b))
			}
		}
	})
}
