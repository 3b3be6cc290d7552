package trade

import (
	"cmp"
	"fmt"
	"maps"
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

// limit is how many characters the old databases keep.
const limit = 255

// cutColumn keeps the cells of one column that have just so many.
type cutColumn struct {
	longer bool
	cells  []cell
	texts  []string
}

// cutTable keeps 300 bytes for each cell that is exactly so long.
type cutTable struct {
	file    string
	columns map[string]*cutColumn
	longest map[string]*longestColumn
}

// leastCut is how long a text is that a program may have cut off, and manyCut how many
// end at one length, if it is no chance.
const (
	leastCut = 60
	manyCut  = 4
)

// longestColumn keeps the longest texts of a column: those that end like one, by number.
type longestColumn struct {
	length, ended int
	cells         []cell
	texts         []string
}

// include keeps a text that is among the longest.
func (l *longestColumn) include(f check.Field) {
	if len(f.Text) < l.length { // in bytes, and so in characters
		return
	}
	n := utf8.RuneCountInString(f.Text)
	if n < l.length || n < leastCut {
		return
	}
	if n > l.length {
		*l = longestColumn{length: n, cells: l.cells[:0], texts: l.texts[:0]}
	}
	switch {
	case slices.Contains(l.texts, f.Text):
	case ends(f.Text):
		l.ended++
	case len(l.cells) < maxCells:
		l.cells, l.texts = append(l.cells, cellOf(f)), append(l.texts, strings.Clone(f.Text))
	}
}

// cut reports whether the longest were cut off: some may end at a full stop by chance. Texts
// that a program made of the same words differ in little.
func (l *longestColumn) cut() bool {
	if l.length < leastCut || l.length == limit || len(l.texts) < manyCut || l.ended > len(l.texts)/4 {
		return false
	}
	behind := map[string]bool{}
	for _, s := range l.texts {
		if strings.Count(s, " ") < 6 {
			return false
		}
		behind[s[len(s)-12:]] = true
	}
	return len(behind) >= manyCut
}

func (t *cutTable) Feed(r *check.Record) {
	for term, f := range r.Terms {
		if len(f.Text) < leastCut {
			continue
		}
		if slices.Contains(prose, term) {
			l := t.longest[term]
			if l == nil {
				if t.longest == nil {
					t.longest, t.file = map[string]*longestColumn{}, f.Origin.File
				}
				l = &longestColumn{}
				t.longest[strings.Clone(term)] = l
			}
			l.include(f)
		}
		if len(f.Text) < limit {
			continue
		}
		n := utf8.RuneCountInString(f.Text)
		exact := n == limit || len(f.Text) == limit
		if n <= limit && !exact || !slices.Contains(prose, term) {
			continue
		}
		col := t.columns[term]
		if col == nil {
			if t.columns == nil {
				t.columns, t.file = map[string]*cutColumn{}, f.Origin.File
			}
			col = &cutColumn{}
			t.columns[strings.Clone(term)] = col
		}
		if n > limit {
			*col = cutColumn{longer: true}
			continue
		}
		if !col.longer && !ends(f.Text) && len(col.cells) < maxCells {
			col.cells, col.texts = append(col.cells, cellOf(f)), append(col.texts, strings.Clone(f.Text))
		}
	}
}

// ends reports whether a text ends as sentences do.
func ends(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(s)
	return strings.ContainsRune(".!?)]”»\"'…", r)
}

func (t *cutTable) End() []label.Finding {
	var all []label.Finding
	for _, term := range slices.Sorted(maps.Keys(t.columns)) {
		for i, c := range t.columns[term].cells {
			all = append(all, label.Finding{Origin: c.origin(t.file, term), Value: t.columns[term].texts[i],
				Message: "exactly 255 characters, and no text of the column is longer: it was probably cut off, so look up how it ends"})
		}
	}
	for _, term := range slices.Sorted(maps.Keys(t.longest)) {
		l := t.longest[term]
		if !l.cut() {
			continue
		}
		all = append(all, label.Finding{Origin: l.cells[0].origin(t.file, term), Value: l.texts[0],
			Message: fmt.Sprintf("%d texts of the column have %d characters, none has more, and they end within a sentence: they were probably cut off, so look up how they end", len(l.cells), l.length),
			Also:    also(term, l.cells[1:])})
	}
	return all
}

// position is where a locality lies for some of its records: 44 bytes.
type position struct {
	lat, lon    float32
	uncertainty float32 // metres, the precision written included
	count       int32
	cell
	text, size uint32 // of its latitude, in localityTable.texts
	next       int32  // the next position of the same words; 0 is none
	decimal    bool
	detailed   bool // what the words are; in the first position of them
}

// from is the distance between two positions in metres; near is whether their
// uncertainties, and what the words may mean, explain it.
func (p position) from(q position) float64 {
	return distance(float64(q.lat), float64(q.lon), float64(p.lat), float64(p.lon))
}

func (p position) near(q position, reach float64) bool {
	return p.from(q) <= reach+float64(q.uncertainty)+float64(p.uncertainty)
}

// placeTerms are the terms that say where a record is from.
var placeTerms = append([]string{"country", "countryCode"}, coordinateTerms...)

// localityTable keeps 30 bytes for each distinct text of a place, and 50 for
// each of its positions.
type localityTable struct {
	file      string
	places    index[int32] // by words, the first position
	positions []position   // from 1
	texts     []byte
}

// maxPositions bounds what is kept of one text: one with more says little.
const maxPositions = 40

func (t *localityTable) Feed(r *check.Record) {
	locality := r.Text("locality")
	// What is wrong with the coordinates or the country by themselves is said.
	if !r.HasCoordinates || len(locality) < 12 || r.Doubted(placeTerms...) {
		return
	}
	key := sum(locality, r.Text("country"), r.Text("stateProvince"), r.Text("county"), r.Text("minimumElevationInMeters"))
	p := position{
		lat: float32(r.Coordinates.Lat.Degrees()), lon: float32(r.Coordinates.Lon.Degrees()),
		uncertainty: float32(r.Uncertainty + float64(r.Coordinates.Uncertainty())), count: 1,
	}
	f := r.Field("decimalLatitude")
	p.decimal = f.Text != ""
	if !p.decimal {
		f = r.Field("verbatimCoordinates")
		if f.Text == "" {
			return
		}
	}
	p.cell = cellOf(f)
	first := t.places.find(key)
	if first == nil {
		p.detailed = detailed(locality)
		t.file = f.Origin.File
		t.places.add(key, t.keep(p, f.Text))
		return
	}
	i := *first
	for n := 1; ; n++ {
		q := &t.positions[i]
		if q.lat == p.lat && q.lon == p.lon {
			q.count++
			q.uncertainty = max(q.uncertainty, p.uncertainty)
			return
		}
		if q.next == 0 {
			if n < maxPositions {
				at := t.keep(p, f.Text)
				t.positions[i].next = at
			}
			return
		}
		i = q.next
	}
}

// keep keeps a position with the text it was read from, and returns its place.
func (t *localityTable) keep(p position, text string) int32 {
	if t.positions == nil {
		t.positions = make([]position, 1)
	}
	p.text, p.size = uint32(len(t.texts)), uint32(len(text))
	t.texts = append(t.texts, text...)
	t.positions = append(t.positions, p)
	return int32(len(t.positions) - 1)
}

// wholeArea is the name of a park, a forest or mountains with nothing beside it.
var wholeArea = regexp.MustCompile(`(?i)^[^,;:.\d]*(\b(national|state|provincial|regional|nature|natural|game|forest|wildlife|biosphere) (park|preserve|reserve|forest|monument|refuge|sanctuary|grassland|seashore)|\b(wilderness|mountains|range|desert|plateau|peninsula|archipelago|islands)|nationalpark|naturpark)$|` +
	`(?i)^(parque|parc|floresta|reserva|réserve|parco|selva) (nacional|natural|national|régional|regional|estadual|naturelle|nazionale|biológica|ecológica)( [^,;:.\d]*)?$`)

// detailed reports whether a text names a spot rather than a region: it has
// four words or a figure, and is not the name of a park alone.
func detailed(s string) bool {
	if !strings.ContainsAny(s, ",;:.0123456789") && wholeArea.MatchString(strings.TrimSpace(s)) { // as seldom
		return false
	}
	words := 0
	for range strings.FieldsSeq(s) {
		if words++; words == 4 {
			return true
		}
	}
	return strings.ContainsAny(s, "0123456789")
}

// How far the words for a spot and for a region may reach, in metres.
const (
	spotReach   = 15e3
	regionReach = 80e3
)

func (t *localityTable) End() []label.Finding {
	var all []label.Finding
	var positions []position
	for first := range t.places.all {
		i := *first
		detailed := t.positions[i].detailed
		positions = positions[:0]
		for ; i != 0; i = t.positions[i].next {
			positions = append(positions, t.positions[i])
		}
		if len(positions) < 2 || len(positions) == maxPositions {
			continue
		}
		slices.SortStableFunc(positions, func(a, b position) int {
			return cmp.Or(cmp.Compare(b.count, a.count), cmp.Compare(a.row, b.row))
		})
		reach := float64(regionReach)
		if detailed {
			reach = spotReach
		}
		usual := positions[0]
		off, places, records := 0, 0, 0
		for _, p := range positions {
			records += int(p.count)
			if !p.near(usual, reach) {
				off += int(p.count)
				places++
			}
		}
		// Words that stand for many places say little of any. A slip is one place or two;
		// where there are more, the words name a park, a range or an island.
		if off > records/3 || places > 2 && off > records/20 {
			continue
		}
		for _, p := range positions[1:] {
			if p.near(usual, reach) {
				continue
			}
			term := "decimalLatitude"
			if !p.decimal {
				term = "verbatimCoordinates"
			}
			all = append(all, label.Finding{Origin: p.origin(t.file, term), Value: string(t.texts[p.text : p.text+p.size]),
				Message: fmt.Sprintf("%s from where record %d has it, whose words for the place are the same: correct the coordinates or the locality", far(p.from(usual)), usual.row),
				Also:    []label.Cell{{Row: int(usual.row), Term: term}}})
		}
	}
	return all
}
