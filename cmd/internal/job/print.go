package job

import (
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/table"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/pdf"
	"cornerslip/layout/symbol"
	"cornerslip/layout/typeset"
)

// A Request says what to print.
type Request struct {
	Kind label.Kind // label.Sheet, label.Packet, label.Barcode, label.Slip or label.Tag
	// Identifications is the table whose rows make slips; nil takes the one
	// beside the core of an archive, else the rows of the table itself. Slip is
	// the kind of slip where the table does not say it; nil goes by its cells.
	Identifications *Table
	Slip            *form.SlipKind
	// Bundle asks for the tags of presses instead of those of plants.
	Bundle *BundleRequest
	// Mount prints each sheet label on a mounting sheet of its own.
	Mount bool
	// Paper is what the labels are ganged on, by name or size; "" is the
	// house's.
	Paper string
	// Symbology of the bars; "" is the house's.
	Symbology string
	// ExceptBad prints the good records although others have errors.
	ExceptBad bool
	// Title heads the document; "" makes one from kind and table.
	Title string
	// Progress is told how many of the chosen records are done; nil tells
	// nobody.
	Progress func(done, of int)
	// Each is told how every label was set, in order; nil tells nobody.
	Each func(SetLabel)
}

// A SetLabel says how one label was set.
type SetLabel struct {
	Ref    layout.Ref
	Size   layout.Size
	Report typeset.Report
	// Smaller is set where the type is below its usual size, Withheld where
	// the place is kept from the herbarium that the label goes to.
	Smaller, Withheld bool
}

// A Report says what was printed.
type Report struct {
	Labels    int // printed, continuations included
	Records   int // that have at least one label
	Without   int // chosen records that have no label of this kind
	Papers    int
	PaperSize layout.Size
	Sizes     map[layout.Size]int // labels of each size
	Continued []SetLabel          // labels whose words needed a second one
	Smaller   []SetLabel          // labels set below the usual size of type
	Gifts     map[string]int      // labels by the herbarium they go to
	Withheld  []SetLabel          // of these, the ones that name no exact place
}

// ErrData is returned where the data has errors and nothing was written.
var ErrData = errors.New("the table has errors; nothing was written")

// ErrNone is returned where no label is to be printed.
var ErrNone = errors.New("there is nothing to print")

// contents returns the labels of a record that the request asks for.
func (j *Job) contents(q *Request, o *form.Options, r *check.Record) []label.Content {
	switch q.Kind {
	case label.Packet:
		return form.Packets(r, *o)
	case label.Barcode:
		return form.Barcodes(r, *o)
	case label.Tag:
		return []label.Content{form.Tag(r, *o)}
	}
	return append(form.Sheet(r, *o), form.Containers(r, *o)...)
}

// setRecord is all labels of a record.
type setRecord struct {
	record  *check.Record
	count   int // the records it stands for, where that is more than one
	labels  []SetLabel
	encoded [][]byte
}

// setContents sets labels of a record.
func (j *Job) setContents(r *check.Record, contents []label.Content, measures func(*label.Content) typeset.Measures) (setRecord, error) {
	s := setRecord{record: r}
	for i := range contents {
		c := &contents[i]
		m := measures(c)
		boxes, report, err := j.setter.Set(c, m)
		if err != nil {
			return s, err
		}
		withheld := c.For != "" && j.coarsened(r)
		for _, b := range boxes {
			s.labels = append(s.labels, SetLabel{b.Ref, b.Size, report, report.Text < m.Text, withheld})
			s.encoded = append(s.encoded, layout.Encode(b))
		}
	}
	return s, nil
}

// setAll reads the table again and sets every label that was asked for, in
// order. bad holds the rows to leave out.
func (j *Job) setAll(t *Table, q *Request, bad []BadRecord, each func(setRecord) error) error {
	e := check.New(j.checkOptions())
	measures := j.measures(q)
	o, err := j.formOptions(q)
	if err != nil {
		return err
	}
	isBad := map[int]bool{}
	for _, b := range bad {
		isBad[b.Row] = true
	}
	work := func(_ int, row *table.Row) (setRecord, error) {
		r, _ := e.Row(row)
		if r.Empty() || isBad[r.Row] || !t.Only.Match(r) {
			return setRecord{}, nil
		}
		return j.setContents(r, j.contents(q, &o, r), measures)
	}
	var faults []error // of all records: every one is to be named
	err = layout.InOrder(t.Rows(), j.Workers, work, func(s setRecord, err error) error {
		var word *typeset.Error
		switch {
		case errors.As(err, &word):
			faults = append(faults, err)
			return nil
		case err != nil:
			return err
		case s.record == nil || len(faults) > 0:
			return nil
		}
		return each(s)
	})
	return errors.Join(append(faults, err)...)
}

