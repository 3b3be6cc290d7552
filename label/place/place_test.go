package place

import (
	"encoding/json"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// The codes and short names are those of Debian's package iso-codes.
func TestISO3166(t *testing.T) {
	b, err := os.ReadFile(outside.File(t, "/usr/share/iso-codes/json/iso_3166-1.json"))
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Countries []struct {
			Code   string `json:"alpha_2"`
			Alpha3 string `json:"alpha_3"`
			Name   string `json:"name"`
			Common string `json:"common_name"`
		} `json:"3166-1"`
	}
	if err := json.Unmarshal(b, &file); err != nil {
		t.Fatal(err)
	}
	if len(file.Countries) < 249 || len(file.Countries) != len(Countries()) {
		t.Errorf("%d countries, iso-codes has %d", len(Countries()), len(file.Countries))
	}
	for _, want := range file.Countries {
		for _, key := range []string{want.Code, want.Alpha3, want.Name, want.Common, strings.ToLower(want.Code), strings.ToUpper(want.Name)} {
			if key == "" || want.Code == "CG" && strings.EqualFold(key, "congo") {
				continue // both Congos are called so
			}
			if got, ok := Country(key); !ok || got.Code != want.Code || got.Alpha3 != want.Alpha3 {
				t.Errorf("Country(%q) = %s %v, want %s", key, got.Code, ok, want.Code)
			}
		}
		if got, _ := Country(want.Code); got.ISOName != want.Name {
			t.Errorf("%s: ISO name %q, iso-codes has %q", want.Code, got.ISOName, want.Name)
		}
		if !IsCountryCode(want.Code) || IsCountryCode(want.Alpha3) || IsCountryCode(strings.ToLower(want.Code)) {
			t.Errorf("%s: only the alpha-2 code in capitals is one", want.Code)
		}
	}
}

// Every name that is printed is there and means its country.
func TestCountryNames(t *testing.T) {
	for _, c := range Countries() {
		for _, language := range append([]string{"en"}, nameLanguages[:]...) {
			name := c.In(language)
			if name == "" || strings.TrimSpace(name) != name {
				t.Errorf("%s has no name in %s: %q", c.Code, language, name)
			}
			if got, ok := Country(name); !ok || got.Code != c.Code {
				if t2 := countries(); t2.names[squeeze(name)] != -1 {
					t.Errorf("Country(%q) = %s %v, want %s", name, got.Code, ok, c.Code)
				} else if name != "Saint-Martin" && name != "Guiana" { // the island's other half; three Guianas
					t.Errorf("%q means two countries, but is printed for %s", name, c.Code)
				}
			}
		}
	}
}

func TestCountry(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Portugal", "PT"}, {" portugal ", "PT"}, {"prt", "PT"}, {"pt", "PT"}, {"Türkiye", "TR"}, {"Turkey", "TR"}, {"TURKIYE", "TR"},
		{"Eswatini", "SZ"}, {"Swaziland", "SZ"}, {"North Macedonia", "MK"}, {"Macedonia", "MK"}, {"Czech Republic", "CZ"}, {"Ivory Coast", "CI"},
		{"Côte d’Ivoire", "CI"}, {"Cote d'Ivoire", "CI"}, {"Alemanha", "DE"}, {"Deutschland", "DE"}, {"Lusitania", "PT"}, {"葡萄牙", "PT"}, {"臺灣", ""},
		{"台灣", "TW"}, {"USA", "US"}, {"U.S.A.", "US"}, {"UK", "GB"}, {"Viet Nam", "VN"}, {"Trinidad & Tobago", "TT"}, {"GRL", "GL"}, {"Moçambique", "MZ"},
		{"", ""}, {"x", ""}, {"null", ""}, {"?", ""}, {"Portugal?", ""}, {"[Portugal]", ""}, {"PT?", ""}, {"Aust.", ""}, {"Congo", ""}, {"Korea", ""}, {"Yugoslavia", ""}, {"ZX", ""}, {"Europe", ""}, {"Guinea", "GN"}, {"Niger", "NE"}, {"Georgia", "GE"},
	} {
		got, ok := Country(tt.text)
		if got.Code != tt.want || ok != (tt.want != "") {
			t.Errorf("Country(%q) = %q %v, want %q", tt.text, got.Code, ok, tt.want)
		}
	}
	pt, _ := Country("PT")
	for language, want := range map[string]string{"en": "Portugal", "la": "Lusitania", "zh-Hant": "葡萄牙", "xx": "Portugal"} {
		if got := pt.In(language); got != want {
			t.Errorf("PT in %s: %q, want %q", language, got, want)
		}
	}
	if !IsCountryCode("XZ") || !IsCountryCode("ZZ") || IsCountryCode("XK") || IsCountryCode("") || IsCountryCode("PT ") {
		t.Error("Darwin Core takes XZ and ZZ besides ISO 3166-1, and no other")
	}
}

