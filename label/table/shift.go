package table

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label"
)

// A profile is what the cells of a column look like.
type profile struct {
	main   kind // what nearly all are; kinds if there is no such kind
	seen   [kinds]bool
	indent bool            // cells begin with a blank
	values map[string]bool // the column's words, where they are few and come again
}

const (
	profileRows = 5 // that a profile needs at least
	profileTop  = 30
)

// profile looks at the first rows: at the cells that all have too many or too
// few, and at what each column holds.
// whole is true where these are all rows of the table.
func (t *Table) profile(rows []*Row, whole bool) {
	var records []*Row
	for _, r := range rows {
		filled := 0
		for i := range r.Cells {
			if !isBlank(r.Cells[i].Text) {
				filled++
			}
		}
		if filled > 1 || filled == 1 && t.width < 4 {
			records = append(records, r) // what has one cell may be a title
		}
	}
	t.extent(records)
	t.nameless(records)
	t.pointOut(records)
	t.unknown(records, whole)
	t.emptyCodes(records)
	t.emptyHeights(records)
	fits := records[:0]
	for _, r := range records {
		if len(r.Cells) == t.width || t.trimmed && len(r.Cells) < t.width {
			fits = append(fits, r)
		}
	}
	if len(fits) < profileRows || t.width < 4 {
		return
	}
	t.profiles = make([]profile, t.width)
	for i := range t.profiles {
		t.profiles[i] = profileOf(fits, i)
	}
}

func profileOf(rows []*Row, column int) profile {
	p := profile{main: kinds}
	count := [kinds]int{}
	values := map[string]int{}
	n, indents := 0, 0
	for _, r := range rows {
		if column >= len(r.Cells) {
			continue
		}
		text := strings.TrimSpace(r.Cells[column].Text)
		k := kindOf(text)
		if k == aBlank {
			continue
		}
		if r.Cells[column].Text[0] == ' ' {
			indents++
		}
		n++
		count[k]++
		if len(values) <= profileTop && (k == aText || k == aFamily || k == aMix) {
			values[text]++
		}
	}
	p.indent = indents > 1
	for k := range kinds {
		p.seen[k] = count[k] > max(1, n/50) // once or so may be the very fault
	}
	if n < profileRows {
		return p
	}
	for k := range kinds {
		if 5*count[k] >= 4*n {
			p.main = k
		}
	}
	if len(values) <= profileTop && 2*len(values) <= n && (p.main == aText || p.main == aFamily || p.main == aMix) {
		p.values = map[string]bool{}
		for v, times := range values {
			if times > 1 {
				p.values[v] = true
			}
		}
	}
	return p
}

// extent says what is the same in every row: cells beyond the last column, or
// none after the last filled one.
func (t *Table) extent(rows []*Row) {
	if len(rows) < 2 || t.width < 2 {
		return
	}
	over := len(rows[0].Cells) - t.width
	blank, less := true, 0
	for _, r := range rows {
		if len(r.Cells)-t.width != over {
			over = 0
		}
		for _, c := range r.Cells[min(len(r.Cells), t.width):] {
			blank = blank && isBlank(c.Text)
		}
		if n := len(r.Cells); n < t.width && !isBlank(r.Cells[n-1].Text) {
			less++
		}
	}
	switch line := t.columns[0].Origin.Line; {
	case over > 0 && blank:
		t.spare = over
		t.say(ruleRagged, label.Note, line, "every row ends with %s more than the table has columns: not read", plural(over, "one empty cell", "%d empty cells"))
	case over > 0:
		t.short = true
		t.say(ruleRagged, label.Error, line, "%s", t.shortSays(rows, over))
	case 2*less > len(rows) && len(rows) >= profileRows:
		t.trimmed = true
		t.say(ruleRagged, label.Note, line, "most rows end with their last filled cell: the cells they lack are read as empty")
	}
}

