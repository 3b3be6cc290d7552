package para

import (
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/go-text/typesetting/segmenter"
)

// A scanner is what finding breaks needs; making one costs more than using it.
type scanner struct {
	seg   segmenter.Segmenter
	runes []rune
	opps  []Opportunity
}

var scanners = sync.Pool{New: func() any { return new(scanner) }}

// Opportunities appends to dst the places where text may be broken after
// UAX #14 (Unicode 17), in order. The start and the end of the text are not
// among them. Bytes that are not UTF-8 count as one letter each.
func Opportunities(dst []Opportunity, text string) []Opportunity {
	s := scanners.Get().(*scanner)
	defer scanners.Put(s)
	return s.opportunities(dst, text)
}

// opportunities finds them stretch by stretch. A stretch begins after a space
// with a letter, figure or opening bracket of plain Latin text and ends before
// one with a letter, figure, closing bracket or one of ". , : ;": there a line
// may end (LB18), and no rule of UAX #14 looks from one stretch into the next.
// A stretch that is a single plain word has no opportunity within (LB13, LB14,
// LB23, LB25, LB28, LB29, LB30); the segmenter is asked about others.
func (s *scanner) opportunities(dst []Opportunity, text string) []Opportunity {
	start, simple := 0, true
	last := other // what stands before i
	for i := 0; i < len(text); {
		c, n := kindAt(text, i)
		if c == space {
			end := i
			for i < len(text) && text[i] == ' ' {
				i++
			}
			if i == len(text) {
				break // spaces at the end hang
			}
			if next, _ := kindAt(text, i); closes[last] && begins[next] {
				if !simple {
					dst = s.ask(dst, text[start:end], start)
				}
				dst = append(dst, Opportunity{Off: i})
				start, simple, last = i, true, other
			} else {
				simple, last = false, space
			}
			continue
		}
		if c == other || c == opening && i > start && last != opening || i == start && !begins[c] {
			simple = false
		}
		last = c
		i += n
	}
	if !simple {
		dst = s.ask(dst, text[start:], start)
	}
	return dst
}

// The kinds of characters that plain Latin text consists of.
type kind uint8

const (
	other   kind = iota
	letter       // or figure
	stop         // . , : ;
	opening      // ( [
	closing      // ) ]
	space
	kinds
)

var (
	closes = [kinds]bool{letter: true, stop: true, closing: true}
	begins = [kinds]bool{letter: true, opening: true}
)

var ascii = func() (t [utf8.RuneSelf]kind) {
	for c := range t {
		switch r := rune(c); {
		case r == ' ':
			t[c] = space
		case '0' <= r && r <= '9', 'A' <= r && r <= 'Z', 'a' <= r && r <= 'z':
			t[c] = letter
		case strings.ContainsRune(".,:;", r):
			t[c] = stop
		case r == '(' || r == '[':
			t[c] = opening
		case r == ')' || r == ']':
			t[c] = closing
		}
	}
	return t
}()

// kindAt returns the kind of the character at text[i], and its length.
func kindAt(text string, i int) (kind, int) {
	if text[i] < utf8.RuneSelf {
		return ascii[text[i]], 1
	}
	r, n := utf8.DecodeRuneInString(text[i:])
	if 0xc0 <= r && r <= 0x24f && r != '×' && r != '÷' {
		return letter, n
	}
	return other, n
}

// ask appends the segmenter's opportunities within text, which starts at from.
func (s *scanner) ask(dst []Opportunity, text string, from int) []Opportunity {
	s.init(text)
	off := 0
	for it := s.seg.LineIterator(); it.Next(); {
		ln := it.Line()
		off += width(text[off:], ln.Text)
		if off < len(text) {
			dst = append(dst, Opportunity{from + off, ln.IsMandatoryBreak})
		}
	}
	return dst
}

func (s *scanner) init(text string) {
	s.runes = s.runes[:0]
	for _, r := range text {
		s.runes = append(s.runes, r)
	}
	s.seg.Init(s.runes)
}

// width returns how many bytes of text the runes took. A byte that is not
// UTF-8 became U+FFFD, which is longer than it.
func width(text string, runes []rune) int {
	n := 0
	for _, r := range runes {
		if r == utf8.RuneError {
			_, w := utf8.DecodeRuneInString(text[n:])
			n += w
			continue
		}
		n += utf8.RuneLen(r)
	}
	return n
}