// The code numbers are those of the EPSG dataset that PROJ ships.
func TestEPSG(t *testing.T) {
	sqlite, db := outside.Program(t, "sqlite3"), outside.File(t, "/usr/share/proj/proj.db")
	query := func(sql string) []string {
		out, err := exec.Command(sqlite, "-readonly", db, sql).Output()
		if err != nil {
			t.Fatal(err)
		}
		return strings.Fields(string(out))
	}
	// A number may stand for objects of several kinds.
	want, others := map[int]DatumKind{}, 0
	for _, q := range []struct {
		kind DatumKind
		sql  string
	}{
		{GeographicCRS, "select code from geodetic_crs where auth_name = 'EPSG' and type = 'geographic 2D'"},
		{GeodeticDatum, "select code from geodetic_datum where auth_name = 'EPSG'"},
		{Ellipsoid, "select code from ellipsoid where auth_name = 'EPSG'"},
		{NoDatum, "select code from projected_crs where auth_name = 'EPSG'"},
		{NoDatum, "select code from geodetic_crs where auth_name = 'EPSG' and type <> 'geographic 2D'"},
	} {
		for _, code := range query(q.sql) {
			n, _ := strconv.Atoi(code)
			if _, ok := want[n]; !ok {
				want[n] = q.kind
			}
			others++
		}
	}
	ours := query("select value from metadata where key = 'EPSG.VERSION'")[0] == "v10.076"
	for n := range 40000 {
		if got := EPSG(n); got != want[n] && (ours || want[n] == NoDatum) {
			t.Errorf("EPSG:%d is of kind %d, want %d", n, got, want[n])
		}
	}
	if others < 5000 {
		t.Errorf("only %d codes were looked at", others)
	}
}

func TestDatum(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		// The notes of tdwg/bdq issues 59 and 60.
		{"WGS84", "EPSG:4326"}, {"WGS_84", "EPSG:4326"}, {"WGS:84", "EPSG:4326"}, {"WGS 84", "EPSG:4326"}, {"EPSG:4326", "EPSG:4326"}, {"WGS8", ""}, {"not recorded", ""},
		{"wgs 1984", "EPSG:4326"}, {"epsg:4326", "EPSG:4326"}, {"4326", "EPSG:4326"}, {"6326", "EPSG:6326"}, {"7030", "EPSG:7030"}, {"23032", ""}, {"EPSG:23032", ""},
		{"ED50", "EPSG:4230"}, {"European Datum 1950", "EPSG:4230"}, {"NAD27", "EPSG:4267"}, {"NAD83", "EPSG:4269"}, {"North American Datum 1927", "EPSG:4267"},
		{"ETRS89", "EPSG:4258"}, {"International 1924", "EPSG:7022"}, {"Clarke 1866", "EPSG:7008"}, {"GDA94", "EPSG:4283"}, {"GDA", ""}, {"WGS84?", ""}, {"[WGS84]", ""}, {"NAD", ""}, {"UTM", ""},
		{"Datum 73", "EPSG:4274"}, {"Lisboa", ""}, {"SIRGAS 2000", "EPSG:4674"}, {"", ""}, {"null", ""}, {"unknown", ""}, {"12345678901234567890", ""}, {"http://www.opengis.net/def/crs/EPSG/0/4326", "EPSG:4326"},
	} {
		if got, ok := Datum(tt.text); got != tt.want || ok != (tt.want != "") {
			t.Errorf("Datum(%q) = %q %v, want %q", tt.text, got, ok, tt.want)
		}
	}
	for s, want := range map[string]bool{"EPSG:4326": true, "epsg:4326": false, "EPSG:432": false, "EPSG:4326 ": false, "EPSG:x326": false, "EPSG: 4326": false} {
		if _, ok := ParseEPSG(s); ok != want {
			t.Errorf("ParseEPSG(%q) = %v", s, ok)
		}
	}
}