// shortSays is what is wrong with a table whose rows all have more cells than
// it has headings.
func (t *Table) shortSays(rows []*Row, over int) string {
	counts := over == 1
	for i, r := range rows {
		counts = counts && strings.Trim(r.Cells[0].Text, ` "`) == fmt.Sprint(i+1)
	}
	comma := commaName(t.o.Comma)
	if counts {
		return fmt.Sprintf("every row begins with a count that has no heading, so that all cells stand one column too far to the right: put a %s before the first heading", comma)
	}
	return fmt.Sprintf("every row has %s, the heading row %d: is a heading missing, or a %s inside a cell that is not enclosed in quotes (a decimal comma)?",
		cells(len(rows[0].Cells)), t.width, comma)
}

// fit says how well a cell's text fits a column: hard is true where the column
// never holds such a thing.
func (p *profile) fit(text string) (score int, hard bool) {
	k := kindOf(text)
	switch {
	case k == aBlank:
		return 0, false
	case p.values[strings.TrimSpace(text)]:
		return 3, false
	case k == p.main:
		return 1, false
	case p.main == kinds || p.main == aMix || k == aMix || p.seen[k]:
		return 0, false
	}
	return -2, true
}

// misfits reports whether the column of cell i never holds such a thing.
func (r *Row) misfits(i int) bool {
	if r.table.profiles == nil || i >= len(r.table.profiles) {
		return false
	}
	_, hard := r.table.profiles[i].fit(r.Cells[i].Text)
	return hard
}

// astray looks at a row with as many cells as there are columns.
func (r *Row) astray() {
	hard := 0
	for i := range r.table.profiles {
		p := &r.table.profiles[i]
		if p.main == kinds || p.main == aMix {
			continue
		}
		if text := r.Cells[i].Text; !p.plainly(text) {
			if _, bad := p.fit(text); bad {
				hard++
			}
		}
	}
	if hard >= 3 {
		r.shifted()
	}
}

// What a merged or missing cell costs in shifted, and by how much a row must
// fit better to be called so.
const (
	shiftCost = 2
	shiftSure = 6
	shiftWide = 2 // where it has too many cells anyway
	shiftMost = 4 // cells that one column may take, or the row may lack
)

// An alignment is a way to lay the cells of a row into the columns.
type alignment struct {
	score, hard int
	take        []int // the cells that each column takes
}

// shifted finds out whether the cells of a row stand in the wrong columns,
// because a cell was cut in two or is missing, and says so where it is sure.
func (r *Row) shifted() bool {
	t := r.table
	n, width := len(r.Cells), t.width
	if t.profiles == nil || n > width+shiftMost || n < width-shiftMost || n < 4 {
		return false
	}
	best := r.align()
	if best.take == nil {
		return false
	}
	base := alignment{}
	for c := range t.profiles {
		if c < n {
			s, bad := t.profiles[c].fit(r.Cells[c].Text)
			base.score += s
			if bad {
				base.hard++
			}
		}
	}
	sure, most := shiftSure, 1
	for _, c := range r.Cells[min(n, width):] {
		if !isBlank(c.Text) { // a cell that no column has a place for
			base.hard++
			base.score -= shiftCost
			sure, most = shiftWide, 0
		}
	}
	if best.score < base.score+sure || best.hard > most || base.hard < best.hard+2 {
		return false
	}
	return r.sayShifted(best.take)
}

