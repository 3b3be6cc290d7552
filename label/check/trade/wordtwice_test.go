package trade

import "testing"

func TestWordTwice(t *testing.T) {
	for text, want := range map[string]string{
		"north of the easternmost corner corner of the lake": "north of the easternmost corner of the lake",
		"a margem de de um ribeiro":                          "a margem de um ribeiro",
		"on  the the slope":                                  "on  the slope",
		"by the  the mill":                                   "by the mill",
		"in a wood, along along the track":                   "in a wood, along the track",
		"meadow with with Thymus":                            "meadow with Thymus",
		"the the mill":                                       "the mill",
		"bei dem Bach am am":                                 "bei dem Bach am",
		// Names, ranks and words that are said twice.
		"with Elymus glaucus glaucus":          "",
		"with E. glaucus glaucus":              "",
		"with Elymus cf. glaucus glaucus":      "",
		"with Elymus glaucus ssp glaucus":      "",
		"Elymus  glaucus  glaucus":             "",
		"Walla Walla, near the river":          "",
		"behind bora bora, pili pili":          "",
		"grassland of alang alang":             "",
		"very very steep, muito muito ingreme": "",
		"we had had it; die die":               "",
		"12 12 m; a a":                         "",
		"the then dry river, corner-corner":    "",
		"the the-old mill":                     "",
		"":                                     "",
		" ":                                    "",
		"corner corner's":                      "",
	} {
		from, to := wordTwice(text)
		got := ""
		if to > 0 {
			got = text[:from] + text[to:]
		}
		if got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// TestWorkingWithin: todo is a word in Spanish and Portuguese, and the end of others.
func TestWorkingWithin(t *testing.T) {
	for text, want := range map[string]bool{
		"Dunes TODO check": true, "Dunes (TODO)": true, "Dunes, XXX m": true,
		"MÉTODO: VARREDURA": false, "TODO O VALE": false, "área toda, todo o vale": false, "Vale Método": false, "TODO-O-TERRENO club": false,
	} {
		if got := holdsWorking(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
