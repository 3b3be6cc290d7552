package form

import (
	"strings"
	"testing"
)

// TestDownloads: what the labels of records from elsewhere say. The columns are
// filled as in downloads of networks of herbaria; common practice, no source.
func TestDownloads(t *testing.T) {
	base := func(more ...string) []string {
		return append([]string{"recordedBy", "I. Almeida", "recordNumber", "214", "eventDate", "2026-05-14", "scientificName", "Cistus ladanifer L."}, more...)
	}
	for _, c := range []struct {
		code string // of the house
		with []string
		want string // a line of the label, or a part of it
		not  string
	}{
		{"", []string{"institutionCode", "Universidade de Valdoura (UVD)", "collectionCode", "VDOURA", "catalogNumber", "92490"}, "VDOURA 92490", "Universidade"},
		{"", []string{"institutionCode", "UVD", "collectionCode", "VDOURA", "catalogNumber", "92490"}, "UVD VDOURA 92490", ""},
		{"", []string{"institutionCode", "VDOURA", "collectionCode", "VDOURA", "catalogNumber", "92490"}, "VDOURA 92490", "VDOURA VDOURA"},
		{"", []string{"institutionCode", "VDOURA", "collectionCode", "Vascular plants", "catalogNumber", "92490"}, "VDOURA 92490", "plants"},
		{"", []string{"collectionCode", "VDOURA", "catalogNumber", "92490"}, "VDOURA 92490", ""},
		{"VDOURA", []string{"institutionCode", "VDOURA", "collectionCode", "ALGA", "catalogNumber", "92490"}, "VDOURA 92490", "ALGA"},
		{"", []string{"institutionCode", "VDOURA", "collectionCode", "ALGA", "catalogNumber", "VDOURA0092490"}, "VDOURA0092490", "ALGA"},
		{"", []string{"institutionCode", "UVD", "collectionCode", "VDOURA", "catalogNumber", "VDOURA 92490"}, "VDOURA 92490", "UVD"},
		{"VDOURA", []string{"collectionCode", "ALGA", "catalogNumber", "VDOURA0092490"}, "VDOURA0092490", "ALGA"},
		{"", []string{"institutionCode", "VDOURA", "catalogNumber", "s.n."}, "", "VDOURA"},
		{"", []string{"country", "MEXICO", "stateProvince", "MEXICO", "county", "TEMASCALTEPEC"}, "MEXICO. MEXICO: TEMASCALTEPEC", ""},
		{"", []string{"country", "Guatemala", "stateProvince", "Guatemala", "locality", "Mixco"}, "Guatemala. Guatemala: Mixco", ""},
		{"", []string{"country", "Portugal", "stateProvince", "Portugal", "locality", "Caldeirão"}, "Portugal. Portugal: Caldeirão", ""},
		{"", []string{"preparations", "sheet | botanical fragment"}, "also botanical fragment", "with"},
		{"", []string{"country", "Portugal", "island", "Corvo", "municipality", "Corvo", "locality", "Caldeirão"}, "Corvo, Caldeirão", "Corvo, Corvo"},
		{"", []string{"county", "Gulf Islands", "islandGroup", "Gulf Islands", "island", "Prevost Island", "locality", "Prevost Island"}, "Gulf Islands, Prevost Island.", "Prevost Island, "},
		{"", []string{"recordedBy", `"Almeida, I.; et al."`}, "Almeida, I. et al.", `"`},
	} {
		pairs := base(c.with...)
		if c.with[0] == "recordedBy" {
			pairs = pairs[2:]
		}
		got := strings.NewReplacer("_", " ", "*", "").Replace(dump(Sheet(record(t, pairs...), Options{Code: c.code})[0]))
		if !strings.Contains(got, c.want) || c.not != "" && strings.Contains(got, c.not) {
			t.Errorf("%q:\n%s", c.with, got)
		}
	}
}
