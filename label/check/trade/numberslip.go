package trade

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
)

// slipRules are about slips that the rest of the record or of the table tells.
func slipRules(where *finder) []check.Rule {
	return append(slices.Concat(epithetRules(), twinRules(), coarseRules()), numberSlipRule(), elevationDisagreesRule(), stateSlipRule(where), formulaRule(), genusSpellingRule(), elevationPlaceRule(), countyStateRule(where), itselfRule())
}

// numberSlipRule is about a number between the two that it ought to part.
func numberSlipRule() check.Rule {
	run := func(last string) []map[string]string {
		var all [][]string
		for i := range 5 {
			all = append(all, []string{"recordNumber", itoa(1514 + i)})
		}
		all[3] = []string{"recordNumber", last}
		return rows(all...)
	}
	return check.Rule{
		Name: "number-slip", Severity: label.Warning, Source: practice,
		Doc:     "a number that stands in a row between two that follow each other but for one, and is that one but for a slip of the keys, which no other record has",
		Terms:   slipTerms[:],
		Example: run("1571"), Counterexample: run("1620"),
		Table: func() check.TableRule { return &numberSlips{} },
	}
}

var slipTerms = [...]string{"recordNumber", "catalogNumber"}

// A slipRow is one number, of which three are held against each other.
type slipRow struct {
	whose, text    string
	prefix, digits string
	cell
}

// numberSlips remembers each number by a bit of its sum, since one that stands
// elsewhere in the table is no slip, nor is one that has neighbours of its own.
type numberSlips struct {
	file  string
	last  [len(slipTerms)][2]slipRow
	seen  [len(slipTerms)]sumBits
	found [len(slipTerms)][]slipFound
}

type slipFound struct {
	label.Finding
	absent []uint64 // the numbers that no record may have
}

func (s *numberSlips) Feed(r *check.Record) {
	for i, term := range slipTerms {
		f := r.Field(term)
		last := &s.last[i]
		if f.Text == "" || len(f.Text) > 30 || r.Doubted(term) {
			*last = [2]slipRow{}
			continue
		}
		now := slipRow{text: f.Text, cell: cellOf(f)}
		if i == 0 {
			now.whose = r.Collector
		}
		now.prefix, now.digits = cutNumber(f.Text)
		s.seen[i].add(bitOf(now.whose, now.prefix, now.digits))
		if last[0].text != "" && last[0].whose == last[1].whose && now.whose == last[1].whose {
			if meant, what := last[1].slipped(&last[0], &now); what != "" {
				s.keep(i, &last[0], &last[1], &now, meant, what)
			}
		}
		s.file = f.Origin.File
		if now.whose == last[1].whose {
			now.whose = last[1].whose
		} else {
			now.whose = strings.Clone(now.whose)
		}
		now.text = strings.Clone(now.text)
		now.prefix, now.digits = cutNumber(now.text)
		last[0], last[1] = last[1], now
	}
}

func (s *numberSlips) keep(i int, before, n, after *slipRow, meant, what string) {
	found := slipFound{Finding: label.Finding{
		Origin: n.origin(s.file, slipTerms[i]), Value: n.text, Suggest: meant,
		Message: fmt.Sprintf("stands between %s and %s, and no record has %s: %s, it seems", before.text, after.text, meant, what),
		Also:    []label.Cell{{Row: int(before.row), Term: slipTerms[i]}, {Row: int(after.row), Term: slipTerms[i]}},
	}, absent: []uint64{bitOfText(n.whose, meant)}}
	if v, err := strconv.ParseInt(n.digits, 10, 64); err == nil {
		for _, to := range [2]int64{v - 1, v + 1} {
			found.absent = append(found.absent, bitOfText(n.whose, fmt.Sprintf("%s%0*d", n.prefix, len(n.digits), to)))
		}
	}
	s.found[i] = append(s.found[i], found)
}

// slipped returns the number that ought to stand between two others, and what
// was made of it; "" where the number may be right, or is all another.
func (n *slipRow) slipped(before, after *slipRow) (meant, what string) {
	if before.prefix != after.prefix || len(before.digits) != len(after.digits) || len(before.digits) > 15 || n.text == before.text || n.text == after.text {
		return "", ""
	}
	a, ok := whole(before.digits)
	b, ok2 := whole(after.digits)
	if !ok || !ok2 || b-a != 2 && a-b != 2 {
		return "", ""
	}
	if v, ok := whole(n.digits); ok && v == (a+b)/2 && n.prefix == before.prefix && len(n.digits) == len(before.digits) {
		return "", "" // as it ought to be
	}
	digits := fmt.Sprintf("%0*d", len(before.digits), (a+b)/2)
	meant = before.prefix + digits
	return meant, keySlip(n, meant, before.prefix, digits)
}

