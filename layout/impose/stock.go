// Package impose puts set labels on paper: many on one sheet to be cut apart,
// one on its mount, or one in each place of a sheet of stickers. It reads the
// sizes of boxes, never their words.
package impose

import (
	"fmt"
	"strconv"
	"strings"

	"cornerslip/layout"
)

// A Paper is a size that printers take, upright.
type Paper struct {
	Name string
	Size layout.Size
}

// Papers returns the sizes that have a name. The A series is that of ISO 216;
// Letter, Legal and Tabloid are ANSI/ASME Y14.1 and American practice, in
// inches.
func Papers() []Paper {
	mm := func(w, h layout.Length) layout.Size { return layout.Size{W: w * layout.MM, H: h * layout.MM} }
	inch := func(w, h layout.Length) layout.Size {
		return layout.Size{W: w * layout.Inch / 2, H: h * layout.Inch / 2} // given in half inches
	}
	return []Paper{
		{"A2", mm(420, 594)},
		{"A3", mm(297, 420)},
		{"A4", mm(210, 297)},
		{"A5", mm(148, 210)},
		{"A6", mm(105, 148)},
		{"A7", mm(74, 105)},
		{"Letter", inch(17, 22)},
		{"Legal", inch(17, 28)},
		{"Tabloid", inch(22, 34)},
	}
}

// Mounts returns the mounting sheets that herbaria use, A3 first: sizes read in
// handbooks and guidelines of the houses or countries named, the one with
// "mem" from memory.
func Mounts() []Mounting {
	mm := func(w, h layout.Length) layout.Size { return layout.Size{W: w * layout.MM, H: h * layout.MM} }
	inch := func(w, h layout.Length) layout.Size { // in half inches
		return layout.Size{W: w * layout.Inch / 2, H: h * layout.Inch / 2}
	}
	return []Mounting{
		{"A3", mm(297, 420), "ISO 216"},
		{"11.5x16.5in", inch(23, 33), "USA"},
		{"11.5x16in", inch(23, 32), "USA, University of Vermont"},
		{"10.5x16.5in", inch(21, 33), "Kew (mem)"},
		{"290x420", mm(290, 420), "Laval"},
		{"280x430", mm(280, 430), "Laval, courses"},
		{"280x450", mm(280, 450), "France"},
		{"300x450", mm(300, 450), "India"},
		{"300x400", mm(300, 400), "Florida"},
	}
}

// A Mounting is a size of mounting sheets. ParsePaper reads its name.
type Mounting struct {
	Name  string
	Size  layout.Size
	Where string
}

// The smallest and largest paper taken: below the one nothing could be held,
// above the other no mounting sheet or printer goes.
const (
	leastPaper = 10 * layout.MM
	mostPaper  = 2000 * layout.MM
)

// ParsePaper reads a paper's name in any case, or a size in millimetres or in inches, width first: "A4", "letter", "297x420", "292.1 × 419.1 mm",
// "11.5x16.5in". "landscape" after a name lays the paper on its side.
func ParsePaper(text string) (layout.Size, error) {
	t := strings.ToLower(strings.TrimSpace(text))
	name, turned := strings.CutSuffix(t, " landscape")
	for _, p := range Papers() {
		if strings.ToLower(p.Name) == strings.TrimSpace(name) {
			if turned {
				return p.Size.Turned(), nil
			}
			return p.Size, nil
		}
	}
	t = strings.ReplaceAll(t, "×", "x")
	unit, unitName := layout.MM, "millimetres"
	for _, in := range []string{"inches", "inch", "in", "\"", "″"} {
		if u, ok := strings.CutSuffix(t, in); ok {
			t, unit, unitName = strings.ReplaceAll(u, in, ""), layout.Inch, "inches"
			break
		}
	}
	w, h, ok := strings.Cut(strings.ReplaceAll(t, "mm", ""), "x")
	if !ok {
		var names []string
		for _, p := range Papers() {
			names = append(names, p.Name)
		}
		return layout.Size{}, fmt.Errorf("no paper is called %q; there are %s, or give width × height in millimetres, as in 297x420", text, strings.Join(names, ", "))
	}
	var s layout.Size
	for _, side := range []struct {
		text string
		to   *layout.Length
	}{{w, &s.W}, {h, &s.H}} {
		side.text = strings.TrimSpace(side.text)
		f, err := strconv.ParseFloat(strings.Replace(side.text, ",", ".", 1), 64)
		if err != nil {
			return layout.Size{}, fmt.Errorf("paper size %q: %q is no number of %s", text, side.text, unitName)
		}
		if unit == layout.Inch {
			f *= 25.4
		}
		if f < leastPaper.MM() || f > mostPaper.MM() || f != f {
			return layout.Size{}, fmt.Errorf("paper size %q: each side must be from %s to %s", text, leastPaper, mostPaper)
		}
		*side.to = layout.Millimetres(f)
	}
	return s, nil
}

// NameOf returns a size's name, or the size.
func NameOf(s layout.Size) string {
	for _, p := range Papers() {
		switch s {
		case p.Size:
			return p.Name
		case p.Size.Turned():
			return p.Name + " landscape"
		}
	}
	return s.String()
}
