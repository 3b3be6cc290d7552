package job

import (
	"context"
	"errors"
	"io"
	"iter"
	"strings"

	"cornerslip/label"
	"cornerslip/label/form"
	"cornerslip/label/register"
	"cornerslip/layout"
	"cornerslip/layout/typeset"
)

// ReadyForNumbers holds a request for the stickers of bare numbers against the
// house, with a number as long as they get: before any number is issued for it.
func (j *Job) ReadyForNumbers(q Request, number string) error {
	q.Kind = label.Barcode
	if err := j.prepare(&q); err != nil {
		return err
	}
	_, err := j.setNumber(&q, number)
	return err
}

func (j *Job) setNumber(q *Request, number string) (setRecord, error) {
	o, err := j.formOptions(q)
	if err != nil {
		return setRecord{}, err
	}
	return j.setContents(nil, []label.Content{form.Number(number, o)}, j.measures(q))
}

// PrintNumbers prints the stickers of numbers that have no record yet.
func (j *Job) PrintNumbers(q Request, ranges []register.Range, write func(func(io.Writer) error) error) (Report, error) {
	rep := newReport()
	q.Kind = label.Barcode
	if err := j.prepare(&q); err != nil {
		return rep, err
	}
	o, err := j.formOptions(&q)
	if err != nil {
		return rep, err
	}
	run, err := newRun()
	if err != nil {
		return rep, err
	}
	defer run.close()
	done, of := 0, 0
	for _, r := range ranges {
		of += r.Len()
	}
	ctx := context.Background()
	keep := j.keeps(nil, &q, &rep, func(r setRecord) error {
		done++
		for i, l := range r.labels {
			rep.count(l)
			if err := run.put(&l, r.encoded[i]); err != nil {
				return err
			}
		}
		if q.Progress != nil {
			q.Progress(done, of)
		}
		return nil
	})
	defer keep.end(ctx)
	measures := j.measures(&q)
	work := func(_ int, number string) (setRecord, error) {
		s, err := j.setContents(nil, []label.Content{form.Number(number, o)}, measures)
		s.number = number
		return s, err
	}
	var faults []error
	err = layout.InOrder(allNumbers(ranges), j.Workers, work, func(r setRecord, err error) error {
		var word *typeset.Error
		if errors.As(err, &word) && len(faults) < mostUnissued {
			faults = append(faults, err)
			return nil
		}
		if err != nil || len(faults) > 0 {
			return err
		}
		return keep.take(ctx, r)
	})
	if err := errors.Join(append(faults, err)...); err != nil {
		return rep, err
	}
	if err := keep.set(ctx); err != nil {
		return rep, err
	}
	if rep.Labels == 0 {
		return rep, ErrNone
	}
	if err := run.done(); err != nil {
		return rep, err
	}
	rep.title = q.Title
	if rep.title == "" {
		rep.title = "Barcode labels " + ranges[0].String()
	}
	pages, err := j.impose(&q, run, &rep)
	if err != nil {
		return rep, err
	}
	err = j.writePages(rep.title, &rep, pages, keep.before(ctx, write))
	return rep, err
}

// allNumbers yields the numbers of all ranges.
func allNumbers(ranges []register.Range) iter.Seq2[string, error] {
	return func(yield func(string, error) bool) {
		for _, r := range ranges {
			for n := range r.Numbers() {
				if !yield(n, nil) {
					return
				}
			}
		}
	}
}

// Numbers says which bare numbers are printed: Count new ones of a series, or
// ranges that were issued before, "VDOURA-0000101..VDOURA-0000200".
type Numbers struct {
	Series  string
	Count   int
	Ranges  []string
	Path    string // where the pages go
	Replace bool
}

// NumbersFor issues or reads the numbers to be printed. Before any is issued it
// makes sure, as far as can be told, that they can be printed.
func (j *Job) NumbersFor(ctx context.Context, q Request, n Numbers) ([]register.Range, error) {
	r := q.Memory.Register
	switch {
	case n.Count != 0 && len(n.Ranges) > 0:
		return nil, errors.New("--count issues new numbers and --numbers prints those issued before: say one of the two")
	case n.Count < 0:
		return nil, errors.New("--count must be 1 or more")
	case n.Count == 0:
		var ranges []register.Range
		for _, text := range n.Ranges {
			first, last, _ := strings.Cut(text, "..")
			one, err := r.Range(ctx, first, last)
			if err != nil {
				return nil, err
			}
			ranges = append(ranges, one)
		}
		return ranges, nil
	}
	series, err := j.SeriesName(ctx, r, n.Series)
	if err != nil {
		return nil, err
	}
	all, err := r.Series(ctx)
	if err != nil {
		return nil, err
	}
	for _, s := range all {
		if s.Name != series {
			continue
		}
		if err := j.ReadyForNumbers(q, s.Pattern.Format(s.Pattern.Max())); err != nil {
			return nil, err
		}
	}
	if err := CanWrite(n.Path, n.Replace); err != nil {
		return nil, err
	}
	one, err := r.Issue(ctx, q.Memory.At, series, n.Count)
	return []register.Range{one}, err
}
