package table

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// legacy are the encodings that tables come in when they are not Unicode, the
// likelier first: where two read a table alike, the first is named. The figure
// is the logarithm of how likely each is, as far as that counts.
var legacy = []struct {
	name   string
	likely float64
}{
	{"windows-1252", 0}, {"windows-1250", -0.5}, {"windows-1251", -0.5}, {"windows-1253", -0.5}, {"windows-1254", -0.5}, {"windows-1257", -0.5},
	{"macintosh", -1}, {"ibm850", -1.5}, {"ibm437", -2.5}, {"ibm852", -1.5}, {"ibm866", -1},
	{"iso-8859-15", -1}, {"iso-8859-2", -1}, {"koi8-r", -0.5},
	{"shift_jis", 0}, {"euc-jp", -0.5}, {"gb18030", 0}, {"big5", 0}, {"euc-kr", 0},
	{"windows-1255", -1}, {"windows-1256", -1}, {"windows-874", -1}, {"windows-1258", -4}, {"koi8-u", -1}, {"x-mac-cyrillic", -1.5},
	{"ibm855", -4}, {"ibm860", -4}, {"ibm863", -4}, {"ibm865", -4},
	{"iso-8859-3", -5}, {"iso-8859-4", -5}, {"iso-8859-5", -2}, {"iso-8859-7", -2}, {"iso-8859-10", -5}, {"iso-8859-16", -5},
}

var legacyCharsets = sync.OnceValue(func() []*charset {
	all := make([]*charset, len(legacy))
	for i, l := range legacy {
		c, err := findCharset(l.name)
		must(err)
		all[i] = c
	}
	return all
})

// What it takes to be sure.
const (
	firstTokens   = 40  // that are looked at first,
	farBehind     = 150 // and how far behind the best encoding one is out
	scoredTokens  = 500 // that are looked at, spread over the table
	tokenWeight   = 5   // the most that one token counts between two encodings
	textWeight    = 8   // and where it is text in one of them alone
	sureMargin    = 7   // that the best must be ahead of any other
	headingWeight = 5   // what a heading that is known speaks for an encoding
	minTokens     = 3   // different ones, in so many lines, without which cells are
	minLines      = 2   // judged one by one;
	manyLines     = 5   // so many are enough by themselves
	sensible      = 0.9 // the part of the tokens that must make sense
	senseOne      = -10 // the least likelihood, beyond that of any text of the kind, of a token that makes sense
	senseAll      = -3  // and of all of them, on an average
)

// A verdict is what a survey tells of a file's encoding.
type verdict struct {
	best  *charset
	sure  bool
	other []*charset // that might be it, where it is not sure; the likelier first
	whole bool       // the whole file is in one encoding, and that is best
	named *charset   // that it is not in, though somebody said so
	all   bool       // and there is nothing in it that makes no sense
	// mix are the encodings met in a file that is in more than one, with the
	// logarithm of how often each is.
	mix  []share
	utf8 bool // and it holds UTF-8 too
}

type share struct {
	*charset
	log     float64
	tongues []tongue
}

type tongue struct {
	*language
	log float64
}

// A candidate is an encoding under trial.
type candidate struct {
	*charset
	prior   float64
	texts   [][]rune // of the tokens
	scores  []float64
	total   float64
	tongues []tongue
}

// decode reads bytes in the charset; what stands for nothing is U+FFFD.
func (c *charset) decode(s string, ended bool) []rune {
	if c.scheme == single {
		out := make([]rune, 0, len(s))
		for i := range len(s) {
			r, _ := utf8.DecodeRuneInString(c.table[s[i]])
			out = append(out, r)
		}
		return out
	}
	text := s
	if c.scheme == multi {
		text, _ = c.enc.NewDecoder().String(s)
	}
	out := []rune(text)
	if n := len(out); !ended && n > 0 && out[n-1] == utf8.RuneError {
		out = out[:n-1] // cut in the middle of a character
	}
	return out
}

// score finds how well the tokens read in the candidate's encoding, and the
// languages that they are in.
func (c *candidate) score(tokens []token) {
	all := languages()
	c.texts, c.total, c.tongues = make([][]rune, len(tokens)), 0, nil
	by := make([][]float64, len(tokens))
	for i, t := range tokens {
		c.texts[i] = c.decode(t.text, t.ended)
		by[i] = make([]float64, len(all))
		script := scriptBeyond(c.texts[i])
		for j, l := range all {
			if script != nil && !l.writes(script) {
				by[i][j] = foreignScript * float64(len(c.texts[i]))
				continue
			}
			by[i][j] = float64(l.likelihood(c.texts[i]))
		}
	}
	// A table is in few languages: each is given the part that it explains.
	part := make([]float64, len(all))
	for j := range part {
		part[j] = 1 / float64(len(all))
	}
	c.scores = make([]float64, len(tokens))
	for range 6 {
		sum, partLog := make([]float64, len(all)), logsOf(part)
		for i := range tokens {
			c.scores[i] = mixed(by[i], part, partLog, sum)
		}
		const lent = 3
		for j := range part {
			part[j] = (sum[j] + lent/float64(len(all))) / (float64(len(tokens)) + lent)
		}
	}
	for i := range tokens {
		c.total += max(c.scores[i], worst(tokens[i]))
	}
	c.total += c.prior
	for j, p := range part {
		c.tongues = append(c.tongues, tongue{all[j], math.Log(p)})
	}
	slices.SortStableFunc(c.tongues, func(a, b tongue) int { return cmp.Compare(b.log, a.log) })
}

