package table

import (
	"slices"
	"strings"

	"cornerslip/label"
)

// fewShared are too few headings for what they begin with to be of the whole table.
const fewShared = 5

// tellingStarts say whose country or name a column has: without them a heading would
// mean another plant or another day.
var tellingStarts = []string{"host", "parent", "type", "holotype", "associated", "assoc", "det", "id", "identification", "previous", "prev", "old", "original", "orig",
	"verbatim", "accepted", "valid", "syn", "synonym", "source", "donor", "release", "mother", "father", "visitor", "pollinator", "partner", "start", "end", "first", "last"}

// sharedStart returns what most headings of a table begin with and without which they
// are known: "Ctrl_" of "Ctrl_country", as programs write before the columns that they
// took from elsewhere. It is "" where there is no such start.
func sharedStart(headings []string) string {
	counts, filled := map[string]int{}, 0
	for _, h := range headings {
		if isBlank(h) {
			continue
		}
		filled++
		if start, rest := cutStart(h); rest != "" {
			counts[start]++
		}
	}
	for start, n := range counts {
		if n < fewShared || 2*n < filled || slices.Contains(tellingStarts, strings.ToLower(start[:len(start)-1])) {
			continue // of two starts one may have exactly half; then neither is known by more
		}
		asWritten, without := 0, 0
		for _, h := range headings {
			if s, rest := cutStart(h); s == start && rest != "" {
				if isHeading(h) {
					asWritten++
				}
				if isHeading(rest) {
					without++
				}
			}
		}
		if 4*asWritten <= n && 2*without >= n {
			return start
		}
	}
	return ""
}

// cutStart parts a heading behind its first sign: "Ctrl_" and "country".
func cutStart(heading string) (start, rest string) {
	heading = strings.TrimSpace(heading)
	if len(heading) > longHeading {
		return "", ""
	}
	i := strings.IndexAny(heading, "_.:")
	if i < 1 || i == len(heading)-1 {
		return "", ""
	}
	return heading[:i+1], heading[i+1:]
}

// readBehind reads the headings that are not known behind what most of them begin
// with, and says so once.
func (r *resolver) readBehind() {
	headings := make([]string, len(r.columns))
	for i := range r.columns {
		headings[i] = r.columns[i].Heading
	}
	shared := sharedStart(headings)
	if shared == "" {
		return
	}
	r.behind = make([]bool, len(r.columns))
	first, n := -1, 0
	for i, h := range headings {
		start, rest := cutStart(h)
		if start != shared || r.read[i].meaning != nil {
			continue
		}
		if r.read[i] = r.v.read(rest); r.read[i].meaning == nil {
			continue
		}
		r.behind[i] = true
		if n++; first < 0 {
			first = i
		}
	}
	if first >= 0 {
		r.find(first, ruleHeadingReading, label.Note, "", "%q stands before most headings of the table: %d of them are read without it", shared, n)
	}
}
