package job

import (
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/house"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/typeset"
)

// Words on mounts and guides are quiet.
const (
	spotGrey = layout.Grey(128)
	spotSize = 8 * layout.Pt
)

var (
	cornersByName = map[string]impose.Corner{
		"upper left": impose.UpperLeft, "upper right": impose.UpperRight, "lower left": impose.LowerLeft, "lower right": impose.LowerRight,
	}
	gluesByName = map[string]impose.Glue{"not said": impose.GlueUnsaid, "top": impose.GlueTop, "left": impose.GlueLeft, "all": impose.GlueAll}
	glueWords   = map[string]string{"top": "glued along the dotted edge", "left": "glued along the dotted edge", "all": "glued along all dotted edges"}
)

// mount returns the house's mounting sheet with the spots it has.
func (j *Job) mount(sheet layout.Size) (impose.Mount, error) {
	h := &j.House.Mount
	m := impose.Mount{Sheet: sheet, Margin: orNone(layout.Millimetres(h.MarginMM)), DrawSpots: h.DrawSpots}
	for _, s := range h.Spots() {
		if !s.On {
			continue
		}
		spot := spotOf(&s)
		word, err := j.setter.Note(typeset.Note{Size: spotSize, Grey: spotGrey}, said(spot.Name))
		if err != nil {
			return m, err
		}
		spot.Word = word
		m.Spots = append(m.Spots, spot)
	}
	return m, nil
}

func spotOf(s *house.NamedSpot) impose.Spot {
	return impose.Spot{
		Name: strings.ReplaceAll(s.Name, "_", " "), Corner: cornersByName[s.Corner],
		Size: layout.Size{W: layout.Millimetres(s.SizeMM[0]), H: layout.Millimetres(s.SizeMM[1])},
		Off:  layout.Point{X: layout.Millimetres(s.OffMM[0]), Y: layout.Millimetres(s.OffMM[1])},
	}
}

// onMounts puts the label of each sheet on a mount, with its continuation above
// it. Gatherings that share a mount stand on the mount of the first of them.
func (j *Job) onMounts(q *Request, r *run, rep *Report) (iter.Seq2[layout.Page, error], error) {
	m, err := j.mount(rep.PaperSize)
	if err != nil {
		return nil, err
	}
	m.Name = r.name
	// The sheet is printed as it is: what the printer cannot reach would be lost.
	blank, free := layout.Millimetres(j.House.Printer.MarginMM), layout.Millimetres(j.House.Mount.MarginMM)+j.clear(q)
	if free < blank {
		return nil, fmt.Errorf("%s: labels begin to print %s from the mount's edges, where the printer leaves %s blank; mount.margin_mm = %s would do",
			j.House.Place("mount.margin_mm"), free, blank, (blank-j.clear(q)).Decimal(layout.MM, 2))
	}
	var mounts [][][]int
	shared := map[string]int{}
	for i, l := range r.labels {
		if !l.first {
			last := &mounts[len(mounts)-1]
			if at, ok := shared[q.mounts[l.row]]; ok {
				last = &mounts[at]
			}
			g := len(*last) - 1
			(*last)[g] = append((*last)[g], i)
			continue
		}
		key := q.mounts[l.row]
		if key == "" {
			mounts = append(mounts, [][]int{{i}})
			continue
		}
		at, ok := shared[key]
		if !ok {
			at = len(mounts)
			shared[key] = at
			mounts = append(mounts, nil)
		}
		mounts[at] = append(mounts[at], []int{i})
	}
	for _, at := range shared {
		if len(mounts[at]) > 1 {
			rep.Shared++
		}
	}
	rep.Papers = len(mounts)
	return m.Shared(mounts, r.sizes, r.box)
}

