package place

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Towns well within a state, and the state as people write it; from memory.
const towns = `
US 47.61 -122.33 Washington; US 38.90 -77.04 DC; US 44.98 -93.27 Minn; US 34.05 -118.24 California; US 61.22 -149.90 AK; US 21.31 -157.86 Hawaii; US 40.71 -74.01 New York; US 25.76 -80.19 FL; US 29.95 -90.07 Louisiana; US 42.36 -71.06 Massachusetts
CA 49.28 -123.12 British Columbia; CA 43.65 -79.38 Ontario; CA 45.50 -73.57 Quebec; CA 45.50 -73.57 Québec; CA 44.65 -63.58 NS; CA 60.72 -135.06 Yukon; CA 53.55 -113.49 Alberta; CA 47.56 -52.71 Newfoundland and Labrador
MX 17.07 -96.72 Oaxaca; MX 32.52 -117.04 Baja California; MX 24.14 -110.31 Baja California Sur; MX 25.67 -100.31 Nuevo León; MX 20.97 -89.62 Yucatan; MX 29.07 -110.96 Estado de Sonora; MX 19.17 -96.13 Veracruz; MX 28.63 -106.08 Chihuahua
BR -23.55 -46.63 São Paulo; BR -23.55 -46.63 SP; BR -12.97 -38.50 Bahia; BR -3.10 -60.02 Amazonas; BR -19.92 -43.94 Minas Gerais; BR -15.78 -47.93 Distrito Federal; BR -30.03 -51.23 Rio Grande do Sul; BR -5.79 -35.21 Rio Grande do Norte; BR -20.44 -54.65 Mato Grosso do Sul; BR -15.60 -56.10 Mato Grosso; BR -10.18 -48.33 Tocantins
AR -31.42 -64.18 Córdoba; AR -54.80 -68.30 Tierra del Fuego; AR -24.79 -65.41 Prov. Salta; CL -33.45 -70.65 Región Metropolitana; CL -23.65 -70.40 Antofagasta; CO 6.25 -75.56 Antioquia; CO 3.44 -76.52 Valle del Cauca; CO 4.71 -74.07 Bogotá; PE -13.53 -71.97 Cusco; PE -12.05 -77.04 Lima; PE -8.38 -74.55 Ucayali
EC -0.18 -78.47 Pichincha; EC -0.90 -89.60 Galápagos; BO -17.78 -63.18 Santa Cruz; BO -16.50 -68.15 La Paz; VE 10.65 -71.64 Zulia; PY -25.29 -57.63 Asunción; UY -34.90 -56.16 Montevideo; CR 9.97 -83.04 Limón; GT 15.47 -90.37 Alta Verapaz
AU -33.87 151.21 New South Wales; AU -33.87 151.21 NSW; AU -31.95 115.86 Western Australia; AU -42.88 147.33 Tasmania; AU -27.47 153.03 QLD; AU -12.46 130.84 Northern Territory; ZA -33.93 18.42 Western Cape; ZA -25.75 28.19 Gauteng; ZA -29.86 31.03 KwaZulu-Natal
ES 37.39 -5.98 Sevilla; ES 37.39 -5.98 Andalucía; ES 42.88 -8.54 Galicia; ES 28.12 -15.43 Las Palmas; ES 41.39 2.17 Cataluña; ES 40.42 -3.70 Comunidad de Madrid; PT 38.72 -9.14 Lisboa; PT 37.74 -25.67 Açores; PT 32.65 -16.91 Madeira; PT 41.15 -8.61 Distrito do Porto; PT 37.02 -7.93 Faro
FR 48.86 2.35 Paris; FR 43.30 5.37 Bouches-du-Rhône; FR 43.60 1.44 Midi-Pyrénées; FR 41.93 8.74 Corse; FR 48.57 7.75 Alsace; IT 45.46 9.19 Lombardia; IT 38.12 13.36 Sicilia; IT 39.22 9.12 Sardegna; IT 43.77 11.25 Tuscany; DE 48.14 11.58 Bayern; DE 53.55 9.99 Hamburg; DE 50.11 8.68 Hessen; DE 52.52 13.40 Berlin
AT 47.27 11.39 Tirol; AT 48.21 16.37 Wien; AT 47.07 15.44 Steiermark; CH 46.95 7.45 Bern; CH 46.19 6.14 Genève; CH 46.00 8.95 Ticino; CH 46.85 9.53 Graubünden; NL 52.37 4.90 Noord-Holland; BE 51.22 4.40 Antwerpen; BE 50.41 4.44 Hainaut; PL 50.06 19.94 Malopolskie; CZ 49.20 16.61 Jihomoravský kraj
CN 30.66 104.07 Sichuan; CN 30.66 104.07 四川; CN 25.04 102.71 Yunnan; CN 29.65 91.10 Xizang; CN 31.23 121.47 Shanghai; CN 43.83 87.62 Xinjiang; IN 12.97 77.59 Karnataka; IN 28.61 77.21 Delhi; IN 11.00 76.96 Tamil Nadu; IN 27.33 88.61 Sikkim; IN 26.14 91.74 Assam; IN 34.08 74.80 Jammu and Kashmir
JP 35.68 139.69 Tokyo; JP 43.06 141.35 Hokkaido; JP 26.21 127.68 Okinawa; JP 35.01 135.77 Kyoto; JP 34.69 135.50 大阪府; TR 36.90 30.70 Antalya; TR 41.01 28.98 İstanbul; TR 37.97 34.68 Niğde; TR 38.50 43.38 Van; TR 40.61 43.10 Kars
`

