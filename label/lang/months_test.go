package lang

import (
	"slices"
	"strings"
	"testing"
	"time"
)

func TestParseTag(t *testing.T) {
	for in, want := range map[string]Tag{
		"en": English, "en-GB": English, "pt-BR": Portuguese, "PT": Portuguese, "la": Latin,
		"zh-Hant": Chinese, "zh-TW": Chinese, "zh-HK": Chinese, " de ": German,
	} {
		if got, err := Parse(in); got != want || err != nil {
			t.Errorf("%q: %q (%v), want %q", in, got, err, want)
		}
	}
	for _, in := range []string{"", "it", "zh", "zh-Hans", "english", "xx", "p_t_"} {
		got, err := Parse(in)
		if err == nil {
			t.Errorf("%q: %q, want an error", in, got)
		} else if !strings.Contains(err.Error(), "en, pt, es, fr, de, la, zh-Hant") {
			t.Errorf("%q: %v does not say what is known", in, err)
		}
	}
}

// What is written must be read again, in every language, and English is Go's.
func TestMonths(t *testing.T) {
	for m := 1; m <= 12; m++ {
		if got := Month(English, m); got != time.Month(m).String() {
			t.Errorf("month %d is %q", m, got)
		}
		for _, l := range Tags() {
			for _, name := range []string{Month(l, m), MonthAlone(l, m), MonthShort(l, m), strings.ToUpper(Month(l, m))} {
				if l == Chinese { // figures, read by package date
					continue
				}
				if got := FindMonth(name); !slices.Equal(got, []int{m}) {
					t.Errorf("%s: %q is read as %v, want %d", l, name, got, m)
				}
			}
		}
		if got, ok := ParseRomanMonth(RomanMonth(m)); got != m || !ok {
			t.Errorf("%q is read as %d", RomanMonth(m), got)
		}
	}
	for _, m := range []int{-1, 0, 13} {
		if s := Month(Latin, m) + MonthAlone(Latin, m) + MonthShort(Latin, m) + RomanMonth(m); s != "" {
			t.Errorf("month %d is %q", m, s)
		}
	}
	if Month("xx", 3) != "March" || MonthAlone(Latin, 3) != "Martio" || Month(Latin, 3) != "Martii" {
		t.Error("unknown languages are English, Latin has cases")
	}
}

// TestNoTwoMonths: no word may mean two months, or the reading would hang on
// the order of the lists.
func TestNoTwoMonths(t *testing.T) {
	seen := map[string]int{}
	add := func(m int, words string) {
		for _, w := range strings.Fields(words) {
			if f := Fold(w); seen[f] != 0 && seen[f] != m {
				t.Errorf("%q is month %d and month %d", w, seen[f], m)
			} else {
				seen[f] = m
			}
		}
	}
	for i := range 12 {
		add(i+1, readMonths[i])
		add(i+1, readShort[i])
		for _, list := range []map[Tag]string{written, short} {
			for _, names := range list {
				add(i+1, strings.Fields(names)[i])
			}
		}
	}
}

// Months of languages that are only read: grammars and calendars, from
// memory; the short forms are of labels.
func TestFindMonth(t *testing.T) {
	for in, want := range map[string][]int{
		"enero": {1}, "Ene": {1}, "gennaio": {1}, "stycznia": {1}, "ledna": {1}, "января": {1}, "Ocak": {1}, "tammikuuta": {1},
		"févr.": {2}, "Şubat": {2}, "helmikuu": {2}, "únor": {2}, "lutego": {2},
		"marzo": {3}, "maart": {3}, "Mrz": {3}, "Mch.": {3}, "maaliskuuta": {3}, "března": {3},
		"kwietnia": {4}, "dubna": {4}, "huhtikuu": {4}, "avr": {4}, "abr.": {4},
		"maj": {5}, "mei": {5}, "maggio": {5}, "května": {5}, "Mayıs": {5}, "мая": {5},
		"juin": {6}, "giugno": {6}, "června": {6}, "Haziran": {6}, "czerwca": {6},
		"juil.": {7}, "luglio": {7}, "července": {7}, "Temmuz": {7},
		"août": {8}, "aout": {8}, "agost.": {8}, "sierpnia": {8}, "srpna": {8}, "Agustus": {8}, "Ogos": {8}, "Agu.": {8}, "Maret": {3}, "Julai": {7}, "Disember": {12},
		"set.": {9}, "settembre": {9}, "září": {9}, "Eylül": {9}, "7bris": {9},
		"out.": {10}, "Ott": {10}, "říjen": {10}, "października": {10}, "8bre": {10},
		"Nov": {11}, "listopada": {11}, "listopadu": {11}, "Kasım": {11},
		"déc.": {12}, "Dez": {12}, "prosince": {12}, "Aralık": {12}, "Xbris": {12},
		"jui": {6, 7}, "Ma": nil, "ju": nil, "": nil, "spring": nil, "X": nil, "marmalade": nil, "cer": {6, 7},
	} {
		if got := FindMonth(in); !slices.Equal(got, want) {
			t.Errorf("%q: %v, want %v", in, got, want)
		}
	}
}

func TestGuessMonth(t *testing.T) {
	for in, want := range map[string]int{
		"Febuary": 2, "Setpember": 9, "Agust": 8, "Octover": 10, "Novembr": 11, "Janaury": 1, "Juue": 6,
		"": 0, "Mai": 0, "flower": 0, "ember": 0,
	} {
		if got := GuessMonth(in); got != want {
			t.Errorf("%q: %d, want %d", in, got, want)
		}
	}
}

func TestWeekdaysAndSeasons(t *testing.T) {
	for in, want := range map[string]time.Weekday{"Friday": time.Friday, "Fri.": time.Friday, "sexta-feira": time.Friday, "Dienstag": time.Tuesday, "dimanche": time.Sunday, "środa": time.Wednesday} {
		if got, ok := FindWeekday(in); got != want || !ok {
			t.Errorf("%q: %v, want %v", in, got, want)
		}
	}
	for in, want := range map[string]int{"spring": 1, "verão": 2, "fall": 3, "Herbst": 3, "hiver": 4} {
		if got, ok := FindSeason(in); got != want || !ok {
			t.Errorf("%q: %d, want %d", in, got, want)
		}
	}
	if _, ok := FindWeekday("mar"); ok {
		t.Error("mar is a month before it is a Tuesday")
	}
}

func FuzzFindMonth(f *testing.F) {
	for _, s := range []string{"Setpember", "août", "1er", "7bris", "İ"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, m := range append(FindMonth(s), GuessMonth(s)) {
			if m < 0 || m > 12 {
				t.Fatalf("%q: month %d", s, m)
			}
		}
		FindWeekday(s)
		FindSeason(s)
		FindCompass(s, Polish)
		FindAxis(s)
	})
}
