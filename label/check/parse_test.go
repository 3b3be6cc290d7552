package check

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func TestParsePreparations(t *testing.T) {
	type p = Preparation
	for _, tt := range []struct {
		in      string
		want    []Preparation
		err     string
		suggest string
	}{
		{in: "", want: []p{{Sheet, "sheet", "", 1, 1, false}}},
		{in: "sheet", want: []p{{Sheet, "sheet", "", 1, 1, false}}},
		{in: "sheet | sheet | packet: capsules | box: cone",
			want: []p{{Sheet, "sheet", "", 1, 2, false}, {Sheet, "sheet", "", 2, 2, false}, {Packet, "packet", "capsules", 1, 1, false}, {Box, "box", "cone", 1, 1, false}}},
		{in: "2 sheets;packet:seeds,  loose flowers", want: []p{{Sheet, "sheets", "", 1, 2, false}, {Sheet, "sheets", "", 2, 2, false}, {Packet, "packet", "seeds, loose flowers", 1, 1, false}}},
		{in: "sheet x2", want: []p{{Sheet, "sheet", "", 1, 2, false}, {Sheet, "sheet", "", 2, 2, false}}},
		{in: "2 × sheet", want: []p{{Sheet, "sheet", "", 1, 2, false}, {Sheet, "sheet", "", 2, 2, false}}},
		{in: "2x sheet", want: []p{{Sheet, "sheet", "", 1, 2, false}, {Sheet, "sheet", "", 2, 2, false}}},
		{in: "sheets (2)", want: []p{{Sheet, "sheets", "", 1, 2, false}, {Sheet, "sheets", "", 2, 2, false}}},
		{in: "2 boxes: cones", want: []p{{Box, "boxes", "cones", 1, 2, false}, {Box, "boxes", "cones", 2, 2, false}}},
		{in: "box 2", want: []p{{Box, "box", "", 1, 2, false}, {Box, "box", "", 2, 2, false}}},
		{in: "packet: capsules; seeds | sheet;", want: []p{{Packet, "packet", "capsules; seeds", 1, 1, false}, {Sheet, "sheet", "", 1, 1, false}}},
		{in: "folha | pacote: cápsulas", want: []p{{Sheet, "folha", "", 1, 1, false}, {Packet, "pacote", "cápsulas", 1, 1, false}}},
		{in: "JAR: flowers in ethanol 70 %", want: []p{{Jar, "JAR", "flowers in ethanol 70 %", 1, 1, false}}},
		{in: "packet: thalli: on bark", want: []p{{Packet, "packet", "thalli: on bark", 1, 1, false}}},
		{in: "slide | other: silica-dried leaf", want: []p{{Other, "slide", "", 1, 2, false}, {Other, "other", "silica-dried leaf", 2, 2, false}}},
		{in: "sheet 1 of 2", want: []p{{Sheet, "sheet", "", 1, 2, true}}},
		{in: "Folha n.º 2/3 | packet: capsules", want: []p{{Sheet, "Folha", "", 2, 3, true}, {Packet, "packet", "capsules", 1, 1, false}}},
		{in: "bogen 2 von 2: Fruchtstand", want: []p{{Sheet, "bogen", "Fruchtstand", 2, 2, true}}},
		{in: "sheet 1 of 3 | sheet 2 of 3", want: []p{{Sheet, "sheet", "", 1, 3, true}, {Sheet, "sheet", "", 2, 3, true}}},
		{in: "sheet 1 of 2 | sheet 1 of 2", err: `sheet 1 of 2 stands twice: give each its own place`},
		{in: "sheet 1 of 2 | sheet 2 of 3", err: `one sheet is of 2 and another of 3: write how many there are in all`},
		{in: "sheet 1 of 2 | sheet", err: `one sheet says which of 2 it is and another does not: say it of each`},
		{in: "sheet 3 of 2", err: `"sheet 3 of 2" is no part: write "sheet 1 of 2", the first figure not above the second, which is at most 99`},
		{in: "shet 1 of 2", want: []p{{Sheet, "shet", "", 1, 2, true}}},
		{in: "sheet | pakcet: capsules", want: []p{{Sheet, "sheet", "", 1, 1, false}, {Packet, "pakcet", "capsules", 1, 1, false}}},
		{in: "skull", want: []p{{Other, "skull", "", 1, 1, false}}},
		{in: "sheet | | packet;", want: []p{{Sheet, "sheet", "", 1, 1, false}, {Packet, "packet", "", 1, 1, false}}},
		{in: "|", err: `no part is named: write "sheet", or leave the cell empty for one sheet`},
		{in: "packet: 2", err: `"packet: 2" has a number for its contents: put the count first and say what is inside`, suggest: "2 packets"},
		{in: ": capsules", err: `": capsules" does not say what it is: write "sheet", "packet: capsules", "box: cone" or "jar: flowers"`},
		{in: "2", err: `"2" does not say what it is: write "sheet", "packet: capsules", "box: cone" or "jar: flowers"`, suggest: "2 sheets"},
		{in: "0 sheets", err: `"0 sheets" has a count that is not from 1 to 99`},
		{in: "100 sheets", err: `"100 sheets" has a count that is not from 1 to 99`},
		{in: "99999999999999999999 sheets", err: `"99999999999999999999 sheets" has a count that is not from 1 to 99`},
		{in: "60 sheets | 60 sheets", err: "more than 99 parts for one specimen: check the count"},
	} {
		got, err := ParsePreparations(tt.in)
		msg, suggest := "", ""
		if err != nil {
			msg, suggest = err.Error(), err.(*PartError).Suggest
		}
		if d := cmp.Diff(tt.want, got); d != "" || msg != tt.err || suggest != tt.suggest {
			t.Errorf("%q: %q %q\n%s", tt.in, msg, suggest, d)
		}
	}
}

