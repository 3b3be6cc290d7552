package fonts

// Invisible reports code points that draw nothing and take no room: joiners,
// directional marks, break controls, the two presentation selectors that
// telephones add (♂ + U+FE0F). No face is asked for them. They are the
// default ignorable code points of Unicode's Basic Multilingual Plane that
// occur outside scripts of their own, without those variation selectors that
// choose another form of a letter.
func Invisible(r rune) bool {
	switch {
	case r < 0x00ad:
		return false
	case r == 0x00ad, r == 0x034f, r == 0x061c, r == 0xfeff, r == 0xfe0e, r == 0xfe0f:
		return true
	}
	return 0x200b <= r && r <= 0x200f || 0x202a <= r && r <= 0x202e || 0x2060 <= r && r <= 0x206f
}

// Covers reports whether the face has a glyph for every code point of cluster
// that draws anything.
func (f *Face) Covers(cluster string) bool {
	t := f.read()
	for _, r := range cluster {
		if Invisible(r) {
			continue
		}
		if _, ok := t.glyph(r); !ok {
			return false
		}
	}
	return true
}
