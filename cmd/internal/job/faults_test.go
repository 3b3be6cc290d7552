package job

import (
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/layout"
	"cornerslip/layout/typeset"
)

// What a book designer circles on a page (common practice, no source; the rules
// on initials, numerals and last lines are those of The Chicago Manual of Style,
// from memory). Each is counted on every label of the example trip in its three
// houses and of 1,534 real records, and has to be at zero but for the lines
// named in known.
var faults = []struct {
	name string
	// find reports whether the break between two lines of a block, or the
	// line itself, has the fault.
	find func(l []typeset.Line, i int) bool
}{
	{"a last line of one word under 8 letters", func(l []typeset.Line, i int) bool {
		t := l[i].Text
		return l[i].Last && i > 0 && l[i-1].Block == l[i].Block && !strings.Contains(t, " ") && letters(t) < 8
	}},
	{"a line that ends in an initial", ends(`(^| )\p{Lu}\.$`)},
	{"a line that ends in a rank", ends(`(^| )(subsp|ssp|var|subvar|f|sect|subg|nothosubsp|cf|aff)\.$`)},
	{"a line that ends in a preposition before a numeral",
		parts(`(^| )(of|in|at|to|from|by|on|de|em|à|a|bei|auf|en|km|no\.|n\.º|c\.|ca\.)$`, `^[0-9]`)},
	{"a line that ends in an opening bracket", ends(`[(\[«“]$`)},
	{"a line that begins with closing punctuation", parts(`.`, `^[,;:.)\]»”]`)},
	{"a number parted from its unit", parts(`(^| )[0-9.,–-]+$`, `^(m|mm|cm|km|ha|°C|%|ft)\b`)},
	{"degrees parted from minutes", parts(`[0-9]°$`, `^[0-9]`)},
	{"a hyphen where a line is broken inside a name or number", ends(`[0-9]-$`)},
	{"two spaces", func(l []typeset.Line, i int) bool { return strings.Contains(l[i].Text, "  ") }},
}

// known are faults that stay, and why.
var known = map[string]string{
	// An author's initial that names a whole author: "Fabaceae L." could stand
	// at a line's end in any flora, and "L. Tree 7 m" is no name and initial.
	"a line that ends in an initial": `(^| )L\.$`,
}

// ends finds lines that end so although their paragraph goes on.
func ends(pattern string) func([]typeset.Line, int) bool { return parts(pattern, `^`) }

// parts finds a break between what matches before and what matches after.
func parts(before, after string) func([]typeset.Line, int) bool {
	b, a := regexp.MustCompile(before), regexp.MustCompile(after)
	return func(l []typeset.Line, i int) bool {
		return i+1 < len(l) && l[i].Block == l[i+1].Block && b.MatchString(l[i].Text) && a.MatchString(l[i+1].Text)
	}
}

