package main

import (
	"regexp"
	"strings"
	"testing"

	"cornerslip/label"
)

// Colour only adds to a line: without its escapes it is the line of a pipe.
func TestReporterColours(t *testing.T) {
	at := label.Origin{File: "trip.csv", Line: 2, Column: 7, Row: 1, Term: "eventDate"}
	whole := label.Origin{File: "trip.csv"}
	findings := []label.Finding{
		{Origin: whole, Severity: label.Note, Rule: "table-encoding", Message: "read as UTF-16"},
		{Origin: at, Severity: label.Error, Rule: "a", Value: "2026-06-31", Message: "day 31 does not exist", Suggest: "2026-06-30"},
		{Origin: at, Severity: label.Warning, Rule: "b", Message: "no date is given", Also: []label.Cell{{Row: 3, Term: "eventDate"}}},
		{Origin: label.Origin{File: "trip.csv", Line: 3, Row: 2}, Severity: label.Note, Rule: "c", Message: "the row is empty"},
		{Origin: label.Origin{File: "trip.csv", Line: 4, Column: 1, Term: "x\x1b[2J\u202e"}, Severity: label.Error, Rule: "d", Value: "\x1b", Message: "has \x1b"},
	}
	show := func(paint bool) string {
		var b strings.Builder
		r := newReporter(&b, label.Note)
		r.paint = paint
		for _, f := range findings {
			r.add(f)
		}
		r.flush()
		return b.String()
	}
	want := `trip.csv: note: read as UTF-16
trip.csv:2:7: eventDate "2026-06-31": day 31 does not exist (did you mean "2026-06-30"?)
trip.csv:2:7: warning: eventDate (empty): no date is given (see also row 3)
trip.csv:3: note: the row is empty
trip.csv:4:1: x\x1b[2J\u202e "\x1b": has \x1b
`
	if got := show(false); got != want {
		t.Errorf("without colour:\n%s\nwant\n%s", got, want)
	}
	got := show(true)
	if plain := regexp.MustCompile("\x1b\\[\\d*m").ReplaceAllString(got, ""); plain != want {
		t.Errorf("with colour, taken off again:\n%s\nwant\n%s", plain, want)
	}
	for _, want := range []string{
		"\x1b[36mtrip.csv: note: \x1b[0mread as",
		"\x1b[31mtrip.csv:2:7: eventDate \"2026-06-31\": \x1b[0mday 31",
		"\x1b[33mtrip.csv:2:7: warning: eventDate (empty): \x1b[0mno date",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("lacks %q:\n%q", want, got)
		}
	}
}

// What is no terminal gets no colour, whatever the environment says.
func TestStyled(t *testing.T) {
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "xterm-256color")
	var b strings.Builder
	if (&app{stdout: &b}).styled() {
		t.Error("colour for a buffer")
	}
	for _, c := range []struct {
		terminal      bool
		noColor, term string
		want          bool
	}{
		{true, "", "xterm", true}, {true, "1", "xterm", false}, {true, "", "dumb", false}, {false, "", "xterm", false}, {true, "", "", true},
	} {
		if got := showsStyles(c.terminal, func(k string) string { return map[string]string{"NO_COLOR": c.noColor, "TERM": c.term}[k] }); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
