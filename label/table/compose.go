package table

import (
	"regexp"
	"slices"
	"strings"
)

// date writes year, month and day as one date.
func (g *group) date(r *Row) Cell {
	text := [3]string{}
	out := Cell{}
	for n, i := range g.columns {
		if i < 0 || !r.filled(i) {
			continue
		}
		if text[n] = strings.TrimSpace(r.Cells[i].Text); out.Line == 0 {
			out = r.Cells[i]
			out.Start, out.End, out.Quoted = 0, 0, false
		}
	}
	year, month, day := text[0], text[1], text[2]
	figures := func(s string) bool { return s == "" || kindOf(s) == aNumber && len(s) <= 2 }
	switch {
	case year != "" && (month != "" || day == "") && figures(month) && figures(day):
		out.Text = year
		for _, s := range []string{month, day} {
			if s != "" {
				out.Text += "-" + strings.Repeat("0", 2-len(s)) + s
			}
		}
	default:
		out.Text = strings.Join(strings.Fields(day+" "+month+" "+year), " ")
	}
	return out
}

// span writes the first and the last day as one date.
func (g *group) span(r *Row) Cell {
	first, last := g.columns[0], g.columns[1]
	switch {
	case !r.filled(last):
		if first < len(r.Cells) {
			return r.Cells[first]
		}
		return Cell{}
	case !r.filled(first), strings.TrimSpace(r.Cells[first].Text) == strings.TrimSpace(r.Cells[last].Text):
		return r.Cells[last]
	}
	out := r.Cells[first]
	out.Start, out.End, out.Quoted = 0, 0, false
	from, to := strings.TrimSpace(out.Text), strings.TrimSpace(r.Cells[last].Text)
	joint := " – "
	if isoDay.MatchString(from) && isoDay.MatchString(to) {
		joint = "/"
	}
	out.Text = from + joint + to
	return out
}

// isoDay is a date of figures, the year first.
var isoDay = regexp.MustCompile(`^\d{4}(-\d\d?){0,2}$`)

// partColumn returns the column whose heading is a word for a part, -1 if none is.
func (r *resolver) partColumn(name string) int {
	for i := range r.columns {
		if r.isPart(i, name) {
			return i
		}
	}
	return -1
}

// compose makes columns one of a term.
func (r *resolver) compose(term, joint string, at []int) {
	g := &group{columns: at, joint: joint}
	r.groups = append(r.groups, g)
	for _, i := range at {
		r.read[i] = reading{meaning: &meaning{terms: []string{term}, plain: true}}
		col := &r.columns[i]
		col.Known, col.Term, col.group = true, term, g
	}
	r.taken[term] = at[0]
}

// spans finds the column of the last day and puts it to that of the first.
func (r *resolver) spans() {
	last := r.partColumn("lastDay")
	var first []int
	for i := range r.read {
		if m := r.read[i].meaning; m != nil && i != last && m.terms[0] == "eventDate" {
			first = append(first, i)
		}
	}
	begins := r.partColumn("firstDay")
	if begins >= 0 && !slices.Contains(first, begins) {
		first = append(first, begins)
	}
	if last >= 0 && len(first) == 1 {
		r.compose("eventDate", asSpan, []int{first[0], last})
	}
}

// composed finds the columns that make a date or a name together.
func (r *resolver) composed() {
	r.spans()
	for _, c := range []struct {
		term, joint string
		parts       []string
		least       int
	}{
		{"dateIdentified", asDate, []string{"yearIdentified", "monthIdentified", "dayIdentified"}, 1},
		{"recordedBy", asName, []string{"firstName", "lastName"}, 2},
		{"recordedBy", asName, []string{"bareFirstName", "bareLastName"}, 2},
	} {
		if r.elsewhere(c.term, c.joint, c.parts) {
			continue
		}
		var at []int
		for _, part := range c.parts {
			i := r.partColumn(part)
			if i < 0 {
				break // a day alone is no date
			}
			at = append(at, i)
		}
		if len(at) < c.least {
			continue
		}
		r.compose(c.term, c.joint, at)
	}
}

// elsewhere reports whether a column that is no part has the whole already: of
// dates a term's name, of persons any word. "Nome raccoglitore" beside "Cognome
// raccoglitore" is a part, alone it is the whole.
func (r *resolver) elsewhere(term, joint string, parts []string) bool {
	for i, o := range r.read {
		if o.meaning != nil && o.terms[0] == term && (joint == asName || !o.plain) &&
			!slices.ContainsFunc(parts, func(part string) bool { return r.isPart(i, part) }) {
			return true
		}
	}
	return false
}
