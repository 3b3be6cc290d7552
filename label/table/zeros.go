package table

import (
	"slices"
	"strings"

	"cornerslip/label"
)

// heightColumns are the columns that data bases fill with 0 where no height and no
// depth was noted.
var heightColumns = [4]string{"minimumElevationInMeters", "maximumElevationInMeters", "minimumDepthInMeters", "maximumDepthInMeters"}

// emptyHeights finds out whether 0 stands for an empty cell in the columns of height
// and depth: no plant grows at sea level and at the depth of 0 m in most rows of a
// table, nor is the upper of two heights 0 wherever it stands above a lower one.
func (t *Table) emptyHeights(rows []*Row) {
	var at [4]int
	heights, depths := 0, 0
	for k, term := range heightColumns {
		if at[k] = t.Index(term); at[k] < 0 {
			continue
		}
		if k < 2 {
			heights++
		} else {
			depths++
		}
	}
	if heights == 0 || heights+depths < 2 {
		return
	}
	filled, zeros, low, first := 0, 0, 0, 0
	for _, r := range rows {
		var text [4]string
		for k, i := range at {
			if i >= 0 && i < len(r.Cells) {
				text[k] = strings.TrimSpace(r.Cells[i].Text)
			}
		}
		if strings.Join(text[:], "") == "" {
			continue
		}
		filled++
		upper := heights == 2 && IsZero(text[1]) && text[0] != "" && !IsZero(text[0]) && text[0][0] != '-'
		height := allZero(text[:2])
		depth := depths > 0 && allZero(text[2:])
		if upper || height && depth {
			low++
		}
		if upper || depth && text[0]+text[1] != "" {
			if zeros++; first == 0 {
				first = r.Line
			}
		}
	}
	if zeros < codeCells || 3*zeros < 2*filled {
		return
	}
	where, what := "depth", "no depth"
	for k := range heightColumns {
		t.zeros[k] = k > 1 || low >= codeCells
	}
	if t.zeros[0] {
		where, what = "height and depth", "neither a height nor a depth"
		if depths == 0 {
			where, what = "height", "no height"
		}
	}
	t.say(ruleCode, label.Note, t.columns[0].Origin.Line, "0 stands for an empty cell in the columns of %s of this table (in %d of the first %d rows, from line %d on): it is read as empty, and %s of 0 m is printed",
		where, zeros, len(rows), first, what)
}

// allZero reports whether cells hold nothing but zeros, and at least one.
func allZero(texts []string) bool {
	some := false
	for _, s := range texts {
		if s != "" && !IsZero(s) {
			return false
		}
		some = some || s != ""
	}
	return some
}

// IsZero reports whether a text is a zero in figures: 0, 0.0, 0,00.
func IsZero(s string) bool {
	return s != "" && s[0] == '0' && strings.Trim(s, "0.,") == "" && strings.Trim(s, ".,") != ""
}

// ZeroFilled reports whether this table writes 0 into the column of a height or depth
// where nothing was noted; the table's findings say so once.
func (t *Table) ZeroFilled(term string) bool {
	k := slices.Index(heightColumns[:], term)
	return k >= 0 && t.zeros[k]
}