// scriptBeyond returns the script of the last letter beyond ASCII, nil if there
// is none.
func scriptBeyond(text []rune) *unicode.RangeTable {
	for _, r := range slices.Backward(text) {
		if r >= 0x80 && isWordLetter(r) {
			return scriptOf(r)
		}
	}
	return nil
}

// writes reports whether the language is written in a script.
func (l *language) writes(script *unicode.RangeTable) bool {
	if l.signs != nil {
		return isEastern(script)
	}
	return l.script == script
}

// mixed returns the logarithm of a sum of parts, and adds to sum what each of
// them has of it. The logarithms of the parts are given too.
func mixed(logs, part, partLog, sum []float64) float64 {
	top := math.Inf(-1)
	for j, l := range logs {
		top = max(top, l+partLog[j])
	}
	total := 0.0
	for j, l := range logs {
		if l+partLog[j] > top-hardly {
			total += math.Exp(l + partLog[j] - top)
		}
	}
	for j, l := range logs {
		if l+partLog[j] > top-hardly {
			sum[j] += math.Exp(l+partLog[j]-top) / total
		}
	}
	return top + math.Log(total)
}

// hardly is how much less likely what does not count is.
const hardly = 20

func logsOf(part []float64) []float64 {
	logs := make([]float64, len(part))
	for j, p := range part {
		logs[j] = math.Log(p)
	}
	return logs
}

// worst is the least that one token may bring: it may be damaged itself.
func worst(t token) float64 { return -8 * float64(len(t.text)) }

// detect tells the encoding of a file that is not UTF-8.
func detect(s *survey) *verdict {
	tokens := spread(s.bad, scoredTokens)
	if len(tokens) == 0 {
		return &verdict{}
	}
	if s.controls*100 > s.size { // no text in any of them
		return &verdict{mix: []share{{legacyCharsets()[0], 0, []tongue{{languages()[0], 0}}}}}
	}
	headings := map[string]bool{} // that are known or not
	cands := make([]*candidate, 0, len(legacy))
	for i, cs := range legacyCharsets() {
		c := &candidate{charset: cs, prior: legacy[i].likely}
		if cs.name == "macintosh" && s.ends.cr && !s.ends.lf {
			c.prior += 3 // the line ends of old Macs
		}
		c.prior += headingsKnown(cs, s.heading, headings)
		cands = append(cands, c)
	}
	if len(tokens) > 2*firstTokens { // those that are far behind need no closer look
		some := spread(tokens, firstTokens)
		rankCandidates(cands, some)
		best := cands[0]
		cands = slices.DeleteFunc(cands, func(c *candidate) bool {
			return c != best && best.total-c.total > farBehind && best.ahead(c, some) > 2*sureMargin && c.wins(best) < 2
		})
	}
	rankCandidates(cands, tokens)
	best := cands[0]
	for _, c := range cands { // the first in the list of those that read alike
		if c.reads(s, tokens, best) && rank(c.charset) < rank(best.charset) {
			best = c
		}
	}
	v := &verdict{best: best.charset, sure: true, utf8: len(s.good) > 0}
	for _, c := range cands {
		if c != best && !c.reads(s, tokens, best) && best.ahead(c, tokens) < sureMargin {
			v.sure = false
			v.other = append(v.other, c.charset)
		}
	}
	v.whole = (len(tokens) >= minTokens && s.lines >= minLines || s.lines >= manyLines) && best.explains(tokens) && !mixedWithUTF8(best, s, len(tokens))
	v.all = !slices.ContainsFunc(best.texts, func(text []rune) bool { return !isText(text) })
	if !v.whole {
		v.mix = mixture(cands, tokens)
	}
	return v
}

// rankCandidates scores the candidates, the best first.
func rankCandidates(cands []*candidate, tokens []token) {
	for _, c := range cands {
		c.score(tokens)
	}
	slices.SortStableFunc(cands, func(a, b *candidate) int { return cmp.Compare(b.total, a.total) })
}

func rank(c *charset) int {
	return slices.Index(legacyCharsets(), c)
}

