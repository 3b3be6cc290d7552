package lang

import (
	"slices"
	"testing"
)

func TestFindCompass(t *testing.T) {
	for _, c := range []struct {
		word string
		tag  Tag
		want []Compass
	}{
		{"N", "", []Compass{North}},
		{"s.", "", []Compass{South}},
		{"Oeste", "", []Compass{West}},
		{"Ouest", "", []Compass{West}},
		{"ovest", "", []Compass{West}},
		{"Ost", "", []Compass{East}},
		{"leste", "", []Compass{East}},
		{"L", "", []Compass{East}},
		{"Süd", "", []Compass{South}},
		{"südl.", "", []Compass{South}},
		{"Norte", "", []Compass{North}},
		{"北緯", "", []Compass{North}},
		{"西经", "", []Compass{West}},
		{"O", "", []Compass{East, West}},
		{"O", Portuguese, []Compass{West}},
		{"O", Spanish, []Compass{West}},
		{"O", German, []Compass{East}},
		{"O", Dutch, []Compass{East}},
		{"V", Swedish, []Compass{West}},
		{"V", Czech, []Compass{East}},
		{"S", Czech, []Compass{North}}, // sever
		{"W", Polish, []Compass{East}}, // wschód
		{"W", "", []Compass{West}},
		{"X", "", nil},
		{"", "", nil},
		{"house", "", nil},
	} {
		if got := FindCompass(c.word, c.tag); !slices.Equal(got, c.want) {
			t.Errorf("%q in %q: %q, want %q", c.word, c.tag, got, c.want)
		}
	}
}

// What is written must be read again by those who know the language.
func TestCompassRoundTrip(t *testing.T) {
	for _, l := range Tags() {
		for _, p := range []Compass{North, East, South, West} {
			words := []string{Letter(l, p), CompassWord(l, p)}
			if h := Hemisphere(l, p); h != "" {
				words = append(words, h)
			}
			for _, w := range words {
				if got := FindCompass(w, l); !slices.Equal(got, []Compass{p}) {
					t.Errorf("%s: %q is read as %q, want %c", l, w, got, p)
				}
			}
		}
		if FindAxis(Latitude(l)) != 'N' || FindAxis(Longitude(l)) != 'E' {
			t.Errorf("%s: %q and %q", l, Latitude(l), Longitude(l))
		}
	}
	if Letter(English, 'X') != "" || Letter("xx", West) != "W" || Letter(German, East) != "O" || Letter(Portuguese, West) != "O" {
		t.Error("letters")
	}
}
