package job

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label/table"
)

// mended mends bytes and returns them with the count of repairs.
func mended(t testing.TB, j *Job, name string, src []byte) ([]byte, int) {
	t.Helper()
	tab, err := table.Open(table.Bytes(name, src), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	edits, err := j.Repairs(&Table{Table: tab}, func(r Repair) error {
		if r.From == "" || r.To == "" || r.From == r.To {
			t.Errorf("%v fills or empties a cell, or changes nothing", r)
		}
		switch r.Term {
		case "geodeticDatum", "coordinateUncertaintyInMeters":
			if r.Rule != spacesOutside {
				t.Errorf("%v makes up a datum or an uncertainty", r)
			}
		}
		n++
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := j.Mend(&out, &Table{Table: tab}, edits, false); err != nil {
		t.Fatal(err)
	}
	return out.Bytes(), n
}

// TestMendTwice holds that a mended table has nothing left to mend, and that a
// table with nothing to mend stays the same bytes.
func TestMendTwice(t *testing.T) {
	j, err := Open(Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	ex := filepath.Join(outside.Root(t), "examples")
	for _, path := range []string{filepath.Join(ex, "trip.csv"), filepath.Join(ex, "trip-broken.csv"), outside.Shared(t, "real/taurus-plants.csv")} {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		once, n := mended(t, j, path, src)
		if n == 0 && !bytes.Equal(once, src) {
			t.Errorf("%s: nothing was repaired, but the bytes differ", path)
		}
		twice, m := mended(t, j, path, once)
		if m != 0 || !bytes.Equal(twice, once) {
			t.Errorf("%s: mended again %d cells change", path, m)
		}
		t.Logf("%s: %d repairs", path, n)
	}
}
