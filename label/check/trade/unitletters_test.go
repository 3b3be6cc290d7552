package trade

import "testing"

func TestLetterFigure(t *testing.T) {
	for text, want := range map[string]string{
		"l mi. NW of the mill": "l", "by the mill, l km W": "l", "(l m high)": "l", "1O km W": "1O", "l0 km W": "l0", "3OO ft above": "3OO", "ca. 1l m": "1l", "height l.5 m": "l.5", "tree 1O.5 m": "1O.5",
		"O m. do rio": "", "I km W": "", "sector I km 5": "", "l'mi": "", "100 l water": "", "10 l m3": "", "10l km2": "", "km 5": "", "": "", "l": "", "l ": "", "l m'": "", "vol km": "", "no. l mile-post": "",
		"10 km W, 20 m": "", "Ol m": "", "l\u00a0km": "",
	} {
		from, to := letterFigure(text)
		if got := text[from:to]; got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestWorldParts(t *testing.T) {
	for text, want := range map[string]bool{
		"South America": true, "SOUTH AMERICA": true, "américa del sur": true, "Caribbean": true, "West Indies": true, "Europe": true,
		"South Africa": false, "Micronesia": false, "Antarctica": false, "British West Indies": false, "Oceania district": false, "Asi": false, "": false, "a very long name of a place that is": false,
	} {
		if isWorldPart(text) != want {
			t.Errorf("%q: not %v", text, want)
		}
	}
	for part := range worldParts {
		if len(part) > longestPart || !isWorldPart(part) {
			t.Errorf("%q is not found", part)
		}
	}
}
