package trade

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// landTerms are the columns that name a land, the larger first.
var landTerms = [...]string{"country", "stateProvince", "county", "municipality"}

// landRules hold the names of states and counties of a table against each other.
func landRules() []check.Rule {
	run := func(last string) []map[string]string {
		var all [][]string
		for i := range 8 {
			all = append(all, []string{"recordNumber", itoa(214 + i), "stateProvince", "Algarve", "county", "Castro Marim"})
		}
		all[5] = []string{"recordNumber", "219", "stateProvince", "Algarve", "county", last}
		return rows(all...)
	}
	countries := func(last string) []map[string]string {
		var all [][]string
		for i := range fewRecords {
			all = append(all, []string{"recordNumber", itoa(214 + i), "country", ""})
		}
		all[fewRecords-1] = []string{"recordNumber", "218", "country", last}
		return rows(all...)
	}
	return []check.Rule{{
		Name: "place-spelling", Severity: label.Warning, Source: practice,
		Doc: "a country, state, county or municipality with a letter or an accent less, more or other than in more records of the table", Terms: landTerms[:],
		Example: run("Castro Marin"), Counterexample: run("Castro Verde"),
		Table: func() check.TableRule { return &landTable{} },
	}, {
		Name: "country-missing", Severity: label.Warning, Source: practice,
		Doc: "a record with a place names no country, which a label must, where the others do; or none of the table does, or has it in the column of states", Terms: []string{"country", "countryCode"},
		Example: countries(""), Counterexample: countries("Portugal"),
		Table: func() check.TableRule { return &countryNamed{} },
	}}
}

// countryNamed keeps the records that name a place and neither country nor sea.
type countryNamed struct {
	file    string
	named   int
	without []cell // the first, at most mostCountryless
	count   int
	told    int    // of those, how many begin or end their locality with a country
	above   int    // and how many have a country where the state belongs
	state   string // the first such
	at      label.Origin
}

// mostCountryless are named one by one; 12 bytes each.
const mostCountryless = 10000

// fewRecords are too few for a word about the whole table.
const fewRecords = 5

func (t *countryNamed) Feed(r *check.Record) {
	for _, term := range []string{"country", "countryCode", "waterBody", "continent", "higherGeography"} {
		if r.Text(term) != "" {
			t.named++
			return
		}
	}
	for _, term := range []string{"stateProvince", "county", "municipality", "locality"} {
		if r.Text(term) == "" || check.Absent(term, r.Text(term)) {
			continue
		}
		t.file = r.Origin.File
		if t.named == 0 && tellsLand(r.Text("locality")) {
			t.told++
		}
		if t.count++; t.count <= mostCountryless {
			t.without = append(t.without, cell{int32(r.Row), int32(r.Origin.Line), 0})
		}
		if term == "stateProvince" && t.above == t.count-1 && isLand(r.Text(term)) { // as all so far
			if t.above++; t.above == 1 {
				t.state, t.at = strings.Clone(r.Text(term)), r.Field(term).Origin
			}
		}
		return
	}
}

// tellsLand reports whether a locality begins or ends with the name of a country:
// "Portugal: Minho, Valdoura", "USA-MI", "Serra de Valdoura, Portugal".
func tellsLand(locality string) bool {
	first, last := locality, ""
	if i := strings.IndexAny(locality, ",:;/|-("); i >= 0 {
		first = locality[:i]
		last = strings.Trim(locality[strings.LastIndexAny(locality, ",:;/|-("):], " ,:;/|-().")
	}
	for _, s := range []string{strings.TrimSpace(first), last} {
		if s == "USA" || s == "U.S.A." || s == "UK" || s == "U.K." || isLand(s) {
			return true
		}
	}
	// No sign need part the names of places in Chinese, Japanese and Korean.
	if rs := []rune(first); len(rs) > 1 && unicode.In(rs[0], unicode.Han, unicode.Hangul, unicode.Katakana) {
		for n := 2; n <= min(len(rs), 6); n++ {
			if isLand(string(rs[:n])) {
				return true
			}
		}
	}
	return false
}

// isLand reports whether a text is the name of a country alone. Codes are of states as
// well: CA, DE. Alaska and the Azores, which old records name as their country, are
// states of one; so are lands that belong to another: Puerto Rico, Réunion.
func isLand(s string) bool {
	if len(s) < 4 || alsoStates[strings.ToLower(s)] {
		return false
	}
	c, ok := place.Country(s)
	return ok && len(place.StatesNamed(c.Code, s)) == 0 && !strings.Contains(partsOfOthers, " "+c.Code+" ")
}

// partsOfOthers are lands with a code of their own that are written as states of the
// country they belong to.
const partsOfOthers = " AS GU MP PR VI HK MO RE GP MQ GF YT PM BL MF NC PF WF GL FO AX SJ AW BQ CW SX "

