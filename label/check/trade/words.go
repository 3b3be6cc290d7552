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
)

// prose are the columns that hold words for people to read.
var prose = []string{
	"locality", "verbatimLocality", "habitat", "plantDescription", "occurrenceRemarks", "fieldNotes", "eventRemarks", "locationRemarks", "identificationRemarks",
	"organismRemarks", "associatedTaxa", "uses", "informationWithheld", "stateProvince", "county", "municipality", "island", "higherGeography", "project", "permits",
	"recordedBy", "coCollectors", "identifiedBy",
}

// collectors are lists, in which a sign at the end parts the last person from nobody
// and is not printed.
var collectors = []string{"recordedBy", "coCollectors"}

// spaced are the columns in which a blank too many is told: prose and names.
var spaced = append([]string{"scientificName", "scientificNameAuthorship", "genus", "specificEpithet", "infraspecificEpithet", "family", "country"}, prose...)

// underscored are words, of which two have three letters or more, that have
// underscores between them and no space.
var underscored = regexp.MustCompile(`^\s*\S*\pL{3,}[\pL\d.,'’()-]*_(\S*_)?\(?\pL{3,}\S*\s*$`)

// wordRules are about the words of the label.
func wordRules(where *finder) []check.Rule {
	return []check.Rule{
		{
			Name: "locality-country", Severity: label.Note, Source: practice,
			Doc: "a locality that begins or ends with the country, which the label prints before it, or says nothing else", Terms: []string{"locality"},
			Example: one("locality", "Portugal: Valdoura, dunes 300 m W of the field station"), Counterexample: one("locality", "Portugal Street, 300 m W of the field station"),
			Row: func(c *check.Context) { localityRule(where, c) },
		},
		{
			Name: "punctuation-doubled", Severity: label.Warning, Source: practice,
			Doc: "a comma, semicolon, colon or full stop that stands twice, or two of them where one is meant", Terms: prose,
			Example: one("locality", "Valdoura,, dunes 300 m W of the field station"), Counterexample: one("locality", "Valdoura..., dunes 300 m W of the field station, at the foot etc."),
			Row: func(c *check.Context) {
				c.Marked(check.SignsTwice, func(term, text, _ string) {
					if signs, mended := doubled(text); signs != "" && slices.Contains(prose, term) {
						c.Suggest(term, fmt.Sprintf("%q stands where one sign is meant", signs), mended)
					}
				})
			},
		},
		{
			Name: "punctuation-end", Severity: label.Note, Source: practice,
			Doc: "a text that ends with a comma, semicolon or colon, as if more were to come", Terms: prose,
			Example: one("habitat", "Dunes,"), Counterexample: one("habitat", "Dunes, etc."),
			Row: func(c *check.Context) {
				c.Marked(check.EndsOpen, func(term, text, _ string) {
					bare := strings.TrimRight(text, ",;: ")
					if slices.Contains(prose, term) && !slices.Contains(collectors, term) && bare != "" && !c.Doubted(term) {
						c.Suggest(term, "ends as if more were to come: take the sign out, or add what is missing", bare)
					}
				})
			},
		},
		{
			Name: "spaces", Severity: label.Note, Source: practice,
			Doc: "spaces before or after the text, before a comma or before the last full stop, two where one is meant, or underscores in place of all of them", Terms: spaced,
			Example: one("locality", "Valdoura,  dunes 300 m W of the field station "), Counterexample: one("locality", "Valdoura, dunes 300 m W of the field station"),
			Row: func(c *check.Context) {
				c.Marked(check.Underscore|check.Spaces, func(term, _, text string) {
					if strings.Contains(text, "_") && underscored.MatchString(text) && slices.Contains(prose, term) && !c.Doubted(term) {
						c.Suggest(term, "underscores stand where spaces are meant", strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == '_' || r == ' ' }), " "))
						return
					}
					if !extraSpaces(text) || !slices.Contains(spaced, term) || c.Doubted(term) {
						return
					}
					if strings.Contains(text, " ,") && !strings.Contains(text, "  ") && strings.TrimSpace(text) == text {
						c.Suggest(term, "a blank stands before the comma", strings.ReplaceAll(text, " ,", ","))
						return
					}
					if blankBeforeStop(text) {
						c.Suggest(term, "a blank stands before the full stop", text[:len(text)-2]+".")
						return
					}
					if !strings.Contains(strings.TrimSpace(text), "  ") {
						c.Report(term, "spaces before or after the text, which are not printed: take them out")
						return
					}
					c.Suggest(term, "two spaces where one is meant", strings.Join(strings.Fields(text), " "))
				})
			},
		},
		{
			Name: "text-cut", Severity: label.Warning, Source: practice + "; 255 characters are the most that many databases and spreadsheets keep of a text",
			Doc: "a text of exactly 255 characters that does not end like one, in a column without any longer; texts that all end within a sentence at the length of the longest; or one that ends with a word such as of or de", Terms: prose,
			Example: one("locality", cutText), Counterexample: one("locality", cutText[:254]+"."),
			Row:   saysEndsShort,
			Table: func() check.TableRule { return &cutTable{} },
		},
		{
			Name: "locality-coordinates", Severity: label.Warning, Source: practice,
			Doc: "the same words for the place with coordinates far apart, beyond their uncertainty", Terms: coordinateTerms,
			Example: rows(nil, []string{"recordNumber", "215"}, []string{"recordNumber", "216", "decimalLatitude", "38.8712"}), Counterexample: rows(nil, []string{"recordNumber", "215"}, []string{"recordNumber", "216", "decimalLatitude", "38.8712", "coordinateUncertaintyInMeters", "60000"}),
			Table: func() check.TableRule { return &localityTable{} },
		},
	}
}