// shareMounts reads which records share a mount, and gives each its letter in
// the order of the table. Letters do not depend on which records are chosen, so
// that one label printed again, or a slip, has the same.
func (j *Job) shareMounts(t *Table, q *Request) error {
	if q.Kind != label.Sheet && q.Kind != label.Slip || t.Index("mount") < 0 {
		return nil
	}
	type member struct {
		row, sheets int
		at, key     string
	}
	members := map[string][]member{}
	var names []string
	err := j.scan(t, check.New(j.readOptions()), func(r rowResult) error {
		name := r.record.Text("mount")
		if name == "" {
			return nil
		}
		if members[name] == nil {
			names = append(names, name)
		}
		members[name] = append(members[name], member{r.record.Row, r.record.Count(check.Sheet), r.record.Origin.String(), r.record.Key()})
		return nil
	})
	if err != nil {
		return err
	}
	q.letters, q.mounts = map[int]string{}, map[int]string{}
	for _, name := range names {
		all := members[name]
		if len(all) < 2 {
			continue
		}
		if len(all) > 26 {
			return fmt.Errorf("%d records share the mount %q; there are letters for 26", len(all), name)
		}
		for i, m := range all {
			if m.sheets != 1 {
				return fmt.Errorf("%s: %s shares the mount %q with %s and has %d sheets: a gathering that shares a mount has one",
					m.at, m.key, name, all[(i+1)%len(all)].key, m.sheets)
			}
			q.letters[m.row] = string(rune('A' + i))
			q.mounts[m.row] = name
		}
	}
	return nil
}

// Guide writes a sheet to lay under or beside a mount, at its true size: the
// label's room, the spots, the room for the plant, and centimetres along the
// edges. paper is another size of mount, by name; "" is the house's.
func (j *Job) Guide(paper string, write func(func(io.Writer) error) error) (Report, error) {
	rep := Report{Papers: 1}
	q := &Request{Kind: label.Sheet, On: OnMount, Paper: paper}
	var err error
	if rep.PaperSize, err = j.paper(q); err != nil {
		return rep, err
	}
	m, err := j.mount(rep.PaperSize)
	if err != nil {
		return rep, err
	}
	page, err := j.guide(&m, rep.PaperSize)
	if err != nil {
		return rep, err
	}
	pages := func(yield func(layout.Page, error) bool) { yield(page, nil) }
	err = j.writePages("Guide for mounting sheets of "+rep.PaperSize.String(), &rep, pages, write)
	return rep, err
}

func (j *Job) guide(m *impose.Mount, sheet layout.Size) (layout.Page, error) {
	h := j.House
	size := layout.Size{W: layout.Millimetres(h.Label.WidthMM), H: layout.Millimetres(slices.Max(h.Label.HeightsMM))}
	least := layout.Size{W: size.W, H: layout.Millimetres(slices.Min(h.Label.HeightsMM))}
	g := impose.Guide{Label: size, Glue: gluesByName[h.Mount.Glue], Margin: orNone(layout.Millimetres(h.Printer.MarginMM))}
	words := []struct {
		to   **layout.Box
		says []string
	}{
		{&g.LabelWord, []string{"label, " + least.String() + " in the corner", "and up to " + size.H.Decimal(layout.MM, 1) + " mm high"}},
		{&g.FreeWord, []string{
			"plant",
			"Mounting sheet of " + sheet.String() + ", printed at 100 %: ticks are centimetres apart.",
			"Corners: places kept free. Dashed: room for the plant.",
		}},
	}
	for _, h := range lengths(h.Label.HeightsMM) {
		if h < size.H {
			g.Lower = append(g.Lower, h)
		}
	}
	if size == least {
		words[0].says = []string{"label, " + size.String()}
	}
	if w := glueWords[h.Mount.Glue]; w != "" {
		words[0].says = append(words[0].says, w)
	}
	for _, w := range words {
		var lines [][]label.Run
		for _, s := range w.says {
			lines = append(lines, said(s))
		}
		b, err := j.setter.Note(typeset.Note{Size: spotSize, Grey: spotGrey}, lines...)
		if err != nil {
			return layout.Page{}, err
		}
		*w.to = b
	}
	var figureErr error
	g.Figure = func(cm int) *layout.Box {
		b, err := j.setter.Note(typeset.Note{Size: 6 * layout.Pt, Grey: spotGrey}, said(fmt.Sprint(cm)))
		if err != nil {
			figureErr = err
		}
		return b
	}
	page, err := m.Guide(g)
	if err == nil {
		err = figureErr
	}
	return page, err
}
