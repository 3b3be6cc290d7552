package name

import (
	"unicode"
	"unicode/utf8"
)

// A class is what a token is by its characters alone.
type class uint8

const (
	word      class = iota
	crossSign       // × and its entities
	plusSign        // +
	equalSign       // = ≡
	slash           // / |
	comma           // , ; :
	openSign        // ( [ {
	closeSign       // ) ] }
	quote           // an opening quotation mark that has its partner
	unquote         // the partner
	mark            // ? ! * § ♂ and whatever else
	number          // begins with a figure
	tag             // <i>
	script          // a word of another script: a vernacular name
)

// A role is what the record's columns say of a token.
type role uint8

const (
	noRole role = iota
	roleGenus
	roleInfrageneric
	roleEpithet
	roleInfraspecific
	roleAuthor
)

// A token is a stretch of text without white space in it.
type token struct {
	start, end int
	pair       int // the partner of a bracket or quotation mark; 0 if none
	letters    int // code points, without a final full stop
	class      class
	kind       kind
	role       role
	upper      bool // begins with a capital
	inner      bool // has a capital behind its first letter, hyphens not counted
	caps       bool // has two letters or more and no small one
	dot        bool // ends with a full stop
	code       bool // has figures or underscores: a collection's code, not a word
	alien      bool // has letters that are not Latin
	greek      bool // one Greek letter
	glued      bool // no white space before
	italic     bool
	taken      level // what it became in the name, of words in italics
	cut        int   // bytes at the end that stay upright: a sentence's full stop
}

// A lexer splits a text into tokens. Every byte that is not white space is in
// exactly one token.
type lexer struct {
	text string
	toks []token
	// spaced is false where underscores stand for all spaces.
	spaced bool
	open   []int // brackets waiting for their partner
}

func lex(text string) []token {
	// Names have a token for every four or five characters.
	l := lexer{text: text, toks: make([]token, 0, len(text)/4+2)}
	for i := 0; i < len(text); i++ {
		if text[i] <= ' ' {
			l.spaced = true
			break
		}
	}
	glued := false
	for i := 0; i < len(text); {
		c, n := decode(text, i)
		if isSpace(c) || c == '_' && !l.spaced {
			i += n
			glued = false
			continue
		}
		before := len(l.toks)
		i = l.token(i, c, n)
		for k := before; k < len(l.toks); k++ {
			l.toks[k].glued = glued
			glued = true
		}
	}
	return l.toks
}

func decode(s string, i int) (rune, int) {
	if c := s[i]; c < utf8.RuneSelf {
		return rune(c), 1
	}
	return utf8.DecodeRuneInString(s[i:])
}

func isSpace(r rune) bool {
	if r < 0x80 {
		return r == ' ' || '\t' <= r && r <= '\r' || r < ' '
	}
	return unicode.IsSpace(r) || r == 0x200b || r == 0x2060 || r == 0xfeff
}

// token reads what begins at i, which is not white space, and returns the end.
func (l *lexer) token(i int, c rune, n int) int {
	add := func(cl class, end int) int {
		l.toks = append(l.toks, token{start: i, end: end, class: cl})
		return end
	}
	switch c {
	case '(', '[', '{':
		l.open = append(l.open, len(l.toks))
		return add(openSign, i+n)
	case ')', ']', '}':
		if k := len(l.open); k > 0 {
			l.toks[l.open[k-1]].pair = len(l.toks)
			l.open = l.open[:k-1]
		}
		return add(closeSign, i+n)
	case ',', ';', ':':
		return add(comma, i+n)
	case '/', '|', '\\':
		return add(slash, i+n)
	case '=', '≡', '≈':
		return add(equalSign, i+n)
	case '+':
		return add(plusSign, i+n)
	case '×', '✕', '✖', '⨯', '╳', '⤫':
		return add(crossSign, i+n)
	case '<':
		if end := tagEnd(l.text, i); end > 0 {
			return add(tag, end)
		}
	case '&':
		end, cl := entity(l.text, i)
		if cl != word {
			return add(cl, end)
		}
		if end > i {
			return l.word(i)
		}
		l.toks = append(l.toks, token{start: i, end: i + 1, class: word, kind: and})
		return i + 1
	case '“', '”', '„', '‟', '"', '«', '»', '‘', '’', '‚', '‹', '\'', '`', '´':
		return l.quote(i, c, n)
	}
	switch {
	case '0' <= c && c <= '9':
		return l.number(i)
	case isLetter(c):
		return l.word(i)
	}
	return add(mark, i+n)
}

