package pdf

import (
	"encoding/binary"
	"errors"
	"fmt"
	"sync"

	"cornerslip/fonts"
)

// faces are the faces that pages have asked for, shared by the workers.
type faces struct {
	set  *fonts.Set
	mu   sync.Mutex
	open map[string]*face
}

// A face is a font file and what a PDF must say of it, in thousandths of the
// em unless said otherwise.
type face struct {
	*fonts.Face
	key  string // its name in the resources, with the slash
	unit int64  // font units to the em

	bbox                       [4]int64
	ascent, descent, capHeight int64
	angle                      string // in degrees, counted anticlockwise
	weight                     int    // 400 is regular, 700 bold
	fixed                      bool
}

// get returns a face by its name.
func (fs *faces) get(name string) (*face, error) {
	fs.mu.Lock()
	defer fs.mu.Unlock()
	if f, ok := fs.open[name]; ok {
		return f, nil
	}
	ff, ok := fs.set.Lookup(name)
	if !ok {
		return nil, fmt.Errorf("there is no face %q", name)
	}
	f := &face{Face: ff, key: nameObject(name)}
	if err := f.read(); err != nil {
		return nil, fmt.Errorf("face %s: %w", name, err)
	}
	fs.open[name] = f
	return f, nil
}

// tables returns the tables of an sfnt by their tags (OpenType 1.9, "Font file
// structure"); what lies outside the file is left out.
func tables(ttf []byte) map[string][]byte {
	if len(ttf) < 12 {
		return nil
	}
	m := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		e := 12 + 16*i
		if e+16 > len(ttf) {
			break
		}
		at, n := uint64(binary.BigEndian.Uint32(ttf[e+8:])), uint64(binary.BigEndian.Uint32(ttf[e+12:]))
		if at+n <= uint64(len(ttf)) {
			m[string(ttf[e:e+4])] = ttf[at : at+n]
		}
	}
	return m
}

// read takes from the font's tables what the PDF repeats of them. Offsets are
// those of OpenType 1.9.
func (f *face) read() error {
	t := tables(f.TTF())
	for _, need := range []struct {
		tag  string
		size int
	}{{"head", 54}, {"hhea", 36}} {
		if len(t[need.tag]) < need.size {
			return fmt.Errorf("its table %q is missing or cut short", need.tag)
		}
	}
	head, hhea := t["head"], t["hhea"]
	f.unit = int64(u16(head, 18))
	if f.unit == 0 {
		return errors.New("its table \"head\" gives no size of the em")
	}
	for i := range f.bbox {
		f.bbox[i] = f.mille(head, 36+2*i)
	}
	f.ascent, f.descent = f.mille(hhea, 4), f.mille(hhea, 6)
	f.capHeight, f.weight, f.angle = f.ascent, 400, "0"
	if os2 := t["OS/2"]; len(os2) >= 6 {
		f.weight = u16(os2, 4)
		if u16(os2, 0) >= 2 && len(os2) >= 90 {
			f.capHeight = f.mille(os2, 88)
		}
	}
	if post := t["post"]; len(post) >= 16 {
		// A 16.16 fixed-point number.
		f.angle = string(appendMilli(nil, round(int64(int32(binary.BigEndian.Uint32(post[4:])))*1000, 1<<16)))
		f.fixed = binary.BigEndian.Uint32(post[12:]) != 0
	}
	return nil
}

func u16(b []byte, at int) int { return int(binary.BigEndian.Uint16(b[at:])) }

// mille returns a signed number of font units in thousandths of the em.
func (f *face) mille(b []byte, at int) int64 {
	return round(int64(int16(binary.BigEndian.Uint16(b[at:])))*1000, f.unit)
}

// width returns the width of a glyph in millionths of the em.
func (f *face) width(glyph uint16) int64 {
	return round(int64(f.Advance(glyph))*1_000_000, f.unit)
}

// A usedFace is a face and the characters that one painter has used of it.
type usedFace struct {
	*face
	// widths hold 1 + the width in millionths of the em of each character
	// used, in rows of 256 code points; 0 is one not used yet.
	widths [256]*[256]int64
}

// use returns a face by its name.
func (p *painter) use(name string) (*usedFace, error) {
	if u := p.used[name]; u != nil {
		return u, nil
	}
	f, err := p.faces.get(name)
	if err != nil {
		return nil, err
	}
	if p.used == nil {
		p.used = map[string]*usedFace{}
	}
	u := &usedFace{face: f}
	p.used[name] = u
	return u, nil
}

// width returns the width of a character in millionths of the em and notes
// that it is used.
func (u *usedFace) width(r rune) (int64, error) {
	if r > 0xFFFF {
		return 0, fmt.Errorf("%U %q lies beyond U+FFFF, where no face of the PDF can reach", r, r)
	}
	row := u.widths[r>>8]
	if row == nil {
		row = new([256]int64)
		u.widths[r>>8] = row
	}
	if w := row[r&255]; w != 0 {
		return w - 1, nil
	}
	g, ok := u.Glyph(r)
	if !ok {
		return 0, fmt.Errorf("face %s has no glyph for %U %q", u.Name, r, r)
	}
	w := u.face.width(g)
	row[r&255] = w + 1
	return w, nil
}

// used returns the characters that any painter has used of each face, and
// their widths.
func used(ps []*painter) map[string]*usedFace {
	all := map[string]*usedFace{}
	for _, p := range ps {
		for name, u := range p.used {
			to := all[name]
			if to == nil {
				to = &usedFace{face: u.face}
				all[name] = to
			}
			for i, row := range u.widths {
				if row == nil {
					continue
				}
				if to.widths[i] == nil {
					to.widths[i] = new([256]int64)
				}
				for j, w := range row {
					if w != 0 {
						to.widths[i][j] = w
					}
				}
			}
		}
	}
	return all
}

// runes returns the characters used, in order.
func (u *usedFace) runes() []rune {
	var rs []rune
	for i, row := range u.widths {
		if row == nil {
			continue
		}
		for j, w := range row {
			if w != 0 {
				rs = append(rs, rune(i<<8|j))
			}
		}
	}
	return rs
}

// nameObject returns a name as PDF writes it: with a slash, and with #xx for
// what is not a regular character (ISO 32000-1, 7.3.5).
func nameObject(s string) string {
	b := []byte{'/'}
	for i := range len(s) {
		switch c := s[i]; {
		case c <= ' ' || c > '~', c == '#', c == '/', c == '%', c == '(', c == ')', c == '<', c == '>', c == '[', c == ']', c == '{', c == '}':
			b = append(b, '#', hex[c>>4], hex[c&15])
		default:
			b = append(b, c)
		}
	}
	return string(b)
}
