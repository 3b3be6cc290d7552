// Package face measures, kerns and shapes text. It turns words into
// layout.Text marks in which every letter has its place, so that no backend
// has to measure again.
//
// Shaping is HarfBuzz's, in the font's own units; lengths on paper are made
// once per position, by whole numbers, so that they are equal on every machine
// and nothing drifts along a line.
//
// What is drawn and what is not:
//
//   - Text is brought to NFC first. A letter and its accents always come from
//     one face, the first of the style's chain that has them all.
//   - Ligatures are off, so that every glyph has a code point of its own.
//   - Characters that draw nothing (soft hyphen, zero width space, word
//     joiner, joiners, text and emoji selectors …; fonts.Invisible) are left
//     out of the marks.
//   - Tabs and line ends are drawn as a space. Other control characters are
//     refused.
//   - Spaces of fixed width that a face lacks are drawn as a space of the
//     width Unicode describes; a no-break hyphen that it lacks as a hyphen.
//     layout.Text.Actual then says what was meant.
//   - Scripts that run from right to left, or whose letters change shape or
//     place by their neighbours, are refused by name, and so are private use
//     characters and code points beyond U+FFFF, which the PDF cannot hold.
package face

import (
	"sync"

	"cornerslip/fonts"
	"cornerslip/layout"

	"github.com/go-text/typesetting/font"
)

// A Setter shapes words in the faces of one set. It may be used from many
// goroutines; it keeps what it has shaped, within bounds, and a word is the
// same whether it was kept or not.
type Setter struct {
	set   *fonts.Set
	cache cache

	mu     sync.Mutex
	parsed map[*fonts.Face]*font.Font
	idle   []*shaper // each is used by one goroutine at a time
}

// New returns a Setter for the faces of set. Faces are loaded when a word
// first needs them.
func New(set *fonts.Set) *Setter {
	return &Setter{set: set, parsed: map[*fonts.Face]*font.Font{}}
}

// Metrics are the vertical measures of a style at a size; all are positive.
type Metrics struct {
	Ascent, Descent    layout.Length // what the designer set aside above and below the baseline
	CapHeight, XHeight layout.Length // the heights of H and x
}

// Metrics returns the measures of the style's first face.
func (s *Setter) Metrics(style layout.Style, size layout.Length) Metrics {
	m := s.chain(style)[0].Metrics()
	em := int64(m.UnitsPerEm)
	return Metrics{
		Ascent:    size.MulDiv(int64(m.Ascent), em),
		Descent:   size.MulDiv(int64(m.Descent), em),
		CapHeight: size.MulDiv(int64(m.CapHeight), em),
		XHeight:   size.MulDiv(int64(m.XHeight), em),
	}
}

// Space returns the width of a space between words.
func (s *Setter) Space(style layout.Style, size layout.Length) layout.Length {
	w, err := s.Word(" ", style)
	if err != nil {
		return size.MulDiv(1, 4) // a first face without a space: the width most have
	}
	return w.Width(size, 0)
}

func (s *Setter) chain(style layout.Style) []*fonts.Face {
	return s.set.Chain(style&layout.Italic != 0, style&layout.Bold != 0)
}

// Word returns text shaped in a style. It may hold spaces. The error is a
// *MissingError or a *ScriptError, or says that a font file is damaged.
func (s *Setter) Word(text string, style layout.Style) (*Word, error) {
	k := key{text, style}
	if w := s.cache.get(k); w != nil {
		return w, nil
	}
	w, err := s.shape(text, style)
	if err != nil {
		return nil, err
	}
	s.cache.put(k, w)
	return w, nil
}