func isLetter(r rune) bool {
	if r < 0x80 {
		return 'a' <= r|0x20 && r|0x20 <= 'z'
	}
	return unicode.IsLetter(r) || unicode.IsMark(r) || r == utf8.RuneError
}

// tagEnd returns the end of a mark-up tag that begins at i, 0 if none does.
func tagEnd(s string, i int) int {
	j := i + 1
	if j < len(s) && s[j] == '/' {
		j++
	}
	for k := j; k < len(s) && k < j+12; k++ {
		switch c := s[k]; {
		case c == '>' && k > j:
			return k + 1
		case !('a' <= c|0x20 && c|0x20 <= 'z' || '0' <= c && c <= '9' || c == '/'):
			return 0
		}
	}
	return 0
}

// entity reads a character reference at i: a cross or an ampersand (class not
// word), or a letter with an accent (class word, end behind it); end is i where
// none stands.
func entity(s string, i int) (end int, cl class) {
	j := i + 1
	for j < len(s) && j < i+10 && s[j] != ';' {
		c := s[j]
		if !('a' <= c|0x20 && c|0x20 <= 'z' || '0' <= c && c <= '9' || c == '#' && j == i+1) {
			return i, word
		}
		j++
	}
	if j >= len(s) || s[j] != ';' || j == i+1 {
		return i, word
	}
	switch w := s[i+1 : j]; w {
	case "times", "#215", "#xD7", "#xd7":
		return j + 1, crossSign
	case "amp", "#38":
		return j + 1, mark
	case "szlig", "eth", "ETH", "thorn", "THORN":
		return j + 1, word
	default:
		for _, e := range [...]string{"acute", "grave", "uml", "circ", "tilde", "cedil", "ring", "slash", "caron", "lig"} {
			if len(w) > len(e) && w[len(w)-len(e):] == e {
				return j + 1, word
			}
		}
	}
	return j + 1, mark
}

// quote reads a quotation mark. One that begins a word and has its partner is
// a quote; one before t or s is a Dutch particle ('t Hart); the rest are marks.
func (l *lexer) quote(i int, c rune, n int) int {
	for k := len(l.toks) - 1; k >= 0 && l.toks[k].start >= i-quoteLimit; k-- {
		if t := &l.toks[k]; t.class == quote && t.pair == -i-1 {
			t.pair = len(l.toks)
			l.toks = append(l.toks, token{start: i, end: i + n, class: unquote, pair: k})
			return i + n
		}
	}
	if j := i + n; j < len(l.text) && isSingle(c) && (l.text[j] == 't' || l.text[j] == 's') {
		next, _ := utf8.DecodeRuneInString(l.text[j+1:])
		if j+1 < len(l.text) && (isSpace(next) || unicode.IsUpper(next)) {
			l.toks = append(l.toks, token{start: i, end: j + 1, letters: 1, kind: link})
			return j + 1
		}
	}
	t := token{start: i, end: i + n, class: mark}
	if end := closing(l.text, i+n, c); end > 0 {
		t.class, t.pair = quote, -end-1 // until the partner is met
	}
	l.toks = append(l.toks, t)
	return i + n
}

// quoteLimit is how many bytes a quoted name or cultivar epithet has at most.
const quoteLimit = 300

func isSingle(c rune) bool {
	return c == '\'' || c == '’' || c == '‘' || c == '´' || c == '`'
}

