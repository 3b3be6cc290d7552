package lang

import (
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"
	"golang.org/x/text/unicode/norm"
)

// fieldsOf returns the words of a language by field name.
func fieldsOf(t *testing.T, tag Tag) map[string]string {
	t.Helper()
	v := reflect.ValueOf(Words(tag)).Elem()
	m := map[string]string{}
	for i := range v.NumField() {
		m[v.Type().Field(i).Name] = v.Field(i).String()
	}
	return m
}

func TestWordsAreComplete(t *testing.T) {
	hole := regexp.MustCompile(`\{[^}]*\}`)
	holes := func(s string) []string { return slices.Sorted(slices.Values(hole.FindAllString(s, -1))) }
	english := fieldsOf(t, English)
	if len(english) < 80 {
		t.Fatalf("only %d words", len(english))
	}
	for _, tag := range Tags() {
		for name, word := range fieldsOf(t, tag) {
			if strings.TrimSpace(word) == "" {
				t.Errorf("%s: %s is empty", tag, name)
			}
			if got, want := holes(word), holes(english[name]); !slices.Equal(got, want) {
				t.Errorf("%s: %s %q has places %v, want %v", tag, name, word, got, want)
			}
			if !norm.NFC.IsNormalString(word) {
				t.Errorf("%s: %s %q is not in NFC", tag, name, word)
			}
			if strings.Contains(word, "  ") || strings.ContainsAny(word, "\t\n") {
				t.Errorf("%s: %s %q holds odd blanks", tag, name, word)
			}
			if strings.HasPrefix(name, "Caution") && strings.HasSuffix(word, ".") {
				t.Errorf("%s: %s ends in a full stop; the label sets it", tag, name)
			}
		}
	}
}

// A word copied from English and forgotten is found by the count of words that
// two languages share.
func TestWordsAreTranslated(t *testing.T) {
	english := fieldsOf(t, English)
	for _, tag := range Tags()[1:] {
		var same []string
		for name, word := range fieldsOf(t, tag) {
			if word == english[name] && len(word) > 4 && !strings.HasPrefix(name, "No") {
				same = append(same, name+" "+word)
			}
		}
		if len(same) > 9 {
			t.Errorf("%s: %d words are as in English: %q", tag, len(same), same)
		}
	}
}

func TestWordsAreTheCallers(t *testing.T) {
	Words(English).Det = "changed"
	if got := Words(English).Det; got != "Det." {
		t.Errorf("a caller changed the word for all: %q", got)
	}
	if Words("xx").Of != "of" {
		t.Error("an unknown language does not answer in English")
	}
}

func TestFill(t *testing.T) {
	for _, c := range []struct {
		pattern string
		pairs   []string
		want    string
	}{
		{"Sheet {n} of {of}", []string{"n", "1", "of", "2"}, "Sheet 1 of 2"},
		{"第 {n} 張，共 {of} 張", []string{"n", "1", "of", "2"}, "第 1 張，共 2 張"},
		{"{what} in box", []string{"what", "{n} cones"}, "{n} cones in box"},
		{"no place", nil, "no place"},
		{"open { only", nil, "open { only"},
		{"", nil, ""},
	} {
		if got := Fill(c.pattern, c.pairs...); got != c.want {
			t.Errorf("Fill(%q) = %q, want %q", c.pattern, got, c.want)
		}
	}
}

func TestJoin(t *testing.T) {
	for _, c := range []struct {
		tag   Tag
		items []string
		want  string
	}{
		{English, nil, ""},
		{English, []string{"A"}, "A"},
		{English, []string{"A", "B"}, "A & B"},
		{Portuguese, []string{"A", "B", "C"}, "A, B & C"},
		{Chinese, []string{"A", "B", "C"}, "A、B、C"},
	} {
		if got := Words(c.tag).Join(c.items); got != c.want {
			t.Errorf("%s: Join(%q) = %q, want %q", c.tag, c.items, got, c.want)
		}
	}
}

// The decimal sign is that of Unicode CLDR as golang.org/x/text holds it; CLDR
// has no Latin.
func TestDecimalSignAgainstCLDR(t *testing.T) {
	for _, tag := range Tags() {
		if tag == Latin {
			continue
		}
		want := message.NewPrinter(language.Make(string(tag))).Sprint(number.Decimal(1.5))
		if got := Number(tag, "1.5"); got != want {
			t.Errorf("%s: %q, CLDR writes %q", tag, got, want)
		}
	}
}

// Groups as the SI brochure (9th edition, 5.4.4) sets them: 43 279.168 29 has
// a space before each third digit of the whole part, 3279 none.
func TestNumber(t *testing.T) {
	for _, c := range []struct {
		tag      Tag
		in, want string
	}{
		{English, "43279", "43\u202f279"},
		{English, "3279", "3279"},
		{English, "1234567.5", "1\u202f234\u202f567.5"},
		{German, "1234567.5", "1\u202f234\u202f567,5"},
		{French, "-12.30", "−12,30"},
		{Portuguese, "+5", "+5"},
		{Latin, "0.25", "0,25"},
		{Chinese, "0.25", "0.25"},
		{English, "c. 300", "c. 300"},
		{English, "1.2.3", "1.2.3"},
		{English, "", ""},
		{English, "-", "-"},
		{English, "1.", "1."},
	} {
		if got := Number(c.tag, c.in); got != c.want {
			t.Errorf("Number(%s, %q) = %q, want %q", c.tag, c.in, got, c.want)
		}
	}
}
