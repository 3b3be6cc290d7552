package job

import (
	"fmt"
	"io"

	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/symbol"
	"cornerslip/layout/typeset"
)

// A Calibration asks for the page by which a printer is measured.
type Calibration struct {
	// Paper is its size, by name; "" is the house's.
	Paper string
	// Corrected prints the page with the house's corrections, to see whether
	// they are right; otherwise it shows the printer as it is.
	Corrected bool
}

// Where the calibration page has its marks, from the upper left corner of the
// paper.
const (
	crossAt   = 20 * layout.MM // the crosses, from both edges
	crossLeg  = 5 * layout.MM
	rulesAt   = 40 * layout.MM // where both rules begin
	thinLine  = layout.Pt / 4
	marginTop = 15 // millimetres up to which the printer's margin is looked for
)

// reductions are what is taken off the bars of the calibration page, in
// thousandths of a millimetre.
var reductions = []layout.Length{0, 20, 40, 60, 80, 100}

// Calibrate writes the calibration page.
func (j *Job) Calibrate(c Calibration, write func(func(io.Writer) error) error) (Report, error) {
	rep := Report{Papers: 1}
	q := &Request{Paper: c.Paper, On: OnPaper}
	var err error
	if rep.PaperSize, err = j.paper(q); err != nil {
		return rep, err
	}
	if least := (layout.Size{W: 190 * layout.MM, H: 209 * layout.MM}); rep.PaperSize.W < least.W || rep.PaperSize.H < least.H {
		return rep, fmt.Errorf("the calibration page needs %s, %s has less; A4 or Letter would do", least, impose.NameOf(rep.PaperSize))
	}
	if j.turns(rep.PaperSize) { // measured as the printer sees the page
		rep.PaperSize = rep.PaperSize.Turned()
	}
	p := &calibration{j: j, page: layout.Page{Size: rep.PaperSize}}
	p.crosses()
	p.edges()
	p.rules()
	p.bars()
	p.words(c.Corrected)
	if p.err != nil {
		return rep, p.err
	}
	pages := func(yield func(layout.Page, error) bool) {
		if c.Corrected { // the lines nearest to the edge may leave the paper
			p.page = j.correction().Apply(p.page)
		}
		yield(p.page, nil)
	}
	if rep.Warnings, err = j.cannotTake(rep.PaperSize); err != nil {
		return rep, err
	}
	return rep, j.writePlain("Calibration page", pages, write)
}

// calibration is the page in the making.
type calibration struct {
	j    *Job
	page layout.Page
	err  error // the first
}

func (p *calibration) line(x0, y0, x1, y1, width layout.Length) {
	p.page.Marks = append(p.page.Marks, layout.Stroke{From: layout.Point{X: x0, Y: y0}, To: layout.Point{X: x1, Y: y1}, Width: width})
}

// note puts words with their upper left corner at the point given.
func (p *calibration) note(at layout.Point, n typeset.Note, lines ...string) layout.Size {
	var size layout.Size
	for _, l := range lines {
		b, err := p.j.setter.Note(n, said(l))
		if err != nil {
			if p.err == nil {
				p.err = err
			}
			return size
		}
		p.page.Boxes = append(p.page.Boxes, layout.Placed{At: layout.Point{X: at.X, Y: at.Y + size.H}, Box: b})
		size = layout.Size{W: max(size.W, b.Size.W), H: size.H + b.Size.H + n.Gap}
	}
	return size
}

// crosses mark points at a known distance from the paper's edges.
func (p *calibration) crosses() {
	w, h := p.page.Size.W, p.page.Size.H
	for _, at := range []layout.Point{{X: crossAt, Y: crossAt}, {X: w - crossAt, Y: crossAt}, {X: crossAt, Y: h - crossAt}, {X: w - crossAt, Y: h - crossAt}} {
		p.line(at.X-crossLeg, at.Y, at.X+crossLeg, at.Y, thinLine)
		p.line(at.X, at.Y-crossLeg, at.X, at.Y+crossLeg, thinLine)
	}
}

