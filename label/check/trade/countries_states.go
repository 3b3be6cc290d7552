package trade

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// statesOfBrazil are the codes of the states, as everybody writes them there.
// Source: ISO 3166-2:BR, from memory.
const statesOfBrazil = " AC AL AM AP BA CE DF ES GO MA MG MS MT PA PB PE PI PR RJ RN RO RR RS SC SE SP TO "

// stateRules are about stateProvince.
func stateRules() []check.Rule {
	return []check.Rule{{
		Name: "state-capitals", Severity: label.Note, Source: "ISO 3166-2:BR; " + practice,
		Doc: "a state's code of two letters with a small one, where the table or Brazil has it in capitals", Terms: []string{"stateProvince"},
		Example:        rows([]string{"country", "United States", "stateProvince", "OR", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}, []string{"recordNumber", "215", "country", "United States", "stateProvince", "Or", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}),
		Counterexample: one("country", "Fiji", "stateProvince", "Ba", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""),
		Table:          func() check.TableRule { return &stateTable{} },
	}}
}

// stateTable keeps the states of two letters: a name is as rare as two letters
// are many, so some hundred cells at most are kept of a table that is sound.
type stateTable struct {
	file    string
	order   []string            // texts with a small letter, as they came
	small   map[string][]cell   // where they stand
	capital map[string]struct{} // codes in capitals
}

func (s *stateTable) Feed(r *check.Record) {
	f := r.Field("stateProvince")
	if len(f.Text) != 2 || f.Text[0] < 'A' || f.Text[0] > 'Z' {
		return
	}
	switch second := f.Text[1]; {
	case second >= 'A' && second <= 'Z':
		if s.capital == nil {
			s.capital = map[string]struct{}{}
		}
		s.capital[strings.Clone(f.Text)] = struct{}{}
	case second >= 'a' && second <= 'z':
		if s.small == nil {
			s.small = map[string][]cell{}
		}
		key := strings.Clone(f.Text)
		if country := r.Text("country"); strings.EqualFold(country, "Brasil") || strings.EqualFold(country, "Brazil") || r.Text("countryCode") == "BR" {
			key += " BR"
		}
		if _, ok := s.small[key]; !ok {
			s.order = append(s.order, key)
		}
		s.file = f.Origin.File
		s.small[key] = append(s.small[key], cellOf(f))
	}
}

func (s *stateTable) End() []label.Finding {
	var all []label.Finding
	for _, key := range s.order {
		text, brazil := strings.CutSuffix(key, " BR")
		code := strings.ToUpper(text)
		message := "the table has this code in capitals too"
		if _, ok := s.capital[code]; !ok {
			if !brazil || !strings.Contains(statesOfBrazil, " "+code+" ") {
				continue
			}
			message = "the code of a state is written in capitals"
		}
		cells := s.small[key]
		all = append(all, label.Finding{Origin: cells[0].origin(s.file, "stateProvince"), Value: text, Suggest: code, Also: also("stateProvince", cells[1:]), Message: message})
	}
	return all
}
