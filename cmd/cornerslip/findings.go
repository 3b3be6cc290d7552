package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// A reporter shows findings on the terminal: in the order they come, but a
// fault that repeats over many rows once, with a count.
type reporter struct {
	w      io.Writer
	groups map[string]*faultGroup
	order  []*faultGroup
	least  label.Severity
	paint  bool // w is a terminal that shows colours
}

// faultGroup is one fault of one column, wherever it stands.
type faultGroup struct {
	first []label.Finding // the first few, to be shown one by one if there are no more
	rows  []rowRange
	count int
	cause bool // one for all
}

type rowRange struct{ from, to int }

// showSingly is how often a fault may repeat before it is told once for all.
const showSingly = 3

func newReporter(w io.Writer, least label.Severity) *reporter {
	return &reporter{w: w, groups: map[string]*faultGroup{}, least: least, paint: stylesOn(w)}
}

// add takes a finding. Faults are the same where rule, column, message and
// value are; notes, which ask for nothing, whatever the value; and what has one
// cause.
func (r *reporter) add(f label.Finding) error {
	if f.Severity < r.least {
		return nil
	}
	key := f.Rule + "\x00" + f.Term + "\x00" + f.Message
	if f.Severity > label.Note {
		key += "\x00" + f.Value
	}
	if f.Cause != "" {
		key = f.Rule + "\x00" + f.Term + "\x00" + f.Cause + "\x00cause"
	}
	g := r.groups[key]
	if g == nil {
		g = &faultGroup{}
		r.groups[key] = g
		r.order = append(r.order, g)
	}
	g.count++
	g.cause = f.Cause != ""
	if len(g.first) < showSingly {
		g.first = append(g.first, f)
	}
	g.row(f.Row)
	if g.cause {
		g.count += len(f.Also)
		for _, c := range f.Also {
			g.row(c.Row)
		}
		if len(f.Also) > 0 {
			g.first[len(g.first)-1].Also = nil
		}
	}
	return nil
}

func (g *faultGroup) row(row int) {
	if n := len(g.rows); n > 0 && row <= g.rows[n-1].to+1 {
		g.rows[n-1].to = max(g.rows[n-1].to, row)
	} else {
		g.rows = append(g.rows, rowRange{row, row})
	}
}

// flush shows everything in the order of the table; a fault told once for all
// stands where it was met first.
func (r *reporter) flush() {
	type shown struct {
		label.Finding
		more string
	}
	var all []shown
	for _, g := range r.order {
		if g.count > showSingly || g.cause && g.count > 1 {
			all = append(all, shown{g.first[0], fmt.Sprintf(" (%d records: %s)", g.count, rowList(g.rows))})
			continue
		}
		for _, f := range g.first {
			all = append(all, shown{f, ""})
		}
	}
	slices.SortStableFunc(all, func(a, b shown) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	for _, s := range all {
		head, rest := line(s.Finding)
		if head, rest = harmless(head), harmless(rest)+s.more; r.paint {
			head = "\x1b[" + colours[s.Severity] + "m" + head + "\x1b[0m"
		}
		fmt.Fprintln(r.w, head+rest)
	}
}

// The colours of severities on a terminal, beside the words: red, yellow, cyan.
var colours = map[label.Severity]string{label.Error: "31", label.Warning: "33", label.Note: "36"}

// line is a finding as one line, in two parts: where it is, with the severity
// of what does not stop the print, and what is wrong and what to do.
func line(f label.Finding) (head, rest string) {
	bare := f
	bare.Message, bare.Suggest = "", ""
	head = bare.String()
	rest = strings.TrimPrefix(f.String(), head)
	if n := len(f.Also); n > 0 {
		rows := make([]int, 0, n)
		for _, c := range f.Also {
			rows = append(rows, c.Row)
		}
		slices.Sort(rows)
		var spans []rowRange
		for _, row := range slices.Compact(rows) {
			if last := len(spans) - 1; last >= 0 && spans[last].to == row-1 {
				spans[last].to = row
			} else {
				spans = append(spans, rowRange{row, row})
			}
		}
		rest += fmt.Sprintf(" (see also %s)", rowList(spans))
	}
	if f.Severity != label.Error {
		place := f.Origin.String() + ": "
		head = place + f.Severity.String() + ": " + strings.TrimPrefix(head, place)
	}
	return head, rest
}

// harmless writes out characters by which a table could speak to the terminal;
// headings may hold any.
func harmless(s string) string {
	odd := func(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) }
	if strings.IndexFunc(s, odd) < 0 {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if odd(r) {
			b.WriteString(strings.Trim(strconv.QuoteRuneToASCII(r), "'"))
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// rowList names rows, the first dozen ranges of them.
func rowList(rows []rowRange) string {
	var b strings.Builder
	b.WriteString("row")
	if len(rows) > 1 || rows[0].to > rows[0].from {
		b.WriteString("s")
	}
	b.WriteString(" ")
	for i, r := range rows {
		if i == 12 {
			fmt.Fprintf(&b, " and %d further places", len(rows)-i)
			break
		}
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(strconv.Itoa(r.from))
		if r.to > r.from {
			b.WriteString("–" + strconv.Itoa(r.to))
		}
	}
	return b.String()
}

// finding is the JSON of a finding; its keys are kept stable.
type finding struct {
	File     string `json:"file"`
	Line     int    `json:"line"`
	Column   int    `json:"column"`
	Row      int    `json:"row"`
	Term     string `json:"term"`
	Value    string `json:"value"`
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	Message  string `json:"message"`
	Suggest  string `json:"suggest"`
	Also     []cell `json:"also"`
}

type cell struct {
	Row  int    `json:"row"`
	Term string `json:"term"`
}

// writeJSON writes one object a line.
func writeJSON(w io.Writer, f label.Finding) error {
	out := finding{
		File: f.File, Line: f.Line, Column: f.Column, Row: f.Row, Term: f.Term, Value: f.Value, Rule: f.Rule,
		Severity: f.Severity.String(), Message: f.Message, Suggest: f.Suggest, Also: []cell{},
	}
	for _, c := range f.Also {
		out.Also = append(out.Also, cell{c.Row, c.Term})
	}
	return encode(w, out)
}

func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

// summaryLine says how a check went.
func summaryLine(s job.Summary) string {
	if s.Errors+s.Warnings+s.Notes == 0 {
		return fmt.Sprintf("%s, nothing to complain of", plural(s.Chosen, "record"))
	}
	parts := []string{plural(s.Chosen, "record"), plural(s.Errors, "error")}
	if len(s.Bad) > 0 {
		parts[1] += fmt.Sprintf(" in %s", plural(len(s.Bad), "record"))
	}
	if s.Warnings > 0 {
		parts = append(parts, plural(s.Warnings, "warning"))
	}
	if s.Notes > 0 {
		parts = append(parts, plural(s.Notes, "note"))
	}
	return strings.Join(parts, ", ")
}

func plural(n int, word string) string {
	s := strconv.Itoa(n) + " " + word
	if n != 1 {
		s += "s"
	}
	return s
}
