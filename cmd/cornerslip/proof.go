package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

var kinds = map[string]label.Kind{"sheet": label.Sheet, "packet": label.Packet, "barcode": label.Barcode, "slip": label.Slip, "tag": label.Tag}

func (a *app) proofCommand() *cobra.Command {
	var asJSON bool
	var kind, svgDir, start string
	var skip []string
	slips, tags := &slipFlags{}, &tagFlags{}
	c := &cobra.Command{
		Use:   "proof trip.csv",
		Short: "Show how labels will look, before printing",
		Long: `proof shows the labels here in the terminal, names in italics, or writes each as
an SVG picture. The lines break as they will on paper.`,
		Example: `  cornerslip proof trip.csv --only "Almeida 214"
  cornerslip proof trip.csv --kind packet
  cornerslip proof trip.csv --kind slip --identifications det.csv
  cornerslip proof trip.csv --svg proofs
  cornerslip proof trip.csv --json`,
		Args: oneTable,
		RunE: func(_ *cobra.Command, args []string) error {
			k, ok := kinds[kind]
			if !ok {
				return fmt.Errorf("--kind %q is not known; say sheet, packet, barcode, slip or tag", kind)
			}
			q := job.Request{Kind: k, ExceptBad: true, Start: start, Skip: skip}
			if err := tags.request(&q); err != nil {
				return err
			}
			release, err := a.slipRequest(&q, slips)
			if err != nil {
				return err
			}
			defer release()
			return a.proof(args[0], q, asJSON, svgDir)
		},
	}
	a.tableFlags(c)
	a.forceFlag(c)
	c.Flags().BoolVar(&asJSON, "json", false, "write one JSON object a line for each label: lines, positions, bars")
	c.Flags().StringVar(&kind, "kind", "sheet", "which `labels`: sheet, packet, barcode, slip or tag")
	c.Flags().StringVar(&svgDir, "svg", "", "write each label as an SVG picture into this `folder`")
	c.Flags().StringVar(&start, "start", "", "barcode labels on stickers: the first free one, `row,column` such as 2,3")
	c.Flags().StringArrayVar(&skip, "skip", nil, "barcode labels on stickers: a further `place` that is used or spoilt")
	slips.add(c.Flags())
	tags.add(c.Flags())
	return c
}

func (a *app) proof(path string, q job.Request, asJSON bool, svgDir string) error {
	if asJSON && svgDir != "" {
		return errors.New("--json or --svg, not both")
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
	if svgDir != "" {
		if err := os.MkdirAll(svgDir, 0o755); err != nil {
			return fmt.Errorf("the folder %s cannot be made: %w", svgDir, err)
		}
	}
	out := bufio.NewWriter(a.stdout)
	defer out.Flush()
	r := newReporter(a.stderr, label.Warning)
	n := 0
	// A proof is for looking: what is good is shown even if other records are
	// not.
	s, err := j.Proof(t, q, r.add, func(p job.Proof) error {
		n++
		switch {
		case asJSON:
			return encode(out, p.JSON())
		case svgDir != "":
			name := filepath.Join(svgDir, fmt.Sprintf("%s-%04d.svg", q.Kind, n))
			return a.write(name, func(w io.Writer) error { return j.WriteSVG(w, p.Box) })
		}
		return j.WriteText(out, p.Box, a.styled())
	})
	r.flush()
	if err != nil {
		return err
	}
	if svgDir != "" {
		a.say("wrote %s in %s", plural(n, "picture"), svgDir)
	} else if n == 0 && s.Errors == 0 {
		a.say("%s", nothingFor(q.Kind))
	}
	if picture, err := j.UsedStickers(q, n); err != nil {
		return err
	} else if picture != "" && n > 0 {
		a.stickers(picture)
	}
	if s.Errors > 0 {
		a.say("%s; those records are not shown", summaryLine(s))
		return errSaid
	}
	return nil
}

// styled reports whether standard output is a terminal that shows italics and
// colours.
func (a *app) styled() bool { return stylesOn(a.stdout) }

func stylesOn(w io.Writer) bool {
	f, ok := w.(*os.File)
	return showsStyles(ok && term.IsTerminal(int(f.Fd())), os.Getenv)
}

// showsStyles decides it by the environment: no-color.org, and TERM.
func showsStyles(terminal bool, env func(string) string) bool {
	return terminal && env("NO_COLOR") == "" && env("TERM") != "dumb"
}
