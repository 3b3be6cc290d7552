package trade

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
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
				c.Marked(ditto, func(term, _, _ string) {
					c.Once(term, "points to another row, which nobody sees beside the label: write out what is meant", "", "ditto")
				})
				c.Marked(dittoAmong, func(term, text, _ string) {
					c.Report(term, fmt.Sprintf("%q points to another row, which nobody sees beside the label: write out what is meant", dittoPart(text)))
				})
			},
		},
		{
			Name: "text-working", Severity: label.Warning, Source: practice,
			Doc: "a note of the work on the table, such as TODO, xxx or test, that would be printed", Terms: prose,
			Example: one("habitat", "TODO"), Counterexample: one("locality", "River Test, left bank"),
			Row: func(c *check.Context) {
				c.Marked(working|workingAmong, func(term, _, _ string) {
					c.Report(term, "looks like a note of the work on the table, and is printed: take it out, or write what is meant")
				})
			},
		},
		{
			Name: "text-brackets", Severity: label.Warning, Source: practice,
			Doc: "a bracket that is opened and not closed, or closed and not opened", Terms: prose,
			Example: one("habitat", "Dunes (behind the station"), Counterexample: one("habitat", "Dunes (behind the station), a) grey, b) white"),
			Row: func(c *check.Context) {
				c.Marked(unpaired, func(term, text, _ string) {
					if slices.Contains(personTerms[:], term) && c.Doubted(term) {
						return // person-form says it, or that more is wrong
					}
					if opened, closed := loose(text); opened != 0 {
						c.Report(term, "the bracket "+string(opened)+" is not closed: close it, or see whether the text was cut")
					} else {
						c.Report(term, "the bracket "+string(closed)+" is not opened")
					}
				})
			},
		},
		{
			Name: "text-repeated", Severity: label.Warning, Source: practice,
			Doc: "a text that stands twice in its cell", Terms: prose,
			Example: one("habitat", "Dunes behind the station. Dunes behind the station."), Counterexample: one("habitat", "Dunes behind the station. Dunes before the station."),
			Row: func(c *check.Context) {
				c.Marked(repeated, func(term, text, _ string) {
					if slices.Contains(personTerms[:], term) && c.Doubted(term) {
						return // person-form says it of a person
					}
					c.Suggest(term, "says the same twice: keep it once", saidTwice(text))
				})
			},
		},
		{
			Name: "text-word-twice", Severity: label.Warning, Source: practice,
			Doc: "a word that stands twice running in a sentence", Terms: sentences,
			Example: one("locality", "Dunes behind the the station"), Counterexample: one("habitat", "Dunes with Elymus glaucus glaucus; bora bora"),
			Row: saysTwice,
		},
		{
			Name: "datum-spelling", Severity: label.Warning, Source: "EPSG Geodetic Parameter Dataset (names of datums, from memory)",
			Doc: "a datum one slip of the keys from a known one", Terms: []string{"geodeticDatum"},
			Example: one("geodeticDatum", "WSG84"), Counterexample: one("geodeticDatum", "WGS 72"),
			Row: func(c *check.Context) {
				c.Marked(slippedDatum, func(term, text, _ string) {
					c.Once(term, "is no datum that is known: did the keys slip?", nearDatum(text), "datum")
				})
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
				text := c.Text("identifiedBy")
				if n := len(text); n < 5 || text[n-1] != ')' && (text[n-1] < '0' || text[n-1] > '9') {
					return
				}
				if m := yearAfter.FindStringSubmatch(text); m != nil && c.Text("dateIdentified") != "" {
					c.Suggest("identifiedBy", "a year stands behind the name, and dateIdentified is printed, too: keep one of the two", strings.TrimRight(m[1], " ,;("))
				}
			},
		},
	}
}

// What these rules look for.
var (
	dittoAmong   = check.NewMark([]string{"locality", "verbatimLocality"}, 0, func(text string) bool { return dittoPart(text) != "" })
	ditto        = check.NewMark(dittoed, 0, func(text string) bool { return mayBeWord(text) && isDitto(text) })
	working      = check.NewMark(prose, 0, func(text string) bool { return mayBeWord(text) && isWorkingWord(text) })
	workingAmong = check.NewMark(prose, check.Capitals, holdsWorking)
	unpaired     = check.NewMark(prose, check.Brackets, func(text string) bool {
		opened, closed := loose(text)
		return len(text) >= 8 && (opened != 0 || closed != 0)
	})
	repeated     = check.NewMark(prose, 0, func(text string) bool { return saidTwice(text) != "" })
	slippedDatum = check.NewMark([]string{"geodeticDatum"}, 0, func(text string) bool { return nearDatum(text) != "" })
)

// mayBeWord reports whether a text begins as one of dittos and workings.
func mayBeWord(text string) bool {
	n := len(text)
	if n == 0 || n > 32 {
		return false
	}
	second := byte(0)
	if n > 1 {
		second = text[1] & 31
	}
	return heads[text[0]&31][second] || text[0] == '(' || text[0] == '['
}

// holdsWorking reports whether TODO or XXX stands among other words.
func holdsWorking(text string) bool {
	return len(text) >= 8 && (strings.Contains(text, "TODO") || strings.Contains(text, "XXX")) && workingWithin.MatchString(text) && strings.ToUpper(text) != text
}

// heads are the two letters that dittos and workings begin with, five bits of
// each.
var heads = func() (heads [32][32]bool) {
	for _, words := range []map[string]bool{dittos, workings} {
		for w := range words {
			second := byte(0)
			if len(w) > 1 {
				second = w[1] & 31
			}
			heads[w[0]&31][second] = true
		}
	}
	return heads
}()

