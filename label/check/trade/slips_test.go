package trade

import "testing"

// Words of Latin that are a letter or two apart and mean something else, and
// words that are none.
func TestMeaningful(t *testing.T) {
	for _, c := range []struct {
		a, b string
		two  bool
	}{
		{"rupestris", "alpestris", true}, {"leptocarpus", "leucocarpus", true}, {"pachycarpa", "brachycarpa", true}, {"montanus", "fontanus", true},
		{"pauciflorum", "parviflorum", true}, {"macropetala", "macrosepala", true}, {"rubescens", "rufescens", true}, {"lasiocarpa", "leiocarpa", true},
		{"capitellatus", "capitelatus", false}, {"rupestris", "rupestrsi", false}, {"angustifolia", "augustifolia", false}, {"sylvestris", "silvestris", false}, {"alpestris", "alpestrus", false},
	} {
		if got := meaningful(c.a, c.b); got != c.two {
			t.Errorf("%s and %s: two words %v", c.a, c.b, got)
		}
	}
}

// An epithet below the species that is a word of its own is not its species',
// misspelt.
func TestAlmostAutonyms(t *testing.T) {
	for name, said := range map[string]int{
		"Andreaea rupestris Hedw. var. alpestris (Thed.) Sharp": 0,
		"Andreaea rupestris Hedw. var. rupestirs":               1,
		"Cardamine pauciflora Phil. var. parviflora Phil.":      0,
	} {
		n := 0
		_, fs := run(t, open(t, rows([]string{"scientificName", name}, []string{"recordNumber", "215"})...), options(t))
		for _, f := range fs {
			if f.Rule == "name-spelling" {
				n++
			}
		}
		if n != said {
			t.Errorf("%s: %d findings", name, n)
		}
	}
}