// sayShifted names the first place where cells and columns part.
func (r *Row) sayShifted(take []int) bool {
	t := r.table
	at, places, end := 0, 0, len(r.Cells)
	for end > 0 && isBlank(r.Cells[end-1].Text) {
		end--
	}
	say := func() {}
	for c, n := range take {
		c, i := c, at
		at += n
		if n == 1 || n == 0 && i >= end {
			continue
		}
		if places++; places > 1 {
			continue
		}
		if n > 1 {
			merged := r.joined(i, i+n)
			next := ""
			if i+n < len(r.Cells) {
				next = strings.TrimSpace(r.Cells[i+n].Text)
			}
			if decimalComma.MatchString(merged) {
				say = func() {
					r.say(i, ruleShifted, label.Error, strings.Replace(strings.TrimSpace(merged), ",", ".", 1),
						"the cells after it fit %s further to the left, from %q on: a decimal comma cuts the number in two; write it with a point", plural(n-1, "one column", "%d columns"), cut(next, 30))
					r.Findings[len(r.Findings)-1].Value = merged
				}
				continue
			}
			say = func() {
				r.say(i, ruleShifted, label.Error, string(t.o.Quote)+strings.ReplaceAll(merged, string(t.o.Quote), string(t.o.Quote)+string(t.o.Quote))+string(t.o.Quote),
					"the cells after it fit %s further to the left, from %q on: a %s inside the cell cuts it in two; put the cell in quotes",
					plural(n-1, "one column", "%d columns"), cut(next, 30), commaName(t.o.Comma))
				r.Findings[len(r.Findings)-1].Value = merged
			}
			continue
		}
		say = func() {
			r.say(i, ruleShifted, label.Error, "", "from this cell on, the cells fit one column further to the right: the cell for %s is missing",
				t.columns[c].Term)
		}
	}
	if places == 0 {
		return false
	}
	say()
	f := &r.Findings[len(r.Findings)-1]
	if places > 1 {
		f.Message += fmt.Sprintf(" (and %s in this row)", plural(places-1, "one more place", "%d more places"))
	}
	f.Term = ""
	r.Astray = true
	return true
}

// decimalComma is a number that a comma table cuts in two.
var decimalComma = regexp.MustCompile(`^\s*[-+−]?\d{1,4},\d+\s*$`)

// joined returns some cells as one, as they were before they were cut.
func (r *Row) joined(from, to int) string {
	var parts []string
	for _, c := range r.Cells[from:to] {
		parts = append(parts, c.Text)
	}
	return strings.Join(parts, string(r.table.o.Comma))
}

// align finds the best way to lay the cells into the columns, by dynamic
// programming: each column takes one cell, none, or several that were one.
func (r *Row) align() alignment {
	t := r.table
	n, width := len(r.Cells), t.width
	for n > 0 && isBlank(r.Cells[n-1].Text) {
		n-- // empty cells at the end tell nothing
	}
	const never = -1 << 20
	type state struct{ score, hard, take int }
	// best[c][i]: columns from c on, cells from i on.
	best := make([][]state, width+1)
	for c := range best {
		best[c] = make([]state, n+1)
		for i := range best[c] {
			best[c][i].score = never
		}
	}
	best[width][n] = state{}
	for c := width - 1; c >= 0; c-- {
		for i := max(0, c-shiftMost-1); i <= min(n, c+2*shiftMost); i++ {
			b := &best[c][i]
			for take := 0; take <= shiftMost && i+take <= n; take++ {
				rest := best[c+1][i+take]
				if rest.score == never {
					continue
				}
				s := state{rest.score, rest.hard, take}
				switch {
				case take == 0 && i < n:
					s.score -= shiftCost
				case take > 0:
					text := r.Cells[i].Text
					if strings.HasPrefix(text, " ") && !t.profiles[c].indent {
						s.score-- // the rest of a cell that was cut
					}
					if take > 1 {
						text = r.joined(i, i+take)
						s.score -= shiftCost * (take - 1)
						switch {
						case strings.HasPrefix(r.Cells[i+1].Text, " "):
							s.score++ // a comma in prose
						case t.profiles[c].main == aNumber && decimalComma.MatchString(text):
							s.score++
						}
						if isBlank(r.Cells[i].Text) || isBlank(r.Cells[i+take-1].Text) {
							s.score -= shiftCost
						}
					}
					fit, hard := t.profiles[c].fit(text)
					s.score += fit
					if hard {
						s.hard++
					}
				}
				if s.score > b.score || s.score == b.score && take == 1 {
					*b = s
				}
			}
		}
	}
	if best[0][0].score == never {
		return alignment{}
	}
	out := alignment{score: best[0][0].score, hard: best[0][0].hard}
	for c, i := 0, 0; c < width; c++ {
		out.take = append(out.take, best[c][i].take)
		i += best[c][i].take
	}
	return out
}

