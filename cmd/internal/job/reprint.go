package job

import (
	"context"
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"
	"time"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/register"
	"cornerslip/layout"
)

// A Printed is a label that a register kept, as it was printed last, with the
// labels it goes on over.
type Printed struct {
	Labels []register.Kept // in the order in which the words go on; boxes only after Load
	// Earlier are the times at which it was printed before, the newest first.
	Earlier []time.Time
}

// Last is the first of its labels.
func (p *Printed) Last() *register.Kept { return &p.Labels[0] }

// Key names the gathering as people do, "I. Almeida 214"; "" where the label is
// of a bare number.
func (p *Printed) Key() string {
	k := p.Last()
	who := k.Collector
	if all := check.ParseCollectors(who); len(all) > 0 {
		who = all[0]
	}
	return strings.TrimSpace(who + " " + k.Number)
}

// String names the label as people do: "sheet label of VDOURA-0004217,
// I. Almeida 214, Iris boissieri Henriq., Sheet 1 of 2".
func (p *Printed) String() string {
	k := p.Last()
	var parts []string
	for _, s := range []string{k.CatalogNumber, p.Key(), k.Name, k.Part} {
		if s != "" && s != k.For {
			parts = append(parts, s)
		}
	}
	if k.For != "" {
		parts = append(parts, "for "+k.For)
	}
	return kindName(k.Kind) + " of " + strings.Join(parts, ", ")
}

func kindName(k label.Kind) string {
	switch k {
	case label.Slip:
		return "slip"
	case label.Container:
		return "box label"
	}
	return string(k) + " label"
}

// mostPrinted bounds how many kept labels are looked at.
const mostPrinted = 300

// FindPrinted returns the printed labels that a text means, the newest first: a
// catalogue number, a scanned barcode, collector and number, or part of a name.
// kind narrows them; "" takes all. more says that there are others.
func FindPrinted(ctx context.Context, r *register.Register, text string, kind label.Kind) (found []Printed, more bool, err error) {
	all, err := r.Find(ctx, text, mostPrinted)
	if err != nil {
		return nil, false, err
	}
	type key struct {
		kind                                                 label.Kind
		part, goes, catalog, collector, number, date, record string
	}
	at := map[key]int{}
	for _, k := range all {
		if kind != "" && k.Kind != kind {
			continue
		}
		id := key{k.Kind, k.Part, k.For, k.CatalogNumber, k.Collector, k.Number, k.Date, ""}
		if k.Kind == label.Slip { // each determination is a slip of its own
			id.record = string(k.Record)
		}
		i, known := at[id]
		if !known {
			i = len(found)
			at[id] = i
			found = append(found, Printed{})
		}
		p := &found[i]
		switch {
		case len(p.Labels) == 0 || p.Last().When.Equal(k.When) && p.Last().Of == k.Of && !p.has(k.Label.Label):
			p.Labels = append(p.Labels, k)
		case !p.Last().When.Equal(k.When) && (len(p.Earlier) == 0 || !p.Earlier[len(p.Earlier)-1].Equal(k.When)):
			p.Earlier = append(p.Earlier, k.When)
		}
	}
	for i := range found {
		slices.SortFunc(found[i].Labels, func(a, b register.Kept) int { return a.Label.Label - b.Label.Label })
	}
	// Those of one printing in its order.
	slices.SortStableFunc(found, func(a, b Printed) int {
		if c := b.Last().When.Compare(a.Last().When); c != 0 {
			return c
		}
		return a.Last().ID - b.Last().ID
	})
	return found, len(all) == mostPrinted, nil
}

// has reports whether the n-th of the labels is there.
func (p *Printed) has(n int) bool {
	return slices.ContainsFunc(p.Labels, func(k register.Kept) bool { return k.Label.Label == n })
}

// Load reads the boxes.
func (p *Printed) Load(ctx context.Context, r *register.Register) error {
	for i, k := range p.Labels {
		full, err := r.Load(ctx, k.ID)
		if err != nil {
			return err
		}
		p.Labels[i] = full
	}
	return nil
}

// A Reprint says how a label is printed again.
type Reprint struct {
	Printed Printed // loaded
	// Marked adds a small line with the day to the label's lower edge.
	Marked bool
	// Start is the first free place of a part-used paper, "2,3" or a count; ""
	// takes a new one. Skip are further places that are used up.
	Start string
	Skip  []string
}

// ErrNoRoom is returned where a label has no room for the line that says that
// it was printed again.
var ErrNoRoom = errors.New("the label has no room for the line \"reprinted\" at its lower edge; print it without")

