package trade

import (
	"fmt"
	"slices"
	"testing"

	"cornerslip/label"
)

// What may stand twice under one number, and what may not: common practice,
// from memory.
func TestNamesUnderNumber(t *testing.T) {
	const camphor = "Thymus camphoratus Hoffmanns. & Link"
	for _, tt := range []struct {
		name string
		a, b []string
		want bool
	}{
		{"two plants", nil, []string{"scientificName", camphor}, true},
		{"two genera", nil, []string{"scientificName", "Cistus albidus L.", "family", "Cistaceae"}, true},
		{"two plants with other words", nil, []string{"scientificName", "Cistus albidus L.", "family", "Cistaceae", "habitat", "Roadside"}, true},
		{"two plants, in sheet and packet", nil, []string{"scientificName", "Cistus albidus L.", "family", "Cistaceae", "preparations", "sheet | packet: capsules"}, true},
		{"two mosses", []string{"scientificName", "Sphagnum fuscum (Schimp.) H.Klinggr.", "family", "Sphagnaceae"}, []string{"scientificName", "Mylia anomala (Hook.) Gray", "family", "Myliaceae"}, false},
		{"mosses without a family", []string{"scientificName", "Hypnum cupressiforme Hedw.", "family", ""}, []string{"scientificName", "Isothecium myosuroides Brid.", "family", ""}, false},
		{"mosses in packets", []string{"scientificName", "Fissidens grandifrons Brid.", "family", "", "preparations", "packet"}, []string{"scientificName", "Rhynchostegium riparioides (Hedw.) Cardot", "family", "", "preparations", "packet"}, false},
		{"lichens by kingdom", []string{"scientificName", "Acarospora fuscata (Nyl.) Arnold", "family", "", "kingdom", "Fungi"}, []string{"scientificName", "Candelariella vitellina (Hoffm.) Müll.Arg.", "family", "", "kingdom", "Fungi"}, false},
		{"algae by class", []string{"scientificName", "Fucus spiralis L.", "family", "", "class", "Phaeophyceae"}, []string{"scientificName", "Ceramium rubrum C.Agardh", "family", "", "class", "Florideophyceae"}, false},
		{"a rust on its host", nil, []string{"scientificName", "Puccinia menthae Pers.", "family", "Pucciniaceae"}, false},
		{"a parasite, by its words", nil, []string{"scientificName", "Orobanche alba Stephan ex Willd.", "family", "Orobanchaceae", "occurrenceRemarks", "Parasite on the preceding"}, false},
		{"a parasite on the other", nil, []string{"scientificName", "Cuscuta epithymum (L.) L.", "family", "Convolvulaceae", "habitat", "On Thymus in dunes"}, false},
		{"the host, by its words", []string{"associatedTaxa", "host of Cuscuta epithymum"}, []string{"scientificName", "Cuscuta epithymum (L.) L.", "family", "Convolvulaceae"}, false},
		{"admixed", nil, []string{"scientificName", "Cistus albidus L.", "family", "Cistaceae", "occurrenceRemarks", "admixed in the gathering"}, false},
		{"pro parte", nil, []string{"scientificName", camphor, "identificationRemarks", "p.p."}, false},
		{"letters", nil, []string{"scientificName", camphor, "recordNumber", "214b"}, false},
		{"s.n.", []string{"recordNumber", "s.n."}, []string{"recordNumber", "s.n.", "scientificName", camphor}, false},
		{"no number in words", []string{"recordNumber", "no number"}, []string{"recordNumber", "no number", "scientificName", camphor}, false},
		{"named again", []string{"identifiedBy", "I. Almeida", "dateIdentified", "2026-06"}, []string{"scientificName", camphor, "identifiedBy", "J. Prates", "dateIdentified", "2026-07"}, false},
		{"named by another, elsewhere", []string{"identifiedBy", "I. Almeida"}, []string{"scientificName", camphor, "identifiedBy", "J. Prates", "habitat", "Roadside", "locality", "Valdoura, gate"}, true},
		{"a history of identifications", []string{"identificationID", "1"}, []string{"scientificName", camphor, "identificationID", "2"}, false},
		{"one specimen", []string{"occurrenceID", "urn:x:1"}, []string{"scientificName", camphor, "occurrenceID", "urn:x:1"}, false},
		{"another genus for the species", []string{"scientificName", "Lithodora prostrata (Loisel.) Griseb.", "family", "Boraginaceae"}, []string{"scientificName", "Glandora prostrata (Loisel.) D.C.Thomas", "family", "Boraginaceae"}, false},
		{"a name that says less", nil, []string{"scientificName", "Thymus L."}, false},
		{"a seed lot", nil, []string{"scientificName", "Thymus L.", "basisOfRecord", "LivingSpecimen"}, false},
		{"of two collectors of one surname", nil, []string{"scientificName", camphor, "recordedBy", "M. Almeida"}, false},
		{"of a team in another order", nil, []string{"scientificName", camphor, "recordedBy", "J. Prates | I. Almeida"}, false},
		{"of two years", []string{"recordNumber", "12/1999"}, []string{"recordNumber", "12/2000", "scientificName", camphor}, false},
		{"several sheets", nil, nil, false},
	} {
		_, fs := run(t, open(t, rows(tt.a, tt.b)...), options(t))
		fs = slices.DeleteFunc(fs, func(f label.Finding) bool { return f.Rule != "number-names" && f.Rule != "number-twice" })
		if (len(fs) > 0) != tt.want {
			t.Errorf("%s: %v", tt.name, fs)
		}
	}
}

// One zero lost among many is found, whether or not another is left, and
// wherever it stands; numbers of two widths in use are no fault.
func TestZerosLost(t *testing.T) {
	for _, tt := range []struct {
		name  string
		at    int
		wrong string
		want  string
	}{
		{"all zeros", 7, "VDOURA-12307", "VDOURA-0012307"}, {"one zero", 7, "VDOURA-012307", "VDOURA-0012307"}, {"one zero, in the first row", 0, "VDOURA-012300", "VDOURA-0012300"},
		{"all zeros, in the first row", 0, "VDOURA-12300", "VDOURA-0012300"}, {"sound", 7, "VDOURA-0012307", ""}, {"beyond the zeros", 7, "VDOURA-1012307", ""},
	} {
		var all [][]string
		for i := range 20 {
			all = append(all, []string{"catalogNumber", fmt.Sprintf("VDOURA-%07d", 12300+i), "recordNumber", fmt.Sprint(200 + i)})
		}
		all[tt.at][1] = tt.wrong
		_, fs := run(t, open(t, rows(all...)...), options(t))
		got := ""
		for _, f := range fs {
			if f.Rule == "number-zeros" && f.Row == tt.at+1 && f.Value == tt.wrong {
				got += f.Suggest
			} else if f.Rule == "number-zeros" {
				t.Errorf("%s: %s", tt.name, f)
			}
		}
		if got != tt.want {
			t.Errorf("%s: %q", tt.name, got)
		}
	}
}
