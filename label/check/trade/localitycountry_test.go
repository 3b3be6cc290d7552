package trade

import "testing"

// A locality that begins or ends with the country, by the signs that part it.
func TestLocalityCountry(t *testing.T) {
	for text, want := range map[string]string{
		"Portugal: Valdoura, dunes":     "Valdoura, dunes",
		"PORTUGAL - Valdoura, dunes":    "Valdoura, dunes",
		"Portugal – Valdoura":           "Valdoura",
		"Portugal. Valdoura":            "Valdoura",
		"Valdoura, dunes, Portugal":     "Valdoura, dunes",
		"Portugal-Ferreira, the estate": "", // one name
		"Portugal Street 3, Valdoura":   "",
		"Valdoura, dunes":               "",
	} {
		_, fs := run(t, open(t, map[string]string{"recordedBy": "I. Almeida", "recordNumber": "214", "eventDate": "2026-05-14", "country": "Portugal",
			"scientificName": "Thymus capitellatus Hoffmanns. & Link", "locality": text}), options(t))
		got := ""
		for _, f := range fs {
			if f.Rule == "locality-country" {
				got = f.Suggest
			}
		}
		if got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
