package job

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/name"
	"cornerslip/layout"
)

// A ListRequest asks for a list of records.
type ListRequest struct {
	// Gifts lists what goes to each herbarium instead of the run; To names one
	// of them alone.
	Gifts bool
	To    string
	// Format is "pdf", "csv" or "text".
	Format string
	// Paper is the size of a PDF's pages; "" is the house's.
	Paper string
	// ExceptBad lists the good records although others have errors.
	ExceptBad bool
	Progress  func(done, of int)
}

// A ListReport says what was listed.
type ListReport struct {
	Records   int
	Lists     int // one, or one for each herbarium
	Pages     int // of a PDF
	Withheld  int // gifts that name no exact place
	Warnings  []string
	PaperSize layout.Size
}

// A listTable is a list in the making: a heading, rows, and what stands below
// them. Its writers are PDF, CSV and text.
type listTable struct {
	title, under string
	columns      []listColumn
}

type listColumn struct {
	head  string // as people read it
	term  string // as programs do: the heading in CSV
	width layout.Length
	share int
	right bool
}

// A listWriter writes lists, one after another.
type listWriter interface {
	begin(listTable) error
	row(cells [][]label.Run) error
	end(totals []string) error
	// finish writes everything.
	finish() error
}

// List checks the table and writes a list. Findings go to say as they come.
// write is called once, with the function that writes the file.
func (j *Job) List(t *Table, q ListRequest, say func(label.Finding) error, write func(func(io.Writer) error) error) (Summary, ListReport, error) {
	var rep ListReport
	paper, err := j.paper(&Request{Paper: q.Paper, On: OnPaper})
	if err != nil {
		return Summary{}, rep, err
	}
	rep.PaperSize = paper
	var out listWriter
	var temp *spool
	switch q.Format {
	case "pdf":
		if temp, err = newSpool(); err != nil {
			return Summary{}, rep, err
		}
		defer temp.close()
		out = &pdfLists{j: j, paper: paper, spool: temp, rep: &rep, write: write, table: baseName(t.Source().Name())}
	case "csv":
		out = &csvLists{write: write}
	case "text":
		out = &textLists{write: write}
	default:
		return Summary{}, rep, fmt.Errorf("a list is not written as %q; there are pdf, csv and text", q.Format)
	}
	var s Summary
	if q.Gifts || q.To != "" {
		s, err = j.giftLists(t, &q, say, &rep, out)
	} else {
		s, err = j.runList(t, &q, say, &rep, out)
	}
	if err != nil {
		return s, rep, err
	}
	return s, rep, out.finish()
}

func mmWide(n layout.Length) layout.Length { return n * layout.MM }

// runList lists all records in the order of the table, for the binder.
func (j *Job) runList(t *Table, q *ListRequest, say func(label.Finding) error, rep *ListReport, out listWriter) (Summary, error) {
	rep.Lists = 1
	var total runTotals
	begun := false
	request := &Request{Kind: allKinds, ExceptBad: q.ExceptBad}
	s, err := j.checkAndSet(t, request, say, func(s *Summary, r setRecord) error {
		if !begun {
			begun = true
			if err := out.begin(listTable{
				title: "Run list", under: fmt.Sprintf("%s, %s", baseName(t.Source().Name()), j.o.Date.Format("2006-01-02")),
				columns: []listColumn{
					{head: "gathering", term: "gathering", width: mmWide(27)},
					{head: "cat. no.", term: "catalogNumber", width: mmWide(25)},
					{head: "name", term: "scientificName"},
					{head: "label, mm", term: "label", width: mmWide(16)},
					{head: "copies", term: "copies", width: mmWide(10), right: true},
					{head: "packet", term: "packet", width: mmWide(11)},
					{head: "duplicates to", term: "duplicatesTo", width: mmWide(25)},
				},
			}); err != nil {
				return err
			}
		}
		rep.Records++
		total.add(r)
		if q.Progress != nil {
			q.Progress(rep.Records, s.Chosen-len(s.Bad))
		}
		return out.row(j.runRow(r))
	})
	if err != nil {
		return s, err
	}
	if rep.Records == 0 {
		return s, ErrNone
	}
	return s, out.end(total.lines())
}

// allKinds asks contents for all labels of a record.
const allKinds label.Kind = "every"

