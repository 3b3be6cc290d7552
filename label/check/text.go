package check

import (
	"regexp"
	"strings"
	"sync"

	"cornerslip/label"
)

// placeholders are what people and programs write into a cell that has
// nothing to say. Capitals count: Null is a surname, Na sodium.
var placeholders = map[string]bool{
	"NA": true, "na": true, "N/A": true, "n/a": true, "N/a": true, "N.A.": true, "n.a.": true, "#N/A": true, "<NA>": true, "NaN": true, "nan": true,
	"null": true, "NULL": true, "(null)": true, "<null>": true, `\N`: true, "nil": true, "NIL": true, "none": true, "None": true, "NONE": true,
	"undefined": true, "?": true, "??": true, "???": true, "-": true, "--": true, "---": true, "–": true, "—": true, ".": true, "*": true, "/": true,
	"#NAME?": true, "#REF!": true, "#VALUE!": true, "#DIV/0!": true, "#NUM!": true, "#NULL!": true, "#": true, "…": true, "...": true, "###": true,
	"#ERROR!": true, "#SPILL!": true, "#CALC!": true,
}

// placeholderBegins are the bytes that one of them begins with.
var placeholderBegins = func() (begins [256]bool) {
	for p := range placeholders {
		begins[p[0]] = true
	}
	return begins
}()

// phrases are what programs and people write into a cell for want of anything, in
// small letters and without brackets around them.
var phrases = map[string]bool{
	"no data": true, "nodata": true, "no data available": true, "data not captured": true, "not captured": true, "not available": true, "not recorded": true, "not provided": true,
	"not specified": true, "unspecified": true, "not given": true, "not stated": true, "not databased": true, "not applicable": true, "unknown or invalid": true, "no value": true, "missing": true, "missing data": true,
	"collector unspecified": true, "determiner unspecified": true, "collector not recorded": true, "no collector": true, "no determiner": true, "no locality data": true, "no further data": true,
	"sem dados": true, "sem informação": true, "sem informacao": true, "não informado": true, "nao informado": true, "não disponível": true, "sem coletor": true, "sem colector": true, "sem determinador": true, "sem registo": true, "sem registro": true,
	"sin datos": true, "no disponible": true, "no informado": true, "sin información": true, "sin informacion": true, "sin colector": true, "no especificado": true, "no aplica": true,
	"sans données": true, "non renseigné": true, "non disponible": true, "non spécifié": true, "ohne angabe": true, "ohne angaben": true, "keine angabe": true, "keine angaben": true, "nicht angegeben": true,
	"dato non disponibile": true, "non disponibile": true, "geen gegevens": true,
}

// unknown are words for it. They say something of a collector, a place or a family
// that was looked for, but nobody who determined the plant is called so.
var unknown = map[string]bool{
	"unknown": true, "not known": true, "desconhecido": true, "desconhecida": true, "desconocido": true, "desconocida": true, "inconnu": true, "inconnue": true, "unbekannt": true, "sconosciuto": true, "onbekend": true,
	"determiner unknown": true, "unknown determiner": true,
}

// wordsOfTheirOwn are columns in which one of the phrases is a value: a datum "not
// recorded", a sheet that is missing.
var wordsOfTheirOwn = map[string]bool{"geodeticDatum": true, "disposition": true, "occurrenceStatus": true}

// saysNothing reports whether a cell holds one of the phrases.
func saysNothing(term, text string) bool {
	if len(text) < 6 || len(text) > 30 {
		return false
	}
	if a, b := text[0]|0x20, text[1]|0x20; a-'a' < 26 && b-'a' < 26 && !phraseHeads()[a-'a'][b-'a'] {
		return false // as most texts
	}
	if wordsOfTheirOwn[term] {
		return false
	}
	var low [30]byte
	s := low[:copy(low[:], text)]
	for i, c := range s {
		if 'A' <= c && c <= 'Z' {
			s[i] = c | 0x20
		} else if c >= 0x80 || c <= '9' && c >= '0' {
			return c >= 0x80 && isPhrase(term, strings.ToLower(text))
		}
	}
	return isPhrase(term, string(s))
}