func FuzzPreparations(f *testing.F) {
	for _, s := range []string{"sheet | 2 packets: a; b", "sheet x2", "box2", "2×sheet (3)", "packet: 9", "x 2", "99 sheets|jar", "Tüte × 3 : ñ", "sheet 1 of 2 | Sheet n.º 2/2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if strings.TrimSpace(s) == "" {
			return // one sheet
		}
		parts, err := ParsePreparations(s)
		if (err == nil) == (len(parts) == 0) || len(parts) > MaxParts {
			t.Fatalf("%d parts, error %v", len(parts), err)
		}
		if err != nil {
			if pe := err.(*PartError); pe.Error() == "" || !strings.Contains(s, pe.Piece) {
				t.Fatalf("%+v", pe)
			}
			return
		}
		at := map[PreparationKind]int{}
		for _, p := range parts {
			if at[p.Kind]++; p.N != at[p.Kind] && !p.Elsewhere || p.N > p.Of || p.Word == "" || utf8.ValidString(s) && !utf8.ValidString(p.Contents) {
				t.Fatalf("%+v", p)
			}
			for _, w := range append(strings.Fields(p.Contents), strings.Fields(p.Word)...) {
				if !strings.Contains(s, strings.TrimSuffix(w, ":")) {
					t.Fatalf("the word %q is not in the text", w)
				}
			}
		}
		for _, p := range parts {
			if p.Of != at[p.Kind] && !p.Elsewhere || p.Of < at[p.Kind] {
				t.Fatalf("%+v of %d", p, at[p.Kind])
			}
		}
	})
}

func FuzzCopies(f *testing.F) {
	for _, s := range []string{"1", "99", "100", "0", "-1", "1.0", "01", "+1", "١", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		n, ok := parseCopies(s)
		if ok != (n >= 1 && n <= MaxCopies) {
			t.Fatalf("%q is %d, %v", s, n, ok)
		}
		if ok && s != "" && strings.Trim(s, "0123456789") != "" {
			t.Fatalf("%q is taken for %d", s, n)
		}
	})
}

