// Package text draws one label in a terminal: its words in reading order, at
// about the places they have on paper, within a frame. It is a quick look, not
// a measure: letters are as wide as the terminal has them, so a line may be
// longer than on paper, and then the frame is wider. No word is left out.
package text

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"cornerslip/layout"
)

// Options says how a label is drawn. The zero value is plain text for a file
// or a pipe.
type Options struct {
	// Styled shows italic, bold and grey as a terminal does, by SGR sequences
	// (ECMA-48, 8.3.117).
	Styled bool
	// Columns is how wide the frame should be; 0 gives a column to every
	// 1.4 mm, which is about a letter of 9 pt. Longer lines make it wider.
	Columns int
}

// column is the breadth of a letter where no number of columns is asked for.
const column = 14 * layout.MM / 10

// Write draws b on w. Lines and fills other than level rules, and the grey of
// the paper, have no place in a terminal and are left out. A mark that no
// backend could draw is an error that names the label; nothing is written then.
func Write(w io.Writer, b *layout.Box, o Options) error {
	if err := b.Check(); err != nil {
		return err
	}
	d := &drawing{box: b, scale: o.Columns - 2}
	if o.Columns <= 0 {
		d.scale = int((b.Size.W + column/2) / column)
	}
	d.scale = min(max(d.scale, 1), 1000)
	d.columns = d.scale
	d.collect()
	// A line that does not fit makes the frame wider, and then what stands at
	// the right edge moves too. What stands at the left does not, so this ends.
	for wide := d.place(); wide > d.columns; wide = d.place() {
		d.columns = wide
	}
	out := bufio.NewWriter(w)
	d.write(out, o.Styled)
	return out.Flush()
}

// A span is words in one style.
type span struct {
	text string
	sgr  string // parameters of the sequence, "" for plain
}

// A part is what stands together in a row: words that follow each other
// without a gap, a rule, or a line of bars.
type part struct {
	spans       []span
	left, right layout.Length
	col, wide   int
	rule        bool
	bars        *layout.Bars
	said        string // follows the bars
}

// A row is a line of the terminal.
type row struct {
	y     layout.Length // baseline
	size  layout.Length // the largest type in it; 0 for a rule
	parts []*part
	above int // empty rows before it
}

type drawing struct {
	box     *layout.Box
	scale   int // columns that the label's width would have
	columns int // columns within the frame
	margin  layout.Length
	rows    []*row
}

// collect turns marks into rows, top to bottom, and their parts, left to right.
func (d *drawing) collect() {
	d.margin = d.box.Size.W
	for _, line := range layout.Lines(d.box.Marks) {
		p := &part{left: line[0].At.X, right: line[0].At.X}
		size := layout.Length(0)
		for _, t := range line {
			p.right += t.Width()
			size = max(size, t.Size)
			if n := len(p.spans); n > 0 && p.spans[n-1].sgr == sgr(t) {
				p.spans[n-1].text += t.S
			} else {
				p.spans = append(p.spans, span{t.S, sgr(t)})
			}
		}
		for _, s := range p.spans {
			p.wide += width(s.text)
		}
		if p.wide > 0 {
			d.add(line[0].At.Y, size, p)
			d.margin = min(d.margin, p.left)
		}
	}
	for _, m := range d.box.Marks {
		switch m := m.(type) {
		case layout.Stroke:
			left, right := min(m.From.X, m.To.X), max(m.From.X, m.To.X)
			if m.From.Y == m.To.Y && right-left >= d.box.Size.W/8 {
				d.add(m.From.Y, 0, &part{left: left, right: right, rule: true})
			}
		case layout.Fill:
			if m.W >= d.box.Size.W/8 && m.H <= layout.MM {
				d.add(m.At.Y, 0, &part{left: m.At.X, right: m.Right(), rule: true})
			}
		case layout.Bars:
			d.addBars(m)
		}
	}
	for _, r := range d.rows {
		slices.SortStableFunc(r.parts, func(a, b *part) int { return int(a.left - b.left) })
	}
	for i, r := range d.rows[min(1, len(d.rows)):] {
		// A row is as high as its type with the usual white between lines.
		before := d.rows[i]
		high := max(r.size, before.size, 8*layout.Pt) * 5 / 4
		if r.size > 0 && before.size > 0 {
			r.above = min(max(int((r.y-before.y+high/2)/high)-1, 0), 4)
		}
	}
}