func isPhrase(term, s string) bool {
	if last := s[len(s)-1]; s[0] < 'a' || last < 'a' { // signs around it
		s = strings.Trim(s, "[]()<>.- ")
	}
	return phrases[s] || (term == "identifiedBy" || term == "stateProvince" || term == "county" || term == "municipality" || term == "country") && unknown[s]
}

// phraseHeads are the two letters that the phrases begin with.
var phraseHeads = sync.OnceValue(func() *[26][26]bool {
	var heads [26][26]bool
	for _, m := range []map[string]bool{phrases, unknown} {
		for p := range m {
			if a, b := p[0]-'a', p[1]-'a'; a < 26 && b < 26 {
				heads[a][b] = true
			}
		}
	}
	return &heads
})

// speaking are the columns in which some of these are values: NA is Namibia's
// country code and may be a herbarium's, "?" is a doubt.
var speaking = map[string]func(text string) bool{
	"countryCode":             func(s string) bool { return s == "NA" },
	"duplicatesTo":            func(s string) bool { return s == "NA" || s == "NIL" || s == "NONE" },
	"institutionCode":         isCode,
	"collectionCode":          isCode,
	"ownerInstitutionCode":    isCode,
	"identificationQualifier": func(s string) bool { return strings.Trim(s, "?") == "" },
}

// noTaxon are words in a column of the name's parts for what nobody has named:
// they are neither genus nor epithet.
var noTaxon = map[string]bool{
	"unidentified": true, "unknown": true, "undetermined": true, "not identified": true, "indeterminate": true, "unclassified": true, "uncultured": true,
	"indeterminado": true, "indeterminada": true, "não identificado": true, "não identificada": true, "no identificado": true, "no identificada": true,
	"desconhecido": true, "desconhecida": true, "desconocido": true, "desconocida": true, "indéterminé": true, "indéterminée": true, "inconnu": true, "inconnue": true,
	"unbestimmt": true, "unbekannt": true, "indeterminato": true, "indeterminata": true, "onbekend": true,
}

// isNoTaxon reports whether a text is one of them.
func isNoTaxon(text string) bool {
	return isNI(text) || len(text) <= 24 && noTaxon[strings.ToLower(text)]
}

// isNI reports whether a text is the abbreviation of não or no identificado.
func isNI(text string) bool {
	if len(text) > 4 {
		return false
	}
	switch strings.ToLower(text) {
	case "ni", "n.i.", "n.i", "n/i":
		return true
	}
	return false
}

// namesNothing reports whether a part of the name holds one of these words; so may
// scientificName where the genus stands beside it.
func (c *Context) namesNothing(term, text string) bool {
	switch term {
	case "genus", "specificEpithet", "infraspecificEpithet":
		return isNoTaxon(text)
	case "family":
		return isNI(text)
	case "scientificName":
		if isNI(text) {
			return true
		}
		if !isNoTaxon(text) {
			return false
		}
		genus := strings.TrimSpace(c.row.Text("genus"))
		return genus != "" && !isPlaceholder("genus", genus) && !isNoTaxon(genus)
	}
	return false
}

// isPlaceholder reports whether a cell's text says that it says nothing.
func isPlaceholder(term, text string) bool {
	if term == "catalogNumber" && Absent("recordNumber", text) {
		return true // "s.n." is no number of a sheet
	}
	if term == "recordNumber" && text[0] == '-' && len(text) > 1 && (text == "-1" || strings.Trim(text[1:], "9") == "") {
		return true // what programs write into empty columns of numbers
	}
	if isNoType(term, text) || isUnplaced(term, text) {
		return true
	}
	if strings.HasPrefix(text, "99") && ninesColumns[term] && nines.MatchString(text) {
		return true
	}
	if strings.HasPrefix(text, "###") && strings.Trim(text, "#") == "" {
		return true // a spreadsheet fills a cell that is too narrow
	}
	if len(text) > 9 || !placeholderBegins[text[0]] || !placeholders[text] {
		return saysNothing(term, text) || isWithheld(term, text)
	}
	says := speaking[term]
	return says == nil || !says(text)
}

// isNoType reports whether a cell says that a specimen is no type: that is said, so
// that nobody need clear it, and no label prints it.
func isNoType(term, text string) bool {
	return term == "typeStatus" && len(text) <= 14 && noType[strings.ToLower(text)]
}

