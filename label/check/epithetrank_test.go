package check

import (
	"strings"
	"testing"
)

// The heading of the epithets below the species names their rank; not that of a
// remark among them, and not where the table has a column of ranks.
func TestRankOfTheHeading(t *testing.T) {
	for _, tt := range []struct{ heading, epithet, more, want, said string }{
		{"var.", "alba", "", "Thymus capitellatus var. alba", ""},
		{"ssp", "alba", "", "Thymus capitellatus subsp. alba", ""},
		{"Variety", "subsp. alba", "", "Thymus capitellatus subsp. alba", ""},
		{"var", "", "", "Thymus capitellatus", ""},
		{"var", "yellow", "", "Thymus capitellatus yellow", "taxonRank"},
		{"var", "on sand", "", "Thymus capitellatus on sand", "infraspecificEpithet"},
		{"infraspecificEpithet", "alba", "", "Thymus capitellatus alba", "taxonRank"},
		{"var", "alba", "taxonRank", "Thymus capitellatus alba", "taxonRank"},
	} {
		src := strings.Join([]string{"genus", "species", tt.heading, tt.more}, ",") + "\n" + strings.Join([]string{"Thymus", "capitellatus", tt.epithet, ""}, ",") + "\n"
		contexts, fs := run(t, New(options(t)), openBytes(t, "trip.csv", []byte(src)))
		if got := contexts[0].Name; got != tt.want {
			t.Errorf("%s: %q, want %q", tt.heading, got, tt.want)
		}
		said := ""
		for _, f := range fs {
			if f.Rule == "name-columns" || f.Term == "taxonRank" || f.Term == "infraspecificEpithet" {
				said = f.Term
			}
		}
		if said != tt.said {
			t.Errorf("%s over %s: something is said of %q, want of %q", tt.heading, tt.epithet, said, tt.said)
		}
	}
}
