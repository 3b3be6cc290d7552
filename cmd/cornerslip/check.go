package main

import (
	"bufio"
	"encoding/json"
	"fmt"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

func (a *app) checkCommand() *cobra.Command {
	var asJSON, responses, rules bool
	slips := &slipFlags{}
	c := &cobra.Command{
		Use:   "check trip.csv",
		Short: "Show everything that is wrong with a table",
		Long: `check reads the whole table and shows all it finds at once, each with its place:
file:line:column, the column's term, the cell, what is wrong and what to do.
An error stops the print of its record; a warning or a note does not.

The command ends with 0 if there is no error, with 1 if there is one, and with 2
if the table cannot be read.`,
		Example: `  cornerslip check trip.csv
  cornerslip check trip.csv --only "Almeida 214"
  cornerslip check trip.csv --identifications det.csv
  cornerslip check trip.csv --json > findings.jsonl
  cornerslip check --rules`,
		Args: func(c *cobra.Command, args []string) error {
			if rules && len(args) == 0 {
				return nil
			}
			return oneTable(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if rules {
				return a.listRules()
			}
			if responses {
				return a.responses(args[0])
			}
			return a.check(args[0], asJSON, slips)
		},
	}
	a.tableFlags(c)
	slips.addTable(c.Flags())
	c.Flags().BoolVar(&asJSON, "json", false, "write one JSON object a line for each finding")
	c.Flags().BoolVar(&responses, "responses", false, "write instead the responses of the TDWG data quality tests, one JSON object a line for each record and test")
	c.Flags().BoolVar(&rules, "rules", false, "list the rules: name, severity, what they look for, and the source")
	return c
}

func (a *app) check(path string, asJSON bool, slips *slipFlags) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	t, release, err := a.table(path)
	if err != nil {
		return err
	}
	defer release()
	out := bufio.NewWriter(a.stdout)
	defer out.Flush()
	r := newReporter(out, label.Note)
	say := r.add
	if asJSON {
		say = func(f label.Finding) error { return writeJSON(out, f) }
	}
	var q job.Request
	letGo, err := a.slipRequest(&q, slips)
	if err != nil {
		return err
	}
	defer letGo()
	s, err := j.Check(t, say)
	if err != nil {
		return err
	}
	ids, err := j.CheckIdentifications(t, q, say)
	if err != nil {
		return err
	}
	s.Errors, s.Warnings, s.Notes = s.Errors+ids.Errors, s.Warnings+ids.Warnings, s.Notes+ids.Notes
	if missing := t.Only.Missing(); len(missing) > 0 {
		return noRecord(missing)
	}
	if !asJSON {
		r.flush()
		fmt.Fprintln(out, summaryLine(s))
	}
	if s.Errors > 0 {
		return errSaid
	}
	return nil
}

// responses answers every test of the standard for every record.
func (a *app) responses(path string) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	t, release, err := a.table(path)
	if err != nil {
		return err
	}
	defer release()
	out := bufio.NewWriter(a.stdout)
	defer out.Flush()
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	return j.Responses(t, func(answer any) error { return e.Encode(answer) })
}

func noRecord(missing []string) error {
	return fmt.Errorf("the table has no record called %q; say a collector and number, a catalogue number, or \"row 14\"", missing[0])
}

func (a *app) listRules() error {
	j, err := a.job()
	if err != nil {
		return err
	}
	rules, err := j.Rules()
	if err != nil {
		return err
	}
	for _, r := range rules {
		severity := "off"
		if r.Severity != 0 {
			severity = r.Severity.String()
		}
		fmt.Fprintf(a.stdout, "%s (%s)\n    %s\n    source: %s\n", r.Name, severity, r.Doc, r.Source)
	}
	return nil
}
