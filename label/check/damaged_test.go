package check_test

import (
	"testing"

	"cornerslip/label/check"
	"cornerslip/label/check/trade"
	"cornerslip/label/table"
)

// A cell whose letters are damaged has one finding: what other rules would say
// of it follows from the damage. Its neighbours are judged as ever.
func TestDamagedCellOnce(t *testing.T) {
	tab, err := table.Open(table.Bytes("t.csv", []byte("recordedBy,recordNumber,eventDate,country,locality,habitat,decimalLatitude,decimalLongitude,geodeticDatum\n"+
		"I. Almeida,1,2026-06-02,Portugal,SÃ£o  Bento , oak  wood,41Â°42',-8.15,WGS84\n")), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	e := check.New(check.Options{Rules: trade.Rules()})
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		_, findings := e.Row(row)
		count := map[string]int{}
		for _, f := range findings {
			count[f.Term]++
			if (f.Term == "locality" || f.Term == "decimalLatitude" || f.Term == "verbatimLatitude") && f.Rule != "text-mojibake" {
				t.Errorf("%v", f)
			}
		}
		if count["locality"] != 1 || count["habitat"] == 0 {
			t.Errorf("%v", findings)
		}
	}
}