// edges draws short lines at each millimetre from every edge, in steps: the
// first one that is to be seen is the printer's margin.
func (p *calibration) edges() {
	const step, figureStep = 2 * layout.MM, 5
	w, h := p.page.Size.W, p.page.Size.H
	small := typeset.Note{Size: 5 * layout.Pt, Grey: footGrey}
	for k := range layout.Length(marginTop) {
		d := (k + 1) * layout.MM
		along := w/2 - marginTop*step/2 + k*step
		p.line(along, d, along+step, d, thinLine)
		p.line(along, h-d, along+step, h-d, thinLine)
		along = h/2 - marginTop*step/2 + k*step
		p.line(d, along, d, along+step, thinLine)
		p.line(w-d, along, w-d, along+step, thinLine)
		if (k+1)%figureStep == 0 {
			figure := fmt.Sprint(int(k + 1))
			p.note(layout.Point{X: w/2 - marginTop*step/2 + k*step, Y: d + layout.MM/4}, small, figure)
			p.note(layout.Point{X: d + layout.MM/2, Y: along}, small, figure)
		}
	}
}

// rules are 100 mm long across and down the page.
func (p *calibration) rules() {
	at := layout.Point{X: rulesAt, Y: rulesAt}
	p.page.Marks = append(p.page.Marks, impose.Rule(at, 100, false)...)
	p.page.Marks = append(p.page.Marks, impose.Rule(at, 100, true)...)
	small := typeset.Note{Grey: footGrey}
	p.note(layout.Point{X: at.X + 101*layout.MM, Y: at.Y - 3*layout.MM}, small, "100 mm across")
	p.note(layout.Point{X: at.X - 6*layout.MM, Y: at.Y + 101*layout.MM}, small, "100 mm down")
}

// Where the words stand, to the right of the rule that runs down.
const (
	wordsAt    = rulesAt + 8*layout.MM
	wordsWidth = 128 * layout.MM
)

// bars prints the same number with more and more taken off its bars.
func (p *calibration) bars() {
	o := p.j.symbol(&Request{})
	o.Symbology = symbol.Code128
	o.Height = 8 * layout.MM / o.Dot * o.Dot
	const number = "VDOURA-0001234"
	x, y := wordsAt, rulesAt+112*layout.MM
	p.note(layout.Point{X: x, Y: y - 6*layout.MM}, typeset.Note{Size: 8 * layout.Pt}, "Bars, with so much taken off each:")
	for i, r := range reductions {
		o.Reduction = r * layout.MM / 1000
		b, err := symbol.Make(number, o)
		if err != nil {
			o.Reduction = 0 // more than these bars can spare
			continue
		}
		at := layout.Point{X: x + layout.Length(i%2)*62*layout.MM, Y: y + layout.Length(i/2)*14*layout.MM}
		b.At = layout.Point{X: at.X.Snap(b.Dot), Y: at.Y.Snap(b.Dot)}
		p.page.Marks = append(p.page.Marks, b)
		p.note(layout.Point{X: at.X, Y: b.Bottom() + layout.MM/2}, typeset.Note{Grey: footGrey}, o.Reduction.Decimal(layout.MM, 3)+" mm")
	}
}

// words say how the page is read.
func (p *calibration) words(corrected bool) {
	at := layout.Point{X: wordsAt, Y: rulesAt + 7*layout.MM}
	at.Y += p.note(at, typeset.Note{Size: 13 * layout.Pt}, "Calibration page").H
	state := "Printed without the corrections of the house file: it shows the printer as it is."
	if corrected {
		state = "Printed with the corrections of the house file: every measure should be right."
	}
	at.Y += p.note(at, typeset.Note{Size: 8 * layout.Pt, Width: wordsWidth, Grey: footGrey},
		state+" "+impose.NameOf(p.page.Size)+", "+p.j.o.Date.Format("2006-01-02")+".").H + 2*layout.MM
	p.note(at, typeset.Note{Size: 17 * layout.Pt / 2, Width: wordsWidth, Gap: 3 * layout.Pt / 2},
		"Print at 100 %, on one side. Measure with a steel rule to a tenth of a millimetre and write what comes out under [printer] in the house file.",
		"1. Scale. Measure both rules, from the outer tick to the outer tick. scale_x_percent = 10000 divided by the millimetres across, scale_y_percent likewise down: 99.7 mm give 100.3.",
		"2. Offset. Measure from the left edge of the paper to the upright line of the upper left cross, and from the upper edge to its level line. Both should be 20 mm. offset_x_mm = 20 less the first, offset_y_mm = 20 less the second: 21.2 mm give -1.2.",
		"3. Margin. At the middle of each edge a flight of short lines stands 1, 2, 3 … mm from it. Find the line nearest to the edge that was printed whole; margin_mm is the largest of the four.",
		"4. Bars. Scan the rows below, or look at them with a lens: where bars and gaps of one width look equal, nothing has spread. Write that figure as reduction_mm under [bars]; 0 is right for most laser printers.",
		"Then print this page again with --corrected, and measure again.")
}
