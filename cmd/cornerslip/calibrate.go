package main

import (
	"io"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) calibrateCommand() *cobra.Command {
	var out string
	var c job.Calibration
	cmd := &cobra.Command{
		Use:   "calibrate",
		Short: "Print a page to measure the printer by",
		Long: `calibrate writes a page that shows what a printer really does: rules of 100 mm
across and down, crosses 20 mm from the edges, lines ever closer to each edge, and
bars with more and more taken off them. The page says how it is read and which
settings of the house file its measures go into, under [printer] and [bars].

Print it at 100 %, measure, write the settings, and print it again with --corrected:
now every measure should be right. Each printer, and each of its trays, has its own.`,
		Example: `  cornerslip calibrate -o calibration.pdf
  cornerslip calibrate --paper A3 -o calibration.pdf
  cornerslip calibrate --corrected --house house.toml -o again.pdf`,
		Args: noWords,
		RunE: func(*cobra.Command, []string) error {
			if out == "" {
				out = "calibration.pdf"
			}
			j, err := a.job()
			if err != nil {
				return err
			}
			rep, err := j.Calibrate(c, func(write func(io.Writer) error) error { return a.writePages(out, write) })
			if err != nil {
				return err
			}
			a.say("wrote %s: a page of %s to measure", out, rep.PaperSize)
			a.advice(rep.Warnings)
			return nil
		},
	}
	f := cmd.Flags()
	f.StringVarP(&out, "output", "o", "", "the PDF `file` to write (default: calibration.pdf)")
	f.StringVar(&c.Paper, "paper", "", "`size` of the paper: A4, A3, Letter, or width x height in mm (default: the house's, else A4)")
	f.BoolVar(&c.Corrected, "corrected", false, "print with the corrections of the house file, to see whether they are right")
	a.forceFlag(cmd)
	return cmd
}