// whole is the number of up to 15 figures, if there are any.
func whole(figures string) (n int64, ok bool) {
	if figures == "" || len(figures) > 15 {
		return 0, false
	}
	for i := range len(figures) {
		n = 10*n + int64(figures[i]-'0')
	}
	return n, true
}

// sumBits remembers sums by a bit each. Of a million numbers one in some thirty is
// taken for remembered that is not, and its slip is not told; of 100,000 one in 300.
type sumBits struct{ bits []uint64 }

const sumBitsSize = 1 << 25 // 4 MB

// bitOf is where a number has its bit: numbers that follow each other have theirs side
// by side, as they are mostly read.
func bitOf(whose, prefix, digits string) uint64 {
	n, ok := whole(digits)
	if !ok {
		return sum(whose, prefix, digits)
	}
	return mixIn(sum(whose, prefix), uint64(len(digits))) + uint64(n)
}

func bitOfText(whose, text string) uint64 {
	prefix, digits := cutNumber(text)
	return bitOf(whose, prefix, digits)
}

func (b *sumBits) add(sum uint64) {
	if b.bits == nil {
		b.bits = make([]uint64, sumBitsSize/64)
	}
	b.bits[sum%sumBitsSize/64] |= 1 << (sum % 64)
}

func (b *sumBits) has(sum uint64) bool {
	return b.bits != nil && b.bits[sum%sumBitsSize/64]&(1<<(sum%64)) != 0
}

// A number needs so many figures that another one of them says something, and
// must lie so far off: 42, 40, 44 is how sheets lie in a heap.
const (
	fewestFigures = 3
	nextNumbers   = 10
)

func keySlip(n *slipRow, meant, prefix, digits string) string {
	switch {
	case n.text == meant:
		return ""
	case strings.EqualFold(lettersAndFigures(n.text), lettersAndFigures(meant)):
		if len(lettersAndFigures(n.text)) < fewestFigures {
			return ""
		}
		return "written in another way"
	case lookAlike(n.text, meant):
		return "a letter for a figure"
	case n.prefix != prefix || len(digits) < fewestFigures || strings.TrimLeft(n.digits, "0") == strings.TrimLeft(digits, "0"):
		return "" // zeros in front are another rule's
	}
	x, y := n.digits, digits
	if len(x) != len(y) {
		if len(x)+1 == len(y) && oneLess(x, y) && y[0] != '0' {
			return "a figure left out"
		}
		if len(y)+1 == len(x) && oneLess(y, x) && y[0] != '0' {
			return "a figure too many"
		}
		return ""
	}
	differ := 0
	for i := range len(x) {
		if x[i] != y[i] {
			differ++
		}
	}
	v, _ := strconv.ParseInt(x, 10, 64)
	w, _ := strconv.ParseInt(y, 10, 64)
	switch {
	case differ == 1 && (v-w >= nextNumbers || w-v >= nextNumbers):
		return "a figure is another"
	case neighboursExchanged(x, y):
		return "two figures are exchanged"
	}
	return ""
}

// neighboursExchanged reports whether one text becomes the other by two neighbours
// exchanged.
func neighboursExchanged(a, b string) bool {
	if len(a) != len(b) || a == b {
		return false
	}
	i := 0
	for a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// lettersAndFigures is a text without blanks and signs.
func lettersAndFigures(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return -1
	}, s)
}

// lookAlike reports whether letters stand for the figures they look like, at one
// end of the figures: one between two figures is number-letters' to say.
func lookAlike(text, meant string) bool {
	if len(text) != len(meant) {
		return false
	}
	inside := false
	for i := range len(text) {
		if text[i] == meant[i] {
			continue
		}
		switch meant[i] {
		case '0':
			if text[i]|0x20 != 'o' {
				return false
			}
		case '1':
			if text[i] != 'l' && text[i] != 'I' {
				return false
			}
		default:
			return false
		}
		inside = inside || i > 0 && i+1 < len(text) && isFigure(text[i-1]) && isFigure(text[i+1])
	}
	return !inside
}

func isFigure(b byte) bool { return b >= '0' && b <= '9' }

// oneLess reports whether a is b without one of its figures.
func oneLess(a, b string) bool {
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return a[i:] == b[i+1:]
}

func (s *numberSlips) End() []label.Finding {
	var all []label.Finding
	for i := range slipTerms {
	next:
		for _, f := range s.found[i] {
			for _, key := range f.absent {
				if s.seen[i].has(key) {
					continue next
				}
			}
			all = append(all, f.Finding)
		}
	}
	return all
}
