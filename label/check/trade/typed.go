package trade

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
)

// typedRules are about what a label must not say as it was typed: a label stands
// alone, is finished, and is read by people who do not know the table.
func typedRules() []check.Rule {
	return []check.Rule{
		{
			Name: "text-ditto", Severity: label.Error, Source: practice,
			Doc: "a cell that points to the row above, such as ditto or as above: a label stands alone", Terms: dittoed,
			Example: one("locality", "ditto"), Counterexample: one("locality", "Same"), // a town
			Row: func(c *check.Context) {
				for term, text := range c.Texts {
					if len(text) <= 32 && slices.Contains(dittoed, term) && dittos[strings.Trim(text, " .()[]")] {
						c.Once(term, "points to another row, which nobody sees beside the label: write out what is meant", "", "ditto")
					}
				}
			},
		},
		{
			Name: "text-working", Severity: label.Warning, Source: practice,
			Doc: "a note of the work on the table, such as TODO, xxx or test, that would be printed", Terms: prose,
			Example: one("habitat", "TODO"), Counterexample: one("locality", "River Test, left bank"),
			Row: func(c *check.Context) {
				for term, text := range c.Texts {
					if isWorking(text) && slices.Contains(prose, term) {
						c.Report(term, "looks like a note of the work on the table, and is printed: take it out, or write what is meant")
					}
				}
			},
		},
		{
			Name: "text-brackets", Severity: label.Warning, Source: practice,
			Doc: "a bracket that is opened and not closed, or closed and not opened", Terms: prose,
			Example: one("habitat", "Dunes (behind the station"), Counterexample: one("habitat", "Dunes (behind the station), a) grey, b) white"),
			Row: func(c *check.Context) {
				for term, text := range c.Texts {
					if strings.IndexByte(text, '(') < 0 && strings.IndexByte(text, ')') < 0 && strings.IndexByte(text, '[') < 0 && strings.IndexByte(text, ']') < 0 || !slices.Contains(prose, term) {
						continue
					}
					if opened, closed := loose(text); opened != 0 {
						c.Report(term, "the bracket "+string(opened)+" is not closed: close it, or see whether the text was cut")
					} else if closed != 0 {
						c.Report(term, "the bracket "+string(closed)+" is not opened")
					}
				}
			},
		},
		{
			Name: "text-repeated", Severity: label.Warning, Source: practice,
			Doc: "a text that stands twice in its cell", Terms: prose,
			Example: one("habitat", "Dunes behind the station. Dunes behind the station."), Counterexample: one("habitat", "Dunes behind the station. Dunes before the station."),
			Row: func(c *check.Context) {
				for term, text := range c.Texts {
					if half := saidTwice(text); half != "" && slices.Contains(prose, term) {
						c.Suggest(term, "says the same twice: keep it once", half)
					}
				}
			},
		},
		{
			Name: "datum-spelling", Severity: label.Warning, Source: "EPSG Geodetic Parameter Dataset (names of datums, from memory)",
			Doc: "a datum one slip of the keys from a known one", Terms: []string{"geodeticDatum"},
			Example: one("geodeticDatum", "WSG84"), Counterexample: one("geodeticDatum", "WGS 72"),
			Row: func(c *check.Context) {
				if near := nearDatum(c.Text("geodeticDatum")); near != "" {
					c.Once("geodeticDatum", "is no datum that is known: did the keys slip?", near, "datum")
				}
			},
		},
		{
			Name: "number-letters", Severity: label.Warning, Source: practice,
			Doc: "the letter l, I, O or o between the figures of a collector's number, where 1 or 0 is meant", Terms: []string{"recordNumber"},
			Example: one("recordNumber", "2l4"), Counterexample: one("recordNumber", "2b4"),
			Row: func(c *check.Context) {
				text := c.Text("recordNumber")
				if strings.ContainsAny(text, "lIOo") && figureLike.MatchString(text) {
					c.Suggest("recordNumber", "a letter stands between the figures that looks like one", between.ReplaceAllStringFunc(text, figuresFor.Replace))
				}
			},
		},
		{
			Name: "person-year", Severity: label.Warning, Source: practice,
			Doc: "a year behind who determined, beside a date of determination: both are printed", Terms: []string{"identifiedBy", "dateIdentified"},
			Example:        one("identifiedBy", "R. Costa 2024", "dateIdentified", "2026-05-20", "eventDate", "2020-04-12"),
			Counterexample: one("identifiedBy", "R. Costa", "dateIdentified", "2026-05-20", "eventDate", "2020-04-12"),
			Row: func(c *check.Context) {
				if m := yearAfter.FindStringSubmatch(c.Text("identifiedBy")); m != nil && c.Text("dateIdentified") != "" {
					c.Suggest("identifiedBy", "a year stands behind the name, and dateIdentified is printed, too: keep one of the two", strings.TrimRight(m[1], " ,;("))
				}
			},
		},
	}
}

// dittoed are the columns whose cells a label prints as they are.
var dittoed = append([]string{"scientificName", "genus", "family", "country"}, prose...)

