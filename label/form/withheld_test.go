package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// A place that is withheld stands on our own label and not on gifts, nor does
// what describes the site.
func TestWithheld(t *testing.T) {
	for _, c := range []struct {
		name string
		row  []string
		o    Options
	}{
		{"informationWithheld", []string{"informationWithheld", "position withheld"}, Options{}},
		{"dataGeneralizations", []string{"dataGeneralizations", "coarsened"}, Options{}},
		{"list of taxa", nil, Options{Sensitive: func(r *check.Record) bool { return strings.HasPrefix(r.Name, "Cytisus") }}},
	} {
		r := record(t, base(append(c.row, "duplicatesTo", "PINHEL", "minimumElevationInMeters", "1240", "locationRemarks", "by the bridge",
			"project", "Plants of the Zêzere", "associatedTaxa", "Erica australis", "occurrenceRemarks", "below the dam", "eventRemarks", "second visit",
			"fieldNotes", "park at km 7", "plantDescription", "Shrub 1.6 m", "vernacularName", "giesta", "permits", "Licence 12/2026", "wildOrigin", "Guarda")...)...)
		all := Sheet(r, c.o)
		if got := block(all[0], label.Place); got != "PORTUGAL. Guarda: Manteigas, above Caldas. by the bridge." {
			t.Errorf("%s: own label says %q", c.name, got)
		}
		own := lines(all[0])
		for _, word := range []string{"Open scrub", "Erica", "below the dam", "second visit", "km 7", "Zêzere", "Wild origin"} {
			if !strings.Contains(own, word) {
				t.Errorf("%s: our own label lacks %q", c.name, word)
			}
		}
		want := "Cytisus striatus (Hill) Rothm.\tFabaceae\nPORTUGAL. Guarda. Exact place and habitat withheld.\nShrub 1.6 m.\n" +
			"Vernacular name: giesta. Licence 12/2026.\nI. Almeida 214\t14 June 2026\nwith T. Brandão\tDupl.: PINHEL"
		if got := lines(all[1]); got != want {
			t.Errorf("%s: the gift says\n%s\nwant\n%s", c.name, got, want)
		}
		if !Coarsened(r, c.o) {
			t.Errorf("%s: the run is not told", c.name)
		}
	}
	if Coarsened(record(t, base()...), Options{}) {
		t.Error("an open record counts as withheld")
	}
	// Where nothing but the place was said, nothing else is said to be missing.
	r := record(t, base("habitat", "", "informationWithheld", "position", "duplicatesTo", "PINHEL")...)
	if got := block(Sheet(r, Options{})[1], label.Place); got != "PORTUGAL. Guarda. Exact place withheld." {
		t.Errorf("the gift says %q", got)
	}
}

// What is about the plant stays on a gift unless it names the place.
func TestWithheldWords(t *testing.T) {
	for _, c := range []struct {
		term, text string
		kept       bool
	}{
		{"plantDescription", "Shrub 1.6 m; flowers yellow", true},
		{"plantDescription", "Shrub 1.6 m, the largest at Caldas", false},
		{"plantDescription", "Shrub, frequent from Guarda on", true}, // the province is said anyway
		{"plantDescription", "Caldasia-like flowers", true},
		{"uses", "Brooms, made in Manteigas", false},
		{"vernacularName", "giesta | maia [Manteigas]", false},
		{"vernacularName", "giesta", true},
		{"identificationRemarks", "Keys out in Flora iberica", true},
		{"fundingAttribution", "Friends of the springs above Caldas", false},
		{"permits", "Licence 12/2026, Caldas only", true}, // as it was issued
		{"restrictions", "No living material from above Caldas", true},
	} {
		r := record(t, base(c.term, c.text, "informationWithheld", "position", "duplicatesTo", "PINHEL")...)
		words := strings.Fields(c.text)
		if got := strings.Contains(lines(Sheet(r, Options{})[1]), words[len(words)-1]); got != c.kept {
			t.Errorf("%s %q: kept %v, want %v", c.term, c.text, got, c.kept)
		}
		want := 0
		if (c.term == "permits" || c.term == "restrictions") && c.kept {
			want = 1
		}
		if got := GivesAway(r, Options{}); len(got) != want {
			t.Errorf("%s %q gives away %v", c.term, c.text, got)
		}
	}
	open := record(t, base("permits", "Licence 12/2026, Caldas only", "duplicatesTo", "PINHEL")...)
	kept := record(t, base("permits", "Licence 12/2026, Caldas only", "informationWithheld", "position")...)
	if len(GivesAway(open, Options{}))+len(GivesAway(kept, Options{})) > 0 {
		t.Error("a permit gives a place away that is not withheld, or goes nowhere")
	}
}