func TestVocabularies(t *testing.T) {
	for _, tt := range []struct {
		v          *Vocabulary
		text, want string
		has        bool
	}{
		// Examples of the standard's tests: tdwg/bdq TG2_tests.csv, 2025-03.
		{BasisOfRecord(), "Human obs", "HumanObservation", false}, {BasisOfRecord(), "FossilSpecimen", "FossilSpecimen", true}, {BasisOfRecord(), "Taxon", "Taxon", true},
		{BasisOfRecord(), "Specimen", "", false}, {TaxonRank(), "kingdom", "kingdom", true}, {TaxonRank(), "sp.", "species", false}, {TaxonRank(), "sic.", "", false},
		{EstablishmentMeans(), "native", "native", true}, {EstablishmentMeans(), "vag.", "vagrant", false}, {EstablishmentMeans(), "cultivated", "", false},
		{DegreeOfEstablishment(), "cultivated", "cultivated", true}, {DegreeOfEstablishment(), "grown in garden", "", false}, {DegreeOfEstablishment(), "capt.", "captive", false}, {DegreeOfEstablishment(), "tree", "", false},
		{Pathway(), "transportStowaway", "transportStowaway", true}, {Pathway(), "escapee", "", false}, {Sex(), "Male", "Male", true}, {Sex(), "f", "Female", false}, {Sex(), "x", "", false},
		{TypeStatus(), "Holotype", "Holotype", true}, {TypeStatus(), "cleptotype", "", false}, {TypeStatus(), "Holo.", "Holotype", false}, {TypeStatus(), "x", "", false}, {TypeStatus(), "isotype?", "", false}, {BasisOfRecord(), "[preserved specimen]", "", false},
		{OccurrenceStatus(), "present", "present", true}, {OccurrenceStatus(), "presence", "present", false}, {OccurrenceStatus(), "1", "present", false}, {OccurrenceStatus(), "0", "absent", false}, {OccurrenceStatus(), "X", "", false},
		{DCMIType(), "Event", "Event", true}, {DCMIType(), "evnt", "Event", false}, {DCMIType(), "StillerImage", "", false}, {DCMIType(), "X", "", false},
		{DCMIType(), "http://purl.org/dc/dcmitype/PhysicalObject", "PhysicalObject", false},
		// Beyond them.
		{BasisOfRecord(), "preserved specimen", "PreservedSpecimen", false}, {BasisOfRecord(), "PRESERVEDSPECIMEN", "PreservedSpecimen", false}, {BasisOfRecord(), "PreservedSpec", "PreservedSpecimen", false},
		{BasisOfRecord(), "http://rs.tdwg.org/dwc/terms/PreservedSpecimen", "PreservedSpecimen", false}, {BasisOfRecord(), "Observation", "", false}, {BasisOfRecord(), "present", "", false},
		{TaxonRank(), "subsp.", "subspecies", false}, {TaxonRank(), "ssp.", "subspecies", false}, {TaxonRank(), "var.", "variety", false}, {TaxonRank(), "f.", "form", false}, {TaxonRank(), "especie", "species", true},
		{TaxonRank(), "Species", "species", true}, {TaxonRank(), "sub", "", false}, {TaxonRank(), "varietas", "variety", false}, {TaxonRank(), "section", "section", true},
		{TypeStatus(), "isotype", "Isotype", true}, {TypeStatus(), "Para.", "Paratype", false}, {TypeStatus(), "ISOTYPE", "Isotype", false}, {TypeStatus(), "isolecto", "Isolectotype", false}, {TypeStatus(), "typus", "Type", false}, {TypeStatus(), "holotypus", "Holotype", false},
		{EstablishmentMeans(), "nat.", "", false}, {EstablishmentMeans(), "Native", "native", false}, {EstablishmentMeans(), "alien", "introduced", false}, {EstablishmentMeans(), "?", "", false},
	} {
		term, ok := tt.v.Match(tt.text)
		if term != tt.want || ok != (tt.want != "") || tt.v.Has(tt.text) != tt.has {
			t.Errorf("%s: Match(%q) = %q, Has %v; want %q, %v", tt.v.Source, tt.text, term, tt.v.Has(tt.text), tt.want, tt.has)
		}
	}
}

