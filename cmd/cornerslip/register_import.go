package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) registerImportCommand() *cobra.Command {
	var series, highest, clashes string
	c := &cobra.Command{
		Use:   "import old.csv",
		Short: "Take over the numbers of an old catalogue, and report clashes",
		Long: `import reads a table of numbers that are in use already and takes them over, with
whose they are. It reads the columns catalogNumber, recordedBy, recordNumber,
eventDate, scientificName, occurrenceID and disposition (what has become of the
number); others do not matter. Records without a number are passed over. Numbers
that the table leaves out, below its highest, become unknown and are never issued.

disposition is a state of the register or one of these words; an empty cell means
attached.
` + dispositionHelp() + `
Nothing that the register has is overwritten. An entry that contradicts it, or
another entry, is reported with its line and left out, and the others are taken
over; the command then ends with 1. --clashes writes those entries to a table with
the reason (why), to be mended and imported again.

A number that leaves out more than a thousand numbers before it is taken for a
slip, unless --highest says that there can be so high a number; then all numbers
must be of its series.`,
		Example: `  cornerslip register import old.csv --register herbarium.db
  cornerslip register import old.csv --highest VDOURA-0004299 --clashes clashes.csv --register herbarium.db`,
		Args: oneTable,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.registerImport(args[0], job.ImportRequest{Series: series, Highest: highest}, clashes)
		},
	}
	a.bookFlags(c)
	a.whyFlag(c)
	a.tableFlags(c)
	a.forceFlag(c)
	f := c.Flags()
	f.StringVar(&series, "series", "", "all numbers are of this series, by its `name` (default: found by the number)")
	f.StringVar(&highest, "highest", "", "the highest `number` there can be, in full or in figures")
	f.StringVar(&clashes, "clashes", "", "write what was not taken over to this `file`, as a table (.csv)")
	return c
}

// dispositionHelp lists the words for states.
func dispositionHelp() string {
	var b strings.Builder
	words := job.Dispositions()
	for _, s := range append([]job.RegisterState{"attached"}, job.MarkStates()...) {
		if len(words[s]) > 0 {
			fmt.Fprintf(&b, "  %-16s%s\n", s, strings.Join(words[s], ", "))
			delete(words, s)
		}
	}
	return b.String()
}

// clashesShown is how many clashes are shown where a file has them all.
const clashesShown = 20

func (a *app) registerImport(path string, q job.ImportRequest, clashFile string) error {
	at, err := a.at()
	if err != nil {
		return err
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
	if err := a.spared(clashFile); clashFile != "" && err != nil {
		return err
	}
	if _, err := os.Stat(clashFile); clashFile != "" && err == nil && !a.force {
		return fmt.Errorf("%s %w", clashFile, job.ErrExists) // before anything is taken over
	}
	return a.withBookOf(j, false, func(ctx context.Context, j *job.Job, r *job.Register) error {
		q.Register, q.At = r, at
		var rep job.ImportReport
		var all []job.ImportClash
		shown := 0
		rep, err := j.Import(ctx, t, q, func(c job.ImportClash) error {
			if shown++; clashFile == "" || shown <= clashesShown {
				a.line(c.Err.Error())
			}
			if clashFile != "" {
				all = append(all, c)
			}
			return nil
		})
		if err != nil && rep.New+rep.Same+rep.Clashes > 0 {
			err = fmt.Errorf("%w\n%s were taken over before; run the command again to take over the others", err, counted(rep.New, "number"))
		}
		if clashFile != "" && len(all) > 0 {
			err = errors.Join(err, a.write(clashFile, func(w io.Writer) error { return clashTable(w, all) }))
			if err == nil && shown > clashesShown {
				a.say("… and %s more; all are in %s", count(shown-clashesShown), clashFile)
			}
		}
		if err != nil {
			return err
		}
		a.imported(path, &rep)
		if rep.Clashes > 0 {
			return errSaid
		}
		return nil
	})
}

// imported says what was done.
func (a *app) imported(path string, rep *job.ImportReport) {
	a.say("took over %s from %s", counted(rep.New, "number"), path)
	if rep.Same > 0 {
		a.say("%s in the register already, with the same words", counted(rep.Same, "entry")+" "+wasWere(rep.Same))
	}
	if rep.Without > 0 {
		a.say("%s without a number %s passed over", counted(rep.Without, "record"), wasWere(rep.Without))
	}
	if rep.Undated > 0 {
		a.say("%s a date that cannot be read; the number is taken over without it", counted(rep.Undated, "record")+" "+hasHave(rep.Undated))
	}
	for _, s := range rep.Moved {
		a.say("series %s: %s", s.Name, comesNext(job.NextNumber(s)))
	}
	if rep.Clashes > 0 {
		a.say("%s not taken over, for the reasons above; the register is as it was for them", counted(rep.Clashes, "entry")+" "+wasWere(rep.Clashes))
	}
}

// clashTable writes entries that were not taken over, in the columns that an
// import reads.
func clashTable(w io.Writer, all []job.ImportClash) error {
	head := []string{"file", "line", "row", "catalogNumber", "recordedBy", "recordNumber", "eventDate", "scientificName", "occurrenceID", "disposition", "why"}
	return csvTo(w, head, func(row func(...string) error) error {
		for _, c := range all {
			s := c.Old.Specimen
			if err := row(s.Origin.File, strconv.Itoa(s.Origin.Line), strconv.Itoa(s.Origin.Row), s.CatalogNumber, s.Collector, s.Number, s.Date, s.Name, s.OccurrenceID, c.Disposition, c.Err.Error()); err != nil {
				return err
			}
		}
		return nil
	})
}
