package job

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/typeset"
)

// Where labels go.
const (
	OnPaper    = "paper"    // many on one sheet, to be cut apart
	OnMount    = "mount"    // each on its mounting sheet
	OnStickers = "stickers" // one in each place of a sheet that is cut already
)

// preparePlace holds what is said of paper, stickers and blanks against each
// other and against the house.
func (j *Job) preparePlace(q *Request) error {
	if q.On == "" {
		q.On = OnPaper
		if q.Kind == label.Barcode && j.House.Stickers.Columns > 0 && q.Paper == "" {
			q.On = OnStickers
		}
	}
	where := []string{OnPaper}
	switch q.Kind {
	case label.Sheet:
		where = append(where, OnMount)
	case label.Packet, label.Barcode:
		where = append(where, OnStickers)
	}
	if !slices.Contains(where, q.On) {
		return fmt.Errorf("these labels do not go on %q; say %s", q.On, strings.Join(where, " or "))
	}
	if q.On == OnStickers {
		if j.House.Stickers.Columns == 0 {
			return errors.New("the house file describes no stickers; fill in columns, rows and sizes under [stickers]")
		}
		if _, err := j.grid(q); err != nil {
			return err
		}
	} else if q.Start != "" || len(q.Skip) > 0 {
		return errors.New("places are started at or skipped on sheets of stickers; describe yours under [stickers] in the house file and print on stickers")
	}
	if q.Blank == "" {
		return nil
	}
	if q.Kind != label.Packet || q.On != OnPaper {
		return errors.New("blanks that fold are made of packet labels on paper alone")
	}
	size, err := impose.ParseBlank(q.Blank)
	if err != nil {
		return err
	}
	q.packet = &impose.Packet{Blank: size, Flap: layout.Millimetres(j.House.Packet.FlapMM)}
	if q.Flap != 0 {
		q.packet.Flap = layout.Millimetres(q.Flap)
	}
	return q.packet.Valid()
}

// impose places a run on paper and says how that went.
func (j *Job) impose(q *Request, r *run, rep *Report) (iter.Seq2[layout.Page, error], error) {
	var err error
	if rep.PaperSize, err = j.paper(q); err != nil {
		return nil, err
	}
	switch {
	case q.On == OnMount:
		return j.onMounts(q, r, rep)
	case q.On == OnStickers:
		return j.onStickers(q, r, rep)
	case q.packet != nil:
		return j.onBlanks(q, r, rep)
	}
	return j.onPaper(q, r, rep)
}

// gang returns how labels are ganged on this house's paper.
func (j *Job) gang(q *Request, paper layout.Size) impose.Gang {
	p := j.House.Paper
	g := impose.Gang{
		Paper: paper, NoTicks: !p.Ticks, Gutter: layout.Millimetres(p.GutterMM),
		Margin: orNone(layout.Millimetres(j.House.Printer.MarginMM)), Clear: orNone(j.clear(q)),
	}
	if q.Gutter != nil {
		g.Gutter = layout.Millimetres(*q.Gutter)
	}
	if q.Order == "stack" || q.Order == "" && p.Order == "stack" {
		g.Order = impose.Stack
	}
	return g
}

// orNone says "none" to package impose, where zero asks for a default.
func orNone(l layout.Length) layout.Length {
	if l == 0 {
		return -1
	}
	return l
}

// clear returns what all labels of the request keep free of ink along their
// edges.
func (j *Job) clear(q *Request) layout.Length {
	all := []typeset.Measures{j.measuresOf(q.Kind, q)}
	if q.Kind == label.Packet {
		all = append(all, j.fullPacket(q))
	}
	least := all[0].Top
	for _, m := range all {
		least = min(least, m.Top, m.Right, m.Bottom, m.Left)
	}
	return least
}

// A section is labels that get papers of their own.
type section struct {
	labels []int
	plan   *impose.Plan
}

// onPaper gangs labels.
func (j *Job) onPaper(q *Request, r *run, rep *Report) (iter.Seq2[layout.Page, error], error) {
	foot := j.footer(rep.title)
	var sections []section
	joined := 0 // papers if neighbours shared their cuts
	for _, labels := range r.sections(q) {
		g := j.gang(q, rep.PaperSize)
		base := rep.Papers
		g.Footer = func(page, _ int) []*layout.Box { return foot(base+page, rep.Papers) }
		g.Name = func(i int) string { return r.name(labels[i]) }
		plan, err := g.Plan(r.sized(labels))
		if err != nil {
			return nil, err
		}
		rep.cuts = append(rep.cuts, cutPapersOf(plan, base)...)
		rep.Papers += plan.Len()
		if kept := max(g.Clear, 0); g.Gutter > 0 || max(g.Margin, 0) > kept {
			g.Gutter, g.Clear = 0, max(g.Clear, g.Margin)
			if p, err := g.Plan(r.sized(labels)); err == nil {
				joined += p.Len()
			}
		}
		sections = append(sections, section{labels, plan})
	}
	if joined > 0 && 3*joined <= 2*rep.Papers {
		rep.Warnings = append(rep.Warnings, j.wasted(q, rep.Papers, joined))
	}
	return func(yield func(layout.Page, error) bool) {
		for _, s := range sections {
			for page, err := range s.plan.Pages(func(i int) (*layout.Box, error) { return r.box(s.labels[i]) }) {
				if !yield(page, err) || err != nil {
					return
				}
			}
		}
	}, nil
}

