package typeset

import (
	"errors"
	"fmt"
	"slices"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/symbol"
)

// barsRow is a barcode with its number, at the foot of a label.
type barsRow struct {
	bars   layout.Bars
	height layout.Length // of bars and number
	number []line
	beside bool // the number stands to the right of the bars, not under them
	size   layout.Length
	s      *work
}

// barsRow makes the bars of a block: beside the number where both have room,
// otherwise above it.
func (s *work) barsRow(b *block, text, measure layout.Length) (*barsRow, error) {
	r := &barsRow{size: s.m.size(label.Symbol, text), s: s}
	var err error
	if b.left != nil {
		if r.number, err = s.single(b.left, r.size, measure); err != nil {
			return nil, err
		}
	}
	if b.src.Bars == nil {
		return nil, &Error{Text: label.String(b.src.Runs), Err: errors.New("a block for bars has none")}
	}
	o := footSymbol(s.m.Symbol)
	if b.src.Bars.Symbology != "" {
		o.Symbology = b.src.Bars.Symbology
	}
	// At its usual size first; smaller where that has no room.
	if r.bars, err = symbol.Make(b.src.Bars.Text, o); err != nil {
		return nil, s.barsError(b, err)
	}
	if len(r.number) == 1 && r.bars.W+r.bars.Quiet+barsGap+r.number[0].width <= measure {
		r.beside = true
		r.height = r.bars.H
		return r, nil
	}
	if r.bars.W > measure {
		o.MaxSize.W = measure + 2*r.bars.Quiet // the margins are clear
		if r.bars, err = symbol.Make(b.src.Bars.Text, o); err != nil {
			return nil, s.barsError(b, err)
		}
	}
	r.height = r.bars.H + layout.Length(len(r.number))*s.m.footLead(r.size)
	return r, nil
}

// footSymbol is how bars are made for the foot of a label: as low as a scanner's
// stroke allows, so that the words keep their room.
func footSymbol(o symbol.Options) symbol.Options {
	if o.Height == 0 {
		o.Height = 7 * layout.MM
	}
	return o
}

// FootBars returns the height that the foot of a label needs for the bars of a
// number, for Measures.FootBars; for linear bars if that number has none.
func FootBars(o symbol.Options, number string) layout.Length {
	bars, err := symbol.Make(number, footSymbol(o))
	if err != nil {
		return 7*layout.MM + barsAbove
	}
	return bars.H + barsAbove
}

// barsGap parts bars and number, beyond the quiet zone.
const barsGap = 1 * layout.MM

func (s *work) barsError(b *block, err error) error {
	e := &Error{Text: b.src.Bars.Text, Err: err}
	if len(b.src.Runs) > 0 {
		e.Origin = b.src.Runs[0].Origin
	}
	return e
}

// single breaks w to the measure.
func (s *work) single(w *words, size, measure layout.Length) ([]line, error) {
	st, err := s.at(w, size, measure)
	if err != nil {
		return nil, err
	}
	return s.linesOf(st, s.fill(st, measure, measure, 0), measure, measure), nil
}

func (r *barsRow) draw(p *pen, at layout.Point) {
	b := r.bars
	b.At = at
	p.bars = append(p.bars, b)
	if r.beside {
		p.line(&r.number[0], layout.Point{X: at.X + b.W + b.Quiet + barsGap, Y: at.Y + b.H - r.s.descent(r.size)/2})
		return
	}
	y := at.Y + b.H
	for k := range r.number {
		y += p.s.m.footLead(r.size)
		p.line(&r.number[k], layout.Point{X: at.X, Y: y - r.s.descent(r.size)})
	}
}

// setBarcode sets a barcode label: the institution above, the bars as high as
// there is room, the number in figures under them, all centred. A square
// symbol stands at the left with the words beside it.
func (s *work) setBarcode(c *label.Content, blocks []block) ([]*layout.Box, Report, error) {
	var above []*block
	var symbolBlock *block
	for i := range blocks {
		if b := &blocks[i]; b.src.Role == label.Symbol {
			symbolBlock = b
		} else {
			above = append(above, b)
		}
	}
	if symbolBlock == nil || symbolBlock.src.Bars == nil {
		return nil, Report{}, &Error{Origin: c.Origin, Text: label.String(c.Key), Err: errors.New("a barcode label needs a number")}
	}
	size := layout.Size{W: s.m.Width, H: s.m.Heights[0]}
	p := s.newPen()
	o := s.m.Symbol
	if symbolBlock.src.Bars.Symbology != "" {
		o.Symbology = symbolBlock.src.Bars.Symbology
	}
	var err error
	if o.Symbology == symbol.DataMatrix || o.Symbology == symbol.QR {
		err = s.squareBarcode(p, above, symbolBlock, o, size)
	} else {
		err = s.linearBarcode(p, above, symbolBlock, o, size)
	}
	if err != nil {
		return nil, Report{}, err
	}
	box := &layout.Box{Size: size, Marks: p.marks(0), Ref: ref(c, 1, 1)}
	return []*layout.Box{box}, Report{Text: s.m.Text, Height: size.H, Labels: 1}, nil
}

