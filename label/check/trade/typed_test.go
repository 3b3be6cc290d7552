package trade

import "testing"

// TestDittoPart: a place of several parts may point to another row with one of them.
func TestDittoPart(t *testing.T) {
	for text, want := range map[string]string{
		"Oytal, ebd.": "ebd.", "jw., pod przełęczą": "jw.", "Vallda, d:o": "d:o", "Idem, 200 m a jusante": "Idem", "Valdoura; ibid.": "ibid.", "Minas da Panasqueira, mesmo local": "mesmo local",
		"Oytal": "", "Ebenda bei Wien": "", "Bad Ebd, Wald": "", "Rio Idem, margem": "", "Valdoura, idem no lameiro": "",
	} {
		if got := dittoPart(text); got != want {
			t.Errorf("%q: %q, not %q", text, got, want)
		}
	}
}
