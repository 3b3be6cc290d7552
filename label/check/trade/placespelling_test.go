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
		{"Santa Maria", "Santa Marta", false}, {"San Martin", "San Marton", false}, {"Santa Catarina", "Santa Caterina", true},
		{"Shanxi", "Shaanxi", false}, {"Pará", "Paraná", false}, {"Cauca", "Cuenca", false}, {"Algarve", "ALGARVE", false}, {"Hunan", "Henan", false},
		{"Nord-Trøndelag", "Sør-Trøndelag", false}, {"North Yorkshire", "South Yorkshire", false}, {"Lower Austria", "Upper Austria", false},
		{"Beira Alta", "Beira Baixa", false}, {"Johnson", "Johnston", false}, {"West Sussex", "East Sussex", false}, {"Distrito 14", "Distrito 15", false},
		{"Mato Grosso", "Mato Grosso do Sul", false}, {"Virginia", "West Virginia", false}, {"Region X", "Region V", false}, {"Guangdong", "Guangxi", false},
		{"Baja California", "Baja California Sur", false}, {"Niederbayern", "Oberbayern", false}, {"Carolina", "Catalina", false}, {"Portugal?", "Portugal", false},
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

// TestCountryMissing: a country is asked for where the other records name one.
func TestCountryMissing(t *testing.T) {
	for _, tt := range []struct {
		countries []string
		last      []string // of the last record
		want      int
	}{
		{[]string{"Portugal", "Portugal", "Portugal", "Portugal", ""}, nil, 1},
		{[]string{"Portugal", "Portugal", "Spain", "", ""}, nil, 2},
		{[]string{"Portugal", "", "", "", ""}, nil, 0}, // the column is something else
		{[]string{"", "", "", "", ""}, nil, 1},         // once for the table
		{[]string{"", "", "", ""}, nil, 0},
		{[]string{"Portugal", "Portugal", "Portugal", "Portugal", ""}, []string{"waterBody", "Atlantic Ocean"}, 0},
		{[]string{"Portugal", "Portugal", "Portugal", "Portugal", ""}, []string{"countryCode", "PT"}, 0},
		{[]string{"Portugal", "Portugal", "Portugal", "Portugal", ""}, []string{"stateProvince", "", "locality", "s.l."}, 0},
	} {
		var changes [][]string
		for i, country := range tt.countries {
			change := []string{"recordNumber", itoa(214 + i), "country", country}
			if i == len(tt.countries)-1 {
				change = append(change, tt.last...)
			}
			changes = append(changes, change)
		}
		_, fs := run(t, open(t, rows(changes...)...), options(t))
		n := 0
		for _, f := range fs {
			if f.Rule == "country-missing" {
				n++
			}
		}
		if n != tt.want {
			t.Errorf("%q %q: %d findings, want %d", tt.countries, tt.last, n, tt.want)
		}
	}
}

// TestCountryAmongStates: where the column of states has countries alone, that
// is what is said.
func TestCountryAmongStates(t *testing.T) {
	for _, tt := range []struct {
		states []string
		want   string // the value of the finding
	}{
		{[]string{"Portugal", "Portugal", "España", "Portugal", "Portugal"}, "Portugal"},
		{[]string{"Portugal", "Portugal", "Braga", "Portugal", "Portugal"}, ""},
		{[]string{"Georgia", "Georgia", "Georgia", "Georgia", "Georgia"}, ""}, // of the United States, perhaps
		{[]string{"CA", "CA", "DE", "CA", "CA"}, ""},
		{[]string{"Alaska", "Alaska", "Alaska", "Alaska", "Alaska"}, ""},
		{[]string{"Açores", "Madeira", "Açores", "Açores", "Madeira"}, ""},
		{[]string{"Scotland", "England", "Wales", "England", "Scotland"}, ""},
		{[]string{"Puerto Rico", "Puerto Rico", "Puerto Rico", "Puerto Rico", "Puerto Rico"}, ""},
	} {
		var changes [][]string
		for i, state := range tt.states {
			changes = append(changes, []string{"recordNumber", itoa(214 + i), "country", "", "stateProvince", state})
		}
		_, fs := run(t, open(t, rows(changes...)...), options(t))
		n := 0
		for _, f := range fs {
			if f.Rule != "country-missing" {
				continue
			}
			if n++; f.Value != tt.want || (tt.want != "") != (f.Term == "stateProvince") {
				t.Errorf("%q: %+v, want %q", tt.states, f, tt.want)
			}
		}
		if n != 1 {
			t.Errorf("%q: %d findings, want one", tt.states, n)
		}
	}
}

