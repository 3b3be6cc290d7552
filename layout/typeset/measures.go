package typeset

import (
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/symbol"
)

// Measures say how large and where the words of a kind of label are set. For
// starts from the measures of the kind; a house changes single values.
type Measures struct {
	Width layout.Length
	// Heights are the heights a label may have, the smallest first. All of
	// them nest on the papers that are used (74, 99 and 148 mm on A4).
	Heights []layout.Length
	// Top, Right, Bottom and Left stay free of ink: the edge is a cut.
	Top, Right, Bottom, Left layout.Length

	Text      layout.Length // the size of the data
	TextMin   layout.Length // how small they may get
	Name      layout.Length // the scientific name, when Text is at its full size
	Collector layout.Length // collector and number likewise
	Small     layout.Length // determiner, co-collectors, numbers, family
	House     layout.Length // heading lines and captions

	// Leading is the distance of baselines in thousandths of the size, and
	// LeadingMin the least it is squeezed to before a taller label is taken.
	Leading, LeadingMin int64
	// Group is the white space between groups of blocks, beyond the leading;
	// FootGap the space above the foot. Both shrink together with Leading.
	Group, GroupMin     layout.Length
	FootGap, FootGapMin layout.Length
	// Indent is how far the lines of a name that turns over stand in.
	Indent layout.Length
	// Rule is the width of the line under the heading; 0 leaves it out.
	Rule layout.Length

	// FootRows is how many lines are kept free under the collector's, so that
	// it stands at the same height on every label.
	FootRows int
	// FootBars is the height kept free at the bottom for bars where the house
	// prints them on its labels; 0 if it does not.
	FootBars layout.Length
	// CaptionColumn is the width of the hanging column where blocks carry
	// captions.
	CaptionColumn layout.Length

	// Justify fills the lines; otherwise they are ragged at the right.
	Justify bool
	// SmallerFirst lets the type shrink to TextMin before a taller label is
	// taken. The zero value keeps the type and takes the taller label.
	SmallerFirst bool
	// Symbol says how bars are made; its MaxSize is found here.
	Symbol symbol.Options
}

// sizeStep is by how much type shrinks at a time.
const sizeStep = layout.Pt / 4

// For returns the measures a kind of label has unless a house says otherwise.
// The sheet label is 105 mm wide, half an A4 or a quarter of an A3 (ISO 216),
// and 74 (A7), 99 or 148 mm (A6) high.
func For(k label.Kind) Measures {
	m := Measures{
		Width:   105 * layout.MM,
		Heights: []layout.Length{74 * layout.MM, 99 * layout.MM, 148 * layout.MM},
		Top:     55 * layout.MM / 10, Right: 6 * layout.MM, Bottom: 55 * layout.MM / 10, Left: 6 * layout.MM,
		Text: 9 * layout.Pt, TextMin: 8 * layout.Pt, Name: 11 * layout.Pt, Collector: 10 * layout.Pt,
		Small: 8 * layout.Pt, House: 8 * layout.Pt,
		Leading: 1220, LeadingMin: 1120,
		Group: 9 * layout.Pt / 2, GroupMin: 5 * layout.Pt / 2,
		FootGap: 7 * layout.Pt, FootGapMin: 5 * layout.Pt,
		Indent: 3 * layout.MM, Rule: 4 * layout.Pt / 10,
		FootRows: 2, CaptionColumn: 19 * layout.MM,
	}
	switch k {
	case label.Packet:
		m.Width = 70 * layout.MM
		m.Heights = []layout.Length{37 * layout.MM, 49 * layout.MM, 74 * layout.MM, 99 * layout.MM}
		m.Right, m.Left = 55*layout.MM/10, 55*layout.MM/10
		m.Name, m.Indent = 19*layout.Pt/2, 2*layout.MM
		m.House = 7 * layout.Pt
		m.Group, m.GroupMin = 3*layout.Pt, 2*layout.Pt
		m.FootGap, m.FootGapMin = 4*layout.Pt, 3*layout.Pt
		m.FootRows, m.CaptionColumn = 0, 14*layout.MM
	case label.Barcode:
		m.Width, m.Heights = 60*layout.MM, []layout.Length{25 * layout.MM}
		m.Top, m.Right, m.Bottom, m.Left = 5*layout.MM, 5*layout.MM, 5*layout.MM, 5*layout.MM
		m.House, m.Rule, m.FootRows = 7*layout.Pt, 0, 0
	case label.Slip:
		m.Width, m.Heights = 102*layout.MM, []layout.Length{25 * layout.MM, 37 * layout.MM, 49 * layout.MM}
		m.Top, m.Right, m.Bottom, m.Left = 9*layout.MM/2, 6*layout.MM, 9*layout.MM/2, 6*layout.MM
		m.House = 7 * layout.Pt
		m.Name = 10 * layout.Pt
		m.Group, m.GroupMin = 3*layout.Pt/2, 3*layout.Pt/4
		m.FootGap, m.FootGapMin = 3*layout.Pt, 2*layout.Pt
		m.FootRows, m.Rule = 0, 0
	case label.Tag:
		// 88 on an A4 page: the tags of a trip are a page.
		m.Width, m.Heights = 105*layout.MM/2, []layout.Length{135 * layout.MM / 10, 18 * layout.MM, 27 * layout.MM}
		m.Top, m.Right, m.Bottom, m.Left = 5*layout.MM, 5*layout.MM, 9*layout.MM/2, 5*layout.MM
		m.FootRows, m.Rule = 0, 0
	}
	return m
}

