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

// A date of ISO 8601 whose month is none is answered, but not mended.
func TestAmendDayBeforeMonth(t *testing.T) {
	for text, want := range map[string]string{"2026-13-02": "", "14.v.2026": "2026-05-14"} {
		got := ""
		for row, err := range open(t, map[string]string{"eventDate": text}).Rows() {
			if err != nil {
				t.Fatal(err)
			}
			for _, a := range Amend(row) {
				got = a.To
			}
		}
		if got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}
