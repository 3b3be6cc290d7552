package trade

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
)

// limit is how many characters the old databases keep.
const limit = 255

// cutColumn keeps the cells of one column that have just so many.
type cutColumn struct {
	longer bool
	cells  []cell
	texts  []string
}

// cutTable keeps 300 bytes for each cell that is exactly so long.
type cutTable struct {
	file    string
	columns map[string]*cutColumn
	longest map[string]*longestColumn
}

// leastCut is how long a text is that a program may have cut off, and manyCut how many
// end at one length, if it is no chance.
const (
	leastCut = 60
	manyCut  = 4
)

// longestColumn keeps the longest texts of a column: those that end like one, by number.
type longestColumn struct {
	length, ended int
	cells         []cell
	texts         []string
}

// include keeps a text that is among the longest.
func (l *longestColumn) include(f check.Field) {
	if len(f.Text) < l.length { // in bytes, and so in characters
		return
	}
	n := utf8.RuneCountInString(f.Text)
	if n < l.length || n < leastCut {
		return
	}
	if n > l.length {
		*l = longestColumn{length: n, cells: l.cells[:0], texts: l.texts[:0]}
	}
	switch {
	case slices.Contains(l.texts, f.Text):
	case ends(f.Text):
		l.ended++
	case len(l.cells) < maxCells:
		l.cells, l.texts = append(l.cells, cellOf(f)), append(l.texts, strings.Clone(f.Text))
	}
}

// cut reports whether the longest were cut off: some may end at a full stop by chance. Texts
// that a program made of the same words differ in little.
func (l *longestColumn) cut() bool {
	if l.length < leastCut || l.length == limit || len(l.texts) < manyCut || l.ended > len(l.texts)/4 {
		return false
	}
	behind := map[string]bool{}
	for _, s := range l.texts {
		if strings.Count(s, " ") < 6 {
			return false
		}
		behind[s[len(s)-12:]] = true
	}
	return len(behind) >= manyCut
}

func (t *cutTable) Feed(r *check.Record) {
	for term, f := range r.Terms {
		if len(f.Text) < leastCut {
			continue
		}
		if slices.Contains(prose, term) {
			l := t.longest[term]
			if l == nil {
				if t.longest == nil {
					t.longest, t.file = map[string]*longestColumn{}, f.Origin.File
				}
				l = &longestColumn{}
				t.longest[strings.Clone(term)] = l
			}
			l.include(f)
		}
		if len(f.Text) < limit {
			continue
		}
		n := utf8.RuneCountInString(f.Text)
		exact := n == limit || len(f.Text) == limit
		if n <= limit && !exact || !slices.Contains(prose, term) {
			continue
		}
		col := t.columns[term]
		if col == nil {
			if t.columns == nil {
				t.columns, t.file = map[string]*cutColumn{}, f.Origin.File
			}
			col = &cutColumn{}
			t.columns[strings.Clone(term)] = col
		}
		if n > limit {
			*col = cutColumn{longer: true}
			continue
		}
		if !col.longer && !ends(f.Text) && len(col.cells) < maxCells {
			col.cells, col.texts = append(col.cells, cellOf(f)), append(col.texts, strings.Clone(f.Text))
		}
	}
}

// ends reports whether a text ends as sentences do.
func ends(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(s)
	return strings.ContainsRune(".!?)]”»\"'…", r)
}

func (t *cutTable) End() []label.Finding {
	var all []label.Finding
	for _, term := range slices.Sorted(maps.Keys(t.columns)) {
		for i, c := range t.columns[term].cells {
			all = append(all, label.Finding{Origin: c.origin(t.file, term), Value: t.columns[term].texts[i],
				Message: "exactly 255 characters, and no text of the column is longer: it was probably cut off, so look up how it ends"})
		}
	}
	for _, term := range slices.Sorted(maps.Keys(t.longest)) {
		l := t.longest[term]
		if !l.cut() {
			continue
		}
		all = append(all, label.Finding{Origin: l.cells[0].origin(t.file, term), Value: l.texts[0],
			Message: fmt.Sprintf("%d texts of the column have %d characters, none has more, and they end within a sentence: they were probably cut off, so look up how they end", len(l.cells), l.length),
			Also:    also(term, l.cells[1:])})
	}
	return all
}
