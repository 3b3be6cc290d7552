package fonts

import (
	"testing"
)

// TestDefaultFaces holds the list of faces against the files' own names and
// styles.
func TestDefaultFaces(t *testing.T) {
	for _, f := range Default().Faces() {
		g, err := newFace(f.data)
		if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			continue
		}
		if g.Name != f.Name || g.Family != f.Family || g.Italic != f.Italic || g.Bold != f.Bold {
			t.Errorf("the list says %s %q italic %v bold %v, the file %s %q italic %v bold %v",
				f.Name, f.Family, f.Italic, f.Bold, g.Name, g.Family, g.Italic, g.Bold)
		}
		t.Log(f.Name, f.Metrics())
	}
}