// alsoStates are the names of countries that states and provinces bear too, most
// of them of another country, and names of parts of a country that are read as it.
var alsoStates = map[string]bool{"georgia": true, "luxembourg": true, "luxemburg": true, "niger": true, "zaire": true, "mexico": true, "méxico": true,
	"guatemala": true, "panama": true, "panamá": true, "belize": true, "djibouti": true, "guyana": true, "namibia": true, "macau": true, "jersey": true,
	"england": true, "scotland": true, "wales": true, "northern ireland": true, "inglaterra": true, "angleterre": true, "escócia": true, "escocia": true,
	"canary islands": true, "islas canarias": true, "svalbard": true, "jan mayen": true, "spitsbergen": true, "zanzibar": true, "tanganyika": true,
	"trinidad": true, "tobago": true, "antigua": true, "bosnia": true, "bonaire": true, "wallis": true, "ascension island": true, "tristan da cunha": true}

func (t *countryNamed) End() []label.Finding {
	switch {
	case t.count == 0 || t.named == 0 && t.count < fewRecords:
		return nil
	case t.named == 0 && t.above == t.count:
		return []label.Finding{{Origin: t.at, Value: t.state, Message: "a country, as in every record, stands where the state or province belongs: give the column the heading \"country\""}}
	case t.named == 0 && 5*t.told >= 4*t.count:
		return nil // the localities do, and labels print them
	case t.named == 0:
		return []label.Finding{{Origin: t.without[0].origin(t.file, "country"), Message: "no record of the table names a country: give it a column \"country\", for a label must say in which land a place lies"}}
	case t.named < t.count || t.named+t.count < fewRecords:
		return nil // the column is something else
	}
	var all []label.Finding
	for _, c := range t.without {
		all = append(all, label.Finding{Origin: c.origin(t.file, "country"), Message: "no country is given, as in the other records: fill it in, for a label must say in which land a place lies"})
	}
	return all
}

// land is one way in which a land is written.
type land struct {
	within, text string // the land around it, in which names are compared
	count        int
	cells        [rareRecords]cell // the first
	placed       bool
	box          [4]float32 // of the places of its records: south, west, north, east
}

// sameReach is how far from all of a land's places a record of another spelling
// may lie to be of the same, in metres, by the place in landTerms: a municipality is small.
var sameReach = [len(landTerms)]float64{2: 100e3, 3: 40e3, 1: 200e3}

// include takes note of where a record lies.
func (l *land) include(r *check.Record) {
	if !r.HasCoordinates {
		return
	}
	lat, lon := float32(r.Coordinates.Lat.Degrees()), float32(r.Coordinates.Lon.Degrees())
	if !l.placed {
		l.placed, l.box = true, [4]float32{lat, lon, lat, lon}
	}
	l.box = [4]float32{min(l.box[0], lat), min(l.box[1], lon), max(l.box[2], lat), max(l.box[3], lon)}
}

// accentsApart reports whether only accents tell apart two names of one land or
// state: they are of one, however wide it is.
func accentsApart(l, other *land) bool {
	return l.within != "" && strings.EqualFold(check.PlainLetters(l.text), check.PlainLetters(other.text))
}

// isOther reports whether two names that are all but alike may be of two lands.
func (l *land) isOther(as *land, term int) bool {
	switch {
	case term == 0, accentsApart(l, as):
		return false
	case term > 1 && l.count > 1 && as.count < 3*l.count:
		return true // both stand in several records
	}
	return l.isFar(as, sameReach[term])
}

// isFar reports whether a land lies farther from all places of another than reach.
func (l *land) isFar(other *land, reach float64) bool {
	if !l.placed || !other.placed {
		return false
	}
	lat, lon := l.box[0], l.box[1]
	return distance(float64(lat), float64(lon), float64(min(max(lat, other.box[0]), other.box[2])), float64(min(max(lon, other.box[1]), other.box[3]))) > reach
}

// isNear reports whether a land is so close to one that is far commoner, or is a country
// that there is not, that a short name, too, is told from that of another.
func (l *land) isNear(as *land, term int) bool {
	switch {
	case as.count < max(common, 3*l.count):
		return false
	case term == 0:
		return place.CountriesNamed(l.text) == nil && place.CountriesNamed(as.text) != nil
	}
	return term > 1 && l.placed && as.placed && !l.isFar(as, nearLands)
}

// nearLands is how far about the places of a county or municipality its name is held
// against others, in metres.
const nearLands = 3e3

// shortSlip reports whether a short name is another but for a letter that stands
// twice, once for twice, or for two neighbours exchanged: no two places are called so.
func shortSlip(a, b string) bool {
	x, y := []rune(strings.ToLower(check.PlainLetters(a))), []rune(strings.ToLower(check.PlainLetters(b)))
	if len(x) > len(y) {
		x, y = y, x
	}
	if len(x) < 4 || x[0] != y[0] || strings.ContainsAny(a+b, "0123456789/ ") || len(y)-len(x) > 1 {
		return false
	}
	i := 0
	for i < len(x) && x[i] == y[i] {
		i++
	}
	if len(x) < len(y) {
		return y[i] == y[i-1] && string(x[i:]) == string(y[i+1:])
	}
	return i+1 < len(x) && x[i] == y[i+1] && x[i+1] == y[i] && string(x[i+2:]) == string(y[i+2:])
}

