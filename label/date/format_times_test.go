package date

import "testing"

// A day that passed through a data base has no time; what somebody wrote has.
func TestMidnight(t *testing.T) {
	for text, want := range map[string]string{
		"2013-01-01T00:00:00.000+0000":              "1 January 2013",
		"2013-01-01T00:00:00Z":                      "1 January 2013",
		"2013-01-01T00:00Z":                         "1 January 2013",
		"2013-01-01T00:00:00-03:00":                 "1 January 2013, 00:00:00 UTC-03:00",
		"2013-01-01T00:00":                          "1 January 2013, 00:00",
		"2013-01-01T14:30:00":                       "1 January 2013, 14:30:00",
		"2013-01-01T00:00:00Z/2013-01-03T00:00:00Z": "1–3 January 2013",
		"2013-01-01T00:00:00/2013-01-03T06:00:00":   "1 January 2013, 00:00:00 – 3 January 2013, 06:00:00",
	} {
		if got := Read(text, Hints{}).Date.Format(Style{Time: true}, "en"); got != want {
			t.Errorf("%s: %q, not %q", text, got, want)
		}
	}
}
