package table

import (
	"math"
	"strings"
	"unicode/utf8"
)

// mixedWithUTF8 reports whether the file holds so much UTF-8 that it is not in
// the one encoding: text that reads better as UTF-8 than in that.
func mixedWithUTF8(c *candidate, s *survey, bad int) bool {
	good := spread(s.good, scoredTokens)
	n := 0
	plain := &candidate{charset: utf8Charset}
	plain.score(good)
	same := &candidate{charset: c.charset}
	same.score(good)
	for i := range good {
		if plain.scores[i] > same.scores[i]+2 {
			n++
		}
	}
	return n*10 > bad
}

// mixture finds the encodings of a file in several.
func mixture(cands []*candidate, tokens []token) []share {
	part := make([]float64, len(cands))
	for j := range part {
		part[j] = 1 / float64(len(cands))
	}
	logs := make([]float64, len(cands))
	for range 8 {
		sum, partLog := make([]float64, len(cands)), logsOf(part)
		for i := range tokens {
			for j, c := range cands {
				logs[j] = max(worst(tokens[i]), c.scores[i]) + c.prior
			}
			mixed(logs, part, partLog, sum)
		}
		const lent = 1
		for j := range part {
			part[j] = (sum[j] + lent/float64(len(cands))) / (float64(len(tokens)) + lent)
		}
	}
	var out []share
	for j, c := range cands {
		if part[j] > 0.02 {
			out = append(out, share{c.charset, math.Log(part[j]) + c.prior, c.tongues[:min(len(c.tongues), 8)]})
		}
	}
	return out
}

// fits returns the encoding of a mixed file that a cell is likeliest in, and
// how it reads there. near is what the last such cell was in; nil if there was
// none. Parts of the cell that are UTF-8 stay.
func (v *verdict) fits(cell string, near *charset) (*charset, string) {
	var best *charset
	text, most := "", math.Inf(-1)
	for _, c := range v.mix {
		read, sum := readMixed(c.charset, cell), c.log
		for word := range strings.FieldsFuncSeq(cell, func(r rune) bool { return r < 0x80 && parts(byte(r)) }) {
			if utf8.ValidString(word) {
				continue
			}
			word := []rune(readMixed(c.charset, word[:min(len(word), surveyToken)]))
			logs := math.Inf(-1)
			for _, l := range c.tongues {
				logs = max(logs, l.log+float64(l.likelihood(word)))
			}
			sum += logs
		}
		if c.charset == near {
			sum += nearBonus
		}
		if sum > most {
			best, text, most = c.charset, read, sum
		}
	}
	return best, text
}

// nearBonus speaks for the encoding of the damaged cell before.
const nearBonus = 2

// readMixed decodes what is not UTF-8 in a charset.
func readMixed(c *charset, s string) string {
	if c.scheme == multi {
		return string(c.decode(s, true)) // whose characters hold what looks like UTF-8
	}
	var b strings.Builder
	for at := 0; at < len(s); {
		r, n := utf8.DecodeRuneInString(s[at:])
		if r == utf8.RuneError && n == 1 {
			r, _ = utf8.DecodeRuneInString(c.table[s[at]])
		}
		b.WriteRune(r)
		at += n
	}
	return b.String()
}
