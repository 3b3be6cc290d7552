package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) registerOpenCommand() *cobra.Command {
	var series, from string
	var network, upgrade bool
	c := &cobra.Command{
		Use:   "open [herbarium.db]",
		Short: "Make a new register with its first series of numbers",
		Long: `open makes a new register: a file, or the tables in a PostgreSQL database. There
must be none yet. Its first series is written as --series says, else as the
[numbers] pattern of the house file: the code and a row of zeros for the figures,
and, if numbers have a check character, a space and its name ("VDOURA-0000000 MOD
37,36"). --from says which number is issued first, where others are in use
already; those below are unknown until they are imported.

A register that an older version of this program made is brought up to date with
--upgrade; a copy as it was is kept beside it, for older programs cannot open it
afterwards.`,
		Example: `  cornerslip register open herbarium.db --series VDOURA-0000000
  cornerslip register open herbarium.db --house house.toml --from 4300
  cornerslip register open postgres://registrar@server/herbarium --series VDOURA-0000000
  cornerslip register open herbarium.db --upgrade`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return fmt.Errorf("one register at a time, but there are %d: %s", len(args), strings.Join(args, ", "))
			}
			if len(args) == 1 && a.book != "" {
				return fmt.Errorf("two registers are named, %s and --register %s; name one", args[0], a.book)
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 1 {
				a.book = args[0]
			}
			o := job.RegisterOptions{Network: network}
			if upgrade {
				if series != "" || from != "" {
					return fmt.Errorf("--upgrade changes a register that is there already; leave --series and --from out")
				}
				return a.registerUpgrade(o)
			}
			return a.registerOpen(o, series, from)
		},
	}
	a.bookFlags(c)
	f := c.Flags()
	f.StringVar(&series, "series", "", "how numbers are written, such as VDOURA-0000000 (default: the house's `pattern`)")
	f.StringVar(&from, "from", "", "the first `number` to be issued, in full or in figures (default 1)")
	f.BoolVar(&network, "network", false, "the file lies on a drive that several computers share")
	f.BoolVar(&upgrade, "upgrade", false, "bring a register of an older version up to date")
	return c
}

func (a *app) registerOpen(o job.RegisterOptions, series, from string) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	at, err := a.at()
	if err != nil {
		return err
	}
	pattern, err := j.NumberPattern(series)
	if err != nil {
		return err
	}
	r, s, err := j.OpenNew(context.Background(), a.book, at, o, pattern, from)
	if err != nil {
		return err
	}
	defer r.Close()
	a.say("made the register %s with the series %s; %s", r.Address(), s.Pattern, comesNext(job.NextNumber(s)))
	return nil
}

func (a *app) registerUpgrade(o job.RegisterOptions) error {
	j, err := a.job()
	if err != nil {
		return err
	}
	at, err := a.at()
	if err != nil {
		return err
	}
	version, done, err := j.Upgrade(context.Background(), a.book, at, o)
	if err != nil {
		return job.RegisterAdvice(err)
	}
	if !done {
		a.say("the register is of version %d, which is this program's; nothing to do", version)
		return nil
	}
	a.say("the register is of version %d now; the copy of a file as it was lies beside it, with its version in the name", version)
	return nil
}

