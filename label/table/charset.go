package table

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/ianaindex"
)

// A scheme is how a charset's bytes make characters.
type scheme uint8

const (
	plain  scheme = iota // UTF-8: the file's bytes are the text
	single               // one byte a character
	multi                // bytes of more than one character's length, by x/text
	utf16le
	utf16be
	utf32le
	utf32be
)

// A charset is a character encoding.
type charset struct {
	name   string // as messages show it
	scheme scheme
	enc    encoding.Encoding // single and multi
	table  *[256]string      // single: UTF-8 of each byte, "" where the byte stands for nothing
}

// The Unicode charsets. Their schemes are decoded here and not by x/text,
// since every character must know its bytes in the file.
var (
	utf8Charset = &charset{name: "UTF-8"}
	unicodes    = map[string]*charset{
		"utf8": utf8Charset, "unicode11utf8": utf8Charset,
		"utf16": {name: "UTF-16BE", scheme: utf16be}, "utf16be": {name: "UTF-16BE", scheme: utf16be}, "utf16le": {name: "UTF-16LE", scheme: utf16le},
		"utf32": {name: "UTF-32BE", scheme: utf32be}, "utf32be": {name: "UTF-32BE", scheme: utf32be}, "utf32le": {name: "UTF-32LE", scheme: utf32le},
		"ucs2": {name: "UTF-16LE", scheme: utf16le}, "unicode": {name: "UTF-16LE", scheme: utf16le},
	}
)

// spokenNames are names of encodings that people use and no registry has.
var spokenNames = map[string]string{
	"macroman": "macintosh", "macosroman": "macintosh", "applemacintosh": "macintosh",
	"ansi": "windows-1252", "winlatin1": "windows-1252", "western": "windows-1252",
	"latin9": "iso-8859-15", "ascii": "us-ascii", "dos": "ibm850",
}

// squeezed is a name without case and punctuation, so that "UTF-8", "utf8"
// and "Utf_8" are one.
func squeezed(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case 'A' <= r && r <= 'Z':
			return r + 'a' - 'A'
		case 'a' <= r && r <= 'z', '0' <= r && r <= '9':
			return r
		}
		return -1
	}, name)
}

// findCharset finds an encoding by the name the user gave. IANA's list goes
// first: there ISO-8859-1 is itself, where WHATWG's list takes it for
// windows-1252.
func findCharset(name string) (*charset, error) {
	key := squeezed(name)
	if c, ok := unicodes[key]; ok {
		return c, nil
	}
	if n, ok := spokenNames[key]; ok {
		name = n
	}
	var enc encoding.Encoding
	for _, n := range []string{name, strings.ReplaceAll(name, "_", "-"), key} {
		if e, err := ianaindex.IANA.Encoding(n); err == nil && e != nil {
			enc = e
		} else if e, err := htmlindex.Get(n); err == nil && e != nil {
			enc = e
		}
		if enc != nil {
			break
		}
	}
	if enc == nil {
		return nil, fmt.Errorf("no encoding is called %q: common ones are utf-8, utf-16le, windows-1252, iso-8859-1, iso-8859-15, macintosh, ibm850, gb18030, shift_jis", name)
	}
	return newCharset(enc, name)
}

func newCharset(enc encoding.Encoding, name string) (*charset, error) {
	for _, index := range []*ianaindex.Index{ianaindex.MIME, ianaindex.IANA} {
		if n, err := index.Name(enc); err == nil && n != "" {
			name = n
			break
		}
	}
	switch key := squeezed(name); key {
	case "utf8", "utf16", "utf16be", "utf16le":
		return unicodes[key], nil
	case "iso2022jp", "hzgb2312", "replacement", "xuserdefined":
		// Their bytes mean other letters after a switch, so no cell stands
		// for itself.
		return nil, fmt.Errorf("the encoding %s cannot be read cell by cell: save the table as UTF-8", name)
	}
	c := &charset{name: name, scheme: multi, enc: enc}
	if m, ok := enc.(*charmap.Charmap); ok {
		c.scheme, c.table = single, new([256]string)
		for b := range c.table {
			if r := m.DecodeByte(byte(b)); r != utf8.RuneError {
				c.table[b] = string(r)
			}
		}
	}
	return c, nil
}

// marks are the byte-order marks, longest first: the mark of UTF-16LE begins
// that of UTF-32LE.
var marks = []struct {
	mark    string
	charset *charset
}{
	{"\xff\xfe\x00\x00", unicodes["utf32le"]},
	{"\x00\x00\xfe\xff", unicodes["utf32be"]},
	{"\xef\xbb\xbf", utf8Charset},
	{"\xff\xfe", unicodes["utf16le"]},
	{"\xfe\xff", unicodes["utf16be"]},
}

// markOf returns the charset of the byte-order mark at the head of a file and
// the mark's length.
func markOf(head []byte) (*charset, int) {
	for _, m := range marks {
		if bytes.HasPrefix(head, []byte(m.mark)) {
			return m.charset, len(m.mark)
		}
	}
	return nil, 0
}

// wide recognises UTF-16 without a mark: text in a Latin script has a zero in
// every second byte. It returns nil if the head does not look so.
func wide(head []byte) *charset {
	var zero [2]int
	n := min(len(head), 512) &^ 1
	for i := range n {
		if head[i] == 0 {
			zero[i&1]++
		}
	}
	half := n / 2
	switch {
	case half < 4:
		return nil
	case zero[1]*4 >= half*3 && zero[0] == 0:
		return unicodes["utf16le"]
	case zero[0]*4 >= half*3 && zero[1] == 0:
		return unicodes["utf16be"]
	}
	return nil
}

// encode returns s in the charset; r is the first character that it lacks, -1
// if there is none.
func (c *charset) encode(s string) (b []byte, r rune) {
	switch c.scheme {
	case plain:
		return []byte(s), -1
	case utf16le, utf16be, utf32le, utf32be:
		for _, r := range s {
			b = c.appendUnits(b, r)
		}
		return b, -1
	}
	e := c.enc.NewEncoder()
	if b, err := e.Bytes([]byte(s)); err == nil {
		return b, -1
	}
	for _, r := range s {
		e.Reset()
		if _, err := e.String(string(r)); err != nil {
			return nil, r
		}
	}
	return nil, utf8.RuneError
}

// appendUnits appends r in one of the wide schemes.
func (c *charset) appendUnits(b []byte, r rune) []byte {
	unit := func(v uint32, size int) {
		for i := range size {
			if c.scheme == utf16be || c.scheme == utf32be {
				i = size - 1 - i
			}
			b = append(b, byte(v>>(8*i)))
		}
	}
	switch {
	case c.scheme == utf32le || c.scheme == utf32be:
		unit(uint32(r), 4)
	case r < 0x10000:
		unit(uint32(r), 2)
	default:
		unit(0xD800+uint32(r-0x10000)>>10, 2)
		unit(0xDC00+uint32(r-0x10000)&0x3FF, 2)
	}
	return b
}
