package table

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
)

var (
	herbariumCode = regexp.MustCompile(`^\p{Lu}{1,8}$`)
	// aMark ticks a thing that there is, or counts a few.
	aMark = regexp.MustCompile(`(?i)^\s*(?:[x×+•●✓✔*]|yes|y|\d)\s*$`)
)

// largeHerbaria are codes that hardly any list of herbaria does without. From memory, of Index Herbariorum.
var largeHerbaria = strings.Fields("A B BM BR C CAS COI COL E F FI G GH GOET JE K L LE LISC LISU M MA MEXU MO NY P PO PRE R RB S SI SP TEX U UC UPS US W WU Z")

// unknownMarks makes one message of the headings that are codes of herbaria over marks of those
// that have a sheet: MO, NY and K over "1" or "x".
func (t *Table) unknownMarks(rows []*Row, listed []label.Finding) (rest []label.Finding) {
	var codes []label.Finding
	large, filled := 0, 0
	for _, f := range listed {
		code := strings.TrimSpace(f.Value)
		i := t.columnAt(f.Origin)
		if i < 0 || !herbariumCode.MatchString(code) || slices.ContainsFunc(rows, func(r *Row) bool { return r.filled(i) && !aMark.MatchString(r.Cells[i].Text) }) {
			rest = append(rest, f)
			continue
		}
		codes = append(codes, f)
		filled += t.filledIn(rows, i)
		if slices.Contains(largeHerbaria, code) {
			large++
		}
	}
	if len(codes) < 3 || large < 2 || filled < 3 {
		return listed
	}
	var names []string
	for _, f := range codes {
		names = append(names, strconv.Quote(strings.TrimSpace(f.Value)))
	}
	one := codes[0]
	one.Value = ""
	one.Message = fmt.Sprintf("headings %s look like codes of herbaria, with a mark for each that has a sheet: they are kept, but not printed; to print them, write the codes into one column, duplicatesTo, as %q",
		strings.Join(names, ", "), strings.TrimSpace(codes[0].Value)+" | "+strings.TrimSpace(codes[1].Value))
	t.instead(codes, one)
	return rest
}