// dittos are the ways to say "as in the row above". From memory. Same with a
// capital is a town.
var dittos = func() map[string]bool {
	all := map[string]bool{}
	for w := range strings.SplitSeq(`ditto|dito|do|id|idem|ídem|ibid|ibidem|ib|as above|same|same as above|same place|same locality|same as previous|same as last|as previous|see above|`+
		`wie oben|siehe oben|s.o|dasselbe|ebenda|igual|o mesmo|a mesma|mesmo local|mesma localidade|como acima|ver acima|mismo|misma|lo mismo|misma localidad|mismo lugar|como arriba|`+
		`même lieu|même endroit|même localité|voir ci-dessus|comme ci-dessus|"|''|“|”|″|〃|,,|„`, "|") {
		all[w] = true
		if r, n := utf8.DecodeRuneInString(w); unicode.IsLower(r) && w != "same" && w != "do" && w != "id" && w != "ib" {
			all[string(unicode.ToUpper(r))+w[n:]] = true
			all[strings.ToUpper(w)] = true
		}
	}
	return all
}()

// working is what people type where something is to be typed yet.
var (
	working = regexp.MustCompile(`^(?i:x{3,}|to ?do|tbd|tbc|fix ?me|delete me|asdf+|qwertz?y?|lorem ipsum.*|to be (completed|filled( in)?|checked|determined|added)|fill in|check this|por (preencher|rellenar|completar)|a (preencher|completar|compléter))[.!? ]*$|^(test|testing|test record|check|delete)[.!? ]*$`)
	// workingWithin stands among other words.
	workingWithin = regexp.MustCompile(`\b(TODO|FIXME|XXX+)\b`)
)

func isWorking(text string) bool {
	if len(text) <= 32 {
		switch text[0] | 0x20 {
		case 'x', 't', 'f', 'd', 'a', 'q', 'l', 'c', 'p':
			if working.MatchString(text) {
				return true
			}
		}
	}
	if strings.Contains(text, "TODO") || strings.Contains(text, "FIXME") || strings.Contains(text, "XXX") {
		return workingWithin.MatchString(text)
	}
	return false
}

// loose returns the bracket that a text leaves open, or the one that closes what
// was not opened; what counts, as in "a)", "2)", does not.
func loose(text string) (opened, closed rune) {
	var open []rune
	word := 0 // letters and figures before the sign
	for _, r := range text {
		switch r {
		case '(', '[':
			open = append(open, r)
		case ')', ']':
			want := map[rune]rune{')': '(', ']': '['}[r]
			switch n := len(open); {
			case n > 0 && open[n-1] == want:
				open = open[:n-1]
			case n > 0 && slices.Contains(open, want):
				return open[n-1], 0
			case r == ')' && word > 0 && word <= 3, r == ')' && word == 0:
				// it counts, or it is a face
			default:
				closed = r
			}
		}
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			word++
		} else {
			word = 0
		}
	}
	if len(open) > 0 {
		return open[len(open)-1], 0
	}
	return 0, closed
}

// saidTwice returns the half of a text that says the same twice, "" of any other.
func saidTwice(text string) string {
	const least = 10
	n := len(text)
	if n < 2*least+1 {
		return ""
	}
	for gap := 1; gap <= 3; gap++ {
		if (n-gap)%2 != 0 {
			continue
		}
		half := (n - gap) / 2
		if text[0] == text[half+gap] && text[:half] == text[half+gap:] && strings.Trim(text[half:half+gap], " ,;.|/") == "" && strings.Contains(text[half:half+gap]+text[half-1:half], " ") {
			return text[:half]
		}
	}
	return ""
}

// datums are names of datums, without blanks and signs.
var datums = strings.Fields(`WGS84 WGS1984 WGS72 WGS66 WGS60 NAD27 NAD1927 NAD83 NAD1983 ED50 ED1950 ETRS89 ETRS1989 SAD69 SAD1969 PSAD56 SIRGAS2000 SIRGAS95 OSGB36 OSGB1936
	GDA94 GDA1994 GDA2020 AGD66 AGD84 NZGD49 NZGD2000 CH1903 RGF93 JGD2000 JGD2011 TWD67 TWD97 CGCS2000 PRS92 HTRS96 REGVEN ARC1950 ARC1960 PULKOVO1942 D73 DATUM73 LISBOA HERMANNSKOGEL POTSDAM TOKYO AMERSFOORT`)

// nearDatum returns the datum that a text may mean, which is none itself: the
// only one from which two neighbours are exchanged or one sign is another, too
// many or missing.
func nearDatum(text string) string {
	if len(text) < 4 || len(text) > 16 {
		return ""
	}
	key := strings.ToUpper(strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return -1
	}, text))
	if slices.Contains(datums, key) || strings.HasPrefix(key, "EPSG") {
		return ""
	}
	found := ""
	for _, d := range datums {
		if len(d) >= 5 && keySlip(key, d) {
			if found != "" {
				return ""
			}
			found = d
		}
	}
	return found
}

// keySlip reports whether two words differ by one slip of the keys.
func keySlip(a, b string) bool {
	if len(a) < len(b) {
		a, b = b, a
	}
	if len(a)-len(b) > 1 {
		return false
	}
	i := 0
	for i < len(b) && a[i] == b[i] {
		i++
	}
	if len(a) > len(b) {
		return a[i+1:] == b[i:]
	}
	switch {
	case i == len(a):
		return false
	case a[i+1:] == b[i+1:]:
		return true
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

var (
	figureLike = regexp.MustCompile(`^(?:[A-Za-z]{1,4}[-/. ]?)?[0-9]+[lIOo]+[0-9]+[a-z]?$`)
	between    = regexp.MustCompile(`[0-9][lIOo]+[0-9]`)
	figuresFor = strings.NewReplacer("l", "1", "I", "1", "O", "0", "o", "0")
	yearAfter  = regexp.MustCompile(`^(.*\pL.*?)[ ,;(]+(?:1[89]|20)\d\d\)?$`)
)
