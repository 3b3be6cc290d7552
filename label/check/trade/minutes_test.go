package trade

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"

	"cornerslip/label/check"
)

// Tables of some sites, scattered over some degrees at random, are never
// called minutes; tables of minutes are, where there are sites enough to tell.
func TestMinutesTables(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 5))
	decimal := func(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
	minutes := func(v float64) string {
		m := int(v * 60)
		return fmt.Sprintf("%d.%02d", m/60, m%60)
	}
	for _, tt := range []struct {
		sites int
		wide  float64 // degrees
		least int     // of 200 tables
	}{
		{3, 0.5, 0}, {5, 2, 0}, {5, 10, 0}, {12, 1, 0}, {12, 4, 0}, {15, 25, 100}, {25, 25, 195}, {40, 1, 0}, {40, 4, 150}, {40, 12, 195}, {150, 0.5, 0}, {150, 2, 100}, {150, 8, 200},
	} {
		var called [2]int
		for range 200 {
			var tables [2]minutesTable
			lat, lon := rnd.Float64()*30, rnd.Float64()*50
			for range tt.sites {
				a, b := lat+rnd.Float64()*tt.wide, lon+rnd.Float64()*tt.wide
				for i, write := range []func(float64) string{decimal, minutes} {
					tables[i].take(check.Field{Text: write(a)}, 0)
					tables[i].take(check.Field{Text: write(b)}, 1)
				}
			}
			for i := range tables {
				if tables[i].End() != nil {
					called[i]++
				}
			}
		}
		if called[0] > 0 || called[1] < tt.least {
			t.Errorf("%d sites over %v degrees: %d of 200 tables of decimals called minutes, %d of minutes, not %d", tt.sites, tt.wide, called[0], called[1], tt.least)
		}
		t.Logf("%d sites over %v degrees: %d, %d of 200", tt.sites, tt.wide, called[0], called[1])
	}
}
