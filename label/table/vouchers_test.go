package table

import (
	"strings"
	"testing"
)

// Herbaria behind collector and number are not printed, which is said; the number of
// a sheet is read.
func TestCodesBehind(t *testing.T) {
	for text, want := range map[string]string{
		"Voucher,species\nAlmeida 214 (VDOURA),Erica arborea\nAlmeida 215 (VDOURA; PINHEL),Erica cinerea\n": `as in "(VDOURA)"`,
		"Voucher,species\nAlmeida 214 (VDOURA 0012345),Erica arborea\nAlmeida 215,Erica cinerea\n":          "",
		"Voucher,species\nAlmeida 214,Erica arborea\nAlmeida 215,Erica cinerea\n":                           "",
	} {
		tab, err := Open(Bytes("t.csv", []byte(text)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, f := range tab.Findings() {
			said += f.Message
		}
		if want == "" && said != "" || !strings.Contains(said, want) {
			t.Errorf("%q: %q", text, said)
		}
	}
}