func TestParseCollectors(t *testing.T) {
	for in, want := range map[string][]string{
		"I. Almeida":                          {"I. Almeida"},
		"I. Almeida | T. Brandão | J. Prates": {"I. Almeida", "T. Brandão", "J. Prates"},
		"I. Almeida; T. Brandão":              {"I. Almeida", "T. Brandão"},
		"I. Almeida & T. Brandão":             {"I. Almeida", "T. Brandão"},
		"I. Almeida, T. Brandão & J. Prates":  {"I. Almeida", "T. Brandão", "J. Prates"},
		"I. Almeida, T. Brandão, & J. Prates": {"I. Almeida", "T. Brandão", "J. Prates"},
		"I. Almeida, T. Brandão":              {"I. Almeida", "T. Brandão"},
		"Almeida&Brandão":                     {"Almeida", "Brandão"},
		"Almeida et Brandão":                  {"Almeida", "Brandão"},
		"Inês Almeida und Tiago Brandão":      {"Inês Almeida", "Tiago Brandão"},
		"Inês Almeida and Tiago Brandão":      {"Inês Almeida", "Tiago Brandão"},
		"I. Almeida e T. Brandão":             {"I. Almeida", "T. Brandão"},
		"I. Almeida e T.Brandão":              {"I. Almeida", "T.Brandão"},
		"I. Almeida y T. Brandão":             {"I. Almeida", "T. Brandão"},
		"I. Almeida with T. Brandão":          {"I. Almeida", "T. Brandão"},
		"I. Almeida; with T. Brandão":         {"I. Almeida", "T. Brandão"},
		"Almeida, I.":                         {"Almeida, I."},
		"Almeida, I. | Brandão, T.":           {"Almeida, I.", "Brandão, T."},
		"Almeida, I. & Brandão, T.":           {"Almeida, I.", "Brandão, T."},
		"Almeida, Inês M.":                    {"Almeida, Inês M."},
		"J. Ortega y Gasset":                  {"J. Ortega y Gasset"},
		"M. Costa e Silva":                    {"M. Costa e Silva"},
		"M. Costa e Silva | O. Bolòs i Riba":  {"M. Costa e Silva", "O. Bolòs i Riba"},
		"M. Costa e Silva e J. Prates":        {"M. Costa e Silva", "J. Prates"},
		"I. Almeida et al.":                   {"I. Almeida et al."},
		"I. Almeida & al.":                    {"I. Almeida & al."},
		"I. Almeida, T. Brandão et al.":       {"I. Almeida", "T. Brandão et al."},
		"I. Almeida | et al.":                 {"I. Almeida et al."},
		"I. Almeida and students":             {"I. Almeida and students"},
		"J. de la Peña y Ríos y A. M. Ruiz":   {"J. de la Peña y Ríos", "A. M. Ruiz"},
		"I. M. & T. Almeida":                  {"I. M. & T. Almeida"}, // a couple
		"I.M. and T. Almeida":                 {"I.M. and T. Almeida"},
		"I. e T. Almeida":                     {"I. e T. Almeida"},
		"I. & T. Almeida & J. Prates":         {"I. & T. Almeida", "J. Prates"},
		"I. & T. & M. Almeida":                {"I. & T. & M. Almeida"},
		"I., T. & M. Almeida":                 {"I., T. & M. Almeida"},
		"Inês & Tiago Almeida":                {"Inês & Tiago Almeida"},
		"Inês with Tiago Almeida":             {"Inês", "Tiago Almeida"},
		"Almeida & T. Brandão":                {"Almeida", "T. Brandão"},
		"IMA & TB":                            {"IMA", "TB"},
		"Xu, A. & Yu, J.":                     {"Xu, A.", "Yu, J."},
		"Xu A, Yu J":                          {"Xu A", "Yu J"},
		"Flora Valdoura Project":              {"Flora Valdoura Project"},
		"| I. Almeida |":                      {"I. Almeida"},
		"":                                    nil,
		"|":                                   nil,
		"and":                                 {"and"},
		"J.-P. Martin & É. Lefèvre":           {"J.-P. Martin", "É. Lefèvre"},
		"王五 | 李四":                             {"王五", "李四"},
	} {
		if d := cmp.Diff(want, ParseCollectors(in), cmpopts.EquateEmpty()); d != "" {
			t.Errorf("%q (-want +got)\n%s", in, d)
		}
	}
}

// No letter of a person's name may be lost.
func FuzzCollectors(f *testing.F) {
	for _, s := range []string{"I. Almeida, T. Brandão & J. Prates", "a e b", "A. B y C. D", "| et al.", "with", "A & & B", "A,,B & al.", "Silva, J., Costa, M.", "Silva J, Costa M/P. Ruiz", "王五，李四", `"Silva"`, "J. & M. Silva"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := ParseCollectors(s)
		seen := map[string]int{}
		for _, p := range got {
			if strings.TrimSpace(p) == "" {
				t.Fatalf("an empty person in %q", got)
			}
			for _, w := range words(p) {
				seen[w]++
			}
		}
		if n := len(s); n > 2 && s[0] == '"' && s[n-1] == '"' {
			s = s[1 : n-1] // quotes about the whole cell are none of a name
		}
		for _, w := range words(s) {
			if _, joins := joiners[w]; !joins && w != "c" && w != "w" {
				if seen[w]--; seen[w] < 0 {
					t.Fatalf("%q lost %q: %q", s, w, got)
				}
			}
		}
	})
}

func words(s string) []string {
	return strings.FieldsFunc(s, func(r rune) bool {
		return strings.ContainsRune(" \t\n\v\f\r\u0085\u00a0|;&,/+、；，", r) || r > 0x1fff && r < 0x3001 || r == 0x1680
	})
}