// zone is a part of the label that has a place of its own.
type zone uint8

const (
	head zone = iota
	body
	foot
)

func zoneOf(b *label.Block) zone {
	switch b.Zone {
	case label.InHead:
		return head
	case label.InBody:
		return body
	case label.InFoot:
		return foot
	}
	switch b.Role {
	case label.House, label.Project:
		return head
	case label.Collector, label.Team, label.Number, label.Symbol:
		return foot
	}
	return body
}

// group numbers what belongs together; white space parts the groups.
func group(r label.Role) int {
	switch r {
	case label.Status:
		return 0
	case label.Family, label.Name, label.Det, label.Type, label.Blank:
		return 1
	case label.Place, label.Coords:
		return 2
	case label.Plant:
		return 3
	case label.Notes:
		return 4
	}
	return 5
}

// size returns the size of a role's text when the data are set at text. Name
// and collector keep their distance to the data as these shrink.
func (m *Measures) size(r label.Role, text layout.Length) layout.Length {
	less := m.Text - text
	switch r {
	case label.House:
		return m.House
	case label.Project:
		return max(m.House, m.Small)
	case label.Name:
		return m.Name - less
	case label.Collector, label.Key:
		return m.Collector - less
	case label.Det, label.Team, label.Number, label.Symbol, label.Family:
		return min(m.Small, text)
	}
	return text
}

// runSize returns the size of a run of a block of size base. Capitals are as
// tall as the ascenders beside them and would shout at the size of a name.
func (m *Measures) runSize(base layout.Length, s label.Style) layout.Length {
	if s&(label.Small|label.Capitals) != 0 {
		return min(base, m.Small)
	}
	return base
}

// tracking is the letterspace of capitals in thousandths of the size: enough
// to open them, little enough that readers of the file see one word.
const tracking = 80

func trackingOf(s label.Style, size layout.Length) layout.Length {
	if s&label.Capitals == 0 {
		return 0
	}
	return size.MulDiv(tracking, 1000)
}

// lead returns the distance of baselines for a line of the size given;
// squeeze runs from 0, nominal, to 1000, as tight as allowed. It is a whole
// hundredth of a point.
func (m *Measures) lead(size layout.Length, squeeze int64) layout.Length {
	ratio := m.Leading - (m.Leading-m.LeadingMin)*squeeze/1000
	return size.MulDiv(ratio, 1000).Snap(layout.CentiPt)
}

func between(nominal, least layout.Length, squeeze int64) layout.Length {
	return nominal - (nominal-least).MulDiv(squeeze, 1000).Snap(layout.CentiPt)
}
