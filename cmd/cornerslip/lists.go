package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

func (a *app) listCommand() *cobra.Command {
	var out string
	var q job.ListRequest
	c := &cobra.Command{
		Use:   "list trip.csv",
		Short: "List a run for the binder, or gifts for their parcels",
		Long: `list writes the records of a table in order, for the binder: who collected it and
under which number, the catalogue number, the name, the size of the label, how
many copies, whether there is a packet, and which herbaria get a duplicate; with
totals at the end.

With --gifts it lists what goes to each herbarium, a list for each parcel: number,
name, place, sheets, restrictions and permits. A place that is withheld from the
labels of duplicates is withheld here too. --to lists one herbarium alone.

Without -o the list is shown here. A file that ends in .pdf is set in pages, one
in .csv is a table for other programs, any other is plain text.`,
		Example: `  cornerslip list trip.csv
  cornerslip list trip.csv --house house.toml -o run.pdf
  cornerslip list trip.csv --house house.toml --gifts -o gifts.pdf
  cornerslip list trip.csv --to PINHEL -o pinhel.pdf`,
		Args: oneTable,
		RunE: func(_ *cobra.Command, args []string) error { return a.list(args[0], out, q) },
	}
	a.tableFlags(c)
	a.forceFlag(c)
	f := c.Flags()
	f.StringVarP(&out, "output", "o", "", "the `file` to write: .pdf, .csv, or text (default: shown here)")
	f.BoolVar(&q.Gifts, "gifts", false, "list the duplicates for each herbarium instead")
	f.StringVar(&q.To, "to", "", "list the duplicates for this `herbarium` alone, by its code")
	f.StringVar(&q.Paper, "paper", "", "`size` of the pages: A4, A3, Letter, or width x height in mm (default: the house's, else A4)")
	f.BoolVar(&q.ExceptBad, "except-bad", false, "list the good records although others have errors")
	return c
}

func (a *app) list(path, out string, q job.ListRequest) error {
	if out == "-" {
		out = ""
	}
	switch strings.ToLower(filepath.Ext(out)) {
	case ".pdf":
		q.Format = "pdf"
	case ".csv":
		q.Format = "csv"
	default:
		q.Format = "text"
	}
	j, err := a.job()
	if err != nil {
		return err
	}
	t, release, err := a.table(path)
	if err != nil {
		return err
	}
	defer release()
	bar := a.progress()
	q.Progress = bar.step
	r := newReporter(a.stderr, label.Warning)
	s, rep, err := j.List(t, q, r.add, func(write func(io.Writer) error) error {
		if out == "" {
			return write(a.stdout)
		}
		return a.write(out, write)
	})
	bar.done()
	r.flush()
	switch {
	case errors.Is(err, job.ErrNone):
		if q.Gifts || q.To != "" {
			a.say("no record names a herbarium under duplicatesTo; nothing was written")
		} else {
			a.say("the table has no record to list; nothing was written")
		}
		return nil
	case errors.Is(err, job.ErrData):
		a.say("%s; nothing was written", summaryLine(s))
		return errSaid
	case err != nil:
		return err
	}
	for _, b := range s.Bad {
		a.say("not listed: %s:%d: row %d, %s", t.Source().Name(), b.Line, b.Row, b.Key)
	}
	if out != "" {
		a.listed(out, &q, &rep)
	}
	return nil
}

// listed says what was written.
func (a *app) listed(out string, q *job.ListRequest, rep *job.ListReport) {
	what := plural(rep.Records, "record")
	if q.Gifts || q.To != "" {
		what = fmt.Sprintf("%s, %s", plural(rep.Lists, "gift list"), plural(rep.Records, "gathering"))
	}
	if rep.Pages > 0 {
		what += ", " + plural(rep.Pages, "page")
	}
	a.say("wrote %s: %s", out, what)
	if rep.Withheld > 0 {
		a.say("exact place withheld from %s", plural(rep.Withheld, "line"))
	}
	for _, w := range rep.Warnings {
		a.say("warning: %s", w)
	}
}
