package job

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/svg"
	"cornerslip/layout/typeset"
)

// A drawing is the picture of examples/folding.md in the making. Its panels show
// an A5 packet at three tenths of its size.
type drawing struct {
	t    *testing.T
	j    *Job
	page layout.Page
}

func small(l layout.Length) layout.Length { return l * 3 / 10 }

const (
	paperLine = layout.Pt / 2
	hidden    = layout.Grey(170)
)

func (d *drawing) rect(x, y, w, h layout.Length, grey layout.Grey, dash []layout.Length) {
	for _, l := range [][4]layout.Length{{x, y, x + w, y}, {x + w, y, x + w, y + h}, {x + w, y + h, x, y + h}, {x, y + h, x, y}} {
		d.page.Marks = append(d.page.Marks, layout.Stroke{
			From: layout.Point{X: l[0], Y: l[1]}, To: layout.Point{X: l[2], Y: l[3]}, Width: paperLine, Grey: grey, Dash: dash,
		})
	}
}

// fold draws a fold line in the way of a blank.
func (d *drawing) fold(style impose.LineStyle, x0, y0, x1, y1 layout.Length) {
	s := style.Sample(layout.Point{}, 0).(layout.Stroke)
	s.From, s.To = layout.Point{X: x0, Y: y0}, layout.Point{X: x1, Y: y1}
	d.page.Marks = append(d.page.Marks, s)
}

// words puts words with the middle of their box at the point given.
func (d *drawing) words(x, y layout.Length, turn int, n typeset.Note, lines ...string) {
	n.Centred = true
	var paragraphs [][]label.Run
	for _, l := range lines {
		paragraphs = append(paragraphs, said(l))
	}
	b, err := d.j.setter.Note(n, paragraphs...)
	if err != nil {
		d.t.Fatal(err)
	}
	d.page.Boxes = append(d.page.Boxes, layout.Placed{At: layout.Point{X: x - b.Size.W/2, Y: y - b.Size.H/2}, Box: b, Turn: turn})
}

// TestFoldingPicture holds the picture of examples/folding.md against what the
// program folds; UPDATE=1 draws it anew.
func TestFoldingPicture(t *testing.T) {
	p := impose.Packet{Blank: layout.Size{W: 148 * layout.MM, H: 210 * layout.MM}, Flap: layout.Inch}
	face, room := p.Face(), p.Room()
	w, h := small(p.Blank.W), small(p.Blank.H)
	flap, top, bottom := small(p.Flap), small(room.H), small(face.H)
	d := &drawing{t: t, j: opened(t), page: layout.Page{Size: layout.Size{W: 208 * layout.MM, H: 84 * layout.MM}}}
	step := typeset.Note{Size: 17 * layout.Pt / 2}
	text := typeset.Note{Size: 6 * layout.Pt}
	const gap, high = 12 * layout.MM, 6 * layout.MM
	caption := high + h + 8*layout.MM

	// 1: the blank, cut out, as it was printed.
	x, y := 5*layout.MM, high
	d.rect(x, y, w, h, 0, nil)
	d.fold(impose.FoldAway, x, y+top, x+w, y+top)
	d.fold(impose.FoldAway, x, y+h-bottom, x+w, y+h-bottom)
	d.fold(impose.FoldTowards, x+flap, y, x+flap, y+h)
	d.fold(impose.FoldTowards, x+w-flap, y, x+w-flap, y+h)
	d.words(x+w/2, y+top/2, 2, text, "I. Almeida 214", "capsules")
	d.words(x+w/2, caption, 0, step, "1. Cut along the", "solid lines")

	// 2: the lower part behind.
	x += w + gap
	d.rect(x, y, w, top+bottom, 0, nil)
	d.rect(x+layout.MM, y+top+layout.MM, w-2*layout.MM, bottom-2*layout.MM, hidden, nil)
	d.fold(impose.FoldAway, x, y+top, x+w, y+top)
	d.fold(impose.FoldTowards, x+flap, y, x+flap, y+top+bottom)
	d.fold(impose.FoldTowards, x+w-flap, y, x+w-flap, y+top+bottom)
	d.words(x+w/2, y+top/2, 2, text, "I. Almeida 214", "capsules")
	d.words(x+w/2, caption, 0, step, "2. Fold the lower", "part back, behind")

	// 3: the upper part behind it.
	x += w + gap
	d.rect(x, y+top, w, bottom, 0, nil)
	d.rect(x+layout.MM, y+top+layout.MM, w-2*layout.MM, top-2*layout.MM, hidden, nil)
	d.fold(impose.FoldTowards, x+flap, y+top, x+flap, y+top+bottom)
	d.fold(impose.FoldTowards, x+w-flap, y+top, x+w-flap, y+top+bottom)
	d.words(x+w/2, caption, 0, step, "3. Fold the upper", "part back over it")

	// 4: the sides to the front, turned over.
	x += w + gap
	front := small(face.W)
	d.rect(x, y+top, front, bottom, 0, nil)
	d.fold(impose.CutLine, x, y+top+top, x+front, y+top+top) // the flap's edge
	d.words(x+front/2, y+top+top/2, 0, text, "I. Almeida 214", "capsules")
	d.words(x+front/2, caption, 0, step, "4. Fold both sides", "forward, turn it over")

	var got bytes.Buffer
	if err := svg.Write(&got, d.page, d.j.fonts, svg.Options{Fonts: svg.Outlines}); err != nil {
		t.Fatal(err)
	}
	if got.Len() > 100_000 {
		t.Errorf("a picture of %d bytes", got.Len())
	}
	file := filepath.Join(outside.Root(t), "examples", "pictures", "folding.svg")
	if os.Getenv("UPDATE") == "1" {
		if err := os.WriteFile(file, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got.Bytes(), want) {
		t.Error("examples/pictures/folding.svg shows another packet than the program folds; UPDATE=1 draws it anew")
	}
}

// The sizes that examples/folding.md states are those that the program folds.
func TestFoldingTable(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(outside.Root(t), "examples", "folding.md"))
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(src)) {
		cells := strings.Split(line, "|")
		if len(cells) < 5 {
			continue
		}
		size, err := impose.ParseBlank(strings.Trim(cells[1], " `"))
		if err != nil || strings.TrimSpace(cells[2]) == "as named" {
			continue
		}
		rows++
		for i, s := range []layout.Size{size, impose.Packet{Blank: size}.Face()} {
			if got := strings.TrimSpace(cells[2+i]) + " mm"; got != rounded(s) {
				t.Errorf("%s: %s, want %s", cells[1], got, rounded(s))
			}
		}
	}
	if rows != len(impose.Blanks()) {
		t.Errorf("%d of %d blanks are in the table", rows, len(impose.Blanks()))
	}
}
