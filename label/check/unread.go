package check

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label/table"
)

// mostHeadings is how many headings that are not known a message names.
const mostHeadings = 6

// unread says for a message of what is missing which headings of the table are not
// known, where it has no column of any of the terms: what is missing may stand below
// one of them. The first term is the one to write. "" where it has such a column, or knows all its headings.
func (c *Context) unread(terms ...string) string {
	t := c.row.Table()
	if slices.ContainsFunc(terms, t.Has) {
		return ""
	}
	if h := t.Pointed(terms[0]); h != "" {
		return "; if it stands below " + strconv.Quote(h) + ", which is not known, call that heading " + terms[0]
	}
	said := &c.past.unread
	if said.table != t {
		said.table, said.headings = t, map[string]string{}
	}
	headings, ok := said.headings[terms[0]]
	if !ok {
		headings = unknownHeadings(t, terms[0])
		said.headings[terms[0]] = headings
	}
	if headings == "" {
		return ""
	}
	return "; if it stands below " + headings + ", call that heading " + terms[0]
}

// unreadHeadings are the headings of a table that are not known and might be those of
// a term, as unread says them.
type unreadHeadings struct {
	table    *table.Table
	headings map[string]string // by the term
}

func unknownHeadings(t *table.Table, term string) string {
	var names []string
	more := 0
	for _, col := range t.Columns() {
		switch name := strings.TrimSpace(col.Heading); {
		case col.Known || col.Shared() || name == "" || !col.CouldBe(term):
		case len(names) == mostHeadings:
			more++
		default:
			names = append(names, strconv.Quote(name))
		}
	}
	switch {
	case len(names) == 0:
		return ""
	case more == 1:
		names = append(names, "1 other")
	case more > 1:
		names = append(names, fmt.Sprintf("%d others", more))
	}
	last := len(names) - 1
	list := names[last]
	if last > 0 {
		list = strings.Join(names[:last], ", ") + " and " + list
	}
	if last == 0 {
		return list + ", which is not known"
	}
	return "a heading that is not known, " + list
}

// collectorsNumber is a number as collectors give one.
var collectorsNumber = regexp.MustCompile(`^[A-Za-z]{0,6}[-. ]?\d{1,6}[A-Za-z]?$`)

// fieldNumberHeading is the term's own name.
var fieldNumberHeading = regexp.MustCompile(`(?i)field[ _.]?n(umber|o|um)\.?$`)

// inFieldNumber says for the message of a number that is missing where it may stand:
// Darwin Core has fieldNumber for an event, and many write the collector's number there.
func (c *Context) inFieldNumber() string {
	if text := c.Text("fieldNumber"); collectorsNumber.MatchString(text) && fieldNumberHeading.MatchString(c.Heading("fieldNumber")) { // not that of a plot
		return "; " + c.Heading("fieldNumber") + " has " + text + ": if the collector gave it, write it as recordNumber"
	}
	return ""
}
