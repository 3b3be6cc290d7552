package trade

import "testing"

// Names from memory.
func TestSameLand(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"Wisconson", "Wisconsin", true}, {"Tennesee", "Tennessee", true}, {"Worcestor", "Worcester", true}, {"Sao Paulo", "São Paulo", true},
		{"Setubal", "Setúbal", true}, {"Castro Marin", "Castro Marim", true}, {"Evora", "Évora", true}, {"Massachusets", "Massachusetts", true},
		{"Minas Gerias", "Minas Gerais", true}, {"Nothumberland", "Northumberland", true},
		{"Shanxi", "Shaanxi", false}, {"Pará", "Paraná", false}, {"Cauca", "Cuenca", false}, {"Algarve", "ALGARVE", false}, {"Hunan", "Henan", false},
		{"Nord-Trøndelag", "Sør-Trøndelag", false}, {"North Yorkshire", "South Yorkshire", false}, {"Lower Austria", "Upper Austria", false},
		{"Beira Alta", "Beira Baixa", false}, {"Johnson", "Johnston", false}, {"West Sussex", "East Sussex", false}, {"Distrito 14", "Distrito 15", false},
		{"Mato Grosso", "Mato Grosso do Sul", false}, {"Virginia", "West Virginia", false}, {"Region X", "Region V", false}, {"Guangdong", "Guangxi", false},
		{"Baja California", "Baja California Sur", false}, {"Niederbayern", "Oberbayern", false}, {"Carolina", "Catalina", false},
	} {
		if got := sameLand(c.a, c.b); got != c.want {
			t.Errorf("%q and %q: %v", c.a, c.b, got)
		}
		if sameLand(c.b, c.a) != c.want {
			t.Errorf("%q and %q: not the same in turn", c.b, c.a)
		}
	}
}

// TestFormNotFilledIn: a colon with nothing behind it is an empty line of a form; two
// signs together are a slip.
func TestFormNotFilledIn(t *testing.T) {
	for text, want := range map[string]string{
		"page: 7, imaged:  , notes at:": "", "page: , num: 7": "", "Valdoura:, dunes": ":,", "Valdoura:; dunes": ":;", "Valdoura, , dunes": ", ,",
	} {
		if got, _ := doubled(text); got != want {
			t.Errorf("%q: %q, not %q", text, got, want)
		}
	}
}
