package coord

import "testing"

// TestForeignSides: sides whose letters mean something else elsewhere are read where their
// partners tell.
func TestForeignSides(t *testing.T) {
	for in, want := range map[string]string{
		`3°19'22" LU 98°35'10" BT`: `3°19'22" N 98°35'10" E`, `6°44' LS, 107°00' BT`: `6°44' S, 107°00' E`, `0,5° LU 101° BB`: `0,5° N 101° W`,
		`52°10' n.b., 4°30' o.l.`: `52°10' N, 4°30' E`, `12°10' Z.B. 68°30' W. L.`: `12°10' S 68°30' W`,
		`39°45' K`: `39°45' K`, `41°12' N 8°36' O`: `41°12' N 8°36' O`, `Lubango, 14°55' S`: `Lubango, 14°55' S`, `12 BTU`: `12 BTU`,
	} {
		if got := foreignSides(in); got != want {
			t.Errorf("%s: %s, not %s", in, got, want)
		}
	}
}
