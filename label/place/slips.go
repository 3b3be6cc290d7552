package place

import (
	_ "embed"
	"strings"
	"sync"
)

// shortestSlip is how many letters a name has at least in which a slip of the keys is
// told from another name.
const shortestSlip = 6

// noSlips are names that differ in one letter from that of a country and are none of it:
// of regions and islands, and old ones. From memory.
const noSlips = "indian indies styria samos guiana guayana servia irian burmah somali mauretania lybia columbien"

// otherLanguages are those that country_slips.txt has names in: languages that people
// write tables in, in Latin letters, of which a name may look as a slip of another's.
const otherLanguages = "af ast az bs de de-CH fo fr-CA fy hsb is ku lb ms mt nb nn oc pt-PT qu rm sq sw tk uz"

// Source: Unicode CLDR 32 (Unicode licence), as golang.org/x/text 0.44 has it; a test
// writes the file, a name a line.
//
//go:embed country_slips.txt
var namesLikeSlips string

var likeSlips = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for _, s := range strings.Fields(noSlips) {
		all[s] = true
	}
	for line := range strings.Lines(namesLikeSlips) {
		all[squeeze(line)] = true
	}
	return all
})

// slipNames are the names of countries that are long enough, and how each is written.
var slipNames = sync.OnceValue(func() (all [][2]string) {
	known := map[string]bool{}
	add := func(name string) {
		k := squeeze(name)
		if t := countries(); len(k) < shortestSlip || t.names[k] < 0 || !ascii(k) || strings.Contains(name, "(") {
			return
		}
		if !known[k] {
			known[k] = true
			all = append(all, [2]string{k, name})
		}
	}
	for _, c := range countries().all {
		add(c.Name)
	}
	for i := range nameLanguages {
		for _, c := range countries().all {
			add(c.names[i])
		}
	}
	for line := range strings.Lines(strings.TrimSpace(otherNames)) {
		for _, entry := range strings.Split(strings.TrimSpace(line), "|") {
			add(entry[3:])
		}
	}
	return all
})

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

// CountrySlip returns the name of the one country of which a text is one slip of the
// keys: a letter too many, missing, another or exchanged with its neighbour. It returns ""
// for what can be anything else: a name that CountriesNamed knows, one of a state, or what
// may be two countries.
func CountrySlip(text string) string {
	if likeSlips()[squeeze(text)] {
		return ""
	}
	return nearCountry(text)
}

// nearCountry is CountrySlip without what is known to look so.
func nearCountry(text string) string {
	key := squeeze(text)
	if len(key) < shortestSlip-1 || len(key) > 40 || !ascii(key) || strings.ContainsAny(text, ",;:/()0123456789") || CountriesNamed(text) != nil {
		return ""
	}
	if i := strings.LastIndexByte(strings.TrimSpace(text), ' '); i > 0 && strings.Contains(text[i:], ".") && CountriesNamed(text[:i]) != nil {
		return "" // a country with a remark in short behind it: "Brésil n.p."
	}
	found, code := "", -1
	t := countries()
	for _, n := range slipNames() {
		if n[0][0] != key[0] || !slips(key, n[0]) {
			continue
		}
		i := t.names[n[0]]
		if code >= 0 && i != code {
			return ""
		}
		if found == "" {
			found, code = n[1], i
		}
	}
	if found == "" {
		return ""
	}
	for country := range statesKnown().of {
		if StatesNamed(country, text) != nil {
			return ""
		}
	}
	if text == strings.ToUpper(text) {
		return strings.ToUpper(found)
	}
	return found
}

// slips reports whether one text becomes the other by one letter put in, left out,
// changed or exchanged with its neighbour.
func slips(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	if len(a) < len(b) {
		return a[i:] == b[i+1:]
	}
	return i < len(a) && (a[i+1:] == b[i+1:] || i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:])
}