// No gift of a withheld record in the example trip holds a word of its site.
func TestWithheldTrip(t *testing.T) {
	n := 0
	for style, o := range styles() {
		for _, r := range trip(t) {
			if !Coarsened(r, o) {
				continue
			}
			for c := range labelsOf(r, o) {
				if c.For == "" {
					continue
				}
				n++
				text := lines(c)
				for _, term := range siteColumns {
					if cell := r.Text(term); len(cell) > 3 && strings.Contains(text, cell) && !strings.Contains(r.Text("stateProvince"), cell) {
						t.Errorf("%s: row %d for %s says %s %q", style, r.Row, c.For, term, cell)
					}
				}
				for _, f := range faults(c) {
					t.Errorf("%s: row %d for %s: %s", style, r.Row, c.For, f)
				}
			}
		}
	}
	if n == 0 {
		t.Error("the trip has no gift of a withheld record")
	}
}

// A country stands as it was written; only a code alone is put into words, in
// the label's language or languages.
func TestCountry(t *testing.T) {
	names := map[string]string{"PT en": "Portugal", "PT pt": "Portugal", "ES en": "Spain", "ES pt": "Espanha", "ES de": "Spanien"}
	for _, c := range []struct {
		country, code, lang, second, want string
	}{
		{"PORTUGAL", "ES", "", "", "PORTUGAL."},
		{"Espanha", "ES", "en", "", "Espanha."},
		{"ES", "", "", "", "Spain."},
		{"ES", "", "pt", "en", "Espanha / Spain."},
		{"UK", "", "", "", "UK."},
		{"XX", "", "", "", "XX."},
		{"", "ES", "", "", "Spain."},
		{"", "ES", "de", "", "Spanien."},
		{"", "ES", "pt", "en", "Espanha / Spain."},
		{"", "PT", "pt", "en", "Portugal."},
		{"", "XX", "pt", "", "XX."},
	} {
		o := Options{Country: func(code string, l lang.Tag) string { return names[code+" "+string(l)] }, Lang: lang.Tag(c.lang), Second: lang.Tag(c.second)}
		r := record(t, base("country", c.country, "countryCode", c.code, "stateProvince", "", "municipality", "", "locality", "")...)
		if got := block(Sheet(r, o)[0], label.Place); got != c.want {
			t.Errorf("country %q, code %q in %s %s prints %q, want %q", c.country, c.code, c.lang, c.second, got, c.want)
		}
	}
}

// Lists stay in the record's order unless the house asks; the collectors'
// order is never touched.
func TestSorted(t *testing.T) {
	r := record(t, base("associatedTaxa", "Ulex minor | Erica umbellata | Érica | Erica australis", "duplicatesTo", "SOUTELO | ALTAVX | PINHEL",
		"vernacularName", "maia | giesta", "recordedBy", "I. Almeida | T. Brandão | L. Sarmento")...)
	l := Sheet(r, Options{})[0]
	if got := block(l, label.Plant) + block(l, label.Team) + block(l, label.Notes); !strings.Contains(got, "Ulex minor, Erica umbellata, Érica and Erica australis") ||
		!strings.Contains(got, "SOUTELO, ALTAVX, PINHEL") || !strings.Contains(got, "maia; giesta") {
		t.Errorf("unasked: %q", got)
	}
	l = Sheet(r, Options{Sorted: []string{"associatedTaxa", "duplicatesTo", "vernacularName"}})[0]
	if got := block(l, label.Plant); got != "Open scrub, with Érica, Erica australis, Erica umbellata and Ulex minor." {
		t.Errorf("associates: %q", got)
	}
	if got := block(l, label.Team); got != "with T. Brandão & L. Sarmento\tDupl.: ALTAVX, PINHEL, SOUTELO" {
		t.Errorf("team: %q", got)
	}
	if got := block(l, label.Notes); got != "Vernacular name: giesta; maia." {
		t.Errorf("notes: %q", got)
	}
}
