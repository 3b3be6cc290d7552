package trade

import (
	"fmt"
	"strings"
	"testing"
)

// Texts that break off, and stops that stand alone at their end.
func TestEndsShort(t *testing.T) {
	for _, tt := range []struct{ term, text, want string }{
		{"locality", "Valdoura, estrada próx. à", "text-cut: ends with the word à, behind which something is missing: look up how it ends []"},
		{"locality", "Valdoura, north of", "text-cut: ends with the word of, behind which something is missing: look up how it ends []"},
		{"habitat", "on igneous rocks and sandstone, de", "text-cut: ends with the word de, behind which something is missing: look up how it ends []"},
		{"locality", "Valdoura, ribeira, próx.", "text-cut: ends with the word próx., behind which something is missing: look up how it ends []"},
		{"locality", "Valdoura, ribeira, .", `punctuation-doubled: ", ." stands where one sign is meant [Valdoura, ribeira.]`},
		{"habitat", "open pine wood .", "spaces: a blank stands before the full stop [open pine wood.]"},
		{"habitat", "Open pine wood, the stream we camped on", ""},
		{"plantDescription", "Shoot tip woolly; flowers just over", ""},
		{"plantDescription", "folhas com pelos", ""},
		{"plantDescription", "hojas de dos en dos", ""},
		{"occurrenceRemarks", "det. Oliveira, A. de", ""},
		{"recordedBy", "Costa, R. da", ""},
		{"locality", "Valdoura, dunes at La", ""},
		{"locality", "Valdoura ... .", ""},
		{"locality", "Valdoura, 2 km NE of", ""},
		{"locality", "Valdoura, ca. 3.5 km north of", ""},
		{"locality", "Valdoura, W of", ""},
		{"locality", "Valdoura, on the road north of", "text-cut: ends with the word of, behind which something is missing: look up how it ends []"},
		{"locality", "Valdoura, km 5, . 3 W of it", ""},
	} {
		_, fs := run(t, open(t, rows([]string{tt.term, tt.text})...), options(t))
		var got []string
		for _, f := range fs {
			if f.Rule == "text-cut" || f.Rule == "spaces" || strings.HasPrefix(f.Rule, "punctuation") {
				got = append(got, fmt.Sprintf("%s: %s [%s]", f.Rule, f.Message, f.Suggest))
			}
		}
		if strings.Join(got, "; ") != tt.want {
			t.Errorf("%s %q: %q", tt.term, tt.text, got)
		}
	}
}