// closing returns where the partner of the mark c stands at or after i, 0 if
// nowhere: behind a word and not before a letter, so that an apostrophe inside
// a word is none.
func closing(s string, i int, c rune) int {
	from := i
	for i < len(s) && i < from+quoteLimit-10 {
		r, n := decode(s, i)
		if i > from && partner(c, r) {
			next, _ := utf8.DecodeRuneInString(s[i+n:])
			if i+n >= len(s) || !isLetter(next) {
				return i
			}
		}
		i += n
	}
	return 0
}

func partner(open, shut rune) bool {
	switch open {
	case '“', '”', '„', '‟':
		return shut == '”' || shut == '“'
	case '"':
		return shut == '"'
	case '«':
		return shut == '»'
	case '»':
		return shut == '«'
	case '‹':
		return shut == '›'
	case '‘', '’', '‚', '`', '´':
		return shut == '’' || shut == '‘' && open == '‚' || shut == '´' || shut == '\''
	}
	return shut == open
}

// number reads what begins with a figure. "10-punctata" and "13punctatus" are
// words.
func (l *lexer) number(i int) int {
	j := i
	for j < len(l.text) && '0' <= l.text[j] && l.text[j] <= '9' {
		j++
	}
	if j+3 < len(l.text) && l.text[j] == '-' && isSmall(l.text[j+1]) && isSmall(l.text[j+2]) && isSmall(l.text[j+3]) {
		return l.wordFrom(i, j+1)
	}
	k := j
	for k < len(l.text) && isSmall(l.text[k]) {
		k++
	}
	if k-j > 5 {
		return l.wordFrom(i, j)
	}
	for j < len(l.text) {
		c, n := decode(l.text, j)
		if !isLetter(c) && !('0' <= c && c <= '9') && c != '.' && c != '-' && c != '–' && c != '_' {
			break
		}
		j += n
	}
	l.toks = append(l.toks, token{start: i, end: j, class: number})
	return j
}

func isSmall(c byte) bool { return 'a' <= c && c <= 'z' }

// smallAt reports whether three small letters stand at i.
func smallAt(s string, i int) bool {
	return i+2 < len(s) && isSmall(s[i]) && isSmall(s[i+1]) && isSmall(s[i+2])
}

func isConsonant(c byte) bool {
	switch c {
	case 'a', 'e', 'i', 'o', 'u', 'x', 'y':
		return false
	}
	return isSmall(c)
}

func (l *lexer) word(i int) int { return l.wordFrom(i, i) }