// TestCountryInLocality: a country that the localities name needs no column.
func TestCountryInLocality(t *testing.T) {
	for _, tt := range []struct {
		localities []string
		want       int
	}{
		{[]string{"USA-MI", "Canada-QC", "Chile", "USA-OR", "USA"}, 0},
		{[]string{"Portugal: Minho, Valdoura", "Portugal: Algarve", "Spain, Galicia", "Portugal", "Portugal; Beira"}, 0},
		{[]string{"Valdoura, Portugal", "Serra do Covão (Portugal).", "Parada, Portugal", "Lindoso, Portugal", "Ponte, Portugal"}, 0},
		{[]string{"Portugal: Minho", "Valdoura", "Parada", "Lindoso", "Ponte"}, 1},
		{[]string{"Georgia, by the mill", "Georgia, dunes", "Georgia", "Georgia", "Georgia"}, 1},
		{[]string{"Valdoura", "China grove", "Parada", "Lindoso", "Ponte"}, 1},
	} {
		var changes [][]string
		for i, l := range tt.localities {
			changes = append(changes, []string{"recordNumber", itoa(214 + i), "country", "", "stateProvince", "", "locality", l})
		}
		_, fs := run(t, open(t, rows(changes...)...), options(t))
		n := 0
		for _, f := range fs {
			if f.Rule == "country-missing" {
				n++
			}
		}
		if n != tt.want {
			t.Errorf("%q: %d findings, want %d", tt.localities, n, tt.want)
		}
	}
}

// TestFarNames: names all but alike of lands far from each other are both right.
// Coordinates from memory.
func TestFarNames(t *testing.T) {
	for _, c := range []struct {
		state, lat, lon string
		want            int
	}{
		{"Ranong Province", "9.78", "98.58", 0}, {"Ranong Province", "12.64", "101.12", 1}, {"Ranong Province", "", "", 1},
		{"Rayóng Province", "9.78", "98.58", 1}, // an accent is none of another land
	} {
		_, fs := run(t, open(t, rows(
			[]string{"recordNumber", "1", "country", "Thailand", "stateProvince", "Rayong Province", "decimalLatitude", "12.63", "decimalLongitude", "101.14"},
			[]string{"recordNumber", "2", "country", "Thailand", "stateProvince", "Rayong Province", "decimalLatitude", "12.61", "decimalLongitude", "101.40"},
			[]string{"recordNumber", "3", "country", "Thailand", "stateProvince", c.state, "decimalLatitude", c.lat, "decimalLongitude", c.lon},
		)...), options(t))
		got := 0
		for _, f := range fs {
			if f.Rule == "place-spelling" {
				got++
			}
		}
		if got != c.want {
			t.Errorf("%s, %s, %s: %d findings, not %d: %v", c.state, c.lat, c.lon, got, c.want, fs)
		}
	}
}

// TestNearNames: two towns may be all but alike; what lies where the other lies, or
// stands once beside many, is a slip. Coordinates are invented.
func TestNearNames(t *testing.T) {
	for _, c := range []struct {
		name  string
		first int // records of Valdourinha
		texts []string
		lat   string // of those
		want  int
	}{
		{"a slip", 4, []string{"Valdourinho"}, "41.52", 1},
		{"a slip without a place", 4, []string{"Valdourinho"}, "", 1},
		{"far off", 4, []string{"Valdourinho"}, "42.10", 0},
		{"both in several", 4, []string{"Valdourinho", "Valdourinho"}, "41.52", 0},
		{"copied down", 7, []string{"Valdourinho", "Valdourinho"}, "41.52", 1},
		{"accents of both, in several", 4, []string{"Valdourínha", "Valdourínha"}, "42.10", 1},
	} {
		var changes [][]string
		for i := range c.first + len(c.texts) {
			change := []string{"recordNumber", itoa(214 + i), "stateProvince", "Vila Real", "county", "", "municipality", "Valdourinha", "decimalLatitude", "41.51", "decimalLongitude", "-7.51"}
			if i >= c.first {
				change = append(change, "municipality", c.texts[i-c.first], "decimalLatitude", c.lat)
				if c.lat == "" {
					change = append(change, "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", "")
				}
			}
			changes = append(changes, change)
		}
		_, fs := run(t, open(t, rows(changes...)...), options(t))
		got := 0
		for _, f := range fs {
			if f.Rule == "place-spelling" {
				got++
			}
		}
		if got != c.want {
			t.Errorf("%s: %d findings, not %d: %v", c.name, got, c.want, fs)
		}
	}
}
