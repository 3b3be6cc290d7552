package fonts

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
)

// With returns the set with the house's own TrueType files after those of s.
// They are read and checked at once. An error names each file that cannot be
// used and says why: outlines that are not TrueType's, collections, web fonts,
// damage, or a licence that forbids to embed the face in a document.
func (s *Set) With(files ...string) (*Set, error) { return s.join(files, len(s.faces)) }

// Led returns the set with the house's own TrueType files before those of s,
// so that they set what they have and the others stand in. It reads and
// refuses them as With does.
func (s *Set) Led(files ...string) (*Set, error) { return s.join(files, 0) }

// join puts the files' faces in at a place of the order.
func (s *Set) join(files []string, at int) (*Set, error) {
	faces := slices.Clone(s.faces)
	var errs []error
	for _, file := range files {
		f, err := open(file)
		if err != nil {
			errs = append(errs, err)
			continue
		}
		i := slices.IndexFunc(faces, func(g *Face) bool { return g.Name == f.Name })
		switch {
		case i < 0:
			faces = slices.Insert(faces, at, f)
			at++
		case bytes.Equal(faces[i].data, f.data): // named twice
		default:
			errs = append(errs, fmt.Errorf("%s: the font calls itself %s, as another one in use does; leave one of them out", file, f.Name))
		}
	}
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	return newSet(faces), nil
}

func open(file string) (*Face, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, err // names the file
	}
	f, err := newFace(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	f.File = file
	return f, nil
}

// newFace reads a font file that is not known to be sound.
func newFace(data []byte) (*Face, error) {
	t, err := parse(data)
	if err != nil {
		return nil, err
	}
	if err := t.check(); err != nil {
		return nil, err
	}
	if err := t.embeddable(); err != nil {
		return nil, err
	}
	f := &Face{
		Name:    postScriptName(t.name(6)),
		Family:  t.name(16),
		Italic:  t.italic,
		Bold:    t.bold,
		data:    t.withOldNames(),
		licence: t.licence(),
		table:   t,
	}
	if f.Family == "" {
		f.Family = t.name(1)
	}
	if f.Name == "" {
		f.Name = postScriptName(strings.ReplaceAll(f.Family, " ", ""))
	}
	if f.Name == "" {
		return nil, errors.New("the font has no name")
	}
	return f, nil
}

// postScriptName keeps what a PostScript name may hold.
func postScriptName(s string) string {
	return strings.Map(func(r rune) rune {
		if r <= ' ' || r > '~' || strings.ContainsRune("[](){}<>/%", r) {
			return -1
		}
		return r
	}, s)
}

// licence gathers what the file says of its rights: copyright, licence, and
// where to read it.
func (t *sfnt) licence() string {
	var parts []string
	for _, id := range []int{0, 13, 14} {
		if s := strings.TrimSpace(t.name(id)); s != "" {
			parts = append(parts, s)
		}
	}
	if len(parts) == 0 {
		return "the font file says nothing of its licence"
	}
	return strings.Join(parts, "\n\n")
}

// embeddable reports why the font's licence bits (OS/2 fsType, OpenType
// specification) keep it out of a document. Where several of the usage bits
// are set the most generous holds.
func (t *sfnt) embeddable() error {
	switch {
	case t.fsType&0x000e == 0x0002:
		return errors.New("the font's licence forbids embedding it in a document (fsType 2); take another font or ask its maker")
	case t.fsType&0x0100 != 0:
		return errors.New("the font's licence forbids embedding a part of it (fsType 0x100), which the PDF does; take another font or ask its maker")
	case t.fsType&0x0200 != 0:
		return errors.New("the font's licence lets only its bitmaps be embedded (fsType 0x200); take another font or ask its maker")
	}
	return nil
}

// withOldNames returns the file with a name table of format 1 marked as
// format 0, which it extends at its end only: the PDF writer knows no other.
func (t *sfnt) withOldNames() []byte {
	at := t.at["name"]
	if len(t.tables["name"]) < 6 || t.tables["name"].u16(0) != 1 {
		return t.data
	}
	data := bytes.Clone(t.data)
	data[at+1] = 0
	return data
}
