package svg

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"maps"
	"slices"

	"github.com/go-text/typesetting/font/opentype"
)

// subset returns a font file with the outlines of the characters given. The
// glyphs keep their numbers, so parts of composite letters need no change; what
// lies beyond the last one used is cut off, and the others are empty. Tables
// are as OpenType 1.9 has them.
func subset(ttf []byte, runes map[rune]uint16) ([]byte, error) {
	ld, err := opentype.NewLoader(bytes.NewReader(ttf))
	if err != nil {
		return nil, err
	}
	t := map[string][]byte{}
	for _, tag := range []string{"head", "hhea", "hmtx", "maxp", "loca", "glyf", "OS/2", "name", "post", "cvt ", "fpgm", "prep", "gasp"} {
		if b, err := ld.RawTable(opentype.MustNewTag(tag)); err == nil {
			t[tag] = bytes.Clone(b)
		}
	}
	be := binary.BigEndian
	if len(t["head"]) < 54 || len(t["hhea"]) < 36 || len(t["maxp"]) < 6 || len(t["post"]) < 32 {
		return nil, fmt.Errorf("the font file is damaged")
	}
	glyphs := int(be.Uint16(t["maxp"][4:]))
	long := be.Uint16(t["head"][50:]) != 0
	loca := func(g int) int {
		if long {
			return int(be.Uint32(t["loca"][4*g:]))
		}
		return 2 * int(be.Uint16(t["loca"][2*g:]))
	}
	size := 2
	if long {
		size = 4
	}
	if len(t["loca"]) < size*(glyphs+1) {
		return nil, fmt.Errorf("the font file is damaged: its table \"loca\" is too short")
	}
	need, err := closure(runes, glyphs, func(g int) ([]byte, bool) {
		from, to := loca(g), loca(g+1)
		if from > to || to > len(t["glyf"]) {
			return nil, false
		}
		return t["glyf"][from:to], true
	})
	if err != nil {
		return nil, err
	}
	last := slices.Max(slices.Collect(maps.Keys(need)))
	var glyf, newLoca, hmtx []byte
	wide := int(be.Uint16(t["hhea"][34:]))
	if wide == 0 || len(t["hmtx"]) < 4*wide+2*max(0, last+1-wide) {
		return nil, fmt.Errorf("the font file is damaged: its table \"hmtx\" is too short")
	}
	for g := range last + 1 {
		newLoca = be.AppendUint32(newLoca, uint32(len(glyf)))
		if need[g] {
			glyf = append(glyf, t["glyf"][loca(g):loca(g+1)]...)
			glyf = append(glyf, make([]byte, -len(glyf)&3)...)
		}
		hmtx = append(hmtx, t["hmtx"][4*min(g, wide-1):][:2]...)
		if g < wide {
			hmtx = append(hmtx, t["hmtx"][4*g+2:][:2]...)
		} else {
			hmtx = append(hmtx, t["hmtx"][4*wide+2*(g-wide):][:2]...)
		}
	}
	t["glyf"], t["loca"], t["hmtx"] = glyf, be.AppendUint32(newLoca, uint32(len(glyf))), hmtx
	t["cmap"] = charMap(runes)
	be.PutUint16(t["head"][50:], 1) // long offsets
	be.PutUint16(t["hhea"][34:], uint16(last+1))
	be.PutUint16(t["maxp"][4:], uint16(last+1))
	be.PutUint32(t["post"], 0x00030000) // without glyph names
	t["post"] = t["post"][:32]
	return assemble(t), nil
}

// closure returns the glyphs that the characters need: their own, .notdef, and
// the parts of those that are made of others.
func closure(runes map[rune]uint16, glyphs int, outline func(int) ([]byte, bool)) (map[int]bool, error) {
	need := map[int]bool{0: true}
	todo := []int{0}
	add := func(g int) {
		if !need[g] {
			need[g] = true
			todo = append(todo, g)
		}
	}
	for _, g := range runes {
		add(int(g))
	}
	for len(todo) > 0 {
		g := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if g >= glyphs {
			return nil, fmt.Errorf("the font file is damaged: glyph %d is not there", g)
		}
		o, ok := outline(g)
		if !ok {
			return nil, fmt.Errorf("the font file is damaged: glyph %d lies outside its outlines", g)
		}
		for _, part := range parts(o) {
			add(part)
		}
	}
	return need, nil
}

