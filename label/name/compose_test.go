package name

import (
	"strings"
	"testing"
)

func TestCompose(t *testing.T) {
	type P = Parts
	for _, c := range []struct {
		text  string
		parts Parts
		want  string
		terms string // of the problems
	}{
		// Built from the columns.
		{"", P{}, "", ""},
		{"", P{Family: "Lamiaceae"}, "Lamiaceae", ""},
		{"", P{Genus: "Carex"}, "Carex", ""},
		{"", P{Genus: "Carex", Authorship: "L."}, "Carex L.", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", Authorship: "Schreb."}, "Carex flacca Schreb.", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "sp."}, "Carex sp.", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "serrulata", Rank: "subspecies", Authorship: "(Spreng.) Greuter"}, "Carex flacca subsp. serrulata (Spreng.) Greuter", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "flacca", Rank: "subsp.", Authorship: "Schreb."}, "Carex flacca Schreb. subsp. flacca", ""}, // Art. 26.1
		{"", P{Genus: "Mentha", SpecificEpithet: "×piperita", InfraspecificEpithet: "pyramidalis", Rank: "nothosubspecies", Authorship: "(Ten.) Harley"}, "Mentha ×piperita nothosubsp. pyramidalis (Ten.) Harley", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "serrulata"}, "Carex flacca serrulata", "taxonRank"},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "serrulata Greuter"}, "Carex flacca serrulata Greuter", "taxonRank"},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "on limestone"}, "Carex flacca on limestone", "infraspecificEpithet"},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "serrulata (no label)"}, "Carex flacca serrulata (no label)", "infraspecificEpithet"},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "ssp. serrulata", Authorship: "(Spreng.) Greuter"}, "Carex flacca subsp. serrulata (Spreng.) Greuter", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "subsp. flacca", Authorship: "Schreb."}, "Carex flacca Schreb. subsp. flacca", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "var. serrulata", Rank: "variety"}, "Carex flacca var. serrulata", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "var. serrulata", Rank: "subspecies"}, "Carex flacca var. serrulata", "taxonRank"},
		{"", P{Genus: "Carex", InfragenericEpithet: "Vignea", Rank: "subgenus"}, "Carex subg. Vignea", ""},
		{"", P{Genus: "Carex", InfragenericEpithet: "Vignea"}, "Carex (Vignea)", "taxonRank"},
		{"", P{Genus: "Malus", SpecificEpithet: "domestica", Authorship: "Borkh.", CultivarEpithet: "Golden Delicious"}, "Malus domestica Borkh. ‘Golden Delicious’", ""},
		{"", P{SpecificEpithet: "flacca"}, "", "genus"},
		{"", P{Genus: "Thymus", SpecificEpithet: "granatense", Qualifier: "cf. granatense"}, "Thymus cf. granatense", ""},
		{"", P{Qualifier: "cf. Thymus granatense"}, "cf. Thymus granatense", ""},
		{"", P{Qualifier: "cf."}, "", "identificationQualifier"},

		// Authors.
		{"Carex flacca", P{Authorship: "Schreb."}, "Carex flacca Schreb.", ""},
		{"Carex flacca Schreb.", P{Authorship: "Schreb."}, "Carex flacca Schreb.", ""},
		{"Carex flacca Schreb.", P{Authorship: "L."}, "Carex flacca Schreb.", "scientificNameAuthorship"},
		{"Carex flacca Boiss. & Heldr.", P{Authorship: "Boiss. et Heldr."}, "Carex flacca Boiss. & Heldr.", ""},
		{"Carex flacca Boiss. & Heldr.", P{Authorship: "Boiss.& Heldr"}, "Carex flacca Boiss. & Heldr.", ""},
		{"Carex flacca (L.) Mill.", P{Authorship: "L. Mill."}, "Carex flacca (L.) Mill.", "scientificNameAuthorship"},
		{"Carex flacca L., 1753", P{Authorship: "L."}, "Carex flacca L., 1753", ""},
		{"Galium verum subsp. verum", P{Authorship: "L."}, "Galium verum L. subsp. verum", ""}, // Art. 26.1
		{"Galium verum L. subsp. verum", P{Authorship: "L."}, "Galium verum L. subsp. verum", ""},
		{"Galium verum L. subsp. glabrescens", P{Authorship: "Ehrend."}, "Galium verum L. subsp. glabrescens Ehrend.", ""},
		{"Poa bulbosa agg.", P{Authorship: "L."}, "Poa bulbosa L. agg.", ""},
		{"Carex cf. flacca", P{Authorship: "Schreb."}, "Carex cf. flacca Schreb.", ""},
		{"Malus domestica ‘Golden Delicious’", P{Authorship: "Borkh."}, "Malus domestica Borkh. ‘Golden Delicious’", ""},
		{"Carex flacca?", P{Authorship: "Schreb."}, "Carex flacca? Schreb.", ""},
		{"Carex flacca nom. nud.", P{Authorship: "Foo"}, "Carex flacca Foo nom. nud.", ""},
		{"Salix alba × S. fragilis", P{Authorship: "L."}, "Salix alba × S. fragilis", "scientificNameAuthorship"},
		{"indet.", P{Authorship: "L."}, "indet.", "scientificNameAuthorship"},
		{"Rosaceae", P{Authorship: "Juss."}, "Rosaceae Juss.", ""},

		// A rank and an epithet in the column of authors.
		{"Carex flacca subsp. serrulata (Spreng.) Greuter", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "serrulata", Authorship: "subsp. serrulata (Spreng.) Greuter"}, "Carex flacca subsp. serrulata (Spreng.) Greuter", ""},
		{"", P{Genus: "Carex", SpecificEpithet: "flacca", InfraspecificEpithet: "serrulata", Authorship: "subsp. serrulata (Spreng.) Greuter"}, "Carex flacca subsp. serrulata (Spreng.) Greuter", ""},
		{"Carex flacca subsp. serrulata", P{InfraspecificEpithet: "serrulata", Authorship: "subsp. serrulata (Spreng.) Greuter"}, "Carex flacca subsp. serrulata (Spreng.) Greuter", ""},
		{"Carex flacca subsp. serrulata Greuter", P{InfraspecificEpithet: "serrulata", Authorship: "subsp. serrulata (Spreng.) Greuter"}, "Carex flacca subsp. serrulata Greuter", "scientificNameAuthorship"},

		// Qualifiers: the two examples of dwc:identificationQualifier, and more.
		{"Quercus agrifolia var. oxyadenia", P{Qualifier: "aff. agrifolia var. oxyadenia"}, "Quercus aff. agrifolia var. oxyadenia", ""},
		{"Quercus agrifolia var. oxyadenia", P{Qualifier: "cf. var. oxyadenia"}, "Quercus agrifolia cf. var. oxyadenia", ""},
		{"Quercus agrifolia var. oxyadenia", P{Qualifier: "cf. oxyadenia"}, "Quercus agrifolia var. cf. oxyadenia", ""},
		{"Quercus agrifolia var. oxyadenia (Torr.) J. T. Howell", P{Qualifier: "cf."}, "Quercus cf. agrifolia var. oxyadenia (Torr.) J. T. Howell", ""},
		{"Thymus granatense", P{Qualifier: "cf. granatense"}, "Thymus cf. granatense", ""},
		{"Thymus granatense Boiss.", P{Qualifier: "cf. granatense"}, "Thymus cf. granatense Boiss.", ""},
		{"Thymus granatense", P{Qualifier: "cf. granatense", Authorship: "Boiss."}, "Thymus cf. granatense Boiss.", ""},
		{"Thymus granatense", P{Qualifier: "Thymus cf. granatense"}, "Thymus cf. granatense", ""},
		{"Thymus granatense", P{Qualifier: "cf. T. granatense Boiss."}, "Thymus cf. granatense", ""},
		{"Thymus granatense", P{Qualifier: "cf. Thymus granatense"}, "cf. Thymus granatense", ""},
		{"Thymus granatense", P{Qualifier: "cf. Thymus"}, "cf. Thymus granatense", ""},
		{"Thymus granatense", P{Qualifier: "cf"}, "Thymus cf granatense", ""},
		{"Thymus granatense", P{Qualifier: "?"}, "Thymus ?granatense", ""},
		{"Thymus granatense", P{Qualifier: "vel aff."}, "Thymus vel aff. granatense", ""},
		{"Thymus granatense", P{Qualifier: "ex gr. granatense"}, "Thymus ex gr. granatense", ""},
		{"Thymus cf. granatense", P{Qualifier: "cf. granatense"}, "Thymus cf. granatense", ""},
		{"Thymus cf. granatense", P{Qualifier: "cf."}, "Thymus cf. granatense", ""},
		{"Thymus cf. granatense", P{Qualifier: "aff."}, "Thymus cf. granatense", "identificationQualifier"},
		{"Thymus granatense", P{Qualifier: "cf. vulgaris"}, "Thymus granatense (cf. vulgaris)", "identificationQualifier"},
		{"Thymus granatense", P{Qualifier: "probably"}, "Thymus granatense (probably)", "identificationQualifier"},
		{"Thymus", P{Qualifier: "cf."}, "cf. Thymus", ""},
		{"Thymus", P{Qualifier: "sp."}, "Thymus sp.", ""},
		{"Thymus sp.", P{Qualifier: "sp."}, "Thymus sp.", ""},
		{"Thymus", P{Qualifier: "sp. nov."}, "Thymus sp. nov.", ""},
		{"Thymus L.", P{Qualifier: "sp. aff. granatense"}, "Thymus L. sp. aff. granatense", ""},
		{"Thymus", P{Qualifier: "aff. granatense"}, "Thymus aff. granatense", ""},
		{"Poa bulbosa L.", P{Qualifier: "agg."}, "Poa bulbosa L. agg.", ""},
		{"Poa bulbosa L.", P{Qualifier: "s.l."}, "Poa bulbosa L. s.l.", ""},
		{"Poa bulbosa L. s. l.", P{Qualifier: "s.l."}, "Poa bulbosa L. s. l.", ""},
		{"Aesculus ×hybrida", P{Qualifier: "cf. hybrida"}, "Aesculus cf. ×hybrida", ""},
		{"Aesculus × hybrida", P{Qualifier: "cf."}, "Aesculus cf. × hybrida", ""},
		{"×Agropogon littoralis", P{Qualifier: "cf. Agropogon"}, "cf. ×Agropogon littoralis", ""},
		{"Salix alba × S. fragilis", P{Qualifier: "cf."}, "cf. Salix alba × S. fragilis", ""},
		{"Salix alba × S. fragilis", P{Qualifier: "cf. fragilis"}, "Salix alba × S. cf. fragilis", ""},
		{"Fagaceae", P{Qualifier: "cf."}, "cf. Fagaceae", ""},
		{"indet.", P{Qualifier: "cf. Thymus"}, "indet. (cf. Thymus)", "identificationQualifier"},

		// Disagreement, as in real tables.
		{"Draba bruniifolia var. nana (Stapf) Schulz", P{Genus: "Draba", SpecificEpithet: "bruniifolia", InfraspecificEpithet: "heterocoma"}, "Draba bruniifolia var. nana (Stapf) Schulz", "infraspecificEpithet"},
		{"Thymus sipyleus var. davisianus Ronniger", P{Genus: "Thymus", SpecificEpithet: "sipyleus", InfraspecificEpithet: "sipyleus"}, "Thymus sipyleus var. davisianus Ronniger", "infraspecificEpithet"},
		// The column has more than the epithet.
		{"Carex flacca", P{InfraspecificEpithet: "Carex flacca subsp. serrulata (Spreng.) Greuter"}, "Carex flacca", "infraspecificEpithet"},
		{"Carex flacca", P{InfraspecificEpithet: "C_flacca_serrulata"}, "Carex flacca", "infraspecificEpithet"},
		{"Carex flacca", P{InfraspecificEpithet: "subsp. serrulata"}, "Carex flacca", "infraspecificEpithet"},
		{"Carex flacca subsp. serrulata", P{InfraspecificEpithet: "ssp. serrulata"}, "Carex flacca subsp. serrulata", ""},
		{"Carex flacca", P{InfraspecificEpithet: "Carex flacca Schreb."}, "Carex flacca", ""},
		{"Carex flacca", P{InfraspecificEpithet: "not applicable"}, "Carex flacca", ""},
		{"Carex flacca", P{InfraspecificEpithet: "_"}, "Carex flacca", ""},
		{"Carex flacca", P{Genus: "Cistus", SpecificEpithet: "flacca"}, "Carex flacca", "genus"},
		{"C. flacca", P{Genus: "Carex", SpecificEpithet: "flacca"}, "C. flacca", ""},
		{"Carex flacca", P{Genus: "Carex", SpecificEpithet: "nigra"}, "Carex flacca", "specificEpithet"},
		{"Carex", P{Genus: "Carex", SpecificEpithet: "nigra"}, "Carex", "specificEpithet"},
		{"Carex sp.", P{Genus: "Carex", SpecificEpithet: "sp."}, "Carex sp.", ""},
		{"noch unbestimmt !!!", P{Genus: "noch unbestimmt !!!", Family: "unbekannt"}, "noch unbestimmt !!!", ""},
		{"Astragalus spec.", P{Genus: "Astragalus", SpecificEpithet: "spec.", InfraspecificEpithet: "1"}, "Astragalus spec.", ""},
		{"Asteraceae spec.", P{Genus: "Asteraceae", Family: "Asteraceae"}, "Asteraceae spec.", ""},
		{"Asteraceae", P{Family: "Poaceae"}, "Asteraceae", "family"},
		{"Isoëtes histrix", P{Genus: "Isoetes", SpecificEpithet: "histrix"}, "Isoëtes histrix", ""},
		{"Carex brœtii", P{Genus: "Carex", SpecificEpithet: "broetii"}, "Carex brœtii", ""},
		{"Capsella bursa pastoris", P{Genus: "Capsella", SpecificEpithet: "bursa-pastoris"}, "Capsella bursa pastoris", ""},
		{"Salix alba × S. fragilis", P{Genus: "Salix", SpecificEpithet: "alba"}, "Salix alba × S. fragilis", ""},
		{"Salix ×rubens", P{Genus: "Salix", SpecificEpithet: "x rubens"}, "Salix ×rubens", ""},
	} {
		got, problems := Compose(c.text, c.parts)
		var terms []string
		for _, p := range problems {
			terms = append(terms, p.Term)
		}
		if got != c.want || strings.Join(terms, " ") != c.terms {
			t.Errorf("%q %+v\n got  %q %v\n want %q %s", c.text, c.parts, got, problems, c.want, c.terms)
		}
	}
}
