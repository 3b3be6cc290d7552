// Package fonts holds the typefaces: which there are, in which order one
// stands in for another, which characters each has, and their licences. It
// draws and measures nothing, and it imports nothing of ours.
//
// Only TrueType outlines are taken, because only they can be put into the
// PDF, and only characters that the PDF can address: those of the face's
// Unicode character map in the Basic Multilingual Plane.
package fonts

import (
	"slices"
	"sync"
)

// A Face is one font file. It is read on first use; its methods may be called
// from many goroutines.
type Face struct {
	// Name is the PostScript name, the key in layout.Text.Face.
	Name   string
	Family string
	Italic bool
	Bold   bool
	// File is the file as the house named it; "" for the faces that come with
	// the program.
	File string

	data    []byte
	licence string
	once    sync.Once
	table   *sfnt
}

// TTF returns the font file. It must not be changed.
func (f *Face) TTF() []byte { return f.data }

// Licence returns the licence's text, or what the file says of it.
func (f *Face) Licence() string { return f.licence }

// Metrics are measures of a face in its own units.
type Metrics struct {
	UnitsPerEm int
	// Ascent and Descent are the distances above and below the baseline that
	// the designer set aside; both are positive.
	Ascent, Descent int
	// CapHeight and XHeight are the heights of H and x.
	CapHeight, XHeight int
}

// Metrics returns the measures of the face.
func (f *Face) Metrics() Metrics { return f.read().metrics }

// Glyph returns the number of the glyph that stands for r, and false if the
// face has none. It answers after the same character map that goes into the
// PDF, so a code point beyond U+FFFF is never there.
func (f *Face) Glyph(r rune) (uint16, bool) { return f.read().glyph(r) }

// Rune returns the lowest code point that stands for a glyph.
func (f *Face) Rune(glyph uint16) (rune, bool) { return f.read().rune(glyph) }

func (f *Face) read() *sfnt {
	f.once.Do(func() {
		if f.table != nil {
			return
		}
		t, err := parse(f.data)
		if err != nil {
			panic("fonts: " + f.Name + ": " + err.Error()) // only for faces that came with the program
		}
		f.table = t
	})
	return f.table
}

// A Set is a number of faces in the order in which one stands in for another.
// It does not change and may be used from many goroutines.
type Set struct {
	faces  []*Face
	byName map[string]*Face
	chains [4][]*Face
}

func newSet(faces []*Face) *Set {
	s := &Set{faces: faces, byName: make(map[string]*Face, len(faces))}
	for _, f := range faces {
		s.byName[f.Name] = f
	}
	for i := range s.chains {
		s.chains[i] = chain(faces, i&1 != 0, i&2 != 0)
	}
	return s
}

// chain orders faces for a style. Italic carries meaning (a name's genus and
// epithet), weight does not, so a face of the wrong weight comes before one of
// the wrong slope, and upright text never turns italic.
func chain(faces []*Face, italic, bold bool) []*Face {
	var c []*Face
	add := func(it, bo bool) {
		for _, f := range faces {
			if f.Italic == it && f.Bold == bo {
				c = append(c, f)
			}
		}
	}
	add(italic, bold)
	add(italic, !bold)
	if italic {
		add(false, bold)
		add(false, !bold)
	}
	return slices.Clip(c)
}

// Faces returns all faces in fallback order. The slice must not be changed.
func (s *Set) Faces() []*Face { return s.faces }

// Lookup returns the face of that PostScript name.
func (s *Set) Lookup(name string) (*Face, bool) {
	f, ok := s.byName[name]
	return f, ok
}

// Chain returns the faces to try for a style, best first: the faces of that
// very style in fallback order, then those of the other weight, and for italic
// text at last the upright ones (Han has no italic). Upright text is never
// given an italic face. The slice must not be changed.
func (s *Set) Chain(italic, bold bool) []*Face {
	i := 0
	if italic {
		i |= 1
	}
	if bold {
		i |= 2
	}
	return s.chains[i]
}

// Find returns the first face of the style's chain that has every code point
// of cluster: a letter together with its accents. Code points that draw
// nothing (joiners, soft hyphens) are not asked for.
func (s *Set) Find(cluster string, italic, bold bool) (*Face, bool) {
	for _, f := range s.Chain(italic, bold) {
		if f.Covers(cluster) {
			return f, true
		}
	}
	return nil, false
}

// Advance returns how far the pen moves after a glyph, in the face's units.
func (f *Face) Advance(glyph uint16) int {
	t := f.read()
	long := t.tables["hhea"].u16(34)
	return t.tables["hmtx"].u16(4 * min(int(glyph), long-1))
}
