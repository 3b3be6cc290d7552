package layout

// A Mark is one thing drawn: Text, Fill, Stroke or Bars, as values. The set is
// closed; a backend that meets another type reports it with the label's name.
type Mark interface {
	// Shifted returns the mark moved by d.
	Shifted(d Point) Mark
	isMark()
}

// A Style is how a stretch of text was asked to look. The face that was found
// for it may not have every style (Han has no italic).
type Style uint8

// Styles combine as bits.
const (
	Italic Style = 1 << iota
	Bold
)

// A Grey is the lightness of ink: 0 is black, 255 is paper.
type Grey uint8

// A Text is a stretch of one line in one face, already measured. Backends
// draw it cluster by cluster and never measure.
type Text struct {
	At    Point  // where the baseline starts
	Face  string // the face's name in package fonts
	Style Style  // what was asked for
	Size  Length // the em
	Grey  Grey
	// S is the text drawn, NFC. Clusters cover it from the first byte to the
	// last, in drawing order (left to right).
	S        string
	Clusters []Cluster
	// Actual is what copying and searching should give where that differs
	// from S (a family typed Fabaceae and set in capitals); "" means S.
	Actual string
}

// A Cluster is the part of a Text that is drawn as one: a letter, or a
// combining mark that has a place of its own.
type Cluster struct {
	Bytes int    // how many bytes of S
	Adv   Length // how far the pen moves after it (kerning and letterspacing included)
	Rise  Length // how far above the baseline it is drawn
}

// Width returns how far the pen moves over the whole text.
func (t Text) Width() Length {
	var w Length
	for _, c := range t.Clusters {
		w += c.Adv
	}
	return w
}

// A Fill is a filled rectangle.
type Fill struct {
	Rect
	Grey Grey
}

// A Stroke is a straight line with butt ends.
type Stroke struct {
	From, To Point
	Width    Length
	Grey     Grey
	// Dash holds alternating lengths of ink and gap, starting with ink; nil is
	// a solid line.
	Dash []Length
}

// Bars is a barcode: rectangles that are drawn together, and what they say.
type Bars struct {
	// Rect is the symbol without its quiet zone. Its corner lies on the
	// printer's dots wherever the box that holds it is placed by impose.
	Rect
	// Rects are the dark rectangles as drawn, relative to At, already made a
	// trifle smaller than the modules they stand for so that a rasteriser
	// paints no neighbouring dot.
	Rects []Rect

	Symbology string // "code128", "code39", "datamatrix" or "qr"
	S         string // what a scanner reads
	Module    Length // X, the width of the narrowest module
	Dot       Length // one dot of the printer it was made for
	Quiet     Length // the clear space that must stay on each side
	// Modules is the symbol as '1' (dark) and '0', row by row for 2D codes.
	Modules string
	Rows    int // 1 for linear codes
}

func (Text) isMark()   {}
func (Fill) isMark()   {}
func (Stroke) isMark() {}
func (Bars) isMark()   {}

// Shifted returns t moved by d.
func (t Text) Shifted(d Point) Mark { t.At = t.At.Add(d); return t }

// Shifted returns f moved by d.
func (f Fill) Shifted(d Point) Mark { f.At = f.At.Add(d); return f }

// Shifted returns s moved by d.
func (s Stroke) Shifted(d Point) Mark { s.From, s.To = s.From.Add(d), s.To.Add(d); return s }

// Shifted returns b moved by d.
func (b Bars) Shifted(d Point) Mark { b.At = b.At.Add(d); return b }

// A Ref says which record a box came from and which of its labels it is.
type Ref struct {
	File string // the table as named by the user
	Line int    // where the record starts, from 1; 0 if there is no table
	Row  int    // which record, from 1
	Kind string // "sheet", "packet", "barcode", "slip", "tag", "container"
	Key  string // how people name the specimen: "I. Almeida 214"
	// Label and Of count continuations: 1 of 1 unless the words needed a
	// second label.
	Label, Of int
	// Part tells the labels of one record apart: "Sheet 1 of 2", or the code
	// of the herbarium a duplicate goes to.
	Part string
	// For is the code of the herbarium that the label is for; "" is our own.
	For string
}

// A Box is one set label: its size and all marks within it.
type Box struct {
	Size  Size
	Marks []Mark
	Ref   Ref
}

// A Placed is a box on a page.
type Placed struct {
	At  Point // where the box's upper-left corner goes after turning
	Box *Box
	// Turn counts quarter turns clockwise, 0 to 3. The turned box fills the
	// rectangle At, Box.Size (or Box.Size.Turned() for 1 and 3).
	Turn int
}

// A Page is one side of paper.
type Page struct {
	Size  Size
	Trim  Rect // what is left after cutting; zero means the whole page
	Boxes []Placed
	Marks []Mark // drawn on the paper itself: cuts, folds, rules, footers
}

// Lines groups the texts of marks into the lines they were set in: texts that
// share a baseline and follow each other without a gap, in drawing order.
func Lines(marks []Mark) [][]Text {
	var lines [][]Text
	var pen Point
	for _, m := range marks {
		t, ok := m.(Text)
		if !ok {
			continue
		}
		if n := len(lines); n > 0 && t.At == pen {
			lines[n-1] = append(lines[n-1], t)
		} else {
			lines = append(lines, []Text{t})
		}
		pen = Point{t.At.X + t.Width(), t.At.Y}
	}
	return lines
}
