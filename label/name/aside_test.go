package name

import "testing"

// An epithet in brackets behind the authors is neither the name's nor an author.
func TestEpithetsInBrackets(t *testing.T) {
	for _, c := range []struct{ text, infra, authors string }{
		{"Anthoceros agrestis Paton (punctatus var. cavernosus)", "", "Paton"},
		{"Anthoceros agrestis Paton (crispulus, longispirus)", "", "Paton"},
		{"Bryum algovicum Sendtn. ex Müll.Hal. var. algovicum (pendulum)", "algovicum", "Sendtn. ex Müll.Hal."},
		{"Agave rubescens (salm-dyck) Gentry", "", "(salm-dyck) Gentry"},
		{"Marchantia polymorpha L. var. polymorpha (var. ruderalis)", "polymorpha", "L."},
		{"Marchantia polymorpha var. aquatica Nees (var. polymorpha sensu Bischler)", "aquatica", "Nees"},
		{"Aconitum napellus (ssp. neomontanum)", "neomontanum", ""},
		{`Audouinella codicola "(Børgesen) Garbary, 1979"`, "", "(Børgesen) Garbary, 1979"},
	} {
		if n := Parse(c.text, Parts{}); n.Infraspecific != c.infra || n.Authorship != c.authors || n.Cultivar != "" {
			t.Errorf("%s: infraspecific %q, authors %q, cultivar %q", c.text, n.Infraspecific, n.Authorship, n.Cultivar)
		}
	}
	for _, c := range []struct{ text, suggest string }{
		{"Arctostaphylos uva–ursi (L.) Spreng.", "Arctostaphylos uva-ursi (L.) Spreng."},
		{"Aster novi–belgii novi–belgii", "Aster novi-belgii novi-belgii"},
		{`Audouinella codicola "(Børgesen) Garbary, 1979"`, "Audouinella codicola (Børgesen) Garbary, 1979"},
	} {
		if fs := Faults(c.text, Parts{}); len(fs) == 0 || fs[0].Suggest != c.suggest {
			t.Errorf("%s: %+v", c.text, fs)
		}
	}
	// The dash is the column's hyphen.
	if n := Parse("Asplenium ruta–muraria L.", Parts{Genus: "Asplenium", SpecificEpithet: "ruta-muraria"}); len(n.Problems) > 0 {
		t.Error(n.Problems)
	}
}
