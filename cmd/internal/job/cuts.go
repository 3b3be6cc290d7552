package job

import (
	"fmt"
	"io"
	"iter"
	"strings"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/pdf"
	"cornerslip/layout/typeset"
)

// The cutting list is a small page, A5, to lie beside the guillotine.
var cutPage = layout.Size{W: 148 * layout.MM, H: 210 * layout.MM}

const cutMargin = 10 * layout.MM

// WriteCuts writes the cutting list as PDF: for all papers that are cut alike a
// small page with a picture of the cuts, numbered in their order, and the list
// in words.
func (j *Job) WriteCuts(w io.Writer, rep *Report) error {
	var pages iter.Seq2[layout.Page, error] = func(yield func(layout.Page, error) bool) {
		for _, c := range rep.cuts {
			page, err := j.cutPage(c, rep)
			if !yield(page, err) || err != nil {
				return
			}
		}
	}
	return pdf.Write(w, pages, j.fonts, j.pdfOptions("Cutting list: "+rep.title))
}

func (j *Job) cutPage(c cutPapers, rep *Report) (layout.Page, error) {
	page := layout.Page{Size: cutPage}
	room := cutPage.W - 2*cutMargin
	y := cutMargin
	put := func(b *layout.Box, at layout.Point) { page.Boxes = append(page.Boxes, layout.Placed{At: at, Box: b}) }
	head, err := j.setter.Note(typeset.Note{Size: 11 * layout.Pt, Width: room}, said("Cutting list"))
	if err != nil {
		return page, err
	}
	put(head, layout.Point{X: cutMargin, Y: y})
	y += head.Size.H
	of, err := j.setter.Note(typeset.Note{Size: 8 * layout.Pt, Width: room}, said(fmt.Sprintf("%s, %s: %s, %s",
		rep.title, j.o.Date.Format("2006-01-02"), c.heading(rep.Papers), rep.PaperSize)))
	if err != nil {
		return page, err
	}
	put(of, layout.Point{X: cutMargin, Y: y})
	y += of.Size.H + 4*layout.MM

	list, err := j.cutWords(c, room-pictureWidth-6*layout.MM, cutPage.H-cutMargin-y)
	if err != nil {
		return page, err
	}
	var figureErr error
	picture := c.plan.CutPicture(c.page, layout.Size{W: pictureWidth, H: cutPage.H - cutMargin - y}, func(n int) *layout.Box {
		b, err := j.setter.Note(typeset.Note{Size: 6 * layout.Pt}, said(fmt.Sprint(n)))
		if err != nil {
			figureErr = err
		}
		return b
	})
	if figureErr != nil {
		return page, figureErr
	}
	at := layout.Point{X: cutMargin, Y: y}
	for _, b := range picture.Boxes {
		put(b.Box, at.Add(b.At))
	}
	for _, m := range picture.Marks {
		page.Marks = append(page.Marks, m.Shifted(at))
	}
	put(list, layout.Point{X: cutMargin + pictureWidth + 6*layout.MM, Y: y})
	return page, nil
}

const pictureWidth = 58 * layout.MM

// cutWords sets the list, in smaller type where it is long.
func (j *Job) cutWords(c cutPapers, width, height layout.Length) (*layout.Box, error) {
	var lines [][]label.Run
	for _, l := range c.plan.CutList(c.page) {
		lines = append(lines, said(strings.ReplaceAll(l, " mm", "\u00a0mm")))
	}
	if len(lines) == 0 {
		lines = append(lines, said("no cut"))
	}
	for size := 8 * layout.Pt; ; size -= layout.Pt / 2 {
		b, err := j.setter.Note(typeset.Note{Size: size, Width: width, Gap: layout.Pt}, lines...)
		if err != nil || b.Size.H <= height {
			return b, err
		}
		if size <= 5*layout.Pt {
			return nil, fmt.Errorf("the cutting list of %d cuts does not fit a page of %s; have it written as text", len(lines), cutPage)
		}
	}
}