// dittoPart returns the first or last of several parts of a place that points to the row
// above: "Valdoura, ibid.", "idem, 200 m further up".
func dittoPart(text string) string {
	first, last := strings.IndexAny(text, ",;"), strings.LastIndexAny(text, ",;")
	if first < 0 {
		return ""
	}
	for _, part := range [...]string{text[:first], text[last+1:]} {
		if part = strings.TrimSpace(part); len(part) <= 14 && len(part) > 2 && dittoWithin[strings.ToLower(strings.TrimRight(part, "."))] {
			return part
		}
	}
	return ""
}

// dittoWithin are those of the dittos that mean nothing else among other words.
var dittoWithin = map[string]bool{"idem": true, "ídem": true, "ibid": true, "ibidem": true, "ebd": true, "ebenda": true, "dito": true, "ditto": true, "tamże": true, "tamtéž": true, "tamtiež": true, "dtto": true, "jw": true, "j.w": true, "d:o": true, "там же": true, "там само": true, "mesmo local": true, "mesma localidade": true, "mismo lugar": true, "misma localidad": true, "même lieu": true, "stesso luogo": true, "same place": true, "same locality": true}

func isDitto(text string) bool { return dittos[strings.Trim(text, " .()[]")] }

// dittoed are the columns whose cells a label prints as they are.
var dittoed = append([]string{"scientificName", "genus", "family", "country"}, prose...)

// dittos are the ways to say "as in the row above". From memory. Same with a
// capital is a town.
var dittos = func() map[string]bool {
	all := map[string]bool{}
	for w := range strings.SplitSeq(`ditto|dito|do|id|idem|ídem|ibid|ibidem|ib|as above|same|same as above|same place|same locality|same as previous|same as last|as previous|see above|`+
		`wie oben|siehe oben|s.o|dasselbe|ebenda|igual|o mesmo|a mesma|mesmo local|mesma localidade|como acima|ver acima|mismo|misma|lo mismo|misma localidad|mismo lugar|como arriba|`+
		`ebd|dto|als boven|zie boven|come sopra|stesso luogo|stessa località|jak wyżej|jw|j.w|tamże|tamtéž|dtto|d:o|tamtiež|там же|там само|ugyanott|uo|u.o|aynı yer|aynı yerde|`+
		`samme sted|samme lokalitet|som over|samma plats|samma lokal|som ovan|sama paikka|kuten yllä|même lieu|même endroit|même localité|voir ci-dessus|comme ci-dessus|"|''|“|”|″|〃|,,|„`, "|") {
		all[w] = true
		if r, n := utf8.DecodeRuneInString(w); unicode.IsLower(r) && w != "same" && w != "do" && w != "id" && w != "ib" {
			all[string(unicode.ToUpper(r))+w[n:]] = true
			all[strings.ToUpper(w)] = true
		}
	}
	// With lines beside the sign, as it is drawn in books.
	for _, w := range []string{`-||-`, `-"-`, `- " -`, `-//-`, `—"—`, `–"–`, `-''-`, `- || -`, `||`, `-„-`, `-“-`, `-”-`} {
		all[w] = true
	}
	return all
}()

// workings are what people type where something is to be typed yet; in small
// letters, but for those that are words of places, too.
var workings = func() map[string]bool {
	all := map[string]bool{}
	for w := range strings.SplitSeq(`xxx|xxxx|xxxxx|todo|to do|tbd|tbc|fixme|fix me|delete me|asdf|asdfg|qwert|qwertz|qwerty|lorem ipsum|lorem ipsum dolor|lorem ipsum dolor sit amet|`+
		`to be completed|to be filled|to be filled in|to be checked|to be determined|to be added|fill in|check this|test|testing|test record|check|delete|`+
		`por preencher|a preencher|por completar|a completar|por rellenar|à compléter|zu ergänzen`, "|") {
		all[w] = true
	}
	return all
}()

// workingWithin stands among other words, not all in capitals: "MÉTODO" has an
// accent before what looks like one, and in Spanish and Portuguese todo is a word.
var workingWithin = regexp.MustCompile(`(^|[^\pL\d-])(TODO|XXX+)($|[^\pL\d-])`)

func isWorkingWord(text string) bool {
	var low [32]byte
	text = strings.TrimRight(text, ".!? ")
	if len(text) > len(low) {
		return false
	}
	for i := range len(text) {
		if low[i] = text[i]; low[i] >= 'A' && low[i] <= 'Z' {
			low[i] |= 0x20
		}
	}
	small := low[:len(text)]
	return workings[string(small)] && (!isTown[string(small)] || string(small) == text || text == strings.ToUpper(text))
}

// isTown are those of workings that are the names of rivers and towns, too.
var isTown = map[string]bool{"test": true, "check": true, "testing": true}

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

// datums are the names of datums that people write, without blanks and signs: the
// words that a slip may have missed.
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
	if slices.Contains(datums, key) {
		return ""
	}
	if _, known := place.Datum(text); known {
		return ""
	}
	found := ""
	for _, d := range datums {
		if len(d) >= 5 && within([]rune(key), []rune(d), 1) {
			if found != "" {
				return ""
			}
			found = d
		}
	}
	return found
}

var (
	figureLike = regexp.MustCompile(`^(?:[A-Za-z]{1,4}[-/. ]?)?[0-9]+[lIOo]+[0-9]+[a-z]?$`)
	between    = regexp.MustCompile(`[0-9][lIOo]+[0-9]`)
	figuresFor = strings.NewReplacer("l", "1", "I", "1", "O", "0", "o", "0")
	yearAfter  = regexp.MustCompile(`^(.*\pL.*?)[ ,;(]+(?:1[89]|20)\d\d\)?$`)
)
