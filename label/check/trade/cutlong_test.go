package trade

import (
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
)

// Texts that all end within a sentence at one length were cut off, whatever the length.
func TestTextsCutAtOneLength(t *testing.T) {
	words := strings.Repeat("dunes and slopes above the stream with old oaks and heath ", 4)
	at := func(n int, ending string) (all []string) {
		for i := range 5 {
			text := words[i*3:]
			all = append(all, strings.TrimSpace(text[:n-len(ending)])+ending)
		}
		return all
	}
	for _, tt := range []struct {
		name  string
		texts []string
		told  bool
	}{
		{"cut at 150", at(150, "ab"), true},
		{"sentences", at(150, "a."), false},
		{"one longer", append(at(150, "ab"), words+"with heath"), false},
		{"too short", at(50, "ab"), false},
		{"too few", at(150, "ab")[:3], false},
		{"the same text", slices.Repeat(at(150, "ab")[:1], 6), false},
	} {
		var all [][]string
		for i, text := range tt.texts {
			for len(text) > 0 && len(text) < 50 {
				text += "a"
			}
			all = append(all, []string{"habitat", text, "recordNumber", itoa(214 + i)})
		}
		_, found := run(t, open(t, rows(all...)...), options(t))
		told := slices.ContainsFunc(found, func(f label.Finding) bool {
			return f.Rule == "text-cut" && strings.Contains(f.Message, "texts of the column")
		})
		if told != tt.told {
			t.Errorf("%s: told %t", tt.name, told)
		}
	}
}
