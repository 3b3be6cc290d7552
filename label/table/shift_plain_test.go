package table

import (
	"testing"

	"pgregory.net/rapid"
)

// TestPlainly: what is told in little time is what fit tells.
func TestPlainly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(
			rapid.StringMatching(`-?[0-9]{0,4}[.,]?[0-9]{0,4}°?`),
			rapid.StringMatching(`[0-9]{3,4}-[0-9x]{2}-[0-9]{2}`),
			rapid.StringMatching(`[A-Z][a-z]{2,30}( [a-z0-9]{2,20}){0,4}[ae]?`),
			rapid.SampledFrom([]string{"", " ", "-", ".", "1.", "12 May 1999", "Fabaceae", "aceae", "Xaceae", "Fab aceae", "Leguminosae (Papilionoideae and much more of it here)", "Compositae"}),
		).Draw(t, "text")
		for main := range kinds {
			p := &profile{main: main}
			if _, hard := p.fit(text); hard && p.plainly(text) {
				t.Fatalf("%q is plainly of kind %d, and does not fit", text, main)
			}
		}
	})
}