func TestStates(t *testing.T) {
	n := 0
	for entry := range strings.FieldsFuncSeq(towns, func(r rune) bool { return r == ';' || r == '\n' }) {
		f := strings.SplitN(strings.TrimSpace(entry), " ", 4)
		if len(f) < 4 {
			t.Fatal(entry)
		}
		if f[3] == "Minn" {
			f[3] = "Minnesota"
		}
		lat, lon := number(t, f[1]), number(t, f[2])
		held := false
		for _, s := range StatesNamed(f[0], f[3]) {
			held = held || s.Distance(lat, lon) < coastSlop
			if d := s.Distance(lat, lon); (d == 0) != s.Holds(lat, lon) {
				t.Errorf("%s: %v m off", entry, d)
			}
		}
		here := StateAt(f[0], lat, lon)
		if !held || here == nil {
			t.Errorf("%s: held %t, lies in none: %t", entry, held, here == nil)
		}
		n++
	}
	if n < 100 {
		t.Errorf("only %d towns", n)
	}
	for country, name := range map[string]string{"PT": "Alentejo", "US": "Bavaria", "XX": "Oaxaca", "BR": "", "GB": "Kent"} {
		if s := StatesNamed(country, name); len(s) > 0 {
			t.Errorf("%s %s: %s", country, name, s[0].Name)
		}
	}
	// Mobile, Alabama, lies 51 km from Pensacola in the westernmost county of Florida,
	// whose border is the Perdido River, some 45 km from it.
	if d := StatesNamed("US", "Florida")[0].Distance(30.689, -88.038); math.Abs(d-45e3) > 8e3 {
		t.Errorf("Mobile lies %.0f m from Florida", d)
	}
	goias, tocantins := StatesNamed("BR", "Goiás")[0], StatesNamed("BR", "TO")[0]
	if !tocantins.Was(goias) || goias.Was(tocantins) {
		t.Error("Tocantins was Goiás, and not the other way about")
	}
	for entry := range strings.FieldsFuncSeq(formerStates, func(r rune) bool { return r == ';' || r == '\n' }) {
		country, rest, _ := strings.Cut(strings.TrimSpace(entry), " ")
		now, before, ok := strings.Cut(rest, "=")
		for b := range strings.SplitSeq(before, ",") {
			if !ok || len(StatesNamed(country, now)) == 0 || len(StatesNamed(country, b)) == 0 && b != "Lima Province" {
				t.Errorf("%s: %q or %q is not known", country, now, b)
			}
		}
	}
}

func FuzzUnpackStates(f *testing.F) {
	f.Add(statesPacked[:200])
	f.Add(statesPacked)
	f.Fuzz(func(t *testing.T, b []byte) {
		s, err := unpackStates(b)
		if err != nil {
			return
		}
		for country, all := range s.of {
			for i := range all {
				all[i].Holds(1, 2)
				all[i].Distance(1, 2)
				_ = country
			}
		}
	})
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
