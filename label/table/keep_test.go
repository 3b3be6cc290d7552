package table

import (
	"reflect"
	"strings"
	"testing"
)

// A row that was kept is the row that was read: cells with their places,
// findings, and what the columns mean in it.
func TestRestore(t *testing.T) {
	const text = "catalogNumber,lat,locality\n" +
		"V-1,40.5,\"Serra, \"\"Alta\"\"\n second line\"\n" +
		"V-2,40° N,Ribeira do Cˆrvo\x85\n" + // a control character: a finding
		"V-3\n" + // ragged
		",,\n" +
		"V-5,1,Penha d'Águia \"x\n"
	tab, err := Open(Bytes("trip.csv", []byte(text)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	rows, findings := 0, 0
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		kept := row.Append([]byte{7})
		back, err := tab.Restore(kept[1:])
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(back, row) {
			t.Errorf("row %d comes back as\n%+v, was\n%+v", row.N, back, row)
		}
		for _, term := range []string{"decimalLatitude", "verbatimLatitude", "locality", "country"} {
			if back.Get(term) != row.Get(term) || back.Origin(term) != row.Origin(term) {
				t.Errorf("row %d: %s is another", row.N, term)
			}
		}
		for cut := range len(kept) - 1 {
			if _, err := tab.Restore(kept[1 : 1+cut]); err == nil {
				t.Errorf("row %d cut off after %d bytes passes for whole", row.N, cut)
			}
		}
		rows++
		findings += len(row.Findings)
	}
	if rows != 5 || findings < 3 {
		t.Errorf("%d rows with %d findings", rows, findings)
	}
}

func FuzzRestore(f *testing.F) {
	tab, err := Open(Bytes("trip.csv", []byte("catalogNumber,locality\nV-1,Penha\nV-2\n")), Options{})
	if err != nil {
		f.Fatal(err)
	}
	for row, err := range tab.Rows() {
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(row.Append(nil)))
	}
	f.Fuzz(func(t *testing.T, kept string) {
		row, err := tab.Restore([]byte(kept))
		if err != nil {
			return
		}
		again, err := tab.Restore(row.Append(nil))
		if err != nil || !reflect.DeepEqual(again, row) {
			t.Errorf("%q: %+v, then %+v, %v", strings.ToValidUTF8(kept, "?"), row, again, err)
		}
	})
}
