package trade

import "testing"

// Of two spellings of a person's epithet the one in full is not told to be shortened.
func TestFullGenitive(t *testing.T) {
	for _, tt := range []struct {
		rare, common, want string
	}{
		{"Entodon jamesonii", "Entodon jamesoni", ""},
		{"Entodon jamesoni", "Entodon jamesonii", "Entodon jamesonii"},
		{"Salix fraserii", "Salix fraseri", "Salix fraseri"},
	} {
		table := [][]string{{"scientificName", tt.rare, "scientificNameAuthorship", ""}}
		for i := range 6 {
			table = append(table, []string{"scientificName", tt.common, "scientificNameAuthorship", "", "recordNumber", itoa(215 + i)})
		}
		_, fs := run(t, open(t, rows(table...)...), options(t))
		found := false
		for _, f := range fs {
			if f.Rule == "name-spelling" {
				if found = true; f.Suggest != tt.want {
					t.Errorf("%s beside %s: %q", tt.rare, tt.common, f.Suggest)
				}
			}
		}
		if !found {
			t.Errorf("nothing is said of %s beside %s: %v", tt.rare, tt.common, fs)
		}
	}
}
