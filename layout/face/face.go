// Package face measures, kerns and shapes text. It turns words into
// layout.Text marks in which every letter has its place, so that no backend
// has to measure again.
//
// Shaping is HarfBuzz's, in the font's own units; lengths on paper are made
// once per position, by whole numbers, so that they are equal on every machine
// and nothing drifts along a line.
package face

import (
	"cornerslip/fonts"
	"cornerslip/layout"
)

// A Setter shapes words in the faces of one set. It may be used from many
// goroutines; it keeps what it has shaped, within bounds, and a word is the
// same whether it was kept or not.
type Setter struct {
	set *fonts.Set
}

// Metrics are the vertical measures of a style at a size; all are positive.
type Metrics struct {
	Ascent, Descent    layout.Length // what the designer set aside above and below the baseline
	CapHeight, XHeight layout.Length // the heights of H and x
}

// A Word is text shaped in one style. It does not change.
type Word struct {
	text string
}
