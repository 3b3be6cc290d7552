package name

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
)

// A record is the name of a real record with its columns.
type record struct {
	text  string
	parts Parts
}

// records reads real names: Döring, M.: plants of the Taurus, a Darwin Core
// archive of 1,534 records (CC BY 4.0), read where it lies.
func records(t testing.TB) []record {
	t.Helper()
	f, err := os.Open(outside.Shared(t, "real/taurus-plants.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	col := map[string]int{}
	for i, h := range rows[0] {
		col[h] = i
	}
	var out []record
	for _, r := range rows[1:] {
		out = append(out, record{r[col["SCIENTIFIC_NAME"]], Parts{
			Genus: r[col["GENUS"]], SpecificEpithet: r[col["SPECIFIC_EPITHET"]],
			InfraspecificEpithet: r[col["INFRASPECIFIC_EPITHET"]], Family: r[col["FAMILY"]],
		}})
	}
	if len(out) != 1534 {
		t.Fatalf("%d records, want 1534", len(out))
	}
	return out
}

// TestRealNames holds every real name to what its own columns say: the genus
// and the epithets of the columns are italic, every other italic word follows a
// rank, and nothing else is.
func TestRealNames(t *testing.T) {
	for _, r := range records(t) {
		bare := markRuns(Runs(r.text, Parts{}, Options{}))
		full := markRuns(Runs(r.text, r.parts, Options{}))
		if bare != full {
			t.Errorf("the columns change the reading of a plain name:\n without %s\n with    %s", bare, full)
		}
		if s := label.String(Runs(r.text, r.parts, Options{})); s != r.text {
			t.Errorf("runs of %q join to %q", r.text, s)
		}
		said := map[string]bool{}
		for _, c := range []string{r.parts.Genus, r.parts.SpecificEpithet, r.parts.InfraspecificEpithet} {
			for _, w := range strings.Fields(c) {
				said[w] = true
			}
		}
		italic := map[string]bool{}
		rest := full
		before := ""
		for {
			head, tail, ok := strings.Cut(rest, "<i>")
			if !ok {
				break
			}
			if f := strings.Fields(head); len(f) > 0 {
				before = f[len(f)-1]
			}
			words, after, _ := strings.Cut(tail, "</i>")
			for _, w := range strings.Fields(words) {
				italic[w] = true
				switch before {
				case "var.", "subsp.", "sect.", "subgenus":
				default:
					if !said[w] {
						t.Errorf("%s: %q is italic, but no column and no rank says that it is a name", full, w)
					}
				}
			}
			rest = after
		}
		for _, c := range []string{genusOf(r.parts.Genus), epithetOf(r.parts.SpecificEpithet)} {
			if c != "" && !italic[c] {
				t.Errorf("%s: %q of the columns is not italic", full, c)
			}
		}
	}
}

// TestRealProblems names the records whose columns contradict the name. They
// are the infraspecific column filled with a name of another rank; looked at by
// eye.
func TestRealProblems(t *testing.T) {
	want := map[string]string{
		"Draba bruniifolia var. nana (Stapf) Schulz":               "heterocoma",
		"Thymus sipyleus var. davisianus Ronniger":                 "sipyleus",
		"Astragalus angustifolius var. violascens Boiss.":          "angustifolius",
		"Hypericum aviculariifolium var. bourgaei (Boiss.) Robson": "depilatum",
		"Stachys iberica var. densipilosa Bhattacharjee":           "iberica",
		"Thymus longicaulis var. alternatus Jalas":                 "chaubardii",
	}
	seen := map[string]bool{}
	for _, r := range records(t) {
		for _, p := range Parse(r.text, r.parts).Problems {
			if p.Term != "infraspecificEpithet" || want[r.text] != p.Value {
				t.Errorf("%s: %+v", r.text, p)
			}
			seen[r.text] = true
		}
	}
	if len(seen) != len(want) {
		t.Errorf("%d names have problems, want %d", len(seen), len(want))
	}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want Name
	}{
		{"", Name{Blank: true}},
		{"  ", Name{Blank: true}},
		{"indet.", Name{Indet: true, Open: "indet."}},
		{"noch unbestimmt !!!", Name{Indet: true}},
		{"?", Name{Indet: true, Qualifier: "?"}},
		{"Cistaceae Juss.", Name{Rank: "family", Uninomial: "Cistaceae", Authorship: "Juss."}},
		{"Gramineae", Name{Rank: "family", Uninomial: "Gramineae"}},
		{"Rosaceae subfam. Rosoideae Endl.", Name{Rank: "subfamily", Uninomial: "Rosoideae", Authorship: "Endl."}},
		{"Carex", Name{Rank: "genus", Genus: "Carex"}},
		{"Carex sp. 2", Name{Rank: "genus", Genus: "Carex", Open: "sp."}},
		{"Carex sect. Acutae Fr.", Name{Rank: "section", Genus: "Carex", Infrageneric: "Acutae", Authorship: "Fr."}},
		{"Astragalus (Cycloglottis) contortuplicatus", Name{Rank: "species", Genus: "Astragalus", Infrageneric: "Cycloglottis", Epithet: "contortuplicatus"}},
		{"Carex cf. flacca Schreb.", Name{Rank: "species", Genus: "Carex", Epithet: "flacca", Authorship: "Schreb.", Qualifier: "cf."}},
		{"Galium verum L. subsp. verum", Name{Rank: "subspecies", Genus: "Galium", Epithet: "verum", Infraspecific: "verum", Authorship: "L.", Autonym: true}},
		{"Galium verum subsp. verum", Name{Rank: "subspecies", Genus: "Galium", Epithet: "verum", Infraspecific: "verum", Autonym: true}},
		{"Hydnellum scrobiculatum zonatum (Banker) D. Hall", Name{Genus: "Hydnellum", Epithet: "scrobiculatum", Infraspecific: "zonatum", Authorship: "(Banker) D. Hall"}},
		{"Hordeum vulgare L. f. nigrum (Willd.) Körn.", Name{Rank: "form", Genus: "Hordeum", Epithet: "vulgare", Infraspecific: "nigrum", Authorship: "(Willd.) Körn."}},
		{"Hedera helix L. lusus arborea", Name{Rank: "infraspecificname", Genus: "Hedera", Epithet: "helix", Infraspecific: "arborea"}},
		{"Mentha ×piperita nothosubsp. pyramidalis (Ten.) Harley", Name{Rank: "nothosubspecies", Genus: "Mentha", Epithet: "piperita", Infraspecific: "pyramidalis", Authorship: "(Ten.) Harley", Hybrid: true}},
		{"Salix aurita L. × S. caprea L.", Name{Rank: "species", Genus: "Salix", Epithet: "aurita", Authorship: "L.", Hybrid: true, Formula: true}},
		{"×Agropogon P. Fourn.", Name{Rank: "genus", Genus: "Agropogon", Authorship: "P. Fourn.", Hybrid: true}},
		{"+Laburnocytisus ‘Adamii’", Name{Rank: "genus", Genus: "Laburnocytisus", Cultivar: "‘Adamii’", Hybrid: true}},
		{"Magnolia grandiflora L. ‘Little Gem’", Name{Rank: "species", Genus: "Magnolia", Epithet: "grandiflora", Authorship: "L.", Cultivar: "‘Little Gem’"}},
		{"Cymbidium Alexanderi gx ‘Westonbirt’", Name{Rank: "genus", Genus: "Cymbidium", Cultivar: "Alexanderi gx"}},
		{"Lupinus Tourn. ex L., nom. cons.", Name{Rank: "genus", Genus: "Lupinus", Authorship: "Tourn. ex L."}},
		{"Carex bebbii Olney, nomen nudum", Name{Rank: "species", Genus: "Carex", Epithet: "bebbii", Authorship: "Olney"}},
		{"Puccinia graminis f. sp. avenae", Name{Rank: "form", Genus: "Puccinia", Epithet: "graminis", Infraspecific: "avenae"}},
		{"S. sect. Rigida (Lindb.) Limpr.", Name{Rank: "section", Genus: "S.", Infrageneric: "Rigida", Authorship: "(Lindb.) Limpr."}},
		{"Poa bulbosa agg. L.", Name{Rank: "species", Genus: "Poa", Epithet: "bulbosa", Open: "agg."}},
	} {
		got := Parse(c.text, Parts{})
		got.Problems = nil
		if !equalNames(got, c.want) {
			t.Errorf("%s\n got  %+v\n want %+v", c.text, got, c.want)
		}
	}
}

func equalNames(a, b Name) bool {
	a.Problems, b.Problems = nil, nil
	type plain struct {
		blank, indet, hybrid, formula, autonym bool
		words                                  [9]string
	}
	of := func(n Name) plain {
		return plain{n.Blank, n.Indet, n.Hybrid, n.Formula, n.Autonym,
			[9]string{n.Rank, n.Uninomial, n.Genus, n.Infrageneric, n.Epithet, n.Infraspecific, n.Authorship, n.Cultivar + "|" + n.Qualifier, n.Open}}
	}
	return of(a) == of(b)
}