// Reprint prints a label again, with the marks it had. The request says on
// what; that it was done, and why, is noted in the register.
func (j *Job) Reprint(q Request, p Reprint, write func(func(io.Writer) error) error) (Report, error) {
	rep := newReport()
	k := p.Printed.Last()
	if q.Kind = k.Kind; q.Kind == label.Container {
		q.Kind = label.Sheet // which goes on the same papers
	}
	start, skip := p.Start, p.Skip
	if q.On == OnStickers || q.On == "" && k.Kind == label.Barcode && j.House.Stickers.Columns > 0 && q.Paper == "" {
		q.Start, q.Skip, start, skip = start, skip, "", nil
	}
	if err := j.prepare(&q); err != nil {
		return rep, err
	}
	run, err := newRun()
	if err != nil {
		return rep, err
	}
	defer run.close()
	for i := range p.Printed.Labels {
		b, err := j.kept(&p.Printed.Labels[i], p.Marked && i == 0)
		if err != nil {
			return rep, err
		}
		l := SetLabel{Ref: b.Ref, Size: b.Size}
		rep.Labels++
		rep.Sizes[l.Size]++
		if err := run.put(&l, layout.Encode(b)); err != nil {
			return rep, err
		}
	}
	if err := run.done(); err != nil {
		return rep, err
	}
	rep.Records = 1
	if rep.title = q.Title; rep.title == "" {
		if rep.title = q.title(k.Run.Source); k.Run.Source == "" {
			rep.title = "Barcode label " + k.CatalogNumber
		}
	}
	var pages iter.Seq2[layout.Page, error]
	if start != "" || len(skip) > 0 {
		pages, err = j.onPartUsed(&q, run, &rep, start, skip)
	} else {
		pages, err = j.impose(&q, run, &rep)
	}
	if err != nil {
		return rep, err
	}
	err = j.writePages(rep.title, &rep, pages, q.Memory.noting(write))
	return rep, err
}

// noting returns write, with the reprints noted once the pages are drawn and
// before the file gets its name.
func (m *Memory) noting(write func(func(io.Writer) error) error) func(func(io.Writer) error) error {
	return func(pages func(io.Writer) error) error {
		return write(func(w io.Writer) error {
			if err := pages(w); err != nil {
				return err
			}
			return m.note(context.Background())
		})
	}
}

// note notes the labels that were printed again.
func (m *Memory) note(ctx context.Context) error {
	for _, id := range m.Again {
		if err := m.Register.Reprinted(ctx, m.At, id); err != nil {
			return err
		}
	}
	return nil
}

// kept returns a label's box as it was printed; marked adds the line that says
// that it was printed again.
func (j *Job) kept(k *register.Kept, marked bool) (*layout.Box, error) {
	b, err := layout.Decode(k.Box)
	if err != nil {
		return nil, fmt.Errorf("%s, printed on %s: %w", k.Label, k.When.Format(time.DateOnly), err)
	}
	var missing []string
	for _, m := range b.Marks {
		if t, ok := m.(layout.Text); ok && !slices.Contains(missing, t.Face) {
			if _, ok := j.fonts.Lookup(t.Face); !ok {
				missing = append(missing, t.Face)
			}
		}
	}
	if len(missing) > 0 {
		return nil, fmt.Errorf("%s was set in %s, which is not here; name the house file that has it under [type], as in --house house.toml", k.Label, strings.Join(missing, ", "))
	}
	if !marked {
		return b, nil
	}
	return b, j.markReprinted(b)
}

// markReprinted adds a small line to the lower edge of a label: that it was
// printed again, and when.
func (j *Job) markReprinted(b *layout.Box) error {
	word, err := j.reprintedOn()
	if err != nil {
		return err
	}
	line, err := j.setter.Note(noteReprinted, said(word))
	if err != nil {
		return err
	}
	low := layout.Length(0) // of the ink above
	left := b.Size.W
	for _, l := range layout.Lines(b.Marks) {
		for _, t := range l {
			low, left = max(low, t.At.Y+t.Size*22/100), min(left, t.At.X)
		}
	}
	for _, m := range b.Marks {
		if bars, ok := m.(layout.Bars); ok {
			low = max(low, bars.Bottom())
		}
	}
	const air, edge = layout.MM / 3, 2 * layout.MM
	at := layout.Point{X: max(b.Size.W-left-line.Size.W, edge), Y: b.Size.H - edge - line.Size.H}
	if at.Y < low+air {
		at.Y = low + air
	}
	if at.Y+line.Size.H > b.Size.H-layout.MM {
		return ErrNoRoom
	}
	for _, m := range line.Marks {
		b.Marks = append(b.Marks, m.Shifted(at))
	}
	return nil
}
