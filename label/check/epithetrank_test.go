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
		{"Unterart", "alba", "", "Thymus capitellatus subsp. alba", ""},
		{"Variedade", "alba", "", "Thymus capitellatus var. alba", ""},
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

// A column of epithets whose heading says their rank completes the species' name
// beside it, with its author or without; not another name, nor for a heading that says no rank.
func TestNameOfSpeciesAndSubspecies(t *testing.T) {
	for _, tt := range []struct{ name, heading, epithet, want, said string }{
		{"Thymus capitellatus", "subspecies", "alba", "Thymus capitellatus subsp. alba", ""},
		{"Thymus capitellatus Hoffmanns. & Link", "var.", "alba", "Thymus capitellatus Hoffmanns. & Link var. alba", ""},
		{"Thymus capitellatus", "subspecies", "var. alba", "Thymus capitellatus var. alba", ""},
		{"Thymus capitellatus subsp. alba", "subspecies", "alba", "Thymus capitellatus subsp. alba", ""},
		{"Thymus capitellatus subsp. nigra", "subspecies", "alba", "Thymus capitellatus subsp. nigra", "infraspecificEpithet"},
		{"Thymus sp.", "subspecies", "alba", "Thymus sp.", "infraspecificEpithet"},
		{"Thymus capitellatus", "infraspecificEpithet", "alba", "Thymus capitellatus", "infraspecificEpithet"},
	} {
		src := "species," + tt.heading + "\n" + tt.name + "," + tt.epithet + "\n"
		records, fs := run(t, New(options(t)), openBytes(t, "trip.csv", []byte(src)))
		if got := records[0].Name; got != tt.want {
			t.Errorf("%s and %s %s: %q, want %q", tt.name, tt.heading, tt.epithet, got, tt.want)
		}
		said := ""
		for _, f := range fs {
			if f.Term == "taxonRank" || f.Term == "infraspecificEpithet" {
				said = f.Term
			}
		}
		if said != tt.said {
			t.Errorf("%s and %s %s: something is said of %q, want of %q", tt.name, tt.heading, tt.epithet, said, tt.said)
		}
	}
}
