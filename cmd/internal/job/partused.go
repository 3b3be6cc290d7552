package job

import (
	"errors"
	"fmt"
	"iter"
	"slices"

	"cornerslip/label/date"
	"cornerslip/label/lang"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/typeset"
)

// noteReprinted is how the line "reprinted" is set.
var noteReprinted = typeset.Note{Size: 6 * layout.Pt, Grey: 64}

// reprintedOn returns the line "reprinted 25 November 2026" in the house's
// language and style.
func (j *Job) reprintedOn() (string, error) {
	day, _, err := date.Parse(j.o.Date.Format("2006-01-02"), date.Hints{})
	if err != nil {
		return "", err
	}
	l := j.langs[0]
	return lang.Words(l).Reprinted + " " + day.Format(date.Style{Form: dateForms[j.House.Dates.Style]}, l), nil
}

// onPartUsed puts labels on the free places of a paper of which some labels of
// the same size were cut or torn off already.
func (j *Job) onPartUsed(q *Request, r *run, rep *Report, start string, skip []string) (iter.Seq2[layout.Page, error], error) {
	var err error
	if rep.PaperSize, err = j.paper(q); err != nil {
		return nil, err
	}
	if q.On != OnPaper || q.packet != nil {
		return nil, errors.New("places are chosen on paper with many labels, or on stickers; leave --start and --skip out here")
	}
	size := r.sizes[0]
	for _, s := range r.sizes {
		if s != size {
			return nil, fmt.Errorf("the label goes on over one of another size, %s and %s, which have no place on the same part-used paper; leave --start and --skip out", size, s)
		}
	}
	g := j.gang(q, rep.PaperSize)
	const plenty = 400 // more labels than a paper holds
	full, err := g.Plan(slices.Repeat([]layout.Size{size}, plenty))
	if err != nil {
		return nil, err
	}
	places := full.Places(0)
	grid := gridOf(places, rep.PaperSize)
	if len(places) != grid.Columns*grid.Rows {
		return nil, errors.New("labels of this size do not lie in rows on this paper; leave --start and --skip out")
	}
	if start != "" {
		if grid.Start, err = grid.ParsePlace(start); err != nil {
			return nil, err
		}
	}
	for _, text := range skip {
		k, err := grid.ParsePlace(text)
		if err != nil {
			return nil, err
		}
		grid.Skip = append(grid.Skip, k)
	}
	// Row by row, as people count; the gang numbers its places in its own way.
	slices.SortFunc(places, func(a, b impose.Place) int {
		if a.At.Y != b.At.Y {
			return int(a.At.Y - b.At.Y)
		}
		return int(a.At.X - b.At.X)
	})
	label, last := map[int]int{}, 0
	for k, p := range places {
		if len(label) < len(r.sizes) && k >= grid.Start && !slices.Contains(grid.Skip, k) {
			label[p.Index] = len(label)
			last = max(last, p.Index)
		}
	}
	if len(label) < len(r.sizes) {
		return nil, fmt.Errorf("the paper has room for %d of the %d labels from there on; leave --start out to take a new paper", len(label), len(r.sizes))
	}
	// No footer: it would lie on places that are still free.
	plan, err := g.Plan(slices.Repeat([]layout.Size{size}, last+1))
	if err != nil {
		return nil, err
	}
	rep.Papers, rep.Picture = plan.Len(), grid.Picture(len(r.sizes))
	rep.cuts = cutPapersOf(plan, 0)
	return plan.Pages(func(i int) (*layout.Box, error) {
		if k, ok := label[i]; ok {
			return r.box(k)
		}
		return &layout.Box{Size: size}, nil // used up, or left free
	}), nil
}

// gridOf returns the rows and columns in which places lie.
func gridOf(places []impose.Place, paper layout.Size) impose.Grid {
	var xs, ys []layout.Length
	for _, p := range places {
		xs, ys = append(xs, p.At.X), append(ys, p.At.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	return impose.Grid{Paper: paper, Columns: len(xs), Rows: len(ys), Place: places[0].Size, First: layout.Point{X: xs[0], Y: ys[0]}}
}
