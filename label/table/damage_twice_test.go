package table

import "testing"

// TestUndoMac: what came through a Mac is put back, and what was lost there is said.
func TestUndoMac(t *testing.T) {
	for _, c := range []struct {
		text, mended string
		unread       bool
	}{
		{"Distrito AgropecuÌÁrio, IgarapÌ© do Covão", "Distrito Agropecuário, Igarapé do Covão", false},
		{"Trilha SumaÌ¼ma", "Trilha Sumaúma", false}, {"AssunÌ¤Ì£o", "Assunção", false},
		{"Ìrvore nå¼ 1172", "Ìrvore nº 1172", true}, {"Mata primÌÁria, FenolÌ_gico", "Mata primária, FenolÌ_gico", true},
		{"così, CITTÀ E COSÌ, Forlì", "così, CITTÀ E COSÌ, Forlì", false}, {"Åkarp, å ån", "Åkarp, å ån", false}, {"PERÌ ÁRIDO", "PERÌ ÁRIDO", false},
	} {
		if mended, unread := undoMac(c.text); mended != c.mended || unread != c.unread {
			t.Errorf("%q: %q, %v", c.text, mended, unread)
		}
	}
}
