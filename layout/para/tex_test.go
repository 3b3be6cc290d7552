package para

import (
	"bufio"
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/layout"
)

// TestTeX holds justified setting of long paragraphs against TeX, whose line
// breaking is the one that Knuth and Plass describe. TeX is asked for as few
// lines as can be (looseness), and its rules that ours does not have are
// switched off: hyphens, and contrast between neighbouring lines.
func TestTeX(t *testing.T) {
	tex := outside.Program(t, "tex")
	r := rand.New(rand.NewPCG(82, 6))
	var paras [][]Item
	var measures []layout.Length
	var in bytes.Buffer
	in.WriteString(`\pretolerance-1 \tolerance10000 \linepenalty1 \adjdemerits0 \doublehyphendemerits0 \finalhyphendemerits0
\hbadness10000 \hfuzz\maxdimen \vbadness10000 \vfuzz\maxdimen \parindent0pt \lineskiplimit-\maxdimen
\showboxdepth2 \showboxbreadth1000000 \tracingonline0
`)
	for range 100 {
		items := make([]Item, 60+r.IntN(140))
		for i := range items {
			space := layout.Length(3000 + r.IntN(500))
			items[i] = Item{Width: layout.Length(8000 + r.IntN(50_000)), Space: space, Stretch: space * 2 / 3, Shrink: space / 3}
			if r.IntN(10) == 0 {
				items[i].Break = Forbidden
			}
		}
		measure := layout.Length(500_000 + r.IntN(500_000))
		paras, measures = append(paras, items), append(measures, measure)
		fmt.Fprintf(&in, "\\setbox0\\vbox{\\hsize%dsp \\looseness-9 \\noindent\n", measure)
		for i, it := range items {
			fmt.Fprintf(&in, "\\hbox to%dsp{}", it.Width)
			if i == len(items)-1 {
				break
			}
			if it.Break == Forbidden {
				in.WriteString(`\penalty10000`)
			}
			fmt.Fprintf(&in, "\\hskip%dsp plus%dsp minus%dsp\n", it.Space, it.Stretch, it.Shrink)
		}
		in.WriteString("\\par}\\showbox0\n")
	}
	in.WriteString("\\end\n")
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "p.tex"), in.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(tex, "-interaction=batchmode", "p.tex")
	cmd.Dir = dir
	_ = cmd.Run() // it calls a shown box an error
	log, err := os.ReadFile(filepath.Join(dir, "p.log"))
	if err != nil {
		t.Fatal(err)
	}
	theirs := shownBreaks(log)
	if len(theirs) != len(paras) {
		t.Fatalf("TeX broke %d paragraphs of %d", len(theirs), len(paras))
	}
	equal, lines := 0, 0
	for i, items := range paras {
		o := Options{Rest: measures[i], Justify: true}
		got := Break(items, o)
		lines += len(got.Breaks)
		if slices.Equal(got.Breaks, theirs[i]) {
			equal++
			continue
		}
		// TeX rounds badness in its own way, which may be off by one in a line.
		c, ok := price(items, theirs[i], o)
		if !ok || c.lines != len(got.Breaks) || c.demerits.Int64() < got.Demerits || c.demerits.Int64() > got.Demerits+8*int64(c.lines) {
			t.Errorf("paragraph %d: TeX breaks at %v (%d lines, %v), we at %v (%d)", i, theirs[i], c.lines, c.demerits, got.Breaks, got.Demerits)
		}
	}
	t.Logf("%d of %d paragraphs as TeX, %d lines", equal, len(paras), lines)
	if equal < len(paras)*95/100 {
		t.Errorf("only %d of %d paragraphs are broken as TeX breaks them", equal, len(paras))
	}
}

// shownBreaks reads the boxes that \showbox wrote: a box with one dot is a
// line, one with two dots an item in it.
func shownBreaks(log []byte) [][]int {
	var all [][]int
	item := -1
	sc := bufio.NewScanner(bytes.NewReader(log))
	for sc.Scan() {
		switch s := sc.Text(); {
		case strings.HasPrefix(s, `\vbox(`):
			all = append(all, nil)
			item = -1
		case strings.HasPrefix(s, `.\hbox(`) && len(all) > 0:
			if item >= 0 {
				all[len(all)-1] = append(all[len(all)-1], item)
			}
		case strings.HasPrefix(s, `..\hbox(`):
			item++
		case strings.HasPrefix(s, "! OK."):
			if n := len(all); n > 0 {
				all[n-1] = append(all[n-1], item)
			}
		}
	}
	return all
}
