package trade

import (
	"fmt"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// shortStateRules are about states of which a few are written as their code.
func shortStateRules() []check.Rule {
	in := func(states ...string) []map[string]string {
		var all [][]string
		for i, s := range states {
			all = append(all, []string{"recordNumber", itoa(214 + i), "country", "Brasil", "stateProvince", s, "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""})
		}
		return rows(all...)
	}
	return []check.Rule{{
		Name: "state-short", Severity: label.Note, Source: practice,
		Doc: "a state's code where the table writes the states of that country in full", Terms: []string{"stateProvince"},
		Example: in("Paraná", "Paraná", "Santa Catarina", "RS"), Counterexample: in("PR", "PR", "SC", "RS"),
		Table: func() check.TableRule { return &shortStates{of: map[string]*statesWritten{}} },
	}}
}

// statesWritten are the states of a country as a table has them.
type statesWritten struct {
	full  map[string]int // records by text
	short map[string][]cell
	codes []string // the keys of short, as they came
}

// shortStates keeps a count for each state, and the cells that hold a code: some 24 bytes
// each, of two thousand at most.
type shortStates struct {
	file      string
	countries []string
	of        map[string]*statesWritten
	kept      int
}

const mostShort = 2000

func (t *shortStates) Feed(r *check.Record) {
	f, country := r.Field("stateProvince"), r.Text("country")
	if country == "" {
		country = r.Text("countryCode")
	}
	if len(f.Text) < 2 || country == "" || t.kept > mostShort {
		return
	}
	w := t.of[country]
	if w == nil {
		w = &statesWritten{full: map[string]int{}, short: map[string][]cell{}}
		country = strings.Clone(country)
		t.of[country], t.countries = w, append(t.countries, country)
	}
	if len(f.Text) > 3 {
		if n, ok := w.full[f.Text]; ok {
			w.full[f.Text] = n + 1
		} else if len(w.full) < mostShort {
			w.full[strings.Clone(f.Text)] = 1
		}
		return
	}
	if strings.Trim(f.Text, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return
	}
	code := strings.Clone(f.Text)
	if _, ok := w.short[code]; !ok {
		w.codes = append(w.codes, code)
	}
	t.file = f.Origin.File
	w.short[code] = append(w.short[code], cellOf(f))
	t.kept++
}

func (t *shortStates) End() []label.Finding {
	var all []label.Finding
	for _, country := range t.countries {
		w := t.of[country]
		lands := place.CountriesNamed(country)
		if len(lands) == 0 && place.IsCountryCode(country) {
			lands = []string{country}
		}
		if len(lands) != 1 || len(w.codes) == 0 || t.kept > mostShort {
			continue
		}
		full, short := 0, 0
		for text, n := range w.full {
			if len(place.StatesNamed(lands[0], text)) > 0 {
				full += n
			}
		}
		for _, code := range w.codes {
			short += len(w.short[code])
		}
		if full < 3 || 2*short > full {
			continue
		}
		for _, code := range w.codes {
			named := place.StatesNamed(lands[0], code)
			if len(named) != 1 || strings.EqualFold(named[0].Name, code) {
				continue
			}
			cells := w.short[code]
			all = append(all, label.Finding{Origin: cells[0].origin(t.file, "stateProvince"), Value: code, Suggest: named[0].Name, Also: also("stateProvince", cells[1:]),
				Message: fmt.Sprintf("the code of a state, which the table writes in full elsewhere: %s is meant", named[0].Name)})
		}
	}
	return all
}
