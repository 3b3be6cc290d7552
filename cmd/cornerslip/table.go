package main

import (
	"fmt"
	"strings"

	"cornerslip/cmd/internal/job"
)

// table opens the table named on the command line, and says how to let go of
// it.
func (a *app) table(path string) (*job.Table, func(), error) {
	only, err := job.Select(a.only)
	if err != nil {
		return nil, nil, err
	}
	comma, err := delimiter(a.comma)
	if err != nil {
		return nil, nil, err
	}
	a.reads(path, "the table")
	return job.OpenTable(path, a.stdin, only, job.TableOptions{Encoding: a.encoding, Comma: comma, Literal: a.literal, Worksheet: a.worksheet})
}

var delimiters = map[string]rune{
	"": 0, "comma": ',', ",": ',', "semicolon": ';', ";": ';', "tab": '\t', "\\t": '\t', "\t": '\t', "pipe": '|', "|": '|',
}

func delimiter(s string) (rune, error) {
	r, ok := delimiters[strings.ToLower(s)]
	if !ok {
		return 0, fmt.Errorf("--delimiter %q is not known; say comma, semicolon, tab or pipe", s)
	}
	return r, nil
}

// uncertain says, for commands that hold no check, that nobody named the
// encoding in which the table is read.
func (a *app) uncertain(t *job.Table) {
	if name := t.Found(); name != "" {
		name = strings.ToLower(name)
		a.say("%s is read as %s, in which it makes sense: say --encoding %s to be certain", t.Source().Name(), name, name)
	}
}