// add puts a part into the row of its baseline, or into a new one. Words that
// are no more than a third of their height apart stand in one row.
func (d *drawing) add(y, size layout.Length, p *part) {
	i, _ := slices.BinarySearchFunc(d.rows, y, func(r *row, y layout.Length) int { return int(r.y - y) })
	for _, j := range []int{i, i - 1} {
		if j < 0 || j >= len(d.rows) || size == 0 || d.rows[j].size == 0 {
			continue
		}
		r := d.rows[j]
		apart := max(r.y-y, y-r.y)
		free := !slices.ContainsFunc(r.parts, func(q *part) bool { return p.left < q.right && q.left < p.right })
		if apart <= min(size, r.size)/3 && free {
			r.parts = append(r.parts, p)
			r.size = max(r.size, size)
			return
		}
	}
	d.rows = slices.Insert(d.rows, i, &row{y: y, size: size, parts: []*part{p}})
}

// addBars puts a line of bars beside the words next to the symbol, or into a
// row of its own; what a scanner reads follows where it is not printed as words.
func (d *drawing) addBars(b layout.Bars) {
	p := &part{left: b.At.X, right: b.Right(), bars: &b}
	said := strings.Map(noSpace, b.S)
	printed := false
	for _, r := range d.rows {
		for _, q := range r.parts {
			for _, s := range q.spans {
				printed = printed || strings.Contains(strings.Map(noSpace, s.text), said)
			}
		}
	}
	if !printed {
		p.said = " " + b.S
	}
	d.margin = min(d.margin, p.left)
	// The baseline of words beside it, if there are any; else its foot.
	y, size := b.Bottom(), 8*layout.Pt
	for _, r := range d.rows {
		if r.size > 0 && r.y > b.At.Y && r.y <= b.Bottom()+r.size/2 &&
			!slices.ContainsFunc(r.parts, func(q *part) bool { return p.left < q.right && q.left < p.right }) {
			y, size = r.y, r.size
		}
	}
	d.add(y, size, p)
}

func noSpace(r rune) rune {
	if unicode.IsSpace(r) {
		return -1
	}
	return r
}

// at returns the column of a place across the label, counted from the left.
func (d *drawing) at(x layout.Length) int {
	w := d.box.Size.W
	if w <= 0 {
		return 0
	}
	return int(min(max(x, 0), w).MulDiv(int64(d.scale), int64(w)))
}

// atRight returns the column of a place that keeps its distance from the right.
func (d *drawing) atRight(x layout.Length) int { return d.columns - d.scale + d.at(x) }

// place gives each part its column and returns how many columns it takes.
func (d *drawing) place() int {
	w := d.box.Size.W
	wide, margin := 1, min(d.at(d.margin), 1)
	for _, r := range d.rows {
		pen := 0
		for i, p := range r.parts {
			if p.bars != nil {
				n := max(d.at(p.right)-d.at(p.left), 2)
				p.spans = []span{{text: sketch(*p.bars, n) + p.said}}
				p.wide = n + width(p.said)
			}
			p.col = d.at(p.left)
			middle := (p.left+p.right)/2 - w/2
			switch {
			case p.rule:
				p.wide = max(d.atRight(p.right)-p.col, 1)
			case len(r.parts) == 1 && p.left > d.margin+2*layout.MM && max(middle, -middle) < layout.MM:
				p.col = (d.columns - p.wide) / 2
			case i == len(r.parts)-1 && p.left > w/4 && w-p.right < d.margin+layout.MM:
				p.col = min(d.atRight(p.right), d.columns-margin) - p.wide
			}
			p.col = max(p.col, 0)
			if i > 0 && p.col <= pen {
				p.col = pen + 1 // always a space between parts
			}
			pen = p.col + p.wide
		}
		if !r.parts[len(r.parts)-1].rule {
			wide = max(wide, pen+margin)
		}
	}
	return wide
}

