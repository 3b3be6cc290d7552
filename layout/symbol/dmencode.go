package symbol

// The encodation schemes of ISO/IEC 16022 that can shorten printable ASCII.
// Base 256 cannot: it takes a codeword for each character, as ASCII does.
const (
	dmASCII = iota
	dmC40
	dmText
	dmX12
	dmEDIFACT
	dmSchemes
)

var dmLatch = [dmSchemes]byte{dmC40: 230, dmText: 239, dmX12: 238, dmEDIFACT: 240}

const dmUnlatch = 254 // from C40, Text and X12

// A dmState is where an encodation stands: how many characters are in, which
// scheme is on, and how many values of its unfinished group wait (three make a
// group, four in EDIFACT).
type dmState struct{ at, scheme, wait int }

// A dmStep is the cheapest way found to a state: the codewords written by then
// and the state before it.
type dmStep struct {
	used int
	from dmState
	ok   bool
}

// dmCodewords returns text as exactly n codewords, padded, or false if it does
// not fit. It tries all schemes at every character; fewer codewords written is
// never worse, so the cheapest way to each state decides.
func dmCodewords(text string, n int) ([]byte, bool) {
	steps := make([][dmSchemes][4]dmStep, len(text)+1)
	reach := func(s, from dmState, used int) {
		if p := &steps[s.at][s.scheme][s.wait]; used <= n && (!p.ok || used < p.used) {
			*p = dmStep{used, from, true}
		}
	}
	reach(dmState{}, dmState{at: -1}, 0)
	for i := range text {
		// Unlatching first, then what can be done in ASCII, then the rest.
		for scheme := dmC40; scheme < dmSchemes; scheme++ {
			for wait, p := range steps[i][scheme] {
				if c := dmLeave(scheme, wait, n-p.used); p.ok && c > 0 {
					reach(dmState{at: i}, dmState{i, scheme, wait}, p.used+c)
				}
			}
		}
		if p := steps[i][dmASCII][0]; p.ok {
			s := dmState{at: i}
			reach(dmState{at: i + 1}, s, p.used+1)
			if i+1 < len(text) && isDigit(text[i]) && isDigit(text[i+1]) {
				reach(dmState{at: i + 2}, s, p.used+1)
			}
			for scheme := dmC40; scheme < dmSchemes; scheme++ {
				reach(dmState{at: i, scheme: scheme}, s, p.used+1)
			}
		}
		for scheme := dmC40; scheme < dmSchemes; scheme++ {
			group, words := 3, 2
			if scheme == dmEDIFACT {
				group, words = 4, 3
			}
			v := len(dmValues(scheme, text[i]))
			if v == 0 {
				continue
			}
			for wait, p := range steps[i][scheme] {
				if p.ok {
					to := wait + v
					reach(dmState{i + 1, scheme, to % group}, dmState{i, scheme, wait}, p.used+to/group*words)
				}
			}
		}
	}
	end, ok := dmEnd(text, n, steps)
	if !ok {
		return nil, false
	}
	var path []dmState
	for s := end; s.at >= 0; s = steps[s.at][s.scheme][s.wait].from {
		path = append(path, s)
	}
	return dmWrite(text, n, path), true
}

// dmLeave returns how many codewords it takes to go back to ASCII, 0 if it
// cannot be done there. left is what the symbol still holds; a reader leaves
// EDIFACT of its own accord where fewer than three codewords are left.
func dmLeave(scheme, wait, left int) int {
	switch {
	case scheme == dmEDIFACT && left >= 3:
		return [4]int{1, 2, 3, 3}[wait]
	case scheme != dmEDIFACT && scheme != dmASCII && wait == 0:
		return 1
	}
	return 0
}

// dmEnd returns a state from which the text can be ended within n codewords,
// by the rules each scheme has for the end of the symbol.
func dmEnd(text string, n int, steps [][dmSchemes][4]dmStep) (dmState, bool) {
	for scheme := range dmSchemes {
		for wait, p := range steps[len(text)][scheme] {
			left := n - p.used
			if p.ok && (wait == 0 ||
				scheme == dmEDIFACT && left >= 3 ||
				scheme != dmEDIFACT && scheme != dmX12 && wait == 2 && left == 2) {
				return dmState{len(text), scheme, wait}, true
			}
		}
	}
	// What remains goes as ASCII into the last codewords, without unlatching.
	for i := max(0, len(text)-4); i < len(text); i++ {
		need := len(dmASCIIWords(nil, text[i:]))
		for scheme := dmC40; scheme < dmSchemes; scheme++ {
			p := steps[i][scheme][0]
			left := n - p.used
			if p.ok && (scheme == dmEDIFACT && left <= 2 && need <= left ||
				scheme != dmEDIFACT && left == 1 && i == len(text)-1) {
				return dmState{i, scheme, 0}, true
			}
		}
	}
	return dmState{}, false
}

