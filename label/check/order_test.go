package check

import (
	"cmp"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/label"
)

// TestOrder: findings in the order of their columns, as a plain stable sort has
// them, however many.
func TestOrder(t *testing.T) {
	c := &Context{Record: &Record{}, past: &past{}}
	rapid.Check(t, func(t *rapid.T) {
		columns := rapid.SliceOfN(rapid.IntRange(0, 9), 0, 40).Draw(t, "columns")
		c.said = nil
		for i, n := range columns {
			c.said = append(c.said, label.Finding{Origin: label.Origin{Column: n}, Message: fmt.Sprint(i)})
		}
		want := slices.Clone(c.said)
		slices.SortStableFunc(want, func(a, b label.Finding) int { return cmp.Compare(a.Column, b.Column) })
		c.order()
		for i := range want {
			if c.said[i].Message != want[i].Message {
				t.Fatalf("at %d stands %v, not %v", i, c.said[i], want[i])
			}
		}
	})
}
