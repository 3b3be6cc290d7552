package name

import (
	"os"
	"strings"
	"testing"

	"cornerslip/label"
)

// marked reads a file of names with their italics marked: a name a line, and
// behind a bar where it comes from.
func marked(t testing.TB, file string) []string {
	t.Helper()
	src, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, line := range strings.Split(string(src), "\n") {
		want, _, _ := strings.Cut(line, " | ")
		if strings.TrimSpace(want) == "" || line[0] == '#' {
			continue
		}
		names = append(names, want)
	}
	return names
}

var unmark = strings.NewReplacer("<i>", "", "</i>", "")

func TestOwnTables(t *testing.T) {
	for _, file := range []string{"code.txt", "forms.txt"} {
		for _, want := range marked(t, file) {
			text := unmark.Replace(want)
			if got := Markup(text, Options{}); got != want {
				t.Errorf("%s\n got  %s\n want %s", text, got, want)
			}
			if s := label.String(Runs(text, Parts{}, Options{})); s != text {
				t.Errorf("runs of %q join to %q", text, s)
			}
		}
	}
}

// TestFamilies: families and what stands above the genus are italic in the
// Code's own practice and upright in many houses.
func TestFamilies(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Cactaceae Juss.", "Cactaceae Juss."},
		{"CACTACEAE", "CACTACEAE"},
		{"Gramineae", "Gramineae"},
		{"Rosaceae subfam. Rosoideae Endl.", "Rosaceae subfam. Rosoideae Endl."},
		{"Fucales Bory", "Fucales Bory"},
		{"Asteraceae spec.", "Asteraceae spec."},
		{"cf. Fagaceae", "cf. Fagaceae"},
		{"Rosa canina L. (Rosaceae)", "<i>Rosa canina</i> L. (Rosaceae)"},
		{"Rosa L.", "<i>Rosa</i> L."},
		{"Zygophyllaceae: Tribulus terrestris", "Zygophyllaceae: <i>Tribulus terrestris</i>"},
		{"Agaricus trib. Hypholoma Fr.", "<i>Agaricus</i> trib. <i>Hypholoma</i> Fr."},
	} {
		o := Options{UprightFamilies: true}
		if got := Markup(c.text, o); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
		if got := markRuns(Runs(c.text, Parts{Genus: "Cactaceae"}, o)); got != c.want {
			t.Errorf("with a column: got  %s\nwant %s", got, c.want)
		}
	}
}

// TestPlaceholders: what no name is, is not italic even where the columns hold
// it.
func TestPlaceholders(t *testing.T) {
	for _, w := range []string{"spec.", "sp.", "sp", "spp.", "agg.", "cf.", "unbestimmt", "noch unbestimmt !!!", "sp. 1", "indet.", "Indet.", "unknown", "Unknown", "undesignated", "unspecified", "unassigned", "n/a", "?", "-", "hybrid", "x", "×"} {
		for _, text := range []string{w, "Carex " + w} {
			got := markRuns(Runs(text, Parts{Genus: w, SpecificEpithet: w, InfraspecificEpithet: w, InfragenericEpithet: w}, Options{}))
			want := strings.Replace(text, "Carex", "<i>Carex</i>", 1)
			if got != want {
				t.Errorf("got  %s\nwant %s", got, want)
			}
		}
	}
}

// TestColumns: where the form of a text does not say what a word is, the
// record's columns do.
func TestColumns(t *testing.T) {
	for _, c := range []struct {
		want  string
		parts Parts
	}{
		{"<i>cistus ladanifer</i> L.", Parts{Genus: "Cistus", SpecificEpithet: "ladanifer"}},
		{"<i>Cistus LADANIFER</i> L.", Parts{Genus: "Cistus", SpecificEpithet: "ladanifer"}},
		{"<i>Solanum Dulcamara</i>", Parts{Genus: "Solanum", SpecificEpithet: "dulcamara"}},
		{"<i>Rosa</i> L. <i>canina</i> L.", Parts{Genus: "Rosa", SpecificEpithet: "canina"}},
		{"<i>Polypodium pectinatum</i> L. f. typica", Parts{Genus: "Polypodium", SpecificEpithet: "pectinatum", Authorship: "L. f. typica"}},
		{"<i>Carex</i> (<i>Vignea</i>)", Parts{Genus: "Carex", InfragenericEpithet: "Vignea"}},
		{"<i>Carex</i> (<i>Vignea</i>) Foo", Parts{Genus: "Carex", InfragenericEpithet: "Vignea"}},
		{"<i>Poa annua</i> L. <i>reptans</i> Hausskn.", Parts{Genus: "Poa", SpecificEpithet: "annua", InfraspecificEpithet: "reptans"}},
		{"<i>CISTUS ladanifer</i> Foo <i>alba</i>", Parts{Genus: "Cistus", SpecificEpithet: "ladanifer", InfraspecificEpithet: "alba"}},
		{"<i>Capsella bursa-pastoris</i>", Parts{Genus: "capsella", SpecificEpithet: "Bursa-pastoris"}},
		{"<i>Isoëtes histrix</i>", Parts{Genus: "Isoetes", SpecificEpithet: "histrix"}},
		{"<i>Galium verum</i> L. subsp. <i>verum</i>", Parts{Genus: "Galium", SpecificEpithet: "verum", InfraspecificEpithet: "verum", Authorship: "L."}},
		{"<i>Salix</i> ×<i>rubens</i> Schrank", Parts{Genus: "×Salix", SpecificEpithet: "× rubens"}},
		{"<i>Berberis ilicina</i> de la sota", Parts{Genus: "Berberis", SpecificEpithet: "ilicina", Authorship: "de la Sota"}},
	} {
		text := unmark.Replace(c.want)
		if got := markRuns(Runs(text, c.parts, Options{})); got != c.want {
			t.Errorf("%+v\n got  %s\n want %s", c.parts, got, c.want)
		}
	}
}
