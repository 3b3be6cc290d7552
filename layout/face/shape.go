package face

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/fonts"
	"cornerslip/layout"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
	"github.com/go-text/typesetting/segmenter"
)

// A shaper is what one goroutine needs to shape words.
type shaper struct {
	buf   *harfbuzz.Buffer
	fonts map[*fonts.Face]*harfbuzz.Font
	seg   segmenter.Segmenter
	runes []rune // of the piece at hand, in NFC
	drawn []rune // what stands for each of them
	run   []shaped
	refs  map[refKey]ref
}

func (s *Setter) shaper() *shaper {
	s.mu.Lock()
	defer s.mu.Unlock()
	if n := len(s.idle); n > 0 {
		sh := s.idle[n-1]
		s.idle = s.idle[:n-1]
		return sh
	}
	return &shaper{buf: harfbuzz.NewBuffer(), fonts: map[*fonts.Face]*harfbuzz.Font{}, refs: map[refKey]ref{}}
}

func (s *Setter) done(sh *shaper) {
	s.mu.Lock()
	s.idle = append(s.idle, sh)
	s.mu.Unlock()
}

// font returns a face as HarfBuzz takes it.
func (s *Setter) font(sh *shaper, f *fonts.Face) (*harfbuzz.Font, error) {
	if hf := sh.fonts[f]; hf != nil {
		return hf, nil
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	ft := s.parsed[f]
	if ft == nil {
		ld, err := opentype.NewLoader(bytes.NewReader(f.TTF()))
		if err == nil {
			ft, err = font.NewFont(ld)
		}
		if err != nil {
			return nil, fmt.Errorf("the font %s cannot be read: %w", f.Name, err)
		}
		s.parsed[f] = ft
	}
	hf := harfbuzz.NewFont(font.NewFace(ft))
	sh.fonts[f] = hf
	return hf, nil
}

// shape makes a Word.
func (s *Setter) shape(text string, style layout.Style) (w *Word, err error) {
	str, err := prepare(text)
	if err != nil {
		return nil, err
	}
	chain := s.chain(style)
	sh := s.shaper()
	defer func() {
		if p := recover(); p != nil {
			// Only a font file that is sound to the eye and broken within comes
			// here. The shaper may be in disorder and is not used again.
			w, err = nil, fmt.Errorf("%q cannot be set: a font file is damaged (%v)", text, p)
			return
		}
		s.done(sh)
	}()
	w = &Word{style: style}
	var failed error
	sh.split(chain, str, func(part string, f *fonts.Face) bool {
		if f == nil {
			failed = missing(chain, part, text)
			return false
		}
		var p piece
		if p, failed = s.piece(sh, f, part, text); failed == nil {
			w.pieces = append(w.pieces, p)
		}
		return failed == nil
	})
	if failed != nil {
		return nil, failed
	}
	return w, nil
}

// split cuts str into stretches of one face each; the face is nil for a
// cluster that none has.
func (sh *shaper) split(chain []*fonts.Face, str string, yield func(string, *fonts.Face) bool) {
	if str == "" {
		return
	}
	if covers(chain[0], str) {
		yield(str, chain[0])
		return
	}
	start, off := 0, 0
	var in *fonts.Face
	ok := true
	sh.clusters(str, func(c string) bool {
		f := find(chain, c)
		if off > start && (f == nil || f != in) {
			if ok = yield(str[start:off], in); !ok {
				return false
			}
			start = off
		}
		off += len(c)
		in = f
		if f == nil {
			if ok = yield(c, nil); !ok {
				return false
			}
			start = off
		}
		return true
	})
	if ok && off > start {
		yield(str[start:off], in)
	}
}

// clusters cuts str, valid UTF-8, into grapheme clusters (UAX #29).
func (sh *shaper) clusters(str string, yield func(string) bool) {
	sh.runes = append(sh.runes[:0], []rune(str)...)
	sh.seg.Init(sh.runes)
	for it := sh.seg.GraphemeIterator(); it.Next(); {
		g := it.Grapheme()
		if !yield(str[g.OffsetInBytes : g.OffsetInBytes+g.LengthInBytes]) {
			return
		}
	}
}

func off(tags ...string) []harfbuzz.Feature {
	var fs []harfbuzz.Feature
	for _, t := range tags {
		fs = append(fs, harfbuzz.Feature{Tag: opentype.MustNewTag(t), Value: 0, Start: harfbuzz.FeatureGlobalStart, End: harfbuzz.FeatureGlobalEnd})
	}
	return fs
}

var (
	// Without ligatures every glyph stands for a code point.
	noLigatures = off("liga", "clig")
	// Without any substitution every glyph is the one its code point names.
	// Kerning and the places of accents stay.
	noSubstitutes = off("liga", "clig", "ccmp", "locl", "calt", "rlig", "rclt", "frac", "numr", "dnom", "mset")
)

// piece shapes a stretch of one face.
func (s *Setter) piece(sh *shaper, f *fonts.Face, str, text string) (piece, error) {
	hf, err := s.font(sh, f)
	if err != nil {
		return piece{}, err
	}
	sh.runes = append(sh.runes[:0], []rune(str)...)
	sh.drawn = sh.drawn[:0]
	for _, r := range sh.runes {
		d, ok := stand(f, r)
		if !ok {
			d = r // drawn as letter and accents
		}
		sh.drawn = append(sh.drawn, d)
	}
	if len(sh.drawn) > 1 {
		sh.dotless(func(r rune) bool { _, ok := f.Glyph(r); return ok })
	}
	p, bad := sh.try(hf, f, str, noLigatures)
	if bad >= 0 {
		p, bad = sh.try(hf, f, str, noSubstitutes)
	}
	if bad >= 0 {
		r := sh.runes[bad]
		return piece{}, &MissingError{r, string(r), text,
			fmt.Sprintf("the font %s draws %s (U+%04X) by a glyph that the PDF cannot name", f.Name, quote(string(r)), r)}
	}
	return p, nil
}

// try shapes with the given features. bad is the index of a rune that is drawn
// by a glyph without a code point, or -1.
func (sh *shaper) try(hf *harfbuzz.Font, f *fonts.Face, str string, features []harfbuzz.Feature) (p piece, bad int) {
	m := f.Metrics()
	p = piece{face: f, em: int64(m.UnitsPerEm), glyphs: make([]glyph, 0, len(sh.drawn))}
	var drawn strings.Builder
	for from := 0; from < len(sh.drawn); {
		to, script := sh.script(from)
		if bad := sh.shapeRun(hf, f, from, to, script, p.width, features); bad >= 0 {
			return p, bad
		}
		sh.placeMarks(hf, sh.run, int32(m.UnitsPerEm), int32(m.XHeight))
		for i := range sh.run {
			g := &sh.run[i]
			if i > 0 && g.cluster != sh.run[i-1].cluster {
				p.letters++
			}
			x := g.x
			if len(p.glyphs) == 0 {
				x = 0 // a piece starts at its pen
			}
			p.glyphs = append(p.glyphs, glyph{bytes: int32(utf8.RuneLen(g.r)), x: x, rise: g.rise, letters: p.letters})
			drawn.WriteRune(g.r)
			p.ink.add(hf, g.glyph, x, g.rise)
			p.width += g.adv
		}
		p.letters++
		from = to
	}
	p.text = str
	if d := drawn.String(); d != str {
		p.text, p.actual = d, str
	}
	return p, -1
}

// shapeRun fills sh.run with the glyphs of one script, from pen on. bad is as
// for try.
func (sh *shaper) shapeRun(hf *harfbuzz.Font, f *fonts.Face, from, to int, script language.Script, pen int32, features []harfbuzz.Feature) (bad int) {
	b := sh.buf
	b.Clear()
	b.AddRunes(sh.drawn, from, to-from)
	b.Props = harfbuzz.SegmentProperties{Direction: harfbuzz.LeftToRight, Script: script, Language: "en"}
	b.Shape(hf, features)
	sh.run = sh.run[:0]
	if len(b.Info) == 0 {
		return from
	}
	for i, g := range b.Info {
		r, ok := sh.codePoint(f, g, b.Info, i, to)
		if !ok {
			return g.Cluster
		}
		pos := b.Pos[i]
		out := shaped{glyph: g.Glyph, r: r, cluster: g.Cluster, x: pen + pos.XOffset, rise: pos.YOffset, adv: pos.XAdvance}
		out.free = i > 0 && b.Info[i-1].Cluster == g.Cluster && pos.XOffset == 0 && pos.YOffset == 0 && unicode.In(r, unicode.Mn, unicode.Me)
		if meant := sh.runes[g.Cluster]; meant != sh.drawn[g.Cluster] && r == ' ' {
			out.adv = breadth(f, meant)
		}
		sh.run = append(sh.run, out)
		pen += out.adv
	}
	return -1
}

// script returns the end of the stretch of one script that starts at from.
// Characters of no script of their own go with what is before them, and with
// Latin if nothing is.
func (sh *shaper) script(from int) (to int, script language.Script) {
	for to = from; to < len(sh.drawn); to++ {
		sc := language.LookupScript(sh.drawn[to])
		if !sc.Strong() || sc == script {
			continue
		}
		if script != 0 {
			return to, script
		}
		script = sc
	}
	if script == 0 {
		script = language.Latin
	}
	return to, script
}

// codePoint returns the code point by which the PDF names a glyph: one of the
// glyph's own cluster if there is, or another that stands for the same glyph.
func (sh *shaper) codePoint(f *fonts.Face, g harfbuzz.GlyphInfo, all []harfbuzz.GlyphInfo, i, end int) (rune, bool) {
	if g.Glyph == 0 || g.Glyph > 0xffff {
		return 0, false
	}
	for j := i + 1; j < len(all); j++ {
		if all[j].Cluster != g.Cluster {
			end = all[j].Cluster
			break
		}
	}
	for _, r := range sh.drawn[g.Cluster:end] {
		if n, ok := f.Glyph(r); ok && uint32(n) == uint32(g.Glyph) {
			return r, true
		}
	}
	return f.Rune(uint16(g.Glyph))
}
