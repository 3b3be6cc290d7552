package layout

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// word is a text with an advance of 5 pt a letter.
func word(x, y Length, s string) Text {
	t := Text{At: Point{x, y}, Face: "LiberationSerif", Size: 9 * Pt, S: s}
	for _, r := range s {
		t.Clusters = append(t.Clusters, Cluster{Bytes: len(string(r)), Adv: 5 * Pt})
	}
	return t
}

func TestWidth(t *testing.T) {
	w := word(0, 0, "São")
	w.Clusters[1].Adv -= Pt
	if got := w.Width(); got != 14*Pt {
		t.Errorf("got %v", got)
	}
	if got := (Text{}).Width(); got != 0 {
		t.Errorf("empty: %v", got)
	}
}

func TestLines(t *testing.T) {
	show := func(lines [][]Text) (s []string) {
		for _, l := range lines {
			var parts []string
			for _, t := range l {
				parts = append(parts, t.S)
			}
			s = append(s, strings.Join(parts, "|"))
		}
		return s
	}
	y1, y2 := 10*MM, 14*MM
	for _, c := range []struct {
		name  string
		marks []Mark
		want  []string
	}{
		{"nothing", nil, nil},
		{"no text", []Mark{Fill{}, Stroke{}}, nil},
		{"one", []Mark{word(MM, y1, "ab")}, []string{"ab"}},
		{"a change of face", []Mark{word(MM, y1, "ab"), word(MM+10*Pt, y1, "cd"), word(MM+20*Pt, y1, "e")}, []string{"ab|cd|e"}},
		{"other marks between", []Mark{word(MM, y1, "ab"), Fill{}, word(MM+10*Pt, y1, "cd")}, []string{"ab|cd"}},
		{"a gap", []Mark{word(MM, y1, "ab"), word(MM+10*Pt+1, y1, "cd")}, []string{"ab", "cd"}},
		{"another baseline", []Mark{word(MM, y1, "ab"), word(MM+10*Pt, y2, "cd")}, []string{"ab", "cd"}},
		{"back to the first", []Mark{word(MM, y1, "ab"), word(MM, y2, "cd"), word(MM+10*Pt, y1, "ef")}, []string{"ab", "cd", "ef"}},
		// A first text at the origin does not follow a text that is not there.
		{"at the origin", []Mark{word(0, 0, "ab")}, []string{"ab"}},
	} {
		if d := cmp.Diff(c.want, show(Lines(c.marks))); d != "" {
			t.Errorf("%s:\n%s", c.name, d)
		}
	}
}

func TestShifted(t *testing.T) {
	d := Point{3, 4}
	for _, c := range [][2]Mark{
		{word(1, 2, "a"), word(4, 6, "a")},
		{Fill{Rect: Rect{Point{1, 2}, Size{5, 6}}}, Fill{Rect: Rect{Point{4, 6}, Size{5, 6}}}},
		{Stroke{From: Point{1, 2}, To: Point{5, 6}, Width: 1}, Stroke{From: Point{4, 6}, To: Point{8, 10}, Width: 1}},
		{Bars{Rect: Rect{At: Point{1, 2}}, Rects: []Rect{{At: Point{9, 9}}}}, Bars{Rect: Rect{At: Point{4, 6}}, Rects: []Rect{{At: Point{9, 9}}}}},
	} {
		if d := cmp.Diff(c[1], c[0].Shifted(d)); d != "" {
			t.Error(d)
		}
	}
}

func TestRefString(t *testing.T) {
	for _, c := range []struct {
		ref  Ref
		want string
	}{
		{Ref{}, "a label without a record"},
		{Ref{File: "trip.csv", Line: 14, Row: 12, Kind: "sheet", Key: "I. Almeida 214", Label: 1, Of: 1}, "trip.csv:14: row 12, I. Almeida 214, sheet label"},
		{Ref{File: "trip.csv", Line: 14, Row: 12, Kind: "sheet", Key: "I. Almeida 214", Label: 2, Of: 2, Part: "Sheet 1 of 2"}, "trip.csv:14: row 12, I. Almeida 214, sheet label 2 of 2, Sheet 1 of 2"},
		{Ref{File: "trip.csv", Row: 12, Kind: "sheet", Part: "PINHEL", For: "PINHEL"}, "trip.csv: row 12, sheet label, PINHEL"},
		{Ref{Kind: "barcode", Key: "VDOURA 0004217", For: "PINHEL"}, "VDOURA 0004217, barcode label, for PINHEL"},
	} {
		if got := c.ref.String(); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}
