package typeset

import (
	"errors"
	"fmt"

	"cornerslip/label"
	"cornerslip/layout"
)

// A Column is one of a list's.
type Column struct {
	Head string
	// Width is what the column takes of the page; zero shares what the others
	// leave, by Share.
	Width layout.Length
	Share int // zero counts as 1
	// Right sets figures to the right edge of the column.
	Right bool
}

// A ListSheet says how the pages of a list look. Zero values are those of A4 in
// a binder.
type ListSheet struct {
	Paper layout.Size
	// Left, Right, Top and Bottom stay free; the page's number goes into the
	// lower one. Zero is 20 mm at the left, where the holes are, and 15 mm
	// elsewhere.
	Left, Right, Top, Bottom layout.Length
	Size                     layout.Length // of the type; zero is 8.5 pt
	// Title and Under head the first page.
	Title, Under []label.Run
	Columns      []Column
}

// A List sets rows into pages. It is used by one goroutine.
type List struct {
	s      *Setter
	o      ListSheet
	m      Measures
	widths []layout.Length
	emit   func(*layout.Box) error
	page   *layout.Box
	y      layout.Length // where the next row begins
	rows   int           // of the page
	// The last row waits, so that what stands below the list is not alone on a
	// page.
	last   []layout.Mark
	height layout.Length // of it; 0 if there is none
}

const (
	listSize  = 17 * layout.Pt / 2
	titleSize = 13 * layout.Pt
	columnGap = 3 * layout.MM
	rowGap    = 3 * layout.Pt / 2 // above and below the words of a row
	headRoom  = 15 * layout.MM    // what heading row and a total take
	totalGap  = 3 * layout.Pt     // above what stands below the list
	rowRule   = layout.Pt / 4
	rowGrey   = layout.Grey(200)
	// leastColumn is the narrowest column that words can be broken to.
	leastColumn = 6 * layout.MM
)

// NewList returns a list whose pages go to emit as they are filled, as boxes of
// the paper's size.
func (s *Setter) NewList(o ListSheet, emit func(*layout.Box) error) (*List, error) {
	def := func(l *layout.Length, v layout.Length) {
		if *l == 0 {
			*l = v
		}
	}
	if o.Paper == (layout.Size{}) {
		o.Paper = layout.Size{W: 210 * layout.MM, H: 297 * layout.MM}
	}
	def(&o.Left, 20*layout.MM)
	def(&o.Right, 15*layout.MM)
	def(&o.Top, 15*layout.MM)
	def(&o.Bottom, 15*layout.MM)
	def(&o.Size, listSize)
	l := &List{s: s, o: o, m: plainMeasures(o.Size), emit: emit}
	var err error
	if l.widths, err = o.widths(); err != nil {
		return nil, err
	}
	l.newPage()
	if err := l.heading(); err != nil {
		return nil, err
	}
	return l, l.head()
}

// widths shares the width of the page among the columns.
func (o *ListSheet) widths() ([]layout.Length, error) {
	if len(o.Columns) == 0 {
		return nil, errors.New("a list needs a column")
	}
	room := o.Paper.W - o.Left - o.Right - columnGap*layout.Length(len(o.Columns)-1)
	shares := 0
	for _, c := range o.Columns {
		if c.Width > 0 {
			room -= c.Width
		} else {
			shares += max(1, c.Share)
		}
	}
	out := make([]layout.Length, len(o.Columns))
	for i, c := range o.Columns {
		if out[i] = c.Width; c.Width == 0 {
			out[i] = room.MulDiv(int64(max(1, c.Share)), int64(shares))
		}
		if out[i] < leastColumn || room < 0 {
			return nil, fmt.Errorf("a page of %s is too narrow for %d columns; %q gets %s", o.Paper, len(o.Columns), c.Head, max(0, out[i]))
		}
	}
	return out, nil
}

func (l *List) newPage() {
	l.page = &layout.Box{Size: l.o.Paper}
	l.y = l.o.Top
	l.rows = 0
}

// heading sets title and what stands under it.
func (l *List) heading() error {
	for _, h := range []struct {
		runs []label.Run
		size layout.Length
	}{{l.o.Title, titleSize}, {l.o.Under, l.o.Size}} {
		if len(h.runs) == 0 {
			continue
		}
		if err := l.block(h.runs, h.size, 0); err != nil {
			return err
		}
	}
	l.y += 2 * layout.MM
	return nil
}

// block sets a paragraph over the whole width.
func (l *List) block(runs []label.Run, size layout.Length, grey layout.Grey) error {
	b, err := l.s.Note(Note{Size: size, Width: l.o.Paper.W - l.o.Left - l.o.Right, Grey: grey}, runs)
	if err != nil {
		return err
	}
	l.put(b.Marks, layout.Point{X: l.o.Left, Y: l.y})
	l.y += b.Size.H
	return nil
}