func letters(s string) int {
	n := 0
	for _, r := range s {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

// sets are the tables and houses that faults are counted on.
func sets(t *testing.T) map[string][2]string {
	ex := filepath.Join(outside.Root(t), "examples")
	m := map[string][2]string{}
	for _, h := range []string{"house", "house-captions", "house-bilingual"} {
		m["trip, "+h] = [2]string{filepath.Join(ex, "trip.csv"), filepath.Join(ex, h+".toml")}
	}
	return m
}

// aLabel is a label's words and how they were set.
type aLabel struct {
	content *label.Content
	lines   []typeset.Line
	greedy  []typeset.Line
	boxes   []*layout.Box
}

// labelsOf returns every sheet and packet label of a table.
func labelsOf(t *testing.T, tableName, house string) []aLabel {
	t.Helper()
	j, err := Open(Options{House: house, Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	var all []aLabel
	for _, kind := range []label.Kind{label.Sheet, label.Packet} {
		q := &Request{Kind: kind}
		o, err := j.formOptions(q)
		if err != nil {
			t.Fatal(err)
		}
		tab, release, err := OpenTable(tableName, nil, nil, TableOptions{})
		if err != nil {
			t.Fatal(err)
		}
		defer release()
		e := check.New(j.checkOptions())
		for row, err := range tab.Rows() {
			if err != nil {
				t.Fatal(err)
			}
			r, _ := e.Row(row)
			contents := j.contents(q, &o, r)
			for i := range contents {
				c := &contents[i]
				m := j.measures(q)(c)
				l := aLabel{content: c}
				if l.boxes, _, err = j.setter.Set(c, m); err != nil {
					t.Fatal(err)
				}
				if l.lines, err = j.setter.Lines(c, m, false); err != nil {
					t.Fatal(err)
				}
				if l.greedy, err = j.setter.Lines(c, m, true); err != nil {
					t.Fatal(err)
				}
				all = append(all, l)
			}
		}
	}
	return all
}

func TestWhatADesignerCircles(t *testing.T) {
	t.Run("real", func(t *testing.T) {
		countFaults(t, labelsOf(t, outside.Shared(t, "real/taurus-plants.csv"), ""))
	})
	for name, s := range sets(t) {
		t.Run(name, func(t *testing.T) { countFaults(t, labelsOf(t, s[0], s[1])) })
	}
}

func countFaults(t *testing.T, all []aLabel) {
	if len(all) < 100 {
		t.Fatalf("only %d labels", len(all))
	}
	for _, f := range faults {
		ours, greedy, explained := 0, 0, 0
		for _, l := range all {
			for i := range l.greedy {
				if f.find(l.greedy, i) {
					greedy++
				}
			}
			for i := range l.lines {
				if !f.find(l.lines, i) {
					continue
				}
				if why := known[f.name]; why != "" && regexp.MustCompile(why).MatchString(l.lines[i].Text) || forced(l, i) {
					explained++
					continue
				}
				ours++
				t.Errorf("%s: %v, line %q", f.name, l.boxes[0].Ref, l.lines[i].Text)
			}
		}
		t.Logf("%-58s %d, explained %d, greedy %d", f.name, ours, explained, greedy)
	}
	var boxes []*layout.Box
	for _, l := range all {
		boxes = append(boxes, l.boxes...)
	}
	goodMarks(t, all)
	evenLeading(t, boxes)
	evenFoot(t, boxes)
	facesJoin(t, boxes)
	rag(t, all)
}

// goodMarks holds that where the program writes a mark itself it writes the
// right one: no straight quotes, no hyphen for a dash, no x for a cross.
func goodMarks(t *testing.T, all []aLabel) {
	bad := regexp.MustCompile(`["']|\d-\d| - |--|\d ?x ?\d|\.\.\.`)
	for _, l := range all {
		for _, b := range l.content.Blocks {
			for _, r := range slices.Concat(b.Runs, b.Right, b.Caption) {
				if r.Origin.Term == "" && bad.MatchString(r.Text) {
					t.Errorf("%v: the program itself writes %q", l.boxes[0].Ref, r.Text)
				}
			}
		}
	}
}

// forced reports whether the words leave no better breaking: the line before
// holds one word, or is filled to both edges and could spare none without
// holes between its words.
func forced(l aLabel, i int) bool {
	if !l.lines[i].Last || i == 0 || l.lines[i-1].Block != l.lines[i].Block {
		return false
	}
	before := l.lines[i-1]
	return !strings.Contains(before.Text, " ") || before.Justified
}

// rag compares how far the longest and the shortest inner line of a paragraph
// lie apart with a greedy breaking of the same words.
func rag(t *testing.T, all []aLabel) {
	ours, greedy := spreads(all, func(l aLabel) []typeset.Line { return l.lines }), spreads(all, func(l aLabel) []typeset.Line { return l.greedy })
	if len(ours) == 0 {
		return
	}
	mean := func(s []float64) (m float64) {
		for _, v := range s {
			m += v / float64(len(s))
		}
		return m
	}
	t.Logf("rag of %d paragraphs of three lines and more: mean spread %.1f mm, greedy %.1f mm", len(ours), mean(ours), mean(greedy))
}

func spreads(all []aLabel, lines func(aLabel) []typeset.Line) []float64 {
	var out []float64
	for _, l := range all {
		ls := lines(l)
		for i := 0; i < len(ls); {
			k := i
			for k < len(ls) && ls[k].Block == ls[i].Block {
				k++
			}
			if k-i >= 3 {
				inner := ls[i : k-1]
				free := func(a, b typeset.Line) int { return int((a.Measure - a.Width) - (b.Measure - b.Width)) }
				most, least := slices.MaxFunc(inner, free), slices.MinFunc(inner, free)
				out = append(out, ((most.Measure - most.Width) - (least.Measure - least.Width)).MM())
			}
			i = k
		}
	}
	return out
}

// leftLine is a line that begins at the label's left edge, wherever it stands.
type leftLine struct{ y, size layout.Length }

func leftLines(b *layout.Box) []leftLine {
	var out []leftLine
	for _, l := range layout.Lines(b.Marks) {
		if n := len(out); l[0].At.X < b.Size.W/4 && (n == 0 || out[n-1].y < l[0].At.Y) {
			out = append(out, leftLine{l[0].At.Y, l[0].Size})
		}
	}
	return out
}

// evenLeading holds that the distances of baselines in the body of a label
// take few values: one a size of type, and the white space between groups.
func evenLeading(t *testing.T, all []*layout.Box) {
	for _, box := range all {
		gaps := map[[2]layout.Length]map[layout.Length]bool{}
		lines := leftLines(box)
		for i := 1; i < len(lines); i++ {
			a, b := lines[i-1], lines[i]
			if a.size != b.size || b.y == a.y || b.y-a.y > b.size*14/10 {
				continue
			}
			k := [2]layout.Length{a.size, b.size}
			if gaps[k] == nil {
				gaps[k] = map[layout.Length]bool{}
			}
			gaps[k][b.y-a.y] = true
		}
		for k, g := range gaps {
			// Lines of a paragraph stand at one distance, groups at a second one
			// that is clearly wider; the small size stands in body and foot, which
			// are squeezed apart.
			d := slices.Sorted(maps.Keys(g))
			if k[0] > 8*layout.Pt && (len(d) > 2 || len(d) == 2 && d[1]-d[0] < 2*layout.Pt) {
				t.Errorf("%v: lines of %s pt stand at distances of %v", box.Ref, k[0].Decimal(layout.Pt, 2), d)
			}
		}
	}
}

// evenFoot holds that collector and number stand at one height on all labels
// of a kind and size, unless the foot has more lines than there is room kept
// for.
func evenFoot(t *testing.T, all []*layout.Box) {
	at := map[string]map[layout.Length]int{}
	for _, box := range all {
		if box.Ref.Label > 1 || box.Ref.Kind != "sheet" {
			continue
		}
		for _, m := range box.Marks {
			if text, ok := m.(layout.Text); ok && text.Style&layout.Bold != 0 && strings.HasPrefix(box.Ref.Key, strings.TrimSpace(text.S)) && linesBelow(box, text.At.Y) <= 2 {
				k := box.Size.String()
				if at[k] == nil {
					at[k] = map[layout.Length]int{}
				}
				at[k][text.At.Y]++
			}
		}
	}
	for size, ys := range at {
		total, most := 0, 0
		for _, n := range ys {
			total += n
			most = max(most, n)
		}
		t.Logf("foot of %s: %d of %d at one height", size, most, total)
		if total != most {
			t.Errorf("foot of %s: the collector stands at %d heights: %v", size, len(ys), ys)
		}
	}
}

// linesBelow counts the lines under y, bars not counted.
func linesBelow(b *layout.Box, y layout.Length) int {
	seen := map[layout.Length]bool{}
	for _, l := range layout.Lines(b.Marks) {
		if l[0].At.Y > y {
			seen[l[0].At.Y] = true
		}
	}
	return len(seen)
}

// facesJoin holds that where the face changes within a line nothing is lost or
// doubled: the next text begins where the pen is.
func facesJoin(t *testing.T, all []*layout.Box) {
	for _, box := range all {
		for _, l := range layout.Lines(box.Marks) {
			for i := 1; i < len(l); i++ {
				a, b := l[i-1].S, l[i].S
				if strings.HasSuffix(a, " ") && strings.HasPrefix(b, " ") {
					t.Errorf("%v: two spaces where the face changes between %q and %q", box.Ref, a, b)
				}
				ra, _ := utf8.DecodeLastRuneInString(a)
				rb, _ := utf8.DecodeRuneInString(b)
				if unicode.IsLetter(ra) && unicode.IsLetter(rb) && l[i-1].Style != l[i].Style {
					t.Errorf("%v: a space is lost where the face changes between %q and %q", box.Ref, a, b)
				}
			}
		}
	}
}
