package para

import (
	"strings"
	"unicode"
)

// Segments cuts text at the places where a line may end: the opportunities of
// UAX #14 that do not lie inside one of the keep spans, white space at the ends
// of a span not counted. Texts and spaces joined are the text. A line feed or another mandatory break counts even
// inside a span. The last segment's break is Forced.
func Segments(text string, keep []Span) []Segment {
	return AppendSegments(nil, text, keep)
}

// AppendSegments appends the segments of text to dst.
func AppendSegments(dst []Segment, text string, keep []Span) []Segment {
	if text == "" {
		return dst
	}
	s := scanners.Get().(*scanner)
	defer scanners.Put(s)
	s.opps = s.opportunities(s.opps[:0], text)
	start := 0
	for _, o := range s.opps {
		if !o.Forced && kept(text, keep, o.Off) {
			continue
		}
		dst = append(dst, segment(text, start, o.Off, o.Forced))
		start = o.Off
	}
	return append(dst, segment(text, start, len(text), true))
}

// kept reports whether a span has something to keep on both sides of off.
// White space at a span's start is not: a run that starts with the space after
// the word before it may start a line.
func kept(text string, keep []Span, off int) bool {
	for _, k := range keep {
		if k.Start < off && off < k.End && strings.TrimLeftFunc(text[max(k.Start, 0):off], hangs) != "" {
			return true
		}
	}
	return false
}

func segment(text string, start, end int, forced bool) Segment {
	word := strings.TrimRightFunc(text[start:end], hangs)
	g := Segment{
		Off:   start,
		Text:  word,
		Space: text[start+len(word) : end],
		Soft:  strings.HasSuffix(word, softHyphen),
	}
	if forced {
		g.Break = Forced
	}
	return g
}

const softHyphen = "\u00ad"

// hangs reports white space that a line may end with and that is not drawn
// there. No-break spaces and the figure space are not among it.
func hangs(r rune) bool {
	switch r {
	case '\u00a0', '\u2007', '\u202f':
		return false
	case '\u200b': // zero width space: it only allows the break
		return true
	}
	return unicode.IsSpace(r)
}

// Penalties of Sensible, from good to bad.
const (
	afterSlash     = 300
	afterMark      = 600  // punctuation that could be taken for the sentence's
	insideWord     = 4000 // between letters
	besideOrphan   = 8000 // a single letter, or a closing mark, cut off
	minimumCluster = 2    // letters that stay together at either end
)

// Sensible returns the places where a word that is wider than the line may be
// broken all the same, in order: after the marks that join the parts of a URI,
// a path or a code, and, dearer by far, between any two letters (grapheme
// clusters). Place.Hyphen asks for a hyphen where both sides are letters of an
// ordinary word; in a URI, a code or a number a hyphen would be read as part
// of it.
func Sensible(text string) []Place {
	s := scanners.Get().(*scanner)
	defer scanners.Put(s)
	s.init(text)
	code := strings.ContainsAny(text, "0123456789@/_=") || strings.HasPrefix(text, "www.")
	var places []Place
	var prev []rune
	off, n := 0, 0
	for it := s.seg.GraphemeIterator(); it.Next(); n++ {
		g := it.Grapheme()
		if off > 0 {
			places = append(places, place(off, prev, g.Text, code))
		}
		off += width(text[off:], g.Text)
		prev = g.Text
	}
	for i := range places {
		p := &places[i]
		if p.Penalty == insideWord && (i+1 < minimumCluster || n-(i+1) < minimumCluster) {
			p.Penalty = besideOrphan
		}
	}
	return places
}

// place judges a break between two clusters.
func place(off int, before, after []rune, code bool) Place {
	p := Place{Off: off, Penalty: insideWord}
	b, a := before[len(before)-1], after[0]
	joins := unicode.IsLetter(a) || unicode.IsDigit(a)
	switch b {
	case '/', '\\', '&', '=', '?', '#', '_', '|', '+', '–', '—':
		if joins {
			p.Penalty = afterSlash
		}
	case '-', '\u2010', '.', ',', ';', ':', ')', ']', '~', '%':
		if joins {
			p.Penalty = afterMark
		}
	}
	if p.Penalty != insideWord {
		return p
	}
	if !joins || opens(b) {
		p.Penalty = besideOrphan
		return p
	}
	p.Hyphen = !code && unicode.IsLetter(before[0]) && unicode.IsLetter(a) && !unhyphenated(before[0]) && !unhyphenated(a)
	return p
}

func opens(r rune) bool { return unicode.In(r, unicode.Ps, unicode.Pi) }

// unhyphenated reports letters of scripts that break anywhere without a sign.
func unhyphenated(r rune) bool {
	return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul, unicode.Bopomofo)
}
