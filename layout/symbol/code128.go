package symbol

import "strings"

// code128Widths holds the elements of the symbol characters 0 to 105 of
// ISO/IEC 15417, table 1, as widths in modules: bar, space, bar, space, bar,
// space. The three start characters are the last three.
const code128Widths = "" +
	"212222222122222221121223121322131222122213122312132212221213" + // 0 to 9
	"221312231212112232122132122231113222123122123221223211221132" +
	"221231213212223112312131311222321122321221312212322112322211" +
	"212123212321232121111323131123131321112313132113132311211313" +
	"231113231311112133112331132131113123113321133121313121211331" +
	"231131213113213311213131311123311321331121312113312311332111" +
	"314111221411431111111224111422121124121421141122141221112214" +
	"112412122114122411142112142211241211221114413111241112134111" +
	"111242121142121241114212124112124211411212421112421211212141" +
	"214121412121111143111341131141114113114311411113411311113141" +
	"114131311141411131211412211214211232" // 100 to 105

const code128Stop = "2331112"

const (
	toC    = 99  // code set C from B
	toB    = 100 // code set B from C
	startB = 104
	startC = 105
)

// code128 returns the modules of text, which holds printable ASCII only.
func code128(text string) string {
	values := code128Values(text)
	sum := values[0]
	for i, v := range values[1:] {
		sum += (i + 1) * v
	}
	var b strings.Builder
	for _, v := range append(values, sum%103) {
		widen(&b, code128Widths[6*v:6*v+6])
	}
	widen(&b, code128Stop)
	return b.String()
}

// widen writes the modules of elements given by their widths, a bar first.
func widen(b *strings.Builder, widths string) {
	for i := range widths {
		for range widths[i] - '0' {
			b.WriteByte('1' - byte(i&1))
		}
	}
}

// code128Values returns the start character and the data characters of the
// shortest Code 128 of text.
//
// Code set A and the shift characters cannot shorten printable text: set B has
// all of it at one symbol character each, so only the pairs of digits in set C
// save any. cost[i][set] is how many characters the rest of text from i on
// takes when set is on.
//
// Where several ways are equally short, the one is taken that the standard
// describes in its annex on the use of start and code characters: start with C
// if at least four digits come first; otherwise change to C before a run of an
// even number of digits, and after the first digit of an odd one. The lengths
// do not depend on it, the module patterns do.
func code128Values(text string) []int {
	const inB, inC = 0, 1
	cost := make([][2]int, len(text)+1)
	run := make([]int, len(text)+1) // digits in a row from here on
	for i := len(text) - 1; i >= 0; i-- {
		if isDigit(text[i]) {
			run[i] = run[i+1] + 1
		}
		b := 1 + cost[i+1][inB]
		c := 1 + b // the change to B comes first
		if run[i] >= 2 {
			c = min(c, 1+cost[i+2][inC])
		}
		b = min(b, 1+c)
		cost[i] = [2]int{b, c}
	}

	values := []int{startB}
	set := inB
	if c, b := cost[0][inC], cost[0][inB]; c < b || c == b && run[0] >= 4 {
		values[0], set = startC, inC
	}
	for i := 0; i < len(text); {
		switch {
		case set == inC && run[i] >= 2 && cost[i][inC] == 1+cost[i+2][inC]:
			values = append(values, 10*int(text[i]-'0')+int(text[i+1]-'0'))
			i += 2
		case set == inC:
			values = append(values, toB)
			set = inB
		case run[i] >= 4 && run[i]%2 == 0 && cost[i][inB] == 1+cost[i][inC],
			cost[i][inB] != 1+cost[i+1][inB]:
			values = append(values, toC)
			set = inC
		default:
			values = append(values, int(text[i]-' '))
			i++
		}
	}
	return values
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
