package check

import (
	"strconv"
	"strings"
)

// cutCount takes a count off a word: "2 sheets", "2 × sheet", "sheet x2",
// "sheets (2)".
func cutCount(s string) (word string, n int, counted bool) {
	digits := func(r rune) bool { return r >= '0' && r <= '9' }
	front := len(s) - len(strings.TrimLeftFunc(s, digits))
	if front > 0 {
		n, err := strconv.Atoi(s[:front])
		rest := s[front:]
		if err != nil {
			n = 0
		}
		if strings.HasPrefix(rest, "-") || strings.HasPrefix(rest, "%") || strings.HasPrefix(rest, "/") || strings.HasPrefix(rest, ".") {
			return s, 1, false // 70 % spirit, 2-3 sheets
		}
		w := strings.TrimLeft(rest, " ×*")
		if strings.HasPrefix(w, "%") {
			return s, 1, false
		}
		if w, ok := strings.CutPrefix(w, "- "); ok {
			return strings.TrimSpace(w), n, true
		}
		if x, ok := strings.CutPrefix(w, "x "); ok {
			w = x
		}
		return strings.TrimSpace(w), n, true
	}
	body := strings.TrimRight(s, " )")
	back := len(body) - len(strings.TrimRightFunc(body, digits))
	if back > 0 {
		word := body[:len(body)-back]
		// "sheet x2" and "box2" differ: the x of box is part of its word.
		if w := strings.TrimRight(word, " "); strings.HasSuffix(w, " x") || strings.HasSuffix(w, "×") || strings.HasSuffix(w, "*") || strings.HasSuffix(w, "(") && len(body) < len(s) || w != word && !strings.HasSuffix(w, "(") {
			n, err := strconv.Atoi(body[len(body)-back:])
			if err != nil {
				n = 0
			}
			if strings.HasSuffix(w, " x") {
				w = w[:len(w)-2]
			}
			return strings.TrimRight(trimCount(w), " -–"), n, true
		}
	}
	return s, 1, false
}

func trimCount(s string) string { return strings.Trim(s, " (×*") }

// distance is the optimal string alignment distance: letters put in, left
// out, changed, and neighbours exchanged.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d > 8 || d < -8 {
		return max(len(x), len(y))
	}
	prev2, prev, cur := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(x); i++ {
		cur[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				cur[j] = min(cur[j], prev2[j-2]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(y)]
}
