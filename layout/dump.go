package layout

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"unicode/utf8"
)

// Dump writes p as text that a reviewer can read and a test can keep: a line
// for the page, for each box and for each mark, in drawing order. Places are
// in millimetres with four decimals and count from the upper-left corner of
// the page, or of the box before it is turned; sizes of type are in points. A
// text is followed by its advances in thousandths of its size, with the rise
// after a "^" where there is one; "w" is its width.
//
// The form is for tests. Nothing reads it back.
func Dump(w io.Writer, p Page) error {
	d := dumper{bufio.NewWriter(w)}
	fmt.Fprintf(d, "page %s", size(p.Size))
	if p.Trim != (Rect{}) {
		fmt.Fprintf(d, " trim %s", rect(p.Trim))
	}
	d.WriteByte('\n')
	for _, b := range p.Boxes {
		fmt.Fprintf(d, "box %s", point(b.At))
		if b.Turn != 0 {
			fmt.Fprintf(d, " turn %d", b.Turn)
		}
		if b.Box == nil {
			d.WriteString(" nil\n")
			continue
		}
		fmt.Fprintf(d, " %s  %v\n", size(b.Box.Size), b.Box.Ref)
		d.marks(b.Box.Marks)
	}
	if len(p.Marks) > 0 {
		d.WriteString("paper\n")
		d.marks(p.Marks)
	}
	return d.Flush()
}

type dumper struct{ *bufio.Writer }

func (d dumper) marks(marks []Mark) {
	for _, m := range marks {
		switch m := m.(type) {
		case Text:
			d.text(m)
		case Fill:
			fmt.Fprintf(d, "  fill %s%s\n", rect(m.Rect), grey(m.Grey))
		case Stroke:
			fmt.Fprintf(d, "  line %s to %s width %s%s", point(m.From), point(m.To), mm(m.Width), grey(m.Grey))
			if len(m.Dash) > 0 {
				d.WriteString(" dash")
				for _, l := range m.Dash {
					fmt.Fprintf(d, " %s", mm(l))
				}
			}
			d.WriteByte('\n')
		case Bars:
			d.bars(m)
		default:
			fmt.Fprintf(d, "  unknown %T\n", m)
		}
	}
}

func (d dumper) text(t Text) {
	fmt.Fprintf(d, "  text %s %s", point(t.At), t.Face)
	if t.Style&Italic != 0 {
		d.WriteString(" italic")
	}
	if t.Style&Bold != 0 {
		d.WriteString(" bold")
	}
	fmt.Fprintf(d, " %spt%s w %s %q", t.Size.Decimal(Pt, 2), grey(t.Grey), mm(t.Width()), t.S)
	if t.Actual != "" {
		fmt.Fprintf(d, " actual %q", t.Actual)
	}
	if len(t.Clusters) > 0 {
		d.WriteString("\n   ")
	}
	at := 0
	for _, c := range t.Clusters {
		// Clusters of one rune are the rule; others are shown with their text.
		d.WriteByte(' ')
		end := min(max(at+c.Bytes, at), len(t.S))
		if utf8.RuneCountInString(t.S[at:end]) != 1 {
			fmt.Fprintf(d, "%q=", t.S[at:end])
		}
		at = end
		d.WriteString(thousandths(c.Adv, t.Size))
		if c.Rise != 0 {
			d.WriteString("^" + thousandths(c.Rise, t.Size))
		}
	}
	d.WriteByte('\n')
}

func (d dumper) bars(b Bars) {
	fmt.Fprintf(d, "  bars %s %s %q module %s dot %s quiet %s rows %d\n", rect(b.Rect), b.Symbology, b.S,
		mm(b.Module), mm(b.Dot), mm(b.Quiet), b.Rows)
	if n := len(b.Modules); b.Rows > 1 && n%b.Rows == 0 {
		for i := range b.Rows {
			fmt.Fprintf(d, "    %s\n", b.Modules[i*n/b.Rows:(i+1)*n/b.Rows])
		}
	} else if n > 0 {
		fmt.Fprintf(d, "    %s\n", b.Modules)
	}
	// Symbols have many bars of few sizes: neighbours of one height and row
	// share a line.
	for i, r := range b.Rects {
		if i == 0 || r.At.Y != b.Rects[i-1].At.Y || r.H != b.Rects[i-1].H {
			if i > 0 {
				d.WriteByte('\n')
			}
			fmt.Fprintf(d, "    y %s h %s:", mm(r.At.Y), mm(r.H))
		}
		fmt.Fprintf(d, " %s+%s", mm(r.At.X), mm(r.W))
	}
	if len(b.Rects) > 0 {
		d.WriteByte('\n')
	}
}

func mm(l Length) string   { return l.Decimal(MM, 4) }
func point(p Point) string { return mm(p.X) + "," + mm(p.Y) }
func size(s Size) string   { return mm(s.W) + "x" + mm(s.H) }
func rect(r Rect) string   { return point(r.At) + "+" + size(r.Size) }

func grey(g Grey) string {
	if g == 0 {
		return ""
	}
	return fmt.Sprintf(" grey %d", g)
}

// thousandths returns l in thousandths of a type size.
func thousandths(l, size Length) string {
	if size <= 0 {
		return l.String()
	}
	return strconv.FormatInt(int64(l.MulDiv(1000, int64(size))), 10)
}
