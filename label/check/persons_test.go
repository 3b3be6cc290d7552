package check

import (
	"bufio"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Persons are told apart as testdata/people.txt has them, and what is wrong with
// the way they are written is said, and nothing else.
func TestPeople(t *testing.T) {
	f, err := os.Open(filepath.Join("testdata", "people.txt"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	n, apart, alarms, misses := 0, 0, 0, 0
	for s := bufio.NewScanner(f); s.Scan(); {
		if strings.HasPrefix(s.Text(), "# ") {
			continue
		}
		line, fault, _ := strings.Cut(s.Text(), "\t")
		in, want, _ := strings.Cut(line, " -> ")
		n++
		rs, fs := run(t, New(options(t)), open(t, one("recordedBy", in)...))
		got := ""
		if r := rs[0]; r.Collector != "" {
			got = strings.Join(append([]string{r.Collector}, r.Others...), " ¦ ")
		}
		if got != strings.TrimSpace(want) {
			apart++
			t.Errorf("%s: %q, not %q", in, got, want)
		}
		said := ""
		for _, f := range fs {
			said += f.Rule
			t.Log(f)
		}
		switch {
		case said == fault:
		case fault == "":
			alarms++
			t.Errorf("%s: %s, which is no fault", in, said)
		default:
			misses++
			t.Errorf("%s: %q, not %s", in, said, fault)
		}
	}
	t.Logf("%d wordings: %d told apart wrongly, %d false alarms, %d missed", n, apart, alarms, misses)
	if n < 100 {
		t.Error("too few")
	}
}

// What says nothing is told once, whatever words it uses; what means something is
// left alone.
func TestPhrases(t *testing.T) {
	for _, tt := range []struct{ term, text, rule string }{
		{"recordNumber", "-1", "placeholder"}, {"recordNumber", "-9", "placeholder"}, {"recordNumber", "-12", ""},
		{"identifiedBy", "Determiner unspecified", "placeholder"}, {"identifiedBy", "unknown", "placeholder"}, {"identifiedBy", "NO DISPONIBLE", "placeholder"},
		{"identifiedBy", "[data not captured]", "placeholder"}, {"family", "Unknown", ""}, {"habitat", "No data.", "placeholder"},
		{"recordedBy", "Collector unspecified", "placeholder"}, {"recordedBy", "Sem coletor", "placeholder"}, {"recordedBy", "NA", "collector-missing"},
		{"recordedBy", "Unknown", ""}, {"recordedBy", "anonymous", ""}, {"geodeticDatum", "not recorded", ""}, {"locality", "unknown valley near the station", ""},
		{"stateProvince", "Unknown", "placeholder"}, {"county", "[unknown]", "placeholder"}, {"country", "desconhecido", "placeholder"}, {"locality", "Unknown", ""},
		{"locality", "SUPPRESSED", "placeholder"}, {"locality", "[Location withheld]", "placeholder"}, {"locality", "Suppressed spring, 2 km N", ""}, {"verbatimLocality", "Locality information withheld", "placeholder"},
		{"locality", "Coordinates withheld to protect a rare species", "placeholder"}, {"locality", "dados sensíveis", "placeholder"}, {"locality", "Record has been generalised.", "placeholder"},
		{"locality", "Sensitive species: location information withheld. Contact the herbarium for details.", "placeholder"}, {"locality", "Localité masquée", "placeholder"},
		{"locality", "Localização exata omitida", "placeholder"}, {"locality", "Koordinaten zurückgehalten", "placeholder"}, {"locality", "Datos sensibles", "placeholder"},
		{"locality", "Near the station, exact locality withheld", ""}, {"locality", "Record Hill, masked by fog", ""}, {"locality", "Location of the old mill", ""}, {"locality", "Rare plant garden, 2 km N", ""},
		{"occurrenceRemarks", "Coordinates withheld by the collector", ""}, {"locality", "La localidad de Reserva Oculta", ""},
		{"occurrenceRemarks", "missing", "placeholder"}, {"habitat", "flowers missing", ""}, {"identifiedBy", "B. Missing", ""}, {"disposition", "missing", ""},
	} {
		_, fs := run(t, New(options(t)), open(t, one(tt.term, tt.text)...))
		got := ""
		for _, f := range fs {
			got += f.Rule
		}
		if got != tt.rule {
			t.Errorf("%s %q: %q, not %q", tt.term, tt.text, got, tt.rule)
		}
	}
}

// None is a town, Null and Na are surnames, where the row says so.
func TestNamesThatSayNothing(t *testing.T) {
	for _, tt := range []struct {
		pairs []string
		rules string
	}{
		{[]string{"country", "Italy", "stateProvince", "Piemonte", "municipality", "None"}, ""},
		{[]string{"country", "Italy", "stateProvince", "Piemonte", "county", "Torino", "locality", "None"}, ""},
		{[]string{"country", "Italy", "stateProvince", "Lazio", "municipality", "None"}, "placeholder"},
		{[]string{"country", "Italy", "stateProvince", "Piemonte", "municipality", "none"}, "placeholder"},
		{[]string{"country", "Italy", "stateProvince", "Piemonte", "habitat", "None"}, "placeholder"},
		{[]string{"recordedBy", "Null"}, ""}, {[]string{"recordedBy", "P. Null"}, ""}, {[]string{"recordedBy", "Na"}, ""}, {[]string{"recordedBy", "S. Na"}, ""},
		{[]string{"identifiedBy", "NULL"}, "placeholder"}, {[]string{"recordedBy", "null"}, "collector-missing"},
	} {
		_, fs := run(t, New(options(t)), open(t, one(append([]string{"decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""}, tt.pairs...)...)...))
		got := ""
		for _, f := range fs {
			got += f.Rule
		}
		if got != tt.rules {
			t.Errorf("%v: %q, not %q", tt.pairs, got, tt.rules)
		}
	}
}

// A word for what nobody has named is no genus and no epithet.
func TestNoTaxon(t *testing.T) {
	for _, tt := range []struct {
		pairs       []string
		name, rules string
	}{
		{[]string{"genus", "Erica", "specificEpithet", "unidentified", "scientificName", ""}, "Erica", "placeholder"},
		{[]string{"genus", "Erica", "specificEpithet", "sp.", "scientificName", ""}, "Erica sp.", ""},
		{[]string{"genus", "Erica", "scientificName", "unidentified"}, "Erica", "placeholder"},
		{[]string{"genus", "unidentified", "scientificName", "unidentified"}, "unidentified", "placeholder"},
		{[]string{"scientificName", "Unidentified"}, "Unidentified", ""},
		{[]string{"genus", "ni", "specificEpithet", "NI", "scientificName", "n.i."}, "Ericaceae", "placeholder placeholder placeholder"},
		{[]string{"genus", "Erica", "specificEpithet", "nivea", "scientificName", "Erica nivea"}, "Erica nivea", ""},
	} {
		rs, fs := run(t, New(options(t)), open(t, one(append(tt.pairs, "scientificNameAuthorship", "", "family", "Ericaceae")...)...))
		var got []string
		for _, f := range fs {
			got = append(got, f.Rule)
		}
		if s := strings.Join(got, " "); s != tt.rules || rs[0].Name != tt.name {
			t.Errorf("%v: %s, %q, want %s, %q", tt.pairs, s, rs[0].Name, tt.rules, tt.name)
		}
	}
}

// A fault of a name that its columns make is told in the column that has it.
func TestNameOfColumns(t *testing.T) {
	for _, tt := range []struct {
		pairs []string
		term  string
	}{
		{[]string{"genus", "Myrcia", "specificEpithet", "eugeniopsoides", "scientificNameAuthorship", "( D.Legrand & Kausel) D.Legrand"}, "scientificNameAuthorship"},
		{[]string{"genus", "Crepidomanes", "specificEpithet", "minutum2", "scientificNameAuthorship", "(Blume) K.Iwats."}, "specificEpithet"},
		{[]string{"genus", "myrcia", "specificEpithet", "guianensis", "scientificNameAuthorship", ""}, "genus"},
		{[]string{"genus", "Myrcia", "specificEpithet", "guianensis", "scientificNameAuthorship", "(Aubl. DC."}, "scientificNameAuthorship"},
	} {
		_, fs := run(t, New(options(t)), open(t, one(append(tt.pairs, "scientificName", "", "family", "")...)...))
		if len(fs) != 1 || fs[0].Rule != "name-form" || fs[0].Term != tt.term {
			t.Errorf("%v: %v", tt.pairs, fs)
		}
	}
}

// TestNumberWithCollector: a number behind the collector is told once, and no
// missing number beside it; a table of them is one habit.
func TestNumberWithCollector(t *testing.T) {
	for _, tt := range []struct{ by, number, rules string }{
		{"I. Almeida 187", "", "person-form"},
		{"collectors: I. Almeida 187a", "", "person-form"},
		{"leg. I. Almeida", "", "number-missing person-form"},
		{"collected by I. Almeida", "12", "person-form"},
		{"gesammelt von Teresa Brandão", "12", "person-form"},
		{"Recolhido por I. Almeida", "12", "person-form"},
		{"Leg I. Almeida", "12", "person-form"},
		{"Legrand, P.", "12", ""},
		{"Leg Sarmento", "12", ""},
		{"I. Almeida s.n.", "", "person-form"},
		{"D Almeida 14243", "", "person-form"},
		{"Coll.: Almeida 66", "", "person-form"},
		{"Coll. B Almeida BA-78", "", "person-form"},
		{"I. Almeida 83-98", "", "person-form"},
		{"I. Alme1da", "12", "person-form"},
		{"Group 4b students", "12", ""},
		{"I. Almeida 1983-1998", "", "number-missing"},
		{"Exp. Valdoura 1998", "", "number-missing"},
	} {
		_, fs := run(t, New(options(t)), open(t, one("recordedBy", tt.by, "recordNumber", tt.number)...))
		var got []string
		for _, f := range fs {
			got = append(got, f.Rule)
		}
		if s := strings.Join(got, " "); s != tt.rules {
			t.Errorf("%s: %s, want %s", tt.by, s, tt.rules)
		}
	}
}
