package face

import (
	"strings"
	"unicode/utf8"

	"cornerslip/fonts"
	"cornerslip/layout"
)

// A Cover says from which face a letter, with its accents, is drawn.
type Cover struct {
	Cluster string
	Face    *fonts.Face // nil if Err is not
	Err     error       // *MissingError or *ScriptError
}

// Coverage tells of each letter of text from which face it comes, in order;
// what draws nothing is left out. It decides as Word does, but goes on after a
// letter that cannot be set.
func (s *Setter) Coverage(text string, style layout.Style) []Cover {
	var all []Cover
	if !utf8.ValidString(text) {
		_, err := prepare(text)
		all = append(all, Cover{Err: err})
		text = strings.ToValidUTF8(text, "")
	}
	chain := s.chain(style)
	sh := s.shaper()
	defer s.done(sh)
	sh.clusters(text, func(c string) bool {
		str, err := prepare(c)
		switch {
		case err != nil:
			all = append(all, Cover{Cluster: c, Err: err})
		case str == "":
		default:
			f := find(chain, str)
			if f == nil {
				err = missing(chain, str, text)
			}
			all = append(all, Cover{Cluster: str, Face: f, Err: err})
		}
		return true
	})
	return all
}
