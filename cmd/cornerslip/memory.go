package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// memoryFlags are those of printings that a register keeps.
type memoryFlags struct {
	newOnly   bool
	unmounted bool
}

func (a *app) memoryFlags(c *cobra.Command, m *memoryFlags) {
	a.bookFlags(c)
	f := c.Flags()
	f.BoolVar(&m.newOnly, "new", false, "only labels that were not printed before, by the register")
	f.BoolVar(&m.unmounted, "unmounted", false, "print changed labels anew: those printed before were thrown away and never mounted")
}

// memory opens the register that keeps a printing, and says how to let go of
// it. Without a register it returns nil.
func (a *app) memory(j *job.Job, m *memoryFlags) (*job.Memory, func(), error) {
	nothing := func() {}
	if m == nil || j.RegisterAddress(a.book) == "" {
		if m != nil && (m.newOnly || m.unmounted) {
			return nil, nothing, job.ErrNoRegister
		}
		return nil, nothing, nil
	}
	at, err := a.at()
	if err != nil {
		return nil, nothing, err
	}
	r, err := a.openBook(context.Background(), j, job.RegisterOptions{})
	if err != nil {
		return nil, nothing, err
	}
	return &job.Memory{Register: r, At: at, NewOnly: m.newOnly, Unmounted: m.unmounted}, func() { r.Close() }, nil
}

// remembered says what the register knew of the labels.
func (a *app) remembered(path string, kind label.Kind, m *job.Memory, rep job.Report) {
	if m == nil {
		return
	}
	if rep.Labels > 0 {
		a.say("kept in %s; one label is printed again, exactly as it is, with: cornerslip reprint", m.Register.Address())
	}
	of := "record"
	if path == "" {
		of = "number"
	}
	if rep.PrintedBefore > 0 {
		a.say("left out, printed before: %s", plural(rep.PrintedBefore, of))
	}
	if rep.Again > 0 {
		a.say("printed before in the same words, and now again: %s (--new leaves them out)", plural(rep.Again, of))
	}
	other := false
	for _, c := range rep.Changed {
		ref := c.Ref
		ref.Kind, ref.Part, ref.For, ref.Of = "", "", "", 0
		words := "its words have changed since"
		if c.Slip {
			words = "its determination has changed since: the sheet gets a slip"
		} else {
			other = true
		}
		a.say("not printed: %s: printed on %s, and %s%s", strings.TrimRight(ref.String(), ", "), day(c.When), words, changes(c.Terms))
		switch {
		case c.Slip:
			a.say("  cornerslip slip %s --only %s", quote(path), quote(c.Ref.Key))
		case kind != label.Slip:
			a.say("  cornerslip reprint %s", quote(c.Ref.Key))
		}
	}
	if other {
		a.say("a label that is printed stays as it is; reprint asks which words are meant")
	}
	if len(rep.Changed) > 0 && !m.Unmounted {
		a.say("labels that were thrown away before they were mounted are printed anew with --unmounted")
	}
}

// refused says which numbers may not be printed: those of records, or bare
// ones of a series.
func (a *app) refused(rep job.Report, exceptBad, bare bool) {
	if len(rep.Refused) == 0 {
		return
	}
	for _, err := range rep.Refused {
		fmt.Fprintln(a.stderr, err)
	}
	if exceptBad {
		a.say("these were not printed")
		return
	}
	a.say("%v", job.ErrNumbers)
	if bare {
		a.say("--except-bad prints the others")
		return
	}
	a.say("numbers that are in use already are taken over with: cornerslip register import; --except-bad prints the other records")
}

// changes lists what differs, shortened.
func changes(all []job.Difference) string {
	var b strings.Builder
	for i, d := range all {
		if i == 4 {
			fmt.Fprintf(&b, "; and %d more", len(all)-i)
			break
		}
		sep := "; "
		if i == 0 {
			sep = " ("
		}
		fmt.Fprintf(&b, "%s%s %q, now %q", sep, d.Term, short(d.Then), short(d.Now))
	}
	if b.Len() > 0 {
		b.WriteByte(')')
	}
	return b.String()
}

func short(s string) string {
	const most = 60
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}

// numbersFlags are those of stickers for numbers that have no record.
type numbersFlags struct {
	count   int
	series  string
	numbers []string
}

func (n *numbersFlags) add(c *cobra.Command) {
	f := c.Flags()
	f.IntVar(&n.count, "count", 0, "issue so many new numbers and print them, a `count`, instead of a table's")
	f.StringVar(&n.series, "series", "", "the `series` that numbers are issued of (default: the house's, else the only one)")
	f.StringArrayVar(&n.numbers, "numbers", nil, "print numbers that are issued already: one, or the first and the last, as in `VDOURA-0000101..VDOURA-0000200`")
}

// bareNumbers prints stickers for numbers of the register: new ones, or some
// that were issued before.
func (a *app) bareNumbers(p *printFlags, n *numbersFlags) error {
	if p.out == "" {
		p.out = "barcodes.pdf"
	}
	ctx := context.Background()
	j, err := a.job()
	if err != nil {
		return err
	}
	if err := a.ready(p.out, p.cuts); err != nil {
		return err
	}
	m, release, err := a.memory(j, p.memory)
	if err != nil {
		return err
	}
	defer release()
	if m == nil {
		return job.ErrNoRegister
	}
	q := p.request(label.Barcode)
	q.Memory = m
	bar := a.progress()
	q.Progress = bar.step
	ranges, err := j.NumbersFor(ctx, q, job.Numbers{Series: n.series, Count: n.count, Ranges: n.numbers, Path: p.out, Replace: a.force})
	if err != nil {
		return err
	}
	if n.count > 0 {
		a.say("issued %s", ranges[0])
	}
	rep, err := j.PrintNumbers(q, ranges, func(write func(io.Writer) error) error { return a.writePages(p.out, write) })
	bar.done()
	a.refused(rep, p.exceptBad, true)
	if errors.Is(err, job.ErrNumbers) {
		return errSaid
	}
	if err != nil {
		if n.count > 0 {
			a.say("the numbers stay issued; print them with: cornerslip barcode --numbers %s..%s -o %s",
				ranges[0].Pattern.Format(ranges[0].First), ranges[0].Pattern.Format(ranges[0].Last), quote(p.out))
		}
		return err
	}
	a.report(p.out, pieceOf(label.Barcode), rep, false)
	a.remembered("", label.Barcode, m, rep)
	return a.cuts(j, p.cuts, &rep)
}