// checkAndSet checks the table and sets its labels: the first half of every
// print. each is called in the order of the table once the whole table was
// found fit to print.
func (j *Job) checkAndSet(t *Table, q *Request, say func(label.Finding) error, each func(*Summary, setRecord) error) (Summary, error) {
	switch {
	case q.Kind == label.Slip:
		return j.slipsAndSet(t, q, say, each)
	case q.Kind == label.Tag && q.Bundle != nil:
		return j.bundlesAndSet(t, q, say, each)
	}
	var in *scope
	if q.Kind == label.Tag { // a plant is tagged before all is known of it
		in = tagScope
	}
	s, err := j.checkScoped(t, in, say)
	if err != nil {
		return s, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return s, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	if s.Errors > 0 && (!q.ExceptBad || s.Errors > 0 && len(s.Bad) == 0) {
		return s, ErrData
	}
	if err := j.setAll(t, q, s.Bad, func(r setRecord) error { return each(&s, r) }); err != nil {
		return s, err
	}
	if t.Digest() != s.Digest {
		return s, fmt.Errorf("%s was changed while it was being printed; run the command again", t.Source().Name())
	}
	return s, nil
}

func quoted(texts []string) string {
	q := make([]string, len(texts))
	for i, t := range texts {
		q[i] = fmt.Sprintf("%q", t)
	}
	return strings.Join(q, ", ")
}

// Print checks the table and writes the labels as PDF. Findings go to say as
// they come. write is called once, when all labels are set, with the function
// that writes the pages.
func (j *Job) Print(t *Table, q Request, say func(label.Finding) error, write func(func(io.Writer) error) error) (Summary, Report, error) {
	rep := Report{Sizes: map[layout.Size]int{}, Gifts: map[string]int{}}
	spool, err := newSpool()
	if err != nil {
		return Summary{}, rep, err
	}
	defer spool.close()
	paper, err := j.paper(&q)
	if err != nil {
		return Summary{}, rep, err
	}
	if err := q.valid(); err != nil {
		return Summary{}, rep, err
	}
	s, err := j.checkAndSet(t, &q, say, func(s *Summary, r setRecord) error {
		if len(r.labels) == 0 {
			rep.Without++
			return nil
		}
		rep.Records += max(1, r.count)
		for i, l := range r.labels {
			if q.Each != nil {
				q.Each(l)
			}
			rep.count(l)
			if err := spool.add(l.Size, r.encoded[i]); err != nil {
				return err
			}
		}
		if q.Progress != nil {
			q.Progress(rep.Records+rep.Without, s.Chosen-len(s.Bad))
		}
		return nil
	})
	if err != nil {
		return s, rep, err
	}
	if rep.Labels == 0 {
		return s, rep, ErrNone
	}
	if err := spool.done(); err != nil {
		return s, rep, err
	}
	papers, pages, err := j.impose(&q, paper, spool)
	if err != nil {
		return s, rep, err
	}
	rep.Papers, rep.PaperSize = papers, paper
	err = write(func(w io.Writer) error {
		return pdf.Write(w, pages, j.fonts, pdf.Options{
			Title: q.title(t.Source().Name()), Lang: string(j.langs[0]), Creator: "cornerslip " + Version, Date: j.o.Date, Workers: j.Workers,
		})
	})
	return s, rep, err
}

func (q *Request) valid() error {
	switch q.Symbology {
	case "", symbol.Code128, symbol.Code39, symbol.DataMatrix, symbol.QR:
		return nil
	}
	return fmt.Errorf("no barcode is called %q; there are code128, code39, datamatrix and qr", q.Symbology)
}

func (q *Request) title(table string) string {
	if q.Title != "" {
		return q.Title
	}
	words := map[label.Kind]string{label.Sheet: "Sheet labels", label.Packet: "Packet labels", label.Barcode: "Barcode labels", label.Slip: "Slips", label.Tag: "Tags"}
	return words[q.Kind] + " of " + table
}

func (rep *Report) count(l SetLabel) {
	rep.Labels++
	rep.Sizes[l.Size]++
	if l.Ref.For != "" {
		rep.Gifts[l.Ref.For]++
	}
	if l.Ref.Of > 1 && l.Ref.Label == 1 {
		rep.Continued = append(rep.Continued, l)
	}
	if l.Smaller {
		rep.Smaller = append(rep.Smaller, l)
	}
	if l.Withheld && l.Ref.Label == 1 {
		rep.Withheld = append(rep.Withheld, l)
	}
}

// impose places the spooled boxes on paper.
func (j *Job) impose(q *Request, paper layout.Size, s *spool) (int, iter.Seq2[layout.Page, error], error) {
	if q.Mount {
		m := impose.Mount{Sheet: paper, Margin: layout.Millimetres(j.House.Mount.MarginMM)}
		pages, err := m.Pages(s.sizes, s.box)
		return len(s.sizes), pages, err
	}
	g := impose.Gang{Paper: paper, NoTicks: !j.House.Paper.Ticks, Margin: layout.Millimetres(j.House.Printer.MarginMM)}
	if j.House.Paper.Order == "stack" {
		g.Order = impose.Stack
	}
	var papers int
	var all []iter.Seq2[layout.Page, error]
	for _, group := range byWidth(q, s.sizes) {
		sizes := make([]layout.Size, len(group))
		for i, k := range group {
			sizes[i] = s.sizes[k]
		}
		plan, err := g.Plan(sizes)
		if err != nil {
			return 0, nil, err
		}
		papers += plan.Len()
		all = append(all, plan.Pages(func(i int) (*layout.Box, error) { return s.box(group[i]) }))
	}
	return papers, func(yield func(layout.Page, error) bool) {
		for _, pages := range all {
			for p, err := range pages {
				if !yield(p, err) {
					return
				}
			}
		}
	}, nil
}

// byWidth parts packet labels by their widths: the small ones, and the whole
// labels of mosses after them, each on papers of their own, cut better than
// both mixed. Other labels are of one width.
func byWidth(q *Request, sizes []layout.Size) [][]int {
	var widths []layout.Length
	groups := map[layout.Length][]int{}
	for i, size := range sizes {
		w := size.W
		if q.Kind != label.Packet {
			w = 0
		}
		if groups[w] == nil {
			widths = append(widths, w)
		}
		groups[w] = append(groups[w], i)
	}
	slices.Sort(widths)
	out := make([][]int, len(widths))
	for i, w := range widths {
		out[i] = groups[w]
	}
	return out
}
