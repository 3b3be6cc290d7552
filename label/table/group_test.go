package table

import "testing"

// TestJoin: columns of one term say a thing once.
func TestJoin(t *testing.T) {
	g := &group{joint: ", "}
	for _, c := range []struct{ before, text, want string }{
		{"Lindoso", "Lindoso", "Lindoso"},
		{"Lindoso", "by the bridge", "Lindoso, by the bridge"},
		{"Lindoso", "lindoso, by the bridge", "lindoso, by the bridge"},
		{"Lindoso, by the bridge", "Lindoso", "Lindoso, by the bridge"},
		{"Soajo, Lindoso", "Lindoso by the bridge", "Soajo, Lindoso by the bridge"},
		{"Lindoso, Soajo", "Lindoso by the bridge", "Lindoso, Soajo, Lindoso by the bridge"},
		{"Lind", "Lindoso", "Lind, Lindoso"},
		{"Les Prés", "Les Prés à Valdoura", "Les Prés à Valdoura"},
		{"Lindoso,", "by the bridge", "Lindoso, by the bridge"}, {"Lindoso; ", "by the bridge", "Lindoso, by the bridge"},
	} {
		if got := g.join(c.before, c.text); got != c.want {
			t.Errorf("%q and %q: %q, not %q", c.before, c.text, got, c.want)
		}
	}
}