// wasted says what makes a run take so many papers.
func (j *Job) wasted(q *Request, papers, joined int) string {
	blank, free := layout.Millimetres(j.House.Printer.MarginMM), j.clear(q)
	if blank > free {
		return fmt.Sprintf("the printer leaves %s blank and the labels only %s, so they keep off the paper's edge and take %d papers; labels with a margin of %s and no gutter would take %d",
			blank, free, papers, blank, joined)
	}
	return fmt.Sprintf("with the gutter the labels take %d papers; without it %d would do", papers, joined)
}

// sections parts a run: packet labels by their widths, the small ones and the
// whole labels of mosses after them, which are cut better apart; and, where that
// is asked for, the labels of each herbarium, our own first.
func (r *run) sections(q *Request) [][]int {
	type key struct {
		goes  int // in order of appearance
		width layout.Length
	}
	herbaria := map[string]int{"": 0}
	groups := map[key][]int{}
	for i, size := range r.sizes {
		var k key
		if q.Kind == label.Packet {
			k.width = size.W
		}
		if goes := r.labels[i].goes; q.ByDestination {
			if _, ok := herbaria[goes]; !ok {
				herbaria[goes] = len(herbaria)
			}
			k.goes = herbaria[goes]
		}
		groups[k] = append(groups[k], i)
	}
	keys := make([]key, 0, len(groups))
	for k := range groups {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, b key) int {
		if a.goes != b.goes {
			return a.goes - b.goes
		}
		return int(a.width - b.width)
	})
	out := make([][]int, len(keys))
	for i, k := range keys {
		out[i] = groups[k]
	}
	return out
}

// grid returns the house's sheet of stickers and which of its places are used.
func (j *Job) grid(q *Request) (impose.Grid, error) {
	s := j.House.Stickers
	paper, err := j.paper(q)
	if err != nil {
		return impose.Grid{}, err
	}
	g := impose.Grid{
		Paper: paper, Columns: s.Columns, Rows: s.Rows,
		Place:  layout.Size{W: layout.Millimetres(s.SizeMM[0]), H: layout.Millimetres(s.SizeMM[1])},
		First:  layout.Point{X: layout.Millimetres(s.FirstMM[0]), Y: layout.Millimetres(s.FirstMM[1])},
		Pitch:  layout.Size{W: layout.Millimetres(s.PitchMM[0]), H: layout.Millimetres(s.PitchMM[1])},
		Margin: orNone(layout.Millimetres(j.House.Printer.MarginMM)),
	}
	if q.Start != "" {
		if g.Start, err = g.ParsePlace(q.Start); err != nil {
			return g, err
		}
	}
	for _, text := range q.Skip {
		k, err := g.ParsePlace(text)
		if err != nil {
			return g, err
		}
		g.Skip = append(g.Skip, k)
	}
	if _, err := g.Plan(nil); err != nil {
		return g, fmt.Errorf("%s: %w", j.House.Place("stickers.columns"), err)
	}
	return g, j.reachesStickers(q, &g)
}

// reachesStickers reports stickers whose labels would print where the printer
// leaves the paper blank.
func (j *Job) reachesStickers(q *Request, g *impose.Grid) error {
	blank, free := layout.Millimetres(j.House.Printer.MarginMM), j.clear(q)
	last := g.Last()
	least := min(g.First.X, g.First.Y, g.Paper.W-last.Right(), g.Paper.H-last.Bottom())
	if least+free >= blank {
		return nil
	}
	return fmt.Errorf("%s: the outer stickers begin to print %s from the paper's edge, where the printer leaves %s blank; check first_mm, size_mm and pitch_mm",
		j.House.Place("stickers.first_mm"), least+free, blank)
}

// onStickers puts a label on each sticker.
func (j *Job) onStickers(q *Request, r *run, rep *Report) (iter.Seq2[layout.Page, error], error) {
	g, err := j.grid(q)
	if err != nil {
		return nil, err
	}
	g.Footer, g.Name = j.footer(rep.title), r.name
	plan, err := g.Plan(r.sizes)
	if err != nil {
		return nil, err
	}
	rep.Papers, rep.Picture = plan.Len(), g.Picture(len(r.sizes))
	return plan.Pages(r.box), nil
}

