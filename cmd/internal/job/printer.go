package job

import (
	"fmt"
	"iter"
	"strings"

	"cornerslip/layout"
	"cornerslip/layout/impose"
)

// correction returns what makes up for the printer at hand.
func (j *Job) correction() impose.Correction {
	p := j.House.Printer
	scale := func(percent float64) int64 {
		if percent == 100 {
			return 0
		}
		return int64(percent*1e4 + 0.5) // millionths
	}
	return impose.Correction{
		Offset: layout.Point{X: layout.Millimetres(p.OffsetXMM), Y: layout.Millimetres(p.OffsetYMM)},
		ScaleX: scale(p.ScaleXPercent), ScaleY: scale(p.ScaleYPercent),
	}
}

// turns reports whether pages of a size are turned for the printer.
func (j *Job) turns(size layout.Size) bool {
	switch j.House.Printer.Feed {
	case "short edge":
		return size.W > size.H
	case "long edge":
		return size.H > size.W
	}
	return false
}

// forPrinter returns pages as they are sent to the printer: turned to the edge
// that goes in first, then corrected. The warnings say what the printer cannot
// do.
func (j *Job) forPrinter(pages iter.Seq2[layout.Page, error], size layout.Size) (iter.Seq2[layout.Page, error], []string, error) {
	warnings, err := j.cannotTake(size)
	if err != nil {
		return nil, nil, err
	}
	c := j.correction()
	return func(yield func(layout.Page, error) bool) {
		for page, err := range pages {
			if err == nil && j.turns(page.Size) {
				page = impose.Turned(page)
			}
			if err == nil {
				page, err = c.Page(page)
			}
			if !yield(page, err) || err != nil {
				return
			}
		}
	}, warnings, nil
}

// cannotTake says so where the printer does not take a paper of the size.
func (j *Job) cannotTake(size layout.Size) ([]string, error) {
	papers := j.House.Printer.Papers
	if len(papers) == 0 {
		return nil, nil
	}
	for _, name := range papers {
		s, err := impose.ParsePaper(name)
		if err != nil {
			return nil, fmt.Errorf("%s: printer.papers: %w", j.House.Place("printer.papers"), err)
		}
		if s == size || s.Turned() == size {
			return nil, nil
		}
	}
	return []string{fmt.Sprintf("the pages are %s, and the printer takes %s by the house file: it may shrink or cut them",
		impose.NameOf(size), strings.Join(papers, ", "))}, nil
}
