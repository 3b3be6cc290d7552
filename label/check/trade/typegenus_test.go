package trade

import (
	"strings"
	"testing"
)

// TestTypeFamily: a family has the stem of the genus that it is named after (ICN
// Art. 18.1); the pairs are from memory.
func TestTypeFamily(t *testing.T) {
	for genus, want := range map[string]string{
		"Ephedra": "Ephedraceae", "Equisetum": "Equisetaceae", "Platanus": "Platanaceae", "Protea": "Proteaceae", "Aster": "Asteraceae", "Elatine": "Elatinaceae",
		"Osmunda": "Osmundaceae", "Arum": "Araceae",
		"Ebenus": "", "Mora": "", // of the Fabaceae
		"Phellinus": "", // a fungus; the Phellinaceae are Phelline's
		"Apios":     "", "Brya": "", "Codia": "", "Leea": "", "Buxbaumia": "", "Oxalis": "", "Linaria": "",
	} {
		if got := typeFamily(genus); got != want {
			t.Errorf("%s: %q, not %q", genus, got, want)
		}
	}
	// No genus of the list of genera is named after a family that is not its own.
	for genus, family := range generaFamilies() {
		if is := typeFamily(genus); is != "" && is != family && !oneSystem(is, family) {
			t.Errorf("%s: %s by its stem, %s in the list", genus, is, family)
		}
	}
	for _, stem := range strings.Fields("Buxbaumi Ephedr Acer") {
		if !families()[stem+"aceae"] {
			t.Errorf("%saceae is no family", stem)
		}
	}
}
