package trade

import "testing"

// A collector's number that is the sheet's, and what may well be the collector's.
func TestSheetNumber(t *testing.T) {
	for _, tt := range []struct {
		number, sheet, house string
		want                 bool
	}{
		{"VDOURA48461", "48461", "VDOURA", true},
		{"VDOURA 48461", "48461", "Coleção Botânica, Valdoura (VDOURA)", true},
		{"48461", "48461", "VDOURA", false},
		{"IA48461", "48461", "VDOURA", false},
		{"VDOURA48462", "48461", "VDOURA", false},
		{"VDOURA12", "12", "VDOURA", false},
		{"VDOURA48461", "", "VDOURA", false},
	} {
		_, fs := run(t, open(t, rows([]string{"recordNumber", tt.number, "catalogNumber", tt.sheet, "collectionCode", tt.house, "institutionCode", ""})...), options(t))
		got := false
		for _, f := range fs {
			got = got || f.Rule == "number-of-sheet"
		}
		if got != tt.want {
			t.Errorf("%q, sheet %q of %q: %v", tt.number, tt.sheet, tt.house, got)
		}
	}
}
