package job

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/label/accession"
	"cornerslip/layout"
	"cornerslip/layout/impose"
	"cornerslip/layout/symbol"
	"cornerslip/layout/typeset"
)

// fontSet returns the built-in faces and those of the house.
func (j *Job) fontSet() (*fonts.Set, error) {
	t := j.House.Type
	var lead []string
	for _, file := range []string{t.Regular, t.Italic, t.Bold, t.BoldItalic} {
		if file != "" {
			lead = append(lead, file)
		}
	}
	for _, file := range slices.Concat(lead, t.Fallback) {
		if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) {
			return nil, fmt.Errorf("%s: [type] names the face %s, and there is no such file; check the name", j.o.House, file)
		}
	}
	set, err := fonts.Default().Led(lead...)
	if err != nil {
		return nil, err
	}
	return set.With(t.Fallback...)
}

// measures returns what a label is set with in this house.
func (j *Job) measures(q *Request) func(*label.Content) typeset.Measures {
	byKind := map[label.Kind]typeset.Measures{}
	for _, k := range []label.Kind{label.Sheet, label.Packet, label.Container, label.Barcode, label.Slip, label.Tag} {
		byKind[k] = j.measuresOf(k, q)
	}
	full := j.fullPacket(q)
	return func(c *label.Content) typeset.Measures {
		m := byKind[c.Kind]
		if c.Kind == label.Packet && isFull(c) {
			m = full
		}
		if q.packet != nil {
			m = j.onFlap(m, q.packet.Room())
		}
		return m
	}
}

// isFull reports whether a packet's label is the whole label of a specimen
// that has no sheet: it has the foot of one.
func isFull(c *label.Content) bool {
	return slices.ContainsFunc(c.Blocks, func(b label.Block) bool { return b.Role == label.Collector })
}

// fullPacket is what the whole label on a packet's front is set with: the
// measures of the sheet label in a room of its own.
func (j *Job) fullPacket(q *Request) typeset.Measures {
	m := j.measuresOf(label.Container, q)
	m.Width = layout.Millimetres(j.House.Packet.FullWidthMM)
	m.Heights = lengths(j.House.Packet.FullHeightsMM)
	return m
}

func (j *Job) measuresOf(k label.Kind, q *Request) typeset.Measures {
	h := j.House
	m := typeset.For(k)
	m.Text = layout.Points(h.Type.SizePt)
	m.TextMin = min(m.Text, layout.Points(h.Type.SmallestPt))
	m.SmallerFirst = !h.Label.TallerFirst
	m.Justify = h.Label.Justified
	m.Symbol = j.symbol(q)
	switch k {
	case label.Sheet, label.Container:
		m.Name = layout.Points(h.Type.NamePt)
		m.House = layout.Points(h.Type.SmallPt)
		m.Width = layout.Millimetres(h.Label.WidthMM)
		m.Heights = lengths(h.Label.HeightsMM)
		margin := layout.Millimetres(h.Label.MarginMM)
		m.Top, m.Bottom = margin, margin
		m.Left, m.Right = margin+layout.MM/2, margin+layout.MM/2
		m.Top = max(m.Top, layout.Millimetres(h.Label.GlueMM))
		if h.Bars.OnLabel && k == label.Sheet {
			m.FootBars = typeset.FootBars(m.Symbol, j.longestNumber())
		}
	case label.Packet:
		m.Width = layout.Millimetres(h.Packet.WidthMM)
		m.Heights = lengths(h.Packet.HeightsMM)
	case label.Slip:
		m.Width = layout.Millimetres(h.Slip.WidthMM)
		m.Heights = lengths(h.Slip.HeightsMM)
	case label.Tag:
		if q.Bundle != nil { // as large as a label, to be read on the press
			m = j.bundleMeasures(m)
			break
		}
		m.Width = layout.Millimetres(h.Tag.WidthMM)
		m.Heights = lengths(h.Tag.HeightsMM)
	case label.Barcode:
		m.Width = layout.Millimetres(h.Bars.StickerMM[0])
		m.Heights = []layout.Length{layout.Millimetres(h.Bars.StickerMM[1])}
	}
	if q.On == OnStickers { // cut already, so that only the printer may drift
		const margin = 3 * layout.MM
		m.Width = layout.Millimetres(h.Stickers.SizeMM[0])
		m.Heights = []layout.Length{layout.Millimetres(h.Stickers.SizeMM[1])}
		m.Top, m.Right, m.Bottom, m.Left = min(m.Top, margin), min(m.Right, margin), min(m.Bottom, margin), min(m.Left, margin)
	}
	return m
}

// bundleMeasures are those of the tag of a press: a postcard's width, and as
// high as its cautions ask.
func (j *Job) bundleMeasures(m typeset.Measures) typeset.Measures {
	b := typeset.For(label.Sheet)
	m.Width, m.Heights = b.Width, b.Heights
	m.Top, m.Right, m.Bottom, m.Left = b.Top, b.Right, b.Bottom, b.Left
	m.Rule, m.House = b.Rule, layout.Points(j.House.Type.SmallPt)
	m.LeadingMin, m.GroupMin = m.Leading, m.Group // there is room: it is never pinched
	m.Collector = 12 * layout.Pt                  // read from a step away
	m.Justify = false
	return m
}

// longestNumber is a catalogue number as long as those of the house get.
func (j *Job) longestNumber() string {
	if p, err := accession.ParsePattern(j.House.Numbers.Pattern); err == nil {
		return p.Format(p.Max())
	}
	return "VDOURA-0000000"
}

func lengths(mm []float64) []layout.Length {
	l := make([]layout.Length, len(mm))
	for i, v := range mm {
		l[i] = layout.Millimetres(v)
	}
	return l
}

func (j *Job) symbol(q *Request) symbol.Options {
	b := j.House.Bars
	o := symbol.Options{Symbology: b.Symbology, Module: b.ModuleDots, Dot: layout.Inch / layout.Length(b.DPI),
		Reduction: layout.Millimetres(b.ReductionMM)}
	if q.Symbology != "" {
		o.Symbology = q.Symbology
	}
	return o
}

// paper returns the size of what is printed on.
func (j *Job) paper(q *Request) (layout.Size, error) {
	h := j.House
	name := q.Paper
	switch {
	case name != "":
	case q.On == OnMount:
		return layout.Size{W: layout.Millimetres(h.Mount.SizeMM[0]), H: layout.Millimetres(h.Mount.SizeMM[1])}, nil
	case q.On == OnStickers:
		name = h.Stickers.Paper
	case strings.HasPrefix(strings.ToLower(strings.TrimSpace(q.Blank)), "letter"):
		name = "Letter" // of which such blanks are parts
	default:
		name = h.Paper.Size
	}
	size, err := impose.ParsePaper(name)
	if err != nil {
		return size, fmt.Errorf("paper: %w", err)
	}
	return size, nil
}
