package coord

import (
	"regexp"
	"strings"
)

var (
	// malaySides are lintang utara and selatan, bujur timur and barat, as Indonesians and
	// Malays write them behind the figures.
	malaySides = regexp.MustCompile(`([0-9'"°])\s*(LU|LS|BT|BB)\b\.?`)
	// dutchSides are noorder- and zuiderbreedte, ooster- and westerlengte.
	dutchSides = regexp.MustCompile(`(?i)([0-9'"°])\s*([nz]\. ?b\.|[ow]\. ?l\.)`)
)

var sideOf = map[string]string{"LU": "N", "LS": "S", "BT": "E", "BB": "W", "n": "N", "z": "S", "o": "E", "w": "W"}

// foreignSides writes the international letters for sides of which a part means something
// else in other languages, as B and L do. Common practice, no source.
func foreignSides(text string) string {
	if !strings.ContainsAny(text, "BLUbl") {
		return text
	}
	text = malaySides.ReplaceAllStringFunc(text, func(s string) string {
		m := malaySides.FindStringSubmatch(s)
		return m[1] + " " + sideOf[m[2]]
	})
	return dutchSides.ReplaceAllStringFunc(text, func(s string) string {
		m := dutchSides.FindStringSubmatch(s)
		return m[1] + " " + sideOf[strings.ToLower(m[2][:1])]
	})
}
