package trade

import (
	"strings"
	"testing"
)

// In a small table two records are enough against one, if the words are long and
// differ in one letter.
func TestFewRecords(t *testing.T) {
	for _, tt := range []struct {
		names string // parted by "|"
		want  string // what is said of which
	}{
		{"Ulvaria obscura|Ulvaria obscura|Ulvaria obscrua", "Ulvaria obscrua"},
		{"Fallopia japonica|Fallopia japonica|Fallopia japanica", "Fallopia japanica"},
		{"Arbutus menziesii Pursh|Arbutus menziesii Pursh|Arbutus menzieseii Pursh", "Arbutus menzieseii Pursh"},
		{"Lysichiton americanus|Lysichiton americanus|Lysichiton americanum", "Lysichiton americanum"},
		{"Lavandula stoechas|Lavandula stoechas|Lavendula stoechas", "Lavendula stoechas"},
		{"Ulvaria obscura|Ulvaria obscrua", ""},
		{"Ulvaria obscura|Ulvaria obscura|Ulvaria obscrua|Ulvaria obscrua", ""},
		{"Potentilla recta|Potentilla recta|Potentilla erecta", ""},
		{"Galium verum|Galium verum|Galium vernum", ""},
		{"Euphorbia peplus|Euphorbia peplus|Euphorbia peplis", ""},
		{"Eucalyptus macrocarpa|Eucalyptus macrocarpa|Eucalyptus microcarpa", ""},
		{"Hedera canariensis|Hedera canariensis|Hedera canadensis", ""},
		{"Salvia pratensis L.|Salvia pratensis L.|Salvia prattensis Mill.", ""},
		{"Vicia villosa|Vicia villosa|Vicia hirsuta", ""},
	} {
		var changes [][]string
		for i, n := range strings.Split(tt.names, "|") {
			changes = append(changes, []string{"recordNumber", itoa(214 + i), "scientificName", n, "family", ""})
		}
		_, fs := run(t, open(t, rows(changes...)...), options(t))
		got := ""
		for _, f := range fs {
			if f.Rule == "name-spelling" {
				got += f.Value
			}
		}
		if got != tt.want {
			t.Errorf("%s: %q, not %q", tt.names, got, tt.want)
		}
	}
}
