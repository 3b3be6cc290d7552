package trade

import "testing"

// What is left of a program's decimals: 35.2333 times 60 is 2114.0 minutes again, a
// metre is the fifth decimal (Georeferencing Best Practices, table 3).
func TestTooFine(t *testing.T) {
	for _, c := range []struct {
		degrees, uncertainty float64
		why, suggest         string
	}{
		{35.2333333333333, 0, "they are 35°14′", "35.2333"},
		{-35.2333333333333, 5000, "they are 35°14′", "-35.2333"},
		{-0.0166666666667, 0, "they are 0°1′", "-0.0167"},
		{8.8036111111111, 0, "they are 8°48′13″", "8.80361"},
		{38.471200000000003, 0, "five say a metre", "38.4712"},
		{38.50000000001, 0, "five say a metre", "38.50"},
		{38.471234567891, 0, "five say a metre", "38.47123"},
		{38.471234567891, 30, "five say a metre", "38.47123"},
		{38.471234567891, 150, "the uncertainty is 150 m", "38.4712"},
		{38.471234567891, 5000, "the uncertainty is 5000 m", "38.471"},
	} {
		if why, suggest := tooFine(c.degrees, c.uncertainty); why != c.why || suggest != c.suggest {
			t.Errorf("%v ±%v: %s, %s", c.degrees, c.uncertainty, why, suggest)
		}
	}
}