// nameless adds to the finding of columns without a heading what they hold.
func (t *Table) nameless(rows []*Row) {
	at := slices.IndexFunc(t.findings, func(f label.Finding) bool { return f.Rule == ruleHeadingEmpty.Name })
	if at < 0 {
		return
	}
	f := &t.findings[at]
	count := 0
	for i := range t.columns {
		if isBlank(t.columns[i].Heading) {
			count++
		}
	}
	for i := range t.columns {
		if !isBlank(t.columns[i].Heading) {
			continue
		}
		it := "it"
		if count > 1 {
			it = fmt.Sprintf("column %d", i+1)
		}
		first, filled, counts, again, last := "", 0, true, true, -1
		for _, r := range rows {
			if i >= len(r.Cells) || isBlank(r.Cells[i].Text) {
				continue
			}
			text := strings.TrimSpace(r.Cells[i].Text)
			if filled++; first == "" {
				first = text
			}
			n, err := strconv.Atoi(text)
			counts = counts && err == nil && n > last
			last = n
			again = again && slices.ContainsFunc(r.Cells, func(c Cell) bool { return c.Start != r.Cells[i].Start && strings.TrimSpace(c.Text) == text })
		}
		switch {
		case filled == 0:
		case counts:
			f.Message += fmt.Sprintf("; %s counts the rows", it)
		case again:
			f.Message += fmt.Sprintf("; %s says what another column says too", it)
		default:
			f.Severity = label.Warning
			f.Message += fmt.Sprintf("; %s holds %q: give it a heading if that belongs to the record", it, cut(first, 40))
		}
	}
}

// many is how many unknown headings are told in one line.
const many = 6

// unknown says less of unknown headings without a cell, and tells many in one
// line.
func (t *Table) unknown(rows []*Row, whole bool) {
	if len(rows) == 0 {
		return
	}
	var kept, listed []label.Finding
	for _, f := range t.findings {
		if f.Rule != ruleHeadingUnknown.Name {
			kept = append(kept, f)
			continue
		}
		if i := t.columnAt(f.Origin); i >= 0 && !slices.ContainsFunc(rows, func(r *Row) bool { return r.filled(i) }) {
			if whole {
				continue // there is nothing to print
			}
			f.Severity, f.Suggest = label.Note, ""
		}
		if f.Severity == label.Note && f.Suggest == "" {
			listed = append(listed, f)
		}
		kept = append(kept, f)
	}
	t.findings = kept
	listed = t.unknownMarks(rows, listed)
	if len(listed) < many {
		return
	}
	var names []string
	for _, f := range listed {
		names = append(names, strconv.Quote(cut(f.Value, 40)))
	}
	first := listed[0]
	first.Value = ""
	first.Message = fmt.Sprintf("%d headings are not known, and their cells are kept, but not printed: %s", len(listed), strings.Join(names, ", "))
	t.instead(listed, first)
}

// instead says one thing of the headings that several findings were of.
func (t *Table) instead(of []label.Finding, one label.Finding) {
	t.findings = slices.DeleteFunc(t.findings, func(f label.Finding) bool {
		return slices.ContainsFunc(of, func(l label.Finding) bool { return l.Origin == f.Origin && l.Rule == f.Rule })
	})
	t.findings = append(t.findings, one)
	slices.SortStableFunc(t.findings, func(a, b label.Finding) int { return cmp.Or(a.Line-b.Line, a.Column-b.Column) })
}

// columnAt returns the column whose heading stands at a place, -1 if none does.
func (t *Table) columnAt(o label.Origin) int {
	return slices.IndexFunc(t.columns, func(c Column) bool { return c.Origin.Line == o.Line && c.Origin.Column == o.Column })
}
