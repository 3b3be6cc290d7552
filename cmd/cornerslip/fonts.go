package main

import (
	"bufio"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

func (a *app) fontsCommand() *cobra.Command {
	var licences bool
	c := &cobra.Command{
		Use:   "fonts [trip.csv]",
		Short: "Show which characters of a table the faces cover",
		Long: `fonts lists the characters of a table beyond plain letters and figures and the
face that each is taken from. A character that no face has is named with its
place, and the command ends with 1. Without a table it lists the faces.`,
		Example: `  cornerslip fonts trip.csv
  cornerslip fonts --licences`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return oneTable(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			j, err := a.job()
			if err != nil {
				return err
			}
			out := bufio.NewWriter(a.stdout)
			defer out.Flush()
			if len(args) == 0 {
				for _, f := range j.Fonts().Faces() {
					fmt.Fprintln(out, f.Name)
					if licences {
						fmt.Fprintf(out, "\n%s\n\n", strings.TrimSpace(f.Licence()))
					}
				}
				return nil
			}
			t, release, err := a.table(args[0])
			if err != nil {
				return err
			}
			defer release()
			a.uncertain(t)
			cover, err := j.Coverage(t)
			if err != nil {
				return err
			}
			missing := 0
			for _, c := range cover {
				if c.Face == "" {
					missing++
					fmt.Fprintf(out, "%s\t%s\t%d times\t%s; first at %s\n", c.Text, c.Codes(), c.Count, c.Why, c.First)
					continue
				}
				fmt.Fprintf(out, "%s\t%s\t%d times\t%s\n", c.Text, c.Codes(), c.Count, c.Face)
			}
			if missing > 0 {
				out.Flush()
				a.say("%s cannot be printed; a TrueType file that has it can be named under [type] fallback in the house file", plural(missing, "character"))
				return errSaid
			}
			return nil
		},
	}
	a.tableFlags(c)
	_ = c.Flags().MarkHidden("dates") // characters are the same
	c.Flags().BoolVar(&licences, "licences", false, "print the licence of each face")
	return c
}