func (l *List) put(marks []layout.Mark, by layout.Point) {
	for _, m := range marks {
		l.page.Marks = append(l.page.Marks, m.Shifted(by))
	}
}

func (l *List) rule(width layout.Length, grey layout.Grey) {
	l.page.Marks = append(l.page.Marks, layout.Stroke{
		From: layout.Point{X: l.o.Left, Y: l.y}, To: layout.Point{X: l.o.Paper.W - l.o.Right, Y: l.y}, Width: width, Grey: grey,
	})
}

// head sets the heading row.
func (l *List) head() error {
	cells := make([][]label.Run, len(l.o.Columns))
	for i, c := range l.o.Columns {
		cells[i] = []label.Run{{Text: c.Head, Style: label.Small}}
	}
	marks, height, err := l.set(cells)
	if err != nil {
		return err
	}
	l.put(greyed(marks, 64), layout.Point{Y: l.y})
	l.y += height
	l.rule(layout.Pt/2, 0)
	return nil
}

// turn ends the page and begins the next, with the heading row again.
func (l *List) turn() error {
	if err := l.emit(l.page); err != nil {
		return err
	}
	l.newPage()
	return l.head()
}

// Add sets a row: a cell for each column. The error is an *Error where a word
// cannot be set, or what emit returned.
func (l *List) Add(cells ...[]label.Run) error {
	if len(cells) != len(l.o.Columns) {
		return fmt.Errorf("a row of %d cells in a list of %d columns", len(cells), len(l.o.Columns))
	}
	marks, height, err := l.set(cells)
	if err != nil {
		return err
	}
	if err := l.place(0); err != nil {
		return err
	}
	if room := l.o.Paper.H - l.o.Bottom - l.o.Top; height > room-headRoom {
		return fmt.Errorf("a row %s high does not fit a page of %s: %q", height, l.o.Paper, label.String(cells[0]))
	}
	l.last, l.height = marks, height
	return nil
}

// place puts the row that waits on the page, or on the next one if it and what
// must stand below it have no room.
func (l *List) place(below layout.Length) error {
	if l.height == 0 {
		return nil
	}
	if l.y+l.height+below > l.o.Paper.H-l.o.Bottom && l.rows > 0 {
		if err := l.turn(); err != nil {
			return err
		}
	}
	l.put(l.last, layout.Point{Y: l.y})
	l.y += l.height
	l.rule(rowRule, rowGrey)
	l.rows++
	l.last, l.height = nil, 0
	return nil
}

// End sets paragraphs over the whole width below the rows and hands over the
// last page.
func (l *List) End(totals ...[]label.Run) error {
	var below layout.Length
	var boxes []*layout.Box
	for _, runs := range totals {
		b, err := l.s.Note(Note{Size: l.o.Size, Width: l.o.Paper.W - l.o.Left - l.o.Right}, runs)
		if err != nil {
			return err
		}
		boxes = append(boxes, b)
		below += b.Size.H + totalGap
	}
	below += totalGap
	if err := l.place(below); err != nil {
		return err
	}
	if l.y+below > l.o.Paper.H-l.o.Bottom && l.rows > 1 {
		if err := l.turn(); err != nil {
			return err
		}
	}
	l.y += totalGap
	for _, b := range boxes {
		l.y += totalGap
		l.put(b.Marks, layout.Point{X: l.o.Left, Y: l.y})
		l.y += b.Size.H
	}
	return l.emit(l.page)
}

// set sets the cells of a row from y = 0 and returns how high it is.
func (l *List) set(cells [][]label.Run) ([]layout.Mark, layout.Length, error) {
	w := l.s.pool.Get().(*work)
	defer l.s.pool.Put(w)
	w.reset(l.s.faces, &l.m)
	lead := l.m.lead(l.o.Size, 0)
	broken := make([][]line, len(cells))
	most := 1
	for i, runs := range cells {
		words, err := w.prepare(runs)
		if err != nil {
			return nil, 0, err
		}
		if words == nil {
			continue
		}
		if broken[i], err = w.single(words, l.o.Size, l.widths[i]); err != nil {
			return nil, 0, err
		}
		most = max(most, len(broken[i]))
	}
	p := w.newPen()
	x := l.o.Left
	for i, lines := range broken {
		y := rowGap + l.s.faces.Metrics(0, l.o.Size).Ascent
		for k := range lines {
			at := x
			if l.o.Columns[i].Right {
				at += l.widths[i] - lines[k].width
			}
			p.line(&lines[k], layout.Point{X: at, Y: y})
			y += lead
		}
		x += l.widths[i] + columnGap
	}
	return p.marks(0), lead*layout.Length(most) + 2*rowGap, nil
}
