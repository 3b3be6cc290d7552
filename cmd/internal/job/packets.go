package job

import (
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/lang"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/typeset"
)

// nearFold is how near ink may come to a fold.
const nearFold = 4 * layout.MM

// onFlap fits measures into the room that a folded packet has for its label.
// Three of its edges are folds; the lower one is cut, and may be the paper's
// own edge.
func (j *Job) onFlap(m typeset.Measures, room layout.Size) typeset.Measures {
	m.Width, m.Heights = room.W, []layout.Length{room.H}
	m.Left, m.Right, m.Top = nearFold, nearFold, nearFold
	m.Bottom = max(m.Bottom, layout.Millimetres(j.House.Printer.MarginMM))
	return m
}

// onBlanks puts labels on blanks that fold into packets.
func (j *Job) onBlanks(q *Request, r *run, rep *Report) (iter.Seq2[layout.Page, error], error) {
	pages, err := j.blankPages(q, len(r.sizes), rep, r.box)
	return pages, err
}

func (j *Job) blankPages(q *Request, n int, rep *Report, box func(i int) (*layout.Box, error)) (iter.Seq2[layout.Page, error], error) {
	rep.Face = q.packet.Face()
	legend, err := j.packetLegend(q.packet)
	if err != nil {
		return nil, err
	}
	p := impose.Packets{Packet: *q.packet, Gang: j.gang(q, rep.PaperSize), Legend: legend}
	p.Gang.NoTicks = false // without its outline no blank can be cut
	p.Gang.Clear = min(j.onFlap(j.measuresOf(label.Packet, q), q.packet.Room()).Bottom, q.packet.Flap+nearFold)
	p.Gang.Footer = j.footer(rep.title)
	plan, err := p.Plan(n)
	if err != nil {
		return nil, err
	}
	rep.Papers, rep.cuts = plan.Len(), cutPapersOf(plan.Plan, 0)
	return plan.Pages(box), nil
}

// packetLegend names the lines of a blank and says how it is folded, on what
// becomes its back.
func (j *Job) packetLegend(p *impose.Packet) (*layout.Box, error) {
	const sample, gap = 12 * layout.MM, 2 * layout.MM
	face := p.Face()
	b := &layout.Box{}
	for _, l := range []struct {
		style impose.LineStyle
		says  string
	}{
		{impose.CutLine, "cut"},
		{impose.FoldAway, "fold back: first below, then above"},
		{impose.FoldTowards, "fold forward: last, both sides"},
	} {
		words, err := j.setter.Note(typeset.Note{Size: 13 * layout.Pt / 2, Grey: footGrey}, said(l.says))
		if err != nil {
			return nil, err
		}
		b.Marks = append(b.Marks, l.style.Sample(layout.Point{Y: b.Size.H + words.Size.H/2}, sample))
		under(b, words, layout.Point{X: sample + gap, Y: b.Size.H})
		b.Size.W = max(b.Size.W, sample+gap+words.Size.W)
		b.Size.H += words.Size.H
	}
	words, err := j.setter.Note(typeset.Note{Size: 13 * layout.Pt / 2, Grey: footGrey}, said("closed: "+rounded(face)))
	if err != nil {
		return nil, err
	}
	b.Size.H += layout.MM
	under(b, words, layout.Point{Y: b.Size.H})
	b.Size.H += words.Size.H
	return b, nil
}

// rounded writes a size in whole millimetres, as a folded packet is measured.
func rounded(s layout.Size) string {
	return s.W.Decimal(layout.MM, 0) + " × " + s.H.Decimal(layout.MM, 0) + " mm"
}

// blanksFit reports the labels whose words do not fit the packets they are to
// be folded into, and the blank that would hold them.
func (j *Job) blanksFit(t *Table, q *Request, rep *Report) error {
	if q.packet == nil || len(rep.Continued) == 0 {
		return nil
	}
	var keys []string
	rows := &Selection{}
	for _, l := range rep.Continued {
		if !slices.Contains(keys, l.Ref.Key) {
			keys = append(keys, l.Ref.Key)
			rows.wants = append(rows.wants, want{text: l.Ref.Key, from: l.Ref.Row, to: l.Ref.Row})
		}
	}
	err := fmt.Sprintf("the words of %s do not fit the front of a packet folded from %s, which has %s for them",
		strings.Join(keys, ", "), q.Blank, rounded(q.packet.Room()))
	blanks := impose.Blanks()
	slices.SortStableFunc(blanks, func(a, b impose.Blank) int {
		return int((a.Size.W/layout.MM)*(a.Size.H/layout.MM) - (b.Size.W/layout.MM)*(b.Size.H/layout.MM))
	})
	for _, b := range blanks {
		p := impose.Packet{Blank: b.Size, Flap: q.packet.Flap}
		room, has := p.Room(), q.packet.Room()
		if p.Valid() != nil || room.W < has.W && room.H < has.H {
			continue
		}
		try := *q
		try.packet = &p
		fits := true
		sub := *t
		sub.Only = rows
		if e := j.setAll(&sub, &try, nil, func(r setRecord) error {
			for _, l := range r.labels {
				fits = fits && l.Ref.Of < 2
			}
			return nil
		}); e == nil && fits {
			return fmt.Errorf("%s; --blank %s would do", err, b.Name)
		}
	}
	return fmt.Errorf("%s; print them as labels to glue, without --blank", err)
}

// PrintEmpty writes n blanks that fold into packets, to be filled in by hand.
func (j *Job) PrintEmpty(q Request, n int, write func(func(io.Writer) error) error) (Report, error) {
	rep := Report{Labels: n}
	q.Kind = label.Packet
	if err := j.prepare(&q); err != nil {
		return rep, err
	}
	if q.packet == nil {
		return rep, fmt.Errorf("packets to fill in by hand are folded from blanks; name one, such as A5")
	}
	if n < 1 || n > 10000 {
		return rep, fmt.Errorf("%d packets: 1 to 10000 are possible", n)
	}
	boxes, _, err := j.setter.Set(j.emptyPacket(), j.onFlap(j.measuresOf(label.Packet, &q), q.packet.Room()))
	if err != nil {
		return rep, err
	}
	if len(boxes) > 1 {
		return rep, fmt.Errorf("a packet folded from %s has %s for its label, too little for lines to write on; take a larger blank", q.Blank, rounded(q.packet.Room()))
	}
	if rep.PaperSize, err = j.paper(&q); err != nil {
		return rep, err
	}
	rep.title = "Packets"
	pages, err := j.blankPages(&q, n, &rep, func(int) (*layout.Box, error) { return boxes[0], nil })
	if err != nil {
		return rep, err
	}
	err = j.writePages(rep.title, &rep, pages, write)
	return rep, err
}

// emptyPacket is the label of a packet with lines for collector and number, the
// sheet it belongs to, and what is in it.
func (j *Job) emptyPacket() *label.Content {
	v := lang.Words(j.langs[0])
	c := &label.Content{Kind: label.Packet, Lang: string(j.langs[0])}
	if name := j.House.Herbarium.Name; name != "" && j.House.Packet.Heading {
		c.Blocks = append(c.Blocks, label.Block{Role: label.House, Runs: []label.Run{{Text: name, Style: label.Capitals}}})
	}
	for i, caption := range []string{v.CaptionCollector, v.CaptionCatalogue, v.Contents} {
		c.Blocks = append(c.Blocks, label.Block{Role: label.Blank, Runs: said(caption + v.Colon), Tight: i > 0})
	}
	return c
}
