package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// issueFlags are those of register issue.
type issueFlags struct {
	count       int
	series, out string
	exceptBad   bool
	try         bool
	identifiers bool
	asJSON      bool
	csv         string
}

func (a *app) registerIssueCommand() *cobra.Command {
	f := &issueFlags{}
	c := &cobra.Command{
		Use:   "issue [trip.csv]",
		Short: "Give the specimens of a table their numbers, or issue a range",
		Long: `issue trip.csv -o trip.numbered.csv gives every specimen of the house that has no
catalogue number the next one, and writes a copy of the table with the numbers
filled in; everything else stays to the byte. A table without a catalogNumber
column gets one at the end. The numbers are safe in the register before any is
written, and the same table gets the same numbers again however often it is run.
Without -o nothing is issued: it only says what would be.

A specimen is known again by its catalogue number, else by its occurrenceID, else
by collector, number and date. Where nothing tells a record from others, such as
one without a collector's number, an identifier is needed: --write-identifiers
writes a copy of the table with a random occurrenceID for each specimen that has
neither one nor a number, and issues nothing; run issue on that copy then.

Each record is one specimen and gets one number, with all its sheets and packets.
Records are one specimen together, and share a number, where the table says so:
they have the same occurrenceID or materialEntityID, or their preparations say
which part of it each holds: "sheet 1 of 2" in one record, "sheet 2 of 2" in the
other.

Left alone are records whose institutionCode or ownerInstitutionCode is another
house's, and catalogue numbers of no series of the register. Errors that make it
doubtful which specimen a record is of stop the run; other errors, such as a wrong
latitude, do not: they stop the print.

issue --count 200 gives out the next 200 numbers at once and writes the range, for
stickers that are printed before the sheets are known.

--json writes an object a line for each record: row, line, key ("I. Almeida 214"),
number ("" if none), status (issued; known: the register had its number; numbered:
the table had it; foreign; other house; none), state (of the number in the
register), message (why it has none, or how register and record differ). In a run
that issues nothing, "issued" is what would be. With --count it is one object:
series, first, last, count.`,
		Example: `  cornerslip register issue trip.csv --register herbarium.db  # what would be issued
  cornerslip register issue trip.csv -o trip.numbered.csv --register herbarium.db
  cornerslip register issue trip.csv --write-identifiers -o trip.ids.csv
  cornerslip register issue --count 200 --series VDOURA --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error { return f.check(args) },
		RunE: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) == 0:
				return a.registerIssueCount(f)
			case f.identifiers:
				return a.registerIdentifiers(args[0], f)
			}
			return a.registerIssue(args[0], f)
		},
	}
	a.bookFlags(c)
	a.whyFlag(c)
	a.tableFlags(c)
	a.forceFlag(c)
	l := c.Flags()
	l.Lookup("only").Hidden = true // a record may have its like further down: it is refused with the reason
	l.IntVar(&f.count, "count", 0, "issue so many numbers, a `count`, without a table")
	l.StringVar(&f.series, "series", "", "the series of the numbers, by its `name` (default: the house's, or the only one)")
	l.StringVarP(&f.out, "output", "o", "", "the `file` to write the table to, with its numbers")
	l.BoolVar(&f.exceptBad, "except-bad", false, "issue the good records' numbers although others have errors")
	l.BoolVar(&f.try, "dry-run", false, "only say what would be issued")
	l.BoolVar(&f.identifiers, "write-identifiers", false, "write identifiers into the table, and issue nothing")
	l.BoolVar(&f.asJSON, "json", false, "write one JSON object a line for each record")
	l.StringVar(&f.csv, "csv", "", "write what became of each record to this `file`, as a table (- for here)")
	return c
}

func (f *issueFlags) check(args []string) error {
	if err := oneFormat(f.asJSON, f.csv); err != nil {
		return err
	}
	switch {
	case len(args) > 1:
		return fmt.Errorf("one table at a time, but there are %d", len(args))
	case len(args) == 0 && f.count == 0:
		return errors.New("for which table? as in: cornerslip register issue trip.csv -o trip.numbered.csv; or say how many numbers: --count 200")
	case len(args) == 0 && f.count < 0:
		return fmt.Errorf("--count %d: say how many numbers are wanted", f.count)
	case len(args) == 0 && (f.out != "" || f.identifiers || f.csv != ""):
		return errors.New("-o, --csv and --write-identifiers go with a table; --count alone writes the range of numbers here")
	case len(args) == 1 && f.count != 0:
		return errors.New("--count issues numbers without a table; a table gets as many as it needs")
	case f.identifiers && f.out == "":
		return errors.New("which file shall the table with its identifiers be written to? as in -o trip.ids.csv")
	case f.identifiers && (f.asJSON || f.csv != "" || f.try):
		return errors.New("--write-identifiers only writes the table; leave --json, --csv and --dry-run out")
	}
	return nil
}

func (a *app) registerIssueCount(f *issueFlags) error {
	at, err := a.at()
	if err != nil {
		return err
	}
	return a.withBook(f.try, func(ctx context.Context, j *job.Job, r *job.Register) error {
		name, err := j.SeriesName(ctx, r, f.series)
		if err != nil {
			return err
		}
		if f.try {
			all, err := r.Series(ctx)
			for _, s := range all {
				if s.Name == name {
					a.say("%s of %s would be issued; %s", counted(f.count, "number"), name, comesNext(job.NextNumber(s)))
				}
			}
			return err
		}
		got, err := r.Issue(ctx, at, name, f.count)
		if err != nil {
			return err
		}
		if f.asJSON {
			err = encode(a.stdout, rangeJSON{got.Series, got.Pattern.Format(got.First), got.Pattern.Format(got.Last), got.Len()})
		} else {
			_, err = fmt.Fprintln(a.stdout, got)
		}
		a.say("issued %s of %s", counted(got.Len(), "number"), got.Series)
		return err
	})
}

// rangeJSON is the JSON of issued numbers; its keys are kept stable.
type rangeJSON struct {
	Series string `json:"series"`
	First  string `json:"first"`
	Last   string `json:"last"`
	Count  int    `json:"count"`
}

func (a *app) registerIdentifiers(path string, f *issueFlags) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	t, release, err := a.table(path)
	if err != nil {
		return err
	}
	defer release()
	found := newReporter(a.stderr, label.Error)
	rep, err := j.WriteIdentifiers(t, job.IdentifierRequest{}, found.add, func(write func(io.Writer) error) error {
		return a.write(f.out, write)
	})
	found.flush()
	if err != nil {
		return err
	}
	a.say("wrote %s: an occurrenceID for %s", f.out, counted(rep.Written, "record"))
	if rep.Had > 0 {
		a.say("%s had an identifier or a number already", counted(rep.Had, "record"))
	}
	if rep.Others > 0 {
		a.say("%s of other houses %s left alone", counted(rep.Others, "record"), wasWere(rep.Others))
	}
	if rep.Bad > 0 {
		a.say("%s with errors got none; mend them and run it again on %s", counted(rep.Bad, "record"), f.out)
	}
	a.say("no number is issued yet; next: cornerslip register issue %s -o trip.numbered.csv", f.out)
	return nil
}

func wasWere(n int) string {
	if n == 1 {
		return "was"
	}
	return "were"
}

func (a *app) registerIssue(path string, f *issueFlags) error {
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
	if f.out != "" {
		if err := a.spared(f.out); err != nil {
			return err // before any number is issued
		}
	}
	try := f.try || f.out == ""
	return a.withBookOf(j, try, func(ctx context.Context, j *job.Job, r *job.Register) error {
		q := job.IssueRequest{Register: r, At: at, Series: f.series, ExceptBad: f.exceptBad, Try: try}
		found := newReporter(a.stderr, label.Warning)
		rep, err := j.Issue(ctx, t, q, found.add, func(write func(io.Writer) error) error {
			return a.write(f.out, write)
		})
		found.flush()
		if err != nil && !errors.Is(err, job.ErrNotIssued) {
			return err
		}
		for _, n := range rep.Numbers {
			switch {
			case errors.Is(n.Err, job.ErrData): // was said
			case n.Err != nil:
				a.line(n.Err.Error())
			case n.Differs != "":
				a.line(fmt.Sprintf("%s: warning: %s: %s", n.Origin, n.Key, n.Differs))
			}
		}
		if listErr := a.issueList(f, &rep); listErr != nil {
			err = errors.Join(err, listErr)
		}
		a.issued(path, f, &rep, try, err != nil)
		if err != nil {
			return errSaid
		}
		return nil
	})
}

// line shows a line that begins with its own place.
func (a *app) line(text string) { fmt.Fprintln(a.stderr, text) }

// issued says what was done, and what is to be done next.
func (a *app) issued(path string, f *issueFlags, rep *job.IssueReport, try, failed bool) {
	fresh := 0
	if rep.Issued.Last > 0 {
		fresh = rep.Issued.Len()
	}
	none := rep.Count(job.NumberNone)
	left := func() {
		if n := rep.Count(job.NumberThere); n > 0 {
			a.say("%s in the table already", counted(n, "record")+" "+hasHave(n)+" a number")
		}
		if n := rep.Count(job.NumberKnown); n > 0 && !failed {
			a.say("%s had a number in the register and %s it again", counted(n, "record"), getsGet(n))
		}
		if n := rep.Count(job.NumberForeign); n > 0 {
			a.say("%s with another house's number %s left alone", counted(n, "record"), wasWere(n))
		}
		if n := rep.Count(job.OtherHouse); n > 0 {
			a.say("%s of other houses %s left alone", counted(n, "record"), wasWere(n))
		}
		if rep.Others > 0 {
			a.say("%s %s errors of other kinds, which stop the print and not the numbers; \"cornerslip check %s\" shows them", counted(rep.Others, "record"), hasHave(rep.Others), path)
		}
	}
	switch {
	case failed:
		a.say("%s no number, and none was issued; mend the table, or say --except-bad to issue the others'", canHave(none))
		if rep.Nameless() {
			a.say("identifiers can be written into the table first: cornerslip register issue %s --write-identifiers -o FILE", path)
		}
		return
	case fresh == 0 && try:
		a.say("no record of %s needs a new number", path)
	case try:
		a.say("%s would be issued: %s", counted(fresh, "number"), rep.Issued)
	case fresh == 0:
		a.say("no new number was needed; %s", comesNext(rep.Next))
	default:
		a.say("issued %s: %s; %s", counted(fresh, "number"), rep.Issued, comesNext(rep.Next))
	}
	left()
	if none > 0 {
		a.say("%s got none, for the reasons above", counted(none, "record"))
	}
	switch {
	case try && f.out == "":
		a.say("nothing was issued; -o names the file to write the table with its numbers to")
	case try:
		a.say("nothing was issued, for --dry-run was said")
	default:
		a.say("wrote %s: catalogNumber filled in %s", f.out, counted(rep.Filled, "record"))
	}
}

func canHave(none int) string {
	if none == 0 { // the fault is in the heading row
		return "the table can have"
	}
	return counted(none, "record") + " can have"
}

func hasHave(n int) string {
	if n == 1 {
		return "has"
	}
	return "have"
}

func getsGet(n int) string {
	if n == 1 {
		return "gets"
	}
	return "get"
}

// numberedJSON is the JSON of what became of a record; its keys are kept stable.
type numberedJSON struct {
	Row     int               `json:"row"`
	Line    int               `json:"line"`
	Key     string            `json:"key"`
	Number  string            `json:"number"`
	Status  job.NumberStatus  `json:"status"`
	State   job.RegisterState `json:"state"`
	Message string            `json:"message"`
}

func (a *app) issueList(f *issueFlags, rep *job.IssueReport) error {
	if !f.asJSON && f.csv == "" {
		return nil
	}
	return a.to(f.csv, func(w io.Writer) error {
		if f.asJSON {
			for _, n := range rep.Numbers {
				if err := encode(w, numberedJSON{n.Row, n.Line, n.Key, n.Number, n.Status, n.State, numberedMessage(&n)}); err != nil {
					return err
				}
			}
			return nil
		}
		return csvTo(w, []string{"row", "line", "key", "catalogNumber", "status", "state", "message"}, func(row func(...string) error) error {
			for _, n := range rep.Numbers {
				if err := row(strconv.Itoa(n.Row), strconv.Itoa(n.Line), n.Key, n.Number, string(n.Status), string(n.State), numberedMessage(&n)); err != nil {
					return err
				}
			}
			return nil
		})
	})
}

func numberedMessage(n *job.Numbered) string {
	if n.Err != nil {
		return n.Err.Error()
	}
	return n.Differs
}
