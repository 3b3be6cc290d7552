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
