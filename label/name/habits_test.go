package name

import (
	"bufio"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// eachHabit calls with every name of testdata/habits.txt.
func eachHabit(t *testing.T, with func(text, markup, fault string)) {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", "habits.txt"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	n := 0
	for s := bufio.NewScanner(f); s.Scan(); n++ {
		if strings.HasPrefix(s.Text(), "#") {
			continue
		}
		m, fault, _ := strings.Cut(s.Text(), "\t")
		if fault == "-" || fault == "spaces" {
			with(m, "", "")
			continue
		}
		// Underscores that are letters of the name are doubled by nothing else.
		with(strings.ReplaceAll(m, "_", ""), strings.NewReplacer("_", "§").Replace(m), fault)
	}
	if n < 330 {
		t.Errorf("%d names", n)
	}
}

// Names are set in italics as habits.txt has them, and what is wrong with the way
// they are written is told, and nothing else.
func TestHabits(t *testing.T) {
	italics, alarms, misses, n := 0, 0, 0, 0
	eachHabit(t, func(text, markup, fault string) {
		n++
		if got := strings.NewReplacer("<i>", "§", "</i>", "§").Replace(Markup(text, Options{})); markup != "" && got != markup {
			italics++
			t.Errorf("%s, not %s", got, markup)
		}
		got := ""
		if fs := Faults(text, Parts{}); len(fs) > 0 {
			if got = "name-form"; fs[0].Capitals {
				got = "name-capitals"
			}
			if fs[0].Suggest != "" {
				if again := Faults(fs[0].Suggest, Parts{}); len(again) > 0 && again[0] == fs[0] {
					t.Errorf("%s: %q is no better", text, fs[0].Suggest)
				}
			}
			t.Logf("%s: %s (%s)", text, fs[0].Message, fs[0].Suggest)
		}
		switch {
		case got == fault:
		case fault == "":
			alarms++
			t.Errorf("%s: a false alarm, %v", text, Faults(text, Parts{}))
		default:
			misses++
			t.Errorf("%s: %q, not %q", text, got, fault)
		}
	})
	t.Logf("%d names: %d wrong italics, %d false alarms, %d missed", n, italics, alarms, misses)
}

// Faults that no list with italics can hold, and what columns say.
func TestFaults(t *testing.T) {
	for _, tt := range []struct {
		text    string
		c       Parts
		message string
		suggest string
	}{
		{"Quercus_suber", Parts{}, "underscores stand where names have spaces", "Quercus suber"},
		{"Q_suber", Parts{}, "underscores stand where names have spaces", "Q. suber"},
		{"<i>Quercus suber</i> L.", Parts{}, "the marks of a web page are printed as letters: take them out", "Quercus suber L."},
		{"Armeria pungens (Link) Hoffmanns. &amp; Link", Parts{}, "the marks of a web page are printed as letters: take them out", "Armeria pungens (Link) Hoffmanns. & Link"},
		{"Q. suber L.", Parts{}, "only the initial of the genus is written: whoever reads the label alone cannot know it, so write the genus in full", ""},
		{"Qu. suber", Parts{Genus: "Quercus"}, "only the initial of the genus is written: whoever reads the label alone cannot know it, so write the genus in full", "Quercus suber"},
		{"A. de Candolle", Parts{}, "", ""}, {"St. John's wort", Parts{}, "", ""},
		{"Rosa rugosa, Thunb.", Parts{}, "a comma stands before the author, where names have none", "Rosa rugosa Thunb."},
		{"Reynoutria sachalinensis, (F. Schmidt ex Maxim.) Nakai", Parts{}, "a comma stands before the author, where names have none", "Reynoutria sachalinensis (F. Schmidt ex Maxim.) Nakai"},
		{"Heracleum mantegazzianum, Sommier & Levier", Parts{}, "a comma stands before the author, where names have none", "Heracleum mantegazzianum Sommier & Levier"},
		{"Quercus suber, sterile", Parts{}, "", ""}, {"Quercus suber, Valdoura", Parts{}, "", ""}, {"Quercus suber L., Valdoura", Parts{}, "", ""},
		{"Arion vulgaris, (Dana, 1852)", Parts{}, "", ""},
		{"Elymus glaucus virescens", Parts{}, "no rank stands before virescens: write subsp., var. or f.; two words of one epithet have a hyphen between them", ""},
		{"Elymus glaucus virescens", Parts{Rank: "subspecies"}, "no rank stands before virescens: write subsp., var. or f.; two words of one epithet have a hyphen between them", "Elymus glaucus subsp. virescens"},
		{"Elymus glaucus var. virescens Piper", Parts{Genus: "Elymus", SpecificEpithet: "glaucus", InfraspecificEpithet: "virescens", Authorship: "var. virescens Piper"}, "", ""},
		{"*Quercus suber* L.", Parts{}, "the signs of typed italics are printed: take them out, for the label sets the name in italics", "Quercus suber L."},
		{"_Quercus suber_ L. subsp. __suber__", Parts{}, "the signs of typed italics are printed: take them out, for the label sets the name in italics", "Quercus suber L. subsp. suber"},
		{"Quercus suber*", Parts{}, "", ""},
		{"quercus suber", Parts{Genus: "quercus"}, "a genus begins with a capital letter", "Quercus suber"},
		{"erva doce", Parts{}, "", ""},
		{"taraxacum officinale", Parts{}, "a genus begins with a capital letter", "Taraxacum officinale"},
		{"sebastiania brasiliensis", Parts{}, "a genus begins with a capital letter", "Sebastiania brasiliensis"},
		{"rosa brava", Parts{}, "", ""}, {"cactus redondo", Parts{}, "", ""}, {"red blade", Parts{}, "", ""}, {"hierba buena", Parts{}, "", ""},
		{"canela preta do brejo", Parts{}, "", ""},
		{"plantae vasculares", Parts{}, "", ""},
		{"Carex ssp.", Parts{}, "ssp. is a subspecies: of several species write spp.", "Carex spp."},
		{"Populus tremulaL.", Parts{}, "the epithet and its author run into each other", "Populus tremula L."},
		{"Populus nigraL", Parts{}, "the epithet and its author run into each other", "Populus nigra L"},
		{"Calluna vulgaris(L.) Hull", Parts{}, "the epithet and its author run into each other", "Calluna vulgaris (L.) Hull"},
		{"Calluna vulgaris(L.)Hull", Parts{}, "the epithet and its author run into each other", "Calluna vulgaris (L.) Hull"},
		{"Linaria linaria (L.) Karst.", Parts{}, "the epithet repeats the genus, which no name of a plant may: see which of the two is meant", ""},
		{"Linaria vulgaris subsp. vulgaris", Parts{}, "", ""},
		{"Calluna vulgaris (L.)", Parts{}, "only the author in brackets is given, who named the plant first: add the one who gave it this name", ""},
		{"Calluna vulgaris (L.)", Parts{Authorship: "(L.) Hull"}, "", ""}, {"Calluna vulgaris (L.)", Parts{Authorship: "(L.)"}, "only the author in brackets is given, who named the plant first: add the one who gave it this name", ""},
		{"Calluna vulgaris (L.)Hull", Parts{}, "no blank parts the author in brackets from the next", "Calluna vulgaris (L.) Hull"}, {"Mayepea ligustrina (Sw.)O.Kuntze", Parts{}, "no blank parts the author in brackets from the next", "Mayepea ligustrina (Sw.) O.Kuntze"},
		{"Calluna vulgaris (s.l.)", Parts{}, "", ""}, {"Calluna vulgaris (Ling)", Parts{}, "", ""}, {"Lutra vulgaris (Linnaeus, 1758)", Parts{}, "", ""},
		{"Calluna vulgaris (L.) Hull (P)", Parts{}, "", ""}, {"Thymus (Serpyllum)", Parts{}, "", ""}, {"Carex flava (C. viridula)", Parts{}, "", ""},
		{"Calluna vulgaris 1 (L.) Hull", Parts{}, "a figure stands before the author", "Calluna vulgaris (L.) Hull"},
		{"Inga sp. 1 Benth.", Parts{}, "", ""}, {"Calluna vulgaris 2", Parts{}, "", ""},
		{"Acarospora badiofusca (Nyl.) Th.. Fr.", Parts{}, "two full stops stand where one is meant", "Acarospora badiofusca (Nyl.) Th. Fr."},
		{"Quercus suber(male)", Parts{}, "", ""}, {"Acer macDonaldii", Parts{}, "", ""}, {"Salix alba L.", Parts{}, "", ""},
		{"Minuartia CF", Parts{}, "cf. stands before the word that is in doubt", ""},
		{"Minuartia CF verna", Parts{}, "cf. is written in small letters, with a full stop", "Minuartia cf. verna"},
		{"Minuartia AFF. verna (L.) Hiern", Parts{}, "aff. is written in small letters, with a full stop", "Minuartia aff. verna (L.) Hiern"},
		{"Minuartia Sp.", Parts{}, "sp. is written in small letters, with a full stop", "Minuartia sp."},
		{"Minuartia Sprengel", Parts{}, "", ""}, {"Carex Spach", Parts{}, "", ""},
		{"Carex flava cf.", Parts{}, "cf. stands before the word that is in doubt", ""},
		{"", Parts{Genus: "Carex"}, "", ""},
		{"Fabaceae Mimosoideae Albizia zygia (DC.) J.F.Macbr.", Parts{}, "the family stands before the name: its place is the column family", "Albizia zygia (DC.) J.F.Macbr."},
		{"Labiatae - Thymus sp.", Parts{}, "the family stands before the name: its place is the column family", "Thymus sp."},
		{"Fagaceae", Parts{}, "", ""}, {"Fagaceae sp.", Parts{}, "", ""}, {"Poaceae: Stipa sp.", Parts{}, "", ""}, {"Poaceae: Stipa sp.", Parts{Family: "Poaceae"}, "the family stands before the name and in its own column: it is printed twice", "Stipa sp."}, {"Chamaedaphne calyculata", Parts{}, "", ""},
		{"alba", Parts{}, "one word in small letters: an epithet has its genus before it, and a genus a capital", ""}, {"robur", Parts{}, "one word in small letters: an epithet has its genus before it, and a genus a capital", ""}, {"tinctorius", Parts{}, "one word in small letters: an epithet has its genus before it, and a genus a capital", ""},
		{"alba", Parts{Genus: "Quercus"}, "", ""}, {"batata", Parts{}, "", ""}, {"cactus", Parts{}, "", ""}, {"indet.", Parts{}, "", ""}, {"lichens", Parts{}, "", ""},
	} {
		fs := Faults(tt.text, tt.c)
		var got Fault
		if len(fs) > 0 {
			got = fs[0]
		}
		if got.Message != tt.message || got.Suggest != tt.suggest {
			t.Errorf("%q: %+v", tt.text, fs)
		}
	}
}

// What is wrong with the end of a name's authors, and a name pasted twice.
func TestFaultsOfAuthors(t *testing.T) {
	for _, tt := range []struct{ text, message, suggest string }{
		{"Calluna vulgaris (L.) Hull Calluna vulgaris (L.) Hull", "the whole name stands twice", "Calluna vulgaris (L.) Hull"},
		{"Calluna vulgaris Calluna vulgaris (L.) Hull", "the whole name stands twice", "Calluna vulgaris (L.) Hull"},
		{"Calluna vulgaris (L.) Hull Calluna vulgaris", "the whole name stands twice", "Calluna vulgaris (L.) Hull"},
		{"Quercus suber × Quercus suber", "", ""}, {"Quercus suber L. subsp. suber", "", ""},
		{"Calluna vulgaris, Calluna vulgaris var. hirsuta", "", ""},
		{"Calluna vulgaris (L.) Hull ex", "nobody follows ex", ""},
		{"Erica umbellata L.1753", "no blank stands before the year", "Erica umbellata L. 1753"},
		{"Quercus faginea Lév.(1851)", "no blank stands before the year", "Quercus faginea Lév. (1851)"},
		{"Erica umbellata L1nk", "a figure stands in the author L1nk", ""},
		{"Erica umbellata MO123", "", ""}, {"Erica sp. A1b", "", ""},
		{"Erica umbellata l.", "authors begin with a capital letter", "Erica umbellata L."},
		{"Erica umbellata s.l.", "", ""}, {"Erica umbellata s. l.", "", ""}, {"Erica umbellata (fl.)", "", ""},
		{"Calluna vulgaris (l.) hull", "authors begin with a capital letter", ""},
	} {
		fs := Faults(tt.text, Parts{})
		if len(fs) == 0 && tt.message == "" {
			continue
		}
		if len(fs) == 0 || fs[0].Message != tt.message || fs[0].Suggest != tt.suggest {
			t.Errorf("%q: %+v", tt.text, fs)
		}
	}
}

// What is wrong with authors in a column of their own.
func TestAuthorFaults(t *testing.T) {
	for _, tt := range []struct{ text, message, suggest string }{
		{"(L. Hull", "the bracket ( is not closed", ""}, {"L.) Hull", "the bracket ) is not opened", ""}, {"(L.] Hull", "the bracket ] is not opened", ""},
		{"(L.)Hull", "no blank parts the author in brackets from the next", "(L.) Hull"},
		{"L1nk", "a figure stands in the author L1nk", ""}, {"Link2", "a figure stands in the author Link2", ""},
		{"(Link2) Samp.", "a figure stands in the author Link2", ""},
		{"L.1753", "no blank stands before the year", "L. 1753"}, {"Lév.(1851)", "no blank stands before the year", "Lév. (1851)"},
		{"Hoffmanns. &", "nobody follows &", ""}, {"Hoffmanns. et", "nobody follows et", ""}, {"Link ex", "nobody follows ex", ""},
		{"& Link", "nobody stands before &", ""}, {"ex Link", "nobody stands before ex", ""},
		{"L.,", "ends with \",\", and nothing follows", "L."}, {", L.", "begins with \",\", which is printed", "L."},
		{"Th.. Fr.", "two full stops stand where one is meant", "Th. Fr."}, {"L..", "ends with two full stops", "L."}, {"Link ... Samp.", "", ""},
		{"l.", "authors begin with a capital letter", "L."}, {"(l.) hull", "authors begin with a capital letter", ""}, {"dc.", "authors begin with a capital letter", "DC."},
		{"(L.)", firstOnly, ""}, {"(Hoffmanns. & Link)", firstOnly, ""}, {"(s.l.)", "", ""}, {"(Linnaeus)", "", ""},
		{"", "", ""}, {"(L.) Hull", "", ""}, {"L. f.", "", ""}, {"(Hoffmanns. & Link) Samp. ex Cout.", "", ""}, {"auct.", "", ""}, {"s.l.", "", ""}, {"hort.", "", ""}, {"nom. nud.", "", ""},
		{"L., 1753", "", ""}, {"(Linnaeus, 1758)", "", ""}, {"Brot., Fl. Lusit. 1: 18. 1804", "", ""}, {"Brot. 1804b", "", ""}, {"[Brot.] Samp.", "", ""}, {"d'Urv.", "", ""}, {"de Vries", "", ""},
		{"Fr. : Fr.", "", ""}, {"(Pers.: Fr.) P.Kumm.", "", ""}, {"Müll. Arg.", "", ""}, {"Benth. in Hook.f.", "", ""}, {"auct. non L.", "", ""}, {"Edgar von Harold", "", ""}, {"Y.Z.Zhao & et al.", "", ""},
	} {
		fs := AuthorFaults(tt.text)
		if len(fs) == 0 && tt.message == "" {
			continue
		}
		if len(fs) == 0 || fs[0].Message != tt.message || fs[0].Suggest != tt.suggest {
			t.Errorf("%q: %+v", tt.text, fs)
		}
		if len(fs) > 0 && fs[0].Suggest != "" {
			if again := AuthorFaults(fs[0].Suggest); len(again) > 0 {
				t.Errorf("%q: %q is no better: %+v", tt.text, fs[0].Suggest, again)
			}
		}
	}
}

// Whatever is written, Faults ends, says something of what it finds, and never
// suggests what is written already.
func FuzzFaults(f *testing.F) {
	for _, s := range []string{"Quercus suber (L.", "quercus suber L.", "Carex flava c.f.", "Viola ×", "Iris Xiphium L.", "Salix_alba", "<i>Poa</i> &times;", "a) b) c", "Poa annua L. L."} {
		f.Add(s, "", "")
	}
	f.Add("quercus", "Quercus", "L.")
	f.Add("0quercusa subera", "", "L.")
	f.Fuzz(func(t *testing.T, text, genus, author string) {
		for _, fault := range slices.Concat(Faults(text, Parts{Genus: genus, Authorship: author}), AuthorFaults(text)) {
			if fault.Message == "" || fault.Suggest == text && text != "" {
				t.Fatalf("%q: %+v", text, fault)
			}
		}
	})
}
