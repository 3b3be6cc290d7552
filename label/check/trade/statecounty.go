package trade

import (
	"regexp"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// stateCountyRule is about a county in the place of a state.
func stateCountyRule(where *finder) check.Rule {
	bare := func(number, state, county string) []string {
		return []string{"recordNumber", number, "country", "United States", "stateProvince", state, "county", county, "municipality", "", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}
	}
	return check.Rule{
		Name: "state-county", Severity: label.Warning, Source: "Natural Earth admin-1 at 1:10,000,000; " + practice,
		Doc: "a county where the state is written: the two exchanged, as other rows of the table or the word County show, or in the United States a county without its state", Terms: []string{"stateProvince"},
		Example:        rows(bare("214", "California", "Alameda"), bare("215", "Alameda", "California")),
		Counterexample: rows(bare("214", "California", "Alameda"), bare("215", "Penna", "Washington")),
		Table:          func() check.TableRule { return &stateCounties{where: where} },
	}
}

// countyWord ends the name of a county in the United States and in the British Isles.
var countyWord = regexp.MustCompile(`(?i)^\pL[\pL .'-]* (county|co\.?|parish|borough)$`)

// A countyKey is a county of a country.
type countyKey struct{ country, county string }

// A mistaken is a cell of stateProvince that names no state.
type mistaken struct {
	cell
	country, text string
	county        string // what stands as the county
	other         bool   // it names a state
}

// stateCounties keeps in which state each county lies, and the cells that may be
// counties: few of a table that is sound.
type stateCounties struct {
	where   *finder
	file    string
	state   map[countyKey]string // by the county as rows have it; "" if there are several
	suspect []mistaken
}

// mostKept bounds what is kept of a table's counties.
const mostKept = 20000

// mostSuspects is how many cells are kept: a table of more writes its states in a way
// that is not known here.
const mostSuspects = 2000

func (s *stateCounties) Feed(r *check.Record) {
	f := r.Field("stateProvince")
	if f.Text == "" || len(s.suspect) >= mostSuspects {
		return
	}
	country := s.country(r)
	if country == "" {
		return
	}
	county := r.Text("county")
	if s.isState(country, f.Text) {
		if county == "" || len(s.state) > mostKept {
			return
		}
		if s.state == nil {
			s.state = map[countyKey]string{}
		}
		key := countyKey{country, county}
		if was, ok := s.state[key]; !ok {
			s.state[countyKey{country, strings.Clone(county)}] = strings.Clone(f.Text)
		} else if was != "" && was != f.Text {
			s.state[key] = ""
		}
		return
	}
	other := county != "" && s.isState(country, county)
	if !other && (county != "" || country != "US") {
		return
	}
	s.file = f.Origin.File
	s.suspect = append(s.suspect, mistaken{cellOf(f), country, strings.Clone(f.Text), strings.Clone(county), other})
}

// country is the code of the one country that a record names, if its states are known;
// else "".
func (s *stateCounties) country(r *check.Record) string {
	text := r.Text("country")
	if text == "" {
		text = r.Text("countryCode")
	}
	if codes := s.where.lands(text); len(codes) == 1 && place.HasStates(codes[0]) {
		return codes[0]
	}
	return ""
}

// isState reports whether a text names a state of the country.
func (s *stateCounties) isState(country, text string) bool {
	return len(s.where.statesOf(country, text)) > 0
}

// foldCounty is a county without the word for it.
func foldCounty(s string) string {
	s = strings.ToLower(strings.TrimSpace(s))
	if countyWord.MatchString(s) {
		s = s[:strings.LastIndexByte(s, ' ')]
	}
	return s
}

func (s *stateCounties) End() []label.Finding {
	folded := map[countyKey]string{}
	for key, state := range s.state {
		key.county = foldCounty(key.county)
		if was, ok := folded[key]; ok && was != state {
			state = ""
		}
		folded[key] = state
	}
	var all []label.Finding
	for _, m := range s.suspect {
		state, known := folded[countyKey{m.country, foldCounty(m.text)}]
		named := countyWord.MatchString(m.text)
		f := label.Finding{Origin: m.origin(s.file, "stateProvince"), Value: m.text}
		switch {
		case m.other && (named || known && (state == "" || sameState(m.country, state, m.county))):
			f.Message, f.Suggest = "a county stands here, and its state "+m.county+" in county: exchange the two", m.county
		case !m.other && (named || known):
			f.Message = "a county stands here, and no state: move it to county, and write the state here"
			if state != "" {
				f.Suggest = state
			}
		default:
			continue
		}
		all = append(all, f)
	}
	return all
}

// sameState reports whether two texts name a state in common.
func sameState(country, a, b string) bool {
	for _, x := range place.StatesNamed(country, a) {
		for _, y := range place.StatesNamed(country, b) {
			if x == y {
				return true
			}
		}
	}
	return false
}
