package table

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// Kinds of joint beside the texts that part cells.
const (
	asDate = "date" // year, month and day, in this order
	asName = " "    // first and last name
	asSpan = "span" // first and last day
	asRest = "rest" // the first filled one, in the order of the group
)

// A group is several columns that mean one term. Prose and lists are read one
// after the other; of the rest one may be filled, or all say the same.
type group struct {
	columns []int
	joint   string // what parts the texts; "" where there can be but one
}

// composed reports whether the columns hold the parts of one text.
func (g *group) composed() bool {
	return g != nil && (g.joint == asDate || g.joint == asName || g.joint == asSpan)
}

// parted reports whether all cells are read, one after the other.
func (g *group) parted() bool { return g.joint != "" && g.joint != asRest }

// joints part what several columns say of one term. Lists have the bar that
// Darwin Core asks for.
var joints = map[string]string{
	"coCollectors": " | ", "associatedTaxa": " | ", "duplicatesTo": " | ", "otherCatalogNumbers": " | ", "preparations": " | ",
	"associatedMedia": " | ", "associatedReferences": " | ", "previousIdentifications": " | ", "typeStatus": " | ",
	"locality": ", ", "verbatimLocality": ", ", "stateProvince": ", ", "county": ", ", "municipality": ", ", "higherGeography": ", ",
	"habitat": "; ", "plantDescription": "; ", "occurrenceRemarks": "; ", "vernacularName": "; ", "uses": "; ", "permits": "; ",
	"restrictions": "; ", "fieldNotes": "; ", "eventRemarks": "; ", "locationRemarks": "; ", "identificationRemarks": "; ",
	"reproductiveCondition": "; ", "organismRemarks": "; ", "georeferenceRemarks": "; ", "georeferenceSources": " | ", "georeferencedBy": " | ", "samplingProtocol": "; ", "references": " | ",
}

// numberable reports whether columns of a term may be numbered.
func numberable(term string) bool {
	switch term {
	case "recordedBy", "identifiedBy", "dateIdentified", "minimumElevationInMeters":
		return true
	}
	return joints[term] != ""
}

// weakWords are headings that mean a term only where no other column has it.
var weakWords = wordSet("no. | nro. | number | num. | nº | número | núm. | numéro | Nummer | Nr. | name | nome | nombre | nom | n° | title")

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.SplitSeq(words, " | ") {
		set[headingKey(w)] = true
	}
	return set
}

// ofNumber returns the term of a numbered heading: the second collector is one
// beside the first.
func (r *resolver) ofNumber(i int, term string, n int) string {
	switch {
	case term == "recordedBy" && n > 1:
		return "coCollectors"
	case term == "minimumElevationInMeters" && n == 2 && r.read[i].plain:
		return "maximumElevationInMeters"
	}
	return term
}