// parts returns the glyphs that a composite glyph is made of.
func parts(glyph []byte) (ps []int) {
	be := binary.BigEndian
	if len(glyph) < 10 || int16(be.Uint16(glyph)) >= 0 {
		return nil
	}
	for at := 10; at+4 <= len(glyph); {
		flags := be.Uint16(glyph[at:])
		ps = append(ps, int(be.Uint16(glyph[at+2:])))
		at += 6
		if flags&0x01 != 0 { // arguments are words
			at += 2
		}
		switch {
		case flags&0x08 != 0: // a scale
			at += 2
		case flags&0x40 != 0: // two scales
			at += 4
		case flags&0x80 != 0: // a matrix
			at += 8
		}
		if flags&0x20 == 0 { // no more
			break
		}
	}
	return ps
}

// charMap returns a character map of one subtable of format 4.
func charMap(runes map[rune]uint16) []byte {
	type segment struct{ start, end, delta uint16 }
	var segments []segment
	for _, r := range slices.Sorted(maps.Keys(runes)) {
		delta := runes[r] - uint16(r)
		if n := len(segments); n > 0 && rune(segments[n-1].end) == r-1 && segments[n-1].delta == delta {
			segments[n-1].end++
		} else {
			segments = append(segments, segment{uint16(r), uint16(r), delta})
		}
	}
	segments = append(segments, segment{0xFFFF, 0xFFFF, 1})
	n := len(segments)
	power := 1
	for power*2 <= n {
		power *= 2
	}
	log := 0
	for 1<<log < power {
		log++
	}
	be := binary.BigEndian
	words := func(b []byte, ws ...int) []byte {
		for _, w := range ws {
			b = be.AppendUint16(b, uint16(w))
		}
		return b
	}
	b := words(nil, 0, 1, 3, 1, 0, 12, 4, 16+8*n, 0, 2*n, 2*power, log, 2*(n-power))
	for _, s := range segments {
		b = words(b, int(s.end))
	}
	b = words(b, 0)
	for _, s := range segments {
		b = words(b, int(s.start))
	}
	for _, s := range segments {
		b = words(b, int(s.delta))
	}
	return append(b, make([]byte, 2*n)...) // no glyph arrays
}

// assemble writes tables as a font file.
func assemble(tables map[string][]byte) []byte {
	be := binary.BigEndian
	sum := func(b []byte) (s uint32) {
		for i := 0; i < len(b); i += 4 {
			var w [4]byte
			copy(w[:], b[i:])
			s += be.Uint32(w[:])
		}
		return s
	}
	tags := slices.Sorted(maps.Keys(tables))
	power, log := 1, 0
	for power*2 <= len(tags) {
		power, log = power*2, log+1
	}
	b := []byte{0, 1, 0, 0}
	for _, w := range []int{len(tags), 16 * power, log, 16 * (len(tags) - power)} {
		b = be.AppendUint16(b, uint16(w))
	}
	be.PutUint32(tables["head"][8:], 0)
	var data []byte
	head := 0
	for _, tag := range tags {
		at := 12 + 16*len(tags) + len(data)
		if tag == "head" {
			head = at
		}
		b = append(b, tag...)
		b = be.AppendUint32(b, sum(tables[tag]))
		b = be.AppendUint32(b, uint32(at))
		b = be.AppendUint32(b, uint32(len(tables[tag])))
		data = append(data, tables[tag]...)
		data = append(data, make([]byte, -len(data)&3)...)
	}
	b = append(b, data...)
	be.PutUint32(b[head+8:], 0xB1B0AFBA-sum(b))
	return b
}