// runRow returns the cells of a record.
func (j *Job) runRow(r setRecord) [][]label.Run {
	packet := "no"
	if r.record.Count(check.Packet) > 0 {
		packet = "yes"
	}
	return [][]label.Run{
		keyRuns(r.record),
		exactly(r.record.Text("catalogNumber")),
		j.nameRuns(r.record),
		said(ownLabel(r.labels)),
		said(strconv.Itoa(max(1, r.record.Copies))),
		said(packet),
		said(strings.Join(r.record.DuplicatesTo, ", ")),
	}
}

// keyRuns sets collector and number, which stay together.
func keyRuns(r *check.Record) []label.Run {
	return []label.Run{{Text: r.Key(), Keep: true, Exact: true, Origin: r.Origin}}
}

func exactly(text string) []label.Run { return []label.Run{{Text: text, Keep: true, Exact: true}} }

// nameRuns sets the scientific name as labels do; a plant without one is said
// to be unnamed.
func (j *Job) nameRuns(r *check.Record) []label.Run {
	if r.Name == "" {
		return said("(unnamed)")
	}
	return name.Runs(r.Name, r.Parts, name.Options{UprightFamilies: j.House.Name.FamilyStyle != "italic"})
}

// ownLabel returns the size of the house's own first label, and how many it
// goes on over.
func ownLabel(labels []SetLabel) string {
	for _, l := range labels {
		if l.Ref.For != "" {
			continue
		}
		s := l.Size.W.Decimal(layout.MM, 1) + " × " + l.Size.H.Decimal(layout.MM, 1)
		if l.Ref.Of > 1 {
			s += ", " + strconv.Itoa(l.Ref.Of) + " labels"
		}
		return s
	}
	return ""
}

// runTotals counts what a run list ends with.
type runTotals struct {
	records, sheets, packets, boxes, jars int
	labels, packetLabels                  int
	gifts                                 map[string]int
	sizes                                 map[layout.Size]int
}

func (n *runTotals) add(r setRecord) {
	if n.gifts == nil {
		n.gifts, n.sizes = map[string]int{}, map[layout.Size]int{}
	}
	n.records++
	n.sheets += r.record.Count(check.Sheet)
	n.packets += r.record.Count(check.Packet)
	n.boxes += r.record.Count(check.Box)
	n.jars += r.record.Count(check.Jar)
	for _, l := range r.labels {
		if l.Ref.Kind == string(label.Packet) && l.Ref.For == "" {
			n.packetLabels++
		} else {
			n.labels++
			n.sizes[l.Size]++
		}
		if l.Ref.For != "" && l.Ref.Label <= 1 {
			n.gifts[l.Ref.For]++
		}
	}
}

func (n *runTotals) lines() []string {
	var parts []string
	for _, p := range []struct {
		n    int
		word string
		more string
	}{{n.sheets, "sheet", "sheets"}, {n.packets, "packet", "packets"}, {n.boxes, "box", "boxes"}, {n.jars, "jar", "jars"}} {
		if p.n > 0 {
			parts = append(parts, counted(p.n, p.word, p.more))
		}
	}
	out := []string{counted(n.records, "record", "records") + ": " + strings.Join(parts, ", ") + "."}
	sizes := slices.SortedFunc(maps.Keys(n.sizes), func(a, b layout.Size) int {
		if a.W != b.W {
			return int(a.W - b.W)
		}
		return int(a.H - b.H)
	})
	var bySize []string
	for _, s := range sizes {
		bySize = append(bySize, fmt.Sprintf("%d of %s", n.sizes[s], s))
	}
	line := counted(n.labels, "label", "labels")
	if len(bySize) > 0 {
		line += ": " + strings.Join(bySize, ", ")
	}
	if n.packetLabels > 0 {
		line += "; " + counted(n.packetLabels, "packet label", "packet labels")
	}
	out = append(out, line+".")
	if len(n.gifts) > 0 {
		var to []string
		for _, code := range slices.Sorted(maps.Keys(n.gifts)) {
			to = append(to, fmt.Sprintf("%s %d", code, n.gifts[code]))
		}
		out = append(out, "Duplicates: "+strings.Join(to, ", ")+".")
	}
	return out
}

func counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}