// again settles column i, whose term another column has.
func (r *resolver) again(i int, term string) {
	c, read := &r.columns[i], r.read[i]
	first := r.taken[term]
	verbatim := verbatimOf[term]
	has := r.has(verbatim)
	switch {
	case weakWords[headingKey(c.Heading)], read.number > 0 && joints[term] == "":
		c.Known, c.Term = false, strings.TrimSpace(c.Heading)
		if read.number > 0 {
			r.find(i, ruleHeadingReading, label.Warning, "", "heading %q is not read, since column %d (%q) is read as %s: if this one is the one that holds now, give it the heading %s and take it from the other",
				c.Heading, first+1, r.columns[first].Heading, term, term)
			return
		}
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is not read, since column %d (%q) has %s: its cells are kept, but not printed",
			c.Heading, first+1, r.columns[first].Heading, term)
	case !read.plain && !r.read[first].plain && (term == "catalogNumber" || term == "occurrenceID") && headingKey(r.columns[first].Heading) == headingKey(c.Heading):
		c.Term = term
		r.find(i, ruleHeadingDoubled, label.Error, "", "heading %q stands twice, in columns %d and %d: rename or remove one of them", c.Heading, first+1, i+1)
	case term == "catalogNumber":
		// A specimen has one number; the barcode's or an old one is another.
		c.Term = "otherCatalogNumbers"
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is read as otherCatalogNumbers, since column %d (%q) has the catalogNumber", c.Heading, first+1, r.columns[first].Heading)
		if at, ok := r.taken[c.Term]; ok {
			r.gather(at, i)
		} else {
			r.taken[c.Term] = i
		}
	case read.plain && read.own != "" && r.has(read.own) && headingKey(r.columns[r.taken[read.own]].Heading) == headingKey(c.Heading):
		// The second of these was not read, and this is as little of the first.
		c.Known, c.Term = false, strings.TrimSpace(c.Heading)
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is not read: column %d (%q) has %s already",
			c.Heading, r.columns[first].Index+1, r.columns[first].Heading, term)
	case read.plain && !r.read[first].plain && joints[term] == "" && verbatim == "":
		c.Term = term
		f := &r.columns[first]
		if f.group == nil {
			f.group = &group{columns: []int{first}, joint: asRest}
			r.groups = append(r.groups, f.group)
		}
		f.group.columns = append(f.group.columns, i)
		c.group = f.group
	case r.columns[first].group.composed():
		c.Known, c.Term = false, strings.TrimSpace(c.Heading)
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is not read, since column %d (%q) has %s: its cells are kept, but not printed",
			c.Heading, first+1, r.columns[first].Heading, term)
	case read.plain && verbatim != "" && !has && r.columns[first].Heading != c.Heading:
		c.Term = verbatim
		r.taken[verbatim] = i
		r.find(i, ruleHeadingReading, label.Note, "", "heading %q is read as %s, since column %d (%q) has %s",
			c.Heading, verbatim, first+1, r.columns[first].Heading, term)
	default:
		c.Term = term
		r.gather(first, i)
	}
}

// has reports whether a column has a term.
func (r *resolver) has(term string) bool {
	_, ok := r.taken[term]
	return ok
}

// gather puts a column to an earlier one of the same term.
func (r *resolver) gather(first, i int) {
	f := &r.columns[first]
	if f.group == nil {
		f.group = &group{columns: []int{first}, joint: joints[f.Term]}
		r.groups = append(r.groups, f.group)
	}
	f.group.columns = append(f.group.columns, i)
	slices.Sort(f.group.columns)
	for _, at := range f.group.columns {
		r.columns[at].group = f.group
	}
	r.taken[f.Term] = f.group.columns[0]
}

// remarkGroups states which columns are read as one.
func (r *resolver) remarkGroups() {
	for _, g := range r.groups {
		var headings []string
		for _, i := range g.columns {
			headings = append(headings, strconv.Quote(r.columns[i].Heading))
		}
		last := g.columns[len(g.columns)-1]
		term := r.columns[last].Term
		names := fmt.Sprintf("headings %s (columns %s)", strings.Join(headings, ", "), columnsOf(g.columns))
		switch {
		case g.composed() && len(g.columns) == 1:
			r.find(last, ruleHeadingReading, label.Note, "", "heading %s is read as %s", headings[0], term)
		case g.composed():
			r.find(last, ruleHeadingReading, label.Note, "", "%s are read together as %s", names, term)
		case g.joint == asRest:
			r.find(g.columns[1], ruleHeadingDoubled, label.Note, "", "%s both mean %s: the first is read, and where it is empty the next", names, term)
		case g.joint != "":
			r.find(last, ruleHeadingDoubled, label.Note, "", "%s all mean %s: their cells are read one after the other, parted by %q", names, term, g.joint)
		default:
			r.find(last, ruleHeadingDoubled, label.Note, "", "%s all mean %s: the filled one is read; where several are filled they must say the same", names, term)
		}
	}
}

func columnsOf(columns []int) string {
	var all []string
	for _, i := range columns {
		all = append(all, strconv.Itoa(i+1))
	}
	return strings.Join(all, ", ")
}

