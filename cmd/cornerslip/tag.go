package main

import (
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// tagFlags say which tags are made.
type tagFlags struct {
	bundle bool
	each   int
}

func (t *tagFlags) add(f *pflag.FlagSet) {
	f.BoolVar(&t.bundle, "bundle", false, "a tag for the whole press instead of one for each plant")
	f.IntVar(&t.each, "plants", 0, "how many `plants` lie in a press: a bundle tag for each so many (default: one for all)")
}

func (t *tagFlags) request(q *job.Request) error {
	switch {
	case t.each < 0:
		return errors.New("--plants must be 1 or more")
	case t.each > 0 && !t.bundle:
		return errors.New("--plants says how many lie in a press; add --bundle")
	case t.bundle:
		q.Bundle = &job.BundleRequest{Each: t.each}
	}
	return nil
}

func (a *app) tagCommand() *cobra.Command {
	t := &tagFlags{}
	c, p := a.printCommand(&cobra.Command{
		Use:   "tag trip.csv",
		Short: "Print tags for press, dryer and freezer",
		Long: `tag makes the small tags that travel with the plants through press, dryer and
freezer: collector and number, one for each record. Records need no more than
that yet.

With --bundle it makes the tag of a whole press: from which to which number, how
many plants, and for each stage the days in and out to be ticked. The dates run
from --date by the times under [press] in the house file; what the house does not
say stays blank. The house's own rule stands before the usual cautions.`,
		Example: `  cornerslip tag trip.csv -o tags.pdf
  cornerslip tag trip.csv --bundle --date 2026-06-14 --house house.toml -o press.pdf
  cornerslip tag trip.csv --bundle --plants 30 -o press.pdf
  cornerslip tag trip.csv --bundle --only "rows 1-25" -o press.pdf`,
	}, label.Tag, "tags")
	t.add(c.Flags())
	p.more = func(q *job.Request) (func(), error) { return func() {}, t.request(q) }
	return c
}