// isTown reports whether None is the town near Turin, for the row's state says Piedmont
// and the table writes nothing such into its empty cells.
func (c *Context) isTown(term, text string) bool {
	if text != "None" || term != "municipality" && term != "locality" && term != "county" {
		return false
	}
	for _, above := range [...]string{"stateProvince", "county"} {
		switch strings.ToLower(strings.TrimSpace(c.row.Text(above))) {
		case "piemonte", "piedmont", "torino", "turin", "to", "piemonte (torino)", "provincia di torino", "città metropolitana di torino":
			return true
		}
	}
	return false
}

// noType are answers to whether a specimen is a type.
var noType = map[string]bool{"n": true, "no": true, "non": true, "não": true, "nao": true, "nein": true, "false": true, "0": true, "not a type": true, "notatype": true, "non-type": true, "nontype": true, "no type": true, "no type status": true, "not type": true}

// nines are degrees and minutes of nothing but nines, "99 99 99 N; 999 99 99 W",
// which no place has.
var nines = regexp.MustCompile(`(?i)^(?:9{2,3}[°º:\s]\s*99(?:['’′:\s]\s*99(?:[.,]9+)?)?["”″'’′\s]*[NSEWOL]?[\s;,/|]*){1,2}$`)

var ninesColumns = map[string]bool{"verbatimLatitude": true, "verbatimLongitude": true, "verbatimCoordinates": true, "decimalLatitude": true, "decimalLongitude": true}

// textRules look at every cell. Damaged text, control characters included, is
// found where the table is read.
func textRules() []Rule {
	return []Rule{
		{
			Name: emptyRow, Severity: label.Note, Source: practice,
			Doc:            "a row without a filled cell prints nothing",
			Example:        []map[string]string{With(), {}},
			Counterexample: []map[string]string{With(), With("recordNumber", "215")},
			Row: func(c *Context) {
				if c.empty {
					c.Report("", "the row is empty and prints nothing")
				}
			},
		},
		{
			Name: "placeholder", Severity: label.Warning, Source: practice,
			Doc:     "a cell such as NA, null or ? says nothing; it counts as empty unless the house prints it",
			Example: one("habitat", "#NAME?"), Counterexample: one("countryCode", "NA", "verbatimElevation", "s/ alt.", "recordNumber", "s.n.", "identificationQualifier", "?", "typeStatus", "no"),
			Row: func(c *Context) {
				for _, f := range c.Placeholders {
					// A rule that must have the cell filled says more.
					if c.missed(f) || isNoType(f.Origin.Term, f.Text) || isUnplaced(f.Origin.Term, f.Text) {
						continue
					}
					message := "taken as empty: clear the cell, or write what is known"
					switch {
					case c.keeps(f.Origin.Term):
						message = "says nothing and is printed as it is: clear the cell, or write what is known"
					}
					if isWithheld(f.Origin.Term, f.Text) {
						message = "somebody keeps the place back, and the label prints none: ask for it, for a label without its place is worth little"
					}
					if strings.HasPrefix(f.Text, "#") {
						message = "what a spreadsheet writes for a formula that failed or a value too wide: type the value again as text"
					}
					c.Report(f.Origin.Term, message)
				}
			},
		},
	}
}

// missed reports whether the label lacks what the cell of a placeholder should
// hold, so that an error says so.
func (c *Context) missed(f Field) bool {
	switch f.Origin.Term {
	case "recordedBy":
		return c.lacksCollector()
	case "scientificName", "genus", "specificEpithet":
		return c.nameless()
	case "locality":
		return c.Placeless && !c.Options.Backlog && c.Text("locality") == ""
	}
	return false
}

// lacksCollector reports whether nobody is given at all, not even by words that say
// that nobody is known.
func (c *Context) lacksCollector() bool {
	if Absent("recordedBy", c.Text("recordedBy")) || Absent("recordedBy", c.Text("collectorAndNumber")) {
		return false
	}
	return c.Collector == "" && !c.Options.Backlog && !saysNothing("recordedBy", strings.TrimSpace(c.CellText("recordedBy")))
}