// wordFrom reads a word that begins at start and whose letters begin at i. A
// hyphen or an apostrophe between letters belongs to it, and so does a full
// stop behind it; a stop before a hyphen is inside it (B.-E., st.-johnii).
func (l *lexer) wordFrom(start, i int) int {
	s := l.text
	t := token{start: start}
	// XAgropogon, xHeucherella: the sign stands before the word.
	if i+2 < len(s) && (s[i] == 'x' || s[i] == 'X') {
		c, n := decode(s, i+1)
		if unicode.IsUpper(c) && i+1+n < len(s) {
			if d, _ := decode(s, i+1+n); unicode.IsLower(d) {
				l.toks = append(l.toks, token{start: i, end: i + 1, class: crossSign})
				return i + 1
			}
		}
	}
	// xrubens: no Latin or Greek word begins with an x before another consonant.
	if start > 0 && start == i && i+4 < len(s) && s[i] == 'x' && isConsonant(s[i+1]) && isSmall(s[i+2]) && isSmall(s[i+3]) && isSmall(s[i+4]) {
		l.toks = append(l.toks, token{start: i, end: i + 1, class: crossSign})
		return i + 1
	}
	small, first, fresh := false, true, true
	for i < len(s) {
		c, n := decode(s, i)
		switch {
		case isLetter(c):
			up := c < 0x80 && c <= 'Z' || c >= 0x80 && unicode.IsUpper(c)
			if first {
				t.upper = up
				t.greek = unicode.Is(unicode.Greek, c)
			} else if up && !fresh {
				t.inner = true
			}
			t.alien = t.alien || c >= 0x80 && !unicode.Is(unicode.Latin, c) && !unicode.IsMark(c) && c != utf8.RuneError
			small = small || !up
			first, fresh = false, false
			t.letters++
		case c == '&':
			end, cl := entity(s, i)
			if end == i || cl != word {
				return l.finish(t, i, small)
			}
			t.letters, small, first, fresh = t.letters+1, true, false, false
			n = end - i
		case '0' <= c && c <= '9' || c == '_' && l.spaced:
			t.code = true
		case c == '-' || c == '‐' || c == '‑' || isSingle(c) || c == 'ʼ' || c == 'ʹ' || c == '?':
			if i+n >= len(s) {
				return l.finish(t, i, small)
			}
			if next, _ := decode(s, i+n); !isLetter(next) || first || l.closes(i) {
				if c == '-' && !first {
					i += n // Hub.- Mor.
				}
				return l.finish(t, i, small)
			}
			if c == '?' {
				small = true
			}
			fresh = c != '?' && (t.upper || !isSingle(c)) // O'Brien, but d'Urv. and t'Hart are no epithets
		case c == '–' && !t.upper && t.letters >= 3 && smallAt(s, i+n):
			// uva–ursi: a word processor's dash for the hyphen of an epithet
		case c == '.':
			if i+2 < len(s) && s[i+1] == '-' {
				if next, _ := decode(s, i+2); isLetter(next) || next == ' ' {
					n = 2
					fresh = true
					if next == ' ' {
						return l.finish(t, i+2, small)
					}
					break
				}
			}
			if i+1 < len(s) && isSmall(s[i+1]) && s[t.start:i] == "st" {
				break // st.johnii
			}
			t.dot = true
			return l.finish(t, i+1, small)
		default:
			return l.finish(t, i, small)
		}
		i += n
	}
	return l.finish(t, i, small)
}

// closes reports whether the mark at i is the awaited partner of a quote.
func (l *lexer) closes(i int) bool {
	for k := len(l.toks) - 1; k >= 0 && l.toks[k].start >= i-quoteLimit; k-- {
		if l.toks[k].class == quote && l.toks[k].pair == -i-1 {
			return true
		}
	}
	return false
}

// finish closes a word that ends at end and looks its kind up.
func (l *lexer) finish(t token, end int, small bool) int {
	t.end = end
	if t.alien && (!t.greek || t.letters > 1) {
		t.class = script
		if w := l.text[t.start:end]; w == "х" || w == "Х" { // Cyrillic ha, typed for the sign
			t.class = crossSign
		}
		l.toks = append(l.toks, token{start: t.start, end: end, class: t.class})
		return end
	}
	if !small && t.letters > 1 {
		t.caps, t.inner = true, false
	}
	t.greek = t.greek && t.letters == 1
	if !t.code && !t.greek {
		var buf [20]byte
		if w, ok := lower(buf[:], l.text[t.start:t.end], t.dot); ok {
			if !t.upper {
				t.kind = lookup(string(w))
			} else {
				t.kind = titleKind(string(w))
			}
			if t.kind == cross && t.dot {
				t.kind = plainWord // X. annuum
			}
		}
	}
	l.toks = append(l.toks, t)
	return end
}

// lower writes w in small letters and without a final stop into buf; not ok if
// it does not fit, and then w is none of the listed words.
func lower(buf []byte, w string, dot bool) ([]byte, bool) {
	if dot {
		w = w[:len(w)-1]
	}
	if len(w) > len(buf) {
		return nil, false
	}
	for i := 0; i < len(w); i++ {
		c := w[i]
		if 'A' <= c && c <= 'Z' {
			c |= 0x20
		}
		buf[i] = c
	}
	return buf[:len(w)], true
}
