package date

import "testing"

// The days that the Roman calendar counts back to. The Nones are the 7th and the
// Ides the 15th in March, May, July and October, else the 5th and the 13th; both
// ends are counted, and the 24th of February is the sixth before the Kalends of
// March in any year (common practice, from memory).
func TestRoman(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Kal. Jan. 1790", "1790-01-01"},
		{"Id. Mart. 1803", "1803-03-15"},
		{"Idibus Junii 1803", "1803-06-13"},
		{"prid. Kal. Maii 1812", "1812-04-30"},
		{"pridie Idus Junias 1801", ""}, // the month in another case is not known
		{"prid. Id. Jun. 1801", "1801-06-12"},
		{"a.d. III Non. Apr. 1801", "1801-04-03"},
		{"VIII Kal. Sept. 1799", "1799-08-25"},
		{"a. d. VI Kal. Mart. 1803", "1803-02-24"},
		{"a. d. VI Kal. Mart. 1804", "1804-02-24"},
		{"XIX Kal. Sept. 1799", "1799-08-14"},
		{"IX Non. Sept. 1799", "none"},
	} {
		r := Read(c.text, Hints{})
		switch {
		case c.want == "":
			if r.Doubt == CalendarDoubt {
				t.Errorf("%q is read as %v", c.text, r.Candidates)
			}
		case c.want == "none":
			if r.Status != Ambiguous || len(r.Candidates) != 0 {
				t.Errorf("%q: %+v", c.text, r)
			}
		case r.Status != Ambiguous || r.Doubt != CalendarDoubt || len(r.Candidates) != 1 || r.Candidates[0].ISO() != c.want:
			t.Errorf("%q: %+v, want %s", c.text, r, c.want)
		}
	}
}
