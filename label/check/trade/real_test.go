package trade

import (
	"os"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label/check"
	"cornerslip/label/table"
)

func TestShow(t *testing.T) {
	for _, f := range []string{outside.Shared(t, "real/taurus-plants.csv"), outside.Root(t) + "/examples/trip.csv", outside.Root(t) + "/examples/trip-broken.csv"} {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		basic := map[string]bool{}
		for _, r := range check.Basic() {
			basic[r.Name] = true
		}
		for _, r := range table.Rules() {
			basic[r.Name] = true
		}
		_, fs := run(t, openBytes(t, f[strings.LastIndex(f, "/")+1:], src), options(t))
		n := map[string]int{}
		for _, f := range fs {
			if !basic[f.Rule] {
				n[f.Rule]++
				t.Log(f.Severity, f.Rule, f, len(f.Also))
			}
		}
		t.Log(n)
	}
}
