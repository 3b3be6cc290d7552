package table

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// nearest returns the term whose name is nearest to a heading, or one of whose
// words is only a letter away; "" if none is near. It is sure if a slip of the
// keyboard would explain it.
func (v *words) nearest(heading string) (term string, sure bool) {
	key := headingKey(barePrefixed(strings.TrimSpace(heading)))
	n := utf8.RuneCountInString(key)
	if n < 4 || n < 8 && strings.HasSuffix(key, "id") { // every database has such
		return "", false
	}
	if strings.HasSuffix(strings.TrimSpace(heading), "?") {
		return "", false // it asks for yes or no
	}
	if strings.HasPrefix(key, "communit") || key == "sample" || key == "samples" {
		return "", false // of plants, and no slip for "county"; nor a sampler
	}
	if lettered.MatchString(strings.TrimSpace(heading)) {
		return "", false // "SampleN" counts samples and is no slip for "sampler"
	}
	identifier := slices.Contains([]string{"id", "code", "key"}, strings.ToLower(lastPart(heading)))
	best, bestName := n/3+1, ""
	for name, t := range v.names {
		if strings.HasSuffix(t, "ID") && !strings.HasSuffix(key, "id") {
			continue // "Collection" names a collection and is no identifier of one
		}
		if identifier && !strings.HasSuffix(t, "ID") && !strings.HasSuffix(t, "Code") && !strings.HasSuffix(t, "Number") {
			continue // nor is "locality_id" the locality
		}
		limit := best
		if v.meanings[name].plain {
			if limit = 1; n < 6 {
				continue
			}
		}
		if key == name+"by" {
			continue // who did what the term is the time of
		}
		if len(name) <= 5 && !sameStart(key, name) {
			continue // an amount is no slip for a mount
		}
		a, b, alike := unshared(key, name)
		if !alike {
			continue
		}
		d := distance(a, b, limit)
		if d > limit || d > utf8.RuneCountInString(a)/3 || d > 1 && n < 8 && !sameStart(key, name) {
			continue
		}
		if d > 1 && shareWord(heading, name) {
			continue // "Collection_Time_Zone" has but a word of collectionCode
		}
		if d < best || d == best && (t < term || t == term && name < bestName) {
			best, term, bestName = d, t, name
		}
	}
	return term, term != "" && n >= 6 && best <= 2
}

// shareWord reports whether a heading of several words has the first of them or
// the last in common with a term, and the rest of the two is not alike.
func shareWord(heading, name string) bool {
	words := wordPart.FindAllString(heading, -1)
	key := headingKey(strings.Join(words, ""))
	if len(words) < 2 || strings.HasPrefix(key, name) || strings.HasSuffix(key, name) {
		return false
	}
	for _, w := range []string{headingKey(words[0]), headingKey(words[len(words)-1])} {
		if len(w) < 4 {
			continue
		}
		a, b := strings.TrimPrefix(key, w), strings.TrimPrefix(name, w)
		if a == key || b == name {
			if a, b = strings.TrimSuffix(key, w), strings.TrimSuffix(name, w); a == key || b == name {
				continue
			}
		}
		longer := max(utf8.RuneCountInString(a), utf8.RuneCountInString(b))
		d := distance(a, b, longer)
		if d > 1 && (2*d > longer || !sameStart(a, b)) {
			return true
		}
	}
	return false
}

// sameStart reports whether two words begin with one letter: a slip is seldom
// there, and short words that differ there are others.
func sameStart(a, b string) bool {
	x, _ := utf8.DecodeRuneInString(a)
	y, _ := utf8.DecodeRuneInString(b)
	return x == y
}

// lettered is a word with a letter for a number behind it.
var lettered = regexp.MustCompile(`\p{Ll}\p{Lu}$`)

// unshared takes off two keys what says nothing of how near they are: "verbatim"
// before many terms. A heading of what was written is near to no term of another
// kind, nor are two that share but the "id" behind them.
func unshared(key, name string) (a, b string, alike bool) {
	a, verbatim := strings.CutPrefix(key, "verbatim")
	b, its := strings.CutPrefix(name, "verbatim")
	if verbatim != its {
		return key, name, !verbatim
	}
	return a, b, !strings.HasSuffix(a, "id") || sameStart(a, b)
}

// lastPart is the last word of a heading of several, "" of one.
func lastPart(heading string) string {
	heading = strings.TrimSpace(heading)
	if i := strings.LastIndexAny(heading, " _.-"); i > 0 {
		return heading[i+1:]
	}
	return ""
}

// distance is the optimal string alignment distance (letters put in, left
// out, changed, neighbours exchanged), or limit+1 if it is beyond the limit.
func distance(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d > limit || -d > limit {
		return limit + 1
	}
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > limit {
			return limit + 1
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}
