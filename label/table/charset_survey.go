package table

import (
	"bufio"
	"bytes"
	"io"
	"unicode/utf8"
)

// Bounds of a survey.
const (
	surveyTokens = 4096 // different stretches that are kept
	surveyToken  = 256  // bytes of one; what is longer is cut
)

// A survey is what bytes from 0x80 up a file holds, where it is not UTF-8.
type survey struct {
	bytes [256]int // how often each is met
	// bad are the stretches of text that are not UTF-8, good those with letters
	// beyond ASCII that are; each once, in the order of the file.
	bad, good []token
	heading   []byte // the first line, or the second after one that says "sep="
	ends      struct{ cr, lf bool }
	size      int  // bytes in all
	controls  int  // bytes below 0x20 that no text has
	cut       bool // more stretches than were kept
	lines     int  // how many hold what is not UTF-8, as far as that counts
}

// A token is a stretch of text between characters that no encoding has as part
// of another. Those with two bytes or more to a character put figures, letters
// and some signs in second place, but never a blank, a comma or a line end.
type token struct {
	text  string
	ended bool // no longer than a token may be
}

// parts reports whether a byte stands between tokens.
func parts(b byte) bool { return b < '0' || b > '9' && b < '@' }

// isUTF8 reports whether what r gives is UTF-8. A stretch longer than a row may
// be, with no line end, ends the reading: the lexer has more to say of it.
func isUTF8(r io.Reader, maxRow int) bool {
	buf := make([]byte, readSize)
	kept, line := 0, 0
	for {
		n, err := r.Read(buf[kept:])
		b := buf[:kept+n]
		whole := b
		if err == nil {
			whole = b[:len(b)-halfLetter(b)]
		}
		if !utf8.Valid(whole) {
			return false
		}
		if i := bytes.LastIndexAny(whole, "\r\n"); i >= 0 {
			line = len(whole) - i
		} else {
			line += len(whole)
		}
		if err != nil || line > maxRow {
			return true
		}
		kept = copy(buf, b[len(whole):])
	}
}

// halfLetter returns how many bytes at the end of b begin a character that is
// not there whole.
func halfLetter(b []byte) int {
	for n := 1; n < utf8.UTFMax && n <= len(b); n++ {
		if c := b[len(b)-n]; utf8.RuneStart(c) {
			if c >= utf8.RuneSelf && !utf8.FullRune(b[len(b)-n:]) {
				return n
			}
			return 0
		}
	}
	return 0
}

// surveyOf reads all of r.
func surveyOf(r io.Reader, maxRow int) *survey {
	s := &survey{}
	in := bufio.NewReaderSize(r, readSize)
	seen := map[string]bool{} // and whether it is bad
	var word, line []byte
	high, lines, run := false, 0, 0
	ended := true
	counted := false // the line
	flush := func() {
		if high && s.add(seen, word, ended) && !counted {
			counted = true
			s.lines++
		}
		word, high, ended = word[:0], false, true
	}
	for {
		b, err := in.ReadByte()
		if err != nil {
			break
		}
		s.size++
		switch {
		case b >= 0x80:
			s.bytes[b]++
			high = true
		case b < ' ' && b != '\t' && b != '\r' && b != '\n':
			s.controls++
		}
		switch {
		case parts(b):
			flush()
		case len(word) < surveyToken:
			word = append(word, b)
		default:
			ended = false
		}
		if b == '\r' || b == '\n' {
			s.ends.cr, s.ends.lf = s.ends.cr || b == '\r', s.ends.lf || b == '\n'
			if lines < 2 && len(line) > 0 {
				if s.heading == nil && !bytes.HasPrefix(bytes.ToLower(line), []byte("sep=")) {
					s.heading = bytes.Clone(line)
				}
				line = line[:0]
				lines++
			}
			run, counted = 0, false
			continue
		}
		if lines < 2 && len(line) < readSize {
			line = append(line, b)
		}
		if run++; run > maxRow {
			break
		}
	}
	flush()
	if s.heading == nil {
		s.heading = line
	}
	return s
}

// add counts a stretch and reports whether it is not UTF-8.
func (s *survey) add(seen map[string]bool, word []byte, ended bool) bool {
	if bad, ok := seen[string(word)]; ok {
		return bad
	}
	whole := word
	if !ended {
		whole = word[:len(word)-halfLetter(word)]
	}
	bad := !utf8.Valid(whole)
	list := &s.good
	if bad {
		list = &s.bad
	}
	if len(*list) == surveyTokens {
		s.cut = true
		return bad
	}
	t := token{string(word), ended}
	seen[t.text] = bad
	*list = append(*list, t)
	return bad
}