func (a *app) registerSeriesCommand() *cobra.Command {
	var from string
	var asJSON bool
	c := &cobra.Command{
		Use:   "series [VDOURA-0000000]",
		Short: "List the series of numbers, or add one",
		Long: `series lists the series of the register: how their numbers are written, the
highest that is known, the next to be issued, and how many are in which state.

With a pattern it adds a series, written as "register open --help" says. Numbers
of two series must not look alike.

--json writes an object a line for each series: name, pattern, highest ("" if
there is none), next ("" if none is left), numbers (an object of states and how
many numbers are in each).`,
		Example: `  cornerslip register series --register herbarium.db
  cornerslip register series VALGAE-000000 --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return fmt.Errorf("one series at a time, but there are %d: %s", len(args), strings.Join(args, ", "))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				return a.registerAddSeries(args[0], from)
			}
			if from != "" {
				return fmt.Errorf("--from is for a new series; say how its numbers are written, as in: cornerslip register series VALGAE-000000 --from %s", from)
			}
			return a.registerSeries(asJSON)
		},
	}
	a.bookFlags(c)
	c.Flags().StringVar(&from, "from", "", "the first `number` of a new series to be issued, in full or in figures (default 1)")
	c.Flags().BoolVar(&asJSON, "json", false, "write one JSON object a line for each series")
	return c
}

func (a *app) registerAddSeries(notation, from string) error {
	at, err := a.at()
	if err != nil {
		return err
	}
	return a.withBook(false, func(ctx context.Context, j *job.Job, r *job.Register) error {
		pattern, err := j.NumberPattern(notation)
		if err != nil {
			return err
		}
		s, err := job.AddSeries(ctx, r, at, pattern, from)
		if err != nil {
			return err
		}
		a.say("added the series %s to %s; %s", s.Pattern, r.Address(), comesNext(job.NextNumber(s)))
		return nil
	})
}

// seriesJSON is the JSON of a series; its keys are kept stable.
type seriesJSON struct {
	Name    string                    `json:"name"`
	Pattern string                    `json:"pattern"`
	Highest string                    `json:"highest"`
	Next    string                    `json:"next"`
	Numbers map[job.RegisterState]int `json:"numbers"`
}

func (a *app) registerSeries(asJSON bool) error {
	return a.withBook(true, func(ctx context.Context, _ *job.Job, r *job.Register) error {
		all, err := job.Overview(ctx, r)
		if err != nil {
			return err
		}
		if len(all) == 0 && !asJSON {
			a.say("the register %s has no series yet; add one, as in: cornerslip register series VDOURA-0000000", r.Address())
		}
		for _, s := range all {
			highest := ""
			if s.Highest > 0 {
				highest = s.Pattern.Format(s.Highest)
			}
			if asJSON {
				if err := encode(a.stdout, seriesJSON{s.Name, s.Pattern.String(), highest, s.Next, s.Counts}); err != nil {
					return err
				}
				continue
			}
			fmt.Fprintf(a.stdout, "%s\n    written %s", s.Name, s.Pattern)
			if highest != "" {
				fmt.Fprintf(a.stdout, "; the highest is %s", highest)
			}
			fmt.Fprintf(a.stdout, "; %s\n    %s\n", comesNext(s.Next), stateCounts(s.Counts))
		}
		return nil
	})
}

// stateCounts says how many numbers are in which state, the most first.
func stateCounts(counts map[job.RegisterState]int) string {
	var states []job.RegisterState
	for s := range counts {
		states = append(states, s)
	}
	slices.SortFunc(states, func(x, y job.RegisterState) int {
		if d := counts[y] - counts[x]; d != 0 {
			return d
		}
		return strings.Compare(string(x), string(y))
	})
	if len(states) == 0 {
		return "no number is issued yet"
	}
	parts := make([]string, len(states))
	for i, s := range states {
		parts[i] = count(counts[s]) + " " + string(s)
	}
	return strings.Join(parts, ", ")
}

func (a *app) registerCheckCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "check",
		Short: "Look through the register for damage and contradictions",
		Long: `check reads the whole register: the file itself, that every number has a state,
that the history tells how it came about and has no gap, that every printed label
can be printed again. It changes nothing. The command ends with 1 if something is
wrong; then keep the file as it is, and compare it with the last backup.`,
		Example: `  cornerslip register check --register herbarium.db`,
		Args:    noWords,
		RunE:    func(*cobra.Command, []string) error { return a.registerCheck() },
	}
	a.bookFlags(c)
	_ = c.Flags().MarkHidden("by") // it changes nothing
	return c
}

func (a *app) registerCheck() error {
	return a.withBook(true, func(ctx context.Context, _ *job.Job, r *job.Register) error {
		problems := 0
		for p, err := range r.Check(ctx) {
			if err != nil {
				return err
			}
			problems++
			fmt.Fprintln(a.stdout, p)
		}
		if problems > 0 {
			a.say("%s in %s; keep the file as it is and compare it with the last backup", counted(problems, "problem"), r.Address())
			return errSaid
		}
		all, err := job.Overview(ctx, r)
		if err != nil {
			return err
		}
		numbers := 0
		for _, s := range all {
			for _, n := range s.Counts {
				numbers += n
			}
		}
		a.say("nothing wrong in %s: %s in %d series", r.Address(), counted(numbers, "number"), len(all))
		return nil
	})
}

func (a *app) registerBackupCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "backup copy.db",
		Short: "Write a copy of the register to another file",
		Long: `backup writes a copy of the register as it is at this moment, while others may go
on working with it. Keep it on another disk. A register on a server is backed up
with the server's own tools.

To restore a backup, let everybody stop, and move herbarium.db away, together with
herbarium.db-wal and herbarium.db-shm if they are there: what those hold belongs to
the old file and would spoil the new one. Then copy the backup to herbarium.db.

A register that is restored from a backup does not know the numbers that were
issued since. Before anything is issued again, say so with the highest number
that is found printed: cornerslip register up NUMBER --why "restored".`,
		Example: `  cornerslip register backup /media/safe/herbarium-2026-11-25.db --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("to which file? as in: cornerslip register backup copy.db")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.registerBackup(args[0]) },
	}
	a.bookFlags(c)
	return c
}

