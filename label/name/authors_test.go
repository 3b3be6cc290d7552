package name

import "testing"

// Authors as two sources give them for one name, and those that are others.
func TestSameAuthors(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"(Pers. : Pers.) Nannf.", "(Pers.) Nannf.", true},
		{"(Pers.: Fr.) P.Karst.", "(Pers.) P. Karst.", true},
		{"Fr. : Fr.", "Fr.", true},
		{"Welw. ex Hiern", "Hiern", true},
		{"(Willd. ex Schltdl.) Briq.", "(Schltdl.) Briq.", true},
		{"J.V.Lamour. in Quoy & Gaimard", "J.V.Lamour.", true},
		{"(L.) Miller", "(L.) Mill.", true},
		{"(Linnaeus) Mill.", "(L.) Mill.", true},
		{"(R. Brown) Beauv.", "(R.Br.) P.Beauv.", true},
		{"P. Mill.", "Mill.", true},
		{"(Cunn.) Meissn.", "(A.Cunn.) Meisn.", false}, // Meissn. is spelt otherwise
		{"Schwägr.", "Schwagr.", true},
		{"L.f.", "L.", false},
		{"Hook.", "Hook.f.", false},
		{"L.", "Lam.", false},
		{"Mill.", "Moench", false},
		{"(L.) Mill.", "Mill.", false},
		{"A.Gray", "S.Gray", false},
		{"Ruiz & Pav.", "Ruiz", false},
		{"Wulfen ex Jacq.", "Scop. ex Jacq.", false},
		{"Hoffm.", "Hoffmanns.", false},
		{"Mich.", "Michx.", false},
		{"Hoffmanns. & Link", "Link", false},
		{"(Wall.) D.Don", "(Wall.) G.Don", false},
		{"Boiss. 1844", "Boiss.", true},
		{"", "L.", false},
	} {
		if got := sameAuthors(c.a, c.b); got != c.same {
			t.Errorf("%q and %q: same %v", c.a, c.b, got)
		}
		if got := sameAuthors(c.b, c.a); got != c.same {
			t.Errorf("%q and %q: same %v", c.b, c.a, got)
		}
	}
}

// Authors whose abbreviation is a word of another sense, or who stand beside one.
func TestAuthorsThatAreWords(t *testing.T) {
	for text, want := range map[string]string{
		"Acaulon piligerum (De Not.) Limpr.":          "(De Not.) Limpr.",
		"Acaulon piligerum Ces. & De Not.":            "Ces. & De Not.",
		"ACAULON PILIGERUM (DE NOT.) LIMPR.":          "(DE NOT.) LIMPR.",
		"Crinum bulbispermum Herb.":                   "Herb.",
		"Crinum bulbispermum (Herb.) Baker":           "(Herb.) Baker",
		"Crinum bulbispermum Herb. & Baker":           "Herb. & Baker",
		"Crinum bulbispermum Baker Herb. Valdoura":    "Baker",
		"Salicornia europaea Moss":                    "Moss",
		"Aconitum napellus (Ser.) Samp.":              "(Ser.) Samp.",
		"Rubus armeniacus Focke (R. procerus auct.)":  "Focke",
		"Tulipa gesneriana L. (s.l.)":                 "L.",
		"Sesleria ovata (Psilathera ovata)":           "",
		"Carex nigra (L. Reichard":                    "(L. Reichard",
		"Calluna vulgaris (L.) Hull not found again":  "(L.) Hull",
		"Calluna vulgaris (L.) Hull, herb. Valdoura.": "(L.) Hull",
	} {
		if got := Parse(text, Parts{}).Authorship; got != want {
			t.Errorf("%q: %q, not %q", text, got, want)
		}
	}
}