// giftLists lists the duplicates of each herbarium, to go in the parcel. Places
// that are kept from the labels of duplicates are kept from the lists too.
func (j *Job) giftLists(t *Table, q *ListRequest, say func(label.Finding) error, rep *ListReport, out listWriter) (Summary, error) {
	s, err := j.Check(t, say)
	if err != nil {
		return s, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return s, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	if s.fatal(q.ExceptBad) {
		return s, ErrData
	}
	bad := map[int]bool{}
	for _, b := range s.Bad {
		bad[b.Row] = true
	}
	// The table is read once for the codes and once for each of them.
	each := func(do func(*check.Record) error) error {
		return j.scan(t, check.New(j.readOptions()), func(r rowResult) error {
			if !r.chosen || bad[r.record.Row] {
				return nil
			}
			return do(r.record)
		})
	}
	codes := map[string]int{}
	if err := each(func(r *check.Record) error {
		for _, c := range r.DuplicatesTo {
			codes[c]++
		}
		return nil
	}); err != nil {
		return s, err
	}
	herbaria := slices.Sorted(maps.Keys(codes))
	if q.To != "" {
		if codes[q.To] == 0 {
			if len(herbaria) == 0 {
				return s, fmt.Errorf("nothing goes to %s: no record names a herbarium under duplicatesTo", q.To)
			}
			return s, fmt.Errorf("nothing goes to %s; there are duplicates for %s", q.To, strings.Join(herbaria, ", "))
		}
		herbaria = []string{q.To}
	}
	if len(herbaria) == 0 {
		return s, ErrNone
	}
	o, err := j.formOptions(&Request{})
	if err != nil {
		return s, err
	}
	for _, code := range herbaria {
		if err := j.giftList(t, code, &o, each, rep, out); err != nil {
			return s, err
		}
	}
	if t.Digest() != s.Digest {
		return s, fmt.Errorf("%s was changed while it was being listed; run the command again", t.Source().Name())
	}
	return s, nil
}

func (j *Job) giftList(t *Table, code string, o *form.Options, each func(func(*check.Record) error) error, rep *ListReport, out listWriter) error {
	rep.Lists++
	under := baseName(t.Source().Name()) + ", " + j.o.Date.Format("2006-01-02")
	from := j.House.Herbarium.Name
	if from == "" {
		from = j.House.Herbarium.Code
	}
	if from != "" {
		under = "From " + strings.Join(append([]string{from}, j.House.Herbarium.Address...), ", ") + "; " + under
	}
	if err := out.begin(listTable{
		title: giftTitle + code, under: under,
		columns: []listColumn{
			{head: "gathering", term: "gathering", width: mmWide(30)},
			{head: "name", term: "scientificName", share: 5},
			{head: "place", term: "place", share: 5},
			{head: "sheets", term: "sheets", width: mmWide(10), right: true},
			{head: "restrictions", term: "restrictions", share: 3},
		},
	}); err != nil {
		return err
	}
	records, sheets, withheld := 0, 0, 0
	err := each(func(r *check.Record) error {
		n := 0
		for _, c := range r.DuplicatesTo {
			if c == code {
				n++
			}
		}
		if n == 0 {
			return nil
		}
		records++
		sheets += n
		if form.Coarsened(r, *o) {
			withheld++
		}
		return out.row([][]label.Run{keyRuns(r), j.nameRuns(r), giftPlace(r, o), said(strconv.Itoa(n)), restrictions(r)})
	})
	if err != nil {
		return err
	}
	rep.Records += records
	rep.Withheld += withheld
	totals := []string{fmt.Sprintf("%s of %s for %s.", counted(sheets, "duplicate", "duplicates"), counted(records, "gathering", "gatherings"), code)}
	if withheld > 0 {
		totals = append(totals, fmt.Sprintf("The exact place of %s is withheld; ask us for it.", counted(withheld, "gathering", "gatherings")))
	}
	return out.end(totals)
}

// giftPlace is the place as the label of the duplicate words it.
func giftPlace(r *check.Record, o *form.Options) []label.Run {
	contents := append(append(form.Sheet(r, *o), form.Containers(r, *o)...), form.Packets(r, *o)...)
	for _, c := range contents {
		if c.For == "" {
			continue
		}
		for _, b := range c.Blocks {
			if b.Role == label.Place {
				return b.Runs
			}
		}
		return nil
	}
	return nil
}

// restrictions are the conditions on the use of a specimen, and the permits
// whose numbers travel with it.
func restrictions(r *check.Record) []label.Run {
	var runs []label.Run
	for _, term := range []string{"restrictions", "permits"} {
		f := r.Field(term)
		if f.Text == "" {
			continue
		}
		if len(runs) > 0 {
			runs = append(runs, label.Run{Text: "; "})
		}
		runs = append(runs, label.Run{Text: f.Text, Origin: f.Origin})
	}
	return runs
}