// cell returns what the columns of a group say together.
func (g *group) cell(r *Row) Cell {
	switch g.joint {
	case asDate:
		return g.date(r)
	case asSpan:
		return g.span(r)
	}
	out, filled := Cell{}, 0
	for _, i := range g.columns {
		if !r.filled(i) {
			continue
		}
		c := r.Cells[i]
		switch filled++; {
		case filled == 1:
			out = c
		case g.parted():
			out.Text = g.join(strings.TrimSpace(out.Text), strings.TrimSpace(c.Text))
			out.Start, out.End, out.Quoted = 0, 0, false
		}
	}
	if filled == 0 && g.columns[0] < len(r.Cells) {
		return r.Cells[g.columns[0]]
	}
	return out
}

// join puts a text to those before it. What is said already is not said again: a
// text that stands there, or that another begins with. Nor is a comma that a text
// ends in, as where the label broke the line.
func (g *group) join(texts, text string) string {
	parts := strings.Split(texts, g.joint)
	for i, part := range parts {
		switch {
		case begins(part, text):
			return texts
		case begins(text, part) && i == len(parts)-1:
			return strings.Join(append(parts[:i], text), g.joint)
		}
	}
	if g.joint != " | " {
		texts = strings.TrimRight(texts, " ,;") // the joint parts them
	}
	return texts + g.joint + text
}

// begins reports whether whole words at the beginning of a text are another.
func begins(text, words string) bool {
	if len(text) < len(words) || !strings.EqualFold(text[:len(words)], words) {
		return false
	}
	next, _ := utf8.DecodeRuneInString(text[len(words):])
	return len(text) == len(words) || !unicode.IsLetter(next) && !unicode.IsDigit(next)
}

// column returns the one filled column, the first if none is, -1 if the text is
// of several.
func (g *group) column(r *Row) int {
	at := -1
	for _, i := range g.columns {
		if r.filled(i) {
			if at >= 0 && g.parted() {
				return -1
			}
			if at < 0 {
				at = i
			}
		}
	}
	if at < 0 {
		return g.columns[0]
	}
	return at
}

// leave takes a column out of its group.
func (t *Table) leave(i int) {
	g := t.columns[i].group
	if g == nil {
		return
	}
	t.columns[i].group = nil
	g.columns = slices.DeleteFunc(slices.Clone(g.columns), func(k int) bool { return k == i })
	if len(g.columns) == 1 {
		t.columns[g.columns[0]].group = nil
	}
}

// differ finds cells of one term that say different things.
func (g *group) differ(r *Row) {
	if g.joint != "" {
		return
	}
	first := g.column(r)
	for _, i := range g.columns {
		if i == first || !r.filled(i) || first >= len(r.Cells) {
			continue
		}
		if strings.TrimSpace(r.Cells[i].Text) != strings.TrimSpace(r.Cells[first].Text) {
			severity := label.Error
			if r.table.columns[first].Term == "occurrenceID" {
				severity = label.Note // a specimen may have several, and no label prints them
			}
			r.say(i, ruleHeadingDoubled, severity, "", "column %d (%q) says something else, and both mean %s: correct one of them, or give it another heading",
				first+1, r.table.columns[first].Heading, r.table.columns[first].Term)
		}
	}
}

// Follows reports whether column i is read together with an earlier one, whose
// cell Get returns for both.
func (r *Row) Follows(i int) bool {
	g := r.table.columns[i].group
	return g != nil && slices.Min(g.columns) != i
}

// Shared reports whether the column is read as one with others.
func (c *Column) Shared() bool { return c.group != nil }

// filled reports whether cell i holds anything but a code for nothing.
func (r *Row) filled(i int) bool {
	if i >= len(r.Cells) || isBlank(r.Cells[i].Text) {
		return false
	}
	text := strings.TrimSpace(r.Cells[i].Text)
	return !plainCodes[text] && !r.table.EmptyCode(text)
}
