package place

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/language/display"
)

// languagesOfNames are those that country_names.txt has names in, besides the
// ones of countryTable.
const languagesOfNames = "it nl sv da no fi is pl cs sk hu ro ru uk bg hr sr sl el tr ca gl eu et lv lt id vi ja zh ko ar"

// The names are those of Unicode CLDR as golang.org/x/text has it; UPDATE=1
// writes them anew. A name that the other tables know, or that two countries
// share, is left out.
func TestCountryNamesOfCLDR(t *testing.T) {
	type entry struct{ code, name string }
	var all []entry
	meant := map[string]string{} // by squeezed name
	for _, l := range strings.Fields(languagesOfNames) {
		names := display.Regions(language.MustParse(l))
		for _, c := range Countries() {
			name := names.Name(language.MustParseRegion(c.Code))
			k := squeeze(name)
			if k == "" || strings.ContainsAny(name, "|\n") || lands()[k] != nil {
				continue
			}
			if _, known := countries().names[k]; known {
				continue
			}
			if _, code := countryByCode(name); code {
				continue
			}
			switch was, ok := meant[k]; {
			case !ok:
				meant[k] = c.Code
				all = append(all, entry{c.Code, name})
			case was != c.Code:
				meant[k] = ""
			}
		}
	}
	var b strings.Builder
	for _, e := range all {
		if meant[squeeze(e.name)] != "" {
			fmt.Fprintf(&b, "%s %s\n", e.code, e.name)
		}
	}
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile("country_names.txt", []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if b.String() != countryNames {
		t.Error("country_names.txt is not what x/text gives: UPDATE=1 writes it anew")
	}
	for _, tt := range []struct{ text, want string }{
		{"Germania orientale", ""}, {"Frankrijk", "FR"}, {"Spanje", "ES"}, {"Sverige", "SE"}, {"Niemcy", "DE"}, {"Россия", "RU"}, {"Казахстан", "KZ"}, {"法国", "FR"}, {"フランス", "FR"}, {"Egitto", "EG"}, {"Turkije", "TR"}, {"Yhdysvallat", "US"}, {"Hiszpania", "ES"}, {"Ελλάδα", "GR"},
	} {
		if got := strings.Join(CountriesNamed(tt.text), " "); got != tt.want {
			t.Errorf("%q: %q, not %q", tt.text, got, tt.want)
		}
	}
}

// Lands of several countries, states that are no more, short forms and texts of
// several parts.
func TestCountriesNamed(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Macedonia", "MK GR BG AL RS XK"}, {"Portugal", "PT"}, {"pt", "PT"}, {"Borneo", "ID MY BN"}, {"U.S.S.R.", "RU UA BY MD EE LV LT GE AM AZ KZ UZ TM KG TJ"}, {"Yugoslavia", "SI HR BA RS XK ME MK IT"},
		{"Solomon Is.", "SB PG"}, {"Spain: Canary Is.", "ES"}, {"Portugal, Madeira", "PT"}, {"Bolivia/Brazil", "BO BR"}, {"Peru - Ecuador border", ""}, {"Chile & Argentina", "CL AR"}, {"Congo, Belgian", "CD RW BI"}, {"Guinea, Equatorial", "GQ"},
		{"Minas Gerais, Brazil", "BR"}, {"Korea", "KR KP"}, {"Georgia", "GE"}, {"Rep. Dominicana", "DO"}, {"N. Zealand", "NZ"}, {"S. Africa", "ZA"}, {"Spain?", ""}, {"", ""}, {"unknown", ""}, {"SU", "RU UA BY MD EE LV LT GE AM AZ KZ UZ TM KG TJ"}, {"AN", "AW BQ CW SX"}, {"TP", "TL"}, {"San Diego, CA", ""}, {"St. Barts", ""}, {"Alaska, US", "US"}, {"near Spain", ""}, {"between Peru and nowhere", ""}, {"Palestine", "PS IL JO"}, {"PS", "PS"},
	} {
		if got := strings.Join(CountriesNamed(tt.text), " "); got != tt.want {
			t.Errorf("%q: %q, not %q", tt.text, got, tt.want)
		}
	}
	// Every code is a country's, and none stands twice.
	for name, codes := range lands() {
		seen := map[string]bool{}
		for _, c := range codes {
			if c != "XK" && !IsCountryCode(c) || seen[c] {
				t.Errorf("%s: %v", name, codes)
			}
			seen[c] = true
		}
	}
}

// A text of any kind is read without a panic, and as a code or a name it means
// what Country says, or more.
func FuzzCountriesNamed(f *testing.F) {
	for _, s := range []string{"Portugal, Madeira", "Is. I. S.", "a/b", "(", "-", "é"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		codes := CountriesNamed(s)
		if c, ok := Country(s); ok && len(codes) == 0 {
			t.Errorf("%q: none, while Country has %s", s, c.Code)
		}
	})
}
