package main

import (
	"bufio"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"cornerslip/cmd/internal/job"
)

func (a *app) registerCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "register",
		Short: "The book of catalogue numbers: issue, look up, take over, keep",
		Long: `The register is the book of your catalogue numbers and of the labels you have
printed. A number that it gave out it never gives out again. It is one file, or a
database that several workstations share (--register postgres://…); name it with
--register, or once for all in the house file: [register] file = "herbarium.db".

A number is in one of these states: issued (given out, nothing printed yet),
printed, attached (on its sheet), void (spoiled, never issued again),
deaccessioned, transferred, lost, held elsewhere, or unknown (passed over by this
register and never issued by it). Every change is kept in a history with the day,
the name of who made it (--by) and the reason (--why).

The usual way:
  cornerslip register open herbarium.db --series VDOURA-0000000
  cornerslip register import old.csv --register herbarium.db
  cornerslip register issue trip.csv -o trip.numbered.csv --register herbarium.db
  cornerslip attach trip.numbered.csv --register herbarium.db`,
		Example: `  cornerslip register open herbarium.db --series VDOURA-0000000
  cornerslip register issue trip.csv -o trip.numbered.csv --register herbarium.db
  cornerslip register find "Almeida 214" --register herbarium.db
  cornerslip register void VDOURA-0000101 --why "torn in the printer" --register herbarium.db`,
		Args: anyCommand,
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.AddCommand(
		a.registerOpenCommand(), a.registerSeriesCommand(), a.registerIssueCommand(), a.registerImportCommand(),
		a.registerFindCommand(), a.registerListCommand(), a.registerHistoryCommand(),
		a.registerVoidCommand(), a.registerMarkCommand(),
		a.registerCheckCommand(), a.registerBackupCommand(), a.registerUpCommand(),
	)
	return c
}

// withBook opens the register for a command and closes it after; look opens it
// for looking only.
func (a *app) withBook(look bool, f func(ctx context.Context, j *job.Job, r *job.Register) error) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	return a.withBookOf(j, look, f)
}

func (a *app) withBookOf(j *job.Job, look bool, f func(ctx context.Context, j *job.Job, r *job.Register) error) error {
	ctx := context.Background()
	r, err := a.openBook(ctx, j, job.RegisterOptions{ReadOnly: look})
	if err != nil {
		return err
	}
	defer r.Close()
	return f(ctx, j, r)
}

// comesNext says in words what comes next in a series.
func comesNext(next string) string {
	if next == "" {
		return "its last number is issued; open another series"
	}
	return "the next number is " + next
}

// day is a time as lists show it; the register keeps times in UTC.
func day(t time.Time) string { return t.UTC().Format(time.DateOnly) }

// to writes a list to standard output, or to the file that is named.
func (a *app) to(path string, write func(io.Writer) error) error {
	if path == "" || path == "-" {
		w := bufio.NewWriter(a.stdout)
		if err := write(w); err != nil {
			w.Flush()
			return err
		}
		return w.Flush()
	}
	return a.write(path, write)
}

// csvTo writes rows as a table for other programs.
func csvTo(w io.Writer, head []string, rows func(func(...string) error) error) error {
	out := csv.NewWriter(w)
	if err := out.Write(head); err != nil {
		return err
	}
	if err := rows(func(cells ...string) error { return out.Write(cells) }); err != nil {
		return err
	}
	out.Flush()
	return out.Error()
}

// oneFormat refuses both at once.
func oneFormat(asJSON bool, csvFile string) error {
	if asJSON && csvFile != "" {
		return fmt.Errorf("--json and --csv at once; choose one")
	}
	return nil
}

// sure asks before something that cannot be undone, on a terminal only: a
// script has said what it wants.
func (a *app) sure(question string) bool {
	if !a.asks && !isTerminal(a.stdin) {
		return true
	}
	switch strings.ToLower(a.answer(question + " [y/N]")) {
	case "y", "yes":
		return true
	}
	a.say("left as it was")
	return false
}

func isTerminal(r io.Reader) bool {
	f, ok := r.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// count writes a number with a sign between its thousands.
func count(n int) string {
	s := fmt.Sprint(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// counted is plural for numbers that may be large.
func counted(n int, word string) string {
	switch {
	case n == 1:
	case strings.HasSuffix(word, "sh"):
		word += "es"
	case strings.HasSuffix(word, "try"):
		word = strings.TrimSuffix(word, "y") + "ies"
	default:
		word += "s"
	}
	return count(n) + " " + word
}
