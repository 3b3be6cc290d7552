package table

import (
	"hash"
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/transform"
)

// readSize is how many bytes are read at a time.
const readSize = 64 << 10

// A span is a stretch of the file's bytes.
type span struct{ start, end int64 }

// An input gives a file's bytes as UTF-8 and knows where in the file each of
// them came from. Text that is not used yet is buf[pos:].
type input struct {
	r   io.Reader
	cs  *charset
	sum hash.Hash // nil if nobody asks for the digest
	buf []byte
	pos int

	// base is the place in the file of buf[0] where the text is the file's
	// own bytes (UTF-8). They are not checked here: the lexer cuts at ASCII
	// letters, which no damage can hide.
	base int64

	// In other encodings raw holds the bytes still to be decoded, rawAt is
	// the place in the file of raw[0], and off has the low half of the place
	// of each byte of buf. The high half follows from rawAt, since no buffer
	// is longer than 4 GiB.
	raw   []byte
	rawAt int64
	off   []uint32
	bad   []span // bytes that stand for nothing, in order

	verdict *verdict // on what is not UTF-8; nil if nobody asked
	near    *charset // that fits the last cell that is not

	eof bool
	err error
}

// newInput starts reading r, whose first skip bytes are a byte-order mark.
func newInput(r io.Reader, cs *charset, skip int, sum hash.Hash) *input {
	in := &input{r: r, cs: cs, sum: sum}
	if skip > 0 {
		mark := make([]byte, skip)
		n, err := io.ReadFull(r, mark)
		in.note(mark[:n], err)
		in.base, in.rawAt = int64(n), int64(n)
	}
	return in
}

// note keeps account of bytes read.
func (in *input) note(b []byte, err error) {
	if in.sum != nil {
		in.sum.Write(b)
	}
	switch err {
	case nil:
	case io.EOF, io.ErrUnexpectedEOF:
		in.eof = true
	default:
		in.eof, in.err = true, err
	}
}

// at returns the place in the file of buf[i]; i may be the buffer's end.
func (in *input) at(i int) int64 {
	if in.cs.scheme == plain {
		return in.base + int64(i)
	}
	if i == len(in.buf) {
		return in.rawAt
	}
	return in.rawAt - int64(uint32(in.rawAt)-in.off[i])
}

// more reads on and reports whether the buffer grew. It moves what is not used
// yet to the front of the buffer.
func (in *input) more() bool {
	if in.eof {
		return false
	}
	if in.pos > 0 {
		n := copy(in.buf, in.buf[in.pos:])
		in.buf = in.buf[:n]
		if in.cs.scheme == plain {
			in.base += int64(in.pos)
		} else {
			copy(in.off, in.off[in.pos:])
			in.off = in.off[:n]
		}
		in.pos = 0
	}
	had := len(in.buf)
	for len(in.buf) == had && !in.eof {
		if in.cs.scheme == plain {
			in.buf = in.read(in.buf)
		} else {
			in.raw = in.read(in.raw)
			in.raw = in.raw[:copy(in.raw, in.raw[in.decode():])]
		}
	}
	return len(in.buf) > had
}

// read appends what one reading gives.
func (in *input) read(to []byte) []byte {
	n := len(to)
	if cap(to)-n < readSize/2 {
		grown := make([]byte, n, 2*cap(to)+readSize)
		copy(grown, to)
		to = grown
	}
	m, err := in.r.Read(to[n:cap(to)])
	in.note(to[n:n+m], err)
	return to[:n+m]
}

// fit returns the name of the encoding that a cell which is not UTF-8 is
// likeliest in, and how it reads there.
func (in *input) fit(cell string) (name, text string) {
	v := in.verdict
	if v == nil { // of a reading that was not judged
		v = detect(surveyOf(strings.NewReader(cell), len(cell)))
	}
	near := in.near
	if in.near, text = v.fits(cell, near); in.near == nil {
		return "none that is known", ""
	}
	return strings.ToLower(in.near.name), text
}

// put appends a decoded character that the next n bytes of the file stand for;
// s is "" where they stand for nothing.
func (in *input) put(s string, n int) {
	if s == "" {
		in.bad = append(in.bad, span{in.rawAt, in.rawAt + int64(n)})
		s = "\uFFFD"
	}
	in.buf = append(in.buf, s...)
	for range len(s) {
		in.off = append(in.off, uint32(in.rawAt))
	}
	in.rawAt += int64(n)
}

// decode decodes as much of raw as can be and returns how many bytes that is.
func (in *input) decode() int {
	switch in.cs.scheme {
	case single:
		for _, b := range in.raw {
			in.put(in.cs.table[b], 1)
		}
		return len(in.raw)
	case multi:
		return in.decodeMulti()
	}
	return in.decodeWide()
}

// decodeWide decodes UTF-16 and UTF-32.
func (in *input) decodeWide() int {
	size := 2
	if in.cs.scheme == utf32le || in.cs.scheme == utf32be {
		size = 4
	}
	big := in.cs.scheme == utf16be || in.cs.scheme == utf32be
	unit := func(at int) (v rune) {
		for i := range size {
			j := size - 1 - i
			if big {
				j = i
			}
			v = v<<8 | rune(in.raw[at+j])
		}
		return v
	}
	at := 0
	for at+size <= len(in.raw) {
		v, n := unit(at), size
		if size == 2 && 0xD800 <= v && v < 0xDC00 {
			if at+4 > len(in.raw) {
				if !in.eof {
					break // its other half is still to come
				}
			} else if w := unit(at + 2); 0xDC00 <= w && w < 0xE000 {
				v, n = 0x10000+(v-0xD800)<<10+(w-0xDC00), 4
			}
		}
		if utf8.ValidRune(v) {
			in.put(string(v), n)
		} else {
			in.put("", n) // half of a pair, or beyond Unicode
		}
		at += n
	}
	if in.eof && at < len(in.raw) {
		in.put("", len(in.raw)-at)
		at = len(in.raw)
	}
	return at
}

// decodeMulti decodes by x/text, character by character so that each knows its
// bytes.
func (in *input) decodeMulti() int {
	dec := in.cs.enc.NewDecoder()
	var out [16]byte
	at := 0
	for at < len(in.raw) {
		if b := in.raw[at]; b < 0x80 {
			in.put(string(rune(b)), 1)
			at++
			continue
		}
		n := 1
		for ; ; n++ {
			if at+n > len(in.raw) {
				if !in.eof {
					return at // its rest is still to come
				}
				in.put("", len(in.raw)-at)
				return len(in.raw)
			}
			dec.Reset()
			got, used, err := dec.Transform(out[:], in.raw[at:at+n], false)
			if err == transform.ErrShortSrc && used == 0 && n < 8 {
				continue
			}
			s := string(out[:got])
			if used == 0 || err != nil || s == "" {
				s, used = "", max(1, used)
			}
			// A decoder may give up on the first byte and go on with the next.
			if rest, bad := strings.CutPrefix(s, "\uFFFD"); bad {
				s = ""
				if rest != "" {
					used = 1
				}
			}
			in.put(s, used)
			at += used
			break
		}
	}
	return at
}
