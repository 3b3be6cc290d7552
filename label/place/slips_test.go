package place

import (
	"os"
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/language/display"
)

// The names are those of Unicode CLDR as golang.org/x/text has it; UPDATE=1 writes
// them anew.
func TestCountrySlipsOfCLDR(t *testing.T) {
	var b strings.Builder
	written := map[string]bool{}
	for _, l := range strings.Fields(otherLanguages) {
		names := display.Regions(language.MustParse(l))
		if names == nil {
			t.Errorf("no names in %s", l)
			continue
		}
		for _, c := range Countries() {
			if name := names.Name(language.MustParseRegion(c.Code)); nearCountry(name) != "" && !written[squeeze(name)] {
				written[squeeze(name)] = true
				b.WriteString(name + "\n")
			}
		}
	}
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile("country_slips.txt", []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if b.String() != namesLikeSlips {
		t.Error("country_slips.txt is not what x/text gives: UPDATE=1 writes it anew")
	}
}

func TestCountrySlip(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Germny", "Germany"}, {"Protugal", "Portugal"}, {"MEXCIO", "MEXICO"}, {"Brazl", "Brazil"}, {"United Sates", "United States"}, {"Untied States", "United States"}, {"Colmbia", "Colombia"},
		{"Austrlia", ""}, {"Austrailia", "Australia"}, {"Espanha", ""}, {"Espagne", ""}, {"Brazili", "Brazil"}, {"Deutchland", "Deutschland"}, {"Equador", ""}, {"Argentinien", ""}, {"Phillipines", ""}, {"Phillippines", "Philippines"},
		{"Navassa Island", ""}, {"Atlantis", ""}, {"Samos", ""}, {"Styria", ""}, {"Guiana", ""}, {"Servia", ""}, {"Sumatra", ""}, {"Indian", ""}, {"Granada", ""}, {"Switserland", ""}, {"Peru 2", ""}, {"Virginia", ""}, {"Indonesie n.p.", ""}, {"", ""},
	} {
		if got := CountrySlip(tt.text); got != tt.want {
			t.Errorf("%q: %q, not %q", tt.text, got, tt.want)
		}
	}
}