// sketch draws bars in n columns, two samples in each: it shows that and where
// there is a symbol, and cannot be scanned.
func sketch(b layout.Bars, n int) string {
	row := b.Modules
	if b.Rows > 1 {
		// The first row of a square symbol may be all dark.
		k := len(row) / b.Rows
		mid := b.Rows / 2
		row = row[mid*k : (mid+1)*k]
	}
	var s strings.Builder
	for i := range n {
		dark := 0
		for half := range 2 {
			if len(row) > 0 && row[(4*i+2*half+1)*len(row)/(4*n)] == '1' {
				dark |= 2 >> half
			}
		}
		s.WriteRune([]rune(" ▐▌█")[dark])
	}
	return s.String()
}

func sgr(t layout.Text) string {
	var codes []string
	if t.Style&layout.Bold != 0 {
		codes = append(codes, "1")
	}
	if t.Grey >= 128 {
		codes = append(codes, "2")
	}
	if t.Style&layout.Italic != 0 {
		codes = append(codes, "3")
	}
	return strings.Join(codes, ";")
}

func (d *drawing) write(w *bufio.Writer, styled bool) {
	edge := strings.Repeat("─", d.columns)
	fmt.Fprintf(w, "┌%s┐\n", edge)
	empty := "│" + strings.Repeat(" ", d.columns) + "│\n"
	for _, r := range d.rows {
		w.WriteString(strings.Repeat(empty, r.above))
		w.WriteString("│")
		pen := 0
		for _, p := range r.parts {
			w.WriteString(strings.Repeat(" ", p.col-pen))
			pen = p.col + p.wide
			if p.rule {
				w.WriteString(strings.Repeat("─", p.wide))
				continue
			}
			for _, s := range p.spans {
				if styled && s.sgr != "" {
					fmt.Fprintf(w, "\x1b[%sm%s\x1b[0m", s.sgr, s.text)
				} else {
					w.WriteString(s.text)
				}
			}
		}
		w.WriteString(strings.Repeat(" ", d.columns-pen))
		w.WriteString("│\n")
	}
	fmt.Fprintf(w, "└%s┘\n", edge)
}

// width returns how many columns a text takes.
func width(s string) (n int) {
	for _, r := range s {
		switch {
		case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		case wide(r):
			n += 2
		default:
			n++
		}
	}
	return n
}

// wide reports whether a terminal gives a character two columns: those of East
// Asian Width W and F (Unicode Standard Annex #11), by blocks. Characters that
// are not assigned in these blocks count as wide, as the annex has it.
func wide(r rune) bool {
	switch {
	case r < 0x1100:
		return false
	case r <= 0x115F, r == 0x2329, r == 0x232A,
		0x2E80 <= r && r <= 0x303E, 0x3041 <= r && r <= 0x3247, 0x3250 <= r && r <= 0x4DBF, 0x4E00 <= r && r <= 0xA4CF,
		0xA960 <= r && r <= 0xA97F, 0xAC00 <= r && r <= 0xD7A3, 0xF900 <= r && r <= 0xFAFF,
		0xFE10 <= r && r <= 0xFE19, 0xFE30 <= r && r <= 0xFE6F, 0xFF01 <= r && r <= 0xFF60, 0xFFE0 <= r && r <= 0xFFE6,
		0x1F300 <= r && r <= 0x1F64F, 0x1F900 <= r && r <= 0x1F9FF, 0x20000 <= r && r <= 0x3FFFD:
		return true
	}
	return false
}
