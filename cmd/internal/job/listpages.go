package job

import (
	"fmt"
	"io"
	"iter"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/typeset"
)

// pdfLists sets lists into pages, which wait in a file until it is known how
// many there are.
type pdfLists struct {
	j     *Job
	paper layout.Size
	spool *spool
	rep   *ListReport
	write func(func(io.Writer) error) error
	table string
	title string // of the list being set
	list  *typeset.List
	of    []string // the title of each page
	first []int    // where each list begins, by page from 0
}

func (p *pdfLists) begin(l listTable) error {
	p.title = l.title
	p.first = append(p.first, len(p.of))
	sheet := typeset.ListSheet{Paper: p.paper, Title: said(l.title), Under: said(l.under)}
	for _, c := range l.columns {
		sheet.Columns = append(sheet.Columns, typeset.Column{Head: c.head, Width: c.width, Share: c.share, Right: c.right})
	}
	var err error
	p.list, err = p.j.setter.NewList(sheet, func(b *layout.Box) error {
		p.of = append(p.of, p.title)
		return p.spool.add(b.Size, layout.Encode(b))
	})
	return err
}

func (p *pdfLists) row(cells [][]label.Run) error { return p.list.Add(cells...) }

func (p *pdfLists) end(totals []string) error {
	lines := make([][]label.Run, len(totals))
	for i, s := range totals {
		lines[i] = said(s)
	}
	return p.list.End(lines...)
}

func (p *pdfLists) finish() error {
	if err := p.spool.done(); err != nil {
		return err
	}
	p.rep.Pages = len(p.of)
	title := "Lists of " + p.table
	if len(p.first) == 1 {
		title = p.title + ", " + p.table
	}
	rep := &Report{PaperSize: p.paper}
	err := p.j.writePages(title, rep, p.pages(), p.write)
	p.rep.Warnings = rep.Warnings
	return err
}

// pages numbers the pages of each list and draws them.
func (p *pdfLists) pages() iter.Seq2[layout.Page, error] {
	return func(yield func(layout.Page, error) bool) {
		for k := range p.first {
			end := len(p.of)
			if k+1 < len(p.first) {
				end = p.first[k+1]
			}
			for i := p.first[k]; i < end; i++ {
				page, err := p.page(i, i-p.first[k]+1, end-p.first[k])
				if !yield(page, err) || err != nil {
					return
				}
			}
		}
	}
}

func (p *pdfLists) page(i, n, of int) (layout.Page, error) {
	page := layout.Page{Size: p.paper}
	b, err := p.spool.box(i)
	if err != nil {
		return page, err
	}
	foot, err := p.j.setter.Note(typeset.Note{Grey: footGrey}, said(fmt.Sprintf("%s, %s, page %d of %d", p.of[i], p.j.o.Date.Format("2006-01-02"), n, of)))
	if err != nil {
		return page, err
	}
	at := layout.Point{X: p.paper.W - 15*layout.MM - foot.Size.W, Y: p.paper.H - 11*layout.MM}
	page.Boxes = []layout.Placed{{Box: b}, {At: at, Box: foot}}
	return page, nil
}
