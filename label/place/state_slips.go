package place

import (
	"strings"
	"sync"
)

// stateNames are the folded names that lead to each state.
var stateNames = sync.OnceValue(func() map[*State][]string {
	s := statesKnown()
	all := map[*State][]string{}
	for key, at := range s.named {
		if len(key[1]) < shortestState {
			continue
		}
		for _, i := range at {
			p := &s.of[key[0]][i]
			all[p] = append(all[p], key[1])
		}
	}
	return all
})

// shortestState is how many letters the name of a state has at least in which a slip of
// the keys is told from another name, where the place lies in that state.
const shortestState = 5

// StateSlip returns the state that a place lies in, if a text that names no state of
// the country is the name of it but for a slip of the keys: two letters exchanged, one
// that stands twice or once for twice, or one left out, put in or changed inside. Names
// in other languages are written with other vowels, or with c for z: they are no slips.
// As is how the state is called; it is "" where another of its names is meant.
func StateSlip(country, text string, lat, lon float64) (found *State, as string) {
	key := foldState(text)
	if len(key) < shortestState || len(key) > 40 || !ascii(key) || strings.ContainsAny(text, ",;:/()0123456789") || StatesNamed(country, text) != nil {
		return nil, ""
	}
	s := StateAt(country, lat, lon)
	if s == nil || !s.Holds(lat, lon) {
		return nil, ""
	}
	for _, name := range stateNames()[s] {
		if name[0] != key[0] || name[len(name)-1] != key[len(key)-1] && !exchanged(key, name) || !ascii(name) || !slips(key, name) || spelling(key) == spelling(name) && !exchanged(key, name) {
			continue
		}
		if name == foldState(s.Name) {
			return s, s.Name
		}
		found = s
	}
	return found, ""
}

// exchanged reports whether one text becomes the other by two neighbours exchanged.
func exchanged(a, b string) bool {
	if len(a) != len(b) || a == b {
		return false
	}
	i := 0
	for a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// spelling takes away in what languages differ: which vowel, and which of the letters
// for one sound.
func spelling(s string) string {
	var b strings.Builder
	for i := range len(s) {
		switch c := s[i]; c {
		case 'a', 'e', 'i', 'o', 'u', 'y', 'j':
			b.WriteByte('a')
		case 'c', 'k', 'q', 's', 'z', 'x', 'h', 'g':
			b.WriteByte('c')
		case 'v', 'w', 'b', 'f':
			b.WriteByte('b')
		default:
			b.WriteByte(c)
		}
	}
	return b.String()
}
