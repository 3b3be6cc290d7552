package trade

import "strings"

// slip reports whether two words are likely one word, mistyped: one letter
// apart, or up to limit in a long one, and not two words of different meaning.
func slip(a, b string, limit int) bool {
	x, y := []rune(a), []rune(b)
	short := min(len(x), len(y))
	if short < 5 || strings.EqualFold(a, b) {
		return false
	}
	if short < 9 {
		limit = 1
	}
	return within(x, y, limit) && !meaningful(a, b)
}

// plainSlip reports whether two long words differ by one letter behind the first, or
// are one epithet with another ending: of these few records are enough. Potentilla
// erecta and Potentilla recta are two, and so are Galium verum and Galium vernum.
func plainSlip(a, b string) bool {
	return len(a) >= 7 && len(b) >= 7 && a[0] == b[0] && (within([]rune(a), []rune(b), 1) || otherEnding(a, b))
}

// meant are parts of Latin words that differ by a letter or two and mean
// something else. From memory.
var meant = [][2]string{
	{"macr", "micr"}, {"flor", "foli"}, {"uni", "bi"}, {"bi", "tri"}, {"di", "tri"}, {"hyper", "hypo"}, {"pub", "rub"}, {"canad", "canari"}, {"canesc", "candesc"},
	{"alpestr", "rupestr"}, {"montan", "fontan"}, {"nival", "rival"}, {"rubesc", "rufesc"}, {"nutans", "natans"}, {"moll", "coll"}, {"lanat", "lunat"}, {"ramos", "rimos"}, {"cretic", "cretac"},
	{"viscos", "viscid"}, {"humil", "pumil"}, {"pauci", "parvi"}, {"lati", "alti"}, {"obtus", "retus"}, {"uni", "tri"}, {"pachy", "brachy"}, {"trachy", "brachy"}, {"lept", "leuc"}, {"lept", "lei"},
	{"lasi", "lei"}, {"petal", "sepal"}, {"anth", "acanth"}, {"trich", "stich"}, {"spor", "spin"}, {"carp", "card"},
}

// meaningful reports whether one word becomes the other by such a part.
func meaningful(a, b string) bool {
	for _, p := range meant {
		for _, q := range [][2]string{p, {p[1], p[0]}} {
			if strings.Contains(a, q[0]) && strings.Replace(a, q[0], q[1], 1) == b {
				return true
			}
		}
	}
	return false
}

// within reports whether a and b are at most limit letters apart, put in, left
// out, changed or exchanged with their neighbours (optimal string alignment).
// Only the band of the table that can matter is filled in.
func within(a, b []rune, limit int) bool {
	const far = 1 << 20
	var rows [3][64]int
	if len(a) > 60 || len(b) > 60 || len(a)-len(b) > limit || len(b)-len(a) > limit {
		return false
	}
	prev2, prev, cur := &rows[0], &rows[1], &rows[2]
	for j := range b {
		prev[j] = j
	}
	prev[len(b)] = len(b)
	for i := 1; i <= len(a); i++ {
		low, high := max(1, i-limit), min(len(b), i+limit)
		cur[low-1] = far
		if low == 1 {
			cur[0] = i
		}
		best := far
		for j := low; j <= high; j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := prev[j-1] + cost
			d = min(d, cur[j-1]+1)
			if j < i+limit {
				d = min(d, prev[j]+1)
			}
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, prev2[j-2]+1)
			}
			cur[j] = d
			best = min(best, d)
		}
		if best > limit+1 {
			return false
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(b)] <= limit
}