// UsedStickers shows which places of the first sheet n labels take, for the
// terminal; "" where they would not be printed on stickers.
func (j *Job) UsedStickers(q Request, n int) (string, error) {
	if err := j.preparePlace(&q); err != nil || q.On != OnStickers {
		return "", err
	}
	g, err := j.grid(&q)
	if err != nil {
		return "", err
	}
	return g.Picture(n), nil
}

// footer returns what is said of a run on what is cut off its papers: with a
// rule to measure across or down the page, or without.
func (j *Job) footer(title string) impose.Footer {
	if !j.House.Paper.Footer {
		return func(int, int) []*layout.Box { return nil }
	}
	return func(page, pages int) []*layout.Box {
		words := fmt.Sprintf("%s, %s, page %d of %d", title, j.o.Date.Format("2006-01-02"), page, pages)
		const advice = "print at 100 %, on one side"
		line, err := j.setter.Note(typeset.Note{Grey: footGrey}, said(words+", "+advice))
		if err != nil { // a letter that no face has, in the table's name
			words = fmt.Sprintf("page %d of %d", page, pages)
			if line, err = j.setter.Note(typeset.Note{Grey: footGrey}, said(words+", "+advice)); err != nil {
				return nil
			}
		}
		narrow, err := j.setter.Note(typeset.Note{Grey: footGrey, Width: 55 * layout.MM}, said(words), said(advice), said("the rule is 100 mm"))
		if err != nil {
			return nil
		}
		out := []*layout.Box{across(line)}
		if line.Size.W > ruleLength+layout.MM { // the words on two lines
			if two, err := j.setter.Note(typeset.Note{Grey: footGrey}, said(words), said(advice)); err == nil {
				out = append(out, across(two))
			}
		}
		return append(out, down(narrow), line, narrow)
	}
}

const (
	ruleLength = 100 * layout.MM
	footGrey   = layout.Grey(96)
)

// across puts a rule of 100 mm above words.
func across(words *layout.Box) *layout.Box {
	const at, gap = 3 * layout.MM, layout.MM / 2
	b := &layout.Box{Size: layout.Size{W: max(ruleLength+layout.MM, words.Size.W), H: at + gap + words.Size.H}}
	b.Marks = impose.Rule(layout.Point{X: layout.MM / 2, Y: at}, 100, false)
	return under(b, words, layout.Point{X: layout.MM / 2, Y: at + gap})
}

// down puts a rule of 100 mm down the page beside words.
func down(words *layout.Box) *layout.Box {
	const at, gap = 3 * layout.MM, 2 * layout.MM
	b := &layout.Box{Size: layout.Size{W: at + gap + words.Size.W, H: max(ruleLength+layout.MM, words.Size.H)}}
	b.Marks = impose.Rule(layout.Point{X: at, Y: layout.MM / 2}, 100, true)
	return under(b, words, layout.Point{X: at + gap, Y: layout.MM / 2})
}

func under(b, words *layout.Box, at layout.Point) *layout.Box {
	for _, m := range words.Marks {
		b.Marks = append(b.Marks, m.Shifted(at))
	}
	return b
}

func said(s string) []label.Run { return []label.Run{{Text: s}} }

// cutPapers are papers that are cut alike.
type cutPapers struct {
	from, to int // papers, from 1
	plan     *impose.Plan
	page     int // of the plan
}

func cutPapersOf(plan *impose.Plan, base int) []cutPapers {
	var out []cutPapers
	for i := range plan.Len() {
		if n := len(out); n > 0 && plan.SameCuts(i, out[n-1].page) {
			out[n-1].to = base + i + 1
			continue
		}
		out = append(out, cutPapers{base + i + 1, base + i + 1, plan, i})
	}
	return out
}

func (c cutPapers) heading(of int) string {
	if c.from == c.to {
		return fmt.Sprintf("paper %d of %d", c.from, of)
	}
	return fmt.Sprintf("papers %d to %d of %d, cut alike", c.from, c.to, of)
}

// CutList says in words how the papers are cut apart, a line for each cut in
// the order in which they are made.
func (rep *Report) CutList() string {
	var b strings.Builder
	for _, c := range rep.cuts {
		lines := c.plan.CutList(c.page)
		fmt.Fprintf(&b, "%s:\n", c.heading(rep.Papers))
		if len(lines) == 0 {
			b.WriteString("  no cut\n")
		}
		for _, l := range lines {
			fmt.Fprintf(&b, "  %s\n", l)
		}
	}
	return b.String()
}
