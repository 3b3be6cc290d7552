// Package symbol turns a number or an address into a barcode: dark rectangles
// that lie on the printer's dots.
//
// Four symbologies are spoken: Code 128 (ISO/IEC 15417), Code 39 (ISO/IEC
// 16388), Data Matrix ECC 200 (ISO/IEC 16022) and QR Code (ISO/IEC 18004).
// Text is limited to the printable ASCII characters, U+0020 to U+007E: what
// lies beyond them is read differently from scanner to scanner.
package symbol

import (
	"fmt"

	"cornerslip/layout"
)

// The symbologies, as Options and layout.Bars name them.
const (
	Code128    = "code128"
	Code39     = "code39"
	DataMatrix = "datamatrix"
	QR         = "qr"
)

// Options says how a symbol is made. The zero value is a Code 128 for a
// 300 dpi printer with narrow bars of 0.254 mm.
type Options struct {
	// Symbology is Code128, Code39, DataMatrix or QR; "" is Code128.
	Symbology string
	// Dot is one dot of the printer; 0 is layout.Dot300. That is the safe
	// choice for a printer nobody has described: its dots are whole at 600 and
	// 1200 dpi too, the reverse does not hold.
	Dot layout.Length
	// Module is X, the width of the narrowest bar, in printer dots, at least 2.
	// 0 lets the program choose: the widest up to 0.51 mm that fits MaxSize
	// and never less than 0.19 mm (3 dots at 300 dpi, 5 at 600); without a
	// MaxSize 0.25 mm for bars and 0.34 mm for squares, or the next dot above.
	Module int
	// MaxSize is the room for the symbol with its quiet zones; a zero width or
	// height sets no limit that way.
	MaxSize layout.Size
	// Height is the height of linear bars, rounded up to whole dots; 0 is what
	// ISO/IEC 15417 and 16388 ask for, 5 mm or 15 % of the symbol's width,
	// whichever is more. Square symbols have no use for it.
	Height layout.Length
	// Reduction is taken off the width of every bar, half on each side, to make
	// up for ink or toner that spreads. The calibration page finds it. It must
	// leave half of the narrowest bar.
	Reduction layout.Length
	// Ratio3 makes the wide elements of Code 39 three times as wide as the
	// narrow ones instead of twice: longer, and easier to read.
	Ratio3 bool
	// Check ends a Code 39 with its modulo 43 check character. A scanner that
	// was not told of it reads it as part of the text.
	Check bool
	// Level is the error correction of a QR Code, "L", "M", "Q" or "H"; "" is
	// M, which survives the loss of 15 % of the symbol.
	Level string
	// Rectangle makes a Data Matrix 8 to 16 modules high and up to three times
	// as wide, for flat stickers.
	Rectangle bool
}

// An InvalidTextError reports text that a symbology cannot say.
type InvalidTextError struct {
	Symbology string
	Text      string
	Why       string // what is wrong and what to do
}

func (e *InvalidTextError) Error() string {
	return fmt.Sprintf("%q as %s: %s", e.Text, e.Symbology, e.Why)
}

// A SizeError reports that a symbol does not fit the room it was given.
type SizeError struct {
	Symbology string
	Text      string
	Need      layout.Size // the least that would do, quiet zones included
	Room      layout.Size // what there was; a zero side is no limit
	// Other is a symbology that would fit, "" if none does.
	Other string
}

func (e *SizeError) Error() string {
	s := fmt.Sprintf("%q as %s needs %s with its quiet zones, the room is %s",
		e.Text, e.Symbology, millimetresUp(e.Need), room(e.Room))
	if e.Other != "" {
		s += "; " + e.Other + " would fit"
	}
	return s
}

// matrix is a symbol in modules: '1' is dark. A linear symbol has one row.
type matrix struct {
	modules string
	rows    int
	// spoken is what a scanner reads.
	spoken string
}

func (m matrix) cols() int { return len(m.modules) / m.rows }

func (m matrix) dark(x, y int) bool {
	if x < 0 || y < 0 || x >= m.cols() || y >= m.rows {
		return false
	}
	return m.modules[y*m.cols()+x] == '1'
}

// Make returns the symbol of text with its corner at the origin. The error is
// an *InvalidTextError, a *SizeError, or says which option is impossible.
func Make(text string, o Options) (layout.Bars, error) {
	if o.Symbology == "" {
		o.Symbology = Code128
	}
	if o.Dot == 0 {
		o.Dot = layout.Dot300
	}
	if err := o.valid(); err != nil {
		return layout.Bars{}, err
	}
	m, err := encode(text, o)
	if err != nil {
		return layout.Bars{}, err
	}
	dots, err := fit(text, m, o)
	if err != nil {
		return layout.Bars{}, err
	}
	x := layout.Length(dots) * o.Dot
	if 2*o.Reduction > x {
		return layout.Bars{}, fmt.Errorf("bar-width reduction %s takes more than half of a narrow bar of %s", o.Reduction, x)
	}
	size := sizeOf(m, x, o)
	return layout.Bars{
		Rect:      layout.Rect{Size: size},
		Rects:     rects(m, x, o.Dot, size.H, o.Reduction),
		Symbology: o.Symbology,
		S:         m.spoken,
		Module:    x,
		Dot:       o.Dot,
		Quiet:     layout.Length(quiet(o.Symbology)) * x,
		Modules:   m.modules,
		Rows:      m.rows,
	}, nil
}

func (o Options) valid() error {
	switch {
	case o.Dot < 0:
		return fmt.Errorf("printer dot of %s: it must be more than nothing", o.Dot)
	case o.Module < 0 || o.Module == 1:
		return fmt.Errorf("module of %d printer dots: at least 2 are needed, 0 lets the program choose", o.Module)
	case o.MaxSize.W < 0 || o.MaxSize.H < 0:
		return fmt.Errorf("room of %s for a barcode: it must not be negative", o.MaxSize)
	case o.Height < 0:
		return fmt.Errorf("bar height of %s: it must not be negative", o.Height)
	case o.Reduction < 0:
		return fmt.Errorf("bar-width reduction of %s: it must not be negative", o.Reduction)
	}
	return nil
}

// encode finds the modules of text.
func encode(text string, o Options) (matrix, error) {
	invalid := func(why string) (matrix, error) {
		return matrix{}, &InvalidTextError{Symbology: o.Symbology, Text: text, Why: why}
	}
	if text == "" {
		return invalid("there is nothing to say")
	}
	for _, r := range text {
		if r < 0x20 || r > 0x7E {
			return invalid(fmt.Sprintf("%s cannot be barred; only the letters A to Z without accents, figures and common signs can", character(r)))
		}
	}
	var m matrix
	var why string
	switch o.Symbology {
	case Code128:
		m = matrix{modules: code128(text), rows: 1, spoken: text}
	case Code39:
		m, why = code39(text, o)
	case DataMatrix:
		m, why = dataMatrix(text, o.Rectangle)
	case QR:
		m, why = qrCode(text, o.Level)
	default:
		return matrix{}, fmt.Errorf("no barcode is called %q; there are code128, code39, datamatrix and qr", o.Symbology)
	}
	if why != "" {
		return invalid(why)
	}
	return m, nil
}

// character names r so that it can be found even if it cannot be seen.
func character(r rune) string {
	if r < 0x20 || r == 0x7F || r == 0xFFFD {
		return fmt.Sprintf("the character U+%04X", r)
	}
	return fmt.Sprintf("the character %q (U+%04X)", string(r), r)
}
