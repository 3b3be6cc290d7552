package check

import (
	"regexp"
	"strings"
)

// twoPersons are two persons with their initials first, and no sign between them. One
// person may have one initial between two surnames, J. Lima M. Costa, but hardly two.
var twoPersons = regexp.MustCompile(`^((?:\p{Lu}\. ?){1,4}` + ofSurname + `) ((?:\p{Lu}\. ?){2,4}` + ofSurname + `)$`)

const ofSurname = `(?:(?:d[aeo]s?|del|de la|de los|von|van|van de[nr]?|ten|le|la) )?\p{Lu}[\p{Ll}\p{M}'’]+(?:-\p{Lu}\p{Ll}+)?`

// unparted finds two persons without a sign between them: "N. L. Almeida B. H. Prates".
func unparted(text string) personReading {
	if strings.Count(text, ".") < 3 {
		return personReading{}
	}
	for piece := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ';' || r == '|' || r == '&' || r == ',' }) {
		m := twoPersons.FindStringSubmatch(strings.TrimSpace(piece))
		if m == nil {
			continue
		}
		r := personReading{message: m[1] + " and " + m[2] + " stand without a sign between them, and are printed as one person"}
		if strings.TrimSpace(piece) == text {
			r.suggest = m[1] + " & " + m[2]
		}
		return r
	}
	return personReading{}
}