// Lands of this many different names are not compared: the column holds something else.
const mostLands = 5000

// landTable keeps some 150 bytes for each name of a land.
type landTable struct {
	file  string
	lands [len(landTerms)]map[[2]string]*land
	last  [len(landTerms)]*land // of the row above, as most are
}

func (t *landTable) Feed(r *check.Record) {
	within := ""
	for i, term := range landTerms {
		f := r.Field(term)
		if f.Text == "" || len(f.Text) > 60 || r.Doubted(term) {
			continue
		}
		l := t.last[i]
		if l == nil || l.text != f.Text || l.within != within {
			key := [2]string{within, f.Text}
			if l = t.lands[i][key]; l == nil {
				if len(t.lands[i]) >= mostLands {
					continue
				}
				l = &land{within: strings.Clone(within), text: strings.Clone(f.Text)}
				if t.lands[i] == nil {
					t.lands[i] = map[[2]string]*land{}
				}
				t.lands[i][[2]string{l.within, l.text}] = l
			}
			t.last[i] = l
		}
		if l.count < len(l.cells) {
			l.cells[l.count] = cellOf(f)
			t.file = f.Origin.File
		}
		l.count++
		l.include(r)
		if i < 2 { // counties are compared within their state, states within their country
			within = f.Text
		}
	}
}

func (t *landTable) End() []label.Finding {
	var all []label.Finding
	for i, term := range landTerms {
		around := map[string][]*land{}
		for _, l := range t.lands[i] {
			around[l.within] = append(around[l.within], l)
		}
		for _, list := range around {
			slices.SortFunc(list, func(a, b *land) int {
				return cmp.Or(cmp.Compare(b.count, a.count), strings.Compare(a.text, b.text))
			})
			for n, l := range list {
				if l.count > rareRecords {
					continue
				}
				at := slices.IndexFunc(list[:n], func(as *land) bool {
					return sameLand(l.text, as.text) && !l.isOther(as, i) || l.isNear(as, i) && shortSlip(l.text, as.text)
				})
				if at < 0 {
					continue
				}
				f := label.Finding{
					Origin: l.cells[0].origin(t.file, term), Value: l.text, Also: also(term, l.cells[1:l.count]),
					Message: fmt.Sprintf("is spelt %q in %s of the table", list[at].text, plural(list[at].count, "record")),
				}
				if list[at].count > 3*l.count {
					f.Suggest = list[at].text
				} else {
					f.Message += ": keep the right one in all"
				}
				all = append(all, f)
			}
		}
	}
	slices.SortFunc(all, func(a, b label.Finding) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), strings.Compare(a.Term, b.Term))
	})
	return all
}

// sameLand tells whether two names are likely those of one land: only accents
// differ, or one letter does in a long name. Short names of neighbours differ by
// a letter (Shanxi and Shaanxi, Cauca and Cuenca); so do compass points.
func sameLand(a, b string) bool {
	if strings.EqualFold(a, b) || strings.HasSuffix(a, "?") != strings.HasSuffix(b, "?") {
		return false // capitals say nothing, and a question mark is a doubt
	}
	x, y := check.PlainLetters(a), check.PlainLetters(b)
	if strings.EqualFold(x, y) {
		return len(x) >= 4
	}
	if len(x) < 8 || len(y) < 8 || x[0]|0x20 != y[0]|0x20 || strings.ContainsAny(a+b, "0123456789/") || compassPart(x) != compassPart(y) {
		return false
	}
	v, w := strings.Fields(strings.ToLower(x)), strings.Fields(strings.ToLower(y))
	if len(v) != len(w) {
		return false
	}
	differ := false
	least := 5
	if saints[v[0]] { // Santa Maria is not Santa Marta
		least = 8
	}
	for i := range v {
		if v[i] == w[i] {
			continue
		}
		if differ || len(v[i]) < least || len(w[i]) < least || !within([]rune(v[i]), []rune(w[i]), 1) { // Region X is not Region V
			return false
		}
		differ = true
	}
	return differ
}

// saints begin the names of places that go on with a name, of which many are alike.
var saints = map[string]bool{"santa": true, "santo": true, "sao": true, "san": true, "sant": true, "sankt": true, "saint": true, "sainte": true, "st": true, "st.": true, "ste": true, "sta": true, "sta.": true}

// compassPart is the word for a side in a land's name, "" if there is none.
func compassPart(name string) string {
	for w := range strings.FieldsFuncSeq(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == '-' || r == '.' }) {
		switch w {
		case "n", "s", "e", "w", "o", "north", "south", "east", "west", "norte", "sur", "sul", "este", "leste", "oeste", "nord", "sud", "est", "ouest", "ost", "upper", "lower", "alta", "alto", "baja", "bajo", "baixa", "baixo":
			return w
		}
	}
	return ""
}
