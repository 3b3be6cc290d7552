package table

import "testing"

// TestUnpagedWords: where a word was misread and others are sound, the word is turned.
func TestUnpagedWords(t *testing.T) {
	for _, c := range []struct{ text, typed string }{
		{"Sítio µgua Preta", "Sítio Água Preta"}, {"Curaçá, Fazenda Cai‡ara", "Curaçá, Fazenda Caiçara"}, {"Lençóis, µguas Claras", "Lençóis, Águas Claras"},
		{"Posto de sa£de, Poção de Pedras", "Posto de saúde, Poção de Pedras"}, {"Água Branca, Povoado S¡tio Novo", "Água Branca, Povoado Sítio Novo"},
		{"Cañón, Espa¤a", "Cañón, España"}, {"Río Ñuble, Concepci¢n", "Río Ñuble, Concepción"},
	} {
		if typed, found := unpaged(c.text); !found || typed != c.typed {
			t.Errorf("%q: %q, %v, not %q", c.text, typed, found, c.typed)
		}
	}
	for _, text := range []string{"Sítio Água Preta", "esporos de 12 µm, São Tomé", "3 µg, cão", "0,5 µmol · São João", "Málaga · España", "Curaçá (Ba) – Açude"} {
		if typed, found := unpaged(text); found {
			t.Errorf("%q is found to be %q", text, typed)
		}
	}
}
