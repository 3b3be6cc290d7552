package coord

import (
	"cornerslip/label/lang"
	"errors"
)

// A Unit is what an elevation was measured in.
type Unit uint8

// The units.
const (
	Metres Unit = iota
	Feet        // of 0.3048 m
)

// An Elevation is a height above sea level or a range of heights, in the unit
// and as finely as it was written. Elevations compare with ==; the zero value
// is none.
type Elevation struct {
	// Low and High are thousandths of the unit; equal for a single height.
	Low, High int64
	Unit      Unit
	// Tolerance is what stood after ±, in thousandths of the unit.
	Tolerance int64
	// Circa says that the height was given as approximate.
	Circa  bool
	places int8 // decimals written
	set    bool
	bound  bound
}

// A bound says that a height is only a limit.
type bound uint8

const (
	exact bound = iota
	atLeast
	atMost
)

// ParseElevation reads an elevation as people write it: "1240-1260 m",
// "c. 4000 ft", "1200 ± 20 m", "sea level". A figure without a unit is
// ambiguous.
func ParseElevation(text string) (Elevation, Status, error) {
	return Elevation{}, Invalid, errors.New("not yet")
}

// IsZero reports whether e is no elevation at all; sea level is one.
func (e Elevation) IsZero() bool { return !e.set }

// InMetres returns the lowest and highest height in metres, exactly, as plain
// decimal numbers: 100 feet are "30.48". A tolerance widens them.
func (e Elevation) InMetres() (low, high string) { return "", "" }

// An ElevationStyle is how elevations are printed. The zero value keeps the
// unit that was written.
type ElevationStyle struct {
	// In converts to another unit; the figures are rounded as finely as
	// those written, and the word for "about" is added where rounding moved
	// them.
	In ElevationUnit
}

// An ElevationUnit is the unit to print in.
type ElevationUnit uint8

// The units to print in.
const (
	UnitAsWritten ElevationUnit = iota
	InMetresOnly
	InFeetOnly
	InBoth // as written, the other in brackets
)

// Format returns e as the language writes it: "1240–1260 m", "c. 4000 ft".
// A line must not break in it.
func (e Elevation) Format(s ElevationStyle, l lang.Tag) string { return "" }