// cutText is a locality that was cut off after 255 characters.
var cutText = "left side of the glacial valley, " + strings.Repeat("along the forest track that climbs towards the pass, ", 4) + "near"[:4] + " 900 m"

func localityRule(where *finder, c *check.Context) {
	text := c.Text("locality")
	if text == "" || c.Text("country") == "" {
		return
	}
	if end := strings.IndexFunc(text[:min(len(text), 64)], partsPlaces); end >= 2 && end <= 60 {
		head, rest := strings.TrimSpace(text[:end]), strings.TrimLeft(text[end:], " :,;.-–—")
		// "Luxembourg-Findel" is one name.
		joined := text[end] == '-' && end+1 < len(text) && text[end-1] != ' ' && text[end+1] != ' '
		if rest != "" && !joined && isCountry(where, c, head) {
			if isCountry(where, c, strings.TrimRight(rest, " .")) {
				sayCountryAlone(c)
				return
			}
			c.Suggest("locality", "begins with the country, which the label prints before it", rest)
			return
		}
	}
	text = strings.TrimRight(text, " .")
	at := strings.LastIndexAny(text, ",;")
	if at > 0 && len(text)-at < 40 && isCountry(where, c, strings.TrimSpace(text[at+1:])) {
		c.Once("locality", "ends with the country, which the label prints before it", strings.TrimRight(text[:at], " ,;"), "country at the end")
	}
}

func sayCountryAlone(c *check.Context) {
	c.Once("locality", "says the country alone, which the label prints before it: write the place, or clear the cell", "", "country alone")
}

// partsPlaces reports whether a sign parts the names of places.
func partsPlaces(r rune) bool {
	switch r {
	case ':', ',', ';', '.', '-', '–', '—':
		return true
	}
	return false
}

// isCountry reports whether a text is the country that the record states, by its
// name as written or in a language of labels.
func isCountry(where *finder, c *check.Context, text string) bool {
	if strings.EqualFold(text, c.Text("country")) {
		return true
	}
	if len(text) < 4 || strings.ContainsAny(text, "0123456789") {
		return false
	}
	found, ok := where.country(text)
	stated, _, known := where.stated(c.Record)
	// "England" and "Madeira" are more than the country.
	return ok && known && found.Code == stated.Code && (strings.EqualFold(text, stated.Name) || strings.EqualFold(text, stated.ISOName) || inLanguages(stated.In, text))
}

func inLanguages(in func(string) string, name string) bool {
	for _, l := range []string{"pt", "es", "fr", "de", "la"} {
		if strings.EqualFold(in(l), name) {
			return true
		}
	}
	return false
}

// doubled finds the first place with two signs where one is meant, and mends
// the text throughout. Three full stops are an ellipsis; a full stop before
// another sign ends an abbreviation.
func doubled(text string) (signs, mended string) {
	at := findDoubled(text)
	if at == nil {
		return "", ""
	}
	signs = text[at[0]:at[1]]
	for range 50 {
		if at = findDoubled(text); at == nil {
			break
		}
		keep := text[at[0] : at[0]+1]
		if c := text[at[1]-1]; keep == "," && c != ',' {
			keep = string(c)
		}
		text = text[:at[0]] + keep + text[at[1]:]
	}
	return signs, text
}

// findDoubled returns where two signs stand, perhaps with spaces between.
func findDoubled(s string) []int {
	for i := 0; i < len(s); i++ {
		a := s[i]
		if a != ',' && a != ';' && a != ':' && a != '.' {
			continue
		}
		j := i + 1
		for j < len(s) && s[j] == ' ' {
			j++
		}
		if j >= len(s) {
			return nil
		}
		b := s[j]
		switch {
		case a == '.':
			// ".." alone; not "...", not figures, not "../".
			n := 1
			for i+n < len(s) && s[i+n] == '.' {
				n++
			}
			after := byte(' ')
			if i+n < len(s) {
				after = s[i+n]
			}
			if n == 2 && i > 0 && s[i-1] != ' ' && s[i-1] != '/' && (after == ' ' || after == ',') {
				return []int{i, i + 2}
			}
			i += n - 1
		case a == ':' && b != ':' && j > i+1: // "Imaged:  , notes:" is a form that was not filled in
		case a == ':' && b == ':' && j == i+1: // "a::b" is a programmer's
			return []int{i, j + 1}
		case (a == ',' || a == ';') && b == '.' && j == len(s)-1, // and nothing behind them
			(a == ',' || a == ';') && (b == ',' || b == ';'), a == ':' && (b == ':' || b == ',' || b == ';'), a == ',' && b == ':':
			return []int{i, j + 1}
		}
	}
	return nil
}

// extraSpaces reports whether a text has spaces at its ends or two together.
func extraSpaces(s string) bool {
	if s == "" {
		return false
	}
	if s[0] > ' ' && s[0] < utf8.RuneSelf && s[len(s)-1] > ' ' && s[len(s)-1] < utf8.RuneSelf {
		return strings.Contains(s, "  ") || strings.Contains(s, " ,") || blankBeforeStop(s)
	}
	first, _ := utf8.DecodeRuneInString(s)
	last, _ := utf8.DecodeLastRuneInString(s)
	return unicode.IsSpace(first) && first != '\n' || unicode.IsSpace(last) && last != '\n' || strings.Contains(s, "  ") || strings.Contains(s, " ,")
}

// blankBeforeStop reports whether a text ends with a word, a blank and a full stop;
// behind an initial and in ". . ." a stop is no sentence's.
func blankBeforeStop(s string) bool {
	n := len(s)
	return n > 4 && s[n-1] == '.' && s[n-2] == ' ' && s[n-3] >= 'a' && s[n-4] >= 'a' && !strings.Contains(s, "  ")
}
