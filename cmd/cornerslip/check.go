package main

import (
	"bufio"
	"encoding/json"
	"fmt"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// checkFlags say where the findings go.
type checkFlags struct {
	json, responses, rules bool
	csv, html              string // files; "-" is standard output
}

func (a *app) checkCommand() *cobra.Command {
	o := &checkFlags{}
	slips := &slipFlags{}
	c := &cobra.Command{
		Use:   "check trip.csv",
		Short: "Show everything that is wrong with a table",
		Long: `check reads the whole table and shows all it finds at once, each with its place:
file:line:column, the column's term, the cell, what is wrong and what to do.
An error stops the print of its record; a warning or a note does not.

--html writes a report to read, to print or to mail to the collector: one file
that needs no other. --csv writes the findings as a table for a spreadsheet,
with the fields of --json. There a cell that would begin with = + - or @ gets an
apostrophe before it (behind a semicolon, bar, tab or line end in the cell, too),
and so does one that begins with an apostrophe: a spreadsheet shows it as text
and runs nothing, and whoever takes one apostrophe off again has the text to the
letter. The table begins with a byte-order mark, without which spreadsheets lose
accents. Both may leave the house, so where the place of a record is withheld
from the labels of duplicates, it is withheld there as well, and the run says so.

The command ends with 0 if there is no error, with 1 if there is one, and with 2
if the table cannot be read.`,
		Example: `  cornerslip check trip.csv
  cornerslip check trip.csv --only "Almeida 214"
  cornerslip check trip.csv --identifications det.csv
  cornerslip check trip.csv --html report.html --csv findings.csv
  cornerslip check trip.csv --json > findings.jsonl
  cornerslip check --rules`,
		Args: func(c *cobra.Command, args []string) error {
			if o.rules && len(args) == 0 {
				return nil
			}
			return oneTable(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if o.rules {
				return a.listRules(o.json)
			}
			if o.responses {
				return a.responses(args[0])
			}
			if o.csv != "" || o.html != "" {
				return a.reportFindings(args[0], o, slips)
			}
			return a.check(args[0], o.json, slips)
		},
	}
	a.tableFlags(c)
	a.forceFlag(c)
	slips.addTable(c.Flags())
	f := c.Flags()
	f.BoolVar(&o.json, "json", false, "write one JSON object a line for each finding, or each rule")
	f.StringVar(&o.csv, "csv", "", "write the findings to this `file` as a table for spreadsheets; - is standard output")
	f.StringVar(&o.html, "html", "", "write a report to this `file`, for a browser or to be mailed; - is standard output")
	f.BoolVar(&o.responses, "responses", false, "write instead the responses of the TDWG data quality tests, one JSON object a line for each record and test")
	f.BoolVar(&o.rules, "rules", false, "list the rules: name, severity, what they look for, the source, and examples")
	c.MarkFlagsMutuallyExclusive("json", "responses")
	for _, to := range []string{"csv", "html"} {
		for _, other := range []string{"json", "responses", "rules"} {
			c.MarkFlagsMutuallyExclusive(to, other)
		}
	}
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
	r.paint = a.styled()
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
	a.uncertain(t)
	out := bufio.NewWriter(a.stdout)
	defer out.Flush()
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	return j.Responses(t, func(answer any) error { return e.Encode(answer) })
}

func noRecord(missing []string) error {
	return fmt.Errorf("the table has no record called %q; say a collector and number, a catalogue number, or \"row 14\"", missing[0])
}
