package main

import (
	"bufio"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) readCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "read name|date|coordinates|number [text …]",
		Short: "Show how one value is understood",
		Long: `read shows how the program understands a value: a line for each text on the
command line, or for each line of standard input if there is none.`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return fmt.Errorf("read what? say name, date, coordinates or number")
			}
			return fmt.Errorf("read %q is not known; say name, date, coordinates or number", args[0])
		},
		RunE: func(*cobra.Command, []string) error { return nil },
	}
	one := func(use, short, long, example string, read func(string) string) {
		c.AddCommand(&cobra.Command{
			Use: use + " [text …]", Short: short, Long: long, Example: example,
			RunE: func(_ *cobra.Command, args []string) error { return a.read(args, read) },
		})
	}
	one("name", "A scientific name with its italic parts marked",
		"The name with <i> and </i> round what is set in italics; nothing else is changed.",
		`  cornerslip read name "Salix repens subsp. arenaria (L.) Hiit."`, job.ReadName)
	one("date", "A date as ISO 8601",
		"The status (ok, ambiguous, incomplete or invalid), a tab, and the date as ISO 8601.",
		`  cornerslip read date "12.vi.1987"`, job.ReadDate)
	one("coordinates", "Coordinates in decimal degrees, UTM and MGRS",
		"The status (ok, ambiguous, not_convertible or invalid), latitude, longitude, the\nuncertainty in metres from the precision written, UTM and MGRS, parted by tabs.",
		`  cornerslip read coordinates "40°21′14″ N, 7°33′48″ W"`, job.ReadCoordinates)
	c.AddCommand(a.readNumberCommand())
	return c
}

func (a *app) readNumberCommand() *cobra.Command {
	pattern, scheme := "", ""
	c := &cobra.Command{
		Use:   "number [text …]",
		Short: "A number with its check character",
		Long: `The status, a tab, and the number with its check character. The text is a number
without it; the scheme's name may stand first.

With the pattern of a series, from --pattern or the house file, the text is read as
a number of that series, as it was typed or scanned, and written in full. The
status is then ok, no_check (the check character was missing), wrong_check,
foreign (of another series) or invalid.`,
		Example: `  cornerslip read number "MOD37,36 A12425GABC1234002"
  cornerslip read number --scheme "MOD 11-2" 0794
  cornerslip read number --pattern VDOURA-0000000 vdoura4217
  cornerslip read number --pattern "VDOURA-0000000 MOD 37,36" VDOURA-0004217`,
		RunE: func(_ *cobra.Command, args []string) error {
			j, err := a.job()
			if err != nil {
				return err
			}
			read, err := j.NumberReader(pattern, scheme)
			if err != nil {
				return err
			}
			return a.read(args, read)
		},
	}
	f := c.Flags()
	f.StringVar(&pattern, "pattern", "", "how the numbers of the series are written, a `pattern` such as VDOURA-0000000 (default: the house's)")
	f.StringVar(&scheme, "scheme", "", "the check character `scheme`, where the text does not say it: MOD 37,36, MOD 37-2, MOD 11-2, MOD 11,10 or MOD 97-10")
	return c
}

func (a *app) read(args []string, read func(string) string) error {
	out := bufio.NewWriter(a.stdout)
	defer out.Flush()
	if len(args) > 0 {
		for _, text := range args {
			fmt.Fprintln(out, read(text))
		}
		return nil
	}
	in := bufio.NewReader(a.stdin)
	for {
		text, err := in.ReadString('\n')
		if text != "" {
			fmt.Fprintln(out, read(strings.TrimSuffix(strings.TrimSuffix(text, "\n"), "\r")))
		}
		if err != nil {
			return nil // the end of standard input
		}
	}
}
