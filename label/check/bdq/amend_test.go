package bdq

import "testing"

// What has one reading in countryCode, and what a code would take away.
func TestAmendCountry(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Portugal", "PT"}, {"prt", "PT"}, {"UK", "GB"}, {"Estados Unidos", "US"}, {"U.S.A.", "US"}, {"zz", "ZZ"},
		{"England", ""}, {"Madeira", ""}, {"Açores", ""}, {"Hawaii", ""}, {"PT", ""}, {"Congo", ""},
	} {
		got := ""
		for row, err := range open(t, map[string]string{"countryCode": c.text}).Rows() {
			if err != nil {
				t.Fatal(err)
			}
			for _, a := range Amend(row) {
				got = a.To
			}
		}
		if got != c.want {
			t.Errorf("%q becomes %q, want %q", c.text, got, c.want)
		}
	}
}
