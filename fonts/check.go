package fonts

// check looks through a file that came from outside, so that nothing later
// reads beyond a table, follows a glyph in a circle or draws a damaged letter.
func (t *sfnt) check() error {
	head, hhea := t.tables["head"], t.tables["hhea"]
	switch {
	case head.u32(12) != 0x5f0f3cf5:
		return damaged("its header is not one")
	case t.metrics.UnitsPerEm < 16 || t.metrics.UnitsPerEm > 16384:
		return damaged("it has %d units to the em", t.metrics.UnitsPerEm)
	case head.i16(50) != 0 && head.i16(50) != 1 || head.i16(52) != 0:
		return damaged("its outlines are of an unknown kind")
	case t.glyphs == 0:
		return damaged("it has no glyphs")
	}
	long := hhea.u16(34)
	if long == 0 || long > t.glyphs || hhea.i16(32) != 0 || len(t.tables["hmtx"]) < 4*long+2*(t.glyphs-long) {
		return damaged("its table \"hmtx\" does not hold the widths of all glyphs")
	}
	for tag, b := range t.tables {
		if want := t.sums[tag]; want != 0 && tag != "DSIG" && sum(tag, b) != want {
			return damaged("its table %q does not match its check sum", tag)
		}
	}
	var wrong error
	t.each(func(r rune, g uint16) {
		if int(g) >= t.glyphs && wrong == nil {
			wrong = damaged("U+%04X has a glyph that is not there", r)
		}
	})
	if wrong != nil {
		return wrong
	}
	return t.checkOutlines()
}

// sum is a table's check sum (OpenType specification, "Calculating
// checksums"). The header's own adjustment counts as zero in it.
func sum(tag string, b table) uint32 {
	var s uint32
	n := len(b) &^ 3
	for i := 0; i < n; i += 4 {
		s += b.u32(i)
	}
	if n < len(b) {
		var last [4]byte
		copy(last[:], b[n:])
		s += table(last[:]).u32(0)
	}
	if tag == "head" {
		s -= b.u32(8)
	}
	return s
}

func (t *sfnt) checkOutlines() error {
	size := 2
	if t.longLoca {
		size = 4
	}
	if len(t.tables["loca"]) < size*(t.glyphs+1) {
		return damaged("its table \"loca\" is cut off")
	}
	depth := make([]int8, t.glyphs) // 0 not seen, -1 being looked at, else 1 + levels below
	for g := range t.glyphs {
		if from, to := t.loca(g), t.loca(g+1); from > to || to > len(t.tables["glyf"]) {
			return damaged("glyph %d lies outside the outlines", g)
		}
	}
	for g := range t.glyphs {
		if _, err := t.checkOutline(g, depth); err != nil {
			return err
		}
	}
	return nil
}

const deepest = 16 // levels of glyphs made of glyphs; real fonts have two or three

func (t *sfnt) checkOutline(g int, depth []int8) (int8, error) {
	if depth[g] != 0 {
		if depth[g] < 0 {
			return 0, damaged("glyph %d is part of itself", g)
		}
		return depth[g], nil
	}
	o := t.outline(g)
	contours := o.i16(0)
	switch {
	case len(o) == 0:
		depth[g] = 1
		return 1, nil
	case len(o) < 10:
		return 0, damaged("glyph %d is cut off", g)
	case contours >= 0:
		if !simple(o, contours) {
			return 0, damaged("glyph %d is cut off", g)
		}
		depth[g] = 1
		return 1, nil
	}
	depth[g] = -1
	levels := int8(0)
	for at, more := 10, true; more; {
		if at+4 > len(o) {
			return 0, damaged("glyph %d is cut off", g)
		}
		flags, part := o.u16(at), o.u16(at+2)
		if part >= t.glyphs {
			return 0, damaged("glyph %d has a part that is not there", g)
		}
		below, err := t.checkOutline(part, depth)
		if err != nil {
			return 0, err
		}
		levels = max(levels, below)
		at += componentSize(flags)
		if at > len(o) {
			return 0, damaged("glyph %d is cut off", g)
		}
		more = flags&0x20 != 0
	}
	if levels >= deepest {
		return 0, damaged("glyph %d is made of too many others", g)
	}
	depth[g] = levels + 1
	return depth[g], nil
}

// componentSize returns the length of one part of a composite glyph.
func componentSize(flags int) int {
	n := 6
	if flags&0x01 != 0 { // arguments are words
		n += 2
	}
	switch {
	case flags&0x08 != 0: // one scale
		n += 2
	case flags&0x40 != 0: // two scales
		n += 4
	case flags&0x80 != 0: // a matrix
		n += 8
	}
	return n
}

// simple walks a simple glyph's points.
func simple(o table, contours int) bool {
	points, last := 0, -1
	for i := range contours {
		end := o.u16(10 + 2*i)
		if end < last {
			return false
		}
		last, points = end, end+1
	}
	at := 10 + 2*contours
	if contours == 0 {
		return true
	}
	if at+2 > len(o) {
		return false
	}
	at += 2 + o.u16(at) // instructions
	coords := 0
	for points > 0 {
		if at >= len(o) {
			return false
		}
		f, times := o[at], 1
		at++
		if f&0x08 != 0 {
			if at >= len(o) {
				return false
			}
			times += int(o[at])
			at++
		}
		if times > points {
			return false
		}
		points -= times
		coords += times * (coordSize(f, 0x02, 0x10) + coordSize(f, 0x04, 0x20))
	}
	return at+coords <= len(o)
}

// coordSize returns the bytes of one coordinate of a point with flag f.
func coordSize(f, short, same byte) int {
	switch {
	case f&short != 0:
		return 1
	case f&same != 0:
		return 0
	}
	return 2
}
