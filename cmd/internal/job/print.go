package job

import (
	"context"
	"errors"
	"fmt"
	"io"
	"iter"
	"path/filepath"
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
	// On says where the labels go: OnPaper, OnMount or OnStickers; "" takes the
	// stickers of a house that has some for barcode labels, else paper.
	On string
	// Paper is what is printed on, by name or size; "" is the house's.
	Paper string
	// Which names the sorts of labels that are printed; nil prints all. On
	// mounts there are those of the house's own sheets alone.
	Which []Sort
	// Order of labels ganged on paper, "across" or "stack"; "" is the house's.
	Order string
	// Gutter is left between labels, in millimetres; nil is the house's.
	Gutter *float64
	// ByDestination begins a new paper for the labels of each herbarium.
	ByDestination bool
	// Start is the first free sticker of the first sheet, "2,3" or a count; ""
	// is the first. Skip are further ones that are used up.
	Start string
	Skip  []string
	// Blank folds packets from blanks of this name or size; "" makes labels to
	// glue. Flap is how far their sides are turned back, in millimetres; 0 is the
	// house's.
	Blank string
	Flap  float64
	// Symbology of the bars; "" is the house's.
	Symbology string
	// ExceptBad prints the good records although others have errors.
	ExceptBad bool
	// Memory keeps what is printed in a register; nil keeps nothing.
	Memory *Memory
	// Title heads the document; "" makes one from kind and table.
	Title string
	// Progress is told how many of the chosen records are done; nil tells
	// nobody.
	Progress func(done, of int)
	// Each is told how every label was set, in order; nil tells nobody.
	Each func(SetLabel)

	packet  *impose.Packet            // of Blank
	just    func(*label.Content) bool // the label that alone is printed; nil prints all
	letters map[int]string            // of rows that share a mount
	mounts  map[int]string            // and the mount they share
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
	LeftOut   map[Sort]int        // labels that do not go where the others do
	Shared    int                 // mounts that hold more than one gathering
	Face      layout.Size         // of folded packets; zero for all else
	// Of a printing that is kept in a register: records whose labels were printed
	// before in the same words, now again; records left out since they were
	// printed before; records left with no label to print now; records that have
	// changed since they were printed, whose labels are left out.
	Again         int
	PrintedBefore int
	Held          int
	Changed       []Changed
	Refused       []error // numbers that may not be printed, a record each
	// Picture shows which stickers of the first sheet are used, for the terminal;
	// "" where labels are not printed on stickers.
	Picture string
	// Scans say how well the barcodes should scan.
	Scans []Scans
	// Warnings say what is not as it should be with the printer or the paper.
	Warnings []string

	title string // of the document
	cuts  []cutPapers
}

func newReport() Report {
	return Report{Sizes: map[layout.Size]int{}, Gifts: map[string]int{}, LeftOut: map[Sort]int{}}
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
	case allKinds:
		return append(append(form.Sheet(r, *o), form.Containers(r, *o)...), form.Packets(r, *o)...)
	}
	return append(form.Sheet(r, *o), form.Containers(r, *o)...)
}

// setRecord is all labels of a record.
type setRecord struct {
	record  *check.Record
	count   int                   // the records it stands for, where that is more than one
	number  string                // the catalogue number where there is no record
	ids     map[int]*check.Record // of slips: the identifications by their rows
	labels  []SetLabel
	encoded [][]byte
	leftOut map[Sort]int
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
	e := check.New(j.readOptions())
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
		contents, left := q.choose(j.contents(q, &o, r))
		set, err := j.setContents(r, contents, measures)
		set.leftOut = left
		return set, err
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
	if s.fatal(q.ExceptBad) {
		return s, ErrData
	}
	if err := j.shareMounts(t, q); err != nil {
		return s, err
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
	rep := newReport()
	if err := j.prepare(&q); err != nil {
		return Summary{}, rep, err
	}
	run, err := newRun()
	if err != nil {
		return Summary{}, rep, err
	}
	defer run.close()
	ctx := context.Background()
	var sum *Summary
	keep := j.keeps(t, &q, &rep, func(r setRecord) error {
		rep.Records += max(1, r.count)
		for i, l := range r.labels {
			if q.Each != nil {
				q.Each(l)
			}
			rep.count(l)
			if err := run.put(&l, r.encoded[i]); err != nil {
				return err
			}
		}
		if q.Progress != nil {
			q.Progress(rep.Records+rep.Without, sum.Chosen-len(sum.Bad))
		}
		return nil
	})
	defer keep.end(ctx)
	s, err := j.checkAndSet(t, &q, say, func(s *Summary, r setRecord) error {
		sum = s
		for sort, n := range r.leftOut {
			rep.LeftOut[sort] += n
		}
		if len(r.labels) == 0 {
			rep.Without++
			return nil
		}
		return keep.take(ctx, r)
	})
	if err == nil {
		err = keep.set(ctx)
	}
	if err != nil {
		return s, rep, err
	}
	if rep.Labels == 0 {
		return s, rep, ErrNone
	}
	if err := run.done(); err != nil {
		return s, rep, err
	}
	if err := j.blanksFit(t, &q, &rep); err != nil {
		return s, rep, err
	}
	rep.title = q.title(t.Source().Name())
	pages, err := j.impose(&q, run, &rep)
	if err != nil {
		return s, rep, err
	}
	err = j.writePages(rep.title, &rep, pages, keep.before(ctx, write))
	return s, rep, err
}

// writePages writes pages as they are to be printed.
func (j *Job) writePages(title string, rep *Report, pages iter.Seq2[layout.Page, error], write func(func(io.Writer) error) error) error {
	pages, warnings, err := j.forPrinter(pages, rep.PaperSize)
	if err != nil {
		return err
	}
	rep.Warnings = append(rep.Warnings, warnings...)
	return j.writePlain(title, graded(pages, rep), write)
}

// writePlain writes pages as they are.
func (j *Job) writePlain(title string, pages iter.Seq2[layout.Page, error], write func(func(io.Writer) error) error) error {
	return write(func(w io.Writer) error {
		return pdf.Write(w, pages, j.fonts, j.pdfOptions(title))
	})
}

func (j *Job) pdfOptions(title string) pdf.Options {
	return pdf.Options{Title: title, Lang: string(j.langs[0]), Creator: "cornerslip " + Version, Date: j.o.Date, Workers: j.Workers}
}

// prepare holds a request against what can be printed, before the table is
// read, and fills in what the house says.
func (j *Job) prepare(q *Request) error {
	switch q.Symbology {
	case "", symbol.Code128, symbol.Code39, symbol.DataMatrix, symbol.QR:
	default:
		return fmt.Errorf("no barcode is called %q; there are code128, code39, datamatrix and qr", q.Symbology)
	}
	if q.Order != "" && q.Order != "across" && q.Order != "stack" {
		return fmt.Errorf("no order of labels is called %q; there are across and stack", q.Order)
	}
	if err := j.prepareWhich(q); err != nil {
		return err
	}
	if err := j.preparePlace(q); err != nil {
		return err
	}
	_, err := j.paper(q)
	return err
}

func (q *Request) title(table string) string {
	if q.Title != "" {
		return q.Title
	}
	words := map[label.Kind]string{label.Sheet: "Sheet labels", label.Packet: "Packet labels", label.Barcode: "Barcode labels", label.Slip: "Slips", label.Tag: "Tags"}
	return words[q.Kind] + " of " + baseName(table)
}

// baseName is how pages call a table: its folders say more about the computer
// than about the trip.
func baseName(table string) string { return filepath.Base(table) }

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
