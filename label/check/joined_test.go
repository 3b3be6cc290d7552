package check

import (
	"strings"
	"testing"

	"cornerslip/label"
)

// TestJoinedWords: where a column has underscores for all its blanks, they are read
// as blanks, which is said once; beside blanks they are a slip.
func TestJoinedWords(t *testing.T) {
	for _, c := range []struct {
		cells, first string
		warned       bool
	}{
		{"Erica_arborea,Serra_da_Valdoura|Erica_cinerea,Covão_alto|Erica_sp.,Parada_bridge", "Erica arborea / Serra da Valdoura", false},
		{"Erica_arborea,VAL_A1|Erica cinerea,VAL_B1|Erica ciliaris,VAL_C2", "Erica_arborea / VAL_A1", true},
		{"Erica_arborea,Serra_da_Valdoura|Erica_cinerea,Covão_alto|Erica_ciliaris_,Parada_bridge", "Erica arborea / Serra da Valdoura", false},
	} {
		in := "species,locality\n" + strings.ReplaceAll(c.cells, "|", "\n") + "\n"
		records, findings := run(t, New(Options{Backlog: true}), openBytes(t, "t.csv", []byte(in)))
		if got := records[0].Text("scientificName") + " / " + records[0].Text("locality"); got != c.first {
			t.Errorf("%s: read as %s", c.cells, got)
		}
		warned := false
		for _, f := range findings {
			warned = warned || f.Rule == "name-form" && f.Severity >= label.Warning
		}
		if warned != c.warned {
			t.Errorf("%s: %v", c.cells, findings)
		}
	}
}
