package main

import (
	"bufio"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) mendCommand() *cobra.Command {
	var out string
	var toUTF8 bool
	c := &cobra.Command{
		Use:   "mend trip.csv",
		Short: "Write a copy of a table with its plain faults repaired",
		Long: `mend makes only the repairs that have one reading: spaces before and after a
cell's text, spaces typed twice in words, names and people, and values that a
standard writes in one way (a country's code, a date, a month, a type status).
Each repair is listed. Everything else stays to the byte: order, quotes, columns,
line ends. Verbatim columns and permits keep their spaces, for they repeat what
is written elsewhere. No empty cell is filled, no coordinate is moved, and no
datum or uncertainty is made up. Mending a mended table changes nothing more.

Dates in figures stay where some of their column can be read two ways (3/4/2026),
for the others tell how; --dates "day first" says it, and mends them all.

Without -o the repairs are only listed.`,
		Example: `  cornerslip mend trip.csv  # what would be repaired
  cornerslip mend trip.csv -o mended.csv
  cornerslip mend trip.csv --dates "day first" -o mended.csv
  cornerslip mend old.csv --encoding windows-1252 --to-utf8 -o new.csv`,
		Args: oneTable,
		RunE: func(_ *cobra.Command, args []string) error { return a.mend(args[0], out, toUTF8) },
	}
	a.tableFlags(c)
	a.forceFlag(c)
	_ = c.Flags().MarkHidden("only") // refused with a reason
	c.Flags().StringVarP(&out, "output", "o", "", "the `file` to write; it must be another than the table")
	c.Flags().BoolVar(&toUTF8, "to-utf8", false, "write the copy in UTF-8, whatever the table is in")
	return c
}

func (a *app) mend(path, out string, toUTF8 bool) error {
	if len(a.only) > 0 {
		return fmt.Errorf("mend writes the whole table; leave --only out")
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
	a.uncertain(t)
	w := bufio.NewWriter(a.stdout)
	defer w.Flush()
	n := 0
	m, err := j.Repairs(t, func(r job.Repair) error {
		n++
		_, err := fmt.Fprintln(w, r)
		return err
	})
	if err != nil {
		return err
	}
	w.Flush()
	a.left(m)
	switch {
	case out == "" && n == 0:
		a.say("nothing to repair in %s", path)
	case out == "":
		a.say("%s could be made; -o names the file to write them to", plural(n, "repair"))
	default:
		err := a.write(out, func(w io.Writer) error { return j.Mend(w, t, m.Edits, toUTF8) })
		if err != nil {
			return err
		}
		a.say("wrote %s: %s", out, plural(n, "repair"))
	}
	return nil
}

// left says what was not mended, and why.
func (a *app) left(m job.Mending) {
	if m.Figures > 0 {
		a.say("left as it was: %s in figures, for others of the column can be read two ways: say --dates \"day first\" or --dates \"month first\" to mend them all", plural(m.Figures, "date"))
	}
	if m.Uncertain > 0 {
		a.say("left as it was: %s with accents or other letters, until the encoding is named", plural(m.Uncertain, "row"))
	}
	if m.Damaged > 0 {
		a.say("left as it was: %s with damaged letters: \"cornerslip check\" tells which", plural(m.Damaged, "cell"))
	}
	if m.Astray > 0 {
		a.say("left as it was: %s with faults of reading: \"cornerslip check\" tells which", plural(m.Astray, "row"))
	}
}