// dmWrite writes the codewords along path, which runs from the end to the
// start.
func dmWrite(text string, n int, path []dmState) []byte {
	out := make([]byte, 0, n)
	for k := len(path) - 1; k >= 0; {
		// One stretch in one scheme: from path[k] to path[j].
		scheme := path[k].scheme
		j := k
		for j > 0 && path[j-1].scheme == scheme {
			j--
		}
		part := text[path[k].at:path[j].at]
		switch {
		case scheme == dmASCII:
			out = dmASCIIWords(out, part)
		case scheme == dmEDIFACT:
			// A reader leaves it by itself at the end of a full symbol.
			out = dmEDIFACTWords(append(out, dmLatch[scheme]), part, n)
		default:
			out = dmTripleWords(append(out, dmLatch[scheme]), scheme, part)
			if len(out) < n && (j > 0 || path[j].at == len(text)) {
				out = append(out, dmUnlatch)
			}
		}
		k = j - 1
	}
	out = dmASCIIWords(out, text[path[0].at:])
	for pad := byte(129); len(out) < n; {
		out = append(out, pad)
		// Further pads are scattered, so that they make no pattern.
		r := 129 + 149*(len(out)+1)%253 + 1
		if r > 254 {
			r -= 254
		}
		pad = byte(r)
	}
	return out
}

// dmASCIIWords appends s in the ASCII scheme, pairs of digits in one codeword.
func dmASCIIWords(out []byte, s string) []byte {
	for i := 0; i < len(s); i++ {
		if i+1 < len(s) && isDigit(s[i]) && isDigit(s[i+1]) {
			out = append(out, 130+10*(s[i]-'0')+s[i+1]-'0')
			i++
		} else {
			out = append(out, s[i]+1)
		}
	}
	return out
}

// dmTripleWords appends s in C40, Text or X12: three values in two codewords.
// Two that are left over at the end of the symbol get a third, which readers
// pass over.
func dmTripleWords(out []byte, scheme int, s string) []byte {
	var v []byte
	for i := range len(s) {
		v = append(v, dmValues(scheme, s[i])...)
	}
	if len(v)%3 == 2 {
		v = append(v, 0)
	}
	for ; len(v) >= 3; v = v[3:] {
		w := 1600*int(v[0]) + 40*int(v[1]) + int(v[2]) + 1
		out = append(out, byte(w>>8), byte(w))
	}
	return out
}

// dmEDIFACTWords appends s in the EDIFACT scheme of a symbol of n codewords:
// four values of six bits in three codewords. Where fewer than three are left
// in the symbol a reader leaves the scheme by itself, elsewhere the value 31
// says so.
func dmEDIFACTWords(out []byte, s string, n int) []byte {
	start := len(out) + len(s)/4*3 // of the last group
	var v []byte
	for i := range len(s) {
		v = append(v, s[i]&0x3F)
	}
	if n-start >= 3 {
		v = append(v, 31)
	}
	for ; len(v) > 0; v = v[min(4, len(v)):] {
		var g [4]byte
		k := copy(g[:], v)
		out = append(out, g[0]<<2|g[1]>>4)
		if k > 1 {
			out = append(out, g[1]<<4|g[2]>>2)
		}
		if k > 2 {
			out = append(out, g[2]<<6|g[3])
		}
	}
	return out
}

// dmValues returns the values that stand for c in a scheme other than ASCII,
// none if it has none for c.
func dmValues(scheme int, c byte) []byte {
	upper, lower := 'A' <= c && c <= 'Z', 'a' <= c && c <= 'z'
	switch {
	case scheme == dmEDIFACT:
		if c <= '^' {
			return []byte{c & 0x3F}
		}
	case c == ' ':
		return []byte{3}
	case isDigit(c):
		return []byte{c - '0' + 4}
	case upper && scheme != dmText:
		return []byte{c - 'A' + 14}
	case lower && scheme == dmText:
		return []byte{c - 'a' + 14}
	case scheme == dmX12:
		switch c {
		case '*':
			return []byte{1}
		case '>':
			return []byte{2}
		}
	case upper: // shift 3 of Text
		return []byte{2, c - 'A' + 1}
	case c >= '`': // shift 3
		return []byte{2, c - '`'}
	case c >= '[': // shift 2
		return []byte{1, c - '[' + 22}
	case c >= ':':
		return []byte{1, c - ':' + 15}
	default:
		return []byte{1, c - '!'}
	}
	return nil
}