func (a *app) registerBackup(path string) error {
	at, err := a.at()
	if err != nil {
		return err
	}
	if _, err := os.Stat(filepath.Dir(path)); err != nil {
		return fmt.Errorf("%s cannot be written: there is no folder %s", path, filepath.Dir(path))
	}
	return a.withBook(false, func(ctx context.Context, _ *job.Job, r *job.Register) error {
		if err := r.Backup(ctx, at, path); err != nil {
			return err
		}
		a.say("wrote %s: the register %s as it is now", path, r.Address())
		a.say("whenever it is restored, say first which number was printed last: cornerslip register up NUMBER --why \"restored from %s\"", path)
		return nil
	})
}

func (a *app) registerUpCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "up NUMBER",
		Short: "Move a series past a printed number, after restoring a backup",
		Long: `up raises a series past a number of which you know that it is printed or in use,
although the register does not know it: after it was restored from a backup that
is older than the number. All numbers between the highest that the register knows
and this one become unknown and are never issued. Look for the highest number in
the cabinets, on the last sheets of stickers and in the last tables first.

This cannot be undone. A reason is needed.`,
		Example: `  cornerslip register up VDOURA-0004312 --why "restored from the backup of 1 November" --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("past which number? as in: cornerslip register up VDOURA-0004312 --why \"restored from a backup\"")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.registerUp(args[0]) },
	}
	a.bookFlags(c)
	a.whyFlag(c)
	return c
}

func (a *app) registerUp(number string) error {
	if err := a.needWhy("moving a series up", "restored from the backup of 1 November"); err != nil {
		return err
	}
	at, err := a.at()
	if err != nil {
		return err
	}
	return a.withBook(false, func(ctx context.Context, _ *job.Job, r *job.Register) error {
		one, err := r.Range(ctx, number, "")
		if err != nil {
			return err
		}
		all, err := job.Overview(ctx, r)
		if err != nil {
			return err
		}
		for _, s := range all {
			if s.Name != one.Series || s.Highest >= one.First {
				continue
			}
			a.say("series %s: so far %s; it moves up past %s", s.Name, comesNext(s.Next), one)
			if !a.sure(fmt.Sprintf("%s will never be issued; go on?", counted(one.First-s.Highest, "number"))) {
				return nil
			}
		}
		passed, err := r.MoveUp(ctx, at, number)
		if err != nil {
			return err
		}
		next := ""
		if passed.Last < passed.Pattern.Max() {
			next = passed.Pattern.Format(passed.Last + 1)
		}
		a.say("%s %s unknown now and never issued; %s", passed, isAre(passed.Len()), comesNext(next))
		return nil
	})
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// needWhy asks for a reason before anything is opened.
func (a *app) needWhy(what, example string) error {
	if strings.TrimSpace(a.why) == "" {
		return fmt.Errorf("%s needs a reason, which the history keeps; say it as in --why %q", what, example)
	}
	return nil
}
