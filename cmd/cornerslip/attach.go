package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) attachCommand() *cobra.Command {
	var from string
	c := &cobra.Command{
		Use:   "attach [trip.csv]",
		Short: "Confirm by scan that each sticker sits on its sheet",
		Long: `attach goes through a pile of mounted sheets with you. For each sheet type its
collector and number ("Almeida 214"; the beginnings of words will do) and press
Enter, then scan the sticker on it: a scanner types the number and presses Enter.
Each pair is answered at once. A sticker on the wrong sheet is told, and so is a
slip by one, which shifts all stickers that follow.

The sheets and their order are those of the table, with the numbers that they have
there or in the register. A sheet that has no number yet takes any sticker that was
printed for no sheet in particular, and has that number from then on: "register
issue" writes it into the table. Without a table the sheets are those of all numbers
that are printed and not yet attached, in the order of the numbers.

Two words are for the program itself: undo takes back the last pair (up to ten of
them), done ends. The pairs that fit are marked as attached in the register as
you go on. At the end what is still open is listed; run the command again to go
on with it.

--from reads the lines from a file instead: a sheet and a sticker in turn, or both
on one line with a tab between. The command ends with 0 if every sheet is
attached, and with 1 if some are open.`,
		Example: `  cornerslip attach trip.numbered.csv --register herbarium.db
  cornerslip attach trip.numbered.csv --only "rows 1-40" --register herbarium.db
  cornerslip attach --from scans.txt --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return fmt.Errorf("one table at a time, but there are %d", len(args))
			}
			if len(args) == 1 && args[0] == "-" && from == "" {
				return errors.New("standard input is for the scans; name the table, or read the scans with --from")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			path := ""
			if len(args) == 1 {
				path = args[0]
			}
			return a.attach(path, from)
		},
	}
	a.bookFlags(c)
	a.tableFlags(c)
	c.Flags().StringVar(&from, "from", "", "read what was scanned from this `file` instead of the keyboard")
	return c
}

func (a *app) attach(path, from string) error {
	at, err := a.at()
	if err != nil {
		return err
	}
	in := a.stdin
	if from != "" {
		f, err := os.Open(from)
		if err != nil {
			return fmt.Errorf("the scans cannot be read: %w", err)
		}
		defer f.Close()
		in = f
	}
	return a.withBook(false, func(ctx context.Context, j *job.Job, r *job.Register) error {
		s, err := a.attachSession(ctx, j, r, path)
		if err != nil {
			return err
		}
		all, before, free := s.Sheets()
		a.say("%s; for each: its collector and number, then the sticker; \"undo\" takes the last pair back, \"done\" ends", counted(all, "sheet"))
		if before > 0 {
			a.say("%s attached already", counted(before, "sheet")+" "+isAre(before))
		}
		if s.Unnumbered > 0 {
			a.say("%s of the table can have no number, since nothing tells %s from others; see: cornerslip register issue %s", counted(s.Unnumbered, "record"), itThem(s.Unnumbered), path)
		}
		if free > 0 {
			a.say("%s no number yet: any sticker that was printed for no sheet in particular will do", counted(free, "sheet")+" "+hasHave(free))
		}
		if s.Nameless > 0 {
			a.say("of %s the register does not know whose they are; name the table for them", counted(s.Nameless, "printed number"))
		}
		readErr := a.readScans(s, at, in, from == "" && isTerminal(in))
		rep, err := s.Finish(at)
		for _, refused := range rep.Refused {
			a.line(refused.Error())
		}
		a.say("attached %d of %s", rep.Attached, counted(all, "sheet"))
		for _, open := range rep.Open {
			a.say("open: %s", open)
		}
		switch {
		case err != nil || readErr != nil:
			return errors.Join(err, readErr)
		case len(rep.Open) > 0:
			return errSaid
		}
		return nil
	})
}

func itThem(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}

func (a *app) attachSession(ctx context.Context, j *job.Job, r *job.Register, path string) (*job.AttachSession, error) {
	if path == "" {
		return job.AttachPrinted(ctx, r)
	}
	t, release, err := a.table(path)
	if err != nil {
		return nil, err
	}
	defer release()
	return j.AttachTable(ctx, r, t)
}

// readScans hands lines to the session until they end, "done" is said, or the
// person breaks off: what was confirmed until then counts.
func (a *app) readScans(s *job.AttachSession, at job.At, in io.Reader, prompt bool) error {
	stop, restore := signal.NotifyContext(context.Background(), os.Interrupt)
	defer restore()
	lines, failed := make(chan string), make(chan error, 1)
	go func() {
		defer close(failed)
		defer close(lines)
		scan := bufio.NewScanner(in)
		for scan.Scan() {
			select {
			case lines <- scan.Text():
			case <-stop.Done():
				return
			}
		}
		failed <- scan.Err()
	}()
	all, _, _ := s.Sheets()
	for {
		if prompt {
			if sheet := s.Waiting(); sheet != "" {
				fmt.Fprintf(a.stderr, "sticker on %s: ", sheet)
			} else {
				fmt.Fprintf(a.stderr, "sheet (%d of %d done): ", s.Confirmed(), all)
			}
		}
		select {
		case <-stop.Done():
			fmt.Fprintln(a.stderr)
			return nil
		case line, ok := <-lines:
			if !ok {
				return <-failed
			}
			answer := s.Line(line)
			switch {
			case answer.Done:
				return nil
			case answer.Wrong:
				bell := ""
				if prompt { // eyes are on the sheets
					bell = "\a"
				}
				fmt.Fprintln(a.stdout, bell+"WRONG: "+answer.Message)
			case answer.Message != "":
				fmt.Fprintln(a.stdout, answer.Message)
			}
			if err := s.Settle(at); err != nil {
				return err
			}
		}
	}
}