func (s *work) linearBarcode(p *pen, above []*block, sym *block, o symbol.Options, size layout.Size) error {
	measure := size.W - s.m.Left - s.m.Right
	center := func(lines []line, y *layout.Length, lead layout.Length) {
		for k := range lines {
			if k > 0 {
				*y += lead
			}
			p.line(&lines[k], layout.Point{X: s.m.Left + (measure-lines[k].width)/2, Y: *y})
		}
	}
	y := s.m.Top
	for _, b := range above {
		sz := s.m.size(b.src.Role, s.m.Text)
		lines, err := s.single(b.left, sz, measure)
		if err == nil && len(lines) > 1 {
			lines, err = s.plain(b.src.Runs, sz, measure)
		}
		if err != nil {
			return err
		}
		y += s.faces.Metrics(0, sz).CapHeight
		center(lines, &y, s.m.lead(sz, 1000))
		y += captionGap
	}
	// The figures are set without descenders: they stand on the lower margin.
	bottom := size.H - s.m.Bottom
	if sym.left != nil {
		lines, err := s.single(sym.left, s.m.Text, measure)
		if err != nil {
			return err
		}
		base := bottom - s.m.lead(s.m.Text, 1000)*layout.Length(len(lines)-1)
		first := base
		center(lines, &base, s.m.lead(s.m.Text, 1000))
		bottom = first - s.faces.Metrics(0, s.m.Text).CapHeight - captionGap
	}
	// The quiet zones may reach into the margins, which are empty.
	o.MaxSize = layout.Size{W: size.W}
	if o.Height == 0 {
		o.Height = dots(bottom-y, o)
	}
	bars, err := symbol.Make(sym.src.Bars.Text, o)
	if err != nil {
		return s.barsError(sym, err)
	}
	// The widest bars whose quiet zones fit the label may leave no margin.
	for narrow := o; o.Module == 0 && bars.W > measure && bars.Module-bars.Dot >= leastModule; {
		narrow.Module = int(bars.Module/bars.Dot) - 1
		b, err := symbol.Make(sym.src.Bars.Text, narrow)
		if err != nil {
			break
		}
		bars = b
	}
	if need := max(5*layout.MM, bars.W.MulDiv(15, 100)); bars.H < need || bars.H > bottom-y || bars.W > measure {
		grow := layout.Size{W: max(size.W, bars.W+s.m.Left+s.m.Right), H: size.H + max(0, need-(bottom-y))}
		return s.barsError(sym, fmt.Errorf("the bars need %s beside words and margins; a label of %s would do",
			layout.Size{W: bars.W, H: max(need, bars.H)}, grow))
	}
	bars.At = layout.Point{X: (size.W - bars.W) / 2, Y: y + (bottom-y-bars.H)/2}
	p.bars = append(p.bars, bars)
	return nil
}

// leastModule is the narrowest bar that the program chooses by itself.
const leastModule = 19 * layout.MM / 100

// plain sets runs without capitals, which takes less room.
func (s *work) plain(runs []label.Run, size, measure layout.Length) ([]line, error) {
	runs = slices.Clone(runs)
	for i := range runs {
		runs[i].Style &^= label.Capitals
	}
	w, err := s.prepare(runs)
	if err != nil {
		return nil, err
	}
	return s.single(w, size, measure)
}

// captionGap parts the bars from the words above and below.
const captionGap = 9 * layout.Pt / 4

func (s *work) squareBarcode(p *pen, above []*block, sym *block, o symbol.Options, size layout.Size) error {
	o.MaxSize = layout.Size{W: size.W / 2, H: size.H}
	bars, err := symbol.Make(sym.src.Bars.Text, o)
	for err == nil && bars.H > size.H-s.m.Top-s.m.Bottom && bars.Module > 2*bars.Dot {
		o.Module = int(bars.Module/bars.Dot) - 1
		bars, err = symbol.Make(sym.src.Bars.Text, o)
	}
	if err != nil {
		return s.barsError(sym, err)
	}
	if bars.H > size.H-s.m.Top-s.m.Bottom {
		return s.barsError(sym, fmt.Errorf("the symbol is %s high; a label %s high would do", bars.H, bars.H+s.m.Top+s.m.Bottom))
	}
	bars.At = layout.Point{X: s.m.Left, Y: (size.H - bars.H) / 2}
	p.bars = append(p.bars, bars)
	x := s.m.Left + bars.W + bars.Quiet + 2*layout.MM
	var lines []line
	var leads []layout.Length
	for _, b := range append(above, sym) {
		sz := s.m.size(b.src.Role, s.m.Text)
		if b == sym {
			sz = s.m.Text
		}
		if b.left == nil {
			continue
		}
		ls, err := s.single(b.left, sz, size.W-s.m.Right-x)
		if err != nil {
			return err
		}
		for _, l := range ls {
			lines = append(lines, l)
			leads = append(leads, s.m.lead(sz, 0))
		}
	}
	var height layout.Length
	for _, l := range leads {
		height += l
	}
	if room := size.H - s.m.Top - s.m.Bottom; height > room {
		return s.barsError(sym, fmt.Errorf("the words beside the symbol need a height of %s, there is %s", height, room))
	}
	y := (size.H-height)/2 - s.descent(s.m.Text)/2
	for k := range lines {
		y += leads[k]
		p.line(&lines[k], layout.Point{X: x, Y: y})
	}
	return nil
}

// dots rounds l down to whole dots of the printer.
func dots(l layout.Length, o symbol.Options) layout.Length {
	dot := o.Dot
	if dot == 0 {
		dot = layout.Dot300
	}
	return l / dot * dot
}
