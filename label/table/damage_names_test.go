package table

import (
	"testing"

	xlanguage "golang.org/x/text/language"
	"golang.org/x/text/language/display"
)

// slips are names that are damaged there too: marks of direction and of byte
// order at the ends, an accent before its letter, a Latin K in a Cyrillic word.
var slips = map[string]bool{
	"ዕብራይስጥ\ufeff": true, "\u200fאינטרלינגואה": true, "\u200fוולאפיק": true, "Kотд’ивуар": true, "\u0301Antigua kple Barbuda nutome": true, "\u200bកៀហ្ស៊ីស": true,
	"Samoa m \u0301Amɛ\u0301rka": true, "\u0301pakas": true, "Èdè \u0323Rọọsia": true, "Èdè \u0323Rɔɔsia": true,
}

// The names of countries, languages and scripts in all languages of Unicode's
// CLDR are no damage.
func TestNamesOfAllLanguages(t *testing.T) {
	n, wrong := 0, 0
	for _, tag := range display.Supported.Tags() {
		if tag == xlanguage.Und {
			continue
		}
		for _, name := range namesIn(tag.String()) {
			n++
			damage(name, func(rule *Rule, suggest, message string) {
				wrong++
				if !slips[name] {
					t.Errorf("%v: %q: %s %q", tag, name, rule.Name, suggest)
				}
			})
		}
	}
	t.Logf("%d names, %d taken for damaged", n, wrong)
}
