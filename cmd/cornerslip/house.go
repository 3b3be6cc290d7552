package main

import (
	"io"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) houseCommand() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "house",
		Short: "Write a house file to start from",
		Long: `house writes a house file in which every setting stands with its meaning and its
default value. Change what is different in your herbarium, delete the rest, and
name the file with --house. With --house it checks that file instead.`,
		Example: `  cornerslip house -o house.toml
  cornerslip house --house house.toml`,
		Args: noWords,
		RunE: func(*cobra.Command, []string) error {
			if a.house != "" {
				j, err := a.job()
				if err != nil {
					return err
				}
				if _, err := j.Rules(); err != nil { // names of rules, too
					return err
				}
				a.say("%s can be used", a.house)
				return nil
			}
			write := func(w io.Writer) error { _, err := w.Write(job.HouseTemplate()); return err }
			if out == "" || out == "-" {
				return write(a.stdout)
			}
			if err := a.write(out, write); err != nil {
				return err
			}
			a.say("wrote %s: change what is different in your herbarium, then check it with: cornerslip house --house %s", out, quote(out))
			return nil
		},
	}
	c.Flags().StringVarP(&out, "output", "o", "", "the `file` to write (default: standard output)")
	a.forceFlag(c)
	return c
}