// Every term of every list is itself, and every label leads to a term.
func TestTermsMatchThemselves(t *testing.T) {
	for _, v := range vocabularies() {
		if v.Source == "" || len(v.Terms) < 2 {
			t.Errorf("%+v", v.Source)
		}
		for _, term := range v.Terms {
			if got, ok := v.Match(term); !ok || got != term || !v.Has(term) {
				t.Errorf("%s: %q matches %q", v.Source, term, got)
			}
		}
		for label := range v.accepted {
			if got, ok := v.Match(label); !ok || !slices.Contains(v.Terms, got) {
				t.Errorf("%s: the label %q matches %q", v.Source, label, got)
			}
		}
	}
}

func vocabularies() []*Vocabulary {
	return []*Vocabulary{BasisOfRecord(), TypeStatus(), TaxonRank(), EstablishmentMeans(), DegreeOfEstablishment(), Pathway(), OccurrenceStatus(), Sex(), DCMIType()}
}

func TestLicences(t *testing.T) {
	const by, zero = "https://creativecommons.org/licenses/by/4.0/", "https://creativecommons.org/publicdomain/zero/1.0/"
	for _, tt := range []struct {
		text, want string
		is         bool
	}{
		// Examples and notes of tdwg/bdq issues 38 and 133.
		{by, by, true}, {by + "deed", by + "deed", true}, {by + "legalcode.pt", by + "legalcode.pt", true}, {"CC0", zero + "legalcode", false}, {"GPL", "", false}, {"X", "", false},
		{"CC0 1.0", zero + "legalcode", false}, {"http://creativecommons.org/licenses/by/4.0/", by, true}, {"http://creativecommons.org/licenses/by/4.0", by, false}, {by + " ", by, false},
		{"CC BY 4.0", by + "legalcode", false}, {"CC-BY-NC-4.0", "https://creativecommons.org/licenses/by-nc/4.0/legalcode", false}, {"CC BY", "", false}, {"CC BY 3.0", "", false},
		{"Creative Commons Attribution 4.0 International License", by + "legalcode", false}, {"https://creativecommons.org/licenses/by/3.0/", "", false}, {"", "", false}, {"public domain", "", false},
		{"CC0 1.0 Universal (CC0 1.0) Public Domain Dedication", zero + "legalcode", false}, {"Creative Commons Attribution (CC-BY) 4.0 License", by + "legalcode", false}, {"Attribution 4.0 International (CC BY-NC 4.0)", "", false},
		{"CC BY 4.0 (or later)", "", false}, {"CC0 1.0 Universal", zero + "legalcode", false}, {"evil.example/https://creativecommons.org/licenses/by/4.0/", "", false},
	} {
		got, ok := Licence(tt.text)
		if ok != (tt.want != "") || ok && got != tt.want || IsLicence(tt.text) != tt.is {
			t.Errorf("Licence(%q) = %q %v, is %v; want %q %v", tt.text, got, ok, IsLicence(tt.text), tt.want, tt.is)
		}
	}
}

// What is found is found again under what was found.
func FuzzLookups(f *testing.F) {
	for _, s := range []string{"Portugal", "WGS84", "Human obs", "sp.", "CC BY 4.0", "", "\x00", "Ünïcödé", "ﬀ", "İ", "http://", "EPSG:", "dwc:", strings.Repeat("a", 300)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if c, ok := Country(s); ok {
			if again, ok := Country(c.Code); !ok || again.Code != c.Code {
				t.Fatalf("%q: %s is not found again", s, c.Code)
			}
		}
		if code, ok := Datum(s); ok {
			n, ok := ParseEPSG(code)
			if again, _ := Datum(code); again != code || !ok || EPSG(n) == NoDatum {
				t.Fatalf("%q: %s is not found again: %s", s, code, again)
			}
		}
		if address, ok := Licence(s); ok && !IsLicence(address) {
			t.Fatalf("%q: %s", s, address)
		}
		for _, v := range vocabularies() {
			term, ok := v.Match(s)
			if again, _ := v.Match(term); ok && (again != term || !v.Has(term)) {
				t.Fatalf("%s: %q: %q is not found again", v.Source, s, term)
			}
			if v.Has(s) && !ok {
				t.Fatalf("%s: %q is of the list but matches nothing", v.Source, s)
			}
		}
	})
}
