package trade

import (
	"strings"
	"testing"
)

func TestApostrophes(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Sant`Ana do Campo", "Sant'Ana do Campo"}, {"Lagoa d´Ouro", "Lagoa d'Ouro"}, {"O`Brien Creek", "O'Brien Creek"}, {"Serra Dell`Acqua, near Sant´Ana", "Serra Dell'Acqua, near Sant'Ana"},
		{"Hawai`i", ""}, {"O`ahu", ""}, {"O`zbekiston", ""}, {"Sana`a", ""}, {"Wadi al `Ayn", ""}, {"Khmel`nyts`kyi", ""}, {"38° 12´ N", ""}, {"12´E", ""}, {"Sant'Ana", ""}, {"d´or", ""},
	} {
		got := ""
		_, found := run(t, open(t, one("locality", tt.text)...), options(t))
		for _, f := range found {
			if f.Rule == "apostrophe-accent" {
				got = f.Suggest
			}
		}
		if got != tt.want {
			t.Errorf("%q: %q, not %q", tt.text, got, tt.want)
		}
	}
	_, found := run(t, open(t, one("scientificName", "Thymus camphoratus L`Hér.", "scientificNameAuthorship", "")...), options(t))
	for _, f := range found {
		if f.Rule == "apostrophe-accent" && strings.HasSuffix(f.Suggest, "L'Hér.") {
			return
		}
	}
	t.Error("the author is not told", found)
}