// spread takes at most n of the tokens, from all over the file.
func spread(tokens []token, n int) []token {
	if len(tokens) <= n {
		return tokens
	}
	out := make([]token, n)
	for i := range out {
		out[i] = tokens[i*len(tokens)/n]
	}
	return out
}

// headingsKnown is what speaks for an encoding since headings that are not
// UTF-8 can be read in it.
func headingsKnown(c *charset, line []byte, seen map[string]bool) float64 {
	if utf8.Valid(line) {
		return 0
	}
	known := 0
	for _, comma := range commas {
		n := 0
		for cell := range strings.SplitSeq(string(line), string(comma.r)) {
			cell = strings.Trim(cell, "\"' ")
			if utf8.ValidString(cell) {
				continue
			}
			text := readMixed(c, cell)
			is, ok := seen[text]
			if !ok {
				is = len(text) <= longHeading && isText([]rune(text)) && vocabulary().read(text).meaning != nil && asSpelt(text)
				seen[text] = is
			}
			if is {
				n++
			}
		}
		known = max(known, n)
	}
	return float64(min(known, 3)) * headingWeight
}

// reads reports whether c and d read the file alike.
func (c *candidate) reads(s *survey, tokens []token, d *candidate) bool {
	if c == d {
		return true
	}
	if c.scheme == single && d.scheme == single {
		for b := 0x80; b < 0x100; b++ {
			if s.bytes[b] > 0 && c.table[b] != d.table[b] {
				return false
			}
		}
		return true
	}
	for i := range tokens {
		if !slices.Equal(c.texts[i], d.texts[i]) {
			return false
		}
	}
	return !s.cut
}

// ahead is by how much c reads better than d; no token counts for much.
func (c *candidate) ahead(d *candidate, tokens []token) float64 {
	sum := c.prior - d.prior
	for i := range tokens {
		w, most := worst(tokens[i]), float64(tokenWeight)
		if isWritten(c.texts[i]) != isWritten(d.texts[i]) {
			most, w = textWeight, 2*w // which short tokens come to else
		}
		sum += max(-most, min(most, max(w, c.scores[i])-max(w, d.scores[i])))
	}
	return sum
}

// wins counts the tokens that clearly read better in c than in d, as in a file of
// two encodings.
func (c *candidate) wins(d *candidate) int {
	n := 0
	for i := range c.scores {
		if c.scores[i] > d.scores[i]+3 && isText(c.texts[i]) {
			n++
		}
	}
	return n
}

// explains reports whether nearly all tokens make sense.
//
// A byte that is out of place in most of the tokens that hold it is a letter of
// another encoding, though there may be few of them.
func (c *candidate) explains(tokens []token) bool {
	good, sum := 0, 0.0
	var with, strange [256]int
	for i, t := range tokens {
		sense := max(worst(t), c.scores[i]) + usual(c.texts[i])
		sum += max(sense, 3*senseOne)
		if isText(c.texts[i]) && sense >= senseOne {
			good++
		}
		for j := range len(t.text) {
			if b := t.text[j]; b >= 0x80 && c.scheme == single && strings.IndexByte(t.text[:j], b) < 0 {
				with[b]++
				if c.strange(i, j) {
					strange[b]++
				}
			}
		}
	}
	for b := range with {
		if strange[b] >= 2 && strange[b]*2 > with[b] {
			return false
		}
	}
	n := float64(len(tokens))
	return float64(good) >= sensible*n && sum >= senseAll*n
}

// strange reports whether character j of token i is a sign where none stands,
// or a letter that the languages of the table have not.
func (c *candidate) strange(i, j int) bool {
	text := c.texts[i]
	if !isWordLetter(text[j]) {
		return signLikelihood(text, j) <= -9
	}
	for _, l := range c.tongues[:min(3, len(c.tongues))] {
		if l.signs != nil {
			return false
		}
		if _, ok := l.letter[small(text[j])]; ok {
			return false
		}
	}
	return true
}

// usual is the opposite of the likelihood that a text of these letters and
// signs has if it is in a language that is known.
func usual(text []rune) float64 {
	sum := 0.0
	for _, r := range text {
		switch {
		case r >= 0x2E80:
			sum += 7.8
		case scriptOf(r) == nil || r >= 0x80 && !isWordLetter(r):
			sum += 5.5
		case isWordLetter(r):
			sum += 3.3
		default:
			sum -= figure
		}
	}
	return sum
}

// isText reports whether no character is a control or stands for nothing.
func isText(text []rune) bool {
	return !slices.ContainsFunc(text, func(r rune) bool { return r == utf8.RuneError || r >= 0x7F && r < 0xA0 || r < ' ' })
}

// isWritten reports whether text is one, and has no accent on no letter either.
func isWritten(text []rune) bool { return isText(text) && !slices.ContainsFunc(text, isLoneAccent) }
