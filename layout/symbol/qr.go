package symbol

import (
	"slices"
	"strings"
	"sync"

	"rsc.io/qr/coding"
)

var qrLevels = map[string]coding.Level{"": coding.M, "L": coding.L, "M": coding.M, "Q": coding.Q, "H": coding.H}

// qrCode returns the smallest QR Code that holds text, or why there is none.
// The library draws it; which parts are written as figures, capitals or bytes
// and which mask is used are decided here.
func qrCode(text, level string) (matrix, string) {
	l, ok := qrLevels[level]
	if !ok {
		return matrix{}, "no error correction level is called " + level + "; there are L, M, Q and H"
	}
	// Lengths are written in more bits in larger versions, in three classes.
	from := coding.Version(coding.MinVersion)
	for _, to := range []coding.Version{9, 26, coding.MaxVersion} {
		parts := qrParts(text, to)
		bits := 0
		for _, p := range parts {
			bits += p.Bits(to)
		}
		for v := from; v <= to; v++ {
			if bits > 8*v.DataBytes(l) {
				continue
			}
			m, err := qrDraw(v, l, parts)
			if err != nil {
				return matrix{}, err.Error()
			}
			m.spoken = text
			return m, ""
		}
		from = to + 1
	}
	return matrix{}, "it is too long"
}

// The modes of a QR Code, and how many of their characters wait in an
// unfinished group: figures go three in ten bits (or four, then seven), the
// forty-five capitals and signs two in eleven (or six).
const (
	qrByte = iota
	qrAlpha0
	qrAlpha1
	qrNum0
	qrNum1
	qrNum2
	qrStates
)

const qrAlphaText = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// qrParts divides text so that it takes the fewest bits in the versions of v's
// class. Of equally short divisions it takes one with few changes of mode.
func qrParts(text string, v coding.Version) []coding.Encoding {
	const far = 1 << 30
	head := [qrStates]int{
		qrByte:   coding.String("").Bits(v),
		qrAlpha0: coding.Alpha("").Bits(v),
		qrNum0:   coding.Num("").Bits(v),
	}
	cost := [qrStates]int{qrByte: head[qrByte], qrAlpha0: head[qrAlpha0], qrAlpha1: far, qrNum0: head[qrNum0], qrNum1: far, qrNum2: far}
	from := make([][qrStates]int8, len(text)) // the state before each character
	for i := range len(text) {
		next := [qrStates]int{}
		for s := range next {
			next[s] = far
		}
		step := func(s, to, bits int) {
			if c := cost[s] + bits; c < next[to] {
				next[to], from[i][to] = c, int8(s)
			}
		}
		step(qrByte, qrByte, 8)
		if strings.IndexByte(qrAlphaText, text[i]) >= 0 {
			step(qrAlpha0, qrAlpha1, 6)
			step(qrAlpha1, qrAlpha0, 5)
		}
		if isDigit(text[i]) {
			step(qrNum0, qrNum1, 4)
			step(qrNum1, qrNum2, 3)
			step(qrNum2, qrNum0, 3)
		}
		// Changing to a mode: its first character comes from any state.
		for s := range qrStates {
			if s != qrByte {
				step(s, qrByte, head[qrByte]+8)
			}
			if strings.IndexByte(qrAlphaText, text[i]) >= 0 && s != qrAlpha0 && s != qrAlpha1 {
				step(s, qrAlpha1, head[qrAlpha0]+6)
			}
			if isDigit(text[i]) && s < qrNum0 {
				step(s, qrNum1, head[qrNum0]+4)
			}
		}
		cost = next
	}
	end := 0
	for s, c := range cost {
		if c < cost[end] {
			end = s
		}
	}
	return qrTrace(text, from, end)
}

// qrTrace cuts text where the mode changes on the way that ends in state s.
func qrTrace(text string, from [][qrStates]int8, s int) []coding.Encoding {
	mode := [qrStates]int{qrByte, qrAlpha0, qrAlpha0, qrNum0, qrNum0, qrNum0}
	var parts []coding.Encoding
	for end, i := len(text), len(text)-1; i >= 0; i-- {
		before := int(from[i][s])
		if i == 0 || mode[before] != mode[s] {
			switch part := text[i:end]; mode[s] {
			case qrByte:
				parts = append(parts, coding.String(part))
			case qrAlpha0:
				parts = append(parts, coding.Alpha(part))
			default:
				parts = append(parts, coding.Num(part))
			}
			end = i
		}
		s = before
	}
	slices.Reverse(parts)
	return parts
}

// qrPlans keeps the eight masks' plans of a version and level: making one
// takes longer than drawing a code with it. Plans are only read.
var qrPlans sync.Map // qrPlan -> func() ([]*coding.Plan, error)

type qrPlan struct {
	version coding.Version
	level   coding.Level
}

func qrDraw(v coding.Version, l coding.Level, parts []coding.Encoding) (matrix, error) {
	f, _ := qrPlans.LoadOrStore(qrPlan{v, l}, sync.OnceValues(func() (plans []*coding.Plan, err error) {
		for mask := range coding.Mask(8) {
			p, err := coding.NewPlan(v, l, mask)
			if err != nil {
				return nil, err
			}
			plans = append(plans, p)
		}
		return plans, nil
	}))
	plans, err := f.(func() ([]*coding.Plan, error))()
	if err != nil {
		return matrix{}, err
	}
	var best matrix
	least := -1
	for _, p := range plans {
		c, err := p.Encode(parts...)
		if err != nil {
			return matrix{}, err
		}
		b := make([]byte, c.Size*c.Size)
		for i := range b {
			b[i] = '0'
			if c.Black(i%c.Size, i/c.Size) {
				b[i] = '1'
			}
		}
		m := matrix{modules: string(b), rows: c.Size}
		if n := qrPenalty(m); least < 0 || n < least {
			best, least = m, n
		}
	}
	return best, nil
}

// qrPenalty rates a masked symbol by the four features of ISO/IEC 18004 that
// make scanning harder: long runs of one colour, blocks of one colour,
// likenesses of the finder pattern, and more of one colour than of the other.
func qrPenalty(m matrix) int {
	n := m.rows
	penalty, dark := 0, 0
	for across := range 2 {
		for i := range n {
			var line uint64 // the last modules, the newest in the lowest bit
			run, last := 0, byte(0)
			for j := range n {
				c := m.modules[i*n+j]
				if across == 1 {
					c = m.modules[j*n+i]
				}
				if c != last {
					run, last = 0, c
				}
				run++
				switch {
				case run == 5:
					penalty += 3
				case run > 5:
					penalty++
				}
				line = line<<1 | uint64(c&1)
				// 1:1:3:1:1 with four light modules before or after it.
				if w := line & 0x7FF; j >= 10 && (w == 0b00001011101 || w == 0b10111010000) {
					penalty += 40
				}
			}
		}
	}
	for y := range n {
		for x := range n {
			c := m.modules[y*n+x]
			dark += int(c & 1)
			if x > 0 && y > 0 && c == m.modules[y*n+x-1] && c == m.modules[(y-1)*n+x] && c == m.modules[(y-1)*n+x-1] {
				penalty += 3
			}
		}
	}
	// 10 for every full 5 % away from half.
	return penalty + abs(dark*20-n*n*10)/(n*n)*10
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
