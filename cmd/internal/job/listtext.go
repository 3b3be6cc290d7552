package job

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
)

// csvLists writes lists as one table for other programs; of several lists the
// first column says which herbarium a row is for.
type csvLists struct {
	write func(func(io.Writer) error) error
	lists []listTable
	rows  [][]string // of all lists, each with the number of its list before it
	of    []int
}

func (c *csvLists) begin(l listTable) error {
	c.lists = append(c.lists, l)
	return nil
}

func (c *csvLists) row(cells [][]label.Run) error {
	row := make([]string, len(cells))
	for i, runs := range cells {
		row[i] = label.String(runs)
	}
	c.rows = append(c.rows, row)
	c.of = append(c.of, len(c.lists)-1)
	return nil
}

func (c *csvLists) end([]string) error { return nil }

func (c *csvLists) finish() error {
	return c.write(func(w io.Writer) error {
		out := csv.NewWriter(w)
		var head []string
		gifts := strings.HasPrefix(c.lists[0].title, giftTitle)
		if gifts {
			head = append(head, "to")
		}
		for _, col := range c.lists[0].columns {
			head = append(head, col.term)
		}
		if err := out.Write(head); err != nil {
			return err
		}
		for i, row := range c.rows {
			if gifts {
				row = append([]string{strings.TrimPrefix(c.lists[c.of[i]].title, giftTitle)}, row...)
			}
			if err := out.Write(row); err != nil {
				return err
			}
		}
		out.Flush()
		return out.Error()
	})
}

// giftTitle begins the title of a gift list, before the herbarium's code.
const giftTitle = "Gift to "

// textLists writes lists for the terminal, in columns as wide as they need.
type textLists struct {
	write func(func(io.Writer) error) error
	lists []textList
}

type textList struct {
	listTable
	rows   [][]string
	totals []string
}

// widestCell is how wide a column of text may get; longer cells run on and only
// they stand out of line.
const widestCell = 44

func (t *textLists) begin(l listTable) error {
	t.lists = append(t.lists, textList{listTable: l})
	return nil
}

func (t *textLists) row(cells [][]label.Run) error {
	row := make([]string, len(cells))
	for i, runs := range cells {
		row[i] = strings.Join(strings.Fields(label.String(runs)), " ")
	}
	l := &t.lists[len(t.lists)-1]
	l.rows = append(l.rows, row)
	return nil
}

func (t *textLists) end(totals []string) error {
	t.lists[len(t.lists)-1].totals = totals
	return nil
}

func (t *textLists) finish() error {
	return t.write(func(w io.Writer) error {
		out := bufio.NewWriter(w)
		for i, l := range t.lists {
			if i > 0 {
				fmt.Fprintln(out)
			}
			l.writeTo(out)
		}
		return out.Flush()
	})
}

func (l *textList) writeTo(w io.Writer) {
	fmt.Fprintf(w, "%s\n%s\n\n", l.title, l.under)
	head := make([]string, len(l.columns))
	widths := make([]int, len(l.columns))
	for i, c := range l.columns {
		head[i] = c.head
	}
	for _, row := range append([][]string{head}, l.rows...) {
		for i, cell := range row {
			widths[i] = max(widths[i], min(widestCell, utf8.RuneCountInString(cell)))
		}
	}
	for _, row := range append([][]string{head}, l.rows...) {
		var b strings.Builder
		for i, cell := range row {
			pad := strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell)))
			if l.columns[i].right {
				cell = pad + cell
			} else {
				cell += pad
			}
			if i > 0 {
				b.WriteString("  ")
			}
			b.WriteString(cell)
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
	fmt.Fprintln(w)
	for _, s := range l.totals {
		fmt.Fprintln(w, s)
	}
}
